/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/detail/detail.h"

G_BEGIN_DECLS

/* The options of breezeway-cli detail, and the figures that they stand for. */

/**
 * BwDetailOptions:
 *
 * All owned and as they came; %NULL where not given.
 */
typedef struct
{
  char *source;
  char *input;
  char *raster;
  char *filter;
  char *lead;
  char *kell;
  char *interlace;
  char *diagonal;
  char *aspect;
  char *mask;
  char *pitch;
  char *spot;
  char *bandwidth;
  char *claim;
  char *kind;
  char *system;
  char *highest;
} BwDetailOptions;

/**
 * BwDetailChain:
 * @input: (nullable)
 * @raster: (nullable)
 *
 * What is counted with, borrowed.
 */
typedef struct
{
  BwMonitor *monitor;
  BwInput *input;
  BwSource *source;
  const BwRaster *raster;
} BwDetailChain;

GArray *bw_detail_options_entries (BwDetailOptions *options);
void bw_detail_options_clear (BwDetailOptions *options);

gboolean bw_detail_options_read_chain (const BwDetailOptions *options, const BwDetailChain *chain);
char *bw_detail_options_clash (const BwDetailOptions *options, const BwDetailChain *chain);
void bw_detail_options_warn (const BwDetailOptions *options, const BwDetailChain *chain);
gboolean bw_detail_options_read_case (const BwDetailOptions *options, BwDetailCase *what);

G_END_DECLS
