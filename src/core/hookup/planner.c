/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

#include <glib/gi18n-lib.h>

/* The search: uniform cost, so that the first plan found is the least one. */

static const BwKind steps[BW_N_STEPS] = {
  [BW_STEP_LEAD] = { "lead", N_ ("lead") },
  [BW_STEP_SERIES_RESISTOR] = { "series-resistor", N_ ("series resistor in the sync conductor") },
  [BW_STEP_VIDEO_PAD] = { "video-pad", N_ ("matched 75 Ω attenuator") },
  [BW_STEP_MINIMUM_LOSS] = { "minimum-loss-pad", N_ ("minimum-loss pad at the source") },
  [BW_STEP_CAPACITOR] = { "coupling-capacitor", N_ ("coupling capacitor in the lead") },
  [BW_STEP_BOX] = { "box", N_ ("box") },
  [BW_STEP_TERMINATOR] = { "terminator", N_ ("75 Ω terminator") },
  [BW_STEP_SYNC_TERMINATOR] = { "sync-terminator", N_ ("75 Ω terminator at the sync input") },
  [BW_STEP_END_SERIES]
  = { "matching-resistor", N_ ("resistor in series at the input's end of the lead") },
  [BW_STEP_END_SHUNT] = { "shunt-resistor", N_ ("resistor across the input") },
  [BW_STEP_END_MINIMUM_LOSS]
  = { "minimum-loss-pad-at-input", N_ ("minimum-loss pad at the input's end of the lead") },
  [BW_STEP_SWITCH] = { "termination-switch", N_ ("termination switch") },
  [BW_STEP_SYNC_SWITCH] = { "sync-termination-switch", N_ ("termination switch of sync") },
  [BW_STEP_UNLOAD_LOOP] = { "unload-loop", N_ ("take the 75 Ω load off the loop-through") },
  [BW_STEP_ASPECT_SWITCH] = { "aspect-switch", N_ ("aspect switch of the set") },
  [BW_STEP_ASPECT_SIZE] = { "aspect-size", N_ ("size control of the set") },
  [BW_STEP_UNDERSCAN] = { "underscan", N_ ("underscan, or width and height controls") },
  [BW_STEP_MAINS] = { "mains", N_ ("supply of the set") },
  [BW_STEP_BLACK_LEVEL] = { "black-level", N_ ("set the black level (setup or brightness)") },
};
const BwKindTable bw_plan_steps = { BW_N_STEPS, steps };

/* A place that was reached, and by which box from where. */
typedef struct
{
  BwPlanPlace place;
  guint parent; /* G_MAXUINT: the source */
  guint box;
  guint depth;
  guint cost;
  double money;
} Node;

/* What waits in the queue: a place to go on from, or with a closing a finished plan. */
typedef struct
{
  guint node;
  BwPlanClosing *closing; /* owned; NULL: not finished */
  guint cost;
  double money;
  guint depth;
  guint order;
} Entry;

typedef struct
{
  BwPlanner *planner;
  GPtrArray *nodes;    /* owned Node */
  GSequence *queue;    /* owned Entry */
  GHashTable *visits;  /* owned: from bw_plan_visits_new() */
  GArray *held;        /* guint: nodes at places seen before; they wait for the first plan */
  GPtrArray *plans;    /* owned BwPlan */
  guint n_wanted;
  guint n_entries;
  guint from;          /* while branches are made: */
  BwPlanPlace arrives;
  guint box;
  guint stretch_cost;
  double stretch_money;
} Search;

/* Of the same cost: places first, so that all plans of that cost are there before one is taken;
 * then the cheaper in money, the better verdict, the shorter chain, the order of the catalogue. */
static int
compare_entries (gconstpointer a, gconstpointer b, gpointer user_data G_GNUC_UNUSED)
{
  const Entry *x = a, *y = b;
  if (x->cost != y->cost)
    return x->cost < y->cost ? -1 : 1;
  if ((x->closing == NULL) != (y->closing == NULL))
    return x->closing == NULL ? -1 : 1;
  if (x->money < y->money || x->money > y->money)
    return x->money < y->money ? -1 : 1;
  if (x->closing != NULL && x->closing->fit.verdict != y->closing->fit.verdict)
    return x->closing->fit.verdict < y->closing->fit.verdict ? -1 : 1;
  if (x->depth != y->depth)
    return x->depth < y->depth ? -1 : 1;
  return x->order < y->order ? -1 : 1;
}

static void
free_entry (gpointer data)
{
  Entry *entry = data;
  g_free (entry->closing);
  g_free (entry);
}

static void
push (Search *search, guint node, BwPlanClosing *closing)
{
  const Node *at = search->nodes->pdata[node];
  Entry *entry = g_new0 (Entry, 1);
  *entry = (Entry){
    .node = node,
    .closing = closing,
    .cost = at->cost + (closing != NULL ? closing->stretch.cost : 0),
    .money = at->money + (closing != NULL ? closing->stretch.money : 0),
    .depth = at->depth,
    .order = search->n_entries++,
  };
  g_sequence_insert_sorted (search->queue, entry, compare_entries, NULL);
}

static BwPlanProgress
progress_of (const Search *search)
{
  return (BwPlanProgress){ search->n_wanted, search->plans->len };
}

static void
take_branch (const BwPlanPlace *after, gpointer user_data)
{
  Search *search = user_data;
  const Node *from = search->nodes->pdata[search->from];
  const BwAdaptor *box
      = g_array_index (search->planner->boxes, BwPlanBox, search->box).adaptor;
  guint depth = from->depth + 1;
  int needed = bw_planner_boxes_needed (search->planner, after);
  const BwPlanProgress progress = progress_of (search);
  BwPlanWhen when = bw_plan_foresee (search->visits, after, depth, &progress);

  if (needed < 0 || depth + (guint) needed > BW_PLAN_MAX_BOXES || when == BW_PLAN_NEVER)
    return;
  Node *node = g_new0 (Node, 1);
  *node = (Node){
    .place = *after,
    .parent = search->from,
    .box = search->box,
    .depth = depth,
    .cost = from->cost + search->stretch_cost + bw_box_cost (&search->arrives, after, box),
    .money = from->money + search->stretch_money + bw_box_money (box),
  };
  g_ptr_array_add (search->nodes, node);
  guint index = search->nodes->len - 1;
  if (when == BW_PLAN_LATER)
    g_array_append_val (search->held, index);
  else
    push (search, index, NULL);
}

static void
expand (Search *search, guint index)
{
  const Node *from = search->nodes->pdata[index];

  if (from->depth >= BW_PLAN_MAX_BOXES)
    return;
  search->from = index;
  for (guint i = 0; i < search->planner->boxes->len; i++)
    {
      const BwPlanBox *box = &g_array_index (search->planner->boxes, BwPlanBox, i);
      BwPlanStretch stretch;
      if (!bw_box_approach (search->planner, &from->place, box->adaptor, &stretch,
                            &search->arrives))
        continue;
      search->box = i;
      search->stretch_cost = stretch.cost;
      search->stretch_money = stretch.money;
      bw_box_branches (search->planner, &search->arrives, box, take_branch, search);
    }
}

static void
add_steps (BwPlan *plan, const BwPlanStretch *stretch)
{
  for (guint i = 0; i < stretch->n && plan->n < BW_PLAN_MAX_STEPS; i++)
    plan->at[plan->n++] = stretch->at[i];
}

/* The steps to @index, made anew from the places before it. */
static void
add_way (const Search *search, guint index, BwPlan *plan)
{
  const Node *node = search->nodes->pdata[index];
  if (node->parent == G_MAXUINT)
    return;
  add_way (search, node->parent, plan);
  const Node *from = search->nodes->pdata[node->parent];
  const BwAdaptor *box = g_array_index (search->planner->boxes, BwPlanBox, node->box).adaptor;
  BwPlanStretch stretch;
  BwPlanPlace arrives;

  bw_stretch_clear (&stretch);
  bw_box_approach (search->planner, &from->place, box, &stretch, &arrives);
  guint sync = stretch.at[stretch.n - 1].sync;
  BwPlanStep step = { .kind = BW_STEP_BOX, .adaptor = box, .rule = BW_N_RULES, .sync = sync,
                      .after = node->place.signal };
  bw_stretch_add (&stretch, &step, 0);
  add_steps (plan, &stretch);
  plan->n_boxes++;
}

static gboolean
has_step (const BwPlan *plan, const BwPlanStep *step)
{
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == step->kind
        && (step->kind != BW_STEP_BOX || plan->at[i].adaptor == step->adaptor))
      return TRUE;
  return FALSE;
}

/* Whether @plan has every box and every setting of @other: then it only adds to it. */
static gboolean
only_adds_to (const BwPlan *plan, const BwPlan *other)
{
  for (guint i = 0; i < other->n; i++)
    if (!has_step (plan, &other->at[i]))
      return FALSE;
  return TRUE;
}

static gboolean
way_has_box (const Search *search, const Node *node, const BwAdaptor *box)
{
  for (; node->parent != G_MAXUINT; node = search->nodes->pdata[node->parent])
    if (g_array_index (search->planner->boxes, BwPlanBox, node->box).adaptor == box)
      return TRUE;
  return FALSE;
}

/* Whether the set does not show all of the picture that it could: colour that it does not decode, or of RGB
 * the green alone. Boxes may then be worth their while where a lead does. */
static gboolean
is_makeshift (const BwPlan *plan)
{
  return plan->fit.at[BW_RULE_COLOUR_SYSTEM].reason == BW_REASON_COLOUR_LOST
         || plan->fit.at[BW_RULE_SIGNAL_KIND].reason == BW_REASON_GREEN_ALONE;
}

/* Whether the way to @node has every box of @plan, or gives up colour that @plan keeps: nothing
 * that begins so is an alternative to it. */
static gboolean
is_no_alternative (const Search *search, const Node *node, const BwPlan *plan)
{
  gboolean plan_in_colour = !plan->at[plan->n - 1].after.monochrome;
  if (node->place.signal.monochrome && plan_in_colour)
    return TRUE;
  if (is_makeshift (plan))
    return FALSE;
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == BW_STEP_BOX && !way_has_box (search, node, plan->at[i].adaptor))
      return FALSE;
  return TRUE;
}

static gboolean
is_alternative (const Search *search, const Node *node)
{
  for (guint i = 0; i < search->plans->len; i++)
    if (is_no_alternative (search, node, search->plans->pdata[i]))
      return FALSE;
  return TRUE;
}

static void
finish (Search *search, const Entry *entry)
{
  const BwPlanClosing *closing = entry->closing;
  BwPlan *plan = g_new0 (BwPlan, 1);

  add_way (search, entry->node, plan);
  add_steps (plan, &closing->stretch);
  plan->cost = entry->cost;
  plan->money = entry->money;
  plan->state = closing->state;
  plan->fit = closing->fit;
  for (guint i = 0; i < search->plans->len; i++)
    if (only_adds_to (plan, search->plans->pdata[i])
        && (is_makeshift (plan) || !is_makeshift (search->plans->pdata[i])))
      {
        g_free (plan);
        return;
      }
  g_ptr_array_add (search->plans, plan);
  for (guint i = 0; i < search->held->len; i++)
    push (search, g_array_index (search->held, guint, i), NULL);
  g_array_set_size (search->held, 0);
}

static void
go_on (Search *search, guint index)
{
  const Node *node = search->nodes->pdata[index];
  if (!is_alternative (search, node))
    return;
  BwPlanVisit *visited = NULL;
  const BwPlanProgress progress = progress_of (search);
  BwPlanWhen when = bw_plan_visit (search->visits, &node->place, node->depth, &progress, &visited);
  if (when == BW_PLAN_LATER)
    g_array_append_val (search->held, index);
  if (when != BW_PLAN_NOW)
    return;
  search->planner->n_states++;
  if (bw_planner_boxes_needed (search->planner, &node->place) == 0)
    {
      g_autoptr (GPtrArray) closings = bw_planner_close (search->planner, &node->place);
      visited->closes = closings->len > 0;
      for (guint i = 0; i < closings->len; i++)
        push (search, index, g_steal_pointer (&closings->pdata[i]));
    }
  /* Even where that closes, a box may be cheaper than the parts it needed. */
  expand (search, index);
}

static void
start (Search *search)
{
  Node *node = g_new0 (Node, 1);
  node->place = search->planner->start;
  node->parent = G_MAXUINT;
  g_ptr_array_add (search->nodes, node);
  if (bw_planner_boxes_needed (search->planner, &node->place) >= 0)
    push (search, 0, NULL);
}

/**
 * bw_planner_find:
 * @n_wanted: how many plans at most, at least one
 *
 * Searches chains of up to %BW_PLAN_MAX_BOXES boxes with the parts, leads and settings that they
 * need. The order of plans is that of their cost, then of their price, their verdict and the
 * catalogue. A plan that holds everything of a better one is left out.
 *
 * Returns: (transfer full) (element-type BwPlan): the plans, the least first; empty if there are
 * none
 */
GPtrArray *
bw_planner_find (BwPlanner *planner, guint n_wanted)
{
  Search search = {
    .planner = planner,
    .nodes = g_ptr_array_new_with_free_func (g_free),
    .queue = g_sequence_new (free_entry),
    .visits = bw_plan_visits_new (),
    .held = g_array_new (FALSE, FALSE, sizeof (guint)),
    .plans = g_ptr_array_new_with_free_func (g_free),
    .n_wanted = MAX (n_wanted, 1),
  };

  planner->n_states = 0;
  start (&search);
  while (search.plans->len < search.n_wanted && !g_sequence_is_empty (search.queue))
    {
      GSequenceIter *first = g_sequence_get_begin_iter (search.queue);
      const Entry *entry = g_sequence_get (first);
      if (entry->closing != NULL)
        finish (&search, entry);
      else
        go_on (&search, entry->node);
      g_sequence_remove (first);
    }
  g_hash_table_unref (search.visits);
  g_sequence_free (search.queue);
  g_array_unref (search.held);
  g_ptr_array_unref (search.nodes);
  return search.plans;
}

/**
 * bw_planner_states:
 *
 * Returns: how many places the last search has gone on from
 */
guint
bw_planner_states (const BwPlanner *planner)
{
  return planner->n_states;
}
