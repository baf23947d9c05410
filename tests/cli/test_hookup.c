/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli hookup`: the plan from a source to an input, as JSON, as text and as a list. */
#include <string.h>

#include "run.h"

#define COMPUTER "Home computer, 262 lines, logic sync"
#define TICKETS "Ticket computer, 640x480"
#define DRAWING "Drawing workstation, 1280x1024"
#define RGB_INPUT "RGB, Y Pb Pr"

static Run *
run_hookup (const char *source, const char *input, const char *more)
{
  g_autofree char *demo = demo_path ();
  return run_cli ("hookup", demo, "--source", source, "--input", input, more, NULL);
}

static JsonObject *
hookup_json (const char *source, const char *input)
{
  g_autoptr (Run) run = run_hookup (source, input, "--json");
  return run_json (run);
}

static const char *
text_of (JsonObject *object, const char *key)
{
  return json_object_get_string_member (object, key);
}

static JsonObject *
element_of (JsonObject *root, const char *array, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (root, array), i);
}

static guint
length_of (JsonObject *root, const char *array)
{
  return json_array_get_length (json_object_get_array_member (root, array));
}

/* Whatever fit says of a cell, hookup says before; and after, every cell that is not "no" before is
 * direct or tight, or complete but for pins that no standard lays down. */
static void
test_every_cell (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) fit = fit_json (demo);
  g_assert_cmpuint (n_cells (fit), ==, 24);
  for (guint i = 0; i < n_cells (fit); i++)
    {
      JsonObject *one = cell_at (fit, i);
      g_autoptr (JsonObject) root = hookup_json (text_of (one, "source"), text_of (one, "input"));
      const char *before = text_of (root, "verdict_before");
      const char *after = text_of (root, "verdict_after");
      JsonObject *open = json_object_get_object_member (root, "open_pins");
      gboolean pins = open != NULL && json_object_get_int_member (open, "count") > 0;
      gboolean works = strcmp (after, "direct") == 0 || strcmp (after, "tight") == 0
                       || (pins && strcmp (after, "open") == 0);
      gboolean hopeless = strcmp (before, "no") == 0;

      g_assert_cmpstr (before, ==, text_of (one, "verdict"));
      g_assert_true (works != hopeless);
      g_assert_true ((length_of (root, "needs") > 0) == hopeless);
      g_assert_true ((length_of (root, "connections") > 0) == works);
    }
}

static void
test_keys (void)
{
  static const char *const keys[]
      = { "source", "input",      "verdict_before", "verdict_after", "alternative",  "chain",
          "connections", "parts", "levels",         "warnings",      "leads",        "rests",
          "needs",  "alternatives", NULL };
  g_autoptr (JsonObject) root = hookup_json (COMPUTER, RGB_INPUT);
  assert_keys_begin_with (root, keys);
}

/* 5 V behind 100 Ω into 75 Ω for 0.3 V: 75 (5 / 0.3 − 1) − 100 = 1075 Ω (voltage divider); the
 * nearest of E24 (IEC 60063) is 1.1 kΩ, which gives 5 × 75 / 1275 = 294.1 mV. */
static void
test_resistor (void)
{
  g_autoptr (JsonObject) root = hookup_json (COMPUTER, RGB_INPUT);
  JsonObject *part = element_of (root, "parts", 0);
  JsonObject *level = element_of (root, "levels", 3);

  g_assert_true (is_near (figure_of (part, "ideal_ohm"), 1075, 1e-6));
  g_assert_true (is_near (figure_of (part, "value_ohm"), 1100, 1e-6));
  g_assert_cmpstr (text_of (part, "series"), ==, "e24");
  g_assert_true (is_near (figure_of (part, "count"), 1, 0));
  g_assert_cmpstr (text_of (level, "signal"), ==, "Sync");
  g_assert_true (is_near (figure_of (level, "nominal_v"), 0.29412, 0.5e-5));
  g_assert_cmpfloat (figure_of (level, "min_v"), <, 0.2941);
  g_assert_cmpfloat (figure_of (level, "max_v"), >, 0.2942);
}

/* VESA / DDC pin table: R 1, G 2, B 3, H 13, V 14. */
static void
test_connections (void)
{
  static const struct
  {
    const char *signal;
    const char *from;
  } rows[] = { { "R", "pin 1 " }, { "G", "pin 2 " }, { "B", "pin 3 " }, { "H", "pin 13 " },
               { "V", "pin 14 " } };
  g_autoptr (JsonObject) root = hookup_json (TICKETS, RGB_INPUT);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      JsonObject *one = element_of (root, "connections", i);
      g_assert_cmpstr (text_of (one, "signal"), ==, rows[i].signal);
      g_assert_true (g_str_has_prefix (text_of (one, "from"), rows[i].from));
      g_assert_cmpstr (text_of (one, "through"), ==, "straight through");
    }
}

/* That there is no plan is an answer: exit 0, and why. */
static void
test_no_plan (void)
{
  g_autoptr (Run) run = run_hookup (DRAWING, "Composite", NULL);
  g_autoptr (JsonObject) root = hookup_json (DRAWING, "Composite");
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "No plan"));
  g_assert_nonnull (strstr (run->out, "91.146"));
  g_assert_true (is_null (root, "alternative"));
  g_assert_cmpstr (text_of (root, "verdict_after"), ==, "no");
}

static void
test_text (void)
{
  static const char *const words[]
      = { "Steps", "Lead 1: ", "Parts", "Levels at the input", "Mind", "Alternatives",
          "1.1", "sync combiner", "pin 13" };
  g_autoptr (Run) run = run_hookup (TICKETS, RGB_INPUT, NULL);
  g_assert_cmpint (run->status, ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    g_assert_nonnull (strstr (run->out, words[i]));
}

/* The second alternative is another chain than the first, and not cheaper. */
static void
test_alternative (void)
{
  g_autoptr (Run) run = run_hookup (TICKETS, RGB_INPUT, "--alternative=2");
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) as_json = run_cli ("hookup", demo, "-s", TICKETS, "-i", RGB_INPUT,
                                     "--alternative", "2", "--json", NULL);
  g_autoptr (JsonObject) first = hookup_json (TICKETS, RGB_INPUT);
  g_autoptr (JsonObject) second = run_json (as_json);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_true (is_near (figure_of (second, "alternative"), 2, 0));
  g_assert_cmpfloat (figure_of (element_of (first, "alternatives", 0), "cost"), <=,
                     figure_of (element_of (first, "alternatives", 1), "cost"));
  g_assert_cmpstr (text_of (element_of (first, "chain", 1), "id"), !=,
                   text_of (element_of (second, "chain", 1), "id"));
}

static void
test_csv (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "parts.csv", NULL);
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("hookup", demo, "-s", COMPUTER, "-i", RGB_INPUT, "--csv", path,
                                 NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_autofree char *csv = read_text (path);
  g_assert_true (g_str_has_prefix (csv, "what,ideal_ohm,series,value_ohm,count,price,"
                                         "power_w,rating_w\r\n"));
  g_assert_nonnull (strstr (csv, ",1075,e24,1100,1,"));
  remove_scratch (folder);
}

static void
test_refused (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) no_source = run_hookup ("Ticket computer", RGB_INPUT, NULL);
  g_autoptr (Run) no_input = run_hookup (TICKETS, "RGB", NULL);
  g_autoptr (Run) none_named = run_cli ("hookup", demo, NULL);
  g_autoptr (Run) too_many = run_hookup (TICKETS, RGB_INPUT, "--alternative=19");
  g_autoptr (Run) zero = run_hookup (TICKETS, RGB_INPUT, "--alternative=0");
  g_autoptr (Run) itself = run_cli ("hookup", demo, "-s", TICKETS, "-i", RGB_INPUT, "--csv", demo,
                                    NULL);
  g_autoptr (Run) no_sheet = run_cli ("hookup", NULL);

  assert_refused (no_source, 1, TICKETS);
  assert_refused (no_input, 1, RGB_INPUT);
  assert_refused (none_named, 2, "--source");
  assert_refused (too_many, 1, "19");
  assert_refused (zero, 2, "--alternative");
  assert_refused (itself, 2, "sheet");
  g_assert_cmpint (no_sheet->status, ==, 2);
}

/* The plan drawn, and the sheet, each a file of its kind; another series gives another resistor: of
 * E96 (IEC 60063) 1.07 kΩ is nearest to 1075 Ω. */
static void
test_drawn (void)
{
  static const struct
  {
    const char *option;
    const char *name;
    const char *magic;
  } files[] = { { "-o", "plan.svg", "<?xml" },
                { "-o", "plan.png", "\x89PNG" },
                { "-o", "plan.pdf", "%PDF" },
                { "--pdf", "sheet.pdf", "%PDF" } };
  g_autofree char *demo = demo_path ();
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *folder = scratch_folder ();
      g_autofree char *path = g_build_filename (folder, files[i].name, NULL);
      g_autofree char *bytes = NULL;
      g_autoptr (Run) run = run_cli ("hookup", demo, "--source", COMPUTER, "--input", RGB_INPUT,
                                     files[i].option, path, "--series", "e96", NULL);
      g_assert_cmpint (run->status, ==, 0);
      g_assert_cmpstr (run->err, ==, "");
      g_assert_nonnull (strstr (run->out, "1.07 kΩ"));
      g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
      g_assert_true (g_str_has_prefix (bytes, files[i].magic));
      remove_scratch (folder);
    }
  g_autoptr (Run) suffix = run_hookup (COMPUTER, RGB_INPUT, "--output=plan.doc");
  assert_refused (suffix, 2, "plan.doc");
  g_autoptr (Run) series = run_hookup (COMPUTER, RGB_INPUT, "--series=e48");
  assert_refused (series, 2, "--series");
}

/* A source of 75 Ω into 75 Ω: all is taken, nothing comes back. 5 m at 0.66 of 299.79 m/µs, there and back:
 * 50.5 ns (arithmetic). */
static void
test_line_end (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("hookup", demo, "--source", COMPUTER, "--input", RGB_INPUT,
                                 "--length", "5m", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *end = json_object_get_object_member (root, "line_end");
  g_autoptr (JsonObject) plain = hookup_json (COMPUTER, RGB_INPUT);
  JsonObject *without = json_object_get_object_member (plain, "line_end");

  g_assert_true (is_near (figure_of (end, "load_ohm"), 75, 1e-9));
  g_assert_true (json_object_get_null_member (end, "return_loss_db"));
  g_assert_true (is_near (figure_of (end, "echo"), 0, 1e-12));
  g_assert_true (is_near (figure_of (end, "echo_s"), 50.5e-9, 0.1e-9));
  g_assert_true (is_near (figure_of (json_object_get_object_member (root, "lead"), "delay_s"),
                          25.27e-9, 0.02e-9));
  g_assert_true (json_object_get_null_member (without, "echo_s"));
}

static JsonObject *
other_resistances_json (const char *source, const char *input)
{
  g_autofree char *path = source_path ("tests/sheets/32-other-resistances.bench");
  g_autoptr (Run) run
      = run_cli ("hookup", path, "--source", source, "--input", input, "--json", NULL);
  return run_json (run);
}

/* 75 Ω into 50 Ω that takes 0.2 to 0.35 V of the picture: a minimum-loss pad, 43.30 and 86.60 Ω, which is what
 * makers of such pads state with 5.7 dB (common practice, no source); in E24 43 and 91 Ω, IEC 60063. By Ohm's
 * law: 91 beside 50 Ω are 32.270 Ω; the lead ends in 75.270 Ω, −20 lg (0.270/150.270) = 54.9 dB; 2 V from 75 Ω leave
 * 2 × 32.270/150.270 = 0.42948 V of picture and sync. */
static void
test_minimum_loss (void)
{
  g_autoptr (JsonObject) root = other_resistances_json ("1", "3");
  JsonObject *pad = element_of (root, "chain", 1), *end = json_object_get_object_member (root, "line_end");

  g_assert_cmpstr (text_of (pad, "kind"), ==, "minimum-loss-pad-at-input");
  g_assert_nonnull (strstr (text_of (pad, "purpose"), "loses 5.72 dB"));
  g_assert_true (is_near (figure_of (element_of (root, "parts", 1), "ideal_ohm"), 43.301, 1e-3));
  g_assert_true (is_near (figure_of (element_of (root, "parts", 1), "value_ohm"), 43, 1e-9));
  g_assert_true (is_near (figure_of (element_of (root, "parts", 2), "ideal_ohm"), 86.603, 1e-3));
  g_assert_true (is_near (figure_of (element_of (root, "parts", 2), "value_ohm"), 91, 1e-9));
  g_assert_nonnull (strstr (text_of (element_of (root, "connections", 0), "through"),
                            "at the input's end 43 Ω in series, 91 Ω to the return"));
  g_assert_true (is_near (figure_of (element_of (root, "levels", 0), "nominal_v"), 0.42948, 1e-5));
  g_assert_true (is_near (figure_of (end, "load_ohm"), 75.270, 1e-3));
  g_assert_true (is_near (figure_of (end, "source_ohm"), 75, 1e-9));
  g_assert_true (is_near (figure_of (end, "return_loss_db"), 54.9, 0.1));
  g_assert_true (json_object_get_boolean_member (end, "matched"));
  g_assert_true (json_object_get_null_member (end, "source_match"));
}

/* 50 Ω into 75 Ω: the lead ends in 75 Ω, and what would match the source is said: 25 Ω in series, in E24 24 Ω,
 * which leave 0.7 × 125/149 = 0.587 V; a pad of 91 and 43 Ω 0.376 V (0.7516 V of twice the level). */
static void
test_source_match (void)
{
  g_autoptr (JsonObject) root = other_resistances_json ("2", "1");
  JsonObject *end = json_object_get_object_member (root, "line_end");
  const char *says = text_of (end, "source_match");

  g_assert_cmpuint (length_of (root, "parts"), ==, 1); /* the lead */
  g_assert_true (json_object_get_boolean_member (end, "matched"));
  g_assert_true (is_near (figure_of (end, "source_ohm"), 50, 1e-9));
  g_assert_nonnull (strstr (says, "24 Ω in series"));
  g_assert_nonnull (strstr (says, "587 mV, which this input takes"));
  g_assert_nonnull (strstr (says, "376 mV, below what this input takes"));
}

/* A name that two sources have is not taken for the first of them. */
static void
test_shared_name (void)
{
  g_autofree char *path = source_path ("tests/sheets/33-mains-of-too-many-volts.bench");
  g_autofree char *folder = scratch_folder ();
  g_autofree char *twice = g_build_filename (folder, "twice.bench", NULL);
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) parts = g_strsplit (text, "name=Logic of 100 ohm", -1);
  g_assert_cmpuint (g_strv_length (parts), ==, 2);
  g_autofree char *changed = g_strjoinv ("name=Camera", parts);
  g_assert_true (g_file_set_contents (twice, changed, -1, NULL));
  g_autoptr (Run) name = run_cli ("hookup", twice, "-s", "Camera", "-i", "2", NULL);
  g_autoptr (Run) number = run_cli ("hookup", twice, "-s", "2", "-i", "2", "--json", NULL);
  assert_refused (name, 1, "2 are called “Camera”; choose one by its number: 1, 2");
  g_autoptr (JsonObject) root = run_json (number);
  g_assert_cmpstr (text_of (root, "source"), ==, "Camera");
  g_assert_cmpuint (length_of (root, "parts"), ==, 3); /* transformer, resistor, lead: not the first one */
}

/* The 640x480 computer of the demonstration at the RGB input: the combiner and the resistor behind it,
 * 75 (5 / 0.3 − 1) − 100 = 1075 Ω, 1.1 kΩ in E24; both say so. */
static void
test_all_that_is_needed (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) fit = run_cli ("fit", demo, "--findings", "--source", TICKETS, "--input",
                                 RGB_INPUT, NULL);
  g_autoptr (Run) plan = run_hookup (TICKETS, RGB_INPUT, NULL);
  g_autoptr (Run) none = run_hookup (DRAWING, RGB_INPUT, "--json");
  g_autoptr (JsonObject) root = run_json (none);

  g_assert_nonnull (strstr (fit->out, "In all: sync combiner, composite sync from H and V"));
  g_assert_nonnull (strstr (fit->out, "1.1"));
  g_assert_nonnull (strstr (plan->out, "sync combiner, composite sync from H and V"));
  g_assert_nonnull (strstr (plan->out, "1.1"));
  g_assert_cmpstr (text_of (root, "verdict_before"), ==, "no");
}

static void
test_one_alternative (void)
{
  g_autofree char *path = source_path ("tests/sheets/32-other-resistances.bench");
  g_autoptr (Run) run = run_cli ("hookup", path, "--source", "4", "--input", "2",
                                 "--alternative", "3", NULL);
  assert_refused (run, 1, "there is no alternative 3; there is 1");
}

static void
test_lead_refused (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) type = run_cli ("hookup", demo, "--source", COMPUTER, "--input", RGB_INPUT,
                                  "--length", "5m", "--lead", "string", NULL);
  g_autoptr (Run) length = run_cli ("hookup", demo, "--source", COMPUTER, "--input", RGB_INPUT,
                                    "--lead", "coax-2.5mm", NULL);
  g_autoptr (Run) none = run_cli ("hookup", demo, "--source", COMPUTER, "--input", RGB_INPUT,
                                  "--length", "0m", NULL);
  assert_refused (type, 1, "coax-2.5mm");
  assert_refused (length, 2, "--length");
  assert_refused (none, 1, "--length");
}

/* A computer with a 6-pin DIN, whose pins no standard lays down for RGB; the pin-out is invented. */
static const char computer_sheet[]
    = "[bench-sheet]\nformat=2\ntitle=t\n\n[monitor]\nname=m\nline_rates=15 kHz .. 16 kHz\n"
      "field_rates=50 Hz .. 70 Hz\n\n[input 1]\nname=RGB\nconnectors=bnc\nsignals=rgb\n"
      "syncs=composite-sync\ntermination=fixed\nsync_termination=fixed\nloop_through=no\n\n"
      "[source 1]\nname=c\nraster=262-60.05-progressive\nsignal=rgb\nsyncs=composite-sync\n"
      "system=none\nconnector=din-6\nvideo_level=700 mV\nsync_level=300 mV\n"
      "sync_stated=75-ohm\nsync_polarity=standard\nsetup=0 IRE\nsource_resistance=75 ohm\n"
      "sync_resistance=75 ohm\ncoupling=dc\naspect=4:3\nwhole_picture=no\n";

static JsonObject *
computer_json (const char *folder, const char *pins)
{
  g_autofree char *text = g_strconcat (computer_sheet, pins, NULL);
  g_autofree char *path = write_scratch (folder, "computer.bench", text);
  g_autoptr (Run) run = run_cli ("hookup", path, "--json", NULL);
  return run_json (run);
}

/* How many pins are open stands in the JSON, and a pin that is given in the wiring. */
static void
test_own_pins (void)
{
  static const struct
  {
    const char *pins;
    int open;
    const char *from_r;
    const char *through_r;
  } cases[] = {
    { "", 5, "R, pin not laid down", "a wire alone, once its pins are known" },
    { "pins=1 r; 2 g\n", 3, "pin 1 (R)", "a wire alone" },
    { "pins=1 r; 2 g; 3 b; 4 sync; 5 ground; 6 supply\n", 0, "pin 1 (R)", "a wire alone" },
  };
  g_autofree char *folder = scratch_folder ();
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (JsonObject) root = computer_json (folder, cases[i].pins);
      JsonObject *open = json_object_get_object_member (root, "open_pins");
      JsonObject *red
          = json_array_get_object_element (json_object_get_array_member (root, "connections"), 0);
      g_assert_cmpint (json_object_get_int_member (open, "count"), ==, cases[i].open);
      g_assert_cmpstr (text_of (red, "from"), ==, cases[i].from_r);
      g_assert_cmpstr (text_of (red, "through"), ==, cases[i].through_r);
      g_assert_cmpint (json_array_get_length (json_object_get_array_member (open, "at_input")), ==,
                       0);
      if (cases[i].open > 0)
        g_assert_nonnull (strstr (text_of (open, "says"), "complete but for"));
      else
        g_assert_true (json_object_get_null_member (open, "says"));
    }
  remove_scratch (folder);
}

/* A pin-out that cannot be is refused with file, group and key. */
static void
test_pins_refused (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *text = g_strconcat (computer_sheet, "pins=1 r; 2 r\n", NULL);
  g_autofree char *path = write_scratch (folder, "twice.bench", text);
  g_autoptr (Run) run = run_cli ("hookup", path, NULL);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_nonnull (strstr (run->err, "twice.bench: [source 1] pins: "));
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/hookup/every-cell", test_every_cell);
  g_test_add_func ("/hookup/keys", test_keys);
  g_test_add_func ("/hookup/resistor", test_resistor);
  g_test_add_func ("/hookup/connections", test_connections);
  g_test_add_func ("/hookup/no-plan", test_no_plan);
  g_test_add_func ("/hookup/text", test_text);
  g_test_add_func ("/hookup/alternative", test_alternative);
  g_test_add_func ("/hookup/csv", test_csv);
  g_test_add_func ("/hookup/refused", test_refused);
  g_test_add_func ("/hookup/drawn", test_drawn);
  g_test_add_func ("/hookup/line-end", test_line_end);
  g_test_add_func ("/hookup/minimum-loss", test_minimum_loss);
  g_test_add_func ("/hookup/source-match", test_source_match);
  g_test_add_func ("/hookup/shared-name", test_shared_name);
  g_test_add_func ("/hookup/all-that-is-needed", test_all_that_is_needed);
  g_test_add_func ("/hookup/one-alternative", test_one_alternative);
  g_test_add_func ("/hookup/lead-refused", test_lead_refused);
  g_test_add_func ("/hookup/own-pins", test_own_pins);
  g_test_add_func ("/hookup/pins-refused", test_pins_refused);
  return g_test_run ();
}
