/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Mode lines, as xorg.conf(5) of the X.Org server 21.1 describes them under ModeLine. */
#include "core/interchange/interchange.h"

#include <math.h>
#include <string.h>

#include "support.h"

#define CLOCK_STEP_HZ 1.0 /* a mode line has six decimals of a megahertz */

static BwRaster *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  BwRaster *raster = bw_modeline_parse (text, &error);
  if (raster == NULL)
    g_error ("%s: %s", text, error->message);
  return raster;
}

static char *
format (const BwRaster *raster)
{
  g_autoptr (GError) error = NULL;
  char *text = bw_modeline_format (raster, &error);
  if (text == NULL)
    g_error ("%s: %s", raster->id, error->message);
  return text;
}

static void
assert_fields (const BwRaster *raster, const BwFieldTiming *one, const BwFieldTiming *two)
{
  g_assert_cmpmem (&raster->field[0], sizeof (BwFieldTiming), one, sizeof (BwFieldTiming));
  g_assert_cmpmem (&raster->field[1], sizeof (BwFieldTiming), two, sizeof (BwFieldTiming));
}

/* Mode lines written by others, and the catalogue's raster of the same standard. */

typedef struct
{
  const char *id;
  const char *text;
} Known;

/* Source: the tables edid_cea_modes_1 and drm_dmt_modes of Linux 6.12 (drivers/gpu/drm/drm_edid.c),
 * which count lines of the frame as mode lines do. VIC 6 and 21 stand there with half the pixels
 * and clock, since the kernel doubles them; here they are as sent. DMT 0x04 is the mode line that
 * edid-decode prints for it, with the borders in the porches. */
static const Known known[] = {
  { "cta-861-vic-5", "ModeLine \"1920x1080i\" 74.25 1920 2008 2052 2200 1080 1084 1094 1125 "
                     "+hsync +vsync interlace" },
  { "cta-861-vic-20", "ModeLine \"1920x1080i\" 74.25 1920 2448 2492 2640 1080 1084 1094 1125 "
                      "+hsync +vsync interlace" },
  { "cta-861-vic-39",
    "ModeLine \"1920x1080i\" 72 1920 1952 2120 2304 1080 1126 1136 1250 +hsync -vsync interlace" },
  { "cta-861-vic-6",
    "ModeLine \"1440x480i\" 27 1440 1478 1602 1716 480 488 494 525 -hsync -vsync interlace" },
  { "cta-861-vic-21",
    "ModeLine \"1440x576i\" 27 1440 1464 1590 1728 576 580 586 625 -hsync -vsync interlace" },
  { "vesa-dmt-0f",
    "ModeLine \"1024x768i\" 44.9 1024 1032 1208 1264 768 768 776 817 +hsync +vsync interlace" },
  { "cta-861-vic-16", "\"1920x1080\" 148.5 1920 2008 2052 2200 1080 1084 1089 1125 +HSync +VSync" },
  { "vesa-dmt-10", "\"1024x768\" 65 1024 1048 1184 1344 768 771 777 806 -hsync -vsync" },
  { "vesa-dmt-04",
    "Modeline \"640x480_59.94\" 25.175  640 656 752 800  480 490 492 525  -HSync -VSync" },
};

static void
test_known (gconstpointer data)
{
  const Known *line = data;
  const BwRaster *expected = bw_test_raster (line->id);
  g_autoptr (BwRaster) raster = parse (line->text);
  BwFieldTiming fields[2] = { expected->field[0], expected->field[1] };

  for (int i = 0; i < 2; i++)
    {
      fields[i].front_porch += 2 * expected->v_border;
      fields[i].back_porch += 2 * expected->v_border;
    }
  g_assert_cmpint (bw_ratio_compare (raster->pixel_clock_hz, expected->pixel_clock_hz), ==, 0);
  g_assert_cmpint (bw_ratio_compare (raster->line_rate_hz, expected->line_rate_hz), ==, 0);
  g_assert_cmpint (raster->h_active, ==, expected->h_active);
  g_assert_cmpint (raster->h_front_porch, ==, expected->h_front_porch + expected->h_border);
  g_assert_cmpint (raster->h_sync, ==, expected->h_sync);
  g_assert_cmpint (raster->h_back_porch, ==, expected->h_back_porch + expected->h_border);
  g_assert_cmpuint (raster->scan, ==, expected->scan);
  g_assert_cmpuint (raster->h_polarity, ==, expected->h_polarity);
  g_assert_cmpuint (raster->v_polarity, ==, expected->v_polarity);
  assert_fields (raster, &fields[0], &fields[1]);
}

/* Mode line -> raster -> mode line */

/* Source: SMPTE 274M and 296M timing as CTA-861 gives it with bi-level sync: the pulse begins where
 * the tri-level pulse crosses zero. */
static const char *const trilevel_pairs[][2] = {
  { "750-50-progressive", "cta-861-vic-19" },
  { "750-59.94-progressive", "cta-861-vic-4-59.94" },
  { "750-60-progressive", "cta-861-vic-4" },
  { "1125-50-interlaced", "cta-861-vic-20" },
  { "1125-59.94-interlaced", "cta-861-vic-5-59.94" },
  { "1125-60-interlaced", "cta-861-vic-5" },
  { "1125-50-progressive", "cta-861-vic-31" },
  { "1125-59.94-progressive", "cta-861-vic-16-59.94" },
  { "1125-60-progressive", "cta-861-vic-16" },
};

/* What a mode line has no place for, and in how many entries of the catalogue it is lost. */
typedef struct
{
  guint entries;
  guint borders;
  guint repeated;
  guint trilevel;
  guint rounded;
} Losses;

static void
count_losses (const BwRaster *raster, Losses *losses)
{
  losses->entries++;
  losses->borders += raster->h_border > 0 || raster->v_border > 0;
  losses->repeated += raster->pixel_repeat > 1;
  losses->trilevel += raster->sync_shape == BW_SHAPE_TRILEVEL;
  losses->rounded += raster->pixel_clock_hz.den != 1;
}

/* The clock survives to the hertz: only those of pairs 1000/1001 are no whole hertz. */
static void
assert_clock_kept (const BwRaster *before, const BwRaster *after)
{
  double error_hz = fabs (bw_ratio_to_double (after->pixel_clock_hz)
                          - bw_ratio_to_double (before->pixel_clock_hz));
  if (before->pixel_clock_hz.den == 1)
    g_assert_cmpint (bw_ratio_compare (before->pixel_clock_hz, after->pixel_clock_hz), ==, 0);
  else
    {
      g_assert_cmpint (1001 % before->pixel_clock_hz.den, ==, 0);
      g_assert_cmpint (bw_ratio_compare (before->pixel_clock_hz, after->pixel_clock_hz), !=, 0);
    }
  g_assert_cmpfloat (error_hz, <=, CLOCK_STEP_HZ / 2);
}

static void
assert_rest_lost (const BwRaster *before, const BwRaster *after)
{
  BwFieldTiming fields[2] = { before->field[0], before->field[1] };
  int negative_half = before->sync_shape == BW_SHAPE_TRILEVEL ? before->h_sync / 2 : 0;

  for (int i = 0; i < 2; i++)
    {
      fields[i].front_porch += 2 * before->v_border;
      fields[i].back_porch += 2 * before->v_border;
    }
  assert_fields (after, &fields[0], &fields[1]);
  g_assert_cmpint (after->h_active, ==, before->h_active);
  g_assert_cmpint (after->h_front_porch, ==,
                   before->h_front_porch + before->h_border + negative_half);
  g_assert_cmpint (after->h_sync, ==, before->h_sync - negative_half);
  g_assert_cmpint (bw_raster_h_total (after), ==, bw_raster_h_total (before));
  g_assert_cmpint (after->h_border, ==, 0);
  g_assert_cmpint (after->v_border, ==, 0);
  g_assert_cmpint (after->pixel_repeat, ==, 1);
  g_assert_cmpuint (after->sync_shape, ==, BW_SHAPE_BILEVEL);
  g_assert_cmpuint (after->scan, ==, before->scan);
  g_assert_cmpuint (after->h_polarity, ==, before->h_polarity);
  g_assert_cmpuint (after->v_polarity, ==, before->v_polarity);
  g_assert_cmpstr (after->id, ==, before->id);
}

static void
test_round_trip (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  Losses losses = { 0 };

  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      if (bw_ratio_is_none (raster->pixel_clock_hz))
        continue;
      g_autofree char *text = format (raster);
      g_autoptr (BwRaster) again = parse (text);
      g_autofree char *text_again = format (again);
      g_assert_cmpstr (text, ==, text_again);
      assert_clock_kept (raster, again);
      assert_rest_lost (raster, again);
      count_losses (raster, &losses);
    }
  g_test_message ("%u entries; borders folded in %u, repeated pixels lost in %u, tri-level sync in "
                  "%u, clock rounded in %u",
                  losses.entries, losses.borders, losses.repeated, losses.trilevel, losses.rounded);
  g_assert_cmpuint (losses.entries, >=, 240);
  g_assert_cmpuint (losses.borders, ==, 2); /* DMT 0x04 and 0x05 */
  g_assert_cmpuint (losses.trilevel, ==, G_N_ELEMENTS (trilevel_pairs));
  g_assert_cmpuint (losses.repeated, >, 0);
  g_assert_cmpuint (losses.rounded, >, 0);
}

/* What is written of two rasters is the same but for the name. */
static void
assert_same_line (const char *one, const char *two)
{
  g_autofree char *a = format (bw_test_raster (one));
  g_autofree char *b = format (bw_test_raster (two));
  g_assert_cmpstr (strrchr (a, '"'), ==, strrchr (b, '"'));
}

static void
test_trilevel (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (trilevel_pairs); i++)
    assert_same_line (trilevel_pairs[i][0], trilevel_pairs[i][1]);
}

/* Any whole numbers of an interlaced frame come back as they went in, whichever are odd. */
static void
test_interlaced_parity (void)
{
  for (int bits = 0; bits < 16; bits++)
    {
      int active = 480 + (bits & 1);
      int start = active + 6 + (bits >> 1 & 1);
      int end = start + 5 + (bits >> 2 & 1);
      g_autofree char *text = g_strdup_printf (
          "Modeline \"odd-%d\" 13.500 720 739 801 858 %d %d %d %d -HSync -VSync Interlace", bits,
          active, start, end, end + 33 + (bits >> 3 & 1));
      g_autoptr (BwRaster) raster = parse (text);
      g_autofree char *again = format (raster);
      g_assert_cmpstr (text, ==, again);
      g_assert_cmpint (bw_raster_half_lines (raster), ==, 2 * (end + 33 + (bits >> 3 & 1)));
    }
}

/* Borders of each field become lines of the frame in both porches. */
static void
test_interlaced_borders (void)
{
  g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster ("cta-861-vic-5"));
  raster->h_border = 8;
  raster->v_border = 3;
  g_autofree char *text = format (raster);
  bw_test_assert_words (text, WORDS (" 1920 2016 2060 2216 1080 1090 1100 1137 "));
}

static void
test_refused (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  guint refused = 0;
  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      g_autoptr (GError) error = NULL;
      if (!bw_ratio_is_none (raster->pixel_clock_hz))
        continue;
      g_assert_null (bw_modeline_format (raster, &error));
      g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_UNWRITABLE);
      bw_test_assert_words (error->message, WORDS (raster->id, "in time alone", "pixel clock"));
      refused++;
    }
  g_assert_cmpuint (refused, >=, 10);
}

/* Rasters that a mode line cannot say. */
static void
test_refused_fields (void)
{
  g_autoptr (BwRaster) uneven = bw_raster_copy (bw_test_raster ("cta-861-vic-5"));
  g_autoptr (BwRaster) half = bw_raster_copy (bw_test_raster ("cta-861-vic-4"));
  g_autoptr (BwRaster) quoted = bw_raster_copy (bw_test_raster ("cta-861-vic-4"));
  g_autoptr (BwRaster) broken = bw_raster_copy (bw_test_raster ("cta-861-vic-4"));
  const BwRaster *const unwritable[] = { uneven, half, quoted };
  g_autoptr (GError) error = NULL;

  uneven->field[1].front_porch += 2;
  uneven->field[1].back_porch -= 2;
  for (int i = 0; i < 2; i++)
    {
      half->field[i].front_porch++;
      half->field[i].back_porch--;
    }
  g_free (quoted->id);
  quoted->id = g_strdup ("a \"wide\" one");
  for (gsize i = 0; i < G_N_ELEMENTS (unwritable); i++)
    {
      g_autoptr (GError) why = NULL;
      g_assert_null (bw_modeline_format (unwritable[i], &why));
      g_assert_error (why, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_UNWRITABLE);
    }
  broken->h_sync = 0;
  g_assert_null (bw_modeline_format (broken, &error));
  g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_RASTER);
}

/* A mode line counts whole lines, half a line more in each porch of the second field of an interlaced
 * raster; each of the eight counts may be what is not so. The sum of the lines stays. */
static void
test_refused_counts (void)
{
  static const struct
  {
    const char *id;
    int field[2][4]; /* added to active, front porch, sync, back porch, in half lines */
  } cases[] = {
    { "cta-861-vic-4", { { 1, -1, 0, 0 }, { 1, -1, 0, 0 } } },
    { "cta-861-vic-4", { { 1, 0, -1, 0 }, { 1, 0, -1, 0 } } },
    { "cta-861-vic-4", { { 1, 0, 0, -1 }, { 1, 0, 0, -1 } } },
    { "cta-861-vic-4", { { 0, 1, 0, -1 }, { 0, 1, 0, -1 } } },
    { "cta-861-vic-4", { { 0, 0, 1, -1 }, { 0, 0, 1, -1 } } },
    { "cta-861-vic-5", { { 0, 0, 0, 0 }, { 2, -2, 0, 0 } } },
    { "cta-861-vic-5", { { 0, 0, 0, 0 }, { 2, 0, 0, -2 } } },
    { "cta-861-vic-5", { { 0, 0, 0, 0 }, { 0, -2, 2, 0 } } },
    { "cta-861-vic-5", { { 0, 0, 0, 0 }, { 0, 0, 2, -2 } } },
    { "cta-861-vic-5", { { 0, 0, 0, 0 }, { 0, 1, 0, -1 } } },
    { "cta-861-vic-5", { { 0, 0, 0, 0 }, { 0, -1, 0, 1 } } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster (cases[i].id));
      g_autoptr (GError) error = NULL;
      guint8 bytes[BW_EDID_DETAILED_BYTES];
      for (int j = 0; j < 2; j++)
        {
          raster->field[j].active += cases[i].field[j][0];
          raster->field[j].front_porch += cases[i].field[j][1];
          raster->field[j].sync += cases[i].field[j][2];
          raster->field[j].back_porch += cases[i].field[j][3];
        }
      g_assert_null (bw_modeline_format (raster, &error));
      g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_UNWRITABLE);
      g_clear_error (&error);
      g_assert_false (bw_edid_detailed_from_raster (raster, bytes, &error));
      g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_UNWRITABLE);
    }
}

/* Flags, names, numbers */

static void
test_flags (void)
{
  g_autoptr (BwRaster) noted = parse ("MODELINE \"a b/c\" 25.2 640 656 752 800 480 490 492 525 "
                                      "+CSync Composite HSkew 3 VScan 1 -HSYNC -vsync # end");
  g_autoptr (BwRaster) doubled = parse (
      "# 320x240\n\n\"q\" 12.6 320 328 376 400 240 245 246 262 DoubleScan\n");

  g_assert_cmpstr (noted->name, ==, "a b/c");
  g_assert_cmpstr (noted->id, ==, "a-b-c");
  bw_test_assert_words (noted->note, WORDS ("composite sync", "positive", "hskew 3"));
  g_assert_null (strstr (noted->note, "negative"));
  g_assert_cmpint (doubled->field[0].active, ==, 2 * 480);
  g_assert_cmpint (bw_raster_half_lines (doubled), ==, 4 * 524);
  bw_test_assert_words (doubled->note, WORDS ("doublescan", "negative is taken"));
}

static void
test_exact_clock (void)
{
  g_autoptr (BwRaster) raster = parse (
      "\"x\" 74.175824175 1280 1390 1430 1650 720 725 730 750 +hsync +vsync");
  BwRatio expected;
  g_assert_true (bw_ratio_make (74175824175, 1000, &expected));
  g_assert_cmpint (bw_ratio_compare (raster->pixel_clock_hz, expected), ==, 0);
  g_assert_cmpstr (raster->note, ==, "");
}

/* What a mode line does not say of its polarities is taken for negative, and the note says so; what it says stays. */
static void
test_half_stated_polarity (void)
{
  static const struct
  {
    const char *flags;
    guint h, v;
    gboolean noted;
  } cases[] = {
    { "", BW_POLARITY_NEGATIVE, BW_POLARITY_NEGATIVE, TRUE },
    { "+hsync", BW_POLARITY_POSITIVE, BW_POLARITY_NEGATIVE, TRUE },
    { "+vsync", BW_POLARITY_NEGATIVE, BW_POLARITY_POSITIVE, TRUE },
    { "-hsync", BW_POLARITY_NEGATIVE, BW_POLARITY_NEGATIVE, TRUE },
    { "-vsync", BW_POLARITY_NEGATIVE, BW_POLARITY_NEGATIVE, TRUE },
    { "+hsync -vsync", BW_POLARITY_POSITIVE, BW_POLARITY_NEGATIVE, FALSE },
    { "-hsync +vsync", BW_POLARITY_NEGATIVE, BW_POLARITY_POSITIVE, FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = g_strconcat ("\"x\" 25.175 640 656 752 800 480 490 492 525 ", cases[i].flags,
                                           NULL);
      g_autoptr (BwRaster) raster = parse (text);
      g_assert_cmpint (raster->h_polarity, ==, cases[i].h);
      g_assert_cmpint (raster->v_polarity, ==, cases[i].v);
      g_assert_cmpint (strstr (raster->note, "negative is taken") != NULL, ==, cases[i].noted);
    }
}

/* The clock may be from 0.001 to 10000 MHz, as its fault says; what is inside may make no raster, but not for its clock. */
static void
test_clock_range (void)
{
  static const struct
  {
    const char *mhz;
    gboolean allowed;
  } cases[] = { { "0.000999", FALSE }, { "0.001", TRUE }, { "0.005", TRUE },
                { "10000", TRUE },     { "10000.1", FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = g_strconcat ("\"x\" ", cases[i].mhz, " 640 656 752 800 480 490 492 525", NULL);
      g_autoptr (BwRaster) raster = bw_modeline_parse (text, &error);
      g_assert_cmpint (g_error_matches (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_NUMBER), ==,
                       !cases[i].allowed);
    }
}

/* Bad text */

typedef struct
{
  const char *text;
  BwInterchangeError code;
  const char *place;
  const char *says;
} Bad;

#define H "640 656 752 800 "
#define V "480 490 492 525 "
#define NUMBERS H V

static const Bad bad[] = {
  { "", BW_INTERCHANGE_ERROR_TEXT, "word 1 is missing", "name" },
  { "  \n\t ", BW_INTERCHANGE_ERROR_TEXT, "word 1 is missing", "name" },
  { "# only a comment", BW_INTERCHANGE_ERROR_TEXT, "word 1 is missing", "name" },
  { "Modeline", BW_INTERCHANGE_ERROR_TEXT, "word 2 is missing", "name" },
  { "Modeline 640x480 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 2 (“640x480”)",
    "quotation" },
  { "640x480 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1 (“640x480”)", "quotation" },
  { "\"Modeline\" \"x\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“x”)", "MHz" },
  { "Mode \"x\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1 (“Mode”)", "name" },
  { "\"x 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1", "not closed" },
  { "\"x\n\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1", "not closed" },
  { "\"x\" 25.2 " NUMBERS "\"", BW_INTERCHANGE_ERROR_TEXT, "word 11", "not closed" },
  { "\"\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1 (“”)", "empty" },
  { "\"a\tb\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1", "control" },
  { "\"a\xc2\x9b" "31mb\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1", "U+009B" },
  { "\"a\u202eb\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "word 1", "U+202E" },
  { "\"\xff\" 25.2 " NUMBERS, BW_INTERCHANGE_ERROR_TEXT, "byte 2", "UTF-8" },
  { "\"x\"", BW_INTERCHANGE_ERROR_NUMBER, "word 2 is missing", "MHz" },
  { "\"x\" " NUMBERS, BW_INTERCHANGE_ERROR_ORDER, "word 6 (“480”)", "htotal" },
  { "\"x\" 0 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“0”)", "0.001 to 10000" },
  { "\"x\" 0.0001 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“0.0001”)", "0.001" },
  { "\"x\" 10000.1 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“10000.1”)", "10000" },
  { "\"x\" 100000 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“100000”)", "10000" },
  { "\"x\" -25.2 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“-25.2”)", "MHz" },
  { "\"x\" +25.2 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“+25.2”)", "MHz" },
  { "\"x\" 25,2 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“25,2”)", "decimal point" },
  { "\"x\" 25. " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“25.”)", "MHz" },
  { "\"x\" .2 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“.2”)", "MHz" },
  { "\"x\" 25.2.1 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“25.2.1”)", "MHz" },
  { "\"x\" 2.52e1 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“2.52e1”)", "MHz" },
  { "\"x\" 25.2MHz " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“25.2MHz”)", "MHz" },
  { "\"x\" 25.1234567891 " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2", "nine decimals" },
  { "\"x\" \"25.2\" " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“25.2”)", "MHz" },
  { "\"x\" nan " NUMBERS, BW_INTERCHANGE_ERROR_NUMBER, "word 2 (“nan”)", "MHz" },
  { "\"x\" 25.2", BW_INTERCHANGE_ERROR_NUMBER, "word 3 is missing", "hdisp" },
  { "\"x\" 25.2 " H, BW_INTERCHANGE_ERROR_NUMBER, "word 7 is missing", "vdisp" },
  { "\"x\" 25.2 " H "480 490 492", BW_INTERCHANGE_ERROR_NUMBER, "word 10 is missing", "vtotal" },
  { "Modeline \"x\" 25.2 " H "480 490 492 +hsync", BW_INTERCHANGE_ERROR_NUMBER,
    "word 11 (“+hsync”)", "vtotal" },
  { "\"x\" 25.2 640.5 656 752 800 " V, BW_INTERCHANGE_ERROR_NUMBER, "word 3 (“640.5”)", "hdisp" },
  { "\"x\" 25.2 640 656x 752 800 " V, BW_INTERCHANGE_ERROR_NUMBER, "word 4 (“656x”)",
    "hsyncstart" },
  { "\"x\" 25.2 640 656 \"752\" 800 " V, BW_INTERCHANGE_ERROR_NUMBER, "word 5 (“752”)",
    "hsyncend" },
  { "\"x\" 25.2 640 656 752 65536 " V, BW_INTERCHANGE_ERROR_NUMBER, "word 6 (“65536”)", "65535" },
  { "\"x\" 25.2 640 656 752 999999 " V, BW_INTERCHANGE_ERROR_NUMBER, "word 6 (“999999”)",
    "htotal" },
  { "\"x\" 25.2 -640 656 752 800 " V, BW_INTERCHANGE_ERROR_NUMBER, "word 3 (“-640”)", "from 0" },
  { "\"x\" 25.2 0 656 752 800 " V, BW_INTERCHANGE_ERROR_ORDER, "word 3 (“0”)", "at least 1" },
  { "\"x\" 25.2 640 639 752 800 " V, BW_INTERCHANGE_ERROR_ORDER, "word 4 (“639”)", "hdisp" },
  { "\"x\" 25.2 640 656 656 800 " V, BW_INTERCHANGE_ERROR_ORDER, "word 5 (“656”)", "greater" },
  { "\"x\" 25.2 640 656 752 751 " V, BW_INTERCHANGE_ERROR_ORDER, "word 6 (“751”)", "hsyncend" },
  { "\"x\" 25.2 " H "0 490 492 525", BW_INTERCHANGE_ERROR_ORDER, "word 7 (“0”)", "at least 1" },
  { "\"x\" 25.2 " H "480 479 492 525", BW_INTERCHANGE_ERROR_ORDER, "word 8 (“479”)", "vdisp" },
  { "\"x\" 25.2 " H "480 490 490 525", BW_INTERCHANGE_ERROR_ORDER, "word 9 (“490”)", "vsyncstart" },
  { "\"x\" 25.2 " H "480 490 492 491", BW_INTERCHANGE_ERROR_ORDER, "word 10 (“491”)", "vsyncend" },
  { "\"x\" 25.2 " H "480 490 525 525 interlace", BW_INTERCHANGE_ERROR_ORDER, "word 10 (“525”)",
    "odd vtotal" },
  { "\"x\" 25.2 " NUMBERS "hsync", BW_INTERCHANGE_ERROR_FLAG, "word 11 (“hsync”)", "not a flag" },
  { "\"x\" 25.2 " NUMBERS "\"+hsync\"", BW_INTERCHANGE_ERROR_FLAG, "word 11 (“+hsync”)",
    "not a flag" },
  { "\"x\" 25.2 " NUMBERS "-hsync -vsync 60", BW_INTERCHANGE_ERROR_FLAG, "word 13 (“60”)",
    "interlace" },
  { "\"x\" 25.2 " NUMBERS "bcast", BW_INTERCHANGE_ERROR_FLAG, "word 11 (“bcast”)", "not a flag" },
  { "\"x\" 25.2 " NUMBERS "-hsync Modeline", BW_INTERCHANGE_ERROR_FLAG, "word 12 (“Modeline”)",
    "not a flag" },
  { "\"x\" 25.2 " NUMBERS "+hsync -hsync", BW_INTERCHANGE_ERROR_FLAG, "word 12 (“-hsync”)",
    "contradicts" },
  { "\"x\" 25.2 " NUMBERS "-vsync +vsync", BW_INTERCHANGE_ERROR_FLAG, "word 12 (“+vsync”)",
    "contradicts" },
  { "\"x\" 25.2 " NUMBERS "+csync -csync", BW_INTERCHANGE_ERROR_FLAG, "word 12 (“-csync”)",
    "contradicts" },
  { "\"x\" 25.2 " NUMBERS "interlace doublescan", BW_INTERCHANGE_ERROR_FLAG,
    "word 12 (“doublescan”)", "contradicts" },
  { "\"x\" 25.2 " NUMBERS "interlace Interlace", BW_INTERCHANGE_ERROR_FLAG, "word 12 (“Interlace”)",
    "twice" },
  { "\"x\" 25.2 " NUMBERS "hskew", BW_INTERCHANGE_ERROR_NUMBER, "word 12 is missing", "hskew" },
  { "\"x\" 25.2 " NUMBERS "hskew -hsync", BW_INTERCHANGE_ERROR_NUMBER, "word 12 (“-hsync”)",
    "hskew" },
  { "\"x\" 25.2 " NUMBERS "vscan 2", BW_INTERCHANGE_ERROR_FLAG, "word 12 (“2”)", "doublescan" },
  { "\"x\" 25.2 " NUMBERS "vscan x", BW_INTERCHANGE_ERROR_NUMBER, "word 12 (“x”)", "vscan" },
  { "\"x\" 0.1 " NUMBERS, BW_INTERCHANGE_ERROR_RASTER, "words 2 to 10", "line rate" },
  { "\"x\" 2000 " NUMBERS, BW_INTERCHANGE_ERROR_RASTER, "words 2 to 10", "line rate" },
  { "Modeline \"x\" 25.2 " H "1 2 3 4", BW_INTERCHANGE_ERROR_RASTER, "words 3 to 11",
    "field rate" },
  { "\"x\" 25.2 " H "480 490 492 60000", BW_INTERCHANGE_ERROR_RASTER, "words 2 to 10",
    "field rate" },
  { "\"x\" 25.2 " H "1 2 3 525 interlace", BW_INTERCHANGE_ERROR_RASTER, "words 2 to 10",
    "no picture" },
  { "\"x\" 25.2 " H "480 490 492 40000 doublescan", BW_INTERCHANGE_ERROR_NUMBER,
    "word 10 (“40000”)", "65535" },
};

static void
assert_refused (const char *text, BwInterchangeError code, const char *place, const char *says)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = bw_modeline_parse (text, &error);

  g_assert_null (raster);
  g_assert_error (error, BW_INTERCHANGE_ERROR, (int) code);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS ("Mode line", place, says));
}

static void
test_bad (gconstpointer data)
{
  const Bad *line = data;
  assert_refused (line->text, line->code, line->place, line->says);
}

static void
test_too_long (void)
{
  g_autofree char *letters = g_strnfill (BW_MODELINE_MAX_BYTES + 1, 'a');
  GString *words = g_string_new ("\"x\" 25.2 " NUMBERS);

  assert_refused (letters, BW_INTERCHANGE_ERROR_TEXT, "1001 bytes", "1000");
  for (int i = 0; i < 40; i++)
    g_string_append (words, "composite ");
  assert_refused (words->str, BW_INTERCHANGE_ERROR_TEXT, "word 32", "more words");
  g_string_free (words, TRUE);
}

/* Cut short anywhere, or with any byte replaced, a mode line is read or refused with its place. */
static void
test_damaged (void)
{
  static const char whole[] = "Modeline \"a b\" 74.175824 1920 2008 2052 2200 1080 1084 1094 1125 "
                              "+HSync +VSync Interlace HSkew 2 # x";
  static const char others[] = "\"#-+.0x \n\x01\x80";
  guint refused = 0;

  for (gsize i = 0; i < sizeof whole; i++)
    for (gsize j = 0; j < sizeof others; j++)
      {
        g_autofree char *text = g_strdup (whole);
        g_autoptr (GError) error = NULL;
        text[MIN (i, sizeof whole - 2)] = others[j]; /* the last of them ends the text */
        g_autoptr (BwRaster) raster = bw_modeline_parse (text, &error);
        g_assert_true ((raster != NULL) == (error == NULL));
        if (raster != NULL)
          g_assert_true (bw_raster_check (raster, NULL));
        else if (error != NULL && error->domain == BW_INTERCHANGE_ERROR)
          refused++;
        else
          g_test_fail ();
      }
  g_assert_cmpuint (refused, >, 100);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    {
      g_autofree char *path = g_strconcat ("/modeline/known/", known[i].id, NULL);
      g_test_add_data_func (path, &known[i], test_known);
    }
  g_test_add_func ("/modeline/round-trip", test_round_trip);
  g_test_add_func ("/modeline/trilevel", test_trilevel);
  g_test_add_func ("/modeline/interlaced-parity", test_interlaced_parity);
  g_test_add_func ("/modeline/interlaced-borders", test_interlaced_borders);
  g_test_add_func ("/modeline/refused/in-time", test_refused);
  g_test_add_func ("/modeline/refused/fields", test_refused_fields);
  g_test_add_func ("/modeline/refused/counts", test_refused_counts);
  g_test_add_func ("/modeline/flags", test_flags);
  g_test_add_func ("/modeline/exact-clock", test_exact_clock);
  g_test_add_func ("/modeline/half-stated-polarity", test_half_stated_polarity);
  g_test_add_func ("/modeline/clock-range", test_clock_range);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *path = g_strdup_printf ("/modeline/bad/%" G_GSIZE_FORMAT, i + 1);
      g_test_add_data_func (path, &bad[i], test_bad);
    }
  g_test_add_func ("/modeline/bad/too-long", test_too_long);
  g_test_add_func ("/modeline/damaged", test_damaged);
  return g_test_run ();
}
