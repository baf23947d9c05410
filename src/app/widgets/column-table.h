/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_COLUMNS_MAX 8

typedef enum
{
  BW_LINE_HEAD,  /* over the columns; may be of two lines */
  BW_LINE_GROUP, /* the first cell alone, across the whole */
  BW_LINE_FIGURES
} BwLineKind;

/**
 * BwTableLine:
 * @cells: the first is a name, the others are numbers; %NULL where there is no such column
 *
 * One line of a table.
 */
typedef struct
{
  BwLineKind kind;
  char *cells[BW_COLUMNS_MAX];
} BwTableLine;

GPtrArray *bw_table_lines_new (void);
BwTableLine *bw_table_lines_add (GPtrArray *lines, BwLineKind kind, const char *name);
void bw_table_line_add (BwTableLine *line, char *cell);
char *bw_table_lines_text (const GPtrArray *lines);

#define BW_TYPE_COLUMN_TABLE (bw_column_table_get_type ())
G_DECLARE_FINAL_TYPE (BwColumnTable, bw_column_table, BW, COLUMN_TABLE, GtkWidget)

BwColumnTable *bw_column_table_new (const char *label);
void bw_column_table_show (BwColumnTable *self, const GPtrArray *lines);

G_END_DECLS
