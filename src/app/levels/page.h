/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/page.h"

G_BEGIN_DECLS

#define BW_TYPE_LEVELS_PAGE (bw_levels_page_get_type ())
G_DECLARE_FINAL_TYPE (BwLevelsPage, bw_levels_page, BW, LEVELS_PAGE, BwPage)

G_END_DECLS
