/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "timing-page.h"

#include <glib/gi18n-lib.h>

#include "template.h"

/**
 * BwTimingPage:
 *
 * Rasters in four parts: the one of the selected source drawn, one worked out from known figures,
 * one identified by readings, and readings held against a standard.
 */
struct _BwTimingPage
{
  GtkWidget parent_instance;

  GtkStack *parts;
  BwDrawingPanel *drawing;
  BwWorkOut *work_out;
  BwIdentifyPanel *identify;
  BwReadingsPanel *readings;
};

G_DEFINE_FINAL_TYPE (BwTimingPage, bw_timing_page, GTK_TYPE_WIDGET)

static void
bw_timing_page_dispose (GObject *object)
{
  bw_dispose_template (object, BW_TYPE_TIMING_PAGE);
  G_OBJECT_CLASS (bw_timing_page_parent_class)->dispose (object);
}

static void
bw_timing_page_class_init (BwTimingPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_timing_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/timing-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, parts);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, drawing);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, work_out);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, identify);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, readings);
}

static void
name_part (BwTimingPage *self, gpointer part, const char *name, const char *title)
{
  g_object_set (gtk_stack_get_page (self->parts, part), "name", name, "title", title, NULL);
}

static void
bw_timing_page_init (BwTimingPage *self)
{
  g_type_ensure (BW_TYPE_DRAWING_PANEL);
  g_type_ensure (BW_TYPE_IDENTIFY_PANEL);
  g_type_ensure (BW_TYPE_READINGS_PANEL);
  g_type_ensure (BW_TYPE_WORK_OUT);
  gtk_widget_init_template (GTK_WIDGET (self));
  name_part (self, self->drawing, "drawing", _ ("Drawing"));
  name_part (self, self->work_out, "work-out", _ ("Work out"));
  name_part (self, self->identify, "identify", _ ("Identify"));
  name_part (self, self->readings, "readings", _ ("Readings"));
}

/**
 * bw_timing_page_set_document:
 * @document: what to show; to be set once
 */
void
bw_timing_page_set_document (BwTimingPage *self, BwDocument *document)
{
  bw_drawing_panel_set_document (self->drawing, document);
  bw_work_out_set_document (self->work_out, document);
  bw_identify_panel_set_document (self->identify, document);
  bw_readings_panel_set_document (self->readings, document);
}

/**
 * bw_timing_page_get_raster:
 *
 * Returns: (transfer none) (nullable): the raster of the selected source; valid until the next
 * "changed" of the document
 */
const BwRaster *
bw_timing_page_get_raster (BwTimingPage *self)
{
  return bw_drawing_panel_get_raster (self->drawing);
}

/**
 * bw_timing_page_get_panel:
 *
 * Returns: (transfer none): the drawing with its controls
 */
BwPicturePanel *
bw_timing_page_get_panel (BwTimingPage *self)
{
  return bw_drawing_panel_get_panel (self->drawing);
}

/**
 * bw_timing_page_show_part:
 * @part: "drawing", "work-out", "identify" or "readings"
 */
void
bw_timing_page_show_part (BwTimingPage *self, const char *part)
{
  gtk_stack_set_visible_child_name (self->parts, part);
}

/* Getters: all (transfer none) */

BwDrawingPanel *
bw_timing_page_get_drawing (BwTimingPage *self)
{
  return self->drawing;
}

BwWorkOut *
bw_timing_page_get_work_out (BwTimingPage *self)
{
  return self->work_out;
}

BwIdentifyPanel *
bw_timing_page_get_identify (BwTimingPage *self)
{
  return self->identify;
}

BwReadingsPanel *
bw_timing_page_get_readings (BwTimingPage *self)
{
  return self->readings;
}
