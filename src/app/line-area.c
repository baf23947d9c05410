/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "line-area.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "colour-scheme.h"
#include "line-view.h"

/**
 * BwLineArea:
 *
 * The drawn line of a raster, with a cursor that reads it: the pointer, or the Left and Right keys
 * (with Shift in larger steps). What the cursor reads is told by "reading".
 */
struct _BwLineArea
{
  GtkWidget parent_instance;

  BwRaster *raster; /* nullable */
  char *font;
  BwInk ink;
  GskRenderNode *drawing; /* nullable: what was drawn last, for the present size */

  gboolean has_cursor;
  double x;
  double y;
  double top; /* of the panel that the cursor is in */
  double bottom;
};

G_DEFINE_FINAL_TYPE (BwLineArea, bw_line_area, GTK_TYPE_WIDGET)

enum
{
  READING,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define STEP 1.0
#define LARGE_STEP 10.0

static void
forget_drawing (BwLineArea *self)
{
  g_clear_pointer (&self->drawing, gsk_render_node_unref);
  self->has_cursor = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
update_ink (BwLineArea *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  PangoContext *context = gtk_widget_get_pango_context (widget);

  g_free (self->font);
  self->font = pango_font_description_to_string (pango_context_get_font_description (context));
  self->ink.theme = bw_theme_of (gtk_widget_get_settings (widget));
  self->ink.font = self->font;
  self->ink.dpi = pango_cairo_context_get_resolution (context);
}

/* Reading the drawing */

static gboolean
time_at (BwLineArea *self, double x, double y, double *time_s)
{
  gboolean inside = FALSE;
  *time_s = bw_line_view_time_at (gtk_widget_get_width (GTK_WIDGET (self)),
                                  gtk_widget_get_height (GTK_WIDGET (self)), &self->ink,
                                  self->raster, bw_quantity_locale_mark (), x, y, &inside);
  return inside;
}

/* Whether @y lies in the panel where the cursor's place reads @time_s. Another panel, which may lie
 * close by, reads another time there. */
static gboolean
in_panel (BwLineArea *self, double y, double time_s)
{
  double other_s;
  return time_at (self, self->x, y, &other_s) && bw_near (other_s, time_s, 1e-9);
}

/* The y between @inside and @outside where the panel ends. */
static double
panel_edge (BwLineArea *self, double time_s, double inside, double outside)
{
  while (fabs (inside - outside) > 0.5)
    {
      double middle = (inside + outside) / 2;
      if (in_panel (self, middle, time_s))
        inside = middle;
      else
        outside = middle;
    }
  return inside;
}

#define PANEL_STEP 16.0

static void
find_panel (BwLineArea *self, double time_s)
{
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  double top = self->y, bottom = self->y;

  if (self->y >= self->top && self->y <= self->bottom)
    return;
  while (top > 0 && in_panel (self, top, time_s))
    top -= PANEL_STEP;
  while (bottom < height && in_panel (self, bottom, time_s))
    bottom += PANEL_STEP;
  self->top = panel_edge (self, time_s, self->y, top);
  self->bottom = panel_edge (self, time_s, self->y, bottom);
}

static void
tell (BwLineArea *self, double time_s)
{
  g_autofree char *time = bw_quantity_format (fabs (time_s), BW_DIMENSION_TIME, 4,
                                              bw_quantity_locale_mark ());
  g_autofree char *words = time_s < 0 ? g_strdup_printf (_ ("%s before 0H"), time)
                                      : g_strdup_printf (_ ("%s after 0H"), time);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  -1);
  g_signal_emit (self, signals[READING], 0, words);
}

/* Moves the cursor if there is something to read there. */
static gboolean
move_cursor (BwLineArea *self, double x, double y)
{
  double time_s;
  if (self->raster == NULL || !time_at (self, x, y, &time_s))
    return FALSE;
  self->x = x;
  self->y = y;
  if (!self->has_cursor)
    self->top = self->bottom = -1;
  self->has_cursor = TRUE;
  find_panel (self, time_s);
  tell (self, time_s);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

static void
on_motion (BwLineArea *self, double x, double y)
{
  move_cursor (self, x, y);
}

/* The first reading by key: the middle of whatever panel is uppermost. */
static void
start_cursor (BwLineArea *self)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  for (double y = PANEL_STEP; y < height; y += PANEL_STEP)
    if (move_cursor (self, width / 2, y))
      return;
}

static void
on_step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwLineArea *self = BW_LINE_AREA (widget);
  if (self->has_cursor)
    move_cursor (self, self->x + g_variant_get_double (parameter), self->y);
  else
    start_cursor (self);
}

/* The next panel below, or the first one again. */
static void
on_next_panel (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwLineArea *self = BW_LINE_AREA (widget);
  double height = gtk_widget_get_height (widget);
  gboolean down = g_variant_get_double (parameter) > 0;

  if (!self->has_cursor)
    {
      start_cursor (self);
      return;
    }
  double y = down ? self->bottom + 2 : self->top - 2;
  for (; y > 0 && y < height; y += down ? PANEL_STEP : -PANEL_STEP)
    if (move_cursor (self, self->x, y))
      return;
}

/* Drawing */

static GskRenderNode *
draw (BwLineArea *self, int width, int height)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  graphene_rect_t area = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &area);

  bw_draw_line_view (cr, width, height, &self->ink, self->raster, bw_quantity_locale_mark ());
  cairo_destroy (cr);
  return gtk_snapshot_free_to_node (snapshot);
}

static void
snapshot_cursor (BwLineArea *self, GtkSnapshot *snapshot)
{
  guint32 rgb = bw_ink_rgb (self->ink.theme, BW_INK_ACCENT);
  GdkRGBA colour = { ((rgb >> 16) & 0xff) / 255.f, ((rgb >> 8) & 0xff) / 255.f,
                     (rgb & 0xff) / 255.f, 1 };
  graphene_rect_t line = GRAPHENE_RECT_INIT ((float) floor (self->x), (float) self->top, 1,
                                             (float) (self->bottom - self->top));
  gtk_snapshot_append_color (snapshot, &colour, &line);
}

static void
bw_line_area_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwLineArea *self = BW_LINE_AREA (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->raster == NULL || width <= 0 || height <= 0)
    return;
  if (self->drawing == NULL)
    self->drawing = draw (self, width, height);
  gtk_snapshot_append_node (snapshot, self->drawing);
  if (self->has_cursor)
    snapshot_cursor (self, snapshot);
}

static void
bw_line_area_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  forget_drawing (BW_LINE_AREA (widget));
}

static void
bw_line_area_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (bw_line_area_parent_class)->css_changed (widget, change);
  update_ink (BW_LINE_AREA (widget));
  forget_drawing (BW_LINE_AREA (widget));
}

static void
bw_line_area_finalize (GObject *object)
{
  BwLineArea *self = BW_LINE_AREA (object);

  g_clear_pointer (&self->drawing, gsk_render_node_unref);
  g_clear_pointer (&self->raster, bw_raster_free);
  g_free (self->font);
  G_OBJECT_CLASS (bw_line_area_parent_class)->finalize (object);
}

static void
bind_step (GtkWidgetClass *widget_class, guint key, GdkModifierType modifiers, double step)
{
  gtk_widget_class_add_binding_action (widget_class, key, modifiers, "cursor.step", "d", step);
}

static void
bind_keys (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "cursor.step", "d", on_step);
  gtk_widget_class_install_action (widget_class, "cursor.panel", "d", on_next_panel);
  bind_step (widget_class, GDK_KEY_Left, 0, -STEP);
  bind_step (widget_class, GDK_KEY_Right, 0, STEP);
  bind_step (widget_class, GDK_KEY_Left, GDK_SHIFT_MASK, -LARGE_STEP);
  bind_step (widget_class, GDK_KEY_Right, GDK_SHIFT_MASK, LARGE_STEP);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Up, 0, "cursor.panel", "d", -1.0);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Down, 0, "cursor.panel", "d", 1.0);
}

static void
bw_line_area_class_init (BwLineAreaClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bw_line_area_finalize;
  widget_class->snapshot = bw_line_area_snapshot;
  widget_class->size_allocate = bw_line_area_size_allocate;
  widget_class->css_changed = bw_line_area_css_changed;

  /* BwLineArea::reading: the cursor reads this, in words. */
  signals[READING] = g_signal_new ("reading", BW_TYPE_LINE_AREA, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  bind_keys (widget_class);
  gtk_widget_class_set_css_name (widget_class, "bw-line-area");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
bw_line_area_init (BwLineArea *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_focus_on_click (GTK_WIDGET (self), TRUE);
  update_ink (self);
}

/**
 * bw_line_area_set_raster:
 * @raster: (nullable): copied; %NULL for an empty area
 *
 * Draws the line of @raster, and puts it in words for those who do not see it.
 */
void
bw_line_area_set_raster (BwLineArea *self, const BwRaster *raster)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (self);

  g_clear_pointer (&self->raster, bw_raster_free);
  if (raster != NULL)
    {
      g_autofree char *label = g_strdup_printf (_ ("The line of %s, drawn"), raster->name);
      g_autofree char *words = bw_line_view_describe (raster, bw_quantity_locale_mark ());
      self->raster = bw_raster_copy (raster);
      gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
    }
  forget_drawing (self);
}

/**
 * bw_line_area_picture:
 *
 * Returns: (transfer full) (nullable): the drawing as it stands on the screen, without the cursor
 */
GdkTexture *
bw_line_area_picture (BwLineArea *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  if (self->raster == NULL || width <= 0 || height <= 0)
    return NULL;

  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  bw_ink_set (cr, &self->ink, BW_INK_PAPER);
  cairo_paint (cr);
  bw_draw_line_view (cr, width, height, &self->ink, self->raster, bw_quantity_locale_mark ());
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = g_bytes_new (cairo_image_surface_get_data (surface),
                                          stride * (gsize) height);
  cairo_surface_destroy (surface);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}
