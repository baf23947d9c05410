/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "side-layout.h"

/**
 * BwSideLayout:
 *
 * Lays out two children: side by side where there is width for both, the first taking what is left
 * over; else the second under the first. Side by side the first is not higher than what is seen at
 * once, however long the second is.
 */
struct _BwSideLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (BwSideLayout, bw_side_layout, GTK_TYPE_LAYOUT_MANAGER)

#define GAP 24
#define FIRST_WIDTH 620 /* the first child is not squeezed below this beside the second */
#define SECOND_SHARE_MAX 0.4

static int
measure (GtkWidget *child, GtkOrientation orientation, int for_size, int *minimum)
{
  int natural;
  gtk_widget_measure (child, orientation, for_size, minimum, &natural, NULL, NULL);
  return natural;
}

/* The width of the second child beside the first; zero if it goes under it. */
static int
second_width (GtkWidget *second, int width)
{
  int minimum;
  int natural = measure (second, GTK_ORIENTATION_HORIZONTAL, -1, &minimum);
  int wanted = CLAMP (natural, minimum, MAX (minimum, (int) (width * SECOND_SHARE_MAX)));
  return width >= FIRST_WIDTH + GAP + wanted ? wanted : 0;
}

static GtkSizeRequestMode
bw_side_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
measure_height (GtkWidget *first, GtkWidget *second, int width, int *minimum, int *natural)
{
  int beside = width > 0 ? second_width (second, width) : 0;
  int first_minimum, second_minimum;
  int first_natural = measure (first, GTK_ORIENTATION_VERTICAL,
                               beside > 0 ? width - GAP - beside : width, &first_minimum);
  int second_natural = measure (second, GTK_ORIENTATION_VERTICAL, beside > 0 ? beside : width,
                                &second_minimum);

  if (beside > 0)
    {
      *minimum = MAX (first_minimum, second_minimum);
      *natural = MAX (first_natural, second_natural);
    }
  else
    {
      *minimum = first_minimum + GAP + second_minimum;
      *natural = first_natural + GAP + second_natural;
    }
}

static void
bw_side_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                        int for_size, int *minimum, int *natural, int *minimum_baseline,
                        int *natural_baseline)
{
  GtkWidget *first = gtk_widget_get_first_child (widget);
  GtkWidget *second = gtk_widget_get_next_sibling (first);
  int first_minimum, second_minimum;

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      measure_height (first, second, for_size, minimum, natural);
      return;
    }
  int first_natural = measure (first, orientation, -1, &first_minimum);
  int second_natural = measure (second, orientation, -1, &second_minimum);
  *minimum = MAX (first_minimum, second_minimum);
  *natural = first_natural + GAP + second_natural;
}

static void
allocate (GtkWidget *child, int x, int y, int width, int height)
{
  gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, width, height }, -1);
}

/* Of what a scrolled window shows of the children at once; @height where it is not scrolled. */
static int
seen_height (GtkWidget *widget, int height)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (widget, GTK_TYPE_VIEWPORT);
  int around = gtk_widget_get_allocated_height (widget) - height;
  return viewport != NULL ? gtk_widget_get_height (viewport) - around : height;
}

static void
bw_side_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                         int baseline)
{
  GtkWidget *first = gtk_widget_get_first_child (widget);
  GtkWidget *second = gtk_widget_get_next_sibling (first);
  int beside = second_width (second, width);
  int minimum;

  if (beside > 0)
    {
      int first_width = width - GAP - beside;
      measure (first, GTK_ORIENTATION_VERTICAL, first_width, &minimum);
      allocate (first, 0, 0, first_width,
                CLAMP (seen_height (widget, height), MIN (minimum, height), height));
      allocate (second, width - beside, 0, beside, height);
      return;
    }
  measure (second, GTK_ORIENTATION_VERTICAL, width, &minimum);
  allocate (first, 0, 0, width, height - GAP - minimum);
  allocate (second, 0, height - minimum, width, minimum);
}

static void
bw_side_layout_class_init (BwSideLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->get_request_mode = bw_side_layout_get_request_mode;
  layout_class->measure = bw_side_layout_measure;
  layout_class->allocate = bw_side_layout_allocate;
}

static void
bw_side_layout_init (BwSideLayout *self)
{
}
