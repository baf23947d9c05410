/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "grid-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/in-sight.h"
#include "app/widgets/result-view.h"
#include "core/hookup/plan.h"

/* The cells and heads that are there: those in sight, and the selected cell, which has the focus or
 * gets it by Tab. Each is used for one place of the table after another, as lists of the toolkit do
 * with their rows. A cell that is there always shows what the sheet says now. */

static gpointer
place (guint source, guint input)
{
  return GUINT_TO_POINTER (source * BW_SHEET_MAX_INPUTS + input);
}

/* Keeps a number and its unit on one line. */
static char *
unbroken (const char *name)
{
  GString *text = g_string_new (name);
  g_string_replace (text, " Hz", "\u00a0Hz", 0);
  return g_string_free (text, FALSE);
}

/* Filling */

static void
show_row_head (BwFitGrid *self, GtkWidget *head, guint source)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  const BwSource *shown = bw_sheet_source (sheet, source);
  const BwRaster *raster = bw_sheet_raster (sheet, bw_document_get_catalogue (self->document),
                                            shown);
  GtkWidget *name = gtk_widget_get_first_child (head);
  g_autofree char *raster_name = raster != NULL ? unbroken (raster->name)
                                                 : g_strdup (_ ("raster not known"));

  gtk_label_set_label (GTK_LABEL (name), shown->name);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_next_sibling (name)), raster_name);
}

static gboolean
is_selected (BwFitGrid *self, guint source, guint input)
{
  return source == bw_document_get_source (self->document)
         && input == bw_document_get_input (self->document);
}

static void
show_pressed (BwFitGrid *self, BwFitCell *cell)
{
  gboolean was_selecting = self->selecting;
  self->selecting = TRUE;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (cell),
                                is_selected (self, bw_fit_cell_get_source (cell),
                                             bw_fit_cell_get_input (cell)));
  self->selecting = was_selecting;
}

/* What a plan makes of the cell: what it needs, or that nothing leads there. */
static void
show_plan (BwFitGrid *self, BwFitCell *cell)
{
  guint source = bw_fit_cell_get_source (cell), input = bw_fit_cell_get_input (cell);
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  if (!bw_document_case (self->document, source, input, &figures, &c))
    return;
  g_auto (GStrv) needs = bw_plan_needs (bw_document_get_sheet (self->document),
                                        bw_document_get_catalogue (self->document), source, input,
                                        bw_quantity_locale_mark ());
  g_autofree char *detail = g_strdup (bw_fit_cell_get_detail (cell));
  bw_fit_judge (&c, &fit);
  bw_fit_take_plan (&fit, &c, needs != NULL);
  bw_fit_cell_show (cell, &fit, &c, needs);
  if (g_str_equal (detail, bw_fit_cell_get_detail (cell)))
    return;
  self->layout.serial++; /* other words may have another height */
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/* Plans take longer than rules: they are looked for cell by cell, while nothing else is to be
 * done. */
static gboolean
plan_next (gpointer data)
{
  BwFitGrid *self = data;
  GHashTableIter each;
  gpointer cell;

  g_hash_table_iter_init (&each, self->unplanned);
  if (g_hash_table_iter_next (&each, &cell, NULL))
    {
      g_hash_table_iter_remove (&each);
      show_plan (self, cell);
      return G_SOURCE_CONTINUE;
    }
  self->planning = 0;
  return G_SOURCE_REMOVE;
}

static void
show_cell (BwFitGrid *self, BwFitCell *cell)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  if (!bw_document_case (self->document, bw_fit_cell_get_source (cell),
                         bw_fit_cell_get_input (cell), &figures, &c))
    return;
  bw_fit_judge (&c, &fit);
  bw_fit_cell_show (cell, &fit, &c, NULL);
  if (fit.verdict < BW_VERDICT_WITH_PARTS)
    return;
  g_hash_table_add (self->unplanned, cell);
  if (self->planning == 0)
    self->planning = g_idle_add (plan_next, self);
}

/**
 * bw_fit_grid_show_all:
 *
 * Shows what the sheet says now in all that is there.
 */
void
bw_fit_grid_show_all (BwFitGrid *self)
{
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;
  GHashTableIter each;
  gpointer key, value;

  for (guint i = 0; i < self->n_inputs; i++)
    gtk_label_set_label (self->column_heads->pdata[i], bw_monitor_input (monitor, i)->name);
  g_hash_table_iter_init (&each, self->row_heads);
  while (g_hash_table_iter_next (&each, &key, &value))
    show_row_head (self, value, GPOINTER_TO_UINT (key));
  g_hash_table_iter_init (&each, self->cells);
  while (g_hash_table_iter_next (&each, NULL, &value))
    show_cell (self, value);
  self->layout.serial++;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/**
 * bw_fit_grid_show_pressed:
 *
 * Shows which cell is the selected one.
 */
void
bw_fit_grid_show_pressed (BwFitGrid *self)
{
  GHashTableIter each;
  gpointer cell;

  g_hash_table_iter_init (&each, self->cells);
  while (g_hash_table_iter_next (&each, NULL, &cell))
    show_pressed (self, cell);
}

/* Making. GTK draws later children over earlier ones, so the heads stand after the cells, which
 * scroll behind them. */

static GtkWidget *
build_cell (BwFitGrid *self)
{
  GtkWidget *cell = bw_fit_cell_new ();
  g_signal_connect_object (cell, "toggled", G_CALLBACK (bw_fit_grid_on_toggled), self,
                           G_CONNECT_SWAPPED);
  gtk_widget_insert_after (cell, GTK_WIDGET (self), NULL);
  return cell;
}

static GtkWidget *
build_row_head (BwFitGrid *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  gtk_widget_add_css_class (head, "bw-row-head");
  gtk_box_append (GTK_BOX (head), bw_row_label_new ("bw-name"));
  gtk_box_append (GTK_BOX (head), bw_row_label_new ("bw-light"));
  gtk_widget_insert_before (head, GTK_WIDGET (self), self->corner);
  return head;
}

static void
build_column_head (BwFitGrid *self)
{
  GtkWidget *head = bw_row_label_new ("bw-column-head");
  gtk_label_set_yalign (GTK_LABEL (head), 1);
  gtk_widget_insert_before (head, GTK_WIDGET (self), self->corner);
  g_ptr_array_add (self->column_heads, head);
}

/**
 * bw_fit_grid_need_cell:
 *
 * Returns: (transfer none): the cell of that place of the table, made if it is not there
 */
BwFitCell *
bw_fit_grid_need_cell (BwFitGrid *self, guint source, guint input)
{
  g_assert (source < self->n_sources && input < self->n_inputs);
  GtkWidget *cell = g_hash_table_lookup (self->cells, place (source, input));
  if (cell != NULL)
    return BW_FIT_CELL (cell);
  cell = bw_take_spare (self->spare_cells);
  if (cell == NULL)
    cell = build_cell (self);
  g_hash_table_insert (self->cells, place (source, input), cell);
  bw_fit_cell_set_place (BW_FIT_CELL (cell), source, input);
  show_cell (self, BW_FIT_CELL (cell));
  show_pressed (self, BW_FIT_CELL (cell));
  return BW_FIT_CELL (cell);
}

/**
 * bw_fit_grid_need_head:
 *
 * Returns: (transfer none): the head of the row of @source, made if it is not there
 */
GtkWidget *
bw_fit_grid_need_head (BwFitGrid *self, guint source)
{
  g_assert (source < self->n_sources);
  GtkWidget *head = g_hash_table_lookup (self->row_heads, GUINT_TO_POINTER (source));
  if (head != NULL)
    return head;
  head = bw_take_spare (self->spare_heads);
  if (head == NULL)
    head = build_row_head (self);
  g_hash_table_insert (self->row_heads, GUINT_TO_POINTER (source), head);
  show_row_head (self, head, source);
  return head;
}

/* Whether a cell must stay though it is out of sight: the selected one, and what has the focus. */
static gboolean
must_stay (BwFitGrid *self, BwFitCell *cell)
{
  guint source = bw_fit_cell_get_source (cell), input = bw_fit_cell_get_input (cell);
  return source < self->n_sources && input < self->n_inputs
         && (is_selected (self, source, input)
             || gtk_widget_get_focus_child (GTK_WIDGET (self)) == GTK_WIDGET (cell));
}

/**
 * bw_fit_grid_keep:
 *
 * Puts by what is not within @span, to be used again.
 */
void
bw_fit_grid_keep (BwFitGrid *self, const BwFitSpan *span)
{
  GHashTableIter each;
  gpointer key, value;

  g_hash_table_iter_init (&each, self->cells);
  while (g_hash_table_iter_next (&each, NULL, &value))
    {
      guint source = bw_fit_cell_get_source (value), input = bw_fit_cell_get_input (value);
      gboolean within = source >= span->first_source && source < span->end_source
                        && input >= span->first_input && input < span->end_input;
      if (within || must_stay (self, value))
        continue;
      g_hash_table_iter_remove (&each);
      g_hash_table_remove (self->unplanned, value);
      bw_put_by (self->spare_cells, value);
    }
  g_hash_table_iter_init (&each, self->row_heads);
  while (g_hash_table_iter_next (&each, &key, &value))
    {
      guint source = GPOINTER_TO_UINT (key);
      if (source >= span->first_source && source < span->end_source)
        continue;
      g_hash_table_iter_remove (&each);
      bw_put_by (self->spare_heads, value);
    }
}

/**
 * bw_fit_grid_resize:
 *
 * Takes the number of rows and columns over from the sheet. What is there and lies in the new table
 * stays, and is to be shown anew.
 */
void
bw_fit_grid_resize (BwFitGrid *self, guint n_sources, guint n_inputs)
{
  self->n_sources = n_sources;
  self->n_inputs = n_inputs;
  bw_fit_grid_keep (self, &(BwFitSpan){ 0, n_sources, 0, n_inputs });
  for (guint i = n_inputs; i < self->column_heads->len; i++)
    gtk_widget_unparent (self->column_heads->pdata[i]);
  g_ptr_array_set_size (self->column_heads, (gint) MIN (n_inputs, self->column_heads->len));
  while (self->column_heads->len < n_inputs)
    build_column_head (self);
  g_array_set_size (self->layout.rows, n_sources);
  self->layout.row_y = g_renew (int, self->layout.row_y, n_sources + 1);
  self->layout.seen = (BwFitSpan){ 0 }; /* until it is laid out */
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
bw_fit_grid_cells_init (BwFitGrid *self)
{
  self->column_heads = g_ptr_array_new ();
  self->row_heads = g_hash_table_new (NULL, NULL);
  self->cells = g_hash_table_new (NULL, NULL);
  self->unplanned = g_hash_table_new (NULL, NULL);
  self->spare_heads = g_ptr_array_new ();
  self->spare_cells = g_ptr_array_new ();
}

/* Drops all cells and heads; for dispose. */
void
bw_fit_grid_cells_clear (BwFitGrid *self)
{
  g_hash_table_remove_all (self->row_heads);
  g_hash_table_remove_all (self->cells);
  g_hash_table_remove_all (self->unplanned);
  g_ptr_array_set_size (self->column_heads, 0);
  g_ptr_array_set_size (self->spare_heads, 0);
  g_ptr_array_set_size (self->spare_cells, 0);
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL;)
    gtk_widget_unparent (child);
}
