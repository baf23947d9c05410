/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "preview-job.h"

G_BEGIN_DECLS

/* Choosing a PNG picture and reading it. One at a time: a newer one takes the older one's place. */

typedef struct _BwPreviewOpen BwPreviewOpen;

/**
 * BwPreviewOpenedFunc:
 * @sent: (transfer full) (nullable)
 * @error: (nullable): why there is none
 * @name: of the file, for reading
 */
typedef void (*BwPreviewOpenedFunc) (BwPreviewSent *sent, const GError *error, const char *name,
                                     gpointer user_data);

BwPreviewOpen *bw_preview_open_new (BwPreviewOpenedFunc opened, gpointer user_data);
void bw_preview_open_free (BwPreviewOpen *open);
void bw_preview_open_file (BwPreviewOpen *open, GFile *file);
void bw_preview_open_choose (BwPreviewOpen *open, GtkWidget *over);

G_END_DECLS
