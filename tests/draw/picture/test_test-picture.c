/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture/test-picture.h"

#include <math.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "support.h"

static void
frame_of (BwTestFrame *frame, int width, int height, double overscan, BwRatio aspect)
{
  BwDetailCase what;
  bw_detail_case_init (&what);
  what.overscan_h = what.overscan_v = overscan;
  what.aspect = aspect;
  bw_test_frame_init (frame, &what, width, height);
}

static BwPlanes *
picture_of (BwTestKind kind, const BwTestFrame *frame)
{
  cairo_surface_t *surface = bw_test_picture_draw (kind, frame);
  g_assert_nonnull (surface);
  BwPlanes *planes = bw_planes_from_surface (surface);
  cairo_surface_destroy (surface);
  return planes;
}

/* Pixels from the first to the last rise through the mean, and how many cycles that is. */
static double
period_of (const float *row, int from, int to)
{
  double first = -1, last = -1;
  int rises = 0;
  for (int x = from + 1; x < to; x++)
    {
      double before = (double) row[x - 1] - BW_TEST_MEAN, now = (double) row[x] - BW_TEST_MEAN;
      if (before >= 0 || now < 0)
        continue;
      last = x - now / (now - before);
      first = rises == 0 ? last : first;
      rises++;
    }
  g_assert_cmpint (rises, >, 2);
  return (last - first) / (rises - 1);
}

/* A burst labelled with N lines has N/2 cycles in as many pixels as the viewable area is high. */
static void
check_bursts (int width, int height, double overscan, BwRatio aspect)
{
  BwTestFrame frame;
  int held = 0;
  frame_of (&frame, width, height, overscan, aspect);
  g_autoptr (BwPlanes) planes = picture_of (BW_TEST_LINES, &frame);
  double per_height = width * (1 - overscan) * (double) aspect.den / (double) aspect.num;

  for (guint i = 0; i < BW_N_TEST_BURSTS; i++)
    {
      BwBox box;
      gboolean holds = bw_test_burst_box (&frame, i, &box);
      int y = (int) (box.y + box.height / 2);
      g_assert_cmpint (holds, ==, bw_test_burst_tvl[i] < per_height);
      if (!holds || bw_test_burst_tvl[i] > 0.9 * per_height)
        continue;
      const float *row = planes->at[0] + (gsize) y * (gsize) width;
      double tvl = 2 * per_height / period_of (row, (int) box.x, (int) (box.x + box.width));
      g_assert_cmpfloat_with_epsilon (tvl / bw_test_burst_tvl[i], 1, 0.002);
      held++;
    }
  g_assert_cmpint (held, >, 2);
}

static void
test_bursts (void)
{
  check_bursts (720, 480, 0, (BwRatio){ 4, 3 });
  check_bursts (720, 576, 0.05, (BwRatio){ 4, 3 });
  check_bursts (2048, 240, 0.08, (BwRatio){ 4, 3 });
  check_bursts (1920, 1080, 0, (BwRatio){ 16, 9 });
}

/* The sine swings between the levels that are promised. */
static void
test_swing (void)
{
  BwTestFrame frame;
  BwBox box;
  float low = 1, high = 0;
  frame_of (&frame, 1440, 480, 0.05, (BwRatio){ 4, 3 });
  g_autoptr (BwPlanes) planes = picture_of (BW_TEST_LINES, &frame);
  g_assert_true (bw_test_burst_box (&frame, 1, &box));
  for (int x = (int) box.x; x < box.x + box.width; x++)
    {
      low = MIN (low, planes->at[2][(gsize) box.y * 1440 + (gsize) x]);
      high = MAX (high, planes->at[2][(gsize) box.y * 1440 + (gsize) x]);
    }
  g_assert_cmpfloat_with_epsilon (low, BW_TEST_MEAN - BW_TEST_SWING, 0.005);
  g_assert_cmpfloat_with_epsilon (high, BW_TEST_MEAN + BW_TEST_SWING, 0.005);
}

/* The circle is round on the glass, whatever the pixels: as wide as high, in shares of the height,
 * where the middle lines cross it. */
static void
test_circle (void)
{
  BwTestFrame frame;
  frame_of (&frame, 1440, 480, 0.05, (BwRatio){ 4, 3 });
  g_autoptr (BwPlanes) planes = picture_of (BW_TEST_GRID, &frame);
  int left = 1440, top = 480;
  /* off the middle lines by a third of a cell, where only the circle lies between grid lines */
  double across = bw_test_pixels_per_height (&frame), down = frame.seen.height;
  int y = (int) (frame.seen.y + down / 2 + down / 36), x = (int) (720 + across / 36);
  for (int i = (int) (720 - 0.48 * across); i < 720 - 0.44 * across; i++)
    if (planes->at[0][(gsize) y * 1440 + (gsize) i] > 0.5f)
      left = MIN (left, i);
  for (int i = (int) (240 - 0.48 * down); i < 240 - 0.44 * down; i++)
    if (planes->at[0][(gsize) i * 1440 + (gsize) x] > 0.5f)
      top = MIN (top, i);
  g_assert_cmpfloat_with_epsilon ((720 - left) / across, (240 - top) / down, 0.004);
  g_assert_cmpfloat_with_epsilon ((720 - left) / across, 0.46, 0.005);
}

static void
test_sizes (void)
{
  static const int sizes[][2] = { { 1, 1 }, { 3, 7 }, { 33, 17 }, { 321, 240 }, { 640, 1 } };
  for (guint kind = 0; kind < BW_N_TEST_PICTURES; kind++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        BwTestFrame frame;
        frame_of (&frame, sizes[i][0], sizes[i][1], 0.05, (BwRatio){ 4, 3 });
        g_autoptr (BwPlanes) planes = picture_of (kind, &frame);
        g_assert_cmpint (planes->width, ==, sizes[i][0]);
        g_assert_cmpint (planes->height, ==, sizes[i][1]);
      }
}

/* Text and labels are there: each kind has pixels of more than one value in all of its quarters. */
static void
test_not_empty (void)
{
  for (guint kind = 0; kind < BW_N_TEST_PICTURES; kind++)
    {
      BwTestFrame frame;
      frame_of (&frame, 720, 480, 0.05, (BwRatio){ 4, 3 });
      g_autoptr (BwPlanes) planes = picture_of (kind, &frame);
      for (int quarter = 0; quarter < 4; quarter++)
        {
          float low = 1, high = 0;
          for (int y = quarter / 2 * 240; y < quarter / 2 * 240 + 240; y++)
            for (int x = quarter % 2 * 360; x < quarter % 2 * 360 + 360; x++)
              {
                low = MIN (low, planes->at[1][y * 720 + x]);
                high = MAX (high, planes->at[1][y * 720 + x]);
              }
          g_assert_cmpfloat (high - low, >, 0.5);
        }
    }
}

static void
assert_refused (const char *path, BwPictureError code)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (bw_planes_load (path, &error));
  g_assert_error (error, BW_PICTURE_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, path));
}

static void
write_png (const char *path, cairo_format_t format, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (format, width, height);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 0.4, 0);
  cairo_rectangle (cr, 0, 0, 1, height);
  cairo_fill (cr);
  cairo_destroy (cr);
  g_assert_cmpint (cairo_surface_write_to_png (surface, path), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
}

static void
test_load (void)
{
  char *folder = test_scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "picture.png", NULL);
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (GError) error = NULL;
      write_png (path, i == 0 ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32, 5, 3);
      g_autoptr (BwPlanes) planes = bw_planes_load (path, &error);
      g_assert_no_error (error);
      g_assert_cmpint (planes->width, ==, 5);
      g_assert_cmpint (planes->height, ==, 3);
      g_assert_cmpfloat_with_epsilon (planes->at[0][5], 1, 1e-6);
      g_assert_cmpfloat_with_epsilon (planes->at[1][5], 0.4, 1e-6);
      g_assert_cmpfloat_with_epsilon (planes->at[2][5], 0, 1e-6);
      g_assert_cmpfloat_with_epsilon (planes->at[0][6], 0, 1e-6);
    }
  test_remove_folder (folder);
}

static void
test_refused (void)
{
  char *folder = test_scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "picture.png", NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  assert_refused (path, BW_PICTURE_ERROR_READ);
  assert_refused (folder, BW_PICTURE_ERROR_READ);
  g_assert_true (g_file_set_contents (path, "GIF89a, but not really", -1, NULL));
  assert_refused (path, BW_PICTURE_ERROR_NOT_PNG);
  g_assert_true (g_file_set_contents (path, "", 0, NULL));
  assert_refused (path, BW_PICTURE_ERROR_NOT_PNG);
  write_png (path, CAIRO_FORMAT_RGB24, 90, 80);
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  for (gsize cut = 8; cut < length; cut += 7)
    {
      g_assert_true (g_file_set_contents (path, bytes, (gssize) cut, NULL));
      /* all of the picture may be there before the end of the file is */
      g_autoptr (GError) error = NULL;
      g_autoptr (BwPlanes) planes = bw_planes_load (path, &error);
      g_assert_true ((planes == NULL) == (error != NULL));
      if (cut < length / 2)
        assert_refused (path, BW_PICTURE_ERROR_DAMAGED);
    }
  /* width in the header chunk: ISO/IEC 15948, 11.2.2 */
  bytes[16] = 0;
  bytes[17] = 1;
  g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
  assert_refused (path, BW_PICTURE_ERROR_TOO_LARGE);
  test_remove_folder (folder);
}

/* A PNG whose header chunk (ISO/IEC 15948, 11.2.2) says @width and @height. */
static void
assert_size (guint32 width, guint32 height, BwPictureError code)
{
  guint8 bytes[33] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0, 0, 13, 'I', 'H', 'D', 'R' };
  g_autoptr (GError) error = NULL;
  width = GUINT32_TO_BE (width);
  height = GUINT32_TO_BE (height);
  memcpy (bytes + 16, &width, 4);
  memcpy (bytes + 20, &height, 4);
  g_assert_null (bw_planes_read (bytes, sizeof bytes, "a picture", &error));
  g_assert_error (error, BW_PICTURE_ERROR, (int) code);
  g_assert_true (g_str_has_prefix (error->message, "a picture: "));
}

/* 8192 × 8192 pixels would take over a gigabyte, and are refused before they are unpacked. */
static void
test_size (void)
{
  assert_size (8192, 2048, BW_PICTURE_ERROR_DAMAGED); /* just allowed, but nothing follows */
  assert_size (2048, 8192, BW_PICTURE_ERROR_DAMAGED);
  assert_size (8192, 2049, BW_PICTURE_ERROR_TOO_LARGE);
  assert_size (8192, 8192, BW_PICTURE_ERROR_TOO_LARGE);
  assert_size (8193, 1, BW_PICTURE_ERROR_TOO_LARGE);
  assert_size (1, 8193, BW_PICTURE_ERROR_TOO_LARGE);
  assert_size (G_MAXUINT32, G_MAXUINT32, BW_PICTURE_ERROR_TOO_LARGE);
  assert_size (0, 5, BW_PICTURE_ERROR_DAMAGED);
}

/* An unknown chunk before the header chunk would hide the size from who looks where it belongs:
 * readers pass over such a chunk. */
static void
test_size_hidden (void)
{
  char *folder = test_scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "picture.png", NULL);
  g_autofree char *bytes = NULL;
  gsize length;
  g_autoptr (GError) error = NULL;
  /* length 8, kind "teSt", 8 bytes, CRC-32 of kind and bytes (ISO/IEC 15948, annex D) */
  static const guint8 chunk[] = { 0, 0, 0,  8, 't', 'e', 'S', 't', 0,    0,
                                  0, 1, 0,  0, 0,   1,   0xc8, 0x11, 0xf0, 0x2a };
  write_png (path, CAIRO_FORMAT_RGB24, 5, 3);
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_autoptr (GByteArray) hidden = g_byte_array_new ();
  g_byte_array_append (hidden, (guint8 *) bytes, 8);
  g_byte_array_append (hidden, chunk, sizeof chunk);
  g_byte_array_append (hidden, (guint8 *) bytes + 8, (guint) length - 8);
  g_assert_null (bw_planes_read (hidden->data, hidden->len, "a picture", &error));
  g_assert_error (error, BW_PICTURE_ERROR, BW_PICTURE_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, "size"));
  test_remove_folder (folder);
}

/* Only plain files are read: a device may never end, a pipe may wait for ever. */
static void
test_no_plain_file (void)
{
  char *folder = test_scratch_folder ();
  g_autofree char *pipe = g_build_filename (folder, "pipe.png", NULL);
  g_autofree char *huge = g_build_filename (folder, "huge.png", NULL);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  assert_refused (pipe, BW_PICTURE_ERROR_READ);
  assert_refused ("/dev/zero", BW_PICTURE_ERROR_READ);
  g_assert_true (g_file_set_contents (huge, "", 0, NULL));
  g_assert_cmpint (truncate (huge, (off_t) 1 << 32), ==, 0); /* takes no room on disk */
  assert_refused (huge, BW_PICTURE_ERROR_TOO_LARGE);
  test_remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/test-picture/bursts", test_bursts);
  g_test_add_func ("/test-picture/swing", test_swing);
  g_test_add_func ("/test-picture/circle", test_circle);
  g_test_add_func ("/test-picture/sizes", test_sizes);
  g_test_add_func ("/test-picture/not-empty", test_not_empty);
  g_test_add_func ("/test-picture/load", test_load);
  g_test_add_func ("/test-picture/refused", test_refused);
  g_test_add_func ("/test-picture/size", test_size);
  g_test_add_func ("/test-picture/size-hidden", test_size_hidden);
  g_test_add_func ("/test-picture/no-plain-file", test_no_plain_file);
  return g_test_run ();
}
