/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/connector/connector-private.h"
#include "core/connector/plug.h"

#include <math.h>

#include "core/hookup/selection.h"
#include "support.h"

/* The pins as public tables of each connector give them, typed again: EN 50049-1 / IEC 60933-1 in
 * data sheets that cite it, VESA's 15-pin, the 4-pin mini-DIN, DIN 45322. The standards' own texts
 * were not at hand. Letters: a sound, g ground, v video, s slow switching, f fast switching, d
 * data, p supply. */

static const struct
{
  BwConnector connector;
  BwEdition edition;
  const char *roles;
} role_cases[] = {
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, "aaaggavsgdvdggvfggvvg" },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_1983, "aaaggavsgdvdggvfggvvg" },
  { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, "aaggaaggvvsfggvfggvvg" },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, "vvvdggggpgddvvd" },
  { BW_CONNECTOR_MINI_DIN_4, BW_EDITION_CURRENT, "ggvv" },
  { BW_CONNECTOR_DIN_6, BW_EDITION_CURRENT, "svgapa" },
};

static const char letters[BW_N_PIN_ROLES] = {
  [BW_PIN_NONE] = '-',        [BW_PIN_VIDEO] = 'v',       [BW_PIN_GROUND] = 'g',
  [BW_PIN_SWITCH_SLOW] = 's', [BW_PIN_SWITCH_FAST] = 'f', [BW_PIN_SUPPLY] = 'p',
  [BW_PIN_AUDIO] = 'a',       [BW_PIN_DATA] = 'd',
};

static void
test_roles (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (role_cases); i++)
    {
      guint n;
      const BwPin *pins = bw_connector_pins (role_cases[i].connector, role_cases[i].edition, &n);
      g_autoptr (GString) roles = g_string_new (NULL);
      for (guint j = 0; j < n; j++)
        {
          g_assert_cmpint (pins[j].number, ==, (int) j + 1);
          g_string_append_c (roles, letters[pins[j].role]);
        }
      g_assert_cmpstr (roles->str, ==, role_cases[i].roles);
    }
}

static const struct
{
  BwConnector connector;
  BwEdition edition;
  BwConductor conductor;
  int out; /* on a source; zero: none */
  int in;
  int out_ground;
  int in_ground;
} signal_cases[] = {
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_R, 15, 15, 13, 13 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_G, 11, 11, 9, 9 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_B, 7, 7, 5, 5 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_C, 15, 15, 13, 13 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_VIDEO, 19, 20, 17, 18 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_SYNC, 19, 20, 17, 18 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_1983, BW_CONDUCTOR_VIDEO, 19, 20, 17, 17 },
  { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, BW_CONDUCTOR_H, 0, 0, 0, 0 },
  { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, BW_CONDUCTOR_R, 15, 15, 13, 13 },
  { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, BW_CONDUCTOR_G, 19, 19, 17, 17 },
  { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, BW_CONDUCTOR_B, 20, 20, 18, 18 },
  { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, BW_CONDUCTOR_SYNC, 10, 9, 8, 7 },
  { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, BW_CONDUCTOR_C, 0, 0, 0, 0 },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, BW_CONDUCTOR_R, 1, 1, 6, 6 },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, BW_CONDUCTOR_G, 2, 2, 7, 7 },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, BW_CONDUCTOR_B, 3, 3, 8, 8 },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, BW_CONDUCTOR_H, 13, 13, 10, 10 },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, BW_CONDUCTOR_V, 14, 14, 10, 10 },
  { BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, BW_CONDUCTOR_SYNC, 13, 13, 10, 10 },
  { BW_CONNECTOR_MINI_DIN_4, BW_EDITION_CURRENT, BW_CONDUCTOR_Y, 3, 3, 1, 1 },
  { BW_CONNECTOR_MINI_DIN_4, BW_EDITION_CURRENT, BW_CONDUCTOR_C, 4, 4, 2, 2 },
  { BW_CONNECTOR_MINI_DIN_4, BW_EDITION_CURRENT, BW_CONDUCTOR_R, 0, 0, 0, 0 },
  { BW_CONNECTOR_DIN_6, BW_EDITION_CURRENT, BW_CONDUCTOR_VIDEO, 2, 2, 3, 3 },
};

static gboolean
find (BwConnector connector, BwEdition edition, BwConductor conductor, gboolean on_source, int *pin,
      int *ground)
{
  BwPlug plug;
  bw_plug_init (&plug, connector, edition, NULL);
  return bw_plug_find (&plug, BW_N_SIGNALS, conductor, on_source, pin, ground);
}

static void
assert_found (gsize i, gboolean on_source, int wanted, int wanted_ground)
{
  int pin, ground;
  gboolean found = find (signal_cases[i].connector, signal_cases[i].edition,
                         signal_cases[i].conductor, on_source, &pin, &ground);
  g_assert_cmpint (found, ==, wanted != 0);
  if (!found)
    return;
  g_assert_cmpint (pin, ==, wanted);
  g_assert_cmpint (ground, ==, wanted_ground);
}

static void
test_signals (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (signal_cases); i++)
    {
      assert_found (i, TRUE, signal_cases[i].out, signal_cases[i].out_ground);
      assert_found (i, FALSE, signal_cases[i].in, signal_cases[i].in_ground);
    }
}

/* Every return of every pin is a ground. */
static void
test_grounds (void)
{
  for (BwConnector connector = 0; connector < BW_N_CONNECTORS; connector++)
    for (BwEdition edition = 0; edition < BW_N_EDITIONS; edition++)
      {
        guint n;
        const BwPin *pins = bw_connector_pins (connector, edition, &n);
        for (guint i = 0; i < n; i++)
          if (pins[i].role == BW_PIN_VIDEO || pins[i].role == BW_PIN_SWITCH_FAST)
            {
              const BwPin *ground = bw_connector_pin (connector, edition, pins[i].ground);
              g_assert_true (ground != NULL && ground->role == BW_PIN_GROUND);
            }
      }
}

/* One plug a conductor, and what nobody lays down. */
static void
test_no_numbers (void)
{
  int pin, ground;
  g_assert_true (find (BW_CONNECTOR_BNC, 0, BW_CONDUCTOR_H, FALSE, &pin, &ground));
  g_assert_cmpint (pin, ==, BW_PIN_OWN_PLUG);
  g_assert_true (find (BW_CONNECTOR_DE_9, 0, BW_CONDUCTOR_R, FALSE, &pin, &ground));
  g_assert_cmpint (pin, ==, BW_PIN_NOT_LAID_DOWN);
  g_assert_true (find (BW_CONNECTOR_DIN_6, 0, BW_CONDUCTOR_R, TRUE, &pin, &ground));
  g_assert_cmpint (pin, ==, BW_PIN_NOT_LAID_DOWN);
}

static guint
set_of (BwSignal signal, BwSyncKind sync)
{
  return bw_signal_conductors (signal, sync);
}

static void
test_carries (void)
{
  guint separate = set_of (BW_SIGNAL_RGB, BW_SYNC_SEPARATE);
  guint in_video = set_of (BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO);
  guint yc = set_of (BW_SIGNAL_YC, BW_SYNC_IN_VIDEO);

  g_assert_true (bw_connector_carries (BW_CONNECTOR_DE_15, separate, TRUE));
  g_assert_true (bw_connector_carries (BW_CONNECTOR_BNC, separate, FALSE));
  g_assert_true (bw_connector_carries (BW_CONNECTOR_DE_9, separate, FALSE));
  g_assert_true (bw_connector_carries (BW_CONNECTOR_DIN_6, separate, FALSE));
  g_assert_false (bw_connector_carries (BW_CONNECTOR_PERITELEVISION, separate, FALSE));
  g_assert_false (bw_connector_carries (BW_CONNECTOR_MINI_DIN_4, separate, FALSE));
  g_assert_true (bw_connector_carries (BW_CONNECTOR_PERITELEVISION, in_video, TRUE));
  g_assert_true (bw_connector_carries (BW_CONNECTOR_PERITELEVISION, yc, FALSE));
  g_assert_false (bw_connector_carries (BW_CONNECTOR_DE_15, yc, FALSE));
  /* red and Pr are on pin 1 */
  g_assert_false (bw_connector_carries (BW_CONNECTOR_DE_15,
                                        BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_PR), FALSE));
  /* six pins that nothing lays down do for five signals and a return, and no more */
  guint five = set_of (BW_SIGNAL_RGB, BW_SYNC_SEPARATE);
  g_assert_true (bw_connector_carries (BW_CONNECTOR_DIN_6, five, FALSE));
  g_assert_false (
      bw_connector_carries (BW_CONNECTOR_DIN_6, five | BW_BIT (BW_CONDUCTOR_SYNC), FALSE));
  g_assert_true (
      bw_connector_carries (BW_CONNECTOR_DE_9, five | BW_BIT (BW_CONDUCTOR_SYNC), FALSE));
  /* red and C share a pin */
  g_assert_false (bw_connector_carries (BW_CONNECTOR_PERITELEVISION, in_video | yc, FALSE));
}

/* The grounds that the later editions of EN 50049-1 moved (secondary sources): of pins 16, 19 and 20. */
static void
test_editions (void)
{
  static const struct
  {
    BwEdition edition;
    int grounds[3];
  } cases[] = { { BW_EDITION_CURRENT, { 14, 17, 18 } }, { BW_EDITION_1983, { 18, 17, 17 } } };
  static const int pins[] = { 16, 19, 20 };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (int j = 0; j < 3; j++)
      g_assert_cmpint (bw_connector_pin (BW_CONNECTOR_PERITELEVISION, cases[i].edition, pins[j])
                           ->ground,
                       ==, cases[i].grounds[j]);
}

/* What stands at a pin of picture, across 75 Ω: 0.7 V and 1 V, each ± 3 dB at the 21-pin connector
 * (EN 50049-1, secondary sources): 0.4956 to 0.9888 V and 0.7079 to 1.4125 V. */
static void
test_pin_levels (void)
{
  static const struct
  {
    BwConnector connector;
    int pin;
    double low_v, high_v;
  } cases[] = {
    { BW_CONNECTOR_PERITELEVISION, 7, 0.4956, 0.9888 },
    { BW_CONNECTOR_PERITELEVISION, 11, 0.4956, 0.9888 },
    { BW_CONNECTOR_PERITELEVISION, 15, 0.4956, 0.9888 },
    { BW_CONNECTOR_PERITELEVISION, 19, 0.7079, 1.4125 },
    { BW_CONNECTOR_PERITELEVISION, 20, 0.7079, 1.4125 },
    { BW_CONNECTOR_DE_15, 1, 0.7, 0.7 },
    { BW_CONNECTOR_DE_15, 2, 0.7, 0.7 },
    { BW_CONNECTOR_DE_15, 3, 0.7, 0.7 },
    { BW_CONNECTOR_MINI_DIN_4, 3, 1, 1 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const BwPin *pin = bw_connector_pin (cases[i].connector, BW_EDITION_CURRENT, cases[i].pin);
      g_assert_cmpfloat_with_epsilon (pin->load_ohm, 75, 1e-9);
      g_assert_cmpfloat_with_epsilon (pin->level_v.low, cases[i].low_v, 0.5e-4);
      g_assert_cmpfloat_with_epsilon (pin->level_v.high, cases[i].high_v, 0.5e-4);
    }
}

/* The return of every pin in their order, 0 for grounds: as for the roles. A ground, a supply, sound and
 * data carry no conductor of a picture. */
static void
test_returns (void)
{
  static const struct
  {
    BwConnector connector;
    BwEdition edition;
    int grounds[21];
  } cases[] = {
    { BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, { 4,  4, 4, 0,  0,  4, 5, 21, 0,  14, 9,
                                                         14, 0, 0, 13, 14, 0, 0, 17, 18, 0 } },
    { BW_CONNECTOR_JAPANESE_21, BW_EDITION_CURRENT, { 3,  4, 0, 0,  3,  4, 0, 0,  7,  8, 14,
                                                      14, 0, 0, 13, 14, 0, 0, 17, 18, 0 } },
    { BW_CONNECTOR_DE_15,
      BW_EDITION_CURRENT,
      { 6, 7, 8, 10, 0, 0, 0, 0, 10, 0, 10, 10, 10, 10, 10 } },
    { BW_CONNECTOR_MINI_DIN_4, BW_EDITION_CURRENT, { 0, 0, 1, 2 } },
    { BW_CONNECTOR_DIN_6, BW_EDITION_CURRENT, { 3, 3, 0, 3, 3, 3 } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint n;
      const BwPin *pins = bw_connector_pins (cases[i].connector, cases[i].edition, &n);
      for (guint j = 0; j < n; j++)
        {
          g_assert_cmpint (pins[j].ground, ==, cases[i].grounds[j]);
          g_assert_cmpint ((pins[j].gives | pins[j].takes) != 0, ==, pins[j].role == BW_PIN_VIDEO);
        }
    }
}

/* What else stands at a pin: switching voltages over their load, from 0 V (as for the roles); chroma as its
 * burst, 0.286 V or 0.3 V (SMPTE 170M, ITU-R BT.1700); sync of logic level from 2.4 V (TTL), supplies. */
static void
test_other_levels (void)
{
  static const struct
  {
    BwConnector connector;
    int pin;
    double low_v, high_v, ohm;
  } cases[] = {
    { BW_CONNECTOR_PERITELEVISION, 8, 0, 12, 10e3 },
    { BW_CONNECTOR_PERITELEVISION, 16, 0, 3, 75 },
    { BW_CONNECTOR_JAPANESE_21, 11, 0, 5, 22e3 },
    { BW_CONNECTOR_JAPANESE_21, 16, 0, 3, 75 },
    { BW_CONNECTOR_JAPANESE_21, 9, 1, 1, 75 },
    { BW_CONNECTOR_JAPANESE_21, 10, 1, 1, 75 },
    { BW_CONNECTOR_JAPANESE_21, 15, 0.7, 0.7, 75 },
    { BW_CONNECTOR_JAPANESE_21, 19, 0.7, 0.7, 75 },
    { BW_CONNECTOR_JAPANESE_21, 20, 0.7, 0.7, 75 },
    { BW_CONNECTOR_DE_15, 9, 5, 5, 0 },
    { BW_CONNECTOR_DE_15, 13, 2.4, 5, 0 },
    { BW_CONNECTOR_DE_15, 14, 2.4, 5, 0 },
    { BW_CONNECTOR_MINI_DIN_4, 4, 0.286, 0.3, 75 },
    { BW_CONNECTOR_DIN_6, 1, 0, 12, 0 },
    { BW_CONNECTOR_DIN_6, 2, 1, 1, 75 },
    { BW_CONNECTOR_DIN_6, 5, 12, 12, 0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const BwPin *pin = bw_connector_pin (cases[i].connector, BW_EDITION_CURRENT, cases[i].pin);
      g_assert_cmpfloat_with_epsilon (pin->level_v.low, cases[i].low_v, 1e-9);
      g_assert_cmpfloat_with_epsilon (pin->level_v.high, cases[i].high_v, 1e-9);
      g_assert_cmpfloat_with_epsilon (pin->load_ohm, cases[i].ohm, 1e-9);
    }
}

/* What is red and Pr, green and Y, blue and Pb at once, is so by common practice; nothing else is. */
static void
test_practice (void)
{
  for (BwConnector connector = 0; connector < BW_N_CONNECTORS; connector++)
    {
      guint n;
      const BwPin *pins = bw_connector_pins (connector, BW_EDITION_CURRENT, &n);
      for (guint i = 0; i < n; i++)
        if (connector == BW_CONNECTOR_DE_15 && i < 3)
          {
            static const BwConductor component[] = { BW_CONDUCTOR_PR, BW_CONDUCTOR_Y,
                                                     BW_CONDUCTOR_PB };
            g_assert_cmphex (pins[i].practice, ==, BW_BIT (component[i]));
            g_assert_cmphex (pins[i].gives, ==, pins[i].takes);
          }
        else
          g_assert_cmphex (pins[i].practice, ==, 0);
    }
}

/* How many contacts, whether all of them are laid down, and whether a plug is for one conductor. */
static void
test_facts (void)
{
  static const struct
  {
    BwConnector connector;
    guint n_pins;
    gboolean open, single;
  } cases[] = {
    { BW_CONNECTOR_BNC, 0, FALSE, TRUE },
    { BW_CONNECTOR_PHONO, 0, FALSE, TRUE },
    { BW_CONNECTOR_MINI_DIN_4, 4, FALSE, FALSE },
    { BW_CONNECTOR_DE_15, 15, FALSE, FALSE },
    { BW_CONNECTOR_PERITELEVISION, 21, FALSE, FALSE },
    { BW_CONNECTOR_JAPANESE_21, 21, FALSE, FALSE },
    { BW_CONNECTOR_DIN_6, 6, TRUE, FALSE },
    { BW_CONNECTOR_DE_9, 9, TRUE, FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const BwConnectorFacts *facts = bw_connector_facts (cases[i].connector);
      g_assert_cmpuint (facts->contacts, ==, cases[i].n_pins);
      g_assert_cmpint (facts->open_use, ==, cases[i].open);
      g_assert_cmpint (facts->single, ==, cases[i].single);
    }
}

/* EN 50049-1 as data sheets cite it: pin 16 selects RGB from 1 to 3 V over 75 Ω; pin 8 16:9 from
 * 4.5 to 7 V and 4:3 from 9.5 to 12 V. Derived: 50 to 300 Ω from 5 V, 225 to 825 Ω from 12 V. */
static void
test_fast (void)
{
  BwSelection five, twelve;
  const BwConnector connector = BW_CONNECTOR_PERITELEVISION;
  g_assert_true (
      bw_selection_compute (connector, BW_SELECT_RGB, 5, 0.05, BW_SERIES_E24, &five, NULL));
  g_assert_true (
      bw_selection_compute (connector, BW_SELECT_RGB, 12, 0.05, BW_SERIES_E24, &twelve, NULL));
  g_assert_cmpint (five.pin, ==, 16);
  g_assert_cmpint (five.ground, ==, 14);
  g_assert_true (bw_near (five.ohm.low, 50, 1e-9) && bw_near (five.ohm.high, 300, 1e-9));
  g_assert_true (bw_near (twelve.ohm.low, 225, 1e-9) && bw_near (twelve.ohm.high, 825, 1e-9));
  g_assert_true (five.within && twelve.within);
}

static const struct
{
  BwConnector connector;
  BwSelect select;
  double supply_v;
  int pin;
  double low_v;
  double high_v;
} select_cases[] = {
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_RGB, 5, 16, 1, 3 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_RGB, 12, 16, 1, 3 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV, 12, 8, 9.5, 12 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV_WIDE, 5, 8, 4.5, 7 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV_WIDE, 12, 8, 4.5, 7 },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_RGB, 5, 16, 1, 3 },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_RGB, 12, 16, 1, 3 },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_AV, 5, 11, 3, 5 },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_AV, 12, 11, 3, 5 },
};

/* In its window over every corner of 5 % in the supply and the series' tolerance. */
static void
test_select (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (select_cases); i++)
    for (BwSeries series = 0; series < BW_N_SERIES; series++)
      {
        BwSelection s;
        g_assert_true (bw_selection_compute (select_cases[i].connector, select_cases[i].select,
                                             select_cases[i].supply_v, 0.05, series, &s, NULL));
        g_assert_cmpint (s.pin, ==, select_cases[i].pin);
        if (s.level_v.low < select_cases[i].low_v || s.level_v.high > select_cases[i].high_v)
          g_test_message ("case %" G_GSIZE_FORMAT ", series %d: %g to %g V", i, (int) series,
                          s.level_v.low, s.level_v.high);
        g_assert_cmpfloat (s.level_v.low, >=, select_cases[i].low_v);
        g_assert_cmpfloat (s.level_v.high, <=, select_cases[i].high_v);
        g_assert_true (s.within);
      }
}

/* The values themselves, by hand, of E24. One resistor where it does: the middle in ratio of what it
 * may be, sqrt (50 × 300) = 122.5 Ω and sqrt (225 × 825) = 430.8 Ω; to the middle of 3 to 5 V, 22 kΩ ×
 * (5 / 4 − 1) = 5500 Ω; half of what the pin's least load allows, 10 kΩ × (4.75 / 4.5 − 1) / 2 =
 * 277.8 Ω. Else a divider of 220 Ω to the middle of the window: 12 V to 5.75 V takes 459.1 and 422.4 Ω,
 * to 10.75 V 245.6 and 2112 Ω. */
static const struct
{
  BwConnector connector;
  BwSelect select;
  double supply_v, series_ohm, shunt_ohm;
} value_cases[] = {
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_RGB, 5, 122.5, 0 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_RGB, 12, 430.8, 0 },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_AV, 5, 5500, 0 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV_WIDE, 5, 277.8, 0 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV_WIDE, 12, 459.1, 422.4 },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV, 12, 245.6, 2112 },
};

/* The steps of E24 are 10 % (IEC 60063): a value within half a step is a neighbour. */
static void
test_select_values (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (value_cases); i++)
    {
      BwSelection s;
      g_assert_true (bw_selection_compute (value_cases[i].connector, value_cases[i].select,
                                           value_cases[i].supply_v, 0.05, BW_SERIES_E24, &s, NULL));
      const BwNetwork *network = &s.choice.network;
      g_assert_cmpuint (network->n, ==, value_cases[i].shunt_ohm > 0 ? 2 : 1);
      g_assert_cmpfloat_with_epsilon (network->at[0].ohm / value_cases[i].series_ohm, 1, 0.06);
      if (network->n == 2)
        g_assert_cmpfloat_with_epsilon (network->at[1].ohm / value_cases[i].shunt_ohm, 1, 0.06);
    }
}

/* 12 V to 10.75 V for function switching, by the nearest of E24 to 245.6 and 2112 Ω (see above): 240 Ω and
 * 2.2 kΩ beside the pin's 10 kΩ, which are 1803 Ω: 12 × 1803 / 2043 = 10.6 V. With 5 % in each of them
 * 11.4 × 1729 / (1729 + 252) = 9.95 V, and into nothing 12.6 × 2310 / (2310 + 228) = 11.47 V. 5 V by 120 Ω into
 * 75 Ω: 1.923 V. */
static void
test_select_says (void)
{
  BwSelection s;
  g_assert_true (bw_selection_compute (BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV, 12, 0.05,
                                       BW_SERIES_E24, &s, NULL));
  g_autofree char *says = bw_selection_says (&s, '.');
  g_assert_cmpstr (says, ==,
                   "Pin 8 selects external input: 240\u00a0Ω in series and 2.2\u00a0kΩ to ground from "
                   "12\u00a0V gives 10.6\u00a0V (9.95–11.5\u00a0V over tolerances); it wants "
                   "9.5–12\u00a0V.");
  g_assert_true (bw_selection_compute (BW_CONNECTOR_PERITELEVISION, BW_SELECT_RGB, 5, 0.05,
                                       BW_SERIES_E24, &s, NULL));
  g_autofree char *one = bw_selection_says (&s, '.');
  bw_test_assert_words (one, WORDS ("Pin 16", "RGB: 120\u00a0Ω in series from 5\u00a0V", "1.92\u00a0V"));
}

static void
test_select_refused (void)
{
  BwSelection s;
  g_autoptr (GError) supply = NULL, pin = NULL;
  g_assert_false (bw_selection_compute (BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV, 5, 0.05,
                                        BW_SERIES_E24, &s, &supply));
  g_assert_error (supply, BW_SELECTION_ERROR, BW_SELECTION_ERROR_SUPPLY);
  bw_test_assert_words (supply->message, WORDS ("8", "9.5"));
  g_assert_false (
      bw_selection_compute (BW_CONNECTOR_DE_15, BW_SELECT_RGB, 5, 0.05, BW_SERIES_E24, &s, &pin));
  g_assert_error (pin, BW_SELECTION_ERROR, BW_SELECTION_ERROR_NO_PIN);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/connector/roles", test_roles);
  g_test_add_func ("/connector/signals", test_signals);
  g_test_add_func ("/connector/grounds", test_grounds);
  g_test_add_func ("/connector/no-numbers", test_no_numbers);
  g_test_add_func ("/connector/carries", test_carries);
  g_test_add_func ("/connector/editions", test_editions);
  g_test_add_func ("/connector/pin-levels", test_pin_levels);
  g_test_add_func ("/connector/returns", test_returns);
  g_test_add_func ("/connector/other-levels", test_other_levels);
  g_test_add_func ("/connector/practice", test_practice);
  g_test_add_func ("/connector/facts", test_facts);
  g_test_add_func ("/selection/fast", test_fast);
  g_test_add_func ("/selection/window", test_select);
  g_test_add_func ("/selection/values", test_select_values);
  g_test_add_func ("/selection/refused", test_select_refused);
  g_test_add_func ("/selection/says", test_select_says);
  return g_test_run ();
}
