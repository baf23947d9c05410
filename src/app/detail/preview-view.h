/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture-area.h"
#include "preview-job.h"

G_BEGIN_DECLS

/* The picture after the path, beside the untouched one. It is drawn pixel for pixel wherever there
 * is room for it, so that the magnification is as stated. While a new preview is computed, the old
 * one is shown as it lies in what is wished. */

#define BW_PREVIEW_WHOLE 0.0 /* in place of a magnification: the whole screen */
#define BW_N_PREVIEW_TIMES 6

extern const double bw_preview_times[BW_N_PREVIEW_TIMES];

/**
 * BwPreviewView:
 *
 * What is previewed, and what of it is shown.
 */
typedef struct _BwPreviewView BwPreviewView;

BwPreviewView *bw_preview_view_new (void);
void bw_preview_view_free (BwPreviewView *view);

void bw_preview_view_set_case (BwPreviewView *view, const BwDetailCase *what, const char *title);
void bw_preview_view_set_sent (BwPreviewView *view, guint kind, const char *words);
void bw_preview_view_set_times (BwPreviewView *view, double times);
double bw_preview_view_get_times (const BwPreviewView *view);
void bw_preview_view_set_centre (BwPreviewView *view, double across, double down);
void bw_preview_view_set_brightness (BwPreviewView *view, double share);
void bw_preview_view_set_frame (BwPreviewView *view, guint frame);

void bw_preview_view_wish (BwPreviewView *view, double width, double height, const BwInk *ink,
                           double density, BwPreviewWish *wish);
void bw_preview_view_set_result (BwPreviewView *view, BwPreviewResult *result);
void bw_preview_view_set_error (BwPreviewView *view, const char *words);
void bw_preview_view_set_note (BwPreviewView *view, const char *words);
const BwPreviewResult *bw_preview_view_get_result (const BwPreviewView *view);
char *bw_preview_view_times_words (double times);

void bw_preview_view_zoom (BwPreviewView *view, const BwDrawing *drawing, double x, double y,
                           double factor);
void bw_preview_view_pan (BwPreviewView *view, const BwDrawing *drawing, double dx, double dy);

/* Its places are the two pictures, from 0: points are metres of glass from its left edge across, and
 * from its top down. */
BwDrawing *bw_preview_drawing (const BwPreviewView *view, double width, double height,
                               const BwInk *ink);

G_END_DECLS
