/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/service/results.h"

/* As they came; NULL where they did not. */
typedef struct
{
  char *capacitor;
  char *resistance;
  char *inductance;
  char *scan;
  char *field_rate;
  char *retrace;
  char *rows;
} FieldOptions;

static void
options_clear (FieldOptions *own)
{
  char *all[] = { own->capacitor,  own->resistance, own->inductance, own->scan,
                  own->field_rate, own->retrace,    own->rows };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    g_free (all[i]);
}

/* Which options go together. */
static const char *
why_not (const FieldOptions *own)
{
  if ((own->capacitor == NULL) == (own->rows == NULL))
    return _ ("either --capacitor or --rows is needed");
  if (own->resistance == NULL)
    return _ ("--resistance is needed: of the yoke and what is in series with it");
  if ((own->scan == NULL) == (own->field_rate == NULL))
    return _ ("either --scan or --field-rate is needed");
  if (own->rows != NULL && own->inductance != NULL)
    return _ ("--inductance does not go with --rows");
  return NULL;
}

/* "22,18,12": first and last height, and how many rows there are. */
static gboolean
read_rows (const char *raw, BwFieldRows *rows)
{
  g_autofree char *text = bw_argument_utf8 (raw);
  g_auto (GStrv) parts = bw_argument_parts (raw);
  const BwRange heights = { 1e-6, 1e6 };
  double n;

  if (g_strv_length (parts) != 3)
    {
      bw_cli_complain (_ ("--rows: “%s”: write the height of the first row, that of the last, and how many "
                          "there are, such as 22,18,12"),
                       text);
      return FALSE;
    }
  if (!bw_argument_within ("--rows", parts[0], BW_N_DIMENSIONS, heights, &rows->first)
      || !bw_argument_within ("--rows", parts[1], BW_N_DIMENSIONS, heights, &rows->last)
      || !bw_argument_within ("--rows", parts[2], BW_N_DIMENSIONS,
                              (BwRange){ 2, BW_FIELD_ROWS_MAX }, &n))
    return FALSE;
  rows->n = (guint) n;
  if (bw_near (n, rows->n, 0))
    return TRUE;
  bw_cli_complain (_ ("--rows: “%s” is not a whole number of rows"), parts[2]);
  return FALSE;
}

/* The scan is what the field leaves beside its retrace. */
static gboolean
read_scan (const FieldOptions *own, BwFieldStage *stage)
{
  const BwRange times = { 1e-6, 10 };
  double hz = 0;
  if (!bw_argument_within ("--scan", own->scan, BW_DIMENSION_TIME, times, &stage->scan_s)
      || !bw_argument_within ("--field-rate", own->field_rate, BW_DIMENSION_FREQUENCY,
                              (BwRange){ 1, 1000 }, &hz)
      || !bw_argument_within ("--retrace", own->retrace, BW_DIMENSION_TIME, times,
                              &stage->retrace_s))
    return FALSE;
  if (own->scan != NULL)
    return TRUE;
  stage->scan_s = 1 / hz - stage->retrace_s;
  if (stage->scan_s > stage->retrace_s)
    return TRUE;
  bw_cli_complain (_ ("--retrace: “%s”: less than half of the field is allowed"), own->retrace);
  return FALSE;
}

static gboolean
read_stage (const FieldOptions *own, BwFieldStage *stage)
{
  return bw_argument_within ("--capacitor", own->capacitor, BW_DIMENSION_CAPACITANCE,
                             (BwRange){ 1e-9, 10 }, &stage->farad)
         && bw_argument_within ("--resistance", own->resistance, BW_DIMENSION_RESISTANCE,
                                (BwRange){ 1e-3, 1e6 }, &stage->ohm)
         && bw_argument_within ("--inductance", own->inductance, BW_DIMENSION_INDUCTANCE,
                                (BwRange){ 0, 100 }, &stage->henry)
         && read_scan (own, stage);
}

static BwCliExit
show (const BwCliCommand *command, const FieldOptions *own, const BwCliOptions *options)
{
  BwFieldScanAsk ask = { 0 };
  const char *why = why_not (own);

  if (why != NULL)
    return bw_cli_wrong_usage (command->name, why);
  if (!read_stage (own, &ask.stage) || (own->rows != NULL && !read_rows (own->rows, &ask.rows)))
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_field_scan_say (bw_result_root (result), &ask);
  return bw_cli_show (options, result);
}

/**
 * bw_cli_field_scan:
 *
 * breezeway-cli field-scan: what the coupling capacitor of the field output makes of the picture, and
 * back.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_field_scan (const BwCliCommand *command, char **args)
{
  FieldOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "capacitor", 'c', 0, G_OPTION_ARG_STRING, &own.capacitor, N_ ("In series with the yoke"),
      N_ ("CAPACITANCE") },
    { "rows", 0, 0, G_OPTION_ARG_STRING, &own.rows,
      N_ ("Find the capacitor from equal rows of a test picture: height of the first, of the last, "
          "and their number"),
      N_ ("FIRST,LAST,COUNT") },
    { "resistance", 0, 0, G_OPTION_ARG_STRING, &own.resistance,
      N_ ("Of the yoke and what is in series with it"), N_ ("RESISTANCE") },
    { "inductance", 0, 0, G_OPTION_ARG_STRING, &own.inductance, N_ ("Of the yoke (default none)"),
      N_ ("INDUCTANCE") },
    { "scan", 0, 0, G_OPTION_ARG_STRING, &own.scan, N_ ("Time from the top to the bottom"),
      N_ ("TIME") },
    { "field-rate", 0, 0, G_OPTION_ARG_STRING, &own.field_rate,
      N_ ("In place of --scan: of which --retrace is taken off"), N_ ("RATE") },
    { "retrace", 0, 0, G_OPTION_ARG_STRING, &own.retrace, N_ ("Time of the flyback (default none)"),
      N_ ("TIME") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = show (command, &own, &options);
  options_clear (&own);
  return result;
}
