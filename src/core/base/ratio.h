/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BwRatio:
 * @num: numerator
 * @den: denominator, greater than zero
 *
 * An exact rational number in lowest terms. Rates are kept as ratios because the standards define
 * them so: the 525-line line rate is 4.5 MHz / 286, not 15.734 kHz. A ratio of 0/1 stands for
 * "none".
 */
typedef struct
{
  gint64 num;
  gint64 den;
} BwRatio;

#define BW_RATIO_NONE ((BwRatio){ 0, 1 })

gboolean bw_ratio_make (gint64 num, gint64 den, BwRatio *ratio);
gboolean bw_ratio_multiply (BwRatio a, BwRatio b, BwRatio *product);
gboolean bw_ratio_divide (BwRatio a, BwRatio b, BwRatio *quotient);
int bw_ratio_compare (BwRatio a, BwRatio b);
double bw_ratio_to_double (BwRatio ratio);

/**
 * bw_ratio_is_none:
 *
 * Returns: whether @ratio is zero, which stands for "not given".
 */
static inline gboolean
bw_ratio_is_none (BwRatio ratio)
{
  return ratio.num == 0;
}

G_END_DECLS
