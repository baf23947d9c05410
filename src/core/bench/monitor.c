/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "monitor.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"

G_DEFINE_QUARK (bw-monitor-error-quark, bw_monitor_error)

#define AT(member) .offset = G_STRUCT_OFFSET (BwMonitor, member)

static const BwField monitor_fields[] = {
  { .key = "name", .label = N_ ("Name"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED,
    AT (name), .help = N_ ("What you call this set.") },
  { .key = "source", .label = N_ ("Figures from"), .type = BW_FIELD_TEXT, AT (source),
    .help = N_ ("Where the figures below come from: rating plate, service sheet, measurement.") },
  { .key = "note", .label = N_ ("Note"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_LINES,
    AT (note) },
  { .key = "mains_voltage", .label = N_ ("Mains voltage"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND | BW_FIELD_FIGURE | BW_FIELD_UNKNOWN, AT (mains_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 10,
    .high = 500, .unit = "V", .help = N_ ("The range that the set is rated for.") },
  { .key = "mains_frequency", .label = N_ ("Mains frequency"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND | BW_FIELD_FIGURE | BW_FIELD_UNKNOWN, AT (mains_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 10,
    .high = 500, .unit = "Hz", .help = N_ ("The range that the set is rated for.") },
  { .key = "mains_current", .label = N_ ("Mains current"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE, AT (mains_a), .dimension = BW_DIMENSION_CURRENT, .low = 0,
    .high = 50, .unit = "A", .help = N_ ("Rated current at the lower rated voltage.") },
  { .key = "diagonal", .label = N_ ("Viewable diagonal"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (diagonal_m), .dimension = BW_DIMENSION_LENGTH, .low = 0.02,
    .high = 1.5, .unit = "in", .help = N_ ("Across the glass that shows picture, corner to corner.") },
  { .key = "aspect", .label = N_ ("Aspect ratio"), .type = BW_FIELD_ASPECT,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (aspect), .help = N_ ("Width to height of the tube.") },
  { .key = "mask", .label = N_ ("Mask"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE, AT (mask), .kinds = &bw_masks },
  { .key = "pitch", .label = N_ ("Pitch"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE,
    AT (pitch_m), .dimension = BW_DIMENSION_LENGTH, .low = 0.05e-3, .high = 5e-3, .unit = "mm",
    .help = N_ ("As quoted: on the diagonal for a dot mask, horizontal for grille and slot.") },
  { .key = "spot", .label = N_ ("Spot width"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE, AT (spot_m), .dimension = BW_DIMENSION_LENGTH, .low = 0.01e-3,
    .high = 10e-3, .unit = "mm", .help = N_ ("At half its peak brightness, if it is known.") },
  { .key = "claimed_lines", .label = N_ ("Claimed TV lines"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE, AT (claimed_lines), .dimension = BW_DIMENSION_TV_LINES, .low = 10,
    .high = 5000, .unit = "lines", .help = N_ ("Per picture height, as the maker states it.") },
  { .key = "overscan_h", .label = N_ ("Overscan, width"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE,
    AT (overscan_h), .dimension = BW_DIMENSION_FRACTION, .low = 0, .high = 0.3, .unit = "%",
    .help = N_ ("Share of the scanned width beyond the glass, both sides together.") },
  { .key = "overscan_v", .label = N_ ("Overscan, height"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE,
    AT (overscan_v), .dimension = BW_DIMENSION_FRACTION, .low = 0, .high = 0.3, .unit = "%",
    .help = N_ ("Share of the scanned height beyond the glass, top and bottom together.") },
  { .key = "wide_switch", .label = N_ ("Switch for the other aspect ratio"),
    .type = BW_FIELD_SWITCH, .flags = BW_FIELD_FIGURE, AT (wide_switch),
    .help = N_ ("It can scan 16:9 on a 4:3 tube, or the reverse.") },
  { .key = "line_rates", .label = N_ ("Line rates"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (line_rates_hz), .dimension = BW_DIMENSION_FREQUENCY,
    .low = 1e3, .high = 1e6, .unit = "kHz",
    .help = N_ ("One or more ranges, such as “15.5 kHz .. 16 kHz; 31 kHz .. 32 kHz”.") },
  { .key = "field_rates", .label = N_ ("Field rates"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (field_rates_hz), .dimension = BW_DIMENSION_FREQUENCY,
    .low = 1, .high = 1e3, .unit = "Hz", .help = N_ ("One or more ranges.") },
  { .key = "line_retrace", .label = N_ ("Shortest line blanking"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (line_retrace_s), .dimension = BW_DIMENSION_TIME, .low = 0.1e-6,
    .high = 100e-6, .unit = "us", .help = N_ ("Line blanking that just hides the retrace.") },
  { .key = "field_retrace", .label = N_ ("Shortest field blanking"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (field_retrace_s), .dimension = BW_DIMENSION_TIME, .low = 1e-6,
    .high = 20e-3, .unit = "us", .help = N_ ("Field blanking that just hides the retrace.") },
  { .key = "bandwidth", .label = N_ ("Video bandwidth"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE, AT (bandwidth_hz), .dimension = BW_DIMENSION_FREQUENCY,
    .low = 100e3, .high = 1e9, .unit = "MHz", .help = N_ ("Of the video amplifiers, at -3 dB.") },
};
const BwFieldTable bw_monitor_fields = { G_N_ELEMENTS (monitor_fields), monitor_fields,
  G_STRUCT_OFFSET (BwMonitor, from) };
G_STATIC_ASSERT (G_N_ELEMENTS (monitor_fields) <= BW_ORIGINS_MAX);

#undef AT
#define AT(member) .offset = G_STRUCT_OFFSET (BwInput, member)

static const BwField input_fields[] = {
  { .key = "name", .label = N_ ("Name"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED,
    AT (name), .help = N_ ("As it is marked on the set.") },
  { .key = "connectors", .label = N_ ("Connectors"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (connectors), .kinds = &bw_connectors },
  { .key = "pins", .label = N_ ("Pins of the connector"), .type = BW_FIELD_PINS,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (pins),
    .help = N_ ("What each pin carries, from the papers or measured: no standard says it of this "
                "connector.") },
  { .key = "signals", .label = N_ ("Signal kinds"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, AT (signals), .kinds = &bw_signals },
  { .key = "systems", .label = N_ ("Colour systems"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE, AT (systems), .kinds = &bw_colour_systems,
    .help = N_ ("What its decoder handles; only composite and Y/C need one.") },
  { .key = "syncs", .label = N_ ("Sync kinds"), .type = BW_FIELD_SET, .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE,
    AT (syncs), .kinds = &bw_sync_kinds },
  { .key = "shapes", .label = N_ ("Sync shapes"), .type = BW_FIELD_SET, AT (shapes),
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, .kinds = &bw_sync_shapes },
  { .key = "polarities", .label = N_ ("Sync polarities"), .type = BW_FIELD_SET, AT (polarities),
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, .kinds = &bw_polarities,
    .help = N_ ("For sync on conductors of its own.") },
  { .key = "scans", .label = N_ ("Scans"), .type = BW_FIELD_SET, AT (scans),
    .flags = BW_FIELD_REQUIRED | BW_FIELD_FIGURE, .kinds = &bw_scans },
  { .key = "line_rates", .label = N_ ("Line rates of this input"), .type = BW_FIELD_BANDS, .flags = BW_FIELD_FIGURE | BW_FIELD_OPTIONAL,
    AT (line_rates_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 1e3, .high = 1e6,
    .unit = "kHz", .help = N_ ("Only if they are fewer than the monitor's, as for composite; empty: "
                                        "the monitor's.") },
  { .key = "line_counts", .label = N_ ("Lines of a frame"), .type = BW_FIELD_BANDS, .flags = BW_FIELD_FIGURE | BW_FIELD_OPTIONAL,
    AT (line_counts), .dimension = BW_DIMENSION_LINES, .low = 50, .high = 10000, .unit = "lines",
    .help = N_ ("Only if it counts lines, such as “525 lines; 625 lines”; empty: it counts "
                "none, as far as is known.") },
  { .key = "video_level", .label = N_ ("Video level"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_ONE_BAND | BW_FIELD_FIGURE, AT (video_v),
    .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01, .high = 10,
    .help = N_ ("Black to white without sync, at the terminals, in reach of its contrast control.") },
  { .key = "sync_level", .label = N_ ("Sync level"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_REQUIRED | BW_FIELD_ONE_BAND | BW_FIELD_FIGURE, AT (sync_v),
    .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01, .high = 15,
    .help = N_ ("Peak to peak, at the terminals.") },
  { .key = "own_sync_level", .label = N_ ("Sync level, sync alone"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND | BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (own_sync_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01,
    .high = 15, .help = N_ ("Where a conductor for sync alone takes other levels than video.") },
  { .key = "setup", .label = N_ ("Setup"), .type = BW_FIELD_BANDS, .flags = BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (setup_ire),
    .dimension = BW_DIMENSION_IRE, .low = -5, .high = 20, .unit = "IRE",
    .help = N_ ("Black above blanking that it can be set for, such as “0 IRE; 7.5 IRE”; empty: "
                "none in particular.") },
  { .key = "termination", .label = N_ ("Termination"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE, AT (termination),
    .kinds = &bw_terminations },
  { .key = "terminated", .label = N_ ("Termination switch is on"), .type = BW_FIELD_SWITCH, .flags = BW_FIELD_FIGURE,
    AT (terminated), .help = N_ ("The position of a switched termination now.") },
  { .key = "sync_termination", .label = N_ ("Sync termination"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE,
    AT (sync_termination), .kinds = &bw_terminations,
    .help = N_ ("Of conductors that carry sync alone.") },
  { .key = "sync_terminated", .label = N_ ("Sync termination switch is on"),
    .type = BW_FIELD_SWITCH, .flags = BW_FIELD_FIGURE, AT (sync_terminated) },
  { .key = "loop_through", .label = N_ ("Has a loop-through"), .type = BW_FIELD_SWITCH, .flags = BW_FIELD_FIGURE,
    AT (loop_through) },
  { .key = "loop_ended", .label = N_ ("Loop-through ends in 75 Ω"), .type = BW_FIELD_SWITCH, .flags = BW_FIELD_FIGURE,
    AT (loop_ended), .help = N_ ("A terminator or a terminated set hangs on the loop-through.") },
  { .key = "input_resistance", .label = N_ ("Resistance unterminated"), .type = BW_FIELD_QUANTITY, .flags = BW_FIELD_FIGURE,
    AT (input_ohm), .dimension = BW_DIMENSION_RESISTANCE, .low = 10, .high = 10e6, .unit = NULL,
    .help = N_ ("What it is when the 75 Ω is not there.") },
  { .key = "clamp", .label = N_ ("Black level"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_FIGURE, AT (clamp),
    .kinds = &bw_clamps },
  { .key = "dc_offset", .label = N_ ("Allowed d.c. offset"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND | BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (dc_v), .dimension = BW_DIMENSION_VOLTAGE, .low = -50,
    .high = 50, .help = N_ ("Of the source; empty: any, as far as is known.") },
  { .key = "bandwidth", .label = N_ ("Bandwidth of this input"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN | BW_FIELD_FIGURE | BW_FIELD_OPTIONAL, AT (bandwidth_hz), .dimension = BW_DIMENSION_FREQUENCY,
    .low = 100e3, .high = 1e9, .unit = "MHz",
    .help = N_ ("Only if it is less than the monitor's, as behind a decoder; empty: the "
                "monitor's.") },
};
const BwFieldTable bw_input_fields = { G_N_ELEMENTS (input_fields), input_fields,
  G_STRUCT_OFFSET (BwInput, from) };
G_STATIC_ASSERT (G_N_ELEMENTS (input_fields) <= BW_ORIGINS_MAX);

/**
 * bw_input_new:
 *
 * Returns: (transfer full): an input with the usual presets: bi-level sync of negative polarity,
 * any scan, fixed 75 Ω, clamped, and nothing connected
 */
BwInput *
bw_input_new (void)
{
  BwInput *input = g_new0 (BwInput, 1);
  input->name = g_strdup ("");
  input->input_ohm = BW_INPUT_OHM;
  return input;
}

/**
 * bw_input_copy:
 *
 * Returns: (transfer full): a copy that shares nothing with @input
 */
BwInput *
bw_input_copy (const BwInput *input)
{
  g_return_val_if_fail (input != NULL, NULL);
  BwInput *copy = g_new0 (BwInput, 1);
  copy->group = g_strdup (input->group);
  bw_fields_copy (&bw_input_fields, copy, input);
  return copy;
}

/**
 * bw_input_free:
 * @input: (nullable) (transfer full): freed with all it owns
 */
void
bw_input_free (BwInput *input)
{
  if (input == NULL)
    return;
  g_free (input->group);
  bw_fields_clear (&bw_input_fields, input);
  g_free (input);
}

/* The sync kinds that a set of signal kinds can come with. */
static guint
syncs_of_signals (guint signals)
{
  guint syncs = 0;
  for (guint signal = 0; signal < BW_N_SIGNALS; signal++)
    if (signals & BW_BIT (signal))
      syncs |= bw_signal_syncs (signal);
  return syncs;
}

/**
 * bw_input_check:
 *
 * Checks what the fields alone cannot say: that the sync kinds suit the signal kinds, as far as both
 * are known.
 *
 * Returns: %FALSE with @error in %BW_MONITOR_ERROR
 */
gboolean
bw_input_check (const BwInput *input, GError **error)
{
  g_return_val_if_fail (input != NULL, FALSE);

  if (input->signals != 0 && (input->syncs & ~syncs_of_signals (input->signals)))
    {
      g_autofree char *odd
          = bw_kind_set_labels (&bw_sync_kinds, input->syncs & ~syncs_of_signals (input->signals));
      g_autofree char *signals = bw_kind_set_labels (&bw_signals, input->signals);
      g_set_error (error, BW_MONITOR_ERROR, BW_MONITOR_ERROR_INPUT_SYNC,
                   _ ("input “%1$s”: %2$s cannot come with %3$s"), input->name, odd, signals);
    }
  else
    return TRUE;
  return FALSE;
}

/**
 * bw_input_takes_sync:
 *
 * Returns: whether the input takes sync of this kind: one that strips sync from video strips it
 *   from composite sync alone as well
 */
gboolean
bw_input_takes_sync (const BwInput *input, BwSyncKind sync)
{
  g_return_val_if_fail (input != NULL && sync < BW_N_SYNC_KINDS, FALSE);
  guint as_well = sync == BW_SYNC_COMPOSITE ? BW_BIT (BW_SYNC_IN_VIDEO) : 0;
  return (input->syncs & (BW_BIT (sync) | as_well)) != 0;
}

/**
 * bw_input_taken_syncs:
 * @syncs: set of BwSyncKind that a source gives
 *
 * Returns: those of @syncs that the input takes
 */
guint
bw_input_taken_syncs (const BwInput *input, guint syncs)
{
  g_return_val_if_fail (input != NULL, 0);
  guint taken = 0;
  for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
    if ((syncs & BW_BIT (sync)) && bw_input_takes_sync (input, sync))
      taken |= BW_BIT (sync);
  return taken;
}

/* How far an oscillator made for one rate is pulled by sync: common practice, no source. */
#define PULL_IN 0.01

/**
 * bw_rate_band:
 * @band: of line or field rates, as entered
 *
 * Returns: the rates that it stands for: @band, or around one single rate, which is a nominal one, as far
 * as such an oscillator is pulled in
 */
BwRange
bw_rate_band (BwRange band)
{
  if (band.high - band.low > 1e-9 * band.high)
    return band;
  return (BwRange){ band.low * (1 - PULL_IN), band.high * (1 + PULL_IN) };
}

/* The back porch of the 15 kHz standards lasts 4.5 to 5.8 µs (SMPTE 170M, ITU-R BT.470-6). Clamps find
 * black well on 2.5 µs of it and badly on less than 1.5 µs: common practice, no source. Sets for higher
 * line rates have quicker clamps, in step with their line: common practice, no source. */
#define CLAMP_TIGHT_S 2.5e-6
#define CLAMP_FAILS_S 1.5e-6
#define CLAMP_LINE_PERIOD_S 64e-6

/**
 * bw_input_clamp_needs:
 * @line_period_s: of the raster, in seconds
 *
 * Returns: how long the back porch must be for the input to find black; zeros where it has no clamp, or
 * where nobody knows whether it has one
 */
BwClampNeeds
bw_input_clamp_needs (const BwInput *input, double line_period_s)
{
  g_return_val_if_fail (input != NULL && line_period_s > 0, (BwClampNeeds){ 0 });
  double share = MIN (line_period_s / CLAMP_LINE_PERIOD_S, 1);
  if (input->clamp != BW_CLAMP_BACK_PORCH)
    return (BwClampNeeds){ 0 };
  return (BwClampNeeds){ CLAMP_FAILS_S * share, CLAMP_TIGHT_S * share };
}

/**
 * bw_input_sync_range:
 * @own_sync: whether the conductor carries sync alone
 *
 * Returns: the sync amplitude that the input takes there; not given (zero) where it has none
 */
BwRange
bw_input_sync_range (const BwInput *input, gboolean own_sync)
{
  g_return_val_if_fail (input != NULL, (BwRange){ 0 });
  const BwBands *bands = own_sync && input->own_sync_v.n > 0 ? &input->own_sync_v : &input->sync_v;
  return bands->n > 0 ? bands->at[0] : (BwRange){ 0 };
}

/* Whether the 75 Ω of the conductor is a switch's, and it is on. */
static gboolean
is_switched_on (const BwInput *input, gboolean own_sync)
{
  guint termination = own_sync ? input->sync_termination : input->termination;
  return termination == BW_TERMINATION_SWITCHED
         && (own_sync ? input->sync_terminated : input->terminated) == TRUE;
}

/**
 * bw_input_load_ohm:
 * @own_sync: whether the conductor carries sync alone
 *
 * Returns: the resistance that the source sees, in ohms: the input's own, its 75 Ω if it is there
 * and on, and beside it 75 Ω if the loop-through is terminated, and what was hung across it
 */
double
bw_input_load_ohm (const BwInput *input, gboolean own_sync)
{
  g_return_val_if_fail (input != NULL, BW_INPUT_OHM);
  guint termination = own_sync ? input->sync_termination : input->termination;
  double load_ohm = input->input_ohm;
  double added_ohm = own_sync ? input->added_sync_ohm : input->added_ohm;

  if (termination == BW_TERMINATION_FIXED || is_switched_on (input, own_sync))
    load_ohm = BW_VIDEO_OHM;
  if (!own_sync && input->loop_through == TRUE && input->loop_ended == TRUE)
    load_ohm = bw_parallel_ohm (load_ohm, BW_VIDEO_OHM);
  return added_ohm > 0 ? bw_parallel_ohm (load_ohm, added_ohm) : load_ohm;
}

/**
 * bw_input_line_end_ohm:
 *
 * Returns: what the lead of the video ends in, in ohms: the load of the input, or a part before it
 */
double
bw_input_line_end_ohm (const BwInput *input)
{
  g_return_val_if_fail (input != NULL, BW_INPUT_OHM);
  return input->line_end_ohm > 0 ? input->line_end_ohm : bw_input_load_ohm (input, FALSE);
}

/**
 * bw_input_load_change:
 * @own_sync: whether the conductor carries sync alone
 *
 * Returns: what leads to one 75 Ω load where there is none or more than one; for sync alone that
 *   has one, the switch, if it is a switch that can take it away; %BW_LOAD_AS_IT_IS also where the
 *   input is of too little resistance by itself
 */
BwLoadChange
bw_input_load_change (const BwInput *input, gboolean own_sync)
{
  g_return_val_if_fail (input != NULL, BW_LOAD_AS_IT_IS);
  guint termination = own_sync ? input->sync_termination : input->termination;
  double load_ohm = bw_input_load_ohm (input, own_sync);

  if (load_ohm > BW_ONE_LOAD_MAX_OHM)
    return termination == BW_TERMINATION_SWITCHED ? BW_LOAD_SWITCH : BW_LOAD_TERMINATOR;
  if (load_ohm < BW_ONE_LOAD_MIN_OHM && is_switched_on (input, own_sync))
    return BW_LOAD_SWITCH;
  if (load_ohm < BW_ONE_LOAD_MIN_OHM)
    return !own_sync && input->loop_through == TRUE && input->loop_ended == TRUE ? BW_LOAD_UNLOAD
                                                                 : BW_LOAD_AS_IT_IS;
  return own_sync && is_switched_on (input, own_sync) ? BW_LOAD_SWITCH : BW_LOAD_AS_IT_IS;
}

/**
 * bw_input_change_load:
 * @own_sync: whether the conductor carries sync alone
 *
 * Makes @input what it is after @change.
 */
void
bw_input_change_load (BwInput *input, gboolean own_sync, BwLoadChange change)
{
  g_return_if_fail (input != NULL);
  gboolean *on = own_sync ? &input->sync_terminated : &input->terminated;

  switch (change)
    {
    case BW_LOAD_SWITCH:
      *on = !*on;
      break;
    case BW_LOAD_TERMINATOR:
      if (!own_sync && input->loop_through == TRUE)
        input->loop_ended = TRUE;
      else
        *(own_sync ? &input->added_sync_ohm : &input->added_ohm) = BW_VIDEO_OHM;
      break;
    case BW_LOAD_UNLOAD:
      input->loop_ended = FALSE;
      break;
    case BW_LOAD_AS_IT_IS:
    default:
      break;
    }
}

/**
 * bw_input_bandwidth_hz:
 * @input: (nullable): %NULL for the monitor by itself
 *
 * Returns: the lesser of the input's and the monitor's bandwidths, in hertz; zero if neither is
 * known
 */
double
bw_input_bandwidth_hz (const BwInput *input, const BwMonitor *monitor)
{
  g_return_val_if_fail (monitor != NULL, 0);
  double input_hz = input != NULL ? input->bandwidth_hz : 0;
  if (input_hz > 0 && monitor->bandwidth_hz > 0)
    return MIN (input_hz, monitor->bandwidth_hz);
  return MAX (input_hz, monitor->bandwidth_hz);
}

/**
 * bw_monitor_new:
 *
 * Returns: (transfer full): a monitor without inputs, with the presets of the first form of the
 *   file; its mask is not known
 */
BwMonitor *
bw_monitor_new (void)
{
  BwMonitor *monitor = g_new0 (BwMonitor, 1);
  monitor->name = g_strdup ("");
  monitor->source = g_strdup ("");
  monitor->note = g_strdup ("");
  monitor->aspect = (BwRatio){ 4, 3 };
  monitor->mask = BW_N_MASKS;
  monitor->inputs = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_input_free);
  return monitor;
}

/**
 * bw_monitor_copy:
 *
 * Returns: (transfer full): a copy, with its inputs, that shares nothing with @monitor
 */
BwMonitor *
bw_monitor_copy (const BwMonitor *monitor)
{
  g_return_val_if_fail (monitor != NULL, NULL);
  BwMonitor *copy = bw_monitor_new ();
  copy->id = g_strdup (monitor->id);
  bw_fields_copy (&bw_monitor_fields, copy, monitor);
  for (guint i = 0; i < monitor->inputs->len; i++)
    g_ptr_array_add (copy->inputs, bw_input_copy (bw_monitor_input (monitor, i)));
  return copy;
}

/**
 * bw_monitor_set_origins:
 *
 * Gives every figure of @monitor and its inputs that is known the same origin.
 */
void
bw_monitor_set_origins (BwMonitor *monitor, BwOrigin origin)
{
  g_return_if_fail (monitor != NULL);
  bw_fields_set_origins (&bw_monitor_fields, monitor, origin);
  for (guint i = 0; i < monitor->inputs->len; i++)
    bw_fields_set_origins (&bw_input_fields, bw_monitor_input (monitor, i), origin);
}

/**
 * bw_monitor_free:
 * @monitor: (nullable) (transfer full): freed with all it owns
 */
void
bw_monitor_free (BwMonitor *monitor)
{
  if (monitor == NULL)
    return;
  g_free (monitor->id);
  bw_fields_clear (&bw_monitor_fields, monitor);
  g_ptr_array_unref (monitor->inputs);
  g_free (monitor);
}

/**
 * bw_monitor_switches_to:
 *
 * Returns: whether a switch makes the tube scan an area of @aspect: one knows 4:3 and 16:9
 */
gboolean
bw_monitor_switches_to (const BwMonitor *monitor, BwRatio aspect)
{
  g_return_val_if_fail (monitor != NULL, FALSE);
  const BwRatio standard = { 4, 3 }, wide = { 16, 9 };
  gboolean is_wide = bw_ratio_compare (monitor->aspect, wide) == 0;
  gboolean is_standard = bw_ratio_compare (monitor->aspect, standard) == 0;
  return monitor->wide_switch == TRUE
         && ((is_standard && bw_ratio_compare (aspect, wide) == 0)
             || (is_wide && bw_ratio_compare (aspect, standard) == 0));
}

/**
 * bw_monitor_area_diagonal_m:
 * @aspect: width to height of a picture
 *
 * Returns: the diagonal of the largest area of @aspect inside the viewable one: a wider picture
 * keeps the width of the tube, a narrower one its height
 */
double
bw_monitor_area_diagonal_m (const BwMonitor *monitor, BwRatio aspect)
{
  g_return_val_if_fail (monitor != NULL, 0);
  double tube = bw_ratio_to_double (monitor->aspect);
  double picture = bw_ratio_to_double (aspect);

  if (!(tube > 0) || !(picture > 0) || bw_ratio_compare (aspect, monitor->aspect) == 0)
    return monitor->diagonal_m;
  double tube_height_m = monitor->diagonal_m / hypot (tube, 1);
  double height_m = picture > tube ? tube_height_m * tube / picture : tube_height_m;
  return height_m * hypot (picture, 1);
}
