/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model-private.h"

#include <math.h>

#include "core/circuit/drive.h"
#include "core/raster/waveform.h"

/* Samples to a pixel, or to a second: so many that straight lines between them look like the
 * curve. */
#define PER_PIXEL 4
#define PLAIN_RATE_HZ 108000000 /* 8 × 13.5 MHz */

static gboolean
is_coded (const BwWireForm *form)
{
  return (form->signal == BW_SIGNAL_COMPOSITE || form->signal == BW_SIGNAL_YC)
         && form->system != BW_SYSTEM_NONE;
}

/* Fine enough to draw. */
static BwRatio
drawing_rate (const BwSynthesisCase *what)
{
  const BwRatio plain = { PLAIN_RATE_HZ, 1 };
  const BwRatio pixel_hz = what->raster->pixel_clock_hz;
  BwRatio rate;

  if (is_coded (&what->form)
      && bw_ratio_multiply (bw_system_facts (what->form.system)->subcarrier_hz,
                            (BwRatio){ BW_LEVELS_PER_CYCLE, 1 }, &rate))
    return rate;
  if (!bw_ratio_is_none (pixel_hz) && bw_ratio_multiply (pixel_hz, (BwRatio){ PER_PIXEL, 1 }, &rate)
      && bw_ratio_compare (rate, plain) > 0)
    return rate;
  return plain;
}

static BwSynthesis *
make_synthesis (BwSynthesisCase *what, GError **error)
{
  BwSynthesisCase finer = *what;
  if (!bw_ratio_is_none (what->rate_hz))
    return bw_synthesis_new (what, error);
  finer.rate_hz = drawing_rate (what);
  BwSynthesis *synthesis = bw_synthesis_new (&finer, NULL);
  return synthesis != NULL ? synthesis : bw_synthesis_new (what, error);
}

static BwConductor
coded_conductor (const BwLevelsModel *model)
{
  return model->what.form.signal == BW_SIGNAL_YC ? BW_CONDUCTOR_C : BW_CONDUCTOR_VIDEO;
}

/* The longest run of samples beyond @least_v, with gaps of less than @gap_s: neither the end of sync
 * nor the start of the picture. */
static BwRange
longest_run (const BwLevelsSamples *samples, double least_v, double gap_s)
{
  BwRange run = { 0, 0 }, longest = { 0, 0 };

  for (gsize i = 0; i < samples->n; i++)
    {
      double time_s = samples->first_s + (double) i * samples->step_s;
      if (fabs ((double) samples->volts[i]) < least_v)
        continue;
      if (time_s > run.high + gap_s)
        run.low = time_s;
      run.high = time_s;
      if (run.high - run.low > longest.high - longest.low)
        longest = run;
    }
  return longest;
}

/* Where the burst stands, at half its amplitude, as the samples of a line of picture have it. */
static void
find_burst (BwLevelsModel *model)
{
  const BwLineShape *shape = &model->shape;
  BwLevelsWindow window = { 0, shape->start_s[BW_INTERVAL_BACK_PORCH],
                            bw_line_shape_blanking_end (shape) };
  BwLevelsSamples samples;

  if (!is_coded (&model->what.form) || model->what.form.burst_pp_v <= 0)
    return;
  window.start_s = bw_levels_model_start_s (model, 0, bw_levels_model_picture_line (model));
  bw_levels_samples (model, coded_conductor (model), &window, &samples);
  model->burst_s = longest_run (&samples, model->what.form.burst_pp_v / 4,
                                0.75 / bw_levels_model_subcarrier_hz (model));
  bw_levels_samples_clear (&samples);
}

/**
 * bw_levels_model_new:
 * @what: copied with its raster; without a rate it is sampled finely enough to be drawn
 *
 * Makes the samples of a test signal ready to be drawn and read.
 *
 * Returns: (transfer full): the model; %NULL with @error in %BW_SYNTHESIS_ERROR
 */
BwLevelsModel *
bw_levels_model_new (const BwSynthesisCase *what, GError **error)
{
  g_return_val_if_fail (what != NULL, NULL);
  g_autoptr (BwLevelsModel) model = g_rc_box_new0 (BwLevelsModel);

  model->raster = bw_raster_copy (what->raster);
  model->what = *what;
  model->what.raster = model->raster;
  model->synthesis = make_synthesis (&model->what, error);
  if (model->synthesis == NULL)
    return NULL;
  model->rate_hz = bw_ratio_to_double (bw_synthesis_rate_hz (model->synthesis));
  bw_line_shape_init (&model->shape, model->raster);
  model->n_levels = bw_wire_levels (&model->what.form, model->levels);
  find_burst (model);
  return g_steal_pointer (&model);
}

BwLevelsModel *
bw_levels_model_ref (BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, NULL);
  return g_rc_box_acquire (model);
}

static void
clear_model (gpointer data)
{
  BwLevelsModel *model = data;
  g_clear_pointer (&model->synthesis, bw_synthesis_free);
  g_clear_pointer (&model->chroma, bw_synthesis_free);
  bw_levels_coupling_clear (model);
  bw_raster_free (model->raster);
}

void
bw_levels_model_unref (BwLevelsModel *model)
{
  g_return_if_fail (model != NULL);
  g_rc_box_release_full (model, clear_model);
}

/**
 * bw_levels_model_case:
 *
 * Returns: (transfer none): what the model was made from
 */
const BwSynthesisCase *
bw_levels_model_case (const BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, NULL);
  return &model->what;
}

/**
 * bw_levels_model_synthesis:
 *
 * Returns: (transfer none): the samples that are drawn
 */
BwSynthesis *
bw_levels_model_synthesis (BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, NULL);
  return model->synthesis;
}

const BwRaster *
bw_levels_model_raster (const BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, NULL);
  return model->raster;
}

const BwLineShape *
bw_levels_model_shape (const BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, NULL);
  return &model->shape;
}

guint
bw_levels_model_levels (const BwLevelsModel *model, const BwWireLevels **levels)
{
  g_return_val_if_fail (model != NULL && levels != NULL, 0);
  *levels = model->levels;
  return model->n_levels;
}

/* Zero where there is no subcarrier. */
double
bw_levels_model_subcarrier_hz (const BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, 0);
  if (!is_coded (&model->what.form))
    return 0;
  return bw_ratio_to_double (bw_system_facts (model->what.form.system)->subcarrier_hz);
}

double
bw_levels_model_rate_hz (const BwLevelsModel *model)
{
  return model->rate_hz;
}

/* Whether there is a burst, and where it stands after 0H of its line. */
gboolean
bw_levels_model_burst (const BwLevelsModel *model, BwRange *burst_s)
{
  g_return_val_if_fail (model != NULL && burst_s != NULL, FALSE);
  *burst_s = model->burst_s;
  return model->burst_s.high > model->burst_s.low;
}

gboolean
bw_levels_has_chroma (const BwLevelsModel *model, BwConductor conductor)
{
  return is_coded (&model->what.form) && conductor == coded_conductor (model);
}

/**
 * bw_levels_model_picture_line:
 *
 * Returns: the number of a line in the middle of the picture of the first field
 */
int
bw_levels_model_picture_line (const BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, 0);
  const BwFieldTiming *field = &model->raster->field[0];
  int half_line = field->sync + field->back_porch + 2 * model->raster->v_border + field->active / 2;
  return bw_raster_line_at (model->raster, 0, half_line - half_line % 2, NULL);
}

/* Whether the picture takes the whole of @line. */
gboolean
bw_levels_model_has_picture (const BwLevelsModel *model, int line)
{
  const BwRaster *raster = model->raster;
  guint fields = raster->scan == BW_SCAN_INTERLACED ? 2 : 1;

  for (guint f = 0; f < fields; f++)
    {
      const BwFieldTiming *field = &raster->field[f];
      int start = field->sync + field->back_porch + 2 * raster->v_border;
      for (int h = start; h + 1 < start + field->active; h++)
        {
          gboolean middle;
          if (bw_raster_line_at (raster, (int) f, h, &middle) == line && !middle)
            return TRUE;
        }
    }
  return FALSE;
}

/* The datum of a line, one sequence of frames later, so that there are samples before it. */
double
bw_levels_model_start_s (const BwLevelsModel *model, gint64 frame, int line)
{
  g_return_val_if_fail (model != NULL, 0);
  int frames = MAX (bw_synthesis_colour_frames (model->synthesis), 1);
  return bw_synthesis_line_start_s (model->synthesis, frame + frames, line);
}

/**
 * bw_levels_gain:
 *
 * Returns: from a level as it is stated to that on the wire, by bw_level_at_load(); 1 where no load
 *   is known
 */
double
bw_levels_gain (const BwLevelsLoad *load)
{
  if (load->load_ohm <= 0)
    return 1;
  return bw_level_at_load (1, load->stated, load->source_ohm, load->load_ohm);
}
