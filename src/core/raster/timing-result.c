/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

/* One raster with all that follows from it. In keys, what has no unit is in pixels (h_) or in lines
 * of one field (v_). Pixels are not known of a raster that is defined in time alone, and a second
 * field not of a progressive one. */

static const char order[] =
    "format id name source scan pixel_clock_hz h_active h_front_porch h_sync h_back_porch h_total "
    "h_active_s h_front_porch_s h_sync_s h_back_porch_s h_blanking_s line_period_s v_active "
    "v_front_porch v_sync v_back_porch lines_per_field lines_per_frame line_rate_hz field_rate_hz "
    "frame_rate_hz h_sync_polarity v_sync_polarity h_border v_border v_active_field_2 "
    "v_front_porch_field_2 v_sync_field_2 v_back_porch_field_2 sync_shape h_datum_s aliases note "
    "pixel_repeat equalising_before equalising_after equalising_width_s serration_width_s "
    "broad_start_s broad_width_s sync_recalled";

/* What the parts of one raster need. */
typedef struct
{
  const BwRaster *raster;
  BwRasterFigures figures;
} Timing;

static BwValue
microseconds (const char *key, double time_s)
{
  return bw_value_fixed (key, time_s, BW_DIMENSION_TIME, "us", 4);
}

static BwValue
lines (const char *key, double count, int decimals)
{
  return bw_value_fixed (key, count, BW_DIMENSION_LINES, NULL, decimals);
}

/* Names */

/**
 * bw_raster_called:
 * @node: of the result in which it is named
 *
 * Returns: (transfer none): what @raster is called in a sentence: its id where people type that, else
 * its name
 */
const char *
bw_raster_called (const BwNode *node, const BwRaster *raster)
{
  g_return_val_if_fail (node != NULL && raster != NULL, "");
  gboolean named = raster->name != NULL && *raster->name != '\0';
  return named && !bw_result_tells_ids (node->result) ? raster->name : raster->id;
}

/**
 * bw_raster_say_recalled:
 *
 * Adds whether the field sync of @raster is from memory.
 */
void
bw_raster_say_recalled (BwNode *to, const BwRaster *raster)
{
  g_return_if_fail (to != NULL && raster != NULL);
  bw_node_member (to, bw_value_flag ("sync_recalled", raster->sync_recalled));
  if (raster->sync_recalled)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 _ ("The text that lays down this field sync was not read: it is from memory."));
}

static void
add_names (BwNode *to, const Timing *t)
{
  const BwRaster *raster = t->raster;
  g_autoptr (GPtrArray) names = bw_raster_names (raster);
  const char *title = bw_result_tells_ids (to->result)
                          ? bw_node_print (to, "%s: %s", raster->id, raster->name)
                          : bw_raster_called (to, raster);
  BwNode *section = bw_node_section (to, NULL, title);

  g_ptr_array_add (names, NULL);
  bw_node_member (section, bw_value_words ("id", raster->id));
  bw_node_member (section, bw_value_words ("name", raster->name));
  bw_node_figure (section, _ ("Given by"), bw_value_words ("source", raster->source));
  bw_node_figure (section, _ ("Also called"),
                  bw_value_list ("aliases", (const char *const *) names->pdata + 1));
  bw_node_figure (section, _ ("Note"),
                  bw_value_if (raster->note != NULL && *raster->note != '\0',
                               bw_value_words ("note", raster->note)));
}

/* Line */

/* A part of the line, in time and, where there are pixels, in those too. */
static void
add_interval (BwNode *to, const Timing *t, const char *label, const char *key, int pixels,
              const char *time_key, double time_s)
{
  BwValue count = bw_value_fixed (key, pixels, BW_DIMENSION_PIXELS, NULL, 0);
  if (t->figures.has_pixels)
    bw_node_pair (to, label, count, microseconds (time_key, time_s));
  else
    bw_node_figure (to, label, microseconds (time_key, time_s));
  if (!t->figures.has_pixels && key != NULL)
    bw_node_member (to, bw_value_nothing (key));
}

static void
add_line (BwNode *to, const Timing *t)
{
  const BwRaster *r = t->raster;
  const BwRasterFigures *f = &t->figures;
  BwNode *line = bw_node_section (to, NULL, _ ("Line"));

  bw_node_figure (line, _ ("Line rate"),
                  bw_value_fixed ("line_rate_hz", bw_ratio_to_double (r->line_rate_hz),
                                  BW_DIMENSION_FREQUENCY, "kHz", 6));
  bw_node_figure (line, _ ("Pixel clock"),
                  bw_value_if (f->has_pixels, bw_value_fixed ("pixel_clock_hz", f->pixel_clock_hz,
                                                              BW_DIMENSION_FREQUENCY, "MHz", 6)));
  add_interval (line, t, _ ("Whole line"), "h_total", f->h_total, "line_period_s",
                f->line_period_s);
  add_interval (line, t, _ ("Active"), "h_active", r->h_active, "h_active_s", f->h_active_s);
  if (r->h_border > 0)
    add_interval (line, t, _ ("Border, each side"), "h_border", r->h_border, NULL, f->h_border_s);
  else
    bw_node_member (line, bw_value_if (f->has_pixels, bw_value_count ("h_border", 0)));
  add_interval (line, t, _ ("Front porch"), "h_front_porch", r->h_front_porch, "h_front_porch_s",
                f->h_front_porch_s);
  add_interval (line, t, _ ("Sync"), "h_sync", r->h_sync, "h_sync_s", f->h_sync_s);
  add_interval (line, t, _ ("Back porch"), "h_back_porch", r->h_back_porch, "h_back_porch_s",
                f->h_back_porch_s);
  add_interval (line, t, _ ("Blanking"), NULL, r->h_front_porch + r->h_sync + r->h_back_porch,
                "h_blanking_s", f->h_blanking_s);
  if (r->pixel_repeat > 1)
    bw_node_figure (line, _ ("Each sample is sent"),
                    bw_value_read_as (bw_value_count ("pixel_repeat", r->pixel_repeat),
                                      bw_node_print (line,
                                                     /* Translators: how often a sample is sent. */
                                                     g_dngettext (GETTEXT_PACKAGE, "%d time",
                                                                  "%d times",
                                                                  (gulong) r->pixel_repeat),
                                                     r->pixel_repeat)));
  else
    bw_node_member (line,
                    bw_value_if (f->has_pixels, bw_value_count ("pixel_repeat", r->pixel_repeat)));
}

/* Field */

/* The exact rate where its ratio can be held, which is one rounding away from the truth. */
static double
field_rate_hz (const Timing *t)
{
  BwRatio rate;
  return bw_raster_field_rate (t->raster, &rate) ? bw_ratio_to_double (rate)
                                                 : t->figures.field_rate_hz;
}

static double
frame_rate_hz (const Timing *t)
{
  BwRatio rate, all_lines = { t->figures.lines_per_frame, 1 };
  return bw_ratio_divide (t->raster->line_rate_hz, all_lines, &rate) ? bw_ratio_to_double (rate)
                                                                     : t->figures.frame_rate_hz;
}

/* Whether the fields of an interlaced raster are not alike. */
static gboolean
fields_differ (const Timing *t)
{
  const BwFieldTiming *one = &t->raster->field[0], *two = &t->raster->field[1];
  return t->raster->scan == BW_SCAN_INTERLACED
         && (one->active != two->active || one->front_porch != two->front_porch
             || one->sync != two->sync || one->back_porch != two->back_porch);
}

/* An interval of both fields in half lines, of which one is shown where they are alike, or of the
 * one that a progressive raster has; and how long that of field 1 lasts. */
static void
add_half_lines (BwNode *to, const Timing *t, const char *label, const char *key, int first,
                const char *second_key, int second)
{
  gboolean interlaced = t->raster->scan == BW_SCAN_INTERLACED;
  BwValue lasts = bw_value_quantity (NULL, first / 2.0 * t->figures.line_period_s,
                                     BW_DIMENSION_TIME, 5);
  BwNode *figure = bw_node_figure (to, label, lines (key, first / 2.0, 1));

  if (fields_differ (t))
    bw_node_add_value (figure, lines (second_key, second / 2.0, 1));
  else if (second_key != NULL)
    bw_node_member (to, interlaced ? lines (second_key, second / 2.0, 1)
                                   : bw_value_nothing (second_key));
  bw_node_add_value (figure, lasts);
}

static void
add_intervals (BwNode *rates, const Timing *t)
{
  const BwFieldTiming *one = &t->raster->field[0], *two = &t->raster->field[1];
  int border = 2 * t->raster->v_border;
  BwNode *field = bw_node_section (rates, NULL, NULL);

  if (fields_differ (t))
    bw_node_set_heads (field, _ ("field 1"), _ ("field 2"), _ ("field 1 lasts"), NULL);
  else if (t->raster->scan == BW_SCAN_INTERLACED)
    bw_node_set_heads (field, _ ("each field"), _ ("lasts"), NULL);
  add_half_lines (field, t, _ ("Active"), "v_active", one->active, "v_active_field_2", two->active);
  if (border > 0)
    add_half_lines (field, t, _ ("Border, above and below"), NULL, border, NULL, border);
  bw_node_member (field, bw_value_count ("v_border", t->raster->v_border));
  add_half_lines (field, t, _ ("Front porch"), "v_front_porch", one->front_porch,
                  "v_front_porch_field_2", two->front_porch);
  add_half_lines (field, t, _ ("Sync"), "v_sync", one->sync, "v_sync_field_2", two->sync);
  add_half_lines (field, t, _ ("Back porch"), "v_back_porch", one->back_porch,
                  "v_back_porch_field_2", two->back_porch);
  add_half_lines (field, t, _ ("Blanking"), NULL, one->front_porch + one->sync + one->back_porch,
                  NULL, two->front_porch + two->sync + two->back_porch);
}

static void
add_field (BwNode *to, const Timing *t)
{
  BwNode *rates = bw_node_section (to, NULL, _ ("Field"));

  bw_node_figure (rates, _ ("Scan"), bw_value_kind ("scan", &bw_scans, t->raster->scan));
  bw_node_figure (rates, _ ("Field rate"),
                  bw_value_fixed ("field_rate_hz", field_rate_hz (t), BW_DIMENSION_FREQUENCY, "Hz",
                                  6));
  bw_node_figure (rates, _ ("Frame rate"),
                  bw_value_fixed ("frame_rate_hz", frame_rate_hz (t), BW_DIMENSION_FREQUENCY, "Hz",
                                  6));
  bw_node_figure (rates, _ ("Lines per field"),
                  lines ("lines_per_field", t->figures.lines_per_field, 1));
  bw_node_figure (rates, _ ("Lines per frame"),
                  lines ("lines_per_frame", t->figures.lines_per_frame, 0));
  add_intervals (rates, t);
}

/* Sync */

static void
add_sync (BwNode *to, const Timing *t)
{
  const BwRaster *r = t->raster;
  BwNode *sync = bw_node_section (to, NULL, _ ("Sync"));

  bw_node_figure (sync, _ ("Line sync"),
                  bw_value_kind ("h_sync_polarity", &bw_polarities, r->h_polarity));
  bw_node_figure (sync, _ ("Field sync"),
                  bw_value_kind ("v_sync_polarity", &bw_polarities, r->v_polarity));
  bw_node_figure (sync, _ ("Shape"), bw_value_kind ("sync_shape", &bw_sync_shapes, r->sync_shape));
  bw_node_figure (sync, _ ("Datum after sync begins"),
                  microseconds ("h_datum_s", t->figures.h_datum_s));
  bw_node_member (sync, bw_value_count ("equalising_before", r->equalising_before));
  bw_node_member (sync, bw_value_count ("equalising_after", r->equalising_after));
  if (r->equalising_before > 0 || r->equalising_after > 0)
    bw_node_figure (sync, _ ("Equalising pulses"),
                    bw_value_says (NULL,
                                   bw_node_print (sync, _ ("%1$d before, %2$d after"),
                                                  r->equalising_before, r->equalising_after)));
  bw_node_figure (sync, _ ("Equalising width"),
                  bw_value_if (r->equalising_width_s > 0,
                               microseconds ("equalising_width_s", r->equalising_width_s)));
  bw_node_figure (sync, _ ("Serration width"),
                  bw_value_if (r->serration_width_s > 0,
                               microseconds ("serration_width_s", r->serration_width_s)));
  bw_node_figure (sync, _ ("Broad pulse from"),
                  bw_value_if (r->broad_start_s > 0,
                               microseconds ("broad_start_s", r->broad_start_s)));
  bw_node_figure (sync, _ ("Broad pulse width"),
                  bw_value_if (r->broad_width_s > 0,
                               microseconds ("broad_width_s", r->broad_width_s)));
  bw_raster_say_recalled (sync, r);
}

/**
 * bw_raster_say:
 * @to: a section or a row, whose object in JSON gets the members
 * @raster: a raster that bw_raster_check() accepts
 *
 * Adds what it is, then its line, its field and its sync.
 */
void
bw_raster_say (BwNode *to, const BwRaster *raster)
{
  g_return_if_fail (to != NULL && raster != NULL);
  Timing t = { .raster = raster };

  bw_raster_figures (raster, &t.figures);
  to->order = order;
  add_names (to, &t);
  add_line (to, &t);
  add_field (to, &t);
  add_sync (to, &t);
}

/* Many rasters */

static void
add_raster_row (BwNode *table, const BwRaster *raster)
{
  BwNode *row = bw_node_row (table);
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  bw_node_cell (row, bw_value_words ("name", raster->name));
  bw_node_cell (row, bw_value_quantity ("line_rate_hz", f.line_rate_hz, BW_DIMENSION_FREQUENCY, 5));
  bw_node_cell (row,
                bw_value_quantity ("field_rate_hz", f.field_rate_hz, BW_DIMENSION_FREQUENCY, 5));
  bw_node_cell (row, bw_value_count ("lines_per_frame", f.lines_per_frame));
  bw_node_cell (row, bw_value_kind ("scan", &bw_scans, raster->scan));
  bw_node_cell (row,
                bw_value_fixed ("h_front_porch_s", f.h_front_porch_s, BW_DIMENSION_TIME, "us", 3));
  bw_node_cell (row, bw_value_fixed ("h_sync_s", f.h_sync_s, BW_DIMENSION_TIME, "us", 3));
  bw_node_cell (row,
                bw_value_fixed ("h_back_porch_s", f.h_back_porch_s, BW_DIMENSION_TIME, "us", 3));
}

/**
 * bw_rasters_say:
 * @rasters: (element-type BwRaster)
 *
 * Adds a table of the main figures of each.
 */
void
bw_rasters_say (BwNode *to, const GPtrArray *rasters)
{
  g_return_if_fail (to != NULL && rasters != NULL);
  BwNode *table = bw_node_table (to, "rasters", NULL);

  bw_node_column (table, BW_COLUMN_SAYS, _ ("Raster"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Line rate"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Field rate"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Lines"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Scan"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Front porch"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Sync"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Back porch"), NULL);
  for (guint i = 0; i < rasters->len; i++)
    add_raster_row (table, rasters->pdata[i]);
}
