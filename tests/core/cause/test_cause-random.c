/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cause/cause.h"

#include <math.h>

#include "support.h"

static double
any_number (void)
{
  static const double odd[] = { 0, -0.0, NAN, INFINITY, -INFINITY, 0.3, 0.7, 1 };
  switch (g_test_rand_int_range (0, 3))
    {
    case 0:
      return odd[g_test_rand_int_range (0, G_N_ELEMENTS (odd))];
    case 1:
      return ldexp (g_test_rand_double_range (-1, 1), g_test_rand_int_range (-1074, 1024));
    default:
      return g_test_rand_double_range (-2, 2);
    }
}

/* Readings of any size, of any kinds: no crash, and numbers that are numbers. */
static void
test_random (void)
{
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  guint explained = 0;
  for (int i = 0; i < 3000; i++)
    {
      const BwSource *source = sources->pdata[g_test_rand_int_range (0, (gint32) sources->len)];
      BwSyncKind sync = 0;
      while (!(source->syncs & BW_BIT (sync)))
        sync++;
      BwCauseCase c;
      BwScopeReadings readings = { 0 };
      bw_cause_case_of_input (source, NULL, bw_test_raster (source->raster), sync,
                              g_test_rand_int_range (0, BW_N_CONDUCTORS), &c);
      c.capacitor_f = g_test_rand_int_range (0, 2) * 1e-4;
      for (guint kind = 0; kind < BW_N_SCOPE_READINGS; kind++)
        if (g_test_rand_bit ())
          {
            readings.given |= BW_BIT (kind);
            readings.at[kind] = any_number ();
          }
      g_autoptr (GArray) causes = bw_causes (&c, &readings);
      double shares = 0;
      for (guint k = 0; k < causes->len; k++)
        {
          const BwCause *cause = &g_array_index (causes, BwCause, k);
          g_autofree char *says = bw_cause_says (&c, &readings, cause, '.');
          g_assert_true (*says != '\0');
          g_assert_true (isfinite (cause->share) && isfinite (cause->deviation));
          for (guint reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
            g_assert_true (isfinite (cause->predicted[reading].low)
                           && isfinite (cause->predicted[reading].high));
          shares += cause->share;
        }
      if (causes->len > 0)
        g_assert_true (bw_near (shares, 1, 1e-9));
      explained += causes->len > 0;
    }
  g_assert_cmpuint (explained, >, 300);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/cause-random/readings", test_random);
  return g_test_run ();
}
