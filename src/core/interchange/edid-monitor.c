/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "displays.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"
#include "interchange-private.h"

/* A monitor as its EDID describes it. What an EDID does not say is that of a class of the catalogue,
 * and is named, so that it is entered from the set's own papers. */

#define TENTH_OF_AN_INCH_M 2.54e-3

static void note (GPtrArray *notes, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
note (GPtrArray *notes, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  if (notes != NULL)
    g_ptr_array_add (notes, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

/**
 * bw_edid_name:
 *
 * Returns: (transfer full): what to call the display: its name, or maker and product
 */
char *
bw_edid_name (const BwEdid *edid)
{
  g_return_val_if_fail (edid != NULL, NULL);
  if (edid->name != NULL && *edid->name != '\0')
    return g_strdup (edid->name);
  if (*edid->manufacturer != '\0')
    return g_strdup_printf ("%s %04X", edid->manufacturer, edid->product);
  return g_strdup (_ ("Display"));
}

static char *
source_words (const BwEdid *edid)
{
  GString *words = g_string_new (_ ("EDID"));
  if (*edid->manufacturer != '\0')
    g_string_append_printf (words, ", %s %04X", edid->manufacturer, edid->product);
  if (edid->year != 0)
    g_string_append_printf (words, ", %u", edid->year);
  return g_string_free (words, FALSE);
}

static double
top_rate_hz (const BwMonitor *monitor)
{
  const BwBands *bands = &monitor->line_rates_hz;
  return bands->n > 0 ? bands->at[bands->n - 1].high : 0;
}

/* The class that stands in for what the EDID does not say: of those whose input has the connector of
 * computers, the one that takes the highest line rate. */
static const BwMonitor *
find_class (const BwCatalogue *catalogue, const BwInput **input)
{
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  const BwMonitor *best = NULL;
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      for (guint j = 0; j < monitor->inputs->len; j++)
        {
          const BwInput *one = bw_monitor_input (monitor, j);
          if (!(one->connectors & BW_BIT (BW_CONNECTOR_DE_15))
              || (best != NULL && top_rate_hz (best) >= top_rate_hz (monitor)))
            continue;
          best = monitor;
          *input = one;
        }
    }
  return best;
}

/* Rasters: the detailed timings, and those of the listed modes that the catalogue has. */

static void
visit_rasters (const BwEdid *edid, const BwCatalogue *catalogue,
               void (*visit) (const BwRasterFigures *figures, gpointer data), gpointer data)
{
  BwRasterFigures figures;
  for (guint i = 0; i < edid->timings->len; i++)
    {
      bw_raster_figures (bw_edid_timing (edid, i)->raster, &figures);
      visit (&figures, data);
    }
  for (guint i = 0; i < edid->modes->len; i++)
    {
      const char *id = bw_edid_mode (edid, i)->id;
      const BwRaster *raster = id != NULL ? bw_catalogue_raster (catalogue, id) : NULL;
      if (raster == NULL)
        continue;
      bw_raster_figures (raster, &figures);
      visit (&figures, data);
    }
}

typedef struct
{
  BwRange line_hz; /* both ends zero: none yet */
  BwRange field_hz;
  double line_blanking_s;
  double field_blanking_s;
} Reach;

static void
widen (BwRange *range, double value)
{
  gboolean is_first = range->high <= 0;
  range->low = is_first ? value : MIN (range->low, value);
  range->high = is_first ? value : MAX (range->high, value);
}

static void
shorten (double *least, double value)
{
  if (value > 0)
    *least = *least > 0 ? MIN (*least, value) : value;
}

static void
reach_for (const BwRasterFigures *figures, gpointer data)
{
  Reach *reach = data;
  widen (&reach->line_hz, figures->line_rate_hz);
  widen (&reach->field_hz, figures->field_rate_hz);
  shorten (&reach->line_blanking_s, figures->h_blanking_s);
  shorten (&reach->field_blanking_s, figures->v_blanking_s);
}

/* The range that is stated, made wide enough for what is listed, or else what is listed, in whole
 * steps outward, as a block states a range. */
static gboolean
set_band (BwBands *band, BwRange stated, BwRange listed, double step, GPtrArray *notes,
          const char *what)
{
  BwRange range = stated;
  if (stated.high > 0 && listed.high > 0
      && (listed.low < stated.low - step / 2 || listed.high > stated.high + step / 2))
    note (notes, _ ("%s: what is listed reaches beyond the range that is stated, which was widened."),
          what);
  if (listed.high > 0)
    {
      range.low = stated.high > 0 ? MIN (stated.low, listed.low) : listed.low;
      range.high = MAX (stated.high, listed.high);
    }
  if (range.high <= 0)
    return FALSE;
  *band = (BwBands){ 1, { { floor (range.low / step + 1e-9) * step,
                            ceil (range.high / step - 1e-9) * step } } };
  return TRUE;
}

static gboolean
set_rates (BwMonitor *monitor, const BwEdid *edid, const BwCatalogue *catalogue, GPtrArray *notes,
           GError **error)
{
  Reach reach = { 0 };

  visit_rasters (edid, catalogue, reach_for, &reach);
  if (!set_band (&monitor->line_rates_hz, edid->line_rate_hz, reach.line_hz, 1e3, notes,
                 _ ("Line rates"))
      || !set_band (&monitor->field_rates_hz, edid->field_rate_hz, reach.field_hz, 1, notes,
                    _ ("Field rates")))
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("This EDID states neither rates nor a raster, of which a monitor "
                                    "could be made."));
  if (reach.line_blanking_s > 0)
    {
      monitor->line_retrace_s = reach.line_blanking_s;
      monitor->field_retrace_s = reach.field_blanking_s;
      note (notes, _ ("The shortest blanking of its rasters stands for that which hides the retrace."));
    }
  else
    note (notes, _ ("It has no raster, from whose blanking the retrace could be told: that of the "
                    "class stands in its place."));
  return TRUE;
}

/* Size */

/* The usual ratio that lies within the half centimetre to which a size is stated. */
static BwRatio
ratio_of (double width_m, double height_m)
{
  static const BwRatio usual[] = { { 4, 3 }, { 5, 4 }, { 16, 9 }, { 16, 10 }, { 1, 1 } };
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    {
      double wanted = height_m * (double) usual[i].num / (double) usual[i].den;
      if (fabs (wanted - width_m) <= 0.005 * (1 + (double) usual[i].num / (double) usual[i].den))
        return usual[i];
    }
  BwRatio ratio = { 4, 3 };
  bw_ratio_make ((gint64) round (width_m * 1000), (gint64) round (height_m * 1000), &ratio);
  return ratio;
}

/* The picture of the preferred timing is stated in millimetres, the screen in whole centimetres. Some
 * blocks have a picture that has nothing to do with the screen. */
static void
set_size (BwMonitor *monitor, const BwEdid *edid, GPtrArray *notes)
{
  double width_m = edid->width_m, height_m = edid->height_m;
  const BwEdidTiming *first = edid->timings->len > 0 ? bw_edid_timing (edid, 0) : NULL;

  if (first != NULL && first->image_width_m > 0 && first->image_height_m > 0
      && (width_m <= 0
          || (fabs (first->image_width_m - width_m) <= 0.01
              && fabs (first->image_height_m - height_m) <= 0.01)))
    {
      width_m = first->image_width_m;
      height_m = first->image_height_m;
    }
  if (width_m > 0 && height_m > 0)
    {
      /* sides in whole centimetres bear no more digits than this */
      monitor->diagonal_m = round (hypot (width_m, height_m) / TENTH_OF_AN_INCH_M)
                            * TENTH_OF_AN_INCH_M;
      monitor->aspect = ratio_of (width_m, height_m);
      return;
    }
  if (!bw_ratio_is_none (edid->aspect))
    monitor->aspect = edid->aspect;
  note (notes, _ ("Its size is not stated: that of the class stands in its place."));
}

/* Input */

static BwInput *
make_input (const BwInput *of_class, const BwEdid *edid, GPtrArray *notes)
{
  BwInput *input = bw_input_copy (of_class);

  input->connectors = BW_BIT (BW_CONNECTOR_DE_15);
  input->scans = BW_BIT (BW_SCAN_PROGRESSIVE) | BW_BIT (BW_SCAN_INTERLACED);
  if (edid->digital)
    note (notes, _ ("Its input is digital, for which a bench sheet has no kind: an analogue one of the "
                    "class stands in its place."));
  else
    {
      /* as much above and below as the class takes around its own level */
      double share = edid->white_v / BW_USUAL_VIDEO_V;
      input->video_v.at[0].low *= share;
      input->video_v.at[0].high *= share;
      if (edid->syncs != 0)
        input->syncs = edid->syncs;
      else
        note (notes, _ ("Its sync kinds are not stated: those of the class stand in their place."));
    }
  return input;
}

/* What stands in for what the EDID does not say is the class's; what it says are papers. */
static void
say_origins (BwMonitor *monitor, const BwMonitor *class)
{
  bw_monitor_set_origins (monitor, BW_ORIGIN_CLASS);
  for (guint i = 0; i < bw_monitor_fields.n; i++)
    {
      const BwField *field = &bw_monitor_fields.at[i];
      if ((field->flags & BW_FIELD_FIGURE) && !bw_field_equal (field, monitor, class))
        bw_field_set_origin (&bw_monitor_fields, field, monitor, BW_ORIGIN_PAPERS);
    }
}

/**
 * bw_edid_to_monitor:
 * @catalogue: for the rasters that are named by their ids, and for the class that stands in
 * @notes: (nullable) (element-type utf8): receives a sentence for all that is not the display's own
 *
 * Fills a monitor with what an EDID says: name, size, bands, the retrace that its rasters leave, sync
 * kinds and levels.
 *
 * Returns: (transfer full): the monitor, or %NULL with @error in %BW_INTERCHANGE_ERROR if it states no
 *   rates
 */
BwMonitor *
bw_edid_to_monitor (const BwEdid *edid, const BwCatalogue *catalogue, GPtrArray *notes, GError **error)
{
  g_return_val_if_fail (edid != NULL && catalogue != NULL, NULL);
  const BwInput *input = NULL;
  const BwMonitor *class = find_class (catalogue, &input);
  g_autoptr (BwMonitor) monitor = class != NULL ? bw_monitor_copy (class) : NULL;

  if (monitor == NULL)
    {
      bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                            _ ("The catalogue has no class of monitor with a 15-pin input, which would "
                               "stand in for what an EDID does not say."));
      return NULL;
    }
  for (guint i = 0; i < edid->notes->len; i++)
    note (notes, "%s", (const char *) edid->notes->pdata[i]);
  g_clear_pointer (&monitor->id, g_free);
  g_free (monitor->name);
  monitor->name = bw_edid_name (edid);
  g_free (monitor->source);
  monitor->source = source_words (edid);
  monitor->mains_v.n = monitor->mains_hz.n = 0;
  monitor->mains_a = monitor->pitch_m = monitor->spot_m = monitor->claimed_lines = 0;
  monitor->bandwidth_hz = 0;
  monitor->mask = BW_N_MASKS;
  monitor->overscan_h = monitor->overscan_v = (double) NAN;
  if (!set_rates (monitor, edid, catalogue, notes, error))
    return NULL;
  set_size (monitor, edid, notes);
  g_ptr_array_set_size (monitor->inputs, 0);
  g_ptr_array_add (monitor->inputs, make_input (input, edid, notes));
  say_origins (monitor, class);
  note (notes, _ ("An EDID says nothing of mains, mask, pitch, overscan and bandwidth: enter them from "
                  "the rating plate and the service sheet."));
  return g_steal_pointer (&monitor);
}

/**
 * bw_edid_to_sheet:
 *
 * Returns: (transfer full): a bench sheet with the monitor of bw_edid_to_monitor() and the detailed
 *   timings as rasters of its own; else as that
 */
BwSheet *
bw_edid_to_sheet (const BwEdid *edid, const BwCatalogue *catalogue, GPtrArray *notes, GError **error)
{
  BwMonitor *monitor = bw_edid_to_monitor (edid, catalogue, notes, error);
  if (monitor == NULL)
    return NULL;
  BwSheet *sheet = bw_sheet_new ();
  bw_monitor_free (sheet->monitor);
  sheet->monitor = monitor;
  g_free (sheet->title);
  sheet->title = g_strdup (monitor->name);
  for (guint i = 0; i < edid->timings->len; i++)
    g_ptr_array_add (sheet->rasters, bw_raster_copy (bw_edid_timing (edid, i)->raster));
  return sheet;
}
