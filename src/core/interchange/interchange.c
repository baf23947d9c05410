/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-interchange-error-quark, bw_interchange_error)

/**
 * bw_interchange_fault:
 * @format: the sentence, translated
 *
 * Returns: %FALSE always, with @error set
 */
gboolean
bw_interchange_fault (GError **error, BwInterchangeError code, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *says = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, BW_INTERCHANGE_ERROR, (int) code, says);
  return FALSE;
}

/**
 * bw_line_edges:
 * @raster: defined in pixels
 *
 * Returns: the intervals of its line, with sync from its timing datum
 */
BwLineEdges
bw_line_edges (const BwRaster *raster)
{
  int before_datum = raster->sync_shape == BW_SHAPE_TRILEVEL ? raster->h_sync / 2 : 0;
  return (BwLineEdges){
    .front_porch = raster->h_front_porch + before_datum,
    .sync = raster->h_sync - before_datum,
    .back_porch = raster->h_back_porch,
  };
}

/**
 * bw_interchange_writable:
 *
 * Returns: %FALSE with @error if no form of text or bytes can hold @raster: because it has no
 * pixels, or cannot exist
 */
gboolean
bw_interchange_writable (const BwRaster *raster, GError **error)
{
  g_autoptr (GError) trouble = NULL;
  const char *id = raster->id != NULL ? raster->id : "";

  if (!bw_raster_check (raster, &trouble))
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_RASTER, "%s: %s", id,
                                 trouble->message);
  if (bw_ratio_is_none (raster->pixel_clock_hz))
    return bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_UNWRITABLE,
        _ ("%s is defined in time alone and has no pixels, which a computer must count. Take a "
           "raster of the same rates that has a pixel clock, such as one of CTA-861, or compute "
           "one."),
        id);
  return TRUE;
}

static void
free_timing (gpointer data)
{
  BwEdidTiming *timing = data;
  bw_raster_free (timing->raster);
  g_free (timing);
}

static void
free_mode (gpointer data)
{
  BwEdidMode *mode = data;
  g_free (mode->id);
  g_free (mode);
}

/**
 * bw_edid_new:
 *
 * Returns: (transfer full): an EDID that says nothing
 */
BwEdid *
bw_edid_new (void)
{
  BwEdid *edid = g_new0 (BwEdid, 1);
  edid->aspect = BW_RATIO_NONE;
  edid->timings = g_ptr_array_new_with_free_func (free_timing);
  edid->modes = g_ptr_array_new_with_free_func (free_mode);
  edid->notes = g_ptr_array_new_with_free_func (g_free);
  return edid;
}

/**
 * bw_edid_free:
 * @edid: (nullable) (transfer full): freed with all it owns
 */
void
bw_edid_free (BwEdid *edid)
{
  if (edid == NULL)
    return;
  g_free (edid->name);
  g_free (edid->serial_text);
  g_ptr_array_unref (edid->timings);
  g_ptr_array_unref (edid->modes);
  g_ptr_array_unref (edid->notes);
  g_free (edid);
}
