/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "levels-picture.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/scope-text.h"

static const BwPictureClass levels_picture_class;

/* Panels stand apart by less than this: the pointer between two of them reads the nearer one. */
#define PANEL_GAP 64.0
#define GAP_STEP 8.0

/* Model */

struct _BwLevelsHold
{
  BwLevelsModel *model;
};

/**
 * bw_levels_hold_new:
 *
 * Returns: (transfer full): a model made by bw_levels_model_new(); %NULL with @error
 */
BwLevelsHold *
bw_levels_hold_new (const BwSynthesisCase *what, GError **error)
{
  BwLevelsModel *model = bw_levels_model_new (what, error);
  if (model == NULL)
    return NULL;
  BwLevelsHold *hold = g_rc_box_new0 (BwLevelsHold);
  hold->model = model;
  return hold;
}

BwLevelsHold *
bw_levels_hold_ref (BwLevelsHold *hold)
{
  return g_rc_box_acquire (hold);
}

static void
hold_clear (gpointer data)
{
  BwLevelsHold *hold = data;
  bw_levels_model_free (hold->model);
}

void
bw_levels_hold_unref (BwLevelsHold *hold)
{
  g_rc_box_release_full (hold, hold_clear);
}

/**
 * bw_levels_hold_model:
 *
 * Returns: (transfer none): the model, which lives as long as @hold
 */
BwLevelsModel *
bw_levels_hold_model (BwLevelsHold *hold)
{
  return hold->model;
}

/* Picture */

/**
 * bw_picture_is_levels:
 *
 * Returns: whether it is a BwLevelsPicture
 */
gboolean
bw_picture_is_levels (const BwPicture *picture)
{
  return picture->klass == &levels_picture_class;
}

/**
 * bw_levels_picture:
 *
 * Returns: (transfer none): @picture as what it is; it must be one of levels
 */
const BwLevelsPicture *
bw_levels_picture (const BwPicture *picture)
{
  g_return_val_if_fail (bw_picture_is_levels (picture), NULL);
  return (const BwLevelsPicture *) picture;
}

/**
 * bw_levels_picture_new:
 * @limits: (nullable) (element-type BwStandardLimits): where @view's limits come from; kept
 * @view: copied; its model is that of @hold, and it shows the whole
 *
 * Returns: (transfer full): the drawing
 */
BwPicture *
bw_levels_picture_new (BwLevelsHold *hold, GPtrArray *limits, const BwLevelsView *view)
{
  BwLevelsPicture *picture = g_new0 (BwLevelsPicture, 1);

  picture->parent = (BwPicture){ &levels_picture_class, BW_CURSOR_CROSS };
  picture->hold = bw_levels_hold_ref (hold);
  picture->limits = limits != NULL ? g_ptr_array_ref (limits) : NULL;
  picture->view = *view;
  picture->view.model = bw_levels_hold_model (hold);
  picture->view.across = &picture->across;
  bw_levels_view_range (&picture->view, &picture->across);
  return &picture->parent;
}

/**
 * bw_levels_picture_show_as:
 * @before: (nullable): another drawing of levels, or any other picture
 *
 * Shows the same part as @before does, if that is of the same length of time.
 */
void
bw_levels_picture_show_as (BwPicture *picture, const BwPicture *before)
{
  BwLevelsPicture *levels = (BwLevelsPicture *) picture;

  if (before != NULL && bw_picture_is_levels (before))
    bw_view_range_show_as (&levels->across, &bw_levels_picture (before)->across);
}

static void
free_picture (BwPicture *base)
{
  BwLevelsPicture *picture = (BwLevelsPicture *) base;

  bw_levels_hold_unref (picture->hold);
  g_clear_pointer (&picture->limits, g_ptr_array_unref);
  g_free (picture);
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  bw_draw_levels_view (cr, page->width, page->height, page->ink, &bw_levels_picture (base)->view);
}

static const BwRaster *
raster_of (const BwLevelsPicture *picture)
{
  return bw_levels_model_case (picture->view.model)->raster;
}

static char *
name (const BwPicture *base)
{
  const BwLevelsPicture *picture = bw_levels_picture (base);
  const char *raster = raster_of (picture)->name;
  return picture->view.span == BW_LEVELS_FIELD
             ? g_strdup_printf (_ ("The levels of a field of %s, drawn"), raster)
             : g_strdup_printf (_ ("The levels of a line of %s, drawn"), raster);
}

static char *
describe (const BwPicture *base)
{
  return bw_levels_view_describe (&bw_levels_picture (base)->view);
}

static char *
file_stem (const BwPicture *base)
{
  const BwLevelsPicture *picture = bw_levels_picture (base);
  return g_strdup_printf (picture->view.span == BW_LEVELS_FIELD ? "%s-levels-field" : "%s-levels",
                          raster_of (picture)->id);
}

/* Reading */

static gboolean
read_at (const BwLevelsPicture *picture, const BwPicturePage *page, double x, double y,
         BwPicturePoint *point)
{
  BwLevelsPoint read;
  if (!bw_levels_view_read (page->width, page->height, page->ink, &picture->view, x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){ .row = read.conductor, .along = read.time_s, .down = read.pointer_v };
  point->at[BW_LEVELS_POINT_LOW] = read.low_v;
  point->at[BW_LEVELS_POINT_HIGH] = read.high_v;
  point->at[BW_LEVELS_POINT_LINE] = read.line;
  point->at[BW_LEVELS_POINT_LINE_TIME] = read.line_time_s;
  return TRUE;
}

/* The first panel from @y on in steps of @step. */
static gboolean
read_beyond (const BwLevelsPicture *picture, const BwPicturePage *page, double x, double y,
             double step, BwPicturePoint *point)
{
  for (double off = GAP_STEP; off <= PANEL_GAP; off += GAP_STEP)
    if (read_at (picture, page, x, y + copysign (off, step), point))
      return TRUE;
  return FALSE;
}

/* Between two panels, so that the arrow keys get from one to the next, that below is read. */
static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  const BwLevelsPicture *picture = bw_levels_picture (base);
  BwPicturePoint above;

  if (read_at (picture, page, x, y, point))
    return TRUE;
  return read_beyond (picture, page, x, y, -1, &above)
         && read_beyond (picture, page, x, y, 1, point);
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y)
{
  return bw_levels_view_place (page->width, page->height, page->ink,
                               &bw_levels_picture (base)->view, (BwConductor) point->row,
                               point->along, point->down, x, y);
}

static double
volts_per_ire (const BwLevelsPicture *picture, const BwPicturePoint *point)
{
  BwWireLevels levels[BW_N_CONDUCTORS];
  guint n = bw_wire_levels (&bw_levels_model_case (picture->view.model)->form, levels);
  for (guint i = 0; i < n; i++)
    if ((int) levels[i].conductor == point->row)
      return levels[i].volts_per_ire;
  return 0;
}

/* One level, or from where to where the envelope goes. */
static char *
trace_text (const BwPicturePoint *point, double per_ire)
{
  double low_v = point->at[BW_LEVELS_POINT_LOW], high_v = point->at[BW_LEVELS_POINT_HIGH];
  if (bw_near (low_v, high_v, 50e-6))
    return bw_scope_level (high_v, per_ire);
  g_autofree char *low = bw_scope_number (low_v * 1e3, 1);
  g_autofree char *high = bw_scope_number (high_v * 1e3, 1);
  if (!(per_ire > 0))
    return g_strdup_printf (_ ("%s to %s\u00a0mV"), low, high);
  g_autofree char *low_ire = bw_scope_number (low_v / per_ire, 1);
  g_autofree char *high_ire = bw_scope_number (high_v / per_ire, 1);
  return g_strdup_printf (_ ("%s to %s\u00a0mV (%s to %s\u00a0IRE)"), low, high, low_ire, high_ire);
}

static char *
words (const BwPicture *base, const BwPicturePoint *point)
{
  const BwLevelsPicture *picture = bw_levels_picture (base);
  double per_ire = volts_per_ire (picture, point);
  g_autofree char *time = bw_scope_time (point->at[BW_LEVELS_POINT_LINE_TIME]);
  g_autofree char *trace = trace_text (point, per_ire);
  g_autofree char *pointer = bw_scope_level (point->down, per_ire);
  return g_strdup_printf (_ ("%s, line %d, %s after 0H: %s; pointer %s"),
                          bw_kind_label (&bw_conductors, (guint) point->row),
                          (int) point->at[BW_LEVELS_POINT_LINE], time, trace, pointer);
}

static double
trace_v (const BwPicturePoint *point)
{
  return (point->at[BW_LEVELS_POINT_LOW] + point->at[BW_LEVELS_POINT_HIGH]) / 2;
}

static char *
difference (const BwPicture *base, const BwPicturePoint *a, const BwPicturePoint *b)
{
  const BwLevelsPicture *picture = bw_levels_picture (base);
  double per_ire = a->row == b->row ? volts_per_ire (picture, a) : 0;
  g_autofree char *span = bw_scope_span (b->along - a->along);
  g_autofree char *trace = bw_scope_level (trace_v (b) - trace_v (a), per_ire);
  g_autofree char *pointer = bw_scope_level (b->down - a->down, per_ire);
  return g_strdup_printf (_ ("Between the cursors: %s, trace %s, pointer %s"), span, trace,
                          pointer);
}

/* Zooming */

static gboolean
is_whole (const BwPicture *base)
{
  return bw_view_range_is_whole (&bw_levels_picture (base)->across);
}

static void
show_whole (BwPicture *base)
{
  BwLevelsPicture *picture = (BwLevelsPicture *) base;
  bw_levels_view_range (&picture->view, &picture->across);
}

static void
zoom (BwPicture *base, const BwPicturePage *page, double x, double y, double factor)
{
  BwLevelsPicture *picture = (BwLevelsPicture *) base;
  BwViewRange *across = &picture->across;
  BwPicturePoint point;
  gboolean inside = read_point (base, page, x, y, &point);
  bw_view_range_zoom (across, inside ? point.along : (across->from + across->to) / 2, factor);
}

static double
x_at (const BwLevelsPicture *picture, const BwPicturePage *page, double time_s)
{
  BwConductor first = (BwConductor)
      g_bit_nth_lsf (bw_synthesis_conductors (bw_levels_model_synthesis (picture->view.model)), -1);
  double x = 0, y;
  bw_levels_view_place (page->width, page->height, page->ink, &picture->view, first, time_s, 0, &x,
                        &y);
  return x;
}

static void
pan (BwPicture *base, const BwPicturePage *page, double dx, double dy)
{
  BwLevelsPicture *picture = (BwLevelsPicture *) base;
  BwViewRange *across = &picture->across;
  double pixels = x_at (picture, page, across->to) - x_at (picture, page, across->from);
  if (pixels > 0)
    bw_view_range_pan (across, -dx * (across->to - across->from) / pixels);
}

static const BwPictureClass levels_picture_class = {
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
