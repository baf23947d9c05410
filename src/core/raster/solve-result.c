/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

/* What follows from the figures of a raster that are known. */

#define DIGITS 7

/* A share of a value that its seven digits do not show. */
#define UNSEEN 1e-9

/* Fractions have no unit. */
static BwValue
unit_of (guint figure)
{
  BwDimension dimension = bw_figure_dimension (figure);
  return bw_value_if (dimension != BW_DIMENSION_FRACTION,
                      bw_value_words ("unit", bw_quantity_base_unit (dimension)));
}

/* Half of the last place that was written, and what it makes of the rest. */
static BwValue
uncertainty (BwNode *row, guint figure, const BwSolved *solved)
{
  BwValue value = bw_value_quantity ("uncertainty", solved->uncertainty,
                                     bw_figure_dimension (figure), 2);
  gboolean seen = solved->uncertainty > solved->value * UNSEEN;
  return bw_value_read_as (value,
                           seen ? bw_node_print (row, "± %s",
                                                 bw_node_quantity (row, solved->uncertainty,
                                                                   bw_figure_dimension (figure), 2))
                                : "");
}

static void
add_figure (BwNode *table, guint figure, const BwSolved *solved)
{
  BwNode *row = bw_node_row (table);
  g_autofree char *ids = bw_kind_set_ids (&bw_figures, solved->from, ", ");
  /* Translators: the figures that it follows from. */
  const char *from = solved->entered ? _ ("entered") : bw_node_print (row, _ ("from %s"), ids);

  bw_node_cell (row, bw_value_words ("id", bw_kind_id (&bw_figures, figure)));
  bw_node_cell (row,
                bw_value_quantity ("value", solved->value, bw_figure_dimension (figure), DIGITS));
  bw_node_cell (row, uncertainty (row, figure, solved));
  bw_node_cell (row, bw_value_read_as (bw_value_set ("from", &bw_figures, solved->from), from));
  bw_node_member (row, bw_value_words ("name", bw_kind_label (&bw_figures, figure)));
  bw_node_member (row, unit_of (figure));
  bw_node_member (row, bw_value_flag ("entered", solved->entered));
}

static void
add_figures (BwNode *to, const BwSolver *solver)
{
  BwNode *table = bw_node_table (to, "figures", NULL);

  table->order = "id name value unit uncertainty entered from";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("figure"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("value"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("uncertainty"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("how it came about"), NULL);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (solver->at[i].known)
      add_figure (table, i, &solver->at[i]);
}

/* The raster, or why there is none yet. */
static void
add_raster (BwNode *to, const BwSolver *solver)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = bw_solver_raster (solver, &error);

  if (raster != NULL)
    {
      BwNode *object = bw_node_section (to, "raster", NULL);
      object->for_scripts = TRUE;
      bw_raster_say (object, raster);
      bw_node_say (to, BW_SAY_ANSWER, NULL, _ ("Together they make a whole raster."));
    }
  else
    {
      bw_node_member (to, bw_value_nothing ("raster"));
      bw_node_say (to, BW_SAY_ANSWER, NULL,
                   bw_node_print (to, _ ("No whole raster yet: %s."), error->message));
    }
  bw_node_member (to, bw_value_words ("no_raster_because", raster == NULL ? error->message : NULL));
}

/**
 * bw_solver_say:
 * @redundant: a set of the figures that were entered and also follow
 *
 * Adds the known figures and how each came about, the raster that they make, or why there is none.
 */
void
bw_solver_say (BwNode *to, const BwSolver *solver, guint32 redundant)
{
  g_return_if_fail (to != NULL && solver != NULL);
  g_autofree char *ids = bw_kind_set_ids (&bw_figures, redundant, ", ");

  bw_node_member (to, bw_value_flag ("interlaced", solver->interlaced));
  add_figures (to, solver);
  bw_node_member (to, bw_value_set ("redundant", &bw_figures, redundant));
  if (redundant != 0)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, _ ("Follows from the others too, and agrees: %s."), ids));
  add_raster (to, solver);
}

/**
 * bw_figures_say:
 *
 * Adds a table of the figures that may be known: name, units, what it is.
 */
void
bw_figures_say (BwNode *to)
{
  g_return_if_fail (to != NULL);
  BwNode *table = bw_node_table (to, "figures", NULL);

  table->order = "id name unit";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("figure"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("units"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("what it is"), NULL);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("id", bw_kind_id (&bw_figures, i)));
      bw_node_cell (row, bw_value_says (NULL, bw_quantity_units (bw_figure_dimension (i))));
      bw_node_cell (row, bw_value_words ("name", bw_kind_label (&bw_figures, i)));
      bw_node_member (row, unit_of (i));
    }
}
