/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "view.h"

/**
 * BwFitPage:
 *
 * Which source shows at which input, and why.
 */
struct _BwFitPage
{
  BwPage parent_instance;

  BwFitView *view; /* borrowed; a child */
};

G_DEFINE_FINAL_TYPE (BwFitPage, bw_fit_page, BW_TYPE_PAGE)

static void
bw_fit_page_set_document (BwPage *page, BwDocument *document)
{
  bw_fit_view_set_document (BW_FIT_PAGE (page)->view, document);
}

static void
bw_fit_page_focus (BwPage *page)
{
  bw_fit_view_focus (BW_FIT_PAGE (page)->view);
}

static void
bw_fit_page_keep_handle (BwPage *page, const char *name, GVariantDict *shares)
{
  bw_fit_view_keep_handle (BW_FIT_PAGE (page)->view, name, shares);
}

static void
bw_fit_page_put_handle (BwPage *page, const char *name, GVariantDict *shares)
{
  bw_fit_view_put_handle (BW_FIT_PAGE (page)->view, name, shares);
}

static void
bw_fit_page_class_init (BwFitPageClass *klass)
{
  BW_PAGE_CLASS (klass)->set_document = bw_fit_page_set_document;
  BW_PAGE_CLASS (klass)->focus = bw_fit_page_focus;
  BW_PAGE_CLASS (klass)->keep_handle = bw_fit_page_keep_handle;
  BW_PAGE_CLASS (klass)->put_handle = bw_fit_page_put_handle;
}

static void
bw_fit_page_init (BwFitPage *self)
{
  self->view = g_object_new (BW_TYPE_FIT_VIEW, NULL);
  bw_page_add_view (BW_PAGE (self), "table", _ ("Table"), NULL, GTK_WIDGET (self->view), NULL);
}
