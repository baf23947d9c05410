/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "levels-report.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "core/levels/units.h"

/* The levels of each conductor in every unit that it has. */

typedef enum
{
  LEVEL_WHITE,
  LEVEL_BLACK,
  LEVEL_BLANKING,
  LEVEL_SYNC_LOW,
  LEVEL_SYNC_HIGH,
  LEVEL_HIGHEST,
  LEVEL_LOWEST,
  N_LEVELS
} Level;

static const BwKind names[N_LEVELS] = {
  [LEVEL_WHITE] = { "white", N_ ("white") },
  [LEVEL_BLACK] = { "black", N_ ("black") },
  [LEVEL_BLANKING] = { "blanking", N_ ("blanking") },
  [LEVEL_SYNC_LOW] = { "sync_low", N_ ("sync, lowest") },
  [LEVEL_SYNC_HIGH] = { "sync_high", N_ ("sync, highest") },
  [LEVEL_HIGHEST] = { "highest", N_ ("highest of bars") },
  [LEVEL_LOWEST] = { "lowest", N_ ("lowest of bars") },
};
static const BwKindTable level_names = { N_LEVELS, names };

/* Whether the conductor has the level at all. */
static gboolean
level_of (const BwWireLevels *levels, Level level, double *volts)
{
  gboolean picture = !bw_conductor_is_sync_alone (levels->conductor);
  const double all[N_LEVELS] = {
    levels->white_v,     levels->black_v,   levels->blanking_v, levels->sync_low_v,
    levels->sync_high_v, levels->highest_v, levels->lowest_v,
  };

  *volts = all[level];
  if (level == LEVEL_SYNC_LOW || level == LEVEL_SYNC_HIGH)
    return fabs (*volts - levels->blanking_v) > 0;
  if (level == LEVEL_WHITE || level == LEVEL_BLACK)
    return picture && !bw_conductor_is_colour_alone (levels->conductor);
  return picture || level == LEVEL_BLANKING;
}

static gboolean
in_unit (const BwLevelScale *scale, double volts, BwLevelUnit unit, double *value)
{
  return bw_level_convert (scale, volts, BW_LEVEL_VOLTS, unit, value, NULL);
}

static void
level_to_json (const BwLevelScale *scale, Level level, double volts, BwJson *json)
{
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "id", bw_kind_id (&level_names, level));
  for (BwLevelUnit unit = 0; unit < BW_N_LEVEL_UNITS; unit++)
    {
      double value = 0;
      gboolean known = in_unit (scale, volts, unit, &value);
      bw_json_number_if (json, bw_kind_id (&bw_level_units, unit), known, value);
    }
  bw_json_end_object (json);
}

/* The extremes of the bars that were asked for, not of those at 100 %. */
static void
take_bars (const BwLevelsReport *view, const BwWireForm *form, BwWireLevels *levels)
{
  if (bw_conductor_is_sync_alone (levels->conductor))
    return;
  levels->lowest_v = INFINITY;
  levels->highest_v = -INFINITY;
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwRgb rgb;
      BwWireColour colour;
      bw_bar_rgb (bar, view->form, &rgb);
      bw_wire_colour (form, levels->conductor, &rgb, &colour);
      double chroma_v = hypot (colour.u_v, colour.v_v);
      levels->lowest_v = fmin (levels->lowest_v, colour.base_v - chroma_v);
      levels->highest_v = fmax (levels->highest_v, colour.base_v + chroma_v);
    }
}

static guint
conductors_of (const BwLevelsReport *view, BwWireForm *form, BwWireLevels levels[BW_N_CONDUCTORS])
{
  bw_wire_form_standard (view->system, view->signal, view->sync, BW_SHAPE_BILEVEL, form);
  return bw_wire_levels (form, levels);
}

/**
 * bw_levels_conductors_to_json:
 *
 * Adds the array "conductors" to the object that @json is in. What has no scale, and what has no
 * code, is null; codes are not rounded.
 */
void
bw_levels_conductors_to_json (const BwLevelsReport *view, BwJson *json)
{
  BwWireForm form;
  BwWireLevels levels[BW_N_CONDUCTORS];
  guint n = conductors_of (view, &form, levels);

  bw_json_string (json, "sync", bw_kind_id (&bw_sync_kinds, view->sync));
  bw_json_begin_array (json, "conductors");
  for (guint i = 0; i < n; i++)
    {
      BwLevelScale scale;
      bw_level_scale (&form, &levels[i], &scale);
      take_bars (view, &form, &levels[i]);
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "id", bw_kind_id (&bw_conductors, levels[i].conductor));
      bw_json_number_if (json, "mv_per_ire", scale.volts_per_ire > 0, scale.volts_per_ire * 1000);
      bw_json_number_if (json, "burst_pp_v", levels[i].burst_pp_v > 0, levels[i].burst_pp_v);
      bw_json_begin_array (json, "levels");
      for (Level level = 0; level < N_LEVELS; level++)
        {
          double volts;
          if (level_of (&levels[i], level, &volts))
            level_to_json (&scale, level, volts, json);
        }
      bw_json_end_array (json);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static char *
unit_text (const BwLevelScale *scale, double volts, BwLevelUnit unit, double factor)
{
  double value;
  if (!in_unit (scale, volts, unit, &value))
    return g_strdup ("–");
  value = round (value * factor * 10);
  return g_strdup_printf ("%.1f", (fabs (value) > 0 ? value : 0) / 10);
}

static const char *
name_of (const BwWireLevels *levels, Level level)
{
  gboolean rest = level == LEVEL_BLANKING && bw_conductor_is_sync_alone (levels->conductor);
  return rest ? _ ("at rest") : bw_kind_label (&level_names, level);
}

static void
add_rows (BwTable *table, const BwLevelsReport *view, const BwWireForm *form,
          BwWireLevels *levels)
{
  BwLevelScale scale;
  const char *conductor = bw_kind_label (&bw_conductors, levels->conductor);

  bw_level_scale (form, levels, &scale);
  take_bars (view, form, levels);
  for (Level level = 0; level < N_LEVELS; level++)
    {
      double volts;
      if (!level_of (levels, level, &volts))
        continue;
      g_autofree char *mv = unit_text (&scale, volts, BW_LEVEL_VOLTS, 1000);
      g_autofree char *ire = unit_text (&scale, volts, BW_LEVEL_IRE, 1);
      g_autofree char *percent = unit_text (&scale, volts, BW_LEVEL_PERCENT, 1);
      g_autofree char *code = unit_text (&scale, volts, BW_LEVEL_CODE_8, 1);
      bw_table_add_row (table, conductor, name_of (levels, level), mv, ire, percent, code, NULL);
      conductor = "";
    }
}

/**
 * bw_levels_conductors_append_text:
 *
 * Appends a table of every level of every conductor.
 */
void
bw_levels_conductors_append_text (const BwLevelsReport *view, GString *text)
{
  BwWireForm form;
  BwWireLevels levels[BW_N_CONDUCTORS];
  guint n = conductors_of (view, &form, levels);
  g_autoptr (BwTable) table = bw_table_new (6);

  for (guint column = 2; column < 6; column++)
    bw_table_set_right (table, column);
  bw_table_add_row (table, _ ("conductor"), _ ("level"), "mV", "IRE", _ ("% of white"),
                    _ ("8-bit code"), NULL);
  for (guint i = 0; i < n; i++)
    add_rows (table, view, &form, &levels[i]);
  g_string_append_printf (text, "\n%s\n\n", bw_kind_label (&bw_sync_kinds, view->sync));
  bw_table_append_to (table, text, 0);
}
