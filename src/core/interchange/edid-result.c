/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

/* What the EDID of a display says, as far as it bears on rasters. */

static void
add_range (BwNode *to, const char *label, const char *key, BwRange range)
{
  bw_node_figure (to, label,
                  bw_value_or (bw_value_if (range.high > 0, bw_value_range (key, range,
                                                                            BW_DIMENSION_FREQUENCY, 4)),
                               _ ("not stated")));
}

static void
add_quantity (BwNode *to, const char *label, const char *key, double value, BwDimension dimension,
              int digits)
{
  bw_node_figure (to, label,
                  bw_value_or (bw_value_if (value > 0,
                                            bw_value_quantity (key, value, dimension, digits)),
                               _ ("not stated")));
}

static void
add_input (BwNode *to, const BwEdid *edid)
{
  bw_node_figure (to, _ ("Input"),
                  bw_value_read_as (bw_value_flag ("digital", edid->digital),
                                    edid->digital ? _ ("digital") : _ ("analogue")));
  if (edid->digital)
    return;
  bw_node_figure (to, _ ("Sync kinds"), bw_value_set ("syncs", &bw_sync_kinds, edid->syncs));
  add_quantity (to, _ ("White above blanking"), "white_v", edid->white_v, BW_DIMENSION_VOLTAGE, 4);
  bw_node_figure (to, _ ("Sync in the video"),
                  bw_value_quantity ("sync_v", edid->sync_v, BW_DIMENSION_VOLTAGE, 4));
}

static void
add_timings (BwNode *to, const BwEdid *edid)
{
  BwNode *table = bw_node_table (to, "timings", _ ("Detailed timings, the preferred one first"));

  bw_node_column (table, BW_COLUMN_WORDS, _ ("raster"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("line rate"), "kHz");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("field rate"), "Hz");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("pixel clock"), "MHz");
  for (guint i = 0; i < edid->timings->len; i++)
    {
      const BwRaster *raster = bw_edid_timing (edid, i)->raster;
      BwNode *row = bw_node_row (table);
      BwRasterFigures f;
      bw_raster_figures (raster, &f);
      bw_node_cell (row, bw_value_words ("name", raster->name));
      bw_node_cell (row, bw_value_fixed ("line_rate_hz", f.line_rate_hz, BW_DIMENSION_FREQUENCY, "kHz",
                                         3));
      bw_node_cell (row, bw_value_fixed ("field_rate_hz", f.field_rate_hz, BW_DIMENSION_FREQUENCY,
                                         "Hz", 3));
      bw_node_cell (row, bw_value_fixed ("pixel_clock_hz", f.pixel_clock_hz, BW_DIMENSION_FREQUENCY,
                                         "MHz", 3));
      bw_node_member (row, bw_value_words ("id", raster->id));
    }
}

static void
add_modes (BwNode *to, const BwEdid *edid)
{
  BwNode *table = bw_node_table (to, "modes", _ ("Modes that are named without their intervals"));

  bw_node_column (table, BW_COLUMN_WORDS, _ ("mode"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("raster of the catalogue"), NULL);
  for (guint i = 0; i < edid->modes->len; i++)
    {
      const BwEdidMode *mode = bw_edid_mode (edid, i);
      BwNode *row = bw_node_row (table);
      const char *words = mode->width > 0
                              ? bw_node_print (row, mode->interlaced ? _ ("%1$d×%2$d interlaced, %3$.0f Hz")
                                                                     : _ ("%1$d×%2$d, %3$.0f Hz"),
                                               mode->width, mode->height, mode->field_rate_hz)
                              : bw_node_print (row, _ ("CTA-861 format %d"), mode->vic);
      bw_node_cell (row, bw_value_says (NULL, words));
      bw_node_cell (row, bw_value_words ("id", mode->id));
      bw_node_member (row, bw_value_count ("width", mode->width));
      bw_node_member (row, bw_value_count ("height", mode->height));
      bw_node_member (row, bw_value_exact ("field_rate_hz", mode->field_rate_hz,
                                           BW_DIMENSION_FREQUENCY));
      bw_node_member (row, bw_value_flag ("interlaced", mode->interlaced));
      bw_node_member (row, bw_value_count ("vic", mode->vic));
    }
}

/**
 * bw_edid_say:
 *
 * Adds what @edid says of the display, its rasters, and what of it was left out and why.
 */
void
bw_edid_say (BwNode *to, const BwEdid *edid)
{
  g_return_if_fail (to != NULL && edid != NULL);
  g_autofree char *name = bw_edid_name (edid);

  bw_node_figure (to, _ ("Name"), bw_value_words ("name", name));
  bw_node_figure (to, _ ("Maker's code"), bw_value_words ("maker", edid->manufacturer));
  bw_node_figure (to, _ ("Year"), bw_value_or (bw_value_if (edid->year != 0,
                                                            bw_value_count ("year", edid->year)),
                                               _ ("not stated")));
  add_input (to, edid);
  add_quantity (to, _ ("Width"), "width_m", edid->width_m, BW_DIMENSION_LENGTH, 3);
  add_quantity (to, _ ("Height"), "height_m", edid->height_m, BW_DIMENSION_LENGTH, 3);
  add_range (to, _ ("Line rates"), "line_rate_hz", edid->line_rate_hz);
  add_range (to, _ ("Field rates"), "field_rate_hz", edid->field_rate_hz);
  add_quantity (to, _ ("Highest pixel clock"), "max_clock_hz", edid->max_clock_hz,
                BW_DIMENSION_FREQUENCY, 4);
  add_timings (to, edid);
  add_modes (to, edid);
  bw_node_list (to, "notes", _ ("Not read"), edid->notes);
}

/**
 * bw_displays_say:
 *
 * Adds a table of the displays that the system lists.
 */
void
bw_displays_say (BwNode *to, const GPtrArray *displays)
{
  g_return_if_fail (to != NULL && displays != NULL);
  BwNode *table = bw_node_table (to, "displays", NULL);

  bw_node_column (table, BW_COLUMN_WORDS, _ ("connector"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("display"), NULL);
  for (guint i = 0; i < displays->len; i++)
    {
      const BwDisplay *display = bw_display_at (displays, i);
      g_autoptr (GError) error = NULL;
      g_autoptr (BwEdid) edid = bw_edid_load (display->path, &error);
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("connector", display->name));
      bw_node_cell (row, bw_value_says ("name", edid != NULL ? bw_node_take (row, bw_edid_name (edid))
                                                             : bw_node_print (row, "%s",
                                                                              error->message)));
      bw_node_member (row, bw_value_words ("path", display->path));
    }
}
