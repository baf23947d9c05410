/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/lead.h"
#include "core/hookup/plan.h"
#include "draw/base/canvas.h"

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

typedef enum
{
  BW_HOOKUP_POINT_CONDUCTOR, /* @index into the rows */
  BW_HOOKUP_POINT_PART,      /* @index into the rows, @number of the part in it */
  BW_HOOKUP_POINT_CONTACT,   /* @index of the plug: twice the lead, and one for its far end */
  BW_HOOKUP_POINT_BOX,       /* @index of the box */
  BW_HOOKUP_POINT_LEVEL,     /* @index into BwHookup.levels */
  BW_N_HOOKUP_POINTS
} BwHookupPointKind;

/**
 * BwHookupPoint:
 * @kind: BwHookupPointKind
 * @number: of the contact, or of the part
 *
 * A thing in the drawing, read.
 */
typedef struct
{
  guint kind;
  guint index;
  int number;
} BwHookupPoint;

/**
 * BwHookupDrawing:
 *
 * The plan laid out for one page.
 */
typedef struct _BwHookupDrawing BwHookupDrawing;

BwHookupDrawing *bw_hookup_drawing_new (double width, double height, const BwInk *ink,
                                        const BwHookupView *what);
void bw_hookup_drawing_free (BwHookupDrawing *drawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwHookupDrawing, bw_hookup_drawing_free)

void bw_hookup_drawing_draw (const BwHookupDrawing *drawing, cairo_t *cr);
GArray *bw_hookup_drawing_labels (const BwHookupDrawing *drawing, guint *left_out);
gboolean bw_hookup_drawing_read (const BwHookupDrawing *drawing, double x, double y,
                                 BwHookupPoint *point);
gboolean bw_hookup_drawing_place (const BwHookupDrawing *drawing, const BwHookupPoint *point,
                                  double *x, double *y);
char *bw_hookup_drawing_words (const BwHookupDrawing *drawing, const BwHookupPoint *point);
gboolean bw_hookup_drawing_wire (const BwHookupDrawing *drawing, guint connection, double from[2],
                                 double to[2]);
gboolean bw_hookup_drawing_pin (const BwHookupDrawing *drawing, guint hop, gboolean far_end,
                                int number, double at[2]);

char *bw_hookup_view_name (const BwHookupView *what);
char *bw_hookup_view_describe (const BwHookupView *what);
char *bw_hookup_view_lead (const BwHookupView *what);

G_END_DECLS
