/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ways.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/colour-system.h"

static const struct
{
  guint signal;
  guint filter;
} kinds[BW_DETAIL_WAYS_MAX] = {
  { BW_SIGNAL_COMPOSITE, BW_LUMA_TRAP }, { BW_SIGNAL_COMPOSITE, BW_LUMA_COMB },
  { BW_SIGNAL_YC, BW_LUMA_TRAP },        { BW_SIGNAL_COMPONENT, BW_LUMA_TRAP },
  { BW_SIGNAL_RGB, BW_LUMA_TRAP },
};

/* A gain of less than this share is hardly one. */
#define LEAST_GAIN 0.05
#define NO_GAIN 0.005 /* less than the figures show */

/* The highest line rate of a raster that a colour system of television goes with. */
#define TELEVISION_LINE_RATE_HZ 16.5e3

/* The system that composite of this raster would have; NONE where there is none. A source that has
 * no system is taken to have that of its field rate. */
static guint
system_of (const BwRaster *raster, const BwDetailCase *what)
{
  BwRasterFigures figures;

  if (what->system != BW_SYSTEM_NONE)
    return what->system;
  if (raster == NULL)
    return BW_SYSTEM_NONE;
  bw_raster_figures (raster, &figures);
  if (figures.line_rate_hz > TELEVISION_LINE_RATE_HZ)
    return BW_SYSTEM_NONE;
  return bw_system_of_field_rate (figures.field_rate_hz);
}

/* What is recorded as composite or Y/C, as on a tape, has no finer picture behind it. */
static gboolean
is_recorded (const BwDetailCase *what)
{
  return bw_signal_is_coded (what->signal) && what->detail_hz > 0;
}

static gboolean
is_taken (const BwMonitor *monitor, guint signal)
{
  for (guint i = 0; i < monitor->inputs->len; i++)
    if (bw_monitor_input (monitor, i)->signals & BW_BIT (signal))
      return TRUE;
  return FALSE;
}

/* A comb goes with lines of like phase, which the subcarrier of SECAM has not. */
static gboolean
can_be (guint kind, guint system)
{
  if (bw_signal_is_coded (kinds[kind].signal) && system == BW_SYSTEM_NONE)
    return FALSE;
  return bw_system_facts (system)->chroma != BW_CHROMA_SEQUENTIAL
         || kinds[kind].filter != BW_LUMA_COMB;
}

/* The bandwidth that the signal kind would meet: of this input if it takes it too, else of the best
 * input that does. */
static double
bandwidth_for (const BwDetailCase *what, const BwDetailBench *bench, guint signal)
{
  const BwMonitor *monitor = bench->monitor;
  double best_hz = 0;

  if (bench->bandwidth_stands
      || (bench->input != NULL && bench->input->signals & BW_BIT (signal)))
    return what->bandwidth_hz;
  for (guint i = 0; i < monitor->inputs->len; i++)
    {
      const BwInput *input = bw_monitor_input (monitor, i);
      BwDetailCase through;
      if (!(input->signals & BW_BIT (signal)))
        continue;
      bw_detail_case_from (&through, monitor, input, NULL, NULL);
      best_hz = MAX (best_hz, through.bandwidth_hz);
    }
  return best_hz > 0 ? best_hz : what->bandwidth_hz;
}

static void
compute (BwDetailWay *way, const BwDetailCase *what, double bandwidth_hz)
{
  BwDetailCase other = *what;

  other.bandwidth_hz = bandwidth_hz;
  other.signal = way->signal;
  other.filter = way->filter;
  other.system = way->system;
  bw_detail_compute (&other, &way->detail);
  way->is_own = way->signal == what->signal
                && (way->signal != BW_SIGNAL_COMPOSITE || way->filter == what->filter);
}

/**
 * bw_detail_ways:
 * @ways: (out): @what by each signal kind, through the input that takes it, all else alike; of what
 *   is recorded as composite or Y/C, these alone
 *
 * Returns: how many
 */
guint
bw_detail_ways (const BwDetailCase *what, const BwDetailBench *bench,
                BwDetailWay ways[BW_DETAIL_WAYS_MAX])
{
  g_return_val_if_fail (what != NULL && ways != NULL, 0);
  g_return_val_if_fail (bench != NULL && bench->monitor != NULL, 0);
  guint system = system_of (bench->raster, what), n = 0;

  for (guint i = 0; i < BW_DETAIL_WAYS_MAX; i++)
    {
      if (!can_be (i, system) || (is_recorded (what) && !bw_signal_is_coded (kinds[i].signal)))
        continue;
      ways[n] = (BwDetailWay){ .signal = kinds[i].signal,
                               .filter = kinds[i].filter,
                               .system = bw_signal_is_coded (kinds[i].signal) ? system : BW_SYSTEM_NONE,
                               .is_taken = is_taken (bench->monitor, kinds[i].signal) };
      compute (&ways[n], what, bandwidth_for (what, bench, ways[n].signal));
      n++;
    }
  return n;
}

static char *
lines (double tvl, char mark)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, 5, mark);
}

static char *
percent (double share, char mark)
{
  return bw_quantity_format (round (100 * share) / 100, BW_DIMENSION_FRACTION, 3, mark);
}

/**
 * bw_detail_ways_rgb:
 *
 * Returns: (transfer none) (nullable): the way that is RGB
 */
const BwDetailWay *
bw_detail_ways_rgb (const BwDetailWay *ways, guint n_ways)
{
  for (guint i = 0; i < n_ways; i++)
    if (ways[i].signal == BW_SIGNAL_RGB)
      return &ways[i];
  return NULL;
}

static char *
gain_sentence (const BwDetail *detail, const BwDetailWay *rgb, double gain, char mark)
{
  g_autofree char *now = lines (detail->limiting_tvl, mark);
  g_autofree char *then = lines (rgb->detail.limiting_tvl, mark);
  g_autofree char *more = percent (gain, mark);
  g_autofree char *helps = g_strdup_printf (
      _ ("RGB would help, if the source gives it, through an input that takes it: %1$s in place of "
         "%2$s, %3$s more. Then the %4$s would limit first."),
      then, now, more, bw_kind_label (&bw_detail_links, rgb->detail.limited_by));
  return rgb->is_taken ? g_steal_pointer (&helps)
                       : g_strconcat (helps, " ", _ ("But no input of this set takes it."), NULL);
}

/**
 * bw_detail_ways_say:
 * @what: the case
 * @detail: what follows from it
 *
 * Returns: (transfer full): whether RGB would help, and by how much
 */
char *
bw_detail_ways_say (const BwDetailCase *what, const BwDetail *detail, const BwDetailWay *ways,
                    guint n_ways, char mark)
{
  g_return_val_if_fail (what != NULL && detail != NULL, NULL);
  g_return_val_if_fail (n_ways == 0 || ways != NULL, NULL);
  const BwDetailWay *rgb = bw_detail_ways_rgb (ways, n_ways);

  if (is_recorded (what))
    return g_strdup (_ ("What limits is recorded with the picture: there is no RGB to be had, and "
                        "none would show more."));
  if (rgb == NULL || !(detail->limiting_tvl > 0) || rgb->detail.limited_by >= BW_N_LINKS)
    return g_strdup (_ ("Whether RGB would help is not known."));
  if (what->signal == BW_SIGNAL_RGB)
    return g_strdup (_ ("It comes as RGB already: no signal kind gives finer luminance."));
  double gain = bw_detail_way_gain (detail, rgb);
  if (gain > LEAST_GAIN)
    return gain_sentence (detail, rgb, gain, mark);
  g_autofree char *now = lines (detail->limiting_tvl, mark);
  g_autofree char *then = lines (rgb->detail.limiting_tvl, mark);
  return g_strdup_printf (
      _ ("RGB would hardly help: %1$s in place of %2$s. What limits is the %3$s, not "
         "the signal kind."),
      then, now, bw_kind_label (&bw_detail_links, rgb->detail.limited_by));
}

/**
 * bw_detail_way_gain:
 * @detail: of the case itself, whose detail is known
 *
 * Returns: how much more detail there is by @way, as a share of what there is; below zero: less
 */
double
bw_detail_way_gain (const BwDetail *detail, const BwDetailWay *way)
{
  g_return_val_if_fail (detail != NULL && way != NULL, 0);
  g_return_val_if_fail (detail->limiting_tvl > 0, 0);
  return way->detail.limiting_tvl / detail->limiting_tvl - 1;
}

/**
 * bw_detail_way_name:
 *
 * Returns: (transfer full): the signal kind, and of composite what parts colour from it
 */
char *
bw_detail_way_name (const BwDetailWay *way)
{
  g_return_val_if_fail (way != NULL, NULL);
  const char *kind = bw_kind_label (&bw_signals, way->signal);
  if (way->signal != BW_SIGNAL_COMPOSITE)
    return g_strdup (kind);
  return g_strdup_printf ("%s, %s", kind, bw_kind_label (&bw_luma_filters, way->filter));
}

/**
 * bw_detail_way_notes:
 * @detail: of the case itself, whose detail is known
 *
 * Returns: (transfer full): "22 % more, no input takes it"
 */
char *
bw_detail_way_notes (const BwDetail *detail, const BwDetailWay *way, char mark)
{
  g_return_val_if_fail (detail != NULL && way != NULL, NULL);
  double gain = bw_detail_way_gain (detail, way);
  g_autofree char *amount = percent (fabs (gain), mark);
  GString *notes = g_string_new (NULL);

  if (way->is_own)
    g_string_append (notes, _ ("as it is"));
  else if (fabs (gain) < NO_GAIN)
    g_string_append (notes, _ ("the same"));
  else
    /* Translators: how much more is resolved. */
    g_string_append_printf (notes, gain > 0 ? _ ("%s more") : _ ("%s less"), amount);
  if (!way->is_taken)
    g_string_append (notes, _ (", no input takes it"));
  return g_string_free (notes, FALSE);
}
