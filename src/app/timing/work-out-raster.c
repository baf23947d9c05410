/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "work-out-private.h"

#include <glib/gi18n-lib.h>

/**
 * bw_solver_conflict:
 * @solver: entered figures that contradict each other
 *
 * Returns: set of those figures without any one of which the rest would hold together; empty if
 * there is more than one contradiction
 */
guint32
bw_solver_conflict (const BwSolver *solver)
{
  guint32 conflict = 0, redundant;

  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      BwSolver without = *solver;
      if (!solver->at[i].entered)
        continue;
      bw_solver_forget (&without, i);
      if (bw_solver_run (&without, &redundant, NULL))
        conflict |= 1u << i;
    }
  return conflict;
}

/* The figures say nothing of polarity, shape and numbering: those stay as they were. */
static void
keep_sync (BwRaster *raster, const BwRaster *base)
{
  raster->h_polarity = base->h_polarity;
  raster->v_polarity = base->v_polarity;
  raster->sync_shape = base->sync_shape;
  raster->numbered_before_sync = base->numbered_before_sync;
}

/* Equalising pulses and serration stay if they still go with the raster. */
static void
keep_pulses (BwRaster *raster, const BwRaster *base)
{
  BwRaster *with = bw_raster_copy (raster);
  with->equalising_before = base->equalising_before;
  with->equalising_after = base->equalising_after;
  with->equalising_width_s = base->equalising_width_s;
  with->serration_width_s = base->serration_width_s;
  if (bw_raster_check (with, NULL))
    {
      raster->equalising_before = with->equalising_before;
      raster->equalising_after = with->equalising_after;
      raster->equalising_width_s = with->equalising_width_s;
      raster->serration_width_s = with->serration_width_s;
    }
  bw_raster_free (with);
}

static void
name_raster (BwRaster *raster)
{
  BwRasterFigures f;
  char mark = bw_quantity_locale_mark ();
  bw_raster_figures (raster, &f);
  g_autofree char *line = bw_quantity_format (f.line_rate_hz, BW_DIMENSION_FREQUENCY, 5, mark);
  g_autofree char *field = bw_quantity_format (f.field_rate_hz, BW_DIMENSION_FREQUENCY, 4, mark);
  int lines = (int) f.active_lines_frame;

  g_free (raster->id);
  g_free (raster->name);
  raster->id = g_strdup_printf ("own-%dx%d-%.0f", raster->h_active, lines, f.field_rate_hz);
  raster->name = g_strdup_printf (_ ("%1$d×%2$d, %3$s, %4$s, worked out"), raster->h_active, lines,
                                  line, field);
}

/**
 * bw_work_out_make:
 * @base: (nullable): the raster that the figures were changed from
 *
 * Returns: (transfer full): the raster that the figures make, or %NULL with @error that says what
 * is missing
 */
BwRaster *
bw_work_out_make (const BwSolver *solver, const BwRaster *base, GError **error)
{
  BwRaster *raster = bw_solver_raster (solver, error);
  if (raster == NULL)
    return NULL;
  if (base != NULL)
    {
      BwRaster *kept = bw_raster_copy (raster);
      keep_sync (kept, base);
      keep_pulses (kept, base);
      if (bw_raster_check (kept, NULL))
        {
          bw_raster_free (raster);
          raster = kept;
        }
      else
        bw_raster_free (kept);
    }
  name_raster (raster);
  return raster;
}
