/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plans.h"

/* One plan */

struct _BwHookupHold
{
  BwHookup *hookup;
};

/* @hookup: (transfer full)
 *
 * Returns: (transfer full): a holder of one reference */
static BwHookupHold *
hold_new (BwHookup *hookup)
{
  BwHookupHold *hold = g_rc_box_new0 (BwHookupHold);
  hold->hookup = hookup;
  return hold;
}

BwHookupHold *
bw_hookup_hold_ref (BwHookupHold *hold)
{
  return g_rc_box_acquire (hold);
}

static void
clear_hold (gpointer data)
{
  bw_hookup_free (((BwHookupHold *) data)->hookup);
}

void
bw_hookup_hold_unref (BwHookupHold *hold)
{
  g_rc_box_release_full (hold, clear_hold);
}

/**
 * bw_hookup_hold_get:
 *
 * Returns: (transfer none): the plan
 */
const BwHookup *
bw_hookup_hold_get (const BwHookupHold *hold)
{
  return hold->hookup;
}

/* All plans of a sheet */

struct _BwHookupPlans
{
  GHashTable *kept; /* char * to BwHookupHold */
  guint n_planned;
};

/**
 * bw_hookup_plans_new:
 *
 * Returns: (transfer full): no plans yet
 */
BwHookupPlans *
bw_hookup_plans_new (void)
{
  BwHookupPlans *plans = g_new0 (BwHookupPlans, 1);
  plans->kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                       (GDestroyNotify) bw_hookup_hold_unref);
  return plans;
}

void
bw_hookup_plans_free (BwHookupPlans *plans)
{
  g_hash_table_unref (plans->kept);
  g_free (plans);
}

/**
 * bw_hookup_plans_forget:
 *
 * To be called when the sheet has changed.
 */
void
bw_hookup_plans_forget (BwHookupPlans *plans)
{
  g_hash_table_remove_all (plans->kept);
}

/**
 * bw_hookup_plans_count:
 *
 * Returns: how often the planner has run
 */
guint
bw_hookup_plans_count (const BwHookupPlans *plans)
{
  return plans->n_planned;
}

static BwHookupHold *
find (BwHookupPlans *plans, BwDocument *document, const BwHookupChoice *choice, GError **error)
{
  guint source = bw_document_get_source (document), input = bw_document_get_input (document);
  g_autofree char *key = g_strdup_printf ("%u %u %u %u %u", source, input, choice->alternative,
                                          choice->series, choice->edition);
  BwHookupHold *hold = g_hash_table_lookup (plans->kept, key);
  if (hold != NULL)
    return hold;
  BwHookup *hookup = bw_hookup_new_chosen (bw_document_get_sheet (document),
                                           bw_document_get_catalogue (document), source, input,
                                           choice, error);
  if (hookup == NULL)
    return NULL;
  plans->n_planned++;
  hold = hold_new (hookup);
  g_hash_table_insert (plans->kept, g_steal_pointer (&key), hold);
  return hold;
}

/**
 * bw_hookup_plans_find:
 * @document: with a selected source and input
 * @choice: if there are fewer chains than that, the least one is taken
 *
 * Returns: (transfer full) (nullable): the plan; %NULL with @error in %BW_HOOKUP_ERROR
 */
BwHookupHold *
bw_hookup_plans_find (BwHookupPlans *plans, BwDocument *document, const BwHookupChoice *choice,
                      GError **error)
{
  BwHookupChoice least = *choice;
  g_autoptr (GError) trouble = NULL;
  BwHookupHold *hold = find (plans, document, choice, &trouble);

  least.alternative = 0;
  if (g_error_matches (trouble, BW_HOOKUP_ERROR, BW_HOOKUP_ERROR_ALTERNATIVE))
    hold = find (plans, document, &least, error);
  else if (trouble != NULL)
    g_propagate_error (error, g_steal_pointer (&trouble));
  return hold != NULL ? bw_hookup_hold_ref (hold) : NULL;
}
