/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* The labels, each of which claims its place. */

/* The labels over the map end here. */
static double
side_top (const BwMapLayout *layout)
{
  const BwDimRow *row = &layout->intervals;
  if (row->n == 0)
    return layout->canvas->pad / 2;
  return row->y + (row->form == BW_DIM_ONE_LINE ? layout->canvas->text_height / 2 : 0)
         + layout->canvas->pad / 3;
}

/* Each label stands beside its interval, or as near to that as the others leave room. */
static gboolean
claim_side (BwMapLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double starts[BW_N_MAP_INTERVALS], heights[BW_N_MAP_INTERVALS];
  gboolean all = TRUE;
  guint interval = 0;

  for (guint i = 0; i < layout->n_side; i++, interval++)
    {
      const BwMapAxis *axis = &layout->down;
      BwMapDim *dim = &layout->side[i];
      while (axis->start[interval + 1] <= axis->start[interval]
             || !bw_map_is_whole (axis, axis->start[interval], axis->start[interval + 1]))
        interval++;
      dim->y0 = bw_map_place (axis, axis->start[interval]);
      dim->y1 = bw_map_place (axis, axis->start[interval + 1]);
      heights[i] = dim->box.height;
      starts[i] = (dim->y0 + dim->y1 - heights[i]) / 2;
    }
  bw_spread (starts, heights, layout->n_side, canvas->pad / 3, side_top (layout),
             layout->words_y - canvas->pad / 2);
  for (guint i = 0; i < layout->n_side; i++)
    {
      BwMapDim *dim = &layout->side[i];
      dim->box.x = layout->side_x + BW_MAP_LABEL_GAP * canvas->text_height;
      dim->box.y = starts[i];
      BwLabel label = { dim->text, dim->box, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT };
      if (!bw_canvas_claim (canvas, &label))
        {
          dim->box.width = 0;
          all = FALSE;
        }
    }
  return all;
}

static gboolean
claim_lines (BwMapLayout *layout)
{
  BwMapDim *dim = &layout->lines;
  if (dim->text == NULL)
    return TRUE;
  dim->y0 = layout->down.place0;
  dim->y1 = layout->down.place1;
  dim->box.x = layout->lines_x - 0.5 * layout->canvas->text_height - dim->box.width;
  dim->box.y = (dim->y0 + dim->y1 - dim->box.height) / 2;
  BwLabel label = { dim->text, dim->box, BW_INK_GRAPHITE, PANGO_ALIGN_RIGHT };
  return bw_canvas_claim (layout->canvas, &label);
}

/* In the middle of what is seen of the picture, as much as fits there. */
static void
claim_picture (BwMapLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwBox *glass = &layout->glass;
  double x0 = MAX (glass->x, layout->across.place0), y0 = MAX (glass->y, layout->down.place0);
  double x1 = MIN (glass->x + glass->width, layout->across.place1);
  double y1 = MIN (glass->y + glass->height, layout->down.place1);

  for (guint lines = 3; lines > 0; lines--)
    {
      g_autofree char *text = bw_map_text_picture (layout->what, lines);
      BwBox box = bw_canvas_measure (canvas, text);
      box.x = (x0 + x1 - box.width) / 2;
      box.y = (y0 + y1 - box.height) / 2;
      BwLabel label = { text, box, BW_INK_GRAPHITE, PANGO_ALIGN_CENTER };
      if (box.width + canvas->pad <= x1 - x0 && box.height + canvas->pad <= y1 - y0
          && bw_canvas_claim (canvas, &label))
        return;
    }
}

static void
claim_glass (BwMapLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double x = layout->glass.x + canvas->pad, y = layout->glass.y + canvas->pad / 2;
  double room = MIN (layout->glass.x + layout->glass.width, layout->across.place1) - x;

  if (bw_map_hides (layout->what) && x > layout->across.place0 && y > layout->down.place0
      && y + canvas->text_height < layout->down.place1
      && bw_canvas_measure (layout->canvas, _ ("glass")).width <= room)
    bw_canvas_claim_at (layout->canvas, _ ("glass"), BW_INK_BLUE, x, y, 0, 0);
}

static void
claim_datum (BwMapLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double x = bw_map_place (&layout->across, 0);

  if (x >= layout->across.place0 - 0.01 && x <= layout->across.place1)
    bw_canvas_claim_at (canvas, "0H", BW_INK_ACCENT, x, layout->down.place1 + canvas->pad * 0.75,
                        0.5, 0);
}

gboolean
bw_map_claim_words (BwMapLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_map_text_caption (layout->what);
  g_autofree char *note = bw_map_keeps (layout, BW_MAP_LEAVE_NOTE) ? bw_map_text_note (layout->what)
                                                                   : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = bw_map_keeps (layout, BW_MAP_LEAVE_LONG_CAPTION) ? 2 : 1,
                        .note = note,
                        .note_lines = 3,
                        .below = canvas->pad };
  return bw_canvas_claim_foot (canvas, &foot, &layout->words_y);
}

/**
 * bw_map_claim_labels:
 *
 * Claims the places of all labels on and around the map.
 *
 * Returns: whether those have one that can be left out by a step of #BwMapLeave
 */
gboolean
bw_map_claim_labels (BwMapLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  gboolean all = bw_dim_row_claim (&layout->intervals, canvas);

  all &= bw_dim_row_claim (&layout->period, canvas);
  all &= claim_side (layout);
  all &= claim_lines (layout);
  claim_datum (layout);
  claim_picture (layout);
  claim_glass (layout);
  return all;
}
