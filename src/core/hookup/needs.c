/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <glib/gi18n-lib.h>

#include "core/fit/mains.h"

/* What a plan takes, in a few words each: the one list of it, which the fit shows as well. */

static char *
ohms (double ohm)
{
  return bw_quantity_format (ohm, BW_DIMENSION_RESISTANCE, 3, bw_quantity_locale_mark ());
}

/* A part with the values of its resistors: "series resistor in the sync conductor, 1.1 kΩ" */
static char *
part_words (const BwPlanStep *step, const char *name)
{
  g_autoptr (GString) text = g_string_new (name);

  for (guint i = 0; i < step->network.n; i++)
    {
      g_autofree char *ohm = ohms (step->network.at[i].ohm);
      g_string_append_printf (text, i == 0 ? ", %s" : " / %s", ohm);
    }
  return g_strdup (text->str);
}

/* A setting with what it is set to, which its purpose says. */
static char *
setting_words (const BwPlanStep *step, const BwPlanSignal *before)
{
  g_autofree char *purpose = bw_plan_step_purpose (step, before);
  return g_strdup_printf (_ ("%1$s: %2$s"), bw_plan_step_name (step), purpose);
}

static char *
step_words (const BwPlanStep *step, const BwPlanSignal *before)
{
  return bw_plan_step_is_setting (step) ? setting_words (step, before)
                                        : part_words (step, bw_plan_step_name (step));
}

/* What the supply of the set needs comes first. */
static void
add_mains (GPtrArray *needs, const BwSheet *sheet)
{
  BwMains mains;
  if (!bw_mains_judge (sheet->monitor, sheet->supply_v, sheet->supply_hz, &mains)
      || !bw_mains_is_danger (&mains))
    return;
  g_ptr_array_add (needs, mains.frequency >= BW_SEVERITY_CURABLE
                              ? g_strdup (bw_kind_label (&bw_remedies, BW_REMEDY_MAINS_CONVERTER))
                              : bw_mains_transformer_words (sheet->monitor, sheet->supply_v,
                                                            bw_quantity_locale_mark ()));
}

/**
 * bw_plan_needs:
 *
 * A BwFitPlanFunc. The parts and settings of the least plan of @source at @input, in its order; leads
 * are not among them.
 *
 * Returns: (transfer full) (nullable): %NULL if no plan leads there
 */
char **
bw_plan_needs (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL, NULL);
  const BwSource *from = bw_sheet_source (sheet, source);
  const BwRaster *raster = bw_sheet_raster (sheet, catalogue, from);
  g_return_val_if_fail (raster != NULL, NULL);
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  if (plans->len == 0)
    return NULL;

  g_autoptr (GPtrArray) needs = g_ptr_array_new ();
  const BwPlan *plan = plans->pdata[0];
  const BwPlanSignal begin = { *from, raster, raster->sync_shape, FALSE };
  const BwPlanSignal *before = &begin;
  add_mains (needs, sheet);
  for (guint i = 0; i < plan->n; i++)
    {
      if (plan->at[i].kind != BW_STEP_LEAD)
        g_ptr_array_add (needs, step_words (&plan->at[i], before));
      before = &plan->at[i].after;
    }
  g_ptr_array_add (needs, NULL);
  return (char **) g_ptr_array_steal (needs, NULL);
}
