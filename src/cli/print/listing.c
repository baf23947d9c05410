/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"
#include "raster-json.h"

/* The array @key in an open object. */
static void
write_array (const GPtrArray *items, const char *key,
             void (*write) (gconstpointer item, BwJson *json), BwJson *json)
{
  bw_json_begin_array (json, key);
  for (guint i = 0; i < items->len; i++)
    {
      bw_json_begin_object (json, NULL);
      write (items->pdata[i], json);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

/* What all but a raster begin with. */
static void
head_json (BwJson *json, const char *id, const char *name, const char *origin_key,
           const char *origin, const char *note)
{
  bw_json_string (json, "id", id);
  bw_json_string (json, "name", name);
  bw_json_string (json, origin_key, origin);
  bw_json_string (json, "note", note);
}

/* Rasters */

static void
add_raster_row (BwTable *table, const BwRaster *raster)
{
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);
  g_autofree char *line_khz = bw_words_fixed (figures.line_rate_hz / 1e3, 3);
  g_autofree char *field_hz = bw_words_fixed (figures.field_rate_hz, 3);
  g_autofree char *lines = g_strdup_printf ("%d", figures.lines_per_frame);
  bw_table_add_row (table, raster->id, line_khz, field_hz, lines, raster->name, NULL);
}

/**
 * bw_list_rasters_text:
 *
 * Appends a table of the rasters: id, line rate, field rate, lines of a whole frame, name.
 */
void
bw_list_rasters_text (const BwCatalogue *catalogue, GString *to)
{
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  g_autoptr (BwTable) table = bw_table_new (5);

  for (guint column = 1; column <= 3; column++)
    bw_table_set_right (table, column);
  bw_table_add_row (table, _ ("raster"), _ ("kHz"), _ ("Hz"), _ ("lines"), _ ("name"), NULL);
  for (guint i = 0; i < rasters->len; i++)
    add_raster_row (table, rasters->pdata[i]);
  bw_table_append_to (table, to, 0);
}

static void
raster_json (gconstpointer item, BwJson *json)
{
  bw_raster_to_json (item, json);
}

/**
 * bw_list_rasters_json:
 *
 * Writes the array "rasters", each with all that follows from it.
 */
void
bw_list_rasters_json (const BwCatalogue *catalogue, BwJson *json)
{
  write_array (bw_catalogue_rasters (catalogue), "rasters", raster_json, json);
}

/* Monitors */

/* "15.4–16 kHz; 31–34 kHz" */
static char *
bands_text (const BwBands *bands)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      g_autofree char *range = bw_quantity_format_range (bands->at[i], BW_DIMENSION_FREQUENCY, 5,
                                                         bw_quantity_locale_mark ());
      g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", range);
    }
  return g_string_free (text, FALSE);
}

/**
 * bw_list_monitors_text:
 *
 * Appends a table of the monitors: id, line rates, number of inputs, name.
 */
void
bw_list_monitors_text (const BwCatalogue *catalogue, GString *to)
{
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  g_autoptr (BwTable) table = bw_table_new (4);

  bw_table_set_width (table, 1, 0, 26);
  bw_table_set_right (table, 2);
  bw_table_add_row (table, _ ("monitor"), _ ("line rates"), _ ("inputs"), _ ("name"), NULL);
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      g_autofree char *rates = bands_text (&monitor->line_rates_hz);
      g_autofree char *inputs = g_strdup_printf ("%u", monitor->inputs->len);
      bw_table_add_row (table, monitor->id, rates, inputs, monitor->name, NULL);
    }
  bw_table_append_to (table, to, 0);
}

static void
bands_json (BwJson *json, const char *key, const BwBands *bands)
{
  bw_json_begin_array (json, key);
  for (guint i = 0; i < bands->n; i++)
    {
      bw_json_begin_object (json, NULL);
      bw_json_number (json, "low", bands->at[i].low);
      bw_json_number (json, "high", bands->at[i].high);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
set_json (BwJson *json, const char *key, const BwKindTable *kinds, guint set)
{
  bw_json_begin_array (json, key);
  for (guint i = 0; i < kinds->n; i++)
    if (set & BW_BIT (i))
      bw_json_string (json, NULL, bw_kind_id (kinds, i));
  bw_json_end_array (json);
}

static void
input_json (BwJson *json, const BwInput *input)
{
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "name", input->name);
  set_json (json, "connectors", &bw_connectors, input->connectors);
  set_json (json, "signals", &bw_signals, input->signals);
  set_json (json, "colour_systems", &bw_colour_systems, input->systems);
  set_json (json, "syncs", &bw_sync_kinds, input->syncs);
  bw_json_end_object (json);
}

static void
monitor_json (gconstpointer item, BwJson *json)
{
  const BwMonitor *monitor = item;

  head_json (json, monitor->id, monitor->name, "source", monitor->source, monitor->note);
  bands_json (json, "line_rates_hz", &monitor->line_rates_hz);
  bands_json (json, "field_rates_hz", &monitor->field_rates_hz);
  bw_json_begin_array (json, "inputs");
  for (guint i = 0; i < monitor->inputs->len; i++)
    input_json (json, bw_monitor_input (monitor, i));
  bw_json_end_array (json);
}

/**
 * bw_list_monitors_json:
 *
 * Writes the array "monitors", with the scan bands and the inputs of each.
 */
void
bw_list_monitors_json (const BwCatalogue *catalogue, BwJson *json)
{
  write_array (bw_catalogue_monitors (catalogue), "monitors", monitor_json, json);
}

/* Sources */

/**
 * bw_list_sources_text:
 *
 * Appends a table of the sources: id, raster, signal kind, name.
 */
void
bw_list_sources_text (const BwCatalogue *catalogue, GString *to)
{
  GPtrArray *sources = bw_catalogue_sources (catalogue);
  g_autoptr (BwTable) table = bw_table_new (4);

  bw_table_add_row (table, _ ("source"), _ ("raster"), _ ("signal"), _ ("name"), NULL);
  for (guint i = 0; i < sources->len; i++)
    {
      const BwSource *source = sources->pdata[i];
      bw_table_add_row (table, source->id, source->raster, bw_kind_id (&bw_signals, source->signal),
                        source->name, NULL);
    }
  bw_table_append_to (table, to, 0);
}

static void
source_json (gconstpointer item, BwJson *json)
{
  const BwSource *source = item;

  head_json (json, source->id, source->name, "origin", source->origin, source->note);
  bw_json_string (json, "raster", source->raster);
  bw_json_string (json, "signal", bw_kind_id (&bw_signals, source->signal));
  set_json (json, "syncs", &bw_sync_kinds, source->syncs);
  bw_json_string (json, "colour_system", bw_kind_id (&bw_colour_systems, source->system));
  bw_json_string (json, "connector", bw_kind_id (&bw_connectors, source->connector));
}

/**
 * bw_list_sources_json:
 *
 * Writes the array "sources", with the raster and the kinds of each.
 */
void
bw_list_sources_json (const BwCatalogue *catalogue, BwJson *json)
{
  write_array (bw_catalogue_sources (catalogue), "sources", source_json, json);
}

/* Adaptors */

/**
 * bw_list_adaptors_text:
 *
 * Appends a table of the adaptors: id, kind, name.
 */
void
bw_list_adaptors_text (const BwCatalogue *catalogue, GString *to)
{
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  g_autoptr (BwTable) table = bw_table_new (3);

  bw_table_add_row (table, _ ("adaptor"), _ ("kind"), _ ("name"), NULL);
  for (guint i = 0; i < adaptors->len; i++)
    {
      const BwAdaptor *adaptor = adaptors->pdata[i];
      bw_table_add_row (table, adaptor->id, bw_kind_id (&bw_adaptor_kinds, adaptor->kind),
                        adaptor->name, NULL);
    }
  bw_table_append_to (table, to, 0);
}

static void
adaptor_json (gconstpointer item, BwJson *json)
{
  const BwAdaptor *adaptor = item;

  head_json (json, adaptor->id, adaptor->name, "origin", adaptor->origin, adaptor->note);
  bw_json_string (json, "kind", bw_kind_id (&bw_adaptor_kinds, adaptor->kind));
  set_json (json, "takes_signals", &bw_signals, adaptor->takes_signals);
  set_json (json, "takes_syncs", &bw_sync_kinds, adaptor->takes_syncs);
  set_json (json, "gives_signals", &bw_signals, adaptor->gives_signals);
  set_json (json, "gives_syncs", &bw_sync_kinds, adaptor->gives_syncs);
  bw_json_number_if (json, "detail_hz", adaptor->detail_hz > 0, adaptor->detail_hz);
  bw_json_string (json, "price", *adaptor->price != '\0' ? adaptor->price : NULL);
}

/**
 * bw_list_adaptors_json:
 *
 * Writes the array "adaptors", with what each takes and gives; an empty array stands for any kind,
 * or for what comes.
 */
void
bw_list_adaptors_json (const BwCatalogue *catalogue, BwJson *json)
{
  write_array (bw_catalogue_adaptors (catalogue), "adaptors", adaptor_json, json);
}
