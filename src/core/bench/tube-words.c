/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tube-raster-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Why a made raster is as it is, and what it costs. */

/* A picture that takes less of the scanned height than this is said to. */
#define NEARLY_ALL 0.85

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

static char *
percent_text (double share)
{
  return bw_quantity_format (share, BW_DIMENSION_FRACTION, 3, bw_quantity_locale_mark ());
}

static void
say (GPtrArray *to, char *sentence)
{
  g_ptr_array_add (to, sentence);
}

static char *
line_rate_words (const BwTubeSearch *search, const BwTubeSkeleton *skeleton,
                 const BwRasterFigures *f)
{
  const BwRange *band = bw_tube_band (search->line_rates_hz, f->line_rate_hz, 0, NULL);
  g_autofree char *rate = rate_text (f->line_rate_hz);
  g_autofree char *in = bw_quantity_format_range (*band, BW_DIMENSION_FREQUENCY, 5,
                                                  bw_quantity_locale_mark ());

  switch (skeleton->origin)
    {
    case BW_TUBE_STANDARD:
      return g_strdup_printf (_ ("%1$.1f lines a field, %2$s: the line rate and the count of “%3$s”, "
                                 "which lie inside %4$s."),
                              f->lines_per_field, rate, skeleton->standard->name, in);
    case BW_TUBE_EXACT:
      return g_strdup_printf (_ ("%1$.1f lines a field as in “%3$s”, at just the field rate that "
                                 "was asked for: %2$s, inside %4$s."),
                              f->lines_per_field, rate, skeleton->standard->name, in);
    case BW_TUBE_NOMINAL:
      return g_strdup_printf (_ ("%1$.1f lines a field, %2$s: the set has this one line rate, and the "
                                 "count of lines comes nearest to the field rate that was asked for."),
                              f->lines_per_field, rate);
    case BW_TUBE_INSIDE:
      return g_strdup_printf (_ ("%1$.1f lines a field, %2$s: the lowest line rate inside %3$s that "
                                 "shows every line of the picture between the retraces."),
                              f->lines_per_field, rate, in);
    case BW_TUBE_LOWEST:
    default:
      return g_strdup_printf (_ ("%1$.1f lines a field, %2$s: the lowest line rate inside %3$s that "
                                 "leaves room for the picture and the field retrace."),
                              f->lines_per_field, rate, in);
    }
}

static char *
field_words (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, const BwRaster *raster)
{
  double front = raster->field[0].front_porch / 2.0, back = raster->field[0].back_porch / 2.0;
  g_autofree char *retrace = time_text (search->monitor->field_retrace_s);

  if (skeleton->v_active > 0)
    return g_strdup_printf (_ ("%1$.1f lines before field sync and %2$.1f after it put the picture's "
                               "middle where the standard has it."),
                            front, back);
  return g_strdup_printf (_ ("%1$.1f lines before field sync and %2$.1f after it put the picture's "
                             "middle at the middle of a field scan whose retrace takes %3$s."),
                          front, back, retrace);
}

static char *
line_words (const BwTubeSearch *search, const BwRaster *raster, const BwRasterFigures *f)
{
  g_autofree char *active = time_text (f->h_active_s);
  g_autofree char *blanking = time_text (f->h_blanking_s);
  g_autofree char *retrace = time_text (search->monitor->line_retrace_s);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%1$d pixel a line gives %2$s of picture and %3$s of "
                                       "blanking, in which the retrace takes %4$s.",
                                       "%1$d pixels a line give %2$s of picture and %3$s of "
                                       "blanking, in which the retrace takes %4$s.",
                                       (gulong) f->h_total),
                          f->h_total, active, blanking, retrace);
}

static char *
porch_words (const BwTubeSearch *search, const BwRasterFigures *f)
{
  double needs_s = 0;
  const BwMonitor *monitor = search->monitor;
  g_autofree char *sync = time_text (f->h_sync_s);
  g_autofree char *back = time_text (f->h_back_porch_s);

  for (guint i = 0; i < monitor->inputs->len; i++)
    needs_s = MAX (needs_s, bw_input_clamp_needs (bw_monitor_input (monitor, i),
                                                  f->line_period_s).tight_s);
  if (search->request->input != NULL)
    needs_s = bw_input_clamp_needs (search->request->input, f->line_period_s).tight_s;
  if (needs_s <= 0)
    return g_strdup_printf (_ ("Sync of %1$s and a back porch of %2$s have their usual share of such "
                               "a line."),
                            sync, back);
  g_autofree char *needs = time_text (needs_s);
  return g_strdup_printf (_ ("Sync of %1$s and a back porch of %2$s have their usual share of such a "
                             "line; a clamp on the back porch is well served by %3$s."),
                          sync, back, needs);
}

/**
 * bw_tube_say_why:
 * @widened: how many pixels stand for one
 *
 * Adds why the raster of @answer is as it is.
 */
void
bw_tube_say_why (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, int widened,
                 BwTubeAnswer *answer)
{
  BwRasterFigures f;

  bw_raster_figures (answer->raster, &f);
  say (answer->why, line_rate_words (search, skeleton, &f));
  say (answer->why, field_words (search, skeleton, answer->raster));
  say (answer->why, line_words (search, answer->raster, &f));
  say (answer->why, porch_words (search, &f));
  if (widened > 1)
    {
      g_autofree char *lowest = rate_text (search->request->clock.lowest_hz);
      say (answer->why,
           g_strdup_printf (_ ("All figures across are multiplied by %1$d, so that the pixel clock is not "
                               "below %2$s: the computer draws each pixel of the picture that much "
                               "wider, and the tube shows no difference."),
                            widened, lowest));
    }
}

/* Whether @rate_hz lies in a band, but not with its margin. */
static gboolean
is_near_edge (const BwBands *bands, double rate_hz, double margin, BwRange *band)
{
  return bw_tube_band (bands, rate_hz, 0, band) != NULL
         && bw_tube_band (bands, rate_hz, margin, NULL) == NULL;
}

static char *
range_text (BwRange range)
{
  return bw_quantity_format_range (range, BW_DIMENSION_FREQUENCY, 5, bw_quantity_locale_mark ());
}

static void
say_margins (const BwTubeSearch *search, const BwRasterFigures *f, BwTubeAnswer *answer)
{
  double retrace_s = search->monitor->field_retrace_s;
  const BwLimits *limits = search->limits;
  g_autofree char *line_rate = rate_text (f->line_rate_hz);
  g_autofree char *field_rate = rate_text (f->field_rate_hz);
  BwRange band;

  if (is_near_edge (search->line_rates_hz, f->line_rate_hz, limits->line_rate, &band))
    {
      g_autofree char *range = range_text (band);
      say (answer->costs, g_strdup_printf (_ ("Line rate %1$s lies near the edge of %2$s: check the hold "
                                              "control warm and cold."),
                                           line_rate, range));
    }
  if (is_near_edge (&search->monitor->field_rates_hz, f->field_rate_hz, limits->field_rate, &band))
    {
      g_autofree char *range = range_text (band);
      say (answer->costs, g_strdup_printf (_ ("Field rate %1$s lies near the edge of %2$s: check the "
                                              "hold control warm and cold."),
                                           field_rate, range));
    }
  if (f->v_blanking_s >= retrace_s * (1 + search->limits->blanking))
    return;
  g_autofree char *blanking = time_text (f->v_blanking_s);
  g_autofree char *retrace = time_text (retrace_s);
  say (answer->costs, g_strdup_printf (_ ("Field blanking lasts %1$s, little more than the %2$s that "
                                          "retrace needs."),
                                       blanking, retrace));
}

static void
say_hidden (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, const BwRasterFigures *f,
            BwTubeAnswer *answer)
{
  double hidden = bw_tube_hidden_lines (search, f->line_rate_hz, skeleton->half_lines);
  int lines = (int) ceil (hidden * (search->request->interlaced ? 2 : 1) / search->times - 1e-9);
  double scanned = skeleton->half_lines - bw_tube_retrace_half_lines (search, f->line_rate_hz);

  if (lines > 0)
    say (answer->costs,
         g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%d line of the picture lies behind the edge of the glass.",
                                       "%d lines of the picture, top and bottom together, lie behind "
                                       "the edge of the glass.",
                                       (gulong) lines),
                          lines));
  if (search->active_half_lines >= NEARLY_ALL * scanned)
    return;
  g_autofree char *share = percent_text (search->active_half_lines / scanned);
  say (answer->costs, g_strdup_printf (_ ("The picture takes %s of the scanned height: set the height, "
                                          "or leave dark bands above and below."),
                                       share));
}

/**
 * bw_tube_say_costs:
 *
 * Adds what the raster of @answer costs.
 */
void
bw_tube_say_costs (const BwTubeSearch *search, const BwTubeSkeleton *skeleton,
                   BwTubeAnswer *answer)
{
  double wanted_hz = bw_ratio_to_double (search->request->field_rate_hz);
  BwRasterFigures f;

  bw_raster_figures (answer->raster, &f);
  if (fabs (f.field_rate_hz - wanted_hz) > 1e-6 * wanted_hz)
    {
      g_autofree char *is = rate_text (f.field_rate_hz);
      g_autofree char *wanted = rate_text (wanted_hz);
      say (answer->costs, g_strdup_printf (_ ("The field rate is %1$s in place of %2$s."), is, wanted));
    }
  if (search->times > 1)
    say (answer->costs, g_strdup_printf (_ ("Every line is sent twice, as this set scans too quickly for "
                                            "%1$d of them: the computer must draw %2$d."),
                                         search->request->height, 2 * search->request->height));
  say_hidden (search, skeleton, &f, answer);
  say_margins (search, &f, answer);
}
