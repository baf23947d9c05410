/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/connector/connector.h"
#include "draw/base/canvas.h"

G_BEGIN_DECLS

/* The plugs of leads as a soldering iron sees them: from the solder side, which is what the mating
 * face of the socket looks like, and the mirror image of the mating face of the plug. Connectors
 * with rows of contacts are turned upright, pin 1 at the top. Not to scale: the order of the
 * contacts is that of the connector, their distances are chosen so that wires can pass.
 *
 * The order of the contacts is common knowledge of the trade and from memory; the drawing therefore
 * always says to go by the numbers moulded beside them. */

#define BW_FACE_MAX_NUMBER 21

/**
 * BwFaceContact:
 * @number: as moulded beside it
 * @x: of its centre, from the left edge of the outline, in pitches of the contacts of a row
 * @y: likewise from the top
 */
typedef struct
{
  int number;
  double x;
  double y;
} BwFaceContact;

/**
 * BwFaceShape:
 * @width: of the outline, in pitches of the contacts of a row; likewise @height
 * @contact_width: of one contact; likewise @contact_height
 * @turned: whether it is turned upright
 *
 * The face of a connector that has all its contacts in one shell.
 */
typedef struct
{
  const BwFaceContact *contacts;
  guint n;
  double width;
  double height;
  double contact_width;
  double contact_height;
  gboolean turned;
} BwFaceShape;

/**
 * BwFace:
 * @x: left edge of the outline
 * @y: top of the outline
 * @pitch: of the contacts of a row, in user-space units
 *
 * A face in its place.
 */
typedef struct
{
  BwConnector connector;
  double x;
  double y;
  double pitch;
} BwFace;

typedef enum
{
  BW_CONTACT_UNUSED,
  BW_CONTACT_RETURN, /* of a conductor, or joined to the common ground */
  BW_CONTACT_SIGNAL
} BwContactUse;

/**
 * BwContactMark:
 * @use: BwContactUse
 * @role: colour of what it carries
 */
typedef struct
{
  guint use;
  BwInkRole role;
} BwContactMark;

const BwFaceShape *bw_face_shape (BwConnector connector);
double bw_face_numbered_pitch (BwConnector connector, BwCanvas *canvas);

BwBox bw_face_outline (const BwFace *face);
gboolean bw_face_contact (const BwFace *face, int number, double *x, double *y);
gboolean bw_face_exit (const BwFace *face, int number, gboolean to_right, const double *taken,
                       guint n_taken, double *y);

void bw_face_claim_numbers (const BwFace *face, BwCanvas *canvas,
                            const BwContactMark marks[BW_FACE_MAX_NUMBER + 1], BwContactUse least);
void bw_face_draw_shell (const BwFace *face, cairo_t *cr, const BwInk *ink);
void bw_face_draw_contacts (const BwFace *face, cairo_t *cr, const BwInk *ink,
                            const BwContactMark marks[BW_FACE_MAX_NUMBER + 1]);
void bw_plug_draw (cairo_t *cr, const BwInk *ink, BwConnector connector, double x, double y,
                   double size, BwInkRole role);

G_END_DECLS
