/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "load.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/quantity.h"
#include "drive.h"

static const BwKind endings[BW_N_ENDINGS] = {
  [BW_ENDING_ONE] = { "one", N_ ("one terminator") },
  [BW_ENDING_NONE] = { "none", N_ ("no terminator") },
  [BW_ENDING_TWO] = { "two", N_ ("two terminators") },
  [BW_ENDING_LOOP_ENDED] = { "loop-ended", N_ ("loop-through, far end terminated") },
  [BW_ENDING_LOOP_OPEN] = { "loop-open", N_ ("loop-through, far end open") },
};
const BwKindTable bw_endings = { BW_N_ENDINGS, endings };

/**
 * bw_reflection:
 * @end_ohm: what the lead ends in; INFINITY: nothing
 * @lead_ohm: its characteristic resistance
 *
 * Returns: the reflection coefficient (R − Z)/(R + Z), from −1 to 1
 */
double
bw_reflection (double end_ohm, double lead_ohm)
{
  g_return_val_if_fail (end_ohm >= 0 && lead_ohm > 0, 0);
  return isfinite (end_ohm) ? (end_ohm - lead_ohm) / (end_ohm + lead_ohm) : 1;
}

/**
 * bw_return_loss_db:
 *
 * Returns: −20 lg |bw_reflection()|, in decibels; INFINITY for a match
 */
double
bw_return_loss_db (double end_ohm, double lead_ohm)
{
  double size = fabs (bw_reflection (end_ohm, lead_ohm));
  return size > 1e-12 ? -20 * log10 (size) : (double) INFINITY;
}

/**
 * bw_echo_s:
 *
 * Returns: the time there and back over a lead, in seconds
 */
double
bw_echo_s (double length_m, double delay_s_per_m)
{
  g_return_val_if_fail (length_m >= 0 && delay_s_per_m >= 0, 0);
  return 2 * length_m * delay_s_per_m;
}

/**
 * bw_load_case_init:
 * @what: (out caller-allocates): one terminator, everything 75 Ω, an input of 10 kΩ, no length
 */
void
bw_load_case_init (BwLoadCase *what)
{
  g_return_if_fail (what != NULL);
  *what = (BwLoadCase){
    .ending = BW_ENDING_ONE,
    .source_ohm = BW_VIDEO_OHM,
    .terminator_ohm = BW_VIDEO_OHM,
    .input_ohm = BW_INPUT_OHM,
    .lead_ohm = BW_VIDEO_OHM,
    .delay_s_per_m = 5.054e-9, /* solid polyethylene: velocity 0.66 of light's */
  };
}

static double
ending_ohm (const BwLoadCase *what)
{
  switch (what->ending)
    {
    case BW_ENDING_NONE:
    case BW_ENDING_LOOP_OPEN:
      return what->input_ohm;
    case BW_ENDING_TWO:
      return bw_parallel_ohm (what->terminator_ohm / 2, what->input_ohm);
    case BW_ENDING_ONE:
    case BW_ENDING_LOOP_ENDED:
    default:
      return bw_parallel_ohm (what->terminator_ohm, what->input_ohm);
    }
}

/* Behind an open loop the picture comes back once from its end, whatever the source; else it must
 * turn at the input and again at the source. */
static void
compute_echo (const BwLoadCase *what, BwLoad *load)
{
  gboolean open_loop = what->ending == BW_ENDING_LOOP_OPEN && what->loop_m > 0;
  double length_m = open_loop ? what->loop_m : what->length_m;
  double ratio = open_loop ? load->reflection : load->reflection * load->source_reflection;

  if (fabs (ratio) < 1e-9 || !(length_m > 0))
    return;
  load->echo_ratio = ratio;
  load->echo_s = bw_echo_s (length_m, what->delay_s_per_m);
}

/**
 * bw_load_compute:
 * @what: resistances greater than zero, but for a source without resistance
 * @load: (out caller-allocates): level and echo
 *
 * Level by the voltage divider, against the same source with one terminator alone: for 75 Ω
 * 2 R/(R + 75). A voltage output gives the same level into anything. In the settled state the lead
 * does not matter.
 */
void
bw_load_compute (const BwLoadCase *what, BwLoad *load)
{
  g_return_if_fail (what != NULL && load != NULL && what->ending < BW_N_ENDINGS);
  double end_ohm = ending_ohm (what);
  double right = what->terminator_ohm / (what->terminator_ohm + what->source_ohm);
  /* nothing hangs at the far end of an open loop */
  double far_ohm = what->ending == BW_ENDING_LOOP_OPEN ? (double) INFINITY : end_ohm;

  *load = (BwLoad){ .load_ohm = end_ohm };
  load->level_ratio = end_ohm / (end_ohm + what->source_ohm) / right;
  load->level_db = 20 * log10 (load->level_ratio);
  load->reflection = bw_reflection (far_ohm, what->lead_ohm);
  load->return_loss_db = bw_return_loss_db (far_ohm, what->lead_ohm);
  load->source_reflection = bw_reflection (what->source_ohm, what->lead_ohm);
  compute_echo (what, load);
}

/* A number with its sign: "+6.0 dB" */
static char *
decibels (double db, char mark)
{
  char text[32];
  g_ascii_formatd (text, sizeof text, "%+.1f", db);
  g_strdelimit (text, ".", mark);
  return g_strdup (text);
}

/**
 * bw_load_says:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): level and echo as a sentence
 */
char *
bw_load_says (const BwLoadCase *what, const BwLoad *load, char mark)
{
  g_return_val_if_fail (what != NULL && load != NULL, NULL);
  g_autofree char *ohm = bw_quantity_format (load->load_ohm, BW_DIMENSION_RESISTANCE, 3, mark);
  g_autofree char *db = decibels (load->level_db, mark);
  g_autofree char *level = bw_quantity_format (load->level_ratio, BW_DIMENSION_FRACTION, 3, mark);
  g_autofree char *says =
      g_strdup_printf (_ ("%s: the source works into %s, and the level is %s of nominal (%s dB)."),
                       bw_kind_label (&bw_endings, what->ending), ohm, level, db);

  if (!(load->echo_s > 0))
    return g_steal_pointer (&says);
  g_autofree char *delay = bw_quantity_format (load->echo_s, BW_DIMENSION_TIME, 3, mark);
  g_autofree char *size = bw_quantity_format (fabs (load->echo_ratio), BW_DIMENSION_FRACTION, 3,
                                              mark);
  return g_strdup_printf (_ ("%s An echo of %s follows after %s."), says, size, delay);
}
