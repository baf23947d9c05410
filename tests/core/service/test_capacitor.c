/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Electrolytic capacitors against the limits that makers print, and worked figures. */
#include <math.h>

#include "core/circuit/preferred.h"
#include "core/service/capacitor.h"
#include "support.h"

/* tan δ of new parts at 120 Hz and 20 °C as two makers' data sheets of general radial parts have it; ESR is
 * tan δ/(2π f C), worked by hand from it. Above 1000 µF 0.02 is added for each further 1000 µF. */
static const struct
{
  double farad;
  double rated_v;
  double low;
  double high;
  double esr_ohm; /* at 120 Hz, of the lower limit */
} limits[] = {
  { 1000e-6, 35, 0.12, 0.12, 0.159 },  { 470e-6, 50, 0.10, 0.10, 0.282 },
  { 100e-6, 16, 0.16, 0.16, 2.12 },    { 10e-6, 50, 0.10, 0.10, 13.3 },
  { 1000e-6, 6.3, 0.22, 0.22, 0.2918 }, { 100e-6, 10, 0.19, 0.19, 2.52 },
  { 100e-6, 25, 0.14, 0.14, 1.857 },   { 100e-6, 63, 0.09, 0.09, 1.194 },
  { 100e-6, 100, 0.08, 0.08, 1.061 },  { 100e-6, 200, 0.15, 0.18, 1.989 },
  { 100e-6, 400, 0.20, 0.25, 2.653 },  { 3300e-6, 25, 0.186, 0.186, 0.07475 },
  { 100e-6, 40, 0.12, 0.12, 1.592 }, /* between two of the sheets: the lower one's */
};

static void
test_limits (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      BwCapacitor part = { .farad = limits[i].farad, .rated_v = limits[i].rated_v };
      BwLossLimit limit;
      g_assert_true (bw_capacitor_loss_limit (&part, &limit));
      bw_test_near (limit.low, limits[i].low, 1e-9);
      bw_test_near (limit.high, limits[i].high, 1e-9);
      bw_test_near (bw_capacitor_esr (&part, limit.low, 120), limits[i].esr_ohm,
                    limits[i].esr_ohm * 5e-3);
      /* At 100 Hz the same tan δ makes 1.2 times the resistance. */
      bw_test_near (bw_capacitor_esr (&part, limit.low, 100),
                    1.2 * bw_capacitor_esr (&part, limit.low, 120), 1e-9);
    }
  BwLossLimit none = { 7, 7 };
  g_assert_false (bw_capacitor_loss_limit (&(BwCapacitor){ .farad = 1e-4, .rated_v = 4 }, &none));
  g_assert_false (bw_capacitor_loss_limit (&(BwCapacitor){ .farad = 1e-4, .rated_v = 500 }, &none));
  bw_test_near (none.low, 7, 0);
}

/* 0.01·C·V or 3 µA, the greater (2200 µF, 35 V: 770 µA, as a maker prints it); above 100 V 0.06·C·V + 10 µA. */
static void
test_leakage (void)
{
  bw_test_near (bw_capacitor_leakage_limit (&(BwCapacitor){ .farad = 2200e-6, .rated_v = 35 }), 770e-6,
                1e-9);
  bw_test_near (bw_capacitor_leakage_limit (&(BwCapacitor){ .farad = 1e-6, .rated_v = 50 }), 3e-6, 1e-12);
  bw_test_near (bw_capacitor_leakage_limit (&(BwCapacitor){ .farad = 10e-6, .rated_v = 250 }), 160e-6,
                1e-9);
}

/* 1000 µF 35 V, whose limit is 0.159 Ω at 120 Hz and 0.191 Ω at 100 Hz. Limits of ±20 % and of 3 times the
 * resistance from a maker's sheet; that resistance falls as the frequency rises: common practice, no
 * source. */
static const struct
{
  double measured_f;
  double esr_ohm;
  double esr_hz;
  BwWorth worth;
} measured[] = {
  { 900e-6, 0.10, 120, BW_WORTH_GOOD },
  { 900e-6, 0.18, 100, BW_WORTH_GOOD },
  { 900e-6, 0.18, 120, BW_WORTH_WORN },
  { 800e-6, 0.10, 120, BW_WORTH_GOOD }, /* on the limit */
  { 1200e-6, 0.10, 120, BW_WORTH_GOOD },
  { 790e-6, 0.10, 120, BW_WORTH_WORN },
  { 1210e-6, 0.10, 120, BW_WORTH_WORN },
  { 900e-6, 0.47, 120, BW_WORTH_WORN },
  { 900e-6, 0.48, 120, BW_WORTH_SPENT },
  { 550e-6, 0.10, 120, BW_WORTH_SPENT },
  { 1500e-6, 0.10, 120, BW_WORTH_SPENT },
  { 550e-6, 0, 0, BW_WORTH_SPENT },
  { 900e-6, 0, 0, BW_WORTH_NOT_DECIDED },
  { 0, 0.10, 120, BW_WORTH_NOT_DECIDED },
  { 0, 0.20, 120, BW_WORTH_WORN },
  { 900e-6, 0.10, 0, BW_WORTH_NOT_DECIDED },
  { 900e-6, 0.10, 100e3, BW_WORTH_NOT_DECIDED },
  { 900e-6, 0.20, 100e3, BW_WORTH_WORN },
  { 900e-6, 0.60, 100e3, BW_WORTH_SPENT },
  { 900e-6, 0.10, 50, BW_WORTH_GOOD },
  { 900e-6, 0.30, 50, BW_WORTH_NOT_DECIDED },
  { 0, 0, 0, BW_WORTH_NOT_DECIDED },
};

static void
test_worth (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (measured); i++)
    {
      BwCapacitor part = { .farad = 1000e-6, .rated_v = 35, .measured_f = measured[i].measured_f,
                           .esr_ohm = measured[i].esr_ohm, .esr_hz = measured[i].esr_hz };
      g_test_message ("case %" G_GSIZE_FORMAT, i);
      g_assert_cmpuint (bw_capacitor_worth (&part), ==, measured[i].worth);
    }
}

/* Where makers differ, a resistance between their limits decides nothing: 100 µF 200 V, 1.99 and 2.39 Ω. */
static void
test_makers_differ (void)
{
  BwCapacitor part = { .farad = 100e-6, .rated_v = 200, .measured_f = 100e-6, .esr_hz = 120 };
  part.esr_ohm = 1.9;
  g_assert_cmpuint (bw_capacitor_worth (&part), ==, BW_WORTH_GOOD);
  part.esr_ohm = 2.2;
  g_assert_cmpuint (bw_capacitor_worth (&part), ==, BW_WORTH_NOT_DECIDED);
  part.esr_ohm = 2.5;
  g_assert_cmpuint (bw_capacitor_worth (&part), ==, BW_WORTH_WORN);
}

/* The ten-degree law, as makers' technical notes have it: worked by hand. With ripple, 2000 h at 105 °C, 65 °C
 * around it and 1.3 times the rated current: 32 000 × 4^((1 − 1.69) × 0.5) = 19 835 h; without any ripple on
 * a part for 85 °C, 1000 h at 55 °C double: 16 000 h. */
static const struct
{
  double hours;
  double rated_c;
  double around_c;
  double ripple;
  double life;
} lives[] = {
  { 1000, 85, 55, -1, 8000 },     { 2000, 85, 65, -1, 8000 },       { 2000, 105, 65, -1, 32000 },
  { 2000, 105, 75, -1, 16000 },   { 2000, 105, 45, -1, 128000 },    { 2000, 105, 65, 1, 32000 },
  { 2000, 105, 65, 1.3, 19835 },  { 1000, 85, 55, 0, 16000 },       { 2000, 105, 65, 0, 45255 },
  { 1000, 85, 55, 1.3, 4959 },    { 2000, 105, 115, -1, 1000 },
};

static void
test_life (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (lives); i++)
    {
      BwEndurance what = { lives[i].hours * 3600, lives[i].rated_c, lives[i].around_c,
                           lives[i].ripple };
      bw_test_near (bw_capacitor_life (&what) / 3600, lives[i].life, lives[i].life * 1e-4);
    }
  bw_test_near (BW_LIFE_MOST_S, 15 * 8760 * 3600.0, 0);
}

/* Rated voltages as makers' lists have them; E6 of IEC 60063. */
static void
test_replacement (void)
{
  static const double pairs[][2] = { { 35, 35 }, { 12, 16 }, { 40, 50 }, { 6.3, 6.3 }, { 300, 315 },
                                     { 450, 450 }, { 100, 100 }, { 1, 6.3 } };
  static const double values[][2] = { { 1000e-6, 1000e-6 }, { 50e-6, 47e-6 }, { 5000e-6, 4700e-6 },
                                      { 2000e-6, 2200e-6 }, { 64e-6, 68e-6 }, { 40e-6, 47e-6 },
                                      { 9.1e-6, 10e-6 },    { 1.5e-6, 1.5e-6 }, { 250e-6, 220e-6 } };
  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    bw_test_near (bw_capacitor_next_voltage (pairs[i][0]), pairs[i][1], 1e-12);
  bw_test_near (bw_capacitor_next_voltage (500), 0, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    bw_test_near (bw_preferred_capacitor (values[i][0]), values[i][1], 1e-12);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/capacitor/limits", test_limits);
  g_test_add_func ("/capacitor/leakage", test_leakage);
  g_test_add_func ("/capacitor/worth", test_worth);
  g_test_add_func ("/capacitor/makers-differ", test_makers_differ);
  g_test_add_func ("/capacitor/life", test_life);
  g_test_add_func ("/capacitor/replacement", test_replacement);
  return g_test_run ();
}
