/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text.h"

#include <glib/gi18n-lib.h>

static const char *
rule_label (BwRule rule)
{
  return bw_kind_label (&bw_rules, rule);
}

static void
add_once (GPtrArray *words, char *word)
{
  if (g_ptr_array_find_with_equal_func (words, word, g_str_equal, NULL))
    g_free (word);
  else
    g_ptr_array_add (words, word);
}

/* What the verdict hangs on, each thing once: for "with parts" the remedies in short, for "tight" and
 * "no" the rules; nothing for "direct". */
static GPtrArray *
reasons (const BwFit *fit)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);
  for (BwRule rule = 0; rule < BW_N_RULES && fit->verdict != BW_VERDICT_DIRECT; rule++)
    {
      const BwFinding *finding = &fit->at[rule];
      if (finding->severity != bw_verdict_severity (fit->verdict))
        continue;
      char *remedy = fit->verdict == BW_VERDICT_WITH_PARTS
                         ? bw_finding_remedy_short (finding, bw_quantity_locale_mark ())
                         : NULL;
      add_once (words, remedy != NULL ? remedy : g_strdup (rule_label (rule)));
    }
  return words;
}

/**
 * bw_fit_reason:
 *
 * Returns: (transfer full): what the verdict hangs on, set apart by semicolons: for "with parts"
 * the remedies, for "tight" and "no" the rules concerned; empty for "direct"
 */
char *
bw_fit_reason (const BwFit *fit)
{
  g_autoptr (GPtrArray) words = reasons (fit);
  g_ptr_array_add (words, NULL);
  return g_strjoinv ("; ", (char **) words->pdata);
}

/**
 * bw_fit_cell_detail:
 *
 * Returns: (transfer full): the first thing that the verdict hangs on, and how many more there
 * are; empty for "direct"
 */
char *
bw_fit_cell_detail (const BwFit *fit)
{
  g_autoptr (GPtrArray) words = reasons (fit);
  if (words->len == 0)
    return g_strdup ("");
  const char *first = words->pdata[0];
  if (words->len == 1)
    return g_strdup (first);
  return g_strdup_printf (_ ("%s, %u\u00a0more"), first, words->len - 1);
}

/**
 * bw_fit_cell_label:
 *
 * Returns: (transfer full): the whole cell in words, for a screen reader
 */
char *
bw_fit_cell_label (const BwFit *fit, const BwCase *c)
{
  g_autofree char *detail = bw_fit_cell_detail (fit);
  return g_strdup_printf (_ ("Source %s at input %s: %s%s%s"), c->source->name, c->input->name,
                          bw_kind_label (&bw_verdicts, fit->verdict), *detail != '\0' ? ", " : "",
                          detail);
}

/**
 * bw_fit_summary:
 *
 * Returns: (transfer full): the fit in one sentence: "Console on RGB: with parts: …"
 */
char *
bw_fit_summary (const BwFit *fit, const BwCase *c)
{
  g_autofree char *reason = bw_fit_reason (fit);
  const char *verdict = bw_kind_label (&bw_verdicts, fit->verdict);
  if (fit->verdict == BW_VERDICT_DIRECT)
    return g_strdup_printf (_ ("%s on %s: %s: every rule holds"), c->source->name, c->input->name,
                            verdict);
  return g_strdup_printf (_ ("%s on %s: %s: %s"), c->source->name, c->input->name, verdict, reason);
}

static const char *
or_not_stated (const char *text)
{
  return text != NULL && *text != '\0' ? text : _ ("not stated");
}

/**
 * bw_fit_limits_from:
 *
 * Returns: (transfer full): where the figures of monitor, source and raster come from
 */
char *
bw_fit_limits_from (const BwCase *c)
{
  return g_strdup_printf (_ ("Limits: %s. Source: %s. Raster: %s. Margins: as set in this sheet."),
                          or_not_stated (c->monitor->source), or_not_stated (c->source->origin),
                          or_not_stated (c->raster->source));
}

/**
 * bw_finding_copy_text:
 *
 * Returns: (transfer full): the finding as plain text, for the clipboard
 */
char *
bw_finding_copy_text (const BwFinding *finding, const BwFit *fit, const BwCase *c)
{
  char mark = bw_quantity_locale_mark ();
  g_autofree char *value = bw_finding_value (finding, mark);
  g_autofree char *allowed = bw_finding_allowed (finding, mark);
  g_autofree char *margin = bw_finding_margin (finding, mark);
  g_autofree char *says = bw_finding_says (finding, fit, c, mark);
  g_autofree char *remedy = bw_finding_remedy (finding, fit, c, mark);

  return g_strdup_printf ("%s\t%s\t%s\t%s\t%s\t%s%s%s", rule_label (finding->rule),
                          bw_kind_label (&bw_severities, finding->severity), value, allowed, margin,
                          says, remedy != NULL ? "\t" : "", remedy != NULL ? remedy : "");
}

/**
 * bw_fit_order:
 * @order: (out): the rules, those with the worst findings first, else in their own order
 */
void
bw_fit_order (const BwFit *fit, BwRule order[BW_N_RULES])
{
  guint n = 0;
  for (int severity = BW_N_SEVERITIES - 1; severity >= 0; severity--)
    for (BwRule rule = 0; rule < BW_N_RULES; rule++)
      if (fit->at[rule].severity == (BwSeverity) severity)
        order[n++] = rule;
}
