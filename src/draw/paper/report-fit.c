/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-private.h"

#include <glib/gi18n-lib.h>

#include "core/fit/fit.h"

/* The table of fits and the findings behind it. */

#define SOURCE_SHARE 0.28 /* of the width, for the sources' names */
#define LEAST_COLUMN 7.5  /* in heights of a line of text */

static gboolean
has_raster (const BwReport *report, guint source)
{
  return bw_sheet_raster (report->sheet, report->catalogue, bw_sheet_source (report->sheet, source))
         != NULL;
}

static void
judge (const BwReport *report, guint source, guint input, BwCase *c, BwRasterFigures *figures,
       BwFit *fit)
{
  bw_case_init (c, figures, report->sheet, report->catalogue, source, input);
  bw_fit_judge (c, fit);
}

static BwFlowCell
fit_cell (const BwReport *report, guint source, guint input)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  if (!has_raster (report, source))
    return (BwFlowCell){ _ ("no raster"), BW_INK_GRAPHITE_LIGHT, BW_FLOW_NO_MARK, FALSE };
  judge (report, source, input, &c, &figures, &fit);
  BwSeverity severity = bw_verdict_severity (fit.verdict);
  return (BwFlowCell){ bw_kind_label (&bw_verdicts, fit.verdict), bw_ink_for_severity (severity),
                       severity, FALSE };
}

/* How many inputs stand side by side. */
static guint
inputs_across (const BwReport *report)
{
  double room = bw_flow_width (report->flow) * (1 - SOURCE_SHARE);
  double least = LEAST_COLUMN * bw_flow_line_height (report->flow);
  return (guint) CLAMP (room / least, 1, BW_FLOW_MAX_COLUMNS - 1);
}

/* The table of all sources at inputs @first to @first + @n - 1. */
static void
add_fit_table (BwReport *report, guint first, guint n)
{
  const BwSheet *sheet = report->sheet;
  double width = bw_flow_width (report->flow);
  double widths[BW_FLOW_MAX_COLUMNS] = { width * SOURCE_SHARE };
  BwFlowCell cells[BW_FLOW_MAX_COLUMNS] = { { _ ("Source"), BW_INK_GRAPHITE, BW_FLOW_NO_MARK,
                                              FALSE } };

  for (guint i = 0; i < n; i++)
    {
      const char *name = bw_monitor_input (sheet->monitor, first + i)->name;
      widths[i + 1] = width * (1 - SOURCE_SHARE) / n;
      cells[i + 1] = (BwFlowCell){ name, BW_INK_GRAPHITE, BW_FLOW_NO_MARK, FALSE };
    }
  bw_flow_begin_table (report->flow, n + 1, widths, cells);
  for (guint source = 0; source < sheet->sources->len; source++)
    {
      cells[0].text = bw_sheet_source (sheet, source)->name;
      for (guint i = 0; i < n; i++)
        cells[i + 1] = fit_cell (report, source, first + i);
      bw_flow_add_row (report->flow, cells);
    }
  bw_flow_end_table (report->flow);
}

static void
add_fit_tables (BwReport *report)
{
  guint inputs = report->sheet->monitor->inputs->len;
  guint tables = (inputs + inputs_across (report) - 1) / inputs_across (report);
  guint each = (inputs + tables - 1) / tables; /* tables of equal width */

  for (guint first = 0; first < inputs; first += each)
    {
      if (first > 0)
        bw_flow_add_space (report->flow, bw_flow_line_height (report->flow));
      add_fit_table (report, first, MIN (each, inputs - first));
    }
}

static void
add_finding (BwReport *report, const BwFinding *finding, const BwFit *fit, const BwCase *c)
{
  g_autofree char *says = bw_finding_says (finding, fit, c, report->mark);
  g_autofree char *remedy = bw_finding_remedy (finding, fit, c, report->mark);
  g_autofree char *text = g_strdup_printf (_ ("%s, %s. %s"),
                                           bw_kind_label (&bw_rules, finding->rule),
                                           bw_kind_label (&bw_severities, finding->severity), says);
  double indent = 1.15 * bw_flow_line_height (report->flow);

  bw_flow_add_text (report->flow,
                    &(BwFlowText){ text, BW_FLOW_BODY, indent, finding->severity, remedy != NULL });
  if (remedy == NULL)
    return;
  g_autofree char *cure = g_strdup_printf (_ ("Remedy: %s"), remedy);
  bw_flow_add_text (report->flow,
                    &(BwFlowText){ cure, BW_FLOW_BODY, 2 * indent, BW_FLOW_NO_MARK, FALSE });
}

static void
add_findings_of (BwReport *report, guint source, guint input)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  judge (report, source, input, &c, &figures, &fit);
  if (fit.verdict == BW_VERDICT_DIRECT)
    return;
  g_autofree char *heading = g_strdup_printf (_ ("%s at %s: %s"), c.source->name, c.input->name,
                                              bw_kind_label (&bw_verdicts, fit.verdict));
  bw_flow_add_text (report->flow, &(BwFlowText){ heading, BW_FLOW_SUBHEADING, 0,
                                                 bw_verdict_severity (fit.verdict), TRUE });
  for (guint rule = 0; rule < BW_N_RULES; rule++)
    if (fit.at[rule].severity != BW_SEVERITY_OK)
      add_finding (report, &fit.at[rule], &fit, &c);
}

static void
add_findings (BwReport *report)
{
  const BwSheet *sheet = report->sheet;

  bw_report_say (report, BW_FLOW_HEADING, _ ("Findings"));
  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      if (has_raster (report, source))
        add_findings_of (report, source, input);
}

static gboolean
all_direct (const BwReport *report)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  for (guint source = 0; source < report->sheet->sources->len; source++)
    for (guint input = 0; input < report->sheet->monitor->inputs->len; input++)
      if (has_raster (report, source))
        {
          judge (report, source, input, &c, &figures, &fit);
          if (fit.verdict != BW_VERDICT_DIRECT)
            return FALSE;
        }
  return TRUE;
}

/* Where “tight” begins in this sheet. */
static void
add_thresholds (BwReport *report)
{
  g_autoptr (GString) text = g_string_new (
      _ ("Margins below which a value is called tight are common "
         "practice, no source. Here:"));
  const gsize start = G_STRUCT_OFFSET (BwSheet, limits), end = start + sizeof (BwLimits);

  for (guint i = 0; i < bw_sheet_fields.n; i++)
    {
      const BwField *field = &bw_sheet_fields.at[i];
      if (field->offset < start || field->offset >= end)
        continue;
      g_autofree char *value = bw_field_to_entry (field, report->sheet, report->mark);
      g_string_append_printf (text, "%s %s %s", text->str[text->len - 1] == ':' ? "" : ";",
                              bw_field_label (field), value);
    }
  g_string_append_c (text, '.');
  bw_flow_add_space (report->flow, bw_flow_line_height (report->flow) / 2);
  bw_report_say (report, BW_FLOW_SECONDARY, text->str);
}

/**
 * bw_report_add_fit:
 *
 * Adds the verdict on every source at every input, and every finding that is not plainly well.
 */
void
bw_report_add_fit (BwReport *report)
{
  bw_report_say (report, BW_FLOW_HEADING, _ ("Fit"));
  if (report->sheet->sources->len == 0 || report->sheet->monitor->inputs->len == 0)
    {
      bw_report_say (report, BW_FLOW_SECONDARY,
                     _ ("There is nothing to judge: the sheet needs a source and an input."));
      return;
    }
  add_fit_tables (report);
  add_thresholds (report);
  if (!all_direct (report))
    add_findings (report);
}
