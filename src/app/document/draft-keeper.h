/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"
#include "draft-slot.h"

G_BEGIN_DECLS

#define BW_TYPE_DRAFT_KEEPER (bw_draft_keeper_get_type ())
G_DECLARE_FINAL_TYPE (BwDraftKeeper, bw_draft_keeper, BW, DRAFT_KEEPER, GObject)

BwDraftKeeper *bw_draft_keeper_new (BwDocument *document);
void bw_draft_keeper_adopt (BwDraftKeeper *self, BwDraftSlot *slot);
void bw_draft_keeper_flush (BwDraftKeeper *self);
void bw_draft_keeper_discard (BwDraftKeeper *self);

G_END_DECLS
