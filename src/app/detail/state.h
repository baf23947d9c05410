/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/document/document.h"
#include "values.h"

G_BEGIN_DECLS

#define BW_TYPE_DETAIL_STATE (bw_detail_state_get_type ())
G_DECLARE_FINAL_TYPE (BwDetailState, bw_detail_state, BW, DETAIL_STATE, GObject)

BwDetailState *bw_detail_state_new (BwDocument *document);

BwDocument *bw_detail_state_get_document (BwDetailState *self);
char *bw_detail_state_dup_name (BwDetailState *self);
const BwDetailCase *bw_detail_state_get_case (BwDetailState *self);
const BwDetail *bw_detail_state_get_detail (BwDetailState *self);
const BwLead *bw_detail_state_get_lead (BwDetailState *self);

const BwField *bw_detail_state_get_field (BwDetailState *self, BwDetailValue value);
const BwDetailValues *bw_detail_state_get_values (BwDetailState *self);
double bw_detail_state_get_number (BwDetailState *self, BwDetailValue value);
char *bw_detail_state_dup_own_text (BwDetailState *self, BwDetailValue value);

gboolean bw_detail_state_set (BwDetailState *self, BwDetailValue value, const char *text, char mark,
                              GError **error);
void bw_detail_state_reset (BwDetailState *self, BwDetailValue value);
void bw_detail_state_reset_all (BwDetailState *self);
gboolean bw_detail_state_is_moved (BwDetailState *self, BwDetailValue value);
gboolean bw_detail_state_any_moved (BwDetailState *self);

G_END_DECLS
