/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every connector, signal and sync to every connector. */
#include "test_wiring.h"

/* Every pin of both ends is either connected or told of among the rest, and no signal meets a pin that
 * is not its own. Where the pin of a signal is laid down by no standard, nothing is told of the pins
 * that are left. */

static gboolean
is_connected (const BwWiring *wiring, gboolean at_input, int pin)
{
  for (guint i = 0; i < wiring->connections->len; i++)
    {
      const BwConnection *c = &g_array_index (wiring->connections, BwConnection, i);
      if (pin == (at_input ? c->to_pin : c->from_pin)
          || pin == (at_input ? c->to_ground : c->from_ground))
        return TRUE;
    }
  return FALSE;
}

static gboolean
all_are_known (const BwWiring *wiring, gboolean at_input)
{
  for (guint i = 0; i < wiring->connections->len; i++)
    {
      const BwConnection *c = &g_array_index (wiring->connections, BwConnection, i);
      if ((at_input ? c->to_pin : c->from_pin) == BW_PIN_NOT_LAID_DOWN)
        return FALSE;
    }
  return TRUE;
}

static void
assert_sound (const BwWiring *wiring)
{
  for (int side = 0; side < 2; side++)
    {
      const BwWiringEnd *end = side ? &wiring->to : &wiring->from;
      guint n;
      const BwPin *pins = bw_connector_pins (end->connector, end->edition, &n);
      for (guint i = 0; i < n; i++)
        if (all_are_known (wiring, side))
          g_assert_cmpint (is_connected (wiring, side, pins[i].number), ==,
                           rest_of (wiring, side, pins[i].number) == NULL);
        else
          g_assert_null (rest_of (wiring, side, pins[i].number));
      for (guint i = 0; i < wiring->rests->len; i++)
        {
          const BwRest *rest = &g_array_index (wiring->rests, BwRest, i);
          g_assert_cmpint (rest->other != 0, ==, rest->kind == BW_REST_JOINED);
        }
      for (guint i = 0; i < wiring->connections->len; i++)
        {
          const BwConnection *c = &g_array_index (wiring->connections, BwConnection, i);
          const BwPin *pin = bw_connector_pin (end->connector, end->edition,
                                               side ? c->to_pin : c->from_pin);
          /* luminance with its sync is what Y of Y/C carries */
          guint as_well = end->signal == BW_SIGNAL_LUMA ? BW_BIT (BW_CONDUCTOR_Y) : 0;
          if (pin != NULL)
            g_assert_true ((side ? pin->takes : pin->gives) & (BW_BIT (c->conductor) | as_well));
        }
    }
}

static void
test_all (void)
{
  BwWiringParts parts = { .supply_v = 12, .supply_tolerance = 0.05 };
  guint made = 0;
  for (guint a = 0; a < BW_N_CONNECTORS; a++)
    for (guint b = 0; b < BW_N_CONNECTORS; b++)
      for (guint signal = 0; signal < BW_N_SIGNALS; signal++)
        for (guint sync = 0; sync < BW_N_SYNC_KINDS; sync++)
          for (guint straight = 0; straight < 2; straight++)
            {
              const BwWiringEnd from = { a, signal, sync, BW_EDITION_1983 };
              const BwWiringEnd to = { b, signal, sync, BW_EDITION_CURRENT };
              g_autoptr (GError) error = NULL;
              parts.straight = straight != 0;
              g_autoptr (BwWiring) wiring = bw_wiring_new (&from, &to, &parts, &error);
              g_assert_true ((wiring == NULL) == (error != NULL));
              if (wiring != NULL)
                assert_sound (wiring);
              made += wiring != NULL;
            }
  g_assert_cmpuint (made, >, 200);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/wiring/all", test_all);
  return g_test_run ();
}
