/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-picture.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static const BwPictureClass detail_picture_class;

static const struct
{
  const char *name;
  const char *stem;
} kinds[BW_N_DETAIL_VIEWS] = {
  [BW_DETAIL_CHAIN] = { N_ ("The chain of what limits detail, drawn"), "detail-chain" },
  [BW_DETAIL_MTF] = { N_ ("The modulation that each link leaves, drawn"), "detail-curves" },
  [BW_DETAIL_PITCH] = { N_ ("TV lines against the pitch of the mask, drawn"), "detail-pitch" },
  [BW_DETAIL_STRUCTURE] = { N_ ("Brightness across three scanning lines, drawn"),
                            "detail-structure" },
};

/**
 * bw_detail_picture:
 *
 * Returns: (transfer none): @picture as what it is; it must be one of detail
 */
const BwDetailPicture *
bw_detail_picture (const BwPicture *picture)
{
  g_return_val_if_fail (picture->klass == &detail_picture_class, NULL);
  return (const BwDetailPicture *) picture;
}

/**
 * bw_detail_picture_new:
 * @title: what the drawing is of, in a few words
 *
 * Returns: (transfer full): a picture of copies of @what and @detail; where not enough is known it
 * says what is lacking
 */
BwPicture *
bw_detail_picture_new (BwDetailViewKind kind, const BwDetailCase *what, const BwDetail *detail,
                       const char *title)
{
  BwDetailPicture *picture = g_new0 (BwDetailPicture, 1);

  picture->parent = (BwPicture){ &detail_picture_class, BW_CURSOR_ROWS };
  picture->kind = kind;
  picture->what = *what;
  picture->detail = *detail;
  picture->title = g_strdup (title);
  return &picture->parent;
}

static void
free_picture (BwPicture *base)
{
  BwDetailPicture *picture = (BwDetailPicture *) base;
  g_free (picture->title);
  g_free (picture);
}

static BwDetailView
view_of (const BwDetailPicture *picture)
{
  return (BwDetailView){ .kind = picture->kind,
                         .what = &picture->what,
                         .detail = &picture->detail,
                         .mark = bw_quantity_locale_mark () };
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  const BwDetailView view = view_of (bw_detail_picture (base));
  bw_draw_detail_view (cr, page->width, page->height, page->ink, &view);
}

static char *
name_of (const BwPicture *base)
{
  const BwDetailPicture *picture = bw_detail_picture (base);
  return g_strdup_printf ("%s: %s", _ (kinds[picture->kind].name), picture->title);
}

static char *
describe (const BwPicture *base)
{
  const BwDetailView view = view_of (bw_detail_picture (base));
  return bw_detail_view_describe (&view);
}

static char *
file_stem (const BwPicture *base)
{
  return g_strdup (kinds[bw_detail_picture (base)->kind].stem);
}

/* Reading */

static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  const BwDetailView view = view_of (bw_detail_picture (base));
  BwDetailPoint read;

  if (!bw_detail_view_read (page->width, page->height, page->ink, &view, x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){ .row = (int) read.link, .along = read.along, .at = { read.value } };
  return TRUE;
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y G_GNUC_UNUSED)
{
  const BwDetailView view = view_of (bw_detail_picture (base));
  return bw_detail_view_x_at (page->width, page->height, page->ink, &view, point->along, x);
}

static char *
lines (double tvl)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, 5, bw_quantity_locale_mark ());
}

static char *
length (double length_m)
{
  return bw_quantity_format (length_m, BW_DIMENSION_LENGTH, 3, bw_quantity_locale_mark ());
}

static char *
percent (double share)
{
  return bw_quantity_format (share < 5e-4 ? 0 : share, BW_DIMENSION_FRACTION,
                             share >= 0.0995 ? 2 : 1, bw_quantity_locale_mark ());
}

/* "400 lines (7.69 MHz)": the frequency where there is a raster. */
static char *
place_words (const BwDetailPicture *picture, double tvl)
{
  double hz = bw_detail_view_hz_at (&picture->what, tvl);
  g_autofree char *at = lines (tvl);
  if (!(hz > 0))
    return g_steal_pointer (&at);
  g_autofree char *frequency = bw_quantity_format (hz, BW_DIMENSION_FREQUENCY, 3,
                                                   bw_quantity_locale_mark ());
  return g_strdup_printf ("%s (%s)", at, frequency);
}

static char *
left_of (const BwDetailPicture *picture, guint link, double tvl)
{
  return percent (link < BW_N_LINKS ? bw_detail_link_mtf (&picture->what, link, tvl)
                                    : bw_detail_mtf (&picture->what, tvl));
}

static char *
chain_words (const BwDetailPicture *picture, const BwPicturePoint *point)
{
  guint link = (guint) point->row;
  const char *name = link < BW_N_LINKS ? bw_kind_label (&bw_detail_links, link)
                                       : _ ("all together");
  double limit_tvl = link < BW_N_LINKS ? picture->detail.limit_tvl[link]
                                       : picture->detail.combined_tvl;
  if (!(limit_tvl > 0))
    return g_strdup_printf (_ ("%s: not known, or no limit"), name);
  g_autofree char *limit = lines (limit_tvl);
  g_autofree char *at = place_words (picture, point->along);
  g_autofree char *left = left_of (picture, link, point->along);
  if (link >= BW_N_LINKS)
    return g_strdup_printf (_ ("%s: limit %s; at %s %s of the modulation is left"), name, limit, at,
                            left);
  g_autofree char *loss = percent (picture->detail.loss[link]);
  return g_strdup_printf (_ ("%s: limit %s, %s of the loss; at %s it leaves %s of the modulation"),
                          name, limit, loss, at, left);
}

static char *
curve_words (const BwDetailPicture *picture, const BwPicturePoint *point)
{
  g_autofree char *at = place_words (picture, point->along);
  g_autofree char *all = percent (point->at[0]);
  GString *words = g_string_new (NULL);

  g_string_printf (words, _ ("%s: all together leave %s"), at, all);
  for (guint link = 0; link < BW_N_LINKS; link++)
    if (picture->detail.limit_tvl[link] > 0)
      {
        g_autofree char *left = left_of (picture, link, point->along);
        g_string_append_printf (words, ", %s %s", bw_kind_label (&bw_detail_links, link), left);
      }
  return g_string_free (words, FALSE);
}

static char *
words_of (const BwPicture *base, const BwPicturePoint *point)
{
  const BwDetailPicture *picture = bw_detail_picture (base);

  if (picture->kind == BW_DETAIL_CHAIN)
    return chain_words (picture, point);
  if (picture->kind == BW_DETAIL_MTF)
    return curve_words (picture, point);
  g_autofree char *at = length (point->along);
  g_autofree char *value = picture->kind == BW_DETAIL_PITCH ? lines (point->at[0])
                                                            : percent (point->at[0]);
  return picture->kind == BW_DETAIL_PITCH
             ? g_strdup_printf (_ ("A pitch of %s on this tube: %s at the sampling limit"), at,
                                value)
             : g_strdup_printf (_ ("%s down from the middle of a line: %s of the peak"), at, value);
}

static char *
difference (const BwPicture *base, const BwPicturePoint *a, const BwPicturePoint *b)
{
  const BwDetailPicture *picture = bw_detail_picture (base);
  gboolean counted = picture->kind == BW_DETAIL_CHAIN || picture->kind == BW_DETAIL_MTF;
  double apart = fabs (b->along - a->along);
  g_autofree char *words = counted ? lines (apart) : length (apart);
  return g_strdup_printf (_ ("Between the cursors: %s"), words);
}

static const BwPictureClass detail_picture_class = {
  .free = free_picture,
  .draw = draw,
  .name = name_of,
  .describe = describe,
  .file_stem = file_stem,
  .read = read_point,
  .place = place,
  .words = words_of,
  .difference = difference,
};
