/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What each panel shows: the levels that have a name, and from where to where its scale goes. */

#define NEAR_V 1e-3 /* two levels with one name */
#define MARGIN 0.05 /* of a panel's height, above and below what it shows */

static void
include (BwLevelsPanel *panel, double volts)
{
  panel->low_v = fmin (panel->low_v, volts);
  panel->high_v = fmax (panel->high_v, volts);
}

static void
add_name (BwLevelsPanel *panel, const char *name, double volts, gboolean extreme)
{
  g_return_if_fail (panel->n_names < BW_LEVELS_NAMES_MAX);
  guint at = panel->n_names++;
  for (; at > 0 && panel->name[at - 1].volts < volts; at--)
    panel->name[at] = panel->name[at - 1];
  panel->name[at] = (BwLevelName){ name, volts, extreme };
}

static gboolean
differ (double a_v, double b_v)
{
  return fabs (a_v - b_v) > 1e-6;
}

/* The highest and lowest level of the bars that are drawn. */
static void
bars_extremes (const BwSynthesisCase *from, BwConductor conductor, BwRange *volts)
{
  BwRgb rgb;
  BwWireColour colour;

  *volts = (BwRange){ INFINITY, -INFINITY };
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      bw_bar_rgb (bar, from->bars, &rgb);
      bw_wire_colour (&from->form, conductor, &rgb, &colour);
      double chroma_v = hypot (colour.u_v, colour.v_v);
      volts->low = fmin (volts->low, colour.base_v - chroma_v);
      volts->high = fmax (volts->high, colour.base_v + chroma_v);
    }
}

static void
name_extremes (BwLevelsPanel *panel, const BwRange *bars_v)
{
  const BwWireLevels *levels = &panel->levels;
  double top_v = bw_conductor_is_colour_alone (levels->conductor) ? 0 : levels->white_v;
  double bottom_v = MIN (levels->blanking_v, levels->black_v);

  if (bars_v->high > top_v + NEAR_V)
    add_name (panel, _ ("highest"), bars_v->high, TRUE);
  if (bars_v->low < bottom_v - NEAR_V)
    add_name (panel, _ ("lowest"), bars_v->low, TRUE);
}

/* Of bars at 75 %. */
static void
name_white_bar (BwLevelsPanel *panel, const BwSynthesisCase *from)
{
  BwRgb rgb;
  BwWireColour colour;

  bw_bar_rgb (BW_BAR_WHITE, from->bars, &rgb);
  bw_wire_colour (&from->form, panel->levels.conductor, &rgb, &colour);
  if (!bw_conductor_is_colour_alone (panel->levels.conductor)
      && differ (colour.base_v, panel->levels.white_v))
    add_name (panel, _ ("white bar"), colour.base_v, TRUE);
}

static void
name_picture (BwLevelsPanel *panel, const BwSynthesisCase *from)
{
  const BwWireLevels *levels = &panel->levels;
  BwRange bars_v;

  add_name (panel, _ ("blanking"), levels->blanking_v, FALSE);
  if (!bw_conductor_is_colour_alone (levels->conductor))
    add_name (panel, _ ("white"), levels->white_v, FALSE);
  if (differ (levels->black_v, levels->blanking_v)
      && !bw_conductor_is_colour_alone (levels->conductor))
    add_name (panel, _ ("black"), levels->black_v, FALSE);
  if (levels->sync_low_v < 0)
    add_name (panel, levels->sync_high_v > 0 ? _ ("sync \u2212") : _ ("sync tip"),
              levels->sync_low_v, FALSE);
  if (levels->sync_high_v > 0)
    add_name (panel, _ ("sync +"), levels->sync_high_v, FALSE);
  if (from->content != BW_CONTENT_BARS)
    return;
  bars_extremes (from, levels->conductor, &bars_v);
  name_extremes (panel, &bars_v);
  name_white_bar (panel, from);
}

static void
name_levels (BwLevelsPanel *panel, const BwSynthesisCase *from)
{
  const BwWireLevels *levels = &panel->levels;
  if (!bw_conductor_is_sync_alone (levels->conductor))
    {
      name_picture (panel, from);
      return;
    }
  add_name (panel, _ ("rest"), levels->blanking_v, FALSE);
  if (differ (levels->sync_low_v, levels->blanking_v))
    add_name (panel, _ ("pulse"), levels->sync_low_v, FALSE);
  if (differ (levels->sync_high_v, levels->blanking_v))
    add_name (panel, _ ("pulse"), levels->sync_high_v, FALSE);
}

/* What the standard allows of a level of this conductor, across 75 Ω and above blanking. */
gboolean
bw_levels_allowed (const BwLevelsView *what, const BwLevelsPanel *panel, BwReadingKind kind,
                   BwRange *volts)
{
  const BwWireLevels *levels = &panel->levels;
  gboolean has = FALSE;

  if (what->limits == NULL || what->limits->at[kind].n < 2)
    return FALSE;
  if (kind == BW_READING_BURST_LEVEL)
    has = levels->burst_pp_v > 0;
  else if (kind == BW_READING_SYNC_LEVEL)
    has = levels->sync_low_v < 0 && !bw_conductor_is_sync_alone (levels->conductor);
  else
    has = !bw_conductor_is_colour_alone (levels->conductor)
          && !bw_conductor_is_sync_alone (levels->conductor);
  *volts = what->limits->at[kind].at[1];
  if (kind == BW_READING_SYNC_LEVEL)
    *volts = (BwRange){ -volts->high, -volts->low };
  return has;
}

/* One line of picture, whatever is drawn: scales do not jump from line to line. */
static BwLevelsWindow
scale_window (BwLevelsModel *model)
{
  const BwLineShape *shape = bw_levels_model_shape (model);
  int line = bw_levels_model_picture_line (model);
  return (BwLevelsWindow){ bw_levels_model_start_s (model, 0, line), shape->start_s[0],
                           shape->start_s[0] + shape->period_s };
}

/* What is shown: every level that has a name, as it is and as it should be, the burst, what is
 * allowed, and whatever a line of picture reaches. */
static void
init_scale (BwLevelsPanel *panel, const BwLevelsLayout *layout)
{
  const BwLevelsWindow window = scale_window (layout->model);
  double burst_v = panel->levels.burst_pp_v / 2;
  BwRange volts;

  panel->low_v = panel->high_v = 0;
  for (guint i = 0; i < panel->n_names; i++)
    {
      include (panel, panel->name[i].volts);
      include (panel, panel->name[i].volts * panel->gain);
    }
  include (panel, burst_v * MAX (panel->gain, 1));
  include (panel, -burst_v * MAX (panel->gain, 1));
  for (guint kind = BW_READING_WHITE_LEVEL; kind <= BW_READING_SYNC_LEVEL; kind++)
    if (bw_levels_allowed (layout->what, panel, kind, &volts))
      {
        include (panel, volts.low);
        include (panel, volts.high);
      }
  bw_levels_extent (layout->model, panel->levels.conductor, &window, &volts);
  include (panel, volts.low * panel->gain);
  include (panel, volts.high * panel->gain);
  if (panel->n_names == 1) /* nothing but blanking: as much as bars would need */
    {
      include (panel, panel->levels.lowest_v);
      include (panel, panel->levels.highest_v);
    }
  if (panel->high_v - panel->low_v < NEAR_V)
    include (panel, panel->low_v + 0.1);
  double margin_v = MARGIN * (panel->high_v - panel->low_v);
  panel->low_v -= margin_v;
  panel->high_v += margin_v;
}

/* The whole line or field, and what of it is shown. */
static void
init_window (BwLevelsLayout *layout)
{
  const BwLevelsView *what = layout->what;
  bw_levels_whole (what, &layout->across);
  layout->window = (BwLevelsWindow){ bw_levels_model_start_s (what->model, what->frame, what->line),
                                     layout->across.low, layout->across.high };
  if (what->across != NULL)
    layout->across = *what->across;
}

/* Private: what follows from the view alone, before there is a page. */
void
bw_levels_init_panels (BwLevelsLayout *layout)
{
  const BwLevelsView *what = layout->what;
  const BwSynthesisCase *from = bw_levels_model_case (layout->model);
  const BwWireLevels *levels;
  guint n = bw_levels_model_levels (layout->model, &levels);

  init_window (layout);
  for (guint i = 0; i < n; i++)
    {
      if (what->show != 0 && !(what->show & BW_BIT (levels[i].conductor)))
        continue;
      BwLevelsPanel *panel = &layout->panel[layout->n_panels++];
      gboolean own = bw_conductor_is_sync_alone (levels[i].conductor);
      *panel = (BwLevelsPanel){ .levels = levels[i] };
      panel->gain = bw_levels_gain (own ? &what->own_sync : &what->video);
      name_levels (panel, from);
      init_scale (panel, layout);
    }
}
