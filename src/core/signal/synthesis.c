/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-synthesis-error-quark, bw_synthesis_error)

#define LEAST_RATE_HZ 13500000
#define CHROMA_BAND_HZ 1.3e6
#define LUMA_CYCLES 300 /* in the active line where no bandwidth is known: 5.8 MHz over 52 µs */
#define MOST_SAMPLES (1 << 20) /* in a line */
#define MOST_LINES (1 << 16)   /* in a frame */
#define SAMPLED_BYTES (32 << 20)
#define MOST_SAMPLED 256

/**
 * bw_synthesis_add_burst:
 * @form: given a burst as high, peak to peak, as its sync, if it has none and its colour system
 *   needs one: common practice, no source, for the systems whose burst no standard that was read
 *   lays down (PAL M, 525-line PAL and NTSC at 4.43 MHz)
 */
void
bw_synthesis_add_burst (BwWireForm *form)
{
  g_return_if_fail (form != NULL);
  gboolean coded = bw_signal_is_coded (form->signal);
  if (coded && bw_system_has_phase (form->system) && !(form->burst_pp_v > 0))
    form->burst_pp_v = form->sync_v;
}

static gboolean
fault (GError **error, BwSynthesisError code, const char *says)
{
  g_set_error_literal (error, BW_SYNTHESIS_ERROR, (int) code, says);
  return FALSE;
}

/* The band of the colour system; of RGB and component video half of the rate of pixels, or
 * LUMA_CYCLES where the raster has none. */
static double
luma_bandwidth_hz (const BwSynthesis *s)
{
  double pixel_hz = bw_ratio_to_double (s->raster->pixel_clock_hz) / s->raster->pixel_repeat;
  double system_hz = bw_system_facts (s->form.system)->luma_bandwidth_hz;
  gboolean broadcast = s->form.signal != BW_SIGNAL_RGB && s->form.signal != BW_SIGNAL_COMPONENT;

  if (broadcast && system_hz > 0)
    return system_hz;
  return pixel_hz > 0 ? pixel_hz / 2 : LUMA_CYCLES / (s->active_to_s - s->active_from_s);
}

static void
take_times (BwSynthesis *s)
{
  BwRasterFigures f;
  bw_raster_figures (s->raster, &f);
  s->lines = f.lines_per_frame;
  s->line_s = f.line_period_s;
  s->sync_width_s = f.h_sync_s - f.h_datum_s; /* of tri-level sync one half */
  s->active_from_s = f.h_sync_s - f.h_datum_s + f.h_back_porch_s + f.h_border_s;
  s->active_to_s = s->active_from_s + f.h_active_s;
  s->luma_hz = luma_bandwidth_hz (s);
}

static gboolean
check_raster (const BwSynthesisCase *what, GError **error)
{
  g_autoptr (GError) trouble = NULL;
  BwRasterFigures f;

  if (!bw_raster_check (what->raster, &trouble))
    return fault (error, BW_SYNTHESIS_ERROR_RASTER, trouble->message);
  bw_raster_figures (what->raster, &f);
  if (f.lines_per_frame > MOST_LINES)
    return fault (error, BW_SYNTHESIS_ERROR_RASTER,
                  _ ("the raster has too many lines; at most 65536 a frame are allowed"));
  if (what->form.shape == BW_SHAPE_TRILEVEL && what->raster->sync_shape != BW_SHAPE_TRILEVEL)
    return fault (error, BW_SYNTHESIS_ERROR_RASTER,
                  _ ("tri-level sync needs a raster whose line sync is tri-level"));
  return TRUE;
}

static double
highest_hz (const BwSynthesis *s)
{
  double picture_hz = bw_content_highest_hz (s);
  double subcarrier_hz = bw_ratio_to_double (bw_system_facts (s->form.system)->subcarrier_hz);
  gboolean coded = bw_signal_is_coded (s->form.signal);
  return coded && subcarrier_hz > 0 ? MAX (picture_hz, subcarrier_hz + CHROMA_BAND_HZ) : picture_hz;
}

static gboolean
default_rate (BwSynthesis *s, GError **error)
{
  BwRatio subcarrier_hz = bw_system_facts (s->form.system)->subcarrier_hz;
  gboolean coded = bw_signal_is_coded (s->form.signal);

  if (coded && !bw_ratio_is_none (subcarrier_hz))
    return bw_ratio_multiply (subcarrier_hz, (BwRatio){ 4, 1 }, &s->rate_hz)
           || fault (error, BW_SYNTHESIS_ERROR_RATE, _ ("4 × subcarrier cannot be held"));
  s->rate_hz = (BwRatio){ LEAST_RATE_HZ, 1 };
  if (bw_ratio_compare (s->raster->pixel_clock_hz, s->rate_hz) > 0)
    s->rate_hz = s->raster->pixel_clock_hz;
  else
    s->rate_hz.num *= (gint64) fmax (1, ceil (2 * highest_hz (s) / LEAST_RATE_HZ));
  return TRUE;
}

/* Needs the times and the band. */
static gboolean
take_rate (BwSynthesis *s, BwRatio rate_hz, GError **error)
{
  double least_hz = 2 * highest_hz (s), most_hz = MOST_SAMPLES / s->line_s;

  s->rate_hz = rate_hz;
  if (bw_ratio_is_none (rate_hz) && !default_rate (s, error))
    return FALSE;
  double rate = bw_ratio_to_double (s->rate_hz);
  if (!(rate >= least_hz * (1 - 1e-9) && rate <= most_hz))
    {
      g_autofree char *least = bw_quantity_format (least_hz, BW_DIMENSION_FREQUENCY, 4, '.');
      g_autofree char *most = bw_quantity_format (most_hz, BW_DIMENSION_FREQUENCY, 4, '.');
      g_autofree char *given = bw_quantity_format (rate, BW_DIMENSION_FREQUENCY, 6, '.');
      g_set_error (
          error, BW_SYNTHESIS_ERROR, BW_SYNTHESIS_ERROR_RATE,
          _ ("a sampling rate of %1$s is not possible; allowed are %2$s, twice the highest "
             "frequency of this signal, to %3$s"),
          given, least, most);
      return FALSE;
    }
  s->sample_s = 1 / rate;
  return (bw_ratio_divide (s->rate_hz, s->raster->line_rate_hz, &s->per_line)
          && bw_ratio_fits (s->per_line))
         || fault (error, BW_SYNTHESIS_ERROR_RATE,
                   _ ("the sampling rate has too fine a ratio to the line rate; rates in whole "
                      "hertz are allowed"));
}

/* A burst that reaches into the sync or the picture would be no test signal. */
static gboolean
check_burst (const BwSynthesis *s, GError **error)
{
  const BwSubcarrier *c = &s->subcarrier;
  if (bw_ratio_is_none (c->per_sample) || !(s->form.burst_pp_v > 0)
      || (c->burst_from_s > s->sync_width_s && c->burst_to_s < s->active_from_s))
    return TRUE;
  g_autofree char *from = bw_quantity_format (c->burst_from_s, BW_DIMENSION_TIME, 3, '.');
  g_autofree char *to = bw_quantity_format (c->burst_to_s, BW_DIMENSION_TIME, 3, '.');
  g_set_error (
      error, BW_SYNTHESIS_ERROR, BW_SYNTHESIS_ERROR_RASTER,
      _ ("the burst, from %1$s to %2$s after the line sync begins, does not lie on the back "
         "porch of the raster"),
      from, to);
  return FALSE;
}

static void
program_free (gpointer data)
{
  BwProgram *program = data;
  for (int i = 0; i < BW_N_LAYERS; i++)
    g_array_unref (program->layers[i]);
  bw_secam_line_free (program->secam);
  g_free (program);
}

static void
init_caches (BwSynthesis *s)
{
  gint64 whole = s->per_line.num / s->per_line.den;
  s->n_most = (guint) whole + 1;
  gsize line_bytes = sizeof (float) * BW_N_LAYERS * s->n_most;
  s->n_sampled = (guint) CLAMP (SAMPLED_BYTES / line_bytes, 4, MOST_SAMPLED);
  s->sampled = g_new0 (BwSampledLine, s->n_sampled);
  s->programs = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, program_free);
}

/**
 * bw_synthesis_new:
 * @what: copied
 *
 * The content lies between the blanking edges of the raster; borders and the rest are at blanking
 * level. Edges have the rise times of SMPTE 170M (525 lines) and ITU-R BT.1700 (625 lines); in the
 * picture they follow from the bandwidth of the colour system, or half the rate of pixels. SECAM is
 * frequency modulated with line identification, and without field identification.
 *
 * Returns: (transfer full): the test signal, or %NULL with @error in %BW_SYNTHESIS_ERROR
 */
BwSynthesis *
bw_synthesis_new (const BwSynthesisCase *what, GError **error)
{
  g_return_val_if_fail (what->content < BW_N_CONTENTS && what->bars < BW_N_BARS_FORMS, NULL);
  if (!check_raster (what, error))
    return NULL;

  g_autoptr (BwSynthesis) s = g_new0 (BwSynthesis, 1);
  s->raster = bw_raster_copy (what->raster);
  s->form = what->form;
  s->content = what->content;
  s->bars = what->bars;
  take_times (s);
  if (!take_rate (s, what->rate_hz, error) || !bw_subcarrier_init (s, error)
      || !check_burst (s, error))
    return NULL;
  bw_shapes_init (s);
  bw_feature_tables_init (s);
  bw_signatures_init (s);
  init_caches (s);
  return g_steal_pointer (&s);
}

/**
 * bw_synthesis_free:
 * @synthesis: (nullable) (transfer full): freed with all it holds
 */
void
bw_synthesis_free (BwSynthesis *synthesis)
{
  if (synthesis == NULL)
    return;
  for (guint i = 0; i < synthesis->n_sampled; i++)
    g_free (synthesis->sampled[i].layers[0]);
  g_free (synthesis->sampled);
  g_clear_pointer (&synthesis->programs, g_hash_table_unref);
  g_free (synthesis->signatures);
  bw_raster_free (synthesis->raster);
  g_free (synthesis);
}

/**
 * bw_synthesis_rate_hz:
 *
 * Returns: the sampling rate, exactly
 */
BwRatio
bw_synthesis_rate_hz (const BwSynthesis *synthesis)
{
  return synthesis->rate_hz;
}

/**
 * bw_synthesis_conductors:
 *
 * Returns: the set of BwConductor that bw_synthesis_fill() knows
 */
guint
bw_synthesis_conductors (const BwSynthesis *synthesis)
{
  g_return_val_if_fail (synthesis != NULL, 0);
  return bw_signal_conductors (synthesis->form.signal, synthesis->form.sync);
}

/**
 * bw_synthesis_lines:
 *
 * Returns: how many lines a frame has
 */
int
bw_synthesis_lines (const BwSynthesis *synthesis)
{
  g_return_val_if_fail (synthesis != NULL, 0);
  return synthesis->lines;
}

/**
 * bw_synthesis_colour_frames:
 *
 * Returns: after how many frames the colour repeats: 2 in NTSC, 4 in PAL, 6 in SECAM, 1 without a
 *   subcarrier; zero if more than an int can hold
 */
int
bw_synthesis_colour_frames (const BwSynthesis *synthesis)
{
  g_return_val_if_fail (synthesis != NULL, 0);
  return synthesis->colour_frames;
}
