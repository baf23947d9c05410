/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/levels/conductor.h"
#include "core/levels/signal-levels.h"

G_BEGIN_DECLS

/**
 * BwLevelsReport:
 * @sync: one of the sync kinds that @signal can come with
 * @tell_conductors: the text has a table for each conductor as well
 *
 * What `levels` shows.
 */
typedef struct
{
  BwColourSystem system;
  BwSignal signal;
  BwBarsForm form;
  BwSyncKind sync;
  gboolean tell_conductors;
} BwLevelsReport;

void bw_levels_report_to_json (const BwLevelsReport *view, BwJson *json);
void bw_levels_report_append_text (const BwLevelsReport *view, GString *text);

/* The conductors (levels-conductors.c). */
void bw_levels_conductors_to_json (const BwLevelsReport *view, BwJson *json);
void bw_levels_conductors_append_text (const BwLevelsReport *view, GString *text);

G_END_DECLS
