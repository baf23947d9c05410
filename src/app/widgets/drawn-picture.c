/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawn-picture.h"

typedef struct
{
  BwPicture parent;
  BwBuildFunc build;
  gpointer data;
  GDestroyNotify free_data;
  gboolean zoomed;
  BwZoom zoom;
  BwDrawing *last;
  BwTheme theme;
  char *font;
} Drawn;

static const BwPictureClass drawn_class;

static BwDrawing *
drawing_for (const BwPicture *base, const BwPicturePage *page)
{
  Drawn *drawn = (Drawn *) base;
  if (drawn->last != NULL && bw_drawing_width (drawn->last) == page->width
      && bw_drawing_height (drawn->last) == page->height && drawn->theme == page->ink->theme
      && g_strcmp0 (drawn->font, page->ink->font) == 0)
    return drawn->last;
  g_clear_pointer (&drawn->last, bw_drawing_unref);
  g_free (drawn->font);
  drawn->font = g_strdup (page->ink->font);
  drawn->theme = page->ink->theme;
  drawn->last = drawn->build (drawn->data, page->width, page->height, page->ink,
                              drawn->zoomed ? &drawn->zoom : NULL);
  return drawn->last;
}

static BwDrawing *
any (const BwPicture *base)
{
  static const BwInk ink = { BW_THEME_LIGHT, NULL, BW_INK_SCREEN_DPI };
  const BwPicturePage page = { 800, 500, &ink };
  const Drawn *drawn = (const Drawn *) base;
  return drawn->last != NULL ? drawn->last : drawing_for (base, &page);
}

static void
set_zoom (BwPicture *base, const BwZoom *zoom)
{
  Drawn *drawn = (Drawn *) base;
  drawn->zoomed = zoom != NULL;
  if (zoom != NULL)
    drawn->zoom = *zoom;
  g_clear_pointer (&drawn->last, bw_drawing_unref);
}

static void
free_picture (BwPicture *base)
{
  Drawn *drawn = (Drawn *) base;
  g_clear_pointer (&drawn->last, bw_drawing_unref);
  if (drawn->free_data != NULL)
    drawn->free_data (drawn->data);
  g_free (drawn->font);
  g_free (drawn);
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  bw_drawing_paint (drawing_for (base, page), cr);
}

static char *
name (const BwPicture *base)
{
  return g_strdup (bw_drawing_name (any (base)));
}

static char *
describe (const BwPicture *base)
{
  return g_strdup (bw_drawing_description (any (base)));
}

static char *
file_stem (const BwPicture *base)
{
  return g_strdup (bw_drawing_file_stem (any (base)));
}

static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  BwDrawingPoint read;
  if (!bw_drawing_read (drawing_for (base, page), x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){ (int) read.id, read.across, read.down, { 0 } };
  return TRUE;
}

static BwDrawingPoint
own (const BwPicturePoint *point)
{
  return (BwDrawingPoint){ (guint) point->row, point->along, point->down };
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y)
{
  const BwDrawingPoint at = own (point);
  return bw_drawing_find (drawing_for (base, page), &at, x, y);
}

static char *
words (const BwPicture *base, const BwPicturePoint *point)
{
  const BwDrawingPoint at = own (point);
  return bw_drawing_words (any (base), &at);
}

static char *
difference (const BwPicture *base, const BwPicturePoint *a, const BwPicturePoint *b)
{
  const BwDrawingPoint first = own (a), second = own (b);
  return bw_drawing_difference (any (base), &first, &second);
}

static gboolean
is_whole (const BwPicture *base)
{
  return bw_drawing_is_whole (any (base));
}

static void
show_whole (BwPicture *base)
{
  set_zoom (base, NULL);
}

static void
zoom_by (BwPicture *base, const BwPicturePage *page, double x, double y, double factor)
{
  BwZoom zoom = bw_drawing_zoomed (drawing_for (base, page), x, y, factor);
  set_zoom (base, &zoom);
}

static void
pan (BwPicture *base, const BwPicturePage *page, double dx, double dy)
{
  BwZoom zoom = bw_drawing_panned (drawing_for (base, page), dx, dy);
  set_zoom (base, &zoom);
}

static const BwPictureClass drawn_class = {
  free_picture, draw,       name,     describe,   file_stem, read_point, place,
  words,        difference, is_whole, show_whole, zoom_by,   pan,
};

BwPicture *
bw_drawn_picture_new (BwBuildFunc build, gpointer data, GDestroyNotify free_data)
{
  Drawn *drawn = g_new0 (Drawn, 1);
  BwBox lines;

  drawn->parent.klass = &drawn_class;
  drawn->build = build;
  drawn->data = data;
  drawn->free_data = free_data;
  drawn->parent.style = bw_drawing_cursor (any (&drawn->parent), 0, 0, &lines);
  return &drawn->parent;
}

gpointer
bw_drawn_picture_data (const BwPicture *picture)
{
  return picture->klass == &drawn_class ? ((const Drawn *) picture)->data : NULL;
}

void
bw_drawn_picture_show_as (BwPicture *picture, const BwPicture *before)
{
  BwZoom zoom, was;
  if (before == NULL || before->klass != &drawn_class)
    return;
  was = bw_drawing_shown (any (before));
  if (bw_drawing_shown_as (any (picture), &was, &zoom))
    set_zoom (picture, &zoom);
}
