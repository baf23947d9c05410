/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/dimline.h"
#include "draw/line/shape.h"
#include "view.h"

G_BEGIN_DECLS

/* Of blanking-view.c, blanking-layout.c, blanking-rows.c and blanking-words.c alone. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_BLANKING_LEAVE_NAMES,
  BW_BLANKING_LEAVE_SHARES,
  BW_BLANKING_LEAVE_PIXELS,
  BW_BLANKING_LEAVE_BURST,
  BW_BLANKING_LEAVE_FROM_DATUM,
  BW_BLANKING_LEAVE_ALLOWED,
  BW_BLANKING_LEAVE_LONG_CAPTION,
  BW_N_BLANKING_LEAVES
} BwBlankingLeave;

#define BW_BLANKING_LEVELS 4
#define BW_BURST_PEAK (BW_LEVEL_SYNC / 2)
#define BW_BLANKING_BANDS 4

typedef struct
{
  const BwBlankingView *what;
  BwLineShape shape;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwBlankingLeave */
  double from_s;  /* the window in time, and where it lies on the page */
  double to_s;
  double left;
  double right;
  double top;      /* y of white */
  double bottom;   /* y of the sync tip */
  BwDimRow to_end; /* above, from 0H to the end of blanking; then to the burst */
  BwDimRow to_burst;
  BwDimRow burst;     /* inside, with the gap before it */
  BwDimRow intervals; /* below; then the blanking with the borders beside it */
  BwDimRow blanking;
} BwBlankingLayout;

void bw_blanking_layout_init (BwBlankingLayout *layout, double width, double height,
                              const BwInk *ink, const BwBlankingView *what);
void bw_blanking_layout_clear (BwBlankingLayout *layout);
void bw_blanking_rows_size (BwBlankingLayout *layout);
void bw_blanking_rows_clear (BwBlankingLayout *layout);
double bw_blanking_x (const BwBlankingLayout *layout, double time_s);
double bw_blanking_y (const BwBlankingLayout *layout, double level);
gboolean bw_blanking_burst (const BwBlankingView *what, BwRange *burst_s);
guint bw_blanking_bands (const BwBlankingView *what, BwRange bands_s[BW_BLANKING_BANDS]);

gboolean bw_blanking_keeps (const BwBlankingLayout *layout, BwBlankingLeave leave);
const char *bw_blanking_level_name (const BwLineShape *shape, guint i, double *level);
char *bw_blanking_caption (const BwBlankingView *what);
void bw_blanking_dim_texts (const BwBlankingLayout *layout, const char *name, double length_s,
                            int pixels, int reading, char *texts[BW_N_DIM_FORMS]);

static inline double
bw_blanking_start (const BwLineShape *shape)
{
  return shape->start_s[0];
}

G_END_DECLS
