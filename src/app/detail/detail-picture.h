/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture.h"
#include "draw/detail/view.h"

G_BEGIN_DECLS

/* The drawings of detail: the chain, the MTF curves, TV lines against pitch, the line structure. */

/**
 * BwDetailPicture:
 * @title: of what; owned
 *
 * A point of it is read as BwDetailPoint says: @row is the link, @along is @along, and the first of
 * its own numbers is @value.
 */
typedef struct
{
  BwPicture parent;
  BwDetailViewKind kind;
  BwDetailCase what;
  BwDetail detail;
  char *title;
} BwDetailPicture;

BwPicture *bw_detail_picture_new (BwDetailViewKind kind, const BwDetailCase *what,
                                  const BwDetail *detail, const char *title);
const BwDetailPicture *bw_detail_picture (const BwPicture *picture);

G_END_DECLS
