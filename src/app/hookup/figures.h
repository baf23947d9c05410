/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/paper/hookup-report.h"
#include "list.h"

G_BEGIN_DECLS

/* A plan in lines for the lists beside the drawing. */

char *bw_hookup_answer (const BwHookup *hookup);
GPtrArray *bw_hookup_table (const BwHookupView *view);
void bw_hookup_list_steps (BwHookupList *list, const BwHookupView *view);
void bw_hookup_list_parts (BwHookupList *list, const BwHookupView *view);
void bw_hookup_list_connections (BwHookupList *list, const BwHookupView *view);
void bw_hookup_list_pins (BwHookupList *list, const BwHookupView *view);
void bw_hookup_list_warnings (BwHookupList *list, const BwHookupView *view);

G_END_DECLS
