/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tube-raster-private.h"

#include <math.h>

/* Where sync, porches and picture of a made raster lie.
 *
 * The porches and sync have the share of the line that they have in the standard. The beam flies back
 * during the retrace and scans for the rest of the period; what is seen of the scan is
 * (period − retrace) × (1 − overscan). Where the picture of the standard is wider than that, it is made
 * narrower, and what it leaves is shared by both porches, so that its middle stays where a set that is
 * adjusted to the standard has its own.
 *
 * Along the field a standard's picture keeps its middle too. Without a standard the middle of the picture
 * meets the middle of the scan: the retrace starts with sync, so the middle of the scan is
 * (period + retrace) / 2 after it and that of the picture (period + sync-to-picture − front porch) / 2:
 * they meet when sync-to-picture − front porch = retrace. */

/**
 * bw_tube_retrace_half_lines:
 *
 * Returns: how many half lines the field retrace takes
 */
double
bw_tube_retrace_half_lines (const BwTubeSearch *search, double line_rate_hz)
{
  return 2 * search->monitor->field_retrace_s * line_rate_hz;
}

/**
 * bw_tube_hidden_lines:
 * @half_lines: of a field, all
 *
 * Returns: how many lines of a field's picture lie behind the edge of the glass, top and bottom
 * together; zero or less: none
 */
double
bw_tube_hidden_lines (const BwTubeSearch *search, double line_rate_hz, int half_lines)
{
  double scanned = half_lines - bw_tube_retrace_half_lines (search, line_rate_hz);
  return (search->active_half_lines - scanned * (1 - search->monitor->overscan_v)) / 2;
}

static void
lay_out_field (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, BwRaster *raster)
{
  int blanking = skeleton->half_lines - search->active_half_lines;
  double retrace
      = bw_tube_retrace_half_lines (search, bw_ratio_to_double (skeleton->line_rate_hz));
  double middle = skeleton->v_active > 0
                      ? skeleton->v_front + (skeleton->v_active - search->active_half_lines) / 2.0
                      : (blanking - retrace) / 2;
  /* The front porch is whole lines, at least one; so is what is left after sync. */
  int front = CLAMP ((int) round (middle / 2) * 2, 2, blanking - skeleton->v_sync - 2);

  raster->scan = search->request->interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  raster->field[0] = (BwFieldTiming){ search->active_half_lines, front, skeleton->v_sync,
                                      blanking - front - skeleton->v_sync };
  raster->field[1] = raster->field[0];
  if (search->request->interlaced)
    {
      /* Fields of whole lines and the half: the first has its half line taken from the back porch,
       * the second has it before its sync. */
      raster->field[0].back_porch--;
      raster->field[1].front_porch++;
    }
}

/* The longest share of the line that the picture may take. */
static double
active_share (const BwTubeSearch *search, const BwTubeSkeleton *skeleton)
{
  double line_rate_hz = bw_ratio_to_double (skeleton->line_rate_hz);
  double retrace = search->monitor->line_retrace_s * line_rate_hz;
  double standard = 1 - skeleton->front - skeleton->sync - skeleton->back;
  double share = MIN (standard, 1 - retrace * (1 + search->limits->blanking) * (1 + 1e-9));
  double seen = (1 - retrace) * (1 - search->monitor->overscan_h);
  return search->request->overscan ? share : MIN (share, seen);
}

/* The clamp that needs most, of the input in question or of all that the set has. */
static double
least_back_porch_s (const BwTubeSearch *search, double line_period_s)
{
  double least_s = 0;
  if (search->request->input != NULL)
    return bw_input_clamp_needs (search->request->input, line_period_s).tight_s;
  for (guint i = 0; i < search->monitor->inputs->len; i++)
    least_s = MAX (least_s, bw_input_clamp_needs (bw_monitor_input (search->monitor, i),
                                                  line_period_s).tight_s);
  return least_s;
}

/* A picture that takes less of the line than this is none. */
#define LEAST_ACTIVE 0.2

static int
up_to_multiple (double pixels, int multiple)
{
  return (int) ceil (pixels / multiple - 1e-9) * multiple;
}

static int
near_multiple (double pixels, int multiple)
{
  return MAX ((int) round (pixels / multiple), 1) * multiple;
}

/* FALSE: the retrace leaves next to nothing of the line. */
static gboolean
lay_out_line (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, BwRaster *raster)
{
  int multiple = MAX (search->request->clock.multiple, 1);
  double period_s = 1 / bw_ratio_to_double (skeleton->line_rate_hz);
  double share = active_share (search, skeleton);
  if (share < LEAST_ACTIVE)
    return FALSE;
  double total = search->request->width / share;
  double extra = (1 - skeleton->front - skeleton->sync - skeleton->back - share) * total / 2;
  double least_back = least_back_porch_s (search, period_s) / period_s * total;

  raster->h_active = search->request->width;
  raster->h_front_porch = near_multiple (skeleton->front * total + extra, multiple);
  raster->h_sync = near_multiple (skeleton->sync * total, multiple);
  raster->h_back_porch = near_multiple (skeleton->back * total + extra, multiple);
  raster->h_back_porch = MAX (raster->h_back_porch, up_to_multiple (least_back, multiple));
  /* Rounding may leave blanking a touch short of the retrace. */
  while (bw_raster_h_total (raster) * share < search->request->width - 1e-6)
    raster->h_back_porch += multiple;
  return TRUE;
}

/* The ratio nearest to @value, in thousandths. */
static gboolean
in_thousandths (double value, BwRatio *ratio)
{
  return bw_ratio_make ((gint64) llround (value * 1000), 1000, ratio);
}

/* A clock of whole steps makes another line rate. Which total comes nearest to the wanted one? At most a
 * fifteenth of the line is added, on both sides of the picture. */
static gboolean
step_clock (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, BwRaster *raster)
{
  int multiple = MAX (search->request->clock.multiple, 1);
  double line_rate_hz = bw_ratio_to_double (skeleton->line_rate_hz);
  double step_hz = search->request->clock.step_hz;
  int total = bw_raster_h_total (raster), best = total;
  double best_off = INFINITY;

  for (int tried = total; tried <= total + total / 15; tried += multiple)
    {
      double clock_hz = MAX (round (tried * line_rate_hz / step_hz), 1) * step_hz;
      double off = fabs (clock_hz / tried - line_rate_hz) / line_rate_hz;
      if (off < best_off - 1e-7)
        {
          best_off = off;
          best = tried;
        }
    }
  int front = (best - total) / multiple / 2 * multiple;
  raster->h_front_porch += front;
  raster->h_back_porch += best - total - front;
  return in_thousandths (MAX (round (best * line_rate_hz / step_hz), 1) * step_hz,
                         &raster->pixel_clock_hz)
         && bw_ratio_divide (raster->pixel_clock_hz, (BwRatio){ best, 1 }, &raster->line_rate_hz);
}

/* Sets the clock, and how often each pixel is sent for the clock to be high enough. */
static gboolean
set_clock (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, BwRaster *raster,
           int *widened)
{
  const BwClockReach *reach = &search->request->clock;
  double clock_hz = bw_ratio_to_double (skeleton->line_rate_hz) * bw_raster_h_total (raster);

  *widened = MAX ((int) ceil (reach->lowest_hz / clock_hz - 1e-9), 1);
  raster->h_active *= *widened;
  raster->h_front_porch *= *widened;
  raster->h_sync *= *widened;
  raster->h_back_porch *= *widened;
  if (reach->step_hz > 0)
    return step_clock (search, skeleton, raster);
  raster->line_rate_hz = skeleton->line_rate_hz;
  return bw_ratio_multiply (raster->line_rate_hz, (BwRatio){ bw_raster_h_total (raster), 1 },
                            &raster->pixel_clock_hz);
}

/**
 * bw_tube_lay_out:
 * @widened: (out): how many pixels stand for one
 *
 * Sets all intervals of @raster, its line rate and its clock.
 *
 * Returns: whether the figures could be held
 */
gboolean
bw_tube_lay_out (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, BwRaster *raster,
                 int *widened)
{
  lay_out_field (search, skeleton, raster);
  if (!lay_out_line (search, skeleton, raster))
    return FALSE;
  raster->h_polarity = skeleton->h_polarity;
  raster->v_polarity = skeleton->v_polarity;
  return set_clock (search, skeleton, raster, widened);
}
