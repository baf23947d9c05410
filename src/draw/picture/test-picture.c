/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-picture-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#define UNSAMPLED_WIDTH 2048

static const BwKind kinds[BW_N_TEST_PICTURES] = {
  [BW_TEST_LINES] = { "lines", N_ ("Wedges and bursts") },
  [BW_TEST_GRID] = { "grid", N_ ("Grid and circle") },
  [BW_TEST_RAMPS] = { "ramps", N_ ("Ramps, steps and bars") },
  [BW_TEST_TEXT] = { "text", N_ ("Text") },
};
const BwKindTable bw_test_pictures = { BW_N_TEST_PICTURES, kinds };

/**
 * bw_test_frame_size:
 * @width: (out): pixels to draw for a picture that is sent as it is: the samples of the source, or
 *   more than any source has where it is not sampled
 * @height: (out): the lines of the raster
 */
void
bw_test_frame_size (const BwDetailCase *what, int *width, int *height)
{
  g_return_if_fail (what != NULL && width != NULL && height != NULL);
  *width = what->samples > 0 ? MIN (what->samples, BW_PREVIEW_MAX_SIDE) : UNSAMPLED_WIDTH;
  *height = (int) CLAMP (ceil (what->active_lines), 1, BW_PREVIEW_MAX_SIDE);
}

/**
 * bw_test_frame_init:
 * @frame: (out): where the viewable area of @what lies in a picture of @width by @height
 */
void
bw_test_frame_init (BwTestFrame *frame, const BwDetailCase *what, int width, int height)
{
  g_return_if_fail (frame != NULL && what != NULL);
  double seen_width = width * (1 - what->overscan_h);
  double seen_height = height * (1 - what->overscan_v);

  *frame = (BwTestFrame){ width, height,
                          { (width - seen_width) / 2, (height - seen_height) / 2, seen_width,
                            seen_height },
                          bw_ratio_to_double (what->aspect) };
}

/**
 * bw_test_pixels_per_height:
 *
 * Returns: pixels along the line that span as much as the viewable area is high: a sine of as many
 *   TV lines has a period of two pixels
 */
double
bw_test_pixels_per_height (const BwTestFrame *frame)
{
  g_return_val_if_fail (frame != NULL, 0);
  return frame->seen.width / frame->aspect;
}

/* Words of the height @size, the place being @across and @down of their own box. */
void
bw_test_words (cairo_t *cr, const char *words, double size, double x, double y, double across,
               double down)
{
  const BwInk ink = { BW_THEME_PRINT, "Sans", BW_INK_PAGE_DPI };
  PangoLayout *layout = bw_ink_layout (&ink);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");
  int width, height;

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, words, -1);
  pango_layout_get_size (layout, &width, &height);
  cairo_move_to (cr, x - across * width / PANGO_SCALE, y - down * height / PANGO_SCALE);
  pango_cairo_show_layout (cr, layout);
  pango_font_description_free (font);
  g_object_unref (layout);
}

static void
draw_kind (BwTestKind kind, cairo_t *cr, const BwTestFrame *frame, cairo_surface_t *surface)
{
  switch (kind)
    {
    case BW_TEST_LINES:
      bw_test_draw_lines (cr, frame, surface);
      break;
    case BW_TEST_GRID:
      bw_test_draw_grid (cr, frame);
      break;
    case BW_TEST_RAMPS:
      bw_test_draw_ramps (cr, frame);
      break;
    case BW_TEST_TEXT:
      bw_test_draw_text (cr, frame);
      break;
    case BW_N_TEST_PICTURES:
    default:
      break;
    }
}

/**
 * bw_test_picture_draw:
 * @frame: 1 to %BW_PREVIEW_MAX_SIDE pixels in both directions
 *
 * Returns: (transfer full) (nullable): an image surface of R'G'B'; free it with
 *   cairo_surface_destroy(). %NULL if there is no memory for it
 */
cairo_surface_t *
bw_test_picture_draw (BwTestKind kind, const BwTestFrame *frame)
{
  g_return_val_if_fail (frame != NULL, NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, frame->width,
                                                         frame->height);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, BW_TEST_MEAN, BW_TEST_MEAN, BW_TEST_MEAN);
  cairo_paint (cr);
  cairo_translate (cr, frame->seen.x, frame->seen.y);
  cairo_scale (cr, bw_test_pixels_per_height (frame) / BW_TEST_UNITS,
               frame->seen.height / BW_TEST_UNITS);
  draw_kind (kind, cr, frame, surface);
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    g_clear_pointer (&surface, cairo_surface_destroy);
  return surface;
}

static float
channel (guint32 pixel, int shift)
{
  return (float) ((pixel >> shift) & 0xff) / 255.0f;
}

/**
 * bw_planes_from_surface:
 * @surface: an image surface of the format RGB24, 1 to %BW_PREVIEW_MAX_SIDE pixels in both
 *   directions
 *
 * Returns: (transfer full): its pixels as signal
 */
BwPlanes *
bw_planes_from_surface (cairo_surface_t *surface)
{
  g_return_val_if_fail (cairo_image_surface_get_format (surface) == CAIRO_FORMAT_RGB24, NULL);
  BwPlanes *planes = bw_planes_new (cairo_image_surface_get_width (surface),
                                    cairo_image_surface_get_height (surface));
  int stride = cairo_image_surface_get_stride (surface);

  cairo_surface_flush (surface);
  const guint8 *rows = cairo_image_surface_get_data (surface);
  for (int y = 0; y < planes->height; y++)
    {
      const guint32 *row = (const guint32 *) (gconstpointer) (rows + (gsize) y * (gsize) stride);
      gsize place = (gsize) y * (gsize) planes->width;
      for (int x = 0; x < planes->width; x++)
        for (int i = 0; i < 3; i++)
          planes->at[i][place + (gsize) x] = channel (row[x], 16 - 8 * i);
    }
  return planes;
}
