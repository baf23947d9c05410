/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/circuit/drive.h"
#include "core/circuit/results.h"
#include "core/hookup/results.h"
#include "core/raster/results.h"

/* As they came; NULL where they did not. */
typedef struct
{
  char *open;
  char *loaded;
  char *level;
  char *behind;
  char *wanted;
  char *load;
  char **drops;
  char **drivers;
  char *accuracy;
  int pin;
  char *reading;
  char *subcarrier;
} WorkBackOptions;

/* A reading on a scope (common practice, no source). */
#define USUAL_ACCURACY 0.03

static gboolean
read_positive (const char *option, const char *raw, BwDimension dimension, double *value)
{
  return raw == NULL || bw_argument_quantity (option, raw, dimension, value);
}

static gboolean
read_load (const WorkBackOptions *own, double *load_ohm)
{
  *load_ohm = BW_VIDEO_OHM;
  return read_positive ("--load", own->load, BW_DIMENSION_RESISTANCE, load_ohm);
}

static gboolean
read_accuracy (const WorkBackOptions *own, double *accuracy)
{
  *accuracy = USUAL_ACCURACY;
  if (!read_positive ("--accuracy", own->accuracy, BW_DIMENSION_FRACTION, accuracy))
    return FALSE;
  if (*accuracy < 0.5)
    return TRUE;
  bw_cli_complain (_ ("--accuracy: less than 50 %% is allowed"));
  return FALSE;
}

/* Each question reads what it needs and says its answer; FALSE: the input is bad, and that was said. */

static gboolean
say_source (BwNode *to, const WorkBackOptions *own)
{
  BwSourceAsk ask = { 0 };
  if (!read_positive ("--open", own->open, BW_DIMENSION_VOLTAGE, &ask.open_v)
      || !read_positive ("--loaded", own->loaded, BW_DIMENSION_VOLTAGE, &ask.loaded_v)
      || !read_load (own, &ask.load_ohm))
    return FALSE;
  if (ask.loaded_v > ask.open_v)
    {
      bw_cli_complain (_ ("--loaded: the level with a load cannot be more than --open, the level without"));
      return FALSE;
    }
  bw_source_ask_say (to, &ask);
  return TRUE;
}

static gboolean
say_driver (BwNode *to, const WorkBackOptions *own)
{
  BwDriverAsk ask = { 0 };
  if (!read_positive ("--level", own->level, BW_DIMENSION_VOLTAGE, &ask.level_v)
      || !read_positive ("--behind", own->behind, BW_DIMENSION_RESISTANCE, &ask.series_ohm)
      || !read_positive ("--wanted", own->wanted, BW_DIMENSION_VOLTAGE, &ask.wanted_v)
      || !read_load (own, &ask.load_ohm))
    return FALSE;
  bw_driver_ask_say (to, &ask);
  return TRUE;
}

static gboolean
say_level (BwNode *to, const WorkBackOptions *own)
{
  double level_v = 0, accuracy;
  if (!read_positive ("--level", own->level, BW_DIMENSION_VOLTAGE, &level_v)
      || !read_accuracy (own, &accuracy))
    return FALSE;
  bw_level_fits_say (to, level_v, accuracy);
  return TRUE;
}

/* "3V,2.5V,100ohm": as many parts as @n. */
static gboolean
split (const char *option, const char *raw, guint n, const char *form, char ***parts)
{
  g_autofree char *text = bw_argument_utf8 (raw);
  *parts = bw_argument_parts (raw);
  if (g_strv_length (*parts) == n)
    return TRUE;
  bw_cli_complain (_ ("%1$s: “%2$s” is not of the form %3$s"), option, text, form);
  return FALSE;
}

static gboolean
read_drop (const char *raw, BwDrop *drop)
{
  g_auto (GStrv) parts = NULL;
  if (!split ("--drop", raw, 3, "3V,2.5V,100ohm", &parts)
      || !bw_argument_quantity ("--drop", parts[0], BW_DIMENSION_VOLTAGE, &drop->before_v)
      || !bw_argument_quantity ("--drop", parts[1], BW_DIMENSION_VOLTAGE, &drop->after_v)
      || !bw_argument_quantity ("--drop", parts[2], BW_DIMENSION_RESISTANCE, &drop->series_ohm))
    return FALSE;
  if (drop->after_v < drop->before_v)
    return TRUE;
  bw_cli_complain (_ ("--drop: behind the resistor the level must be less than before it"));
  return FALSE;
}

static gboolean
too_many (const char *option, char **given, guint most)
{
  if (g_strv_length (given) <= most)
    return FALSE;
  bw_cli_complain (_ ("%1$s: at most %2$u are allowed"), option, most);
  return TRUE;
}

static gboolean
say_drops (BwNode *to, const WorkBackOptions *own)
{
  BwDropsAsk ask = { 0 };
  if (!read_accuracy (own, &ask.accuracy) || too_many ("--drop", own->drops, BW_DROPS_MAX))
    return FALSE;
  for (; own->drops[ask.n] != NULL; ask.n++)
    if (!read_drop (own->drops[ask.n], &ask.drops[ask.n]))
      return FALSE;
  bw_drops_say (to, &ask);
  return TRUE;
}

static gboolean
say_node (BwNode *to, const WorkBackOptions *own)
{
  BwNodeCase node = { 0 };
  if (!read_load (own, &node.load_ohm) || too_many ("--driver", own->drivers, BW_DRIVERS_MAX))
    return FALSE;
  for (; own->drivers[node.n] != NULL; node.n++)
    {
      g_auto (GStrv) parts = NULL;
      BwNodeDriver *driver = &node.drivers[node.n];
      if (!split ("--driver", own->drivers[node.n], 2, "5V,470ohm", &parts)
          || !bw_argument_quantity ("--driver", parts[0], BW_DIMENSION_VOLTAGE, &driver->open_v)
          || !bw_argument_quantity ("--driver", parts[1], BW_DIMENSION_RESISTANCE, &driver->ohm))
        return FALSE;
    }
  bw_node_case_say (to, &node);
  return TRUE;
}

static gboolean
say_pin (BwNode *to, const WorkBackOptions *own)
{
  double level_v = 0;
  if (!bw_pin_is_known (own->pin))
    {
      bw_cli_complain (_ ("--pin: only pins 8 and 16 of the 21-pin connector select something"));
      return FALSE;
    }
  if (!read_positive ("--reading", own->reading, BW_DIMENSION_VOLTAGE, &level_v))
    return FALSE;
  bw_pin_reading_say (to, own->pin, level_v);
  return TRUE;
}

static gboolean
say_subcarrier (BwNode *to, const WorkBackOptions *own)
{
  double hz = 0;
  if (!read_positive ("--subcarrier", own->subcarrier, BW_DIMENSION_FREQUENCY, &hz))
    return FALSE;
  bw_subcarrier_say (to, hz);
  return TRUE;
}

typedef enum
{
  GIVEN_OPEN = 1 << 0,
  GIVEN_LOADED = 1 << 1,
  GIVEN_LEVEL = 1 << 2,
  GIVEN_BEHIND = 1 << 3,
  GIVEN_WANTED = 1 << 4,
  GIVEN_LOAD = 1 << 5,
  GIVEN_DROP = 1 << 6,
  GIVEN_DRIVER = 1 << 7,
  GIVEN_ACCURACY = 1 << 8,
  GIVEN_PIN = 1 << 9,
  GIVEN_READING = 1 << 10,
  GIVEN_SUBCARRIER = 1 << 11
} Given;

/* The questions: what each needs, and what it takes beside that. */
static const struct
{
  guint needs;
  guint takes;
  gboolean (*say) (BwNode *to, const WorkBackOptions *own);
} questions[] = {
  { GIVEN_OPEN | GIVEN_LOADED, GIVEN_LOAD, say_source },
  { GIVEN_LEVEL | GIVEN_BEHIND, GIVEN_LOAD | GIVEN_WANTED, say_driver },
  { GIVEN_LEVEL, GIVEN_ACCURACY, say_level },
  { GIVEN_DROP, GIVEN_ACCURACY, say_drops },
  { GIVEN_DRIVER, GIVEN_LOAD, say_node },
  { GIVEN_PIN | GIVEN_READING, 0, say_pin },
  { GIVEN_SUBCARRIER, 0, say_subcarrier },
};

static guint
given (const WorkBackOptions *own)
{
  return (own->open != NULL ? GIVEN_OPEN : 0) | (own->loaded != NULL ? GIVEN_LOADED : 0)
         | (own->level != NULL ? GIVEN_LEVEL : 0) | (own->behind != NULL ? GIVEN_BEHIND : 0)
         | (own->wanted != NULL ? GIVEN_WANTED : 0) | (own->load != NULL ? GIVEN_LOAD : 0)
         | (own->drops != NULL ? GIVEN_DROP : 0) | (own->drivers != NULL ? GIVEN_DRIVER : 0)
         | (own->accuracy != NULL ? GIVEN_ACCURACY : 0) | (own->pin != 0 ? GIVEN_PIN : 0)
         | (own->reading != NULL ? GIVEN_READING : 0)
         | (own->subcarrier != NULL ? GIVEN_SUBCARRIER : 0);
}

static BwCliExit
answer (const BwCliCommand *command, const WorkBackOptions *own, const BwCliOptions *options)
{
  guint all = given (own);
  for (gsize i = 0; i < G_N_ELEMENTS (questions); i++)
    {
      if ((all & questions[i].needs) != questions[i].needs
          || (all & ~(questions[i].needs | questions[i].takes)))
        continue;
      g_autoptr (BwResult) result = bw_cli_result_new (options);
      if (!questions[i].say (bw_result_root (result), own))
        return BW_CLI_BAD_INPUT;
      return bw_cli_show (options, result);
    }
  return bw_cli_wrong_usage (command->name,
                             _ ("give --open and --loaded, or --level alone or with --behind, or --drop, "
                                "or --driver, or --pin and --reading, or --subcarrier"));
}

static void
options_clear (WorkBackOptions *own)
{
  g_free (own->open);
  g_free (own->loaded);
  g_free (own->level);
  g_free (own->behind);
  g_free (own->wanted);
  g_free (own->load);
  g_strfreev (own->drops);
  g_strfreev (own->drivers);
  g_free (own->accuracy);
  g_free (own->reading);
  g_free (own->subcarrier);
}

/**
 * bw_cli_work_back:
 *
 * breezeway-cli work-back: from readings back to the source, the driver, the load or the setting that gives
 * them.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_work_back (const BwCliCommand *command, char **args)
{
  WorkBackOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "open", 0, 0, G_OPTION_ARG_STRING, &own.open,
      N_ ("A source's level without load; with --loaded: its resistance"), N_ ("VOLTAGE") },
    { "loaded", 0, 0, G_OPTION_ARG_STRING, &own.loaded, N_ ("The same level across --load"),
      N_ ("VOLTAGE") },
    { "level", 0, 0, G_OPTION_ARG_STRING, &own.level,
      N_ ("A level across --load; with --behind: the driver's voltage; alone: what it fits"),
      N_ ("VOLTAGE") },
    { "behind", 0, 0, G_OPTION_ARG_STRING, &own.behind,
      N_ ("With --level: all resistance between the driver and the load"), N_ ("RESISTANCE") },
    { "wanted", 0, 0, G_OPTION_ARG_STRING, &own.wanted,
      N_ ("With --behind: the level that is wanted in place of it"), N_ ("VOLTAGE") },
    { "load", 0, 0, G_OPTION_ARG_STRING, &own.load, N_ ("The load (default 75 ohm)"),
      N_ ("RESISTANCE") },
    { "drop", 0, 0, G_OPTION_ARG_STRING_ARRAY, &own.drops,
      N_ ("Readings before and behind a known resistor: the load; may be given several times"),
      N_ ("BEFORE,AFTER,RESISTANCE") },
    { "driver", 0, 0, G_OPTION_ARG_STRING_ARRAY, &own.drivers,
      N_ ("One of several outputs into one node, the most significant first: levels and steps"),
      N_ ("VOLTAGE,RESISTANCE") },
    { "accuracy", 0, 0, G_OPTION_ARG_STRING, &own.accuracy,
      N_ ("With --drop or --level alone: of each reading (default 3 %)"), N_ ("SHARE") },
    { "pin", 0, 0, G_OPTION_ARG_INT, &own.pin,
      N_ ("With --reading: a pin of the 21-pin connector that selects: 8 or 16"), N_ ("N") },
    { "reading", 0, 0, G_OPTION_ARG_STRING, &own.reading, N_ ("The level on --pin"),
      N_ ("VOLTAGE") },
    { "subcarrier", 0, 0, G_OPTION_ARG_STRING, &own.subcarrier,
      N_ ("A measured subcarrier: of which colour systems it is"), N_ ("FREQUENCY") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = answer (command, &own, &options);
  options_clear (&own);
  return result;
}
