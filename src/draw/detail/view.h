/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/detail/detail.h"
#include "draw/base/drawing.h"

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
 * @title: (nullable): what the drawing is of, in a few words
 * @mark: the decimal mark
 *
 * What is drawn. All borrowed.
 */
typedef struct
{
  BwDetailViewKind kind;
  const BwDetailCase *what;
  const BwDetail *detail;
  const char *title;
  char mark;
} BwDetailView;

gboolean bw_detail_view_can_draw (const BwDetailView *what);

/* The chain has a place for each link, by its number, and one for all together; the others have one
 * place. Points are TV lines across, and metres in the drawings of pitch and structure. */
BwDrawing *bw_detail_drawing (const BwDetailView *what, double width, double height,
                              const BwInk *ink);

G_END_DECLS
