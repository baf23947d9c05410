/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli draw`: SVG as rsvg-convert reads it (Debian package librsvg2-bin), PDF as
 * pdftotext reads it (poppler-utils), PNG by its header. */
#include <string.h>
#include <sys/stat.h>

#include <glib/gstdio.h>

#include "run.h"

static const char *const views[] = { "line", "blanking", "field", "map" };

static char *
file_in (const char *folder, const char *name)
{
  return g_build_filename (folder, name, NULL);
}

/* Draws @raster, and says nothing. */
static void
draw (const char *raster, const char *view, const char *path, const char *option, const char *value)
{
  g_autoptr (Run) run = run_cli ("draw", raster, "--view", view, "-o", path, option, value, NULL);
  if (run->status != 0 || *run->out != '\0' || *run->err != '\0')
    g_error ("%s, %s: %d %s%s", raster, view, run->status, run->out, run->err);
}

/* The size that a PNG's own header gives (ISO/IEC 15948: IHDR). */
static void
assert_png (const char *path, guint width, guint height)
{
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpuint (length, >, 1000);
  g_assert_cmpint (memcmp (bytes, "\x89PNG\r\n\x1a\n", 8), ==, 0);
  const guchar *size = (const guchar *) bytes + 16;
  g_assert_cmpuint ((guint) size[0] << 24 | (guint) size[1] << 16 | (guint) size[2] << 8 | size[3],
                    ==, width);
  g_assert_cmpuint ((guint) size[4] << 24 | (guint) size[5] << 16 | (guint) size[6] << 8 | size[7],
                    ==, height);
}

static void
test_svg (gconstpointer data)
{
  const char *view = data;
  g_autofree char *folder = scratch_folder ();
  g_autofree char *svg = file_in (folder, "drawing.svg");
  g_autofree char *png = file_in (folder, "rendered.png");
  const char *const argv[] = { "rsvg-convert", "-o", png, svg, NULL };

  draw ("525-59.94-interlaced", view, svg, "--size", "1000x600");
  g_autoptr (Run) rendered = run_argv (argv, NULL);
  g_assert_cmpint (rendered->status, ==, 0);
  g_assert_cmpstr (rendered->err, ==, "");
  assert_png (png, 1000, 600);
  g_autofree char *text = read_text (svg);
  g_assert_nonnull (strstr (text, "<title>525-line interlaced, 59.94 Hz</title>"));
  g_assert_nonnull (strstr (text, "<desc>525-line interlaced"));
  remove_scratch (folder);
}

/* SMPTE 170M-2004 table 2: sync of 4.7 us; table 3: 3 lines of field sync; 525 lines. */
static void
test_pdf (gconstpointer data)
{
  const char *view = data;
  gboolean map = strcmp (view, "map") == 0;
  g_autofree char *folder = scratch_folder ();
  g_autofree char *pdf = file_in (folder, "drawing.pdf");
  const char *const argv[] = { "pdftotext", "-layout", pdf, "-", NULL };

  draw ("525-59.94-interlaced", view, pdf, NULL, NULL);
  g_autoptr (Run) read = run_argv (argv, NULL);
  g_autoptr (GString) text = g_string_new (read->out);
  g_string_replace (text, "\u00a0", " ", 0);
  g_assert_cmpint (read->status, ==, 0);
  if (!g_regex_match_simple ("4\\.7 *µs", text->str, G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT))
    g_error ("no 4.7 µs in: %s", text->str);
  g_assert_nonnull (strstr (text->str, "SMPTE 170M-2004"));
  if (map || strcmp (view, "field") == 0)
    g_assert_true (
        g_regex_match_simple ("\\b3 *lines", text->str, G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT));
  remove_scratch (folder);
}

/* Two dots to the pixel. */
static void
test_png (gconstpointer data)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *png = file_in (folder, "drawing.png");
  draw ("vesa-dmt-04", data, png, "--size", "640x400");
  assert_png (png, 1280, 800);
  remove_scratch (folder);
}

/* Whatever the raster: in time alone, progressive, with borders, with tri-level sync. */
static void
test_rasters (void)
{
  static const char *const rasters[] = { "625-50-interlaced", "262-60.05-progressive",
                                         "vesa-dmt-0f", "1125-60-interlaced", "cta-861-vic-39" };
  g_autofree char *folder = scratch_folder ();
  for (gsize r = 0; r < G_N_ELEMENTS (rasters); r++)
    for (gsize v = 0; v < G_N_ELEMENTS (views); v++)
      {
        g_autofree char *path = file_in (folder, "drawing.svg");
        draw (rasters[r], views[v], path, NULL, NULL);
      }
  remove_scratch (folder);
}

/* The paper of each theme is another; without --theme it is that for print. */
static void
test_themes (void)
{
  static const char *const themes[] = { "print", "light", "dark" };
  g_autofree char *folder = scratch_folder ();
  g_autofree char *text[G_N_ELEMENTS (themes) + 1] = { NULL };
  for (gsize i = 0; i <= G_N_ELEMENTS (themes); i++)
    {
      g_autofree char *path = file_in (folder, "drawing.svg");
      gboolean given = i < G_N_ELEMENTS (themes);
      draw ("480i", "line", path, given ? "--theme" : NULL, given ? themes[i] : NULL);
      text[i] = read_text (path);
    }
  g_assert_cmpstr (text[0], !=, text[1]);
  g_assert_cmpstr (text[0], !=, text[2]);
  g_assert_cmpstr (text[1], !=, text[2]);
  g_assert_cmpstr (text[0], ==, text[3]);
  for (gsize i = 0; i < G_N_ELEMENTS (text); i++)
    g_clear_pointer (&text[i], g_free);
  remove_scratch (folder);
}

static char *
pdf_text (const char *path)
{
  const char *const argv[] = { "pdftotext", "-layout", path, "-", NULL };
  g_autoptr (Run) read = run_argv (argv, NULL);
  g_autoptr (GRegex) spaces = g_regex_new ("[\\s\u00a0]+", G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT,
                                           NULL);
  g_assert_cmpint (read->status, ==, 0);
  return g_regex_replace_literal (spaces, read->out, -1, 0, " ", G_REGEX_MATCH_DEFAULT, NULL);
}

/* ITU-R BT.470-6: with PAL, no burst in lines 623 to 6 and 310 to 318 of the first two fields. */
static void
test_burst (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = file_in (folder, "drawing.pdf");
  draw ("625-50-interlaced", "field", path, "--system", "pal-b");
  g_autofree char *with = pdf_text (path);
  draw ("625-50-interlaced", "field", path, NULL, NULL);
  g_autofree char *without = pdf_text (path);
  g_assert_nonnull (strstr (with, "burst"));
  g_assert_nonnull (strstr (with, "623 to 6"));
  g_assert_nonnull (strstr (with, "310 to 318"));
  g_assert_null (strstr (without, "burst"));
  remove_scratch (folder);
}

/* ITU-R BT.1700 part B: sync 4.5 to 4.9 us, burst 5.5 to 5.7 us after it. */
static void
test_limits (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = file_in (folder, "drawing.pdf");
  draw ("625-50-interlaced", "blanking", path, "--standard", "bt1700-pal");
  g_autofree char *text = pdf_text (path);
  g_assert_nonnull (strstr (text, "4.5–4.9"));
  g_assert_nonnull (strstr (text, "5.5–5.7"));
  g_assert_nonnull (strstr (text, "BT.1700 Part B"));
  remove_scratch (folder);
}

/* A raster that is computed, read from a mode line, or made for a monitor, whose overscan the map
 * then shows. */
static void
test_other_origins (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *path = file_in (folder, "drawing.pdf");
  g_autoptr (Run) computed = run_cli ("draw", "--cvt", "640x480@60", "--view", "line", "-o", path,
                                      NULL);
  g_assert_cmpint (computed->status, ==, 0);
  g_autofree char *line = pdf_text (path);
  g_assert_nonnull (strstr (line, "29.688 kHz")); /* edid-decode --cvt w=640,h=480,fps=60 */

  g_autoptr (Run) modeline = run_cli ("draw", "--modeline",
                                      "\"a\" 25.175 640 656 752 800 480 490 492 525", "--view",
                                      "map", "-o", path, NULL);
  g_assert_cmpint (modeline->status, ==, 0);

  g_autoptr (Run) made = run_cli ("draw", "--for-monitor", demo, "--active", "640x480",
                                  "--field-rate", "60", "--view", "map", "-o", path, NULL);
  g_assert_cmpint (made->status, ==, 0);
  g_autofree char *map = pdf_text (path);
  g_assert_nonnull (strstr (map, "overscan"));
  remove_scratch (folder);
}

static void
test_json (void)
{
  g_autofree char *folder = scratch_folder ();
  for (gsize v = 0; v < G_N_ELEMENTS (views); v++)
    {
      g_autofree char *path = file_in (folder, "drawing.SVG");
      g_autoptr (Run) run = run_cli ("draw", "480i", "--view", views[v], "-o", path, "--json",
                                     NULL);
      g_autoptr (JsonObject) root = run_json (run);
      g_assert_cmpstr (json_object_get_string_member (root, "raster"), ==, "525-59.94-interlaced");
      g_assert_cmpstr (json_object_get_string_member (root, "view"), ==, views[v]);
      g_assert_cmpstr (json_object_get_string_member (root, "drawing"), ==, path);
      g_assert_cmpuint (strlen (json_object_get_string_member (root, "description")), >, 40);
    }
  remove_scratch (folder);
}

static const struct
{
  const char *args[9];
  int status;
  const char *says;
} refused[] = {
  { { NULL }, 2, "RASTER" },
  { { "480i", NULL }, 2, "-o" },
  { { "480i", "-o", "x.svg", NULL }, 2, "--view" },
  { { "480i", "--view", "line", NULL }, 2, "-o" },
  { { "480i", "--view", "side", "-o", "x.svg", NULL }, 2, "blanking" },
  { { "480i", "--view", "line", "-o", "x.svg", "--theme", "pink", NULL }, 2, "dark" },
  { { "480i", "--view", "field", "-o", "x.svg", "--system", "pal", NULL }, 2, "pal-b" },
  { { "480i", "--view", "line", "-o", "x.svg", "--system", "pal-b", NULL }, 2, "--view field" },
  { { "480i", "--view", "line", "-o", "x.svg", "--standard", "bt1700-pal", NULL },
    2,
    "--view blanking" },
  { { "480i", "--view", "line", "-o", "x.svg", "--which", "2", NULL }, 2, "--which" },
  { { "480i", "576i", "--view", "line", "-o", "x.svg", NULL }, 2, "“576i”" },
  { { "481i", "--view", "line", "-o", "x.svg", NULL }, 1, "“480i”" },
  { { "480i", "--view", "line", "-o", "x.svg", "--size", "big", NULL }, 1, "WIDTHxHEIGHT" },
  { { "480i", "--view", "line", "-o", "x.svg", "--size", "0x9", NULL }, 1, "WIDTHxHEIGHT" },
  { { "480i", "--view", "line", "-o", "x.svg", "--size", "90000x9", NULL }, 1, "20000" },
  { { "480i", "--view", "line", "-o", "x.gif", NULL }, 2, ".png" },
  { { "480i", "--view", "line", "-o", "x", NULL }, 2, ".png" },
  { { "480i", "--view", "field", "-o", "x.svg", "--system", "pal-b", NULL }, 1, "pal-b" },
  { { "480i", "--view", "blanking", "-o", "x.svg", "--standard", "bt1700-pal", NULL },
    1,
    "625-50-interlaced" },
  { { "480i", "--view", "blanking", "-o", "x.svg", "--standard", "none", NULL }, 1, "“none”" },
  { { "--gtf", "320x240@60", "--view", "line", "-o", "x.svg", NULL }, 1, "negative" },
  { { "480i", "--view", "line", "-o", "none/x.svg", NULL }, 1, "none/x.svg" },
  { { "480i", "--view", "line", "-o", "/dev/full", NULL }, 2, "/dev/full" },
};

/* Nothing is written in any of these. */
static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      const char *args[12] = { "draw" };
      for (gsize k = 0; refused[i].args[k] != NULL; k++)
        args[k + 1] = refused[i].args[k];
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, refused[i].status, refused[i].says);
    }
  g_assert_false (g_file_test ("x.svg", G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test ("x.gif", G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test ("x", G_FILE_TEST_EXISTS));
}

/* A folder or a device of that name stays what it is; a folder that cannot be written is said. */
static void
test_no_plain_file (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *directory = file_in (folder, "a.svg");
  g_autofree char *pipe = file_in (folder, "b.svg");
  GStatBuf status;

  g_assert_cmpint (g_mkdir (directory, 0700), ==, 0);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_autoptr (Run) on_directory = run_cli ("draw", "480i", "--view", "line", "-o", directory, NULL);
  g_autoptr (Run) on_pipe = run_cli ("draw", "480i", "--view", "line", "-o", pipe, NULL);
  assert_refused (on_directory, 1, directory);
  assert_refused (on_pipe, 1, pipe);
  g_assert_cmpint (g_stat (pipe, &status), ==, 0);
  g_assert_true (S_ISFIFO (status.st_mode));
  remove_scratch (folder);
}

/* What the drawing is made from is not written over, even under a drawing's name. */
static void
test_own_source (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *text = read_text (demo);
  g_autofree char *path = write_scratch (folder, "sheet.svg", text);
  g_autoptr (Run) run = run_cli ("draw", "--for-monitor", path, "--active", "640x480",
                                 "--field-rate", "60", "--view", "map", "-o", path, NULL);
  g_autofree char *after = read_text (path);
  assert_refused (run, 2, "replace");
  g_assert_cmpstr (after, ==, text);
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    {
      g_autofree char *svg = g_strconcat ("/draw/svg/", views[i], NULL);
      g_autofree char *pdf = g_strconcat ("/draw/pdf/", views[i], NULL);
      g_autofree char *png = g_strconcat ("/draw/png/", views[i], NULL);
      g_test_add_data_func (svg, views[i], test_svg);
      g_test_add_data_func (pdf, views[i], test_pdf);
      g_test_add_data_func (png, views[i], test_png);
    }
  g_test_add_func ("/draw/rasters", test_rasters);
  g_test_add_func ("/draw/themes", test_themes);
  g_test_add_func ("/draw/burst", test_burst);
  g_test_add_func ("/draw/limits", test_limits);
  g_test_add_func ("/draw/other-origins", test_other_origins);
  g_test_add_func ("/draw/json", test_json);
  g_test_add_func ("/draw/refused", test_refused);
  g_test_add_func ("/draw/no-plain-file", test_no_plain_file);
  g_test_add_func ("/draw/own-source", test_own_source);
  return g_test_run ();
}
