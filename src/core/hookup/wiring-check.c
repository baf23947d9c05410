/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wiring-private.h"

#include <glib/gi18n-lib.h>

/* What must not be joined. */

static gboolean
is_switch (const BwPin *pin)
{
  return pin->role == BW_PIN_SWITCH_SLOW || pin->role == BW_PIN_SWITCH_FAST;
}

/* A steady voltage of the source that the input's pin is not made for, or a supply of the set on a
 * pin of the source. */
static gboolean
is_hazard (const BwPin *a, const BwPin *b)
{
  if (a->role == BW_PIN_SUPPLY || is_switch (a))
    return b->role != a->role || a->level_v.high > b->level_v.high * 1.01;
  return b->role == BW_PIN_SUPPLY && a->role != BW_PIN_NONE;
}

static gboolean
is_crossed (const BwPin *a, const BwPin *b)
{
  if (a->role == BW_PIN_VIDEO && b->role == BW_PIN_VIDEO)
    return !(a->gives & b->takes);
  /* a switching pin that the source grounds is off, which does no harm but selects nothing */
  return a->role != b->role;
}

/* "pin 8 of the source (21-pin peritelevision: function switching)" */
static char *
place (const BwWiringEnd *end, const BwPin *pin, gboolean at_input)
{
  const char *connector = bw_kind_label (&bw_connectors, end->connector);
  if (at_input)
    return g_strdup_printf (_ ("pin %1$d of the input (%2$s: %3$s)"), pin->number, connector,
                            bw_pin_says (pin));
  return g_strdup_printf (_ ("pin %1$d of the source (%2$s: %3$s)"), pin->number, connector,
                          bw_pin_says (pin));
}

static void
fault (GError **error, int code, const char *a, const char *b)
{
  if (code == BW_WIRING_ERROR_SUPPLY)
    g_set_error (error, BW_WIRING_ERROR, code,
                 _ ("A supply or switching voltage would be joined to another pin: %1$s to %2$s"),
                 a, b);
  else
    g_set_error (error, BW_WIRING_ERROR, code,
                 _ ("Two pins of different purpose would be joined: %1$s to %2$s"), a, b);
}

/**
 * bw_wiring_check_pins:
 * @from_pin: number on the source's connector
 * @to_pin: number on the input's
 *
 * Returns: whether the two may be joined; %FALSE with %BW_WIRING_ERROR_SUPPLY where a supply or a
 * switching voltage would meet another pin, else %BW_WIRING_ERROR_CROSSED. Pins that are not laid
 * down cannot be judged and pass
 */
gboolean
bw_wiring_check_pins (const BwWiringEnd *from, int from_pin, const BwWiringEnd *to, int to_pin,
                      GError **error)
{
  g_return_val_if_fail (from != NULL && to != NULL, FALSE);
  BwPlug from_plug, to_plug;
  bw_plug_init (&from_plug, from->connector, from->edition, &from->pins);
  bw_plug_init (&to_plug, to->connector, to->edition, &to->pins);
  const BwPin *a = bw_plug_pin (&from_plug, from_pin);
  const BwPin *b = bw_plug_pin (&to_plug, to_pin);

  if (a == NULL || b == NULL)
    return TRUE;
  gboolean hazard = is_hazard (a, b);
  if (!hazard && !is_crossed (a, b))
    return TRUE;
  g_autofree char *at_source = place (from, a, FALSE);
  g_autofree char *at_input = place (to, b, TRUE);
  fault (error, hazard ? BW_WIRING_ERROR_SUPPLY : BW_WIRING_ERROR_CROSSED, at_source, at_input);
  return FALSE;
}

/**
 * bw_bought_lead_pin:
 *
 * Leads sold for the two 21-pin connectors cross their inputs and outputs: 1 and 2, 3 and 6, 19 and
 * 20 of the peritelevision connector (from memory), and by the same token those of the Japanese.
 *
 * Returns: the pin at the far end of such a lead
 */
int
bw_bought_lead_pin (BwConnector connector, int pin)
{
  static const int crossed[2][3][2] = {
    { { 1, 2 }, { 3, 6 }, { 19, 20 } },
    { { 1, 2 }, { 5, 6 }, { 9, 10 } },
  };
  if (connector != BW_CONNECTOR_PERITELEVISION && connector != BW_CONNECTOR_JAPANESE_21)
    return pin;
  const int (*pairs)[2] = crossed[connector == BW_CONNECTOR_JAPANESE_21];
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 2; j++)
      if (pairs[i][j] == pin)
        return pairs[i][1 - j];
  return pin;
}

/* The two 21-pin connectors have one shell. */
static gboolean
is_same_shell (BwConnector a, BwConnector b)
{
  const guint of_21 = BW_BIT (BW_CONNECTOR_PERITELEVISION) | BW_BIT (BW_CONNECTOR_JAPANESE_21);
  return a == b || (BW_BIT (a) & of_21 && BW_BIT (b) & of_21)
         || (bw_connector_is_single (a) && bw_connector_is_single (b));
}

/* A source does not drive its own input pins, and sound in goes to sound out. */
static gboolean
is_judged (const BwPin *a)
{
  return a->role != BW_PIN_VIDEO || a->gives != 0;
}

/**
 * bw_wiring_check_straight:
 *
 * Judges a lead as bought for the source's connector, pin by pin.
 *
 * Returns: %FALSE with @error in %BW_WIRING_ERROR: the worst fault, and how many there are
 */
gboolean
bw_wiring_check_straight (const BwWiringEnd *from, const BwWiringEnd *to, GError **error)
{
  g_return_val_if_fail (from != NULL && to != NULL, FALSE);
  g_autoptr (GError) worst = NULL;
  guint n, faults = 0;
  BwPlug plug;
  bw_plug_init (&plug, from->connector, from->edition, &from->pins);
  const BwPin *pins = bw_plug_pins (&plug, &n);

  if (!is_same_shell (from->connector, to->connector))
    {
      g_set_error (error, BW_WIRING_ERROR, BW_WIRING_ERROR_SHELL,
                   _ ("%1$s and %2$s are not joined by a lead of one kind of plug"),
                   bw_kind_label (&bw_connectors, from->connector),
                   bw_kind_label (&bw_connectors, to->connector));
      return FALSE;
    }
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GError) trouble = NULL;
      int far = bw_bought_lead_pin (from->connector, pins[i].number);
      if (!is_judged (&pins[i]) || bw_wiring_check_pins (from, pins[i].number, to, far, &trouble))
        continue;
      faults++;
      if (worst == NULL
          || (worst->code != trouble->code && trouble->code == BW_WIRING_ERROR_SUPPLY))
        {
          g_clear_error (&worst);
          worst = g_steal_pointer (&trouble);
        }
    }
  if (worst == NULL)
    return TRUE;
  g_set_error (error, BW_WIRING_ERROR, worst->code,
               _ ("%1$s. Pins of this lead that do not agree: %2$u"), worst->message, faults);
  return FALSE;
}
