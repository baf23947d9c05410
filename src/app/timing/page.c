/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/parts.h"

/**
 * BwTimingPage:
 *
 * Rasters in four parts: the one of the selected source drawn, one worked out from known figures,
 * one identified by readings, and readings held against a standard.
 */
struct _BwTimingPage
{
  GtkWidget parent_instance;

  BwParts *parts; /* the only child */
  BwDrawingPanel *drawing;
  BwWorkOut *work_out;
  BwIdentifyPanel *identify;
  BwReadingsPanel *readings;
};

G_DEFINE_FINAL_TYPE (BwTimingPage, bw_timing_page, GTK_TYPE_WIDGET)

static void
bw_timing_page_dispose (GObject *object)
{
  BwTimingPage *self = BW_TIMING_PAGE (object);
  GtkWidget *parts = GTK_WIDGET (self->parts);

  g_clear_pointer (&parts, gtk_widget_unparent);
  self->parts = NULL;
  G_OBJECT_CLASS (bw_timing_page_parent_class)->dispose (object);
}

static void
bw_timing_page_class_init (BwTimingPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_timing_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
bw_timing_page_init (BwTimingPage *self)
{
  self->parts = g_object_new (BW_TYPE_PARTS, NULL);
  self->drawing = g_object_new (BW_TYPE_DRAWING_PANEL, NULL);
  self->work_out = g_object_new (BW_TYPE_WORK_OUT, NULL);
  self->identify = g_object_new (BW_TYPE_IDENTIFY_PANEL, NULL);
  self->readings = g_object_new (BW_TYPE_READINGS_PANEL, NULL);
  bw_parts_add (self->parts, GTK_WIDGET (self->drawing), "drawing", _ ("Drawing"));
  bw_parts_add (self->parts, GTK_WIDGET (self->work_out), "work-out", _ ("Work out"));
  bw_parts_add (self->parts, GTK_WIDGET (self->identify), "identify", _ ("Identify"));
  bw_parts_add (self->parts, GTK_WIDGET (self->readings), "readings", _ ("Readings"));
  gtk_widget_set_parent (GTK_WIDGET (self->parts), GTK_WIDGET (self));
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
  bw_parts_show (self->parts, part);
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
