/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-picture.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/file.h"

G_DEFINE_QUARK (bw-picture-error-quark, bw_picture_error)

/* A picture of the most pixels, 8 bytes each and not packed at all, has 128 MiB. */
#define MAX_BYTES (144u * 1024u * 1024u)

/* The header chunk is the first (ISO/IEC 15948, 5.6) and begins with width and height (11.2.2). */
#define KIND_AT 12
#define SIDES_AT 16
#define LEAST_BYTES 24

static const guint8 signature[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };

static gboolean
fail (GError **error, BwPictureError code, const char *name, const char *says)
{
  g_set_error (error, BW_PICTURE_ERROR, code, "%s: %s", name, says);
  return FALSE;
}

static guint32
big_endian (const guint8 *bytes)
{
  return (guint32) bytes[0] << 24 | (guint32) bytes[1] << 16 | (guint32) bytes[2] << 8 | bytes[3];
}

/* Looks at the sides before anything is unpacked. */
static gboolean
check_header (const guint8 *bytes, gsize length, const char *name, GError **error)
{
  if (length < sizeof signature || memcmp (bytes, signature, sizeof signature) != 0)
    return fail (error, BW_PICTURE_ERROR_NOT_PNG, name, _ ("this is not a PNG picture"));
  if (length < LEAST_BYTES)
    return fail (error, BW_PICTURE_ERROR_DAMAGED, name, _ ("the picture is cut off"));
  if (memcmp (bytes + KIND_AT, "IHDR", 4) != 0)
    return fail (error, BW_PICTURE_ERROR_DAMAGED, name, _ ("the picture does not begin with its size"));
  guint32 width = big_endian (bytes + SIDES_AT), height = big_endian (bytes + SIDES_AT + 4);
  if (width <= BW_PREVIEW_MAX_SIDE && height <= BW_PREVIEW_MAX_SIDE
      && width * height <= BW_PICTURE_MAX_PIXELS)
    return TRUE;
  g_set_error (error, BW_PICTURE_ERROR, BW_PICTURE_ERROR_TOO_LARGE,
               _ ("%1$s: the picture is %2$u by %3$u pixels; allowed: up to %4$d in each direction "
                  "and %5$d in all"),
               name, width, height, BW_PREVIEW_MAX_SIDE, BW_PICTURE_MAX_PIXELS);
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
 * bw_planes_read:
 * @bytes: a PNG file of up to %BW_PREVIEW_MAX_SIDE pixels in both directions and
 *   %BW_PICTURE_MAX_PIXELS in all
 * @length: how many they are
 * @name: of the file, for errors
 *
 * Returns: (transfer full) (nullable): the picture as signal; %NULL with @error in
 *   %BW_PICTURE_ERROR that names the file
 */
BwPlanes *
bw_planes_read (const void *bytes, gsize length, const char *name, GError **error)
{
  g_return_val_if_fail (bytes != NULL && name != NULL, NULL);
  Rest rest = { bytes, length };
  BwPlanes *planes = NULL;

  if (!check_header (bytes, length, name, error))
    return NULL;
  cairo_surface_t *surface = cairo_image_surface_create_from_png_stream (read_rest, &rest);
  if (cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS)
    planes = flatten (surface);
  cairo_surface_destroy (surface);
  if (planes == NULL)
    fail (error, BW_PICTURE_ERROR_DAMAGED, name, _ ("the picture is damaged or cut off"));
  return planes;
}

/**
 * bw_planes_load:
 * @path: of a PNG file
 *
 * Returns: as bw_planes_read()
 */
BwPlanes *
bw_planes_load (const char *path, GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_autoptr (GError) trouble = NULL;
  g_autofree char *bytes = NULL;
  gsize length;

  if (bw_file_read (path, MAX_BYTES, &bytes, &length, &trouble))
    return bw_planes_read (bytes, length, path, error);
  gboolean large = g_error_matches (trouble, BW_FILE_ERROR, BW_FILE_ERROR_TOO_LARGE);
  g_set_error_literal (error, BW_PICTURE_ERROR,
                       large ? BW_PICTURE_ERROR_TOO_LARGE : BW_PICTURE_ERROR_READ,
                       trouble->message);
  return NULL;
}
