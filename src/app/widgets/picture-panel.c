/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-panel.h"

#include <glib/gi18n-lib.h>

#include "draw/base/export.h"
#include "empty-page.h"
#include "side-layout.h"
#include "template.h"
#include "wrap-layout.h"

/**
 * BwPicturePanel:
 *
 * A drawing with what goes with it on every page: what can be drawn, the page's own controls,
 * zooming, what the cursors read, figures beside it, copying and exporting. "view" tells that
 * another drawing has been chosen.
 */
struct _BwPicturePanel
{
  GtkWidget parent_instance;

  GtkStack *stack;
  BwEmptyPage *empty;
  GtkWidget *content;
  GtkLabel *title;
  GtkBox *views;
  GtkBox *controls;
  GtkWidget *second;
  GtkWidget *zoom_in;
  GtkWidget *zoom_out;
  GtkWidget *whole;
  BwPictureArea *area;
  GtkLabel *reading;
  GtkBox *side;
  BwFigureTable *table;

  GPtrArray *buttons; /* (element-type GtkToggleButton): borrowed, of the views */
};

G_DEFINE_FINAL_TYPE (BwPicturePanel, bw_picture_panel, GTK_TYPE_WIDGET)

enum
{
  VIEW,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Exports on paper: a page of this many pixels of 1/96 inch. */
#define EXPORT_WIDTH 1100
#define EXPORT_HEIGHT 640

#define ZOOM_STEP 1.5
#define VIEW_ID "bw-view"

static const char *
hint (BwPicturePanel *self)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self->area);
  if (drawing == NULL || !bw_drawing_can_be_read (drawing))
    return "";
  if (bw_picture_area_can_be_zoomed (self->area))
    return _ ("Point at it to read it, or use the arrow keys. C or a click: second cursor. "
              "Shift+arrows or dragging: move. + − 0: zoom.");
  return _ ("Point at it to read it, or use the arrow keys. C or a click: second cursor.");
}

/* The line that tells the reading keeps the height of the longest one, or of the hint, lest the
 * drawing under it jump while the pointer moves. */
static void
show_line (BwPicturePanel *self, const char *words)
{
  GtkWidget *line = GTK_WIDGET (self->reading);
  int width = gtk_widget_get_width (line), kept, height;

  gtk_label_set_label (self->reading, words);
  if (width == 0)
    return;
  gtk_widget_get_size_request (line, NULL, &kept);
  gtk_widget_measure (line, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  if (height > kept)
    gtk_widget_set_size_request (line, -1, height);
}

static void
on_reading (BwPicturePanel *self, const char *words)
{
  int kept;

  gtk_widget_get_size_request (GTK_WIDGET (self->reading), NULL, &kept);
  if (*words == '\0' || kept < 0)
    show_line (self, hint (self));
  if (*words != '\0')
    show_line (self, words);
}

/* There is something else to draw, or another part of it. */
static void
on_drawn (BwPicturePanel *self)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self->area);
  gboolean read = drawing != NULL && bw_drawing_can_be_read (drawing);
  gboolean zoomed = bw_picture_area_can_be_zoomed (self->area);
  gboolean whole = bw_picture_area_is_whole (self->area);

  if (*gtk_label_get_label (self->reading) == '\0')
    show_line (self, hint (self));
  gtk_widget_set_sensitive (self->second, read);
  gtk_widget_set_visible (self->zoom_in, zoomed);
  gtk_widget_set_visible (self->zoom_out, zoomed);
  gtk_widget_set_visible (self->whole, zoomed);
  gtk_widget_set_sensitive (self->zoom_out, !whole);
  gtk_widget_set_sensitive (self->whole, !whole);
}

static void
on_zoom_in (BwPicturePanel *self)
{
  bw_picture_area_zoom (self->area, ZOOM_STEP);
}

static void
on_zoom_out (BwPicturePanel *self)
{
  bw_picture_area_zoom (self->area, 1 / ZOOM_STEP);
}

static void
on_whole (BwPicturePanel *self)
{
  bw_picture_area_show_whole (self->area);
}

static void
on_second (BwPicturePanel *self)
{
  bw_picture_area_set_second (self->area);
}

static void
on_view (BwPicturePanel *self, GtkToggleButton *button)
{
  if (gtk_toggle_button_get_active (button))
    g_signal_emit (self, signals[VIEW], 0, g_object_get_data (G_OBJECT (button), VIEW_ID));
}

/**
 * bw_picture_panel_add_view:
 * @id: what "view" tells
 *
 * Adds a button that chooses a drawing. The first one is chosen.
 */
void
bw_picture_panel_add_view (BwPicturePanel *self, const char *id, const char *label,
                           const char *tooltip)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (label);

  g_object_set_data_full (G_OBJECT (button), VIEW_ID, g_strdup (id), g_free);
  gtk_widget_set_name (button, id);
  gtk_widget_set_tooltip_text (button, tooltip);
  if (self->buttons->len > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), self->buttons->pdata[0]);
  else
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  g_signal_connect_object (button, "toggled", G_CALLBACK (on_view), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->views, button);
  g_ptr_array_add (self->buttons, button);
}

static GtkToggleButton *
view_button (BwPicturePanel *self, const char *id)
{
  for (guint i = 0; i < self->buttons->len; i++)
    if (g_str_equal (g_object_get_data (self->buttons->pdata[i], VIEW_ID), id))
      return self->buttons->pdata[i];
  g_return_val_if_reached (NULL);
}

/**
 * bw_picture_panel_allow_view:
 * @id: of a view
 * @can: whether it can be chosen
 * @tooltip: what it is, or why it cannot be chosen
 */
void
bw_picture_panel_allow_view (BwPicturePanel *self, const char *id, gboolean can,
                             const char *tooltip)
{
  GtkWidget *button = GTK_WIDGET (view_button (self, id));

  gtk_widget_set_sensitive (button, can);
  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  tooltip, -1);
}

/**
 * bw_picture_panel_choose:
 * @id: of a view
 *
 * Shows another drawing, as the person does with the buttons.
 */
void
bw_picture_panel_choose (BwPicturePanel *self, const char *id)
{
  gtk_toggle_button_set_active (view_button (self, id), TRUE);
}

/**
 * bw_picture_panel_get_view:
 *
 * Returns: (transfer none) (nullable): the id of the view that is chosen
 */
const char *
bw_picture_panel_get_view (BwPicturePanel *self)
{
  for (guint i = 0; i < self->buttons->len; i++)
    if (gtk_toggle_button_get_active (self->buttons->pdata[i]))
      return g_object_get_data (self->buttons->pdata[i], VIEW_ID);
  return NULL;
}

/**
 * bw_picture_panel_add_control:
 * @label: (nullable): with an underscore before its access key
 * @control: (transfer floating): what changes the drawing
 *
 * Adds a control to the row above the drawing.
 */
void
bw_picture_panel_add_control (BwPicturePanel *self, const char *label, GtkWidget *control)
{
  if (label != NULL)
    {
      GtkWidget *name = gtk_label_new_with_mnemonic (label);
      gtk_label_set_mnemonic_widget (GTK_LABEL (name), control);
      gtk_widget_add_css_class (name, "bw-light");
      gtk_box_append (self->controls, name);
      gtk_accessible_update_relation (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                      name, NULL, -1);
    }
  gtk_box_append (self->controls, control);
  gtk_widget_set_visible (GTK_WIDGET (self->controls), TRUE);
}

/**
 * bw_picture_panel_add_side:
 * @widget: (transfer floating): stands under the figures
 */
void
bw_picture_panel_add_side (BwPicturePanel *self, GtkWidget *widget)
{
  gtk_box_append (self->side, widget);
}

/**
 * bw_picture_panel_update_empty:
 * @lacking: whether something else is lacking, so that there is nothing to draw
 *
 * Shows what to do first if the sheet has nothing to draw.
 *
 * Returns: whether it has not
 */
gboolean
bw_picture_panel_update_empty (BwPicturePanel *self, BwDocument *document, gboolean lacking)
{
  gboolean nothing = bw_empty_page_update (self->empty, document) || lacking;
  gtk_stack_set_visible_child (self->stack, nothing ? GTK_WIDGET (self->empty) : self->content);
  return nothing;
}

/**
 * bw_picture_panel_set_title:
 * @title: of the page: what is drawn
 */
void
bw_picture_panel_set_title (BwPicturePanel *self, const char *title)
{
  gtk_label_set_label (self->title, title);
}

/**
 * bw_picture_panel_show:
 * @source: (nullable): what is drawn; copied
 * @data: (transfer full): what @source's functions get
 */
void
bw_picture_panel_show (BwPicturePanel *self, const BwPictureSource *source, gpointer data)
{
  gtk_label_set_label (self->reading, "");
  gtk_widget_set_size_request (GTK_WIDGET (self->reading), -1, -1);
  bw_picture_area_show (self->area, source, data);
}

/**
 * bw_picture_panel_show_figures:
 * @figures: (element-type BwTableFigure): stand beside the drawing; copied
 */
void
bw_picture_panel_show_figures (BwPicturePanel *self, GPtrArray *figures)
{
  bw_figure_table_show (self->table, figures);
}

/* What is shown, on the paper that is exported. */
static BwDrawing *
paper_of (BwPicturePanel *self)
{
  const BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_SCREEN_DPI };
  return bw_picture_area_build (self->area, EXPORT_WIDTH, EXPORT_HEIGHT, &ink);
}

/**
 * bw_picture_panel_has_picture:
 *
 * Returns: whether there is something to export or copy
 */
gboolean
bw_picture_panel_has_picture (BwPicturePanel *self)
{
  return bw_picture_area_has_source (self->area);
}

/**
 * bw_picture_panel_export:
 * @path: ends in .svg, .pdf or .png
 *
 * Writes the drawing that is shown, as far as it is shown.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR; whatever was at @path is then as it was
 */
gboolean
bw_picture_panel_export (BwPicturePanel *self, const char *path, GError **error)
{
  g_autoptr (BwDrawing) drawing = paper_of (self);
  g_return_val_if_fail (drawing != NULL, FALSE);
  return bw_export_drawing (drawing, NULL, path, error);
}

/**
 * bw_picture_panel_dup_file_name:
 *
 * Returns: (transfer full): a name for a file with the drawing that is shown, without suffix
 */
char *
bw_picture_panel_dup_file_name (BwPicturePanel *self)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self->area);
  g_return_val_if_fail (drawing != NULL, NULL);
  return g_strdup (bw_drawing_file_stem (drawing));
}

/**
 * bw_picture_panel_dup_content:
 *
 * Returns: (transfer full) (nullable): the drawing for the clipboard: as a picture, as an SVG file,
 *   and as text for programs that take nothing else
 */
GdkContentProvider *
bw_picture_panel_dup_content (BwPicturePanel *self)
{
  GdkTexture *texture = bw_picture_area_get_texture (self->area);
  g_autoptr (BwDrawing) paper = paper_of (self);
  if (texture == NULL)
    return NULL;

  g_autoptr (GBytes) svg = bw_export_svg (paper);
  g_autofree char *text = bw_drawing_to_text (paper);
  GdkContentProvider *forms[] = {
    gdk_content_provider_new_typed (GDK_TYPE_TEXTURE, texture),
    gdk_content_provider_new_for_bytes ("image/svg+xml", svg),
    gdk_content_provider_new_typed (G_TYPE_STRING, text),
  };
  return gdk_content_provider_new_union (forms, G_N_ELEMENTS (forms));
}

/**
 * bw_picture_panel_copy:
 *
 * Puts the drawing on the clipboard.
 */
void
bw_picture_panel_copy (BwPicturePanel *self)
{
  g_autoptr (GdkContentProvider) content = bw_picture_panel_dup_content (self);
  if (content != NULL)
    gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), content);
}

/**
 * bw_picture_panel_get_area:
 *
 * Returns: (transfer none): the drawing
 */
BwPictureArea *
bw_picture_panel_get_area (BwPicturePanel *self)
{
  return self->area;
}

static void
bw_picture_panel_dispose (GObject *object)
{
  g_clear_pointer (&BW_PICTURE_PANEL (object)->buttons, g_ptr_array_unref);
  bw_dispose_template (object, BW_TYPE_PICTURE_PANEL);
  G_OBJECT_CLASS (bw_picture_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, stack);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, empty);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, content);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, title);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, views);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, controls);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, second);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, zoom_in);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, zoom_out);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, whole);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, area);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, reading);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, side);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, table);
}

static void
bw_picture_panel_class_init (BwPicturePanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_picture_panel_dispose;

  /* BwPicturePanel::view: another drawing is chosen, by its id. */
  signals[VIEW] = g_signal_new ("view", BW_TYPE_PICTURE_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/picture-panel.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_reading);
  gtk_widget_class_bind_template_callback (widget_class, on_drawn);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_in);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_out);
  gtk_widget_class_bind_template_callback (widget_class, on_whole);
  gtk_widget_class_bind_template_callback (widget_class, on_second);
}

static void
bw_picture_panel_init (BwPicturePanel *self)
{
  g_type_ensure (BW_TYPE_EMPTY_PAGE);
  g_type_ensure (BW_TYPE_FIGURE_TABLE);
  g_type_ensure (BW_TYPE_PICTURE_AREA);
  g_type_ensure (BW_TYPE_SIDE_LAYOUT);
  g_type_ensure (BW_TYPE_WRAP_LAYOUT);
  self->buttons = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}
