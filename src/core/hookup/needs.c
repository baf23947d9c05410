/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <glib/gi18n-lib.h>

#include "core/connector/plug.h"
#include "core/fit/mains.h"

/* What a plan takes, in a few words each: the one list of it, which the fit shows as well. */

/* A part with the values of its resistors: "series resistor in the sync conductor, 1.1 kΩ" */
static char *
part_words (const BwPlanStep *step, char mark)
{
  GString *text = g_string_new (bw_plan_step_name (step));

  for (guint i = 0; i < step->network.n; i++)
    {
      g_autofree char *ohm
          = bw_quantity_format (step->network.at[i].ohm, BW_DIMENSION_RESISTANCE, 3, mark);
      g_string_append_printf (text, i == 0 ? ", %s" : " / %s", ohm);
    }
  return g_string_free (text, FALSE);
}

/* A setting with what it is set to. */
static char *
setting_words (const BwPlanStep *step, char mark)
{
  const char *name = bw_plan_step_name (step);
  g_autofree char *share = bw_quantity_format (step->value, BW_DIMENSION_FRACTION, 3, mark);
  g_autofree char *ire = bw_quantity_format (step->value, BW_DIMENSION_IRE, 3, mark);

  switch ((BwStepKind) step->kind)
    {
    case BW_STEP_SWITCH:
    case BW_STEP_SYNC_SWITCH:
      return g_strdup_printf (step->on ? _ ("%s to 75 Ω") : _ ("%s to high impedance"), name);
    case BW_STEP_ASPECT_SIZE:
      return g_strdup_printf (step->on ? _ ("%1$s: the height to %2$s")
                                       : _ ("%1$s: the width to %2$s"),
                              name, share);
    case BW_STEP_BLACK_LEVEL:
      return g_strdup_printf (_ ("%1$s, for %2$s"), name, ire);
    default:
      return g_strdup (name);
    }
}

/* What the supply of the set needs comes first. */
static void
add_mains (GPtrArray *needs, const BwSheet *sheet, char mark)
{
  BwMains mains;
  if (!bw_mains_judge (sheet->monitor, sheet->supply_v, sheet->supply_hz, &mains)
      || !bw_mains_is_danger (&mains))
    return;
  g_ptr_array_add (needs, mains.frequency >= BW_SEVERITY_CURABLE
                              ? g_strdup (bw_kind_label (&bw_remedies, BW_REMEDY_MAINS_CONVERTER))
                              : bw_mains_transformer_words (sheet->monitor, sheet->supply_v,
                                                            mark));
}

/**
 * bw_plan_needs:
 * @mark: the decimal mark
 *
 * A BwFitPlanFunc. The parts and settings of the least plan of @source at @input, in its order; leads
 * are not among them. Last comes which pins of them are not known, if some are not.
 *
 * Returns: (transfer full) (nullable): %NULL if no plan leads there, or too little is known to plan
 */
char **
bw_plan_needs (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
               char mark)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL, NULL);
  BwLack lack;
  if (bw_lacks_plan (bw_sheet_source (sheet, source), bw_monitor_input (sheet->monitor, input), &lack))
    return NULL;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  if (plans->len == 0)
    return NULL;

  g_autoptr (GPtrArray) needs = g_ptr_array_new ();
  const BwPlan *plan = plans->pdata[0];
  add_mains (needs, sheet, mark);
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind != BW_STEP_LEAD)
      g_ptr_array_add (needs, bw_plan_step_is_setting (&plan->at[i])
                                  ? setting_words (&plan->at[i], mark)
                                  : part_words (&plan->at[i], mark));
  char *open = bw_open_pins_says (&plan->state.source.open);
  if (open != NULL)
    g_ptr_array_add (needs, open);
  g_ptr_array_add (needs, NULL);
  return (char **) g_ptr_array_steal (needs, NULL);
}
