/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wiring-private.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-wiring-error-quark, bw_wiring_error)

static const BwKind rests[BW_N_RESTS] = {
  [BW_REST_OPEN] = { "open", N_ ("left open") },
  [BW_REST_GROUND] = { "ground", N_ ("to the common ground") },
  [BW_REST_SELECTED] = { "selected", N_ ("held by its resistors") },
  [BW_REST_OWN_LOAD] = { "own-load", N_ ("left open: the set's own resistor holds it low") },
  [BW_REST_JOINED] = { "joined", N_ ("to the pin of the other end") },
};
const BwKindTable bw_rests = { BW_N_RESTS, rests };

static guint
conductors_of (const BwWiringEnd *end)
{
  return bw_signal_conductors (end->signal, end->sync);
}

static gboolean
check_ends (const BwWiringEnd *from, const BwWiringEnd *to, GError **error)
{
  guint carried = conductors_of (from);
  g_autofree char *gives = bw_kind_set_labels (&bw_conductors, carried);
  g_autofree char *takes = bw_kind_set_labels (&bw_conductors, conductors_of (to));

  if (carried != conductors_of (to))
    g_set_error (error, BW_WIRING_ERROR, BW_WIRING_ERROR_CONDUCTORS,
                 _ ("The source gives %1$s and the input takes %2$s: a lead alone does not do"),
                 gives, takes);
  else if (!bw_connector_takes (from->connector, from->signal, from->sync, TRUE))
    g_set_error (error, BW_WIRING_ERROR, BW_WIRING_ERROR_PINS,
                 _ ("%1$s of a source has no pins for %2$s"),
                 bw_kind_label (&bw_connectors, from->connector), gives);
  else if (!bw_connector_takes (to->connector, to->signal, to->sync, FALSE))
    g_set_error (error, BW_WIRING_ERROR, BW_WIRING_ERROR_PINS,
                 _ ("%1$s of an input has no pins for %2$s"),
                 bw_kind_label (&bw_connectors, to->connector), gives);
  else
    return TRUE;
  return FALSE;
}

static gboolean
connect (BwWiring *wiring, const BwWiringParts *parts, BwConductor conductor, GError **error)
{
  const BwWiringEnd *from = &wiring->from, *to = &wiring->to;
  BwConnection connection = {
    .conductor = conductor,
    .series_ohm = parts->series_ohm[conductor],
    .shunt_ohm = parts->shunt_ohm[conductor],
    .coupling_f = parts->coupling_f[conductor],
  };
  bw_plug_find (&wiring->from_plug, from->signal, conductor, TRUE, &connection.from_pin,
                &connection.from_ground);
  bw_plug_find (&wiring->to_plug, to->signal, conductor, FALSE, &connection.to_pin,
                &connection.to_ground);
  g_array_append_val (wiring->connections, connection);
  return bw_wiring_check_pins (from, connection.from_pin, to, connection.to_pin, error);
}

/* Whether pin @a of the source may drive switching pin @b of the set: the same pin of the same
 * connector; and the RGB switching of both 21-pin connectors, which has one level. */
static gboolean
drives (const BwWiring *wiring, const BwPin *a, const BwPin *b)
{
  gboolean same = wiring->from.connector == wiring->to.connector;
  return a->role == b->role && a->number == b->number
         && (same || (a->role == BW_PIN_SWITCH_FAST && a->level_v.high <= b->level_v.high * 1.01));
}

/* @pin: of the input's connector
 *
 * Returns: (transfer none) (nullable): the source's pin that drives it, if it is a switching pin
 * that the source can drive */
static const BwPin *
driver_of (const BwWiring *wiring, const BwPin *pin)
{
  guint n;
  const BwPin *pins = bw_plug_pins (&wiring->from_plug, &n);
  if (pin->role != BW_PIN_SWITCH_SLOW && pin->role != BW_PIN_SWITCH_FAST)
    return NULL;
  for (guint i = 0; i < n; i++)
    if (drives (wiring, &pins[i], pin))
      return &pins[i];
  return NULL;
}

/**
 * bw_wiring_wants:
 *
 * Returns: whether the set must be told @select, and nothing but the lead can tell it
 */
gboolean
bw_wiring_wants (const BwWiring *wiring, const BwWiringParts *parts, BwSelect select)
{
  const BwWiringEnd *to = &wiring->to;
  gboolean wide = parts->wide && bw_select_pin (to->connector, BW_SELECT_AV_WIDE) != 0;
  gboolean wanted = select == BW_SELECT_RGB  ? to->signal == BW_SIGNAL_RGB
                    : select == BW_SELECT_AV ? !wide
                                             : wide;
  int number = bw_select_pin (to->connector, select);
  return wanted && number != 0
         && driver_of (wiring, bw_plug_pin (&wiring->to_plug, number)) == NULL;
}

/* The lower supply where it does, for it wastes less; else the other. */
static gboolean
select_one (const BwWiring *wiring, const BwWiringParts *parts, BwSelect select,
            BwSelection *selection, GError **error)
{
  BwConnector connector = wiring->to.connector;
  if (parts->low_supply_v > 0
      && bw_selection_compute (connector, select, parts->low_supply_v, parts->supply_tolerance,
                               parts->preferred, selection, NULL)
      && selection->within)
    return TRUE;
  return bw_selection_compute (connector, select, parts->supply_v, parts->supply_tolerance,
                               parts->preferred, selection, error);
}

/* What the supply cannot do is a warning: the set may have a button for it. */
static void
select_all (BwWiring *wiring, const BwWiringParts *parts)
{
  for (guint select = 0; select < BW_N_SELECTS; select++)
    {
      g_autoptr (GError) error = NULL;
      BwSelection selection;
      if (parts->straight || !(parts->supply_v > 0) || !bw_wiring_wants (wiring, parts, select))
        continue;
      if (!select_one (wiring, parts, select, &selection, &error))
        {
          g_ptr_array_add (wiring->warnings, g_strdup (error->message));
          continue;
        }
      selection.ground = bw_plug_pin (&wiring->to_plug, selection.pin)->ground;
      g_array_append_val (wiring->selections, selection);
    }
}

/**
 * bw_wiring_selects:
 *
 * Returns: whether a selection holds pin @pin of the input
 */
gboolean
bw_wiring_selects (const BwWiring *wiring, int pin)
{
  for (guint i = 0; i < wiring->selections->len; i++)
    if (g_array_index (wiring->selections, BwSelection, i).pin == pin)
      return TRUE;
  return FALSE;
}

static gboolean
is_used (const BwWiring *wiring, gboolean at_input, int pin)
{
  for (guint i = 0; i < wiring->connections->len; i++)
    {
      const BwConnection *one = &g_array_index (wiring->connections, BwConnection, i);
      if (pin == (at_input ? one->to_pin : one->from_pin)
          || pin == (at_input ? one->to_ground : one->from_ground))
        return TRUE;
    }
  return FALSE;
}

/* The pin of the other end that @pin is joined to without being a conductor; zero: none. A pin of
 * the source that drives one of the set's has the same number. */
static int
joined_pin (const BwWiring *wiring, gboolean at_input, const BwPin *pin, gboolean straight)
{
  const BwPin *there
      = bw_plug_pin (at_input ? &wiring->from_plug : &wiring->to_plug, pin->number);
  if (straight)
    return bw_bought_lead_pin (wiring->from.connector, pin->number);
  if (there == NULL || pin->role == BW_PIN_GROUND)
    return 0;
  const BwPin *of_set = at_input ? pin : there;
  const BwPin *of_source = at_input ? there : pin;
  return driver_of (wiring, of_set) == of_source ? pin->number : 0;
}

static BwRest
make_rest (const BwWiring *wiring, gboolean at_input, const BwPin *pin, gboolean straight)
{
  BwRest rest = { at_input, pin->number, BW_REST_OPEN, 0 };
  rest.other = joined_pin (wiring, at_input, pin, straight);
  if (pin->role == BW_PIN_GROUND)
    rest.kind = BW_REST_GROUND;
  else if (at_input && bw_wiring_selects (wiring, pin->number))
    rest.kind = BW_REST_SELECTED;
  else if (rest.other != 0)
    rest.kind = BW_REST_JOINED;
  else if (at_input && pin->role == BW_PIN_SWITCH_FAST)
    rest.kind = BW_REST_OWN_LOAD;
  if (rest.kind != BW_REST_JOINED)
    rest.other = 0;
  return rest;
}

static void
list_rests (BwWiring *wiring, gboolean at_input, gboolean straight)
{
  guint n;
  const BwPin *pins = bw_plug_pins (at_input ? &wiring->to_plug : &wiring->from_plug, &n);

  /* Where a signal's pin is not known, any pin may be it: the others cannot be told what to do. */
  if (is_used (wiring, at_input, BW_PIN_NOT_LAID_DOWN))
    return;
  for (guint i = 0; i < n; i++)
    {
      if (is_used (wiring, at_input, pins[i].number))
        continue;
      BwRest rest = make_rest (wiring, at_input, &pins[i], straight);
      g_array_append_val (wiring->rests, rest);
    }
}

static BwWiring *
wiring_empty (const BwWiringEnd *from, const BwWiringEnd *to)
{
  BwWiring *wiring = g_new0 (BwWiring, 1);
  wiring->from = *from;
  wiring->to = *to;
  bw_plug_init (&wiring->from_plug, from->connector, from->edition, &from->pins);
  bw_plug_init (&wiring->to_plug, to->connector, to->edition, &to->pins);
  wiring->connections = g_array_new (FALSE, FALSE, sizeof (BwConnection));
  wiring->selections = g_array_new (FALSE, FALSE, sizeof (BwSelection));
  wiring->rests = g_array_new (FALSE, FALSE, sizeof (BwRest));
  wiring->warnings = g_ptr_array_new_with_free_func (g_free);
  return wiring;
}

/**
 * bw_wiring_new:
 * @from: the source's end
 * @to: the input's end; it must take the conductors that @from gives
 * @parts: what is put into the lead; all zero for none
 *
 * Returns: (transfer full) (nullable): each conductor with its pins and returns, the selection
 * pins, and what becomes of every other pin; %NULL with @error in %BW_WIRING_ERROR
 */
BwWiring *
bw_wiring_new (const BwWiringEnd *from, const BwWiringEnd *to, const BwWiringParts *parts,
               GError **error)
{
  g_return_val_if_fail (from != NULL && to != NULL && parts != NULL, NULL);
  g_autoptr (BwWiring) wiring = wiring_empty (from, to);

  if (!check_ends (from, to, error)
      || (parts->straight && !bw_wiring_check_straight (from, to, error)))
    return NULL;
  for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
    if (conductors_of (from) & BW_BIT (conductor) && !connect (wiring, parts, conductor, error))
      return NULL;
  select_all (wiring, parts);
  list_rests (wiring, FALSE, parts->straight);
  list_rests (wiring, TRUE, parts->straight);
  bw_wiring_warn (wiring, parts);
  return g_steal_pointer (&wiring);
}

/**
 * bw_wiring_free:
 * @wiring: (nullable) (transfer full): freed with all it owns
 */
void
bw_wiring_free (BwWiring *wiring)
{
  if (wiring == NULL)
    return;
  g_array_unref (wiring->connections);
  g_array_unref (wiring->selections);
  g_array_unref (wiring->rests);
  g_ptr_array_unref (wiring->warnings);
  g_free (wiring);
}
