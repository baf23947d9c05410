/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/template.h"
#include "editor-form.h"

/**
 * BwEditor:
 *
 * The form for one part of the sheet, made from its table of fields. Every sound edit goes into the
 * document at once. An unsound one stays in its row with what is wrong; it is tried again together
 * with the next edit, so that two fields that only suit each other can be changed one after the
 * other.
 */
struct _BwEditor
{
  GtkWidget parent_instance;

  GtkLabel *title;
  GtkLabel *warning;
  GtkScrolledWindow *scroll;
  GtkBox *form;

  BwDocument *document;
  BwPart part;
  GPtrArray *rows; /* borrowed BwEditorRow */
  gboolean open;
};

G_DEFINE_FINAL_TYPE (BwEditor, bw_editor, GTK_TYPE_WIDGET)

enum
{
  DONE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static guint
edited_index (BwEditor *self)
{
  if (self->part == BW_PART_INPUT)
    return bw_document_get_input (self->document);
  if (self->part == BW_PART_SOURCE)
    return bw_document_get_source (self->document);
  return 0;
}

static gconstpointer
edited_object (BwEditor *self)
{
  return bw_document_get_object (self->document, self->part, edited_index (self));
}

/* Title */

static char *
title_words (BwEditor *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  switch (self->part)
    {
    case BW_PART_MONITOR:
      return g_strdup_printf (_ ("Monitor: %s"), sheet->monitor->name);
    case BW_PART_INPUT:
      return g_strdup_printf (_ ("Input: %s"), ((const BwInput *) edited_object (self))->name);
    case BW_PART_SOURCE:
      return g_strdup_printf (_ ("Source: %s"), ((const BwSource *) edited_object (self))->name);
    case BW_PART_SHEET:
    default:
      return g_strdup (_ ("Bench sheet"));
    }
}

static guint
count_errors (BwEditor *self)
{
  guint errors = 0;
  for (guint i = 0; i < self->rows->len; i++)
    errors += bw_editor_row_get_error (self->rows->pdata[i]) != NULL;
  return errors;
}

static void
update_heads (BwEditor *self)
{
  g_autofree char *title = title_words (self);
  guint errors = count_errors (self);
  g_autofree char *warning = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "%u value is not taken yet. Correct it, or press Escape in it to take it back.",
                   "%u values are not taken yet. Correct them, or press Escape in each to take it "
                   "back.",
                   errors),
      errors);

  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->warning, warning);
  gtk_widget_set_visible (GTK_WIDGET (self->warning), errors > 0);
}

/* Taking edits */

static gboolean
try_edits (BwEditor *self, GPtrArray *rows, GError **error)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) edits = g_array_new (FALSE, FALSE, sizeof (BwEdit));

  for (guint i = 0; i < rows->len; i++)
    {
      BwEdit edit = { bw_editor_row_get_field (rows->pdata[i]),
                      bw_editor_row_dup_text (rows->pdata[i]) };
      g_ptr_array_add (texts, (char *) edit.text);
      g_array_append_val (edits, edit);
    }
  return bw_document_edit (self->document, self->part, edited_index (self),
                           (const BwEdit *) (gpointer) edits->data, edits->len,
                           bw_quantity_locale_mark (), error);
}

static void
accept_rows (GPtrArray *rows, gconstpointer object)
{
  for (guint i = 0; i < rows->len; i++)
    bw_editor_row_show_object (rows->pdata[i], object);
}

static void
on_edited (BwEditor *self, BwEditorRow *row)
{
  g_autoptr (GPtrArray) alone = g_ptr_array_new ();
  g_autoptr (GPtrArray) together = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;

  if (!self->open)
    return; /* the form is being left: its entries lose the focus */
  g_ptr_array_add (alone, row);
  g_ptr_array_add (together, row);
  for (guint i = 0; i < self->rows->len; i++)
    if (self->rows->pdata[i] != row && bw_editor_row_get_error (self->rows->pdata[i]) != NULL)
      g_ptr_array_add (together, self->rows->pdata[i]);

  if (together->len > 1 && try_edits (self, together, NULL))
    accept_rows (together, edited_object (self));
  else if (try_edits (self, alone, &error))
    accept_rows (alone, edited_object (self));
  else
    bw_editor_row_set_error (row, error->message);
  update_heads (self);
}

/* The list does nothing while something that is typed is refused: the figure is shown as it was. */
static void
on_origin_chosen (BwEditor *self, guint origin, BwEditorRow *row)
{
  if (!self->open)
    return;
  if (!bw_document_set_origin (self->document, self->part, edited_index (self),
                               bw_editor_row_get_field (row), (BwOrigin) origin, NULL))
    bw_editor_row_follow_object (row, edited_object (self));
  update_heads (self);
}

/* Showing */

/* Rows that hold something not taken yet keep it. */
static void
refresh (BwEditor *self)
{
  gconstpointer object = edited_object (self);
  for (guint i = 0; i < self->rows->len; i++)
    bw_editor_row_follow_object (self->rows->pdata[i], object);
  update_heads (self);
}

static void
show_afresh (BwEditor *self)
{
  accept_rows (self->rows, edited_object (self));
  update_heads (self);
}

static void
on_changed (BwEditor *self)
{
  if (!self->open)
    return;
  if (edited_object (self) != NULL)
    refresh (self);
  else
    bw_editor_close (self);
}

static void
on_selection_changed (BwEditor *self)
{
  if (self->open && edited_object (self) != NULL)
    show_afresh (self);
}

/* Building */

static void
clear_form (BwEditor *self)
{
  GtkWidget *child;
  g_ptr_array_set_size (self->rows, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->form))) != NULL)
    gtk_box_remove (self->form, child);
}

static void
build_form (BwEditor *self)
{
  clear_form (self);
  bw_editor_form_build (self->form, self->document, self->part, self->rows);
  for (guint i = 0; i < self->rows->len; i++)
    {
      bw_editor_row_set_part (self->rows->pdata[i], self->part);
      bw_editor_row_add_origin (self->rows->pdata[i], bw_part_fields (self->part));
      g_signal_connect_object (self->rows->pdata[i], "origin-chosen", G_CALLBACK (on_origin_chosen),
                               self, G_CONNECT_SWAPPED);
      g_signal_connect_object (self->rows->pdata[i], "edited", G_CALLBACK (on_edited), self,
                               G_CONNECT_SWAPPED);
    }
}

/**
 * bw_editor_edit:
 * @part: of inputs and sources the selected one
 *
 * Shows the form for @part.
 */
void
bw_editor_edit (BwEditor *self, BwPart part)
{
  self->part = part;
  g_return_if_fail (edited_object (self) != NULL);
  build_form (self);
  self->open = TRUE;
  show_afresh (self);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroll), 0);
  gtk_widget_child_focus (GTK_WIDGET (self->form), GTK_DIR_TAB_FORWARD);
}

/**
 * bw_editor_close:
 *
 * Drops what is not taken and leaves the form.
 */
void
bw_editor_close (BwEditor *self)
{
  if (!self->open)
    return;
  self->open = FALSE;
  g_signal_emit (self, signals[DONE], 0);
  clear_form (self);
}

/* Takes what is still being typed. */
static void
take_typed (BwEditor *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      BwEditorRow *row = self->rows->pdata[i];
      if (bw_editor_row_is_edited (row))
        on_edited (self, row);
    }
}

/**
 * bw_editor_finish:
 *
 * Leaves the form, unless something in it is not taken yet: then the focus goes there.
 *
 * Returns: whether the form was left
 */
gboolean
bw_editor_finish (BwEditor *self)
{
  take_typed (self);
  for (guint i = 0; i < self->rows->len; i++)
    if (bw_editor_row_get_error (self->rows->pdata[i]) != NULL)
      {
        gtk_widget_child_focus (self->rows->pdata[i], GTK_DIR_TAB_FORWARD);
        return FALSE;
      }
  bw_editor_close (self);
  return TRUE;
}

static void
on_done (BwEditor *self)
{
  bw_editor_finish (self);
}

static void
bw_editor_dispose (GObject *object)
{
  BwEditor *self = BW_EDITOR (object);

  self->open = FALSE;
  g_clear_object (&self->document);
  bw_dispose_template (object, BW_TYPE_EDITOR);
  G_OBJECT_CLASS (bw_editor_parent_class)->dispose (object);
}

static void
bw_editor_finalize (GObject *object)
{
  g_ptr_array_unref (BW_EDITOR (object)->rows);
  G_OBJECT_CLASS (bw_editor_parent_class)->finalize (object);
}

static void
bw_editor_class_init (BwEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_editor_finalize;

  /* BwEditor::done: the form is left. */
  signals[DONE] = g_signal_new ("done", BW_TYPE_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/breezeway/Breezeway/editor.ui");
  gtk_widget_class_bind_template_child (widget_class, BwEditor, title);
  gtk_widget_class_bind_template_child (widget_class, BwEditor, warning);
  gtk_widget_class_bind_template_child (widget_class, BwEditor, scroll);
  gtk_widget_class_bind_template_child (widget_class, BwEditor, form);
  gtk_widget_class_bind_template_callback (widget_class, on_done);
}

static void
bw_editor_init (BwEditor *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_name_buttons (GTK_WIDGET (self));
}

/**
 * bw_editor_set_document:
 * @document: what to edit; to be set once
 */
void
bw_editor_set_document (BwEditor *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (on_selection_changed), self,
                           G_CONNECT_SWAPPED);
}

/**
 * bw_editor_get_part:
 *
 * Returns: what is, or was last, edited
 */
BwPart
bw_editor_get_part (BwEditor *self)
{
  return self->part;
}

/**
 * bw_editor_get_row:
 * @key: a key of the part's table
 *
 * Returns: (transfer none) (nullable): its row in the form
 */
BwEditorRow *
bw_editor_get_row (BwEditor *self, const char *key)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (strcmp (bw_editor_row_get_field (self->rows->pdata[i])->key, key) == 0)
      return self->rows->pdata[i];
  return NULL;
}
