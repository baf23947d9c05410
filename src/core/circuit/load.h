/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"

G_BEGIN_DECLS

/* How a conductor ends, and what comes back from there. */

typedef enum
{
  BW_ENDING_ONE,        /* one terminator: as it should be */
  BW_ENDING_NONE,       /* the input alone */
  BW_ENDING_TWO,        /* two terminators */
  BW_ENDING_LOOP_ENDED, /* loop-through, terminated at the far end of the chain */
  BW_ENDING_LOOP_OPEN,  /* loop-through with a lead that ends in nothing */
  BW_N_ENDINGS
} BwEnding;

/**
 * BwLoadCase:
 * @ending: BwEnding
 * @source_ohm: of the source; zero: a voltage output
 * @terminator_ohm: of each terminator
 * @input_ohm: of the input without its terminator
 * @lead_ohm: characteristic resistance of the lead
 * @delay_s_per_m: of the lead: bw_lead_delay_s_per_m()
 * @length_m: of the lead from source to input
 * @loop_m: of the lead on the loop-through, to where it ends; zero without one
 */
typedef struct
{
  BwEnding ending;
  double source_ohm;
  double terminator_ohm;
  double input_ohm;
  double lead_ohm;
  double delay_s_per_m;
  double length_m;
  double loop_m;
} BwLoadCase;

/**
 * BwLoad:
 * @load_ohm: that the source works into
 * @level_ratio: level at the input, one terminator = 1
 * @level_db: the same; decibels of voltage
 * @reflection: coefficient at the end of the line, -1 to 1
 * @return_loss_db: of that end; INFINITY for a perfect match
 * @source_reflection: coefficient at the source
 * @echo_s: after the picture, at the input: there and back; zero: there is none
 * @echo_ratio: size of the echo at the input, signed, of the picture there: @reflection ×
 *   @source_reflection over the lead, or @reflection alone over an open loop. Without the lead's
 *   loss, which makes it smaller
 */
typedef struct
{
  double load_ohm;
  double level_ratio;
  double level_db;
  double reflection;
  double return_loss_db;
  double source_reflection;
  double echo_s;
  double echo_ratio;
} BwLoad;

extern const BwKindTable bw_endings;

double bw_reflection (double end_ohm, double lead_ohm);
double bw_return_loss_db (double end_ohm, double lead_ohm);
double bw_echo_s (double length_m, double delay_s_per_m);
void bw_load_case_init (BwLoadCase *what);
void bw_load_compute (const BwLoadCase *what, BwLoad *load);
char *bw_load_says (const BwLoadCase *what, const BwLoad *load, char mark);

G_END_DECLS
