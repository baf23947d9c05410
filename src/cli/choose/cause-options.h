/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/cli.h"
#include "core/bench/sheet.h"
#include "core/cause/cause.h"

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

/**
 * BwCauseOptions:
 *
 * The options of `cause`, all owned and as they came; %NULL where not given.
 */
typedef struct
{
  char *system;
  char *kind;
  char *sync;
  char *source;
  char *input;
  char *conductor;
  char *capacitor;
  char *polarity;
  char *accuracy;
  char *level[BW_N_SCOPE_READINGS];
} BwCauseOptions;

void bw_cause_options_clear (BwCauseOptions *own);
gboolean bw_cause_options_any_reading (const BwCauseOptions *own);

BwCliExit bw_cause_options_readings (const BwCauseOptions *own, const BwCauseCase *c,
                                     double accuracy, BwScopeReadings *readings);
BwCliExit bw_cause_options_standard (const BwCauseOptions *own, const char *command,
                                     const BwCatalogue *catalogue, BwCauseView *view);
BwCliExit bw_cause_options_sheet (const BwCauseOptions *own, const char *command, const char *path,
                                  const BwSheet *sheet, const BwCatalogue *catalogue,
                                  BwCauseView *view);

G_END_DECLS
