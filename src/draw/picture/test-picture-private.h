/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "test-picture.h"

G_BEGIN_DECLS

/* The drawing functions get a cairo_t in thousandths of the viewable height, its origin at the left
 * upper corner of the viewable area, on a ground of the mean grey. */

#define BW_TEST_UNITS 1000.0

void bw_test_draw_lines (cairo_t *cr, const BwTestFrame *frame, cairo_surface_t *surface);
void bw_test_draw_grid (cairo_t *cr, const BwTestFrame *frame);
void bw_test_draw_ramps (cairo_t *cr, const BwTestFrame *frame);
void bw_test_draw_text (cairo_t *cr, const BwTestFrame *frame);

void bw_test_words (cairo_t *cr, const char *words, double size, double x, double y, double across,
                    double down);

G_END_DECLS
