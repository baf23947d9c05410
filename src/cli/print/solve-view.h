/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/raster/solve.h"

G_BEGIN_DECLS

/**
 * BwSolveView:
 * @solver: run, without a contradiction
 * @redundant: set of the entered figures that also follow from the others
 *
 * What follows from the figures that are known.
 */
typedef struct
{
  const BwSolver *solver;
  guint32 redundant;
} BwSolveView;

void bw_solve_view_append_text (const BwSolveView *view, GString *to);
void bw_solve_view_to_json (const BwSolveView *view, BwJson *json);

void bw_solve_figures_append_text (GString *to);
void bw_solve_figures_to_json (BwJson *json);

G_END_DECLS
