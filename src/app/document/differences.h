/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/sheet.h"
#include "part.h"

G_BEGIN_DECLS

GPtrArray *bw_sheet_differences (const BwSheet *from, const BwSheet *to,
                                 const BwCatalogue *catalogue);
char *bw_typed_difference (const BwSheet *sheet, const BwTyped *typed);

G_END_DECLS
