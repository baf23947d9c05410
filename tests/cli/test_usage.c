/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command line: exit status, one line of complaint, output that cannot be written. */
#include <string.h>

#include <json-glib/json-glib.h>

#include "run.h"

/* What is wrong usage: status 2, nothing on standard output, one line that points to the help. */
static const struct
{
  const char *path;
  const char *args[6];
  const char *says;
} wrong[] = {
  { "nothing", { NULL }, "a command is missing" },
  { "no-such-command", { "fix", NULL }, "“fix”" },
  { "no-such-option", { "--fix", NULL }, "“--fix”" },
  { "after-version", { "--version", "x", NULL }, "--version" },
  { "help-of-nothing", { "help", "fix", NULL }, "“fix”" },
  { "help-of-two", { "help", "fit", "timing", NULL }, "one command" },
  { "timing-nothing", { "timing", NULL }, "RASTER" },
  { "timing-both", { "timing", "--list", "480i", NULL }, "--list" },
  { "timing-two", { "timing", "480i", "576i", NULL }, "“576i”" },
  { "timing-option", { "timing", "--fix", NULL }, "--fix" },
  { "timing-two-origins", { "timing", "480i", "--cvt", "640x480@60", NULL }, "--cvt" },
  { "timing-two-options", { "timing", "--gtf", "a", "--cvt", "b", NULL }, "--gtf" },
  { "timing-list-origin", { "timing", "--list", "--cvt", "640x480@60", NULL }, "--list" },
  { "timing-list-modeline", { "timing", "--list", "--as-modeline", NULL }, "--list" },
  { "timing-which", { "timing", "480i", "--which", "1", NULL }, "--which does not go with RASTER" },
  { "timing-cvt-interlaced", { "timing", "--cvt", "a", "--interlaced", NULL }, "--interlaced" },
  { "timing-gtf-no-size", { "timing", "--gtf-line-rate", "a", NULL }, "needs --active" },
  { "timing-monitor-no-rate",
    { "timing", "--for-monitor", "a", "--active", "640x480", NULL },
    "needs --field-rate" },
  { "timing-monitor-margins", { "timing", "--edid", "a", "--margins", NULL }, "--margins" },
  { "timing-no-value", { "timing", "--cvt", NULL }, "--cvt" },
  { "fit-nothing", { "fit", NULL }, "SHEET" },
  { "fit-two", { "fit", "a", "b", NULL }, "“b”" },
  { "fit-no-name", { "fit", "a", "--source", NULL }, "--source" },
  { "sheet-check-nothing", { "sheet-check", NULL }, "SHEET" },
  { "sheet-check-both", { "sheet-check", "a", "--list", NULL }, "--list" },
  { "sheet-check-csv", { "sheet-check", "a", "--csv", NULL }, "--csv goes with --list" },
  { "help-of-two-json", { "help", "fit", "timing", "--json", NULL }, "one command" },
  { "edid-nothing", { "edid", NULL }, "SHEET" },
  { "edid-no-file", { "edid", "a.bench", NULL }, "-o" },
  { "report-nothing", { "report", NULL }, "SHEET" },
  { "report-no-file", { "report", "a.bench", NULL }, "-o" },
  { "catalogue-part", { "catalogue", "tubes", NULL }, "“tubes”" },
};

static void
test_wrong (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (Run) run = run_args (wrong[i].args);
  g_assert_cmpint (run->status, ==, 2);
  g_assert_cmpstr (run->out, ==, "");
  assert_one_line (run->err);
  g_assert_nonnull (strstr (run->err, wrong[i].says));
  g_assert_nonnull (strstr (run->err, "--help"));
}

static void
test_version (void)
{
  g_autoptr (Run) run = run_cli ("--version", NULL);
  g_assert_cmpint (run->status, ==, 0);
  assert_one_line (run->out);
  g_assert_true (g_regex_match_simple ("^breezeway-cli \\d+\\.\\d+\\.\\d+\n$", run->out,
                                       G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT));
}

static const char *const commands[] = {
  "timing", "identify",    "solve",  "levels",    "readings", "cause",   "detail",
  "pad",    "draw",        "sync",   "waveform",  "edid",     "display", "fit",
  "hookup", "sheet-check", "report", "catalogue", "capacitor", "field-scan", "line-scan",
  "supply", "work-back", NULL,
};

static void
test_help (void)
{
  g_autoptr (Run) run = run_cli ("--help", NULL);
  g_autoptr (Run) word = run_cli ("help", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_cmpstr (run->out, ==, word->out);
  for (const char *const *name = commands; *name != NULL; name++)
    g_assert_nonnull (strstr (run->out, *name));
}

static void
test_help_of_commands (void)
{
  for (const char *const *name = commands; *name != NULL; name++)
    {
      g_autofree char *usage = g_strconcat ("breezeway-cli ", *name, NULL);
      g_autoptr (Run) option = run_cli (*name, "--help", NULL);
      g_autoptr (Run) word = run_cli ("help", *name, NULL);
      g_assert_cmpint (option->status, ==, 0);
      g_assert_cmpstr (option->err, ==, "");
      g_assert_cmpstr (option->out, ==, word->out);
      g_assert_nonnull (strstr (option->out, usage));
      g_assert_nonnull (strstr (option->out, "--json"));
    }
}

/* The help for scripts lists the commands of the help for people, in its order. */
static void
test_help_for_scripts (void)
{
  g_autoptr (Run) run = run_cli ("help", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_assert_cmpint (run->status, ==, 0);
  g_assert_true (json_parser_load_from_data (parser, run->out, -1, NULL));
  JsonObject *all = json_node_get_object (json_parser_get_root (parser));
  JsonArray *list = json_object_get_array_member (all, "commands");

  g_assert_cmpint (json_object_get_int_member (all, "format"), ==, 1);
  g_assert_cmpuint (json_array_get_length (list), ==, G_N_ELEMENTS (commands) - 1);
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      const char *name = json_object_get_string_member (json_array_get_object_element (list, i),
                                                        "command");
      g_assert_true (g_strv_contains (commands, name));
    }
}

static guint
count_options (const char *help)
{
  guint n = 0;
  for (const char *p = help; (p = strstr (p, "\n  -")) != NULL; p++)
    n++;
  return n;
}

/* Each option of the help for scripts stands in the help for people, and no other does. */
static void
test_options_for_scripts (gconstpointer data)
{
  const char *name = data;
  g_autoptr (Run) people = run_cli ("help", name, NULL);
  g_autoptr (Run) scripts = run_cli ("help", name, "--json", NULL);
  g_autoptr (Run) option = run_cli (name, "--json", "--help", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();

  g_assert_cmpint (scripts->status, ==, 0);
  g_assert_cmpstr (option->out, ==, scripts->out);
  g_assert_true (json_parser_load_from_data (parser, scripts->out, -1, NULL));
  JsonObject *command = json_node_get_object (json_parser_get_root (parser));
  JsonArray *list = json_object_get_array_member (command, "options");
  g_assert_cmpint (json_object_get_int_member (command, "format"), ==, 1);
  g_assert_cmpstr (json_object_get_string_member (command, "command"), ==, name);
  g_assert_cmpuint (json_array_get_length (list), ==, count_options (people->out));
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonObject *one = json_array_get_object_element (list, i);
      g_assert_nonnull (strstr (people->out, json_object_get_string_member (one, "name")));
      g_assert_nonnull (strstr (people->out, json_object_get_string_member (one, "meaning")));
    }
}

/* Output that cannot be written is status 1: on a full disk, or where the stream is closed. */
static const char *const writers[] = {
  "--version",
  "--help",
  "timing --help",
  "help --json",
  "help timing --json",
  "timing 480i",
  "timing 480i --json",
  "timing --list",
  "timing --cvt 640x480@60 --as-modeline",
  "timing --for-monitor \"$DEMO\" --active 640x480 --field-rate 60",
  "identify --line-rate 15.734kHz",
  "identify --line-rate 15.734kHz --json",
  "solve --list",
  "solve line-rate=15.734kHz",
  "solve line-rate=15.734kHz --json",
  "readings --list",
  "readings --standard smpte-170m line_sync=4.7us",
  "readings --standard smpte-170m line_sync=4.7us --json",
  "catalogue",
  "fit \"$DEMO\"",
  "fit \"$DEMO\" --json",
  "sheet-check \"$DEMO\"",
  "sheet-check --list",
};

static void
check_cannot_write (const char *command, const char *redirection)
{
  g_autofree char *demo = demo_path ();
  g_autofree char *script = g_strdup_printf ("DEMO='%s'; exec \"$BW_CLI\" %s %s", demo, command,
                                             redirection);
  const char *const argv[] = { "/bin/sh", "-c", script, NULL };
  g_autoptr (Run) run = run_argv (argv, NULL);
  if (run->status != 1)
    g_error ("“%s %s” ends with %d", command, redirection, run->status);
  assert_one_line (run->err);
}

static void
test_full_disk (void)
{
  if (!g_file_test ("/dev/full", G_FILE_TEST_EXISTS))
    {
      g_test_skip ("this system has no /dev/full");
      return;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (writers); i++)
    check_cannot_write (writers[i], ">/dev/full");
}

static void
test_closed_output (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (writers); i++)
    check_cannot_write (writers[i], ">&-");
}

/* With all streams closed, the program ends all the same, and the sheet is as it was. */
static void
test_all_closed (void)
{
  g_autofree char *demo = demo_path ();
  g_autofree char *before = read_text (demo);
  g_autofree char *script = g_strdup_printf ("exec \"$BW_CLI\" fit '%s' <&- >&- 2>&-", demo);
  const char *const argv[] = { "/bin/sh", "-c", script, NULL };
  g_autoptr (Run) run = run_argv (argv, NULL);
  g_autofree char *after = read_text (demo);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_cmpstr (before, ==, after);
}

/* What follows -- is no option. */
static void
test_double_dash (void)
{
  g_autoptr (Run) run = run_cli ("timing", "--", "--list", NULL);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_nonnull (strstr (run->err, "“--list”"));
}

/* Arguments that are no UTF-8 are taken as far as they go. */
static void
test_odd_bytes (void)
{
  g_autoptr (Run) run = run_cli ("timing", "\xff\xfe", NULL);
  g_autoptr (Run) sheet = run_cli ("fit", "\xff\xfe.bench", NULL);
  g_assert_cmpint (run->status, ==, 1);
  assert_one_line (run->err);
  g_assert_cmpint (sheet->status, ==, 1);
  assert_one_line (sheet->err);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autofree char *path = g_strconcat ("/usage/wrong/", wrong[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_wrong);
    }
  g_test_add_func ("/usage/version", test_version);
  g_test_add_func ("/usage/help", test_help);
  g_test_add_func ("/usage/help-of-commands", test_help_of_commands);
  g_test_add_func ("/usage/help-for-scripts", test_help_for_scripts);
  for (const char *const *name = commands; *name != NULL; name++)
    {
      g_autofree char *path = g_strconcat ("/usage/options-for-scripts/", *name, NULL);
      g_test_add_data_func (path, *name, test_options_for_scripts);
    }
  g_test_add_func ("/usage/full-disk", test_full_disk);
  g_test_add_func ("/usage/closed-output", test_closed_output);
  g_test_add_func ("/usage/all-closed", test_all_closed);
  g_test_add_func ("/usage/double-dash", test_double_dash);
  g_test_add_func ("/usage/odd-bytes", test_odd_bytes);
  return g_test_run ();
}
