/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "picture-area.h"

G_BEGIN_DECLS

/**
 * BwCursor:
 * @y: a height at which the point was read
 * @top: where its line is drawn from; likewise @left for the line across the map
 *
 * A cursor stays at its point of the raster, however the picture is zoomed.
 */
typedef struct
{
  gboolean set;
  BwPicturePoint point;
  double x;
  double y;
  double top;
  double bottom;
  double left;
  double right;
  gboolean shown;
} BwCursor;

struct _BwPictureArea
{
  GtkWidget parent_instance;

  BwPicture *picture; /* nullable */
  char *font;
  BwInk ink;
  GskRenderNode *drawing; /* nullable: what was drawn last, for the present size */

  BwCursor cursors[2];
  guint active; /* the one that the pointer and the keys move */
  double drag_x;
  double drag_y;
  gboolean dragged;
};

void bw_picture_area_redraw (BwPictureArea *self);

/* picture-area-cursor.c */
gboolean bw_picture_area_move_cursor (BwPictureArea *self, double x, double y);
void bw_picture_area_place_cursors (BwPictureArea *self);
void bw_picture_area_install_cursor (GtkWidgetClass *widget_class);
char *bw_picture_area_words (BwPictureArea *self);
void bw_picture_area_tell (BwPictureArea *self);

G_END_DECLS
