/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "read.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/base/text.h"

/* The line is laid out on a page that is wider than what is shown, down to this part of it. */
#define LEAST (1.0 / 12)

/**
 * bw_line_page_init:
 * @page: (out caller-allocates)
 * @across: (nullable): what is shown; %NULL for all
 * @width: of the page
 */
void
bw_line_page_init (BwLinePage *page, const BwViewRange *across, double width)
{
  g_return_if_fail (page != NULL);
  bw_view_range_init (&page->across, 0, 1, LEAST);
  if (across != NULL)
    page->across = *across;
  page->width = width / (page->across.to - page->across.from);
  page->from_x = page->across.from * page->width;
}

/**
 * bw_line_page_zoom:
 *
 * Tells @drawing what it shows.
 */
void
bw_line_page_zoom (const BwLinePage *page, BwDrawing *drawing)
{
  g_return_if_fail (page != NULL && drawing != NULL);
  bw_drawing_zoom_across (drawing, &page->across, page->from_x,
                          page->from_x + bw_drawing_width (drawing));
}

typedef struct
{
  BwLineShape shape;
  char mark;
} Line;

/* At which level the signal stands in an interval of the line. */
static const char *
level_words (BwLineInterval interval, gboolean trilevel)
{
  switch (interval)
    {
    case BW_INTERVAL_SYNC:
      return trilevel ? _ ("below or above blanking") : _ ("at the sync tip");
    case BW_INTERVAL_ACTIVE:
      return _ ("between black and white");
    default:
      return _ ("at blanking");
    }
}

static gboolean
is_in_burst (const BwLineShape *shape, double time_s)
{
  return bw_line_shape_has_burst (shape) && time_s >= shape->burst_from_s
         && time_s <= shape->burst_to_s;
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Line *line = data;
  double time_s = point->across;
  BwLineInterval interval = bw_line_shape_at (&line->shape, time_s);
  g_autofree char *time = bw_text_time (time_s, line->mark);
  /* Translators: time before the reference edge of the line, the interval there, its length. */
  return g_strdup_printf (time_s < 0 ? _ ("%1$s before 0H: %2$s, %3$s")
                                     /* Translators: time after the reference edge of the line, the interval there, its length. */
                                     : _ ("%1$s after 0H: %2$s, %3$s"),
                          time, bw_line_interval_label (interval),
                          is_in_burst (&line->shape, time_s)
                              ? _ ("in the burst")
                              : level_words (interval, line->shape.trilevel));
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Line *line = data;
  g_autofree char *span = bw_text_span (b->across - a->across, line->mark);
  return g_strdup_printf (_ ("Between the cursors: %s"), span);
}

/**
 * bw_line_take_reader:
 * @drawing: whose points are seconds after 0H across
 * @shape: copied
 * @mark: the decimal mark
 */
void
bw_line_take_reader (BwDrawing *drawing, BwCursorStyle style, const BwLineShape *shape, char mark)
{
  g_return_if_fail (drawing != NULL && shape != NULL);
  const BwDrawingReader reader = { style, words, difference, g_free };
  Line *line = g_new (Line, 1);

  *line = (Line){ *shape, mark };
  bw_drawing_take_reader (drawing, &reader, line);
}
