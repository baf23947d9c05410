/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ink.h"
#include "raster-choice.h"
#include "reading.h"

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
 * BwDrawing:
 * @chosen: the raster that is drawn
 * @theme: a BwTheme
 * @system: whose burst a field shows; %BW_SYSTEM_NONE for none
 * @limits: (nullable): what a blanking may be
 * @width: in pixels of 1/96 inch; likewise @height; zero for what suits the view
 *
 * A drawing for a file. All is borrowed.
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
} BwDrawing;

extern const BwKindTable bw_drawing_views;
extern const BwKindTable bw_drawing_themes;

char *bw_drawing_describe (const BwDrawing *drawing);
gboolean bw_drawing_write (const BwDrawing *drawing, const char *path, GError **error);

G_END_DECLS
