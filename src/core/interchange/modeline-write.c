/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#define CLOCK_MIN_DECIMALS 3
#define CLOCK_MAX_DECIMALS 6

/* Edges of a frame, in lines. */
typedef struct
{
  int display;
  int sync_start;
  int sync_end;
  int total;
} FrameEdges;

static FrameEdges
edges (int active, int front_porch, int sync, int back_porch)
{
  return (FrameEdges){ active, active + front_porch, active + front_porch + sync,
                       active + front_porch + sync + back_porch };
}

static gboolean
whole_lines (const BwFieldTiming *field)
{
  return field->active % 2 == 0 && field->front_porch % 2 == 0 && field->sync % 2 == 0
         && field->back_porch % 2 == 0;
}

static gboolean
progressive_edges (const BwRaster *raster, FrameEdges *frame, GError **error)
{
  const BwFieldTiming *field = &raster->field[0];
  if (!whole_lines (field))
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_UNWRITABLE,
                                 _ ("%s: a mode line counts whole lines, and an interval of this "
                                    "progressive raster ends in half a line"),
                                 raster->id);
  *frame = edges (field->active / 2, field->front_porch / 2 + raster->v_border, field->sync / 2,
                  field->back_porch / 2 + raster->v_border);
  return TRUE;
}

/* The reverse of what the reader does: whole numbers of a frame say which field has the half
 * lines only by their being odd or even. */
static gboolean
interlaced_edges (const BwRaster *raster, FrameEdges *frame, GError **error)
{
  const BwFieldTiming *one = &raster->field[0];
  const BwFieldTiming *two = &raster->field[1];
  int border = 2 * raster->v_border;
  int later = two->front_porch - one->front_porch; /* half lines */
  int total = bw_raster_half_lines (raster) / 2;
  gboolean alike = total % 2 == 0 || one->active % 2 != 0;

  if (one->active != two->active || one->sync != two->sync || later != (alike ? 0 : 1)
      || two->back_porch - one->back_porch != later)
    return bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_UNWRITABLE,
        _ ("%s: a mode line cannot say how its two fields differ. With an odd total the second "
           "field must have half a line more in each porch, with an even total the fields must be "
           "alike."),
        raster->id);
  *frame = edges (one->active, one->front_porch + border, one->sync, two->back_porch + border);
  return TRUE;
}

/* Whole hertz at most, without needless zeros. */
static char *
clock_megahertz (BwRatio clock_hz)
{
  gint64 hz = llround (bw_ratio_to_double (clock_hz));
  char *text = g_strdup_printf ("%" G_GINT64_FORMAT ".%06" G_GINT64_FORMAT, hz / 1000000,
                                hz % 1000000);
  for (gsize n = strlen (text), i = CLOCK_MAX_DECIMALS; i > CLOCK_MIN_DECIMALS; i--)
    {
      if (text[--n] != '0')
        break;
      text[n] = '\0';
    }
  return text;
}

/**
 * bw_modeline_format:
 * @raster: defined in pixels
 *
 * Writes a mode line as xorg.conf(5) describes it, under the raster's id. Borders become part of
 * the porches and tri-level sync the bi-level pulse that starts at its datum; the clock is rounded
 * to the hertz; repeated pixels, equalising and serration are not stated.
 *
 * Returns: (transfer full): one line without its end, or %NULL with @error in
 * %BW_INTERCHANGE_ERROR if @raster is defined in time alone, if a mode line cannot say how its
 * fields differ, or if its id holds a quotation mark
 */
char *
bw_modeline_format (const BwRaster *raster, GError **error)
{
  g_return_val_if_fail (raster != NULL, NULL);
  FrameEdges v;
  if (!bw_interchange_writable (raster, error))
    return NULL;
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  if (!(interlaced ? interlaced_edges : progressive_edges) (raster, &v, error))
    return NULL;
  if (raster->id == NULL || *raster->id == '\0' || strpbrk (raster->id, "\"\n") != NULL)
    {
      bw_interchange_fault (error, BW_INTERCHANGE_ERROR_UNWRITABLE,
                            _ ("%s: the name of a mode must not be empty or hold a quotation mark"),
                            raster->id != NULL ? raster->id : "");
      return NULL;
    }
  BwLineEdges line = bw_line_edges (raster);
  FrameEdges h = edges (raster->h_active, line.front_porch + raster->h_border, line.sync,
                        line.back_porch + raster->h_border);
  g_autofree char *clock = clock_megahertz (raster->pixel_clock_hz);
  return g_strdup_printf ("Modeline \"%s\" %s %d %d %d %d %d %d %d %d %cHSync %cVSync%s",
                          raster->id, clock, h.display, h.sync_start, h.sync_end, h.total,
                          v.display, v.sync_start, v.sync_end, v.total,
                          raster->h_polarity == BW_POLARITY_POSITIVE ? '+' : '-',
                          raster->v_polarity == BW_POLARITY_POSITIVE ? '+' : '-',
                          interlaced ? " Interlace" : "");
}
