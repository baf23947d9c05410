/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/base/ratio.h"
#include "raster.h"

G_BEGIN_DECLS

/* What each colour system lays down. There is one table, bw_system_facts(), and whatever else
 * depends on the system asks it. */

typedef enum
{
  BW_CHROMA_NONE,        /* no subcarrier */
  BW_CHROMA_QUADRATURE,  /* NTSC: two differences by amplitude and phase */
  BW_CHROMA_ALTERNATING, /* PAL: the same, the sign of R−Y changes from line to line */
  BW_CHROMA_SEQUENTIAL   /* SECAM: one difference a line, by frequency */
} BwChroma;

/**
 * BwSystemFacts:
 * @chroma: how colour travels
 * @lines: of a frame; zero: any
 * @line_rate_hz: exact; %BW_RATIO_NONE: any
 * @field_rate_hz: exact; %BW_RATIO_NONE: any
 * @any_raster: laid down by no broadcast standard: players and games put it on other rasters too
 * @raster: (nullable): id of the raster in the catalogue that usually goes with it
 * @limits: (nullable): id of the shipped limits that judge its levels
 * @subcarrier_hz: exact where the standard gives a ratio; %BW_RATIO_NONE for no subcarrier; for
 *   SECAM the rest frequency of the R−Y lines
 * @burst_pp_v: peak to peak; zero where there is none, or where the texts do not agree on it
 * @burst_from_s: from 0H
 * @burst_cycles: how long it lasts; zero: none
 * @burst_fields: how many fields the blanking of the burst takes to repeat; zero where no standard
 *   lays it down
 * @lines_before_sync: numbered before field sync, by the standard of the system
 * @volts_per_ire: exact; there is no one IRE scale
 * @setup_ire: black above blanking
 * @sync_v: amplitude of composite sync below blanking
 * @white_v: white above blanking
 * @luma_bandwidth_hz: nominal video bandwidth; zero: not laid down
 *
 * Levels are those of composite video across 75 Ω. Of %BW_SYSTEM_NONE they are those of component
 * video without a subcarrier, which goes with any raster.
 */
typedef struct
{
  BwChroma chroma;
  int lines;
  BwRatio line_rate_hz;
  BwRatio field_rate_hz;
  gboolean any_raster;
  const char *raster;
  const char *limits;
  BwRatio subcarrier_hz;
  double burst_pp_v;
  double burst_from_s;
  double burst_cycles;
  int burst_fields;
  int lines_before_sync;
  BwRatio volts_per_ire;
  double setup_ire;
  double sync_v;
  double white_v;
  double luma_bandwidth_hz;
} BwSystemFacts;

/* The two families of levels of 1 V of composite video: 714 and 286 mV, 700 and 300 mV. */
#define BW_WHITE_10_4_V (100.0 / 140)
#define BW_SYNC_10_4_V (40.0 / 140)
#define BW_WHITE_7_3_V 0.7
#define BW_SYNC_7_3_V 0.3

const BwSystemFacts *bw_system_facts (BwColourSystem system);
double bw_ire_to_volts (BwColourSystem system, double ire);

gboolean bw_system_has_phase (BwColourSystem system);
gboolean bw_system_alternates (BwColourSystem system);
guint bw_systems_decoded_alike (BwColourSystem system);

gboolean bw_system_suits_field_rate (BwColourSystem system, double field_rate_hz);
BwColourSystem bw_system_of_field_rate (double field_rate_hz);
int bw_broadcast_lines (int lines);

gboolean bw_system_knows_burst (BwColourSystem system, const BwRaster *raster);
gboolean bw_line_has_burst (BwColourSystem system, int colour_field, int line);

G_END_DECLS
