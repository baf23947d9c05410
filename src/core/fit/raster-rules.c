/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

/* Rules that compare the source's raster with the monitor's deflection and supply. */

/* The band that @value lies in, else the nearest one. */
static BwRange
nearest_band (const BwBands *bands, double value)
{
  BwRange best = bands->at[0];
  double best_distance = INFINITY;
  for (guint i = 0; i < bands->n; i++)
    {
      BwRange band = bands->at[i];
      double distance = MAX (MAX (band.low - value, value - band.high), 0);
      if (distance < best_distance)
        {
          best = band;
          best_distance = distance;
        }
    }
  return best;
}

static void
judge_rate (const BwCase *c, BwFinding *f, double rate_hz, const BwBands *bands, double threshold)
{
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY, rate_hz);
  bw_finding_within (f, nearest_band (bands, rate_hz), threshold);
  if (f->severity == BW_SEVERITY_CURABLE)
    bw_finding_scan_converter (f, c, f->reason);
}

/**
 * bw_rule_line_rate:
 *
 * The line rate lies in one of the input's own bands, or of the monitor's if it has none.
 */
void
bw_rule_line_rate (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  judge_rate (c, f, c->figures->line_rate_hz, bw_case_line_rates (c), c->limits->line_rate);
}

/**
 * bw_rule_field_rate:
 *
 * The field rate (not the frame rate) lies in one of the monitor's bands.
 */
void
bw_rule_field_rate (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  judge_rate (c, f, c->figures->field_rate_hz, &c->monitor->field_rates_hz,
              c->limits->field_rate);
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

/**
 * bw_rule_line_count:
 *
 * The input takes this scan and, if it counts lines, this number of them.
 */
void
bw_rule_line_count (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  const BwBands *counts = &c->input->line_counts;
  int lines = c->figures->lines_per_frame;
  gboolean progressive = c->raster->scan == BW_SCAN_PROGRESSIVE;
  const BwRange *whole = progressive ? whole_of_half (counts, lines) : NULL;
  BwRange nearest = { 0 };

  bw_finding_measure (f, BW_DIMENSION_LINES, lines);
  if (counts->n > 0)
    {
      nearest = whole != NULL ? *whole : nearest_band (counts, lines);
      f->has_low = f->has_high = TRUE;
      f->low = nearest.low;
      f->high = nearest.high;
    }
  if (!(c->input->scans & BW_BIT (c->raster->scan)))
    bw_finding_scan_converter (f, c, BW_REASON_WRONG_SCAN);
  else if (counts->n == 0 || (lines >= nearest.low && lines <= nearest.high))
    return;
  else if (whole != NULL)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_OTHER_COUNT, BW_REMEDY_NONE);
  else
    bw_finding_scan_converter (f, c, BW_REASON_WRONG_COUNT);
}

static void
judge_blanking (const BwCase *c, BwFinding *f, double blanking_s, double retrace_s)
{
  bw_finding_measure (f, BW_DIMENSION_TIME, blanking_s);
  f->has_low = TRUE;
  f->low = retrace_s;
  f->margin = bw_margin (blanking_s - retrace_s, retrace_s);
  if (f->margin < 0)
    bw_finding_scan_converter (f, c, BW_REASON_BELOW);
  else if (f->margin < c->limits->blanking)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_NEAR_EDGE, BW_REMEDY_NONE);
}

/**
 * bw_rule_line_blanking:
 *
 * Line blanking, with borders, which are black too, is long enough to hide the line retrace.
 */
void
bw_rule_line_blanking (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  judge_blanking (c, f, c->figures->h_blanking_s + 2 * c->figures->h_border_s,
                  c->monitor->line_retrace_s);
}

/**
 * bw_rule_field_blanking:
 *
 * Field blanking (of the field that has less), with borders, is long enough to hide the field
 * retrace.
 */
void
bw_rule_field_blanking (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  judge_blanking (c, f,
                  c->figures->v_blanking_s + 2 * c->raster->v_border * c->figures->line_period_s,
                  c->monitor->field_retrace_s);
}

/**
 * bw_rule_mains_beat:
 *
 * Mains fm and field rate fv give n = round (fm / fv) hum bars, at least one; they beat at
 * |fm − n·fv| and move at (fm − n·fv)·fv/fm picture heights a second, up if that is positive
 * (arithmetic on the two rates). extra[0]: n; extra[1]: seconds for a bar to cross the height;
 * extra[2]: 1 up, −1 down, 0 still.
 */
void
bw_rule_mains_beat (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  double field_hz = c->figures->field_rate_hz;
  double bars = MAX (round (c->supply_hz / field_hz), 1);
  double offset_hz = c->supply_hz - bars * field_hz;
  double speed = offset_hz * field_hz / c->supply_hz;

  bw_finding_measure (f, BW_DIMENSION_FREQUENCY, fabs (offset_hz));
  f->has_high = TRUE;
  f->high = c->limits->mains_beat_hz;
  f->margin = f->high > 0 ? (f->high - f->value) / f->high : -1;
  f->extra[0] = bars;
  if (fabs (offset_hz) < 1e-6 * field_hz)
    {
      f->reason = BW_REASON_NO_BEAT;
      return;
    }
  f->extra[1] = 1 / fabs (speed);
  f->extra[2] = speed > 0 ? 1 : -1;
  if (f->value > f->high)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_FLICKER, BW_REMEDY_NONE);
  else
    f->reason = BW_REASON_SLOW_BEAT;
}

/* The share of height (or, below one, of width) that gives the picture its proportions. */
static void
judge_aspect (const BwCase *c, BwFinding *f)
{
  double ratio = bw_ratio_to_double (c->source->aspect) / bw_ratio_to_double (c->monitor->aspect);
  f->remedy.value = ratio > 1 ? 1 / ratio : ratio;
  f->extra[2] = ratio > 1 ? 1 : -1; /* height is set, or width */
  if (bw_monitor_switches_to (c->monitor, c->source->aspect))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_WIDE_SWITCH, BW_REMEDY_ASPECT_SWITCH);
  else
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_OTHER_ASPECT, BW_REMEDY_SIZE);
}

/**
 * bw_rule_visible_area:
 *
 * How much of the picture lies beyond the glass, and whether its proportions are the tube's. The
 * value is the share of the picture's area that is not seen. extra[0]: lines of the frame that are
 * not seen; extra[1]: pixels, or seconds of the line, that are not seen; extra[2]: for another
 * aspect ratio, 1 to set the height and −1 to set the width.
 */
void
bw_rule_visible_area (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  double seen = (1 - c->monitor->overscan_h) * (1 - c->monitor->overscan_v);

  bw_finding_measure (f, BW_DIMENSION_FRACTION, 1 - seen);
  f->extra[0] = c->figures->active_lines_frame * c->monitor->overscan_v;
  f->extra[1] = c->monitor->overscan_h
                * (c->figures->has_pixels ? c->raster->h_active / (double) c->raster->pixel_repeat
                                          : c->figures->h_active_s);
  if (bw_ratio_compare (c->source->aspect, c->monitor->aspect) != 0)
    judge_aspect (c, f);
  else if (c->source->whole_picture && f->value > 0)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_OVERSCANNED, BW_REMEDY_SIZE);
}
