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

static JsonObject *
element (JsonObject *root, const char *table, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (root, table), i);
}

/* Minimum-loss pad, Z1 = 75 Ω to Z2 = 50 Ω: R1 = √(Z1 (Z1 − Z2)) = 43.30 Ω in series at Z1, R2 =
 * Z2 √(Z1/(Z1 − Z2)) = 86.60 Ω across Z2, 20 lg (√(Z1/Z2) + √(Z1/Z2 − 1)) = 5.72 dB (image parameters; the
 * formulas of the handbooks). With 43 and 91 Ω of E24 the source sees 43 + 91 ∥ 50 = 75.27 Ω: return loss
 * −20 lg |0.27/150.27| = 54.9 dB. */
static void
test_minimum_loss (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--match", "--driver", "75ohm", "--load", "50ohm",
                                 "--series", "e24", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *exact = element (root, "pads", 0), *made = element (root, "pads", 1);

  g_assert_cmpstr (json_object_get_string_member (element (root, "resistors", 0), "place"), ==,
                   "series");
  g_assert_true (is_near (figure_of (element (root, "resistors", 0), "ideal_ohm"), 43.301, 1e-3));
  g_assert_true (is_near (figure_of (element (root, "resistors", 1), "ideal_ohm"), 86.603, 1e-3));
  g_assert_true (is_near (figure_of (element (root, "resistors", 1), "e24_ohm"), 91, 1e-9));
  g_assert_true (is_near (figure_of (exact, "loss_db"), 5.719, 1e-3));
  g_assert_true (is_near (figure_of (exact, "input_ohm"), 75, 1e-9));
  g_assert_true (is_near (figure_of (exact, "output_ohm"), 50, 1e-9));
  g_assert_true (json_object_get_null_member (exact, "input_return_loss_db"));
  g_assert_true (is_near (figure_of (made, "input_ohm"), 43 + 91 * 50 / 141.0, 1e-9));
  g_assert_true (is_near (figure_of (made, "input_return_loss_db"), 54.9, 0.1));
}

/* A T and a Pi of exact values match whatever their loss: then the return loss has no end, and no figure. */
static void
test_perfect_match (void)
{
  for (int db = 1; db <= 25; db++)
    {
      g_autofree char *loss = g_strdup_printf ("--loss=%ddB", db);
      g_autoptr (Run) run = run_cli ("pad", loss, "--json", NULL);
      g_autoptr (JsonObject) root = run_json (run);
      JsonArray *pads = json_object_get_array_member (root, "pads");
      guint n_exact = 0;
      for (guint i = 0; i < json_array_get_length (pads); i++)
        {
          JsonObject *pad = json_array_get_object_element (pads, i);
          if (!json_object_get_null_member (pad, "series"))
            continue;
          n_exact++;
          g_assert_true (json_object_get_null_member (pad, "input_return_loss_db"));
          g_assert_true (json_object_get_null_member (pad, "output_return_loss_db"));
          g_assert_true (is_near (figure_of (pad, "loss_db"), db, 1e-9));
        }
      g_assert_cmpuint (n_exact, ==, 2);
    }
}

/* The other way round, and the level: 75 Ω to 300 Ω, √(300 × 225) = 259.8 Ω in series at the load and
 * 75 √(300/225) = 86.60 Ω at the source; 11.44 dB. Of 1 V without load the most that the source can give is
 * 1/300 W, and that less 11.44 dB in 300 Ω is 268 mV. */
static void
test_minimum_loss_up (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--match", "--from", "1V", "--driver", "75ohm", "--load",
                                 "300ohm", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);

  g_assert_cmpstr (json_object_get_string_member (element (root, "resistors", 0), "place"), ==,
                   "shunt");
  g_assert_true (is_near (figure_of (element (root, "resistors", 0), "ideal_ohm"), 86.603, 1e-3));
  g_assert_true (is_near (figure_of (element (root, "resistors", 1), "ideal_ohm"), 259.81, 1e-2));
  g_assert_true (is_near (figure_of (element (root, "pads", 0), "loss_db"), 11.439, 1e-3));
  g_assert_true (is_near (figure_of (element (root, "pads", 0), "level_v"), 0.268, 5e-4));
}

/* 6 dB in 75 Ω, k = 1.9953: T of Z (k − 1)/(k + 1) = 24.92 Ω and 2 Z k/(k² − 1) = 100.4 Ω, Pi of Z²/those:
 * 225.7 and 56.03 Ω (image parameters). */
static void
test_loss (void)
{
  static const double ohm[] = { 24.92, 100.4, 24.92, 225.7, 56.03, 225.7 };
  g_autoptr (Run) run = run_cli ("pad", "--loss", "6dB", "--from", "2V", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);

  for (guint i = 0; i < G_N_ELEMENTS (ohm); i++)
    g_assert_true (is_near (figure_of (element (root, "resistors", i), "ideal_ohm"), ohm[i],
                            6e-4 * ohm[i]));
  for (guint i = 0; i < 8; i += 4)
    {
      g_assert_true (is_near (figure_of (element (root, "pads", i), "loss_db"), 6, 1e-9));
      g_assert_true (is_near (figure_of (element (root, "pads", i), "level_v"), 0.5012, 1e-4));
    }
}

/* 5 V behind 50 Ω to 0.3 V across 75 Ω, which looks back into 75 Ω: k = 5/0.6; 75 k − 50 = 575 Ω in series,
 * 75/(1 − 1/k) = 85.23 Ω to the return. Straight on 75 Ω there would be 3 V: 20 dB (voltage divider). */
static void
test_l_pad (void)
{
  g_autoptr (Run) run = run_cli ("pad", "--match", "--from", "5V", "--to", "300mV", "--driver",
                                 "50ohm", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);

  g_assert_true (is_near (figure_of (element (root, "resistors", 0), "ideal_ohm"), 575, 1e-6));
  g_assert_true (is_near (figure_of (element (root, "resistors", 1), "ideal_ohm"), 85.227, 1e-3));
  g_assert_true (is_near (figure_of (element (root, "pads", 0), "loss_db"), 20, 1e-9));
  g_assert_true (is_near (figure_of (element (root, "pads", 0), "output_ohm"), 75, 1e-9));
  g_assert_true (is_near (figure_of (element (root, "pads", 0), "level_v"), 0.3, 1e-9));
}

static void
test_match_refused (void)
{
  g_autoptr (Run) both = run_cli ("pad", "--match", "--loss", "6dB", NULL);
  g_autoptr (Run) driver = run_cli ("pad", "--match", NULL);
  g_autoptr (Run) from = run_cli ("pad", "--match", "--to", "1V", NULL);
  g_autoptr (Run) alike = run_cli ("pad", "--match", "--driver", "75ohm", NULL);
  g_autoptr (Run) words = run_cli ("pad", "--loss", "six", NULL);
  g_autoptr (Run) unit = run_cli ("pad", "--loss", "6 V", NULL);
  g_autoptr (Run) none = run_cli ("pad", "--loss", "0dB", NULL);
  g_autoptr (Run) high = run_cli ("pad", "--match", "--from", "1V", "--to", "0.9V", NULL);

  assert_refused (both, 2, "--loss");
  assert_refused (driver, 2, "--driver");
  assert_refused (from, 2, "--from");
  assert_refused (alike, 1, "--match");
  assert_refused (words, 1, "--loss");
  assert_refused (unit, 1, "--loss");
  assert_refused (none, 1, "--loss");
  assert_refused (high, 1, "--to");
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
  g_test_add_func ("/pad/minimum-loss", test_minimum_loss);
  g_test_add_func ("/pad/perfect-match", test_perfect_match);
  g_test_add_func ("/pad/minimum-loss-up", test_minimum_loss_up);
  g_test_add_func ("/pad/loss", test_loss);
  g_test_add_func ("/pad/l-pad", test_l_pad);
  g_test_add_func ("/pad/match-refused", test_match_refused);
  return g_test_run ();
}
