/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vector-picture.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/scope-text.h"

/* The drawing of the colour difference signals. A point of it is read as volts along +(B−Y), or Pb,
 * along, and along +(R−Y), or Pr, down. */
typedef struct
{
  BwPicture parent;
  BwLevelsHold *hold; /* owned */
  BwVectorView view;
} VectorPicture;

static const BwPictureClass vector_picture_class;

/**
 * bw_picture_is_vectors:
 *
 * Returns: whether it was made by bw_vector_picture_new()
 */
gboolean
bw_picture_is_vectors (const BwPicture *picture)
{
  return picture->klass == &vector_picture_class;
}

static const VectorPicture *
vector_picture (const BwPicture *picture)
{
  g_return_val_if_fail (bw_picture_is_vectors (picture), NULL);
  return (const VectorPicture *) picture;
}

/**
 * bw_vector_picture_new:
 * @hold: of a signal that bw_vector_view_can_draw()
 * @view: copied; its model is that of @hold
 *
 * Returns: (transfer full): the drawing
 */
BwPicture *
bw_vector_picture_new (BwLevelsHold *hold, const BwVectorView *view)
{
  VectorPicture *picture = g_new0 (VectorPicture, 1);

  picture->parent = (BwPicture){ &vector_picture_class, BW_CURSOR_CROSS };
  picture->hold = bw_levels_hold_ref (hold);
  picture->view = *view;
  picture->view.model = bw_levels_hold_model (hold);
  return &picture->parent;
}

static void
free_picture (BwPicture *base)
{
  VectorPicture *picture = (VectorPicture *) base;
  bw_levels_hold_unref (picture->hold);
  g_free (picture);
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  bw_draw_vector_view (cr, page->width, page->height, page->ink, &vector_picture (base)->view);
}

static const BwSynthesisCase *
case_of (const BwPicture *base)
{
  return bw_levels_model_case (vector_picture (base)->view.model);
}

static char *
name (const BwPicture *base)
{
  return g_strdup_printf (_ ("The colour difference signals of a line of %s, drawn"),
                          case_of (base)->raster->name);
}

static char *
describe (const BwPicture *base)
{
  return bw_vector_view_describe (&vector_picture (base)->view);
}

static char *
file_stem (const BwPicture *base)
{
  return g_strdup_printf ("%s-vectors", case_of (base)->raster->id);
}

static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  BwVectorPoint read;
  if (!bw_vector_view_read (page->width, page->height, page->ink, &vector_picture (base)->view, x,
                            y, &read))
    return FALSE;
  *point = (BwPicturePoint){ .along = read.u_v, .down = read.v_v };
  point->at[BW_VECTOR_POINT_AMPLITUDE] = read.amplitude_v;
  point->at[BW_VECTOR_POINT_PHASE] = read.phase_deg;
  point->at[BW_VECTOR_POINT_NEAREST] = read.nearest;
  return TRUE;
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y)
{
  return bw_vector_view_place (page->width, page->height, page->ink, &vector_picture (base)->view,
                               point->along, point->down, x, y);
}

static gboolean
is_component (const BwPicture *base)
{
  return case_of (base)->form.signal == BW_SIGNAL_COMPONENT;
}

static char *
words (const BwPicture *base, const BwPicturePoint *point)
{
  guint nearest = (guint) point->at[BW_VECTOR_POINT_NEAREST];
  double amplitude_v = point->at[BW_VECTOR_POINT_AMPLITUDE];
  g_autofree char *along = bw_scope_volts (point->along);
  g_autofree char *up = bw_scope_volts (point->down);
  g_autofree char *amplitude = bw_scope_volts (amplitude_v);
  g_autofree char *whole = bw_scope_volts (2 * amplitude_v);
  g_autofree char *phase = bw_scope_number (point->at[BW_VECTOR_POINT_PHASE], 1);
  const char *bar = nearest < BW_N_BARS ? bw_kind_label (&bw_bars, nearest) : "–";

  if (is_component (base))
    return g_strdup_printf (_ ("Pb %s, Pr %s: %s from the middle at %s°; nearest bar: %s"), along,
                            up, amplitude, phase, bar);
  return g_strdup_printf (_ ("%s p-p at %s° (B−Y %s, R−Y %s); nearest bar: %s"), whole, phase,
                          along, up, bar);
}

static char *
difference (const BwPicture *base, const BwPicturePoint *a, const BwPicturePoint *b)
{
  double turn = b->at[BW_VECTOR_POINT_PHASE] - a->at[BW_VECTOR_POINT_PHASE];
  double part = is_component (base) ? 1 : 2;
  g_autofree char *degrees = bw_scope_number (turn - 360 * round (turn / 360), 1);
  g_autofree char *longer = bw_scope_volts (
      part * (b->at[BW_VECTOR_POINT_AMPLITUDE] - a->at[BW_VECTOR_POINT_AMPLITUDE]));
  return g_strdup_printf (is_component (base) ? _ ("Between the cursors: %s and %s°")
                                              : _ ("Between the cursors: %s p-p and %s°"),
                          longer, degrees);
}

static const BwPictureClass vector_picture_class = {
  .free = free_picture,
  .draw = draw,
  .name = name,
  .describe = describe,
  .file_stem = file_stem,
  .read = read_point,
  .place = place,
  .words = words,
  .difference = difference,
};
