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
      pulse->width_s = bw_raster_broad_s (raster);
      return !(pulse->half && bw_raster_is_broad_by_line (raster));
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
  g_return_val_if_fail (raster != NULL, NULL);
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
