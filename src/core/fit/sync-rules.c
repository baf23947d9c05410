/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include "core/circuit/level.h"
#include "core/circuit/preferred.h"

/* Rules on sync: its kind, polarity, level and shape, for the sync that @fit has chosen. */

/* The form in which sync arrives. Sync on Y and sync in luminance are one waveform on one wire: it
 * takes the name of the signal that the input sees. */
static BwSyncKind
arriving_sync (const BwCase *c, BwSyncKind sync)
{
  guint coded = BW_BIT (BW_SIGNAL_LUMA) | BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC);
  guint takes = c->input->signals;

  if (sync == BW_SYNC_ON_Y && (takes & coded) && !(takes & BW_BIT (BW_SIGNAL_COMPONENT)))
    return BW_SYNC_IN_VIDEO;
  if (sync == BW_SYNC_IN_VIDEO && bw_case_signal (c) == BW_SIGNAL_LUMA && !(takes & coded))
    return takes & BW_BIT (BW_SIGNAL_COMPONENT) ? BW_SYNC_ON_Y : BW_SYNC_ON_GREEN;
  return sync;
}

/* An input that strips sync from video strips it from composite sync alone as well. */
static gboolean
input_takes_sync (const BwInput *input, BwSyncKind sync)
{
  guint as_well = sync == BW_SYNC_COMPOSITE ? BW_BIT (BW_SYNC_IN_VIDEO) : 0;
  return (input->syncs & (BW_BIT (sync) | as_well)) != 0;
}

static BwRemedyKind
sync_cure (BwSyncKind from, guint takes)
{
  guint alone = BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_IN_VIDEO);
  if (from == BW_SYNC_SEPARATE && (takes & alone))
    return BW_REMEDY_SYNC_COMBINER;
  if (takes & (BW_BIT (BW_SYNC_SEPARATE) | alone))
    return BW_REMEDY_SYNC_SEPARATOR;
  return bw_sync_has_own_conductor (from) ? BW_REMEDY_SYNC_ADDER : BW_REMEDY_SYNC_MOVER;
}

/**
 * bw_rule_sync_kind:
 *
 * The input takes sync in the form that the source gives it.
 */
void
bw_rule_sync_kind (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  BwSyncKind arrives = arriving_sync (c, fit->sync);

  if (bw_finding_remade (f, c) || input_takes_sync (c->input, arrives))
    return;
  bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN,
                  sync_cure (arrives, c->input->syncs));
}

/* The set of polarities on the source's own sync conductors. */
static guint
source_polarities (const BwCase *c, BwSyncKind sync)
{
  switch ((BwSyncPolarity) c->source->sync_polarity)
    {
    case BW_SYNC_POLARITY_NEGATIVE:
      return BW_BIT (BW_POLARITY_NEGATIVE);
    case BW_SYNC_POLARITY_POSITIVE:
      return BW_BIT (BW_POLARITY_POSITIVE);
    case BW_SYNC_POLARITY_STANDARD:
    case BW_N_SYNC_POLARITIES:
    default:
      if (sync == BW_SYNC_COMPOSITE)
        return BW_BIT (BW_POLARITY_NEGATIVE);
      return BW_BIT (c->raster->h_polarity) | BW_BIT (c->raster->v_polarity);
    }
}

/**
 * bw_rule_sync_polarity:
 *
 * Sync on its own conductors has a polarity that the input takes. In video it is negative by
 * standard. extra[0]: the set of polarities that the source gives.
 */
void
bw_rule_sync_polarity (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  guint given = source_polarities (c, fit->sync);

  f->extra[0] = given;
  if (bw_finding_remade (f, c))
    return;
  if (!bw_sync_has_own_conductor (fit->sync))
    f->reason = BW_REASON_NOT_NEEDED;
  else if (given & ~c->input->polarities)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_INVERTER);
}

/* The sync at the input's terminals when the conductor works into @load_ohm. */
static double
sync_at_load (const BwCase *c, gboolean own, double load_ohm)
{
  const BwSource *source = c->source;
  if (own)
    return bw_level_at_load (source->sync_v, source->sync_load, source->sync_ohm, load_ohm);
  return bw_level_at_load (source->sync_v, BW_LOAD_75_OHM, source->source_ohm, load_ohm);
}

/* An input of more than this is taken as high impedance: a series resistor into it would be so
 * large that the cable's capacitance smears the edges (common practice, no source). */
#define HIGH_IMPEDANCE_OHM 1e3

/* The load after the cure that @remedy stands for. */
static double
cured_load_ohm (const BwCase *c, BwRemedyKind remedy)
{
  return remedy == BW_REMEDY_SWITCH_OFF ? c->input->input_ohm : 75;
}

static void
set_series_resistor (const BwCase *c, BwFinding *f, double wanted_v)
{
  double load_ohm = f->extra[1];
  double open_v = bw_level_at_load (c->source->sync_v, c->source->sync_load, c->source->sync_ohm,
                                    1e15); /* without load */

  double terminated_ohm = bw_series_resistor_ohm (open_v, c->source->sync_ohm, 75, wanted_v);

  f->remedy.kind = BW_REMEDY_SERIES_RESISTOR;
  f->extra[2] = load_ohm > HIGH_IMPEDANCE_OHM && terminated_ohm > 0;
  f->remedy.value = f->extra[2] > 0 ? terminated_ohm
                                    : bw_series_resistor_ohm (open_v, c->source->sync_ohm,
                                                              load_ohm, wanted_v);
}

/* What cures a level that is outside, termination aside. */
static void
cure_sync_level (const BwCase *c, BwFinding *f, gboolean own)
{
  double wanted_v = bw_range_nominal ((BwRange){ f->low, f->high }, 0.3);
  gboolean below = f->reason == BW_REASON_BELOW;

  f->extra[0] = wanted_v;
  f->remedy.value = wanted_v / f->value;
  if (own && !below)
    set_series_resistor (c, f, wanted_v);
  else if (own)
    f->remedy.kind = BW_REMEDY_SYNC_AMPLIFIER;
  else
    f->remedy.kind = below ? BW_REMEDY_VIDEO_AMPLIFIER : BW_REMEDY_VIDEO_PAD;
}

/**
 * bw_rule_sync_level:
 *
 * The sync amplitude at the input's terminals, as it is terminated now, lies in what the input
 * takes. The remedy's value is the series resistor with the driver's own resistance taken off, or
 * the ratio of an attenuator or amplifier. extra[0]: the level that the remedy aims at; extra[1]:
 * the load; extra[2]: 1 if the series resistor needs a 75 Ω terminator besides.
 */
void
bw_rule_sync_level (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  gboolean own = bw_sync_has_own_conductor (fit->sync);
  double load_ohm = bw_input_load_ohm (c->input, own);
  BwRange takes = own && c->input->own_sync_v.n > 0 ? c->input->own_sync_v.at[0]
                                                   : c->input->sync_v.at[0];
  BwRemedyKind termination = bw_case_termination_cure (c, own);

  if (bw_finding_remade (f, c))
    return;
  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, sync_at_load (c, own, load_ohm));
  bw_finding_within (f, takes, c->limits->level);
  f->extra[1] = load_ohm;
  if (f->severity != BW_SEVERITY_CURABLE)
    return;

  double cured_v = sync_at_load (c, own, cured_load_ohm (c, termination));
  if (termination != BW_REMEDY_NONE && cured_v >= takes.low && cured_v <= takes.high)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CURED_BY_TERMINATION, termination);
  else
    cure_sync_level (c, f, own);
}

/**
 * bw_rule_sync_shape:
 *
 * The input takes bi-level or tri-level sync as the raster has it. Separate H and V are always
 * bi-level. extra[0]: the BwSyncShape that the source gives.
 */
void
bw_rule_sync_shape (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  guint shape = fit->sync == BW_SYNC_SEPARATE ? BW_SHAPE_BILEVEL : c->raster->sync_shape;

  f->extra[0] = shape;
  if (bw_finding_remade (f, c))
    return;
  if (!(c->input->shapes & BW_BIT (shape)))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_RESHAPER);
}
