/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/canvas.h"
#include "draw/base/view-range.h"

G_BEGIN_DECLS

/* The time axis of a drawing of many lines: a tick and a number for each line, and where lines are
 * wide, a scale in microseconds from the start of each. */

/**
 * BwRuler:
 * @range: what is shown, in seconds after 0V
 * @left: where that starts on the page
 * @right: where it ends
 * @digit: width of a figure
 * @period_s: of a line
 * @scale_s: step of the scale in microseconds; zero if there is none
 * @crossed: whether the line of the datum passes through the figures
 * @mark: the decimal mark
 */
typedef struct
{
  BwCanvas *canvas;
  BwViewRange range;
  double left;
  double right;
  double digit;
  double period_s;
  double scale_s;
  gboolean crossed;
  char mark;
} BwRuler;

void bw_ruler_init (BwRuler *ruler, BwCanvas *canvas, double period_s, char mark);
void bw_ruler_choose_scale (BwRuler *ruler, gboolean keeps);

static inline double
bw_ruler_x (const BwRuler *ruler, double time_s)
{
  return bw_view_range_place (&ruler->range, time_s, ruler->left, ruler->right);
}

static inline gboolean
bw_ruler_shows (const BwRuler *ruler, double x)
{
  return x >= ruler->left - 0.01 && x <= ruler->right + 0.01;
}

double bw_ruler_line_width (const BwRuler *ruler);
int bw_ruler_number_step (const BwRuler *ruler, int greatest);
void bw_ruler_claim_number (const BwRuler *ruler, int line, double from_s, double y,
                            BwInkRole role);
void bw_ruler_claim_scale (const BwRuler *ruler, double from_s, double y);
void bw_ruler_add_ticks (const BwRuler *ruler, cairo_t *cr, double from_s, double y);
void bw_ruler_stroke_ticks (const BwRuler *ruler, cairo_t *cr);

G_END_DECLS
