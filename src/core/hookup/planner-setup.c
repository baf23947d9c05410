/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

/* What a search starts from: the place, the set and the adaptors sorted by their use. */

static guint
add_raster (BwPlanner *planner, const BwRaster *raster)
{
  for (guint i = 0; i < planner->rasters->len; i++)
    if (g_array_index (planner->rasters, BwPlanRaster, i).raster == raster)
      return i;
  BwPlanRaster entry = { .raster = raster };
  bw_raster_figures (raster, &entry.figures);
  g_array_append_val (planner->rasters, entry);
  return planner->rasters->len - 1;
}

static void
add_box (BwPlanner *planner, const BwCatalogue *catalogue, const BwAdaptor *adaptor)
{
  BwPlanBox box = { adaptor, g_array_new (FALSE, FALSE, sizeof (guint)) };
  g_auto (GStrv) ids = bw_adaptor_rasters (adaptor);

  for (char **id = ids; *id != NULL; id++)
    {
      const BwRaster *raster = bw_catalogue_raster (catalogue, *id);
      guint index = raster != NULL ? add_raster (planner, raster) : 0;
      if (raster != NULL)
        g_array_append_val (box.rasters, index);
    }
  if (*ids != NULL && box.rasters->len == 0) /* all its rasters are gone */
    g_array_unref (box.rasters);
  else
    g_array_append_val (planner->boxes, box);
}

static void
add_adaptor (BwPlanner *planner, const BwCatalogue *catalogue, const BwAdaptor *adaptor)
{
  const BwAdaptor *old = planner->part[adaptor->kind];

  if (bw_adaptor_is_box (adaptor))
    add_box (planner, catalogue, adaptor);
  else if (old == NULL || bw_adaptor_rank (adaptor) < bw_adaptor_rank (old))
    planner->part[adaptor->kind] = adaptor;
}

static void
clear_box (gpointer data)
{
  g_array_unref (((BwPlanBox *) data)->rasters);
}

/**
 * bw_planner_new:
 * @sheet: must outlive the planner and its plans, as @catalogue must
 * @source: a source of @sheet; its raster must be in the sheet or the catalogue
 * @input: an input of the sheet's monitor
 *
 * Returns: (transfer full): a planner for the two, with the adaptors of @catalogue
 */
BwPlanner *
bw_planner_new (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input)
{
  BwPlanner *planner = g_new0 (BwPlanner, 1);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  BwPlanSignal *signal = &planner->start.signal;

  planner->rasters = g_array_new (FALSE, FALSE, sizeof (BwPlanRaster));
  planner->boxes = g_array_new (FALSE, FALSE, sizeof (BwPlanBox));
  g_array_set_clear_func (planner->boxes, clear_box);
  planner->series = BW_USUAL_SERIES;
  signal->source = *bw_sheet_source (sheet, source);
  signal->source.system = bw_source_system (&signal->source);
  signal->raster = bw_sheet_raster (sheet, catalogue, &signal->source);
  signal->shape = signal->raster->sync_shape;
  planner->start.raster = add_raster (planner, signal->raster);
  for (guint i = 0; i < adaptors->len; i++)
    add_adaptor (planner, catalogue, adaptors->pdata[i]);
  planner->base = (BwPlanState){
    .source = signal->source,
    .raster = *signal->raster,
    .input = *bw_monitor_input (sheet->monitor, input),
    .monitor = *sheet->monitor,
    .limits = &sheet->limits,
    .supply_hz = sheet->supply_hz,
  };
  bw_raster_figures (signal->raster, &planner->base.figures);
  bw_planner_join (planner, adaptors);
  bw_planner_reach (planner);
  return planner;
}

/**
 * bw_planner_set_series:
 * @series: of the resistors that the plans name; E24, unless it is set
 */
void
bw_planner_set_series (BwPlanner *planner, BwSeries series)
{
  planner->series = series;
}

/**
 * bw_planner_free:
 * @planner: (nullable) (transfer full): freed; its plans live on
 */
void
bw_planner_free (BwPlanner *planner)
{
  if (planner == NULL)
    return;
  g_array_unref (planner->rasters);
  g_array_unref (planner->boxes);
  g_free (planner->reach);
  g_free (planner);
}
