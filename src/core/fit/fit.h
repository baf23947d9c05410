/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/sheet.h"
#include "finding.h"

G_BEGIN_DECLS

/* Will this source show on that input? Each rule looks at one thing and gives one finding; the
 * verdict follows from the findings alone. Judging allocates nothing; sentences are made on
 * demand (bw_finding_says()). */

typedef enum
{
  BW_VERDICT_DIRECT,
  BW_VERDICT_OPEN, /* direct as far as it can be judged */
  BW_VERDICT_TIGHT,
  BW_VERDICT_WITH_PARTS,
  BW_VERDICT_NO,
  BW_N_VERDICTS
} BwVerdict;

/**
 * BwFit:
 * @limiting: the rule of the worst finding; the first one where several are as bad
 * @unplanned: each finding can be cured, but no plan of what the catalogue holds cures them all: see
 *   bw_fit_take_plan()
 * @not_judged: how many rules lack the figure that would decide them
 * @sync: the sync kind that the judgement uses; no matter where the source's are not known
 * @at: one finding for each rule, in the rules' order
 */
typedef struct
{
  BwVerdict verdict;
  gboolean unplanned;
  BwRule limiting;
  guint not_judged;
  BwSyncKind sync;
  BwFinding at[BW_N_RULES];
} BwFit;

/**
 * BwCase:
 *
 * @raster: (nullable): %NULL if it is not known which one the source gives, and @figures with it
 * @supply_hz: mains at the bench; zero: not known. Likewise @supply_v
 * @mains_met: the set gets the supply that its plate asks for, whatever there is at the bench
 *
 * What is judged: one source at one input. All borrowed.
 */
typedef struct
{
  const BwMonitor *monitor;
  const BwInput *input;
  const BwSource *source;
  const BwRaster *raster;
  const BwRasterFigures *figures;
  const BwLimits *limits;
  double supply_hz;
  double supply_v;
  gboolean mains_met;
} BwCase;

/* What it takes to show a source at an input, in words, as the planner finds it, which is in a room
 * below this one. Figures in it have @mark as their decimal mark. Returns: (transfer full) (nullable): the parts and settings, none for a lead alone;
 * %NULL: no plan leads there, or too little is known to plan. */
typedef char **(*BwFitPlanFunc) (const BwSheet *sheet, const BwCatalogue *catalogue, guint source,
                                 guint input, char mark);

extern const BwKindTable bw_verdicts;

void bw_case_init (BwCase *c, BwRasterFigures *figures, const BwSheet *sheet,
                   const BwCatalogue *catalogue, guint source, guint input);
double bw_case_source_detail_hz (const BwCase *c);

void bw_fit_judge (const BwCase *c, BwFit *fit);
void bw_fit_take_plan (BwFit *fit, const BwCase *c, gboolean leads);
gboolean bw_fit_is_blank (const BwFit *fit);
void bw_rule_judge (BwRule rule, const BwCase *c, BwSyncKind sync, BwFinding *f);
BwSeverity bw_case_raster_severity (const BwCase *c);

BwVerdict bw_verdict_of (BwSeverity worst);
BwSeverity bw_verdict_severity (BwVerdict verdict);
const char *bw_verdict_meaning (BwVerdict verdict);
BwVerdict bw_verdict_from_findings (const BwFinding *findings, guint n);

char *bw_finding_says (const BwFinding *finding, const BwFit *fit, const BwCase *c, char mark);
char *bw_finding_remedy (const BwFinding *finding, const BwFit *fit, const BwCase *c, char mark);

G_END_DECLS
