/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test_wiring.h"

#include <string.h>

#include "core/base/caution.h"

static const BwWiringEnd end_de_15 = { BW_CONNECTOR_DE_15, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 0 };
static const BwWiringEnd end_de_15_sync = { BW_CONNECTOR_DE_15, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE,
                                            0 };
static const BwWiringEnd end_bnc = { BW_CONNECTOR_BNC, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 0 };
static const BwWiringEnd end_european = { BW_CONNECTOR_PERITELEVISION, BW_SIGNAL_RGB,
                                          BW_SYNC_IN_VIDEO, BW_EDITION_CURRENT };
static const BwWiringEnd end_european_sync = { BW_CONNECTOR_PERITELEVISION, BW_SIGNAL_RGB,
                                               BW_SYNC_COMPOSITE, BW_EDITION_CURRENT };
static const BwWiringEnd end_japanese = { BW_CONNECTOR_JAPANESE_21, BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO,
                                          0 };
static const BwWiringParts no_parts;

static BwWiring *
wire (const BwWiringEnd *from, const BwWiringEnd *to, const BwWiringParts *parts)
{
  g_autoptr (GError) error = NULL;
  BwWiring *wiring = bw_wiring_new (from, to, parts, &error);
  g_assert_no_error (error);
  return wiring;
}

/* "R 15/13-15/13 G …": conductor, pin and return at the source, at the input */
static char *
list_of (const BwWiring *wiring)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < wiring->connections->len; i++)
    {
      const BwConnection *c = &g_array_index (wiring->connections, BwConnection, i);
      g_string_append_printf (text, "%s%s %d/%d-%d/%d", i > 0 ? ", " : "",
                              bw_kind_id (&bw_conductors, c->conductor), c->from_pin,
                              c->from_ground, c->to_pin, c->to_ground);
    }
  return g_string_free (text, FALSE);
}

static gboolean
warns (const BwWiring *wiring, const char *words)
{
  for (guint i = 0; i < wiring->warnings->len; i++)
    if (strstr (wiring->warnings->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

/* Pins of VESA's 15-pin connector; the returns of R, G and B are 6, 7 and 8. */
static void
test_computer (void)
{
  g_autoptr (BwWiring) wiring = wire (&end_de_15, &end_bnc, &no_parts);
  g_autofree char *list = list_of (wiring);
  g_assert_cmpstr (list, ==, "r 1/6-0/0, g 2/7-0/0, b 3/8-0/0, h 13/10-0/0, v 14/10-0/0");
  g_assert_cmpuint (rest_of (wiring, FALSE, 9)->kind, ==, BW_REST_OPEN);
  g_assert_true (warns (wiring, "+5 V"));
  g_autofree char *says
      = bw_wire_through (wiring, &g_array_index (wiring->connections, BwConnection, 0), NULL, '.');
  g_autofree char *at_source = bw_wire_return (BW_CONNECTOR_DE_15, 6);
  g_autofree char *at_input = bw_wire_return (BW_CONNECTOR_BNC, BW_PIN_OWN_PLUG);
  g_assert_cmpstr (says, ==, "a wire alone"); /* pin 1 is the centre contact of another plug */
  g_assert_cmpstr (at_source, ==, "pin 6");
  g_assert_cmpstr (at_input, ==, "shell");
}

/* EN 50049-1: RGB straight, video from 19 to 20; the source drives 8 and 16. */
static void
test_european (void)
{
  g_autoptr (BwWiring) wiring = wire (&end_european, &end_european, &no_parts);
  g_autofree char *list = list_of (wiring);
  g_assert_cmpstr (list, ==, "r 15/13-15/13, g 11/9-11/9, b 7/5-7/5, video 19/17-20/18");
  g_assert_cmpuint (rest_of (wiring, TRUE, 16)->kind, ==, BW_REST_JOINED);
  g_assert_cmpint (rest_of (wiring, TRUE, 16)->other, ==, 16);
  g_assert_cmpint (rest_of (wiring, FALSE, 8)->other, ==, 8);
  g_assert_cmpuint (rest_of (wiring, TRUE, 19)->kind, ==, BW_REST_OPEN);
  g_assert_cmpuint (rest_of (wiring, TRUE, 14)->kind, ==, BW_REST_GROUND);
  g_assert_true (warns (wiring, "1983"));
  g_assert_false (warns (wiring, "Nothing drives"));
}

/* Same shell, other pins: only a lead made for it does. */
static void
test_european_to_japanese (void)
{
  g_autoptr (BwWiring) wiring = wire (&end_european, &end_japanese, &no_parts);
  g_autofree char *list = list_of (wiring);
  g_assert_cmpstr (list, ==, "r 15/13-15/13, g 11/9-19/17, b 7/5-20/18, video 19/17-9/7");
  g_assert_cmpuint (rest_of (wiring, TRUE, 16)->kind, ==, BW_REST_JOINED);
  g_assert_cmpuint (rest_of (wiring, TRUE, 11)->kind, ==, BW_REST_OPEN); /* not the 12 V of pin 8 */
  g_assert_true (warns (wiring, "same shell"));
  g_assert_true (warns (wiring, "pin 11"));
}

static void
assert_refused (const BwWiringEnd *from, const BwWiringEnd *to, const BwWiringParts *parts,
                int code, const char *const *words)
{
  g_autoptr (GError) error = NULL;
  BwWiring *wiring = bw_wiring_new (from, to, parts, &error);
  g_assert_null (wiring);
  g_assert_error (error, BW_WIRING_ERROR, code);
  if (error != NULL)
    bw_test_assert_words (error->message, words);
}

static void
test_straight (void)
{
  BwWiringParts straight = { .straight = TRUE };
  assert_refused (&end_european, &end_japanese, &straight, BW_WIRING_ERROR_SUPPLY,
                  WORDS ("pin 8 of the source", "function switching", "ground"));
  assert_refused (&end_japanese, &end_european, &straight, BW_WIRING_ERROR_SUPPLY,
                  WORDS ("pin 11 of the source", "green"));
  assert_refused (&end_de_15, &end_bnc, &straight, BW_WIRING_ERROR_SHELL, WORDS ("BNC"));
  g_autoptr (BwWiring) european = wire (&end_european, &end_european, &straight);
  g_autoptr (BwWiring) japanese = wire (&end_japanese, &end_japanese, &straight);
  g_autoptr (BwWiring) de_15 = wire (&end_de_15, &end_de_15, &straight);
  g_autoptr (BwWiring) bnc = wire (&end_bnc, &end_bnc, &straight);
  g_assert_cmpuint (rest_of (european, TRUE, 2)->kind, ==, BW_REST_JOINED);
  g_assert_cmpint (rest_of (european, TRUE, 2)->other, ==, 1);
  g_assert_cmpint (rest_of (de_15, FALSE, 9)->other, ==, 9);
  g_assert_true (japanese != NULL && bnc != NULL);
}

/* A lead of one's own with a supply on a signal. */
static void
test_supply (void)
{
  static const struct
  {
    const BwWiringEnd *from, *to;
    int from_pin, to_pin;
    int code; /* −1: allowed */
  } cases[] = {
    { &end_de_15, &end_european, 9, 20, BW_WIRING_ERROR_SUPPLY },
    { &end_de_15, &end_european, 9, 16, BW_WIRING_ERROR_SUPPLY }, /* 5 V without a resistor */
    { &end_de_15, &end_european, 9, 8, BW_WIRING_ERROR_SUPPLY },  /* 5 V would select 16:9 */
    { &end_de_15, &end_de_15, 9, 9, -1 },
    { &end_de_15, &end_de_15, 9, 10, BW_WIRING_ERROR_SUPPLY },
    { &end_european, &end_japanese, 8, 11, BW_WIRING_ERROR_SUPPLY }, /* 12 V on 5 V */
    { &end_european, &end_japanese, 16, 16, -1 },
    { &end_european, &end_european, 8, 8, -1 },
    { &end_european, &end_european, 16, 15, BW_WIRING_ERROR_SUPPLY },
    { &end_european, &end_european, 19, 20, -1 },
    { &end_european, &end_european, 19, 19, BW_WIRING_ERROR_CROSSED }, /* two outputs */
    { &end_european, &end_european, 15, 11, BW_WIRING_ERROR_CROSSED },
    { &end_european, &end_european, 15, 13, BW_WIRING_ERROR_CROSSED },
    { &end_european, &end_de_15, 19, 9, BW_WIRING_ERROR_SUPPLY }, /* the set's supply */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      gboolean allowed = bw_wiring_check_pins (cases[i].from, cases[i].from_pin, cases[i].to,
                                               cases[i].to_pin, &error);
      g_assert_cmpint (allowed, ==, cases[i].code < 0);
      g_assert_cmpint (error != NULL ? error->code : -1, ==, cases[i].code);
    }
}

static void
test_refused (void)
{
  const BwWiringEnd yc = { BW_CONNECTOR_DE_15, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO, 0 };
  const BwWiringEnd separate = { BW_CONNECTOR_PERITELEVISION, BW_SIGNAL_RGB, BW_SYNC_SEPARATE,
                                 BW_EDITION_CURRENT };
  assert_refused (&end_de_15, &end_european, &no_parts, BW_WIRING_ERROR_CONDUCTORS,
                  WORDS ("H", "V", "Video"));
  assert_refused (&end_bnc, &separate, &no_parts, BW_WIRING_ERROR_PINS, WORDS ("H", "input"));
  assert_refused (&yc, &yc, &no_parts, BW_WIRING_ERROR_PINS, WORDS ("source"));
}

/* Logic sync into a peritelevision input: warned of as it stands, and with 1.2 kΩ at its level: 5 V
 * and E24 ± 5 % each. RGB is selected through the resistors of a supply of 12 V. */
static void
test_logic_sync (void)
{
  BwWiringParts parts = { .supply_v = 12, .supply_tolerance = 0.05, .preferred = BW_SERIES_E24 };
  g_autoptr (BwWiring) bare = wire (&end_de_15_sync, &end_european_sync, &no_parts);
  BwNetwork network;
  BwRange level_v;

  parts.series_ohm[BW_CONDUCTOR_SYNC] = 1200;
  g_autoptr (BwWiring) wiring = wire (&end_de_15_sync, &end_european_sync, &parts);
  const BwConnection *sync = &g_array_index (wiring->connections, BwConnection, 3);
  g_assert_true (warns (bare, "series resistor") && warns (bare, "selects RGB"));
  g_assert_false (warns (wiring, "series resistor") || warns (wiring, "Nothing drives"));
  g_assert_cmpuint (wiring->selections->len, ==, 2);
  g_assert_cmpuint (rest_of (wiring, TRUE, 16)->kind, ==, BW_REST_SELECTED);
  g_assert_cmpuint (rest_of (bare, TRUE, 16)->kind, ==, BW_REST_OWN_LOAD);
  g_assert_cmpuint (sync->conductor, ==, BW_CONDUCTOR_SYNC);
  network = (BwNetwork){ .open_v = 5, .n = 1, .load_ohm = 75 };
  network.at[0] = (BwElement){ BW_PLACE_SERIES, sync->series_ohm };
  bw_network_spread (&network, 0.05, 0.05, &level_v);
  g_assert_true (bw_near (level_v.low, 4.75 * 75 / 1335, 1e-12));
  g_assert_true (bw_near (level_v.high, 5.25 * 75 / 1215, 1e-12));
  g_autofree char *says = bw_wire_through (wiring, sync, NULL, '.');
  g_assert_cmpstr (says, ==, "1.2\302\240kΩ in series at the source's end");
}

/* 5 V does not reach what pin 8 wants, and the plan says so; the rest stands. */
static void
test_low_supply (void)
{
  BwWiringParts parts = { .supply_v = 5, .supply_tolerance = 0.05, .preferred = BW_SERIES_E24 };
  g_autoptr (BwWiring) wiring = wire (&end_de_15_sync, &end_european_sync, &parts);
  g_assert_cmpuint (wiring->selections->len, ==, 1);
  g_assert_true (warns (wiring, "Pin 8 needs a supply"));
  parts.wide = TRUE;
  g_autoptr (BwWiring) wide = wire (&end_de_15_sync, &end_european_sync, &parts);
  g_assert_cmpuint (wide->selections->len, ==, 2);
}

static void
test_caution (void)
{
  bw_test_assert_words (bw_caution_hook_up (), WORDS ("live", "isolat", "charge", "no procedure",
                                                      "local codes", "licensed"));
}

/* The pins of RGB on a 6-pin DIN are laid down by no standard: no pin of it may be told to be left open
 * or joined to ground, for it may be the very one. The BNC end is known. */
static void
test_unknown_pins (void)
{
  const BwWiringEnd computer = { .connector = BW_CONNECTOR_DIN_6,
                                 .signal = BW_SIGNAL_RGB,
                                 .sync = BW_SYNC_COMPOSITE };
  const BwWiringEnd input = { .connector = BW_CONNECTOR_BNC,
                              .signal = BW_SIGNAL_RGB,
                              .sync = BW_SYNC_COMPOSITE };
  const BwWiringParts parts = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (BwWiring) wiring = bw_wiring_new (&computer, &input, &parts, &error);

  g_assert_no_error (error);
  for (int pin = 1; pin <= 6; pin++)
    g_assert_null (rest_of (wiring, FALSE, pin));
  gboolean warned = FALSE;
  for (guint i = 0; i < wiring->warnings->len; i++)
    warned |= strstr (wiring->warnings->pdata[i], "not even a ground") != NULL;
  g_assert_true (warned);
}

/* The switching voltage returns by the ground of its pin in the set's edition: of pin 16 by pin 14, before 1989
 * by pin 18 (EN 50049-1, secondary sources). */
static void
test_selection_return (void)
{
  static const struct
  {
    BwEdition edition;
    int ground;
  } cases[] = { { BW_EDITION_CURRENT, 14 }, { BW_EDITION_1983, 18 } };
  const BwWiringParts parts = { .supply_v = 5, .supply_tolerance = 0.05,
                                .preferred = BW_SERIES_E24 };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwWiringEnd to = end_european_sync;
      to.edition = cases[i].edition;
      g_autoptr (BwWiring) wiring = wire (&end_de_15_sync, &to, &parts);
      g_assert_cmpuint (wiring->selections->len, ==, 1);
      const BwSelection *selection = &g_array_index (wiring->selections, BwSelection, 0);
      g_assert_cmpint (selection->pin, ==, 16);
      g_assert_cmpint (selection->ground, ==, cases[i].ground);
    }
}

/* Video of 1 V as sync into an input for logic, from 2.4 V on, wants an amplifier; logic into logic wants nothing. */
static void
test_sync_too_low (void)
{
  g_autoptr (BwWiring) low = wire (&end_european_sync, &end_de_15_sync, &no_parts);
  g_autoptr (BwWiring) alike = wire (&end_de_15_sync, &end_de_15_sync, &no_parts);
  g_assert_true (warns (low, "a sync amplifier is needed"));
  g_assert_false (warns (alike, "a sync amplifier is needed"));
  g_assert_false (warns (alike, "series resistor"));
}

/* What must be read before a lead is made, and nothing besides. EN 50049-1 and its 1983 edition; VESA's pin 9; the
 * Japanese connector by one secondary source. Video of 1 V has sync of 0.3 V; logic is 2 V and more. A voltage that
 * selects comes by pins 8 and 16, or from a supply. */
typedef struct
{
  const BwWiringEnd *from, *to;
  BwWiringParts parts;
  guint n; /* warnings */
  const char *says[5];
} Warned;

static const BwWiringEnd end_bnc_video = { BW_CONNECTOR_BNC, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, 0 };
static const BwWiringEnd end_european_video = { BW_CONNECTOR_PERITELEVISION, BW_SIGNAL_COMPOSITE,
                                                BW_SYNC_IN_VIDEO, BW_EDITION_CURRENT };

#define E24_FROM(volts, tolerance)                                                                 \
  { .supply_v = volts, .supply_tolerance = tolerance, .preferred = BW_SERIES_E24 }

static const Warned warned[] = {
  { &end_bnc, &end_bnc, { 0 }, 0, { NULL } },
  { &end_de_15, &end_bnc, { 0 }, 1, { "Pin 9 of the 15-pin connector" } },
  { &end_bnc, &end_de_15, { 0 }, 1, { "Pin 9 of the 15-pin connector" } },
  { &end_european, &end_european, { 0 }, 1, { "1983 edition" } },
  { &end_japanese, &end_japanese, { 0 }, 1, { "rest on one secondary source" } },
  { &end_european, &end_japanese, { 0 }, 4,
    { "1983 edition", "one secondary source", "Both ends have the same shell",
      "Nothing drives pin 11: select this input" } },
  { &end_japanese, &end_european, { 0 }, 4,
    { "1983 edition", "one secondary source", "Both ends have the same shell",
      "Nothing drives pin 8: select this input" } },
  { &end_bnc_video, &end_european_video, { 0 }, 2,
    { "1983 edition", "Nothing drives pin 8: select this input on the set." } },
  { &end_bnc_video, &end_european_video, { .wide = TRUE }, 2,
    { "1983 edition", "Nothing drives pin 8: select this input on the set." } },
  { &end_european_video, &end_bnc_video, { 0 }, 1, { "1983 edition" } },
  { &end_de_15_sync, &end_european_sync, { 0 }, 5,
    { "Pin 9 of", "1983 edition", "logic level, which is not made for 75 Ω, and pin 20",
      "Nothing drives pin 16: the set stays with composite", "Nothing drives pin 8: select this" } },
  { &end_european_sync, &end_de_15_sync, { 0 }, 3,
    { "1983 edition", "at 0.3 V, and pin 13 takes logic level", "Pin 9" } },
  /* 5 V give 1 to 3 V at pin 16 within 5 %, but not within 60 %; pin 8 wants more than 5 V */
  { &end_de_15_sync, &end_european_sync, E24_FROM (5, 0.05), 5,
    { "Pin 8 needs a supply from 9.5", "Pin 9", "Nothing drives pin 8" } },
  { &end_de_15_sync, &end_european_sync, E24_FROM (5, 0.6), 6,
    { "Pin 8 needs a supply from 9.5", "Pin 9", "Nothing drives pin 8",
      "Over tolerances it leaves that range." } },
};

static void
test_warnings (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (warned); i++)
    {
      g_autoptr (BwWiring) wiring = wire (warned[i].from, warned[i].to, &warned[i].parts);
      gboolean right = wiring->warnings->len == warned[i].n;
      for (guint k = 0; k < G_N_ELEMENTS (warned[i].says) && warned[i].says[k] != NULL; k++)
        right &= warns (wiring, warned[i].says[k]);
      if (right)
        continue;
      g_ptr_array_add (wiring->warnings, NULL);
      g_autofree char *all = g_strjoinv ("\n  ", (char **) wiring->warnings->pdata);
      g_test_message ("case %" G_GSIZE_FORMAT ":\n  %s", i, all);
      g_test_fail ();
      g_ptr_array_set_size (wiring->warnings, (int) wiring->warnings->len - 1);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/wiring/computer", test_computer);
  g_test_add_func ("/wiring/european", test_european);
  g_test_add_func ("/wiring/european-to-japanese", test_european_to_japanese);
  g_test_add_func ("/wiring/straight", test_straight);
  g_test_add_func ("/wiring/supply", test_supply);
  g_test_add_func ("/wiring/refused", test_refused);
  g_test_add_func ("/wiring/logic-sync", test_logic_sync);
  g_test_add_func ("/wiring/low-supply", test_low_supply);
  g_test_add_func ("/wiring/caution", test_caution);
  g_test_add_func ("/wiring/unknown-pins", test_unknown_pins);
  g_test_add_func ("/wiring/selection-return", test_selection_return);
  g_test_add_func ("/wiring/sync-too-low", test_sync_too_low);
  g_test_add_func ("/wiring/warnings", test_warnings);
  return g_test_run ();
}
