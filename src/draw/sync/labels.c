/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* The labels, each of which claims its place. */

#define NOTE_LINES 3

/* Words at the foot */

gboolean
bw_sync_claim_words (BwSyncLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_sync_text_caption (layout->what);
  g_autofree char *note = bw_sync_keeps (layout, BW_SYNC_LEAVE_NOTE) ? bw_sync_text_note (layout)
                                                                     : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = bw_sync_keeps (layout, BW_SYNC_LEAVE_LONG_CAPTION) ? 2 : 1,
                        .note = note,
                        .note_lines = NOTE_LINES,
                        .below = canvas->pad };
  return bw_canvas_claim_foot (canvas, &foot, &layout->words_y);
}

/* Names of the rows */

static gboolean
claim_name (BwSyncLayout *layout, BwSyncRow row)
{
  BwCanvas *canvas = layout->canvas;
  const BwSyncLane *lane = &layout->lane[row];
  g_autofree char *name = bw_sync_text_row (layout->what->what, row);
  double middle = (lane->top + lane->bottom) / 2, x = layout->ruler.left - canvas->pad * 0.75;
  gboolean polarity = bw_sync_keeps (layout, BW_SYNC_LEAVE_POLARITIES);
  gboolean all = bw_canvas_claim_at (canvas, name, BW_INK_GRAPHITE, x, middle, 1,
                                     polarity ? 1 : 0.5);

  if (polarity)
    all &= bw_canvas_claim_at (canvas, bw_sync_text_polarity (layout, row), BW_INK_GRAPHITE_LIGHT,
                               x, middle, 1, 0);
  return all;
}

/* The datum is named beside its line. */
static void
claim_datum (BwSyncLayout *layout)
{
  double x = bw_ruler_x (&layout->ruler, 0);
  if (bw_ruler_shows (&layout->ruler, x))
    bw_canvas_claim_at (layout->canvas, _ ("field sync starts"), BW_INK_ACCENT, x, layout->head_y, 0.5, 0.5);
}

/* Words under the marks */

/* In the middle of its lines, or else where they start or end. */
static void
claim_span (BwSyncLayout *layout, const BwSyncSpan *span)
{
  static const double across[] = { 0.5, 0, 1 };
  const BwSyncLine *first = bw_sync_line (layout, span->first);
  double x0 = bw_ruler_x (&layout->ruler, bw_sync_due (layout, first));
  double x1 = x0 + span->n * bw_ruler_line_width (&layout->ruler);
  double seen0 = MAX (x0, layout->ruler.left), seen1 = MIN (x1, layout->ruler.right);
  g_autofree char *text = bw_sync_run_span_text (layout->run, span, layout->what->mark);
  BwInkRole role = span->edge == BW_AFC_EDGE_MISSING ? BW_INK_FATAL : BW_INK_TIGHT;
  double width = bw_canvas_measure (layout->canvas, text).width;

  for (guint i = 0; i < G_N_ELEMENTS (across) && seen1 > seen0; i++)
    {
      double x = seen0 + across[i] * (seen1 - seen0);
      if (x - across[i] * width >= layout->ruler.left - layout->canvas->pad
          && bw_canvas_claim_at (layout->canvas, text, role, x, layout->spans_y, across[i], 0))
        return;
    }
}

static void
claim_spans (BwSyncLayout *layout)
{
  g_autoptr (GArray) spans = bw_sync_run_spans (layout->run);
  for (guint i = 0; i < spans->len && bw_sync_keeps (layout, BW_SYNC_LEAVE_SPANS); i++)
    claim_span (layout, &g_array_index (spans, BwSyncSpan, i));
}

/* Along the axis */

static void
claim_number (BwSyncLayout *layout, const BwSyncLine *line, BwInkRole role)
{
  bw_ruler_claim_number (&layout->ruler, line->line, bw_sync_due (layout, line), layout->numbers_y,
                         role);
}

static gboolean
is_key_line (const BwSyncLayout *layout, const BwSyncLine *line)
{
  double at_s = bw_sync_due (layout, line), line_s = layout->mix->line_s;
  return line->line == layout->run->picture_line || (at_s <= 1e-12 && at_s > -line_s * (1 - 1e-9));
}

static void
claim_numbers (BwSyncLayout *layout)
{
  int step = bw_ruler_number_step (&layout->ruler, 0);
  guint n = layout->run->lines->len;

  for (guint i = 0; i < n; i++)
    if (is_key_line (layout, bw_sync_line (layout, i)))
      claim_number (layout, bw_sync_line (layout, i), BW_INK_GRAPHITE);
  for (guint i = 0; i < n; i++)
    if (bw_sync_line (layout, i)->line % step == 0)
      claim_number (layout, bw_sync_line (layout, i), BW_INK_GRAPHITE_LIGHT);
}

/* Microseconds after the start of each line. */
static void
claim_scale (BwSyncLayout *layout)
{
  for (guint k = 0; k < layout->run->lines->len; k++)
    bw_ruler_claim_scale (&layout->ruler, bw_sync_due (layout, bw_sync_line (layout, k)),
                          layout->scale_y);
}

/* The phase */

static void
claim_phase_figure (BwSyncLayout *layout, double phase_s)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  double y = bw_sync_phase_y (layout, phase_s);
  double down = y <= lane->top + 1 ? 0 : y >= lane->bottom - 1 ? 1 : 0.5;
  g_autofree char *text = bw_text_us (phase_s, layout->what->mark);
  bw_canvas_claim_at (layout->canvas, text, BW_INK_GRAPHITE_LIGHT,
                      layout->ruler.left - layout->canvas->pad * 0.75, y, 1, down);
}

static gboolean
claim_with_halo (BwSyncLayout *layout, const char *text, BwInkRole role, double x, double y)
{
  BwLabel label = { (char *) text, bw_canvas_measure (layout->canvas, text), role, PANGO_ALIGN_LEFT,
                    .halo = TRUE };
  double pad = layout->canvas->pad;
  label.box.x = x;
  label.box.y = y;
  const BwBox apart = { x - pad, y, label.box.width + 2 * pad, label.box.height };
  return x >= layout->ruler.left && x + label.box.width <= layout->ruler.right
         && bw_canvas_is_free (layout->canvas, apart) && bw_canvas_claim (layout->canvas, &label);
}

/* Left of the start of the picture, or right of it. */
static void
claim_picture (BwSyncLayout *layout)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  g_autofree char *text = bw_sync_text_picture (layout);
  BwBox box = bw_canvas_measure (layout->canvas, text);
  double gap = layout->canvas->pad / 2, at_s;

  if (!bw_sync_picture (layout, &at_s))
    return;
  double x = bw_ruler_x (&layout->ruler, at_s), y = lane->top + gap / 2;
  if (bw_ruler_shows (&layout->ruler, x)
      && !claim_with_halo (layout, text, BW_INK_ACCENT, x + gap, y))
    claim_with_halo (layout, text, BW_INK_ACCENT, x - gap - box.width, y);
}

/* From long to short. */
static void
claim_phase_name (BwSyncLayout *layout)
{
  static const char *const locked[] = {
    N_ ("phase of the line oscillator, late upwards; band: picture straight to 0.1 %"),
    N_ ("phase of the line oscillator, late upwards"), N_ ("AFC phase, late upwards")
  };
  static const char *const unlocked[] = { N_ ("the line oscillator does not lock: no phase"),
                                          N_ ("does not lock: no phase"), N_ ("no lock") };
  const char *const *names = layout->run->locks ? locked : unlocked;
  double text = layout->canvas->text_height, gap = layout->canvas->pad / 2;
  double y = layout->lane[BW_SYNC_ROW_PHASE].top + gap / 2;

  for (guint line = 0; line < 2; line++)
    for (guint i = 0; i < G_N_ELEMENTS (locked); i++)
      if (claim_with_halo (layout, _ (names[i]), BW_INK_GRAPHITE_LIGHT, layout->ruler.left + gap,
                           y + line * text))
        return;
}

static void
claim_phase (BwSyncLayout *layout)
{
  if (layout->run->locks)
    {
      claim_phase_figure (layout, 0);
      claim_phase_figure (layout, layout->high_s);
      if (layout->low_s < -layout->high_s / 9)
        claim_phase_figure (layout, layout->low_s);
    }
  claim_picture (layout);
  claim_phase_name (layout);
}

/* The key to the marks */

static gboolean
claim_key (BwSyncLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double x = layout->ruler.left, size = canvas->text_height * 0.75;
  gboolean all = TRUE;

  layout->n_keys = 0;
  for (guint mark = 0; mark < BW_SYNC_MARKS_MAX && bw_sync_keeps (layout, BW_SYNC_LEAVE_KEY);
       mark++)
    {
      guint n = mark == BW_SYNC_MARK_HALF ? layout->run->n_half : layout->run->n[mark];
      g_autofree char *text = bw_sync_text_key (layout, mark);
      if (n == 0)
        continue;
      double start = x + size + canvas->pad / 2;
      all &= bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE, start, layout->key_y, 0, 0.5);
      layout->key[layout->n_keys++] = (BwSyncKey){ mark, x + size / 2 };
      x = start + bw_canvas_measure (canvas, text).width + 2 * canvas->pad;
    }
  if (!all)
    layout->n_keys = 0;
  return all;
}

/**
 * bw_sync_claim_labels:
 *
 * Claims the places of all labels in the rows.
 *
 * Returns: whether those have one that can be left out by a step of #BwSyncLeave
 */
gboolean
bw_sync_claim_labels (BwSyncLayout *layout)
{
  gboolean all = claim_key (layout);
  for (guint row = 0; row < BW_SYNC_ROW_PHASE; row++)
    all &= claim_name (layout, row);
  claim_datum (layout);
  claim_spans (layout);
  claim_numbers (layout);
  claim_scale (layout);
  claim_phase (layout);
  return all;
}
