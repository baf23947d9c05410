/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/detail/detail.h"
#include "draw/base/canvas.h"

G_BEGIN_DECLS

/* What limits the picture, in four drawings: the chain of links with the limit of each and its
 * share of the loss; their MTF curves; TV lines against pitch for several tubes; and the brightness
 * across three scanning lines.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut; a label that
 * finds no place is left out. */

typedef enum
{
  BW_DETAIL_CHAIN,
  BW_DETAIL_MTF,
  BW_DETAIL_PITCH,
  BW_DETAIL_STRUCTURE,
  BW_N_DETAIL_VIEWS
} BwDetailViewKind;

/**
 * BwDetailView:
 * @detail: what bw_detail_compute() makes of @what
 * @mark: the decimal mark
 *
 * What is drawn. All borrowed.
 */
typedef struct
{
  BwDetailViewKind kind;
  const BwDetailCase *what;
  const BwDetail *detail;
  char mark;
} BwDetailView;

/**
 * BwDetailPoint:
 * @link: of the chain: which; BW_N_LINKS: all together
 * @along: of the chain and of MTF in TV lines; of pitch and structure in metres
 * @value: at @along: of MTF the modulation of the whole, of pitch the TV lines of this tube, of
 *   structure the brightness as a share of the peak
 *
 * A point of a drawing, read.
 */
typedef struct
{
  guint link;
  double along;
  double value;
} BwDetailPoint;

gboolean bw_detail_view_can_draw (const BwDetailView *what);
void bw_draw_detail_view (cairo_t *cr, double width, double height, const BwInk *ink,
                          const BwDetailView *what);
gboolean bw_detail_view_read (double width, double height, const BwInk *ink,
                              const BwDetailView *what, double x, double y, BwDetailPoint *point);
gboolean bw_detail_view_x_at (double width, double height, const BwInk *ink,
                              const BwDetailView *what, double along, double *x);
GArray *bw_detail_view_labels (double width, double height, const BwInk *ink,
                               const BwDetailView *what);
char *bw_detail_view_describe (const BwDetailView *what);
double bw_detail_view_hz_at (const BwDetailCase *what, double tvl);

G_END_DECLS
