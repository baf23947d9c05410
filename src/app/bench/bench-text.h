/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/monitor.h"
#include "core/bench/source.h"

G_BEGIN_DECLS

/* The short words for monitors, inputs and sources in lists. */

char *bw_monitor_mains_words (const BwMonitor *monitor);
char *bw_monitor_tube_words (const BwMonitor *monitor);
char *bw_bands_words (const BwBands *bands, BwDimension dimension);
char *bw_monitor_words (const BwMonitor *monitor);
char *bw_input_words (const BwInput *input);

G_END_DECLS
