/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "drawing.h"

G_BEGIN_DECLS

#define BW_EXPORT_MAX_SIDE 20000 /* of a drawing, in pixels of 1/96 inch; the least is 1 */

#define BW_EXPORT_ERROR (bw_export_error_quark ())

typedef enum
{
  BW_EXPORT_ERROR_SUFFIX, /* not one of .svg, .pdf, .png */
  BW_EXPORT_ERROR_SIZE,
  BW_EXPORT_ERROR_DRAW, /* cairo could not draw it */
  BW_EXPORT_ERROR_WRITE
} BwExportError;

GQuark bw_export_error_quark (void);

/**
 * BwExportPages:
 * @draw_page: draws page @page, from zero, in points from the paper's top left corner
 * @data: for @draw_page
 * @title: what the pages are, for the file's own title
 */
typedef struct
{
  void (*draw_page) (gpointer data, cairo_t *cr, guint page);
  gpointer data;
  guint n_pages;
  double width_pt;
  double height_pt;
  const char *title;
} BwExportPages;

GBytes *bw_export_pages_bytes (const BwExportPages *what, const char *name, GError **error);
GBytes *bw_export_drawing_bytes (const BwDrawing *drawing, const char *title, const char *name,
                                 GError **error);
gboolean bw_export_pages (const BwExportPages *what, const char *path, GError **error);
gboolean bw_export_drawing (const BwDrawing *drawing, const char *title, const char *path,
                            GError **error);
gboolean bw_export_write (GBytes *bytes, const char *path, GError **error);
GBytes *bw_export_svg (const BwDrawing *drawing);
GBytes *bw_export_pdf (const BwDrawing *drawing);
GBytes *bw_export_png (const BwDrawing *drawing, double dpi);

G_END_DECLS
