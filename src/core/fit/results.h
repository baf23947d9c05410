/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "fit.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

/**
 * BwFitAsk:
 * @sources: (element-type guint): in the order of the sheet, as @inputs
 * @plan: (nullable): what it takes where a source does not show as it stands; %NULL: not looked for
 *
 * The part of a sheet's table that is asked for. All is borrowed.
 */
typedef struct
{
  const BwSheet *sheet;
  const BwCatalogue *catalogue;
  const GArray *sources;
  const GArray *inputs;
  BwFitPlanFunc plan;
} BwFitAsk;

BwNode *bw_fit_say (BwNode *to, const BwFitAsk *ask);
BwNode *bw_fit_say_sheet (BwNode *to, const BwSheet *sheet, const BwCatalogue *catalogue,
                          BwFitPlanFunc plan);
void bw_fit_say_legend (BwNode *to);
void bw_mains_say (BwNode *to, const BwMonitor *monitor, double supply_v, double supply_hz);
void bw_fit_tell (BwNode *to, const BwNode *cells, gboolean failing);
const char *bw_fit_verdict_word (const BwFit *fit);
const char *bw_fit_open_word (void);
char *bw_fit_verdict_short (const BwFit *fit);
char *bw_fit_verdict_says (const BwFit *fit);
guint bw_fit_not_judged_besides (const BwFit *fit);
GPtrArray *bw_fit_reasons (const BwFit *fit, char mark);
void bw_case_say (BwNode *to, const BwFit *fit, const BwCase *c, char *const *needs);

G_END_DECLS
