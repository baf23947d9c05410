/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/drawing.h"
#include "draw/levels/model.h"

G_BEGIN_DECLS

/* The colour difference signals of a test signal in a plane, to scale: B−Y to the right, R−Y up, in
 * mV, with a ring of degrees; where the colour bars and the burst should be, and the path that the
 * signal takes from one bar to the next. Beside it a table of phases and amplitudes.
 *
 * The path is that of the chroma alone, without what is left of luminance in composite. In PAL that
 * of the next line, with the other sign of V, is dashed.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for all of them, these go first, in this order: the note below the caption, the
 * table, the second line of the caption, the degrees; last any single label that still has no
 * place. */

/* Half the side of the box at a bar's place, as a share of the longest of them: a size for the eye,
 * not a tolerance of a standard. */
#define BW_VECTOR_BOX_SHARE 0.025

/**
 * BwVectorView:
 * @model: what is drawn; of a signal that bw_vector_view_can_draw()
 * @frame: of the colour sequence, from 0; likewise @line: whose path is drawn
 * @video: load of the conductors
 * @mark: the decimal mark
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  BwLevelsModel *model;
  gint64 frame;
  int line;
  BwLevelsLoad video;
  char mark;
} BwVectorView;

/**
 * BwVectorTarget:
 * @switched: whether it is that of the lines with −V
 *
 * The place of a bar or of the burst, as it should be: across the right load.
 */
typedef struct
{
  BwBar bar; /* %BW_N_BARS for the burst */
  gboolean switched;
  double u_v;
  double v_v;
  double amplitude_v;
  double phase_deg;
} BwVectorTarget;

gboolean bw_vector_view_can_draw (const BwWireForm *form);
GArray *bw_vector_view_targets (const BwVectorView *what);
/* It has one place, the ring: points are volts on the wire, along B−Y or Pb across, and along R−Y or
 * Pr down. */
BwDrawing *bw_vector_drawing (const BwVectorView *what, double width, double height,
                              const BwInk *ink);

G_END_DECLS
