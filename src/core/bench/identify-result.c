/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Which raster it is: what was read, what comes near, and how sure that is. */

#define DIGITS 8

/* Beyond three tolerances in one reading, or as much in all together, a raster is no answer. */
#define SCORE_POOR exp (-0.5 * 3 * 3)
#define CERTAIN 0.95

static const BwCandidate *
candidate (const GArray *candidates, guint i)
{
  return &g_array_index (candidates, BwCandidate, i);
}

static void
add_readings (BwNode *to, const BwReadings *read)
{
  BwNode *section = bw_node_section (to, NULL, _ ("Read"));
  const struct
  {
    const char *label;
    double value;
    BwDimension dimension;
  } rates[] = {
    { _ ("Line rate"), read->line_rate_hz, BW_DIMENSION_FREQUENCY },
    { _ ("Field rate"), read->field_rate_hz, BW_DIMENSION_FREQUENCY },
    { read->lines_per_field > 0 ? _ ("Lines per field") : _ ("Lines per field, from the two rates"),
      bw_readings_lines_per_field (read), BW_DIMENSION_LINES },
    { _ ("Line sync"), read->line_sync_s, BW_DIMENSION_TIME },
    { _ ("Field sync"), read->field_sync_lines, BW_DIMENSION_LINES },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rates); i++)
    bw_node_figure (section, rates[i].label,
                    bw_value_if (rates[i].value > 0,
                                 bw_value_quantity (NULL, rates[i].value, rates[i].dimension,
                                                    DIGITS)));
  if (read->scan_known)
    bw_node_figure (section, _ ("Scan"), bw_value_kind (NULL, &bw_scans, read->scan));
  if (read->shape_known)
    bw_node_figure (section, _ ("Shape of sync"),
                    bw_value_kind (NULL, &bw_sync_shapes, read->shape));
}

static BwValue
error_of (const char *key, gboolean was_read, double error_ppm)
{
  return bw_value_if (was_read, bw_value_signed (bw_value_number (key, error_ppm, 1)));
}

/* For people, what of the same timing its first raster says is not said again. */
static const char *
decider_words (BwNode *row, const BwCandidate *one)
{
  if (one->decider == NULL)
    return NULL;
  return one->same_as != NULL
             ? ""
             : bw_node_print (row, _ ("To tell it from its nearest rival: %s"), one->decider);
}

/* Rasters with the same timing share one certainty, which the first of them has. */
static void
add_candidate (BwNode *table, const BwReadings *read, const BwCandidate *one)
{
  BwNode *row = bw_node_row (table);
  const char *same = one->same_as != NULL
                         ? bw_node_print (row, _ ("the same timing as %s"), one->same_as->id)
                         : NULL;

  bw_node_cell (row, bw_value_words ("id", one->raster->id));
  bw_node_cell (row, bw_value_read_as (bw_value_fixed ("certainty", one->certainty,
                                                       BW_DIMENSION_FRACTION, "%", 1),
                                       same != NULL ? "" : NULL));
  bw_node_cell (row, bw_value_number ("score", one->score, 3));
  bw_node_cell (row,
                error_of ("line_rate_error_ppm", read->line_rate_hz > 0, one->line_rate_error_ppm));
  bw_node_cell (row, error_of ("field_rate_error_ppm", read->field_rate_hz > 0,
                               one->field_rate_error_ppm));
  bw_node_cell (row, bw_value_number ("lines_per_field", one->lines_per_field, 1));
  bw_node_cell (row, bw_value_read_as (bw_value_words ("name", one->raster->name), same));
  bw_node_cell (row, bw_value_read_as (bw_value_says ("decider", one->decider),
                                       decider_words (row, one)));
  bw_node_member (row, bw_value_words ("same_as", one->same_as != NULL ? one->same_as->id : NULL));
}

static void
add_candidates (BwNode *to, const BwReadings *read, const GArray *candidates)
{
  BwNode *table = bw_node_table (to, "candidates", NULL);

  table->order = "id score line_rate_error_ppm field_rate_error_ppm lines_per_field decider name "
                 "certainty same_as";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("raster"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("sure"), "%");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("score"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("line"), "ppm");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("field"), "ppm");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("lines"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("name"), NULL);
  bw_node_column (table, BW_COLUMN_MORE, _ ("to decide"), NULL);
  for (guint i = 0; i < candidates->len; i++)
    add_candidate (table, read, candidate (candidates, i));
}

/* The answer */

static const BwCandidate *
first_rival (const GArray *candidates)
{
  for (guint i = 1; i < candidates->len; i++)
    if (candidate (candidates, i)->same_as == NULL)
      return candidate (candidates, i);
  return NULL;
}

static const char *
answer_words (BwNode *to, const BwCandidate *best)
{
  const BwValue certainty = bw_value_fixed (NULL, best->certainty, BW_DIMENSION_FRACTION, "%", 1);
  const char *share = bw_node_take (to, bw_value_text (&certainty, bw_result_mark (to->result)));

  if (best->score < SCORE_POOR)
    return bw_node_print (to,
                          _ ("Nothing in the catalogue agrees: %s is the nearest, but the "
                             "readings are beyond their tolerances."),
                          best->raster->id);
  if (best->certainty >= CERTAIN)
    return bw_node_print (to, _ ("It is %1$s: %2$s of all that agrees."), best->raster->id, share);
  return bw_node_print (to, _ ("It may be %1$s, with %2$s of all that agrees; that is not sure."),
                        best->raster->id, share);
}

static void
add_answer (BwNode *to, const GArray *candidates)
{
  const BwCandidate *best = candidate (candidates, 0), *rival = first_rival (candidates);

  bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (to, best));
  if (best->decider == NULL)
    return;
  bw_node_say (to, BW_SAY_NOTE, NULL,
               rival != NULL
                   ? bw_node_print (to, _ ("To tell it from %1$s: %2$s."), rival->raster->id,
                                    best->decider)
                   : bw_node_print (to, _ ("To tell it from others: %s."), best->decider));
}

static void
add_measure (BwNode *to, const BwReadings *read)
{
  double tolerance = read->rate_tolerance > 0 ? read->rate_tolerance : BW_RATE_TOLERANCE;
  const BwValue number = bw_value_number (NULL, tolerance * 1e6, tolerance < 10e-6 ? 3 : 0);
  const char *ppm = bw_node_take (to, bw_value_text (&number, bw_result_mark (to->result)));

  bw_node_say (to, BW_SAY_NOTE, NULL,
               bw_node_print (to,
                              _ ("Score: 1 if all agrees, else exp (-1/2 x the sum of (error / "
                                 "tolerance) squared). Tolerances: rates %s ppm, lines per "
                                 "field 0.25, line sync 5 %%, field sync 0.5 lines; another "
                                 "scan or shape of sync counts as three tolerances. Sure: the "
                                 "share in the scores of all rasters with a timing of their "
                                 "own. ppm: the reading less the raster."),
                              ppm));
}

/**
 * bw_identify_say:
 * @candidates: (element-type BwCandidate): of bw_identify() for @readings
 *
 * Adds what was read, the rasters that come near, which one it is and how sure that is, what else to
 * read, and by which measure. An error is not known where that rate was not read.
 */
void
bw_identify_say (BwNode *to, const BwReadings *readings, const GArray *candidates)
{
  g_return_if_fail (to != NULL && readings != NULL && candidates != NULL);
  add_readings (to, readings);
  add_candidates (to, readings, candidates);
  if (candidates->len > 0)
    add_answer (to, candidates);
  else
    bw_node_say (to, BW_SAY_ANSWER, NULL,
                 _ ("Nothing in the catalogue comes near these readings."));
  add_measure (to, readings);
}
