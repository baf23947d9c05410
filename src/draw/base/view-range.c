/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-range.h"

#include <math.h>

/**
 * bw_view_range_init:
 * @range: (out caller-allocates)
 * @low: where the axis starts
 * @high: where it ends
 * @least: the smallest part that can be shown; the whole axis if it is shorter
 *
 * Makes a range that shows the whole axis.
 */
void
bw_view_range_init (BwViewRange *range, double low, double high, double least)
{
  g_return_if_fail (isfinite (low) && isfinite (high) && low < high && least > 0);
  *range = (BwViewRange){ low, high, MIN (least, high - low), low, high };
}

/**
 * bw_view_range_is_whole:
 *
 * Returns: whether the whole axis is shown
 */
gboolean
bw_view_range_is_whole (const BwViewRange *range)
{
  g_return_val_if_fail (range != NULL, FALSE);
  return range->from <= range->low && range->to >= range->high;
}

/* Shows a part of @length that starts as near to @from as the ends of the axis allow. */
static void
show_length (BwViewRange *range, double from, double length)
{
  length = CLAMP (length, range->least, range->high - range->low);
  range->from = CLAMP (from, range->low, MAX (range->high - length, range->low));
  range->to = MIN (range->from + length, range->high);
}

/**
 * bw_view_range_show:
 * @from: where the part starts
 * @to: where it ends; the two may be given in either order
 *
 * Shows a part of the axis. A part that is smaller than the least grows about its middle; one that
 * reaches past an end of the axis moves inside.
 */
void
bw_view_range_show (BwViewRange *range, double from, double to)
{
  g_return_if_fail (isfinite (from) && isfinite (to));
  double length = MAX (fabs (to - from), range->least);
  show_length (range, (from + to - length) / 2, length);
}

#define SAME_AXIS 1e-6 /* of the length of an axis: its ends are rounded */

/**
 * bw_view_range_show_as:
 * @before: the range of an earlier drawing
 *
 * Shows the same part as @before does, if that is a part of the same axis.
 */
void
bw_view_range_show_as (BwViewRange *range, const BwViewRange *before)
{
  g_return_if_fail (range != NULL && before != NULL);
  double slack = SAME_AXIS * (before->high - before->low);

  if (!bw_view_range_is_whole (before) && fabs (before->low - range->low) < slack
      && fabs (before->high - range->high) < slack)
    bw_view_range_show (range, before->from, before->to);
}

/**
 * bw_view_range_zoom:
 * @about: the value that keeps its place, as far as the ends of the axis allow
 * @factor: how much larger things become; less than one goes the other way
 */
void
bw_view_range_zoom (BwViewRange *range, double about, double factor)
{
  g_return_if_fail (isfinite (about) && isfinite (factor) && factor > 0);
  double before = range->to - range->from;
  double after = CLAMP (before / factor, range->least, range->high - range->low);
  double share = (CLAMP (about, range->from, range->to) - range->from) / before;
  show_length (range, CLAMP (about, range->from, range->to) - share * after, after);
}

/**
 * bw_view_range_pan:
 * @by: how far the part moves along the axis; it stops at the ends
 */
void
bw_view_range_pan (BwViewRange *range, double by)
{
  g_return_if_fail (isfinite (by));
  show_length (range, range->from + by, range->to - range->from);
}

/**
 * bw_view_range_place:
 * @value: on the axis
 * @start: where the page begins along the axis
 * @end: where it ends
 *
 * Returns: where on the page @value lies; beyond @start or @end if it is not shown
 */
double
bw_view_range_place (const BwViewRange *range, double value, double start, double end)
{
  return start + (value - range->from) / (range->to - range->from) * (end - start);
}

/**
 * bw_view_range_value:
 * @place: on the page
 * @start: where the page begins along the axis; not the same as @end
 * @end: where it ends
 *
 * Returns: the value at @place, the other way round from bw_view_range_place()
 */
double
bw_view_range_value (const BwViewRange *range, double place, double start, double end)
{
  return range->from + (place - start) / (end - start) * (range->to - range->from);
}
