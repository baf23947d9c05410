/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "standard-limits.h"

#include <glib/gi18n-lib.h>

#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "cli/base/arguments.h"

/**
 * bw_cli_find_limits:
 * @all: (element-type BwStandardLimits)
 * @raw: the id of one of them, as it came
 *
 * Returns: (transfer none) (nullable): the limits; %NULL, having named the nearest in one line
 */
const BwStandardLimits *
bw_cli_find_limits (GPtrArray *all, const char *raw)
{
  g_autofree char *id = bw_argument_utf8 (raw);
  const BwStandardLimits *limits = bw_limits_find (all, id);
  if (limits != NULL)
    return limits;

  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  for (guint i = 0; i < all->len; i++)
    g_ptr_array_add (ids, ((BwStandardLimits *) all->pdata[i])->id);
  g_autofree char *nearest = bw_nearest_names (ids, id, 3);
  bw_cli_complain (_ ("there are no limits of “%1$s”; the nearest are %2$s"), id, nearest);
  return NULL;
}
