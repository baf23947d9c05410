/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include "core/raster/colour-system.h"

/* Rules on the picture signal: its kind, colour, level, black, termination, detail and lead. */

/**
 * bw_rule_signal_kind:
 *
 * The input takes the source's kind of signal, or something turns the one into the other.
 */
void
bw_rule_signal_kind (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  BwSignal signal = bw_case_signal (c);
  BwRemedyKind converter = bw_case_signal_converter (c);

  if (c->input->signals & BW_BIT (c->source->signal))
    return;
  if (converter != BW_REMEDY_NONE)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, converter);
  else if (signal == BW_SIGNAL_LUMA)
    f->reason = BW_REASON_MONOCHROME;
  else if (signal == BW_SIGNAL_COMPOSITE)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_SUBCARRIER_SEEN, BW_REMEDY_NONE);
  else if (c->input->signals == BW_BIT (BW_SIGNAL_LUMA))
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_COLOUR_LOST, BW_REMEDY_NONE);
  else
    bw_finding_set (f, BW_SEVERITY_FATAL, BW_REASON_OUT_OF_REACH, BW_REMEDY_NONE);
}

/**
 * bw_rule_colour_system:
 *
 * The input's decoder handles the colour system of a composite or Y/C source. RGB and component
 * need no decoder; a converter in the way makes its own. The value is the subcarrier.
 */
void
bw_rule_colour_system (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  guint coded = BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC);
  BwColourSystem system = c->source->system;

  if (!(coded & BW_BIT (c->source->signal)) || !(c->input->signals & coded))
    {
      f->reason = BW_REASON_NOT_NEEDED;
      return;
    }
  if (system == BW_SYSTEM_NONE)
    {
      f->reason = BW_REASON_MONOCHROME;
      return;
    }
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY,
                      bw_ratio_to_double (bw_system_facts (system)->subcarrier_hz));
  if (c->input->systems == BW_BIT (BW_SYSTEM_NONE))
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_SUBCARRIER_SEEN, BW_REMEDY_NONE);
  else if (!(c->input->systems & bw_systems_decoded_alike (system)))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_COLOUR_LOST, BW_REMEDY_COLOUR_TRANSCODER);
}

/**
 * bw_rule_video_level:
 *
 * The black-to-white amplitude at the input's terminals, as it is terminated now, lies in what
 * the input takes. The rest is as bw_finding_level() says.
 */
void
bw_rule_video_level (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  BwPictureMatch match;

  if (bw_finding_remade (f, c))
    return;
  bw_match_picture (c->source, c->input, fit->sync, &match);
  bw_finding_level (f, &match, &match.video, c->limits->level);
}

/**
 * bw_rule_setup:
 *
 * Black stands where the input can be set to expect it. extra[0]: how far off it is, in IRE,
 * positive where black comes out lifted.
 */
void
bw_rule_setup (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  const BwBands *expected = &c->input->setup_ire;
  double setup_ire = c->source->setup_ire;
  double off_ire = INFINITY;

  if (bw_finding_remade (f, c))
    return;
  bw_finding_measure (f, BW_DIMENSION_IRE, setup_ire);
  if (expected->n == 0)
    return;
  for (guint i = 0; i < expected->n; i++)
    {
      BwRange band = expected->at[i];
      double nearest_ire = CLAMP (setup_ire, band.low, band.high);
      if (fabs (setup_ire - nearest_ire) < fabs (off_ire))
        {
          off_ire = setup_ire - nearest_ire;
          f->low = band.low;
          f->high = band.high;
        }
    }
  f->has_low = f->has_high = TRUE;
  f->extra[0] = off_ire;
  if (fabs (off_ire) > c->limits->setup_ire)
    bw_finding_set (f, BW_SEVERITY_CURABLE, off_ire > 0 ? BW_REASON_ABOVE : BW_REASON_BELOW,
                    BW_REMEDY_BLACK_LEVEL);
  else if (fabs (off_ire) > 0)
    bw_finding_set (f, BW_SEVERITY_TIGHT, off_ire > 0 ? BW_REASON_ABOVE : BW_REASON_BELOW,
                    BW_REMEDY_NONE);
}

/**
 * bw_rule_termination:
 *
 * The video conductor ends in one 75 Ω load. extra[0]: the source's resistance; extra[1]: what
 * the level becomes, as a ratio of the published one.
 */
void
bw_rule_termination (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  BwPictureMatch match;
  bw_match_picture (c->source, c->input, fit->sync, &match);
  double load_ohm = match.load_ohm;

  bw_finding_measure (f, BW_DIMENSION_RESISTANCE, load_ohm);
  f->has_low = f->has_high = TRUE;
  f->low = BW_ONE_LOAD_MIN_OHM;
  f->high = BW_ONE_LOAD_MAX_OHM;
  f->margin = MIN (load_ohm / f->low - 1, 1 - load_ohm / f->high);
  f->extra[0] = c->source->source_ohm;
  f->extra[1] = match.load_ratio;
  if (match.change == BW_LOAD_AS_IT_IS)
    return;
  if (match.voltage_driven)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_VOLTAGE_DRIVEN, BW_REMEDY_NONE);
  else
    bw_finding_set (f, BW_SEVERITY_CURABLE,
                    load_ohm > f->high ? BW_REASON_UNTERMINATED : BW_REASON_DOUBLE_TERMINATED,
                    bw_load_change_remedy (match.change, load_ohm));
}

static void
judge_dc (const BwCase *c, BwFinding *f, BwRemedyKind remedy)
{
  const BwBands *stands = &c->input->dc_v;
  double dc_v = c->source->dc_v;

  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, dc_v);
  if (stands->n == 0)
    return;
  bw_finding_within (f, stands->at[0], c->limits->level);
  if (f->severity == BW_SEVERITY_CURABLE)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_DC_OFFSET, remedy);
}

/**
 * bw_rule_coupling:
 *
 * The input finds black whatever the coupling of the source. Without a clamp, an a.c. coupled
 * path moves black between an all-black and an all-white picture by the video amplitude times
 * the share of time that is picture (the mean of the waveform is zero behind a capacitor).
 */
void
bw_rule_coupling (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  const BwRasterFigures *figures = c->figures;
  double picture_share = figures->h_active_s / figures->line_period_s
                         * figures->active_lines_frame / figures->lines_per_frame;

  if (bw_finding_remade (f, c))
    return;
  switch ((BwClamp) c->input->clamp)
    {
    case BW_CLAMP_NONE_AC:
      bw_finding_measure (f, BW_DIMENSION_VOLTAGE, c->source->video_v * picture_share);
      bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BLACK_WANDERS, BW_REMEDY_NONE);
      break;
    case BW_CLAMP_NONE_DC:
      if (c->source->coupling == BW_COUPLING_AC)
        bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NO_CLAMP, BW_REMEDY_CLAMP);
      else
        judge_dc (c, f, BW_REMEDY_CLAMP);
      break;
    case BW_CLAMP_BACK_PORCH:
    case BW_N_CLAMPS:
    default:
      judge_dc (c, f, BW_REMEDY_COUPLING_CAPACITOR);
      break;
    }
}

/* Lines per picture height that a bandwidth carries: 2 · B · T / aspect. */
static double
tv_lines (const BwCase *c, double bandwidth_hz)
{
  return 2 * bandwidth_hz * c->figures->h_active_s / bw_ratio_to_double (c->source->aspect);
}

/**
 * bw_rule_bandwidth:
 *
 * The input passes the source's finest detail. Too little makes the picture soft; it still shows.
 * The value is the bandwidth, the limit is the source's highest frequency. extra[0]: TV lines per
 * picture height of the source; extra[1]: those that the bandwidth passes (2·B·T/aspect).
 */
void
bw_rule_bandwidth (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  double detail_hz = bw_case_source_detail_hz (c);
  double bandwidth_hz = bw_input_bandwidth_hz (c->input, c->monitor);

  if (detail_hz <= 0 || bandwidth_hz <= 0)
    {
      f->reason = BW_REASON_UNKNOWN;
      return;
    }
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY, bandwidth_hz);
  f->has_low = TRUE;
  f->low = detail_hz;
  f->margin = bw_margin (bandwidth_hz - detail_hz, detail_hz);
  f->extra[0] = tv_lines (c, detail_hz);
  f->extra[1] = tv_lines (c, bandwidth_hz);
  if (f->margin < 0)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BELOW, BW_REMEDY_NONE);
}

/**
 * bw_rule_lead:
 *
 * Which lead joins the two connectors. The two 21-pin forms fit each other mechanically and must
 * never be joined pin to pin.
 */
void
bw_rule_lead (const BwCase *c, const BwFit *fit G_GNUC_UNUSED, BwFinding *f)
{
  guint crossing = BW_BIT (BW_CONNECTOR_PERITELEVISION) | BW_BIT (BW_CONNECTOR_JAPANESE_21);
  guint from = BW_BIT (c->source->connector);
  guint to = c->input->connectors;

  if (to & from)
    f->reason = BW_REASON_SAME_CONNECTOR;
  else if ((from & crossing) && (to & crossing))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CROSSED, BW_REMEDY_CROSSED_LEAD);
  else
    f->reason = BW_REASON_ADAPTING_LEAD;
}
