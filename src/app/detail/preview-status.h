/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "preview-job.h"

G_BEGIN_DECLS

#define BW_TYPE_PREVIEW_STATUS (bw_preview_status_get_type ())
G_DECLARE_FINAL_TYPE (BwPreviewStatus, bw_preview_status, BW, PREVIEW_STATUS, GtkWidget)

void bw_preview_status_watch (BwPreviewStatus *self, BwPreviewJob *job);
void bw_preview_status_say (BwPreviewStatus *self, const char *words);

G_END_DECLS
