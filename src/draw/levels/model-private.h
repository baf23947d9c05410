/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "model.h"

G_BEGIN_DECLS

/* The signal as samples, which the drawing of the levels alone needs. */

/* In user-space units. */
#define BW_LEVELS_LEAST_CYCLE 4.0 /* a sine with shorter cycles is drawn as its envelope */
#define BW_LEVELS_LEAST_LINE 8.0  /* lines that are shorter are drawn as their envelope */
#define BW_LEVELS_COLUMN 0.5      /* width of a column of the envelope */

/* Lowest and highest level of each column. */
typedef struct
{
  guint n;
  float *low_v;
  float *high_v;
} BwLevelsEnvelope;

/**
 * BwLevelsDwell:
 * @share: of the time that the signal stays in a row, column after column; the lowest row first
 */
typedef struct
{
  guint columns;
  guint rows;
  BwRange volts;
  double rows_per_v;
  float *share;
} BwLevelsDwell;

struct _BwLevelsModel
{
  BwSynthesisCase what;
  BwRaster *raster;
  BwSynthesis *synthesis;
  BwSynthesis *chroma; /* the same signal as Y/C; made when it is asked for */
  double rate_hz;
  BwLineShape shape;
  BwWireLevels levels[BW_N_CONDUCTORS];
  guint n_levels;
  BwRange burst_s;
  BwLevelsWindow extent_window[BW_N_CONDUCTORS];
  BwRange extent[BW_N_CONDUCTORS];
  double constant_s;                 /* R·C of a coupling capacitor; zero: none */
  double *charge_v[BW_N_CONDUCTORS]; /* on it, at places of a frame; made when it is asked for */
  double mean_v[BW_N_CONDUCTORS];    /* of that */
};

void bw_levels_couple (BwLevelsModel *model, BwConductor conductor, gint64 first, gsize n, float *volts);
void bw_levels_coupling_clear (BwLevelsModel *model);

double bw_levels_model_rate_hz (const BwLevelsModel *model);
gboolean bw_levels_has_chroma (const BwLevelsModel *model, BwConductor conductor);
gboolean bw_levels_model_has_picture (const BwLevelsModel *model, int line);
void bw_levels_envelope (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
                         guint columns, BwLevelsEnvelope *envelope, BwLevelsDwell *dwell);
gboolean bw_levels_lines_are_fine (const BwLevelsModel *model, double unit_s);
void bw_levels_envelope_clear (BwLevelsEnvelope *envelope);
void bw_levels_dwell_init (BwLevelsDwell *dwell, guint columns, guint rows, const BwRange *volts);
void bw_levels_dwell_clear (BwLevelsDwell *dwell);
void bw_levels_dwell_add (BwLevelsDwell *dwell, double column, double from_v, double to_v);
void bw_levels_dwell_finish (BwLevelsDwell *dwell, double line);
void bw_levels_extent (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
                       BwRange *volts);

G_END_DECLS
