/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/fit/results.h"

#include <math.h>
#include <string.h>

#include "core/cause/cause.h"
#include "core/detail/detail.h"
#include "core/hookup/plan.h"
#include "core/hookup/results.h"
#include "properties.h"
#include "support.h"

/* What is not known: every figure of a monitor, an input and a source is taken away in turn. Nothing
 * falls over, nothing is made up, no verdict gets better than "not judged", and putting the figure
 * back gives what was. */

static const BwCatalogue *catalogue;

static BwSheet *
load (const char *path)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  BwSheet *sheet = bw_sheet_load (path, catalogue, faults);
  g_assert_true (bw_test_no_faults (faults));
  g_assert_nonnull (sheet);
  return sheet;
}

static void
judge (const BwSheet *sheet, guint source, guint input, BwFit *fit)
{
  BwRasterFigures figures;
  BwCase c;
  bw_case_init (&c, &figures, sheet, catalogue, source, input);
  bw_fit_judge (&c, fit);
}

/* A sheet of made-up company: a set of the catalogue, with a source of it for each of a few. */
static BwSheet *
random_sheet (GRand *dice)
{
  GPtrArray *monitors = bw_catalogue_monitors (catalogue), *sources = bw_catalogue_sources (catalogue);
  BwSheet *sheet = bw_sheet_new ();
  gint32 monitor = g_rand_int_range (dice, 0, (gint32) monitors->len);

  g_free (sheet->title);
  sheet->title = g_strdup ("Drawn by lot");
  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitors->pdata[monitor]);
  sheet->supply_v = 120;
  sheet->supply_hz = g_rand_boolean (dice) ? 60 : 50;
  for (int i = 0; i < 2; i++)
    {
      gint32 at = g_rand_int_range (dice, 0, (gint32) sources->len);
      g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[at]));
    }
  return sheet;
}

/* No figure, word or sentence of @result is made of what is not a number. */
static void
assert_said_well (BwResult *result)
{
  g_autofree char *json = bw_node_to_json (bw_result_root (result));
  static const char *const odd[] = { ": nan", ": -nan", ": inf", ": -inf", "\"nan", " nan " };
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    g_assert_null (strstr (json, odd[i]));
  g_assert_true (g_utf8_validate (json, -1, NULL));
}

static void
assert_fit_said_well (const BwSheet *sheet)
{
  g_autoptr (BwResult) result = bw_result_new ('.');
  bw_fit_say_sheet (bw_result_root (result), sheet, catalogue, bw_plan_needs);
  assert_said_well (result);
}

static void
assert_planned (const BwSheet *sheet, guint source, guint input, const BwFit *before)
{
  g_autoptr (GError) error = NULL;
  BwHookup *hookup = bw_hookup_new (sheet, catalogue, source, input, 0, &error);
  g_autoptr (BwResult) result = bw_result_new ('.');

  g_assert_no_error (error);
  g_assert_nonnull (hookup);
  bw_hookup_say (bw_result_root (result), hookup, NULL);
  assert_said_well (result);
  /* A plan is never called more certain than what it was held against. */
  if (hookup->plan != NULL && hookup->fit_after.not_judged > 0)
    g_assert_cmpuint (hookup->verdict_after, >=, BW_VERDICT_OPEN);
  if (hookup->plan == NULL)
    g_assert_cmpuint (hookup->needs->len, >, 0);
  /* The verdict before is the plan's to settle, but for want of a figure it is not no. */
  BwRasterFigures figures;
  BwCase c;
  BwFit settled = *before;
  BwLack lack;
  bw_case_init (&c, &figures, sheet, catalogue, source, input);
  bw_fit_take_plan (&settled, &c, hookup->plan != NULL);
  g_assert_cmpuint (hookup->verdict_before, ==, settled.verdict);
  if (hookup->plan == NULL && before->verdict != BW_VERDICT_NO
      && bw_lacks_way (c.source, c.input, &lack))
    g_assert_cmpuint (hookup->verdict_before, ==, before->verdict);
  bw_hookup_free (hookup);
}

static void
assert_detail_finite (const BwSheet *sheet, guint source, guint input)
{
  const BwSource *from = bw_sheet_source (sheet, source);
  BwDetailCase what;
  BwDetail detail;

  bw_detail_case_from (&what, sheet->monitor, bw_monitor_input (sheet->monitor, input), from,
                       bw_sheet_raster (sheet, catalogue, from));
  bw_detail_compute (&what, &detail);
  g_assert_true (isfinite (detail.combined_tvl) && isfinite (detail.width_m)
                 && isfinite (detail.seen_lines) && isfinite (detail.vertical_lines)
                 && isfinite (detail.line_pitch_m));
  for (guint link = 0; link < BW_N_LINKS; link++)
    g_assert_true (isfinite (detail.limit_tvl[link]) && isfinite (detail.loss[link]));
}

/* Of an input and a source that say enough, what a scope should show can be said. */
static void
assert_cause_known (const BwSheet *sheet, guint source, guint input)
{
  const BwSource *from = bw_sheet_source (sheet, source);
  const BwInput *to = bw_monitor_input (sheet->monitor, input);
  const BwRaster *raster = bw_sheet_raster (sheet, catalogue, from);
  BwCauseCase c;
  BwLack lack;

  if (bw_lacks_wire (from, &lack) || bw_lacks_drive (from, &lack)
      || bw_lacks_load (to, FALSE, &lack))
    return;
  bw_cause_case_of_input (from, to, raster, (BwSyncKind) g_bit_nth_lsf (from->syncs, -1),
                          BW_CONDUCTOR_Y, &c);
  g_assert_true (isfinite (c.load_ohm) && isfinite (c.source_ohm) && isfinite (c.pad_ratio));
}

/* The verdict on a cell after a figure was taken away. A limit that an input may have of its own is
 * there or not; the monitor's then stands for it, or none. */
static void
assert_no_better (const BwFit *before, const BwFit *after, const BwField *field)
{
  if (field->flags & BW_FIELD_OPTIONAL)
    return;
  if (after->not_judged == before->not_judged)
    g_assert_cmpuint (after->verdict, >=, before->verdict);
  else if (after->verdict < before->verdict)
    g_assert_cmpuint (after->not_judged, >, before->not_judged);
  if (after->not_judged > 0)
    g_assert_cmpuint (after->verdict, >=, BW_VERDICT_OPEN);
}

static void
check_cells (const BwSheet *whole, const BwSheet *sheet, const BwField *field, gboolean plan)
{
  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      {
        BwFit before, after;
        judge (whole, source, input, &before);
        judge (sheet, source, input, &after);
        assert_no_better (&before, &after, field);
        assert_detail_finite (sheet, source, input);
        assert_cause_known (sheet, source, input);
        if (plan)
          assert_planned (sheet, source, input, &after);
      }
}

static void
assert_kept (const BwSheet *sheet)
{
  g_autofree char *fault = bw_property_sheet (sheet, catalogue);
  if (fault != NULL)
    g_test_message ("%s", fault);
  g_assert_null (fault);
}

/* Takes each figure of @object of @sheet away, looks, and puts it back. */
static void
take_away_each (const BwSheet *whole, BwSheet *sheet, const BwFieldTable *table, gpointer object,
                gboolean plan)
{
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      if (!(field->flags & BW_FIELD_FIGURE) || !bw_field_is_set (field, object))
        continue;
      g_autofree char *text = bw_field_to_file (field, object);
      bw_field_forget (field, object);
      g_assert_false (bw_field_is_set (field, object));
      g_autofree char *empty = bw_field_to_file (field, object);
      g_assert_cmpstr (empty, ==, "");
      check_cells (whole, sheet, field, plan);
      assert_fit_said_well (sheet);
      assert_kept (sheet);
      g_assert_true (bw_field_parse (field, object, text, BW_FILE_MARK, NULL));
      g_autofree char *before = bw_sheet_to_text (whole, catalogue);
      g_autofree char *after = bw_sheet_to_text (sheet, catalogue);
      g_assert_cmpstr (after, ==, before);
    }
}

static void
take_away_all (const BwSheet *whole, gboolean plan)
{
  g_autoptr (BwSheet) sheet = bw_sheet_copy (whole);

  take_away_each (whole, sheet, &bw_monitor_fields, sheet->monitor, plan);
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    take_away_each (whole, sheet, &bw_input_fields, bw_monitor_input (sheet->monitor, i), plan);
  for (guint i = 0; i < sheet->sources->len; i++)
    take_away_each (whole, sheet, &bw_source_fields, bw_sheet_source (sheet, i), plan);
}

static void
test_each_in_turn (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (20261130);
  guint n = g_test_thorough () ? 40 : 5;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (BwSheet) sheet = random_sheet (dice);
      take_away_all (sheet, FALSE);
    }
}

static void
test_each_in_turn_planned (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (1130);
  guint n = g_test_thorough () ? 10 : 1;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (BwSheet) sheet = random_sheet (dice);
      g_ptr_array_set_size (sheet->sources, 1);
      take_away_all (sheet, TRUE);
    }
}

/* Figures go one after the other until none is left. */
static void
test_down_to_nothing (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (BwSheet) sheet = load (path);

  for (guint i = 0; i < 400; i++)
    {
      guint which = (guint) g_rand_int_range (dice, 0, 3);
      gint32 input = g_rand_int_range (dice, 0, (gint32) sheet->monitor->inputs->len);
      gint32 source = g_rand_int_range (dice, 0, (gint32) sheet->sources->len);
      const BwFieldTable *table = which == 0   ? &bw_monitor_fields
                                  : which == 1 ? &bw_input_fields
                                               : &bw_source_fields;
      gpointer object = which == 0   ? (gpointer) sheet->monitor
                        : which == 1 ? (gpointer) bw_monitor_input (sheet->monitor, (guint) input)
                                     : bw_sheet_source (sheet, (guint) source);
      const BwField *field = &table->at[g_rand_int_range (dice, 0, (gint32) table->n)];
      if (!(field->flags & BW_FIELD_FIGURE))
        continue;
      bw_field_forget (field, object);
      if (i % 10 == 0)
        {
          assert_kept (sheet);
          assert_fit_said_well (sheet);
        }
    }
  bw_fields_forget (&bw_monitor_fields, sheet->monitor);
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    bw_fields_forget (&bw_input_fields, bw_monitor_input (sheet->monitor, i));
  for (guint i = 0; i < sheet->sources->len; i++)
    bw_fields_forget (&bw_source_fields, bw_sheet_source (sheet, i));
  sheet->supply_hz = 0;
  assert_kept (sheet);
  assert_fit_said_well (sheet);

  BwFit fit;
  judge (sheet, 0, 0, &fit);
  g_assert_cmpuint (fit.verdict, ==, BW_VERDICT_OPEN);
  g_assert_cmpuint (fit.not_judged, ==, BW_N_RULES);
}

/* With nothing but the line rates known, the table answers for the line rate. */
static void
test_line_rates_alone (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (BwSheet) sheet = load (path);
  BwBands bands = { 1, { { 15.6e3, 15.8e3 } } };
  guint wrong = 0;

  bw_fields_forget (&bw_monitor_fields, sheet->monitor);
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    bw_fields_forget (&bw_input_fields, bw_monitor_input (sheet->monitor, i));
  sheet->monitor->line_rates_hz = bands;
  for (guint source = 0; source < sheet->sources->len; source++)
    {
      const BwRaster *raster = bw_sheet_raster (sheet, catalogue, bw_sheet_source (sheet, source));
      BwRasterFigures figures;
      BwFit fit;
      bw_raster_figures (raster, &figures);
      judge (sheet, source, 0, &fit);
      gboolean inside = figures.line_rate_hz >= 15.6e3 && figures.line_rate_hz <= 15.8e3;
      g_assert_cmpuint (fit.at[BW_RULE_LINE_RATE].severity != BW_SEVERITY_UNJUDGED, ==, TRUE);
      g_assert_cmpuint (fit.at[BW_RULE_LINE_RATE].severity < BW_SEVERITY_CURABLE, ==, inside);
      g_assert_cmpuint (fit.at[BW_RULE_FIELD_RATE].severity, ==, BW_SEVERITY_UNJUDGED);
      if (!inside)
        {
          g_assert_cmpuint (fit.verdict, >=, BW_VERDICT_WITH_PARTS);
          g_assert_cmpuint (fit.limiting, ==, BW_RULE_LINE_RATE);
          wrong++;
        }
    }
  g_assert_cmpuint (wrong, >, 0);
}

/* What a rule lacks is named: its words on the sheet and its key in the file. */
static void
test_names_the_figure (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (BwSheet) sheet = load (path);
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  input->video_v.n = 0;
  bw_case_init (&c, &figures, sheet, catalogue, 2, 2);
  bw_fit_judge (&c, &fit);
  g_assert_cmpuint (fit.not_judged, ==, 1);
  g_autofree char *key = bw_lack_key (&fit.at[BW_RULE_VIDEO_LEVEL].lacks);
  g_assert_cmpstr (key, ==, "input.video_level");
  g_autofree char *says = bw_finding_says (&fit.at[BW_RULE_VIDEO_LEVEL], &fit, &c, '.');
  bw_test_assert_words (says, WORDS ("Not judged", "Video level", "of the input"));
  g_autofree char *verdict = bw_fit_verdict_says (&fit);
  g_assert_cmpstr (verdict, ==, "direct so far; 1 not judged");
}

/* Of a blank set nothing is judged, however much is known of the source and of the supply: "direct so far" would
 * say too much. One figure of the set that holds is enough for it. */
static void
test_blank_set (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (BwSheet) sheet = load (path);
  BwInput *input = bw_monitor_input (sheet->monitor, 0);
  BwFit fit;

  for (guint i = 0; i < bw_monitor_fields.n; i++)
    if (bw_monitor_fields.at[i].flags & BW_FIELD_FIGURE)
      bw_field_forget (&bw_monitor_fields.at[i], sheet->monitor);
  for (guint i = 0; i < bw_input_fields.n; i++)
    if (bw_input_fields.at[i].flags & BW_FIELD_FIGURE)
      bw_field_forget (&bw_input_fields.at[i], input);
  judge (sheet, 0, 0, &fit);
  g_assert_cmpuint (fit.verdict, ==, BW_VERDICT_OPEN);
  g_assert_true (bw_fit_is_blank (&fit));
  g_autofree char *blank = bw_fit_verdict_says (&fit);
  g_assert_cmpstr (blank, ==, "not judged");
  g_assert_cmpstr (bw_fit_verdict_word (&fit), ==, "not judged");

  input->scans = BW_BIT (BW_SCAN_INTERLACED);
  judge (sheet, 0, 0, &fit);
  g_assert_false (bw_fit_is_blank (&fit));
  g_autofree char *open = bw_fit_verdict_says (&fit);
  g_assert_true (g_str_has_prefix (open, "direct so far; "));
}

/* What is not known of a line rate or a level does not hide what is known to be wrong. */
static void
test_wrong_stays_wrong (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (BwSheet) sheet = load (path);
  BwFit before, after;
  guint last = sheet->sources->len - 1; /* 1280 x 1024 on a set of 15 and 31 kHz */

  judge (sheet, last, 2, &before);
  g_assert_cmpuint (before.verdict, ==, BW_VERDICT_NO);
  bw_field_forget (bw_field_find (&bw_monitor_fields, "field_rates"), sheet->monitor);
  judge (sheet, last, 2, &after);
  g_assert_cmpuint (after.verdict, ==, BW_VERDICT_NO);
}

/* The file */

static BwSheet *
parse (const char *text)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  BwSheet *sheet = bw_sheet_parse (text, strlen (text), "test.bench", catalogue, faults);
  g_assert_true (bw_test_no_faults (faults));
  return sheet;
}

#define MONITOR "[monitor]\nname=Set\ndiagonal=20 in\nline_rates=15.6 kHz .. 15.8 kHz\n"
#define INPUT "[input 1]\nname=A\nsignals=rgb\n"

/* In the first form of the file a preset stands for what is absent, but for a mask that nobody named;
 * since the second it is unknown. Of what had to be given in the first, the same holds. */
static void
test_forms_of_the_file (void)
{
  g_autoptr (BwSheet) first = parse ("[bench-sheet]\nformat=1\ntitle=T\n" MONITOR INPUT);
  g_autoptr (BwSheet) second = parse ("[bench-sheet]\nformat=2\ntitle=T\n" MONITOR INPUT);
  const BwInput *old = bw_monitor_input (first->monitor, 0);
  const BwInput *new = bw_monitor_input (second->monitor, 0);

  g_assert_cmpuint (old->termination, ==, BW_TERMINATION_FIXED);
  g_assert_cmpuint (old->clamp, ==, BW_CLAMP_BACK_PORCH);
  g_assert_cmpint (old->loop_through, ==, FALSE);
  g_assert_cmpfloat (first->monitor->overscan_h, ==, 0);
  g_assert_cmpuint (first->monitor->mask, ==, BW_N_MASKS);
  g_assert_cmpfloat (first->supply_hz, ==, 0);
  g_assert_true (bw_ratio_is_none (first->monitor->aspect));

  g_assert_cmpuint (new->termination, ==, BW_N_TERMINATIONS);
  g_assert_cmpuint (new->clamp, ==, BW_N_CLAMPS);
  g_assert_cmpint (new->loop_through, ==, BW_SWITCH_UNKNOWN);
  g_assert_true (isnan (second->monitor->overscan_h));
  g_assert_cmpuint (second->monitor->mask, ==, BW_N_MASKS);
}

/* A sheet of which all is known is written as it always was, wherever its figures come from. */
static void
test_oldest_form_that_says_it (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (BwSheet) sheet = load (path);

  bw_monitor_set_origins (sheet->monitor, BW_ORIGIN_PAPERS);
  g_autofree char *known = bw_sheet_to_text (sheet, catalogue);
  bw_test_assert_words (known, WORDS ("\nformat=1\n", "\npitch=0.45 mm\n",
                                      "\npitch.from=papers\n"));
  bw_field_forget (bw_field_find (&bw_monitor_fields, "pitch"), sheet->monitor);
  g_autofree char *without_pitch = bw_sheet_to_text (sheet, catalogue);
  bw_test_assert_words (without_pitch, WORDS ("\nformat=1\n")); /* it never had to be given */
  g_assert_null (strstr (without_pitch, "pitch.from"));
  g_assert_null (strstr (without_pitch, "\npitch="));
  bw_field_forget (bw_field_find (&bw_monitor_fields, "mask"), sheet->monitor);
  g_autofree char *without_mask = bw_sheet_to_text (sheet, catalogue);
  bw_test_assert_words (without_mask, WORDS ("\nformat=2\n"));
  assert_kept (sheet);
}

/* Where a figure comes from is read, kept and written beside it; keys of others stay. */
static void
test_origins_in_the_file (void)
{
  const char *text = "[bench-sheet]\nformat=2\ntitle=T\n" MONITOR
                     "diagonal.from=plate\nline_rates.from=measured\ncase=oak\ncase.from=shed\n" INPUT
                     "signals.from=class\n";
  g_autoptr (BwSheet) sheet = parse (text);
  const BwField *diagonal = bw_field_find (&bw_monitor_fields, "diagonal");

  g_assert_cmpuint (bw_field_origin (&bw_monitor_fields, diagonal, sheet->monitor), ==,
                    BW_ORIGIN_PLATE);
  g_autoptr (BwSheet) copy = bw_sheet_copy (sheet);
  g_autofree char *saved = bw_sheet_to_text (copy, catalogue);
  bw_test_assert_words (saved, WORDS ("diagonal.from=plate", "line_rates.from=measured", "case=oak",
                                      "case.from=shed", "signals.from=class"));
  bw_field_forget (diagonal, copy->monitor);
  g_autofree char *without = bw_sheet_to_text (copy, catalogue);
  g_assert_null (strstr (without, "diagonal")); /* what is not known comes from nowhere */
}

static void
test_bad_origin (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  const char *text = "[bench-sheet]\nformat=2\ntitle=T\n" MONITOR "diagonal.from=hearsay\n";

  g_assert_null (bw_sheet_parse (text, strlen (text), "test.bench", catalogue, faults));
  g_assert_true (bw_test_has_fault (faults, BW_FIELD_ERROR, BW_FIELD_ERROR_KIND,
                                    WORDS ("test.bench", "[monitor]", "diagonal.from", "hearsay",
                                           "plate, papers, measured, class")));
}

/* The shipped classes: each size of each common kind is found by typing it. */
static void
test_classes (void)
{
  static const char *const kinds[][3] = {
    { "studio", "15 kHz" }, { "studio", "31 kHz" }, { "computer", "kHz to" },
    { "receiver", "21-pin" }, { "monochrome", "15 kHz" },
  };
  static const char *const sizes[][2] = { { "14 in", "14 in" }, { "20 in", "20 in" },
                                          { "25 in", "27 in" }, { "29 in", "32 in" } };
  const GPtrArray *monitors = bw_catalogue_monitors (catalogue);

  for (gsize kind = 0; kind < G_N_ELEMENTS (kinds); kind++)
    for (gsize size = 0; size < G_N_ELEMENTS (sizes); size++)
      {
        guint found = 0;
        for (guint i = 0; i < monitors->len; i++)
          {
            const BwMonitor *monitor = monitors->pdata[i];
            g_autofree char *name = g_utf8_strdown (monitor->name, -1);
            found += strstr (name, kinds[kind][0]) != NULL && strstr (monitor->name, kinds[kind][1])
                     && (strstr (name, sizes[size][0]) != NULL || strstr (name, sizes[size][1]) != NULL);
          }
        if (found == 0)
          g_test_message ("no %s, %s, %s", kinds[kind][0], kinds[kind][1], sizes[size][0]);
        g_assert_cmpuint (found, >, 0);
      }
  for (guint i = 0; i < monitors->len; i++)
    g_assert_nonnull (strstr (((BwMonitor *) monitors->pdata[i])->source, "no source"));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  catalogue = bw_test_catalogue ();
  g_test_add_func ("/unknown/line-rates-alone", test_line_rates_alone);
  g_test_add_func ("/unknown/names-the-figure", test_names_the_figure);
  g_test_add_func ("/unknown/wrong-stays-wrong", test_wrong_stays_wrong);
  g_test_add_func ("/unknown/blank-set", test_blank_set);
  g_test_add_func ("/unknown/down-to-nothing", test_down_to_nothing);
  g_test_add_func ("/unknown/forms-of-the-file", test_forms_of_the_file);
  g_test_add_func ("/unknown/oldest-form-that-says-it", test_oldest_form_that_says_it);
  g_test_add_func ("/unknown/origins-in-the-file", test_origins_in_the_file);
  g_test_add_func ("/unknown/bad-origin", test_bad_origin);
  g_test_add_func ("/unknown/classes", test_classes);
  g_test_add_func ("/unknown/each-in-turn", test_each_in_turn);
  g_test_add_func ("/unknown/each-in-turn-planned", test_each_in_turn_planned);
  return g_test_run ();
}
