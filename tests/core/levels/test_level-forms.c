/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/levels/forms.h"

#include "core/levels/signal-levels.h"

#include "support.h"

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

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

/* An IRE is 1/140 V in NTSC (SMPTE 170M), 7 mV in PAL and SECAM, where white is 700 mV (ITU-R BT.1700), and in
 * component; RGB is not counted in it. */
static void
test_ire (void)
{
  static const struct
  {
    BwColourSystem system;
    BwSignal signal;
    double ire_v, white_v, sync_v;
  } cases[] = {
    { BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, 1.0 / 140, 100.0 / 140, 40.0 / 140 },
    { BW_SYSTEM_NTSC_M, BW_SIGNAL_YC, 1.0 / 140, 100.0 / 140, 40.0 / 140 },
    { BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, 0.007, 0.7, 0.3 },
    { BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE, 0.007, 0.7, 0.3 },
    { BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPONENT, 0.007, 0.7, 0.3 },
    { BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, 0.007, 0.7, 0.3 },
    { BW_SYSTEM_NONE, BW_SIGNAL_RGB, 0, 0.7, 0.3 },
    { BW_SYSTEM_NONE, BW_SIGNAL_LUMA, 0, 0.7, 0.3 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwSignalLevels levels;
      bw_signal_levels (cases[i].system, cases[i].signal, &levels);
      g_assert_cmpfloat_with_epsilon (levels.volts_per_ire, cases[i].ire_v, 1e-12);
      g_assert_cmpfloat_with_epsilon (levels.white_v, cases[i].white_v, 1e-12);
      g_assert_cmpfloat_with_epsilon (levels.sync_v, -cases[i].sync_v, 1e-12);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/level-forms/edid-choices", test_edid_choices);
  g_test_add_func ("/level-forms/apply", test_apply);
  g_test_add_func ("/level-forms/ire", test_ire);
  return g_test_run ();
}
