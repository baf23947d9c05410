/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-report-private.h"

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"
#include "core/fit/results.h"
#include "core/hookup/results.h"

/* What stands on the sheet, from top to bottom. */

static void
say (BwHookupReport *report, BwFlowStyle style, const char *text)
{
  bw_flow_add_text (report->flow,
                    &(BwFlowText){ text, style, 0, BW_FLOW_NO_MARK, style == BW_FLOW_SUBHEADING });
}

static void
add_head (BwHookupReport *report)
{
  const BwHookup *hookup = report->what.hookup;
  g_autofree char *title = g_strdup_printf (_ ("Hook-up: %1$s to %2$s"), hookup->source,
                                            hookup->input);
  g_autoptr (BwResult) mains = bw_result_new (report->what.mark);

  bw_mains_say (bw_result_root (mains), hookup->monitor, hookup->supply_v, hookup->supply_hz);
  bw_flow_add_text (report->flow,
                    &(BwFlowText){ title, BW_FLOW_HEADING, 0, BW_FLOW_NO_MARK, FALSE });
  bw_flow_add_node (report->flow, bw_result_root (mains), 1);
  bw_flow_add_drawing (report->flow, bw_hookup_drawing (&report->what, bw_flow_width (report->flow),
                                                        report->drawing_pt, &report->ink));
}

/* Of the result what does not stand elsewhere on the sheet: the drawing has the verdict, the leads
 * and the levels. */
static void
add_plan (BwHookupReport *report)
{
  static const char *const elsewhere[] = { "mains", "leads", "levels", "warnings", "alternatives",
                                            NULL };
  g_autoptr (BwResult) result = bw_result_new (report->what.mark);
  const BwNode *root = bw_result_root (result);

  bw_hookup_say (bw_result_root (result), report->what.hookup, report->what.lead);
  for (guint i = 0; i < root->children->len; i++)
    {
      const BwNode *node = root->children->pdata[i];
      if (node->kind != BW_NODE_SENTENCE
          && (node->key == NULL || !g_strv_contains (elsewhere, node->key)))
        bw_flow_add_node (report->flow, node, 1);
    }
}

/* The caution of the sheet stands in its box; it is not said twice. */
static void
add_warnings (BwHookupReport *report)
{
  GPtrArray *warnings = report->what.hookup->warnings;
  gboolean headed = FALSE;
  for (guint i = 0; i < warnings->len; i++)
    {
      if (g_str_equal (warnings->pdata[i], bw_caution ()))
        continue;
      if (!headed)
        say (report, BW_FLOW_SUBHEADING, _ ("Mind"));
      headed = TRUE;
      bw_flow_add_text (report->flow,
                        &(BwFlowText){ warnings->pdata[i], BW_FLOW_BODY,
                                       bw_flow_line_height (report->flow), BW_FLOW_NO_MARK,
                                       FALSE });
    }
}

static void
add_cautions (BwHookupReport *report)
{
  GPtrArray *warnings = report->what.hookup->warnings;
  g_autoptr (GString) text = g_string_new (bw_caution_hook_up ());
  for (guint i = 0; i < warnings->len; i++)
    if (g_str_equal (warnings->pdata[i], bw_caution ()))
      g_string_append_printf (text, "\n%s", bw_caution ());
  bw_flow_add_space (report->flow, bw_flow_line_height (report->flow) / 2);
  bw_flow_add_box (report->flow, _ ("Caution"), text->str, BW_INK_FATAL);
}

/**
 * bw_hookup_report_fill:
 *
 * Adds everything to the flow.
 */
void
bw_hookup_report_fill (BwHookupReport *report)
{
  add_head (report);
  add_plan (report);
  add_warnings (report);
  add_cautions (report);
}
