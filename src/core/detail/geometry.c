/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-private.h"

#include <math.h>

/* On the glass: the size of the picture, the mask's columns, the scanning lines, their beats. */

/* From this width on, in line pitches, the sum over frequencies needs fewer terms than that over
 * lines. */
#define WIDE_LINE 0.5

/* Terms beyond this one are less than the last place of a double: of a sum over lines
 * exp(−4 ln 2 · 20²), of one over frequencies exp(−π²/(4 ln 2) · (10/2)²). */
#define N_TERMS 10

/* Pitches that differ by less than this share are one: their beat is longer than any screen. */
#define SAME_PITCH 1e-6

static double
diagonal_share (const BwDetailCase *what, double side)
{
  double diagonal = hypot ((double) what->aspect.num, (double) what->aspect.den);
  gboolean known = what->diagonal_m > 0 && what->aspect.num > 0;
  return known ? what->diagonal_m * side / diagonal : 0;
}

/* Of the viewable area; zero: not known. */
double
bw_detail_height_m (const BwDetailCase *what)
{
  return diagonal_share (what, (double) what->aspect.den);
}

static double
tube_width_m (const BwDetailCase *what)
{
  return diagonal_share (what, (double) what->aspect.num);
}

/* Pitch of the mask's columns; zero: no mask, or not known. Without the kind of mask it is not known
 * which way its pitch is quoted. */
double
bw_detail_pitch_h_m (const BwDetailCase *what)
{
  if (what->mask == BW_MASK_MONO || what->mask >= BW_N_MASKS || what->pitch_m <= 0)
    return 0;
  return what->mask == BW_MASK_DOT ? what->pitch_m * BW_DOT_MASK_COLUMNS : what->pitch_m;
}

static double
seen_share (double overscan)
{
  return overscan > 0 && overscan < 1 ? 1 - overscan : 1;
}

/* The part of the active line that is inside the viewable area; zero: no raster. */
double
bw_detail_seen_s (const BwDetailCase *what)
{
  return what->active_s > 0 ? what->active_s * seen_share (what->overscan_h) : 0;
}

/* A Gaussian line of unit width, at @distance from its centre. */
static double
line_profile (double distance)
{
  return exp (-4 * G_LN2 * distance * distance);
}

/* Depth of harmonic @n of Gaussian lines at unit pitch. */
static double
line_harmonic (double width, int n)
{
  return bw_gaussian_mtf (width, n);
}

/* The two sums below give the same function: one adds lines, the other frequencies (the summation
 * formula of Poisson). */
static double
brightness_over_lines (double width, double place)
{
  double sum = 0;
  for (int k = -N_TERMS; k <= N_TERMS; k++)
    sum += line_profile ((place - k) / width);
  return sum * 2 * sqrt (G_LN2 / G_PI) / width;
}

static double
brightness_over_frequencies (double width, double place)
{
  double sum = 1;
  for (int n = 1; n <= N_TERMS; n++)
    sum += 2 * line_harmonic (width, n) * cos (2 * G_PI * n * place);
  return MAX (sum, 0);
}

/**
 * bw_line_brightness:
 * @width_to_pitch: full width at half of the peak of a Gaussian line, to the line pitch
 * @place: in line pitches from the centre of a line
 *
 * A flat field of many equal lines, summed exactly.
 *
 * Returns: the brightness at @place, the mean being 1; zero if @width_to_pitch is not more than
 * zero
 */
double
bw_line_brightness (double width_to_pitch, double place)
{
  if (!(width_to_pitch >= G_MINDOUBLE))
    return 0;
  double near = remainder (place, 1);
  return width_to_pitch < WIDE_LINE ? brightness_over_lines (width_to_pitch, near)
                                    : brightness_over_frequencies (width_to_pitch, near);
}

/* (max − min)/(max + min) of the sum over frequencies: its odd terms to its even ones. */
static double
modulation_over_frequencies (double width)
{
  double odd = 0, even = 1;
  for (int n = 1; n <= N_TERMS; n++)
    *(n % 2 ? &odd : &even) += 2 * line_harmonic (width, n);
  return odd / even;
}

/**
 * bw_line_modulation:
 * @width_to_pitch: as in bw_line_brightness()
 *
 * How strongly the scanning lines show on a flat field.
 *
 * Returns: (max − min)/(max + min) of the brightness across the lines, 0 to 1; 1 for lines of no
 * width
 */
double
bw_line_modulation (double width_to_pitch)
{
  if (!(width_to_pitch > 0))
    return 1;
  if (width_to_pitch >= WIDE_LINE)
    return modulation_over_frequencies (width_to_pitch);
  double on = 0, between = 0;
  for (int k = -N_TERMS; k <= N_TERMS; k++)
    {
      on += line_profile (k / width_to_pitch);
      between += line_profile ((k + 0.5) / width_to_pitch);
    }
  return (on - between) / (on + between);
}

/**
 * bw_beat_period_m:
 *
 * Returns: the period of the moire of two gratings of pitches @a_m and @b_m that lie the same way,
 * 1/|1/a − 1/b|; zero if a pitch is not known (zero), or if the two are the same and there is no
 * beat
 */
double
bw_beat_period_m (double a_m, double b_m)
{
  double difference_m = fabs (a_m - b_m);
  if (!(a_m > 0) || !(b_m > 0) || difference_m <= SAME_PITCH * MAX (a_m, b_m))
    return 0;
  return a_m / difference_m * b_m;
}

/* The beat that shows: of the two pitches as they are, or, where one is near half of the other, of
 * its second harmonic, 1/|2/coarse − 1/fine|. A beat that is no longer than the coarser of the two
 * does not stand out from it: zero. */
static double
visible_beat_m (double a_m, double b_m)
{
  double coarse_m = MAX (a_m, b_m), fine_m = MIN (a_m, b_m);
  double beat_m = MAX (bw_beat_period_m (a_m, b_m), bw_beat_period_m (coarse_m / 2, fine_m));
  return beat_m > coarse_m * (1 + SAME_PITCH) ? beat_m : 0;
}

/* The samples of the picture as they lie on the glass. */
static double
sample_pitch_m (const BwDetailCase *what, double width_m)
{
  return what->samples > 0 ? width_m / seen_share (what->overscan_h) / what->samples : 0;
}

/**
 * bw_detail_geometry:
 *
 * Size, columns and the mask's limits. A dot mask is hexagonal: its quoted pitch is between nearest
 * dots of a colour, and its columns lie cos 30° of that apart.
 */
void
bw_detail_geometry (const BwDetailCase *what, BwDetail *detail)
{
  detail->width_m = tube_width_m (what);
  detail->height_m = bw_detail_height_m (what);
  detail->pitch_h_m = bw_detail_pitch_h_m (what);
  if (detail->pitch_h_m > 0)
    {
      detail->stripes_across = detail->width_m / detail->pitch_h_m;
      detail->mask_tvl = detail->height_m / detail->pitch_h_m;
      detail->mask_practical_tvl = detail->mask_tvl / BW_MASK_PRACTICAL;
    }
  detail->moire_samples_mask_m = visible_beat_m (sample_pitch_m (what, detail->width_m),
                                                 detail->pitch_h_m);
}

/* The spot that draws the lines. */
static void
choose_spot (const BwDetailCase *what, BwDetail *detail)
{
  gboolean masked = what->mask != BW_MASK_MONO && what->pitch_m > 0;

  detail->line_spot_from = what->spot_m > 0 ? BW_SPOT_GIVEN
                           : masked         ? BW_SPOT_BY_PITCH
                                            : BW_SPOT_BY_DIAGONAL;
  detail->line_spot_m = what->spot_m > 0 ? what->spot_m
                        : masked         ? BW_SPOT_PER_PITCH * what->pitch_m
                                         : BW_SPOT_PER_DIAGONAL * what->diagonal_m;
}

/**
 * bw_detail_lines:
 * @detail: has its size
 *
 * Vertical detail and the line structure. The spot is taken to be as high as it is wide. A dot
 * mask's columns are shifted by half a pitch in turn, so its rows lie half a pitch apart; a grille
 * has no rows, and those of a slot mask are not known.
 */
void
bw_detail_lines (const BwDetailCase *what, BwDetail *detail)
{
  double interlace = what->interlaced ? what->interlace : 1;

  detail->line_modulation = -1;
  choose_spot (what, detail);
  if (what->active_lines <= 0)
    return;
  detail->seen_lines = what->active_lines * seen_share (what->overscan_v);
  detail->vertical_lines = detail->seen_lines * MAX (what->kell, 0) * MAX (interlace, 0);
  detail->line_pitch_m = detail->height_m / detail->seen_lines;
  detail->arc_minute_m = detail->line_pitch_m / tan (G_PI / (180 * 60));
  if (what->mask == BW_MASK_DOT)
    detail->moire_lines_mask_m = visible_beat_m (detail->line_pitch_m, what->pitch_m / 2);
  if (detail->line_spot_m > 0 && detail->line_pitch_m > 0)
    {
      detail->line_width_ratio = detail->line_spot_m / detail->line_pitch_m;
      detail->line_modulation = bw_line_modulation (detail->line_width_ratio);
    }
}
