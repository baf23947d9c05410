/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* The plan, drawn. */

/* In heights of a line of text. */
#define WIRE 0.11
#define BUNDLE 0.3
#define THIN 0.06
#define DOT 0.14
#define MARK 0.8
#define BEND 0.2

static double
text_of (const BwHookupDrawing *drawing)
{
  return drawing->canvas->text_height;
}

static void
set_line (const BwHookupDrawing *drawing, cairo_t *cr, BwInkRole role, double width)
{
  bw_ink_set (cr, drawing->canvas->ink, role);
  cairo_set_line_width (cr, width * text_of (drawing));
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
line (cairo_t *cr, double x0, double y0, double x1, double y1)
{
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
}

static void
dot (const BwHookupDrawing *drawing, cairo_t *cr, double x, double y)
{
  cairo_arc (cr, x, y, DOT * text_of (drawing), 0, 2 * G_PI);
  cairo_fill (cr);
}

/* Wires */

/* From the contact out of the plug, to the row. */
static void
path_end (const BwHookupRow *row, guint end, cairo_t *cr)
{
  if (!row->has_pin[end])
    {
      cairo_line_to (cr, row->start[end], row->y);
      return;
    }
  const double xs[] = { row->start[end], row->start[end], row->channel_x[end],
                        row->channel_x[end] };
  const double ys[] = { row->start_y[end], row->exit_y[end], row->exit_y[end], row->y };
  for (int i = 0; i < 4; i++)
    {
      int at = end == 0 ? i : 3 - i;
      cairo_line_to (cr, xs[at], ys[at]);
    }
}

static void
draw_wire (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupRow *row)
{
  set_line (drawing, cr, row->role, WIRE);
  bw_set_dash (cr, row->dash, WIRE * text_of (drawing));
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  path_end (row, 0, cr);
  path_end (row, 1, cr);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Parts, as IEC 60617 has them */

static void
draw_resistor (const BwHookupDrawing *drawing, cairo_t *cr, const BwBox *box)
{
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  bw_ink_set (cr, drawing->canvas->ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  set_line (drawing, cr, BW_INK_GRAPHITE, WIRE);
  cairo_stroke (cr);
}

/* Three bars, each shorter than the one before. */
static void
draw_ground (const BwHookupDrawing *drawing, cairo_t *cr, double x, double y)
{
  double text = text_of (drawing);
  set_line (drawing, cr, BW_INK_GRAPHITE, WIRE);
  for (guint i = 0; i < 3; i++)
    {
      double half = (0.36 - 0.12 * i) * text;
      line (cr, x + 0.2 * i * text, y - half, x + 0.2 * i * text, y + half);
    }
}

static void
draw_shunt (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupRow *row,
            const BwHookupSymbolPlace *place)
{
  double text = text_of (drawing), x = place->x + 0.3 * text;
  double y = place->box.y + place->box.height / 2, end = place->box.x + place->box.width;
  set_line (drawing, cr, BW_INK_GRAPHITE, WIRE);
  dot (drawing, cr, x, row->y);
  cairo_move_to (cr, x, row->y);
  cairo_line_to (cr, x, y);
  cairo_line_to (cr, place->box.x, y);
  cairo_stroke (cr);
  line (cr, end, y, end + 0.4 * text, y);
  draw_ground (drawing, cr, end + 0.4 * text, y);
  draw_resistor (drawing, cr, &place->box);
}

static void
draw_capacitor (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupRow *row,
                const BwBox *box)
{
  bw_ink_set (cr, drawing->canvas->ink, BW_INK_PAPER);
  cairo_rectangle (cr, box->x, row->y - box->height / 2, box->width, box->height);
  cairo_fill (cr);
  set_line (drawing, cr, BW_INK_GRAPHITE, 1.6 * WIRE);
  for (guint i = 0; i < 2; i++)
    line (cr, box->x + i * box->width, box->y, box->x + i * box->width, box->y + box->height);
}

static void
draw_symbols (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupRow *row)
{
  for (guint i = 0; i < row->n_symbols; i++)
    {
      const BwHookupSymbolPlace *place = &row->symbols[i];
      if (place->symbol == BW_HOOKUP_SERIES)
        draw_resistor (drawing, cr, &place->box);
      else if (place->symbol == BW_HOOKUP_SHUNT)
        draw_shunt (drawing, cr, row, place);
      else
        draw_capacitor (drawing, cr, row, &place->box);
    }
}

/* Plugs */

static gboolean
is_conductor (const BwHookupRow *row)
{
  return row->connection != NULL && row->connection->conductor < BW_N_CONDUCTORS;
}

/* Conductors whose pins are not laid down leave their plug as one bundle. */
static void
draw_bundle (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupLead *lead, guint end)
{
  BwBox outline = bw_face_outline (&lead->end[end].face);
  double edge = end == 0 ? outline.x + outline.width : outline.x;
  double x = end == 0 ? lead->left + lead->end[0].width : lead->right - lead->end[1].width;
  double middle = outline.y + outline.height / 2, top = middle, bottom = middle;
  guint n = 0;

  for (guint i = 0; i < lead->n; i++)
    {
      const BwHookupRow *row = bw_hookup_row (drawing, lead->first + i);
      if (row->has_pin[end] || !is_conductor (row))
        continue;
      top = MIN (top, row->y);
      bottom = MAX (bottom, row->y);
      n++;
    }
  if (n == 0)
    return;
  set_line (drawing, cr, BW_INK_GRAPHITE_LIGHT, BUNDLE);
  line (cr, edge, middle, x, middle);
  line (cr, x, top - WIRE * text_of (drawing), x, bottom + WIRE * text_of (drawing));
}

static void
draw_end (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupLead *lead, guint end)
{
  const BwHookupEnd *at = &lead->end[end];
  if (at->shown)
    bw_face_draw_contacts (&at->face, cr, drawing->canvas->ink, at->marks);
  for (guint i = 0; i < lead->n && bw_connector_is_single (at->connector); i++)
    {
      const BwHookupRow *row = bw_hookup_row (drawing, lead->first + i);
      if (is_conductor (row))
        bw_plug_draw (cr, drawing->canvas->ink, at->connector, row->start[end], row->y,
                      MIN (drawing->plug_size, row->units * drawing->bands[lead->band].row_height),
                      row->role);
    }
}

/* A supply at the near end of a row that selects. */
static void
draw_supply (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupRow *row)
{
  if (row->connection == NULL || row->connection->conductor < BW_N_CONDUCTORS)
    return;
  double r = 1.6 * DOT * text_of (drawing);
  cairo_arc (cr, row->start[0], row->y, r, 0, 2 * G_PI);
  bw_ink_set (cr, drawing->canvas->ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  set_line (drawing, cr, BW_INK_GRAPHITE, WIRE);
  cairo_stroke (cr);
}

static void
draw_lead (const BwHookupDrawing *drawing, cairo_t *cr, const BwHookupLead *lead)
{
  for (guint end = 0; end < 2; end++)
    if (lead->end[end].shown)
      {
        draw_bundle (drawing, cr, lead, end);
        bw_face_draw_shell (&lead->end[end].face, cr, drawing->canvas->ink);
      }
  for (guint i = 0; i < lead->n; i++)
    draw_wire (drawing, cr, bw_hookup_row (drawing, lead->first + i));
  for (guint i = 0; i < lead->n; i++)
    {
      draw_symbols (drawing, cr, bw_hookup_row (drawing, lead->first + i));
      draw_supply (drawing, cr, bw_hookup_row (drawing, lead->first + i));
    }
  for (guint end = 0; end < 2; end++)
    draw_end (drawing, cr, lead, end);
}

/* Boxes, table, head */

static void
draw_box (const BwHookupDrawing *drawing, cairo_t *cr, const BwBox *box)
{
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  bw_ink_set (cr, drawing->canvas->ink, BW_INK_BAND);
  cairo_fill_preserve (cr);
  set_line (drawing, cr, BW_INK_GRAPHITE, WIRE);
  cairo_stroke (cr);
}

static void
draw_table (const BwHookupDrawing *drawing, cairo_t *cr)
{
  double text = text_of (drawing), height = bw_hookup_levels_height (drawing);
  double left = drawing->canvas->pad;
  if (height <= 0)
    return;
  set_line (drawing, cr, BW_INK_RULE, THIN);
  line (cr, left, drawing->table_y, drawing->table_right, drawing->table_y);
  line (cr, left, drawing->table_y + 1.3 * text, drawing->table_right,
        drawing->table_y + 1.3 * text);
}

static void
draw_head (const BwHookupDrawing *drawing, cairo_t *cr)
{
  const BwHookup *hookup = drawing->what->hookup;
  double size = MARK * text_of (drawing), y = drawing->head_y - size / 2;
  bw_draw_severity_mark (cr, drawing->canvas->ink, bw_verdict_severity (hookup->verdict_before),
                         drawing->marks_x[0], y, size);
  if (hookup->plan != NULL)
    bw_draw_severity_mark (cr, drawing->canvas->ink, bw_verdict_severity (hookup->verdict_after),
                           drawing->marks_x[1], y, size);
}

/* A line that is broken where the way ends. */
static void
draw_no_way (const BwHookupDrawing *drawing, cairo_t *cr)
{
  const BwCanvas *canvas = drawing->canvas;
  double text = canvas->text_height, middle = canvas->width / 2, size = 1.6 * text;
  set_line (drawing, cr, BW_INK_GRAPHITE_LIGHT, WIRE);
  line (cr, canvas->pad, drawing->line_y, middle - 1.5 * size, drawing->line_y);
  line (cr, middle + 1.5 * size, drawing->line_y, canvas->width - canvas->pad, drawing->line_y);
  dot (drawing, cr, canvas->pad, drawing->line_y);
  dot (drawing, cr, canvas->width - canvas->pad, drawing->line_y);
  bw_draw_severity_mark (cr, canvas->ink, BW_SEVERITY_FATAL, middle - size / 2,
                         drawing->line_y - size / 2, size);
}

/**
 * bw_hookup_ink_draw:
 *
 * Draws everything but the paper.
 */
void
bw_hookup_ink_draw (const BwHookupDrawing *drawing, cairo_t *cr)
{
  draw_head (drawing, cr);
  if (drawing->n_leads == 0)
    draw_no_way (drawing, cr);
  for (guint i = 0; i < drawing->n_boxes; i++)
    draw_box (drawing, cr, &drawing->boxes[i].box);
  for (guint i = 0; i < drawing->n_leads; i++)
    draw_lead (drawing, cr, &drawing->leads[i]);
  draw_table (drawing, cr);
  bw_canvas_show_labels (drawing->canvas, cr);
}
