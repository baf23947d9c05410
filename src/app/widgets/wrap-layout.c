/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wrap-layout.h"

/**
 * BwWrapLayout:
 *
 * Lays out children in their natural widths one after the other, in as many rows as it takes. A
 * child that is aligned to the end goes to the end of its row. Where words run from right to left,
 * rows do so too. With "lines-up", rows of which there are several have alike many children, one below
 * the other, where that needs no further row.
 */
struct _BwWrapLayout
{
  GtkLayoutManager parent_instance;

  guint gap; /* between children of a row; half of it between rows */
  gboolean lines_up;
};

G_DEFINE_FINAL_TYPE (BwWrapLayout, bw_wrap_layout, GTK_TYPE_LAYOUT_MANAGER)

enum
{
  PROP_GAP = 1,
  PROP_LINES_UP
};

#define GAP 12
#define COLUMNS_MAX 16

static int
measure (GtkWidget *child, GtkOrientation orientation, int for_size, int *minimum)
{
  int natural;
  gtk_widget_measure (child, orientation, for_size, minimum, &natural, NULL, NULL);
  return natural;
}

/* How far the rows are filled: the place of the next child, and the height of its row. */
typedef struct
{
  int width; /* that every row has */
  int x;
  int y;
  int height;
} Row;

static void
allocate (GtkWidget *widget, GtkWidget *child, const Row *row, int width, int height)
{
  gboolean end = gtk_widget_get_halign (child) == GTK_ALIGN_END;
  int x = end ? MAX (row->x, row->width - width) : row->x;

  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    x = row->width - x - width;
  gtk_widget_size_allocate (child, &(GtkAllocation){ x, row->y, width, height }, -1);
}

/* Lays out at @width, or only measures. Returns the height that it takes, and how many rows and
 * children there are. */
static int
lay_out_flowing (GtkWidget *widget, int gap, int width, gboolean allocates, guint *n_rows,
                 guint *n_children)
{
  Row row = { .width = width };
  int minimum;

  *n_rows = 1;
  *n_children = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      if (!gtk_widget_should_layout (child))
        continue;
      int natural = measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum);
      int own = CLAMP (natural, minimum, MAX (minimum, width));
      if (row.x > 0 && row.x + own > width)
        {
          row.y += row.height + gap / 2;
          row.x = row.height = 0;
          ++*n_rows;
        }
      ++*n_children;
      int height = measure (child, GTK_ORIENTATION_VERTICAL, own, &minimum);
      if (allocates)
        allocate (widget, child, &row, own, height);
      row.height = MAX (row.height, height);
      row.x += own + gap;
    }
  return row.y + row.height;
}

/* The width that each of @n columns needs. Returns that of all, with the gaps. */
static int
find_columns (GtkWidget *widget, int gap, guint n, int *widths)
{
  int minimum, sum = 0;
  guint at = 0;

  for (guint i = 0; i < n; i++)
    widths[i] = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_should_layout (child))
      {
        int own = measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum);
        widths[at % n] = MAX (widths[at % n], own);
        at++;
      }
  for (guint i = 0; i < n; i++)
    sum += widths[i] + (i > 0 ? gap : 0);
  return sum;
}

/* Lays out in @n columns of these widths. Returns the height that it takes. */
static int
lay_out_in_columns (GtkWidget *widget, int gap, int width, guint n, const int *widths,
                    gboolean allocates)
{
  Row row = { .width = width };
  int minimum;
  guint at = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      if (!gtk_widget_should_layout (child))
        continue;
      if (at > 0 && at % n == 0)
        {
          row.y += row.height + gap / 2;
          row.x = row.height = 0;
        }
      int height = measure (child, GTK_ORIENTATION_VERTICAL, widths[at % n], &minimum);
      if (allocates)
        allocate (widget, child, &row, widths[at % n], height);
      row.height = MAX (row.height, height);
      row.x += widths[at % n] + gap;
      at++;
    }
  return row.y + row.height;
}

/* Lays out at @width, or only measures. Returns the height that it takes. */
static int
lay_out (GtkLayoutManager *manager, GtkWidget *widget, int width, gboolean allocates)
{
  const BwWrapLayout *self = BW_WRAP_LAYOUT (manager);
  int gap = (int) self->gap, widths[COLUMNS_MAX];
  guint n_rows, n_children;
  int height = lay_out_flowing (widget, gap, width, FALSE, &n_rows, &n_children);
  guint columns = (n_children + n_rows - 1) / n_rows;

  if (self->lines_up && n_rows > 1 && columns <= COLUMNS_MAX
      && find_columns (widget, gap, columns, widths) <= width)
    return lay_out_in_columns (widget, gap, width, columns, widths, allocates);
  if (allocates)
    lay_out_flowing (widget, gap, width, TRUE, &n_rows, &n_children);
  return height;
}

static GtkSizeRequestMode
bw_wrap_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bw_wrap_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                        int for_size, int *minimum, int *natural, int *minimum_baseline,
                        int *natural_baseline)
{
  int gap = (int) BW_WRAP_LAYOUT (manager)->gap, least = 0, all = 0;

  *minimum_baseline = *natural_baseline = -1;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int child_minimum;
      if (!gtk_widget_should_layout (child))
        continue;
      all += measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &child_minimum) + (all > 0 ? gap : 0);
      least = MAX (least, child_minimum);
    }
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = least;
      *natural = all;
      return;
    }
  *minimum = *natural = lay_out (manager, widget, for_size > 0 ? for_size : all, FALSE);
}

static void
bw_wrap_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                         int baseline)
{
  lay_out (manager, widget, width, TRUE);
}

static void
bw_wrap_layout_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_GAP)
    BW_WRAP_LAYOUT (object)->gap = g_value_get_uint (value);
  else if (id == PROP_LINES_UP)
    BW_WRAP_LAYOUT (object)->lines_up = g_value_get_boolean (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
bw_wrap_layout_class_init (BwWrapLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->get_request_mode = bw_wrap_layout_get_request_mode;
  layout_class->measure = bw_wrap_layout_measure;
  layout_class->allocate = bw_wrap_layout_allocate;
  G_OBJECT_CLASS (klass)->set_property = bw_wrap_layout_set_property;
  g_object_class_install_property (G_OBJECT_CLASS (klass), PROP_GAP,
                                   g_param_spec_uint ("gap", NULL, NULL, 0, 100, GAP,
                                                      G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS));
  g_object_class_install_property (G_OBJECT_CLASS (klass), PROP_LINES_UP,
                                   g_param_spec_boolean ("lines-up", NULL, NULL, FALSE,
                                                         G_PARAM_WRITABLE
                                                             | G_PARAM_STATIC_STRINGS));
}

static void
bw_wrap_layout_init (BwWrapLayout *self)
{
  self->gap = GAP;
}

/**
 * bw_wrap_box_new:
 *
 * Returns: (transfer floating): an empty box for controls, which wrap, one below the other
 */
GtkWidget *
bw_wrap_box_new (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_set_layout_manager (box, g_object_new (BW_TYPE_WRAP_LAYOUT, "lines-up", TRUE, NULL));
  gtk_widget_set_hexpand (box, TRUE);
  return box;
}

/**
 * bw_wrap_box_append:
 * @box: made by bw_wrap_box_new()
 * @child: (transfer floating)
 *
 * Adds a child. Of a chooser or a field the name goes before the control and not over it, so that
 * the row is low.
 */
void
bw_wrap_box_append (GtkWidget *box, GtkWidget *child)
{
  if (GTK_IS_ORIENTABLE (child))
    gtk_orientable_set_orientation (GTK_ORIENTABLE (child), GTK_ORIENTATION_HORIZONTAL);
  gtk_box_append (GTK_BOX (box), child);
}
