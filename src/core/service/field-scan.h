/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A field output stage whose yoke is coupled by a capacitor and driven in voltage, or with weak current
 * feedback: what the capacitor does to the picture. Positions go from 0 at the top of the picture to 1
 * at its bottom. */

/**
 * BwFieldStage:
 * @ohm: of yoke and sense resistor together; with feedback, the sense resistor counts as often as the
 *   gain says
 * @henry: of the yoke; zero: left out
 * @scan_s: visible part of the scan
 * @retrace_s: flyback; zero: quick
 */
typedef struct
{
  double farad;
  double ohm;
  double henry;
  double scan_s;
  double retrace_s;
} BwFieldStage;

/**
 * BwFieldScan:
 * @a: length of the scan over the time constant of resistance and capacitor
 * @bow: how far the picture is off straight at the most, as a share of its height; above zero: the
 *   middle lies too low
 * @bow_at: where that is
 * @pitch: distance of the lines at the top over that at the bottom
 * @height: of the picture, over that with an endless capacitor
 */
typedef struct
{
  double a;
  double bow;
  double bow_at;
  double pitch;
  double height;
} BwFieldScan;

void bw_field_scan (const BwFieldStage *stage, BwFieldScan *scan);
double bw_field_scan_position (const BwFieldStage *stage, double x);

/**
 * BwFieldRows:
 * @n: equal rows of a test picture; zero: none
 * @first: height of the first one, in any unit
 * @last: height of the last one, in the same unit
 */
typedef struct
{
  guint n;
  double first;
  double last;
} BwFieldRows;

#define BW_FIELD_ROWS_MAX 1000

double bw_field_scan_of_rows (const BwFieldRows *rows);

G_END_DECLS
