/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pick-lists.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/pick-item.h"
#include "bench-text.h"
#include "core/circuit/drive.h"
#include "core/interchange/displays.h"
#include "core/raster/colour-system.h"

static void
add (GListStore *list, const char *title, const char *subtitle, const char *id, gconstpointer thing)
{
  g_autoptr (BwPickItem) item = bw_pick_item_new (title, subtitle, id, thing);
  g_list_store_append (list, item);
}

static char *
raster_words (const BwRaster *raster)
{
  BwRasterFigures figures;
  char mark = bw_quantity_locale_mark ();
  bw_raster_figures (raster, &figures);
  g_autofree char *line = bw_quantity_format (figures.line_rate_hz, BW_DIMENSION_FREQUENCY, 5,
                                              mark);
  g_autofree char *field = bw_quantity_format (figures.field_rate_hz, BW_DIMENSION_FREQUENCY, 4,
                                               mark);
  return g_strdup_printf ("%s, %s, %s", line, field, bw_kind_label (&bw_scans, raster->scan));
}

static void
add_rasters (GListStore *list, GPtrArray *rasters)
{
  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      g_autofree char *words = raster_words (raster);
      add (list, raster->name, words, raster->id, NULL);
    }
}

#define BLANK_ID "blank"

/**
 * bw_pick_item_is_blank:
 *
 * Returns: whether the item stands for something of which nothing is known yet
 */
gboolean
bw_pick_item_is_blank (BwPickItem *item)
{
  return bw_pick_item_get_thing (item) == NULL
         && g_str_equal (bw_pick_item_get_id (item), BLANK_ID);
}

/**
 * bw_pick_list_rasters:
 *
 * Returns: (transfer full): none that is known, with an empty id; the rasters of the sheet, then
 * those of the catalogue
 */
GListModel *
bw_pick_list_rasters (BwDocument *document)
{
  GListStore *list = g_list_store_new (BW_TYPE_PICK_ITEM);
  add (list, _ ("not known"), _ ("which raster the source gives is to be found out"), "", NULL);
  add_rasters (list, bw_document_get_sheet (document)->rasters);
  add_rasters (list, bw_catalogue_rasters (bw_document_get_catalogue (document)));
  return G_LIST_MODEL (list);
}

/* The displays that are joined to this computer, as their EDIDs describe them; @list keeps them. */
static void
add_displays (GListStore *list, const BwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) displays = bw_displays_list (BW_DISPLAYS_FOLDER);
  GPtrArray *monitors = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_monitor_free);

  g_object_set_data_full (G_OBJECT (list), "displays", monitors,
                          (GDestroyNotify) g_ptr_array_unref);
  for (guint i = 0; i < displays->len; i++)
    {
      const BwDisplay *display = bw_display_at (displays, i);
      g_autoptr (BwEdid) edid = bw_edid_load (display->path, NULL);
      BwMonitor *monitor = edid != NULL ? bw_edid_to_monitor (edid, catalogue, NULL, NULL) : NULL;
      if (monitor == NULL)
        continue;
      g_ptr_array_add (monitors, monitor);
      g_autofree char *words = g_strdup_printf (_ ("Joined to this computer at %s"), display->name);
      add (list, monitor->name, words, display->name, monitor);
    }
}

/**
 * bw_pick_list_monitors:
 *
 * Returns: (transfer full): a blank set, whose item has no thing, then the monitors of @catalogue,
 * then the displays of this computer; each item's thing is the BwMonitor
 */
GListModel *
bw_pick_list_monitors (const BwCatalogue *catalogue)
{
  GListStore *list = g_list_store_new (BW_TYPE_PICK_ITEM);
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);

  add (list, _ ("Blank set"), _ ("nothing known yet: enter what is on the plate"), BLANK_ID, NULL);
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      g_autofree char *words = bw_monitor_words (monitor);
      add (list, monitor->name, words, monitor->id, monitor);
    }
  add_displays (list, catalogue);
  return G_LIST_MODEL (list);
}

/**
 * bw_pick_list_inputs:
 *
 * Returns: (transfer full): a plain and a blank input, whose items have no thing, then the inputs
 *   of all monitors of @catalogue
 */
GListModel *
bw_pick_list_inputs (const BwCatalogue *catalogue)
{
  GListStore *list = g_list_store_new (BW_TYPE_PICK_ITEM);
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);

  add (list, _ ("Plain input"), _ ("RGB with composite sync, to be edited"), "", NULL);
  add (list, _ ("Blank input"), _ ("nothing known yet"), BLANK_ID, NULL);
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      for (guint j = 0; j < monitor->inputs->len; j++)
        {
          const BwInput *input = bw_monitor_input (monitor, j);
          g_autofree char *words = bw_input_words (input);
          g_autofree char *subtitle = g_strdup_printf (_ ("%1$s; as on: %2$s"), words,
                                                       monitor->name);
          add (list, input->name, subtitle, "", input);
        }
    }
  return G_LIST_MODEL (list);
}

/**
 * bw_pick_list_sources:
 *
 * Returns: (transfer full): a plain and a blank source, whose items have no thing, then those of
 *   @catalogue
 */
GListModel *
bw_pick_list_sources (const BwCatalogue *catalogue)
{
  GListStore *list = g_list_store_new (BW_TYPE_PICK_ITEM);
  GPtrArray *sources = bw_catalogue_sources (catalogue);

  add (list, _ ("Plain source"), _ ("RGB with composite sync, to be edited"), "", NULL);
  add (list, _ ("Blank source"), _ ("nothing known yet"), BLANK_ID, NULL);
  for (guint i = 0; i < sources->len; i++)
    {
      const BwSource *source = sources->pdata[i];
      const BwRaster *raster = bw_catalogue_raster (catalogue, source->raster);
      g_autofree char *words = g_strdup_printf ("%s, %s",
                                                bw_kind_label (&bw_signals, source->signal),
                                                raster != NULL ? raster->name : source->raster);
      if (raster != NULL)
        add (list, source->name, words, source->id, source);
    }
  return G_LIST_MODEL (list);
}

/* Starting points for what is not in the catalogue. Levels: RGB of 700 mV with sync of 300 mV
 * across 75 Ω, accepted within a factor of about 1.5: common practice, no source. */

/**
 * bw_plain_input_new:
 *
 * Returns: (transfer full): an input that passes bw_input_check(), to be edited
 */
BwInput *
bw_plain_input_new (void)
{
  BwInput *input = bw_input_new ();
  g_free (input->name);
  input->name = g_strdup (_ ("New input"));
  input->connectors = BW_BIT (BW_CONNECTOR_BNC);
  input->signals = BW_BIT (BW_SIGNAL_RGB);
  input->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  input->shapes = BW_BIT (BW_SHAPE_BILEVEL);
  input->polarities = BW_BIT (BW_POLARITY_NEGATIVE);
  input->scans = BW_BIT (BW_SCAN_PROGRESSIVE) | BW_BIT (BW_SCAN_INTERLACED);
  input->video_v = (BwBands){ 1, { { 0.5, 1.0 } } };
  input->sync_v = (BwBands){ 1, { { 0.2, 0.6 } } };
  return input;
}

static const char *
usual_raster (const BwSheet *sheet)
{
  return sheet->supply_hz > 0 ? bw_system_facts (bw_system_of_field_rate (sheet->supply_hz))->raster
                              : "";
}

/**
 * bw_plain_source_new:
 * @sheet: for its mains frequency
 *
 * Returns: (transfer full): a source that passes bw_source_check(), to be edited; its raster is the
 * broadcast one that goes with the mains frequency, and not known if that is not
 */
BwSource *
bw_plain_source_new (const BwSheet *sheet)
{
  BwSource *source = bw_source_new ();
  g_free (source->name);
  source->name = g_strdup (_ ("New source"));
  g_free (source->raster);
  source->raster = g_strdup (usual_raster (sheet));
  source->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  source->video_v = BW_USUAL_VIDEO_V;
  source->sync_v = BW_USUAL_SYNC_V;
  return source;
}

/**
 * bw_blank_input_new:
 *
 * Returns: (transfer full): an input of which nothing is known
 */
BwInput *
bw_blank_input_new (void)
{
  BwInput *input = bw_input_new ();
  bw_fields_forget (&bw_input_fields, input);
  g_free (input->name);
  input->name = g_strdup (_ ("New input"));
  return input;
}

/**
 * bw_blank_source_new:
 *
 * Returns: (transfer full): a source of which nothing is known
 */
BwSource *
bw_blank_source_new (void)
{
  BwSource *source = bw_source_new ();
  bw_fields_forget (&bw_source_fields, source);
  g_free (source->name);
  source->name = g_strdup (_ ("New source"));
  return source;
}

/**
 * bw_blank_monitor_new:
 *
 * Returns: (transfer full): a monitor of which nothing is known, with one such input
 */
BwMonitor *
bw_blank_monitor_new (void)
{
  BwMonitor *monitor = bw_monitor_new ();
  bw_fields_forget (&bw_monitor_fields, monitor);
  g_free (monitor->name);
  monitor->name = g_strdup (_ ("New monitor"));
  g_ptr_array_add (monitor->inputs, bw_blank_input_new ());
  return monitor;
}
