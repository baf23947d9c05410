/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture-panel.h"
#include "draw/detail/view.h"
#include "path-values.h"

G_BEGIN_DECLS

#define BW_TYPE_PATH_PANEL (bw_path_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwPathPanel, bw_path_panel, BW, PATH_PANEL, GtkWidget)

void bw_path_panel_set_state (BwPathPanel *self, BwDetailState *state);
BwPicturePanel *bw_path_panel_get_panel (BwPathPanel *self);
BwPathValues *bw_path_panel_get_values (BwPathPanel *self);
void bw_path_panel_choose (BwPathPanel *self, BwDetailViewKind kind);

G_END_DECLS
