/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-figures.h"

#include <glib/gi18n-lib.h>

#include "draw/base/text.h"

/* The numbers beside the drawn raster. */

#define DIGITS 7

typedef struct
{
  GPtrArray *figures;
  const BwRaster *raster;
  BwRasterFigures f;
  char mark;
} Table;

static void
add_value (Table *t, const char *name, double value, BwDimension dimension)
{
  g_autofree char *text = bw_quantity_format (value, dimension, DIGITS, t->mark);
  g_ptr_array_add (t->figures, bw_figure_new (name, NULL, text));
}

static void
add_words (Table *t, const char *name, const char *words)
{
  if (words != NULL && *words != '\0')
    g_ptr_array_add (t->figures, bw_figure_new (name, NULL, words));
}

/* An interval of the line: pixels, if the raster has them, and time. */
static void
add_h (Table *t, const char *name, int pixels, double time_s)
{
  g_autofree char *time = bw_text_us (time_s, t->mark);
  g_autofree char *count = t->f.has_pixels
                               ? bw_quantity_format (pixels, BW_DIMENSION_PIXELS, DIGITS, t->mark)
                               : NULL;
  g_ptr_array_add (t->figures, bw_figure_new (name, count, time));
}

/* An interval of field 1: lines and time. */
static void
add_v (Table *t, const char *name, int half_lines)
{
  double lines = half_lines / 2.0;
  g_autofree char *count = bw_quantity_format (lines, BW_DIMENSION_LINES, DIGITS, t->mark);
  g_autofree char *time = bw_quantity_format (lines * t->f.line_period_s, BW_DIMENSION_TIME, 5,
                                              t->mark);
  g_ptr_array_add (t->figures, bw_figure_new (name, count, time));
}

static void
add_rates (Table *t)
{
  add_value (t, _ ("Line rate"), t->f.line_rate_hz, BW_DIMENSION_FREQUENCY);
  add_value (t, _ ("Field rate"), t->f.field_rate_hz, BW_DIMENSION_FREQUENCY);
  add_value (t, _ ("Frame rate"), t->f.frame_rate_hz, BW_DIMENSION_FREQUENCY);
  if (t->f.has_pixels)
    add_value (t, _ ("Pixel clock"), t->f.pixel_clock_hz, BW_DIMENSION_FREQUENCY);
  add_words (t, _ ("Scan"), bw_kind_label (&bw_scans, t->raster->scan));
  add_value (t, _ ("Lines per field"), t->f.lines_per_field, BW_DIMENSION_LINES);
  add_value (t, _ ("Lines per frame"), t->f.lines_per_frame, BW_DIMENSION_LINES);
}

static void
add_line (Table *t)
{
  const BwRaster *r = t->raster;
  int blanking = r->h_front_porch + r->h_sync + r->h_back_porch;

  add_h (t, _ ("Line"), t->f.h_total, t->f.line_period_s);
  add_h (t, _ ("Line picture"), r->h_active, t->f.h_active_s);
  if (r->h_border > 0)
    add_h (t, _ ("Line border, each side"), r->h_border, t->f.h_border_s);
  add_h (t, _ ("Line front porch"), r->h_front_porch, t->f.h_front_porch_s);
  add_h (t, _ ("Line sync"), r->h_sync, t->f.h_sync_s);
  add_h (t, _ ("Line back porch"), r->h_back_porch, t->f.h_back_porch_s);
  add_h (t, _ ("Line blanking"), blanking, t->f.h_blanking_s);
}

static void
add_field (Table *t)
{
  const BwFieldTiming *field = &t->raster->field[0];

  add_v (t, _ ("Field"),
         field->active + field->front_porch + field->sync + field->back_porch
             + 4 * t->raster->v_border);
  add_v (t, _ ("Field picture"), field->active);
  if (t->raster->v_border > 0)
    add_v (t, _ ("Field border, each side"), 2 * t->raster->v_border);
  add_v (t, _ ("Field front porch"), field->front_porch);
  add_v (t, _ ("Field sync"), field->sync);
  add_v (t, _ ("Field back porch"), field->back_porch);
  add_v (t, _ ("Field blanking"), field->front_porch + field->sync + field->back_porch);
}

static void
add_pulses (Table *t)
{
  const BwRaster *r = t->raster;
  if (r->equalising_width_s > 0)
    {
      g_autofree char *count = g_strdup_printf ("%d + %d", r->equalising_before,
                                                r->equalising_after);
      g_autofree char *width = bw_text_us (r->equalising_width_s, t->mark);
      g_ptr_array_add (t->figures, bw_figure_new (_ ("Equalising pulses"), count, width));
    }
  if (r->serration_width_s > 0)
    {
      g_autofree char *width = bw_text_us (r->serration_width_s, t->mark);
      add_words (t, _ ("Serration"), width);
    }
}

static void
add_sync (Table *t)
{
  const BwRaster *r = t->raster;
  add_words (t, _ ("Line sync polarity"), bw_kind_label (&bw_polarities, r->h_polarity));
  add_words (t, _ ("Field sync polarity"), bw_kind_label (&bw_polarities, r->v_polarity));
  add_words (t, _ ("Sync shape"), bw_kind_label (&bw_sync_shapes, r->sync_shape));
  add_pulses (t);
  add_words (t, _ ("Figures from"), r->source);
  add_words (t, _ ("Note"), r->note);
}

/**
 * bw_raster_table:
 *
 * Returns: (transfer full) (element-type BwTableFigure): every figure of @raster, for reading; vertical
 * ones are those of field 1
 */
GPtrArray *
bw_raster_table (const BwRaster *raster)
{
  Table t = { .figures = bw_figures_new (), .raster = raster, .mark = bw_quantity_locale_mark () };

  bw_raster_figures (raster, &t.f);
  add_rates (&t);
  add_line (&t);
  add_field (&t);
  add_sync (&t);
  return t.figures;
}
