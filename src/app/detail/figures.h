/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/figure-table.h"
#include "core/detail/detail.h"

G_BEGIN_DECLS

GPtrArray *bw_detail_table (const BwDetailCase *what, const BwDetail *detail, char mark);

G_END_DECLS
