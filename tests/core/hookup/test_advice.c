/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whatever the fit and the hook-up prescribe is right for the likely cause: a person who puts the
 * resistor, the terminator or the attenuator in, or turns the switch, and types in what a scope
 * then reads, is told that it is as it should be. Over every cell of every bench sheet, and over
 * made-up ones. The readings are made here, from the levels of the source and the laws of the
 * divider. */
#include "core/cause/cause.h"

#include <math.h>
#include <string.h>

#include "core/hookup/plan.h"
#include "support.h"

/* A cell of a sheet, with the sync that is used in it. */
typedef struct
{
  const BwSheet *sheet;
  guint source_at;
  guint input_at;
  const BwSource *source;
  const BwInput *input;
  const BwRaster *raster;
  const char *advice; /* for the message of a failure */
} Cell;

/* How many were held against the likely cause, by what was advised. */
typedef struct
{
  guint n_plain;
  guint n_loads;
  guint n_resistors;
  guint n_pads;
} Count;

/* What the advised circuit does to the levels of the source. */
typedef struct
{
  BwSyncKind sync;
  double own_gain;   /* of conductors with sync alone, against the level as it is stated */
  double video_gain; /* against the level across 75 Ω, of conductors with picture */
} Circuit;

static double
divider (double open_v, double series_ohm, double load_ohm)
{
  return open_v * load_ohm / (load_ohm + series_ohm);
}

/* The voltage of an output without load: what is stated across 75 Ω is a share of it. */
static double
without_load (double level_v, guint stated, double ohm)
{
  return stated == BW_LOAD_75_OHM ? level_v * (75 + ohm) / 75 : level_v;
}

static void
read_levels (const Circuit *circuit, const BwWireLevels *levels, BwScopeReadings *readings)
{
  gboolean own = bw_conductor_is_sync_alone (levels->conductor);
  double pp_v = levels->sync_high_v - levels->sync_low_v;
  double gain = own ? circuit->own_gain : circuit->video_gain;

  *readings = (BwScopeReadings){ 0 };
  bw_scope_readings_set (readings, BW_SCOPE_SYNC, gain * pp_v);
  bw_scope_readings_set (readings, BW_SCOPE_WHITE, gain * levels->white_v);
  bw_scope_readings_set (readings, BW_SCOPE_BLACK, gain * levels->black_v);
  bw_scope_readings_set (readings, BW_SCOPE_BURST, gain * levels->burst_pp_v);
}

static void
assert_right (const Cell *cell, BwSyncKind sync, BwConductor conductor,
              const BwScopeReadings *readings)
{
  BwCauseCase c;

  bw_cause_case_of_input (cell->source, cell->input, cell->raster, sync, conductor, &c);
  if (c.refused) /* another signal kind than the input takes: a box stands between, and nothing is judged here */
    return;
  g_autoptr (GArray) causes = bw_causes (&c, readings);
  g_assert_cmpuint (causes->len, >, 0);
  const BwCause *first = &g_array_index (causes, BwCause, 0);
  if (first->known && first->n_faults == 0)
    return;
  g_autofree char *says = bw_cause_says (&c, readings, first, '.');
  g_test_message ("%s at %s, %s on %s, %s: %s", cell->source->name, cell->input->name,
                  bw_kind_id (&bw_sync_kinds, sync), bw_kind_id (&bw_conductors, conductor),
                  cell->advice, says);
  g_test_message ("picture %g V behind %g ohm, sync %g V (%s) behind %g ohm; the input ends them "
                  "in %g and %g ohm; expected are %g ohm, %g ohm in series and a pad of %g",
                  cell->source->video_v, cell->source->source_ohm, cell->source->sync_v,
                  bw_kind_id (&bw_stated_loads, cell->source->sync_load), cell->source->sync_ohm,
                  bw_input_load_ohm (cell->input, FALSE), bw_input_load_ohm (cell->input, TRUE),
                  c.load_ohm, c.series_ohm, c.pad_ratio);
  g_test_fail ();
}

/* The levels of the source behind @circuit, on each of @conductors. */
static void
try_circuit (const Cell *cell, const Circuit *circuit, guint conductors)
{
  BwWireForm form;
  BwWireLevels levels[BW_N_CONDUCTORS];

  bw_wire_form_of_source (cell->source, cell->raster, circuit->sync, &form);
  guint n = bw_wire_levels (&form, levels);
  for (guint i = 0; i < n; i++)
    {
      BwScopeReadings readings;
      if (!(conductors & BW_BIT (levels[i].conductor)))
        continue;
      read_levels (circuit, &levels[i], &readings);
      assert_right (cell, circuit->sync, levels[i].conductor, &readings);
    }
}

static guint
sync_conductors (void)
{
  return BW_BIT (BW_CONDUCTOR_SYNC) | BW_BIT (BW_CONDUCTOR_H) | BW_BIT (BW_CONDUCTOR_V);
}

/* By the fit */

static double
load_after (const BwInput *input, gboolean own_sync, BwRemedyKind remedy)
{
  double other_ohm = input->input_ohm;

  switch (remedy)
    {
    case BW_REMEDY_TERMINATOR: /* beside what is there */
      other_ohm = bw_input_load_ohm (input, own_sync);
      return 75 * other_ohm / (75 + other_ohm);
    case BW_REMEDY_SWITCH_ON:
      return 75;
    case BW_REMEDY_SWITCH_OFF:
    case BW_REMEDY_UNLOAD_LOOP:
      if (remedy == BW_REMEDY_UNLOAD_LOOP)
        other_ohm = input->termination == BW_TERMINATION_NONE ? input->input_ohm : 75;
      if (remedy == BW_REMEDY_SWITCH_OFF && !own_sync && input->loop_through && input->loop_ended)
        other_ohm = 1 / (1 / input->input_ohm + 1 / 75.0);
      return other_ohm;
    default:
      return bw_input_load_ohm (input, own_sync);
    }
}

static gboolean
is_judged (const BwFinding *f)
{
  return f->reason != BW_REASON_NOT_NEEDED && f->reason != BW_REASON_OTHER_RASTER;
}

static void
try_sync_of_fit (const Cell *cell, const BwFit *fit, Count *count)
{
  const BwFinding *f = &fit->at[BW_RULE_SYNC_LEVEL];
  const BwSource *source = cell->source;
  double load_ohm = load_after (cell->input, TRUE, f->remedy.kind);
  double series_ohm = source->sync_ohm;
  Circuit circuit = { .sync = fit->sync };

  if (!is_judged (f) || f->remedy.kind == BW_REMEDY_SYNC_AMPLIFIER)
    return;
  if (f->remedy.kind == BW_REMEDY_SERIES_RESISTOR)
    {
      series_ohm += bw_preferred_value (f->remedy.value, BW_SERIES_E24);
      if (f->as.sync_level.with_load)
        load_ohm = 75;
      if (f->as.sync_level.without_load)
        load_ohm = cell->input->input_ohm;
      count->n_resistors++;
    }
  else if (f->remedy.kind != BW_REMEDY_NONE)
    count->n_loads++;
  else
    count->n_plain++;
  circuit.own_gain = divider (without_load (1, source->sync_load, source->sync_ohm), series_ohm,
                              load_ohm);
  try_circuit (cell, &circuit, sync_conductors ());
}

/* The level behind a minimum-loss pad of E24 between 75 Ω and @load_ohm: its series resistor stands at
 * the higher resistance, its other one at the lower. */
static double
behind_pad (double open_v, double ohm, double load_ohm)
{
  double high = MAX (75, load_ohm), low = MIN (75, load_ohm);
  double series = bw_preferred_value (sqrt (high * (high - low)), BW_SERIES_E24);
  double shunt = bw_preferred_value (low * sqrt (high / (high - low)), BW_SERIES_E24);

  if (load_ohm < 75)
    return divider (open_v, ohm + series, shunt * load_ohm / (shunt + load_ohm));
  return divider (divider (open_v, ohm, shunt), shunt * ohm / (shunt + ohm) + series, load_ohm);
}

/* What an input of another resistance than 75 Ω gets behind the part that the fit puts there, against
 * the level across 75 Ω: by the divider, with resistors of E24. */
static gboolean
end_of_fit (const Cell *cell, const BwFinding *ends, double open_v, double ohm, double *gain)
{
  double load_ohm = bw_input_load_ohm (cell->input, FALSE);
  double r = ends->remedy.value;

  switch (ends->remedy.kind)
    {
    case BW_REMEDY_MATCHING_RESISTOR:
      *gain = divider (open_v, ohm + bw_preferred_value (r, BW_SERIES_E24), load_ohm);
      return TRUE;
    case BW_REMEDY_SHUNT_RESISTOR:
      r = bw_preferred_value (r, BW_SERIES_E24);
      *gain = divider (open_v, ohm, r * load_ohm / (r + load_ohm));
      return TRUE;
    case BW_REMEDY_MINIMUM_LOSS_PAD:
      *gain = behind_pad (open_v, ohm, load_ohm);
      return TRUE;
    default:
      return FALSE;
    }
}

/* An attenuator stands between the source and one load. */
static gboolean
pad_of_fit (const BwFinding *f, double *ratio)
{
  if (f->reason == BW_REASON_CURED_BY_TERMINATION
      || (f->remedy.kind != BW_REMEDY_VIDEO_PAD && f->remedy.kind != BW_REMEDY_MINIMUM_LOSS_PAD))
    return FALSE;
  *ratio = MIN (*ratio, f->remedy.value);
  return TRUE;
}

static void
try_picture_of_fit (const Cell *cell, const BwFit *fit, Count *count)
{
  const BwFinding *level = &fit->at[BW_RULE_VIDEO_LEVEL], *ends = &fit->at[BW_RULE_TERMINATION];
  const BwFinding *sync = &fit->at[BW_RULE_SYNC_LEVEL];
  gboolean own = bw_sync_has_own_conductor (fit->sync);
  double ohm = cell->source->source_ohm, ratio = 1;
  BwRemedyKind cure = ends->remedy.kind;
  Circuit circuit = { .sync = fit->sync };

  if (!is_judged (level) || (!own && !is_judged (sync))
      || level->remedy.kind == BW_REMEDY_VIDEO_AMPLIFIER
      || sync->remedy.kind == BW_REMEDY_VIDEO_AMPLIFIER)
    return;
  if (level->reason == BW_REASON_CURED_BY_TERMINATION)
    cure = level->remedy.kind;
  else if (!own && sync->reason == BW_REASON_CURED_BY_TERMINATION)
    cure = sync->remedy.kind;
  gboolean padded = pad_of_fit (level, &ratio);
  padded |= !own && pad_of_fit (sync, &ratio);
  double load_ohm = load_after (cell->input, FALSE, cure);
  if (!(cell->input->signals & BW_BIT (cell->source->signal))) /* the converter ends the line */
    load_ohm = 75;
  if (padded && (level->as.video_level.with_load || (!own && sync->as.sync_level.with_load)))
    load_ohm = load_after (cell->input, FALSE,
                           cell->input->termination == BW_TERMINATION_NONE && load_ohm > 75
                               ? BW_REMEDY_TERMINATOR
                               : BW_REMEDY_SWITCH_ON);
  double open_v = without_load (1, BW_LOAD_75_OHM, ohm);
  if (padded) /* the line looks back into 75 Ω */
    {
      open_v = 2 * ratio;
      ohm = 75;
    }
  if (!end_of_fit (cell, ends, open_v, ohm, &circuit.video_gain))
    circuit.video_gain = divider (open_v, ohm, load_ohm);
  count->n_pads += padded;
  count->n_loads += cure != BW_REMEDY_NONE;
  count->n_plain += !padded && cure == BW_REMEDY_NONE;
  try_circuit (cell, &circuit, ~sync_conductors ());
}

/* By the hook-up: what its plan says of the source and the input in the end. */

static void
try_plan (const Cell *cell, const BwPlan *plan, Count *count)
{
  const BwSource *after = &plan->state.source;
  double own_ohm = bw_input_load_ohm (&plan->state.input, TRUE);
  double load_ohm = bw_input_load_ohm (&plan->state.input, FALSE);
  Circuit circuit = { .sync = plan->fit.sync };

  if (plan->n_boxes > 0)
    return;
  for (guint i = 0; i < plan->n; i++)
    {
      count->n_resistors += plan->at[i].kind == BW_STEP_SERIES_RESISTOR;
      count->n_pads += plan->at[i].kind == BW_STEP_VIDEO_PAD;
      count->n_loads += plan->at[i].kind >= BW_STEP_TERMINATOR
                        && plan->at[i].kind <= BW_STEP_UNLOAD_LOOP;
    }
  circuit.own_gain = divider (without_load (after->sync_v, after->sync_load, after->sync_ohm),
                              after->sync_ohm, own_ohm)
                     / cell->source->sync_v;
  circuit.video_gain = divider (without_load (after->video_v, BW_LOAD_75_OHM, after->source_ohm),
                                after->source_ohm, load_ohm)
                       / cell->source->video_v;
  try_circuit (cell, &circuit, ~0u);
}

static void
try_hookup (const Cell *cell, BwSeries series, Count *count)
{
  static const char *const advice[BW_N_SERIES] = { "hook-up, E12", "hook-up, E24", "hook-up, E96" };
  g_autoptr (BwPlanner) planner
      = bw_planner_new (cell->sheet, bw_test_catalogue (), cell->source_at, cell->input_at);
  Cell here = *cell;

  here.advice = advice[series];
  bw_planner_set_series (planner, series);
  /* all alternatives of the usual series, the first of the others */
  guint n = series == BW_SERIES_E24 ? BW_HOOKUP_ALTERNATIVES : 1;
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, n);
  for (guint i = 0; i < plans->len; i++)
    try_plan (&here, plans->pdata[i], count);
}

/* What the fit promises the hook-up finds, and the list of the fit is that of the plan: each step but the
 * leads, in order, under the same name. */
static void
check_promise (const Cell *cell, BwFit fit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwHookup) hookup = bw_hookup_new (cell->sheet, bw_test_catalogue (), cell->source_at,
                                               cell->input_at, 0, &error);
  g_auto (GStrv) needs
      = bw_plan_needs (cell->sheet, bw_test_catalogue (), cell->source_at, cell->input_at,
                       '.');
  guint n = 0;

  g_assert_no_error (error);
  BwRasterFigures figures;
  BwCase c;
  BwLack lack;
  bw_case_init (&c, &figures, cell->sheet, bw_test_catalogue (), cell->source_at, cell->input_at);
  bw_fit_take_plan (&fit, &c, needs != NULL);
  g_assert_cmpint (fit.verdict, ==, hookup->verdict_before);
  g_assert_cmpint (needs != NULL, ==, hookup->plan != NULL);
  if (needs == NULL && bw_lacks_way (c.source, c.input, &lack))
    return; /* nothing is promised for want of a figure */
  if (fit.verdict == BW_VERDICT_WITH_PARTS)
    g_assert_nonnull (hookup->plan);
  g_autofree char *open = hookup->plan != NULL
                              ? bw_open_pins_says (&hookup->plan->state.source.open)
                              : NULL;
  if (fit.verdict <= BW_VERDICT_TIGHT) /* as it stands: nothing is needed but a lead and its pins */
    g_assert_cmpuint (needs != NULL ? g_strv_length (needs) : G_MAXUINT, ==, open != NULL ? 1 : 0);
  for (guint i = 0; hookup->plan != NULL && i < hookup->steps->len; i++)
    {
      const BwHookupStep *step = hookup->steps->pdata[i];
      if (step->kind == BW_STEP_LEAD)
        continue;
      g_assert_nonnull (needs[n]);
      g_assert_true (g_str_has_prefix (needs[n], step->name));
      n++;
    }
  if (open != NULL)
    g_assert_cmpstr (needs[n++], ==, open);
  g_assert_cmpuint (needs != NULL ? g_strv_length (needs) : 0, ==, n);
}

/* A capacitor that the fit asks for keeps all d.c. from the input, and behind an inverter sync stands as
 * the input takes it: the likely cause expects that. */
static void
check_expected (const Cell *cell, const BwFit *fit)
{
  guint conductors = bw_signal_conductors (cell->source->signal, fit->sync);

  for (BwConductor i = 0; i < BW_N_CONDUCTORS; i++)
    {
      BwCauseCase c;
      if (!(conductors & BW_BIT (i)))
        continue;
      bw_cause_case_of_input (cell->source, cell->input, cell->raster, fit->sync, i, &c);
      if (fit->at[BW_RULE_COUPLING].remedy.kind == BW_REMEDY_COUPLING_CAPACITOR
          && !bw_conductor_is_sync_alone (i))
        g_assert_true (bw_near (c.dc_v, 0, 0));
      if (fit->at[BW_RULE_SYNC_POLARITY].remedy.kind == BW_REMEDY_SYNC_INVERTER
          && bw_conductor_is_sync_alone (i) && cell->input->polarities != 0 && !c.not_taken)
        g_assert_true (cell->input->polarities
                       & BW_BIT (c.form.own_polarity[i == BW_CONDUCTOR_V ? 1 : 0]));
    }
}

static void
try_cell (const Cell *cell, const BwCase *c, Count *count)
{
  BwFit fit;

  bw_fit_judge (c, &fit);
  check_promise (cell, fit);
  check_expected (cell, &fit);
  if (bw_sync_has_own_conductor (fit.sync))
    try_sync_of_fit (cell, &fit, count);
  try_picture_of_fit (cell, &fit, count);
  for (BwSeries series = 0; series < BW_N_SERIES; series++)
    try_hookup (cell, series, count);
}

static void
try_sheet (const BwSheet *sheet, Count *count)
{
  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      {
        BwRasterFigures figures;
        BwCase c;
        bw_case_init (&c, &figures, sheet, bw_test_catalogue (), source, input);
        Cell cell = { sheet, source, input, c.source, c.input, c.raster, "fit" };
        BwLack lack;
        if (bw_lacks_signal (c.source, c.input, &lack))
          continue; /* nothing is advised for levels that are not known */
        try_cell (&cell, &c, count);
      }
}

static void
test_sheet (gconstpointer data)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (BwSheet) sheet = bw_sheet_load (data, bw_test_catalogue (), faults);
  Count count = { 0 };

  g_assert_nonnull (sheet);
  try_sheet (sheet, &count);
  g_test_message ("%u as they are, %u loads, %u resistors, %u pads", count.n_plain, count.n_loads,
                  count.n_resistors, count.n_pads);
}

/* Made-up cells: drives, levels, terminations and ranges in all combinations. */

static double
pick (GRand *rand, const double *values, gsize n)
{
  return values[g_rand_int (rand) % n] * g_rand_double_range (rand, 0.9, 1.1);
}

/* From @low to up to four times as much. */
static void
set_band (GRand *rand, BwBands *bands, double least, double most)
{
  double low = least * pow (most / least, g_rand_double (rand));
  bands->n = 1;
  bands->at[0] = (BwRange){ low, low * pow (4, g_rand_double (rand)) };
}

static void
draw_source (GRand *rand, BwSource *source)
{
  static const double sync_v[] = { 0.3, 0.6, 1, 2, 2.4, 3.3, 4, 5 };
  static const double ohm[] = { 0, 22, 50, 75, 75, 100, 390, 1000 };
  static const double video_v[] = { 0.35, 0.7, 0.7, 1, 1.4, 2, 4 };
  gboolean own = g_rand_boolean (rand);

  source->signal = BW_SIGNAL_RGB;
  source->syncs = BW_BIT (own ? BW_SYNC_COMPOSITE : BW_SYNC_ON_GREEN);
  source->sync_v = pick (rand, sync_v, G_N_ELEMENTS (sync_v));
  source->sync_load = own && g_rand_boolean (rand) ? BW_LOAD_OPEN : BW_LOAD_75_OHM;
  source->sync_ohm = pick (rand, ohm, G_N_ELEMENTS (ohm));
  source->source_ohm = pick (rand, ohm, G_N_ELEMENTS (ohm));
  source->video_v = pick (rand, video_v, G_N_ELEMENTS (video_v));
}

static void
draw_input (GRand *rand, BwInput *input)
{
  static const double ohm[] = { 150, 470, 1000, 2200, 10e3, 100e3 };

  input->signals = BW_BIT (BW_SIGNAL_RGB);
  input->syncs = BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_ON_GREEN);
  set_band (rand, &input->video_v, 0.2, 1.5);
  set_band (rand, &input->sync_v, 0.1, 3);
  input->own_sync_v.n = 0;
  if (g_rand_boolean (rand))
    set_band (rand, &input->own_sync_v, 0.1, 3);
  input->input_ohm = pick (rand, ohm, G_N_ELEMENTS (ohm));
  input->termination = g_rand_int (rand) % BW_N_TERMINATIONS;
  input->terminated = g_rand_boolean (rand);
  input->sync_termination = g_rand_int (rand) % BW_N_TERMINATIONS;
  input->sync_terminated = g_rand_boolean (rand);
  /* an input that loads the line is looped through by nobody */
  input->loop_through = input->input_ohm > 1500 && g_rand_int (rand) % 3 == 0;
  input->loop_ended = g_rand_boolean (rand);
}

#define MADE_UP 250

static void
test_made_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (75);
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  Count count = { 0 };

  g_ptr_array_set_size (sheet->sources, 1);
  g_ptr_array_set_size (sheet->monitor->inputs, 1);
  for (guint i = 0; i < MADE_UP; i++)
    {
      draw_source (rand, bw_sheet_source (sheet, 0));
      draw_input (rand, bw_monitor_input (sheet->monitor, 0));
      try_sheet (sheet, &count);
    }
  g_test_message ("%u as they are, %u loads, %u resistors, %u pads", count.n_plain, count.n_loads,
                  count.n_resistors, count.n_pads);
  g_assert_cmpuint (MIN (count.n_resistors, count.n_pads), >, MADE_UP / 20);
}

static void
add_sheet (const char *folder, const char *name)
{
  const char *root = g_getenv ("BW_SOURCE_ROOT");
  g_autofree char *id = g_strndup (name, strcspn (name, "."));
  g_autofree char *path = g_strdup_printf ("/advice/%s", id);

  g_assert_nonnull (root);
  g_test_add_data_func_full (path, g_build_filename (root, folder, name, NULL), test_sheet, g_free);
}

static void
add_sheets (const char *folder)
{
  g_autofree char *path = g_build_filename (g_getenv ("BW_SOURCE_ROOT"), folder, NULL);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".bench"))
      add_sheet (folder, name);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_sheets ("data");
  add_sheets ("tests/app");
  add_sheets ("tests/draw");
  add_sheets ("tests/sheets");
  g_test_add_func ("/advice/made-up", test_made_up);
  return g_test_run ();
}
