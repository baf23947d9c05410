/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-picture-private.h"

#include <math.h>

/* Bursts of vertical lines, one under the other, each labelled with its TV lines; beside them a
 * wedge of vertical and one of horizontal lines. Each pixel of a burst is the sine at its middle. */

#define EDGE 40.0
#define LABEL_WIDTH 130.0
#define LABEL_SIZE 40.0
#define TICK_SIZE 32.0
#define GAP 14.0
#define BURSTS_SHARE 0.5 /* of the width */
#define WEDGE_WIDEST 340.0
#define WEDGE_SHARE 0.75 /* of the width right of the bursts, at most */
#define WEDGE_FROM 150.0
#define WEDGE_TO 650.0
#define N_TICKS 5

const double bw_test_burst_tvl[BW_N_TEST_BURSTS] = { 50, 100, 200, 300, 400, 500, 600, 800, 1000 };

static double
row_height (void)
{
  return (BW_TEST_UNITS - 2 * EDGE + GAP) / BW_N_TEST_BURSTS;
}

/* From thousandths of the viewable height to whole pixels. */
static BwBox
to_pixels (const BwTestFrame *frame, BwBox box)
{
  double across = bw_test_pixels_per_height (frame) / BW_TEST_UNITS;
  double down = frame->seen.height / BW_TEST_UNITS;
  double left = ceil (frame->seen.x + box.x * across), top = ceil (frame->seen.y + box.y * down);
  double right = floor (frame->seen.x + (box.x + box.width) * across);
  double bottom = floor (frame->seen.y + (box.y + box.height) * down);

  return (BwBox){ left, top, MAX (right - left, 0), MAX (bottom - top, 0) };
}

/**
 * bw_test_burst_box:
 * @burst: its TV lines are bw_test_burst_tvl[@burst]
 * @box: (out): the pixels that the burst fills
 *
 * Returns: whether the picture can hold the burst: it has more than two pixels to a period
 */
gboolean
bw_test_burst_box (const BwTestFrame *frame, guint burst, BwBox *box)
{
  g_return_val_if_fail (frame != NULL && box != NULL, FALSE);
  double width = frame->aspect * BW_TEST_UNITS * BURSTS_SHARE - EDGE - LABEL_WIDTH - GAP;
  BwBox units = { EDGE + LABEL_WIDTH, EDGE + burst * row_height (), width, row_height () - GAP };

  *box = to_pixels (frame, units);
  return bw_test_burst_tvl[burst] < bw_test_pixels_per_height (frame);
}

static void
put (cairo_surface_t *surface, int x, int y, double sine)
{
  int stride = cairo_image_surface_get_stride (surface);
  guint8 *row = cairo_image_surface_get_data (surface) + (gsize) y * (gsize) stride;
  guint32 value = (guint32) lround (255 * (BW_TEST_MEAN + BW_TEST_SWING * sine));

  ((guint32 *) (gpointer) row)[x] = value << 16 | value << 8 | value;
}

static void
fill_burst (cairo_surface_t *surface, const BwTestFrame *frame, guint burst)
{
  BwBox box;
  double period = 2 * bw_test_pixels_per_height (frame) / bw_test_burst_tvl[burst];

  if (!bw_test_burst_box (frame, burst, &box))
    return;
  for (int y = (int) box.y; y < box.y + box.height; y++)
    for (int x = (int) box.x; x < box.x + box.width; x++)
      put (surface, x, y, sin (2 * G_PI * (x + 0.5 - box.x) / period));
}

/* Wedges, right of the bursts: one above the other, each centred in its place. */

static double
room_left (const BwTestFrame *frame)
{
  return frame->aspect * BW_TEST_UNITS * BURSTS_SHARE + GAP + EDGE;
}

static double
room_width (const BwTestFrame *frame)
{
  return frame->aspect * BW_TEST_UNITS - EDGE - room_left (frame);
}

/* Whole cycles, as many as there is room for at the wide end. */
static int
wedge_cycles (const BwTestFrame *frame)
{
  double widest = MIN (WEDGE_WIDEST, WEDGE_SHARE * room_width (frame));
  return (int) (widest * WEDGE_FROM / (2 * BW_TEST_UNITS));
}

static BwBox
wedge_box (const BwTestFrame *frame, gboolean upright)
{
  double widest = wedge_cycles (frame) * 2 * BW_TEST_UNITS / WEDGE_FROM;
  double left = room_left (frame), right = left + room_width (frame);
  double top_of_lower = BW_TEST_UNITS - EDGE - widest;

  if (upright)
    return (BwBox){ (left + right - widest) / 2, EDGE, widest,
                    top_of_lower - EDGE - TICK_SIZE - 3 * GAP };
  return (BwBox){ left, top_of_lower, right - left, widest };
}

/* The cycles of a wedge are as many at its narrow end as at the wide one: the lines converge. */
static double
wedge_sine (int n_cycles, double off, double along, double pixels_per_height)
{
  double tvl = WEDGE_FROM + (WEDGE_TO - WEDGE_FROM) * along;
  double cycles = off * tvl / (2 * pixels_per_height);

  return fabs (cycles) < n_cycles / 2.0 && tvl < pixels_per_height ? cos (2 * G_PI * cycles) : 0;
}

static void
fill_wedge (cairo_surface_t *surface, const BwTestFrame *frame, gboolean upright)
{
  BwBox box = to_pixels (frame, wedge_box (frame, upright));
  double middle_x = box.x + box.width / 2, middle_y = box.y + box.height / 2;
  int cycles = wedge_cycles (frame);

  for (int y = (int) box.y; y < box.y + box.height; y++)
    for (int x = (int) box.x; x < box.x + box.width; x++)
      {
        double right = x + 0.5 - middle_x, below = y + 0.5 - middle_y;
        if (upright)
          put (surface, x, y, wedge_sine (cycles, right, (y + 0.5 - box.y) / box.height,
                                          bw_test_pixels_per_height (frame)));
        else
          put (surface, x, y, wedge_sine (cycles, below, (x + 0.5 - box.x) / box.width,
                                          frame->seen.height));
      }
}

static void
label (cairo_t *cr, double tvl, double size, double x, double y, double across)
{
  g_autofree char *words = g_strdup_printf ("%.0f", tvl);
  bw_test_words (cr, words, size, x, y, across, 0.5);
}

static void
label_wedge (cairo_t *cr, const BwTestFrame *frame, gboolean upright)
{
  BwBox box = wedge_box (frame, upright);

  for (int i = 0; i < N_TICKS; i++)
    {
      double along = (i + 0.5) / N_TICKS;
      double tvl = WEDGE_FROM + (WEDGE_TO - WEDGE_FROM) * along;
      if (upright)
        label (cr, tvl, TICK_SIZE, box.x + box.width + GAP, box.y + along * box.height, 0);
      else
        label (cr, tvl, TICK_SIZE, box.x + along * box.width, box.y - TICK_SIZE / 2 - GAP / 2, 0.5);
    }
}

void
bw_test_draw_lines (cairo_t *cr, const BwTestFrame *frame, cairo_surface_t *surface)
{
  cairo_set_source_rgb (cr, 1, 1, 1);
  for (guint burst = 0; burst < BW_N_TEST_BURSTS; burst++)
    label (cr, bw_test_burst_tvl[burst], LABEL_SIZE, EDGE + LABEL_WIDTH - GAP,
           EDGE + (burst + 0.5) * row_height () - GAP / 2, 1);
  label_wedge (cr, frame, TRUE);
  label_wedge (cr, frame, FALSE);

  cairo_surface_flush (surface);
  for (guint burst = 0; burst < BW_N_TEST_BURSTS; burst++)
    fill_burst (surface, frame, burst);
  fill_wedge (surface, frame, TRUE);
  fill_wedge (surface, frame, FALSE);
  cairo_surface_mark_dirty (surface);
}
