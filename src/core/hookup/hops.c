/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/levels/conductor.h"
#include "wiring.h"

/* The leads of a plan, pin by pin. */

/* Supplies for switching pins: one that reaches both levels of the peritelevision connector, and the
 * one of logic, which wastes less where it does. */
#define SELECT_SUPPLY_V 12.0
#define SELECT_LOW_SUPPLY_V 5.0

/* One lead while it is put together: from the steps before it to the lead itself. */
typedef struct
{
  BwHookup *hookup;
  guint hop;
  gboolean last;
  guint signal; /* as the device says */
  BwWiringEnd from;
  BwWiringEnd to;
  const BwPlug *from_plug; /* borrowed, of the hop; likewise the other */
  const BwPlug *to_plug;
  BwWiringParts parts;
  guint joined; /* set of BwConductor; the others stay open */
  BwNetwork pad; /* with BwNetwork.n zero: none */
  guint pad_in; /* set of BwConductor */
} Lead;

static char *
figure (double value, BwDimension dimension)
{
  return bw_quantity_format (value, dimension, 3, bw_quantity_locale_mark ());
}

static void
put_in (Lead *lead, const BwPlanStep *step, const BwPlanSignal *before)
{
  guint set = bw_plan_step_conductors (step, before);
  for (guint i = 0; i < BW_N_CONDUCTORS; i++)
    {
      if (!(set & BW_BIT (i)))
        continue;
      if (step->kind == BW_STEP_SERIES_RESISTOR)
        lead->parts.series_ohm[i] += step->network.at[0].ohm;
      else if (step->kind == BW_STEP_CAPACITOR)
        lead->parts.coupling_f[i] = bw_plan_capacitor_f (step);
    }
  if (step->kind == BW_STEP_VIDEO_PAD || step->kind == BW_STEP_MINIMUM_LOSS)
    {
      lead->pad = step->network;
      lead->pad_in = set;
    }
}

/* The attenuator in a conductor; NULL: none. */
static const BwNetwork *
pad_in (const Lead *lead, BwConductor conductor)
{
  return lead->pad.n > 0 && (lead->pad_in & BW_BIT (conductor)) ? &lead->pad : NULL;
}

static void
add_elements (BwHookupConnection *shown, const BwNetwork *network)
{
  for (guint i = 0; i < network->n && shown->n < BW_NETWORK_MAX; i++)
    shown->at[shown->n++] = network->at[i];
}

/* The same as bw_wire_through(), in figures. */
static void
fill_figures (const Lead *lead, const BwConnection *one, BwHookupConnection *shown)
{
  const BwNetwork series = { .n = one->series_ohm > 0,
                             .at = { { BW_PLACE_SERIES, one->series_ohm } } };
  const BwNetwork *pad = pad_in (lead, one->conductor);
  shown->conductor = one->conductor;
  shown->select = BW_N_SELECTS;
  shown->from_pin = one->from_pin;
  shown->from_ground = one->from_ground;
  shown->to_pin = one->to_pin;
  shown->to_ground = one->to_ground;
  shown->coupling_f = one->coupling_f;
  if (pad != NULL)
    add_elements (shown, pad);
  add_elements (shown, &series);
}

static void
add_connection (const Lead *lead, const BwWiring *wiring, const BwConnection *one)
{
  const BwPlug *from = lead->from_plug, *to = lead->to_plug;
  BwHookupConnection *shown = g_new0 (BwHookupConnection, 1);
  shown->hop = lead->hop;
  fill_figures (lead, one, shown);
  shown->signal = g_strdup (bw_kind_label (&bw_conductors, one->conductor));
  shown->from = bw_plug_pin_name (from, one->from_pin, one->conductor);
  shown->from_return = bw_wire_return (from->connector, one->from_ground);
  shown->to = bw_plug_pin_name (to, one->to_pin, one->conductor);
  shown->to_return = bw_wire_return (to->connector, one->to_ground);
  shown->through
      = bw_wire_through (wiring, one, pad_in (lead, one->conductor), bw_quantity_locale_mark ());
  g_ptr_array_add (lead->hookup->connections, shown);
}

/* Over what the set's pin may be. */
static void
select_powers (const BwSelection *selection, double power_w[BW_NETWORK_MAX])
{
  double open_w[BW_NETWORK_MAX] = { 0 };
  BwNetwork open = selection->choice.network;
  bw_network_powers (&open, BW_SUPPLY_TOLERANCE, power_w);
  if (selection->load_fixed)
    return;
  open.load_ohm = INFINITY;
  bw_network_powers (&open, BW_SUPPLY_TOLERANCE, open_w);
  for (guint i = 0; i < open.n; i++)
    power_w[i] = MAX (power_w[i], open_w[i]);
}

/* "470 Ω of 1/4 W in series", "680 Ω of 1/4 W in series, 330 Ω of 1/8 W to the return" */
static char *
select_words (const BwSelection *selection, const double power_w[BW_NETWORK_MAX])
{
  const BwNetwork *network = &selection->choice.network;
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < network->n; i++)
    {
      g_autofree char *ohm = figure (network->at[i].ohm, BW_DIMENSION_RESISTANCE);
      g_autofree char *rating = bw_rating_words (bw_resistor_rating_w (power_w[i]));
      g_string_append (text, i > 0 ? ", " : "");
      g_string_append_printf (text, _ ("%1$s of %2$s"), ohm, rating);
      g_string_append_printf (text, " %s", network->at[i].place == BW_PLACE_SERIES
                                               ? _ ("in series")
                                               : _ ("to the return"));
    }
  return g_strdup (text->len > 0 ? text->str : _ ("straight through"));
}

static void
add_selection (const Lead *lead, const BwSelection *selection)
{
  const BwNetwork *network = &selection->choice.network;
  const char *what = bw_kind_label (&bw_selects, selection->select);
  BwHookupConnection *shown = g_new0 (BwHookupConnection, 1);
  g_autofree char *supply = figure (network->open_v, BW_DIMENSION_VOLTAGE);
  double power_w[BW_NETWORK_MAX] = { 0 };

  select_powers (selection, power_w);
  shown->hop = lead->hop;
  shown->conductor = BW_N_CONDUCTORS;
  shown->select = selection->select;
  shown->to_pin = selection->pin;
  shown->to_ground = selection->ground;
  shown->supply_v = network->open_v;
  add_elements (shown, network);
  shown->signal = g_strdup_printf (_ ("selection: %s"), what);
  shown->from = g_strdup_printf (_ ("supply of %s"), supply);
  shown->from_return = g_strdup (_ ("its ground"));
  shown->to = g_strdup_printf (_ ("pin %d"), selection->pin);
  shown->to_return = bw_wire_return (lead->to.connector, selection->ground);
  shown->through = select_words (selection, power_w);
  g_ptr_array_add (lead->hookup->connections, shown);
  for (guint i = 0; i < network->n; i++)
    {
      g_autofree char *part = g_strdup_printf (_ ("resistor at the pin that selects: %s"), what);
      bw_hookup_add_resistor (lead->hookup, part, 0, network->at[i].ohm, power_w[i], 1, "");
    }
}

/* What @selection takes from its supply at most. */
static double
select_current_a (const BwSelection *selection)
{
  const BwNetwork *network = &selection->choice.network;
  double ohm = network->load_ohm;
  for (guint i = network->n; i-- > 0;)
    ohm = network->at[i].place == BW_PLACE_SERIES ? ohm + network->at[i].ohm
                                                  : 1 / (1 / ohm + 1 / network->at[i].ohm);
  return network->open_v * (1 + BW_SUPPLY_TOLERANCE) / ohm;
}

/* A supply is bought like a part, and the step of the lead says so. Milliamperes are rounded up. */
static void
add_supply (const Lead *lead, const BwWiring *wiring, double supply_v)
{
  double current_a = 0;
  BwHookupStep *step = NULL;
  for (guint i = 0; i < wiring->selections->len; i++)
    {
      const BwSelection *one = &g_array_index (wiring->selections, BwSelection, i);
      if (fabs (one->choice.network.open_v - supply_v) < 1e-9)
        current_a += select_current_a (one);
    }
  if (!(current_a > 0))
    return;
  g_autofree char *volts = figure (supply_v, BW_DIMENSION_VOLTAGE);
  g_autofree char *amperes = figure (ceil (current_a * 1e3) * 1e-3, BW_DIMENSION_CURRENT);
  g_autofree char *part = g_strdup_printf (_ ("supply, %1$s d.c., %2$s or more, for the pins that "
                                              "select"),
                                           volts, amperes);
  bw_hookup_add_part (lead->hookup, part, 0, 0, 1, "");
  for (guint i = 0; i < lead->hookup->steps->len; i++)
    if (((BwHookupStep *) lead->hookup->steps->pdata[i])->kind == BW_STEP_LEAD)
      step = lead->hookup->steps->pdata[i];
  g_return_if_fail (step != NULL);
  g_autofree char *purpose = g_steal_pointer (&step->purpose);
  step->purpose = g_strdup_printf (_ ("%1$s; needs a %2$s supply, %3$s"), purpose, volts, amperes);
}

/* Sound is beside the plan: said once, where a pin of it stays open. */
static void
warn_of_sound (const Lead *lead, const BwRest *rest)
{
  const BwPin *pin = bw_plug_pin (rest->at_input ? lead->to_plug : lead->from_plug, rest->pin);
  if (rest->kind == BW_REST_OPEN && pin != NULL && pin->role == BW_PIN_AUDIO)
    bw_hookup_add_warning (lead->hookup, _ ("This plan carries no sound."));
}

static void
add_rest (const Lead *lead, const BwRest *rest)
{
  BwHookupRest *shown = g_new0 (BwHookupRest, 1);
  shown->hop = lead->hop;
  shown->at_far_end = rest->at_input;
  shown->number = rest->pin;
  shown->kind = rest->kind;
  shown->pin = g_strdup_printf (_ ("pin %d"), rest->pin);
  shown->state = g_strdup (bw_kind_label (&bw_rests, rest->kind));
  g_ptr_array_add (lead->hookup->rests, shown);
  warn_of_sound (lead, rest);
}

/* What is not joined: colour on the way to an input for luminance. */
static void
add_open (const Lead *lead, const BwConnection *one)
{
  BwHookupRest *shown = g_new0 (BwHookupRest, 1);
  shown->hop = lead->hop;
  shown->number = one->from_pin;
  shown->kind = BW_REST_OPEN;
  shown->pin = bw_plug_pin_name (lead->from_plug, one->from_pin, one->conductor);
  shown->state = g_strdup (bw_kind_label (&bw_rests, BW_REST_OPEN));
  g_ptr_array_add (lead->hookup->rests, shown);
}

static void
add_conductor (const Lead *lead, const BwWiring *wiring, const BwConnection *one)
{
  if (lead->joined & BW_BIT (one->conductor))
    add_connection (lead, wiring, one);
  else
    add_open (lead, one);
}

static void
add_wiring (const Lead *lead, const BwWiring *wiring)
{
  for (guint i = 0; i < wiring->connections->len; i++)
    add_conductor (lead, wiring, &g_array_index (wiring->connections, BwConnection, i));
  for (guint i = 0; i < wiring->selections->len; i++)
    add_selection (lead, &g_array_index (wiring->selections, BwSelection, i));
  add_supply (lead, wiring, SELECT_SUPPLY_V);
  add_supply (lead, wiring, SELECT_LOW_SUPPLY_V);
  for (guint i = 0; i < wiring->rests->len; i++)
    add_rest (lead, &g_array_index (wiring->rests, BwRest, i));
  for (guint i = 0; i < wiring->warnings->len; i++)
    bw_hookup_add_warning (lead->hookup, wiring->warnings->pdata[i]);
}

/* Where no pins can be given, the conductors are named and the reason is a warning. */
static void
add_by_name (const Lead *lead, const GError *error)
{
  guint set = bw_signal_conductors (lead->from.signal, lead->from.sync);
  bw_hookup_add_warning (lead->hookup, error->message);
  for (BwConductor i = 0; i < BW_N_CONDUCTORS; i++)
    {
      BwConnection one = { .conductor = i, .from_pin = BW_PIN_NOT_LAID_DOWN,
                           .from_ground = BW_PIN_NOT_LAID_DOWN, .to_pin = BW_PIN_NOT_LAID_DOWN,
                           .to_ground = BW_PIN_NOT_LAID_DOWN,
                           .series_ohm = lead->parts.series_ohm[i],
                           .coupling_f = lead->parts.coupling_f[i] };
      if (set & BW_BIT (i))
        add_conductor (lead, NULL, &one);
    }
}

/* Whether the set can show a wide picture as such, and gets one. A size control does not tell the
 * tube's own shape: in the end state it has that of the source, times what the step says. */
static gboolean
is_wide (const BwPlan *plan)
{
  double source = bw_ratio_to_double (plan->state.source.aspect);
  double tube = bw_ratio_to_double (plan->state.monitor.aspect);
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == BW_STEP_ASPECT_SIZE)
      tube *= plan->at[i].on ? plan->at[i].value : 1 / plan->at[i].value;
  return source > 4 / 3.0 + 1e-9 && (plan->state.monitor.wide_switch || tube > 4 / 3.0 + 1e-9);
}

/* Only a set needs to be told what to show, and a lead with the same 21 pins at both ends tells
 * it what the source says. */
static void
wire (Lead *lead)
{
  g_autoptr (GError) error = NULL;
  if (lead->last)
    {
      lead->parts.supply_v = SELECT_SUPPLY_V;
      lead->parts.low_supply_v = SELECT_LOW_SUPPLY_V;
      lead->parts.wide = is_wide (lead->hookup->plan);
      lead->parts.supply_tolerance = BW_SUPPLY_TOLERANCE;
      lead->parts.preferred = lead->hookup->choice.series;
    }
  g_autoptr (BwWiring) wiring = bw_wiring_new (&lead->from, &lead->to, &lead->parts, &error);
  if (wiring != NULL)
    add_wiring (lead, wiring);
  else
    add_by_name (lead, error);
}

static void
add_hop (Lead *lead, const char *from_name, const char *to_name)
{
  BwHookupHop *hop = g_new0 (BwHookupHop, 1);
  hop->from = g_strdup (from_name);
  hop->to = g_strdup (to_name);
  hop->from_connector = lead->from.connector;
  hop->to_connector = lead->to.connector;
  bw_plug_init (&hop->from_plug, lead->from.connector, lead->from.edition, &lead->from.pins);
  bw_plug_init (&hop->to_plug, lead->to.connector, lead->to.edition, &lead->to.pins);
  lead->from_plug = &hop->from_plug;
  lead->to_plug = &hop->to_plug;
  hop->signal = lead->signal;
  hop->sync = lead->from.sync;
  lead->hop = lead->hookup->hops->len;
  g_ptr_array_add (lead->hookup->hops, hop);
  wire (lead);
}

static guint
joined_conductors (const Lead *lead)
{
  guint all = bw_signal_conductors (lead->from.signal, lead->from.sync);
  return lead->last ? bw_hookup_joined (&lead->hookup->plan->state.input, lead->signal, all) : all;
}

static void
terminate (BwHookup *hookup, const BwPlanStep *step, const BwPlanSignal *before)
{
  guint set = bw_plan_step_conductors (step, before);
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      BwHookupConnection *one = hookup->connections->pdata[i];
      if (one->hop + 1 == hookup->hops->len && one->conductor < BW_N_CONDUCTORS
          && (set & BW_BIT (one->conductor)))
        one->terminator_ohm = step->value;
    }
}

static gboolean
stands_at_end (guint kind)
{
  return kind == BW_STEP_END_SERIES || kind == BW_STEP_END_SHUNT
         || kind == BW_STEP_END_MINIMUM_LOSS;
}

/* What stands between the end of the last lead and the input. */
static void
put_at_end (BwHookup *hookup, const BwPlanStep *step, const BwPlanSignal *before)
{
  guint set = bw_plan_step_conductors (step, before);
  g_autofree char *words = bw_wire_end_words (&step->network, bw_quantity_locale_mark ());
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      BwHookupConnection *one = hookup->connections->pdata[i];
      if (one->hop + 1 != hookup->hops->len || one->conductor >= BW_N_CONDUCTORS
          || !(set & BW_BIT (one->conductor)))
        continue;
      g_autofree char *through = one->through;
      gboolean bare = one->n == 0 && !(one->coupling_f > 0);
      add_elements (one, &step->network);
      one->n_at_end = step->network.n;
      one->through = bare ? g_strdup (words) : g_strdup_printf ("%s, %s", through, words);
    }
}

/* The name of the box that follows step @i, or of the input. */
static const char *
next_name (const BwHookup *hookup, guint i)
{
  for (; i < hookup->plan->n; i++)
    if (hookup->plan->at[i].kind == BW_STEP_BOX)
      return hookup->plan->at[i].adaptor->name;
  return hookup->input;
}

/* The signal in the lead: composite video without a subcarrier is luminance with its sync. */
static guint
wired_signal (const BwSource *source)
{
  return source->signal == BW_SIGNAL_COMPOSITE && source->system == BW_SYSTEM_NONE ? BW_SIGNAL_LUMA
                                                                                   : source->signal;
}

/**
 * bw_hookup_add_hops:
 * @start: what the source gives
 *
 * Lists each lead of the plan with its connections, what is left open or tied, and what to mind.
 */
void
bw_hookup_add_hops (BwHookup *hookup, const BwPlanSignal *start)
{
  guint edition = hookup->choice.edition;
  const BwPlanSignal *before = start;
  const BwPlanSignal *at_device = start;
  const char *device = hookup->source;
  Lead lead = { .hookup = hookup };

  for (guint i = 0; i < hookup->plan->n; i++)
    {
      const BwPlanStep *step = &hookup->plan->at[i];
      if (step->kind == BW_STEP_LEAD)
        {
          const BwSource *source = &at_device->source;
          const char *to = next_name (hookup, i);
          lead.last = to == hookup->input;
          lead.signal = source->signal;
          lead.from = (BwWiringEnd){ source->connector, wired_signal (source), step->sync, edition,
                                     source->pins };
          lead.to = (BwWiringEnd){ step->after.source.connector, wired_signal (source), step->sync,
                                   edition, { { 0 } } };
          if (lead.last)
            lead.to.pins = hookup->plan->state.input.pins;
          lead.joined = joined_conductors (&lead);
          add_hop (&lead, device, to);
          lead = (Lead){ .hookup = hookup };
        }
      else if (step->kind == BW_STEP_BOX)
        {
          at_device = &step->after;
          device = step->adaptor->name;
        }
      else if (step->kind == BW_STEP_TERMINATOR || step->kind == BW_STEP_SYNC_TERMINATOR)
        terminate (hookup, step, before);
      else if (stands_at_end (step->kind))
        put_at_end (hookup, step, before);
      else if (!bw_plan_step_is_setting (step))
        put_in (&lead, step, before);
      before = &step->after;
    }
}
