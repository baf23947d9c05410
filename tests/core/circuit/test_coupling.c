/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A coupling capacitor against a simulation of whole frames with numpy (coupling_check.py). */
#include <math.h>
#include <signal.h>

#include "core/circuit/coupling.h"
#include "core/raster/colour-system.h"
#include "support.h"

/* The composite levels of 100 to 40 (SMPTE 170M-2004), without setup. */
static BwSteadyPicture
picture_of (const char *raster, double white_share)
{
  BwSteadyPicture picture
      = { .white_share = white_share, .white_v = BW_WHITE_10_4_V, .sync_v = -BW_SYNC_10_4_V };
  bw_picture_time (bw_test_raster (raster), &picture.time);
  return picture;
}

/* The law of the high pass: 220 µF and 150 Ω have their corner at 4.82 Hz (arithmetic). */
static void
test_corner (void)
{
  bw_test_near (bw_coupling_corner_hz (150, 220e-6), 4.823, 5e-4);
}

/* A lone bar of one time constant falls to 1/e; the reverse at 2 % in 52 µs: 52 µs / (150 Ω × 0.020203)
 * (arithmetic). */
static void
test_bar (void)
{
  bw_test_near (bw_coupling_farad_of_bar (150 * 220e-6, 150, 1 - exp (-1)), 220e-6, 1e-15);
  bw_test_near (bw_coupling_farad_of_bar (52e-6, 150, 0.02), 17.16e-6, 0.01e-6);
}

/* 525 lines, 220 µF around 150 Ω, so that τ is 33 ms. By hand, with the mean of a line alone and no sync:
 * a white field charges for T1 = 242.5 lines towards 0.832 of white and discharges for T2 = 20; the swing of a
 * charge that repeats is A (1 − e^(−T1/τ)) (1 − e^(−T2/τ)) / (1 − e^(−T/τ)) = 0.832 × 0.3731 × 0.0378 / 0.3968
 * = 2.95 %. Half-white, 121.25 lines against 141.25: 0.832 × 0.2083 × 0.2381 / 0.3968 = 10.4 %; of that, first
 * line to last has one line in 121 less. */
static void
test_white_field (void)
{
  BwSteadyPicture picture = picture_of ("525-59.94-interlaced", 1);
  BwTilt tilt;

  picture.sync_v = 0;
  bw_coupling_tilt (&picture, 150, 220e-6, &tilt);
  bw_test_near (tilt.field, 0.0295, 2e-4);
  picture.white_share = 0.5;
  bw_coupling_tilt (&picture, 150, 220e-6, &tilt);
  bw_test_near (tilt.field, 0.104 * 120 / 121.25, 5e-4);

  /* with sync, and 21 lines of field blanking; coupling_check.py says 3.2445 % of the case
   * 150 220e-6 63.5556e-6 9.2e-6 62.0556e-6 4.7e-6 0 483 6 6 30 483 6 6 30 4.7e-6 0.714286 0 -0.285714 1 */
  picture = picture_of ("525-59.94-interlaced", 1);
  picture.time.back_lines += 1;
  picture.time.picture_lines -= 1;
  bw_coupling_tilt (&picture, 150, 220e-6, &tilt);
  bw_test_near (tilt.field, 0.032445, 1e-4);
}

typedef struct
{
  BwSteadyPicture picture;
  double farad;
} Sent;

#define LOOP_OHM 150

/* In the order that the script reads. Field sync begins where a line begins. */
static void
append_case (GString *text, const BwRaster *raster, const Sent *sent)
{
  const BwSteadyPicture *p = &sent->picture;
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  double left_s = f.h_sync_s + f.h_back_porch_s + f.h_border_s;
  g_string_append_printf (text, "%d %.17g %.17g %.17g %.17g %.17g %d", LOOP_OHM, sent->farad,
                          f.line_period_s, left_s, left_s + f.h_active_s, f.h_sync_s,
                          raster->field[0].front_porch % 2);
  for (guint i = 0; i < 2; i++)
    g_string_append_printf (text, " %d %d %d %d", raster->field[i].active,
                            raster->field[i].front_porch + 2 * raster->v_border,
                            raster->field[i].sync,
                            raster->field[i].back_porch + 2 * raster->v_border);
  g_string_append_printf (text, " %.17g %.17g %.17g %.17g %.17g\n", raster->serration_width_s,
                          p->white_v, p->black_v, p->sync_v, p->white_share);
}

static double
line_period_s (const BwPictureTime *time)
{
  return time->active_s + time->front_s + time->sync_s + time->back_s;
}

static void
add_raster (const char *id, GArray *sent, GString *text)
{
  static const double farads[] = { 10e-6, 100e-6, 220e-6, 1000e-6 };
  static const double shares[] = { 1, 0.5 };

  for (guint i = 0; i < G_N_ELEMENTS (farads); i++)
    for (guint k = 0; k < 2 * G_N_ELEMENTS (shares); k++)
      {
        Sent one = { picture_of (id, shares[k / 2]), farads[i] };
        if (k % 2)
          one.picture.sync_v = 0;
        else
          one.picture.black_v = 0.075 * BW_WHITE_10_4_V;
        g_array_append_val (sent, one);
        append_case (text, bw_test_raster (id), &one);
      }
}

/* The program counts both fields as the first, and half a line as its mean, so that where a field begins
 * with half a line the two may be apart by what a line does; else they agree to 1 %, as the script counts
 * time in steps of 1/1000 of a line and white in half lines. */
static void
test_frames (void)
{
  g_autoptr (GArray) sent = g_array_new (FALSE, FALSE, sizeof (Sent));
  g_autoptr (GString) text = g_string_new (NULL);
  gboolean well = FALSE;

  add_raster ("525-59.94-interlaced", sent, text);
  add_raster ("625-50-interlaced", sent, text);
  add_raster ("vesa-dmt-04", sent, text);
  g_autofree char *out = bw_test_python ("circuit/coupling_check.py", WORDS (NULL), text->str, &well);
  g_assert_true (well);
  g_auto (GStrv) lines = g_strsplit (g_strchomp (out), "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, sent->len);
  for (guint i = 0; i < sent->len; i++)
    {
      const Sent *one = &g_array_index (sent, Sent, i);
      BwTilt tilt;
      char *at;
      double field = g_ascii_strtod (lines[i], &at), line = g_ascii_strtod (at, NULL);
      bw_coupling_tilt (&one->picture, LOOP_OHM, one->farad, &tilt);
      g_test_message ("%g F: field %.5f, by the script %.5f; line %.6f, %.6f", one->farad, tilt.field,
                      field, tilt.line, line);
      double apart = 0.01 + line_period_s (&one->picture.time) / (LOOP_OHM * one->farad);
      bw_test_near (tilt.field, field, apart * field);
      bw_test_near (tilt.line, line, apart * line);
    }
}

/* From a tilt back to the capacitor that gives it, and none that cannot be: a white field is white for
 * 0.832 of a line, and no more than that, with its sync 0.88, can be lost. */
static void
test_reverse (void)
{
  static const double farads[] = { 22e-6, 220e-6, 2200e-6 };

  for (guint i = 0; i < G_N_ELEMENTS (farads); i++)
    for (guint half = 0; half < 2; half++)
      {
        BwSteadyPicture picture = picture_of ("625-50-interlaced", half ? 0.5 : 1);
        BwTilt tilt;
        bw_coupling_tilt (&picture, 75, farads[i], &tilt);
        bw_test_near (bw_coupling_farad_of_field_tilt (&picture, 75, tilt.field), farads[i],
                      1e-8 * farads[i]);
        if (!half) /* of a half-white field two capacitors can tilt the middle line alike */
          bw_test_near (bw_coupling_farad_of_line_tilt (&picture, 75, tilt.line), farads[i],
                        1e-8 * farads[i]);
        g_assert_cmpfloat (bw_coupling_farad_of_field_tilt (&picture, 75, 0.95), ==, 0);
        g_assert_cmpfloat (bw_coupling_farad_of_field_tilt (&picture, 75, 0), ==, 0);
      }
}

/* Without a picture, or with no white in it, there is no tilt. */
/* A capacitor is linear: a picture upside down and three times as high tilts by the same share. */
static void
test_linear (void)
{
  BwSteadyPicture picture = picture_of ("625-50-interlaced", 0.7), down = picture;
  BwTilt tilt, turned;

  down.white_v *= -3;
  down.sync_v *= -3;
  bw_coupling_tilt (&picture, 150, 47e-6, &tilt);
  bw_coupling_tilt (&down, 150, 47e-6, &turned);
  g_assert_cmpfloat (tilt.field, >, 0.01);
  bw_test_near (turned.field, tilt.field, 1e-12);
  bw_test_near (turned.line, tilt.line, 1e-12);
}

static void
test_nothing (void)
{
  BwSteadyPicture picture = picture_of ("525-59.94-interlaced", 1);
  BwTilt tilt;

  picture.white_v = 0;
  bw_coupling_tilt (&picture, 150, 220e-6, &tilt);
  g_assert_cmpfloat (tilt.field, ==, 0);
  g_assert_cmpfloat (tilt.line, ==, 0);
  g_assert_cmpfloat (bw_coupling_farad_of_field_tilt (&picture, 150, 0.1), ==, 0);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  signal (SIGPIPE, SIG_IGN); /* a script that ends early fails the test, and says why */
  g_test_add_func ("/coupling/corner", test_corner);
  g_test_add_func ("/coupling/bar", test_bar);
  g_test_add_func ("/coupling/white-field", test_white_field);
  g_test_add_func ("/coupling/frames", test_frames);
  g_test_add_func ("/coupling/reverse", test_reverse);
  g_test_add_func ("/coupling/linear", test_linear);
  g_test_add_func ("/coupling/nothing", test_nothing);
  return g_test_run ();
}
