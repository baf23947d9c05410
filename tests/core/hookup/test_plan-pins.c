/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Over every source of the catalogue at every input of it, and over each bench sheet: no plan has a
 * pin that is "not laid down" where a standard lays it down, "straight through" is said only where
 * the pins agree, and what lacks pins is not called direct, by Fit and Hook-up alike. Which
 * connectors have a standard or a custom is said in the tables of core/connector. */
#include "core/hookup/plan.h"

#include <string.h>

#include "core/fit/results.h"
#include "core/hookup/results.h"
#include "support.h"

static gboolean
has_no_standard (guint connector)
{
  return connector == BW_CONNECTOR_DE_9 || connector == BW_CONNECTOR_DIN_6;
}

static void
check_connection (const BwHookup *hookup, const BwHookupConnection *one)
{
  const BwHookupHop *hop = hookup->hops->pdata[one->hop];
  gboolean first = one->hop == 0, last = one->hop + 1 == hookup->hops->len;

  if (one->conductor >= BW_N_CONDUCTORS)
    return;
  if (one->from_pin == BW_PIN_NOT_LAID_DOWN)
    g_assert_true (first && has_no_standard (hop->from_connector));
  if (one->to_pin == BW_PIN_NOT_LAID_DOWN)
    g_assert_true (last && has_no_standard (hop->to_connector));
  if (strcmp (one->through, "straight through") == 0)
    {
      g_assert_cmpint (one->from_pin, ==, one->to_pin);
      g_assert_true (one->from_pin == BW_PIN_OWN_PLUG
                     || hop->from_connector == hop->to_connector);
      g_assert_cmpint (one->from_pin, >=, 0);
    }
}

/* The contacts of the plan's wiring that nobody lays down. */
static BwOpenPins
open_of (const BwHookup *hookup)
{
  BwOpenPins open = { 0 };
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      if (one->conductor >= BW_N_CONDUCTORS)
        continue;
      open.at_source |= one->from_pin == BW_PIN_NOT_LAID_DOWN ? BW_BIT (one->conductor) : 0;
      open.at_input |= one->to_pin == BW_PIN_NOT_LAID_DOWN ? BW_BIT (one->conductor) : 0;
    }
  return open;
}

static void
check_plan (const BwHookup *hookup)
{
  const BwOpenPins *said = &hookup->plan->state.source.open;
  const guint ground = BW_BIT (BW_PIN_USE_GROUND), colour = BW_BIT (BW_CONDUCTOR_C);
  BwOpenPins open = open_of (hookup);

  for (guint i = 0; i < hookup->connections->len; i++)
    check_connection (hookup, hookup->connections->pdata[i]);
  /* C and colour that a monochrome input leaves open have no connection */
  g_assert_cmphex (open.at_source & ~said->at_source, ==, 0);
  g_assert_cmphex (said->at_input & ~(open.at_input | ground | colour), ==, 0);
  if (bw_open_pins_count (said) > 0)
    g_assert_cmpint (hookup->verdict_after, !=, BW_VERDICT_DIRECT);
}

/* Fit says of a source that shows with a lead alone what Hook-up says of the lead. */
static void
check_fit (const BwSheet *sheet, guint source, guint input, const BwHookup *hookup)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  bw_case_init (&c, &figures, sheet, bw_test_catalogue (), source, input);
  bw_fit_judge (&c, &fit);
  g_autofree char *open = bw_open_pins_says (&hookup->plan->state.source.open);
  if (fit.verdict <= BW_VERDICT_TIGHT)
    {
      const BwFinding *lead = &fit.at[BW_RULE_LEAD];
      g_autofree char *fit_says
          = lead->reason == BW_REASON_OPEN_PINS ? bw_open_pins_says (&lead->as.lead.open) : NULL;
      g_assert_cmpstr (fit_says, ==, open);
      return;
    }
  g_auto (GStrv) needs = bw_plan_needs (sheet, bw_test_catalogue (), source, input, '.');
  guint n = g_strv_length (needs);
  if (open != NULL)
    g_assert_cmpstr (needs[n - 1], ==, open);
}

typedef struct
{
  guint plans;
  guint open;
} Count;

static void
check_sheet (const BwSheet *sheet, Count *count)
{
  for (guint s = 0; s < sheet->sources->len; s++)
    for (guint i = 0; i < sheet->monitor->inputs->len; i++)
      {
        g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, bw_test_catalogue (), s, i, 0, NULL);
        if (hookup->plan == NULL)
          continue;
        check_plan (hookup);
        check_fit (sheet, s, i, hookup);
        count->plans++;
        count->open += bw_open_pins_count (&hookup->plan->state.source.open) > 0;
      }
}

static void
test_catalogue (void)
{
  GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  Count count = { 0, 0 };

  for (guint m = 0; m < monitors->len; m++)
    {
      g_autoptr (BwSheet) sheet = bw_sheet_new ();
      bw_monitor_free (sheet->monitor);
      sheet->monitor = bw_monitor_copy (monitors->pdata[m]);
      for (guint s = 0; s < sources->len; s++)
        g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[s]));
      check_sheet (sheet, &count);
    }
  g_test_message ("%u plans, %u of them with open pins", count.plans, count.open);
  g_assert_cmpuint (count.plans, >, 500);
  g_assert_cmpuint (count.open, >, 20);
}

static void
test_sheets (void)
{
  g_autofree char *folder = g_build_filename (g_getenv ("BW_SOURCE_ROOT"), "tests", "sheets", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  Count count = { 0, 0 };
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
      g_autoptr (BwSheet) sheet = bw_sheet_load (path, bw_test_catalogue (), faults);
      g_assert_nonnull (sheet);
      check_sheet (sheet, &count);
    }
  g_assert_cmpuint (count.plans, >, 50);
}

/* A computer with RGB and sync on a 9-pin connector at BNC sockets: invented. */
static BwSheet *
computer_sheet (void)
{
  BwSheet *sheet = bw_test_demo ();
  BwSource *source = bw_sheet_source (sheet, 0);
  BwInput *input = bw_monitor_input (sheet->monitor, 0);

  source->signal = BW_SIGNAL_RGB;
  source->system = BW_SYSTEM_NONE;
  source->setup_ire = 0;
  source->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  source->connector = BW_CONNECTOR_DE_9;
  input->connectors = BW_BIT (BW_CONNECTOR_BNC);
  input->signals = BW_BIT (BW_SIGNAL_RGB);
  input->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  return sheet;
}

/* Without its pin-out the lead is complete but for five pins; each that is entered is one less, and the
 * wiring has them in the end. */
static void
test_entered (void)
{
  static const struct
  {
    const char *pins;
    guint open;
  } steps[] = { { "", 5 }, { "3 r; 4 g; 5 b", 2 }, { "1 ground; 3 r; 4 g; 5 b; 7 sync", 0 } };
  g_autoptr (BwSheet) sheet = computer_sheet ();

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      g_assert_true (bw_pinout_parse (steps[i].pins, &bw_sheet_source (sheet, 0)->pins, NULL));
      g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, bw_test_catalogue (), 0, 0, 0, NULL);
      g_assert_nonnull (hookup->plan);
      g_assert_cmpuint (bw_open_pins_count (&hookup->plan->state.source.open), ==, steps[i].open);
      g_autofree char *word = bw_fit_verdict_short (&hookup->fit_after);
      g_assert_true ((strstr (word, "complete but for") != NULL) == (steps[i].open > 0));
      g_autoptr (BwResult) result = bw_result_new ('.');
      bw_hookup_say (bw_result_root (result), hookup, NULL);
      const char *answer = bw_node_answer (bw_result_root (result));
      g_assert_true ((strstr (answer, "complete but for") != NULL) == (steps[i].open > 0));
      check_plan (hookup);
    }
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, bw_test_catalogue (), 0, 0, 0, NULL);
  static const int pins[] = { 3, 4, 5, 7 };
  for (guint i = 0; i < G_N_ELEMENTS (pins); i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      g_assert_cmpint (one->from_pin, ==, pins[i]);
      g_assert_cmpint (one->from_ground, ==, 1);
      g_assert_cmpint (one->to_pin, ==, BW_PIN_OWN_PLUG);
    }
}

/* A lead as bought goes pin to pin. Between two connectors without a standard it will do only where both
 * are said to have the same pins; else the lead is made to the list. */
static void
test_bought (void)
{
  static const struct
  {
    const char *source;
    const char *input;
    gboolean made;
  } cases[] = {
    { "1 ground; 3 r; 4 g; 5 b; 7 sync", "1 ground; 3 r; 4 g; 5 b; 7 sync", FALSE },
    { "1 ground; 3 r; 4 g; 5 b; 7 sync", "1 ground; 5 r; 4 g; 3 b; 7 sync", TRUE },
    { "1 ground; 3 r; 4 g; 5 b; 7 sync", "", TRUE },
    { "", "", TRUE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = computer_sheet ();
      BwInput *input = bw_monitor_input (sheet->monitor, 0);
      gboolean made = FALSE;
      guint leads = 0;

      input->connectors = BW_BIT (BW_CONNECTOR_DE_9);
      g_assert_true (bw_pinout_parse (cases[i].source, &bw_sheet_source (sheet, 0)->pins, NULL));
      g_assert_true (bw_pinout_parse (cases[i].input, &input->pins, NULL));
      g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, bw_test_catalogue (), 0, 0, 0, NULL);
      g_assert_nonnull (hookup->plan);
      for (guint k = 0; k < hookup->plan->n; k++)
        if (hookup->plan->at[k].kind == BW_STEP_LEAD)
          {
            leads++;
            made = hookup->plan->at[k].adaptor->gives_connectors != 0;
          }
      g_assert_cmpuint (leads, ==, 1);
      g_assert_cmpint (made, ==, cases[i].made);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/plan-pins/catalogue", test_catalogue);
  g_test_add_func ("/plan-pins/sheets", test_sheets);
  g_test_add_func ("/plan-pins/entered", test_entered);
  g_test_add_func ("/plan-pins/bought", test_bought);
  return g_test_run ();
}
