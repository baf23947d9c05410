/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BwPaper:
 *
 * A sheet of paper, upright, in points of 1/72 inch.
 */
typedef struct
{
  double width_pt;
  double height_pt;
} BwPaper;

BwPaper bw_paper_of_size (int width_mm, int height_mm);
BwPaper bw_paper_of_locale (void);

G_END_DECLS
