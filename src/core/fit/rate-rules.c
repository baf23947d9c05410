/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <glib/gi18n-lib.h>

/* Rules on what the deflection locks to: line rate, field rate, and the number of lines with their
 * scan. */

/* The bands of a rate with their unit, "15.5–16 kHz and 31–33.8 kHz". */
static char *
bands_text (const BwSaying *s, const BwBands *bands)
{
  int digits = bw_rule_descriptor (s->f->rule)->digits;
  char *text = bw_quantity_format_range (bands->at[0], s->f->dimension, digits, s->mark);
  for (guint i = 1; i < bands->n; i++)
    {
      g_autofree char *before = text;
      g_autofree char *band
          = bw_quantity_format_range (bands->at[i], s->f->dimension, digits, s->mark);
      /* Translators: ranges that an input takes: "15.5–16 kHz and 31–33.8 kHz" */
      text = g_strdup_printf (_ ("%1$s and %2$s"), before, band);
    }
  return text;
}

/* Whether there are bands on both sides of @value. */
static gboolean
lies_between (const BwBands *bands, double value)
{
  gboolean below = FALSE, above = FALSE;
  for (guint i = 0; i < bands->n; i++)
    {
      below |= bands->at[i].high < value;
      above |= bands->at[i].low > value;
    }
  return below && above;
}

static void
judge_rate (const BwCase *c, BwFinding *f, double rate_hz, const BwBands *bands, double threshold)
{
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY, rate_hz);
  bw_finding_within (f, bw_rate_band (bw_nearest_band (bands, rate_hz)), threshold);
  if (f->severity == BW_SEVERITY_CURABLE)
    bw_finding_scan_converter (f, c, lies_between (bands, rate_hz) ? BW_REASON_BETWEEN : f->reason);
}

/* The two line rates of broadcasting: of 625 and of 525 lines (ITU-R BT.1700). */
#define LINE_RATE_625_HZ 15625.0
#define LINE_RATE_525_HZ (4.5e6 / 286)

/* Whether a band is the two rates of broadcasting as a plate rounds them, such as 15.6 to 15.8 kHz: neither
 * of its edges is @threshold away from the one or the other. A rate from the one to the other is then not
 * near an edge. */
static gboolean
is_made_for_both (const BwFinding *f, double rate_hz, double threshold)
{
  const double play = 1e-4; /* of an ordinary oscillator (common practice, no source) */
  return f->low <= LINE_RATE_625_HZ && f->low > LINE_RATE_625_HZ * (1 - threshold)
         && f->high >= LINE_RATE_525_HZ && f->high < LINE_RATE_525_HZ * (1 + threshold)
         && rate_hz >= LINE_RATE_625_HZ * (1 - play) && rate_hz <= LINE_RATE_525_HZ * (1 + play);
}

/**
 * bw_rule_line_rate_judge:
 *
 * The line rate lies in one of the input's own bands, or of the monitor's if it has none.
 */
void
bw_rule_line_rate_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  gboolean own = c->input->line_rates_hz.n > 0;

  if (!bw_finding_needs_raster (f, c) || !(own || BW_NEEDS_MONITOR (f, c, line_rates_hz)))
    return;
  double rate_hz = c->figures->line_rate_hz;
  judge_rate (c, f, rate_hz, bw_case_line_rates (c), c->limits->line_rate);
  if (f->severity == BW_SEVERITY_TIGHT && is_made_for_both (f, rate_hz, c->limits->line_rate))
    bw_finding_set (f, BW_SEVERITY_OK, BW_REASON_HOLDS, BW_REMEDY_NONE);
}

/* A rate far outside the bands stresses the line output stage: common practice, no source. */
char *
bw_rule_line_rate_says (const BwSaying *s)
{
  g_autofree char *bands = bands_text (s, bw_case_line_rates (s->c));

  switch (s->f->reason)
    {
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Line rate %1$s is below this input's %2$s; a scan converter is "
                                 "needed. Do not connect it as it is: the wrong line rate can "
                                 "damage a set."),
                              s->value, bands);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Line rate %1$s is above this input's %2$s; a scan converter is "
                                 "needed. Do not connect it as it is: the wrong line rate can "
                                 "damage a set."),
                              s->value, bands);
    case BW_REASON_BETWEEN:
      return g_strdup_printf (_ ("Line rate %1$s is outside this input's %2$s; a scan converter is "
                                 "needed. Do not connect it as it is: the wrong line rate can "
                                 "damage a set."),
                              s->value, bands);
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("Line rate %1$s is outside this input's %2$s, and scan converters "
                                 "commonly do not take this raster; set the source to another one "
                                 "if it can. Do not connect it as it is: the wrong line rate can "
                                 "damage a set."),
                              s->value, bands);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Line rate %1$s locks, but lies near the edge of %2$s; check the "
                                 "hold control warm and cold."),
                              s->value, s->allowed);
    default:
      return g_strdup_printf (_ ("Line rate %1$s lies inside %2$s."), s->value, s->allowed);
    }
}

/**
 * bw_rule_field_rate_judge:
 *
 * The field rate (not the frame rate) lies in one of the monitor's bands.
 */
void
bw_rule_field_rate_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (bw_finding_needs_raster (f, c) && BW_NEEDS_MONITOR (f, c, field_rates_hz))
    judge_rate (c, f, c->figures->field_rate_hz, &c->monitor->field_rates_hz,
                c->limits->field_rate);
}

char *
bw_rule_field_rate_says (const BwSaying *s)
{
  g_autofree char *bands = bands_text (s, &s->c->monitor->field_rates_hz);

  switch (s->f->reason)
    {
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Field rate %1$s is below this input's %2$s; a scan converter is "
                                 "needed."),
                              s->value, bands);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Field rate %1$s is above this input's %2$s; a scan converter is "
                                 "needed."),
                              s->value, bands);
    case BW_REASON_BETWEEN:
      return g_strdup_printf (_ ("Field rate %1$s is outside this input's %2$s; a scan converter "
                                 "is needed."),
                              s->value, bands);
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("Field rate %1$s is outside this input's %2$s, and scan "
                                 "converters commonly do not take this raster; set the source to "
                                 "another one if it can."),
                              s->value, bands);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Field rate %1$s locks, but lies near the edge of %2$s; check the "
                                 "hold control warm and cold."),
                              s->value, s->allowed);
    default:
      return g_strdup_printf (_ ("Field rate %1$s lies inside %2$s."), s->value, s->allowed);
    }
}

/* A progressive relative of an interlaced raster has about half its lines: 262 or 263 of 525,
 * 312 to 314 of 625 (CTA-861 VIC 8 and 23). Returns the count that it is half of, or NULL. */
static const BwRange *
whole_of_half (const BwBands *counts, int lines)
{
  for (guint i = 0; i < counts->n; i++)
    if (2 * lines >= counts->at[i].low - 1 && 2 * lines <= counts->at[i].high + 3)
      return &counts->at[i];
  return NULL;
}

static gboolean
is_listed (const BwBands *counts, int lines)
{
  for (guint i = 0; i < counts->n; i++)
    if (lines >= counts->at[i].low && lines <= counts->at[i].high)
      return TRUE;
  return FALSE;
}

/**
 * bw_rule_line_count_judge:
 *
 * The input takes this scan and, if it counts lines, this number of them. A count that is listed is
 * looked for before it is taken for half of another.
 */
void
bw_rule_line_count_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!bw_finding_needs_raster (f, c) || !BW_NEEDS_INPUT (f, c, scans))
    return;
  const BwBands *counts = &c->input->line_counts;
  int lines = c->figures->lines_per_frame;
  gboolean progressive = c->raster->scan == BW_SCAN_PROGRESSIVE;
  gboolean listed = is_listed (counts, lines);
  const BwRange *whole = progressive && !listed ? whole_of_half (counts, lines) : NULL;
  BwRange nearest = { 0 };

  bw_finding_measure (f, BW_DIMENSION_LINES, lines);
  if (counts->n > 0)
    {
      nearest = whole != NULL ? *whole : bw_nearest_band (counts, lines);
      f->has_low = f->has_high = TRUE;
      f->low = nearest.low;
      f->high = nearest.high;
    }
  if (!(c->input->scans & BW_BIT (c->raster->scan)))
    bw_finding_scan_converter (f, c, BW_REASON_WRONG_SCAN);
  else if (counts->n == 0 || listed)
    return;
  else if (whole != NULL)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_OTHER_COUNT, BW_REMEDY_NONE);
  else
    bw_finding_scan_converter (f, c, BW_REASON_WRONG_COUNT);
}

static char *
wrong_count_text (const BwSaying *s, const char *scan)
{
  g_autofree char *counts = bands_text (s, &s->c->input->line_counts);
  return g_strdup_printf (_ ("%1$s, %2$s: this input counts %3$s."), s->value, scan, counts);
}

char *
bw_rule_line_count_says (const BwSaying *s)
{
  const char *scan = bw_kind_label (&bw_scans, s->c->raster->scan);

  switch (s->f->reason)
    {
    case BW_REASON_WRONG_SCAN:
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("%1$s, %2$s: this input does not take such a raster."), s->value,
                              scan);
    case BW_REASON_WRONG_COUNT:
      return wrong_count_text (s, scan);
    case BW_REASON_OTHER_COUNT:
      return g_strdup_printf (_ ("%1$s, %2$s: half of %3$s. A set that counts lines in its field "
                                 "circuit may not lock; others do, without interlace."),
                              s->value, scan, s->allowed);
    default:
      return s->f->has_low
                 ? g_strdup_printf (_ ("%1$s, %2$s: taken."), s->value, scan)
                 : g_strdup_printf (_ ("%1$s, %2$s: taken, as this input is not said to count lines."),
                                    s->value, scan);
    }
}
