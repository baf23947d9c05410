/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "window.h"

G_BEGIN_DECLS

/**
 * BwOpenFunc:
 * @file: (nullable): a file
 *
 * Returns: (transfer none): the window that has @file open; for no file, one that nothing is in yet
 */
typedef BwWindow *(*BwOpenFunc) (gpointer data, GFile *file);

void bw_drafts_offer (BwWindow *parent, const BwCatalogue *catalogue, BwOpenFunc open,
                      gpointer data);

G_END_DECLS
