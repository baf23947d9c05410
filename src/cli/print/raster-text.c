/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-text.h"

#include <glib/gi18n-lib.h>

#include "cli/base/nearest.h"
#include "cli/base/table.h"
#include "cli/base/words.h"

#define LABEL_COLUMNS 24

/* The listing of one raster. Every section has a table of its own: labels, then words, or numbers
 * with their units in pairs. */
typedef struct
{
  const BwRaster *raster;
  BwRasterFigures figures;
  GString *to;
  BwTable *table; /* of the section that is being written */
} RasterLister;

static void
begin_numbers (RasterLister *lister)
{
  lister->table = bw_table_new (5);
  bw_table_set_width (lister->table, 0, LABEL_COLUMNS, 0);
  bw_table_set_right (lister->table, 1);
  bw_table_set_right (lister->table, 3);
}

static void
begin_words (RasterLister *lister)
{
  lister->table = bw_table_new (2);
  bw_table_set_width (lister->table, 0, LABEL_COLUMNS, 0);
}

static void
end_table (RasterLister *lister)
{
  bw_table_append_to (lister->table, lister->to, 2);
  g_clear_pointer (&lister->table, bw_table_free);
}

static void
add_number (RasterLister *lister, const char *label, double value, int decimals, const char *unit)
{
  g_autofree char *number = bw_words_fixed (value, decimals);
  bw_table_add_row (lister->table, label, number, unit, NULL);
}

/* A part of the line, in time and, where there are pixels, in those too. */
static void
add_interval (RasterLister *lister, const char *label, int pixels, double time_s)
{
  g_autofree char *time_us = bw_words_fixed (time_s * 1e6, 4);
  g_autofree char *count = g_strdup_printf ("%d", pixels);
  if (lister->figures.has_pixels)
    bw_table_add_row (lister->table, label, count, _ ("px"), time_us, _ ("µs"), NULL);
  else
    bw_table_add_row (lister->table, label, time_us, _ ("µs"), NULL);
}

static void
list_line (RasterLister *lister)
{
  const BwRaster *raster = lister->raster;
  const BwRasterFigures *figures = &lister->figures;

  g_string_append_printf (lister->to, "\n%s\n", _ ("Line"));
  begin_numbers (lister);
  add_number (lister, _ ("Line rate"), figures->line_rate_hz / 1e3, 6, _ ("kHz"));
  if (figures->has_pixels)
    add_number (lister, _ ("Pixel clock"), figures->pixel_clock_hz / 1e6, 6, _ ("MHz"));
  add_interval (lister, _ ("Whole line"), figures->h_total, figures->line_period_s);
  add_interval (lister, _ ("Active"), raster->h_active, figures->h_active_s);
  if (raster->h_border > 0)
    add_interval (lister, _ ("Border, each side"), raster->h_border, figures->h_border_s);
  add_interval (lister, _ ("Front porch"), raster->h_front_porch, figures->h_front_porch_s);
  add_interval (lister, _ ("Sync"), raster->h_sync, figures->h_sync_s);
  add_interval (lister, _ ("Back porch"), raster->h_back_porch, figures->h_back_porch_s);
  add_interval (lister, _ ("Blanking"),
                raster->h_front_porch + raster->h_sync + raster->h_back_porch,
                figures->h_blanking_s);
  if (raster->pixel_repeat > 1)
    add_number (lister, _ ("Each sample is sent"), raster->pixel_repeat, 0, _ ("times"));
  end_table (lister);
}

/* Half lines of both fields, or of the one field that a progressive raster has. */
static void
add_lines (RasterLister *lister, const char *label, int first, int second)
{
  g_autofree char *one = bw_words_fixed (first / 2.0, 1);
  g_autofree char *two = bw_words_fixed (second / 2.0, 1);
  if (lister->raster->scan == BW_SCAN_INTERLACED)
    bw_table_add_row (lister->table, label, one, _ ("lines"), two, _ ("lines"), NULL);
  else
    bw_table_add_row (lister->table, label, one, _ ("lines"), NULL);
}

static void
list_field_intervals (RasterLister *lister)
{
  const BwFieldTiming *one = &lister->raster->field[0];
  const BwFieldTiming *two = &lister->raster->field[1];
  int border = 2 * lister->raster->v_border;

  if (lister->raster->scan == BW_SCAN_INTERLACED)
    bw_table_add_row (lister->table, "", _ ("field 1"), "", _ ("field 2"), NULL);
  add_lines (lister, _ ("Active"), one->active, two->active);
  if (border > 0)
    add_lines (lister, _ ("Border, above and below"), border, border);
  add_lines (lister, _ ("Front porch"), one->front_porch, two->front_porch);
  add_lines (lister, _ ("Sync"), one->sync, two->sync);
  add_lines (lister, _ ("Back porch"), one->back_porch, two->back_porch);
  add_lines (lister, _ ("Blanking"), one->front_porch + one->sync + one->back_porch,
             two->front_porch + two->sync + two->back_porch);
}

static void
list_field (RasterLister *lister)
{
  const BwRasterFigures *figures = &lister->figures;

  g_string_append_printf (lister->to, "\n%s\n", _ ("Field"));
  begin_words (lister);
  bw_table_add_row (lister->table, _ ("Scan"), bw_kind_label (&bw_scans, lister->raster->scan),
                    NULL);
  end_table (lister);
  begin_numbers (lister);
  add_number (lister, _ ("Field rate"), figures->field_rate_hz, 6, _ ("Hz"));
  add_number (lister, _ ("Frame rate"), figures->frame_rate_hz, 6, _ ("Hz"));
  add_number (lister, _ ("Lines per field"), figures->lines_per_field, 1, _ ("lines"));
  add_number (lister, _ ("Lines per frame"), figures->lines_per_frame, 0, _ ("lines"));
  list_field_intervals (lister);
  end_table (lister);
}

/* A time among words. */
static void
add_time (RasterLister *lister, const char *label, double time_s)
{
  g_autofree char *number = bw_words_fixed (time_s * 1e6, 4);
  g_autofree char *time = g_strdup_printf (_ ("%s µs"), number);
  bw_table_add_row (lister->table, label, time, NULL);
}

static void
list_pulses (RasterLister *lister)
{
  const BwRaster *raster = lister->raster;
  if (raster->equalising_before > 0 || raster->equalising_after > 0)
    {
      g_autofree char *count = g_strdup_printf (_ ("%d before, %d after"),
                                                raster->equalising_before,
                                                raster->equalising_after);
      bw_table_add_row (lister->table, _ ("Equalising pulses"), count, NULL);
      add_time (lister, _ ("Equalising width"), raster->equalising_width_s);
    }
  if (raster->serration_width_s > 0)
    add_time (lister, _ ("Serration width"), raster->serration_width_s);
}

static void
list_sync (RasterLister *lister)
{
  const BwRaster *raster = lister->raster;

  g_string_append_printf (lister->to, "\n%s\n", _ ("Sync"));
  begin_words (lister);
  bw_table_add_row (lister->table, _ ("Line sync"),
                    bw_kind_label (&bw_polarities, raster->h_polarity), NULL);
  bw_table_add_row (lister->table, _ ("Field sync"),
                    bw_kind_label (&bw_polarities, raster->v_polarity), NULL);
  bw_table_add_row (lister->table, _ ("Shape"), bw_kind_label (&bw_sync_shapes, raster->sync_shape),
                    NULL);
  add_time (lister, _ ("Datum after sync begins"), lister->figures.h_datum_s);
  list_pulses (lister);
  end_table (lister);
}

static void
append_remark (RasterLister *lister, const char *label, const char *text)
{
  if (text == NULL || *text == '\0')
    return;
  g_autofree char *first = g_strdup_printf ("  %s: ", label);
  bw_words_append_wrapped (lister->to, first, bw_words_width (first), text);
}

static void
list_names (RasterLister *lister)
{
  const BwRaster *raster = lister->raster;
  g_autofree char *title = g_strdup_printf ("%s: ", raster->id);
  g_autoptr (GPtrArray) names = bw_raster_names (raster);

  bw_words_append_wrapped (lister->to, title, 2, raster->name);
  append_remark (lister, _ ("Given by"), raster->source);
  g_ptr_array_add (names, NULL);
  g_autofree char *aliases = g_strjoinv (", ", (char **) names->pdata + 1);
  append_remark (lister, _ ("Also called"), aliases);
  append_remark (lister, _ ("Note"), raster->note);
}

/**
 * bw_raster_append_text:
 * @raster: a raster that bw_raster_check() accepts
 *
 * Appends a listing for reading: what it is, then its line, its field and its sync.
 */
void
bw_raster_append_text (const BwRaster *raster, GString *to)
{
  RasterLister lister = { .raster = raster, .to = to };
  bw_raster_figures (raster, &lister.figures);
  list_names (&lister);
  list_line (&lister);
  list_field (&lister);
  list_sync (&lister);
}
