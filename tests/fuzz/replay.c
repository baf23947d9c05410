/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs a fuzz target over files without a fuzzer: each file whole, then cut short at many places, and
 * a text with other numbers in the place of each of its own.
 * The target itself aborts on what must not be; to come back is to pass. */
#include <glib.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#define CUTS_MAX 64
#define NUMBERS_MAX 40

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* A copy of exactly @size bytes, so that a sanitizer sees the first byte read past the end. */
static void
run_once (const char *bytes, gsize size)
{
  uint8_t *data = malloc (size);

  if (size > 0)
    memcpy (data, bytes, size);
  (void) LLVMFuzzerTestOneInput (data, size);
  free (data);
}

static void
run_cut_short (const char *bytes, gsize size)
{
  gsize step = MAX (size / CUTS_MAX, 1);

  for (gsize length = 0; length < size; length += step)
    run_once (bytes, length);
}

static const char *const numbers[] = {
  "0",
  "-1",
  "1e30",
  "1e-30",
  "1e308",
  "1e-308",
  "9.6e-229",
  "4294967296",
  "-9223372036854775808",
  "99999999999999999999",
};

/* @text with @number in the place of the @length bytes at @at. */
static void
run_with_number (const char *text, gsize at, gsize length, const char *number)
{
  g_autoptr (GString) changed = g_string_new (text);
  g_string_erase (changed, (gssize) at, (gssize) length);
  g_string_insert (changed, (gssize) at, number);
  run_once (changed->str, changed->len);
}

/* Where a text has more numbers than NUMBERS_MAX, a share of them is replaced, spread over all. */
static void
run_with_numbers (const char *text)
{
  static const char figures[] = "0123456789.";
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (gsize));

  for (const char *p = text; *p != '\0'; p++)
    if (g_ascii_isdigit (*p))
      {
        gsize at = (gsize) (p - text);
        g_array_append_val (places, at);
        p += strspn (p, figures) - 1;
      }
  guint step = MAX (places->len / NUMBERS_MAX, 1);
  for (guint i = 0; i < places->len; i += step)
    {
      gsize at = g_array_index (places, gsize, i);
      for (gsize j = 0; j < G_N_ELEMENTS (numbers); j++)
        run_with_number (text, at, strspn (text + at, figures), numbers[j]);
    }
}

static void
test_file (gconstpointer user_data)
{
  const char *path = user_data;
  g_autoptr (GError) error = NULL;
  g_autofree char *bytes = NULL;
  gsize size = 0;

  g_file_get_contents (path, &bytes, &size, &error);
  g_assert_no_error (error);
  run_once (bytes, size);
  run_cut_short (bytes, size);
  if (g_utf8_validate (bytes, (gssize) size, NULL)) /* holds no NUL */
    run_with_numbers (bytes);
}

static gint
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static void
collect (const char *path, GPtrArray *paths)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = NULL;
  const char *name;

  if (!g_file_test (path, G_FILE_TEST_IS_DIR))
    {
      g_ptr_array_add (paths, g_strdup (path));
      return;
    }
  dir = g_dir_open (path, 0, &error);
  if (dir == NULL)
    g_error ("%s", error->message);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *child = g_build_filename (path, name, NULL);
      collect (child, paths);
    }
}

int
main (int argc, char **argv)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);

  g_test_init (&argc, &argv, NULL);
  for (int i = 1; i < argc; i++)
    collect (argv[i], paths);
  if (paths->len == 0)
    g_error ("no input: name the files or folders to replay");
  g_ptr_array_sort (paths, compare_paths);

  for (guint i = 0; i < paths->len; i++)
    {
      const char *path = g_ptr_array_index (paths, i);
      g_autofree char *base = g_path_get_basename (path);
      g_autofree char *name = g_strdup_printf ("/replay/%u/%s", i + 1, base);
      g_test_add_data_func (name, path, test_file);
    }
  return g_test_run ();
}
