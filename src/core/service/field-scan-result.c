/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"

#define DIGITS 3

/* Below this bow nobody sees it, and above it a person with a test picture does (common practice, no
 * source). */
#define BOW_SEEN 0.01

static const char *
answer_words (BwNode *to, const BwFieldScan *scan)
{
  const BwValue bow = bw_value_fixed (NULL, scan->bow, BW_DIMENSION_FRACTION, "%", 1);
  const char *share = bw_node_take (to, bw_value_text (&bow, bw_result_mark (to->result)));

  if (scan->bow < BOW_SEEN)
    return bw_node_print (to, _ ("The picture is straight to the eye: its middle lies %s of the height "
                                 "too low at the most."),
                          share);
  return bw_node_print (to, _ ("The top is stretched and the bottom is squeezed: the middle lies %s of "
                               "the height too low."),
                        share);
}

static void
add_scan (BwNode *to, const BwFieldStage *stage)
{
  BwFieldScan scan;

  bw_field_scan (stage, &scan);
  gboolean has_pitch = isfinite (scan.pitch) && scan.pitch > 0;
  bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (to, &scan));
  bw_node_figure (to, _ ("bow"),
                  bw_value_fixed ("bow", scan.bow, BW_DIMENSION_FRACTION, "%", 2));
  bw_node_figure (to, _ ("where, from the top"),
                  bw_value_fixed ("bow_at", scan.bow_at, BW_DIMENSION_FRACTION, "%", 1));
  bw_node_figure (to, _ ("distance of lines at the top over that at the bottom"),
                  bw_value_or (bw_value_if (has_pitch,
                                            bw_value_number ("pitch_top_to_bottom", scan.pitch, 3)),
                               _ ("the bottom is folded over")));
  bw_node_figure (to, _ ("height left"),
                  bw_value_fixed ("height", scan.height, BW_DIMENSION_FRACTION, "%", 1));
  bw_node_figure (to, _ ("scan over time constant"), bw_value_number ("a", scan.a, 4));
}

/* A capacitor of so many times the time constant of the scan does nothing that can be measured. */
#define LEAST_A 1e-6

static void
add_rows (BwNode *to, const BwFieldScanAsk *ask)
{
  double a = bw_field_scan_of_rows (&ask->rows);
  gboolean known = a > LEAST_A;
  double farad = known ? ask->stage.scan_s / (ask->stage.ohm * a) : 0;
  const char *says = _ ("The rows at the bottom are no lower than those at the top: this is not the "
                        "sign of a lost coupling capacitor, which squeezes the bottom whatever the "
                        "polarity. Look at linearity, S-correction and the ramp.");

  if (known)
    says = bw_node_print (to, _ ("Rows like these are what a coupling capacitor of %s makes."),
                          bw_node_quantity (to, farad, BW_DIMENSION_CAPACITANCE, DIGITS));
  bw_node_say (to, BW_SAY_ANSWER, NULL, says);
  bw_node_figure (to, _ ("coupling capacitor that is left"),
                  bw_value_or (bw_value_if (known, bw_value_quantity ("capacitor_f", farad,
                                                                      BW_DIMENSION_CAPACITANCE,
                                                                      DIGITS)),
                               _ ("none explains it")));
  bw_node_figure (to, _ ("scan over time constant"), bw_value_number ("a", a, 4));
  if (!known)
    bw_node_member (to, bw_value_says ("why", says));
}

/**
 * bw_field_scan_say:
 *
 * Adds what a coupling capacitor makes of the picture, or the capacitor that rows of a test picture
 * tell.
 */
void
bw_field_scan_say (BwNode *to, const BwFieldScanAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL);

  if (ask->rows.n > 0)
    add_rows (to, ask);
  else
    add_scan (to, &ask->stage);
  bw_node_say (to, BW_SAY_NOTE, NULL,
               _ ("For a field stage that is driven in voltage. With strong current feedback the "
                  "picture stays straight until the stage runs out of voltage, and then one end folds."));
  bw_node_say (to, BW_SAY_CAUTION, NULL, bw_caution ());
}
