/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "core/bench/results.h"

#define MOST 10

/* What the options say, all as it came; owned. */
typedef struct
{
  char *line_rate;
  char *field_rate;
  char *lines_per_field;
  char *line_sync;
  char *field_sync;
  char *tolerance;
  char *accuracy;
  char *sheet;
  gboolean interlaced;
  gboolean progressive;
  gboolean tri_level;
  gboolean bi_level;
  int most;
} IdentifyOptions;

static void
clear_options (IdentifyOptions *own)
{
  g_free (own->line_rate);
  g_free (own->field_rate);
  g_free (own->lines_per_field);
  g_free (own->line_sync);
  g_free (own->field_sync);
  g_free (own->tolerance);
  g_free (own->accuracy);
  g_free (own->sheet);
}

static const char *
find_fault (const IdentifyOptions *own)
{
  if (own->line_rate == NULL && own->field_rate == NULL)
    return _ ("--line-rate or --field-rate is needed");
  if (own->interlaced && own->progressive)
    return _ ("--interlaced does not go with --progressive");
  if (own->tri_level && own->bi_level)
    return _ ("--tri-level does not go with --bi-level");
  if (own->most < 1)
    return _ ("--most takes 1 or more");
  return NULL;
}

/* @raw as typed, if it was given; a bare number has the only unit in which it can be a rate of a
 * raster. */
static gboolean
read_rate (const char *option, const char *raw, BwRange allowed, double accuracy, double *rate_hz,
           double *uncertainty_hz)
{
  g_autoptr (GError) error = NULL;
  if (raw == NULL)
    return TRUE;
  g_autofree char *text = bw_argument_utf8 (raw);
  const BwReadAs as = { .mark = bw_argument_mark (text), .allowed = allowed };
  BwMeasured measured;

  if (!bw_quantity_read (text, BW_DIMENSION_FREQUENCY, &as, &measured, &error))
    bw_cli_complain ("%s: %s", option, error->message);
  else if (!(measured.value > 0))
    bw_cli_complain (_ ("%1$s: “%2$s” must be more than zero"), option, text);
  else
    {
      *rate_hz = measured.value;
      *uncertainty_hz = bw_measured_uncertainty (&measured, accuracy);
      return TRUE;
    }
  return FALSE;
}

static gboolean
read_rates (const IdentifyOptions *own, double accuracy, BwReadings *read)
{
  const BwRange line_rates = { BW_LINE_RATE_MIN_HZ, BW_LINE_RATE_MAX_HZ };
  const BwRange field_rates = { BW_FIELD_RATE_MIN_HZ, BW_FIELD_RATE_MAX_HZ };
  return read_rate ("--line-rate", own->line_rate, line_rates, accuracy, &read->line_rate_hz,
                    &read->line_rate_uncertainty_hz)
         && read_rate ("--field-rate", own->field_rate, field_rates, accuracy,
                       &read->field_rate_hz, &read->field_rate_uncertainty_hz);
}

static gboolean
read_readings (const IdentifyOptions *own, double accuracy, BwReadings *read)
{
  const struct
  {
    const char *option;
    const char *raw;
    BwDimension dimension;
    double *value;
  } given[] = {
    { "--lines-per-field", own->lines_per_field, BW_DIMENSION_LINES, &read->lines_per_field },
    { "--line-sync", own->line_sync, BW_DIMENSION_TIME, &read->line_sync_s },
    { "--field-sync", own->field_sync, BW_DIMENSION_LINES, &read->field_sync_lines },
    { "--tolerance", own->tolerance, BW_DIMENSION_FRACTION, &read->rate_tolerance },
    { "--accuracy", own->accuracy, BW_DIMENSION_FRACTION, &accuracy },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (given); i++)
    if (given[i].raw != NULL
        && !bw_argument_quantity (given[i].option, given[i].raw, given[i].dimension,
                                  given[i].value))
      return FALSE;
  if (!read_rates (own, accuracy, read))
    return FALSE;
  read->scan_known = own->interlaced || own->progressive;
  read->scan = own->interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  read->shape_known = own->tri_level || own->bi_level;
  read->shape = own->tri_level ? BW_SHAPE_TRILEVEL : BW_SHAPE_BILEVEL;
  return TRUE;
}

static BwCliExit
identify (const BwCliCommand *command, const IdentifyOptions *own, const BwCliOptions *options)
{
  const char *fault = find_fault (own);
  BwReadings readings = { 0 };

  if (fault != NULL)
    return bw_cli_wrong_usage (command->name, fault);
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet
      = own->sheet != NULL ? bw_cli_load_sheet (own->sheet, catalogue) : NULL;
  if (own->sheet != NULL && sheet == NULL)
    return BW_CLI_BAD_INPUT;
  double accuracy = sheet != NULL ? bw_sheet_accuracy (sheet, BW_DIMENSION_FREQUENCY) : 0;
  if (!read_readings (own, accuracy, &readings))
    return BW_CLI_BAD_INPUT;
  g_autoptr (GArray) candidates = bw_identify (&readings, catalogue, (guint) own->most);
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_identify_say (bw_result_root (result), &readings, candidates);
  if (candidates->len == 0 || g_array_index (candidates, BwCandidate, 0).score < BW_SCORE_POOR)
    bw_node_say (bw_result_root (result), BW_SAY_NOTE, NULL,
                 _ ("A wider --tolerance finds what is farther off."));
  return bw_cli_show (options, result);
}

/**
 * bw_cli_identify:
 *
 * breezeway-cli identify: which rasters of the catalogue agree with what was read.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_identify (const BwCliCommand *command, char **args)
{
  IdentifyOptions own = { .most = MOST };
  const GOptionEntry entries[] = {
    { "line-rate", 0, 0, G_OPTION_ARG_FILENAME, &own.line_rate,
      N_ ("Line rate from a counter, such as 15.734kHz"), N_ ("FREQUENCY") },
    { "field-rate", 0, 0, G_OPTION_ARG_FILENAME, &own.field_rate,
      N_ ("Field rate from a counter, such as 59.94Hz"), N_ ("FREQUENCY") },
    { "lines-per-field", 0, 0, G_OPTION_ARG_FILENAME, &own.lines_per_field,
      N_ ("Lines counted from one field sync to the next; they follow from both rates"), N_ ("N") },
    { "interlaced", 0, 0, G_OPTION_ARG_NONE, &own.interlaced, N_ ("Interlace was seen"), NULL },
    { "progressive", 0, 0, G_OPTION_ARG_NONE, &own.progressive, N_ ("No interlace was seen"),
      NULL },
    { "line-sync", 0, 0, G_OPTION_ARG_FILENAME, &own.line_sync,
      N_ ("Width of line sync, such as 4.7us"), N_ ("TIME") },
    { "field-sync", 0, 0, G_OPTION_ARG_FILENAME, &own.field_sync,
      N_ ("Length of field sync in lines"), N_ ("N") },
    { "tri-level", 0, 0, G_OPTION_ARG_NONE, &own.tri_level, N_ ("Sync was seen with three levels"),
      NULL },
    { "bi-level", 0, 0, G_OPTION_ARG_NONE, &own.bi_level, N_ ("Sync was seen with two levels"),
      NULL },
    { "tolerance", 0, 0, G_OPTION_ARG_FILENAME, &own.tolerance,
      N_ ("Of the source, in both rates, such as 0.1%; without it 0.02%"), N_ ("PERCENT") },
    { "accuracy", 0, 0, G_OPTION_ARG_FILENAME, &own.accuracy,
      N_ ("Of the counter, such as 0.01%; without it as in the sheet, else the digits tell"),
      N_ ("PERCENT") },
    { "sheet", 0, 0, G_OPTION_ARG_FILENAME, &own.sheet,
      N_ ("A bench sheet that holds the accuracy of the counter"), N_ ("SHEET") },
    { "most", 0, 0, G_OPTION_ARG_INT, &own.most,
      N_ ("How many rasters to show at most; without it 10"), N_ ("N") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = identify (command, &own, &options);
  clear_options (&own);
  return result;
}
