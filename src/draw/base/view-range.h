/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BwViewRange:
 * @low: where the axis starts
 * @high: where it ends, greater than @low
 * @least: the smallest part that can be shown, greater than zero
 * @from: where the part that is shown starts, not less than @low
 * @to: where it ends, not greater than @high
 *
 * The part of an axis that a drawing shows, all in the unit of the axis: seconds after the datum
 * along a time axis, lines down a map. Plain data; nothing to free.
 */
typedef struct
{
  double low;
  double high;
  double least;
  double from;
  double to;
} BwViewRange;

void bw_view_range_init (BwViewRange *range, double low, double high, double least);
gboolean bw_view_range_is_whole (const BwViewRange *range);
void bw_view_range_show (BwViewRange *range, double from, double to);
void bw_view_range_show_as (BwViewRange *range, const BwViewRange *before);
void bw_view_range_zoom (BwViewRange *range, double about, double factor);
void bw_view_range_pan (BwViewRange *range, double by);
double bw_view_range_place (const BwViewRange *range, double value, double start, double end);
double bw_view_range_value (const BwViewRange *range, double place, double start, double end);

G_END_DECLS
