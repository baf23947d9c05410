/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture.h"
#include "draw/hookup/view.h"

G_BEGIN_DECLS

/**
 * BwHookupHold:
 *
 * A plan that several keep: the page, and the picture that shows it. Counted; what the plan itself
 * borrows from sheet and catalogue may be gone, and nobody looks at it.
 */
typedef struct _BwHookupHold BwHookupHold;

BwHookupHold *bw_hookup_hold_new (BwHookup *hookup);
BwHookupHold *bw_hookup_hold_ref (BwHookupHold *hold);
void bw_hookup_hold_unref (BwHookupHold *hold);
const BwHookup *bw_hookup_hold_get (const BwHookupHold *hold);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwHookupHold, bw_hookup_hold_unref)

BwPicture *bw_hookup_picture_new (BwHookupHold *hold, const BwLeadCase *lead);

G_END_DECLS
