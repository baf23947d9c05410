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
text_of (const BwHookupLayout *layout)
{
  return layout->canvas->text_height;
}

static void
set_line (const BwHookupLayout *layout, cairo_t *cr, BwInkRole role, double width)
{
  bw_ink_set (cr, layout->canvas->ink, role);
  cairo_set_line_width (cr, width * text_of (layout));
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
dot (const BwHookupLayout *layout, cairo_t *cr, double x, double y)
{
  cairo_arc (cr, x, y, DOT * text_of (layout), 0, 2 * G_PI);
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
draw_wire (const BwHookupLayout *layout, cairo_t *cr, const BwHookupRow *row)
{
  set_line (layout, cr, row->role, WIRE);
  bw_set_dash (cr, row->dash, WIRE * text_of (layout));
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  path_end (row, 0, cr);
  path_end (row, 1, cr);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Parts, as IEC 60617 has them */

static void
draw_resistor (const BwHookupLayout *layout, cairo_t *cr, const BwBox *box)
{
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  set_line (layout, cr, BW_INK_GRAPHITE, WIRE);
  cairo_stroke (cr);
}

/* Three bars, each shorter than the one before. */
static void
draw_ground (const BwHookupLayout *layout, cairo_t *cr, double x, double y)
{
  double text = text_of (layout);
  set_line (layout, cr, BW_INK_GRAPHITE, WIRE);
  for (guint i = 0; i < 3; i++)
    {
      double half = (0.36 - 0.12 * i) * text;
      line (cr, x + 0.2 * i * text, y - half, x + 0.2 * i * text, y + half);
    }
}

static void
draw_shunt (const BwHookupLayout *layout, cairo_t *cr, const BwHookupRow *row,
            const BwHookupSymbolPlace *place)
{
  double text = text_of (layout), x = place->x + 0.3 * text;
  double y = place->box.y + place->box.height / 2, end = place->box.x + place->box.width;
  set_line (layout, cr, BW_INK_GRAPHITE, WIRE);
  dot (layout, cr, x, row->y);
  cairo_move_to (cr, x, row->y);
  cairo_line_to (cr, x, y);
  cairo_line_to (cr, place->box.x, y);
  cairo_stroke (cr);
  line (cr, end, y, end + 0.4 * text, y);
  draw_ground (layout, cr, end + 0.4 * text, y);
  draw_resistor (layout, cr, &place->box);
}

static void
draw_capacitor (const BwHookupLayout *layout, cairo_t *cr, const BwHookupRow *row, const BwBox *box)
{
  bw_ink_set (cr, layout->canvas->ink, BW_INK_PAPER);
  cairo_rectangle (cr, box->x, row->y - box->height / 2, box->width, box->height);
  cairo_fill (cr);
  set_line (layout, cr, BW_INK_GRAPHITE, 1.6 * WIRE);
  for (guint i = 0; i < 2; i++)
    line (cr, box->x + i * box->width, box->y, box->x + i * box->width, box->y + box->height);
}

static void
draw_symbols (const BwHookupLayout *layout, cairo_t *cr, const BwHookupRow *row)
{
  for (guint i = 0; i < row->n_symbols; i++)
    {
      const BwHookupSymbolPlace *place = &row->symbols[i];
      if (place->symbol == BW_HOOKUP_SERIES)
        draw_resistor (layout, cr, &place->box);
      else if (place->symbol == BW_HOOKUP_SHUNT)
        draw_shunt (layout, cr, row, place);
      else
        draw_capacitor (layout, cr, row, &place->box);
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
draw_bundle (const BwHookupLayout *layout, cairo_t *cr, const BwHookupLead *lead, guint end)
{
  BwBox outline = bw_face_outline (&lead->end[end].face);
  double edge = end == 0 ? outline.x + outline.width : outline.x;
  double x = end == 0 ? lead->left + lead->end[0].width : lead->right - lead->end[1].width;
  double middle = outline.y + outline.height / 2, top = middle, bottom = middle;
  guint n = 0;

  for (guint i = 0; i < lead->n; i++)
    {
      const BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      if (row->has_pin[end] || !is_conductor (row))
        continue;
      top = MIN (top, row->y);
      bottom = MAX (bottom, row->y);
      n++;
    }
  if (n == 0)
    return;
  set_line (layout, cr, BW_INK_GRAPHITE_LIGHT, BUNDLE);
  line (cr, edge, middle, x, middle);
  line (cr, x, top - WIRE * text_of (layout), x, bottom + WIRE * text_of (layout));
}

static void
draw_end (const BwHookupLayout *layout, cairo_t *cr, const BwHookupLead *lead, guint end)
{
  const BwHookupEnd *at = &lead->end[end];
  if (at->shown)
    bw_face_draw_contacts (&at->face, cr, layout->canvas->ink, at->marks);
  for (guint i = 0; i < lead->n && bw_connector_is_single (at->connector); i++)
    {
      const BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      if (is_conductor (row))
        bw_plug_draw (cr, layout->canvas->ink, at->connector, row->start[end], row->y,
                      MIN (layout->plug_size, row->units * layout->bands[lead->band].row_height),
                      row->role);
    }
}

/* A supply at the near end of a row that selects. */
static void
draw_supply (const BwHookupLayout *layout, cairo_t *cr, const BwHookupRow *row)
{
  if (row->connection == NULL || row->connection->conductor < BW_N_CONDUCTORS)
    return;
  double r = 1.6 * DOT * text_of (layout);
  cairo_arc (cr, row->start[0], row->y, r, 0, 2 * G_PI);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  set_line (layout, cr, BW_INK_GRAPHITE, WIRE);
  cairo_stroke (cr);
}

static void
draw_lead (const BwHookupLayout *layout, cairo_t *cr, const BwHookupLead *lead)
{
  for (guint end = 0; end < 2; end++)
    if (lead->end[end].shown)
      {
        draw_bundle (layout, cr, lead, end);
        bw_face_draw_shell (&lead->end[end].face, cr, layout->canvas->ink);
      }
  for (guint i = 0; i < lead->n; i++)
    draw_wire (layout, cr, bw_hookup_row (layout, lead->first + i));
  for (guint i = 0; i < lead->n; i++)
    {
      draw_symbols (layout, cr, bw_hookup_row (layout, lead->first + i));
      draw_supply (layout, cr, bw_hookup_row (layout, lead->first + i));
    }
  for (guint end = 0; end < 2; end++)
    draw_end (layout, cr, lead, end);
}

/* Boxes, table, head */

static void
draw_box (const BwHookupLayout *layout, cairo_t *cr, const BwBox *box)
{
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_BAND);
  cairo_fill_preserve (cr);
  set_line (layout, cr, BW_INK_GRAPHITE, WIRE);
  cairo_stroke (cr);
}

static void
draw_table (const BwHookupLayout *layout, cairo_t *cr)
{
  double text = text_of (layout), height = bw_hookup_levels_height (layout);
  double left = layout->canvas->pad;
  if (height <= 0)
    return;
  set_line (layout, cr, BW_INK_RULE, THIN);
  line (cr, left, layout->table_y, layout->table_right, layout->table_y);
  line (cr, left, layout->table_y + 1.3 * text, layout->table_right, layout->table_y + 1.3 * text);
}

static void
draw_head (const BwHookupLayout *layout, cairo_t *cr)
{
  const BwHookup *hookup = layout->what->hookup;
  double size = MARK * text_of (layout), y = layout->head_y - size / 2;
  bw_draw_severity_mark (cr, layout->canvas->ink, bw_verdict_severity (hookup->verdict_before),
                         layout->marks_x[0], y, size);
  if (hookup->plan != NULL)
    bw_draw_severity_mark (cr, layout->canvas->ink, bw_verdict_severity (hookup->verdict_after),
                           layout->marks_x[1], y, size);
}

/* A line that is broken where the way ends. */
static void
draw_no_way (const BwHookupLayout *layout, cairo_t *cr)
{
  const BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height, middle = canvas->width / 2, size = 1.6 * text;
  set_line (layout, cr, BW_INK_GRAPHITE_LIGHT, WIRE);
  line (cr, canvas->pad, layout->line_y, middle - 1.5 * size, layout->line_y);
  line (cr, middle + 1.5 * size, layout->line_y, canvas->width - canvas->pad, layout->line_y);
  dot (layout, cr, canvas->pad, layout->line_y);
  dot (layout, cr, canvas->width - canvas->pad, layout->line_y);
  bw_draw_severity_mark (cr, canvas->ink, BW_SEVERITY_FATAL, middle - size / 2,
                         layout->line_y - size / 2, size);
}

/**
 * bw_hookup_ink_draw:
 *
 * Draws what has been laid out.
 */
void
bw_hookup_ink_draw (const BwHookupLayout *layout, cairo_t *cr)
{
  bw_canvas_draw_paper (layout->canvas, cr);
  draw_head (layout, cr);
  if (layout->n_leads == 0)
    draw_no_way (layout, cr);
  for (guint i = 0; i < layout->n_boxes; i++)
    draw_box (layout, cr, &layout->boxes[i].box);
  for (guint i = 0; i < layout->n_leads; i++)
    draw_lead (layout, cr, &layout->leads[i]);
  draw_table (layout, cr);
  bw_canvas_show_labels (layout->canvas, cr);
}
