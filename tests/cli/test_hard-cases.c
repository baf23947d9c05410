/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rasters of which the careless answer is wrong. Each case says what the standard has, and what
 * one gets without care. */
#include <string.h>

#include "run.h"

#define HERTZ 1e-6 /* the tables print six decimals */
#define SECONDS 1e-12

static void
expect (JsonObject *timing, const char *key, double wanted, double tolerance)
{
  double found = figure_of (timing, key);
  if (!is_near (found, wanted, tolerance))
    g_error ("%s is %.17g, wanted %.17g", key, found, wanted);
}

static void
expect_word (JsonObject *timing, const char *key, const char *wanted)
{
  g_assert_cmpstr (json_object_get_string_member (timing, key), ==, wanted);
}

static void
expect_line (JsonObject *timing, int front_porch, int sync, int back_porch, int total)
{
  expect (timing, "h_front_porch", front_porch, 0);
  expect (timing, "h_sync", sync, 0);
  expect (timing, "h_back_porch", back_porch, 0);
  expect (timing, "h_total", total, 0);
}

static void
expect_field (JsonObject *timing, double front_porch, double sync, double back_porch,
              double lines_per_frame)
{
  expect (timing, "v_front_porch", front_porch, 0);
  expect (timing, "v_sync", sync, 0);
  expect (timing, "v_back_porch", back_porch, 0);
  expect (timing, "lines_per_frame", lines_per_frame, 0);
}

static double
clocks (JsonObject *timing, double time_s)
{
  return time_s * figure_of (timing, "pixel_clock_hz");
}

/* 1. CTA-861-H table 1: the printed 25.175 MHz is not 25.2 MHz/1.001. */
static void
test_vic_1 (void)
{
  g_autoptr (JsonObject) printed = timing_of ("cta-861-vic-1");
  g_autoptr (JsonObject) exact = timing_of ("cta-861-vic-1-59.94");
  g_autoptr (JsonObject) sixty = timing_of ("cta-861-vic-1-60");

  expect (printed, "line_rate_hz", 31468.75, HERTZ);
  expect (printed, "field_rate_hz", 59.940476, HERTZ);
  expect (exact, "pixel_clock_hz", 25174825.174825, HERTZ);
  expect (exact, "line_rate_hz", 31468.531469, HERTZ);
  expect (exact, "field_rate_hz", 59.940060, HERTZ);
  expect (sixty, "pixel_clock_hz", 25.2e6, 0);
  expect (sixty, "field_rate_hz", 60, 0);
}

/* 2. VESA DMT 0x04 and 0x05 have borders of 8: porches and sync alone give 784 x 509. */
static void
test_borders (void)
{
  g_autoptr (JsonObject) four = timing_of ("vesa-dmt-04");
  g_autoptr (JsonObject) five = timing_of ("vesa-dmt-05");

  expect_line (four, 8, 96, 40, 800);
  expect_field (four, 2, 2, 25, 525);
  expect (four, "h_border", 8, 0);
  expect (four, "v_border", 8, 0);
  expect_line (five, 16, 40, 120, 832);
  expect_field (five, 1, 3, 20, 520);
  expect (five, "field_rate_hz", 72.808802, HERTZ);
}

/* 3. VESA DMT 0x4B and 0x43: 1525 and 1474 lines, where one public table has 1523 and 1473. */
static void
test_dmt_4b_and_43 (void)
{
  g_autoptr (JsonObject) wide = timing_of ("vesa-dmt-4b");
  g_autoptr (JsonObject) other = timing_of ("vesa-dmt-43");

  expect (wide, "pixel_clock_hz", 380.5e6, 0);
  expect (wide, "h_total", 2080, 0);
  expect_field (wide, 3, 4, 78, 1525);
  expect (wide, "field_rate_hz", 119.955864, HERTZ);
  expect (other, "h_total", 2016, 0);
  expect_field (other, 3, 4, 75, 1474);
  expect (other, "field_rate_hz", 119.969686, HERTZ);
}

/* 4. VESA DMT 0x28: field sync of 5 lines at 1360 pixels, not 10, and not 1366 pixels. */
static void
test_dmt_28 (void)
{
  g_autoptr (JsonObject) timing = timing_of ("vesa-dmt-28");
  expect (timing, "pixel_clock_hz", 148.25e6, 0);
  expect (timing, "h_active", 1360, 0);
  expect (timing, "h_total", 1520, 0);
  expect_field (timing, 3, 5, 37, 813);
}

/* 11. CTA-861-H VIC 39: 1250 lines, an even number: two fields of 625 lines, no half line. */
static void
test_vic_39 (void)
{
  g_autoptr (JsonObject) timing = timing_of ("cta-861-vic-39");
  expect (timing, "pixel_clock_hz", 72e6, 0);
  expect (timing, "h_total", 2304, 0);
  expect_field (timing, 23, 5, 57, 1250);
  expect (timing, "v_front_porch_field_2", 23, 0);
  expect (timing, "v_back_porch_field_2", 57, 0);
  expect (timing, "lines_per_field", 625, 0);
  expect (timing, "line_rate_hz", 31250, 0);
  expect (timing, "field_rate_hz", 50, 0);
  expect_word (timing, "h_sync_polarity", "positive");
  expect_word (timing, "v_sync_polarity", "negative");
}

/* 12. CTA-861-H VIC 8 and 23: whole lines, several totals, and only the front porch changes. A
 * progressive raster is not half of an interlaced one. */
static void
test_line_totals (void)
{
  static const struct
  {
    const char *id;
    int lines;
    double field_rate_hz;
  } totals[] = {
    { "cta-861-vic-8", 262, 60.054449 },         { "cta-861-vic-8-263", 263, 59.826105 },
    { "cta-861-vic-23", 312, 50.080128 },        { "cta-861-vic-23-313", 313, 49.920128 },
    { "cta-861-vic-23-314", 314, 49.761146 },    { "262-60.05-progressive", 262, 60.054449 },
    { "263-59.83-progressive", 263, 59.826105 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (totals); i++)
    {
      g_autoptr (JsonObject) timing = timing_of (totals[i].id);
      double active = totals[i].lines < 300 ? 240 : 288;
      double back_porch = totals[i].lines < 300 ? 15 : 19;
      expect (timing, "lines_per_frame", totals[i].lines, 0);
      expect (timing, "lines_per_field", totals[i].lines, 0);
      expect (timing, "field_rate_hz", totals[i].field_rate_hz, HERTZ);
      expect (timing, "v_active", active, 0);
      expect (timing, "v_sync", 3, 0);
      expect (timing, "v_back_porch", back_porch, 0);
    }
}

/* 13. At 13.5 MHz CTA-861-H has 19/62/57 around 720 samples of 525 lines, ITU-R BT.601 has 16
 * samples to the datum and 122 after: 138 both, 3 clocks apart. The 625-line figures agree. And 720
 * samples are wider than the analogue picture of SMPTE 170M-2004, line less 10.7 us. */
static void
test_sample_positions (void)
{
  g_autoptr (JsonObject) vic_6 = timing_of ("cta-861-vic-6");
  g_autoptr (JsonObject) vic_21 = timing_of ("cta-861-vic-21");
  g_autoptr (JsonObject) analogue = timing_of ("525-59.94-interlaced");
  double repeat = figure_of (vic_6, "pixel_repeat");
  double sample_s = repeat / figure_of (vic_6, "pixel_clock_hz");

  g_assert_true (is_near (sample_s, 1 / 13.5e6, 1e-18));
  expect (vic_6, "h_front_porch", 19 * repeat, 0);
  expect (vic_6, "h_sync", 62 * repeat, 0);
  expect (vic_6, "h_back_porch", 57 * repeat, 0);
  expect (vic_6, "h_blanking_s", (16 + 122) * sample_s, SECONDS);
  expect (vic_6, "h_front_porch_s", (16 + 3) * sample_s, SECONDS);
  expect (vic_21, "h_front_porch", 12 * repeat, 0);
  g_assert_true (
      is_near (figure_of (vic_21, "h_sync") + figure_of (vic_21, "h_back_porch"), 132 * repeat, 0));
  expect (vic_6, "h_active_s", 720 / 13.5e6, SECONDS);
  expect (analogue, "h_active_s", 286 / 4.5e6 - 10.7e-6, SECONDS);
  g_assert_cmpfloat (figure_of (vic_6, "h_active_s"), >, figure_of (analogue, "h_active_s"));
}

/* 15. Tri-level sync: the datum is the crossing between the halves, so that the negative half takes
 * the end of the digital front porch and the positive half is the digital sync. Counts from
 * CTA-861-H; the halves of 44 and 40 clocks from secondary sources. */
static void
check_tri_level (const char *id, int front_porch, int half, int datum_to_active, double porch_us)
{
  g_autoptr (JsonObject) timing = timing_of (id);
  double after_s = figure_of (timing, "h_sync_s") + figure_of (timing, "h_back_porch_s")
                   - figure_of (timing, "h_datum_s");

  expect_word (timing, "sync_shape", "tri-level");
  expect (timing, "h_front_porch", front_porch, 0);
  expect (timing, "h_sync", 2 * half, 0);
  g_assert_true (is_near (clocks (timing, figure_of (timing, "h_datum_s")), half, 1e-9));
  g_assert_true (is_near (clocks (timing, after_s), datum_to_active, 1e-9));
  expect (timing, "h_front_porch_s", porch_us * 1e-6, 0.5e-9);
}

static void
test_tri_level (void)
{
  check_tri_level ("1125-60-interlaced", 44, 44, 192, 0.593);
  check_tri_level ("1125-59.94-interlaced", 44, 44, 192, 0.593);
  check_tri_level ("750-60-progressive", 70, 40, 260, 0.943);
}

/* Bi-level sync: the datum is the leading edge (SMPTE 170M-2004, ITU-R BT.470-6). */
static void
test_bi_level (void)
{
  g_autoptr (JsonObject) timing = timing_of ("625-50-interlaced");
  expect_word (timing, "sync_shape", "bi-level");
  expect (timing, "h_datum_s", 0, 0);
}

/* CTA-861-H VIC 5 at 59.94 Hz: 74.25 MHz/1.001 is no whole number of hertz, and not 74.176 MHz. */
static void
test_vic_5_at_1001 (void)
{
  g_autoptr (JsonObject) timing = timing_of ("cta-861-vic-5-59.94");
  expect (timing, "pixel_clock_hz", 74175824.175824, HERTZ);
  expect (timing, "line_rate_hz", 33716.283716, HERTZ);
  expect (timing, "v_front_porch_field_2", 2.5, 0);
  expect (timing, "v_back_porch_field_2", 15.5, 0);
  expect (timing, "lines_per_field", 562.5, 0);
}

/* VESA DMT 0x0F: a front porch of no line at all is legal. */
static void
test_no_front_porch (void)
{
  g_autoptr (JsonObject) timing = timing_of ("vesa-dmt-0f");
  expect_field (timing, 0, 4, 20, 817);
  expect (timing, "v_front_porch_field_2", 0.5, 0);
  expect (timing, "field_rate_hz", 86.957532, HERTZ);
}

/* ITU-R BT.470-6 counts lines from the start of field sync: the picture runs from the middle of
 * line 23 to the middle of line 623. */
static void
test_625_picture (void)
{
  g_autoptr (JsonObject) timing = timing_of ("625-50-interlaced");
  double before = figure_of (timing, "v_sync") + figure_of (timing, "v_back_porch");
  double after = figure_of (timing, "lines_per_frame") - figure_of (timing, "v_front_porch");
  g_assert_true (is_near (before, 22.5, 0));
  g_assert_true (is_near (after, 622.5, 0));
}

/* Pulses around field sync: ITU-R BT.470-6 table 1-2 (625), SMPTE 170M-2004 table 3 (525). */
static void
check_pulses (const char *id, int count, double equalising_us, double broad_us, double rounding_us)
{
  g_autoptr (JsonObject) timing = timing_of (id);
  double broad_s = figure_of (timing, "line_period_s") / 2
                   - figure_of (timing, "serration_width_s");
  expect (timing, "equalising_before", count, 0);
  expect (timing, "equalising_after", count, 0);
  expect (timing, "equalising_width_s", equalising_us * 1e-6, SECONDS);
  expect (timing, "serration_width_s", 4.7e-6, SECONDS);
  g_assert_true (is_near (broad_s * 1e6, broad_us, rounding_us));
}

static void
test_pulses (void)
{
  check_pulses ("625-50-interlaced", 5, 2.35, 27.3, 1e-9);
  check_pulses ("525-59.94-interlaced", 6, 2.3, 27.1, 0.05); /* printed rounded */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hard-cases/1-vic-1-exact-rates", test_vic_1);
  g_test_add_func ("/hard-cases/2-dmt-04-and-05-borders", test_borders);
  g_test_add_func ("/hard-cases/3-dmt-4b-and-43-lines", test_dmt_4b_and_43);
  g_test_add_func ("/hard-cases/4-dmt-28-field-sync", test_dmt_28);
  g_test_add_func ("/hard-cases/11-vic-39-no-half-line", test_vic_39);
  g_test_add_func ("/hard-cases/12-vic-8-and-23-line-totals", test_line_totals);
  g_test_add_func ("/hard-cases/13-sample-positions", test_sample_positions);
  g_test_add_func ("/hard-cases/15-tri-level-datum", test_tri_level);
  g_test_add_func ("/hard-cases/bi-level-datum", test_bi_level);
  g_test_add_func ("/hard-cases/vic-5-at-1000-1001", test_vic_5_at_1001);
  g_test_add_func ("/hard-cases/dmt-0f-no-front-porch", test_no_front_porch);
  g_test_add_func ("/hard-cases/625-line-picture", test_625_picture);
  g_test_add_func ("/hard-cases/pulses-around-field-sync", test_pulses);
  return g_test_run ();
}
