/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "grid.h"

G_BEGIN_DECLS

/* What is known of the height of a row, in pixels. A row is measured when it comes into sight. */
typedef struct
{
  int height;     /* as last measured; zero: not yet */
  guint measured; /* the layout's "serial" at that time */
} BwFitRow;

/* Which rows and columns are in sight, wholly or in part: from the first up to before the end. */
typedef struct
{
  guint first_source;
  guint end_source;
  guint first_input;
  guint end_input;
} BwFitSpan;

/* The places of the table's parts, in pixels of the whole table, which may be larger than what is
 * seen of it. */
typedef struct
{
  int width;        /* of what is seen, with the heads */
  int head_width;   /* of the row heads */
  int head_height;  /* of the column heads */
  int column_width; /* alike for all columns */
  GArray *rows;     /* BwFitRow for each source */
  int *row_y;       /* n_sources + 1 edges, from the first row down; unseen rows are estimated */
  guint serial;     /* another one when what was measured holds no longer */
  BwFitSpan seen;
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
  GHashTable *row_heads;   /* source → GtkBox of two labels: those that are there */
  GHashTable *cells;       /* place → BwFitCell: those that are there */
  GPtrArray *spare_heads;  /* to be used again */
  GPtrArray *spare_cells;
  guint n_sources;
  guint n_inputs;
  BwFitLayout layout;
  gboolean selecting;
  gboolean scroll_to_selected; /* when it is laid out */
  guint planning;        /* the idle source that looks for plans; zero: none */
  GHashTable *unplanned; /* set of BwFitCell: those that it has not come to */
};

/* grid-cells.c */
void bw_fit_grid_cells_init (BwFitGrid *self);
void bw_fit_grid_cells_clear (BwFitGrid *self);
void bw_fit_grid_resize (BwFitGrid *self, guint n_sources, guint n_inputs);
void bw_fit_grid_show_all (BwFitGrid *self);
void bw_fit_grid_show_pressed (BwFitGrid *self);
void bw_fit_grid_keep (BwFitGrid *self, const BwFitSpan *span);
BwFitCell *bw_fit_grid_need_cell (BwFitGrid *self, guint source, guint input);
GtkWidget *bw_fit_grid_need_head (BwFitGrid *self, guint source);
void bw_fit_grid_on_toggled (BwFitGrid *self, BwFitCell *cell);

/* grid-layout.c */
void bw_fit_grid_layout_class_init (GtkWidgetClass *widget_class);
void bw_fit_grid_set_adjustment (BwFitGrid *self, GtkAdjustment **place, GtkAdjustment *adjustment);
void bw_fit_grid_scroll_to_selected (BwFitGrid *self);

G_END_DECLS
