/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/raster/colour-system.h"

#include "core/base/quantity.h"
#include "core/raster/reading.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/colour-system/%s/%s", group, name);
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

/* How colour travels: ITU-R BT.470-6 table 2, items 2.9 to 2.11 (NTSC and PAL: amplitude modulation
 * in quadrature, in PAL with the sign of V alternating; SECAM: frequency modulation of one
 * difference a line). The burst of PAL M is not legible in the text that was read; those of 4.43
 * MHz on 525 lines no text lays down. Lines and rates: SMPTE 170M 11.2 and BT.470-6 table 1-1. */

typedef struct
{
  BwColourSystem system;
  gboolean has_phase;
  gboolean alternates;
  int lines;
  double line_rate_hz;
  double field_rate_hz;
  double burst_pp_v;
  int burst_fields;
} ColourCase;

static const ColourCase colour_cases[] = {
  { BW_SYSTEM_NONE, FALSE, FALSE, 0, 0, 0, 0, 0 },
  { BW_SYSTEM_NTSC_M, TRUE, FALSE, 525, 15734.26573, 59.94005994, 0.2857143, 2 },
  { BW_SYSTEM_NTSC_J, TRUE, FALSE, 525, 15734.26573, 59.94005994, 0.2857143, 2 },
  { BW_SYSTEM_NTSC_443, TRUE, FALSE, 525, 15734.26573, 59.94005994, 0, 2 },
  { BW_SYSTEM_PAL_B, TRUE, TRUE, 625, 15625, 50, 0.3, 4 },
  { BW_SYSTEM_PAL_M, TRUE, TRUE, 525, 15734.26573, 59.94005994, 0, 4 },
  { BW_SYSTEM_PAL_N, TRUE, TRUE, 625, 15625, 50, 0.3, 4 },
  { BW_SYSTEM_PAL_60, TRUE, TRUE, 525, 15734.26573, 59.94005994, 0, 0 },
  { BW_SYSTEM_SECAM_L, FALSE, FALSE, 625, 15625, 50, 0, 0 },
};

static void
test_colour (gconstpointer data)
{
  const ColourCase *c = data;
  const BwSystemFacts *facts = bw_system_facts (c->system);

  g_assert_cmpint (bw_system_has_phase (c->system), ==, c->has_phase);
  g_assert_cmpint (bw_system_alternates (c->system), ==, c->alternates);
  g_assert_cmpint (facts->lines, ==, c->lines);
  g_assert_true (bw_near (bw_ratio_to_double (facts->line_rate_hz), c->line_rate_hz, 0.5e-5));
  g_assert_true (bw_near (bw_ratio_to_double (facts->field_rate_hz), c->field_rate_hz, 0.5e-8));
  g_assert_true (bw_near (facts->burst_pp_v, c->burst_pp_v, 0.5e-7));
  g_assert_cmpint (facts->burst_fields, ==, c->burst_fields);
}

/* Two interlaced fields are one frame, exactly. */
static void
test_rates_agree (void)
{
  for (BwColourSystem system = BW_SYSTEM_NTSC_M; system < BW_N_SYSTEMS; system++)
    {
      const BwSystemFacts *facts = bw_system_facts (system);
      BwRatio product = BW_RATIO_NONE;
      const BwRatio lines_per_field = { facts->lines, 2 };
      g_assert_true (bw_ratio_multiply (facts->field_rate_hz, lines_per_field, &product));
      g_assert_cmpint (bw_ratio_compare (product, facts->line_rate_hz), ==, 0);
    }
}

/* The usual raster is in the catalogue and has the rates of the system; its limits are shipped, for
 * that raster. */
static void
test_names (void)
{
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  guint n_limits = 0;

  g_assert_null (bw_system_facts (BW_SYSTEM_NONE)->raster);
  for (BwColourSystem system = BW_SYSTEM_NTSC_M; system < BW_N_SYSTEMS; system++)
    {
      const BwSystemFacts *facts = bw_system_facts (system);
      const BwRaster *raster = bw_test_raster (facts->raster);
      BwRasterFigures figures;
      bw_raster_figures (raster, &figures);
      g_assert_cmpint (figures.lines_per_frame, ==, facts->lines);
      g_assert_cmpint (bw_ratio_compare (raster->line_rate_hz, facts->line_rate_hz), ==, 0);
      if (facts->limits == NULL)
        continue;
      n_limits++;
      const BwStandardLimits *limits = bw_limits_find (shipped, facts->limits);
      g_assert_nonnull (limits);
      g_assert_cmpstr (limits->raster, ==, facts->raster);
    }
  g_assert_cmpuint (n_limits, ==, 2);
}

/* NTSC M and that of Japan differ in setup alone (ITU-R BT.1700 Part A note 1); 525-line PAL on
 * 4.43 MHz has the subcarrier of PAL B and other lines. */
static void
test_decoded_alike (void)
{
  guint twins = BW_BIT (BW_SYSTEM_NTSC_M) | BW_BIT (BW_SYSTEM_NTSC_J);
  g_assert_cmphex (bw_systems_decoded_alike (BW_SYSTEM_NTSC_M), ==, twins);
  g_assert_cmphex (bw_systems_decoded_alike (BW_SYSTEM_NTSC_J), ==, twins);
  for (BwColourSystem system = BW_SYSTEM_NTSC_443; system < BW_N_SYSTEMS; system++)
    g_assert_cmphex (bw_systems_decoded_alike (system), ==, BW_BIT (system));
}

static void
test_field_rates (void)
{
  g_assert_true (bw_system_suits_field_rate (BW_SYSTEM_NONE, 85));
  g_assert_true (bw_system_suits_field_rate (BW_SYSTEM_NTSC_M, 60));
  g_assert_false (bw_system_suits_field_rate (BW_SYSTEM_NTSC_M, 50));
  g_assert_true (bw_system_suits_field_rate (BW_SYSTEM_SECAM_L, 50.08));
  g_assert_false (bw_system_suits_field_rate (BW_SYSTEM_PAL_N, 59.94));
  g_assert_cmpuint (bw_system_of_field_rate (59.94), ==, BW_SYSTEM_NTSC_M);
  g_assert_cmpuint (bw_system_of_field_rate (50), ==, BW_SYSTEM_PAL_B);
}

/* CTA-861: VIC 6 and 8 are 525 and 262 or 263 lines, VIC 21 and 23 are 625 and 312 to 314. */
static void
test_broadcast_lines (void)
{
  static const int of_525[] = { 262, 263, 525 }, of_625[] = { 312, 313, 314, 625 };
  static const int of_none[] = { 1, 261, 264, 311, 315, 524, 526, 624, 626, 750, 1125 };
  for (gsize i = 0; i < G_N_ELEMENTS (of_525); i++)
    g_assert_cmpint (bw_broadcast_lines (of_525[i]), ==, 525);
  for (gsize i = 0; i < G_N_ELEMENTS (of_625); i++)
    g_assert_cmpint (bw_broadcast_lines (of_625[i]), ==, 625);
  for (gsize i = 0; i < G_N_ELEMENTS (of_none); i++)
    g_assert_cmpint (bw_broadcast_lines (of_none[i]), ==, 0);
}

/* The burst stands on the back porch: NTSC from 19 cycles after 0H, 5.31 µs, for 9 cycles (SMPTE
 * 170M table 2); PAL from 5.6 ± 0.1 µs for 10 ± 1 cycles, 2.25 ± 0.23 µs (ITU-R BT.470-6 table 2,
 * items 2.15 and 2.16). */
static void
test_burst_place (void)
{
  const BwSystemFacts *ntsc = bw_system_facts (BW_SYSTEM_NTSC_M);
  const BwSystemFacts *pal = bw_system_facts (BW_SYSTEM_PAL_B);
  g_assert_true (bw_near (ntsc->burst_from_s, 5.308e-6, 0.5e-9));
  g_assert_true (bw_near (ntsc->burst_cycles / bw_ratio_to_double (ntsc->subcarrier_hz), 2.514e-6,
                          0.5e-9));
  g_assert_true (bw_near (pal->burst_from_s, 5.6e-6, 1e-12));
  g_assert_true (bw_near (pal->burst_cycles / bw_ratio_to_double (pal->subcarrier_hz), 2.2555e-6,
                          0.5e-10));
}

/* Only an interlaced raster with composite sync and the lines of the system has its lines named. */
static void
test_knows_burst (void)
{
  const BwRaster *of_525 = bw_test_raster ("525-59.94-interlaced");
  const BwRaster *of_625 = bw_test_raster ("625-50-interlaced");
  g_assert_true (bw_system_knows_burst (BW_SYSTEM_NTSC_M, of_525));
  g_assert_false (bw_system_knows_burst (BW_SYSTEM_NTSC_M, of_625));
  g_assert_true (bw_system_knows_burst (BW_SYSTEM_PAL_B, of_625));
  g_assert_false (bw_system_knows_burst (BW_SYSTEM_PAL_60, of_525));
  g_assert_false (bw_system_knows_burst (BW_SYSTEM_SECAM_L, of_625));
  g_assert_false (bw_system_knows_burst (BW_SYSTEM_NONE, of_625));
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
  for (gsize i = 0; i < G_N_ELEMENTS (colour_cases); i++)
    add ("colour", bw_kind_id (&bw_colour_systems, colour_cases[i].system), &colour_cases[i],
         test_colour);
  g_test_add_func ("/colour-system/subcarrier/shared-with-pal", test_shared_subcarrier);
  g_test_add_func ("/colour-system/rates-agree", test_rates_agree);
  g_test_add_func ("/colour-system/names", test_names);
  g_test_add_func ("/colour-system/decoded-alike", test_decoded_alike);
  g_test_add_func ("/colour-system/field-rates", test_field_rates);
  g_test_add_func ("/colour-system/broadcast-lines", test_broadcast_lines);
  g_test_add_func ("/colour-system/burst-place", test_burst_place);
  g_test_add_func ("/colour-system/knows-burst", test_knows_burst);
  return g_test_run ();
}
