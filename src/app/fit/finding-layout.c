/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "finding-layout.h"

#include "app/widgets/template.h"

/**
 * BwFindingLayout:
 *
 * Lays out a finding: the columns of its figures side by side, and its sentence and remedy beside
 * them where there is room for a line of usual length, else under them from the second column on.
 * The children are in the order of BwFindingColumn. Where words run from right to left, so do the
 * columns.
 */
struct _BwFindingLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (BwFindingLayout, bw_finding_layout, GTK_TYPE_LAYOUT_MANAGER)

#define GAP 16
#define ROW_GAP 3

/* How many usual letters a sentence beside the figures has room for, at least. */
#define BESIDE_CHARS 44

#define N_CHILDREN (BW_FINDING_REMEDY + 1)

/* Where the columns stand in a given width. */
typedef struct
{
  int x[BW_N_FINDING_COLUMNS];
  int width[BW_N_FINDING_COLUMNS];
  gboolean beside; /* where the sentence stands */
  int says_x;
  int says_width;
} Columns;

static void
list_children (GtkWidget *widget, GtkWidget *children[N_CHILDREN])
{
  GtkWidget *child = gtk_widget_get_first_child (widget);
  for (guint i = 0; i < N_CHILDREN; i++, child = gtk_widget_get_next_sibling (child))
    children[i] = child;
  g_assert (child == NULL);
}

static void
find_columns (GtkWidget *widget, GtkWidget *children[N_CHILDREN], int width, Columns *columns)
{
  GtkRequestedSize sizes[BW_N_FINDING_COLUMNS];
  int left = width - (BW_N_FINDING_COLUMNS - 1) * GAP, x = 0;

  for (guint i = 0; i < BW_N_FINDING_COLUMNS; i++)
    {
      gtk_widget_measure (children[i], GTK_ORIENTATION_HORIZONTAL, -1, &sizes[i].minimum_size,
                          &sizes[i].natural_size, NULL, NULL);
      sizes[i].data = NULL;
      left -= sizes[i].minimum_size;
    }
  gtk_distribute_natural_allocation (MAX (left, 0), BW_N_FINDING_COLUMNS, sizes);
  for (guint i = 0; i < BW_N_FINDING_COLUMNS; i++)
    {
      columns->x[i] = x;
      columns->width[i] = sizes[i].minimum_size;
      x += sizes[i].minimum_size + GAP;
    }
  columns->beside = width - x >= PANGO_PIXELS_CEIL (BESIDE_CHARS * bw_char_width (widget));
  columns->says_x = columns->beside ? x : columns->x[BW_FINDING_RULE];
  columns->says_width = MAX (1, width - columns->says_x);
}

static int
height_of (GtkWidget *child, int width)
{
  int natural, least;
  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, MAX (width, least), NULL, &natural, NULL,
                      NULL);
  return natural;
}

static void
allocate (GtkWidget *widget, GtkWidget *child, int x, int y, int width, int height)
{
  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    x = gtk_widget_get_width (widget) - x - width;
  gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, width, height }, -1);
}

/* Lays out in columns @of, or only measures. Returns the height that it takes. */
static int
lay_out (GtkWidget *widget, GtkWidget *children[N_CHILDREN], const Columns *of, gboolean place)
{
  int figures = 0, y = 0;

  for (guint i = 0; i < BW_N_FINDING_COLUMNS; i++)
    {
      int height = height_of (children[i], of->width[i]);
      figures = MAX (figures, height);
      if (place)
        allocate (widget, children[i], of->x[i], 0, of->width[i], height);
    }
  if (!of->beside)
    y = figures + ROW_GAP;
  for (guint i = BW_FINDING_SAYS; i < N_CHILDREN; i++)
    {
      if (!gtk_widget_should_layout (children[i]))
        continue;
      int height = height_of (children[i], of->says_width);
      if (place)
        allocate (widget, children[i], of->says_x, y, of->says_width, height);
      y += height + ROW_GAP;
    }
  return MAX (figures, y - ROW_GAP);
}

static void
measure_width (GtkWidget *children[N_CHILDREN], int *minimum, int *natural)
{
  int figures = (BW_N_FINDING_COLUMNS - 1) * GAP, figures_least = figures;

  for (guint i = 0; i < BW_N_FINDING_COLUMNS; i++)
    {
      int least, usual;
      gtk_widget_measure (children[i], GTK_ORIENTATION_HORIZONTAL, -1, &least, &usual, NULL, NULL);
      figures += usual;
      figures_least += least;
    }
  *minimum = figures_least;
  *natural = figures;
}

static void
bw_finding_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                           int for_size, int *minimum, int *natural, int *minimum_baseline,
                           int *natural_baseline)
{
  GtkWidget *children[N_CHILDREN];
  Columns columns;

  *minimum_baseline = *natural_baseline = -1;
  list_children (widget, children);
  measure_width (children, minimum, natural);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  find_columns (widget, children, MAX (for_size, *minimum), &columns);
  *minimum = *natural = lay_out (widget, children, &columns, FALSE);
}

static void
bw_finding_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                            int baseline)
{
  GtkWidget *children[N_CHILDREN];
  Columns columns;

  list_children (widget, children);
  find_columns (widget, children, width, &columns);
  lay_out (widget, children, &columns, TRUE);
}

static GtkSizeRequestMode
bw_finding_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bw_finding_layout_class_init (BwFindingLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->get_request_mode = bw_finding_layout_get_request_mode;
  layout_class->measure = bw_finding_layout_measure;
  layout_class->allocate = bw_finding_layout_allocate;
}

static void
bw_finding_layout_init (BwFindingLayout *self)
{
}
