/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* In heights of a line of text. */
#define STROKE 0.09
#define THIN_STROKE 0.05
#define DATUM_STROKE 0.08
#define GLASS_STROKE 0.12
#define ARROW_LENGTH 0.55
#define ARROW_WIDTH 0.2
#define OVERSHOOT 0.25

/* The page that a run of intervals across and a run of intervals down have in common. */
static void
add_area (const BwMapLayout *layout, cairo_t *cr, BwMapInterval h0, BwMapInterval h1,
          BwMapInterval v0, BwMapInterval v1)
{
  const BwMapAxis *across = &layout->across, *down = &layout->down;
  double x0 = bw_map_place (across, across->start[h0]);
  double y0 = bw_map_place (down, down->start[v0]);
  double x1 = bw_map_place (across, across->start[h1]);
  double y1 = bw_map_place (down, down->start[v1]);
  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
}

static void
fill (const BwMapLayout *layout, cairo_t *cr, BwInkRole role, double alpha)
{
  bw_ink_set_alpha (cr, layout->canvas->ink, role, alpha);
  cairo_fill (cr);
}

/* Blanking, both syncs, the border, and the picture with what the glass shows of it. */
static void
draw_areas (const BwMapLayout *layout, cairo_t *cr)
{
  const BwMapInterval end = BW_N_MAP_INTERVALS, first = BW_MAP_BORDER_FIRST;
  const BwMapInterval porch = BW_MAP_FRONT_PORCH, active = BW_MAP_ACTIVE;

  add_area (layout, cr, 0, end, 0, end);
  fill (layout, cr, BW_INK_BAND, 1);
  add_area (layout, cr, 0, 1, 0, end);
  add_area (layout, cr, 1, end, 0, 1);
  fill (layout, cr, BW_INK_SYNC, 0.35);
  add_area (layout, cr, first, porch, first, porch);
  fill (layout, cr, BW_INK_RULE, 0.8);
  add_area (layout, cr, active, active + 1, active, active + 1);
  fill (layout, cr, BW_INK_PAPER, 1);
  if (!bw_map_hides (layout->what))
    return;
  cairo_save (cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  add_area (layout, cr, active, active + 1, active, active + 1);
  cairo_rectangle (cr, layout->glass.x, layout->glass.y, layout->glass.width, layout->glass.height);
  fill (layout, cr, BW_INK_GRAPHITE, 0.12);
  cairo_restore (cr);
}

static void
draw_edges (const BwMapLayout *layout, cairo_t *cr)
{
  const BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height;
  const double dashes[] = { 0.5 * text, 0.3 * text };

  bw_canvas_set_pen (canvas, cr, BW_INK_GRAPHITE, STROKE);
  add_area (layout, cr, BW_MAP_ACTIVE, BW_MAP_ACTIVE + 1, BW_MAP_ACTIVE, BW_MAP_ACTIVE + 1);
  cairo_stroke (cr);
  if (!bw_map_hides (layout->what))
    return;
  cairo_save (cr);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  bw_canvas_set_pen (canvas, cr, BW_INK_BLUE, GLASS_STROKE);
  cairo_rectangle (cr, layout->glass.x, layout->glass.y, layout->glass.width, layout->glass.height);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Inside the frame, of which only a part may be shown. */
static void
draw_map (const BwMapLayout *layout, cairo_t *cr)
{
  const BwMapAxis *across = &layout->across, *down = &layout->down;
  double width = across->place1 - across->place0, height = down->place1 - down->place0;

  cairo_save (cr);
  cairo_rectangle (cr, across->place0, down->place0, width, height);
  cairo_clip (cr);
  draw_areas (layout, cr);
  draw_edges (layout, cr);
  cairo_restore (cr);
  cairo_rectangle (cr, across->place0, down->place0, width, height);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, THIN_STROKE);
  cairo_stroke (cr);
}

static void
draw_datums (const BwMapLayout *layout, cairo_t *cr)
{
  const BwMapAxis *across = &layout->across, *down = &layout->down;
  double x = bw_map_place (across, 0), y = bw_map_place (down, 0), pad = layout->canvas->pad;

  if (x >= across->place0 - 0.01 && x <= across->place1)
    {
      cairo_move_to (cr, x, down->place0);
      cairo_line_to (cr, x, down->place1 + pad / 2);
    }
  if (y >= down->place0 - 0.01 && y <= down->place1)
    {
      cairo_move_to (cr, across->place0 - pad / 2, y);
      cairo_line_to (cr, across->place1, y);
    }
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_ACCENT, DATUM_STROKE);
  cairo_stroke (cr);
}

/* Where arrowheads have no room: a short oblique stroke. */
static void
draw_oblique (cairo_t *cr, double x, double y, double half)
{
  cairo_move_to (cr, x - half, y + half);
  cairo_line_to (cr, x + half, y - half);
  cairo_stroke (cr);
}

static void
draw_ends (const BwCanvas *canvas, cairo_t *cr, const BwMapDim *dim, double x)
{
  double text = canvas->text_height;
  if (dim->y1 - dim->y0 >= 3 * ARROW_LENGTH * text)
    {
      bw_canvas_draw_arrow (canvas, cr, x, dim->y0, -1, ARROW_LENGTH, ARROW_WIDTH);
      bw_canvas_draw_arrow (canvas, cr, x, dim->y1, 1, ARROW_LENGTH, ARROW_WIDTH);
      return;
    }
  draw_oblique (cr, x, dim->y0, 0.14 * text);
  draw_oblique (cr, x, dim->y1, 0.14 * text);
}

/* With extension lines from the edge of the map at @from_x. */
static void
draw_dim (const BwMapLayout *layout, cairo_t *cr, const BwMapDim *dim, double x, double from_x)
{
  double text = layout->canvas->text_height, direction = x > from_x ? 1 : -1;
  double start_x = from_x + direction * layout->canvas->pad / 3;
  double end_x = x + direction * OVERSHOOT * text;

  cairo_move_to (cr, start_x, dim->y0);
  cairo_line_to (cr, end_x, dim->y0);
  cairo_move_to (cr, start_x, dim->y1);
  cairo_line_to (cr, end_x, dim->y1);
  cairo_move_to (cr, x, dim->y0);
  cairo_line_to (cr, x, dim->y1);
  cairo_stroke (cr);
  draw_ends (layout->canvas, cr, dim, x);
}

/* From the middle of a dimension to its label, which may stand higher or lower. */
static void
draw_leader (const BwMapLayout *layout, cairo_t *cr, const BwMapDim *dim, double x)
{
  double y = (dim->y0 + dim->y1) / 2, label_y = dim->box.y + layout->canvas->text_height / 2;
  double end_x = dim->box.x - layout->canvas->pad / 3;

  if (dim->box.width <= 0)
    return;
  if (dim->box.y <= y && y <= dim->box.y + dim->box.height)
    label_y = y;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, end_x - layout->canvas->pad / 2, label_y);
  cairo_line_to (cr, end_x, label_y);
  cairo_stroke (cr);
}

static void
draw_dims (const BwMapLayout *layout, cairo_t *cr)
{
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_GRAPHITE_LIGHT, THIN_STROKE);
  for (guint i = 0; i < layout->n_side; i++)
    {
      draw_dim (layout, cr, &layout->side[i], layout->side_x, layout->across.place1);
      draw_leader (layout, cr, &layout->side[i], layout->side_x);
    }
  if (layout->lines.text != NULL)
    draw_dim (layout, cr, &layout->lines, layout->lines_x, layout->across.place0);
}

/* Private: draws what has been laid out. */
void
bw_map_layout_draw (const BwMapLayout *layout, cairo_t *cr)
{
  BwCanvas *canvas = layout->canvas;

  bw_canvas_draw_paper (canvas, cr);
  bw_dim_row_draw (&layout->period, canvas, cr);
  bw_dim_row_draw (&layout->intervals, canvas, cr);
  draw_dims (layout, cr);
  draw_map (layout, cr);
  draw_datums (layout, cr);
  bw_canvas_show_labels (canvas, cr);
}
