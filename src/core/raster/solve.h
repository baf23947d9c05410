/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "raster.h"

G_BEGIN_DECLS

/* From any consistent set of known figures of a raster, the rest. */

/* The figures that may be known. Those of an interval come in pixels, in time and as a share of
 * the line; vertical ones are lines of a field, the mean of both where they differ. */
typedef enum
{
  BW_FIGURE_PIXEL_CLOCK,
  BW_FIGURE_LINE_RATE,
  BW_FIGURE_LINE_PERIOD,
  BW_FIGURE_FIELD_RATE,
  BW_FIGURE_FRAME_RATE,
  BW_FIGURE_LINES_PER_FRAME,
  BW_FIGURE_LINES_PER_FIELD,
  BW_FIGURE_H_TOTAL,
  BW_FIGURE_H_ACTIVE,
  BW_FIGURE_H_FRONT_PORCH,
  BW_FIGURE_H_SYNC,
  BW_FIGURE_H_BACK_PORCH,
  BW_FIGURE_H_BLANKING,
  BW_FIGURE_H_ACTIVE_TIME,
  BW_FIGURE_H_FRONT_PORCH_TIME,
  BW_FIGURE_H_SYNC_TIME,
  BW_FIGURE_H_BACK_PORCH_TIME,
  BW_FIGURE_H_BLANKING_TIME,
  BW_FIGURE_H_ACTIVE_SHARE,
  BW_FIGURE_H_FRONT_PORCH_SHARE,
  BW_FIGURE_H_SYNC_SHARE,
  BW_FIGURE_H_BACK_PORCH_SHARE,
  BW_FIGURE_H_BLANKING_SHARE,
  BW_FIGURE_V_ACTIVE,
  BW_FIGURE_V_FRONT_PORCH,
  BW_FIGURE_V_SYNC,
  BW_FIGURE_V_BACK_PORCH,
  BW_FIGURE_V_BLANKING,
  BW_N_FIGURES
} BwFigure;

/**
 * BwSolved:
 * @entered: the person gave it
 * @known: it was given or follows
 * @value: in the base unit of its dimension
 * @uncertainty: half of the last place that was written, carried through what follows
 * @from: set of the entered figures that it rests on, bit 1 << figure
 */
typedef struct
{
  gboolean entered;
  gboolean known;
  double value;
  double uncertainty;
  guint32 from;
} BwSolved;

/**
 * BwSolver:
 * @interlaced: two fields to a frame
 * @at: each figure
 *
 * Plain data: start from zeros, enter figures, run.
 */
typedef struct
{
  gboolean interlaced;
  BwSolved at[BW_N_FIGURES];
} BwSolver;

#define BW_SOLVE_ERROR (bw_solve_error_quark ())

typedef enum
{
  BW_SOLVE_ERROR_CONTRADICTION, /* figures that cannot all be true */
  BW_SOLVE_ERROR_NEGATIVE,      /* a figure that follows is negative */
  BW_SOLVE_ERROR_INCOMPLETE,    /* not enough is known for a raster */
  BW_SOLVE_ERROR_NOT_WHOLE      /* pixels or lines that come out as fractions */
} BwSolveError;

extern const BwKindTable bw_figures;

GQuark bw_solve_error_quark (void);

BwDimension bw_figure_dimension (BwFigure figure);
gboolean bw_solver_enter (BwSolver *solver, BwFigure figure, const char *text, char mark,
                          GError **error);
void bw_solver_forget (BwSolver *solver, BwFigure figure);
gboolean bw_solver_run (BwSolver *solver, guint32 *redundant, GError **error);
BwRaster *bw_solver_raster (const BwSolver *solver, GError **error);
void bw_solver_from_raster (BwSolver *solver, const BwRaster *raster);

G_END_DECLS
