/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/detail/view.h"

#include <math.h>
#include <string.h>

#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

static const struct
{
  double width;
  double height;
} sizes[] = { { 600, 400 }, { 1000, 650 }, { 1920, 1080 } };

typedef struct
{
  const char *name;
  void (*change) (BwDetailCase *what);
} Example;

/* Everything known: composite of the 525-line system on a 19-inch grille. */
static void
all_links (BwDetailCase *what)
{
  what->diagonal_m = 19 * 0.0254;
  what->mask = BW_MASK_GRILLE;
  what->pitch_m = 0.3e-3;
  what->spot_m = 0.6e-3;
  what->bandwidth_hz = 10e6;
  what->active_s = 52.66e-6;
  what->active_lines = 485;
  what->interlaced = TRUE;
  what->signal = BW_SIGNAL_COMPOSITE;
  what->system = BW_SYSTEM_NTSC_M;
  what->detail_hz = 5.5e6;
  what->lead_hz = 40e6;
  what->overscan_h = what->overscan_v = 0.05;
  what->claimed_lines = 900;
}

static void
mask_alone (BwDetailCase *what)
{
  what->diagonal_m = 0.33;
  what->mask = BW_MASK_SLOT;
  what->pitch_m = 0.6e-3;
}

static void
no_claim (BwDetailCase *what)
{
  all_links (what);
  what->claimed_lines = 0;
}

static void
dot_mask (BwDetailCase *what)
{
  all_links (what);
  what->mask = BW_MASK_DOT;
  what->pitch_m = 0.28e-3;
  what->spot_m = 0.4e-3;
  what->signal = BW_SIGNAL_RGB;
  what->active_s = 20e-6;
  what->samples = 640;
  what->detail_hz = 0;
  what->bandwidth_hz = 80e6;
  what->lead_hz = 200e6;
  what->interlaced = FALSE;
  what->claimed_lines = 480;
}

static void
mono_tube (BwDetailCase *what)
{
  all_links (what);
  what->diagonal_m = 9 * 0.0254;
  what->mask = BW_MASK_MONO;
  what->pitch_m = 0;
  what->spot_m = 0.25e-3;
  what->signal = BW_SIGNAL_LUMA;
  what->system = BW_SYSTEM_NONE;
}

static void
wide (BwDetailCase *what)
{
  all_links (what);
  what->aspect = (BwRatio){ 16, 9 };
  what->diagonal_m = 32 * 0.0254;
  what->pitch_m = 0.8e-3;
  what->spot_m = 1.1e-3;
  what->signal = BW_SIGNAL_COMPONENT;
  what->active_s = 26e-6;
  what->active_lines = 1035;
  what->detail_hz = what->bandwidth_hz = 30e6;
  what->claimed_lines = 1000;
}

static void
without_spot (BwDetailCase *what)
{
  all_links (what);
  what->spot_m = 0;
}

static void
far_apart (BwDetailCase *what)
{
  all_links (what);
  what->lead_hz = 900e6;
  what->bandwidth_hz = 400e6;
  what->spot_m = 0.02e-3;
  what->pitch_m = 0.06e-3;
  what->claimed_lines = 20;
}

static void
high_claim (BwDetailCase *what)
{
  mask_alone (what);
  what->claimed_lines = 4000;
}

static const Example examples[] = {
  { "all links", all_links }, { "mask alone", mask_alone }, { "no claim", no_claim },
  { "dot mask", dot_mask },   { "mono tube", mono_tube },   { "16:9", wide },
  { "far apart", far_apart }, { "high claim", high_claim },
};

/* A drawing of an example; the view borrows from it. */
typedef struct
{
  BwDetailCase what;
  BwDetail detail;
  BwDetailView view;
} Drawing;

static void
drawing_init (Drawing *d, void (*change) (BwDetailCase *what), BwDetailViewKind kind)
{
  bw_detail_case_init (&d->what);
  if (change != NULL)
    change (&d->what);
  bw_detail_compute (&d->what, &d->detail);
  d->view = (BwDetailView){ kind, &d->what, &d->detail, NULL, '.' };
}

static void
test_labels (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
      for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
        {
          Drawing d;
          drawing_init (&d, examples[i].change, kind);
          g_autoptr (GArray) labels = test_texts (bw_detail_drawing (&d.view, sizes[s].width,
                                                                     sizes[s].height, &ink),
                                                  NULL);
          g_assert_cmpuint (labels->len, >, 0);
          test_labels_are_apart (labels, sizes[s].width, sizes[s].height, examples[i].name);
        }
}

static void
test_labels_on_any_page (void)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 } };
  static const char *const fonts[] = { "Sans 6", "Serif 17", "Sans 40" };

  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
      for (guint f = 0; f < G_N_ELEMENTS (fonts); f++)
        for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
          {
            const BwInk other = { BW_THEME_DARK, fonts[f], 0 };
            Drawing d;
            drawing_init (&d, examples[i].change, kind);
            g_autoptr (GArray) labels = test_texts (bw_detail_drawing (&d.view, odd[s][0],
                                                                       odd[s][1], &other),
                                                    NULL);
            test_labels_are_apart (labels, odd[s][0], odd[s][1], examples[i].name);
          }
}

/* No figure and no name of the chain is left out, at any of the sizes. */
static void
test_chain_is_whole (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        Drawing d;
        drawing_init (&d, examples[i].change, BW_DETAIL_CHAIN);
        g_autoptr (GArray) labels = test_texts (bw_detail_drawing (&d.view, sizes[s].width,
                                                                   sizes[s].height, &ink),
                                                NULL);
        for (guint link = 0; link < BW_N_LINKS; link++)
          {
            g_assert_true (test_labels_have (labels, bw_kind_label (&bw_detail_links, link)));
            if (!(d.detail.limit_tvl[link] > 0))
              continue;
            g_autofree char *tvl = bw_quantity_format (d.detail.limit_tvl[link],
                                                       BW_DIMENSION_TV_LINES,
                                                       d.detail.limit_tvl[link] >= 999.5 ? 4 : 3,
                                                       '.');
            if (!test_labels_have (labels, tvl))
              g_error ("%s at %gx%g: %s is left out", examples[i].name, sizes[s].width,
                       sizes[s].height, tvl);
          }
        g_assert_true (test_labels_have (labels, "all together"));
        g_assert_true (test_labels_have (labels, "TV lines per picture height"));
      }
}

/* Each curve of the MTF has its name, at any of the sizes, where all links are known. */
static void
test_curves_are_named (void)
{
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      Drawing d;
      drawing_init (&d, all_links, BW_DETAIL_MTF);
      g_autoptr (GArray) labels = test_texts (bw_detail_drawing (&d.view, sizes[s].width,
                                                                 sizes[s].height, &ink),
                                              NULL);
      for (guint link = 0; link < BW_N_LINKS; link++)
        test_find_label (labels, bw_kind_label (&bw_detail_links, link), 0);
      test_find_label (labels, "all together", 0);
      g_assert_true (test_labels_have (labels, "MHz"));
      g_assert_true (test_labels_have (labels, "claimed: 900"));
    }
}

/* What is read at a place lies at that place. */
static void
test_read_and_back (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
      for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
        {
          Drawing d;
          guint n_read = 0;
          drawing_init (&d, examples[i].change, kind);
          g_autoptr (BwDrawing) drawing = bw_detail_drawing (&d.view, sizes[s].width,
                                                             sizes[s].height, &ink);
          for (double x = 1.3; x < sizes[s].width; x += sizes[s].width / 14)
            {
              BwDrawingPoint point;
              if (!bw_drawing_read (drawing, x, sizes[s].height * 0.4, &point))
                continue;
              g_autofree char *words = bw_drawing_words (drawing, &point);
              g_assert_true (isfinite (point.across));
              g_assert_null (strstr (words, "nan"));
              g_assert_cmpfloat_with_epsilon (test_x_of (bw_drawing_ref (drawing), point.id,
                                                         point.across),
                                              x, 1e-6);
              n_read++;
            }
          if (bw_detail_view_can_draw (&d.view))
            g_assert_cmpuint (n_read, >, 5);
          else
            g_assert_cmpuint (n_read, ==, 0);
        }
}

/* What is read at @across, in words. */
static char *
words_at (const BwDetailView *view, guint id, double across)
{
  g_autoptr (BwDrawing) drawing = bw_detail_drawing (view, 1000, 650, &ink);
  const BwDrawingPoint point = { id, across, 0.5 };
  double x, y;
  g_assert_true (bw_drawing_find (drawing, &point, &x, &y));
  return bw_drawing_words (drawing, &point);
}

/* What is read is what the core says at that place. */
static void
test_read_values (void)
{
  Drawing d;

  drawing_init (&d, all_links, BW_DETAIL_MTF);
  g_autofree char *half = words_at (&d.view, 0, d.detail.mtf_tvl[2]);
  g_assert_nonnull (strstr (half, "all together leave 50\u00a0%")); /* BW_MODULATION_CRISP */

  drawing_init (&d, all_links, BW_DETAIL_PITCH);
  g_autofree char *pitch = words_at (&d.view, 0, d.what.pitch_m);
  /* TV lines are counted per picture height: height / pitch */
  g_assert_cmpint ((int) round (19 * 0.0254 * 3 / 5 / 0.3e-3), ==, 965);
  g_assert_nonnull (strstr (pitch, "965\u00a0lines at the sampling limit"));

  drawing_init (&d, all_links, BW_DETAIL_STRUCTURE);
  g_autofree char *peak = words_at (&d.view, 0, d.detail.line_pitch_m);
  g_assert_nonnull (strstr (peak, ": 100\u00a0% of the peak")); /* in the middle of a line */
  g_autofree char *between = words_at (&d.view, 0, 0.5 * d.detail.line_pitch_m);
  double least = g_ascii_strtod (strstr (between, ": ") + 2, NULL) / 100;
  /* (max − min)/(max + min) is the modulation that the core gives; the words have two digits */
  g_assert_cmpfloat_with_epsilon ((1 - least) / (1 + least), d.detail.line_modulation, 0.005);
}

/* Each row of the chain reads its link, from the top. */
static void
test_read_rows (void)
{
  Drawing d;
  int last = -1;

  drawing_init (&d, all_links, BW_DETAIL_CHAIN);
  g_autoptr (BwDrawing) drawing = bw_detail_drawing (&d.view, 1000, 650, &ink);
  double x = test_x_of (bw_drawing_ref (drawing), 0, 100);
  for (double y = 0; y < 650; y++)
    {
      BwDrawingPoint point;
      if (!bw_drawing_read (drawing, x, y, &point) || (int) point.id == last)
        continue;
      g_assert_cmpint ((int) point.id, ==, ++last);
      double limit_tvl = last < BW_N_LINKS ? d.detail.limit_tvl[last] : d.detail.limiting_tvl;
      g_autofree char *words = bw_drawing_words (drawing, &point);
      g_autofree char *limit = g_strdup_printf (": limit %.0f", round (limit_tvl));
      g_assert_nonnull (strstr (words, limit));
    }
  g_assert_cmpint (last, ==, BW_N_LINKS);
}

/* Without a width of the spot the lines are drawn with a typical one, twice the pitch of 0.3 mm, and it is said to
 * be assumed; with one nothing is. */
static void
test_assumed_spot (void)
{
  Drawing d;
  drawing_init (&d, without_spot, BW_DETAIL_STRUCTURE);
  g_assert_true (bw_detail_view_can_draw (&d.view));
  g_autofree char *assumed = test_description (bw_detail_drawing (&d.view, 600, 400, &ink));
  g_assert_nonnull (strstr (assumed, "assumed"));
  g_assert_nonnull (strstr (assumed, "0.61\u00a0mm"));
  drawing_init (&d, all_links, BW_DETAIL_STRUCTURE);
  g_autofree char *given = test_description (bw_detail_drawing (&d.view, 600, 400, &ink));
  g_assert_null (strstr (given, "assumed"));
}

/* Where not enough is known nothing is drawn, and it is said what is lacking. */
static void
test_lacking (void)
{
  Drawing d;
  for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
    {
      drawing_init (&d, NULL, kind);
      g_assert_false (bw_detail_view_can_draw (&d.view));
      g_autofree char *says = test_description (bw_detail_drawing (&d.view, 600, 400, &ink));
      g_autoptr (GArray) labels = test_texts (bw_detail_drawing (&d.view, 600, 400, &ink), NULL);
      g_assert_cmpuint (labels->len, ==, 1);
      test_find_label (labels, says, 0);
    }
  drawing_init (&d, mono_tube, BW_DETAIL_PITCH);
  g_assert_false (bw_detail_view_can_draw (&d.view));
  drawing_init (&d, mask_alone, BW_DETAIL_STRUCTURE);
  g_assert_false (bw_detail_view_can_draw (&d.view));
  drawing_init (&d, mask_alone, BW_DETAIL_CHAIN);
  g_assert_true (bw_detail_view_can_draw (&d.view));
}

/* Pixels */

static cairo_surface_t *
draw (const BwDetailView *view, int width, int height, BwTheme theme)
{
  const BwInk with = { theme, "Sans 10", BW_INK_SCREEN_DPI };
  return test_paint (bw_detail_drawing (view, width, height, &with));
}

static guint32
pixel (cairo_surface_t *surface, int x, int y)
{
  const guchar *row = cairo_image_surface_get_data (surface)
                      + (gssize) y * cairo_image_surface_get_stride (surface);
  return *(const guint32 *) (gconstpointer) (row + 4 * (gssize) x) & 0xffffff;
}

/* The y of the middle of the row of @link, as it is read. */
static int
row_middle (const BwDrawing *drawing, double x, guint link)
{
  int first = -1, last = -1;
  for (int y = 0; y < 650; y++)
    {
      BwDrawingPoint point;
      if (bw_drawing_read (drawing, x, y, &point) && point.id == link)
        {
          first = first < 0 ? y : first;
          last = y;
        }
    }
  g_assert_cmpint (first, >=, 0);
  return (first + last) / 2;
}

/* The right edge of the drawn bar stands at the limit on the scale: the edge is the last pixel of
 * full ink on the bar's middle, before the paper and the figure that follow it. */
static void
test_bar_ends_at_limit (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    for (guint link = 0; link < BW_N_LINKS; link++)
      {
        Drawing d;
        drawing_init (&d, examples[i].change, BW_DETAIL_CHAIN);
        g_autoptr (BwDrawing) drawing = bw_detail_drawing (&d.view, 1000, 650, &ink);
        double end = test_x_of (bw_drawing_ref (drawing), link, d.detail.limit_tvl[link]);
        double start = test_x_of (bw_drawing_ref (drawing), link, 0);
        if (!(d.detail.limit_tvl[link] > 0) || isnan (end))
          continue;
        int y = row_middle (drawing, start + 1, link);
        cairo_surface_t *surface = draw (&d.view, 1000, 650, BW_THEME_LIGHT);
        guint32 paper = bw_ink_rgb (BW_THEME_LIGHT, BW_INK_PAPER);
        g_assert_cmphex (pixel (surface, (int) end + 3, y), ==, paper);
        g_assert_cmphex (pixel (surface, (int) end - 3, y), !=, paper);
        g_assert_cmphex (pixel (surface, (int) end, y), !=, paper);
        cairo_surface_destroy (surface);
      }
}

static guint
count_inked (cairo_surface_t *surface, BwTheme theme)
{
  guint32 paper = bw_ink_rgb (theme, BW_INK_PAPER);
  guint n = 0;
  for (int y = 0; y < cairo_image_surface_get_height (surface); y++)
    for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
      n += pixel (surface, x, y) != paper;
  return n;
}

/* Every drawing has ink in every theme, the state of cairo is as before, and another value gives
 * another drawing. */
static void
test_ink (void)
{
  for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
    for (BwTheme theme = 0; theme < BW_N_THEMES; theme++)
      {
        Drawing d, other;
        drawing_init (&d, all_links, kind);
        drawing_init (&other, dot_mask, kind);
        cairo_surface_t *one = draw (&d.view, 600, 400, theme);
        cairo_surface_t *two = draw (&other.view, 600, 400, theme);
        g_assert_cmpuint (count_inked (one, theme), >, 3000);
        g_assert_cmpint (memcmp (cairo_image_surface_get_data (one),
                                 cairo_image_surface_get_data (two),
                                 (gsize) cairo_image_surface_get_stride (one) * 400),
                         !=, 0);
        cairo_surface_destroy (one);
        cairo_surface_destroy (two);
      }
}

/* Limits over the glass turn to frequencies as in the core: 2·B·T/aspect of what is seen. */
static void
test_frequency (void)
{
  Drawing d;
  drawing_init (&d, all_links, BW_DETAIL_MTF);
  g_autofree char *words = words_at (&d.view, 0, d.detail.limit_tvl[BW_LINK_AMPLIFIER]);
  g_assert_nonnull (strstr (words, "(10\u00a0MHz)"));
  drawing_init (&d, mask_alone, BW_DETAIL_MTF);
  g_autofree char *without = words_at (&d.view, 0, 400);
  g_assert_null (strstr (without, "Hz"));
}

/* In words: the limits that the chain shows, and with the decimal mark asked for. */
static void
test_describe (void)
{
  Drawing d;
  drawing_init (&d, all_links, BW_DETAIL_CHAIN);
  g_autofree char *chain = test_description (bw_detail_drawing (&d.view, 600, 400, &ink));
  g_assert_nonnull (strstr (chain, "limits first"));
  g_assert_nonnull (strstr (chain, "of the loss"));
  drawing_init (&d, all_links, BW_DETAIL_STRUCTURE);
  d.view.mark = ',';
  g_autofree char *structure = test_description (bw_detail_drawing (&d.view, 600, 400, &ink));
  g_assert_nonnull (strstr (structure, "0,6\u00a0mm"));
  g_assert_null (strstr (structure, "0.6"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/detail-view/labels", test_labels);
  g_test_add_func ("/detail-view/labels-on-any-page", test_labels_on_any_page);
  g_test_add_func ("/detail-view/chain-is-whole", test_chain_is_whole);
  g_test_add_func ("/detail-view/curves-are-named", test_curves_are_named);
  g_test_add_func ("/detail-view/read-and-back", test_read_and_back);
  g_test_add_func ("/detail-view/read-values", test_read_values);
  g_test_add_func ("/detail-view/read-rows", test_read_rows);
  g_test_add_func ("/detail-view/assumed-spot", test_assumed_spot);
  g_test_add_func ("/detail-view/lacking", test_lacking);
  g_test_add_func ("/detail-view/bar-ends-at-limit", test_bar_ends_at_limit);
  g_test_add_func ("/detail-view/ink", test_ink);
  g_test_add_func ("/detail-view/frequency", test_frequency);
  g_test_add_func ("/detail-view/describe", test_describe);
  return g_test_run ();
}
