/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/match.h"
#include "fit.h"

G_BEGIN_DECLS

/* Shared by the files of rules. */

void bw_finding_set (BwFinding *f, BwSeverity severity, BwReason reason, BwRemedyKind remedy);
void bw_finding_measure (BwFinding *f, BwDimension dimension, double value);
double bw_margin (double distance, double limit);
void bw_finding_within (BwFinding *f, BwRange allowed, double threshold);
void bw_finding_level (BwFinding *f, const BwPictureMatch *match, const BwLevelMatch *level,
                       double threshold);
void bw_finding_scan_converter (BwFinding *f, const BwCase *c, BwReason reason);
gboolean bw_finding_remade (BwFinding *f, const BwCase *c);

BwRemedyKind bw_case_signal_converter (const BwCase *c);
BwRemedyKind bw_load_change_remedy (BwLoadChange change, double load_ohm);
BwSignal bw_case_signal (const BwCase *c);
const BwBands *bw_case_line_rates (const BwCase *c);

G_END_DECLS
