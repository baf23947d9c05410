/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "draw/base/scale.h"

/* The labels, each of which claims its place. */

#define MARK 0.4 /* of a scale, in heights of a line of text, outside the panel */

/* Scales */

static void
claim_number (BwLevelsLayout *layout, double value, double x, double y, double across)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *text = bw_levels_text_number (value, layout->what->mark);
  BwLabel label = { text, bw_canvas_measure (canvas, text), BW_INK_GRAPHITE_LIGHT, PANGO_ALIGN_LEFT,
                    .halo = TRUE };
  label.box.x = x - across * label.box.width;
  label.box.y = y - label.box.height / 2;
  bw_canvas_claim (canvas, &label);
}

static void
claim_scales (BwLevelsLayout *layout, const BwLevelsPanel *panel)
{
  double out = MARK * layout->canvas->text_height + layout->canvas->pad / 3;
  double unit_v = panel->levels.volts_per_ire;

  for (double v = bw_first_tick (panel->low_v, panel->tick_v); v <= panel->high_v;
       v += panel->tick_v)
    claim_number (layout, v * 1e3, layout->left - out, bw_levels_y (panel, v), 1);
  if (panel->tick_ire <= 0)
    return;
  for (double ire = bw_first_tick (panel->low_v / unit_v, panel->tick_ire);
       ire <= panel->high_v / unit_v; ire += panel->tick_ire)
    claim_number (layout, ire, layout->right + out, bw_levels_y (panel, ire * unit_v), 0);
}

/* Over the first panel that has the scale. */
static void
claim_units (BwLevelsLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double out = MARK * canvas->text_height + canvas->pad / 3, up = canvas->pad / 2;

  if (layout->n_panels > 0)
    bw_canvas_claim_at (canvas, "mV", BW_INK_GRAPHITE_LIGHT, layout->left - out, layout->top - up,
                        1, 1);
  for (guint i = 0; i < layout->n_panels; i++)
    if (layout->panel[i].tick_ire > 0)
      {
        bw_canvas_claim_at (canvas, "IRE", BW_INK_GRAPHITE_LIGHT, layout->right + out,
                            layout->panel[i].top - (i == 0 ? up : 0), 0, 1);
        return;
      }
}

static void
claim_times (BwLevelsLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwViewRange *across = &layout->across;
  gboolean ms = layout->tick_s >= 1e-4;
  double unit_s = ms ? 1e-3 : 1e-6, tick_s = layout->tick_s;

  bw_canvas_claim_at (canvas, ms ? "ms" : "µs", BW_INK_GRAPHITE_LIGHT, canvas->pad, layout->axis_y,
                      0, 0);
  for (double t = bw_first_tick (across->from, tick_s); t <= across->to; t += tick_s)
    {
      gboolean datum = fabs (t) < tick_s / 2;
      g_autofree char *text = bw_tick_text (t / unit_s, tick_s / unit_s, layout->what->mark);
      bw_canvas_claim_at (canvas, datum ? "0H" : text,
                          datum ? BW_INK_ACCENT : BW_INK_GRAPHITE_LIGHT, bw_levels_x (layout, t),
                          layout->axis_y, 0.5, 0);
    }
}

/* Names */

static void
claim_conductor (BwLevelsLayout *layout, const BwLevelsPanel *panel)
{
  BwCanvas *canvas = layout->canvas;
  double y = panel->top;
  bw_canvas_claim_at (canvas, bw_kind_label (&bw_conductors, panel->levels.conductor),
                      bw_levels_ink (panel->levels.conductor), canvas->pad, y, 0, 0);
}

/* Beside the panel, as near to their levels as they find room. */
static gboolean
claim_names (BwLevelsLayout *layout, BwLevelsPanel *panel)
{
  BwCanvas *canvas = layout->canvas;
  double starts[BW_LEVELS_NAMES_MAX], heights[BW_LEVELS_NAMES_MAX] = { 0 };
  char *text[BW_LEVELS_NAMES_MAX];
  guint n = 0, from[BW_LEVELS_NAMES_MAX];
  gboolean all = TRUE;

  for (guint i = 0; i < panel->n_names; i++)
    {
      panel->name_box[i] = (BwBox){ 0 };
      text[n] = bw_levels_text_level (layout, panel, i);
      if (text[n] == NULL)
        continue;
      heights[n] = bw_canvas_measure (canvas, text[n]).height;
      starts[n] = bw_levels_y (panel, panel->name[i].volts * panel->gain) - heights[n] / 2;
      from[n++] = i;
    }
  bw_spread (starts, heights, n, canvas->pad * 0.3, panel->top - canvas->pad * 0.8,
             panel->bottom + canvas->pad * 0.8);
  for (guint k = 0; k < n; k++)
    {
      BwBox box = bw_canvas_measure (canvas, text[k]);
      box.x = layout->names_x;
      box.y = starts[k];
      BwLabel label = { text[k], box, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT };
      gboolean claimed = bw_canvas_claim (canvas, &label);
      all &= claimed;
      panel->name_box[from[k]] = claimed ? box : (BwBox){ 0 };
      g_free (text[k]);
    }
  return all;
}

/* Over their bars, as near as they find room; none if that is not near. */
static gboolean
claim_bars (BwLevelsLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwLineShape *shape = bw_levels_model_shape (layout->model);
  double bar_s = bw_line_shape_length (shape, BW_INTERVAL_ACTIVE) / BW_N_BARS;
  double starts[BW_N_BARS], widths[BW_N_BARS], low[BW_N_BARS], high[BW_N_BARS];
  guint n = 0, from[BW_N_BARS];
  gboolean all = TRUE;

  for (guint bar = 0; bar < BW_N_BARS; bar++)
    {
      double from_s = shape->start_s[BW_INTERVAL_ACTIVE] + bar * bar_s;
      low[n] = fmax (bw_levels_x (layout, from_s), layout->left);
      high[n] = fmin (bw_levels_x (layout, from_s + bar_s), layout->right);
      if (high[n] - low[n] < canvas->text_height)
        continue;
      from[n] = bar;
      widths[n] = bw_canvas_measure (canvas, bw_kind_label (&bw_bars, bar)).width;
      starts[n] = (low[n] + high[n] - widths[n]) / 2;
      n++;
    }
  bw_spread (starts, widths, n, canvas->pad * 0.6, layout->left, layout->right);
  for (guint i = 0; i < n; i++)
    all &= starts[i] < high[i] - canvas->pad && starts[i] + widths[i] > low[i] + canvas->pad;
  for (guint i = 0; all && i < n; i++)
    all &= bw_canvas_claim_at (canvas, bw_kind_label (&bw_bars, from[i]), BW_INK_GRAPHITE_LIGHT,
                               starts[i], layout->top - canvas->pad / 2, 0, 1);
  return all;
}

gboolean
bw_levels_claim_words (BwLevelsLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_levels_text_caption (layout->what);
  g_autofree char *note = bw_levels_keeps (layout, BW_LEVELS_LEAVE_NOTE)
                              ? bw_levels_text_note (layout->what)
                              : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = bw_levels_keeps (layout, BW_LEVELS_LEAVE_LONG_CAPTION) ? 2
                                                                                                : 1,
                        .note = note,
                        .note_lines = 2,
                        .below = canvas->pad / 2 };
  return bw_canvas_claim_foot (canvas, &foot, &layout->words_y);
}

/**
 * bw_levels_claim_labels:
 *
 * Claims the places of all labels on and around the panels.
 *
 * Returns: whether those have one that can be left out by a step of #BwLevelsLeave
 */
gboolean
bw_levels_claim_labels (BwLevelsLayout *layout)
{
  gboolean all = TRUE;

  for (guint i = 0; i < layout->n_panels; i++)
    {
      claim_conductor (layout, &layout->panel[i]);
      if (bw_levels_keeps (layout, BW_LEVELS_LEAVE_NAMES))
        all &= claim_names (layout, &layout->panel[i]);
    }
  claim_units (layout);
  for (guint i = 0; i < layout->n_panels; i++)
    {
      bw_levels_claim_burst (layout, &layout->panel[i]);
      claim_scales (layout, &layout->panel[i]);
    }
  claim_times (layout);
  if (bw_levels_keeps (layout, BW_LEVELS_LEAVE_BARS) && bw_levels_has_bars (layout))
    all &= claim_bars (layout);
  return all;
}
