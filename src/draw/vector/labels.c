/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* The labels on and around the plane. Those on it keep off the path and the boxes as far as they
 * can. */

#define DEGREES_STEP 30
#define LEAST_STROKE 0.5 /* of the path, in user-space units: less is a bar, not a line to it */

/* What a place of a label costs. */
#define COST_OF_BOX 100
#define COST_OF_STROKE 10
#define COST_OF_AXIS 4
#define COST_OF_DISTANCE 2

static gboolean
claim_table (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  gboolean all = TRUE;

  for (guint row = 0; row < bw_vector_rows (layout->targets); row++)
    for (guint column = 0; column < BW_VECTOR_COLUMNS; column++)
      {
        g_autofree char *text = bw_vector_text_cell (layout->what, row, column, layout->targets);
        double x = layout->table.x + (column > 0 ? layout->column_x[column] : 0);
        double y = layout->table.y + row * canvas->text_height * 1.1
                   + (row > 0 ? canvas->pad / 3 : 0);
        if (text[0] != '\0')
          all &= bw_canvas_claim_at (canvas, text,
                                     row == 0 ? BW_INK_GRAPHITE_LIGHT : BW_INK_GRAPHITE, x, y,
                                     column > 0 ? 1 : 0, 0);
      }
  return all;
}

static void
claim_degrees (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  for (int degrees = 0; degrees < 360; degrees += DEGREES_STEP)
    {
      double angle = degrees * G_PI / 180, out = layout->radius + 0.75 * canvas->pad;
      g_autofree char *text = g_strdup_printf ("%d°", degrees);
      bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE_LIGHT, layout->x + out * cos (angle),
                          layout->y - out * sin (angle), (1 - cos (angle)) / 2,
                          (1 + sin (angle)) / 2);
    }
}

/* What a label hides */

/* A line on the page. */
typedef struct
{
  double x0;
  double y0;
  double x1;
  double y1;
} Stroke;

static void
add_strokes (const BwVectorLayout *layout, const GArray *path, GArray *strokes)
{
  for (guint i = 1; path != NULL && i < path->len; i++)
    {
      const BwVectorSample *from = &g_array_index (path, BwVectorSample, i - 1), *to = from + 1;
      Stroke stroke = { bw_vector_x (layout, from->u_v), bw_vector_y (layout, from->v_v),
                        bw_vector_x (layout, to->u_v), bw_vector_y (layout, to->v_v) };
      if (hypot (stroke.x1 - stroke.x0, stroke.y1 - stroke.y0) >= LEAST_STROKE)
        g_array_append_val (strokes, stroke);
    }
}

/* The path, and the arrows of the burst. */
static GArray *
strokes_of (const BwVectorLayout *layout)
{
  GArray *strokes = g_array_new (FALSE, FALSE, sizeof (Stroke));

  add_strokes (layout, layout->path, strokes);
  add_strokes (layout, layout->other, strokes);
  for (guint i = 0; i < layout->targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (layout->targets, BwVectorTarget, i);
      Stroke stroke = { layout->x, layout->y, bw_vector_x (layout, target->u_v),
                        bw_vector_y (layout, target->v_v) };
      if (target->bar == BW_N_BARS)
        g_array_append_val (strokes, stroke);
    }
  return strokes;
}

/* Narrows the part @from to @to of a stroke to what lies between @low and @high along one axis. */
static gboolean
clip (double start, double length, double low, double high, double *from, double *to)
{
  if (fabs (length) < 1e-9)
    return start > low && start < high;
  double a = (low - start) / length, b = (high - start) / length;
  *from = fmax (*from, fmin (a, b));
  *to = fmin (*to, fmax (a, b));
  return *from < *to;
}

static gboolean
crosses (const Stroke *stroke, const BwBox *box)
{
  double from = 0, to = 1;
  return clip (stroke->x0, stroke->x1 - stroke->x0, box->x, box->x + box->width, &from, &to)
         && clip (stroke->y0, stroke->y1 - stroke->y0, box->y, box->y + box->height, &from, &to);
}

static gboolean
is_crossed (const GArray *strokes, const BwBox *box)
{
  for (guint i = 0; i < strokes->len; i++)
    if (crosses (&g_array_index (strokes, Stroke, i), box))
      return TRUE;
  return FALSE;
}

static gboolean
hides_box (const BwVectorLayout *layout, const BwBox *box)
{
  double half = bw_vector_box_half (layout);
  for (guint i = 0; i < layout->targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (layout->targets, BwVectorTarget, i);
      BwBox at = { bw_vector_x (layout, target->u_v) - half,
                   bw_vector_y (layout, target->v_v) - half, 2 * half, 2 * half };
      if (target->bar < BW_N_BARS && bw_box_overlaps (box, &at))
        return TRUE;
    }
  return FALSE;
}

static double
cost_of (const BwVectorLayout *layout, const GArray *strokes, const BwBox *box)
{
  gboolean axis = (box->x < layout->x && box->x + box->width > layout->x)
                  || (box->y < layout->y && box->y + box->height > layout->y);
  return (hides_box (layout, box) ? COST_OF_BOX : 0)
         + (is_crossed (strokes, box) ? COST_OF_STROKE : 0) + (axis ? COST_OF_AXIS : 0);
}

/* Axes */

static gboolean
claim_axis (BwVectorLayout *layout, const char *name, double x, double y, double across,
            double down)
{
  BwLabel label = { (char *) name, bw_canvas_measure (layout->canvas, name), BW_INK_GRAPHITE_LIGHT,
                    PANGO_ALIGN_LEFT, .halo = TRUE };
  label.box.x = x - across * label.box.width;
  label.box.y = y - down * label.box.height;
  return bw_canvas_claim (layout->canvas, &label);
}

/* The axes by their names: outside of the ring, beside the degrees, or else inside. */
static void
claim_axes (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  gboolean coded = bw_vector_is_coded (layout->what);
  const char *right = coded ? _ ("U (B−Y), mV") : _ ("Pb, mV");
  const char *up = coded ? _ ("V (R−Y), mV") : _ ("Pr, mV");
  double inside = layout->radius - canvas->pad / 2, outside = layout->radius + 0.75 * canvas->pad;
  double beside = bw_canvas_measure (canvas, "90°").width / 2 + canvas->pad;

  if (!claim_axis (layout, right, layout->x + outside, layout->y + canvas->text_height / 2, 0, 0))
    claim_axis (layout, right, layout->x + inside, layout->y - canvas->pad / 4, 1, 1);
  if (!claim_axis (layout, up, layout->x + beside, layout->y - outside, 0, 1))
    claim_axis (layout, up, layout->x + canvas->pad / 2, layout->y - inside, 0, 0);
}

/* In a corner between the axis and the line of the grid, one that no line crosses unless @over. */
static gboolean
claim_figure (BwVectorLayout *layout, const GArray *strokes, double volts, gboolean upright,
              gboolean over)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *text = bw_levels_text_number (volts * 1e3, layout->what->mark);
  double x = bw_vector_x (layout, upright ? 0 : volts), gap = canvas->pad / 4;
  double y = bw_vector_y (layout, upright ? volts : 0);
  BwLabel label = { text, bw_canvas_measure (canvas, text), BW_INK_GRAPHITE_LIGHT, PANGO_ALIGN_LEFT,
                    .halo = over };

  for (int corner = 0; corner < 4; corner++)
    {
      label.box.x = corner % 2 == 0 ? x - gap - label.box.width : x + gap;
      label.box.y = (corner < 2) == upright ? y - gap / 2 - label.box.height : y + gap / 2;
      if ((over || !is_crossed (strokes, &label.box)) && bw_canvas_claim (canvas, &label))
        return TRUE;
    }
  return FALSE;
}

/* Claims the figures of one axis. If the lines leave room for none, one figure stands on them, so
 * that the scale can be read. */
static void
claim_figures (BwVectorLayout *layout, const GArray *strokes, gboolean upright)
{
  double reach_v = layout->full_v * (1 - layout->canvas->text_height / layout->radius);
  guint n = 0;

  for (double v = layout->tick_v; v < reach_v; v += layout->tick_v)
    {
      n += claim_figure (layout, strokes, v, upright, FALSE);
      n += claim_figure (layout, strokes, -v, upright, FALSE);
    }
  if (n == 0)
    claim_figure (layout, strokes, layout->tick_v, upright, TRUE);
}

/* Names */

static gboolean
is_inside (const BwVectorLayout *layout, const BwBox *box)
{
  double dx = fmax (fabs (box->x - layout->x), fabs (box->x + box->width - layout->x));
  double dy = fmax (fabs (box->y - layout->y), fabs (box->y + box->height - layout->y));
  return hypot (dx, dy) < layout->radius;
}

/* Somewhere around its box, best where it hides nothing and on the side away from the middle. */
static void
claim_name (BwVectorLayout *layout, const GArray *strokes, const BwVectorTarget *target)
{
  BwCanvas *canvas = layout->canvas;
  const char *name = bw_vector_name (layout->what, target);
  BwBox box = bw_canvas_measure (canvas, name), best = box;
  double away = bw_vector_box_half (layout) + canvas->pad / 2, least = G_MAXDOUBLE;
  double x = bw_vector_x (layout, target->u_v), y = bw_vector_y (layout, target->v_v);

  for (int step = -8; step < 8; step++)
    for (int ring = 0; ring < 3; ring++)
      {
        double angle = target->phase_deg * G_PI / 180 + step * G_PI / 8;
        double off = away + ring * canvas->pad;
        box.x = x + cos (angle) * (off + box.width / 2) - box.width / 2;
        box.y = y - sin (angle) * (off + box.height / 2) - box.height / 2;
        double cost = cost_of (layout, strokes, &box) + abs (step) + COST_OF_DISTANCE * ring;
        if (cost < least && is_inside (layout, &box) && bw_canvas_is_free (canvas, box))
          {
            least = cost;
            best = box;
          }
      }
  BwLabel label = { (char *) name, best, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT, .halo = TRUE };
  if (target->bar == BW_N_BARS)
    label.role = BW_INK_ACCENT;
  if (least < G_MAXDOUBLE)
    bw_canvas_claim (canvas, &label);
}

/**
 * bw_vector_claim_labels:
 *
 * Claims the places of all labels on and around the plane.
 *
 * Returns: whether those have one that can be left out by a step of #BwVectorLeave
 */
gboolean
bw_vector_claim_labels (BwVectorLayout *layout)
{
  g_autoptr (GArray) strokes = strokes_of (layout);
  gboolean all = TRUE;

  if (bw_vector_keeps (layout, BW_VECTOR_LEAVE_TABLE))
    all &= claim_table (layout);
  if (bw_vector_keeps (layout, BW_VECTOR_LEAVE_DEGREES))
    claim_degrees (layout);
  claim_axes (layout);
  for (guint i = 0; i < layout->targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (layout->targets, BwVectorTarget, i);
      if (!target->switched || target->bar == BW_N_BARS)
        claim_name (layout, strokes, target);
    }
  claim_figures (layout, strokes, FALSE);
  claim_figures (layout, strokes, TRUE);
  return all;
}
