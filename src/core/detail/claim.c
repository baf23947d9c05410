/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-private.h"

#include <math.h>

/* Whether a claim of so many TV lines is true. */

/* Rounding must not push a claim that lies on a limit over it. */
#define ON_THE_LIMIT (1 + 1e-9)

/**
 * bw_detail_least_claim:
 *
 * Returns: the least number of TV lines that may be meant by the claim, by its digits
 */
double
bw_detail_least_claim (const BwDetailCase *what)
{
  g_return_val_if_fail (what != NULL, 0);
  return what->claimed_lines - what->claimed_half_digit;
}

static gboolean
carries (double tvl, const BwDetailCase *what)
{
  return bw_detail_least_claim (what) <= tvl * ON_THE_LIMIT;
}

/* TRUE if mask and spot resolve the claim. One that is not known, or not there, does not count. */
static gboolean
tube_carries (const BwDetailCase *what, const BwDetail *detail)
{
  return (!(detail->mask_tvl > 0) || carries (detail->mask_tvl, what))
         && (!(detail->spot_tvl > 0) || carries (detail->spot_tvl, what));
}

/* A claim is a round figure: so much less than it is still it (common practice, no source). */
#define CLAIM_ROUNDING 0.05

/* TRUE if mask, spot and bandwidth together resolve the claim, as far as they are known. */
static gboolean
carries_together (const BwDetailCase *what, const BwDetail *detail)
{
  double together_tvl = bw_detail_claim_together_tvl (detail);
  return !(together_tvl > 0) || together_tvl >= MIN ((1 - CLAIM_ROUNDING) * what->claimed_lines,
                                                  bw_detail_least_claim (what));
}

static BwClaim
judge (const BwDetailCase *what, const BwDetail *detail)
{
  gboolean path_known = detail->bandwidth_tvl > 0;
  gboolean figure_of_tube = detail->mask_tvl > 0 || detail->spot_tvl > 0;
  gboolean tube_known = figure_of_tube || what->mask == BW_MASK_MONO;

  if (!(what->claimed_lines > 0))
    return BW_CLAIM_NONE;
  if (!path_known && !figure_of_tube)
    return BW_CLAIM_UNKNOWN;
  gboolean by_path = carries (detail->bandwidth_tvl, what);
  gboolean by_tube = tube_known && tube_carries (what, detail);
  if (by_tube && (!path_known || by_path))
    return carries_together (what, detail) ? BW_CLAIM_SUPPORTED : BW_CLAIM_NOT_TOGETHER;
  if (by_tube)
    return figure_of_tube ? BW_CLAIM_BY_TUBE : BW_CLAIM_NOT_SUPPORTED;
  return by_path ? BW_CLAIM_BY_BANDWIDTH : BW_CLAIM_NOT_SUPPORTED;
}

/**
 * bw_detail_claim:
 * @detail: has its size and limits
 *
 * Holds the claim against the mask's sampling limit, the spot at 3 % and the bandwidth over the
 * whole line, each by itself and all together, and turns each of these round. What is not known is not held against it, save that a
 * bandwidth alone does not make a claim true of a tube with a mask.
 */
void
bw_detail_claim (const BwDetailCase *what, BwDetail *detail)
{
  double lines = what->claimed_lines;

  detail->claim = judge (what, detail);
  if (!(lines > 0))
    return;
  double line_m = detail->height_m / lines;
  if (what->mask != BW_MASK_MONO)
    detail->pitch_for_claim_m = what->mask == BW_MASK_DOT ? line_m / BW_DOT_MASK_COLUMNS : line_m;
  detail->spot_for_claim_m = line_m * bw_detail_spot_factor ();
  detail->bandwidth_for_claim_hz = bw_hz_from_tvl (lines, what->active_s,
                                                   bw_ratio_to_double (what->aspect));
}

/**
 * bw_detail_claim_together_tvl:
 *
 * Returns: what mask, spot and bandwidth, each of which a claim is held against, leave together:
 * 1/TVL² adds; zero unless two of them are known
 */
double
bw_detail_claim_together_tvl (const BwDetail *detail)
{
  const double limits_tvl[] = { detail->mask_tvl, detail->spot_tvl, detail->bandwidth_tvl };
  double sum = 0;
  guint n_known = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (limits_tvl); i++)
    if (limits_tvl[i] > 0)
      {
        sum += 1 / (limits_tvl[i] * limits_tvl[i]);
        n_known++;
      }
  return n_known > 1 ? 1 / sqrt (sum) : 0;
}
