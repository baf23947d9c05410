/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

/* What a fault does to the circuit. */

/**
 * bw_hypothesis_init:
 * @h: (out caller-allocates): everything as it should be
 */
void
bw_hypothesis_init (const BwCauseCase *c, BwHypothesis *h)
{
  *h = (BwHypothesis){
    .form = c->form,
    .conductor = c->conductor,
    .source_ohm = c->source_ohm,
    .sync_ohm = c->sync_ohm,
    .sync_stated = c->sync_stated,
    .load_ohm = c->load_ohm,
    .series_ohm = c->series_ohm,
    .pad_ratio = c->pad_ratio,
    .spread = c->spread,
    .gain_sign = 1,
    .level_gain = 1,
    .sync_gain = 1,
    .burst_gain = 1,
    .picture = 1,
    .coupling = c->coupling,
    .capacitor_f = c->capacitor_f,
  };
}

static void
apply_drive (BwSyncDrive drive, BwHypothesis *h)
{
  const BwSyncDriveFacts *facts = bw_sync_drive_facts (drive);
  h->form.own_sync_v = facts->sync_v;
  h->form.shape = facts->shape;
  h->sync_stated = facts->stated;
  h->sync_ohm = facts->driver_ohm;
}

/* The share of full white that leaves @ratio of it, where black stays at @setup of it. */
static double
picture_of (double ratio, double setup)
{
  return (ratio - setup) / (1 - setup);
}

/**
 * bw_hypothesis_apply:
 * @h: receives what @fault does to the circuit
 */
void
bw_hypothesis_apply (const BwFault *fault, BwHypothesis *h)
{
  switch (fault->kind)
    {
    case BW_FAULT_UNTERMINATED:
    case BW_FAULT_TERMINATED:
    case BW_FAULT_TWO_LOADS:
    case BW_FAULT_THREE_LOADS:
    case BW_FAULT_50_OHM:
    case BW_FAULT_NO_SIGNAL:
    case BW_FAULT_OTHER_LOAD:
      h->load_ohm = fault->ohm;
      break;
    case BW_FAULT_OTHER_LEVELS:
      bw_level_form_apply (fault->which, &h->form);
      break;
    case BW_FAULT_SETUP_ADDED:
      h->form.setup_ire = 7.5;
      break;
    case BW_FAULT_SETUP_MISSING:
      h->form.setup_ire = 0;
      break;
    case BW_FAULT_OTHER_DRIVE:
      apply_drive (fault->which, h);
      break;
    case BW_FAULT_BARS_75:
      h->picture = 0.75;
      break;
    case BW_FAULT_INVERTED:
      h->gain_sign = -1;
      break;
    case BW_FAULT_OTHER_CONDUCTOR:
      h->conductor = fault->which;
      break;
    case BW_FAULT_OTHER_SYNC:
      h->form.sync = fault->which;
      break;
    case BW_FAULT_ATTENUATOR_MISSING:
      h->series_ohm = 0;
      h->pad_ratio = 1;
      h->spread = (BwRange){ 1, 1 };
      break;
    case BW_FAULT_ATTENUATOR_ADDED:
      if (fault->ohm > 0)
        h->series_ohm = fault->ohm;
      else
        h->pad_ratio *= pow (10, -(double) fault->which / 20);
      break;
    case BW_FAULT_OTHER_DRIVER:
      h->load_ohm = BW_VIDEO_OHM;
      h->series_ohm = 0;
      h->spread = (BwRange){ 1, 1 };
      h->sync_ohm = fault->ohm;
      break;
    case BW_FAULT_GAIN:
      h->level_gain = fault->ratio;
      break;
    case BW_FAULT_PICTURE_GAIN:
      h->picture = picture_of (fault->ratio, h->form.setup_ire / 100);
      break;
    case BW_FAULT_SYNC_GAIN:
      h->sync_gain = fault->ratio;
      break;
    case BW_FAULT_BURST_GAIN:
      h->burst_gain = fault->ratio;
      break;
    case BW_FAULT_AC_COUPLED:
    case BW_FAULT_OTHER_CAPACITOR:
      h->coupling = BW_COUPLING_AC;
      h->capacitor_f = fault->farad;
      break;
    case BW_FAULT_DC_OFFSET:
      h->any_dc = TRUE;
      break;
    case BW_FAULT_NONE:
    case BW_N_FAULTS:
    default:
      break;
    }
}
