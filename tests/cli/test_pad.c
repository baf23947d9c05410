/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli pad`: the resistor between logic sync and an input. */
#include <string.h>

#include "run.h"

/* 0.3 V of sync (ITU-R BT.1700) across 75 Ω; values of IEC 60063; levels from the voltage divider,
 * printed to 0.1 mV. */
static const struct
{
  const char *name;
  const char *from;
  const char *series;
  double ideal_ohm;
  double value_ohm;
  double level_v;
} cases[] = {
  { "5v-e12", "5V", "e12", 1175, 1200, 0.2941 },   { "5v-e24", "5V", "e24", 1175, 1200, 0.2941 },
  { "5v-e96", "5V", "e96", 1175, 1180, 0.2988 },   { "4v-e12", "4V", "e12", 925, 1000, 0.2791 },
  { "4v-e24", "4V", "e24", 925, 910, 0.3046 },     { "4v-e96", "4V", "e96", 925, 931, 0.2982 },
  { "3.3v-e12", "3.3V", "e12", 750, 820, 0.2765 }, { "3.3v-e24", "3.3V", "e24", 750, 750, 0.3 },
  { "2.4v-e12", "2.4V", "e12", 525, 560, 0.2835 }, { "2.4v-e96", "2.4V", "e96", 525, 523, 0.301 },
  { "1v-e24", "1V", "e24", 175, 180, 0.2941 },     { "0.6v-e12", "0.6V", "e12", 75, 82, 0.2866 },
};

static void
test_case (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (Run) run = run_cli ("pad", "--from", cases[i].from, "--to", "300mV", "--series",
                                 cases[i].series, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  static const char *const keys[] = { "ideal_ohm", "value_ohm", "level_v", "min_v",
                                      "max_v",     "power_w",   NULL };

  assert_keys_begin_with (root, keys);
  g_assert_true (is_near (figure_of (root, "ideal_ohm"), cases[i].ideal_ohm, 1e-6));
  g_assert_true (is_near (figure_of (root, "value_ohm"), cases[i].value_ohm, 1e-6));
  g_assert_true (is_near (figure_of (root, "level_v"), cases[i].level_v, 0.5e-4));
}

/* E24 is ±5 % and the supply ±5 %: 4.75 V over 1260 + 75 Ω, 5.25 V over 1140 + 75 Ω; the resistor
 * drops 5 − 0.2941 V. */
static void
test_spread (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--from", "5V", "--to", "300mV", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  double drop_v = 5 * 1200.0 / 1275;
  g_assert_true (is_near (figure_of (root, "min_v"), 4.75 * 75 / 1335, 1e-9));
  g_assert_true (is_near (figure_of (root, "max_v"), 5.25 * 75 / 1215, 1e-9));
  g_assert_true (is_near (figure_of (root, "power_w"), drop_v * drop_v / 1200, 1e-9));
}

static void
test_exact_supply (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--from", "5V", "--to", "300mV", "--series", "e96",
                                 "--supply-tolerance", "0%", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_true (is_near (figure_of (root, "min_v"), 5 * 75 / (1180 * 1.01 + 75), 1e-9));
  g_assert_true (is_near (figure_of (root, "max_v"), 5 * 75 / (1180 * 0.99 + 75), 1e-9));
}

/* The driver's own resistance is part of the divider. */
static void
test_driver (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--from", "5V", "--to", "300mV", "--driver", "100ohm",
                                 "--load", "150 ohm", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  double value_ohm = figure_of (root, "value_ohm");
  g_assert_true (is_near (figure_of (root, "ideal_ohm"), 150 * (5 / 0.3 - 1) - 100, 1e-6));
  g_assert_true (is_near (value_ohm, 2200, 1e-6));
  g_assert_true (is_near (figure_of (root, "level_v"), 5 * 150 / (value_ohm + 250), 1e-9));
}

static void
test_nothing_needed (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--from", "600mV", "--to", "300mV", "--driver", "75ohm",
                                 "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_true (is_near (figure_of (root, "value_ohm"), 0, 0));
  g_assert_true (is_near (figure_of (root, "level_v"), 0.3, 1e-12));
  g_assert_true (is_near (figure_of (root, "power_w"), 0, 0));
}

static void
test_refused (void)
{
  g_autoptr (Run) high = run_cli ("pad", "--from", "0.3V", "--to", "0.5V", NULL);
  g_autoptr (Run) driver = run_cli ("pad", "--from", "0.6V", "--to", "0.4V", "--driver", "75ohm",
                                    NULL);
  g_autoptr (Run) nothing = run_cli ("pad", "--from", "5V", NULL);
  g_autoptr (Run) series = run_cli ("pad", "--from", "5V", "--to", "0.3V", "--series", "e6", NULL);
  g_autoptr (Run) unit = run_cli ("pad", "--from", "5 Hz", "--to", "0.3V", NULL);
  g_autoptr (Run) zero = run_cli ("pad", "--from", "5V", "--to", "0V", NULL);
  g_autoptr (Run) load = run_cli ("pad", "--from", "5V", "--to", "0.3V", "--load", "0ohm", NULL);
  g_autoptr (Run) share = run_cli ("pad", "--from", "5V", "--to", "0.3V", "--supply-tolerance",
                                   "100%", NULL);
  assert_refused (high, 1, "500");
  assert_refused (driver, 1, "300");
  assert_refused (nothing, 2, "--to");
  assert_refused (series, 2, "--series");
  assert_refused (unit, 1, "--from");
  assert_refused (zero, 1, "--to");
  assert_refused (load, 1, "--load");
  assert_refused (share, 1, "--supply-tolerance");
}

static void
test_text (void)
{
  g_autoptr (Run) all = run_cli ("pad", "--from", "5V", "--to", "300mV", NULL);
  g_autoptr (Run) one = run_cli ("pad", "--from", "5V", "--to", "300mV", "--series", "e96", NULL);
  g_autoptr (Run) help = run_cli ("help", "pad", NULL);
  g_assert_cmpint (all->status, ==, 0);
  g_assert_nonnull (strstr (all->out, "1.175 kΩ"));
  g_assert_nonnull (strstr (all->out, "294.1 mV"));
  g_assert_nonnull (strstr (all->out, "E12"));
  g_assert_nonnull (strstr (one->out, "1.18 kΩ"));
  g_assert_null (strstr (one->out, "E12"));
  g_assert_nonnull (strstr (help->out, "--supply-tolerance"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/pad/value/", cases[i].name, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_case);
    }
  g_test_add_func ("/pad/spread", test_spread);
  g_test_add_func ("/pad/exact-supply", test_exact_supply);
  g_test_add_func ("/pad/driver", test_driver);
  g_test_add_func ("/pad/nothing-needed", test_nothing_needed);
  g_test_add_func ("/pad/refused", test_refused);
  g_test_add_func ("/pad/text", test_text);
  return g_test_run ();
}
