/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "path-panel.h"
#include "preview-panel.h"

/**
 * BwDetailPage:
 *
 * What the selected source can show through the selected input on this tube. All its views speak of
 * one state, so that a value that is moved in one is moved in all.
 */
struct _BwDetailPage
{
  BwPage parent_instance;

  BwDetailState *state;
  BwPathPanel *path;       /* borrowed; a child */
  BwPreviewPanel *preview; /* borrowed; a child */
};

G_DEFINE_FINAL_TYPE (BwDetailPage, bw_detail_page, BW_TYPE_PAGE)

static void
bw_detail_page_set_document (BwPage *page, BwDocument *document)
{
  BwDetailPage *self = BW_DETAIL_PAGE (page);

  g_return_if_fail (self->state == NULL);
  self->state = bw_detail_state_new (document);
  bw_path_panel_set_state (self->path, self->state);
  bw_preview_panel_set_state (self->preview, self->state);
}

static void
bw_detail_page_dispose (GObject *object)
{
  g_clear_object (&BW_DETAIL_PAGE (object)->state);
  G_OBJECT_CLASS (bw_detail_page_parent_class)->dispose (object);
}

static void
bw_detail_page_class_init (BwDetailPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_detail_page_dispose;
  BW_PAGE_CLASS (klass)->set_document = bw_detail_page_set_document;
}

static void
bw_detail_page_init (BwDetailPage *self)
{
  BwPage *page = BW_PAGE (self);

  self->path = g_object_new (BW_TYPE_PATH_PANEL, NULL);
  self->preview = g_object_new (BW_TYPE_PREVIEW_PANEL, NULL);
  bw_page_add_panel (page, GTK_WIDGET (self->path), bw_path_panel_get_panel (self->path));
  bw_page_add_view (page, "preview", _ ("Preview"), _ ("A Test Picture as This Tube Would Show It"),
                    GTK_WIDGET (self->preview), bw_preview_panel_get_panel (self->preview));
}

/**
 * bw_detail_page_get_state:
 *
 * Returns: (transfer none): what all views speak of
 */
BwDetailState *
bw_detail_page_get_state (BwDetailPage *self)
{
  g_return_val_if_fail (BW_IS_DETAIL_PAGE (self), NULL);
  return self->state;
}

/**
 * bw_detail_page_open_picture:
 *
 * Shows the picture in @file as the tube would show it.
 */
void
bw_detail_page_open_picture (BwDetailPage *self, GFile *file)
{
  g_return_if_fail (BW_IS_DETAIL_PAGE (self) && G_IS_FILE (file));
  bw_page_show_view (BW_PAGE (self), "preview");
  bw_preview_panel_open (self->preview, file);
}
