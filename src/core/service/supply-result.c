/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"
#include "core/bench/sheet.h"
#include "core/fit/mains.h"
#include "core/raster/hum.h"

#define DIGITS 3

/* What the set draws: its rated current at the voltage that it gets, which a transformer sees to where
 * the supply does not. */
static void
add_power (BwNode *to, const BwSupplyAsk *ask, const BwMains *mains)
{
  gboolean known = ask->monitor->mains_a > 0 && mains->rated_v > 0;
  bw_node_figure (to, _ ("apparent power"),
                  bw_value_or (bw_value_if (known,
                                            bw_value_quantity ("apparent_power_va",
                                                               mains->rated_v * ask->monitor->mains_a,
                                                               BW_DIMENSION_APPARENT_POWER, DIGITS)),
                               _ ("not known without the rated current")));
}

static void
add_mains (BwNode *to, const BwSupplyAsk *ask)
{
  char mark = bw_result_mark (to->result);
  BwMains mains = { .voltage = BW_SEVERITY_UNJUDGED, .frequency = BW_SEVERITY_UNJUDGED };

  bw_mains_judge (ask->monitor, ask->supply_v, ask->supply_hz, &mains);
  gboolean danger = bw_mains_is_danger (&mains);
  BwNode *answer
      = bw_node_say (to, danger ? BW_SAY_CAUTION : BW_SAY_ANSWER, NULL,
                     bw_node_take (to, bw_mains_says (ask->monitor, ask->supply_v, ask->supply_hz,
                                                      mark)));
  answer->mark = BW_MARK (MAX (mains.voltage, mains.frequency));
  bw_node_member (to, bw_value_flag ("inside", !danger));
  add_power (to, ask, &mains);
}

static void
add_hum (BwNode *to, const BwSupplyAsk *ask)
{
  BwHum hum;
  bw_hum (ask->supply_hz, ask->field_hz, &hum);
  BwValue height = bw_value_quantity ("hum_seconds_per_height", hum.height_s, BW_DIMENSION_TIME, DIGITS);
  BwNode *section = bw_node_section (to, NULL, _ ("Hum bars"));

  bw_node_figure (section, _ ("at the mains frequency"), bw_value_count ("hum_bars", hum.bars));
  bw_node_figure (section, _ ("from a full-wave rectifier"),
                  bw_value_count ("ripple_bars", 2.0 * hum.bars));
  bw_node_figure (section, _ ("time for the height of the picture"),
                  bw_value_or (bw_value_if (isfinite (hum.height_s), height), _ ("they stand still")));
  if (hum.beat_hz > bw_preset_limits.mains_beat_hz)
    bw_node_say (section, BW_SAY_NOTE, NULL,
                 _ ("They move so fast that they are seen as flicker or wobble, and not as bars."));
  else if (hum.direction != 0)
    bw_node_say (section, BW_SAY_NOTE, NULL,
                 hum.direction > 0 ? _ ("They move up. The mains wanders by some hundredths of a hertz: "
                                        "the time is near, not exact.")
                                   : _ ("They move down. The mains wanders by some hundredths of a "
                                        "hertz: the time is near, not exact."));
}

static void
add_ripple (BwNode *to, const BwSupplyAsk *ask)
{
  BwRipple ripple;
  BwNode *section = bw_node_section (to, NULL, _ ("Reservoir"));

  if (!bw_reservoir_ripple (&ask->reservoir, ask->supply_v, ask->supply_hz, &ripple))
    {
      bw_node_say (section, BW_SAY_NOTE, NULL,
                   _ ("The load empties this reservoir before it is charged again."));
      bw_node_member (section, bw_value_nothing ("ripple_v"));
      return;
    }
  bw_node_figure (section, _ ("ripple, peak to peak"),
                  bw_value_quantity ("ripple_v", ripple.ripple_v, BW_DIMENSION_VOLTAGE, DIGITS));
  bw_node_figure (section, ask->reservoir.half_wave ? _ ("by the rule I/(f·C), an upper bound")
                                                    : _ ("by the rule I/(2·f·C), an upper bound"),
                  bw_value_quantity ("rule_v", ripple.rule_v, BW_DIMENSION_VOLTAGE, DIGITS));
  bw_node_figure (section, _ ("highest voltage"),
                  bw_value_quantity ("peak_v", ripple.peak_v, BW_DIMENSION_VOLTAGE, DIGITS));
  bw_node_figure (section, _ ("lowest voltage"),
                  bw_value_quantity ("lowest_v", ripple.lowest_v, BW_DIMENSION_VOLTAGE, DIGITS));
}

/**
 * bw_supply_say:
 *
 * Adds whether the mains suit the plate, the apparent power, and, where they are asked, hum bars and
 * ripple.
 */
void
bw_supply_say (BwNode *to, const BwSupplyAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL && ask->monitor != NULL);
  g_return_if_fail (ask->supply_v > 0 && ask->supply_hz > 0);

  add_mains (to, ask);
  bw_node_say (to, BW_SAY_CAUTION, NULL, bw_caution ());
  if (ask->field_hz > 0)
    add_hum (to, ask);
  if (ask->reservoir.farad > 0)
    add_ripple (to, ask);
}
