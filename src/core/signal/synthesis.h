/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/levels/wire.h"

G_BEGIN_DECLS

/* A test signal as samples in volts, as a scope across 75 Ω would show it.
 *
 * Edges have the shape of an integrated sine-squared pulse and stand, at half amplitude, at the
 * instants of the raster. The subcarrier is exact: its phase follows from whole numbers, however
 * many frames have passed. */

typedef enum
{
  BW_CONTENT_BARS,
  BW_CONTENT_RAMP,
  BW_CONTENT_MULTIBURST,
  BW_CONTENT_PULSE_AND_WINDOW,
  BW_CONTENT_CROSSHATCH,
  BW_N_CONTENTS
} BwContent;

/**
 * BwSynthesisCase:
 * @raster: a raster that bw_raster_check() accepts; borrowed while the BwSynthesis is being made
 * @bars: of %BW_CONTENT_BARS
 * @rate_hz: sampling rate; none: 4 × subcarrier where there is one, else 13.5 MHz, or the pixel
 *   clock of a faster raster
 */
typedef struct
{
  const BwRaster *raster;
  BwWireForm form;
  BwContent content;
  BwBarsForm bars;
  BwRatio rate_hz;
} BwSynthesisCase;

typedef struct _BwSynthesis BwSynthesis;

#define BW_SYNTHESIS_ERROR (bw_synthesis_error_quark ())

typedef enum
{
  BW_SYNTHESIS_ERROR_RASTER, /* it cannot be, or cannot carry this form */
  BW_SYNTHESIS_ERROR_RATE    /* too low for the content, or beyond what can be held */
} BwSynthesisError;

extern const BwKindTable bw_contents;

GQuark bw_synthesis_error_quark (void);

void bw_synthesis_add_burst (BwWireForm *form);

BwSynthesis *bw_synthesis_new (const BwSynthesisCase *what, GError **error);
void bw_synthesis_free (BwSynthesis *synthesis);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwSynthesis, bw_synthesis_free)

BwRatio bw_synthesis_rate_hz (const BwSynthesis *synthesis);
guint bw_synthesis_conductors (const BwSynthesis *synthesis);
int bw_synthesis_lines (const BwSynthesis *synthesis);
int bw_synthesis_colour_frames (const BwSynthesis *synthesis);

/* Sample k is taken at k / rate after the datum 0H of line 1 of the first frame of the colour
 * sequence, for any k of zero or more: the grid does not restart with a line or a frame. */
gint64 bw_synthesis_line_start (const BwSynthesis *synthesis, gint64 frame, int line);
double bw_synthesis_line_start_s (const BwSynthesis *synthesis, gint64 frame, int line);
void bw_synthesis_fill (BwSynthesis *synthesis, BwConductor conductor, gint64 first, gsize n,
                        float *volts);

G_END_DECLS
