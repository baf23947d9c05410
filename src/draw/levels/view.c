/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "core/circuit/drive.h"

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwLevelsLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  gboolean all = bw_levels_claim_words (layout);
  bw_levels_place_all (layout);
  all &= bw_levels_is_large_enough (layout);
  return all & bw_levels_claim_labels (layout);
}

static void
layout_init (BwLevelsLayout *layout, double width, double height, const BwInk *ink,
             const BwLevelsView *what)
{
  *layout = (BwLevelsLayout){ .what = what, .model = what->model };
  layout->canvas = bw_canvas_new (ink, width, height);
  bw_levels_init_panels (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_LEVELS_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwLevelsLayout *layout)
{
  bw_canvas_free (layout->canvas);
}

/**
 * bw_levels_gain:
 *
 * Returns: from a level as it is stated to that on the wire, by bw_level_at_load(); 1 where no load
 *   is known
 */
double
bw_levels_gain (const BwLevelsLoad *load)
{
  if (load->load_ohm <= 0)
    return 1;
  return bw_level_at_load (1, load->stated, load->source_ohm, load->load_ohm);
}

/**
 * bw_draw_levels_view:
 * @width: of the page, in user-space units; @height: likewise
 *
 * Draws the levels so that they fill the page.
 */
void
bw_draw_levels_view (cairo_t *cr, double width, double height, const BwInk *ink,
                     const BwLevelsView *what)
{
  BwLevelsLayout layout;
  layout_init (&layout, width, height, ink, what);
  cairo_save (cr);
  bw_levels_layout_draw (&layout, cr);
  cairo_restore (cr);
  layout_clear (&layout);
}

/* Read */

/* Of what stands at one place of an envelope: a unit of the page, and not less than a cycle of the
 * subcarrier, or a line, where that is finer. */
static double
envelope_s (const BwLevelsLayout *layout, BwConductor conductor)
{
  double unit_s = (layout->across.to - layout->across.from) / (layout->right - layout->left);
  double line_s = bw_levels_model_shape (layout->model)->period_s;

  if (line_s < BW_LEVELS_LEAST_LINE * unit_s)
    return line_s;
  if (!bw_levels_has_chroma (layout->model, conductor))
    return unit_s;
  return fmax (unit_s, 1 / bw_levels_model_subcarrier_hz (layout->model));
}

/* The trace at a time, as it is stated: the line between two samples, or what the envelope has. */
static void
read_trace (const BwLevelsLayout *layout, const BwLevelsPanel *panel, double time_s, BwRange *volts)
{
  BwConductor conductor = panel->levels.conductor;
  gboolean curve = bw_levels_shows_curve (layout, conductor);
  double half_s = curve ? 0 : envelope_s (layout, conductor) / 2;
  const BwLevelsWindow window = { layout->window.start_s, time_s - half_s, time_s + half_s };
  BwLevelsSamples samples;

  bw_levels_samples (layout->model, conductor, &window, &samples);
  *volts = (BwRange){ INFINITY, -INFINITY };
  for (gsize i = 0; i < samples.n && !curve; i++)
    *volts = (BwRange){ fmin (volts->low, (double) samples.volts[i]),
                        fmax (volts->high, (double) samples.volts[i]) };
  if (curve)
    {
      double share = CLAMP ((time_s - samples.first_s) / samples.step_s, 0, 1);
      double from_v = samples.volts[0], to_v = samples.volts[1];
      volts->low = volts->high = from_v + share * (to_v - from_v);
    }
  bw_levels_samples_clear (&samples);
}

/* Of the line that lies @time_s after the datum of the view's own. */
static void
read_line (const BwLevelsLayout *layout, double time_s, BwLevelsPoint *point)
{
  const BwLevelsView *what = layout->what;
  BwRasterFigures figures;

  bw_raster_figures (bw_levels_model_raster (layout->model), &figures);
  int lines = bw_synthesis_lines (bw_levels_model_synthesis (layout->model));
  int later = (int) floor (time_s / figures.line_period_s);
  point->line = ((what->line - 1 + later) % lines + lines) % lines + 1;
  point->line_time_s = time_s - later * figures.line_period_s;
}

static void
read_point (const BwLevelsLayout *layout, const BwLevelsPanel *panel, double x, double y,
            BwLevelsPoint *point)
{
  BwRange volts;
  double time_s = bw_view_range_value (&layout->across, x, layout->left, layout->right);
  double share = (panel->bottom - y) / (panel->bottom - panel->top);

  read_trace (layout, panel, time_s, &volts);
  *point = (BwLevelsPoint){
    .conductor = panel->levels.conductor,
    .time_s = time_s,
    .pointer_v = panel->low_v + share * (panel->high_v - panel->low_v),
    .low_v = volts.low * panel->gain,
    .high_v = volts.high * panel->gain,
    .stated_v = (volts.low + volts.high) / 2,
    .volts_per_ire = panel->levels.volts_per_ire,
  };
  read_line (layout, time_s, point);
}

/**
 * bw_levels_view_read:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @x: a point of the page
 * @y: likewise
 * @point: (out): what is there
 *
 * Returns: whether the point lies on a panel; if not, @point is left as it is
 */
gboolean
bw_levels_view_read (double width, double height, const BwInk *ink, const BwLevelsView *what,
                     double x, double y, BwLevelsPoint *point)
{
  BwLevelsLayout layout;
  gboolean inside = FALSE;

  layout_init (&layout, width, height, ink, what);
  for (guint i = 0; i < layout.n_panels && !inside; i++)
    if (x >= layout.left && x <= layout.right && y >= layout.panel[i].top
        && y <= layout.panel[i].bottom)
      {
        read_point (&layout, &layout.panel[i], x, y, point);
        inside = TRUE;
      }
  layout_clear (&layout);
  return inside;
}

/**
 * bw_levels_view_place:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @time_s: after 0H of the view's line
 * @volts: on the wire
 * @x: (out): the point of the page
 * @y: (out): likewise
 *
 * The other way round from bw_levels_view_read(), for a cursor.
 *
 * Returns: whether the point is shown; if @conductor is not drawn, @x and @y are left as they are
 */
gboolean
bw_levels_view_place (double width, double height, const BwInk *ink, const BwLevelsView *what,
                      BwConductor conductor, double time_s, double volts, double *x, double *y)
{
  BwLevelsLayout layout;
  gboolean shown = FALSE;

  layout_init (&layout, width, height, ink, what);
  for (guint i = 0; i < layout.n_panels; i++)
    {
      const BwLevelsPanel *panel = &layout.panel[i];
      if (panel->levels.conductor != conductor)
        continue;
      *x = bw_levels_x (&layout, time_s);
      *y = bw_levels_y (panel, volts);
      shown = *x >= layout.left - 1e-6 && *x <= layout.right + 1e-6 && *y >= panel->top - 1e-6
              && *y <= panel->bottom + 1e-6;
    }
  layout_clear (&layout);
  return shown;
}

/**
 * bw_levels_view_labels:
 * @width: as for bw_draw_levels_view(); likewise @height, @ink and @what
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_levels_view_labels (double width, double height, const BwInk *ink, const BwLevelsView *what,
                       guint *left_out)
{
  BwLevelsLayout layout;
  layout_init (&layout, width, height, ink, what);
  GArray *labels = g_array_ref (layout.canvas->labels);
  if (left_out != NULL)
    *left_out = layout.left_out;
  layout_clear (&layout);
  return labels;
}
