/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "core/result/result.h"
#include "picture-area.h"
#include "result-view.h"

G_BEGIN_DECLS

#define BW_TYPE_PICTURE_PANEL (bw_picture_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwPicturePanel, bw_picture_panel, BW, PICTURE_PANEL, GtkWidget)

/**
 * BwPanelView:
 * @id: unique in the page that the panel stands in
 * @label: on the button that chooses it
 * @tooltip: (nullable): what it is, or why it cannot be chosen
 * @can: whether it can be chosen
 *
 * One of several drawings of a panel.
 */
typedef struct
{
  char *id;
  char *label;
  char *tooltip;
  gboolean can;
} BwPanelView;

void bw_picture_panel_add_view (BwPicturePanel *self, const char *id, const char *label,
                                const char *tooltip);
void bw_picture_panel_allow_view (BwPicturePanel *self, const char *id, gboolean can,
                                  const char *tooltip);
void bw_picture_panel_choose (BwPicturePanel *self, const char *id);
const char *bw_picture_panel_get_view (BwPicturePanel *self);
const BwPanelView *bw_picture_panel_get_nth_view (BwPicturePanel *self, guint index);
const BwPanelView *bw_picture_panel_find_view (BwPicturePanel *self, const char *id);
void bw_picture_panel_add_control (BwPicturePanel *self, GtkWidget *control);
void bw_picture_panel_add_above (BwPicturePanel *self, GtkWidget *widget);
void bw_picture_panel_add_below (BwPicturePanel *self, GtkWidget *widget);
void bw_picture_panel_add_first (BwPicturePanel *self, GtkWidget *widget);
void bw_picture_panel_add_side (BwPicturePanel *self, GtkWidget *widget);

gboolean bw_picture_panel_update_empty (BwPicturePanel *self, BwDocument *document,
                                        const BwLack *lack);
void bw_picture_panel_set_title (BwPicturePanel *self, const char *title);
void bw_picture_panel_show (BwPicturePanel *self, const BwPictureSource *source, gpointer data);
void bw_picture_panel_show_part (BwPicturePanel *self, BwResult *result, const char *key);
void bw_picture_panel_show_result (BwPicturePanel *self, BwResult *result);
void bw_picture_panel_set_cards (BwPicturePanel *self);
BwResult *bw_picture_panel_get_result (BwPicturePanel *self);

void bw_picture_panel_keep_handle (BwPicturePanel *self, const char *name, GVariantDict *shares);
void bw_picture_panel_put_handle (BwPicturePanel *self, const char *name, GVariantDict *shares);

BwPictureArea *bw_picture_panel_get_area (BwPicturePanel *self);
gboolean bw_picture_panel_has_picture (BwPicturePanel *self);
gboolean bw_picture_panel_export (BwPicturePanel *self, const char *path, GError **error);
char *bw_picture_panel_dup_file_name (BwPicturePanel *self);
void bw_picture_panel_copy (BwPicturePanel *self);

G_END_DECLS
