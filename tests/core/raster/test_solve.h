/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "core/raster/solve.h"
#include "support.h"

/* What the two tests of the solver share. */

/* One figure as a person writes it. A list ends where @text is NULL. */
typedef struct
{
  BwFigure figure;
  const char *text;
} Entry;

static inline void
enter_all (BwSolver *solver, const Entry *entries)
{
  for (; entries->text != NULL; entries++)
    {
      g_autoptr (GError) error = NULL;
      bw_solver_enter (solver, entries->figure, entries->text, BW_FILE_MARK, &error);
      g_assert_no_error (error);
    }
}

/* Nothing known may be NaN or without limit, whatever was entered and however the run went. */
static inline void
assert_finite (const BwSolver *solver)
{
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      const BwSolved *at = &solver->at[i];
      if (!at->known || (isfinite (at->value) && isfinite (at->uncertainty)))
        continue;
      g_test_message ("%s is %g ± %g", bw_kind_id (&bw_figures, i), at->value, at->uncertainty);
      g_test_fail ();
    }
}

static inline void
assert_figure (const BwSolver *solver, BwFigure figure, double value, double tolerance)
{
  const BwSolved *at = &solver->at[figure];
  if (at->known && fabs (at->value - value) <= tolerance)
    return;
  g_test_message ("%s is %s%.12g, not %.12g", bw_kind_id (&bw_figures, figure),
                  at->known ? "" : "not known: ", at->value, value);
  g_test_fail ();
}

#define F(name) BW_FIGURE_##name
