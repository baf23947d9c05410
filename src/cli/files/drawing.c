/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing.h"

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/choose/target.h"
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

/**
 * bw_draw_request_drawing:
 *
 * Returns: (transfer full): what is to be drawn
 */
BwDrawing *
bw_draw_request_drawing (const BwDrawRequest *request)
{
  const BwChosenRaster *chosen = request->chosen;
  const BwInk ink = { request->theme, NULL, BW_INK_SCREEN_DPI };
  double width = request->width > 0 ? request->width : sizes[request->view][0];
  double height = request->height > 0 ? request->height : sizes[request->view][1];
  char mark = bw_quantity_locale_mark ();
  const BwLineView line = { .raster = chosen->raster, .mark = mark };
  const BwBlankingView blanking = { .raster = chosen->raster,
                                    .limits = request->limits,
                                    .mark = mark };
  const BwFieldView field = { .raster = chosen->raster, .system = request->system, .mark = mark };
  const BwMapView map = { .raster = chosen->raster,
                          .overscan_h = chosen->overscan_h,
                          .overscan_v = chosen->overscan_v,
                          .aspect = chosen->aspect,
                          .mark = mark };

  switch (request->view)
    {
    case BW_DRAWING_BLANKING:
      return bw_blanking_drawing (&blanking, width, height, &ink);
    case BW_DRAWING_FIELD:
      return bw_field_drawing (&field, width, height, &ink);
    case BW_DRAWING_MAP:
      return bw_map_drawing (&map, width, height, &ink);
    case BW_DRAWING_LINE:
    case BW_N_DRAWINGS:
    default:
      return bw_line_drawing (&line, width, height, &ink);
    }
}
