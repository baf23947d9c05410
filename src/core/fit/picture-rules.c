/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/detail/detail.h"
#include "core/raster/hum.h"

/* Rules on what is seen on the glass: blanking long enough to hide the retrace, detail, hum bars,
 * and how much of the picture there is. */

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

/* Significant digits of a retrace time in a sentence. */
#define RETRACE_DIGITS 4

/**
 * bw_rule_line_blanking_judge:
 *
 * Line blanking, with borders, which are black too, is long enough to hide the line retrace.
 */
void
bw_rule_line_blanking_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (bw_finding_needs_raster (f, c) && BW_NEEDS_MONITOR (f, c, line_retrace_s))
    judge_blanking (c, f, c->figures->h_blanking_s + 2 * c->figures->h_border_s,
                    c->monitor->line_retrace_s);
}

char *
bw_rule_line_blanking_says (const BwSaying *s)
{
  g_autofree char *retrace
      = bw_saying_figure (s, s->f->low, BW_DIMENSION_TIME, RETRACE_DIGITS);

  switch (s->f->reason)
    {
    case BW_REASON_BELOW:
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("Line blanking lasts %1$s; retrace needs %2$s: the picture folds "
                                 "over at the left or right edge."),
                              s->value, retrace);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Line blanking lasts %1$s, little more than the %2$s that retrace "
                                 "needs."),
                              s->value, retrace);
    default:
      return g_strdup_printf (_ ("Line blanking lasts %1$s; retrace needs %2$s."), s->value,
                              retrace);
    }
}

/**
 * bw_rule_field_blanking_judge:
 *
 * Field blanking (of the field that has less), with borders, is long enough to hide the field
 * retrace.
 */
void
bw_rule_field_blanking_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (bw_finding_needs_raster (f, c) && BW_NEEDS_MONITOR (f, c, field_retrace_s))
    judge_blanking (c, f,
                    c->figures->v_blanking_s + 2 * c->raster->v_border * c->figures->line_period_s,
                    c->monitor->field_retrace_s);
}

char *
bw_rule_field_blanking_says (const BwSaying *s)
{
  g_autofree char *retrace
      = bw_saying_figure (s, s->f->low, BW_DIMENSION_TIME, RETRACE_DIGITS);

  switch (s->f->reason)
    {
    case BW_REASON_BELOW:
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("Field blanking lasts %1$s; retrace needs %2$s: the picture folds "
                                 "over at the top."),
                              s->value, retrace);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Field blanking lasts %1$s, little more than the %2$s that "
                                 "retrace needs."),
                              s->value, retrace);
    default:
      return g_strdup_printf (_ ("Field blanking lasts %1$s; retrace needs %2$s."), s->value,
                              retrace);
    }
}

/* Lines per picture height that a bandwidth carries: 2 · B · T / aspect. */
static double
tv_lines (const BwCase *c, double bandwidth_hz)
{
  return 2 * bandwidth_hz * c->figures->h_active_s / bw_ratio_to_double (c->source->aspect);
}

/**
 * bw_rule_bandwidth_judge:
 *
 * The input passes the source's finest detail. Too little makes the picture soft; it still shows.
 * The value is the bandwidth, the limit is the source's highest frequency.
 */
void
bw_rule_bandwidth_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  double detail_hz = bw_case_source_detail_hz (c);
  double bandwidth_hz = bw_input_bandwidth_hz (c->input, c->monitor);

  if (!bw_finding_needs_raster (f, c) || !BW_NEEDS_SOURCE (f, c, aspect)
      || (bandwidth_hz <= 0 && !BW_NEEDS_MONITOR (f, c, bandwidth_hz))
      || (detail_hz <= 0 && !BW_NEEDS_SOURCE (f, c, detail_hz)))
    return;
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY, bandwidth_hz);
  f->has_low = TRUE;
  f->low = detail_hz;
  f->margin = bw_margin (bandwidth_hz - detail_hz, detail_hz);
  f->as.bandwidth.source_tvl = tv_lines (c, detail_hz);
  f->as.bandwidth.passed_tvl = tv_lines (c, bandwidth_hz);
  if (f->margin < 0)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BELOW, BW_REMEDY_NONE);
}

/* What is left of all links, and which of them takes most of it, as on the page Detail; %NULL if none is known.
 * Lines are counted over the height of the picture, as those of the rule: over an area of its own shape. A
 * bandwidth is quoted at −3 dB, and what is read off a wedge at 3 % of the contrast: the two figures differ
 * in kind, and the sentences say so. */
static char *
first_limit_text (const BwSaying *s)
{
  BwDetailCase what;
  BwDetail detail;

  bw_detail_case_from (&what, s->c->monitor, s->c->input, s->c->source, s->c->raster);
  gboolean other_shape = bw_ratio_compare (s->c->source->aspect, s->c->monitor->aspect) != 0;
  if (other_shape)
    bw_detail_case_set_area (&what, s->c->monitor, s->c->source->aspect);
  bw_detail_compute (&what, &detail);
  if (detail.limited_by >= BW_N_LINKS)
    return NULL;
  g_autofree char *tvl = bw_saying_figure (s, round (detail.limiting_tvl), BW_DIMENSION_TV_LINES, 4);
  const char *link = bw_kind_label (&bw_detail_links, detail.limited_by);
  if (!other_shape)
    return g_strdup_printf (_ ("All links together leave %2$s, as read off a wedge at 3 %% of the "
                               "contrast; most is lost there in the %1$s."),
                            link, tvl);
  return g_strdup_printf (_ ("All links together leave %2$s, as read off a wedge at 3 %% of the contrast, "
                             "with a picture of %3$d:%4$d set inside the tube; most is lost there in the "
                             "%1$s."),
                          link, tvl, (int) what.aspect.num, (int) what.aspect.den);
}

static char *
bandwidth_text (const BwSaying *s)
{
  const BwBandwidthFigures *figures = &s->f->as.bandwidth;

  if (s->f->reason == BW_REASON_UNKNOWN)
    return g_strdup (_ ("Not judged: the source's highest frequency or the monitor's bandwidth is "
                        "not entered."));
  g_autofree char *needs = bw_saying_figure (s, s->f->low, BW_DIMENSION_FREQUENCY, 3);
  g_autofree char *source
      = bw_saying_figure (s, round (figures->source_tvl), BW_DIMENSION_TV_LINES, 4);
  g_autofree char *passed
      = bw_saying_figure (s, round (figures->passed_tvl), BW_DIMENSION_TV_LINES, 4);
  if (s->f->reason == BW_REASON_BELOW)
    return g_strdup_printf (_ ("The source carries detail up to %1$s (%2$s per picture height); "
                               "the bandwidth of %3$s passes %4$s at −3 dB: the picture is softer than "
                               "the source."),
                            needs, source, s->value, passed);
  return g_strdup_printf (_ ("The bandwidth of %1$s (%2$s per picture height, at −3 dB) passes the "
                             "source's detail up to %3$s (%4$s)."),
                          s->value, passed, needs, source);
}

char *
bw_rule_bandwidth_says (const BwSaying *s)
{
  g_autofree char *bandwidth = bandwidth_text (s);
  g_autofree char *first = first_limit_text (s);
  return first != NULL ? g_strdup_printf ("%s %s", bandwidth, first) : g_steal_pointer (&bandwidth);
}

/* Whether the frequency of the mains here is known. */
static gboolean
needs_supply (BwFinding *f, const BwCase *c)
{
  if (c->supply_hz > 0)
    return TRUE;
  bw_finding_lack (f, (BwLack){ bw_field_find (&bw_sheet_fields, "supply_frequency"),
                                BW_OWNER_SHEET });
  return FALSE;
}

/**
 * bw_rule_mains_beat_judge:
 *
 * Mains and field rate make hum bars that stand or move (bw_hum()). The set locks whatever the beat, and whether any of it is seen is for the
 * ripple of its supply to say, which nobody enters: the rule says what it would look like, and nothing
 * fails by it. A beat beyond the limit is not near it, and has none.
 */
void
bw_rule_mains_beat_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!bw_finding_needs_raster (f, c) || !needs_supply (f, c))
    return;
  BwHum hum;

  bw_hum (c->supply_hz, c->figures->field_rate_hz, &hum);
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY, hum.beat_hz);
  f->as.mains_beat.bars = hum.bars;
  if (f->value <= c->limits->mains_beat_hz)
    {
      f->has_high = TRUE;
      f->high = c->limits->mains_beat_hz;
      f->margin = bw_margin (f->high - f->value, f->high);
    }
  if (hum.direction == 0)
    {
      f->reason = BW_REASON_NO_BEAT;
      return;
    }
  f->as.mains_beat.crossing_s = hum.height_s;
  f->as.mains_beat.direction = hum.direction;
  f->reason = f->has_high ? BW_REASON_SLOW_BEAT : BW_REASON_FLICKER;
}

char *
bw_rule_mains_beat_says (const BwSaying *s)
{
  const BwMainsBeatFigures *beat = &s->f->as.mains_beat;
  g_autofree char *crossing = bw_saying_figure (s, beat->crossing_s, BW_DIMENSION_TIME, 3);

  switch (s->f->reason)
    {
    case BW_REASON_NO_BEAT:
      return g_strdup (_ ("Field rate and mains run together: a hum bar stands still."));
    case BW_REASON_FLICKER:
      return g_strdup_printf (_ ("Field rate and mains beat at %s: the picture locks; ripple or a "
                                 "stray mains field, where a set has any, shows as flicker or wobble "
                                 "at that rate, not as a slow bar."),
                              s->value);
    default:
      return beat->direction > 0
                 ? g_strdup_printf (_ ("Field rate and mains beat at %1$s: a hum bar drifts up, "
                                       "across the height in %2$s."),
                                    s->value, crossing)
                 : g_strdup_printf (_ ("Field rate and mains beat at %1$s: a hum bar drifts down, "
                                       "across the height in %2$s."),
                                    s->value, crossing);
    }
}

/**
 * bw_rule_aspect_judge:
 *
 * The picture is meant for the aspect ratio of the tube; else the remedy's value is the share of the height,
 * or of the width, that gives it its proportions.
 */
void
bw_rule_aspect_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!BW_NEEDS_MONITOR (f, c, aspect) || !BW_NEEDS_SOURCE (f, c, aspect)
      || bw_ratio_compare (c->source->aspect, c->monitor->aspect) == 0)
    return;
  double ratio = bw_ratio_to_double (c->source->aspect) / bw_ratio_to_double (c->monitor->aspect);
  f->remedy.value = ratio > 1 ? 1 / ratio : ratio;
  f->as.aspect.sets_height = ratio > 1;
  if (bw_monitor_switches_to (c->monitor, c->source->aspect))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_WIDE_SWITCH, BW_REMEDY_ASPECT_SWITCH);
  else
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_OTHER_ASPECT, BW_REMEDY_SIZE);
}

char *
bw_rule_aspect_says (const BwSaying *s)
{
  gboolean sets_height = s->f->as.aspect.sets_height;
  g_autofree char *share
      = bw_saying_figure (s, s->f->remedy.value, BW_DIMENSION_FRACTION, 3);

  switch (s->f->reason)
    {
    case BW_REASON_OTHER_ASPECT:
      return sets_height
                 ? g_strdup_printf (_ ("The picture is meant for another aspect ratio than the "
                                       "tube's: circles come out as ovals until the height is set "
                                       "to %s."),
                                    share)
                 : g_strdup_printf (_ ("The picture is meant for another aspect ratio than the "
                                       "tube's: circles come out as ovals until the width is set "
                                       "to %s."),
                                    share);
    case BW_REASON_WIDE_SWITCH:
      return sets_height
                 ? g_strdup_printf (_ ("Another aspect ratio than the tube's: with the set's "
                                       "switch the picture takes %s of the height."),
                                    share)
                 : g_strdup_printf (_ ("Another aspect ratio than the tube's: with the set's "
                                       "switch the picture takes %s of the width."),
                                    share);
    default:
      return g_strdup (_ ("The picture is meant for the tube's aspect ratio."));
    }
}

/**
 * bw_rule_visible_area_judge:
 *
 * How much of the picture lies beyond the glass, whatever its proportions. The value is the share of the
 * picture's area that is not seen.
 */
void
bw_rule_visible_area_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!bw_finding_needs_raster (f, c) || !BW_NEEDS_MONITOR (f, c, overscan_h)
      || !BW_NEEDS_MONITOR (f, c, overscan_v))
    return;
  double hidden_h = c->monitor->overscan_h, hidden_v = c->monitor->overscan_v;
  BwVisibleAreaFigures *hidden = &f->as.visible_area;

  bw_finding_measure (f, BW_DIMENSION_FRACTION, 1 - (1 - hidden_h) * (1 - hidden_v));
  hidden->hidden_lines = c->figures->active_lines_frame * hidden_v;
  if (c->figures->has_pixels)
    hidden->hidden_columns = hidden_h * (c->raster->h_active / (double) c->raster->pixel_repeat);
  else
    hidden->hidden_s = hidden_h * c->figures->h_active_s;
  if (f->value > 0 && BW_NEEDS_SOURCE (f, c, whole_picture) && c->source->whole_picture)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_OVERSCANNED, BW_REMEDY_SIZE);
}

/* What is not seen at the sides: "36 columns" or "2.64 µs of each line". */
static char *
hidden_width_text (const BwSaying *s)
{
  const BwVisibleAreaFigures *hidden = &s->f->as.visible_area;
  double columns = round (hidden->hidden_columns);

  if (s->c->figures->has_pixels)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%.0f column", "%.0f columns", (gulong) columns), columns);
  g_autofree char *width = bw_saying_figure (s, hidden->hidden_s, BW_DIMENSION_TIME, 3);
  return g_strdup_printf (_ ("%s of each line"), width);
}

char *
bw_rule_visible_area_says (const BwSaying *s)
{
  g_autofree char *lines = bw_saying_figure (s, round (s->f->as.visible_area.hidden_lines),
                                             BW_DIMENSION_LINES, 4);
  g_autofree char *width = hidden_width_text (s);

  if (s->f->reason == BW_REASON_OVERSCANNED)
    return g_strdup_printf (_ ("%1$s and %2$s of the picture fall outside the glass, on a source "
                               "of which the whole picture matters."),
                            lines, width);
  if (s->f->value > 0)
    return g_strdup_printf (_ ("%1$s and %2$s of the picture fall outside the glass."), lines,
                            width);
  return g_strdup (_ ("The whole picture is on the glass."));
}
