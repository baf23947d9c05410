/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "wire.h"

G_BEGIN_DECLS

/* The sets of white, black and sync that signals have been laid down with. */

typedef enum
{
  BW_LEVELS_7_3,            /* 700 and 300 mV */
  BW_LEVELS_10_4,           /* 714 and 286 mV, no setup */
  BW_LEVELS_10_4_SETUP,     /* 714 and 286 mV, 7.5 IRE: composite M, RS-343-A style RGB */
  BW_LEVELS_1000_400,       /* RGB of 1.000 and 0.400 V */
  BW_LEVELS_COMPONENT_4_3,  /* Y as 10:4 with setup, differences × 4/3 */
  BW_LEVELS_COMPONENT_925,  /* Y 700 mV with setup, differences × 0.925 */
  BW_LEVELS_1400,           /* 1.0 V and 0.4 V: 1.4 V in all, of older closed circuits */
  BW_N_LEVEL_FORMS
} BwLevelForm;

/**
 * BwLevelFormFacts:
 * @signals: set of BwSignal that it was used for
 * @component: of component
 * @burst_pp_v: of what has a burst
 */
typedef struct
{
  guint signals;
  double white_v;
  double setup_ire;
  double sync_v;
  double burst_pp_v;
  BwComponentForm component;
} BwLevelFormFacts;

extern const BwKindTable bw_level_forms;

const BwLevelFormFacts *bw_level_form_facts (BwLevelForm levels);
void bw_level_form_apply (BwLevelForm levels, BwWireForm *form);

G_END_DECLS
