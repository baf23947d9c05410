/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing.h"

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/choose/target.h"
#include "draw/base/export.h"
#include "draw/blanking/view.h"
#include "draw/field/view.h"
#include "draw/line/view.h"
#include "draw/map/view.h"

static const BwKind views[BW_N_DRAWINGS] = {
  [BW_DRAWING_LINE] = { "line", N_ ("line") },
  [BW_DRAWING_BLANKING] = { "blanking", N_ ("line blanking") },
  [BW_DRAWING_FIELD] = { "field", N_ ("field") },
  [BW_DRAWING_MAP] = { "map", N_ ("raster map") },
};
const BwKindTable bw_drawing_views = { G_N_ELEMENTS (views), views };

static const BwKind themes[BW_N_THEMES] = {
  [BW_THEME_LIGHT] = { "light", N_ ("light") },
  [BW_THEME_DARK] = { "dark", N_ ("dark") },
  [BW_THEME_PRINT] = { "print", N_ ("print") },
};
static const BwKindTable theme_words = { BW_THEME_PRINT + 1, themes };

/* A sheet of A4 across has 1123 by 794 pixels of 1/96 inch. */
static const int sizes[BW_N_DRAWINGS][2] = {
  [BW_DRAWING_LINE] = { 1120, 790 },
  [BW_DRAWING_BLANKING] = { 1120, 560 },
  [BW_DRAWING_FIELD] = { 1120, 790 },
  [BW_DRAWING_MAP] = { 1120, 790 },
};

/**
 * bw_drawing_options_clear:
 *
 * Frees what @own owns.
 */
void
bw_drawing_options_clear (BwDrawingOptions *own)
{
  g_clear_pointer (&own->target, g_free);
  g_clear_pointer (&own->theme, g_free);
  g_clear_pointer (&own->size, g_free);
}

/**
 * bw_drawing_options_fault:
 * @choice: the raster that is drawn
 * @theme: (inout): the BwTheme of --theme, where it was given
 *
 * Returns: (transfer full) (nullable): what is wrong with the options, if anything
 */
char *
bw_drawing_options_fault (const BwDrawingOptions *own, const BwRasterChoice *choice, guint *theme)
{
  char *fault = bw_argument_word ("--theme", &theme_words, own->theme, theme);
  if (fault == NULL && own->target != NULL
      && (bw_target_is (own->target, choice->edid)
          || bw_target_is (own->target, choice->for_monitor)))
    fault = g_strdup (_ ("the drawing would replace what it is made from"));
  return fault;
}

/**
 * bw_drawing_options_size:
 * @width: (inout): in pixels of 1/96 inch, where --size was given; likewise @height
 *
 * Returns: %FALSE, having said so in one line, if --size cannot be read
 */
gboolean
bw_drawing_options_size (const BwDrawingOptions *own, int *width, int *height)
{
  return own->size == NULL || bw_argument_size ("--size", own->size, width, height);
}

static BwInk
ink_of (const BwDrawing *drawing)
{
  return (BwInk){ drawing->theme, NULL, BW_INK_SCREEN_DPI };
}

static BwBlankingView
blanking_of (const BwDrawing *drawing)
{
  return (BwBlankingView){ drawing->chosen->raster, drawing->limits, bw_quantity_locale_mark () };
}

static BwFieldView
field_of (const BwDrawing *drawing)
{
  return (BwFieldView){ .raster = drawing->chosen->raster,
                        .system = drawing->system,
                        .mark = bw_quantity_locale_mark () };
}

static BwMapView
map_of (const BwDrawing *drawing)
{
  return (BwMapView){ .raster = drawing->chosen->raster,
                      .overscan_h = drawing->chosen->overscan_h,
                      .overscan_v = drawing->chosen->overscan_v,
                      .aspect = drawing->chosen->aspect,
                      .mark = bw_quantity_locale_mark () };
}

static void
draw (cairo_t *cr, double width, double height, gpointer user_data)
{
  const BwDrawing *drawing = user_data;
  const BwInk ink = ink_of (drawing);
  const BwBlankingView blanking = blanking_of (drawing);
  const BwFieldView field = field_of (drawing);
  const BwMapView map = map_of (drawing);

  switch (drawing->view)
    {
    case BW_DRAWING_BLANKING:
      bw_draw_blanking_view (cr, width, height, &ink, &blanking);
      break;
    case BW_DRAWING_FIELD:
      bw_draw_field_view (cr, width, height, &ink, &field);
      break;
    case BW_DRAWING_MAP:
      bw_draw_map_view (cr, width, height, &ink, &map);
      break;
    case BW_DRAWING_LINE:
    case BW_N_DRAWINGS:
    default:
      bw_draw_line_view (cr, width, height, &ink, drawing->chosen->raster,
                         bw_quantity_locale_mark ());
    }
}

/**
 * bw_drawing_describe:
 *
 * Returns: (transfer full): the drawing in words
 */
char *
bw_drawing_describe (const BwDrawing *drawing)
{
  const BwBlankingView blanking = blanking_of (drawing);
  const BwFieldView field = field_of (drawing);
  const BwMapView map = map_of (drawing);

  switch (drawing->view)
    {
    case BW_DRAWING_BLANKING:
      return bw_blanking_view_describe (&blanking);
    case BW_DRAWING_FIELD:
      return bw_field_view_describe (&field);
    case BW_DRAWING_MAP:
      return bw_map_view_describe (&map);
    case BW_DRAWING_LINE:
    case BW_N_DRAWINGS:
    default:
      return bw_line_view_describe (drawing->chosen->raster, bw_quantity_locale_mark ());
    }
}

/**
 * bw_drawing_write:
 * @path: ends in .svg, .pdf or .png
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR that names the file; an old file is then as it
 * was
 */
gboolean
bw_drawing_write (const BwDrawing *drawing, const char *path, GError **error)
{
  g_autofree char *description = bw_drawing_describe (drawing);
  const BwExport what = {
    .draw = draw,
    .user_data = (gpointer) drawing,
    .width = drawing->width > 0 ? drawing->width : sizes[drawing->view][0],
    .height = drawing->height > 0 ? drawing->height : sizes[drawing->view][1],
    .title = drawing->chosen->raster->name,
    .description = description,
  };
  return bw_export_drawing (&what, path, error);
}
