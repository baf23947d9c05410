/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/dimline.h"
#include "panel.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of a drawn line lies. */

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

typedef struct
{
  const BwLineView *what;
  BwLineShape shape;
  BwCanvas *canvas;
  gboolean breaks; /* whether a name may be broken, while nothing is left out */
  guint left_out;  /* so many members of BwLineLeave */
  BwLinePanel whole;
  BwLinePanel part;
  BwDimRow period; /* above the whole line, outermost first */
  BwDimRow active;
  BwDimRow intervals; /* below the enlarged blanking */
  BwDimRow blanking;
} BwLineLayout;

gboolean bw_line_try (BwLineLayout *layout);
void bw_line_clear_rows (BwLineLayout *layout);
char *bw_line_caption (const BwRaster *raster);
char *bw_line_note (const BwRaster *raster);
char *bw_line_describe (const BwLineView *what);

void bw_line_draw (const BwLineLayout *layout, cairo_t *cr);

G_END_DECLS
