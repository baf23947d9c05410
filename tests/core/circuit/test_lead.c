/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/lead.h"

#include <math.h>
#include <string.h>

#include "support.h"

static GPtrArray *
load_text (const char *text, GPtrArray *faults)
{
  return bw_lead_types_load (text, strlen (text), "leads.ini", faults);
}

/* A type with the figures of a case. */
static BwLeadType
type_of (double velocity, double loss_db_per_m, double loss_hz)
{
  return (BwLeadType){ .velocity = velocity,
                       .loss_db_per_m = loss_db_per_m,
                       .loss_hz = loss_hz,
                       .law_from_hz = 5e6,
                       .law_to_hz = 100e6 };
}

/* Delay: 1/(VF c), with c of the SI. Derived: .66 5.054, .695 4.7995, .78 4.276, .83 4.019 ns/m;
 * 10 m of .66 are 50.5 ns, and a sample of 13.5 MHz is 14.66 m. */
static void
test_delay (void)
{
  static const double cases[][2] = {
    { 0.66, 5.054 }, { 0.695, 4.7995 }, { 0.78, 4.276 }, { 0.83, 4.019 }
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwLeadType type = type_of (cases[i][0], 0.1, 10e6);
      bw_test_near (bw_lead_delay_s_per_m (&type) * 1e9, cases[i][1], 5e-4);
    }
  BwLeadType type = type_of (0.66, 0.1, 10e6);
  bw_test_near (10 * bw_lead_delay_s_per_m (&type), 50.5e-9, 0.05e-9);
  bw_test_near (1 / 13.5e6 / bw_lead_delay_s_per_m (&type), 14.66, 5e-3);
}

/* The root law from 2.0 dB/100 ft at 27 MHz. Derived: 1 MHz 1.26, 5 MHz 2.82, 10 MHz 3.99
 * dB/100 m. */
static void
test_loss (void)
{
  BwLeadType type = type_of (0.66, 2.0 / 30.48, 27e6);
  bw_test_near (bw_lead_type_loss_db (&type, 100, 1e6), 1.26, 6e-3);
  bw_test_near (bw_lead_type_loss_db (&type, 100, 5e6), 2.82, 6e-3);
  bw_test_near (bw_lead_type_loss_db (&type, 100, 10e6), 3.99, 6e-3);
  g_assert_false (bw_lead_in_law (&type, 1e6));
  g_assert_true (bw_lead_in_law (&type, 10e6));
  for (double length_m = 1; length_m < 1000; length_m *= 3)
    {
      double hz = bw_lead_type_3_db_hz (&type, length_m);
      bw_test_near (bw_lead_type_loss_db (&type, length_m, hz), 10 * log10 (2), 1e-9);
    }
  bw_test_near (bw_lead_type_3_db_hz (&type, 0), 0, 0);
}

/* A lead whose 3 dB frequency is the source's highest takes 1 − 1/√2 of its lines; and 5 ns of
 * 52 µs over a scan of 0.4 m. Arithmetic. */
static void
test_picture (void)
{
  BwLeadType type = type_of (0.66, 0.1, 10e6);
  double length_m = 20 * log10 (sqrt (2)) / 0.1;
  BwLeadCase what = { .lead = { &type, length_m, 1 / bw_lead_delay_s_per_m (&type) * 5e-9 },
                      .top_hz = 10e6,
                      .source_tvl = 800,
                      .active_s = 52e-6,
                      .pixel_clock_hz = 13.5e6,
                      .width_m = 0.36,
                      .overscan_h = 0.1 };
  BwLeadFigures figures;
  bw_lead_compute (&what, &figures);
  bw_test_near (figures.lead_hz, 10e6, 1e-3);
  bw_test_near (figures.loss_db, 3.0103, 1e-4);
  bw_test_near (figures.lost_tvl, 800 * (1 - sqrt (0.5)), 1e-6);
  bw_test_near (figures.shift_s, 5e-9, 1e-15);
  bw_test_near (figures.shift_px, 5e-9 * 13.5e6, 1e-9);
  bw_test_near (figures.shift_m, 0.4 * 5e-9 / 52e-6, 1e-9);
  g_assert_false (figures.outside_law);

  /* what is above or below where the law of the lead holds is told so */
  type.law_to_hz = 9.9e6;
  bw_lead_compute (&what, &figures);
  g_assert_true (figures.outside_law);
  type.law_to_hz = 10.1e6;
  bw_lead_compute (&what, &figures);
  g_assert_false (figures.outside_law);
  type.law_from_hz = 10.05e6;
  bw_lead_compute (&what, &figures);
  g_assert_true (figures.outside_law);
}

static void
test_no_lead (void)
{
  BwLeadCase what = { .top_hz = 10e6, .source_tvl = 800, .active_s = 52e-6 };
  BwLeadFigures figures;
  bw_lead_compute (&what, &figures);
  bw_test_near (figures.lead_hz, 0, 0);
  bw_test_near (figures.loss_db, 0, 0);
  bw_test_near (figures.lost_share, 0, 0);
}

/* Skin effect of a coaxial line with copper conductors: series resistance √(π f μ ρ)/π (1/d + 1/D),
 * and loss R/(2 Z). What the catalogue calls computed must be that; the figures that are common
 * practice must not lie below what copper of their size would lose. */
static double
copper_db_100m (double d_m, double shield_m, double hz)
{
  double surface_ohm = sqrt (G_PI * hz * 4e-7 * G_PI * 1.724e-8);
  double ohm_per_m = surface_ohm / G_PI * (1 / d_m + 1 / shield_m);
  return 100 * 8.685889638 * ohm_per_m / (2 * 75);
}

static void
test_shipped (void)
{
  g_autoptr (GPtrArray) types = bw_lead_types_shipped ();
  const BwLeadType *thin = bw_lead_type_find (types, "coax-2.5mm");
  const BwLeadType *copper = bw_lead_type_find (types, "coax-6mm-copper");
  const BwLeadType *large = bw_lead_type_find (types, "coax-7mm-copper");
  const BwLeadType *plated = bw_lead_type_find (types, "coax-6mm-solid");

  g_assert_cmpuint (types->len, ==, 6);
  g_assert_true (thin && copper && large && plated);
  for (guint i = 0; i < types->len; i++)
    {
      const BwLeadType *type = types->pdata[i];
      g_assert_cmpint (type->source[0], !=, '\0');
    }
  bw_test_near (bw_lead_type_loss_db (copper, 100, 10e6), copper_db_100m (0.584e-3, 3.71e-3, 10e6),
                0.06);
  bw_test_near (bw_lead_type_loss_db (large, 100, 10e6), copper_db_100m (1.02e-3, 4.6e-3, 10e6),
                0.04);
  g_assert_cmpfloat (bw_lead_type_loss_db (thin, 100, 10e6), >,
                     copper_db_100m (0.305e-3, 1.6e-3, 10e6));
  g_assert_cmpfloat (bw_lead_type_loss_db (plated, 100, 10e6), >,
                     copper_db_100m (0.584e-3, 3.71e-3, 10e6));
  g_assert_false (bw_lead_in_law (plated, 1e6));
  g_assert_true (bw_lead_in_law (copper, 1e6));
}

#define SOUND                                                                                      \
  "name=Own\nimpedance=75 ohm\nvelocity=66 %\nloss=5 dB\nloss_frequency=10 MHz\nlaw_from=1 MHz\n"  \
  "law_to=100 MHz\n"

/* The user's own replaces the shipped one of the same id; the others stay. */
static void
test_own (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "leads.ini", NULL);
  g_assert_true (g_file_set_contents (path, "[coax-bundle]\n" SOUND "[own]\n" SOUND, -1, NULL));
  g_autoptr (GPtrArray) types = bw_lead_types_new (folder, faults);
  g_assert_true (bw_test_no_faults (faults));
  g_assert_cmpuint (types->len, ==, 7);
  bw_test_near (bw_lead_type_find (types, "coax-bundle")->loss_db_per_m, 0.05, 1e-12);
  g_assert_nonnull (bw_lead_type_find (types, "own"));
  bw_test_folder_remove (folder);
}

static void
test_faults (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (GPtrArray) types = load_text (
      "[a]\nname=A\nimpedance=75 ohm\nvelocity=66 %\nloss=5\nloss_frequency=10 MHz\n"
      "law_from=1 MHz\nlaw_to=100 MHz\n"
      "[b]\nname=B\nimpedance=75 ohm\nvelocity=66 %\nloss=5 dB\nloss_frequency=10 MHz\n"
      "law_from=20 MHz\nlaw_to=100 MHz\n"
      "[c]\nname=C\nimpedance=75 ohm\nvelocity=166 %\nloss=5 dB\nloss_frequency=10 MHz\n"
      "law_from=1 MHz\nlaw_to=100 MHz\n"
      "[d]\n" SOUND,
      faults);
  g_assert_cmpuint (types->len, ==, 1);
  g_assert_true (bw_test_has_fault (faults, BW_LEAD_ERROR, BW_LEAD_ERROR_LOSS,
                                    WORDS ("leads.ini", "[a]", "loss", "dB")));
  g_assert_true (bw_test_has_fault (faults, BW_LEAD_ERROR, BW_LEAD_ERROR_LAW,
                                    WORDS ("leads.ini", "[b]", "law_from")));
  g_assert_true (bw_test_has_fault (faults, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE,
                                    WORDS ("leads.ini", "[c]", "velocity")));
}

/* The loss over 100 m may be 0.01 to 1000 dB (our own choice), and a unit must stand there. */
static void
test_loss_limits (void)
{
  static const struct
  {
    const char *loss;
    gboolean taken;
  } cases[] = { { "0.0099 dB", FALSE }, { "0.01 dB", TRUE }, { "1000 dB", TRUE },
                { "1001 dB", FALSE },   { "5 Np", FALSE },   { "dB", FALSE },
                { "5dB", TRUE },        { "5 dB/m", FALSE }, { "-5 dB", FALSE },
                { "nan dB", FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GPtrArray) faults = bw_test_faults_new ();
      g_autofree char *text = g_strdup_printf (
          "[a]\nname=A\nimpedance=75 ohm\nvelocity=66 %%\nloss=%s\nloss_frequency=10 MHz\n"
          "law_from=1 MHz\nlaw_to=100 MHz\n",
          cases[i].loss);
      g_autoptr (GPtrArray) types = load_text (text, faults);
      g_assert_cmpuint (types->len, ==, cases[i].taken ? 1 : 0);
      if (!cases[i].taken)
        g_assert_true (bw_test_has_fault (faults, BW_LEAD_ERROR, BW_LEAD_ERROR_LOSS,
                                          WORDS ("leads.ini", "[a]", "0.01 to 1000")));
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/lead/delay", test_delay);
  g_test_add_func ("/lead/loss", test_loss);
  g_test_add_func ("/lead/picture", test_picture);
  g_test_add_func ("/lead/no-lead", test_no_lead);
  g_test_add_func ("/lead/shipped", test_shipped);
  g_test_add_func ("/lead/own", test_own);
  g_test_add_func ("/lead/faults", test_faults);
  g_test_add_func ("/lead/loss-limits", test_loss_limits);
  return g_test_run ();
}
