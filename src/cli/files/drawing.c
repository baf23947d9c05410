/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing.h"

#include <glib/gi18n-lib.h>

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

/* A sheet of A4 across has 1123 by 794 pixels of 1/96 inch. */
static const int sizes[BW_N_DRAWINGS][2] = {
  [BW_DRAWING_LINE] = { 1120, 790 },
  [BW_DRAWING_BLANKING] = { 1120, 560 },
  [BW_DRAWING_FIELD] = { 1120, 790 },
  [BW_DRAWING_MAP] = { 1120, 790 },
};

/**
 * bw_draw_request_drawing:
 *
 * Returns: (transfer full): what is to be drawn
 */
BwDrawing *
bw_draw_request_drawing (const BwDrawRequest *request)
{
  const BwChosenRaster *chosen = request->chosen;
  const BwDrawingPage *page = &request->page;
  const BwInk ink = { page->theme, NULL, BW_INK_SCREEN_DPI };
  double width = page->width > 0 ? page->width : sizes[request->view][0];
  double height = page->height > 0 ? page->height : sizes[request->view][1];
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
