/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli levels`: what should be on the wire. */
#include <math.h>
#include <string.h>

#include "run.h"

static JsonObject *
levels_of (const char *system, const char *kind, const char *bars)
{
  g_autoptr (Run) run = run_cli ("levels", "--system", system, "--kind", kind, "--bars", bars,
                                 "--json", NULL);
  return run_json (run);
}

static JsonObject *
bar_of (JsonObject *root, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (root, "bars"), i);
}

static void
test_keys (void)
{
  static const char *const keys[]
      = { "system",     "kind",      "mv_per_ire", "white_v",       "black_v", "blanking_v",
          "sync_v",     "burst_pp_v", "setup_ire",  "subcarrier_hz", "bars",    NULL };
  g_autoptr (JsonObject) root = levels_of ("ntsc-m", "composite", "75");
  assert_keys_begin_with (root, keys);
}

/* SMPTE 170M-2004 table 1 and clause 15.4: 140 IRE = 1 V, white 100, setup 7.5, sync −40, burst 40
 * IRE; 11.2: subcarrier 315/88 MHz. */
static void
test_ntsc (void)
{
  g_autoptr (JsonObject) root = levels_of ("ntsc-m", "composite", "75");
  g_assert_true (is_near (figure_of (root, "mv_per_ire"), 1000.0 / 140, 1e-9));
  g_assert_true (is_near (figure_of (root, "white_v"), 100.0 / 140, 1e-9));
  g_assert_true (is_near (figure_of (root, "black_v"), 7.5 / 140, 1e-9));
  g_assert_true (is_near (figure_of (root, "sync_v"), -40.0 / 140, 1e-9));
  g_assert_true (is_near (figure_of (root, "burst_pp_v"), 40.0 / 140, 1e-9));
  g_assert_true (is_near (figure_of (root, "subcarrier_hz"), 315e6 / 88, 1e-3));
}

/* EBU bars of PAL (100/0/75/0), by the equations of ITU-R BT.1700: white 700 mV, yellow luma
 * 0.75 × 0.886 × 700 = 465.15 mV with 470.50 mV of chroma, whose peak is 700.4 mV. */
static void
test_ebu (void)
{
  g_autoptr (JsonObject) root = levels_of ("pal-b", "composite", "ebu");
  JsonObject *white = bar_of (root, 0), *yellow = bar_of (root, 1);
  g_assert_true (is_near (figure_of (white, "luma_v"), 0.7, 1e-9));
  g_assert_true (is_near (figure_of (yellow, "luma_v"), 0.46515, 1e-7));
  g_assert_true (is_near (figure_of (yellow, "chroma_pp_v"), 0.4704985, 1e-7));
  g_assert_true (is_near (figure_of (yellow, "max_v"), 0.7003993, 1e-7));
}

/* SMPTE 170M-2004 table A.3: yellow of 75 % bars: luma 68.9663, chroma 62.0675, from 37.9325 to
 * 100 IRE, at 167.0812°. */
static void
test_ntsc_yellow (void)
{
  g_autoptr (JsonObject) root = levels_of ("ntsc-m", "composite", "75");
  JsonObject *yellow = bar_of (root, 1);
  g_assert_cmpstr (json_object_get_string_member (yellow, "name"), ==, "yellow");
  g_assert_true (is_near (figure_of (yellow, "luma_v") * 140, 68.9663, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "chroma_pp_v") * 140, 62.0675, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "min_v") * 140, 37.9325, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "max_v") * 140, 100, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "phase_deg"), 167.0812, 1e-4));
}

/* ITU-R BT.1700 table 2 and BT.470-6: white 700 mV, sync −300 mV, burst 300 mV, no setup,
 * 4 433 618.75 Hz. */
static void
test_pal (void)
{
  g_autoptr (JsonObject) root = levels_of ("pal-b", "composite", "100");
  g_assert_true (is_near (figure_of (root, "white_v"), 0.7, 1e-12));
  g_assert_true (is_near (figure_of (root, "black_v"), 0, 1e-12));
  g_assert_true (is_near (figure_of (root, "sync_v"), -0.3, 1e-12));
  g_assert_true (is_near (figure_of (root, "burst_pp_v"), 0.3, 1e-12));
  g_assert_true (is_near (figure_of (root, "subcarrier_hz"), 4433618.75, 1e-6));
}

/* ITU-R BT.601-5 3.5: yellow Y 0.886, Pb −0.5, Pr 0.114 × 0.5/0.701, on 700 mV. */
static void
test_component (void)
{
  g_autoptr (JsonObject) root = levels_of ("none", "component", "100");
  JsonObject *yellow = bar_of (root, 1);
  g_assert_true (is_near (figure_of (yellow, "y_v"), 0.6202, 1e-9));
  g_assert_true (is_near (figure_of (yellow, "pb_v"), -0.35, 1e-9));
  g_assert_true (is_near (figure_of (yellow, "pr_v"), 0.7 * 0.114 * 0.5 / 0.701, 1e-9));
  g_assert_true (is_null (root, "burst_pp_v"));
  g_assert_true (is_null (root, "subcarrier_hz"));
}

/* 75 % of 700 mV, and no IRE scale (common practice, no source). */
static void
test_rgb (void)
{
  g_autoptr (JsonObject) root = levels_of ("none", "rgb", "75");
  JsonObject *magenta = bar_of (root, 4);
  g_assert_true (is_null (root, "mv_per_ire"));
  g_assert_true (is_near (figure_of (magenta, "r_v"), 0.525, 1e-12));
  g_assert_true (is_near (figure_of (magenta, "g_v"), 0, 1e-12));
  g_assert_true (is_near (figure_of (magenta, "b_v"), 0.525, 1e-12));
}

/* SECAM's chroma is frequency modulated (ITU-R BT.1700 Part C). */
static void
test_secam (void)
{
  g_autoptr (JsonObject) root = levels_of ("secam-l", "composite", "100");
  JsonObject *red = bar_of (root, 5);
  g_assert_true (is_near (figure_of (red, "luma_v"), 0.7 * 0.299, 1e-12));
  g_assert_true (is_null (red, "chroma_pp_v"));
  g_assert_true (is_null (root, "burst_pp_v"));
}

static void
test_refused (void)
{
  g_autoptr (Run) system
      = run_cli ("levels", "--system", "ntsc-x", "--kind", "composite", NULL);
  g_autoptr (Run) kind = run_cli ("levels", "--system", "ntsc-m", "--kind", "luminance", NULL);
  g_autoptr (Run) bars
      = run_cli ("levels", "--system", "ntsc-m", "--kind", "rgb", "--bars", "50", NULL);
  g_autoptr (Run) nothing = run_cli ("levels", NULL);
  assert_refused (system, 1, "ntsc-x");
  g_assert_null (strstr (system->err, "--list"));
  g_assert_nonnull (strstr (system->err, "secam-l"));
  assert_refused (kind, 2, "--kind");
  assert_refused (bars, 2, "--bars");
  assert_refused (nothing, 2, "--system");
}

/* The level @id of the conductor @conductor, with 75 % bars; NAN where it has none. */
static double
conductor_level (const char *system, const char *kind, const char *sync, const char *conductor,
                 const char *id)
{
  g_autoptr (Run) run = run_cli ("levels", "--system", system, "-k", kind, "--bars", "75", "--sync",
                                 sync, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *all = json_object_get_array_member (root, "conductors");

  for (guint i = 0; i < json_array_get_length (all); i++)
    {
      JsonObject *on = json_array_get_object_element (all, i);
      JsonArray *levels = json_object_get_array_member (on, "levels");
      for (guint k = 0; k < json_array_get_length (levels); k++)
        {
          JsonObject *level = json_array_get_object_element (levels, k);
          if (strcmp (json_object_get_string_member (on, "id"), conductor) == 0
              && strcmp (json_object_get_string_member (level, "id"), id) == 0)
            return figure_of (level, "v");
        }
    }
  return NAN;
}

/* Three quarters of 700 mV, and of ±350 mV (ITU-R BT.601-5 3.5); composite of 75 % bars reaches 100
 * IRE at yellow, which is 714.3 mV, and C half of the 87.7363 IRE of cyan and red (SMPTE 170M-2004
 * table A.3). White stays that of 100 %. */
static void
test_conductors_of_bars (void)
{
  static const struct
  {
    const char *args[5];
    double volts;
  } cases[] = {
    { { "pal-b", "rgb", "composite-sync", "r", "highest" }, 0.525 },
    { { "pal-b", "rgb", "composite-sync", "r", "white" }, 0.7 },
    { { "pal-b", "component", "on-y", "pb", "highest" }, 0.2625 },
    { { "pal-b", "component", "on-y", "pb", "lowest" }, -0.2625 },
    { { "ntsc-m", "composite", "in-video", "video", "highest" }, 100 / 140.0 },
    { { "ntsc-m", "yc", "in-video", "c", "highest" }, 87.7363 / 280 },
    { { "ntsc-m", "yc", "in-video", "c", "lowest" }, -87.7363 / 280 },
    /* logic is never below its ground (common practice, no source) */
    { { "none", "rgb", "separate", "h", "blanking" }, 5 },
    { { "none", "rgb", "separate", "h", "sync_low" }, 0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const char *const *a = cases[i].args;
      g_assert_true (is_near (conductor_level (a[0], a[1], a[2], a[3], a[4]), cases[i].volts, 1e-6));
    }
}

/* SMPTE 170M-2004 table A.3: yellow of 75 % bars has a luma of 68.9663 and a chroma of 62.0675 IRE,
 * which Y/C carries on two conductors. */
static void
test_yc_apart (void)
{
  g_autoptr (JsonObject) root = levels_of ("ntsc-m", "yc", "75");
  JsonObject *yellow = bar_of (root, 1);
  g_assert_true (is_near (figure_of (yellow, "max_v") * 140, 68.9663, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "min_v") * 140, 68.9663, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "c_max_v") * 140, 62.0675 / 2, 1e-4));
  g_assert_true (is_near (figure_of (yellow, "c_min_v") * 140, -62.0675 / 2, 1e-4));
  g_autoptr (Run) run = run_cli ("levels", "--system", "ntsc-m", "-k", "yc", "-b", "75", NULL);
  g_assert_nonnull (strstr (run->out, "C highest"));
  g_assert_nonnull (strstr (run->out, "221.7"));
}

/* A burst as high as sync: 40 IRE of 140 to the volt, 300 mV (common practice, no source). PAL
 * switches the sign of R−Y from line to line (ITU-R BT.1700 Part B). */
static void
test_words (void)
{
  static const struct
  {
    const char *system;
    const char *burst;
    gboolean mirrored;
  } cases[] = {
    { "pal-m", "286 mV", TRUE },     { "pal-60", "300 mV", TRUE }, { "ntsc-4.43", "286 mV", FALSE },
    { "ntsc-m", NULL, FALSE },       { "pal-b", NULL, TRUE },      { "secam-l", NULL, FALSE },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Run) run = run_cli ("levels", "--system", cases[i].system, "-k", "composite",
                                     NULL);
      const char *usual = strstr (run->out, "common practice");
      g_assert_cmpint (run->status, ==, 0);
      g_assert_cmpint (usual != NULL, ==, cases[i].burst != NULL);
      if (cases[i].burst != NULL)
        g_assert_nonnull (strstr (usual, cases[i].burst));
      g_assert_cmpint (strstr (run->out, "360°") != NULL, ==, cases[i].mirrored);
      g_autoptr (JsonObject) root = levels_of (cases[i].system, "composite", "75");
      if (cases[i].burst != NULL)
        g_assert_true (is_null (root, "burst_pp_v"));
    }
}

static void
test_text (void)
{
  g_autoptr (Run) run
      = run_cli ("levels", "--system", "ntsc-m", "--kind", "composite", "--bars", "75", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "714.3 mV"));
  g_assert_nonnull (strstr (run->out, "167.1 "));
}

/* 220 µF around 150 Ω: 1/(2π R C) = 4.823 Hz (arithmetic). PAL, 0.7 V over 0.3 V: coupling_check.py beside
 * tests/core/circuit/test_coupling.c simulates whole frames, and has a white field tilt by 3.745 % and its line by
 * 0.0449 %. */
static void
test_capacitor (void)
{
  g_autoptr (Run) run = run_cli ("levels", "--system", "pal-b", "--kind", "composite", "--capacitor",
                                 "220uF", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *tilts = json_object_get_array_member (root, "tilts");
  JsonObject *white = json_array_get_object_element (tilts, 0);

  g_assert_true (is_near (figure_of (root, "loop_ohm"), 150, 1e-9));
  g_assert_true (is_near (figure_of (root, "corner_hz"), 4.823, 5e-4));
  g_assert_cmpstr (json_object_get_string_member (white, "picture"), ==, "white-field");
  g_assert_true (is_near (figure_of (white, "field_tilt"), 0.03745, 2e-4));
  g_assert_true (is_near (figure_of (white, "line_tilt"), 0.000449, 5e-6));

  g_autoptr (Run) high = run_cli ("levels", "--system", "pal-b", "--kind", "rgb", "--capacitor",
                                  "100nF", "--loop", "1Mohm", "--json", NULL);
  g_autoptr (JsonObject) other = run_json (high);
  g_assert_true (is_near (figure_of (other, "corner_hz"), 1.5915, 5e-4)); /* 1/(2π × 0.1 s) */
}

static void
test_capacitor_refused (void)
{
  g_autoptr (Run) alone = run_cli ("levels", "--system", "pal-b", "--kind", "rgb", "--loop",
                                   "150ohm", NULL);
  g_autoptr (Run) huge = run_cli ("levels", "--system", "pal-b", "--kind", "rgb", "--capacitor",
                                  "2F", NULL);
  g_autoptr (Run) other = run_cli ("levels", "--system", "pal-b", "--kind", "rgb", "--capacitor",
                                   "2ohm", NULL);
  assert_refused (alone, 2, "--capacitor");
  assert_refused (huge, 1, "--capacitor");
  assert_refused (other, 1, "--capacitor");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/levels/keys", test_keys);
  g_test_add_func ("/levels/ntsc", test_ntsc);
  g_test_add_func ("/levels/ntsc-yellow", test_ntsc_yellow);
  g_test_add_func ("/levels/ebu", test_ebu);
  g_test_add_func ("/levels/pal", test_pal);
  g_test_add_func ("/levels/component", test_component);
  g_test_add_func ("/levels/rgb", test_rgb);
  g_test_add_func ("/levels/secam", test_secam);
  g_test_add_func ("/levels/refused", test_refused);
  g_test_add_func ("/levels/conductors-of-bars", test_conductors_of_bars);
  g_test_add_func ("/levels/yc-apart", test_yc_apart);
  g_test_add_func ("/levels/words", test_words);
  g_test_add_func ("/levels/text", test_text);
  g_test_add_func ("/levels/capacitor", test_capacitor);
  g_test_add_func ("/levels/capacitor-refused", test_capacitor_refused);
  return g_test_run ();
}
