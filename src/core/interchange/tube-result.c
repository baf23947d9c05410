/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

#include "core/raster/results.h"
#include "interchange.h"

/* A raster made for a set, in the forms in which a computer takes it, and the other ones that hold. */

/* The 18 bytes of its detailed timing, "0F 1A …"; NULL if an EDID has no room for it. */
static char *
edid_bytes (const BwRaster *raster)
{
  guint8 bytes[BW_EDID_DETAILED_BYTES];
  if (!bw_edid_detailed_from_raster (raster, bytes, NULL))
    return NULL;
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (bytes); i++)
    g_string_append_printf (text, "%s%02X", i > 0 ? " " : "", bytes[i]);
  return g_string_free (text, FALSE);
}

static const char *
modeline_of (BwNode *node, const BwRaster *raster)
{
  char *modeline = bw_modeline_format (raster, NULL);
  return modeline != NULL ? bw_node_take (node, modeline) : NULL;
}

static void
add_forms (BwNode *to, const BwRaster *raster)
{
  char *bytes = edid_bytes (raster);
  const char *modeline = modeline_of (to, raster);

  bw_node_figure (to, _ ("Mode line"),
                  bw_value_if (modeline != NULL,
                               bw_value_words ("modeline", modeline != NULL ? modeline : "")));
  bw_node_figure (to, _ ("Detailed timing of an EDID"),
                  bw_value_if (bytes != NULL,
                               bw_value_words ("edid_detailed",
                                               bytes != NULL ? bw_node_take (to, bytes) : "")));
}

static const char *
joined (BwNode *node, const GPtrArray *sentences)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < sentences->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "", (const char *) sentences->pdata[i]);
  return bw_node_take (node, g_string_free (text, FALSE));
}

static void
add_alternative (BwNode *table, const BwTubeAnswer *answer)
{
  BwNode *row = bw_node_row (table);
  BwRasterFigures f;

  bw_raster_figures (answer->raster, &f);
  bw_node_cell (row, bw_value_quantity ("line_rate_hz", f.line_rate_hz, BW_DIMENSION_FREQUENCY, 5));
  bw_node_cell (row,
                bw_value_fixed ("lines_per_field", f.lines_per_field, BW_DIMENSION_LINES, NULL, 1));
  bw_node_cell (row,
                bw_value_quantity ("field_rate_hz", f.field_rate_hz, BW_DIMENSION_FREQUENCY, 5));
  bw_node_cell (row, bw_value_quantity ("pixel_clock_hz", f.pixel_clock_hz, BW_DIMENSION_FREQUENCY,
                                        5));
  bw_node_cell (row, bw_value_says ("cost", joined (row, answer->costs)));
  bw_node_member (row, bw_value_words ("reason", answer->why->pdata[0]));
  bw_node_member (row, bw_value_words ("scan", bw_scans.at[answer->raster->scan].id));
  bw_node_member (row, bw_value_count ("h_total", f.h_total));
  bw_node_member (row, bw_value_quantity ("h_back_porch_s", f.h_back_porch_s, BW_DIMENSION_TIME, 4));
  bw_node_member (row, bw_value_quantity ("h_sync_s", f.h_sync_s, BW_DIMENSION_TIME, 4));
  const char *modeline = modeline_of (row, answer->raster);
  if (modeline != NULL)
    bw_node_member (row, bw_value_words ("modeline", modeline));
}

/**
 * bw_tube_say:
 * @answers: (element-type BwTubeAnswer): as bw_tube_rasters() gives them
 * @which: the one that is shown whole, from zero
 *
 * Adds raster @which with why it is so, what it costs and the forms in which a computer takes it, then a
 * table of the others.
 */
void
bw_tube_say (BwNode *to, const GPtrArray *answers, guint which)
{
  g_return_if_fail (to != NULL && answers != NULL && which < answers->len);
  const BwTubeAnswer *answer = answers->pdata[which];

  bw_raster_say (to, answer->raster);
  bw_node_list (to, "why", _ ("Why"), answer->why);
  bw_node_list (to, "costs", _ ("What it costs"), answer->costs);
  add_forms (bw_node_section (to, NULL, _ ("For the computer")), answer->raster);
  BwNode *table = bw_node_table (to, "alternatives", _ ("Other rasters that hold"));
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Line rate"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Lines a field"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Field rate"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Pixel clock"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("What it costs"), NULL);
  for (guint i = 0; i < answers->len; i++)
    if (i != which)
      add_alternative (table, answers->pdata[i]);
}
