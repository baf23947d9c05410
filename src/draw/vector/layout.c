/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "draw/base/scale.h"

/* Where everything lies on the page. */

#define FULL_SHARE 1.14 /* the level at the ring, as a multiple of the longest vector */

/* In heights of a line of text. */
#define LEAST_RADIUS 4.0
#define TICK_GAP 3.2 /* the least from one line of the grid to the next */
#define COLUMN_GAP 1.2

void
bw_vector_init_scale (BwVectorLayout *layout)
{
  double gain = bw_levels_gain (&layout->what->video), longest_v = 1e-3;
  for (guint i = 0; i < layout->targets->len; i++)
    longest_v = fmax (longest_v, g_array_index (layout->targets, BwVectorTarget, i).amplitude_v);
  layout->full_v = FULL_SHARE * longest_v * fmax (gain, 1);
}

/* Right edges of the columns, from the left edge of the table; returns its width. */
static double
place_table (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double x = 0;

  layout->table = (BwBox){ 0 };
  if (!bw_vector_keeps (layout, BW_VECTOR_LEAVE_TABLE))
    return 0;
  for (guint column = 0; column < BW_VECTOR_COLUMNS; column++)
    {
      double widest = 0;
      for (guint row = 0; row < bw_vector_rows (layout->targets); row++)
        {
          g_autofree char *text = bw_vector_text_cell (layout->what, row, column, layout->targets);
          if (text[0] != '\0')
            widest = fmax (widest, bw_canvas_measure (canvas, text).width);
        }
      x += widest + (widest > 0 && column > 0 ? COLUMN_GAP * canvas->text_height : 0);
      layout->column_x[column] = x;
    }
  layout->table.width = x;
  layout->table.height = bw_vector_rows (layout->targets) * canvas->text_height * 1.1;
  return x;
}

void
bw_vector_place_all (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double table = place_table (layout), pad = canvas->pad;
  double beside = table > 0 ? table + 4 * pad : 0;
  gboolean degrees = bw_vector_keeps (layout, BW_VECTOR_LEAVE_DEGREES);
  double rim = degrees ? bw_canvas_measure (canvas, "000°").width + 1.5 * pad : pad;
  double rim_y = degrees ? canvas->text_height + 1.5 * pad : pad;
  double room_x = canvas->width - beside - 2 * pad, room_y = layout->words_y - pad;

  layout->radius = fmax (fmin (room_x / 2 - rim, room_y / 2 - rim_y), 1);
  double left = fmax ((room_x + pad - 2 * (layout->radius + rim)) / 2, 0);
  layout->x = left + pad / 2 + layout->radius + rim;
  layout->y = pad / 2 + room_y / 2;
  layout->table.x = fmin (layout->x + layout->radius + rim + 3 * pad + left / 3,
                          canvas->width - pad - table);
  layout->table.y = layout->y - layout->table.height / 2;
  layout->tick_v = bw_nice_tick (TICK_GAP * canvas->text_height * layout->full_v / layout->radius);
}

gboolean
bw_vector_is_large_enough (const BwVectorLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  return layout->radius >= LEAST_RADIUS * canvas->text_height
         && layout->table.height < layout->words_y - canvas->pad
         && layout->radius * 2 >= 0.75 * fmin (canvas->width, layout->words_y);
}

gboolean
bw_vector_claim_words (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_vector_text_caption (layout->what);
  g_autofree char *note = bw_vector_keeps (layout, BW_VECTOR_LEAVE_NOTE)
                              ? bw_vector_text_note (layout->what)
                              : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = bw_vector_keeps (layout, BW_VECTOR_LEAVE_LONG_CAPTION) ? 2
                                                                                                : 1,
                        .note = note,
                        .note_lines = 2,
                        .below = canvas->pad / 2 };
  return bw_canvas_claim_foot (canvas, &foot, &layout->words_y);
}
