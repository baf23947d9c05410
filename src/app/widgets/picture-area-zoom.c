/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

#include <math.h>

/* What part of a drawing is shown, by keys, the wheel and dragging, and what else the pointer does. */

#define ZOOM_STEP 1.5
#define WHEEL_STEP 1.2
#define PAN_SHARE 0.1
#define CLICK_SLACK 4.0

static gboolean
has_own_zoom (BwPictureArea *self)
{
  return self->source.zoom != NULL;
}

/**
 * bw_picture_area_can_be_zoomed:
 *
 * Returns: whether a part of what is shown can be shown alone
 */
gboolean
bw_picture_area_can_be_zoomed (BwPictureArea *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), FALSE);
  const BwDrawing *drawing = bw_picture_area_get_drawing (self);
  return has_own_zoom (self) || (drawing != NULL && bw_drawing_can_be_zoomed (drawing));
}

/**
 * bw_picture_area_is_whole:
 *
 * Returns: whether nothing is left out
 */
gboolean
bw_picture_area_is_whole (BwPictureArea *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), TRUE);
  const BwDrawing *drawing = bw_picture_area_get_drawing (self);
  if (has_own_zoom (self))
    return self->source.is_whole (self->data);
  return drawing == NULL || bw_drawing_is_whole (drawing);
}

static void
show_part (BwPictureArea *self, const BwZoom *zoom)
{
  self->zoomed = TRUE;
  self->zoom = *zoom;
}

static void
zoom_about (BwPictureArea *self, double x, double y, double factor)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self);

  if (!bw_picture_area_can_be_zoomed (self))
    return;
  if (has_own_zoom (self))
    self->source.zoom (self->data, drawing, x, y, factor);
  else if (factor > 0)
    {
      BwZoom zoom = bw_drawing_zoomed (drawing, x, y, factor);
      show_part (self, &zoom);
    }
  else
    self->zoomed = FALSE;
  bw_picture_area_tell_shown (self);
}

static void
zoom_about_cursor (BwPictureArea *self, double factor)
{
  const BwCursor *cursor = &self->cursors[self->active];
  zoom_about (self, cursor->shown ? cursor->x : -1, cursor->shown ? cursor->y : -1, factor);
}

/**
 * bw_picture_area_zoom:
 * @factor: how much larger things become
 *
 * Zooms about the active cursor, or the middle if there is none.
 */
void
bw_picture_area_zoom (BwPictureArea *self, double factor)
{
  g_return_if_fail (BW_IS_PICTURE_AREA (self) && factor > 0);
  zoom_about_cursor (self, factor);
}

/**
 * bw_picture_area_show_whole:
 *
 * Shows everything again.
 */
void
bw_picture_area_show_whole (BwPictureArea *self)
{
  g_return_if_fail (BW_IS_PICTURE_AREA (self));
  zoom_about (self, -1, -1, 0);
}

static void
pan (BwPictureArea *self, double dx, double dy)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self);

  if (!bw_picture_area_can_be_zoomed (self))
    return;
  if (has_own_zoom (self))
    self->source.pan (self->data, drawing, dx, dy);
  else
    {
      BwZoom zoom = bw_drawing_panned (drawing, dx, dy);
      show_part (self, &zoom);
    }
  bw_picture_area_tell_shown (self);
}

static void
on_zoom (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_picture_area_zoom (BW_PICTURE_AREA (widget), g_variant_get_double (parameter));
}

static void
on_whole (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_picture_area_show_whole (BW_PICTURE_AREA (widget));
}

static void
on_pan (GtkWidget *widget, const char *action, GVariant *parameter)
{
  double dx, dy;
  g_variant_get (parameter, "(dd)", &dx, &dy);
  pan (BW_PICTURE_AREA (widget), dx * gtk_widget_get_width (widget),
       dy * gtk_widget_get_height (widget));
}

/* Pointer */

static void
on_motion (BwPictureArea *self, double x, double y)
{
  if (bw_picture_area_move_cursor (self, x, y))
    self->pointed = TRUE;
}

static void
on_leave (BwPictureArea *self)
{
  bw_picture_area_lift_cursor (self);
}

static gboolean
on_scroll (BwPictureArea *self, double dx, double dy, GtkEventController *controller)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);
  if (!(state & GDK_CONTROL_MASK))
    return GDK_EVENT_PROPAGATE;
  zoom_about_cursor (self, pow (WHEEL_STEP, -dy));
  return GDK_EVENT_STOP;
}

static void
on_drag_begin (BwPictureArea *self)
{
  self->drag_x = self->drag_y = 0;
  self->dragged = FALSE;
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
on_drag_update (BwPictureArea *self, double x, double y)
{
  self->dragged |= hypot (x, y) > CLICK_SLACK;
  if (!self->dragged)
    return;
  pan (self, x - self->drag_x, y - self->drag_y);
  self->drag_x = x;
  self->drag_y = y;
}

/* A click that did not drag sets the second cursor. */
static void
on_drag_end (BwPictureArea *self)
{
  if (!self->dragged)
    bw_picture_area_set_second (self);
}

/**
 * bw_picture_area_add_controllers:
 *
 * Lets the pointer read, move and zoom.
 */
void
bw_picture_area_add_controllers (BwPictureArea *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (
      GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (on_scroll), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

/* Keys */

static void
bind_zoom (GtkWidgetClass *widget_class, guint key, double factor)
{
  gtk_widget_class_add_binding_action (widget_class, key, 0, "view.zoom", "d", factor);
  gtk_widget_class_add_binding_action (widget_class, key, GDK_SHIFT_MASK, "view.zoom", "d", factor);
  gtk_widget_class_add_binding_action (widget_class, key, GDK_CONTROL_MASK, "view.zoom", "d",
                                       factor);
}

static void
bind_pan (GtkWidgetClass *widget_class, guint key, double dx, double dy)
{
  gtk_widget_class_add_binding_action (widget_class, key, GDK_SHIFT_MASK, "view.pan", "(dd)",
                                       dx * PAN_SHARE, dy * PAN_SHARE);
}

/**
 * bw_picture_area_install_zoom:
 *
 * Installs the keys that zoom and move.
 */
void
bw_picture_area_install_zoom (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "view.zoom", "d", on_zoom);
  gtk_widget_class_install_action (widget_class, "view.whole", NULL, on_whole);
  gtk_widget_class_install_action (widget_class, "view.pan", "(dd)", on_pan);
  bind_zoom (widget_class, GDK_KEY_plus, ZOOM_STEP);
  bind_zoom (widget_class, GDK_KEY_equal, ZOOM_STEP);
  bind_zoom (widget_class, GDK_KEY_KP_Add, ZOOM_STEP);
  bind_zoom (widget_class, GDK_KEY_minus, 1 / ZOOM_STEP);
  bind_zoom (widget_class, GDK_KEY_KP_Subtract, 1 / ZOOM_STEP);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_0, 0, "view.whole", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_0, GDK_CONTROL_MASK, "view.whole",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_0, 0, "view.whole", NULL);
  /* The key moves what one looks through, so that the drawing goes the other way. */
  bind_pan (widget_class, GDK_KEY_Left, 1, 0);
  bind_pan (widget_class, GDK_KEY_Right, -1, 0);
  bind_pan (widget_class, GDK_KEY_Up, 0, 1);
  bind_pan (widget_class, GDK_KEY_Down, 0, -1);
}
