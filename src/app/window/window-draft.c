/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

/* Drafts of the window's sheet. */

static void
on_draft_failed (BwWindow *self, const GError *error)
{
  bw_window_show_error (self,
                        _ ("No draft of this sheet can be kept, so that its changes are lost if the "
                           "program or the power fails. Save it yourself from time to time."),
                        error);
}

/* Keeps a draft of the window's document from now on. */
void
bw_window_keep_drafts (BwWindow *self)
{
  self->drafts = bw_draft_keeper_new (self->document);
  g_signal_connect_object (self->drafts, "failed", G_CALLBACK (on_draft_failed), self,
                           G_CONNECT_SWAPPED);
}

/**
 * bw_window_flush_draft:
 *
 * Writes the draft now, because the program is about to be ended.
 */
void
bw_window_flush_draft (BwWindow *self)
{
  g_return_if_fail (BW_IS_WINDOW (self));
  bw_draft_keeper_flush (self->drafts);
}

/* Types @typed into the form again. It is taken if it is sound, and stays there if it is not. */
static void
type_again (BwWindow *self, const BwTyped *typed)
{
  guint source = bw_document_get_source (self->document);
  guint input = bw_document_get_input (self->document);

  if (bw_document_get_object (self->document, typed->part, typed->index) == NULL)
    return;
  if (typed->part == BW_PART_SOURCE)
    source = typed->index;
  else if (typed->part == BW_PART_INPUT)
    input = typed->index;
  bw_document_select (self->document, source, input);
  if (!bw_window_is_editing (self) || bw_editor_get_part (self->editor) != typed->part)
    bw_window_edit (self, typed->part);
  BwEditorRow *row = bw_editor_get_row (self->editor, typed->field->key);
  if (row != NULL)
    bw_editor_row_enter_text (row, typed->text);
}

/**
 * bw_window_restore:
 * @draft: of a sheet that was not saved
 * @slot: where it lies
 *
 * Brings back the sheet, and what was typed in its form, as changes that are not saved.
 *
 * Returns: %FALSE if what is typed in the window is refused
 */
gboolean
bw_window_restore (BwWindow *self, const BwDraft *draft, BwDraftSlot *slot)
{
  g_return_val_if_fail (BW_IS_WINDOW (self) && draft != NULL && slot != NULL, FALSE);
  if (!bw_document_restore (self->document, draft->sheet, draft->file))
    return FALSE;
  bw_draft_keeper_adopt (self->drafts, slot);
  for (guint i = 0; i < draft->typed->len; i++)
    type_again (self, draft->typed->pdata[i]);
  bw_document_take_typed (self->document); /* shows what is refused */
  gtk_window_present (GTK_WINDOW (self));
  return TRUE;
}
