/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "preview-private.h"

/* From the signal of each line to light on the glass. The beam's light follows the signal to the
 * power gamma. Along the line it is spread by a kernel that has the MTF of the links spot and
 * mask (that of the mask stands for an eye that sees a column as one point); down the screen by
 * the Gaussian of the spot. */

#define TABLE_STEPS 16   /* values of the kernel's table to a step of the grid */
#define TABLE_REACH 1500 /* steps of the grid at most */
#define TABLE_TAIL 1e-3  /* of the peak: beyond, the kernel is over */
#define CURVE_STEPS 2048
#define SPOT_REACH 1.6 /* widths: e to the minus 7 */

/* Even kernel as a table over the distance. */
typedef struct
{
  int n;
  double *at;
} Table;

typedef struct
{
  BwPreviewPlan plan;
  BwPreviewPath *path;
  BwPreviewMask *mask;
  BwResampler columns;
  float curve[CURVE_STEPS + 2];
  float *rows[3]; /* of the grid */
  float *light;   /* of each line, three rows of columns */
  GCancellable *cancellable;
  BwProgressFunc progress;
  gpointer user_data;
} Screen;

static double
spread_response (const BwPreviewPlan *plan, double cycles_per_m)
{
  return bw_preview_mtf (plan, BW_BIT (BW_LINK_SPOT) | BW_BIT (BW_LINK_MASK), cycles_per_m)
         * bw_gaussian_mtf (plan->spot_pixel_m, cycles_per_m);
}

/* The sum of the responses × cos (turn × i), cosines by their recurrence. */
static double
cosine_sum (const double *responses, int n, double turn)
{
  double last = cos (turn), now = 1, twice = 2 * last, sum = -responses[0] / 2;

  for (int i = 0; i < n; i++)
    {
      double next = twice * now - last;
      sum += responses[i] * now;
      last = now;
      now = next;
    }
  return sum;
}

/* Up to the frequency of the grid: a spot of three steps leaves nothing beyond. */
static void
table_init (Table *table, const BwPreviewPlan *plan)
{
  double reach_m = 2 * plan->spot_m + 6 * plan->column_pitch_m;
  int reach = (int) CLAMP (ceil (reach_m / plan->step_m), 4, TABLE_REACH), n = 4 * reach;
  g_autofree double *responses = g_new (double, n);

  for (int i = 0; i < n; i++)
    responses[i] = spread_response (plan, i / (n * plan->step_m));
  table->n = reach * TABLE_STEPS;
  table->at = g_new0 (double, table->n + 2);
  for (int i = 0; i < table->n; i++)
    table->at[i] = cosine_sum (responses, n, 2 * G_PI * i / ((double) n * TABLE_STEPS));
  while (table->n > TABLE_STEPS && table->at[table->n - 1] < TABLE_TAIL * table->at[0])
    table->n--;
  table->at[table->n] = table->at[table->n + 1] = 0;
}

static double
table_weight (double x, gconstpointer user_data)
{
  const Table *table = user_data;
  double place = fabs (x) * TABLE_STEPS;
  int i = (int) place;

  return i >= table->n ? 0 : table->at[i] + (place - i) * (table->at[i + 1] - table->at[i]);
}

/* Light over signal, in equal steps from black to overload. */
static void
set_curve (Screen *screen)
{
  double gamma = screen->plan.preview->gamma > 0 ? screen->plan.preview->gamma : BW_PREVIEW_GAMMA;

  for (int i = 0; i <= CURVE_STEPS + 1; i++)
    screen->curve[i] = (float) pow (i * BW_PREVIEW_OVERLOAD / CURVE_STEPS, gamma);
}

static void
signal_to_light (const Screen *screen, float *row)
{
  const float per_step = (float) (CURVE_STEPS / BW_PREVIEW_OVERLOAD);

  for (int i = 0; i < screen->plan.n; i++)
    {
      float place = CLAMP (row[i] * per_step, 0.0f, (float) CURVE_STEPS);
      int step = (int) place;
      row[i] = screen->curve[step]
               + (place - (float) step) * (screen->curve[step + 1] - screen->curve[step]);
    }
}

static void
screen_init (Screen *screen, const BwPreview *preview)
{
  Table table;

  bw_preview_plan_glass (&screen->plan, preview);
  table_init (&table, &screen->plan);
  int reach = table.n / TABLE_STEPS + 1;
  screen->path = bw_preview_path_new (&screen->plan, reach + 1);
  screen->mask = bw_preview_mask_new (&screen->plan);
  double first_m = screen->plan.left_m + screen->plan.pixel_m / 2;
  bw_resampler_init (&screen->columns, preview->width, screen->plan.n,
                     (first_m - screen->plan.start_m) / screen->plan.step_m,
                     screen->plan.pixel_m / screen->plan.step_m, reach, table_weight, &table);
  g_free (table.at);
  set_curve (screen);
  for (int i = 0; i < 3; i++)
    screen->rows[i] = g_new0 (float, screen->plan.n + 8);
  screen->light = g_new (float, 3 * (gsize) preview->width * (gsize) screen->plan.n_lines);
}

static void
screen_clear (Screen *screen)
{
  bw_preview_path_free (screen->path);
  bw_preview_mask_free (screen->mask);
  bw_resampler_clear (&screen->columns);
  for (int i = 0; i < 3; i++)
    g_free (screen->rows[i]);
  g_free (screen->light);
}

static float *
light_of (const Screen *screen, int line, int colour)
{
  gsize row = (gsize) (line - screen->plan.first_line) * 3 + (gsize) colour;
  return screen->light + row * (gsize) screen->plan.preview->width;
}

/* A monochrome tube has one gun, and is driven by luma. */
static void
make_mono (const BwPreviewPlan *plan, float *rows[3])
{
  float red = (float) plan->luma[0], green = (float) plan->luma[1], blue = (float) plan->luma[2];

  for (int i = 0; i < plan->n; i++)
    rows[0][i] = rows[1][i] = rows[2][i] = red * rows[0][i] + green * rows[1][i]
                                           + blue * rows[2][i];
}

static void
light_line (Screen *screen, int line)
{
  bw_preview_path_line (screen->path, line, screen->rows);
  if (screen->plan.what->mask == BW_MASK_MONO)
    make_mono (&screen->plan, screen->rows);
  for (int colour = 0; colour < 3; colour++)
    {
      signal_to_light (screen, screen->rows[colour]);
      bw_resampler_apply (&screen->columns, screen->rows[colour], light_of (screen, line, colour));
    }
}

static void
add_row (float *restrict out, const float *restrict in, float weight, int n)
{
  int x = 0;

  for (; x + 16 <= n; x += 16)
    for (int j = 0; j < 16; j++)
      out[x + j] += weight * in[x + j];
  for (; x < n; x++)
    out[x] += weight * in[x];
}

/* All lines that shine on one row of pixels. */
static void
mix_lines (const Screen *screen, double y_m, int colour, float *out)
{
  const BwPreviewPlan *plan = &screen->plan;
  double reach_m = SPOT_REACH * plan->spot_v_m;
  double top = (y_m - reach_m - plan->scan_top_m) / plan->line_pitch_m - 0.5;
  double bottom = (y_m + reach_m - plan->scan_top_m) / plan->line_pitch_m - 0.5;
  int last_line = plan->first_line + plan->n_lines - 1;
  int first = (int) CLAMP (ceil (top), plan->first_line, last_line + 1);
  int last = (int) CLAMP (floor (bottom), plan->first_line - 1, last_line);

  for (int line = first; line <= last; line++)
    {
      double off_m = y_m - bw_preview_line_place_m (plan, line);
      double weight = plan->line_pitch_m * bw_gaussian_weight (off_m, plan->spot_v_m);
      add_row (out, light_of (screen, line, colour), (float) weight, plan->preview->width);
    }
}

/* Beyond the viewable area there is no glass. */
static void
cut_to_glass (const BwPreviewPlan *plan, float *row)
{
  int width = plan->preview->width;
  int first = (int) CLAMP (ceil (-plan->left_m / plan->pixel_m - 0.5), 0, width);
  int end = (int) CLAMP (ceil ((plan->width_m - plan->left_m) / plan->pixel_m - 0.5), first, width);

  memset (row, 0, (gsize) first * sizeof *row);
  memset (row + end, 0, (gsize) (width - end) * sizeof *row);
}

static void
shine_row (Screen *screen, int y, BwPlanes *out)
{
  const BwPreviewPlan *plan = &screen->plan;
  double y_m = plan->top_m + (y + 0.5) * plan->pixel_m;

  if (y_m < 0 || y_m > plan->height_m)
    return;
  for (int colour = 0; colour < 3; colour++)
    {
      float *row = out->at[colour] + (gsize) y * (gsize) out->width;
      mix_lines (screen, y_m, colour, row);
      const float *mask = bw_preview_mask_row (screen->mask, y, colour);
      for (int x = 0; mask != NULL && x < out->width; x++)
        row[x] *= mask[x];
      cut_to_glass (plan, row);
    }
}

/* Whether to go on after a line or a row. */
static gboolean
report (const Screen *screen, int done, GError **error)
{
  double all = screen->plan.n_lines + screen->plan.preview->height;

  if (g_cancellable_set_error_if_cancelled (screen->cancellable, error))
    return FALSE;
  if (screen->progress != NULL)
    screen->progress (done / all, screen->user_data);
  return TRUE;
}

static gboolean
fill (Screen *screen, BwPlanes *out, GError **error)
{
  int n_lines = screen->plan.n_lines;

  if (!report (screen, 0, error))
    return FALSE;
  for (int i = 0; i < n_lines; i++)
    {
      light_line (screen, screen->plan.first_line + i);
      if (!report (screen, i + 1, error))
        return FALSE;
    }
  for (int y = 0; y < out->height; y++)
    {
      shine_row (screen, y, out);
      if (!report (screen, n_lines + y + 1, error))
        return FALSE;
    }
  return TRUE;
}

/**
 * bw_preview_screen:
 * @cancellable: (nullable): looked at after every line
 * @progress: (nullable): called after every line
 *
 * Computes what the crop of the screen shows. May run in any thread; nothing that @preview points
 * to may change meanwhile.
 *
 * Returns: (transfer full) (nullable): linear light of each pixel, 1 being the mean of a white
 *   field; %NULL with @error in %BW_PREVIEW_ERROR, or %G_IO_ERROR_CANCELLED
 */
BwPlanes *
bw_preview_screen (const BwPreview *preview, GCancellable *cancellable, BwProgressFunc progress,
                   gpointer user_data, GError **error)
{
  g_return_val_if_fail (preview != NULL, NULL);
  Screen screen = { .cancellable = cancellable, .progress = progress, .user_data = user_data };

  if (!bw_preview_check (preview, error))
    return NULL;
  screen_init (&screen, preview);
  g_autoptr (BwPlanes) out = bw_planes_new (preview->width, preview->height);
  gboolean whole = fill (&screen, out, error);
  screen_clear (&screen);
  return whole ? g_steal_pointer (&out) : NULL;
}
