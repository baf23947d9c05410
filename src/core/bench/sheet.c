/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/file.h"
#include "core/base/keyfile.h"

G_DEFINE_QUARK (bw-sheet-error-quark, bw_sheet_error)

#define SHEET_GROUP "bench-sheet"
#define MONITOR_GROUP "monitor"
#define INPUT_PREFIX "input "
#define SOURCE_PREFIX "source "
#define RASTER_PREFIX "raster "

#define AT(member) .offset = G_STRUCT_OFFSET (BwSheet, member)

static const BwField sheet_fields[] = {
  { .key = "title", .label = N_ ("Title"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED,
    AT (title), .help = N_ ("What the job is called.") },
  { .key = "note", .label = N_ ("Note"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_LINES,
    AT (note) },
  { .key = "supply_voltage", .label = N_ ("Mains voltage here"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (supply_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 10,
    .high = 500, .unit = "V", .help = N_ ("At the bench, or where the set will run.") },
  { .key = "supply_frequency", .label = N_ ("Mains frequency here"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (supply_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 10, .high = 500, .unit = "Hz",
    .help = N_ ("At the bench, or where the set will run.") },
  { .key = "voltage_accuracy", .label = N_ ("Accuracy of voltages"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (accuracy_v), .dimension = BW_DIMENSION_FRACTION, .low = 1e-9,
    .high = 0.5, .unit = "%",
    .help = N_ ("Of the scope, as a share of what it reads; empty: the digits of a reading tell.") },
  { .key = "frequency_accuracy", .label = N_ ("Accuracy of frequencies"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (accuracy_hz), .dimension = BW_DIMENSION_FRACTION, .low = 1e-9,
    .high = 0.5, .unit = "%",
    .help = N_ ("Of the counter, as a share of what it reads; empty: the digits of a reading tell.") },
  { .key = "time_accuracy", .label = N_ ("Accuracy of times"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (accuracy_s), .dimension = BW_DIMENSION_FRACTION, .low = 1e-9,
    .high = 0.5, .unit = "%",
    .help = N_ ("Of the scope’s time base; empty: the digits of a reading tell.") },
  { .key = "line_rate_margin", .label = N_ ("Line rate margin"), .type = BW_FIELD_QUANTITY,
    AT (limits.line_rate), .dimension = BW_DIMENSION_FRACTION, .low = 0, .high = 0.5, .unit = "%",
    .help = N_ ("Nearer than this to the edge of its band, a line rate is called tight.") },
  { .key = "field_rate_margin", .label = N_ ("Field rate margin"), .type = BW_FIELD_QUANTITY,
    AT (limits.field_rate), .dimension = BW_DIMENSION_FRACTION, .low = 0, .high = 0.5, .unit = "%",
    .help = N_ ("Nearer than this to the edge of its band, a field rate is called tight.") },
  { .key = "level_margin", .label = N_ ("Level margin"), .type = BW_FIELD_QUANTITY,
    AT (limits.level), .dimension = BW_DIMENSION_FRACTION, .low = 0, .high = 0.5, .unit = "%",
    .help = N_ ("Nearer than this to its limit, a level is called tight.") },
  { .key = "blanking_margin", .label = N_ ("Blanking margin"), .type = BW_FIELD_QUANTITY,
    AT (limits.blanking), .dimension = BW_DIMENSION_FRACTION, .low = 0, .high = 1, .unit = "%",
    .help = N_ ("Blanking that exceeds the retrace by less than this is called tight.") },
  { .key = "mains_beat_limit", .label = N_ ("Mains beat limit"), .type = BW_FIELD_QUANTITY,
    AT (limits.mains_beat_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 0, .high = 100,
    .unit = "Hz", .help = N_ ("Up to this a beat of field rate and mains is called a slow bar, "
                                "above it flicker. Neither fails.") },
  { .key = "setup_limit", .label = N_ ("Setup limit"), .type = BW_FIELD_QUANTITY,
    AT (limits.setup_ire), .dimension = BW_DIMENSION_IRE, .low = 0, .high = 20, .unit = "IRE",
    .help = N_ ("A black level off by no more than this is called tight.") },
};
const BwFieldTable bw_sheet_fields = { G_N_ELEMENTS (sheet_fields), sheet_fields };

/**
 * bw_sheet_groups:
 *
 * Returns: (transfer none): the kinds of group in a file of the format %BW_SHEET_FORMAT, in the order
 * in which they are written, with their keys; the last one has no name
 */
const BwSheetGroup *
bw_sheet_groups (void)
{
  static const BwSheetGroup groups[] = {
    { SHEET_GROUP, N_ ("The sheet itself"), &bw_sheet_fields, BW_N_RASTER_KEYS },
    { MONITOR_GROUP, N_ ("The monitor"), &bw_monitor_fields, BW_N_RASTER_KEYS },
    { INPUT_PREFIX "N", N_ ("Each input, numbered from 1"), &bw_input_fields, BW_N_RASTER_KEYS },
    { SOURCE_PREFIX "N", N_ ("Each source, numbered from 1"), &bw_source_fields, BW_N_RASTER_KEYS },
    { RASTER_PREFIX "ID", N_ ("Each raster that travels with the sheet"), NULL,
      BW_RASTER_KEYS_ALL },
    { RASTER_PREFIX "ID", N_ ("A raster whose second field differs from the first"), NULL,
      BW_RASTER_KEYS_SECOND_FIELD },
    { RASTER_PREFIX "ID", N_ ("A raster that is defined in pixels"), NULL,
      BW_RASTER_KEYS_IN_PIXELS },
    { RASTER_PREFIX "ID", N_ ("A raster that is defined in time"), NULL, BW_RASTER_KEYS_IN_TIME },
    { NULL },
  };
  return groups;
}

/**
 * bw_sheet_group_fields:
 *
 * Returns: (transfer none): the keys of @group
 */
const BwFieldTable *
bw_sheet_group_fields (const BwSheetGroup *group)
{
  g_return_val_if_fail (group != NULL, NULL);
  return group->fields != NULL ? group->fields : bw_raster_keys (group->raster);
}

/* Thresholds: common practice, no source. Each can be set in the sheet. */
const BwLimits bw_preset_limits = {
  .line_rate = 0.005,
  .field_rate = 0.02,
  .level = 0.05,
  .blanking = 0.05,
  .mains_beat_hz = 1,
  .setup_ire = 2,
};

static BwSheet *
new_sheet (BwMonitor *monitor)
{
  BwSheet *sheet = g_new0 (BwSheet, 1);
  sheet->title = g_strdup ("");
  sheet->note = g_strdup ("");
  sheet->limits = bw_preset_limits;
  sheet->monitor = monitor;
  sheet->sources = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_source_free);
  sheet->rasters = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_raster_free);
  return sheet;
}

/**
 * bw_sheet_new:
 *
 * Returns: (transfer full): an empty sheet: a monitor without inputs, no sources
 */
BwSheet *
bw_sheet_new (void)
{
  return new_sheet (bw_monitor_new ());
}

/**
 * bw_sheet_copy:
 *
 * Returns: (transfer full): a copy; only the file as it was read, which never changes, is shared
 */
BwSheet *
bw_sheet_copy (const BwSheet *sheet)
{
  g_return_val_if_fail (sheet != NULL, NULL);
  BwSheet *copy = new_sheet (bw_monitor_copy (sheet->monitor));
  bw_fields_copy (&bw_sheet_fields, copy, sheet);
  for (guint i = 0; i < sheet->sources->len; i++)
    g_ptr_array_add (copy->sources, bw_source_copy (bw_sheet_source (sheet, i)));
  for (guint i = 0; i < sheet->rasters->len; i++)
    g_ptr_array_add (copy->rasters, bw_raster_copy (sheet->rasters->pdata[i]));
  copy->kept = sheet->kept != NULL ? g_key_file_ref (sheet->kept) : NULL;
  copy->kept_end = g_strdup (sheet->kept_end);
  return copy;
}

/**
 * bw_sheet_free:
 * @sheet: (nullable) (transfer full): freed with all it owns
 */
void
bw_sheet_free (BwSheet *sheet)
{
  if (sheet == NULL)
    return;
  bw_fields_clear (&bw_sheet_fields, sheet);
  bw_monitor_free (sheet->monitor);
  g_ptr_array_unref (sheet->sources);
  g_ptr_array_unref (sheet->rasters);
  g_clear_pointer (&sheet->kept, g_key_file_unref);
  g_free (sheet->kept_end);
  g_free (sheet);
}

static const BwRaster *
own_raster (const BwSheet *sheet, const char *id)
{
  for (guint i = 0; i < sheet->rasters->len; i++)
    {
      const BwRaster *raster = sheet->rasters->pdata[i];
      if (strcmp (raster->id, id) == 0)
        return raster;
    }
  for (guint i = 0; i < sheet->rasters->len; i++)
    if (bw_raster_has_alias (sheet->rasters->pdata[i], id))
      return sheet->rasters->pdata[i];
  return NULL;
}

/**
 * bw_sheet_accuracy:
 *
 * Returns: the accuracy of the instrument that reads quantities of @dimension, as a share of what it
 *   reads; zero: not known
 */
double
bw_sheet_accuracy (const BwSheet *sheet, BwDimension dimension)
{
  g_return_val_if_fail (sheet != NULL, 0);
  switch (dimension)
    {
    case BW_DIMENSION_VOLTAGE:
    case BW_DIMENSION_IRE:
      return sheet->accuracy_v;
    case BW_DIMENSION_FREQUENCY:
      return sheet->accuracy_hz;
    case BW_DIMENSION_TIME:
      return sheet->accuracy_s;
    default:
      return 0;
    }
}

/**
 * bw_sheet_raster:
 *
 * Returns: (transfer none) (nullable): the raster of @source: the sheet's own if it has one of
 * that id, else the catalogue's; %NULL if it is not known
 */
const BwRaster *
bw_sheet_raster (const BwSheet *sheet, const BwCatalogue *catalogue, const BwSource *source)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL && source != NULL, NULL);
  const BwRaster *raster = own_raster (sheet, source->raster);
  return raster != NULL ? raster : bw_catalogue_raster (catalogue, source->raster);
}

/* Reading */

typedef struct
{
  BwSheet *sheet;
  GKeyFile *keys;
  guint form; /* of the file */
  const char *file;
  const BwCatalogue *catalogue;
  GPtrArray *faults;
} SheetReader;

/* Reads a monitor, an input or a source: in a file of the second form nothing is preset. */
static gboolean
load_figures (const SheetReader *reader, const BwFieldTable *table, gpointer object,
              const char *group, GError **error)
{
  if (reader->form > BW_SHEET_FORMAT_PRESETS)
    bw_fields_forget (table, object);
  return bw_fields_load (table, object, reader->keys, group, reader->file, error);
}

static void
take_fault (SheetReader *reader, const char *group, GError *error)
{
  if (error->domain != BW_FIELD_ERROR && error->domain != BW_RASTER_ERROR)
    g_prefix_error (&error, "%s: [%s]: ", reader->file, group);
  g_ptr_array_add (reader->faults, error);
}

static void
read_sheet_input (SheetReader *reader, const char *group)
{
  g_autoptr (BwInput) input = bw_input_new ();
  GPtrArray *inputs = reader->sheet->monitor->inputs;
  GError *error = NULL;

  input->group = g_strdup (group);
  if (!load_figures (reader, &bw_input_fields, input, group, &error)
      || !bw_input_check (input, &error))
    take_fault (reader, group, error);
  else if (inputs->len == BW_SHEET_MAX_INPUTS)
    take_fault (reader, group,
                g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_TOO_MANY,
                             g_dngettext (GETTEXT_PACKAGE, "more than %d input",
                                          "more than %d inputs", BW_SHEET_MAX_INPUTS),
                             BW_SHEET_MAX_INPUTS));
  else
    g_ptr_array_add (inputs, g_steal_pointer (&input));
}

static void
read_sheet_source (SheetReader *reader, const char *group)
{
  g_autoptr (BwSource) source = bw_source_new ();
  GPtrArray *sources = reader->sheet->sources;
  GError *error = NULL;

  source->group = g_strdup (group);
  if (!load_figures (reader, &bw_source_fields, source, group, &error)
      || !bw_source_check (source, &error))
    take_fault (reader, group, error);
  else if (sources->len == BW_SHEET_MAX_SOURCES)
    take_fault (reader, group,
                g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_TOO_MANY,
                             g_dngettext (GETTEXT_PACKAGE, "more than %d source",
                                          "more than %d sources", BW_SHEET_MAX_SOURCES),
                             BW_SHEET_MAX_SOURCES));
  else
    g_ptr_array_add (sources, g_steal_pointer (&source));
}

static void
read_sheet_raster (SheetReader *reader, const char *group)
{
  GError *error = NULL;
  const char *id = group + strlen (RASTER_PREFIX);
  BwRaster *raster = bw_raster_load (reader->keys, group, id, reader->file, &error);
  if (raster != NULL)
    g_ptr_array_add (reader->sheet->rasters, raster);
  else
    take_fault (reader, group, error);
}

static void
read_sheet_group (SheetReader *reader, const char *group)
{
  GError *error = NULL;
  gboolean sound = TRUE;

  if (strcmp (group, SHEET_GROUP) == 0)
    sound = bw_fields_load (&bw_sheet_fields, reader->sheet, reader->keys, group, reader->file,
                            &error);
  else if (strcmp (group, MONITOR_GROUP) == 0)
    sound = load_figures (reader, &bw_monitor_fields, reader->sheet->monitor, group, &error);
  else if (g_str_has_prefix (group, INPUT_PREFIX))
    read_sheet_input (reader, group);
  else if (g_str_has_prefix (group, SOURCE_PREFIX))
    read_sheet_source (reader, group);
  else if (g_str_has_prefix (group, RASTER_PREFIX))
    read_sheet_raster (reader, group);
  if (!sound)
    take_fault (reader, group, error);
}

/* A raster that a source names must be there. */
static void
check_rasters (SheetReader *reader)
{
  for (guint i = 0; i < reader->sheet->sources->len; i++)
    {
      BwSource *source = bw_sheet_source (reader->sheet, i);
      if (*source->raster != '\0'
          && bw_sheet_raster (reader->sheet, reader->catalogue, source) == NULL)
        g_ptr_array_add (
            reader->faults,
            g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_NO_RASTER,
                         _ ("%1$s: [%2$s] raster: “%3$s” is neither in the sheet nor in the "
                            "catalogue"),
                         reader->file, source->group, source->raster));
    }
}

/* Gives the form of the file, or says what is wrong with its head. */
static GError *
check_format (GKeyFile *keys, const char *file, guint *form)
{
  if (!g_key_file_has_group (keys, SHEET_GROUP))
    return g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_NOT_A_SHEET,
                        _ ("%1$s: not a bench sheet: there is no group [%2$s]"), file, SHEET_GROUP);
  g_autofree char *text = g_key_file_get_value (keys, SHEET_GROUP, "format", NULL);
  guint64 format = 0;
  if (text == NULL || !g_ascii_string_to_unsigned (text, 10, 1, G_MAXUINT32, &format, NULL))
    return g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_NOT_A_SHEET,
                        _ ("%1$s: [%2$s] format: a whole number is needed; allowed: 1 to %3$d"),
                        file, SHEET_GROUP, BW_SHEET_FORMAT);
  if (format > BW_SHEET_FORMAT)
    return g_error_new (
        BW_SHEET_ERROR, BW_SHEET_ERROR_NEWER,
        _ ("%1$s: [%2$s] format: this sheet was written by a newer Breezeway (format "
           "%3$s); this one reads formats up to %4$d. The file has not been touched"),
        file, SHEET_GROUP, text, BW_SHEET_FORMAT);
  if (!g_key_file_has_group (keys, MONITOR_GROUP))
    return g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_NO_MONITOR,
                        _ ("%1$s: there is no group [%2$s]"), file, MONITOR_GROUP);
  *form = (guint) format;
  return NULL;
}

/* The comments and empty lines after the last key, which a key file gives to no group. */
static char *
comments_at_end (const char *text, gsize length)
{
  g_autofree char *copy = g_strndup (text, length);
  g_auto (GStrv) lines = g_strsplit (copy, "\n", -1);
  guint n = g_strv_length (lines);
  guint first = n;

  for (guint i = n; i > 0 && (*lines[i - 1] == '#' || g_strstrip (lines[i - 1])[0] == '\0'); i--)
    first = *lines[i - 1] == '#' ? i - 1 : first;
  if (first == n)
    return NULL;
  g_autofree char *end = g_strjoinv ("\n", lines + first);
  return g_strconcat ("\n", g_strchomp (end), "\n", NULL);
}

/**
 * bw_sheet_parse:
 * @file: the name to use in errors
 * @catalogue: where rasters are looked up
 * @faults: (element-type GError): receives every fault, each naming file, group and key
 *
 * Returns: (transfer full) (nullable): the sheet, or %NULL if there was any fault
 */
BwSheet *
bw_sheet_parse (const char *text, gsize length, const char *file, const BwCatalogue *catalogue,
                GPtrArray *faults)
{
  g_return_val_if_fail (text != NULL && file != NULL && catalogue != NULL && faults != NULL, NULL);
  GError *error = NULL;
  g_autoptr (GKeyFile) keys = bw_keyfile_parse (text, length, file, &error);
  guint faults_before = faults->len;
  guint form = BW_SHEET_FORMAT;

  if (keys != NULL)
    error = check_format (keys, file, &form);
  if (error != NULL)
    {
      g_ptr_array_add (faults, error);
      return NULL;
    }

  g_autoptr (BwSheet) sheet = bw_sheet_new ();
  SheetReader reader = { sheet, keys, form, file, catalogue, faults };
  g_auto (GStrv) groups = g_key_file_get_groups (keys, NULL);
  for (char **group = groups; *group != NULL; group++)
    read_sheet_group (&reader, *group);
  check_rasters (&reader);
  if (faults->len > faults_before)
    return NULL;
  sheet->kept = g_steal_pointer (&keys);
  sheet->kept_end = comments_at_end (text, length);
  return g_steal_pointer (&sheet);
}

/**
 * bw_sheet_load:
 * @path: a bench sheet
 * @faults: (element-type GError): receives every fault
 *
 * Returns: (transfer full) (nullable): the sheet, or %NULL if there was any fault. The file is
 * never changed. If a save of it was interrupted, a last fault says where a copy lies.
 */
BwSheet *
bw_sheet_load (const char *path, const BwCatalogue *catalogue, GPtrArray *faults)
{
  g_return_val_if_fail (path != NULL && catalogue != NULL && faults != NULL, NULL);
  g_autofree char *text = NULL;
  gsize length;
  GError *error = NULL;
  guint faults_before = faults->len;
  BwSheet *sheet = NULL;

  if (bw_keyfile_read (path, &text, &length, &error))
    sheet = bw_sheet_parse (text, length, path, catalogue, faults);
  else
    g_ptr_array_add (faults, error);
  g_autofree char *kept = faults->len > faults_before ? bw_file_kept_copy (path) : NULL;
  if (kept != NULL)
    {
      g_autofree char *shown = g_filename_display_name (kept);
      g_ptr_array_add (faults, g_error_new (BW_SHEET_ERROR, BW_SHEET_ERROR_INTERRUPTED,
                                            _ ("%1$s: a save was interrupted; what the file held "
                                               "before is in “%2$s”"),
                                            path, shown));
    }
  return sheet;
}

/* Writing: the file is laid out anew in the sheet's order. What this version does not know comes
 * along from the file that was read. */

typedef struct
{
  GKeyFile *to;
  GKeyFile *from;      /* nullable */
  GHashTable *written; /* names of groups, owned */
} SheetWriter;

static void
copy_comment (SheetWriter *writer, const char *group, const char *key)
{
  g_autofree char *comment = g_key_file_get_comment (writer->from, group, key, NULL);
  if (comment == NULL)
    return;
  const char *text = g_strchomp (comment) + strspn (comment, "\n");
  if (*text != '\0')
    g_key_file_set_comment (writer->to, group, key, text, NULL);
}

/* Starts @group with all that it held in the file that was read. */
static void
begin_group (SheetWriter *writer, const char *group)
{
  g_hash_table_add (writer->written, g_strdup (group));
  if (writer->from == NULL || !g_key_file_has_group (writer->from, group))
    return;
  g_auto (GStrv) keys = g_key_file_get_keys (writer->from, group, NULL, NULL);
  for (char **key = keys; *key != NULL; key++)
    {
      g_autofree char *value = g_key_file_get_value (writer->from, group, *key, NULL);
      g_key_file_set_value (writer->to, group, *key, value);
      copy_comment (writer, group, *key);
    }
  if (keys[0] == NULL)
    {
      /* A group comes into being with its first key and outlives it. */
      g_key_file_set_value (writer->to, group, "-", "");
      g_key_file_remove_key (writer->to, group, "-", NULL);
    }
  /* A comment above the first group belongs to the file and is copied with its head. */
  g_autofree char *first = g_key_file_get_start_group (writer->from);
  if (strcmp (group, first) != 0)
    copy_comment (writer, group, NULL);
}

/* A group name that is not taken yet: the object's own, or the next free number. */
static char *
group_name (SheetWriter *writer, const char *own, const char *prefix)
{
  if (own != NULL && !g_hash_table_contains (writer->written, own))
    return g_strdup (own);
  for (guint i = 1;; i++)
    {
      char *name = g_strdup_printf ("%s%u", prefix, i);
      gboolean taken = g_hash_table_contains (writer->written, name)
                       || (writer->from != NULL && g_key_file_has_group (writer->from, name));
      if (!taken)
        return name;
      g_free (name);
    }
}

static void
write_object (SheetWriter *writer, const BwFieldTable *table, gconstpointer object,
              const char *own_group, const char *prefix)
{
  g_autofree char *group = group_name (writer, own_group, prefix);
  begin_group (writer, group);
  bw_fields_save (table, object, writer->to, group);
}

static void
write_raster (SheetWriter *writer, const BwRaster *raster)
{
  g_autofree char *group = g_strconcat (RASTER_PREFIX, raster->id, NULL);
  if (g_hash_table_contains (writer->written, group))
    return;
  begin_group (writer, group);
  bw_raster_save (raster, writer->to, group);
}

/* The sheet's own rasters, and those of the user's catalogue that its sources use, so that the
 * sheet can be opened elsewhere. */
static void
write_rasters (SheetWriter *writer, const BwSheet *sheet, const BwCatalogue *catalogue)
{
  for (guint i = 0; i < sheet->rasters->len; i++)
    write_raster (writer, sheet->rasters->pdata[i]);
  for (guint i = 0; i < sheet->sources->len; i++)
    {
      const BwRaster *raster = bw_sheet_raster (sheet, catalogue, bw_sheet_source (sheet, i));
      if (raster != NULL && own_raster (sheet, raster->id) == NULL
          && !bw_catalogue_is_shipped (catalogue, raster))
        write_raster (writer, raster);
    }
}

/* Groups that this version does not know stand at the end. */
static void
write_unknown (SheetWriter *writer)
{
  if (writer->from == NULL)
    return;
  g_auto (GStrv) groups = g_key_file_get_groups (writer->from, NULL);
  for (char **group = groups; *group != NULL; group++)
    {
      gboolean ours = g_str_has_prefix (*group, INPUT_PREFIX)
                      || g_str_has_prefix (*group, SOURCE_PREFIX)
                      || g_str_has_prefix (*group, RASTER_PREFIX);
      if (!ours && !g_hash_table_contains (writer->written, *group))
        begin_group (writer, *group);
    }
}

/* The first form of the file that can say all that @sheet holds. */
static int
form_of (const BwSheet *sheet)
{
  gboolean second = bw_fields_need_second_form (&bw_monitor_fields, sheet->monitor);
  for (guint i = 0; i < sheet->monitor->inputs->len && !second; i++)
    second = bw_fields_need_second_form (&bw_input_fields, bw_monitor_input (sheet->monitor, i));
  for (guint i = 0; i < sheet->sources->len && !second; i++)
    second = bw_fields_need_second_form (&bw_source_fields, bw_sheet_source (sheet, i));
  return second ? BW_SHEET_FORMAT : BW_SHEET_FORMAT_PRESETS;
}

/**
 * bw_sheet_to_text:
 * @catalogue: for the rasters that must travel with the sheet
 *
 * Returns: (transfer full): the sheet as bw_sheet_parse() reads it, with the comments, keys and
 * groups of the file it came from that this version does not know
 */
char *
bw_sheet_to_text (const BwSheet *sheet, const BwCatalogue *catalogue)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL, NULL);
  g_autoptr (GKeyFile) to = g_key_file_new ();
  g_autoptr (GHashTable) written = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  SheetWriter writer = { to, sheet->kept, written };

  begin_group (&writer, SHEET_GROUP);
  g_key_file_set_integer (to, SHEET_GROUP, "format", form_of (sheet));
  bw_fields_save (&bw_sheet_fields, sheet, to, SHEET_GROUP);
  begin_group (&writer, MONITOR_GROUP);
  bw_fields_save (&bw_monitor_fields, sheet->monitor, to, MONITOR_GROUP);
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    {
      const BwInput *input = bw_monitor_input (sheet->monitor, i);
      write_object (&writer, &bw_input_fields, input, input->group, INPUT_PREFIX);
    }
  for (guint i = 0; i < sheet->sources->len; i++)
    {
      const BwSource *source = bw_sheet_source (sheet, i);
      write_object (&writer, &bw_source_fields, source, source->group, SOURCE_PREFIX);
    }
  write_rasters (&writer, sheet, catalogue);
  write_unknown (&writer);
  if (sheet->kept != NULL)
    copy_comment (&writer, NULL, NULL);
  g_autofree char *text = g_key_file_to_data (to, NULL, NULL);
  return g_strconcat (text, sheet->kept_end, NULL);
}

/* A file is written only if it can be read again. */
static gboolean
check_readable (const char *text, gsize length, const char *path, const BwCatalogue *catalogue,
                GError **error)
{
  if (length > BW_KEYFILE_MAX_BYTES)
    {
      g_set_error (
          error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE,
          _ ("%1$s: has not been written: with all its notes the sheet has %2$.1f MiB, and more "
             "than %3$u MiB cannot be read again"),
          path, (double) length / (1024 * 1024), BW_KEYFILE_MAX_BYTES / (1024 * 1024));
      return FALSE;
    }
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwSheet) back = bw_sheet_parse (text, length, path, catalogue, faults);
  if (back != NULL)
    return TRUE;
  const GError *fault = faults->pdata[0];
  g_set_error (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE,
               _ ("%s; it has not been written, since it could not be read again"), fault->message);
  return FALSE;
}

/**
 * bw_sheet_save:
 * @path: where to; a symbolic link keeps pointing where it does
 *
 * Writes the sheet with bw_file_replace(), so that an interrupted save leaves the old file. A sheet
 * that bw_sheet_load() would refuse, such as one over 4 MiB, is not written.
 *
 * Returns: %FALSE with @error in %BW_SHEET_ERROR that names @path; the old file is then as it was,
 *   unless @error says more
 */
gboolean
bw_sheet_save (const BwSheet *sheet, const char *path, const BwCatalogue *catalogue,
               GError **error)
{
  g_return_val_if_fail (sheet != NULL && path != NULL, FALSE);
  g_autofree char *text = bw_sheet_to_text (sheet, catalogue);
  gsize length = strlen (text);
  g_autoptr (GError) trouble = NULL;

  if (!check_readable (text, length, path, catalogue, error))
    return FALSE;
  if (bw_file_replace (path, text, length, &trouble))
    return TRUE;
  g_set_error_literal (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE, trouble->message);
  return FALSE;
}
