/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "preview-view.h"

G_BEGIN_DECLS

/* Which of the two pictures. */
typedef enum
{
  BW_PREVIEW_AFTER,
  BW_PREVIEW_UNTOUCHED,
  BW_N_PREVIEW_PANES
} BwPreviewPane;

/**
 * BwPreviewLayout:
 * @panes: where the two pictures stand
 * @pixels_per_m: units of the page to a metre of glass
 * @caption: place of the words below
 * @words: owned; those words
 */
typedef struct
{
  BwCanvas *canvas;
  BwBox panes[BW_N_PREVIEW_PANES];
  double pixels_per_m;
  double centre_x;
  double centre_y;
  BwBox caption;
  char *words;
} BwPreviewLayout;

/**
 * BwPreviewView:
 * @width_m: of the glass; zero: not known
 * @title: the source and the input; owned
 * @sent: the picture that is sent, in words; owned
 * @times: magnification, or %BW_PREVIEW_WHOLE
 * @brightness: 0: nothing of the light is cut off, 1: as bright on average as the untouched
 * @wished_width: of a pane, as it was wished last; zero: not yet
 * @wished_pixels_per_m: likewise the scale, in units of the page
 * @wished_whole: likewise whether it was the whole screen
 * @note: (nullable): owned; what else is to be said of it
 * @result: (nullable): counted
 * @images: of @result
 * @error: (nullable): owned; why there can be no preview
 */
struct _BwPreviewView
{
  BwDetailCase what;
  double width_m;
  double height_m;
  char *title;
  guint kind;
  char *sent;
  double times;
  double centre_x;
  double centre_y;
  double brightness;
  guint frame;
  double wished_width;
  double wished_height;
  double wished_pixels_per_m;
  gboolean wished_whole;
  char *note;
  BwPreviewResult *result;
  cairo_surface_t *images[BW_N_PREVIEW_PANES];
  char *error;
};

double bw_preview_view_exposure (const BwPreviewView *view);

/* preview-drawing.c */
void bw_preview_layout_init (BwPreviewLayout *layout, const BwPreviewView *view, double width,
                             double height, const BwInk *ink, gboolean wish);
void bw_preview_layout_clear (BwPreviewLayout *layout);

/* preview-words.c */
char *bw_preview_caption (const BwPreviewView *view, const BwPreviewLayout *layout);
void bw_preview_take_reader (BwDrawing *drawing, const BwPreviewView *view);

G_END_DECLS
