/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cause.h"
#include "json-out.h"

G_BEGIN_DECLS

/**
 * BwCauseView:
 * @source: (nullable): its name, of a bench sheet
 * @input: (nullable): likewise
 *
 * Readings and their causes, all borrowed.
 */
typedef struct
{
  const char *source;
  const char *input;
  BwCauseCase c;
  BwScopeReadings readings;
} BwCauseView;

void bw_cause_view_to_json (const BwCauseView *view, BwJson *json);
void bw_cause_view_append_text (const BwCauseView *view, GString *text);

G_END_DECLS
