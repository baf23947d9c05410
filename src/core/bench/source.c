/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "source.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"

G_DEFINE_QUARK (bw-source-error-quark, bw_source_error)

#define AT(member) .offset = G_STRUCT_OFFSET (BwSource, member)

static const BwField source_fields[] = {
  { .key = "name", .label = N_ ("Name"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED,
    AT (name), .help = N_ ("What you call this source.") },
  { .key = "origin", .label = N_ ("Figures from"), .type = BW_FIELD_TEXT, AT (origin),
    .help = N_ ("Where the figures below come from.") },
  { .key = "note", .label = N_ ("Note"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_LINES,
    AT (note) },
  { .key = "raster", .label = N_ ("Raster"), .type = BW_FIELD_TEXT,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_RASTER | BW_FIELD_FIGURE, AT (raster),
    .help = N_ ("The timing of its picture, from the catalogue.") },
  { .key = "signal", .label = N_ ("Signal kind"), .type = BW_FIELD_CHOICE,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (signal), .kinds = &bw_signals },
  { .key = "syncs", .label = N_ ("Sync kinds"), .type = BW_FIELD_SET, .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE,
    AT (syncs), .kinds = &bw_sync_kinds, .help = N_ ("All that it gives at the same time.") },
  { .key = "system", .label = N_ ("Colour system"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE, AT (system),
    .kinds = &bw_colour_systems, .help = N_ ("“none” for RGB, component and monochrome.") },
  { .key = "connector", .label = N_ ("Connector"), .type = BW_FIELD_CHOICE,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (connector), .kinds = &bw_connectors },
  { .key = "pins", .label = N_ ("Pins of the connector"), .type = BW_FIELD_PINS,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (pins),
    .help = N_ ("What each pin carries, from the papers or measured: no standard says it of this "
                "connector.") },
  { .key = "video_level", .label = N_ ("Video level"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (video_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01,
    .high = 10, .help = N_ ("Black to white, across 75 Ω.") },
  { .key = "sync_level", .label = N_ ("Sync level"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (sync_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01,
    .high = 15, .help = N_ ("Peak to peak.") },
  { .key = "sync_stated", .label = N_ ("Sync level is stated"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE,
    AT (sync_load), .kinds = &bw_stated_loads,
    .help = N_ ("Logic levels are stated without load; 0.3 V sync is stated across 75 Ω.") },
  { .key = "sync_polarity", .label = N_ ("Sync polarity"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE,
    AT (sync_polarity), .kinds = &bw_sync_polarities,
    .help = N_ ("Of sync on conductors of its own; composite sync is negative by standard.") },
  { .key = "setup", .label = N_ ("Setup"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE, AT (setup_ire),
    .dimension = BW_DIMENSION_IRE, .low = -5, .high = 20, .unit = "IRE",
    .help = N_ ("Black above blanking: 7.5 IRE in NTSC M, 0 IRE in Japan and in 625 lines.") },
  { .key = "source_resistance", .label = N_ ("Source resistance"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE,
    AT (source_ohm), .dimension = BW_DIMENSION_RESISTANCE, .low = 0, .high = 10e3, .unit = "ohm",
    .help = N_ ("Of the video outputs; 75 Ω for a proper video driver.") },
  { .key = "sync_resistance", .label = N_ ("Sync driver's resistance"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE,
    AT (sync_ohm), .dimension = BW_DIMENSION_RESISTANCE, .low = 0, .high = 10e3, .unit = "ohm",
    .help = N_ ("Of an output that carries sync alone, built-in series resistor included.") },
  { .key = "coupling", .label = N_ ("Coupling"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE, AT (coupling),
    .kinds = &bw_couplings },
  { .key = "dc_offset", .label = N_ ("D.c. at blanking"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE, AT (dc_v),
    .dimension = BW_DIMENSION_VOLTAGE, .low = -20, .high = 20, .help = N_ ("Across 75 Ω.") },
  { .key = "aspect", .label = N_ ("Aspect ratio"), .type = BW_FIELD_ASPECT, AT (aspect),
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, .help = N_ ("Width to height that the picture is meant for.") },
  { .key = "whole_picture", .label = N_ ("Whole picture matters"), .type = BW_FIELD_SWITCH, .flags = BW_FIELD_FIGURE,
    AT (whole_picture), .help = N_ ("As on a computer's screen, where text reaches the edges.") },
  { .key = "detail", .label = N_ ("Highest video frequency"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE, AT (detail_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 100e3,
    .high = 1e9, .unit = "MHz",
    .help = N_ ("Empty: half the pixel clock, or what the colour system carries.") },
  { .key = "blanking", .label = N_ ("In its blanking stands"), .type = BW_FIELD_CHOICE, AT (blanking),
    .kinds = &bw_blankings,
    .help = N_ ("A clamp takes for black what stands on the back porch; some computers put their border there.") },
  { .key = "can_be_set", .label = N_ ("Its raster can be set"), .type = BW_FIELD_SWITCH, AT (can_be_set),
    .help = N_ ("As that of a computer: then another raster is looked for where this one does not fit.") },
  { .key = "no_interlace", .label = N_ ("Gives no interlace"), .type = BW_FIELD_SWITCH, AT (no_interlace),
    .help = N_ ("Of a source whose raster can be set.") },
#define CLOCK(name, label_, member, least, help_)                                                   \
  { .key = name, .label = label_, .type = BW_FIELD_QUANTITY,                                        \
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (member),                   \
    .dimension = BW_DIMENSION_FREQUENCY, .low = least, .high = 1e9, .unit = "MHz", .help = help_ }
  CLOCK ("lowest_clock", N_ ("Lowest pixel clock"), lowest_clock_hz, 100e3,
         N_ ("Of a source whose raster can be set; empty: any.")),
  CLOCK ("highest_clock", N_ ("Highest pixel clock"), highest_clock_hz, 100e3,
         N_ ("Of a source whose raster can be set; empty: any.")),
  CLOCK ("clock_step", N_ ("Step of the pixel clock"), clock_step_hz, 1,
         N_ ("Its clock is a multiple of this; empty: any clock.")),
#undef CLOCK
  { .key = "pixel_multiple", .label = N_ ("Pixels across in multiples of"), .type = BW_FIELD_COUNT,
    AT (pixel_multiple), .dimension = BW_DIMENSION_PIXELS, .low = 1, .high = 64,
    .help = N_ ("Of all figures across: 8 on many cards; else 1.") },
};
const BwFieldTable bw_source_fields = { G_N_ELEMENTS (source_fields), source_fields,
  G_STRUCT_OFFSET (BwSource, from) };
G_STATIC_ASSERT (G_N_ELEMENTS (source_fields) <= BW_ORIGINS_MAX);

/**
 * bw_source_new:
 *
 * Returns: (transfer full): a source with the usual presets: 75 Ω outputs, d.c. coupled, 4:3
 */
BwSource *
bw_source_new (void)
{
  BwSource *source = g_new0 (BwSource, 1);
  source->name = g_strdup ("");
  source->origin = g_strdup ("");
  source->note = g_strdup ("");
  source->raster = g_strdup ("");
  source->source_ohm = BW_VIDEO_OHM;
  source->sync_ohm = BW_VIDEO_OHM;
  source->aspect = (BwRatio){ 4, 3 };
  source->pixel_multiple = 1;
  return source;
}

/**
 * bw_source_copy:
 *
 * Returns: (transfer full): a copy that shares nothing with @source
 */
BwSource *
bw_source_copy (const BwSource *source)
{
  g_return_val_if_fail (source != NULL, NULL);
  BwSource *copy = g_new0 (BwSource, 1);
  copy->group = g_strdup (source->group);
  copy->id = g_strdup (source->id);
  bw_fields_copy (&bw_source_fields, copy, source);
  return copy;
}

/**
 * bw_source_free:
 * @source: (nullable) (transfer full): freed with all it owns
 */
void
bw_source_free (BwSource *source)
{
  if (source == NULL)
    return;
  g_free (source->group);
  g_free (source->id);
  bw_fields_clear (&bw_source_fields, source);
  g_free (source);
}

/**
 * bw_source_system:
 *
 * Returns: the colour system of composite and Y/C, %BW_N_SYSTEMS if it is not known; of a signal
 *   without a subcarrier always none
 */
BwColourSystem
bw_source_system (const BwSource *source)
{
  g_return_val_if_fail (source != NULL, BW_SYSTEM_NONE);
  return bw_signal_is_coded (source->signal) ? (BwColourSystem) source->system : BW_SYSTEM_NONE;
}

/**
 * bw_source_check:
 *
 * Checks what the fields alone cannot say: that sync kinds and colour system suit the signal kind,
 * as far as they are known.
 *
 * Returns: %FALSE with @error in %BW_SOURCE_ERROR
 */
gboolean
bw_source_check (const BwSource *source, GError **error)
{
  g_return_val_if_fail (source != NULL, FALSE);
  gboolean known = source->signal < BW_N_SIGNALS;
  gboolean coded = bw_signal_is_coded (source->signal);
  gboolean subcarrier = source->system != BW_SYSTEM_NONE && source->system < BW_N_SYSTEMS;
  guint odd = known ? source->syncs & ~bw_signal_syncs (source->signal) : 0;

  if (odd != 0)
    {
      g_autofree char *words = bw_kind_set_labels (&bw_sync_kinds, odd);
      g_set_error (error, BW_SOURCE_ERROR, BW_SOURCE_ERROR_SYNC,
                   _ ("source “%1$s”: %2$s cannot come with %3$s"), source->name, words,
                   bw_kind_label (&bw_signals, source->signal));
    }
  else if (known && !coded && subcarrier)
    g_set_error (
        error, BW_SOURCE_ERROR, BW_SOURCE_ERROR_SYSTEM,
        _ ("source “%1$s”: %2$s carries no colour subcarrier; the colour system must be “none”"),
        source->name, bw_kind_label (&bw_signals, source->signal));
  else if (source->signal == BW_SIGNAL_YC && source->system == BW_SYSTEM_NONE)
    g_set_error (error, BW_SOURCE_ERROR, BW_SOURCE_ERROR_SYSTEM,
                 _ ("source “%s”: Y/C has a subcarrier; name its colour system"), source->name);
  else if (source->coupling == BW_COUPLING_AC && fabs (source->dc_v) > 0)
    g_set_error (error, BW_SOURCE_ERROR, BW_SOURCE_ERROR_COUPLING,
                 _ ("source “%s”: an a.c. coupled output has no d.c. offset"), source->name);
  else
    return TRUE;
  return FALSE;
}
