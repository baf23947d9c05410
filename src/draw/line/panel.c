/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/base/text.h"

/* In heights of a line of text. */
#define LEVEL_LINE 0.06
#define DATUM_LINE 0.08
#define CURVE_LINE 0.11

#define N_LEVELS 4

/**
 * bw_line_panel_x:
 *
 * Returns: where @time_s after the datum lies across the page
 */
double
bw_line_panel_x (const BwLinePanel *panel, double time_s)
{
  double share = (time_s - panel->from_s) / (panel->to_s - panel->from_s);
  return panel->left + share * (panel->right - panel->left);
}

/**
 * bw_line_panel_y:
 *
 * Returns: where @level, of line/shape.h, lies down the page
 */
double
bw_line_panel_y (const BwLinePanel *panel, double level)
{
  double share = (BW_LEVEL_WHITE - level) / (BW_LEVEL_WHITE + BW_LEVEL_SYNC);
  return panel->top + share * (panel->bottom - panel->top);
}

/* Levels */

static const double levels[N_LEVELS] = { BW_LEVEL_WHITE, BW_LEVEL_BLANKING, -BW_LEVEL_SYNC,
                                         BW_LEVEL_SYNC };

/* The name of a level; NULL if this line does not have it. */
static const char *
level_name (const BwLineShape *shape, guint i)
{
  switch (i)
    {
    case 0:
      return _ ("white");
    case 1:
      return _ ("blanking");
    case 2:
      return shape->trilevel ? _ ("sync \u2212") : _ ("sync");
    default:
      return shape->trilevel ? _ ("sync +") : NULL;
    }
}

/**
 * bw_line_names_width:
 *
 * Returns: of the longest name of a level
 */
double
bw_line_names_width (const BwLineShape *shape, BwCanvas *canvas)
{
  g_return_val_if_fail (shape != NULL && canvas != NULL, 0);
  double widest = 0;
  for (guint i = 0; i < N_LEVELS; i++)
    if (level_name (shape, i) != NULL)
      widest = MAX (widest, bw_canvas_measure (canvas, level_name (shape, i)).width);
  return widest;
}

/**
 * bw_line_panel_claim_names:
 *
 * Claims the places of the names of the levels, at the left of @panel.
 *
 * Returns: whether all have one
 */
gboolean
bw_line_panel_claim_names (const BwLinePanel *panel, const BwLineShape *shape, BwCanvas *canvas)
{
  g_return_val_if_fail (panel != NULL && shape != NULL && canvas != NULL, FALSE);
  gboolean all = TRUE;
  for (guint i = 0; i < N_LEVELS; i++)
    if (level_name (shape, i) != NULL)
      all &= bw_canvas_claim_at (canvas, level_name (shape, i), BW_INK_GRAPHITE_LIGHT,
                                 panel->left - canvas->pad * 0.75,
                                 bw_line_panel_y (panel, levels[i]), 1, 0.5);
  return all;
}

/**
 * bw_line_panel_draw_levels:
 *
 * Draws each level that the line has across @panel.
 */
void
bw_line_panel_draw_levels (const BwLinePanel *panel, const BwLineShape *shape,
                           const BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (panel != NULL && shape != NULL && canvas != NULL && cr != NULL);
  const double dashes[] = { canvas->text_height * 0.15, canvas->text_height * 0.25 };

  cairo_save (cr);
  bw_canvas_set_pen (canvas, cr, BW_INK_RULE, LEVEL_LINE);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  for (guint i = 0; i < N_LEVELS; i++)
    if (level_name (shape, i) != NULL)
      {
        cairo_move_to (cr, panel->left, bw_line_panel_y (panel, levels[i]));
        cairo_line_to (cr, panel->right, bw_line_panel_y (panel, levels[i]));
      }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/**
 * bw_line_figures_text:
 * @pixels: zero where they are not told
 * @shares: whether the share of the line is told
 * @mark: the decimal mark
 *
 * Returns: (transfer full): what follows a time, such as "74 px · 8.6 %"; empty if that is nothing
 */
char *
bw_line_figures_text (const BwLineShape *shape, double length_s, int pixels, gboolean shares,
                      char mark)
{
  g_return_val_if_fail (shape != NULL, NULL);
  g_autofree char *share = bw_text_share (length_s / shape->period_s, mark);
  g_autofree char *count = g_strdup_printf ("%d\u00a0px", pixels);

  if (!shares)
    return g_strdup (pixels > 0 ? count : "");
  return pixels > 0 ? g_strconcat (count, " · ", share, NULL) : g_steal_pointer (&share);
}

/* The curve */

/**
 * bw_line_panel_draw_datum:
 * @time_s: of a datum
 * @from_y: where its line starts, down to the foot of @panel
 */
void
bw_line_panel_draw_datum (const BwLinePanel *panel, double time_s, double from_y,
                          const BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (panel != NULL && canvas != NULL && cr != NULL);
  double x = bw_line_panel_x (panel, time_s);
  bw_canvas_set_pen (canvas, cr, BW_INK_ACCENT, DATUM_LINE);
  cairo_move_to (cr, x, from_y);
  cairo_line_to (cr, x, panel->bottom);
  cairo_stroke (cr);
}

static void
trace_steps (const BwLinePanel *panel, cairo_t *cr, const GArray *steps)
{
  for (guint i = 0; i < steps->len; i++)
    {
      const BwLineStep *step = &g_array_index (steps, BwLineStep, i);
      double y = bw_line_panel_y (panel, step->level);
      cairo_line_to (cr, bw_line_panel_x (panel, step->from_s), y);
      cairo_line_to (cr, bw_line_panel_x (panel, step->to_s), y);
    }
}

/**
 * bw_line_panel_draw_curve:
 *
 * Draws what @panel shows of the line, filled from blanking on.
 */
void
bw_line_panel_draw_curve (const BwLinePanel *panel, const BwLineShape *shape,
                          const BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (panel != NULL && shape != NULL && canvas != NULL && cr != NULL);
  g_autoptr (GArray) steps = bw_line_shape_steps (shape, panel->from_s, panel->to_s);
  double blanking_y = bw_line_panel_y (panel, BW_LEVEL_BLANKING);

  cairo_new_path (cr);
  cairo_move_to (cr, panel->left, blanking_y);
  trace_steps (panel, cr, steps);
  cairo_line_to (cr, panel->right, blanking_y);
  cairo_close_path (cr);
  bw_ink_set_alpha (cr, canvas->ink, BW_INK_GRAPHITE, 0.07);
  cairo_fill (cr);

  bw_canvas_set_pen (canvas, cr, BW_INK_GRAPHITE, CURVE_LINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  trace_steps (panel, cr, steps);
  cairo_stroke (cr);
}

/* So many points make a wave of one cycle, and so wide must it be at least to be seen as one. */
#define WAVE_POINTS 16
#define LEAST_WAVE 0.25 /* in heights of a line of text */

static void
trace_wave (const BwLinePanel *panel, const BwLineShape *shape, cairo_t *cr)
{
  double length_s = shape->burst_to_s - shape->burst_from_s;
  int points = (int) ceil (shape->burst_cycles * WAVE_POINTS);

  for (int i = 0; i <= points; i++)
    {
      double share = (double) i / points;
      double level = shape->burst_level * sin (2 * G_PI * share * shape->burst_cycles);
      cairo_line_to (cr, bw_line_panel_x (panel, shape->burst_from_s + share * length_s),
                     bw_line_panel_y (panel, level));
    }
}

/**
 * bw_line_panel_draw_burst:
 *
 * Draws the burst, if there is one: as cycles where there is room to see them, over the range that
 * they take.
 */
void
bw_line_panel_draw_burst (const BwLinePanel *panel, const BwLineShape *shape,
                          const BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (panel != NULL && shape != NULL && canvas != NULL && cr != NULL);
  if (!bw_line_shape_has_burst (shape))
    return;
  double left = bw_line_panel_x (panel, shape->burst_from_s);
  double right = bw_line_panel_x (panel, shape->burst_to_s);
  double top = bw_line_panel_y (panel, shape->burst_level);
  double bottom = bw_line_panel_y (panel, -shape->burst_level);

  cairo_rectangle (cr, left, top, right - left, bottom - top);
  bw_ink_set_alpha (cr, canvas->ink, BW_INK_GRAPHITE, 0.3);
  cairo_fill (cr);
  if ((right - left) / shape->burst_cycles < LEAST_WAVE * canvas->text_height)
    return;
  cairo_new_path (cr);
  trace_wave (panel, shape, cr);
  bw_canvas_set_pen (canvas, cr, BW_INK_GRAPHITE, LEVEL_LINE);
  cairo_stroke (cr);
}
