/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Brightness down the screen across three scanning lines of a flat white picture: the light of each
 * line, and the sum of all. */

#define N_SHOWN 3
#define FOOT 0.14                                      /* of a peak: where it is wide */
#define PITCH_AT 1.12                                  /* height of the dimension line, in peaks */
#define SIGMA_PER_WIDTH (1 / (2 * 1.1774100225154747)) /* full width at half: 2·√(2 ln 2)·σ */

typedef struct
{
  const BwDetailView *what;
  int line; /* the one whose light it is; −1: the sum */
} Light;

/* The peak of the sum, to which all brightness is given. */
static double
peak (const BwDetailView *what)
{
  return bw_line_brightness (what->detail->line_width_ratio, 0);
}

static double
light_at (double down_m, gconstpointer data)
{
  const Light *light = data;
  const BwDetail *detail = light->what->detail;
  double place = down_m / detail->line_pitch_m;

  if (light->line < 0)
    return bw_line_brightness (detail->line_width_ratio, place) / peak (light->what);
  double off = (place - light->line) / (SIGMA_PER_WIDTH * detail->line_width_ratio);
  double sigma = SIGMA_PER_WIDTH * detail->line_width_ratio;
  return exp (-off * off / 2) / (sigma * sqrt (2 * G_PI)) / peak (light->what);
}

static gboolean
can_draw (const BwDetailView *what)
{
  return what->detail->line_width_ratio > 0 && what->detail->line_pitch_m > 0;
}

static const char *
lacking (const BwDetailView *what)
{
  return _ ("The line pitch is not known. It takes a source with a raster, and the diagonal.");
}

static char *
caption_text (const BwDetailView *what)
{
  char mark = what->mark;
  g_autofree char *pitch = bw_detail_mm_text (what->detail->line_pitch_m, mark);
  g_autofree char *spot = bw_detail_mm_text (what->detail->line_spot_m, mark);
  g_autofree char *modulation = bw_detail_percent_text (what->detail->line_modulation, mark);
  g_autofree char *distance = bw_quantity_format (what->detail->arc_minute_m, BW_DIMENSION_LENGTH,
                                                  3, mark);
  g_autofree char *says
      = g_strdup_printf (_ ("Brightness down the screen of a flat white picture: lines of %1$s at "
                            "half of the peak, every %2$s; modulation %3$s (exact sum of Gaussian "
                            "lines). One line pitch subtends one arc minute at %4$s."),
                         spot, pitch, modulation, distance);
  g_autofree char *assumed = bw_detail_spot_says (what->detail, mark);
  return assumed != NULL ? g_strdup_printf ("%s %s", says, assumed) : g_steal_pointer (&says);
}

static void
claim_dimensions (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  BwCanvas *canvas = page->canvas;
  double pitch_m = what->detail->line_pitch_m;
  g_autofree char *pitch = bw_detail_mm_text (pitch_m, what->mark);
  g_autofree char *pitch_text = g_strdup_printf (_ ("line pitch %s"), pitch);
  g_autofree char *spot = bw_detail_mm_text (what->detail->line_spot_m, what->mark);
  g_autofree char *spot_text
      = what->detail->line_spot_from == BW_SPOT_GIVEN ? g_strdup_printf (_ ("spot %s"), spot)
                                                      : g_strdup_printf (_ ("spot %s, assumed"), spot);

  bw_detail_claim_at (canvas, pitch_text, BW_INK_GRAPHITE, bw_chart_x (&page->chart, 0.5 * pitch_m),
                      bw_chart_y (&page->chart, PITCH_AT) - canvas->pad / 2, 0.5, 1);
  bw_detail_claim_at (canvas, spot_text, BW_INK_GRAPHITE_LIGHT, bw_chart_x (&page->chart, pitch_m),
                      bw_chart_y (&page->chart, light_at (0, &(Light){ what, 0 }) / 2)
                          + canvas->pad / 2,
                      0.5, 0);
}

static void
claim_names (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  double pitch_m = what->detail->line_pitch_m, one = light_at (0, &(Light){ what, 0 });
  double gap = page->canvas->pad / 2;

  bw_detail_claim_at (page->canvas, _ ("all lines together"), BW_INK_ACCENT,
                      bw_chart_x (&page->chart, 2 * pitch_m), bw_chart_y (&page->chart, 1) - gap,
                      0.5, 1);
  bw_detail_claim_at (page->canvas, _ ("one line"), BW_INK_GRAPHITE_LIGHT,
                      bw_chart_x (&page->chart, 2 * pitch_m), bw_chart_y (&page->chart, FOOT * one),
                      0.5, 0.5);
}

static void
layout (BwDetailPage *page)
{
  const BwDetailView *what = page->what;
  double pitch_m = what->detail->line_pitch_m;
  const BwChartAxis x = { -0.75 * pitch_m, (N_SHOWN - 0.25) * pitch_m, 1e-3,
                          _ ("down the screen, mm") };
  /* xgettext:no-c-format */
  const BwChartAxis y = { 0, 1.3, 0.01, _ ("brightness, % of the peak") };
  g_autofree char *caption = caption_text (what);

  page->fits = bw_chart_init (&page->chart, page->canvas, &x, &y, caption, what->mark);
  if (!page->fits)
    return;
  claim_dimensions (page);
  claim_names (page);
}

/* A dimension line with a bar at each end. */
static void
draw_dimension (const BwDetailPage *page, cairo_t *cr, double from, double to, double value,
                BwInkRole role)
{
  double y = bw_chart_y (&page->chart, value), bar = page->canvas->pad / 2;
  double x0 = bw_chart_x (&page->chart, from), x1 = bw_chart_x (&page->chart, to);

  bw_ink_set (cr, page->canvas->ink, role);
  cairo_set_line_width (cr, 1.2);
  cairo_move_to (cr, x0, y);
  cairo_line_to (cr, x1, y);
  cairo_move_to (cr, x0, y - bar);
  cairo_line_to (cr, x0, y + bar);
  cairo_move_to (cr, x1, y - bar);
  cairo_line_to (cr, x1, y + bar);
  cairo_stroke (cr);
}

static void
draw_light (const BwDetailPage *page, cairo_t *cr, int line)
{
  const Light light = { page->what, line };
  const BwChartCurve curve = { .value = light_at,
                               .data = &light,
                               .from = page->chart.x.low,
                               .to = page->chart.x.high,
                               .role = line < 0 ? BW_INK_ACCENT : BW_INK_GRAPHITE_LIGHT,
                               .dash = line < 0 ? BW_DASH_NONE : BW_DASH_SHORT,
                               .width = line < 0 ? 2.6 : 1.2 };
  bw_chart_draw_curve (&page->chart, cr, &curve);
}

static void
draw (const BwDetailPage *page, cairo_t *cr)
{
  const BwDetailView *what = page->what;
  double pitch_m = what->detail->line_pitch_m, half_m = what->detail->line_spot_m / 2;
  double half_peak = light_at (0, &(Light){ what, 0 }) / 2;

  bw_chart_draw_frame (&page->chart, cr);
  for (int line = 0; line < N_SHOWN; line++)
    draw_light (page, cr, line);
  draw_light (page, cr, -1);
  draw_dimension (page, cr, 0, pitch_m, PITCH_AT, BW_INK_GRAPHITE);
  draw_dimension (page, cr, pitch_m - half_m, pitch_m + half_m, half_peak, BW_INK_GRAPHITE_LIGHT);
}

static char *
words (const BwDetailView *what, const BwDrawingPoint *point)
{
  const Light sum = { what, -1 };
  g_autofree char *down = bw_detail_mm_text (point->across, what->mark);
  g_autofree char *share = bw_detail_percent_text (light_at (point->across, &sum), what->mark);
  return g_strdup_printf (_ ("%1$s down from the middle of a line: %2$s of the peak"), down, share);
}

static char *
describe (const BwDetailView *what)
{
  return caption_text (what);
}

const BwDetailKind bw_detail_structure = {
  can_draw, lacking, layout, draw, NULL, 1, words, describe
};
