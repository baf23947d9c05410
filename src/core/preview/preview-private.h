/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/levels/colour.h"
#include "preview.h"

G_BEGIN_DECLS

/* The parts of the preview. Places are metres of glass from the left and the top of the viewable
 * area; frequencies are cycles a metre. One line of signal is a row of floats on the plan's grid:
 * value i stands at start_m + i × step_m. */

/**
 * BwKernel:
 * @half: values on each side of the middle one
 * @taps: 2 × @half + 1 values, even about the middle
 */
typedef struct
{
  int half;
  float *taps;
} BwKernel;

/**
 * BwPathKernels:
 * @luma: and of R, G and B
 * @difference: of component; of Y/C and composite after decoding
 * @encoder: of U and V
 * @chroma_pass: around the subcarrier
 */
typedef struct
{
  BwKernel luma;
  BwKernel difference;
  BwKernel encoder;
  BwKernel chroma_pass;
} BwPathKernels;

/* A response at a frequency, 1 at full height. */
typedef double (*BwResponse) (double cycles_per_m, gconstpointer user_data);

void bw_kernel_init (BwKernel *kernel, double step_m, BwResponse response,
                     gconstpointer user_data);
void bw_kernel_clear (BwKernel *kernel);
void bw_kernel_apply (const BwKernel *kernel, const float *in, float *out, int n);

/**
 * BwResampler:
 * @n: values made
 * @taps: values read for each, a multiple of 8
 * @first: index of the first one read
 * @weights: @n × @taps
 */
typedef struct
{
  int n;
  int taps;
  int *first;
  float *weights;
} BwResampler;

/* Weight of what lies @x from where the value is wanted, in the unit of the input's step. */
typedef double (*BwWeight) (double x, gconstpointer user_data);

void bw_resampler_init (BwResampler *resampler, int n, int n_in, double start, double step,
                        double reach, BwWeight weight, gconstpointer user_data);
void bw_resampler_clear (BwResampler *resampler);
void bw_resampler_apply (const BwResampler *resampler, const float *in, float *out);

/**
 * BwPreviewPlan:
 * @scan_left_m: where the active line begins, at or left of the viewable area
 * @column_pitch_m: of the mask; zero: none, or not known
 * @held: whether the source holds each of its samples until the next
 * @lines: of the frame
 * @spot_m: as it is drawn across the line
 * @spot_v_m: as it is drawn down the screen
 * @spot_pixel_m: what is added to the spot across the line, for pixels that are too wide for it
 * @step_m: of the grid; @n values from @start_m
 * @first_line: the first of @n_lines that the crop needs
 * @coding: what goes over the wire
 * @carrier_per_m: cycles of the subcarrier
 * @carrier_per_line: cycles from one line to the next in time
 * @lines_per_frame: in time; @lines_to_field_2 of them from a line of field 1 to the one below it
 * @alternates: whether V changes its sign from line to line
 * @comb: lines of one field that the comb reaches up and down; zero: a trap
 * @luma: shares of R, G and B
 * @u: factor on B−Y; @v on R−Y
 *
 * All that follows from a preview and is the same for each of its lines.
 */
typedef struct
{
  const BwPreview *preview;
  const BwDetailCase *what;
  double width_m;
  double height_m;
  double scan_width_m;
  double scan_left_m;
  double scan_top_m;
  double left_m;
  double top_m;
  double pixel_m;
  double line_pitch_m;
  double column_pitch_m;
  gboolean held;
  int lines;
  double spot_m;
  double spot_v_m;
  double spot_pixel_m;
  double step_m;
  double start_m;
  int n;
  int first_line;
  int n_lines;
  BwSignal coding;
  double carrier_per_m;
  double carrier_per_line;
  int lines_per_frame;
  int lines_to_field_2;
  gboolean alternates;
  gboolean sequential;
  int comb;
  double luma[3];
  double u;
  double v;
} BwPreviewPlan;

void bw_preview_plan_glass (BwPreviewPlan *plan, const BwPreview *preview);
void bw_preview_plan_coding (BwPreviewPlan *plan);
double bw_preview_mtf (const BwPreviewPlan *plan, guint links, double cycles_per_m);
int bw_preview_line_in_time (const BwPreviewPlan *plan, int line);
int bw_preview_line_in_field (const BwPreviewPlan *plan, int line, int further);
double bw_preview_line_place_m (const BwPreviewPlan *plan, int line);
double bw_gaussian_weight (double x, double width);

void bw_path_kernels_init (BwPathKernels *kernels, const BwPreviewPlan *plan);
void bw_path_kernels_clear (BwPathKernels *kernels);
int bw_path_kernels_margin (const BwPathKernels *kernels);

/* The picture as the source sends it: R'G'B' on the grid. */
typedef struct _BwPreviewReader BwPreviewReader;
BwPreviewReader *bw_preview_reader_new (const BwPreviewPlan *plan);
void bw_preview_reader_free (BwPreviewReader *reader);
void bw_preview_reader_line (BwPreviewReader *reader, int line, float *rgb[3]);

/* What it has become when it drives the tube. */
typedef struct _BwPreviewPath BwPreviewPath;
BwPreviewPath *bw_preview_path_new (BwPreviewPlan *plan, int screen_margin);
void bw_preview_path_free (BwPreviewPath *path);
void bw_preview_path_line (BwPreviewPath *path, int line, float *rgb[3]);

/* Encoding and decoding of a line. */
typedef struct
{
  const BwPreviewPlan *plan;
  float *sine;   /* of the subcarrier along the grid, at line 0 in time */
  float *cosine;
  float *carrier_u; /* of the line at hand */
  float *carrier_v;
} BwCarrier;

void bw_carrier_init (BwCarrier *carrier, const BwPreviewPlan *plan);
void bw_carrier_clear (BwCarrier *carrier);
void bw_carrier_set_line (BwCarrier *carrier, int line);
void bw_carrier_add (const BwCarrier *carrier, const float *u, const float *v, float *composite);
void bw_carrier_demodulate (const BwCarrier *carrier, const float *chroma, float *u, float *v);

void bw_rows_to_yuv (const BwPreviewPlan *plan, float *rows[3]);
void bw_rows_to_rgb (const BwPreviewPlan *plan, float *rows[3]);

/* The mask at one row of pixels: what each pixel lets through, 1 on average. */
typedef struct _BwPreviewMask BwPreviewMask;
BwPreviewMask *bw_preview_mask_new (const BwPreviewPlan *plan);
void bw_preview_mask_free (BwPreviewMask *mask);
const float *bw_preview_mask_row (BwPreviewMask *mask, int row, int colour);
double bw_preview_mask_peak (const BwPreviewPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPreviewReader, bw_preview_reader_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPreviewPath, bw_preview_path_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPreviewMask, bw_preview_mask_free)

G_END_DECLS
