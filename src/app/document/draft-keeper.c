/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft-keeper.h"

#include <string.h>

#include "draft.h"

/**
 * BwDraftKeeper:
 *
 * Keeps a draft of a document on the disk while it differs from its file, so that nothing is lost
 * when the program or the power fails. The draft is written soon after an edit, in a thread, since
 * the disk may take its time; it goes when the sheet is saved or its changes are discarded.
 */
struct _BwDraftKeeper
{
  GObject parent_instance;

  BwDocument *document;
  BwDraftSlot *slot; /* nullable: until there is something to write */
  char *written;     /* nullable: what the slot holds, or will when the thread is done */
  guint timer;       /* the source that will write; zero: none */
  gboolean writing;  /* a thread is at it */
  gboolean failed;   /* and it was said */
  gboolean discarded;
};

G_DEFINE_FINAL_TYPE (BwDraftKeeper, bw_draft_keeper, G_TYPE_OBJECT)

enum
{
  FAILED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* From the first edit that is in no draft yet; further edits do not put it off. */
#define WRITE_AFTER_MS 2000

static void
bw_draft_keeper_dispose (GObject *object)
{
  BwDraftKeeper *self = BW_DRAFT_KEEPER (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->slot, bw_draft_slot_unref);
  g_clear_pointer (&self->written, g_free);
  G_OBJECT_CLASS (bw_draft_keeper_parent_class)->dispose (object);
}

static void
bw_draft_keeper_class_init (BwDraftKeeperClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_draft_keeper_dispose;

  /* BwDraftKeeper::failed: a draft could not be written: why (const GError *). Told once, until one
   * is written again. */
  signals[FAILED] = g_signal_new ("failed", BW_TYPE_DRAFT_KEEPER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
bw_draft_keeper_init (BwDraftKeeper *self)
{
}

static void
drop_slot (BwDraftKeeper *self)
{
  if (self->slot != NULL)
    bw_draft_slot_remove (self->slot);
  g_clear_pointer (&self->slot, bw_draft_slot_unref);
  g_clear_pointer (&self->written, g_free);
}

/* Writing */

static void on_document (BwDraftKeeper *self);
static void start_timer (BwDraftKeeper *self);

static void
take_result (BwDraftKeeper *self, const GError *error)
{
  gboolean tell = error != NULL && !self->failed;

  self->failed = error != NULL;
  if (error != NULL)
    {
      g_clear_pointer (&self->written, g_free);
      if (self->document != NULL)
        on_document (self); /* there may be room later */
    }
  if (tell)
    g_signal_emit (self, signals[FAILED], 0, error);
}

/* Gives the slot the draft, if it has not got it already. The slot is made when it is needed. Returns
 * whether there is something to write. */
static gboolean
prepare (BwDraftKeeper *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_draft_to_text (self->document);

  if (g_strcmp0 (text, self->written) == 0)
    return FALSE;
  if (self->slot == NULL)
    self->slot = bw_draft_slot_new (&error);
  if (self->slot == NULL)
    {
      take_result (self, error);
      return FALSE;
    }
  bw_draft_slot_set_text (self->slot, text);
  g_free (self->written);
  self->written = g_steal_pointer (&text);
  return TRUE;
}

static void
run_job (GTask *task, gpointer source, gpointer slot, GCancellable *cancellable)
{
  GError *error = NULL;
  if (bw_draft_slot_write (slot, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
on_written (GObject *source, GAsyncResult *result, gpointer data)
{
  BwDraftKeeper *self = BW_DRAFT_KEEPER (source);
  g_autoptr (GError) error = NULL;

  self->writing = FALSE;
  g_task_propagate_boolean (G_TASK (result), &error);
  take_result (self, error);
}

static gboolean
on_time_to_write (gpointer data)
{
  BwDraftKeeper *self = BW_DRAFT_KEEPER (data);

  self->timer = 0;
  if (self->writing)
    {
      start_timer (self);
      return G_SOURCE_REMOVE;
    }
  if (!prepare (self))
    return G_SOURCE_REMOVE;
  g_autoptr (GTask) task = g_task_new (self, NULL, on_written, NULL);
  g_task_set_task_data (task, bw_draft_slot_ref (self->slot),
                        (GDestroyNotify) bw_draft_slot_unref);
  self->writing = TRUE;
  g_task_run_in_thread (task, run_job);
  return G_SOURCE_REMOVE;
}

static void
start_timer (BwDraftKeeper *self)
{
  if (self->timer == 0)
    self->timer = g_timeout_add (WRITE_AFTER_MS, on_time_to_write, self);
}

static void
on_document (BwDraftKeeper *self)
{
  if (self->discarded)
    return;
  if (bw_document_is_modified (self->document))
    {
      start_timer (self);
      return;
    }
  g_clear_handle_id (&self->timer, g_source_remove);
  drop_slot (self);
}

/**
 * bw_draft_keeper_new:
 *
 * Returns: (transfer full): a keeper that follows @document
 */
BwDraftKeeper *
bw_draft_keeper_new (BwDocument *document)
{
  static const char *const events[] = { "changed", "saved", "typed" };
  g_return_val_if_fail (BW_IS_DOCUMENT (document), NULL);
  BwDraftKeeper *self = g_object_new (BW_TYPE_DRAFT_KEEPER, NULL);

  self->document = g_object_ref (document);
  for (guint i = 0; i < G_N_ELEMENTS (events); i++)
    g_signal_connect_object (document, events[i], G_CALLBACK (on_document), self,
                             G_CONNECT_SWAPPED);
  return self;
}

/**
 * bw_draft_keeper_adopt:
 * @slot: of a draft that was left behind and is restored in the document
 *
 * Takes @slot for its own, so that the restored draft is on the disk at every moment.
 */
void
bw_draft_keeper_adopt (BwDraftKeeper *self, BwDraftSlot *slot)
{
  g_return_if_fail (BW_IS_DRAFT_KEEPER (self) && slot != NULL);
  drop_slot (self);
  self->slot = bw_draft_slot_ref (slot);
  on_document (self);
}

/**
 * bw_draft_keeper_flush:
 *
 * Writes now what is in no draft yet: the program is about to be ended.
 */
void
bw_draft_keeper_flush (BwDraftKeeper *self)
{
  g_return_if_fail (BW_IS_DRAFT_KEEPER (self));
  g_autoptr (GError) error = NULL;

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->discarded || !bw_document_is_modified (self->document))
    return;
  if ((!prepare (self) && !self->writing) || self->slot == NULL)
    return;
  bw_draft_slot_write (self->slot, &error); /* waits for a thread that is at it */
  take_result (self, error);
}

/**
 * bw_draft_keeper_discard:
 *
 * Removes the draft for good: the person does not want the changes.
 */
void
bw_draft_keeper_discard (BwDraftKeeper *self)
{
  g_return_if_fail (BW_IS_DRAFT_KEEPER (self));
  self->discarded = TRUE;
  g_clear_handle_id (&self->timer, g_source_remove);
  drop_slot (self);
}
