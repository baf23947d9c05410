/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include <math.h>

#include "core/raster/reading.h"

/* The shapes of edges, and features as samples. */

/* Chroma: the sine-squared pulse behind its edges, at half amplitude. It passes 1.3 MHz at −2.97 dB
 * and nothing of note above 3.6 MHz (ITU-R BT.470-6 item 2.6: less than 3 dB at 1.3 MHz, at least
 * 20 dB at 3.6 MHz for M, at 4 MHz for 625 lines). */
#define CHROMA_PULSE_S 275e-9

/* Common practice, no source: 140 ns to 4.7 µs, as SMPTE 170M has it, for any other line sync; and
 * 4 clocks, as in high definition, for tri-level sync. */
#define SYNC_RISE_SHARE (0.14 / 4.7)
#define TRILEVEL_RISE_CLOCKS 4

#define BLANKING_RISE_525_S 140e-9 /* SMPTE 170M table 2 */
#define BLANKING_RISE_625_S 300e-9 /* ITU-R BT.470-6 table 1-1, e */
#define BURST_RISE_S 300e-9 /* SMPTE 170M table 2; for PAL common practice, no source */

/* The broadcast raster that @s is, or is half a frame of: 525 or 625 lines; else zero. */
static int
family_of (const BwSynthesis *s)
{
  return s->line_s < 60e-6 ? 0 : bw_broadcast_lines (s->lines);
}

/* The nominal value that a standard lays down for @raster; zero if none does. */
static double
nominal_s (const char *raster, BwReadingKind kind)
{
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  for (guint i = 0; i < all->len; i++)
    {
      const BwStandardLimits *limits = all->pdata[i];
      if (limits->at[kind].n > 0 && g_strcmp0 (limits->raster, raster) == 0)
        return limits->at[kind].at[0].low;
    }
  return 0;
}

static double
sync_rise_s (const BwSynthesis *s, int family)
{
  if (family == 525)
    return nominal_s (bw_system_facts (BW_SYSTEM_NTSC_M)->raster, BW_READING_SYNC_RISE);
  if (family == 625)
    return nominal_s (bw_system_facts (BW_SYSTEM_PAL_B)->raster, BW_READING_SYNC_RISE);
  if (s->raster->sync_shape == BW_SHAPE_TRILEVEL && !bw_ratio_is_none (s->raster->pixel_clock_hz))
    return TRILEVEL_RISE_CLOCKS / bw_ratio_to_double (s->raster->pixel_clock_hz);
  return SYNC_RISE_SHARE * s->sync_width_s;
}

/* 2T of 525 lines, where T is 125 ns (common practice, no source); elsewhere T is 1/(2·bandwidth),
 * 100 ns of the 5 MHz of 625 lines. */
#define PULSE_525_S 250e-9

/* Edges of luma are those of a 2T pulse, which is 2T at half amplitude, and which has nothing of note
 * above the bandwidth. */
void
bw_shapes_init (BwSynthesis *s)
{
  int family = family_of (s);
  double luma_pulse_s = family == 525 ? PULSE_525_S : 1 / s->luma_hz;
  double blanking_rise_s = family == 525   ? BLANKING_RISE_525_S
                           : family == 625 ? BLANKING_RISE_625_S
                                           : luma_pulse_s * 2 * BW_RISE_SHARE;

  s->shapes = (BwShapes){
    .sync_s = sync_rise_s (s, family) / BW_RISE_SHARE,
    .blanking_s = blanking_rise_s / BW_RISE_SHARE,
    .luma_s = 2 * luma_pulse_s,
    .difference_s = 4 * luma_pulse_s,
    .chroma_s = 2 * CHROMA_PULSE_S,
    .burst_s = BURST_RISE_S / BW_RISE_SHARE,
  };
}

/* Both shapes over −½ to ½ of their width, with one value more for the interpolation. */
void
bw_feature_tables_init (BwSynthesis *s)
{
  for (int i = 0; i <= BW_SHAPE_STEPS + 1; i++)
    {
      double x = MIN (i, BW_SHAPE_STEPS) / (double) BW_SHAPE_STEPS - 0.5;
      s->step[i] = (float) (0.5 + x + sin (2 * G_PI * x) / (2 * G_PI));
      s->pulse[i] = (float) (0.5 + 0.5 * cos (2 * G_PI * x));
    }
}

void
bw_add_step (GArray *features, double at_s, double width_s, double volts)
{
  BwFeature step = { .kind = BW_FEATURE_STEP, .at_s = at_s, .width_s = width_s, .volts = volts };
  if (fabs (volts) > 1e-12)
    g_array_append_val (features, step);
}

static gboolean
is_centred (const BwFeature *feature)
{
  return feature->kind == BW_FEATURE_STEP || feature->kind == BW_FEATURE_PULSE;
}

static double
begin_s (const BwFeature *feature)
{
  return is_centred (feature) ? feature->at_s - feature->width_s / 2 : feature->at_s;
}

static double
end_s (const BwFeature *feature)
{
  return begin_s (feature) + feature->width_s;
}

static int
compare_ends (gconstpointer a, gconstpointer b)
{
  double first_s = end_s (a), second_s = end_s (b);
  return (first_s > second_s) - (first_s < second_s);
}

/* In the order in which they end, as bw_sample_features() needs them. */
void
bw_sort_features (GArray *features)
{
  g_array_sort (features, compare_ends);
}

/* The table at @x, 0 to 1. */
static inline float
shape_at (const float *table, double x)
{
  float place = (float) (CLAMP (x, 0, 1) * BW_SHAPE_STEPS);
  int i = (int) place;
  return table[i] + (place - (float) i) * (table[i + 1] - table[i]);
}

/* The first sample at or after @at_s, of @n that start at @first_s. */
static guint
sample_at (const BwSynthesis *s, double at_s, double first_s, guint n)
{
  double place = ceil ((at_s - first_s) / s->sample_s);
  return (guint) CLAMP (place, 0, (double) n);
}

static void
add_shape (const BwFeature *feature, const float *table, double x, double step, guint from,
           guint to, float *volts)
{
  float height = (float) feature->volts;
  for (guint i = from; i < to; i++)
    volts[i] += height * shape_at (table, x + (i - from) * step);
}

/* By turning a vector; the packet is short, so the error stays below 1e-12. */
static void
add_sine (const BwSynthesis *s, const BwFeature *feature, double at_s, guint from, guint to,
          float *volts)
{
  double angle = 2 * G_PI * feature->frequency_hz * at_s;
  double turn = 2 * G_PI * feature->frequency_hz * s->sample_s;
  double c = cos (angle), si = sin (angle), turn_c = cos (turn), turn_s = sin (turn);
  double left_s = at_s, right_s = feature->width_s - at_s;

  for (guint i = from; i < to; i++)
    {
      float envelope = shape_at (s->step, left_s / feature->edge_s)
                       * shape_at (s->step, right_s / feature->edge_s);
      volts[i] += envelope * (float) (feature->volts * si);
      double turned = c * turn_c - si * turn_s;
      si = si * turn_c + c * turn_s;
      c = turned;
      left_s += s->sample_s;
      right_s -= s->sample_s;
    }
}

static void
add_feature (const BwSynthesis *s, const BwFeature *feature, double first_s, guint n, float *volts)
{
  guint from = sample_at (s, begin_s (feature), first_s, n);
  guint to = sample_at (s, end_s (feature), first_s, n);
  double into_s = first_s + from * s->sample_s - begin_s (feature);
  double x = into_s / feature->width_s, step = s->sample_s / feature->width_s;

  switch (feature->kind)
    {
    case BW_FEATURE_STEP:
      add_shape (feature, s->step, x, step, from, to, volts);
      break;
    case BW_FEATURE_PULSE:
      add_shape (feature, s->pulse, x, step, from, to, volts);
      break;
    case BW_FEATURE_RAMP:
      for (guint i = from; i < to; i++)
        volts[i] += (float) (feature->volts * (x + (i - from) * step));
      break;
    case BW_FEATURE_SINE:
      add_sine (s, feature, into_s, from, to, volts);
      break;
    default:
      g_assert_not_reached ();
    }
}

/* What has ended keeps its height, so the level between edges is constant and exact.
 * @features is in the order of bw_sort_features(). */
void
bw_sample_features (const BwSynthesis *s, const GArray *features, double first_s, guint n,
                    float *volts)
{
  double level = 0;
  guint done = 0;

  for (guint i = 0; i < features->len; i++)
    {
      const BwFeature *feature = &g_array_index (features, BwFeature, i);
      if (feature->kind == BW_FEATURE_PULSE || feature->kind == BW_FEATURE_SINE)
        continue;
      guint end = sample_at (s, end_s (feature), first_s, n);
      for (; done < end; done++)
        volts[done] = (float) level;
      level += feature->volts;
      level = fabs (level) < 1e-12 ? 0 : level;
    }
  for (; done < n; done++)
    volts[done] = (float) level;
  for (guint i = 0; i < features->len; i++)
    add_feature (s, &g_array_index (features, BwFeature, i), first_s, n, volts);
}
