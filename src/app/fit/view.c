/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view.h"

#include <math.h>

#include "app/widgets/empty-page.h"
#include "app/widgets/template.h"
#include "findings-view.h"
#include "grid.h"

/**
 * BwFitView:
 *
 * Which source shows at which input, and why: the table, and under it the findings of the selected
 * cell.
 */
struct _BwFitView
{
  GtkWidget parent_instance;

  GtkStack *stack;
  BwEmptyPage *empty;
  GtkPaned *table;
  BwFitGrid *grid;
  BwFindingsView *findings;

  BwDocument *document;
  double share; /* of the table, that the handle is still to be put at; zero: it stands */
  guint put_id; /* zero: not now */
};

G_DEFINE_FINAL_TYPE (BwFitView, bw_fit_view, GTK_TYPE_WIDGET)

static void
update (BwFitView *self)
{
  gboolean lacking = bw_empty_page_update (self->empty, self->document, NULL);
  gtk_stack_set_visible_child (self->stack,
                               lacking ? GTK_WIDGET (self->empty) : GTK_WIDGET (self->table));
}

/* The handle. Whether the person has set it is known to the panes, since nothing else does. */

#define SHARE_KEY "/under"

static int
table_height (BwFitView *self)
{
  return gtk_widget_get_height (GTK_WIDGET (self->table));
}

/* Not while the widgets get their places: moving the handle asks for new ones. */
static gboolean
on_put_handle (gpointer data)
{
  BwFitView *self = data;

  self->put_id = 0;
  gtk_paned_set_position (self->table, (int) round (table_height (self) * self->share));
  self->share = 0;
  return G_SOURCE_REMOVE;
}

/* Once it is known how high the panes are; from then on they move the handle with their height. */
static void
on_placed (BwFitView *self)
{
  if (self->share > 0 && self->put_id == 0 && table_height (self) > 0)
    self->put_id = g_idle_add_full (GTK_PRIORITY_RESIZE, on_put_handle, self, NULL);
}

/**
 * bw_fit_view_keep_handle:
 * @name: the view's, unique in the window
 * @shares: where to put it
 *
 * Adds the share that the person has given the table above its findings, as
 * bw_picture_panel_keep_handle() does for a drawing.
 */
void
bw_fit_view_keep_handle (BwFitView *self, const char *name, GVariantDict *shares)
{
  g_return_if_fail (BW_IS_FIT_VIEW (self) && name != NULL && shares != NULL);
  g_autofree char *key = g_strconcat (name, SHARE_KEY, NULL);
  gboolean is_set = FALSE;
  double share = self->share;

  g_object_get (self->table, "position-set", &is_set, NULL);
  if (share <= 0 && is_set && table_height (self) > 0)
    share = (double) gtk_paned_get_position (self->table) / table_height (self);
  if (share > 0)
    g_variant_dict_insert (shares, key, "d", share);
}

/**
 * bw_fit_view_put_handle:
 * @name: the view's, unique in the window
 * @shares: what bw_fit_view_keep_handle() has made
 *
 * Puts the handle where it was left, if that is in @shares.
 */
void
bw_fit_view_put_handle (BwFitView *self, const char *name, GVariantDict *shares)
{
  g_return_if_fail (BW_IS_FIT_VIEW (self) && name != NULL && shares != NULL);
  g_autofree char *key = g_strconcat (name, SHARE_KEY, NULL);
  double share;

  if (!g_variant_dict_lookup (shares, key, "d", &share) || !(share > 0 && share < 1))
    return;
  self->share = share;
  on_placed (self);
}

static void
bw_fit_view_dispose (GObject *object)
{
  g_clear_handle_id (&BW_FIT_VIEW (object)->put_id, g_source_remove);
  g_clear_object (&BW_FIT_VIEW (object)->document);
  bw_dispose_template (object, BW_TYPE_FIT_VIEW);
  G_OBJECT_CLASS (bw_fit_view_parent_class)->dispose (object);
}

static void
bw_fit_view_class_init (BwFitViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_fit_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/fit-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BwFitView, stack);
  gtk_widget_class_bind_template_child (widget_class, BwFitView, empty);
  gtk_widget_class_bind_template_child (widget_class, BwFitView, table);
  gtk_widget_class_bind_template_child (widget_class, BwFitView, grid);
  gtk_widget_class_bind_template_child (widget_class, BwFitView, findings);
}

static void
bw_fit_view_init (BwFitView *self)
{
  g_type_ensure (BW_TYPE_EMPTY_PAGE);
  g_type_ensure (BW_TYPE_FIT_GRID);
  g_type_ensure (BW_TYPE_FINDINGS_VIEW);
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->table, "notify::max-position", G_CALLBACK (on_placed), self,
                           G_CONNECT_SWAPPED);
}

/**
 * bw_fit_view_set_document:
 * @document: what to show; to be set once
 */
void
bw_fit_view_set_document (BwFitView *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  bw_fit_grid_set_document (self->grid, document);
  bw_findings_view_set_document (self->findings, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_fit_view_focus:
 *
 * Moves the focus to the selected cell, or to the button that says what to do first.
 */
void
bw_fit_view_focus (BwFitView *self)
{
  BwFitCell *cell = bw_fit_grid_get_cell (self->grid, bw_document_get_source (self->document),
                                          bw_document_get_input (self->document));
  if (cell != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (cell));
  else
    gtk_widget_child_focus (GTK_WIDGET (self->empty), GTK_DIR_TAB_FORWARD);
}
