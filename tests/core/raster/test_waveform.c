/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sync as pulses, the numbers of lines, and the lines without burst, by SMPTE 170M-2004 figure 7 and
 * 13.1, ITU-R BT.470-6 figures 2-1 and 2-2 and ITU-R BT.1700 figures 6 and 8. */
#include "core/raster/colour-system.h"
#include "core/raster/waveform.h"

#include <math.h>

#include "support.h"

/* Pulses in the order of time: how many of a kind, from which half line of the frame on. */
typedef struct
{
  BwPulseKind kind;
  int n;
  int first; /* half line, from that with which line 1 begins */
  int step;  /* half lines from one to the next */
  double width_us;
} Group;

typedef struct
{
  const char *name;
  const char *raster;
  int field;
  double half_us;
  int sync; /* half line of the frame at which field sync begins */
  double sync_lines, front_lines, back_lines;
  Group groups[6];
} Interval;

static const Interval intervals[] = {
  { "525-field-1",
    "525-59.94-interlaced",
    0,
    286 / 9.0,
    6,
    3,
    3,
    14,
    { { BW_PULSE_LINE, 2, 1046, 2, 4.7 },
      { BW_PULSE_EQUALISING, 6, 0, 1, 2.3 },
      { BW_PULSE_BROAD, 6, 6, 1, 286 / 9.0 - 4.7 },
      { BW_PULSE_EQUALISING, 6, 12, 1, 2.3 },
      { BW_PULSE_LINE, 13, 18, 2, 4.7 } } },
  { "525-field-2",
    "525-59.94-interlaced",
    1,
    286 / 9.0,
    531,
    3,
    3,
    14,
    { { BW_PULSE_LINE, 2, 522, 2, 4.7 },
      { BW_PULSE_EQUALISING, 6, 525, 1, 2.3 },
      { BW_PULSE_BROAD, 6, 531, 1, 286 / 9.0 - 4.7 },
      { BW_PULSE_EQUALISING, 6, 537, 1, 2.3 },
      { BW_PULSE_LINE, 13, 544, 2, 4.7 } } },
  { "625-field-1",
    "625-50-interlaced",
    0,
    32,
    0,
    2.5,
    2.5,
    20,
    { { BW_PULSE_LINE, 2, 1242, 2, 4.7 },
      { BW_PULSE_EQUALISING, 5, 1245, 1, 2.35 },
      { BW_PULSE_BROAD, 5, 0, 1, 27.3 },
      { BW_PULSE_EQUALISING, 5, 5, 1, 2.35 },
      { BW_PULSE_LINE, 20, 10, 2, 4.7 } } },
  { "625-field-2",
    "625-50-interlaced",
    1,
    32,
    625,
    2.5,
    2.5,
    20,
    { { BW_PULSE_LINE, 2, 616, 2, 4.7 },
      { BW_PULSE_EQUALISING, 5, 620, 1, 2.35 },
      { BW_PULSE_BROAD, 5, 625, 1, 27.3 },
      { BW_PULSE_EQUALISING, 5, 630, 1, 2.35 },
      { BW_PULSE_LINE, 19, 636, 2, 4.7 } } },
};

static void
assert_near_us (double got_s, double wanted_us)
{
  g_assert_cmpfloat_with_epsilon (got_s * 1e6, wanted_us, 1e-6);
}

/* The pulses of two lines of picture before and two after. */
static void
test_interval (gconstpointer data)
{
  const Interval *c = data;
  const BwRaster *raster = bw_test_raster (c->raster);
  g_autoptr (BwVerticalInterval) interval = bw_vertical_interval_new (raster, c->field, 2, 2);
  int frame = c->half_us > 31.9 ? 1250 : 1050;
  guint i = 0;

  g_assert_cmpint (interval->field, ==, c->field);
  assert_near_us (interval->sync_s, c->sync_lines * 2 * c->half_us);
  assert_near_us (interval->front_porch_s, c->front_lines * 2 * c->half_us);
  assert_near_us (interval->back_porch_s, c->back_lines * 2 * c->half_us);
  for (const Group *group = c->groups; group->n > 0; group++)
    for (int k = 0; k < group->n; k++, i++)
      {
        g_assert_cmpuint (i, <, interval->pulses->len);
        const BwPulse *pulse = &g_array_index (interval->pulses, BwPulse, i);
        int half = group->first + k * group->step;
        int from_sync = half - c->sync;
        from_sync -= from_sync > frame / 2 ? frame : 0;
        g_assert_cmpint (pulse->kind, ==, group->kind);
        g_assert_cmpint (pulse->line, ==, half / 2 + 1);
        g_assert_cmpint (pulse->half, ==, half % 2);
        assert_near_us (pulse->start_s, from_sync * c->half_us);
        assert_near_us (pulse->width_s, group->width_us);
      }
  g_assert_cmpuint (i, ==, interval->pulses->len);
}

/* A progressive raster without equalising pulses has one broad pulse in each line of its field sync, and
 * not two: a line less the serration, which is what its raster says (27 MHz over 858 and 864 clocks,
 * CTA-861-H formats 2 and 17; the width of the serration is from memory and not judged). */
static void
test_progressive (void)
{
  static const struct
  {
    const char *raster;
    guint broad;
    double line_us;
  } cases[] = { { "525-59.94-progressive", 6, 858 / 27.0 }, { "625-50-progressive", 5, 864 / 27.0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const BwRaster *raster = bw_test_raster (cases[i].raster);
      g_autoptr (BwVerticalInterval) interval = bw_vertical_interval_new (raster, 0, 2, 2);
      guint broad = 0;
      g_assert_true (raster->serration_width_s > 0);
      g_assert_true (raster->sync_recalled);
      for (guint k = 0; k < interval->pulses->len; k++)
        {
          const BwPulse *pulse = &g_array_index (interval->pulses, BwPulse, k);
          g_assert_false (pulse->half);
          if (pulse->kind != BW_PULSE_BROAD)
            continue;
          assert_near_us (pulse->start_s, broad++ * cases[i].line_us);
          assert_near_us (pulse->width_s, cases[i].line_us - raster->serration_width_s * 1e6);
        }
      g_assert_cmpuint (broad, ==, cases[i].broad);
    }
}

/* Lines that carry no burst, in each field of the sequence: nine in NTSC and in PAL of 625 lines, eleven
 * in PAL of 525. The last two before a field's sync are in the frame before. */
typedef struct
{
  const char *name;
  BwColourSystem system;
  int lines;
  int fields;
  int without[4][2];
} Burst;

static const Burst bursts[] = {
  { "ntsc-m", BW_SYSTEM_NTSC_M, 525, 2, { { 1, 9 }, { 264, 272 } } },
  { "ntsc-j", BW_SYSTEM_NTSC_J, 525, 2, { { 1, 9 }, { 264, 272 } } },
  { "ntsc-4.43", BW_SYSTEM_NTSC_443, 525, 2, { { 1, 9 }, { 264, 272 } } },
  { "pal-b", BW_SYSTEM_PAL_B, 625, 4, { { 623, 6 }, { 310, 318 }, { 622, 5 }, { 311, 319 } } },
  { "pal-n", BW_SYSTEM_PAL_N, 625, 4, { { 623, 6 }, { 310, 318 }, { 622, 5 }, { 311, 319 } } },
  { "pal-m", BW_SYSTEM_PAL_M, 525, 4, { { 523, 8 }, { 260, 270 }, { 522, 7 }, { 259, 269 } } },
};

static void
test_burst (gconstpointer data)
{
  const Burst *c = data;
  g_assert_cmpint (bw_system_facts (c->system)->burst_fields, ==, c->fields);
  for (int field = 0; field < 3 * c->fields; field++)
    for (int line = 1; line <= c->lines; line++)
      {
        int first = c->without[field % c->fields][0], last = c->without[field % c->fields][1];
        gboolean lies_in = first < last ? line >= first && line <= last
                                        : line >= first || line <= last;
        g_assert_cmpint (bw_line_has_burst (c->system, field, line), ==, !lies_in);
      }
}

static void
test_no_burst (void)
{
  static const BwColourSystem systems[] = { BW_SYSTEM_NONE, BW_SYSTEM_SECAM_L, BW_SYSTEM_PAL_60 };
  for (gsize i = 0; i < G_N_ELEMENTS (systems); i++)
    {
      g_assert_cmpint (bw_system_facts (systems[i])->burst_fields, ==, 0);
      for (int line = 1; line <= 625; line++)
        g_assert_false (bw_line_has_burst (systems[i], line % 4, line));
    }
}

/* Numbers go on through the frame and begin again after it, whichever field they are counted from. */
static void
test_numbers (void)
{
  static const struct
  {
    const char *raster;
    int field, half;
    int line;
    gboolean middle;
  } cases[] = {
    { "525-59.94-interlaced", 0, 0, 4, FALSE },    { "525-59.94-interlaced", 0, -7, 525, TRUE },
    { "525-59.94-interlaced", 1, 0, 266, TRUE },   { "525-59.94-interlaced", 1, 525, 4, FALSE },
    { "525-59.94-interlaced", 0, 1050, 4, FALSE }, { "525-59.94-interlaced", 0, -1050, 4, FALSE },
    { "625-50-interlaced", 0, 0, 1, FALSE },       { "625-50-interlaced", 0, -1, 625, TRUE },
    { "625-50-interlaced", 1, 0, 313, TRUE },      { "625-50-interlaced", 1, 624, 625, TRUE },
    { "625-50-interlaced", 1, -2501, 313, FALSE }, { "262-60.05-progressive", 0, 0, 4, FALSE },
    { "262-60.05-progressive", 1, 0, 4, FALSE },   { "262-60.05-progressive", 0, 524, 4, FALSE },
    { "262-60.05-progressive", 0, -7, 262, TRUE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean middle;
      const BwRaster *raster = bw_test_raster (cases[i].raster);
      int line = bw_raster_line_at (raster, cases[i].field, cases[i].half, &middle);
      g_assert_cmpint (line, ==, cases[i].line);
      g_assert_cmpint (middle, ==, cases[i].middle);
      g_assert_cmpint (bw_raster_line_at (raster, cases[i].field, cases[i].half, NULL), ==, line);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (intervals); i++)
    {
      g_autofree char *path = g_strconcat ("/waveform/interval/", intervals[i].name, NULL);
      g_test_add_data_func (path, &intervals[i], test_interval);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bursts); i++)
    {
      g_autofree char *path = g_strconcat ("/waveform/burst/", bursts[i].name, NULL);
      g_test_add_data_func (path, &bursts[i], test_burst);
    }
  g_test_add_func ("/waveform/burst/none", test_no_burst);
  g_test_add_func ("/waveform/numbers", test_numbers);
  g_test_add_func ("/waveform/progressive", test_progressive);
  return g_test_run ();
}
