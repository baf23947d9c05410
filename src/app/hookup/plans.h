/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/document/document.h"
#include "hookup-picture.h"

G_BEGIN_DECLS

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
