/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/choose/drawing-options.h"
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
 * @page: its colours and its size
 * @system: whose burst a field shows; %BW_SYSTEM_NONE for none
 * @limits: (nullable): what a blanking may be
 *
 * What is to be drawn into a file. All is borrowed.
 */
typedef struct
{
  const BwChosenRaster *chosen;
  BwDrawingView view;
  BwDrawingPage page;
  guint system;
  const BwStandardLimits *limits;
} BwDrawRequest;

extern const BwKindTable bw_drawing_views;

BwDrawing *bw_draw_request_drawing (const BwDrawRequest *request);

G_END_DECLS
