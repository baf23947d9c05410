/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/colour-system.h"
#include "core/raster/waveform.h"

/* The subcarrier: its phase, the burst, the PAL switch and the sequences.
 *
 * The phase is counted in cycles from 0H of line 1, as the colour system numbers lines, of the
 * first frame of the sequence, and is zero there on the axis +(B−Y). So the zero crossings of the
 * burst, at 180° in NTSC, fall on 0H if it is thought to go on (SMPTE 170M table 2 and figure 6:
 * the burst starts 19 cycles after 0H, at a phase of zero), and the positive-going ones on that of
 * the even lines of the first field (from memory, as is zero on line 1 of the first field for PAL).
 *
 * PAL: V is positive on the odd lines of the first and second field and on the even lines of the
 * third and fourth (ITU-R BT.470-6 item 2.15), which in frames of an odd number of lines is every
 * other line without a break. The burst is at +135° where V is positive, else at −135°. */

/* SECAM: a frequency that carries one difference, line by line */
static gboolean
is_sequential (const BwSynthesis *s)
{
  return bw_system_facts (s->form.system)->chroma == BW_CHROMA_SEQUENTIAL;
}

/* Numerators and denominators below this one have products that fit. */
#define HIGHEST_TERM (G_GINT64_CONSTANT (1) << 40)

/* Whether amplitude and phase of a subcarrier carry colour on @conductor. */
gboolean
bw_synthesis_is_coded (const BwSynthesis *s, BwConductor conductor)
{
  BwSignal signal = s->form.signal;
  if (!bw_system_has_phase (s->form.system))
    return FALSE;
  return (signal == BW_SIGNAL_COMPOSITE && conductor == BW_CONDUCTOR_VIDEO)
         || (signal == BW_SIGNAL_YC && conductor == BW_CONDUCTOR_C);
}


static int
greatest_divisor (int a, int b)
{
  return b == 0 ? a : greatest_divisor (b, a % b);
}

static gint64
least_multiple (gint64 a, int b)
{
  return a / greatest_divisor (b, (int) (a % b)) * b;
}

/* After how many frames everything repeats; more than an int holds counts as never, zero. */
static int
frames_of_sequence (const BwSynthesis *s)
{
  const BwSubcarrier *c = &s->subcarrier;
  BwRatio per_frame;
  gint64 frames = 1;

  if (is_sequential (s))
    return 6 / greatest_divisor (6, s->lines % 6);
  if (!bw_ratio_multiply (c->per_line, (BwRatio){ s->lines, 1 }, &per_frame))
    return 0;
  frames = per_frame.den;
  if (c->switched && s->lines % 2 != 0)
    frames = least_multiple (frames, 2);
  if (c->fields > 2)
    frames = least_multiple (frames, c->fields / 2);
  return frames <= G_MAXINT ? (int) frames : 0;
}

/* From @turns, exactly at quarters. */
static void
sin_and_cos (double turns, double *sine, double *cosine)
{
  static const double quarters[5] = { 0, 1, 0, -1, 0 };
  double place = 4 * turns, whole = floor (place);
  if (place <= whole)
    {
      int quarter = (int) whole & 3;
      *sine = quarters[quarter];
      *cosine = quarters[(quarter + 1) % 4];
      return;
    }
  *sine = sin (2 * G_PI * turns);
  *cosine = cos (2 * G_PI * turns);
}

/* Phase of sample @k, in cycles from 0 to 1: k·p/q less the lines before line 1 of the system. */
static double
turns_at (const BwSubcarrier *c, gint64 k)
{
  BwWide q = c->per_sample.den, b = c->per_line.den;
  BwWide whole = q * b;
  BwWide samples = (BwWide) (k % c->per_sample.den) * c->per_sample.num % q;
  BwWide lines = (BwWide) c->shift * c->per_line.num % b;
  BwWide turns = ((samples * b - lines * q) % whole + whole) % whole;
  return (double) turns / (double) whole;
}

/* Whether products with it stay whole numbers. */
gboolean
bw_ratio_fits (BwRatio ratio)
{
  return ratio.num < HIGHEST_TERM && ratio.den < HIGHEST_TERM;
}

static void
fill_turns (BwSubcarrier *c)
{
  for (int i = 0; i < BW_TURN; i++)
    {
      double sine, cosine;
      BwWide turned = (BwWide) i * c->per_sample.num % c->per_sample.den;
      sin_and_cos ((double) turned / (double) c->per_sample.den, &sine, &cosine);
      c->turn_sin[i] = (float) sine;
      c->turn_cos[i] = (float) cosine;
    }
}

/* Leaves no subcarrier where the form has none. */
gboolean
bw_subcarrier_init (BwSynthesis *s, GError **error)
{
  const BwSystemFacts *facts = bw_system_facts (s->form.system);
  BwRatio subcarrier_hz = facts->subcarrier_hz;
  BwSubcarrier *c = &s->subcarrier;

  *c = (BwSubcarrier){ .per_sample = BW_RATIO_NONE, .per_line = BW_RATIO_NONE };
  s->colour_frames = 1;
  if (!bw_signal_is_coded (s->form.signal))
    return TRUE;
  c->shift = s->raster->numbered_before_sync - facts->lines_before_sync;
  c->switched = bw_system_alternates (s->form.system);
  if (!bw_synthesis_is_coded (s, BW_CONDUCTOR_VIDEO) && !bw_synthesis_is_coded (s, BW_CONDUCTOR_C))
    {
      s->colour_frames = is_sequential (s) ? frames_of_sequence (s) : 1;
      return TRUE;
    }
  if (!bw_ratio_divide (subcarrier_hz, s->rate_hz, &c->per_sample)
      || !bw_ratio_divide (subcarrier_hz, s->raster->line_rate_hz, &c->per_line)
      || !bw_ratio_fits (c->per_sample) || !bw_ratio_fits (c->per_line))
    {
      g_set_error (error, BW_SYNTHESIS_ERROR, BW_SYNTHESIS_ERROR_RATE,
                   _ ("the sampling rate has too fine a ratio to the subcarrier; rates in whole "
                      "hertz, or multiples of the subcarrier, are allowed"));
      return FALSE;
    }
  c->fields = bw_system_knows_burst (s->form.system, s->raster) ? facts->burst_fields : 0;
  c->burst_from_s = facts->burst_from_s;
  c->burst_to_s = c->burst_from_s + facts->burst_cycles / bw_ratio_to_double (subcarrier_hz);
  fill_turns (c);
  s->colour_frames = frames_of_sequence (s);
  return TRUE;
}

static gint64
floored (gint64 value, gint64 by)
{
  gint64 rest = value % by;
  return value / by - (rest < 0 ? 1 : 0);
}

/* The burst is left out around each field sync: that of the next frame belongs to the next field,
 * although its first lines come before the frame's end. */
static gboolean
has_burst (const BwSynthesis *s, gint64 system_line, guint signature)
{
  gint64 frame = floored (system_line, s->lines);
  int line = (int) (system_line - frame * s->lines);
  int quarter = 4 * line / s->lines;
  int field = quarter == 0 ? 0 : quarter == 3 ? 2 : 1;

  if (s->subcarrier.fields > 0)
    {
      gint64 fields = s->subcarrier.fields, at = 2 * frame + field;
      return bw_line_has_burst (s->form.system, (int) (at - floored (at, fields) * fields),
                                line + 1);
    }
  /* Common practice, no source: none among the pulses of field sync. */
  return !(signature & (BW_SLOT_SYNC (0) | BW_SLOT_SYNC (1)))
         && BW_SLOT_PULSE_OF (signature, 0) != BW_PULSE_EQUALISING
         && BW_SLOT_PULSE_OF (signature, 1) != BW_PULSE_EQUALISING;
}

/* D'R and D'B follow each other line by line. The subcarrier is inverted on one line in three and
 * in every other field (ITU-R BT.1700 Part C); which lines come first is our own choice. */
static guint
secam_line (const BwSynthesis *s, gint64 system_line)
{
  int in_frame = (int) (system_line - floored (system_line, s->lines) * s->lines);
  gboolean third = system_line - floored (system_line, 3) * 3 == 2;
  gboolean inverted = third != (2 * in_frame > s->lines);
  gboolean blue = system_line % 2 != 0;
  return (blue ? BW_LINE_SECAM_BLUE : 0) | (inverted ? BW_LINE_SECAM_INVERTED : 0);
}

/* What line @line, counted from line 1 of the first frame, has beside its signature. */
guint
bw_line_colour (const BwSynthesis *s, gint64 line)
{
  gint64 system_line = line - s->subcarrier.shift;
  guint signature = s->signatures[line % s->lines];

  if (is_sequential (s))
    return secam_line (s, system_line);
  return has_burst (s, system_line, signature) ? BW_LINE_BURST : 0;
}

void
bw_add_burst (const BwSynthesis *s, GArray *const layers[BW_N_LAYERS])
{
  const BwSubcarrier *c = &s->subcarrier;
  double amplitude_v = s->form.burst_pp_v / 2, width_s = s->shapes.burst_s;
  double u_v = c->switched ? -amplitude_v * G_SQRT2 / 2 : -amplitude_v;
  double v_v = c->switched ? amplitude_v * G_SQRT2 / 2 : 0;

  bw_add_step (layers[BW_LAYER_U], c->burst_from_s, width_s, u_v);
  bw_add_step (layers[BW_LAYER_U], c->burst_to_s, width_s, -u_v);
  bw_add_step (layers[BW_LAYER_V], c->burst_from_s, width_s, v_v);
  bw_add_step (layers[BW_LAYER_V], c->burst_to_s, width_s, -v_v);
}

/* @n samples with the phase of the anchor, whose first is @turn samples after it. */
static void
turn_samples (const BwSubcarrier *c, double turns, float v_sign, guint turn, guint n,
              const float *base, const float *u, const float *v, float *volts)
{
  double anchor_sin, anchor_cos;
  sin_and_cos (turns, &anchor_sin, &anchor_cos);
  float si = (float) anchor_sin, co = (float) anchor_cos;
  const float *turn_sin = c->turn_sin + turn, *turn_cos = c->turn_cos + turn;

  for (guint i = 0; i < n; i++)
    {
      float vi = v_sign * v[i];
      float anchored = u[i] * si + vi * co, ahead = u[i] * co - vi * si; /* at 0 and at ¼ cycle */
      volts[i] = base[i] + (anchored * turn_cos[i] + ahead * turn_sin[i]);
    }
}

/* base + u·sin + v·cos for @n samples of @line from its sample @from, which is sample @first of
 * all. The anchors lie at fixed samples, so that the result does not depend on where it begins. */
void
bw_put_on_subcarrier (const BwSynthesis *s, const BwSampledLine *line, guint from, gint64 first,
                      guint n, gint64 absolute_line, float *volts)
{
  const BwSubcarrier *c = &s->subcarrier;
  gboolean negative = c->switched && (absolute_line - c->shift) % 2 != 0;

  while (n > 0)
    {
      guint turn = (guint) (first % BW_TURN);
      guint now = MIN (n, BW_TURN - turn);
      turn_samples (c, turns_at (c, first - turn), negative ? -1.0f : 1.0f, turn, now,
                    line->layers[BW_LAYER_BASE] + from, line->layers[BW_LAYER_U] + from,
                    line->layers[BW_LAYER_V] + from, volts);
      first += now;
      from += now;
      volts += now;
      n -= now;
    }
}
