/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/hookup/plan.h"
#include "core/hookup/planner-private.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Every cell of @sheet in turn. */
typedef void (*CellFunc) (const BwSheet *sheet, const BwCatalogue *catalogue, guint source,
                          guint input, gpointer user_data);

static void
each_cell (const BwSheet *sheet, const BwCatalogue *catalogue, CellFunc func, gpointer user_data)
{
  for (guint s = 0; s < sheet->sources->len; s++)
    for (guint i = 0; i < sheet->monitor->inputs->len; i++)
      if (bw_sheet_raster (sheet, catalogue, bw_sheet_source (sheet, s)) != NULL)
        func (sheet, catalogue, s, i, user_data);
}

/* A sheet with @monitor and all the shipped sources. */
static BwSheet *
sheet_for (const BwMonitor *monitor)
{
  BwSheet *sheet = bw_sheet_new ();
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitor);
  sheet->supply_hz = 50;
  for (guint i = 0; i < sources->len; i++)
    g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[i]));
  return sheet;
}

/* The plan as a real sheet: what arrives as the only source, the set as it is set. It is judged by
 * the way that a sheet is judged, which knows nothing of plans. */
static BwVerdict
verdict_as_sheet (const BwSheet *model, const BwPlan *plan, guint input)
{
  g_autoptr (BwSheet) sheet = bw_sheet_copy (model);
  BwSource *source = bw_source_copy (&plan->state.source);
  BwInput *set = bw_monitor_input (sheet->monitor, input);
  g_autoptr (BwCatalogue) none = bw_catalogue_new_empty ();
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  g_ptr_array_set_size (sheet->sources, 0);
  g_ptr_array_add (sheet->sources, source);
  g_ptr_array_set_size (sheet->rasters, 0);
  g_ptr_array_add (sheet->rasters, bw_raster_copy (&plan->state.raster));
  g_free (source->raster);
  source->raster = g_strdup (plan->state.raster.id);
  set->terminated = plan->state.input.terminated;
  set->sync_terminated = plan->state.input.sync_terminated;
  set->termination = plan->state.input.termination;
  set->sync_termination = plan->state.input.sync_termination;
  set->loop_ended = plan->state.input.loop_ended;
  set->added_ohm = plan->state.input.added_ohm;
  set->added_sync_ohm = plan->state.input.added_sync_ohm;
  set->line_end_ohm = plan->state.input.line_end_ohm;
  set->setup_ire = plan->state.input.setup_ire;
  sheet->monitor->aspect = plan->state.monitor.aspect;
  sheet->monitor->overscan_h = plan->state.monitor.overscan_h;
  sheet->monitor->overscan_v = plan->state.monitor.overscan_v;
  source->joined = plan->state.source.joined;
  source->open = plan->state.source.open;
  g_assert_true (bw_source_check (source, NULL));
  bw_case_init (&c, &figures, sheet, none, 0, input);
  c.mains_met = TRUE; /* a plan leaves the supply out */
  bw_fit_judge (&c, &fit);
  return fit.verdict;
}

typedef struct
{
  guint cells;
  guint plans;
} Count;

static void
check_plan (const BwSheet *sheet, const BwPlan *plan, guint input)
{
  guint cost = 0;
  guint boxes = 0;
  double money = 0;

  g_assert_cmpint (plan->fit.verdict, <=, BW_VERDICT_TIGHT);
  g_assert_cmpint (verdict_as_sheet (sheet, plan, input), ==, plan->fit.verdict);
  g_assert_cmpuint (plan->n, >, 0);
  for (guint i = 0; i < plan->n; i++)
    {
      const BwPlanStep *step = &plan->at[i];
      boxes += step->kind == BW_STEP_BOX;
      cost += step->adaptor != NULL         ? bw_adaptor_rank (step->adaptor)
              : step->kind == BW_STEP_LEAD ? BW_COST_LEAD_MADE
                                           : BW_COST_SETTING;
      double price = 0;
      const char *unit;
      if (step->adaptor != NULL && bw_adaptor_price (step->adaptor, &price, &unit))
        money += price;
      g_assert_true (bw_source_check (&step->after.source, NULL));
    }
  if (plan->at[plan->n - 1].after.monochrome)
    cost += BW_COST_COLOUR_LOST;
  g_assert_cmpuint (boxes, ==, plan->n_boxes);
  g_assert_cmpuint (boxes, <=, BW_PLAN_MAX_BOXES);
  g_assert_cmpuint (cost, ==, plan->cost);
  g_assert_cmpfloat_with_epsilon (plan->money, money, 1e-9);
  g_assert_true (plan->state.input.connectors & BW_BIT (plan->state.source.connector));
}

static void
check_cell (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
            gpointer user_data)
{
  Count *count = user_data;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 3);
  g_autoptr (GPtrArray) again = bw_planner_find (planner, 3);
  g_autoptr (GPtrArray) one = bw_planner_find (planner, 1);

  g_assert_cmpuint (plans->len, ==, again->len);
  g_assert_cmpuint (one->len, ==, MIN (plans->len, 1));
  for (guint i = 0; i < plans->len; i++)
    {
      const BwPlan *plan = plans->pdata[i];
      check_plan (sheet, plan, input);
      g_assert_cmpuint (plan->cost, ==, ((BwPlan *) again->pdata[i])->cost);
      if (i > 0)
        g_assert_cmpuint (plan->cost, >=, ((BwPlan *) plans->pdata[i - 1])->cost);
      else
        g_assert_cmpuint (plan->cost, ==, ((BwPlan *) one->pdata[0])->cost);
    }
  if (plans->len == 0) /* no box of the catalogue leads there: that is known before any is tried */
    g_assert_cmpuint (bw_planner_states (planner), ==, 0);
  count->cells++;
  count->plans += plans->len > 0;
}

/* Every cell of the demonstration: a plan, but for the workstation, whose raster no scan converter
 * commonly takes (common practice, no source). */
static void
test_demo (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  Count count = { 0 };
  each_cell (sheet, bw_test_catalogue (), check_cell, &count);
  g_assert_cmpuint (count.cells, ==, 24);
  g_assert_cmpuint (count.plans, ==, 21);
}

static void
test_catalogue (void)
{
  GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  Count count = { 0 };
  for (guint i = 0; i < monitors->len; i++)
    {
      g_autoptr (BwSheet) sheet = sheet_for (monitors->pdata[i]);
      each_cell (sheet, bw_test_catalogue (), check_cell, &count);
    }
  g_assert_cmpuint (count.plans, >, count.cells / 2);
}

/* A verdict that is direct or tight as it stands needs a lead and nothing else. */
static void
check_direct (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
              gpointer user_data)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  bw_case_init (&c, &figures, sheet, catalogue, source, input);
  bw_fit_judge (&c, &fit);
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 3);
  gboolean lead_only = plans->len > 0 && ((BwPlan *) plans->pdata[0])->n == 1;
  if (fit.verdict <= BW_VERDICT_TIGHT)
    g_assert_cmpuint (plans->len, ==, 1);
  g_assert_true (lead_only == (fit.verdict <= BW_VERDICT_TIGHT));
  *(guint *) user_data += lead_only;
}

static void
test_direct (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  guint n = 0;
  each_cell (sheet, bw_test_catalogue (), check_direct, &n);
  g_assert_cmpuint (n, ==, 4);
}

/* Brute force: every chain of up to @left boxes, with no bound, no memory and no order. */
typedef struct
{
  const BwPlanner *planner;
  guint left;
  guint so_far;
  guint least;
  const BwPlanPlace *arrives;
  const BwPlanBox *box;
} Brute;

static void brute_from (Brute *brute, const BwPlanPlace *place);

static void
brute_branch (const BwPlanPlace *after, gpointer user_data)
{
  const Brute *at = user_data;
  Brute deeper = *at;
  deeper.left--;
  deeper.so_far += bw_box_cost (at->arrives, after, at->box->adaptor);
  brute_from (&deeper, after);
  ((Brute *) user_data)->least = MIN (at->least, deeper.least);
}

static void
brute_from (Brute *brute, const BwPlanPlace *place)
{
  g_autoptr (GPtrArray) closings = bw_planner_close (brute->planner, place);
  for (guint i = 0; i < closings->len; i++)
    brute->least = MIN (brute->least, brute->so_far
                                          + ((BwPlanClosing *) closings->pdata[i])->stretch.cost);
  for (guint i = 0; i < brute->planner->boxes->len && brute->left > 0; i++)
    {
      BwPlanStretch stretch;
      BwPlanPlace arrives;
      Brute branch = *brute;
      branch.box = &g_array_index (brute->planner->boxes, BwPlanBox, i);
      branch.arrives = &arrives;
      if (!bw_box_approach (brute->planner, place, branch.box->adaptor, &stretch, &arrives))
        continue;
      branch.so_far += stretch.cost;
      bw_box_branches (brute->planner, &arrives, branch.box, brute_branch, &branch);
      brute->least = MIN (brute->least, branch.least);
    }
}

#define BRUTE_DEPTH 3

/* Some of the shipped boxes, with ranks thrown anew, and all leads and parts. */
static BwCatalogue *
random_catalogue (GRand *rand, guint n_boxes)
{
  BwCatalogue *catalogue = bw_catalogue_new (NULL, NULL);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);

  for (guint i = adaptors->len; i-- > 0;)
    {
      BwAdaptor *adaptor = adaptors->pdata[i];
      if (bw_adaptor_is_box (adaptor) && g_rand_int (rand) % 24 >= n_boxes)
        g_ptr_array_remove_index (adaptors, i);
      else
        {
          adaptor->rank = g_rand_int_range (rand, 1, 40);
          /* fewer branches, so that brute force ends */
          adaptor->gives_systems &= BW_BIT (BW_SYSTEM_NTSC_M) | BW_BIT (BW_SYSTEM_PAL_B);
        }
    }
  return catalogue;
}

static void
check_least (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
             gpointer user_data)
{
  guint *more_than_one = user_data;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  Brute brute = { .planner = planner, .left = BRUTE_DEPTH, .least = G_MAXUINT };

  brute_from (&brute, &planner->start);
  if (plans->len == 0)
    {
      g_assert_cmpuint (brute.least, ==, G_MAXUINT);
      return;
    }
  const BwPlan *plan = plans->pdata[0];
  g_assert_cmpuint (plan->cost, <=, brute.least);
  if (plan->n_boxes <= BRUTE_DEPTH)
    g_assert_cmpuint (plan->cost, ==, brute.least);
  *more_than_one += plan->n_boxes >= 2;
}

static void
test_least (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (24);
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  guint more_than_one = 0;

  for (guint i = 0; i < 12; i++)
    {
      g_autoptr (BwCatalogue) catalogue = random_catalogue (rand, 7);
      each_cell (sheet, catalogue, check_least, &more_than_one);
    }
  g_assert_cmpuint (more_than_one, >, 5); /* else the test says little */
}

/* Without adaptors only what a lead made by hand can do. */
static void
test_empty_catalogue (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  g_ptr_array_set_size (bw_catalogue_adaptors (catalogue), 0);
  g_autoptr (BwPlanner) direct = bw_planner_new (sheet, catalogue, 0, 0);
  g_autoptr (BwPlanner) resistor = bw_planner_new (sheet, catalogue, 3, 2);
  g_autoptr (GPtrArray) one = bw_planner_find (direct, 3);
  g_autoptr (GPtrArray) none = bw_planner_find (resistor, 3);
  g_assert_cmpuint (one->len, ==, 1);
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (((BwPlan *) one->pdata[0])->cost, ==, 5); /* of a lead that is made: the program's own measure */
}

/* A demonstration source with logic sync at the RGB input. */
static BwSheet *
logic_sheet (double sync_v, double driver_ohm)
{
  BwSheet *sheet = bw_test_demo ();
  BwSource *source = bw_sheet_source (sheet, 3);
  source->sync_v = sync_v;
  source->sync_ohm = driver_ohm;
  return sheet;
}

static const BwPlanStep *
find_step (const BwPlan *plan, BwStepKind kind)
{
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == kind)
      return &plan->at[i];
  return NULL;
}

/* Sync through a series resistor into 75 Ω: R = 75 (V / 0.3 − 1) (voltage divider; 0.3 V is the
 * level of sync in ITU-R BT.1700), nearest value of E24 by IEC 60063. */
typedef struct
{
  const char *name;
  double sync_v;
  double exact_ohm;
  double e24_ohm;
  double level_v;
} ResistorCase;

static const ResistorCase resistor_cases[] = {
  { "5-volt", 5.0, 1175, 1200, 0.2941 },   { "4-volt", 4.0, 925, 910, 0.3046 },
  { "3.4-volt", 3.4, 775, 750, 0.3091 },   { "3.3-volt", 3.3, 750, 750, 0.3000 },
  { "2.4-volt", 2.4, 525, 510, 0.3077 },
};

static void
test_resistor (gconstpointer data)
{
  const ResistorCase *c = data;
  g_autoptr (BwSheet) sheet = logic_sheet (c->sync_v, 0);
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 3, 2);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);

  g_assert_cmpuint (plans->len, ==, 1);
  if (plans->len == 0)
    return;
  const BwPlan *plan = plans->pdata[0];
  const BwPlanStep *step = find_step (plan, BW_STEP_SERIES_RESISTOR);
  g_assert_nonnull (step);
  if (step == NULL)
    return;
  g_assert_true (bw_near (step->ideal.at[0].ohm, c->exact_ohm, 1e-9 * c->exact_ohm));
  g_assert_true (bw_near (step->network.at[0].ohm, c->e24_ohm, 1e-9 * c->e24_ohm));
  const BwFinding *level = &plan->fit.at[BW_RULE_SYNC_LEVEL];
  g_assert_true (bw_near (level->value, c->level_v, 0.5e-4)); /* worked to 0.1 mV */
}

/* 1.4 V where 0.7 V is wanted: 6.02 dB, a T pad of 25 Ω, 100 Ω, 25 Ω (image parameters). With 24 Ω
 * and 100 Ω: 2.8 V behind 75 + 24 Ω, 100 Ω beside 24 + 75 Ω, gives 0.7094 V across 75 Ω. */
static void
test_pad (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  bw_sheet_source (sheet, 2)->video_v = 1.4;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 2, 2);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  const BwPlan *plan = plans->len > 0 ? plans->pdata[0] : NULL;
  const BwPlanStep *step = plan != NULL ? find_step (plan, BW_STEP_VIDEO_PAD) : NULL;

  g_assert_nonnull (step);
  if (step == NULL)
    return;
  g_assert_true (bw_near (step->value, 6.0206, 1e-4));
  g_assert_true (bw_near (step->ideal.at[0].ohm, 25, 1e-9));
  g_assert_true (bw_near (step->ideal.at[1].ohm, 100, 1e-9));
  g_assert_true (bw_near (step->network.at[0].ohm, 24, 1e-9));
  g_assert_true (bw_near (step->network.at[1].ohm, 100, 1e-9));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_VIDEO_LEVEL].value, 0.7094, 0.5e-4));
}

/* The pad lowers sync in the video with the picture, in the same ratio: 1.4 and 0.6 V become 0.7094
 * and 0.6 × 0.7094 / 1.4 = 0.3040 V. */
static void
test_pad_sync (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwSource *source = bw_sheet_source (sheet, 0);
  g_assert_cmpint (source->signal, ==, BW_SIGNAL_COMPOSITE);
  source->video_v = 1.4;
  source->sync_v = 0.6;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 0, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  g_assert_cmpuint (plans->len, ==, 1);
  const BwPlan *plan = plans->pdata[0];

  g_assert_nonnull (find_step (plan, BW_STEP_VIDEO_PAD));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_VIDEO_LEVEL].value, 0.7094, 0.5e-4));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_SYNC_LEVEL].value, 0.3040, 0.5e-4));
}

/* The composite source of the demonstration, 0.7 V and 0.3 V times @gain across 75 Ω, at its composite
 * input, made one of @input_ohm without termination that takes @takes_v of the picture. */
static BwSheet *
other_resistance_sheet (double source_ohm, double gain, double input_ohm, BwRange takes_v)
{
  BwSheet *sheet = bw_test_demo ();
  BwSource *source = bw_sheet_source (sheet, 0);
  BwInput *input = bw_monitor_input (sheet->monitor, 0);

  source->video_v = 0.7 * gain;
  source->sync_v = 0.3 * gain;
  source->source_ohm = source_ohm;
  source->setup_ire = 0;
  input->setup_ire.n = 0;
  input->loop_through = input->loop_ended = FALSE;
  input->termination = input_ohm > 0 ? BW_TERMINATION_NONE : BW_TERMINATION_FIXED;
  input->input_ohm = input_ohm > 0 ? input_ohm : 10e3;
  input->video_v = (BwBands){ 1, { takes_v } };
  input->sync_v = (BwBands){ 1, { { takes_v.low * 3 / 7, takes_v.high * 3 / 7 } } };
  return sheet;
}

typedef struct
{
  const char *name;
  double source_ohm;
  double gain;
  double input_ohm; /* zero: 75 Ω inside */
  BwRange takes_v;
  BwStepKind kind;
  guint n; /* resistors in E24 */
  double ohm[2];
  double level_v;  /* at the input's terminals */
  double end_ohm;  /* of the lead */
  double source_at_end_ohm; /* that the input looks back into */
} ResistanceCase;

/* In E24 (IEC 60063), by Ohm's law. 24 Ω and 50 Ω: 1.4 V × 50/(75 + 74) = 0.4698 V. 43 Ω, and 91 Ω
 * beside 50 Ω = 32.270 Ω: the lead ends in 75.270 Ω, 1.4 × 32.270/150.270 = 0.30064 V there; back 118 Ω
 * beside 91 Ω = 51.378 Ω. 150 Ω beside 150 Ω: 75 Ω. From 50 Ω: 2.3333 V × 91/141 = 1.50591 V behind
 * 32.270 Ω and 43 Ω = 75.270 Ω, of which 75 Ω have 0.75160 V. */
static const ResistanceCase resistance_cases[] = {
  { "75-into-50", 75, 1, 50, { 0.3, 1 }, BW_STEP_END_SERIES, 1, { 24 }, 0.46980, 74, 99 },
  { "75-into-50-less", 75, 1, 50, { 0.2, 0.38 }, BW_STEP_END_MINIMUM_LOSS, 2, { 43, 91 }, 0.30064,
    75.270, 51.378 },
  { "75-into-150", 75, 1, 150, { 0.5, 1 }, BW_STEP_END_SHUNT, 1, { 150 }, 0.7, 75, 75 },
  { "50-into-75", 50, 2, 0, { 0.5, 1 }, BW_STEP_MINIMUM_LOSS, 2, { 91, 43 }, 0.75160, 75, 75.270 },
};

static void
test_resistance (gconstpointer data)
{
  const ResistanceCase *c = data;
  g_autoptr (BwSheet) sheet
      = other_resistance_sheet (c->source_ohm, c->gain, c->input_ohm, c->takes_v);
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 0, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  const BwPlan *plan = plans->len > 0 ? plans->pdata[0] : NULL;
  const BwPlanStep *step = plan != NULL ? find_step (plan, c->kind) : NULL;

  g_assert_nonnull (step);
  if (step == NULL)
    return;
  g_assert_cmpuint (plan->n_boxes, ==, 0);
  g_assert_cmpuint (step->network.n, ==, c->n);
  for (guint i = 0; i < c->n; i++)
    g_assert_true (bw_near (step->network.at[i].ohm, c->ohm[i], 1e-9));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_VIDEO_LEVEL].value, c->level_v, 1e-5));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_SYNC_LEVEL].value, c->level_v * 3 / 7, 1e-5));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_TERMINATION].value, c->end_ohm, 1e-3));
  g_assert_true (bw_near (plan->state.source.source_ohm, c->source_at_end_ohm, 1e-3));

  /* all of them stand where the input is, or none does */
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, bw_test_catalogue (), 0, 0, 0, NULL);
  const BwHookupConnection *video = hookup->connections->pdata[0];
  g_assert_cmpuint (video->n, ==, c->n);
  g_assert_cmpuint (video->n_at_end, ==, c->kind == BW_STEP_MINIMUM_LOSS ? 0 : c->n);
}

/* Both too much and the wrong resistance: 2.8 V at 50 Ω, where 0.7 V is wanted. A resistor of 25 Ω leaves
 * 2.8 × 50/75 = 1.8667 V, and an attenuator before it lowers that by 0.7/1.8667 = 0.375 = 8.519 dB: k =
 * 2.6667, 75 × 1.6667/3.6667 = 34.09 Ω and 150 k/(k² − 1) = 65.45 Ω. In E24 33, 68 and 24 Ω: 68 beside 33 +
 * 24 + 50 = 107 Ω are 41.577 Ω, 5.6 V × 41.577/149.577 × 50/107 = 0.7274 V. */
static void
test_resistance_and_level (void)
{
  g_autoptr (BwSheet) sheet = other_resistance_sheet (75, 4, 50, (BwRange){ 0.5, 0.9 });
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 0, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  g_assert_cmpuint (plans->len, ==, 1);
  const BwPlan *plan = plans->pdata[0];
  const BwPlanStep *pad = find_step (plan, BW_STEP_VIDEO_PAD);

  g_assert_nonnull (find_step (plan, BW_STEP_END_SERIES));
  g_assert_nonnull (pad);
  g_assert_true (bw_near (pad->value, 8.519, 1e-3));
  g_assert_true (bw_near (pad->ideal.at[0].ohm, 34.09, 5e-3));
  g_assert_true (bw_near (pad->ideal.at[1].ohm, 65.45, 5e-3));
  g_assert_true (bw_near (plan->fit.at[BW_RULE_VIDEO_LEVEL].value, 0.7274, 1e-4));
}

static void
remove_boxes (BwCatalogue *catalogue)
{
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  for (guint i = adaptors->len; i-- > 0;)
    if (bw_adaptor_is_box (adaptors->pdata[i]))
      g_ptr_array_remove_index (adaptors, i);
}

static void
add_adaptors (BwCatalogue *catalogue, const char *text)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_ADAPTORS, text, strlen (text), "mine", faults);
  g_assert_true (bw_test_no_faults (faults));
}

/* Logic sync into an input without 75 Ω: R = 900 (5 / 0.3 − 1) = 14.1 kΩ (voltage divider). Where
 * the input has more than 1 kΩ the resistor would smear the edges (common practice, no source): a
 * terminator first, 75 Ω beside 1100 Ω = 70.213 Ω, and 70.213 (5 / 0.3 − 1) = 1100 Ω. */
static void
test_resistor_at (void)
{
  static const double exact_ohm[][2] = { { 900, 14100 }, { 1100, 1100 } };
  for (gsize i = 0; i < G_N_ELEMENTS (exact_ohm); i++)
    {
      g_autoptr (BwSheet) sheet = logic_sheet (5, 0);
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      BwInput *input = bw_monitor_input (sheet->monitor, 2);
      input->sync_termination = BW_TERMINATION_NONE;
      input->input_ohm = exact_ohm[i][0];
      remove_boxes (catalogue);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 3, 2);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      g_assert_cmpuint (plans->len, ==, 1);
      const BwPlanStep *step = find_step (plans->pdata[0], BW_STEP_SERIES_RESISTOR);
      g_assert_nonnull (step);
      g_assert_cmpfloat_with_epsilon (step->ideal.at[0].ohm, exact_ohm[i][1], 1e-6);
    }
}

/* The same at a box, which has no terminator of its own. */
static void
test_resistor_at_box (void)
{
  static const double box_ohm[] = { 900, 1100 };
  for (gsize i = 0; i < G_N_ELEMENTS (box_ohm); i++)
    {
      g_autoptr (BwSheet) sheet = logic_sheet (5, 0);
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text = g_strdup_printf (
          "[box]\nname=encoder\norigin=Invented\nkind=box\ntakes_signals=rgb\n"
          "takes_sync=0.2 V .. 0.6 V\ntakes_sync_resistance=%g ohm\ngives_signals=composite\n"
          "gives_systems=ntsc-m\ngives_syncs=in-video\nlevels=standard\ngives_connectors=bnc\n",
          box_ohm[i]);
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 3, 0);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      if (i == 0)
        {
          g_assert_cmpuint (plans->len, ==, 1);
          const BwPlanStep *step = find_step (plans->pdata[0], BW_STEP_SERIES_RESISTOR);
          g_assert_nonnull (step);
          g_assert_cmpfloat_with_epsilon (step->ideal.at[0].ohm, 14100, 1e-6);
        }
      else
        g_assert_cmpuint (plans->len, ==, 0);
    }
}

/* A catalogue whose only boxes are two that take RGB: one gives composite, one luminance alone. */
static BwCatalogue *
two_boxes (int rank_in_colour, int rank_without)
{
  static const char model
      [] = "[in-colour]\nname=encoder\norigin=Invented\nkind=box\ntakes_signals=rgb\n"
           "gives_signals=composite\ngives_systems=ntsc-m\ngives_syncs=in-video\nlevels=standard\n"
           "gives_connectors=bnc\nrank=%d\n"
           "[without]\nname=matrix\norigin=Invented\nkind=box\ntakes_signals=rgb\n"
           "gives_signals=luminance\ngives_syncs=in-video\nlevels=standard\n"
           "gives_connectors=bnc\nrank=%d\n";
  g_autofree char *text = g_strdup_printf (model, rank_in_colour, rank_without);
  BwCatalogue *catalogue = bw_catalogue_new (NULL, NULL);

  remove_boxes (catalogue);
  add_adaptors (catalogue, text);
  return catalogue;
}

/* Colour is given up where keeping it costs more than 40 ranks (our own rule), a box and a half. */
static void
test_colour_lost (void)
{
  static const struct
  {
    int in_colour, without;
    const char *box;
  } cases[] = {
    { 20, 5, "in-colour" },
    { 44, 5, "in-colour" },
    { 46, 5, "without" },
    { 60, 21, "in-colour" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_assert_cmpint (bw_sheet_source (sheet, 2)->signal, ==, BW_SIGNAL_RGB);
      g_autoptr (BwCatalogue) catalogue = two_boxes (cases[i].in_colour, cases[i].without);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 2, 0);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      g_assert_cmpuint (plans->len, ==, 1);
      const BwPlanStep *step = find_step (plans->pdata[0], BW_STEP_BOX);
      g_assert_nonnull (step);
      g_assert_cmpstr (step->adaptor->id, ==, cases[i].box);
    }
}

/* Settings of the set, each by what is wrong with it. */
typedef struct
{
  const char *name;
  BwStepKind step;
} SettingCase;

static const SettingCase setting_cases[] = {
  { "switch-on", BW_STEP_SWITCH },
  { "unload-loop", BW_STEP_UNLOAD_LOOP },
  { "terminator", BW_STEP_TERMINATOR },
  { "aspect-switch", BW_STEP_ASPECT_SWITCH },
  { "aspect-size", BW_STEP_ASPECT_SIZE },
  { "underscan", BW_STEP_UNDERSCAN },
  { "black-level", BW_STEP_BLACK_LEVEL },
  { "coupling-capacitor", BW_STEP_CAPACITOR },
};

static void
make_wrong (BwSheet *sheet, BwStepKind step)
{
  BwInput *input = bw_monitor_input (sheet->monitor, 0);
  BwSource *source = bw_sheet_source (sheet, 0);

  if (step == BW_STEP_SWITCH)
    input->terminated = FALSE;
  else if (step == BW_STEP_UNLOAD_LOOP)
    {
      input->termination = BW_TERMINATION_FIXED;
      input->loop_ended = TRUE;
    }
  else if (step == BW_STEP_TERMINATOR)
    input->termination = BW_TERMINATION_NONE;
  else if (step == BW_STEP_ASPECT_SWITCH || step == BW_STEP_ASPECT_SIZE)
    {
      source->aspect = (BwRatio){ 16, 9 };
      sheet->monitor->wide_switch = step == BW_STEP_ASPECT_SWITCH;
    }
  else if (step == BW_STEP_UNDERSCAN)
    source->whole_picture = TRUE;
  else if (step == BW_STEP_BLACK_LEVEL)
    source->setup_ire = 15;
  else
    {
      source->coupling = BW_COUPLING_DC;
      source->dc_v = 5;
    }
}

static void
test_setting (gconstpointer data)
{
  const SettingCase *c = data;
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  make_wrong (sheet, c->step);
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 0, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);

  g_assert_cmpuint (plans->len, ==, 1);
  if (plans->len == 0)
    return;
  const BwPlan *plan = plans->pdata[0];
  check_plan (sheet, plan, 0);
  g_assert_cmpuint (plan->n, ==, 2); /* that and the lead */
  g_assert_nonnull (find_step (plan, c->step));
  /* a setting is the least effort that there is: one, beside that of the lead */
  const BwPlanStep *step = find_step (plan, c->step), *lead = find_step (plan, BW_STEP_LEAD);
  guint of_lead = lead->adaptor != NULL ? (guint) bw_adaptor_rank (lead->adaptor) : 5;
  if (step->adaptor == NULL)
    g_assert_cmpuint (plan->cost, ==, of_lead + 1);
}

/* A source without resistance of its own gives 2 V into any load, so that a line without its 75 Ω is no fault by itself;
 * but an attenuator to 0.7 V works only into 75 Ω. */
static void
test_pad_of_a_voltage (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 0);
  BwSource *source = bw_sheet_source (sheet, 0);
  input->termination = BW_TERMINATION_NONE;
  input->loop_through = FALSE;
  source->source_ohm = 0;
  source->video_v = 2;
  source->sync_v = 0.6; /* taken as it is, and behind the attenuator */
  input->sync_v = (BwBands){ 1, { { 0.15, 1 } } };
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 0, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  g_assert_cmpuint (plans->len, ==, 1);
  check_plan (sheet, plans->pdata[0], 0);
  g_assert_nonnull (find_step (plans->pdata[0], BW_STEP_VIDEO_PAD));
  g_assert_nonnull (find_step (plans->pdata[0], BW_STEP_TERMINATOR));
  g_assert_null (find_step (plans->pdata[0], BW_STEP_BOX));
}

/* 0.3 V of sync stands at 0.6 × 10000 / 10075 = 0.596 V where its 75 Ω is off; the switch cures it. */
static void
test_sync_switch (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  input->sync_v.at[0].high = 0.45;
  input->sync_termination = BW_TERMINATION_SWITCHED;
  input->sync_terminated = FALSE;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, bw_test_catalogue (), 2, 2);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  g_assert_cmpuint (plans->len, ==, 1);
  const BwPlan *plan = plans->pdata[0];
  const BwPlanStep *step = find_step (plan, BW_STEP_SYNC_SWITCH);
  g_assert_nonnull (step);
  g_assert_true (step->on);
  g_assert_true (plan->state.input.sync_terminated);
  g_assert_cmpfloat_with_epsilon (plan->fit.at[BW_RULE_SYNC_LEVEL].value, 0.3, 1e-9);
}

/* An encoder is the only way from RGB to composite; it does only if it takes what the source gives: 0.7 V with
 * 0.3 V of sync, 262 lines at 60.05 Hz, which are 15.734 kHz, progressive, bi-level. What is too high is
 * lowered on the way, what is too low stays so. */
static void
test_box_takes (void)
{
  static const struct
  {
    const char *key;
    gboolean taken;
  } cases[] = {
    { "", TRUE },
    { "takes_video=0.5 V .. 1 V\n", TRUE },
    { "takes_video=0.3 V .. 0.5 V\n", TRUE },
    { "takes_video=2 V .. 3 V\n", FALSE },
    { "takes_sync=0.2 V .. 0.6 V\n", TRUE },
    { "takes_sync=2 V .. 5 V\n", FALSE },
    { "takes_line_rates=15 kHz .. 16 kHz\n", TRUE },
    { "takes_line_rates=15 kHz .. 15.7 kHz\n", FALSE },
    { "takes_line_rates=15.8 kHz .. 16 kHz\n", FALSE },
    { "takes_field_rates=60 Hz .. 61 Hz\n", TRUE },
    { "takes_field_rates=49 Hz .. 60 Hz\n", FALSE },
    { "takes_scans=progressive\n", TRUE },
    { "takes_scans=interlaced\n", FALSE },
    { "takes_shapes=bi-level\n", TRUE },
    { "takes_shapes=tri-level\n", FALSE },
    { "takes_syncs=composite-sync\n", TRUE },
    { "takes_syncs=separate\n", FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text = g_strconcat (
          "[box]\nname=encoder\norigin=Invented\nkind=box\ntakes_signals=rgb\n"
          "gives_signals=composite\ngives_systems=ntsc-m\ngives_syncs=in-video\nlevels=standard\n"
          "gives_connectors=bnc\n",
          cases[i].key, NULL);
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 2, 0);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      if (plans->len != (guint) cases[i].taken)
        g_test_fail_printf ("%s: %u plans", cases[i].key, plans->len);
    }
}

/* A decoder takes what is coded in a system of its own. Composite without a subcarrier is coded in none, and is
 * luminance as well; composite with one is not. */
static void
test_box_takes_systems (void)
{
  static const struct
  {
    BwColourSystem system;
    const char *takes;
    gboolean taken;
  } cases[] = {
    { BW_SYSTEM_NTSC_M, "takes_signals=composite\n", TRUE },
    { BW_SYSTEM_NTSC_M, "takes_signals=composite\ntakes_systems=ntsc-m\n", TRUE },
    { BW_SYSTEM_NTSC_M, "takes_signals=composite\ntakes_systems=pal-b; pal-n\n", FALSE },
    { BW_SYSTEM_NTSC_M, "takes_signals=luminance\n", FALSE },
    { BW_SYSTEM_NTSC_M, "takes_signals=yc\n", FALSE },
    { BW_SYSTEM_NONE, "takes_signals=composite\n", TRUE },
    { BW_SYSTEM_NONE, "takes_signals=composite\ntakes_systems=pal-b\n", TRUE },
    { BW_SYSTEM_NONE, "takes_signals=luminance\n", TRUE },
    { BW_SYSTEM_NONE, "takes_signals=yc\n", FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text = g_strconcat (
          "[box]\nname=decoder\norigin=Invented\nkind=box\ngives_signals=rgb\n"
          "gives_syncs=composite-sync\nlevels=standard\ngives_connectors=bnc\n",
          cases[i].takes, NULL);
      BwSource *source = bw_sheet_source (sheet, 0);
      g_assert_cmpint (source->signal, ==, BW_SIGNAL_COMPOSITE);
      source->system = cases[i].system;
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 0, 2);
      BwPlanStretch stretch;
      BwPlanPlace arrives;
      g_assert_cmpuint (planner->boxes->len, ==, 1);
      const BwPlanBox *box = &g_array_index (planner->boxes, BwPlanBox, 0);
      if (bw_box_approach (planner, &planner->start, box->adaptor, &stretch, &arrives) != cases[i].taken)
        g_test_fail_printf ("case %" G_GSIZE_FORMAT, i);
    }
}

static void
count_branch (const BwPlanPlace *after, gpointer user_data)
{
  guint *systems = user_data;
  *systems |= BW_BIT (after->signal.source.system);
}

/* What comes out of a box is coded as what went in, if the box does not code it anew; Y/C is always coded in some system,
 * composite need not be. */
static void
test_systems_out (void)
{
  static const struct
  {
    BwColourSystem system;
    const char *gives;
    guint systems; /* that come out */
  } cases[] = {
    { BW_SYSTEM_NONE, "gives_signals=composite\n", BW_BIT (BW_SYSTEM_NONE) },
    { BW_SYSTEM_NONE, "gives_signals=yc\n", 0 },
    { BW_SYSTEM_NTSC_M, "gives_signals=composite\n", BW_BIT (BW_SYSTEM_NTSC_M) },
    { BW_SYSTEM_NTSC_M, "gives_signals=yc\n", BW_BIT (BW_SYSTEM_NTSC_M) },
    { BW_SYSTEM_NTSC_M, "gives_signals=composite\ngives_systems=pal-60\n", BW_BIT (BW_SYSTEM_PAL_60) },
    { BW_SYSTEM_NTSC_M, "gives_signals=rgb\ngives_syncs=composite-sync\n", BW_BIT (BW_SYSTEM_NONE) },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text = g_strconcat ("[box]\nname=box\norigin=Invented\nkind=box\n"
                                           "takes_signals=composite\nlevels=standard\n",
                                           cases[i].gives, NULL);
      guint systems = 0;
      bw_sheet_source (sheet, 0)->system = cases[i].system;
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 0, 0);
      g_assert_cmpuint (planner->boxes->len, ==, 1);
      bw_box_branches (planner, &planner->start, &g_array_index (planner->boxes, BwPlanBox, 0),
                       count_branch, &systems);
      if (systems != cases[i].systems)
        g_test_fail_printf ("case %" G_GSIZE_FORMAT ": %x", i, systems);
    }
}

/* What the catalogue does not have is in no plan. */
static void
test_no_terminator (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  for (guint i = adaptors->len; i-- > 0;)
    if (((BwAdaptor *) adaptors->pdata[i])->kind == BW_ADAPTOR_TERMINATOR)
      g_ptr_array_remove_index (adaptors, i);
  bw_monitor_input (sheet->monitor, 0)->termination = BW_TERMINATION_NONE;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 0, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 3);
  for (guint i = 0; i < plans->len; i++)
    g_assert_null (find_step (plans->pdata[i], BW_STEP_TERMINATOR));
}

/* What a plan costs in money is the price of everything in it that has one: here each thing another price. */
static void
test_money (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  guint priced = 0;
  for (guint i = 0; i < adaptors->len; i++)
    {
      BwAdaptor *adaptor = adaptors->pdata[i];
      g_free (adaptor->price);
      adaptor->price = i % 5 == 0 ? g_strdup ("") : g_strdup_printf ("%u EUR", 10 + i);
    }
  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      {
        g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
        g_autoptr (GPtrArray) plans = bw_planner_find (planner, 2);
        for (guint i = 0; i < plans->len; i++)
          {
            check_plan (sheet, plans->pdata[i], input);
            priced += ((BwPlan *) plans->pdata[i])->money > 0;
          }
      }
  g_assert_cmpuint (priced, >, 20);
}

/* Of two boxes that cost the same, the cheaper in money; of the same price, the one after which every rule
 * holds with margin (0.7 V; 0.98 V is near the input's 1 V): whichever the catalogue names first. */
static void
test_better_box (void)
{
  static const struct
  {
    const char *better, *worse;
  } cases[] = {
    { "levels=standard\nprice=10 EUR\n", "levels=standard\nprice=20 EUR\n" },
    { "gives_video=0.7 V\ngives_sync=0.3 V\n",
      "gives_video=0.98 V\ngives_sync=0.3 V\n" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (int turned = 0; turned < 2; turned++)
      {
        static const char box[] = "origin=Invented\nkind=box\ntakes_signals=rgb\n"
                                  "gives_signals=composite\ngives_systems=ntsc-m\n"
                                  "gives_syncs=in-video\ngives_connectors=bnc\nrank=20\n";
        g_autoptr (BwSheet) sheet = bw_test_demo ();
        g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
        g_autofree char *better
            = g_strconcat ("[better]\nname=encoder\n", box, cases[i].better, NULL);
        g_autofree char *worse = g_strconcat ("[worse]\nname=encoder\n", box, cases[i].worse, NULL);
        g_autofree char *text
            = g_strconcat (turned ? worse : better, turned ? better : worse, NULL);
        BwSource *source = bw_sheet_source (sheet, 2);
        g_free (source->raster);
        source->raster = g_strdup ("525-59.94-interlaced");
        remove_boxes (catalogue);
        add_adaptors (catalogue, text);
        g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 2, 0);
        g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
        g_assert_cmpuint (plans->len, ==, 1);
        g_assert_cmpstr (find_step (plans->pdata[0], BW_STEP_BOX)->adaptor->id, ==, "better");
      }
}

#define ENCODER(name, rank)                                                                        \
  "[" name "]\nname=" name "\norigin=Invented\nkind=box\nlevels=standard\ngives_connectors=bnc\n"   \
  "rank=" rank "\n"
#define TO_COMPOSITE "gives_signals=composite\ngives_systems=ntsc-m\ngives_syncs=in-video\n"
#define CHAIN                                                                                      \
  ENCODER ("one", "20") "takes_signals=rgb\ngives_signals=component\ngives_syncs=on-y\n"           \
  ENCODER ("two", "20") "takes_signals=component\n" TO_COMPOSITE

/* The best plan from RGB to composite by @boxes. */
static const BwPlan *
best_by (BwCatalogue *catalogue, const char *boxes, guint rank, BwSheet *sheet, GPtrArray **plans)
{
  remove_boxes (catalogue);
  add_adaptors (catalogue, boxes);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  for (guint i = 0; i < adaptors->len; i++)
    if (g_strcmp0 (((BwAdaptor *) adaptors->pdata[i])->id, "direct") == 0)
      ((BwAdaptor *) adaptors->pdata[i])->rank = rank;
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 2, 0);
  *plans = bw_planner_find (planner, 1);
  g_assert_cmpuint ((*plans)->len, ==, 1);
  return (*plans)->pdata[0];
}

/* Of two plans that cost the same, in effort and in money, and are as good, the one with fewer boxes: whichever the
 * catalogue names first. */
static void
test_fewer_boxes (void)
{
  static const char direct[] = ENCODER ("direct", "20") "takes_signals=rgb\n" TO_COMPOSITE;
  static const char *const both[] = { ENCODER ("direct", "20") "takes_signals=rgb\n" TO_COMPOSITE CHAIN,
                                      CHAIN ENCODER ("direct", "20") "takes_signals=rgb\n" TO_COMPOSITE };
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwSource *source = bw_sheet_source (sheet, 2);
  g_autoptr (GPtrArray) short_way = NULL;
  g_autoptr (GPtrArray) long_way = NULL;

  g_free (source->raster);
  source->raster = g_strdup ("525-59.94-interlaced");
  g_autoptr (BwCatalogue) of_one = bw_catalogue_new (NULL, NULL), of_two = bw_catalogue_new (NULL, NULL);
  const BwPlan *one = best_by (of_one, direct, 20, sheet, &short_way);
  const BwPlan *two = best_by (of_two, CHAIN, 20, sheet, &long_way);
  g_assert_cmpuint (one->n_boxes, ==, 1);
  g_assert_cmpuint (two->n_boxes, ==, 2);
  g_assert_cmpint (one->fit.verdict, ==, two->fit.verdict);
  guint as_dear = 20 + two->cost - one->cost;
  for (gsize i = 0; i < G_N_ELEMENTS (both); i++)
    for (int dearer = -1; dearer <= 1; dearer++)
      {
        g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
        g_autoptr (GPtrArray) plans = NULL;
        const BwPlan *best = best_by (catalogue, both[i], (guint) ((int) as_dear + dearer), sheet, &plans);
        g_assert_cmpuint (best->n_boxes, ==, dearer > 0 ? 2 : 1);
      }
}

/* A converter keeps the share of a line that a detail takes: 25.175 MHz / 2 in 640 pixels of 25.42 µs (VESA DMT 04h)
 * are 12.5875 × 25.422 / 52.8556 = 6.054 MHz in a line of SMPTE 170M; a box that passes less leaves that. */
static void
test_detail_behind_box (void)
{
  static const struct
  {
    const char *key;
    double hz;
  } cases[] = { { "", 6.0542e6 }, { "detail=5 MHz\n", 5e6 }, { "detail=8 MHz\n", 6.0542e6 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text = g_strconcat (
          "[box]\nname=converter\norigin=Invented\nkind=scan-converter\ntakes_signals=rgb\n"
          "gives_signals=rgb\ngives_rasters=525-59.94-interlaced\ngives_syncs=composite-sync\n"
          "levels=standard\n"
          "gives_connectors=bnc\n",
          cases[i].key, NULL);
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      sheet->monitor->line_rates_hz = (BwBands){ 1, { { 15e3, 16e3 } } };
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 6, 2);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      g_assert_cmpuint (plans->len, ==, 1);
      const BwPlan *plan = plans->pdata[0];
      g_assert_cmpfloat_with_epsilon (plan->state.source.detail_hz, cases[i].hz, 200);
    }
}

#define FIRST_OF_TWO                                                                               \
  "[first]\nname=to Y/C\norigin=Invented\nkind=box\ntakes_signals=rgb\ngives_signals=yc\n"           \
  "gives_systems=ntsc-m\ngives_syncs=in-video\nlevels=standard\ngives_connectors=mini-din-4\n"      \
  "rank=30\n"
#define SECOND_OF_TWO                                                                              \
  "[second]\nname=to composite\norigin=Invented\nkind=box\ntakes_signals=yc\n"                     \
  "gives_signals=composite\ngives_systems=ntsc-m\ngives_syncs=in-video\nlevels=standard\n"         \
  "gives_connectors=bnc\nrank=30\n"
#define AT_ONCE                                                                                    \
  "[once]\nname=encoder\norigin=Invented\nkind=box\ntakes_signals=rgb\ngives_signals=composite\n"  \
  "gives_systems=ntsc-m\ngives_syncs=in-video\nlevels=standard\ngives_connectors=bnc\nrank=%u\n"

static BwPlan *
least_plan (const char *boxes)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  remove_boxes (catalogue);
  add_adaptors (catalogue, boxes);
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 2, 0);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
  g_assert_cmpuint (plans->len, ==, 1);
  /* It borrows from sheet and catalogue: afterwards only its numbers may be looked at. */
  return g_memdup2 (plans->pdata[0], sizeof (BwPlan));
}

/* Of two ways that cost the same, the shorter: one box before two, whichever the catalogue names first. */
static void
test_shorter_way (void)
{
  g_autofree char *cheap = g_strdup_printf (AT_ONCE, 1);
  g_autofree BwPlan *two = least_plan (FIRST_OF_TWO SECOND_OF_TWO);
  g_autofree BwPlan *one = least_plan (cheap);
  g_autofree char *once = g_strdup_printf (AT_ONCE, 1 + two->cost - one->cost);
  g_autofree char *before = g_strconcat (once, FIRST_OF_TWO SECOND_OF_TWO, NULL);
  g_autofree char *after = g_strconcat (FIRST_OF_TWO SECOND_OF_TWO, once, NULL);
  g_autofree BwPlan *either = least_plan (before), *or = least_plan (after);
  g_assert_cmpuint (two->n_boxes, ==, 2);
  g_assert_cmpuint (either->cost, ==, two->cost);
  g_assert_cmpuint (or->cost, ==, two->cost);
  g_assert_cmpuint (either->n_boxes, ==, 1);
  g_assert_cmpuint (or->n_boxes, ==, 1);
}

/* What stands behind a box that makes composite sync of sync on green: 0.7 and 0.3 V as the standard has them (ITU-R
 * BT.1700), but for what the box is said to give; or the picture as it comes, here 0.8 V. */
typedef struct
{
  const char *keys;
  double video_v, sync_v;
  BwStatedLoad sync_load;
  double sync_ohm;
  double setup_ire;
  BwCoupling coupling;
} Given;

static const Given given_cases[] = {
  { "levels=standard\n", 0.7, 0.3, BW_LOAD_75_OHM, 75, 0, BW_COUPLING_DC },
  { "levels=standard\ngives_sync=2 V\ngives_sync_stated=open\ngives_sync_resistance=330 ohm\n", 0.7,
    2, BW_LOAD_OPEN, 330, 0, BW_COUPLING_DC },
  { "levels=standard\ngives_video=0.9 V\ngives_couplings=ac\ngives_setup=2 IRE\n", 0.9, 0.3,
    BW_LOAD_75_OHM, 75, 2, BW_COUPLING_AC },
  { "levels=passed\ngives_sync=0.4 V\n", 0.8, 0.4, BW_LOAD_75_OHM, 75, 0, BW_COUPLING_DC },
};

static void
test_box_gives (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (given_cases); i++)
    {
      const Given *given = &given_cases[i];
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text
          = g_strconcat ("[box]\nname=box\norigin=Invented\nkind=box\ntakes_signals=rgb\n"
                         "takes_syncs=on-green\ngives_signals=rgb\ngives_syncs=composite-sync\n"
                         "gives_connectors=bnc\n",
                         given->keys, NULL);
      BwSource *source = bw_sheet_source (sheet, 2);
      source->syncs = BW_BIT (BW_SYNC_ON_GREEN);
      source->video_v = 0.8;
      source->coupling = BW_COUPLING_DC;
      source->dc_v = source->setup_ire = 0;
      bw_monitor_input (sheet->monitor, 2)->syncs = BW_BIT (BW_SYNC_COMPOSITE);
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 2, 2);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      g_assert_cmpuint (plans->len, ==, 1);
      const BwSource *after = &find_step (plans->pdata[0], BW_STEP_BOX)->after.source;
      g_assert_cmpfloat_with_epsilon (after->video_v, given->video_v, 1e-9);
      g_assert_cmpfloat_with_epsilon (after->sync_v, given->sync_v, 1e-9);
      g_assert_cmpint (after->sync_load, ==, given->sync_load);
      g_assert_cmpfloat_with_epsilon (after->sync_ohm, given->sync_ohm, 1e-9);
      g_assert_cmpfloat_with_epsilon (after->setup_ire, given->setup_ire, 1e-9);
      g_assert_cmpint (after->coupling, ==, given->coupling);
      g_assert_cmphex (after->syncs, ==, BW_BIT (BW_SYNC_COMPOSITE));
      g_assert_cmpint (after->connector, ==, BW_CONNECTOR_BNC);
    }
}

/* Behind an encoder the colour system limits the detail, 4.2 MHz in system M (ITU-R BT.470-6): that is not said once
 * more of the source, only what is less. */
static void
test_detail_of_system (void)
{
  static const struct
  {
    const char *key;
    double hz;
  } cases[] = { { "", 0 }, { "detail=5 MHz\n", 0 }, { "detail=3 MHz\n", 3e6 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
      g_autofree char *text = g_strconcat (
          "[box]\nname=converter\norigin=Invented\nkind=scan-converter\ntakes_signals=rgb\n"
          "gives_signals=composite\ngives_systems=ntsc-m\ngives_rasters=525-59.94-interlaced\n"
          "gives_syncs=in-video\nlevels=standard\ngives_connectors=bnc\n",
          cases[i].key, NULL);
      remove_boxes (catalogue);
      add_adaptors (catalogue, text);
      g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, 6, 0);
      g_autoptr (GPtrArray) plans = bw_planner_find (planner, 1);
      g_assert_cmpuint (plans->len, ==, 1);
      const BwPlan *plan = plans->pdata[0];
      g_assert_cmpfloat_with_epsilon (plan->state.source.detail_hz, cases[i].hz, 1);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/planner/demo", test_demo);
  g_test_add_func ("/planner/catalogue", test_catalogue);
  g_test_add_func ("/planner/direct", test_direct);
  g_test_add_func ("/planner/least", test_least);
  g_test_add_func ("/planner/empty-catalogue", test_empty_catalogue);
  g_test_add_func ("/planner/resistor-at/input", test_resistor_at);
  g_test_add_func ("/planner/resistor-at/box", test_resistor_at_box);
  g_test_add_func ("/planner/sync-switch", test_sync_switch);
  g_test_add_func ("/planner/pad", test_pad);
  g_test_add_func ("/planner/pad-sync", test_pad_sync);
  for (gsize i = 0; i < G_N_ELEMENTS (resistance_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/planner/resistance/%s", resistance_cases[i].name);
      g_test_add_data_func (path, &resistance_cases[i], test_resistance);
    }
  g_test_add_func ("/planner/resistance-and-level", test_resistance_and_level);
  g_test_add_func ("/planner/pad-of-a-voltage", test_pad_of_a_voltage);
  g_test_add_func ("/planner/colour-lost", test_colour_lost);
  for (gsize i = 0; i < G_N_ELEMENTS (resistor_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/planner/resistor/%s", resistor_cases[i].name);
      g_test_add_data_func (path, &resistor_cases[i], test_resistor);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (setting_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/planner/setting/%s", setting_cases[i].name);
      g_test_add_data_func (path, &setting_cases[i], test_setting);
    }
  g_test_add_func ("/planner/box-takes", test_box_takes);
  g_test_add_func ("/planner/box-takes-systems", test_box_takes_systems);
  g_test_add_func ("/planner/systems-out", test_systems_out);
  g_test_add_func ("/planner/no-terminator", test_no_terminator);
  g_test_add_func ("/planner/money", test_money);
  g_test_add_func ("/planner/better-box", test_better_box);
  g_test_add_func ("/planner/fewer-boxes", test_fewer_boxes);
  g_test_add_func ("/planner/detail-behind-box", test_detail_behind_box);
  g_test_add_func ("/planner/shorter-way", test_shorter_way);
  g_test_add_func ("/planner/box-gives", test_box_gives);
  g_test_add_func ("/planner/detail-of-system", test_detail_of_system);
  return g_test_run ();
}
