/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

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

/* TV lines as a cursor reads them, rounded to whole lines. */
char *
bw_detail_lines_text (double tvl, char mark)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, 5, mark);
}

/* "400 lines (7.69 MHz)": the frequency where there is a raster. */
char *
bw_detail_place_text (const BwDetailView *what, double tvl)
{
  double hz = bw_detail_hz_at (what->what, tvl);
  g_autofree char *at = bw_detail_lines_text (tvl, what->mark);
  if (!(hz > 0))
    return g_steal_pointer (&at);
  g_autofree char *frequency = bw_quantity_format (hz, BW_DIMENSION_FREQUENCY, 3, what->mark);
  return g_strdup_printf ("%s (%s)", at, frequency);
}

/* What a link, or all together, leave of the modulation. */
char *
bw_detail_left_text (const BwDetailView *what, guint link, double tvl)
{
  double left = link < BW_N_LINKS ? bw_detail_link_mtf (what->what, link, tvl)
                                  : bw_detail_mtf (what->what, tvl);
  return bw_detail_percent_text (left, what->mark);
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

/* The frequency that draws @tvl lines over the viewable height, counted on the glass as the limits
 * of the links are; zero without a raster. */
double
bw_detail_hz_at (const BwDetailCase *what, double tvl)
{
  double seen = what->overscan_h > 0 && what->overscan_h < 1 ? 1 - what->overscan_h : 1;
  return bw_hz_from_tvl (tvl, what->active_s * seen, bw_ratio_to_double (what->aspect));
}

/* A scale reaches to so many times the lowest limit, or the claim. A limit further away limits
 * nothing, and would only squeeze the others together. */
#define FAR_AWAY 3

/* The highest figure in TV lines that a drawing shows on its scale. */
double
bw_detail_shown_tvl (const BwDetailView *what)
{
  const BwDetail *detail = what->detail;
  double near_tvl = MAX (detail->limiting_tvl, what->what->claimed_lines);

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
  g_return_val_if_fail (what != NULL, FALSE);
  return kinds[what->kind]->can_draw (what);
}

static void
draw (const BwDetailPage *page, cairo_t *cr)
{
  const BwDetailKind *kind = kinds[page->what->kind];

  bw_canvas_draw_paper (page->canvas, cr);
  if (page->fits)
    kind->draw (page, cr);
  bw_canvas_show_labels (page->canvas, cr);
  if (page->fits && kind->draw_points != NULL)
    kind->draw_points (page, cr);
}

/* Reading */

/* What a drawing keeps of what it was made from. */
typedef struct
{
  BwDetailCase what;
  BwDetail detail;
  BwDetailView view;
} Kept;

static Kept *
kept_new (const BwDetailView *view)
{
  Kept *kept = g_new (Kept, 1);
  *kept = (Kept){ *view->what, *view->detail, *view };
  kept->view.what = &kept->what;
  kept->view.detail = &kept->detail;
  kept->view.title = NULL;
  return kept;
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Kept *kept = data;
  return kinds[kept->view.kind]->words (&kept->view, point);
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Kept *kept = data;
  gboolean counted = kept->view.kind == BW_DETAIL_CHAIN || kept->view.kind == BW_DETAIL_MTF;
  double apart = fabs (b->across - a->across);
  g_autofree char *text = counted ? bw_detail_lines_text (apart, kept->view.mark)
                                  : bw_detail_mm_text (apart, kept->view.mark);
  return g_strdup_printf (_ ("Between the cursors: %s"), text);
}

/* The rows of the plot from the top; a plot without rows is one. */
static void
add_places (BwDrawing *drawing, const BwDetailPage *page)
{
  const BwBox *plot = &page->chart.plot;
  guint rows = kinds[page->what->kind]->rows;

  for (guint row = 0; row < rows; row++)
    {
      const BwDrawingPlace place = {
        .id = row,
        .box = { plot->x, plot->y + plot->height * row / rows, plot->width, plot->height / rows },
        .across = { page->chart.x.low, page->chart.x.high, plot->x, plot->x + plot->width },
      };
      bw_drawing_add_place (drawing, &place);
    }
}

static char *
name_of (const BwDetailView *what)
{
  static const char *const names[BW_N_DETAIL_VIEWS] = {
    [BW_DETAIL_CHAIN] = N_ ("The chain of what limits detail, drawn"),
    [BW_DETAIL_MTF] = N_ ("The modulation that each link leaves, drawn"),
    [BW_DETAIL_PITCH] = N_ ("TV lines against the pitch of the mask, drawn"),
    [BW_DETAIL_STRUCTURE] = N_ ("Brightness across three scanning lines, drawn"),
  };
  const char *name = _ (names[what->kind]);
  return what->title != NULL ? g_strdup_printf ("%s: %s", name, what->title) : g_strdup (name);
}

static char *
describe (const BwDetailView *what)
{
  return bw_detail_view_can_draw (what) ? kinds[what->kind]->describe (what)
                                        : g_strdup (kinds[what->kind]->lacking (what));
}

/**
 * bw_detail_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the drawing, which fills the page; where not enough is known it says
 *   what is lacking
 */
BwDrawing *
bw_detail_drawing (const BwDetailView *what, double width, double height, const BwInk *ink)
{
  static const char *const stems[BW_N_DETAIL_VIEWS] = {
    [BW_DETAIL_CHAIN] = "detail-chain",
    [BW_DETAIL_MTF] = "detail-curves",
    [BW_DETAIL_PITCH] = "detail-pitch",
    [BW_DETAIL_STRUCTURE] = "detail-structure",
  };
  static const BwDrawingReader reader = { BW_CURSOR_ROWS, words, difference, g_free };
  g_return_val_if_fail (what != NULL && what->what != NULL && what->detail != NULL, NULL);
  g_return_val_if_fail (what->kind < BW_N_DETAIL_VIEWS && ink != NULL, NULL);
  BwDetailPage page;

  page_init (&page, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (page.canvas, 0);
  draw (&page, bw_drawing_pen (drawing));
  bw_drawing_take_words (drawing, name_of (what), describe (what), g_strdup (stems[what->kind]));
  if (page.fits)
    {
      add_places (drawing, &page);
      bw_drawing_take_reader (drawing, &reader, kept_new (what));
    }
  bw_canvas_free (page.canvas);
  return drawing;
}
