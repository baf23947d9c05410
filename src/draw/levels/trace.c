/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* The curve of one conductor. */

/* In heights of a line of text. */
#define STROKE 0.09
#define OUTLINE 0.06

#define ENVELOPE_ALPHA 0.28
#define BLOCK_ALPHA 0.1
#define DWELL_COLUMN 2.0  /* in user-space units */
#define MOST_SAMPLES 24.0 /* in a unit, for a curve without subcarrier */
#define MOST_OF_SINES 6.0

/* Time to a unit of the page. */
double
bw_levels_unit_s (const BwLevelsLayout *layout)
{
  return (layout->across.to - layout->across.from) / (layout->right - layout->left);
}

/* Whether the samples are joined to a curve; else their envelope is filled. */
gboolean
bw_levels_shows_curve (const BwLevelsModel *model, BwConductor conductor, double unit_s)
{
  if (bw_levels_has_chroma (model, conductor))
    return unit_s * bw_levels_model_subcarrier_hz (model) * BW_LEVELS_LEAST_CYCLE <= 1;
  gboolean sines = bw_levels_model_case (model)->content == BW_CONTENT_MULTIBURST;
  return unit_s * bw_levels_model_rate_hz (model) <= (sines ? MOST_OF_SINES : MOST_SAMPLES);
}

BwInkRole
bw_levels_ink (BwConductor conductor)
{
  switch (conductor)
    {
    case BW_CONDUCTOR_R:
    case BW_CONDUCTOR_PR:
      return BW_INK_RED;
    case BW_CONDUCTOR_G:
      return BW_INK_GREEN;
    case BW_CONDUCTOR_B:
    case BW_CONDUCTOR_PB:
      return BW_INK_BLUE;
    case BW_CONDUCTOR_Y:
    case BW_CONDUCTOR_SYNC:
    case BW_CONDUCTOR_H:
    case BW_CONDUCTOR_V:
      return BW_INK_SYNC;
    case BW_CONDUCTOR_C:
    case BW_CONDUCTOR_VIDEO:
    case BW_N_CONDUCTORS:
    default:
      return BW_INK_GRAPHITE;
    }
}

/* Green and blue, and Pb and Pr, are dashed: long for the first and short for the second. */
void
bw_levels_set_dash (cairo_t *cr, BwConductor conductor, double text)
{
  const double longer[] = { 1.4 * text, 0.25 * text }, shorter[] = { 0.5 * text, 0.25 * text };
  if (conductor == BW_CONDUCTOR_G || conductor == BW_CONDUCTOR_PB)
    cairo_set_dash (cr, longer, G_N_ELEMENTS (longer), 0);
  else if (conductor == BW_CONDUCTOR_B || conductor == BW_CONDUCTOR_PR)
    cairo_set_dash (cr, shorter, G_N_ELEMENTS (shorter), 0);
  else
    cairo_set_dash (cr, NULL, 0, 0);
}

static BwLevelsWindow
shown_window (const BwLevelsLayout *layout)
{
  return (BwLevelsWindow){ layout->window.start_s, layout->across.from, layout->across.to };
}

/* Smooth between samples where there is a subcarrier: tangents from both neighbours. */
static void
curve_through (cairo_t *cr, const double x[4], const double y[4])
{
  cairo_curve_to (cr, x[1] + (x[2] - x[0]) / 6, y[1] + (y[2] - y[0]) / 6, x[2] - (x[3] - x[1]) / 6,
                  y[2] - (y[3] - y[1]) / 6, x[2], y[2]);
}

static void
add_curve (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel,
           const BwLevelsSamples *samples)
{
  gboolean smooth = bw_levels_has_chroma (layout->model, panel->levels.conductor);
  double x[4], y[4];

  for (gsize i = 0; i < samples->n; i++)
    {
      for (gsize k = 0; k < 4; k++)
        {
          gsize at = CLAMP (i + k, 2, samples->n + 1) - 2;
          x[k] = bw_levels_x (layout, samples->first_s + (double) at * samples->step_s);
          y[k] = bw_levels_y (panel, (double) samples->volts[at] * panel->gain);
        }
      if (i == 0)
        cairo_move_to (cr, x[2], y[2]);
      else if (smooth)
        curve_through (cr, x, y);
      else
        cairo_line_to (cr, x[2], y[2]);
    }
}

static void
stroke_in_dashes (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  BwConductor conductor = panel->levels.conductor;
  double text = layout->canvas->text_height;

  bw_levels_set_dash (cr, BW_N_CONDUCTORS, text);
  bw_ink_set_alpha (cr, layout->canvas->ink, bw_levels_ink (conductor), 0.45);
  cairo_stroke_preserve (cr);
  bw_levels_set_dash (cr, conductor, text);
  bw_ink_set (cr, layout->canvas->ink, bw_levels_ink (conductor));
  cairo_stroke (cr);
  bw_levels_set_dash (cr, BW_N_CONDUCTORS, text);
}

static void
draw_curve (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  const BwLevelsWindow window = shown_window (layout);
  BwLevelsSamples samples;

  bw_levels_samples (layout->model, panel->levels.conductor, &window, &samples);
  add_curve (layout, cr, panel, &samples);
  bw_levels_samples_clear (&samples);
  cairo_set_line_width (cr, STROKE * layout->canvas->text_height);
  stroke_in_dashes (layout, cr, panel);
}

/* The outline of the envelope: along the highest levels and back along the lowest. */
static void
add_envelope (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel,
              const BwLevelsEnvelope *envelope)
{
  double width = (layout->right - layout->left) / envelope->n;
  for (guint i = 0; i < envelope->n; i++)
    cairo_line_to (cr, layout->left + (i + 0.5) * width,
                   bw_levels_y (panel, (double) envelope->high_v[i] * panel->gain));
  for (guint i = envelope->n; i > 0; i--)
    cairo_line_to (cr, layout->left + (i - 0.5) * width,
                   bw_levels_y (panel, (double) envelope->low_v[i - 1] * panel->gain));
  cairo_close_path (cr);
}

/* Where lines are fine, the envelope is a block; what is in it is how long the signal stays where. */
static void
draw_envelope (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  const BwLevelsWindow window = shown_window (layout);
  const BwBox box = { layout->left, panel->top, layout->right - layout->left,
                      panel->bottom - panel->top };
  const BwRange volts = { panel->low_v / panel->gain, panel->high_v / panel->gain };
  gboolean fine = bw_levels_lines_are_fine (layout->model, bw_levels_unit_s (layout));
  guint columns = (guint) fmax (ceil (box.width / BW_LEVELS_COLUMN), 1);
  BwInkRole role = bw_levels_ink (panel->levels.conductor);
  BwLevelsEnvelope envelope;
  BwLevelsDwell dwell = { 0 };

  if (fine)
    bw_levels_dwell_init (&dwell, (guint) fmax (box.width / DWELL_COLUMN, 1),
                          (guint) fmax (box.height, 1), &volts);
  bw_levels_envelope (layout->model, panel->levels.conductor, &window, columns, &envelope,
                      fine ? &dwell : NULL);
  add_envelope (layout, cr, panel, &envelope);
  bw_levels_envelope_clear (&envelope);
  bw_ink_set_alpha (cr, layout->canvas->ink, role, fine ? BLOCK_ALPHA : ENVELOPE_ALPHA);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, OUTLINE * layout->canvas->text_height);
  bw_ink_set_alpha (cr, layout->canvas->ink, role, fine ? 3 * BLOCK_ALPHA : 1);
  cairo_stroke (cr);
  if (fine)
    bw_levels_dwell_draw (&dwell, cr, layout->canvas->ink, role, &box);
  bw_levels_dwell_clear (&dwell);
}

/* Private: the trace of @panel, inside it. */
void
bw_levels_draw_trace (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel)
{
  cairo_save (cr);
  cairo_rectangle (cr, layout->left, panel->top, layout->right - layout->left,
                   panel->bottom - panel->top);
  cairo_clip (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  if (bw_levels_shows_curve (layout->model, panel->levels.conductor, bw_levels_unit_s (layout)))
    draw_curve (layout, cr, panel);
  else
    draw_envelope (layout, cr, panel);
  cairo_restore (cr);
}
