/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/document/document.h"
#include "core/hookup/plan.h"

G_BEGIN_DECLS

/**
 * BwHookupHold:
 *
 * A plan that several keep: the page, and the picture that shows it. Counted; what the plan itself
 * borrows from sheet and catalogue may be gone, and nobody looks at it.
 */
typedef struct _BwHookupHold BwHookupHold;

BwHookupHold *bw_hookup_hold_ref (BwHookupHold *hold);
void bw_hookup_hold_unref (BwHookupHold *hold);
const BwHookup *bw_hookup_hold_get (const BwHookupHold *hold);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwHookupHold, bw_hookup_hold_unref)

/**
 * BwHookupPlans:
 *
 * The plans of a sheet, each made when it is first asked for. Planning costs time, so they are kept
 * until the sheet changes.
 */
typedef struct _BwHookupPlans BwHookupPlans;

BwHookupPlans *bw_hookup_plans_new (void);
void bw_hookup_plans_free (BwHookupPlans *plans);
void bw_hookup_plans_forget (BwHookupPlans *plans);
BwHookupHold *bw_hookup_plans_find (BwHookupPlans *plans, BwDocument *document,
                                    const BwHookupChoice *choice, GError **error);
guint bw_hookup_plans_count (const BwHookupPlans *plans);

G_END_DECLS
