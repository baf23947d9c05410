/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "identify-view.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"

/* Beyond three tolerances in one reading, or as much in all together, a raster is no answer. */
#define SCORE_POOR exp (-0.5 * 3 * 3)
#define CERTAIN 0.95

static const BwCandidate *
candidate (const BwIdentifyView *view, guint i)
{
  return &g_array_index (view->candidates, BwCandidate, i);
}

/* What was read */

static void
add_reading (BwTable *table, const char *label, double value, BwDimension dimension)
{
  if (!(value > 0))
    return;
  g_autofree char *text = bw_quantity_format (value, dimension, 8, bw_quantity_locale_mark ());
  bw_table_add_row (table, label, text, NULL);
}

static void
append_readings (const BwIdentifyView *view, GString *to)
{
  const BwReadings *read = view->readings;
  double lines = bw_readings_lines_per_field (read);
  g_autoptr (BwTable) table = bw_table_new (2);

  g_string_append_printf (to, "%s\n", _ ("Read"));
  add_reading (table, _ ("Line rate"), read->line_rate_hz, BW_DIMENSION_FREQUENCY);
  add_reading (table, _ ("Field rate"), read->field_rate_hz, BW_DIMENSION_FREQUENCY);
  add_reading (table,
               read->lines_per_field > 0 ? _ ("Lines per field")
                                         : _ ("Lines per field, from the two rates"),
               lines, BW_DIMENSION_LINES);
  if (read->scan_known)
    bw_table_add_row (table, _ ("Scan"), bw_kind_label (&bw_scans, read->scan), NULL);
  add_reading (table, _ ("Line sync"), read->line_sync_s, BW_DIMENSION_TIME);
  add_reading (table, _ ("Field sync"), read->field_sync_lines, BW_DIMENSION_LINES);
  if (read->shape_known)
    bw_table_add_row (table, _ ("Shape of sync"), bw_kind_label (&bw_sync_shapes, read->shape),
                      NULL);
  bw_table_append_to (table, to, 2);
}

/* The table of candidates */

static char *
error_text (gboolean was_read, double error_ppm)
{
  if (!was_read)
    return g_strdup ("");
  g_autofree char *number = bw_words_fixed (fabs (error_ppm), 1);
  return g_strconcat (error_ppm < 0 ? "-" : "+", number, NULL);
}

static void
add_candidate (BwTable *table, const BwIdentifyView *view, const BwCandidate *one)
{
  g_autofree char *score = bw_words_fixed (one->score, 3);
  g_autofree char *share = bw_words_fixed (one->certainty * 100, 1);
  g_autofree char *line = error_text (view->readings->line_rate_hz > 0, one->line_rate_error_ppm);
  g_autofree char *field = error_text (view->readings->field_rate_hz > 0,
                                       one->field_rate_error_ppm);
  g_autofree char *lines = bw_words_fixed (one->lines_per_field, 1);
  g_autofree char *name = NULL;

  if (one->same_as != NULL)
    {
      g_free (share);
      share = g_strdup ("");
      name = g_strdup_printf (_ ("the same timing as %s"), one->same_as->id);
    }
  bw_table_add_row (table, one->raster->id, score, share, line, field, lines,
                    name != NULL ? name : one->raster->name, NULL);
}

static void
append_candidates (const BwIdentifyView *view, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (7);

  for (guint column = 1; column <= 5; column++)
    bw_table_set_right (table, column);
  bw_table_add_row (table, _ ("raster"), _ ("score"), _ ("%"), _ ("line ppm"), _ ("field ppm"),
                    _ ("lines"), _ ("name"), NULL);
  for (guint i = 0; i < view->candidates->len; i++)
    add_candidate (table, view, candidate (view, i));
  g_string_append_c (to, '\n');
  bw_table_append_to (table, to, 0);
}

/* The answer */

static const BwCandidate *
first_rival (const BwIdentifyView *view)
{
  for (guint i = 1; i < view->candidates->len; i++)
    if (candidate (view, i)->same_as == NULL)
      return candidate (view, i);
  return NULL;
}

static char *
percent (double share)
{
  g_autofree char *number = bw_words_fixed (share * 100, 1);
  return g_strdup_printf (_ ("%s\u00a0%%"), number);
}

static char *
answer_text (const BwIdentifyView *view)
{
  const BwCandidate *best = candidate (view, 0);
  g_autofree char *share = percent (best->certainty);

  if (best->score < SCORE_POOR)
    return g_strdup_printf (_ ("Nothing in the catalogue agrees: %s is the nearest, but the "
                               "readings are beyond their tolerances."),
                            best->raster->id);
  if (best->certainty >= CERTAIN)
    return g_strdup_printf (_ ("It is %s: %s of all that agrees."), best->raster->id, share);
  return g_strdup_printf (_ ("It may be %s, with %s of all that agrees; that is not sure."),
                          best->raster->id, share);
}

static void
append_answer (const BwIdentifyView *view, GString *to)
{
  const BwCandidate *best = candidate (view, 0);
  const BwCandidate *rival = first_rival (view);
  g_autofree char *answer = answer_text (view);

  g_string_append_c (to, '\n');
  bw_words_append_wrapped (to, "", 0, answer);
  if (best->decider == NULL)
    return;
  g_autofree char *decider = rival != NULL ? g_strdup_printf (_ ("To tell it from %s: %s."),
                                                              rival->raster->id, best->decider)
                                           : g_strdup_printf (_ ("To tell it from others: %s."),
                                                              best->decider);
  bw_words_append_wrapped (to, "", 0, decider);
}

static void
append_measure (const BwIdentifyView *view, GString *to)
{
  double tolerance = view->readings->rate_tolerance > 0 ? view->readings->rate_tolerance
                                                        : BW_RATE_TOLERANCE;
  g_autofree char *ppm = bw_words_fixed (tolerance * 1e6, tolerance < 10e-6 ? 3 : 0);
  g_autofree char *says = g_strdup_printf (
      _ ("Score: 1 if all agrees, else exp (-1/2 x the sum of (error / tolerance) squared). "
         "Tolerances: rates %s ppm, lines per field 0.25, line sync 5 %%, field sync 0.5 lines; "
         "another scan or shape of sync counts as three tolerances. %%: the share in the scores of "
         "all rasters with a timing of their own. ppm: the reading less the raster."),
      ppm);
  g_string_append_c (to, '\n');
  bw_words_append_wrapped (to, "", 0, says);
}

/**
 * bw_identify_view_append_text:
 *
 * Appends what was read, the rasters that come near, which one it is and how sure that is, what
 * else to read, and by which measure.
 */
void
bw_identify_view_append_text (const BwIdentifyView *view, GString *to)
{
  append_readings (view, to);
  if (view->candidates->len > 0)
    {
      append_candidates (view, to);
      append_answer (view, to);
    }
  else
    g_string_append_printf (
        to, "\n%s\n",
        _ ("Nothing in the catalogue comes near. A wider --tolerance finds what is "
           "farther off."));
  append_measure (view, to);
}

static void
candidate_json (const BwIdentifyView *view, const BwCandidate *one, BwJson *json)
{
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "id", one->raster->id);
  bw_json_number (json, "score", one->score);
  bw_json_number_if (json, "line_rate_error_ppm", view->readings->line_rate_hz > 0,
                     one->line_rate_error_ppm);
  bw_json_number_if (json, "field_rate_error_ppm", view->readings->field_rate_hz > 0,
                     one->field_rate_error_ppm);
  bw_json_number (json, "lines_per_field", one->lines_per_field);
  bw_json_string (json, "decider", one->decider);
  bw_json_string (json, "name", one->raster->name);
  bw_json_number (json, "certainty", one->certainty);
  bw_json_string (json, "same_as", one->same_as != NULL ? one->same_as->id : NULL);
  bw_json_end_object (json);
}

/**
 * bw_identify_view_to_json:
 *
 * Writes the array "candidates" in an object that is open in @json. An error is null where that
 * rate was not read.
 */
void
bw_identify_view_to_json (const BwIdentifyView *view, BwJson *json)
{
  bw_json_begin_array (json, "candidates");
  for (guint i = 0; i < view->candidates->len; i++)
    candidate_json (view, candidate (view, i), json);
  bw_json_end_array (json);
}
