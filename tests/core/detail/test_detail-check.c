/* SPDX-License-Identifier: GPL-3.0-or-later */
/* MTF, combination and line structure by another hand: detail_check.py, with numpy (Debian package
 * python3-numpy). If it is not there the tests fail. */
#include "core/detail/detail.h"

#include <string.h>

#include "support.h"

#define INCH 0.0254
#define ACTIVE_S170_S (286 / 4.5e6 - 10.7e-6) /* SMPTE 170M-2004: blanking 1.5 + 9.2 us */

static void
put (GString *to, const char *key, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_string_append_printf (to, " %s=%s", key, g_ascii_dtostr (text, sizeof text, value));
}

static void
put_kind (GString *to, const char *key, const BwKindTable *table, guint kind)
{
  g_string_append_printf (to, " %s=%s", key, bw_kind_id (table, kind));
}

static void
put_case (GString *to, const BwDetailCase *what)
{
  put (to, "diagonal_m", what->diagonal_m);
  put (to, "aspect", (double) what->aspect.num / (double) what->aspect.den);
  put_kind (to, "mask", &bw_masks, what->mask);
  put (to, "pitch_m", what->pitch_m);
  put (to, "spot_m", what->spot_m);
  put (to, "bandwidth_hz", what->bandwidth_hz);
  put (to, "active_s", what->active_s);
  put (to, "active_lines", what->active_lines);
  put (to, "samples", what->samples);
  put_kind (to, "signal", &bw_signals, what->signal);
  put_kind (to, "system", &bw_colour_systems, what->system);
  put_kind (to, "filter", &bw_luma_filters, what->filter);
  put (to, "detail_hz", what->detail_hz);
  put (to, "lead_hz", what->lead_hz);
  put (to, "overscan_h", what->overscan_h);
  put (to, "overscan_v", what->overscan_v);
}

/* The MTF of each link and of all, at a few places below and above the limits. */
static void
put_curve (GString *to, const BwDetailCase *what)
{
  static const double places[] = { 40, 150, 230, 275, 330, 470, 640, 900, 1500 };
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      for (guint link = 0; link < BW_N_LINKS; link++)
        {
          g_autofree char *key = g_strdup_printf ("mtf:%s:%g", bw_kind_id (&bw_detail_links, link),
                                                  places[i]);
          put (to, key, bw_detail_link_mtf (what, link, places[i]));
        }
      g_autofree char *key = g_strdup_printf ("mtf:all:%g", places[i]);
      put (to, key, bw_detail_mtf (what, places[i]));
    }
}

static void
put_result (GString *to, const BwDetailCase *what)
{
  BwDetail detail;
  bw_detail_compute (what, &detail);
  put (to, "combined_tvl", detail.combined_tvl);
  put (to, "level_tvl:0.03", detail.mtf_tvl[0]);
  put (to, "level_tvl:0.1", detail.mtf_tvl[1]);
  put (to, "level_tvl:0.5", detail.mtf_tvl[2]);
  put (to, "line_modulation", detail.line_modulation);
  put_curve (to, what);
  g_string_append_c (to, '\n');
}

/* Whether detail_check.py agrees with @cases; what it prints is in @says. */
static gboolean
agrees (const char *cases, char **says)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "cases", NULL);
  gboolean well = FALSE;

  g_assert_true (g_file_set_contents (path, cases, -1, NULL));
  *says = bw_test_python ("detail/detail_check.py", WORDS (path), NULL, &well);
  bw_test_folder_remove (folder);
  return well;
}

#define N_CHOICES 4

static double
one_of (const double values[N_CHOICES])
{
  return values[g_test_rand_int_range (0, N_CHOICES)];
}

#define ONE_OF(a, b, c, d) one_of ((const double[N_CHOICES]){ a, b, c, d })

static void
make_up (BwDetailCase *what)
{
  bw_detail_case_init (what);
  what->diagonal_m = g_test_rand_double_range (8, 36) * INCH;
  what->aspect = g_test_rand_bit () ? (BwRatio){ 4, 3 } : (BwRatio){ 16, 9 };
  what->mask = (guint) g_test_rand_int_range (0, BW_N_MASKS);
  what->pitch_m = ONE_OF (0, 0.25e-3, 0.4e-3, 0.8e-3);
  what->spot_m = ONE_OF (0, 0.3e-3, 0.6e-3, 1.2e-3);
  what->bandwidth_hz = ONE_OF (0, 4e6, 8e6, 30e6);
  what->active_s = ONE_OF (ACTIVE_S170_S, 52e-6, 52e-6, 25.4e-6);
  what->active_lines = ONE_OF (240, 480, 485, 576);
  what->samples = (int) ONE_OF (0, 320, 720, 1280);
  what->interlaced = g_test_rand_bit ();
  what->signal = (guint) g_test_rand_int_range (0, BW_N_SIGNALS);
  what->system = (guint) g_test_rand_int_range (0, BW_N_SYSTEMS);
  what->filter = (guint) g_test_rand_int_range (0, BW_N_LUMA_FILTERS);
  what->detail_hz = ONE_OF (0, 0, 0, 3.5e6);
  what->lead_hz = ONE_OF (0, 0, 8e6, 60e6);
  what->overscan_h = ONE_OF (0, 0, 0.05, 0.08);
  what->overscan_v = ONE_OF (0, 0, 0.05, 0.08);
}

#define N_MADE_UP 60

static void
test_agrees (void)
{
  g_autoptr (GString) cases = g_string_new (NULL);
  for (int i = 0; i < N_MADE_UP; i++)
    {
      BwDetailCase what;
      make_up (&what);
      put_case (cases, &what);
      put_result (cases, &what);
    }
  g_autofree char *says = NULL;
  gboolean same = agrees (cases->str, &says);
  if (!same)
    g_test_message ("%s", says);
  g_assert_true (same);
  g_autofree char *all = g_strdup_printf ("%d cases agree", N_MADE_UP);
  bw_test_assert_words (says, WORDS (all));
}

/* The other hand would see a figure that is off by a thousandth. */
static void
test_would_differ (void)
{
  static const char *const keys[] = { " combined_tvl=", " level_tvl:0.1=", " line_modulation=",
                                      " mtf:mask:330=", " mtf:spot:330=",  " mtf:all:150=" };
  BwDetailCase what;
  bw_detail_case_init (&what);
  what.diagonal_m = 20 * INCH;
  what.active_s = ACTIVE_S170_S;
  what.active_lines = 485;
  what.mask = BW_MASK_DOT;
  what.pitch_m = 0.4e-3;
  what.spot_m = 0.5e-3;
  what.bandwidth_hz = 8e6;
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_autoptr (GString) cases = g_string_new (NULL);
      g_autofree char *says = NULL;
      put_case (cases, &what);
      put_result (cases, &what);
      const char *at = strstr (cases->str, keys[i]);
      g_assert_nonnull (at);
      gsize place = (gsize) (at - cases->str) + strlen (keys[i]);
      double value = g_ascii_strtod (cases->str + place, NULL);
      gsize end = place + strcspn (cases->str + place, " \n");
      char text[G_ASCII_DTOSTR_BUF_SIZE];
      g_string_erase (cases, (gssize) place, (gssize) (end - place));
      g_string_insert (cases, (gssize) place, g_ascii_dtostr (text, sizeof text, value * 1.001));
      g_assert_false (agrees (cases->str, &says));
      g_autofree char *key = g_strndup (keys[i] + 1, strlen (keys[i]) - 2);
      bw_test_assert_words (says, WORDS (key));
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/detail-check/agrees", test_agrees);
  g_test_add_func ("/detail-check/would-differ", test_would_differ);
  return g_test_run ();
}
