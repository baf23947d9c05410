/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/signal/synthesis.h"
#include "draw/line/shape.h"

G_BEGIN_DECLS

/* The signal that the drawings of levels and of vectors are made of. */

#define BW_LEVELS_PER_CYCLE 16 /* samples to a cycle of the subcarrier */

/**
 * BwLevelsModel:
 *
 * A test signal with all that its drawings share. Made once, drawn often. Counted references.
 */
typedef struct _BwLevelsModel BwLevelsModel;

/**
 * BwLevelsLoad:
 * @source_ohm: resistance of the output
 * @load_ohm: what it works into: two loads are their parallel resistance, %INFINITY is none; zero:
 *   nothing is known, the levels are drawn as they are stated
 * @stated: what the level is stated across
 */
typedef struct
{
  double source_ohm;
  double load_ohm;
  BwStatedLoad stated;
} BwLevelsLoad;

/* A part of the signal in time: after the datum of the line of a view. */
typedef struct
{
  double start_s; /* of that datum, from that of sample 0 */
  double from_s;
  double to_s;
} BwLevelsWindow;

/**
 * BwLevelsSamples:
 * @first_s: of the first sample, after the datum of the window
 * @step_s: from one to the next
 */
typedef struct
{
  double first_s;
  double step_s;
  gsize n;
  float *volts;
} BwLevelsSamples;

BwLevelsModel *bw_levels_model_new (const BwSynthesisCase *what, GError **error);
BwLevelsModel *bw_levels_model_ref (BwLevelsModel *model);
void bw_levels_model_unref (BwLevelsModel *model);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwLevelsModel, bw_levels_model_unref)

void bw_levels_model_set_coupling (BwLevelsModel *model, double farad, double loop_ohm);
double bw_levels_model_time_constant_s (const BwLevelsModel *model);
const BwSynthesisCase *bw_levels_model_case (const BwLevelsModel *model);
BwSynthesis *bw_levels_model_synthesis (BwLevelsModel *model);
int bw_levels_model_picture_line (const BwLevelsModel *model);

const BwRaster *bw_levels_model_raster (const BwLevelsModel *model);
guint bw_levels_model_levels (const BwLevelsModel *model, const BwWireLevels **levels);
const BwLineShape *bw_levels_model_shape (const BwLevelsModel *model);
double bw_levels_model_subcarrier_hz (const BwLevelsModel *model);
gboolean bw_levels_model_burst (const BwLevelsModel *model, BwRange *burst_s);
double bw_levels_model_start_s (const BwLevelsModel *model, gint64 frame, int line);
void bw_levels_samples (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
                        BwLevelsSamples *samples);
gboolean bw_levels_chroma_samples (BwLevelsModel *model, const BwLevelsWindow *window,
                                   BwLevelsSamples *samples);
void bw_levels_samples_clear (BwLevelsSamples *samples);
char *bw_levels_text_number (double value, char mark);
double bw_levels_gain (const BwLevelsLoad *load);

G_END_DECLS
