/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-private.h"

#include <math.h>

/* How much of the modulation each link leaves, and where too little is left. */

/* A low pass falls along a quarter of a cosine between these shares of its bandwidth, so that it
 * is at −3 dB in the middle (common practice, no source: the sound carrier stands 7 to 10 % above
 * the video band). */
#define LOW_PASS_FROM 0.9
#define LOW_PASS_TO 1.1

/* Halvings of an interval: more than the digits of a double. */
#define N_HALVINGS 60

/* sin(πx)/(πx). */
static double
sinc (double x)
{
  return fabs (x) > 0 ? sin (G_PI * x) / (G_PI * x) : 1;
}

/* Samples or columns, @x of their sampling limit. */
static double
sampled_mtf (double x)
{
  return x < 1 ? sinc (x) : 0;
}

static double
low_pass_mtf (double x)
{
  if (x <= LOW_PASS_FROM)
    return 1;
  return x < LOW_PASS_TO ? cos (G_PI / 2 * (x - LOW_PASS_FROM) / (LOW_PASS_TO - LOW_PASS_FROM)) : 0;
}

/* Samples that are drawn one by one, @x of their limit: only the box of each counts, and alternate ones
 * still differ. */
static double
in_phase_mtf (double x)
{
  return x < 1 ? sinc (x / 2) : 0;
}

static double
source_mtf (const BwDetailCase *what, double x)
{
  if (what->detail_hz > 0)
    return low_pass_mtf (x);
  return what->in_phase ? in_phase_mtf (x) : sampled_mtf (x);
}

/* A resonant circuit across the path, at −3 dB at @edge of its resonance. */
static double
notch_mtf (double x, double edge)
{
  double quality = edge / (1 - edge * edge);
  double off = fabs (1 - x * x);
  return off > 0 ? off / hypot (off, x / quality) : 0;
}

static double
signal_mtf (const BwDetailCase *what, double tvl)
{
  double trapped_hz = bw_detail_trapped_hz (what);
  double passed = low_pass_mtf (tvl / bw_detail_seen_tvl (what, bw_detail_system_hz (what)));
  if (!(trapped_hz > 0))
    return passed;
  return passed
         * notch_mtf (tvl / bw_detail_seen_tvl (what, trapped_hz),
                      bw_trap_edge_hz (trapped_hz) / trapped_hz);
}

/**
 * bw_gaussian_mtf:
 * @width_m: full width at half of the peak
 *
 * Returns: exp(−π²/(4 ln 2) · (f·w)²), which is exp(−2π²σ²f²)
 */
double
bw_gaussian_mtf (double width_m, double cycles_per_m)
{
  double product = width_m * cycles_per_m;
  return exp (-G_PI * G_PI / (4 * G_LN2) * product * product);
}

/* Width of a Gaussian spot to that of the line at which its MTF is BW_MODULATION_LIMIT: 1.985. */
double
bw_detail_spot_factor (void)
{
  return 2 * sqrt (-log (BW_MODULATION_LIMIT) * 4 * G_LN2) / G_PI;
}

/**
 * bw_detail_link_limit_tvl:
 *
 * Returns: the nominal limit of @link per viewable height, as bw_detail_compute() says; zero: not
 * known, or no limit
 */
double
bw_detail_link_limit_tvl (const BwDetailCase *what, BwDetailLink link)
{
  double height_m = bw_detail_height_m (what);
  double pitch_h_m = bw_detail_pitch_h_m (what);

  switch (link)
    {
    case BW_LINK_SOURCE:
      return bw_detail_seen_tvl (what, bw_detail_source_hz (what));
    case BW_LINK_SIGNAL:
      return bw_detail_seen_tvl (what, bw_detail_signal_hz (what));
    case BW_LINK_LEAD:
      return bw_detail_seen_tvl (what, what->lead_hz);
    case BW_LINK_AMPLIFIER:
      return bw_detail_seen_tvl (what, what->bandwidth_hz);
    case BW_LINK_SPOT:
      return what->spot_m > 0 ? height_m / what->spot_m * bw_detail_spot_factor () : 0;
    case BW_LINK_MASK:
      return pitch_h_m > 0 ? height_m / pitch_h_m : 0;
    case BW_N_LINKS:
    default:
      return 0;
    }
}

/**
 * bw_detail_link_mtf:
 * @tvl: TV lines per viewable height
 *
 * The share of the modulation of a fine sine that @link leaves. Source samples and mask columns:
 * sinc(x) of the sampling limit, zero from there on. A column averages over its width, and at worst
 * the peak of the sine falls between two columns: sinc(x/2)·cos(πx/2) = sinc(x); of samples in phase the
 * box alone, sinc(x/2), which leaves 2/π at the limit. A source's highest
 * frequency and a colour system's bandwidth: a steep low pass, −3 dB at the bandwidth (its shape is
 * common practice); with a trap, times the notch of a resonant circuit at the subcarrier. Lead:
 * skin effect, exp(−k√f), −3 dB at @lead_hz. Amplifiers: Gaussian, −3 dB at the bandwidth; it has
 * no overshoot, and rises in about 0.35/B. Spot: Gaussian, of its full width at half of the peak.
 *
 * Returns: 0 to 1; 1 where nothing is known of the link
 */
double
bw_detail_link_mtf (const BwDetailCase *what, BwDetailLink link, double tvl)
{
  double limit_tvl = bw_detail_link_limit_tvl (what, link);
  if (!(limit_tvl > 0) || !(tvl > 0))
    return 1;
  double x = tvl / limit_tvl;

  switch (link)
    {
    case BW_LINK_SOURCE:
      return source_mtf (what, x);
    case BW_LINK_SIGNAL:
      return signal_mtf (what, tvl);
    case BW_LINK_LEAD:
      return pow (BW_HALF_POWER, sqrt (x));
    case BW_LINK_AMPLIFIER:
      return pow (BW_HALF_POWER, x * x);
    case BW_LINK_SPOT:
      return bw_gaussian_mtf (what->spot_m, tvl / (2 * bw_detail_height_m (what)));
    case BW_LINK_MASK:
      return sampled_mtf (x);
    case BW_N_LINKS:
    default:
      return 1;
    }
}

/**
 * bw_detail_mtf:
 *
 * Returns: what all links together leave at @tvl: the product of bw_detail_link_mtf()
 */
double
bw_detail_mtf (const BwDetailCase *what, double tvl)
{
  double mtf = 1;
  for (guint link = 0; link < BW_N_LINKS; link++)
    mtf *= bw_detail_link_mtf (what, link, tvl);
  return mtf;
}

/* Where the link's MTF, which falls all the way there, is no more than BW_MODULATION_LIMIT. */
static double
link_end_tvl (const BwDetailCase *what, BwDetailLink link)
{
  double limit_tvl = bw_detail_link_limit_tvl (what, link);
  double steps = log (BW_MODULATION_LIMIT) / log (BW_HALF_POWER); /* of 3 dB */
  double trapped_tvl = bw_detail_seen_tvl (what, bw_detail_trapped_hz (what));

  switch (link)
    {
    case BW_LINK_SOURCE:
      return limit_tvl * (what->detail_hz > 0 ? LOW_PASS_TO : 1);
    case BW_LINK_SIGNAL:
      limit_tvl = bw_detail_seen_tvl (what, bw_detail_system_hz (what)) * LOW_PASS_TO;
      return trapped_tvl > 0 ? MIN (limit_tvl, trapped_tvl) : limit_tvl;
    case BW_LINK_LEAD:
      return limit_tvl * steps * steps;
    case BW_LINK_AMPLIFIER:
      return limit_tvl * sqrt (steps);
    case BW_LINK_SPOT:
    case BW_LINK_MASK:
    case BW_N_LINKS:
    default:
      return limit_tvl;
    }
}

static double
mtf_of (const BwDetailCase *what, BwDetailLink link, double tvl)
{
  return link < BW_N_LINKS ? bw_detail_link_mtf (what, link, tvl) : bw_detail_mtf (what, tvl);
}

/* @link: BW_N_LINKS for all of them. */
static double
falls_to (const BwDetailCase *what, BwDetailLink link, double end_tvl, double level)
{
  double low_tvl = 0, high_tvl = end_tvl;
  for (int i = 0; i < N_HALVINGS; i++)
    {
      double middle_tvl = (low_tvl + high_tvl) / 2;
      *(mtf_of (what, link, middle_tvl) > level ? &low_tvl : &high_tvl) = middle_tvl;
    }
  return high_tvl;
}

/**
 * bw_detail_link_level_tvl:
 * @level: modulation, %BW_MODULATION_LIMIT or more
 *
 * Returns: where the MTF of @link falls to @level; zero if nothing is known of it
 */
double
bw_detail_link_level_tvl (const BwDetailCase *what, BwDetailLink link, double level)
{
  return falls_to (what, link, link_end_tvl (what, link), level);
}

/**
 * bw_detail_level_tvl:
 * @level: modulation, %BW_MODULATION_LIMIT or more
 *
 * Returns: where bw_detail_mtf() first falls to @level; zero if no link is known
 */
double
bw_detail_level_tvl (const BwDetailCase *what, double level)
{
  double end_tvl = 0;
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      double own_tvl = link_end_tvl (what, link);
      if (own_tvl > 0)
        end_tvl = end_tvl > 0 ? MIN (end_tvl, own_tvl) : own_tvl;
    }
  return falls_to (what, BW_N_LINKS, end_tvl, level);
}
