/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "picture-area.h"

G_BEGIN_DECLS

/**
 * BwCursor:
 * @point: stays, however the drawing is zoomed
 * @x: where that is; likewise @y
 * @shown: whether it is on the page
 * @style: how it is drawn, with @lines
 */
typedef struct
{
  gboolean set;
  BwDrawingPoint point;
  double x;
  double y;
  gboolean shown;
  BwCursorStyle style;
  BwBox lines;
} BwCursor;

struct _BwPictureArea
{
  GtkWidget parent_instance;

  BwPictureSource source; /* without build: nothing is shown */
  gpointer data;
  char *font;
  BwInk ink;
  BwDrawing *drawing;  /* nullable: what was built last */
  GdkTexture *painted; /* nullable: the drawing in pixels */
  gboolean zoomed;     /* whether @zoom is shown, not the whole */
  BwZoom zoom;
  gboolean keeps_zoom; /* whether @zoom is to be shown, if the next drawing has it */

  BwCursor cursors[2];
  guint active;     /* the one that the pointer and the keys move */
  gboolean pointed; /* whether the pointer has moved that last */
  gboolean lifted;  /* whether the pointer has left and taken it along: it is not seen */
  double drag_x;
  double drag_y;
  gboolean dragged;
};

/* picture-area-cursor.c */
gboolean bw_picture_area_move_cursor (BwPictureArea *self, double x, double y);
void bw_picture_area_lift_cursor (BwPictureArea *self);
void bw_picture_area_place_cursors (BwPictureArea *self);
void bw_picture_area_install_cursor (GtkWidgetClass *widget_class);
char *bw_picture_area_words (BwPictureArea *self);
void bw_picture_area_tell (BwPictureArea *self);

/* picture-area-zoom.c */
void bw_picture_area_install_zoom (GtkWidgetClass *widget_class);
void bw_picture_area_add_controllers (BwPictureArea *self);

/* picture-area-paint.c */
void bw_picture_area_paint (GtkWidget *widget, GtkSnapshot *snapshot);

/* picture-area.c */
void bw_picture_area_tell_shown (BwPictureArea *self);

G_END_DECLS
