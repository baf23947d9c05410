/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause.h"

#include <math.h>

#include "core/circuit/pads.h"

/* What should be on a conductor, from a standard or from a source and an input. */

static const BwRange no_spread = { 1, 1 };

/**
 * bw_cause_case_standard:
 * @sync: H and V are taken as 5 V logic into an input without termination, composite sync as 0.3 V
 *   into 75 Ω
 * @c: (out caller-allocates): @signal as the standard of @system lays it down, from 75 Ω into 75 Ω,
 *   bi-level sync, d.c. coupled or clamped; no timing
 */
void
bw_cause_case_standard (BwColourSystem system, BwSignal signal, BwSyncKind sync,
                        BwConductor conductor, BwCauseCase *c)
{
  g_return_if_fail (sync < BW_N_SYNC_KINDS && conductor < BW_N_CONDUCTORS && c != NULL);
  gboolean logic = sync == BW_SYNC_SEPARATE;
  BwSyncDrive drive = logic ? BW_DRIVE_LOGIC : BW_DRIVE_300_MV;
  gboolean high = logic && bw_conductor_is_sync_alone (conductor);

  *c = (BwCauseCase){
    .conductor = conductor,
    .source_ohm = BW_VIDEO_OHM,
    .sync_ohm = bw_sync_drive_facts (drive)->driver_ohm,
    .sync_stated = bw_sync_drive_facts (drive)->stated,
    .load_ohm = high ? BW_INPUT_OHM : BW_VIDEO_OHM,
    .input_ohm = BW_INPUT_OHM,
    .pad_ratio = 1,
    .spread = no_spread,
    .coupling = BW_COUPLING_DC,
  };
  bw_wire_form_standard (system, signal, sync, BW_SHAPE_BILEVEL, &c->form);
}

static void
extend (BwRange *range, double value)
{
  range->low = MIN (range->low, value);
  range->high = MAX (range->high, value);
}

/* The least and the greatest sync behind a resistor, as multiples of what it is behind the chosen
 * one: with the exact value, and with the preferred value of each series. */
static BwRange
spread_of_resistor (const BwSyncAttenuator *it, double driver_ohm)
{
  double whole_ohm = driver_ohm + it->load_ohm + it->resistor_ohm;
  BwRange spread = no_spread;

  extend (&spread, whole_ohm / (driver_ohm + it->load_ohm + it->exact_ohm));
  for (BwSeries series = 0; series < BW_N_SERIES; series++)
    extend (&spread, whole_ohm / (driver_ohm + it->load_ohm
                                  + bw_preferred_value (it->exact_ohm, series)));
  return spread;
}

/* The same for the picture behind what @match needs, as multiples of the level behind the exact
 * values. */
static BwRange
spread_of_picture (const BwSource *source, const BwPictureMatch *match)
{
  BwRange spread = no_spread;
  BwNetwork ideal, made;
  BwNetworkFigures exact, figures;

  bw_match_network (source, match, &ideal);
  bw_network_solve (&ideal, &exact);
  for (BwSeries series = 0; series < BW_N_SERIES; series++)
    {
      bw_network_prefer (&ideal, series, &made);
      bw_network_solve (&made, &figures);
      extend (&spread, figures.level_v / exact.level_v);
    }
  return spread;
}

static void
set_right_sync (const BwSource *source, const BwSyncWay *way, BwRightCircuit *right)
{
  *right = (BwRightCircuit){ .load_ohm = way->load_ohm, .spread = no_spread };
  if (!way->has_resistor)
    return;
  right->series_ohm = way->attenuator.resistor_ohm;
  right->spread = spread_of_resistor (&way->attenuator, source->sync_ohm);
}

static void
set_own_sync (const BwSource *source, const BwInput *input, BwCauseCase *c)
{
  BwSyncMatch match;
  BwRightCircuit first;

  bw_match_own_sync (source, input, &match);
  c->load_ohm = match.load_ohm;
  if (match.takes.high > 0)
    c->wanted_sync_v = bw_range_nominal (match.takes, BW_USUAL_SYNC_V);
  if (match.n_ways == 0)
    return;
  set_right_sync (source, &match.way[0], &first);
  c->load_ohm = first.load_ohm;
  c->series_ohm = first.series_ohm;
  c->spread = first.spread;
  while (c->n_others + 1 < match.n_ways)
    {
      set_right_sync (source, &match.way[c->n_others + 1], &c->other[c->n_others]);
      c->n_others++;
    }
}

static void
set_picture (const BwSource *source, const BwInput *input, BwSyncKind sync, BwCauseCase *c)
{
  BwPictureMatch match;

  bw_match_picture (source, input, sync, &match);
  if (bw_load_is_one (match.end_ohm) || match.made_open)
    c->load_ohm = match.end_ohm;
  else if (match.part == BW_END_NO_PART)
    c->other[c->n_others++] = (BwRightCircuit){ .load_ohm = match.end_ohm, .spread = no_spread };
  else if (match.part == BW_END_SERIES)
    {
      c->load_ohm = match.changed_ohm;
      c->series_ohm = BW_VIDEO_OHM - match.changed_ohm;
    }
  if (!(match.pad_ratio < 1) && match.part == BW_END_NO_PART)
    return;
  c->pad_ratio = match.pad_ratio;
  if (match.part == BW_END_MINIMUM_LOSS) /* a pad that is matched both ways, seen from the line */
    c->pad_ratio *= match.part_ratio;
  c->spread = spread_of_picture (source, &match);
}

/* An input that takes the other polarity alone stands behind an inverter, as the fit advises. */
static void
take_polarity (const BwInput *input, BwCauseCase *c)
{
  for (guint i = 0; i < G_N_ELEMENTS (c->form.own_polarity); i++)
    {
      guint given = c->form.own_polarity[i];
      guint other = given == BW_POLARITY_POSITIVE ? BW_POLARITY_NEGATIVE : BW_POLARITY_POSITIVE;
      if (!(input->polarities & BW_BIT (given)) && (input->polarities & BW_BIT (other)))
        {
          c->form.own_polarity[i] = other;
          c->inverted = TRUE;
        }
    }
}

/* A source whose d.c. this input does not stand gets a capacitor, as the fit advises. */
static void
take_coupling (const BwSource *source, const BwInput *input, BwCauseCase *c)
{
  if (!bw_match_needs_capacitor (source, input))
    return;
  c->dc_v = 0;
  c->coupling = BW_COUPLING_AC;
}

/**
 * bw_cause_case_of_input:
 * @input: (nullable): where the conductor should end; %NULL: in 75 Ω, and logic sync in no load
 * @raster: of @source
 * @sync: one of the sync kinds of @source
 * @c: (out caller-allocates): what should be at the input's terminals when all that
 *   bw_match_own_sync() and bw_match_picture() say is done: with the load, the series resistor or
 *   the attenuator that the fit advises; of sync that @input does not take, and of a picture that
 *   goes through a converter, what @source gives, as without an input
 */
void
bw_cause_case_of_input (const BwSource *source, const BwInput *input, const BwRaster *raster,
                        BwSyncKind sync, BwConductor conductor, BwCauseCase *c)
{
  g_return_if_fail (source != NULL && raster != NULL && c != NULL);
  g_return_if_fail (sync < BW_N_SYNC_KINDS && conductor < BW_N_CONDUCTORS);
  gboolean own = bw_conductor_is_sync_alone (conductor);
  gboolean not_taken = own && input != NULL && !bw_input_takes_sync (input, sync);

  if (not_taken)
    input = NULL;
  *c = (BwCauseCase){
    .conductor = conductor,
    .not_taken = not_taken,
    .source_ohm = source->source_ohm,
    .sync_ohm = source->sync_ohm,
    .sync_stated = source->sync_load,
    .load_ohm = own && source->sync_load == BW_LOAD_OPEN ? BW_INPUT_OHM : BW_VIDEO_OHM,
    .input_ohm = input != NULL && input->input_ohm > 0 ? input->input_ohm : BW_INPUT_OHM,
    .pad_ratio = 1,
    .spread = no_spread,
    .dc_v = source->dc_v,
    .coupling = own ? BW_COUPLING_DC : source->coupling,
  };
  bw_wire_form_of_source (source, raster, sync, &c->form);
  bw_cause_case_time (c, raster);
  if (own && input != NULL)
    {
      set_own_sync (source, input, c);
      take_polarity (input, c);
    }
  else if (input != NULL && (input->signals & BW_BIT (source->signal)))
    {
      set_picture (source, input, sync, c);
      take_coupling (source, input, c);
    }
  else
    c->refused = input != NULL;
}

/**
 * bw_cause_case_time:
 *
 * Fills in how long @raster has picture and sync. Broad pulses count as lines that are sync
 * throughout.
 */
void
bw_cause_case_time (BwCauseCase *c, const BwRaster *raster)
{
  g_return_if_fail (c != NULL && raster != NULL);
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);

  double lines = figures.lines_per_field;
  double broad = raster->field[0].sync / 2.0 / lines;
  double line_sync = figures.h_sync_s / figures.line_period_s;

  bw_picture_time (raster, &c->time);
  c->picture_share = figures.h_active_s / figures.line_period_s * figures.active_lines_frame
                     / figures.lines_per_frame;
  c->sync_share = c->conductor == BW_CONDUCTOR_V   ? broad
                  : c->conductor == BW_CONDUCTOR_H ? line_sync
                                                   : broad + (1 - broad) * line_sync;
}
