/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What a point of the drawn levels says. */

/**
 * Levels:
 * @start_s: of 0H of the view's line, from that of sample 0
 * @unit_s: time to a unit of the page
 * @gain: of each conductor, from the stated level to that on the wire
 * @volts_per_ire: of each conductor; zero where there is no IRE scale
 */
typedef struct
{
  BwLevelsModel *model;
  double start_s;
  double unit_s;
  int line;
  double gain[BW_N_CONDUCTORS];
  double volts_per_ire[BW_N_CONDUCTORS];
  char mark;
} Levels;

static Levels *
levels_new (const BwLevelsLayout *layout)
{
  Levels *levels = g_new0 (Levels, 1);

  levels->model = bw_levels_model_ref (layout->model);
  levels->start_s = layout->window.start_s;
  levels->unit_s = bw_levels_unit_s (layout);
  levels->line = layout->what->line;
  levels->mark = layout->what->mark;
  for (guint i = 0; i < layout->n_panels; i++)
    {
      const BwLevelsPanel *panel = &layout->panel[i];
      levels->gain[panel->levels.conductor] = panel->gain;
      levels->volts_per_ire[panel->levels.conductor] = panel->levels.volts_per_ire;
    }
  return levels;
}

static void
levels_free (gpointer data)
{
  Levels *levels = data;
  bw_levels_model_unref (levels->model);
  g_free (levels);
}

/* The trace */

/* The time that one place of an envelope stands for: a unit of the page, but at least a cycle of
 * the subcarrier, or a whole line where lines are drawn as their envelope. */
static double
envelope_s (const Levels *levels, BwConductor conductor)
{
  double unit_s = levels->unit_s;
  double line_s = bw_levels_model_shape (levels->model)->period_s;

  if (line_s < BW_LEVELS_LEAST_LINE * unit_s)
    return line_s;
  if (!bw_levels_has_chroma (levels->model, conductor))
    return unit_s;
  return fmax (unit_s, 1 / bw_levels_model_subcarrier_hz (levels->model));
}

/* The trace at a time, on the wire: the line between two samples, or what the envelope has. */
static void
read_trace (const Levels *levels, BwConductor conductor, double time_s, BwRange *volts)
{
  gboolean curve = bw_levels_shows_curve (levels->model, conductor, levels->unit_s);
  double half_s = curve ? 0 : envelope_s (levels, conductor) / 2;
  const BwLevelsWindow window = { levels->start_s, time_s - half_s, time_s + half_s };
  BwLevelsSamples samples;

  bw_levels_samples (levels->model, conductor, &window, &samples);
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
  volts->low *= levels->gain[conductor];
  volts->high *= levels->gain[conductor];
}

/* Words */

/* The line that lies @time_s after 0H of the view's own, and how long after its own 0H that is. */
static int
line_at (const Levels *levels, double time_s, double *line_time_s)
{
  double period_s = bw_levels_model_shape (levels->model)->period_s;
  int lines = bw_synthesis_lines (bw_levels_model_synthesis (levels->model));
  int later = (int) floor (time_s / period_s);

  *line_time_s = time_s - later * period_s;
  return ((levels->line - 1 + later) % lines + lines) % lines + 1;
}

/* One level, or from where to where the envelope goes. */
static char *
trace_text (const BwRange *volts, double per_ire, char mark)
{
  if (bw_near (volts->low, volts->high, 50e-6))
    return bw_text_level (volts->high, per_ire, mark);
  g_autofree char *low = bw_text_number (volts->low * 1e3, 1, mark);
  g_autofree char *high = bw_text_number (volts->high * 1e3, 1, mark);
  if (!(per_ire > 0))
    return g_strdup_printf (_ ("%1$s to %2$s\u00a0mV"), low, high);
  g_autofree char *low_ire = bw_text_number (volts->low / per_ire, 1, mark);
  g_autofree char *high_ire = bw_text_number (volts->high / per_ire, 1, mark);
  return g_strdup_printf (_ ("%1$s to %2$s\u00a0mV (%3$s to %4$s\u00a0IRE)"), low, high, low_ire,
                          high_ire);
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Levels *levels = data;
  double per_ire = levels->volts_per_ire[point->id], line_time_s;
  int line = line_at (levels, point->across, &line_time_s);
  BwRange volts;

  read_trace (levels, point->id, point->across, &volts);
  g_autofree char *time = bw_text_time (line_time_s, levels->mark);
  g_autofree char *trace = trace_text (&volts, per_ire, levels->mark);
  g_autofree char *pointer = bw_text_level (point->down, per_ire, levels->mark);
  return g_strdup_printf (_ ("%1$s, line %2$d, %3$s after 0H: %4$s; pointer %5$s"),
                          bw_kind_label (&bw_conductors, point->id), line, time, trace, pointer);
}

static double
trace_v (const Levels *levels, const BwDrawingPoint *point)
{
  BwRange volts;
  read_trace (levels, point->id, point->across, &volts);
  return (volts.low + volts.high) / 2;
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Levels *levels = data;
  double per_ire = a->id == b->id ? levels->volts_per_ire[a->id] : 0;
  double trace_by_v = trace_v (levels, b) - trace_v (levels, a);
  g_autofree char *span = bw_text_span (b->across - a->across, levels->mark);
  g_autofree char *trace = bw_text_level (trace_by_v, per_ire, levels->mark);
  g_autofree char *pointer = bw_text_level (b->down - a->down, per_ire, levels->mark);
  return g_strdup_printf (_ ("Between the cursors: %1$s, trace %2$s, pointer %3$s"), span, trace,
                          pointer);
}

/* Private: tells @drawing what it shows, and what its points say. */
void
bw_levels_take_words (BwDrawing *drawing, const BwLevelsLayout *layout)
{
  static const BwDrawingReader reader = { BW_CURSOR_CROSS, words, difference, levels_free };
  const BwRaster *raster = bw_levels_model_raster (layout->model);
  const char *name = bw_or_empty (raster->name), *id = bw_or_empty (raster->id);
  gboolean field = layout->what->span == BW_LEVELS_FIELD;

  bw_drawing_take_words (drawing,
                         field ? g_strdup_printf (_ ("The levels of a field of %s, drawn"), name)
                               : g_strdup_printf (_ ("The levels of a line of %s, drawn"), name),
                         bw_levels_describe (layout),
                         g_strdup_printf (field ? "%s-levels-field" : "%s-levels", id));
  bw_drawing_take_reader (drawing, &reader, levels_new (layout));
}
