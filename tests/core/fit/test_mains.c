/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <string.h>

#include "core/fit/mains.h"

/* The supply against the rating plate. Transformer arithmetic: S = U·I (IEC 60050-131: apparent
 * power); flux in a transformer goes with U/f (Faraday's law for a sinusoidal voltage). Thresholds:
 * common practice, no source. */

static BwMonitor *
monitor_rated (const char *volts, const char *hertz, double amperes)
{
  BwMonitor *monitor = bw_monitor_new ();
  g_assert_true (
      bw_quantity_parse_bands (volts, BW_DIMENSION_VOLTAGE, '.', &monitor->mains_v, NULL));
  g_assert_true (
      bw_quantity_parse_bands (hertz, BW_DIMENSION_FREQUENCY, '.', &monitor->mains_hz, NULL));
  monitor->mains_a = amperes;
  return monitor;
}

static void
test_suits (void)
{
  g_autoptr (BwMonitor) monitor = monitor_rated ("100 V .. 120 V", "50 Hz .. 60 Hz", 1.4);
  BwMains mains;
  g_assert_true (bw_mains_judge (monitor, 120, 60, &mains));
  g_assert_cmpint (mains.voltage, ==, BW_SEVERITY_OK);
  g_assert_cmpint (mains.frequency, ==, BW_SEVERITY_OK);
  g_assert_cmpfloat (mains.transformer_va, ==, 0);
}

/* What is needed names the voltages and the size, where the current is known. */
static void
test_transformer (void)
{
  g_autoptr (BwMonitor) monitor = monitor_rated ("100 V .. 120 V", "50 Hz .. 60 Hz", 1.4);
  g_autofree char *sized = bw_mains_transformer_words (monitor, 230, '.');
  g_autofree char *danger = bw_mains_says (monitor, 230, 50, '.');
  g_assert_nonnull (strstr (sized, "of at least 260 VA"));
  g_assert_nonnull (strstr (danger, "local codes and licensed practice"));
  monitor->mains_a = 0;
  g_autofree char *plain = bw_mains_transformer_words (monitor, 230, '.');
  g_autofree char *suits = bw_mains_says (monitor, 110, 50, '.');
  g_assert_null (strstr (plain, "VA"));
  g_assert_null (strstr (suits, "local codes"));
}

static void
test_too_high (void)
{
  /* 230 V on a 100 to 120 V set of 1.4 A: down to 120 V, 1.5 × 120 V × 1.4 A = 252 VA */
  g_autoptr (BwMonitor) monitor = monitor_rated ("100 V .. 120 V", "50 Hz .. 60 Hz", 1.4);
  BwMains mains;
  g_assert_true (bw_mains_judge (monitor, 230, 50, &mains));
  g_assert_cmpint (mains.voltage, ==, BW_SEVERITY_CURABLE);
  g_assert_cmpfloat_with_epsilon (mains.transformer_va, 252, 1e-9);
  g_autofree char *says = bw_mains_says (monitor, 230, 50, '.');
  g_assert_nonnull (strstr (says, "260 VA")); /* rounded up to tens */
}

/* 60 Hz where 50 Hz are rated is said, and that the flux rises is not; rates are told to three digits. */
static void
test_too_quick (void)
{
  g_autoptr (BwMonitor) monitor = monitor_rated ("220 V .. 240 V", "50.02 Hz .. 50.46 Hz", 1);
  g_autofree char *says = bw_mains_says (monitor, 230, 59.94, '.');
  g_assert_nonnull (strstr (says, "The frequency of 59.9"));
  g_assert_nonnull (strstr (says, "above the rated 50–50.5"));
  g_assert_null (strstr (says, "flux"));
}

/* Volts of a plate are told to four digits: 117.36 V as 117.4 V. */
static void
test_digits (void)
{
  g_autoptr (BwMonitor) monitor = monitor_rated ("100 V .. 117.36 V", "50 Hz .. 60 Hz", 0);
  static const double supplies_v[] = { 110, 120, 230 };
  for (gsize i = 0; i < G_N_ELEMENTS (supplies_v); i++)
    {
      g_autofree char *says = bw_mains_says (monitor, supplies_v[i], 50, '.');
      g_assert_nonnull (strstr (says, "117.4"));
      g_assert_null (strstr (says, "117.36"));
    }
}

static void
test_just_outside (void)
{
  /* 127 V is 5.8 % above 120 V, within 6 % */
  g_autoptr (BwMonitor) monitor = monitor_rated ("100 V .. 120 V", "50 Hz .. 60 Hz", 1.4);
  BwMains mains;
  g_assert_true (bw_mains_judge (monitor, 127, 60, &mains));
  g_assert_cmpint (mains.voltage, ==, BW_SEVERITY_TIGHT);
  g_assert_true (bw_mains_judge (monitor, 128, 60, &mains)); /* 6.7 % */
  g_assert_cmpint (mains.voltage, ==, BW_SEVERITY_CURABLE);
}

static void
test_flux (void)
{
  /* a 60 Hz transformer on 50 Hz at the same voltage: flux up by 60/50 = 1.2 */
  g_autoptr (BwMonitor) monitor = monitor_rated ("110 V .. 120 V", "60 Hz", 1);
  BwMains mains;
  g_assert_true (bw_mains_judge (monitor, 115, 50, &mains));
  g_assert_cmpint (mains.frequency, ==, BW_SEVERITY_CURABLE);
  g_assert_cmpfloat_with_epsilon (mains.flux, 1.2, 1e-12);
  g_autofree char *says = bw_mains_says (monitor, 115, 50, '.');
  g_assert_nonnull (strstr (says, "20 %"));
}

static void
test_unknown (void)
{
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  g_autoptr (BwMonitor) volts = monitor_rated ("110 V .. 120 V", "60 Hz", 1);
  g_autoptr (BwMonitor) hertz = monitor_rated ("110 V .. 120 V", "60 Hz", 1);
  BwMains mains;

  /* the voltage is judged by itself, and so is the frequency */
  volts->mains_hz.n = 0;
  g_assert_true (bw_mains_judge (volts, 230, 50, &mains));
  g_assert_cmpint (mains.frequency, ==, BW_SEVERITY_UNJUDGED);
  g_assert_true (bw_mains_is_danger (&mains));
  hertz->mains_v.n = 0;
  g_assert_true (bw_mains_judge (hertz, 115, 50, &mains));
  g_assert_cmpint (mains.voltage, ==, BW_SEVERITY_UNJUDGED);
  g_assert_true (bw_mains_is_danger (&mains));
  g_assert_false (bw_mains_judge (hertz, 115, 0, &mains));
  g_assert_false (bw_mains_judge (monitor, 120, 60, &mains));
  g_autofree char *says = bw_mains_says (monitor, 0, 60, '.');
  g_assert_nonnull (strstr (says, "Enter"));
}

/* What is known of the voltage is judged without the frequency, and the reverse: a set for 100 to
 * 120 V on 230 V is told of all the same. */
static void
test_half_known (void)
{
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  BwMains mains;

  monitor->mains_v = (BwBands){ 1, { { 100, 120 } } };
  monitor->mains_hz = (BwBands){ 1, { { 50, 60 } } };
  g_assert_true (bw_mains_judge (monitor, 230, 0, &mains));
  g_assert_cmpuint (mains.voltage, ==, BW_SEVERITY_CURABLE);
  g_assert_cmpuint (mains.frequency, ==, BW_SEVERITY_UNJUDGED);
  g_autofree char *volts = bw_mains_says (monitor, 230, 0, '.');
  g_assert_nonnull (strstr (volts, "outside the rating"));
  g_assert_nonnull (strstr (volts, "The frequency is not judged"));
  monitor->mains_v.n = 0;
  g_assert_true (bw_mains_judge (monitor, 230, 400, &mains));
  g_assert_cmpuint (mains.voltage, ==, BW_SEVERITY_UNJUDGED);
  g_assert_cmpuint (mains.frequency, ==, BW_SEVERITY_CURABLE);
  g_autofree char *hertz = bw_mains_says (monitor, 230, 400, '.');
  g_assert_nonnull (strstr (hertz, "The voltage is not judged"));
  g_assert_nonnull (strstr (hertz, "above the rated"));
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mains/suits", test_suits);
  g_test_add_func ("/mains/transformer", test_transformer);
  g_test_add_func ("/mains/too-high", test_too_high);
  g_test_add_func ("/mains/too-quick", test_too_quick);
  g_test_add_func ("/mains/digits", test_digits);
  g_test_add_func ("/mains/just-outside", test_just_outside);
  g_test_add_func ("/mains/flux", test_flux);
  g_test_add_func ("/mains/unknown", test_unknown);
  g_test_add_func ("/mains/half-known", test_half_known);
  return g_test_run ();
}
