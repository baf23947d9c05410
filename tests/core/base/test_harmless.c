/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Characters that a terminal obeys (ECMA-48, 5.3: C0 and C1), that change the order of what is shown
 * (Unicode Bidirectional Algorithm, UAX #9, 2), that part lines (UAX #14) or that stand for no
 * character (The Unicode Standard, 23.7). */
#include "core/base/harmless.h"

#include <string.h>

#include "support.h"

typedef struct
{
  const char *name;
  gunichar first;
  gunichar last;
  gboolean refused;
  const char *shown; /* what stands for one; NULL: itself */
} Range;

static const Range ranges[] = {
  { "c0", 0x01, 0x1f, TRUE, " " },
  { "printable", 0x20, 0x7e, FALSE, NULL },
  { "delete-and-c1", 0x7f, 0x9f, TRUE, " " },
  { "latin-1", 0xa0, 0xff, FALSE, NULL },
  { "arabic-mark", 0x61c, 0x61c, FALSE, "" },
  { "joiners", 0x200b, 0x200d, FALSE, NULL },
  { "marks", 0x200e, 0x200f, FALSE, "" },
  { "separators", 0x2028, 0x2029, TRUE, " " },
  { "embeddings-and-overrides", 0x202a, 0x202e, TRUE, "" },
  { "word-joiner", 0x2060, 0x2060, FALSE, NULL },
  { "isolates", 0x2066, 0x2069, TRUE, "" },
  { "letters", 0x4e00, 0x9fff, FALSE, NULL },
  { "no-characters", 0xfdd0, 0xfdef, TRUE, "\ufffd" },
  { "annotations", 0xfff9, 0xfffb, TRUE, "" },
  { "replacement", 0xfffd, 0xfffd, FALSE, NULL },
  { "last-of-plane-0", 0xfffe, 0xffff, TRUE, "\ufffd" },
  { "last-of-plane-1", 0x1fffe, 0x1ffff, TRUE, "\ufffd" },
  { "pictures", 0x1f4fa, 0x1f4fa, FALSE, NULL },
  { "last-of-plane-16", 0x10fffe, 0x10ffff, TRUE, "\ufffd" },
};

static void
test_range (gconstpointer data)
{
  const Range *range = data;
  for (gunichar c = range->first; c <= range->last && !g_test_failed (); c++)
    {
      char letter[7] = "";
      g_unichar_to_utf8 (c, letter);
      g_autofree char *text = g_strconcat ("a", letter, "b", NULL);
      g_autofree char *wanted = g_strconcat ("a", range->shown != NULL ? range->shown : letter, "b",
                                             NULL);
      g_autofree char *shown = bw_text_harmless (text);
      g_autofree char *lines = bw_text_harmless_lines (text);
      g_assert_cmpint (bw_char_is_refused (c), ==, range->refused);
      g_assert_cmpint (bw_char_is_harmful (c), ==, range->shown != NULL);
      g_assert_cmpstr (shown, ==, wanted);
      g_assert_cmpstr (lines, ==, c == '\n' ? text : wanted);
    }
}

/* Bytes that are no UTF-8 are shown as such. */
static void
test_bytes (void)
{
  g_autofree char *shown = bw_text_harmless ("a\xff" "b\xed\xa0\x80");
  g_assert_true (g_utf8_validate (shown, -1, NULL));
  bw_test_assert_words (shown, WORDS ("a\ufffd" "b"));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (ranges); i++)
    {
      g_autofree char *path = g_strconcat ("/harmless/", ranges[i].name, NULL);
      g_test_add_data_func (path, &ranges[i], test_range);
    }
  g_test_add_func ("/harmless/bytes", test_bytes);
  return g_test_run ();
}
