/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/coupling.h"
#include "core/raster/waveform.h"
#include "draw/levels/view.h"

#include <math.h>
#include <string.h>

#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

static const struct
{
  double width;
  double height;
} sizes[] = { { 600, 400 }, { 1000, 650 }, { 1920, 1080 } };

/* Each signal kind with each sync that it can have, and each colour system. */
static const TestSignal cases[] = {
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_J, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_443, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_60, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_PAL_N, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y },
  { "750-60-progressive", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y },
  { "1125-60-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_SEPARATE },
  { "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE },
  { "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_ON_GREEN },
  { "vesa-dmt-04", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE },
};

static BwLevelsModel *
model_of (guint i, BwContent content, BwBarsForm bars)
{
  return test_levels_model (&cases[i], content, bars);
}

static BwLevelsView
view_of (BwLevelsModel *model, double load_ohm)
{
  return (BwLevelsView){ .model = model,
                         .line = bw_levels_model_picture_line (model),
                         .video = { 75, load_ohm, BW_LOAD_75_OHM },
                         .mark = '.' };
}

static guint
find_case (BwColourSystem system, BwSignal signal)
{
  return test_find_signal (cases, G_N_ELEMENTS (cases), system, signal);
}

static const char *
name_of (guint i)
{
  return bw_kind_id (&bw_signals, cases[i].signal);
}

static void
check_labels (const BwLevelsView *what, const char *name, double width, double height,
              const BwInk *with, guint may_leave)
{
  guint left_out = 0;
  g_autoptr (GArray) labels = test_texts (bw_levels_drawing (what, width, height, with), &left_out);

  test_labels_are_apart (labels, width, height, name);
  test_labels_are_large (labels, with);
  if (left_out > may_leave)
    g_error ("%s at %gx%g: %u left out", name, width, height, left_out);
}

/* At 600x400 the levels in IRE beside their names may go, but never the names. */
static void
test_labels (void)
{
  static const double loads[] = { 0, 75, 37.5, INFINITY };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwLevelsModel) model = model_of (i, BW_CONTENT_BARS, i % BW_N_BARS_FORMS);
      for (guint k = 0; k < G_N_ELEMENTS (loads); k++)
        for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
          {
            BwLevelsView what = view_of (model, loads[k]);
            check_labels (&what, name_of (i), sizes[s].width, sizes[s].height, &ink,
                          s == 0 ? 6 : 1);
            what.span = BW_LEVELS_FIELD;
            what.line = 1;
            if (k == 0 && s == 0)
              check_labels (&what, name_of (i), sizes[s].width, sizes[s].height, &ink, 6);
          }
    }
}

static void
test_labels_on_any_page (void)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 } };
  static const char *const fonts[] = { "Sans 6", "Serif 17", "Sans 40" };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i += 3)
    {
      g_autoptr (BwLevelsModel) model = model_of (i, BW_CONTENT_BARS, BW_BARS_100);
      const BwLevelsView what = view_of (model, INFINITY);
      for (guint f = 0; f < G_N_ELEMENTS (fonts); f++)
        for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
          {
            const BwInk other = { BW_THEME_DARK, fonts[f], 0 };
            check_labels (&what, name_of (i), odd[s][0], odd[s][1], &other, G_MAXUINT);
          }
    }
}

static void
test_labels_of_any_part (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwLevelsModel) model = model_of (i, i % BW_N_CONTENTS, BW_BARS_75);
      for (guint k = 0; k < 10; k++)
        {
          BwLevelsView what = view_of (model, 75);
          guint s = k % G_N_ELEMENTS (sizes);
          BwViewRange across = test_shown (bw_levels_drawing (&what, 600, 400, &ink)).across;
          bw_view_range_zoom (&across, g_rand_double_range (rand, across.low, across.high),
                              pow (10, g_rand_double_range (rand, 0, 2.5)));
          what.across = &across;
          check_labels (&what, name_of (i), sizes[s].width, sizes[s].height, &ink, s == 0 ? 6 : 1);
        }
    }
}

static void
test_draw (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    for (guint k = 0; k < 3; k++)
      {
        g_autoptr (BwLevelsModel) model = model_of (i, (i + k) % BW_N_CONTENTS, BW_BARS_75);
        BwLevelsView what = view_of (model, k == 0 ? INFINITY : 75);
        const BwInk with = { (i + k) % BW_N_THEMES, NULL, 0 };
        what.span = k == 2 && i % 4 == 0 ? BW_LEVELS_FIELD : BW_LEVELS_LINE;
        cairo_surface_destroy (test_paint (bw_levels_drawing (&what, 600, 400, &with)));
      }
}

static void
test_round_trip (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwLevelsModel) model = model_of (i, BW_CONTENT_BARS, BW_BARS_75);
      const BwLevelsView what = view_of (model, 75);
      guint set = bw_signal_conductors (cases[i].signal, cases[i].sync);
      for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
        {
          double time_s = g_rand_double_range (rand, 0, 20e-6), x = -1, y = -1;
          g_autoptr (BwDrawing) drawing = bw_levels_drawing (&what, 1000, 650, &ink);
          BwDrawingPoint point;
          gboolean shown = test_find (bw_drawing_ref (drawing), conductor, time_s, 0.01, &x, &y);
          g_assert_true (shown == ((set & BW_BIT (conductor)) != 0));
          if (!shown)
            continue;
          g_assert_true (bw_drawing_read (drawing, x, y, &point));
          g_assert_cmpuint (point.id, ==, conductor);
          g_assert_cmpfloat_with_epsilon (point.across, time_s, 1e-12);
          g_assert_cmpfloat_with_epsilon (point.down, 0.01, 1e-9);
        }
    }
}

/* What is read at a place. */
typedef struct
{
  int line;
  double line_time_s;
  double low_v;
  double high_v;
} Read;

/* A level as it is written, with a true minus. */
static double
volts_of (const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);
  double volts = 0;
  g_string_replace (plain, "\u2212", "-", 1);
  g_assert_true (bw_quantity_parse (plain->str, BW_DIMENSION_VOLTAGE, '.', &volts, NULL));
  return volts;
}

/* From the words such as "Y, line 20, 5 µs after 0H: 1 V (140.0 IRE); pointer 10 mV (1.4 IRE)", and
 * for an envelope "−1.0 to 2.0 mV". */
static void
parse_words (const char *words, Read *read)
{
  g_auto (GStrv) parts = g_strsplit (words, ", ", 3);
  g_assert_cmpint (sscanf (parts[1], "line %d", &read->line), ==, 1);
  g_auto (GStrv) rest = g_strsplit (parts[2], " after 0H: ", 2);
  g_assert_true (bw_quantity_parse (rest[0], BW_DIMENSION_TIME, '.', &read->line_time_s, NULL));
  rest[1][strcspn (rest[1], ";(")] = '\0';
  g_auto (GStrv) levels = g_strsplit (g_strchomp (rest[1]), " to ", 2);
  read->high_v = volts_of (levels[levels[1] != NULL ? 1 : 0]);
  g_autofree char *low = g_strconcat (levels[0], "\u00a0mV", NULL);
  read->low_v = levels[1] != NULL ? volts_of (low) : read->high_v;
}

static void
read_at (const BwLevelsView *what, BwConductor conductor, double time_s, Read *read)
{
  g_autoptr (BwDrawing) drawing = bw_levels_drawing (what, 1000, 650, &ink);
  double x, y;
  g_assert_true (test_find (bw_drawing_ref (drawing), conductor, time_s, 0.01, &x, &y));
  g_autofree char *words = test_words_at (bw_drawing_ref (drawing), x, y);
  g_assert_true (g_str_has_prefix (words, bw_kind_label (&bw_conductors, conductor)));
  parse_words (words, read);
}

/* The middle of a bar, after 0H; BT.601 has 720 of 858 samples from the 122nd after 0H on, in a line
 * of 525; the bars are eighths of the picture. */
static double
bar_time_s (const BwLevelsModel *model, guint bar)
{
  const BwRaster *raster = bw_levels_model_case (model)->raster;
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);
  return figures.h_sync_s + figures.h_back_porch_s + figures.h_active_s * (bar + 0.5) / BW_N_BARS;
}

/* SMPTE 170M-2004 table A.3: lowest and highest excursion of 75 % bars with setup, in IRE; white
 * 76.875 and black 7.5; sync -40; 140 IRE = 1 V. */
static const double ntsc_75[BW_N_BARS][2] = {
  { 76.8750, 76.8750 }, { 37.9325, 100.0000 }, { 12.2638, 100.0000 }, { 7.2605, 89.1858 },
  { -4.8108, 77.1145 }, { -15.6250, 72.1113 }, { -15.6250, 46.4425 }, { 7.5, 7.5 },
};

/* The reading of an envelope keeps to the samples, 16 to a cycle: at the worst cos (π/16) of the
 * peak, 1.9 % of 44 IRE. */
static void
test_reads_table_a3 (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE),
                                              BW_CONTENT_BARS, BW_BARS_75);
  const BwLevelsView what = view_of (model, 75);
  Read read;

  for (guint bar = 0; bar < BW_N_BARS; bar++)
    {
      read_at (&what, BW_CONDUCTOR_VIDEO, bar_time_s (model, bar), &read);
      g_assert_cmpfloat_with_epsilon (read.low_v * 140, ntsc_75[bar][0], 0.9);
      g_assert_cmpfloat_with_epsilon (read.high_v * 140, ntsc_75[bar][1], 0.9);
    }
  read_at (&what, BW_CONDUCTOR_VIDEO, 2.35e-6, &read);
  g_assert_cmpfloat_with_epsilon (read.low_v * 140, -40, 0.008); /* to a tenth of a millivolt */
}

/* A source of 75 Ω with no load gives twice the published level, with two loads two thirds. */
static void
test_termination (void)
{
  static const struct
  {
    double load_ohm;
    double gain;
  } loads[] = { { 75, 1 }, { INFINITY, 2 }, { 37.5, 2.0 / 3 }, { 0, 1 } };
  guint i = find_case (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT);
  g_autoptr (BwLevelsModel) model = model_of (i, BW_CONTENT_BARS, BW_BARS_100);

  for (guint k = 0; k < G_N_ELEMENTS (loads); k++)
    {
      BwLevelsView what = view_of (model, loads[k].load_ohm);
      Read read;
      g_assert_cmpfloat_with_epsilon (bw_levels_gain (&what.video), loads[k].gain, 1e-12);
      read_at (&what, BW_CONDUCTOR_Y, bar_time_s (model, BW_BAR_WHITE), &read);
      g_assert_cmpfloat_with_epsilon (read.high_v, 0.7 * loads[k].gain, 1e-4);
      read_at (&what, BW_CONDUCTOR_PB, bar_time_s (model, BW_BAR_BLUE), &read);
      g_assert_cmpfloat_with_epsilon (read.high_v, 0.35 * loads[k].gain, 1e-4);
    }
}

/* Logic stated without load: 5 V behind 75 Ω is 2.5 V across 75 Ω, and 5 V without load. */
static void
test_open_load (void)
{
  const BwLevelsLoad loaded = { 75, 75, BW_LOAD_OPEN }, open = { 75, INFINITY, BW_LOAD_OPEN };
  g_assert_cmpfloat_with_epsilon (bw_levels_gain (&loaded), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (bw_levels_gain (&open), 1, 1e-12);
}

/* What is drawn */

static cairo_surface_t *
draw (const BwLevelsView *what, int width, int height)
{
  return test_paint (bw_levels_drawing (what, width, height, &ink));
}

/* How much darker than paper, 0 to 255 on the green channel. */
static int
darkness (cairo_surface_t *surface, int x, int y)
{
  guint32 pixel;
  const guchar *data = cairo_image_surface_get_data (surface);
  memcpy (&pixel, data + y * cairo_image_surface_get_stride (surface) + x * 4, 4);
  guint32 paper = bw_ink_rgb (BW_THEME_LIGHT, BW_INK_PAPER);
  return (int) (paper >> 8 & 0xff) - (int) (pixel >> 8 & 0xff);
}

/* The rows of the outline of what is filled in a column: the first and last one of ink. */
static void
filled_rows (cairo_surface_t *surface, int x, int from_y, int to_y, int *top, int *bottom)
{
  *top = *bottom = -1;
  for (int y = from_y; y <= to_y; y++)
    if (darkness (surface, x, y) > 25 && darkness (surface, x, y + 1) > 25
        && darkness (surface, x, y + 2) > 25)
      {
        *top = y;
        break;
      }
  for (int y = to_y; y >= from_y; y--)
    if (darkness (surface, x, y) > 25 && darkness (surface, x, y - 1) > 25
        && darkness (surface, x, y - 2) > 25)
      {
        *bottom = y;
        break;
      }
}

/* The filled bars of SMPTE 170M table A.3 end within a pixel and the stroke of their levels: those
 * with chroma, in a column between the lines of the grid. */
static void
test_rows_of_the_trace (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE),
                                              BW_CONTENT_BARS, BW_BARS_75);
  const BwLevelsView what = view_of (model, 75);
  cairo_surface_t *surface = draw (&what, 1000, 650);

  for (guint bar = BW_BAR_YELLOW; bar <= BW_BAR_BLUE; bar++)
    {
      double time_s = bar_time_s (model, bar), x, high_y, low_y;
      int top, bottom;
      test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_VIDEO, time_s,
                 ntsc_75[bar][1] / 140, &x, &high_y);
      test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_VIDEO, time_s,
                 ntsc_75[bar][0] / 140, &x, &low_y);
      filled_rows (surface, (int) x, (int) high_y - 30, (int) low_y + 30, &top, &bottom);
      g_assert_cmpfloat (fabs (top + 0.5 - high_y), <, 2);
      g_assert_cmpfloat (fabs (bottom + 0.5 - low_y), <, 2);
    }
  cairo_surface_destroy (surface);
}

/* Red of RGB bars at 100 % is full for white and yellow, and black for cyan and green. */
static void
test_colour_of_the_trace (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB),
                                              BW_CONTENT_BARS, BW_BARS_100);
  const BwLevelsView what = view_of (model, 75);
  cairo_surface_t *surface = draw (&what, 1000, 650);
  static const double levels_v[] = { 0.7, 0.7, 0, 0 };

  for (guint bar = BW_BAR_WHITE; bar <= BW_BAR_GREEN; bar++)
    {
      double x, y;
      g_assert_true (test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_R,
                                bar_time_s (model, bar), levels_v[bar], &x, &y));
      g_assert_cmpint (darkness (surface, (int) x, (int) y), >, 100);
      test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_R,
                 bar_time_s (model, bar), 0.7 - levels_v[bar], &x, &y);
      g_assert_cmpint (darkness (surface, (int) x, (int) y), <, 160);
    }
  cairo_surface_destroy (surface);
}

/* Words */

static void
test_figures (void)
{
  static const char *const shown[] = { "sync tip  \u2212285.7\u00a0mV · \u221240\u00a0IRE",
                                       "white  714.3\u00a0mV · 100\u00a0IRE",
                                       "black  53.6\u00a0mV · 7.5\u00a0IRE",
                                       "white bar  549.1\u00a0mV · 76.9\u00a0IRE",
                                       "burst  285.7\u00a0mV p-p",
                                       "blanking  0\u00a0mV",
                                       "SMPTE 170M-2004",
                                       "magenta",
                                       "the right level",
                                       "0H",
                                       "IRE",
                                       "mV" };
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE),
                                              BW_CONTENT_BARS, BW_BARS_75);
  g_autoptr (GPtrArray) limits = bw_limits_shipped ();
  BwLevelsView what = view_of (model, 75);
  what.limits = bw_limits_find (limits, "smpte-170m");
  g_autoptr (GArray) labels = test_texts (bw_levels_drawing (&what, 1000, 650, &ink), NULL);
  g_autofree char *words = test_description (bw_levels_drawing (&what, 1000, 650, &ink));

  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (!test_labels_have (labels, shown[i]))
      g_error ("\"%s\" is not shown; in words: %s", shown[i], words);
  g_assert_true (test_labels_have (labels, what.limits->name));
  g_assert_nonnull (strstr (words, "sync tip \u2212285.7\u00a0mV"));
}

/* ITU-R BT.1700: PAL, sync 300 mV, white 700 mV; twice that without load. */
static void
test_figures_without_load (void)
{
  static const char *const shown[] = { "white  1400\u00a0mV", "should be 700\u00a0mV",
                                       "sync tip  \u2212600\u00a0mV", "should be \u2212300\u00a0mV",
                                       "no load (2 × the right level)" };
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE),
                                              BW_CONTENT_BARS, BW_BARS_100);
  const BwLevelsView what = view_of (model, INFINITY);
  g_autoptr (GArray) labels = test_texts (bw_levels_drawing (&what, 1000, 650, &ink), NULL);
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    g_assert_true (test_labels_have (labels, shown[i]));
}

static void
test_conductors (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB),
                                              BW_CONTENT_BARS, BW_BARS_75);
  BwLevelsView what = view_of (model, 75);
  g_autoptr (GArray) all = test_texts (bw_levels_drawing (&what, 1000, 650, &ink), NULL);
  static const char *const names[] = { "R", "G", "B", "Sync" };
  double x, y;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    test_find_label (all, names[i], 0);
  what.show = BW_BIT (BW_CONDUCTOR_G);
  g_autoptr (GArray) one = test_texts (bw_levels_drawing (&what, 1000, 650, &ink), NULL);
  test_find_label (one, "G", 0);
  g_assert_false (test_labels_have (one, "Sync"));
  g_assert_false (
      test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_R, 1e-6, 0, &x, &y));
}

static void
test_decimal_comma (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_YC),
                                              BW_CONTENT_BARS, BW_BARS_75);
  BwLevelsView what = view_of (model, 75);
  what.mark = ',';
  g_autoptr (GArray) labels = test_texts (bw_levels_drawing (&what, 1000, 650, &ink), NULL);
  g_assert_true (test_labels_have (labels, "714,3\u00a0mV"));
  g_assert_false (test_labels_have (labels, "714.3"));
}

/* A field of 262.5 lines of 63.556 µs: the field sync of the next field starts within it, on line
 * 266 of SMPTE 170M figure 7, after line 263's middle. */
static void
test_field (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE),
                                              BW_CONTENT_BARS, BW_BARS_75);
  BwLevelsView what = view_of (model, 75);
  Read read;
  double line_s = 286 / 4.5e6;

  what.span = BW_LEVELS_FIELD;
  what.line = 1;
  BwViewRange across = test_shown (bw_levels_drawing (&what, 1000, 650, &ink)).across;
  g_assert_cmpfloat_with_epsilon (across.high - across.low, 264.5 * line_s, 1e-9);
  read_at (&what, BW_CONDUCTOR_VIDEO, 99.25 * line_s, &read);
  g_assert_cmpint (read.line, ==, 100);
  g_assert_cmpfloat_with_epsilon (read.line_time_s, 0.25 * line_s, 1e-9);
}

/* Where a field's lines are too fine for the page, the luma of each bar still stands out. E'Y =
 * 0.299 E'R + 0.587 E'G + 0.114 E'B, of 700 mV at white (ITU-R BT.1700). */
static void
test_levels_of_a_field (void)
{
  static const double luma[] = { 0.886, 0.701, 0.587, 0.413, 0.299, 0.114 };
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_PAL_B, BW_SIGNAL_YC),
                                              BW_CONTENT_BARS, BW_BARS_75);
  BwLevelsView what = view_of (model, 75);
  what.span = BW_LEVELS_FIELD;
  what.line = 1;
  cairo_surface_t *surface = draw (&what, 1000, 650);

  for (guint i = 0; i < G_N_ELEMENTS (luma); i++)
    for (guint time_ms = 3; time_ms <= 18; time_ms += 4)
      {
        double x, y, last_y, level_v = 0.75 * 0.7 * luma[i];
        double above_v = 0.75 * 0.7 * (luma[i] + (i > 0 ? luma[i - 1] : 1)) / 2;
        g_assert_true (test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_Y,
                                  time_ms * 1e-3, level_v, &x, &y));
        test_find (bw_levels_drawing (&what, 1000, 650, &ink), BW_CONDUCTOR_Y, time_ms * 1e-3,
                   above_v, &x, &last_y);
        int at = MAX (darkness (surface, (int) x, (int) y),
                      darkness (surface, (int) x, (int) y + 1));
        at = MAX (at, darkness (surface, (int) x, (int) y - 1));
        g_assert_cmpint (at, >, darkness (surface, (int) x, (int) last_y) + 40);
      }
  cairo_surface_destroy (surface);
}

/* A rate too low for the subcarrier is refused, with the synthesis' own words. */
static void
test_bad_rate (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GError) error = NULL;
  BwSynthesisCase what = { bw_catalogue_raster (catalogue, "525-59.94-interlaced"),
                           .rate_hz = { 1000000, 1 } };
  bw_wire_form_standard (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, BW_SHAPE_BILEVEL,
                         &what.form);
  g_assert_null (bw_levels_model_new (&what, &error));
  g_assert_error (error, BW_SYNTHESIS_ERROR, BW_SYNTHESIS_ERROR_RATE);
}

/* The level of red in the middle of the first bar, which is white, of the line at @half_line. */
static double
level_at (BwLevelsModel *model, int half_line)
{
  const BwRaster *raster = bw_levels_model_raster (model);
  int line = bw_raster_line_at (raster, 0, half_line, NULL);
  double at_s = bw_line_shape_blanking_end (bw_levels_model_shape (model)) + 1e-6;
  BwLevelsWindow window = { bw_levels_model_start_s (model, 0, line), at_s, at_s + 1e-7 };
  BwLevelsSamples samples;

  bw_levels_samples (model, BW_CONDUCTOR_R, &window, &samples);
  double level_v = (double) samples.volts[samples.n / 2];
  bw_levels_samples_clear (&samples);
  return level_v;
}

/* Behind a coupling capacitor a field falls from its first line to its last. Of bars of 100 % red is on for half of
 * each line: a picture of half the level, whose fall bw_coupling_tilt() has, which is held against a full-frame
 * simulation in numpy (core-coupling). On the mean the level stays, and a load of no resistance to charge
 * through takes nothing. */
static void
test_field_tilt (void)
{
  g_autoptr (BwLevelsModel) model
      = model_of (find_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB), BW_CONTENT_BARS, BW_BARS_100);
  const BwRaster *raster = bw_levels_model_raster (model);
  const BwFieldTiming *field = &raster->field[0];
  int first = field->sync + field->back_porch + 2 * raster->v_border, last = first + field->active - 2;
  double white_v = level_at (model, first + 4);
  BwSteadyPicture picture = { .white_share = 1, .white_v = white_v / 2 };
  BwTilt tilt;

  g_assert_cmpfloat_with_epsilon (white_v, 0.7, 1e-3);
  g_assert_cmpfloat_with_epsilon (level_at (model, last - 4), white_v, 1e-6);
  bw_picture_time (raster, &picture.time);
  bw_coupling_tilt (&picture, 150, 220e-6, &tilt);
  bw_levels_model_set_coupling (model, 220e-6, 150);
  double fall_v = level_at (model, first + 4) - level_at (model, last - 4);
  double expected_v = tilt.field * picture.white_v;
  g_assert_cmpfloat (expected_v, >, 5e-3);
  g_assert_true (bw_near (fall_v, expected_v, 0.05 * expected_v));
  double middle_v = level_at (model, (first + last) / 4 * 2);
  g_assert_true (bw_near (middle_v, white_v, expected_v));
  bw_levels_model_set_coupling (model, 220e-6, INFINITY);
  g_assert_cmpfloat_with_epsilon (level_at (model, last - 4), white_v, 1e-6);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/levels-view/labels", test_labels);
  g_test_add_func ("/levels-view/labels/any-page", test_labels_on_any_page);
  g_test_add_func ("/levels-view/labels/any-part", test_labels_of_any_part);
  g_test_add_func ("/levels-view/draw", test_draw);
  g_test_add_func ("/levels-view/round-trip", test_round_trip);
  g_test_add_func ("/levels-view/read/table-a3", test_reads_table_a3);
  g_test_add_func ("/levels-view/read/termination", test_termination);
  g_test_add_func ("/levels-view/read/open-load", test_open_load);
  g_test_add_func ("/levels-view/trace/rows", test_rows_of_the_trace);
  g_test_add_func ("/levels-view/trace/colour", test_colour_of_the_trace);
  g_test_add_func ("/levels-view/figures", test_figures);
  g_test_add_func ("/levels-view/figures/no-load", test_figures_without_load);
  g_test_add_func ("/levels-view/conductors", test_conductors);
  g_test_add_func ("/levels-view/decimal-comma", test_decimal_comma);
  g_test_add_func ("/levels-view/field", test_field);
  g_test_add_func ("/levels-view/field/levels", test_levels_of_a_field);
  g_test_add_func ("/levels-view/field-tilt", test_field_tilt);
  g_test_add_func ("/levels-view/bad-rate", test_bad_rate);
  return g_test_run ();
}
