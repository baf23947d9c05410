/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/bench/identify.h"

G_BEGIN_DECLS

GtkWidget *bw_candidate_row_new (const BwCandidate *candidate, const BwReadings *readings);

G_END_DECLS
