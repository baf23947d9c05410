/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/field/view.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Under sanitizers, where everything is slow, only every so many of the rasters. */
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#define RASTER_STEP 9
#else
#define RASTER_STEP 1
#endif

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };
static const BwInk black = { BW_THEME_PRINT, "Sans 10", BW_INK_SCREEN_DPI };

/* Smallest to largest page that the drawing is made for, in pixels of a screen. */
static const struct
{
  double width;
  double height;
  guint may_leave; /* steps of the order in field-view.h: down to durations in time */
} sizes[] = { { 520, 360, 5 }, { 700, 450, 0 }, { 1100, 700, 0 }, { 1800, 1000, 0 } };

static BwFieldView
view_of (const BwCatalogue *catalogue, const char *id, BwColourSystem system, int colour_field)
{
  const BwRaster *raster = bw_catalogue_raster (catalogue, id);
  g_assert_nonnull (raster);
  return (BwFieldView){ raster, system, colour_field, NULL, '.' };
}

static double
period_s (const BwFieldView *what)
{
  return 1 / bw_ratio_to_double (what->raster->line_rate_hz);
}

/* Labels */

static void
check_labels (const BwFieldView *what, double width, double height, const BwInk *with,
              guint may_leave)
{
  guint left_out = 0;
  g_autoptr (GArray) labels = test_texts (bw_field_drawing (what, width, height, with), &left_out);

  test_labels_are_apart (labels, width, height, what->raster->id);
  test_labels_are_large (labels, with);
  if (left_out > may_leave)
    g_error ("%s at %gx%g: %u left out", what->raster->id, width, height, left_out);
}

static void
test_labels_of_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i += RASTER_STEP)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        BwFieldView what = { rasters->pdata[i], BW_SYSTEM_NONE, 0, NULL, '.' };
        check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
        what.system = i % BW_N_SYSTEMS;
        what.colour_field = (int) i;
        check_labels (&what, sizes[s].width, sizes[s].height, &ink,
                      s == 0 ? 5 : 1); /* the note has one more sentence */
      }
}

/* Whatever the page, the font and the part that is shown. */
static void
test_labels_on_any_page (void)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 }, { 4000, 3000 } };
  static const char *const fonts[] = { "Sans 6", "Sans 10", "Serif 17", "Sans 40" };
  static const char *const ids[] = { "525-59.94-interlaced", "1125-60-interlaced", "vesa-dmt-04" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    for (guint f = 0; f < G_N_ELEMENTS (fonts); f++)
      for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
        {
          const BwInk other = { BW_THEME_DARK, fonts[f], 0 };
          BwFieldView what = view_of (catalogue, ids[i], BW_SYSTEM_NTSC_M, 0);
          check_labels (&what, odd[s][0], odd[s][1], &other, G_MAXUINT);
        }
}

static void
test_labels_of_any_part (void)
{
  static const char *const ids[] = { "525-59.94-interlaced", "625-50-interlaced",
                                     "1125-60-interlaced", "vesa-dmt-05" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);

  for (guint i = 0; i < 400; i += RASTER_STEP)
    {
      BwFieldView what = view_of (catalogue, ids[i % 4],
                                  i % 4 == 1 ? BW_SYSTEM_PAL_B : BW_SYSTEM_NTSC_M, (int) i / 4);
      guint s = i % G_N_ELEMENTS (sizes);
      BwViewRange range = test_shown (bw_field_drawing (&what, 700, 450, &ink)).across;
      double whole = range.high - range.low;
      bw_view_range_zoom (&range, range.low + whole * g_rand_double (rand),
                          pow (10, g_rand_double_range (rand, 0, 3)));
      what.range = &range;
      check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
    }
}

/* A name of any length ends in an ellipsis and does not run into the drawing. */
static void
test_long_name (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwRaster) raster = bw_raster_copy (
      bw_catalogue_raster (catalogue, "525-59.94-interlaced"));
  g_autoptr (GString) name = g_string_new (NULL);
  BwFieldView what = { raster, BW_SYSTEM_NONE, 0, NULL, '.' };

  for (int i = 0; i < 200; i++)
    g_string_append (name, "long name ");
  g_free (raster->name);
  raster->name = g_strdup (name->str);
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
}

/* Hardly a display, but nothing that a raster may be makes the drawing fail. */
static void
test_very_long_blanking (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwRaster) raster = bw_raster_copy (bw_catalogue_raster (catalogue, "vesa-dmt-04"));
  BwFieldView what = { raster, BW_SYSTEM_NONE, 0, NULL, '.' };

  raster->field[0].back_porch = raster->field[1].back_porch = 20000;
  g_assert_true (bw_raster_check (raster, NULL));
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
}

/* What the standards lay down */

/* Line numbers with halves: 266.5 is the middle of line 266. The end of the picture before, field
 * sync from and to, and the start of the picture after, for both fields. */
typedef struct
{
  const char *id;
  double before[2];
  double sync[2];
  double sync_end[2];
  double picture[2];
} Numbers;

static const Numbers published[] = {
  /* SMPTE 170M-2004 figure 7: field sync on lines 4 to 6 and 266.5 to 269.5, picture from line 21
   * and from the middle of 283, to the middle of 263. Line 526 is line 1. */
  { "525-59.94-interlaced", { 526, 263.5 }, { 4, 266.5 }, { 7, 269.5 }, { 21, 283.5 } },
  /* ITU-R BT.470-6 figures 2-1a and 2-1b, BT.1700 figure 3: field sync on lines 1 to 2.5 and 313.5
   * to 315, picture from the middle of line 23 and from 336, to 310 and to the middle of 623. */
  { "625-50-interlaced", { 623.5, 311 }, { 1, 313.5 }, { 3.5, 316 }, { 23.5, 336 } },
  /* CTA-861-H, VIC 5: V sync on lines 1 to 5 and from the middle of 563 to that of 568; picture on
   * lines 21 to 560 and 584 to 1123. */
  { "cta-861-vic-5", { 1124, 561 }, { 1, 563.5 }, { 6, 568.5 }, { 21, 584 } },
  /* VESA DMT v1.0 rev. 13, ID 0x04, counted from V sync: 2 lines of sync, 25 of back porch, 8 of
   * border, 480 of picture: 515, then 8 of border and 2 of front porch. */
  { "vesa-dmt-04", { 516 }, { 1 }, { 3 }, { 36 } },
};

/* What is read at a place: the number of the line, the time after its 0H and the part. */
typedef struct
{
  int line;
  double line_time_s;
  BwFieldPart part;
} Read;

static gboolean
read_at (const BwFieldView *what, const BwDrawing *drawing, double x, double y, Read *read)
{
  BwDrawingPoint point;
  BwFieldShape shape;
  int field = 0;

  if (!bw_drawing_read (drawing, x, y, &point))
    return FALSE;
  g_autofree char *words = bw_drawing_words (drawing, &point);
  g_assert_cmpint (sscanf (words, "Field %d, line %d,", &field, &read->line), ==, 2);
  g_auto (GStrv) parts = g_strsplit (words, ", ", 3);
  g_auto (GStrv) times = g_strsplit (parts[2], " after its 0H: ", 2);
  g_assert_true (bw_quantity_parse (times[0], BW_DIMENSION_TIME, '.', &read->line_time_s, NULL));
  bw_field_shape_init (&shape, what->raster, field - 1);
  read->part = bw_field_shape_at (&shape, point.across);
  g_assert_true (g_str_has_prefix (times[1], bw_field_part_label (&shape, read->part)));
  return TRUE;
}

/* A time in the page, as a line number with its fraction. */
static double
line_at (const BwFieldView *what, const BwDrawing *drawing, double x, double y, BwFieldPart *part)
{
  Read read;
  g_assert_true (read_at (what, drawing, x, y, &read));
  *part = read.part;
  return read.line + read.line_time_s / period_s (what);
}

/* Finds where on the page, along @y, @part starts. */
static double
line_where (const BwFieldView *what, const BwDrawing *drawing, double y, BwFieldPart part)
{
  double low = 0, high = bw_drawing_width (drawing) - 20;
  BwFieldPart at = BW_PART_PICTURE_BEFORE;
  Read read;

  for (low = 0; !read_at (what, drawing, low, y, &read); low += 4)
    g_assert_cmpfloat (low, <, high);
  g_assert_cmpint (read.part, <, part);
  while (high - low > 0.001)
    {
      double middle = (low + high) / 2;
      line_at (what, drawing, middle, y, &at);
      if (at < part)
        low = middle;
      else
        high = middle;
    }
  return line_at (what, drawing, (low + high) / 2, y, &at);
}

static void
assert_line (const BwFieldView *what, double y, BwFieldPart part, double expected)
{
  BwRasterFigures figures;
  bw_raster_figures (what->raster, &figures);
  g_autoptr (BwDrawing) drawing = bw_field_drawing (what, 1100, 700, &ink);
  double off = line_where (what, drawing, y, part) - expected;
  double frames = off / figures.lines_per_frame; /* the last line is followed by line 1 */
  g_assert_cmpfloat_with_epsilon (off, floor (frames + 0.5) * figures.lines_per_frame, 0.01);
}

static void
test_lines_of_the_standards (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  for (guint i = 0; i < G_N_ELEMENTS (published); i++)
    {
      const Numbers *numbers = &published[i];
      BwFieldView what = view_of (catalogue, numbers->id, BW_SYSTEM_NONE, 0);
      for (guint field = 0; field < 2 && numbers->sync[field] > 0; field++)
        {
          BwFieldPart before = what.raster->v_border > 0            ? BW_PART_BORDER_BEFORE
                               : what.raster->equalising_before > 0 ? BW_PART_EQUALISING_BEFORE
                                                                    : BW_PART_FRONT_PORCH;
          BwFieldPart after = what.raster->equalising_after > 0 ? BW_PART_EQUALISING_AFTER
                                                                : BW_PART_BACK_PORCH;
          double y = field == 0 ? 100 : 500;
          assert_line (&what, y, before, numbers->before[field]);
          assert_line (&what, y, BW_PART_SYNC, numbers->sync[field]);
          assert_line (&what, y, after, numbers->sync_end[field]);
          assert_line (&what, y, BW_PART_PICTURE_AFTER, numbers->picture[field]);
        }
    }
}

/* Line @line of field 1 or 2 starts at this time; field sync starts in line @sync_line. */
static double
time_of (const BwFieldView *what, double line, double sync_line)
{
  return (line - sync_line) * period_s (what);
}

static void
assert_number (const BwFieldView *what, const GArray *labels, double width, double height, int line,
               double sync_line)
{
  g_autofree char *text = g_strdup_printf ("%d", line);
  const BwLabel *label = test_find_label (labels, text, 0);
  double x = test_x_of (bw_field_drawing (what, width, height, &ink), 0,
                        time_of (what, line + 0.5, sync_line));
  g_assert_cmpfloat_with_epsilon (label->box.x + label->box.width / 2, x, 0.6);
}

/* The numbers stand in the middle of their lines; lines as in the table above. */
static void
test_numbers_drawn (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView ntsc = view_of (catalogue, "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 0);
  BwFieldView pal = view_of (catalogue, "625-50-interlaced", BW_SYSTEM_PAL_B, 0);
  g_autoptr (GArray) ntsc_labels = test_texts (bw_field_drawing (&ntsc, 1800, 1000, &ink), NULL);
  g_autoptr (GArray) pal_labels = test_texts (bw_field_drawing (&pal, 1800, 1000, &ink), NULL);

  for (int line = 1; line <= 23; line++)
    assert_number (&ntsc, ntsc_labels, 1800, 1000, line, 4);
  for (int line = 261; line <= 285; line++)
    assert_number (&ntsc, ntsc_labels, 1800, 1000, line, 266.5);
  for (int line = 1; line <= 25; line++)
    assert_number (&pal, pal_labels, 1800, 1000, line, 1);
  for (int line = 309; line <= 337; line++)
    assert_number (&pal, pal_labels, 1800, 1000, line, 313.5);
}

/* On a small page the step is 5, and only the lines of field sync and of the edges of the picture
 * stand beside. */
static void
test_numbers_thin_out (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView what = view_of (catalogue, "vesa-dmt-04", BW_SYSTEM_NONE, 0);
  g_autoptr (GArray) labels = test_texts (bw_field_drawing (&what, 520, 360, &ink), NULL);
  guint n = 0;

  for (guint i = 0; i < labels->len; i++)
    {
      const char *text = g_array_index (labels, BwLabel, i).text;
      int line = (int) g_ascii_strtoll (text, NULL, 10);
      if (strspn (text, "0123456789") != strlen (text))
        continue;
      g_assert_true (line % 5 == 0 || line == 1 || line == 36);
      n++;
    }
  g_assert_cmpuint (n, >=, 8);
  assert_number (&what, labels, 520, 360, 1, 1);
  assert_number (&what, labels, 520, 360, 36, 1);
}

static void
assert_has (const BwFieldView *what, const char *text)
{
  g_autoptr (GArray) labels = test_texts (bw_field_drawing (what, 1100, 700, &ink), NULL);
  if (!test_labels_have (labels, text))
    g_error ("%s does not show \"%s\"", what->raster->id, text);
}

/* SMPTE 170M-2004 table 3 and figure 7: three lines each of six pulses, 2.3 µs wide; serrations of
 * 4.7 µs, so that broad pulses last 286 / 4.5 / 2 - 4.7 = 27.078 µs; blanking of 20 lines, 20 x
 * 63.556 µs = 1.2711 ms. BT.470-6 table 1-2: 2.5 lines of five pulses, 2.35 µs; 32 - 4.7 = 27.3 µs;
 * 25 lines, 25 x 64 µs = 1.6 ms. */
static void
test_figures (void)
{
  static const char *const of_525[] = { "3\u00a0lines",
                                        "11\u00a0lines",
                                        "190.667\u00a0µs",
                                        "20\u00a0lines · 1.2711\u00a0ms",
                                        "6 + 6 equalising pulses of 2.3\u00a0µs",
                                        "6 broad pulses of 27.078\u00a0µs",
                                        "serrations of 4.7\u00a0µs",
                                        "Line sync 4.7\u00a0µs",
                                        "SMPTE 170M-2004",
                                        "no burst  1 to 9",
                                        "no burst  264 to 272",
                                        "Field 1 (I)",
                                        "Field 2 (II)",
                                        "field sync starts" };
  static const char *const of_625[] = { "2.5\u00a0lines",
                                        "17.5\u00a0lines",
                                        "160\u00a0µs",
                                        "25\u00a0lines · 1.6\u00a0ms",
                                        "5 + 5 equalising pulses of 2.35\u00a0µs",
                                        "5 broad pulses of 27.3\u00a0µs",
                                        "BT.470-6",
                                        "no burst  623 to 6",
                                        "no burst  310 to 318" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView ntsc = view_of (catalogue, "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 0);
  BwFieldView pal = view_of (catalogue, "625-50-interlaced", BW_SYSTEM_PAL_B, 0);
  BwFieldView vic_5 = view_of (catalogue, "cta-861-vic-5", BW_SYSTEM_NONE, 0);

  for (guint i = 0; i < G_N_ELEMENTS (of_525); i++)
    assert_has (&ntsc, of_525[i]);
  for (guint i = 0; i < G_N_ELEMENTS (of_625); i++)
    assert_has (&pal, of_625[i]);
  assert_has (&vic_5, "Separate sync");
  assert_has (&vic_5, "15.5\u00a0lines");
  pal.mark = ',';
  assert_has (&pal, "17,5\u00a0lines");
  assert_has (&pal, "27,3\u00a0µs");
}

/* PAL goes on from field IV to field I, and its odd fields are the first of the raster. */
static void
test_colour_fields (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView what = view_of (catalogue, "625-50-interlaced", BW_SYSTEM_PAL_B, 2);
  assert_has (&what, "Field 1 (III)");
  assert_has (&what, "Field 2 (IV)");
  what.colour_field = 3;
  assert_has (&what, "Field 2 (IV)");
  assert_has (&what, "Field 1 (I)");
  what.colour_field = -1;
  assert_has (&what, "Field 2 (IV)");

  what.system = BW_SYSTEM_NTSC_M; /* not with these lines */
  assert_has (&what, "No burst is drawn");
  what = view_of (catalogue, "525-59.94-interlaced", BW_SYSTEM_PAL_60, 0);
  assert_has (&what, "No burst is drawn");
}

/* What the picture itself shows */

static cairo_surface_t *
draw (const BwFieldView *what, const BwInk *with, int width, int height)
{
  return test_paint (bw_field_drawing (what, width, height, with));
}

static gboolean
is_dark (guint32 pixel)
{
  return (pixel & 0xff) < 0x60 && (pixel >> 8 & 0xff) < 0x60 && (pixel >> 16 & 0xff) < 0x60;
}

/* Every raster on the smallest page, and on the others in turn, in every theme in turn. */
static void
test_draw_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i += RASTER_STEP)
    for (guint k = 0; k < 2; k++)
      {
        guint s = k == 0 ? 0 : 1 + i % (G_N_ELEMENTS (sizes) - 1), inked = 0;
        const BwInk with = { i % BW_N_THEMES, NULL, 0 };
        BwFieldView what = { rasters->pdata[i], i % BW_N_SYSTEMS, (int) i, NULL, '.' };
        int width = (int) sizes[s].width, height = (int) sizes[s].height;
        cairo_surface_t *surface = draw (&what, &with, width, height);
        for (int y = 0; y < height; y += 2)
          for (int x = 0; x < width; x += 2)
            inked += test_pixel_at (surface, x, y) != bw_ink_rgb (with.theme, BW_INK_PAPER);
        g_assert_cmpfloat (inked, >, 0.05 * width * height / 4);
        cairo_surface_destroy (surface);
      }
}

#define WIDE 5600 /* as wide as can be without a scale in microseconds */
#define HIGH 700

/* The middles of the edges along row @y from @from_s to @to_s, as times. */
static guint
find_edges (cairo_surface_t *surface, const BwFieldView *what, double y, double from_s, double to_s,
            double *edges_s, guint most)
{
  g_autoptr (BwDrawing) drawing = bw_field_drawing (what, WIDE, HIGH, &black);
  int from_x = (int) test_x_of (bw_drawing_ref (drawing), 0, from_s);
  int to_x = (int) test_x_of (bw_drawing_ref (drawing), 0, to_s);
  int start = -1;
  guint n = 0;

  for (int x = from_x; x < to_x; x++)
    {
      gboolean dark = is_dark (test_pixel_at (surface, x, (int) y));
      BwDrawingPoint point;
      if (dark && start < 0)
        start = x;
      if (dark || start < 0)
        continue;
      g_assert_cmpuint (n, <, most);
      g_assert_true (bw_drawing_read (drawing, (start + x) / 2.0, y, &point));
      edges_s[n++] = point.across;
      start = -1;
    }
  return n;
}

/* @n pulses of @width_s, each half a line after the one before. */
static void
check_pulses (cairo_surface_t *surface, const BwFieldView *what, double y, double from_s, guint n,
              double width_s)
{
  double half_line_s = period_s (what) / 2, edges_s[32];
  double pixel_s = 28 * period_s (what) / WIDE;
  double to_s = from_s + n * half_line_s;

  g_assert_cmpuint (find_edges (surface, what, y, from_s - 4 * pixel_s, to_s - 4 * pixel_s, edges_s,
                                G_N_ELEMENTS (edges_s)),
                    ==, 2 * n);
  for (guint i = 0; i < n; i++)
    {
      double start_s = from_s + i * half_line_s;
      g_assert_cmpfloat_with_epsilon (edges_s[2 * i], start_s, 1.5 * pixel_s);
      g_assert_cmpfloat_with_epsilon (edges_s[2 * i + 1], start_s + width_s, 1.5 * pixel_s);
    }
}

/* Just above the sync tip of the row that has this line number. */
static double
sync_y (const BwFieldView *what, const char *line)
{
  g_autoptr (GArray) labels = test_texts (bw_field_drawing (what, WIDE, HIGH, &black), NULL);
  const BwLabel *label = test_find_label (labels, line, 0);
  return label->box.y - 1.3 * label->box.height;
}

/* SMPTE 170M-2004 table 3 and figure 7, and BT.470-6 table 1-2: six, six and six pulses, or five,
 * five and five, read off the picture, with their widths. */
static void
test_pulses_drawn (void)
{
  static const struct
  {
    const char *id;
    const char *lines[2]; /* in which field sync starts */
    guint n;
    double equalising_s;
    double serration_s;
  } cases[] = { { "525-59.94-interlaced", { "4", "266" }, 6, 2.3e-6, 4.7e-6 },
                { "625-50-interlaced", { "1", "313" }, 5, 2.35e-6, 4.7e-6 } };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwFieldView what = view_of (catalogue, cases[i].id, BW_SYSTEM_NONE, 0);
      cairo_surface_t *surface = draw (&what, &black, WIDE, HIGH);
      double half_line_s = period_s (&what) / 2, run_s = cases[i].n * half_line_s;
      for (guint field = 0; field < 2; field++)
        {
          double y = sync_y (&what, cases[i].lines[field]);
          check_pulses (surface, &what, y, -run_s, cases[i].n, cases[i].equalising_s);
          check_pulses (surface, &what, y, 0, cases[i].n, half_line_s - cases[i].serration_s);
          check_pulses (surface, &what, y, run_s, cases[i].n, cases[i].equalising_s);
        }
      cairo_surface_destroy (surface);
    }
}

/* Blanking lies at 10/13 of a lane that spans from white to 3/7 below blanking; both ends are found
 * from the labels beside them. */
static double
blanking_y (const GArray *labels, guint row, const char *line)
{
  const BwLabel *picture = test_find_label (labels, "picture", 2 * row);
  const BwLabel *number = test_find_label (labels, line, 0);
  double text = number->box.height;
  double top = picture->box.y + picture->box.height + text / 4;
  double bottom = number->box.y - 0.65 * text;
  return top + 0.7 * (bottom - top);
}

/* SMPTE 170M-2004: field 1 ends with the first half of line 263, whose picture starts 9.2 µs after
 * the datum and ends 1.5 µs before the middle of the line, where the equalising pulses begin; field
 * 2 begins with the second half of line 283. Read near white and near blanking. */
static void
check_half_lines (cairo_surface_t *surface, const BwFieldView *what, double y)
{
  double edges_s[8], line_s = period_s (what), pixel_s = 28 * line_s / WIDE;

  g_assert_cmpuint (find_edges (surface, what, y, -3.45 * line_s, -2.8 * line_s, edges_s, 8), ==,
                    2);
  g_assert_cmpfloat_with_epsilon (edges_s[0], -3.5 * line_s + 9.2e-6, 1.5 * pixel_s);
  g_assert_cmpfloat_with_epsilon (edges_s[1], -3 * line_s - 1.5e-6, 1.5 * pixel_s);
  g_assert_cmpuint (find_edges (surface, what, y, 16.8 * line_s, 17.55 * line_s, edges_s, 8), ==,
                    2);
  g_assert_cmpfloat_with_epsilon (edges_s[0], 17 * line_s, 1.5 * pixel_s);
  g_assert_cmpfloat_with_epsilon (edges_s[1], 17.5 * line_s - 1.5e-6, 1.5 * pixel_s);
}

static void
test_half_lines_drawn (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView what = view_of (catalogue, "525-59.94-interlaced", BW_SYSTEM_NONE, 0);
  g_autoptr (GArray) labels = test_texts (bw_field_drawing (&what, WIDE, HIGH, &black), NULL);
  const BwLabel *picture = test_find_label (labels, "picture", 2); /* before field 2 */
  cairo_surface_t *surface = draw (&what, &black, WIDE, HIGH);

  check_half_lines (surface, &what, picture->box.y + 1.8 * picture->box.height);
  check_half_lines (surface, &what, blanking_y (labels, 1, "266") - 8);
  cairo_surface_destroy (surface);
}

/* Whether the colour of the burst stands just below blanking, in the back porch of the line. */
static gboolean
has_burst (cairo_surface_t *surface, const BwFieldView *what, double blanking_y, double datum_s)
{
  int from_x = (int) test_x_of (bw_field_drawing (what, WIDE, HIGH, &black), 0, datum_s + 5e-6);
  int to_x = (int) test_x_of (bw_field_drawing (what, WIDE, HIGH, &black), 0, datum_s + 8.2e-6);

  for (int x = from_x; x <= to_x; x++)
    if (test_pixel_at (surface, x, (int) blanking_y + 4)
        == bw_ink_rgb (BW_THEME_PRINT, BW_INK_BLUE))
      return TRUE;
  return FALSE;
}

/* The lines without burst, and the number of the line in which field sync starts, where the
 * standard counts so. SMPTE 170M-2004 13.1 and figure 7; ITU-R BT.1700 figures 6 and 8, BT.470-6
 * item 2.17. 525-line PAL counts from field sync. */
static const struct
{
  const char *id;
  BwColourSystem system;
  const char *label; /* a line of the row, as the raster counts */
  int lines;
  int first;
  int last;
  double sync;
} bursts[] = {
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, "4", 525, 1, 9, 4 },
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, "266", 525, 264, 272, 266.5 },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, "1", 625, 623, 6, 1 },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, "313", 625, 310, 318, 313.5 },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, "1", 625, 622, 5, 1 },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, "313", 625, 311, 319, 313.5 },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_M, "4", 525, 523, 8, 1 },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_M, "266", 525, 260, 270, 263.5 },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_M, "4", 525, 522, 7, 1 },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_M, "266", 525, 259, 269, 263.5 },
};

static void
check_bursts (cairo_surface_t *surface, const BwFieldView *what, guint row, guint i)
{
  g_autoptr (GArray) labels = test_texts (bw_field_drawing (what, WIDE, HIGH, &black), NULL);
  double y = blanking_y (labels, row, bursts[i].label);
  guint n = 0;

  for (int k = (int) floor (bursts[i].sync) - 5; k < bursts[i].sync + 18; k++)
    {
      int line = (k - 1 + bursts[i].lines) % bursts[i].lines + 1;
      gboolean without = bursts[i].first <= bursts[i].last
                             ? line >= bursts[i].first && line <= bursts[i].last
                             : line >= bursts[i].first || line <= bursts[i].last;
      double datum_s = time_of (what, k, bursts[i].sync);
      if (isnan (test_x_of (bw_field_drawing (what, WIDE, HIGH, &black), 0, datum_s)))
        continue;
      if (has_burst (surface, what, y, datum_s) == without)
        g_error ("case %u: line %d %s burst", i, line, without ? "has" : "has no");
      n++;
    }
  g_assert_cmpuint (n, >, 20);
}

static void
test_bursts_drawn (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  int colour_field = 0;

  for (guint i = 0; i < G_N_ELEMENTS (bursts); i += 2)
    {
      colour_field = i > 0 && bursts[i].system == bursts[i - 1].system ? colour_field + 2 : 0;
      BwFieldView what = view_of (catalogue, bursts[i].id, bursts[i].system, colour_field);
      cairo_surface_t *surface = draw (&what, &black, WIDE, HIGH);
      check_bursts (surface, &what, 0, i);
      check_bursts (surface, &what, 1, i + 1);
      cairo_surface_destroy (surface);
    }
}

/* Where the burst stands in its line: SMPTE 170M-2004 table 2, 19 cycles of the subcarrier after
 * the datum and 9 +- 1 long; ITU-R BT.1700 Part B, 5.6 +- 0.1 µs and 10 +- 1 cycles. A cycle lasts
 * 2 / 455 of a line (NTSC), and 1 / 4.43361875 MHz (PAL). */
static void
test_burst_position (void)
{
  static const struct
  {
    const char *id;
    BwColourSystem system;
    double start_s;
    double start_tolerance_s;
    double cycles;
    double cycle_s;
  } cases[] = {
    { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 5.308e-6, 0.1e-6, 9, 1 / 3579545.4545 },
    { "625-50-interlaced", BW_SYSTEM_PAL_B, 5.6e-6, 0.1e-6, 10, 1 / 4433618.75 },
  };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwFieldView what = view_of (catalogue, cases[i].id, cases[i].system, 0);
      BwBurst burst = { cases[i].system, 0 };
      BwFieldShape shape;
      bw_field_shape_init (&shape, what.raster, 0);
      double datum_s = 12 * period_s (&what);
      g_autoptr (GArray) steps = bw_burst_steps (&shape, &burst, datum_s,
                                                 datum_s + 0.9 * period_s (&what));
      g_assert_cmpuint (steps->len, ==, 1);
      const BwLineStep *step = &g_array_index (steps, BwLineStep, 0);
      g_assert_cmpfloat_with_epsilon (step->from_s - datum_s, cases[i].start_s,
                                      cases[i].start_tolerance_s);
      g_assert_cmpfloat_with_epsilon (step->to_s - step->from_s, cases[i].cycles * cases[i].cycle_s,
                                      cases[i].cycle_s);
    }
}

/* H and V of a raster with separate sync have the raster's polarity: VESA DMT 0x04 has both
 * negative, CTA-861-H VIC 5 both positive. Tri-level sync goes down, then up. */
static void
test_polarities (void)
{
  static const struct
  {
    const char *id;
    BwLane lane;
    int first; /* sign of the first step */
    int second;
  } cases[] = { { "vesa-dmt-04", BW_LANE_H, -1, -1 },
                { "vesa-dmt-04", BW_LANE_V, -1, 0 },
                { "cta-861-vic-5", BW_LANE_H, 1, 1 },
                { "cta-861-vic-5", BW_LANE_V, 1, 0 },
                { "1125-60-interlaced", BW_LANE_H, -1, 1 } };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwFieldView what = view_of (catalogue, cases[i].id, BW_SYSTEM_NONE, 0);
      double line_s = period_s (&what);
      BwFieldShape shape;
      bw_field_shape_init (&shape, what.raster, 0);
      g_autoptr (GArray) steps = bw_field_shape_steps (&shape, cases[i].lane, -0.2 * line_s,
                                                       1.2 * line_s);
      g_assert_cmpint (g_array_index (steps, BwLineStep, 0).level > 0 ? 1 : -1, ==, cases[i].first);
      g_assert_cmpuint (steps->len, ==,
                        cases[i].second == 0                ? 1
                        : cases[i].first == cases[i].second ? 2
                                                            : 4);
      if (cases[i].second != 0)
        g_assert_cmpint (g_array_index (steps, BwLineStep, 1).level > 0 ? 1 : -1, ==,
                         cases[i].second);
    }
}

/* Reading with the pointer */

static void
test_round_trip (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (guint i = 0; i < rasters->len; i += 3 * RASTER_STEP)
    {
      BwFieldView what = { rasters->pdata[i], BW_SYSTEM_NONE, 0, NULL, '.' };
      guint s = i % G_N_ELEMENTS (sizes);
      double width = sizes[s].width, height = sizes[s].height, line_s = period_s (&what);
      BwViewRange range = test_shown (bw_field_drawing (&what, width, height, &ink)).across;
      if (i % 2 == 0)
        bw_view_range_zoom (&range, 0, g_rand_double_range (rand, 1, 50));
      what.range = &range;
      g_autoptr (BwDrawing) drawing = bw_field_drawing (&what, width, height, &ink);
      for (guint k = 0; k < 10; k++)
        {
          double time_s = g_rand_double_range (rand, range.from, range.to);
          double x = test_x_of (bw_drawing_ref (drawing), 0, time_s);
          BwDrawingPoint point;
          Read read;
          g_assert_true (bw_drawing_read (drawing, x, 0.25 * height, &point));
          g_assert_cmpfloat_with_epsilon (point.across, time_s, 1e-9 * line_s);
          g_assert_true (read_at (&what, drawing, x, 0.25 * height, &read));
          g_assert_cmpfloat (read.line_time_s, >=, 0);
          g_assert_cmpfloat (read.line_time_s, <, line_s * (1 + 1e-4));
          double lines = (time_s - read.line_time_s) / line_s * 2;           /* whole half lines */
          g_assert_cmpfloat_with_epsilon (lines, floor (lines + 0.5), 1e-3); /* five digits */
        }
      g_assert_true (isnan (test_x_of (bw_drawing_ref (drawing), 0, range.to + line_s)));
    }
}

static void
test_read_outside (void)
{
  static const double points[][2] = {
    { 0, 0 }, { -5, 100 }, { 699, 449 }, { 350, 440 }, { 1, 200 }
  };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView what = view_of (catalogue, "625-50-interlaced", BW_SYSTEM_PAL_B, 0);
  g_autoptr (BwDrawing) drawing = bw_field_drawing (&what, 700, 450, &ink);
  BwDrawingPoint point = { .id = 77 };

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    g_assert_false (bw_drawing_read (drawing, points[i][0], points[i][1], &point));
  g_assert_cmpuint (point.id, ==, 77);
}

static void
test_describe (void)
{
  static const char *const shown[] = { "Field 1: equalising from line 1, 3\u00a0lines",
                                       "field sync from line 4, 3\u00a0lines",
                                       "Field 2: equalising from line 263",
                                       "field sync from line 266",
                                       "picture from line 21.",
                                       "picture from line 283.",
                                       "SMPTE 170M-2004" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwFieldView what = view_of (catalogue, "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 0);
  g_autofree char *text = test_description (bw_field_drawing (&what, 700, 450, &ink));
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (strstr (text, shown[i]) == NULL)
      g_error ("\"%s\" is not in: %s", shown[i], text);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/field-view/labels-of-all-rasters", test_labels_of_all_rasters);
  g_test_add_func ("/draw/field-view/labels-on-any-page", test_labels_on_any_page);
  g_test_add_func ("/draw/field-view/labels-of-any-part", test_labels_of_any_part);
  g_test_add_func ("/draw/field-view/long-name", test_long_name);
  g_test_add_func ("/draw/field-view/very-long-blanking", test_very_long_blanking);
  g_test_add_func ("/draw/field-view/lines-of-the-standards", test_lines_of_the_standards);
  g_test_add_func ("/draw/field-view/numbers-drawn", test_numbers_drawn);
  g_test_add_func ("/draw/field-view/numbers-thin-out", test_numbers_thin_out);
  g_test_add_func ("/draw/field-view/figures", test_figures);
  g_test_add_func ("/draw/field-view/colour-fields", test_colour_fields);
  g_test_add_func ("/draw/field-view/draw-all-rasters", test_draw_all_rasters);
  g_test_add_func ("/draw/field-view/pulses-drawn", test_pulses_drawn);
  g_test_add_func ("/draw/field-view/half-lines-drawn", test_half_lines_drawn);
  g_test_add_func ("/draw/field-view/bursts-drawn", test_bursts_drawn);
  g_test_add_func ("/draw/field-view/burst-position", test_burst_position);
  g_test_add_func ("/draw/field-view/polarities", test_polarities);
  g_test_add_func ("/draw/field-view/round-trip", test_round_trip);
  g_test_add_func ("/draw/field-view/read-outside", test_read_outside);
  g_test_add_func ("/draw/field-view/describe", test_describe);
  return g_test_run ();
}
