/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* The dimension of the burst, and the room for its label. */

/* Whether the line that is drawn has the colour bars. */
gboolean
bw_levels_has_bars (const BwLevelsLayout *layout)
{
  const BwLevelsView *what = layout->what;
  return bw_levels_model_case (layout->model)->content == BW_CONTENT_BARS
         && what->span == BW_LEVELS_LINE && bw_levels_model_has_picture (layout->model, what->line);
}

/* Where its dimension line stands; NAN if the burst is not shown. */
double
bw_levels_burst_x (const BwLevelsLayout *layout, double *burst_end_x)
{
  BwRange burst_s;
  if (!bw_levels_model_burst (layout->model, &burst_s) || layout->what->span != BW_LEVELS_LINE
      || burst_s.low < layout->across.from)
    return NAN;
  *burst_end_x = bw_levels_x (layout, burst_s.high);
  double x = *burst_end_x + 0.7 * layout->canvas->text_height;
  return x < layout->right ? x : (double) NAN;
}

/* Where bar number @bar of the picture begins, or the panel ends. */
static double
bar_x (const BwLevelsLayout *layout, guint bar)
{
  const BwLineShape *shape = bw_levels_model_shape (layout->model);
  double bar_s = bw_line_shape_length (shape, BW_INTERVAL_ACTIVE) / BW_N_BARS;
  double x = bw_levels_x (layout, shape->start_s[BW_INTERVAL_ACTIVE] + bar * bar_s);
  return bw_levels_has_bars (layout) ? fmin (x, layout->right) : layout->right;
}

/* Composite has room under blanking behind the burst, where the bars are bright; C over the burst
 * and the white bar. */
static BwBox
burst_box (const BwLevelsLayout *layout, const BwLevelsPanel *panel, const char *text)
{
  BwCanvas *canvas = layout->canvas;
  double end_x, x = bw_levels_burst_x (layout, &end_x);
  double left = layout->left + canvas->pad / 2, top_v = panel->levels.burst_pp_v / 2 * panel->gain;
  BwBox box = bw_canvas_measure (canvas, text);

  box.x = x + canvas->pad / 2;
  box.y = bw_levels_y (panel, 0) + canvas->pad / 3;
  if (panel->levels.conductor == BW_CONDUCTOR_C)
    {
      box.x = fmax (fmin (x, bar_x (layout, BW_BAR_YELLOW) - canvas->pad) - box.width, left);
      box.y = bw_levels_y (panel, top_v) - canvas->pad / 2 - box.height;
    }
  return box;
}

void
bw_levels_claim_burst (BwLevelsLayout *layout, BwLevelsPanel *panel)
{
  BwCanvas *canvas = layout->canvas;
  gboolean is_c = panel->levels.conductor == BW_CONDUCTOR_C;
  double end_x, right = bar_x (layout, is_c ? BW_BAR_YELLOW : BW_BAR_GREEN);

  panel->burst = (BwBox){ 0 };
  if (panel->levels.burst_pp_v <= 0 || isnan (bw_levels_burst_x (layout, &end_x)))
    return;
  for (guint lines = is_c ? 2 : 1; lines <= 3 && panel->burst.width <= 0; lines++)
    {
      g_autofree char *text = bw_levels_text_burst (layout, panel, lines);
      BwBox box = burst_box (layout, panel, text);
      BwLabel label = { text, box, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT, .halo = TRUE };
      if (box.y < panel->top || box.x + box.width > right || box.y + box.height > panel->bottom)
        continue;
      if (bw_canvas_claim (canvas, &label))
        panel->burst = box;
    }
}
