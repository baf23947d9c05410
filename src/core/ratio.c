/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ratio.h"

/* 128-bit products cannot overflow for 64-bit factors, so each result is exact or refused. */
__extension__ typedef __int128 Wide;

static Wide
greatest_common_divisor (Wide a, Wide b)
{
  a = a < 0 ? -a : a;
  while (b != 0)
    {
      Wide rest = a % b;
      a = b;
      b = rest;
    }
  return a;
}

static gboolean
reduce (Wide num, Wide den, BwRatio *ratio)
{
  if (den == 0)
    return FALSE;
  if (den < 0)
    {
      num = -num;
      den = -den;
    }
  Wide divisor = greatest_common_divisor (num, den);
  num /= divisor;
  den /= divisor;
  if (num > G_MAXINT64 || num < -G_MAXINT64 || den > G_MAXINT64)
    return FALSE;
  *ratio = (BwRatio){ (gint64) num, (gint64) den };
  return TRUE;
}

/**
 * bw_ratio_make:
 * @num: numerator
 * @den: denominator; zero is refused
 * @ratio: (out): @num / @den in lowest terms with a positive denominator
 *
 * Returns: %FALSE, leaving @ratio alone, if @den is zero or the result does not fit in 64 bits.
 */
gboolean
bw_ratio_make (gint64 num, gint64 den, BwRatio *ratio)
{
  return reduce (num, den, ratio);
}

/**
 * bw_ratio_multiply:
 * @product: (out): @a × @b, exactly
 *
 * Returns: %FALSE, leaving @product alone, if the result does not fit in 64 bits.
 */
gboolean
bw_ratio_multiply (BwRatio a, BwRatio b, BwRatio *product)
{
  return reduce ((Wide) a.num * b.num, (Wide) a.den * b.den, product);
}

/**
 * bw_ratio_divide:
 * @quotient: (out): @a / @b, exactly
 *
 * Returns: %FALSE, leaving @quotient alone, if @b is zero or the result does not fit in 64 bits.
 */
gboolean
bw_ratio_divide (BwRatio a, BwRatio b, BwRatio *quotient)
{
  return reduce ((Wide) a.num * b.den, (Wide) a.den * b.num, quotient);
}

/**
 * bw_ratio_compare:
 *
 * Returns: less than, equal to or greater than zero as @a is less than, equal to or greater
 * than @b; exact.
 */
int
bw_ratio_compare (BwRatio a, BwRatio b)
{
  Wide left = (Wide) a.num * b.den;
  Wide right = (Wide) b.num * a.den;
  return (left > right) - (left < right);
}

/**
 * bw_ratio_to_double:
 *
 * Returns: the nearest double to the quotient (within one unit in the last place when both
 * terms exceed 2^53).
 */
double
bw_ratio_to_double (BwRatio ratio)
{
  return (double) ratio.num / (double) ratio.den;
}
