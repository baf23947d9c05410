/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-picture-private.h"

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
 * bw_preview_picture_times_words:
 * @times: magnification, or %BW_PREVIEW_WHOLE
 *
 * Returns: (transfer full): the magnification in words
 */
char *
bw_preview_picture_times_words (double times)
{
  if (!(times > 0))
    return g_strdup (_ ("Whole screen"));
  g_autofree char *count = number (times);
  return bw_near (times, 1, 1e-9) ? g_strdup (_ ("Life size"))
                                  : g_strdup_printf (_ ("%s × life size"), count);
}

/* The links that are counted, and those of which nothing is known. */
static char *
link_words (const BwPreviewPicture *picture)
{
  BwDetail detail;
  g_autoptr (GString) counted = g_string_new (NULL);
  g_autoptr (GString) unknown = g_string_new (NULL);

  bw_detail_compute (&picture->what, &detail);
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      GString *list = detail.limit_tvl[link] > 0 ? counted : unknown;
      g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "",
                              bw_kind_label (&bw_detail_links, link));
    }
  if (counted->len == 0)
    return g_strdup (_ ("No link of the path is known."));
  return unknown->len > 0 ? g_strdup_printf (_ ("Links counted: %s; no limit or not known: %s."),
                                             counted->str, unknown->str)
                          : g_strdup_printf (_ ("Links counted: %s."), counted->str);
}

/* "4 × life size": of the whole screen also the scale that makes it fit. */
static char *
scale_words (const BwPreviewPicture *picture, const BwPreviewLayout *layout)
{
  double times = layout->pixels_per_m / bw_preview_pixels_per_m (1);
  g_autofree char *words = bw_preview_picture_times_words (times);
  return picture->times > 0 ? g_strdup_printf (_ ("%s at 96 dpi"), words)
                            : g_strdup_printf (_ ("Whole screen, %s at 96 dpi"), words);
}

static char *
part_words (const BwPreviewPicture *picture, const BwPreviewLayout *layout)
{
  double wide_m = layout->panes[0].width / layout->pixels_per_m;
  double high_m = layout->panes[0].height / layout->pixels_per_m;
  g_autofree char *width = length (MIN (wide_m, picture->width_m));
  g_autofree char *height = length (MIN (high_m, picture->height_m));
  g_autofree char *screen_width = length (picture->width_m);
  g_autofree char *screen_height = length (picture->height_m);
  g_autofree char *across = length (layout->centre_x * picture->width_m);
  g_autofree char *down = length (layout->centre_y * picture->height_m);

  if (!(picture->times > 0))
    return g_strdup_printf (_ ("%s by %s of glass"), screen_width, screen_height);
  return g_strdup_printf (_ ("%s by %s of the glass (%s by %s), its middle %s from the left and "
                             "%s from the top"),
                          width, height, screen_width, screen_height, across, down);
}

/* The dots of composite move from frame to frame. */
static char *
frame_words (const BwPreviewPicture *picture)
{
  return picture->frame > 0 ? g_strdup_printf (_ (" Frame %u."), picture->frame + 1)
                            : g_strdup ("");
}

/**
 * bw_preview_caption:
 *
 * Returns: (transfer full): what stands under the two pictures
 */
char *
bw_preview_caption (const BwPreviewPicture *picture, const BwPreviewLayout *layout)
{
  if (!(layout->pixels_per_m > 0))
    return g_strdup ("");
  g_autofree char *scale = scale_words (picture, layout);
  g_autofree char *part = part_words (picture, layout);
  g_autofree char *links = link_words (picture);
  g_autofree char *frame = frame_words (picture);
  g_autofree char *bright = percent (bw_preview_picture_exposure (picture));
  g_autofree char
      *words = g_strdup_printf (_ ("%s: %s. %s The picture after the path is drawn at %s of its "
                                   "brightness.%s"),
                                scale, part, links, bright, frame);
  return picture->note != NULL ? g_strjoin (" ", picture->note, words, NULL)
                               : g_steal_pointer (&words);
}

/* Reading */

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
brightness_at (const BwPreviewPicture *picture, const BwPicturePoint *point, double shares[2])
{
  const BwPreviewResult *result = picture->result;
  if (result == NULL)
    return FALSE;
  const BwPreview *preview = &result->wish.preview;
  double scale = preview->pixels_per_m;
  double x = (point->along - preview->centre_x * picture->width_m) * scale + preview->width / 2.0;
  double y = (point->down - preview->centre_y * picture->height_m) * scale + preview->height / 2.0;
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
burst_words (const BwPreviewPicture *picture, const BwPicturePoint *point)
{
  const BwPreviewResult *result = picture->result;
  if (result == NULL || result->wish.kind != BW_TEST_LINES)
    return g_strdup ("");
  const BwTestFrame *frame = &result->wish.sent->frame;
  double x = frame->seen.x + point->along / picture->width_m * frame->seen.width;
  double y = frame->seen.y + point->down / picture->height_m * frame->seen.height;
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

/**
 * bw_preview_words:
 *
 * Returns: (transfer full): where @point is and how bright both pictures are there, as a mean over
 *   the height of a line and the width of a column of the mask
 */
char *
bw_preview_words (const BwPreviewPicture *picture, const BwPicturePoint *point)
{
  g_autofree char *along = length (point->along);
  g_autofree char *down = length (point->down);
  g_autofree char *burst = burst_words (picture, point);
  double shares[2];

  if (!brightness_at (picture, point, shares))
    return g_strdup_printf (_ ("%s from the left, %s from the top%s"), along, down, burst);
  g_autofree char *after = percent (shares[0]);
  g_autofree char *untouched = percent (shares[1]);
  return g_strdup_printf (_ ("%s from the left, %s from the top: mean brightness after the path "
                             "%s, untouched %s%s"),
                          along, down, after, untouched, burst);
}

/**
 * bw_preview_difference:
 *
 * Returns: (transfer full): how far two points are apart on the glass, and as what TV lines
 */
char *
bw_preview_difference (const BwPreviewPicture *picture, const BwPicturePoint *a,
                       const BwPicturePoint *b)
{
  double across_m = fabs (b->along - a->along), down_m = fabs (b->down - a->down);
  g_autofree char *across = length (across_m);
  g_autofree char *down = length (down_m);

  if (!(across_m > 1e-6))
    return g_strdup_printf (_ ("Between the cursors: %s across, %s down"), across, down);
  g_autofree char *lines = bw_quantity_format (round (picture->height_m / across_m),
                                               BW_DIMENSION_TV_LINES, 5,
                                               bw_quantity_locale_mark ());
  return g_strdup_printf (_ ("Between the cursors: %s across, %s down; as wide as a line of %s"),
                          across, down, lines);
}
