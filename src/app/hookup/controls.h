/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/widgets/chooser.h"
#include "app/widgets/editor-row.h"
#include "core/circuit/lead.h"
#include "core/hookup/plan.h"

G_BEGIN_DECLS

#define BW_TYPE_HOOKUP_CONTROLS (bw_hookup_controls_get_type ())
G_DECLARE_FINAL_TYPE (BwHookupControls, bw_hookup_controls, BW, HOOKUP_CONTROLS, GtkWidget)

void bw_hookup_controls_show (BwHookupControls *self, const BwHookup *hookup);
void bw_hookup_controls_restart (BwHookupControls *self);
void bw_hookup_controls_get_choice (BwHookupControls *self, BwHookupChoice *choice);
void bw_hookup_controls_get_lead (BwHookupControls *self, BwLead *lead);
BwEditorRow *bw_hookup_controls_get_length_row (BwHookupControls *self);

G_END_DECLS
