/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forms.h"

#include <glib/gi18n-lib.h>

static const BwKind names[BW_N_LEVEL_FORMS] = {
  [BW_LEVELS_7_3] = { "7-3", N_ ("7:3") },
  [BW_LEVELS_10_4] = { "10-4", N_ ("10:4 without setup") },
  [BW_LEVELS_10_4_SETUP] = { "10-4-setup", N_ ("10:4 with setup") },
  [BW_LEVELS_1000_400] = { "1000-400", N_ ("RGB of one volt") },
  [BW_LEVELS_COMPONENT_4_3]
  = { "component-4-3", N_ ("component with setup, differences × 4/3") },
  [BW_LEVELS_COMPONENT_925]
  = { "component-925", N_ ("component with setup, differences × 0.925") },
  [BW_LEVELS_1400] = { "1400", N_ ("1.4 V in all, of older closed circuits") },
};
const BwKindTable bw_level_forms = { BW_N_LEVEL_FORMS, names };

#define CODED                                                                                     \
  (BW_BIT (BW_SIGNAL_YC) | BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_LUMA))
#define RGB BW_BIT (BW_SIGNAL_RGB)
#define COMPONENT BW_BIT (BW_SIGNAL_COMPONENT)

/* SMPTE 170M table 1 and 15.4, ITU-R BT.1700 table 2 and Part A note 1; RGB: the analogue choices
 * of VESA E-EDID byte 14h; the older forms of component: see bw_ypbpr_to_volts(). */
static const BwLevelFormFacts facts[BW_N_LEVEL_FORMS] = {
  [BW_LEVELS_7_3] = { CODED | RGB | COMPONENT, BW_WHITE_7_3_V, 0, BW_SYNC_7_3_V, BW_SYNC_7_3_V,
                      BW_COMPONENT_700 },
  [BW_LEVELS_10_4] = { CODED | RGB, BW_WHITE_10_4_V, 0, BW_SYNC_10_4_V, BW_SYNC_10_4_V,
                       BW_COMPONENT_700 },
  [BW_LEVELS_10_4_SETUP] = { CODED | RGB, BW_WHITE_10_4_V, 7.5, BW_SYNC_10_4_V, BW_SYNC_10_4_V,
                             BW_COMPONENT_700 },
  [BW_LEVELS_1000_400] = { RGB, 1, 0, 0.4, 0, BW_COMPONENT_700 },
  [BW_LEVELS_COMPONENT_4_3] = { COMPONENT, BW_WHITE_10_4_V, 7.5, BW_SYNC_10_4_V, 0,
                                BW_COMPONENT_SETUP_4_3 },
  [BW_LEVELS_COMPONENT_925] = { COMPONENT, BW_WHITE_7_3_V, 7.5, BW_SYNC_7_3_V, 0,
                                BW_COMPONENT_SETUP_925 },
  /* common practice, no source; its setup is that of the system */
  [BW_LEVELS_1400] = { CODED, 1, 0, 0.4, 0.4, BW_COMPONENT_700 },
};

/**
 * bw_level_form_facts:
 *
 * Returns: (transfer none): what @levels lays down, across 75 Ω
 */
const BwLevelFormFacts *
bw_level_form_facts (BwLevelForm levels)
{
  g_return_val_if_fail (levels < BW_N_LEVEL_FORMS, &facts[BW_LEVELS_7_3]);
  return &facts[levels];
}

/**
 * bw_level_form_apply:
 * @form: receives white, setup, sync in video and burst of @levels; a form without a burst keeps
 *   none, and sync on a conductor of its own stays as it is
 */
void
bw_level_form_apply (BwLevelForm levels, BwWireForm *form)
{
  g_return_if_fail (form != NULL);
  const BwLevelFormFacts *set = bw_level_form_facts (levels);

  form->white_v = set->white_v;
  if (levels != BW_LEVELS_1400)
    form->setup_ire = set->setup_ire;
  form->sync_v = set->sync_v;
  form->component = set->component;
  if (form->burst_pp_v > 0)
    form->burst_pp_v = set->burst_pp_v;
}
