/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "figures.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/figure-table.h"

#define SAME_V 1e-9

/**
 * bw_hookup_answer:
 *
 * Returns: (transfer full): what the plan does for the verdict
 */
char *
bw_hookup_answer (const BwHookup *hookup)
{
  const char *before = bw_kind_label (&bw_verdicts, hookup->verdict_before);
  const char *after = bw_kind_label (&bw_verdicts, hookup->verdict_after);

  if (hookup->plan == NULL)
    return g_strdup_printf (_ ("%s at %s: %s. No plan leads there."), hookup->source, hookup->input,
                            before);
  if (hookup->verdict_before == hookup->verdict_after)
    return g_strdup_printf (_ ("%s at %s: %s, with a lead alone."), hookup->source, hookup->input,
                            before);
  return g_strdup_printf (_ ("%s at %s: %s as it is, %s by this plan."), hookup->source,
                          hookup->input, before, after);
}

static char *
figure (const BwHookupView *view, double value, BwDimension dimension, int digits)
{
  return bw_quantity_format (value, dimension, digits, view->mark);
}

static void
add_level (GPtrArray *figures, const BwHookupView *view, const BwHookupLevel *level)
{
  g_autofree char *name = g_strdup_printf (_ ("%s at the input"), level->signal);
  g_autofree char *nominal = figure (view, level->nominal_v, BW_DIMENSION_VOLTAGE, 3);
  g_autofree char *spread = bw_quantity_format_range ((BwRange){ level->min_v, level->max_v },
                                                      BW_DIMENSION_VOLTAGE, 3, view->mark);
  gboolean fixed = level->max_v - level->min_v <= SAME_V;
  g_ptr_array_add (figures, bw_figure_new (name, nominal, fixed ? _ ("no tolerance") : spread));
}

static char *
decibels (const BwHookupView *view, double loss_db)
{
  char number[32];
  g_ascii_formatd (number, sizeof number, "%.2g", loss_db);
  g_strdelimit (number, ".", view->mark);
  return g_strdup_printf ("%s\u00a0dB", number);
}

static void
add_loss (GPtrArray *figures, const BwHookupView *view, const BwLeadFigures *lead)
{
  g_autofree char *top = figure (view, view->lead->top_hz, BW_DIMENSION_FREQUENCY, 3);
  g_autofree char *name = g_strdup_printf (_ ("Loss at %s"), top);
  g_autofree char *loss = decibels (view, lead->loss_db);
  g_autofree char *lost = figure (view, round (lead->lost_tvl), BW_DIMENSION_TV_LINES, 4);
  g_ptr_array_add (figures, bw_figure_new (name, loss,
                                           lead->outside_law ? _ ("outside its law: more")
                                                             : _ ("within 30\u00a0%")));
  if (lead->lost_tvl >= 0.5)
    g_ptr_array_add (figures, bw_figure_new (_ ("Detail that it takes"), lost, ""));
}

static void
add_lead (GPtrArray *figures, const BwHookupView *view)
{
  BwLeadFigures lead;
  if (view->lead == NULL || view->lead->lead.type == NULL)
    return;
  bw_lead_compute (view->lead, &lead);
  g_autofree char *delay = figure (view, lead.delay_s, BW_DIMENSION_TIME, 3);
  g_autofree char *lead_hz = figure (view, lead.lead_hz, BW_DIMENSION_FREQUENCY, 3);
  g_ptr_array_add (figures, bw_figure_new (_ ("Delay of the lead"), delay, ""));
  if (view->lead->top_hz > 0)
    add_loss (figures, view, &lead);
  g_ptr_array_add (figures, bw_figure_new (_ ("It loses 3\u00a0dB at"), lead_hz, ""));
}

/**
 * bw_hookup_table:
 *
 * Returns: (transfer full) (element-type BwTableFigure): the levels at the input with their spread,
 *   and what the lead does
 */
GPtrArray *
bw_hookup_table (const BwHookupView *view)
{
  GPtrArray *figures = bw_figures_new ();
  for (guint i = 0; i < view->hookup->levels->len; i++)
    add_level (figures, view, view->hookup->levels->pdata[i]);
  if (view->hookup->plan != NULL)
    add_lead (figures, view);
  return figures;
}

/* Each of these fills one of the lists. */

void
bw_hookup_list_steps (BwHookupList *list, const BwHookupView *view)
{
  GPtrArray *steps = view->hookup->steps;
  bw_hookup_list_clear (list);
  for (guint i = 0; i < steps->len; i++)
    {
      const BwHookupStep *step = steps->pdata[i];
      g_autofree char *text = g_strdup_printf ("%u. %s", i + 1, step->name);
      bw_hookup_list_add (list, text, step->purpose);
    }
  bw_hookup_list_done (list);
}

/* "1.1 kΩ of E24, exactly 1.075 kΩ; at most 19 mW: take 1/8 W; 0.10 EUR" */
static char *
part_detail (const BwHookupView *view, const BwHookupPart *part)
{
  GString *text = g_string_new (NULL);
  if (part->series < BW_N_SERIES)
    {
      g_autofree char *value = figure (view, part->value_ohm, BW_DIMENSION_RESISTANCE, 3);
      g_string_append_printf (text, _ ("%s of %s"), value,
                              bw_kind_label (&bw_series, part->series));
    }
  if (part->ideal_ohm > 0)
    {
      g_autofree char *ideal = figure (view, part->ideal_ohm, BW_DIMENSION_RESISTANCE, 4);
      g_string_append_printf (text, _ (", exactly %s"), ideal);
    }
  if (part->rating_w > 0)
    {
      g_autofree char *power = bw_hookup_part_power (part, view->mark);
      g_autofree char *rating = bw_rating_words (part->rating_w);
      g_string_append_printf (text, _ ("; at most %s: take %s"), power, rating);
    }
  if (*part->price != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", part->price);
  return g_string_free (text, FALSE);
}

void
bw_hookup_list_parts (BwHookupList *list, const BwHookupView *view)
{
  GPtrArray *parts = view->hookup->parts;
  bw_hookup_list_clear (list);
  for (guint i = 0; i < parts->len; i++)
    {
      const BwHookupPart *part = parts->pdata[i];
      g_autofree char *text = g_strdup_printf ("%u × %s", part->count, part->what);
      g_autofree char *detail = part_detail (view, part);
      bw_hookup_list_add (list, text, detail);
    }
  bw_hookup_list_done (list);
}

void
bw_hookup_list_connections (BwHookupList *list, const BwHookupView *view)
{
  GPtrArray *all = view->hookup->connections;
  bw_hookup_list_clear (list);
  for (guint i = 0; i < all->len; i++)
    {
      const BwHookupConnection *one = all->pdata[i];
      g_autofree char *route = bw_hookup_connection_route (one);
      g_autofree char *text = g_strdup_printf (_ ("Lead %u, %s"), one->hop + 1, route);
      g_autofree char *detail = bw_hookup_connection_detail (one);
      bw_hookup_list_add (list, text, detail);
    }
  bw_hookup_list_done (list);
}

static void
list_texts (BwHookupList *list, GPtrArray *texts)
{
  bw_hookup_list_clear (list);
  for (guint i = 0; i < texts->len; i++)
    bw_hookup_list_add (list, texts->pdata[i], NULL);
  bw_hookup_list_done (list);
}

void
bw_hookup_list_pins (BwHookupList *list, const BwHookupView *view)
{
  g_autoptr (GPtrArray) texts = bw_hookup_view_rests (view);
  list_texts (list, texts);
}

void
bw_hookup_list_warnings (BwHookupList *list, const BwHookupView *view)
{
  list_texts (list, view->hookup->warnings);
}
