/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/drawing.h"
#include "shape.h"

G_BEGIN_DECLS

/* What the drawings of one line share: the page that they are zoomed on, and what they say of a
 * time. */

/**
 * BwLinePage:
 * @width: of the whole, of which the page shows a part
 * @from_x: where that part starts
 * @across: the part, from 0 to 1
 */
typedef struct
{
  double width;
  double from_x;
  BwViewRange across;
} BwLinePage;

void bw_line_page_init (BwLinePage *page, const BwViewRange *across, double width);
void bw_line_page_zoom (const BwLinePage *page, BwDrawing *drawing);

void bw_line_take_reader (BwDrawing *drawing, BwCursorStyle style, const BwLineShape *shape,
                          char mark);

G_END_DECLS
