/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "canvas.h"

G_BEGIN_DECLS

/* Dimension lines as on an engineering drawing: extension lines from the thing that is measured,
 * a thin line with arrowheads between them, and the figure in or beside that line. */

#define BW_DIM_MAX 6

/* How a label may be set, from wide to narrow: its lines of text. */
typedef enum
{
  BW_DIM_ONE_LINE, /* stands in the dimension line, which it interrupts */
  BW_DIM_TWO_LINES,
  BW_DIM_THREE_LINES,
  BW_N_GIVEN_DIM_FORMS,
  BW_DIM_BROKEN_NAME = BW_N_GIVEN_DIM_FORMS, /* three lines, the first broken where it must be */
  BW_N_DIM_FORMS
} BwDimForm;

/**
 * BwDim:
 * @x0: where the measured thing starts; @x1: where it ends, not less than @x0
 * @text: owned; the label in each form
 * @label: the one of @text that is shown, once the row has its size
 * @box: where the label stands, once the row has been claimed
 */
typedef struct
{
  double x0;
  double x1;
  char *text[BW_N_DIM_FORMS];
  const char *label;
  BwBox box;
} BwDim;

/**
 * BwDimRow:
 * @above: whether the labels of more than one line stand above the dimension line, not below it
 * @breaks: whether names may be broken, which takes one line more
 * @y: of the dimension line
 * @from_y: of the measured thing, where the extension lines begin
 * @form: how all labels of the row are set
 * @before: height that the row needs above @y; @after: below it
 *
 * Dimensions side by side on one line, in the order of their place.
 */
typedef struct
{
  guint n;
  BwDim at[BW_DIM_MAX];
  gboolean above;
  gboolean breaks;
  double y;
  double from_y;
  BwDimForm form;
  double before;
  double after;
} BwDimRow;

void bw_dim_row_add (BwDimRow *row, double x0, double x1, const char *const *text);
void bw_dim_row_add_figure (BwDimRow *row, double x0, double x1, const char *name,
                            const char *figure, const char *rest);
void bw_dim_row_clear (BwDimRow *row);
void bw_dim_row_size (BwDimRow *row, BwCanvas *canvas);
gboolean bw_dim_row_claim (BwDimRow *row, BwCanvas *canvas);
void bw_dim_row_draw (const BwDimRow *row, const BwCanvas *canvas, cairo_t *cr);

G_END_DECLS
