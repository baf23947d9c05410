/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/hookup/wiring.h"

#include "support.h"

/* What is said of a pin that is not connected; NULL if nothing is. */
static const BwRest *
rest_of (const BwWiring *wiring, gboolean at_input, int pin)
{
  for (guint i = 0; i < wiring->rests->len; i++)
    {
      const BwRest *rest = &g_array_index (wiring->rests, BwRest, i);
      if (rest->at_input == at_input && rest->pin == pin)
        return rest;
    }
  return NULL;
}
