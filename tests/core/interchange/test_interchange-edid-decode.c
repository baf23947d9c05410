/* SPDX-License-Identifier: GPL-3.0-or-later */
/* EDID blocks and mode lines against edid-decode (Debian package edid-decode; reviewed with
 * 0.1~git20220315.cb74358c2896-1). Without that program these tests fail. */
#include "core/interchange/interchange.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "support.h"

#define BLOCK BW_EDID_BLOCK_BYTES
#define DETAILED BW_EDID_DETAILED_BYTES
#define PRINTED_CLOCK_STEP_HZ 1e3 /* a printed mode line has three decimals of a megahertz */

/* Runs it; @bytes, if given, is the EDID that it is to read. */
static char *
run_edid_decode (const char *const *options, const guint8 *bytes, gsize length)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  char *folder = bw_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "block.bin", NULL);
  char *out = NULL;
  int status = -1;

  g_ptr_array_add (argv, (gpointer) "edid-decode");
  for (; *options != NULL; options++)
    g_ptr_array_add (argv, (gpointer) *options);
  if (bytes != NULL)
    {
      if (!g_file_set_contents (path, (const char *) bytes, (gssize) length, &error))
        g_error ("%s", error->message);
      g_ptr_array_add (argv, path);
    }
  g_ptr_array_add (argv, NULL);
  if (!g_spawn_sync (NULL, (char **) argv->pdata, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL,
                     &status, &error))
    g_error ("edid-decode cannot be run: %s", error->message);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  bw_test_folder_remove (folder);
  return out;
}

static GMatchInfo *
match_all (const char *text, const char *pattern)
{
  GMatchInfo *match = NULL;
  g_autoptr (GRegex) regex = g_regex_new (pattern, G_REGEX_MULTILINE, G_REGEX_MATCH_DEFAULT, NULL);
  g_assert_nonnull (regex);
  g_regex_match (regex, text, 0, &match); /* the match keeps @regex, and borrows @text */
  return match;
}

static double
group (GMatchInfo *match, const char *name)
{
  g_autofree char *text = g_match_info_fetch_named (match, name);
  return text != NULL && *text != '\0' ? g_ascii_strtod (text, NULL) : 0;
}

static gboolean
has_group (GMatchInfo *match, const char *name, const char *value)
{
  g_autofree char *text = g_match_info_fetch_named (match, name);
  return g_strcmp0 (text, value) == 0;
}

/* Printed detailed timings */

#define INTERVALS                                                                                  \
  "\\s+Hfront\\s+(?<hf>\\d+) Hsync\\s+(?<hs>\\d+) Hback\\s+(?<hb>\\d+) Hpol (?<hp>[PN])"           \
  "(?: Hborder (?<ho>\\d+))?\\s+"                                                                  \
  "Vfront\\s+(?<vf>\\d+) Vsync\\s+(?<vs>\\d+) Vback\\s+(?<vb>\\d+)(?: Vpol (?<vp>[PN]))?"          \
  "(?: Vborder (?<vo>\\d+))?(?<half> Vfront \\+0\\.5 Odd Field)?"

#define DETAILED_PATTERN                                                                           \
  "DTD \\d+:\\s+(?<w>\\d+)x(?<h>\\d+)(?<i>i?)\\s+(?<hz>[\\d.]+) Hz\\s+\\S+\\s+"                    \
  "(?<khz>[\\d.]+) kHz\\s+(?<mhz>[\\d.]+) MHz \\((?<form>[^)]*)\\)" INTERVALS

/* All numbers that are printed of one detailed timing. With composite sync one polarity stands for
 * both. */
static void
assert_printed (GMatchInfo *match, const BwRaster *raster)
{
  const BwFieldTiming *field = &raster->field[0];
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  g_assert_true (has_group (match, "i", interlaced ? "i" : ""));
  g_assert_true (has_group (match, "half", interlaced ? " Vfront +0.5 Odd Field" : ""));
  g_assert_true (bw_near (group (match, "w"), raster->h_active, 0.1));
  g_assert_true (bw_near (group (match, "h"), f.active_lines_frame, 0.1));
  g_assert_true (bw_near (group (match, "hf"), raster->h_front_porch, 0.1));
  g_assert_true (bw_near (group (match, "hs"), raster->h_sync, 0.1));
  g_assert_true (bw_near (group (match, "hb"), raster->h_back_porch, 0.1));
  g_assert_true (bw_near (group (match, "ho"), raster->h_border, 0.1));
  g_assert_true (bw_near (group (match, "vf"), field->front_porch / 2.0, 0.1));
  g_assert_true (bw_near (group (match, "vs"), field->sync / 2.0, 0.1));
  g_assert_true (bw_near (group (match, "vb"), field->back_porch / 2.0, 0.1));
  g_assert_true (bw_near (group (match, "vo"), raster->v_border, 0.1));
  g_assert_true (bw_near (group (match, "mhz") * 1e6, f.pixel_clock_hz, 0.51));
  g_assert_true (bw_near (group (match, "khz") * 1e3, f.line_rate_hz, 0.51));
  g_assert_true (bw_near (group (match, "hz"), f.field_rate_hz, 5.1e-7));
  g_assert_true (has_group (match, "hp", raster->h_polarity == BW_POLARITY_POSITIVE ? "P" : "N"));
  if (!has_group (match, "vp", ""))
    g_assert_true (has_group (match, "vp", raster->v_polarity == BW_POLARITY_POSITIVE ? "P" : "N"));
}

/* Every entry of the catalogue that fits, four to a block, with borders and interlace. */

static void
mend_checksum (guint8 *block)
{
  guint sum = 0;
  for (gsize i = 0; i < BLOCK - 1; i++)
    sum += block[i];
  block[BLOCK - 1] = (guint8) (256 - sum % 256);
}

static void
assert_block_printed (guint8 *block, const GPtrArray *rasters)
{
  static const char *const options[] = { "-s", "--skip-sha", "-L", NULL };
  g_autofree char *out = NULL;
  guint n = 0;

  mend_checksum (block);
  out = run_edid_decode (options, block, BLOCK);
  g_autoptr (GMatchInfo) match = match_all (out, DETAILED_PATTERN);
  for (; g_match_info_matches (match) && n < rasters->len; g_match_info_next (match, NULL))
    assert_printed (match, rasters->pdata[n++]);
  g_assert_cmpuint (n, ==, rasters->len);
}

static void
put_raster (guint8 *block, guint slot, const BwRaster *raster, GPtrArray *rasters)
{
  guint8 *at = block + 54 + slot * DETAILED;
  g_autoptr (GError) error = NULL;
  if (!bw_edid_detailed_from_raster (raster, at, &error))
    return;
  BwRaster *back = bw_edid_detailed_to_raster (at, &error);
  g_assert_no_error (error);
  if (back != NULL)
    g_ptr_array_add (rasters, back);
  at[12] = at[13] = 100; /* an image size, or it prints none */
}

static void
test_every_timing (void)
{
  GPtrArray *all = bw_catalogue_rasters (bw_test_catalogue ());
  g_autoptr (GPtrArray) rasters = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_raster_free);
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  guint8 block[BLOCK];
  guint seen = 0;

  g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, NULL, NULL));
  for (guint i = 0; i < all->len; i++)
    {
      put_raster (block, rasters->len, all->pdata[i], rasters);
      if (rasters->len == 4)
        {
          assert_block_printed (block, rasters);
          seen += rasters->len;
          g_ptr_array_set_size (rasters, 0);
        }
    }
  g_test_message ("%u detailed timings are printed as they were meant", seen);
  g_assert_cmpuint (seen, >=, 230);
}

static guint8 *
bare_block (void)
{
  static const guint8 start[] = { 0, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0, 0x04, 0x43 };
  guint8 *block = g_malloc0 (BLOCK);
  memcpy (block, start, sizeof start);
  block[18] = 1;
  block[19] = 4;
  memset (block + 38, 1, 16);
  for (int i = 0; i < 4; i++)
    block[54 + i * DETAILED + 3] = 0x10;
  return block;
}

/* Faulty blocks: what displays have in the field. One part is wrong; every timing that is sound is as
 * edid-decode prints it, and the part is named. */

static const struct
{
  const char *name;
  guint at;     /* of the byte that is changed, in both blocks */
  guint8 value; /* of that byte */
  guint lost;   /* how many timings that costs */
  const char *says;
} faulty[] = {
  { "none", 19, 4, 0, NULL },
  { "maker", 8, 0xff, 0, "maker's code" },
  { "reserved-code", BLOCK + 5, 0, 0, "reserved" },
  { "no-field-sync", 54 + 10, 0x10, 1, "the field has no sync" },
  { "no-line-sync", 54 + DETAILED + 9, 0, 1, "the line has no sync" },
  { "front-porch", 54 + 2 * DETAILED + 8, 0xff, 1, "line blanking" },
  { "in-extension", BLOCK + 6 + 10, 0x10, 1, "the field has no sync" },
  { "standard-timing", 38, 0, 0, "a standard timing" },
};

static void
make_faulty (guint8 *bytes, guint which)
{
  static const char *const ids[] = { "vesa-dmt-04",   "cta-861-vic-2", "vesa-dmt-09",
                                     "cta-861-vic-4", "vesa-dmt-10",   "cta-861-vic-3" };
  g_autofree guint8 *base = bare_block ();
  guint8 *cta = bytes + BLOCK;

  memset (bytes, 0, 2 * BLOCK);
  memcpy (bytes, base, BLOCK);
  bytes[39] = 0x40; /* the second byte of the first standard timing; 01 40 is 256 by 192 at 60 Hz */
  bytes[126] = 1;
  cta[0] = 2;
  cta[1] = 3;
  cta[2] = 6;
  cta[4] = 2 << 5 | 1;
  cta[5] = 16;
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      guint8 *at = i < 4 ? bytes + 54 + i * DETAILED : cta + 6 + (i - 4) * DETAILED;
      g_assert_true (bw_edid_detailed_from_raster (bw_test_raster (ids[i]), at, NULL));
      at[12] = at[13] = 100; /* an image size, or it prints none */
    }
  bytes[faulty[which].at] = faulty[which].value;
  mend_checksum (bytes);
  mend_checksum (cta);
}

static gboolean
is_printed (GMatchInfo *match, const BwRaster *raster)
{
  return bw_near (group (match, "mhz") * 1e6, bw_ratio_to_double (raster->pixel_clock_hz), 0.51)
         && bw_near (group (match, "hs"), raster->h_sync, 0.1)
         && bw_near (group (match, "vs"), raster->field[0].sync / 2.0, 0.1);
}

static void
test_faulty (gconstpointer data)
{
  guint which = GPOINTER_TO_UINT (data), n = 0, skipped = 0;
  static const char *const options[] = { "-s", "--skip-sha", "-L", NULL };
  guint8 bytes[2 * BLOCK];
  g_autoptr (GError) error = NULL;

  make_faulty (bytes, which);
  g_autofree char *out = run_edid_decode (options, bytes, sizeof bytes);
  g_autoptr (BwEdid) edid = bw_edid_parse (bytes, sizeof bytes, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (edid->timings->len, ==, 6 - faulty[which].lost);
  g_assert_cmpuint (edid->notes->len, ==, faulty[which].says != NULL ? 1 : 0);
  if (faulty[which].says != NULL)
    bw_test_assert_words (edid->notes->pdata[0], WORDS (faulty[which].says, "left out"));
  g_autoptr (GMatchInfo) match = match_all (out, DETAILED_PATTERN);
  for (; g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      const BwRaster *next = n < edid->timings->len ? bw_edid_timing (edid, n)->raster : NULL;
      if (next != NULL && is_printed (match, next))
        {
          assert_printed (match, next);
          n++;
        }
      else
        skipped++;
    }
  g_assert_cmpuint (n, ==, edid->timings->len);
  g_assert_cmpuint (skipped, <=, faulty[which].lost);
}

/* Written blocks */

/* edid-decode names the sync kinds in one line. */
static void
assert_syncs_printed (const char *out, const BwEdid *edid)
{
  g_autofree char *line = g_strconcat ("Sync:",
                                       edid->syncs & BW_BIT (BW_SYNC_SEPARATE) ? " Separate" : "",
                                       edid->syncs & BW_BIT (BW_SYNC_COMPOSITE) ? " Composite" : "",
                                       edid->syncs & BW_BIT (BW_SYNC_ON_GREEN) ? " SyncOnGreen"
                                                                               : "",
                                       edid->serration ? " Serration" : "", "\n", NULL);
  g_autofree char *level = g_strdup_printf ("Signal Level Standard: %.3f : %.3f : %.3f V p-p",
                                            edid->white_v, edid->sync_v,
                                            edid->white_v + edid->sync_v);
  bw_test_assert_words (out,
                        WORDS (line, level, "Analog display", "Structure Version & Revision: 1.4"));
  g_assert_true ((strstr (out, "Display is continuous frequency") != NULL) == edid->continuous);
}

static void
assert_limits_printed (const char *out, const BwEdid *edid)
{
  g_autofree char *limits = g_strdup_printf (
      "Monitor ranges (Bare Limits): %.0f-%.0f Hz V, %.0f-%.0f kHz H, max dotclock %.0f MHz",
      edid->field_rate_hz.low, edid->field_rate_hz.high, edid->line_rate_hz.low / 1e3,
      edid->line_rate_hz.high / 1e3, edid->max_clock_hz / 1e6);
  g_autofree char *name = g_strdup_printf ("Display Product Name: '%s'", edid->name);
  g_autofree char *size = g_strdup_printf ("Maximum image size: %.0f cm x %.0f cm",
                                           edid->width_m * 100, edid->height_m * 100);
  g_autofree char *maker = g_strdup_printf ("Manufacturer: %s\n", edid->manufacturer);
  bw_test_assert_words (out, WORDS (limits, name, size, maker));
}

static void
assert_timings_printed (const char *out, const BwEdid *edid)
{
  g_autoptr (GMatchInfo) match = match_all (out, DETAILED_PATTERN);
  guint n = 0;
  for (; g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      if (n < edid->timings->len)
        assert_printed (match, bw_edid_timing (edid, n)->raster);
      n++;
    }
  g_assert_cmpuint (n, ==, edid->timings->len);
}

static void
assert_established_printed (const char *out, const BwEdid *edid)
{
  g_autoptr (GMatchInfo) match = match_all (out, "^    DMT 0x(?<dmt>[0-9a-f]{2}):");
  guint n = 0;
  for (; g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *dmt = g_match_info_fetch_named (match, "dmt");
      g_autofree char *id = g_strconcat ("vesa-dmt-", dmt, NULL);
      if (n < edid->modes->len)
        g_assert_cmpstr (bw_edid_mode (edid, n)->id, ==, id);
      n++;
    }
  g_assert_cmpuint (n, ==, edid->modes->len);
}

static void
assert_accepted (const BwSheet *sheet)
{
  static const char *const options[] = { "-s", "--skip-sha", "-L", "--check", NULL };
  g_autoptr (GError) error = NULL;
  guint8 block[BLOCK];

  if (!bw_edid_write (sheet, bw_test_catalogue (), block, NULL, &error))
    g_error ("%s", error->message);
  g_autofree char *out = run_edid_decode (options, block, BLOCK);
  g_autoptr (BwEdid) edid = bw_edid_parse (block, BLOCK, &error);
  g_assert_no_error (error);
  bw_test_assert_words (out, WORDS ("EDID conformity: PASS"));
  if (strstr (out, "Failures:") != NULL || strstr (out, "out of range") != NULL)
    {
      g_test_message ("%s", out);
      g_test_fail ();
    }
  if (edid == NULL)
    return;
  assert_syncs_printed (out, edid);
  assert_limits_printed (out, edid);
  assert_timings_printed (out, edid);
  assert_established_printed (out, edid);
}

static void
test_demo (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  assert_accepted (sheet);
}

static void
test_monitor (gconstpointer data)
{
  g_autoptr (BwSheet) sheet = bw_sheet_new ();
  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (data);
  assert_accepted (sheet);
}

/* One and several bands, each input alone: levels, syncs and ranges of many kinds. */
static void
test_variants (void)
{
  static const BwRange lines[] = {
    { 15.4e3, 16e3 }, { 31.2e3, 31.8e3 }, { 30.4e3, 71.5e3 }, { 24e3, 130e3 }, { 15e3, 260e3 }
  };
  static const guint syncs[] = { BW_BIT (BW_SYNC_SEPARATE), BW_BIT (BW_SYNC_COMPOSITE),
                                 BW_BIT (BW_SYNC_ON_GREEN),
                                 BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_ON_GREEN) };
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwMonitor *monitor = sheet->monitor;
  BwInput *input = bw_monitor_input (monitor, 2);

  monitor->line_retrace_s = 1e-6;
  monitor->field_retrace_s = 300e-6;
  monitor->field_rates_hz.at[0] = (BwRange){ 47.5, 160.2 };
  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    for (gsize j = 0; j < G_N_ELEMENTS (syncs); j++)
      {
        monitor->line_rates_hz.n = i % 2 == 0 ? 1 : 2;
        monitor->line_rates_hz.at[0] = lines[i];
        monitor->line_rates_hz.at[1] = (BwRange){ lines[i].high + 1e3, lines[i].high + 2.5e3 };
        input->syncs = syncs[j];
        assert_accepted (sheet);
      }
}

/* Tables of codes */

/* Codes have whole hertz, and DMT 0x05 (72.8 Hz) is called 72. The code of DMT 0x11 says 72 as
 * well, though its rate is 70: it is so in the list. */
static void
assert_lists_one (const BwEdid *edid, const char *id, GMatchInfo *match)
{
  g_assert_cmpuint (edid->modes->len, ==, 1);
  if (edid->modes->len != 1)
    return;
  const BwEdidMode *mode = bw_edid_mode (edid, 0);
  g_assert_cmpstr (mode->id, ==, id);
  g_assert_true (bw_near (mode->width, group (match, "w"), 0.1));
  g_assert_true (bw_near (mode->height, group (match, "h"), 0.1));
  g_assert_true (
      bw_near (mode->field_rate_hz, group (match, "hz"),
               mode->origin == BW_EDID_STANDARD && g_strcmp0 (id, "vesa-dmt-11") == 0 ? 2 : 0.9));
  g_assert_true (has_group (match, "i", mode->interlaced ? "i" : ""));
}

static BwEdid *
parse_bare (guint8 *block)
{
  g_autoptr (GError) error = NULL;
  mend_checksum (block);
  BwEdid *edid = bw_edid_parse (block, BLOCK, &error);
  if (edid == NULL)
    g_error ("%s", error->message);
  return edid;
}

/* Byte 0x23..0x25 of the block, 0x06..0x0b of an established timings III descriptor. */
static void
test_established_codes (void)
{
  static const char *const options[] = { "--list-established-timings", NULL };
  g_autofree char *out = run_edid_decode (options, NULL, 0);
  g_autoptr (GMatchInfo)
      match = match_all (out,
                         "^Byte 0x(?<byte>..), Bit (?<bit>\\d): +(?:DMT 0x(?<dmt>..)|\\w+) *: +"
                         "(?<w>\\d+)x(?<h>\\d+)(?<i>i?) +(?<hz>[\\d.]+) Hz");
  guint n = 0;
  for (; g_match_info_matches (match); g_match_info_next (match, NULL), n++)
    {
      g_autofree guint8 *block = bare_block ();
      g_autofree char *byte = g_match_info_fetch_named (match, "byte");
      g_autofree char *dmt = g_match_info_fetch_named (match, "dmt");
      g_autofree char *id = dmt != NULL && *dmt != '\0' ? g_strconcat ("vesa-dmt-", dmt, NULL)
                                                        : NULL;
      guint at = (guint) strtoul (byte, NULL, 16);
      guint8 bit = (guint8) (1u << (guint) group (match, "bit"));
      if (at < 0x20)
        {
          block[54 + 3] = 0xf7;
          block[54 + 5] = 10;
          block[54 + at] = bit;
        }
      else
        block[at] = bit;
      g_autoptr (BwEdid) edid = parse_bare (block);
      assert_lists_one (edid, id, match);
    }
  g_assert_cmpuint (n, ==, 17 + 44);
}

static void
test_standard_codes (void)
{
  static const char *const options[] = { "--list-dmts", NULL };
  g_autofree char *out = run_edid_decode (options, NULL, 0);
  g_autoptr (GMatchInfo)
      match = match_all (out,
                         "^DMT 0x(?<dmt>..): +(?<w>\\d+)x(?<h>\\d+)(?<i>i?) +(?<hz>[\\d.]+) Hz.*"
                         "STD: 0x(?<a>..) 0x(?<b>..)");
  guint n = 0;
  for (; g_match_info_matches (match); g_match_info_next (match, NULL), n++)
    {
      g_autofree guint8 *block = bare_block ();
      g_autofree char *dmt = g_match_info_fetch_named (match, "dmt");
      g_autofree char *a = g_match_info_fetch_named (match, "a");
      g_autofree char *b = g_match_info_fetch_named (match, "b");
      g_autofree char *id = g_strconcat ("vesa-dmt-", dmt, NULL);
      block[38] = (guint8) strtoul (a, NULL, 16);
      block[39] = (guint8) strtoul (b, NULL, 16);
      g_autoptr (BwEdid) edid = parse_bare (block);
      assert_lists_one (edid, id, match);
    }
  g_assert_cmpuint (n, ==, 49);
}

/* Every short video descriptor that is not reserved, 31 to a data block: its VIC, and whether it
 * is marked as native. What edid-decode calls unknown it still prints the VIC of. */
static void
test_video_descriptors (void)
{
  static const char *const options[] = { "-s", "--skip-sha", NULL };
  guint seen = 0;
  for (guint first = 1; first < 254; first += 31)
    {
      g_autofree guint8 *base = bare_block ();
      guint8 bytes[2 * BLOCK] = { 0 };
      guint8 *cta = bytes + BLOCK;
      guint n = 0;
      for (guint code = first; code < MIN (first + 31, 254); code++)
        if (code != 128)
          cta[5 + n++] = (guint8) code;
      cta[0] = 2;
      cta[1] = 3;
      cta[2] = (guint8) (5 + n);
      cta[4] = (guint8) (2 << 5 | n);
      base[126] = 1;
      mend_checksum (base);
      mend_checksum (cta);
      memcpy (bytes, base, BLOCK);
      g_autoptr (BwEdid) edid = bw_edid_parse (bytes, sizeof bytes, NULL);
      g_autofree char *out = run_edid_decode (options, bytes, sizeof bytes);
      g_autoptr (GMatchInfo) match = match_all (
          out, "^    (?:Unknown \\(VIC|VIC) +(?<vic>\\d+)[:)].*?(?<native>\\(native\\))?$");
      g_assert_nonnull (edid);
      for (guint i = 0; g_match_info_matches (match); g_match_info_next (match, NULL), i++)
        {
          const BwEdidMode *mode = i < edid->modes->len ? bw_edid_mode (edid, i) : NULL;
          g_assert_true (mode != NULL && mode->vic == (int) group (match, "vic"));
          g_assert_true (mode != NULL && mode->native == has_group (match, "native", "(native)"));
          seen++;
        }
    }
  g_assert_cmpuint (seen, ==, 253 - 1);
}

/* Mode lines */

/* edid-decode prints half of the blanking of interlaced timings (its long listing is right), and
 * differs from three other tables in the two named; tests/reference/edid-decode-differences.tsv
 * tells more. DMT 0x57 and 0x58 are not in the catalogue. */
static gboolean
is_compared (const BwRaster *raster)
{
  static const char *const differ[] = { "vesa-dmt-43", "vesa-dmt-4b", NULL };
  return g_str_has_prefix (raster->id, "vesa-dmt-") && raster->scan == BW_SCAN_PROGRESSIVE
         && !g_strv_contains (differ, raster->id);
}

static void
assert_same_raster (const BwRaster *read, const BwRaster *raster)
{
  double error_hz = bw_ratio_to_double (read->pixel_clock_hz)
                    - bw_ratio_to_double (raster->pixel_clock_hz);
  const BwFieldTiming *a = &read->field[0];
  const BwFieldTiming *b = &raster->field[0];

  g_assert_cmpfloat (fabs (error_hz), <=, PRINTED_CLOCK_STEP_HZ / 2);
  g_assert_cmpint (read->h_active, ==, raster->h_active);
  g_assert_cmpint (read->h_front_porch, ==, raster->h_front_porch + raster->h_border);
  g_assert_cmpint (read->h_sync, ==, raster->h_sync);
  g_assert_cmpint (read->h_back_porch, ==, raster->h_back_porch + raster->h_border);
  g_assert_cmpint (a->active, ==, b->active);
  g_assert_cmpint (a->front_porch, ==, b->front_porch + 2 * raster->v_border);
  g_assert_cmpint (a->sync, ==, b->sync);
  g_assert_cmpint (a->back_porch, ==, b->back_porch + 2 * raster->v_border);
  g_assert_cmpuint (read->h_polarity, ==, raster->h_polarity);
  g_assert_cmpuint (read->v_polarity, ==, raster->v_polarity);
}

static void
test_printed_modelines (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  guint n = 0;
  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      g_autoptr (GError) error = NULL;
      if (!is_compared (raster))
        continue;
      g_autofree char *dmt = g_strconcat ("0x", raster->id + strlen ("vesa-dmt-"), NULL);
      const char *const options[] = { "-X", "--dmt", dmt, NULL };
      g_autofree char *out = run_edid_decode (options, NULL, 0);
      const char *line = strstr (out, "Modeline");
      g_assert_nonnull (line);
      g_autoptr (BwRaster) read = bw_modeline_parse (line != NULL ? line : "", &error);
      g_assert_no_error (error);
      if (read != NULL)
        assert_same_raster (read, raster);
      n++;
    }
  g_test_message ("%u printed mode lines equal the catalogue", n);
  g_assert_cmpuint (n, >=, 80);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  g_test_add_func ("/edid-decode/every-timing", test_every_timing);
  for (guint i = 0; i < G_N_ELEMENTS (faulty); i++)
    {
      g_autofree char *path = g_strconcat ("/edid-decode/faulty/", faulty[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_faulty);
    }
  g_test_add_func ("/edid-decode/demo", test_demo);
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      g_autofree char *path = g_strconcat ("/edid-decode/monitor/", monitor->id, NULL);
      gboolean rgb = FALSE;
      for (guint j = 0; j < monitor->inputs->len; j++)
        rgb |= (bw_monitor_input (monitor, j)->signals & BW_BIT (BW_SIGNAL_RGB)) != 0;
      if (rgb) /* the others are refused: see test_interchange-edid-write.c */
        g_test_add_data_func (path, monitor, test_monitor);
    }
  g_test_add_func ("/edid-decode/variants", test_variants);
  g_test_add_func ("/edid-decode/established-codes", test_established_codes);
  g_test_add_func ("/edid-decode/standard-codes", test_standard_codes);
  g_test_add_func ("/edid-decode/video-descriptors", test_video_descriptors);
  g_test_add_func ("/edid-decode/mode-lines", test_printed_modelines);
  return g_test_run ();
}
