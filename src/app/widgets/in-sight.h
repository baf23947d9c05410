/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* For lists and tables of which only the rows in sight are there: which those are, and the widgets
 * that are used for one place after another. */

/**
 * bw_row_at:
 * @edges: the upper edges of the rows, from the first one down, and the lower one of the last
 * @n_rows: at least one
 *
 * Returns: the index of the row at @y, or of the one that is nearest
 */
static inline guint
bw_row_at (const int *edges, guint n_rows, double y)
{
  g_return_val_if_fail (edges != NULL && n_rows > 0, 0);
  guint low = 0, high = n_rows - 1;
  while (low < high)
    {
      guint middle = (low + high) / 2;
      if (edges[middle + 1] > y)
        high = middle;
      else
        low = middle + 1;
    }
  return low;
}

/**
 * bw_take_spare:
 *
 * Returns: (transfer none) (nullable): one of the widgets that were put by, to be shown again
 */
static inline GtkWidget *
bw_take_spare (GPtrArray *spare)
{
  if (spare->len == 0)
    return NULL;
  GtkWidget *widget = g_ptr_array_steal_index_fast (spare, spare->len - 1);
  gtk_widget_set_child_visible (widget, TRUE);
  return widget;
}

/**
 * bw_put_by:
 *
 * Hides @widget and keeps it for bw_take_spare(); it stays a child of its parent.
 */
static inline void
bw_put_by (GPtrArray *spare, GtkWidget *widget)
{
  gtk_widget_set_child_visible (widget, FALSE);
  g_ptr_array_add (spare, widget);
}

G_END_DECLS
