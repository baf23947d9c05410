/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include <math.h>

/* The frequency-modulated subcarrier of SECAM, by ITU-R BT.1700 Part C and BT.470-6 items 2.11 to
 * 2.18, with line identification: on the lines with picture it is there from 5.6 µs after 0H, at
 * rest until the picture begins. There is none on the lines of field blanking. */

#define GRID 8192 /* points along the line on which frequency becomes phase */

#define FROM_S 5.6e-6
#define EDGE_S 0.6e-6             /* foot to top; our own */
#define RED_WEIGHT -1.902         /* D'R = −1.902 (R−Y) */
#define BLUE_WEIGHT 1.505         /* D'B = 1.505 (B−Y) */
#define LOW_CORRECTION_HZ 85e3    /* (1 + jf/f1) / (1 + jf/3f1) */
#define CENTRE_HZ 4286e3          /* of the high-frequency correction */
#define PEAK_TO_PEAK 0.23         /* at the centre, as a share of white */

typedef struct
{
  double rest_hz;
  double deviation_hz; /* for D' = 1 */
  double lowest_hz;    /* deviations beyond are cut */
  double highest_hz;
} SecamCarrier;

static const SecamCarrier red = { 4406250, 280e3, -506e3, 350e3 };
static const SecamCarrier blue = { 4250000, 230e3, -350e3, 506e3 };

/* B−Y or R−Y along the line, on the grid; as Pb or Pr of 0.7 V, then in units of white. */
static void
sample_difference (const BwSynthesis *s, guint signature, gboolean is_blue, double step_s,
                   float *difference)
{
  BwConductor conductor = is_blue ? BW_CONDUCTOR_PB : BW_CONDUCTOR_PR;
  float to_white = (float) ((is_blue ? 0.886 : 0.701) / 0.5 / 0.7);
  g_autofree BwSynthesis *component = g_new (BwSynthesis, 1);
  GArray *layers[BW_N_LAYERS];

  *component = *s;
  component->form = (BwWireForm){ .signal = BW_SIGNAL_COMPONENT, .white_v = 0.7 };
  component->sample_s = step_s;
  component->shapes.difference_s = component->shapes.blanking_s = s->shapes.chroma_s;
  for (int i = 0; i < BW_N_LAYERS; i++)
    layers[i] = g_array_new (FALSE, FALSE, sizeof (BwFeature));
  bw_add_content (component, conductor, signature, 0, layers);
  bw_sort_features (layers[BW_LAYER_BASE]);
  bw_sample_features (component, layers[BW_LAYER_BASE], 0, GRID + 1, difference);
  for (int i = 0; i < GRID + 1; i++)
    difference[i] *= to_white;
  for (int i = 0; i < BW_N_LAYERS; i++)
    g_array_unref (layers[i]);
}

/* |1 + j16F| / |1 + j1.26F|, F = f/f0 − f0/f */
static double
high_correction (double hz)
{
  double f = hz / CENTRE_HZ - CENTRE_HZ / hz;
  return hypot (1, 16 * f) / hypot (1, 1.26 * f);
}

/* How far the subcarrier is on, 0 to 1. */
static double
envelope (double time_s, double from_s, double to_s)
{
  double in = CLAMP ((time_s - from_s) / EDGE_S + 0.5, 0, 1);
  double out = CLAMP ((to_s - time_s) / EDGE_S + 0.5, 0, 1);
  return (1 - cos (G_PI * in)) / 2 * (1 - cos (G_PI * out)) / 2;
}

/* The subcarrier of one line.
 * @colour: %BW_LINE_SECAM_BLUE, %BW_LINE_SECAM_INVERTED
 * Returns: (nullable): none on a line without picture */
BwSecamLine *
bw_secam_line_new (const BwSynthesis *s, guint signature, guint colour)
{
  gboolean is_blue = (colour & BW_LINE_SECAM_BLUE) != 0;
  const SecamCarrier *carrier = is_blue ? &blue : &red;
  double from_s, to_s, step_s = s->line_s / GRID;
  double smooth = 0, share = 1 - exp (-2 * G_PI * 3 * LOW_CORRECTION_HZ * step_s);
  double turns = (colour & BW_LINE_SECAM_INVERTED) ? 0.5 : 0;

  if (!bw_content_spans (s, signature, &from_s, &to_s))
    return NULL;
  BwSecamLine *line = g_new (BwSecamLine, 1);
  g_autofree float *difference = g_new (float, GRID + 1);
  *line = (BwSecamLine){ step_s, GRID + 1, g_new (double, GRID + 1), g_new (double, GRID + 1) };
  sample_difference (s, signature, is_blue, step_s, difference);
  for (int i = 0; i < GRID + 1; i++)
    {
      double d = (is_blue ? BLUE_WEIGHT : RED_WEIGHT) * (double) difference[i];
      double corrected = 3 * d - 2 * smooth;
      double off_hz = CLAMP (carrier->deviation_hz * corrected, carrier->lowest_hz,
                             carrier->highest_hz);
      double hz = carrier->rest_hz + off_hz;
      smooth += share * (d - smooth);
      line->turns[i] = turns;
      line->volts[i] = s->form.white_v * PEAK_TO_PEAK / 2 * high_correction (hz)
                       * envelope (i * step_s, MAX (FROM_S, from_s - s->active_from_s + FROM_S),
                                   to_s);
      turns += hz * step_s;
    }
  return line;
}

void
bw_secam_line_free (BwSecamLine *line)
{
  if (line == NULL)
    return;
  g_free (line->volts);
  g_free (line->turns);
  g_free (line);
}

/* Adds the subcarrier to @n samples of which the first is @first_s after 0H. */
void
bw_add_secam (const BwSynthesis *s, const BwSecamLine *line, double first_s, guint n, float *volts)
{
  for (guint i = 0; i < n; i++)
    {
      double place = CLAMP ((first_s + i * s->sample_s) / line->step_s, 0, line->n - 1.001);
      guint at = (guint) place;
      double rest = place - at;
      double peak_v = line->volts[at] + rest * (line->volts[at + 1] - line->volts[at]);
      double turns = line->turns[at] + rest * (line->turns[at + 1] - line->turns[at]);
      volts[i] += (float) (peak_v * sin (2 * G_PI * turns));
    }
}
