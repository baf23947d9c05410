/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-picture.h"

#include <string.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-picture-error-quark, bw_picture_error)

#define MAX_BYTES (256u * 1024u * 1024u)
#define SIDES_AT 16 /* of width and height in the header chunk (ISO/IEC 15948, 11.2.2) */
#define LEAST_BYTES 24

static const guint8 signature[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };

static gboolean
fail (GError **error, BwPictureError code, const char *path, const char *says)
{
  g_set_error (error, BW_PICTURE_ERROR, code, "%s: %s", path, says);
  return FALSE;
}

static GBytes *
read_file (const char *path, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) trouble = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE,
                                                  G_FILE_QUERY_INFO_NONE, NULL, &trouble);
  GBytes *bytes = NULL;

  if (info != NULL && g_file_info_get_size (info) > MAX_BYTES)
    {
      fail (error, BW_PICTURE_ERROR_TOO_LARGE, path,
            _ ("the file is too large for a picture; allowed: up to 256 MiB"));
      return NULL;
    }
  if (info != NULL)
    bytes = g_file_load_bytes (file, NULL, NULL, &trouble);
  if (bytes == NULL)
    fail (error, BW_PICTURE_ERROR_READ, path, trouble->message);
  return bytes;
}

static guint32
big_endian (const guint8 *bytes)
{
  return (guint32) bytes[0] << 24 | (guint32) bytes[1] << 16 | (guint32) bytes[2] << 8 | bytes[3];
}

/* Looks at the sides before anything is unpacked. */
static gboolean
check_header (const guint8 *bytes, gsize length, const char *path, GError **error)
{
  if (length < sizeof signature || memcmp (bytes, signature, sizeof signature) != 0)
    return fail (error, BW_PICTURE_ERROR_NOT_PNG, path, _ ("this is not a PNG picture"));
  if (length < LEAST_BYTES)
    return fail (error, BW_PICTURE_ERROR_DAMAGED, path, _ ("the picture is cut off"));
  guint32 width = big_endian (bytes + SIDES_AT), height = big_endian (bytes + SIDES_AT + 4);
  if (width <= BW_PREVIEW_MAX_SIDE && height <= BW_PREVIEW_MAX_SIDE)
    return TRUE;
  g_set_error (error, BW_PICTURE_ERROR, BW_PICTURE_ERROR_TOO_LARGE,
               _ ("%s: the picture is %u by %u pixels; allowed: up to %d"), path, width, height,
               BW_PREVIEW_MAX_SIDE);
  return FALSE;
}

typedef struct
{
  const guint8 *bytes;
  gsize left;
} Rest;

static cairo_status_t
read_rest (void *closure, unsigned char *data, unsigned int length)
{
  Rest *rest = closure;

  if (length > rest->left)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, rest->bytes, length);
  rest->bytes += length;
  rest->left -= length;
  return CAIRO_STATUS_SUCCESS;
}

/* Whatever kind of PNG it is; what shines through is black. */
static BwPlanes *
flatten (cairo_surface_t *from)
{
  cairo_surface_t *flat = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                                      cairo_image_surface_get_width (from),
                                                      cairo_image_surface_get_height (from));
  cairo_t *cr = cairo_create (flat);

  cairo_set_source_surface (cr, from, 0, 0);
  cairo_paint (cr);
  BwPlanes *planes = cairo_status (cr) == CAIRO_STATUS_SUCCESS ? bw_planes_from_surface (flat)
                                                               : NULL;
  cairo_destroy (cr);
  cairo_surface_destroy (flat);
  return planes;
}

/**
 * bw_planes_load:
 * @path: a PNG file of up to %BW_PREVIEW_MAX_SIDE pixels in both directions
 *
 * Returns: (transfer full) (nullable): the picture as signal; %NULL with @error in
 *   %BW_PICTURE_ERROR that names the file
 */
BwPlanes *
bw_planes_load (const char *path, GError **error)
{
  g_autoptr (GBytes) bytes = read_file (path, error);
  BwPlanes *planes = NULL;

  if (bytes == NULL)
    return NULL;
  Rest rest;
  rest.bytes = g_bytes_get_data (bytes, &rest.left);
  if (!check_header (rest.bytes, rest.left, path, error))
    return NULL;
  cairo_surface_t *surface = cairo_image_surface_create_from_png_stream (read_rest, &rest);
  if (cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS)
    planes = flatten (surface);
  cairo_surface_destroy (surface);
  if (planes == NULL)
    fail (error, BW_PICTURE_ERROR_DAMAGED, path, _ ("the picture is damaged or cut off"));
  return planes;
}
