/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* The dimensions of a blanking view, each in its row. */

static void
add_dim (BwBlankingLayout *layout, BwDimRow *row, const char *name, double from_s, double to_s,
         int pixels, int reading)
{
  char *texts[BW_N_GIVEN_DIM_FORMS];
  if (!(to_s > from_s))
    return;
  bw_blanking_dim_texts (layout, name, to_s - from_s, pixels, reading, texts);
  bw_dim_row_add (row, bw_line_panel_x (&layout->panel, from_s),
                  bw_line_panel_x (&layout->panel, to_s), (const char *const *) texts);
  for (guint form = 0; form < BW_N_GIVEN_DIM_FORMS; form++)
    g_free (texts[form]);
}

static void
add_interval (BwBlankingLayout *layout, BwDimRow *row, BwLineInterval interval, double shift_s,
              int reading)
{
  const BwLineShape *shape = &layout->shape;
  const char *name = bw_line_interval_label (interval);
  double from_s = shape->start_s[interval] + shift_s;
  if (interval == BW_INTERVAL_SYNC && shape->trilevel)
    name = _ ("sync, both halves");
  add_dim (layout, row, name, from_s, from_s + bw_line_shape_length (shape, interval),
           shape->pixels[interval], reading);
}

/* From the datum, which is in the middle of tri-level sync. */
static void
add_from_datum (BwBlankingLayout *layout)
{
  const BwLineShape *shape = &layout->shape;
  int sync = shape->trilevel ? shape->pixels[BW_INTERVAL_SYNC] / 2
                             : shape->pixels[BW_INTERVAL_SYNC];
  BwRange burst_s;

  if (!bw_blanking_keeps (layout, BW_BLANKING_LEAVE_FROM_DATUM))
    return;
  add_dim (layout, &layout->to_end, _ ("0H to the end of blanking"), 0,
           bw_line_shape_blanking_end (shape), sync + shape->pixels[BW_INTERVAL_BACK_PORCH],
           BW_READING_SYNC_TO_PICTURE);
  if (bw_blanking_burst (layout->what, &burst_s))
    add_dim (layout, &layout->to_burst, _ ("0H to burst"), 0, burst_s.low, 0,
             BW_READING_BURST_START);
}

/* The gap between sync and burst is what the trade calls the breezeway. */
static void
add_burst (BwBlankingLayout *layout)
{
  BwRange burst_s;
  if (!bw_blanking_keeps (layout, BW_BLANKING_LEAVE_BURST)
      || !bw_blanking_burst (layout->what, &burst_s))
    return;
  add_dim (layout, &layout->burst, _ ("breezeway"), layout->shape.start_s[BW_INTERVAL_BACK_PORCH],
           burst_s.low, 0, -1);
  add_dim (layout, &layout->burst, _ ("burst"), burst_s.low, burst_s.high, 0,
           BW_READING_BURST_LENGTH);
}

static void
fill_rows (BwBlankingLayout *layout)
{
  const int *pixels = layout->shape.pixels;

  add_from_datum (layout);
  add_burst (layout);
  add_interval (layout, &layout->intervals, BW_INTERVAL_FRONT_PORCH, 0, BW_READING_FRONT_PORCH);
  add_interval (layout, &layout->intervals, BW_INTERVAL_SYNC, 0, BW_READING_LINE_SYNC);
  add_interval (layout, &layout->intervals, BW_INTERVAL_BACK_PORCH, 0, -1);
  add_interval (layout, &layout->blanking, BW_INTERVAL_BORDER_RIGHT, -layout->shape.period_s, -1);
  add_dim (layout, &layout->blanking, _ ("line blanking"), bw_blanking_start (&layout->shape),
           bw_line_shape_blanking_end (&layout->shape), pixels[0] + pixels[1] + pixels[2],
           BW_READING_LINE_BLANKING);
  add_interval (layout, &layout->blanking, BW_INTERVAL_BORDER_LEFT, 0, -1);
}

/**
 * bw_blanking_rows_clear:
 *
 * Frees what the rows of @layout own.
 */
void
bw_blanking_rows_clear (BwBlankingLayout *layout)
{
  bw_dim_row_clear (&layout->to_end);
  bw_dim_row_clear (&layout->to_burst);
  bw_dim_row_clear (&layout->burst);
  bw_dim_row_clear (&layout->intervals);
  bw_dim_row_clear (&layout->blanking);
}

/**
 * bw_blanking_rows_size:
 * @layout: with its places across the page
 *
 * Fills the rows with all that @layout keeps, and finds how high each of them is.
 */
void
bw_blanking_rows_size (BwBlankingLayout *layout)
{
  BwDimRow *rows[] = { &layout->to_end, &layout->to_burst, &layout->burst, &layout->intervals,
                       &layout->blanking };
  bw_blanking_rows_clear (layout);
  layout->to_end.above = layout->to_burst.above = layout->burst.above = TRUE;
  layout->intervals.breaks = layout->breaks;
  fill_rows (layout);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    bw_dim_row_size (rows[i], layout->canvas);
}
