/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* In heights of a line of text. */
#define LEAST_CURVE 2.2
#define LEAST_NAMED_CURVE 3.4
#define LEAST_GAP 1.7

#define WHOLE_SHARE 0.45  /* of the height for both curves */
#define MARGIN_SHARE 0.08 /* of blanking, shown before and after it when enlarged */
#define STUB_SHARE 0.02   /* of the line, shown before and after it */

static gboolean
keeps (const BwLineLayout *layout, BwLineLeave what)
{
  return layout->left_out <= (guint) what;
}

/* Words */

/* What follows a time: pixels and the share of the line. */
static char *
figures_text (const BwLineLayout *layout, double length_s, int pixels)
{
  return bw_line_figures_text (&layout->shape, length_s,
                               keeps (layout, BW_LEAVE_PIXELS) ? pixels : 0,
                               keeps (layout, BW_LEAVE_SHARES), layout->what->mark);
}

static void
add_dim (const BwLineLayout *layout, BwDimRow *row, const char *name, double length_s,
         const char *rest, double x0, double x1)
{
  g_autofree char *time = bw_text_us (length_s, layout->what->mark);
  bw_dim_row_add_figure (row, x0, x1, name, time, rest);
}

/* Places across the page */

static void
place_across (BwLineLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwLineShape *shape = &layout->shape;
  double widest = keeps (layout, BW_LEAVE_LOWER_NAMES) ? bw_line_names_width (shape, canvas) : 0;

  layout->whole.left = layout->part.left = widest + 2 * canvas->pad;
  layout->whole.right = layout->part.right = MAX (canvas->width
                                                      - bw_canvas_measure (canvas, "0H").width
                                                      - 2 * canvas->pad,
                                                  layout->part.left + 1);

  double stub_s = STUB_SHARE * shape->period_s;
  layout->whole.from_s = shape->start_s[0] - stub_s;
  layout->whole.to_s = shape->start_s[BW_INTERVAL_BACK_PORCH] + shape->period_s + stub_s;

  double end_s = bw_line_shape_blanking_end (shape);
  double beside_s = MARGIN_SHARE * (end_s - shape->start_s[0])
                    + bw_line_shape_length (shape, BW_INTERVAL_BORDER_LEFT);
  layout->part.from_s = shape->start_s[0] - beside_s;
  layout->part.to_s = end_s + beside_s;
}

/* Places down the page */

static void
add_interval_dim (BwLineLayout *layout, const BwLinePanel *panel, BwDimRow *row,
                  BwLineInterval interval, double shift_s)
{
  const BwLineShape *shape = &layout->shape;
  double length_s = bw_line_shape_length (shape, interval);
  double from_s = shape->start_s[interval] + shift_s;
  g_autofree char *rest = figures_text (layout, length_s, shape->pixels[interval]);
  const char *name = bw_line_interval_label (interval);

  if (interval == BW_INTERVAL_SYNC && shape->trilevel)
    name = _ ("sync, both halves");
  if (length_s > 0)
    add_dim (layout, row, name, length_s, rest, bw_line_panel_x (panel, from_s),
             bw_line_panel_x (panel, from_s + length_s));
}

/* The whole line: pixels and the line rate. */
static void
add_period_dim (BwLineLayout *layout)
{
  const BwLinePanel *whole = &layout->whole;
  double period_s = layout->shape.period_s;
  int pixels = bw_raster_h_total (layout->what->raster);
  g_autofree char *rate = bw_quantity_format (1 / period_s, BW_DIMENSION_FREQUENCY, 5,
                                              layout->what->mark);
  g_autofree char *both = g_strdup_printf ("%d\u00a0px · %s", pixels, rate);

  add_dim (layout, &layout->period, _ ("line period"), period_s,
           pixels > 0 && keeps (layout, BW_LEAVE_PIXELS) ? both : rate, bw_line_panel_x (whole, 0),
           bw_line_panel_x (whole, period_s));
}

static void
add_blanking_dim (BwLineLayout *layout)
{
  const BwLinePanel *part = &layout->part;
  const int *pixels = layout->shape.pixels;
  double start_s = layout->shape.start_s[0];
  double length_s = bw_line_shape_blanking_end (&layout->shape) - start_s;
  g_autofree char *rest = figures_text (layout, length_s, pixels[0] + pixels[1] + pixels[2]);

  add_dim (layout, &layout->blanking, _ ("line blanking"), length_s, rest,
           bw_line_panel_x (part, start_s), bw_line_panel_x (part, start_s + length_s));
}

static void
fill_rows (BwLineLayout *layout)
{
  const BwLinePanel *whole = &layout->whole, *part = &layout->part;

  add_period_dim (layout);
  add_interval_dim (layout, whole, &layout->active, BW_INTERVAL_ACTIVE, 0);
  add_interval_dim (layout, part, &layout->intervals, BW_INTERVAL_FRONT_PORCH, 0);
  add_interval_dim (layout, part, &layout->intervals, BW_INTERVAL_SYNC, 0);
  add_interval_dim (layout, part, &layout->intervals, BW_INTERVAL_BACK_PORCH, 0);
  add_interval_dim (layout, part, &layout->blanking, BW_INTERVAL_BORDER_RIGHT,
                    -layout->shape.period_s);
  add_blanking_dim (layout);
  add_interval_dim (layout, part, &layout->blanking, BW_INTERVAL_BORDER_LEFT, 0);
}

/**
 * bw_line_clear_rows:
 *
 * Frees what the rows own.
 */
void
bw_line_clear_rows (BwLineLayout *layout)
{
  BwDimRow *rows[] = { &layout->period, &layout->active, &layout->intervals, &layout->blanking };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    bw_dim_row_clear (rows[i]);
}

static void
size_rows (BwLineLayout *layout)
{
  BwDimRow *rows[] = { &layout->period, &layout->active, &layout->intervals, &layout->blanking };
  bw_line_clear_rows (layout);
  layout->period.above = layout->active.above = TRUE;
  layout->intervals.breaks = layout->breaks;
  fill_rows (layout);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    bw_dim_row_size (rows[i], layout->canvas);
}

/* More space between the rows where the page has plenty. */
static double
air_between_rows (const BwCanvas *canvas)
{
  double lines = canvas->height / canvas->text_height;
  return canvas->text_height * CLAMP ((lines - 22) / 40, 0, 1);
}

static double
row_height (const BwDimRow *row)
{
  return row->before + row->after;
}

static gboolean
is_high_enough (const BwLineLayout *layout, const BwLinePanel *panel, BwLineLeave names)
{
  double least = keeps (layout, names) ? LEAST_NAMED_CURVE : LEAST_CURVE;
  return panel->bottom - panel->top >= least * layout->canvas->text_height;
}

/* Returns whether both curves are high enough. */
static gboolean
place_down (BwLineLayout *layout, double words_height)
{
  const BwCanvas *canvas = layout->canvas;
  double line = canvas->text_height, air = air_between_rows (canvas);
  double gap = MAX (LEAST_GAP * line, 0.06 * canvas->height);
  double rows = row_height (&layout->period) + row_height (&layout->active)
                + row_height (&layout->intervals) + row_height (&layout->blanking);
  double used = rows + 6 * air + 2.5 * canvas->pad + gap + words_height;
  double curves = MAX (canvas->height - used, line);

  layout->period.y = canvas->pad + air / 2 + layout->period.before;
  layout->active.y = layout->period.y + layout->period.after + air + layout->active.before;
  layout->whole.top = layout->active.y + layout->active.after + air;
  layout->whole.bottom = layout->whole.top + WHOLE_SHARE * curves;
  layout->part.top = layout->whole.bottom + gap;
  layout->part.bottom = layout->part.top + (1 - WHOLE_SHARE) * curves;
  layout->intervals.y = layout->part.bottom + canvas->pad / 2 + air + layout->intervals.before;
  layout->blanking.y = layout->intervals.y + layout->intervals.after + air
                       + layout->blanking.before;
  layout->period.from_y = layout->active.from_y = bw_line_panel_y (&layout->whole,
                                                                   BW_LEVEL_BLANKING);
  layout->intervals.from_y = layout->blanking.from_y = bw_line_panel_y (&layout->part,
                                                                        BW_LEVEL_BLANKING);
  return is_high_enough (layout, &layout->whole, BW_LEAVE_UPPER_NAMES)
         && is_high_enough (layout, &layout->part, BW_LEAVE_LOWER_NAMES);
}

/* Labels */

/* The datum is named at both ends of the line period, and, with what it is, in the enlargement. */
static gboolean
claim_datum (BwLineLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwLinePanel *part = &layout->part;
  double x = bw_line_panel_x (part, 0) + canvas->pad * 0.75, y = part->top;
  double room = bw_line_panel_x (part, bw_line_shape_blanking_end (&layout->shape)) - x;
  const char *full = layout->shape.trilevel ? _ ("0H, the crossing in the middle of sync")
                                            : _ ("0H, the leading edge of sync");
  gboolean fits = bw_canvas_measure (canvas, full).width <= room;
  double first = bw_line_panel_x (&layout->whole, 0),
         second = bw_line_panel_x (&layout->whole, layout->shape.period_s);

  return bw_canvas_claim_at (canvas, fits ? full : "0H", BW_INK_ACCENT, x, y, 0, 0)
         & bw_canvas_claim_at (canvas, "0H", BW_INK_ACCENT, first - canvas->pad / 2,
                               layout->period.y, 1, 0.5)
         & bw_canvas_claim_at (canvas, "0H", BW_INK_ACCENT, second + canvas->pad / 2,
                               layout->period.y, 0, 0.5);
}

/* The burst and its length, above it, where nothing else is. */
static void
claim_burst (BwLineLayout *layout)
{
  const BwLineShape *shape = &layout->shape;
  const BwLinePanel *part = &layout->part;
  double length_s = shape->burst_to_s - shape->burst_from_s;
  double top = bw_line_panel_y (part, shape->burst_level) - layout->canvas->pad / 2;

  if (!bw_line_shape_has_burst (shape))
    return;
  g_autofree char *length = bw_text_us (length_s, layout->what->mark);
  g_autofree char *text = g_strdup_printf (_ ("burst %s"), length);
  bw_canvas_claim_at (layout->canvas, text, BW_INK_GRAPHITE,
                      bw_line_panel_x (part, shape->burst_from_s + length_s / 2), top, 0.5, 1);
}

static gboolean
claim_scale (BwLineLayout *layout)
{
  const BwLinePanel *whole = &layout->whole, *part = &layout->part;
  double times = (part->right - part->left) / (part->to_s - part->from_s)
                 / ((whole->right - whole->left) / (whole->to_s - whole->from_s));
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  if (!keeps (layout, BW_LEAVE_SCALE))
    return TRUE;
  g_ascii_formatd (number, sizeof number, times < 9.95 ? "%.1f" : "%.0f", times);
  g_strdelimit (number, ".", layout->what->mark);
  g_autofree char *text = g_strdup_printf (_ ("enlarged %s times"), number);
  return bw_canvas_claim_at (layout->canvas, text, BW_INK_GRAPHITE_LIGHT,
                             bw_line_panel_x (part, layout->shape.start_s[0])
                                 + layout->canvas->pad / 2,
                             part->top - layout->canvas->pad / 2, 0, 1);
}

/**
 * bw_line_try:
 *
 * Lays everything out with what @layout keeps.
 *
 * Returns: whether all of that has a place
 */
gboolean
bw_line_try (BwLineLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_line_caption (layout->what->raster);
  g_autofree char *note = keeps (layout, BW_LEAVE_NOTE) ? bw_line_note (layout->what->raster)
                                                        : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = keeps (layout, BW_LEAVE_LONG_CAPTION) ? 2 : 1,
                        .note = note,
                        .note_lines = 1,
                        .below = canvas->pad };
  double words_y;

  bw_canvas_clear (canvas);
  place_across (layout);
  size_rows (layout);
  gboolean all = bw_canvas_claim_foot (canvas, &foot, &words_y);
  all &= place_down (layout, canvas->height - words_y);
  all &= bw_dim_row_claim (&layout->period, canvas);
  all &= bw_dim_row_claim (&layout->intervals, canvas);
  all &= bw_dim_row_claim (&layout->blanking, canvas);
  all &= bw_dim_row_claim (&layout->active, canvas);
  all &= claim_datum (layout);
  if (keeps (layout, BW_LEAVE_LOWER_NAMES))
    all &= bw_line_panel_claim_names (&layout->part, &layout->shape, canvas);
  if (keeps (layout, BW_LEAVE_UPPER_NAMES))
    all &= bw_line_panel_claim_names (&layout->whole, &layout->shape, canvas);
  all &= claim_scale (layout);
  claim_burst (layout);
  return all;
}
