/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/levels/units.h"
#include "core/raster/colour-system.h"
#include "synthesis.h"

/* Less than this is no difference between levels. */
#define SAME_V 1e-6

static BwValue
millivolts (const char *key, double volts)
{
  return bw_value_fixed (key, volts, BW_DIMENSION_VOLTAGE, "mV", 1);
}

/* The levels of each conductor */

typedef enum
{
  LEVEL_WHITE,
  LEVEL_BLACK,
  LEVEL_BLANKING,
  LEVEL_SYNC_LOW,
  LEVEL_SYNC_HIGH,
  LEVEL_HIGHEST,
  LEVEL_LOWEST,
  LEVEL_BURST, /* not among the levels of JSON, which has it beside them */
  N_LEVELS
} Level;

static const BwKind names[N_LEVELS] = {
  [LEVEL_WHITE] = { "white", N_ ("white") },
  [LEVEL_BLACK] = { "black", N_ ("black") },
  [LEVEL_BLANKING] = { "blanking", N_ ("blanking") },
  [LEVEL_SYNC_LOW] = { "sync_low", N_ ("sync tip") },
  [LEVEL_SYNC_HIGH] = { "sync_high", N_ ("sync, highest") },
  [LEVEL_HIGHEST] = { "highest", N_ ("highest of bars") },
  [LEVEL_LOWEST] = { "lowest", N_ ("lowest of bars") },
  [LEVEL_BURST] = { "burst", N_ ("burst, p-p") },
};
static const BwKindTable level_names = { N_LEVELS, names };

/* Whether the conductor has the level at all. */
static gboolean
level_of (const BwWireLevels *levels, Level level, double *volts)
{
  gboolean picture = !bw_conductor_is_sync_alone (levels->conductor);
  const double all[N_LEVELS] = {
    [LEVEL_WHITE] = levels->white_v,         [LEVEL_BLACK] = levels->black_v,
    [LEVEL_BLANKING] = levels->blanking_v,   [LEVEL_SYNC_LOW] = levels->sync_low_v,
    [LEVEL_SYNC_HIGH] = levels->sync_high_v, [LEVEL_HIGHEST] = levels->highest_v,
    [LEVEL_LOWEST] = levels->lowest_v,       [LEVEL_BURST] = levels->burst_pp_v,
  };

  *volts = all[level];
  if (level == LEVEL_SYNC_LOW || level == LEVEL_SYNC_HIGH)
    return fabs (*volts - levels->blanking_v) > 0;
  if (level == LEVEL_WHITE || level == LEVEL_BLACK)
    return picture && !bw_conductor_is_colour_alone (levels->conductor);
  if (level == LEVEL_BURST)
    return *volts > 0;
  return picture || level == LEVEL_BLANKING;
}

/* The extremes of the bars that are asked for, not of those at 100 %. */
static void
take_bars (const BwWireForm *form, BwBarsForm bars, BwWireLevels *levels)
{
  if (bw_conductor_is_sync_alone (levels->conductor) || bars >= BW_N_BARS_FORMS)
    return;
  levels->lowest_v = INFINITY;
  levels->highest_v = -INFINITY;
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwRgb rgb;
      BwWireColour colour;
      bw_bar_rgb (bar, bars, &rgb);
      bw_wire_colour (form, levels->conductor, &rgb, &colour);
      double chroma_v = hypot (colour.u_v, colour.v_v);
      levels->lowest_v = fmin (levels->lowest_v, colour.base_v - chroma_v);
      levels->highest_v = fmax (levels->highest_v, colour.base_v + chroma_v);
    }
}

/* What the parts of the table need. */
typedef struct
{
  const BwWireForm *form;
  const BwLevelsHere *here; /* nullable */
  BwNode *conductors;       /* for scripts */
  BwNode *levels;           /* for people; nullable */
  gboolean ire;             /* which units any conductor has */
  gboolean percent;
} Table;

static gboolean
in_unit (const BwLevelScale *scale, double volts, BwLevelUnit unit, double *value)
{
  return bw_level_convert (scale, volts, BW_LEVEL_VOLTS, unit, value, NULL);
}

static BwValue
unit_value (const BwLevelScale *scale, double volts, BwLevelUnit unit)
{
  double value = 0;
  gboolean known = in_unit (scale, volts, unit, &value);
  return bw_value_or (bw_value_if (known, bw_value_number (NULL, value, 1)), "–");
}

/* One level in every unit that the conductor has. */
static void
add_script_level (BwNode *table, const BwLevelScale *scale, Level level, double volts,
                  const BwLevelsHere *here, double gain)
{
  BwNode *row = bw_node_row (table);
  bw_node_member (row, bw_value_words ("id", bw_kind_id (&level_names, level)));
  for (BwLevelUnit unit = 0; unit < BW_N_LEVEL_UNITS; unit++)
    {
      double value = 0;
      gboolean known = in_unit (scale, volts, unit, &value);
      bw_node_member (row, bw_value_if (known, bw_value_count (bw_kind_id (&bw_level_units, unit),
                                                               value)));
    }
  if (here != NULL)
    bw_node_member (row, bw_value_count ("here_v", volts * gain));
}

/* ITU-R BT.601 has no codes for sync and burst. */
static gboolean
has_code (Level level)
{
  return level != LEVEL_SYNC_LOW && level != LEVEL_SYNC_HIGH && level != LEVEL_BURST;
}

static void
add_seen_level (const Table *t, const char *group, const BwLevelScale *scale, Level level,
                const BwWireLevels *levels, double volts, double gain)
{
  const BwLevelScale none = { 0 };
  BwNode *row = bw_node_row (t->levels);
  gboolean rest = level == LEVEL_BLANKING && bw_conductor_is_sync_alone (levels->conductor);

  bw_node_cell (row, bw_value_says (NULL, group));
  bw_node_cell (row,
                bw_value_says (NULL, rest ? _ ("at rest") : bw_kind_label (&level_names, level)));
  bw_node_cell (row, millivolts (NULL, volts));
  if (t->ire)
    bw_node_cell (row, unit_value (scale, volts, BW_LEVEL_IRE));
  if (t->percent)
    {
      bw_node_cell (row, unit_value (scale, volts, BW_LEVEL_PERCENT));
      bw_node_cell (row, unit_value (has_code (level) ? scale : &none, volts, BW_LEVEL_CODE_8));
    }
  if (t->here == NULL)
    return;
  bw_node_cell (row, millivolts (NULL, volts * gain));
  if (t->ire)
    bw_node_cell (row, unit_value (scale, volts * gain, BW_LEVEL_IRE));
}

/* Conductors with the same levels share their lines. */
static gboolean
same_levels (const BwWireLevels *a, const BwWireLevels *b)
{
  const double both[][2] = {
    { a->black_v, b->black_v },
    { a->white_v, b->white_v },
    { a->lowest_v, b->lowest_v },
    { a->highest_v, b->highest_v },
    { a->sync_low_v, b->sync_low_v },
    { a->sync_high_v, b->sync_high_v },
    { a->blanking_v, b->blanking_v },
    { a->burst_pp_v, b->burst_pp_v },
    { a->volts_per_ire, b->volts_per_ire },
  };
  if (bw_conductor_is_colour_alone (a->conductor) != bw_conductor_is_colour_alone (b->conductor)
      || bw_conductor_is_sync_alone (a->conductor) != bw_conductor_is_sync_alone (b->conductor))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (both); i++)
    if (fabs (both[i][0] - both[i][1]) > SAME_V)
      return FALSE;
  return TRUE;
}

static const char *
group_words (BwNode *to, const BwWireLevels *levels, guint n)
{
  g_autoptr (GString) name = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (name, "%s%s", i > 0 ? ", " : "",
                            bw_kind_label (&bw_conductors, levels[i].conductor));
  if (levels->volts_per_ire > 0)
    g_string_append_printf (name, _ (", where 1\u00a0IRE is %s"),
                            bw_node_quantity (to, levels->volts_per_ire, BW_DIMENSION_VOLTAGE, 4));
  return bw_node_print (to, "%s", name->str);
}

static void
add_conductor (const Table *t, const BwWireLevels *levels, const BwLevelScale *scale,
               const char *group)
{
  gboolean own = bw_conductor_is_sync_alone (levels->conductor);
  double gain = t->here == NULL ? 1 : own ? t->here->sync_gain : t->here->gain, volts;
  BwNode *row = bw_node_row (t->conductors);

  bw_node_cell (row, bw_value_kind ("id", &bw_conductors, levels->conductor));
  bw_node_member (row, bw_value_if (scale->volts_per_ire > 0,
                                    bw_value_count ("mv_per_ire", scale->volts_per_ire * 1000)));
  bw_node_member (row, bw_value_if (levels->burst_pp_v > 0,
                                    millivolts ("burst_pp_v", levels->burst_pp_v)));
  BwNode *all = bw_node_table (row, "levels", NULL);
  for (Level level = 0; level < N_LEVELS; level++)
    {
      if (!level_of (levels, level, &volts))
        continue;
      if (level != LEVEL_BURST)
        add_script_level (all, scale, level, volts, t->here, gain);
      if (group != NULL)
        add_seen_level (t, group, scale, level, levels, volts, gain);
    }
}

static void
add_columns (const Table *t)
{
  const char *stated = t->here != NULL ? _ ("should be") : _ ("level");

  bw_node_column (t->levels, BW_COLUMN_WORDS, _ ("conductor"), NULL);
  bw_node_column (t->levels, BW_COLUMN_WORDS, _ ("level of"), NULL);
  bw_node_column (t->levels, BW_COLUMN_NUMBERS, stated, "mV");
  if (t->ire)
    bw_node_column (t->levels, BW_COLUMN_NUMBERS, stated, "IRE");
  if (t->percent)
    {
      bw_node_column (t->levels, BW_COLUMN_NUMBERS, _ ("of white"), "%");
      bw_node_column (t->levels, BW_COLUMN_NUMBERS, _ ("8-bit code"), NULL);
    }
  if (t->here == NULL)
    return;
  bw_node_column (t->levels, BW_COLUMN_NUMBERS, _ ("is here"), "mV");
  if (t->ire)
    bw_node_column (t->levels, BW_COLUMN_NUMBERS, _ ("is here"), "IRE");
}

/* Every level of every conductor: for scripts one conductor after the other, for people those of
 * the same levels together. @here: as they are with a load; or NULL. */
static void
add_conductors (BwNode *to, const BwWireForm *form, BwBarsForm bars, const BwLevelsHere *here,
                gboolean seen)
{
  BwWireLevels levels[BW_N_CONDUCTORS];
  BwLevelScale scales[BW_N_CONDUCTORS];
  guint n = bw_wire_levels (form, levels);
  Table t = { .form = form,
              .here = here,
              .percent = here == NULL || form->signal == BW_SIGNAL_RGB
                         || form->signal == BW_SIGNAL_COMPONENT };

  t.conductors = bw_node_table (to, "conductors", NULL);
  t.levels = bw_node_table (to, NULL,
                            here != NULL ? _ ("Levels")
                                         : bw_kind_label (&bw_sync_kinds, form->sync));
  t.levels->is_grouped = t.levels->for_people = TRUE;
  for (guint i = 0; i < n; i++)
    {
      bw_level_scale (form, &levels[i], &scales[i]);
      take_bars (form, bars, &levels[i]);
      t.ire |= levels[i].volts_per_ire > 0;
    }
  add_columns (&t);
  for (guint i = 0, next; i < n; i = next)
    {
      for (next = i + 1; next < n && same_levels (&levels[i], &levels[next]);)
        next++;
      const char *group = seen ? group_words (to, &levels[i], next - i) : NULL;
      for (guint one = i; one < next; one++)
        add_conductor (&t, &levels[one], &scales[one], one == i ? group : NULL);
    }
}

/* Colour bars */

static BwValue
degrees (BwBar bar, double chroma_pp_v, double phase_deg, gboolean chroma)
{
  gboolean hue = chroma && chroma_pp_v > 1e-9;
  return bw_value_or (bw_value_if (hue, bw_value_number ("phase_deg", phase_deg, 1)),
                      chroma ? "–" : NULL);
}

static BwValue
chroma_volts (const char *key, gboolean chroma, double volts)
{
  return bw_value_if (chroma, millivolts (key, volts));
}

/* No conductor of Y/C carries the sum of the two: "max_v" and "min_v" are of Y, "c_max_v" and
 * "c_min_v" of C. */
static void
add_coded_bar (BwNode *row, BwBar bar, const BwCodedLevels *coded, gboolean apart, gboolean chroma)
{
  double half_v = coded->chroma_pp_v / 2;

  bw_node_cell (row, bw_value_kind ("name", &bw_bars, bar));
  bw_node_cell (row, millivolts ("luma_v", coded->luma_v));
  bw_node_cell (row, chroma_volts ("chroma_pp_v", chroma, coded->chroma_pp_v));
  bw_node_cell (row, degrees (bar, coded->chroma_pp_v, coded->phase_deg, chroma));
  bw_node_cell (row,
                chroma_volts (apart ? "c_max_v" : "max_v", chroma, apart ? half_v : coded->max_v));
  bw_node_cell (row,
                chroma_volts (apart ? "c_min_v" : "min_v", chroma, apart ? -half_v : coded->min_v));
  if (apart)
    {
      bw_node_member (row, millivolts ("max_v", coded->luma_v));
      bw_node_member (row, millivolts ("min_v", coded->luma_v));
    }
}

static BwNode *
coded_table (BwNode *to, const char *title, gboolean apart)
{
  BwNode *table = bw_node_table (to, "bars", title);

  table->order = "name luma_v chroma_pp_v phase_deg max_v min_v c_max_v c_min_v";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("bar"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, apart ? _ ("Y") : _ ("luma"), "mV");
  bw_node_column (table, BW_COLUMN_NUMBERS, apart ? _ ("C p-p") : _ ("chroma p-p"), "mV");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("phase"), "°");
  bw_node_column (table, BW_COLUMN_NUMBERS, apart ? _ ("C highest") : _ ("highest"), "mV");
  bw_node_column (table, BW_COLUMN_NUMBERS, apart ? _ ("C lowest") : _ ("lowest"), "mV");
  return table;
}

/* The keys of one level on each conductor. */
static const char *const level_keys[BW_N_CONDUCTORS] = {
  [BW_CONDUCTOR_R] = "r_v",   [BW_CONDUCTOR_G] = "g_v",   [BW_CONDUCTOR_B] = "b_v",
  [BW_CONDUCTOR_Y] = "y_v",   [BW_CONDUCTOR_PB] = "pb_v", [BW_CONDUCTOR_PR] = "pr_v",
  [BW_CONDUCTOR_VIDEO] = "v",
};

static BwNode *
plain_table (BwNode *to, const char *title, guint conductors)
{
  BwNode *table = bw_node_table (to, "bars", title);

  bw_node_column (table, BW_COLUMN_WORDS, _ ("bar"), NULL);
  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    if (conductors & BW_BIT (c))
      bw_node_column (table, BW_COLUMN_NUMBERS, bw_kind_label (&bw_conductors, c), "mV");
  return table;
}

#define RGB (BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_G) | BW_BIT (BW_CONDUCTOR_B))
#define COMPONENT (BW_BIT (BW_CONDUCTOR_Y) | BW_BIT (BW_CONDUCTOR_PB) | BW_BIT (BW_CONDUCTOR_PR))

/* The bars of a standard; of one without chroma luma alone. */
static void
add_standard_bars (BwNode *to, const BwLevelsAsk *ask)
{
  static const BwConductor component[] = { BW_CONDUCTOR_Y, BW_CONDUCTOR_PB, BW_CONDUCTOR_PR };
  static const BwConductor rgb[] = { BW_CONDUCTOR_R, BW_CONDUCTOR_G, BW_CONDUCTOR_B };
  gboolean parts = ask->signal == BW_SIGNAL_COMPONENT, coded = bw_signal_is_coded (ask->signal);
  BwNode *table = coded ? coded_table (to, NULL, ask->signal == BW_SIGNAL_YC)
                        : plain_table (to, NULL, parts ? COMPONENT : RGB);

  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwBarLevels levels;
      BwNode *row = bw_node_row (table);
      bw_bar_levels (ask->system, ask->bars, bar, &levels);
      if (coded)
        {
          add_coded_bar (row, bar, &levels.coded, ask->signal == BW_SIGNAL_YC,
                         bw_system_has_phase (ask->system));
          continue;
        }
      bw_node_cell (row, bw_value_kind ("name", &bw_bars, bar));
      for (guint i = 0; i < 3; i++)
        bw_node_cell (row, millivolts (level_keys[parts ? component[i] : rgb[i]],
                                       parts ? levels.component_v[i] : levels.rgb_v[i]));
    }
  bw_node_drop_empty_columns (table);
}

/* The levels of a standard */

static void
add_level (BwNode *to, const BwSignalLevels *levels, const char *label, const char *key,
           double volts)
{
  BwNode *figure = bw_node_figure (to, label, millivolts (key, volts));
  if (levels->volts_per_ire > 0)
    bw_node_add_value (figure, bw_value_fixed (NULL, volts / levels->volts_per_ire,
                                               BW_DIMENSION_IRE, NULL, 1));
}

/* Adds the usual burst where no standard that was read lays the burst down. */
static void
add_usual_burst (BwNode *to, const BwLevelsAsk *ask)
{
  BwWireForm form;
  bw_wire_form_standard (ask->system, ask->signal, ask->sync, BW_SHAPE_BILEVEL, &form);
  bw_synthesis_add_burst (&form);
  if (form.burst_pp_v > 0)
    bw_node_figure (to, _ ("Burst, peak to peak"),
                    bw_value_says (NULL, bw_node_print (to,
                                                        _ ("common practice, no source: as high as "
                                                           "sync, %.0f mV"),
                                                        form.burst_pp_v * 1000)));
}

static void
add_levels (BwNode *to, const BwLevelsAsk *ask)
{
  BwSignalLevels levels;

  bw_signal_levels (ask->system, ask->signal, &levels);
  bw_node_member (to, bw_value_if (levels.volts_per_ire > 0,
                                   bw_value_count ("mv_per_ire", levels.volts_per_ire * 1000)));
  add_level (to, &levels, _ ("White"), "white_v", levels.white_v);
  add_level (to, &levels, _ ("Black"), "black_v", levels.black_v);
  add_level (to, &levels, _ ("Blanking"), "blanking_v", levels.blanking_v);
  add_level (to, &levels, _ ("Sync tip"), "sync_v", levels.sync_v);
  if (levels.burst_pp_v > 0)
    add_level (to, &levels, _ ("Burst, peak to peak"), "burst_pp_v", levels.burst_pp_v);
  else
    {
      bw_node_member (to, bw_value_nothing ("burst_pp_v"));
      add_usual_burst (to, ask);
    }
  bw_node_member (to, bw_value_if (levels.volts_per_ire > 0,
                                   bw_value_count ("setup_ire", levels.setup_ire)));
  bw_node_figure (to, _ ("Subcarrier"),
                  bw_value_if (levels.subcarrier_hz > 0,
                               bw_value_quantity ("subcarrier_hz", levels.subcarrier_hz,
                                                  BW_DIMENSION_FREQUENCY, 10)));
}

/**
 * bw_levels_say:
 *
 * Adds the levels of a signal as a standard lays them down, the colour bars, and every level of
 * every conductor in every unit that it has, and what a coupling capacitor does, if there is one. Codes
 * are not rounded.
 */
void
bw_levels_say (BwNode *to, const BwLevelsAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL);
  gboolean coded = bw_signal_is_coded (ask->signal);
  BwWireForm form;

  bw_wire_form_standard (ask->system, ask->signal, ask->sync, BW_SHAPE_BILEVEL, &form);
  bw_node_say (to, BW_SAY_NOTE, NULL,
               bw_node_print (to, _ ("%1$s, %2$s, across 75 Ω, above blanking"),
                              bw_kind_label (&bw_colour_systems, ask->system),
                              bw_kind_label (&bw_signals, ask->signal)));
  bw_node_member (to, bw_value_kind ("system", &bw_colour_systems, ask->system));
  bw_node_member (to, bw_value_kind ("kind", &bw_signals, ask->signal));
  add_levels (to, ask);
  add_standard_bars (to, ask);
  if (coded && !bw_system_has_phase (ask->system))
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 _ ("This system has no chroma of a fixed amplitude: luma alone."));
  if (coded && bw_system_alternates (ask->system))
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 _ ("On alternate lines the phase is mirrored: 360° minus the phase shown."));
  bw_node_member (to, bw_value_kind ("sync", &bw_sync_kinds, ask->sync));
  add_conductors (to, &form, ask->bars, NULL, ask->tell_conductors);
  bw_coupling_say (to, &form, &ask->coupling);
}

/* The levels of a source, as they are with a load */

static void
colour_at (const BwWireForm *form, BwConductor conductor, BwBarsForm bars, BwBar bar, double gain,
           BwWireColour *colour)
{
  BwRgb rgb;
  bw_bar_rgb (bar, bars, &rgb);
  bw_wire_colour (form, conductor, &rgb, colour);
  *colour = (BwWireColour){ gain * colour->base_v, gain * colour->u_v, gain * colour->v_v };
}

/* Luma, and the subcarrier on it: in Y/C on two conductors, in composite on one. */
static void
coded_here (const BwWireForm *form, const BwLevelsHere *here, BwBar bar, BwCodedLevels *coded)
{
  gboolean apart = form->signal == BW_SIGNAL_YC;
  BwWireColour luma, chroma;

  colour_at (form, apart ? BW_CONDUCTOR_Y : BW_CONDUCTOR_VIDEO, here->bars, bar, here->gain, &luma);
  colour_at (form, apart ? BW_CONDUCTOR_C : BW_CONDUCTOR_VIDEO, here->bars, bar, here->gain,
             &chroma);
  double amplitude_v = hypot (chroma.u_v, chroma.v_v);
  double phase_deg = atan2 (chroma.v_v, chroma.u_v) * 180 / G_PI;
  *coded = (BwCodedLevels){ .luma_v = luma.base_v,
                            .chroma_pp_v = amplitude_v > SAME_V ? 2 * amplitude_v : 0,
                            .phase_deg = phase_deg < 0 ? phase_deg + 360 : phase_deg,
                            .max_v = luma.base_v + amplitude_v,
                            .min_v = luma.base_v - amplitude_v };
}

static guint
picture_conductors (const BwWireForm *form)
{
  guint all = bw_signal_conductors (form->signal, form->sync), picture = 0;

  if (form->signal == BW_SIGNAL_RGB)
    return RGB;
  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    if ((all & BW_BIT (c)) && !bw_conductor_is_sync_alone (c) && c != BW_CONDUCTOR_C)
      picture |= BW_BIT (c);
  return picture;
}

static void
add_plain_here (BwNode *row, const BwWireForm *form, const BwLevelsHere *here, BwBar bar,
                guint conductors)
{
  bw_node_cell (row, bw_value_kind ("name", &bw_bars, bar));
  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    if (conductors & BW_BIT (c))
      {
        BwWireColour colour;
        colour_at (form, c, here->bars, bar, here->gain, &colour);
        bw_node_cell (row, millivolts (level_keys[c], colour.base_v));
      }
}

/* The subcarrier of SECAM has no phase that stands for a colour, and is left out. */
static void
add_bars_here (BwNode *to, const BwWireForm *form, const BwLevelsHere *here)
{
  const char *title = here->bars == BW_BARS_100  ? _ ("Colour bars at 100 %, as they are here")
                      : here->bars == BW_BARS_75 ? _ ("Colour bars at 75 %, as they are here")
                                                 : _ ("EBU bars, 100/0/75/0, as they are here");
  gboolean apart = form->signal == BW_SIGNAL_YC;
  gboolean coded = bw_signal_is_coded (form->signal) && bw_system_has_phase (form->system);
  guint conductors = picture_conductors (form);
  BwNode *table = coded ? coded_table (to, title, apart) : plain_table (to, title, conductors);

  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwNode *row = bw_node_row (table);
      BwCodedLevels levels;
      if (coded)
        coded_here (form, here, bar, &levels);
      if (coded)
        add_coded_bar (row, bar, &levels, apart, TRUE);
      else
        add_plain_here (row, form, here, bar, conductors);
    }
}

static const char *
load_words (BwNode *to, double load_ohm, double gain)
{
  const BwValue ratio = bw_value_number (NULL, gain, 3);
  const BwValue db = bw_value_number (NULL, 20 * log10 (gain), 1);
  char mark = bw_result_mark (to->result);
  const char *ohm = isinf (load_ohm) ? _ ("none")
                                     : bw_node_quantity (to, load_ohm, BW_DIMENSION_RESISTANCE, 4);

  if (bw_near (gain, 1, 1e-6))
    return bw_node_print (to, _ ("%s: the levels are right"), ohm);
  return bw_node_print (to, _ ("%1$s: every level × %2$s (%3$s\u00a0dB)"), ohm,
                        bw_node_take (to, bw_value_text (&ratio, mark)),
                        bw_node_take (to, bw_value_text (&db, mark)));
}

/**
 * bw_wire_say:
 *
 * Adds what the outputs work into and what that does to the levels, every level of every conductor
 * as it should be across its load and as it is here, the colour bars as they are here, and what a
 * coupling capacitor does, if there is one.
 */
void
bw_wire_say (BwNode *to, const BwWireForm *form, const BwLevelsHere *here)
{
  g_return_if_fail (to != NULL && form != NULL && here != NULL);
  gboolean own_sync = form->sync == BW_SYNC_SEPARATE || form->sync == BW_SYNC_COMPOSITE;

  bw_node_figure (to, _ ("Load"),
                  bw_value_says (NULL, load_words (to, here->load_ohm, here->gain)));
  if (own_sync)
    bw_node_figure (to, _ ("Load of sync"),
                    bw_value_says (NULL, load_words (to, here->sync_load_ohm, here->sync_gain)));
  bw_node_figure (to, _ ("Levels"),
                  bw_value_says (NULL, _ ("above blanking; of the source as entered")));
  bw_node_figure (to, _ ("Limits"),
                  bw_value_says (NULL, here->limits != NULL
                                           ? here->limits->source
                                           : _ ("none are laid down here for this signal")));
  add_conductors (to, form, here->bars, here, TRUE);
  if (here->bars < BW_N_BARS_FORMS)
    add_bars_here (to, form, here);
  bw_coupling_say (to, form, &here->coupling);
}
