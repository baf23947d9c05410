/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* How long the signal stays at each level, where lines are too fine for the page: drawn the
 * stronger the longer, as an oscilloscope shows it that sweeps a field. */

#define N_SHADES 4
#define SHADE_ALPHA 0.24
#define LINES_TOGETHER 8 /* so that lines and columns do not beat */

/* From so many times the share on that each row would have, were the signal at all levels alike,
 * each adds its shade. */
static const float shades[N_SHADES] = { 1.5f, 3, 6, 20 };

/**
 * bw_levels_dwell_init:
 * @dwell: (out caller-allocates): to be cleared with bw_levels_dwell_clear()
 * @columns: of the page
 * @rows: from the lowest level to the highest
 * @volts: from the foot of the lowest row to the top of the highest
 *
 * While it is filled, each row holds by how much it differs from the one below it.
 */
void
bw_levels_dwell_init (BwLevelsDwell *dwell, guint columns, guint rows, const BwRange *volts)
{
  *dwell = (BwLevelsDwell){ columns, rows, *volts, rows / (volts->high - volts->low),
                            g_new0 (float, (gsize) columns *(rows + 1)) };
}

void
bw_levels_dwell_clear (BwLevelsDwell *dwell)
{
  g_clear_pointer (&dwell->share, g_free);
}

/**
 * bw_levels_dwell_add:
 * @column: may lie beside the page
 *
 * Counts the time from one sample to the next, evenly over the rows that the signal goes through.
 */
void
bw_levels_dwell_add (BwLevelsDwell *dwell, double column, double from_v, double to_v)
{
  double from = (from_v - dwell->volts.low) * dwell->rows_per_v;
  double to = (to_v - dwell->volts.low) * dwell->rows_per_v;
  double low = MIN (from, to), high = MAX (from, to);

  if (column < 0 || column >= dwell->columns || high < 0 || low >= dwell->rows)
    return;
  int first = (int) MAX (low, 0), last = (int) MIN (high, dwell->rows - 1.0);
  float each = 1.0f / (float) ((int) high - (int) low + 1);
  float *at = dwell->share + (guint) column;
  at[(gsize) first * dwell->columns] += each;
  at[(gsize) (last + 1) * dwell->columns] -= each;
}

/* Makes each row out of the one below it. */
static void
sum_up (BwLevelsDwell *dwell)
{
  for (gsize i = dwell->columns; i < (gsize) dwell->columns * dwell->rows; i++)
    dwell->share[i] += dwell->share[i - dwell->columns];
}

/* The sum before @place. @sums holds the sum before each column; between two columns it is
 * interpolated. */
static double
sum_before (const double *sums, guint n, double place)
{
  double at = CLAMP (place, 0, n);
  guint column = MIN ((guint) at, n - 1);
  return sums[column] + (at - column) * (sums[column + 1] - sums[column]);
}

/* Replaces each of @n values by the sum over what is at most @reach away from its middle. */
static void
sum_around (float *values, guint n, double reach)
{
  g_autofree double *sums = g_new (double, n + 1);

  sums[0] = 0;
  for (guint i = 0; i < n; i++)
    sums[i + 1] = sums[i] + (double) values[i];
  for (guint i = 0; i < n; i++)
    values[i] = (float) (sum_before (sums, n, i + 0.5 + reach)
                         - sum_before (sums, n, i + 0.5 - reach));
}

/**
 * bw_levels_dwell_finish:
 * @line: its length, in columns
 *
 * Makes shares of the time out of what was counted, each column over whole lines.
 */
void
bw_levels_dwell_finish (BwLevelsDwell *dwell, double line)
{
  g_autofree float *all = g_new0 (float, dwell->columns);

  sum_up (dwell);
  for (guint row = 0; row < dwell->rows; row++)
    {
      float *at = dwell->share + row * dwell->columns;
      sum_around (at, dwell->columns, LINES_TOGETHER * line / 2);
      for (guint column = 0; column < dwell->columns; column++)
        all[column] += at[column];
    }
  for (guint row = 0; row < dwell->rows; row++)
    for (guint column = 0; column < dwell->columns; column++)
      dwell->share[row * dwell->columns + column] /= fmaxf (all[column], 1);
}

/* One row of the page, where the signal stays as long as @least or longer. */
static void
add_row (cairo_t *cr, const BwLevelsDwell *dwell, guint row, float least, const BwBox *box)
{
  const float *share = dwell->share + row * dwell->columns;
  double width = box->width / dwell->columns, height = box->height / dwell->rows;
  double y = box->y + (dwell->rows - 1 - row) * height;

  for (guint from = 0; from < dwell->columns; from++)
    {
      guint to = from;
      while (to < dwell->columns && share[to] >= least)
        to++;
      if (to > from)
        cairo_rectangle (cr, box->x + from * width, y, (to - from) * width, height);
      from = to;
    }
}

/**
 * bw_levels_dwell_draw:
 * @box: of the page
 */
void
bw_levels_dwell_draw (const BwLevelsDwell *dwell, cairo_t *cr, const BwInk *ink, BwInkRole role,
                      const BwBox *box)
{
  bw_ink_set_alpha (cr, ink, role, SHADE_ALPHA);
  for (guint shade = 0; shade < N_SHADES; shade++)
    {
      for (guint row = 0; row < dwell->rows; row++)
        add_row (cr, dwell, row, shades[shade] / (float) dwell->rows, box);
      cairo_fill (cr);
    }
}
