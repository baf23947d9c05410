/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "-" in place of a file, the one rule for suffixes, and the one meaning of a short option. */
#include <stdlib.h>
#include <string.h>

#include "run.h"

/* Runs a line of the shell, in which $CLI is the program, $DEMO the demonstration and $DIR a folder of
 * the test's own. */
static Run *
run_shell (const char *folder, const char *line)
{
  g_autofree char *demo = demo_path ();
  g_autofree char *script = g_strdup_printf ("set -e; DEMO='%s'; DIR='%s'; CLI=\"$BW_CLI\"; %s", demo,
                                             folder, line);
  const char *const argv[] = { "/bin/sh", "-c", script, NULL };
  return run_argv (argv, NULL);
}

/* Commands that give the same whether they read or write a file or a stream. */
static const struct
{
  const char *path;
  const char *by_file;
  const char *by_stream;
} same[] = {
  { "fit", "$CLI fit $DEMO", "$CLI fit - <$DEMO" },
  { "fit-pipe", "$CLI fit $DEMO --csv", "cat $DEMO | $CLI fit - --csv" },
  { "detail", "$CLI detail $DEMO -s 1 -i 1", "$CLI detail - -s 1 -i 1 <$DEMO" },
  { "hookup", "$CLI hookup $DEMO -s 4 -i 3", "$CLI hookup - -s 4 -i 3 <$DEMO" },
  { "cause", "$CLI cause $DEMO -s 1 -i 1 --white 1.4V",
    "$CLI cause - -s 1 -i 1 --white 1.4V <$DEMO" },
  { "for-monitor", "$CLI timing --for-monitor $DEMO --active 640x480 --field-rate 60Hz",
    "$CLI timing --for-monitor - --active 640x480 --field-rate 60Hz <$DEMO" },
  { "edid-in", "$CLI edid $DEMO -o $DIR/m.bin && $CLI timing --edid $DIR/m.bin --as-modeline",
    "$CLI edid - -o - <$DEMO | $CLI timing --edid - --as-modeline" },
  { "draw-svg", "$CLI draw 480i --view line -o $DIR/a.svg && cat $DIR/a.svg",
    "$CLI draw 480i --view line -o -" },
  { "draw-svg-by-suffix", "$CLI draw 480i --view map -o $DIR/a.svg && cat $DIR/a.svg",
    "$CLI draw 480i --view map -o -.svg" },
  { "sync", "$CLI sync 480i --gate and -o $DIR/a.svg && cat $DIR/a.svg",
    "$CLI sync 480i --gate and -o -" },
  { "waveform-csv", "$CLI waveform --system pal-b -k composite -o $DIR/a.csv && cat $DIR/a.csv",
    "$CLI waveform --system pal-b -k composite -o -" },
  { "waveform-svg",
    "$CLI waveform --system pal-b -k composite --theme dark --size 600x400 -o $DIR/a.svg && "
    "cat $DIR/a.svg",
    "$CLI waveform --system pal-b -k composite --theme dark --size 600x400 -o -.svg" },
  { "hookup-svg",
    "$CLI hookup $DEMO -s 4 -i 3 --theme light --size 900x500 -o $DIR/a.svg >/dev/null && "
    "cat $DIR/a.svg",
    "$CLI hookup $DEMO -s 4 -i 3 --theme light --size 900x500 -o -" },
  { "upper-case", "$CLI draw 480i --view line -o $DIR/A.SVG && cat $DIR/A.SVG",
    "$CLI draw 480i --view line -o -" },
};

static void
test_same (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autofree char *folder = scratch_folder ();
  g_autoptr (Run) by_file = run_shell (folder, same[i].by_file);
  g_autoptr (Run) by_stream = run_shell (folder, same[i].by_stream);

  g_assert_cmpint (by_file->status, ==, 0);
  g_assert_cmpint (by_stream->status, ==, 0);
  g_assert_cmpuint (strlen (by_file->out), >, 50);
  g_assert_cmpstr (by_file->out, ==, by_stream->out);
  g_assert_cmpstr (by_file->err, ==, by_stream->err);
  remove_scratch (folder);
}

/* Files that are no text: their first bytes, as their standards have them. */
static void
test_kinds (void)
{
  static const struct
  {
    const char *line;
    const char *begins;
  } kinds[] = {
    { "$CLI draw 480i --view line -o -.pdf", "%PDF-" },
    { "$CLI draw 480i --view line -o -.png", "\x89PNG" },
    { "$CLI report $DEMO -o -", "%PDF-" },
    { "$CLI hookup $DEMO -s 4 -i 3 --pdf -", "%PDF-" },
    { "$CLI hookup $DEMO -s 4 -i 3 --csv -.csv", "" },
  };
  g_autofree char *folder = scratch_folder ();
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *line = g_strdup_printf ("%s >$DIR/x && head -c 5 $DIR/x", kinds[i].line);
      g_autoptr (Run) run = run_shell (folder, line);
      g_assert_cmpint (run->status, ==, 0);
      g_assert_true (g_str_has_prefix (run->out, kinds[i].begins));
    }
  remove_scratch (folder);
}

/* What cannot be is said in one line; nothing comes on standard output. */
static const struct
{
  const char *path;
  const char *line;
  int status;
  const char *says;
} refused[] = {
  { "empty-input", "$CLI fit - </dev/null", 1, "standard input: not a bench sheet" },
  { "bad-input", "echo x | $CLI sheet-check -", 1, "standard input" },
  { "no-such-source", "$CLI detail - -s x -i 1 <$DEMO", 1, "standard input: no source" },
  { "too-large", "yes | head -c 5000000 | $CLI fit -", 1, "4 MiB" },
  { "edid-short", "echo x | $CLI timing --edid -", 1, "standard input: EDID" },
  { "closed-input", "$CLI fit - <&-", 1, "standard input" },
  { "json-and-stream", "$CLI draw 480i --view line -o - --json", 2,
    "cannot both be standard output" },
  { "csv-and-stream", "$CLI sync 480i --gate and -o - --csv", 2, "cannot both be standard output" },
  { "keys-and-stream", "$CLI draw 480i --view line -o - --keys", 2, "--keys and the file" },
  { "two-streams", "$CLI hookup $DEMO -s 4 -i 3 -o - --pdf -", 2, "only one file" },
  { "unknown-suffix", "$CLI draw 480i --view line -o -.gif", 2, ".svg, .pdf, .png" },
  { "no-suffix", "$CLI waveform --system pal-b -k composite -o x", 2, ".csv, .svg, .pdf, .png" },
  { "other-kind", "$CLI report $DEMO -o x.svg", 2, ".pdf" },
  { "other-kind-of-edid", "$CLI edid $DEMO -o x.pdf", 2, ".bin" },
  { "look-of-samples", "$CLI waveform --system pal-b -k composite -o - --theme dark", 2,
    "--theme" },
  { "look-of-nothing", "$CLI hookup $DEMO -s 4 -i 3 --size 9x9", 2, "--size goes with -o" },
  { "full", "$CLI report $DEMO -o - >/dev/full", 1, "standard output" },
};

static void
test_refused (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autofree char *folder = scratch_folder ();
  g_autoptr (Run) run = run_shell (folder, refused[i].line);
  assert_refused (run, refused[i].status, refused[i].says);
  remove_scratch (folder);
}

/* A file that is really called "-" is written "./-". */
static void
test_named_so (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autoptr (Run) run = run_shell (folder, "cd $DIR && $CLI edid $DEMO -o ./- && wc -c <./-");
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpint (atoi (run->out), ==, 128);
  remove_scratch (folder);
}

/* In all commands a letter means one option, and an option that has one has it everywhere. */
static void
test_letters (void)
{
  g_autoptr (GHashTable) by_letter = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GHashTable) by_name = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (Run) run = run_cli ("help", "--json", NULL);
  g_autoptr (JsonObject) all = run_json (run);
  JsonArray *commands = json_object_get_array_member (all, "commands");

  for (guint i = 0; i < json_array_get_length (commands); i++)
    {
      const char *command = json_object_get_string_member (
          json_array_get_object_element (commands, i), "command");
      g_autoptr (Run) help = run_cli ("help", command, "--json", NULL);
      g_autoptr (JsonObject) one = run_json (help);
      JsonArray *options = json_object_get_array_member (one, "options");
      for (guint j = 0; j < json_array_get_length (options); j++)
        {
          JsonObject *option = json_array_get_object_element (options, j);
          const char *name = json_object_get_string_member (option, "name");
          const char *letter = is_null (option, "letter")
                                   ? "none"
                                   : json_object_get_string_member (option, "letter");
          const char *before = g_hash_table_lookup (by_name, name);
          if (before != NULL && strcmp (before, letter) != 0)
            g_error ("%s %s has the letter %s, elsewhere %s", command, name, letter, before);
          g_hash_table_insert (by_name, g_strdup (name), g_strdup (letter));
          const char *means = g_hash_table_lookup (by_letter, letter);
          if (strcmp (letter, "none") != 0 && means != NULL && strcmp (means, name) != 0)
            g_error ("%s %s means %s, elsewhere %s", command, letter, name, means);
          g_hash_table_insert (by_letter, g_strdup (letter), g_strdup (name));
        }
    }
  g_assert_cmpstr (g_hash_table_lookup (by_letter, "-s"), ==, "--source");
  g_assert_cmpstr (g_hash_table_lookup (by_letter, "-o"), ==, "--output");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (same); i++)
    {
      g_autofree char *path = g_strconcat ("/streams/same/", same[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_same);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *path = g_strconcat ("/streams/refused/", refused[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_refused);
    }
  g_test_add_func ("/streams/kinds", test_kinds);
  g_test_add_func ("/streams/named-so", test_named_so);
  g_test_add_func ("/streams/letters", test_letters);
  return g_test_run ();
}
