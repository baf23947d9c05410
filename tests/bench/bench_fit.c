/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What it costs to judge 1,000 sources at 12 inputs, in nanoseconds and as a multiple of one call
 * of libxcvt_gen_mode_info() measured in the same run, which makes the figure comparable between
 * machines. Prints a table and judges nothing itself. */
#include "core/fit/fit.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include <libxcvt/libxcvt.h>

#define N_SOURCES 1000
#define N_INPUTS 12
#define N_CELLS ((guint) (N_SOURCES * N_INPUTS))
#define ROUNDS 15

/* Kept, so that nothing measured can be left out by the compiler */
static guint64 seen;

static double
random_near (GRand *rand, double value)
{
  return value * g_rand_double_range (rand, 0.7, 1.4);
}

static BwSource *
varied_source (GRand *rand, GPtrArray *models, GPtrArray *rasters)
{
  BwSource *source = bw_source_copy (models->pdata[g_rand_int (rand) % models->len]);
  const BwRaster *raster = rasters->pdata[g_rand_int (rand) % rasters->len];

  if (g_rand_boolean (rand))
    {
      g_free (source->raster);
      source->raster = g_strdup (raster->id);
    }
  source->video_v = random_near (rand, source->video_v);
  source->sync_v = random_near (rand, source->sync_v);
  source->source_ohm = random_near (rand, source->source_ohm);
  return source;
}

static BwInput *
varied_input (GRand *rand, GPtrArray *monitors)
{
  const BwMonitor *model = monitors->pdata[g_rand_int (rand) % monitors->len];
  BwInput *input = bw_input_copy (bw_monitor_input (model, g_rand_int (rand) % model->inputs->len));
  input->terminated = g_rand_boolean (rand);
  input->loop_ended = g_rand_int (rand) % 4 == 0;
  input->video_v.at[0].low = random_near (rand, input->video_v.at[0].low);
  return input;
}

static BwSheet *
varied_sheet (const BwCatalogue *catalogue)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (8);
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  BwSheet *sheet = bw_sheet_new ();

  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitors->pdata[0]);
  g_ptr_array_set_size (sheet->monitor->inputs, 0);
  for (guint i = 0; i < N_INPUTS; i++)
    g_ptr_array_add (sheet->monitor->inputs, varied_input (rand, monitors));
  for (guint i = 0; i < N_SOURCES; i++)
    g_ptr_array_add (sheet->sources, varied_source (rand, bw_catalogue_sources (catalogue),
                                                    bw_catalogue_rasters (catalogue)));
  return sheet;
}

static void
judge_cell (const BwSheet *sheet, const BwCatalogue *catalogue, guint cell, gboolean words)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  bw_case_init (&c, &figures, sheet, catalogue, cell / N_INPUTS, cell % N_INPUTS);
  bw_fit_judge (&c, &fit);
  seen += fit.verdict;
  for (guint i = 0; words && i < BW_N_RULES; i++)
    {
      g_autofree char *says = bw_finding_says (&fit.at[i], &fit, &c, '.');
      g_autofree char *remedy = bw_finding_remedy (&fit.at[i], &fit, &c, '.');
      seen += (guint64) says[0] + (remedy != NULL);
    }
}

static void
judge_all (const BwSheet *sheet, const BwCatalogue *catalogue, gboolean words)
{
  for (guint cell = 0; cell < N_CELLS; cell++)
    judge_cell (sheet, catalogue, cell, words);
}

static double
now_ns (void)
{
  struct timespec now;
  clock_gettime (CLOCK_MONOTONIC, &now);
  return (double) now.tv_sec * 1e9 + (double) now.tv_nsec;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

#define N_CALLS 12000u

static void
call_libxcvt (void)
{
  static const int sizes[][2] = { { 640, 480 }, { 800, 600 }, { 1024, 768 }, { 1280, 1024 } };
  for (guint i = 0; i < N_CALLS; i++)
    {
      const int *size = sizes[i % G_N_ELEMENTS (sizes)];
      float rate_hz = i % 2 == 0 ? 60 : 75;
      struct libxcvt_mode_info *mode = libxcvt_gen_mode_info (size[0], size[1], rate_hz, FALSE,
                                                              FALSE);
      seen += mode->dot_clock;
      free (mode);
    }
}

typedef struct
{
  const char *what;
  double median_ns;
  double least_ns;
} Measure;

typedef enum
{
  TASK_JUDGE,
  TASK_WORDS,
  TASK_LIBXCVT
} Task;

/* Times one round of @task, in nanoseconds for each cell or call. */
static double
time_round (Task task, const BwSheet *sheet, const BwCatalogue *catalogue)
{
  double start_ns = now_ns ();

  if (task == TASK_LIBXCVT)
    call_libxcvt ();
  else
    judge_all (sheet, catalogue, task == TASK_WORDS);
  return (now_ns () - start_ns) / (task == TASK_LIBXCVT ? N_CALLS : N_CELLS);
}

static Measure
measure (const char *what, Task task, const BwSheet *sheet, const BwCatalogue *catalogue)
{
  double rounds_ns[ROUNDS];

  time_round (task, sheet, catalogue); /* warms the caches */
  for (guint i = 0; i < ROUNDS; i++)
    rounds_ns[i] = time_round (task, sheet, catalogue);
  qsort (rounds_ns, ROUNDS, sizeof rounds_ns[0], compare_doubles);
  return (Measure){ what, rounds_ns[ROUNDS / 2], rounds_ns[0] };
}

static void
print_row (const Measure *m, const Measure *call)
{
  printf ("%-34s %12.1f %12.1f %14.2f\n", m->what, m->median_ns, m->least_ns,
          m->median_ns / call->median_ns);
}

int
main (void)
{
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, NULL);
  g_autoptr (BwSheet) sheet = varied_sheet (catalogue);
  Measure call = measure ("one libxcvt_gen_mode_info() call", TASK_LIBXCVT, sheet, catalogue);
  Measure judge = measure ("one cell judged", TASK_JUDGE, sheet, catalogue);
  Measure words = measure ("one cell judged, all sentences made", TASK_WORDS, sheet, catalogue);

  printf ("%u sources x %u inputs = %u cells, %u rounds\n\n", N_SOURCES, N_INPUTS, N_CELLS, ROUNDS);
  printf ("%-34s %12s %12s %14s\n", "", "median, ns", "least, ns", "x libxcvt call");
  print_row (&call, &call);
  print_row (&judge, &call);
  print_row (&words, &call);
  return seen > 0 ? 0 : 1;
}
