/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

#include "core/raster/results.h"

/* The lists of what a catalogue holds: a few columns for people, all of it for scripts. */

static void
add_columns (BwNode *table, const char *thing, const char *second, BwColumnKind second_kind)
{
  bw_node_column (table, BW_COLUMN_WORDS, thing, NULL);
  bw_node_column (table, second_kind, second, NULL);
}

/* A kind as it is written on the command line and in files. */
static BwValue
id_of (const char *key, const BwKindTable *table, guint kind)
{
  return kind < table->n ? bw_value_read_as (bw_value_kind (key, table, kind),
                                             bw_kind_id (table, kind))
                         : bw_value_kind (key, table, kind);
}

/* What all but a raster have. */
static void
add_head (BwNode *row, const char *id, const char *name, const char *origin_key, const char *origin,
          const char *note)
{
  bw_node_member (row, bw_value_words ("id", id));
  bw_node_member (row, bw_value_words ("name", name));
  bw_node_member (row, bw_value_words (origin_key, origin));
  bw_node_member (row, bw_value_words ("note", note));
}

/* Rasters */

/* One of the figures that @row has already, to three decimals. */
static void
add_rate (BwNode *row, const char *key, const char *unit)
{
  double rate_hz = bw_node_value (row, key)->number;
  bw_node_cell (row, bw_value_fixed (key, rate_hz, BW_DIMENSION_FREQUENCY, unit, 3));
}

static void
add_raster (BwNode *row, const BwRaster *raster)
{
  bw_raster_say (row, raster);
  row->for_scripts = TRUE;
  bw_node_cell (row, bw_value_words ("id", raster->id));
  add_rate (row, "line_rate_hz", "kHz");
  add_rate (row, "field_rate_hz", "Hz");
  bw_node_cell (row,
                bw_value_count ("lines_per_frame", bw_node_value (row, "lines_per_frame")->number));
  bw_node_cell (row, bw_value_words ("name", raster->name));
}

static void
add_rasters (BwNode *to, const BwCatalogue *catalogue)
{
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  BwNode *table = bw_node_table (to, "rasters", NULL);

  bw_node_column (table, BW_COLUMN_WORDS, _ ("raster"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("line rate"), "kHz");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("field rate"), "Hz");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("lines"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("name"), NULL);
  for (guint i = 0; i < rasters->len; i++)
    add_raster (bw_node_row (table), rasters->pdata[i]);
}

/* Monitors */

static void
add_bands (BwNode *row, const char *key, const BwBands *bands)
{
  BwNode *table = bw_node_table (row, key, NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      BwNode *band = bw_node_row (table);
      bw_node_member (band, bw_value_exact ("low", bands->at[i].low, BW_DIMENSION_FREQUENCY));
      bw_node_member (band, bw_value_exact ("high", bands->at[i].high, BW_DIMENSION_FREQUENCY));
    }
}

static void
add_inputs (BwNode *row, const BwMonitor *monitor)
{
  BwNode *table = bw_node_table (row, "inputs", NULL);
  for (guint i = 0; i < monitor->inputs->len; i++)
    {
      const BwInput *input = bw_monitor_input (monitor, i);
      BwNode *one = bw_node_row (table);
      bw_node_member (one, bw_value_words ("name", input->name));
      bw_node_member (one, bw_value_set ("connectors", &bw_connectors, input->connectors));
      bw_node_member (one, bw_value_set ("signals", &bw_signals, input->signals));
      bw_node_member (one, bw_value_set ("colour_systems", &bw_colour_systems, input->systems));
      bw_node_member (one, bw_value_set ("syncs", &bw_sync_kinds, input->syncs));
    }
}

static void
add_monitors (BwNode *to, const BwCatalogue *catalogue)
{
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  BwNode *table = bw_node_table (to, "monitors", NULL);

  table->order = "id name source note line_rates_hz field_rates_hz inputs";
  add_columns (table, _ ("monitor"), _ ("line rates"), BW_COLUMN_SAYS);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("inputs"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("name"), NULL);
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("id", monitor->id));
      char *rates = bw_quantity_format_bands (&monitor->line_rates_hz, BW_DIMENSION_FREQUENCY, 5,
                                              bw_result_mark (to->result));
      bw_node_cell (row, bw_value_says (NULL, bw_node_take (row, rates)));
      bw_node_cell (row, bw_value_count (NULL, monitor->inputs->len));
      bw_node_cell (row, bw_value_words ("name", monitor->name));
      add_head (row, monitor->id, monitor->name, "source", monitor->source, monitor->note);
      add_bands (row, "line_rates_hz", &monitor->line_rates_hz);
      add_bands (row, "field_rates_hz", &monitor->field_rates_hz);
      add_inputs (row, monitor);
    }
}

/* Sources */

static void
add_sources (BwNode *to, const BwCatalogue *catalogue)
{
  GPtrArray *sources = bw_catalogue_sources (catalogue);
  BwNode *table = bw_node_table (to, "sources", NULL);

  table->order = "id name origin note raster signal syncs colour_system connector";
  add_columns (table, _ ("source"), _ ("raster"), BW_COLUMN_WORDS);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("signal"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("name"), NULL);
  for (guint i = 0; i < sources->len; i++)
    {
      const BwSource *source = sources->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("id", source->id));
      bw_node_cell (row, bw_value_words ("raster", source->raster));
      bw_node_cell (row, id_of ("signal", &bw_signals, source->signal));
      bw_node_cell (row, bw_value_words ("name", source->name));
      add_head (row, source->id, source->name, "origin", source->origin, source->note);
      bw_node_member (row, bw_value_set ("syncs", &bw_sync_kinds, source->syncs));
      bw_node_member (row, bw_value_kind ("colour_system", &bw_colour_systems, source->system));
      bw_node_member (row, bw_value_kind ("connector", &bw_connectors, source->connector));
    }
}

/* Adaptors: an empty array stands for any kind, or for what comes. */

static void
add_adaptors (BwNode *to, const BwCatalogue *catalogue)
{
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  BwNode *table = bw_node_table (to, "adaptors", NULL);

  table->order = "id name origin note kind takes_signals takes_syncs gives_signals gives_syncs "
                 "detail_hz price";
  add_columns (table, _ ("adaptor"), _ ("kind"), BW_COLUMN_WORDS);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("name"), NULL);
  for (guint i = 0; i < adaptors->len; i++)
    {
      const BwAdaptor *adaptor = adaptors->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("id", adaptor->id));
      bw_node_cell (row, id_of ("kind", &bw_adaptor_kinds, adaptor->kind));
      bw_node_cell (row, bw_value_words ("name", adaptor->name));
      add_head (row, adaptor->id, adaptor->name, "origin", adaptor->origin, adaptor->note);
      bw_node_member (row, bw_value_set ("takes_signals", &bw_signals, adaptor->takes_signals));
      bw_node_member (row, bw_value_set ("takes_syncs", &bw_sync_kinds, adaptor->takes_syncs));
      bw_node_member (row, bw_value_set ("gives_signals", &bw_signals, adaptor->gives_signals));
      bw_node_member (row, bw_value_set ("gives_syncs", &bw_sync_kinds, adaptor->gives_syncs));
      bw_node_member (row, bw_value_if (adaptor->detail_hz > 0,
                                        bw_value_exact ("detail_hz", adaptor->detail_hz,
                                                        BW_DIMENSION_FREQUENCY)));
      bw_node_member (row,
                      bw_value_words ("price", *adaptor->price != '\0' ? adaptor->price : NULL));
    }
}

/**
 * bw_catalogue_say:
 *
 * Adds a table of one part of the catalogue.
 */
void
bw_catalogue_say (BwNode *to, const BwCatalogue *catalogue, BwCatalogueKind kind)
{
  static void (*const add[BW_N_CATALOGUES]) (BwNode *, const BwCatalogue *) = {
    [BW_CATALOGUE_RASTERS] = add_rasters,
    [BW_CATALOGUE_MONITORS] = add_monitors,
    [BW_CATALOGUE_SOURCES] = add_sources,
    [BW_CATALOGUE_ADAPTORS] = add_adaptors,
  };
  g_return_if_fail (to != NULL && catalogue != NULL && kind < BW_N_CATALOGUES);
  add[kind](to, catalogue);
}
