/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flow-private.h"

/* Longer texts are cut, visibly, so that a damaged file cannot stall the layout. */
#define MAX_TEXT_CHARS 20000

static const struct
{
  double scale;
  gboolean bold;
  BwInkRole role;
  double before; /* in heights of a line */
  double after;
} styles[BW_N_FLOW_STYLES] = {
  [BW_FLOW_TITLE] = { 1.8, TRUE, BW_INK_GRAPHITE, 0, 0.4 },
  [BW_FLOW_HEADING] = { 1.25, TRUE, BW_INK_GRAPHITE, 1.1, 0.35 },
  [BW_FLOW_SUBHEADING] = { 1, TRUE, BW_INK_GRAPHITE, 0.6, 0.15 },
  [BW_FLOW_BODY] = { 1, FALSE, BW_INK_GRAPHITE, 0, 0.15 },
  [BW_FLOW_SECONDARY] = { 1, FALSE, BW_INK_GRAPHITE_LIGHT, 0, 0.15 },
};

/* A paragraph is kept as text and laid out again when one of its lines is drawn: reports can be
 * long, and layouts are large. */
typedef struct
{
  char *text;
  BwFlowStyle style;
  BwInkRole role;
  BwSeverity mark;
  double x;
} Paragraph;

typedef struct
{
  Paragraph *paragraph; /* counted */
  int line;
  double baseline;
} Line;

static void
clear_paragraph (gpointer data)
{
  Paragraph *paragraph = data;
  g_free (paragraph->text);
}

static void
free_line (gpointer data)
{
  Line *line = data;
  g_rc_box_release_full (line->paragraph, clear_paragraph);
  g_free (line);
}

static char *
limit_text (const char *text)
{
  if (g_utf8_strlen (text, -1) <= MAX_TEXT_CHARS)
    return g_strdup (text);
  g_autofree char *start = g_utf8_substring (text, 0, MAX_TEXT_CHARS);
  return g_strconcat (start, "…", NULL);
}

/**
 * bw_flow_set_layout:
 * @width: at which @text wraps
 * @scale: of the ink's font
 *
 * Sets the flow's layout, left-aligned and without an ellipsis.
 *
 * Returns: its height
 */
double
bw_flow_set_layout (BwFlow *flow, const char *text, BwInkRole role, double width, double scale,
                    gboolean bold)
{
  g_autofree char *limited = limit_text (text);
  PangoLayout *layout = flow->layout;
  int height;

  flow->laid_out = NULL;
  pango_layout_set_alignment (layout, PANGO_ALIGN_LEFT);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_NONE);
  pango_layout_set_height (layout, -1);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, (int) (MAX (width, 1) * PANGO_SCALE));
  bw_layout_set_text (layout, &flow->ink, limited, role);
  PangoAttrList *attributes = pango_attr_list_copy (pango_layout_get_attributes (layout));
  pango_attr_list_insert (attributes, pango_attr_scale_new (scale));
  if (bold)
    pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_get_size (layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

/**
 * bw_flow_text_width:
 *
 * Returns: how wide @text is on one line
 */
double
bw_flow_text_width (BwFlow *flow, const char *text, gboolean bold)
{
  int width;
  bw_flow_set_layout (flow, text, BW_INK_GRAPHITE, flow->width, 1, bold);
  pango_layout_set_width (flow->layout, -1);
  pango_layout_get_size (flow->layout, &width, NULL);
  return (double) width / PANGO_SCALE;
}

static void
lay_out_paragraph (BwFlow *flow, const Paragraph *paragraph)
{
  if (flow->laid_out == paragraph)
    return;
  bw_flow_set_layout (flow, paragraph->text, paragraph->role, flow->width - paragraph->x,
                      styles[paragraph->style].scale, styles[paragraph->style].bold);
  flow->laid_out = paragraph;
}

static void
draw_line (const BwFlowItem *item, BwFlow *flow, cairo_t *cr)
{
  const Line *line = item->data;
  const Paragraph *paragraph = line->paragraph;
  double size = BW_FLOW_MARK_SIZE * flow->line_height;

  if (line->line == 0 && paragraph->mark < BW_N_SEVERITIES)
    bw_draw_severity_mark (cr, &flow->ink, paragraph->mark,
                           paragraph->x - BW_FLOW_MARK_SPACE * flow->line_height,
                           item->y + (flow->line_height - size) / 2, size);
  lay_out_paragraph (flow, paragraph);
  cairo_move_to (cr, paragraph->x, item->y + line->baseline);
  pango_cairo_show_layout_line (cr, pango_layout_get_line_readonly (flow->layout, line->line));
}

static void
add_line (BwFlow *flow, Paragraph *paragraph, PangoLayoutIter *iter, int index, gboolean keep)
{
  int top, bottom;
  Line *line = g_new0 (Line, 1);

  pango_layout_iter_get_line_yrange (iter, &top, &bottom);
  line->paragraph = g_rc_box_acquire (paragraph);
  line->line = index;
  line->baseline = (double) (pango_layout_iter_get_baseline (iter) - top) / PANGO_SCALE;
  BwFlowItem *item = bw_flow_item_new (draw_line, (double) (bottom - top) / PANGO_SCALE, line,
                                       free_line);
  item->keep = keep;
  bw_flow_add_item (flow, item);
}

static void
add_lines (BwFlow *flow, Paragraph *paragraph, gboolean keep)
{
  lay_out_paragraph (flow, paragraph);
  PangoLayoutIter *iter = pango_layout_get_iter (flow->layout);
  int index = 0;

  do
    {
      gboolean orphan = index == 0 && !pango_layout_iter_at_last_line (iter);
      add_line (flow, paragraph, iter, index++, keep || orphan);
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}

/**
 * bw_flow_add_text:
 *
 * Adds a paragraph, which wraps and may break over pages between its lines.
 */
void
bw_flow_add_text (BwFlow *flow, const BwFlowText *text)
{
  gboolean marked = text->mark < BW_N_SEVERITIES;

  if (text->text == NULL || text->text[0] == '\0')
    return;
  Paragraph *paragraph = g_rc_box_new0 (Paragraph);
  paragraph->text = g_strdup (text->text);
  paragraph->style = text->style;
  paragraph->mark = text->mark;
  paragraph->role = marked && text->style == BW_FLOW_SUBHEADING ? bw_ink_for_severity (text->mark)
                                                                : styles[text->style].role;
  paragraph->x = text->indent + (marked ? BW_FLOW_MARK_SPACE * flow->line_height : 0);

  bw_flow_add_space (flow, styles[text->style].before * flow->line_height);
  add_lines (flow, paragraph, text->keep || text->style <= BW_FLOW_SUBHEADING);
  bw_flow_add_space (flow, styles[text->style].after * flow->line_height);
  g_rc_box_release_full (paragraph, clear_paragraph);
}
