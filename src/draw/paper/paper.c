/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper.h"

#include <langinfo.h>

/* ISO 216 */
#define A4_WIDTH_MM 210
#define A4_HEIGHT_MM 297

/* ANSI/ASME Y14.1, size A: 8.5 by 11 inches, which locales round to whole millimetres */
#define LETTER_WIDTH_PT (8.5 * 72)
#define LETTER_HEIGHT_PT (11.0 * 72)
#define LETTER_WIDTH_MM 216
#define LETTER_HEIGHT_MM 279

static double
points (int mm)
{
  return mm / 25.4 * 72;
}

/**
 * bw_paper_of_size:
 * @width_mm: of an upright sheet, in whole millimetres, as a locale has it
 * @height_mm: likewise
 *
 * Returns: Letter if that is meant, else A4, which is at hand everywhere else
 */
BwPaper
bw_paper_of_size (int width_mm, int height_mm)
{
  if (width_mm == LETTER_WIDTH_MM && height_mm == LETTER_HEIGHT_MM)
    return (BwPaper){ LETTER_WIDTH_PT, LETTER_HEIGHT_PT };
  return (BwPaper){ points (A4_WIDTH_MM), points (A4_HEIGHT_MM) };
}

#ifdef __GLIBC__
/* The C library gives the numbers of LC_PAPER in the place of a pointer. */
static int
locale_number (nl_item item)
{
  const union
  {
    const char *text;
    int number;
  } found = { .text = nl_langinfo (item) };
  return found.number;
}
#endif

/**
 * bw_paper_of_locale:
 *
 * Returns: the paper that is usual where the user lives, by LC_PAPER; A4 where that is not known
 */
BwPaper
bw_paper_of_locale (void)
{
#ifdef __GLIBC__
  return bw_paper_of_size (locale_number (_NL_PAPER_WIDTH), locale_number (_NL_PAPER_HEIGHT));
#else
  return bw_paper_of_size (0, 0);
#endif
}
