/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing-options.h"
#include "core/bench/sheet.h"
#include "core/signal/synthesis.h"

G_BEGIN_DECLS

/* A test signal for `waveform`: which one, and into which file. */

typedef enum
{
  BW_SPAN_LINE,
  BW_SPAN_FIELD, /* one field's time */
  BW_SPAN_FRAME,
  BW_N_SPANS
} BwSpan;

#define BW_WAVEFORM_ANY_LINE G_MININT /* --line was not given */

/**
 * BwWaveformOptions:
 *
 * What the options say, all owned and as they came; %NULL, or zero, where not given; of @line
 * %BW_WAVEFORM_ANY_LINE.
 */
typedef struct
{
  char *system;
  char *kind;
  char *sync;
  char *raster;
  char *source;
  char *input;
  char *content;
  char *bars;
  char *span;
  char *rate;
  char *loads;
  BwDrawingOptions page; /* -o names samples or a drawing */
  int line;
  int frame;
} BwWaveformOptions;

/**
 * BwWaveform:
 * @raster: owned; that of @what
 * @title: owned: what it is, for a drawing
 * @line: as the raster numbers it, from 1; %BW_WAVEFORM_ANY_LINE: the one that suits
 *   @span
 * @frame: of the colour sequence, from 0
 * @source_ohm: of the conductors that carry a picture; @sync_ohm of those that carry sync alone
 * @load_ohm: what they work into: %INFINITY for none; zero: not known. Likewise @sync_load_ohm
 * @sync_stated: what the level of sync alone is stated across
 */
typedef struct
{
  BwSynthesisCase what;
  BwRaster *raster;
  char *title;
  BwSpan span;
  int line;
  gint64 frame;
  double source_ohm;
  double sync_ohm;
  double load_ohm;
  double sync_load_ohm;
  BwStatedLoad sync_stated;
} BwWaveform;

extern const BwKindTable bw_spans;
extern const char *const bw_waveform_files[]; /* kinds of file, as in cli/base/streams.h */

void bw_waveform_options_clear (BwWaveformOptions *own);
BwCliExit bw_waveform_choose (const BwWaveformOptions *own, const char *command, const char *sheet,
                              BwWaveform *waveform);
void bw_waveform_clear (BwWaveform *waveform);

gboolean bw_waveform_is_samples (const char *target);
BwCliExit bw_waveform_write (const BwCliOptions *options, BwWaveform *waveform, const char *target,
                             const BwDrawingPage *page);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BwWaveform, bw_waveform_clear)

G_END_DECLS
