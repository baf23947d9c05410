/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "columns-layout.h"

/**
 * BwColumnsLayout:
 *
 * Lays out children in rows of equal columns, as many as there is width for, up to "most". Children
 * of one row start at the same height. The order of the children is that of reading.
 */
struct _BwColumnsLayout
{
  GtkLayoutManager parent_instance;

  guint most;
  guint column_width;
};

G_DEFINE_FINAL_TYPE (BwColumnsLayout, bw_columns_layout, GTK_TYPE_LAYOUT_MANAGER)

enum
{
  PROP_MOST = 1,
  PROP_COLUMN_WIDTH,
  N_PROPERTIES
};

#define GAP 14
#define ROW_GAP 8

static int
measure (GtkWidget *child, GtkOrientation orientation, int for_size, int *minimum)
{
  int natural;
  gtk_widget_measure (child, orientation, for_size, minimum, &natural, NULL, NULL);
  return natural;
}

/* What the widest child needs. */
static int
least_width (GtkWidget *widget)
{
  int least = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int minimum;
      measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum);
      least = MAX (least, minimum);
    }
  return least;
}

/* No column is narrower than a child, as it would be with large text. */
static int
n_columns (BwColumnsLayout *self, GtkWidget *widget, int width)
{
  int fit = (width + GAP) / (MAX ((int) self->column_width, least_width (widget)) + GAP);
  return CLAMP (fit, 1, (int) self->most);
}

/* Lays out at @width, or only measures. Returns the height that it takes. */
static int
lay_out (BwColumnsLayout *self, GtkWidget *widget, int width, gboolean allocate)
{
  int columns = n_columns (self, widget, width);
  int child_width = (width - (columns - 1) * GAP) / columns;
  int column = 0, y = 0, row_height = 0, minimum;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      if (!gtk_widget_should_layout (child))
        continue;
      if (column == columns)
        {
          y += row_height + ROW_GAP;
          column = row_height = 0;
        }
      int height = measure (child, GTK_ORIENTATION_VERTICAL, child_width, &minimum);
      int x = column * (child_width + GAP);
      if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
        x = width - x - child_width;
      if (allocate)
        gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, child_width, height }, -1);
      row_height = MAX (row_height, height);
      column++;
    }
  return y + row_height;
}

static GtkSizeRequestMode
bw_columns_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bw_columns_layout_measure (GtkLayoutManager *manager, GtkWidget *widget,
                           GtkOrientation orientation, int for_size, int *minimum, int *natural,
                           int *minimum_baseline, int *natural_baseline)
{
  BwColumnsLayout *self = BW_COLUMNS_LAYOUT (manager);
  int least = least_width (widget);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = least;
      *natural = MAX (least, (int) (self->most * (self->column_width + GAP)) - GAP);
      return;
    }
  *minimum = *natural = lay_out (self, widget, for_size > 0 ? for_size : least, FALSE);
}

static void
bw_columns_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                            int baseline)
{
  lay_out (BW_COLUMNS_LAYOUT (manager), widget, width, TRUE);
}

static void
bw_columns_layout_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  BwColumnsLayout *self = BW_COLUMNS_LAYOUT (object);

  switch (id)
    {
    case PROP_MOST:
      self->most = g_value_get_uint (value);
      break;
    case PROP_COLUMN_WIDTH:
      self->column_width = g_value_get_uint (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bw_columns_layout_class_init (BwColumnsLayoutClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);
  const GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT | G_PARAM_STATIC_STRINGS;

  object_class->set_property = bw_columns_layout_set_property;
  layout_class->get_request_mode = bw_columns_layout_get_request_mode;
  layout_class->measure = bw_columns_layout_measure;
  layout_class->allocate = bw_columns_layout_allocate;
  g_object_class_install_property (object_class, PROP_MOST,
                                   g_param_spec_uint ("most", NULL, NULL, 1, 20, 4, flags));
  g_object_class_install_property (
      object_class, PROP_COLUMN_WIDTH,
      g_param_spec_uint ("column-width", NULL, NULL, 40, 2000, 190, flags));
}

static void
bw_columns_layout_init (BwColumnsLayout *self)
{
}
