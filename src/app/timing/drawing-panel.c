/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-panel.h"

#include <glib/gi18n-lib.h>

#include "core/raster/results.h"


/**
 * BwDrawingPanel:
 *
 * The raster of the selected source: its line, line blanking, vertical interval or map, drawn, and
 * its figures.
 */
struct _BwDrawingPanel
{
  GtkWidget parent_instance;

  BwPicturePanel *panel; /* the only child */
  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwDrawingPanel, bw_drawing_panel, GTK_TYPE_WIDGET)

static const struct
{
  const char *id;
  const char *label;
  const char *tooltip;
} views[BW_N_PICTURES] = {
  [BW_PICTURE_LINE] = { "line", N_ ("Line"), N_ ("One Line, and Its Blanking Enlarged") },
  [BW_PICTURE_BLANKING]
  = { "blanking", N_ ("Blanking"), N_ ("The Line Blanking, with What the Standard Allows") },
  [BW_PICTURE_FIELD] = { "field", N_ ("Field"), N_ ("The Vertical Interval, with Line Numbers") },
  [BW_PICTURE_MAP] = { "map", N_ ("Map"), N_ ("The Raster to Scale, with Overscan") },
};

static BwPictureKind
chosen_kind (BwDrawingPanel *self)
{
  const char *id = bw_picture_panel_get_view (self->panel);
  BwPictureKind kind = 0;
  while (kind < BW_N_PICTURES - 1 && !g_str_equal (views[kind].id, id))
    kind++;
  return kind;
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
  return bw_document_selected_raster (self->document);
}

static void
show_picture (BwDrawingPanel *self)
{
  const BwSource *source = bw_document_selected_source (self->document);
  const BwRaster *raster = bw_drawing_panel_get_raster (self);
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;

  bw_picture_panel_show (self->panel, raster != NULL ? bw_raster_picture_new (chosen_kind (self),
                                                                              raster, source,
                                                                              monitor)
                                                     : NULL);
}

static void
update (BwDrawingPanel *self)
{
  const BwRaster *raster = bw_drawing_panel_get_raster (self);

  bw_picture_panel_update_empty (self->panel, self->document, raster == NULL);
  show_picture (self);
  if (raster == NULL)
    return;
  g_autofree char *title = g_strdup_printf (
      _ ("%s: %s"), bw_document_selected_source (self->document)->name, raster->name);
  BwResult *figures = bw_result_new (bw_quantity_locale_mark ());
  bw_raster_say (bw_result_root (figures), raster);
  bw_picture_panel_set_title (self->panel, title);
  bw_picture_panel_show_result (self->panel, figures);
}

static void
on_view (BwDrawingPanel *self)
{
  if (self->document != NULL)
    show_picture (self);
}

static void
bw_drawing_panel_dispose (GObject *object)
{
  BwDrawingPanel *self = BW_DRAWING_PANEL (object);
  GtkWidget *panel = GTK_WIDGET (self->panel);

  g_clear_object (&self->document);
  g_clear_pointer (&panel, gtk_widget_unparent);
  self->panel = NULL;
  G_OBJECT_CLASS (bw_drawing_panel_parent_class)->dispose (object);
}

static void
bw_drawing_panel_class_init (BwDrawingPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_drawing_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
bw_drawing_panel_init (BwDrawingPanel *self)
{
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  for (BwPictureKind kind = 0; kind < BW_N_PICTURES; kind++)
    bw_picture_panel_add_view (self->panel, views[kind].id, _ (views[kind].label),
                               _ (views[kind].tooltip));
  g_signal_connect_object (self->panel, "view", G_CALLBACK (on_view), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (GTK_WIDGET (self->panel), GTK_WIDGET (self));
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
  bw_document_follow (document, G_CALLBACK (update), self);
  update (self);
}

/**
 * bw_drawing_panel_get_panel:
 *
 * Returns: (transfer none): the drawing with its controls
 */
BwPicturePanel *
bw_drawing_panel_get_panel (BwDrawingPanel *self)
{
  return self->panel;
}

/**
 * bw_drawing_panel_get_area:
 *
 * Returns: (transfer none): the drawing
 */
BwPictureArea *
bw_drawing_panel_get_area (BwDrawingPanel *self)
{
  return bw_picture_panel_get_area (self->panel);
}

/**
 * bw_drawing_panel_choose:
 *
 * Shows another drawing, as the person does with the buttons.
 */
void
bw_drawing_panel_choose (BwDrawingPanel *self, BwPictureKind kind)
{
  bw_picture_panel_choose (self->panel, views[kind].id);
}
