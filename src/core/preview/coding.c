/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "preview-private.h"

#define HD_LINES 576.0 /* above them component is coded as in ITU-R BT.709 */

/* The factors on B−Y and R−Y, from the chroma of full blue and full red. */
static void
set_factors (BwPreviewPlan *plan, BwColourSystem system)
{
  const BwRgb red = { 1, 0, 0 }, blue = { 0, 0, 1 };
  double white_v = bw_system_facts (system)->white_v;
  BwCodedLevels levels;

  bw_rgb_to_coded (system, 0, &blue, &levels);
  plan->u = levels.chroma_pp_v / (2 * white_v) * cos (levels.phase_deg * G_PI / 180)
            / (1 - plan->luma[2]);
  bw_rgb_to_coded (system, 0, &red, &levels);
  plan->v = levels.chroma_pp_v / (2 * white_v) * sin (levels.phase_deg * G_PI / 180)
            / (1 - plan->luma[0]);
}

static void
set_luma (BwPreviewPlan *plan, BwMatrix matrix)
{
  for (int i = 0; i < 3; i++)
    {
      BwRgb primary = { i == 0, i == 1, i == 2 };
      BwYPbPr ypbpr;
      bw_rgb_to_ypbpr (matrix, &primary, &ypbpr);
      plan->luma[i] = ypbpr.y;
    }
  plan->u = 0.5 / (1 - plan->luma[2]);
  plan->v = 0.5 / (1 - plan->luma[0]);
}

/* The comb needs lines in antiphase: one apart, or two where V alternates or one is no use. */
static int
comb_reach (const BwPreviewPlan *plan)
{
  double past = plan->carrier_per_line - floor (plan->carrier_per_line);
  double past_2 = 2 * plan->carrier_per_line - floor (2 * plan->carrier_per_line);

  return plan->alternates || fabs (past - 0.5) > fabs (past_2 - 0.5) ? 2 : 1;
}

static void
plan_carrier (BwPreviewPlan *plan, BwColourSystem system)
{
  const BwDetailCase *what = plan->what;
  const BwSystemFacts *facts = bw_system_facts (system);
  double carrier_hz = bw_ratio_to_double (facts->subcarrier_hz);

  plan->carrier_per_m = carrier_hz * what->active_s / plan->scan_width_m;
  plan->carrier_per_line = carrier_hz / bw_ratio_to_double (facts->line_rate_hz);
  plan->alternates = bw_system_alternates (system);
  if (plan->coding == BW_SIGNAL_COMPOSITE && what->filter == BW_LUMA_COMB)
    plan->comb = comb_reach (plan);
}

/**
 * bw_preview_plan_coding:
 *
 * How the colours of @plan travel. Composite and Y/C without a colour system carry luma alone.
 * SECAM sends one colour difference a line and holds it for the next; its frequency modulation is
 * not followed, so that neither it nor luma disturbs the other.
 */
void
bw_preview_plan_coding (BwPreviewPlan *plan)
{
  BwColourSystem system = plan->what->system;
  gboolean coded = plan->what->signal == BW_SIGNAL_COMPOSITE || plan->what->signal == BW_SIGNAL_YC;

  plan->coding = coded && system == BW_SYSTEM_NONE ? BW_SIGNAL_LUMA : plan->what->signal;
  plan->lines_per_frame = bw_system_facts (system)->lines;
  if (plan->lines_per_frame == 0) /* without a system any number will do */
    plan->lines_per_frame = bw_system_facts (BW_SYSTEM_NTSC_M)->lines;
  plan->lines_to_field_2 = (plan->lines_per_frame + 1) / 2;
  set_luma (plan, plan->coding == BW_SIGNAL_COMPONENT && plan->what->active_lines > HD_LINES
                      ? BW_MATRIX_709
                      : BW_MATRIX_601);
  if (!coded || system == BW_SYSTEM_NONE)
    return;
  plan_carrier (plan, system);
  plan->sequential = bw_system_facts (system)->chroma == BW_CHROMA_SEQUENTIAL;
  if (plan->sequential)
    plan->coding = BW_SIGNAL_YC;
  else
    set_factors (plan, system);
}

/**
 * bw_preview_line_in_time:
 * @line: of the frame, from the top
 *
 * The top line is of field 1; the line below one of field 1 comes half a frame after it, rounded
 * up: line 284 lies below line 21 of 525, line 336 below line 23 of 625. A raster that is not
 * interlaced has half as many lines to its frame, rounded down.
 *
 * Returns: lines since the first frame began
 */
int
bw_preview_line_in_time (const BwPreviewPlan *plan, int line)
{
  int frame = (int) (plan->preview->frame % 1000);

  if (!plan->what->interlaced)
    return line + frame * (plan->lines_per_frame / 2);
  return line / 2 + line % 2 * plan->lines_to_field_2 + frame * plan->lines_per_frame;
}

/**
 * bw_preview_line_in_field:
 * @further: lines of the same field to go down, or up
 *
 * Returns: the line of the frame; the last or first of its field where there are no more
 */
int
bw_preview_line_in_field (const BwPreviewPlan *plan, int line, int further)
{
  int step = plan->what->interlaced ? 2 : 1, wanted = line + step * further;

  while (wanted < 0)
    wanted += step;
  while (wanted >= plan->lines)
    wanted -= step;
  return MAX (wanted, 0);
}

void
bw_carrier_init (BwCarrier *carrier, const BwPreviewPlan *plan)
{
  *carrier = (BwCarrier){ plan, g_new (float, plan->n), g_new (float, plan->n),
                          g_new (float, plan->n), g_new (float, plan->n) };
  for (int i = 0; i < plan->n; i++)
    {
      double place_m = plan->start_m + i * plan->step_m - plan->scan_left_m;
      double cycles = plan->carrier_per_m * place_m;
      carrier->sine[i] = (float) sin (2 * G_PI * cycles);
      carrier->cosine[i] = (float) cos (2 * G_PI * cycles);
    }
}

void
bw_carrier_clear (BwCarrier *carrier)
{
  g_clear_pointer (&carrier->sine, g_free);
  g_clear_pointer (&carrier->cosine, g_free);
  g_clear_pointer (&carrier->carrier_u, g_free);
  g_clear_pointer (&carrier->carrier_v, g_free);
}

/**
 * bw_carrier_set_line:
 *
 * Turns the subcarrier to @line of the frame: it runs on from line to line in time, and V changes
 * its sign where the system alternates.
 */
void
bw_carrier_set_line (BwCarrier *carrier, int line)
{
  int in_time = bw_preview_line_in_time (carrier->plan, line);
  double cycles = in_time * carrier->plan->carrier_per_line;
  float turn_sine = (float) sin (2 * G_PI * (cycles - floor (cycles)));
  float turn_cosine = (float) cos (2 * G_PI * (cycles - floor (cycles)));
  float sign = carrier->plan->alternates && in_time % 2 != 0 ? -1.0f : 1.0f;

  for (int i = 0; i < carrier->plan->n; i++)
    {
      carrier->carrier_u[i] = carrier->sine[i] * turn_cosine + carrier->cosine[i] * turn_sine;
      carrier->carrier_v[i] = sign * (carrier->cosine[i] * turn_cosine
                                      - carrier->sine[i] * turn_sine);
    }
}

/**
 * bw_carrier_add:
 * @composite: luma; chroma U·sin + V·cos is added to it (SMPTE 170M clause 10; ITU-R BT.1700)
 */
void
bw_carrier_add (const BwCarrier *carrier, const float *u, const float *v, float *composite)
{
  for (int i = 0; i < carrier->plan->n; i++)
    composite[i] += u[i] * carrier->carrier_u[i] + v[i] * carrier->carrier_v[i];
}

/**
 * bw_carrier_demodulate:
 * @u: (out): with a part at twice the subcarrier, to be filtered off; likewise @v
 */
void
bw_carrier_demodulate (const BwCarrier *carrier, const float *chroma, float *u, float *v)
{
  for (int i = 0; i < carrier->plan->n; i++)
    {
      u[i] = 2 * chroma[i] * carrier->carrier_u[i];
      v[i] = 2 * chroma[i] * carrier->carrier_v[i];
    }
}

/* R'G'B' to Y, U, V in place; Pb and Pr for component. */
void
bw_rows_to_yuv (const BwPreviewPlan *plan, float *rows[3])
{
  float red = (float) plan->luma[0], green = (float) plan->luma[1], blue = (float) plan->luma[2];
  float u = (float) plan->u, v = (float) plan->v;

  for (int i = 0; i < plan->n; i++)
    {
      float y = red * rows[0][i] + green * rows[1][i] + blue * rows[2][i];
      float b_y = rows[2][i] - y, r_y = rows[0][i] - y;
      rows[0][i] = y;
      rows[1][i] = u * b_y;
      rows[2][i] = v * r_y;
    }
}

void
bw_rows_to_rgb (const BwPreviewPlan *plan, float *rows[3])
{
  float red = (float) (plan->luma[0] / plan->luma[1]);
  float blue = (float) (plan->luma[2] / plan->luma[1]);
  float u = (float) (1 / plan->u), v = (float) (1 / plan->v);

  for (int i = 0; i < plan->n; i++)
    {
      float y = rows[0][i], b_y = u * rows[1][i], r_y = v * rows[2][i];
      rows[0][i] = y + r_y;
      rows[1][i] = y - red * r_y - blue * b_y;
      rows[2][i] = y + b_y;
    }
}
