/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "canvas.h"

#include <math.h>

#define SLACK 0.01 /* of rounding, when places are compared */

static void
clear_label (gpointer data)
{
  BwLabel *label = data;
  g_free (label->text);
}

/**
 * bw_canvas_labels_new:
 *
 * Returns: (transfer full) (element-type BwLabel): an empty array that owns the texts of its labels
 */
GArray *
bw_canvas_labels_new (void)
{
  GArray *labels = g_array_new (FALSE, FALSE, sizeof (BwLabel));
  g_array_set_clear_func (labels, clear_label);
  return labels;
}

/**
 * bw_canvas_new:
 * @ink: must outlive the canvas
 *
 * Returns: (transfer full): a canvas of @width by @height without labels
 */
BwCanvas *
bw_canvas_new (const BwInk *ink, double width, double height)
{
  g_return_val_if_fail (ink != NULL, NULL);
  BwCanvas *canvas = g_new0 (BwCanvas, 1);
  canvas->ink = ink;
  canvas->width = width;
  canvas->height = height;
  canvas->layout = bw_ink_layout (ink);
  canvas->labels = bw_canvas_labels_new ();
  canvas->text_height = bw_canvas_measure (canvas, "0").height;
  canvas->pad = canvas->text_height / 2;
  return canvas;
}

void
bw_canvas_free (BwCanvas *canvas)
{
  g_array_unref (canvas->labels);
  g_object_unref (canvas->layout);
  g_free (canvas);
}

static BwBox
layout_box (PangoLayout *layout)
{
  int width, height;
  pango_layout_get_size (layout, &width, &height);
  return (BwBox){ 0, 0, (double) width / PANGO_SCALE, (double) height / PANGO_SCALE };
}

/**
 * bw_canvas_measure:
 *
 * Returns: a box at the origin of the size of @text, which is not wrapped
 */
BwBox
bw_canvas_measure (BwCanvas *canvas, const char *text)
{
  pango_layout_set_width (canvas->layout, -1);
  pango_layout_set_height (canvas->layout, -1);
  bw_layout_set_text (canvas->layout, canvas->ink, text, BW_INK_GRAPHITE);
  return layout_box (canvas->layout);
}

/* Makes @layout wrap at @width, and end in an ellipsis after @lines. */
static void
set_wrapping (PangoLayout *layout, double width, int lines)
{
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_height (layout, -lines);
}

/**
 * bw_canvas_wrapped_height:
 * @lines: at most so many, the last of which ends in an ellipsis if there is more
 *
 * Returns: the height of @text when it wraps at @width
 */
double
bw_canvas_wrapped_height (BwCanvas *canvas, const char *text, double width, int lines)
{
  g_return_val_if_fail (canvas != NULL && text != NULL, 0);
  set_wrapping (canvas->layout, width, lines);
  bw_layout_set_text (canvas->layout, canvas->ink, text, BW_INK_GRAPHITE);
  return layout_box (canvas->layout).height;
}

/**
 * bw_box_overlaps:
 *
 * Returns: whether @a and @b share more than an edge
 */
gboolean
bw_box_overlaps (const BwBox *a, const BwBox *b)
{
  return a->x + a->width > b->x + SLACK && b->x + b->width > a->x + SLACK
         && a->y + a->height > b->y + SLACK && b->y + b->height > a->y + SLACK;
}

/**
 * bw_canvas_is_free:
 *
 * Returns: whether @box lies inside the canvas and touches no label
 */
gboolean
bw_canvas_is_free (const BwCanvas *canvas, BwBox box)
{
  if (box.x < -SLACK || box.y < -SLACK || box.x + box.width > canvas->width + SLACK
      || box.y + box.height > canvas->height + SLACK)
    return FALSE;
  for (guint i = 0; i < canvas->labels->len; i++)
    if (bw_box_overlaps (&box, &g_array_index (canvas->labels, BwLabel, i).box))
      return FALSE;
  return TRUE;
}

/**
 * bw_canvas_claim:
 * @label: copied
 *
 * Keeps the place of @label, to be drawn by bw_canvas_show_labels().
 *
 * Returns: %FALSE, and no label, if it would overlap another one or be cut
 */
gboolean
bw_canvas_claim (BwCanvas *canvas, const BwLabel *label)
{
  g_return_val_if_fail (canvas != NULL && label != NULL, FALSE);
  if (!bw_canvas_is_free (canvas, label->box))
    return FALSE;
  BwLabel copy = *label;
  copy.text = g_strdup (label->text);
  g_array_append_val (canvas->labels, copy);
  return TRUE;
}

/**
 * bw_canvas_claim_at:
 * @x: of a point of the label, across
 * @y: of that point, down
 * @across: where in the label's width that point is: 0 left, 1 right
 * @down: where in its height: 0 top, 1 bottom
 *
 * Claims the place of a text on one line that hangs on a point.
 *
 * Returns: as bw_canvas_claim()
 */
gboolean
bw_canvas_claim_at (BwCanvas *canvas, const char *text, BwInkRole role, double x, double y,
                    double across, double down)
{
  g_return_val_if_fail (canvas != NULL && text != NULL, FALSE);
  BwLabel label = { (char *) text, bw_canvas_measure (canvas, text), role, PANGO_ALIGN_LEFT };
  label.box.x = x - across * label.box.width;
  label.box.y = y - down * label.box.height;
  return bw_canvas_claim (canvas, &label);
}

/**
 * bw_canvas_clear:
 *
 * Forgets all labels, to try again with fewer.
 */
void
bw_canvas_clear (BwCanvas *canvas)
{
  g_array_set_size (canvas->labels, 0);
}

static void
show_halo (const BwCanvas *canvas, cairo_t *cr, const BwBox *box)
{
  double margin = canvas->pad / 3;
  cairo_rectangle (cr, box->x - margin, box->y, box->width + 2 * margin, box->height);
  bw_ink_set (cr, canvas->ink, BW_INK_PAPER);
  cairo_fill (cr);
}

static void
show_label (BwCanvas *canvas, cairo_t *cr, const BwLabel *label)
{
  if (label->wrap)
    set_wrapping (canvas->layout, label->box.width,
                  (int) floor (label->box.height / canvas->text_height + 0.5));
  else
    {
      pango_layout_set_height (canvas->layout, -1);
      pango_layout_set_ellipsize (canvas->layout, PANGO_ELLIPSIZE_NONE);
      pango_layout_set_width (canvas->layout, (int) ceil (label->box.width * PANGO_SCALE) + 1);
    }
  pango_layout_set_alignment (canvas->layout, label->align);
  bw_layout_set_text (canvas->layout, canvas->ink, label->text, label->role);
  cairo_move_to (cr, label->box.x, label->box.y);
  pango_cairo_show_layout (cr, canvas->layout);
  cairo_new_path (cr);
}

/**
 * bw_canvas_show_labels:
 *
 * Draws every label that has a place.
 */
void
bw_canvas_show_labels (BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (canvas != NULL && cr != NULL);
  for (guint i = 0; i < canvas->labels->len; i++)
    {
      BwLabel *label = &g_array_index (canvas->labels, BwLabel, i);
      if (label->halo)
        show_halo (canvas, cr, &label->box);
      show_label (canvas, cr, label);
    }
}

/**
 * bw_spread:
 * @starts: (inout) (array length=n): where each thing would like to start, in the order in which
 *   they stand; on return where it does
 * @widths: (array length=n)
 * @gap: least space between two
 * @low: where the first may start
 * @high: where the last must end
 *
 * Moves things along a line until none overlaps its neighbour, and as little as can be: the sum of
 * the squared moves is least (isotonic regression by pooling adjacent violators, clamped to the
 * ends). If they need more than the whole line, they run over @high.
 */
void
bw_spread (double *starts, const double *widths, guint n, double gap, double low, double high)
{
  g_autofree double *sum = g_new (double, n + 1);
  g_autofree guint *count = g_new (guint, n + 1);
  guint n_pools = 0;
  double before = 0;

  for (guint i = 0; i < n; i++)
    {
      sum[n_pools] = starts[i] - before;
      count[n_pools] = 1;
      before += widths[i] + gap;
      n_pools++;
      while (n_pools > 1
             && sum[n_pools - 2] / count[n_pools - 2] > sum[n_pools - 1] / count[n_pools - 1])
        {
          sum[n_pools - 2] += sum[n_pools - 1];
          count[n_pools - 2] += count[n_pools - 1];
          n_pools--;
        }
    }

  double last = high - (before - gap);
  guint item = 0;
  double offset = 0;
  for (guint pool = 0; pool < n_pools; pool++)
    for (guint i = 0; i < count[pool]; i++)
      {
        starts[item] = offset + MAX (low, MIN (last, sum[pool] / count[pool]));
        offset += widths[item++] + gap;
      }
}
