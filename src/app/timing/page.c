/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "drawing-panel.h"
#include "identify-panel.h"
#include "readings-panel.h"
#include "work-out.h"

/**
 * BwTimingPage:
 *
 * Rasters: the one of the selected source drawn, one worked out from known figures, one identified
 * by readings, and readings held against a standard.
 */
struct _BwTimingPage
{
  BwPage parent_instance;

  BwDrawingPanel *drawing; /* all borrowed; children */
  BwWorkOut *work_out;
  BwIdentifyPanel *identify;
  BwReadingsPanel *readings;
};

G_DEFINE_FINAL_TYPE (BwTimingPage, bw_timing_page, BW_TYPE_PAGE)

static void
bw_timing_page_set_document (BwPage *page, BwDocument *document)
{
  BwTimingPage *self = BW_TIMING_PAGE (page);

  bw_drawing_panel_set_document (self->drawing, document);
  bw_work_out_set_document (self->work_out, document);
  bw_identify_panel_set_document (self->identify, document);
  bw_readings_panel_set_document (self->readings, document);
}

static void
bw_timing_page_class_init (BwTimingPageClass *klass)
{
  BW_PAGE_CLASS (klass)->set_document = bw_timing_page_set_document;
}

static void
bw_timing_page_init (BwTimingPage *self)
{
  BwPage *page = BW_PAGE (self);

  self->drawing = g_object_new (BW_TYPE_DRAWING_PANEL, NULL);
  self->work_out = g_object_new (BW_TYPE_WORK_OUT, NULL);
  self->identify = g_object_new (BW_TYPE_IDENTIFY_PANEL, NULL);
  self->readings = g_object_new (BW_TYPE_READINGS_PANEL, NULL);
  bw_page_add_panel (page, GTK_WIDGET (self->drawing), bw_drawing_panel_get_panel (self->drawing));
  bw_page_add_view (page, "work-out", _ ("Work out"),
                    _ ("A Raster from the Figures That Are Known"), GTK_WIDGET (self->work_out),
                    NULL);
  bw_page_add_view (page, "identify", _ ("Identify"), _ ("Which Raster It Is That Was Measured"),
                    GTK_WIDGET (self->identify), NULL);
  bw_page_add_view (page, "readings", _ ("Readings"), _ ("Readings Held Against a Standard"),
                    GTK_WIDGET (self->readings), NULL);
}
