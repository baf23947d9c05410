/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "core/base/harmless.h"

G_BEGIN_DECLS

/* Text in a terminal: made harmless, measured in columns, wrapped, and set in columns. */

#define BW_TERMINAL_COLUMNS 80

int bw_text_width (const char *text);
void bw_text_append_wrapped (GString *to, const char *first, int indent, int columns,
                             const char *text);

/**
 * BwListing:
 *
 * Rows of cells in columns, aligned by what a terminal shows.
 */
typedef struct _BwListing BwListing;

BwListing *bw_listing_new (guint columns);
void bw_listing_free (BwListing *listing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwListing, bw_listing_free)

void bw_listing_set_right (BwListing *listing, guint column);
void bw_listing_set_wraps (BwListing *listing, guint column);
void bw_listing_add_row (BwListing *listing, const char *const *cells);
void bw_listing_add_line (BwListing *listing, const char *text);
void bw_listing_append_to (BwListing *listing, GString *to, int indent, int columns);

G_END_DECLS
