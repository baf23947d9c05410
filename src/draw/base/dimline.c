/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "dimline.h"

#include <math.h>
#include <string.h>

/* In heights of a line of text. */
#define ARROW_LENGTH 0.55
#define ARROW_WIDTH 0.2
#define OVERSHOOT 0.25 /* of extension lines past the dimension line */
#define LINE_WIDTH 0.05

/* The first line of @text broken at the space nearest to its middle; as it is, if there is none. */
static char *
break_name (const char *text)
{
  char *broken = g_strdup (text), *at = NULL;
  gsize length = strcspn (broken, "\n");

  for (gsize i = 0; i < length; i++)
    if (broken[i] == ' '
        && (at == NULL || fabs (i - length / 2.0) < fabs ((at - broken) - length / 2.0)))
      at = broken + i;
  if (at != NULL)
    *at = '\n';
  return broken;
}

/**
 * bw_dim_row_add:
 * @text: (array length=BW_N_GIVEN_DIM_FORMS): copied
 *
 * Adds a dimension at the end of @row. A row that is full is left as it is.
 */
void
bw_dim_row_add (BwDimRow *row, double x0, double x1, const char *const *text)
{
  g_return_if_fail (row->n < BW_DIM_MAX);
  BwDim *dim = &row->at[row->n++];
  *dim = (BwDim){ .x0 = x0, .x1 = x1 };
  for (guint form = 0; form < BW_N_GIVEN_DIM_FORMS; form++)
    dim->text[form] = g_strdup (text[form]);
  dim->text[BW_DIM_BROKEN_NAME] = break_name (text[BW_DIM_THREE_LINES]);
}

/**
 * bw_dim_row_add_figure:
 * @name: of what is measured
 * @figure: how long it is
 * @rest: what else is told of it; empty for nothing
 *
 * As bw_dim_row_add(), with a label made of these.
 */
void
bw_dim_row_add_figure (BwDimRow *row, double x0, double x1, const char *name, const char *figure,
                       const char *rest)
{
  g_return_if_fail (row != NULL && name != NULL && figure != NULL && rest != NULL);
  gboolean more = *rest != '\0';
  g_autofree char *one = g_strconcat (name, "  ", figure, more ? " · " : "", rest, NULL);
  g_autofree char *two = more ? g_strconcat (name, "  ", figure, "\n", rest, NULL)
                              : g_strconcat (name, "\n", figure, NULL);
  g_autofree char *three = g_strconcat (name, "\n", figure, more ? "\n" : "", rest, NULL);
  const char *const text[BW_N_GIVEN_DIM_FORMS] = { one, two, three };

  bw_dim_row_add (row, x0, x1, text);
}

/**
 * bw_dim_row_clear:
 *
 * Frees what @row owns and makes it empty.
 */
void
bw_dim_row_clear (BwDimRow *row)
{
  for (guint i = 0; i < row->n; i++)
    for (guint form = 0; form < BW_N_DIM_FORMS; form++)
      g_free (row->at[i].text[form]);
  row->n = 0;
}

static double
arrow_length (const BwCanvas *canvas)
{
  return ARROW_LENGTH * canvas->text_height;
}

static gboolean
has_arrows (const BwDim *dim, const BwCanvas *canvas)
{
  return dim->x1 - dim->x0 >= 3 * arrow_length (canvas);
}

/* Whether a label of @width stands between the extension lines with air on both sides. */
static gboolean
fits_between (const BwDim *dim, BwDimForm form, double width, const BwCanvas *canvas)
{
  double air = canvas->pad / 2;
  if (form == BW_DIM_ONE_LINE)
    air = canvas->pad / 2 + 1.6 * arrow_length (canvas);
  return width + 2 * air <= dim->x1 - dim->x0;
}

static gboolean
all_fit_between (const BwDimRow *row, BwDimForm form, BwCanvas *canvas)
{
  for (guint i = 0; i < row->n; i++)
    {
      double width = bw_canvas_measure (canvas, row->at[i].text[form]).width;
      if (!fits_between (&row->at[i], form, width, canvas))
        return FALSE;
    }
  return TRUE;
}

/* Only a name that has no room else is broken. */
static void
choose_label (const BwDimRow *row, BwDim *dim, BwCanvas *canvas)
{
  dim->label = dim->text[row->form];
  if (row->form == BW_DIM_BROKEN_NAME)
    {
      const char *whole = dim->text[BW_DIM_THREE_LINES];
      if (fits_between (dim, BW_DIM_THREE_LINES, bw_canvas_measure (canvas, whole).width, canvas))
        dim->label = whole;
    }
  dim->box = bw_canvas_measure (canvas, dim->label);
}

/**
 * bw_dim_row_size:
 * @row: with its dimensions; those without length are allowed
 *
 * Chooses the widest form that lets every label stand between its own extension lines, and from it
 * the height that the row needs. Where none does, labels are of three lines, if the names cannot be
 * broken either, or of two where a dimension has the row to itself.
 */
void
bw_dim_row_size (BwDimRow *row, BwCanvas *canvas)
{
  g_return_if_fail (row != NULL && canvas != NULL);
  double tallest = 0;
  BwDimForm narrowest = row->n == 1 ? BW_DIM_TWO_LINES : BW_DIM_THREE_LINES;

  row->form = BW_DIM_ONE_LINE;
  while (row->form < narrowest && !all_fit_between (row, row->form, canvas))
    row->form++;
  if (row->form == BW_DIM_THREE_LINES && row->breaks
      && !all_fit_between (row, BW_DIM_THREE_LINES, canvas)
      && all_fit_between (row, BW_DIM_BROKEN_NAME, canvas))
    row->form = BW_DIM_BROKEN_NAME;
  for (guint i = 0; i < row->n; i++)
    {
      choose_label (row, &row->at[i], canvas);
      tallest = MAX (tallest, row->at[i].box.height);
    }
  row->before = row->after = canvas->text_height / 2 + canvas->pad / 4;
  if (row->form == BW_DIM_ONE_LINE || row->n == 0)
    return;
  double *side = row->above ? &row->before : &row->after;
  double *other = row->above ? &row->after : &row->before;
  *side = tallest + canvas->pad;
  *other = OVERSHOOT * canvas->text_height + canvas->pad / 2;
}

/* Where the label of @dim would like to start: in its interval, or, at an end of the row, beyond
 * the extension line. */
static double
wanted_start (const BwDimRow *row, guint i, const BwCanvas *canvas)
{
  const BwDim *dim = &row->at[i];
  double width = dim->box.width;
  if (row->n > 1 && !fits_between (dim, row->form, width, canvas))
    {
      if (i == 0)
        return dim->x0 - canvas->pad - width;
      if (i == row->n - 1)
        return dim->x1 + canvas->pad;
    }
  return (dim->x0 + dim->x1 - width) / 2;
}

static double
label_top (const BwDimRow *row, const BwDim *dim, const BwCanvas *canvas)
{
  if (row->form == BW_DIM_ONE_LINE)
    return row->y - dim->box.height / 2;
  return row->above ? row->y - canvas->pad * 0.75 - dim->box.height : row->y + canvas->pad * 0.75;
}

/**
 * bw_dim_row_claim:
 * @row: sized, and with its y and from_y
 *
 * Finds the places of the labels along the row. One that is wider than its interval moves out of
 * it; neighbours make room.
 *
 * Returns: %FALSE if a label has no place; it then has a box of no width and is not drawn
 */
gboolean
bw_dim_row_claim (BwDimRow *row, BwCanvas *canvas)
{
  g_return_val_if_fail (row != NULL && canvas != NULL, FALSE);
  double starts[BW_DIM_MAX], widths[BW_DIM_MAX];
  gboolean all = TRUE;

  for (guint i = 0; i < row->n; i++)
    {
      widths[i] = row->at[i].box.width;
      starts[i] = wanted_start (row, i, canvas);
    }
  bw_spread (starts, widths, row->n, canvas->pad * 1.25, canvas->pad, canvas->width - canvas->pad);
  for (guint i = 0; i < row->n; i++)
    {
      BwDim *dim = &row->at[i];
      dim->box.x = starts[i];
      dim->box.y = label_top (row, dim, canvas);
      BwLabel label = { (char *) dim->label, dim->box, BW_INK_GRAPHITE, PANGO_ALIGN_CENTER };
      label.halo = TRUE;
      if (!bw_canvas_claim (canvas, &label))
        {
          dim->box.width = 0;
          all = FALSE;
        }
    }
  return all;
}

/* An arrowhead at @x that points along @direction, 1 right or -1 left. */
static void
draw_arrow (const BwCanvas *canvas, cairo_t *cr, double x, double y, double direction)
{
  double length = arrow_length (canvas), half = ARROW_WIDTH / 2 * canvas->text_height;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - direction * length, y - half);
  cairo_line_to (cr, x - direction * length, y + half);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* Where arrowheads have no room: a short oblique stroke. */
static void
draw_stroke (const BwCanvas *canvas, cairo_t *cr, double x, double y)
{
  double half = 0.18 * canvas->text_height;
  cairo_move_to (cr, x - half, y + half);
  cairo_line_to (cr, x + half, y - half);
  cairo_stroke (cr);
}

static void
draw_extension (const BwDimRow *row, const BwCanvas *canvas, cairo_t *cr, double x)
{
  double direction = row->from_y < row->y ? 1 : -1;
  cairo_move_to (cr, x, row->from_y + direction * canvas->pad / 3);
  cairo_line_to (cr, x, row->y + direction * OVERSHOOT * canvas->text_height);
  cairo_stroke (cr);
}

/* The line reaches under a label that stands beyond an end of the row; a leader goes to one that
 * stands under a neighbour. */
static void
draw_reach (const BwDimRow *row, guint i, const BwCanvas *canvas, cairo_t *cr)
{
  const BwDim *dim = &row->at[i];
  double left = dim->box.x, right = dim->box.x + dim->box.width;
  double middle = (dim->x0 + dim->x1) / 2, centre = (left + right) / 2;

  if (i == 0 && right <= dim->x0)
    {
      cairo_move_to (cr, dim->x0, row->y);
      cairo_line_to (cr, left, row->y);
    }
  else if (i == row->n - 1 && left >= dim->x1)
    {
      cairo_move_to (cr, dim->x1, row->y);
      cairo_line_to (cr, right, row->y);
    }
  else if (centre < dim->x0 || centre > dim->x1)
    {
      cairo_move_to (cr, middle, row->y);
      cairo_line_to (cr, centre, row->above ? dim->box.y + dim->box.height : dim->box.y);
    }
  cairo_stroke (cr);
}

static void
draw_dim (const BwDimRow *row, guint i, const BwCanvas *canvas, cairo_t *cr)
{
  const BwDim *dim = &row->at[i];

  draw_extension (row, canvas, cr, dim->x0);
  draw_extension (row, canvas, cr, dim->x1);
  cairo_move_to (cr, dim->x0, row->y);
  cairo_line_to (cr, dim->x1, row->y);
  cairo_stroke (cr);
  if (dim->box.width > 0)
    draw_reach (row, i, canvas, cr);
  if (has_arrows (dim, canvas))
    {
      draw_arrow (canvas, cr, dim->x0, row->y, -1);
      draw_arrow (canvas, cr, dim->x1, row->y, 1);
    }
  else
    {
      draw_stroke (canvas, cr, dim->x0, row->y);
      draw_stroke (canvas, cr, dim->x1, row->y);
    }
}

/**
 * bw_dim_row_draw:
 *
 * Draws the lines and arrowheads of @row. Its labels come with bw_canvas_show_labels(), and
 * interrupt the lines.
 */
void
bw_dim_row_draw (const BwDimRow *row, const BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (row != NULL && canvas != NULL && cr != NULL);
  cairo_save (cr);
  cairo_set_line_width (cr, LINE_WIDTH * canvas->text_height);
  bw_ink_set (cr, canvas->ink, BW_INK_GRAPHITE_LIGHT);
  for (guint i = 0; i < row->n; i++)
    draw_dim (row, i, canvas, cr);
  cairo_restore (cr);
}
