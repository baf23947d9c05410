/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/dimline.h"
#include "ruler.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of a drawn vertical interval lies. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_FIELD_LEAVE_SCALE,
  BW_FIELD_LEAVE_NOTE,
  BW_FIELD_LEAVE_BURST,
  BW_FIELD_LEAVE_TOTAL,
  BW_FIELD_LEAVE_TIMES,
  BW_FIELD_LEAVE_LONG_CAPTION,
  BW_N_FIELD_LEAVES
} BwFieldLeave;

/* @low and @high are the levels that the lane spans. */
typedef struct
{
  BwLane kind;
  double low;
  double high;
  double top; /* y of @high */
  double bottom;
} BwFieldLane;

#define BW_FIELD_LANES_MAX 3

typedef struct
{
  BwFieldShape shape;
  BwBurst burst;
  BwDimRow total; /* above the lanes, outermost first */
  BwDimRow parts;
  BwDimRow no_burst; /* in the lane, over the lines without */
  BwFieldLane lanes[BW_FIELD_LANES_MAX];
  guint n_lanes;
  double head_y; /* middle of the row's name */
  double ticks_y;
  double numbers_y; /* top of the line numbers */
  double scale_y;   /* top of the scale in microseconds */
  double bottom;
} BwFieldRow;

typedef struct
{
  const BwFieldView *what;
  BwRuler ruler;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwFieldLeave */
  gboolean burst; /* whether it is drawn */
  BwFieldRow row[2];
  guint n_rows;
  double words_y; /* top of the caption */
} BwFieldLayout;

static inline gboolean
bw_field_keeps (const BwFieldLayout *layout, BwFieldLeave leave)
{
  return layout->left_out <= (guint) leave;
}

double bw_field_lane_y (const BwFieldLane *lane, double level);
int bw_field_line_start (const BwFieldShape *shape, int half_line, int *line);
gboolean bw_field_is_whole (const BwFieldLayout *layout, double x0, double x1);
double bw_field_name_start (const BwFieldLayout *layout, const BwFieldRow *row);
double bw_field_name_end (const BwFieldLayout *layout, const BwFieldRow *row, gboolean colour);

void bw_field_init_range (const BwFieldRow *rows, guint n, BwViewRange *range);
void bw_field_init_rows (BwFieldLayout *layout);
void bw_field_place_across (BwFieldLayout *layout);
void bw_field_size_rows (BwFieldLayout *layout);
gboolean bw_field_place_down (BwFieldLayout *layout);
void bw_field_clear_dims (BwFieldRow *row);

gboolean bw_field_claim_words (BwFieldLayout *layout);
gboolean bw_field_claim_labels (BwFieldLayout *layout);

char *bw_field_text_lines (int half_lines, char mark);
char *bw_field_text_row (const BwFieldRow *row, gboolean colour);
char *bw_field_text_caption (const BwFieldView *what);
char *bw_field_text_note (const BwFieldView *what);
const char *bw_field_text_lane (BwLane lane);
void bw_field_take_words (BwDrawing *drawing, const BwFieldLayout *layout);

void bw_field_layout_draw (const BwFieldLayout *layout, cairo_t *cr);

G_END_DECLS
