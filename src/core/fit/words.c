/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/colour-system.h"
#include "core/detail/detail.h"

/* The sentences of findings, for a person at a bench: one function for each rule. */

/* What every sentence function is given. */
typedef struct
{
  const BwFinding *f;
  const BwFit *fit;
  const BwCase *c;
  char mark;
  char *value;   /* the measured value with its unit, or "" */
  char *allowed; /* the allowed range with its unit, or "" */
} Words;

typedef char *(*SaysFunc) (const Words *w);

static char *
figure (double value, BwDimension dimension, int digits, char mark)
{
  return bw_quantity_format (value, dimension, digits, mark);
}

/* Digits enough to tell 15.734 kHz from 15.75 kHz. */
#define RATE_DIGITS 5
#define LEVEL_DIGITS 3

static int
digits_for (const BwFinding *f)
{
  gboolean rate = f->rule == BW_RULE_LINE_RATE || f->rule == BW_RULE_FIELD_RATE
                  || f->rule == BW_RULE_COLOUR_SYSTEM;
  return rate ? RATE_DIGITS : f->rule == BW_RULE_LINE_COUNT ? 4 : LEVEL_DIGITS;
}

/**
 * bw_finding_value:
 *
 * Returns: (transfer full): the measured value with its unit; empty if the rule has none
 */
char *
bw_finding_value (const BwFinding *finding, char mark)
{
  if (!finding->has_value)
    return g_strdup ("");
  return figure (finding->value, finding->dimension, digits_for (finding), mark);
}

/**
 * bw_finding_allowed:
 *
 * Returns: (transfer full): the allowed range with its unit; empty if the rule has none
 */
char *
bw_finding_allowed (const BwFinding *finding, char mark)
{
  int digits = digits_for (finding);
  BwRange range = { finding->low, finding->high };

  if (finding->has_low && finding->has_high)
    return bw_quantity_format_range (range, finding->dimension, digits, mark);
  if (finding->has_low)
    {
      g_autofree char *low = figure (finding->low, finding->dimension, digits, mark);
      return g_strdup_printf (_ ("at least %s"), low);
    }
  if (finding->has_high)
    {
      g_autofree char *high = figure (finding->high, finding->dimension, digits, mark);
      return g_strdup_printf (_ ("at most %s"), high);
    }
  return g_strdup ("");
}

static char *
says_signal_kind (const Words *w)
{
  const char *signal = bw_kind_label (&bw_signals, w->c->source->signal);
  g_autofree char *takes = bw_kind_set_labels (&bw_signals, w->c->input->signals);

  switch (w->f->reason)
    {
    case BW_REASON_NOT_TAKEN:
      return g_strdup_printf (_ ("The source gives %s; this input takes %s."), signal, takes);
    case BW_REASON_MONOCHROME:
      return g_strdup_printf (_ ("The source gives %s, which this input (%s) shows in monochrome."),
                              signal, takes);
    case BW_REASON_COLOUR_LOST:
      return g_strdup_printf (_ ("Only the luminance of %s is connected: the picture is in "
                                 "monochrome."),
                              signal);
    case BW_REASON_SUBCARRIER_SEEN:
      return g_strdup (_ ("This input takes luminance only: the picture is in monochrome and the "
                          "colour subcarrier shows as fine dots."));
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("The source gives %s; this input takes %s, and neither an encoder "
                                 "nor a scan converter takes this raster."),
                              signal, takes);
    default:
      return g_strdup_printf (_ ("This input takes %s."), signal);
    }
}

static char *
says_colour_system (const Words *w)
{
  const char *system = bw_kind_label (&bw_colour_systems, w->c->source->system);
  g_autofree char *decodes = bw_kind_set_labels (&bw_colour_systems, w->c->input->systems);

  switch (w->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("No colour decoder of this input is in the way."));
    case BW_REASON_MONOCHROME:
      return g_strdup (_ ("The source has no subcarrier: the picture is in monochrome, as it is "
                          "meant to be."));
    case BW_REASON_SUBCARRIER_SEEN:
      return g_strdup_printf (_ ("A monochrome set: the picture is in monochrome and the colour "
                                 "subcarrier of %s shows as fine dots."),
                              w->value);
    case BW_REASON_COLOUR_LOST:
      return g_strdup_printf (_ ("The source is %s (subcarrier %s); this input decodes %s: the "
                                 "picture is in monochrome."),
                              system, w->value, decodes);
    default:
      return g_strdup_printf (_ ("This input decodes %s (subcarrier %s)."), system, w->value);
    }
}

/* All bands of the rate: "15.5–16 kHz and 31–33.8 kHz". */
static char *
rate_bands (const Words *w)
{
  const BwBands *bands = w->f->rule == BW_RULE_LINE_RATE ? bw_case_line_rates (w->c)
                                                         : &w->c->monitor->field_rates_hz;
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      g_autofree char *band = bw_quantity_format_range (bands->at[i], BW_DIMENSION_FREQUENCY,
                                                        RATE_DIGITS, w->mark);
      g_string_append_printf (text, "%s%s", i > 0 ? _ (" and ") : "", band);
    }
  return g_string_free (text, FALSE);
}

static char *
says_rate (const Words *w)
{
  const char *rate
      = w->f->rule == BW_RULE_LINE_RATE ? _ ("Line rate") : _ ("Field rate");

  gboolean line = w->f->rule == BW_RULE_LINE_RATE;
  g_autofree char *bands = rate_bands (w);
  /* A rate far outside the bands stresses the line output stage: common practice, no source. */
  const char *caution
      = line ? _ (" Do not connect it as it is: the wrong line rate can damage a set.") : "";

  switch (w->f->reason)
    {
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("%s %s is below this input's %s; a scan converter is needed.%s"),
                              rate, w->value, bands, caution);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("%s %s is above this input's %s; a scan converter is needed.%s"),
                              rate, w->value, bands, caution);
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("%s %s is outside this input's %s, and scan converters commonly do "
                                 "not take this raster; set the source to another one if it "
                                 "can.%s"),
                              rate, w->value, bands, caution);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("%s %s locks, but lies near the edge of %s; check the hold "
                                 "control warm and cold."),
                              rate, w->value, w->allowed);
    default:
      return g_strdup_printf (_ ("%s %s lies inside %s."), rate, w->value, w->allowed);
    }
}

static char *
says_line_count (const Words *w)
{
  const char *scan = bw_kind_label (&bw_scans, w->c->raster->scan);
  g_autofree char *counts = bw_quantity_bands_to_entry (&w->c->input->line_counts,
                                                        BW_DIMENSION_LINES, "lines", w->mark);

  switch (w->f->reason)
    {
    case BW_REASON_WRONG_SCAN:
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("%s, %s: this input does not take such a raster."), w->value,
                              scan);
    case BW_REASON_WRONG_COUNT:
      return g_strdup_printf (_ ("%s, %s: this input counts %s."), w->value, scan, counts);
    case BW_REASON_OTHER_COUNT:
      return g_strdup_printf (_ ("%s, %s: half of %s. A set that counts lines in its field circuit "
                                 "may not lock; others do, without interlace."),
                              w->value, scan, w->allowed);
    default:
      return g_strdup_printf (_ ("%s, %s: taken."), w->value, scan);
    }
}

static char *
says_sync_kind (const Words *w)
{
  const char *sync = bw_kind_label (&bw_sync_kinds, w->fit->sync);
  g_autofree char *takes = bw_kind_set_labels (&bw_sync_kinds, w->c->input->syncs);

  if (w->f->reason == BW_REASON_NOT_NEEDED)
    return g_strdup (_ ("The part in the way makes its own sync."));
  if (w->f->reason == BW_REASON_NOT_TAKEN)
    return g_strdup_printf (_ ("The source gives %s; this input takes %s."), sync, takes);
  return g_strdup_printf (_ ("Use %s."), sync);
}

/* "negative", or "H negative and V positive" */
static char *
polarity_given (const Words *w)
{
  guint given = (guint) w->f->extra[0];
  const BwRaster *raster = w->c->raster;
  if ((given & (given - 1)) == 0)
    return bw_kind_set_labels (&bw_polarities, given);
  return g_strdup_printf (_ ("H %s and V %s"), bw_kind_label (&bw_polarities, raster->h_polarity),
                          bw_kind_label (&bw_polarities, raster->v_polarity));
}

static char *
says_sync_polarity (const Words *w)
{
  g_autofree char *given = polarity_given (w);
  g_autofree char *takes = bw_kind_set_labels (&bw_polarities, w->c->input->polarities);

  if (w->f->reason == BW_REASON_NOT_NEEDED)
    return g_strdup (bw_sync_has_own_conductor (w->fit->sync)
                         ? _ ("The part in the way makes its own sync.")
                         : _ ("Sync that comes with the video is negative by standard."));
  if (w->f->reason == BW_REASON_NOT_TAKEN)
    return g_strdup_printf (_ ("The sync is %s; this input takes %s."), given, takes);
  return g_strdup_printf (_ ("The sync is %s, which this input takes."), given);
}

static char *
says_sync_shape (const Words *w)
{
  const char *shape = bw_kind_label (&bw_sync_shapes, (guint) w->f->extra[0]);
  g_autofree char *takes = bw_kind_set_labels (&bw_sync_shapes, w->c->input->shapes);

  if (w->f->reason == BW_REASON_NOT_NEEDED)
    return g_strdup (_ ("The part in the way makes its own sync."));
  if (w->f->reason == BW_REASON_NOT_TAKEN)
    return g_strdup_printf (_ ("The sync is %s; this input takes %s."), shape, takes);
  return g_strdup_printf (_ ("The sync is %s, which this input takes."), shape);
}

/* Sync and video levels. */
static char *
says_level (const Words *w)
{
  const char *what = w->f->rule == BW_RULE_SYNC_LEVEL ? _ ("Sync") : _ ("Video");
  g_autofree char *load = figure (w->f->extra[1], BW_DIMENSION_RESISTANCE, 3, w->mark);

  switch (w->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own levels."));
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("%s arrives at %s across %s, below this input's %s."), what,
                              w->value, load, w->allowed);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("%s arrives at %s across %s, above this input's %s."), what,
                              w->value, load, w->allowed);
    case BW_REASON_CURED_BY_TERMINATION:
      return g_strdup_printf (_ ("%s arrives at %s across %s, outside this input's %s; with the "
                                 "right termination it is inside."),
                              what, w->value, load, w->allowed);
    case BW_REASON_OUTSIDE_TERMINATED:
      return g_strdup_printf (_ ("%s arrives at %s across %s, inside this input's %s; with the "
                                 "right termination it is outside."),
                              what, w->value, load, w->allowed);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("%s arrives at %s across %s, near the edge of %s."), what,
                              w->value, load, w->allowed);
    default:
      return g_strdup_printf (_ ("%s arrives at %s across %s, inside %s."), what, w->value, load,
                              w->allowed);
    }
}

static char *
says_blanking (const Words *w)
{
  gboolean line = w->f->rule == BW_RULE_LINE_BLANKING;
  const char *blanking = line ? _ ("Line blanking") : _ ("Field blanking");
  const char *edge = line ? _ ("left or right edge") : _ ("top");
  g_autofree char *retrace = figure (w->f->low, BW_DIMENSION_TIME, 4, w->mark);

  switch (w->f->reason)
    {
    case BW_REASON_BELOW:
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("%s lasts %s; retrace needs %s: the picture folds over at the "
                                 "%s."),
                              blanking, w->value, retrace, edge);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("%s lasts %s, little more than the %s that retrace needs."),
                              blanking, w->value, retrace);
    default:
      return g_strdup_printf (_ ("%s lasts %s; retrace needs %s."), blanking, w->value, retrace);
    }
}

static char *
says_setup (const Words *w)
{
  double off_ire = fabs (w->f->extra[0]);
  g_autofree char *off = figure (off_ire, BW_DIMENSION_IRE, 3, w->mark);
  g_autofree char *volts = figure (bw_ire_to_volts (w->c->source->system, off_ire),
                                   BW_DIMENSION_VOLTAGE, 3, w->mark);

  switch (w->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own black level."));
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Setup is %s where this input expects %s: black comes out lifted "
                                 "by %s (%s)."),
                              w->value, w->allowed, off, volts);
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Setup is %s where this input expects %s: shadows are crushed by "
                                 "%s (%s)."),
                              w->value, w->allowed, off, volts);
    default:
      return g_strdup_printf (_ ("Setup is %s, as this input expects."), w->value);
    }
}

static char *
says_termination (const Words *w)
{
  g_autofree char *source = figure (w->f->extra[0], BW_DIMENSION_RESISTANCE, 3, w->mark);
  g_autofree char *ratio = figure (w->f->extra[1], BW_DIMENSION_FRACTION, 3, w->mark);

  switch (w->f->reason)
    {
    case BW_REASON_UNTERMINATED:
      return g_strdup_printf (_ ("The line ends in %s: not terminated. Levels stand at %s of what "
                                 "they should be, and edges echo."),
                              w->value, ratio);
    case BW_REASON_DOUBLE_TERMINATED:
      return g_strdup_printf (_ ("The line ends in %s: terminated more than once. Levels fall to "
                                 "%s of what they should be."),
                              w->value, ratio);
    case BW_REASON_VOLTAGE_DRIVEN:
      return g_strdup_printf (_ ("The line ends in %s. The source drives it as a voltage (%s of "
                                 "its own), so the level holds, but a long lead echoes."),
                              w->value, source);
    default:
      return g_strdup_printf (_ ("The line ends in one load of %s."), w->value);
    }
}

static char *
says_coupling (const Words *w)
{
  switch (w->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own black level."));
    case BW_REASON_BLACK_WANDERS:
      return g_strdup_printf (_ ("This input is a.c. coupled without a clamp: black moves by up to "
                                 "%s as the picture changes."),
                              w->value);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Blanking stands at %s, near the edge of %s."), w->value,
                              w->allowed);
    case BW_REASON_NO_CLAMP:
      return g_strdup (_ ("The source is a.c. coupled and this input neither clamps nor restores "
                          "d.c.: black floats."));
    case BW_REASON_DC_OFFSET:
      return g_strdup_printf (_ ("Blanking stands at %s; this input stands %s."), w->value,
                              w->allowed);
    default:
      return g_strdup_printf (_ ("Black is found: %s; the source is %s coupled."),
                              bw_kind_label (&bw_clamps, w->c->input->clamp),
                              bw_kind_label (&bw_couplings, w->c->source->coupling));
    }
}

/* The narrowest of all links from the source to the glass; %NULL if none is known. Its lines are
 * counted over the height of the picture, as those of the rule: over an area of its own shape. */
static char *
first_limit (const Words *w)
{
  BwDetailCase what;
  BwDetail detail;

  bw_detail_case_from (&what, w->c->monitor, w->c->input, w->c->source, w->c->raster);
  gboolean other_shape = bw_ratio_compare (w->c->source->aspect, w->c->monitor->aspect) != 0;
  if (other_shape)
    bw_detail_case_set_area (&what, w->c->monitor, w->c->source->aspect);
  bw_detail_compute (&what, &detail);
  if (detail.limited_by >= BW_N_LINKS)
    return NULL;
  g_autofree char *tvl = figure (round (detail.limit_tvl[detail.limited_by]),
                                 BW_DIMENSION_TV_LINES, 4, w->mark);
  const char *link = bw_kind_label (&bw_detail_links, detail.limited_by);
  if (!other_shape)
    return g_strdup_printf (_ ("The first limit of detail is the %s: %s."), link, tvl);
  return g_strdup_printf (_ ("The first limit of detail is the %s: %s, with a picture of %d:%d set "
                             "inside the tube."),
                          link, tvl, (int) what.aspect.num, (int) what.aspect.den);
}

static char *
says_path (const Words *w)
{
  if (w->f->reason == BW_REASON_UNKNOWN)
    return g_strdup (_ ("Not judged: the source's highest frequency or the monitor's bandwidth is "
                        "not entered."));
  g_autofree char *needs = figure (w->f->low, BW_DIMENSION_FREQUENCY, 3, w->mark);
  g_autofree char *source = figure (round (w->f->extra[0]), BW_DIMENSION_TV_LINES, 4, w->mark);
  g_autofree char *passes = figure (round (w->f->extra[1]), BW_DIMENSION_TV_LINES, 4, w->mark);
  if (w->f->reason == BW_REASON_BELOW)
    return g_strdup_printf (_ ("The source carries detail up to %s (%s per picture height); the "
                               "bandwidth of %s passes %s: the picture is softer than the source."),
                            needs, source, w->value, passes);
  return g_strdup_printf (_ ("The bandwidth of %s (%s per picture height) passes the source's "
                             "detail up to %s (%s)."),
                          w->value, passes, needs, source);
}

static char *
says_bandwidth (const Words *w)
{
  g_autofree char *path = says_path (w);
  g_autofree char *first = first_limit (w);
  return first != NULL ? g_strdup_printf ("%s %s", path, first) : g_steal_pointer (&path);
}

static char *
says_mains_beat (const Words *w)
{
  g_autofree char *crossing = figure (w->f->extra[1], BW_DIMENSION_TIME, 3, w->mark);
  const char *way = w->f->extra[2] > 0 ? _ ("up") : _ ("down");

  switch (w->f->reason)
    {
    case BW_REASON_NO_BEAT:
      return g_strdup (_ ("Field rate and mains run together: a hum bar stands still."));
    case BW_REASON_FLICKER:
      return g_strdup_printf (_ ("Field rate and mains beat at %s: ripple or a stray mains field "
                                 "shows as flicker or wobble at that rate, not as a slow bar."),
                              w->value);
    default:
      return g_strdup_printf (_ ("Field rate and mains beat at %s: a hum bar drifts %s, across the "
                                 "height in %s."),
                              w->value, way, crossing);
    }
}

/* "12 lines and 36 columns" or "12 lines and 2.64 µs of each line" */
static char *
unseen (const Words *w)
{
  g_autofree char *lines = figure (round (w->f->extra[0]), BW_DIMENSION_LINES, 4, w->mark);
  if (w->c->figures->has_pixels)
    return g_strdup_printf (_ ("%s and %.0f columns"), lines, round (w->f->extra[1]));
  g_autofree char *width = figure (w->f->extra[1], BW_DIMENSION_TIME, 3, w->mark);
  return g_strdup_printf (_ ("%s and %s of each line"), lines, width);
}

static char *
says_visible_area (const Words *w)
{
  g_autofree char *hidden = unseen (w);
  g_autofree char *share = figure (w->f->remedy.value, BW_DIMENSION_FRACTION, 3, w->mark);
  const char *extent = w->f->extra[2] > 0 ? _ ("height") : _ ("width");

  switch (w->f->reason)
    {
    case BW_REASON_OTHER_ASPECT:
      return g_strdup_printf (_ ("The picture is meant for another aspect ratio than the tube's: "
                                 "circles come out as ovals until the %s is set to %s."),
                              extent, share);
    case BW_REASON_WIDE_SWITCH:
      return g_strdup_printf (_ ("Another aspect ratio than the tube's: with the set's switch the "
                                 "picture takes %s of the %s."),
                              share, extent);
    case BW_REASON_OVERSCANNED:
      return g_strdup_printf (_ ("%s of the picture fall outside the glass, on a source of which "
                                 "the whole picture matters."),
                              hidden);
    default:
      return w->f->value > 0
                 ? g_strdup_printf (_ ("%s of the picture fall outside the glass."), hidden)
                 : g_strdup (_ ("The whole picture is on the glass."));
    }
}

static char *
says_lead (const Words *w)
{
  const char *from = bw_kind_label (&bw_connectors, w->c->source->connector);
  g_autofree char *to = bw_kind_set_labels (&bw_connectors, w->c->input->connectors);

  switch (w->f->reason)
    {
    case BW_REASON_SAME_CONNECTOR:
      return g_strdup_printf (_ ("A lead with %s at both ends."), from);
    case BW_REASON_CROSSED:
      return g_strdup (_ ("The two 21-pin forms fit each other and differ in their pins: a straight "
                          "lead puts a supply on a ground. Never join them pin to pin."));
    default:
      return g_strdup_printf (_ ("A lead from %s to %s."), from, to);
    }
}

/* For any rule that is not judged because the set does not scan the source's raster. */
static char *
says_other_raster (const BwFit *fit)
{
  return g_strdup (fit->verdict == BW_VERDICT_NO
                       ? _ ("Not judged: the set does not lock to this raster.")
                       : _ ("Not judged for the source: the set sees the scan converter's output."));
}

static const SaysFunc says_funcs[BW_N_RULES] = {
  [BW_RULE_SIGNAL_KIND] = says_signal_kind,
  [BW_RULE_COLOUR_SYSTEM] = says_colour_system,
  [BW_RULE_LINE_RATE] = says_rate,
  [BW_RULE_FIELD_RATE] = says_rate,
  [BW_RULE_LINE_COUNT] = says_line_count,
  [BW_RULE_SYNC_KIND] = says_sync_kind,
  [BW_RULE_SYNC_POLARITY] = says_sync_polarity,
  [BW_RULE_SYNC_LEVEL] = says_level,
  [BW_RULE_SYNC_SHAPE] = says_sync_shape,
  [BW_RULE_LINE_BLANKING] = says_blanking,
  [BW_RULE_FIELD_BLANKING] = says_blanking,
  [BW_RULE_VIDEO_LEVEL] = says_level,
  [BW_RULE_SETUP] = says_setup,
  [BW_RULE_TERMINATION] = says_termination,
  [BW_RULE_COUPLING] = says_coupling,
  [BW_RULE_BANDWIDTH] = says_bandwidth,
  [BW_RULE_MAINS_BEAT] = says_mains_beat,
  [BW_RULE_VISIBLE_AREA] = says_visible_area,
  [BW_RULE_LEAD] = says_lead,
};

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
  g_autofree char *value = bw_finding_value (finding, mark);
  g_autofree char *allowed = bw_finding_allowed (finding, mark);
  Words words = { finding, fit, c, mark, value, allowed };
  if (finding->reason == BW_REASON_OTHER_RASTER)
    return says_other_raster (fit);
  return says_funcs[finding->rule](&words);
}
