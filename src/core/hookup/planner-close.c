/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

/* The last stretch: lead, parts in it and settings of the set, until the fit holds. */

/**
 * bw_plan_state_case:
 * @c: (out caller-allocates): borrows from @state
 *
 * Makes of @state what bw_fit_judge() takes.
 */
void
bw_plan_state_case (const BwPlanState *state, BwCase *c)
{
  *c = (BwCase){
    .monitor = &state->monitor,
    .input = &state->input,
    .source = &state->source,
    .raster = &state->raster,
    .figures = &state->figures,
    .limits = state->limits,
    .supply_hz = state->supply_hz,
    .mains_met = TRUE, /* a transformer is no part of a chain: see bw_hookup_add_mains() */
  };
}

static void
set_signal (BwPlanState *state, const BwPlanSignal *signal)
{
  state->source = signal->source;
  state->raster = *signal->raster;
  state->raster.sync_shape = signal->shape;
}

/* @state: (out caller-allocates): the set as it stands, with @signal at its input */
static void
end_state (const BwPlanner *planner, const BwPlanSignal *signal, BwPlanState *state)
{
  *state = planner->base;
  set_signal (state, signal);
  bw_raster_figures (&state->raster, &state->figures);
}

static void
judge (const BwPlanState *state, BwFit *fit)
{
  BwCase c;
  bw_plan_state_case (state, &c);
  bw_fit_judge (&c, fit);
}

/* How the loads of the set are changed before anything else. */
typedef enum
{
  LOAD_SWITCH = 1 << 0,
  LOAD_TERMINATOR = 1 << 1,
  LOAD_UNLOAD = 1 << 2,
  LOAD_SYNC_SWITCH = 1 << 3,
  LOAD_SYNC_TERMINATOR = 1 << 4,
  N_LOAD_SETS = 1 << 5
} LoadChange;

/* Whether it is known that the conductor does not end in 75 Ω. */
static gboolean
is_open (const BwInput *input, gboolean own_sync)
{
  BwLack lack;
  return !bw_lacks_load (input, own_sync, &lack)
         && bw_input_load_ohm (input, own_sync) > BW_ONE_LOAD_MAX_OHM;
}

static gboolean
can_change (const BwPlanner *planner, guint changes)
{
  const BwInput *input = &planner->base.input;
  gboolean have = planner->part[BW_ADAPTOR_TERMINATOR] != NULL;
  gboolean open = is_open (input, FALSE) && input->termination != BW_TERMINATION_SWITCHED
                  && bw_load_is_one (bw_parallel_ohm (bw_input_load_ohm (input, FALSE),
                                                      BW_VIDEO_OHM));
  gboolean sync_open = is_open (input, TRUE);

  if ((changes & LOAD_SWITCH)
      && (input->termination != BW_TERMINATION_SWITCHED || input->terminated == BW_SWITCH_UNKNOWN))
    return FALSE;
  if ((changes & LOAD_TERMINATOR) && (!have || !open || (changes & LOAD_SWITCH)))
    return FALSE;
  if ((changes & LOAD_UNLOAD) && !(input->loop_through == TRUE && input->loop_ended == TRUE))
    return FALSE;
  if ((changes & LOAD_SYNC_SWITCH)
      && (input->sync_termination != BW_TERMINATION_SWITCHED
          || input->sync_terminated == BW_SWITCH_UNKNOWN))
    return FALSE;
  return !(changes & LOAD_SYNC_TERMINATOR)
         || (have && sync_open && !(changes & LOAD_SYNC_SWITCH));
}

/* One attempt to close. */
typedef struct
{
  const BwPlanner *planner;
  guint connector;         /* BwConnector where the last lead begins */
  BwPlanSignal signal;     /* at the far end of the lead */
  BwPlanStretch parts;     /* in the lead */
  BwPictureMatch match;    /* of the set as it is set: what its end needs */
  BwPlanStretch end;       /* at the far end of the lead, before the input */
  BwPlanStretch settings;  /* of the set */
  BwPlanState state;
  BwFit fit;
} Attempt;

/* An attempt from @start, without parts and settings: those are long, and not copied. */
static void
begin (Attempt *a, const Attempt *start)
{
  a->planner = start->planner;
  a->connector = start->connector;
  a->signal = start->signal;
  a->state = start->state;
  a->fit = start->fit;
  bw_stretch_clear (&a->parts);
  bw_stretch_clear (&a->end);
  bw_stretch_clear (&a->settings);
  a->match.part = BW_END_NO_PART;
}

static void
add_setting (Attempt *a, BwStepKind kind, BwRule rule, gboolean on, double value)
{
  gboolean part = kind == BW_STEP_TERMINATOR || kind == BW_STEP_SYNC_TERMINATOR;
  const BwAdaptor *adaptor = part ? a->planner->part[BW_ADAPTOR_TERMINATOR] : NULL;
  BwPlanStep step = { .kind = kind, .adaptor = adaptor, .rule = rule, .sync = a->fit.sync,
                      .on = on, .value = value, .after = a->signal };
  bw_stretch_add (&a->settings, &step, part ? bw_adaptor_rank (adaptor) : BW_COST_SETTING);
}

static void
change_loads (Attempt *a, guint changes)
{
  BwInput *input = &a->state.input;

  if (changes & LOAD_UNLOAD)
    {
      bw_input_change_load (input, FALSE, BW_LOAD_UNLOAD);
      add_setting (a, BW_STEP_UNLOAD_LOOP, BW_RULE_TERMINATION, FALSE, 0);
    }
  if (changes & LOAD_SWITCH)
    {
      bw_input_change_load (input, FALSE, BW_LOAD_SWITCH);
      add_setting (a, BW_STEP_SWITCH, BW_RULE_TERMINATION, input->terminated, 0);
    }
  if (changes & LOAD_TERMINATOR)
    {
      bw_input_change_load (input, FALSE, BW_LOAD_TERMINATOR);
      add_setting (a, BW_STEP_TERMINATOR, BW_RULE_TERMINATION, TRUE, BW_VIDEO_OHM);
    }
  if (changes & LOAD_SYNC_SWITCH)
    {
      bw_input_change_load (input, TRUE, BW_LOAD_SWITCH);
      add_setting (a, BW_STEP_SYNC_SWITCH, BW_RULE_SYNC_LEVEL, input->sync_terminated, 0);
    }
  if (changes & LOAD_SYNC_TERMINATOR)
    {
      bw_input_change_load (input, TRUE, BW_LOAD_TERMINATOR);
      add_setting (a, BW_STEP_SYNC_TERMINATOR, BW_RULE_SYNC_LEVEL, TRUE, BW_VIDEO_OHM);
    }
}

/* Whether all is known that bw_match_picture() asks for whatever the levels. */
static gboolean
knows_end (const Attempt *a)
{
  BwLack lack;
  return !bw_lacks_load (&a->state.input, FALSE, &lack)
         && !bw_lacks_source (&a->state.source, G_STRUCT_OFFSET (BwSource, source_ohm), &lack);
}

/* An input that stays of another resistance than 75 Ω needs a part that matches it. */
static void
choose_end (Attempt *a)
{
  if (!knows_end (a))
    return;
  bw_match_picture (&a->state.source, &a->state.input, a->fit.sync, &a->match);
  if (a->match.change != BW_LOAD_AS_IT_IS) /* the load is to be changed first */
    a->match.part = BW_END_NO_PART;
}

/* What the input sees of what comes to the end of the lead. */
static gboolean
arrive (Attempt *a)
{
  BwPlanSignal signal = a->signal;
  bw_stretch_clear (&a->end);
  if (a->match.part != BW_END_NO_PART
      && !bw_stretch_end (a->planner, &a->end, &signal, a->fit.sync, &a->match, &a->state.input))
    return FALSE;
  set_signal (&a->state, &signal);
  return TRUE;
}

static gboolean
has_step (const BwPlanStretch *stretch, BwStepKind kind)
{
  for (guint i = 0; i < stretch->n; i++)
    if (stretch->at[i].kind == kind)
      return TRUE;
  return FALSE;
}

static gboolean
cure_by_resistor (Attempt *a, const BwFinding *f)
{
  double load_ohm = bw_input_load_ohm (&a->state.input, TRUE);
  return !has_step (&a->parts, BW_STEP_SERIES_RESISTOR)
         && bw_stretch_resistor (a->planner, &a->parts, &a->signal, a->fit.sync, load_ohm,
                                 (BwRange){ f->low, f->high });
}

static gboolean
cure_by_pad (Attempt *a, const BwFinding *f)
{
  if (!knows_end (a))
    return FALSE;
  BwPictureMatch match = a->match; /* the ratio without what preferred values make of the end */
  if (match.part == BW_END_NO_PART)
    bw_match_picture (&a->state.source, &a->state.input, a->fit.sync, &match);
  return bw_load_is_one (bw_input_line_end_ohm (&a->state.input))
         && !has_step (&a->parts, BW_STEP_VIDEO_PAD) && !has_step (&a->parts, BW_STEP_MINIMUM_LOSS)
         && bw_stretch_pad (a->planner, &a->parts, &a->signal, a->fit.sync, match.pad,
                            match.pad_ratio, f->rule);
}

static gboolean
cure_level (Attempt *a, const BwFinding *f)
{
  gboolean own = f->rule == BW_RULE_SYNC_LEVEL && bw_sync_has_own_conductor (a->fit.sync);
  if (f->value <= f->high)
    return FALSE;
  return own ? cure_by_resistor (a, f) : cure_by_pad (a, f);
}

static gboolean
cure_area (Attempt *a, const BwFinding *f)
{
  a->state.monitor.overscan_h = a->state.monitor.overscan_v = 0;
  add_setting (a, BW_STEP_UNDERSCAN, f->rule, TRUE, 0);
  return TRUE;
}

/* The tube shows the other aspect ratio once the switch or the size control is set for it: on an
 * area inside its glass. */
static gboolean
cure_aspect (Attempt *a, const BwFinding *f)
{
  a->state.monitor.diagonal_m = bw_monitor_area_diagonal_m (&a->state.monitor,
                                                            a->state.source.aspect);
  a->state.monitor.aspect = a->state.source.aspect;
  add_setting (a, f->reason == BW_REASON_WIDE_SWITCH ? BW_STEP_ASPECT_SWITCH : BW_STEP_ASPECT_SIZE,
               f->rule, f->as.aspect.sets_height, f->remedy.value);
  return TRUE;
}

static gboolean
cure_setup (Attempt *a, const BwFinding *f)
{
  BwBands *setup_ire = &a->state.input.setup_ire;
  setup_ire->n = 1;
  setup_ire->at[0] = (BwRange){ f->value, f->value };
  add_setting (a, BW_STEP_BLACK_LEVEL, f->rule, TRUE, f->value);
  return TRUE;
}

static gboolean
cure (Attempt *a, const BwFinding *f)
{
  switch (f->rule)
    {
    case BW_RULE_SYNC_LEVEL:
    case BW_RULE_VIDEO_LEVEL:
      return cure_level (a, f);
    case BW_RULE_SETUP:
      return cure_setup (a, f);
    case BW_RULE_VISIBLE_AREA:
      return cure_area (a, f);
    case BW_RULE_ASPECT:
      return cure_aspect (a, f);
    case BW_RULE_COUPLING:
      return f->remedy.kind == BW_REMEDY_COUPLING_CAPACITOR
             && !has_step (&a->parts, BW_STEP_CAPACITOR)
             && bw_stretch_capacitor (a->planner, &a->parts, &a->signal, a->fit.sync);
    default:
      return FALSE;
    }
}

static const BwFinding *
first_failing (const BwFit *fit)
{
  for (guint i = 0; i < BW_N_RULES; i++)
    if (fit->at[i].severity >= BW_SEVERITY_CURABLE)
      return &fit->at[i];
  return NULL;
}

/* Each pass cures one finding; there are no more passes than findings. */
static gboolean
cure_all (Attempt *a)
{
  for (guint pass = 0; pass < BW_N_RULES; pass++)
    {
      judge (&a->state, &a->fit);
      const BwFinding *f = first_failing (&a->fit);
      if (f == NULL)
        return TRUE;
      if (!cure (a, f) || !arrive (a))
        return FALSE;
    }
  return FALSE;
}

/* The rules that a part in the lead or a setting of the set may cure. */
static gboolean
is_hopeless (const BwFit *fit)
{
  const guint closable = BW_BIT (BW_RULE_SYNC_LEVEL) | BW_BIT (BW_RULE_VIDEO_LEVEL)
                         | BW_BIT (BW_RULE_SETUP) | BW_BIT (BW_RULE_TERMINATION)
                         | BW_BIT (BW_RULE_SYNC_DRIVE) | BW_BIT (BW_RULE_COUPLING)
                         | BW_BIT (BW_RULE_ASPECT) | BW_BIT (BW_RULE_VISIBLE_AREA);
  for (guint i = 0; i < BW_N_RULES; i++)
    if (fit->at[i].severity >= BW_SEVERITY_CURABLE && !(closable & BW_BIT (i)))
      return TRUE;
  return FALSE;
}

static gboolean
load_matters (const BwFit *fit)
{
  return fit->at[BW_RULE_SYNC_LEVEL].severity >= BW_SEVERITY_CURABLE
         || fit->at[BW_RULE_SYNC_DRIVE].severity >= BW_SEVERITY_CURABLE
         || fit->at[BW_RULE_VIDEO_LEVEL].severity >= BW_SEVERITY_CURABLE
         || fit->at[BW_RULE_TERMINATION].severity >= BW_SEVERITY_CURABLE;
}

/* Parts first, then the lead with them in it, then what stands at its end and what is done at the
 * set. */
static BwPlanClosing *
closing_new (const Attempt *a, const BwPlanStretch *lead)
{
  const BwPlanStretch *const order[] = { &a->parts, lead, &a->end, &a->settings };
  BwPlanSignal seen = a->signal;
  BwPlanClosing *closing = g_new (BwPlanClosing, 1);
  BwPlanStretch *all = &closing->stretch;

  bw_stretch_clear (all);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    bw_stretch_append (all, order[i]);
  for (guint i = 0; i < all->n; i++)
    all->at[i].sync = a->fit.sync;
  for (guint i = 0; i < a->parts.n; i++)
    all->at[i].after.source.connector = a->connector;
  seen.source = a->state.source;
  for (guint i = a->parts.n; i < all->n; i++)
    all->at[i].after = i < a->parts.n + lead->n ? a->signal : seen;
  closing->state = a->state;
  closing->fit = a->fit;
  return closing;
}

/* The cheaper first; one that only adds to a cheaper one becomes no plan. */
static void
take_closing (GPtrArray *closings, BwPlanClosing *closing)
{
  guint at = 0;
  for (guint i = 0; i < closings->len; i++)
    {
      const BwPlanClosing *other = closings->pdata[i];
      if (other->stretch.cost <= closing->stretch.cost)
        at = i + 1;
    }
  g_ptr_array_insert (closings, (int) at, closing);
}

/**
 * bw_planner_close:
 * @place: where the signal stands
 *
 * Returns: (transfer full) (element-type BwPlanClosing): the ways to connect it to the input so
 * that the fit is direct or tight, the cheapest first; empty if parts in the lead and settings of
 * the set are not enough
 */
GPtrArray *
bw_planner_close (const BwPlanner *planner, const BwPlanPlace *place)
{
  GPtrArray *closings = g_ptr_array_new_with_free_func (g_free);
  BwPlanStretch lead;
  Attempt start;

  start.planner = planner;
  start.connector = place->signal.source.connector;
  start.signal = place->signal;
  bw_stretch_clear (&lead);
  end_state (planner, &place->signal, &start.state);
  judge (&start.state, &start.fit);
  bw_stretch_lead (planner, &lead, &start.signal, planner->base.input.connectors,
                   &planner->base.input.pins, start.fit.sync);
  set_signal (&start.state, &start.signal);
  judge (&start.state, &start.fit);
  if (is_hopeless (&start.fit))
    return closings;

  guint n_changes = load_matters (&start.fit) ? N_LOAD_SETS : 1;
  for (guint changes = 0; changes < n_changes; changes++)
    {
      Attempt a;
      if (!can_change (planner, changes))
        continue;
      begin (&a, &start);
      change_loads (&a, changes);
      choose_end (&a);
      if (arrive (&a) && cure_all (&a))
        take_closing (closings, closing_new (&a, &lead));
    }
  return closings;
}
