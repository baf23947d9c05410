/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "severity.h"

#include <glib/gi18n-lib.h>

static const BwKind severities[BW_N_SEVERITIES] = {
  [BW_SEVERITY_OK] = { "ok", N_ ("holds") },
  [BW_SEVERITY_UNJUDGED] = { "not-judged", N_ ("not judged") },
  [BW_SEVERITY_TIGHT] = { "tight", N_ ("tight") },
  [BW_SEVERITY_CURABLE] = { "curable", N_ ("curable") },
  [BW_SEVERITY_FATAL] = { "fatal", N_ ("no cure") },
};
const BwKindTable bw_severities = { BW_N_SEVERITIES, severities };

/**
 * bw_severity_sign:
 *
 * Returns: (transfer none): one character for @severity, to stand before a word: a tick, a
 * question mark, two waves, a plus, a struck ring. Their shapes differ, so that colour is not needed to tell them apart.
 */
const char *
bw_severity_sign (BwSeverity severity)
{
  static const char *const signs[BW_N_SEVERITIES] = {
    [BW_SEVERITY_OK] = "\u2713",
    [BW_SEVERITY_UNJUDGED] = "?",
    [BW_SEVERITY_TIGHT] = "\u2248",
    [BW_SEVERITY_CURABLE] = "+",
    [BW_SEVERITY_FATAL] = "\u2298",
  };
  g_return_val_if_fail (severity < BW_N_SEVERITIES, "");
  return signs[severity];
}

/**
 * bw_severity_plain_sign:
 *
 * Returns: (transfer none): one ASCII character for @severity, where the other signs cannot be
 * written
 */
const char *
bw_severity_plain_sign (BwSeverity severity)
{
  static const char *const signs[BW_N_SEVERITIES] = {
    [BW_SEVERITY_OK] = "=",
    [BW_SEVERITY_UNJUDGED] = "?",
    [BW_SEVERITY_TIGHT] = "~",
    [BW_SEVERITY_CURABLE] = "+",
    [BW_SEVERITY_FATAL] = "x",
  };
  g_return_val_if_fail (severity < BW_N_SEVERITIES, "");
  return signs[severity];
}
