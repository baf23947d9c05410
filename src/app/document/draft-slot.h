/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BwDraftSlot:
 *
 * A file in the user's state folder for one draft, and the lock that says that a running program
 * uses it. The lock goes with the program however it ends, so that a draft without a lock is one
 * that was left behind. All calls but bw_draft_slot_write() are for the main thread.
 */
typedef struct _BwDraftSlot BwDraftSlot;

BwDraftSlot *bw_draft_slot_new (GError **error);
GPtrArray *bw_draft_slots_left_behind (void);
BwDraftSlot *bw_draft_slot_ref (BwDraftSlot *slot);
void bw_draft_slot_unref (BwDraftSlot *slot);

const char *bw_draft_slot_get_path (const BwDraftSlot *slot);
char *bw_draft_slot_read (BwDraftSlot *slot, gint64 *time, GError **error);
void bw_draft_slot_set_text (BwDraftSlot *slot, const char *text);
gboolean bw_draft_slot_write (BwDraftSlot *slot, GError **error);
void bw_draft_slot_remove (BwDraftSlot *slot);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwDraftSlot, bw_draft_slot_unref)

G_END_DECLS
