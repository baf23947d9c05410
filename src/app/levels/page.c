/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "cause-panel.h"
#include "sync-panel.h"
#include "waveform-panel.h"
#include "work-back-panel.h"

/**
 * BwLevelsPage:
 *
 * What the selected source puts on each conductor at the selected input: the waveform, what becomes
 * of its sync, and what is likely wrong where a scope reads otherwise.
 */
struct _BwLevelsPage
{
  BwPage parent_instance;

  BwWaveformPanel *waveform; /* all borrowed; children */
  BwSyncPanel *sync;
  BwCausePanel *cause;
  BwWorkBackPanel *work_back;
};

G_DEFINE_FINAL_TYPE (BwLevelsPage, bw_levels_page, BW_TYPE_PAGE)

static void
bw_levels_page_set_document (BwPage *page, BwDocument *document)
{
  BwLevelsPage *self = BW_LEVELS_PAGE (page);

  bw_waveform_panel_set_document (self->waveform, document);
  bw_sync_panel_set_document (self->sync, document);
  bw_cause_panel_set_document (self->cause, document);
  bw_work_back_panel_set_document (self->work_back, document);
}

static void
bw_levels_page_class_init (BwLevelsPageClass *klass)
{
  BW_PAGE_CLASS (klass)->set_document = bw_levels_page_set_document;
}

static void
bw_levels_page_init (BwLevelsPage *self)
{
  BwPage *page = BW_PAGE (self);

  self->waveform = g_object_new (BW_TYPE_WAVEFORM_PANEL, NULL);
  self->sync = g_object_new (BW_TYPE_SYNC_PANEL, NULL);
  self->cause = g_object_new (BW_TYPE_CAUSE_PANEL, NULL);
  self->work_back = g_object_new (BW_TYPE_WORK_BACK_PANEL, NULL);
  bw_page_add_panel (page, GTK_WIDGET (self->waveform),
                     bw_waveform_panel_get_panel (self->waveform));
  bw_page_add_view (page, "sync", C_ ("view", "Sync"),
                    _ ("What Becomes of the Sync in the Monitor"), GTK_WIDGET (self->sync),
                    bw_sync_panel_get_panel (self->sync));
  bw_page_add_view (page, "cause", _ ("Likely cause"),
                    _ ("What Is Wrong Where a Scope Reads Otherwise"), GTK_WIDGET (self->cause),
                    NULL);
  bw_page_add_view (page, "work-back", _ ("Work back"),
                    _ ("From Readings Back to the Circuit That Gives Them"),
                    GTK_WIDGET (self->work_back), NULL);
}
