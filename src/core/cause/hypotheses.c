/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

/* Which circuits come into question: every fault of a list, and every pair of two that have nothing
 * to do with each other. */

/* Faults of one group exclude each other. */
typedef enum
{
  GROUP_LOAD,
  GROUP_LEVELS,
  GROUP_PICTURE,
  GROUP_POLARITY,
  GROUP_WIRE,
  GROUP_ATTENUATOR,
  GROUP_COUPLING
} Group;

typedef struct
{
  Group group;
  double penalty;
  BwFault fault;
} Choice;

#define PENALTY 2.0
/* A pad is put into a line on purpose: a wrong load comes before it. */
#define PENALTY_PAD 2.2
/* Another sync drive is a wish for another source: what is wrong in the line comes before it. */
#define PENALTY_DRIVE 3.0
/* A d.c. that moves with the picture, or is any, agrees with much. */
#define PENALTY_WIDE 3.0
#define PENALTY_ANY 4.0
#define PENALTY_PAIR 4.0

static void
add (GArray *choices, Group group, double penalty, BwFault fault)
{
  Choice choice = { group, penalty, fault };
  g_array_append_val (choices, choice);
}

static void
add_load (GArray *choices, BwFaultKind kind, double ohm)
{
  add (choices, GROUP_LOAD, PENALTY, (BwFault){ .kind = kind, .ohm = ohm });
}

static void
add_loads (const BwCauseCase *c, GArray *choices)
{
  double ohm = c->load_ohm;

  if (ohm > BW_ONE_LOAD_MAX_OHM)
    add_load (choices, BW_FAULT_TERMINATED, bw_parallel_ohm (ohm, BW_VIDEO_OHM));
  else
    {
      double two_ohm = bw_parallel_ohm (ohm, BW_VIDEO_OHM);
      if (c->input_ohm > 2 * ohm)
        add_load (choices, BW_FAULT_UNTERMINATED, c->input_ohm);
      add_load (choices, BW_FAULT_TWO_LOADS, two_ohm);
      add_load (choices, BW_FAULT_THREE_LOADS, bw_parallel_ohm (two_ohm, BW_VIDEO_OHM));
      add_load (choices, BW_FAULT_50_OHM, 50);
    }
  add_load (choices, BW_FAULT_NO_SIGNAL, 0);
}

/* Setup alone is a fault of its own. */
static gboolean
differs (const BwWireForm *form, BwLevelForm levels)
{
  const BwLevelFormFacts *facts = bw_level_form_facts (levels);
  return fabs (facts->white_v / form->white_v - 1) > 0.005
         || fabs (facts->sync_v / form->sync_v - 1) > 0.005
         || facts->component != form->component;
}

static void
add_levels (const BwCauseCase *c, GArray *choices)
{
  BwFault fault = { .kind = BW_FAULT_OTHER_LEVELS };
  gboolean has_setup = c->form.setup_ire > 0;

  for (fault.which = 0; fault.which < BW_N_LEVEL_FORMS; fault.which++)
    if ((bw_level_form_facts (fault.which)->signals & BW_BIT (c->form.signal))
        && differs (&c->form, fault.which))
      add (choices, GROUP_LEVELS, PENALTY, fault);
  if (c->form.component == BW_COMPONENT_700)
    add (choices, GROUP_LEVELS, PENALTY,
         (BwFault){ .kind = has_setup ? BW_FAULT_SETUP_MISSING : BW_FAULT_SETUP_ADDED });
}

static void
add_drives (const BwCauseCase *c, GArray *choices)
{
  BwFault fault = { .kind = BW_FAULT_OTHER_DRIVE };

  for (fault.which = 0; fault.which < BW_N_SYNC_DRIVES; fault.which++)
    {
      const BwSyncDriveFacts *facts = bw_sync_drive_facts (fault.which);
      gboolean tri = facts->shape == BW_SHAPE_TRILEVEL;
      gboolean same_shape = c->conductor != BW_CONDUCTOR_SYNC || facts->shape == c->form.shape;
      if ((tri && c->conductor != BW_CONDUCTOR_SYNC)
          || (same_shape && facts->stated == c->sync_stated
              && fabs (facts->sync_v / c->form.own_sync_v - 1) < 0.05))
        continue;
      add (choices, GROUP_LEVELS, PENALTY_DRIVE, fault);
    }
}

static void
add_wires (const BwCauseCase *c, GArray *choices)
{
  guint set = bw_signal_conductors (c->form.signal, c->form.sync);
  gboolean carries = bw_conductor_carries_sync (c->conductor, c->form.signal, c->form.sync);
  BwFault fault = { .kind = BW_FAULT_OTHER_CONDUCTOR };

  for (fault.which = 0; fault.which < BW_N_CONDUCTORS; fault.which++)
    if (fault.which != c->conductor && (set & BW_BIT (fault.which)))
      add (choices, GROUP_WIRE, PENALTY, fault);
  if (bw_conductor_is_sync_alone (c->conductor))
    return;
  fault.kind = BW_FAULT_OTHER_SYNC;
  for (fault.which = 0; fault.which < BW_N_SYNC_KINDS; fault.which++)
    if ((bw_signal_syncs (c->form.signal) & BW_BIT (fault.which))
        && (bw_signal_conductors (c->form.signal, fault.which) & BW_BIT (c->conductor))
        && bw_conductor_carries_sync (c->conductor, c->form.signal, fault.which) != carries)
      {
        add (choices, GROUP_WIRE, PENALTY, fault);
        break;
      }
}

/* Matched attenuators as they are sold, in decibels (common practice, no source). */
static const guint pads_db[] = { 3, 6, 10, 20 };

static void
add_pads (GArray *choices)
{
  for (gsize i = 0; i < G_N_ELEMENTS (pads_db); i++)
    add (choices, GROUP_ATTENUATOR, PENALTY_PAD,
         (BwFault){ .kind = BW_FAULT_ATTENUATOR_ADDED, .which = pads_db[i] });
}

static void
add_attenuators (const BwCauseCase *c, GArray *choices)
{
  BwFault fault = { .kind = BW_FAULT_ATTENUATOR_MISSING, .ohm = c->series_ohm };

  if (!bw_conductor_is_sync_alone (c->conductor))
    add_pads (choices); /* beside one that belongs there it is a second one */
  if (!(c->series_ohm > 0) && !(c->pad_ratio < 1))
    {
      double wanted_v = c->wanted_sync_v > 0 ? c->wanted_sync_v : BW_USUAL_SYNC_V;
      double open_v = bw_open_v (c->form.own_sync_v, c->sync_stated, c->sync_ohm);
      double ohm = bw_series_resistor_ohm (open_v, c->sync_ohm, BW_VIDEO_OHM, wanted_v);
      if (!bw_conductor_is_sync_alone (c->conductor) || ohm < BW_VIDEO_OHM)
        return;
      fault = (BwFault){ .kind = BW_FAULT_ATTENUATOR_ADDED,
                         .ohm = bw_preferred_value (ohm, BW_USUAL_SERIES) };
    }
  add (choices, GROUP_ATTENUATOR, PENALTY, fault);
}

static void
add_couplings (const BwCauseCase *c, GArray *choices)
{
  if (c->coupling == BW_COUPLING_DC)
    add (choices, GROUP_COUPLING, PENALTY_WIDE,
         (BwFault){ .kind = BW_FAULT_AC_COUPLED, .farad = c->capacitor_f });
  else if (c->capacitor_f > 0)
    add (choices, GROUP_COUPLING, PENALTY_ANY, (BwFault){ .kind = BW_FAULT_OTHER_CAPACITOR });
  add (choices, GROUP_COUPLING, PENALTY_ANY, (BwFault){ .kind = BW_FAULT_DC_OFFSET });
}

static GArray *
choices_new (const BwCauseCase *c)
{
  GArray *choices = g_array_new (FALSE, FALSE, sizeof (Choice));
  gboolean has_polarity = c->conductor != BW_CONDUCTOR_PB && c->conductor != BW_CONDUCTOR_PR
                          && c->conductor != BW_CONDUCTOR_C;

  add_loads (c, choices);
  if (bw_conductor_is_sync_alone (c->conductor))
    add_drives (c, choices);
  else
    add_levels (c, choices);
  if (!bw_conductor_is_sync_alone (c->conductor))
    add (choices, GROUP_PICTURE, PENALTY, (BwFault){ .kind = BW_FAULT_BARS_75 });
  if (has_polarity)
    add (choices, GROUP_POLARITY, PENALTY, (BwFault){ .kind = BW_FAULT_INVERTED });
  add_wires (c, choices);
  add_attenuators (c, choices);
  add_couplings (c, choices);
  return choices;
}

/* By what a wrong load or a wrong attenuator multiplies every level; zero for other faults. */
static double
ratio_of (const BwCauseCase *c, const Choice *choice)
{
  BwHypothesis right, wrong;

  if (choice->group != GROUP_LOAD && choice->group != GROUP_ATTENUATOR)
    return 0;
  bw_hypothesis_init (c, &right);
  wrong = right;
  bw_hypothesis_apply (&choice->fault, &wrong);
  return bw_hypothesis_gain (&wrong) / bw_hypothesis_gain (&right);
}

static void
add_fault (const BwCauseCase *c, const Choice *choice, BwHypothesis *h)
{
  bw_hypothesis_apply (&choice->fault, h);
  h->penalty += choice->penalty;
  h->faults[h->n_faults] = choice->fault;
  h->faults[h->n_faults++].ratio = ratio_of (c, choice);
}

static void
add_hypothesis (const BwCauseCase *c, const Choice *one, const Choice *other, GArray *hypotheses)
{
  BwHypothesis h;

  bw_hypothesis_init (c, &h);
  add_fault (c, one, &h);
  if (other != NULL)
    {
      add_fault (c, other, &h);
      h.penalty += PENALTY_PAIR;
    }
  g_array_append_val (hypotheses, h);
}

/**
 * bw_hypotheses_new:
 *
 * Returns: (transfer full) (element-type BwHypothesis): single faults, then pairs
 */
GArray *
bw_hypotheses_new (const BwCauseCase *c)
{
  GArray *hypotheses = g_array_new (FALSE, FALSE, sizeof (BwHypothesis));
  g_autoptr (GArray) choices = choices_new (c);
  const Choice *at = (const Choice *) (gpointer) choices->data;

  for (guint i = 0; i < choices->len; i++)
    add_hypothesis (c, &at[i], NULL, hypotheses);
  for (guint i = 0; i < choices->len; i++)
    for (guint j = i + 1; j < choices->len; j++)
      if (at[i].group != at[j].group && at[i].fault.kind != BW_FAULT_NO_SIGNAL)
        add_hypothesis (c, &at[i], &at[j], hypotheses);
  return hypotheses;
}
