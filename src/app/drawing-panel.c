/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-panel.h"

#include <glib/gi18n-lib.h>

#include "empty-page.h"
#include "export.h"
#include "figure-table.h"
#include "raster-figures.h"
#include "side-layout.h"
#include "template.h"

/**
 * BwDrawingPanel:
 *
 * The raster of the selected source: its line, line blanking, vertical interval or map, drawn, and
 * its figures.
 */
struct _BwDrawingPanel
{
  GtkWidget parent_instance;

  GtkStack *stack;
  BwEmptyPage *empty;
  GtkWidget *content;
  GtkLabel *title;
  GtkToggleButton *views[BW_N_PICTURES];
  GtkWidget *zoom_in;
  GtkWidget *zoom_out;
  GtkWidget *whole;
  BwPictureArea *area;
  GtkLabel *reading;
  BwFigureTable *table;

  BwPictureKind kind;
  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwDrawingPanel, bw_drawing_panel, GTK_TYPE_WIDGET)

/* Exports on paper: a page of this many pixels of 1/96 inch. */
#define EXPORT_WIDTH 1100
#define EXPORT_HEIGHT 640

#define ZOOM_STEP 1.5

static const BwSource *
selected_source (BwDrawingPanel *self)
{
  guint source = bw_document_get_source (self->document);
  return source != BW_NO_INDEX ? bw_sheet_source (bw_document_get_sheet (self->document), source)
                               : NULL;
}

/**
 * bw_drawing_panel_get_raster:
 *
 * Returns: (transfer none) (nullable): the raster of the selected source; valid until the next
 * "changed" of the document
 */
const BwRaster *
bw_drawing_panel_get_raster (BwDrawingPanel *self)
{
  const BwSource *source = selected_source (self);
  return source != NULL
             ? bw_sheet_raster (bw_document_get_sheet (self->document),
                                bw_document_get_catalogue (self->document), source)
             : NULL;
}

static void
show_hint (BwDrawingPanel *self)
{
  gtk_label_set_label (self->reading,
                       _ ("Point at it to read it, or use the arrow keys. C or a click: second "
                          "cursor. Shift+arrows or dragging: move. + − 0: zoom."));
}

static void
show_picture (BwDrawingPanel *self)
{
  const BwSource *source = selected_source (self);
  const BwRaster *raster = bw_drawing_panel_get_raster (self);
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;
  BwPicture *picture
      = raster != NULL ? bw_picture_new (self->kind, raster, source, monitor) : NULL;

  bw_picture_area_show (self->area, picture);
  show_hint (self);
}

static void
update (BwDrawingPanel *self)
{
  const BwRaster *raster = bw_drawing_panel_get_raster (self);
  gboolean lacking = bw_empty_page_update (self->empty, self->document);

  gtk_stack_set_visible_child (self->stack, lacking || raster == NULL ? GTK_WIDGET (self->empty)
                                                                      : self->content);
  show_picture (self);
  if (raster == NULL)
    return;
  g_autofree char *title
      = g_strdup_printf (_ ("%s: %s"), selected_source (self)->name, raster->name);
  g_autoptr (GPtrArray) figures = bw_raster_table (raster);
  gtk_label_set_label (self->title, title);
  bw_figure_table_show (self->table, figures);
}

static void
on_view (BwDrawingPanel *self, GtkToggleButton *button)
{
  if (self->document == NULL || !gtk_toggle_button_get_active (button))
    return;
  for (BwPictureKind kind = 0; kind < BW_N_PICTURES; kind++)
    if (self->views[kind] == button)
      self->kind = kind;
  show_picture (self);
}

static void
on_reading (BwDrawingPanel *self, const char *words)
{
  if (*words != '\0')
    gtk_label_set_label (self->reading, words);
  else
    show_hint (self);
}

/* The part that is shown has changed. */
static void
on_shown (BwDrawingPanel *self)
{
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  gboolean whole = picture == NULL || bw_picture_is_whole (picture);
  gtk_widget_set_sensitive (self->zoom_out, !whole);
  gtk_widget_set_sensitive (self->whole, !whole);
}

static void
on_zoom_in (BwDrawingPanel *self)
{
  bw_picture_area_zoom (self->area, ZOOM_STEP);
}

static void
on_zoom_out (BwDrawingPanel *self)
{
  bw_picture_area_zoom (self->area, 1 / ZOOM_STEP);
}

static void
on_whole (BwDrawingPanel *self)
{
  bw_picture_area_show_whole (self->area);
}

static void
on_second (BwDrawingPanel *self)
{
  bw_picture_area_set_second (self->area);
}

static void
draw (cairo_t *cr, double width, double height, gpointer user_data)
{
  const BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_SCREEN_DPI };
  const BwPicturePage page = { width, height, &ink };
  bw_picture_draw (user_data, cr, &page);
}

/**
 * bw_drawing_panel_export:
 * @path: ends in .svg, .pdf or .png
 *
 * Writes the drawing that is shown, as far as it is shown.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR; whatever was at @path is then as it was
 */
gboolean
bw_drawing_panel_export (BwDrawingPanel *self, const char *path, GError **error)
{
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  g_return_val_if_fail (picture != NULL, FALSE);
  g_autofree char *words = bw_picture_describe (picture);
  BwExport what = {
    .draw = draw,
    .user_data = (gpointer) picture,
    .width = EXPORT_WIDTH,
    .height = EXPORT_HEIGHT,
    .title = picture->raster->name,
    .description = words,
  };
  return bw_export_drawing (&what, path, error);
}

/**
 * bw_drawing_panel_dup_file_name:
 *
 * Returns: (transfer full): a name for a file with the drawing that is shown, without suffix
 */
char *
bw_drawing_panel_dup_file_name (BwDrawingPanel *self)
{
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  g_return_val_if_fail (picture != NULL, NULL);
  return g_strdup_printf ("%s-%s", picture->raster->id, bw_picture_id (picture));
}

/**
 * bw_drawing_panel_copy:
 *
 * Puts the picture of the drawing on the clipboard.
 */
void
bw_drawing_panel_copy (BwDrawingPanel *self)
{
  g_autoptr (GdkTexture) picture = bw_picture_area_texture (self->area);
  if (picture != NULL)
    gdk_clipboard_set_texture (gtk_widget_get_clipboard (GTK_WIDGET (self)), picture);
}

static void
bw_drawing_panel_dispose (GObject *object)
{
  g_clear_object (&BW_DRAWING_PANEL (object)->document);
  bw_dispose_template (object, BW_TYPE_DRAWING_PANEL);
  G_OBJECT_CLASS (bw_drawing_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  static const char *const views[BW_N_PICTURES] = { "line", "blanking", "field", "map" };

  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, stack);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, empty);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, content);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, title);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, zoom_in);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, zoom_out);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, whole);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, area);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, reading);
  gtk_widget_class_bind_template_child (widget_class, BwDrawingPanel, table);
  for (BwPictureKind kind = 0; kind < BW_N_PICTURES; kind++)
    gtk_widget_class_bind_template_child_full (
        widget_class, views[kind], FALSE,
        G_STRUCT_OFFSET (BwDrawingPanel, views) + (gssize) (kind * sizeof (GtkToggleButton *)));
}

static void
bw_drawing_panel_class_init (BwDrawingPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_drawing_panel_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/drawing-panel.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_view);
  gtk_widget_class_bind_template_callback (widget_class, on_reading);
  gtk_widget_class_bind_template_callback (widget_class, on_shown);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_in);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_out);
  gtk_widget_class_bind_template_callback (widget_class, on_whole);
  gtk_widget_class_bind_template_callback (widget_class, on_second);
}

static void
bw_drawing_panel_init (BwDrawingPanel *self)
{
  g_type_ensure (BW_TYPE_EMPTY_PAGE);
  g_type_ensure (BW_TYPE_FIGURE_TABLE);
  g_type_ensure (BW_TYPE_PICTURE_AREA);
  g_type_ensure (BW_TYPE_SIDE_LAYOUT);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_drawing_panel_set_document:
 * @document: what to show; to be set once
 */
void
bw_drawing_panel_set_document (BwDrawingPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_drawing_panel_get_area:
 *
 * Returns: (transfer none): the drawing
 */
BwPictureArea *
bw_drawing_panel_get_area (BwDrawingPanel *self)
{
  return self->area;
}

/**
 * bw_drawing_panel_choose:
 *
 * Shows another drawing, as the person does with the buttons.
 */
void
bw_drawing_panel_choose (BwDrawingPanel *self, BwPictureKind kind)
{
  gtk_toggle_button_set_active (self->views[kind], TRUE);
}
