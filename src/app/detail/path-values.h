/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "move-row.h"

G_BEGIN_DECLS

#define BW_TYPE_PATH_VALUES (bw_path_values_get_type ())
G_DECLARE_FINAL_TYPE (BwPathValues, bw_path_values, BW, PATH_VALUES, GtkBox)

BwPathValues *bw_path_values_new (BwDetailState *state);
BwMoveRow *bw_path_values_get_row (BwPathValues *self, BwDetailValue value);
const char *bw_path_values_get_summary (BwPathValues *self);

G_END_DECLS
