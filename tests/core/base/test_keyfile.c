/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/base/keyfile.h"

#include <string.h>

#include <glib/gstdio.h>

#include "support.h"

#define TEXT(literal) literal, sizeof (literal) - 1

/* Whole files: sound, or one fault that names the file and the line */

typedef struct
{
  const char *name;
  const char *text;
  gsize length;
  int code; /* −1: sound */
  const char *says[3];
} ParseCase;

#define SOUND (-1)

static const ParseCase parse_cases[] = {
  { "empty", TEXT (""), SOUND, { NULL } },
  { "group", TEXT ("[a]\nx=1\n"), SOUND, { NULL } },
  { "no-newline-at-the-end", TEXT ("[a]\nx=1"), SOUND, { NULL } },
  { "crlf", TEXT ("# top\r\n[a]\r\nx=1\r\n"), SOUND, { NULL } },
  { "comments", TEXT ("# top\n\n[a]\n# about x\nx=1\n# end\n"), SOUND, { NULL } },
  { "empty-group", TEXT ("[a]\n[b]\n"), SOUND, { NULL } },
  { "indented", TEXT ("  [a]\n\tx = 1\n"), SOUND, { NULL } },
  { "empty-value", TEXT ("[a]\nx=\n"), SOUND, { NULL } },
  { "equals-in-value", TEXT ("[a]\nx=1=2\n"), SOUND, { NULL } },
  { "brackets-in-value", TEXT ("[a]\nx=[b]\n"), SOUND, { NULL } },
  { "utf8", TEXT ("[a]\nx=75 \u03a9\n"), SOUND, { NULL } },
  { "same-key-in-two-groups", TEXT ("[a]\nx=1\n[b]\nx=1\n"), SOUND, { NULL } },
  { "word", TEXT ("[a]\nx=1\njunk\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 3", "junk" } },
  { "word-crlf", TEXT ("[a]\r\nx=1\r\njunk\r\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 3", "junk" } },
  { "no-key", TEXT ("[a]\n=1\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 2", "=1" } },
  { "key-before-group", TEXT ("x=1\n[a]\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 1", "[group]" } },
  { "open-bracket", TEXT ("[a]\n\n[b\nx=1\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 3", "[b" } },
  { "no-group-name", TEXT ("[]\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 1" } },
  { "bracket-in-name", TEXT ("[a[b]\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 1" } },
  { "two-groups-in-a-line", TEXT ("[a][b]\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 1" } },
  { "words-after-group", TEXT ("[a] # first\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 1" } },
  { "markup", TEXT ("<html>\n"), BW_KEYFILE_ERROR_SYNTAX, { "line 1", "<html>" } },
  { "key-twice",
    TEXT ("[a]\nx=1\ny=2\nx=3\n"),
    BW_KEYFILE_ERROR_DUPLICATE,
    { "line 4", "key", "x=3" } },
  { "key-twice-other-spaces",
    TEXT ("[a]\nx=1\nx  = 2\n"),
    BW_KEYFILE_ERROR_DUPLICATE,
    { "line 3", "key" } },
  { "group-twice",
    TEXT ("[a]\nx=1\n[b]\n[a]\ny=1\n"),
    BW_KEYFILE_ERROR_DUPLICATE,
    { "line 4", "group", "[a]" } },
  { "latin-1", TEXT ("[a]\nx=75 \xd8\n"), BW_KEYFILE_ERROR_ENCODING, { "line 2", "UTF-8" } },
  { "cut-sequence",
    TEXT ("[a]\nx=1\ny=\xe2\x84"),
    BW_KEYFILE_ERROR_ENCODING,
    { "line 3", "UTF-8" } },
  { "overlong", TEXT ("[a]\nx=\xc0\xaf\n"), BW_KEYFILE_ERROR_ENCODING, { "line 2", "UTF-8" } },
  { "surrogate", TEXT ("[a]\nx=\xed\xa0\x80\n"), BW_KEYFILE_ERROR_ENCODING, { "line 2", "UTF-8" } },
  { "utf16", TEXT ("\xff\xfe[\0a\0]\0"), BW_KEYFILE_ERROR_ENCODING, { "line 1", "UTF-8" } },
  { "nul-in-value", TEXT ("[a]\nx=1\0002\n"), BW_KEYFILE_ERROR_ENCODING, { "line 2" } },
  { "nul-first", TEXT ("\0[a]\n"), BW_KEYFILE_ERROR_ENCODING, { "line 1" } },
  { "nul-last", TEXT ("[a]\nx=1\n\0"), BW_KEYFILE_ERROR_ENCODING, { "line 3" } },
  { "nul-only", TEXT ("\0"), BW_KEYFILE_ERROR_ENCODING, { "line 1" } },
};

static void
test_parse (gconstpointer data)
{
  const ParseCase *c = data;
  const char *words[] = { "some.bench", c->says[0], c->says[1], c->says[2], NULL };
  g_autoptr (GError) error = NULL;
  /* A copy of the bytes and no more: nothing may be read past them. */
  g_autofree char *bytes = g_memdup2 (c->text, c->length > 0 ? c->length : 1);
  g_autoptr (GKeyFile) keys = bw_keyfile_parse (bytes, c->length, "some.bench", &error);

  g_assert_cmpint (keys != NULL, ==, c->code == SOUND);
  if (c->code == SOUND)
    g_assert_no_error (error);
  else
    {
      g_assert_error (error, BW_KEYFILE_ERROR, c->code);
      if (error != NULL)
        bw_test_assert_words (error->message, words);
    }
}

static void
test_values (void)
{
  g_autoptr (GKeyFile) keys = bw_keyfile_parse (TEXT ("# top\r\n[a b]\r\nx = 1=2 \r\ny=\r\n"), "f",
                                                NULL);
  if (keys == NULL)
    {
      g_test_fail ();
      return;
    }
  g_autofree char *x = g_key_file_get_value (keys, "a b", "x", NULL);
  g_autofree char *y = g_key_file_get_value (keys, "a b", "y", NULL);
  g_autofree char *top = g_key_file_get_comment (keys, NULL, NULL, NULL);

  g_assert_cmpstr (g_strchomp (x), ==, "1=2");
  g_assert_cmpstr (y, ==, "");
  g_assert_true (top != NULL && strstr (top, "top") != NULL);
}

/* A key for another language is a key like any other: a later version may know it. */
static void
test_bracketed_keys (void)
{
  g_autoptr (GKeyFile) keys = bw_keyfile_parse (TEXT ("[a]\nname=x\nname[xx]=y\nname[zz]=z\n"), "f",
                                                NULL);
  g_autofree char *text = keys != NULL ? g_key_file_to_data (keys, NULL, NULL) : NULL;

  g_assert_nonnull (text);
  if (text != NULL)
    bw_test_assert_words (text, WORDS ("name=x\n", "name[xx]=y\n", "name[zz]=z\n"));
}

/* Some editors put U+FEFF before UTF-8 text (Unicode 15.0, 23.8): it is dropped and nothing else. */
static void
test_byte_order_mark (void)
{
  static const char *const texts[][2] = { { "\xef\xbb\xbf[a]\nx=12345", "[a]\nx=12345" },
                                          { "\xef\xbb\xbf", "" },
                                          { "\xef\xbb", "\xef\xbb" },
                                          { "[a]\nx=1", "[a]\nx=1" } };
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "file", NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = NULL;
      gsize length = 0;
      g_assert_true (g_file_set_contents (path, texts[i][0], -1, NULL));
      g_assert_true (bw_keyfile_read (path, &text, &length, NULL));
      g_assert_cmpstr (text, ==, texts[i][1]);
      g_assert_cmpuint (length, ==, strlen (texts[i][1]));
    }
  bw_test_folder_remove (folder);
}

static void
test_huge_line (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *filling = g_strnfill (1000000, 'z');
  g_autofree char *sound = g_strdup_printf ("[a]\nx=%s\n", filling);
  g_autofree char *faulty = g_strdup_printf ("[a]\nx=1\n%s\n", filling);
  g_autoptr (GKeyFile) keys = bw_keyfile_parse (sound, strlen (sound), "f", &error);
  g_autofree char *value = keys != NULL ? g_key_file_get_value (keys, "a", "x", NULL) : NULL;

  g_assert_no_error (error);
  g_assert_cmpstr (value, ==, filling);
  g_assert_null (bw_keyfile_parse (faulty, strlen (faulty), "f", &error));
  g_assert_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_SYNTAX);
  if (error != NULL)
    g_assert_cmpuint (strlen (error->message), <, 300); /* shown in part */
}

/* The end of the bytes is the end, whatever comes after. */
static void
test_length (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GKeyFile) keys = bw_keyfile_parse ("[a]\nx=1\njunk", 8, "f", &error);
  g_assert_no_error (error);
  g_assert_nonnull (keys);
}

/* Group by group */

typedef struct
{
  const char *name;
  const char *text;
  gsize length;
  const char *groups; /* those that come through */
  guint n_faults;
  int code;
  const char *says[3];
} GroupCase;

static const GroupCase group_cases[] = {
  { "empty", TEXT (""), "", 0, 0, { NULL } },
  { "comment-only", TEXT ("# nothing here"), "", 0, 0, { NULL } },
  { "two", TEXT ("# top\n[a]\nx=1\n[b]\nx=2\n"), "a b", 0, 0, { NULL } },
  { "crlf", TEXT ("[a]\r\nx=1\r\n[b]\r\nx=2\r\n"), "a b", 0, 0, { NULL } },
  { "indented", TEXT (" [a]\nx=1\n\t[b]\nx=2\n"), "a b", 0, 0, { NULL } },
  { "bracket-in-value", TEXT ("[a]\nx=[1]\n[b]\n"), "a b", 0, 0, { NULL } },
  { "fault-in-the-middle",
    TEXT ("[a]\nx=1\n[b]\njunk\n[c]\nx=3\n"),
    "a c",
    1,
    BW_KEYFILE_ERROR_SYNTAX,
    { "[b]", "line 4", "junk" } },
  { "fault-in-the-last",
    TEXT ("[a]\nx=1\n[b]\nx=2\nx=3"),
    "a",
    1,
    BW_KEYFILE_ERROR_DUPLICATE,
    { "[b]", "line 5", "x=3" } },
  { "two-faults",
    TEXT ("[a]\njunk\n[b]\njunk\n[c]\n"),
    "c",
    2,
    BW_KEYFILE_ERROR_SYNTAX,
    { "[a]", "junk" } },
  { "bad-header",
    TEXT ("[a]\nx=1\n[b\nx=2\n[c]\n"),
    "a c",
    1,
    BW_KEYFILE_ERROR_SYNTAX,
    { "[b", "line 3" } },
  { "group-twice",
    TEXT ("[a]\nx=1\n[b]\n[a]\nx=2\n"),
    "a b",
    1,
    BW_KEYFILE_ERROR_DUPLICATE,
    { "[a]", "twice" } },
  { "junk-before-the-first",
    TEXT ("junk\n[a]\n"),
    "a",
    1,
    BW_KEYFILE_ERROR_SYNTAX,
    { "line 1", "junk" } },
  { "junk-alone", TEXT ("junk"), "", 1, BW_KEYFILE_ERROR_SYNTAX, { "line 1", "junk" } },
  { "key-before-the-first", TEXT ("x=1\n[a]\n"), "a", 1, BW_KEYFILE_ERROR_SYNTAX, { "line 1" } },
  { "encoding",
    TEXT ("[a]\nx=1\n[b]\nx=\xff\n"),
    "",
    1,
    BW_KEYFILE_ERROR_ENCODING,
    { "line 4", "UTF-8" } },
  { "nul", TEXT ("[a]\nx=1\n\0[b]\n"), "", 1, BW_KEYFILE_ERROR_ENCODING, { "line 3" } },
};

static void
note_group (const char *group, GKeyFile *keys, gpointer user_data)
{
  GString *seen = user_data;
  gsize n;
  g_auto (GStrv) groups = g_key_file_get_groups (keys, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpstr (groups[0], ==, group);
  g_string_append_printf (seen, "%s%s", seen->len > 0 ? " " : "", group);
}

static void
test_each_group (gconstpointer data)
{
  const GroupCase *c = data;
  const char *words[] = { "user.ini", c->says[0], c->says[1], c->says[2], NULL };
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (GString) seen = g_string_new (NULL);
  g_autofree char *bytes = g_memdup2 (c->text, c->length > 0 ? c->length : 1);

  bw_keyfile_each_group (bytes, c->length, "user.ini", note_group, seen, faults);
  g_assert_cmpstr (seen->str, ==, c->groups);
  g_assert_cmpuint (faults->len, ==, c->n_faults);
  if (c->n_faults > 0)
    bw_test_has_fault (faults, BW_KEYFILE_ERROR, c->code, words);
}

/* Reading from disk */

typedef struct
{
  const char *name;
  const char *path;
} UnreadableCase;

static const UnreadableCase unreadable_cases[] = {
  { "missing", "/no/such/file.bench" },
  { "folder", "/" },
  { "device", "/dev/null" },
};

static void
test_unreadable (gconstpointer data)
{
  const UnreadableCase *c = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gsize length = 99;

  g_assert_false (bw_keyfile_read (c->path, &text, &length, &error));
  g_assert_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_READ);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (c->path));
  g_assert_null (text);
}

static void
test_read_size (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "large.bench", NULL);
  g_autofree char *bytes = g_strnfill (BW_KEYFILE_MAX_BYTES + 1, '#');
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize length = 0;

  g_assert_true (g_file_set_contents (path, bytes, BW_KEYFILE_MAX_BYTES + 1, NULL));
  g_assert_false (bw_keyfile_read (path, &text, &length, &error));
  g_assert_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_TOO_LARGE);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (path, "4 MiB"));
  g_clear_error (&error);

  g_assert_true (g_file_set_contents (path, bytes, BW_KEYFILE_MAX_BYTES, NULL));
  g_assert_true (bw_keyfile_read (path, &text, &length, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (length, ==, BW_KEYFILE_MAX_BYTES);
  bw_test_folder_remove (folder);
}

static void
test_read_bytes (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "file", NULL);
  g_autofree char *text = NULL;
  gsize length = 0;

  g_assert_true (g_file_set_contents (path, TEXT ("a\0b\r\n"), NULL));
  g_assert_true (bw_keyfile_read (path, &text, &length, NULL));
  g_assert_cmpmem (text, length, "a\0b\r\n", 5);
  bw_test_folder_remove (folder);
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/keyfile/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (parse_cases); i++)
    add ("parse", parse_cases[i].name, &parse_cases[i], test_parse);
  for (gsize i = 0; i < G_N_ELEMENTS (group_cases); i++)
    add ("each-group", group_cases[i].name, &group_cases[i], test_each_group);
  for (gsize i = 0; i < G_N_ELEMENTS (unreadable_cases); i++)
    add ("unreadable", unreadable_cases[i].name, &unreadable_cases[i], test_unreadable);
  g_test_add_func ("/keyfile/values", test_values);
  g_test_add_func ("/keyfile/bracketed-keys", test_bracketed_keys);
  g_test_add_func ("/keyfile/byte-order-mark", test_byte_order_mark);
  g_test_add_func ("/keyfile/huge-line", test_huge_line);
  g_test_add_func ("/keyfile/length", test_length);
  g_test_add_func ("/keyfile/read-size", test_read_size);
  g_test_add_func ("/keyfile/read-bytes", test_read_bytes);
  return g_test_run ();
}
