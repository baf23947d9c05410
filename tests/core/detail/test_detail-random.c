/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold for any tube, path and source. */
#include "core/detail/detail.h"

#include <math.h>

#include "support.h"

#define N_ROUNDS 3000

/* Zero, which stands for "not known", in one of four. */
static double
known_or_not (double low, double high)
{
  double share = g_test_rand_double ();
  return g_test_rand_int_range (0, 4) == 0 ? 0 : low * pow (high / low, share);
}

/* The ranges of a bench sheet's fields, at their very ends too. */
static void
make_up (BwDetailCase *what)
{
  static const BwRatio aspects[] = { { 4, 3 }, { 16, 9 }, { 5, 4 }, { 3, 4 }, { 1000, 1 } };
  bw_detail_case_init (what);
  what->diagonal_m = known_or_not (0.02, 1.5);
  what->aspect = aspects[g_test_rand_int_range (0, G_N_ELEMENTS (aspects))];
  what->mask = (guint) g_test_rand_int_range (0, BW_N_MASKS);
  what->pitch_m = known_or_not (0.05e-3, 5e-3);
  what->spot_m = known_or_not (0.01e-3, 10e-3);
  what->bandwidth_hz = known_or_not (100e3, 1e9);
  what->active_s = known_or_not (0.5e-6, 1e-3);
  what->active_lines = floor (known_or_not (1, 10000));
  what->samples = (int) known_or_not (1, 20000);
  what->interlaced = g_test_rand_bit ();
  what->signal = (guint) g_test_rand_int_range (0, BW_N_SIGNALS);
  what->system = (guint) g_test_rand_int_range (0, BW_N_SYSTEMS);
  what->filter = (guint) g_test_rand_int_range (0, BW_N_LUMA_FILTERS);
  what->detail_hz = known_or_not (100e3, 1e9);
  what->lead_hz = known_or_not (100e3, 1e9);
  what->overscan_h = g_test_rand_double_range (0, 0.3);
  what->overscan_v = g_test_rand_double_range (0, 0.3);
  what->kell = g_test_rand_double_range (0, 1);
  what->interlace = g_test_rand_double_range (0, 1);
  what->claimed_lines = known_or_not (1, 5000);
}

static gboolean
all_finite (const BwDetail *detail)
{
  const double single[] = {
    detail->width_m,
    detail->height_m,
    detail->pitch_h_m,
    detail->stripes_across,
    detail->mask_tvl,
    detail->mask_practical_tvl,
    detail->bandwidth_tvl,
    detail->source_tvl,
    detail->signal_tvl,
    detail->lead_tvl,
    detail->spot_tvl,
    detail->combined_tvl,
    detail->seen_lines,
    detail->vertical_lines,
    detail->line_pitch_m,
    detail->line_width_ratio,
    detail->moire_samples_mask_m,
    detail->moire_lines_mask_m,
    detail->arc_minute_m,
    detail->pitch_for_claim_m,
    detail->spot_for_claim_m,
    detail->bandwidth_for_claim_hz,
  };
  gboolean finite = detail->line_modulation >= -1 && detail->line_modulation <= 1;
  for (gsize i = 0; i < G_N_ELEMENTS (single); i++)
    finite &= isfinite (single[i]) && single[i] >= 0;
  for (guint i = 0; i < BW_N_MODULATIONS; i++)
    finite &= isfinite (detail->mtf_tvl[i]) && detail->mtf_tvl[i] >= 0;
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      finite &= isfinite (detail->limit_tvl[link]) && detail->limit_tvl[link] >= 0;
      finite &= detail->loss[link] >= 0 && detail->loss[link] <= 1;
      for (guint i = 0; i < BW_N_MODULATIONS; i++)
        finite &= isfinite (detail->level_tvl[link][i]) && detail->level_tvl[link][i] >= 0;
    }
  return finite;
}

static void
test_finite (void)
{
  for (int i = 0; i < N_ROUNDS && !g_test_failed (); i++)
    {
      BwDetailCase what;
      BwDetail detail;
      make_up (&what);
      bw_detail_compute (&what, &detail);
      g_autofree char *claim_says = bw_claim_says (&what, &detail, ',');
      g_autofree char *says = bw_detail_says (&detail, ',');
      g_assert_true (all_finite (&detail));
      g_assert_cmpuint (detail.claim, <, BW_N_CLAIMS);
      g_assert_true ((detail.claim == BW_CLAIM_NONE) == !(what.claimed_lines > 0));
      g_assert_true (g_utf8_validate (claim_says, -1, NULL) && g_utf8_validate (says, -1, NULL));
    }
}

/* The whole is not more than any part; the losses are all of the loss. */
static void
test_whole_and_parts (void)
{
  for (int i = 0; i < N_ROUNDS && !g_test_failed (); i++)
    {
      BwDetailCase what;
      BwDetail detail;
      double loss = 0;
      guint n = 0;
      make_up (&what);
      bw_detail_compute (&what, &detail);
      for (guint link = 0; link < BW_N_LINKS; link++)
        if (detail.limit_tvl[link] > 0)
          {
            n++;
            loss += detail.loss[link];
            g_assert_cmpfloat (detail.combined_tvl, <=, detail.limit_tvl[link] * (1 + 1e-12));
            g_assert_cmpfloat (detail.loss[detail.limited_by], >=, detail.loss[link]);
            for (guint k = 0; k < BW_N_MODULATIONS; k++)
              g_assert_cmpfloat (detail.mtf_tvl[k], <=, detail.level_tvl[link][k] * (1 + 1e-9));
          }
      g_assert_true ((n > 0) == (detail.combined_tvl > 0));
      if (n > 0)
        g_assert_cmpfloat_with_epsilon (loss, 1, 1e-9);
      g_assert_true ((n > 0) == (detail.limited_by < BW_N_LINKS));
    }
}

/* Where the product is said to fall to a level, it has it; and more is left before. */
static void
test_levels (void)
{
  for (int i = 0; i < N_ROUNDS && !g_test_failed (); i++)
    {
      BwDetailCase what;
      BwDetail detail;
      make_up (&what);
      bw_detail_compute (&what, &detail);
      for (guint k = 0; k < BW_N_MODULATIONS && detail.combined_tvl > 0; k++)
        {
          double tvl = detail.mtf_tvl[k];
          g_assert_cmpfloat_with_epsilon (bw_detail_mtf (&what, tvl), bw_modulations[k], 1e-6);
          g_assert_cmpfloat (bw_detail_mtf (&what, tvl * g_test_rand_double ()), >=,
                             bw_modulations[k] - 1e-9);
        }
    }
}

/* MTF lies between 0 and 1 and, but for what comes back above a trap, never rises. */
static void
test_mtf_falls (void)
{
  for (int i = 0; i < N_ROUNDS && !g_test_failed (); i++)
    {
      BwDetailCase what;
      double before[BW_N_LINKS];
      make_up (&what);
      gboolean trap = what.signal == BW_SIGNAL_COMPOSITE && what.filter == BW_LUMA_TRAP;
      for (guint link = 0; link < BW_N_LINKS; link++)
        before[link] = 1;
      for (double tvl = 0; tvl < 1e5; tvl = tvl * 1.3 + 1)
        for (guint link = 0; link < BW_N_LINKS; link++)
          {
            double mtf = bw_detail_link_mtf (&what, link, tvl);
            g_assert_true (mtf >= 0 && mtf <= 1);
            if (link != BW_LINK_SIGNAL || !trap)
              g_assert_cmpfloat (mtf, <=, before[link]);
            before[link] = mtf;
          }
    }
}

/* Makes one figure better by @factor; %FALSE if it is not known. */
static gboolean
improve (BwDetailCase *what, int which, double factor)
{
  double *coarse[] = { &what->pitch_m, &what->spot_m };
  double *wide[] = { &what->bandwidth_hz, &what->detail_hz, &what->lead_hz };
  if (which < 2)
    {
      *coarse[which] /= factor;
      return *coarse[which] > 0;
    }
  *wide[which - 2] *= factor;
  return *wide[which - 2] > 0;
}

/* A finer pitch, a smaller spot, a wider band, source or lead never makes the whole worse. */
static void
test_better_is_not_worse (void)
{
  for (int i = 0; i < N_ROUNDS && !g_test_failed (); i++)
    {
      BwDetailCase what;
      BwDetail before, after;
      make_up (&what);
      bw_detail_compute (&what, &before);
      if (!improve (&what, g_test_rand_int_range (0, 5), g_test_rand_double_range (1, 4)))
        continue;
      bw_detail_compute (&what, &after);
      g_assert_cmpfloat (after.combined_tvl, >=, before.combined_tvl * (1 - 1e-12));
      for (guint k = 0; k < BW_N_MODULATIONS; k++)
        g_assert_cmpfloat (after.mtf_tvl[k], >=, before.mtf_tvl[k] * (1 - 1e-9));
      if (before.claim == BW_CLAIM_SUPPORTED)
        g_assert_cmpuint (after.claim, ==, BW_CLAIM_SUPPORTED);
    }
}

/* The narrower the lines, the more they show; a flat field never goes dark below nothing. */
static void
test_lines_fall (void)
{
  double before = 1;
  for (double ratio = 1e-4; ratio < 1e3; ratio *= 1.02)
    {
      double modulation = bw_line_modulation (ratio);
      double brightness = bw_line_brightness (ratio, g_test_rand_double_range (-1e3, 1e3));
      g_assert_true (modulation >= 0 && modulation <= before);
      g_assert_true (isfinite (brightness) && brightness >= 0);
      before = modulation;
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/detail-random/finite", test_finite);
  g_test_add_func ("/detail-random/whole-and-parts", test_whole_and_parts);
  g_test_add_func ("/detail-random/levels", test_levels);
  g_test_add_func ("/detail-random/mtf-falls", test_mtf_falls);
  g_test_add_func ("/detail-random/better-is-not-worse", test_better_is_not_worse);
  g_test_add_func ("/detail-random/lines-fall", test_lines_fall);
  return g_test_run ();
}
