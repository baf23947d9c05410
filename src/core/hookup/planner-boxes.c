/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

#include "core/circuit/drive.h"
#include "core/connector/plug.h"
#include "core/levels/signal-levels.h"

/* Boxes: whether one takes a signal, what stands before it, and what comes out. */

#define CODED (BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC))

/* Returns: (transfer none): the figures of the raster at @place */
static const BwRasterFigures *
place_figures (const BwPlanner *planner, const BwPlanPlace *place)
{
  return &g_array_index (planner->rasters, BwPlanRaster, place->raster).figures;
}

/**
 * bw_box_money:
 *
 * Returns: its price; zero if it is not known
 */
double
bw_box_money (const BwAdaptor *box)
{
  double money;
  const char *unit;
  return bw_adaptor_price (box, &money, &unit) ? money : 0;
}

static gboolean
in_bands (const BwBands *bands, double value)
{
  for (guint i = 0; i < bands->n; i++)
    if (value >= bands->at[i].low && value <= bands->at[i].high)
      return TRUE;
  return bands->n == 0;
}

static gboolean
in_set (guint set, guint kind)
{
  return set == 0 || (set & BW_BIT (kind));
}

/**
 * bw_box_takes_raster:
 *
 * Returns: whether the rates and the scan are taken
 */
gboolean
bw_box_takes_raster (const BwAdaptor *box, const BwPlanRaster *raster)
{
  return in_bands (&box->takes_line_rates_hz, raster->figures.line_rate_hz)
         && in_bands (&box->takes_field_rates_hz, raster->figures.field_rate_hz)
         && in_set (box->takes_scans, raster->raster->scan);
}

/* Composite without a subcarrier is luminance as well.
 *
 * Returns: whether the kind of signal and its colour system are taken */
static gboolean
takes_signal (const BwAdaptor *box, BwSignal signal, BwColourSystem system)
{
  gboolean coded = (CODED & BW_BIT (signal)) && system != BW_SYSTEM_NONE;
  gboolean as_luma = signal == BW_SIGNAL_COMPOSITE && !coded;

  if (coded && !in_set (box->takes_systems, system))
    return FALSE;
  return in_set (box->takes_signals, signal)
         || (as_luma && in_set (box->takes_signals, BW_SIGNAL_LUMA));
}

/* The polarities on conductors of their own, as in the fit's rule. */
static guint
polarities (const BwPlanSignal *signal, BwSyncKind sync)
{
  if (signal->source.sync_polarity == BW_SYNC_POLARITY_POSITIVE)
    return BW_BIT (BW_POLARITY_POSITIVE);
  if (signal->source.sync_polarity == BW_SYNC_POLARITY_NEGATIVE || sync == BW_SYNC_COMPOSITE)
    return BW_BIT (BW_POLARITY_NEGATIVE);
  return BW_BIT (signal->raster->h_polarity) | BW_BIT (signal->raster->v_polarity);
}

/* An inverter has nothing to do where the polarity is what it gives. */
static gboolean
is_idle_inverter (const BwAdaptor *box, guint polarities)
{
  return box->gives_polarities != 0 && box->gives_polarities == polarities && box->gives_syncs == 0
         && box->gives_shapes == 0 && box->gives_signals == 0;
}

static gboolean
takes_sync_form (const BwAdaptor *box, const BwPlanSignal *signal, BwSyncKind sync)
{
  guint shape = sync == BW_SYNC_SEPARATE ? BW_SHAPE_BILEVEL : signal->shape;
  gboolean own = bw_sync_has_own_conductor (sync);

  return in_set (box->takes_syncs, sync) && in_set (box->takes_shapes, shape)
         && (!own || box->takes_polarities == 0
             || !(polarities (signal, sync) & ~box->takes_polarities))
         && !(own && is_idle_inverter (box, polarities (signal, sync)));
}

static gboolean
approach_own_sync (const BwPlanner *planner, const BwAdaptor *box, BwPlanStretch *stretch,
                   BwPlanSignal *signal, BwSyncKind sync)
{
  const BwBands *takes = &box->takes_sync_v;
  double ohm = box->takes_sync_ohm;
  double level_v = bw_level_at_load (signal->source.sync_v, signal->source.sync_load,
                                     signal->source.sync_ohm, ohm);
  if (in_bands (takes, level_v))
    return TRUE;
  return level_v > takes->at[0].high
         && bw_stretch_resistor (planner, stretch, signal, sync, ohm, takes->at[0])
         && in_bands (takes, bw_level_at_load (signal->source.sync_v, signal->source.sync_load,
                                               signal->source.sync_ohm, ohm));
}

/* How far the picture, and the sync in it, must be lowered; one: not at all. */
static double
pad_ratio (const BwAdaptor *box, const BwPlanSignal *signal, gboolean own_sync)
{
  const BwBands *video = &box->takes_video_v;
  const BwBands *sync = &box->takes_sync_v;
  return bw_pad_ratio (signal->source.video_v, video->n > 0 ? &video->at[0] : NULL,
                       signal->source.sync_v, !own_sync && sync->n > 0 ? &sync->at[0] : NULL);
}

static gboolean
approach_levels (const BwPlanner *planner, const BwAdaptor *box, BwPlanStretch *stretch,
                 BwPlanSignal *signal, BwSyncKind sync)
{
  gboolean own = bw_sync_has_own_conductor (sync);
  BwLack lack;
  if (bw_lacks_wire (&signal->source, &lack) || bw_lacks_drive (&signal->source, &lack))
    return FALSE; /* a level that is not known is not known to be taken */
  double ratio = pad_ratio (box, signal, own);

  if (ratio < 1 && !bw_stretch_pad (planner, stretch, signal, sync, BW_PAD_T, ratio, BW_N_RULES))
    return FALSE;
  if (!in_bands (&box->takes_video_v, signal->source.video_v))
    return FALSE;
  if (own)
    return approach_own_sync (planner, box, stretch, signal, sync);
  return in_bands (&box->takes_sync_v, signal->source.sync_v);
}

/* By the sync of least cost, the first in the order of BwSyncKind where several cost the same. */
static gboolean
approach_by_best_sync (const BwPlanner *planner, const BwPlanSignal *from, const BwAdaptor *box,
                       BwPlanStretch *stretch, BwPlanSignal *arrives)
{
  gboolean found = FALSE;

  for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
    {
      BwPlanStretch trial;
      BwPlanSignal signal;
      if (!(from->source.syncs & BW_BIT (sync)) || !takes_sync_form (box, from, sync))
        continue;
      bw_stretch_clear (&trial);
      signal = *from;
      if (!approach_levels (planner, box, &trial, &signal, sync))
        continue;
      bw_stretch_lead (planner, &trial, &signal, box->takes_connectors, NULL, sync);
      if (found && trial.cost >= stretch->cost)
        continue;
      found = TRUE;
      bw_stretch_clear (stretch);
      bw_stretch_append (stretch, &trial);
      *arrives = signal;
    }
  return found;
}

/**
 * bw_box_approach:
 * @from: where the signal stands
 * @stretch: (out caller-allocates): parts and lead from there to @box
 * @arrives: (out caller-allocates): the signal at the box's connector
 *
 * Returns: %FALSE if the box does not take the signal, whatever passive parts stand before it
 */
gboolean
bw_box_approach (const BwPlanner *planner, const BwPlanPlace *from, const BwAdaptor *box,
                 BwPlanStretch *stretch, BwPlanPlace *arrives)
{
  const BwSource *source = &from->signal.source;
  const BwPlanRaster *raster = &g_array_index (planner->rasters, BwPlanRaster, from->raster);

  if (!takes_signal (box, source->signal, source->system) || !bw_box_takes_raster (box, raster))
    return FALSE;
  *arrives = *from;
  return approach_by_best_sync (planner, &from->signal, box, stretch, &arrives->signal);
}

/* Sync that goes on with a signal of another kind: on green becomes on Y, and so on. */
static guint
passed_syncs (guint syncs, BwSignal signal)
{
  guint in_picture = BW_BIT (BW_SYNC_ON_GREEN) | BW_BIT (BW_SYNC_ON_Y) | BW_BIT (BW_SYNC_IN_VIDEO);
  guint fits = bw_signal_syncs (signal);
  guint passed = syncs & fits;
  if ((syncs & in_picture) && !(passed & in_picture))
    passed |= fits & in_picture & ~(signal == BW_SIGNAL_RGB ? BW_BIT (BW_SYNC_IN_VIDEO) : 0u);
  return passed;
}

static gboolean
touches_sync (const BwAdaptor *box)
{
  return box->gives_sync_v > 0 || box->gives_shapes != 0 || box->gives_polarities != 0;
}

static gboolean
give_sync (const BwAdaptor *box, BwPlanSignal *signal)
{
  BwSource *source = &signal->source;
  guint comes = touches_sync (box) && box->takes_syncs != 0 ? source->syncs & box->takes_syncs
                                                            : source->syncs;
  gboolean made = box->gives_syncs != 0;

  source->syncs = made ? box->gives_syncs & bw_signal_syncs (source->signal)
                       : passed_syncs (comes, source->signal);
  if (made || box->kind == BW_ADAPTOR_CONVERTER)
    source->sync_polarity = BW_SYNC_POLARITY_STANDARD;
  if (box->gives_polarities != 0)
    source->sync_polarity = box->gives_polarities & BW_BIT (BW_POLARITY_POSITIVE)
                                ? BW_SYNC_POLARITY_POSITIVE
                                : BW_SYNC_POLARITY_NEGATIVE;
  if (box->gives_shapes != 0)
    signal->shape = box->gives_shapes & BW_BIT (BW_SHAPE_TRILEVEL) ? BW_SHAPE_TRILEVEL
                                                                   : BW_SHAPE_BILEVEL;
  return source->syncs != 0;
}

static void
give_standard_levels (BwSource *source)
{
  BwSignalLevels levels;
  bw_signal_levels (source->system, source->signal, &levels);
  source->video_v = levels.white_v;
  source->sync_v = -levels.sync_v;
  source->sync_load = BW_LOAD_75_OHM;
  source->sync_ohm = BW_VIDEO_OHM;
  source->source_ohm = BW_VIDEO_OHM;
  source->setup_ire = levels.setup_ire;
  source->coupling = BW_COUPLING_DC;
  source->dc_v = 0;
}

static void
give_video_level (const BwAdaptor *box, BwSource *source)
{
  guint own = BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE);
  if (box->levels == BW_LEVELS_PASSED && !(source->syncs & own))
    source->sync_v *= box->gives_video_v / source->video_v;
  source->video_v = box->gives_video_v;
  source->source_ohm = BW_VIDEO_OHM;
}

static void
give_levels (const BwAdaptor *box, BwSource *source)
{
  if (box->levels == BW_LEVELS_STANDARD)
    give_standard_levels (source);
  if (box->gives_video_v > 0)
    give_video_level (box, source);
  if (box->gives_sync_v > 0)
    {
      source->sync_v = box->gives_sync_v;
      source->sync_load = box->gives_sync_load;
      source->sync_ohm = box->gives_sync_ohm;
    }
  if (box->gives_setup_ire.n > 0)
    source->setup_ire = box->gives_setup_ire.at[0].low;
  if (box->gives_couplings != 0)
    {
      source->coupling
          = box->gives_couplings & BW_BIT (BW_COUPLING_AC) ? BW_COUPLING_AC : BW_COUPLING_DC;
      source->dc_v = 0;
    }
}

static double
detail_hz (const BwPlanner *planner, const BwPlanPlace *place)
{
  BwCase c = { .source = &place->signal.source,
               .raster = place->signal.raster,
               .figures = place_figures (planner, place) };
  return bw_case_source_detail_hz (&c);
}

/* The highest frequency that comes out: the same share of a line in a new raster, and no more than
 * the box and the colour system pass. */
static void
give_detail (const BwPlanner *planner, const BwPlanPlace *arrives, const BwAdaptor *box,
             BwPlanPlace *after)
{
  const BwRasterFigures *in = place_figures (planner, arrives);
  const BwRasterFigures *out = place_figures (planner, after);
  BwSource *source = &after->signal.source;
  double hz = detail_hz (planner, arrives) * in->h_active_s / out->h_active_s;

  if (box->detail_hz > 0)
    hz = hz > 0 ? MIN (hz, box->detail_hz) : box->detail_hz;
  source->detail_hz = 0;
  double most_hz = detail_hz (planner, after); /* of the raster and the colour system */
  if (hz > 0 && (most_hz <= 0 || hz < most_hz))
    source->detail_hz = hz;
}

static gboolean
is_luma (const BwSource *source)
{
  return source->signal == BW_SIGNAL_LUMA
         || (source->signal == BW_SIGNAL_COMPOSITE && source->system == BW_SYSTEM_NONE);
}

/* One thing that comes out; G_MAXUINT: as it comes. */
typedef struct
{
  guint signal;
  guint system;
  guint raster;
  guint connector;
} Outcome;

/* Whether the connector has a pin for each conductor, with any of the syncs. */
static gboolean
carries_all (const BwSource *source)
{
  for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
    if ((source->syncs & BW_BIT (sync))
        && !bw_connector_takes (source->connector, source->signal, sync, TRUE))
      return FALSE;
  return TRUE;
}

static gboolean
give (const BwPlanner *planner, const BwPlanPlace *arrives, const BwAdaptor *box, Outcome outcome,
      BwPlanPlace *after)
{
  BwSource *source = &after->signal.source;
  *after = *arrives;
  if (outcome.raster != G_MAXUINT)
    {
      after->raster = outcome.raster;
      after->signal.raster
          = g_array_index (planner->rasters, BwPlanRaster, outcome.raster).raster;
      after->signal.shape = after->signal.raster->sync_shape;
    }
  source->signal = outcome.signal;
  source->system = outcome.system;
  if (outcome.connector != G_MAXUINT)
    source->connector = outcome.connector;
  if (!bw_system_suits_field_rate (outcome.system, place_figures (planner, after)->field_rate_hz)
      || !give_sync (box, &after->signal))
    return FALSE;
  if (outcome.connector == G_MAXUINT && !carries_all (source))
    source->connector = BW_CONNECTOR_BNC; /* one for each conductor */
  give_levels (box, source);
  give_detail (planner, arrives, box, after);
  if (!bw_ratio_is_none (box->gives_aspect))
    source->aspect = box->gives_aspect;
  if (box->underscan)
    source->whole_picture = FALSE;
  gboolean in_colour = planner->base.input.signals != BW_BIT (BW_SIGNAL_LUMA); /* what the set shows */
  after->signal.monochrome = arrives->signal.monochrome
                             || (in_colour && is_luma (source)
                                 && !is_luma (&arrives->signal.source));
  return TRUE;
}

/* The systems that come with @signal out of @box. Y/C always has one. */
static guint
systems_out (const BwAdaptor *box, const BwSource *arrives, BwSignal signal)
{
  guint passed = CODED & BW_BIT (arrives->signal) ? BW_BIT (arrives->system) : 0;
  guint systems = box->gives_systems != 0 ? box->gives_systems : passed;

  if (!(CODED & BW_BIT (signal)))
    return BW_BIT (BW_SYSTEM_NONE);
  return signal == BW_SIGNAL_YC ? systems & ~BW_BIT (BW_SYSTEM_NONE) : systems;
}

typedef struct
{
  const BwPlanner *planner;
  const BwPlanPlace *arrives;
  const BwPlanBox *box;
  BwPlanBranchFunc func;
  gpointer user_data;
} Branching;

static void
branch_connectors (const Branching *b, Outcome outcome)
{
  guint connectors = b->box->adaptor->gives_connectors;
  BwPlanPlace after;

  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    {
      if (connectors == 0 ? i > 0 : !(connectors & BW_BIT (i)))
        continue;
      outcome.connector = connectors == 0 ? G_MAXUINT : i;
      if (!give (b->planner, b->arrives, b->box->adaptor, outcome, &after))
        return; /* the connector is not what it fails by */
      b->func (&after, b->user_data);
    }
}

static void
branch_rasters (const Branching *b, Outcome outcome)
{
  const GArray *rasters = b->box->rasters;
  if (rasters->len == 0)
    branch_connectors (b, outcome);
  for (guint i = 0; i < rasters->len; i++)
    {
      outcome.raster = g_array_index (rasters, guint, i);
      branch_connectors (b, outcome);
    }
}

/**
 * bw_box_branches:
 * @arrives: the signal at the box's connector (bw_box_approach())
 * @func: called for each thing that can come out, in a fixed order
 */
void
bw_box_branches (const BwPlanner *planner, const BwPlanPlace *arrives, const BwPlanBox *box,
                 BwPlanBranchFunc func, gpointer user_data)
{
  const BwSource *source = &arrives->signal.source;
  guint signals = box->adaptor->gives_signals;
  Branching branching = { planner, arrives, box, func, user_data };

  for (guint signal = 0; signal < BW_N_SIGNALS; signal++)
    {
      if (signals == 0 ? signal != source->signal : !(signals & BW_BIT (signal)))
        continue;
      guint systems = systems_out (box->adaptor, source, signal);
      for (guint system = 0; system < BW_N_SYSTEMS; system++)
        if (systems & BW_BIT (system))
          branch_rasters (&branching, (Outcome){ signal, system, G_MAXUINT, G_MAXUINT });
    }
}

/**
 * bw_box_cost:
 *
 * Returns: what @box costs, more if colour is given up in it
 */
guint
bw_box_cost (const BwPlanPlace *arrives, const BwPlanPlace *after, const BwAdaptor *box)
{
  gboolean lost = after->signal.monochrome && !arrives->signal.monochrome;
  return bw_adaptor_rank (box) + (lost ? BW_COST_COLOUR_LOST : 0);
}
