/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/hookup/plan-private.h"
#include "core/hookup/results.h"

#include <math.h>
#include <string.h>

#include "support.h"

static BwHookup *
hookup_of (const BwSheet *sheet, guint source, guint input, guint alternative)
{
  g_autoptr (GError) error = NULL;
  BwHookup *hookup
      = bw_hookup_new (sheet, bw_test_catalogue (), source, input, alternative, &error);
  g_assert_no_error (error);
  return hookup;
}

static gboolean
is_text (const char *text)
{
  return text != NULL && *text != '\0' && g_utf8_validate (text, -1, NULL);
}

static void
check_connections (const BwHookup *hookup)
{
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      g_assert_cmpuint (one->hop, <, hookup->hops->len);
      g_assert_true (is_text (one->signal) && is_text (one->from) && is_text (one->to)
                     && is_text (one->from_return) && is_text (one->to_return)
                     && is_text (one->through));
      g_autofree char *says = bw_hookup_connection_says (one);
      bw_test_assert_words (says, WORDS (one->signal, one->from, one->to, one->from_return,
                                         one->to_return, one->through));
    }
}

/* Every lead has a connection for each conductor of its signal: three for RGB, and so on. */
static void
check_hops (const BwHookup *hookup)
{
  static const guint least[BW_N_SIGNALS] = { 3, 3, 2, 1, 1 };
  for (guint hop = 0; hop < hookup->hops->len; hop++)
    {
      const BwHookupHop *lead = hookup->hops->pdata[hop];
      guint n = 0;
      for (guint i = 0; i < hookup->connections->len; i++)
        n += ((BwHookupConnection *) hookup->connections->pdata[i])->hop == hop;
      g_assert_cmpuint (n, >=, least[lead->signal]);
      if (hop > 0)
        g_assert_cmpstr (lead->from, ==, ((BwHookupHop *) hookup->hops->pdata[hop - 1])->to);
    }
  g_assert_cmpstr (((BwHookupHop *) hookup->hops->pdata[0])->from, ==, hookup->source);
  g_assert_cmpstr (((BwHookupHop *) hookup->hops->pdata[hookup->hops->len - 1])->to, ==,
                   hookup->input);
}

static void
check_figures (const BwHookup *hookup)
{
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      g_assert_true (is_text (part->what));
      g_assert_cmpuint (part->count, >, 0);
      g_assert_true ((part->series < BW_N_SERIES) == (part->value_ohm > 0));
      g_assert_true ((part->rating_w > 0) == (part->value_ohm > 0));
      g_assert_true (part->rating_w >= 1.5 * part->power_w);
      if (part->value_ohm > 0) /* a preferred value is its own nearest */
        g_assert_true (bw_near (bw_preferred_value (part->value_ohm, part->series), part->value_ohm,
                                1e-9 * part->value_ohm));
    }
  g_assert_cmpuint (hookup->levels->len, >, 0);
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      g_assert_true (isfinite (level->nominal_v) && level->nominal_v > 0);
      g_assert_cmpfloat (level->min_v, <=, level->nominal_v * (1 + 1e-12));
      g_assert_cmpfloat (level->max_v, >=, level->nominal_v * (1 - 1e-12));
    }
}

static void
check_hookup (const BwHookup *hookup, guint *plans)
{
  if (hookup->plan == NULL)
    {
      g_assert_cmpint (hookup->verdict_after, ==, BW_VERDICT_NO);
      g_assert_cmpuint (hookup->needs->len, >=, 2);
      g_assert_cmpuint (hookup->connections->len + hookup->parts->len, ==, 0);
      return;
    }
  BwCase c;
  BwFit fit;
  bw_plan_state_case (&hookup->plan->state, &c);
  bw_fit_judge (&c, &fit);
  g_assert_cmpint (fit.verdict, ==, hookup->verdict_after);
  g_assert_cmpint (hookup->verdict_after, <=, BW_VERDICT_TIGHT);
  g_assert_cmpuint (hookup->needs->len, ==, 0);
  g_assert_cmpuint (hookup->steps->len, ==, hookup->plan->n);
  const BwHookupAlternative *chosen = hookup->alternatives->pdata[hookup->alternative];
  g_assert_cmpuint (chosen->cost, ==, hookup->plan->cost);
  g_assert_cmpuint (chosen->verdict, ==, hookup->plan->fit.verdict);
  check_connections (hookup);
  check_hops (hookup);
  check_figures (hookup);
  (*plans)++;
}

/* Every cell and every alternative of the demonstration can be put into words. */
static void
test_demo (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  guint plans = 0;
  for (guint s = 0; s < sheet->sources->len; s++)
    for (guint i = 0; i < sheet->monitor->inputs->len; i++)
      {
        g_autoptr (BwHookup) first = hookup_of (sheet, s, i, 0);
        guint n = first->alternatives->len;
        check_hookup (first, &plans);
        for (guint alternative = 1; alternative < n; alternative++)
          {
            g_autoptr (BwHookup) other = hookup_of (sheet, s, i, alternative);
            check_hookup (other, &plans);
          }
      }
  g_assert_cmpuint (plans, >, 21);
}

/* The pins of one lead as a table: signal, pin and return at both ends. */
typedef struct
{
  const char *signal;
  int from;
  int from_return;
  int to; /* zero: one plug a conductor */
  int to_return;
} PinRow;

static void
assert_pin (const char *says, int pin)
{
  g_autofree char *head = g_strdup_printf ("pin %d", pin);
  gsize length = strlen (head);
  if (pin == 0)
    return;
  g_assert_true (g_str_has_prefix (says, head) && !g_ascii_isdigit (says[length]));
}

static void
assert_pins (const BwHookup *hookup, guint hop, const PinRow *rows, guint n)
{
  guint found = 0;
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      for (guint j = 0; j < n && one->hop == hop; j++)
        if (strcmp (one->signal, rows[j].signal) == 0)
          {
            found++;
            assert_pin (one->from, rows[j].from);
            assert_pin (one->from_return, rows[j].from_return);
            assert_pin (one->to, rows[j].to);
            assert_pin (one->to_return, rows[j].to_return);
          }
    }
  g_assert_cmpuint (found, ==, n);
}

/* DE-15: VESA / DDC pin table: R 1, G 2, B 3 with returns 6, 7, 8; H or composite sync 13, V 14,
 * return 10. */
static void
test_de_15 (void)
{
  static const PinRow in[] = { { "R", 1, 6, 1, 6 },   { "G", 2, 7, 2, 7 },
                               { "B", 3, 8, 3, 8 },   { "H", 13, 10, 13, 10 },
                               { "V", 14, 10, 14, 10 } };
  static const PinRow out[] = { { "R", 1, 6, 0, 0 },
                                { "G", 2, 7, 0, 0 },
                                { "B", 3, 8, 0, 0 },
                                { "Sync", 13, 10, 0, 0 } };
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 6, 2, 0);
  assert_pins (hookup, 0, in, G_N_ELEMENTS (in));
  assert_pins (hookup, 1, out, G_N_ELEMENTS (out));
}

/* 21-pin: EN 50049-1: R 15 return 13, G 11 return 9, B 7 return 5, video or sync out 19 return 17,
 * in 20 return 18: 19 crosses over to 20 in a lead. */
static void
test_peritelevision (void)
{
  static const PinRow crossed[] = { { "R", 15, 13, 15, 13 },
                                    { "G", 11, 9, 11, 9 },
                                    { "B", 7, 5, 7, 5 },
                                    { "Sync", 19, 17, 20, 18 } };
  static const PinRow to_bnc[] = { { "R", 15, 13, 0, 0 },
                                   { "G", 11, 9, 0, 0 },
                                   { "B", 7, 5, 0, 0 },
                                   { "Sync", 19, 17, 0, 0 } };
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) encoder = hookup_of (sheet, 2, 0, 0);
  g_autoptr (BwHookup) direct = hookup_of (sheet, 2, 2, 0);
  assert_pins (encoder, 0, crossed, G_N_ELEMENTS (crossed));
  assert_pins (direct, 0, to_bnc, G_N_ELEMENTS (to_bnc));
}

static const BwHookupLevel *
level_of (const BwHookup *hookup, const char *signal)
{
  for (guint i = 0; i < hookup->levels->len; i++)
    if (strcmp (((BwHookupLevel *) hookup->levels->pdata[i])->signal, signal) == 0)
      return hookup->levels->pdata[i];
  return NULL;
}

/* 5 V behind 100 Ω, 1.1 kΩ of 5 %, into 75 Ω, supply of 5 %: 294.1 mV; at least
 * 4.75 × 75 / (75 + 100 + 1155) = 267.9 mV, at most 5.25 × 75 / (75 + 100 + 1045) = 322.7 mV. The
 * ideal resistor is 75 (5 / 0.3 − 1) − 100 = 1075 Ω (voltage divider). */
static void
test_levels (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 3, 2, 0);
  const BwHookupLevel *sync = level_of (hookup, "Sync");
  const BwHookupLevel *red = level_of (hookup, "R");
  guint resistors = 0;

  g_assert_nonnull (sync);
  g_assert_nonnull (red);
  if (sync == NULL || red == NULL)
    return;
  g_assert_true (bw_near (sync->nominal_v, 0.29412, 0.5e-5));
  g_assert_true (bw_near (sync->min_v, 0.26786, 0.5e-5));
  g_assert_true (bw_near (sync->max_v, 0.32275, 0.5e-5));
  g_assert_true (bw_near (red->nominal_v, 0.7, 1e-12));
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      if (part->series != BW_SERIES_E24)
        continue;
      resistors++;
      g_assert_true (bw_near (part->ideal_ohm, 1075, 1e-6));
      g_assert_true (bw_near (part->value_ohm, 1100, 1e-6));
      g_assert_cmpuint (part->count, ==, 1);
    }
  g_assert_cmpuint (resistors, ==, 1);
}

/* The home computer at a 21-pin input, its sync of 5 V behind @sync_ohm. */
static BwHookup *
at_21_pins (BwSheet *sheet, gboolean wide, double sync_ohm)
{
  BwSource *source = bw_sheet_source (sheet, 3);
  bw_monitor_input (sheet->monitor, 2)->connectors = BW_BIT (BW_CONNECTOR_PERITELEVISION);
  sheet->monitor->wide_switch = wide;
  source->sync_ohm = sync_ohm;
  if (wide)
    source->aspect = (BwRatio){ 16, 9 };
  return hookup_of (sheet, 3, 2, 0);
}

static const BwHookupConnection *
selection_of (const BwHookup *hookup, int pin)
{
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      if (one->conductor == BW_N_CONDUCTORS && one->to_pin == pin)
        return one;
    }
  g_assert_not_reached ();
}

static const BwHookupPart *
part_of (const BwHookup *hookup, const char *words)
{
  for (guint i = 0; i < hookup->parts->len; i++)
    if (strstr (((BwHookupPart *) hookup->parts->pdata[i])->what, words) != NULL)
      return hookup->parts->pdata[i];
  g_test_message ("no part: %s", words);
  g_assert_not_reached ();
}

static gboolean
any_has (GPtrArray *texts, const char *words)
{
  for (guint i = 0; i < texts->len; i++)
    if (strstr (texts->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

/* EN 50049-1: pin 16 wants 1 to 3 V across 75 Ω. From 5 V that is 50 to 300 Ω; √(50 × 300) = 122 Ω,
 * in E24 120 Ω. At 5.25 V: (5.25 / 195)² × 120 = 87.0 mW, and 5.25 / 195 = 26.9 mA (Ohm's law). A
 * resistor of at least 1.5 times: 1/4 W (common practice, no source). Pin 8 at 4:3 wants 9.5 to 12 V,
 * which 5 V cannot give. */
static void
test_selection (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) hookup = at_21_pins (sheet, FALSE, 100);
  const BwHookupConnection *fast = selection_of (hookup, 16);
  const BwHookupPart *part = part_of (hookup, "selects: RGB");

  g_assert_true (bw_near (fast->supply_v, 5, 1e-9));
  g_assert_true (bw_near (selection_of (hookup, 8)->supply_v, 12, 1e-9));
  g_assert_true (bw_near (part->value_ohm, 120, 1e-6));
  g_assert_true (bw_near (part->power_w, 0.08698, 1e-5));
  g_assert_true (bw_near (part->rating_w, 0.25, 1e-9));
  bw_test_assert_words (fast->through, WORDS ("120\u00a0Ω of 1/4\u00a0W in series"));
  part_of (hookup, "supply, 5\u00a0V d.c., 27\u00a0mA");
  part_of (hookup, "supply, 12\u00a0V d.c.");
  gboolean said = FALSE;
  for (guint i = 0; i < hookup->steps->len; i++)
    said |= strstr (((BwHookupStep *) hookup->steps->pdata[i])->purpose,
                    "needs a 5\u00a0V supply, 27\u00a0mA")
            != NULL;
  g_assert_true (said);
  g_assert_true (any_has (hookup->warnings, "carries no sound"));
}

/* EN 50049-1 with amendment A2: 4.5 to 7 V on pin 8 is an external picture of 16:9, which 5 V gives.
 * A set that knows 4:3 alone keeps the level of 4:3. */
static void
test_wide_selection (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) wide = at_21_pins (sheet, TRUE, 100);
  const BwHookupConnection *slow = selection_of (wide, 8);
  g_assert_cmpuint (slow->select, ==, BW_SELECT_AV_WIDE);
  g_assert_true (bw_near (slow->supply_v, 5, 1e-9));
  g_autoptr (BwHookup) narrow = at_21_pins (sheet, FALSE, 100);
  g_assert_cmpuint (selection_of (narrow, 8)->select, ==, BW_SELECT_AV);
}

/* Logic sync that is weak is negative already: the plan does not turn it over. */
static void
test_no_idle_inverter (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  bw_sheet_source (sheet, 3)->sync_ohm = 2000;
  for (guint input = 0; input < sheet->monitor->inputs->len; input++)
    {
      g_autoptr (BwHookup) hookup = hookup_of (sheet, 3, input, 0);
      g_assert_nonnull (hookup->plan);
      for (guint i = 0; i < hookup->steps->len; i++)
        g_assert_cmpstr (((BwHookupStep *) hookup->steps->pdata[i])->id, !=, "sync-inverter");
    }
}

/* 5 V behind 100 Ω is 5 × 75 / 175 = 2.14 V across 75 Ω (voltage divider); leads by name. */
static void
test_words (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) logic = hookup_of (sheet, 3, 2, 0);
  g_autoptr (BwHookup) computer = hookup_of (sheet, 6, 2, 0);
  gboolean said = FALSE;
  for (guint i = 0; i < logic->steps->len; i++)
    said |= strstr (((BwHookupStep *) logic->steps->pdata[i])->purpose,
                    "from 5\u00a0V open (2.14\u00a0V across 75\u00a0Ω) to 294\u00a0mV")
            != NULL;
  g_assert_true (said);
  part_of (computer, "lead, 15-pin DE-15 to 15-pin DE-15");
}

/* Composite of NTSC M is 1 V from sync tip to white, its burst in Y/C 40 IRE = 286 mV (SMPTE
 * 170M). */
static void
test_coded_levels (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) composite = hookup_of (sheet, 0, 0, 0);
  g_autoptr (BwHookup) yc = hookup_of (sheet, 0, 1, 0);
  g_assert_true (bw_near (level_of (composite, "Video")->nominal_v, 1, 1e-6));
  g_assert_true (bw_near (level_of (yc, "Y")->nominal_v, 1, 1e-6));
  g_assert_true (bw_near (level_of (yc, "C")->nominal_v, 0.2857, 0.5e-4));
}

/* An input for luminance is given Y alone: Pb and Pr stay open. */
static void
test_luminance (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  input->signals = BW_BIT (BW_SIGNAL_LUMA);
  input->line_counts.n = 0;
  input->syncs = BW_BIT (BW_SYNC_IN_VIDEO);
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 4, 2, 0);
  guint open = 0;

  g_assert_nonnull (hookup->plan);
  g_assert_cmpuint (hookup->connections->len, ==, 1);
  for (guint i = 0; i < hookup->rests->len; i++)
    open += strstr (((BwHookupRest *) hookup->rests->pdata[i])->pin, "P") != NULL;
  g_assert_cmpuint (open, ==, 2);
  g_assert_cmpuint (hookup->levels->len, ==, 1);
}

static void
add_text (BwCatalogue *catalogue, const char *text)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_ADAPTORS, text, strlen (text), "mine", faults);
  g_assert_true (bw_test_no_faults (faults));
}

/* Two encoders of one rank: the cheaper one comes first, and its price and text are carried on. */
static void
test_price (void)
{
  static const char model[]
      = "[%s]\nname=%s\norigin=Invented\nkind=box\ntakes_signals=composite\ngives_signals=yc\n"
        "gives_connectors=mini-din-4\nrank=3\nprice=%s\n";
  g_autofree char *dear = g_strdup_printf (model, "dear", "=dear \"one\"", "90.5 EUR");
  g_autofree char *cheap = g_strdup_printf (model, "cheap", "cheap one", "9.5 EUR");
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  add_text (catalogue, dear);
  add_text (catalogue, cheap);
  g_autoptr (BwHookup) first = bw_hookup_new (sheet, catalogue, 0, 1, 0, NULL);
  g_autoptr (BwHookup) second = bw_hookup_new (sheet, catalogue, 0, 1, 1, NULL);

  g_assert_cmpstr (((BwHookupAlternative *) first->alternatives->pdata[0])->price, ==, "9.50 EUR");
  g_assert_cmpstr (((BwHookupAlternative *) first->alternatives->pdata[1])->price, ==,
                   "90.50 EUR");
  g_assert_cmpstr (((BwHookupStep *) first->steps->pdata[1])->id, ==, "cheap");
  g_assert_cmpstr (((BwHookupStep *) second->steps->pdata[1])->id, ==, "dear");
  g_autoptr (BwResult) result = bw_result_new ('.');
  bw_hookup_say (bw_result_root (result), second, NULL);
  g_autofree char *csv = bw_node_to_csv (bw_node_find (bw_result_root (result), "parts"));
  bw_test_assert_words (csv, WORDS ("what,ideal_ohm,series,value_ohm,count,price,power_w,"
                                    "rating_w\r\n",
                                    "\"'=dear \"\"one\"\"\",,,,1,90.5 EUR,,\r\n"));
}

static void
test_errors (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  static const guint choices[][3] = { { 8, 0, 0 }, { 0, 3, 0 }, { 0, 0, 1 }, { 7, 0, 1 } };
  static const int codes[] = { BW_HOOKUP_ERROR_SOURCE, BW_HOOKUP_ERROR_INPUT,
                               BW_HOOKUP_ERROR_ALTERNATIVE, BW_HOOKUP_ERROR_ALTERNATIVE };
  for (gsize i = 0; i < G_N_ELEMENTS (codes); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_null (bw_hookup_new (sheet, bw_test_catalogue (), choices[i][0], choices[i][1],
                                    choices[i][2], &error));
      g_assert_error (error, BW_HOOKUP_ERROR, codes[i]);
    }
  g_autoptr (GError) error = NULL;
  g_free (bw_sheet_source (sheet, 0)->raster);
  bw_sheet_source (sheet, 0)->raster = g_strdup ("nowhere");
  g_assert_null (bw_hookup_new (sheet, bw_test_catalogue (), 0, 0, 0, &error));
  g_assert_error (error, BW_HOOKUP_ERROR, BW_HOOKUP_ERROR_SOURCE);
}

/* No lead mends mains that are a little outside the plate: 125 V where it says 100 to 120 V and 6 % beyond
 * is stood (common practice, no source). What is not known stays so as well. */
static void
test_mains_stay (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  sheet->supply_v = 125;
  g_autoptr (BwHookup) near = hookup_of (sheet, 0, 0, 0);
  g_assert_cmpint (near->verdict_before, ==, BW_VERDICT_TIGHT);
  g_assert_cmpint (near->verdict_after, ==, BW_VERDICT_TIGHT);
  g_assert_cmpint (((BwHookupAlternative *) near->alternatives->pdata[0])->verdict, ==,
                   BW_VERDICT_TIGHT);
  sheet->supply_v = 0;
  g_autoptr (BwHookup) open = hookup_of (sheet, 0, 0, 0);
  g_assert_cmpint (open->verdict_before, ==, BW_VERDICT_OPEN);
  g_assert_cmpint (open->verdict_after, ==, BW_VERDICT_OPEN);
  sheet->supply_v = 120;
  g_autoptr (BwHookup) right = hookup_of (sheet, 0, 0, 0);
  g_assert_cmpint (right->verdict_after, ==, BW_VERDICT_DIRECT);
}

/* An input that decodes NTSC alone shows PAL in grey through the lead; what keeps the colour costs more, and
 * what gives it up on the way is no way at all (common practice, no source). */
static void
test_grey_first (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  bw_monitor_input (sheet->monitor, 1)->systems = BW_BIT (BW_SYSTEM_NTSC_M);
  g_autoptr (BwHookup) first = hookup_of (sheet, 1, 1, 0);
  g_assert_cmpint (first->verdict_after, ==, BW_VERDICT_TIGHT);
  g_assert_cmpuint (first->plan->n_boxes, ==, 0);
  g_assert_cmpint (first->fit_after.at[BW_RULE_COLOUR_SYSTEM].reason, ==, BW_REASON_COLOUR_LOST);
  g_assert_cmpuint (first->alternatives->len, >, 1);
  for (guint i = 1; i < first->alternatives->len; i++)
    {
      g_autoptr (BwHookup) other = hookup_of (sheet, 1, 1, i);
      g_assert_false (other->plan->at[other->plan->n - 1].after.monochrome);
      g_assert_cmpint (other->fit_after.at[BW_RULE_COLOUR_SYSTEM].reason, !=, BW_REASON_COLOUR_LOST);
    }
}

/* RGB into a monochrome set: green alone through a lead, and after that a matrix. Sync that has a conductor of
 * its own reaches a set that takes it in the video by a sync adder or the matrix. */
static void
test_green_alone (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 0);
  input->signals = BW_BIT (BW_SIGNAL_LUMA);
  input->line_counts.n = 0;
  bw_sheet_source (sheet, 2)->syncs = BW_BIT (BW_SYNC_ON_GREEN);
  g_autoptr (BwHookup) green = hookup_of (sheet, 2, 0, 0);
  g_assert_cmpuint (green->plan->n_boxes, ==, 0);
  g_assert_cmpuint (green->connections->len, ==, 1);
  const BwHookupConnection *one = green->connections->pdata[0];
  g_assert_cmpuint (one->conductor, ==, BW_CONDUCTOR_G);
  g_assert_cmpuint (green->levels->len, ==, 1);
  const BwHookupAlternative *second = green->alternatives->pdata[1];
  g_assert_nonnull (strstr (second->summary, "matrix"));
  g_assert_cmpint (second->verdict, <, green->verdict_after);

  bw_sheet_source (sheet, 2)->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  g_autoptr (BwHookup) beside = hookup_of (sheet, 2, 0, 0);
  g_assert_cmpuint (beside->plan->n_boxes, ==, 1);
  input->syncs |= BW_BIT (BW_SYNC_COMPOSITE);
  g_autoptr (BwHookup) both = hookup_of (sheet, 2, 0, 0);
  g_assert_cmpuint (both->plan->n_boxes, ==, 0);
  g_assert_cmpuint (both->connections->len, ==, 2);
}

/* RGB of 4 V at an input of high impedance for 0.8 to 1.1 V: the attenuator of −12.6 dB and the terminator
 * together leave √(0.8 · 1.1) = 0.938 V, within what resistors of E24 can (their steps of about 10 % leave half
 * of that). 10 kΩ beside the terminator take 0.9963 of it, which the attenuator makes up for: −12.564 dB. Fit and
 * plan name both. */
static void
test_pad_and_terminator (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  input->termination = BW_TERMINATION_NONE;
  input->input_ohm = 10e3;
  input->video_v.at[0] = (BwRange){ 0.8, 1.1 };
  bw_sheet_source (sheet, 2)->video_v = 4;
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 2, 2, 0);
  guint pads = 0, terminators = 0, levels = 0;
  double ratio = 0;

  for (guint i = 0; i < hookup->plan->n; i++)
    {
      pads += hookup->plan->at[i].kind == BW_STEP_VIDEO_PAD;
      terminators += hookup->plan->at[i].kind == BW_STEP_TERMINATOR;
    }
  g_assert_cmpuint (pads, ==, 1);
  g_assert_cmpuint (terminators, ==, 1);
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      if (strcmp (level->signal, "R") != 0 && strcmp (level->signal, "G") != 0)
        continue;
      levels++;
      ratio = level->nominal_v / 4;
      g_assert_true (bw_near (level->nominal_v, sqrt (0.8 * 1.1), 0.05 * 0.938));
    }
  g_assert_cmpuint (levels, ==, 2);
  g_assert_true (bw_near (20 * log10 (ratio), -12.60, 0.45));
  const BwFinding *before = &hookup->fit_before.at[BW_RULE_VIDEO_LEVEL];
  g_assert_cmpuint (before->remedy.kind, ==, BW_REMEDY_VIDEO_PAD);
  g_assert_true (bw_near (20 * log10 (before->remedy.value), -12.564, 0.01));
  g_assert_cmpuint (hookup->fit_before.at[BW_RULE_TERMINATION].remedy.kind, ==, BW_REMEDY_TERMINATOR);
}

/* A combiner makes one sync of H and V; the picture need not pass it. */
static void
test_picture_goes_straight (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) combined = hookup_of (sheet, 6, 2, 0);
  g_autoptr (BwHookup) mixed = hookup_of (sheet, 1, 0, 0);
  guint straight = 0;
  for (guint i = 0; i < combined->warnings->len; i++)
    straight += strstr (combined->warnings->pdata[i], "(R, G, B) can go straight") != NULL;
  g_assert_cmpuint (straight, ==, 1);
  for (guint i = 0; i < mixed->warnings->len; i++)
    g_assert_null (strstr (mixed->warnings->pdata[i], "can go straight"));
}

/* No plan: the sentences of the fit stand there, and what an adaptor would have to take. */
static void
test_needs (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 7, 2, 0);
  g_assert_null (hookup->plan);
  const char *last = hookup->needs->pdata[hookup->needs->len - 1];
  bw_test_assert_words (last, WORDS ("RGB", "91.146", "85.024"));
}

/* What a box would cure is said where there is none, and not what holds. */
static void
test_needs_without_boxes (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  for (guint i = adaptors->len; i-- > 0;)
    if (bw_adaptor_is_box (adaptors->pdata[i]))
      g_ptr_array_remove_index (adaptors, i);
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, 0, 2, 0, NULL);
  g_assert_null (hookup->plan);
  g_assert_cmpuint (hookup->needs->len, ==, 2);
  bw_test_assert_words (hookup->needs->pdata[0], WORDS ("composite", "RGB"));
  bw_test_assert_words (hookup->needs->pdata[1], WORDS ("15.734", "59.94", "up to 4 adaptors"));
}

/* A resistor and a terminator of sync stand in the conductors of sync alone, every other part in those with
 * picture. */
static void
test_step_conductors (void)
{
  static const struct
  {
    BwSyncKind sync;
    guint own;
  } cases[] = {
    { BW_SYNC_SEPARATE, BW_BIT (BW_CONDUCTOR_H) | BW_BIT (BW_CONDUCTOR_V) },
    { BW_SYNC_COMPOSITE, BW_BIT (BW_CONDUCTOR_SYNC) },
    { BW_SYNC_ON_GREEN, 0 },
  };
  guint rgb = BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_G) | BW_BIT (BW_CONDUCTOR_B);
  g_autoptr (BwSource) source = bw_source_new ();
  source->signal = BW_SIGNAL_RGB;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (BwStepKind kind = 0; kind < BW_N_STEPS; kind++)
      {
        const BwPlanStep step = { .kind = kind, .sync = cases[i].sync };
        const BwPlanSignal signal = { .source = *source };
        gboolean of_sync = kind == BW_STEP_SERIES_RESISTOR || kind == BW_STEP_SYNC_TERMINATOR;
        g_assert_cmphex (bw_plan_step_conductors (&step, &signal), ==,
                         of_sync ? cases[i].own : rgb);
      }
}

/* An attenuator for R, G and B is three: two resistors in series and one to the return in each, T or pi. */
static void
test_pad_parts (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  guint series = 0, shunt = 0;
  bw_sheet_source (sheet, 2)->video_v = 1.4;
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 2, 2, 0);
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      if (strstr (part->what, "in series in the attenuator") != NULL)
        series += part->count;
      if (strstr (part->what, "to the return in the attenuator") != NULL)
        shunt += part->count;
    }
  g_assert_cmpuint (series, ==, 6);
  g_assert_cmpuint (shunt, ==, 3);
}

/* What a lead takes of the detail: at the frequency where it loses 3 dB, a share of 1 − 1/√2 = 0.2929 of 400 TV lines, 117
 * (1/TVL² adds); of a hundredth of its length next to nothing, which is not said; nor is either if it is not known up to
 * where the picture goes. */
static void
test_lead_loss (void)
{
  static const struct
  {
    double length_m;
    gboolean has_top;
    double lost_tvl;
  } cases[] = { { 100, TRUE, 400 * (1 - G_SQRT2 / 2) }, { 1, TRUE, 0 }, { 100, FALSE, 0 } };
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) types = bw_lead_types_shipped ();
  g_autoptr (BwHookup) hookup = hookup_of (sheet, 0, 0, 0);
  const BwLeadType *type = bw_lead_type_find (types, "coax-2.5mm");
  g_assert_nonnull (type);
  double top_hz = bw_lead_type_3_db_hz (type, 100);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwResult) result = bw_result_new ('.');
      const BwLeadCase lead = { .lead = { .type = type, .length_m = cases[i].length_m },
                                .top_hz = cases[i].has_top ? top_hz : 0,
                                .source_tvl = 400 };
      bw_hookup_say (bw_result_root (result), hookup, &lead);
      const BwNode *section = bw_node_find (bw_result_root (result), "lead");
      g_assert_nonnull (section);
      const BwValue *lost = bw_node_value (section, "lost_tvl");
      const BwValue *loss = bw_node_value (section, "loss_db");
      g_assert_cmpint (lost != NULL, ==, cases[i].lost_tvl > 0);
      g_assert_cmpint (loss != NULL, ==, cases[i].has_top);
      if (lost != NULL)
        g_assert_cmpfloat_with_epsilon (lost->number, cases[i].lost_tvl, 1e-6);
      if (lost != NULL)
        g_assert_cmpfloat_with_epsilon (loss->number, 20 * log10 (G_SQRT2), 1e-6);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/hookup-plan/demo", test_demo);
  g_test_add_func ("/hookup-plan/de-15", test_de_15);
  g_test_add_func ("/hookup-plan/peritelevision", test_peritelevision);
  g_test_add_func ("/hookup-plan/levels", test_levels);
  g_test_add_func ("/hookup-plan/selection", test_selection);
  g_test_add_func ("/hookup-plan/wide-selection", test_wide_selection);
  g_test_add_func ("/hookup-plan/no-idle-inverter", test_no_idle_inverter);
  g_test_add_func ("/hookup-plan/words", test_words);
  g_test_add_func ("/hookup-plan/coded-levels", test_coded_levels);
  g_test_add_func ("/hookup-plan/luminance", test_luminance);
  g_test_add_func ("/hookup-plan/price", test_price);
  g_test_add_func ("/hookup-plan/errors", test_errors);
  g_test_add_func ("/hookup-plan/mains-stay", test_mains_stay);
  g_test_add_func ("/hookup-plan/grey-first", test_grey_first);
  g_test_add_func ("/hookup-plan/green-alone", test_green_alone);
  g_test_add_func ("/hookup-plan/pad-and-terminator", test_pad_and_terminator);
  g_test_add_func ("/hookup-plan/picture-goes-straight", test_picture_goes_straight);
  g_test_add_func ("/hookup-plan/needs", test_needs);
  g_test_add_func ("/hookup-plan/needs/without-boxes", test_needs_without_boxes);
  g_test_add_func ("/hookup-plan/step-conductors", test_step_conductors);
  g_test_add_func ("/hookup-plan/pad-parts", test_pad_parts);
  g_test_add_func ("/hookup-plan/lead-loss", test_lead_loss);
  return g_test_run ();
}
