/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "connector-face.h"

#include <math.h>

/* Where the contacts are, and how a wire gets out between them. */

/* Two staggered rows, 1, 3 … 19 and 2, 4 … 20, and the shell. */
#define PAIR(odd, y)                                                                               \
  { odd, 2.5, y },                                                                                 \
  {                                                                                                \
    odd + 1, 1, (y) + 0.5                                                                          \
  }

static const BwFaceContact contacts_21[] = {
  PAIR (1, 1),  PAIR (3, 2),  PAIR (5, 3),  PAIR (7, 4),   PAIR (9, 5),     PAIR (11, 6),
  PAIR (13, 7), PAIR (15, 8), PAIR (17, 9), PAIR (19, 10), { 21, 2.5, 11 },
};

/* Three rows of five, the middle one staggered. */
#define ROW_OF_THREE(n, y)                                                                         \
  { n, 0.75, y }, { n + 5, 1.5, (y) + 0.5 },                                                       \
  {                                                                                                \
    n + 10, 2.25, y                                                                                \
  }

static const BwFaceContact contacts_de_15[] = {
  ROW_OF_THREE (1, 0.7), ROW_OF_THREE (2, 1.7), ROW_OF_THREE (3, 2.7),
  ROW_OF_THREE (4, 3.7), ROW_OF_THREE (5, 4.7),
};

/* Rows of five and four. */
static const BwFaceContact contacts_de_9[] = {
  { 1, 1, 1 },     { 2, 1, 2 },     { 3, 1, 3 },     { 4, 1, 4 },     { 5, 1, 5 },
  { 6, 2.5, 1.5 }, { 7, 2.5, 2.5 }, { 8, 2.5, 3.5 }, { 9, 2.5, 4.5 },
};

/* Key at the bottom. */
static const BwFaceContact contacts_mini_din_4[] = {
  { 1, 1.85, 1.85 },
  { 2, 1.05, 1.85 },
  { 3, 2.2, 1.05 },
  { 4, 0.7, 1.05 },
};

/* Five at 60° on a circle, open to the notch at the top, and one in the middle. */
static const BwFaceContact contacts_din_6[] = {
  { 1, 2.47, 1.1 }, { 2, 2.47, 2.1 }, { 3, 1.6, 2.6 },
  { 4, 0.73, 2.1 }, { 5, 0.73, 1.1 }, { 6, 1.6, 1.6 },
};

#define SHAPE(contacts, ...)                                                                       \
  {                                                                                                \
    contacts, G_N_ELEMENTS (contacts), __VA_ARGS__                                                 \
  }

static const BwFaceShape shapes[BW_N_CONNECTORS] = {
  [BW_CONNECTOR_PERITELEVISION] = SHAPE (contacts_21, 3.5, 11.5, 1.1, 0.7, TRUE),
  [BW_CONNECTOR_JAPANESE_21] = SHAPE (contacts_21, 3.5, 11.5, 1.1, 0.7, TRUE),
  [BW_CONNECTOR_DE_15] = SHAPE (contacts_de_15, 3, 5.9, 0.6, 0.36, TRUE),
  [BW_CONNECTOR_DE_9] = SHAPE (contacts_de_9, 3.5, 6, 1.1, 0.7, TRUE),
  [BW_CONNECTOR_MINI_DIN_4] = SHAPE (contacts_mini_din_4, 2.9, 2.9, 0.6, 0.4, FALSE),
  [BW_CONNECTOR_DIN_6] = SHAPE (contacts_din_6, 3.2, 3.2, 0.6, 0.4, FALSE),
};

/**
 * bw_face_shape:
 *
 * Returns: (transfer none) (nullable): the face of @connector; %NULL where there is one plug for
 *   each conductor
 */
const BwFaceShape *
bw_face_shape (BwConnector connector)
{
  g_return_val_if_fail (connector < BW_N_CONNECTORS, NULL);
  return shapes[connector].n > 0 ? &shapes[connector] : NULL;
}

/**
 * bw_face_numbered_pitch:
 *
 * Returns: the least pitch at which every contact has room for its number
 */
double
bw_face_numbered_pitch (BwConnector connector, BwCanvas *canvas)
{
  const BwFaceShape *shape = bw_face_shape (connector);
  double digits = bw_canvas_measure (canvas, "20").width + canvas->pad / 4;
  return MAX (0.74 * canvas->text_height / shape->contact_height, digits / shape->contact_width);
}

/**
 * bw_face_outline:
 *
 * Returns: the rectangle around the outline
 */
BwBox
bw_face_outline (const BwFace *face)
{
  const BwFaceShape *shape = bw_face_shape (face->connector);
  return (BwBox){ face->x, face->y, shape->width * face->pitch, shape->height * face->pitch };
}

static const BwFaceContact *
find_contact (const BwFaceShape *shape, int number)
{
  for (guint i = 0; i < shape->n; i++)
    if (shape->contacts[i].number == number)
      return &shape->contacts[i];
  return NULL;
}

/**
 * bw_face_contact:
 * @x: (out): of the centre of contact @number
 * @y: (out): likewise
 *
 * Returns: whether there is such a contact
 */
gboolean
bw_face_contact (const BwFace *face, int number, double *x, double *y)
{
  const BwFaceContact *contact = find_contact (bw_face_shape (face->connector), number);
  if (contact == NULL)
    return FALSE;
  *x = face->x + contact->x * face->pitch;
  *y = face->y + contact->y * face->pitch;
  return TRUE;
}

/* Whether a wire from @from at height @y meets no other contact on its way out. */
static gboolean
is_clear (const BwFaceShape *shape, const BwFaceContact *from, gboolean to_right, double y)
{
  for (guint i = 0; i < shape->n; i++)
    {
      const BwFaceContact *other = &shape->contacts[i];
      double ahead = to_right ? other->x - from->x : from->x - other->x;
      if (other != from && ahead > 0 && fabs (other->y - y) < shape->contact_height / 2 + 0.03)
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_taken (const BwFace *face, double y, const double *taken, guint n_taken)
{
  for (guint i = 0; i < n_taken; i++)
    if (fabs (face->y + y * face->pitch - taken[i]) < 0.08 * face->pitch)
      return TRUE;
  return FALSE;
}

/**
 * bw_face_exit:
 * @to_right: else to the left
 * @taken: (array length=n_taken): heights at which other wires run out
 * @y: (out): height at which a wire from contact @number runs out of the face
 *
 * A wire leaves its contact level, or after a step up or down where another contact is in its way.
 *
 * Returns: whether there is such a contact
 */
gboolean
bw_face_exit (const BwFace *face, int number, gboolean to_right, const double *taken, guint n_taken,
              double *y)
{
  const BwFaceShape *shape = bw_face_shape (face->connector);
  const BwFaceContact *from = find_contact (shape, number);
  if (from == NULL)
    return FALSE;
  for (int step = 0; step < 25; step++)
    {
      double off = 0.05 * ((step + 1) / 2) * (step % 2 == 1 ? 1 : -1);
      double at = from->y + off;
      if (!is_clear (shape, from, to_right, at) || is_taken (face, at, taken, n_taken))
        continue;
      *y = face->y + at * face->pitch;
      return TRUE;
    }
  *y = face->y + from->y * face->pitch;
  return TRUE;
}
