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
keeps (const BwLineView *view, BwLineLeave what)
{
  return view->left_out <= (guint) what;
}

static const char *
or_empty (const char *text)
{
  return text != NULL ? text : "";
}

/**
 * bw_line_panel_x:
 *
 * Returns: where @time_s after the datum lies across the page
 */
double
bw_line_panel_x (const BwLinePanel *panel, double time_s)
{
  double share = (time_s - panel->from_s) / (panel->to_s - panel->from_s);
  return panel->left + share * (panel->right - panel->left);
}

/**
 * bw_line_panel_y:
 *
 * Returns: where @level, of line-shape.h, lies down the page
 */
double
bw_line_panel_y (const BwLinePanel *panel, double level)
{
  double share = (BW_LEVEL_WHITE - level) / (BW_LEVEL_WHITE + BW_LEVEL_SYNC);
  return panel->top + share * (panel->bottom - panel->top);
}

/* Words */

/* What follows a time: pixels and the share of the line. */
static char *
figures_text (const BwLineView *view, double length_s, int pixels)
{
  g_autofree char *share = bw_text_share (length_s / view->shape.period_s, view->mark);
  g_autofree char *count = g_strdup_printf ("%d\u00a0px", pixels);
  gboolean has_count = pixels > 0 && keeps (view, BW_LEAVE_PIXELS);

  if (!keeps (view, BW_LEAVE_SHARES))
    return g_strdup (has_count ? count : "");
  return has_count ? g_strconcat (count, " · ", share, NULL) : g_steal_pointer (&share);
}

static void
add_dim (const BwLineView *view, BwDimRow *row, const char *name, double length_s, const char *rest,
         double x0, double x1)
{
  g_autofree char *time = bw_text_us (length_s, view->mark);
  gboolean more = rest[0] != '\0';
  g_autofree char *one = g_strconcat (name, "  ", time, more ? " · " : "", rest, NULL);
  g_autofree char *two = more ? g_strconcat (name, "  ", time, "\n", rest, NULL)
                              : g_strconcat (name, "\n", time, NULL);
  g_autofree char *three = g_strconcat (name, "\n", time, more ? "\n" : "", rest, NULL);
  const char *text[BW_N_DIM_FORMS] = { one, two, three };
  bw_dim_row_add (row, x0, x1, text);
}

/**
 * bw_line_caption:
 *
 * Returns: (transfer full): what the drawing shows, and by which standard
 */
char *
bw_line_caption (const BwRaster *raster)
{
  if (or_empty (raster->source)[0] == '\0')
    return g_strdup_printf (_ ("%s: one line and its blanking; no source is given for the figures"),
                            or_empty (raster->name));
  return g_strdup_printf (_ ("%s: one line and its blanking, by %s"), or_empty (raster->name),
                          raster->source);
}

static char *
note_text (const BwRaster *raster)
{
  return g_strdup_printf (
      _ ("Sync is drawn as it lies in the video; the raster’s separate H sync is "
         "%s."),
      bw_kind_label (&bw_polarities, raster->h_polarity));
}

/* Places across the page */

/**
 * bw_line_level_name:
 * @i: less than %BW_LINE_LEVELS
 * @level: (out): on the scale of line-shape.h
 *
 * Returns: (transfer none) (nullable): the name of a level; %NULL if this raster does not have it
 */
const char *
bw_line_level_name (const BwLineView *view, guint i, double *level)
{
  *level = (double[]){ BW_LEVEL_WHITE, BW_LEVEL_BLANKING, -BW_LEVEL_SYNC, BW_LEVEL_SYNC }[i];
  switch (i)
    {
    case 0:
      return _ ("white");
    case 1:
      return _ ("blanking");
    case 2:
      return view->shape.trilevel ? _ ("sync \u2212") : _ ("sync");
    default:
      return view->shape.trilevel ? _ ("sync +") : NULL;
    }
}

static void
place_across (BwLineView *view)
{
  BwCanvas *canvas = view->canvas;
  const BwLineShape *shape = &view->shape;
  double widest = 0, level;
  const char *name;

  for (guint i = 0; keeps (view, BW_LEAVE_LOWER_NAMES) && i < BW_LINE_LEVELS; i++)
    if ((name = bw_line_level_name (view, i, &level)) != NULL)
      widest = MAX (widest, bw_canvas_measure (canvas, name).width);
  view->whole.left = view->part.left = widest + 2 * canvas->pad;
  view->whole.right = view->part.right = MAX (canvas->width - bw_canvas_measure (canvas, "0H").width
                                                  - 2 * canvas->pad,
                                              view->part.left + 1);

  double stub_s = STUB_SHARE * shape->period_s;
  view->whole.from_s = shape->start_s[0] - stub_s;
  view->whole.to_s = shape->start_s[BW_INTERVAL_BACK_PORCH] + shape->period_s + stub_s;

  double end_s = bw_line_shape_blanking_end (shape);
  double beside_s = MARGIN_SHARE * (end_s - shape->start_s[0])
                    + bw_line_shape_length (shape, BW_INTERVAL_BORDER_LEFT);
  view->part.from_s = shape->start_s[0] - beside_s;
  view->part.to_s = end_s + beside_s;
}

/* Places down the page */

static void
add_interval_dim (BwLineView *view, const BwLinePanel *panel, BwDimRow *row,
                  BwLineInterval interval, double shift_s)
{
  const BwLineShape *shape = &view->shape;
  double length_s = bw_line_shape_length (shape, interval);
  double from_s = shape->start_s[interval] + shift_s;
  g_autofree char *rest = figures_text (view, length_s, shape->pixels[interval]);
  const char *name = bw_line_interval_label (interval);

  if (interval == BW_INTERVAL_SYNC && shape->trilevel)
    name = _ ("sync, both halves");
  if (length_s > 0)
    add_dim (view, row, name, length_s, rest, bw_line_panel_x (panel, from_s),
             bw_line_panel_x (panel, from_s + length_s));
}

/* The whole line: pixels and the line rate. */
static void
add_period_dim (BwLineView *view)
{
  const BwLinePanel *whole = &view->whole;
  double period_s = view->shape.period_s;
  int pixels = bw_raster_h_total (view->raster);
  g_autofree char *rate = bw_quantity_format (1 / period_s, BW_DIMENSION_FREQUENCY, 5, view->mark);
  g_autofree char *both = g_strdup_printf ("%d\u00a0px · %s", pixels, rate);

  add_dim (view, &view->period, _ ("line period"), period_s,
           pixels > 0 && keeps (view, BW_LEAVE_PIXELS) ? both : rate, bw_line_panel_x (whole, 0),
           bw_line_panel_x (whole, period_s));
}

static void
add_blanking_dim (BwLineView *view)
{
  const BwLinePanel *part = &view->part;
  const int *pixels = view->shape.pixels;
  double start_s = view->shape.start_s[0];
  double length_s = bw_line_shape_blanking_end (&view->shape) - start_s;
  g_autofree char *rest = figures_text (view, length_s, pixels[0] + pixels[1] + pixels[2]);

  add_dim (view, &view->blanking, _ ("line blanking"), length_s, rest,
           bw_line_panel_x (part, start_s), bw_line_panel_x (part, start_s + length_s));
}

static void
fill_rows (BwLineView *view)
{
  const BwLinePanel *whole = &view->whole, *part = &view->part;

  add_period_dim (view);
  add_interval_dim (view, whole, &view->active, BW_INTERVAL_ACTIVE, 0);
  add_interval_dim (view, part, &view->intervals, BW_INTERVAL_FRONT_PORCH, 0);
  add_interval_dim (view, part, &view->intervals, BW_INTERVAL_SYNC, 0);
  add_interval_dim (view, part, &view->intervals, BW_INTERVAL_BACK_PORCH, 0);
  add_interval_dim (view, part, &view->blanking, BW_INTERVAL_BORDER_RIGHT, -view->shape.period_s);
  add_blanking_dim (view);
  add_interval_dim (view, part, &view->blanking, BW_INTERVAL_BORDER_LEFT, 0);
}

static void
clear_rows (BwLineView *view)
{
  BwDimRow *rows[] = { &view->period, &view->active, &view->intervals, &view->blanking };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    bw_dim_row_clear (rows[i]);
}

static void
size_rows (BwLineView *view)
{
  BwDimRow *rows[] = { &view->period, &view->active, &view->intervals, &view->blanking };
  clear_rows (view);
  view->period.above = view->active.above = TRUE;
  fill_rows (view);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    bw_dim_row_size (rows[i], view->canvas);
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
is_high_enough (const BwLineView *view, const BwLinePanel *panel, BwLineLeave names)
{
  double least = keeps (view, names) ? LEAST_NAMED_CURVE : LEAST_CURVE;
  return panel->bottom - panel->top >= least * view->canvas->text_height;
}

/* Returns whether both curves are high enough. */
static gboolean
place_down (BwLineView *view, double words_height)
{
  const BwCanvas *canvas = view->canvas;
  double line = canvas->text_height, air = air_between_rows (canvas);
  double gap = MAX (LEAST_GAP * line, 0.06 * canvas->height);
  double rows = row_height (&view->period) + row_height (&view->active)
                + row_height (&view->intervals) + row_height (&view->blanking);
  double used = rows + 6 * air + 2.5 * canvas->pad + gap + words_height;
  double curves = MAX (canvas->height - used, line);

  view->period.y = canvas->pad + air / 2 + view->period.before;
  view->active.y = view->period.y + view->period.after + air + view->active.before;
  view->whole.top = view->active.y + view->active.after + air;
  view->whole.bottom = view->whole.top + WHOLE_SHARE * curves;
  view->part.top = view->whole.bottom + gap;
  view->part.bottom = view->part.top + (1 - WHOLE_SHARE) * curves;
  view->intervals.y = view->part.bottom + canvas->pad / 2 + air + view->intervals.before;
  view->blanking.y = view->intervals.y + view->intervals.after + air + view->blanking.before;
  view->period.from_y = view->active.from_y = bw_line_panel_y (&view->whole, BW_LEVEL_BLANKING);
  view->intervals.from_y = view->blanking.from_y = bw_line_panel_y (&view->part, BW_LEVEL_BLANKING);
  return is_high_enough (view, &view->whole, BW_LEAVE_UPPER_NAMES)
         && is_high_enough (view, &view->part, BW_LEAVE_LOWER_NAMES);
}

/* Labels */

static gboolean
claim_level_names (BwLineView *view, const BwLinePanel *panel, BwLineLeave names)
{
  gboolean all = TRUE;
  double level;

  for (guint i = 0; keeps (view, names) && i < BW_LINE_LEVELS; i++)
    {
      const char *name = bw_line_level_name (view, i, &level);
      if (name != NULL)
        all &= bw_canvas_claim_at (view->canvas, name, BW_INK_GRAPHITE_LIGHT,
                                   panel->left - view->canvas->pad * 0.75,
                                   bw_line_panel_y (panel, level), 1, 0.5);
    }
  return all;
}

/* The datum is named at both ends of the line period, and, with what it is, in the enlargement. */
static gboolean
claim_datum (BwLineView *view)
{
  BwCanvas *canvas = view->canvas;
  const BwLinePanel *part = &view->part;
  double x = bw_line_panel_x (part, 0) + canvas->pad * 0.75, y = part->top;
  double room = bw_line_panel_x (part, bw_line_shape_blanking_end (&view->shape)) - x;
  const char *full = view->shape.trilevel ? _ ("0H, the crossing in the middle of sync")
                                          : _ ("0H, the leading edge of sync");
  gboolean fits = bw_canvas_measure (canvas, full).width <= room;
  double first = bw_line_panel_x (&view->whole, 0),
         second = bw_line_panel_x (&view->whole, view->shape.period_s);

  return bw_canvas_claim_at (canvas, fits ? full : "0H", BW_INK_ACCENT, x, y, 0, 0)
         & bw_canvas_claim_at (canvas, "0H", BW_INK_ACCENT, first - canvas->pad / 2, view->period.y,
                               1, 0.5)
         & bw_canvas_claim_at (canvas, "0H", BW_INK_ACCENT, second + canvas->pad / 2,
                               view->period.y, 0, 0.5);
}

static gboolean
claim_scale (BwLineView *view)
{
  const BwLinePanel *whole = &view->whole, *part = &view->part;
  double times = (part->right - part->left) / (part->to_s - part->from_s)
                 / ((whole->right - whole->left) / (whole->to_s - whole->from_s));
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  if (!keeps (view, BW_LEAVE_SCALE))
    return TRUE;
  g_ascii_formatd (number, sizeof number, times < 9.95 ? "%.1f" : "%.0f", times);
  g_strdelimit (number, ".", view->mark);
  g_autofree char *text = g_strdup_printf (_ ("enlarged %s times"), number);
  return bw_canvas_claim_at (view->canvas, text, BW_INK_GRAPHITE_LIGHT,
                             bw_line_panel_x (part, view->shape.start_s[0]) + view->canvas->pad / 2,
                             part->top - view->canvas->pad / 2, 0, 1);
}

static gboolean
claim_words_below (BwLineView *view, const char *caption, const char *note, double caption_height)
{
  BwCanvas *canvas = view->canvas;
  double note_height = note != NULL ? canvas->text_height : 0;
  double top = canvas->height - canvas->pad - note_height - caption_height;
  BwLabel label = { (char *) caption,
                    { canvas->pad, top, canvas->width - 2 * canvas->pad, caption_height },
                    BW_INK_GRAPHITE,
                    PANGO_ALIGN_LEFT };
  label.wrap = TRUE;
  gboolean all = bw_canvas_claim (canvas, &label);
  if (note != NULL)
    all &= bw_canvas_claim_at (canvas, note, BW_INK_GRAPHITE_LIGHT, canvas->pad,
                               canvas->height - canvas->pad, 0, 1);
  return all;
}

/* Lays everything out with what @view keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwLineView *view)
{
  BwCanvas *canvas = view->canvas;
  g_autofree char *caption = bw_line_caption (view->raster);
  g_autofree char *note = keeps (view, BW_LEAVE_NOTE) ? note_text (view->raster) : NULL;
  double caption_height = bw_canvas_wrapped_height (canvas, caption,
                                                    canvas->width - 2 * canvas->pad,
                                                    keeps (view, BW_LEAVE_LONG_CAPTION) ? 2 : 1);
  double words_height = caption_height + (note != NULL ? canvas->text_height : 0);

  bw_canvas_clear (canvas);
  place_across (view);
  size_rows (view);
  gboolean all = place_down (view, words_height + canvas->pad);
  all &= bw_dim_row_claim (&view->period, canvas);
  all &= bw_dim_row_claim (&view->intervals, canvas);
  all &= claim_words_below (view, caption, note, caption_height);
  all &= bw_dim_row_claim (&view->blanking, canvas);
  all &= bw_dim_row_claim (&view->active, canvas);
  all &= claim_datum (view);
  all &= claim_level_names (view, &view->part, BW_LEAVE_LOWER_NAMES);
  all &= claim_level_names (view, &view->whole, BW_LEAVE_UPPER_NAMES);
  all &= claim_scale (view);
  return all;
}

/**
 * bw_line_view_init:
 * @view: (out caller-allocates): to be cleared with bw_line_view_clear()
 *
 * Lays the drawing out with all that has a place on the page.
 */
void
bw_line_view_init (BwLineView *view, double width, double height, const BwInk *ink,
                   const BwRaster *raster, char mark)
{
  *view = (BwLineView){ .raster = raster, .mark = mark };
  view->canvas = bw_canvas_new (ink, width, height);
  bw_line_shape_init (&view->shape, raster);
  while (!try_layout (view) && view->left_out < BW_N_LEAVES)
    view->left_out++;
}

/**
 * bw_line_view_clear:
 *
 * Frees what @view owns.
 */
void
bw_line_view_clear (BwLineView *view)
{
  clear_rows (view);
  bw_canvas_free (view->canvas);
}
