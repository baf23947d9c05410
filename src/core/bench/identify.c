/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "identify.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* How far a reading may be off before it counts against a raster (common practice, no source). */
#define LINES_TOLERANCE 0.25
#define LINE_SYNC_TOLERANCE 0.05
#define FIELD_SYNC_TOLERANCE_LINES 0.5

/* A kind that was seen and differs weighs as much as an error of this many tolerances. */
#define KIND_PENALTY 3.0

/* A score below this is not worth showing: beyond about six tolerances. */
#define SCORE_MIN 1e-8

/**
 * bw_readings_lines_per_field:
 *
 * Returns: lines of a field, to the nearest half line, as counted or as line rate over field rate;
 * zero if neither is there
 */
double
bw_readings_lines_per_field (const BwReadings *readings)
{
  if (readings->lines_per_field > 0)
    return readings->lines_per_field;
  if (readings->line_rate_hz > 0 && readings->field_rate_hz > 0)
    return round (2 * readings->line_rate_hz / readings->field_rate_hz) / 2;
  return 0;
}

static double
square (double x)
{
  return x * x;
}

/* The sum of squares of errors in tolerances. */
static double
distance (const BwReadings *read, const BwRaster *raster, const BwRasterFigures *f)
{
  double tolerance = read->rate_tolerance > 0 ? read->rate_tolerance : BW_RATE_TOLERANCE;
  double lines = bw_readings_lines_per_field (read);
  double sum = 0;

  if (read->line_rate_hz > 0)
    sum += square ((read->line_rate_hz / f->line_rate_hz - 1) / tolerance);
  if (read->field_rate_hz > 0)
    sum += square ((read->field_rate_hz / f->field_rate_hz - 1) / tolerance);
  if (lines > 0)
    sum += square ((lines - f->lines_per_field) / LINES_TOLERANCE);
  if (read->line_sync_s > 0)
    sum += square ((read->line_sync_s / f->h_sync_s - 1) / LINE_SYNC_TOLERANCE);
  if (read->field_sync_lines > 0)
    sum += square ((read->field_sync_lines - raster->field[0].sync / 2.0)
                   / FIELD_SYNC_TOLERANCE_LINES);
  if (read->scan_known && read->scan != raster->scan)
    sum += square (KIND_PENALTY);
  if (read->shape_known && read->shape != raster->sync_shape)
    sum += square (KIND_PENALTY);
  return sum;
}

static BwCandidate
judge (const BwReadings *read, const BwRaster *raster)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  BwCandidate candidate = {
    .raster = raster,
    .score = exp (-distance (read, raster, &f) / 2),
    .lines_per_field = f.lines_per_field,
  };
  if (read->line_rate_hz > 0)
    candidate.line_rate_error_ppm = (read->line_rate_hz / f.line_rate_hz - 1) * 1e6;
  if (read->field_rate_hz > 0)
    candidate.field_rate_error_ppm = (read->field_rate_hz / f.field_rate_hz - 1) * 1e6;
  return candidate;
}

static int
by_score (gconstpointer a, gconstpointer b)
{
  double left = ((const BwCandidate *) a)->score;
  double right = ((const BwCandidate *) b)->score;
  return (left < right) - (left > right);
}

/* What differs between two rasters on the wire, easiest to read first. */
static const char *
difference (const BwRaster *a, const BwRaster *b)
{
  BwRasterFigures fa, fb;
  bw_raster_figures (a, &fa);
  bw_raster_figures (b, &fb);

  if (!bw_near (fa.lines_per_field, fb.lines_per_field, 0.1))
    return _ ("count the lines of a field; a half line over means interlace");
  if (!bw_near (fa.field_rate_hz / fb.field_rate_hz, 1, 5e-6))
    return _ ("read the field rate to six digits");
  if (!bw_near (fa.line_rate_hz / fb.line_rate_hz, 1, 5e-6))
    return _ ("read the line rate to five digits");
  if (a->sync_shape != b->sync_shape)
    return _ ("look at the shape of sync: two levels or three");
  if (a->h_polarity != b->h_polarity || a->v_polarity != b->v_polarity)
    return _ ("look at the polarity of separate H and V");
  if (a->field[0].sync != b->field[0].sync)
    return _ ("count the lines of field sync");
  if (!bw_near (fa.h_sync_s / fb.h_sync_s, 1, 0.02))
    return _ ("measure the width of line sync");
  if ((a->equalising_before > 0) != (b->equalising_before > 0))
    return _ ("look for equalising pulses before field sync");
  if (!bw_near (fa.h_active_s / fb.h_active_s, 1, 0.005)
      || !bw_near (fa.h_back_porch_s / fb.h_back_porch_s, 1, 0.02))
    return _ ("measure from sync to the picture on a line with full white");
  if (a->field[0].active != b->field[0].active)
    return _ ("count the picture's lines");
  if (a->scan != b->scan)
    return _ ("look at the lines on the tube: do those of one field lie between those of the other");
  return NULL;
}

/* Marks rasters that are alike on the wire, and finds what tells each from its nearest rival. */
static void
compare (GArray *candidates)
{
  for (guint i = 0; i < candidates->len; i++)
    {
      BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      for (guint j = 0; j < candidates->len; j++)
        {
          const BwCandidate *other = &g_array_index (candidates, BwCandidate, j);
          const char *differs = i != j ? difference (one->raster, other->raster) : NULL;
          if (i != j && differs == NULL && j < i && one->same_as == NULL)
            one->same_as = other->raster;
          if (differs != NULL && one->decider == NULL)
            one->decider = differs;
        }
    }
}

static void
share_out (GArray *candidates)
{
  double total = 0;
  for (guint i = 0; i < candidates->len; i++)
    {
      const BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      total += one->same_as == NULL ? one->score : 0;
    }
  for (guint i = 0; i < candidates->len; i++)
    {
      BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      one->certainty = one->score / total;
    }
}

/**
 * bw_identify:
 * @readings: at least one rate
 * @most: how many candidates at the most
 *
 * Ranks the catalogue's rasters by exp (−½ Σ (error/tolerance)²) over all that was read.
 *
 * Returns: (transfer full) (element-type BwCandidate): the candidates, best first; empty if
 * nothing comes near
 */
GArray *
bw_identify (const BwReadings *readings, const BwCatalogue *catalogue, guint most)
{
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (BwCandidate));

  for (guint i = 0; i < rasters->len; i++)
    {
      BwCandidate candidate = judge (readings, rasters->pdata[i]);
      if (candidate.score >= SCORE_MIN)
        g_array_append_val (candidates, candidate);
    }
  g_array_sort (candidates, by_score);
  compare (candidates);
  share_out (candidates);
  if (candidates->len > most)
    g_array_set_size (candidates, most);
  return candidates;
}
