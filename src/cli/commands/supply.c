/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/service/results.h"

/* As they came; NULL where they did not. */
typedef struct
{
  char *mains;
  char *plate;
  char *field_rate;
  char *reservoir;
  char *load;
  gboolean half_wave;
} SupplyOptions;

static void
options_clear (SupplyOptions *own)
{
  char *all[] = { own->mains, own->plate, own->field_rate, own->reservoir, own->load };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    g_free (all[i]);
}

/* What stands on the plate, in the order in which it is given; each is read as the sheet reads it. */
static const char *const on_plate[] = { "mains_voltage", "mains_frequency", "mains_current" };

/* "100-120V,50/60Hz,2.4A", of which the last parts may be left out. */
static char **
split (const char *option, const char *raw, guint least, guint most, const char *such_as)
{
  g_autofree char *text = bw_argument_utf8 (raw);
  char **parts = bw_argument_parts (raw);
  guint n = g_strv_length (parts);

  if (n >= least && n <= most)
    return parts;
  bw_cli_complain (_ ("%1$s: “%2$s”: write it such as %3$s"), option, text, such_as);
  g_strfreev (parts);
  return NULL;
}

static gboolean
read_plate (const char *raw, BwMonitor *monitor)
{
  g_auto (GStrv) parts = split ("--plate", raw, 1, G_N_ELEMENTS (on_plate), "100-120V,50/60Hz,2.4A");
  g_autoptr (GError) error = NULL;

  if (parts == NULL)
    return FALSE;
  for (guint i = 0; parts[i] != NULL; i++)
    if (!bw_field_parse (bw_field_find (&bw_monitor_fields, on_plate[i]), monitor, parts[i],
                         bw_argument_mark (parts[i]), &error))
      {
        bw_cli_complain ("--plate: %s", error->message);
        return FALSE;
      }
  return TRUE;
}

static gboolean
read_mains (const char *raw, BwSupplyAsk *ask)
{
  g_auto (GStrv) parts = split ("--mains", raw, 2, 2, "230V,50Hz");
  return parts != NULL
         && bw_argument_within ("--mains", parts[0], BW_DIMENSION_VOLTAGE, (BwRange){ 1, 1000 },
                                &ask->supply_v)
         && bw_argument_within ("--mains", parts[1], BW_DIMENSION_FREQUENCY, (BwRange){ 10, 1000 },
                                &ask->supply_hz);
}

static BwCliExit
show (const BwCliCommand *command, const SupplyOptions *own, const BwCliOptions *options)
{
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  BwSupplyAsk ask = { .monitor = monitor, .reservoir.half_wave = own->half_wave };

  if (own->mains == NULL || own->plate == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--mains and --plate are needed"));
  if ((own->reservoir == NULL) != (own->load == NULL))
    return bw_cli_wrong_usage (command->name, _ ("--reservoir and --load go together"));
  if (own->half_wave && own->reservoir == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--half-wave needs --reservoir and --load"));
  if (!read_mains (own->mains, &ask) || !read_plate (own->plate, monitor)
      || !bw_argument_within ("--field-rate", own->field_rate, BW_DIMENSION_FREQUENCY,
                              (BwRange){ 1, 1000 }, &ask.field_hz)
      || !bw_argument_within ("--reservoir", own->reservoir, BW_DIMENSION_CAPACITANCE,
                              (BwRange){ 1e-9, 10 }, &ask.reservoir.farad)
      || !bw_argument_within ("--load", own->load, BW_DIMENSION_CURRENT, (BwRange){ 1e-6, 1000 },
                              &ask.reservoir.load_a))
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_supply_say (bw_result_root (result), &ask);
  return bw_cli_show (options, result);
}

/**
 * bw_cli_supply:
 *
 * breezeway-cli supply: the mains against a rating plate, hum bars, and ripple.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_supply (const BwCliCommand *command, char **args)
{
  SupplyOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "mains", 0, 0, G_OPTION_ARG_STRING, &own.mains, N_ ("At the bench, such as 230V,50Hz"),
      N_ ("VOLTAGE,FREQUENCY") },
    { "plate", 0, 0, G_OPTION_ARG_STRING, &own.plate,
      N_ ("On the rating plate, such as 100-120V,50/60Hz,2.4A"),
      N_ ("VOLTAGE,FREQUENCY,CURRENT") },
    { "field-rate", 0, 0, G_OPTION_ARG_STRING, &own.field_rate, N_ ("For the hum bars"),
      N_ ("RATE") },
    { "reservoir", 0, 0, G_OPTION_ARG_STRING, &own.reservoir,
      N_ ("Behind a rectifier straight on the mains"), N_ ("CAPACITANCE") },
    { "load", 0, 0, G_OPTION_ARG_STRING, &own.load, N_ ("Drawn from the reservoir"),
      N_ ("CURRENT") },
    { "half-wave", 0, 0, G_OPTION_ARG_NONE, &own.half_wave,
      N_ ("The reservoir is charged once in a period, not twice"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = show (command, &own, &options);
  options_clear (&own);
  return result;
}
