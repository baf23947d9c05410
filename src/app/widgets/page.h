/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "picture-panel.h"

G_BEGIN_DECLS

#define BW_TYPE_PAGE (bw_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (BwPage, bw_page, BW, PAGE, GtkWidget)

/**
 * BwPageClass:
 * @set_document: shows @document; called once, before the page is seen
 * @focus: (nullable): moves the focus to what the page is about; where it is not given, the focus
 *   goes to the first widget that takes it
 * @keep_handle: (nullable): adds where the page's own handle was left, if it has one
 * @put_handle: (nullable): puts it there
 *
 * All that the window knows of a page. A page makes its views in its init and adds them with
 * bw_page_add_view() and bw_page_add_panel(); the first one is shown.
 */
struct _BwPageClass
{
  GtkWidgetClass parent_class;

  void (*set_document) (BwPage *self, BwDocument *document);
  void (*focus) (BwPage *self);
  void (*keep_handle) (BwPage *self, const char *name, GVariantDict *shares);
  void (*put_handle) (BwPage *self, const char *name, GVariantDict *shares);
};

void bw_page_add_view (BwPage *self, const char *id, const char *label, const char *tooltip,
                       GtkWidget *child, BwPicturePanel *panel);
void bw_page_add_panel (BwPage *self, GtkWidget *child, BwPicturePanel *panel);

void bw_page_set_document (BwPage *self, BwDocument *document);
void bw_page_focus (BwPage *self);
void bw_page_show_view (BwPage *self, const char *id);
gboolean bw_page_has_view (BwPage *self, const char *id);
const char *bw_page_get_view (BwPage *self);
BwPicturePanel *bw_page_get_panel (BwPage *self);
void bw_page_keep_handles (BwPage *self, const char *id, GVariantDict *shares);
void bw_page_put_handles (BwPage *self, const char *id, GVariantDict *shares);

G_END_DECLS
