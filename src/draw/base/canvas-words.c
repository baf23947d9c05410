/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "canvas.h"

#include <string.h>

/* Words across the page, which wrap at its width. */

#define HIGH_PAGE 28 /* lines of text */

static double
words_width (const BwCanvas *canvas)
{
  return MAX (canvas->width - 2 * canvas->pad, 1);
}

/**
 * bw_canvas_words_height:
 * @text: (nullable): what is to stand across the page
 * @lines: at most so many, the last of which ends in an ellipsis if there is more; where they are
 *   more than one, twice as many on a high page
 *
 * Returns: the height of @text; zero for %NULL
 */
double
bw_canvas_words_height (BwCanvas *canvas, const char *text, int lines)
{
  g_return_val_if_fail (canvas != NULL, 0);
  gboolean high = canvas->height >= HIGH_PAGE * canvas->text_height;
  return text == NULL ? 0
                      : bw_canvas_wrapped_height (canvas, text, words_width (canvas),
                                                  high && lines > 1 ? 2 * lines : lines);
}

/**
 * bw_canvas_claim_words:
 * @text: (nullable): what is to stand across the page
 * @y: of its top
 * @height: from bw_canvas_words_height()
 *
 * Claims the place of a text that wraps.
 *
 * Returns: as bw_canvas_claim(); %TRUE for %NULL
 */
gboolean
bw_canvas_claim_words (BwCanvas *canvas, const char *text, BwInkRole role, double y, double height)
{
  g_return_val_if_fail (canvas != NULL, FALSE);
  BwLabel label = { (char *) text,
                    { canvas->pad, y, words_width (canvas), height },
                    role,
                    PANGO_ALIGN_LEFT,
                    .wrap = TRUE };
  return text == NULL || bw_canvas_claim (canvas, &label);
}

/* Whether @text is cut when it has so many lines across the page. */
static gboolean
is_cut (BwCanvas *canvas, const char *text, int lines)
{
  bw_canvas_words_height (canvas, text, lines);
  return pango_layout_is_ellipsized (canvas->layout);
}

/* As many clauses of @text as so many lines hold whole; all of it where not even the first has room,
 * which then ends in an ellipsis. */
static char *
whole_clauses (BwCanvas *canvas, const char *text, int lines)
{
  char *kept = g_strdup (text);

  while (is_cut (canvas, kept, lines))
    {
      gsize end = strlen (kept);
      while (end > 0 && !(strchr (",;:", kept[end - 1]) != NULL && text[end] == ' '))
        end--;
      if (end == 0)
        {
          g_free (kept);
          return g_strdup (text);
        }
      kept[end - 1] = '\0';
    }
  return kept;
}

/**
 * bw_canvas_claim_foot:
 * @y: (out): of the top of the caption
 *
 * Claims the places of the caption and of the note under it. Of a caption that has no room the last
 * clauses are left out.
 *
 * Returns: whether both have one
 */
gboolean
bw_canvas_claim_foot (BwCanvas *canvas, const BwFoot *foot, double *y)
{
  g_return_val_if_fail (canvas != NULL && foot != NULL && y != NULL, FALSE);
  g_autofree char *caption = whole_clauses (canvas, foot->caption, foot->caption_lines);
  double caption_height = bw_canvas_words_height (canvas, caption, foot->caption_lines);
  double note_height = bw_canvas_words_height (canvas, foot->note, foot->note_lines);
  double note_y = canvas->height - foot->below - note_height;

  *y = note_y - caption_height;
  return bw_canvas_claim_words (canvas, caption, BW_INK_GRAPHITE, *y, caption_height)
         & bw_canvas_claim_words (canvas, foot->note, BW_INK_GRAPHITE_LIGHT, note_y, note_height);
}
