/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/cause/cause.h"

G_BEGIN_DECLS

char *bw_scope_reading_text (BwScopeReading reading, double value);
char *bw_scope_expected_text (BwScopeReading reading, const BwRange *range);
char *bw_cause_name (const BwCause *cause);

GtkWidget *bw_cause_row_new (const BwCauseCase *c, const BwScopeReadings *readings,
                             const BwCause *cause, gboolean first);

G_END_DECLS
