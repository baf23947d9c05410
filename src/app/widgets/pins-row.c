/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

#include <glib/gi18n-lib.h>

#include "core/bench/monitor.h"
#include "core/bench/source.h"
#include "core/connector/connector.h"
#include "template.h"

/* The pins of a connector of which no standard says what they carry: a line for each contact with a
 * list of what it may carry, taken at once. The row is there while the source or the input has such
 * a connector. */

#define BW_TYPE_PINS_ROW (bw_pins_row_get_type ())
G_DECLARE_FINAL_TYPE (BwPinsRow, bw_pins_row, BW, PINS_ROW, BwEditorRow)

struct _BwPinsRow
{
  BwEditorRow parent_instance;

  GtkGrid *grid;    /* borrowed */
  GPtrArray *lists; /* borrowed GtkDropDown, of pin 1 and on */
  guint contacts;   /* how many of them there are for the connector */
  BwPinout beyond;  /* what is said of pins that no list is for; kept as it is */
};

G_DEFINE_FINAL_TYPE (BwPinsRow, bw_pins_row, BW_TYPE_EDITOR_ROW)

static void
bw_pins_row_show (BwEditorRow *row, const char *text)
{
  BwPinsRow *self = BW_PINS_ROW (row);
  BwPinout pins = { { 0 } };

  bw_pinout_parse (text, &pins, NULL);
  self->beyond = pins;
  for (guint i = 0; i < self->lists->len; i++)
    {
      guint use = bw_pinout_use (&pins, i + 1);
      gtk_drop_down_set_selected (self->lists->pdata[i], use);
      bw_pinout_set (&self->beyond, i + 1, BW_N_PIN_USES);
    }
}

/* One conductor on two pins is refused with the field's words, so it is written down as it is. */
static char *
bw_pins_row_dup_text (BwEditorRow *row)
{
  BwPinsRow *self = BW_PINS_ROW (row);
  BwPinout pins = self->beyond;

  for (guint i = 0; i < self->lists->len; i++)
    {
      guint use = gtk_drop_down_get_selected (self->lists->pdata[i]);
      bw_pinout_set (&pins, i + 1, MIN (use, BW_N_PIN_USES));
    }
  return bw_pinout_to_text (&pins);
}

static void
add_contact (BwPinsRow *self, guint number)
{
  g_autofree char *name = g_strdup_printf (_ ("Pin %u"), number);
  GtkStringList *labels = gtk_string_list_new (NULL);
  GtkWidget *label = gtk_label_new (name);

  for (guint i = 0; i < bw_pin_uses.n; i++)
    gtk_string_list_append (labels, bw_kind_label (&bw_pin_uses, i));
  gtk_string_list_append (labels, _ ("not known"));
  GtkWidget *list = gtk_drop_down_new (G_LIST_MODEL (labels), NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (list), BW_N_PIN_USES);
  gtk_widget_set_hexpand (list, TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  bw_label_control (list, label);
  g_signal_connect_object (list, "notify::selected", G_CALLBACK (bw_editor_row_finish_edit), self,
                           G_CONNECT_SWAPPED);
  gtk_grid_attach (self->grid, label, 0, (int) number - 1, 1, 1);
  gtk_grid_attach (self->grid, list, 1, (int) number - 1, 1, 1);
  g_ptr_array_add (self->lists, list);
}

/* The contacts of the connector of @object that has no standard; zero: it has none. */
static guint
contacts_of (const BwField *field, gconstpointer object)
{
  gboolean of_source = field == bw_field_find (&bw_source_fields, field->key);
  guint most = 0;

  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    {
      gboolean has = of_source ? ((const BwSource *) object)->connector == i
                               : (((const BwInput *) object)->connectors & BW_BIT (i)) != 0;
      if (has)
        most = MAX (most, bw_connector_open_contacts (i));
    }
  return MIN (most, BW_PINOUT_MAX);
}

static void
bw_pins_row_look_at (BwEditorRow *row, gconstpointer object)
{
  BwPinsRow *self = BW_PINS_ROW (row);
  guint contacts = contacts_of (bw_editor_row_get_field (row), object);

  gtk_widget_set_visible (GTK_WIDGET (row), contacts > 0);
  while (self->lists->len < contacts)
    {
      guint number = self->lists->len + 1, use = bw_pinout_use (&self->beyond, number);
      add_contact (self, number);
      gtk_drop_down_set_selected (self->lists->pdata[number - 1], use);
      bw_pinout_set (&self->beyond, number, BW_N_PIN_USES);
    }
  for (guint i = 0; i < self->lists->len; i++)
    {
      gtk_widget_set_visible (gtk_grid_get_child_at (self->grid, 0, (int) i), i < contacts);
      gtk_widget_set_visible (self->lists->pdata[i], i < contacts);
    }
}

static void
bw_pins_row_constructed (GObject *object)
{
  BwPinsRow *self = BW_PINS_ROW (object);
  GtkWidget *grid = g_object_new (GTK_TYPE_GRID, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP,
                                  "column-spacing", 12, "row-spacing", 4, NULL);

  G_OBJECT_CLASS (bw_pins_row_parent_class)->constructed (object);
  self->grid = GTK_GRID (grid);
  bw_editor_row_set_control (BW_EDITOR_ROW (self), grid);
}

static void
bw_pins_row_finalize (GObject *object)
{
  g_ptr_array_unref (BW_PINS_ROW (object)->lists);
  G_OBJECT_CLASS (bw_pins_row_parent_class)->finalize (object);
}

static void
bw_pins_row_class_init (BwPinsRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_pins_row_constructed;
  G_OBJECT_CLASS (klass)->finalize = bw_pins_row_finalize;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_pins_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_pins_row_dup_text;
  BW_EDITOR_ROW_CLASS (klass)->look_at = bw_pins_row_look_at;
}

static void
bw_pins_row_init (BwPinsRow *self)
{
  self->lists = g_ptr_array_new ();
}

/**
 * bw_pins_row_new:
 *
 * Returns: (transfer floating): a row to say in what each pin carries
 */
BwEditorRow *
bw_pins_row_new (const BwField *field)
{
  return g_object_new (BW_TYPE_PINS_ROW, "field", field, NULL);
}
