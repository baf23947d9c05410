/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "values.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/bench/catalogue.h"

#define AT(member) .offset = G_STRUCT_OFFSET (BwDetailValues, member)
#define LENGTH .type = BW_FIELD_QUANTITY, .dimension = BW_DIMENSION_LENGTH
#define FREQUENCY .type = BW_FIELD_QUANTITY, .dimension = BW_DIMENSION_FREQUENCY

/* Ranges as in the tables of monitors and sources; the kinds of leads and Kell factors are put in
 * later. */
static const BwField templates[BW_N_DETAIL_VALUES] = {
  [BW_DETAIL_DIAGONAL] = { .key = "diagonal",
                           .label = N_ ("Diagonal"),
                           LENGTH,
                           .flags = BW_FIELD_REQUIRED,
                           AT (diagonal_m),
                           .low = 0.02,
                           .high = 1.5,
                           .unit = "in" },
  [BW_DETAIL_PITCH_VALUE] = { .key = "pitch",
                              .label = N_ ("Pitch"),
                              LENGTH,
                              .flags = BW_FIELD_UNKNOWN,
                              AT (pitch_m),
                              .low = 0.05e-3,
                              .high = 5e-3,
                              .unit = "mm" },
  [BW_DETAIL_SPOT] = { .key = "spot",
                       .label = N_ ("Spot width"),
                       LENGTH,
                       .flags = BW_FIELD_UNKNOWN,
                       AT (spot_m),
                       .low = 0.01e-3,
                       .high = 10e-3,
                       .unit = "mm" },
  [BW_DETAIL_BANDWIDTH] = { .key = "bandwidth",
                            .label = N_ ("Video bandwidth"),
                            FREQUENCY,
                            .flags = BW_FIELD_UNKNOWN,
                            AT (bandwidth_hz),
                            .low = 100e3,
                            .high = 1e9,
                            .unit = "MHz" },
  [BW_DETAIL_HIGHEST] = { .key = "detail",
                          .label = N_ ("Source’s highest frequency"),
                          FREQUENCY,
                          .flags = BW_FIELD_UNKNOWN,
                          AT (detail_hz),
                          .low = 100e3,
                          .high = 1e9,
                          .unit = "MHz" },
  [BW_DETAIL_LEAD_LENGTH] = { .key = "lead_length",
                              .label = N_ ("Lead length"),
                              LENGTH,
                              .flags = BW_FIELD_UNKNOWN,
                              AT (lead_m),
                              .low = 0,
                              .high = 1000,
                              .unit = "m" },
  [BW_DETAIL_LEAD_TYPE] = { .key = "lead",
                            .label = N_ ("Lead"),
                            .type = BW_FIELD_CHOICE,
                            AT (lead) },
  [BW_DETAIL_FILTER] = { .key = "filter",
                         .label = N_ ("Luma filter of composite"),
                         .type = BW_FIELD_CHOICE,
                         AT (filter),
                         .kinds = &bw_luma_filters },
  [BW_DETAIL_KELL] = { .key = "kell",
                       .label = N_ ("Kell factor"),
                       .type = BW_FIELD_CHOICE,
                       AT (kell) },
  [BW_DETAIL_INTERLACE] = { .key = "interlace",
                            .label = N_ ("Interlace factor"),
                            .type = BW_FIELD_QUANTITY,
                            .dimension = BW_DIMENSION_FRACTION,
                            .flags = BW_FIELD_REQUIRED,
                            AT (interlace),
                            .low = 0.01,
                            .high = 1,
                            .unit = "%" },
  [BW_DETAIL_CLAIM] = { .key = "claimed_lines",
                        .label = N_ ("Claimed TV lines"),
                        .type = BW_FIELD_QUANTITY,
                        .dimension = BW_DIMENSION_TV_LINES,
                        .flags = BW_FIELD_UNKNOWN,
                        AT (claimed_lines),
                        .low = 10,
                        .high = 5000,
                        .unit = "lines",
                        .half_digit_offset = G_STRUCT_OFFSET (BwDetailValues, claimed_half_digit) },
};

static gsize
size_of (const BwField *field)
{
  return field->type == BW_FIELD_CHOICE ? sizeof (guint) : sizeof (double);
}

/**
 * bw_detail_value_copy:
 *
 * Copies the member that @field stands for.
 */
void
bw_detail_value_copy (const BwField *field, BwDetailValues *to, const BwDetailValues *from)
{
  memcpy ((char *) to + field->offset, (const char *) from + field->offset, size_of (field));
  if (field->half_digit_offset > 0)
    memcpy ((char *) to + field->half_digit_offset, (const char *) from + field->half_digit_offset,
            sizeof (double));
}

/* Kinds of the two choices that are no enumerations */

static guint
usual_kell (void)
{
  BwDetailCase plain;
  bw_detail_case_init (&plain);
  for (guint i = 0; i < BW_N_KELL_VALUES; i++)
    if (bw_near (bw_kell_values[i].factor, plain.kell, 1e-9))
      return i;
  g_return_val_if_reached (0);
}

static void
fill_kell (BwDetailFields *self)
{
  for (guint i = 0; i < BW_N_KELL_VALUES; i++)
    {
      char number[G_ASCII_DTOSTR_BUF_SIZE];
      g_ascii_formatd (number, sizeof number, "%g", bw_kell_values[i].factor);
      g_autofree char *shown = g_strdelimit (g_strdup (number), ".", bw_quantity_locale_mark ());
      self->kell_kinds[i] = (BwKind){
        .id = g_strdup (number),
        .label = g_strdup_printf ("%s: %s", shown, _ (bw_kell_values[i].given_by)),
      };
    }
  self->kell_table = (BwKindTable){ BW_N_KELL_VALUES, self->kell_kinds };
}

/* A fault in the user's own file is told where the catalogue is read. */
static void
fill_leads (BwDetailFields *self)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *folder = bw_catalogue_user_folder ();

  self->leads = bw_lead_types_new (folder, faults);
  self->lead_kinds = g_new0 (BwKind, self->leads->len);
  for (guint i = 0; i < self->leads->len; i++)
    {
      const BwLeadType *type = self->leads->pdata[i];
      self->lead_kinds[i] = (BwKind){ type->id, type->name };
    }
  self->lead_table = (BwKindTable){ self->leads->len, self->lead_kinds };
}

/**
 * bw_detail_fields_init:
 * @fields: (out): in the language of the screen; to be cleared with bw_detail_fields_clear()
 */
void
bw_detail_fields_init (BwDetailFields *fields)
{
  memcpy (fields->at, templates, sizeof templates);
  fill_kell (fields);
  fill_leads (fields);
  fields->at[BW_DETAIL_LEAD_TYPE].kinds = &fields->lead_table;
  fields->at[BW_DETAIL_KELL].kinds = &fields->kell_table;
}

/**
 * bw_detail_fields_clear:
 *
 * Frees what @fields own.
 */
void
bw_detail_fields_clear (BwDetailFields *fields)
{
  for (guint i = 0; i < BW_N_KELL_VALUES; i++)
    {
      g_free ((char *) fields->kell_kinds[i].id);
      g_free ((char *) fields->kell_kinds[i].label);
    }
  g_free (fields->lead_kinds);
  g_ptr_array_unref (fields->leads);
}

/**
 * bw_detail_values_from:
 * @values: (out): those of @what, without a lead
 */
void
bw_detail_values_from (BwDetailValues *values, const BwDetailCase *what)
{
  *values = (BwDetailValues){
    .diagonal_m = what->diagonal_m,
    .pitch_m = what->pitch_m,
    .spot_m = what->spot_m,
    .bandwidth_hz = what->bandwidth_hz,
    .detail_hz = what->detail_hz,
    .filter = what->filter,
    .kell = usual_kell (),
    .interlace = what->interlace,
    .claimed_lines = what->claimed_lines,
    .claimed_half_digit = what->claimed_half_digit,
  };
}

/**
 * bw_detail_value_differs:
 *
 * Returns: whether the member that @field stands for differs
 */
gboolean
bw_detail_value_differs (const BwField *field, const BwDetailValues *a, const BwDetailValues *b)
{
  return memcmp ((const char *) a + field->offset, (const char *) b + field->offset,
                 size_of (field))
         != 0;
}
