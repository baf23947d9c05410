/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "core/bench/catalogue.h"
#include "core/signal/synthesis.h"

/* Frames of test signals: the time to make one against its own duration, and against a plain write
 * of as many floats to memory. The best of many rounds counts, which is the one least disturbed;
 * each round makes another frame of the colour sequence. The first frame of all, for which every
 * line has to be put together, is timed by itself. It prints and judges nothing; the aim is a
 * 525-line colour frame at 4 × subcarrier ten times faster than real time. */

#define ROUNDS 200

static const struct
{
  const char *says;
  const char *raster;
  BwColourSystem system;
  BwSignal signal;
  BwConductor conductor;
  BwContent content;
  gint64 rate_hz; /* zero: the default */
} cases[] = {
  { "NTSC composite, bars, 4 fsc", "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE,
    BW_CONDUCTOR_VIDEO, BW_CONTENT_BARS, 0 },
  { "NTSC composite, bars, 13.5 MHz", "525-59.94-interlaced", BW_SYSTEM_NTSC_M,
    BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_CONTENT_BARS, 13500000 },
  { "PAL composite, bars, 4 fsc", "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE,
    BW_CONDUCTOR_VIDEO, BW_CONTENT_BARS, 0 },
  { "PAL composite, multiburst, 4 fsc", "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE,
    BW_CONDUCTOR_VIDEO, BW_CONTENT_MULTIBURST, 0 },
  { "SECAM composite, bars, 4 f0", "625-50-interlaced", BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE,
    BW_CONDUCTOR_VIDEO, BW_CONTENT_BARS, 0 },
  { "RGB, G with sync, bars, 13.5 MHz", "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB,
    BW_CONDUCTOR_G, BW_CONTENT_BARS, 0 },
};

static double
write_s (float *volts, gsize n)
{
  gint64 best_us = G_MAXINT64;
  for (int round = 0; round < ROUNDS; round++)
    {
      gint64 start_us = g_get_monotonic_time ();
      for (gsize i = 0; i < n; i++)
        volts[i] = (float) round;
      /* the compiler must not leave the writes out */
      __asm__ volatile ("" : : "r"(volts) : "memory");
      best_us = MIN (best_us, g_get_monotonic_time () - start_us);
    }
  return (double) MAX (best_us, 1) / 1e6;
}

static double
first_frame_s (const BwSynthesisCase *what, BwConductor conductor, gsize n, float *volts)
{
  gint64 best_us = G_MAXINT64;
  for (int round = 0; round < 20; round++)
    {
      g_autoptr (BwSynthesis) s = bw_synthesis_new (what, NULL);
      gint64 start_us = g_get_monotonic_time ();
      bw_synthesis_fill (s, conductor, 0, n, volts);
      best_us = MIN (best_us, g_get_monotonic_time () - start_us);
    }
  return (double) best_us / 1e6;
}

static double
best_frame_s (BwSynthesis *s, BwConductor conductor, gsize n, float *volts)
{
  gint64 best_us = G_MAXINT64;
  for (int round = 0; round < ROUNDS; round++)
    {
      gint64 first = bw_synthesis_line_start (s, round, 1);
      gint64 start_us = g_get_monotonic_time ();
      bw_synthesis_fill (s, conductor, first, n, volts);
      best_us = MIN (best_us, g_get_monotonic_time () - start_us);
    }
  return (double) best_us / 1e6;
}

static void
run (const BwCatalogue *catalogue, guint i)
{
  g_autoptr (GError) error = NULL;
  BwSynthesisCase what = {
    .raster = bw_catalogue_raster (catalogue, cases[i].raster),
    .content = cases[i].content,
    .bars = BW_BARS_75,
    .rate_hz = { cases[i].rate_hz, 1 },
  };
  bw_wire_form_standard (cases[i].system, cases[i].signal,
                         cases[i].signal == BW_SIGNAL_RGB ? BW_SYNC_ON_GREEN : BW_SYNC_IN_VIDEO,
                         BW_SHAPE_BILEVEL, &what.form);
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, &error);
  if (s == NULL)
    g_error ("%s", error->message);

  double frame_s = bw_synthesis_line_start_s (s, 1, 1);
  gsize n = (gsize) bw_synthesis_line_start (s, 1, 1);
  g_autofree float *volts = g_new (float, n);
  double first_s = first_frame_s (&what, cases[i].conductor, n, volts);
  double best_s = best_frame_s (s, cases[i].conductor, n, volts);
  double plain_s = write_s (volts, n);
  g_print ("%s: %" G_GSIZE_FORMAT " samples\n", cases[i].says, n);
  g_print ("  frame     %8.3f ms of %.3f ms: %6.1f times faster than real time; first %6.1f\n",
           best_s * 1e3, frame_s * 1e3, frame_s / best_s, frame_s / first_s);
  g_print ("  a write   %8.3f ms: the frame takes %.1f times as long\n", plain_s * 1e3,
           best_s / plain_s);
}

int
main (void)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    run (catalogue, i);
  return 0;
}
