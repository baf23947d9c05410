/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a PNG picture: an error that names it, or planes of the size that its header says, of
 * signal from 0 to 1. */
#include "fuzz.h"

#include <math.h>

#include "draw/picture/test-picture.h"

#define NAME "a picture"

static void
check_error (const GError *error)
{
  MUST (error != NULL && error->domain == BW_PICTURE_ERROR);
  MUST (g_str_has_prefix (error->message, NAME ": "));
  MUST (g_utf8_validate (error->message, -1, NULL));
}

static void
check_planes (const BwPlanes *planes)
{
  gsize n = (gsize) planes->width * (gsize) planes->height;
  MUST (planes->width >= 1 && planes->width <= BW_PREVIEW_MAX_SIDE);
  MUST (planes->height >= 1 && planes->height <= BW_PREVIEW_MAX_SIDE);
  MUST (n <= BW_PICTURE_MAX_PIXELS);
  for (guint plane = 0; plane < 3; plane++)
    for (gsize i = 0; i < n; i++)
      MUST (planes->at[plane][i] >= 0 && planes->at[plane][i] <= 1);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GError) error = NULL;

  make_criticals_fatal ();
  g_autoptr (BwPlanes) planes = bw_planes_read (size > 0 ? (const void *) data : "", size, NAME,
                                                &error);
  if (planes != NULL)
    check_planes (planes);
  else
    check_error (error);
  return 0;
}
