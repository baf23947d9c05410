/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tube-raster.h"

#include "lack.h"

#include <math.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-tube-error-quark, bw_tube_error)

/* How the raster is made.
 *
 * The beam flies back during the retrace and scans for the rest of the period. The picture must
 * fill the part of the scan that is seen, so active = (period − retrace) × (1 − overscan), and its
 * middle must meet the middle of the scan. The retrace starts at the sync's leading edge, so the
 * middle of the scan is (period + retrace) / 2 after it and the picture's middle is
 * (period + sync-to-picture − front porch) / 2 after it; they meet when sync-to-picture − front
 * porch = retrace. The same holds along the field. Line sync takes the share of the line that it
 * has in the 525- and 625-line systems, 4.7 µs of 64 (SMPTE 170M, ITU-R BT.470-6), and field sync
 * three lines. */
#define LINE_SYNC_SHARE (4.7 / 64)
#define FIELD_SYNC_LINES 3

/* The retrace with the margin that the sheet asks for: blanking beyond it counts as direct. A touch
 * more, so that rounding to whole pixels and lines does not fall short. */
static double
with_margin (double retrace_s, const BwLimits *limits)
{
  return retrace_s * (1 + limits->blanking) * (1 + 1e-9);
}

/* What the search works with. */
typedef struct
{
  const BwTubeRequest *request;
  const BwMonitor *monitor;
  const BwLimits *limits;
  int active_half_lines; /* of a field */
  int half_lines;        /* of a field, all */
} Search;

static void
say (GPtrArray *why, char *sentence)
{
  if (why != NULL)
    g_ptr_array_add (why, sentence);
  else
    g_free (sentence);
}

static char *
rate_text (double rate_hz)
{
  return bw_quantity_format (rate_hz, BW_DIMENSION_FREQUENCY, 5, bw_quantity_locale_mark ());
}

static char *
time_text (double time_s)
{
  return bw_quantity_format (time_s, BW_DIMENSION_TIME, 4, bw_quantity_locale_mark ());
}

static const BwRange *
band_with_margin (const BwBands *bands, double value, double margin)
{
  for (guint i = 0; i < bands->n; i++)
    if (value >= bands->at[i].low * (1 + margin) && value <= bands->at[i].high * (1 - margin))
      return &bands->at[i];
  return NULL;
}

static double
line_rate_of (const Search *search)
{
  return bw_ratio_to_double (search->request->field_rate_hz) * search->half_lines / 2;
}

/* Lines enough for the picture between retraces, with overscan? In an interlaced raster the first
 * field is half a line the shorter. */
static gboolean
field_is_long_enough (const Search *search)
{
  double line_s = 1 / line_rate_of (search);
  int shorter = search->half_lines - (search->request->interlaced ? 1 : 0);
  double retrace_s = with_margin (search->monitor->field_retrace_s, search->limits);
  double seen_lines = search->active_half_lines / 2.0 / (1 - search->monitor->overscan_v);
  return search->half_lines / 2.0 >= seen_lines + retrace_s / line_s
         && (shorter - search->active_half_lines) / 2.0 >= retrace_s / line_s
         && shorter - search->active_half_lines >= 2 * (FIELD_SYNC_LINES + 2);
}

static gboolean
find_half_lines (Search *search)
{
  double rate_hz = bw_ratio_to_double (search->request->field_rate_hz);
  double highest_hz = 0;
  for (guint i = 0; i < search->monitor->line_rates_hz.n; i++)
    highest_hz = MAX (highest_hz, search->monitor->line_rates_hz.at[i].high);

  /* An interlaced field has a half line over; a progressive one has none. */
  search->half_lines = search->active_half_lines + (search->request->interlaced ? 1 : 0);
  for (; line_rate_of (search) <= highest_hz; search->half_lines += 2)
    if (rate_hz > 0 && field_is_long_enough (search)
        && band_with_margin (&search->monitor->line_rates_hz, line_rate_of (search),
                             search->limits->line_rate)
               != NULL)
      return TRUE;
  return FALSE;
}

static void
say_line_rate (const Search *search, GPtrArray *why)
{
  double line_rate_hz = line_rate_of (search);
  const BwRange *band = band_with_margin (&search->monitor->line_rates_hz, line_rate_hz,
                                          search->limits->line_rate);
  g_autofree char *rate = rate_text (line_rate_hz);
  g_autofree char *in = bw_quantity_format_range (*band, BW_DIMENSION_FREQUENCY, 5,
                                                  bw_quantity_locale_mark ());
  say (why, g_strdup_printf (_ ("%1$.1f lines a field, %2$s: the lowest line rate inside %3$s that "
                                "leaves room for the picture, the field retrace and the margins."),
                             search->half_lines / 2.0, rate, in));
}

static void
make_fields (const Search *search, BwRaster *raster, GPtrArray *why)
{
  double line_s = 1 / line_rate_of (search);
  double retrace_half_lines = search->monitor->field_retrace_s / line_s * 2;
  int blanking = search->half_lines - search->active_half_lines;
  /* sync-to-picture − front porch = retrace, with sync-to-picture + front porch = blanking; the
   * front porch is whole lines, at least one */
  int front = (int) round ((blanking - retrace_half_lines) / 4) * 2;
  front = CLAMP (front, 2, blanking - 2 * FIELD_SYNC_LINES - 2);
  int back = blanking - front - 2 * FIELD_SYNC_LINES;

  raster->scan = search->request->interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  raster->field[0]
      = (BwFieldTiming){ search->active_half_lines, front, 2 * FIELD_SYNC_LINES, back };
  raster->field[1] = raster->field[0];
  if (search->request->interlaced)
    {
      /* Fields of whole lines and the half: the first has its half line taken from the back porch,
       * the second has it before its sync. */
      raster->field[0].back_porch--;
      raster->field[1].front_porch++;
    }
  g_autofree char *retrace = time_text (search->monitor->field_retrace_s);
  say (why,
       g_strdup_printf (_ ("%1$.1f lines before field sync and %2$.1f after it put the picture's "
                           "middle at the middle of a field scan whose retrace takes %3$s."),
                        raster->field[0].front_porch / 2.0, raster->field[0].back_porch / 2.0,
                        retrace));
}

/* Sets the intervals of the line for @total pixels. Returns whether they fit: sync finds room
 * between porches that put the picture's middle within a pixel of the scan's. */
static gboolean
lay_out_line (const Search *search, BwRaster *raster, int total)
{
  int blanking = total - search->request->width;
  double retrace = search->monitor->line_retrace_s * line_rate_of (search) * total;
  int sync = MAX ((int) round (LINE_SYNC_SHARE * total), 1);
  int to_picture = MAX ((int) round ((blanking + retrace) / 2), sync + 1);

  raster->h_sync = sync;
  raster->h_back_porch = to_picture - sync;
  raster->h_front_porch = blanking - to_picture;
  return raster->h_front_porch >= 1
         && to_picture - raster->h_front_porch - retrace <= 2;
}

static void
make_line (const Search *search, BwRaster *raster, GPtrArray *why)
{
  int width = search->request->width;
  double line_s = 1 / line_rate_of (search);
  double retrace_s = with_margin (search->monitor->line_retrace_s, search->limits);
  double active_s = (line_s - retrace_s) * (1 - search->monitor->overscan_h);
  int total = (int) ceil (width * line_s / active_s / 2) * 2;

  raster->h_active = width;
  while (!lay_out_line (search, raster, total))
    total += 2;

  g_autofree char *active = time_text (width * line_s / total);
  g_autofree char *retrace_text = time_text (search->monitor->line_retrace_s);
  say (why, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                          "%1$d pixel a line gives %2$s of picture: what the scan "
                                          "leaves after a retrace of %3$s, less the overscan of "
                                          "%4$.1f %%.",
                                          "%1$d pixels a line give %2$s of picture: what the scan "
                                          "leaves after a retrace of %3$s, less the overscan of "
                                          "%4$.1f %%.",
                                          (gulong) total),
                             total, active, retrace_text, search->monitor->overscan_h * 100));
  say (why,
       g_strdup_printf (_ ("Sync of %1$d px is 7.3 %% of the line, as in the 525- and 625-line "
                           "systems; porches of %2$d and %3$d px centre the picture."),
                        raster->h_sync, raster->h_front_porch, raster->h_back_porch));
}

static gboolean
check_request (const BwTubeRequest *request, const BwMonitor *monitor, const BwLimits *limits,
               GError **error)
{
  double rate_hz = bw_ratio_to_double (request->field_rate_hz);
  if (request->width < 16 || request->width > 8192 || request->height < 16
      || request->height > 8192 || (request->interlaced && request->height % 2 != 0))
    g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
                 _ ("%1$d×%2$d: from 16 to 8192 is allowed, and an even height if interlaced"),
                 request->width, request->height);
  else if (band_with_margin (&monitor->field_rates_hz, rate_hz, limits->field_rate) == NULL)
    {
      g_autofree char *rate = rate_text (rate_hz);
      g_autofree char *bands = bw_quantity_bands_to_entry (
          &monitor->field_rates_hz, BW_DIMENSION_FREQUENCY, "Hz", bw_quantity_locale_mark ());
      g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_FIELD_RATE,
                   _ ("field rate %1$s: this monitor takes %2$s, with a margin of %3$.1f %%"), rate,
                   bands, limits->field_rate * 100);
    }
  else
    return TRUE;
  return FALSE;
}

static BwRaster *
named_raster (const BwTubeRequest *request, const BwMonitor *monitor)
{
  BwRaster *raster = bw_raster_new ();
  double rate_hz = bw_ratio_to_double (request->field_rate_hz);
  char plain[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *rate = bw_quantity_format (rate_hz, BW_DIMENSION_FREQUENCY, 5, BW_FILE_MARK);

  g_ascii_formatd (plain, sizeof plain, "%.5g", rate_hz);
  raster->id = g_strdup_printf ("tube-%dx%d-%s%s", request->width, request->height, plain,
                                request->interlaced ? "-interlaced" : "");
  raster->name = g_strdup_printf (_ ("%1$d×%2$d, %3$s, made for %4$s"), request->width,
                                  request->height, rate, monitor->name);
  raster->source = g_strdup (_ ("computation for this monitor"));
  raster->aliases = g_strdup ("");
  raster->note = g_strdup ("");
  return raster;
}

/**
 * bw_tube_raster:
 * @limits: the margins to keep
 * @why: (nullable) (element-type utf8): receives a sentence for each choice, translated
 *
 * Finds the raster that shows @request on @monitor, centred and inside the glass, with every
 * margin kept and the lowest line rate that does it.
 *
 * Returns: (transfer full): the raster, or %NULL with @error in %BW_TUBE_ERROR
 */
BwRaster *
bw_tube_raster (const BwTubeRequest *request, const BwMonitor *monitor, const BwLimits *limits,
                GPtrArray *why, GError **error)
{
  g_return_val_if_fail (request != NULL && monitor != NULL && limits != NULL, NULL);
  Search search = { request, monitor, limits, 2 * request->height, 0 };
  g_autoptr (BwRaster) raster = NULL;
  BwRatio total;
  BwLack lack;

  if (bw_lacks_deflection (monitor, &lack))
    {
      g_autofree char *says = bw_lack_says (&lack);
      g_set_error_literal (error, BW_TUBE_ERROR, BW_TUBE_ERROR_UNKNOWN, says);
      return NULL;
    }
  if (!check_request (request, monitor, limits, error))
    return NULL;
  if (request->interlaced)
    search.active_half_lines = request->height;
  if (!find_half_lines (&search))
    {
      g_set_error (
          error, BW_TUBE_ERROR, BW_TUBE_ERROR_LINE_RATE,
          g_dngettext (GETTEXT_PACKAGE,
                       "no line rate in this monitor's bands leaves room for %d line a field, "
                       "its retrace and the margins; fewer lines, a lower field rate or "
                       "interlace may",
                       "no line rate in this monitor's bands leaves room for %d lines a field, "
                       "its retrace and the margins; fewer lines, a lower field rate or "
                       "interlace may",
                       (gulong) search.active_half_lines / 2),
          search.active_half_lines / 2);
      return NULL;
    }
  raster = named_raster (request, monitor);
  say_line_rate (&search, why);
  make_fields (&search, raster, why);
  make_line (&search, raster, why);
  total = (BwRatio){ bw_raster_h_total (raster), 1 };
  if (!bw_ratio_multiply (request->field_rate_hz, (BwRatio){ search.half_lines, 2 },
                          &raster->line_rate_hz)
      || !bw_ratio_multiply (raster->line_rate_hz, total, &raster->pixel_clock_hz))
    {
      g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
                   _ ("the field rate has too many digits; nine decimals are enough"));
      return NULL;
    }
  if (!bw_raster_check (raster, error))
    return NULL;
  return g_steal_pointer (&raster);
}
