/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit.h"

#include <glib/gi18n-lib.h>

static const BwKind rules[BW_N_RULES] = {
  [BW_RULE_SIGNAL_KIND] = { "signal-kind", N_ ("Signal kind") },
  [BW_RULE_COLOUR_SYSTEM] = { "colour-system", N_ ("Colour system") },
  [BW_RULE_LINE_RATE] = { "line-rate", N_ ("Line rate") },
  [BW_RULE_FIELD_RATE] = { "field-rate", N_ ("Field rate") },
  [BW_RULE_LINE_COUNT] = { "line-count", N_ ("Line count and scan") },
  [BW_RULE_SYNC_KIND] = { "sync-kind", N_ ("Sync kind") },
  [BW_RULE_SYNC_POLARITY] = { "sync-polarity", N_ ("Sync polarity") },
  [BW_RULE_SYNC_LEVEL] = { "sync-level", N_ ("Sync level") },
  [BW_RULE_SYNC_SHAPE] = { "sync-shape", N_ ("Sync shape") },
  [BW_RULE_LINE_BLANKING] = { "line-blanking", N_ ("Line blanking") },
  [BW_RULE_FIELD_BLANKING] = { "field-blanking", N_ ("Field blanking") },
  [BW_RULE_VIDEO_LEVEL] = { "video-level", N_ ("Video level") },
  [BW_RULE_SETUP] = { "setup", N_ ("Setup") },
  [BW_RULE_TERMINATION] = { "termination", N_ ("Termination") },
  [BW_RULE_COUPLING] = { "coupling", N_ ("Coupling") },
  [BW_RULE_BANDWIDTH] = { "bandwidth", N_ ("Bandwidth") },
  [BW_RULE_MAINS_BEAT] = { "mains-beat", N_ ("Mains beat") },
  [BW_RULE_VISIBLE_AREA] = { "visible-area", N_ ("Visible area") },
  [BW_RULE_LEAD] = { "lead", N_ ("Lead") },
};
const BwKindTable bw_rules = { BW_N_RULES, rules };

static const BwKind verdicts[BW_N_VERDICTS] = {
  [BW_VERDICT_DIRECT] = { "direct", N_ ("direct") },
  [BW_VERDICT_TIGHT] = { "tight", N_ ("tight") },
  [BW_VERDICT_WITH_PARTS] = { "with-parts", N_ ("with parts") },
  [BW_VERDICT_NO] = { "no", N_ ("no") },
};
const BwKindTable bw_verdicts = { BW_N_VERDICTS, verdicts };

typedef void (*RuleFunc) (const BwCase *c, const BwFit *fit, BwFinding *f);

static const RuleFunc rule_funcs[BW_N_RULES] = {
  [BW_RULE_SIGNAL_KIND] = bw_rule_signal_kind,
  [BW_RULE_COLOUR_SYSTEM] = bw_rule_colour_system,
  [BW_RULE_LINE_RATE] = bw_rule_line_rate,
  [BW_RULE_FIELD_RATE] = bw_rule_field_rate,
  [BW_RULE_LINE_COUNT] = bw_rule_line_count,
  [BW_RULE_SYNC_KIND] = bw_rule_sync_kind,
  [BW_RULE_SYNC_POLARITY] = bw_rule_sync_polarity,
  [BW_RULE_SYNC_LEVEL] = bw_rule_sync_level,
  [BW_RULE_SYNC_SHAPE] = bw_rule_sync_shape,
  [BW_RULE_LINE_BLANKING] = bw_rule_line_blanking,
  [BW_RULE_FIELD_BLANKING] = bw_rule_field_blanking,
  [BW_RULE_VIDEO_LEVEL] = bw_rule_video_level,
  [BW_RULE_SETUP] = bw_rule_setup,
  [BW_RULE_TERMINATION] = bw_rule_termination,
  [BW_RULE_COUPLING] = bw_rule_coupling,
  [BW_RULE_BANDWIDTH] = bw_rule_bandwidth,
  [BW_RULE_MAINS_BEAT] = bw_rule_mains_beat,
  [BW_RULE_VISIBLE_AREA] = bw_rule_visible_area,
  [BW_RULE_LEAD] = bw_rule_lead,
};

/* The rules whose outcome depends on which of its syncs the source is used with. */
static const BwRule sync_rules[]
    = { BW_RULE_SYNC_KIND, BW_RULE_SYNC_POLARITY, BW_RULE_SYNC_LEVEL, BW_RULE_SYNC_SHAPE };

static void
judge_rule (const BwCase *c, const BwFit *fit, BwRule rule, BwFinding *f)
{
  *f = (BwFinding){ .rule = rule, .severity = BW_SEVERITY_OK, .reason = BW_REASON_HOLDS };
  rule_funcs[rule](c, fit, f);
}

/* How badly @sync serves: the worst severity first, then how many rules are how bad. */
static int
badness_of_sync (const BwCase *c, BwFit *fit, BwSyncKind sync)
{
  BwSeverity worst = BW_SEVERITY_OK;
  int sum = 0;
  fit->sync = sync;
  for (gsize i = 0; i < G_N_ELEMENTS (sync_rules); i++)
    {
      BwFinding f;
      judge_rule (c, fit, sync_rules[i], &f);
      worst = MAX (worst, f.severity);
      sum += (int) f.severity;
    }
  return (int) worst * 100 + sum;
}

/* A source may give several syncs at once: the one that serves best is used, the first in the
 * order of BwSyncKind where several serve as well. */
static BwSyncKind
best_sync (const BwCase *c, BwFit *fit)
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
      int badness = badness_of_sync (c, fit, sync);
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

static void
set_aside (BwFinding *f, BwReason reason)
{
  *f = (BwFinding){ .rule = f->rule, .severity = BW_SEVERITY_OK, .reason = reason };
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
  static const BwRule of_raster[] = {
    BW_RULE_SYNC_KIND,      BW_RULE_SYNC_POLARITY,  BW_RULE_SYNC_LEVEL, BW_RULE_SYNC_SHAPE,
    BW_RULE_LINE_BLANKING,  BW_RULE_FIELD_BLANKING, BW_RULE_VIDEO_LEVEL, BW_RULE_SETUP,
    BW_RULE_COUPLING,       BW_RULE_BANDWIDTH,      BW_RULE_MAINS_BEAT, BW_RULE_VISIBLE_AREA,
  };
  static const BwRule of_sync[]
      = { BW_RULE_SYNC_POLARITY, BW_RULE_SYNC_LEVEL, BW_RULE_SYNC_SHAPE };

  for (gsize i = 0; i < G_N_ELEMENTS (of_raster) && raster_is_replaced (fit); i++)
    set_aside (&fit->at[of_raster[i]], BW_REASON_OTHER_RASTER);
  for (gsize i = 0;
       i < G_N_ELEMENTS (of_sync) && fit->at[BW_RULE_SYNC_KIND].severity >= BW_SEVERITY_CURABLE; i++)
    set_aside (&fit->at[of_sync[i]], BW_REASON_NOT_NEEDED);
}

/**
 * bw_verdict_of:
 * @worst: the worst severity of all findings
 *
 * Returns: the verdict that follows from it: direct if all hold, tight, with parts if all failures
 * are curable, or no
 */
BwVerdict
bw_verdict_of (BwSeverity worst)
{
  static const BwVerdict verdicts_of[BW_N_SEVERITIES] = {
    [BW_SEVERITY_OK] = BW_VERDICT_DIRECT,
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
    [BW_VERDICT_TIGHT] = N_ ("holds, but near a limit"),
    [BW_VERDICT_WITH_PARTS] = N_ ("fails as it stands; parts or settings cure it"),
    [BW_VERDICT_NO] = N_ ("fails, and no part or setting cures it"),
  };
  g_return_val_if_fail (verdict < BW_N_VERDICTS, "");
  return _ (meanings[verdict]);
}

/**
 * bw_verdict_from_findings:
 *
 * The verdict follows from the worst finding and from nothing else.
 *
 * Returns: direct if all hold, tight, with parts if all failures are curable, or no
 */
BwVerdict
bw_verdict_from_findings (const BwFinding *findings, guint n)
{
  BwSeverity worst = BW_SEVERITY_OK;
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
  fit->sync = best_sync (c, fit);
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    judge_rule (c, fit, rule, &fit->at[rule]);
  set_aside_what_is_remade (fit);
  fit->verdict = bw_verdict_from_findings (fit->at, BW_N_RULES);
  fit->limiting = worst_rule (fit->at, BW_N_RULES);
}

/**
 * bw_case_init:
 * @c: (out caller-allocates): the case, which borrows from all the others
 * @figures: (out caller-allocates): the figures of the source's raster; must outlive @c
 * @source: a source of @sheet; its raster must be in the sheet or the catalogue
 * @input: an input of the sheet's monitor
 */
void
bw_case_init (BwCase *c, BwRasterFigures *figures, const BwSheet *sheet,
              const BwCatalogue *catalogue, guint source, guint input)
{
  *c = (BwCase){
    .monitor = sheet->monitor,
    .input = bw_monitor_input (sheet->monitor, input),
    .source = bw_sheet_source (sheet, source),
    .figures = figures,
    .limits = &sheet->limits,
    .supply_hz = sheet->supply_hz,
  };
  c->raster = bw_sheet_raster (sheet, catalogue, c->source);
  bw_raster_figures (c->raster, figures);
}
