/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "flow.h"

G_BEGIN_DECLS

/* Of flow.c and flow-table.c alone. */

typedef struct _BwFlowItem BwFlowItem;
typedef void (*BwFlowItemDraw) (const BwFlowItem *item, BwFlow *flow, cairo_t *cr);
typedef void (*BwFlowItemFree) (gpointer data);

/* Something that is not broken over pages: a line of text, a row, a drawing, a box, a space. */
struct _BwFlowItem
{
  BwFlowItemDraw draw;
  gpointer data;
  BwFlowItemFree free_data;
  double y;
  double height;
  guint page;
  gboolean keep; /* on the page of the next item */
  gboolean head; /* of a table */
};

/* Columns of a table. */
typedef struct
{
  guint n;
  double width[BW_FLOW_MAX_COLUMNS];
} BwFlowColumns;

struct _BwFlow
{
  BwInk ink;
  char *font;
  double width;
  double page_height;
  double line_height;
  PangoLayout *layout;    /* for measuring and for drawing */
  gconstpointer laid_out; /* the paragraph that @layout holds, if any */
  GPtrArray *items;
  guint n_placed;
  guint page;
  double y;
  GArray *first_of_page;
  BwFlowColumns columns;
  BwFlowItem *table_head; /* of the open table; not among the items */
};

/* In heights of a line of text. */
#define BW_FLOW_MARK_SIZE 0.72
#define BW_FLOW_MARK_SPACE 1.15

BwFlowItem *bw_flow_item_new (BwFlowItemDraw draw, double height, gpointer data,
                              BwFlowItemFree free_data);
void bw_flow_item_free (BwFlowItem *item);
void bw_flow_add_item (BwFlow *flow, BwFlowItem *item);
double bw_flow_set_layout (BwFlow *flow, const char *text, BwInkRole role, double width,
                           double scale, gboolean bold);
BwFlowItem *bw_flow_copy_row (const BwFlowItem *row);

G_END_DECLS
