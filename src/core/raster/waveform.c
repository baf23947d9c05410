/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "waveform.h"

/* Half lines from the field sync of field 1 to that of field 2, in a frame of @frame half lines:
 * the rest of field 1 after its sync starts, and the front porch of field 2. */
static int
second_sync (const BwRaster *raster)
{
  const BwFieldTiming *first = &raster->field[0];
  return first->sync + first->back_porch + first->active + 4 * raster->v_border
         + raster->field[1].front_porch;
}

static int
frame_half_lines (const BwRaster *raster)
{
  int two_fields = bw_raster_half_lines (raster);
  return raster->scan == BW_SCAN_INTERLACED ? two_fields : two_fields / 2;
}

/* Half lines from the field sync of field 1, for a half line counted from that of @field. */
static int
from_first_sync (const BwRaster *raster, int field, int half_line)
{
  gboolean second = field == 1 && raster->scan == BW_SCAN_INTERLACED;
  return half_line + (second ? second_sync (raster) : 0);
}

/**
 * bw_raster_line_at:
 * @field: 0 or 1; the same in a progressive raster
 * @half_line: counted from the start of the field sync of @field; may be negative
 * @middle: (out) (nullable): whether the half line is the second of its line
 *
 * Lines begin at the sync of field 1, or a whole number of lines before it, as the standard
 * numbers them (@numbered_before_sync): SMPTE 170M figure 7, ITU-R BT.470-6 figures 2-1 and 2-2.
 *
 * Returns: the number of the line, from 1
 */
int
bw_raster_line_at (const BwRaster *raster, int field, int half_line, gboolean *middle)
{
  int frame = frame_half_lines (raster);
  int position = from_first_sync (raster, field, half_line) + 2 * raster->numbered_before_sync;
  position = ((position % frame) + frame) % frame;
  if (middle != NULL)
    *middle = position % 2 != 0;
  return position / 2 + 1;
}

static gboolean
is_serrated (const BwRaster *raster)
{
  return raster->serration_width_s > 0;
}

/* The pulse that starts with half line @h of @field, if there is one. */
static gboolean
pulse_at (const BwRaster *raster, int field, int h, BwPulse *pulse)
{
  double half_line_s = 0.5 / bw_ratio_to_double (raster->line_rate_hz);
  int sync = raster->field[field].sync;
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);

  *pulse = (BwPulse){ .start_s = h * half_line_s };
  pulse->line = bw_raster_line_at (raster, field, h, &pulse->half);
  if (is_serrated (raster) && h >= 0 && h < sync)
    {
      pulse->kind = BW_PULSE_BROAD;
      pulse->width_s = half_line_s - raster->serration_width_s;
      return TRUE;
    }
  if ((h < 0 && h >= -raster->equalising_before)
      || (h >= sync && h < sync + raster->equalising_after))
    {
      pulse->kind = BW_PULSE_EQUALISING;
      pulse->width_s = raster->equalising_width_s;
      return TRUE;
    }
  pulse->kind = BW_PULSE_LINE;
  pulse->width_s = figures.h_sync_s;
  return !pulse->half;
}

/**
 * bw_vertical_interval_new:
 * @raster: a checked raster
 * @field: 0 or 1
 * @lines_before: whole lines of picture to show before the field's front porch
 * @lines_after: whole lines of picture to show after its back porch
 *
 * The sync of a field's vertical interval. Where the raster's field sync is serrated the pulses are
 * composite sync; where it is not, they are the line sync alone, and field sync is the interval
 * from zero to @sync_s.
 *
 * Returns: (transfer full): the interval
 */
BwVerticalInterval *
bw_vertical_interval_new (const BwRaster *raster, int field, int lines_before, int lines_after)
{
  const BwFieldTiming *timing = &raster->field[field];
  BwVerticalInterval *interval = g_new0 (BwVerticalInterval, 1);
  double half_line_s = 0.5 / bw_ratio_to_double (raster->line_rate_hz);

  interval->field = field;
  interval->start_half_line = -timing->front_porch - 2 * lines_before;
  interval->end_half_line = timing->sync + timing->back_porch + 2 * lines_after;
  interval->sync_s = timing->sync * half_line_s;
  interval->front_porch_s = timing->front_porch * half_line_s;
  interval->back_porch_s = timing->back_porch * half_line_s;
  interval->pulses = g_array_new (FALSE, FALSE, sizeof (BwPulse));
  for (int h = interval->start_half_line; h < interval->end_half_line; h++)
    {
      BwPulse pulse;
      if (pulse_at (raster, field, h, &pulse))
        g_array_append_val (interval->pulses, pulse);
    }
  return interval;
}

/**
 * bw_vertical_interval_free:
 * @interval: (nullable) (transfer full): freed with its pulses
 */
void
bw_vertical_interval_free (BwVerticalInterval *interval)
{
  if (interval == NULL)
    return;
  g_array_unref (interval->pulses);
  g_free (interval);
}

/**
 * bw_colour_fields:
 *
 * Returns: how many fields the blanking of the burst takes to repeat; zero without a burst
 */
int
bw_colour_fields (BwColourSystem system)
{
  switch (system)
    {
    case BW_SYSTEM_NTSC_M:
    case BW_SYSTEM_NTSC_J:
    case BW_SYSTEM_NTSC_443:
      return 2;
    case BW_SYSTEM_PAL_B:
    case BW_SYSTEM_PAL_N:
    case BW_SYSTEM_PAL_M:
      return 4;
    default:
      return 0;
    }
}

/* Whether @line lies from @first to @last in a frame that wraps after its last line. */
static gboolean
lies_in (int line, int first, int last)
{
  return first <= last ? line >= first && line <= last : line >= first || line <= last;
}

/**
 * bw_line_has_burst:
 * @colour_field: field of the sequence, from 0
 * @line: as the standard numbers it
 *
 * Burst is left out around field sync: on nine lines of each field in NTSC (SMPTE 170M 13.1), on
 * nine lines that move through four fields in 625-line PAL and on eleven in 525-line PAL (ITU-R
 * BT.1700 figures 6 and 8, BT.470-6 item 2.17).
 *
 * Returns: whether the line carries a burst; %FALSE for systems without one
 */
gboolean
bw_line_has_burst (BwColourSystem system, int colour_field, int line)
{
  static const int pal_625[4][2] = { { 623, 6 }, { 310, 318 }, { 622, 5 }, { 311, 319 } };
  static const int pal_525[4][2] = { { 523, 8 }, { 260, 270 }, { 522, 7 }, { 259, 269 } };
  static const int ntsc[2][2] = { { 1, 9 }, { 264, 272 } };
  int fields = bw_colour_fields (system);
  const int *without;

  if (fields == 0)
    return FALSE;
  if (fields == 2)
    without = ntsc[colour_field % 2];
  else
    without = system == BW_SYSTEM_PAL_M ? pal_525[colour_field % 4] : pal_625[colour_field % 4];
  return !lies_in (line, without[0], without[1]);
}
