/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-private.h"

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"
#include "core/raster/results.h"
#include "draw/line/view.h"

/* The parts of the report that state what is given: monitor, inputs, sources, timing. */

/* Values for reading */

static char *
range_text (BwRange range, BwDimension dimension, char mark)
{
  if (range.low >= 0)
    return bw_quantity_format_range (range, dimension, 5, mark);
  g_autofree char *low = bw_quantity_format (range.low, dimension, 5, mark);
  g_autofree char *high = bw_quantity_format (range.high, dimension, 5, mark);
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static char *
bands_text (const BwField *field, const BwBands *bands, char mark)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      g_autofree char *range = range_text (bands->at[i], field->dimension, mark);
      g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", range);
    }
  return g_string_free (text, FALSE);
}

/* In the unit that people use for it, if it has one. */
static char *
quantity_text (const BwField *field, gconstpointer object, char mark)
{
  if (field->unit == NULL)
    return bw_quantity_format (G_STRUCT_MEMBER (double, object, field->offset), field->dimension, 5,
                               mark);
  g_autofree char *text = bw_field_to_entry (field, object, mark);
  g_auto (GStrv) parts = g_strsplit (text, " ", 2);
  return g_strjoinv ("\u00a0", parts);
}

static char *
value_text (const BwReport *report, const BwField *field, gconstpointer object)
{
  switch (field->type)
    {
    case BW_FIELD_BANDS:
      return bands_text (field, G_STRUCT_MEMBER_P (object, field->offset), report->mark);
    case BW_FIELD_QUANTITY:
      return quantity_text (field, object, report->mark);
    case BW_FIELD_CHOICE:
      return g_strdup (bw_kind_label (field->kinds, bw_field_get_uint (field, object)));
    case BW_FIELD_SET:
      return bw_kind_set_labels (field->kinds, bw_field_get_uint (field, object));
    case BW_FIELD_SWITCH:
      return g_strdup (bw_field_get_uint (field, object) ? _ ("yes") : _ ("no"));
    default:
      return bw_field_to_entry (field, object, report->mark);
    }
}

/* Pairs of a label and its value, two pairs to the row. */
typedef struct
{
  BwReport *report;
  guint filled; /* cells of the row */
  BwFlowCell cells[4];
  char *values[2]; /* owned, until the row is added */
} Pairs;

static void
begin_pairs (Pairs *pairs, BwReport *report)
{
  double width = bw_flow_width (report->flow);
  const double widths[] = { 0.19 * width, 0.31 * width, 0.19 * width, 0.31 * width };

  *pairs = (Pairs){ .report = report };
  bw_flow_begin_table (report->flow, G_N_ELEMENTS (widths), widths, NULL);
}

static void
flush_pairs (Pairs *pairs)
{
  for (guint i = pairs->filled; i > 0 && i < G_N_ELEMENTS (pairs->cells); i++)
    pairs->cells[i] = (BwFlowCell){ "", BW_INK_GRAPHITE, BW_FLOW_NO_MARK, FALSE };
  if (pairs->filled > 0)
    bw_flow_add_row (pairs->report->flow, pairs->cells);
  pairs->filled = 0;
  g_clear_pointer (&pairs->values[0], g_free);
  g_clear_pointer (&pairs->values[1], g_free);
}

static void
add_pair (Pairs *pairs, const char *label, const char *value)
{
  guint at = pairs->filled;
  pairs->values[at / 2] = g_strdup (value);
  pairs->cells[at] = (BwFlowCell){ label, BW_INK_GRAPHITE_LIGHT, BW_FLOW_NO_MARK, FALSE };
  pairs->cells[at + 1] = (BwFlowCell){ pairs->values[at / 2], BW_INK_GRAPHITE, BW_FLOW_NO_MARK,
                                       FALSE };
  pairs->filled += 2;
  if (pairs->filled == G_N_ELEMENTS (pairs->cells))
    flush_pairs (pairs);
}

static void
end_pairs (Pairs *pairs)
{
  flush_pairs (pairs);
  bw_flow_end_table (pairs->report->flow);
}

/* Every member of @object that is known, but for its texts: those are said elsewhere. */
static void
add_fields (Pairs *pairs, const BwFieldTable *table, gconstpointer object)
{
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      if (field->type == BW_FIELD_TEXT || !bw_field_is_set (field, object))
        continue;
      g_autofree char *value = value_text (pairs->report, field, object);
      if (value[0] != '\0')
        add_pair (pairs, bw_field_label (field), value);
    }
}

static void
add_supply (Pairs *pairs)
{
  static const char *const keys[] = { "supply_voltage", "supply_frequency" };
  const BwSheet *sheet = pairs->report->sheet;

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      const BwField *field = bw_field_find (&bw_sheet_fields, keys[i]);
      g_autofree char *value = bw_field_is_set (field, sheet)
                                   ? value_text (pairs->report, field, sheet)
                                   : g_strdup (_ ("not known"));
      add_pair (pairs, bw_field_label (field), value);
    }
}

static void
add_caution (BwReport *report)
{
  bw_flow_add_box (report->flow, _ ("Danger inside the set"), bw_caution (), BW_INK_FATAL);
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
  Pairs pairs;

  bw_report_say (report, BW_FLOW_TITLE, sheet->title[0] != '\0' ? sheet->title : _ ("Bench sheet"));
  bw_report_say (report, BW_FLOW_BODY, sheet->note);
  bw_flow_add_space (report->flow, bw_flow_line_height (report->flow) / 2);
  add_caution (report);
  g_autofree char *heading = g_strdup_printf (_ ("Monitor: %s"), monitor->name);
  bw_report_say (report, BW_FLOW_HEADING, heading);
  bw_report_say (report, BW_FLOW_BODY, monitor->note);
  begin_pairs (&pairs, report);
  add_fields (&pairs, &bw_monitor_fields, monitor);
  flush_pairs (&pairs);
  add_supply (&pairs);
  end_pairs (&pairs);
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
  Pairs pairs;

  if (monitor->inputs->len > 0)
    bw_report_say (report, BW_FLOW_HEADING, _ ("Inputs"));
  for (guint i = 0; i < monitor->inputs->len; i++)
    {
      const BwInput *input = bw_monitor_input (monitor, i);
      bw_report_say (report, BW_FLOW_SUBHEADING, input->name);
      begin_pairs (&pairs, report);
      add_fields (&pairs, &bw_input_fields, input);
      end_pairs (&pairs);
    }
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
  Pairs pairs;

  if (sources->len > 0)
    bw_report_say (report, BW_FLOW_HEADING, _ ("Sources"));
  for (guint i = 0; i < sources->len; i++)
    {
      const BwSource *source = sources->pdata[i];
      bw_report_say (report, BW_FLOW_SUBHEADING, source->name);
      bw_report_say (report, BW_FLOW_SECONDARY, source->note);
      begin_pairs (&pairs, report);
      add_pair (&pairs, _ ("Raster"), raster_name (report, source));
      add_fields (&pairs, &bw_source_fields, source);
      end_pairs (&pairs);
    }
}

/* Timing */

typedef struct
{
  const BwReport *report;
  const BwRaster *raster;
} LineDrawing;

static void
draw_line (cairo_t *cr, double width, double height, gconstpointer data)
{
  const LineDrawing *drawing = data;
  bw_draw_line_view (cr, width, height, &drawing->report->ink, drawing->raster,
                     drawing->report->mark);
}

/* Two to a page. */
static void
add_line_drawings (BwReport *report)
{
  double between = bw_flow_line_height (report->flow);
  double height = (bw_flow_page_height (report->flow) - between) / 2;

  for (guint i = 0; i < report->rasters->len; i++)
    {
      LineDrawing *drawing = g_new (LineDrawing, 1);
      *drawing = (LineDrawing){ report, report->rasters->pdata[i] };
      g_ptr_array_add (report->drawings, drawing);
      bw_flow_add_space (report->flow, between);
      bw_flow_add_drawing (report->flow, height, draw_line, drawing);
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
  bw_flow_add_node (report->flow, bw_result_root (timing), 1);
  add_line_drawings (report);
}

static void
add_origin (BwReport *report, const char *what, const char *name, const char *from)
{
  gboolean stated = from != NULL && from[0] != '\0';
  g_autofree char *text = g_strdup_printf (_ ("%s, %s: %s"), what, name,
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
