/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <glib/gi18n-lib.h>

#include "mains.h"

/* Rules on what can do harm: the supply of the set, and what an output has to drive. */

/* Whether a figure of the supply at the bench is known; if not, @f names it. */
static gboolean
needs_supply (BwFinding *f, double known, const char *key)
{
  if (known > 0)
    return TRUE;
  bw_finding_lack (f, (BwLack){ bw_field_find (&bw_sheet_fields, key), BW_OWNER_SHEET });
  return FALSE;
}

/* Whether all four figures of the mains are known; if not, @f names the first that is not. */
static gboolean
knows_mains (BwFinding *f, const BwCase *c)
{
  return BW_NEEDS_MONITOR (f, c, mains_v) && needs_supply (f, c->supply_v, "supply_voltage")
         && BW_NEEDS_MONITOR (f, c, mains_hz)
         && needs_supply (f, c->supply_hz, "supply_frequency");
}

/**
 * bw_rule_mains_judge:
 *
 * The supply at the bench lies inside the rating plate, in volts and in hertz (bw_mains_judge()). What
 * is not known of the one does not keep the other from being a fault.
 */
void
bw_rule_mains_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  BwMains mains = { 0 };

  if (c->mains_met)
    return;
  gboolean judged = bw_mains_judge (c->monitor, c->supply_v, c->supply_hz, &mains);
  if ((!judged || MAX (mains.voltage, mains.frequency) <= BW_SEVERITY_UNJUDGED)
      && !knows_mains (f, c))
    return;
  gboolean of_frequency = mains.frequency > mains.voltage;
  BwRange rated = of_frequency ? c->monitor->mains_hz.at[0] : c->monitor->mains_v.at[0];
  BwSeverity worst = MAX (mains.voltage, mains.frequency);
  bw_finding_measure (f, of_frequency ? BW_DIMENSION_FREQUENCY : BW_DIMENSION_VOLTAGE,
                      of_frequency ? c->supply_hz : c->supply_v);
  f->low = rated.low;
  f->high = rated.high;
  f->has_low = f->has_high = TRUE;
  f->margin = MIN (f->value / f->low - 1, 1 - f->value / f->high);
  f->danger = bw_mains_is_danger (&mains);
  if (worst == BW_SEVERITY_OK)
    return;
  bw_finding_set (f, worst, f->value > f->high ? BW_REASON_ABOVE : BW_REASON_BELOW,
                  !f->danger                                ? BW_REMEDY_NONE
                  : mains.frequency >= BW_SEVERITY_CURABLE ? BW_REMEDY_MAINS_CONVERTER
                                                            : BW_REMEDY_MAINS_TRANSFORMER);
  f->remedy.value = f->remedy.kind == BW_REMEDY_MAINS_TRANSFORMER ? mains.rated_v : 0;
}

char *
bw_rule_mains_says (const BwSaying *s)
{
  if (s->c->mains_met)
    return g_strdup (_ ("The set gets the supply that its plate asks for."));
  return bw_mains_says (s->c->monitor, s->c->supply_v, s->c->supply_hz, s->mark);
}

/* What a logic output gives without harm: ordinary TTL 16 mA, the strongest families 24 mA (common
 * practice, no source). */
#define LOGIC_MADE_FOR_A 16e-3
#define LOGIC_MOST_A 24e-3

/**
 * bw_rule_sync_drive_judge:
 *
 * The current that a logic output of sync has to give stays below what logic is made for: its voltage
 * without load over all resistance from it to the end of the line (Ohm's law). Outputs whose level is
 * stated across 75 Ω are made for that.
 */
void
bw_rule_sync_drive_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  const BwSource *source = c->source;
  BwSyncMatch match;

  gboolean own = bw_sync_has_own_conductor (sync);
  if (own && !BW_NEEDS_SOURCE (f, c, sync_load))
    return;
  if (!own || source->sync_load != BW_LOAD_OPEN)
    {
      f->reason = BW_REASON_NOT_NEEDED;
      return;
    }
  if (!BW_NEEDS_SOURCE (f, c, sync_v) || !BW_NEEDS_SOURCE (f, c, sync_ohm)
      || !bw_finding_needs_load (f, c, TRUE))
    return;
  bw_match_own_sync (source, c->input, &match);
  bw_finding_measure (f, BW_DIMENSION_CURRENT,
                      source->sync_v / (source->sync_ohm + match.load_ohm));
  f->has_high = TRUE;
  f->high = LOGIC_MOST_A;
  f->margin = 1 - f->value / f->high;
  f->as.sync_drive.load_ohm = match.load_ohm;
  if (f->value <= LOGIC_MADE_FOR_A)
    return;
  if (f->value <= LOGIC_MOST_A)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_NEAR_EDGE, BW_REMEDY_NONE);
  else if (match.need == BW_NEED_RESISTOR)
    {
      bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_ABOVE, BW_REMEDY_SERIES_RESISTOR);
      f->remedy.value = match.way[0].attenuator.exact_ohm;
    }
  else
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_ABOVE, BW_REMEDY_NONE);
  f->danger = f->value > LOGIC_MOST_A;
}

char *
bw_rule_sync_drive_says (const BwSaying *s)
{
  g_autofree char *load
      = bw_saying_figure (s, s->f->as.sync_drive.load_ohm, BW_DIMENSION_RESISTANCE, 3);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("Sync does not come from a logic output, or a part in the way drives it."));
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("The logic output of sync has to give %1$s into %2$s, and logic gives "
                                 "%3$s without harm. Do not join it to %2$s without a part."),
                              s->value, load, s->allowed);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("The logic output of sync has to give %1$s into %2$s: strong logic "
                                 "does, ordinary logic gives 16\u00a0mA."),
                              s->value, load);
    default:
      return g_strdup_printf (_ ("The logic output of sync gives %1$s into %2$s."), s->value, load);
    }
}
