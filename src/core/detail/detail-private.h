/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "detail.h"

G_BEGIN_DECLS

/* Shared by the files of detail. */

#define BW_HALF_POWER 0.70710678118654752 /* −3 dB as an amplitude */

double bw_detail_height_m (const BwDetailCase *what);
double bw_detail_pitch_h_m (const BwDetailCase *what);
double bw_detail_seen_s (const BwDetailCase *what);

double bw_detail_trapped_hz (const BwDetailCase *what);
double bw_detail_system_hz (const BwDetailCase *what);
double bw_detail_signal_hz (const BwDetailCase *what);
double bw_detail_source_hz (const BwDetailCase *what);
double bw_detail_seen_tvl (const BwDetailCase *what, double frequency_hz);

double bw_detail_spot_factor (void);
double bw_detail_link_limit_tvl (const BwDetailCase *what, BwDetailLink link);
double bw_detail_link_level_tvl (const BwDetailCase *what, BwDetailLink link, double level);
double bw_detail_level_tvl (const BwDetailCase *what, double level);

void bw_detail_geometry (const BwDetailCase *what, BwDetail *detail);
void bw_detail_lines (const BwDetailCase *what, BwDetail *detail);
double bw_detail_least_claim (const BwDetailCase *what);
double bw_detail_claim_together_tvl (const BwDetail *detail);
void bw_detail_claim (const BwDetailCase *what, BwDetail *detail);

G_END_DECLS
