/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <glib/gi18n-lib.h>

/* What is typed and not taken yet. Each field tells the document when something is typed in it; the
 * document takes it before anything happens that the typed text could be lost by or should be part
 * of. A field that refuses its text stops what was to happen. */

static gboolean
is_in_sheet (BwPending *entry)
{
  BwTyped *typed = bw_pending_describe (entry);
  if (typed == NULL)
    return FALSE;
  bw_typed_free (typed);
  return TRUE;
}

/**
 * bw_document_set_pending:
 * @entry: a field of the window
 * @pending: whether something is typed in it that is not taken
 *
 * To be called each time that the text of @entry changes, and when it is gone.
 */
void
bw_document_set_pending (BwDocument *self, BwPending *entry, gboolean pending)
{
  g_return_if_fail (BW_IS_DOCUMENT (self) && BW_IS_PENDING (entry));
  gboolean modified = bw_document_is_modified (self);
  gboolean was = g_ptr_array_find (self->pending, entry, NULL);

  if (!pending && !was)
    return;
  if (pending && !was)
    g_ptr_array_add (self->pending, entry);
  else if (!pending)
    g_ptr_array_remove (self->pending, entry);
  bw_document_emit_typed (self);
  if (bw_document_is_modified (self) != modified)
    bw_document_emit_saved (self);
}

/* The first field that refuses its text; NULL if all is taken. A field may take what others hold as
 * well, and may be gone after it. */
static BwPending *
take_all (BwDocument *self)
{
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (g_object_unref);
  BwPending *refused = NULL;

  for (guint i = 0; i < self->pending->len; i++)
    g_ptr_array_add (entries, g_object_ref (self->pending->pdata[i]));
  for (guint i = 0; i < entries->len; i++)
    if (g_ptr_array_find (self->pending, entries->pdata[i], NULL))
      bw_pending_take (entries->pdata[i]);
  for (guint i = entries->len; i > 0; i--)
    if (g_ptr_array_find (self->pending, entries->pdata[i - 1], NULL)
        && !bw_pending_take (entries->pdata[i - 1]))
      refused = entries->pdata[i - 1];
  return refused;
}

/**
 * bw_document_take_typed:
 *
 * Takes all that is typed in the window. To be called before anything that leaves the sheet, writes
 * it, or shows another part of it; the calls of this class that change the sheet do it themselves.
 *
 * Returns: %FALSE if a field refused what is typed in it: why stands there, and the field is shown
 */
gboolean
bw_document_take_typed (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), FALSE);
  if (self->taking)
    return TRUE; /* the change comes from a field that is being taken */
  self->taking = TRUE;
  BwPending *refused = take_all (self);
  self->taking = FALSE;
  if (refused != NULL)
    bw_pending_reveal (refused);
  return refused == NULL;
}

/**
 * bw_document_take_or_fail:
 *
 * bw_document_take_typed() with words for those who show an error.
 */
gboolean
bw_document_take_or_fail (BwDocument *self, GError **error)
{
  if (bw_document_take_typed (self))
    return TRUE;
  g_set_error_literal (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_TYPED,
                       _ ("A value that was typed cannot be taken. Correct it first, or press Escape "
                          "in it to take it back."));
  return FALSE;
}

/* The index that goes with @part in the form: the selected one. */
static guint
selected_index (BwDocument *self, BwPart part)
{
  if (part == BW_PART_INPUT)
    return self->now.input;
  return part == BW_PART_SOURCE ? self->now.source : 0;
}

/**
 * bw_document_list_typed:
 *
 * Returns: (transfer full) (element-type BwTyped): what is typed for the sheet and not taken yet
 */
GPtrArray *
bw_document_list_typed (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), NULL);
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_typed_free);

  for (guint i = 0; i < self->pending->len; i++)
    {
      BwTyped *typed = bw_pending_describe (self->pending->pdata[i]);
      if (typed == NULL)
        continue;
      typed->index = selected_index (self, typed->part);
      g_ptr_array_add (list, typed);
    }
  return list;
}

/**
 * bw_document_has_typed:
 *
 * Returns: whether something is typed for the sheet that is not taken yet
 */
gboolean
bw_document_has_typed (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), FALSE);
  for (guint i = 0; i < self->pending->len; i++)
    if (is_in_sheet (self->pending->pdata[i]))
      return TRUE;
  return FALSE;
}

G_DEFINE_INTERFACE (BwDocumentHost, bw_document_host, G_TYPE_OBJECT)

static void
bw_document_host_default_init (BwDocumentHostInterface *iface)
{
}

/**
 * bw_document_host_get_document:
 *
 * Returns: (transfer none) (nullable): the document that is worked on in the window
 */
BwDocument *
bw_document_host_get_document (BwDocumentHost *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT_HOST (self), NULL);
  return BW_DOCUMENT_HOST_GET_IFACE (self)->get_document (self);
}
