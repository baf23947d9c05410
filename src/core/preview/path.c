/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-private.h"

#include <math.h>
#include <string.h>

/* A line from the source to the tube, as its signal kind travels. */

struct _BwPreviewPath
{
  BwPreviewPlan *plan;
  BwPreviewReader *reader;
  BwCarrier carrier;
  BwPathKernels kernels;
  float **composite; /* lines of the frame that have been asked for */
  float *rows[3];
  float *spare[3];
};

/* The grid reaches beyond the crop by all that lies between. */
static void
set_grid (BwPreviewPath *path, int screen_margin)
{
  BwPreviewPlan *plan = path->plan;
  int margin = bw_path_kernels_margin (&path->kernels) + screen_margin + 2;

  plan->start_m = plan->left_m - margin * plan->step_m;
  plan->n = (int) ceil (plan->preview->width * plan->pixel_m / plan->step_m) + 2 * margin + 1;
}

/**
 * bw_preview_path_new:
 * @plan: borrowed; its grid is set so that the crop and @screen_margin values on each side are
 *   sound
 *
 * Returns: (transfer full): what computes lines of signal
 */
BwPreviewPath *
bw_preview_path_new (BwPreviewPlan *plan, int screen_margin)
{
  BwPreviewPath *path = g_new0 (BwPreviewPath, 1);

  path->plan = plan;
  bw_path_kernels_init (&path->kernels, plan);
  set_grid (path, screen_margin);
  path->reader = bw_preview_reader_new (plan);
  for (int i = 0; i < 3; i++)
    {
      path->rows[i] = g_new0 (float, plan->n);
      path->spare[i] = g_new0 (float, plan->n);
    }
  if (plan->coding == BW_SIGNAL_COMPOSITE)
    {
      bw_carrier_init (&path->carrier, plan);
      path->composite = g_new0 (float *, plan->lines);
    }
  return path;
}

void
bw_preview_path_free (BwPreviewPath *path)
{
  if (path == NULL)
    return;
  bw_preview_reader_free (path->reader);
  bw_carrier_clear (&path->carrier);
  bw_path_kernels_clear (&path->kernels);
  for (int i = 0; i < 3; i++)
    {
      g_free (path->rows[i]);
      g_free (path->spare[i]);
    }
  for (int line = 0; path->composite != NULL && line < path->plan->lines; line++)
    g_free (path->composite[line]);
  g_free (path->composite);
  g_free (path);
}

static void
read_yuv (BwPreviewPath *path, int line)
{
  bw_preview_reader_line (path->reader, line, path->rows);
  bw_rows_to_yuv (path->plan, path->rows);
}

/* A line of composite as it is on the wire; kept, because a comb asks for it again. */
static const float *
composite_line (BwPreviewPath *path, int line)
{
  int n = path->plan->n;

  if (path->composite[line] != NULL)
    return path->composite[line];
  read_yuv (path, line);
  float *composite = g_new (float, n);
  memcpy (composite, path->rows[0], (gsize) n * sizeof *composite);
  for (int i = 1; i < 3; i++)
    bw_kernel_apply (&path->kernels.encoder, path->rows[i], path->spare[i], n);
  bw_carrier_set_line (&path->carrier, line);
  bw_carrier_add (&path->carrier, path->spare[1], path->spare[2], composite);
  return path->composite[line] = composite;
}

/* What a comb takes for chroma: that which is in antiphase to the lines above and below. */
static void
comb (BwPreviewPath *path, int line, float *out)
{
  const BwPreviewPlan *plan = path->plan;
  const float *here = composite_line (path, line);
  const float *above = composite_line (path, bw_preview_line_in_field (plan, line, -plan->comb));
  const float *below = composite_line (path, bw_preview_line_in_field (plan, line, plan->comb));

  for (int i = 0; i < plan->n; i++)
    out[i] = 0.5f * here[i] - 0.25f * (above[i] + below[i]);
}

static void
decode_composite (BwPreviewPath *path, int line, float *out[3])
{
  const BwPreviewPlan *plan = path->plan;
  const float *composite = composite_line (path, line);
  float *chroma = path->spare[0], *luma = path->spare[1];

  const float *coloured = composite;
  if (plan->comb > 0)
    {
      comb (path, line, path->rows[0]);
      coloured = path->rows[0];
    }
  bw_kernel_apply (&path->kernels.chroma_pass, coloured, chroma, plan->n);
  for (int i = 0; i < plan->n; i++)
    luma[i] = plan->comb > 0 ? composite[i] - chroma[i] : composite[i];
  bw_kernel_apply (&path->kernels.luma, luma, out[0], plan->n);

  bw_carrier_set_line (&path->carrier, line);
  bw_carrier_demodulate (&path->carrier, chroma, path->spare[1], path->spare[2]);
  for (int i = 1; i < 3; i++)
    bw_kernel_apply (&path->kernels.difference, path->spare[i], out[i], plan->n);
}

static void
code_apart (BwPreviewPath *path, int row, float *out)
{
  bw_kernel_apply (&path->kernels.encoder, path->rows[row], path->spare[row], path->plan->n);
  bw_kernel_apply (&path->kernels.difference, path->spare[row], out, path->plan->n);
}

/* Y and C on their own conductors. A system that sends one difference a line shows the other one
 * from the line before. */
static void
code_yc (BwPreviewPath *path, int line, float *out[3])
{
  const BwPreviewPlan *plan = path->plan;
  int held_row = plan->sequential ? 1 + bw_preview_line_in_time (plan, line) % 2 : 0;

  read_yuv (path, line);
  bw_kernel_apply (&path->kernels.luma, path->rows[0], out[0], plan->n);
  for (int i = 1; i < 3; i++)
    if (i != held_row)
      code_apart (path, i, out[i]);
  if (held_row == 0)
    return;
  read_yuv (path, bw_preview_line_in_field (plan, line, -1));
  code_apart (path, held_row, out[held_row]);
}

static void
send_apart (BwPreviewPath *path, int line, float *out[3])
{
  const BwPreviewPlan *plan = path->plan;
  const BwPathKernels *kernels = &path->kernels;
  const BwKernel *difference = plan->coding == BW_SIGNAL_RGB ? &kernels->luma
                                                             : &kernels->difference;

  bw_preview_reader_line (path->reader, line, path->rows);
  if (plan->coding != BW_SIGNAL_RGB)
    bw_rows_to_yuv (plan, path->rows);
  bw_kernel_apply (&kernels->luma, path->rows[0], out[0], plan->n);
  for (int i = 1; i < 3; i++)
    if (plan->coding == BW_SIGNAL_LUMA)
      memset (out[i], 0, (gsize) plan->n * sizeof *out[i]);
    else
      bw_kernel_apply (difference, path->rows[i], out[i], plan->n);
}

/**
 * bw_preview_path_line:
 * @line: of the frame
 * @rgb: (out): three rows of the plan's grid: R'G'B' at the tube
 */
void
bw_preview_path_line (BwPreviewPath *path, int line, float *rgb[3])
{
  switch (path->plan->coding)
    {
    case BW_SIGNAL_COMPOSITE:
      decode_composite (path, line, rgb);
      break;
    case BW_SIGNAL_YC:
      code_yc (path, line, rgb);
      break;
    case BW_SIGNAL_RGB:
    case BW_SIGNAL_COMPONENT:
    case BW_SIGNAL_LUMA:
    case BW_N_SIGNALS:
    default:
      send_apart (path, line, rgb);
      break;
    }
  if (path->plan->coding != BW_SIGNAL_RGB)
    bw_rows_to_rgb (path->plan, rgb);
}
