/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "grid.h"

G_BEGIN_DECLS

/* The places of the table's parts, in pixels of the whole table, which may be larger than what is
 * seen of it. */
typedef struct
{
  int head_width;   /* of the row heads */
  int head_height;  /* of the column heads */
  int column_width; /* alike for all columns */
  int *row_y;       /* n_sources + 1 edges, from the first row down */
} BwFitLayout;

struct _BwFitGrid
{
  GtkWidget parent_instance;

  BwDocument *document;
  GtkAdjustment *across; /* nullable */
  GtkAdjustment *down;   /* nullable */
  guint across_policy;
  guint down_policy;

  GtkWidget *corner;       /* children, borrowed, as are all below */
  GPtrArray *column_heads; /* GtkLabel */
  GPtrArray *row_heads;    /* GtkBox of two labels */
  GPtrArray *at;           /* BwFitCell, row by row */
  guint n_sources;
  guint n_inputs;
  BwFitLayout layout;
  gboolean selecting;
  gboolean scroll_to_selected; /* when it is laid out */
  guint planning;  /* the idle source that looks for plans; zero: none */
  guint n_planned; /* cells that it has come to */
};

void bw_fit_grid_layout_class_init (GtkWidgetClass *widget_class);
void bw_fit_grid_set_adjustment (BwFitGrid *self, GtkAdjustment **place, GtkAdjustment *adjustment);
void bw_fit_grid_scroll_to_selected (BwFitGrid *self);

G_END_DECLS
