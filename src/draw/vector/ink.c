/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* In heights of a line of text. */
#define THIN 0.05
#define AXIS 0.07
#define STROKE 0.09
#define BURST 0.13
#define MARK 0.35

static void
set_dashes (const BwVectorLayout *layout, cairo_t *cr, gboolean dashed)
{
  double text = layout->canvas->text_height;
  const double dashes[] = { 0.45 * text, 0.3 * text };
  cairo_set_dash (cr, dashes, dashed ? G_N_ELEMENTS (dashes) : 0, 0);
}

static void
add_line (const BwVectorLayout *layout, cairo_t *cr, double u0_v, double v0_v, double u1_v,
          double v1_v)
{
  cairo_move_to (cr, bw_vector_x (layout, u0_v), bw_vector_y (layout, v0_v));
  cairo_line_to (cr, bw_vector_x (layout, u1_v), bw_vector_y (layout, v1_v));
}

/* A square grid inside the ring, and the two axes. */
static void
draw_grid (const BwVectorLayout *layout, cairo_t *cr)
{
  double full_v = layout->full_v;

  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, THIN);
  for (double v = layout->tick_v; v < full_v; v += layout->tick_v)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        double reach_v = sqrt (full_v * full_v - v * v);
        add_line (layout, cr, sign * v, -reach_v, sign * v, reach_v);
        add_line (layout, cr, -reach_v, sign * v, reach_v, sign * v);
      }
  cairo_stroke (cr);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, AXIS);
  add_line (layout, cr, -full_v, 0, full_v, 0);
  add_line (layout, cr, 0, -full_v, 0, full_v);
  cairo_stroke (cr);
}

static void
draw_ring (const BwVectorLayout *layout, cairo_t *cr)
{
  double mark = MARK * layout->canvas->text_height;

  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, AXIS);
  cairo_new_sub_path (cr);
  cairo_arc (cr, layout->x, layout->y, layout->radius, 0, 2 * G_PI);
  for (int degrees = 0; degrees < 360; degrees += 5)
    {
      double angle = degrees * G_PI / 180;
      double inner = layout->radius
                     - mark
                           * (degrees % 30 == 0   ? 1
                              : degrees % 10 == 0 ? 0.6
                                                  : 0.3);
      cairo_move_to (cr, layout->x + layout->radius * cos (angle),
                     layout->y - layout->radius * sin (angle));
      cairo_line_to (cr, layout->x + inner * cos (angle), layout->y - inner * sin (angle));
    }
  cairo_stroke (cr);
}

/* A box with a cross in its middle, and a thin line to it from the middle of the plane. */
static void
draw_target (const BwVectorLayout *layout, cairo_t *cr, const BwVectorTarget *target)
{
  double half = bw_vector_box_half (layout);
  double x = bw_vector_x (layout, target->u_v), y = bw_vector_y (layout, target->v_v);

  set_dashes (layout, cr, target->switched);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, THIN);
  cairo_rectangle (cr, x - half, y - half, 2 * half, 2 * half);
  cairo_stroke (cr);
  set_dashes (layout, cr, FALSE);
  cairo_move_to (cr, x - half / 2, y);
  cairo_line_to (cr, x + half / 2, y);
  cairo_move_to (cr, x, y - half / 2);
  cairo_line_to (cr, x, y + half / 2);
  cairo_stroke (cr);
}

/* From the middle, with an arrowhead at its end. */
static void
draw_burst (const BwVectorLayout *layout, cairo_t *cr, const BwVectorTarget *target)
{
  double x = bw_vector_x (layout, target->u_v), y = bw_vector_y (layout, target->v_v);
  double angle = atan2 (y - layout->y, x - layout->x), text = layout->canvas->text_height;
  double length = 0.6 * text, half = 0.14 * text;

  set_dashes (layout, cr, target->switched);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_ACCENT, BURST);
  cairo_move_to (cr, layout->x, layout->y);
  cairo_line_to (cr, x - 0.8 * length * cos (angle), y - 0.8 * length * sin (angle));
  cairo_stroke (cr);
  set_dashes (layout, cr, FALSE);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - length * cos (angle) - half * sin (angle),
                 y - length * sin (angle) + half * cos (angle));
  cairo_line_to (cr, x - length * cos (angle) + half * sin (angle),
                 y - length * sin (angle) - half * cos (angle));
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_path (const BwVectorLayout *layout, cairo_t *cr, const GArray *path, gboolean other)
{
  if (path == NULL || path->len == 0)
    return;
  for (guint i = 0; i < path->len; i++)
    {
      const BwVectorSample *at = &g_array_index (path, BwVectorSample, i);
      cairo_line_to (cr, bw_vector_x (layout, at->u_v), bw_vector_y (layout, at->v_v));
    }
  set_dashes (layout, cr, other);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  bw_canvas_set_pen (layout->canvas, cr, other ? BW_INK_GRAPHITE_LIGHT : BW_INK_GRAPHITE,
                     other ? AXIS : STROKE);
  cairo_stroke (cr);
  set_dashes (layout, cr, FALSE);
}

static void
draw_table_rules (const BwVectorLayout *layout, cairo_t *cr)
{
  const BwBox *table = &layout->table;
  double y = table->y + 1.1 * layout->canvas->text_height;

  if (table->width <= 0)
    return;
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, AXIS);
  cairo_move_to (cr, table->x, y);
  cairo_line_to (cr, table->x + table->width, y);
  cairo_stroke (cr);
}

/* Private: draws what has been laid out. */
void
bw_vector_layout_draw (const BwVectorLayout *layout, cairo_t *cr)
{
  BwCanvas *canvas = layout->canvas;

  bw_canvas_draw_paper (canvas, cr);
  draw_grid (layout, cr);
  draw_ring (layout, cr);
  for (guint i = 0; i < layout->targets->len; i++)
    if (g_array_index (layout->targets, BwVectorTarget, i).bar < BW_N_BARS)
      draw_target (layout, cr, &g_array_index (layout->targets, BwVectorTarget, i));
  draw_path (layout, cr, layout->other, TRUE);
  draw_path (layout, cr, layout->path, FALSE);
  for (guint i = 0; i < layout->targets->len; i++)
    if (g_array_index (layout->targets, BwVectorTarget, i).bar == BW_N_BARS)
      draw_burst (layout, cr, &g_array_index (layout->targets, BwVectorTarget, i));
  draw_table_rules (layout, cr);
  bw_canvas_show_labels (canvas, cr);
}
