/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"
#include "picker.h"

/* A field that is the id of a raster: a button with the raster's name, which opens a list that can
 * be searched. */

#define BW_TYPE_RASTER_ROW (bw_raster_row_get_type ())
G_DECLARE_FINAL_TYPE (BwRasterRow, bw_raster_row, BW, RASTER_ROW, BwEditorRow)

struct _BwRasterRow
{
  BwEditorRow parent_instance;

  GListModel *rasters; /* of BwPickItem */
  GtkLabel *name;      /* borrowed; a child */
  char *id;
};

G_DEFINE_FINAL_TYPE (BwRasterRow, bw_raster_row, BW_TYPE_EDITOR_ROW)

/* The name of raster @id on screen; the id itself if the list has none such. */
static char *
raster_name (BwRasterRow *self, const char *id)
{
  for (guint i = 0; i < g_list_model_get_n_items (self->rasters); i++)
    {
      g_autoptr (BwPickItem) item = g_list_model_get_item (self->rasters, i);
      if (g_str_equal (bw_pick_item_get_id (item), id))
        return g_strdup (bw_pick_item_get_title (item));
    }
  return g_strdup (id);
}

static void
bw_raster_row_show (BwEditorRow *row, const char *text)
{
  BwRasterRow *self = BW_RASTER_ROW (row);
  g_autofree char *name = raster_name (self, text);

  if (text != self->id)
    {
      g_free (self->id);
      self->id = g_strdup (text);
    }
  gtk_label_set_label (self->name, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (bw_editor_row_get_control (row)),
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, name, -1);
}

static char *
bw_raster_row_dup_text (BwEditorRow *row)
{
  return g_strdup (BW_RASTER_ROW (row)->id);
}

static void
on_picked (BwRasterRow *self, BwPickItem *item)
{
  bw_raster_row_show (BW_EDITOR_ROW (self), bw_pick_item_get_id (item));
  bw_editor_row_finish_edit (BW_EDITOR_ROW (self));
}

/* What the button shows: the raster's name, and an arrow. */
static GtkWidget *
face_new (BwRasterRow *self)
{
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *name = gtk_label_new (NULL);

  self->name = GTK_LABEL (name);
  gtk_label_set_xalign (self->name, 0);
  gtk_label_set_wrap (self->name, TRUE);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_box_append (GTK_BOX (face), name);
  gtk_box_append (GTK_BOX (face), gtk_image_new_from_icon_name ("pan-down-symbolic"));
  return face;
}

/* A menu button centres its child; this one is as wide as the other fields and reads from the
 * start. */
static void
fill_button (GtkWidget *button, GtkWidget *face)
{
  for (GtkWidget *inner = face; inner != button; inner = gtk_widget_get_parent (inner))
    gtk_widget_set_halign (inner, GTK_ALIGN_FILL);
}

static void
bw_raster_row_constructed (GObject *object)
{
  BwRasterRow *self = BW_RASTER_ROW (object);
  GtkWidget *button = gtk_menu_button_new ();
  GtkWidget *picker = bw_picker_new ();
  GtkWidget *face = face_new (self);

  G_OBJECT_CLASS (bw_raster_row_parent_class)->constructed (object);
  gtk_menu_button_set_child (GTK_MENU_BUTTON (button), face);
  fill_button (button, face);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), picker);
  g_signal_connect_object (picker, "picked", G_CALLBACK (on_picked), self, G_CONNECT_SWAPPED);
  bw_editor_row_set_control (BW_EDITOR_ROW (self), button);
}

static void
bw_raster_row_finalize (GObject *object)
{
  BwRasterRow *self = BW_RASTER_ROW (object);

  g_clear_object (&self->rasters);
  g_free (self->id);
  G_OBJECT_CLASS (bw_raster_row_parent_class)->finalize (object);
}

static void
bw_raster_row_class_init (BwRasterRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_raster_row_constructed;
  G_OBJECT_CLASS (klass)->finalize = bw_raster_row_finalize;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_raster_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_raster_row_dup_text;
}

static void
bw_raster_row_init (BwRasterRow *self)
{
}

/**
 * bw_raster_row_new:
 * @rasters: (element-type BwPickItem): what to pick from, by id
 *
 * Returns: (transfer floating): a row to pick the raster of @field in
 */
BwEditorRow *
bw_raster_row_new (const BwField *field, GListModel *rasters)
{
  BwRasterRow *self = g_object_new (BW_TYPE_RASTER_ROW, "field", field, NULL);
  GtkWidget *button = bw_editor_row_get_control (BW_EDITOR_ROW (self));

  self->rasters = g_object_ref (rasters);
  bw_picker_set_items (BW_PICKER (gtk_menu_button_get_popover (GTK_MENU_BUTTON (button))), rasters);
  return BW_EDITOR_ROW (self);
}
