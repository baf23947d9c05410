/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture.h"
#include "preview-job.h"

G_BEGIN_DECLS

/* The picture after the path, beside the untouched one. It is drawn pixel for pixel wherever there
 * is room for it, so that the magnification is as stated. While a new preview is computed, the old
 * one is shown as it lies in what is wished. */

#define BW_PREVIEW_WHOLE 0.0 /* in place of a magnification: the whole screen */
#define BW_N_PREVIEW_TIMES 6

extern const double bw_preview_times[BW_N_PREVIEW_TIMES];

typedef struct _BwPreviewPicture BwPreviewPicture;

BwPicture *bw_preview_picture_new (void);
BwPreviewPicture *bw_preview_picture (BwPicture *picture);

void bw_preview_picture_set_case (BwPreviewPicture *picture, const BwDetailCase *what,
                                  const char *title);
void bw_preview_picture_set_sent (BwPreviewPicture *picture, guint kind, const char *words);
void bw_preview_picture_set_times (BwPreviewPicture *picture, double times);
double bw_preview_picture_get_times (const BwPreviewPicture *picture);
void bw_preview_picture_set_centre (BwPreviewPicture *picture, double across, double down);
void bw_preview_picture_set_brightness (BwPreviewPicture *picture, double share);
void bw_preview_picture_set_frame (BwPreviewPicture *picture, guint frame);

void bw_preview_picture_wish (BwPreviewPicture *picture, const BwPicturePage *page, double density,
                              BwPreviewWish *wish);
void bw_preview_picture_set_result (BwPreviewPicture *picture, BwPreviewResult *result);
void bw_preview_picture_set_error (BwPreviewPicture *picture, const char *words);
void bw_preview_picture_set_note (BwPreviewPicture *picture, const char *words);
const BwPreviewResult *bw_preview_picture_get_result (const BwPreviewPicture *picture);
char *bw_preview_picture_times_words (double times);

G_END_DECLS
