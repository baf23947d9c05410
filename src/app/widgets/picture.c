/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture.h"

void
bw_picture_free (BwPicture *picture)
{
  picture->klass->free (picture);
}

/**
 * bw_picture_draw:
 *
 * Draws what is shown so that it fills @page.
 */
void
bw_picture_draw (const BwPicture *picture, cairo_t *cr, const BwPicturePage *page)
{
  picture->klass->draw (picture, cr, page);
}

/**
 * bw_picture_name:
 *
 * Returns: (transfer full): what is drawn, in a few words
 */
char *
bw_picture_name (const BwPicture *picture)
{
  return picture->klass->name (picture);
}

/**
 * bw_picture_describe:
 *
 * Returns: (transfer full): the drawing in words, for those who do not see it
 */
char *
bw_picture_describe (const BwPicture *picture)
{
  return picture->klass->describe (picture);
}

/**
 * bw_picture_file_stem:
 *
 * Returns: (transfer full): a name for a file with it, without suffix
 */
char *
bw_picture_file_stem (const BwPicture *picture)
{
  return picture->klass->file_stem (picture);
}

/**
 * bw_picture_can_be_read:
 *
 * Returns: whether cursors read something in it
 */
gboolean
bw_picture_can_be_read (const BwPicture *picture)
{
  return picture->klass->read != NULL;
}

/**
 * bw_picture_read:
 * @point: (out): what is at @x, @y
 *
 * Returns: whether there is something to read
 */
gboolean
bw_picture_read (const BwPicture *picture, const BwPicturePage *page, double x, double y,
                 BwPicturePoint *point)
{
  if (!bw_picture_can_be_read (picture) || x < 0 || y < 0 || x >= page->width || y >= page->height)
    return FALSE;
  return picture->klass->read (picture, page, x, y, point);
}

/**
 * bw_picture_place:
 * @x: (out): where @point is
 * @y: (inout): where it is; goes in as a height at which it was read
 *
 * The other way round from bw_picture_read().
 *
 * Returns: whether the point is shown
 */
gboolean
bw_picture_place (const BwPicture *picture, const BwPicturePage *page, const BwPicturePoint *point,
                  double *x, double *y)
{
  return bw_picture_can_be_read (picture) && picture->klass->place (picture, page, point, x, y);
}

/**
 * bw_picture_words:
 *
 * Returns: (transfer full): what a cursor at @point reads
 */
char *
bw_picture_words (const BwPicture *picture, const BwPicturePoint *point)
{
  return picture->klass->words (picture, point);
}

/**
 * bw_picture_difference:
 *
 * Returns: (transfer full): how far two points are apart; empty where that means nothing
 */
char *
bw_picture_difference (const BwPicture *picture, const BwPicturePoint *a, const BwPicturePoint *b)
{
  return picture->klass->difference != NULL ? picture->klass->difference (picture, a, b)
                                            : g_strdup ("");
}

/**
 * bw_picture_can_be_zoomed:
 *
 * Returns: whether a part of it can be shown alone
 */
gboolean
bw_picture_can_be_zoomed (const BwPicture *picture)
{
  return picture->klass->is_whole != NULL;
}

/**
 * bw_picture_is_whole:
 *
 * Returns: whether nothing is left out
 */
gboolean
bw_picture_is_whole (const BwPicture *picture)
{
  return !bw_picture_can_be_zoomed (picture) || picture->klass->is_whole (picture);
}

/**
 * bw_picture_show_whole:
 *
 * Shows everything again.
 */
void
bw_picture_show_whole (BwPicture *picture)
{
  if (bw_picture_can_be_zoomed (picture))
    picture->klass->show_whole (picture);
}

/**
 * bw_picture_zoom:
 * @x: what is there keeps its place; the middle, if nothing is there
 * @y: likewise
 * @factor: how much larger things become
 */
void
bw_picture_zoom (BwPicture *picture, const BwPicturePage *page, double x, double y, double factor)
{
  if (bw_picture_can_be_zoomed (picture))
    picture->klass->zoom (picture, page, x, y, factor);
}

/**
 * bw_picture_pan:
 * @dx: by how much what is drawn moves to the right
 * @dy: downwards
 */
void
bw_picture_pan (BwPicture *picture, const BwPicturePage *page, double dx, double dy)
{
  if (bw_picture_can_be_zoomed (picture))
    picture->klass->pan (picture, page, dx, dy);
}
