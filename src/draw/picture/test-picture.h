/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/preview/preview.h"
#include "draw/base/canvas.h"

G_BEGIN_DECLS

/* Pictures to judge a screen by, of this program's own design, drawn into as many pixels as is
 * asked for. They fill the whole active picture of a raster, but all that is to be read lies within
 * the viewable area. */

typedef enum
{
  BW_TEST_LINES, /* wedges and bursts, labelled in TV lines */
  BW_TEST_GRID,  /* grid and circle */
  BW_TEST_RAMPS, /* ramps, steps and colour bars */
  BW_TEST_TEXT,
  BW_N_TEST_PICTURES
} BwTestKind;

/**
 * BwTestFrame:
 * @width: width of the whole active picture in pixels
 * @height: its height in pixels
 * @seen: the viewable area in it
 * @aspect: of the viewable area
 */
typedef struct
{
  int width;
  int height;
  BwBox seen;
  double aspect;
} BwTestFrame;

/* Signal in the bursts and wedges: mean, and from there up and down. */
#define BW_TEST_MEAN 0.5
#define BW_TEST_SWING 0.4

#define BW_N_TEST_BURSTS 9

extern const BwKindTable bw_test_pictures;
extern const double bw_test_burst_tvl[BW_N_TEST_BURSTS];

void bw_test_frame_size (const BwDetailCase *what, int *width, int *height);
void bw_test_frame_init (BwTestFrame *frame, const BwDetailCase *what, int width, int height);
double bw_test_pixels_per_height (const BwTestFrame *frame);
gboolean bw_test_burst_box (const BwTestFrame *frame, guint burst, BwBox *box);

cairo_surface_t *bw_test_picture_draw (BwTestKind kind, const BwTestFrame *frame);
BwPlanes *bw_planes_from_surface (cairo_surface_t *surface);

#define BW_PICTURE_ERROR (bw_picture_error_quark ())

typedef enum
{
  BW_PICTURE_ERROR_READ,
  BW_PICTURE_ERROR_NOT_PNG,
  BW_PICTURE_ERROR_TOO_LARGE,
  BW_PICTURE_ERROR_DAMAGED
} BwPictureError;

/* Of a picture that is read: unpacked it takes some 300 MB. */
#define BW_PICTURE_MAX_PIXELS (16 * 1024 * 1024)

GQuark bw_picture_error_quark (void);
BwPlanes *bw_planes_read (const void *bytes, gsize length, const char *name, GError **error);
BwPlanes *bw_planes_load (const char *path, GError **error);

G_END_DECLS
