/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/parts.h"

/**
 * BwLevelsPage:
 *
 * What the selected source puts on each conductor at the selected input, in three parts: the
 * waveform, what becomes of its sync, and what is likely wrong where a scope reads otherwise.
 */
struct _BwLevelsPage
{
  GtkWidget parent_instance;

  BwParts *parts; /* the only child */
  BwWaveformPanel *waveform;
  BwSyncPanel *sync;
  BwCausePanel *cause;
};

G_DEFINE_FINAL_TYPE (BwLevelsPage, bw_levels_page, GTK_TYPE_WIDGET)

static void
bw_levels_page_dispose (GObject *object)
{
  BwLevelsPage *self = BW_LEVELS_PAGE (object);
  GtkWidget *parts = GTK_WIDGET (self->parts);

  g_clear_pointer (&parts, gtk_widget_unparent);
  self->parts = NULL;
  G_OBJECT_CLASS (bw_levels_page_parent_class)->dispose (object);
}

static void
bw_levels_page_class_init (BwLevelsPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_levels_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
bw_levels_page_init (BwLevelsPage *self)
{
  self->parts = g_object_new (BW_TYPE_PARTS, NULL);
  self->waveform = g_object_new (BW_TYPE_WAVEFORM_PANEL, NULL);
  self->sync = g_object_new (BW_TYPE_SYNC_PANEL, NULL);
  self->cause = g_object_new (BW_TYPE_CAUSE_PANEL, NULL);
  bw_parts_add (self->parts, GTK_WIDGET (self->waveform), "waveform", _ ("Waveform"));
  bw_parts_add (self->parts, GTK_WIDGET (self->sync), "sync", _ ("Sync"));
  bw_parts_add (self->parts, GTK_WIDGET (self->cause), "cause", _ ("Likely cause"));
  gtk_widget_set_parent (GTK_WIDGET (self->parts), GTK_WIDGET (self));
}

/**
 * bw_levels_page_set_document:
 * @document: what to show; to be set once
 */
void
bw_levels_page_set_document (BwLevelsPage *self, BwDocument *document)
{
  bw_waveform_panel_set_document (self->waveform, document);
  bw_sync_panel_set_document (self->sync, document);
  bw_cause_panel_set_document (self->cause, document);
}

/**
 * bw_levels_page_get_panel:
 *
 * Returns: (transfer none) (nullable): the drawing that is shown, with its controls; %NULL while a
 *   part without a drawing is shown
 */
BwPicturePanel *
bw_levels_page_get_panel (BwLevelsPage *self)
{
  const char *part = bw_parts_get_shown (self->parts);
  if (g_strcmp0 (part, "waveform") == 0)
    return bw_waveform_panel_get_panel (self->waveform);
  if (g_strcmp0 (part, "sync") == 0)
    return bw_sync_panel_get_panel (self->sync);
  return NULL;
}

/**
 * bw_levels_page_show_part:
 * @part: "waveform", "sync" or "cause"
 */
void
bw_levels_page_show_part (BwLevelsPage *self, const char *part)
{
  bw_parts_show (self->parts, part);
}

/* Getters: all (transfer none) */

BwWaveformPanel *
bw_levels_page_get_waveform (BwLevelsPage *self)
{
  return self->waveform;
}

BwSyncPanel *
bw_levels_page_get_sync (BwLevelsPage *self)
{
  return self->sync;
}

BwCausePanel *
bw_levels_page_get_cause (BwLevelsPage *self)
{
  return self->cause;
}
