/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-private.h"

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"
#include "core/fit/results.h"
#include "core/raster/results.h"
#include "draw/line/view.h"

/* The parts of the report that state what is given: monitor, inputs, sources, timing. */

static void
add_caution (BwReport *report)
{
  bw_flow_add_box (report->flow, _ ("Danger inside the set"), bw_caution (), BW_INK_FATAL);
}

/* Adds what is said in @result, its titles as those of parts. */
static void
add_result (BwReport *report, BwResult *result)
{
  bw_flow_add_node (report->flow, bw_result_root (result), 1);
}

/* The first thing on the paper, if there is something to say of it. */
static void
add_mains (BwReport *report)
{
  const BwSheet *sheet = report->sheet;
  g_autoptr (BwResult) result = bw_result_new (report->mark);
  bw_mains_say (bw_result_root (result), sheet->monitor, sheet->supply_v, sheet->supply_hz);
  add_result (report, result);
}

/**
 * bw_report_add_head:
 *
 * Adds the title, the sheet's note, the caution, and the monitor with the supply.
 */
void
bw_report_add_head (BwReport *report)
{
  const BwSheet *sheet = report->sheet;
  const BwMonitor *monitor = sheet->monitor;
  g_autoptr (BwResult) result = bw_result_new (report->mark);
  BwNode *root = bw_result_root (result);

  bw_report_say (report, BW_FLOW_TITLE, sheet->title[0] != '\0' ? sheet->title : _ ("Bench sheet"));
  add_mains (report);
  bw_report_say (report, BW_FLOW_BODY, sheet->note);
  bw_flow_add_space (report->flow, bw_flow_line_height (report->flow) / 2);
  add_caution (report);
  g_autofree char *heading = g_strdup_printf (_ ("Monitor: %s"), monitor->name);
  bw_report_say (report, BW_FLOW_HEADING, heading);
  bw_report_say (report, BW_FLOW_BODY, monitor->note);
  bw_node_fields (root, &bw_monitor_fields, monitor);
  bw_node_field (root, &bw_sheet_fields, "supply_voltage", sheet);
  bw_node_field (root, &bw_sheet_fields, "supply_frequency", sheet);
  add_result (report, result);
}

/**
 * bw_report_add_inputs:
 *
 * Adds what each input of the monitor takes.
 */
void
bw_report_add_inputs (BwReport *report)
{
  const BwMonitor *monitor = report->sheet->monitor;
  g_autoptr (BwResult) result = bw_result_new (report->mark);

  if (monitor->inputs->len > 0)
    bw_report_say (report, BW_FLOW_HEADING, _ ("Inputs"));
  for (guint i = 0; i < monitor->inputs->len; i++)
    {
      const BwInput *input = bw_monitor_input (monitor, i);
      bw_node_fields (bw_node_section (bw_result_root (result), NULL, input->name),
                      &bw_input_fields, input);
    }
  add_result (report, result);
}

static const char *
raster_name (const BwReport *report, const BwSource *source)
{
  const BwRaster *raster = bw_sheet_raster (report->sheet, report->catalogue, source);
  return raster != NULL ? raster->name : source->raster;
}

/**
 * bw_report_add_sources:
 *
 * Adds what each source gives.
 */
void
bw_report_add_sources (BwReport *report)
{
  const GPtrArray *sources = report->sheet->sources;
  g_autoptr (BwResult) result = bw_result_new (report->mark);

  if (sources->len > 0)
    bw_report_say (report, BW_FLOW_HEADING, _ ("Sources"));
  for (guint i = 0; i < sources->len; i++)
    {
      const BwSource *source = sources->pdata[i];
      BwNode *section = bw_node_section (bw_result_root (result), NULL, source->name);
      bw_node_say (section, BW_SAY_NOTE, NULL, source->note);
      bw_node_figure (section, _ ("Raster"),
                      bw_value_words ("raster", raster_name (report, source)));
      bw_node_fields (section, &bw_source_fields, source);
    }
  add_result (report, result);
}

/* Timing */

/* Two to a page. */
static void
add_line_drawings (BwReport *report)
{
  double between = bw_flow_line_height (report->flow);
  double height = (bw_flow_page_height (report->flow) - between) / 2;

  for (guint i = 0; i < report->rasters->len; i++)
    {
      const BwLineView line = { .raster = report->rasters->pdata[i], .mark = report->mark };
      bw_flow_add_space (report->flow, between);
      bw_flow_add_drawing (report->flow, bw_line_drawing (&line, bw_flow_width (report->flow),
                                                          height, &report->ink));
    }
}

/**
 * bw_report_add_timing:
 *
 * Adds the timing of each raster that is used, in figures and drawn.
 */
void
bw_report_add_timing (BwReport *report)
{
  if (report->rasters->len == 0)
    return;
  bw_report_say (report, BW_FLOW_HEADING, _ ("Timing"));
  g_autoptr (BwResult) timing = bw_result_new (report->mark);
  bw_rasters_say (bw_result_root (timing), report->rasters);
  add_result (report, timing);
  add_line_drawings (report);
}

static void
add_origin (BwReport *report, const char *what, const char *name, const char *from)
{
  gboolean stated = from != NULL && from[0] != '\0';
  /* Translators: three figures of one thing, the last of which tells most. */
  g_autofree char *text = g_strdup_printf (_ ("%1$s, %2$s: %3$s"), what, name,
                                           stated ? from : _ ("not stated"));
  bw_report_say (report, BW_FLOW_BODY, text);
}

/**
 * bw_report_add_figures_from:
 *
 * Adds where the figures of monitor, sources and rasters come from.
 */
void
bw_report_add_figures_from (BwReport *report)
{
  const BwSheet *sheet = report->sheet;

  bw_report_say (report, BW_FLOW_HEADING, _ ("Where the figures come from"));
  add_origin (report, _ ("Monitor"), sheet->monitor->name, sheet->monitor->source);
  for (guint i = 0; i < sheet->sources->len; i++)
    {
      const BwSource *source = bw_sheet_source (sheet, i);
      add_origin (report, _ ("Source"), source->name, source->origin);
    }
  for (guint i = 0; i < report->rasters->len; i++)
    {
      const BwRaster *raster = report->rasters->pdata[i];
      add_origin (report, _ ("Raster"), raster->name, raster->source);
      bw_report_say_indented (report, BW_FLOW_SECONDARY, raster->note);
    }
}
