/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sync-picture.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/scope-text.h"
#include "core/sync/words.h"

/* A point of it is read as a BwSyncRow for its row and seconds after 0V along. */
typedef struct
{
  BwPicture parent;
  BwRaster *raster; /* owned */
  BwSyncMixCase what;
  BwSyncAfc afc;
  BwViewRange range;
} SyncPicture;

static const BwPictureClass sync_picture_class;

/**
 * bw_picture_is_sync:
 *
 * Returns: whether it was made by bw_sync_picture_new()
 */
gboolean
bw_picture_is_sync (const BwPicture *picture)
{
  return picture->klass == &sync_picture_class;
}

static const SyncPicture *
sync_picture (const BwPicture *picture)
{
  g_return_val_if_fail (bw_picture_is_sync (picture), NULL);
  return (const SyncPicture *) picture;
}

/**
 * bw_sync_picture_new:
 * @what: one that bw_sync_mix_check() accepts; copied with its raster
 * @afc: one that bw_sync_afc_check() accepts; copied
 *
 * Returns: (transfer full): the drawing, which shows the whole
 */
BwPicture *
bw_sync_picture_new (const BwSyncMixCase *what, const BwSyncAfc *afc)
{
  SyncPicture *picture = g_new0 (SyncPicture, 1);

  picture->parent = (BwPicture){ &sync_picture_class, BW_CURSOR_ROWS };
  picture->raster = bw_raster_copy (what->raster);
  picture->what = *what;
  picture->what.raster = picture->raster;
  picture->afc = *afc;
  bw_sync_view_range (&picture->what, &picture->range);
  return &picture->parent;
}

/**
 * bw_sync_picture_case:
 *
 * Returns: (transfer none): what is mixed
 */
const BwSyncMixCase *
bw_sync_picture_case (const BwPicture *picture)
{
  return &sync_picture (picture)->what;
}

/**
 * bw_sync_picture_show_as:
 * @before: (nullable): another drawing of a mixture, or any other picture
 *
 * Shows the same part as @before does, if that is of the same interval.
 */
void
bw_sync_picture_show_as (BwPicture *picture, const BwPicture *before)
{
  SyncPicture *sync = (SyncPicture *) picture;

  if (before != NULL && bw_picture_is_sync (before))
    bw_view_range_show_as (&sync->range, &sync_picture (before)->range);
}

static void
free_picture (BwPicture *base)
{
  bw_raster_free (((SyncPicture *) base)->raster);
  g_free (base);
}

static BwSyncView
view_of (const BwPicture *base)
{
  const SyncPicture *picture = sync_picture (base);
  return (BwSyncView){ .what = &picture->what,
                       .afc = &picture->afc,
                       .range = &picture->range,
                       .mark = bw_quantity_locale_mark () };
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  const BwSyncView view = view_of (base);
  bw_draw_sync_view (cr, page->width, page->height, page->ink, &view);
}

static char *
name (const BwPicture *base)
{
  const SyncPicture *picture = sync_picture (base);
  g_autofree char *mixture = bw_sync_mix_name (&picture->what);
  return g_strdup_printf (_ ("%s of %s, drawn"), mixture, picture->raster->name);
}

static char *
describe (const BwPicture *base)
{
  const BwSyncView view = view_of (base);
  return bw_sync_view_describe (&view);
}

static char *
file_stem (const BwPicture *base)
{
  const SyncPicture *picture = sync_picture (base);
  return g_strdup_printf ("%s-sync-%s", picture->raster->id,
                          bw_kind_id (&bw_sync_gates, picture->what.gate));
}

/* Reading */

static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  const BwSyncView view = view_of (base);
  BwSyncPoint read;

  if (!bw_sync_view_read (page->width, page->height, page->ink, &view, x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){ .row = read.row, .along = read.time_s, .down = read.line_time_s };
  point->at[BW_SYNC_POINT_LINE] = read.line;
  point->at[BW_SYNC_POINT_LEVEL] = read.level;
  point->at[BW_SYNC_POINT_LATE] = read.edge == BW_AFC_EDGE_MISSING ? NAN : read.late_s;
  point->at[BW_SYNC_POINT_PHASE] = read.phase_s;
  return TRUE;
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y)
{
  const BwSyncView view = view_of (base);
  *x = bw_sync_view_x_at (page->width, page->height, page->ink, &view, point->along);
  return !isnan (*x);
}

static char *
edge_words (double late_s)
{
  if (isnan (late_s))
    return g_strdup (_ ("its edge is missing"));
  if (fabs (late_s) < 0.5e-9)
    return g_strdup (_ ("its edge is right"));
  g_autofree char *off = bw_scope_time (late_s);
  return g_strdup_printf (late_s > 0 ? _ ("its edge is %s late") : _ ("its edge is %s early"), off);
}

static char *
phase_words (double phase_s)
{
  if (isnan (phase_s))
    return g_strdup (_ ("the oscillator does not lock"));
  g_autofree char *off = bw_scope_time (fabs (phase_s) < 0.5e-9 ? 0 : phase_s);
  return g_strdup_printf (phase_s < 0 ? _ ("oscillator %s early") : _ ("oscillator %s late"), off);
}

static const char *
level_words (double level)
{
  return level > 0.5 ? _ ("high") : level > -0.5 ? _ ("low") : _ ("phase");
}

static char *
words (const BwPicture *base, const BwPicturePoint *point)
{
  const BwSyncView view = view_of (base);
  g_autofree char *row = bw_sync_view_row_name (&view, (BwSyncRow) point->row);
  g_autofree char *line_time = bw_scope_time (point->down);
  g_autofree char *time = bw_scope_time (point->along);
  g_autofree char *from = g_strdup_printf (point->along < 0 ? _ ("%s before 0V")
                                                            : _ ("%s after 0V"),
                                           time);
  g_autofree char *edge = edge_words (point->at[BW_SYNC_POINT_LATE]);
  g_autofree char *phase = phase_words (point->at[BW_SYNC_POINT_PHASE]);

  return g_strdup_printf (_ ("%s %s: line %d, %s after its 0H, %s; %s, %s"), row,
                          level_words (point->at[BW_SYNC_POINT_LEVEL]),
                          (int) point->at[BW_SYNC_POINT_LINE], line_time, from, edge, phase);
}

static char *
difference (const BwPicture *base, const BwPicturePoint *a, const BwPicturePoint *b)
{
  double span_s = b->along - a->along;
  BwRasterFigures figures;
  bw_raster_figures (sync_picture (base)->raster, &figures);
  g_autofree char *span = bw_scope_span (span_s);
  g_autofree char *lines = bw_quantity_format (fabs (span_s) / figures.line_period_s,
                                               BW_DIMENSION_LINES, 4, bw_quantity_locale_mark ());
  return g_strdup_printf (_ ("Between the cursors: %s, %s"), span, lines);
}

/* Zooming */

static gboolean
is_whole (const BwPicture *base)
{
  return bw_view_range_is_whole (&sync_picture (base)->range);
}

static void
show_whole (BwPicture *base)
{
  SyncPicture *picture = (SyncPicture *) base;
  bw_sync_view_range (&picture->what, &picture->range);
}

static void
zoom (BwPicture *base, const BwPicturePage *page, double x, double y, double factor)
{
  BwViewRange *range = &((SyncPicture *) base)->range;
  BwPicturePoint point;
  gboolean inside = read_point (base, page, x, y, &point);
  bw_view_range_zoom (range, inside ? point.along : (range->from + range->to) / 2, factor);
}

static void
pan (BwPicture *base, const BwPicturePage *page, double dx, double dy)
{
  const BwSyncView view = view_of (base);
  BwViewRange *range = &((SyncPicture *) base)->range;
  double left = bw_sync_view_x_at (page->width, page->height, page->ink, &view, range->from);
  double right = bw_sync_view_x_at (page->width, page->height, page->ink, &view, range->to);
  if (right > left)
    bw_view_range_pan (range, -dx * (range->to - range->from) / (right - left));
}

static const BwPictureClass sync_picture_class = {
  .free = free_picture,
  .draw = draw,
  .name = name,
  .describe = describe,
  .file_stem = file_stem,
  .read = read_point,
  .place = place,
  .words = words,
  .difference = difference,
  .is_whole = is_whole,
  .show_whole = show_whole,
  .zoom = zoom,
  .pan = pan,
};
