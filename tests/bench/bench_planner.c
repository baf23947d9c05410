/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What it costs to plan every cell of a sheet with 100 adaptors and chains of up to four boxes: in
 * milliseconds, and as a multiple of judging 1,000 cells in the same run, which makes the figure
 * comparable between machines. Prints a table and judges nothing itself. */
#include "core/hookup/planner.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define N_ADAPTORS 100
#define N_PLANS 3
#define N_JUDGED 1000
#define ROUNDS 9

/* Kept, so that nothing measured can be left out by the compiler */
static guint64 seen;

static double
now_ms (void)
{
  struct timespec now;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now); /* other work on the machine left out */
  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}

/* The shipped adaptors, and copies of them with other ranks and figures until there are enough. */
static BwCatalogue *
crowded_catalogue (void)
{
  BwCatalogue *catalogue = bw_catalogue_new (NULL, NULL);
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  g_autoptr (GRand) rand = g_rand_new_with_seed (100);
  guint shipped = adaptors->len;

  while (adaptors->len < N_ADAPTORS)
    {
      BwAdaptor *copy = bw_adaptor_copy (adaptors->pdata[g_rand_int (rand) % shipped]);
      copy->rank = g_rand_int_range (rand, 1, 80);
      if (copy->detail_hz > 0)
        copy->detail_hz *= g_rand_double_range (rand, 0.5, 2);
      if (copy->gives_video_v > 0)
        copy->gives_video_v *= g_rand_double_range (rand, 0.8, 1.2);
      g_ptr_array_add (adaptors, copy);
    }
  return catalogue;
}

static BwSheet *
full_sheet (const BwCatalogue *catalogue)
{
  BwSheet *sheet = bw_sheet_new ();
  GPtrArray *sources = bw_catalogue_sources (catalogue);

  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (bw_catalogue_monitors (catalogue)->pdata[0]);
  sheet->supply_hz = 50;
  for (guint i = 0; i < sources->len; i++)
    g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[i]));
  return sheet;
}

static double
judge_round (const BwSheet *sheet, const BwCatalogue *catalogue)
{
  double start_ms = now_ms ();
  for (guint i = 0; i < N_JUDGED; i++)
    {
      BwRasterFigures figures;
      BwCase c;
      BwFit fit;
      bw_case_init (&c, &figures, sheet, catalogue, i % sheet->sources->len,
                    i % sheet->monitor->inputs->len);
      bw_fit_judge (&c, &fit);
      seen += fit.verdict;
    }
  return now_ms () - start_ms;
}

static double
plan_cell (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
           guint *states)
{
  double start_ms = now_ms ();
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, N_PLANS);
  seen += plans->len;
  *states = bw_planner_states (planner);
  return now_ms () - start_ms;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

static double
median (double *values, guint n)
{
  qsort (values, n, sizeof *values, compare_doubles);
  return values[n / 2];
}

static double
median_cell (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
             guint *states)
{
  double rounds[ROUNDS];
  for (guint i = 0; i < ROUNDS; i++)
    rounds[i] = plan_cell (sheet, catalogue, source, input, states);
  return median (rounds, ROUNDS);
}

/* The slowest of all cells when no chain gives the sync that the inputs want: the whole search. */
static double
hopeless_ms (const BwSheet *model, const BwCatalogue *catalogue, guint *most_states)
{
  g_autoptr (BwSheet) sheet = bw_sheet_copy (model);
  double slowest_ms = 0;

  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    {
      BwInput *input = bw_monitor_input (sheet->monitor, i);
      input->sync_v.at[0] = (BwRange){ 10, 12 };
      input->own_sync_v.n = 0;
    }
  for (guint s = 0; s < sheet->sources->len; s++)
    for (guint i = 0; i < sheet->monitor->inputs->len; i++)
      {
        guint states;
        slowest_ms = MAX (slowest_ms, plan_cell (sheet, catalogue, s, i, &states));
        *most_states = MAX (*most_states, states);
      }
  return slowest_ms;
}

static void
print_row (const char *what, double ms, double judge_ms)
{
  printf ("%-40s %10.3f %22.2f\n", what, ms, ms / judge_ms);
}

int
main (void)
{
  g_autoptr (BwCatalogue) catalogue = crowded_catalogue ();
  g_autoptr (BwSheet) sheet = full_sheet (catalogue);
  guint n = sheet->sources->len * sheet->monitor->inputs->len;
  g_autofree double *cells = g_new (double, n);
  double judged[ROUNDS];
  guint most_states = 0, at = 0;

  for (guint i = 0; i < ROUNDS; i++)
    judged[i] = judge_round (sheet, catalogue);
  for (guint s = 0; s < sheet->sources->len; s++)
    for (guint i = 0; i < sheet->monitor->inputs->len; i++)
      {
        guint states;
        cells[at++] = median_cell (sheet, catalogue, s, i, &states);
        most_states = MAX (most_states, states);
      }
  double judge_ms = median (judged, ROUNDS);
  double middle_ms = median (cells, n); /* sorts */
  double none_ms = hopeless_ms (sheet, catalogue, &most_states);

  printf ("%u adaptors, %u plans a cell, %u cells, %u rounds, at most %u places\n\n", N_ADAPTORS,
          N_PLANS, n, ROUNDS, most_states);
  printf ("%-40s %10s %22s\n", "", "ms", "x 1,000 cells judged");
  print_row ("1,000 cells judged", judge_ms, judge_ms);
  print_row ("one cell planned, the middle one", middle_ms, judge_ms);
  print_row ("one cell planned, the slowest", cells[n - 1], judge_ms);
  print_row ("one cell that no chain serves, slowest", none_ms, judge_ms);
  return seen > 0 ? 0 : 1;
}
