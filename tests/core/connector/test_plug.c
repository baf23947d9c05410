/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/connector/plug.h"

#include <string.h>

#include "support.h"

/* The 9-pin connector of a computer with RGB and composite sync as its papers might say it: invented. */
#define COMPUTER "1 ground; 3 r; 4 g; 5 b; 7 sync; 9 supply"

static void
read_pins (const char *text, BwPinout *pins)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (bw_pinout_parse (text, pins, &error));
  g_assert_no_error (error);
}

/* What a person may write, and as what it is kept. */
static void
test_parse (void)
{
  static const struct
  {
    const char *typed;
    const char *kept;
  } cases[] = {
    { COMPUTER, COMPUTER },
    { "7 Sync, 1 Ground,3=R; 4 = g;5 B; 9 supply", COMPUTER },
    { "", "" },
    { " ; ", "" },
    { "25 other; 2 sound; 1 ground; 3 ground", "1 ground; 2 sound; 3 ground; 25 other" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwPinout pins;
      read_pins (cases[i].typed, &pins);
      g_autofree char *kept = bw_pinout_to_text (&pins);
      g_assert_cmpstr (kept, ==, cases[i].kept);
      g_assert_cmpint (bw_pinout_is_given (&pins), ==, *kept != '\0');
    }
}

/* A refusal names what is wrong and what would be taken, and nothing is changed. */
static void
test_refuse (void)
{
  static const struct
  {
    const char *typed;
    const char *names;
  } cases[] = {
    { "0 r", "1 to 25" },         { "26 r", "1 to 25" },      { "r 1", "1 to 25" },
    { "1", "1 to 25" },           { "1 purple", "purple" },   { "1 purple", "ground" },
    { "1 r; 1 g", "pin 1" },      { "1 r; 2 r", "pin 2" },    { "-1 r", "1 to 25" },
    { "99999999999999999999 r", "1 to 25" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      BwPinout pins;
      read_pins (COMPUTER, &pins);
      g_assert_false (bw_pinout_parse (cases[i].typed, &pins, &error));
      g_assert_error (error, BW_PINOUT_ERROR, BW_PINOUT_ERROR_VALUE);
      g_assert_nonnull (strstr (error->message, cases[i].names));
      g_autofree char *kept = bw_pinout_to_text (&pins);
      g_assert_cmpstr (kept, ==, COMPUTER);
    }
}

/* The pins that the person gave are used, and their ground is the return of each. */
static void
test_own (void)
{
  BwPinout pins;
  BwPlug plug;
  int pin, ground;

  read_pins (COMPUTER, &pins);
  bw_plug_init (&plug, BW_CONNECTOR_DE_9, BW_EDITION_CURRENT, &pins);
  g_assert_true (bw_plug_find (&plug, BW_SIGNAL_RGB, BW_CONDUCTOR_SYNC, TRUE, &pin, &ground));
  g_assert_cmpint (pin, ==, 7);
  g_assert_cmpint (ground, ==, 1);
  g_assert_cmpuint (bw_plug_pin (&plug, 9)->role, ==, BW_PIN_SUPPLY);
  g_assert_cmpuint (bw_plug_pin (&plug, 2)->role, ==, BW_PIN_NONE);
  g_assert_null (bw_plug_pin (&plug, 10));
  g_assert_true (bw_plug_find (&plug, BW_SIGNAL_RGB, BW_CONDUCTOR_H, TRUE, &pin, &ground));
  g_assert_cmpint (pin, ==, BW_PIN_NOT_LAID_DOWN);
}

/* Where a standard lays the pins down, nobody's own pin-out is needed or taken (VESA, EN 50049-1). */
static void
test_standard_holds (void)
{
  BwPinout pins;
  BwPlug plug;
  int pin, ground;

  read_pins ("1 sync; 2 ground", &pins);
  bw_plug_init (&plug, BW_CONNECTOR_DE_15, BW_EDITION_CURRENT, &pins);
  g_assert_true (bw_plug_find (&plug, BW_SIGNAL_RGB, BW_CONDUCTOR_SYNC, TRUE, &pin, &ground));
  g_assert_cmpint (pin, ==, 13);
  bw_plug_init (&plug, BW_CONNECTOR_PERITELEVISION, BW_EDITION_CURRENT, &pins);
  g_assert_true (bw_plug_find (&plug, BW_SIGNAL_RGB, BW_CONDUCTOR_R, FALSE, &pin, &ground));
  g_assert_cmpint (pin, ==, 15);
}

/* Luminance with its sync is what the pin of Y carries (secondary sources on the 4-pin mini-DIN: Y is
 * 1 V with sync, on pin 3 with ground 1). Composite video with a subcarrier does not go there. */
static void
test_luminance (void)
{
  BwPlug plug;
  int pin, ground;

  bw_plug_init (&plug, BW_CONNECTOR_MINI_DIN_4, BW_EDITION_CURRENT, NULL);
  g_assert_true (bw_plug_find (&plug, BW_SIGNAL_LUMA, BW_CONDUCTOR_VIDEO, FALSE, &pin, &ground));
  g_assert_cmpint (pin, ==, 3);
  g_assert_cmpint (ground, ==, 1);
  g_assert_false (
      bw_plug_find (&plug, BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, FALSE, &pin, &ground));
  g_assert_true (
      bw_connector_takes (BW_CONNECTOR_MINI_DIN_4, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, FALSE));
  g_assert_false (
      bw_connector_takes (BW_CONNECTOR_MINI_DIN_4, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, FALSE));
}

/* How many pins are open: a conductor each, and the ground. DIN 45322 lays down composite video alone. */
static void
test_open (void)
{
  static const struct
  {
    BwConnector connector;
    const char *pins;
    BwSignal signal;
    BwSyncKind sync;
    guint open;
  } cases[] = {
    { BW_CONNECTOR_DE_9, "", BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, 5 },
    { BW_CONNECTOR_DE_9, "", BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 6 },
    { BW_CONNECTOR_DE_9, "", BW_SIGNAL_RGB, BW_SYNC_ON_GREEN, 4 },
    { BW_CONNECTOR_DE_9, COMPUTER, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, 0 },
    { BW_CONNECTOR_DE_9, COMPUTER, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 2 },
    { BW_CONNECTOR_DE_9, "3 r; 4 g; 5 b; 7 sync", BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, 1 },
    { BW_CONNECTOR_DE_9, "1 ground", BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, 4 },
    { BW_CONNECTOR_DIN_6, "", BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, 0 },
    { BW_CONNECTOR_DIN_6, "", BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, 5 },
    { BW_CONNECTOR_BNC, "", BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 0 },
    { BW_CONNECTOR_DE_15, "", BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 0 },
    { BW_CONNECTOR_PERITELEVISION, "", BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO, 0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwPinout pins;
      read_pins (cases[i].pins, &pins);
      const BwOpenPins open
          = { bw_connector_open_pins (cases[i].connector, &pins, cases[i].signal, cases[i].sync, TRUE),
              0 };
      g_assert_cmpuint (bw_open_pins_count (&open), ==, cases[i].open);
      g_autofree char *says = bw_open_pins_says (&open);
      g_assert_cmpint (says != NULL, ==, cases[i].open > 0);
    }
}

static void
test_words (void)
{
  const BwOpenPins open = { BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_PIN_USE_GROUND),
                            BW_BIT (BW_CONDUCTOR_SYNC) };
  const BwOpenPins one = { 0, BW_BIT (BW_CONDUCTOR_SYNC) };
  g_autofree char *says = bw_open_pins_says (&open);
  g_autofree char *of_one = bw_open_pins_says (&one);
  g_assert_cmpstr (says, ==, "complete but for 3 pins: R, ground at the source, Sync at the input");
  g_assert_cmpstr (of_one, ==, "complete but for 1 pin: Sync at the input");
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/plug/parse", test_parse);
  g_test_add_func ("/plug/refuse", test_refuse);
  g_test_add_func ("/plug/own", test_own);
  g_test_add_func ("/plug/standard-holds", test_standard_holds);
  g_test_add_func ("/plug/luminance", test_luminance);
  g_test_add_func ("/plug/open", test_open);
  g_test_add_func ("/plug/words", test_words);
  return g_test_run ();
}
