/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "solve-view.h"

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"
#include "raster-json.h"

#define DIGITS 7

static gboolean
is_in (guint32 set, guint figure)
{
  return (set & (1u << figure)) != 0;
}

/* For a person */

static char *
figure_text (const BwSolved *solved, guint figure)
{
  return bw_quantity_format (solved->value, bw_figure_dimension (figure), DIGITS,
                             bw_quantity_locale_mark ());
}

/* Half of the last place that was written, and what it makes of the rest; nothing if it is less
 * than the last digit that is shown. */
static char *
uncertainty_text (const BwSolved *solved, guint figure)
{
  if (!(solved->uncertainty > solved->value * 1e-9))
    return g_strdup ("");
  g_autofree char *amount = bw_quantity_format (solved->uncertainty, bw_figure_dimension (figure),
                                                2, bw_quantity_locale_mark ());
  return g_strconcat ("± ", amount, NULL);
}

static char *
ids_text (guint32 set)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (is_in (set, i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", bw_kind_id (&bw_figures, i));
  return g_string_free (text, FALSE);
}

static void
append_part (const BwSolveView *view, gboolean entered, const char *title, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (4);
  guint n = 0;

  bw_table_set_right (table, 1);
  bw_table_set_width (table, 3, 0, 34);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      const BwSolved *solved = &view->solver->at[i];
      if (!solved->known || solved->entered != entered)
        continue;
      g_autofree char *value = figure_text (solved, i);
      g_autofree char *uncertainty = uncertainty_text (solved, i);
      g_autofree char *ids = ids_text (solved->from);
      g_autofree char *from = entered ? g_strdup ("") : g_strdup_printf (_ ("from %s"), ids);
      bw_table_add_row (table, bw_kind_id (&bw_figures, i), value, uncertainty, from, NULL);
      n++;
    }
  if (n == 0)
    return;
  g_string_append_printf (to, "%s%s\n", to->len > 0 ? "\n" : "", title);
  bw_table_append_to (table, to, 2);
}

static void
append_rest (const BwSolveView *view, GString *to)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = bw_solver_raster (view->solver, &error);
  g_autofree char *redundant = ids_text (view->redundant);
  g_autofree char *says = raster != NULL
                              ? g_strdup (_ ("Together they make a whole raster."))
                              : g_strdup_printf (_ ("No whole raster yet: %s."), error->message);

  g_string_append_c (to, '\n');
  if (view->redundant != 0)
    {
      g_autofree char *also = g_strdup_printf (_ ("Follows from the others too, and agrees: %s."),
                                               redundant);
      bw_words_append_wrapped (to, "", 0, also);
    }
  bw_words_append_wrapped (to, "", 0, says);
}

/**
 * bw_solve_view_append_text:
 *
 * Appends the figures that were entered, those that follow and from which, and whether they make a
 * whole raster.
 */
void
bw_solve_view_append_text (const BwSolveView *view, GString *to)
{
  append_part (view, TRUE, _ ("Entered"), to);
  append_part (view, FALSE, _ ("Follows"), to);
  append_rest (view, to);
}

/**
 * bw_solve_figures_append_text:
 *
 * Appends a table of the figures that may be known: name, units, what it is.
 */
void
bw_solve_figures_append_text (GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (3);
  bw_table_add_row (table, _ ("figure"), _ ("units"), _ ("what it is"), NULL);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    bw_table_add_row (table, bw_kind_id (&bw_figures, i),
                      bw_quantity_units (bw_figure_dimension (i)), bw_kind_label (&bw_figures, i),
                      NULL);
  bw_table_append_to (table, to, 0);
}

/* For a script */

/* Fractions have no unit. */
static void
unit_json (BwJson *json, BwDimension dimension)
{
  gboolean has_unit = dimension != BW_DIMENSION_FRACTION;
  bw_json_string (json, "unit", has_unit ? bw_quantity_base_unit (dimension) : NULL);
}

static void
ids_json (BwJson *json, const char *key, guint32 set)
{
  bw_json_begin_array (json, key);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (is_in (set, i))
      bw_json_string (json, NULL, bw_kind_id (&bw_figures, i));
  bw_json_end_array (json);
}

static void
figure_json (const BwSolveView *view, guint figure, BwJson *json)
{
  const BwSolved *solved = &view->solver->at[figure];
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "id", bw_kind_id (&bw_figures, figure));
  bw_json_string (json, "name", bw_kind_label (&bw_figures, figure));
  bw_json_number (json, "value", solved->value);
  unit_json (json, bw_figure_dimension (figure));
  bw_json_number (json, "uncertainty", solved->uncertainty);
  bw_json_boolean (json, "entered", solved->entered);
  ids_json (json, "from", solved->from);
  bw_json_end_object (json);
}

static void
raster_json (const BwSolveView *view, BwJson *json)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = bw_solver_raster (view->solver, &error);

  if (raster == NULL)
    bw_json_null (json, "raster");
  else
    {
      bw_json_begin_object (json, "raster");
      bw_raster_to_json (raster, json);
      bw_json_end_object (json);
    }
  bw_json_string (json, "no_raster_because", raster == NULL ? error->message : NULL);
}

/**
 * bw_solve_view_to_json:
 *
 * Writes the members of an object that is open in @json: the known figures in their base units, the
 * entered ones that also follow, and the raster, or why there is none.
 */
void
bw_solve_view_to_json (const BwSolveView *view, BwJson *json)
{
  bw_json_boolean (json, "interlaced", view->solver->interlaced);
  bw_json_begin_array (json, "figures");
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (view->solver->at[i].known)
      figure_json (view, i, json);
  bw_json_end_array (json);
  ids_json (json, "redundant", view->redundant);
  raster_json (view, json);
}

/**
 * bw_solve_figures_to_json:
 *
 * Writes the array "figures": what may be known, and in which unit JSON gives it.
 */
void
bw_solve_figures_to_json (BwJson *json)
{
  bw_json_begin_array (json, "figures");
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "id", bw_kind_id (&bw_figures, i));
      bw_json_string (json, "name", bw_kind_label (&bw_figures, i));
      unit_json (json, bw_figure_dimension (i));
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}
