/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/level.h"

#include "core/base/quantity.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/level/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* The IRE scale. SMPTE 170M-2004 15.4: composite without chroma is 140 IRE = 1.0 V, so 1 IRE is
 * 7.142857 mV. ITU-R BT.1700 table 2, 625 lines: white 700 mV = 100 %, so 7 mV. */

typedef struct
{
  const char *name;
  BwColourSystem system;
  double ire;
  double volts;
  double tolerance_v; /* half of the last place that is printed */
} IreCase;

static const IreCase ire_cases[] = {
  { "one-525", BW_SYSTEM_NTSC_M, 1, 7.142857e-3, 0.5e-9 },
  { "white-525", BW_SYSTEM_NTSC_M, 100, 0.714286, 0.5e-6 },
  { "setup-525", BW_SYSTEM_NTSC_M, 7.5, 0.053571, 0.5e-6 },
  { "sync-525", BW_SYSTEM_NTSC_M, -40, -0.285714, 0.5e-6 },
  { "sync-to-white-525", BW_SYSTEM_NTSC_M, 140, 1.0, 1e-15 },
  { "one-japan", BW_SYSTEM_NTSC_J, 1, 7.142857e-3, 0.5e-9 },
  { "one-625", BW_SYSTEM_PAL_B, 1, 7e-3, 1e-17 },
  { "white-625", BW_SYSTEM_PAL_B, 100, 0.7, 1e-15 },
  { "sync-625", BW_SYSTEM_PAL_B, -300.0 / 7, -0.3, 1e-15 },
  { "one-secam", BW_SYSTEM_SECAM_L, 1, 7e-3, 1e-17 },
  /* SMPTE 170M-2004 annex B: component 100 IRE = 0.7 V */
  { "component", BW_SYSTEM_NONE, 7.5, 0.0525, 1e-15 },
};

static void
test_ire (gconstpointer data)
{
  const IreCase *c = data;
  double volts = bw_ire_to_volts (c->system, c->ire);

  g_assert_true (bw_near (volts, c->volts, c->tolerance_v));
  g_assert_true (bw_near (bw_volts_to_ire (c->system, volts), c->ire, 1e-12));
}

/* Subcarriers. The exact ratio is compared with the one that the standard gives. */

typedef struct
{
  const char *name;
  BwColourSystem system;
  BwRatio of_line_rate; /* cycles a line */
  BwRatio line_rate_hz;
  double value_hz;
  double tolerance_hz;
} SubcarrierCase;

static const SubcarrierCase subcarrier_cases[] = {
  /* SMPTE 170M-2004 11.2: 5 MHz × 63/88, 455/2 of the line rate */
  { "ntsc-m", BW_SYSTEM_NTSC_M, { 455, 2 }, { 2250000, 143 }, 3579545.4545454545, 1e-9 },
  { "ntsc-j", BW_SYSTEM_NTSC_J, { 455, 2 }, { 2250000, 143 }, 3579545.4545454545, 1e-9 },
  /* ITU-R BT.470-6, BT.1700: (1135/4 + 1/625) fH = 4 433 618.75 Hz, the 25 Hz offset included */
  { "pal-b", BW_SYSTEM_PAL_B, { 709379, 2500 }, { 15625, 1 }, 4433618.75, 0 },
  /* ITU-R BT.1700 Part B: 909/4 fH. Printed 3 575 611.49 Hz, from a rounded line rate; the
   * 3 579 611.49 of BT.470-6 is a misprint. */
  { "pal-m", BW_SYSTEM_PAL_M, { 909, 4 }, { 2250000, 143 }, 3575611.888112, 0.5e-6 },
  /* ITU-R BT.470-6, Argentina: (917/4 + 1/625) fH */
  { "pal-n", BW_SYSTEM_PAL_N, { 573129, 2500 }, { 15625, 1 }, 3582056.25, 0 },
  /* ITU-R BT.1700 Part C: D'R at rest, 282 fH */
  { "secam", BW_SYSTEM_SECAM_L, { 282, 1 }, { 15625, 1 }, 4406250, 0 },
};

static void
test_subcarrier (gconstpointer data)
{
  const SubcarrierCase *c = data;
  BwRatio subcarrier_hz = bw_system_facts (c->system)->subcarrier_hz;
  BwRatio product_hz = BW_RATIO_NONE;

  g_assert_true (bw_ratio_multiply (c->of_line_rate, c->line_rate_hz, &product_hz));
  g_assert_cmpint (bw_ratio_compare (subcarrier_hz, product_hz), ==, 0);
  g_assert_true (bw_near (bw_ratio_to_double (subcarrier_hz), c->value_hz, c->tolerance_hz));
}

/* Two systems that no broadcast standard lays down: NTSC or PAL modulation on 4.43 MHz (common
 * practice, no source). What is checked is that they share PAL's subcarrier. */
static void
test_shared_subcarrier (void)
{
  BwRatio pal_hz = bw_system_facts (BW_SYSTEM_PAL_B)->subcarrier_hz;
  g_assert_cmpint (bw_ratio_compare (bw_system_facts (BW_SYSTEM_NTSC_443)->subcarrier_hz, pal_hz),
                   ==, 0);
  g_assert_cmpint (bw_ratio_compare (bw_system_facts (BW_SYSTEM_PAL_60)->subcarrier_hz, pal_hz), ==,
                   0);
  g_assert_true (bw_ratio_is_none (bw_system_facts (BW_SYSTEM_NONE)->subcarrier_hz));
}

/* Picture and sync. SMPTE 170M-2004 table 1: 100 to 40 IRE. ITU-R BT.1700 table 2 and Part A
 * note 1 (Japan: no setup); BT.470-6 table 2 (system N of Argentina: 0 and 43). */

typedef struct
{
  const char *name;
  BwColourSystem system;
  double white_v;
  double sync_v;
  double setup_ire;
} FactsCase;

static const FactsCase facts_cases[] = {
  { "ntsc-m", BW_SYSTEM_NTSC_M, 0.7142857142857143, 0.2857142857142857, 7.5 },
  { "ntsc-j", BW_SYSTEM_NTSC_J, 0.7142857142857143, 0.2857142857142857, 0 },
  { "pal-b", BW_SYSTEM_PAL_B, 0.7, 0.3, 0 },
  { "pal-n", BW_SYSTEM_PAL_N, 0.7, 0.3, 0 },
  { "secam-l", BW_SYSTEM_SECAM_L, 0.7, 0.3, 0 },
  { "component", BW_SYSTEM_NONE, 0.7, 0.3, 0 },
};

static void
test_facts (gconstpointer data)
{
  const FactsCase *c = data;
  const BwSystemFacts *facts = bw_system_facts (c->system);

  g_assert_true (bw_near (facts->white_v, c->white_v, 1e-15));
  g_assert_true (bw_near (facts->sync_v, c->sync_v, 1e-15));
  g_assert_cmpfloat (facts->setup_ire, ==, c->setup_ire);
  g_assert_true (bw_near (facts->white_v + facts->sync_v, 1, 1e-15)); /* 1 V in all */
}

/* Termination. A 75 Ω source is 2 V behind 75 Ω for a nominal 1 V (SMPTE 170M-2004 15.2: source,
 * cable and load are 75 Ω); the rest is the voltage divider 2 R / (R + 75). */

typedef struct
{
  const char *name;
  double load_ohm;
  double ratio;
  double tolerance;
} LoadCase;

static const LoadCase load_cases[] = {
  { "one-75-ohm", 75, 1.0, 1e-15 },
  { "none", 1e15, 2.0, 1e-12 },
  { "two-75-ohm", 37.5, 0.6667, 0.5e-4 },
  { "three-75-ohm", 25, 0.5, 1e-15 },
  { "75-ohm-and-10-kilohm", 74.44168734491315, 0.9963, 0.5e-4 },
  { "50-ohm", 50, 0.8, 1e-15 },
};

static void
test_load (gconstpointer data)
{
  const LoadCase *c = data;
  double level_v = bw_level_at_load (1, BW_LOAD_75_OHM, 75, c->load_ohm);
  double sync_v = bw_level_at_load (0.3, BW_LOAD_75_OHM, 75, c->load_ohm);

  g_assert_true (bw_near (level_v, c->ratio, c->tolerance));
  g_assert_true (bw_near (sync_v, 0.3 * level_v, 1e-15)); /* sync goes with the picture */
}

/* A source without resistance of its own does not change with the load. */
static void
test_voltage_source (void)
{
  g_assert_cmpfloat (bw_level_at_load (0.7, BW_LOAD_75_OHM, 0, 75), ==, 0.7);
  g_assert_cmpfloat (bw_level_at_load (0.7, BW_LOAD_75_OHM, 0, 37.5), ==, 0.7);
  g_assert_cmpfloat (bw_level_at_load (5, BW_LOAD_OPEN, 0, 75), ==, 5);
}

/* Levels stated without load: 5 V behind 330 Ω and other values into 75 Ω give these volts
 * (divider 75/(75 + R)). */
static void
test_open_level (void)
{
  static const double cases[][2] = {
    { 330, 0.926 }, { 470, 0.688 }, { 1000, 0.349 }, { 1500, 0.238 }
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_true (
        bw_near (bw_level_at_load (5, BW_LOAD_OPEN, cases[i][0], 75), cases[i][1], 0.5e-3));
}

static void
test_parallel (void)
{
  g_assert_cmpfloat (bw_parallel_ohm (75, 75), ==, 37.5);
  g_assert_true (bw_near (bw_parallel_ohm (75, 10e3), 74.44, 0.5e-2));
  g_assert_cmpfloat (bw_parallel_ohm (75, 10e3), ==, bw_parallel_ohm (10e3, 75));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (ire_cases); i++)
    add ("ire", ire_cases[i].name, &ire_cases[i], test_ire);
  for (gsize i = 0; i < G_N_ELEMENTS (subcarrier_cases); i++)
    add ("subcarrier", subcarrier_cases[i].name, &subcarrier_cases[i], test_subcarrier);
  for (gsize i = 0; i < G_N_ELEMENTS (facts_cases); i++)
    add ("facts", facts_cases[i].name, &facts_cases[i], test_facts);
  for (gsize i = 0; i < G_N_ELEMENTS (load_cases); i++)
    add ("load", load_cases[i].name, &load_cases[i], test_load);
  g_test_add_func ("/level/subcarrier/shared-with-pal", test_shared_subcarrier);
  g_test_add_func ("/level/voltage-source", test_voltage_source);
  g_test_add_func ("/level/open-level", test_open_level);
  g_test_add_func ("/level/parallel", test_parallel);
  return g_test_run ();
}
