/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A monitor made of an EDID, and the displays that a system lists. That the EDID itself is read rightly
 * is for test_interchange-edid-decode.c. */
#include "core/interchange/displays.h"

#include <math.h>
#include <string.h>

#include <glib/gstdio.h>

#include "support.h"

#define BLOCK BW_EDID_BLOCK_BYTES
#define RANGE (54 + 2 * BW_EDID_DETAILED_BYTES)

static void
mend_checksum (guint8 *block)
{
  guint sum = 0;
  for (gsize i = 0; i < BLOCK - 1; i++)
    sum += block[i];
  block[BLOCK - 1] = (guint8) (256 - sum % 256);
}

static void
write_demo (guint8 *block)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, NULL, NULL));
}

static BwSheet *
sheet_of (guint8 *block, GPtrArray *notes, GError **error)
{
  mend_checksum (block);
  g_autoptr (BwEdid) edid = bw_edid_parse (block, BLOCK, error);
  return edid != NULL ? bw_edid_to_sheet (edid, bw_test_catalogue (), notes, error) : NULL;
}

static gboolean
says (const GPtrArray *notes, const char *words)
{
  for (guint i = 0; i < notes->len; i++)
    if (strstr (notes->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

/* The demonstration's monitor through its own EDID: what a block can say comes back, in the steps in
 * which a block says it (VESA E-EDID: whole centimetres, kilohertz and hertz). */
static void
test_there_and_back (void)
{
  guint8 block[BLOCK];
  g_autoptr (BwSheet) demo = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;

  write_demo (block);
  g_autoptr (BwSheet) sheet = sheet_of (block, notes, &error);
  g_assert_no_error (error);
  const BwMonitor *monitor = sheet->monitor;
  const BwInput *input = bw_monitor_input (monitor, 0);

  g_assert_cmpstr (monitor->name, ==, "Foyer monitor");
  g_assert_cmpstr (sheet->title, ==, "Foyer monitor");
  g_assert_true (g_str_has_prefix (monitor->source, "EDID"));
  g_assert_true (bw_near (monitor->line_rates_hz.at[0].low, 15e3, 1e-6));
  g_assert_true (bw_near (monitor->line_rates_hz.at[0].high, 34e3, 1e-6));
  g_assert_true (bw_near (monitor->field_rates_hz.at[0].low, 48, 1e-6));
  g_assert_true (bw_near (monitor->field_rates_hz.at[0].high, 62, 1e-6));
  g_assert_true (bw_near (monitor->diagonal_m, demo->monitor->diagonal_m, 0.01));
  g_assert_cmpint (monitor->aspect.num, ==, 4);
  g_assert_cmpint (monitor->aspect.den, ==, 3);
  g_assert_cmpuint (monitor->inputs->len, ==, 1);
  g_assert_true (bw_near (input->video_v.at[0].low, 0.6, 1e-9)); /* the class, at 0.7 V */
  g_assert_cmpuint (input->connectors, ==, BW_BIT (BW_CONNECTOR_DE_15));
  g_assert_true (monitor->bandwidth_hz <= 0 && monitor->pitch_m <= 0 && monitor->mains_v.n == 0);
  g_assert_cmpuint (sheet->rasters->len, ==, 2);
  g_assert_true (says (notes, "mains, mask, pitch"));
}

/* A range that leaves out a raster which the block lists itself is widened, and that is said; one that has all
 * of them is not. Bytes 5 to 8 of range limits are the least and most field rate and line rate in Hz and kHz
 * (VESA E-EDID); the block lists 720×576 at 50 Hz, 31.25 kHz, and 640×480 at 60 Hz, 31.47 kHz. */
static void
test_widened (void)
{
  static const struct
  {
    int byte;
    guint8 states;
    const char *says;
  } cases[] = {
    { 5, 48, NULL }, { 5, 55, "Field rates: what is listed reaches beyond" },
    { 6, 62, NULL }, { 6, 55, "Field rates: what is listed reaches beyond" },
    { 7, 15, NULL }, { 7, 33, "Line rates: what is listed reaches beyond" },
    { 8, 34, NULL }, { 8, 20, "Line rates: what is listed reaches beyond" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint8 block[BLOCK];
      g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
      write_demo (block);
      block[RANGE + cases[i].byte] = cases[i].states;
      g_autoptr (BwSheet) sheet = sheet_of (block, notes, NULL);
      g_assert_nonnull (sheet);
      g_assert_cmpint (says (notes, "reaches beyond"), ==, cases[i].says != NULL);
      g_assert_true (cases[i].says == NULL || says (notes, cases[i].says));
      const BwRange lines_hz = sheet->monitor->line_rates_hz.at[0], fields_hz = sheet->monitor->field_rates_hz.at[0];
      g_assert_true (lines_hz.low <= 31.25e3 && lines_hz.high >= 31.4e3);
      g_assert_true (fields_hz.low <= 50 && fields_hz.high >= 59.9);
    }
}

/* Byte 4 of range limits adds 255 to rates that a byte cannot hold (VESA E-EDID 1.4, display range limits): bit 1 to
 * the greatest field rate, bits 1 and 0 to both; bit 3 to the greatest line rate, bits 3 and 2 to both. */
static void
test_range_offsets (void)
{
  static const struct
  {
    guint8 adds;
    double field_low, field_high, line_low, line_high;
  } cases[] = {
    { 0x0, 48, 62, 15e3, 34e3 },   { 0x2, 48, 317, 15e3, 34e3 },    { 0x3, 303, 317, 15e3, 34e3 },
    { 0x8, 48, 62, 15e3, 289e3 },  { 0xc, 48, 62, 270e3, 289e3 },   { 0xa, 48, 317, 15e3, 289e3 },
    { 0xb, 303, 317, 15e3, 289e3 }, { 0xe, 48, 317, 270e3, 289e3 }, { 0xf, 303, 317, 270e3, 289e3 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint8 block[BLOCK];
      write_demo (block);
      block[19] = 4; /* revision; before it the byte says nothing */
      block[RANGE + 4] = cases[i].adds;
      mend_checksum (block);
      g_autoptr (BwEdid) edid = bw_edid_parse (block, BLOCK, NULL);
      g_assert_nonnull (edid);
      g_assert_cmpfloat_with_epsilon (edid->field_rate_hz.low, cases[i].field_low, 1e-9);
      g_assert_cmpfloat_with_epsilon (edid->field_rate_hz.high, cases[i].field_high, 1e-9);
      g_assert_cmpfloat_with_epsilon (edid->line_rate_hz.low, cases[i].line_low, 1e-9);
      g_assert_cmpfloat_with_epsilon (edid->line_rate_hz.high, cases[i].line_high, 1e-9);
    }
}

/* The sheet can be saved and read again. */
static void
test_saved (void)
{
  guint8 block[BLOCK];
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  write_demo (block);
  g_autoptr (BwSheet) sheet = sheet_of (block, NULL, NULL);
  g_autofree char *text = bw_sheet_to_text (sheet, bw_test_catalogue ());
  g_autoptr (BwSheet) again = bw_sheet_parse (text, strlen (text), "again", bw_test_catalogue (),
                                              faults);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_cmpuint (again->rasters->len, ==, 2);
}

/* The shortest blanking of all rasters that are listed is what the retrace must fit in. */
static void
test_retrace (void)
{
  guint8 block[BLOCK];
  g_autoptr (BwEdid) edid = NULL;
  double line_s = 1, field_s = 1;

  write_demo (block);
  edid = bw_edid_parse (block, BLOCK, NULL);
  g_autoptr (BwSheet) sheet = sheet_of (block, NULL, NULL);
  for (guint i = 0; i < edid->timings->len + edid->modes->len; i++)
    {
      BwRasterFigures f;
      const BwRaster *raster = i < edid->timings->len
                                   ? bw_edid_timing (edid, i)->raster
                                   : bw_catalogue_raster (
                                         bw_test_catalogue (),
                                         bw_edid_mode (edid, i - edid->timings->len)->id);
      bw_raster_figures (raster, &f);
      line_s = MIN (line_s, f.h_blanking_s);
      field_s = MIN (field_s, f.v_blanking_s);
    }
  g_assert_true (bw_near (sheet->monitor->line_retrace_s, line_s, 1e-12));
  g_assert_true (bw_near (sheet->monitor->field_retrace_s, field_s, 1e-12));
}

/* Without range limits the bands are those of what is listed, in whole steps. */
static void
test_no_limits (void)
{
  guint8 block[BLOCK];
  BwRange lines = { 0, 0 };

  write_demo (block);
  memset (block + RANGE, 0, BW_EDID_DETAILED_BYTES);
  block[RANGE + 3] = 0x10; /* a dummy descriptor */
  memset (block + 35, 0, 3);
  memset (block + 38, 1, 16);
  g_autoptr (BwSheet) sheet = sheet_of (block, NULL, NULL);
  for (guint i = 0; i < sheet->rasters->len; i++)
    {
      BwRasterFigures f;
      bw_raster_figures (sheet->rasters->pdata[i], &f);
      lines.low = i == 0 ? f.line_rate_hz : MIN (lines.low, f.line_rate_hz);
      lines.high = MAX (lines.high, f.line_rate_hz);
    }
  g_assert_true (bw_near (sheet->monitor->line_rates_hz.at[0].low, floor (lines.low / 1e3) * 1e3, 1));
  g_assert_true (bw_near (sheet->monitor->line_rates_hz.at[0].high, ceil (lines.high / 1e3) * 1e3, 1));
}

/* Nor a raster: nothing can be made of it. */
static void
test_nothing_stated (void)
{
  guint8 block[BLOCK];
  g_autoptr (GError) error = NULL;

  write_demo (block);
  for (int i = 0; i < 4; i++)
    {
      memset (block + 54 + i * BW_EDID_DETAILED_BYTES, 0, BW_EDID_DETAILED_BYTES);
      block[54 + i * BW_EDID_DETAILED_BYTES + 3] = 0x10;
    }
  memset (block + 35, 0, 3);
  memset (block + 38, 1, 16);
  g_autoptr (BwSheet) sheet = sheet_of (block, NULL, &error);
  g_assert_null (sheet);
  g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_MONITOR);
}

/* Sizes in centimetres of usual screens, and of one that is none of them. */
static void
test_sizes (void)
{
  static const struct
  {
    guint8 width_cm;
    guint8 height_cm;
    int num;
    int den;
  } sizes[] = { { 32, 24, 4, 3 }, { 40, 30, 4, 3 },  { 34, 27, 5, 4 },
                { 53, 30, 16, 9 }, { 47, 29, 16, 10 }, { 30, 10, 3, 1 } };
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      guint8 block[BLOCK];
      write_demo (block);
      block[21] = sizes[i].width_cm;
      block[22] = sizes[i].height_cm;
      g_autoptr (BwSheet) sheet = sheet_of (block, NULL, NULL);
      g_assert_cmpint (sheet->monitor->aspect.num, ==, sizes[i].num);
      g_assert_cmpint (sheet->monitor->aspect.den, ==, sizes[i].den);
      g_assert_true (bw_near (sheet->monitor->diagonal_m, /* to a tenth of an inch */
                              hypot (sizes[i].width_cm, sizes[i].height_cm) / 100, 1.28e-3));
    }
}

/* A digital input is no kind that a sheet has, which is said. */
static void
test_digital (void)
{
  guint8 block[BLOCK];
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  write_demo (block);
  block[20] = 0x80;
  g_autoptr (BwSheet) sheet = sheet_of (block, notes, NULL);
  g_assert_nonnull (sheet);
  g_assert_true (says (notes, "digital"));
}

static void
put_display (const char *folder, const char *name, const void *bytes, gsize length)
{
  g_autofree char *below = g_build_filename (folder, name, NULL);
  g_autofree char *path = g_build_filename (below, "edid", NULL);
  g_assert_cmpint (g_mkdir (below, 0700), ==, 0);
  if (bytes != NULL)
    g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
}

/* As Linux lays it out: a folder for each connector, with an empty file where nothing is joined. */
static void
test_list (void)
{
  guint8 block[BLOCK];
  char *folder = g_dir_make_tmp ("breezeway-displays-XXXXXX", NULL);
  write_demo (block);
  put_display (folder, "card0-VGA-1", block, BLOCK);
  put_display (folder, "card0-DP-2", "", 0);
  put_display (folder, "card0-DP-1", block, BLOCK);
  put_display (folder, "version", NULL, 0);
  g_autoptr (GPtrArray) displays = bw_displays_list (folder);
  g_assert_cmpuint (displays->len, ==, 2);
  g_assert_cmpstr (bw_display_at (displays, 0)->name, ==, "card0-DP-1");
  g_assert_cmpstr (bw_display_at (displays, 1)->name, ==, "card0-VGA-1");
  g_autoptr (BwEdid) edid = bw_edid_load (bw_display_at (displays, 1)->path, NULL);
  g_assert_cmpstr (edid->name, ==, "Foyer monitor");
  bw_test_folder_remove (folder);

  g_autoptr (GPtrArray) none = bw_displays_list ("/no/such/folder");
  g_assert_cmpuint (none->len, ==, 0);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/displays/there-and-back", test_there_and_back);
  g_test_add_func ("/displays/range-offsets", test_range_offsets);
  g_test_add_func ("/displays/widened", test_widened);
  g_test_add_func ("/displays/saved", test_saved);
  g_test_add_func ("/displays/retrace", test_retrace);
  g_test_add_func ("/displays/no-limits", test_no_limits);
  g_test_add_func ("/displays/nothing-stated", test_nothing_stated);
  g_test_add_func ("/displays/sizes", test_sizes);
  g_test_add_func ("/displays/digital", test_digital);
  g_test_add_func ("/displays/list", test_list);
  return g_test_run ();
}
