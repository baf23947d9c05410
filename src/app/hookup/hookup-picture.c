/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-picture.h"

#include <glib/gi18n-lib.h>

/* The drawn plan as a picture. */

struct _BwHookupHold
{
  BwHookup *hookup;
};

/**
 * bw_hookup_hold_new:
 * @hookup: (transfer full)
 *
 * Returns: (transfer full): a holder of one reference
 */
BwHookupHold *
bw_hookup_hold_new (BwHookup *hookup)
{
  BwHookupHold *hold = g_rc_box_new0 (BwHookupHold);
  hold->hookup = hookup;
  return hold;
}

BwHookupHold *
bw_hookup_hold_ref (BwHookupHold *hold)
{
  return g_rc_box_acquire (hold);
}

static void
clear_hold (gpointer data)
{
  bw_hookup_free (((BwHookupHold *) data)->hookup);
}

void
bw_hookup_hold_unref (BwHookupHold *hold)
{
  g_rc_box_release_full (hold, clear_hold);
}

/**
 * bw_hookup_hold_get:
 *
 * Returns: (transfer none): the plan
 */
const BwHookup *
bw_hookup_hold_get (const BwHookupHold *hold)
{
  return hold->hookup;
}

/* The last layout is kept: a cursor reads many places of one page. */
typedef struct
{
  BwHookupDrawing *drawing; /* nullable */
  double width;
  double height;
  BwTheme theme;
  double dpi;
  char *font;
} Kept;

typedef struct
{
  BwPicture parent;
  BwHookupHold *hold;
  BwLeadCase lead;
  BwHookupView view;
  Kept *kept;
} HookupPicture;

static const BwPictureClass hookup_picture_class;
static const BwPictureClass reasons_class; /* why there is no plan: nothing to point at */

static const HookupPicture *
hookup_picture (const BwPicture *picture)
{
  g_return_val_if_fail (picture->klass == &hookup_picture_class || picture->klass == &reasons_class,
                        NULL);
  return (const HookupPicture *) picture;
}

/**
 * bw_hookup_picture_new:
 * @lead: copied; its type must outlive the picture
 *
 * Returns: (transfer full): a picture of the plan
 */
BwPicture *
bw_hookup_picture_new (BwHookupHold *hold, const BwLeadCase *lead)
{
  HookupPicture *picture = g_new0 (HookupPicture, 1);

  picture->parent.klass = hold->hookup->plan != NULL ? &hookup_picture_class : &reasons_class;
  picture->parent.style = BW_CURSOR_CROSS;
  picture->hold = bw_hookup_hold_ref (hold);
  picture->lead = *lead;
  picture->view = (BwHookupView){ hold->hookup, &picture->lead, bw_quantity_locale_mark () };
  picture->kept = g_new0 (Kept, 1);
  return &picture->parent;
}

static void
forget (Kept *kept)
{
  g_clear_pointer (&kept->drawing, bw_hookup_drawing_free);
  g_clear_pointer (&kept->font, g_free);
}

static void
free_picture (BwPicture *base)
{
  HookupPicture *picture = (HookupPicture *) base;
  forget (picture->kept);
  g_free (picture->kept);
  bw_hookup_hold_unref (picture->hold);
  g_free (picture);
}

static gboolean
holds (const Kept *kept, const BwPicturePage *page)
{
  return kept->drawing != NULL && bw_near (kept->width, page->width, 1e-9)
         && bw_near (kept->height, page->height, 1e-9) && kept->theme == page->ink->theme
         && bw_near (kept->dpi, page->ink->dpi, 1e-9)
         && g_strcmp0 (kept->font, page->ink->font) == 0;
}

static const BwHookupDrawing *
drawing_for (const BwPicture *base, const BwPicturePage *page)
{
  const HookupPicture *picture = hookup_picture (base);
  Kept *kept = picture->kept;
  if (holds (kept, page))
    return kept->drawing;
  forget (kept);
  kept->drawing = bw_hookup_drawing_new (page->width, page->height, page->ink, &picture->view);
  kept->width = page->width;
  kept->height = page->height;
  kept->theme = page->ink->theme;
  kept->dpi = page->ink->dpi;
  kept->font = g_strdup (page->ink->font);
  return kept->drawing;
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  bw_hookup_drawing_draw (drawing_for (base, page), cr);
}

static char *
name_of (const BwPicture *base)
{
  return bw_hookup_view_name (&hookup_picture (base)->view);
}

static char *
describe (const BwPicture *base)
{
  return bw_hookup_view_describe (&hookup_picture (base)->view);
}

static char *
file_stem (const BwPicture *base)
{
  return g_strdup ("hook-up");
}

static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  BwHookupPoint read;
  if (!bw_hookup_drawing_read (drawing_for (base, page), x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){
    .row = (int) read.kind, .along = x, .down = y, .at = { read.index, read.number }
  };
  return TRUE;
}

static BwHookupPoint
hookup_point (const BwPicturePoint *point)
{
  return (BwHookupPoint){ (guint) point->row, (guint) point->at[0], (int) point->at[1] };
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y)
{
  const BwHookupPoint read = hookup_point (point);
  return bw_hookup_drawing_place (drawing_for (base, page), &read, x, y);
}

/* Words do not depend on the page; any layout knows them. */
static char *
words_of (const BwPicture *base, const BwPicturePoint *point)
{
  static const BwInk ink = { BW_THEME_LIGHT, NULL, BW_INK_SCREEN_DPI };
  const BwPicturePage page = { 1000, 650, &ink };
  const HookupPicture *picture = hookup_picture (base);
  const BwHookupPoint read = hookup_point (point);
  return bw_hookup_drawing_words (picture->kept->drawing != NULL ? picture->kept->drawing
                                                                 : drawing_for (base, &page),
                                  &read);
}

static const BwPictureClass hookup_picture_class = {
  .free = free_picture,
  .draw = draw,
  .name = name_of,
  .describe = describe,
  .file_stem = file_stem,
  .read = read_point,
  .place = place,
  .words = words_of,
};

static const BwPictureClass reasons_class = {
  .free = free_picture,
  .draw = draw,
  .name = name_of,
  .describe = describe,
  .file_stem = file_stem,
};
