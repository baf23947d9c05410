/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture.h"
#include "draw/levels/view.h"

G_BEGIN_DECLS

/* The drawing of the levels of a test signal on each conductor. */

/* A BwLevelsModel that several pictures use one after the other. */
typedef struct _BwLevelsHold BwLevelsHold;

BwLevelsHold *bw_levels_hold_new (const BwSynthesisCase *what, GError **error);
BwLevelsHold *bw_levels_hold_ref (BwLevelsHold *hold);
void bw_levels_hold_unref (BwLevelsHold *hold);
BwLevelsModel *bw_levels_hold_model (BwLevelsHold *hold);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwLevelsHold, bw_levels_hold_unref)

/* The own numbers of a point. */
typedef enum
{
  BW_LEVELS_POINT_LOW,      /* of the trace, in volts on the wire */
  BW_LEVELS_POINT_HIGH,     /* likewise */
  BW_LEVELS_POINT_LINE,     /* as the standard numbers it */
  BW_LEVELS_POINT_LINE_TIME /* seconds after 0H of that line */
} BwLevelsPointNumber;

/**
 * BwLevelsPicture:
 * @hold: owned
 * @limits: (nullable): owned; that the view's limits are of
 * @view: its model, limits and part are those of the picture
 * @across: what is shown, in seconds after 0H of the view's line
 *
 * A point of it is read as a BwConductor for its row, seconds after 0H of the view's line along, and
 * volts of the pointer down. Its own numbers are those of BwLevelsPointNumber.
 */
typedef struct
{
  BwPicture parent;
  BwLevelsHold *hold;
  GPtrArray *limits;
  BwLevelsView view;
  BwViewRange across;
} BwLevelsPicture;

BwPicture *bw_levels_picture_new (BwLevelsHold *hold, GPtrArray *limits,
                                  const BwLevelsView *view);
gboolean bw_picture_is_levels (const BwPicture *picture);
const BwLevelsPicture *bw_levels_picture (const BwPicture *picture);
void bw_levels_picture_show_as (BwPicture *picture, const BwPicture *before);

G_END_DECLS
