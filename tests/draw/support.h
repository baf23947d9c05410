/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/catalogue.h"
#include "draw/levels/view.h"
#include "draw/line/view.h"

G_BEGIN_DECLS

BwCatalogue *test_catalogue (void);
char *test_scratch_folder (void);
void test_remove_folder (char *folder);
guint test_count_files (const char *folder);
char *test_run (const char *const *argv);
void test_labels_are_apart (const GArray *labels, double width, double height, const char *what);
void test_labels_are_large (const GArray *labels, const BwInk *ink);
gboolean test_labels_have (const GArray *labels, const char *text);
const BwLabel *test_find_label (const GArray *labels, const char *text, guint nth);
GArray *test_texts (BwDrawing *drawing, guint *left_out);
cairo_surface_t *test_paint (BwDrawing *drawing);
char *test_description (BwDrawing *drawing);
gboolean test_read_at (BwDrawing *drawing, double x, double y, BwDrawingPoint *point);
char *test_words_at (BwDrawing *drawing, double x, double y);
gboolean test_find (BwDrawing *drawing, guint id, double across, double down, double *x, double *y);
double test_x_of (BwDrawing *drawing, guint id, double across);
BwZoom test_shown (BwDrawing *drawing);
void test_drawing_is_sound (BwDrawing *drawing);
guint32 test_pixel_at (cairo_surface_t *surface, double x, double y);

/**
 * TestSignal:
 *
 * A signal as the standards have it.
 */
typedef struct
{
  const char *raster;
  BwColourSystem system;
  BwSignal signal;
  BwSyncKind sync;
} TestSignal;

BwLevelsModel *test_levels_model (const TestSignal *of, BwContent content, BwBarsForm bars);
guint test_find_signal (const TestSignal *signals, guint n, BwColourSystem system, BwSignal signal);

G_END_DECLS
