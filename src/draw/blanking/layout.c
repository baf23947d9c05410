/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* In heights of a line of text. */
#define LEAST_CURVE 3.0
#define LEAST_NAMED_CURVE 4.2

#define MARGIN_SHARE 0.1 /* of blanking, shown before and after it */
#define CAPTION_LINES 3

/**
 * bw_blanking_bands:
 * @bands_s: (out): in seconds after the datum
 *
 * Where the edges may lie that the limits tie to the datum: the start of blanking, the trailing
 * edge of sync, the start of the burst, the end of blanking. There are none for tri-level sync,
 * whose datum lies within.
 *
 * Returns: how many bands there are
 */
guint
bw_blanking_bands (const BwBlankingView *what, BwRange bands_s[BW_BLANKING_BANDS])
{
  static const BwReadingKind readings[BW_BLANKING_BANDS] = {
    BW_READING_FRONT_PORCH, BW_READING_LINE_SYNC, BW_READING_BURST_START, BW_READING_SYNC_TO_PICTURE
  };
  guint n = 0;
  if (what->limits == NULL || what->raster->sync_shape == BW_SHAPE_TRILEVEL)
    return 0;
  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      const BwBands *bands = &what->limits->at[readings[i]];
      if (bands->n < 2)
        continue;
      BwRange range = bands->at[1];
      bands_s[n++] = readings[i] == BW_READING_FRONT_PORCH ? (BwRange){ -range.high, -range.low }
                                                           : range;
    }
  return n;
}

/**
 * bw_blanking_burst:
 * @burst_s: (out): from its start to its end, in seconds after the datum, both nominal
 *
 * Returns: whether the limits say where the burst stands, and it stands on the back porch
 */
gboolean
bw_blanking_burst (const BwBlankingView *what, BwRange *burst_s)
{
  const BwStandardLimits *limits = what->limits;
  BwLineShape shape;

  if (limits == NULL || limits->at[BW_READING_BURST_START].n < 2
      || limits->at[BW_READING_BURST_LENGTH].n < 2)
    return FALSE;
  bw_line_shape_init (&shape, what->raster);
  burst_s->low = limits->at[BW_READING_BURST_START].at[0].low;
  burst_s->high = burst_s->low + limits->at[BW_READING_BURST_LENGTH].at[0].low;
  return burst_s->low > shape.start_s[BW_INTERVAL_BACK_PORCH]
         && burst_s->high < bw_line_shape_blanking_end (&shape);
}

/* Across the page */

static void
place_across (BwBlankingLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwLineShape *shape = &layout->shape;
  double widest = bw_blanking_keeps (layout, BW_BLANKING_LEAVE_NAMES)
                      ? bw_line_names_width (shape, canvas)
                      : 0;

  layout->panel.left = widest + 2 * canvas->pad;
  layout->panel.right = MAX (canvas->width - 2 * canvas->pad, layout->panel.left + 1);

  double start_s = bw_blanking_start (shape), end_s = bw_line_shape_blanking_end (shape);
  double beside_s = MARGIN_SHARE * (end_s - start_s)
                    + bw_line_shape_length (shape, BW_INTERVAL_BORDER_LEFT);
  layout->panel.from_s = start_s - beside_s;
  layout->panel.to_s = end_s + beside_s;
}

/* Down the page */

static double
row_height (const BwDimRow *row)
{
  return row->n > 0 ? row->before + row->after : 0;
}

/* The dimensions of the burst stand between the name of the datum and the burst. */
static gboolean
place_burst (BwBlankingLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double peak_y = bw_line_panel_y (&layout->panel, BW_BURST_PEAK);

  layout->burst.y = peak_y - layout->burst.after - canvas->pad;
  layout->burst.from_y = bw_line_panel_y (&layout->panel, BW_LEVEL_BLANKING);
  return layout->burst.n == 0
         || layout->burst.y - layout->burst.before >= layout->panel.top + canvas->text_height;
}

/* Returns whether the curve is high enough. */
static gboolean
place_down (BwBlankingLayout *layout, double caption_height)
{
  const BwCanvas *canvas = layout->canvas;
  double line = canvas->text_height;
  double air = line * CLAMP ((canvas->height / line - 18) / 30, 0, 1);
  double above = row_height (&layout->to_end) + row_height (&layout->to_burst);
  double below = row_height (&layout->intervals) + row_height (&layout->blanking);
  double least = bw_blanking_keeps (layout, BW_BLANKING_LEAVE_NAMES) ? LEAST_NAMED_CURVE
                                                                     : LEAST_CURVE;
  double curve = canvas->height - above - below - 4 * air - 4 * canvas->pad - caption_height;

  layout->to_end.y = canvas->pad + layout->to_end.before;
  layout->to_burst.y = canvas->pad + row_height (&layout->to_end) + layout->to_burst.before;
  layout->panel.top = canvas->pad + above + air;
  layout->panel.bottom = layout->panel.top + MAX (curve, line);
  layout->intervals.y = layout->panel.bottom + canvas->pad + air + layout->intervals.before;
  layout->blanking.y = layout->intervals.y + layout->intervals.after + air
                       + layout->blanking.before;
  layout->to_end
      .from_y = layout->to_burst
                    .from_y = layout->intervals
                                  .from_y = layout->blanking
                                                .from_y = bw_line_panel_y (&layout->panel,
                                                                           BW_LEVEL_BLANKING);
  return place_burst (layout) && curve >= least * line;
}

/* Labels */

/* The datum is named with what it is, if that has room before the next line that comes down. */
static gboolean
claim_datum (BwBlankingLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double x = bw_line_panel_x (&layout->panel, 0) + canvas->pad * 0.75;
  const BwDimRow *next = layout->to_burst.n > 0 ? &layout->to_burst : &layout->to_end;
  double end = next->n > 0
                   ? next->at[0].x1
                   : bw_line_panel_x (&layout->panel, bw_line_shape_blanking_end (&layout->shape));
  const char *full = layout->shape.trilevel ? _ ("0H, the crossing in the middle of sync")
                                            : _ ("0H, the leading edge of sync");
  gboolean fits = bw_canvas_measure (canvas, full).width <= end - x - canvas->pad / 2;
  return bw_canvas_claim_at (canvas, fits ? full : "0H", BW_INK_ACCENT, x, layout->panel.top, 0, 0);
}

/**
 * bw_blanking_try:
 *
 * Lays everything out with what @layout keeps.
 *
 * Returns: whether all of that has a place
 */
gboolean
bw_blanking_try (BwBlankingLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_blanking_caption (layout->what);
  int lines = bw_blanking_keeps (layout, BW_BLANKING_LEAVE_LONG_CAPTION) ? CAPTION_LINES : 1;
  double height = bw_canvas_words_height (canvas, caption, lines);
  bw_canvas_clear (canvas);
  place_across (layout);
  bw_blanking_rows_size (layout);
  gboolean all = place_down (layout, height);
  all &= bw_dim_row_claim (&layout->intervals, canvas);
  all &= bw_canvas_claim_words (canvas, caption, BW_INK_GRAPHITE,
                                canvas->height - canvas->pad - height, height);
  all &= bw_dim_row_claim (&layout->blanking, canvas);
  all &= bw_dim_row_claim (&layout->to_end, canvas);
  all &= bw_dim_row_claim (&layout->to_burst, canvas);
  all &= claim_datum (layout);
  all &= bw_dim_row_claim (&layout->burst, canvas);
  if (bw_blanking_keeps (layout, BW_BLANKING_LEAVE_NAMES))
    all &= bw_line_panel_claim_names (&layout->panel, &layout->shape, canvas);
  return all;
}
