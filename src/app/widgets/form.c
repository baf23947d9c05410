/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "form.h"

#include <string.h>

#include "columns-layout.h"
#include "reading-box.h"

/**
 * BwForm:
 *
 * A few fields of a struct that is no part of the sheet: readings, a request. Each field is taken
 * as soon as it is sound; what is wrong stands at the field.
 */
struct _BwForm
{
  GtkWidget parent_instance;

  GPtrArray *rows; /* borrowed; the children */
  gpointer object; /* borrowed */
};

G_DEFINE_FINAL_TYPE (BwForm, bw_form, GTK_TYPE_WIDGET)

enum
{
  TAKEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Whether the text of @row is sound; then it is in the object. */
static gboolean
take_row (BwForm *self, BwEditorRow *row)
{
  g_autofree char *text = bw_editor_row_dup_text (row);
  g_autoptr (GError) error = NULL;

  if (bw_field_parse (bw_editor_row_get_field (row), self->object, text,
                      bw_quantity_locale_mark (), &error))
    {
      bw_editor_row_show_object (row, self->object);
      return TRUE;
    }
  bw_editor_row_set_error (row, error->message);
  return FALSE;
}

static void
on_edited (BwForm *self, BwEditorRow *row)
{
  if (take_row (self, row))
    g_signal_emit (self, signals[TAKEN], 0);
}

static void
bw_form_dispose (GObject *object)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bw_form_parent_class)->dispose (object);
}

static void
bw_form_finalize (GObject *object)
{
  g_ptr_array_unref (BW_FORM (object)->rows);
  G_OBJECT_CLASS (bw_form_parent_class)->finalize (object);
}

static gboolean
bw_form_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD)
    return bw_tab_in_order (widget, direction);
  return GTK_WIDGET_CLASS (bw_form_parent_class)->focus (widget, direction);
}

static void
bw_form_class_init (BwFormClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = bw_form_dispose;
  object_class->finalize = bw_form_finalize;
  GTK_WIDGET_CLASS (klass)->focus = bw_form_focus;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), BW_TYPE_COLUMNS_LAYOUT);

  /* BwForm::taken: a field of the object has been set. */
  signals[TAKEN] = g_signal_new ("taken", BW_TYPE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
bw_form_init (BwForm *self)
{
  self->rows = g_ptr_array_new ();
}

/**
 * bw_form_row_new:
 *
 * Returns: (transfer floating): the row that goes with the type of @field
 */
BwEditorRow *
bw_form_row_new (const BwField *field)
{
  switch (field->type)
    {
    case BW_FIELD_CHOICE:
      return bw_choice_row_new (field);
    case BW_FIELD_SET:
      return bw_set_row_new (field);
    case BW_FIELD_PINS:
      return bw_pins_row_new (field);
    case BW_FIELD_SWITCH:
      return field->flags & BW_FIELD_FIGURE ? bw_choice_row_new (field)
                                            : bw_switch_row_new (field);
    default:
      return field->flags & BW_FIELD_LINES ? bw_lines_row_new (field) : bw_entry_row_new (field);
    }
}

/**
 * bw_form_build:
 * @table: static
 * @object: the struct that @table describes; must outlive the form
 *
 * Makes a row for each field; to be called once.
 */
void
bw_form_build (BwForm *self, const BwFieldTable *table, gpointer object)
{
  g_return_if_fail (self->object == NULL);
  self->object = object;
  for (guint i = 0; i < table->n; i++)
    {
      BwEditorRow *row = bw_form_row_new (&table->at[i]);
      g_signal_connect_object (row, "edited", G_CALLBACK (on_edited), self, G_CONNECT_SWAPPED);
      gtk_widget_set_parent (GTK_WIDGET (row), GTK_WIDGET (self));
      g_ptr_array_add (self->rows, row);
    }
  bw_form_refresh (self);
}

/**
 * bw_form_refresh:
 *
 * Shows the object as it is now.
 */
void
bw_form_refresh (BwForm *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    bw_editor_row_show_object (self->rows->pdata[i], self->object);
}

/**
 * bw_form_take:
 *
 * Takes what is still being typed. If something is wrong the focus goes there.
 *
 * Returns: whether the whole form is sound
 */
gboolean
bw_form_take (BwForm *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (!take_row (self, self->rows->pdata[i]))
      {
        gtk_widget_child_focus (self->rows->pdata[i], GTK_DIR_TAB_FORWARD);
        return FALSE;
      }
  return TRUE;
}

/**
 * bw_form_get_row:
 * @key: a key of the table
 *
 * Returns: (transfer none) (nullable): its row
 */
BwEditorRow *
bw_form_get_row (BwForm *self, const char *key)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (strcmp (bw_editor_row_get_field (self->rows->pdata[i])->key, key) == 0)
      return self->rows->pdata[i];
  return NULL;
}
