/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BwTable:
 *
 * Text in columns, aligned by what a terminal shows.
 */
typedef struct _BwTable BwTable;

BwTable *bw_table_new (guint columns);
void bw_table_free (BwTable *table);
void bw_table_set_right (BwTable *table, guint column);
void bw_table_set_width (BwTable *table, guint column, int at_least, int at_most);
void bw_table_add_row (BwTable *table, const char *first, ...) G_GNUC_NULL_TERMINATED;
void bw_table_add_cells (BwTable *table, const char *const *cells);
void bw_table_add_rule (BwTable *table);
void bw_table_append_to (const BwTable *table, GString *to, int indent);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwTable, bw_table_free)

G_END_DECLS
