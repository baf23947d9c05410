/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>
#include <string.h>

#include "core/raster/colour-system.h"

/* What scan converters commonly take (common practice, no source). A raster outside cannot be
 * helped by one. */
#define CONVERTER_LINE_RATE_MIN_HZ 15e3
#define CONVERTER_LINE_RATE_MAX_HZ 82e3
#define CONVERTER_FIELD_RATE_MIN_HZ 47
#define CONVERTER_FIELD_RATE_MAX_HZ 86

/* Encoders to composite and Y/C need a broadcast line rate within this share (common practice, no
 * source). */
#define ENCODER_TOLERANCE 0.01

/**
 * bw_finding_clear:
 *
 * Makes of @f a finding of @rule that has no figures and holds, for @reason.
 */
void
bw_finding_clear (BwFinding *f, BwRule rule, BwReason reason)
{
  memset (f, 0, sizeof *f); /* the figures of every rule are zero with it */
  f->rule = rule;
  f->severity = BW_SEVERITY_OK;
  f->reason = reason;
  f->remedy.kind = BW_REMEDY_NONE;
}

/**
 * bw_finding_set:
 *
 * Gives @f its outcome.
 */
void
bw_finding_set (BwFinding *f, BwSeverity severity, BwReason reason, BwRemedyKind remedy)
{
  f->severity = severity;
  f->reason = reason;
  f->remedy.kind = remedy;
}

/**
 * bw_finding_lack:
 * @lack: the figure that would decide
 *
 * Makes of @f a finding that is not judged, for want of @lack.
 */
void
bw_finding_lack (BwFinding *f, BwLack lack)
{
  bw_finding_clear (f, f->rule, BW_REASON_UNKNOWN);
  f->severity = BW_SEVERITY_UNJUDGED;
  f->lacks = lack;
}

/**
 * bw_finding_needs:
 * @lacking: whether a figure is lacking, which @f then names already
 *
 * Returns: whether none is; else @f is not judged
 */
gboolean
bw_finding_needs (BwFinding *f, gboolean lacking)
{
  if (lacking)
    bw_finding_lack (f, f->lacks);
  return !lacking;
}

/**
 * bw_finding_needs_raster:
 *
 * Returns: whether it is known which raster the source gives; if not, @f says that it lacks it
 */
gboolean
bw_finding_needs_raster (BwFinding *f, const BwCase *c)
{
  if (c->raster == NULL)
    bw_finding_lack (f, (BwLack){ bw_field_find (&bw_source_fields, "raster"), BW_OWNER_SOURCE });
  return c->raster != NULL;
}

/**
 * bw_finding_needs_load:
 * @own_sync: of the conductor that carries sync alone
 *
 * Returns: whether it is known what the conductor ends in; if not, @f says what it lacks
 */
gboolean
bw_finding_needs_load (BwFinding *f, const BwCase *c, gboolean own_sync)
{
  return bw_finding_needs (f, bw_lacks_load (c->input, own_sync, &f->lacks));
}

/**
 * bw_finding_measure:
 *
 * Gives @f its measured value, in the base unit of @dimension.
 */
void
bw_finding_measure (BwFinding *f, BwDimension dimension, double value)
{
  f->has_value = TRUE;
  f->dimension = dimension;
  f->value = value;
}

/* Rounding in the last place must not push a value that lies on a limit over it. */
#define ON_THE_LIMIT 1e-9

/**
 * bw_margin:
 * @distance: from the value to @limit, negative beyond it
 *
 * Returns: @distance as a share of @limit; of a limit of zero, a whole
 */
double
bw_margin (double distance, double limit)
{
  double margin = fabs (limit) > 0 ? distance / fabs (limit) : distance < 0 ? -1 : 1;
  return margin < 0 && margin > -ON_THE_LIMIT ? 0 : margin;
}

/**
 * bw_finding_within:
 * @f: has its value
 * @allowed: both ends are limits
 * @threshold: share of a limit within which a value that holds is tight
 *
 * Compares the value with both limits: sets limits, margin, severity and reason. A value outside
 * becomes curable, for the rule to refine.
 */
void
bw_finding_within (BwFinding *f, BwRange allowed, double threshold)
{
  double above_low = bw_margin (f->value - allowed.low, allowed.low);
  double below_high = bw_margin (allowed.high - f->value, allowed.high);

  f->has_low = f->has_high = TRUE;
  f->low = allowed.low;
  f->high = allowed.high;
  f->margin = MIN (above_low, below_high);
  if (f->margin < 0)
    bw_finding_set (f, BW_SEVERITY_CURABLE,
                    f->value < allowed.low ? BW_REASON_BELOW : BW_REASON_ABOVE, BW_REMEDY_NONE);
  else if (f->margin < threshold)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_NEAR_EDGE, BW_REMEDY_NONE);
}

/**
 * bw_nearest_band:
 *
 * Returns: the band that @value lies in, else the nearest one
 */
BwRange
bw_nearest_band (const BwBands *bands, double value)
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

static gboolean
converter_takes (const BwRasterFigures *figures)
{
  return figures != NULL && figures->line_rate_hz >= CONVERTER_LINE_RATE_MIN_HZ
         && figures->line_rate_hz <= CONVERTER_LINE_RATE_MAX_HZ
         && figures->field_rate_hz >= CONVERTER_FIELD_RATE_MIN_HZ
         && figures->field_rate_hz <= CONVERTER_FIELD_RATE_MAX_HZ;
}

/**
 * bw_finding_scan_converter:
 * @reason: why the rule fails
 *
 * Sets a failure that a scan converter cures if it takes the source's raster, else a fatal one.
 */
void
bw_finding_scan_converter (BwFinding *f, const BwCase *c, BwReason reason)
{
  if (converter_takes (c->figures))
    bw_finding_set (f, BW_SEVERITY_CURABLE, reason, BW_REMEDY_SCAN_CONVERTER);
  else
    bw_finding_set (f, BW_SEVERITY_FATAL, BW_REASON_OUT_OF_REACH, BW_REMEDY_NONE);
}

/* Both want to know the raster; without it there is nothing that they take for certain. */
static gboolean
is_line_rate_of (BwColourSystem system, const BwRasterFigures *figures)
{
  double own_hz = bw_ratio_to_double (bw_system_facts (system)->line_rate_hz);
  return fabs (figures->line_rate_hz / own_hz - 1) <= ENCODER_TOLERANCE;
}

static gboolean
encoder_takes (const BwRasterFigures *figures)
{
  return figures != NULL
         && (is_line_rate_of (BW_SYSTEM_NTSC_M, figures)
             || is_line_rate_of (BW_SYSTEM_PAL_B, figures));
}

/* @takes: neither the source's own kind nor luminance alone */
static BwRemedyKind
rgb_or_component_cure (const BwCase *c, guint takes)
{
  gboolean rgb = c->source->signal == BW_SIGNAL_RGB;

  if (takes & (rgb ? BW_BIT (BW_SIGNAL_COMPONENT) : BW_BIT (BW_SIGNAL_RGB)))
    return BW_REMEDY_TRANSCODER;
  return encoder_takes (c->figures)     ? BW_REMEDY_ENCODER
         : converter_takes (c->figures) ? BW_REMEDY_SCAN_CONVERTER
                                        : BW_REMEDY_NONE;
}

/**
 * bw_case_line_rates:
 *
 * Returns: (transfer none): the bands of line rates that the input locks in
 */
const BwBands *
bw_case_line_rates (const BwCase *c)
{
  return c->input->line_rates_hz.n > 0 ? &c->input->line_rates_hz : &c->monitor->line_rates_hz;
}

/**
 * bw_case_signal:
 *
 * Returns: the kind of signal that the source gives in substance: composite without a subcarrier
 * is luminance with its sync
 */
BwSignal
bw_case_signal (const BwCase *c)
{
  if (c->source->signal == BW_SIGNAL_COMPOSITE && c->source->system == BW_SYSTEM_NONE)
    return BW_SIGNAL_LUMA;
  return c->source->signal;
}

/**
 * bw_case_signal_converter:
 *
 * Returns: what turns the source's signal kind into one that the input takes; %BW_REMEDY_NONE if
 * it is taken as it is, if nothing does (the rule on the signal kind tells the two apart), or if it
 * is not known what is given or taken
 */
BwRemedyKind
bw_case_signal_converter (const BwCase *c)
{
  guint takes = c->input->signals;

  if (takes == 0 || c->source->signal >= BW_N_SIGNALS || (takes & BW_BIT (c->source->signal)))
    return BW_REMEDY_NONE;
  switch (bw_case_signal (c))
    {
    case BW_SIGNAL_COMPONENT:
    case BW_SIGNAL_RGB:
      if (takes == BW_BIT (BW_SIGNAL_LUMA))
        return BW_REMEDY_NONE; /* Y or green alone is connected */
      return rgb_or_component_cure (c, takes);
    case BW_SIGNAL_YC:
      if (takes & BW_BIT (BW_SIGNAL_COMPOSITE))
        return BW_REMEDY_YC_MIXER;
      return takes & BW_BIT (BW_SIGNAL_LUMA) ? BW_REMEDY_NONE : BW_REMEDY_DECODER;
    case BW_SIGNAL_COMPOSITE:
      if (takes & BW_BIT (BW_SIGNAL_YC))
        return BW_REMEDY_YC_SEPARATOR;
      return takes & BW_BIT (BW_SIGNAL_LUMA) ? BW_REMEDY_NONE : BW_REMEDY_DECODER;
    case BW_SIGNAL_LUMA:
    case BW_N_SIGNALS:
    default:
      return takes == BW_BIT (BW_SIGNAL_RGB) ? BW_REMEDY_DISTRIBUTOR : BW_REMEDY_NONE;
    }
}

/**
 * bw_load_change_remedy:
 * @load_ohm: what the conductor ends in before @change
 *
 * Returns: the remedy that @change is
 */
BwRemedyKind
bw_load_change_remedy (BwLoadChange change, double load_ohm)
{
  switch (change)
    {
    case BW_LOAD_SWITCH:
      return load_ohm > BW_ONE_LOAD_MAX_OHM ? BW_REMEDY_SWITCH_ON : BW_REMEDY_SWITCH_OFF;
    case BW_LOAD_TERMINATOR:
      return BW_REMEDY_TERMINATOR;
    case BW_LOAD_UNLOAD:
      return BW_REMEDY_UNLOAD_LOOP;
    case BW_LOAD_AS_IT_IS:
    default:
      return BW_REMEDY_NONE;
    }
}

/**
 * bw_picture_end_remedy:
 *
 * Returns: the remedy that makes a line of @match end as it should: a change of the load, or a part
 *   at the input with the value of its resistor; of a pad, the ratio of the level behind it to that
 *   without it
 */
BwRemedy
bw_picture_end_remedy (const BwPictureMatch *match)
{
  g_assert (match != NULL);
  BwNetwork end;

  if (match->part == BW_END_NO_PART
      || !bw_match_end (match->part, 1, BW_VIDEO_OHM, match->changed_ohm, &end))
    return (BwRemedy){ bw_load_change_remedy (match->change, match->load_ohm), 0 };
  if (match->part == BW_END_MINIMUM_LOSS)
    return (BwRemedy){ BW_REMEDY_MINIMUM_LOSS_PAD, match->part_ratio };
  return (BwRemedy){ match->part == BW_END_SERIES ? BW_REMEDY_MATCHING_RESISTOR
                                                  : BW_REMEDY_SHUNT_RESISTOR,
                     end.at[0].ohm };
}

/* Luma of component video of 525 and 625 lines is sampled at 13.5 MHz (ITU-R BT.601). */
#define COMPONENT_DETAIL_HZ (13.5e6 / 2)

/**
 * bw_case_source_detail_hz:
 *
 * Returns: the highest video frequency of the source: as entered, else the lesser of half the
 * rate of distinct samples and the bandwidth of its colour system; of component video in a
 * broadcast raster without samples, half of 13.5 MHz; zero if none of these is known
 */
double
bw_case_source_detail_hz (const BwCase *c)
{
  double detail_hz = 0;

  g_return_val_if_fail (c != NULL && c->source != NULL, 0);
  g_return_val_if_fail ((c->raster == NULL) == (c->figures == NULL), 0);

  gboolean coded = c->source->signal == BW_SIGNAL_COMPOSITE || c->source->signal == BW_SIGNAL_YC;
  if (c->source->detail_hz > 0)
    return c->source->detail_hz;
  if (c->raster == NULL || c->source->signal >= BW_N_SIGNALS
      || (coded && c->source->system >= BW_N_SYSTEMS))
    return 0;
  if (c->figures->has_pixels)
    detail_hz = c->figures->pixel_clock_hz / c->raster->pixel_repeat / 2;
  else if (c->source->signal == BW_SIGNAL_COMPONENT && encoder_takes (c->figures))
    detail_hz = COMPONENT_DETAIL_HZ;
  if (coded && c->source->system != BW_SYSTEM_NONE)
    {
      double system_hz = bw_system_facts (c->source->system)->luma_bandwidth_hz;
      detail_hz = detail_hz > 0 ? MIN (detail_hz, system_hz) : system_hz;
    }
  return detail_hz;
}
