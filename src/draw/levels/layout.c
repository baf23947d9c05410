/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "draw/base/scale.h"

/* Where everything lies on the page. */

/* In heights of a line of text. */
#define LEAST_PANEL 2.6
#define LEAST_SYNC_PANEL 1.3
#define LEAST_WIDTH 8.0
#define GAP 0.9
#define TICK_GAP 2.0   /* least from one figure of a scale to the next */
#define TICK_WIDTH 5.0 /* likewise along the time axis */
#define MARK 0.4       /* of a scale, outside the panel */
#define KEY 2.0        /* length of the sample of a trace */

#define SYNC_SHARE 0.42 /* height of a panel of sync alone, to one with a picture */
#define STUB 0.02       /* of the line, shown before and after it */

/* Scales */

static void
init_ticks (BwLevelsLayout *layout)
{
  double text = layout->canvas->text_height;
  double per_s = (layout->across.to - layout->across.from) / MAX (layout->right - layout->left, 1);

  layout->tick_s = bw_nice_tick (TICK_WIDTH * text * per_s);
  for (guint i = 0; i < layout->n_panels; i++)
    {
      BwLevelsPanel *panel = &layout->panel[i];
      double per_v = (panel->high_v - panel->low_v) / MAX (panel->bottom - panel->top, 1);
      double volts_per_ire = panel->levels.volts_per_ire;
      panel->tick_v = bw_nice_tick (TICK_GAP * text * per_v);
      panel->tick_ire = volts_per_ire > 0 ? bw_nice_tick (TICK_GAP * text * per_v / volts_per_ire)
                                          : 0;
    }
}

/* Across the page */

static double
widest_name (BwLevelsLayout *layout)
{
  double widest = 0;
  for (guint i = 0; bw_levels_keeps (layout, BW_LEVELS_LEAVE_NAMES) && i < layout->n_panels; i++)
    for (guint k = 0; k < layout->panel[i].n_names; k++)
      {
        g_autofree char *text = bw_levels_text_level (layout, &layout->panel[i], k);
        if (text != NULL)
          widest = MAX (widest, bw_canvas_measure (layout->canvas, text).width);
      }
  return widest;
}

/* Room for the longest figure of a scale: for 1000 mV and more, one digit more. */
static double
scale_width (BwLevelsLayout *layout, gboolean ire)
{
  double largest = 0;
  for (guint i = 0; i < layout->n_panels; i++)
    {
      const BwLevelsPanel *panel = &layout->panel[i];
      if (ire && panel->levels.volts_per_ire <= 0)
        continue;
      double unit = ire ? panel->levels.volts_per_ire : 1e-3;
      largest = fmax (largest, fmax (panel->high_v, -panel->low_v) / unit);
    }
  if (largest <= 0)
    return 0;
  const char *longest = largest >= 1000 ? "\u22120000" : "\u2212000";
  return bw_canvas_measure (layout->canvas, longest).width + MARK * layout->canvas->text_height
         + layout->canvas->pad / 2;
}

static void
place_across (BwLevelsLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double key = KEY * canvas->text_height, names = widest_name (layout);

  for (guint i = 0; i < layout->n_panels; i++)
    {
      const char *label = bw_kind_label (&bw_conductors, layout->panel[i].levels.conductor);
      key = MAX (key, bw_canvas_measure (canvas, label).width);
    }
  layout->left = canvas->pad + key + canvas->pad / 2 + scale_width (layout, FALSE);
  layout->names_x = canvas->width - canvas->pad - names;
  layout->right = layout->names_x - (names > 0 ? 2 * canvas->pad : 0) - scale_width (layout, TRUE);
  layout->right = MAX (layout->right, layout->left + 1);
}

/* Down the page */

static double
panel_weight (const BwLevelsPanel *panel)
{
  double shown_v = panel->high_v - panel->low_v;
  return bw_conductor_is_sync_alone (panel->levels.conductor) ? 0 : shown_v;
}

/* Panels with a picture share one scale; those of sync alone have a height of their own. */
static void
place_down (BwLevelsLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double gap = GAP * canvas->text_height, sum = 0, y;
  guint pictures = 0;

  layout->top = canvas->pad + canvas->text_height + canvas->pad / 2;
  layout->axis_y = layout->words_y - canvas->pad - canvas->text_height;
  for (guint i = 0; i < layout->n_panels; i++)
    {
      sum += panel_weight (&layout->panel[i]);
      pictures += panel_weight (&layout->panel[i]) > 0;
    }
  guint syncs = layout->n_panels - pictures;
  double room = layout->axis_y - canvas->pad / 2 - layout->top - (layout->n_panels - 1) * gap;
  double sync_height = pictures > 0 ? SYNC_SHARE * room / (pictures + SYNC_SHARE * syncs)
                                    : room / MAX (syncs, 1);
  double for_pictures = room - syncs * sync_height;

  y = layout->top;
  for (guint i = 0; i < layout->n_panels; i++)
    {
      BwLevelsPanel *panel = &layout->panel[i];
      double weight = panel_weight (panel);
      panel->top = y;
      panel->bottom = y + MAX (weight > 0 ? for_pictures * weight / sum : sync_height, 1);
      y = panel->bottom + gap;
    }
}

void
bw_levels_place_all (BwLevelsLayout *layout)
{
  place_across (layout);
  place_down (layout);
  init_ticks (layout);
}

gboolean
bw_levels_is_large_enough (const BwLevelsLayout *layout)
{
  double text = layout->canvas->text_height;
  for (guint i = 0; i < layout->n_panels; i++)
    {
      const BwLevelsPanel *panel = &layout->panel[i];
      double least = panel_weight (panel) > 0 ? LEAST_PANEL : LEAST_SYNC_PANEL;
      if (panel->bottom - panel->top < least * text)
        return FALSE;
    }
  return layout->right - layout->left >= MAX (LEAST_WIDTH * text, 0.45 * layout->canvas->width);
}

/* From the front porch before the view's line to the sync after it, or one field from its datum on;
 * in seconds after that datum. */
void
bw_levels_whole (const BwLevelsView *what, BwViewRange *across)
{
  const BwLineShape *shape = bw_levels_model_shape (what->model);
  double stub_s = STUB * shape->period_s, least_s = 0.002 * shape->period_s;
  BwRasterFigures figures;

  bw_raster_figures (bw_levels_model_raster (what->model), &figures);
  if (what->span == BW_LEVELS_FIELD)
    bw_view_range_init (across, -figures.line_period_s,
                        figures.field_period_s + figures.line_period_s, least_s);
  else
    bw_view_range_init (across, shape->start_s[0] - stub_s,
                        shape->start_s[BW_INTERVAL_BACK_PORCH] + shape->period_s + stub_s, least_s);
}
