/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"

G_DEFINE_QUARK (bw-hookup-error-quark, bw_hookup_error)

static void
free_step (gpointer data)
{
  BwHookupStep *step = data;
  g_free (step->id);
  g_free (step->name);
  g_free (step->purpose);
  g_free (step);
}

static void
free_hop (gpointer data)
{
  BwHookupHop *hop = data;
  g_free (hop->from);
  g_free (hop->to);
  g_free (hop);
}

static void
free_connection (gpointer data)
{
  BwHookupConnection *one = data;
  g_free (one->signal);
  g_free (one->from);
  g_free (one->from_return);
  g_free (one->to);
  g_free (one->to_return);
  g_free (one->through);
  g_free (one);
}

static void
free_rest (gpointer data)
{
  BwHookupRest *rest = data;
  g_free (rest->pin);
  g_free (rest->state);
  g_free (rest);
}

static void
free_part (gpointer data)
{
  BwHookupPart *part = data;
  g_free (part->what);
  g_free (part->price);
  g_free (part);
}

static void
free_level (gpointer data)
{
  BwHookupLevel *level = data;
  g_free (level->signal);
  g_free (level);
}

static void
free_alternative (gpointer data)
{
  BwHookupAlternative *alternative = data;
  g_free (alternative->summary);
  g_free (alternative->verdict_says);
  g_free (alternative->price);
  g_free (alternative);
}

static BwHookup *
hookup_empty (const BwCase *before)
{
  BwHookup *hookup = g_new0 (BwHookup, 1);
  hookup->source = g_strdup (before->source->name);
  hookup->input = g_strdup (before->input->name);
  hookup->monitor = before->monitor;
  hookup->supply_v = before->supply_v;
  hookup->supply_hz = before->supply_hz;
  hookup->verdict_after = BW_VERDICT_NO;
  hookup->alternatives = g_ptr_array_new_with_free_func (free_alternative);
  hookup->steps = g_ptr_array_new_with_free_func (free_step);
  hookup->hops = g_ptr_array_new_with_free_func (free_hop);
  hookup->connections = g_ptr_array_new_with_free_func (free_connection);
  hookup->rests = g_ptr_array_new_with_free_func (free_rest);
  hookup->parts = g_ptr_array_new_with_free_func (free_part);
  hookup->levels = g_ptr_array_new_with_free_func (free_level);
  hookup->warnings = g_ptr_array_new_with_free_func (g_free);
  hookup->needs = g_ptr_array_new_with_free_func (g_free);
  return hookup;
}

/**
 * bw_hookup_free:
 * @hookup: (nullable) (transfer full): freed with all it owns
 */
void
bw_hookup_free (BwHookup *hookup)
{
  if (hookup == NULL)
    return;
  g_free (hookup->source);
  g_free (hookup->input);
  g_free (hookup->plan);
  g_free (hookup->source_match);
  g_ptr_array_unref (hookup->alternatives);
  g_ptr_array_unref (hookup->steps);
  g_ptr_array_unref (hookup->hops);
  g_ptr_array_unref (hookup->connections);
  g_ptr_array_unref (hookup->rests);
  g_ptr_array_unref (hookup->parts);
  g_ptr_array_unref (hookup->levels);
  g_ptr_array_unref (hookup->warnings);
  g_ptr_array_unref (hookup->needs);
  g_free (hookup);
}

/**
 * bw_hookup_is_open:
 *
 * Returns: whether it has no plan because too little is known, and not because nothing leads there
 */
gboolean
bw_hookup_is_open (const BwHookup *hookup)
{
  g_return_val_if_fail (hookup != NULL, FALSE);
  return hookup->plan == NULL && hookup->verdict_after != BW_VERDICT_NO;
}

/**
 * bw_hookup_add_warning:
 *
 * Adds a sentence, once.
 */
void
bw_hookup_add_warning (BwHookup *hookup, const char *says)
{
  for (guint i = 0; i < hookup->warnings->len; i++)
    if (strcmp (hookup->warnings->pdata[i], says) == 0)
      return;
  g_ptr_array_add (hookup->warnings, g_strdup (says));
}

/* @after: what is judged of the plan. The mains are said before all else: bw_mains_say(). */
static void
warn_of_tight (BwHookup *hookup, const BwCase *after)
{
  for (guint i = 0; i < BW_N_RULES; i++)
    {
      const BwFinding *f = &hookup->fit_after.at[i];
      if (i == BW_RULE_MAINS || (f->severity != BW_SEVERITY_TIGHT && !bw_finding_is_remark (f)))
        continue;
      g_autofree char *says
          = bw_finding_says (f, &hookup->fit_after, after, bw_quantity_locale_mark ());
      bw_hookup_add_warning (hookup, says);
    }
}

/* What the plan was not held against, for want of figures. */
static void
warn_of_lacks (BwHookup *hookup)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < BW_N_RULES; i++)
    {
      const BwFinding *f = &hookup->fit_after.at[i];
      if (f->severity != BW_SEVERITY_UNJUDGED)
        continue;
      g_autofree char *name = bw_lack_name (&f->lacks);
      if (!g_ptr_array_find_with_equal_func (names, name, g_str_equal, NULL))
        g_ptr_array_add (names, g_steal_pointer (&name));
    }
  if (names->len == 0)
    return;
  g_ptr_array_add (names, NULL);
  g_autofree char *list = g_strjoinv (", ", (char **) names->pdata);
  /* Translators: a list of figures, such as: “Video level” of the input, “Bandwidth” of the monitor */
  g_autofree char *says = g_strdup_printf (
      _ ("The plan holds as far as it is judged. Not known, and so not judged: %s."), list);
  bw_hookup_add_warning (hookup, says);
}

/* Whether the box of @step changes nothing but sync that has conductors of its own. */
static gboolean
serves_only_sync (const BwPlanStep *step)
{
  const BwAdaptor *box = step->adaptor;
  const guint own = BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE);

  return step->kind == BW_STEP_BOX && box->kind == BW_ADAPTOR_BOX
         && (box->gives_syncs != 0 || box->gives_sync_v > 0 || box->gives_polarities != 0
             || box->gives_shapes != 0)
         && (own & BW_BIT (step->sync)) && (box->gives_syncs & ~own) == 0
         && box->gives_signals == 0 && box->gives_couplings == 0 && !(box->gives_video_v > 0)
         && box->gives_setup_ire.n == 0 && box->levels == BW_LEVELS_PASSED;
}

/* The picture need not take the way that the connections draw for it, and each box on it costs quality. */
static void
warn_of_detour (BwHookup *hookup, const BwPlanStep *step)
{
  guint picture = 0, all = bw_signal_conductors (step->after.source.signal, step->sync);

  for (BwConductor i = 0; i < BW_N_CONDUCTORS; i++)
    if ((all & BW_BIT (i)) && !bw_conductor_is_sync_alone (i))
      picture |= BW_BIT (i);
  g_autofree char *labels = bw_kind_set_labels (&bw_conductors, picture);
  /* Translators: the name of a part, and conductors: "R, G, B" */
  g_autofree char *says
      = g_strdup_printf (_ ("Sync alone needs to pass this part: %1$s. The picture (%2$s) can go straight to "
                            "what follows it."),
                         step->adaptor->name, labels);
  bw_hookup_add_warning (hookup, says);
}

static void
warn_of_steps (BwHookup *hookup)
{
  const BwPlan *plan = hookup->plan;
  gboolean inside = FALSE;

  for (guint i = 0; i < plan->n; i++)
    {
      const BwAdaptor *adaptor = plan->at[i].adaptor;
      guint kind = plan->at[i].kind;
      if (serves_only_sync (&plan->at[i]))
        warn_of_detour (hookup, &plan->at[i]);
      inside = inside || kind == BW_STEP_ASPECT_SIZE || kind == BW_STEP_UNDERSCAN;
      if (adaptor == NULL || *adaptor->note == '\0')
        continue;
      g_autofree char *says = g_strdup_printf ("%s: %s", adaptor->name, adaptor->note);
      bw_hookup_add_warning (hookup, says);
    }
  if (plan->at[plan->n - 1].after.monochrome)
    bw_hookup_add_warning (hookup,
                           _ ("The picture is in monochrome: colour is given up on the way."));
  if (inside) /* size controls may be inside the set */
    bw_hookup_add_warning (hookup, bw_caution ());
}

static void
warn_of_rate (BwHookup *hookup)
{
  if (hookup->fit_before.at[BW_RULE_LINE_RATE].severity >= BW_SEVERITY_CURABLE)
    bw_hookup_add_warning (hookup, _ ("Do not connect the source to the set without the converter: "
                                      "the wrong line rate can damage a set."));
}

/* The plan as it is judged. It brings another supply where the one at the bench is a danger to the set
 * (bw_hookup_add_mains()); one that is tight, or not known, stays what it is. */
static void
case_after (const BwHookup *hookup, const BwPlanState *state, BwCase *after)
{
  bw_plan_state_case (state, after);
  after->supply_v = hookup->supply_v;
  after->mains_met = hookup->fit_before.at[BW_RULE_MAINS].severity > BW_SEVERITY_TIGHT;
}

/* Puts @plan into words. The proof is made again here, by the rules that judge a source alone. */
static void
describe (BwHookup *hookup, const BwPlan *plan, const BwPlanSignal *begin)
{
  BwCase after;

  hookup->plan = g_memdup2 (plan, sizeof *plan);
  case_after (hookup, &hookup->plan->state, &after);
  bw_fit_judge (&after, &hookup->fit_after);
  hookup->verdict_after = hookup->fit_after.verdict;
  bw_hookup_add_mains (hookup);
  bw_hookup_add_steps (hookup, begin);
  warn_of_rate (hookup);
  warn_of_tight (hookup, &after);
  warn_of_lacks (hookup);
  warn_of_steps (hookup);
  bw_hookup_add_parts (hookup, begin);
  bw_hookup_add_hops (hookup, begin);
  bw_hookup_add_levels (hookup);
}

static gboolean
check_choice (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
              GError **error)
{
  if (source >= sheet->sources->len)
    g_set_error (error, BW_HOOKUP_ERROR, BW_HOOKUP_ERROR_SOURCE,
                 _ ("there is no source %1$u; the sheet has %2$u"), source + 1,
                 sheet->sources->len);
  else if (input >= sheet->monitor->inputs->len)
    g_set_error (error, BW_HOOKUP_ERROR, BW_HOOKUP_ERROR_INPUT,
                 _ ("there is no input %1$u; the set has %2$u"), input + 1,
                 sheet->monitor->inputs->len);
  else if (*bw_sheet_source (sheet, source)->raster != '\0'
           && bw_sheet_raster (sheet, catalogue, bw_sheet_source (sheet, source)) == NULL)
    g_set_error (error, BW_HOOKUP_ERROR, BW_HOOKUP_ERROR_SOURCE,
                 _ ("source “%1$s”: there is no raster “%2$s”"),
                 bw_sheet_source (sheet, source)->name, bw_sheet_source (sheet, source)->raster);
  else
    return TRUE;
  return FALSE;
}

static gboolean
check_alternative (guint alternative, guint n, GError **error)
{
  if (alternative == 0 || alternative < n)
    return TRUE;
  g_set_error (error, BW_HOOKUP_ERROR, BW_HOOKUP_ERROR_ALTERNATIVE,
               g_dngettext (GETTEXT_PACKAGE, "there is no alternative %1$u; there is %2$u",
                            "there is no alternative %1$u; there are %2$u", n),
               alternative + 1, n);
  return FALSE;
}

/* Where it is not known what the source gives or the input takes, nothing is planned: whether there
 * is a way is as open as it was. */
static BwHookup *
hookup_unplanned (const BwCase *before, const BwHookupChoice *choice, const BwLack *lack,
                  GError **error)
{
  if (!check_alternative (choice->alternative, 0, error))
    return NULL;
  BwHookup *hookup = hookup_empty (before);
  bw_fit_judge (before, &hookup->fit_before);
  hookup->verdict_before = hookup->verdict_after = hookup->fit_before.verdict;
  hookup->choice = *choice;
  g_ptr_array_add (hookup->needs, bw_lack_says (lack));
  return hookup;
}

/**
 * bw_hookup_new_chosen:
 * @sheet: must outlive the hook-up, as @catalogue must
 *
 * Plans how @source comes to @input. Where nothing leads there, the hook-up has no plan, the
 * verdict after is no, and its needs say why. Where too little is known to plan it has none either,
 * its needs name what is lacking, and the verdict stays what it was.
 *
 * Returns: (transfer full) (nullable): the hook-up, or %NULL with @error in %BW_HOOKUP_ERROR if
 * there is no such source, input or alternative
 */
BwHookup *
bw_hookup_new_chosen (const BwSheet *sheet, const BwCatalogue *catalogue, guint source,
                      guint input, const BwHookupChoice *choice, GError **error)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL && choice != NULL, NULL);
  guint alternative = choice->alternative;
  if (!check_choice (sheet, catalogue, source, input, error))
    return NULL;

  BwCase before;
  BwRasterFigures figures;
  BwLack lack;
  bw_case_init (&before, &figures, sheet, catalogue, source, input);
  if (bw_lacks_plan (before.source, before.input, &lack))
    return hookup_unplanned (&before, choice, &lack, error);
  BwPlanSignal begin = { *before.source, before.raster, before.raster->sync_shape, FALSE };
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  guint n_wanted = CLAMP (alternative + 1, BW_HOOKUP_ALTERNATIVES, BW_HOOKUP_MAX_ALTERNATIVES);
  bw_planner_set_series (planner, choice->series);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, n_wanted);

  if (!check_alternative (alternative, plans->len, error))
    return NULL;
  BwHookup *hookup = hookup_empty (&before);
  bw_fit_judge (&before, &hookup->fit_before);
  bw_fit_take_plan (&hookup->fit_before, &before, plans->len > 0);
  hookup->verdict_before = hookup->fit_before.verdict;
  hookup->choice = *choice;
  hookup->alternative = alternative;
  for (guint i = 0; i < plans->len; i++)
    bw_hookup_add_alternative (hookup, plans->pdata[i]);
  if (plans->len > 0)
    describe (hookup, plans->pdata[alternative], &begin);
  else if (bw_lacks_way (before.source, before.input, &lack))
    {
      hookup->verdict_after = hookup->verdict_before;
      g_ptr_array_add (hookup->needs, bw_lack_says (&lack));
    }
  else
    bw_hookup_add_needs (hookup, &before);
  return hookup;
}

/**
 * bw_hookup_new:
 * @alternative: as of BwHookupChoice
 *
 * bw_hookup_new_chosen() with resistors of E24 and the later editions of the peritelevision
 * connector.
 *
 * Returns: (transfer full) (nullable): as bw_hookup_new_chosen()
 */
BwHookup *
bw_hookup_new (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
               guint alternative, GError **error)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL, NULL);
  const BwHookupChoice choice = { alternative, BW_USUAL_SERIES, BW_EDITION_CURRENT };
  return bw_hookup_new_chosen (sheet, catalogue, source, input, &choice, error);
}
