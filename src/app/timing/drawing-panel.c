/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/reading.h"
#include "core/raster/results.h"
#include "draw/blanking/view.h"
#include "draw/field/view.h"
#include "draw/line/view.h"
#include "draw/map/view.h"

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
} views[BW_N_RASTER_VIEWS] = {
  [BW_RASTER_LINE] = { "line", N_ ("Line"), N_ ("One Line, and Its Blanking Enlarged") },
  [BW_RASTER_BLANKING] = { "blanking", N_ ("Blanking"),
                           N_ ("The Line Blanking, with What the Standard Allows") },
  [BW_RASTER_FIELD] = { "field", N_ ("Field"), N_ ("The Vertical Interval, with Line Numbers") },
  [BW_RASTER_MAP] = { "map", N_ ("Map"), N_ ("The Raster to Scale, with Overscan") },
};

static BwRasterView
chosen_view (BwDrawingPanel *self)
{
  const char *id = bw_picture_panel_get_view (self->panel);
  BwRasterView view = 0;
  while (view < BW_N_RASTER_VIEWS - 1 && !g_str_equal (views[view].id, id))
    view++;
  return view;
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

/* The drawing */

/* What is drawn: copies of what was selected. */
typedef struct
{
  BwRasterView view;
  BwRaster *raster;
  BwColourSystem system;
  BwRatio aspect;
  double overscan_h;
  double overscan_v;
  GPtrArray
      *limits; /* nullable (element-type BwStandardLimits): of all standards, for the blanking */
} Model;

static Model *
model_new (BwDrawingPanel *self, const BwRaster *raster)
{
  const BwSource *source = bw_document_selected_source (self->document);
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;
  BwColourSystem system = bw_source_system (source);
  Model *model = g_new (Model, 1);

  /* What is not known is not drawn: no burst, no edge of the glass. */
  *model = (Model){ .view = chosen_view (self),
                    .raster = bw_raster_copy (raster),
                    .system = system < BW_N_SYSTEMS ? system : BW_SYSTEM_NONE,
                    .aspect = source->aspect,
                    .overscan_h = isnan (monitor->overscan_h) ? 0 : monitor->overscan_h,
                    .overscan_v = isnan (monitor->overscan_v) ? 0 : monitor->overscan_v };
  if (model->view == BW_RASTER_BLANKING)
    model->limits = bw_limits_shipped ();
  return model;
}

static void
model_free (gpointer data)
{
  Model *model = data;
  bw_raster_free (model->raster);
  g_clear_pointer (&model->limits, g_ptr_array_unref);
  g_free (model);
}

/* The first standard that lays down limits for the raster. */
static const BwStandardLimits *
limits_of (const Model *model)
{
  for (guint i = 0; model->limits != NULL && i < model->limits->len; i++)
    {
      const BwStandardLimits *limits = model->limits->pdata[i];
      if (g_strcmp0 (limits->raster, model->raster->id) == 0)
        return limits;
    }
  return NULL;
}

static BwDrawing *
build (gpointer data, double width, double height, const BwInk *ink, const BwZoom *zoom)
{
  const Model *model = data;
  char mark = bw_quantity_locale_mark ();
  const BwViewRange *across = zoom != NULL ? &zoom->across : NULL;
  const BwViewRange *down = zoom != NULL ? &zoom->down : NULL;
  gboolean has_burst = bw_system_knows_burst (model->system, model->raster);
  const BwLineView line = { model->raster, across, mark, model->system };
  const BwBlankingView blanking = { model->raster, limits_of (model), across, mark };
  const BwFieldView field = { .raster = model->raster,
                              .system = has_burst ? model->system : BW_SYSTEM_NONE,
                              .range = across,
                              .mark = mark };
  const BwMapView map = {
    model->raster, model->overscan_h, model->overscan_v, model->aspect, across, down, mark
  };

  switch (model->view)
    {
    case BW_RASTER_BLANKING:
      return bw_blanking_drawing (&blanking, width, height, ink);
    case BW_RASTER_FIELD:
      return bw_field_drawing (&field, width, height, ink);
    case BW_RASTER_MAP:
      return bw_map_drawing (&map, width, height, ink);
    case BW_RASTER_LINE:
    case BW_N_RASTER_VIEWS:
    default:
      return bw_line_drawing (&line, width, height, ink);
    }
}

static void
show_picture (BwDrawingPanel *self)
{
  static const BwPictureSource source = { .build = build, .free = model_free };
  const BwRaster *raster = bw_drawing_panel_get_raster (self);

  if (raster != NULL)
    bw_picture_panel_show (self->panel, &source, model_new (self, raster));
  else
    bw_picture_panel_show (self->panel, NULL, NULL);
}

static void
update (BwDrawingPanel *self)
{
  const BwRaster *raster = bw_drawing_panel_get_raster (self);
  BwLack lack;

  bw_document_lacks_raster (self->document, &lack);
  bw_picture_panel_update_empty (self->panel, self->document, &lack);
  show_picture (self);
  if (raster == NULL)
    return;
  g_autofree char *title = g_strdup_printf (_ ("%1$s: %2$s"),
                                            bw_document_selected_source (self->document)->name,
                                            raster->name);
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
  for (BwRasterView view = 0; view < BW_N_RASTER_VIEWS; view++)
    bw_picture_panel_add_view (self->panel, views[view].id, _ (views[view].label),
                               _ (views[view].tooltip));
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
bw_drawing_panel_choose (BwDrawingPanel *self, BwRasterView view)
{
  bw_picture_panel_choose (self->panel, views[view].id);
}
