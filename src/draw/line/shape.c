/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shape.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/**
 * bw_line_shape_init:
 * @shape: (out caller-allocates)
 * @raster: a raster that bw_raster_check() accepts
 */
void
bw_line_shape_init (BwLineShape *shape, const BwRaster *raster)
{
  g_return_if_fail (shape != NULL && raster != NULL);
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  const double length_s[BW_N_INTERVALS] = {
    [BW_INTERVAL_FRONT_PORCH] = f.h_front_porch_s, [BW_INTERVAL_SYNC] = f.h_sync_s,
    [BW_INTERVAL_BACK_PORCH] = f.h_back_porch_s,   [BW_INTERVAL_BORDER_LEFT] = f.h_border_s,
    [BW_INTERVAL_ACTIVE] = f.h_active_s,           [BW_INTERVAL_BORDER_RIGHT] = f.h_border_s,
  };

  *shape = (BwLineShape){
    .pixels = { raster->h_front_porch, raster->h_sync, raster->h_back_porch, raster->h_border,
                raster->h_active, raster->h_border },
    .trilevel = raster->sync_shape == BW_SHAPE_TRILEVEL,
    .period_s = f.line_period_s,
  };
  shape->start_s[0] = -f.h_datum_s - f.h_front_porch_s;
  for (guint i = 0; i < BW_N_INTERVALS; i++)
    shape->start_s[i + 1] = shape->start_s[i] + length_s[i];
}

/**
 * bw_line_shape_blanking_end:
 *
 * Returns: when line blanking ends, in seconds after the datum
 */
double
bw_line_shape_blanking_end (const BwLineShape *shape)
{
  g_return_val_if_fail (shape != NULL, 0);
  return shape->start_s[BW_INTERVAL_BACK_PORCH + 1];
}

/**
 * bw_line_shape_length:
 *
 * Returns: the length of @interval in seconds
 */
double
bw_line_shape_length (const BwLineShape *shape, BwLineInterval interval)
{
  g_return_val_if_fail (shape != NULL, 0);
  return shape->start_s[interval + 1] - shape->start_s[interval];
}

/**
 * bw_line_shape_at:
 * @time_s: seconds after a datum, of this line or of any other
 *
 * Returns: the interval that @time_s lies in
 */
BwLineInterval
bw_line_shape_at (const BwLineShape *shape, double time_s)
{
  double start_s = shape->start_s[0];
  double inside_s = time_s - floor ((time_s - start_s) / shape->period_s) * shape->period_s;

  for (guint i = BW_N_INTERVALS - 1; i > 0; i--)
    if (inside_s >= shape->start_s[i] && bw_line_shape_length (shape, i) > 0)
      return i;
  return BW_INTERVAL_FRONT_PORCH;
}

/**
 * bw_line_interval_label:
 *
 * Returns: (transfer none): the translated word for @interval
 */
const char *
bw_line_interval_label (BwLineInterval interval)
{
  static const char *const labels[BW_N_INTERVALS] = {
    [BW_INTERVAL_FRONT_PORCH] = N_ ("front porch"),
    [BW_INTERVAL_SYNC] = N_ ("sync"),
    [BW_INTERVAL_BACK_PORCH] = N_ ("back porch"),
    [BW_INTERVAL_BORDER_LEFT] = N_ ("left border"),
    [BW_INTERVAL_ACTIVE] = N_ ("active"),
    [BW_INTERVAL_BORDER_RIGHT] = N_ ("right border"),
  };
  g_return_val_if_fail (interval < BW_N_INTERVALS, "");
  return _ (labels[interval]);
}

typedef struct
{
  GArray *steps;
  double from_s; /* the window */
  double to_s;
} StepWriter;

static void
add_step (StepWriter *writer, double from_s, double to_s, double level)
{
  BwLineStep step = { MAX (from_s, writer->from_s), MIN (to_s, writer->to_s), level };
  if (step.to_s > step.from_s)
    g_array_append_val (writer->steps, step);
}

static void
add_interval (StepWriter *writer, const BwLineShape *shape, BwLineInterval interval, double shift_s)
{
  double from_s = shape->start_s[interval] + shift_s;
  double length_s = bw_line_shape_length (shape, interval);

  if (interval == BW_INTERVAL_SYNC && shape->trilevel)
    {
      add_step (writer, from_s, from_s + length_s / 2, -BW_LEVEL_SYNC);
      add_step (writer, from_s + length_s / 2, from_s + length_s, BW_LEVEL_SYNC);
    }
  else if (interval == BW_INTERVAL_SYNC)
    add_step (writer, from_s, from_s + length_s, -BW_LEVEL_SYNC);
  else if (interval == BW_INTERVAL_ACTIVE)
    for (int i = 0; i < BW_STAIRS; i++)
      add_step (writer, from_s + length_s * i / BW_STAIRS, from_s + length_s * (i + 1) / BW_STAIRS,
                BW_LEVEL_WHITE * (i + 1) / BW_STAIRS);
  else
    add_step (writer, from_s, from_s + length_s, BW_LEVEL_BLANKING);
}

/**
 * bw_line_shape_steps:
 * @from_s: start of the window, in seconds after the datum
 * @to_s: its end
 *
 * Returns: (transfer full) (element-type BwLineStep): the levels between @from_s and @to_s, without
 * gaps; the line repeats before and after itself
 */
GArray *
bw_line_shape_steps (const BwLineShape *shape, double from_s, double to_s)
{
  g_return_val_if_fail (shape != NULL, NULL);
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (BwLineStep));
  StepWriter writer = { steps, from_s, to_s };
  int first = (int) floor ((from_s - shape->start_s[0]) / shape->period_s);
  int last = (int) floor ((to_s - shape->start_s[0]) / shape->period_s);

  for (int line = first; line <= last; line++)
    for (guint i = 0; i < BW_N_INTERVALS; i++)
      add_interval (&writer, shape, i, line * shape->period_s);
  return steps;
}

static gboolean
goes_with (const BwSystemFacts *facts, const BwRaster *raster)
{
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);
  return facts->any_raster || bw_near (facts->lines, figures.lines_per_frame, 0.1);
}

/**
 * bw_line_shape_add_burst:
 *
 * Puts the burst of @system on the back porch, as its standard lays it down for a line that has one,
 * if @raster is one that the system goes with and leaves room for it.
 */
void
bw_line_shape_add_burst (BwLineShape *shape, const BwRaster *raster, BwColourSystem system)
{
  g_return_if_fail (shape != NULL && raster != NULL);
  const BwSystemFacts *facts = bw_system_facts (system);
  double subcarrier_hz = bw_ratio_to_double (facts->subcarrier_hz);

  if (shape->trilevel || !(facts->burst_cycles > 0 && facts->burst_pp_v > 0 && subcarrier_hz > 0)
      || !goes_with (facts, raster))
    return;
  double to_s = facts->burst_from_s + facts->burst_cycles / subcarrier_hz;
  if (facts->burst_from_s < shape->start_s[BW_INTERVAL_BACK_PORCH]
      || to_s > bw_line_shape_blanking_end (shape))
    return;
  shape->burst_from_s = facts->burst_from_s;
  shape->burst_to_s = to_s;
  shape->burst_cycles = facts->burst_cycles;
  shape->burst_level = facts->burst_pp_v / 2 / facts->white_v;
}

/**
 * bw_line_shape_has_burst:
 *
 * Returns: whether the line has a burst
 */
gboolean
bw_line_shape_has_burst (const BwLineShape *shape)
{
  g_return_val_if_fail (shape != NULL, FALSE);
  return shape->burst_to_s > shape->burst_from_s;
}
