/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/waveform.h"
#include "draw/line/shape.h"

#define BT_601_SAMPLES 720

static gboolean
is_interlaced (const BwMapView *what)
{
  return what->raster->scan == BW_SCAN_INTERLACED;
}

gboolean
bw_map_hides (const BwMapView *what)
{
  return what->overscan_h > 0 || what->overscan_v > 0;
}

const char *
bw_map_text_across (BwMapInterval interval)
{
  static const BwLineInterval intervals[BW_N_MAP_INTERVALS] = {
    [BW_MAP_SYNC] = BW_INTERVAL_SYNC,
    [BW_MAP_BACK_PORCH] = BW_INTERVAL_BACK_PORCH,
    [BW_MAP_BORDER_FIRST] = BW_INTERVAL_BORDER_LEFT,
    [BW_MAP_ACTIVE] = BW_INTERVAL_ACTIVE,
    [BW_MAP_BORDER_LAST] = BW_INTERVAL_BORDER_RIGHT,
    [BW_MAP_FRONT_PORCH] = BW_INTERVAL_FRONT_PORCH,
  };
  return bw_line_interval_label (intervals[interval]);
}

const char *
bw_map_text_down (BwMapInterval interval)
{
  static const char *const labels[BW_N_MAP_INTERVALS] = {
    [BW_MAP_SYNC] = N_ ("field sync"),           [BW_MAP_BACK_PORCH] = N_ ("back porch"),
    [BW_MAP_BORDER_FIRST] = N_ ("top border"),   [BW_MAP_ACTIVE] = N_ ("active"),
    [BW_MAP_BORDER_LAST] = N_ ("bottom border"), [BW_MAP_FRONT_PORCH] = N_ ("front porch"),
  };
  return _ (labels[interval]);
}

/* Whole and half lines; part of a line, where overscan cuts, to a tenth. */
char *
bw_map_text_lines (double lines, char mark)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  double tenths = floor (lines * 10 + 0.5);
  gboolean whole = fmod (tenths, 10) < 0.5;

  g_ascii_formatd (number, sizeof number, whole ? "%.0f" : "%.1f", tenths / 10);
  g_strdelimit (number, ".", mark);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s\u00a0line", "%s\u00a0lines",
                                       whole ? (unsigned long) (tenths / 10) : 2),
                          number);
}

int
bw_map_pixels (const BwRaster *raster, BwMapInterval interval)
{
  switch (interval)
    {
    case BW_MAP_SYNC:
      return raster->h_sync;
    case BW_MAP_BACK_PORCH:
      return raster->h_back_porch;
    case BW_MAP_ACTIVE:
      return raster->h_active;
    case BW_MAP_FRONT_PORCH:
      return raster->h_front_porch;
    default:
      return raster->h_border;
    }
}

/* The picture's own samples; zero in a raster defined in time. */
static int
samples (const BwRaster *raster)
{
  return raster->h_active / MAX (raster->pixel_repeat, 1);
}

static BwRatio
aspect_of (const BwMapView *what, gboolean *square)
{
  BwRasterFigures figures;
  BwRatio aspect = { 4, 3 };
  int width = samples (what->raster);

  bw_raster_figures (what->raster, &figures);
  *square = FALSE;
  if (!bw_ratio_is_none (what->aspect))
    return what->aspect;
  if (width > 0 && width != BT_601_SAMPLES)
    *square = bw_ratio_make (2 * width, (gint64) (2 * figures.active_lines_frame + 0.5), &aspect);
  return aspect;
}

/**
 * bw_map_aspect:
 * @text: (out) (nullable): the aspect in words
 *
 * Returns: width of the active picture to its height, as it is drawn
 */
double
bw_map_aspect (const BwMapView *what, char **text)
{
  gboolean square;
  BwRatio aspect = aspect_of (what, &square);
  double value = bw_ratio_to_double (aspect);
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  if (text == NULL)
    return value;
  g_ascii_formatd (number, sizeof number, "%.3f", value);
  g_strdelimit (number, ".", what->mark);
  g_autofree char *ratio = aspect.num <= 64
                               ? g_strdup_printf ("%d:%d", (int) aspect.num, (int) aspect.den)
                               : g_strdup_printf ("%s:1", number);
  *text = square ? g_strdup_printf (_ ("%s, square pixels"), ratio) : g_strdup (ratio);
  return value;
}

char *
bw_map_text_caption (const BwMapView *what)
{
  const char *shows = is_interlaced (what)
                          ? _ ("one field as a map, time to the right, lines down")
                          : _ ("the frame as a map, time to the right, lines down");
  return bw_text_caption (what->raster->name, shows, what->raster->source);
}

/* Across, what is seen of the picture, in pixels or in time. */
static char *
seen_width (const BwMapView *what, const BwRasterFigures *figures)
{
  double seen = 1 - what->overscan_h;
  if (!figures->has_pixels)
    return bw_text_us (seen * figures->h_active_s, what->mark);
  return g_strdup_printf ("%.0f\u00a0px", floor (seen * samples (what->raster) + 0.5));
}

static void
add_glass (GString *text, const BwMapView *what, const BwRasterFigures *figures)
{
  g_autofree char *hidden_h = bw_text_share (what->overscan_h, what->mark);
  g_autofree char *hidden_v = bw_text_share (what->overscan_v, what->mark);
  g_autofree char *width = seen_width (what, figures);
  g_autofree char *height = bw_map_text_lines ((1 - what->overscan_v) * figures->active_lines_frame,
                                               what->mark);

  g_string_append_c (text, ' ');
  g_string_append_printf (
      text,
      _ ("The dashed line is the edge of the glass: overscan hides %1$s of the "
         "width and %2$s of the height, so that %3$s and %4$s of the frame are seen."),
      hidden_h, hidden_v, width, height);
}

char *
bw_map_text_note (const BwMapView *what)
{
  BwRasterFigures figures;
  g_autofree char *aspect = NULL;
  bw_raster_figures (what->raster, &figures);
  double share = figures.h_active_s / figures.line_period_s * figures.active_lines_frame
                 / figures.lines_per_frame;
  g_autofree char *active = bw_text_share (share, what->mark);
  GString *text = g_string_new (NULL);

  bw_map_aspect (what, &aspect);
  g_string_append_printf (text, _ ("The active picture takes %1$s of the time; it is drawn %2$s."),
                          active, aspect);
  if (bw_map_hides (what))
    add_glass (text, what, &figures);
  return g_string_free (text, FALSE);
}

/* What stands in the picture, in as many lines of text. */
char *
bw_map_text_picture (const BwMapView *what, guint lines)
{
  BwRasterFigures figures;
  g_autofree char *aspect = NULL;
  bw_raster_figures (what->raster, &figures);
  g_autofree char *height = bw_map_text_lines (figures.v_active_lines, what->mark);
  g_autofree char *time = bw_text_us (figures.h_active_s, what->mark);
  g_autofree char *width = figures.has_pixels
                               ? g_strdup_printf ("%d\u00a0px", what->raster->h_active)
                               : g_steal_pointer (&time);
  GString *text = g_string_new (_ ("active picture"));

  bw_map_aspect (what, &aspect);
  if (lines > 1)
    g_string_append_printf (text, "\n%s × %s", width, height);
  if (lines > 2)
    g_string_append_printf (text, "\n%s", aspect);
  return g_string_free (text, FALSE);
}

static void
describe_axis (GString *text, const BwMapAxis *axis, gboolean is_down, const BwMapView *what)
{
  for (guint i = 0; i < BW_N_MAP_INTERVALS; i++)
    {
      double length = axis->start[i + 1] - axis->start[i];
      g_autofree char *extent = is_down ? bw_map_text_lines (length, what->mark)
                                        : bw_text_length (length, what->mark);
      if (length > 0)
        g_string_append_printf (text, "%s %s %s", i > 0 ? "," : "",
                                is_down ? bw_map_text_down (i) : bw_map_text_across (i), extent);
    }
  g_string_append_c (text, '.');
}

/* Every interval in both directions, and what is seen of the picture. */
static char *
describe (const BwMapView *what)
{
  BwMapAxis across, down;
  g_autofree char *caption = bw_map_text_caption (what);
  g_autofree char *note = bw_map_text_note (what);
  GString *text = g_string_new (caption);

  bw_map_axes (what->raster, &across, &down);
  g_string_append_printf (text, ". %s", _ ("Across:"));
  describe_axis (text, &across, FALSE, what);
  g_string_append_printf (text, " %s", _ ("Down:"));
  describe_axis (text, &down, TRUE, what);
  g_string_append_printf (text, " %s", note);
  return g_string_free (text, FALSE);
}

/* Reading */

typedef struct
{
  BwRaster *raster;
  BwMapAxis across;
  BwMapAxis down;
  char mark;
} Map;

static void
free_map (gpointer data)
{
  Map *map = data;
  bw_raster_free (map->raster);
  g_free (map);
}

static gboolean
is_active (const BwMapAxis *axis, double value)
{
  return value >= axis->start[BW_MAP_ACTIVE] && value < axis->start[BW_MAP_ACTIVE + 1];
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Map *map = data;
  int line = bw_raster_line_at (map->raster, 0, 2 * (int) floor (point->down), NULL);
  g_autofree char *time = bw_text_time (point->across, map->mark);
  gboolean inside = is_active (&map->across, point->across) && is_active (&map->down, point->down);
  return g_strdup_printf (_ ("Line %1$d, %2$s after 0H: %3$s"), line, time,
                          inside ? _ ("picture") : _ ("outside the picture"));
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Map *map = data;
  g_autofree char *span = bw_text_span (b->across - a->across, map->mark);
  g_autofree char *lines = bw_text_lines (b->down - a->down, map->mark);
  return g_strdup_printf (_ ("Between the cursors: %1$s across, %2$s down"), span, lines);
}

/**
 * bw_map_take_words:
 *
 * Tells @drawing what it shows, and what its points say.
 */
void
bw_map_take_words (BwDrawing *drawing, const BwMapLayout *layout)
{
  static const BwDrawingReader reader = { BW_CURSOR_CROSS, words, difference, free_map };
  const BwRaster *raster = layout->what->raster;
  Map *map = g_new (Map, 1);

  *map = (Map){ bw_raster_copy (raster), layout->across, layout->down, layout->what->mark };
  bw_drawing_take_words (drawing,
                         g_strdup_printf (_ ("The map of %s, drawn"), bw_or_empty (raster->name)),
                         describe (layout->what),
                         g_strdup_printf ("%s-map", bw_or_empty (raster->id)));
  bw_drawing_take_reader (drawing, &reader, map);
}
