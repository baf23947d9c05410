/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* The chain: a bar for each link from the source down to the mask, as long as its limit, and one
 * for all together. The links hang on one line, as the signal passes through them. */

#define BAR_SHARE 0.5   /* height of a bar, as a share of its row */
#define LABEL_SHARE 0.7 /* the widest figure, as a share of the scale */
#define SHARE_WIDTH 5.0 /* width of the bar of 100 % loss, in heights of text */

static gboolean
can_draw (const BwDetailView *what)
{
  return what->detail->limiting_tvl > 0;
}

static double
limit_of (const BwDetailView *what, guint row)
{
  return row < BW_N_LINKS ? what->detail->limit_tvl[row] : what->detail->limiting_tvl;
}

/* The middle of a row, from the top. */
static double
row_y (const BwDetailPage *page, guint row)
{
  return bw_chart_y (&page->chart, BW_CHAIN_ROWS - row - 0.5);
}

static double
row_height (const BwDetailPage *page)
{
  return page->chart.plot.height / BW_CHAIN_ROWS;
}

static double
plot_end (const BwDetailPage *page)
{
  return page->chart.plot.x + page->chart.plot.width;
}

/* A limit that lies beyond the scale. */
static gboolean
is_beyond (const BwDetailPage *page, guint row)
{
  return limit_of (page->what, row) > page->chart.x.high;
}

static double
bar_end (const BwDetailPage *page, guint row)
{
  double limit_tvl = limit_of (page->what, row);
  return is_beyond (page, row) ? plot_end (page) : bw_chart_x (&page->chart, MAX (limit_tvl, 0));
}

static BwInkRole
row_ink (const BwDetailView *what, guint row)
{
  if (row == what->detail->limited_by)
    return BW_INK_ACCENT;
  return row == BW_N_LINKS ? BW_INK_GRAPHITE : BW_INK_GRAPHITE_LIGHT;
}

/* Why a link has no limit. */
static const char *
no_limit_words (const BwDetailView *what, guint row)
{
  const BwDetailCase *c = what->what;

  if (row == BW_LINK_MASK)
    return c->mask == BW_MASK_MONO ? _ ("there is none") : _ ("not known");
  if (row == BW_LINK_SPOT)
    return _ ("not known");
  if (row == BW_LINK_LEAD && !(c->lead_hz > 0))
    return _ ("none that matters");
  if (!(c->active_s > 0))
    return _ ("not known without a raster");
  return row == BW_LINK_SIGNAL ? _ ("no limit of its own") : _ ("not known");
}

static char *
limit_text (const BwDetailView *what, guint row)
{
  double limit_tvl = limit_of (what, row);
  if (!(limit_tvl > 0))
    return g_strdup (no_limit_words (what, row));
  g_autofree char *tvl = bw_detail_tvl_text (limit_tvl, what->mark);
  return row == what->detail->limited_by ? g_strdup_printf (_ ("%s, limits first"), tvl)
                                         : g_strdup (tvl);
}

static void
claim_row (BwDetailPage *page, guint row)
{
  const BwDetailView *what = page->what;
  BwCanvas *canvas = page->canvas;
  double y = row_y (page, row), limit_tvl = limit_of (what, row);
  g_autofree char *limit = limit_text (what, row);
  BwInkRole role = row_ink (what, row);

  bw_canvas_claim_at (canvas, bw_detail_link_name (row), role, 3 * canvas->pad, y, 0, 0.5);
  if (is_beyond (page, row))
    bw_detail_claim_at (canvas, limit, role, plot_end (page) - 3 * canvas->pad, y, 1, 0.5);
  else
    bw_detail_claim_at (canvas, limit, role, bar_end (page, row) + canvas->pad, y, 0, 0.5);
  if (row == BW_N_LINKS || !(limit_tvl > 0))
    return;
  g_autofree char *loss = bw_detail_percent_text (what->detail->loss[row], what->mark);
  bw_canvas_claim_at (canvas, loss, role, canvas->width - canvas->pad, y, 1, 0.5);
}

static char *
caption_text (const BwDetailView *what)
{
  g_autofree char *all = bw_detail_tvl_text (what->detail->limiting_tvl, what->mark);
  return g_strdup_printf (
      _ ("Limit of each link in TV lines per picture height, and its share of the loss in decibels "
         "at %s, where all together leave 3 %% as read off a wedge. Limits as the trade quotes "
         "them: samples and mask at the sampling limit, bandwidths at −3 dB, spot at 3 %%."),
      all);
}

/* The end of a scale of @width on which each bar that is shown has its figure beside it. */
static double
scale_end (BwDetailPage *page, double width)
{
  double shown_tvl = bw_detail_shown_tvl (page->what), end_tvl = 1.05 * shown_tvl;

  for (guint row = 0; row < BW_CHAIN_ROWS; row++)
    {
      g_autofree char *limit = limit_text (page->what, row);
      double figure = bw_canvas_measure (page->canvas, limit).width + 2 * page->canvas->pad;
      double limit_tvl = limit_of (page->what, row);
      if (limit_tvl <= shown_tvl && figure < LABEL_SHARE * width)
        end_tvl = MAX (end_tvl, limit_tvl * width / (width - figure));
    }
  return bw_nice_end (end_tvl);
}

static void
layout (BwDetailPage *page)
{
  BwCanvas *canvas = page->canvas;
  const BwDetailView *what = page->what;
  g_autofree char *caption = caption_text (what);
  double names = 0;

  for (guint row = 0; row < BW_CHAIN_ROWS; row++)
    names = MAX (names, bw_canvas_measure (canvas, bw_detail_link_name (row)).width);
  double left = names + 5 * canvas->pad;
  double right = (SHARE_WIDTH + 3.4) * canvas->text_height + canvas->pad;
  const BwChartAxis x = { 0, scale_end (page, canvas->width - left - right), 1,
                          _ ("TV lines per picture height") };
  page->fits = bw_chart_init_rows (&page->chart, canvas, &x, left, right, BW_CHAIN_ROWS, caption,
                                   what->mark);
  if (!page->fits)
    return;
  bw_canvas_claim_at (canvas, _ ("share of the loss"), BW_INK_GRAPHITE_LIGHT,
                      canvas->width - canvas->pad, canvas->pad, 1, 0);
  if (what->what->claimed_lines > 0)
    {
      g_autofree char *tvl = bw_detail_tvl_text (what->what->claimed_lines, what->mark);
      g_autofree char *claim = g_strdup_printf (_ ("claimed: %s"), tvl);
      bw_canvas_claim_at (canvas, claim, BW_INK_GRAPHITE,
                          bw_chart_x (&page->chart, what->what->claimed_lines), canvas->pad, 0.5,
                          0);
    }
  for (guint row = 0; row < BW_CHAIN_ROWS; row++)
    claim_row (page, row);
}

static void
fill_bar (const BwDetailPage *page, cairo_t *cr, double x, double y, double width, BwInkRole role)
{
  double height = row_height (page) * BAR_SHARE;
  cairo_rectangle (cr, x, y - height / 2, width, height);
  bw_ink_set_alpha (cr, page->canvas->ink, role, 0.35);
  cairo_fill_preserve (cr);
  bw_ink_set (cr, page->canvas->ink, role);
  cairo_set_line_width (cr, 1.2);
  cairo_stroke (cr);
}

/* Where a bar goes on beyond the scale: a gap across it, and no end. */
static void
draw_break (const BwDetailPage *page, cairo_t *cr, double y)
{
  double half = row_height (page) * BAR_SHARE / 2 + 2, gap = page->canvas->pad / 2;
  double x = plot_end (page) - 2 * gap;

  cairo_save (cr);
  bw_ink_set (cr, page->canvas->ink, BW_INK_PAPER);
  cairo_set_line_width (cr, gap);
  cairo_move_to (cr, x - gap, y + half);
  cairo_line_to (cr, x + gap, y - half);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The line that the links hang on, with a knot for each that counts. */
static void
draw_thread (const BwDetailPage *page, cairo_t *cr)
{
  double x = 1.5 * page->canvas->pad, knot = 0.22 * page->canvas->text_height;

  bw_ink_set (cr, page->canvas->ink, BW_INK_GRAPHITE_LIGHT);
  cairo_set_line_width (cr, 1.5);
  cairo_move_to (cr, x, row_y (page, 0));
  cairo_line_to (cr, x, row_y (page, BW_N_LINKS));
  cairo_stroke (cr);
  for (guint row = 0; row < BW_CHAIN_ROWS; row++)
    {
      cairo_new_path (cr);
      cairo_arc (cr, x, row_y (page, row), knot, 0, 2 * G_PI);
      bw_ink_set (cr, page->canvas->ink,
                  limit_of (page->what, row) > 0 ? row_ink (page->what, row) : BW_INK_PAPER);
      cairo_fill_preserve (cr);
      bw_ink_set (cr, page->canvas->ink, row_ink (page->what, row));
      cairo_stroke (cr);
    }
}

static void
draw (const BwDetailPage *page, cairo_t *cr)
{
  const BwDetailView *what = page->what;
  double figures = 3.4 * page->canvas->text_height;
  double full = SHARE_WIDTH * page->canvas->text_height;
  double end = page->canvas->width - page->canvas->pad - figures;

  bw_chart_draw_frame (&page->chart, cr);
  draw_thread (page, cr);
  for (guint row = 0; row < BW_CHAIN_ROWS; row++)
    {
      double limit_tvl = limit_of (what, row), y = row_y (page, row);
      if (!(limit_tvl > 0))
        continue;
      fill_bar (page, cr, page->chart.plot.x, y, bar_end (page, row) - page->chart.plot.x,
                row_ink (what, row));
      if (is_beyond (page, row))
        draw_break (page, cr, y);
      if (row < BW_N_LINKS && what->detail->loss[row] > 0)
        fill_bar (page, cr, end - full * what->detail->loss[row], y, full * what->detail->loss[row],
                  row_ink (what, row));
    }
  if (what->what->claimed_lines > 0)
    bw_chart_draw_down (&page->chart, cr, what->what->claimed_lines, BW_INK_GRAPHITE, BW_DASH_LONG);
}

static char *
words (const BwDetailView *what, const BwDrawingPoint *point)
{
  guint link = point->id;
  const char *name = bw_detail_link_name (link);

  if (!(limit_of (what, link) > 0))
    return g_strdup_printf (_ ("%s: not known, or no limit"), name);
  g_autofree char *limit = bw_detail_lines_text (limit_of (what, link), what->mark);
  g_autofree char *at = bw_detail_place_text (what, point->across);
  g_autofree char *left = bw_detail_left_text (what, link, point->across);
  if (link >= BW_N_LINKS)
    return g_strdup_printf (_ ("%1$s: limit %2$s; at %3$s %4$s of the modulation is left"), name,
                            limit, at, left);
  g_autofree char *loss = bw_detail_percent_text (what->detail->loss[link], what->mark);
  return g_strdup_printf (
      _ ("%1$s: limit %2$s, %3$s of the loss; at %4$s it leaves %5$s of the modulation"), name,
      limit, loss, at, left);
}

static char *
describe (const BwDetailView *what)
{
  GString *text = g_string_new (NULL);

  for (guint row = 0; row < BW_CHAIN_ROWS; row++)
    {
      g_autofree char *limit = limit_text (what, row);
      g_string_append_printf (text, "%s%s: %s", row > 0 ? "; " : "", bw_detail_link_name (row),
                              limit);
      if (row < BW_N_LINKS && limit_of (what, row) > 0)
        {
          g_autofree char *loss = bw_detail_percent_text (what->detail->loss[row], what->mark);
          g_string_append_printf (text, _ (", %s of the loss"), loss);
        }
    }
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}

const BwDetailKind bw_detail_chain = { can_draw, bw_detail_no_link, layout, draw,
                                       NULL,     BW_CHAIN_ROWS,     words,  describe };
