/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "solve.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-solve-error-quark, bw_solve_error)

static const BwKind figures[BW_N_FIGURES] = {
  [BW_FIGURE_PIXEL_CLOCK] = { "pixel-clock", N_ ("pixel clock") },
  [BW_FIGURE_LINE_RATE] = { "line-rate", N_ ("line rate") },
  [BW_FIGURE_LINE_PERIOD] = { "line-period", N_ ("line period") },
  [BW_FIGURE_FIELD_RATE] = { "field-rate", N_ ("field rate") },
  [BW_FIGURE_FRAME_RATE] = { "frame-rate", N_ ("frame rate") },
  [BW_FIGURE_LINES_PER_FRAME] = { "lines-per-frame", N_ ("lines of a frame") },
  [BW_FIGURE_LINES_PER_FIELD] = { "lines-per-field", N_ ("lines of a field") },
  [BW_FIGURE_H_TOTAL] = { "h-total", N_ ("pixels of a line") },
  [BW_FIGURE_H_ACTIVE] = { "h-active", N_ ("active pixels") },
  [BW_FIGURE_H_FRONT_PORCH] = { "h-front-porch", N_ ("front porch in pixels") },
  [BW_FIGURE_H_SYNC] = { "h-sync", N_ ("line sync in pixels") },
  [BW_FIGURE_H_BACK_PORCH] = { "h-back-porch", N_ ("back porch in pixels") },
  [BW_FIGURE_H_BLANKING] = { "h-blanking", N_ ("line blanking in pixels") },
  [BW_FIGURE_H_ACTIVE_TIME] = { "h-active-time", N_ ("active time") },
  [BW_FIGURE_H_FRONT_PORCH_TIME] = { "h-front-porch-time", N_ ("front porch") },
  [BW_FIGURE_H_SYNC_TIME] = { "h-sync-time", N_ ("line sync") },
  [BW_FIGURE_H_BACK_PORCH_TIME] = { "h-back-porch-time", N_ ("back porch") },
  [BW_FIGURE_H_BLANKING_TIME] = { "h-blanking-time", N_ ("line blanking") },
  [BW_FIGURE_H_ACTIVE_SHARE] = { "h-active-share", N_ ("active share of the line") },
  [BW_FIGURE_H_FRONT_PORCH_SHARE] = { "h-front-porch-share", N_ ("front porch's share") },
  [BW_FIGURE_H_SYNC_SHARE] = { "h-sync-share", N_ ("line sync's share") },
  [BW_FIGURE_H_BACK_PORCH_SHARE] = { "h-back-porch-share", N_ ("back porch's share") },
  [BW_FIGURE_H_BLANKING_SHARE] = { "h-blanking-share", N_ ("line blanking's share") },
  [BW_FIGURE_V_ACTIVE] = { "v-active", N_ ("active lines of a field") },
  [BW_FIGURE_V_FRONT_PORCH] = { "v-front-porch", N_ ("vertical front porch") },
  [BW_FIGURE_V_SYNC] = { "v-sync", N_ ("field sync") },
  [BW_FIGURE_V_BACK_PORCH] = { "v-back-porch", N_ ("vertical back porch") },
  [BW_FIGURE_V_BLANKING] = { "v-blanking", N_ ("field blanking") },
};
const BwKindTable bw_figures = { BW_N_FIGURES, figures };

/* What must hold among figures: a product of powers of ±1 equals a constant, or a signed sum
 * equals a constant. In both, the sign stands with the figure. */
#define TERMS_MAX 5

typedef enum
{
  RELATION_PRODUCT,
  RELATION_SUM
} RelationKind;

typedef enum
{
  EQUALS_ONE,
  EQUALS_ZERO,
  EQUALS_FIELDS /* two if interlaced, else one */
} RelationConstant;

typedef struct
{
  BwFigure figure;
  int sign; /* 0: no more terms */
} Term;

typedef struct
{
  RelationKind kind;
  RelationConstant constant;
  Term terms[TERMS_MAX];
} Relation;

#define F(name) BW_FIGURE_##name

/* pixels = clock × time, share = time × line rate, pixels = share × total, for one interval */
#define INTERVAL(name)                                                                            \
  { RELATION_PRODUCT, EQUALS_ONE, { { F (name), 1 }, { F (PIXEL_CLOCK), -1 }, { F (name##_TIME), -1 } } }, \
  { RELATION_PRODUCT, EQUALS_ONE, { { F (name##_TIME), 1 }, { F (LINE_RATE), 1 }, { F (name##_SHARE), -1 } } }, \
  { RELATION_PRODUCT, EQUALS_ONE, { { F (name), 1 }, { F (H_TOTAL), -1 }, { F (name##_SHARE), -1 } } }

/* blanking = front porch + sync + back porch, in one unit */
#define BLANKING(unit)                                                                            \
  { RELATION_SUM, EQUALS_ZERO,                                                                    \
    { { F (H_BLANKING##unit), 1 }, { F (H_FRONT_PORCH##unit), -1 }, { F (H_SYNC##unit), -1 },     \
      { F (H_BACK_PORCH##unit), -1 } } }

static const Relation relations[] = {
  { RELATION_PRODUCT, EQUALS_ONE, { { F (LINE_RATE), 1 }, { F (LINE_PERIOD), 1 } } },
  { RELATION_PRODUCT, EQUALS_ONE, { { F (PIXEL_CLOCK), 1 }, { F (LINE_RATE), -1 }, { F (H_TOTAL), -1 } } },
  { RELATION_PRODUCT, EQUALS_ONE, { { F (LINE_RATE), 1 }, { F (FRAME_RATE), -1 }, { F (LINES_PER_FRAME), -1 } } },
  { RELATION_PRODUCT, EQUALS_ONE, { { F (LINE_RATE), 1 }, { F (FIELD_RATE), -1 }, { F (LINES_PER_FIELD), -1 } } },
  { RELATION_PRODUCT, EQUALS_FIELDS, { { F (FIELD_RATE), 1 }, { F (FRAME_RATE), -1 } } },
  { RELATION_PRODUCT, EQUALS_FIELDS, { { F (LINES_PER_FRAME), 1 }, { F (LINES_PER_FIELD), -1 } } },
  INTERVAL (H_ACTIVE),
  INTERVAL (H_FRONT_PORCH),
  INTERVAL (H_SYNC),
  INTERVAL (H_BACK_PORCH),
  INTERVAL (H_BLANKING),
  BLANKING (),
  BLANKING (_TIME),
  BLANKING (_SHARE),
  { RELATION_SUM, EQUALS_ZERO, { { F (H_TOTAL), 1 }, { F (H_ACTIVE), -1 }, { F (H_BLANKING), -1 } } },
  { RELATION_SUM, EQUALS_ZERO, { { F (LINE_PERIOD), 1 }, { F (H_ACTIVE_TIME), -1 }, { F (H_BLANKING_TIME), -1 } } },
  { RELATION_SUM, EQUALS_ONE, { { F (H_ACTIVE_SHARE), 1 }, { F (H_BLANKING_SHARE), 1 } } },
  { RELATION_SUM, EQUALS_ZERO, { { F (LINES_PER_FIELD), 1 }, { F (V_ACTIVE), -1 }, { F (V_BLANKING), -1 } } },
  { RELATION_SUM, EQUALS_ZERO,
    { { F (V_BLANKING), 1 }, { F (V_FRONT_PORCH), -1 }, { F (V_SYNC), -1 }, { F (V_BACK_PORCH), -1 } } },
};

/**
 * bw_figure_dimension:
 *
 * Returns: what @figure is measured in
 */
BwDimension
bw_figure_dimension (BwFigure figure)
{
  switch (figure)
    {
    case BW_FIGURE_PIXEL_CLOCK:
    case BW_FIGURE_LINE_RATE:
    case BW_FIGURE_FIELD_RATE:
    case BW_FIGURE_FRAME_RATE:
      return BW_DIMENSION_FREQUENCY;
    case BW_FIGURE_LINES_PER_FRAME:
    case BW_FIGURE_LINES_PER_FIELD:
    case BW_FIGURE_V_ACTIVE:
    case BW_FIGURE_V_FRONT_PORCH:
    case BW_FIGURE_V_SYNC:
    case BW_FIGURE_V_BACK_PORCH:
    case BW_FIGURE_V_BLANKING:
      return BW_DIMENSION_LINES;
    case BW_FIGURE_H_TOTAL:
    case BW_FIGURE_H_ACTIVE:
    case BW_FIGURE_H_FRONT_PORCH:
    case BW_FIGURE_H_SYNC:
    case BW_FIGURE_H_BACK_PORCH:
    case BW_FIGURE_H_BLANKING:
      return BW_DIMENSION_PIXELS;
    case BW_FIGURE_H_ACTIVE_SHARE:
    case BW_FIGURE_H_FRONT_PORCH_SHARE:
    case BW_FIGURE_H_SYNC_SHARE:
    case BW_FIGURE_H_BACK_PORCH_SHARE:
    case BW_FIGURE_H_BLANKING_SHARE:
      return BW_DIMENSION_FRACTION;
    default:
      return BW_DIMENSION_TIME;
    }
}

/* A rate that is written in few digits is meant as such: "27 MHz" is not 26.5 to 27.5 MHz. */
#define RATE_UNCERTAINTY_MAX 100e-6

/* Half of the last decimal place that is written, in the base unit. */
static double
written_uncertainty (const BwMeasured *measured, BwDimension dimension)
{
  if (dimension == BW_DIMENSION_PIXELS || dimension == BW_DIMENSION_LINES)
    return 0;
  if (dimension == BW_DIMENSION_FREQUENCY)
    return MIN (measured->half_digit, RATE_UNCERTAINTY_MAX * measured->value);
  return measured->half_digit;
}

/**
 * bw_solver_enter:
 * @text: the figure with its unit
 * @mark: the decimal mark
 *
 * Enters a known figure. Pixels and lines are taken as exact, others to half of the last place
 * written.
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR or %BW_SOLVE_ERROR, changing nothing
 */
gboolean
bw_solver_enter (BwSolver *solver, BwFigure figure, const char *text, char mark, GError **error)
{
  g_return_val_if_fail (solver != NULL && text != NULL, FALSE);
  BwDimension dimension = bw_figure_dimension (figure);
  const BwReadAs as = { .mark = mark };
  BwMeasured measured;

  if (!bw_quantity_read (text, dimension, &as, &measured, error))
    return FALSE;
  if (measured.value < 0)
    {
      g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_NEGATIVE,
                   _ ("“%s” is negative; zero or more is allowed"), text);
      return FALSE;
    }
  solver->at[figure] = (BwSolved){
    .entered = TRUE,
    .value = measured.value,
    .uncertainty = written_uncertainty (&measured, dimension),
  };
  return TRUE;
}

/**
 * bw_solver_forget:
 *
 * Takes back an entered figure.
 */
void
bw_solver_forget (BwSolver *solver, BwFigure figure)
{
  g_return_if_fail (solver != NULL);
  solver->at[figure] = (BwSolved){ 0 };
}

static double
constant_of (const BwSolver *solver, const Relation *relation)
{
  switch (relation->constant)
    {
    case EQUALS_FIELDS:
      return solver->interlaced ? 2 : 1;
    case EQUALS_ZERO:
      return 0;
    case EQUALS_ONE:
    default:
      return 1;
    }
}

/* The value that @relation gives term @skip from the others, and how uncertain it is. */
static BwSolved
solve_term (const BwSolver *solver, const Relation *relation, int skip)
{
  double constant = constant_of (solver, relation);
  double relative = 0;
  BwSolved result = { .known = TRUE, .value = constant };

  for (int i = 0; i < TERMS_MAX && relation->terms[i].sign != 0; i++)
    {
      const BwSolved *other = &solver->at[relation->terms[i].figure];
      if (i == skip)
        continue;
      result.from |= other->from;
      if (relation->kind == RELATION_SUM)
        {
          result.value -= relation->terms[i].sign * other->value;
          result.uncertainty += other->uncertainty;
          continue;
        }
      result.value *= relation->terms[i].sign > 0 ? 1 / other->value : other->value;
      relative += fabs (other->value) > 0 ? other->uncertainty / fabs (other->value) : 0;
    }
  if (relation->kind == RELATION_SUM)
    result.value *= relation->terms[skip].sign;
  else
    {
      result.value = relation->terms[skip].sign > 0 ? result.value : 1 / result.value;
      result.uncertainty = fabs (result.value) * relative;
    }
  return result;
}

/* The index of the only unknown term, -1 if all are known, -2 if more than one is unknown. */
static int
unknown_term (const BwSolver *solver, const Relation *relation)
{
  int unknown = -1;
  for (int i = 0; i < TERMS_MAX && relation->terms[i].sign != 0; i++)
    if (!solver->at[relation->terms[i].figure].known)
      {
        if (unknown >= 0)
          return -2;
        unknown = i;
      }
  return unknown;
}

static char *
figure_text (const BwSolver *solver, BwFigure figure)
{
  char mark = bw_quantity_locale_mark ();
  double value = solver->at[figure].value;
  BwDimension dimension = bw_figure_dimension (figure);
  g_autofree char *number = bw_quantity_format (value, dimension, 7, mark);
  return g_strdup_printf ("%s %s", bw_kind_label (&bw_figures, figure), number);
}

static char *
entered_text (const BwSolver *solver, guint32 set)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      if (!(set & (1u << i)))
        continue;
      g_autofree char *one = figure_text (solver, i);
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", one);
    }
  return g_string_free (text, FALSE);
}

/* Numbers that were computed differ by rounding even where nothing was written uncertainly. */
#define ROUNDING 1e-9

static gboolean
check_relation (const BwSolver *solver, const Relation *relation, GError **error)
{
  BwFigure figure = relation->terms[0].figure;
  BwSolved other = solve_term (solver, relation, 0);
  const BwSolved *have = &solver->at[figure];
  double allowed = have->uncertainty + other.uncertainty + ROUNDING * fabs (have->value);

  if (fabs (have->value - other.value) <= allowed)
    return TRUE;
  g_autofree char *members = entered_text (solver, have->from | other.from);
  if (!isfinite (other.value))
    {
      g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_NEGATIVE,
                   _ ("%1$s would be without limit, from %2$s"),
                   bw_kind_label (&bw_figures, figure), members);
      return FALSE;
    }
  g_autofree char *first = figure_text (solver, figure);
  g_autofree char *second = bw_quantity_format (other.value, bw_figure_dimension (figure), 7,
                                                bw_quantity_locale_mark ());
  g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_CONTRADICTION,
               _ ("these contradict each other: %1$s (%2$s would have to be %3$s)"), members, first,
               second);
  return FALSE;
}

/* Pixels come in ones, lines in halves, and the mean lines of two interlaced fields in quarters,
 * since each field has half lines. A count that is uncertain by less than half
 * of that is the nearest such number. */
static void
settle_count (const BwSolver *solver, BwSolved *solved, BwFigure figure)
{
  BwDimension dimension = bw_figure_dimension (figure);
  double per_unit = dimension == BW_DIMENSION_PIXELS ? 1 : solver->interlaced ? 4 : 2;
  double nearest = round (solved->value * per_unit) / per_unit;

  if (dimension != BW_DIMENSION_LINES && dimension != BW_DIMENSION_PIXELS)
    return;
  if (solved->uncertainty < 0.4 / per_unit
      && fabs (solved->value - nearest) <= solved->uncertainty + ROUNDING * solved->value)
    {
      solved->value = nearest;
      solved->uncertainty = 0;
    }
}

static gboolean
check_sign (const BwSolver *solver, BwFigure figure, GError **error)
{
  const BwSolved *solved = &solver->at[figure];
  if (isfinite (solved->value) && isfinite (solved->uncertainty)
      && solved->value >= -solved->uncertainty - ROUNDING * fabs (solved->value))
    return TRUE;
  g_autofree char *members = entered_text (solver, solved->from);
  g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_NEGATIVE,
               _ ("%1$s would be negative or without limit, from %2$s"),
               bw_kind_label (&bw_figures, figure), members);
  return FALSE;
}

static void
forget_what_followed (BwSolver *solver)
{
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      BwSolved *solved = &solver->at[i];
      *solved = solved->entered ? *solved : (BwSolved){ 0 };
      solved->known = solved->entered;
      solved->from = solved->entered ? 1u << i : 0;
    }
}

/* Checks a relation whose terms are all known, once, or works out its only unknown term. Returns
 * how many figures became known, or −1 on a fault. */
static int
apply_relation (BwSolver *solver, const Relation *relation, gboolean *checked, GError **error)
{
  int unknown = unknown_term (solver, relation);
  if (unknown == -2 || (unknown == -1 && *checked))
    return 0;
  *checked = TRUE;
  if (unknown == -1)
    return check_relation (solver, relation, error) ? 0 : -1;

  BwFigure figure = relation->terms[unknown].figure;
  solver->at[figure] = solve_term (solver, relation, unknown);
  settle_count (solver, &solver->at[figure], figure);
  if (check_sign (solver, figure, error))
    return 1;
  solver->at[figure] = (BwSolved){ 0 };
  return -1;
}

/* Works out all that follows from what is entered. */
static gboolean
propagate (BwSolver *solver, GError **error)
{
  gboolean checked[G_N_ELEMENTS (relations)] = { FALSE };
  int moved = 1;

  forget_what_followed (solver);
  while (moved > 0)
    {
      moved = 0;
      for (gsize r = 0; r < G_N_ELEMENTS (relations); r++)
        {
          int step = apply_relation (solver, &relations[r], &checked[r], error);
          if (step < 0)
            return FALSE;
          moved += step;
        }
    }
  return TRUE;
}

/* The entered figures each of which would follow from the others. */
static guint32
find_redundant (const BwSolver *solver)
{
  guint32 redundant = 0;
  for (guint i = 0; i < BW_N_FIGURES; i++)
    {
      BwSolver without = *solver;
      if (!solver->at[i].entered)
        continue;
      bw_solver_forget (&without, i);
      propagate (&without, NULL);
      redundant |= without.at[i].known ? 1u << i : 0;
    }
  return redundant;
}

/**
 * bw_solver_run:
 * @redundant: (out): set of entered figures each of which also follows from the others
 *
 * Works out every figure that follows from those entered.
 *
 * Returns: %FALSE with @error in %BW_SOLVE_ERROR that names the figures which contradict each
 * other; what had followed until then is kept
 */
gboolean
bw_solver_run (BwSolver *solver, guint32 *redundant, GError **error)
{
  g_return_val_if_fail (solver != NULL && redundant != NULL, FALSE);
  *redundant = 0;
  if (!propagate (solver, error))
    return FALSE;
  *redundant = find_redundant (solver);
  return TRUE;
}

/* Rasters */

static gboolean
whole (const BwSolver *solver, BwFigure figure, int scale, int *count, GError **error)
{
  const BwSolved *solved = &solver->at[figure];
  double scaled = solved->value * scale;
  double slack = solved->uncertainty * scale + 1e-6;

  if (!solved->known)
    g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_INCOMPLETE,
                 _ ("%s is not known yet and does not follow from what is"),
                 bw_kind_label (&bw_figures, figure));
  else if (fabs (scaled - round (scaled)) > slack || scaled < -0.5 || scaled > 65535)
    {
      g_autofree char *text = figure_text (solver, figure);
      g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_NOT_WHOLE,
                   _ ("%s does not come out whole; change a figure that it rests on"), text);
    }
  else
    {
      *count = (int) round (scaled);
      return TRUE;
    }
  return FALSE;
}

static gboolean
fill_line (const BwSolver *solver, BwRaster *raster, GError **error)
{
  const BwSolved *clock = &solver->at[BW_FIGURE_PIXEL_CLOCK];
  int total;

  if (!whole (solver, BW_FIGURE_H_ACTIVE, 1, &raster->h_active, error)
      || !whole (solver, BW_FIGURE_H_FRONT_PORCH, 1, &raster->h_front_porch, error)
      || !whole (solver, BW_FIGURE_H_SYNC, 1, &raster->h_sync, error)
      || !whole (solver, BW_FIGURE_H_BACK_PORCH, 1, &raster->h_back_porch, error))
    return FALSE;
  total = bw_raster_h_total (raster);
  if (clock->known && clock->value > 0 && clock->value < 1e12 && total > 0
      && bw_ratio_make ((gint64) round (clock->value * 1000), 1000, &raster->pixel_clock_hz)
      && bw_ratio_divide (raster->pixel_clock_hz, (BwRatio){ total, 1 }, &raster->line_rate_hz))
    return TRUE;
  g_set_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_INCOMPLETE,
               _ ("the pixel clock is not known yet and does not follow from what is, or lies beyond "
                  "1 THz"));
  return FALSE;
}

static gboolean
fill_fields (const BwSolver *solver, BwRaster *raster, GError **error)
{
  BwFieldTiming both; /* half lines of two fields together */
  int lines;

  if (!whole (solver, BW_FIGURE_V_ACTIVE, 4, &both.active, error)
      || !whole (solver, BW_FIGURE_V_FRONT_PORCH, 4, &both.front_porch, error)
      || !whole (solver, BW_FIGURE_V_SYNC, 4, &both.sync, error)
      || !whole (solver, BW_FIGURE_V_BACK_PORCH, 4, &both.back_porch, error)
      || !whole (solver, BW_FIGURE_LINES_PER_FRAME, 1, &lines, error))
    return FALSE;
  raster->scan = solver->interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  /* The odd half line of an interval belongs to the second field. */
  raster->field[0] = (BwFieldTiming){ both.active / 2, both.front_porch / 2, both.sync / 2,
                                      both.back_porch / 2 };
  raster->field[1] = (BwFieldTiming){ both.active - raster->field[0].active,
                                      both.front_porch - raster->field[0].front_porch,
                                      both.sync - raster->field[0].sync,
                                      both.back_porch - raster->field[0].back_porch };
  return TRUE;
}

/**
 * bw_solver_raster:
 *
 * Returns: (transfer full): the raster, once every interval is known and whole, or %NULL with
 * @error in %BW_SOLVE_ERROR or %BW_RASTER_ERROR
 */
BwRaster *
bw_solver_raster (const BwSolver *solver, GError **error)
{
  g_return_val_if_fail (solver != NULL, NULL);
  g_autoptr (BwRaster) raster = bw_raster_new ();
  raster->id = g_strdup ("own");
  raster->name = g_strdup (_ ("own raster"));
  raster->source = g_strdup (_ ("worked out from entered figures"));
  raster->aliases = g_strdup ("");
  raster->note = g_strdup ("");
  if (fill_line (solver, raster, error) && fill_fields (solver, raster, error)
      && bw_raster_check (raster, error))
    return g_steal_pointer (&raster);
  return NULL;
}

static void
set_exact (BwSolver *solver, BwFigure figure, double value)
{
  solver->at[figure] = (BwSolved){ .entered = TRUE, .value = value };
}

/**
 * bw_solver_from_raster:
 * @raster: a checked raster; borders count as active, and vertical figures are the mean of both
 *   fields
 *
 * Enters the figures that define @raster, so that one of them can then be changed.
 */
void
bw_solver_from_raster (BwSolver *solver, const BwRaster *raster)
{
  g_return_if_fail (solver != NULL && raster != NULL);
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  *solver = (BwSolver){ .interlaced = raster->scan == BW_SCAN_INTERLACED };
  if (f.has_pixels)
    {
      set_exact (solver, BW_FIGURE_PIXEL_CLOCK, f.pixel_clock_hz);
      set_exact (solver, BW_FIGURE_H_ACTIVE, raster->h_active + 2 * raster->h_border);
      set_exact (solver, BW_FIGURE_H_FRONT_PORCH, raster->h_front_porch);
      set_exact (solver, BW_FIGURE_H_SYNC, raster->h_sync);
      set_exact (solver, BW_FIGURE_H_BACK_PORCH, raster->h_back_porch);
    }
  else
    {
      set_exact (solver, BW_FIGURE_LINE_RATE, f.line_rate_hz);
      set_exact (solver, BW_FIGURE_H_FRONT_PORCH_TIME, f.h_front_porch_s);
      set_exact (solver, BW_FIGURE_H_SYNC_TIME, f.h_sync_s);
      set_exact (solver, BW_FIGURE_H_BACK_PORCH_TIME, f.h_back_porch_s);
    }
  const BwFieldTiming *a = &raster->field[0], *b = &raster->field[1];
  set_exact (solver, BW_FIGURE_V_ACTIVE, (a->active + b->active) / 4.0 + 2 * raster->v_border);
  set_exact (solver, BW_FIGURE_V_FRONT_PORCH, (a->front_porch + b->front_porch) / 4.0);
  set_exact (solver, BW_FIGURE_V_SYNC, (a->sync + b->sync) / 4.0);
  set_exact (solver, BW_FIGURE_V_BACK_PORCH, (a->back_porch + b->back_porch) / 4.0);
}
