/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

#include <math.h>

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

/* What a screen reader was told of a drawing that is gone. */
static void
forget_words (BwPictureArea *self)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (self);
  gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT);
  if (self->source.build != NULL)
    return; /* its name and description come when it is drawn */
  gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL);
  gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
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

/**
 * bw_picture_area_tell_shown:
 *
 * Draws another part, and tells so.
 */
void
bw_picture_area_tell_shown (BwPictureArea *self)
{
  rebuild (self);
  g_signal_emit (self, signals[SHOWN], 0);
  g_signal_emit (self, signals[DRAWN], 0);
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
bw_picture_area_class_init (BwPictureAreaClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bw_picture_area_finalize;
  widget_class->snapshot = bw_picture_area_paint;
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
  bw_picture_area_install_zoom (widget_class);
  gtk_widget_class_set_css_name (widget_class, "bw-picture-area");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
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
  bw_picture_area_add_controllers (self);
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
  forget_words (self);
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
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT);
}
