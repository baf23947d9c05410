/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/choose/raster-choice.h"
#include "core/raster/reading.h"
#include "draw/base/drawing.h"

G_BEGIN_DECLS

typedef enum
{
  BW_DRAWING_LINE,
  BW_DRAWING_BLANKING,
  BW_DRAWING_FIELD,
  BW_DRAWING_MAP,
  BW_N_DRAWINGS
} BwDrawingView;

/**
 * BwDrawRequest:
 * @chosen: the raster that is drawn
 * @theme: a BwTheme
 * @system: whose burst a field shows; %BW_SYSTEM_NONE for none
 * @limits: (nullable): what a blanking may be
 * @width: in pixels of 1/96 inch; likewise @height; zero for what suits the view
 *
 * What is to be drawn into a file. All is borrowed.
 */
typedef struct
{
  const BwChosenRaster *chosen;
  BwDrawingView view;
  guint theme;
  guint system;
  const BwStandardLimits *limits;
  int width;
  int height;
} BwDrawRequest;

/**
 * BwDrawingOptions:
 * @target: -o, as it came; likewise --theme and --size
 *
 * What the options of a drawing say; owned.
 */
typedef struct
{
  char *target;
  char *theme;
  char *size;
} BwDrawingOptions;

void bw_drawing_options_clear (BwDrawingOptions *own);
char *bw_drawing_options_fault (const BwDrawingOptions *own, const BwRasterChoice *choice,
                                guint *theme);
gboolean bw_drawing_options_size (const BwDrawingOptions *own, int *width, int *height);

extern const BwKindTable bw_drawing_views;

BwDrawing *bw_draw_request_drawing (const BwDrawRequest *request);

G_END_DECLS
