/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/vector/view.h"
#include "levels-picture.h"

G_BEGIN_DECLS

/* The own numbers of a point. */
typedef enum
{
  BW_VECTOR_POINT_AMPLITUDE, /* from the middle, in volts on the wire */
  BW_VECTOR_POINT_PHASE,     /* in degrees */
  BW_VECTOR_POINT_NEAREST    /* BwBar */
} BwVectorPointNumber;

BwPicture *bw_vector_picture_new (BwLevelsHold *hold, const BwVectorView *view);
gboolean bw_picture_is_vectors (const BwPicture *picture);

G_END_DECLS
