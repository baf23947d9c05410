/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

static const BwDetailKind *const kinds[BW_N_DETAIL_VIEWS] = {
  [BW_DETAIL_CHAIN] = &bw_detail_chain,
  [BW_DETAIL_MTF] = &bw_detail_mtf_kind,
  [BW_DETAIL_PITCH] = &bw_detail_pitch,
  [BW_DETAIL_STRUCTURE] = &bw_detail_structure,
};

/* In heights of a line of text. */
#define LACKING_WIDTH 30.0
#define LACKING_LINES 6

/* Text */

char *
bw_detail_tvl_text (double tvl, char mark)
{
  int digits = tvl >= 999.5 ? 4 : 3;
  return bw_quantity_format (tvl, BW_DIMENSION_TV_LINES, digits, mark);
}

char *
bw_detail_mm_text (double length_m, char mark)
{
  return bw_quantity_format (length_m, BW_DIMENSION_LENGTH, 3, mark);
}

/* Less than half of a tenth of a percent is nothing that anybody sees. */
#define NOTHING 5e-4

char *
bw_detail_percent_text (double share, char mark)
{
  if (share < NOTHING)
    return bw_quantity_format (0, BW_DIMENSION_FRACTION, 1, mark);
  return bw_quantity_format (share, BW_DIMENSION_FRACTION, share >= 0.0995 ? 2 : 1, mark);
}

const char *
bw_detail_link_name (guint link)
{
  return link < BW_N_LINKS ? bw_kind_label (&bw_detail_links, link) : _ ("all together");
}

BwDash
bw_detail_link_dash (guint link)
{
  static const BwDash dashes[BW_N_LINKS] = {
    [BW_LINK_SOURCE] = BW_DASH_LONG,       [BW_LINK_SIGNAL] = BW_DASH_SHORT,
    [BW_LINK_LEAD] = BW_DASH_LONG_DOT_DOT, [BW_LINK_AMPLIFIER] = BW_DASH_LONG_DOT,
    [BW_LINK_SPOT] = BW_DASH_DOT,          [BW_LINK_MASK] = BW_DASH_SHORT,
  };
  return link < BW_N_LINKS ? dashes[link] : BW_DASH_NONE;
}

/* So many times the lowest limit, or the claim, are on a scale. What lies further away limits
 * nothing and must not squeeze the others. */
#define FAR_AWAY 3

/* The highest figure in TV lines that a drawing shows on its scale. */
double
bw_detail_shown_tvl (const BwDetailView *what)
{
  const BwDetail *detail = what->detail;
  double near_tvl = MAX (detail->combined_tvl, what->what->claimed_lines);

  if (detail->limited_by < BW_N_LINKS)
    near_tvl = MAX (near_tvl, detail->limit_tvl[detail->limited_by]);
  double shown_tvl = near_tvl;
  for (guint link = 0; link < BW_N_LINKS; link++)
    if (detail->limit_tvl[link] <= FAR_AWAY * near_tvl)
      shown_tvl = MAX (shown_tvl, detail->limit_tvl[link]);
  return shown_tvl;
}

/* As bw_canvas_claim_at(), on paper that interrupts the lines under it. The paper is a little wider
 * than the text and must not lie over another one. */
gboolean
bw_detail_claim_at (BwCanvas *canvas, const char *text, BwInkRole role, double x, double y,
                    double across, double down)
{
  BwLabel label = { (char *) text, bw_canvas_measure (canvas, text), role, PANGO_ALIGN_LEFT, TRUE };
  double margin = canvas->pad / 3;

  label.box.x = x - across * label.box.width;
  label.box.y = y - down * label.box.height;
  BwBox paper = { label.box.x - margin, label.box.y, label.box.width + 2 * margin,
                  label.box.height };
  return bw_canvas_is_free (canvas, paper) && bw_canvas_claim (canvas, &label);
}

/* What the chain and the curves lack. */
const char *
bw_detail_no_link (const BwDetailView *what G_GNUC_UNUSED)
{
  return _ ("No limit is known: give the diagonal and the pitch or the spot of the tube, or a "
            "source with a raster and a video bandwidth.");
}

/* Drawing */

/* What must be known for the drawing, in the middle of the page. */
static void
claim_lacking (BwCanvas *canvas, const char *text)
{
  double width = MIN (canvas->width - 2 * canvas->pad, LACKING_WIDTH * canvas->text_height);
  double height = bw_canvas_wrapped_height (canvas, text, MAX (width, 1), LACKING_LINES);
  const BwLabel label = { (char *) text,
                          { (canvas->width - width) / 2, (canvas->height - height) / 2, width,
                            height },
                          BW_INK_GRAPHITE_LIGHT,
                          PANGO_ALIGN_CENTER,
                          FALSE,
                          TRUE };
  bw_canvas_claim (canvas, &label);
}

static void
page_init (BwDetailPage *page, double width, double height, const BwInk *ink,
           const BwDetailView *what)
{
  *page = (BwDetailPage){ .canvas = bw_canvas_new (ink, width, height), .what = what };
  if (bw_detail_view_can_draw (what))
    kinds[what->kind]->layout (page);
  else
    claim_lacking (page->canvas, kinds[what->kind]->lacking (what));
}

/**
 * bw_detail_view_can_draw:
 *
 * Returns: whether enough is known: of the chain and the curves one link, of the pitch a mask and a
 * diagonal, of the structure a spot, a raster and a diagonal
 */
gboolean
bw_detail_view_can_draw (const BwDetailView *what)
{
  return kinds[what->kind]->can_draw (what);
}

/**
 * bw_draw_detail_view:
 *
 * Draws what bw_detail_view_can_draw(), so that it fills the page.
 */
void
bw_draw_detail_view (cairo_t *cr, double width, double height, const BwInk *ink,
                     const BwDetailView *what)
{
  BwDetailPage page;

  page_init (&page, width, height, ink, what);
  cairo_save (cr);
  bw_ink_set (cr, ink, BW_INK_PAPER);
  cairo_paint (cr);
  if (page.fits)
    kinds[what->kind]->draw (&page, cr);
  bw_canvas_show_labels (page.canvas, cr);
  if (page.fits && kinds[what->kind]->draw_points != NULL)
    kinds[what->kind]->draw_points (&page, cr);
  cairo_restore (cr);
  bw_canvas_free (page.canvas);
}

/**
 * bw_detail_view_read:
 * @point: (out): what is at @x, @y
 *
 * Returns: whether there is something to read
 */
gboolean
bw_detail_view_read (double width, double height, const BwInk *ink, const BwDetailView *what,
                     double x, double y, BwDetailPoint *point)
{
  BwDetailPage page;

  page_init (&page, width, height, ink, what);
  gboolean inside = page.fits && bw_chart_is_inside (&page.chart, x, y);
  if (inside)
    kinds[what->kind]->read (&page, x, y, point);
  bw_canvas_free (page.canvas);
  return inside;
}

/**
 * bw_detail_view_x_at:
 * @along: as in BwDetailPoint
 * @x: (out): where it is
 *
 * Returns: whether it is shown
 */
gboolean
bw_detail_view_x_at (double width, double height, const BwInk *ink, const BwDetailView *what,
                     double along, double *x)
{
  BwDetailPage page;

  page_init (&page, width, height, ink, what);
  if (page.fits)
    *x = bw_chart_x (&page.chart, along);
  gboolean shown = page.fits && *x >= page.chart.plot.x
                   && *x <= page.chart.plot.x + page.chart.plot.width;
  bw_canvas_free (page.canvas);
  return shown;
}

/**
 * bw_detail_view_labels:
 *
 * Returns: (transfer full) (element-type BwLabel): the labels that have a place, for tests; the
 * texts are owned by the array
 */
GArray *
bw_detail_view_labels (double width, double height, const BwInk *ink, const BwDetailView *what)
{
  BwDetailPage page;

  page_init (&page, width, height, ink, what);
  GArray *labels = g_array_ref (page.canvas->labels);
  bw_canvas_free (page.canvas);
  return labels;
}

/**
 * bw_detail_view_describe:
 *
 * Returns: (transfer full): the drawing in words, for those who do not see it
 */
char *
bw_detail_view_describe (const BwDetailView *what)
{
  if (!bw_detail_view_can_draw (what))
    return g_strdup (kinds[what->kind]->lacking (what));
  return kinds[what->kind]->describe (what);
}

/**
 * bw_detail_view_hz_at:
 * @tvl: on the glass, as the limits of the links are counted
 *
 * Returns: the frequency that draws @tvl lines over the viewable height; zero without a raster
 */
double
bw_detail_view_hz_at (const BwDetailCase *what, double tvl)
{
  double seen = what->overscan_h > 0 && what->overscan_h < 1 ? 1 - what->overscan_h : 1;
  return bw_hz_from_tvl (tvl, what->active_s * seen, bw_ratio_to_double (what->aspect));
}
