/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/dimline.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of a drawn map lies. */

/* The intervals of either direction, in the order in which they pass. */
typedef enum
{
  BW_MAP_SYNC,
  BW_MAP_BACK_PORCH,
  BW_MAP_BORDER_FIRST,
  BW_MAP_ACTIVE,
  BW_MAP_BORDER_LAST,
  BW_MAP_FRONT_PORCH,
  BW_N_MAP_INTERVALS
} BwMapInterval;

/* From a dimension line at the right to its labels, crossed by leaders; in heights of a line of
 * text. */
#define BW_MAP_LABEL_GAP 1.3

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_MAP_LEAVE_NOTE,
  BW_MAP_LEAVE_TIMES,
  BW_MAP_LEAVE_LINES,
  BW_MAP_LEAVE_PERIOD,
  BW_MAP_LEAVE_PIXELS,
  BW_MAP_LEAVE_LONG_CAPTION,
  BW_N_MAP_LEAVES
} BwMapLeave;

/**
 * BwMapAxis:
 * @start: of each interval, in seconds after 0H or in lines after 0V; the last one is the end
 * @place0: on the page, of the start of what is shown
 * @place1: of its end
 */
typedef struct
{
  double start[BW_N_MAP_INTERVALS + 1];
  BwViewRange range;
  double place0;
  double place1;
} BwMapAxis;

/* A dimension of the vertical kind: its label stands at its side. */
typedef struct
{
  double y0;
  double y1;
  char *text;
  BwBox box; /* without width: no place */
} BwMapDim;

typedef struct
{
  const BwMapView *what;
  BwRasterFigures figures;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwMapLeave */
  BwMapAxis across;
  BwMapAxis down;
  BwBox glass; /* the part of the picture that is seen; on the page, not clipped */
  BwDimRow period;
  BwDimRow intervals;
  BwMapDim side[BW_N_MAP_INTERVALS]; /* at the right */
  guint n_side;
  double side_x;
  BwMapDim lines; /* at the left; no text if there is none */
  double lines_x;
  double words_y; /* top of the caption */
} BwMapLayout;

static inline gboolean
bw_map_keeps (const BwMapLayout *layout, BwMapLeave leave)
{
  return layout->left_out <= (guint) leave;
}

static inline double
bw_map_place (const BwMapAxis *axis, double value)
{
  return bw_view_range_place (&axis->range, value, axis->place0, axis->place1);
}

void bw_map_axes (const BwRaster *raster, BwMapAxis *across, BwMapAxis *down);
double bw_map_aspect (const BwMapView *what, char **text);
gboolean bw_map_hides (const BwMapView *what);
gboolean bw_map_is_whole (const BwMapAxis *axis, double from, double to);

void bw_map_place_all (BwMapLayout *layout);
gboolean bw_map_is_large_enough (const BwMapLayout *layout);
void bw_map_clear_side (BwMapLayout *layout);

gboolean bw_map_claim_words (BwMapLayout *layout);
gboolean bw_map_claim_labels (BwMapLayout *layout);

const char *bw_map_text_across (BwMapInterval interval);
const char *bw_map_text_down (BwMapInterval interval);
char *bw_map_text_lines (double lines, char mark);
int bw_map_pixels (const BwRaster *raster, BwMapInterval interval);
char *bw_map_text_caption (const BwMapView *what);
char *bw_map_text_note (const BwMapView *what);
void bw_map_take_words (BwDrawing *drawing, const BwMapLayout *layout);
char *bw_map_text_picture (const BwMapView *what, guint lines);

void bw_map_layout_draw (const BwMapLayout *layout, cairo_t *cr);

G_END_DECLS
