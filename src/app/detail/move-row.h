/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/editor-row.h"
#include "state.h"

G_BEGIN_DECLS

#define BW_TYPE_MOVE_ROW (bw_move_row_get_type ())
G_DECLARE_FINAL_TYPE (BwMoveRow, bw_move_row, BW, MOVE_ROW, GtkBox)

BwMoveRow *bw_move_row_new (BwDetailState *state, BwDetailValue value);
BwEditorRow *bw_move_row_get_editor (BwMoveRow *self);
GtkScale *bw_move_row_get_scale (BwMoveRow *self);

G_END_DECLS
