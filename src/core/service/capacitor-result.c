/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/preferred.h"

/* An electrolytic capacitor: what a new one may measure, what this one is worth, how long it lasts, and
 * what replaces it. */

#define DIGITS 3
#define HOURS_OF_YEAR 8760.0
#define SECONDS_OF_HOUR 3600.0

/* Answer */

static const char *
answer_words (BwWorth worth)
{
  switch (worth)
    {
    case BW_WORTH_GOOD:
      return _ ("Good: capacitance and resistance are within what a new part may have.");
    case BW_WORTH_WORN:
      return _ ("Worn: it is past the limit of a new part. Replace it while the set is open.");
    case BW_WORTH_SPENT:
      return _ ("Spent: it is beyond the end of its useful life. Replace it.");
    default:
      return _ ("Not decided: what was measured does not tell.");
    }
}

static BwMark
mark_of (BwWorth worth)
{
  switch (worth)
    {
    case BW_WORTH_GOOD:
      return BW_MARK (BW_SEVERITY_OK);
    case BW_WORTH_WORN:
      return BW_MARK (BW_SEVERITY_TIGHT);
    case BW_WORTH_SPENT:
      return BW_MARK (BW_SEVERITY_FATAL);
    default:
      return BW_MARK (BW_SEVERITY_UNJUDGED);
    }
}

/* What would decide, and what to beware of. */
static const char *
next_words (const BwCapacitor *part)
{
  BwLossLimit limit;

  if (!(part->esr_ohm > 0) && !(part->measured_f > 0))
    return _ ("Measure its capacitance, and its resistance (ESR) at 100 or 120 Hz, with one lead "
              "lifted.");
  if (part->esr_ohm > 0 && !(part->esr_hz > 0))
    return _ ("At which frequency was the resistance measured? It falls as the frequency rises, and the "
              "limit holds at 100 to 120 Hz; most hand-held meters measure near 100 kHz.");
  if (!(part->esr_ohm > 0))
    return _ ("The resistance (ESR) at 100 or 120 Hz would decide: it grows before the capacitance "
              "falls.");
  if (!bw_capacitor_loss_limit (part, &limit))
    return _ ("The makers' sheets that the limits come from go from 6.3 to 450 V: take the limit from "
              "the part's own sheet.");
  if (bw_capacitor_worth_of_esr (part) == BW_WORTH_NOT_DECIDED)
    {
      if (part->esr_hz > BW_LOSS_HIGH_HZ)
        return _ ("A good part reads far less at this frequency than the limit at 120 Hz allows, so "
                  "that being below it tells nothing: measure at 100 or 120 Hz, or compare with a new "
                  "part of the same kind.");
      if (part->esr_hz < BW_LOSS_LOW_HZ)
        return _ ("Below 100 Hz even a good part reads more: measure at 100 or 120 Hz.");
      return _ ("Makers differ here, and the reading lies between their limits: compare with a new part "
                "of the same kind.");
    }
  return part->measured_f > 0 ? NULL : _ ("The capacitance would decide.");
}

/* Leakage makes many meters read too much, and so does what lies in parallel. */
#define READS_HIGH 1.2

static void
add_verdict (BwNode *to, const BwCapacitor *part)
{
  BwWorth worth = bw_capacitor_worth (part);
  BwNode *answer = bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (worth));
  answer->mark = mark_of (worth);
  bw_node_member (to, bw_value_kind ("verdict", &bw_worths, worth));
  if (worth != BW_WORTH_NOT_DECIDED && worth != BW_WORTH_GOOD)
    return;
  const char *next = next_words (part);
  if (worth == BW_WORTH_NOT_DECIDED && next != NULL)
    bw_node_say (to, BW_SAY_NOTE, "next", next);
}

/* Figures */

static BwValue
ohms (const char *key, gboolean known, double ohm)
{
  return bw_value_if (known, bw_value_quantity (key, ohm, BW_DIMENSION_RESISTANCE, DIGITS));
}

static double
limit_hz (const BwCapacitor *part)
{
  return part->esr_hz > 0 ? CLAMP (part->esr_hz, BW_LOSS_LOW_HZ, BW_LOSS_HIGH_HZ) : BW_LOSS_HIGH_HZ;
}

static void
add_new_part (BwNode *to, const BwCapacitor *part)
{
  BwLossLimit limit = { 0, 0 };
  gboolean known = bw_capacitor_loss_limit (part, &limit);
  gboolean agreed = !(limit.high > limit.low);
  double hz = limit_hz (part);
  BwNode *section = bw_node_section (to, NULL, _ ("A new part has at most"));
  const char *at = bw_node_quantity (section, hz, BW_DIMENSION_FREQUENCY, DIGITS);

  bw_node_figure (section, _ ("tan δ"),
                  bw_value_or (bw_value_if (known, bw_value_number ("tan_delta_limit", limit.low, 3)),
                               _ ("in no sheet")));
  bw_node_figure (section, bw_node_print (section, _ ("ESR at %s"), at),
                  bw_value_or (ohms ("esr_limit_ohm", known,
                                     known ? bw_capacitor_esr (part, limit.low, hz) : 0),
                               _ ("in no sheet")));
  bw_node_member (section, bw_value_quantity ("esr_limit_hz", hz, BW_DIMENSION_FREQUENCY, DIGITS));
  if (known && !agreed)
    bw_node_figure (section, _ ("as the widest sheet has it"),
                    ohms ("esr_limit_widest_ohm", TRUE, bw_capacitor_esr (part, limit.high, hz)));
  bw_node_figure (section, _ ("leakage after two minutes"),
                  bw_value_quantity ("leakage_limit_a", bw_capacitor_leakage_limit (part),
                                     BW_DIMENSION_CURRENT, DIGITS));
}

static void
add_this_part (BwNode *to, const BwCapacitor *part)
{
  if (!(part->measured_f > 0) && !(part->esr_ohm > 0))
    return;
  BwNode *section = bw_node_section (to, NULL, _ ("This part"));
  if (part->measured_f > 0)
    {
      BwValue off = bw_value_fixed ("capacitance_off", part->measured_f / part->farad - 1,
                                    BW_DIMENSION_FRACTION, "%", 1);
      bw_node_figure (section, _ ("capacitance against the marked one"),
                      bw_value_marked (bw_value_signed (off),
                                       mark_of (bw_capacitor_worth_of_value (part))));
    }
  if (part->esr_ohm > 0)
    bw_node_figure (section, _ ("ESR"),
                    bw_value_marked (ohms ("esr_ohm", TRUE, part->esr_ohm),
                                     mark_of (bw_capacitor_worth_of_esr (part))));
  if (part->esr_ohm > 0 && part->esr_hz > 0)
    bw_node_figure (section, _ ("tan δ"),
                    bw_value_number ("tan_delta",
                                     2 * G_PI * part->esr_hz * part->esr_ohm
                                         * (part->measured_f > 0 ? part->measured_f : part->farad),
                                     3));
  if (part->measured_f > READS_HIGH * part->farad)
    bw_node_say (section, BW_SAY_NOTE, NULL,
                 _ ("It reads more than is marked: a part that leaks reads so on many meters, and so does "
                    "one with others in parallel. Lift one lead."));
}

/* Life */

/* No rule of life is better than two digits. */
static const char *
hours_words (BwNode *to, double hours)
{
  double place = pow (10, floor (log10 (hours)) - 1);
  return bw_node_print (to, _ ("about %.0f\u00a0h"), hours >= 10 ? round (hours / place) * place : hours);
}

static void
add_life (BwNode *to, const BwCapacitorAsk *ask)
{
  const BwEndurance *what = &ask->endurance;
  double life_s = bw_capacitor_life (what);
  gboolean capped = life_s > BW_LIFE_MOST_S;
  double hours = MIN (life_s, BW_LIFE_MOST_S) / SECONDS_OF_HOUR;
  double years = hours / HOURS_OF_YEAR * 24 / ask->hours_a_day;
  double most_years = BW_LIFE_MOST_S / SECONDS_OF_HOUR / HOURS_OF_YEAR;
  gboolean years_capped = capped || years > most_years;
  BwNode *section = bw_node_section (to, NULL, _ ("Expected life"));
  const char *most = bw_node_print (section, _ ("more than %.0f years"), most_years);
  BwValue life = bw_value_quantity ("life_s", hours * SECONDS_OF_HOUR, BW_DIMENSION_DURATION, 2);
  BwValue in_years = bw_value_number ("life_years", MIN (years, most_years), 1);

  bw_node_figure (section, _ ("hours of work"),
                  bw_value_read_as (life, capped ? _ ("more than makers promise")
                                                 : hours_words (section, hours)));
  bw_node_member (section, bw_value_flag ("life_capped", capped));
  bw_node_figure (section,
                  bw_node_print (section, _ ("years, at %.3g hours a day"), ask->hours_a_day),
                  years_capped ? bw_value_read_as (in_years, most) : in_years);
  bw_node_member (section, bw_value_flag ("life_years_capped", years_capped));
  if (what->around_c > what->rated_c)
    bw_node_say (section, BW_SAY_NOTE, NULL,
                 _ ("It is hotter than it was made for: no rule holds there."));
  bw_node_say (section, BW_SAY_NOTE, NULL,
               _ ("The rule halves life for each 10 °C; it is good between 70 and 90 °C, less so below "
                  "60 and above 105 °C. It is an expectation for new parts, not a promise, and says "
                  "nothing of a part that has dried out: that is measured."));
}

/* Replacement */

static void
add_replacement (BwNode *to, const BwCapacitor *part)
{
  double next_v = bw_capacitor_next_voltage (part->rated_v);
  BwNode *section = bw_node_section (to, NULL, _ ("Replacement"));

  bw_node_figure (section, _ ("capacitance"),
                  bw_value_quantity ("replacement_f", bw_preferred_capacitor (part->farad),
                                     BW_DIMENSION_CAPACITANCE, DIGITS));
  bw_node_figure (section, _ ("rated voltage, at least"),
                  bw_value_or (bw_value_if (next_v > 0,
                                            bw_value_quantity ("replacement_v", next_v,
                                                               BW_DIMENSION_VOLTAGE, DIGITS)),
                               _ ("none is sold so high")));
  bw_node_say (section, BW_SAY_NOTE, NULL,
               _ ("The same temperature class or a higher one, a rated ripple current no lower and a "
                  "resistance no higher. For plain smoothing up to half as much capacitance again is "
                  "taken; in timing, linearity, feedback and S-correction it must be the same."));
  bw_node_say (section, BW_SAY_CAUTION, NULL,
               _ ("Bipolar capacitors, film capacitors such as those of the S-correction, the retrace "
                  "capacitor, and those across the mains are other kinds: never put an ordinary "
                  "electrolytic in their place. Capacitors stay charged: follow local codes, and leave "
                  "work inside a set to licensed practice where they ask for it."));
}

/**
 * bw_capacitor_say:
 *
 * Adds what a part is worth, the limits of a new one, its life where that is asked, and what replaces
 * it.
 */
void
bw_capacitor_say (BwNode *to, const BwCapacitorAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL && ask->part.farad > 0 && ask->part.rated_v > 0);
  g_return_if_fail (!ask->knows_life || (ask->hours_a_day > 0 && ask->hours_a_day <= 24));

  if (ask->part.measured_f > 0 || ask->part.esr_ohm > 0 || !ask->knows_life)
    add_verdict (to, &ask->part);
  else
    bw_node_member (to, bw_value_kind ("verdict", &bw_worths, BW_WORTH_NOT_DECIDED));
  add_this_part (to, &ask->part);
  add_new_part (to, &ask->part);
  if (ask->knows_life)
    add_life (to, ask);
  add_replacement (to, &ask->part);
}
