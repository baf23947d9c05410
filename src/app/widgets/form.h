/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "editor-row.h"

G_BEGIN_DECLS

#define BW_TYPE_FORM (bw_form_get_type ())
G_DECLARE_FINAL_TYPE (BwForm, bw_form, BW, FORM, GtkWidget)

BwEditorRow *bw_form_row_new (const BwField *field);

void bw_form_build (BwForm *self, const BwFieldTable *table, gpointer object);
void bw_form_refresh (BwForm *self);
gboolean bw_form_take (BwForm *self);
BwEditorRow *bw_form_get_row (BwForm *self, const char *key);

G_END_DECLS
