/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause.h"

#include <math.h>

#include "core/circuit/preferred.h"

/* What should be on a conductor, from a standard or from a source and an input. */

#define VIDEO_OHM 75.0
#define HIGH_OHM 10e3 /* of an input without termination: common practice, no source */

/* A load of more than this is no termination (common practice, no source). */
#define HIGH_IMPEDANCE_OHM 1e3

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
  gboolean logic = sync == BW_SYNC_SEPARATE;
  BwSyncDrive drive = logic ? BW_DRIVE_LOGIC : BW_DRIVE_300_MV;
  gboolean high = logic && bw_conductor_is_sync_alone (conductor);

  *c = (BwCauseCase){
    .conductor = conductor,
    .source_ohm = VIDEO_OHM,
    .sync_ohm = bw_sync_drive_facts (drive)->driver_ohm,
    .sync_stated = bw_sync_drive_facts (drive)->stated,
    .load_ohm = high ? HIGH_OHM : VIDEO_OHM,
    .input_ohm = HIGH_OHM,
    .coupling = BW_COUPLING_DC,
  };
  bw_wire_form_standard (system, signal, sync, BW_SHAPE_BILEVEL, &c->form);
}

/* The resistor that makes the sync what the input takes, where it would be too much. */
static void
set_attenuator (const BwSource *source, const BwInput *input, BwCauseCase *c)
{
  const BwBands *takes = input->own_sync_v.n > 0 ? &input->own_sync_v : &input->sync_v;
  double wanted_v = 0.3;

  if (takes->n == 0)
    return;
  if (wanted_v < takes->at[0].low || wanted_v > takes->at[0].high)
    wanted_v = (takes->at[0].low + takes->at[0].high) / 2;
  c->wanted_sync_v = wanted_v;
  if (bw_level_at_load (source->sync_v, source->sync_load, source->sync_ohm, c->load_ohm)
      <= takes->at[0].high)
    return;
  if (c->load_ohm > HIGH_IMPEDANCE_OHM)
    c->load_ohm = VIDEO_OHM;
  double open_v = bw_level_at_load (source->sync_v, source->sync_load, source->sync_ohm, 1e15);
  double ohm = bw_series_resistor_ohm (open_v, source->sync_ohm, c->load_ohm, wanted_v);
  if (ohm > 0)
    c->series_ohm = bw_preferred_ohm (ohm, BW_SERIES_E24);
}

/**
 * bw_cause_case_of_input:
 * @input: (nullable): where the conductor should end; %NULL: in 75 Ω, and logic sync in no load
 * @raster: of @source
 * @sync: one of the sync kinds of @source
 * @c: (out caller-allocates): what should be at the input's terminals: one load of 75 Ω, or the
 *   input as it is for logic sync, with a series resistor in the lead where the input takes no more;
 *   of sync that @input does not take what @source gives, as without an input
 */
void
bw_cause_case_of_input (const BwSource *source, const BwInput *input, const BwRaster *raster,
                        BwSyncKind sync, BwConductor conductor, BwCauseCase *c)
{
  gboolean own = bw_conductor_is_sync_alone (conductor);
  gboolean not_taken = own && input != NULL && !(input->syncs & BW_BIT (sync));

  if (not_taken)
    input = NULL;
  *c = (BwCauseCase){
    .conductor = conductor,
    .not_taken = not_taken,
    .source_ohm = source->source_ohm,
    .sync_ohm = source->sync_ohm,
    .sync_stated = source->sync_load,
    .load_ohm = VIDEO_OHM,
    .input_ohm = input != NULL && input->input_ohm > 0 ? input->input_ohm : HIGH_OHM,
    .dc_v = source->dc_v,
    .coupling = own ? BW_COUPLING_DC : source->coupling,
  };
  bw_wire_form_of_source (source, raster, sync, &c->form);
  bw_cause_case_time (c, raster);
  if (own && source->sync_load == BW_LOAD_OPEN)
    c->load_ohm = input != NULL ? bw_input_load_ohm (input, TRUE) : HIGH_OHM;
  if (own && input != NULL)
    set_attenuator (source, input, c);
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
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);

  double lines = figures.lines_per_field;
  double broad = raster->field[0].sync / 2.0 / lines;
  double line_sync = figures.h_sync_s / figures.line_period_s;

  c->line_s = figures.h_active_s;
  c->field_s = figures.v_active_lines * figures.line_period_s;
  c->picture_share = figures.h_active_s / figures.line_period_s * figures.active_lines_frame
                     / figures.lines_per_frame;
  c->sync_share = c->conductor == BW_CONDUCTOR_V   ? broad
                  : c->conductor == BW_CONDUCTOR_H ? line_sync
                                                   : broad + (1 - broad) * line_sync;
}

/**
 * bw_cause_limits_id:
 *
 * Returns: (nullable): the id of the shipped limits that judge levels of @system
 */
const char *
bw_cause_limits_id (BwColourSystem system)
{
  switch (system)
    {
    case BW_SYSTEM_NTSC_M:
      return "smpte-170m";
    case BW_SYSTEM_PAL_B:
      return "bt1700-pal";
    case BW_SYSTEM_NONE:
    case BW_SYSTEM_NTSC_J:
    case BW_SYSTEM_NTSC_443:
    case BW_SYSTEM_PAL_M:
    case BW_SYSTEM_PAL_N:
    case BW_SYSTEM_PAL_60:
    case BW_SYSTEM_SECAM_L:
    case BW_N_SYSTEMS:
    default:
      return NULL;
    }
}
