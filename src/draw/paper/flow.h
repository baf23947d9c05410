/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "draw/base/drawing.h"
#include "draw/base/text.h"

G_BEGIN_DECLS

/* Text, tables and drawings that run down a column and break into pages. Everything is laid out as
 * it is added; drawing a page then costs only that page. */

typedef enum
{
  BW_FLOW_TITLE,
  BW_FLOW_HEADING,    /* stays with what follows */
  BW_FLOW_SUBHEADING, /* stays with what follows */
  BW_FLOW_BODY,
  BW_FLOW_SECONDARY, /* in the lighter ink */
  BW_N_FLOW_STYLES
} BwFlowStyle;

#define BW_FLOW_NO_MARK BW_N_SEVERITIES

/**
 * BwFlowText:
 * @text: UTF-8; empty text adds nothing
 * @indent: from the left edge of the column
 * @mark: the severity whose mark stands before the text, and whose colour a subheading has, or
 *   %BW_FLOW_NO_MARK
 * @keep: whether it stays on the page of what follows
 */
typedef struct
{
  const char *text;
  BwFlowStyle style;
  double indent;
  BwSeverity mark;
  gboolean keep;
} BwFlowText;

/**
 * BwFlowCell:
 * @text: borrowed
 * @role: colour
 * @mark: the severity whose mark stands before the text, or %BW_FLOW_NO_MARK
 * @number: whether it is set at the right edge
 */
typedef struct
{
  const char *text;
  BwInkRole role;
  BwSeverity mark;
  gboolean number;
} BwFlowCell;

#define BW_FLOW_MAX_COLUMNS 16
#define BW_FLOW_CELL_LINES 4 /* longer text ends in an ellipsis */

typedef struct _BwFlow BwFlow;

BwFlow *bw_flow_new (const BwInk *ink, double width, double page_height);
void bw_flow_free (BwFlow *flow);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwFlow, bw_flow_free)

double bw_flow_line_height (const BwFlow *flow);
double bw_flow_width (const BwFlow *flow);
double bw_flow_page_height (const BwFlow *flow);
void bw_flow_add_text (BwFlow *flow, const BwFlowText *text);
void bw_flow_add_space (BwFlow *flow, double height);
void bw_flow_add_drawing (BwFlow *flow, BwDrawing *drawing);
void bw_flow_add_box (BwFlow *flow, const char *heading, const char *text, BwInkRole role);

void bw_flow_begin_table (BwFlow *flow, guint n, const double *widths, const BwFlowCell *heads);
void bw_flow_add_row (BwFlow *flow, const BwFlowCell *cells);
void bw_flow_end_table (BwFlow *flow);

double bw_flow_text_width (BwFlow *flow, const char *text, gboolean bold);
void bw_flow_add_node (BwFlow *flow, const BwNode *node, guint depth);

guint bw_flow_pages (BwFlow *flow);
void bw_flow_draw_page (BwFlow *flow, cairo_t *cr, guint page);

G_END_DECLS
