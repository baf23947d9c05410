/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "result-view.h"

G_BEGIN_DECLS

/**
 * BwTableFigure:
 * @name: what it is
 * @count: (nullable): in pixels or lines
 * @value: with its unit
 *
 * One line of a table of figures.
 */
typedef struct
{
  char *name;
  char *count;
  char *value;
} BwTableFigure;

BwTableFigure *bw_figure_new (const char *name, const char *count, const char *value);
GPtrArray *bw_figures_new (void);

GtkWidget *bw_figure_label_new (const char *text, const char *css_class, gboolean wrap);

#define BW_TYPE_FIGURE_TABLE (bw_figure_table_get_type ())
G_DECLARE_FINAL_TYPE (BwFigureTable, bw_figure_table, BW, FIGURE_TABLE, GtkWidget)

void bw_figure_table_show (BwFigureTable *self, GPtrArray *figures);

G_END_DECLS
