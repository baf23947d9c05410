/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/page.h"
#include "draw/hookup/view.h"
#include "plans.h"
#include "side.h"

G_BEGIN_DECLS

#define BW_TYPE_HOOKUP_PAGE (bw_hookup_page_get_type ())
G_DECLARE_FINAL_TYPE (BwHookupPage, bw_hookup_page, BW, HOOKUP_PAGE, BwPage)

BwHookupSide *bw_hookup_page_get_side (BwHookupPage *self);
const char *bw_hookup_page_get_answer (BwHookupPage *self);

BwHookupHold *bw_hookup_page_ref_plan (BwHookupPage *self, BwLeadCase *lead);
gboolean bw_hookup_page_get_view (BwHookupPage *self, BwHookupView *view);
char *bw_hookup_page_dup_name (BwHookupPage *self);
guint bw_hookup_page_count_plans (BwHookupPage *self);

G_END_DECLS
