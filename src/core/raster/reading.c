/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading.h"

#include <math.h>
#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "bw-catalogue-resources.h"
#include "colour-system.h"
#include "core/base/keyfile.h"

static const BwKind readings[BW_N_READINGS] = {
  [BW_READING_LINE_PERIOD] = { "line_period", N_ ("Line period") },
  [BW_READING_LINE_BLANKING] = { "line_blanking", N_ ("Line blanking") },
  [BW_READING_FRONT_PORCH] = { "front_porch", N_ ("Front porch") },
  [BW_READING_LINE_SYNC] = { "line_sync", N_ ("Line sync") },
  [BW_READING_SYNC_TO_PICTURE] = { "sync_to_picture", N_ ("Sync edge to picture") },
  [BW_READING_BURST_START] = { "burst_start", N_ ("Sync edge to burst") },
  [BW_READING_BURST_LENGTH] = { "burst_length", N_ ("Burst length") },
  [BW_READING_EQUALISING_WIDTH] = { "equalising_width", N_ ("Equalising pulse") },
  [BW_READING_BROAD_WIDTH] = { "broad_width", N_ ("Broad pulse") },
  [BW_READING_SERRATION_WIDTH] = { "serration_width", N_ ("Serration") },
  [BW_READING_SYNC_RISE] = { "sync_rise", N_ ("Rise of sync") },
  [BW_READING_BURST_RISE] = { "burst_rise", N_ ("Rise of the burst") },
  [BW_READING_FIELD_BLANKING] = { "field_blanking", N_ ("Field blanking") },
  [BW_READING_WHITE_LEVEL] = { "white_level", N_ ("White level") },
  [BW_READING_SETUP_LEVEL] = { "setup_level", N_ ("Setup level") },
  [BW_READING_SYNC_LEVEL] = { "sync_level", N_ ("Sync level") },
  [BW_READING_BURST_LEVEL] = { "burst_level", N_ ("Burst, peak to peak") },
};
const BwKindTable bw_readings = { BW_N_READINGS, readings };

static const BwKind outcomes[] = {
  [BW_OUTCOME_NOT_LAID_DOWN] = { "not-laid-down", N_ ("not laid down") },
  [BW_OUTCOME_WITHIN] = { "within", N_ ("within") },
  [BW_OUTCOME_TOO_LOW] = { "too-low", N_ ("too low") },
  [BW_OUTCOME_TOO_HIGH] = { "too-high", N_ ("too high") },
  [BW_OUTCOME_UNDECIDED] = { "undecided", N_ ("not sure") },
};
const BwKindTable bw_outcomes = { G_N_ELEMENTS (outcomes), outcomes };

#define AT(member) .offset = G_STRUCT_OFFSET (BwStandardLimits, member)
#define TEXT(name, label_, member_)                                                               \
  { .key = name, .label = label_, .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED, AT (member_) }
#define TIME(kind, name)                                                                          \
  { .key = name, .label = name, .type = BW_FIELD_BANDS, AT (at[kind]),                            \
    .dimension = BW_DIMENSION_TIME, .low = 0, .high = 1 }
#define LEVEL(kind, name)                                                                         \
  { .key = name, .label = name, .type = BW_FIELD_BANDS, AT (at[kind]),                            \
    .dimension = BW_DIMENSION_VOLTAGE, .low = 0, .high = 10 }

static const BwField limits_fields[] = {
  TEXT ("name", N_ ("Name"), name),
  TEXT ("source", N_ ("Given by"), source),
  TEXT ("raster", N_ ("Raster"), raster),
  TIME (BW_READING_LINE_PERIOD, "line_period"),
  TIME (BW_READING_LINE_BLANKING, "line_blanking"),
  TIME (BW_READING_FRONT_PORCH, "front_porch"),
  TIME (BW_READING_LINE_SYNC, "line_sync"),
  TIME (BW_READING_SYNC_TO_PICTURE, "sync_to_picture"),
  TIME (BW_READING_BURST_START, "burst_start"),
  TIME (BW_READING_BURST_LENGTH, "burst_length"),
  TIME (BW_READING_EQUALISING_WIDTH, "equalising_width"),
  TIME (BW_READING_BROAD_WIDTH, "broad_width"),
  TIME (BW_READING_SERRATION_WIDTH, "serration_width"),
  TIME (BW_READING_SYNC_RISE, "sync_rise"),
  TIME (BW_READING_BURST_RISE, "burst_rise"),
  TIME (BW_READING_FIELD_BLANKING, "field_blanking"),
  LEVEL (BW_READING_WHITE_LEVEL, "white_level"),
  LEVEL (BW_READING_SETUP_LEVEL, "setup_level"),
  LEVEL (BW_READING_SYNC_LEVEL, "sync_level"),
  LEVEL (BW_READING_BURST_LEVEL, "burst_level"),
};
static const BwFieldTable limits_table = { G_N_ELEMENTS (limits_fields), limits_fields };

static void
limits_free (BwStandardLimits *limits)
{
  g_free (limits->id);
  bw_fields_clear (&limits_table, limits);
  g_free (limits);
}

typedef struct
{
  const char *file;
  GPtrArray *limits;
  GPtrArray *faults;
} LimitsReader;

/* Each entry is a nominal value and the range around it. */
static gboolean
check_bands (const BwStandardLimits *limits, const char *file, GError **error)
{
  for (guint i = 0; i < BW_N_READINGS; i++)
    {
      const BwBands *bands = &limits->at[i];
      double nominal = bands->at[0].low;
      if (bands->n == 0
          || (bands->n == 2 && nominal >= bands->at[1].low && nominal <= bands->at[1].high))
        continue;
      g_set_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_VALUE,
                   _ ("%1$s: [%2$s] %3$s: write the nominal value and the range around it, such as "
                      "“4.7 us; 4.6 us .. 4.8 us”"),
                   file, limits->id, bw_kind_id (&bw_readings, i));
      return FALSE;
    }
  return TRUE;
}

static void
read_limits (const char *group, GKeyFile *keys, gpointer user_data)
{
  LimitsReader *reader = user_data;
  BwStandardLimits *limits = g_new0 (BwStandardLimits, 1);
  GError *error = NULL;

  limits->id = g_strdup (group);
  if (bw_fields_load (&limits_table, limits, keys, group, reader->file, &error)
      && check_bands (limits, reader->file, &error))
    {
      g_ptr_array_add (reader->limits, limits);
      return;
    }
  g_ptr_array_add (reader->faults, error);
  limits_free (limits);
}

/**
 * bw_limits_load:
 * @file: the name to use in errors
 * @faults: (element-type GError): receives one error for each bad entry
 *
 * Returns: (transfer full) (element-type BwStandardLimits): the sound entries of a limits file
 */
GPtrArray *
bw_limits_load (const char *text, gsize length, const char *file, GPtrArray *faults)
{
  g_return_val_if_fail (text != NULL && file != NULL && faults != NULL, NULL);
  GPtrArray *limits = g_ptr_array_new_with_free_func ((GDestroyNotify) limits_free);
  LimitsReader reader = { file, limits, faults };
  bw_keyfile_each_group (text, length, file, read_limits, &reader, faults);
  return limits;
}

/**
 * bw_limits_shipped:
 *
 * Returns: (transfer full) (element-type BwStandardLimits): the limits that come with the program
 */
GPtrArray *
bw_limits_shipped (void)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  gsize length;
  g_autofree char *text = bw_keyfile_shipped (bw_catalogue_get_resource (),
                                              "/org/breezeway/Breezeway/catalogue/limits.ini",
                                              &length);
  return bw_limits_load (text, length, "limits.ini", faults);
}

/**
 * bw_limits_find:
 *
 * Returns: (transfer none) (nullable): the limits whose id is @id
 */
const BwStandardLimits *
bw_limits_find (const GPtrArray *limits, const char *id)
{
  g_return_val_if_fail (limits != NULL && id != NULL, NULL);
  for (guint i = 0; i < limits->len; i++)
    {
      const BwStandardLimits *one = limits->pdata[i];
      if (strcmp (one->id, id) == 0)
        return one;
    }
  return NULL;
}

/**
 * bw_reading_dimension:
 *
 * Returns: what a reading of @kind is measured in
 */
BwDimension
bw_reading_dimension (BwReadingKind kind)
{
  return kind >= BW_READING_WHITE_LEVEL ? BW_DIMENSION_VOLTAGE : BW_DIMENSION_TIME;
}

/**
 * bw_outcome_severity:
 *
 * Returns: the mark of an outcome that is judged
 */
BwSeverity
bw_outcome_severity (BwOutcome outcome)
{
  return outcome == BW_OUTCOME_WITHIN      ? BW_SEVERITY_OK
         : outcome == BW_OUTCOME_UNDECIDED ? BW_SEVERITY_TIGHT
                                           : BW_SEVERITY_FATAL;
}

/**
 * bw_limits_volts_per_ire:
 *
 * Returns: what one IRE unit is in the system that @limits judge, or else in one that has the same
 * raster; zero if there is none
 */
double
bw_limits_volts_per_ire (const BwStandardLimits *limits)
{
  g_return_val_if_fail (limits != NULL, 0);
  BwColourSystem same_raster = BW_N_SYSTEMS;
  for (BwColourSystem system = 0; system < BW_N_SYSTEMS; system++)
    {
      const BwSystemFacts *facts = bw_system_facts (system);
      if (g_strcmp0 (facts->limits, limits->id) == 0)
        return bw_ire_to_volts (system, 1);
      if (same_raster == BW_N_SYSTEMS && g_strcmp0 (facts->raster, limits->raster) == 0)
        same_raster = system;
    }
  return same_raster < BW_N_SYSTEMS ? bw_ire_to_volts (same_raster, 1) : 0;
}

/* A bare number is read in the unit that brings it nearer than this to what is laid down: the units
 * of a dimension are a thousand apart. */
#define NEAR_NOMINAL 30.0

/**
 * bw_reading_read:
 * @limits: (nullable): tell what a bare number and an IRE unit are
 * @text: as it was typed
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR, @measured being untouched
 */
gboolean
bw_reading_read (const BwStandardLimits *limits, BwReadingKind kind, const char *text, char mark,
                 BwMeasured *measured, GError **error)
{
  g_return_val_if_fail (kind < BW_N_READINGS && text != NULL && measured != NULL, FALSE);
  BwReadAs as = { .mark = mark };
  if (limits != NULL)
    {
      double nominal = limits->at[kind].n > 0 ? limits->at[kind].at[0].low : 0;
      as.volts_per_ire = bw_limits_volts_per_ire (limits);
      as.allowed = (BwRange){ nominal / NEAR_NOMINAL, nominal * NEAR_NOMINAL };
    }
  return bw_quantity_read (text, bw_reading_dimension (kind), &as, measured, error);
}

/* Less than this share of the uncertainty is rounding of the double. */
#define UNCERTAINTY_ROUNDING 1e-6

/**
 * bw_reading_judge:
 * @value: the reading, in the base unit
 * @uncertainty: by how much it may be off, in the base unit; zero: by nothing
 * @judgement: (out caller-allocates): deviation, limit and outcome
 *
 * Holds a reading against what @limits allow.
 */
void
bw_reading_judge (const BwStandardLimits *limits, BwReadingKind kind, double value,
                  double uncertainty, BwJudgement *judgement)
{
  g_return_if_fail (limits != NULL && judgement != NULL);
  const BwBands *bands = &limits->at[kind];
  *judgement = (BwJudgement){ .outcome = BW_OUTCOME_NOT_LAID_DOWN };
  if (bands->n < 2)
    return;
  judgement->nominal = bands->at[0].low;
  judgement->allowed = bands->at[1];
  judgement->deviation = value - judgement->nominal;
  judgement->to_limit = MIN (value - judgement->allowed.low, judgement->allowed.high - value);
  judgement->outcome = value < judgement->allowed.low    ? BW_OUTCOME_TOO_LOW
                       : value > judgement->allowed.high ? BW_OUTCOME_TOO_HIGH
                                                         : BW_OUTCOME_WITHIN;
  if (fabs (judgement->to_limit) < uncertainty * (1 - UNCERTAINTY_ROUNDING))
    judgement->outcome = BW_OUTCOME_UNDECIDED;
}
