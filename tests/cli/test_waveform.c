/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli waveform`: samples as comma-separated values, against the standards' own figures;
 * drawings by their first bytes. */
#include <math.h>
#include <string.h>

#include "run.h"

typedef struct
{
  char **heads;
  GArray *cells; /* double, row by row */
  guint columns;
  guint rows;
} Csv;

static void
csv_free (Csv *csv)
{
  g_strfreev (csv->heads);
  g_array_unref (csv->cells);
  g_free (csv);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Csv, csv_free)

static Csv *
read_csv (const char *path)
{
  g_autofree char *text = read_text (path);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  Csv *csv = g_new0 (Csv, 1);

  csv->heads = g_strsplit (lines[0], ",", -1);
  csv->columns = g_strv_length (csv->heads);
  csv->cells = g_array_new (FALSE, FALSE, sizeof (double));
  for (char **line = lines + 1; *line != NULL && **line != '\0'; line++)
    {
      g_auto (GStrv) cells = g_strsplit (*line, ",", -1);
      g_assert_cmpuint (g_strv_length (cells), ==, csv->columns);
      for (char **at = cells; *at != NULL; at++)
        {
          char *end;
          double value = g_ascii_strtod (*at, &end);
          g_assert_true (end != *at && *end == '\0' && isfinite (value));
          g_array_append_val (csv->cells, value);
        }
      csv->rows++;
    }
  return csv;
}

static double
at (const Csv *csv, guint row, guint column)
{
  return g_array_index (csv->cells, double, row * csv->columns + column);
}

/* The level of @column at the sample nearest to @time_s. */
static double
level_at (const Csv *csv, guint column, double time_s)
{
  double step_s = at (csv, 1, 0) - at (csv, 0, 0);
  return at (csv, (guint) lround ((time_s - at (csv, 0, 0)) / step_s), column);
}

/* Runs it into @name in @folder; ends in NULL. */
static char *
make (const char *folder, const char *name, const char *const *options)
{
  char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GPtrArray) args = g_ptr_array_new ();
  g_ptr_array_add (args, (gpointer) "waveform");
  for (; *options != NULL; options++)
    g_ptr_array_add (args, (gpointer) *options);
  g_ptr_array_add (args, (gpointer) "-o");
  g_ptr_array_add (args, path);
  g_ptr_array_add (args, NULL);
  g_autoptr (Run) run = run_args ((const char *const *) args->pdata);
  if (run->status != 0 || *run->out != '\0' || *run->err != '\0')
    g_error ("%d %s%s", run->status, run->out, run->err);
  return path;
}

#define ARGS(...) ((const char *const[]){ __VA_ARGS__, NULL })

/* ITU-R BT.1700 and BT.470-6: 700 and 300 mV, sync 4.7 µs, picture from 10.5 µs after 0H, 864
 * samples a line at 13.5 MHz (BT.601). */
static void
test_luma (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = make (folder, "luma.csv",
                                ARGS ("-r", "625-50-interlaced", "--system", "none", "-k",
                                      "luminance", "--content", "ramp", "--line", "100"));
  g_autoptr (Csv) csv = read_csv (path);
  g_assert_cmpstr (csv->heads[0], ==, "time_s");
  g_assert_cmpstr (csv->heads[1], ==, "video_v");
  g_assert_cmpuint (csv->columns, ==, 2);
  g_assert_cmpuint (csv->rows, ==, 864);
  g_assert_true (is_near (at (csv, 0, 0), 0, 1e-12));
  g_assert_true (is_near (at (csv, 1, 0), 1 / 13.5e6, 1e-12));
  g_assert_true (is_near (at (csv, 0, 1), -0.15, 1e-6));
  g_assert_true (is_near (level_at (csv, 1, 2.4e-6), -0.3, 1e-6));
  g_assert_true (is_near (level_at (csv, 1, 8e-6), 0, 1e-6));
  g_assert_true (is_near (level_at (csv, 1, 36.5e-6), 0.35, 0.7 * 0.5 / 13.5 / 52));
  remove_scratch (folder);
}

/* VESA DMT 04: 640 × 480 in 800 × 525 at 25.175 MHz; one frame, with H and V of 5 V, negative: logic
 * rests high and its pulses are at 0 V (common practice, no source). */
static void
test_rgb_frame (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = make (folder, "rgb.csv",
                                ARGS ("-r", "vesa-dmt-04", "--system", "none", "-k", "rgb",
                                      "--span", "frame"));
  g_autoptr (Csv) csv = read_csv (path);
  static const char *const heads[] = { "time_s", "r_v", "g_v", "b_v", "h_v", "v_v" };
  g_assert_cmpuint (csv->columns, ==, G_N_ELEMENTS (heads));
  for (guint i = 0; i < csv->columns; i++)
    g_assert_cmpstr (csv->heads[i], ==, heads[i]);
  g_assert_cmpuint (csv->rows, ==, 800 * 525);
  g_assert_true (is_near (at (csv, 48, 4), 0, 1e-6)); /* in line sync, and in field sync */
  g_assert_true (is_near (at (csv, 48, 5), 0, 1e-6));
  g_assert_true (is_near (at (csv, 800 * 200 + 700, 4), 5, 1e-6));
  g_assert_true (is_near (at (csv, 800 * 200 + 700, 5), 5, 1e-6));
  remove_scratch (folder);
}

/* SMPTE 170M-2004: 910 samples a line at 4 × subcarrier (also SMPTE 244M), sync −40 IRE of 140 to
 * the volt; frames of the colour sequence differ in the sign of the subcarrier. An input without
 * its 75 Ω sees twice the level, and two loads make two thirds of it. */
static void
test_loads (void)
{
  static const struct
  {
    const char *loads;
    double share;
  } cases[] = { { "none", 2 }, { "one", 1 }, { "two", 2.0 / 3 } };
  g_autofree char *folder = scratch_folder ();
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = make (folder, "ntsc.csv",
                                    ARGS ("--system", "ntsc-m", "-k", "composite", "--loads",
                                          cases[i].loads));
      g_autoptr (Csv) csv = read_csv (path);
      g_assert_cmpuint (csv->rows, ==, 910);
      g_assert_true (is_near (level_at (csv, 1, 2.4e-6), cases[i].share * -40.0 / 140, 1e-6));
    }
  remove_scratch (folder);
}

static void
test_frames (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *first = make (folder, "0.csv",
                                 ARGS ("--system", "ntsc-m", "-k", "yc", "--line", "50"));
  g_autofree char *second = make (folder, "1.csv",
                                  ARGS ("--system", "ntsc-m", "-k", "yc", "--line", "50", "--frame",
                                        "1"));
  g_autoptr (Csv) a = read_csv (first);
  g_autoptr (Csv) b = read_csv (second);
  g_assert_cmpuint (a->rows, ==, b->rows);
  double most = 0;
  for (guint row = 0; row < a->rows; row++)
    {
      g_assert_true (is_near (at (a, row, 0), at (b, row, 0), 2e-12));
      g_assert_true (is_near (at (a, row, 1), at (b, row, 1), 1e-9));
      g_assert_true (is_near (at (a, row, 2), -at (b, row, 2), 1e-9));
      most = fmax (most, at (a, row, 2));
    }
  g_assert_cmpfloat (most, >, 0.2);
  remove_scratch (folder);
}

/* Of the demonstration sheet, whose first source and input are composite. */
static void
test_sheet (void)
{
  g_autofree char *demo = demo_path ();
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path
      = make (folder, "sheet.csv", ARGS (demo, "--source", "Tape deck with the founder's film",
                                         "--input", "Composite"));
  g_autoptr (Csv) csv = read_csv (path);
  g_autoptr (Run) run = run_cli ("waveform", demo, "--source", "Tape deck with the founder's film",
                                 "--input", "Composite", "--json", "-o", path, NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_cmpuint (csv->columns, ==, 2);
  g_assert_cmpfloat (level_at (csv, 1, 2.4e-6), <, -0.2);
  g_assert_cmpstr (json_object_get_string_member (root, "kind"), ==, "composite");
  g_assert_true (is_near (figure_of (root, "samples"), csv->rows, 0));
  remove_scratch (folder);
}

static void
test_drawings (void)
{
  static const struct
  {
    const char *name;
    const char *begins;
  } files[] = { { "a.svg", "<?xml" }, { "a.pdf", "%PDF-" }, { "a.png", "\x89PNG" } };
  g_autofree char *folder = scratch_folder ();
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = make (folder, files[i].name,
                                    ARGS ("--system", "pal-b", "-k", "composite"));
      g_autofree char *bytes = NULL;
      gsize length;
      g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      g_assert_cmpuint (length, >, 1000);
      g_assert_cmpint (memcmp (bytes, files[i].begins, strlen (files[i].begins)), ==, 0);
    }
  remove_scratch (folder);
}

/* What the trade does use: 525-line PAL at 4.43 MHz, and a raster of half the lines, progressive. */
static void
test_other_lines (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *mixed = make (folder, "a.csv",
                                 ARGS ("--system", "pal-60", "-k", "composite", "-r",
                                       "525-59.94-interlaced"));
  g_autofree char *half = make (folder, "b.csv",
                                ARGS ("--system", "ntsc-m", "-k", "composite", "-r",
                                      "262-60.05-progressive"));
  g_autofree char *rgb = make (folder, "c.csv",
                               ARGS ("--system", "pal-b", "-k", "rgb", "-r",
                                     "525-59.94-interlaced"));
  g_autoptr (Csv) csv = read_csv (mixed);
  g_assert_cmpuint (csv->columns, ==, 2);
  g_assert_true (g_file_test (half, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (rgb, G_FILE_TEST_EXISTS));
  remove_scratch (folder);
}

/* In a locale with a decimal comma the file has points. */
static void
test_locale (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "a.csv", NULL);
  g_auto (GStrv) environment = g_environ_setenv (g_get_environ (), "LC_ALL", "de_DE.UTF-8", TRUE);
  g_autoptr (Run) run = run_cli_in (environment, "waveform", "--system", "pal-b", "-k", "composite",
                                    "-o", path, NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_autoptr (Csv) csv = read_csv (path);
  g_assert_cmpuint (csv->columns, ==, 2);
  remove_scratch (folder);
}

static void
test_refused (void)
{
  static const struct
  {
    const char *args[12];
    int status;
    const char *says;
  } cases[] = {
    { { "--system", "pal-b", "-k", "composite" }, 2, "-o FILE" },
    { { "--system", "pal-b", "-k", "composite", "-o", "a.txt" }, 2, ".csv" },
    { { "--system", "pal-b", "-o", "a.csv" }, 2, "--kind" },
    { { "--system", "none", "-k", "rgb", "-o", "a.csv" }, 2, "--raster" },
    { { "--system", "pal-b", "-k", "yc", "--span", "frame", "-o", "a.svg" }, 2, "--span frame" },
    { { "--system", "pal-x", "-k", "yc", "-o", "a.csv" }, 1, "pal-x" },
    { { "--system", "pal-b", "-k", "yc", "--sync", "on-green", "-o", "a.csv" }, 1, "on-green" },
    { { "--system", "pal-b", "-k", "yc", "--content", "fog", "-o", "a.csv" },
      1,
      "pulse-and-window" },
    { { "--system", "pal-b", "-k", "yc", "-b", "80", "-o", "a.csv" }, 1, "75, 100" },
    { { "--system", "pal-b", "-k", "yc", "--line", "626", "-o", "a.csv" }, 1, "1 to 625" },
    { { "--system", "pal-b", "-k", "yc", "--line", "0", "-o", "a.csv" }, 1, "1 to 625" },
    { { "--system", "pal-b", "-k", "yc", "-r", "525-59.94-interlaced", "-o", "a.csv" },
      1,
      "625 lines" },
    { { "--system", "ntsc-m", "-k", "composite", "-r", "625-50-interlaced", "-o", "a.csv" },
      1,
      "525 lines" },
    { { "--system", "pal-b", "-k", "yc", "--frame", "-1", "-o", "a.csv" }, 1, "--frame" },
    { { "--system", "pal-b", "-k", "yc", "--rate", "9MHz", "-o", "a.csv" }, 1, "twice" },
    { { "--system", "pal-b", "-k", "yc", "--rate", "9GHz", "--span", "frame", "-o", "a.csv" },
      1,
      "1 GiB" },
    { { "--system", "pal-b", "-k", "composite", "-r", "vesa-dmt-04", "-o", "a.csv" }, 1, "burst" },
    { { "no-such.bench", "-o", "a.csv" }, 1, "no-such.bench" },
    { { "no-such.bench", "-k", "rgb", "-o", "a.csv" }, 2, "SHEET" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const char *args[G_N_ELEMENTS (cases[i].args) + 1] = { "waveform" };
      memcpy (args + 1, cases[i].args, sizeof cases[i].args);
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, cases[i].status, cases[i].says);
      g_assert_false (g_file_test ("a.csv", G_FILE_TEST_EXISTS));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cli/waveform/luma", test_luma);
  g_test_add_func ("/cli/waveform/rgb-frame", test_rgb_frame);
  g_test_add_func ("/cli/waveform/loads", test_loads);
  g_test_add_func ("/cli/waveform/frames", test_frames);
  g_test_add_func ("/cli/waveform/sheet", test_sheet);
  g_test_add_func ("/cli/waveform/drawings", test_drawings);
  g_test_add_func ("/cli/waveform/other-lines", test_other_lines);
  g_test_add_func ("/cli/waveform/locale", test_locale);
  g_test_add_func ("/cli/waveform/refused", test_refused);
  return g_test_run ();
}
