/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/results.h"

/* Which raster it is: what was read, what comes near, and how sure that is. */

#define DIGITS 8

#define CERTAIN 0.95

static const BwCandidate *
candidate (const GArray *candidates, guint i)
{
  return &g_array_index (candidates, BwCandidate, i);
}

/* The lines of a field that follow from the rates: a range where their digits leave more than one half
 * line open. */
static BwValue
derived_lines (const BwReadings *read)
{
  double line_hz = read->line_rate_hz, field_hz = read->field_rate_hz;
  BwRange lines = { (line_hz - read->line_rate_uncertainty_hz)
                        / (field_hz + read->field_rate_uncertainty_hz),
                    (line_hz + read->line_rate_uncertainty_hz)
                        / (field_hz - read->field_rate_uncertainty_hz) };
  gboolean settled = round (2 * lines.low) >= round (2 * lines.high);

  if (!(line_hz > 0 && field_hz > read->field_rate_uncertainty_hz))
    return bw_value_if (FALSE, bw_value_quantity (NULL, 0, BW_DIMENSION_LINES, 1));
  if (settled)
    return bw_value_quantity (NULL, bw_readings_lines_per_field (read), BW_DIMENSION_LINES, DIGITS);
  return bw_value_range (NULL, lines, BW_DIMENSION_LINES, 4);
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
    { _ ("Lines per field"), read->lines_per_field, BW_DIMENSION_LINES },
    { _ ("Line sync"), read->line_sync_s, BW_DIMENSION_TIME },
    { _ ("Field sync"), read->field_sync_lines, BW_DIMENSION_LINES },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rates); i++)
    bw_node_figure (section, rates[i].label,
                    bw_value_if (rates[i].value > 0,
                                 bw_value_quantity (NULL, rates[i].value, rates[i].dimension,
                                                    DIGITS)));
  if (!(read->lines_per_field > 0))
    bw_node_figure (section, _ ("Lines per field, from the two rates"), derived_lines (read));
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
             : bw_node_print (row, _ ("To tell it from %1$s: %2$s"), bw_raster_called (row, one->rival), one->decider);
}

/* Rasters with the same timing share one certainty, which the first of them has. */
static void
add_candidate (BwNode *table, const BwReadings *read, const BwCandidate *one)
{
  BwNode *row = bw_node_row (table);
  const char *same = one->same_as != NULL
                         ? bw_node_print (row, _ ("the same timing as %s"),
                                         bw_raster_called (row, one->same_as))
                         : NULL;

  bw_node_cell (row, bw_value_read_as (bw_value_words ("id", one->raster->id),
                                       bw_raster_called (row, one->raster)));
  bw_node_cell (row, bw_value_read_as (bw_value_fixed ("certainty", one->certainty,
                                                       BW_DIMENSION_FRACTION, "%", 1),
                                       same != NULL ? "" : NULL));
  bw_node_cell (row, bw_value_number ("score", one->score, 3));
  bw_node_cell (row,
                error_of ("line_rate_error_ppm", read->line_rate_hz > 0, one->line_rate_error_ppm));
  bw_node_cell (row, error_of ("field_rate_error_ppm", read->field_rate_hz > 0,
                               one->field_rate_error_ppm));
  bw_node_cell (row, bw_value_number ("lines_per_field", one->lines_per_field, 1));
  const char *no_name = bw_result_tells_ids (table->result) ? NULL : "";
  bw_node_cell (row, bw_value_read_as (bw_value_words ("name", one->raster->name),
                                       same != NULL ? same : no_name));
  bw_node_cell (row, bw_value_read_as (bw_value_says ("decider", one->decider),
                                       decider_words (row, one)));
  bw_node_member (row, bw_value_words ("same_as", one->same_as != NULL ? one->same_as->id : NULL));
  bw_node_member (row, bw_value_words ("rival", one->rival != NULL ? one->rival->id : NULL));
}

static void
add_candidates (BwNode *to, const BwReadings *read, const GArray *candidates)
{
  BwNode *table = bw_node_table (to, "candidates", NULL);

  table->order = "id score line_rate_error_ppm field_rate_error_ppm lines_per_field decider name "
                 "certainty same_as rival";
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

/* "0.46 % below" for a rate that was read below that of the raster. */
static const char *
off_words (BwNode *to, double error_ppm)
{
  const BwValue share = bw_value_number (NULL, fabs (error_ppm) / 1e4, 2);
  const char *number = bw_node_take (to, bw_value_text (&share, bw_result_mark (to->result)));
  return error_ppm < 0 ? bw_node_print (to, _ ("%s %% below it"), number)
                       : bw_node_print (to, _ ("%s %% above it"), number);
}

/* How far the readings are off the nearest raster. */
static const char *
nearest_words (BwNode *to, const BwReadings *read, const BwCandidate *best)
{
  const char *id = bw_raster_called (to, best->raster);
  const char *line = off_words (to, best->line_rate_error_ppm);
  const char *field = off_words (to, best->field_rate_error_ppm);

  if (read->line_rate_hz > 0 && read->field_rate_hz > 0)
    return bw_node_print (to,
                          _ ("Nothing in the catalogue agrees: %1$s is the nearest, with the line "
                             "rate %2$s and the field rate %3$s."),
                          id, line, field);
  return bw_node_print (to, _ ("Nothing in the catalogue agrees: %1$s is the nearest; the reading is "
                               "%2$s."),
                        id, read->line_rate_hz > 0 ? line : field);
}

/* The first of each kind of timing that agrees about as well as the best. */
static char *
kinds_that_agree (BwNode *to, const GArray *candidates)
{
  char *names = NULL;

  for (guint i = 0; i < candidates->len; i++)
    {
      if (!bw_candidate_opens_kind (candidates, i))
        continue;
      g_autofree char *before = names;
      const char *name = bw_raster_called (to, candidate (candidates, i)->raster);
      names = before != NULL ? g_strdup_printf (_ ("%1$s, or %2$s"), before, name) : g_strdup (name);
    }
  return names;
}

/* All that agree are of one kind: that much is sure. */
static const char *
one_kind_words (BwNode *to, const BwCandidate *best)
{
  const char *lines = bw_node_quantity (to, best->lines_per_field, BW_DIMENSION_LINES, 5);
  const char *scan = bw_kind_label (&bw_scans, best->raster->scan);
  return bw_node_print (to,
                        _ ("It has %1$s in a field and is %2$s: %3$s comes first, and others of "
                           "that kind agree too."),
                        lines, scan, bw_raster_called (to, best->raster));
}

static const char *
answer_words (BwNode *to, const BwReadings *read, const GArray *candidates)
{
  const BwCandidate *best = candidate (candidates, 0);
  const BwValue certainty = bw_value_fixed (NULL, best->certainty, BW_DIMENSION_FRACTION, "%", 1);
  const char *called = bw_raster_called (to, best->raster);
  const char *share = bw_node_take (to, bw_value_text (&certainty, bw_result_mark (to->result)));

  if (best->score < BW_SCORE_POOR)
    return nearest_words (to, read, best);
  if (best->certainty >= CERTAIN)
    return bw_node_print (to, _ ("It is %1$s: %2$s of all that agrees."), called, share);
  g_autofree char *names = kinds_that_agree (to, candidates);
  if (!bw_readings_decide (read))
    return bw_node_print (to, _ ("It may be %s; one reading is not enough to be sure."), names);
  return best->kinds > 1
             ? bw_node_print (to, _ ("It may be %s: the readings agree with each of these."), names)
             : one_kind_words (to, best);
}

static void
add_answer (BwNode *to, const BwReadings *read, const GArray *candidates)
{
  const BwCandidate *best = candidate (candidates, 0);

  bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (to, read, candidates));
  if (!bw_readings_decide (read))
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 read->line_rate_hz > 0
                     ? _ ("To be sure: read the field rate, or count the lines of a field.")
                     : _ ("To be sure: read the line rate, or count the lines of a field."));
  if (best->decider != NULL)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, _ ("To tell it from %1$s: %2$s."), bw_raster_called (to, best->rival), best->decider));
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
                                 "tolerance) squared), where the error of a rate is what is beyond "
                                 "its digits. Tolerances: rates %s ppm, lines per "
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
    add_answer (to, readings, candidates);
  else
    bw_node_say (to, BW_SAY_ANSWER, NULL,
                 _ ("Nothing in the catalogue comes near these readings."));
  add_measure (to, readings);
}
