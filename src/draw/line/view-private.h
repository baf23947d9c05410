/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/dimline.h"
#include "shape.h"
#include "view.h"

G_BEGIN_DECLS

/* Of line-layout.c and line-view.c alone: where everything of a line view lies. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_LEAVE_NOTE,
  BW_LEAVE_UPPER_NAMES, /* of levels, beside the whole line */
  BW_LEAVE_SCALE,
  BW_LEAVE_LOWER_NAMES,
  BW_LEAVE_SHARES,
  BW_LEAVE_PIXELS,
  BW_LEAVE_LONG_CAPTION,
  BW_N_LEAVES
} BwLineLeave;

/* One of the two curves: its window in time, and where that lies on the page. */
typedef struct
{
  double from_s;
  double to_s;
  double left;
  double right;
  double top;    /* y of white */
  double bottom; /* y of the sync tip */
} BwLinePanel;

typedef struct
{
  const BwRaster *raster;
  BwLineShape shape;
  char mark;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwLineLeave */
  BwLinePanel whole;
  BwLinePanel part;
  BwDimRow period; /* above the whole line, outermost first */
  BwDimRow active;
  BwDimRow intervals; /* below the enlarged blanking */
  BwDimRow blanking;
} BwLineView;

#define BW_LINE_LEVELS 4

void bw_line_view_init (BwLineView *view, double width, double height, const BwInk *ink,
                        const BwRaster *raster, char mark);
void bw_line_view_clear (BwLineView *view);
double bw_line_panel_x (const BwLinePanel *panel, double time_s);
double bw_line_panel_y (const BwLinePanel *panel, double level);
const char *bw_line_level_name (const BwLineView *view, guint i, double *level);
char *bw_line_caption (const BwRaster *raster);

G_END_DECLS
