/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/hookup/view.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "core/fit/results.h"
#include "draw/hookup/connector-face.h"
#include "draw/hookup/view-private.h"
#include "plans.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

/* In pixels of a screen. */
static const struct
{
  double width;
  double height;
  guint left_out; /* steps of the header at most */
} sizes[] = { { 640, 420, 8 }, { 1000, 650, 4 }, { 1920, 1080, 0 } };

static BwHookupView
view_of (const BwHookup *hookup)
{
  return (BwHookupView){ hookup, NULL, '.' };
}

static char *
pair_name (const BwHookup *hookup)
{
  return g_strdup_printf ("%s at %s, %u", hookup->source, hookup->input, hookup->alternative + 1);
}

/* Labels */

static void
check_labels (const BwHookup *hookup, double width, double height, const BwInk *with,
              guint most_left_out)
{
  const BwHookupView what = view_of (hookup);
  g_autoptr (BwCanvas) canvas = bw_canvas_new (with, 10, 10);
  g_autofree char *name = pair_name (hookup);
  guint left_out = 0;
  g_autoptr (GArray) labels = test_texts (bw_hookup_drawing (&what, width, height, with),
                                          &left_out);

  test_labels_are_apart (labels, width, height, name);
  for (guint i = 0; i < labels->len; i++)
    g_assert_cmpfloat (g_array_index (labels, BwLabel, i).box.height, >=,
                       canvas->text_height - 0.01);
  if (left_out > most_left_out)
    g_test_fail_printf ("%s at %gx%g: %u left out", name, width, height, left_out);
}

static void
check_sizes (const BwHookup *hookup, gpointer data)
{
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    check_labels (hookup, sizes[i].width, sizes[i].height, &ink, sizes[i].left_out);
}

static void
test_labels (void)
{
  test_each_hookup (TRUE, TRUE, check_sizes, NULL);
  test_each_hookup (FALSE, FALSE, check_sizes, NULL);
}

static void
check_odd (const BwHookup *hookup, gpointer data)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 }, { 4000, 3000 } };
  static const char *const fonts[] = { "Sans 6", "Serif 17", "Sans 40" };
  guint f = *(guint *) data % G_N_ELEMENTS (fonts);
  const BwInk other = { BW_THEME_DARK, fonts[f], 0 };

  for (guint i = 0; i < G_N_ELEMENTS (odd); i++)
    check_labels (hookup, odd[i][0], odd[i][1], &other, G_MAXUINT);
  *(guint *) data += 1;
}

static void
test_any_page (void)
{
  guint n = 0;
  test_each_hookup (TRUE, FALSE, check_odd, &n);
  test_each_hookup (FALSE, FALSE, check_odd, &n);
}

/* Conductors */

/* The number in "pin 15 (red)"; zero: there is none. */
static int
number_of (const char *pin)
{
  const char *digits = strpbrk (pin, "0123456789");
  return digits != NULL && g_str_has_prefix (pin, "pin ") ? atoi (digits) : 0;
}

/* The place of a thing, if it is drawn. */
static const BwDrawingPlace *
place_of (const BwDrawing *drawing, BwHookupPlaceKind kind, guint index, guint number)
{
  const GArray *places = bw_drawing_places (drawing);
  for (guint i = 0; i < places->len; i++)
    {
      const BwDrawingPlace *place = &g_array_index (places, BwDrawingPlace, i);
      if (place->id == bw_hookup_place_id (kind, index, number))
        return place;
    }
  return NULL;
}

/* The wire ends at the centre of the contact that the connection names, if its plug is drawn. */
static void
assert_end (const BwDrawing *drawing, const BwHookupRow *row, guint end, guint *seen)
{
  const BwHookupConnection *one = row->connection;
  int number = number_of (end == 1 ? one->to : one->from);
  const BwDrawingPlace *contact = place_of (drawing, BW_HOOKUP_PLACE_CONTACT, 2 * one->hop + end,
                                            (guint) number);
  if (number == 0 || contact == NULL)
    return;
  g_assert_true (row->has_pin[end]);
  g_assert_cmpfloat_with_epsilon (row->start[end], contact->box.x + contact->box.width / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (row->start_y[end], contact->box.y + contact->box.height / 2,
                                  1e-6);
  *seen += 1;
}

static void
check_conductors (const BwHookup *hookup, gpointer data)
{
  const BwHookupView what = view_of (hookup);
  g_autoptr (BwDrawing) drawing = bw_hookup_drawing (&what, 1920, 1080, &ink);
  BwHookupLayout layout;
  guint n = 0;

  bw_hookup_layout_init (&layout, 1920, 1080, &ink, &what);
  for (guint i = 0; i < layout.rows->len; i++)
    {
      const BwHookupRow *row = bw_hookup_row (&layout, i);
      if (row->connection == NULL)
        continue;
      n++;
      g_assert_cmpfloat (row->start[0], <, row->start[1]);
      assert_end (drawing, row, 0, data);
      assert_end (drawing, row, 1, data);
    }
  g_assert_cmpuint (n, ==, hookup->connections->len);
  bw_hookup_layout_clear (&layout);
}

static void
test_conductors (void)
{
  guint seen = 0;
  test_each_hookup (TRUE, TRUE, check_conductors, &seen);
  test_each_hookup (FALSE, TRUE, check_conductors, &seen);
  g_assert_cmpuint (seen, >, 200);
}

/* Rows name the pins of both ends: "R  15 → 15" by EN 50049-1 at a straight 21-pin lead. */
static void
test_row_words (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwSheet) sheet = test_hookup_sheet (catalogue, FALSE);
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, 2, 0, 0, NULL);
  const BwHookupView what = view_of (hookup);
  g_autoptr (GArray) labels = test_texts (bw_hookup_drawing (&what, 1000, 650, &ink), NULL);
  const char *const rows[] = { "R  15 → 15",        "G  11 → 11",     "B  7 → 7",
                               "Sync  19 → 20",     "return 13 → 13", "return 17 → 18",
                               "switching  16 → 16" };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    test_find_label (labels, rows[i], 0);
}

/* Parts */

static guint
count_labels (const GArray *labels, const char *text)
{
  guint n = 0;
  for (guint i = 0; i < labels->len; i++)
    n += g_str_equal (g_array_index (labels, BwLabel, i).text, text);
  return n;
}

/* Every resistor of the parts list stands in the drawing with its value, as often as it is bought. */
static void
check_parts (const BwHookup *hookup, gpointer data)
{
  const BwHookupView what = view_of (hookup);
  g_autofree char *name = pair_name (hookup);
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      g_autoptr (GArray) labels = test_texts (bw_hookup_drawing (&what, sizes[s].width,
                                                                 sizes[s].height, &ink),
                                              NULL);
      g_autoptr (GHashTable) wanted = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
      GHashTableIter iter;
      gpointer text, count;
      for (guint i = 0; i < hookup->parts->len; i++)
        {
          const BwHookupPart *part = hookup->parts->pdata[i];
          if (!(part->value_ohm > 0))
            continue;
          char *value = bw_quantity_format (part->value_ohm, BW_DIMENSION_RESISTANCE, 3, '.');
          guint before = GPOINTER_TO_UINT (g_hash_table_lookup (wanted, value));
          g_hash_table_replace (wanted, value, GUINT_TO_POINTER (before + part->count));
        }
      g_hash_table_iter_init (&iter, wanted);
      while (g_hash_table_iter_next (&iter, &text, &count))
        {
          if (count_labels (labels, text) != GPOINTER_TO_UINT (count))
            g_test_fail_printf ("%s at %gx%g: %s stands %u times, not %u", name, sizes[s].width,
                                sizes[s].height, (const char *) text, count_labels (labels, text),
                                GPOINTER_TO_UINT (count));
          *(guint *) data += 1;
        }
    }
}

static void
test_parts (void)
{
  guint seen = 0;
  test_each_hookup (TRUE, TRUE, check_parts, &seen);
  test_each_hookup (FALSE, TRUE, check_parts, &seen);
  g_assert_cmpuint (seen, >, 100);
}

/* Levels and verdicts */

static void
check_words (const BwHookup *hookup, gpointer data)
{
  const BwHookupView what = view_of (hookup);
  g_autoptr (GArray) labels = test_texts (bw_hookup_drawing (&what, 1920, 1080, &ink), NULL);
  g_autofree char *before = bw_fit_verdict_short (&hookup->fit_before);
  g_autofree char *after = bw_fit_verdict_short (&hookup->fit_after);
  test_find_label (labels, before, 0);
  if (hookup->plan != NULL)
    test_find_label (labels, after, 0);
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      g_autofree char *nominal = bw_quantity_format (level->nominal_v, BW_DIMENSION_VOLTAGE, 3,
                                                     '.');
      g_autofree char *spread = bw_quantity_format_range ((BwRange){ level->min_v, level->max_v },
                                                          BW_DIMENSION_VOLTAGE, 3, '.');
      g_assert_true (test_labels_have (labels, nominal));
      if (level->max_v > level->min_v + 1e-9)
        g_assert_true (test_labels_have (labels, spread));
    }
  for (guint i = 0; i < hookup->needs->len; i++)
    g_assert_true (test_labels_have (labels, hookup->needs->pdata[i]));
  *(guint *) data += hookup->needs->len;
}

static void
test_words (void)
{
  guint needs = 0;
  test_each_hookup (TRUE, FALSE, check_words, &needs);
  test_each_hookup (FALSE, FALSE, check_words, &needs);
  g_assert_cmpuint (needs, >, 3);
}

static void
check_described (const BwHookup *hookup, gpointer data)
{
  const BwHookupView what = view_of (hookup);
  g_autofree char *words = test_description (bw_hookup_drawing (&what, 1000, 650, &ink));
  g_assert_nonnull (strstr (words, hookup->source));
  g_assert_nonnull (strstr (words, hookup->input));
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      g_assert_nonnull (strstr (words, one->from));
      g_assert_nonnull (strstr (words, one->through));
    }
}

static void
test_described (void)
{
  test_each_hookup (FALSE, FALSE, check_described, NULL);
}

/* The delay of 10 m at two thirds of the speed of light, by the lead's own velocity. */
static void
test_lead (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwSheet) sheet = test_hookup_sheet (catalogue, FALSE);
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, 2, 0, 0, NULL);
  const BwLeadType type = { .id = (char *) "a",
                            .name = (char *) "a",
                            .z_ohm = 75,
                            .velocity = 0.66,
                            .loss_db_per_m = 0.036,
                            .loss_hz = 10e6,
                            .law_from_hz = 1e6,
                            .law_to_hz = 100e6 };
  const BwLeadCase lead = { .lead = { &type, 10, 0 }, .top_hz = 10e6 };
  BwHookupView what = view_of (hookup);
  g_assert_null (bw_hookup_view_lead (&what));
  what.lead = &lead;
  g_autofree char *words = bw_hookup_view_lead (&what);
  g_assert_cmpstr (words, ==, "10\u00a0m, 50.5\u00a0ns late, 0.36\u00a0dB lost at 10\u00a0MHz");
  g_autoptr (GArray) labels = test_texts (bw_hookup_drawing (&what, 1000, 650, &ink), NULL);
  g_assert_true (test_labels_have (labels, words));
}

/* Reading */

/* In the middle of each thing, if nothing stands before it there, it is read, and it says what it is;
 * contacts and parts always stand in front. */
static void
check_reading (const BwHookup *hookup, gpointer data)
{
  const BwHookupView what = view_of (hookup);
  g_autoptr (BwDrawing) drawing = bw_hookup_drawing (&what, 1000, 650, &ink);
  const GArray *places = bw_drawing_places (drawing);

  for (guint i = 0; i < places->len; i++)
    {
      const BwDrawingPlace *place = &g_array_index (places, BwDrawingPlace, i);
      guint kind = place->id >> 24;
      double x = place->box.x + place->box.width / 2, y = place->box.y + place->box.height / 2;
      BwDrawingPoint point;
      g_assert_true (bw_drawing_read (drawing, x, y, &point));
      if (kind == BW_HOOKUP_PLACE_CONTACT || kind == BW_HOOKUP_PLACE_PART)
        g_assert_cmphex (point.id, ==, place->id);
      point = (BwDrawingPoint){ place->id, 0.5, 0.5 };
      g_autofree char *words = bw_drawing_words (drawing, &point);
      g_assert_cmpuint (strlen (words), >, 10);
      g_assert_true (g_utf8_validate (words, -1, NULL));
      *(guint *) data += 1;
    }
}

/* The arrow keys come to every contact, part, box and level, and to every conductor: from the first
 * thing on, each new one is tried in all four directions. */
static void
check_keys (const BwHookup *hookup, gpointer data)
{
  static const double steps[][2] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 } };
  const BwHookupView what = view_of (hookup);
  g_autoptr (BwDrawing) drawing = bw_hookup_drawing (&what, 1000, 650, &ink);
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, 2 * sizeof (double));
  double first[2] = { -1, -1 };
  BwDrawingPoint point;

  if (!bw_drawing_step (drawing, 1, 0, &first[0], &first[1]))
    return;
  g_array_append_val (at, first);
  for (guint i = 0; i < at->len; i++)
    for (guint k = 0; k < G_N_ELEMENTS (steps); k++)
      {
        const double *from = (const double *) (gpointer) at->data + 2 * i;
        double to[2] = { from[0], from[1] };
        if (!bw_drawing_step (drawing, steps[k][0], steps[k][1], &to[0], &to[1])
            || !bw_drawing_read (drawing, to[0], to[1], &point)
            || !g_hash_table_add (seen, GUINT_TO_POINTER (point.id)))
          continue;
        g_array_append_val (at, to);
      }
  for (guint i = 0; i < bw_drawing_places (drawing)->len; i++)
    {
      const BwDrawingPlace *place = &g_array_index (bw_drawing_places (drawing), BwDrawingPlace, i);
      *(guint *) data += !g_hash_table_contains (seen, GUINT_TO_POINTER (place->id));
    }
}

static void
test_keys (void)
{
  guint missed = 0;
  test_each_hookup (FALSE, FALSE, check_keys, &missed);
  g_assert_cmpuint (missed, ==, 0);
}

static void
test_reading (void)
{
  guint seen = 0;
  test_each_hookup (FALSE, FALSE, check_reading, &seen);
  g_assert_cmpuint (seen, >, 300);
}

/* Pin 8 of the peritelevision connector at an input whose source does not drive it. */
static void
test_contact_words (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwSheet) sheet = test_hookup_sheet (catalogue, FALSE);
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, 1, 0, 0, NULL);
  const BwHookupView what = view_of (hookup);
  g_autoptr (BwDrawing) drawing = bw_hookup_drawing (&what, 1000, 650, &ink);
  const BwDrawingPoint eight = { bw_hookup_place_id (BW_HOOKUP_PLACE_CONTACT, 1, 8), 0.5, 0.5 };
  const BwDrawingPoint one = { bw_hookup_place_id (BW_HOOKUP_PLACE_CONTACT, 1, 1), 0.5, 0.5 };
  g_autofree char *selects = bw_drawing_words (drawing, &eight);
  g_autofree char *open = bw_drawing_words (drawing, &one);
  g_assert_nonnull (strstr (selects, "function switching"));
  g_assert_nonnull (strstr (selects, "supply of 12\u00a0V"));
  g_assert_nonnull (strstr (open, "left open"));
}

/* The same plan drawn twice gives the same picture, whatever was drawn before. */
static void
test_same (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwSheet) sheet = test_hookup_sheet (catalogue, FALSE);
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, 0, 0, 0, NULL);
  const BwHookupView what = view_of (hookup);
  cairo_surface_t *surfaces[2];
  for (guint i = 0; i < 2; i++)
    surfaces[i] = test_paint (bw_hookup_drawing (&what, 800, 500, &ink));
  gsize length = 500 * (gsize) cairo_image_surface_get_stride (surfaces[0]);
  g_assert_cmpmem (cairo_image_surface_get_data (surfaces[0]), length,
                   cairo_image_surface_get_data (surfaces[1]), length);
  cairo_surface_destroy (surfaces[0]);
  cairo_surface_destroy (surfaces[1]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hookup-view/labels", test_labels);
  g_test_add_func ("/hookup-view/any-page", test_any_page);
  g_test_add_func ("/hookup-view/conductors", test_conductors);
  g_test_add_func ("/hookup-view/row-words", test_row_words);
  g_test_add_func ("/hookup-view/parts", test_parts);
  g_test_add_func ("/hookup-view/words", test_words);
  g_test_add_func ("/hookup-view/described", test_described);
  g_test_add_func ("/hookup-view/lead", test_lead);
  g_test_add_func ("/hookup-view/reading", test_reading);
  g_test_add_func ("/hookup-view/keys", test_keys);
  g_test_add_func ("/hookup-view/contact-words", test_contact_words);
  g_test_add_func ("/hookup-view/same", test_same);
  return g_test_run ();
}
