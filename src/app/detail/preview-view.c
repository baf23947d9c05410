/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-view-private.h"

#include <math.h>

const double bw_preview_times[BW_N_PREVIEW_TIMES] = { BW_PREVIEW_WHOLE, 1, 2, 4, 8, 16 };

#define DARKEST 0.01

/**
 * bw_preview_view_new:
 *
 * Returns: (transfer full): one with no preview yet
 */
BwPreviewView *
bw_preview_view_new (void)
{
  BwPreviewView *view = g_new0 (BwPreviewView, 1);

  bw_detail_case_init (&view->what);
  view->title = g_strdup ("");
  view->sent = g_strdup ("");
  view->centre_x = view->centre_y = 0.5;
  return view;
}

static void
drop_images (BwPreviewView *view)
{
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    g_clear_pointer (&view->images[i], cairo_surface_destroy);
}

void
bw_preview_view_free (BwPreviewView *view)
{
  drop_images (view);
  g_clear_pointer (&view->result, bw_preview_result_unref);
  g_free (view->error);
  g_free (view->note);
  g_free (view->title);
  g_free (view->sent);
  g_free (view);
}

/* What is shown */

/**
 * bw_preview_view_set_case:
 * @what: copied
 * @title: the source and the input
 */
void
bw_preview_view_set_case (BwPreviewView *view, const BwDetailCase *what, const char *title)
{
  BwDetail detail;

  view->what = *what;
  bw_detail_compute (what, &detail);
  view->width_m = detail.width_m;
  view->height_m = detail.height_m;
  g_free (view->title);
  view->title = g_strdup (title);
}

/**
 * bw_preview_view_set_sent:
 * @kind: BwTestKind, or %BW_PREVIEW_OPENED
 * @words: what it is
 */
void
bw_preview_view_set_sent (BwPreviewView *view, guint kind, const char *words)
{
  view->kind = kind;
  g_free (view->sent);
  view->sent = g_strdup (words);
}

/**
 * bw_preview_view_set_times:
 * @times: magnification, or %BW_PREVIEW_WHOLE
 */
void
bw_preview_view_set_times (BwPreviewView *view, double times)
{
  view->times = times;
}

/**
 * bw_preview_view_set_centre:
 * @across: middle of the part that is shown, as share of the width of the glass
 * @down: likewise of its height
 */
void
bw_preview_view_set_centre (BwPreviewView *view, double across, double down)
{
  view->centre_x = across;
  view->centre_y = down;
}

double
bw_preview_view_get_times (const BwPreviewView *view)
{
  return view->times;
}

void
bw_preview_view_set_frame (BwPreviewView *view, guint frame)
{
  view->frame = frame;
}

/* What the light after the path is multiplied by. */
double
bw_preview_view_exposure (const BwPreviewView *view)
{
  if (view->result == NULL)
    return 1;
  return pow (MAX (view->result->exposure, DARKEST), 1 - view->brightness);
}

static cairo_surface_t *
image_of (const BwPlanes *light, double exposure)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, light->width,
                                                       light->height);
  if (cairo_surface_status (image) == CAIRO_STATUS_SUCCESS)
    bw_preview_pack (light, exposure, (guint32 *) (gpointer) cairo_image_surface_get_data (image),
                     cairo_image_surface_get_stride (image) / (int) sizeof (guint32));
  cairo_surface_mark_dirty (image);
  return image;
}

static void
make_images (BwPreviewView *view)
{
  const BwPreviewResult *result = view->result;

  drop_images (view);
  if (result == NULL)
    return;
  view->images[BW_PREVIEW_AFTER] = image_of (result->screen, bw_preview_view_exposure (view));
  view->images[BW_PREVIEW_UNTOUCHED] = image_of (result->untouched, 1);
}

/**
 * bw_preview_view_set_brightness:
 * @share: 0: nothing of the light is cut off; 1: as bright on average as the untouched
 */
void
bw_preview_view_set_brightness (BwPreviewView *view, double share)
{
  view->brightness = share;
  make_images (view);
}

/**
 * bw_preview_view_wish:
 * @width: of the page; likewise @height and @ink
 * @density: pixels of the screen to a unit of the page
 * @wish: (inout): what is to be shown on the page is put into it
 *
 * What is drawn from now on is as large as this wish.
 */
void
bw_preview_view_wish (BwPreviewView *view, double width, double height, const BwInk *ink,
                      double density, BwPreviewWish *wish)
{
  BwPreviewLayout layout;

  bw_preview_layout_init (&layout, view, width, height, ink, TRUE);
  view->wished_width = layout.panes[0].width;
  view->wished_height = layout.panes[0].height;
  view->wished_pixels_per_m = layout.pixels_per_m;
  view->wished_whole = !(view->times > 0);
  wish->what = view->what;
  wish->kind = view->kind;
  wish->preview = (BwPreview){
    .centre_x = layout.centre_x,
    .centre_y = layout.centre_y,
    .pixels_per_m = layout.pixels_per_m * density,
    .width = (int) (layout.panes[0].width * density),
    .height = (int) (layout.panes[0].height * density),
    .frame = view->frame,
  };
  bw_preview_layout_clear (&layout);
}

/**
 * bw_preview_view_set_result:
 * @result: (transfer full)
 */
void
bw_preview_view_set_result (BwPreviewView *view, BwPreviewResult *result)
{
  g_clear_pointer (&view->result, bw_preview_result_unref);
  view->result = result;
  g_clear_pointer (&view->error, g_free);
  make_images (view);
}

/**
 * bw_preview_view_set_error:
 * @words: why there can be no preview; shown in its place
 */
void
bw_preview_view_set_error (BwPreviewView *view, const char *words)
{
  g_free (view->error);
  view->error = g_strdup (words);
  g_clear_pointer (&view->result, bw_preview_result_unref);
  drop_images (view);
}

/**
 * bw_preview_view_set_note:
 * @words: (nullable): what else is to be said of the picture
 */
void
bw_preview_view_set_note (BwPreviewView *view, const char *words)
{
  g_free (view->note);
  view->note = g_strdup (words);
}

/**
 * bw_preview_view_get_result:
 *
 * Returns: (transfer none) (nullable): what is shown; %NULL if there is none yet, or can be none
 */
const BwPreviewResult *
bw_preview_view_get_result (const BwPreviewView *view)
{
  return view->result;
}

/* Zooming, in the steps of the list */

#define LEAST_ZOOM 1.001

/* The next magnification of the list; @now: that of the picture, as a number. */
static double
next_times (const BwPreviewView *view, double now, double whole, gboolean larger)
{
  if (larger)
    {
      for (guint i = 1; i < BW_N_PREVIEW_TIMES; i++)
        if (bw_preview_times[i] > now * LEAST_ZOOM)
          return bw_preview_times[i];
      return view->times;
    }
  for (guint i = BW_N_PREVIEW_TIMES - 1; i > 0; i--)
    if (bw_preview_times[i] * LEAST_ZOOM < now && bw_preview_times[i] > whole * LEAST_ZOOM)
      return bw_preview_times[i];
  return BW_PREVIEW_WHOLE;
}

/* What a drawing of the view shows: units of the page to a metre of glass, and the middle of the
 * part as shares of the glass. Returns whether there is glass. */
static gboolean
shown_part (const BwPreviewView *view, const BwDrawing *drawing, double *scale, double *centre_x,
            double *centre_y)
{
  if (!(view->width_m > 0) || bw_drawing_places (drawing)->len == 0)
    return FALSE;
  const BwDrawingPlace *pane = &g_array_index (bw_drawing_places (drawing), BwDrawingPlace, 0);
  *scale = pane->box.width / (pane->across.to - pane->across.from);
  *centre_x = (pane->across.from + pane->across.to) / 2 / view->width_m;
  *centre_y = (pane->down.from + pane->down.to) / 2 / view->height_m;
  return *scale > 0;
}

/**
 * bw_preview_view_zoom:
 * @drawing: of the view, as it is
 * @x: a place of it, which keeps its place; the middle, if no picture is there
 * @y: likewise
 * @factor: more than one for the next magnification, less for the one before; zero for the whole
 */
void
bw_preview_view_zoom (BwPreviewView *view, const BwDrawing *drawing, double x, double y,
                      double factor)
{
  double scale, centre_x, centre_y, life = bw_preview_pixels_per_m (1);
  BwDrawingPoint point;

  if (!(factor > 0))
    {
      bw_preview_view_set_times (view, BW_PREVIEW_WHOLE);
      return;
    }
  if (!shown_part (view, drawing, &scale, &centre_x, &centre_y))
    return;
  const BwBox *pane = &g_array_index (bw_drawing_places (drawing), BwDrawingPlace, 0).box;
  double whole = bw_preview_whole_pixels_per_m (&view->what, (int) pane->width, (int) pane->height);
  double times = next_times (view, scale / life, whole / life, factor > 1);

  if (bw_near (times, view->times, 1e-9))
    return;
  if (times > 0 && bw_drawing_read (drawing, x, y, &point))
    {
      double kept = 1 - scale / (times * life); /* of the way from the middle to the place */
      view->centre_x = centre_x + kept * (point.across / view->width_m - centre_x);
      view->centre_y = centre_y + kept * (point.down / view->height_m - centre_y);
    }
  bw_preview_view_set_times (view, times);
}

/* The part that is shown does not go beyond the glass. */
static double
clamp_centre (double centre, double part)
{
  return part >= 1 ? 0.5 : CLAMP (centre, part / 2, 1 - part / 2);
}

/**
 * bw_preview_view_pan:
 * @drawing: of the view, as it is
 * @dx: by how much the glass moves to the right
 * @dy: downwards
 */
void
bw_preview_view_pan (BwPreviewView *view, const BwDrawing *drawing, double dx, double dy)
{
  double scale, centre_x, centre_y;

  if (!shown_part (view, drawing, &scale, &centre_x, &centre_y))
    return;
  const BwBox *pane = &g_array_index (bw_drawing_places (drawing), BwDrawingPlace, 0).box;
  double width = scale * view->width_m, height = scale * view->height_m;
  view->centre_x = clamp_centre (centre_x - dx / width, pane->width / width);
  view->centre_y = clamp_centre (centre_y - dy / height, pane->height / height);
}
