/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "colour-scheme.h"

/**
 * BwPictureArea:
 *
 * Shows a drawing, which is zoomed with the plus, minus and 0 keys or Control and the wheel,
 * moved by dragging or with Shift and the arrow keys, and read with two cursors. What the cursors
 * read is told by "reading".
 */
G_DEFINE_FINAL_TYPE (BwPictureArea, bw_picture_area, GTK_TYPE_WIDGET)

enum
{
  READING,
  SHOWN,
  DRAWN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define ZOOM_STEP 1.5
#define WHEEL_STEP 1.2
#define PAN_SHARE 0.1
#define CLICK_SLACK 4.0

/* Building */

/* Until the window has given the area its place. */
#define USUAL_WIDTH 800
#define USUAL_HEIGHT 480

static double
page_width (BwPictureArea *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  return width > 0 ? width : USUAL_WIDTH;
}

static double
page_height (BwPictureArea *self)
{
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  return height > 0 ? height : USUAL_HEIGHT;
}

static void
forget (BwPictureArea *self)
{
  g_clear_pointer (&self->drawing, bw_drawing_unref);
  g_clear_object (&self->painted);
}

/**
 * bw_picture_area_build:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full) (nullable): what is shown, as far as it is shown, drawn for another page
 */
BwDrawing *
bw_picture_area_build (BwPictureArea *self, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), NULL);
  if (self->source.build == NULL)
    return NULL;
  return self->source.build (self->data, width, height, ink, self->zoomed ? &self->zoom : NULL);
}

/* The part that the drawing before showed, if this one has it too. */
static void
take_over_zoom (BwPictureArea *self)
{
  BwZoom before = self->zoom;

  self->zoomed = bw_drawing_shown_as (self->drawing, &before, &self->zoom);
  self->keeps_zoom = FALSE;
  if (!self->zoomed)
    return;
  bw_drawing_unref (self->drawing);
  self->drawing = bw_picture_area_build (self, page_width (self), page_height (self), &self->ink);
}

static void
put_in_words (BwPictureArea *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  bw_drawing_name (self->drawing),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  bw_drawing_description (self->drawing), -1);
}

static void
rebuild (BwPictureArea *self)
{
  forget (self);
  self->drawing = bw_picture_area_build (self, page_width (self), page_height (self), &self->ink);
  if (self->drawing != NULL && self->keeps_zoom)
    take_over_zoom (self);
  if (self->drawing != NULL)
    put_in_words (self);
  bw_picture_area_place_cursors (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bw_picture_area_get_drawing:
 *
 * Returns: (transfer none) (nullable): what is shown
 */
BwDrawing *
bw_picture_area_get_drawing (BwPictureArea *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), NULL);
  if (self->drawing == NULL && self->source.build != NULL)
    rebuild (self);
  return self->drawing;
}

/**
 * bw_picture_area_get_ink:
 *
 * Returns: (transfer none): what the area is drawn with
 */
const BwInk *
bw_picture_area_get_ink (BwPictureArea *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), NULL);
  return &self->ink;
}

void
bw_picture_area_tell (BwPictureArea *self)
{
  g_autofree char *words = bw_picture_area_words (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  -1);
  g_signal_emit (self, signals[READING], 0, words);
}

/* Returns whether it has changed. */
static gboolean
update_ink (BwPictureArea *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *description = pango_context_get_font_description (context);
  char *font = pango_font_description_to_string (description);
  const BwInk ink = { bw_theme_of (gtk_widget_get_settings (widget)), font,
                      pango_cairo_context_get_resolution (context) };
  gboolean same = self->font != NULL && g_str_equal (font, self->font)
                  && ink.theme == self->ink.theme && fabs (ink.dpi - self->ink.dpi) < 1e-6;

  g_free (self->font);
  self->font = font;
  self->ink = ink;
  return !same;
}

/* Zooming and moving */

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

/* Another part is shown. */
static void
tell_shown (BwPictureArea *self)
{
  rebuild (self);
  g_signal_emit (self, signals[SHOWN], 0);
  g_signal_emit (self, signals[DRAWN], 0);
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
  tell_shown (self);
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
  tell_shown (self);
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

/* Drawing */

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

/**
 * bw_picture_area_get_texture:
 *
 * Returns: (transfer none) (nullable): what is shown as it stands on the screen, without the cursors
 */
GdkTexture *
bw_picture_area_get_texture (BwPictureArea *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), NULL);
  if (self->painted == NULL && bw_picture_area_get_drawing (self) != NULL)
    self->painted = paint (self);
  return self->painted;
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

static void
bw_picture_area_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);

  GdkTexture *painted = bw_picture_area_get_texture (self);

  if (painted == NULL)
    return;
  gtk_snapshot_append_texture (snapshot, painted,
                               &GRAPHENE_RECT_INIT (0, 0, (float) bw_drawing_width (self->drawing),
                                                    (float) bw_drawing_height (self->drawing)));
  for (guint i = 0; i < G_N_ELEMENTS (self->cursors); i++)
    if (self->cursors[i].shown && !(self->lifted && i == self->active))
      snapshot_cursor (self, snapshot, i);
}

static void
bw_picture_area_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  gboolean fits = self->drawing != NULL && (int) bw_drawing_width (self->drawing) == width
                  && (int) bw_drawing_height (self->drawing) == height;
  if (!fits && width > 0 && height > 0)
    rebuild (self);
}

/* A drawing is built when it is first seen, and not before. */
static void
bw_picture_area_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bw_picture_area_parent_class)->map (widget);
  if (BW_PICTURE_AREA (widget)->drawing == NULL)
    g_signal_emit (widget, signals[DRAWN], 0);
}

static void
bw_picture_area_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (bw_picture_area_parent_class)->css_changed (widget, change);
  if (update_ink (BW_PICTURE_AREA (widget)) && BW_PICTURE_AREA (widget)->drawing != NULL)
    rebuild (BW_PICTURE_AREA (widget));
}

static void
free_source (BwPictureArea *self)
{
  if (self->source.free != NULL)
    self->source.free (self->data);
  self->source = (BwPictureSource){ NULL };
  self->data = NULL;
}

static void
bw_picture_area_finalize (GObject *object)
{
  BwPictureArea *self = BW_PICTURE_AREA (object);

  forget (self);
  free_source (self);
  g_free (self->font);
  G_OBJECT_CLASS (bw_picture_area_parent_class)->finalize (object);
}

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

static void
install_view (GtkWidgetClass *widget_class)
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

static void
bw_picture_area_class_init (BwPictureAreaClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bw_picture_area_finalize;
  widget_class->snapshot = bw_picture_area_snapshot;
  widget_class->size_allocate = bw_picture_area_size_allocate;
  widget_class->map = bw_picture_area_map;
  widget_class->css_changed = bw_picture_area_css_changed;

  /* BwPictureArea::reading: the cursors read this, in words. */
  signals[READING] = g_signal_new ("reading", BW_TYPE_PICTURE_AREA, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  /* BwPictureArea::shown: another part is shown. */
  signals[SHOWN] = g_signal_new ("shown", BW_TYPE_PICTURE_AREA, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
  /* BwPictureArea::drawn: there is something else to draw, or another part of it. */
  signals[DRAWN] = g_signal_new ("drawn", BW_TYPE_PICTURE_AREA, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);

  bw_picture_area_install_cursor (widget_class);
  install_view (widget_class);
  gtk_widget_class_set_css_name (widget_class, "bw-picture-area");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
add_controllers (BwPictureArea *self)
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

/* On a screen of another density. */
static void
on_scale_factor (BwPictureArea *self)
{
  g_clear_object (&self->painted);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
bw_picture_area_init (BwPictureArea *self)
{
  add_controllers (self);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (on_scale_factor), NULL);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_focus_on_click (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  update_ink (self);
}

/**
 * bw_picture_area_show:
 * @source: (nullable): copied; %NULL for an empty area
 * @data: (transfer full): what @source's functions get
 *
 * Shows what @source draws, and puts it in words for those who do not see it. The cursors go.
 */
void
bw_picture_area_show (BwPictureArea *self, const BwPictureSource *source, gpointer data)
{
  g_return_if_fail (BW_IS_PICTURE_AREA (self));
  g_return_if_fail (source == NULL || (source->build != NULL && source->free != NULL));
  forget (self);
  free_source (self);
  if (source != NULL)
    self->source = *source;
  self->data = data;
  self->cursors[0] = self->cursors[1] = (BwCursor){ FALSE };
  self->active = 0;
  self->pointed = self->lifted = FALSE;
  self->keeps_zoom = source != NULL && source->keeps_zoom && (self->zoomed || self->keeps_zoom);
  self->zoomed = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (source == NULL || gtk_widget_get_mapped (GTK_WIDGET (self)))
    g_signal_emit (self, signals[DRAWN], 0);
}

/**
 * bw_picture_area_has_source:
 *
 * Returns: whether anything is shown
 */
gboolean
bw_picture_area_has_source (BwPictureArea *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_AREA (self), FALSE);
  return self->source.build != NULL;
}

/**
 * bw_picture_area_refresh:
 *
 * Draws anew after the data has changed; the cursors stay at their places and are read again.
 */
void
bw_picture_area_refresh (BwPictureArea *self)
{
  g_return_if_fail (BW_IS_PICTURE_AREA (self));
  rebuild (self);
  g_signal_emit (self, signals[DRAWN], 0);
  if (self->cursors[self->active].set)
    bw_picture_area_tell (self);
}
