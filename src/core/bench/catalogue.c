/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue.h"

#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "bw-catalogue-resources.h"
#include "core/base/keyfile.h"

#define RESOURCE_PREFIX "/org/breezeway/Breezeway/catalogue/"

static const char *const file_names[BW_N_CATALOGUES] = {
  [BW_CATALOGUE_RASTERS] = "rasters.ini",
  [BW_CATALOGUE_MONITORS] = "monitors.ini",
  [BW_CATALOGUE_SOURCES] = "sources.ini",
  [BW_CATALOGUE_ADAPTORS] = "adaptors.ini",
};

struct _BwCatalogue
{
  GPtrArray *rasters;  /* owned BwRaster */
  GPtrArray *monitors; /* owned BwMonitor */
  GPtrArray *sources;  /* owned BwSource */
  GPtrArray *adaptors; /* owned BwAdaptor */
  GHashTable *names;   /* id or alias, owned, to a borrowed BwRaster */
  GHashTable *shipped; /* borrowed BwRaster that came with the program */
  guint unread;        /* a bit for each BwCatalogueKind that is read when somebody asks for it */
  GRecMutex reading;   /* held meanwhile: two threads may ask */
};

/* What the reader of one file's groups knows. */
typedef struct
{
  BwCatalogue *catalogue;
  const char *file;
  gboolean shipping;
  GPtrArray *monitors; /* of this file, owned BwMonitor */
  GPtrArray *faults;
} Reader;

/**
 * bw_catalogue_new_empty:
 *
 * Returns: (transfer full): a catalogue with nothing in it
 */
BwCatalogue *
bw_catalogue_new_empty (void)
{
  BwCatalogue *catalogue = g_new0 (BwCatalogue, 1);
  catalogue->rasters = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_raster_free);
  catalogue->monitors = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_monitor_free);
  catalogue->sources = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_source_free);
  catalogue->adaptors = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_adaptor_free);
  catalogue->names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  catalogue->shipped = g_hash_table_new (NULL, NULL);
  g_rec_mutex_init (&catalogue->reading);
  return catalogue;
}

/**
 * bw_catalogue_free:
 * @catalogue: (nullable) (transfer full): freed with all it owns
 */
void
bw_catalogue_free (BwCatalogue *catalogue)
{
  if (catalogue == NULL)
    return;
  g_hash_table_unref (catalogue->shipped);
  g_hash_table_unref (catalogue->names);
  g_ptr_array_unref (catalogue->rasters);
  g_ptr_array_unref (catalogue->monitors);
  g_ptr_array_unref (catalogue->sources);
  g_ptr_array_unref (catalogue->adaptors);
  g_rec_mutex_clear (&catalogue->reading);
  g_free (catalogue);
}

/**
 * bw_catalogue_user_folder:
 *
 * Returns: (transfer full): the folder of the user's own catalogue, which need not exist:
 * breezeway/catalogue in the XDG data folder
 */
char *
bw_catalogue_user_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "breezeway", "catalogue", NULL);
}

static void
add_fault (GPtrArray *faults, GError *error)
{
  if (faults != NULL)
    g_ptr_array_add (faults, error);
  else
    g_error_free (error);
}

/* Rasters */

static void
forget_names (BwCatalogue *catalogue, const BwRaster *raster)
{
  GHashTableIter iter;
  gpointer value;
  g_hash_table_iter_init (&iter, catalogue->names);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    if (value == raster)
      g_hash_table_iter_remove (&iter);
}

static void
learn_names (BwCatalogue *catalogue, BwRaster *raster)
{
  g_hash_table_replace (catalogue->names, g_strdup (raster->id), raster);
  if (raster->aliases == NULL)
    return;
  g_auto (GStrv) aliases = g_strsplit (raster->aliases, ";", -1);
  for (char **alias = aliases; *alias != NULL; alias++)
    {
      const BwRaster *holder = g_hash_table_lookup (catalogue->names, g_strstrip (*alias));
      gboolean is_id = holder != NULL && strcmp (holder->id, *alias) == 0;
      if (**alias != '\0' && !is_id)
        g_hash_table_replace (catalogue->names, g_strdup (*alias), raster);
    }
}

static void
take_raster (Reader *reader, BwRaster *raster)
{
  BwCatalogue *catalogue = reader->catalogue;
  BwRaster *old = g_hash_table_lookup (catalogue->names, raster->id);

  if (old != NULL && strcmp (old->id, raster->id) == 0)
    {
      guint index;
      /* The other names of the old one go on unless the new one has its own. */
      if (raster->aliases == NULL || *raster->aliases == '\0')
        {
          g_free (raster->aliases);
          raster->aliases = g_strdup (old->aliases);
        }
      forget_names (catalogue, old);
      g_hash_table_remove (catalogue->shipped, old);
      g_ptr_array_find (catalogue->rasters, old, &index);
      bw_raster_free (old);
      catalogue->rasters->pdata[index] = raster;
    }
  else
    g_ptr_array_add (catalogue->rasters, raster);
  learn_names (catalogue, raster);
  if (reader->shipping)
    g_hash_table_add (catalogue->shipped, raster);
}

static void
read_raster (const char *group, GKeyFile *keys, gpointer user_data)
{
  Reader *reader = user_data;
  GError *error = NULL;
  BwRaster *raster = bw_raster_load (keys, group, group, reader->file, &error);
  if (raster != NULL)
    take_raster (reader, raster);
  else
    add_fault (reader->faults, error);
}

/* Sources */

static void
read_source (const char *group, GKeyFile *keys, gpointer user_data)
{
  Reader *reader = user_data;
  g_autoptr (BwSource) source = bw_source_new ();
  GError *error = NULL;
  GPtrArray *sources = reader->catalogue->sources;

  source->id = g_strdup (group);
  if (!bw_fields_load (&bw_source_fields, source, keys, group, reader->file, &error)
      || !bw_source_check (source, &error))
    {
      if (error->domain == BW_SOURCE_ERROR)
        g_prefix_error (&error, "%s: [%s]: ", reader->file, group);
      add_fault (reader->faults, error);
      return;
    }
  for (guint i = 0; i < sources->len; i++)
    if (strcmp (((BwSource *) sources->pdata[i])->id, group) == 0)
      {
        bw_source_free (sources->pdata[i]);
        sources->pdata[i] = g_steal_pointer (&source);
        return;
      }
  g_ptr_array_add (sources, g_steal_pointer (&source));
}

/* Adaptors */

static gboolean
check_adaptor_rasters (const BwCatalogue *catalogue, const BwAdaptor *adaptor, GError **error)
{
  g_auto (GStrv) ids = bw_adaptor_rasters (adaptor);
  for (char **id = ids; *id != NULL; id++)
    if (bw_catalogue_raster (catalogue, *id) == NULL)
      {
        g_set_error (error, BW_ADAPTOR_ERROR, BW_ADAPTOR_ERROR_RASTER,
                     _ ("gives_rasters: there is no raster “%s” in the catalogue"), *id);
        return FALSE;
      }
  return TRUE;
}

static void
read_adaptor (const char *group, GKeyFile *keys, gpointer user_data)
{
  Reader *reader = user_data;
  g_autoptr (BwAdaptor) adaptor = bw_adaptor_new ();
  GError *error = NULL;
  GPtrArray *adaptors = reader->catalogue->adaptors;

  adaptor->id = g_strdup (group);
  if (!bw_fields_load (&bw_adaptor_fields, adaptor, keys, group, reader->file, &error)
      || !bw_adaptor_check (adaptor, &error)
      || !check_adaptor_rasters (reader->catalogue, adaptor, &error))
    {
      if (error->domain == BW_ADAPTOR_ERROR)
        g_prefix_error (&error, "%s: [%s] ", reader->file, group);
      add_fault (reader->faults, error);
      return;
    }
  for (guint i = 0; i < adaptors->len; i++)
    if (strcmp (((BwAdaptor *) adaptors->pdata[i])->id, group) == 0)
      {
        bw_adaptor_free (adaptors->pdata[i]);
        adaptors->pdata[i] = g_steal_pointer (&adaptor);
        return;
      }
  g_ptr_array_add (adaptors, g_steal_pointer (&adaptor));
}

/* Monitors: group "id" holds the set, groups "id/1", "id/2" … its inputs */

static BwMonitor *
find_monitor (GPtrArray *monitors, const char *id)
{
  for (guint i = 0; i < monitors->len; i++)
    if (strcmp (((BwMonitor *) monitors->pdata[i])->id, id) == 0)
      return monitors->pdata[i];
  return NULL;
}

static void
read_input (Reader *reader, const char *group, GKeyFile *keys)
{
  g_autofree char *id = g_strndup (group, strcspn (group, "/"));
  BwMonitor *monitor = find_monitor (reader->monitors, id);
  g_autoptr (BwInput) input = bw_input_new ();
  GError *error = NULL;

  if (monitor == NULL)
    error = g_error_new (BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_KEY,
                         _ ("%1$s: [%2$s]: there is no sound monitor [%3$s] before this input"),
                         reader->file, group, id);
  else if (bw_fields_load (&bw_input_fields, input, keys, group, reader->file, &error)
           && !bw_input_check (input, &error))
    g_prefix_error (&error, "%s: [%s]: ", reader->file, group);

  if (error != NULL)
    add_fault (reader->faults, error);
  else
    g_ptr_array_add (monitor->inputs, g_steal_pointer (&input));
}

static void
read_monitor (const char *group, GKeyFile *keys, gpointer user_data)
{
  Reader *reader = user_data;
  g_autoptr (BwMonitor) monitor = NULL;
  GError *error = NULL;

  if (strchr (group, '/') != NULL)
    {
      read_input (reader, group, keys);
      return;
    }
  monitor = bw_monitor_new ();
  monitor->id = g_strdup (group);
  if (bw_fields_load (&bw_monitor_fields, monitor, keys, group, reader->file, &error))
    g_ptr_array_add (reader->monitors, g_steal_pointer (&monitor));
  else
    add_fault (reader->faults, error);
}

/* Moves the monitors of one file into the catalogue, replacing those of the same id. */
static void
merge_monitors (Reader *reader)
{
  GPtrArray *all = reader->catalogue->monitors;
  for (guint i = 0; i < reader->monitors->len; i++)
    {
      BwMonitor *monitor = reader->monitors->pdata[i];
      BwMonitor *old = find_monitor (all, monitor->id);
      guint index;

      if (monitor->inputs->len == 0)
        {
          add_fault (reader->faults,
                     g_error_new (BW_MONITOR_ERROR, BW_MONITOR_ERROR_NO_INPUT,
                                  _ ("%1$s: [%2$s]: has no sound input; write one as [%3$s/1]"),
                                  reader->file, monitor->id, monitor->id));
          bw_monitor_free (monitor);
        }
      else if (old != NULL && g_ptr_array_find (all, old, &index))
        {
          bw_monitor_free (old);
          all->pdata[index] = monitor;
        }
      else
        g_ptr_array_add (all, monitor);
    }
}

static void
add_text (BwCatalogue *catalogue, BwCatalogueKind kind, const char *text, gsize length,
          const char *file, gboolean shipping, GPtrArray *faults)
{
  static const BwGroupFunc readers[BW_N_CATALOGUES] = {
    [BW_CATALOGUE_RASTERS] = read_raster,
    [BW_CATALOGUE_MONITORS] = read_monitor,
    [BW_CATALOGUE_SOURCES] = read_source,
    [BW_CATALOGUE_ADAPTORS] = read_adaptor,
  };
  g_autoptr (GPtrArray) own_faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  Reader reader = {
    .catalogue = catalogue,
    .file = file,
    .shipping = shipping,
    .monitors = g_ptr_array_new (),
    .faults = faults != NULL ? faults : own_faults,
  };
  bw_keyfile_each_group (text, length, file, readers[kind], &reader, reader.faults);
  merge_monitors (&reader);
  g_ptr_array_unref (reader.monitors);
}

static void
add_shipped (BwCatalogue *catalogue, BwCatalogueKind kind, GPtrArray *faults)
{
  g_autofree char *path = g_strconcat (RESOURCE_PREFIX, file_names[kind], NULL);
  gsize length;
  g_autofree char *text = bw_keyfile_shipped (bw_catalogue_get_resource (), path, &length);
  g_return_if_fail (text != NULL);
  add_text (catalogue, kind, text, length, file_names[kind], TRUE, faults);
}

/* Reads the shipped file of @kind, if that has been put off. */
static void
need (const BwCatalogue *asked, BwCatalogueKind kind)
{
  BwCatalogue *catalogue = (BwCatalogue *) asked; /* what it says stays the same */

  if ((g_atomic_int_get (&catalogue->unread) & (1u << kind)) == 0)
    return;
  g_rec_mutex_lock (&catalogue->reading);
  if ((catalogue->unread & (1u << kind)) != 0)
    {
      g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
      add_shipped (catalogue, kind, faults);
      for (guint i = 0; i < faults->len; i++)
        g_critical ("%s", ((GError *) faults->pdata[i])->message);
      g_atomic_int_and (&catalogue->unread, ~(1u << kind));
    }
  g_rec_mutex_unlock (&catalogue->reading);
}

/**
 * bw_catalogue_add_text:
 * @kind: what the text describes
 * @file: the name to use in errors
 * @faults: (nullable) (element-type GError): receives one error for each bad entry, naming file,
 *   group and key; the other entries are taken
 *
 * Adds the entries of a catalogue file to @catalogue; an entry replaces one of the same id.
 */
void
bw_catalogue_add_text (BwCatalogue *catalogue, BwCatalogueKind kind, const char *text, gsize length,
                       const char *file, GPtrArray *faults)
{
  g_return_if_fail (catalogue != NULL && text != NULL && file != NULL);
  need (catalogue, kind);
  add_text (catalogue, kind, text, length, file, FALSE, faults);
}

static void
add_user (BwCatalogue *catalogue, BwCatalogueKind kind, const char *folder, GPtrArray *faults)
{
  g_autofree char *path = g_build_filename (folder, file_names[kind], NULL);
  g_autofree char *text = NULL;
  gsize length;
  GError *error = NULL;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return;
  if (bw_keyfile_read (path, &text, &length, &error))
    bw_catalogue_add_text (catalogue, kind, text, length, path, faults);
  else
    add_fault (faults, error);
}

/**
 * bw_catalogue_new:
 * @user_folder: (nullable): folder with the user's rasters.ini, monitors.ini, sources.ini and
 *   adaptors.ini, any of which may be missing
 * @faults: (nullable) (element-type GError): receives one error for each bad entry
 *
 * The user's files are read at once, and what is wrong with them is said; of the shipped ones each is
 * read when somebody asks for what it holds.
 *
 * Returns: (transfer full): the shipped catalogue with the user's additions
 */
BwCatalogue *
bw_catalogue_new (const char *user_folder, GPtrArray *faults)
{
  BwCatalogue *catalogue = bw_catalogue_new_empty ();
  catalogue->unread = (1u << BW_N_CATALOGUES) - 1;
  for (BwCatalogueKind kind = 0; user_folder != NULL && kind < BW_N_CATALOGUES; kind++)
    add_user (catalogue, kind, user_folder, faults);
  return catalogue;
}

/**
 * bw_catalogue_rasters:
 *
 * Returns: (transfer none) (element-type BwRaster): all rasters, in the files' order
 */
GPtrArray *
bw_catalogue_rasters (const BwCatalogue *catalogue)
{
  g_return_val_if_fail (catalogue != NULL, NULL);
  need (catalogue, BW_CATALOGUE_RASTERS);
  return catalogue->rasters;
}

/**
 * bw_catalogue_monitors:
 *
 * Returns: (transfer none) (element-type BwMonitor): all monitors, in the files' order
 */
GPtrArray *
bw_catalogue_monitors (const BwCatalogue *catalogue)
{
  g_return_val_if_fail (catalogue != NULL, NULL);
  need (catalogue, BW_CATALOGUE_MONITORS);
  return catalogue->monitors;
}

/**
 * bw_catalogue_sources:
 *
 * Returns: (transfer none) (element-type BwSource): all sources, in the files' order
 */
GPtrArray *
bw_catalogue_sources (const BwCatalogue *catalogue)
{
  g_return_val_if_fail (catalogue != NULL, NULL);
  need (catalogue, BW_CATALOGUE_SOURCES);
  return catalogue->sources;
}

/**
 * bw_catalogue_adaptors:
 *
 * Returns: (transfer none) (element-type BwAdaptor): all adaptors, in the files' order
 */
GPtrArray *
bw_catalogue_adaptors (const BwCatalogue *catalogue)
{
  g_return_val_if_fail (catalogue != NULL, NULL);
  need (catalogue, BW_CATALOGUE_ADAPTORS);
  return catalogue->adaptors;
}

/**
 * bw_catalogue_raster:
 * @id: an id or one of its aliases
 *
 * Returns: (transfer none) (nullable): the raster
 */
const BwRaster *
bw_catalogue_raster (const BwCatalogue *catalogue, const char *id)
{
  g_return_val_if_fail (catalogue != NULL && id != NULL, NULL);
  need (catalogue, BW_CATALOGUE_RASTERS);
  return g_hash_table_lookup (catalogue->names, id);
}

/**
 * bw_catalogue_usual_raster:
 *
 * Returns: (transfer none) (nullable): the raster that usually goes with @system; without a colour
 *   system that of 525 lines
 */
const BwRaster *
bw_catalogue_usual_raster (const BwCatalogue *catalogue, BwColourSystem system)
{
  g_return_val_if_fail (catalogue != NULL, NULL);
  const char *id = bw_system_facts (system)->raster;
  return bw_catalogue_raster (catalogue,
                              id != NULL ? id : bw_system_facts (BW_SYSTEM_NTSC_M)->raster);
}

/**
 * bw_catalogue_is_shipped:
 *
 * Returns: whether @raster came with the program, so that any other copy of it has it too
 */
gboolean
bw_catalogue_is_shipped (const BwCatalogue *catalogue, const BwRaster *raster)
{
  g_return_val_if_fail (catalogue != NULL && raster != NULL, FALSE);
  return g_hash_table_contains (catalogue->shipped, raster);
}
