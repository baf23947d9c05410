/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "timing-page.h"

#include <glib/gi18n-lib.h>

#include "empty-page.h"
#include "export.h"
#include "figure-table.h"
#include "line-area.h"
#include "line-view.h"
#include "raster-figures.h"
#include "side-layout.h"
#include "template.h"

/**
 * BwTimingPage:
 *
 * The raster of the selected source: its line, drawn, and its figures.
 */
struct _BwTimingPage
{
  GtkWidget parent_instance;

  GtkStack *stack;
  BwEmptyPage *empty;
  GtkWidget *content;
  GtkLabel *title;
  BwLineArea *area;
  GtkLabel *reading;
  BwFigureTable *table;

  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwTimingPage, bw_timing_page, GTK_TYPE_WIDGET)

/* Exports and copies on paper: a page of this many pixels of 1/96 inch. */
#define EXPORT_WIDTH 1100
#define EXPORT_HEIGHT 640

/**
 * bw_timing_page_get_raster:
 *
 * Returns: (transfer none) (nullable): the raster of the selected source; valid until the next
 * "changed" of the document
 */
const BwRaster *
bw_timing_page_get_raster (BwTimingPage *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  guint source = bw_document_get_source (self->document);
  if (source == BW_NO_INDEX)
    return NULL;
  return bw_sheet_raster (sheet, bw_document_get_catalogue (self->document),
                          bw_sheet_source (sheet, source));
}

static void
show_hint (BwTimingPage *self)
{
  gtk_label_set_label (self->reading, _ ("Point at the line to read the time after 0H, or use the "
                                         "Left and Right keys."));
}

static void
update (BwTimingPage *self)
{
  const BwRaster *raster = bw_timing_page_get_raster (self);
  gboolean lacking = bw_empty_page_update (self->empty, self->document);

  gtk_stack_set_visible_child (self->stack, lacking || raster == NULL ? GTK_WIDGET (self->empty)
                                                                      : self->content);
  bw_line_area_set_raster (self->area, raster);
  show_hint (self);
  if (raster == NULL)
    return;
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  const BwSource *source = bw_sheet_source (sheet, bw_document_get_source (self->document));
  g_autofree char *title = g_strdup_printf (_ ("%s: %s"), source->name, raster->name);
  g_autoptr (GPtrArray) figures = bw_raster_table (raster);
  gtk_label_set_label (self->title, title);
  bw_figure_table_show (self->table, figures);
}

static void
on_reading (BwTimingPage *self, const char *words)
{
  gtk_label_set_label (self->reading, words);
}

static void
draw (cairo_t *cr, double width, double height, gpointer user_data)
{
  BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_SCREEN_DPI };
  bw_draw_line_view (cr, width, height, &ink, user_data, bw_quantity_locale_mark ());
}

/**
 * bw_timing_page_export:
 * @path: ends in .svg, .pdf or .png
 *
 * Writes the drawing of the selected source's raster.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR; whatever was at @path is then as it was
 */
gboolean
bw_timing_page_export (BwTimingPage *self, const char *path, GError **error)
{
  const BwRaster *raster = bw_timing_page_get_raster (self);
  g_return_val_if_fail (raster != NULL, FALSE);
  g_autofree char *words = bw_line_view_describe (raster, bw_quantity_locale_mark ());
  BwExport what = {
    .draw = draw,
    .user_data = (gpointer) raster,
    .width = EXPORT_WIDTH,
    .height = EXPORT_HEIGHT,
    .title = raster->name,
    .description = words,
  };
  return bw_export_drawing (&what, path, error);
}

/**
 * bw_timing_page_copy:
 *
 * Puts the picture of the drawing on the clipboard.
 */
void
bw_timing_page_copy (BwTimingPage *self)
{
  g_autoptr (GdkTexture) picture = bw_line_area_picture (self->area);
  if (picture != NULL)
    gdk_clipboard_set_texture (gtk_widget_get_clipboard (GTK_WIDGET (self)), picture);
}

static void
bw_timing_page_dispose (GObject *object)
{
  g_clear_object (&BW_TIMING_PAGE (object)->document);
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
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, stack);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, empty);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, content);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, title);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, area);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, reading);
  gtk_widget_class_bind_template_child (widget_class, BwTimingPage, table);
  gtk_widget_class_bind_template_callback (widget_class, on_reading);
}

static void
bw_timing_page_init (BwTimingPage *self)
{
  g_type_ensure (BW_TYPE_EMPTY_PAGE);
  g_type_ensure (BW_TYPE_FIGURE_TABLE);
  g_type_ensure (BW_TYPE_LINE_AREA);
  g_type_ensure (BW_TYPE_SIDE_LAYOUT);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_timing_page_set_document:
 * @document: what to show; to be set once
 */
void
bw_timing_page_set_document (BwTimingPage *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
  update (self);
}
