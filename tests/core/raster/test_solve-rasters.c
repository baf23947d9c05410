/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "test_solve.h"

/* The solver on every raster of the catalogue, and on anything at all. The true figures are worked
 * out here, from the raster's pixels, half lines and clock. */

/* The figures of a raster, worked out here. */
static void
true_figures (const BwRaster *raster, double *v)
{
  const BwFieldTiming *a = &raster->field[0], *b = &raster->field[1];
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  double clock_hz = (double) raster->pixel_clock_hz.num / (double) raster->pixel_clock_hz.den;
  double total = raster->h_active + 2 * raster->h_border + raster->h_front_porch + raster->h_sync
                 + raster->h_back_porch;
  const double pixels[] = { raster->h_active + 2 * raster->h_border, raster->h_front_porch,
                            raster->h_sync, raster->h_back_porch,
                            raster->h_front_porch + raster->h_sync + raster->h_back_porch };

  for (int i = 0; i < 5; i++)
    {
      v[F (H_ACTIVE) + i] = pixels[i];
      v[F (H_ACTIVE_TIME) + i] = pixels[i] / clock_hz;
      v[F (H_ACTIVE_SHARE) + i] = pixels[i] / total;
    }
  v[F (V_ACTIVE)] = (a->active + b->active) / 4.0 + 2 * raster->v_border;
  v[F (V_FRONT_PORCH)] = (a->front_porch + b->front_porch) / 4.0;
  v[F (V_SYNC)] = (a->sync + b->sync) / 4.0;
  v[F (V_BACK_PORCH)] = (a->back_porch + b->back_porch) / 4.0;
  v[F (V_BLANKING)] = v[F (V_FRONT_PORCH)] + v[F (V_SYNC)] + v[F (V_BACK_PORCH)];
  v[F (LINES_PER_FIELD)] = v[F (V_ACTIVE)] + v[F (V_BLANKING)];
  v[F (LINES_PER_FRAME)] = v[F (LINES_PER_FIELD)] * (interlaced ? 2 : 1);
  v[F (PIXEL_CLOCK)] = clock_hz;
  v[F (H_TOTAL)] = total;
  v[F (LINE_RATE)] = clock_hz / total;
  v[F (LINE_PERIOD)] = total / clock_hz;
  v[F (FIELD_RATE)] = v[F (LINE_RATE)] / v[F (LINES_PER_FIELD)];
  v[F (FRAME_RATE)] = v[F (FIELD_RATE)] / (interlaced ? 2 : 1);
}

static void
enter_value (BwSolver *solver, BwFigure figure, const double *v)
{
  BwDimension dimension = bw_figure_dimension (figure);
  double scale = dimension == BW_DIMENSION_FRACTION ? 100 : 1; /* in per cent */
  const char *unit = bw_quantity_base_unit (dimension);
  g_autofree char *text = g_strdup_printf ("%.17g %s", v[figure] * scale, unit);
  enter_all (solver, (const Entry[]){ { figure, text }, { 0, NULL } });
}

static BwFigure
one_of (GRand *rand, const BwFigure *figures, int n)
{
  return figures[g_rand_int_range (rand, 0, n)];
}

#define ONE_OF(rand, ...)                                                                          \
  one_of (rand, (const BwFigure[]){ __VA_ARGS__ },                                                 \
          G_N_ELEMENTS (((const BwFigure[]){ __VA_ARGS__ })))

/* Three of active, front porch, sync, back porch and blanking, numbered from 0: with the total they
 * give the rest, unless active and blanking are both among them. */
static void
pick_three (GRand *rand, int *picked)
{
  gboolean used[5] = { FALSE };
  for (int i = 0; i < 3; i++)
    {
      int which;
      do
        which = g_rand_int_range (rand, 0, 5);
      while (used[which] || (which == 0 && used[4]) || (which == 4 && used[0]));
      used[which] = TRUE;
      picked[i] = which;
    }
}

/* The line rate, by itself or by way of the field: returns whether the field's lines are then
 * known. */
static gboolean
enter_line_rate (GRand *rand, BwSolver *solver, const double *v)
{
  if (g_rand_boolean (rand))
    {
      enter_value (solver, ONE_OF (rand, F (LINE_RATE), F (LINE_PERIOD)), v);
      return FALSE;
    }
  enter_value (solver, ONE_OF (rand, F (FIELD_RATE), F (FRAME_RATE)), v);
  enter_value (solver, ONE_OF (rand, F (LINES_PER_FRAME), F (LINES_PER_FIELD)), v);
  return TRUE;
}

static const BwFigure v_figures[] = { F (V_ACTIVE), F (V_FRONT_PORCH), F (V_SYNC), F (V_BACK_PORCH),
                                      F (V_BLANKING) };

static void
enter_vertical (GRand *rand, BwSolver *solver, const double *v, gboolean lines_known)
{
  int picked[3];
  if (!lines_known && g_rand_boolean (rand))
    {
      for (int i = 0; i < 4; i++)
        enter_value (solver, v_figures[i], v);
      return;
    }
  if (!lines_known)
    enter_value (solver,
                 ONE_OF (rand, F (FIELD_RATE), F (FRAME_RATE), F (LINES_PER_FRAME),
                         F (LINES_PER_FIELD)),
                 v);
  pick_three (rand, picked);
  for (int i = 0; i < 3; i++)
    enter_value (solver, v_figures[picked[i]], v);
}

/* A set that is enough and has nothing too much: a time base (two of clock, line rate and pixels
 * of a line, or the clock and a sum of pixels), three intervals of the line each in a unit of its
 * own, and the lines of a field with three of its intervals. */
static void
enter_enough (GRand *rand, BwSolver *solver, const double *v)
{
  static const BwFigure units[] = { F (H_ACTIVE), F (H_ACTIVE_TIME), F (H_ACTIVE_SHARE) };
  gboolean lines_known = FALSE;
  int base = g_rand_int_range (rand, 0, 4);
  int picked[3];

  if (base != 1)
    enter_value (solver, F (PIXEL_CLOCK), v);
  if (base == 0 || base == 1)
    lines_known = enter_line_rate (rand, solver, v);
  if (base == 1 || base == 2)
    enter_value (solver, F (H_TOTAL), v);
  pick_three (rand, picked);
  for (int i = 0; i < 3 && base != 3; i++)
    enter_value (solver, one_of (rand, units, 3) + picked[i], v);
  for (int i = 0; i < 4 && base == 3; i++)
    enter_value (solver, F (H_ACTIVE) + i, v);
  enter_vertical (rand, solver, v, lines_known);
}

static void
describe (const BwSolver *solver, const char *id)
{
  g_autoptr (GString) text = g_string_new (id);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (solver->at[i].entered)
      g_string_append_printf (text, ", %s %.10g", bw_kind_id (&bw_figures, i), solver->at[i].value);
  g_test_message ("from %s", text->str);
  g_test_fail ();
}

/* Pixels and half lines exactly; the solver keeps a clock to a thousandth of a hertz. */
static gboolean
same_raster (const BwRaster *found, const BwRaster *raster)
{
  double clock_hz = bw_ratio_to_double (raster->pixel_clock_hz);
  for (int i = 0; i < 2; i++)
    {
      BwFieldTiming with_border = raster->field[i];
      with_border.active += 4 * raster->v_border;
      if (memcmp (&found->field[i], &with_border, sizeof with_border) != 0)
        return FALSE;
    }
  return found->scan == raster->scan && found->h_active == raster->h_active + 2 * raster->h_border
         && found->h_front_porch == raster->h_front_porch && found->h_sync == raster->h_sync
         && found->h_back_porch == raster->h_back_porch
         && fabs (bw_ratio_to_double (found->pixel_clock_hz) - clock_hz) <= 0.51e-3;
}

static void
assert_recovered (BwSolver *solver, const BwRaster *raster, const double *v)
{
  g_autoptr (GError) error = NULL;
  guint32 redundant = 0;
  gboolean ran = bw_solver_run (solver, &redundant, &error);
  g_autoptr (BwRaster) found = ran ? bw_solver_raster (solver, &error) : NULL;

  assert_finite (solver);
  if (error != NULL)
    g_test_message ("%s", error->message);
  for (guint i = 0; i < BW_N_FIGURES && ran; i++)
    assert_figure (solver, i, v[i], 1e-9 * v[i]);
  if (redundant != 0 || found == NULL || !same_raster (found, raster))
    describe (solver, raster->id);
}

static const BwRaster *
random_raster (GRand *rand)
{
  const GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  const BwRaster *raster;
  do
    raster = rasters->pdata[g_rand_int_range (rand, 0, (int) rasters->len)];
  while (bw_ratio_is_none (raster->pixel_clock_hz));
  return raster;
}

static void
test_subsets (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (15734);
  for (int i = 0; i < 300; i++)
    {
      const BwRaster *raster = random_raster (rand);
      double v[BW_N_FIGURES];
      true_figures (raster, v);
      for (int j = 0; j < 10; j++)
        {
          BwSolver solver = { .interlaced = raster->scan == BW_SCAN_INTERLACED };
          enter_enough (rand, &solver, v);
          assert_recovered (&solver, raster, v);
        }
    }
}

/* What was entered is redundant where the rest, without it, gives it too. */
static void
test_redundant_sets (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (262);
  for (int i = 0; i < 300; i++)
    {
      const BwRaster *raster = random_raster (rand);
      BwSolver solver = { .interlaced = raster->scan == BW_SCAN_INTERLACED };
      double v[BW_N_FIGURES];
      guint32 redundant, ignored, expected = 0;

      true_figures (raster, v);
      enter_enough (rand, &solver, v);
      for (int j = 0; j < 2; j++)
        enter_value (&solver, (BwFigure) g_rand_int_range (rand, 0, BW_N_FIGURES), v);
      for (guint f = 0; f < BW_N_FIGURES; f++)
        {
          BwSolver without = solver;
          bw_solver_forget (&without, f);
          if (solver.at[f].entered && bw_solver_run (&without, &ignored, NULL)
              && without.at[f].known)
            expected |= 1u << f;
        }
      g_assert_true (bw_solver_run (&solver, &redundant, NULL));
      if (redundant == expected)
        continue;
      g_test_message ("redundant: %x, expected %x", redundant, expected);
      describe (&solver, raster->id);
    }
}

/* The figures of a whole raster, entered at once, give it back. */
static void
test_from_raster (void)
{
  const GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      BwSolver solver;
      double v[BW_N_FIGURES];
      if (bw_ratio_is_none (raster->pixel_clock_hz))
        continue;
      true_figures (raster, v);
      bw_solver_from_raster (&solver, raster);
      assert_recovered (&solver, raster, v);
    }
}

/* Anything at all may be entered together; nothing comes out as NaN, and a failure says why. */
static void
test_anything (void)
{
  static const double odd[] = { 0, 1, 1e-29, 1e29, 525, 64e-6, 27e6, 0.5, 1e-9 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (4433618);
  for (int i = 0; i < 20000; i++)
    {
      BwSolver solver = { .interlaced = g_rand_boolean (rand) };
      g_autoptr (GError) error = NULL;
      g_autoptr (GError) raster_error = NULL;
      guint32 redundant;
      double v[BW_N_FIGURES];
      int n = g_rand_int_range (rand, 1, 12);

      for (guint f = 0; f < BW_N_FIGURES; f++)
        v[f] = odd[g_rand_int_range (rand, 0, G_N_ELEMENTS (odd))];
      for (int j = 0; j < n; j++)
        enter_value (&solver, (BwFigure) g_rand_int_range (rand, 0, BW_N_FIGURES), v);
      gboolean ran = bw_solver_run (&solver, &redundant, &error);
      g_assert_true (ran == (error == NULL));
      assert_finite (&solver);
      g_autoptr (BwRaster) raster = bw_solver_raster (&solver, &raster_error);
      g_assert_true ((raster == NULL) == (raster_error != NULL));
      if (g_test_failed ())
        {
          describe (&solver, "this");
          return;
        }
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/solve-rasters/subsets", test_subsets);
  g_test_add_func ("/solve-rasters/redundant-sets", test_redundant_sets);
  g_test_add_func ("/solve-rasters/from-raster", test_from_raster);
  g_test_add_func ("/solve-rasters/anything", test_anything);
  return g_test_run ();
}
