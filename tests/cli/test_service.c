/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli capacitor`, `field-scan`, `line-scan` and `supply`: what a repair asks of arithmetic. The figures
 * have their sources in tests/core/service. */
#include <string.h>

#include "run.h"

typedef struct
{
  const char *key;
  double value;
  double tolerance;
} Figure;

static const struct
{
  const char *name;
  const char *args[22];
  Figure figures[8];
} cases[] = {
  /* 1000 µF 35 V: tan δ 0.12, 0.159 Ω at 120 Hz; 32 000 h × 4^(−0.345) = 19 835 h, 9.06 years at 6 h a day. */
  { "capacitor-worn",
    { "capacitor", "--value", "1000uF", "--voltage", "35V", "--measured", "850uF", "--esr", "0.3ohm",
      "--at", "120Hz", "--rated-life", "2000h", "--rated-temp", "105C", "--temp", "65C", "--ripple",
      "1.3", "--hours-a-day", "6" },
    { { "tan_delta_limit", 0.12, 1e-9 },
      { "esr_limit_ohm", 0.15915, 1e-5 },
      { "tan_delta", 0.19227, 1e-5 },
      { "life_s", 19835 * 3600.0, 5 * 3600.0 },
      { "life_years", 9.057, 5e-3 },
      { "replacement_f", 1000e-6, 1e-12 },
      { "replacement_v", 35, 1e-9 },
      { "capacitance_off", -0.15, 1e-9 } } },
  { "capacitor-capped",
    { "capacitor", "--value=470uF", "--voltage=40V", "--rated-life=2000 hours", "--rated-temp=105 °C",
      "--temp=40 °C" },
    { { "life_s", 131400 * 3600.0, 1 }, { "life_years", 15, 1e-9 }, { "replacement_v", 50, 1e-9 } } },
  { "field",
    { "field-scan", "--capacitor=1000uF", "--resistance=8ohm", "--scan=15.68ms", "--retrace=1ms" },
    { { "a", 1.96, 1e-9 }, { "height", 0.98, 5e-3 }, { "pitch_top_to_bottom", 7.099, 1e-3 } } },
  { "field-of-rate",
    { "field-scan", "--capacitor=2500uF", "--resistance=8ohm", "--field-rate=50Hz" },
    { { "a", 1, 1e-9 }, { "bow", 0.12330, 1e-5 }, { "bow_at", 0.459, 5e-4 }, { "height", 1, 1e-12 } } },
  { "field-less-retrace",
    { "field-scan", "--capacitor=2500uF", "--resistance=8ohm", "--field-rate=50Hz", "--retrace=1ms" },
    { { "a", 0.95, 1e-9 } } },
  { "field-inductance", /* L/R a seventeenth of the scan, a 2.08: 22.6 % */
    { "field-scan", "--capacitor=1201.92uF", "--resistance=8ohm", "--inductance=9.41176mH",
      "--scan=20ms" },
    { { "bow", 0.226, 5e-4 } } },
  { "field-rows", /* 12/11·ln (22/18) = 0.21891; 20 ms/(12 Ω × 0.21891) = 7613 µF */
    { "field-scan", "--rows=22,18,12", "--resistance=12ohm", "--field-rate=50Hz" },
    { { "a", 0.21891, 1e-5 }, { "capacitor_f", 7613e-6, 1e-6 } } },
  { "line",
    { "line-scan", "--supply=130V", "--inductance=1.2mH", "--capacitor=9.1nF", "--scan=52.6us" },
    { { "peak_v", 1172.8, 0.05 },
      { "retrace_s", 11.21e-6, 5e-9 },
      { "current_a", 2.849, 5e-4 },
      { "energy_j", 4.87e-3, 5e-6 },
      { "peak_with_tenth_less_v", 1172.8 * 1.047, 1 },
      { "rule_retrace_s", 10.38e-6, 5e-9 } } },
  { "supply", /* 115 V × 0.87 A = 100 VA */
    { "supply", "--mains=230V,50Hz", "--plate=115V,50/60Hz,0.87A", "--field-rate=50.05Hz",
      "--reservoir=220uF", "--load=0.4A" },
    { { "apparent_power_va", 100.05, 1e-9 },
      { "hum_bars", 1, 0 },
      { "hum_seconds_per_height", 19.98, 0.05 },
      { "ripple_v", 16.3, 0.05 },
      { "rule_v", 18.18, 0.01 } } },
  { "supply-inside", /* on 110 V it runs at 110 V */
    { "supply", "--mains=110V,60Hz", "--plate=100-120V,50/60Hz,2.4A", "--field-rate=59.94006Hz" },
    { { "apparent_power_va", 264, 1e-9 }, { "hum_seconds_per_height", 16.70, 5e-3 } } },
  { "supply-half-wave", /* twice the rule of a full wave */
    { "supply", "--mains=230V;50Hz", "--plate=230V", "--reservoir=220uF", "--load=0.4A",
      "--half-wave" },
    { { "rule_v", 36.36, 0.01 } } },
};

static void
test_case (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const char *args[G_N_ELEMENTS (cases[i].args) + 1] = { NULL };
  gsize n = 0;
  for (; n < G_N_ELEMENTS (cases[i].args) && cases[i].args[n] != NULL; n++)
    args[n] = cases[i].args[n];
  args[n] = "--json";
  g_autoptr (Run) run = run_args (args);
  g_autoptr (JsonObject) root = run_json (run);

  for (const Figure *figure = cases[i].figures;
       figure < cases[i].figures + G_N_ELEMENTS (cases[i].figures) && figure->key != NULL; figure++)
    {
      double got = figure_of (root, figure->key);
      if (!is_near (got, figure->value, figure->tolerance))
        g_error ("%s: %s is %g, not %g", cases[i].name, figure->key, got, figure->value);
    }
}

static void
assert_flag (JsonObject *root, const char *key, gboolean wanted)
{
  g_assert_cmpint (json_object_get_boolean_member (root, key), ==, wanted);
}

/* The worth of a part and what would decide it; how people read it stands beside. */
static void
test_worth (void)
{
  static const struct
  {
    const char *measured;
    const char *esr;
    const char *at;
    const char *verdict;
    const char *says;
  } parts[] = {
    { "--measured=950uF", "--esr=0.08ohm", "--at=120Hz", "good", "✓" },
    { "--measured=950uF", "--esr=0.3ohm", "--at=120Hz", "worn", "≈" },
    { "--measured=500uF", "--esr=0.3ohm", "--at=120Hz", "spent", "⊘" },
    { "--measured=950uF", "--esr=0.08ohm", "--at=100kHz", "not-decided", "100 or 120 Hz" },
    { "--measured=950uF", "--esr=0.08ohm", NULL, "not-decided", "frequency" },
    { "--measured=1500uF", "--esr=0.08ohm", "--at=100Hz", "spent", "Lift one lead" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autoptr (Run) run = run_cli ("capacitor", "--json", "--value=1000uF", "--voltage=35V",
                                     parts[i].measured, parts[i].esr, parts[i].at, NULL);
      g_autoptr (Run) text = run_cli ("capacitor", "--value=1000uF", "--voltage=35V",
                                      parts[i].measured, parts[i].esr, parts[i].at, NULL);
      g_autoptr (JsonObject) root = run_json (run);
      g_assert_cmpstr (json_object_get_string_member (root, "verdict"), ==, parts[i].verdict);
      g_assert_nonnull (strstr (text->out, parts[i].says));
      g_assert_nonnull (strstr (text->out, "never put an"));
    }
}

static void
test_flags (void)
{
  g_autoptr (Run) capped = run_cli ("capacitor", "--json", "--value=1uF", "--voltage=50V",
                                    "--rated-life=2000h", "--rated-temp=105C", "--temp=40C", NULL);
  g_autoptr (Run) years = run_cli ("capacitor", "--json", "--value=1uF", "--voltage=50V",
                                   "--rated-life=2000h", "--rated-temp=105C", "--temp=65C",
                                   "--hours-a-day=3", NULL);
  g_autoptr (Run) outside = run_cli ("supply", "--json", "--mains=230V,50Hz",
                                     "--plate=100-120V,50/60Hz,2.4A", NULL);
  g_autoptr (Run) inside = run_cli ("supply", "--json", "--mains=117V,60Hz",
                                    "--plate=110-120V,50/60Hz", NULL);
  g_autoptr (JsonObject) capped_root = run_json (capped), years_root = run_json (years);
  g_autoptr (JsonObject) outside_root = run_json (outside), inside_root = run_json (inside);

  assert_flag (capped_root, "life_capped", TRUE);
  assert_flag (capped_root, "life_years_capped", TRUE);
  assert_flag (years_root, "life_capped", FALSE); /* 32 000 h are 29 years at three hours a day */
  assert_flag (years_root, "life_years_capped", TRUE);
  assert_flag (outside_root, "inside", FALSE);
  assert_flag (inside_root, "inside", TRUE);
  g_assert_true (is_null (inside_root, "apparent_power_va"));
  g_assert_false (json_object_has_member (inside_root, "hum_bars"));
}

/* Where there is no figure, words say why: equal rows, bars that stand, a load that is too much. */
static void
test_no_figure (void)
{
  g_autoptr (Run) rows = run_cli ("field-scan", "--json", "--rows=18;22;12", "--resistance=12ohm",
                                  "--scan=18ms", NULL);
  g_autoptr (Run) still = run_cli ("supply", "--json", "--mains=230V,50Hz", "--plate=230V",
                                   "--field-rate=50Hz", "--reservoir=1uF", "--load=2A", NULL);
  g_autoptr (JsonObject) rows_root = run_json (rows), still_root = run_json (still);

  g_assert_true (is_null (rows_root, "capacitor_f"));
  g_assert_cmpfloat (figure_of (rows_root, "a"), <, 0);
  g_assert_nonnull (strstr (json_object_get_string_member (rows_root, "why"), "linearity"));
  g_assert_true (is_null (still_root, "hum_seconds_per_height"));
  g_assert_true (is_null (still_root, "ripple_v"));
}

/* What can hurt stands first. */
static void
test_cautions (void)
{
  g_autoptr (Run) line = run_cli ("line-scan", "--supply=130V", "--inductance=1.2mH",
                                  "--capacitor=9.1nF", "--scan=52.6us", NULL);
  g_autoptr (Run) supply = run_cli ("supply", "--mains=230V,50Hz", "--plate=115V,60Hz,1A", NULL);
  g_assert_true (g_str_has_prefix (line->out, "The retrace capacitor is a safety part"));
  g_assert_nonnull (strstr (line->out, "licensed practice"));
  g_assert_true (strstr (supply->out, "outside the rating") < strstr (supply->out, "apparent power"));
  g_assert_nonnull (strstr (supply->out, "lethal charge"));
}

/* Status 2: which options go together. Status 1: which value, and what is allowed. */
static const struct
{
  const char *name;
  const char *args[6];
  int status;
  const char *says;
} refused[] = {
  { "capacitor-nothing", { "capacitor" }, 2, "--value and --voltage" },
  { "capacitor-at", { "capacitor", "--value=1uF", "--voltage=5V", "--at=1kHz" }, 2, "--esr" },
  { "capacitor-life", { "capacitor", "--value=1uF", "--voltage=5V", "--temp=60C" }, 2, "together" },
  { "capacitor-ripple", { "capacitor", "--value=1uF", "--voltage=5V", "--ripple=1" }, 2, "--temp" },
  { "capacitor-value", { "capacitor", "--value=1", "--voltage=5V" }, 1, "uF" },
  { "capacitor-range", { "capacitor", "--value=1000F", "--voltage=5V" }, 1, "from 1 nF to 10 F" },
  { "capacitor-voltage", { "capacitor", "--value=1uF", "--voltage=-5V" }, 1, "from 1 V to 1000 V" },
  { "capacitor-zero", { "capacitor", "--value=1uF", "--voltage=5V", "--esr=0ohm" }, 1, "allowed" },
  { "field-nothing", { "field-scan" }, 2, "either --capacitor or --rows" },
  { "field-both", { "field-scan", "--capacitor=1uF", "--rows=1,2,3" }, 2, "either" },
  { "field-resistance", { "field-scan", "--rows=1,2,3" }, 2, "--resistance" },
  { "field-time", { "field-scan", "--rows=1,2,3", "--resistance=1ohm" }, 2, "--field-rate" },
  { "field-henry",
    { "field-scan", "--rows=1,2,3", "--resistance=1ohm", "--scan=1ms", "--inductance=1mH" },
    2,
    "--inductance" },
  { "field-rows", { "field-scan", "--rows=1,2", "--resistance=1ohm", "--scan=1ms" }, 1, "22,18,12" },
  { "field-part", { "field-scan", "--rows=1,2,2.5", "--resistance=1ohm", "--scan=1ms" }, 1, "whole" },
  { "field-one", { "field-scan", "--rows=1,2,1", "--resistance=1ohm", "--scan=1ms" }, 1, "from 2" },
  { "field-word", { "field-scan", "--rows=a,2,3", "--resistance=1ohm", "--scan=1ms" }, 1, "number" },
  { "field-retrace",
    { "field-scan", "--rows=2,1,3", "--resistance=1ohm", "--field-rate=50Hz", "--retrace=15ms" },
    1,
    "half of the field" },
  { "line-nothing", { "line-scan", "--supply=5V" }, 2, "--inductance" },
  { "line-unit", { "line-scan", "--supply=5V", "--inductance=1", "--capacitor=1nF", "--scan=1us" }, 1,
    "mH" },
  { "supply-nothing", { "supply", "--mains=230V,50Hz" }, 2, "--plate" },
  { "supply-load", { "supply", "--mains=230V,50Hz", "--plate=230V", "--load=1A" }, 2, "--reservoir" },
  { "supply-wave", { "supply", "--mains=230V,50Hz", "--plate=230V", "--half-wave" }, 2, "--load" },
  { "supply-mains", { "supply", "--mains=230V", "--plate=230V" }, 1, "230V,50Hz" },
  { "supply-plate", { "supply", "--mains=230V,50Hz", "--plate=1,2,3,4" }, 1, "2.4A" },
  { "supply-plate-unit", { "supply", "--mains=230V,50Hz", "--plate=230Hz" }, 1, "--plate" },
};

static void
test_refused (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (Run) run = run_args (refused[i].args);
  g_assert_cmpstr (run->out, ==, "");
  assert_refused (run, refused[i].status, refused[i].says);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/service/", cases[i].name, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_case);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *path = g_strconcat ("/service/refused/", refused[i].name, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_refused);
    }
  g_test_add_func ("/service/worth", test_worth);
  g_test_add_func ("/service/flags", test_flags);
  g_test_add_func ("/service/no-figure", test_no_figure);
  g_test_add_func ("/service/cautions", test_cautions);
  return g_test_run ();
}
