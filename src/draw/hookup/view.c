/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

static gboolean
is_too_wide (const BwHookupDrawing *drawing)
{
  double room = drawing->canvas->width - 2 * drawing->canvas->pad;
  for (guint i = 0; i < drawing->n_bands; i++)
    if (bw_hookup_band_width (drawing, &drawing->bands[i]) > room)
      return TRUE;
  return FALSE;
}

/* Faces of at most @share of the pitch that numbers need. */
static void
limit_faces (BwHookupDrawing *drawing, double share)
{
  for (guint i = 0; i < 2 * drawing->n_leads; i++)
    {
      BwHookupEnd *end = &drawing->leads[i / 2].end[i % 2];
      if (end->shown)
        end->face.pitch = MIN (end->face.pitch,
                               share * bw_face_numbered_pitch (end->connector, drawing->canvas));
    }
  bw_hookup_measure (drawing);
}

/* Lays everything out with what @drawing keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwHookupDrawing *drawing)
{
  bw_canvas_clear (drawing->canvas);
  gboolean all = bw_hookup_claim_words (drawing);
  bw_hookup_make_rows (drawing);
  if (drawing->n_leads > 0)
    {
      bw_hookup_measure (drawing);
      bw_hookup_choose_bands (drawing);
      all &= bw_hookup_place_down (drawing);
      /* a face grown for a high page must not make the chain too wide */
      for (double share = 1.7; share > 0.95; share -= 0.1)
        {
          limit_faces (drawing, share);
          if (!is_too_wide (drawing))
            break;
        }
      bw_hookup_center_faces (drawing);
      all &= bw_hookup_place_across (drawing);
      bw_hookup_route (drawing);
    }
  return all & bw_hookup_claim_labels (drawing);
}

/**
 * bw_hookup_drawing_new:
 * @width: of the page, in user-space units; @height: likewise
 * @ink: copied
 * @what: copied; what it points to must outlive the drawing
 *
 * Returns: (transfer full): the plan laid out so that it fills the page
 */
BwHookupDrawing *
bw_hookup_drawing_new (double width, double height, const BwInk *ink, const BwHookupView *what)
{
  BwHookupDrawing *drawing = g_new0 (BwHookupDrawing, 1);
  drawing->view = *what;
  drawing->what = &drawing->view;
  drawing->font = g_strdup (ink->font);
  drawing->ink = (BwInk){ ink->theme, drawing->font, ink->dpi };
  drawing->canvas = bw_canvas_new (&drawing->ink, width, height);
  drawing->rows = g_array_new (FALSE, FALSE, sizeof (BwHookupRow));
  g_array_set_clear_func (drawing->rows, bw_hookup_row_clear);
  while (!try_layout (drawing) && drawing->left_out < BW_N_HOOKUP_LEAVES)
    drawing->left_out++;
  return drawing;
}

void
bw_hookup_drawing_free (BwHookupDrawing *drawing)
{
  g_array_unref (drawing->rows);
  bw_canvas_free (drawing->canvas);
  g_free (drawing->font);
  g_free (drawing);
}

/**
 * bw_hookup_drawing_draw:
 *
 * Draws the plan at the origin of @cr.
 */
void
bw_hookup_drawing_draw (const BwHookupDrawing *drawing, cairo_t *cr)
{
  cairo_save (cr);
  bw_hookup_ink_draw (drawing, cr);
  cairo_restore (cr);
}

/**
 * bw_hookup_drawing_labels:
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_hookup_drawing_labels (const BwHookupDrawing *drawing, guint *left_out)
{
  if (left_out != NULL)
    *left_out = drawing->left_out;
  return g_array_ref (drawing->canvas->labels);
}

/**
 * bw_hookup_drawing_pin:
 * @hop: the lead
 * @far_end: of it; else where it begins
 * @number: of the contact
 * @at: (out): x and y of its centre
 *
 * Returns: whether that plug is drawn and has such a contact
 */
gboolean
bw_hookup_drawing_pin (const BwHookupDrawing *drawing, guint hop, gboolean far_end, int number,
                       double at[2])
{
  if (hop >= drawing->n_leads)
    return FALSE;
  const BwHookupEnd *end = &drawing->leads[hop].end[far_end ? 1 : 0];
  return end->shown && bw_face_contact (&end->face, number, &at[0], &at[1]);
}

/**
 * bw_hookup_drawing_wire:
 * @connection: index into BwHookup.connections
 * @from: (out): x and y where its wire starts
 * @to: (out): x and y where it ends
 *
 * Returns: whether it is drawn
 */
gboolean
bw_hookup_drawing_wire (const BwHookupDrawing *drawing, guint connection, double from[2],
                        double to[2])
{
  for (guint i = 0; i < drawing->rows->len; i++)
    {
      const BwHookupRow *row = bw_hookup_row (drawing, i);
      if (row->connection == NULL || row->index != connection)
        continue;
      from[0] = row->start[0];
      from[1] = row->has_pin[0] ? row->start_y[0] : row->y;
      to[0] = row->start[1];
      to[1] = row->has_pin[1] ? row->start_y[1] : row->y;
      return TRUE;
    }
  return FALSE;
}
