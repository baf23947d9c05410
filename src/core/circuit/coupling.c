/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "coupling.h"

#include <math.h>

/**
 * bw_picture_time:
 * @time: (out caller-allocates): of field 1 of @raster
 */
void
bw_picture_time (const BwRaster *raster, BwPictureTime *time)
{
  g_return_if_fail (raster != NULL && time != NULL);
  const BwFieldTiming *field = &raster->field[0];
  BwRasterFigures figures;

  bw_raster_figures (raster, &figures);
  *time = (BwPictureTime){
    .active_s = figures.h_active_s,
    .front_s = figures.h_front_porch_s + figures.h_border_s,
    .sync_s = figures.h_sync_s,
    .back_s = figures.h_back_porch_s + figures.h_border_s,
    .picture_lines = field->active / 2.0,
    .front_lines = field->front_porch / 2.0 + raster->v_border,
    .sync_lines = field->sync / 2.0,
    .back_lines = field->back_porch / 2.0 + raster->v_border,
    .serration_s = raster->serration_width_s / (bw_raster_is_broad_by_line (raster) ? 2 : 1),
  };
}

/**
 * bw_coupling_corner_hz:
 * @ohm: source and load in series around the capacitor, greater than zero
 * @farad: greater than zero
 *
 * Returns: where the level is down by 3 dB: 1/(2π R C)
 */
double
bw_coupling_corner_hz (double ohm, double farad)
{
  g_return_val_if_fail (ohm > 0 && farad > 0, 0);
  return 1 / (2 * G_PI * ohm * farad);
}

/* What happens to the voltage on the capacitor over some time: it becomes exp (−constants) times what
 * it was, plus added_v. Two such times in a row are again such a time, and so is one that passes
 * again and again, so that a field takes no more work than its different lines. */
typedef struct
{
  double constants; /* the time, in time constants R C */
  double added_v;
} Change;

/* A constant level, towards which the capacitor charges. */
static Change
level_for (double time_s, double level_v, double constant_s)
{
  double constants = time_s / constant_s;
  return (Change){ constants, -level_v * expm1 (-constants) };
}

static double
changed (double capacitor_v, Change by)
{
  return capacitor_v * exp (-by.constants) + by.added_v;
}

static Change
then (Change first, Change second)
{
  return (Change){ first.constants + second.constants, changed (first.added_v, second) };
}

/* The same again and again: a geometric series. */
static Change
repeated (Change once, double times)
{
  if (!(times > 0))
    return (Change){ 0, 0 };
  return (Change){ times * once.constants,
                   once.added_v * expm1 (-times * once.constants) / expm1 (-once.constants) };
}

/* What the voltage on the capacitor is at the start, if it is the same again at the end. */
static double
steady_v (Change all)
{
  return -all.added_v / expm1 (-all.constants);
}

static double
line_s (const BwPictureTime *time)
{
  return time->active_s + time->front_s + time->sync_s + time->back_s;
}

/* One line from the left edge of the picture on, with @level_v in the picture. */
static Change
line_of (const BwSteadyPicture *p, double level_v, double constant_s)
{
  Change line = level_for (p->time.active_s, level_v, constant_s);
  line = then (line, level_for (p->time.front_s, 0, constant_s));
  line = then (line, level_for (p->time.sync_s, p->sync_v, constant_s));
  return then (line, level_for (p->time.back_s, 0, constant_s));
}

/* A line of field sync: each half is sync but for the gap at its end. */
static Change
broad_line (const BwSteadyPicture *p, double constant_s)
{
  double half_s = line_s (&p->time) / 2;
  double gap_s = CLAMP (p->time.serration_s, 0, half_s);
  Change half = level_for (half_s - gap_s, p->sync_v, constant_s);
  return repeated (then (half, level_for (gap_s, 0, constant_s)), 2);
}

/* A half line at the end of a number of lines counts with the mean of its line. */
static Change
lines_of (Change line, double lines)
{
  double whole = floor (lines), rest = lines - whole;
  Change all = repeated (line, whole);
  if (!(rest > 0))
    return all;
  double mean_v = steady_v (line);
  Change part = { rest * line.constants, -mean_v * expm1 (-rest * line.constants) };
  return then (all, part);
}

static gboolean
is_picture (const BwSteadyPicture *p)
{
  return p->time.active_s > 0 && p->time.picture_lines * p->white_share >= 1 && p->white_share <= 1
         && fabs (p->white_v) > 0;
}

/**
 * bw_coupling_tilt:
 * @picture: with at least one white line
 * @ohm: as bw_coupling_corner_hz()
 * @tilt: (out caller-allocates): of what comes through
 *
 * The capacitor charges while the picture is white and discharges while there is blanking or black,
 * and in a steady picture it gives back in each field what it took. So it follows only how far the
 * signal departs from its mean, and a white field, which is blanked for a small part of the time,
 * tilts much less than a lone bar of the same length, which would fall by 1 − exp (−T/(R C)). Worked
 * out as the periodic solution of R C dv/dt = signal − v over one field, level by level; exact, but
 * that both fields of an interlaced raster count as the first.
 */
void
bw_coupling_tilt (const BwSteadyPicture *picture, double ohm, double farad, BwTilt *tilt)
{
  g_return_if_fail (picture != NULL && tilt != NULL && ohm > 0 && farad > 0);
  *tilt = (BwTilt){ 0, 0 };
  if (!is_picture (picture))
    return;
  const BwPictureTime *time = &picture->time;
  double constant_s = ohm * farad;
  double white_lines = time->picture_lines * picture->white_share;
  Change white = line_of (picture, picture->white_v, constant_s);
  Change blank = line_of (picture, 0, constant_s);

  Change field = lines_of (white, white_lines);
  field = then (field, lines_of (line_of (picture, picture->black_v, constant_s),
                                 time->picture_lines - white_lines));
  field = then (field, lines_of (blank, time->front_lines));
  field = then (field, lines_of (broad_line (picture, constant_s), time->sync_lines));
  field = then (field, lines_of (blank, time->back_lines));

  double first_v = steady_v (field);
  double last_v = changed (first_v, repeated (white, floor (white_lines) - 1));
  double middle_v = changed (first_v, repeated (white, floor (white_lines / 2)));
  double right_v = changed (middle_v, level_for (time->active_s, picture->white_v, constant_s));
  tilt->field = (last_v - first_v) / picture->white_v;
  tilt->line = (right_v - middle_v) / picture->white_v;
}

static double
one_tilt (const BwSteadyPicture *picture, double ohm, double farad, gboolean field)
{
  BwTilt tilt;
  bw_coupling_tilt (picture, ohm, farad, &tilt);
  return field ? tilt.field : tilt.line;
}

/* From a capacitor through which nothing is seen to fall down to one that holds for a line, in steps;
 * the step in which the tilt passes @wanted is halved until it is found. */
static double
farad_of_tilt (const BwSteadyPicture *picture, double ohm, double wanted, gboolean field)
{
  const double step = 1.25;

  if (!is_picture (picture) || !(wanted > 0))
    return 0;
  double least_f = line_s (&picture->time) / ohm / 100;
  double high_f = least_f * 1e12, low_f = high_f;
  while (low_f > least_f && one_tilt (picture, ohm, low_f, field) < wanted)
    {
      high_f = low_f;
      low_f /= step;
    }
  if (!(low_f > least_f) || !(low_f < high_f))
    return 0;
  while (high_f > low_f * (1 + 1e-12))
    {
      double middle_f = sqrt (low_f * high_f);
      if (!(middle_f > low_f && middle_f < high_f))
        break;
      if (one_tilt (picture, ohm, middle_f, field) < wanted)
        high_f = middle_f;
      else
        low_f = middle_f;
    }
  return sqrt (low_f * high_f);
}

/**
 * bw_coupling_farad_of_field_tilt:
 * @picture: as of bw_coupling_tilt()
 * @tilt: that is seen over the field, more than zero
 *
 * The reverse of bw_coupling_tilt(). A field cannot tilt by much more than its picture's share of
 * the time; a smaller capacitor makes every line fall by itself.
 *
 * Returns: the largest capacitor, in farads, that gives this tilt; zero if none does
 */
double
bw_coupling_farad_of_field_tilt (const BwSteadyPicture *picture, double ohm, double tilt)
{
  g_return_val_if_fail (picture != NULL && ohm > 0, 0);
  return farad_of_tilt (picture, ohm, tilt, TRUE);
}

/**
 * bw_coupling_farad_of_line_tilt:
 * @picture: as of bw_coupling_tilt()
 * @tilt: that is seen over the line, more than zero
 *
 * Returns: as bw_coupling_farad_of_field_tilt()
 */
double
bw_coupling_farad_of_line_tilt (const BwSteadyPicture *picture, double ohm, double tilt)
{
  g_return_val_if_fail (picture != NULL && ohm > 0, 0);
  return farad_of_tilt (picture, ohm, tilt, FALSE);
}

/**
 * bw_coupling_farad_of_bar:
 * @bar_s: length of a lone bar, which tilts the most
 * @tilt: allowed, more than 0 and less than 1
 *
 * Returns: the smallest capacitor with which the bar falls by @tilt or less: of 1 − exp (−T/(R C))
 */
double
bw_coupling_farad_of_bar (double bar_s, double ohm, double tilt)
{
  g_return_val_if_fail (bar_s >= 0 && ohm > 0 && tilt > 0 && tilt < 1, 0);
  return -bar_s / (ohm * log1p (-tilt));
}
