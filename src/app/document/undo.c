/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

/* Whole sheets are kept, not differences: a sheet of sixty sources takes some 30 kB. */
#define MAX_STEPS 100

void
bw_step_free (BwStep *step)
{
  bw_sheet_free (step->state.sheet);
  g_free (step->words);
  g_free (step);
}

static BwStep *
step_new (BwState state, char *words)
{
  BwStep *step = g_new (BwStep, 1);
  *step = (BwStep){ state, words };
  return step;
}

/* Makes @next (owned) the sheet; @words (owned) say what the change is. */
void
bw_document_commit (BwDocument *self, BwSheet *next, guint source, guint input, char *words)
{
  guint old_source = self->now.source, old_input = self->now.input;

  g_ptr_array_add (self->undo, step_new (self->now, words));
  if (self->undo->len > MAX_STEPS)
    g_ptr_array_remove_index (self->undo, 0);
  g_ptr_array_set_size (self->redo, 0);
  self->now = (BwState){ next, source, input, ++self->last_serial };
  bw_document_settle_selection (self);

  bw_document_emit_changed (self);
  if (self->now.source != old_source || self->now.input != old_input)
    bw_document_emit_selection (self);
}

/* Takes the last step of @from; the present state becomes one of @to. */
static gboolean
move (BwDocument *self, GPtrArray *from, GPtrArray *to)
{
  if (from->len == 0)
    return FALSE;
  guint old_source = self->now.source, old_input = self->now.input;
  BwStep *step = g_ptr_array_steal_index (from, from->len - 1);

  g_ptr_array_add (to, step_new (self->now, step->words));
  self->now = step->state;
  g_free (step);

  bw_document_emit_changed (self);
  if (self->now.source != old_source || self->now.input != old_input)
    bw_document_emit_selection (self);
  return TRUE;
}

/**
 * bw_document_undo:
 *
 * Takes back the last change; what is typed is taken first, and is then the last change.
 *
 * Returns: whether there was a change to take back
 */
gboolean
bw_document_undo (BwDocument *self)
{
  return bw_document_take_typed (self) && move (self, self->undo, self->redo);
}

/**
 * bw_document_redo:
 *
 * Returns: whether there was a change to make again
 */
gboolean
bw_document_redo (BwDocument *self)
{
  return bw_document_take_typed (self) && move (self, self->redo, self->undo);
}

static const char *
last_words (GPtrArray *steps)
{
  return steps->len > 0 ? ((BwStep *) steps->pdata[steps->len - 1])->words : NULL;
}

/**
 * bw_document_undo_words:
 *
 * Returns: (transfer none) (nullable): what bw_document_undo() would take back, in words that can
 * follow "Undo"; %NULL if there is nothing
 */
const char *
bw_document_undo_words (BwDocument *self)
{
  return last_words (self->undo);
}

/**
 * bw_document_redo_words:
 *
 * Returns: (transfer none) (nullable): what bw_document_redo() would make again
 */
const char *
bw_document_redo_words (BwDocument *self)
{
  return last_words (self->redo);
}
