/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What a tube, a path and a source can resolve: the case, and all that follows from it. */

/* Lines resolved for each line scanned, as most of the trade counts. */
#define USUAL_KELL 0.7

/* Less modulation than this is none: −240 dB. */
#define MTF_FLOOR 1e-12

static const BwKind links[BW_N_LINKS] = {
  [BW_LINK_SOURCE] = { "source", N_ ("source") },
  [BW_LINK_SIGNAL] = { "signal", N_ ("signal kind") },
  [BW_LINK_LEAD] = { "lead", N_ ("lead") },
  [BW_LINK_AMPLIFIER] = { "bandwidth", N_ ("video bandwidth") },
  [BW_LINK_SPOT] = { "spot", N_ ("spot") },
  [BW_LINK_MASK] = { "mask", N_ ("mask") },
};
const BwKindTable bw_detail_links = { G_N_ELEMENTS (links), links };

static const BwKind luma_filters[BW_N_LUMA_FILTERS] = {
  [BW_LUMA_TRAP] = { "trap", N_ ("subcarrier trap") },
  [BW_LUMA_COMB] = { "comb", N_ ("comb filter") },
};
const BwKindTable bw_luma_filters = { G_N_ELEMENTS (luma_filters), luma_filters };

static const BwKind claims[BW_N_CLAIMS] = {
  [BW_CLAIM_NONE] = { "none", N_ ("nothing is claimed") },
  [BW_CLAIM_SUPPORTED] = { "supported", N_ ("supported") },
  [BW_CLAIM_BY_BANDWIDTH] = { "by-bandwidth", N_ ("supported by the bandwidth alone") },
  [BW_CLAIM_BY_TUBE] = { "by-tube", N_ ("supported by the tube, not by the bandwidth") },
  [BW_CLAIM_NOT_SUPPORTED] = { "not-supported", N_ ("not supported") },
  [BW_CLAIM_NOT_TOGETHER] = { "not-together", N_ ("supported by each part alone, not by all together") },
  [BW_CLAIM_UNKNOWN] = { "not-known", N_ ("not judged") },
};
const BwKindTable bw_claims = { G_N_ELEMENTS (claims), claims };

static const BwKind spot_origins[BW_N_SPOT_ORIGINS] = {
  [BW_SPOT_GIVEN] = { "given", N_ ("as entered") },
  [BW_SPOT_BY_PITCH] = { "typical-for-pitch", N_ ("assumed, typical for the pitch of the mask") },
  [BW_SPOT_BY_DIAGONAL] = { "typical-for-diagonal", N_ ("assumed, typical for the size of the tube") },
};
const BwKindTable bw_spot_origins = { G_N_ELEMENTS (spot_origins), spot_origins };

const double bw_modulations[BW_N_MODULATIONS] = { BW_MODULATION_LIMIT, BW_MODULATION_SEEN,
                                                  BW_MODULATION_CRISP };

/* The factors that are in use. It counts for vertical detail of a scanned picture alone, and is not
 * an interlace factor. */
const BwKell bw_kell_values[BW_N_KELL_VALUES] = {
  { 0.64, N_ ("Kell, Bedford and Trainer, Proc. IRE 22(11), 1934") },
  { USUAL_KELL, N_ ("rounded, in most later use") },
  { 0.85, N_ ("Kell, 1940") },
  { 0.9, N_ ("pick-up and display with fixed pixels") },
};

/**
 * bw_detail_case_init:
 * @what: (out): a 4:3 tube of which nothing is known, without a raster; Kell factor 0.7 and no
 *   further factor for interlace
 */
void
bw_detail_case_init (BwDetailCase *what)
{
  g_return_if_fail (what != NULL);
  *what = (BwDetailCase){
    .aspect = { 4, 3 },
    .signal = BW_SIGNAL_RGB,
    .system = BW_SYSTEM_NONE,
    .filter = BW_LUMA_TRAP,
    .kell = USUAL_KELL,
    .interlace = 1,
  };
}

static void
take_monitor (BwDetailCase *what, const BwMonitor *monitor, const BwInput *input)
{
  what->diagonal_m = monitor->diagonal_m;
  what->aspect = monitor->aspect;
  what->mask = monitor->mask;
  what->pitch_m = monitor->pitch_m;
  what->spot_m = monitor->spot_m;
  what->bandwidth_hz = bw_input_bandwidth_hz (input, monitor);
  what->overscan_h = isnan (monitor->overscan_h) ? 0 : monitor->overscan_h;
  what->overscan_v = isnan (monitor->overscan_v) ? 0 : monitor->overscan_v;
  what->claimed_lines = monitor->claimed_lines;
}

static void
take_raster (BwDetailCase *what, const BwRaster *raster)
{
  BwRasterFigures figures;

  bw_raster_figures (raster, &figures);
  what->active_s = figures.h_active_s;
  what->active_lines = figures.active_lines_frame;
  what->samples = figures.has_pixels ? raster->h_active / MAX (raster->pixel_repeat, 1) : 0;
  what->interlaced = raster->scan == BW_SCAN_INTERLACED;
}

/**
 * bw_detail_case_from:
 * @what: (out): as bw_detail_case_init(), and what is known
 * @input: (nullable): its bandwidth counts if it is less than the monitor's
 * @source: (nullable)
 * @raster: (nullable): one that passes bw_raster_check(); samples sent more than once count once
 *
 * The lead is left out, and a decoder is taken to have a trap: neither is known of them. Overscan
 * that is not known is left out as well, and a kind of signal or a colour system that is not known
 * limits nothing. Where a
 * switch of the set scans the source's aspect ratio, the picture takes the area that it scans; else
 * it fills the tube, whatever its own shape.
 */
void
bw_detail_case_from (BwDetailCase *what, const BwMonitor *monitor, const BwInput *input,
                     const BwSource *source, const BwRaster *raster)
{
  g_return_if_fail (what != NULL && monitor != NULL);
  bw_detail_case_init (what);
  take_monitor (what, monitor, input);
  if (raster != NULL)
    take_raster (what, raster);
  if (source == NULL)
    return;
  what->detail_hz = source->detail_hz;
  if (source->signal < BW_N_SIGNALS && bw_source_system (source) < BW_N_SYSTEMS)
    {
      what->signal = source->signal;
      what->system = bw_source_system (source);
    }
  what->in_phase = source->signal == BW_SIGNAL_RGB && what->samples > 0 && !(source->detail_hz > 0);
  if (bw_monitor_switches_to (monitor, source->aspect))
    bw_detail_case_set_area (what, monitor, source->aspect);
}

/**
 * bw_detail_case_set_area:
 * @aspect: of a picture
 *
 * Makes the picture take the largest area of its own shape inside the tube, as
 * bw_monitor_area_diagonal_m().
 */
void
bw_detail_case_set_area (BwDetailCase *what, const BwMonitor *monitor, BwRatio aspect)
{
  g_return_if_fail (what != NULL && monitor != NULL);
  what->diagonal_m = bw_monitor_area_diagonal_m (monitor, aspect);
  what->aspect = aspect;
}

static void
set_published (const BwDetailCase *what, BwDetail *detail)
{
  double aspect = bw_ratio_to_double (what->aspect);
  const struct
  {
    double *tvl;
    double frequency_hz;
  } figures[] = {
    { &detail->bandwidth_tvl, what->bandwidth_hz },
    { &detail->source_tvl, bw_detail_source_hz (what) },
    { &detail->signal_tvl, bw_detail_signal_hz (what) },
    { &detail->lead_tvl, what->lead_hz },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    *figures[i].tvl = bw_tvl_from_hz (figures[i].frequency_hz, what->active_s, aspect);
  detail->spot_tvl = bw_detail_link_limit_tvl (what, BW_LINK_SPOT);
}

static void
set_links (const BwDetailCase *what, BwDetail *detail)
{
  double sum = 0;

  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      double limit_tvl = bw_detail_link_limit_tvl (what, link);
      detail->limit_tvl[link] = limit_tvl;
      if (!(limit_tvl > 0))
        continue;
      for (guint i = 0; i < BW_N_MODULATIONS; i++)
        detail->level_tvl[link][i] = bw_detail_link_level_tvl (what, link, bw_modulations[i]);
      sum += 1 / (limit_tvl * limit_tvl);
    }
  detail->combined_tvl = sum > 0 ? 1 / sqrt (sum) : 0;
  for (guint i = 0; i < BW_N_MODULATIONS; i++)
    detail->mtf_tvl[i] = bw_detail_level_tvl (what, bw_modulations[i]);
  detail->limiting_tvl = detail->mtf_tvl[0];
}

static void
set_losses (const BwDetailCase *what, BwDetail *detail)
{
  double loss_db[BW_N_LINKS];
  double sum_db = 0, most = 0;

  detail->limited_by = BW_N_LINKS;
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      double mtf = bw_detail_link_mtf (what, link, detail->limiting_tvl);
      loss_db[link] = -20 * log10 (MAX (mtf, MTF_FLOOR));
      sum_db += loss_db[link];
    }
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      if (!(detail->limit_tvl[link] > 0))
        continue;
      detail->loss[link] = sum_db > 0 ? loss_db[link] / sum_db : 0;
      if (detail->loss[link] > most)
        detail->limited_by = link;
      most = MAX (most, detail->loss[link]);
    }
}

/**
 * bw_detail_compute:
 * @what: figures that are not known are zero
 *
 * All that follows from @what.
 *
 * @limit_tvl is each link's nominal limit, as the trade quotes it, turned to lines over the
 * viewable height: of samples and mask the sampling limit, of lead and amplifiers −3 dB, of the
 * signal kind the edge of its system's band or of its trap, of the spot 3 % (a line 1.18 σ wide).
 * @combined_tvl is made from these, as published figures are combined; it is not more than the
 * lowest. They do not stand at one level of modulation: for that there are @level_tvl, of each
 * link alone, and @mtf_tvl, of the product of all MTFs, whose 3 % is @limiting_tvl. Overscan takes its share of the line out
 * of @limit_tvl; @bandwidth_tvl, @source_tvl, @signal_tvl and @lead_tvl count the whole line.
 *
 * Every figure is finite, whatever is not known.
 */
void
bw_detail_compute (const BwDetailCase *what, BwDetail *detail)
{
  g_return_if_fail (what != NULL && detail != NULL);
  *detail = (BwDetail){ 0 };
  bw_detail_geometry (what, detail);
  bw_detail_lines (what, detail);
  set_published (what, detail);
  set_links (what, detail);
  set_losses (what, detail);
  bw_detail_claim (what, detail);
}
