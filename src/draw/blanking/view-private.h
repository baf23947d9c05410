/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/dimline.h"
#include "draw/line/panel.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of a drawn blanking lies. */

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

#define BW_BURST_PEAK (BW_LEVEL_SYNC / 2)
#define BW_BLANKING_BANDS 4

typedef struct
{
  const BwBlankingView *what;
  BwLineShape shape;
  BwCanvas *canvas;
  gboolean breaks; /* whether a name may be broken, while nothing is left out */
  guint left_out;  /* so many members of BwBlankingLeave */
  BwLinePanel panel;
  BwDimRow to_end; /* above, from 0H to the end of blanking; then to the burst */
  BwDimRow to_burst;
  BwDimRow burst;     /* inside, with the gap before it */
  BwDimRow intervals; /* below; then the blanking with the borders beside it */
  BwDimRow blanking;
} BwBlankingLayout;

gboolean bw_blanking_try (BwBlankingLayout *layout);
void bw_blanking_rows_size (BwBlankingLayout *layout);
void bw_blanking_rows_clear (BwBlankingLayout *layout);
gboolean bw_blanking_burst (const BwBlankingView *what, BwRange *burst_s);
guint bw_blanking_bands (const BwBlankingView *what, BwRange bands_s[BW_BLANKING_BANDS]);

gboolean bw_blanking_keeps (const BwBlankingLayout *layout, BwBlankingLeave leave);
char *bw_blanking_caption (const BwBlankingView *what);
char *bw_blanking_describe (const BwBlankingView *what);
void bw_blanking_dim_texts (const BwBlankingLayout *layout, const char *name, double length_s,
                            int pixels, int reading, char *texts[BW_N_GIVEN_DIM_FORMS]);

static inline double
bw_blanking_start (const BwLineShape *shape)
{
  return shape->start_s[0];
}

G_END_DECLS
