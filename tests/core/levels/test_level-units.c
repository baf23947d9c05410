/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/levels/units.h"

#include <math.h>

#include "core/base/quantity.h"
#include "support.h"

static BwLevelScale
scale_on (BwColourSystem system, BwSignal signal, BwConductor conductor)
{
  BwWireForm form;
  BwWireLevels all[BW_N_CONDUCTORS];
  BwLevelScale scale = { 0 };
  bw_wire_form_standard (system, signal,
                         signal == BW_SIGNAL_RGB || signal == BW_SIGNAL_COMPONENT
                             ? BW_SYNC_COMPOSITE
                             : BW_SYNC_IN_VIDEO,
                         BW_SHAPE_BILEVEL, &form);
  guint n = bw_wire_levels (&form, all);
  for (guint i = 0; i < n; i++)
    if (all[i].conductor == conductor)
      bw_level_scale (&form, &all[i], &scale);
  return scale;
}

static double
convert (const BwLevelScale *scale, double value, BwLevelUnit from, BwLevelUnit to)
{
  double result = NAN;
  g_autoptr (GError) error = NULL;
  gboolean done = bw_level_convert (scale, value, from, to, &result, &error);
  g_assert_no_error (error);
  g_assert_true (done);
  return result;
}

static void
assert_refused (const BwLevelScale *scale, double value, BwLevelUnit from, BwLevelUnit to, int code)
{
  double result = 17;
  g_autoptr (GError) error = NULL;
  g_assert_false (bw_level_convert (scale, value, from, to, &result, &error));
  g_assert_error (error, BW_LEVEL_UNIT_ERROR, code);
  g_assert_true (bw_near (result, 17, 0));
}

typedef struct
{
  const char *name;
  BwColourSystem system;
  BwSignal signal;
  BwConductor conductor;
  BwLevelUnit from;
  double value;
  BwLevelUnit to;
  double result;
  double tolerance; /* half of the last place that is printed */
} Case;

static const Case cases[] = {
  /* SMPTE 170M-2004 15.4 and table 1 */
  { "ntsc-setup", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_LEVEL_IRE, 7.5,
    BW_LEVEL_VOLTS, 0.053571, 0.5e-6 },
  { "ntsc-sync", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_LEVEL_IRE, -40,
    BW_LEVEL_VOLTS, -0.285714, 0.5e-6 },
  { "ntsc-white", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_LEVEL_VOLTS,
    0.714286, BW_LEVEL_PERCENT, 100, 0.5e-3 },
  /* ITU-R BT.1700 table 2: −300 mV printed as −43 % of white */
  { "pal-sync", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_LEVEL_VOLTS, -0.3,
    BW_LEVEL_PERCENT, -43, 0.5 },
  /* ITU-R BT.601-5 3.5: Y = 219 E + 16, 100 % at 235; C = 224 E + 128, ±350 mV at 240 and 16 */
  { "y-black", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_Y, BW_LEVEL_VOLTS, 0,
    BW_LEVEL_CODE_8, 16, 1e-12 },
  { "y-white", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_Y, BW_LEVEL_VOLTS, 0.7,
    BW_LEVEL_CODE_8, 235, 1e-12 },
  { "y-white-10", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_Y, BW_LEVEL_VOLTS, 0.7,
    BW_LEVEL_CODE_10, 940, 1e-10 },
  { "pb-high", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_PB, BW_LEVEL_VOLTS, 0.35,
    BW_LEVEL_CODE_8, 240, 1e-10 },
  { "pb-low", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_PB, BW_LEVEL_VOLTS, -0.35,
    BW_LEVEL_CODE_8, 16, 1e-10 },
  { "pr-zero", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_PR, BW_LEVEL_CODE_8, 128,
    BW_LEVEL_VOLTS, 0, 1e-15 },
  /* the same equations: RGB .2 .5 .8 gives Y .4445, Pb +.200621, Pr −.174394 */
  { "y-mixed", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_Y, BW_LEVEL_VOLTS, 0.31115,
    BW_LEVEL_CODE_8, 113.35, 0.5e-2 },
  { "pb-mixed", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_PB, BW_LEVEL_VOLTS, 0.140435,
    BW_LEVEL_CODE_8, 172.94, 0.5e-2 },
  { "pr-mixed", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_PR, BW_LEVEL_VOLTS, -0.122076,
    BW_LEVEL_CODE_8, 88.94, 0.5e-2 },
  /* black is code 16 also where black stands on setup (SMPTE 170M table 1 with BT.601 3.5) */
  { "yc-black", BW_SYSTEM_NTSC_M, BW_SIGNAL_YC, BW_CONDUCTOR_Y, BW_LEVEL_IRE, 7.5,
    BW_LEVEL_CODE_8, 16, 1e-10 },
  { "yc-white", BW_SYSTEM_NTSC_M, BW_SIGNAL_YC, BW_CONDUCTOR_Y, BW_LEVEL_IRE, 100,
    BW_LEVEL_CODE_8, 235, 1e-10 },
  { "g-half", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_CONDUCTOR_G, BW_LEVEL_PERCENT, 50,
    BW_LEVEL_CODE_8, 16 + 219.0 / 2, 1e-10 },
};

static void
test_case (gconstpointer data)
{
  const Case *c = data;
  BwLevelScale scale = scale_on (c->system, c->signal, c->conductor);
  double result = convert (&scale, c->value, c->from, c->to);
  g_assert_true (bw_near (result, c->result, c->tolerance));
  g_assert_true (bw_near (convert (&scale, result, c->to, c->from), c->value, 1e-12));
}

/* From every unit to every other and back. */
static void
test_both_ways (void)
{
  for (BwSignal signal = 0; signal < BW_N_SIGNALS; signal++)
    for (BwColourSystem system = 0; system < BW_N_SYSTEMS; system++)
      for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
        {
          BwLevelScale scale = scale_on (system, signal, conductor);
          for (BwLevelUnit from = 0; from < BW_N_LEVEL_UNITS; from++)
            for (BwLevelUnit to = 0; to < BW_N_LEVEL_UNITS; to++)
              {
                if (!bw_level_has_unit (&scale, from) || !bw_level_has_unit (&scale, to))
                  continue;
                double value = convert (&scale, 0.1, BW_LEVEL_VOLTS, from);
                double there = convert (&scale, value, from, to);
                g_assert_true (bw_near (convert (&scale, there, to, from), value, 1e-11));
              }
        }
}

/* ITU-R BT.601-5 3.5: 0 and 255 are for synchronisation alone; −300 mV lies far below code 1. */
static void
test_refused (void)
{
  BwLevelScale y = scale_on (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_CONDUCTOR_Y);
  BwLevelScale video = scale_on (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO);
  BwLevelScale sync = scale_on (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_CONDUCTOR_SYNC);

  assert_refused (&y, -0.3, BW_LEVEL_VOLTS, BW_LEVEL_CODE_8, BW_LEVEL_UNIT_ERROR_CODE);
  assert_refused (&y, 0, BW_LEVEL_CODE_8, BW_LEVEL_VOLTS, BW_LEVEL_UNIT_ERROR_CODE);
  assert_refused (&y, 255, BW_LEVEL_CODE_8, BW_LEVEL_VOLTS, BW_LEVEL_UNIT_ERROR_CODE);
  assert_refused (&y, 3, BW_LEVEL_CODE_10, BW_LEVEL_VOLTS, BW_LEVEL_UNIT_ERROR_CODE);
  assert_refused (&y, 1020, BW_LEVEL_CODE_10, BW_LEVEL_VOLTS, BW_LEVEL_UNIT_ERROR_CODE);
  assert_refused (&y, INFINITY, BW_LEVEL_VOLTS, BW_LEVEL_IRE, BW_LEVEL_UNIT_ERROR_NUMBER);
  assert_refused (&y, NAN, BW_LEVEL_VOLTS, BW_LEVEL_VOLTS, BW_LEVEL_UNIT_ERROR_NUMBER);
  assert_refused (&video, 0.1, BW_LEVEL_VOLTS, BW_LEVEL_CODE_8, BW_LEVEL_UNIT_ERROR_NO_SCALE);
  assert_refused (&sync, -0.3, BW_LEVEL_VOLTS, BW_LEVEL_IRE, BW_LEVEL_UNIT_ERROR_NO_SCALE);
  assert_refused (&sync, -0.3, BW_LEVEL_VOLTS, BW_LEVEL_PERCENT, BW_LEVEL_UNIT_ERROR_NO_SCALE);
  convert (&y, 1, BW_LEVEL_CODE_8, BW_LEVEL_VOLTS);
  convert (&y, 254, BW_LEVEL_CODE_8, BW_LEVEL_VOLTS);
  convert (&y, 4, BW_LEVEL_CODE_10, BW_LEVEL_VOLTS);
  convert (&y, 1019, BW_LEVEL_CODE_10, BW_LEVEL_VOLTS);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/level-units/%s", cases[i].name);
      g_test_add_data_func (path, &cases[i], test_case);
    }
  g_test_add_func ("/level-units/both-ways", test_both_ways);
  g_test_add_func ("/level-units/refused", test_refused);
  return g_test_run ();
}
