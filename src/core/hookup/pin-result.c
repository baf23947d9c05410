/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"
#include "selection.h"

/* What a set does of a level on a pin that selects. */

typedef struct
{
  int pin;
  double from_v; /* and less than that of the next line of this pin */
  const char *id;
  const char *does;
} Step;

/* EN 50049-1 / IEC 60933-1 with amendment A2, from secondary sources: pin 8: 0 to 2 V, 4.5 to 7 V, 9.5 to
 * 12 V; pin 16: 0 to 0.4 V, 1 to 3 V. What lies between is laid down by no standard. */
static const Step steps[] = {
  { 8, 0, "off", N_ ("the set stays with its own programme") },
  { 8, 2, "undefined", N_ ("between the windows: what a set does then differs from set to set") },
  { 8, 4.5, "wide", N_ ("the set switches to this socket and shows the picture as 16:9, which a 4:3 tube "
                        "shows with bands above and below") },
  { 8, 7, "undefined", N_ ("between the windows: what a set does then differs from set to set") },
  { 8, 9.5, "av", N_ ("the set switches to this socket, 4:3") },
  { 8, 12.05, "too-high", N_ ("more than the 12 V that are allowed") },
  { 16, 0, "composite", N_ ("the set shows the composite video") },
  { 16, 0.4, "undefined", N_ ("between the windows: what a set does then differs from set to set") },
  { 16, 1, "rgb", N_ ("the set shows RGB") },
  { 16, 3, "too-high", N_ ("more than the 3 V that are allowed: the pin may be overloaded, and set or source "
                           "may suffer") },
};

static const Step *
step_of (int pin, double level_v)
{
  const Step *found = NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i].pin == pin && level_v >= steps[i].from_v)
      found = &steps[i];
  return found;
}

/**
 * bw_pin_is_known:
 * @pin: of the 21-pin connector of EN 50049-1
 *
 * Returns: whether a level on that pin selects something
 */
gboolean
bw_pin_is_known (int pin)
{
  return step_of (pin, 0) != NULL;
}

/**
 * bw_pin_reading_say:
 * @pin: one that bw_pin_is_known()
 * @level_v: read there with the lead in place; not less than zero
 *
 * Adds what a set does of it, and what flows.
 */
void
bw_pin_reading_say (BwNode *to, int pin, double level_v)
{
  g_return_if_fail (to != NULL && bw_pin_is_known (pin) && level_v >= 0);
  const Step *step = step_of (pin, level_v);
  const char *level = bw_node_quantity (to, level_v, BW_DIMENSION_VOLTAGE, 3);

  bw_node_say (to, BW_SAY_ANSWER, "says",
               bw_node_print (to, _ ("%1$s on pin %2$d: %3$s"), level, pin, _ (step->does)));
  bw_node_member (to, bw_value_words ("question", "pin"));
  bw_node_member (to, bw_value_count ("pin", pin));
  bw_node_member (to, bw_value_quantity ("level_v", level_v, BW_DIMENSION_VOLTAGE, 3));
  bw_node_member (to, bw_value_words ("state", step->id));
  if (pin == 16)
    bw_node_figure (to, _ ("Current into the 75 Ω of the pin"),
                    bw_value_quantity ("current_a", level_v / BW_VIDEO_OHM, BW_DIMENSION_CURRENT, 3));
  if (pin == 16 && level_v > 3)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, _ ("A resistor of about %s in series, from 5 V, brings it to some 1.9 V."),
                                bw_node_quantity (to, 120, BW_DIMENSION_RESISTANCE, 3)));
  if (pin == 8 && g_str_equal (step->id, "wide"))
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 _ ("For 4:3 bring 9.5 to 12 V to the pin, or set the format on the set itself."));
  bw_node_say (to, BW_SAY_NOTE, "caution",
               _ ("Do not judge sync or video with a d.c. meter: it shows only their mean. A scope shows "
                  "their level."));
}
