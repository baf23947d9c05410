/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "grid-private.h"

/* Where the heads and cells of the table stand: the heads stay in place while the cells scroll
 * behind them. */

#define HEAD_SHARE 0.38
#define HEAD_MIN 170
#define HEAD_MAX 300
#define COLUMN_MIN 120

static int
natural_height (GtkWidget *widget, int width)
{
  int natural;
  gtk_widget_measure (widget, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

static int
minimum_width (GtkWidget *widget)
{
  int minimum;
  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  return minimum;
}

static int
column_minimum (BwFitGrid *self)
{
  int width = COLUMN_MIN;
  for (guint i = 0; i < self->column_heads->len; i++)
    width = MAX (width, minimum_width (self->column_heads->pdata[i]));
  for (guint i = 0; i < self->at->len; i++)
    width = MAX (width, minimum_width (self->at->pdata[i]));
  return width;
}

static int
row_height (BwFitGrid *self, guint source)
{
  int height = natural_height (self->row_heads->pdata[source], self->layout.head_width);
  for (guint input = 0; input < self->n_inputs; input++)
    {
      GtkWidget *cell = self->at->pdata[source * self->n_inputs + input];
      height = MAX (height, natural_height (cell, self->layout.column_width));
    }
  return height;
}

/* Lays the table out for a window of @width pixels. */
static void
lay_out (BwFitGrid *self, int width)
{
  BwFitLayout *layout = &self->layout;
  int n_inputs = MAX (1, (int) self->n_inputs);

  layout->head_width = CLAMP ((int) (width * HEAD_SHARE), HEAD_MIN, HEAD_MAX);
  layout->column_width = MAX (column_minimum (self), (width - layout->head_width) / n_inputs);
  layout->head_height = natural_height (self->corner, layout->head_width);
  for (guint i = 0; i < self->column_heads->len; i++)
    layout->head_height = MAX (layout->head_height,
                               natural_height (self->column_heads->pdata[i], layout->column_width));
  layout->row_y = g_renew (int, layout->row_y, self->n_sources + 1);
  layout->row_y[0] = 0;
  for (guint source = 0; source < self->n_sources; source++)
    layout->row_y[source + 1] = layout->row_y[source] + row_height (self, source);
}

static int
cells_width (BwFitGrid *self)
{
  return self->layout.column_width * (int) self->n_inputs;
}

static int
cells_height (BwFitGrid *self)
{
  return self->layout.row_y[self->n_sources];
}

static void
bw_fit_grid_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                     int *natural, int *minimum_baseline, int *natural_baseline)
{
  BwFitGrid *self = BW_FIT_GRID (widget);
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      int columns = column_minimum (self) * (int) self->n_inputs;
      *minimum = HEAD_MIN + COLUMN_MIN;
      *natural = MAX (*minimum, HEAD_MIN + columns);
      return;
    }
  lay_out (self, for_size > 0 ? for_size : HEAD_MIN + COLUMN_MIN);
  *natural = self->layout.head_height + cells_height (self);
  *minimum = MIN (*natural, self->layout.head_height + 40);
}

/* Scrolling */

static int
offset (GtkAdjustment *adjustment)
{
  return adjustment != NULL ? (int) gtk_adjustment_get_value (adjustment) : 0;
}

static void
configure (GtkAdjustment *adjustment, int content, int seen)
{
  if (adjustment == NULL)
    return;
  seen = MAX (seen, 1);
  double value = CLAMP (gtk_adjustment_get_value (adjustment), 0, MAX (0, content - seen));
  gtk_adjustment_configure (adjustment, value, 0, MAX (content, seen), seen * 0.1, seen * 0.9,
                            seen);
}

static void
show_span (GtkAdjustment *adjustment, int start, int size)
{
  if (adjustment != NULL)
    gtk_adjustment_clamp_page (adjustment, start, start + size);
}

/* Scrolls so that the selected cell is seen whole; to be called when all is laid out. */
static void
scroll_to_selected (BwFitGrid *self)
{
  guint source = bw_document_get_source (self->document);
  guint input = bw_document_get_input (self->document);

  self->scroll_to_selected = FALSE;
  if (source >= self->n_sources || input >= self->n_inputs)
    return;
  int y = self->layout.row_y[source];
  show_span (self->across, self->layout.column_width * (int) input, self->layout.column_width);
  show_span (self->down, y, self->layout.row_y[source + 1] - y);
}

/**
 * bw_fit_grid_scroll_to_selected:
 *
 * Scrolls so that the selected cell is seen whole, as soon as its place is known.
 */
void
bw_fit_grid_scroll_to_selected (BwFitGrid *self)
{
  self->scroll_to_selected = TRUE;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/**
 * bw_fit_grid_set_adjustment:
 * @place: where the grid keeps it
 * @adjustment: (nullable): from the scrolled window
 */
void
bw_fit_grid_set_adjustment (BwFitGrid *self, GtkAdjustment **place, GtkAdjustment *adjustment)
{
  if (*place != NULL)
    g_signal_handlers_disconnect_by_func (*place, gtk_widget_queue_allocate, self);
  g_set_object (place, adjustment);
  if (adjustment != NULL)
    g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (gtk_widget_queue_allocate),
                              self);
}

/* Allocation and drawing */

static void
allocate (GtkWidget *child, int x, int y, int width, int height)
{
  gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, width, height }, -1);
}

static void
allocate_row (BwFitGrid *self, guint source, int x0, int y0)
{
  const BwFitLayout *layout = &self->layout;
  int y = y0 + layout->row_y[source];
  int height = layout->row_y[source + 1] - layout->row_y[source];

  allocate (self->row_heads->pdata[source], 0, y, layout->head_width, height);
  for (guint input = 0; input < self->n_inputs; input++)
    allocate (self->at->pdata[source * self->n_inputs + input],
              x0 + (int) input * layout->column_width, y, layout->column_width, height);
}

static void
bw_fit_grid_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BwFitGrid *self = BW_FIT_GRID (widget);
  const BwFitLayout *layout = &self->layout;

  lay_out (self, width);
  configure (self->across, cells_width (self), width - layout->head_width);
  configure (self->down, cells_height (self), height - layout->head_height);
  if (self->scroll_to_selected)
    scroll_to_selected (self);

  int x0 = layout->head_width - offset (self->across);
  int y0 = layout->head_height - offset (self->down);
  for (guint source = 0; source < self->n_sources; source++)
    allocate_row (self, source, x0, y0);
  for (guint input = 0; input < self->n_inputs; input++)
    allocate (self->column_heads->pdata[input], x0 + (int) input * layout->column_width, 0,
              layout->column_width, layout->head_height);
  allocate (self->corner, 0, 0, layout->head_width, layout->head_height);
}

static void
snapshot_clipped (BwFitGrid *self, GPtrArray *children, GtkSnapshot *snapshot, int x, int y)
{
  GtkWidget *widget = GTK_WIDGET (self);
  float width = (float) (gtk_widget_get_width (widget) - x);
  float height = (float) (gtk_widget_get_height (widget) - y);
  graphene_rect_t area = GRAPHENE_RECT_INIT ((float) x, (float) y, width, height);

  gtk_snapshot_push_clip (snapshot, &area);
  for (guint i = 0; i < children->len; i++)
    gtk_widget_snapshot_child (widget, children->pdata[i], snapshot);
  gtk_snapshot_pop (snapshot);
}

static void
bw_fit_grid_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwFitGrid *self = BW_FIT_GRID (widget);
  const BwFitLayout *layout = &self->layout;

  snapshot_clipped (self, self->at, snapshot, layout->head_width, layout->head_height);
  snapshot_clipped (self, self->row_heads, snapshot, 0, layout->head_height);
  snapshot_clipped (self, self->column_heads, snapshot, layout->head_width, 0);
  gtk_widget_snapshot_child (widget, self->corner, snapshot);
}

static GtkSizeRequestMode
bw_fit_grid_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

void
bw_fit_grid_layout_class_init (GtkWidgetClass *widget_class)
{
  widget_class->get_request_mode = bw_fit_grid_get_request_mode;
  widget_class->measure = bw_fit_grid_measure;
  widget_class->size_allocate = bw_fit_grid_size_allocate;
  widget_class->snapshot = bw_fit_grid_snapshot;
}
