/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/page.h"

G_BEGIN_DECLS

#define BW_TYPE_FIT_PAGE (bw_fit_page_get_type ())
G_DECLARE_FINAL_TYPE (BwFitPage, bw_fit_page, BW, FIT_PAGE, BwPage)

G_END_DECLS
