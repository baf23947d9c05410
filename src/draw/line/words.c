/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/**
 * bw_line_caption:
 *
 * Returns: (transfer full): what the drawing shows, and by which standard
 */
char *
bw_line_caption (const BwRaster *raster)
{
  return bw_text_caption (raster->name, _ ("one line and its blanking"), raster->source);
}

/**
 * bw_line_note:
 *
 * Returns: (transfer full): of what the raster has beside the video
 */
char *
bw_line_note (const BwRaster *raster)
{
  return g_strdup_printf (
      _ ("Sync is drawn as it lies in the video; the raster’s separate H sync is "
         "%s."),
      bw_kind_label (&bw_polarities, raster->h_polarity));
}

static void
describe_interval (GString *text, const char *name, double length_s, double period_s, char mark)
{
  g_autofree char *time = bw_text_us (length_s, mark);
  g_autofree char *share = bw_text_share (length_s / period_s, mark);
  if (length_s > 0)
    g_string_append_printf (text, _ ("; %1$s %2$s, %3$s of it"), name, time, share);
}

/**
 * bw_line_describe:
 *
 * The drawing in words, for screen readers and for the description inside an exported file.
 *
 * Returns: (transfer full): one sentence with every interval of the line
 */
char *
bw_line_describe (const BwLineView *what)
{
  BwLineShape shape;
  bw_line_shape_init (&shape, what->raster);
  bw_line_shape_add_burst (&shape, what->raster, what->system);
  g_autofree char *caption = bw_line_caption (what->raster);
  g_autofree char *period = bw_text_us (shape.period_s, what->mark);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, _ ("%1$s. Line period %2$s"), caption, period);
  for (guint i = 0; i < BW_N_INTERVALS; i++)
    describe_interval (text, bw_line_interval_label (i), bw_line_shape_length (&shape, i),
                       shape.period_s, what->mark);
  describe_interval (text, _ ("line blanking"),
                     bw_line_shape_blanking_end (&shape) - shape.start_s[0], shape.period_s,
                     what->mark);
  if (bw_line_shape_has_burst (&shape))
    describe_interval (text, _ ("burst"), shape.burst_to_s - shape.burst_from_s, shape.period_s,
                       what->mark);
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}
