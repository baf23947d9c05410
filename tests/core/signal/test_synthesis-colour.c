/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The subcarrier of test signals: its sequences here, and the signal taken apart again by
 * demodulate.py, which knows the equations of the standards and nothing of this program. It needs
 * the Debian package python3-numpy; without it these tests fail. */
#include <string.h>

#include "test_synthesis.h"

static BwSynthesis *
composite (const char *raster, BwColourSystem system, gint64 rate_hz)
{
  return synthesis_of (&(Setup){
      raster, system, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, { rate_hz, 1 } });
}

static void
demodulate (BwSynthesis *s, BwColourSystem system, int frames)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "samples.f32", NULL);
  BwRatio rate = bw_synthesis_rate_hz (s);
  g_autofree char *rate_text = g_strdup_printf ("%" G_GINT64_FORMAT "/%" G_GINT64_FORMAT, rate.num,
                                                rate.den);
  gsize n = (gsize) bw_synthesis_line_start (s, frames, 1);
  g_autofree float *volts = samples_of (s, BW_CONDUCTOR_VIDEO, 0, n);
  g_autoptr (GError) error = NULL;
  gboolean well = FALSE;

  g_file_set_contents (path, (const char *) volts, (gssize) (n * sizeof (float)), &error);
  g_assert_no_error (error);
  g_autofree char *out = bw_test_python ("signal/demodulate.py",
                                         WORDS (bw_kind_id (&bw_colour_systems, system), rate_text,
                                                "75", path),
                                         NULL, &well);
  if (!well)
    g_test_message ("%s", out);
  g_assert_true (well);
  g_assert_nonnull (strstr (out, " 0 faults"));
  bw_test_folder_remove (folder);
}

typedef struct
{
  const char *name;
  const char *raster;
  BwColourSystem system;
  gint64 rate_hz; /* zero: 4 × subcarrier */
  int frames;
} Signal;

static const Signal signals[] = {
  { "ntsc-m", "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 0, 2 },
  { "ntsc-m-13.5", "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 13500000, 2 },
  { "ntsc-j", "525-59.94-interlaced", BW_SYSTEM_NTSC_J, 0, 2 },
  { "ntsc-4.43", "525-59.94-interlaced", BW_SYSTEM_NTSC_443, 0, 1 },
  { "pal-b", "625-50-interlaced", BW_SYSTEM_PAL_B, 0, 4 },
  { "pal-b-13.5", "625-50-interlaced", BW_SYSTEM_PAL_B, 13500000, 4 },
  { "pal-b-uneven", "625-50-interlaced", BW_SYSTEM_PAL_B, 24576001, 2 },
  { "pal-m", "525-59.94-interlaced", BW_SYSTEM_PAL_M, 0, 4 },
  { "pal-n", "625-50-interlaced", BW_SYSTEM_PAL_N, 0, 4 },
  { "pal-60", "525-59.94-interlaced", BW_SYSTEM_PAL_60, 0, 2 },
  { "secam-l", "625-50-interlaced", BW_SYSTEM_SECAM_L, 0, 1 },
};

static void
test_demodulated (gconstpointer data)
{
  const Signal *signal = data;
  g_autoptr (BwSynthesis) s = composite (signal->raster, signal->system, signal->rate_hz);
  demodulate (s, signal->system, signal->frames);
}

/* How many frames until all repeats: SMPTE 170M (227.5 cycles a line: four fields), ITU-R BT.1700
 * Part B (eight fields: 283.7516 and, in PAL M, 227.25 cycles a line; the switch of V), Part C
 * (SECAM: two lines, and one in three inverted). */
static const struct
{
  const char *name;
  const char *raster;
  BwColourSystem system;
  int frames;
} sequences[] = {
  { "ntsc-m", "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 2 },
  { "pal-b", "625-50-interlaced", BW_SYSTEM_PAL_B, 4 },
  { "pal-m", "525-59.94-interlaced", BW_SYSTEM_PAL_M, 4 },
  { "pal-n", "625-50-interlaced", BW_SYSTEM_PAL_N, 4 },
  { "secam-l", "625-50-interlaced", BW_SYSTEM_SECAM_L, 6 },
};

/* At 4 × subcarrier the grid repeats with the frame, and so must the samples, bit for bit. */
static void
test_sequence (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (BwSynthesis) s = composite (sequences[i].raster, sequences[i].system, 0);
  int frames = sequences[i].frames;
  gint64 frame = bw_synthesis_line_start (s, 1, 1);
  gsize bytes = (gsize) frame * sizeof (float);

  g_assert_cmpint (bw_synthesis_colour_frames (s), ==, frames);
  g_autofree float *first = samples_of (s, BW_CONDUCTOR_VIDEO, 0, (gsize) frame);
  for (int other = 1; other <= frames; other++)
    {
      gint64 at = bw_synthesis_line_start (s, other, 1);
      g_assert_cmpint (at, ==, other * frame);
      g_autofree float *then = samples_of (s, BW_CONDUCTOR_VIDEO, at, (gsize) frame);
      if (other == frames)
        g_assert_cmpmem (first, bytes, then, bytes);
      else
        g_assert_cmpint (memcmp (first, then, bytes), !=, 0);
    }
}

static gboolean
has_burst (BwSynthesis *s, int frame, int line)
{
  BwRatio rate = bw_synthesis_rate_hz (s);
  gint64 from = bw_synthesis_line_start (s, frame, line)
                + (gint64) (6e-6 * bw_ratio_to_double (rate));
  g_autofree float *volts = samples_of (s, BW_CONDUCTOR_VIDEO, from, 20);
  float low = volts[0], high = volts[0];
  for (int i = 1; i < 20; i++)
    {
      low = MIN (low, volts[i]);
      high = MAX (high, volts[i]);
    }
  return high - low > 0.1f;
}

static void
assert_without (BwSynthesis *s, int frame, int first, int last)
{
  for (int line = first; line <= last; line++)
    g_assert_false (has_burst (s, frame, line));
}

/* SMPTE 170M 13.1: none on the nine lines of each vertical interval: 1 to 9 and 264 to 272. */
static void
test_burst_ntsc (void)
{
  g_autoptr (BwSynthesis) s = composite ("525-59.94-interlaced", BW_SYSTEM_NTSC_M, 0);
  for (int frame = 0; frame < 3; frame++)
    {
      int without = 0;
      for (int line = 1; line <= 525; line++)
        without += !has_burst (s, frame, line);
      g_assert_cmpint (without, ==, 18);
      assert_without (s, frame, 1, 9);
      assert_without (s, frame, 264, 272);
    }
}

/* ITU-R BT.1700 figure 8, BT.470-6 item 2.17: nine lines that move through four fields: 623 to 6,
 * 310 to 318, 622 to 5, 311 to 319. The lines before a field's sync are in the frame before. */
static void
test_burst_pal (void)
{
  g_autoptr (BwSynthesis) s = composite ("625-50-interlaced", BW_SYSTEM_PAL_B, 0);
  for (int frame = 0; frame < 4; frame += 2)
    {
      int without = 0;
      for (int line = 1; line <= 1250; line++)
        without += !has_burst (s, frame + (line - 1) / 625, (line - 1) % 625 + 1);
      g_assert_cmpint (without, ==, 36);
      assert_without (s, frame, 1, 6);
      assert_without (s, frame, 310, 318);
      assert_without (s, frame, 622, 625);
      assert_without (s, frame + 1, 1, 5);
      assert_without (s, frame + 1, 311, 319);
      assert_without (s, frame + 1, 623, 625);
    }
}

/* Without serrations and equalising pulses the lists of the standards say nothing: the lines of field
 * sync, 4 to 6 and 266 to 269, have no burst (common practice, no source), all others have. */
static void
test_burst_unserrated (void)
{
  BwSynthesisCase what = case_of (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NTSC_M,
                                            BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, BW_CONTENT_BARS,
                                            BW_RATIO_NONE });
  g_autoptr (BwRaster) plain = bw_raster_copy (what.raster);
  plain->serration_width_s = plain->equalising_width_s = 0;
  plain->equalising_before = plain->equalising_after = 0;
  what.raster = plain;
  g_autoptr (GError) error = NULL;
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, &error);
  g_assert_no_error (error);
  for (int line = 1; line <= 525; line++)
    {
      gboolean in_sync = (line >= 4 && line <= 6) || (line >= 266 && line <= 269);
      g_assert_cmpint (has_burst (s, 0, line), ==, !in_sync);
    }
}

/* SMPTE 170M table 2: 9 cycles, 19 after 0H, envelope of 300 ns, 40 IRE; at 4 × subcarrier, with
 * SC/H of zero, every other sample is a peak. */
static void
test_burst_shape (void)
{
  g_autoptr (BwSynthesis) s = composite ("525-59.94-interlaced", BW_SYSTEM_NTSC_M, 0);
  gint64 start = bw_synthesis_line_start (s, 0, 10);
  g_autofree float *volts = samples_of (s, BW_CONDUCTOR_VIDEO, start, 130);
  double most = 0;
  for (int i = 70; i < 125; i++) /* between the edges of sync and picture */
    most = fmax (most, fabs ((double) volts[i]));
  g_assert_cmpfloat_with_epsilon (most, 20.0 / 140, 1e-6);
  /* half amplitude between the samples at 19 and 28 cycles: the envelope is even about them */
  for (int edge = 76; edge <= 112; edge += 36)
    {
      double before = fabs ((double) volts[edge - 1]), after = fabs ((double) volts[edge + 1]);
      g_assert_cmpfloat_with_epsilon (before + after, 20.0 / 140, 1e-5);
    }
  /* 300 ns / 0.482 / 2: nothing further than 4.5 samples outside */
  for (int edge = 71; edge <= 117; edge += 46)
    g_assert_cmpfloat_with_epsilon ((double) volts[edge], 0, 1e-7);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (guint i = 0; i < G_N_ELEMENTS (signals); i++)
    {
      g_autofree char *path = g_strconcat ("/synthesis-colour/demodulated/", signals[i].name, NULL);
      g_test_add_data_func (path, &signals[i], test_demodulated);
    }
  for (guint i = 0; i < G_N_ELEMENTS (sequences); i++)
    {
      g_autofree char *path = g_strconcat ("/synthesis-colour/sequence/", sequences[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_sequence);
    }
  g_test_add_func ("/synthesis-colour/burst/ntsc", test_burst_ntsc);
  g_test_add_func ("/synthesis-colour/burst/pal", test_burst_pal);
  g_test_add_func ("/synthesis-colour/burst/shape", test_burst_shape);
  g_test_add_func ("/synthesis-colour/burst/unserrated", test_burst_unserrated);
  return g_test_run ();
}
