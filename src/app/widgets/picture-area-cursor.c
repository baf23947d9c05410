/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

/* The two cursors of a drawing. The pointer and the arrow keys move the active one; "c" sets the
 * second where the first is, "x" makes the other one active, Escape takes the second away. */

#define STEP 1.0
#define LARGE_STEP 10.0

static BwCursor *
active (BwPictureArea *self)
{
  return &self->cursors[self->active];
}

/* Where a cursor of the present drawing stands. */
static void
place (BwPictureArea *self, BwCursor *cursor)
{
  cursor->shown = cursor->set && self->drawing != NULL
                  && bw_drawing_find (self->drawing, &cursor->point, &cursor->x, &cursor->y);
  if (cursor->shown)
    cursor->style = bw_drawing_cursor (self->drawing, cursor->x, cursor->y, &cursor->lines);
}

/**
 * bw_picture_area_place_cursors:
 *
 * Finds where the cursors are in another drawing of the same thing.
 */
void
bw_picture_area_place_cursors (BwPictureArea *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->cursors); i++)
    place (self, &self->cursors[i]);
}

/**
 * bw_picture_area_words:
 *
 * Returns: (transfer full): what the cursors read; empty if none is seen
 */
char *
bw_picture_area_words (BwPictureArea *self)
{
  const BwCursor *one = active (self);
  if (!one->set || self->lifted || self->drawing == NULL || !bw_drawing_can_be_read (self->drawing))
    return g_strdup ("");
  g_autofree char *words = bw_drawing_words (self->drawing, &one->point);
  if (!self->cursors[0].set || !self->cursors[1].set)
    return g_steal_pointer (&words);
  g_autofree char *difference = bw_drawing_difference (self->drawing, &self->cursors[1].point,
                                                       &self->cursors[0].point);
  return *difference != '\0' ? g_strdup_printf ("%s. %s", words, difference)
                             : g_steal_pointer (&words);
}

/**
 * bw_picture_area_move_cursor:
 *
 * Moves the active cursor if there is something to read there.
 *
 * Returns: whether there is
 */
gboolean
bw_picture_area_move_cursor (BwPictureArea *self, double x, double y)
{
  BwCursor *cursor = active (self);

  if (self->drawing == NULL || !bw_drawing_read (self->drawing, x, y, &cursor->point))
    return FALSE;
  cursor->set = cursor->shown = TRUE;
  self->pointed = self->lifted = FALSE;
  cursor->x = x;
  cursor->y = y;
  cursor->style = bw_drawing_cursor (self->drawing, x, y, &cursor->lines);
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

/**
 * bw_picture_area_lift_cursor:
 *
 * The pointer leaves, and the one cursor that it has moved goes with it, lest it be taken for a part
 * of the drawing. A key or the second cursor finds it where it was. Two cursors are a measurement,
 * which stays.
 */
void
bw_picture_area_lift_cursor (BwPictureArea *self)
{
  if (!self->pointed || self->cursors[1].set)
    return;
  self->lifted = TRUE;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* By a key; the first one finds the first thing. */
static void
step (BwPictureArea *self, double dx, double dy)
{
  const BwCursor *cursor = active (self);
  double x = cursor->shown ? cursor->x : -1, y = cursor->shown ? cursor->y : -1;

  if (self->drawing != NULL && bw_drawing_step (self->drawing, dx, dy, &x, &y))
    bw_picture_area_move_cursor (self, x, y);
}

static void
on_step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  step (BW_PICTURE_AREA (widget), g_variant_get_double (parameter), 0);
}

static void
on_row (GtkWidget *widget, const char *action, GVariant *parameter)
{
  step (BW_PICTURE_AREA (widget), 0, g_variant_get_double (parameter));
}

/**
 * bw_picture_area_set_second:
 *
 * Sets the second cursor, or moves it, to where the first one is; the first one then goes on.
 */
void
bw_picture_area_set_second (BwPictureArea *self)
{
  if (!active (self)->set)
    step (self, STEP, 0);
  if (!active (self)->set)
    return;
  self->lifted = FALSE;
  self->cursors[1] = *active (self);
  if (self->active == 1)
    self->active = self->cursors[0].set ? 0 : 1;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_second (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_picture_area_set_second (BW_PICTURE_AREA (widget));
}

static void
on_other (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  if (!self->cursors[1 - self->active].set)
    return;
  self->active = 1 - self->active;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (widget);
}

static void
on_drop (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  self->cursors[1].set = self->cursors[1].shown = FALSE;
  self->active = 0;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (widget);
}

static void
bind (GtkWidgetClass *widget_class, guint key, const char *action, double direction)
{
  gtk_widget_class_add_binding_action (widget_class, key, 0, action, "d", direction * STEP);
  gtk_widget_class_add_binding_action (widget_class, key, GDK_CONTROL_MASK, action, "d",
                                       direction * LARGE_STEP);
}

/**
 * bw_picture_area_install_cursor:
 *
 * Installs the keys of the cursors.
 */
void
bw_picture_area_install_cursor (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "cursor.step", "d", on_step);
  gtk_widget_class_install_action (widget_class, "cursor.row", "d", on_row);
  gtk_widget_class_install_action (widget_class, "cursor.second", NULL, on_second);
  gtk_widget_class_install_action (widget_class, "cursor.other", NULL, on_other);
  gtk_widget_class_install_action (widget_class, "cursor.drop", NULL, on_drop);
  bind (widget_class, GDK_KEY_Left, "cursor.step", -1);
  bind (widget_class, GDK_KEY_Right, "cursor.step", 1);
  bind (widget_class, GDK_KEY_Up, "cursor.row", -1);
  bind (widget_class, GDK_KEY_Down, "cursor.row", 1);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, 0, "cursor.second", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_x, 0, "cursor.other", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "cursor.drop", NULL);
}
