/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "grid-private.h"

#include "app/widgets/in-sight.h"
#include "app/widgets/template.h"

/* Where the heads and cells of the table stand: the heads stay in place while the cells scroll
 * behind them. A row is as high as what it shows needs, which is known when it has come into sight;
 * until then its height is taken to be that of the others. What is in sight stays where it is when
 * the rows before it turn out otherwise. Distances across are taken from where people begin to read:
 * where that is the right, the whole is mirrored when it is allocated and drawn, and adjustments go
 * from the left all the same, as those of the toolkit do. */

#define HEAD_SHARE 0.38

/* In widths of a usual letter, so that they follow the font. */
#define HEAD_MIN_CHARS 24
#define HEAD_MAX_CHARS 43
#define COLUMN_MIN_CHARS 17

static int
chars_width (BwFitGrid *self, int chars)
{
  return PANGO_PIXELS_CEIL (chars * bw_char_width (GTK_WIDGET (self)));
}

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

/* The cell that is always there; NULL in an empty table. */
static BwFitCell *
selected_cell (BwFitGrid *self)
{
  guint source = bw_document_get_source (self->document);
  guint input = bw_document_get_input (self->document);
  if (source >= self->n_sources || input >= self->n_inputs)
    return NULL;
  return bw_fit_grid_need_cell (self, source, input);
}

static int
column_minimum (BwFitGrid *self)
{
  int width = chars_width (self, COLUMN_MIN_CHARS);
  BwFitCell *cell = self->document != NULL ? selected_cell (self) : NULL;

  for (guint i = 0; i < self->column_heads->len; i++)
    width = MAX (width, minimum_width (self->column_heads->pdata[i]));
  return cell != NULL ? MAX (width, bw_fit_cell_get_least_width (cell)) : width;
}

/* Lays the heads and columns out for a window of @width pixels. */
static void
lay_out_columns (BwFitGrid *self, int width)
{
  BwFitLayout *layout = &self->layout;
  int n_inputs = MAX (1, (int) self->n_inputs);
  int head_width = CLAMP ((int) (width * HEAD_SHARE), chars_width (self, HEAD_MIN_CHARS),
                          chars_width (self, HEAD_MAX_CHARS));
  int column_width = MAX (column_minimum (self), (width - head_width) / n_inputs);

  if (head_width != layout->head_width || column_width != layout->column_width)
    layout->serial++;
  layout->head_width = head_width;
  layout->column_width = column_width;
  layout->head_height = natural_height (self->corner, head_width);
  for (guint i = 0; i < self->column_heads->len; i++)
    layout->head_height = MAX (layout->head_height,
                               natural_height (self->column_heads->pdata[i], column_width));
}

/* Rows */

static BwFitRow *
row_at (BwFitGrid *self, guint source)
{
  return &g_array_index (self->layout.rows, BwFitRow, source);
}

/* Measures what is in sight of a row; it may be higher for a column that was in sight before.
 * Returns whether it is another height than was taken. */
static gboolean
measure_row (BwFitGrid *self, guint source)
{
  const BwFitLayout *layout = &self->layout;
  BwFitRow *row = row_at (self, source);
  int height = natural_height (bw_fit_grid_need_head (self, source), layout->head_width);

  for (guint input = layout->seen.first_input; input < layout->seen.end_input; input++)
    height = MAX (height, natural_height (GTK_WIDGET (bw_fit_grid_need_cell (self, source, input)),
                                          layout->column_width));
  if (row->measured == layout->serial)
    height = MAX (height, row->height);
  gboolean another = row->height != height;
  *row = (BwFitRow){ height, layout->serial };
  return another;
}

/* What rows that were never in sight are taken to be: as high as the others are on average. */
static int
usual_height (BwFitGrid *self)
{
  gint64 sum = 0;
  int n = 0;
  for (guint source = 0; source < self->n_sources; source++)
    if (row_at (self, source)->height > 0)
      {
        sum += row_at (self, source)->height;
        n++;
      }
  if (n > 0)
    return (int) (sum / n);
  BwFitCell *cell = selected_cell (self);
  return cell != NULL ? natural_height (GTK_WIDGET (cell), self->layout.column_width) : 0;
}

static void
place_rows (BwFitGrid *self)
{
  BwFitLayout *layout = &self->layout;
  int usual = usual_height (self);

  layout->row_y[0] = 0;
  for (guint source = 0; source < self->n_sources; source++)
    {
      int height = row_at (self, source)->height;
      layout->row_y[source + 1] = layout->row_y[source] + (height > 0 ? height : usual);
    }
}

/* The row at @y, or the last one. */
static guint
source_at (BwFitGrid *self, int y)
{
  return bw_row_at (self->layout.row_y, self->n_sources, y);
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
  int head = chars_width (self, HEAD_MIN_CHARS);

  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = 0;
  if (self->document == NULL)
    return;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = head + chars_width (self, COLUMN_MIN_CHARS);
      *natural = MAX (*minimum, head + column_minimum (self) * (int) self->n_inputs);
      return;
    }
  if (self->layout.column_width == 0)
    lay_out_columns (self, for_size > 0 ? for_size : head + chars_width (self, COLUMN_MIN_CHARS));
  place_rows (self);
  *natural = self->layout.head_height + cells_height (self);
  *minimum = MIN (*natural, self->layout.head_height + 40);
}

/* Scrolling */

static gboolean
is_mirrored (BwFitGrid *self)
{
  return gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
}

/* How much of the table is before what is seen; @mirrored: at the far end of @adjustment. */
static double
exact_offset (GtkAdjustment *adjustment, gboolean mirrored)
{
  if (adjustment == NULL)
    return 0;
  double value = gtk_adjustment_get_value (adjustment);
  return mirrored ? gtk_adjustment_get_upper (adjustment)
                        - gtk_adjustment_get_page_size (adjustment) - value
                  : value;
}

static int
offset_across (BwFitGrid *self)
{
  return (int) exact_offset (self->across, is_mirrored (self));
}

static int
offset_down (BwFitGrid *self)
{
  return (int) exact_offset (self->down, FALSE);
}

/* The table is being laid out for this value: to ask for that once more from within would leave what
 * holds the table without a place when it is next painted. */
static void
configure (BwFitGrid *self, GtkAdjustment *adjustment, gboolean mirrored, int before, int content,
           int seen)
{
  if (adjustment == NULL)
    return;
  /* A fraction of a pixel, as smooth scrolling leaves it, is kept. */
  double exact = exact_offset (adjustment, mirrored);
  if ((int) exact != before || exact > MAX (0, content - seen))
    exact = before;
  g_signal_handlers_block_by_func (adjustment, gtk_widget_queue_resize, self);
  gtk_adjustment_configure (adjustment, mirrored ? MAX (content, seen) - seen - exact : exact, 0,
                            MAX (content, seen), seen * 0.1, seen * 0.9, seen);
  g_signal_handlers_unblock_by_func (adjustment, gtk_widget_queue_resize, self);
}

/* The nearest to @value from which @size pixels at @start are seen in @seen. */
static int
clamp_span (int value, int start, int size, int seen)
{
  if (start + size > value + seen)
    value = start + size - seen;
  return MIN (value, start);
}

/* The columns in sight. */
static void
find_columns (BwFitGrid *self, int x, int seen)
{
  BwFitLayout *layout = &self->layout;
  guint first = (guint) MAX (0, x / layout->column_width);
  guint end = (guint) MAX (0, (x + seen - 1) / layout->column_width + 1);

  layout->seen.end_input = MIN (end, self->n_inputs);
  layout->seen.first_input = MIN (first, layout->seen.end_input);
}

/* Measures the rows in sight from @y on. Returns whether one is another height than was taken. */
static gboolean
find_rows (BwFitGrid *self, int y, int seen)
{
  BwFitLayout *layout = &self->layout;
  guint first = source_at (self, y), end = first;
  gboolean another = FALSE;

  while (end < self->n_sources && (end == first || layout->row_y[end] < y + seen))
    end++;
  layout->seen.first_source = first;
  layout->seen.end_source = end;
  bw_fit_grid_keep (self, &layout->seen);
  for (guint source = first; source < end; source++)
    another |= measure_row (self, source);
  if (another)
    place_rows (self);
  return another;
}

/* How often rows are measured and placed anew until all in sight are measured. Each time some are
 * left over only if those before have turned out lower than they were taken to be. */
#define ROUNDS 8

/* Finds the rows in sight, and the offset at which the row on top stays where it was. */
static int
settle_rows (BwFitGrid *self, int y, int seen)
{
  const BwFitLayout *layout = &self->layout;
  guint selected = bw_document_get_source (self->document);

  for (guint round = 0; round < ROUNDS; round++)
    {
      if (self->scroll_to_selected)
        y = clamp_span (y, layout->row_y[selected],
                        layout->row_y[selected + 1] - layout->row_y[selected], seen);
      y = CLAMP (y, 0, MAX (0, cells_height (self) - seen));
      guint top = source_at (self, y);
      int within = y - layout->row_y[top];
      if (!find_rows (self, y, seen))
        break;
      y = layout->row_y[top] + within;
    }
  return y;
}

/* Finds what is in sight in an area of that size beside the heads. */
static void
settle (BwFitGrid *self, int width, int height)
{
  int x = offset_across (self), y = offset_down (self);
  guint input = bw_document_get_input (self->document);

  if (self->scroll_to_selected)
    x = clamp_span (x, self->layout.column_width * (int) input, self->layout.column_width, width);
  x = CLAMP (x, 0, MAX (0, cells_width (self) - width));
  find_columns (self, x, width);
  y = settle_rows (self, y, height);
  self->scroll_to_selected = FALSE;
  configure (self, self->across, is_mirrored (self), x, cells_width (self), width);
  configure (self, self->down, FALSE, y, cells_height (self), height);
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
  gtk_widget_queue_resize (GTK_WIDGET (self));
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
    g_signal_handlers_disconnect_by_func (*place, gtk_widget_queue_resize, self);
  g_set_object (place, adjustment);
  if (adjustment != NULL)
    g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (gtk_widget_queue_resize),
                              self);
}

/* Allocation and drawing. A cell that is used for another place asks for another size, which the
 * toolkit takes up only while all is laid out from the window down: so scrolling queues a resize
 * and not an allocation. */

static void
allocate (BwFitGrid *self, GtkWidget *child, int x, int y, int width, int height)
{
  if (is_mirrored (self))
    x = self->layout.width - x - width;
  gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, width, height }, -1);
}

static void
allocate_cell (BwFitGrid *self, BwFitCell *cell, int x0, int y0)
{
  const BwFitLayout *layout = &self->layout;
  guint source = bw_fit_cell_get_source (cell);
  int y = layout->row_y[source], x = (int) bw_fit_cell_get_input (cell) * layout->column_width;
  int least = natural_height (GTK_WIDGET (cell), layout->column_width);

  allocate (self, GTK_WIDGET (cell), x0 + x, y0 + y, layout->column_width,
            MAX (least, layout->row_y[source + 1] - y));
}

static void
allocate_head (BwFitGrid *self, GtkWidget *head, guint source, int y0)
{
  const int *row_y = self->layout.row_y;
  allocate (self, head, 0, y0 + row_y[source], self->layout.head_width,
            row_y[source + 1] - row_y[source]);
}

static void
allocate_all (BwFitGrid *self)
{
  const BwFitLayout *layout = &self->layout;
  int x0 = layout->head_width - offset_across (self);
  int y0 = layout->head_height - offset_down (self);
  GHashTableIter each;
  gpointer key, value;

  g_hash_table_iter_init (&each, self->cells);
  while (g_hash_table_iter_next (&each, NULL, &value))
    allocate_cell (self, value, x0, y0);
  g_hash_table_iter_init (&each, self->row_heads);
  while (g_hash_table_iter_next (&each, &key, &value))
    allocate_head (self, value, GPOINTER_TO_UINT (key), y0);
  for (guint input = 0; input < self->n_inputs; input++)
    allocate (self, self->column_heads->pdata[input], x0 + (int) input * layout->column_width, 0,
              layout->column_width, layout->head_height);
}

static void
bw_fit_grid_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BwFitGrid *self = BW_FIT_GRID (widget);
  BwFitLayout *layout = &self->layout;

  if (self->document == NULL)
    return;
  layout->width = width;
  lay_out_columns (self, width);
  place_rows (self);
  layout->seen = (BwFitSpan){ 0 };
  if (self->n_sources > 0 && self->n_inputs > 0)
    settle (self, MAX (1, width - layout->head_width), MAX (1, height - layout->head_height));
  allocate_all (self);
  allocate (self, self->corner, 0, 0, layout->head_width, layout->head_height);
}

/* Lets what follows be seen only beyond @x and @y. */
static void
push_clip (BwFitGrid *self, GtkSnapshot *snapshot, int x, int y)
{
  float width = (float) (gtk_widget_get_width (GTK_WIDGET (self)) - x);
  float height = (float) (gtk_widget_get_height (GTK_WIDGET (self)) - y);
  float left = is_mirrored (self) ? 0 : (float) x;
  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (left, (float) y, width, height));
}

static void
snapshot_cells (BwFitGrid *self, GtkSnapshot *snapshot)
{
  const BwFitSpan *seen = &self->layout.seen;
  for (guint source = seen->first_source; source < seen->end_source; source++)
    for (guint input = seen->first_input; input < seen->end_input; input++)
      gtk_widget_snapshot_child (GTK_WIDGET (self),
                                 GTK_WIDGET (bw_fit_grid_need_cell (self, source, input)),
                                 snapshot);
}

static void
bw_fit_grid_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwFitGrid *self = BW_FIT_GRID (widget);
  const BwFitLayout *layout = &self->layout;

  push_clip (self, snapshot, layout->head_width, layout->head_height);
  snapshot_cells (self, snapshot);
  gtk_snapshot_pop (snapshot);
  push_clip (self, snapshot, 0, layout->head_height);
  for (guint source = layout->seen.first_source; source < layout->seen.end_source; source++)
    gtk_widget_snapshot_child (widget, bw_fit_grid_need_head (self, source), snapshot);
  gtk_snapshot_pop (snapshot);
  push_clip (self, snapshot, layout->head_width, 0);
  for (guint input = layout->seen.first_input; input < layout->seen.end_input; input++)
    gtk_widget_snapshot_child (widget, self->column_heads->pdata[input], snapshot);
  gtk_snapshot_pop (snapshot);
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
