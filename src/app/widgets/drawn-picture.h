/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/drawing.h"
#include "picture.h"

G_BEGIN_DECLS

/* A BwDrawing as a picture, until every picture is one. */

/**
 * BwBuildFunc:
 * @zoom: (nullable): what is shown; %NULL for all
 *
 * Returns: (transfer full): the drawing of @data for a page
 */
typedef BwDrawing *(*BwBuildFunc) (gpointer data, double width, double height, const BwInk *ink,
                                   const BwZoom *zoom);

BwPicture *bw_drawn_picture_new (BwBuildFunc build, gpointer data, GDestroyNotify free_data);
gpointer bw_drawn_picture_data (const BwPicture *picture);
void bw_drawn_picture_show_as (BwPicture *picture, const BwPicture *before);

G_END_DECLS
