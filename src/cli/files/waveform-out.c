/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/waveform-options.h"
#include "core/raster/results.h"
#include "core/raster/waveform.h"
#include "draw/base/export.h"
#include "draw/levels/view.h"

/* The file of a test signal: samples as comma-separated values, or a drawing. */

#define WIDTH 1120 /* of a drawing, in pixels of 1/96 inch: a sheet of A4 across */
#define HEIGHT 790
#define MOST_BYTES (1u << 30)
#define FRAMES_MOST 1000000
#define ROW_BYTES 16 /* the most that the time takes, and each level */

static BwLevelsLoad
load_of (const BwWaveform *w, BwConductor conductor)
{
  if (bw_conductor_is_sync_alone (conductor))
    return (BwLevelsLoad){ w->sync_ohm, w->sync_load_ohm, w->sync_stated };
  return (BwLevelsLoad){ w->source_ohm, w->load_ohm, BW_LOAD_75_OHM };
}

/* Samples @first to before @end. */
static void
span_of (const BwWaveform *w, const BwSynthesis *s, gint64 *first, gint64 *end)
{
  double rate = bw_ratio_to_double (bw_synthesis_rate_hz (s));
  BwRasterFigures f;

  *first = bw_synthesis_line_start (s, w->frame, w->line);
  if (w->span == BW_SPAN_LINE)
    *end = bw_synthesis_line_start (s, w->frame, w->line + 1);
  else if (w->span == BW_SPAN_FRAME)
    *end = bw_synthesis_line_start (s, w->frame + 1, w->line);
  else
    {
      bw_raster_figures (w->raster, &f);
      *end = *first + (gint64) ceil (f.field_period_s * rate);
    }
}

/* In decimal, without an exponent and without a negative zero. */
static void
append_number (GString *csv, double value, const char *format, double step)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, format, fabs (value) < step / 2 ? 0 : value);
  g_string_append (csv, text);
}

/* @columns holds @n levels of each conductor of @conductors, one after the other. */
static GString *
csv_of (const BwWaveform *w, BwSynthesis *s, gint64 first, gsize n)
{
  guint conductors = bw_synthesis_conductors (s), columns = 0;
  BwRatio rate = bw_synthesis_rate_hz (s);
  long double datum_s = (long double) bw_synthesis_line_start_s (s, w->frame, w->line);
  g_autofree float *volts = g_new (float, n *BW_N_CONDUCTORS);
  double gain[BW_N_CONDUCTORS];
  GString *csv = g_string_new ("time_s");

  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    {
      if (!(conductors & BW_BIT (c)))
        continue;
      BwLevelsLoad load = load_of (w, c);
      gain[columns] = bw_levels_gain (&load);
      bw_synthesis_fill (s, c, first, n, volts + n * columns++);
      g_string_append_printf (csv, ",%s_v", bw_kind_id (&bw_conductors, c));
    }
  g_string_append_c (csv, '\n');
  for (gsize i = 0; i < n; i++)
    {
      long double time_s = (long double) (first + (gint64) i) * rate.den / rate.num - datum_s;
      append_number (csv, (double) time_s, "%.12f", 1e-12);
      for (guint column = 0; column < columns; column++)
        {
          g_string_append_c (csv, ',');
          append_number (csv, gain[column] * (double) volts[n * column + i], "%.7f", 1e-7);
        }
      g_string_append_c (csv, '\n');
    }
  return csv;
}

/* What was written, for scripts. */
static BwCliExit
show (const BwCliOptions *options, const BwWaveform *w, const BwSynthesis *s, gsize n,
      const char *target)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);
  double rate_hz = bw_ratio_to_double (bw_synthesis_rate_hz (s));

  bw_node_member (root, bw_value_words ("raster", w->raster->id));
  bw_node_member (root, bw_value_kind ("system", &bw_colour_systems, w->what.form.system));
  bw_node_member (root, bw_value_kind ("kind", &bw_signals, w->what.form.signal));
  bw_node_member (root, bw_value_kind ("sync", &bw_sync_kinds, w->what.form.sync));
  bw_node_member (root, bw_value_kind ("content", &bw_contents, w->what.content));
  bw_node_member (root, bw_value_kind ("span", &bw_spans, w->span));
  bw_node_member (root, bw_value_count ("frame", (double) w->frame));
  bw_node_member (root, bw_value_count ("line", w->line));
  bw_node_member (root, bw_value_quantity ("rate_hz", rate_hz, BW_DIMENSION_FREQUENCY, 9));
  bw_node_member (root, bw_value_count ("samples", (double) n));
  bw_node_member (root, bw_value_count ("colour_frames", bw_synthesis_colour_frames (s)));
  bw_node_member (root, bw_value_set ("conductors", &bw_conductors, bw_synthesis_conductors (s)));
  bw_node_member (root, bw_value_words ("waveform", target));
  bw_raster_say_recalled (root, w->raster);
  return bw_cli_show (options, result);
}

static gboolean
write_csv (const BwWaveform *w, BwSynthesis *s, gint64 first, gsize n, const char *target)
{
  gsize columns = 1;
  for (BwConductor c = 0; c < BW_N_CONDUCTORS; c++)
    columns += (bw_synthesis_conductors (s) & BW_BIT (c)) != 0;
  if (n > MOST_BYTES / (ROW_BYTES * columns))
    {
      bw_cli_complain (_ ("%s would be larger than 1 GiB; a lower --rate or a shorter --span is "
                          "allowed"),
                       target);
      return FALSE;
    }
  g_autoptr (GBytes) bytes = g_string_free_to_bytes (csv_of (w, s, first, n));
  return bw_cli_write (target, bytes);
}

static gboolean
write_drawing (const BwWaveform *w, BwLevelsModel *model, const char *target,
               const BwDrawingPage *page)
{
  g_autoptr (GError) error = NULL;
  BwLevelsView view = { .model = model,
                        .span = w->span == BW_SPAN_LINE ? BW_LEVELS_LINE : BW_LEVELS_FIELD,
                        .frame = w->frame,
                        .line = w->line,
                        .video = load_of (w, BW_CONDUCTOR_VIDEO),
                        .own_sync = load_of (w, BW_CONDUCTOR_SYNC),
                        .mark = bw_quantity_locale_mark () };
  const BwInk ink = { page->theme, NULL, BW_INK_SCREEN_DPI };
  g_autoptr (BwDrawing) drawing = bw_levels_drawing (&view, page->width > 0 ? page->width : WIDTH,
                                                     page->height > 0 ? page->height : HEIGHT,
                                                     &ink);
  g_autoptr (GBytes) bytes = bw_export_drawing_bytes (drawing, w->title,
                                                      bw_cli_target_name (target,
                                                                          bw_waveform_files),
                                                      &error);
  if (bytes != NULL)
    return bw_cli_write (target, bytes);
  bw_cli_fault (error->message);
  return FALSE;
}

/* A line in the middle of the picture of the first field. */
static int
picture_line (const BwRaster *raster)
{
  const BwFieldTiming *field = &raster->field[0];
  int half_lines = field->sync + field->back_porch + 2 * raster->v_border + field->active / 2;
  return bw_raster_line_at (raster, 0, half_lines, NULL);
}

/* Without --line that of the middle of the picture, or line 1. */
static gboolean
settle_line (BwWaveform *w)
{
  BwRasterFigures f;
  bw_raster_figures (w->raster, &f);
  if (w->line == BW_WAVEFORM_ANY_LINE)
    w->line = w->span == BW_SPAN_LINE ? picture_line (w->raster) : 1;
  if (w->line < 1 || w->line > f.lines_per_frame)
    bw_cli_complain (_ ("--line %1$d: allowed are 1 to %2$d"), w->line, f.lines_per_frame);
  else if (w->frame < 0 || w->frame > FRAMES_MOST)
    bw_cli_complain (_ ("--frame %1$d: allowed are 0 to %2$d"), (int) w->frame, FRAMES_MOST);
  else
    return TRUE;
  return FALSE;
}

static BwCliExit
refused (const BwWaveform *w, const GError *error)
{
  bw_cli_complain ("%s: %s", w->title, error->message);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
write_samples (const BwCliOptions *options, const BwWaveform *w, const char *target)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&w->what, &error);
  gint64 first, end;

  if (s == NULL)
    return refused (w, error);
  span_of (w, s, &first, &end);
  if (!write_csv (w, s, first, (gsize) (end - first), target))
    return BW_CLI_BAD_INPUT;
  return show (options, w, s, (gsize) (end - first), target);
}

/* A drawing without --rate has as many samples as it needs. */
static BwCliExit
write_picture (const BwCliOptions *options, const BwWaveform *w, const char *target,
               const BwDrawingPage *page)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwLevelsModel) model = bw_levels_model_new (&w->what, &error);
  gint64 first, end;

  if (model == NULL)
    return refused (w, error);
  if (!write_drawing (w, model, target, page))
    return BW_CLI_BAD_INPUT;
  BwSynthesis *s = bw_levels_model_synthesis (model);
  span_of (w, s, &first, &end);
  return show (options, w, s, (gsize) (end - first), target);
}

/**
 * bw_waveform_is_samples:
 * @target: one of bw_waveform_files
 *
 * Returns: whether it is to hold samples, and no drawing
 */
gboolean
bw_waveform_is_samples (const char *target)
{
  g_return_val_if_fail (target != NULL, FALSE);
  const char *name = bw_cli_target_name (target, bw_waveform_files);
  return g_ascii_strcasecmp (name + strlen (name) - strlen (".csv"), ".csv") == 0;
}

/**
 * bw_waveform_write:
 * @waveform: its line is settled
 * @target: one of bw_waveform_files
 * @page: of a drawing
 *
 * Returns: how the program ends, having said so
 */
BwCliExit
bw_waveform_write (const BwCliOptions *options, BwWaveform *waveform, const char *target,
                   const BwDrawingPage *page)
{
  if (!settle_line (waveform))
    return BW_CLI_BAD_INPUT;
  return bw_waveform_is_samples (target) ? write_samples (options, waveform, target)
                                         : write_picture (options, waveform, target, page);
}
