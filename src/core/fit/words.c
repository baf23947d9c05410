/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* The parts of a finding in words, for a person at a bench. What each rule says stands beside its
 * judgement in the files of rules. */

/**
 * bw_saying_figure:
 * @value: in the base unit of @dimension
 *
 * Returns: (transfer full): @value with its unit, to @digits significant digits
 */
char *
bw_saying_figure (const BwSaying *s, double value, BwDimension dimension, int digits)
{
  return bw_quantity_format (value, dimension, digits, s->mark);
}

/**
 * bw_saying_decibel:
 *
 * Returns: (transfer full): @db to one digit behind the point: "14.0 dB"
 */
char *
bw_saying_decibel (const BwSaying *s, double db)
{
  char text[32];
  g_ascii_formatd (text, sizeof text, "%.1f", db);
  if (s->mark != '.')
    g_strdelimit (text, ".", s->mark);
  return g_strdup_printf (_ ("%s dB"), text);
}

/**
 * bw_finding_value:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the measured value with its unit; empty if the rule has none
 */
char *
bw_finding_value (const BwFinding *finding, char mark)
{
  g_return_val_if_fail (finding != NULL, NULL);

  if (!finding->has_value)
    return g_strdup ("");
  return bw_quantity_format (finding->value, finding->dimension,
                             bw_rule_descriptor (finding->rule)->digits, mark);
}

/**
 * bw_finding_allowed:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the allowed range with its unit; empty if the rule has none
 */
char *
bw_finding_allowed (const BwFinding *finding, char mark)
{
  g_return_val_if_fail (finding != NULL, NULL);

  int digits = bw_rule_descriptor (finding->rule)->digits;
  BwRange range = { finding->low, finding->high };

  if (finding->has_low && finding->has_high)
    return bw_quantity_format_range (range, finding->dimension, digits, mark);
  if (finding->has_low)
    {
      g_autofree char *low = bw_quantity_format (range.low, finding->dimension, digits, mark);
      return g_strdup_printf (_ ("at least %s"), low);
    }
  if (finding->has_high)
    {
      g_autofree char *high = bw_quantity_format (range.high, finding->dimension, digits, mark);
      return g_strdup_printf (_ ("at most %s"), high);
    }
  return g_strdup ("");
}

/* Far beyond a limit, how many times it is tells more than a percentage: "3.6 × the limit". */
static char *
beyond_limit_text (const BwFinding *finding, char mark)
{
  g_autofree char *times
      = bw_quantity_format (finding->value / finding->high, BW_DIMENSION_LINES, 2, mark);
  g_autofree char *number = g_strndup (times, strcspn (times, "\u00a0"));
  return g_strdup_printf (_ ("%s × the limit"), number);
}

/**
 * bw_finding_margin:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the distance to the nearer limit in per cent of that limit; empty if
 * the finding has no number or no limit, or if one single value is allowed
 */
char *
bw_finding_margin (const BwFinding *finding, char mark)
{
  g_return_val_if_fail (finding != NULL, NULL);

  gboolean range = finding->has_low && finding->has_high;
  if (!finding->has_value || (!finding->has_low && !finding->has_high))
    return g_strdup ("");
  if (range && !(finding->high > finding->low))
    return g_strdup ("");
  if (finding->has_high && finding->high > 0 && finding->margin < -1
      && finding->value > finding->high)
    return beyond_limit_text (finding, mark);
  g_autofree char *size
      = bw_quantity_format (fabs (finding->margin), BW_DIMENSION_FRACTION, 2, mark);
  return g_strconcat (finding->margin < 0 ? "\u2212" : "", size, NULL);
}

/**
 * bw_finding_is_remark:
 *
 * Returns: whether @finding holds and yet is told where findings that hold are left out: what would
 *   flicker if the set let ripple through is neither good nor bad
 */
gboolean
bw_finding_is_remark (const BwFinding *finding)
{
  g_return_val_if_fail (finding != NULL, FALSE);
  return finding->severity == BW_SEVERITY_OK && finding->reason == BW_REASON_FLICKER;
}

/* For any rule that lacks a figure. */
static char *
lack_text (const BwSaying *s)
{
  g_autofree char *lacks = bw_lack_name (&s->f->lacks);
  /* Translators: the figure that is lacking, such as: “Video level” of the input */
  return g_strdup_printf (_ ("Not judged: %s would decide it and is not known."), lacks);
}

/* For any rule that is not judged because the set does not scan the source's raster. */
static char *
other_raster_text (const BwFit *fit)
{
  return g_strdup (fit->verdict == BW_VERDICT_NO
                       ? _ ("Not judged: the set does not lock to this raster.")
                       : _ ("Not judged for the source: the set sees the scan converter's output."));
}

/* Whether another raster is a way out: the rule is about the raster, it fails, and the source can be set. */
static gboolean
another_raster_helps (const BwSaying *s)
{
  static const guint of_raster = BW_BIT (BW_RULE_LINE_RATE) | BW_BIT (BW_RULE_FIELD_RATE)
                                 | BW_BIT (BW_RULE_LINE_COUNT) | BW_BIT (BW_RULE_LINE_BLANKING)
                                 | BW_BIT (BW_RULE_FIELD_BLANKING);
  return s->f->severity >= BW_SEVERITY_CURABLE && (of_raster & BW_BIT (s->f->rule))
         && s->c->source != NULL && s->c->source->can_be_set;
}

/**
 * bw_finding_says:
 * @finding: a finding of @fit
 * @c: the case that was judged
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the sentence that says what was found and why, translated
 */
char *
bw_finding_says (const BwFinding *finding, const BwFit *fit, const BwCase *c, char mark)
{
  g_return_val_if_fail (finding != NULL && finding->rule < BW_N_RULES, NULL);
  g_return_val_if_fail (fit != NULL && c != NULL, NULL);

  g_autofree char *value = bw_finding_value (finding, mark);
  g_autofree char *allowed = bw_finding_allowed (finding, mark);
  BwSaying saying = { finding, fit, c, mark, value, allowed };
  if (finding->reason == BW_REASON_OTHER_RASTER)
    return other_raster_text (fit);
  if (finding->reason == BW_REASON_UNKNOWN)
    return lack_text (&saying);
  g_autofree char *says = bw_rule_descriptor (finding->rule)->says (&saying);
  if (!another_raster_helps (&saying))
    return g_steal_pointer (&says);
  return g_strdup_printf (_ ("%s This source can be set to another raster: the page Timing, or “timing "
                             "--for-monitor”, finds one for this set."),
                          says);
}
