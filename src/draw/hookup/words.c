/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/fit/results.h"

/* Words of the drawing. */

char *
bw_hookup_text_ohm (const BwHookupView *what, double ohm)
{
  return bw_quantity_format (ohm, BW_DIMENSION_RESISTANCE, 3, what->mark);
}

char *
bw_hookup_text_volt (const BwHookupView *what, double volt)
{
  return bw_quantity_format (volt, BW_DIMENSION_VOLTAGE, 3, what->mark);
}

char *
bw_hookup_text_farad (const BwHookupView *what, double farad)
{
  return bw_quantity_format (farad, BW_DIMENSION_CAPACITANCE, 3, what->mark);
}

/* "15", "centre", "?" */
static char *
pin_text (int pin)
{
  if (pin > 0)
    return g_strdup_printf ("%d", pin);
  return g_strdup (pin == BW_PIN_OWN_PLUG ? _ ("centre") : "?");
}

/* "13", "shell", "its ground" */
static char *
ground_text (int ground)
{
  if (ground > 0)
    return g_strdup_printf ("%d", ground);
  return g_strdup (ground == BW_PIN_OWN_PLUG ? _ ("shell") : _ ("its ground"));
}

/**
 * bw_hookup_text_row:
 * @whole: else without "centre → centre"
 *
 * Returns: (transfer full): the conductor and where it goes: "R  15 → centre"
 */
char *
bw_hookup_text_row (const BwHookupView *what, const BwHookupRow *row, gboolean whole)
{
  const BwHookupConnection *one = row->connection;
  g_autofree char *from = pin_text (row->pin[0]);
  g_autofree char *to = pin_text (row->pin[1]);

  if (one == NULL)
    return g_strdup_printf (_ ("switching  %1$s → %2$s"), from, to);
  if (!whole && row->pin[0] == BW_PIN_OWN_PLUG && row->pin[1] == BW_PIN_OWN_PLUG
      && one->conductor < BW_N_CONDUCTORS)
    return g_strdup (one->signal);
  if (one->conductor < BW_N_CONDUCTORS)
    return g_strdup_printf ("%s  %s → %s", one->signal, from, to);
  g_autofree char *supply = bw_hookup_text_volt (what, one->supply_v);
  return g_strdup_printf ("%s  %s → %s", bw_kind_label (&bw_selects, one->select), supply, to);
}

/**
 * bw_hookup_text_returns:
 *
 * Returns: (transfer full) (nullable): where the return goes: "return 13 → shell"
 */
char *
bw_hookup_text_returns (const BwHookupRow *row)
{
  g_autofree char *from = ground_text (row->ground[0]);
  g_autofree char *to = ground_text (row->ground[1]);
  if (row->connection == NULL)
    return NULL;
  if (row->connection->conductor == BW_N_CONDUCTORS)
    return g_strdup_printf (_ ("return: supply → %s"), to);
  /* Translators: a return conductor from one pin to another. */
  return g_strdup_printf (_ ("return %1$s → %2$s"), from, to);
}

static const BwHookupStep *
find_step (const BwHookup *hookup, guint kind, guint nth)
{
  for (guint i = 0; i < hookup->steps->len; i++)
    {
      const BwHookupStep *step = hookup->steps->pdata[i];
      if (step->kind == kind && nth-- == 0)
        return step;
    }
  return NULL;
}

/**
 * bw_hookup_step_name:
 * @kind: BwStepKind
 * @nth: of that kind, from zero
 *
 * Returns: (transfer none): its name; empty if there is none
 */
const char *
bw_hookup_step_name (const BwHookup *hookup, guint kind, guint nth)
{
  const BwHookupStep *step = find_step (hookup, kind, nth);
  return step != NULL ? step->name : "";
}

const char *
bw_hookup_step_purpose (const BwHookup *hookup, guint kind, guint nth)
{
  const BwHookupStep *step = find_step (hookup, kind, nth);
  return step != NULL ? step->purpose : "";
}

/**
 * bw_hookup_text_settings:
 *
 * Returns: (transfer full) (nullable): what is set at the set, if anything is
 */
char *
bw_hookup_text_settings (const BwHookupView *what)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < what->hookup->steps->len; i++)
    {
      const BwHookupStep *step = what->hookup->steps->pdata[i];
      if (step->is_setting)
        g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "; " : "", step->name,
                                step->purpose);
    }
  return text->len > 0 ? g_strdup_printf (_ ("At the set: %s"), text->str) : NULL;
}

/* Where the pins are from, each source once. */
static void
append_sources (GString *text, const BwHookup *hookup)
{
  g_autoptr (GPtrArray) seen = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < 2 * hookup->hops->len; i++)
    {
      const BwHookupHop *hop = hookup->hops->pdata[i / 2];
      const BwPlug *plug = i % 2 == 0 ? &hop->from_plug : &hop->to_plug;
      if (bw_connector_is_single (plug->connector))
        continue;
      g_autofree char *says = g_strdup_printf (" %s: %s.",
                                               bw_kind_label (&bw_connectors, plug->connector),
                                               bw_plug_source (plug));
      if (!g_ptr_array_find_with_equal_func (seen, says, g_str_equal, NULL))
        g_ptr_array_add (seen, g_steal_pointer (&says));
    }
  for (guint i = 0; i < seen->len; i++)
    g_string_append (text, seen->pdata[i]);
}

static gboolean
has_unknown_pins (const BwHookup *hookup)
{
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      if (one->from_pin == BW_PIN_NOT_LAID_DOWN || one->to_pin == BW_PIN_NOT_LAID_DOWN)
        return TRUE;
    }
  return FALSE;
}

/**
 * bw_hookup_text_caption:
 * @whole: with the standards that lay the pins down
 *
 * Returns: (transfer full): what is drawn
 */
char *
bw_hookup_text_caption (const BwHookupView *what, gboolean whole)
{
  const BwHookup *hookup = what->hookup;
  g_autoptr (GString) text = g_string_new (NULL);
  if (hookup->plan == NULL)
    return g_strdup_printf (_ ("%1$s to %2$s: what stays in the way"), hookup->source,
                            hookup->input);
  if (!whole)
    return g_strdup (_ ("Plugs from the solder side, not to scale: go by the moulded numbers."));
  g_string_append (text, _ ("Plugs are seen from the solder side, not to scale: go by the numbers "
                            "moulded beside the contacts."));
  if (has_unknown_pins (hookup))
    g_string_append_printf (text, " %s", _ ("?: no standard lays that pin down."));
  append_sources (text, hookup);
  return g_strdup (text->str);
}

/**
 * bw_hookup_view_lead:
 *
 * Returns: (transfer full) (nullable): length, delay and loss of the lead to the input
 */
char *
bw_hookup_view_lead (const BwHookupView *what)
{
  g_return_val_if_fail (what != NULL, NULL);
  BwLeadFigures figures;
  if (what->lead == NULL || what->lead->lead.type == NULL || !(what->lead->lead.length_m > 0))
    return NULL;
  bw_lead_compute (what->lead, &figures);
  g_autofree char *length = bw_quantity_format (what->lead->lead.length_m, BW_DIMENSION_LENGTH, 3,
                                                what->mark);
  g_autofree char *delay = bw_quantity_format (figures.delay_s, BW_DIMENSION_TIME, 3, what->mark);
  if (!(what->lead->top_hz > 0))
    /* Translators: length of a lead and its delay. */
    return g_strdup_printf (_ ("%1$s, %2$s late"), length, delay);
  g_autofree char *top = bw_quantity_format (what->lead->top_hz, BW_DIMENSION_FREQUENCY, 3,
                                             what->mark);
  char loss[32], format[8];
  g_snprintf (format, sizeof format, "%%.%df", bw_lead_loss_decimals (figures.loss_db));
  g_ascii_formatd (loss, sizeof loss, format, figures.loss_db);
  g_strdelimit (loss, ".", what->mark);
  return g_strdup_printf (_ ("%1$s, %2$s late, %3$s\u00a0dB lost at %4$s"), length, delay, loss,
                          top);
}

/**
 * bw_hookup_describe:
 *
 * The drawing in words, for screen readers and for the description inside an exported file.
 *
 * Returns: (transfer full): the chain, every connection, and why there is no plan if there is none
 */
char *
bw_hookup_describe (const BwHookupView *what)
{
  const BwHookup *hookup = what->hookup;
  GString *text = g_string_new (NULL);
  g_autofree char *before = bw_fit_verdict_short (&hookup->fit_before);
  g_autofree char *after = hookup->plan != NULL
                               ? bw_fit_verdict_short (&hookup->fit_after)
                               : g_strdup (bw_kind_label (&bw_verdicts, hookup->verdict_after));

  g_string_append_printf (text, _ ("%1$s to %2$s: %3$s as it is, %4$s by this plan."),
                          hookup->source, hookup->input,
                          before, after);
  for (guint i = 0; i < hookup->needs->len; i++)
    g_string_append_printf (text, " %s", (const char *) hookup->needs->pdata[i]);
  for (guint i = 0; i < hookup->steps->len; i++)
    {
      const BwHookupStep *step = hookup->steps->pdata[i];
      g_string_append_printf (text, " %u. %s: %s.", i + 1, step->name, step->purpose);
    }
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      g_autofree char *says = bw_hookup_connection_says (one);
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("Lead %1$u, %2$s."), one->hop + 1, says);
    }
  return g_string_free (text, FALSE);
}
