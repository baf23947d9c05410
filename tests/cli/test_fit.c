/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What `breezeway-cli fit` prints of the demo sheet and of sheets made from it. */
#include <string.h>

#include "run.h"

static const char *const severities[] = { "ok", "not-judged", "tight", "curable", "fatal" };
static const char *const units[] = { "Hz",  "s", "m",        "V",     "IRE",
                                     "ohm", "A", "fraction", "lines", "px" };

static const char *const cell_keys[] = { "source", "input", "verdict", "findings", NULL };
static const char *const finding_keys[] = { "rule", "severity", "value",  "low", "high",
                                            "unit", "says",     "remedy", NULL };

/* The values of @key in the groups of @path that begin with @prefix, in the file's order. */
static GPtrArray *
names_in_file (const char *path, const char *prefix)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_assert_true (g_key_file_load_from_file (keys, path, G_KEY_FILE_NONE, NULL));
  g_auto (GStrv) groups = g_key_file_get_groups (keys, NULL);
  for (char **group = groups; *group != NULL; group++)
    if (g_str_has_prefix (*group, prefix))
      g_ptr_array_add (names, g_key_file_get_string (keys, *group, "name", NULL));
  return names;
}

/* Cells are sources x inputs, in the sheet's order, counted from the file itself. */
static void
test_cells (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (GPtrArray) sources = names_in_file (demo, "source ");
  g_autoptr (GPtrArray) inputs = names_in_file (demo, "input ");
  g_autoptr (GPtrArray) monitor = names_in_file (demo, "monitor");
  g_autoptr (JsonObject) root = fit_json (demo);

  g_assert_cmpuint (sources->len, >=, 7);
  g_assert_cmpuint (inputs->len, ==, 3);
  g_assert_cmpuint (n_cells (root), ==, sources->len * inputs->len);
  g_assert_cmpstr (json_object_get_string_member (root, "monitor"), ==, monitor->pdata[0]);
  for (guint i = 0; i < n_cells (root); i++)
    {
      JsonObject *one = cell_at (root, i);
      g_assert_cmpstr (json_object_get_string_member (one, "source"), ==,
                       sources->pdata[i / inputs->len]);
      g_assert_cmpstr (json_object_get_string_member (one, "input"), ==,
                       inputs->pdata[i % inputs->len]);
    }
}

static void
check_limits (JsonObject *finding)
{
  gboolean measured = FALSE;
  static const char *const figures[] = { "value", "low", "high" };
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    if (!is_null (finding, figures[i]))
      {
        figure_of (finding, figures[i]); /* must be a finite number */
        measured = TRUE;
      }
  g_assert_cmpint (is_null (finding, "unit"), ==, !measured);
  if (measured)
    index_of (units, G_N_ELEMENTS (units), json_object_get_string_member (finding, "unit"));
  if (!is_null (finding, "low") && !is_null (finding, "high"))
    g_assert_cmpfloat (figure_of (finding, "low"), <=, figure_of (finding, "high"));
}

/* One finding: its keys, its figures, its sentence, its remedy. Returns its severity. */
static gsize
check_finding (JsonObject *finding)
{
  assert_keys_begin_with (finding, finding_keys);
  gsize severity = index_of (severities, G_N_ELEMENTS (severities),
                             json_object_get_string_member (finding, "severity"));
  const char *says = json_object_get_string_member (finding, "says");
  gboolean has_remedy = !is_null (finding, "remedy");

  check_limits (finding);
  g_assert_true (g_str_has_suffix (says, "."));
  g_assert_null (strstr (says, "\u00a0"));
  if (strcmp (severities[severity], "curable") == 0)
    g_assert_true (has_remedy);
  if (has_remedy)
    g_assert_cmpstr (json_object_get_string_member (finding, "remedy"), !=, "");
  return severity;
}

/* The verdict is that of the worst finding, and "limiting" its rule. */
static void
check_cell (JsonObject *one)
{
  JsonArray *findings = json_object_get_array_member (one, "findings");
  gsize worst = 0;
  const char *limiting = NULL;

  assert_keys_begin_with (one, cell_keys);
  g_assert_cmpuint (json_array_get_length (findings), >=, 18);
  for (guint i = 0; i < json_array_get_length (findings); i++)
    {
      JsonObject *finding = json_array_get_object_element (findings, i);
      gsize severity = check_finding (finding);
      if (severity > worst)
        {
          worst = severity;
          limiting = json_object_get_string_member (finding, "rule");
        }
    }
  g_assert_cmpuint (verdict_of (one), ==, worst);
  if (worst == 0)
    g_assert_true (is_null (one, "limiting"));
  else
    g_assert_cmpstr (json_object_get_string_member (one, "limiting"), ==, limiting);
}

static void
test_findings (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) root = fit_json (demo);
  for (guint i = 0; i < n_cells (root); i++)
    check_cell (cell_at (root, i));
}

/* Every rule is judged once in each cell. */
static void
test_every_rule (void)
{
  static const char *const rules[] = {
    "signal-kind",    "colour-system", "line-rate",    "field-rate",  "line-count",
    "sync-kind",      "sync-polarity", "sync-level",   "sync-shape",  "line-blanking",
    "field-blanking", "video-level",   "setup",        "termination", "coupling",
    "bandwidth",      "mains-beat",    "aspect",       "visible-area",
  };
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) root = fit_json (demo);
  for (guint i = 0; i < n_cells (root); i++)
    {
      JsonArray *findings = json_object_get_array_member (cell_at (root, i), "findings");
      for (gsize r = 0; r < G_N_ELEMENTS (rules); r++)
        {
          guint times = 0;
          for (guint f = 0; f < json_array_get_length (findings); f++)
            {
              JsonObject *finding = json_array_get_object_element (findings, f);
              times += strcmp (json_object_get_string_member (finding, "rule"), rules[r]) == 0;
            }
          g_assert_cmpuint (times, ==, 1);
        }
    }
}

static void
test_every_verdict (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) root = fit_json (demo);
  guint seen[N_VERDICTS] = { 0 };
  for (guint i = 0; i < n_cells (root); i++)
    seen[verdict_of (cell_at (root, i))]++;
  for (gsize i = 0; i < N_VERDICTS; i++)
    g_assert_true (seen[i] > 0 || i == 1); /* all that matters is known, but for pins */
}

static JsonObject *
finding_of (JsonObject *one, const char *rule)
{
  JsonArray *findings = json_object_get_array_member (one, "findings");
  for (guint i = 0; i < json_array_get_length (findings); i++)
    {
      JsonObject *finding = json_array_get_object_element (findings, i);
      if (strcmp (json_object_get_string_member (finding, "rule"), rule) == 0)
        return finding;
    }
  g_error ("no finding of the rule “%s”", rule);
}

static JsonObject *
cell_called (JsonObject *root, const char *source, const char *input)
{
  for (guint i = 0; i < n_cells (root); i++)
    if (strstr (json_object_get_string_member (cell_at (root, i), "source"), source) != NULL
        && strstr (json_object_get_string_member (cell_at (root, i), "input"), input) != NULL)
      return cell_at (root, i);
  g_error ("no cell of %s at %s", source, input);
}

/* Figures that follow from the sheet by hand. */
static void
test_figures (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) root = fit_json (demo);
  JsonObject *deck = cell_called (root, "Tape deck", "Composite");
  JsonObject *computer = cell_called (root, "Home computer", "RGB");
  JsonObject *line = finding_of (deck, "line-rate");
  JsonObject *field = finding_of (deck, "field-rate");
  JsonObject *sync = finding_of (computer, "sync-level");

  /* SMPTE 170M-2004 11.2: 4.5 MHz/286; the monitor's band as entered */
  g_assert_true (is_near (figure_of (line, "value"), 4.5e6 / 286, 1e-9));
  g_assert_true (is_near (figure_of (line, "low"), 15500, 0));
  g_assert_true (is_near (figure_of (line, "high"), 16000, 0));
  g_assert_cmpstr (json_object_get_string_member (line, "unit"), ==, "Hz");
  g_assert_true (is_near (figure_of (field, "value"), 60 / 1.001, 1e-9));
  /* 5 V from 100 ohm into 75 ohm: 5 x 75/175 V */
  g_assert_true (is_near (figure_of (sync, "value"), 5.0 * 75 / 175, 1e-12));
  g_assert_cmpstr (json_object_get_string_member (sync, "unit"), ==, "V");
  g_assert_cmpstr (json_object_get_string_member (sync, "severity"), ==, "curable");
}

static void
test_one_cell (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (GPtrArray) sources = names_in_file (demo, "source ");
  g_autoptr (GPtrArray) inputs = names_in_file (demo, "input ");
  g_autoptr (Run) run = run_cli ("fit", demo, "--json", "--source", sources->pdata[1], "--input",
                                 inputs->pdata[2], NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_autoptr (JsonObject) all = fit_json (demo);
  g_autoptr (Run) row = run_cli ("fit", demo, "--json", "--source", sources->pdata[1], NULL);
  g_autoptr (JsonObject) row_root = run_json (row);

  g_assert_cmpuint (n_cells (root), ==, 1);
  g_assert_cmpuint (n_cells (row_root), ==, inputs->len);
  g_assert_cmpint (verdict_of (cell_at (root, 0)), ==, verdict_of (cell_at (all, inputs->len + 2)));
}

static void
check_no_such_name (const char *option, const char *nearest)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("fit", demo, option, "Nothing at all", NULL);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_cmpstr (run->out, ==, "");
  assert_one_line (run->err);
  g_assert_true (g_str_has_prefix (run->err, demo));
  g_assert_nonnull (strstr (run->err, "Nothing at all"));
  g_assert_nonnull (strstr (run->err, nearest));
}

static void
test_no_such_name (void)
{
  check_no_such_name ("--source", "nearest");
  check_no_such_name ("--input", "“Composite”");
}

/* Sheets made from the demo */

/* Quotes and backslashes come through JSON; control characters are told in one line. */
static void
test_odd_names (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *quoted = demo_with ("name=Ticket computer, 640x480",
                                       "name=Ticket \"computer\" \\\\ 640\u00d7480");
  g_autofree char *path = write_scratch (folder, "odd.bench", quoted);
  g_autoptr (JsonObject) root = fit_json (path);
  g_assert_nonnull (cell_called (root, "Ticket \"computer\" \\ 640\u00d7480", "Composite"));

  g_autofree char *control = demo_with ("name=Ticket computer, 640x480",
                                        "name=Ticket\\n\\tcomputer \x1b[31m");
  g_autofree char *bad = write_scratch (folder, "control.bench", control);
  g_autoptr (Run) run = run_cli ("fit", bad, NULL);
  g_assert_cmpint (run->status, ==, 1);
  assert_one_line (run->err);
  g_assert_null (strchr (run->err, '\x1b'));
  g_assert_nonnull (strstr (run->err, "[source 7] name: "));
  remove_scratch (folder);
}

/* A sheet without sources is sound and has no cells. */
static void
test_no_sources (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *text = read_text (demo);
  *strstr (text, "[source 1]") = '\0';
  g_autofree char *path = write_scratch (folder, "none.bench", text);
  g_autoptr (Run) run = run_cli ("fit", path, "--findings", NULL);
  g_autoptr (Run) named = run_cli ("fit", path, "--source", "x", NULL);
  g_autoptr (JsonObject) root = fit_json (path);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "no sources"));
  g_assert_cmpuint (n_cells (root), ==, 0);
  g_assert_cmpint (named->status, ==, 1);
  assert_one_line (named->err);
  remove_scratch (folder);
}

/* A set for 100 to 120 V at 230 V: the first line of the text, and the first finding of every cell, whatever
 * else there is. 1.5 × 120 V × 1.4 A = 252 VA, to tens 260 VA (apparent power; half as much again is common
 * practice, no source). */
static void
test_danger (void)
{
  g_autofree char *path = source_path ("tests/sheets/33-mains-of-too-many-volts.bench");
  g_autoptr (JsonObject) root = fit_json (path);
  JsonObject *mains = json_object_get_object_member (root, "mains");
  g_autoptr (Run) text = run_cli ("fit", path, NULL);
  g_autoptr (Run) plan = run_cli ("hookup", path, "-s", "1", "-i", "2", NULL);

  g_assert_true (json_object_get_boolean_member (mains, "danger"));
  g_assert_cmpstr (json_object_get_string_member (mains, "voltage"), ==, "curable");
  g_assert_cmpstr (json_object_get_string_member (mains, "frequency"), ==, "ok");
  for (guint i = 0; i < n_cells (root); i++)
    {
      JsonArray *findings = json_object_get_array_member (cell_at (root, i), "findings");
      JsonObject *first = json_array_get_object_element (findings, 0);
      g_assert_cmpstr (json_object_get_string_member (first, "rule"), ==, "mains");
      g_assert_true (json_object_get_boolean_member (first, "danger"));
      g_assert_nonnull (strstr (json_object_get_string_member (first, "remedy"), "260 VA"));
      g_assert_cmpstr (json_object_get_string_member (cell_at (root, i), "verdict"), ==,
                       "with-parts");
    }
  g_assert_true (g_str_has_prefix (text->out, "⊘ Danger: The supply of 230 V is outside"));
  g_assert_true (g_str_has_prefix (plan->out, "⊘ Danger: The supply of 230 V is outside"));
  g_assert_nonnull (strstr (plan->out, "1. mains transformer"));
}

/* Where a plate or a supply is not known that is said first, and each cell names the figure. */
static void
test_mains_not_judged (void)
{
  g_autofree char *path = source_path ("tests/sheets/15-terminations.bench");
  g_autoptr (JsonObject) root = fit_json (path);
  JsonObject *mains = json_object_get_object_member (root, "mains");
  g_autoptr (Run) text = run_cli ("fit", path, NULL);

  g_assert_false (json_object_get_boolean_member (mains, "danger"));
  g_assert_true (is_null (mains, "voltage"));
  g_assert_true (is_null (mains, "frequency"));
  JsonArray *findings = json_object_get_array_member (cell_at (root, 0), "findings");
  JsonObject *first = json_array_get_object_element (findings, 0);
  g_assert_cmpstr (json_object_get_string_member (first, "rule"), ==, "mains");
  g_assert_cmpstr (json_object_get_string_member (first, "severity"), ==, "not-judged");
  g_assert_cmpstr (json_object_get_string_member (first, "lacks"), ==, "monitor.mains_voltage");
  g_assert_true (g_str_has_prefix (text->out, "? Mains not judged."));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit/cells", test_cells);
  g_test_add_func ("/fit/findings", test_findings);
  g_test_add_func ("/fit/every-rule", test_every_rule);
  g_test_add_func ("/fit/every-verdict", test_every_verdict);
  g_test_add_func ("/fit/figures", test_figures);
  g_test_add_func ("/fit/one-cell", test_one_cell);
  g_test_add_func ("/fit/no-such-name", test_no_such_name);
  g_test_add_func ("/fit/odd-names", test_odd_names);
  g_test_add_func ("/fit/no-sources", test_no_sources);
  g_test_add_func ("/fit/danger", test_danger);
  g_test_add_func ("/fit/mains-not-judged", test_mains_not_judged);
  return g_test_run ();
}
