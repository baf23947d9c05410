/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/levels/model.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of the drawn plane lies. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_VECTOR_LEAVE_NOTE,
  BW_VECTOR_LEAVE_TABLE,
  BW_VECTOR_LEAVE_LONG_CAPTION,
  BW_VECTOR_LEAVE_DEGREES,
  BW_N_VECTOR_LEAVES
} BwVectorLeave;

/**
 * BwVectorSample:
 * @time_s: after 0H of the line
 * @u_v: on the wire; likewise @v_v
 *
 * A point of the path.
 */
typedef struct
{
  double time_s;
  double u_v;
  double v_v;
} BwVectorSample;

#define BW_VECTOR_COLUMNS 4

/**
 * BwVectorLayout:
 * @targets: (element-type BwVectorTarget)
 * @path: (element-type BwVectorSample): of the line; @other: of the next one, or %NULL
 * @full_v: at the ring
 * @x: of the middle; likewise @y
 * @radius: of the ring
 * @tick_v: of the grid
 * @column_x: right edge of each column of the table; the first is left-aligned
 */
typedef struct
{
  const BwVectorView *what;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwVectorLeave */
  GArray *targets;
  GArray *path;
  GArray *other;
  double full_v;
  double x;
  double y;
  double radius;
  double tick_v;
  BwBox table;
  double column_x[BW_VECTOR_COLUMNS];
  double words_y;
} BwVectorLayout;

static inline gboolean
bw_vector_keeps (const BwVectorLayout *layout, BwVectorLeave leave)
{
  return layout->left_out <= (guint) leave;
}

static inline double
bw_vector_x (const BwVectorLayout *layout, double u_v)
{
  return layout->x + u_v / layout->full_v * layout->radius;
}

static inline double
bw_vector_y (const BwVectorLayout *layout, double v_v)
{
  return layout->y - v_v / layout->full_v * layout->radius;
}

/* Half of the side of a target's box on the page. */
static inline double
bw_vector_box_half (const BwVectorLayout *layout)
{
  return MAX (BW_VECTOR_BOX_SHARE * layout->radius, 0.22 * layout->canvas->text_height);
}

gboolean bw_vector_is_switched (const BwVectorView *what);
gboolean bw_vector_is_coded (const BwVectorView *what);
GArray *bw_vector_path_of (const BwVectorView *what, guint lines_later);

void bw_vector_init_scale (BwVectorLayout *layout);
void bw_vector_place_all (BwVectorLayout *layout);
gboolean bw_vector_is_large_enough (const BwVectorLayout *layout);
gboolean bw_vector_claim_words (BwVectorLayout *layout);
gboolean bw_vector_claim_labels (BwVectorLayout *layout);

const char *bw_vector_name (const BwVectorView *what, const BwVectorTarget *target);
guint bw_vector_rows (const GArray *targets);
char *bw_vector_text_cell (const BwVectorView *what, guint row, guint column,
                           const GArray *targets);
char *bw_vector_text_caption (const BwVectorView *what);
char *bw_vector_text_note (const BwVectorView *what);
void bw_vector_take_words (BwDrawing *drawing, const BwVectorLayout *layout);

void bw_vector_layout_draw (const BwVectorLayout *layout, cairo_t *cr);

G_END_DECLS
