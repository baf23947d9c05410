/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

#include <math.h>

/* A drawing on the screen, and the cursors over it. */

/* The drawing in pixels of the screen, so that a cursor that moves over it copies them. */
static GdkTexture *
paint (BwPictureArea *self)
{
  int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  int width = (int) bw_drawing_width (self->drawing) * scale;
  int height = (int) bw_drawing_height (self->drawing) * scale;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, scale, scale);
  bw_drawing_paint (self->drawing, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface),
                                                         stride * (gsize) height,
                                                         (GDestroyNotify) cairo_surface_destroy,
                                                         surface);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

#define DASH 5
#define GAP 3

static void
snapshot_bar (GtkSnapshot *snapshot, const GdkRGBA *colour, float x, float y, float width,
              float height)
{
  gtk_snapshot_append_color (snapshot, colour, &GRAPHENE_RECT_INIT (x, y, width, height));
}

/* The first cursor is a line, the second a dashed one. */
typedef struct
{
  GtkSnapshot *snapshot;
  GdkRGBA colour;
  float dash;
} Pen;

static void
snapshot_down (const Pen *pen, double x, double top, double bottom)
{
  for (float at = (float) top; at < (float) bottom; at += pen->dash + GAP)
    snapshot_bar (pen->snapshot, &pen->colour, (float) floor (x), at, 1,
                  MIN (pen->dash, (float) bottom - at));
}

static void
snapshot_across (const Pen *pen, double y, double left, double right)
{
  for (float at = (float) left; at < (float) right; at += pen->dash + GAP)
    snapshot_bar (pen->snapshot, &pen->colour, at, (float) floor (y),
                  MIN (pen->dash, (float) right - at), 1);
}

static void
snapshot_cursor (BwPictureArea *self, GtkSnapshot *snapshot, guint which)
{
  const BwCursor *cursor = &self->cursors[which];
  guint32 rgb = bw_ink_rgb (self->ink.theme, BW_INK_ACCENT);
  const Pen pen = { snapshot,
                    { (float) ((rgb >> 16) & 0xff) / 255, (float) ((rgb >> 8) & 0xff) / 255,
                      (float) (rgb & 0xff) / 255, 1 },
                    which == 0 ? G_MAXFLOAT : DASH };
  double left = cursor->lines.x, right = left + cursor->lines.width;
  double top = cursor->lines.y, bottom = top + cursor->lines.height;

  if (cursor->style == BW_CURSOR_THING)
    {
      snapshot_down (&pen, left, top, bottom);
      snapshot_down (&pen, right - 1, top, bottom);
      snapshot_across (&pen, top, left, right);
      snapshot_across (&pen, bottom - 1, left, right);
      return;
    }
  snapshot_down (&pen, cursor->x, top, bottom);
  if (cursor->style == BW_CURSOR_CROSS)
    snapshot_across (&pen, cursor->y, left, right);
}

/**
 * bw_picture_area_paint:
 *
 * The drawing, and the cursors over it.
 */
void
bw_picture_area_paint (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);

  if (self->painted == NULL && bw_picture_area_get_drawing (self) != NULL)
    self->painted = paint (self);
  if (self->painted == NULL)
    return;
  gtk_snapshot_append_texture (snapshot, self->painted,
                               &GRAPHENE_RECT_INIT (0, 0, (float) bw_drawing_width (self->drawing),
                                                    (float) bw_drawing_height (self->drawing)));
  for (guint i = 0; i < G_N_ELEMENTS (self->cursors); i++)
    if (self->cursors[i].shown && !(self->lifted && i == self->active))
      snapshot_cursor (self, snapshot, i);
}
