/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lead.h"

#include <math.h>
#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "bw-catalogue-resources.h"
#include "core/base/keyfile.h"

#define FILE_NAME "leads.ini"

G_DEFINE_QUARK (bw-lead-error-quark, bw_lead_error)

#define AT(member) .offset = G_STRUCT_OFFSET (BwLeadType, member)
#define HERTZ                                                                                      \
  .type = BW_FIELD_QUANTITY, .dimension = BW_DIMENSION_FREQUENCY, .low = 1e3, .high = 10e9

static const BwField fields[] = {
  { .key = "name", .label = N_ ("Name"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED,
    AT (name), .help = N_ ("What this kind of lead is called.") },
  { .key = "source", .label = N_ ("Source"), .type = BW_FIELD_TEXT, AT (source),
    .help = N_ ("Where the figures are from.") },
  { .key = "note", .label = N_ ("Note"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_LINES,
    AT (note),
    .help = N_ ("Anything else about it.") },
  { .key = "impedance", .label = N_ ("Impedance"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED, AT (z_ohm), .dimension = BW_DIMENSION_RESISTANCE, .low = 10,
    .high = 1000, .unit = "ohm", .help = N_ ("Characteristic resistance.") },
  { .key = "velocity", .label = N_ ("Velocity factor"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED, AT (velocity), .dimension = BW_DIMENSION_FRACTION, .low = 0.3,
    .high = 1, .unit = "%", .help = N_ ("Speed of the signal as a share of that of light.") },
  { .key = "loss", .label = N_ ("Loss over 100 m"), .type = BW_FIELD_TEXT,
    .flags = BW_FIELD_REQUIRED, AT (loss_text),
    .help = N_ ("In decibels, at the frequency of the loss: 6.56 dB.") },
  { .key = "loss_frequency", .label = N_ ("Frequency of the loss"), HERTZ,
    .flags = BW_FIELD_REQUIRED, AT (loss_hz), .unit = "MHz",
    .help = N_ ("Where the loss is stated.") },
  { .key = "law_from", .label = N_ ("Law holds from"), HERTZ, .flags = BW_FIELD_REQUIRED,
    AT (law_from_hz), .unit = "MHz",
    .help = N_ ("Below this the loss is higher than the root law says, as where a centre is of "
                "plated steel.") },
  { .key = "law_to", .label = N_ ("Law holds to"), HERTZ, .flags = BW_FIELD_REQUIRED,
    AT (law_to_hz), .unit = "MHz",
    .help = N_ ("Above this the dielectric adds its own loss.") },
};
const BwFieldTable bw_lead_fields = { G_N_ELEMENTS (fields), fields };

typedef struct
{
  const char *file;
  GPtrArray *types;
  GPtrArray *faults;
} Reader;

/**
 * bw_lead_type_free:
 * @type: (nullable) (transfer full): freed with all it owns
 */
void
bw_lead_type_free (BwLeadType *type)
{
  if (type == NULL)
    return;
  g_free (type->id);
  bw_fields_clear (&bw_lead_fields, type);
  g_free (type);
}

/* "6.56 dB" */
static gboolean
read_loss (BwLeadType *type, GError **error)
{
  char *end;
  double loss_db = g_ascii_strtod (type->loss_text, &end);
  const char *unit = end + strspn (end, " ");

  if (end == type->loss_text || strcmp (unit, "dB") != 0 || !(loss_db >= 0.01 && loss_db <= 1000))
    {
      g_set_error (error, BW_LEAD_ERROR, BW_LEAD_ERROR_LOSS,
                   _ ("“%s”: write decibels over 100 m from 0.01 to 1000, such as “6.56 dB”"),
                   type->loss_text);
      return FALSE;
    }
  type->loss_db_per_m = loss_db / 100;
  return TRUE;
}

static gboolean
check_law (const BwLeadType *type, GError **error)
{
  if (type->loss_hz >= type->law_from_hz && type->loss_hz <= type->law_to_hz)
    return TRUE;
  g_set_error_literal (error, BW_LEAD_ERROR, BW_LEAD_ERROR_LAW,
                       _ ("loss_frequency must lie between law_from and law_to"));
  return FALSE;
}

static void
take (GPtrArray *types, BwLeadType *type)
{
  guint index;
  const BwLeadType *old = bw_lead_type_find (types, type->id);
  if (old == NULL || !g_ptr_array_find (types, old, &index))
    {
      g_ptr_array_add (types, type);
      return;
    }
  bw_lead_type_free (types->pdata[index]);
  types->pdata[index] = type;
}

static void
read_type (const char *group, GKeyFile *keys, gpointer user_data)
{
  Reader *reader = user_data;
  g_autoptr (BwLeadType) type = g_new0 (BwLeadType, 1);
  GError *error = NULL;

  type->id = g_strdup (group);
  if (!bw_fields_load (&bw_lead_fields, type, keys, group, reader->file, &error))
    {
      g_ptr_array_add (reader->faults, error);
      return;
    }
  if (!read_loss (type, &error) || !check_law (type, &error))
    {
      g_prefix_error (&error, "%s: [%s] %s: ", reader->file, group,
                      error->code == BW_LEAD_ERROR_LOSS ? "loss" : "loss_frequency");
      g_ptr_array_add (reader->faults, error);
      return;
    }
  take (reader->types, g_steal_pointer (&type));
}

static void
read_into (GPtrArray *types, const char *text, gsize length, const char *file, GPtrArray *faults)
{
  Reader reader = { file, types, faults };
  bw_keyfile_each_group (text, length, file, read_type, &reader, faults);
}

/**
 * bw_lead_types_load:
 * @file: the name to use in errors
 * @faults: (element-type GError): receives one error for each bad entry
 *
 * Returns: (transfer full) (element-type BwLeadType): the sound entries of a file of leads
 */
GPtrArray *
bw_lead_types_load (const char *text, gsize length, const char *file, GPtrArray *faults)
{
  g_return_val_if_fail (text != NULL && file != NULL && faults != NULL, NULL);
  GPtrArray *types = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_lead_type_free);
  read_into (types, text, length, file, faults);
  return types;
}

/**
 * bw_lead_types_shipped:
 *
 * Returns: (transfer full) (element-type BwLeadType): the leads that come with the program
 */
GPtrArray *
bw_lead_types_shipped (void)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  gsize length;
  g_autofree char *text = bw_keyfile_shipped (bw_catalogue_get_resource (),
                                              "/org/breezeway/Breezeway/catalogue/" FILE_NAME,
                                              &length);
  return bw_lead_types_load (text, length, FILE_NAME, faults);
}

/**
 * bw_lead_types_new:
 * @user_folder: (nullable): folder that may hold the user's leads.ini: bw_catalogue_user_folder()
 * @faults: (element-type GError): receives one error for each bad entry, or for the file
 *
 * Returns: (transfer full) (element-type BwLeadType): the shipped leads and the user's own, which
 * replace those of the same id
 */
GPtrArray *
bw_lead_types_new (const char *user_folder, GPtrArray *faults)
{
  g_return_val_if_fail (faults != NULL, NULL);
  GPtrArray *types = bw_lead_types_shipped ();
  GError *error = NULL;
  g_autofree char *text = NULL;
  gsize length;

  if (user_folder == NULL)
    return types;
  g_autofree char *path = g_build_filename (user_folder, FILE_NAME, NULL);
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return types;
  if (bw_keyfile_read (path, &text, &length, &error))
    read_into (types, text, length, path, faults);
  else
    g_ptr_array_add (faults, error);
  return types;
}
