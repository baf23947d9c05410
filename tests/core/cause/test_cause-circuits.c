/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Causes that are a part or a d.c. path: attenuator, capacitor, source resistance. */
#include "test_cause-case.h"

static BwCauseCase
logic_into_75 (double driver_ohm)
{
  BwCauseCase c;
  bw_cause_case_standard (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, BW_CONDUCTOR_SYNC, &c);
  c.form.own_sync_v = 5;
  c.sync_stated = BW_LOAD_OPEN;
  c.sync_ohm = driver_ohm;
  return c;
}

/* 5 V from 25 Ω straight into 75 Ω: 5 × 75/100 = 3.75 V, where 1.2 kΩ in the lead would leave
 * 5 × 75/1300 = 0.288 V (voltage divider). */
static void
test_attenuator_missing (void)
{
  BwCauseCase c = logic_into_75 (25);
  BwScopeReadings readings = { 0 };
  c.series_ohm = 1200;
  bw_scope_readings_set (&readings, BW_SCOPE_SYNC, 3.75);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_ATTENUATOR_MISSING);
  NEAR (cause.predicted[BW_SCOPE_SYNC].high, 3.75, 1e-9);
  NEAR (cause.faults[0].ratio, 1300.0 / 100, 1e-9);
  assert_says (&c, &readings, &cause, WORDS ("1.2", "3.75", "288"));
}

/* The attenuator into an input without 75 Ω does nothing: 5 V by 1.2 kΩ into 10 kΩ is 4.46 V
 * (voltage divider). */
static void
test_attenuator_unloaded (void)
{
  BwCauseCase c = logic_into_75 (0);
  BwScopeReadings readings = { 0 };
  c.series_ohm = 1200;
  bw_scope_readings_set (&readings, BW_SCOPE_SYNC, 4.46);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_UNTERMINATED);
  NEAR (cause.predicted[BW_SCOPE_SYNC].high, 4.46, 0.005);
}

/* Twice of everything from 75 Ω is a line without its 75 Ω, or near it. A source without resistance of
 * its own gives the same into any load: there that cannot be blamed. */
static void
test_voltage_source (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.6, 1.4, 0, 0.6);
  g_assert_cmpint (first_cause (&c, &readings).faults[0].kind, ==, BW_FAULT_UNTERMINATED);
  c.source_ohm = 0;
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  for (guint i = 0; i < causes->len; i++)
    {
      const BwCause *cause = &g_array_index (causes, BwCause, i);
      for (guint k = 0; k < cause->n_faults; k++)
        g_assert_cmpint (cause->faults[k].kind, !=, BW_FAULT_UNTERMINATED);
    }
}

/* 220 µF around 150 Ω, τ = 33 ms: a white field of 625 lines tilts by 3.7 % (tests/core/circuit/coupling_check.py
 * says 3.745 %, its picture 0.7 V and its sync 0.3 V); its line by 0.045 %. */
static void
test_tilt (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.3, 0.7, 0, 0.3);
  bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 0.03745);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_AC_COUPLED);
  g_assert_true (bw_near (cause.faults[0].farad, 220e-6, 2e-6));
  NEAR (cause.predicted[BW_SCOPE_LINE_TILT].high, 0.449e-3, 1e-5);
  assert_says (&c, &readings, &cause, WORDS ("220", "µF"));

  /* a capacitor that has dried out to a tenth: 22 µF tilt by 31.8 % by the script */
  c.coupling = BW_COUPLING_AC;
  c.capacitor_f = 220e-6;
  bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 0.318);
  cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_OTHER_CAPACITOR);
  g_assert_true (bw_near (cause.faults[0].farad, 22e-6, 0.4e-6));
}

/* 1158 µF around 15 Ω, by the script: three digits without an exponent. */
static void
test_large_capacitor (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.3, 0.7, 0, 0.3);
  c.coupling_ohm = 15;
  bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 0.070666);
  BwCause cause = first_cause (&c, &readings);
  assert_says (&c, &readings, &cause, WORDS ("1160\u00a0µF"));
}

/* Behind a capacitor the mean is zero: with a white picture of 700 mV for 52/64 of the line and
 * 575/625 of the lines blanking lies below zero, with a black one a little above. */
static void
test_floating (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.3, 0.7, 0, 0.3);
  bw_scope_readings_set (&readings, BW_SCOPE_DC, -0.3);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_AC_COUPLED);
  double picture_v = 0.7 * 52 / 64 * 575 / 625;
  NEAR (cause.predicted[BW_SCOPE_DC].high - cause.predicted[BW_SCOPE_DC].low, picture_v, 0.02);

  bw_scope_readings_set (&readings, BW_SCOPE_DC, 1.2);
  cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_DC_OFFSET);
  assert_says (&c, &readings, &cause, WORDS ("1.2", "2.4"));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/cause-circuits/attenuator-missing", test_attenuator_missing);
  g_test_add_func ("/cause-circuits/attenuator-unloaded", test_attenuator_unloaded);
  g_test_add_func ("/cause-circuits/voltage-source", test_voltage_source);
  g_test_add_func ("/cause-circuits/tilt", test_tilt);
  g_test_add_func ("/cause-circuits/large-capacitor", test_large_capacitor);
  g_test_add_func ("/cause-circuits/floating", test_floating);
  return g_test_run ();
}
