/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ratio.h"

/* 128-bit products cannot overflow for 64-bit factors, so each result is exact or refused. */
__extension__ typedef __int128 Wide;

/* Both in 64 bits, which is by far the most; @b is not zero. After one division what is left is
 * small, and subtracting with the twos taken out is quicker than dividing on. */
static guint64
narrow_divisor (guint64 a, guint64 b)
{
  a %= b;
  if (a == 0)
    return b;
  int twos = __builtin_ctzll (a | b);
  a >>= __builtin_ctzll (a);
  while (b != 0)
    {
      b >>= __builtin_ctzll (b);
      guint64 less = MIN (a, b);
      b = MAX (a, b) - less;
      a = less;
    }
  return a << twos;
}

static Wide
greatest_common_divisor (Wide a, Wide b)
{
  a = a < 0 ? -a : a;
  while (b != 0)
    {
      if (a <= G_MAXINT64 && b <= G_MAXINT64)
        return (Wide) narrow_divisor ((guint64) a, (guint64) b);
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
  if (num > 0 && den > 0)
    {
      gint64 divisor = (gint64) narrow_divisor ((guint64) num, (guint64) den);
      *ratio = (BwRatio){ num / divisor, den / divisor };
      return TRUE;
    }
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
