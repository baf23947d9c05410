/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-report-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"

/* What stands on the sheet, from top to bottom. */

static void
say (BwHookupReport *report, BwFlowStyle style, const char *text)
{
  bw_flow_add_text (report->flow,
                    &(BwFlowText){ text, style, 0, BW_FLOW_NO_MARK, style == BW_FLOW_SUBHEADING });
}

static void
say_indented (BwHookupReport *report, const char *text)
{
  bw_flow_add_text (report->flow,
                    &(BwFlowText){ text, BW_FLOW_BODY, bw_flow_line_height (report->flow),
                                   BW_FLOW_NO_MARK, FALSE });
}

static BwFlowCell
cell (const char *text)
{
  return (BwFlowCell){ text, BW_INK_GRAPHITE, BW_FLOW_NO_MARK, FALSE };
}

static BwFlowCell
number (const char *text)
{
  return (BwFlowCell){ text, BW_INK_GRAPHITE, BW_FLOW_NO_MARK, TRUE };
}

static void
begin_table (BwHookupReport *report, guint n, const double *shares, const BwFlowCell *heads)
{
  double widths[BW_FLOW_MAX_COLUMNS];
  for (guint i = 0; i < n; i++)
    widths[i] = shares[i] * bw_flow_width (report->flow);
  bw_flow_begin_table (report->flow, n, widths, heads);
}

static void
draw (cairo_t *cr, double width, double height, gconstpointer data)
{
  const BwHookupReport *report = data;
  g_autoptr (BwHookupDrawing) drawing = bw_hookup_drawing_new (width, height, &report->ink,
                                                               &report->what);
  bw_hookup_drawing_draw (drawing, cr);
}

static void
add_head (BwHookupReport *report)
{
  const BwHookup *hookup = report->what.hookup;
  g_autofree char *title = g_strdup_printf (_ ("Hook-up: %s to %s"), hookup->source, hookup->input);
  bw_flow_add_text (report->flow,
                    &(BwFlowText){ title, BW_FLOW_HEADING, 0, BW_FLOW_NO_MARK, FALSE });
  bw_flow_add_drawing (report->flow, report->drawing_pt, draw, report);
}

static void
add_steps (BwHookupReport *report)
{
  GPtrArray *steps = report->what.hookup->steps;
  say (report, BW_FLOW_SUBHEADING, _ ("Steps"));
  for (guint i = 0; i < steps->len; i++)
    {
      const BwHookupStep *step = steps->pdata[i];
      g_autofree char *text = g_strdup_printf ("%u. %s: %s", i + 1, step->name, step->purpose);
      say_indented (report, text);
    }
}

static char *
ohm_text (const BwHookupReport *report, double ohm, int digits)
{
  return ohm > 0 ? bw_quantity_format (ohm, BW_DIMENSION_RESISTANCE, digits, report->what.mark)
                 : g_strdup ("");
}

static void
add_part (BwHookupReport *report, const BwHookupPart *part)
{
  g_autofree char *count = g_strdup_printf ("%u", part->count);
  g_autofree char *value = ohm_text (report, part->value_ohm, 3);
  g_autofree char *ideal = ohm_text (report, part->ideal_ohm, 4);
  g_autofree char *power = bw_hookup_part_power (part, report->what.mark);
  g_autofree char *rating = part->rating_w > 0 ? bw_rating_words (part->rating_w) : g_strdup ("");
  const char *series = part->series < BW_N_SERIES ? bw_kind_label (&bw_series, part->series) : "";
  const BwFlowCell cells[] = { number (count), cell (part->what), number (value),
                               cell (series),  number (ideal),    number (power),
                               number (rating), number (part->price) };
  bw_flow_add_row (report->flow, cells);
}

static void
add_parts (BwHookupReport *report)
{
  static const double shares[] = { 0.07, 0.43, 0.09, 0.07, 0.1, 0.09, 0.07, 0.08 };
  GPtrArray *parts = report->what.hookup->parts;
  const BwFlowCell heads[] = { number (_ ("Count")), cell (_ ("Part")),      number (_ ("Value")),
                               cell (_ ("Series")),  number (_ ("Exactly")), number (_ ("Power")),
                               number (_ ("Rating")), number (_ ("Price")) };
  say (report, BW_FLOW_SUBHEADING, _ ("Parts"));
  begin_table (report, G_N_ELEMENTS (shares), shares, heads);
  for (guint i = 0; i < parts->len; i++)
    add_part (report, parts->pdata[i]);
  bw_flow_end_table (report->flow);
}

static void
add_connections (BwHookupReport *report)
{
  static const double shares[] = { 0.06, 0.135, 0.235, 0.235, 0.15, 0.185 };
  GPtrArray *all = report->what.hookup->connections;
  const BwFlowCell heads[] = { cell (_ ("Lead")), cell (_ ("Conductor")), cell (_ ("From")),
                               cell (_ ("To")),   cell (_ ("Return")),    cell (_ ("Through")) };
  say (report, BW_FLOW_SUBHEADING, _ ("Connections"));
  begin_table (report, G_N_ELEMENTS (shares), shares, heads);
  for (guint i = 0; i < all->len; i++)
    {
      const BwHookupConnection *one = all->pdata[i];
      g_autofree char *lead = g_strdup_printf ("%u", one->hop + 1);
      g_autofree char *returns = g_strdup_printf (_ ("%s to %s"), one->from_return, one->to_return);
      const BwFlowCell cells[] = { cell (lead),    cell (one->signal), cell (one->from),
                                   cell (one->to), cell (returns),     cell (one->through) };
      bw_flow_add_row (report->flow, cells);
    }
  bw_flow_end_table (report->flow);
}

static gboolean
is_at (const BwHookupRest *rest, guint hop, gboolean far_end)
{
  return rest->hop == hop && rest->at_far_end == far_end;
}

/* "pins 4, 9, 11: left open": all at one end that share the fate of rest @first, unless an earlier
 * one had them. */
static char *
fate (const BwHookup *hookup, guint first)
{
  const BwHookupRest *rest = hookup->rests->pdata[first];
  g_autoptr (GString) pins = g_string_new (NULL);

  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const BwHookupRest *other = hookup->rests->pdata[i];
      if (!is_at (other, rest->hop, rest->at_far_end) || strcmp (other->state, rest->state) != 0)
        continue;
      if (i < first)
        return NULL;
      g_string_append (pins, pins->len > 0 ? ", " : "");
      if (other->number > 0)
        g_string_append_printf (pins, "%d", other->number);
      else
        g_string_append (pins, other->pin);
    }
  return g_strdup_printf ("%s: %s", pins->str, rest->state);
}

static char *
rests_line (const BwHookup *hookup, guint index, gboolean far_end)
{
  const BwHookupHop *hop = hookup->hops->pdata[index];
  g_autoptr (GString) fates = g_string_new (NULL);
  for (guint i = 0; i < hookup->rests->len; i++)
    {
      g_autofree char *one = is_at (hookup->rests->pdata[i], index, far_end) ? fate (hookup, i)
                                                                             : NULL;
      if (one != NULL)
        g_string_append_printf (fates, "%s%s", fates->len > 0 ? "; " : "", one);
    }
  return fates->len > 0 ? g_strdup_printf (_ ("Lead %u at %s: %s"), index + 1,
                                           far_end ? hop->to : hop->from, fates->str)
                        : NULL;
}

/**
 * bw_hookup_view_rests:
 *
 * Returns: (transfer full) (element-type utf8): what becomes of the pins that carry nothing, a line
 *   for each plug
 */
GPtrArray *
bw_hookup_view_rests (const BwHookupView *what)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < 2 * what->hookup->hops->len; i++)
    {
      char *text = rests_line (what->hookup, i / 2, i % 2);
      if (text != NULL)
        g_ptr_array_add (lines, text);
    }
  return lines;
}

static void
add_rests (BwHookupReport *report)
{
  g_autoptr (GPtrArray) lines = bw_hookup_view_rests (&report->what);
  if (lines->len > 0)
    say (report, BW_FLOW_SUBHEADING, _ ("Other pins"));
  for (guint i = 0; i < lines->len; i++)
    say_indented (report, lines->pdata[i]);
}

static char *
volt_text (const BwHookupReport *report, double volt)
{
  return bw_quantity_format (volt, BW_DIMENSION_VOLTAGE, 3, report->what.mark);
}

static char *
level_text (const BwHookupReport *report, const BwHookupLevel *level, guint row)
{
  if (row == 0)
    return volt_text (report, level->nominal_v);
  if (level->max_v - level->min_v > 1e-9)
    return bw_quantity_format_range ((BwRange){ level->min_v, level->max_v }, BW_DIMENSION_VOLTAGE,
                                     3, report->what.mark);
  return g_strdup (_ ("no tolerance"));
}

/* A column for each conductor. */
static void
add_levels (BwHookupReport *report)
{
  GPtrArray *levels = report->what.hookup->levels;
  double shares[BW_N_CONDUCTORS + 1] = { 0.2 };
  BwFlowCell cells[BW_N_CONDUCTORS + 1] = { cell (_ ("Conductor")) };
  guint n = MIN (levels->len, BW_N_CONDUCTORS);

  say (report, BW_FLOW_SUBHEADING, _ ("Levels to expect at the input"));
  for (guint i = 0; i < n; i++)
    {
      shares[i + 1] = MIN (0.8 / n, 0.2);
      cells[i + 1] = number (((const BwHookupLevel *) levels->pdata[i])->signal);
    }
  begin_table (report, n + 1, shares, cells);
  for (guint row = 0; row < 2; row++)
    {
      g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
      cells[0] = cell (row == 0 ? _ ("Peak to peak") : _ ("Least to most"));
      for (guint i = 0; i < n; i++)
        {
          g_ptr_array_add (texts, level_text (report, levels->pdata[i], row));
          cells[i + 1] = number (texts->pdata[i]);
        }
      bw_flow_add_row (report->flow, cells);
    }
  bw_flow_end_table (report->flow);
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
      say_indented (report, warnings->pdata[i]);
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
  if (report->what.hookup->plan != NULL)
    {
      add_steps (report);
      add_parts (report);
      add_connections (report);
      add_rests (report);
      add_levels (report);
    }
  add_warnings (report);
  add_cautions (report);
}
