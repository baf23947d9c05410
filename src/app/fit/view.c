/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view.h"

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
  GtkWidget *table;
  BwFitGrid *grid;
  BwFindingsView *findings;

  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwFitView, bw_fit_view, GTK_TYPE_WIDGET)

static void
update (BwFitView *self)
{
  gboolean lacking = bw_empty_page_update (self->empty, self->document, NULL);
  gtk_stack_set_visible_child (self->stack, lacking ? GTK_WIDGET (self->empty) : self->table);
}

static void
bw_fit_view_dispose (GObject *object)
{
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
