/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "figures.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/figure-table.h"
#include "app/widgets/scope-text.h"
#include "core/levels/units.h"

#define NOTHING "–"
#define SAME_V 1e-6

/* Levels */

typedef enum
{
  LEVEL_WHITE,
  LEVEL_BLACK,
  LEVEL_BLANKING,
  LEVEL_SYNC_LOW,
  LEVEL_SYNC_HIGH,
  LEVEL_BURST,
  LEVEL_HIGHEST,
  LEVEL_LOWEST,
  N_LEVELS
} Level;

static const char *const level_names[N_LEVELS] = {
  [LEVEL_WHITE] = N_ ("white"),
  [LEVEL_BLACK] = N_ ("black"),
  [LEVEL_BLANKING] = N_ ("blanking"),
  [LEVEL_SYNC_LOW] = N_ ("sync tip"),
  [LEVEL_SYNC_HIGH] = N_ ("sync, highest"),
  [LEVEL_BURST] = N_ ("burst, p-p"),
  [LEVEL_HIGHEST] = N_ ("highest, 100 % bars"),
  [LEVEL_LOWEST] = N_ ("lowest, 100 % bars"),
};

/* Whether the conductor has the level at all. */
static gboolean
level_of (const BwWireLevels *levels, Level level, double *volts)
{
  gboolean picture = !bw_conductor_is_sync_alone (levels->conductor);
  gboolean colour_alone = bw_conductor_is_colour_alone (levels->conductor);
  const double all[N_LEVELS] = {
    [LEVEL_WHITE] = levels->white_v,         [LEVEL_BLACK] = levels->black_v,
    [LEVEL_BLANKING] = levels->blanking_v,   [LEVEL_SYNC_LOW] = levels->sync_low_v,
    [LEVEL_SYNC_HIGH] = levels->sync_high_v, [LEVEL_BURST] = levels->burst_pp_v,
    [LEVEL_HIGHEST] = levels->highest_v,     [LEVEL_LOWEST] = levels->lowest_v,
  };

  *volts = all[level];
  if (level == LEVEL_SYNC_LOW || level == LEVEL_SYNC_HIGH)
    return fabs (*volts - levels->blanking_v) > SAME_V;
  if (level == LEVEL_BURST)
    return *volts > 0;
  if (level == LEVEL_WHITE || level == LEVEL_BLACK)
    return picture && !colour_alone;
  if (level == LEVEL_HIGHEST)
    return picture && (colour_alone || *volts > levels->white_v + SAME_V);
  if (level == LEVEL_LOWEST)
    return picture && (colour_alone || *volts < levels->black_v - SAME_V);
  return TRUE;
}

/* Which units the columns have: those that any conductor of the form has. */
typedef struct
{
  gboolean ire;
  gboolean percent; /* and codes */
} Units;

static Units
units_of (const BwWireForm *form, const BwWireLevels *levels, guint n)
{
  Units units = { FALSE, form->signal == BW_SIGNAL_RGB || form->signal == BW_SIGNAL_COMPONENT };
  for (guint i = 0; i < n; i++)
    units.ire |= levels[i].volts_per_ire > 0;
  return units;
}

static void
add_unit (BwTableLine *line, const BwLevelScale *scale, double volts, BwLevelUnit unit)
{
  double value;
  gboolean known = bw_level_convert (scale, volts, BW_LEVEL_VOLTS, unit, &value, NULL);
  if (!known)
    bw_table_line_add (line, g_strdup (NOTHING));
  else if (unit == BW_LEVEL_CODE_8)
    bw_table_line_add (line, bw_scope_number (value, bw_near (value, round (value), 0.05) ? 0 : 1));
  else
    bw_table_line_add (line, bw_scope_number (unit == BW_LEVEL_VOLTS ? value * 1e3 : value, 1));
}

/* ITU-R BT.601 has no codes for sync and burst. */
static gboolean
is_coded_level (Level level)
{
  return level != LEVEL_SYNC_LOW && level != LEVEL_SYNC_HIGH && level != LEVEL_BURST;
}

static void
add_level (GPtrArray *lines, const BwLevelScale *scale, const Units *units, Level level,
           double volts, double gain)
{
  gboolean alone = !bw_level_has_unit (scale, BW_LEVEL_PERCENT);
  gboolean rest = alone && level == LEVEL_BLANKING;
  BwTableLine *line = bw_table_lines_add (lines, BW_LINE_FIGURES,
                                          rest ? _ ("at rest") : _ (level_names[level]));
  const BwLevelScale none = { 0 };

  add_unit (line, scale, volts, BW_LEVEL_VOLTS);
  if (units->ire)
    add_unit (line, scale, volts, BW_LEVEL_IRE);
  if (units->percent)
    {
      add_unit (line, scale, volts, BW_LEVEL_PERCENT);
      add_unit (line, is_coded_level (level) ? scale : &none, volts, BW_LEVEL_CODE_8);
    }
  add_unit (line, scale, volts * gain, BW_LEVEL_VOLTS);
  if (units->ire)
    add_unit (line, scale, volts * gain, BW_LEVEL_IRE);
}

static void
add_head (GPtrArray *lines, const Units *units)
{
  BwTableLine *head = bw_table_lines_add (lines, BW_LINE_HEAD, _ ("level"));

  bw_table_line_add (head, g_strdup (_ ("should be\nmV")));
  if (units->ire)
    bw_table_line_add (head, g_strdup (_ ("IRE")));
  if (units->percent)
    {
      bw_table_line_add (head, g_strdup (_ ("%\nof white")));
      bw_table_line_add (head, g_strdup (_ ("8-bit\ncode")));
    }
  bw_table_line_add (head, g_strdup (_ ("is here\nmV")));
  if (units->ire)
    bw_table_line_add (head, g_strdup (_ ("IRE")));
}

/* Conductors with the same levels share their lines. */
static gboolean
same_levels (const BwWireLevels *a, const BwWireLevels *b)
{
  const double levels[][2] = {
    { a->black_v, b->black_v },       { a->white_v, b->white_v },
    { a->lowest_v, b->lowest_v },     { a->highest_v, b->highest_v },
    { a->sync_low_v, b->sync_low_v }, { a->sync_high_v, b->sync_high_v },
    { a->blanking_v, b->blanking_v },
    { a->burst_pp_v, b->burst_pp_v }, { a->volts_per_ire, b->volts_per_ire },
  };
  if (bw_conductor_is_colour_alone (a->conductor) != bw_conductor_is_colour_alone (b->conductor)
      || bw_conductor_is_sync_alone (a->conductor) != bw_conductor_is_sync_alone (b->conductor))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (levels); i++)
    if (fabs (levels[i][0] - levels[i][1]) > SAME_V)
      return FALSE;
  return TRUE;
}

/* The first @n conductors, and what their IRE is. */
static void
add_group (GPtrArray *lines, const BwWireLevels *levels, guint n)
{
  g_autoptr (GString) name = g_string_new (NULL);
  g_autofree char *unit = bw_scope_number (levels->volts_per_ire * 1e3, 3);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (name, "%s%s", i > 0 ? ", " : "",
                            bw_kind_label (&bw_conductors, levels[i].conductor));
  if (levels->volts_per_ire > 0)
    g_string_append_printf (name, _ (", where 1\u00a0IRE is %s\u00a0mV"), unit);
  bw_table_lines_add (lines, BW_LINE_GROUP, name->str);
}

/**
 * bw_levels_lines:
 *
 * Returns: (transfer full) (element-type BwTableLine): every level of every conductor, as it should
 *   be across its load and as it is with the load given; in mV, and in IRE, in per cent of white and
 *   as a code of ITU-R BT.601 where the conductor has them
 */
GPtrArray *
bw_levels_lines (const BwWireForm *form, const BwLevelsLoad *video, const BwLevelsLoad *own_sync)
{
  GPtrArray *lines = bw_table_lines_new ();
  BwWireLevels levels[BW_N_CONDUCTORS];
  guint n = bw_wire_levels (form, levels);
  const Units units = units_of (form, levels, n);

  add_head (lines, &units);
  for (guint i = 0, next; i < n; i = next)
    {
      gboolean own = bw_conductor_is_sync_alone (levels[i].conductor);
      double gain = bw_levels_gain (own ? own_sync : video), volts;
      BwLevelScale scale;

      for (next = i + 1; next < n && same_levels (&levels[i], &levels[next]);)
        next++;
      bw_level_scale (form, &levels[i], &scale);
      add_group (lines, &levels[i], next - i);
      for (Level level = 0; level < N_LEVELS; level++)
        if (level_of (&levels[i], level, &volts))
          add_level (lines, &scale, &units, level, volts, gain);
    }
  return lines;
}

/* Bars */

static void
add_mv (BwTableLine *line, double volts)
{
  bw_table_line_add (line, bw_scope_number (volts * 1e3, 1));
}

static void
add_heads (GPtrArray *lines, const char *const heads[])
{
  BwTableLine *head = bw_table_lines_add (lines, BW_LINE_HEAD, _ (heads[0]));
  for (guint i = 1; heads[i] != NULL; i++)
    bw_table_line_add (head, g_strdup (_ (heads[i])));
}

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
add_coded (GPtrArray *lines, const BwWireForm *form, BwBarsForm bars, double gain)
{
  static const char *const heads[] = { N_ ("bar"),
                                       N_ ("luma\nmV"),
                                       N_ ("chroma\nmV p-p"),
                                       N_ ("phase\n°"),
                                       N_ ("highest\nmV"),
                                       N_ ("lowest\nmV"),
                                       NULL };
  gboolean apart = form->signal == BW_SIGNAL_YC;

  add_heads (lines, heads);
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwTableLine *line = bw_table_lines_add (lines, BW_LINE_FIGURES,
                                              bw_kind_label (&bw_bars, bar));
      BwWireColour luma, chroma;
      colour_at (form, apart ? BW_CONDUCTOR_Y : BW_CONDUCTOR_VIDEO, bars, bar, gain, &luma);
      colour_at (form, apart ? BW_CONDUCTOR_C : BW_CONDUCTOR_VIDEO, bars, bar, gain, &chroma);
      double amplitude_v = hypot (chroma.u_v, chroma.v_v);
      double phase_deg = atan2 (chroma.v_v, chroma.u_v) * 180 / G_PI;
      add_mv (line, luma.base_v);
      add_mv (line, 2 * amplitude_v);
      bw_table_line_add (line,
                         amplitude_v > 1e-6
                             ? bw_scope_number (phase_deg < 0 ? phase_deg + 360 : phase_deg, 1)
                             : g_strdup (NOTHING));
      add_mv (line, (apart ? 0 : luma.base_v) + amplitude_v);
      add_mv (line, (apart ? 0 : luma.base_v) - amplitude_v);
    }
}

/* One level on each of these conductors. */
static void
add_plain (GPtrArray *lines, const BwWireForm *form, BwBarsForm bars, double gain, guint conductors)
{
  BwTableLine *head = bw_table_lines_add (lines, BW_LINE_HEAD, _ ("bar"));

  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    if (conductors & BW_BIT (c))
      bw_table_line_add (head, g_strdup_printf (_ ("%s\nmV"), bw_kind_label (&bw_conductors, c)));
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwTableLine *line = bw_table_lines_add (lines, BW_LINE_FIGURES,
                                              bw_kind_label (&bw_bars, bar));
      for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
        if (conductors & BW_BIT (c))
          {
            BwWireColour colour;
            colour_at (form, c, bars, bar, gain, &colour);
            add_mv (line, colour.base_v);
          }
    }
}

static gboolean
is_coded (const BwWireForm *form)
{
  return (form->signal == BW_SIGNAL_COMPOSITE || form->signal == BW_SIGNAL_YC)
         && bw_system_has_phase (form->system);
}

static guint
picture_conductors (const BwWireForm *form)
{
  const guint rgb = BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_G) | BW_BIT (BW_CONDUCTOR_B);
  guint all = bw_signal_conductors (form->signal, form->sync);
  guint picture = 0;

  if (form->signal == BW_SIGNAL_RGB)
    return rgb;
  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    if ((all & BW_BIT (c)) && !bw_conductor_is_sync_alone (c) && c != BW_CONDUCTOR_C)
      picture |= BW_BIT (c);
  return picture;
}

/**
 * bw_bars_lines:
 *
 * Returns: (transfer full) (element-type BwTableLine): each colour bar, as it is with the load given.
 *   The subcarrier of SECAM has no phase that stands for a colour, and is left out
 */
GPtrArray *
bw_bars_lines (const BwWireForm *form, BwBarsForm bars, const BwLevelsLoad *video)
{
  GPtrArray *lines = bw_table_lines_new ();
  double gain = bw_levels_gain (video);
  const char *words = bars == BW_BARS_100 ? _ ("Colour bars at 100 %, as they are here")
                                          : _ ("Colour bars at 75 %, as they are here");

  bw_table_lines_add (lines, BW_LINE_GROUP, words);
  if (is_coded (form))
    add_coded (lines, form, bars, gain);
  else
    add_plain (lines, form, bars, gain, picture_conductors (form));
  return lines;
}

/* Load */

static char *
ohm_text (const BwLevelsLoad *load)
{
  double gain = bw_levels_gain (load);
  g_autofree char *ratio = bw_scope_number (gain, 3);
  g_autofree char *db = bw_scope_number (20 * log10 (gain), 1);
  g_autofree char *ohm = isinf (load->load_ohm)
                             ? g_strdup (_ ("none"))
                             : bw_quantity_format (load->load_ohm, BW_DIMENSION_RESISTANCE, 4,
                                                   bw_quantity_locale_mark ());
  if (bw_near (gain, 1, 1e-6))
    return g_strdup_printf (_ ("%s: the levels are right"), ohm);
  return g_strdup_printf (_ ("%s: every level × %s (%s\u00a0dB)"), ohm, ratio, db);
}

/**
 * bw_load_figures:
 * @limits: (nullable): that the drawing shows
 *
 * Returns: (transfer full) (element-type BwTableFigure): what the outputs work into, what that does
 *   to the levels, and where the levels come from
 */
GPtrArray *
bw_load_figures (const BwWireForm *form, const BwLevelsLoad *video, const BwLevelsLoad *own_sync,
                 const BwStandardLimits *limits)
{
  GPtrArray *figures = bw_figures_new ();
  g_autofree char *load = ohm_text (video);
  g_autofree char *sync_load = ohm_text (own_sync);

  g_ptr_array_add (figures, bw_figure_new (_ ("Load"), NULL, load));
  if (form->sync == BW_SYNC_SEPARATE || form->sync == BW_SYNC_COMPOSITE)
    g_ptr_array_add (figures, bw_figure_new (_ ("Load of sync"), NULL, sync_load));
  g_ptr_array_add (figures, bw_figure_new (_ ("Levels"), NULL,
                                           _ ("above blanking; of the source as entered")));
  g_ptr_array_add (figures,
                   bw_figure_new (_ ("Limits"), NULL,
                                  limits != NULL ? limits->source
                                                 : _ ("none are laid down here for this signal")));
  return figures;
}
