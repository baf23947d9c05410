/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/load.h"

/* Rules on how the video conductor ends at the input: its load, and its coupling for d.c. */

/**
 * bw_rule_termination_judge:
 *
 * The video conductor ends in one 75 Ω load. At an input of another resistance the remedy is a part
 * that stands there.
 */
void
bw_rule_termination_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  BwPictureMatch match;

  if (!BW_NEEDS_SOURCE (f, c, source_ohm) || !bw_finding_needs_load (f, c, FALSE))
    return;
  bw_match_picture (c->source, c->input, sync, &match);
  double load_ohm = bw_input_line_end_ohm (c->input);

  bw_finding_measure (f, BW_DIMENSION_RESISTANCE, load_ohm);
  f->has_low = f->has_high = TRUE;
  f->low = BW_ONE_LOAD_MIN_OHM;
  f->high = BW_ONE_LOAD_MAX_OHM;
  f->margin = MIN (load_ohm / f->low - 1, 1 - load_ohm / f->high);
  f->as.termination = (BwTerminationFigures){ .source_ohm = c->source->source_ohm,
                                              .level_ratio = match.load_ratio,
                                              .return_loss_db
                                              = bw_return_loss_db (load_ohm, BW_VIDEO_OHM) };
  if (bw_load_is_one (load_ohm))
    return;
  if (match.part != BW_END_NO_PART && match.change == BW_LOAD_AS_IT_IS)
    {
      bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_OTHER_RESISTANCE, BW_REMEDY_NONE);
      f->remedy = bw_picture_end_remedy (&match);
    }
  else if (match.made_open)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_MADE_OPEN, BW_REMEDY_NONE);
  else if (match.voltage_driven)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_VOLTAGE_DRIVEN, BW_REMEDY_NONE);
  else
    bw_finding_set (f, BW_SEVERITY_CURABLE,
                    load_ohm > f->high ? BW_REASON_UNTERMINATED : BW_REASON_DOUBLE_TERMINATED,
                    bw_load_change_remedy (match.change, load_ohm));
}

/* At an input of neither 75 Ω nor high impedance: what the part there makes of it, and why it is that
 * one: a resistor loses less than a pad, which matches the input's side as well. */
static char *
other_resistance_words (const BwSaying *s, const char *ratio)
{
  g_autofree char *back = bw_saying_decibel (s, s->f->as.termination.return_loss_db);
  g_autofree char *says
      = g_strdup_printf (_ ("The line ends in %1$s, not 75 Ω: a return loss of %2$s, so that edges "
                            "echo, and levels at %3$s of what they should be."),
                         s->value, back, ratio);
  BwNetwork pad;
  double pad_ohm = s->f->value, loss_db = 0;

  if (s->f->remedy.kind == BW_REMEDY_MINIMUM_LOSS_PAD
      || !bw_pad_minimum_loss (1, BW_VIDEO_OHM, pad_ohm, &pad, &loss_db, NULL))
    return g_steal_pointer (&says);
  g_autofree char *loss = bw_saying_decibel (s, loss_db);
  return g_strdup_printf (_ ("%1$s One resistor mends that; a minimum-loss pad would match the input "
                             "as well, and lose %2$s of power."),
                          says, loss);
}

char *
bw_rule_termination_says (const BwSaying *s)
{
  const BwTerminationFigures *figures = &s->f->as.termination;
  g_autofree char *source
      = bw_saying_figure (s, figures->source_ohm, BW_DIMENSION_RESISTANCE, 3);
  g_autofree char *ratio = bw_saying_figure (s, figures->level_ratio, BW_DIMENSION_FRACTION, 3);

  switch (s->f->reason)
    {
    case BW_REASON_UNTERMINATED:
      return g_strdup_printf (_ ("The line ends in %1$s: not terminated. Levels stand at %2$s of "
                                 "what they should be, and edges echo."),
                              s->value, ratio);
    case BW_REASON_DOUBLE_TERMINATED:
      return g_strdup_printf (_ ("The line ends in %1$s: terminated more than once. Levels fall to "
                                 "%2$s of what they should be."),
                              s->value, ratio);
    case BW_REASON_OTHER_RESISTANCE:
      return other_resistance_words (s, ratio);
    case BW_REASON_MADE_OPEN:
      return g_strdup_printf (_ ("The line ends in %1$s, and this input is made for the level that "
                                 "stands there: %2$s of that across 75 Ω. Keep the lead short; a long "
                                 "one echoes."),
                              s->value, ratio);
    case BW_REASON_VOLTAGE_DRIVEN:
      return g_strdup_printf (_ ("The line ends in %1$s. The source drives it as a voltage (%2$s "
                                 "of its own), so the level holds, but a long lead echoes."),
                              s->value, source);
    default:
      return g_strdup_printf (_ ("The line ends in one load of %s."), s->value);
    }
}

static void
judge_dc (const BwCase *c, BwFinding *f)
{
  const BwBands *stands = &c->input->dc_v;
  gboolean blocked = c->source->coupling == BW_COUPLING_AC;
  double dc_v = blocked ? 0 : c->source->dc_v;

  if (!blocked && !BW_NEEDS_SOURCE (f, c, dc_v))
    return;
  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, dc_v);
  if (stands->n == 0)
    return;
  bw_finding_within (f, stands->at[0], c->limits->level);
  if (f->severity == BW_SEVERITY_CURABLE)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_DC_OFFSET,
                    bw_match_needs_capacitor (c->source, c->input) ? BW_REMEDY_COUPLING_CAPACITOR
                                                                   : BW_REMEDY_CLAMP);
}

static void
judge_wander (const BwCase *c, BwFinding *f)
{
  const BwRasterFigures *figures = c->figures;

  if (!bw_finding_needs_raster (f, c) || !BW_NEEDS_SOURCE (f, c, video_v))
    return;
  double picture_share = figures->h_active_s / figures->line_period_s
                         * figures->active_lines_frame / figures->lines_per_frame;
  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, c->source->video_v * picture_share);
  bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BLACK_WANDERS, BW_REMEDY_NONE);
}

/**
 * bw_rule_coupling_judge:
 *
 * The input finds black whatever the coupling of the source. Without a clamp, an a.c. coupled
 * path moves black between an all-black and an all-white picture by the video amplitude times
 * the share of time that is picture (the mean of the waveform is zero behind a capacitor). It is
 * the same whether the capacitor is the source's or the input's.
 */
void
bw_rule_coupling_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!BW_NEEDS_INPUT (f, c, clamp) || !BW_NEEDS_SOURCE (f, c, coupling))
    return;
  switch ((BwClamp) c->input->clamp)
    {
    case BW_CLAMP_NONE_AC:
      judge_wander (c, f);
      break;
    case BW_CLAMP_NONE_DC:
      if (c->source->coupling == BW_COUPLING_AC)
        judge_wander (c, f);
      else
        judge_dc (c, f);
      break;
    case BW_CLAMP_BACK_PORCH:
    case BW_N_CLAMPS:
    default:
      judge_dc (c, f);
      break;
    }
}

char *
bw_rule_coupling_says (const BwSaying *s)
{
  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own black level."));
    case BW_REASON_BLACK_WANDERS:
      return s->c->input->clamp == BW_CLAMP_NONE_AC
                 ? g_strdup_printf (_ ("This input is a.c. coupled without a clamp: black moves by up "
                                       "to %s as the picture changes."),
                                    s->value)
                 : g_strdup_printf (_ ("The source is a.c. coupled and this input does not clamp: "
                                       "black moves by up to %s as the picture changes."),
                                    s->value);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Blanking stands at %1$s, near the edge of %2$s."), s->value,
                              s->allowed);
    case BW_REASON_DC_OFFSET:
      return g_strdup_printf (_ ("Blanking stands at %1$s; this input takes %2$s."), s->value,
                              s->allowed);
    default:
      return g_strdup_printf (_ ("Black is found: %1$s; the source is %2$s coupled."),
                              bw_kind_label (&bw_clamps, s->c->input->clamp),
                              bw_kind_label (&bw_couplings, s->c->source->coupling));
    }
}
