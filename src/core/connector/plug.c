/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plug.h"

#include <glib/gi18n-lib.h>

#include "connector-private.h"

static guint
role_of (guint use)
{
  switch (use)
    {
    case BW_PIN_USE_GROUND:
      return BW_PIN_GROUND;
    case BW_PIN_USE_SUPPLY:
      return BW_PIN_SUPPLY;
    case BW_PIN_USE_SOUND:
      return BW_PIN_AUDIO;
    case BW_PIN_USE_OTHER:
      return BW_PIN_DATA;
    default:
      return use < BW_N_CONDUCTORS ? BW_PIN_VIDEO : BW_PIN_NONE;
    }
}

/* Pin @number as the person says it; the first ground is the return of every conductor. */
static BwPin
own_pin (const BwPinout *pins, guint number)
{
  guint use = bw_pinout_use (pins, number);
  guint ground = bw_pinout_find (pins, BW_PIN_USE_GROUND);
  guint carries = use < BW_N_CONDUCTORS ? BW_BIT (use) : 0;
  BwPin pin = { .number = (int) number, .role = role_of (use), .gives = carries, .takes = carries };

  if (carries != 0)
    pin.ground = ground > 0 ? (int) ground : BW_PIN_NOT_LAID_DOWN;
  pin.says = use < BW_N_PIN_USES ? bw_pin_uses.at[use].label : N_ ("not known");
  return pin;
}

/**
 * bw_plug_init:
 * @plug: (out caller-allocates)
 * @pins: (nullable): the person's own; they hold where no standard lays down all that @connector is
 *   used for
 */
void
bw_plug_init (BwPlug *plug, BwConnector connector, BwEdition edition, const BwPinout *pins)
{
  g_return_if_fail (plug != NULL);
  *plug = (BwPlug){ .connector = connector, .edition = edition };
  if (pins == NULL || !bw_pinout_is_given (pins) || bw_connector_open_contacts (connector) == 0)
    return;
  plug->n_own = MIN (bw_connector_open_contacts (connector), BW_PINOUT_MAX);
  for (guint i = 0; i < plug->n_own; i++)
    plug->own[i] = own_pin (pins, i + 1);
}

/**
 * bw_plug_pins:
 * @n: (out): how many
 *
 * Returns: (transfer none) (nullable) (array length=n): as bw_connector_pins()
 */
const BwPin *
bw_plug_pins (const BwPlug *plug, guint *n)
{
  g_return_val_if_fail (plug != NULL && n != NULL, NULL);
  if (plug->n_own == 0)
    return bw_connector_pins (plug->connector, plug->edition, n);
  *n = plug->n_own;
  return plug->own;
}

/**
 * bw_plug_pin:
 *
 * Returns: (transfer none) (nullable): pin @number, if there is such a pin
 */
const BwPin *
bw_plug_pin (const BwPlug *plug, int number)
{
  guint n;
  const BwPin *pins = bw_plug_pins (plug, &n);
  return number >= 1 && (guint) number <= n ? &pins[number - 1] : NULL;
}

static const BwPin *
pin_with (const BwPlug *plug, BwConductor conductor, gboolean on_source)
{
  guint n;
  const BwPin *pins = bw_plug_pins (plug, &n);
  for (guint i = 0; i < n; i++)
    if ((on_source ? pins[i].gives : pins[i].takes) & BW_BIT (conductor))
      return &pins[i];
  return NULL;
}

/**
 * bw_plug_find:
 * @signal: BwSignal in the lead; luminance with its sync goes to the pin of Y where there is none
 *   for video
 * @on_source: it is the connector of a source; else of an input
 * @pin: (out): number, or %BW_PIN_OWN_PLUG or %BW_PIN_NOT_LAID_DOWN
 * @ground: (out): its return, likewise
 *
 * Returns: whether the connector can carry @conductor
 */
gboolean
bw_plug_find (const BwPlug *plug, BwSignal signal, BwConductor conductor, gboolean on_source,
              int *pin, int *ground)
{
  g_return_val_if_fail (plug != NULL && pin != NULL && ground != NULL, FALSE);
  const BwConnectorFacts *facts = bw_connector_facts (plug->connector);
  const BwPin *found = pin_with (plug, conductor, on_source);

  if (found == NULL && signal == BW_SIGNAL_LUMA && conductor == BW_CONDUCTOR_VIDEO)
    found = pin_with (plug, BW_CONDUCTOR_Y, on_source);
  *pin = *ground = facts->single ? BW_PIN_OWN_PLUG : BW_PIN_NOT_LAID_DOWN;
  if (found == NULL)
    return facts->single || facts->open_use;
  *pin = found->number;
  *ground = found->ground;
  return TRUE;
}

/**
 * bw_plug_pin_name:
 * @number: as from bw_plug_find()
 * @conductor: what it carries, for a connector without numbers
 *
 * Returns: (transfer full): "pin 15 (red, or chroma of Y/C)", "centre contact of R", "R, pin not
 * laid down"
 */
char *
bw_plug_pin_name (const BwPlug *plug, int number, BwConductor conductor)
{
  g_return_val_if_fail (plug != NULL, NULL);
  const BwPin *pin = bw_plug_pin (plug, number);
  const char *label = bw_kind_label (&bw_conductors, conductor);

  if (pin != NULL)
    return g_strdup_printf (_ ("pin %1$d (%2$s)"), number, bw_pin_says (pin));
  if (number == BW_PIN_OWN_PLUG)
    return g_strdup_printf (_ ("centre contact of %s"), label);
  return g_strdup_printf (_ ("%s, pin not laid down"), label);
}

/**
 * bw_plug_source:
 *
 * Returns: (transfer none): who lays the pins down, translated
 */
const char *
bw_plug_source (const BwPlug *plug)
{
  g_return_val_if_fail (plug != NULL, NULL);
  return plug->n_own > 0 ? _ ("as entered in this sheet") : bw_connector_source (plug->connector);
}

/**
 * bw_connector_carries:
 * @conductors: set of BwConductor
 * @on_source: as bw_plug_find()
 *
 * Returns: whether the connector can carry all of them, each on a pin of its own. One without
 * pins laid down carries as many as it has contacts for, with one left for ground
 */
gboolean
bw_connector_carries (BwConnector connector, guint conductors, gboolean on_source)
{
  guint undefined = 0;
  guint used = 0; /* pin n as bit n */
  BwPlug plug;

  bw_plug_init (&plug, connector, BW_EDITION_CURRENT, NULL);
  for (guint i = 0; i < BW_N_CONDUCTORS; i++)
    {
      int pin, ground;
      if (!(conductors & BW_BIT (i)))
        continue;
      if (!bw_plug_find (&plug, BW_N_SIGNALS, i, on_source, &pin, &ground))
        return FALSE;
      undefined += pin == BW_PIN_NOT_LAID_DOWN;
      if (pin > 0 && used & BW_BIT (pin))
        return FALSE;
      used |= pin > 0 ? BW_BIT (pin) : 0;
    }
  return undefined == 0 || undefined < bw_connector_facts (connector)->contacts;
}

/**
 * bw_connector_takes:
 * @on_source: likewise
 *
 * Returns: whether the connector can carry @signal with @sync: as bw_connector_carries(), and
 *   luminance with its sync where it has a pin for Y
 */
gboolean
bw_connector_takes (BwConnector connector, BwSignal signal, BwSyncKind sync, gboolean on_source)
{
  return bw_connector_carries (connector, bw_signal_conductors (signal, sync), on_source)
         || (signal == BW_SIGNAL_LUMA
             && bw_connector_carries (connector, BW_BIT (BW_CONDUCTOR_Y), on_source));
}

/* The pin that carries a conductor of @a on the source's connector, and one of @b that is another; zero if there
 * is none. */
static int
shared_pin (const BwSource *source, BwSyncKind a, BwSyncKind b)
{
  guint of_a = bw_signal_conductors (source->signal, a);
  guint of_b = bw_signal_conductors (source->signal, b);
  BwPlug plug;

  bw_plug_init (&plug, source->connector, BW_EDITION_CURRENT, &source->pins);

  for (BwConductor i = 0; i < BW_N_CONDUCTORS; i++)
    for (BwConductor j = 0; j < BW_N_CONDUCTORS; j++)
      {
        int pin, other, ground;
        if ((of_a & ~of_b & BW_BIT (i)) && (of_b & ~of_a & BW_BIT (j))
            && bw_plug_find (&plug, source->signal, i, TRUE, &pin, &ground)
            && bw_plug_find (&plug, source->signal, j, TRUE, &other, &ground)
            && pin > 0 && pin == other)
          return pin;
      }
  return 0;
}

/**
 * bw_source_shares_pin:
 * @syncs: (out): the two kinds
 * @pin: (out): where they meet
 *
 * Returns: whether two kinds of sync that @source is said to give would leave by one pin, such as
 *   composite video and composite sync by pin 19 of the peritelevision connector: it gives one at a time
 */
gboolean
bw_source_shares_pin (const BwSource *source, BwSyncKind syncs[2], int *pin)
{
  g_return_val_if_fail (source != NULL && syncs != NULL && pin != NULL, FALSE);

  if (source->signal >= BW_N_SIGNALS || source->connector >= BW_N_CONNECTORS)
    return FALSE;
  for (syncs[0] = 0; syncs[0] < BW_N_SYNC_KINDS; syncs[0]++)
    for (syncs[1] = syncs[0] + 1; syncs[1] < BW_N_SYNC_KINDS; syncs[1]++)
      if ((source->syncs & BW_BIT (syncs[0])) && (source->syncs & BW_BIT (syncs[1])))
        {
          *pin = shared_pin (source, syncs[0], syncs[1]);
          if (*pin > 0)
            return TRUE;
        }
  return FALSE;
}

/* What is not known */

static gboolean
has_ground (const BwPlug *plug)
{
  for (guint i = 0; i < plug->n_own; i++)
    if (plug->own[i].role == BW_PIN_GROUND)
      return TRUE;
  return FALSE;
}

/**
 * bw_connector_open_pins:
 * @pins: (nullable): the person's own
 * @on_source: as bw_plug_find()
 *
 * Returns: the set of BwConductor that @signal with @sync has and whose pin nobody says, and of
 *   %BW_PIN_USE_GROUND where nobody says which pin their return is
 */
guint
bw_connector_open_pins (BwConnector connector, const BwPinout *pins, BwSignal signal,
                        BwSyncKind sync, gboolean on_source)
{
  if (bw_connector_open_contacts (connector) == 0)
    return 0;
  guint conductors = bw_signal_conductors (signal, sync), open = 0;
  BwPlug plug;

  bw_plug_init (&plug, connector, BW_EDITION_CURRENT, pins);
  for (BwConductor i = 0; i < BW_N_CONDUCTORS; i++)
    {
      int pin, ground;
      if (!(conductors & BW_BIT (i)))
        continue;
      bw_plug_find (&plug, signal, i, on_source, &pin, &ground);
      open |= pin == BW_PIN_NOT_LAID_DOWN ? BW_BIT (i) : 0;
      if (ground == BW_PIN_NOT_LAID_DOWN && !has_ground (&plug))
        open |= BW_BIT (BW_PIN_USE_GROUND);
    }
  return open;
}

/**
 * bw_open_pins_count:
 *
 * Returns: of how many contacts it is not known which they are
 */
guint
bw_open_pins_count (const BwOpenPins *open)
{
  g_return_val_if_fail (open != NULL, 0);
  return bw_kind_set_count (open->at_source) + bw_kind_set_count (open->at_input);
}

/**
 * bw_open_pins_name:
 *
 * Returns: (transfer full): what these contacts carry, and whose they are: "R, G, B, Sync, ground
 *   at the source"; empty if none is open
 */
char *
bw_open_pins_name (const BwOpenPins *open)
{
  g_return_val_if_fail (open != NULL, NULL);
  g_autofree char *source = bw_kind_set_labels (&bw_pin_uses, open->at_source);
  g_autofree char *input = bw_kind_set_labels (&bw_pin_uses, open->at_input);

  if (open->at_source != 0 && open->at_input != 0)
    return g_strdup_printf (_ ("%1$s at the source, %2$s at the input"), source, input);
  if (open->at_source != 0)
    return g_strdup_printf (_ ("%s at the source"), source);
  return open->at_input != 0 ? g_strdup_printf (_ ("%s at the input"), input) : g_strdup ("");
}

/**
 * bw_open_pins_says:
 *
 * Returns: (transfer full) (nullable): "complete but for 5 pins: R, G, B, Sync, ground at the
 *   source"; %NULL if none is open
 */
char *
bw_open_pins_says (const BwOpenPins *open)
{
  guint n = bw_open_pins_count (open);
  if (n == 0)
    return NULL;
  g_autofree char *name = bw_open_pins_name (open);
  /* Translators: what the pins carry and where, such as: R, G, B, ground at the source */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "complete but for %1$u pin: %2$s",
                                       "complete but for %1$u pins: %2$s", n),
                          n, name);
}
