/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/document/document.h"

G_BEGIN_DECLS

/* The words of the Fit page that are put together from a fit. */

char *bw_fit_reason (const BwFit *fit);
char *bw_fit_cell_detail (const BwFit *fit);
char *bw_fit_cell_label (const BwFit *fit, const BwCase *c);
char *bw_fit_summary (const BwFit *fit, const BwCase *c);
char *bw_fit_limits_from (const BwCase *c);
char *bw_finding_copy_text (const BwFinding *finding, const BwFit *fit, const BwCase *c);
void bw_fit_order (const BwFit *fit, BwRule order[BW_N_RULES]);

G_END_DECLS
