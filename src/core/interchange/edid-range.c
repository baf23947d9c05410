/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* The range limits of a written block. */

#define RATE_MAX 510 /* in hertz or kilohertz: a byte and the 255 that a bit adds */

static char *
kilohertz (BwRange range)
{
  return bw_quantity_format_range (range, BW_DIMENSION_FREQUENCY, 4, bw_quantity_locale_mark ());
}

static BwRange
whole (const BwBands *bands)
{
  BwRange range = bands->at[0];
  for (guint i = 1; i < bands->n; i++)
    {
      range.low = MIN (range.low, bands->at[i].low);
      range.high = MAX (range.high, bands->at[i].high);
    }
  return range;
}

static BwRange
rounded (BwRange range, double step, gboolean inward)
{
  double low = range.low / step;
  double high = range.high / step;
  double slip = 1e-9; /* 70 kHz is not to become 71 by an error in the last place */
  return inward ? (BwRange){ ceil (low - slip) * step, floor (high + slip) * step }
                : (BwRange){ floor (low + slip) * step, ceil (high - slip) * step };
}

static gboolean
holds (BwRange range, BwRange listed)
{
  return range.low <= listed.low && listed.high <= range.high;
}

/**
 * bw_edid_is_continuous:
 *
 * A computer may choose any raster within the range of a continuous display. That is said only
 * where it is safe: one band each, with its ends rounded inward, and nothing listed outside.
 */
gboolean
bw_edid_is_continuous (const BwEdidWriter *writer)
{
  const BwMonitor *monitor = writer->monitor;
  return monitor->line_rates_hz.n == 1 && monitor->field_rates_hz.n == 1
         && writer->input->line_counts.n == 0
         && holds (rounded (whole (&monitor->line_rates_hz), 1e3, TRUE), writer->line_rates_hz)
         && holds (rounded (whole (&monitor->field_rates_hz), 1, TRUE), writer->field_rates_hz);
}

/* Two bytes of a range, and the bits of byte 4 that add 255: 2 to the greatest, 3 to both. */
static guint8
put_pair (guint8 *d, BwRange range, double step)
{
  int low = (int) lround (range.low / step);
  int high = (int) lround (range.high / step);

  d[0] = (guint8) (low > 255 ? low - 255 : low);
  d[1] = (guint8) (high > 255 ? high - 255 : high);
  return low > 255 ? 3 : high > 255 ? 2 : 0;
}

static void
note_range (BwEdidWriter *writer, const BwBands *bands, BwRange stated, const char *what)
{
  BwRange overall = whole (bands);
  g_autofree char *is = kilohertz (overall);
  g_autofree char *said = kilohertz (stated);

  if (bands->n > 1)
    bw_edid_note (
        writer,
        g_dngettext (
            GETTEXT_PACKAGE,
            "%1$s: the block can state one range only, %2$s, and the monitor takes %3$u band "
            "within it. It tells the computer to keep to the rasters that it lists.",
            "%1$s: the block can state one range only, %2$s, and the monitor takes %3$u bands "
            "within it. It tells the computer to keep to the rasters that it lists.",
            bands->n),
        what, said, bands->n);
  else if (!bw_near (overall.low, stated.low, 1e-6) || !bw_near (overall.high, stated.high, 1e-6))
    bw_edid_note (writer, _ ("%1$s: %2$s is stated as %3$s, in whole steps."), what, is, said);
}

static double
max_clock_hz (const BwEdidWriter *writer)
{
  return MAX (writer->clock_hz, 2 * bw_input_bandwidth_hz (writer->input, writer->monitor));
}

/**
 * bw_edid_put_range:
 * @d: (array fixed-size=18): a descriptor of zeros
 *
 * Writes the range limits, with both ends rounded inward if the display is continuous and outward
 * if not.
 *
 * Returns: %FALSE with @error if they are beyond what the descriptor has room for
 */
gboolean
bw_edid_put_range (BwEdidWriter *writer, guint8 *d, GError **error)
{
  const BwMonitor *monitor = writer->monitor;
  gboolean inward = writer->continuous;
  BwRange lines = rounded (whole (&monitor->line_rates_hz), 1e3, inward);
  BwRange fields = rounded (whole (&monitor->field_rates_hz), 1, inward);

  if (lines.high > RATE_MAX * 1e3 || fields.high > RATE_MAX)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("“%1$s”: an EDID can state line rates up to %2$d kHz and field "
                                    "rates up to %3$d Hz, and its bands reach further."),
                                 monitor->name, RATE_MAX, RATE_MAX);
  d[3] = BW_EDID_TAG_RANGE;
  d[4] = put_pair (d + 5, fields, 1);
  d[4] |= (guint8) (put_pair (d + 7, lines, 1e3) << 2);
  d[9] = (guint8) ceil (max_clock_hz (writer) / 10e6 - 1e-9);
  d[10] = 0x01; /* limits only, no formula */
  d[11] = '\n';
  memset (d + 12, ' ', 6);
  note_range (writer, &monitor->line_rates_hz, lines, _ ("Line rates"));
  note_range (writer, &monitor->field_rates_hz, fields, _ ("Field rates"));
  return TRUE;
}
