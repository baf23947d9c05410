/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "draw/base/scale.h"

/* In heights of a line of text. */
#define THIN 0.05
#define LEVEL 0.06
#define DATUM 0.08
#define MARK 0.4
#define KEY 2.0
#define KEY_STROKE 0.12
#define ARROW_LENGTH 0.5
#define ARROW_WIDTH 0.2

static void
add_across (const BwLevelsLayout *layout, cairo_t *cr, double y)
{
  cairo_move_to (cr, layout->left, y);
  cairo_line_to (cr, layout->right, y);
}

/* Behind the trace */

static void
fill_band (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel, double x0,
           double x1, const BwRange *volts)
{
  double y0 = bw_levels_y (panel, volts->high), y1 = bw_levels_y (panel, volts->low);
  x0 = fmax (x0, layout->left);
  x1 = fmin (x1, layout->right);
  if (x1 <= x0)
    return;
  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_OK, 0.22);
  cairo_fill (cr);
}

static void
draw_limits (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  BwRange volts, burst_s;

  for (guint kind = BW_READING_WHITE_LEVEL; kind <= BW_READING_SYNC_LEVEL; kind++)
    if (bw_levels_allowed (layout->what, panel, kind, &volts))
      fill_band (layout, cr, panel, layout->left, layout->right, &volts);
  if (layout->what->span != BW_LEVELS_LINE || !bw_levels_model_burst (layout->model, &burst_s)
      || !bw_levels_allowed (layout->what, panel, BW_READING_BURST_LEVEL, &volts))
    return;
  const BwRange up = { volts.low / 2, volts.high / 2 }, down = { -up.high, -up.low };
  double beyond_s = 0.15 * (burst_s.high - burst_s.low);
  double x0 = bw_levels_x (layout, burst_s.low - beyond_s);
  double x1 = bw_levels_x (layout, burst_s.high + beyond_s);
  fill_band (layout, cr, panel, x0, x1, &up);
  fill_band (layout, cr, panel, x0, x1, &down);
}

static void
draw_grid (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  const BwViewRange *across = &layout->across;

  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, THIN);
  for (double t = bw_first_tick (across->from, layout->tick_s); t <= across->to;
       t += layout->tick_s)
    {
      cairo_move_to (cr, bw_levels_x (layout, t), panel->top);
      cairo_line_to (cr, bw_levels_x (layout, t), panel->bottom);
    }
  cairo_stroke (cr);
}

/* The levels as they are, and, where the load is not the right one, as they should be. */
static void
draw_levels (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  double text = layout->canvas->text_height;
  const double dots[] = { 0.15 * text, 0.25 * text }, dashes[] = { 0.7 * text, 0.4 * text };

  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, THIN);
  for (guint i = 0; i < panel->n_names; i++)
    if (!panel->name[i].extreme || panel->name_box[i].width > 0)
      add_across (layout, cr, bw_levels_y (panel, panel->name[i].volts * panel->gain));
  cairo_stroke (cr);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_OK, LEVEL);
  for (guint i = 0; fabs (panel->gain - 1) > 1e-6 && i < panel->n_names; i++)
    if (!panel->name[i].extreme && fabs (panel->name[i].volts) > 1e-6)
      add_across (layout, cr, bw_levels_y (panel, panel->name[i].volts));
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Around it */

static void
draw_scales (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  double mark = MARK * layout->canvas->text_height, unit_v = panel->levels.volts_per_ire;

  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, THIN);
  cairo_rectangle (cr, layout->left, panel->top, layout->right - layout->left,
                   panel->bottom - panel->top);
  for (double v = bw_first_tick (panel->low_v, panel->tick_v); v <= panel->high_v;
       v += panel->tick_v)
    {
      cairo_move_to (cr, layout->left, bw_levels_y (panel, v));
      cairo_line_to (cr, layout->left - mark, bw_levels_y (panel, v));
    }
  cairo_stroke (cr);
  if (panel->tick_ire <= 0)
    return;
  for (double ire = bw_first_tick (panel->low_v / unit_v, panel->tick_ire);
       ire <= panel->high_v / unit_v; ire += panel->tick_ire)
    {
      cairo_move_to (cr, layout->right, bw_levels_y (panel, ire * unit_v));
      cairo_line_to (cr, layout->right + mark, bw_levels_y (panel, ire * unit_v));
    }
  cairo_stroke (cr);
}

/* From a level, straight through the scale and then to its name. */
static void
draw_leaders (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  double pad = layout->canvas->pad, text = layout->canvas->text_height;

  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, LEVEL);
  for (guint i = 0; i < panel->n_names; i++)
    {
      const BwBox *box = &panel->name_box[i];
      double y = bw_levels_y (panel, panel->name[i].volts * panel->gain);
      if (box->width <= 0)
        continue;
      cairo_move_to (cr, layout->right, y);
      cairo_line_to (cr, box->x - 1.6 * pad, y);
      cairo_line_to (cr, box->x - 0.7 * pad, box->y + text / 2);
      cairo_line_to (cr, box->x - 0.3 * pad, box->y + text / 2);
    }
  cairo_stroke (cr);
}

/* Under the conductor's name: its colour and its dash. */
static void
draw_key (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  const BwCanvas *canvas = layout->canvas;
  double y = panel->top + 1.25 * canvas->text_height;

  if (y > panel->bottom)
    return;
  bw_canvas_set_pen (layout->canvas, cr, bw_levels_ink (panel->levels.conductor), KEY_STROKE);
  bw_levels_set_dash (cr, panel->levels.conductor, canvas->text_height * 0.75);
  cairo_move_to (cr, canvas->pad, y);
  cairo_line_to (cr, canvas->pad + KEY * canvas->text_height, y);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_datum (const BwLevelsLayout *layout, cairo_t *cr)
{
  double x = bw_levels_x (layout, 0);
  if (layout->n_panels == 0 || x < layout->left - 0.01 || x > layout->right + 0.01)
    return;
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_ACCENT, DATUM);
  cairo_move_to (cr, x, layout->panel[0].top);
  cairo_line_to (cr, x, layout->panel[layout->n_panels - 1].bottom + layout->canvas->pad / 2);
  cairo_stroke (cr);
}

/* Peak to peak, with extension lines from its end. */
static void
draw_burst (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  double end_x = 0, x = bw_levels_burst_x (layout, &end_x);
  double half_v = panel->levels.burst_pp_v / 2 * panel->gain, text = layout->canvas->text_height;

  if (panel->levels.burst_pp_v <= 0 || isnan (x))
    return;
  double y0 = bw_levels_y (panel, half_v), y1 = bw_levels_y (panel, -half_v);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, THIN);
  for (guint i = 0; i < 2; i++)
    {
      cairo_move_to (cr, end_x + 0.1 * text, i == 0 ? y0 : y1);
      cairo_line_to (cr, x + 0.25 * text, i == 0 ? y0 : y1);
    }
  cairo_move_to (cr, x, y0);
  cairo_line_to (cr, x, y1);
  cairo_stroke (cr);
  if (y1 - y0 < 3 * ARROW_LENGTH * text)
    return;
  bw_canvas_draw_arrow (layout->canvas, cr, x, y0, -1, ARROW_LENGTH, ARROW_WIDTH);
  bw_canvas_draw_arrow (layout->canvas, cr, x, y1, 1, ARROW_LENGTH, ARROW_WIDTH);
}

/* Private: draws what has been laid out. */
void
bw_levels_layout_draw (const BwLevelsLayout *layout, cairo_t *cr)
{
  BwCanvas *canvas = layout->canvas;

  bw_canvas_draw_paper (canvas, cr);
  for (guint i = 0; i < layout->n_panels; i++)
    {
      const BwLevelsPanel *panel = &layout->panel[i];
      draw_grid (layout, cr, panel);
      draw_limits (layout, cr, panel);
      draw_levels (layout, cr, panel);
      draw_scales (layout, cr, panel);
      draw_leaders (layout, cr, panel);
      draw_key (layout, cr, panel);
    }
  draw_datum (layout, cr);
  for (guint i = 0; i < layout->n_panels; i++)
    {
      bw_levels_draw_trace (layout, cr, &layout->panel[i]);
      draw_burst (layout, cr, &layout->panel[i]);
    }
  bw_canvas_show_labels (canvas, cr);
}
