/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "colour-scheme.h"

/**
 * BwPictureArea:
 *
 * A drawing of a raster that is zoomed with the plus, minus and 0 keys or Control and the wheel,
 * moved by dragging or with Shift and the arrow keys, and read with two cursors. What the cursors
 * read is told by "reading".
 */
G_DEFINE_FINAL_TYPE (BwPictureArea, bw_picture_area, GTK_TYPE_WIDGET)

enum
{
  READING,
  SHOWN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define ZOOM_STEP 1.5
#define WHEEL_STEP 1.2
#define PAN_SHARE 0.1
#define CLICK_SLACK 4.0

BwPicturePage
bw_picture_area_page (BwPictureArea *self)
{
  return (BwPicturePage){ gtk_widget_get_width (GTK_WIDGET (self)),
                          gtk_widget_get_height (GTK_WIDGET (self)), &self->ink };
}

static gboolean
has_page (BwPictureArea *self)
{
  BwPicturePage page = bw_picture_area_page (self);
  return self->picture != NULL && page.width > 0 && page.height > 0;
}

/* What is drawn has changed, or its size. */
void
bw_picture_area_redraw (BwPictureArea *self)
{
  g_clear_pointer (&self->drawing, gsk_render_node_unref);
  if (has_page (self))
    bw_picture_area_place_cursors (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
bw_picture_area_tell (BwPictureArea *self)
{
  g_autofree char *words = bw_picture_area_words (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  -1);
  g_signal_emit (self, signals[READING], 0, words);
}

static void
update_ink (BwPictureArea *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  PangoContext *context = gtk_widget_get_pango_context (widget);

  g_free (self->font);
  self->font = pango_font_description_to_string (pango_context_get_font_description (context));
  self->ink.theme = bw_theme_of (gtk_widget_get_settings (widget));
  self->ink.font = self->font;
  self->ink.dpi = pango_cairo_context_get_resolution (context);
}

/* Zooming and moving */

static void
tell_shown (BwPictureArea *self)
{
  bw_picture_area_redraw (self);
  g_signal_emit (self, signals[SHOWN], 0);
}

static void
zoom_about (BwPictureArea *self, double x, double y, double factor)
{
  BwPicturePage page = bw_picture_area_page (self);
  if (!has_page (self))
    return;
  bw_picture_zoom (self->picture, &page, x, y, factor);
  tell_shown (self);
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
  const BwCursor *cursor = &self->cursors[self->active];
  gboolean shown = cursor->set && cursor->shown;
  zoom_about (self, shown ? cursor->x : -1, shown ? cursor->y : -1, factor);
}

/**
 * bw_picture_area_show_whole:
 *
 * Shows everything again.
 */
void
bw_picture_area_show_whole (BwPictureArea *self)
{
  if (self->picture == NULL)
    return;
  bw_picture_show_whole (self->picture);
  tell_shown (self);
}

static void
pan (BwPictureArea *self, double dx, double dy)
{
  BwPicturePage page = bw_picture_area_page (self);
  if (!has_page (self))
    return;
  bw_picture_pan (self->picture, &page, dx, dy);
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
  bw_picture_area_move_cursor (self, x, y);
}

static gboolean
on_scroll (BwPictureArea *self, double dx, double dy, GtkEventController *controller)
{
  const BwCursor *cursor = &self->cursors[self->active];
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);
  if (!(state & GDK_CONTROL_MASK))
    return GDK_EVENT_PROPAGATE;
  zoom_about (self, cursor->shown ? cursor->x : -1, cursor->shown ? cursor->y : -1,
              pow (WHEEL_STEP, -dy));
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

static GskRenderNode *
draw (BwPictureArea *self, const BwPicturePage *page)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  graphene_rect_t area = GRAPHENE_RECT_INIT (0, 0, (float) page->width, (float) page->height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &area);

  bw_picture_draw (self->picture, cr, page);
  cairo_destroy (cr);
  return gtk_snapshot_free_to_node (snapshot);
}

#define DASH 5
#define GAP 3

static void
snapshot_bar (GtkSnapshot *snapshot, const GdkRGBA *colour, float x, float y, float width,
              float height)
{
  gtk_snapshot_append_color (snapshot, colour, &GRAPHENE_RECT_INIT (x, y, width, height));
}

/* The first cursor is a line, the second a dashed one; both cross the map. */
static void
snapshot_cursor (BwPictureArea *self, GtkSnapshot *snapshot, guint which)
{
  const BwCursor *cursor = &self->cursors[which];
  guint32 rgb = bw_ink_rgb (self->ink.theme, BW_INK_ACCENT);
  GdkRGBA colour = { ((rgb >> 16) & 0xff) / 255.f, ((rgb >> 8) & 0xff) / 255.f,
                     (rgb & 0xff) / 255.f, 1 };
  float dash = which == 0 ? G_MAXFLOAT : DASH;
  float x = (float) floor (cursor->x), y = (float) floor (cursor->y);
  float end = (float) cursor->bottom, right = (float) cursor->right;

  for (float at = (float) cursor->top; at < end; at += dash + GAP)
    snapshot_bar (snapshot, &colour, x, at, 1, MIN (dash, end - at));
  if (self->picture->style == BW_CURSOR_CROSS)
    for (float at = (float) cursor->left; at < right; at += dash + GAP)
      snapshot_bar (snapshot, &colour, at, y, MIN (dash, right - at), 1);
}

static void
bw_picture_area_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  BwPicturePage page = bw_picture_area_page (self);

  if (!has_page (self))
    return;
  if (self->drawing == NULL)
    self->drawing = draw (self, &page);
  gtk_snapshot_append_node (snapshot, self->drawing);
  for (guint i = 0; i < G_N_ELEMENTS (self->cursors); i++)
    if (self->cursors[i].set && self->cursors[i].shown)
      snapshot_cursor (self, snapshot, i);
}

static void
bw_picture_area_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  bw_picture_area_redraw (BW_PICTURE_AREA (widget));
}

static void
bw_picture_area_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (bw_picture_area_parent_class)->css_changed (widget, change);
  update_ink (BW_PICTURE_AREA (widget));
  bw_picture_area_redraw (BW_PICTURE_AREA (widget));
}

static void
bw_picture_area_finalize (GObject *object)
{
  BwPictureArea *self = BW_PICTURE_AREA (object);

  g_clear_pointer (&self->drawing, gsk_render_node_unref);
  g_clear_pointer (&self->picture, bw_picture_free);
  g_free (self->font);
  G_OBJECT_CLASS (bw_picture_area_parent_class)->finalize (object);
}

static void
bind_zoom (GtkWidgetClass *widget_class, guint key, double factor)
{
  gtk_widget_class_add_binding_action (widget_class, key, 0, "view.zoom", "d", factor);
  gtk_widget_class_add_binding_action (widget_class, key, GDK_SHIFT_MASK, "view.zoom", "d",
                                       factor);
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
  widget_class->css_changed = bw_picture_area_css_changed;

  /* BwPictureArea::reading: the cursors read this, in words. */
  signals[READING] = g_signal_new ("reading", BW_TYPE_PICTURE_AREA, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  /* BwPictureArea::shown: another part of the picture is shown. */
  signals[SHOWN] = g_signal_new ("shown", BW_TYPE_PICTURE_AREA, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
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
  GtkEventController *scroll
      = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (on_scroll), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

static void
bw_picture_area_init (BwPictureArea *self)
{
  add_controllers (self);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_focus_on_click (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  update_ink (self);
}

/**
 * bw_picture_area_show:
 * @picture: (transfer full) (nullable): %NULL for an empty area
 *
 * Shows a picture, and puts it in words for those who do not see it. The cursors go.
 */
void
bw_picture_area_show (BwPictureArea *self, BwPicture *picture)
{
  g_clear_pointer (&self->picture, bw_picture_free);
  self->picture = picture;
  self->cursors[0] = self->cursors[1] = (BwCursor){ FALSE };
  self->active = 0;
  if (picture != NULL)
    {
      g_autofree char *name = bw_picture_name (picture);
      g_autofree char *words = bw_picture_describe (picture);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
    }
  tell_shown (self);
}

/**
 * bw_picture_area_get_picture:
 *
 * Returns: (transfer none) (nullable): what is shown
 */
const BwPicture *
bw_picture_area_get_picture (BwPictureArea *self)
{
  return self->picture;
}

/**
 * bw_picture_area_texture:
 *
 * Returns: (transfer full) (nullable): the drawing as it stands on the screen, without the cursors
 */
GdkTexture *
bw_picture_area_texture (BwPictureArea *self)
{
  BwPicturePage page = bw_picture_area_page (self);
  int width = (int) page.width, height = (int) page.height;
  if (!has_page (self))
    return NULL;

  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  bw_ink_set (cr, &self->ink, BW_INK_PAPER);
  cairo_paint (cr);
  bw_picture_draw (self->picture, cr, &page);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes
      = g_bytes_new (cairo_image_surface_get_data (surface), stride * (gsize) height);
  cairo_surface_destroy (surface);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

/**
 * bw_picture_area_refresh:
 *
 * Draws the picture anew after what it shows has changed; the cursors stay at their places and are
 * read again.
 */
void
bw_picture_area_refresh (BwPictureArea *self)
{
  g_autofree char *name = bw_picture_name (self->picture);
  g_autofree char *words = bw_picture_describe (self->picture);

  bw_picture_area_redraw (self);
  if (self->cursors[self->active].set)
    bw_picture_area_tell (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}
