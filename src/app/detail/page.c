/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/parts.h"

/**
 * BwDetailPage:
 *
 * What the selected source can show through the selected input on this tube. All its parts speak of
 * one state, so that a value that is moved in one is moved in all.
 */
struct _BwDetailPage
{
  GtkWidget parent_instance;

  BwParts *parts; /* the only child */
  BwDetailState *state;
  BwPathPanel *path;
  BwPreviewPanel *preview;
};

G_DEFINE_FINAL_TYPE (BwDetailPage, bw_detail_page, GTK_TYPE_WIDGET)

static void
bw_detail_page_dispose (GObject *object)
{
  BwDetailPage *self = BW_DETAIL_PAGE (object);
  GtkWidget *parts = GTK_WIDGET (self->parts);

  g_clear_object (&self->state);
  g_clear_pointer (&parts, gtk_widget_unparent);
  self->parts = NULL;
  G_OBJECT_CLASS (bw_detail_page_parent_class)->dispose (object);
}

static void
bw_detail_page_class_init (BwDetailPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_detail_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
bw_detail_page_init (BwDetailPage *self)
{
  self->parts = g_object_new (BW_TYPE_PARTS, NULL);
  self->path = g_object_new (BW_TYPE_PATH_PANEL, NULL);
  bw_parts_add (self->parts, GTK_WIDGET (self->path), "path", _ ("Path"));
  self->preview = g_object_new (BW_TYPE_PREVIEW_PANEL, NULL);
  bw_parts_add (self->parts, GTK_WIDGET (self->preview), "preview", _ ("Preview"));
  gtk_widget_set_parent (GTK_WIDGET (self->parts), GTK_WIDGET (self));
}

/**
 * bw_detail_page_set_document:
 * @document: what to show; to be set once
 */
void
bw_detail_page_set_document (BwDetailPage *self, BwDocument *document)
{
  g_return_if_fail (self->state == NULL);
  self->state = bw_detail_state_new (document);
  bw_path_panel_set_state (self->path, self->state);
  bw_preview_panel_set_state (self->preview, self->state);
}

/**
 * bw_detail_page_get_panel:
 *
 * Returns: (transfer none) (nullable): the drawing that is shown, with its controls
 */
BwPicturePanel *
bw_detail_page_get_panel (BwDetailPage *self)
{
  if (g_strcmp0 (bw_parts_get_shown (self->parts), "preview") == 0)
    return bw_preview_panel_get_panel (self->preview);
  return bw_path_panel_get_panel (self->path);
}

/**
 * bw_detail_page_show_part:
 * @part: "path" or "preview"
 */
void
bw_detail_page_show_part (BwDetailPage *self, const char *part)
{
  bw_parts_show (self->parts, part);
}

/* Getters: all (transfer none) */

BwDetailState *
bw_detail_page_get_state (BwDetailPage *self)
{
  return self->state;
}

BwPathPanel *
bw_detail_page_get_path (BwDetailPage *self)
{
  return self->path;
}

BwPreviewPanel *
bw_detail_page_get_preview (BwDetailPage *self)
{
  return self->preview;
}
