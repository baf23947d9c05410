/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "draw/base/scale.h"

/* Where everything lies on the page. */

/* In heights of a line of text. */
#define LEAST_LANE 0.9
#define LEAST_PHASE 2.6
#define TICK 0.4
#define MARK 0.72
#define MARKS 1.1

/* In heights of a lane. */
#define LANE_GAP 0.3
#define PHASE 2.4
#define SHARES (4 + 2 * LANE_GAP + PHASE) /* two gaps: the marks stand in the third */

#define MARK_SHARE 0.8 /* of a line's width */

/* Where the line starts, without the delay of the result. */
double
bw_sync_due (const BwSyncLayout *layout, const BwSyncLine *line)
{
  return line->due_s - layout->what->what->delay_s;
}

/* Returns whether the first line of picture is among those that are worked out, and its place. */
gboolean
bw_sync_picture (const BwSyncLayout *layout, double *at_s)
{
  for (guint i = layout->run->lines->len; i-- > 0;)
    if (bw_sync_line (layout, i)->line == layout->run->picture_line)
      {
        *at_s = bw_sync_due (layout, bw_sync_line (layout, i));
        return TRUE;
      }
  return FALSE;
}

/* The scale of the phase has zero in it, and shows a phase that keeps the picture straight as
 * small. */
static void
choose_phase_scale (BwSyncLayout *layout)
{
  double low_s = 0, high_s = 3 * layout->run->settle_s;
  for (guint i = 0; i < layout->run->lines->len && layout->run->locks; i++)
    {
      low_s = MIN (low_s, bw_sync_line (layout, i)->phase_s);
      high_s = MAX (high_s, bw_sync_line (layout, i)->phase_s);
    }
  layout->high_s = bw_nice_tick (high_s);
  layout->low_s = low_s < -layout->run->settle_s / 10 ? -bw_nice_tick (-low_s) : 0;
  layout->low_s = MIN (layout->low_s, -layout->high_s / 10);
}

double
bw_sync_phase_y (const BwSyncLayout *layout, double phase_s)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  double share = (layout->high_s - phase_s) / (layout->high_s - layout->low_s);
  return lane->top + share * (lane->bottom - lane->top);
}

static double
widest_name (BwSyncLayout *layout)
{
  double widest = 0;
  for (guint row = 0; row < BW_SYNC_ROW_PHASE; row++)
    {
      g_autofree char *name = bw_sync_text_row (layout->what->what, row);
      const char *polarity = bw_sync_text_polarity (layout, row);
      widest = MAX (widest, bw_canvas_measure (layout->canvas, name).width);
      widest = MAX (widest, bw_canvas_measure (layout->canvas, polarity).width);
    }
  return MAX (widest, bw_canvas_measure (layout->canvas, "\u221200.00\u00a0µs").width);
}

/**
 * bw_sync_place_across:
 *
 * Places across the page, which do not depend on what is left out.
 */
void
bw_sync_place_across (BwSyncLayout *layout)
{
  BwCanvas *canvas = layout->canvas;

  layout->ruler.left = canvas->pad * 2 + widest_name (layout);
  layout->ruler.right = MAX (canvas->width - canvas->pad * 1.5, layout->ruler.left + 1);
  layout->size = MIN (MARK * canvas->text_height,
                      MARK_SHARE * bw_ruler_line_width (&layout->ruler));
  choose_phase_scale (layout);
}

static double
spans_height (const BwSyncLayout *layout)
{
  gboolean any = layout->run->n[BW_AFC_EDGE_RIGHT] < layout->run->lines->len;
  return any && bw_sync_keeps (layout, BW_SYNC_LEAVE_SPANS) ? layout->canvas->text_height : 0;
}

static double
place_lane (BwSyncLane *lane, double top, double height)
{
  lane->top = floor (top + 0.5);
  lane->bottom = floor (lane->top + height + 0.5);
  return lane->bottom;
}

static double
place_axis (BwSyncLayout *layout, double top)
{
  double text = layout->canvas->text_height;
  layout->ticks_y = top + layout->canvas->pad / 2;
  layout->scale_y = layout->ticks_y + TICK * text;
  layout->numbers_y = layout->scale_y + (layout->ruler.scale_s > 0 ? text : 0);
  return layout->numbers_y + text;
}

static double
place_lanes (BwSyncLayout *layout, double top, double lane)
{
  double text = layout->canvas->text_height, gap = LANE_GAP * lane;
  top = place_lane (&layout->lane[BW_SYNC_ROW_H], top, lane) + gap;
  top = place_lane (&layout->lane[BW_SYNC_ROW_V], top, lane) + gap;
  top = place_lane (&layout->lane[BW_SYNC_ROW_RESULT], top, lane);
  layout->marks_y = top + MARKS * text / 2 + layout->canvas->pad / 4;
  layout->spans_y = top + MARKS * text + layout->canvas->pad / 4;
  top = layout->spans_y + spans_height (layout) + layout->canvas->pad / 2;
  top = place_lane (&layout->lane[BW_SYNC_ROW_STANDARD], top, lane);
  return place_axis (layout, top);
}

/**
 * bw_sync_place_down:
 *
 * Places down the page, with what @layout keeps.
 *
 * Returns: whether the lanes are high enough
 */
gboolean
bw_sync_place_down (BwSyncLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height, pad = canvas->pad;
  gboolean key = bw_sync_keeps (layout, BW_SYNC_LEAVE_KEY);

  bw_ruler_choose_scale (&layout->ruler, bw_sync_keeps (layout, BW_SYNC_LEAVE_SCALE));
  double numbers = pad / 2 + (TICK + 1) * text + (layout->ruler.scale_s > 0 ? text : 0);
  double below = (key ? text : 0) + 1.5 * pad;
  double room = layout->words_y - below - (pad / 2 + text)
                - (MARKS * text + spans_height (layout) + 0.75 * pad) - numbers - pad;
  double lane = MAX (room / SHARES, 0.3 * text);
  layout->head_y = pad / 2 + text / 2;
  double top = place_lanes (layout, pad / 2 + text, lane) + pad;
  place_lane (&layout->lane[BW_SYNC_ROW_PHASE], top, PHASE * lane);
  layout->key_y = layout->words_y - pad / 2 - text / 2;
  return lane >= LEAST_LANE * text && PHASE * lane >= LEAST_PHASE * text;
}
