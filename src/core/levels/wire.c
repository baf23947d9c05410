/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wire.h"

#include <math.h>

#include "core/circuit/drive.h"

/* Tri-level sync goes with high definition, whose matrix is that of ITU-R BT.709. */
static BwMatrix
matrix_for (BwSyncShape shape)
{
  return shape == BW_SHAPE_TRILEVEL ? BW_MATRIX_709 : BW_MATRIX_601;
}

/**
 * bw_wire_form_standard:
 * @form: (out caller-allocates): @signal as the standard of @system lays it down; sync on its own
 *   conductors 300 mV below blanking for composite sync, 5 V logic for H and V
 */
void
bw_wire_form_standard (BwColourSystem system, BwSignal signal, BwSyncKind sync, BwSyncShape shape,
                       BwWireForm *form)
{
  g_return_if_fail (form != NULL);
  gboolean logic = sync == BW_SYNC_SEPARATE;
  BwSignalLevels levels;
  bw_signal_levels (system, signal, &levels);

  *form = (BwWireForm){
    .signal = signal,
    .sync = sync,
    .shape = shape,
    .system = system,
    .matrix = matrix_for (shape),
    .white_v = levels.white_v,
    .setup_ire = levels.setup_ire,
    .sync_v = -levels.sync_v,
    .own_sync_v = bw_sync_drive_facts (logic ? BW_DRIVE_LOGIC : BW_DRIVE_300_MV)->sync_v,
    .own_logic = logic,
    .burst_pp_v = bw_signal_is_coded (signal) ? levels.burst_pp_v : 0,
  };
}

/**
 * bw_wire_form_of_source:
 * @raster: of @source
 * @sync: one of the sync kinds that @source gives
 * @form: (out caller-allocates): what @source puts on the wire across its stated load. The burst
 *   keeps the standard's share of the white level. Sync of its own that is stated for no load is
 *   logic
 */
void
bw_wire_form_of_source (const BwSource *source, const BwRaster *raster, BwSyncKind sync,
                        BwWireForm *form)
{
  g_return_if_fail (source != NULL && raster != NULL && form != NULL);
  bw_wire_form_standard (bw_source_system (source), (BwSignal) source->signal, sync,
                         (BwSyncShape) raster->sync_shape, form);
  form->burst_pp_v *= source->video_v / form->white_v;
  form->white_v = source->video_v;
  form->setup_ire = source->setup_ire;
  form->own_sync_v = source->sync_v;
  form->own_logic = bw_sync_has_own_conductor (sync) && source->sync_load == BW_LOAD_OPEN
                    && (sync == BW_SYNC_SEPARATE || form->shape != BW_SHAPE_TRILEVEL);
  if (!bw_sync_has_own_conductor (sync))
    form->sync_v = source->sync_v;

  for (int i = 0; i < 2; i++)
    form->own_polarity[i] = source->sync_polarity == BW_SYNC_POLARITY_POSITIVE
                                ? BW_POLARITY_POSITIVE
                                : BW_POLARITY_NEGATIVE;
  if (sync == BW_SYNC_SEPARATE && source->sync_polarity == BW_SYNC_POLARITY_STANDARD)
    {
      form->own_polarity[0] = raster->h_polarity;
      form->own_polarity[1] = raster->v_polarity;
    }
}

/* A coded colour: base, u and v in volts, from what bw_rgb_to_coded() gives on the standard's white
 * level, which the form's own replaces. */
static void
coded_colour (const BwWireForm *form, const BwRgb *rgb, BwWireColour *colour)
{
  BwCodedLevels coded;
  double standard_v = bw_system_facts (form->system)->white_v;
  double setup_v = bw_ire_to_volts (form->system, form->setup_ire);
  double scale = form->white_v / standard_v;

  bw_rgb_to_coded (form->system, form->setup_ire, rgb, &coded);
  double amplitude_v = scale * coded.chroma_pp_v / 2;
  double phase = coded.phase_deg * G_PI / 180;
  colour->base_v = scale * (coded.luma_v - setup_v) + form->white_v * form->setup_ire / 100;
  colour->u_v = amplitude_v * cos (phase);
  colour->v_v = amplitude_v * sin (phase);
}

static void
component_colour (const BwWireForm *form, BwConductor conductor, const BwRgb *rgb,
                  BwWireColour *colour)
{
  BwYPbPr ypbpr;
  double volts[3], black_volts[3];
  const BwYPbPr black = { 0, 0, 0 }, white = { 1, 0, 0 };
  double white_volts[3];

  bw_rgb_to_ypbpr (form->matrix, rgb, &ypbpr);
  bw_ypbpr_to_volts (form->component, &ypbpr, volts);
  bw_ypbpr_to_volts (form->component, &black, black_volts);
  bw_ypbpr_to_volts (form->component, &white, white_volts);
  if (conductor != BW_CONDUCTOR_Y)
    colour->base_v = volts[conductor == BW_CONDUCTOR_PB ? 1 : 2] * form->white_v / white_volts[0];
  else
    colour->base_v
        = form->white_v
          * (form->component == BW_COMPONENT_700
                 ? form->setup_ire / 100 + (1 - form->setup_ire / 100) * ypbpr.y
                 : volts[0] / white_volts[0]);
}

/**
 * bw_wire_colour:
 * @conductor: one of those of @form that carry a picture
 * @rgb: gamma-corrected primaries, 0 to 1
 * @colour: (out caller-allocates): what @conductor carries for @rgb
 */
void
bw_wire_colour (const BwWireForm *form, BwConductor conductor, const BwRgb *rgb,
                BwWireColour *colour)
{
  g_return_if_fail (form != NULL && rgb != NULL && colour != NULL);
  double setup = form->setup_ire / 100;
  const double primaries[] = { rgb->r, rgb->g, rgb->b };

  *colour = (BwWireColour){ 0 };
  if (conductor <= BW_CONDUCTOR_B)
    colour->base_v = form->white_v * (setup + (1 - setup) * primaries[conductor]);
  else if (form->signal == BW_SIGNAL_COMPONENT)
    component_colour (form, conductor, rgb, colour);
  else if (!bw_conductor_is_sync_alone (conductor))
    coded_colour (form, rgb, colour);
  if (conductor == BW_CONDUCTOR_C)
    colour->base_v = 0;
  if (conductor == BW_CONDUCTOR_Y || form->signal == BW_SIGNAL_LUMA
      || form->signal == BW_SIGNAL_RGB)
    colour->u_v = colour->v_v = 0;
}

/* The highest and lowest level that the bars at 100 % reach on a conductor. */
static void
picture_levels (const BwWireForm *form, BwWireLevels *levels)
{
  BwRgb rgb;
  BwWireColour colour;

  bw_bar_rgb (BW_BAR_BLACK, BW_BARS_100, &rgb);
  bw_wire_colour (form, levels->conductor, &rgb, &colour);
  levels->black_v = levels->lowest_v = levels->highest_v = colour.base_v;
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      bw_bar_rgb (bar, BW_BARS_100, &rgb);
      bw_wire_colour (form, levels->conductor, &rgb, &colour);
      double chroma_v = hypot (colour.u_v, colour.v_v);
      levels->lowest_v = fmin (levels->lowest_v, colour.base_v - chroma_v);
      levels->highest_v = fmax (levels->highest_v, colour.base_v + chroma_v);
      if (bar == BW_BAR_WHITE)
        levels->white_v = colour.base_v;
    }
  if (bw_conductor_is_colour_alone (levels->conductor))
    levels->white_v = levels->highest_v;
}

static void
sync_levels (const BwWireForm *form, BwWireLevels *levels)
{
  if (!bw_conductor_is_sync_alone (levels->conductor))
    {
      levels->sync_low_v = -form->sync_v;
      levels->sync_high_v = form->shape == BW_SHAPE_TRILEVEL ? form->sync_v : 0;
      return;
    }
  guint polarity = form->own_polarity[levels->conductor == BW_CONDUCTOR_V ? 1 : 0];
  if (levels->conductor == BW_CONDUCTOR_SYNC && form->shape == BW_SHAPE_TRILEVEL)
    {
      levels->sync_low_v = -form->own_sync_v;
      levels->sync_high_v = form->own_sync_v;
      return;
    }
  if (form->own_logic && polarity != BW_POLARITY_POSITIVE)
    levels->blanking_v = form->own_sync_v;
  if (form->own_logic || polarity == BW_POLARITY_POSITIVE)
    levels->sync_high_v = form->own_sync_v;
  else
    levels->sync_low_v = -form->own_sync_v;
}

/* In volts; zero where the conductor has none. Composite has the scale of its system, whatever the
 * white level as entered; the component scale is 700 mV (SMPTE 170M annex B), but for the older
 * form with setup, which is laid down as composite is. Luminance without a colour system is laid
 * down by no text: 100 IRE is its white as entered. */
static double
volts_per_ire (const BwWireForm *form, BwConductor conductor)
{
  if (form->signal == BW_SIGNAL_RGB && conductor != BW_CONDUCTOR_VIDEO)
    return 0;
  if (bw_conductor_is_sync_alone (conductor))
    return 0;
  if (form->signal == BW_SIGNAL_COMPONENT)
    return bw_ire_to_volts (form->component == BW_COMPONENT_SETUP_4_3 ? BW_SYSTEM_NTSC_M
                                                                      : BW_SYSTEM_NONE,
                            1);
  if (form->system == BW_SYSTEM_NONE)
    return form->white_v / 100;
  return bw_ire_to_volts (form->system, 1);
}

/**
 * bw_wire_levels:
 * @levels: (out): the conductors of @form in the order of BwConductor
 *
 * Returns: how many there are
 */
guint
bw_wire_levels (const BwWireForm *form, BwWireLevels levels[BW_N_CONDUCTORS])
{
  g_return_val_if_fail (form != NULL && levels != NULL, 0);
  guint set = bw_signal_conductors (form->signal, form->sync);
  guint n = 0;

  for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
    {
      if (!(set & BW_BIT (conductor)))
        continue;
      BwWireLevels *at = &levels[n++];
      *at = (BwWireLevels){ .conductor = conductor,
                            .volts_per_ire = volts_per_ire (form, conductor) };
      if (!bw_conductor_is_sync_alone (conductor))
        picture_levels (form, at);
      if (bw_conductor_carries_sync (conductor, form->signal, form->sync))
        sync_levels (form, at);
      if (conductor == BW_CONDUCTOR_C
          || (conductor == BW_CONDUCTOR_VIDEO && form->signal != BW_SIGNAL_LUMA))
        at->burst_pp_v = form->burst_pp_v;
    }
  return n;
}
