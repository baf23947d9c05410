/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static char *
length (double length_m)
{
  if (fabs (length_m) < 5e-7)
    return g_strdup ("0\u00a0mm");
  return bw_quantity_format (length_m, BW_DIMENSION_LENGTH, 3, bw_quantity_locale_mark ());
}

static char *
percent (double share)
{
  return bw_quantity_format (round (100 * share) / 100, BW_DIMENSION_FRACTION, 5,
                             bw_quantity_locale_mark ());
}

static char *
number (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, value < 9.95 ? "%.2g" : "%.0f", value);
  return g_strdelimit (g_strdup (text), ".", bw_quantity_locale_mark ());
}

/**
 * bw_preview_view_times_words:
 * @times: magnification, or %BW_PREVIEW_WHOLE
 *
 * Returns: (transfer full): the magnification in words
 */
char *
bw_preview_view_times_words (double times)
{
  if (!(times > 0))
    return g_strdup (_ ("Whole screen"));
  g_autofree char *count = number (times);
  return bw_near (times, 1, 1e-9) ? g_strdup (_ ("Life size"))
                                  : g_strdup_printf (_ ("%s × life size"), count);
}

/* The links that are counted, and those of which nothing is known. */
static char *
link_words (const BwPreviewView *view)
{
  BwDetail detail;
  g_autoptr (GString) counted = g_string_new (NULL);
  g_autoptr (GString) unknown = g_string_new (NULL);

  bw_detail_compute (&view->what, &detail);
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      GString *list = detail.limit_tvl[link] > 0 ? counted : unknown;
      g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "",
                              bw_kind_label (&bw_detail_links, link));
    }
  if (counted->len == 0)
    return g_strdup (_ ("No link of the chain is known."));
  return unknown->len > 0
             ? g_strdup_printf (_ ("Links counted: %1$s; no limit or not known: %2$s."),
                                counted->str, unknown->str)
             : g_strdup_printf (_ ("Links counted: %s."), counted->str);
}

/* "4 × life size": of the whole screen also the scale that makes it fit. */
static char *
scale_words (const BwPreviewView *view, const BwPreviewLayout *layout)
{
  double times = layout->pixels_per_m / bw_preview_pixels_per_m (1);
  g_autofree char *words = bw_preview_view_times_words (times);
  return view->times > 0 ? g_strdup_printf (_ ("%s at 96 dpi"), words)
                         : g_strdup_printf (_ ("Whole screen, %s at 96 dpi"), words);
}

static char *
part_words (const BwPreviewView *view, const BwPreviewLayout *layout)
{
  double wide_m = layout->panes[0].width / layout->pixels_per_m;
  double high_m = layout->panes[0].height / layout->pixels_per_m;
  g_autofree char *width = length (MIN (wide_m, view->width_m));
  g_autofree char *height = length (MIN (high_m, view->height_m));
  g_autofree char *screen_width = length (view->width_m);
  g_autofree char *screen_height = length (view->height_m);
  g_autofree char *across = length (layout->centre_x * view->width_m);
  g_autofree char *down = length (layout->centre_y * view->height_m);

  if (!(view->times > 0))
    return g_strdup_printf (_ ("%1$s by %2$s of glass"), screen_width, screen_height);
  return g_strdup_printf (
      _ ("%1$s by %2$s of the glass (%3$s by %4$s), its middle %5$s from the left and "
         "%6$s from the top"),
      width, height, screen_width, screen_height, across, down);
}

/* The dots of composite move from frame to frame. */
static char *
frame_words (const BwPreviewView *view)
{
  return view->frame > 0 ? g_strdup_printf (_ ("Frame %u."), view->frame + 1) : NULL;
}

/**
 * bw_preview_caption:
 *
 * Returns: (transfer full): what stands under the two pictures
 */
char *
bw_preview_caption (const BwPreviewView *view, const BwPreviewLayout *layout)
{
  if (!(layout->pixels_per_m > 0))
    return g_strdup ("");
  g_autofree char *scale = scale_words (view, layout);
  g_autofree char *part = part_words (view, layout);
  g_autofree char *links = link_words (view);
  g_autofree char *frame = frame_words (view);
  g_autofree char *bright = percent (bw_preview_view_exposure (view));
  g_autofree char *shown
      /* Translators: the scale and the part of the screen that is shown. */
      = g_strdup_printf (_ ("%1$s: %2$s."), scale, part);
  g_autofree char *
      dimmed = g_strdup_printf (_ ("The picture after the chain is drawn at %s of its brightness."),
                                bright);
  g_autofree char *words = g_strjoin (" ", shown, links, dimmed, frame, NULL);
  return view->note != NULL ? g_strjoin (" ", view->note, words, NULL) : g_steal_pointer (&words);
}

/* Reading */

/* What the points of a drawing are read from. */
typedef struct
{
  double width_m;
  double height_m;
  BwPreviewResult *result;
} Kept;

static void
kept_free (gpointer data)
{
  Kept *kept = data;
  bw_preview_result_unref (kept->result);
  g_free (kept);
}

/* The mean over a line and, where a mask is drawn, a column. */
static double
mean_around (const BwPlanes *light, double x, double y, double wide, double high)
{
  int left = (int) CLAMP (floor (x - wide / 2), 0, light->width - 1);
  int right = (int) CLAMP (ceil (x + wide / 2), left + 1, light->width);
  int top = (int) CLAMP (floor (y - high / 2), 0, light->height - 1);
  int bottom = (int) CLAMP (ceil (y + high / 2), top + 1, light->height);
  double sum = 0;

  for (int row = top; row < bottom; row++)
    for (int column = left; column < right; column++)
      for (int i = 0; i < 3; i++)
        sum += (double) light->at[i][(gsize) row * (gsize) light->width + (gsize) column];
  return sum / (3.0 * (right - left) * (bottom - top));
}

/* Both brightnesses at a place, if the preview at hand reaches there. */
static gboolean
brightness_at (const Kept *kept, const BwDrawingPoint *point, double shares[2])
{
  const BwPreviewResult *result = kept->result;
  const BwPreview *preview = &result->wish.preview;
  double scale = preview->pixels_per_m;
  double x = (point->across - preview->centre_x * kept->width_m) * scale + preview->width / 2.0;
  double y = (point->down - preview->centre_y * kept->height_m) * scale + preview->height / 2.0;
  BwDetail detail;

  if (!(x >= 0 && x < preview->width && y >= 0 && y < preview->height))
    return FALSE;
  bw_detail_compute (&result->wish.what, &detail);
  double wide = MAX (detail.pitch_h_m * scale, 1), high = MAX (detail.line_pitch_m * scale, 1);
  shares[0] = mean_around (result->screen, x, y, wide, high);
  shares[1] = mean_around (result->untouched, x, y, wide, high);
  return TRUE;
}

/* "; burst of 400 lines" where there is one. */
static char *
burst_words (const Kept *kept, const BwDrawingPoint *point)
{
  const BwPreviewResult *result = kept->result;
  if (result->wish.kind != BW_TEST_LINES)
    return g_strdup ("");
  const BwTestFrame *frame = &result->wish.sent->frame;
  double x = frame->seen.x + point->across / kept->width_m * frame->seen.width;
  double y = frame->seen.y + point->down / kept->height_m * frame->seen.height;
  BwBox box;

  for (guint i = 0; i < BW_N_TEST_BURSTS; i++)
    if (bw_test_burst_box (frame, i, &box) && x >= box.x && x < box.x + box.width && y >= box.y
        && y < box.y + box.height)
      {
        g_autofree char *lines = bw_quantity_format (bw_test_burst_tvl[i], BW_DIMENSION_TV_LINES, 5,
                                                     bw_quantity_locale_mark ());
        return g_strdup_printf (_ ("; burst of %s"), lines);
      }
  return g_strdup ("");
}

/* Where the point is and how bright both pictures are there, as a mean over the height of a line and
 * the width of a column of the mask. */
static char *
words (gconstpointer data, const BwDrawingPoint *at)
{
  const Kept *kept = data;
  const BwDrawingPoint on_glass = { at->id, CLAMP (at->across, 0, kept->width_m),
                                    CLAMP (at->down, 0, kept->height_m) };
  const BwDrawingPoint *point = &on_glass;
  g_autofree char *along = length (point->across);
  g_autofree char *down = length (point->down);
  g_autofree char *burst = burst_words (kept, point);
  double shares[2];

  if (!brightness_at (kept, point, shares))
    return g_strdup_printf (_ ("%1$s from the left, %2$s from the top%3$s"), along, down, burst);
  g_autofree char *after = percent (shares[0]);
  g_autofree char *untouched = percent (shares[1]);
  return g_strdup_printf (
      _ ("%1$s from the left, %2$s from the top: mean brightness after the chain "
         "%3$s, untouched %4$s%5$s"),
      along, down, after, untouched, burst);
}

/* How far two points are apart on the glass, and as what TV lines. */
static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Kept *kept = data;
  double across_m = fabs (b->across - a->across), down_m = fabs (b->down - a->down);
  g_autofree char *across = length (across_m);
  g_autofree char *down = length (down_m);

  if (!(across_m > 1e-6))
    return g_strdup_printf (_ ("Between the cursors: %1$s across, %2$s down"), across, down);
  g_autofree char *lines = bw_quantity_format (round (kept->height_m / across_m),
                                               BW_DIMENSION_TV_LINES, 5,
                                               bw_quantity_locale_mark ());
  return g_strdup_printf (
      _ ("Between the cursors: %1$s across, %2$s down; as wide as a line of %3$s"), across, down,
      lines);
}

/**
 * bw_preview_take_reader:
 * @view: with a result, which @drawing keeps
 *
 * Tells @drawing what its points say.
 */
void
bw_preview_take_reader (BwDrawing *drawing, const BwPreviewView *view)
{
  static const BwDrawingReader reader = { BW_CURSOR_CROSS, words, difference, kept_free };
  Kept *kept = g_new (Kept, 1);

  *kept = (Kept){ view->width_m, view->height_m, bw_preview_result_ref (view->result) };
  bw_drawing_take_reader (drawing, &reader, kept);
}
