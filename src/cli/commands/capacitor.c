/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/service/results.h"

#define HOUR_S 3600.0
#define DAY_H 24.0

/* As they came; NULL where they did not. */
typedef struct
{
  char *value;
  char *voltage;
  char *measured;
  char *esr;
  char *at;
  char *life;
  char *rated_c;
  char *around_c;
  char *ripple;
  char *hours;
} CapacitorOptions;

static void
options_clear (CapacitorOptions *own)
{
  char *all[] = { own->value, own->voltage, own->measured, own->esr,    own->at,
                  own->life,  own->rated_c, own->around_c, own->ripple, own->hours };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    g_free (all[i]);
}

/* Which options go together. */
static const char *
why_not (const CapacitorOptions *own)
{
  gboolean asks_life = own->life != NULL || own->rated_c != NULL || own->around_c != NULL;
  if (own->value == NULL || own->voltage == NULL)
    return _ ("--value and --voltage are needed: what is marked on the part");
  if (own->at != NULL && own->esr == NULL)
    return _ ("--at needs --esr");
  if (asks_life && (own->life == NULL || own->rated_c == NULL || own->around_c == NULL))
    return _ ("--rated-life, --rated-temp and --temp go together");
  if (!asks_life && (own->ripple != NULL || own->hours != NULL))
    return _ ("--ripple and --hours-a-day need --rated-life, --rated-temp and --temp");
  return NULL;
}

static gboolean
read_part (const CapacitorOptions *own, BwCapacitor *part)
{
  const BwRange farads = { 1e-9, 10 };
  const BwRange ohms = { 1e-4, 1e6 };
  return bw_argument_within ("--value", own->value, BW_DIMENSION_CAPACITANCE, farads, &part->farad)
         && bw_argument_within ("--voltage", own->voltage, BW_DIMENSION_VOLTAGE,
                                (BwRange){ 1, 1000 }, &part->rated_v)
         && bw_argument_within ("--measured", own->measured, BW_DIMENSION_CAPACITANCE,
                                (BwRange){ 1e-12, 10 }, &part->measured_f)
         && bw_argument_within ("--esr", own->esr, BW_DIMENSION_RESISTANCE, ohms, &part->esr_ohm)
         && bw_argument_within ("--at", own->at, BW_DIMENSION_FREQUENCY, (BwRange){ 1, 10e6 },
                                &part->esr_hz);
}

static gboolean
read_endurance (const CapacitorOptions *own, BwCapacitorAsk *ask)
{
  BwEndurance *what = &ask->endurance;
  ask->knows_life = own->life != NULL;
  ask->hours_a_day = DAY_H;
  what->ripple = -1;
  return bw_argument_within ("--rated-life", own->life, BW_DIMENSION_DURATION,
                             (BwRange){ HOUR_S, 1e6 * HOUR_S }, &what->rated_s)
         && bw_argument_within ("--rated-temp", own->rated_c, BW_DIMENSION_TEMPERATURE,
                                (BwRange){ 40, 200 }, &what->rated_c)
         && bw_argument_within ("--temp", own->around_c, BW_DIMENSION_TEMPERATURE,
                                (BwRange){ -55, 200 }, &what->around_c)
         && bw_argument_within ("--ripple", own->ripple, BW_N_DIMENSIONS, (BwRange){ 0, 10 },
                                &what->ripple)
         && bw_argument_within ("--hours-a-day", own->hours, BW_N_DIMENSIONS,
                                (BwRange){ 0.01, DAY_H }, &ask->hours_a_day);
}

static BwCliExit
show (const BwCliCommand *command, const CapacitorOptions *own, const BwCliOptions *options)
{
  BwCapacitorAsk ask = { 0 };
  const char *why = why_not (own);

  if (why != NULL)
    return bw_cli_wrong_usage (command->name, why);
  if (!read_part (own, &ask.part) || !read_endurance (own, &ask))
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_capacitor_say (bw_result_root (result), &ask);
  return bw_cli_show (options, result);
}

/**
 * bw_cli_capacitor:
 *
 * breezeway-cli capacitor: what an electrolytic capacitor is worth, how long it lasts, what replaces it.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_capacitor (const BwCliCommand *command, char **args)
{
  CapacitorOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "value", 0, 0, G_OPTION_ARG_STRING, &own.value, N_ ("As marked, such as 1000uF"),
      N_ ("CAPACITANCE") },
    { "voltage", 0, 0, G_OPTION_ARG_STRING, &own.voltage, N_ ("As marked, such as 35V"),
      N_ ("VOLTAGE") },
    { "measured", 0, 0, G_OPTION_ARG_STRING, &own.measured, N_ ("The capacitance that was measured"),
      N_ ("CAPACITANCE") },
    { "esr", 0, 0, G_OPTION_ARG_STRING, &own.esr,
      N_ ("The equivalent series resistance that was measured"), N_ ("RESISTANCE") },
    { "at", 0, 0, G_OPTION_ARG_STRING, &own.at, N_ ("Frequency at which --esr was measured"),
      N_ ("FREQUENCY") },
    { "rated-life", 0, 0, G_OPTION_ARG_STRING, &own.life, N_ ("That its maker promises, such as 2000h"),
      N_ ("HOURS") },
    { "rated-temp", 0, 0, G_OPTION_ARG_STRING, &own.rated_c,
      N_ ("That it is made for, such as 105C"), N_ ("TEMPERATURE") },
    { "temp", 0, 0, G_OPTION_ARG_STRING, &own.around_c, N_ ("Around it at work, such as 65C"),
      N_ ("TEMPERATURE") },
    { "ripple", 0, 0, G_OPTION_ARG_STRING, &own.ripple,
      N_ ("Ripple current over the rated one, such as 1.3"), N_ ("RATIO") },
    { "hours-a-day", 0, 0, G_OPTION_ARG_STRING, &own.hours,
      N_ ("That the set is on (default 24)"), N_ ("HOURS") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = show (command, &own, &options);
  options_clear (&own);
  return result;
}
