/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/canvas.h"

G_BEGIN_DECLS

/* Drawings behind one face: drawn, described, read and zoomed alike. Each kind of drawing is a
 * struct that begins with a BwPicture, and a BwPictureClass. */

typedef struct _BwPicture BwPicture;

/**
 * BwPicturePage:
 *
 * What a picture is drawn on.
 */
typedef struct
{
  double width;
  double height;
  const BwInk *ink;
} BwPicturePage;

/**
 * BwPicturePoint:
 * @row: which of the rows one above the other
 * @along: in the unit of the axis that runs across: seconds, or whatever the picture shows
 * @down: in the unit of the axis that runs down, where there is one
 * @at: the picture's own numbers for its words
 *
 * A point of a picture, read.
 */
typedef struct
{
  int row;
  double along;
  double down;
  double at[4];
} BwPicturePoint;

/* How a cursor is drawn. */
typedef enum
{
  BW_CURSOR_ROWS,  /* through all rows */
  BW_CURSOR_PANEL, /* in its row alone: each has a scale of its own */
  BW_CURSOR_CROSS  /* across and down */
} BwCursorStyle;

/**
 * BwPictureClass:
 * @name: (transfer full): what is drawn, in a few words
 * @describe: (transfer full): the drawing in words, for those who do not see it
 * @file_stem: (transfer full): a name for a file, without suffix
 * @read: (nullable): what is at a place; %NULL where nothing is read
 * @place: where a point is; @y goes in as a height at which it was read
 * @words: (transfer full): what a cursor reads
 * @difference: (transfer full) (nullable): how far two points are apart
 * @is_whole: (nullable): whether nothing is left out; %NULL where it is not zoomed
 * @zoom: about a place, which keeps its place; the middle, if nothing is there
 * @pan: moves what is drawn
 *
 * The functions of one kind of drawing. @read, @place and @words go together, and so do @is_whole,
 * @show_whole, @zoom and @pan.
 */
typedef struct
{
  void (*free) (BwPicture *picture);
  void (*draw) (const BwPicture *picture, cairo_t *cr, const BwPicturePage *page);
  char *(*name) (const BwPicture *picture);
  char *(*describe) (const BwPicture *picture);
  char *(*file_stem) (const BwPicture *picture);
  gboolean (*read) (const BwPicture *picture, const BwPicturePage *page, double x, double y,
                    BwPicturePoint *point);
  gboolean (*place) (const BwPicture *picture, const BwPicturePage *page,
                     const BwPicturePoint *point, double *x, double *y);
  char *(*words) (const BwPicture *picture, const BwPicturePoint *point);
  char *(*difference) (const BwPicture *picture, const BwPicturePoint *a, const BwPicturePoint *b);
  gboolean (*is_whole) (const BwPicture *picture);
  void (*show_whole) (BwPicture *picture);
  void (*zoom) (BwPicture *picture, const BwPicturePage *page, double x, double y, double factor);
  void (*pan) (BwPicture *picture, const BwPicturePage *page, double dx, double dy);
} BwPictureClass;

/**
 * BwPicture:
 * @style: of its cursors
 */
struct _BwPicture
{
  const BwPictureClass *klass;
  BwCursorStyle style;
};

void bw_picture_free (BwPicture *picture);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPicture, bw_picture_free)

void bw_picture_draw (const BwPicture *picture, cairo_t *cr, const BwPicturePage *page);
char *bw_picture_name (const BwPicture *picture);
char *bw_picture_describe (const BwPicture *picture);
char *bw_picture_file_stem (const BwPicture *picture);

gboolean bw_picture_can_be_read (const BwPicture *picture);
gboolean bw_picture_read (const BwPicture *picture, const BwPicturePage *page, double x, double y,
                          BwPicturePoint *point);
gboolean bw_picture_place (const BwPicture *picture, const BwPicturePage *page,
                           const BwPicturePoint *point, double *x, double *y);
char *bw_picture_words (const BwPicture *picture, const BwPicturePoint *point);
char *bw_picture_difference (const BwPicture *picture, const BwPicturePoint *a,
                             const BwPicturePoint *b);

gboolean bw_picture_can_be_zoomed (const BwPicture *picture);
gboolean bw_picture_is_whole (const BwPicture *picture);
void bw_picture_show_whole (BwPicture *picture);
void bw_picture_zoom (BwPicture *picture, const BwPicturePage *page, double x, double y,
                      double factor);
void bw_picture_pan (BwPicture *picture, const BwPicturePage *page, double dx, double dy);

G_END_DECLS
