/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "preview-picture.h"

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
 * @words: (nullable): owned; those words
 */
typedef struct
{
  BwBox panes[BW_N_PREVIEW_PANES];
  double pixels_per_m;
  double centre_x;
  double centre_y;
  BwBox caption;
  char *words;
} BwPreviewLayout;

/**
 * BwPreviewKeep:
 *
 * The layout made last, and for what: a cursor asks for it many times.
 */
typedef struct
{
  BwPreviewLayout layout;
  double width;
  double height;
  double dpi;
  char *font;
  guint serial;
} BwPreviewKeep;

/**
 * BwPreviewPicture:
 * @width_m: of the glass; zero: not known
 * @title: the source and the input; owned
 * @sent: the picture that is sent, in words; owned
 * @times: magnification, or %BW_PREVIEW_WHOLE
 * @brightness: 0: nothing of the light is cut off, 1: as bright on average as the untouched
 * @wished_width: of a pane, as it was wished last; zero: not yet
 * @wished_pixels_per_m: likewise the scale, in units of the page
 * @wished_whole: likewise whether it was the whole screen
 * @note: (nullable): owned; what else is to be said of it
 * @result: (nullable): owned
 * @images: of @result
 * @error: (nullable): owned; why there can be no preview
 * @serial: counts changes
 */
struct _BwPreviewPicture
{
  BwPicture parent;
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
  guint serial;
  BwPreviewKeep *keep;
};

extern const BwPictureClass bw_preview_picture_class;

void bw_preview_picture_changed (BwPreviewPicture *picture);
void bw_preview_picture_free (BwPicture *base);
double bw_preview_picture_exposure (const BwPreviewPicture *picture);

/* preview-picture-layout.c */
const BwPreviewLayout *bw_preview_layout (const BwPreviewPicture *picture,
                                          const BwPicturePage *page);
void bw_preview_layout_wish (const BwPreviewPicture *picture, const BwPicturePage *page,
                             BwPreviewLayout *layout);
void bw_preview_keep_free (BwPreviewKeep *keep);
double bw_preview_clamp_centre (double centre, double pane, double glass);

/* preview-picture-words.c */
char *bw_preview_caption (const BwPreviewPicture *picture, const BwPreviewLayout *layout);
char *bw_preview_words (const BwPreviewPicture *picture, const BwPicturePoint *point);
char *bw_preview_difference (const BwPreviewPicture *picture, const BwPicturePoint *a,
                             const BwPicturePoint *b);

G_END_DECLS
