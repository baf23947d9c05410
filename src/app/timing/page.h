/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/page.h"

G_BEGIN_DECLS

#define BW_TYPE_TIMING_PAGE (bw_timing_page_get_type ())
G_DECLARE_FINAL_TYPE (BwTimingPage, bw_timing_page, BW, TIMING_PAGE, BwPage)

G_END_DECLS
