/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-json.h"

#include "cli/base/nearest.h"

/* What the parts of one raster's JSON need. */
typedef struct
{
  const BwRaster *raster;
  BwRasterFigures figures;
  BwJson *json;
} RasterWriter;

static void
write_pixels (RasterWriter *writer, const char *key, int pixels)
{
  bw_json_number_if (writer->json, key, writer->figures.has_pixels, pixels);
}

static void
write_names (RasterWriter *writer)
{
  const BwRaster *raster = writer->raster;
  bw_json_string (writer->json, "id", raster->id);
  bw_json_string (writer->json, "name", raster->name);
  bw_json_string (writer->json, "source", raster->source);
  bw_json_string (writer->json, "scan", bw_kind_id (&bw_scans, raster->scan));
}

static void
write_line (RasterWriter *writer)
{
  const BwRaster *raster = writer->raster;
  const BwRasterFigures *figures = &writer->figures;

  bw_json_number_if (writer->json, "pixel_clock_hz", figures->has_pixels, figures->pixel_clock_hz);
  write_pixels (writer, "h_active", raster->h_active);
  write_pixels (writer, "h_front_porch", raster->h_front_porch);
  write_pixels (writer, "h_sync", raster->h_sync);
  write_pixels (writer, "h_back_porch", raster->h_back_porch);
  write_pixels (writer, "h_total", figures->h_total);
  bw_json_number (writer->json, "h_active_s", figures->h_active_s);
  bw_json_number (writer->json, "h_front_porch_s", figures->h_front_porch_s);
  bw_json_number (writer->json, "h_sync_s", figures->h_sync_s);
  bw_json_number (writer->json, "h_back_porch_s", figures->h_back_porch_s);
  bw_json_number (writer->json, "h_blanking_s", figures->h_blanking_s);
  bw_json_number (writer->json, "line_period_s", figures->line_period_s);
}

/* Rates from the exact ratios: each is one rounding away from the truth. */
static void
write_rates (RasterWriter *writer)
{
  BwRatio line_hz = writer->raster->line_rate_hz;
  BwRatio field_hz;
  BwRatio frame_hz;
  BwRatio lines = { writer->figures.lines_per_frame, 1 };

  gboolean field_fits = bw_raster_field_rate (writer->raster, &field_hz);
  gboolean frame_fits = bw_ratio_divide (line_hz, lines, &frame_hz);
  bw_json_number (writer->json, "line_rate_hz", bw_ratio_to_double (line_hz));
  bw_json_number (writer->json, "field_rate_hz",
                  field_fits ? bw_ratio_to_double (field_hz) : writer->figures.field_rate_hz);
  bw_json_number (writer->json, "frame_rate_hz",
                  frame_fits ? bw_ratio_to_double (frame_hz) : writer->figures.frame_rate_hz);
}

static void
write_field (RasterWriter *writer)
{
  const BwFieldTiming *field = &writer->raster->field[0];
  bw_json_number (writer->json, "v_active", field->active / 2.0);
  bw_json_number (writer->json, "v_front_porch", field->front_porch / 2.0);
  bw_json_number (writer->json, "v_sync", field->sync / 2.0);
  bw_json_number (writer->json, "v_back_porch", field->back_porch / 2.0);
  bw_json_number (writer->json, "lines_per_field", writer->figures.lines_per_field);
  bw_json_number (writer->json, "lines_per_frame", writer->figures.lines_per_frame);
}

static void
write_second_field (RasterWriter *writer)
{
  const BwFieldTiming *field = &writer->raster->field[1];
  gboolean two = writer->raster->scan == BW_SCAN_INTERLACED;
  bw_json_number_if (writer->json, "v_active_field_2", two, field->active / 2.0);
  bw_json_number_if (writer->json, "v_front_porch_field_2", two, field->front_porch / 2.0);
  bw_json_number_if (writer->json, "v_sync_field_2", two, field->sync / 2.0);
  bw_json_number_if (writer->json, "v_back_porch_field_2", two, field->back_porch / 2.0);
}

static void
write_aliases (RasterWriter *writer)
{
  g_autoptr (GPtrArray) names = bw_raster_names (writer->raster);
  bw_json_begin_array (writer->json, "aliases");
  for (guint i = 1; i < names->len; i++)
    bw_json_string (writer->json, NULL, names->pdata[i]);
  bw_json_end_array (writer->json);
}

static void
write_more (RasterWriter *writer)
{
  const BwRaster *raster = writer->raster;
  gboolean noted = raster->note != NULL && *raster->note != '\0';

  write_pixels (writer, "h_border", raster->h_border);
  bw_json_number (writer->json, "v_border", raster->v_border);
  write_second_field (writer);
  bw_json_string (writer->json, "sync_shape", bw_kind_id (&bw_sync_shapes, raster->sync_shape));
  bw_json_number (writer->json, "h_datum_s", writer->figures.h_datum_s);
  write_aliases (writer);
  bw_json_string (writer->json, "note", noted ? raster->note : NULL);
  write_pixels (writer, "pixel_repeat", raster->pixel_repeat);
  bw_json_number (writer->json, "equalising_before", raster->equalising_before);
  bw_json_number (writer->json, "equalising_after", raster->equalising_after);
  bw_json_number_if (writer->json, "equalising_width_s", raster->equalising_width_s > 0,
                     raster->equalising_width_s);
  bw_json_number_if (writer->json, "serration_width_s", raster->serration_width_s > 0,
                     raster->serration_width_s);
}

/**
 * bw_raster_to_json:
 * @raster: a raster that bw_raster_check() accepts
 *
 * Writes the members of an object that is open in @json. Units stand in the keys; what has none is
 * in pixels (h_) or in lines of one field (v_). Pixel figures are null in a raster that is defined
 * in time alone, and those of a second field in a progressive one.
 */
void
bw_raster_to_json (const BwRaster *raster, BwJson *json)
{
  RasterWriter writer = { .raster = raster, .json = json };
  bw_raster_figures (raster, &writer.figures);
  write_names (&writer);
  write_line (&writer);
  write_field (&writer);
  write_rates (&writer);
  bw_json_string (json, "h_sync_polarity", bw_kind_id (&bw_polarities, raster->h_polarity));
  bw_json_string (json, "v_sync_polarity", bw_kind_id (&bw_polarities, raster->v_polarity));
  write_more (&writer);
}
