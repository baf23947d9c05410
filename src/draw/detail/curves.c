/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* MTF of each link and of the whole against TV lines, with the levels at which the trade sets a
 * limit. */

#define N_LEVELS 3

static const double levels[N_LEVELS] = { BW_MODULATION_CRISP, BW_MODULATION_SEEN,
                                         BW_MODULATION_LIMIT };

/* A curve of one link, or of all. */
typedef struct
{
  const BwDetailCase *what;
  guint link;
} Curve;

static double
modulation_at (double tvl, gconstpointer data)
{
  const Curve *curve = data;
  return curve->link < BW_N_LINKS ? bw_detail_link_mtf (curve->what, curve->link, tvl)
                                  : bw_detail_mtf (curve->what, tvl);
}

static gboolean
can_draw (const BwDetailView *what)
{
  return what->detail->limiting_tvl > 0;
}

static char *
caption_text (const BwDetailView *what)
{
  g_autofree char *crisp = bw_detail_tvl_text (what->detail->mtf_tvl[2], what->mark);
  g_autofree char *seen = bw_detail_tvl_text (what->detail->mtf_tvl[1], what->mark);
  g_autofree char *limit = bw_detail_tvl_text (what->detail->mtf_tvl[0], what->mark);
  return g_strdup_printf (_ ("Modulation of a fine sine pattern that each link leaves, and all "
                             "together (product of all): half of it at %1$s, a tenth at %2$s, 3 %% "
                             "at %3$s. One cycle is two TV lines."),
                          crisp, seen, limit);
}

static double
right_end (const BwDetailView *what)
{
  double lost_tvl = what->detail->mtf_tvl[0];
  return bw_nice_end (1.15 * MAX (lost_tvl, bw_detail_shown_tvl (what)));
}

/* Names a curve at one of several places where there is room, the steepest part first. */
static void
claim_name (BwDetailPage *page, guint link)
{
  static const double places[] = { 0.6, 0.75, 0.5, 0.85, 0.4, 0.3, 0.2, 0.93, 0.12, 0.07 };
  const BwDetailView *what = page->what;
  const Curve curve = { what->what, link };
  BwInkRole role = link == BW_N_LINKS                 ? BW_INK_GRAPHITE
                   : link == what->detail->limited_by ? BW_INK_ACCENT
                                                      : BW_INK_GRAPHITE_LIGHT;

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    for (double tvl = page->chart.x.high; tvl > 0; tvl -= page->chart.x.high / 200)
      if (modulation_at (tvl, &curve) >= places[i])
        {
          double x = bw_chart_x (&page->chart, tvl) + page->canvas->pad;
          double y = bw_chart_y (&page->chart, modulation_at (tvl, &curve));
          double below = tvl >= page->chart.x.high * 0.99 ? 1 : 0;
          if (bw_detail_claim_at (page->canvas, bw_detail_link_name (link), role,
                                  below > 0 ? bw_chart_x (&page->chart, tvl) : x,
                                  y + (below > 0 ? page->canvas->pad / 3 : 0), below,
                                  below > 0 ? 0 : 0.5))
            return;
          break;
        }
}

/* The TV lines at a level, left of the whole's curve. At the lowest it is right of it, where the
 * next level above has no label. */
static void
claim_crossing (BwDetailPage *page, double tvl, double level)
{
  BwCanvas *canvas = page->canvas;
  g_autofree char *at = bw_detail_tvl_text (tvl, page->what->mark);
  double x = bw_chart_x (&page->chart, tvl), y = bw_chart_y (&page->chart, level) - canvas->pad / 4;
  double width = bw_canvas_measure (canvas, at).width;

  if (level > BW_MODULATION_LIMIT && x - 2 * canvas->pad - width > page->chart.plot.x
      && bw_detail_claim_at (canvas, at, BW_INK_GRAPHITE, x - canvas->pad, y, 1, 1))
    return;
  bw_detail_claim_at (canvas, at, BW_INK_GRAPHITE, x + canvas->pad, y, 0, 1);
}

static void
claim_levels (BwDetailPage *page)
{
  const BwDetailView *what = page->what;

  for (int i = 0; i < N_LEVELS; i++)
    {
      g_autofree char *text = bw_detail_percent_text (levels[i], what->mark);
      bw_detail_claim_at (page->canvas, text, BW_INK_GRAPHITE_LIGHT,
                          page->chart.plot.x + page->chart.plot.width - page->canvas->pad / 2,
                          bw_chart_y (&page->chart, levels[i]), 1, 1);
      double tvl = what->detail->mtf_tvl[N_LEVELS - 1 - i];
      if (tvl > 0)
        claim_crossing (page, tvl, levels[i]);
    }
}

/* The claim, beside its line. */
static void
claim_claim (BwDetailPage *page)
{
  double claimed_tvl = page->what->what->claimed_lines, gap = page->canvas->pad / 2;
  if (!(claimed_tvl > 0))
    return;
  g_autofree char *tvl = bw_detail_tvl_text (claimed_tvl, page->what->mark);
  g_autofree char *text = g_strdup_printf (_ ("claimed: %s"), tvl);
  double x = bw_chart_x (&page->chart, claimed_tvl), y = page->chart.plot.y + gap;
  double width = bw_canvas_measure (page->canvas, text).width;
  gboolean right = x + 2 * gap + width < page->chart.plot.x + page->chart.plot.width;

  bw_detail_claim_at (page->canvas, text, BW_INK_GRAPHITE, right ? x + gap : x - gap, y,
                      right ? 0 : 1, 0);
}

/* A second scale, over the plot: round frequencies, where there is a raster. */

#define TICK_GAP 4.5 /* in heights of a line of text */

static double
first_frequency (const BwDetailPage *page)
{
  double end_hz = bw_detail_hz_at (page->what->what, page->chart.x.high);
  return end_hz > 0
             ? bw_nice_tick (TICK_GAP * page->canvas->text_height * end_hz / page->chart.plot.width)
             : 0;
}

static double
frequency_x (const BwDetailPage *page, double frequency_hz)
{
  double end_hz = bw_detail_hz_at (page->what->what, page->chart.x.high);
  return page->chart.plot.x + page->chart.plot.width * frequency_hz / end_hz;
}

static gboolean
is_shown (const BwDetailPage *page, double frequency_hz)
{
  return frequency_hz > 0
         && frequency_x (page, frequency_hz) <= page->chart.plot.x + page->chart.plot.width + 0.01;
}

static void
claim_frequencies (BwDetailPage *page)
{
  double step_hz = first_frequency (page);
  for (double hz = step_hz; is_shown (page, hz); hz += step_hz)
    {
      g_autofree char *text = bw_quantity_format (hz, BW_DIMENSION_FREQUENCY, 4, page->what->mark);
      bw_detail_claim_at (page->canvas, text, BW_INK_GRAPHITE_LIGHT, frequency_x (page, hz),
                          page->canvas->pad, 0.5, 0);
    }
}

static void
draw_frequencies (const BwDetailPage *page, cairo_t *cr)
{
  double step_hz = first_frequency (page), top = page->chart.plot.y;

  bw_ink_set (cr, page->canvas->ink, BW_INK_GRAPHITE_LIGHT);
  cairo_set_line_width (cr, 1);
  for (double hz = step_hz; is_shown (page, hz); hz += step_hz)
    {
      cairo_move_to (cr, frequency_x (page, hz), top - page->canvas->pad / 2);
      cairo_line_to (cr, frequency_x (page, hz), top + page->canvas->pad / 2);
    }
  cairo_stroke (cr);
}

static void
layout (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  const BwChartAxis x = { 0, right_end (what), 1, _ ("TV lines per picture height") };
  const BwChartAxis y = { 0, 1, 0.01, _ ("modulation, %") };
  g_autofree char *caption = caption_text (what);

  page->fits = bw_chart_init (&page->chart, page->canvas, &x, &y, caption, what->mark);
  if (!page->fits)
    return;
  claim_levels (page);
  claim_frequencies (page);
  claim_claim (page);
  claim_name (page, BW_N_LINKS);
  for (guint link = 0; link < BW_N_LINKS; link++)
    if (what->detail->limit_tvl[link] > 0)
      claim_name (page, link);
}

static void
draw_curve_of (const BwDetailPage *page, cairo_t *cr, guint link)
{
  const Curve data = { page->what->what, link };
  gboolean whole = link == BW_N_LINKS, worst = link == page->what->detail->limited_by;
  const BwChartCurve curve = { .value = modulation_at,
                               .data = &data,
                               .from = 0,
                               .to = page->chart.x.high,
                               .role = worst   ? BW_INK_ACCENT
                                       : whole ? BW_INK_GRAPHITE
                                               : BW_INK_GRAPHITE_LIGHT,
                               .dash = bw_detail_link_dash (link),
                               .width = whole ? 2.6 : 1.5 };
  bw_chart_draw_curve (&page->chart, cr, &curve);
}

static void
draw (const BwDetailPage *page, cairo_t *cr)
{
  const BwDetailView *what = page->what;

  bw_chart_draw_frame (&page->chart, cr);
  draw_frequencies (page, cr);
  for (int i = 0; i < N_LEVELS; i++)
    bw_chart_draw_across (&page->chart, cr, levels[i], BW_INK_GRAPHITE_LIGHT, BW_DASH_DOT);
  if (what->what->claimed_lines > 0)
    bw_chart_draw_down (&page->chart, cr, what->what->claimed_lines, BW_INK_GRAPHITE, BW_DASH_LONG);
  for (guint link = 0; link < BW_N_LINKS; link++)
    if (what->detail->limit_tvl[link] > 0)
      draw_curve_of (page, cr, link);
  draw_curve_of (page, cr, BW_N_LINKS);
}

static void
draw_points (const BwDetailPage *page, cairo_t *cr)
{
  const double *mtf_tvl = page->what->detail->mtf_tvl;
  for (int i = 0; i < N_LEVELS; i++)
    if (mtf_tvl[N_LEVELS - 1 - i] > 0)
      bw_chart_draw_point (&page->chart, cr, mtf_tvl[N_LEVELS - 1 - i], levels[i], BW_INK_GRAPHITE);
}

static char *
words (const BwDetailView *what, const BwDrawingPoint *point)
{
  g_autofree char *at = bw_detail_place_text (what, point->across);
  g_autofree char *all = bw_detail_left_text (what, BW_N_LINKS, point->across);
  GString *text = g_string_new (NULL);

  g_string_printf (text, _ ("%1$s: all together leave %2$s"), at, all);
  for (guint link = 0; link < BW_N_LINKS; link++)
    if (what->detail->limit_tvl[link] > 0)
      {
        g_autofree char *left = bw_detail_left_text (what, link, point->across);
        g_string_append_printf (text, ", %s %s", bw_detail_link_name (link), left);
      }
  return g_string_free (text, FALSE);
}

static char *
describe (const BwDetailView *what)
{
  return caption_text (what);
}

const BwDetailKind bw_detail_mtf_kind = { can_draw, bw_detail_no_link, layout, draw, draw_points, 1,
                                          words,    describe };
