/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/vector/view-private.h"

#include <math.h>
#include <string.h>

#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

static const struct
{
  double width;
  double height;
} sizes[] = { { 600, 400 }, { 1000, 650 }, { 1920, 1080 } };

static const TestSignal cases[] = {
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_J, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_443, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_PAL_60, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO },
  { "625-50-interlaced", BW_SYSTEM_PAL_N, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
  { "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y },
  { "750-60-progressive", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y },
};

static BwLevelsModel *
model_of (guint i, BwBarsForm bars)
{
  BwLevelsModel *model = test_levels_model (&cases[i], BW_CONTENT_BARS, bars);
  g_assert_true (bw_vector_view_can_draw (&bw_levels_model_case (model)->form));
  return model;
}

static BwVectorView
view_of (BwLevelsModel *model)
{
  return (BwVectorView){
    model, 0, bw_levels_model_picture_line (model), { 75, 75, BW_LOAD_75_OHM }, '.'
  };
}

static guint
find_case (BwColourSystem system, BwSignal signal)
{
  return test_find_signal (cases, G_N_ELEMENTS (cases), system, signal);
}

static const BwVectorTarget *
find_target (const GArray *targets, guint bar, gboolean switched)
{
  for (guint i = 0; i < targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (targets, BwVectorTarget, i);
      if (target->bar == bar && target->switched == switched)
        return target;
    }
  g_error ("no target %u", bar);
}

/* Where the bars should be */

/* SMPTE 170M-2004 tables A.1 (100 %) and A.3 (75 %), bars with setup: chroma peak to peak in IRE and
 * phase in degrees. */
static const struct
{
  BwBar bar;
  double pp_100_ire;
  double pp_75_ire;
  double phase_deg;
} table_a[] = {
  { BW_BAR_YELLOW, 82.7567, 62.0675, 167.0812 }, { BW_BAR_CYAN, 116.9817, 87.7363, 283.4558 },
  { BW_BAR_GREEN, 109.2338, 81.9253, 240.7098 }, { BW_BAR_MAGENTA, 109.2338, 81.9253, 60.7098 },
  { BW_BAR_RED, 116.9817, 87.7363, 103.4558 },   { BW_BAR_BLUE, 82.7567, 62.0675, 347.0812 },
};

static void
test_targets_170m (void)
{
  for (BwBarsForm bars = BW_BARS_100; bars <= BW_BARS_75; bars++)
    {
      g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE),
                                                  bars);
      const BwVectorView what = view_of (model);
      g_autoptr (GArray) targets = bw_vector_view_targets (&what);
      g_assert_cmpuint (targets->len, ==, 7);
      for (guint i = 0; i < G_N_ELEMENTS (table_a); i++)
        {
          const BwVectorTarget *target = find_target (targets, table_a[i].bar, FALSE);
          double pp_ire = bars == BW_BARS_100 ? table_a[i].pp_100_ire : table_a[i].pp_75_ire;
          g_assert_cmpfloat_with_epsilon (target->phase_deg, table_a[i].phase_deg, 1e-3);
          g_assert_cmpfloat_with_epsilon (2 * target->amplitude_v * 140, pp_ire, 1e-3);
        }
      const BwVectorTarget *burst = find_target (targets, BW_N_BARS, FALSE);
      g_assert_cmpfloat_with_epsilon (burst->phase_deg, 180, 1e-9);
      g_assert_cmpfloat_with_epsilon (2 * burst->amplitude_v * 140, 40, 1e-9);
    }
}

/* ITU-R BT.1700: E'Y = 0.299 R + 0.587 G + 0.114 B, U = 0.493 (B - Y), V = 0.877 (R - Y), in units
 * of 700 mV; V changes sign from line to line; burst 300 mV peak to peak at ±135°. */
static void
test_targets_bt1700 (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE),
                                              BW_BARS_75);
  const BwVectorView what = view_of (model);
  g_autoptr (GArray) targets = bw_vector_view_targets (&what);
  static const double rgb[][3] = { { 1, 1, 0 }, { 0, 1, 1 }, { 0, 1, 0 },
                                   { 1, 0, 1 }, { 1, 0, 0 }, { 0, 0, 1 } };

  g_assert_cmpuint (targets->len, ==, 14);
  for (guint i = 0; i < G_N_ELEMENTS (rgb); i++)
    {
      double r = 0.75 * rgb[i][0], g = 0.75 * rgb[i][1], b = 0.75 * rgb[i][2];
      double y = 0.299 * r + 0.587 * g + 0.114 * b;
      const BwVectorTarget *plus = find_target (targets, BW_BAR_YELLOW + i, FALSE);
      const BwVectorTarget *minus = find_target (targets, BW_BAR_YELLOW + i, TRUE);
      g_assert_cmpfloat_with_epsilon (plus->u_v, 0.7 * 0.493 * (b - y), 1e-6);
      g_assert_cmpfloat_with_epsilon (plus->v_v, 0.7 * 0.877 * (r - y), 1e-6);
      g_assert_cmpfloat_with_epsilon (minus->u_v, plus->u_v, 1e-12);
      g_assert_cmpfloat_with_epsilon (minus->v_v, -plus->v_v, 1e-12);
    }
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_N_BARS, FALSE)->phase_deg, 135, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_N_BARS, TRUE)->phase_deg, 225, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_N_BARS, TRUE)->amplitude_v, 0.15, 1e-9);
}

/* EBU N10 and ITU-R BT.601: blue at 100 % is Pb +350 mV, yellow -350; red is Pr +350, cyan -350. */
static void
test_targets_component (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT),
                                              BW_BARS_100);
  const BwVectorView what = view_of (model);
  g_autoptr (GArray) targets = bw_vector_view_targets (&what);
  g_assert_cmpuint (targets->len, ==, 6);
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_BAR_BLUE, FALSE)->u_v, 0.35, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_BAR_YELLOW, FALSE)->u_v, -0.35, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_BAR_RED, FALSE)->v_v, 0.35, 1e-9);
  g_assert_cmpfloat_with_epsilon (find_target (targets, BW_BAR_CYAN, FALSE)->v_v, -0.35, 1e-9);
}

static void
test_can_draw (void)
{
  BwWireForm form;
  bw_wire_form_standard (BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, BW_SHAPE_BILEVEL,
                         &form);
  g_assert_false (bw_vector_view_can_draw (&form));
  bw_wire_form_standard (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, BW_SHAPE_BILEVEL, &form);
  g_assert_false (bw_vector_view_can_draw (&form));
  bw_wire_form_standard (BW_SYSTEM_NONE, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, BW_SHAPE_BILEVEL, &form);
  g_assert_false (bw_vector_view_can_draw (&form));
}

/* The path */

static const BwVectorSample *
sample_at (const GArray *path, double time_s)
{
  const BwVectorSample *nearest = &g_array_index (path, BwVectorSample, 0);
  for (guint i = 0; i < path->len; i++)
    {
      const BwVectorSample *at = &g_array_index (path, BwVectorSample, i);
      if (fabs (at->time_s - time_s) < fabs (nearest->time_s - time_s))
        nearest = at;
    }
  return nearest;
}

/* In the middle of each bar the path has come to its place, to half a percent of the longest; in
 * PAL to one of the two, the same for all bars of a line and the other one on the next line. */
static void
check_path (const BwVectorView *what, gboolean switched)
{
  g_autoptr (GArray) targets = bw_vector_view_targets (what);
  g_autoptr (GArray) path = bw_vector_path_of (what, 0);
  BwRasterFigures figures;
  bw_raster_figures (bw_levels_model_case (what->model)->raster, &figures);

  g_assert_cmpuint (path->len, >, 100);
  for (guint bar = BW_BAR_YELLOW; bar <= BW_BAR_BLUE; bar++)
    {
      const BwVectorTarget *target = find_target (targets, bar, switched);
      double time_s = figures.h_sync_s - figures.h_datum_s + figures.h_back_porch_s
                      + figures.h_active_s * (bar + 0.5) / BW_N_BARS;
      const BwVectorSample *at = sample_at (path, time_s);
      g_assert_cmpfloat (hypot (at->u_v - target->u_v, at->v_v - target->v_v), <, 0.005 * 0.45);
    }
}

static gboolean
is_pal (BwColourSystem system)
{
  return system == BW_SYSTEM_PAL_B || system == BW_SYSTEM_PAL_M || system == BW_SYSTEM_PAL_N
         || system == BW_SYSTEM_PAL_60;
}

static gboolean
path_is_switched (const BwVectorView *what)
{
  g_autoptr (GArray) path = bw_vector_path_of (what, 0);
  BwRasterFigures figures;
  bw_raster_figures (bw_levels_model_case (what->model)->raster, &figures);
  double red_s = figures.h_sync_s + figures.h_back_porch_s
                 + figures.h_active_s * (BW_BAR_RED + 0.5) / BW_N_BARS;
  return sample_at (path, red_s)->v_v < 0;
}

static void
test_path (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    for (int line = 0; line < 4; line++)
      {
        g_autoptr (BwLevelsModel) model = model_of (i, BW_BARS_75);
        BwVectorView what = view_of (model);
        gboolean first = path_is_switched (&what);
        what.line += line;
        check_path (&what, is_pal (cases[i].system) && first == (line % 2 == 0));
      }
}

/* Twice as long without load; the places of the bars stay. */
static void
test_no_load (void)
{
  g_autoptr (BwLevelsModel) model = model_of (0, BW_BARS_75);
  BwVectorView what = view_of (model);
  g_autoptr (GArray) right = bw_vector_path_of (&what, 0);
  what.video.load_ohm = INFINITY;
  g_autoptr (GArray) open = bw_vector_path_of (&what, 0);
  const BwVectorSample *a = sample_at (right, 30e-6), *b = sample_at (open, 30e-6);

  g_assert_cmpfloat (hypot (a->u_v, a->v_v), >, 0.2);
  g_assert_cmpfloat_with_epsilon (b->u_v, 2 * a->u_v, 1e-9);
  g_assert_cmpfloat_with_epsilon (b->v_v, 2 * a->v_v, 1e-9);
}

/* The page */

static void
check_labels (const BwVectorView *what, double width, double height, const BwInk *with,
              guint may_leave)
{
  guint left_out = 0;
  g_autoptr (GArray) labels = test_texts (bw_vector_drawing (what, width, height, with), &left_out);

  test_labels_are_apart (labels, width, height, "vector view");
  test_labels_are_large (labels, with);
  g_assert_cmpuint (left_out, <=, may_leave);
}

static void
test_labels (void)
{
  static const double odd[][2] = { { 1, 1 }, { 90, 60 }, { 200, 500 }, { 320, 240 }, { 2400, 90 } };
  const BwInk large = { BW_THEME_DARK, "Serif 17", 0 };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwLevelsModel) model = model_of (i, i % BW_N_BARS_FORMS);
      BwVectorView what = view_of (model);
      for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
        check_labels (&what, sizes[s].width, sizes[s].height, &ink, s == 0 ? 2 : 0);
      what.video.load_ohm = i % 2 == 0 ? INFINITY : 37.5;
      for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
        {
          check_labels (&what, odd[s][0], odd[s][1], &ink, G_MAXUINT);
          check_labels (&what, odd[s][0], odd[s][1], &large, G_MAXUINT);
        }
    }
}

static void
test_figures (void)
{
  static const char *const shown[] = { "yellow", "cyan", "green",           "magenta",
                                       "red",    "blue", "167.1°",          "62.1",
                                       "burst",  "40",   "mV p-p",          "180°",
                                       "U (B",   "V (R", "SMPTE 170M-2004", "no standard" };
  g_autoptr (BwLevelsModel) model = model_of (0, BW_BARS_75);
  const BwVectorView what = view_of (model);
  g_autoptr (GArray) labels = test_texts (bw_vector_drawing (&what, 1000, 650, &ink), NULL);
  g_autofree char *words = test_description (bw_vector_drawing (&what, 1000, 650, &ink));

  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (!test_labels_have (labels, shown[i]))
      g_error ("\"%s\" is not shown; in words: %s", shown[i], words);
  g_assert_nonnull (strstr (words, "yellow, phase 167.1°"));
}

static void
test_figures_pal (void)
{
  g_autoptr (BwLevelsModel) model = model_of (find_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE),
                                              BW_BARS_75);
  const BwVectorView what = view_of (model);
  g_autoptr (GArray) labels = test_texts (bw_vector_drawing (&what, 1000, 650, &ink), NULL);
  test_find_label (labels, "burst, +V", 1); /* in the plane and in the table */
  test_find_label (labels, "burst, \u2212V", 1);
  g_assert_true (test_labels_have (labels, "135°"));
  g_assert_true (test_labels_have (labels, "225°"));
}

/* The phase to a tenth of a degree, and the bar whose place it is. */
static void
check_words (const BwDrawing *drawing, const BwDrawingPoint *point, const BwVectorTarget *target)
{
  g_autofree char *words = bw_drawing_words (drawing, point);
  g_autofree char *phase = g_strdup_printf (" at %.1f°", target->phase_deg);
  g_autofree char *other = g_strdup_printf (" at %.1f°", target->phase_deg + 1e-9);
  g_autofree char *bar = target->bar < BW_N_BARS
                             ? g_strconcat ("nearest bar: ", bw_kind_label (&bw_bars, target->bar),
                                            NULL)
                             : NULL;
  g_assert_true (strstr (words, phase) != NULL || strstr (words, other) != NULL);
  g_assert_true (bar == NULL || g_str_has_suffix (words, bar));
}

static void
test_round_trip (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        g_autoptr (BwLevelsModel) model = model_of (i, BW_BARS_75);
        const BwVectorView what = view_of (model);
        g_autoptr (GArray) targets = bw_vector_view_targets (&what);
        g_autoptr (BwDrawing) drawing = bw_vector_drawing (&what, sizes[s].width, sizes[s].height,
                                                           &ink);
        for (guint k = 0; k < targets->len; k++)
          {
            const BwVectorTarget *target = &g_array_index (targets, BwVectorTarget, k);
            BwDrawingPoint point;
            double x, y;
            g_assert_true (
                test_find (bw_drawing_ref (drawing), 0, target->u_v, target->v_v, &x, &y));
            g_assert_true (bw_drawing_read (drawing, x, y, &point));
            g_assert_cmpfloat_with_epsilon (point.across, target->u_v, 1e-9);
            g_assert_cmpfloat_with_epsilon (point.down, target->v_v, 1e-9);
            check_words (drawing, &point, target);
          }
        BwDrawingPoint outside;
        g_assert_false (bw_drawing_read (drawing, 1, 1, &outside));
      }
}

/* Halfway from red to blue the path of NTSC bars is drawn, straight, as both colours of the
 * transition move alike; a place beside it is paper or grid. */
static void
test_draw (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwLevelsModel) model = model_of (i, BW_BARS_75);
      const BwVectorView what = view_of (model);
      g_autoptr (GArray) targets = bw_vector_view_targets (&what);
      gboolean switched = is_pal (cases[i].system) && path_is_switched (&what);
      const BwVectorTarget *red = find_target (targets, BW_BAR_RED, switched);
      const BwVectorTarget *blue = find_target (targets, BW_BAR_BLUE, switched);
      cairo_surface_t *surface = test_paint (bw_vector_drawing (&what, 1000, 650, &ink));
      double x, y, darkest = 255;

      test_find (bw_vector_drawing (&what, 1000, 650, &ink), 0, 0.4 * red->u_v + 0.6 * blue->u_v,
                 0.4 * red->v_v + 0.6 * blue->v_v, &x, &y);
      for (int dx = -3; dx <= 3; dx++)
        darkest = fmin (darkest, test_pixel_at (surface, x + dx, y) & 0xff);
      g_assert_cmpfloat (darkest, <, 100);
      cairo_surface_destroy (surface);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/vector-view/targets/170m", test_targets_170m);
  g_test_add_func ("/vector-view/targets/bt1700", test_targets_bt1700);
  g_test_add_func ("/vector-view/targets/component", test_targets_component);
  g_test_add_func ("/vector-view/can-draw", test_can_draw);
  g_test_add_func ("/vector-view/path", test_path);
  g_test_add_func ("/vector-view/no-load", test_no_load);
  g_test_add_func ("/vector-view/labels", test_labels);
  g_test_add_func ("/vector-view/figures", test_figures);
  g_test_add_func ("/vector-view/figures/pal", test_figures_pal);
  g_test_add_func ("/vector-view/round-trip", test_round_trip);
  g_test_add_func ("/vector-view/draw", test_draw);
  return g_test_run ();
}
