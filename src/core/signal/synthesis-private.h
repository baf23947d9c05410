/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "synthesis.h"

G_BEGIN_DECLS

/* A line is put together from features: edges, pulses, ramps and packets of sine, each at an
 * instant after 0H of the line. Lines with the same features share a program; the features are
 * sampled on the grid that the line falls on, and the subcarrier is put on the samples. */

__extension__ typedef __int128 BwWide;

#define BW_SHAPE_STEPS 4096 /* of the table of a shape */

/* 10 to 90 % of an integrated sine-squared pulse, as a share of the whole width of the edge. The
 * pulse itself is half as wide at half amplitude. Worked out from x + sin 2πx / 2π = 0.4. */
#define BW_RISE_SHARE 0.4821883278297363

/* Samples over which the subcarrier is turned from one exact phase. */
#define BW_TURN 256

/* What there is on a line, in bits of its signature. */
#define BW_SLOT_PULSE(half, kind) (((guint) (kind) + 1u) << (2 * (half)))
#define BW_SLOT_PULSE_OF(signature, half) ((int) ((signature) >> (2 * (half)) & 3u) - 1)
#define BW_SLOT_SYNC(half) (1u << (4 + (half)))
#define BW_SLOT_PICTURE(half) (1u << (6 + (half)))
#define BW_LINE_CROSSED (1u << 8)  /* a horizontal line of the crosshatch */
#define BW_LINE_WINDOWED (1u << 9) /* in the middle half of the picture */
#define BW_SIGNATURE_BITS 10

/* Beside those, what differs from frame to frame. */
#define BW_LINE_BURST (1u << 0)
#define BW_LINE_SECAM_BLUE (1u << 1)     /* D'B; else D'R */
#define BW_LINE_SECAM_INVERTED (1u << 2) /* the subcarrier starts at 180° */

typedef enum
{
  BW_FEATURE_STEP,  /* centred on @at_s, @width_s from its foot to its top */
  BW_FEATURE_PULSE, /* sine-squared, centred on @at_s, @width_s from foot to foot */
  BW_FEATURE_RAMP,  /* rises from @at_s for @width_s, and stays */
  BW_FEATURE_SINE   /* a packet from @at_s for @width_s, with edges of @edge_s inside it */
} BwFeatureKind;

/**
 * BwFeature:
 * @at_s: after 0H of the line
 * @volts: height; of sine the peak
 *
 * Zero before it begins; a step and a ramp keep their height, a pulse and a packet end at zero.
 */
typedef struct
{
  BwFeatureKind kind;
  double at_s;
  double width_s;
  double edge_s;
  double frequency_hz;
  double volts;
} BwFeature;

typedef enum
{
  BW_LAYER_BASE,
  BW_LAYER_U,
  BW_LAYER_V,
  BW_N_LAYERS
} BwLayer;

/* The subcarrier of SECAM over a line, on a grid of @step_s from 0H: amplitude and phase. */
typedef struct
{
  double step_s;
  guint n;
  double *volts;
  double *turns;
} BwSecamLine;

/**
 * BwProgram:
 * @layers: (element-type BwFeature): without the subcarrier, and what it is multiplied with
 * @secam: (nullable): added to the base
 */
typedef struct
{
  guint64 key;
  guint number;
  gboolean has_chroma;
  GArray *layers[BW_N_LAYERS];
  BwSecamLine *secam;
} BwProgram;

/* A program on a grid. */
typedef struct
{
  const BwProgram *program;
  gint64 offset; /* of the first sample after 0H, in 1/@per_line.den samples */
  guint n;
  float *layers[BW_N_LAYERS];
} BwSampledLine;

/**
 * BwShapes:
 *
 * From foot to top of each kind of edge, in seconds.
 */
typedef struct
{
  double sync_s;
  double blanking_s;
  double luma_s;
  double difference_s; /* Pb and Pr */
  double chroma_s;     /* what the subcarrier is multiplied with */
  double burst_s;
} BwShapes;

/**
 * BwSubcarrier:
 * @per_sample: cycles; none without a subcarrier
 * @per_line: cycles
 * @switched: whether the sign of V changes from line to line
 * @shift: lines of the raster's numbering before line 1 as the colour system numbers them
 * @fields: over which the lines without burst repeat; zero: they are not laid down
 */
typedef struct
{
  BwRatio per_sample;
  BwRatio per_line;
  gboolean switched;
  int shift;
  int fields;
  double burst_from_s;
  double burst_to_s;
  float turn_sin[BW_TURN];
  float turn_cos[BW_TURN];
} BwSubcarrier;

struct _BwSynthesis
{
  BwRaster *raster;
  BwWireForm form;
  BwContent content;
  BwBarsForm bars;
  BwRatio rate_hz;
  BwRatio per_line; /* samples */
  double sample_s;
  double line_s;
  double sync_width_s;
  double active_from_s; /* after 0H */
  double active_to_s;
  double luma_hz; /* bandwidth */
  BwShapes shapes;
  BwSubcarrier subcarrier;
  int colour_frames;
  int lines;
  guint16 *signatures; /* one a line */
  GHashTable *programs;
  BwSampledLine *sampled; /* the last ones, each at the place of its number and offset */
  guint n_sampled;
  guint n_most; /* samples in a line */
  float step[BW_SHAPE_STEPS + 2];
  float pulse[BW_SHAPE_STEPS + 2];
};

/* synthesis-shape.c */
void bw_shapes_init (BwSynthesis *synthesis);
void bw_feature_tables_init (BwSynthesis *synthesis);
void bw_add_step (GArray *features, double at_s, double width_s, double volts);
void bw_sort_features (GArray *features);
void bw_sample_features (const BwSynthesis *synthesis, const GArray *features, double first_s,
                         guint n, float *volts);

/* synthesis-sync.c */
void bw_signatures_init (BwSynthesis *synthesis);
void bw_add_sync (const BwSynthesis *synthesis, BwConductor conductor, const guint signatures[3],
                  GArray *base);

/* synthesis-content.c */
double bw_content_highest_hz (const BwSynthesis *synthesis);
int bw_content_spans (const BwSynthesis *synthesis, guint signature, double *from_s, double *to_s);
void bw_add_content (const BwSynthesis *synthesis, BwConductor conductor, guint signature,
                     double at_s, GArray *const layers[BW_N_LAYERS]);

/* synthesis-colour.c */
gboolean bw_synthesis_is_coded (const BwSynthesis *synthesis, BwConductor conductor);
gboolean bw_ratio_fits (BwRatio ratio);
gboolean bw_subcarrier_init (BwSynthesis *synthesis, GError **error);
guint bw_line_colour (const BwSynthesis *synthesis, gint64 line);
void bw_add_burst (const BwSynthesis *synthesis, GArray *const layers[BW_N_LAYERS]);
void bw_put_on_subcarrier (const BwSynthesis *synthesis, const BwSampledLine *line, guint from,
                           gint64 first, guint n, gint64 absolute_line, float *volts);

/* synthesis-secam.c */
BwSecamLine *bw_secam_line_new (const BwSynthesis *synthesis, guint signature, guint colour);
void bw_secam_line_free (BwSecamLine *line);
void bw_add_secam (const BwSynthesis *synthesis, const BwSecamLine *line, double first_s, guint n,
                   float *volts);

G_END_DECLS
