/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/levels/forms.h"
#include "core/base/quantity.h"
#include "core/circuit/sync-drive.h"
#include "support.h"

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

/* Input thresholds of a graphics adapter guide: low up to 0.8 V, high from 2.0 V. */
static void
test_thresholds (void)
{
  const BwSyncDriveFacts *logic = bw_sync_drive_facts (BW_DRIVE_LOGIC);
  NEAR (logic->input_low_v, 0.8, 1e-12);
  NEAR (logic->input_high_v, 2.0, 1e-12);
}

/* An instrument maker's note: early studio sync of 4 V into 75 Ω; without load twice as much from
 * 75 Ω (divider), with two loads two thirds. */
static void
test_at_load (void)
{
  NEAR (bw_sync_drive_at_load (BW_DRIVE_4_V, 75), 4, 1e-12);
  NEAR (bw_sync_drive_at_load (BW_DRIVE_4_V, 37.5), 4.0 * 2 / 3, 1e-12);
  NEAR (bw_sync_drive_at_load (BW_DRIVE_300_MV, 1e12), 0.6, 1e-9);
}

/* What is stated without load falls with it, but not below what its own resistance leaves. */
static void
test_logic_at_load (void)
{
  const BwSyncDriveFacts *logic = bw_sync_drive_facts (BW_DRIVE_LOGIC);
  NEAR (bw_sync_drive_at_load (BW_DRIVE_LOGIC, 75),
        logic->sync_v * 75 / (75 + logic->driver_ohm), 1e-12);
}

/* The analogue choices of VESA E-EDID byte 14h, by a free library's comments on them: video : sync
 * of 0.700 : 0.300, 0.714 : 0.286 and 1.000 : 0.400 V. */
static void
test_edid_choices (void)
{
  static const struct
  {
    BwLevelForm levels;
    double white_v;
    double sync_v;
  } choices[] = {
    { BW_LEVELS_7_3, 0.700, 0.300 },
    { BW_LEVELS_10_4_SETUP, 0.714, 0.286 },
    { BW_LEVELS_1000_400, 1.000, 0.400 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
    {
      const BwLevelFormFacts *facts = bw_level_form_facts (choices[i].levels);
      g_assert_true (facts->signals & BW_BIT (BW_SIGNAL_RGB));
      NEAR (facts->white_v, choices[i].white_v, 0.5e-3);
      NEAR (facts->sync_v, choices[i].sync_v, 0.5e-3);
    }
}

static void
test_apply (void)
{
  BwWireForm form;
  bw_wire_form_standard (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_ON_GREEN, BW_SHAPE_BILEVEL, &form);
  bw_level_form_apply (BW_LEVELS_10_4_SETUP, &form);
  NEAR (form.white_v * 140, 100, 1e-9);
  NEAR (form.sync_v * 140, 40, 1e-9);
  NEAR (form.setup_ire, 7.5, 1e-12);
  NEAR (form.burst_pp_v, 0, 1e-12);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/sync-drive/thresholds", test_thresholds);
  g_test_add_func ("/sync-drive/at-load", test_at_load);
  g_test_add_func ("/sync-drive/logic-at-load", test_logic_at_load);
  g_test_add_func ("/sync-drive/edid-choices", test_edid_choices);
  g_test_add_func ("/sync-drive/apply", test_apply);
  return g_test_run ();
}
