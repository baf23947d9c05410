/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/lead.h"
#include "core/hookup/plan.h"
#include "draw/base/drawing.h"

G_BEGIN_DECLS

/* The drawn plan: from the plug at the source over leads and boxes to the plug at the input. Plugs
 * are seen from the solder side. Every conductor has its row, from its own pin to its own pin, in
 * its own ink, dash and words, with the parts that stand in it; its return is named under it. Where
 * the page is narrow, the chain goes on in a row of its own; a box is then drawn at both ends.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for the rest, these go first, in this order: the faces of plugs at boxes, the
 * names of the leads, the caption's sources, the returns and "centre → centre", the settings of the
 * set, the least and most of the levels, the levels, the faces of the plugs at both ends (the rows
 * still name every pin), the caption; last any single label that still has no place. The numbers of
 * contacts are left out where they have no room. */

/**
 * BwHookupView:
 * @hookup: what is drawn
 * @lead: (nullable): the lead to the input, for its delay and loss; %NULL or without type: not told
 * @mark: the decimal mark
 *
 * All is borrowed.
 */
typedef struct
{
  const BwHookup *hookup;
  const BwLeadCase *lead;
  char mark;
} BwHookupView;

/* What there is to read, each with an index and a number. */
typedef enum
{
  BW_HOOKUP_PLACE_CONDUCTOR, /* index of its row in the drawing */
  BW_HOOKUP_PLACE_PART,      /* index of the row, number of the part in it */
  BW_HOOKUP_PLACE_CONTACT,   /* index of the plug, which is twice the lead and one more for its far
                              * end; number of the contact */
  BW_HOOKUP_PLACE_BOX,       /* index of the box */
  BW_HOOKUP_PLACE_LEVEL      /* index into BwHookup.levels */
} BwHookupPlaceKind;

/* Its places are things: points say where in the box of the thing they are. */
BwDrawing *bw_hookup_drawing (const BwHookupView *what, double width, double height,
                              const BwInk *ink);
guint bw_hookup_place_id (BwHookupPlaceKind kind, guint index, guint number);

char *bw_hookup_view_lead (const BwHookupView *what);

G_END_DECLS
