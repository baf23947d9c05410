/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "preview-private.h"

/* The picture as the source sends it. Down the screen a line takes the mean of what lies in it.
 * Along the line a picture that is finer than the source is band-limited to it; one that is
 * coarser has flat pixels. What is beyond the active line is black. */

#define LOBES 8.0 /* on each side of the windowed sinc */
#define SPARE 8   /* values that bw_resampler_apply() may read after the end of a row */

struct _BwPreviewReader
{
  const BwPreviewPlan *plan;
  BwResampler sampler; /* from the picture to samples; to the grid where nothing is held */
  BwResampler holder;  /* from samples to the grid */
  int first_sample;    /* the grid needs @n_samples from here on */
  int n_samples;
  float *row;     /* one row of the picture */
  float *samples; /* what the source makes of it */
  float *inside;  /* how much of each step of the grid lies in the active line: 0 to 1 */
};

/* A sinc under a cosine bell, which ends at %LOBES: it passes its band evenly, and folds only the last
 * tenth of it. */
static double
sinc_weight (double x, gconstpointer user_data)
{
  double zeros = x / *(const double *) user_data; /* pixels from one zero to the next */
  double bell = 0.5 + 0.5 * cos (G_PI * zeros / LOBES);

  return fabs (zeros) < 1e-9 ? 1 : bell * sin (G_PI * zeros) / (G_PI * zeros);
}

/* How much of a sample of unit width at @x overlaps a step of the given width around zero. */
static double
flat_weight (double x, gconstpointer user_data)
{
  double half = *(const double *) user_data / 2;
  return MAX (0, MIN (x + 0.5, half) - MAX (x - 0.5, -half));
}

/* Which samples the grid touches; without samples the grid's own values are read. */
static void
choose_samples (BwPreviewReader *reader)
{
  const BwPreviewPlan *plan = reader->plan;
  double sample_m = plan->scan_width_m / plan->what->samples;
  double low_m = plan->start_m - plan->step_m - plan->scan_left_m;
  double high_m = plan->start_m + plan->n * plan->step_m - plan->scan_left_m;

  reader->first_sample = (int) CLAMP (floor (low_m / sample_m), 0, plan->what->samples - 1);
  reader->n_samples = (int) CLAMP (ceil (high_m / sample_m), reader->first_sample + 1,
                                   plan->what->samples) - reader->first_sample;
}

static void
prepare_sampler (BwPreviewReader *reader, double sample_m)
{
  const BwPreviewPlan *plan = reader->plan;
  int width = plan->preview->picture->width;
  double pixel_m = plan->scan_width_m / width;
  double first_m = plan->held ? (reader->first_sample + 0.5) * sample_m
                              : plan->start_m - plan->scan_left_m;
  gboolean flat = plan->held && width <= plan->what->samples;
  double pixels = flat ? sample_m / pixel_m : MAX (1, sample_m / pixel_m);

  bw_resampler_init (&reader->sampler, reader->n_samples, width, first_m / pixel_m - 0.5,
                     sample_m / pixel_m, flat ? 1 : LOBES * pixels,
                     flat ? flat_weight : sinc_weight, &pixels);
}

static void
prepare_holder (BwPreviewReader *reader, double sample_m)
{
  const BwPreviewPlan *plan = reader->plan;
  double step = plan->step_m / sample_m;
  double start = (plan->start_m - plan->scan_left_m) / sample_m - 0.5 - reader->first_sample;

  bw_resampler_init (&reader->holder, plan->n, reader->n_samples, start, step, step / 2 + 0.5,
                     flat_weight, &step);
}

static void
set_inside (BwPreviewReader *reader)
{
  const BwPreviewPlan *plan = reader->plan;

  for (int i = 0; i < plan->n; i++)
    {
      double low_m = plan->start_m + (i - 0.5) * plan->step_m - plan->scan_left_m;
      double high_m = MIN (low_m + plan->step_m, plan->scan_width_m);
      reader->inside[i] = (float) CLAMP ((high_m - MAX (low_m, 0)) / plan->step_m, 0, 1);
    }
}

/**
 * bw_preview_reader_new:
 * @plan: borrowed; its grid must be set
 *
 * Returns: (transfer full): what reads the picture of @plan
 */
BwPreviewReader *
bw_preview_reader_new (const BwPreviewPlan *plan)
{
  BwPreviewReader *reader = g_new0 (BwPreviewReader, 1);

  double sample_m = plan->held ? plan->scan_width_m / plan->what->samples : plan->step_m;

  reader->plan = plan;
  reader->n_samples = plan->n;
  if (plan->held)
    {
      choose_samples (reader);
      prepare_holder (reader, sample_m);
    }
  prepare_sampler (reader, sample_m);
  reader->row = g_new0 (float, plan->preview->picture->width + SPARE);
  reader->samples = g_new0 (float, reader->n_samples + SPARE);
  reader->inside = g_new (float, plan->n);
  set_inside (reader);
  return reader;
}

void
bw_preview_reader_free (BwPreviewReader *reader)
{
  if (reader == NULL)
    return;
  bw_resampler_clear (&reader->sampler);
  bw_resampler_clear (&reader->holder);
  g_free (reader->row);
  g_free (reader->inside);
  g_free (reader->samples);
  g_free (reader);
}

/* The part of the picture's row that is read at all. */
static void
columns_read (const BwPreviewReader *reader, int *first, int *n)
{
  const BwResampler *sampler = &reader->sampler;
  int width = reader->plan->preview->picture->width;
  int last = sampler->first[sampler->n - 1] + sampler->taps;

  *first = sampler->first[0];
  *n = MIN (last, width) - *first;
}

/* The mean of the rows in which @line lies. */
static void
mix_rows (BwPreviewReader *reader, const float *plane, int line)
{
  const BwPlanes *picture = reader->plan->preview->picture;
  double rows = picture->height / reader->plan->what->active_lines;
  double top = line * rows, bottom = MIN (top + rows, picture->height);
  int first_column, n;

  columns_read (reader, &first_column, &n);
  memset (reader->row + first_column, 0, (gsize) n * sizeof *reader->row);
  for (int y = (int) top; y < picture->height && y < bottom - 1e-9; y++)
    {
      double share = MIN (y + 1.0, bottom) - MAX (y, top);
      float weight = (float) (share / (bottom - top));
      const float *from = plane + (gsize) y * (gsize) picture->width + first_column;
      float *row = reader->row + first_column;
      for (int x = 0; x < n && share > 1e-9; x++)
        row[x] += weight * from[x];
    }
}

/**
 * bw_preview_reader_line:
 * @line: of the frame
 * @rgb: (out): three rows of the plan's grid
 */
void
bw_preview_reader_line (BwPreviewReader *reader, int line, float *rgb[3])
{
  const BwPreviewPlan *plan = reader->plan;

  for (int i = 0; i < 3; i++)
    {
      mix_rows (reader, plan->preview->picture->at[i], line);
      bw_resampler_apply (&reader->sampler, reader->row, plan->held ? reader->samples : rgb[i]);
      if (plan->held)
        bw_resampler_apply (&reader->holder, reader->samples, rgb[i]);
      for (int x = 0; x < plan->n; x++)
        rgb[i][x] *= reader->inside[x];
    }
}
