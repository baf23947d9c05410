/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include "core/bench/match.h"

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

  if (bw_finding_remade (f, c) || bw_input_takes_sync (c->input, arrives))
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

static void
judge_own_sync (const BwCase *c, BwFinding *f)
{
  BwSyncMatch match;

  bw_match_own_sync (c->source, c->input, &match);
  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, match.level_v);
  bw_finding_within (f, match.takes, c->limits->level);
  f->extra[1] = match.load_ohm;
  if (f->severity != BW_SEVERITY_CURABLE)
    return;

  switch (match.need)
    {
    case BW_NEED_LOAD:
      bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CURED_BY_TERMINATION,
                      bw_load_change_remedy (match.way[0].change, match.load_ohm));
      return;
    case BW_NEED_RESISTOR:
      f->remedy.kind = BW_REMEDY_SERIES_RESISTOR;
      f->remedy.value = match.way[0].attenuator.exact_ohm;
      f->extra[2] = match.way[0].change != BW_LOAD_AS_IT_IS;
      break;
    case BW_NEED_NOTHING:
    case BW_NEED_PAD:
    case BW_NEED_AMPLIFIER:
    default:
      f->remedy.kind = BW_REMEDY_SYNC_AMPLIFIER;
      f->remedy.value = match.gain;
      break;
    }
  f->extra[0] = match.aim_v;
}

/**
 * bw_rule_sync_level:
 *
 * The sync amplitude at the input's terminals, as it is terminated now, lies in what the input
 * takes. The remedy's value is the series resistor with the driver's own resistance taken off, or
 * the ratio of an attenuator or amplifier. extra[0]: the level that the remedy aims at; extra[1]:
 * the load; extra[2]: 1 if the series resistor needs another load besides.
 */
void
bw_rule_sync_level (const BwCase *c, const BwFit *fit, BwFinding *f)
{
  BwPictureMatch match;

  if (bw_finding_remade (f, c))
    return;
  if (bw_sync_has_own_conductor (fit->sync))
    {
      judge_own_sync (c, f);
      return;
    }
  bw_match_picture (c->source, c->input, fit->sync, &match);
  bw_finding_level (f, &match, &match.sync, c->limits->level);
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
