/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* The places of the bars, and the path of a line between them. */

#define PER_CYCLE BW_LEVELS_PER_CYCLE
#define PASSES 4 /* of averaging over one cycle: -3 dB at a quarter of the subcarrier */

static const BwWireForm *
form_of (const BwVectorView *what)
{
  return &bw_levels_model_case (what->model)->form;
}

/**
 * bw_vector_view_can_draw:
 *
 * Returns: whether @form has colour difference signals with an amplitude: component, and Y/C or
 *   composite in any system but SECAM
 */
gboolean
bw_vector_view_can_draw (const BwWireForm *form)
{
  g_return_val_if_fail (form != NULL, FALSE);
  if (form->signal == BW_SIGNAL_COMPONENT)
    return TRUE;
  return (form->signal == BW_SIGNAL_YC || form->signal == BW_SIGNAL_COMPOSITE)
         && bw_system_has_phase (form->system);
}

gboolean
bw_vector_is_coded (const BwVectorView *what)
{
  return form_of (what)->signal != BW_SIGNAL_COMPONENT;
}

/* Whether the sign of V changes from line to line. */
gboolean
bw_vector_is_switched (const BwVectorView *what)
{
  return bw_vector_is_coded (what) && bw_system_alternates (form_of (what)->system);
}

static double
phase_of (double u_v, double v_v)
{
  double degrees = atan2 (v_v, u_v) * 180 / G_PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/* Targets */

static void
add_target (GArray *targets, BwBar bar, gboolean switched, double u_v, double v_v)
{
  BwVectorTarget target = { bar, switched, u_v, v_v, hypot (u_v, v_v), phase_of (u_v, v_v) };
  g_array_append_val (targets, target);
}

static void
add_bars (GArray *targets, const BwVectorView *what, gboolean switched)
{
  const BwSynthesisCase *from = bw_levels_model_case (what->model);
  BwRgb rgb;
  BwWireColour a, b;

  for (BwBar bar = BW_BAR_YELLOW; bar <= BW_BAR_BLUE; bar++)
    {
      bw_bar_rgb (bar, from->bars, &rgb);
      if (!bw_vector_is_coded (what))
        {
          bw_wire_colour (&from->form, BW_CONDUCTOR_PB, &rgb, &a);
          bw_wire_colour (&from->form, BW_CONDUCTOR_PR, &rgb, &b);
          add_target (targets, bar, FALSE, a.base_v, b.base_v);
          continue;
        }
      bw_wire_colour (&from->form,
                      from->form.signal == BW_SIGNAL_YC ? BW_CONDUCTOR_C : BW_CONDUCTOR_VIDEO, &rgb,
                      &a);
      add_target (targets, bar, switched, a.u_v, switched ? -a.v_v : a.v_v);
    }
}

/* At 180° in NTSC (SMPTE 170M), at 135° with +V and 225° with −V in PAL (ITU-R BT.1700). */
static void
add_burst (GArray *targets, const BwVectorView *what, gboolean switched)
{
  double amplitude_v = form_of (what)->burst_pp_v / 2;
  double side_v = amplitude_v * sqrt (0.5);

  if (!bw_vector_is_coded (what) || amplitude_v <= 0)
    return;
  if (bw_vector_is_switched (what))
    add_target (targets, BW_N_BARS, switched, -side_v, switched ? -side_v : side_v);
  else
    add_target (targets, BW_N_BARS, FALSE, -amplitude_v, 0);
}

/**
 * bw_vector_view_targets:
 *
 * Returns: (transfer full) (element-type BwVectorTarget): the six colours and the burst; of PAL
 *   then those of the lines with −V
 */
GArray *
bw_vector_view_targets (const BwVectorView *what)
{
  g_return_val_if_fail (what != NULL, NULL);
  GArray *targets = g_array_new (FALSE, FALSE, sizeof (BwVectorTarget));
  add_bars (targets, what, FALSE);
  add_burst (targets, what, FALSE);
  if (bw_vector_is_switched (what))
    {
      add_bars (targets, what, TRUE);
      add_burst (targets, what, TRUE);
    }
  return targets;
}

/* Path */

/* Sums over one cycle: no subcarrier is left, and of the difference signals what is slow against
 * it. @values is @n long and becomes shorter by one cycle less a sample. */
static void
average_cycles (double *values, gsize n)
{
  for (gsize i = 0; i + PER_CYCLE <= n; i++)
    {
      double sum = 0;
      for (gsize k = 0; k < PER_CYCLE; k++)
        sum += values[i + k];
      values[i] = sum / PER_CYCLE;
    }
}

static double *
demodulate (const BwLevelsSamples *samples, double start_s, double subcarrier_hz, double quarter,
            gsize *n)
{
  double *values = g_new (double, samples->n);
  for (gsize i = 0; i < samples->n; i++)
    {
      double cycles = (start_s + samples->first_s + (double) i * samples->step_s) * subcarrier_hz;
      double angle = 2 * G_PI * (cycles - floor (cycles) + quarter);
      values[i] = 2 * (double) samples->volts[i] * sin (angle);
    }
  *n = samples->n;
  for (guint pass = 0; pass < PASSES; pass++)
    {
      average_cycles (values, *n);
      *n -= PER_CYCLE - 1;
    }
  return values;
}

/* From @window of the chroma; the averages belong to the middle of what they are taken over. */
static GArray *
demodulated (const BwVectorView *what, const BwLevelsWindow *window)
{
  GArray *path = g_array_new (FALSE, FALSE, sizeof (BwVectorSample));
  double subcarrier_hz = bw_levels_model_subcarrier_hz (what->model);
  BwLevelsSamples samples;
  double middle = PASSES * (PER_CYCLE - 1) / 2.0;
  gsize n;

  if (!bw_levels_chroma_samples (what->model, window, &samples))
    return path;
  if (samples.n > PASSES * PER_CYCLE)
    {
      g_autofree double *u = demodulate (&samples, window->start_s, subcarrier_hz, 0, &n);
      g_autofree double *v = demodulate (&samples, window->start_s, subcarrier_hz, 0.25, &n);
      for (gsize i = 0; i < n; i++)
        {
          BwVectorSample at = { samples.first_s + ((double) i + middle) * samples.step_s, u[i],
                                v[i] };
          g_array_append_val (path, at);
        }
    }
  bw_levels_samples_clear (&samples);
  return path;
}

static BwLevelsWindow
line_window (const BwVectorView *what, guint lines_later, double from_s, double to_s)
{
  double period_s = bw_levels_model_shape (what->model)->period_s;
  double start_s = bw_levels_model_start_s (what->model, what->frame, what->line);
  return (BwLevelsWindow){ start_s + lines_later * period_s, from_s, to_s };
}

/* The mean of the middle of the burst. Returns whether there is one. */
static gboolean
mean_burst (const BwVectorView *what, guint lines_later, double *u_v, double *v_v)
{
  BwRange burst_s;
  *u_v = *v_v = 0;
  if (!bw_levels_model_burst (what->model, &burst_s))
    return FALSE;
  double quarter_s = (burst_s.high - burst_s.low) / 4;
  const BwLevelsWindow window = line_window (what, lines_later, burst_s.low + quarter_s,
                                             burst_s.high - quarter_s);
  g_autoptr (GArray) path = demodulated (what, &window);
  for (guint i = 0; i < path->len; i++)
    {
      *u_v += g_array_index (path, BwVectorSample, i).u_v / path->len;
      *v_v += g_array_index (path, BwVectorSample, i).v_v / path->len;
    }
  return hypot (*u_v, *v_v) > form_of (what)->burst_pp_v / 4;
}

/* How far the samples are turned against the axes: what a decoder learns from the burst. That of
 * PAL lies to both sides of −(B−Y), line by line. Zero without a burst. */
static double
reference_angle (const BwVectorView *what)
{
  double u0_v, v0_v, u1_v = 0, v1_v = 0;
  if (!mean_burst (what, 0, &u0_v, &v0_v))
    return 0;
  if (bw_vector_is_switched (what) && !mean_burst (what, 1, &u1_v, &v1_v))
    return 0;
  return atan2 (v0_v + v1_v, u0_v + u1_v) - G_PI;
}

static void
turn (GArray *path, double angle, double gain)
{
  double c = gain * cos (angle), s = gain * sin (angle);
  for (guint i = 0; i < path->len; i++)
    {
      BwVectorSample *at = &g_array_index (path, BwVectorSample, i);
      double u_v = at->u_v;
      at->u_v = c * u_v - s * at->v_v;
      at->v_v = s * u_v + c * at->v_v;
    }
}

static GArray *
component_path (const BwVectorView *what, const BwLevelsWindow *window)
{
  GArray *path = g_array_new (FALSE, FALSE, sizeof (BwVectorSample));
  double gain = bw_levels_gain (&what->video);
  BwLevelsSamples pb, pr;

  bw_levels_samples (what->model, BW_CONDUCTOR_PB, window, &pb);
  bw_levels_samples (what->model, BW_CONDUCTOR_PR, window, &pr);
  for (gsize i = 0; i < pb.n; i++)
    {
      BwVectorSample at = { pb.first_s + (double) i * pb.step_s, gain * (double) pb.volts[i],
                            gain * (double) pr.volts[i] };
      g_array_append_val (path, at);
    }
  bw_levels_samples_clear (&pb);
  bw_levels_samples_clear (&pr);
  return path;
}

/* Private: (transfer full) (element-type BwVectorSample): the path of a line, from the back porch to
 * the end of the picture; empty if there is none. The subcarrier is demodulated against the burst, as
 * a decoder does, and averaged four times over a cycle. */
GArray *
bw_vector_path_of (const BwVectorView *what, guint lines_later)
{
  const BwLineShape *shape = bw_levels_model_shape (what->model);
  const BwLevelsWindow window = line_window (what, lines_later,
                                             shape->start_s[BW_INTERVAL_BACK_PORCH],
                                             shape->start_s[BW_INTERVAL_FRONT_PORCH]
                                                 + shape->period_s);
  if (!bw_vector_is_coded (what))
    return component_path (what, &window);
  GArray *path = demodulated (what, &window);
  turn (path, -reference_angle (what), bw_levels_gain (&what->video));
  return path;
}
