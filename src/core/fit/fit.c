/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <glib/gi18n-lib.h>

static const BwKind verdicts[BW_N_VERDICTS] = {
  [BW_VERDICT_DIRECT] = { "direct", N_ ("direct") },
  [BW_VERDICT_OPEN] = { "open", N_ ("direct so far") },
  [BW_VERDICT_TIGHT] = { "tight", N_ ("tight") },
  [BW_VERDICT_WITH_PARTS] = { "with-parts", N_ ("with parts") },
  [BW_VERDICT_NO] = { "no", N_ ("no") },
};
const BwKindTable bw_verdicts = { BW_N_VERDICTS, verdicts };

/* How badly @sync serves: the worst severity first, then how many rules are how bad. */
static int
badness_of_sync (const BwCase *c, BwSyncKind sync)
{
  static const int weights[BW_N_SEVERITIES] = {
    [BW_SEVERITY_OK] = 0,      [BW_SEVERITY_UNJUDGED] = 1, [BW_SEVERITY_TIGHT] = 1,
    [BW_SEVERITY_CURABLE] = 2, [BW_SEVERITY_FATAL] = 3,
  };
  BwSeverity worst = BW_SEVERITY_OK;
  int sum = 0;
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    {
      BwFinding f;
      if (bw_rule_descriptor (rule)->group < BW_GROUP_SYNC_KIND)
        continue;
      bw_rule_judge (rule, c, sync, &f);
      worst = MAX (worst, f.severity);
      sum += weights[f.severity];
    }
  return weights[worst] * BW_N_RULES * BW_N_SEVERITIES + sum;
}

/* A source may give several syncs at once: the one that serves best is used, the first in the
 * order of BwSyncKind where several serve as well. */
static BwSyncKind
best_sync (const BwCase *c)
{
  int best_badness = G_MAXINT;
  BwSyncKind best = BW_SYNC_SEPARATE;
  gboolean only_one = (c->source->syncs & (c->source->syncs - 1)) == 0;

  for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
    {
      if (!(c->source->syncs & BW_BIT (sync)))
        continue;
      if (only_one)
        return sync;
      int badness = badness_of_sync (c, sync);
      if (badness < best_badness)
        {
          best_badness = badness;
          best = sync;
        }
    }
  return best;
}

static BwRule
worst_rule (const BwFinding *findings, guint n)
{
  guint worst = 0;
  for (guint i = 1; i < n; i++)
    if (findings[i].severity > findings[worst].severity)
      worst = i;
  return findings[worst].rule;
}

/* Whether the raster that the source gives cannot be what the set scans. */
static gboolean
raster_is_replaced (const BwFit *fit)
{
  return fit->at[BW_RULE_LINE_RATE].severity >= BW_SEVERITY_CURABLE
         || fit->at[BW_RULE_FIELD_RATE].severity >= BW_SEVERITY_CURABLE
         || fit->at[BW_RULE_LINE_COUNT].severity >= BW_SEVERITY_CURABLE
         || fit->at[BW_RULE_SIGNAL_KIND].remedy.kind == BW_REMEDY_SCAN_CONVERTER;
}

/* What a remedy makes anew is not judged: behind a scan converter the set sees the converter's
 * raster, sync and levels, and behind a sync combiner, separator or adder its sync. */
static void
set_aside_what_is_remade (BwFit *fit)
{
  gboolean other_raster = raster_is_replaced (fit);

  for (BwRule rule = 0; rule < BW_N_RULES && other_raster; rule++)
    if (bw_rule_descriptor (rule)->group >= BW_GROUP_PICTURE)
      bw_finding_clear (&fit->at[rule], rule, BW_REASON_OTHER_RASTER);
  if (fit->at[BW_RULE_SYNC_KIND].severity < BW_SEVERITY_CURABLE)
    return;
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    if (bw_rule_descriptor (rule)->group >= BW_GROUP_SYNC)
      bw_finding_clear (&fit->at[rule], rule, BW_REASON_NOT_NEEDED);
}

/**
 * bw_verdict_of:
 * @worst: the worst severity of all findings
 *
 * Returns: the verdict that follows from it: direct if all hold, open if those do that are judged,
 * tight, with parts if all failures
 * are curable, or no
 */
BwVerdict
bw_verdict_of (BwSeverity worst)
{
  static const BwVerdict verdicts_of[BW_N_SEVERITIES] = {
    [BW_SEVERITY_OK] = BW_VERDICT_DIRECT,
    [BW_SEVERITY_UNJUDGED] = BW_VERDICT_OPEN,
    [BW_SEVERITY_TIGHT] = BW_VERDICT_TIGHT,
    [BW_SEVERITY_CURABLE] = BW_VERDICT_WITH_PARTS,
    [BW_SEVERITY_FATAL] = BW_VERDICT_NO,
  };
  g_return_val_if_fail (worst < BW_N_SEVERITIES, BW_VERDICT_NO);
  return verdicts_of[worst];
}

/**
 * bw_verdict_severity:
 *
 * Returns: the severity of the worst finding behind @verdict, whose sign, mark and colour the
 * verdict has
 */
BwSeverity
bw_verdict_severity (BwVerdict verdict)
{
  static const BwSeverity severities_of[BW_N_VERDICTS] = {
    [BW_VERDICT_DIRECT] = BW_SEVERITY_OK,
    [BW_VERDICT_OPEN] = BW_SEVERITY_UNJUDGED,
    [BW_VERDICT_TIGHT] = BW_SEVERITY_TIGHT,
    [BW_VERDICT_WITH_PARTS] = BW_SEVERITY_CURABLE,
    [BW_VERDICT_NO] = BW_SEVERITY_FATAL,
  };
  g_return_val_if_fail (verdict < BW_N_VERDICTS, BW_SEVERITY_FATAL);
  return severities_of[verdict];
}

/**
 * bw_verdict_meaning:
 *
 * Returns: (transfer none): what @verdict says, in a few words, for a legend
 */
const char *
bw_verdict_meaning (BwVerdict verdict)
{
  static const char *const meanings[BW_N_VERDICTS] = {
    [BW_VERDICT_DIRECT] = N_ ("every rule holds with margin"),
    [BW_VERDICT_OPEN] = N_ ("holds as far as it is judged; a figure that would decide, or a pin, is not known"),
    [BW_VERDICT_TIGHT] = N_ ("shows as it stands, but near a limit, or not all that the source gives"),
    [BW_VERDICT_WITH_PARTS] = N_ ("fails as it stands; parts or settings cure it"),
    [BW_VERDICT_NO] = N_ ("fails, and no part or setting cures it"),
  };
  g_return_val_if_fail (verdict < BW_N_VERDICTS, "");
  return _ (meanings[verdict]);
}

/* Whether the rule of @f has held the source against what is known of the set. A beat is one of the source and
 * the supply; black in blanking and the width of sync are of the source and its class; and black where an input is not said to expect it anywhere is one of the source alone. */
static gboolean
is_of_set (const BwFinding *f)
{
  return f->severity != BW_SEVERITY_UNJUDGED && f->reason != BW_REASON_NOT_NEEDED
         && f->rule != BW_RULE_MAINS_BEAT && f->rule != BW_RULE_BLACK
         && f->rule != BW_RULE_SYNC_WIDTH && !(f->rule == BW_RULE_SETUP && !f->has_low);
}

/**
 * bw_fit_is_blank:
 *
 * Returns: whether nothing that is known of the set was held against the source, so that the verdict "direct so
 *   far" says nothing
 */
gboolean
bw_fit_is_blank (const BwFit *fit)
{
  g_return_val_if_fail (fit != NULL, TRUE);

  if (fit->verdict != BW_VERDICT_OPEN)
    return FALSE;
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    if (is_of_set (&fit->at[rule]))
      return FALSE;
  return TRUE;
}

/**
 * bw_verdict_from_findings:
 *
 * The verdict follows from the worst finding and from nothing else.
 *
 * Returns: direct if all hold, open if those do that are judged, tight, with parts if all failures are curable, or no
 */
BwVerdict
bw_verdict_from_findings (const BwFinding *findings, guint n)
{
  BwSeverity worst = BW_SEVERITY_OK;

  g_return_val_if_fail (findings != NULL || n == 0, BW_VERDICT_NO);

  for (guint i = 0; i < n; i++)
    worst = MAX (worst, findings[i].severity);
  return bw_verdict_of (worst);
}

/**
 * bw_fit_judge:
 * @c: one source at one input; all members must be set and checked
 * @fit: (out caller-allocates): a finding for each rule, and the verdict
 */
void
bw_fit_judge (const BwCase *c, BwFit *fit)
{
  g_return_if_fail (c != NULL && c->source != NULL);
  g_return_if_fail (fit != NULL);

  fit->unplanned = FALSE;
  fit->sync = best_sync (c);
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    bw_rule_judge (rule, c, fit->sync, &fit->at[rule]);
  set_aside_what_is_remade (fit);
  fit->verdict = bw_verdict_from_findings (fit->at, BW_N_RULES);
  fit->limiting = worst_rule (fit->at, BW_N_RULES);
  fit->not_judged = 0;
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    fit->not_judged += fit->at[rule].severity == BW_SEVERITY_UNJUDGED;
}

/**
 * bw_fit_take_plan:
 * @fit: (inout): as bw_fit_judge() left it, of @c
 * @leads: whether a plan leads from the source to the input
 *
 * Each rule is judged by itself, and names what would cure it. Whether all that can be had together is
 * for the planner to say: where the source does not show as it stands, the verdict is with parts if
 * there is a plan, and no if there is none. If there is none because too little is known, the verdict
 * stays what it was.
 */
void
bw_fit_take_plan (BwFit *fit, const BwCase *c, gboolean leads)
{
  g_return_if_fail (fit != NULL && c != NULL);
  BwLack lack;
  if (fit->verdict < BW_VERDICT_WITH_PARTS)
    return;
  if (!leads && bw_lacks_way (c->source, c->input, &lack))
    return;
  fit->unplanned = fit->verdict == BW_VERDICT_WITH_PARTS && !leads;
  fit->verdict = leads ? BW_VERDICT_WITH_PARTS : BW_VERDICT_NO;
}

/**
 * bw_case_raster_severity:
 * @c: needs no source
 *
 * Returns: how well the set scans the raster of @c, whatever signal brings it: the worst of the
 * rules on rates, lines and blanking
 */
BwSeverity
bw_case_raster_severity (const BwCase *c)
{
  static const BwRule rules[] = { BW_RULE_LINE_RATE, BW_RULE_FIELD_RATE, BW_RULE_LINE_COUNT,
                                  BW_RULE_LINE_BLANKING, BW_RULE_FIELD_BLANKING };
  BwSeverity worst = BW_SEVERITY_OK;

  g_return_val_if_fail (c != NULL, BW_SEVERITY_FATAL);

  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      BwFinding f;
      bw_rule_judge (rules[i], c, BW_SYNC_SEPARATE, &f);
      worst = MAX (worst, f.severity);
    }
  return worst;
}

/**
 * bw_case_init:
 * @c: (out caller-allocates): the case, which borrows from all the others
 * @figures: (out caller-allocates): the figures of the source's raster, if it is known; must outlive
 *   @c
 * @source: a source of @sheet
 * @input: an input of the sheet's monitor
 */
void
bw_case_init (BwCase *c, BwRasterFigures *figures, const BwSheet *sheet,
              const BwCatalogue *catalogue, guint source, guint input)
{
  g_return_if_fail (c != NULL && figures != NULL && sheet != NULL && catalogue != NULL);
  g_return_if_fail (source < sheet->sources->len && input < sheet->monitor->inputs->len);

  *c = (BwCase){
    .monitor = sheet->monitor,
    .input = bw_monitor_input (sheet->monitor, input),
    .source = bw_sheet_source (sheet, source),
    .limits = &sheet->limits,
    .supply_v = sheet->supply_v,
    .supply_hz = sheet->supply_hz,
  };
  c->raster = bw_sheet_raster (sheet, catalogue, c->source);
  if (c->raster == NULL)
    return;
  bw_raster_figures (c->raster, figures);
  c->figures = figures;
}
