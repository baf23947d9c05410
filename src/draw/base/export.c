/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "export.h"

#include <math.h>
#include <string.h>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>

#include "core/base/file.h"
#include "core/base/harmless.h"
#include "drawing-private.h"

G_DEFINE_QUARK (bw - export - error - quark, bw_export_error)

#define POINTS_PER_PIXEL (72.0 / 96.0)
#define PNG_SCALE 2.0 /* dots for each pixel of 1/96 inch */
#define PNG_MAX_SIDE 32766
#define PNG_MAX_DOTS (64 * 1024 * 1024)

/* @bytes: a #GByteArray
 *
 * A cairo write function that keeps the file in memory. */
static cairo_status_t
append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_status_t
paint (const BwDrawing *drawing, cairo_surface_t *surface, double scale)
{
  cairo_t *cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  bw_drawing_paint (drawing, cr);
  cairo_show_page (cr);
  cairo_status_t status = cairo_status (drawing->pen);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_status (cr);
  cairo_destroy (cr);
  return status;
}

static cairo_status_t
finish (cairo_surface_t *surface, cairo_status_t status)
{
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

/* Puts the title and the words into the SVG, where cairo has no place for them. */
static void
insert_svg_words (GByteArray *bytes, const char *title, const char *description)
{
  g_autoptr (GString) svg = g_string_new_len ((const char *) bytes->data, bytes->len);
  const char *root = strstr (svg->str, "<svg ");
  const char *end = root != NULL ? strchr (root, '>') : NULL;
  g_autofree char *shown_title = bw_text_harmless_lines (title);
  g_autofree char *shown_words = bw_text_harmless_lines (description);
  g_autofree char *words = g_markup_printf_escaped ("\n<title>%s</title>\n<desc>%s</desc>",
                                                    shown_title, shown_words);

  if (end == NULL)
    return;
  g_string_insert (svg, end + 1 - svg->str, words);
  g_byte_array_set_size (bytes, 0);
  g_byte_array_append (bytes, (const guint8 *) svg->str, (guint) svg->len);
}

static cairo_status_t
make_svg (const BwDrawing *drawing, const char *title, GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (append, bytes,
                                                                  bw_drawing_width (drawing),
                                                                  bw_drawing_height (drawing));
  cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PX);
  cairo_status_t status = finish (surface, paint (drawing, surface, 1));
  insert_svg_words (bytes, title, bw_drawing_description (drawing));
  return status;
}

static void
set_metadata (cairo_surface_t *surface, cairo_pdf_metadata_t what, const char *text)
{
  g_autofree char *words = bw_text_harmless_lines (text);
  cairo_pdf_surface_set_metadata (surface, what, words);
}

static cairo_status_t
make_pdf (const BwDrawing *drawing, const char *title, GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes,
                                                                  bw_drawing_width (drawing)
                                                                      * POINTS_PER_PIXEL,
                                                                  bw_drawing_height (drawing)
                                                                      * POINTS_PER_PIXEL);
  set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, bw_drawing_description (drawing));
  return finish (surface, paint (drawing, surface, POINTS_PER_PIXEL));
}

static cairo_status_t
make_scaled_png (const BwDrawing *drawing, double scale, GByteArray *bytes)
{
  int width = (int) ceil (bw_drawing_width (drawing) * scale);
  int height = (int) ceil (bw_drawing_height (drawing) * scale);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_status_t status = paint (drawing, surface, scale);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, append, bytes);
  return finish (surface, status);
}

static cairo_status_t
make_png (const BwDrawing *drawing, const char *title, GByteArray *bytes)
{
  return make_scaled_png (drawing, PNG_SCALE, bytes);
}

static const struct
{
  const char *suffix;
  cairo_status_t (*make) (const BwDrawing *drawing, const char *title, GByteArray *bytes);
} formats[] = {
  { ".svg", make_svg },
  { ".pdf", make_pdf },
  { ".png", make_png },
};

static gboolean
has_suffix (const char *path, const char *suffix)
{
  gsize length = strlen (path), wanted = strlen (suffix);
  return length > wanted && g_ascii_strcasecmp (path + length - wanted, suffix) == 0;
}

static cairo_status_t
make_pages (const BwExportPages *what, GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, what->width_pt,
                                                                  what->height_pt);
  set_metadata (surface, CAIRO_PDF_METADATA_TITLE, what->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Breezeway " BW_VERSION);
  cairo_t *cr = cairo_create (surface);

  for (guint page = 0; page < what->n_pages; page++)
    {
      what->draw_page (what->data, cr, page);
      cairo_show_page (cr);
    }
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  return finish (surface, status);
}

/* Takes over @bytes, which have been made unless @status says that this failed. */
static GBytes *
take_made (GByteArray *bytes, cairo_status_t status, const char *name, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (bytes);
  g_byte_array_unref (bytes);
  g_set_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_DRAW, _ ("%1$s: cannot be drawn: %2$s"), name,
               cairo_status_to_string (status));
  return NULL;
}

/**
 * bw_export_write:
 * @bytes: (transfer full) (nullable): what was made; %NULL if that failed already
 * @path: where to; a symbolic link keeps pointing where it does
 *
 * Writes @bytes beside @path and moves them into place when they are whole on disk.
 *
 * Returns: %FALSE if there are none, or with @error in %BW_EXPORT_ERROR; an old file is then as it
 *   was, and nothing is left beside it
 */
gboolean
bw_export_write (GBytes *bytes, const char *path, GError **error)
{
  g_return_val_if_fail (path != NULL, FALSE);
  g_autoptr (GBytes) owned = bytes;
  g_autoptr (GError) trouble = NULL;
  gsize length;

  if (bytes == NULL)
    return FALSE;
  const void *data = g_bytes_get_data (bytes, &length);
  if (bw_file_replace (path, data, length, &trouble))
    return TRUE;
  g_set_error_literal (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_WRITE, trouble->message);
  return FALSE;
}

/**
 * bw_export_pages_bytes:
 * @name: what to call the file in errors
 *
 * Returns: (transfer full): pages as the bytes of a PDF file, or %NULL with @error in
 *   %BW_EXPORT_ERROR
 */
GBytes *
bw_export_pages_bytes (const BwExportPages *what, const char *name, GError **error)
{
  g_return_val_if_fail (what != NULL && name != NULL, NULL);
  GByteArray *bytes = g_byte_array_new ();
  cairo_status_t status = make_pages (what, bytes);
  return take_made (bytes, status, name, error);
}

/**
 * bw_export_pages:
 * @path: where to; a symbolic link keeps pointing where it does
 *
 * Writes pages into a PDF file, whole or not at all.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR that names the file; an old file is then as it
 * was
 */
gboolean
bw_export_pages (const BwExportPages *what, const char *path, GError **error)
{
  g_return_val_if_fail (what != NULL && path != NULL, FALSE);
  return bw_export_write (bw_export_pages_bytes (what, path, error), path, error);
}

static gboolean
is_of_size (double side)
{
  return side >= 1 && side <= BW_EXPORT_MAX_SIDE;
}

/* A PNG is made whole in memory, 4 bytes to the dot; neither side may have more dots than cairo takes. */
static gboolean
is_of_dots (double width, double height)
{
  return width * PNG_SCALE <= PNG_MAX_SIDE && height * PNG_SCALE <= PNG_MAX_SIDE
         && width * height * PNG_SCALE * PNG_SCALE <= PNG_MAX_DOTS;
}

static gboolean
check_size (double width, double height, gboolean is_png, const char *path, GError **error)
{
  if (!is_of_size (width) || !is_of_size (height))
    g_set_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_SIZE,
                 _ ("%1$s: a drawing of %2$g by %3$g pixels cannot be made; allowed: 1 to %4$d"),
                 path, width, height, BW_EXPORT_MAX_SIDE);
  else if (is_png && !is_of_dots (width, height))
    g_set_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_SIZE,
                 _ ("%1$s: a PNG of %2$g by %3$g pixels would be too large; allowed: up to %4$d to "
                    "the side and %5$d in all; an SVG or a PDF may be larger"),
                 path, width, height, (int) (PNG_MAX_SIDE / PNG_SCALE),
                 (int) (PNG_MAX_DOTS / PNG_SCALE / PNG_SCALE));
  else
    return TRUE;
  return FALSE;
}

/**
 * bw_export_drawing_bytes:
 * @title: (nullable): the file's own title; %NULL for the name of the drawing
 * @name: of the file; ".svg", ".pdf" or ".png" at its end says which kind of file
 *
 * Makes a file of @drawing without writing it. SVG and PDF have its size at 96 pixels to the inch,
 * PNG has two dots to the pixel.
 *
 * Returns: (transfer full): what is in the file, or %NULL with @error in %BW_EXPORT_ERROR that names
 *   it
 */
GBytes *
bw_export_drawing_bytes (const BwDrawing *drawing, const char *title, const char *name,
                         GError **error)
{
  g_return_val_if_fail (drawing != NULL && name != NULL, NULL);
  double width = bw_drawing_width (drawing), height = bw_drawing_height (drawing);
  guint kind = 0;

  while (kind < G_N_ELEMENTS (formats) && !has_suffix (name, formats[kind].suffix))
    kind++;
  if (kind == G_N_ELEMENTS (formats))
    {
      g_set_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_SUFFIX,
                   _ ("%s: the end of the name says what kind of file to write; allowed: .svg, "
                      ".pdf, .png"),
                   name);
      return NULL;
    }
  if (!check_size (width, height, formats[kind].make == make_png, name, error))
    return NULL;
  GByteArray *bytes = g_byte_array_new ();
  cairo_status_t status = formats[kind].make (drawing,
                                              title != NULL ? title : bw_drawing_name (drawing),
                                              bytes);
  return take_made (bytes, status, name, error);
}

/**
 * bw_export_drawing:
 * @title: as for bw_export_drawing_bytes()
 * @path: where to; its end says which kind of file
 *
 * Writes @drawing into a file, whole or not at all.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR that names the file; an old file is then as it
 * was
 */
gboolean
bw_export_drawing (const BwDrawing *drawing, const char *title, const char *path, GError **error)
{
  g_return_val_if_fail (drawing != NULL && path != NULL, FALSE);
  return bw_export_write (bw_export_drawing_bytes (drawing, title, path, error), path, error);
}

/* For the clipboard: nothing where the drawing could not be made. */
static GBytes *
take_bytes (GByteArray *bytes, cairo_status_t status)
{
  if (status != CAIRO_STATUS_SUCCESS)
    g_byte_array_set_size (bytes, 0);
  return g_byte_array_free_to_bytes (bytes);
}

/**
 * bw_export_svg:
 *
 * Returns: (transfer full): @drawing as the bytes of an SVG file, for the clipboard
 */
GBytes *
bw_export_svg (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  GByteArray *bytes = g_byte_array_new ();
  return take_bytes (bytes, make_svg (drawing, bw_drawing_name (drawing), bytes));
}

/**
 * bw_export_pdf:
 *
 * Returns: (transfer full): @drawing as the bytes of a PDF file, for the clipboard
 */
GBytes *
bw_export_pdf (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  GByteArray *bytes = g_byte_array_new ();
  return take_bytes (bytes, make_pdf (drawing, bw_drawing_name (drawing), bytes));
}

/**
 * bw_export_png:
 * @dpi: dots to the inch of the drawing's own size, above zero
 *
 * Returns: (transfer full): @drawing as the bytes of a PNG file, for the clipboard; empty if it
 *   would have more dots than a file may have
 */
GBytes *
bw_export_png (const BwDrawing *drawing, double dpi)
{
  g_return_val_if_fail (drawing != NULL && dpi > 0, NULL);
  GByteArray *bytes = g_byte_array_new ();
  double scale = dpi * POINTS_PER_PIXEL / 72;
  double width = bw_drawing_width (drawing) * scale, height = bw_drawing_height (drawing) * scale;

  if (width > PNG_MAX_SIDE || height > PNG_MAX_SIDE || width * height > PNG_MAX_DOTS)
    return g_byte_array_free_to_bytes (bytes);
  return take_bytes (bytes, make_scaled_png (drawing, scale, bytes));
}
