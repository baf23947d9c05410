/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-private.h"

#include <glib/gi18n-lib.h>

#include "core/fit/results.h"
#include "core/hookup/plan.h"

/* The table of fits and the findings behind it. */

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
  g_autoptr (BwResult) verdicts = bw_result_new (report->mark);
  g_autoptr (BwResult) findings = bw_result_new (report->mark);
  const BwNode *cells = bw_fit_say_sheet (bw_result_root (verdicts), report->sheet,
                                          report->catalogue, bw_plan_needs);
  bw_flow_add_node (report->flow, bw_result_root (verdicts), 1);
  add_thresholds (report);
  bw_fit_tell (bw_result_root (findings), cells, TRUE);
  if (bw_node_is_seen (bw_result_root (findings)))
    bw_report_say (report, BW_FLOW_HEADING, _ ("Findings"));
  bw_flow_add_node (report->flow, bw_result_root (findings), 1);
}
