/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What a point of the drawn mixture says. */

typedef struct
{
  BwRaster *raster;
  BwSyncMix *mix;
  BwSyncRun *run;
  char *name[BW_N_SYNC_ROWS];
  char mark;
} Mixture;

static void
mixture_free (gpointer data)
{
  Mixture *mixture = data;
  for (guint i = 0; i < BW_N_SYNC_ROWS; i++)
    g_free (mixture->name[i]);
  bw_sync_run_free (mixture->run);
  bw_sync_mix_free (mixture->mix);
  bw_raster_free (mixture->raster);
  g_free (mixture);
}

/* The level of a row of sync, 0 or 1; -1 in the row of the phase. */
static int
level_at (const BwSyncMix *mix, guint row, double time_s)
{
  const BwSyncTrace *traces[BW_N_SYNC_ROWS] = {
    [BW_SYNC_ROW_H] = &mix->h,
    [BW_SYNC_ROW_V] = &mix->v,
    [BW_SYNC_ROW_RESULT] = &mix->result,
    [BW_SYNC_ROW_STANDARD] = &mix->standard,
  };
  return traces[row] != NULL ? bw_sync_trace_level (traces[row], time_s) : -1;
}

static const char *
level_words (int level)
{
  return level > 0 ? _ ("high") : level == 0 ? _ ("low") : _ ("phase");
}

/* The last line that starts at or before @time_s; the first line if all start later. */
static const BwSyncLine *
line_of (const Mixture *mixture, double time_s)
{
  const GArray *lines = mixture->run->lines;
  const BwSyncLine *line = &g_array_index (lines, BwSyncLine, 0);
  for (guint i = 1; i < lines->len; i++)
    if (g_array_index (lines, BwSyncLine, i).due_s - mixture->mix->what.delay_s <= time_s)
      line = &g_array_index (lines, BwSyncLine, i);
  return line;
}

static char *
edge_words (const BwSyncLine *line, char mark)
{
  if (line->edge == BW_AFC_EDGE_MISSING)
    return g_strdup (_ ("its edge is missing"));
  if (fabs (line->late_s) < 0.5e-9)
    return g_strdup (_ ("its edge is right"));
  g_autofree char *off = bw_text_time (line->late_s, mark);
  return g_strdup_printf (line->late_s > 0 ? _ ("its edge is %s late") : _ ("its edge is %s early"),
                          off);
}

static char *
phase_words (double phase_s, char mark)
{
  if (isnan (phase_s))
    return g_strdup (_ ("the oscillator does not lock"));
  g_autofree char *off = bw_text_time (fabs (phase_s) < 0.5e-9 ? 0 : phase_s, mark);
  return g_strdup_printf (phase_s < 0 ? _ ("oscillator %s early") : _ ("oscillator %s late"), off);
}

/* The number of the line that lies there, and how long after its start that is. */
static int
number_at (const Mixture *mixture, double time_s, double *line_time_s)
{
  double half_s = mixture->mix->line_s / 2;
  int half = (int) floor (time_s / half_s);
  gboolean middle;
  int number = bw_raster_line_at (mixture->raster, mixture->mix->what.field, half, &middle);

  *line_time_s = time_s - (half - (middle ? 1 : 0)) * half_s;
  return number;
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Mixture *mixture = data;
  char mark = mixture->mark;
  double time_s = point->across, line_time_s;
  int number = number_at (mixture, time_s, &line_time_s);
  const BwSyncLine *line = line_of (mixture, time_s);
  g_autofree char *from_line = bw_text_time (line_time_s, mark);
  g_autofree char *time = bw_text_time (time_s, mark);
  g_autofree char *from = g_strdup_printf (time_s < 0 ? _ ("%s before field sync") : _ ("%s after field sync starts"),
                                           time);
  g_autofree char *edge = edge_words (line, mark);
  g_autofree char *phase = phase_words (line->phase_s, mark);

  return g_strdup_printf (_ ("%1$s %2$s: line %3$d, %4$s after its 0H, %5$s; %6$s, %7$s"),
                          mixture->name[point->id],
                          level_words (level_at (mixture->mix, point->id, time_s)), number,
                          from_line, from, edge, phase);
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Mixture *mixture = data;
  double span_s = b->across - a->across;
  g_autofree char *span = bw_text_span (span_s, mixture->mark);
  g_autofree char *lines = bw_text_lines (span_s / mixture->mix->line_s, mixture->mark);
  return g_strdup_printf (_ ("Between the cursors: %1$s, %2$s"), span, lines);
}

/**
 * bw_sync_take_words:
 * @layout: its mixture and what the oscillator makes of it go to @drawing
 *
 * Tells @drawing what it shows, and what its points say.
 */
void
bw_sync_take_words (BwDrawing *drawing, BwSyncLayout *layout)
{
  static const BwDrawingReader reader = { BW_CURSOR_ROWS, words, difference, mixture_free };
  const BwSyncMixCase *what = layout->what->what;
  g_autofree char *mixed = bw_sync_mix_name (what);
  Mixture *mixture = g_new0 (Mixture, 1);

  bw_drawing_take_words (drawing,
                         g_strdup_printf (_ ("%1$s of %2$s, drawn"), mixed,
                                          bw_or_empty (what->raster->name)),
                         bw_sync_describe (layout),
                         g_strdup_printf ("%s-sync-%s", bw_or_empty (what->raster->id),
                                          bw_kind_id (&bw_sync_gates, what->gate)));
  mixture->raster = bw_raster_copy (what->raster);
  mixture->mix = g_steal_pointer (&layout->mix);
  mixture->mix->what.raster = mixture->raster;
  mixture->run = g_steal_pointer (&layout->run);
  mixture->mark = layout->what->mark;
  for (BwSyncRow row = 0; row < BW_N_SYNC_ROWS; row++)
    mixture->name[row] = bw_sync_text_row (what, row);
  bw_drawing_take_reader (drawing, &reader, mixture);
}
