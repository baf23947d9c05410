/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-scan.h"

#include <complex.h>
#include <math.h>

/* The stage gives a voltage that rises evenly over the scan. Without inductance the current through
 * resistance R and capacitor C then falls behind a straight line as 1 − e^(−t/RC) does. With the
 * inductance L of the yoke, and a flyback that takes no time, it is
 *
 *   i = 2A·RC/T + K1·e^(s1·t) + K2·e^(s2·t),   s = (−R ± √(R² − 4L/C)) / 2L,
 *   K1 = −2A·s2 / (s2 − s1) / (1 − e^(s1·T)),   K2 = 2A·s1 / (s2 − s1) / (1 − e^(s2·T)),
 *
 * where 2A is the whole swing: the steady state of L·i'' + R·i' + i/C = const with equal slopes at both
 * ends. The roots may be complex. */

/* Two roots that are one make 0/0; a step of this size beside it changes no figure that is shown. */
#define BESIDE 1e-9

/* A share of its highest value below which an inductance does not matter: it only adds rounding. */
#define NO_HENRY 1e-7

typedef struct
{
  double complex s[2];
  double complex k[2];
} Roots;

static void
find_roots (const BwFieldStage *stage, Roots *roots)
{
  double r = stage->ohm, l = stage->henry, t = stage->scan_s;
  double under = r * r - 4 * l / stage->farad;
  if (fabs (under) < BESIDE * r * r)
    under = BESIDE * r * r;
  double complex root = csqrt ((double complex) under);
  double complex s1 = (-r + root) / (2 * l), s2 = (-r - root) / (2 * l);

  roots->s[0] = s1;
  roots->s[1] = s2;
  roots->k[0] = -s2 / (s2 - s1) / (1 - cexp (s1 * t));
  roots->k[1] = s1 / (s2 - s1) / (1 - cexp (s2 * t));
}

static gboolean
has_henry (const BwFieldStage *stage)
{
  return stage->henry > NO_HENRY * stage->ohm * stage->scan_s;
}

/* Where the beam is at time @x of the scan, as a share of the swing, from the top. */
static double
position (const BwFieldStage *stage, const Roots *roots, double x)
{
  double a = stage->scan_s / (stage->ohm * stage->farad);
  if (roots == NULL)
    return expm1 (-a * x) / expm1 (-a);
  double complex moved = 0;
  for (int i = 0; i < 2; i++)
    moved += roots->k[i] * (cexp (roots->s[i] * stage->scan_s * x) - 1);
  return creal (moved);
}

/* How fast it moves there, over the mean. */
static double
pitch (const BwFieldStage *stage, const Roots *roots, double x)
{
  double a = stage->scan_s / (stage->ohm * stage->farad);
  if (roots == NULL)
    return a * exp (-a * x) / -expm1 (-a);
  double complex speed = 0;
  for (int i = 0; i < 2; i++)
    speed += roots->k[i] * roots->s[i] * stage->scan_s * cexp (roots->s[i] * stage->scan_s * x);
  return creal (speed);
}

/**
 * bw_field_scan_position:
 * @x: time since the start of the scan, from 0 to 1
 *
 * Returns: where the beam is then, from 0 at the top to 1 at the bottom
 */
double
bw_field_scan_position (const BwFieldStage *stage, double x)
{
  g_return_val_if_fail (stage != NULL && stage->farad > 0 && stage->ohm > 0 && stage->scan_s > 0, 0);
  g_return_val_if_fail (x >= 0 && x <= 1, 0);
  Roots roots;

  if (!has_henry (stage))
    return position (stage, NULL, x);
  find_roots (stage, &roots);
  return position (stage, &roots, x);
}

/* The curve is looked at in so many places, and then between the two beside the farthest one. */
#define PLACES 200
#define HALVINGS 60

static void
find_bow (const BwFieldStage *stage, const Roots *roots, BwFieldScan *scan)
{
  int worst = 1;
  double most = 0;
  for (int i = 1; i < PLACES; i++)
    {
      double x = (double) i / PLACES, off = fabs (position (stage, roots, x) - x);
      if (off > most)
        {
          most = off;
          worst = i;
        }
    }
  double low = (double) (worst - 1) / PLACES, high = (double) (worst + 1) / PLACES;
  double middle = (double) worst / PLACES;
  double sign = position (stage, roots, middle) < middle ? -1 : 1;
  /* The difference from the straight line grows as long as the pitch is above the mean. */
  for (int i = 0; i < HALVINGS; i++)
    {
      double x = (low + high) / 2;
      if (sign * (pitch (stage, roots, x) - 1) > 0)
        low = x;
      else
        high = x;
    }
  scan->bow_at = (low + high) / 2;
  scan->bow = position (stage, roots, scan->bow_at) - scan->bow_at;
}

/* With a flyback that takes its time the capacitor is charged less: the share that is left of the
 * height is τ (1/Ts + 1/Tf) (1 − E1) (1 − E2) / (1 − E1·E2), E = e^(−T/τ) (two methods agree). */
static double
height_left (const BwFieldStage *stage)
{
  double tau = stage->ohm * stage->farad, scan = stage->scan_s / tau, back = stage->retrace_s / tau;
  if (!(back > 0))
    return 1;
  return (1 / scan + 1 / back) * expm1 (-scan) * expm1 (-back) / -expm1 (-scan - back);
}

/**
 * bw_field_scan:
 * @scan: (out caller-allocates): what the capacitor makes of the picture. The height is that without
 *   inductance
 */
void
bw_field_scan (const BwFieldStage *stage, BwFieldScan *scan)
{
  g_return_if_fail (stage != NULL && scan != NULL);
  g_return_if_fail (stage->farad > 0 && stage->ohm > 0 && stage->scan_s > 0);
  Roots found, *roots = NULL;

  if (has_henry (stage))
    {
      find_roots (stage, &found);
      roots = &found;
    }
  *scan = (BwFieldScan){ .a = stage->scan_s / (stage->ohm * stage->farad),
                         .height = height_left (stage) };
  scan->pitch = pitch (stage, roots, 0) / pitch (stage, roots, 1);
  find_bow (stage, roots, scan);
}

/**
 * bw_field_scan_of_rows:
 *
 * The n rows of a picture that was drawn with equal rows have heights that fall by e^(a/n) from one to
 * the next, so that a = n/(n − 1)·ln (first/last).
 *
 * Returns: length of the scan over the time constant; not above zero where the first row is not taller
 *   than the last, which this fault cannot make
 */
double
bw_field_scan_of_rows (const BwFieldRows *rows)
{
  g_return_val_if_fail (rows != NULL && rows->n >= 2 && rows->first > 0 && rows->last > 0, 0);
  return rows->n / (rows->n - 1.0) * log (rows->first / rows->last);
}
