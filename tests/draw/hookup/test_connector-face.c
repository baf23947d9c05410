/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/hookup/connector-face.h"

#include <math.h>

#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

static BwFace
face_of (BwConnector connector, double pitch)
{
  return (BwFace){ connector, 20, 30, pitch };
}

/* Each face has the contacts that the connector's pins are numbered by, each once. */
static void
test_contacts (void)
{
  static const guint counts[BW_N_CONNECTORS] = {
    [BW_CONNECTOR_PERITELEVISION] = 21, /* EN 50049-1: 20 contacts and the shell */
    [BW_CONNECTOR_JAPANESE_21] = 21,    /* the same shell */
    [BW_CONNECTOR_DE_15] = 15,          [BW_CONNECTOR_DE_9] = 9,
    [BW_CONNECTOR_MINI_DIN_4] = 4,      [BW_CONNECTOR_DIN_6] = 6, /* DIN 45322 */
  };
  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    {
      const BwFaceShape *shape = bw_face_shape (i);
      guint seen = 0, n_pins;
      g_assert_cmpuint (shape != NULL ? shape->n : 0, ==, counts[i]);
      g_assert_true ((shape == NULL) == bw_connector_is_single (i));
      if (shape == NULL)
        continue;
      bw_connector_pins (i, BW_EDITION_CURRENT, &n_pins);
      g_assert_cmpuint (n_pins, ==, i == BW_CONNECTOR_DE_9 ? 0 : counts[i]); /* not laid down */
      for (guint k = 0; k < shape->n; k++)
        seen |= 1u << shape->contacts[k].number;
      g_assert_cmpuint (seen, ==, (1u << (shape->n + 1)) - 2);
    }
}

static void
contact (const BwFace *face, int number, double at[2])
{
  g_assert_true (bw_face_contact (face, number, &at[0], &at[1]));
}

/* From contact @a, is @c to the right of the way to @b, as seen on the page? */
static gboolean
turns_right (const BwFace *face, int a, int b, int c)
{
  double from[2], to[2], other[2];
  contact (face, a, from);
  contact (face, b, to);
  contact (face, c, other);
  return (to[0] - from[0]) * (other[1] - from[1]) - (to[1] - from[1]) * (other[0] - from[0]) > 0;
}

/* Which way round the contacts run does not change when a face is turned, only when it is mirrored.
 * From the solder side of the plug, which looks like the mating face of the socket, the rows of the
 * D connectors run from right to left with the next row below, those of the 21-pin connectors from
 * right to left with the even ones above, and 4, 3 of the mini-DIN stand over 2, 1 (common
 * practice, no source). */
static void
test_solder_side (void)
{
  const BwFace de_15 = face_of (BW_CONNECTOR_DE_15, 20), de_9 = face_of (BW_CONNECTOR_DE_9, 20);
  const BwFace p_21 = face_of (BW_CONNECTOR_PERITELEVISION, 20);
  const BwFace j_21 = face_of (BW_CONNECTOR_JAPANESE_21, 20);
  const BwFace yc = face_of (BW_CONNECTOR_MINI_DIN_4, 20);

  g_assert_false (turns_right (&de_15, 1, 5, 6));
  g_assert_false (turns_right (&de_15, 6, 10, 11));
  g_assert_false (turns_right (&de_9, 1, 5, 6));
  g_assert_true (turns_right (&p_21, 1, 19, 2));
  g_assert_true (turns_right (&j_21, 1, 19, 2));
  g_assert_false (turns_right (&yc, 3, 4, 1));
  g_assert_false (turns_right (&yc, 1, 2, 3) == turns_right (&yc, 3, 4, 1));
}

/* Contacts @first, @first + @step … @last stand in one row, in their order. */
static void
assert_row (BwConnector connector, int first, int last, int step)
{
  const BwFace face = face_of (connector, 20);
  double before[2], at[2];
  contact (&face, first, before);
  for (int i = first + step; i <= last; i += step)
    {
      contact (&face, i, at);
      g_assert_true (bw_near (at[0], before[0], 1e-9));
      g_assert_true (bw_near (at[1] - before[1], 20, 1e-9));
      before[1] = at[1];
    }
}

static void
test_rows (void)
{
  double one[2], two[2];
  const BwFace face = face_of (BW_CONNECTOR_PERITELEVISION, 20);
  assert_row (BW_CONNECTOR_DE_15, 1, 5, 1);
  assert_row (BW_CONNECTOR_DE_15, 6, 10, 1);
  assert_row (BW_CONNECTOR_DE_15, 11, 15, 1);
  assert_row (BW_CONNECTOR_DE_9, 1, 5, 1);
  assert_row (BW_CONNECTOR_DE_9, 6, 9, 1);
  assert_row (BW_CONNECTOR_PERITELEVISION, 1, 19, 2);
  assert_row (BW_CONNECTOR_PERITELEVISION, 2, 20, 2);
  contact (&face, 1, one);
  contact (&face, 2, two);
  g_assert_true (bw_near (two[1] - one[1], 10, 1e-9)); /* staggered by half a pitch */
}

/* At the pitch that numbers need, every contact has one, inside the outline and apart. */
static void
test_numbers (void)
{
  static const char *const fonts[] = { "Sans 10", "Serif 7", "Monospace 15" };
  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    for (guint f = 0; f < G_N_ELEMENTS (fonts) && bw_face_shape (i) != NULL; f++)
      {
        const BwInk other = { BW_THEME_LIGHT, fonts[f], BW_INK_SCREEN_DPI };
        const BwContactMark marks[BW_FACE_MAX_NUMBER + 1] = { { 0 } };
        g_autoptr (BwCanvas) canvas = bw_canvas_new (&other, 900, 900);
        const BwFace face = face_of (i, bw_face_numbered_pitch (i, canvas));
        const BwFace small = face_of (i, 0.9 * face.pitch);
        BwBox outline = bw_face_outline (&face);

        bw_face_claim_numbers (&face, canvas, marks, BW_CONTACT_UNUSED);
        g_assert_cmpuint (canvas->labels->len, ==, bw_face_shape (i)->n);
        test_labels_are_apart (canvas->labels, 900, 900, bw_kind_id (&bw_connectors, i));
        for (guint k = 0; k < canvas->labels->len; k++)
          {
            const BwLabel *label = &g_array_index (canvas->labels, BwLabel, k);
            g_assert_cmpfloat (label->box.x, >=, outline.x);
            g_assert_cmpfloat (label->box.x + label->box.width, <=, outline.x + outline.width);
          }
        bw_canvas_clear (canvas);
        bw_face_claim_numbers (&small, canvas, marks, BW_CONTACT_UNUSED);
        g_assert_cmpuint (canvas->labels->len, ==, 0);
      }
}

/* Contacts of less use than asked for have no number. */
static void
test_marks (void)
{
  BwContactMark marks[BW_FACE_MAX_NUMBER + 1] = { { 0 } };
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 900, 900);
  const BwFace face = face_of (BW_CONNECTOR_PERITELEVISION, 24);
  marks[15] = (BwContactMark){ BW_CONTACT_SIGNAL, BW_INK_RED };
  marks[13] = (BwContactMark){ BW_CONTACT_RETURN, BW_INK_GRAPHITE_LIGHT };

  bw_face_claim_numbers (&face, canvas, marks, BW_CONTACT_SIGNAL);
  g_assert_cmpuint (canvas->labels->len, ==, 1);
  g_assert_cmpint (test_find_label (canvas->labels, "15", 0)->role, ==, BW_INK_RED);
  bw_canvas_clear (canvas);
  bw_face_claim_numbers (&face, canvas, marks, BW_CONTACT_RETURN);
  g_assert_cmpuint (canvas->labels->len, ==, 2);
}

/* A wire at height @y from contact @number to the edge touches no other contact. */
static void
assert_clear (const BwFace *face, int number, gboolean to_right, double y)
{
  const BwFaceShape *shape = bw_face_shape (face->connector);
  double at[2];
  contact (face, number, at);
  for (guint i = 0; i < shape->n; i++)
    {
      double other[2];
      contact (face, shape->contacts[i].number, other);
      gboolean ahead = to_right ? other[0] > at[0] + 0.01 : other[0] < at[0] - 0.01;
      if (ahead && fabs (other[1] - y) < shape->contact_height * face->pitch / 2)
        g_error ("%s: the wire of %d crosses %d", bw_kind_id (&bw_connectors, face->connector),
                 number, shape->contacts[i].number);
    }
}

/* Wires of all conductors that a connector can carry, at once. */
static void
test_exits (void)
{
  static const int used[][8] = {
    [BW_CONNECTOR_PERITELEVISION] = { 7, 8, 11, 15, 16, 19, 20 },
    [BW_CONNECTOR_JAPANESE_21] = { 9, 10, 11, 15, 16, 19, 20 },
    [BW_CONNECTOR_DE_15] = { 1, 2, 3, 13, 14 },
    [BW_CONNECTOR_DE_9] = { 1, 3, 5, 7, 9 },
    [BW_CONNECTOR_MINI_DIN_4] = { 3, 4 },
    [BW_CONNECTOR_DIN_6] = { 1, 2, 3, 5 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (used); i++)
    for (guint right = 0; right < 2 && bw_face_shape (i) != NULL; right++)
      {
        const BwFace face = face_of (i, 20);
        double taken[8];
        for (guint n = 0; used[i][n] != 0; n++)
          {
            g_assert_true (bw_face_exit (&face, used[i][n], right, taken, n, &taken[n]));
            assert_clear (&face, used[i][n], right, taken[n]);
            for (guint k = 0; k < n; k++)
              g_assert_cmpfloat (fabs (taken[k] - taken[n]), >, 1);
          }
      }
  double y;
  const BwFace none = face_of (BW_CONNECTOR_DE_15, 20);
  g_assert_false (bw_face_exit (&none, 16, TRUE, NULL, 0, &y));
}

/* How many pixels of @box have something other than paper. */
static guint
count_ink (cairo_surface_t *surface, const BwBox *box)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  guint n = 0;
  for (int y = (int) box->y; y < (int) (box->y + box->height); y++)
    for (int x = (int) box->x; x < (int) (box->x + box->width); x++)
      n += data[y * stride + 4 * x + 3] != 0;
  return n;
}

static void
test_drawn (void)
{
  const BwContactMark marks[BW_FACE_MAX_NUMBER + 1] = { { 0 } };
  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 300, 400);
      cairo_t *cr = cairo_create (surface);
      const BwFace face = face_of (i, 24);
      BwBox box = { 20, 30, 30, 30 };
      if (bw_face_shape (i) != NULL)
        {
          box = bw_face_outline (&face);
          bw_face_draw_shell (&face, cr, &ink);
          bw_face_draw_contacts (&face, cr, &ink, marks);
        }
      else
        bw_plug_draw (cr, &ink, i, 35, 45, 30, BW_INK_RED);
      cairo_surface_flush (surface);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      g_assert_cmpuint (count_ink (surface, &box), >, (guint) (box.width * box.height * 0.5));
      g_assert_cmpuint (count_ink (surface, &(BwBox){ 0, 0, 300, 28 }), ==, 0);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/connector-face/contacts", test_contacts);
  g_test_add_func ("/connector-face/solder-side", test_solder_side);
  g_test_add_func ("/connector-face/rows", test_rows);
  g_test_add_func ("/connector-face/numbers", test_numbers);
  g_test_add_func ("/connector-face/marks", test_marks);
  g_test_add_func ("/connector-face/exits", test_exits);
  g_test_add_func ("/connector-face/drawn", test_drawn);
  return g_test_run ();
}
