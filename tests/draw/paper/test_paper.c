/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/paper/paper.h"

#include <locale.h>
#include <math.h>

/* A size of paper from what LC_PAPER of a locale says. */

static void
assert_mm (BwPaper paper, double width_mm, double height_mm)
{
  g_assert_true (fabs (paper.width_pt * 25.4 / 72 - width_mm) < 1e-9);
  g_assert_true (fabs (paper.height_pt * 25.4 / 72 - height_mm) < 1e-9);
}

/* ISO 216: A4 has 210 by 297 mm. The locales of Germany and Japan among others say so. */
static void
test_a4 (void)
{
  assert_mm (bw_paper_of_size (210, 297), 210, 297);
}

/* 8.5 by 11 inches (ANSI/ASME Y14.1, size A) are 215.9 by 279.4 mm. The locales of the United States,
 * Canada and Mexico among others have 216 and 279, since they hold whole millimetres. */
static void
test_letter (void)
{
  assert_mm (bw_paper_of_size (216, 279), 215.9, 279.4);
}

/* What no printer has in its tray: a locale without the category, or one with a mistake. */
static void
test_unknown (void)
{
  assert_mm (bw_paper_of_size (0, 0), 210, 297);
  assert_mm (bw_paper_of_size (279, 216), 210, 297);
}

/* ISO/IEC 9945 has no paper; the C library's own locale "C" has A4. */
static void
test_locale (void)
{
  g_assert_nonnull (setlocale (LC_ALL, "C"));
  assert_mm (bw_paper_of_locale (), 210, 297);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/paper/a4", test_a4);
  g_test_add_func ("/draw/paper/letter", test_letter);
  g_test_add_func ("/draw/paper/unknown", test_unknown);
  g_test_add_func ("/draw/paper/locale", test_locale);
  return g_test_run ();
}
