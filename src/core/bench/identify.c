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

/* A raster beyond this sum of squares is not worth showing (about six tolerances), unless it is one of
 * the nearest. */
#define DISTANCE_MAX 37.0
#define NEAREST 5

/* A raster whose score is at least this share of the best one's agrees about as well. */
#define AGREES_SHARE 0.1

/* The error beyond what the digits leave open counts in half of that at the least: nobody rounds
 * without fault. */
#define DIGITS_SHARE 0.5

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

/**
 * bw_readings_decide:
 *
 * Returns: whether two independent figures of the timing were read: one alone is that of rasters
 * beyond number, and no catalogue has them all
 */
gboolean
bw_readings_decide (const BwReadings *readings)
{
  g_return_val_if_fail (readings != NULL, FALSE);
  guint n = (readings->line_rate_hz > 0) + (readings->field_rate_hz > 0)
            + (readings->lines_per_field > 0);
  return n >= 2;
}

static double
square (double x)
{
  return x * x;
}

/* By how many tolerances a rate is off, beyond what its uncertainty leaves open. */
static double
rate_error (double read_hz, double uncertainty_hz, double tolerance, double raster_hz)
{
  double beyond_hz = MAX (fabs (read_hz - raster_hz) - uncertainty_hz, 0);
  return beyond_hz / hypot (tolerance * raster_hz, DIGITS_SHARE * uncertainty_hz);
}

/* The sum of squares of errors in tolerances. The lines of a field count if they were counted: as
 * they follow from the two rates, they say nothing that those do not say. */
static double
distance (const BwReadings *read, const BwRaster *raster, const BwRasterFigures *f)
{
  double tolerance = read->rate_tolerance > 0 ? read->rate_tolerance : BW_RATE_TOLERANCE;
  double sum = 0;

  if (read->line_rate_hz > 0)
    sum += square (rate_error (read->line_rate_hz, read->line_rate_uncertainty_hz, tolerance,
                               f->line_rate_hz));
  if (read->field_rate_hz > 0)
    sum += square (rate_error (read->field_rate_hz, read->field_rate_uncertainty_hz, tolerance,
                               f->field_rate_hz));
  if (read->lines_per_field > 0)
    sum += square ((read->lines_per_field - f->lines_per_field) / LINES_TOLERANCE);
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
    .distance = distance (read, raster, &f),
    .lines_per_field = f.lines_per_field,
  };
  candidate.score = exp (-candidate.distance / 2);
  if (read->line_rate_hz > 0)
    candidate.line_rate_error_ppm = (read->line_rate_hz / f.line_rate_hz - 1) * 1e6;
  if (read->field_rate_hz > 0)
    candidate.field_rate_error_ppm = (read->field_rate_hz / f.field_rate_hz - 1) * 1e6;
  return candidate;
}

/* A kind of timing: as many lines in a field, and the same scan. */
static gboolean
is_same_kind (const BwCandidate *a, const BwCandidate *b)
{
  return a->raster->scan == b->raster->scan
         && bw_near (a->lines_per_field, b->lines_per_field, 0.1);
}

/* Nearest first; of those that are as near, the first of each kind before the second ones. */
static int
by_distance (gconstpointer a, gconstpointer b)
{
  const BwCandidate *left = a, *right = b;
  int further = (left->distance > right->distance) - (left->distance < right->distance);
  return further != 0 ? further
                      : (left->nth_of_kind > right->nth_of_kind)
                            - (left->nth_of_kind < right->nth_of_kind);
}

/* The sort is stable: of those that agree alike, the first in the catalogue comes first, and that
 * begins with the rasters of broadcasting. */
static void
rank (GArray *candidates)
{
  for (guint i = 0; i < candidates->len; i++)
    {
      BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      for (guint j = i; j-- > 0;)
        {
          const BwCandidate *before = &g_array_index (candidates, BwCandidate, j);
          if (before->distance < one->distance)
            break;
          one->nth_of_kind += is_same_kind (before, one);
        }
    }
  g_array_sort (candidates, by_distance);
}

/**
 * bw_candidate_opens_kind:
 * @candidates: (element-type BwCandidate): best first
 * @i: which of them
 *
 * Returns: whether it agrees about as well as the best, and is the first with so many lines in a field
 *   and such a scan
 */
gboolean
bw_candidate_opens_kind (const GArray *candidates, guint i)
{
  g_return_val_if_fail (candidates != NULL && i < candidates->len, FALSE);
  const BwCandidate *best = &g_array_index (candidates, BwCandidate, 0);
  const BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
  gboolean opens = one->score >= AGREES_SHARE * best->score;

  for (guint j = 0; j < i && opens; j++)
    opens = !is_same_kind (&g_array_index (candidates, BwCandidate, j), one);
  return opens;
}

/* How many kinds agree about as well as the best. */
static guint
count_kinds (const GArray *candidates)
{
  guint n = 0;
  for (guint i = 0; i < candidates->len; i++)
    n += bw_candidate_opens_kind (candidates, i);
  return n;
}

/* What differs between two rasters on the wire, and how easily it is read: the less, the easier. */
static const char *
difference (const BwRaster *a, const BwRaster *b, guint *effort)
{
  *effort = 1;
  BwRasterFigures fa, fb;
  bw_raster_figures (a, &fa);
  bw_raster_figures (b, &fb);

  if (!bw_near (fa.lines_per_field, fb.lines_per_field, 0.1))
    {
      *effort = 0;
      return _ ("count the lines of a field; a half line over means interlace");
    }
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

/* Of the rivals that agree about as well, the one that is told from @one most easily; if there is none,
 * the nearest that differs. @one comes at place @i. */
static void
find_rival (const GArray *candidates, guint i, BwCandidate *one)
{
  double best = g_array_index (candidates, BwCandidate, 0).score;
  guint least = G_MAXUINT;

  for (guint j = 0; j < candidates->len; j++)
    {
      const BwCandidate *other = &g_array_index (candidates, BwCandidate, j);
      guint effort = 0;
      const char *differs = i != j ? difference (one->raster, other->raster, &effort) : NULL;
      gboolean agrees = other->score > 0 && other->score >= AGREES_SHARE * best;
      if (i != j && differs == NULL && j < i && one->same_as == NULL)
        one->same_as = other->raster;
      if (differs == NULL || (one->rival != NULL && !(agrees && effort < least)))
        continue;
      one->rival = other->raster;
      one->decider = differs;
      least = agrees ? effort : G_MAXUINT;
    }
}

/* Marks rasters that are alike on the wire, and finds what tells each from a rival. */
static void
compare (GArray *candidates)
{
  guint kinds = count_kinds (candidates);
  for (guint i = 0; i < candidates->len; i++)
    {
      BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      one->kinds = kinds;
      find_rival (candidates, i, one);
    }
}

/* What a raster that is not in the catalogue weighs where one figure was read. */
#define OTHER_RASTERS 1.0

static void
share_out (GArray *candidates, gboolean decided)
{
  double total = decided ? 0 : OTHER_RASTERS;
  for (guint i = 0; i < candidates->len; i++)
    {
      const BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      total += one->same_as == NULL ? one->score : 0;
    }
  for (guint i = 0; i < candidates->len; i++)
    {
      BwCandidate *one = &g_array_index (candidates, BwCandidate, i);
      one->certainty = total > 0 ? one->score / total : 0;
    }
}

/* Drops what is too far off to be shown, but for the nearest. */
static void
drop_far (GArray *candidates)
{
  guint keep = MIN (NEAREST, candidates->len);
  while (keep < candidates->len
         && g_array_index (candidates, BwCandidate, keep).distance <= DISTANCE_MAX)
    keep++;
  g_array_set_size (candidates, keep);
}

/**
 * bw_identify:
 * @readings: at least one rate
 * @most: how many candidates at the most
 *
 * Ranks the catalogue's rasters by exp (−½ Σ (error/tolerance)²) over all that was read, where an
 * error is what is beyond the uncertainty of the reading.
 *
 * Returns: (transfer full) (element-type BwCandidate): the candidates, best first; the nearest even
 * if none agrees
 */
GArray *
bw_identify (const BwReadings *readings, const BwCatalogue *catalogue, guint most)
{
  g_return_val_if_fail (readings != NULL && catalogue != NULL, NULL);
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (BwCandidate));

  for (guint i = 0; i < rasters->len; i++)
    {
      BwCandidate candidate = judge (readings, rasters->pdata[i]);
      if (isfinite (candidate.distance))
        g_array_append_val (candidates, candidate);
    }
  g_array_sort (candidates, by_distance);
  drop_far (candidates);
  rank (candidates);
  compare (candidates);
  share_out (candidates, bw_readings_decide (readings));
  if (candidates->len > most)
    g_array_set_size (candidates, most);
  return candidates;
}
