/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* TV lines that a mask can show against its pitch, for tubes of several sizes, with this one
 * marked. */

/* Viewable diagonals to compare with, in inches. */
static const double diagonals_in[] = { 8, 13, 19, 27, 36 };

#define INCH_M 0.0254
#define LEAST_PITCH_M 0.15e-3

/* A tube like the one on the bench, but of another size. */
typedef struct
{
  double tvl_times_m;
} Tube;

/* The sampling limit goes with one over the pitch. */
static double
tvl_at (double pitch_m, gconstpointer data)
{
  const Tube *tube = data;
  return tube->tvl_times_m / pitch_m;
}

static void
tube_init (Tube *tube, const BwDetailView *what, double diagonal_m)
{
  BwDetailCase other;
  BwDetail detail;

  bw_detail_case_init (&other);
  other.aspect = what->what->aspect;
  other.mask = what->what->mask;
  other.diagonal_m = diagonal_m;
  other.pitch_m = what->what->pitch_m;
  bw_detail_compute (&other, &detail);
  tube->tvl_times_m = detail.mask_tvl * other.pitch_m;
}

static gboolean
can_draw (const BwDetailView *what)
{
  return what->detail->mask_tvl > 0;
}

static const char *
lacking (const BwDetailView *what)
{
  return what->what->mask == BW_MASK_MONO
             ? _ ("A monochrome tube has no mask, so that no pitch limits it.")
             : _ ("The pitch of the mask is not known. Give it, with the diagonal.");
}

/* To a tenth, as tubes are sold. */
static char *
inches (double diagonal_m, char mark)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  double tenths = floor (diagonal_m / INCH_M * 10 + 0.5);
  g_ascii_formatd (number, sizeof number, "%g", tenths / 10);
  g_strdelimit (number, ".", mark);
  return g_strdup_printf (_ ("%s\302\240in"), number);
}

/* A size to compare with that is this tube's own would lie under it. */
static gboolean
is_own_size (const BwDetailView *what, double diagonal_m)
{
  return bw_near (diagonal_m, what->what->diagonal_m, 0.06 * what->what->diagonal_m);
}

static char *
caption_text (const BwDetailView *what)
{
  g_autofree char *sampling = bw_detail_tvl_text (what->detail->mask_tvl, what->mark);
  g_autofree char *practical = bw_detail_tvl_text (what->detail->mask_practical_tvl, what->mark);
  const char *counted = what->what->mask == BW_MASK_DOT
                            ? _ (
                                "A dot mask’s pitch is quoted on the diagonal; 0.866 of it counts.")
                            : _ ("The pitch of grille and slot is quoted along the line.");
  return g_strdup_printf (
      _ ("TV lines that the mask can carry, for tubes of several viewable "
         "diagonals. This one: %1$s with one column a line (sampling limit), %2$s "
         "with 1.2 (practical). %3$s"),
      sampling, practical, counted);
}

/* Names a curve near the top or right end of what is shown. */
static void
claim_name (BwDetailPage *page, double diagonal_m, BwInkRole role)
{
  static const double places[] = { 0.92, 0.8, 0.68, 0.56, 0.45, 0.35 };
  Tube tube;
  g_autofree char *size = inches (diagonal_m, page->what->mark);

  tube_init (&tube, page->what, diagonal_m);
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      double tvl = places[i] * page->chart.y.high;
      double pitch_m = tvl_at (page->chart.x.high, &tube) * page->chart.x.high / tvl;
      double x = bw_chart_x (&page->chart, pitch_m) + page->canvas->pad / 2;
      if (x > page->chart.plot.x + page->canvas->pad / 2 && pitch_m < page->chart.x.high * 0.92
          && bw_detail_claim_at (page->canvas, size, role, x, bw_chart_y (&page->chart, tvl), 0,
                                 0.5))
        return;
    }
}

static void
claim_tube (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  double pitch_m = what->what->pitch_m;
  g_autofree char *pitch = bw_detail_mm_text (pitch_m, what->mark);
  g_autofree char *tvl = bw_detail_tvl_text (what->detail->mask_tvl, what->mark);
  g_autofree char *text = g_strdup_printf (_ ("this tube: %1$s, %2$s"), pitch, tvl);
  double x = bw_chart_x (&page->chart, pitch_m), gap = page->canvas->pad;
  double y = bw_chart_y (&page->chart, what->detail->mask_tvl);

  if (bw_detail_claim_at (page->canvas, text, BW_INK_ACCENT, x + gap, y - gap, 0, 1))
    return;
  bw_detail_claim_at (page->canvas, text, BW_INK_ACCENT, x - gap, y + gap, 1, 0);
}

static void
claim_claim (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  if (!(what->what->claimed_lines > 0))
    return;
  g_autofree char *tvl = bw_detail_tvl_text (what->what->claimed_lines, what->mark);
  g_autofree char *pitch = bw_detail_mm_text (what->detail->pitch_for_claim_m, what->mark);
  g_autofree char *text = g_strdup_printf (_ ("claimed %1$s: needs %2$s"), tvl, pitch);
  bw_detail_claim_at (page->canvas, text, BW_INK_GRAPHITE,
                      page->chart.plot.x + page->chart.plot.width - page->canvas->pad,
                      bw_chart_y (&page->chart, what->what->claimed_lines), 1, 1);
}

static void
layout (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  double highest_tvl = MAX (what->detail->mask_tvl, what->what->claimed_lines);
  double least_m = MIN (LEAST_PITCH_M, 0.6 * what->what->pitch_m);
  const BwChartAxis x = { least_m, bw_nice_end (1.6 * what->what->pitch_m + 0.1e-3), 1e-3,
                          what->what->mask == BW_MASK_DOT ? _ ("pitch on the diagonal, mm")
                                                          : _ ("pitch along the line, mm") };
  const BwChartAxis y = { 0, bw_nice_end (1.7 * highest_tvl), 1,
                          _ ("TV lines per picture height") };
  g_autofree char *caption = caption_text (what);

  page->fits = bw_chart_init (&page->chart, page->canvas, &x, &y, caption, what->mark);
  if (!page->fits)
    return;
  claim_tube (page);
  claim_claim (page);
  claim_name (page, what->what->diagonal_m, BW_INK_ACCENT);
  for (gsize i = 0; i < G_N_ELEMENTS (diagonals_in); i++)
    if (!is_own_size (what, diagonals_in[i] * INCH_M))
      claim_name (page, diagonals_in[i] * INCH_M, BW_INK_GRAPHITE_LIGHT);
}

static void
draw_tube (const BwDetailPage *page, cairo_t *cr, double diagonal_m, gboolean own)
{
  Tube tube;
  const BwChartCurve curve = { .value = tvl_at,
                               .data = &tube,
                               .from = page->chart.x.low,
                               .to = page->chart.x.high,
                               .role = own ? BW_INK_ACCENT : BW_INK_GRAPHITE_LIGHT,
                               .dash = own ? BW_DASH_NONE : BW_DASH_SHORT,
                               .width = own ? 2.6 : 1.2 };
  tube_init (&tube, page->what, diagonal_m);
  bw_chart_draw_curve (&page->chart, cr, &curve);
}

static void
draw (const BwDetailPage *page, cairo_t *cr)
{
  const BwDetailView *what = page->what;

  bw_chart_draw_frame (&page->chart, cr);
  for (gsize i = 0; i < G_N_ELEMENTS (diagonals_in); i++)
    if (!is_own_size (what, diagonals_in[i] * INCH_M))
      draw_tube (page, cr, diagonals_in[i] * INCH_M, FALSE);
  draw_tube (page, cr, what->what->diagonal_m, TRUE);
  if (what->what->claimed_lines > 0)
    bw_chart_draw_across (&page->chart, cr, what->what->claimed_lines, BW_INK_GRAPHITE,
                          BW_DASH_LONG);
}

static void
draw_points (const BwDetailPage *page, cairo_t *cr)
{
  bw_chart_draw_point (&page->chart, cr, page->what->what->pitch_m, page->what->detail->mask_tvl,
                       BW_INK_ACCENT);
}

static char *
words (const BwDetailView *what, const BwDrawingPoint *point)
{
  Tube tube;
  tube_init (&tube, what, what->what->diagonal_m);
  g_autofree char *pitch = bw_detail_mm_text (point->across, what->mark);
  g_autofree char *lines = bw_detail_lines_text (tvl_at (point->across, &tube), what->mark);
  return g_strdup_printf (_ ("A pitch of %1$s on this tube: %2$s at the sampling limit"), pitch,
                          lines);
}

static char *
describe (const BwDetailView *what)
{
  return caption_text (what);
}

const BwDetailKind bw_detail_pitch = { can_draw,    lacking, layout, draw,
                                       draw_points, 1,       words,  describe };
