/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every line of a frame, at places away from its edges, against the frame as the standards draw it:
 * SMPTE 170M-2004 tables 2 and 3 and figure 7, ITU-R BT.470-6 tables 1-1 and 1-2 and figure 2-1. What
 * the picture holds is our own choice, laid down here once more. */
#include "test_synthesis.h"

typedef struct
{
  int first; /* half line of the frame, from that with which line 1 begins */
  int n;
  double width_us;
} Pulses;

/**
 * Frame:
 * @sync_us: line sync; @from_us to @to_us: the picture, after 0H
 * @pulses: in place of line sync, one each half line
 * @picture: the half lines with picture, a field each
 */
typedef struct
{
  const char *raster;
  double line_us;
  int lines;
  double sync_us;
  double from_us;
  double to_us;
  Pulses pulses[6];
  int picture[2][2];
} Frame;

static const Frame frame_525 = {
  .raster = "525-59.94-interlaced",
  .line_us = 286 / 4.5,
  .lines = 525,
  .sync_us = 4.7,
  .from_us = 9.2,
  .to_us = 286 / 4.5 - 1.5,
  .pulses = { { 0, 6, 2.3 },
              { 6, 6, 286 / 9.0 - 4.7 },
              { 12, 6, 2.3 },
              { 525, 6, 2.3 },
              { 531, 6, 286 / 9.0 - 4.7 },
              { 537, 6, 2.3 } },
  .picture = { { 40, 485 }, { 565, 485 } }, /* twenty lines of blanking in each field */
};

static const Frame frame_625 = {
  .raster = "625-50-interlaced",
  .line_us = 64,
  .lines = 625,
  .sync_us = 4.7,
  .from_us = 10.5,
  .to_us = 62.5,
  .pulses = { { 0, 5, 27.3 },
              { 5, 5, 2.35 },
              { 620, 5, 2.35 },
              { 625, 5, 27.3 },
              { 630, 5, 2.35 },
              { 1245, 5, 2.35 } },
  .picture = { { 45, 575 }, { 670, 575 } }, /* twenty-five lines of blanking in each field */
};

/* The width of the pulse that begins with half line @half; zero: none. */
static double
pulse_us (const Frame *frame, int half)
{
  for (gsize i = 0; i < G_N_ELEMENTS (frame->pulses); i++)
    if (half >= frame->pulses[i].first && half < frame->pulses[i].first + frame->pulses[i].n)
      return frame->pulses[i].width_us;
  return half % 2 == 0 ? frame->sync_us : 0;
}

/* The row of the field's picture on @half, and how many there are; FALSE: no picture. A row that has
 * but its second half counts. */
static gboolean
row_of (const Frame *frame, int half, int *row, int *rows)
{
  for (int field = 0; field < 2; field++)
    {
      int first = frame->picture[field][0], n = frame->picture[field][1];
      *row = half / 2 - first / 2;
      *rows = (n + 1) / 2;
      if (half >= first && half < first + n)
        return TRUE;
    }
  return FALSE;
}

/* Luma at a share of the active line, 0 to 1; NAN near a thin upright line. */
static double
luma_of (BwContent content, int row, int rows, double share)
{
  static const double bars[] = {
    1, 0.886, 0.701, 0.587, 0.413, 0.299, 0.114, 0
  }; /* BT.601-5 3.5 */

  switch (content)
    {
    case BW_CONTENT_BARS:
      return 0.75 * bars[(int) (share * 8)];
    case BW_CONTENT_RAMP:
      return share;
    case BW_CONTENT_PULSE_AND_WINDOW:
      if (fabs (share - 0.2) < 0.02)
        return NAN;
      return share > 0.4 && share < 0.9 && 4 * row >= rows && 4 * row < 3 * rows ? 1 : 0;
    case BW_CONTENT_CROSSHATCH:
      for (int i = 0; i < 12; i++)
        if (row == (2 * i + 1) * rows / 24)
          return 1;
      return fabs (share * 16 - floor (share * 16) - 0.5) < 0.2 ? NAN : 0;
    case BW_CONTENT_MULTIBURST:
    default:
      return share < 0.8 / 7 ? 1 : NAN;
    }
}

/* Where something changes on a line of @content, in microseconds after 0H. */
static gboolean
is_near_edge (const Frame *frame, BwContent content, double at_us)
{
  double half_us = frame->line_us / 2, clear_us = 0.5;
  double edges[32] = {
    0, half_us, frame->line_us, frame->from_us, frame->to_us, frame->to_us - half_us, frame->sync_us
  };
  int n = 7;
  for (gsize i = 0; i < G_N_ELEMENTS (frame->pulses); i++)
    {
      edges[n++] = frame->pulses[i].width_us;
      edges[n++] = half_us + frame->pulses[i].width_us;
    }
  static const double shares[] = { 0.4, 0.9, 0.8 / 7 };
  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    edges[n++] = frame->from_us + shares[i] * (frame->to_us - frame->from_us);
  for (int i = 1; i < 8 && content == BW_CONTENT_BARS; i++)
    edges[n++] = frame->from_us + i / 8.0 * (frame->to_us - frame->from_us);
  for (int i = 0; i < n; i++)
    if (fabs (at_us - edges[i]) < clear_us)
      return TRUE;
  return FALSE;
}

/* Of white 0.7 V and sync −0.3 V; NAN where the picture has detail. */
static double
expected_v (const Frame *frame, BwContent content, int line, double at_us)
{
  double half_us = frame->line_us / 2;
  int half = 2 * (line - 1) + (at_us >= half_us);
  double into_us = at_us - (half % 2 != 0 ? half_us : 0);
  int row, rows;
  double end_us = frame->to_us;

  if (into_us < pulse_us (frame, half))
    return -0.3;
  if (half % 2 != 0 && at_us < pulse_us (frame, half - 1))
    return -0.3;
  /* half a line of picture ends a front porch before the middle of the line */
  if (half % 2 == 0 && !row_of (frame, half + 1, &row, &rows))
    end_us -= half_us;
  if (!row_of (frame, half, &row, &rows) || at_us < frame->from_us || at_us > end_us)
    return 0;
  return 0.7
         * luma_of (content, row, rows, (at_us - frame->from_us) / (frame->to_us - frame->from_us));
}

typedef struct
{
  const Frame *frame;
  BwContent content;
} FrameCase;

static void
test_frame (gconstpointer data)
{
  const FrameCase *c = data;
  g_autoptr (BwSynthesis) s = synthesis_of (&(Setup){ c->frame->raster,
                                                      BW_SYSTEM_NONE,
                                                      BW_SIGNAL_LUMA,
                                                      BW_SYNC_IN_VIDEO,
                                                      c->content,
                                                      { 20000000, 1 } });
  guint compared = 0, wrong = 0;

  g_assert_cmpint (bw_synthesis_lines (s), ==, c->frame->lines);
  for (int line = 1; line <= c->frame->lines; line++)
    for (double at_us = 0.6; at_us < c->frame->line_us; at_us += 0.7)
      {
        double wanted = expected_v (c->frame, c->content, line, at_us);
        if (isnan (wanted) || is_near_edge (c->frame, c->content, at_us))
          continue;
        double got = level_at (s, BW_CONDUCTOR_VIDEO, line, at_us * US);
        compared++;
        if (fabs (got - wanted) > 1e-4 && wrong++ < 5)
          g_test_message ("line %d, %.2f µs: %.4f V, not %.4f V", line, at_us, got, wanted);
      }
  g_assert_cmpuint (wrong, ==, 0);
  g_assert_cmpuint (compared, >, c->content == BW_CONTENT_MULTIBURST ? 10000 : 25000);
}

/* Sync on its own conductors. Negative: it rests at 0 and falls to −0.3 V across 75 Ω; as logic it
 * rests high and falls to 0 (common practice, no source). Positive is the other way up. */
typedef struct
{
  const char *name;
  BwSyncKind sync;
  BwConductor conductor;
  gboolean positive;
  gboolean logic;
  double rest_v;
  double tip_v;
} SyncCase;

static const SyncCase sync_cases[] = {
  { "composite", BW_SYNC_COMPOSITE, BW_CONDUCTOR_SYNC, FALSE, FALSE, 0, -0.3 },
  { "composite-positive", BW_SYNC_COMPOSITE, BW_CONDUCTOR_SYNC, TRUE, FALSE, 0, 0.3 },
  { "composite-logic", BW_SYNC_COMPOSITE, BW_CONDUCTOR_SYNC, FALSE, TRUE, 0.3, 0 },
  { "h", BW_SYNC_SEPARATE, BW_CONDUCTOR_H, FALSE, TRUE, 5, 0 },
  { "h-positive", BW_SYNC_SEPARATE, BW_CONDUCTOR_H, TRUE, TRUE, 0, 5 },
  { "v", BW_SYNC_SEPARATE, BW_CONDUCTOR_V, FALSE, TRUE, 5, 0 },
  { "v-positive", BW_SYNC_SEPARATE, BW_CONDUCTOR_V, TRUE, TRUE, 0, 5 },
};

/* H goes on through field sync; V is low for the half lines of broad pulses. */
static gboolean
is_tip (const SyncCase *c, int line, double at_us)
{
  const Frame *frame = &frame_625;
  int half = 2 * (line - 1) + (at_us >= frame->line_us / 2);
  if (c->conductor == BW_CONDUCTOR_H)
    return at_us < frame->sync_us;
  if (c->conductor == BW_CONDUCTOR_V)
    return pulse_us (frame, half) > 20;
  double into_us = at_us - (half % 2 != 0 ? frame->line_us / 2 : 0);
  return into_us < pulse_us (frame, half);
}

static void
test_own_sync (gconstpointer data)
{
  const SyncCase *c = data;
  guint wrong = 0;
  BwSynthesisCase what = case_of (&(Setup){
      frame_625.raster, BW_SYSTEM_NONE, BW_SIGNAL_RGB, c->sync, BW_CONTENT_BARS, { 20000000, 1 } });
  for (int i = 0; i < 2; i++)
    what.form.own_polarity[i] = c->positive ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
  what.form.own_logic = c->logic;
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, NULL);

  for (int line = 1; line <= frame_625.lines; line++)
    for (double at_us = 0.6; at_us < frame_625.line_us; at_us += 0.7)
      {
        double wanted = is_tip (c, line, at_us) ? c->tip_v : c->rest_v;
        if (is_near_edge (&frame_625, BW_CONTENT_RAMP, at_us))
          continue;
        double got = level_at (s, c->conductor, line, at_us * US);
        if (fabs (got - wanted) > 1e-5 && wrong++ < 5)
          g_test_message ("line %d, %.2f µs: %.4f V, not %.4f V", line, at_us, got, wanted);
      }
  g_assert_cmpuint (wrong, ==, 0);
}

int
main (int argc, char **argv)
{
  static const Frame *const frames[] = { &frame_525, &frame_625 };
  static FrameCase cases[2 * BW_N_CONTENTS];

  bw_test_init (&argc, &argv);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      cases[i] = (FrameCase){ frames[i / BW_N_CONTENTS], (BwContent) (i % BW_N_CONTENTS) };
      g_autofree char *path = g_strdup_printf ("/synthesis-frame/%d/%s", cases[i].frame->lines,
                                               bw_kind_id (&bw_contents, cases[i].content));
      g_test_add_data_func (path, &cases[i], test_frame);
    }
  for (guint i = 0; i < G_N_ELEMENTS (sync_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/synthesis-frame/own-sync/%s", sync_cases[i].name);
      g_test_add_data_func (path, &sync_cases[i], test_own_sync);
    }
  return g_test_run ();
}
