/* SPDX-License-Identifier: GPL-3.0-or-later */
/* EDID bytes in and out, against themselves; test_interchange-edid-decode.c holds them against a
 * reader by another hand. */
#include "core/interchange/interchange.h"

#include <math.h>
#include <string.h>

#include "support.h"

#define BLOCK BW_EDID_BLOCK_BYTES
#define DETAILED BW_EDID_DETAILED_BYTES
#define CLOCK_STEP_HZ 10e3 /* a detailed timing counts in 10 kHz */
#define FIRST 54           /* offset of the first descriptor */

static void
write_demo (guint8 *block)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GError) error = NULL;
  if (!bw_edid_write (sheet, bw_test_catalogue (), block, NULL, &error))
    g_error ("%s", error->message);
}

static BwEdid *
parse (const guint8 *bytes, gsize length)
{
  g_autoptr (GError) error = NULL;
  BwEdid *edid = bw_edid_parse (bytes, length, &error);
  if (edid == NULL)
    g_error ("%s", error->message);
  return edid;
}

static void
mend_checksum (guint8 *block)
{
  guint sum = 0;
  for (gsize i = 0; i < BLOCK - 1; i++)
    sum += block[i];
  block[BLOCK - 1] = (guint8) (256 - sum % 256);
}

static void
put_detailed (guint8 *at, const char *id)
{
  g_autoptr (GError) error = NULL;
  if (!bw_edid_detailed_from_raster (bw_test_raster (id), at, &error))
    g_error ("%s", error->message);
}

static gboolean
lists (const BwEdid *edid, BwEdidOrigin origin, const char *id, double rate_hz)
{
  for (guint i = 0; i < edid->modes->len; i++)
    {
      const BwEdidMode *mode = bw_edid_mode (edid, i);
      if (mode->origin == origin && g_strcmp0 (mode->id, id) == 0
          && bw_near (mode->field_rate_hz, rate_hz, 1e-9))
        return TRUE;
    }
  return FALSE;
}

/* Detailed timing -> raster -> detailed timing */

/* The catalogue's entries that a detailed timing cannot hold: VIC 39 for its even total, DMT 57
 * and 58 for 4096 pixels in a line, the others for front porches over 1023 pixels. */
static const char *const too_wide[] = {
  "vesa-dmt-57",          "vesa-dmt-58",
  "cta-861-vic-39",       "cta-861-vic-60",       "cta-861-vic-60-23.98",
  "cta-861-vic-61",       "cta-861-vic-62",       "cta-861-vic-62-29.97",
  "cta-861-vic-65",       "cta-861-vic-65-23.98", "cta-861-vic-66",
  "cta-861-vic-67",       "cta-861-vic-67-29.97", "cta-861-vic-79",
  "cta-861-vic-79-23.98", "cta-861-vic-80",       NULL,
};

static void
assert_too_wide (const BwRaster *raster)
{
  g_autoptr (GError) error = NULL;
  guint8 bytes[DETAILED];
  gboolean even = strcmp (raster->id, "cta-861-vic-39") == 0;

  g_assert_false (bw_edid_detailed_from_raster (raster, bytes, &error));
  g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_UNWRITABLE);
  if (even)
    bw_test_assert_words (error->message, WORDS (raster->id, "even total", "1250"));
  else if (raster->h_active > 4095)
    bw_test_assert_words (error->message, WORDS (raster->id, "active pixels", "4096", "4095"));
  else
    bw_test_assert_words (error->message, WORDS (raster->id, "front porch", "1023"));
}

/* Lost: the clock beyond 10 kHz, pixel repetition, tri-level sync. */
static void
assert_kept (const BwRaster *before, const BwRaster *after)
{
  int negative_half = before->sync_shape == BW_SHAPE_TRILEVEL ? before->h_sync / 2 : 0;
  double error_hz = fabs (bw_ratio_to_double (after->pixel_clock_hz)
                          - bw_ratio_to_double (before->pixel_clock_hz));

  g_assert_cmpfloat (error_hz, <=, CLOCK_STEP_HZ / 2);
  if (before->pixel_clock_hz.den == 1 && before->pixel_clock_hz.num % 10000 == 0)
    g_assert_cmpint (bw_ratio_compare (before->pixel_clock_hz, after->pixel_clock_hz), ==, 0);
  g_assert_cmpint (after->h_active, ==, before->h_active);
  g_assert_cmpint (after->h_front_porch, ==, before->h_front_porch + negative_half);
  g_assert_cmpint (after->h_sync, ==, before->h_sync - negative_half);
  g_assert_cmpint (after->h_back_porch, ==, before->h_back_porch);
  g_assert_cmpint (after->h_border, ==, before->h_border);
  g_assert_cmpint (after->v_border, ==, before->v_border);
  g_assert_cmpmem (after->field, sizeof after->field, before->field, sizeof before->field);
  g_assert_cmpuint (after->scan, ==, before->scan);
  g_assert_cmpuint (after->h_polarity, ==, before->h_polarity);
  g_assert_cmpuint (after->v_polarity, ==, before->v_polarity);
  g_assert_cmpint (after->pixel_repeat, ==, 1);
  g_assert_cmpuint (after->sync_shape, ==, BW_SHAPE_BILEVEL);
}

static void
test_round_trip (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  guint kept = 0;

  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      guint8 bytes[DETAILED];
      guint8 again[DETAILED];
      g_autoptr (GError) error = NULL;
      if (bw_ratio_is_none (raster->pixel_clock_hz))
        continue;
      if (g_strv_contains (too_wide, raster->id))
        {
          assert_too_wide (raster);
          continue;
        }
      g_assert_true (bw_edid_detailed_from_raster (raster, bytes, &error));
      g_assert_no_error (error);
      g_autoptr (BwRaster) back = bw_edid_detailed_to_raster (bytes, &error);
      g_assert_no_error (error);
      if (back == NULL)
        continue;
      assert_kept (raster, back);
      g_assert_true (bw_edid_detailed_from_raster (back, again, &error));
      g_assert_cmpmem (bytes, DETAILED, again, DETAILED);
      kept++;
    }
  g_test_message ("%u entries kept, %u do not fit", kept, (guint) G_N_ELEMENTS (too_wide) - 1);
  g_assert_cmpuint (kept, >=, 230);
}

static void
assert_unwritable (const BwRaster *raster, BwInterchangeError code, const char *says)
{
  g_autoptr (GError) error = NULL;
  guint8 bytes[DETAILED];
  g_assert_false (bw_edid_detailed_from_raster (raster, bytes, &error));
  g_assert_error (error, BW_INTERCHANGE_ERROR, (int) code);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (says));
}

static void
set_clock (BwRaster *raster, gint64 clock_hz)
{
  raster->pixel_clock_hz = (BwRatio){ clock_hz, 1 };
  bw_ratio_make (clock_hz, bw_raster_h_total (raster), &raster->line_rate_hz);
}

/* Each bit field at its greatest value and one beyond. */
static void
test_bit_fields (void)
{
  const struct
  {
    gsize offset;
    int most;
    int step; /* vertical intervals are counted in half lines */
    gboolean field;
    const char *says;
  } fields[] = {
    { G_STRUCT_OFFSET (BwRaster, h_active), 4095, 1, FALSE, "active pixels" },
    { G_STRUCT_OFFSET (BwRaster, h_front_porch), 1023, 1, FALSE, "front porch" },
    { G_STRUCT_OFFSET (BwRaster, h_sync), 1023, 1, FALSE, "line sync" },
    { G_STRUCT_OFFSET (BwRaster, h_border), 255, 1, FALSE, "border at each side" },
    { G_STRUCT_OFFSET (BwRaster, v_border), 255, 1, FALSE, "border above" },
    { G_STRUCT_OFFSET (BwFieldTiming, active), 4095, 2, TRUE, "active lines" },
    { G_STRUCT_OFFSET (BwFieldTiming, front_porch), 63, 2, TRUE, "vertical front porch" },
    { G_STRUCT_OFFSET (BwFieldTiming, sync), 63, 2, TRUE, "field sync" },
    { G_STRUCT_OFFSET (BwFieldTiming, back_porch), 4095 - 4 - 5, 2, TRUE, "field blanking" },
    { G_STRUCT_OFFSET (BwRaster, h_back_porch), 4095 - 88 - 44, 1, FALSE, "line blanking" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    for (int beyond = 0; beyond < 2; beyond++)
      {
        g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster ("cta-861-vic-16"));
        guint8 bytes[DETAILED];
        for (int f = 0; f < (fields[i].field ? 2 : 1); f++)
          {
            gpointer base = fields[i].field ? (gpointer) &raster->field[f] : (gpointer) raster;
            *(int *) (gpointer) ((char *) base + fields[i].offset) = fields[i].step
                                                                     * (fields[i].most + beyond);
          }
        set_clock (raster, 400000000);
        if (beyond)
          assert_unwritable (raster, BW_INTERCHANGE_ERROR_UNWRITABLE, fields[i].says);
        else
          {
            g_assert_true (bw_edid_detailed_from_raster (raster, bytes, NULL));
            g_autoptr (BwRaster) back = bw_edid_detailed_to_raster (bytes, NULL);
            g_assert_nonnull (back);
            if (back != NULL)
              assert_kept (raster, back);
          }
      }
}

/* Every bit of every count of a detailed timing goes its own way (VESA E-EDID Release A Revision 2, table 3.21): whatever
 * the others are, each comes back as it was. */
static void
test_detailed_bits (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (321);
  for (int i = 0; i < 2000; i++)
    {
      g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster ("cta-861-vic-16"));
      g_autoptr (GError) error = NULL;
      guint8 bytes[DETAILED];
      int front = g_rand_int_range (rand, 0, 1024), sync = g_rand_int_range (rand, 1, 1024);
      int v_front = g_rand_int_range (rand, 0, 64), v_sync = g_rand_int_range (rand, 1, 64);
      raster->h_active = g_rand_int_range (rand, 1, 4096);
      raster->h_front_porch = front;
      raster->h_sync = sync;
      raster->h_back_porch = g_rand_int_range (rand, 0, 4096 - front - sync);
      for (int f = 0; f < 2; f++)
        {
          raster->field[f].front_porch = 2 * v_front;
          raster->field[f].sync = 2 * v_sync;
          raster->field[f].active = 2 * 1000;
          raster->field[f].back_porch = 2 * 30;
        }
      set_clock (raster, 400000000);
      if (!bw_raster_check (raster, NULL))
        continue;
      g_assert_true (bw_edid_detailed_from_raster (raster, bytes, &error));
      g_assert_no_error (error);
      g_assert_cmpint (bytes[8] | (bytes[11] >> 6) << 8, ==, front);
      g_assert_cmpint (bytes[9] | (bytes[11] >> 4 & 3) << 8, ==, sync);
      g_assert_cmpint (bytes[10] >> 4 | (bytes[11] >> 2 & 3) << 4, ==, v_front);
      g_assert_cmpint ((bytes[10] & 15) | (bytes[11] & 3) << 4, ==, v_sync);
      g_autoptr (BwRaster) back = bw_edid_detailed_to_raster (bytes, &error);
      g_assert_no_error (error);
      assert_kept (raster, back);
    }
}

static void
test_clock_limit (void)
{
  g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster ("cta-861-vic-16"));
  guint8 bytes[DETAILED];

  set_clock (raster, 655350000);
  g_assert_true (bw_edid_detailed_from_raster (raster, bytes, NULL));
  g_assert_cmpuint (bytes[0], ==, 0xff);
  g_assert_cmpuint (bytes[1], ==, 0xff);
  set_clock (raster, 655360000);
  assert_unwritable (raster, BW_INTERCHANGE_ERROR_UNWRITABLE, "pixel clock");
  assert_unwritable (bw_test_raster ("625-50-interlaced"), BW_INTERCHANGE_ERROR_UNWRITABLE,
                     "in time alone");
  raster->h_sync = 0;
  assert_unwritable (raster, BW_INTERCHANGE_ERROR_RASTER, "no sync");
}

/* The form of sync in bits 4 to 1 of the last byte. */
static void
test_sync_forms (void)
{
  const struct
  {
    guint8 bits;
    gboolean h_positive;
    gboolean v_positive;
    const char *note;
  } forms[] = {
    { 0x18, FALSE, FALSE, "" },          { 0x1a, TRUE, FALSE, "" },
    { 0x1c, FALSE, TRUE, "" },           { 0x1e, TRUE, TRUE, "" },
    { 0x14, FALSE, FALSE, "conductor" }, { 0x16, TRUE, TRUE, "conductor" },
    { 0x04, FALSE, FALSE, "on green" },  { 0x06, FALSE, FALSE, "on red, green and blue" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      guint8 bytes[DETAILED];
      put_detailed (bytes, "vesa-dmt-10");
      bytes[17] = forms[i].bits;
      g_autoptr (BwRaster) raster = bw_edid_detailed_to_raster (bytes, NULL);
      g_assert_nonnull (raster);
      g_assert_true ((raster->h_polarity == BW_POLARITY_POSITIVE) == forms[i].h_positive);
      g_assert_true ((raster->v_polarity == BW_POLARITY_POSITIVE) == forms[i].v_positive);
      bw_test_assert_words (raster->note, WORDS (forms[i].note));
    }
}

/* Reading */

static void
test_base_fields (void)
{
  guint8 block[BLOCK];
  write_demo (block);
  memcpy (block + 8, "\x04\x43\x34\x12\x78\x56\x34\x12\x0b\x0c", 10); /* "ABC": 1, 2, 3 */
  block[20] = 0x50;                                                   /* 1.0/0.4 V, setup */
  block[23] = 120;
  mend_checksum (block);
  g_autoptr (BwEdid) edid = parse (block, BLOCK);

  g_assert_cmpstr (edid->manufacturer, ==, "ABC");
  g_assert_cmpuint (edid->product, ==, 0x1234);
  g_assert_cmpuint (edid->serial, ==, 0x12345678);
  g_assert_cmpuint (edid->week, ==, 11);
  g_assert_cmpuint (edid->year, ==, 2002);
  g_assert_false (edid->digital);
  g_assert_cmpfloat_with_epsilon (edid->white_v, 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (edid->sync_v, 0.4, 1e-12);
  g_assert_true (edid->setup);
  g_assert_cmpuint (edid->syncs, ==, 0);
  g_assert_cmpfloat_with_epsilon (edid->gamma, 2.2, 1e-12);
  block[20] = 0x8f;
  mend_checksum (block);
  g_autoptr (BwEdid) other = parse (block, BLOCK);
  g_assert_true (other->digital);
  g_assert_cmpuint (other->syncs, ==, 0);
}

static void
test_sizes (void)
{
  guint8 block[BLOCK];
  write_demo (block);
  block[21] = 34; /* (34 + 99) : 100, and upright 100 : (34 + 99) */
  block[22] = 0;
  mend_checksum (block);
  g_autoptr (BwEdid) wide = parse (block, BLOCK);
  g_assert_true (wide->aspect.num == 133 && wide->aspect.den == 100);
  g_assert_true (bw_near (wide->width_m, 0, 1e-12));
  block[21] = 0;
  block[22] = 34;
  mend_checksum (block);
  g_autoptr (BwEdid) tall = parse (block, BLOCK);
  g_assert_true (tall->aspect.num == 100 && tall->aspect.den == 133);
  block[19] = 3; /* before 1.4 a zero says nothing */
  mend_checksum (block);
  g_autoptr (BwEdid) older = parse (block, BLOCK);
  g_assert_true (bw_ratio_is_none (older->aspect));
}

/* Bits 0 to 3 of byte 4 of the range limits add 255, since EDID 1.4. */
static void
test_range_offsets (void)
{
  guint8 block[BLOCK];
  guint8 *range = block + FIRST + 2 * DETAILED;
  write_demo (block);
  memcpy (range, "\0\0\0\xfd\x0e\x3c\x64\x0a\x14\xff\x01\n      ", DETAILED);
  mend_checksum (block);
  g_autoptr (BwEdid) edid = parse (block, BLOCK);
  g_assert_true (bw_near (edid->field_rate_hz.low, 60, 1e-9));
  g_assert_true (bw_near (edid->field_rate_hz.high, 355, 1e-9));
  g_assert_true (bw_near (edid->line_rate_hz.low, 265e3, 1e-9));
  g_assert_true (bw_near (edid->line_rate_hz.high, 275e3, 1e-9));
  g_assert_true (bw_near (edid->max_clock_hz, 2550e6, 1e-9));
  block[19] = 3;
  mend_checksum (block);
  g_autoptr (BwEdid) older = parse (block, BLOCK);
  g_assert_true (bw_near (older->field_rate_hz.high, 100, 1e-9));
  g_assert_true (bw_near (older->line_rate_hz.low, 10e3, 1e-9));
}

static void
test_standard_timings (void)
{
  static const guint8 pairs[16] = { 0x81, 0x80, 0x31, 0x40, 0x01, 0x01, 0x00, 0x00,
                                    0xa9, 0xc0, 0x81, 0x00, 0x61, 0x41, 0x01, 0x01 };
  guint8 block[BLOCK];
  write_demo (block);
  memcpy (block + 38, pairs, sizeof pairs);
  memcpy (block + FIRST + DETAILED,
          "\0\0\0\xfa\0\xd1\xc0\x01\x01\x01\x01\x01\x01\x01\x01\x61\x4f\n", DETAILED);
  mend_checksum (block);
  g_autoptr (BwEdid) edid = parse (block, BLOCK);
  g_assert_true (lists (edid, BW_EDID_STANDARD, "vesa-dmt-23", 60));
  g_assert_true (lists (edid, BW_EDID_STANDARD, "vesa-dmt-04", 60));
  g_assert_true (lists (edid, BW_EDID_STANDARD, "vesa-dmt-53", 60));
  g_assert_true (lists (edid, BW_EDID_STANDARD, "vesa-dmt-1c", 60));
  g_assert_true (lists (edid, BW_EDID_STANDARD, "vesa-dmt-52", 60));
  g_assert_true (lists (edid, BW_EDID_STANDARD, "vesa-dmt-12", 75));
  g_assert_true (lists (edid, BW_EDID_STANDARD, NULL, 61)); /* 1024x768 at 61 Hz is no DMT */
  block[19] = 2;                                            /* 16:10 was 1:1 then */
  mend_checksum (block);
  g_autoptr (BwEdid) older = parse (block, BLOCK);
  g_assert_false (lists (older, BW_EDID_STANDARD, "vesa-dmt-1c", 60));
  g_assert_true (lists (older, BW_EDID_STANDARD, NULL, 60));
  guint square = 0;
  for (guint i = 0; i < older->modes->len; i++)
    square += bw_edid_mode (older, i)->width == 1280 && bw_edid_mode (older, i)->height == 1280;
  g_assert_cmpuint (square, ==, 1);
}

/* A base block and a CTA-861 extension with a video data block, an audio data block and three
 * detailed timings. */
static void
make_extended (guint8 bytes[2 * BLOCK])
{
  static const guint8 head[] = { 0x02, 0x03, 0x0d, 0x00, 0x44, 0x10, 0x84,
                                 0x05, 0xc1, 0x23, 0x09, 0x07, 0x07 };
  guint8 *cta = bytes + BLOCK;

  write_demo (bytes);
  bytes[126] = 1;
  mend_checksum (bytes);
  memset (cta, 0, BLOCK);
  memcpy (cta, head, sizeof head);
  put_detailed (cta + 13, "cta-861-vic-5");
  put_detailed (cta + 13 + DETAILED, "vesa-dmt-04");
  put_detailed (cta + 13 + 2 * DETAILED, "vesa-dmt-0f");
  cta[13 + 12] = 0x23; /* 0x123 mm by 0x0cd mm */
  cta[13 + 13] = 0xcd;
  cta[13 + 14] = 0x10;
  mend_checksum (cta);
}

static void
test_extension (void)
{
  guint8 bytes[2 * BLOCK];
  make_extended (bytes);
  g_autoptr (BwEdid) edid = parse (bytes, sizeof bytes);

  g_assert_cmpuint (edid->n_extensions, ==, 1);
  g_assert_cmpuint (edid->timings->len, ==, 5);
  g_assert_cmpuint (edid->notes->len, ==, 0);
  assert_kept (bw_test_raster ("cta-861-vic-5"), bw_edid_timing (edid, 2)->raster);
  assert_kept (bw_test_raster ("vesa-dmt-04"), bw_edid_timing (edid, 3)->raster);
  assert_kept (bw_test_raster ("vesa-dmt-0f"), bw_edid_timing (edid, 4)->raster);
  g_assert_cmpuint (bw_edid_timing (edid, 2)->offset, ==, BLOCK + 13);
  g_assert_true (bw_near (bw_edid_timing (edid, 2)->image_width_m, 0.291, 1e-9));
  g_assert_true (bw_near (bw_edid_timing (edid, 2)->image_height_m, 0.205, 1e-9));
  g_assert_cmpstr (bw_edid_timing (edid, 4)->raster->id, ==, "edid-5-1024x768i-86.96");
  g_assert_true (lists (edid, BW_EDID_VIDEO_DESCRIPTOR, "cta-861-vic-16", 0));
  g_assert_true (lists (edid, BW_EDID_VIDEO_DESCRIPTOR, "cta-861-vic-4", 0));
  g_assert_true (lists (edid, BW_EDID_VIDEO_DESCRIPTOR, "cta-861-vic-5", 0));
  g_assert_true (lists (edid, BW_EDID_VIDEO_DESCRIPTOR, "cta-861-vic-193", 0));
  for (guint i = 0; i < edid->modes->len; i++)
    g_assert_true (bw_edid_mode (edid, i)->native == (bw_edid_mode (edid, i)->vic == 4));
}

static void
test_other_extension (void)
{
  guint8 bytes[2 * BLOCK];
  make_extended (bytes);
  bytes[BLOCK] = 0x70;
  mend_checksum (bytes + BLOCK);
  g_autoptr (BwEdid) edid = parse (bytes, sizeof bytes);
  g_assert_cmpuint (edid->timings->len, ==, 2);
  g_assert_cmpuint (edid->notes->len, ==, 1);
  bw_test_assert_words (edid->notes->pdata[0], WORDS ("Extension block 1", "70"));
}

/* Bad bytes: the demonstration's block with a CTA extension, with one to three bytes replaced. */

typedef struct
{
  const char *name;
  struct
  {
    guint at;
    guint8 value;
  } change[3];
  gboolean mend; /* the checksums */
  BwInterchangeError code;
  const char *place;
  const char *says;
} Bad;

#define D1 FIRST
#define RANGE (FIRST + 2 * DETAILED)
#define CTA BLOCK
#define CTA_D1 (BLOCK + 13)

static const Bad bad[] = {
  { "header-0", { { 0, 1 } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 0", "00 FF" },
  { "header-3", { { 3, 0 } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 3", "00 FF" },
  { "header-7", { { 7, 0xff } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 7", "00 FF" },
  { "no-extension",
    { { 126, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_LENGTH,
    "byte 126",
    "makes 128 bytes, but there are 256" },
  { "two-extensions",
    { { 126, 2 } },
    TRUE,
    BW_INTERCHANGE_ERROR_LENGTH,
    "byte 126",
    "makes 384 bytes" },
  { "checksum-base", { { 127, 0 } }, FALSE, BW_INTERCHANGE_ERROR_CHECKSUM, "byte 127", "block 0" },
  { "checksum-extension",
    { { 255, 0 } },
    FALSE,
    BW_INTERCHANGE_ERROR_CHECKSUM,
    "byte 255",
    "block 1" },
  { "byte-of-base", { { 25, 1 } }, FALSE, BW_INTERCHANGE_ERROR_CHECKSUM, "byte 127", "block 0" },
  { "byte-of-extension",
    { { 200, 1 } },
    FALSE,
    BW_INTERCHANGE_ERROR_CHECKSUM,
    "byte 255",
    "block 1" },
  { "version-0", { { 18, 0 } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 18", "version 0" },
  { "version-2", { { 18, 2 } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 18", "version 2" },
  { "maker-0",
    { { 8, 0 }, { 9, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_HEADER,
    "byte 8",
    "three letters" },
  { "maker-27", { { 8, 0x6c } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 8", "A to Z" },
  { "maker-bit", { { 8, 0x84 } }, TRUE, BW_INTERCHANGE_ERROR_HEADER, "byte 8", "A to Z" },
  { "standard",
    { { 42, 0 }, { 43, 5 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 42",
    "01 01" },
  { "no-pixels",
    { { D1 + 2, 0 }, { D1 + 4, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1",
    "byte 2 of" },
  { "no-lines",
    { { D1 + 5, 0 }, { D1 + 7, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1",
    "active lines" },
  { "no-line-sync",
    { { D1 + 9, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1",
    "line has no sync" },
  { "no-field-sync",
    { { D1 + 10, 0x50 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1",
    "field has no sync" },
  { "line-blanking",
    { { D1 + 3, 1 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1: byte 3 ",
    "line blanking" },
  { "field-blanking",
    { { D1 + 6, 1 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1: byte 6 ",
    "field blanking" },
  { "side-borders",
    { { D1 + 15, 255 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1: byte 3 ",
    "borders" },
  { "top-borders",
    { { D1 + 16, 255 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 54, detailed timing 1: byte 6 ",
    "borders" },
  { "clock-low",
    { { D1, 1 }, { D1 + 1, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_RASTER,
    "byte 54, detailed timing 1: byte 0 ",
    "line rate" },
  { "second-timing",
    { { D1 + DETAILED + 9, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 72, detailed timing 2",
    "no sync" },
  { "field-range",
    { { RANGE + 5, 99 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 95",
    "field rate" },
  { "line-range",
    { { RANGE + 7, 99 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 97",
    "line rate" },
  { "standard-in-a-descriptor",
    { { RANGE + 3, 0xfa }, { RANGE + 5, 0 }, { RANGE + 6, 0x40 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 95",
    "standard timing" },
  { "third-timing",
    { { RANGE, 1 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 90, detailed timing 3",
    "byte " },
  { "cta-start-1",
    { { CTA + 2, 1 } },
    TRUE,
    BW_INTERCHANGE_ERROR_EXTENSION,
    "byte 130",
    "4 to 127" },
  { "cta-start-3",
    { { CTA + 2, 3 } },
    TRUE,
    BW_INTERCHANGE_ERROR_EXTENSION,
    "byte 130",
    "4 to 127" },
  { "cta-start-128",
    { { CTA + 2, 128 } },
    TRUE,
    BW_INTERCHANGE_ERROR_EXTENSION,
    "byte 130",
    "begin at 128" },
  { "cta-block-long",
    { { CTA + 9, 0x24 } },
    TRUE,
    BW_INTERCHANGE_ERROR_EXTENSION,
    "byte 137",
    "4 bytes does not fit before byte 141" },
  { "cta-block-longest",
    { { CTA + 4, 0x5f } },
    TRUE,
    BW_INTERCHANGE_ERROR_EXTENSION,
    "byte 132",
    "31 bytes" },
  { "cta-vic-0", { { CTA + 5, 0 } }, TRUE, BW_INTERCHANGE_ERROR_EXTENSION, "byte 133", "reserved" },
  { "cta-vic-128",
    { { CTA + 7, 128 } },
    TRUE,
    BW_INTERCHANGE_ERROR_EXTENSION,
    "byte 135",
    "128, which is reserved" },
  { "cta-vic-254", { { CTA + 8, 254 } }, TRUE, BW_INTERCHANGE_ERROR_EXTENSION, "byte 136", "254" },
  { "cta-vic-255", { { CTA + 8, 255 } }, TRUE, BW_INTERCHANGE_ERROR_EXTENSION, "byte 136", "255" },
  { "cta-timing",
    { { CTA_D1 + 9, 0 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 141, detailed timing 3",
    "no sync" },
  { "cta-timing-3",
    { { CTA_D1 + 2 * DETAILED + 3, 0 }, { CTA_D1 + 2 * DETAILED + 4, 0x40 } },
    TRUE,
    BW_INTERCHANGE_ERROR_DESCRIPTOR,
    "byte 177, detailed timing 5",
    "line blanking" },
};

/* Without a sound header, version and base block there is nothing to take. */
static gboolean
is_fatal (const Bad *one)
{
  return (one->code == BW_INTERCHANGE_ERROR_HEADER && strcmp (one->place, "byte 8") != 0)
         || (one->code == BW_INTERCHANGE_ERROR_CHECKSUM && strcmp (one->place, "byte 127") == 0);
}

static gboolean
has_offset (const BwEdid *edid, gsize offset)
{
  for (guint i = 0; i < edid->timings->len; i++)
    if (bw_edid_timing (edid, i)->offset == offset)
      return TRUE;
  return FALSE;
}

/* What is faulty is named with its place, and all the timings that are sound are there: those of the
 * block before it was changed, but for one that a changed byte lies in. */
static void
check_left_out (const Bad *one, BwEdid *edid, const GError *error)
{
  guint8 whole[2 * BLOCK];
  gboolean extension_is_lost = strstr (one->says, "block 1") != NULL || strstr (one->place, "126")
                               || strcmp (one->place, "byte 130") == 0;
  g_assert_no_error (error);
  g_assert_nonnull (edid);
  g_assert_cmpuint (edid->notes->len, ==, 1);
  bw_test_assert_words (edid->notes->pdata[0],
                        WORDS ("EDID", one->place, one->says, "was left out"));
  make_extended (whole);
  g_autoptr (BwEdid) sound = parse (whole, sizeof whole);
  for (guint i = 0; i < sound->timings->len; i++)
    {
      gsize offset = bw_edid_timing (sound, i)->offset;
      gsize at = one->change[0].at;
      gboolean hit = at >= offset && at < offset + DETAILED;
      if (extension_is_lost && offset >= BLOCK)
        continue;
      g_assert_cmpint (has_offset (edid, offset), ==, !hit);
    }
}

static void
test_bad (gconstpointer data)
{
  const Bad *one = data;
  guint8 bytes[2 * BLOCK];
  g_autoptr (GError) error = NULL;

  make_extended (bytes);
  for (gsize i = 0; i < G_N_ELEMENTS (one->change); i++)
    if (i == 0 || one->change[i].at != 0)
      bytes[one->change[i].at] = one->change[i].value;
  if (one->mend)
    {
      mend_checksum (bytes);
      mend_checksum (bytes + BLOCK);
    }
  g_autoptr (BwEdid) edid = bw_edid_parse (bytes, sizeof bytes, &error);
  if (is_fatal (one))
    {
      g_assert_null (edid);
      g_assert_error (error, BW_INTERCHANGE_ERROR, (int) one->code);
      if (error != NULL)
        bw_test_assert_words (error->message, WORDS ("EDID", one->place, one->says));
    }
  else
    check_left_out (one, edid, error);
}

/* Blanking holds front porch, sync and both borders (VESA E-EDID 3.10.2): borders that just fill it are
 * taken, one more pixel or line is refused. */
static void
test_borders (void)
{
  guint8 plain[DETAILED];
  put_detailed (plain, "cta-861-vic-1");
  int h_left = plain[3] - plain[8] - plain[9],
      v_left = plain[6] - (plain[10] >> 4) - (plain[10] & 15);
  g_assert_cmpint (plain[3], ==, 160); /* 800 − 640; 525 − 480 = 45 */
  g_assert_cmpint (plain[6], ==, 45);
  for (int more = 0; more < 2; more++)
    for (int down = 0; down < 2; down++)
      {
        guint8 bytes[DETAILED];
        g_autoptr (GError) error = NULL;
        memcpy (bytes, plain, sizeof bytes);
        bytes[down ? 16 : 15] = (guint8) ((down ? v_left : h_left) / 2 + more);
        g_autoptr (BwRaster) raster = bw_edid_detailed_to_raster (bytes, &error);
        g_assert_cmpint (raster != NULL, ==, !more);
        if (more)
          g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_DESCRIPTOR);
      }
}

/* In memory of its own, so that a sanitizer sees the first byte read beyond the end. */
static void
test_truncated (void)
{
  guint8 whole[2 * BLOCK];
  make_extended (whole);
  for (gsize length = 0; length < sizeof whole; length++)
    {
      g_autofree guint8 *cut = g_memdup2 (whole, length);
      g_autoptr (GError) error = NULL;
      g_autoptr (BwEdid) edid = bw_edid_parse (cut, length, &error);
      if (length < BLOCK)
        {
          g_assert_null (edid);
          g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_LENGTH);
          continue;
        }
      g_assert_no_error (error); /* the base block is whole, and is taken */
      g_assert_cmpuint (edid->timings->len, ==, 2);
      g_assert_cmpuint (edid->notes->len, ==, 1);
      bw_test_assert_words (edid->notes->pdata[0], WORDS ("byte 126", "makes 256 bytes"));
    }
}

/* Every bit turned over: seen by the checksum, which of an extension costs that alone; and with that
 * mended, read or refused. */
static void
test_flipped (void)
{
  guint8 whole[2 * BLOCK];
  guint refused = 0;
  guint read = 0;
  make_extended (whole);
  for (gsize bit = 0; bit < 8 * sizeof whole; bit++)
    {
      guint8 bytes[2 * BLOCK];
      g_autoptr (GError) seen = NULL;
      g_autoptr (GError) error = NULL;
      memcpy (bytes, whole, sizeof bytes);
      bytes[bit / 8] ^= (guint8) (1 << bit % 8);
      g_autoptr (BwEdid) damaged = bw_edid_parse (bytes, sizeof bytes, &seen);
      if (bit < 8 * BLOCK)
        g_assert_true (damaged == NULL && seen != NULL && seen->domain == BW_INTERCHANGE_ERROR);
      else
        bw_test_assert_words (damaged->notes->pdata[0], WORDS ("byte 255", "checksum of block 1"));
      mend_checksum (bytes);
      mend_checksum (bytes + BLOCK);
      g_autoptr (BwEdid) edid = bw_edid_parse (bytes, sizeof bytes, &error);
      g_assert_true ((edid != NULL) == (error == NULL));
      for (guint i = 0; edid != NULL && i < edid->timings->len; i++)
        g_assert_true (bw_raster_check (bw_edid_timing (edid, i)->raster, NULL));
      *(edid != NULL ? &read : &refused) += 1;
    }
  g_test_message ("%u of %u with a mended checksum refused", refused, refused + read);
  g_assert_cmpuint (refused, ==, 8 * 9); /* the header and the version */
  g_assert_cmpuint (read, >, 100);
}

/* Both fields are alike but for half a line in each porch (VESA E-EDID 3.10.2): a field 2 with whole lines moved
 * from one part to the next cannot be stated. */
static void
test_unlike_fields (void)
{
  for (int part = 0; part < 4; part++)
    {
      g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster ("cta-861-vic-5"));
      g_autoptr (GError) error = NULL;
      guint8 bytes[DETAILED];
      int *const parts[]
          = { &raster->field[1].active, &raster->field[1].front_porch, &raster->field[1].sync,
              &raster->field[1].back_porch };
      g_assert_true (bw_edid_detailed_from_raster (raster, bytes, NULL));
      *parts[part] += 2;
      *parts[(part + 1) % 4] -= 2;
      g_assert_false (bw_edid_detailed_from_raster (raster, bytes, &error));
      g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_UNWRITABLE);
    }
}

/* Byte 17 of a detailed timing (VESA E-EDID 3.10.2): 80h interlaced, 18h separate sync, 04h positive V, 02h positive H,
 * and no stereo. Polarities and scans are those of CTA-861 and VESA DMT. */
static void
test_flags (void)
{
  static const struct
  {
    const char *id;
    guint8 flags;
  } cases[] = {
    { "cta-861-vic-1", 0x18 }, { "cta-861-vic-4", 0x1e }, { "cta-861-vic-5", 0x9e },
    { "vesa-dmt-01", 0x1a },   { "vesa-dmt-02", 0x1c },   { "vesa-dmt-0f", 0x9e },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint8 bytes[DETAILED];
      put_detailed (bytes, cases[i].id);
      g_assert_cmphex (bytes[17], ==, cases[i].flags);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/edid/detailed/round-trip", test_round_trip);
  g_test_add_func ("/edid/detailed/bit-fields", test_bit_fields);
  g_test_add_func ("/edid/detailed/clock-limit", test_clock_limit);
  g_test_add_func ("/edid/detailed/detailed-bits", test_detailed_bits);
  g_test_add_func ("/edid/detailed/sync-forms", test_sync_forms);
  g_test_add_func ("/edid/read/base", test_base_fields);
  g_test_add_func ("/edid/read/sizes", test_sizes);
  g_test_add_func ("/edid/read/range-offsets", test_range_offsets);
  g_test_add_func ("/edid/read/standard-timings", test_standard_timings);
  g_test_add_func ("/edid/read/extension", test_extension);
  g_test_add_func ("/edid/read/other-extension", test_other_extension);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *path = g_strconcat ("/edid/bad/", bad[i].name, NULL);
      g_test_add_data_func (path, &bad[i], test_bad);
    }
  g_test_add_func ("/edid/bad/borders", test_borders);
  g_test_add_func ("/edid/bad/truncated", test_truncated);
  g_test_add_func ("/edid/bad/flipped", test_flipped);
  g_test_add_func ("/edid/detailed/unlike-fields", test_unlike_fields);
  g_test_add_func ("/edid/detailed/flags", test_flags);
  return g_test_run ();
}
