/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

static gboolean
is_too_wide (const BwHookupLayout *layout)
{
  double room = layout->canvas->width - 2 * layout->canvas->pad;
  for (guint i = 0; i < layout->n_bands; i++)
    if (bw_hookup_band_width (layout, &layout->bands[i]) > room)
      return TRUE;
  return FALSE;
}

/* Faces of at most @share of the pitch that numbers need. */
static void
limit_faces (BwHookupLayout *layout, double share)
{
  for (guint i = 0; i < 2 * layout->n_leads; i++)
    {
      BwHookupEnd *end = &layout->leads[i / 2].end[i % 2];
      if (end->shown)
        end->face.pitch = MIN (end->face.pitch,
                               share * bw_face_numbered_pitch (end->connector, layout->canvas));
    }
  bw_hookup_measure (layout);
}

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwHookupLayout *layout)
{
  gboolean all = TRUE;

  bw_canvas_clear (layout->canvas);
  bw_hookup_place_words (layout);
  bw_hookup_make_rows (layout);
  if (layout->n_leads > 0)
    {
      bw_hookup_measure (layout);
      bw_hookup_choose_bands (layout);
      all &= bw_hookup_place_down (layout);
      /* a face grown for a high page must not make the chain too wide */
      for (double share = 1.7; share > 0.95; share -= 0.1)
        {
          limit_faces (layout, share);
          if (!is_too_wide (layout))
            break;
        }
      bw_hookup_center_faces (layout);
      all &= bw_hookup_place_across (layout);
      bw_hookup_route (layout);
    }
  return all & bw_hookup_claim_words (layout) & bw_hookup_claim_labels (layout);
}

/**
 * bw_hookup_layout_init:
 * @layout: (out caller-allocates): to be cleared with bw_hookup_layout_clear()
 *
 * Lays the plan out so that it fills the page.
 */
void
bw_hookup_layout_init (BwHookupLayout *layout, double width, double height, const BwInk *ink,
                       const BwHookupView *what)
{
  *layout = (BwHookupLayout){ .what = what };
  layout->canvas = bw_canvas_new (ink, width, height);
  layout->rows = g_array_new (FALSE, FALSE, sizeof (BwHookupRow));
  g_array_set_clear_func (layout->rows, bw_hookup_row_clear);
  while (!try_layout (layout) && layout->left_out < BW_N_HOOKUP_LEAVES)
    layout->left_out++;
}

/**
 * bw_hookup_layout_clear:
 *
 * Frees what @layout owns.
 */
void
bw_hookup_layout_clear (BwHookupLayout *layout)
{
  g_array_unref (layout->rows);
  bw_canvas_free (layout->canvas);
}

/**
 * bw_hookup_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the plan, drawn so that it fills the page; why there is none, if there
 *   is none
 */
BwDrawing *
bw_hookup_drawing (const BwHookupView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->hookup != NULL && ink != NULL, NULL);
  const BwHookup *hookup = what->hookup;
  BwHookupLayout layout;

  bw_hookup_layout_init (&layout, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (layout.canvas, layout.left_out);
  bw_hookup_ink_draw (&layout, bw_drawing_pen (drawing));
  bw_drawing_take_words (drawing,
                         g_strdup_printf (_ ("Hook-up of %1$s to %2$s, drawn"), hookup->source,
                                          hookup->input),
                         bw_hookup_describe (what), g_strdup ("hook-up"));
  bw_hookup_add_places (drawing, &layout);
  bw_hookup_layout_clear (&layout);
  return drawing;
}
