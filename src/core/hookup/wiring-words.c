/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wiring-private.h"

#include <glib/gi18n-lib.h>

/* What a wiring says for a person at a bench. */

static void
warn (BwWiring *wiring, char *says)
{
  g_ptr_array_add (wiring->warnings, says);
}

static gboolean
has_connector (const BwWiring *wiring, BwConnector connector)
{
  return wiring->from.connector == connector || wiring->to.connector == connector;
}

/* Of each end: pins that nobody lays down, and uses that are custom alone. */
static void
warn_of_end (BwWiring *wiring, const BwPlug *plug, gboolean at_input)
{
  guint undefined = 0, practice = 0;
  const char *connector = bw_kind_label (&bw_connectors, plug->connector);

  for (guint i = 0; i < wiring->connections->len; i++)
    {
      const BwConnection *one = &g_array_index (wiring->connections, BwConnection, i);
      int number = at_input ? one->to_pin : one->from_pin;
      const BwPin *pin = bw_plug_pin (plug, number);
      if (number == BW_PIN_NOT_LAID_DOWN)
        undefined |= BW_BIT (one->conductor);
      else if (pin != NULL && pin->practice & BW_BIT (one->conductor))
        practice |= BW_BIT (one->conductor);
    }
  if (undefined != 0)
    {
      g_autofree char *labels = bw_kind_set_labels (&bw_conductors, undefined);
      warn (wiring,
            g_strdup_printf (_ ("%1$s: no standard lays down the pins of %2$s. Take them from "
                                "the papers of the set, or measure, and enter them under “Pins of "
                                "the connector”; until then join no pin of it, not even a ground."),
                             connector, labels));
    }
  if (practice != 0)
    {
      g_autofree char *labels = bw_kind_set_labels (&bw_conductors, practice);
      warn (wiring, g_strdup_printf (_ ("%1$s: the pins of %2$s are common practice, no source."),
                                     connector, labels));
    }
}

static void
warn_of_connectors (BwWiring *wiring)
{
  gboolean european = has_connector (wiring, BW_CONNECTOR_PERITELEVISION);
  gboolean japanese = has_connector (wiring, BW_CONNECTOR_JAPANESE_21);

  if (european)
    warn (wiring,
          g_strdup (_ ("Pins 14, 17 and 18 are grounds of other signals in the 1983 edition "
                       "of EN 50049-1 than in the later ones. Joined together they are "
                       "right either way.")));
  if (japanese)
    warn (wiring, g_strdup (_ ("The pins of the Japanese 21-pin connector rest on one secondary "
                               "source. Check them on the set.")));
  if (european && japanese)
    warn (wiring, g_strdup (_ ("Both ends have the same shell and different pins. Mark this lead: "
                               "one wired pin to pin puts switching voltages on video and ground "
                               "pins.")));
  if (has_connector (wiring, BW_CONNECTOR_DE_15))
    warn (wiring, g_strdup (_ ("Pin 9 of the 15-pin connector may carry +5 V: it is no ground. The "
                               "returns of R, G and B are pins 6, 7 and 8, not pin 10.")));
}

/* Logic sync straight into 75 Ω, and 0.3 V straight into a logic input. */
static void
warn_of_levels (BwWiring *wiring, const BwConnection *one)
{
  const BwPin *a = bw_plug_pin (&wiring->from_plug, one->from_pin);
  const BwPin *b = bw_plug_pin (&wiring->to_plug, one->to_pin);
  const char *label = bw_kind_label (&bw_conductors, one->conductor);

  if (a == NULL || b == NULL || !bw_conductor_is_sync_alone (one->conductor))
    return;
  if (a->level_v.low >= 2 && b->level_v.high < 2 && !(one->series_ohm > 0))
    warn (wiring,
          g_strdup_printf (_ ("%1$s leaves pin %2$d at logic level, which is not made for 75 Ω, "
                              "and pin %3$d takes 0.3 V: a series resistor is needed."),
                           label, one->from_pin, one->to_pin));
  else if (a->level_v.high < 2 && b->level_v.low >= 2)
    warn (wiring,
          g_strdup_printf (_ ("%1$s leaves pin %2$d at 0.3 V, and pin %3$d takes logic level: a "
                              "sync amplifier is needed."),
                           label, one->from_pin, one->to_pin));
}

static void
warn_of_select (BwWiring *wiring, const BwWiringParts *parts, BwSelect select)
{
  int number = bw_select_pin (wiring->to.connector, select);
  if (!bw_wiring_wants (wiring, parts, select) || bw_wiring_selects (wiring, number))
    return;
  if (select == BW_SELECT_RGB)
    warn (wiring, g_strdup_printf (_ ("Nothing drives pin %d: the set stays with composite video "
                                      "unless a switch of its own selects RGB."),
                                   number));
  else
    warn (wiring,
          g_strdup_printf (_ ("Nothing drives pin %d: select this input on the set."), number));
}

static void
warn_of_window (BwWiring *wiring, const BwSelection *selection)
{
  if (selection->within)
    return;
  g_autofree char *says = bw_selection_says (selection, bw_quantity_locale_mark ());
  warn (wiring, g_strdup_printf (_ ("%s Over tolerances it leaves that range."), says));
}

/**
 * bw_wiring_warn:
 * @wiring: receives the sentences that a person must read before making the lead
 */
void
bw_wiring_warn (BwWiring *wiring, const BwWiringParts *parts)
{
  warn_of_end (wiring, &wiring->from_plug, FALSE);
  warn_of_end (wiring, &wiring->to_plug, TRUE);
  warn_of_connectors (wiring);
  for (guint i = 0; i < wiring->connections->len; i++)
    warn_of_levels (wiring, &g_array_index (wiring->connections, BwConnection, i));
  for (guint select = 0; select < BW_N_SELECTS; select++)
    warn_of_select (wiring, parts, select);
  for (guint i = 0; i < wiring->selections->len; i++)
    warn_of_window (wiring, &g_array_index (wiring->selections, BwSelection, i));
}

/**
 * bw_wire_return:
 * @number: as from bw_plug_find()
 *
 * Returns: (transfer full): where the return of a conductor goes: "pin 18", "shell", "its ground"
 */
char *
bw_wire_return (BwConnector connector, int number)
{
  if (number > 0)
    return g_strdup_printf (_ ("pin %d"), number);
  return g_strdup (bw_connector_is_single (connector) ? _ ("shell") : _ ("its ground"));
}

static char *
figure (double value, BwDimension dimension, char mark)
{
  return bw_quantity_format (value, dimension, 3, mark);
}

/* The resistors of @network in order: "33 Ω in series, 100 Ω to the return" */
static char *
elements_words (const BwNetwork *network, char mark)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < network->n; i++)
    {
      g_autofree char *ohm = figure (network->at[i].ohm, BW_DIMENSION_RESISTANCE, mark);
      g_string_append (text, i > 0 ? ", " : "");
      g_string_append_printf (text, network->at[i].place == BW_PLACE_SERIES ? _ ("%s in series")
                                                                            : _ ("%s to the return"),
                              ohm);
    }
  return g_strdup (text->str);
}

/**
 * bw_wire_end_words:
 * @end: what stands between the end of a lead and the input
 * @mark: the decimal mark
 *
 * Returns: (transfer full): "at the input's end 24 Ω in series"
 */
char *
bw_wire_end_words (const BwNetwork *end, char mark)
{
  g_return_val_if_fail (end != NULL, NULL);
  g_autofree char *elements = elements_words (end, mark);
  return g_strdup_printf (_ ("at the input's end %s"), elements);
}

static char *
pad_words (const BwNetwork *pad, char mark)
{
  if (pad->n < 3)
    {
      g_autofree char *elements = elements_words (pad, mark);
      return g_strdup_printf (_ ("minimum-loss pad: %s"), elements);
    }
  g_autofree char *series = figure (pad->at[0].ohm, BW_DIMENSION_RESISTANCE, mark);
  g_autofree char *shunt = figure (pad->at[1].ohm, BW_DIMENSION_RESISTANCE, mark);
  g_autofree char *last = figure (pad->at[2].ohm, BW_DIMENSION_RESISTANCE, mark);
  return g_strdup_printf (_ ("T pad: %1$s in series, %2$s to the return, %3$s in series"), series,
                          shunt, last);
}

/* A wire without a part in it. Only where the pins at both ends agree does it go straight through. */
static const char *
wire_words (const BwWiring *wiring, const BwConnection *connection)
{
  if (wiring == NULL || connection->from_pin == BW_PIN_NOT_LAID_DOWN
      || connection->to_pin == BW_PIN_NOT_LAID_DOWN)
    return _ ("a wire alone, once its pins are known");
  if (connection->from_pin == connection->to_pin
      && (connection->from_pin == BW_PIN_OWN_PLUG
          || wiring->from.connector == wiring->to.connector))
    return _ ("straight through");
  return _ ("a wire alone");
}

/**
 * bw_wire_through:
 * @wiring: (nullable): whose connection it is; %NULL: of one whose pins are not known
 * @pad: (nullable): a T pad or a minimum-loss pad in the conductor, at the source's end
 * @mark: the decimal mark
 *
 * Returns: (transfer full): what is in the conductor: "straight through" where pin and plug are the
 *   same at both ends, "a wire alone" where they are not, "82 Ω in series at the
 *   source's end, 120 Ω to the return"
 */
char *
bw_wire_through (const BwWiring *wiring, const BwConnection *connection, const BwNetwork *pad,
                 char mark)
{
  g_return_val_if_fail (connection != NULL && (pad == NULL || pad->n == 2 || pad->n == 3), NULL);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *series = figure (connection->series_ohm, BW_DIMENSION_RESISTANCE, mark);
  g_autofree char *shunt = figure (connection->shunt_ohm, BW_DIMENSION_RESISTANCE, mark);
  g_autofree char *farad = figure (connection->coupling_f, BW_DIMENSION_CAPACITANCE, mark);

  if (pad != NULL)
    g_ptr_array_add (parts, pad_words (pad, mark));
  if (connection->series_ohm > 0)
    g_ptr_array_add (parts, g_strdup_printf (_ ("%s in series at the source's end"), series));
  if (connection->shunt_ohm > 0)
    g_ptr_array_add (parts, g_strdup_printf (_ ("%s to the return"), shunt));
  if (connection->coupling_f > 0)
    g_ptr_array_add (parts, g_strdup_printf (_ ("%s in series"), farad));
  if (parts->len == 0)
    return g_strdup (wire_words (wiring, connection));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (", ", (char **) parts->pdata);
}
