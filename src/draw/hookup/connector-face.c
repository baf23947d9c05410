/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "connector-face.h"

/* The faces, drawn. */

#define OUTLINE 0.06 /* in pitches */
#define RING 0.065   /* in heights of a contact */
#define SIGNAL_RING 0.14
#define LEAST_LINE 0.75
#define WASH 0.22

static void
rounded_box (cairo_t *cr, double x, double y, double width, double height, double radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + width - radius, y + radius, radius, -G_PI_2, 0);
  cairo_arc (cr, x + width - radius, y + height - radius, radius, 0, G_PI_2);
  cairo_arc (cr, x + radius, y + height - radius, radius, G_PI_2, G_PI);
  cairo_arc (cr, x + radius, y + radius, radius, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

/* A shell with one slanted edge, at the end of pin 21. */
static void
path_21 (cairo_t *cr)
{
  cairo_move_to (cr, 0.25, 0.2);
  cairo_line_to (cr, 3.25, 0.2);
  cairo_line_to (cr, 3.25, 10.7);
  cairo_line_to (cr, 2.5, 11);
  cairo_line_to (cr, 0.25, 11.4);
  cairo_close_path (cr);
}

/* The D, its longer side at the left. */
static void
path_d (cairo_t *cr, const BwFaceShape *shape)
{
  double w = shape->width - 0.1, h = shape->height - 0.05;
  cairo_move_to (cr, 0.4, 0.05);
  cairo_curve_to (cr, 0.1, 0.05, 0.1, 0.1, 0.1, 0.4);
  cairo_line_to (cr, 0.1, h - 0.35);
  cairo_curve_to (cr, 0.1, h, 0.1, h, 0.4, h);
  cairo_line_to (cr, w - 0.3, h - 0.45);
  cairo_curve_to (cr, w, h - 0.5, w, h - 0.6, w, h - 0.8);
  cairo_line_to (cr, w, 0.85);
  cairo_curve_to (cr, w, 0.65, w, 0.55, w - 0.3, 0.5);
  cairo_close_path (cr);
}

/* A ring with a notch at @angle. */
static void
path_round (cairo_t *cr, const BwFaceShape *shape, double angle)
{
  double r = shape->width / 2 - 0.1, half = 0.14;
  cairo_save (cr);
  cairo_translate (cr, shape->width / 2, shape->height / 2);
  cairo_rotate (cr, angle);
  cairo_arc (cr, 0, 0, r, half, 2 * G_PI - half);
  cairo_line_to (cr, r - 0.22, -half * r);
  cairo_line_to (cr, r - 0.22, half * r);
  cairo_close_path (cr);
  cairo_restore (cr);
}

static void
path_outline (cairo_t *cr, BwConnector connector)
{
  const BwFaceShape *shape = bw_face_shape (connector);
  switch (connector)
    {
    case BW_CONNECTOR_PERITELEVISION:
    case BW_CONNECTOR_JAPANESE_21:
      path_21 (cr);
      break;
    case BW_CONNECTOR_DE_15:
    case BW_CONNECTOR_DE_9:
      path_d (cr, shape);
      break;
    case BW_CONNECTOR_MINI_DIN_4:
      path_round (cr, shape, G_PI_2);
      break;
    default:
      path_round (cr, shape, -G_PI_2);
    }
}

static void
draw_outline (const BwFace *face, cairo_t *cr, const BwInk *ink)
{
  cairo_save (cr);
  cairo_translate (cr, face->x, face->y);
  cairo_scale (cr, face->pitch, face->pitch);
  path_outline (cr, face->connector);
  cairo_restore (cr);
  bw_ink_set_alpha (cr, ink, BW_INK_BAND, 0.6);
  cairo_fill_preserve (cr);
  bw_ink_set (cr, ink, BW_INK_GRAPHITE_LIGHT);
  cairo_set_line_width (cr, MAX (LEAST_LINE, OUTLINE * face->pitch));
  cairo_stroke (cr);
}

static void
draw_contact (const BwFace *face, cairo_t *cr, const BwInk *ink, const BwFaceContact *contact,
              const BwContactMark *mark)
{
  const BwFaceShape *shape = bw_face_shape (face->connector);
  double width = shape->contact_width * face->pitch, height = shape->contact_height * face->pitch;
  double ring = mark->use == BW_CONTACT_SIGNAL ? SIGNAL_RING : RING;

  rounded_box (cr, face->x + contact->x * face->pitch - width / 2,
               face->y + contact->y * face->pitch - height / 2, width, height, height / 2.5);
  bw_ink_set (cr, ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  if (mark->use != BW_CONTACT_UNUSED)
    {
      bw_ink_set_alpha (cr, ink, mark->role, WASH);
      cairo_fill_preserve (cr);
    }
  bw_ink_set (cr, ink, mark->use == BW_CONTACT_UNUSED ? BW_INK_RULE : mark->role);
  cairo_set_line_width (cr, MAX (LEAST_LINE, ring * height));
  cairo_stroke (cr);
}

/**
 * bw_face_draw_shell:
 *
 * Draws the outline. Wires go between it and the contacts: bw_face_draw_contacts().
 */
void
bw_face_draw_shell (const BwFace *face, cairo_t *cr, const BwInk *ink)
{
  cairo_save (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  draw_outline (face, cr, ink);
  cairo_restore (cr);
}

/**
 * bw_face_draw_contacts:
 * @marks: by number of the contact
 *
 * Draws the contacts, used ones in the ink of what they carry. Their numbers are labels:
 * bw_face_claim_numbers().
 */
void
bw_face_draw_contacts (const BwFace *face, cairo_t *cr, const BwInk *ink,
                       const BwContactMark marks[BW_FACE_MAX_NUMBER + 1])
{
  const BwFaceShape *shape = bw_face_shape (face->connector);
  cairo_save (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  for (guint i = 0; i < shape->n; i++)
    draw_contact (face, cr, ink, &shape->contacts[i], &marks[shape->contacts[i].number]);
  cairo_restore (cr);
}

/**
 * bw_face_claim_numbers:
 * @least: contacts of less use have no number
 *
 * Claims the places of the contacts' numbers, if they have room for them.
 */
void
bw_face_claim_numbers (const BwFace *face, BwCanvas *canvas,
                       const BwContactMark marks[BW_FACE_MAX_NUMBER + 1], BwContactUse least)
{
  const BwFaceShape *shape = bw_face_shape (face->connector);
  if (face->pitch < bw_face_numbered_pitch (face->connector, canvas) - 0.01)
    return;
  for (guint i = 0; i < shape->n; i++)
    {
      const BwFaceContact *contact = &shape->contacts[i];
      const BwContactMark *mark = &marks[contact->number];
      char text[12];
      if (mark->use < (guint) least)
        continue;
      g_snprintf (text, sizeof text, "%d", contact->number);
      bw_canvas_claim_at (canvas, text,
                          mark->use == BW_CONTACT_UNUSED ? BW_INK_GRAPHITE_LIGHT : mark->role,
                          face->x + contact->x * face->pitch, face->y + contact->y * face->pitch,
                          0.5, 0.5);
    }
}

/**
 * bw_plug_draw:
 * @connector: one with a plug for each conductor
 * @x: of its centre, which is the contact of the conductor; likewise @y
 * @size: diameter
 * @role: colour of the conductor
 *
 * Draws a coaxial plug from its solder side: contact and shell, and of a BNC plug its bayonet.
 */
void
bw_plug_draw (cairo_t *cr, const BwInk *ink, BwConnector connector, double x, double y, double size,
              BwInkRole role)
{
  double r = size / 2 * 0.86, line = MAX (LEAST_LINE, 0.07 * size);
  cairo_save (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, line);
  if (connector == BW_CONNECTOR_BNC)
    for (int side = -1; side <= 1; side += 2)
      {
        bw_ink_set (cr, ink, BW_INK_GRAPHITE_LIGHT);
        cairo_rectangle (cr, x - 0.12 * size, side > 0 ? y + r * 0.8 : y - size / 2, 0.24 * size,
                         size / 2 - r * 0.8);
        cairo_fill (cr);
      }
  cairo_arc (cr, x, y, r, 0, 2 * G_PI);
  bw_ink_set (cr, ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  bw_ink_set_alpha (cr, ink, BW_INK_BAND, 0.6);
  cairo_fill_preserve (cr);
  bw_ink_set (cr, ink, BW_INK_GRAPHITE_LIGHT);
  cairo_stroke (cr);
  cairo_arc (cr, x, y, 0.17 * size, 0, 2 * G_PI);
  bw_ink_set (cr, ink, role);
  cairo_fill (cr);
  cairo_restore (cr);
}
