/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-panel.h"

#include <glib/gi18n-lib.h>

#include "draw/base/export.h"
#include "empty-page.h"
#include "side-layout.h"
#include "template.h"

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
  BwResultView *table;

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
hint (const BwPicture *picture)
{
  if (picture == NULL || !bw_picture_can_be_read (picture))
    return "";
  if (bw_picture_can_be_zoomed (picture))
    return _ ("Point at it to read it, or use the arrow keys. C or a click: second cursor. "
              "Shift+arrows or dragging: move. + − 0: zoom.");
  return _ ("Point at it to read it, or use the arrow keys. C or a click: second cursor.");
}

static void
on_reading (BwPicturePanel *self, const char *words)
{
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  gtk_label_set_label (self->reading, *words != '\0' ? words : hint (picture));
}

/* The part that is shown has changed. */
static void
on_shown (BwPicturePanel *self)
{
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  gboolean whole = picture == NULL || bw_picture_is_whole (picture);
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

/**
 * bw_picture_panel_choose:
 * @id: of a view
 *
 * Shows another drawing, as the person does with the buttons.
 */
void
bw_picture_panel_choose (BwPicturePanel *self, const char *id)
{
  for (guint i = 0; i < self->buttons->len; i++)
    if (g_str_equal (g_object_get_data (self->buttons->pdata[i], VIEW_ID), id))
      gtk_toggle_button_set_active (self->buttons->pdata[i], TRUE);
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
      gtk_accessible_update_relation (GTK_ACCESSIBLE (control),
                                      GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, NULL, -1);
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
 * @picture: (transfer full) (nullable): what is drawn
 */
void
bw_picture_panel_show (BwPicturePanel *self, BwPicture *picture)
{
  gboolean read = picture != NULL && bw_picture_can_be_read (picture);
  gboolean zoomed = picture != NULL && bw_picture_can_be_zoomed (picture);

  bw_picture_area_show (self->area, picture);
  gtk_label_set_label (self->reading, hint (picture));
  gtk_widget_set_visible (GTK_WIDGET (self->reading), read);
  gtk_widget_set_visible (self->second, read);
  gtk_widget_set_visible (self->zoom_in, zoomed);
  gtk_widget_set_visible (self->zoom_out, zoomed);
  gtk_widget_set_visible (self->whole, zoomed);
}

/**
 * bw_picture_panel_show_result:
 * @result: (transfer full): stands beside the drawing
 */
void
bw_picture_panel_show_result (BwPicturePanel *self, BwResult *result)
{
  bw_result_view_show (self->table, result);
}

/**
 * bw_picture_panel_show_part:
 * @result: (transfer full)
 * @key: of the part of it that stands beside the drawing; all of it can be copied
 */
void
bw_picture_panel_show_part (BwPicturePanel *self, BwResult *result, const char *key)
{
  bw_result_view_show_part (self->table, result, key);
}

/**
 * bw_picture_panel_set_cards:
 *
 * Gives each row of a wide table beside the drawing a block of text of its own.
 */
void
bw_picture_panel_set_cards (BwPicturePanel *self)
{
  bw_result_view_set_cards (self->table, TRUE);
}

/**
 * bw_picture_panel_get_result:
 *
 * Returns: (transfer none) (nullable): what stands beside the drawing
 */
BwResult *
bw_picture_panel_get_result (BwPicturePanel *self)
{
  return bw_result_view_get_result (self->table);
}

static void
draw (cairo_t *cr, double width, double height, gpointer user_data)
{
  const BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_SCREEN_DPI };
  const BwPicturePage page = { width, height, &ink };
  bw_picture_draw (user_data, cr, &page);
}

/**
 * bw_picture_panel_has_picture:
 *
 * Returns: whether there is something to export or copy
 */
gboolean
bw_picture_panel_has_picture (BwPicturePanel *self)
{
  return bw_picture_area_get_picture (self->area) != NULL;
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
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  g_return_val_if_fail (picture != NULL, FALSE);
  g_autofree char *name = bw_picture_name (picture);
  g_autofree char *words = bw_picture_describe (picture);
  BwExport what = {
    .draw = draw,
    .user_data = (gpointer) picture,
    .width = EXPORT_WIDTH,
    .height = EXPORT_HEIGHT,
    .title = name,
    .description = words,
  };
  return bw_export_drawing (&what, path, error);
}

/**
 * bw_picture_panel_dup_file_name:
 *
 * Returns: (transfer full): a name for a file with the drawing that is shown, without suffix
 */
char *
bw_picture_panel_dup_file_name (BwPicturePanel *self)
{
  const BwPicture *picture = bw_picture_area_get_picture (self->area);
  g_return_val_if_fail (picture != NULL, NULL);
  return bw_picture_file_stem (picture);
}

/**
 * bw_picture_panel_copy:
 *
 * Puts the picture of the drawing on the clipboard.
 */
void
bw_picture_panel_copy (BwPicturePanel *self)
{
  g_autoptr (GdkTexture) picture = bw_picture_area_texture (self->area);
  if (picture != NULL)
    gdk_clipboard_set_texture (gtk_widget_get_clipboard (GTK_WIDGET (self)), picture);
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
  gtk_widget_class_bind_template_callback (widget_class, on_shown);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_in);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_out);
  gtk_widget_class_bind_template_callback (widget_class, on_whole);
  gtk_widget_class_bind_template_callback (widget_class, on_second);
}

static void
bw_picture_panel_init (BwPicturePanel *self)
{
  g_type_ensure (BW_TYPE_EMPTY_PAGE);
  g_type_ensure (BW_TYPE_RESULT_VIEW);
  g_type_ensure (BW_TYPE_PICTURE_AREA);
  g_type_ensure (BW_TYPE_SIDE_LAYOUT);
  self->buttons = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}
