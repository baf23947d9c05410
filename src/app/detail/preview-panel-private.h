/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/chooser.h"
#include "preview-open.h"
#include "preview-panel.h"
#include "preview-status.h"

G_BEGIN_DECLS

#define BW_PREVIEW_USUAL_BRIGHTNESS 0.5

struct _BwPreviewPanel
{
  GtkWidget parent_instance;

  BwPicturePanel *panel; /* the only child */
  BwDetailState *state;
  BwPreviewView *view; /* borrowed; of the panel's area */
  BwPreviewJob *job;
  BwPreviewOpen *open;
  BwPreviewSent *sent;   /* nullable; the test picture that was sent last */
  BwPreviewSent *opened; /* nullable */
  char *opened_name;

  BwChooser *kind; /* borrowed; in the panel, as the next ones are */
  BwChooser *times;
  GtkRange *brightness;
  GtkWidget *next;
  GtkLabel *fault;
  BwPreviewStatus *status;

  guint frame;
  guint starting; /* source that starts the job soon */
  gboolean stale; /* something changed while it was not shown */
  int page_width; /* for which was wished last */
  int page_height;
  int density;
  GdkSurface *surface; /* nullable; of the window, while the panel is shown */
};

void bw_preview_panel_fill_kinds (BwPreviewPanel *self);

void bw_preview_panel_on_kind (BwPreviewPanel *self, guint kind);
void bw_preview_panel_on_times (BwPreviewPanel *self, guint index);
void bw_preview_panel_on_brightness (BwPreviewPanel *self);
void bw_preview_panel_on_next (BwPreviewPanel *self);
void bw_preview_panel_on_open (BwPreviewPanel *self);

/* preview-panel-build.c */
void bw_preview_panel_build (BwPreviewPanel *self);

G_END_DECLS
