/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour-system.h"

#include <math.h>

/* 525 lines: 4.5 MHz/286 and twice that over 525 (SMPTE 170M 11.2); 625 lines: 15 625 Hz and 50 Hz
 * (ITU-R BT.470-6). */
#define OF_525_LINES                                                                              \
  .lines = 525, .line_rate_hz = { 2250000, 143 }, .field_rate_hz = { 60000, 1001 },               \
  .raster = "525-59.94-interlaced"
#define OF_625_LINES                                                                              \
  .lines = 625, .line_rate_hz = { 15625, 1 }, .field_rate_hz = { 50, 1 },                         \
  .raster = "625-50-interlaced"

/* SMPTE 170M table 1 and 15.4: 140 IRE = 1 V, white 100 IRE and sync 40 IRE. ITU-R BT.1700 table 2:
 * white 700 mV = 100 %, sync 300 mV. */
#define LEVELS_10_4                                                                               \
  .volts_per_ire = { 1, 140 }, .white_v = BW_WHITE_10_4_V, .sync_v = BW_SYNC_10_4_V
#define LEVELS_7_3                                                                                \
  .volts_per_ire = { 7, 1000 }, .white_v = BW_WHITE_7_3_V, .sync_v = BW_SYNC_7_3_V

/* 455/2 of the line rate of 525 lines, which is 315/88 MHz (SMPTE 170M 11.2). */
#define SUBCARRIER_NTSC { 39375000, 11 }
/* (1135/4 + 1/625) × 15 625 Hz = 4 433 618.75 Hz (BT.1700 Part B). */
#define SUBCARRIER_PAL { 17734475, 4 }

/* The burst. NTSC: 40 IRE, from 19 cycles after 0H and 9 long (SMPTE 170M tables 1 and 2), left out
 * over 2 fields. PAL: 300 mV, 5.6 µs after 0H and 10 long, on 525 lines 5.3 µs and 9 long (BT.1700
 * table 2, Part B tables 2 and 3), left out over 4 fields. The texts that were read are not legible
 * for the level of PAL M. */
#define BURST_NTSC                                                                                \
  .burst_pp_v = BW_SYNC_10_4_V, .burst_from_s = 19 * 88 / 315e6, .burst_cycles = 9,               \
  .burst_fields = 2, .lines_before_sync = 3

/* Bandwidths: ITU-R BT.470-6. */
static const BwSystemFacts facts[BW_N_SYSTEMS] = {
  [BW_SYSTEM_NONE] = { .line_rate_hz = { 0, 1 }, .field_rate_hz = { 0, 1 },
                       .subcarrier_hz = { 0, 1 }, LEVELS_7_3 },
  [BW_SYSTEM_NTSC_M] = { .chroma = BW_CHROMA_QUADRATURE, OF_525_LINES, LEVELS_10_4, BURST_NTSC,
                         .setup_ire = 7.5, .subcarrier_hz = SUBCARRIER_NTSC,
                         .luma_bandwidth_hz = 4.2e6, .limits = "smpte-170m" },
  /* no setup: BT.1700 Part A note 1 */
  [BW_SYSTEM_NTSC_J] = { .chroma = BW_CHROMA_QUADRATURE, OF_525_LINES, LEVELS_10_4, BURST_NTSC,
                         .subcarrier_hz = SUBCARRIER_NTSC, .luma_bandwidth_hz = 4.2e6 },
  /* not a broadcast system: NTSC modulation on the PAL subcarrier, its burst placed as in 525-line
   * PAL (common practice, no source) */
  [BW_SYSTEM_NTSC_443] = { .chroma = BW_CHROMA_QUADRATURE, OF_525_LINES, LEVELS_10_4,
                           .any_raster = TRUE, .subcarrier_hz = SUBCARRIER_PAL,
                           .burst_from_s = 5.3e-6, .burst_cycles = 10, .burst_fields = 2,
                           .lines_before_sync = 3, .luma_bandwidth_hz = 4.2e6 },
  /* 5.0 MHz is that of B and G; I has 5.5 MHz, D and K 6 MHz: enter it in the source */
  [BW_SYSTEM_PAL_B] = { .chroma = BW_CHROMA_ALTERNATING, OF_625_LINES, LEVELS_7_3,
                        .subcarrier_hz = SUBCARRIER_PAL, .burst_pp_v = 0.3,
                        .burst_from_s = 5.6e-6, .burst_cycles = 10, .burst_fields = 4,
                        .luma_bandwidth_hz = 5.0e6, .limits = "bt1700-pal" },
  /* 909/4 of the line rate of 525 lines (BT.1700 Part B) */
  [BW_SYSTEM_PAL_M] = { .chroma = BW_CHROMA_ALTERNATING, OF_525_LINES, LEVELS_10_4,
                        .setup_ire = 7.5, .subcarrier_hz = { 511312500, 143 },
                        .burst_from_s = 5.3e-6, .burst_cycles = 9, .burst_fields = 4,
                        .luma_bandwidth_hz = 4.2e6 },
  /* (917/4 + 1/625) × 15 625 Hz = 3 582 056.25 Hz (BT.470-6) */
  [BW_SYSTEM_PAL_N] = { .chroma = BW_CHROMA_ALTERNATING, OF_625_LINES, LEVELS_7_3,
                        .subcarrier_hz = { 14328225, 4 }, .burst_pp_v = 0.3,
                        .burst_from_s = 5.6e-6, .burst_cycles = 9, .burst_fields = 4,
                        .luma_bandwidth_hz = 4.2e6 },
  /* not a broadcast system: PAL modulation and subcarrier on 525 lines (common practice, no
   * source) */
  [BW_SYSTEM_PAL_60] = { .chroma = BW_CHROMA_ALTERNATING, OF_525_LINES, LEVELS_7_3,
                         .any_raster = TRUE, .subcarrier_hz = SUBCARRIER_PAL,
                         .burst_from_s = 5.3e-6, .burst_cycles = 10,
                         .luma_bandwidth_hz = 5.0e6 },
  /* D'R at rest: 282 × 15 625 Hz (BT.1700 Part C) */
  [BW_SYSTEM_SECAM_L] = { .chroma = BW_CHROMA_SEQUENTIAL, OF_625_LINES, LEVELS_7_3,
                          .subcarrier_hz = { 4406250, 1 }, .luma_bandwidth_hz = 6.0e6 },
};

/**
 * bw_system_facts:
 *
 * Returns: (transfer none): what @system lays down
 */
const BwSystemFacts *
bw_system_facts (BwColourSystem system)
{
  g_return_val_if_fail (system < BW_N_SYSTEMS, &facts[BW_SYSTEM_NONE]);
  return &facts[system];
}

/**
 * bw_ire_to_volts:
 * @ire: a level on the scale of @system
 *
 * Returns: the level in volts across 75 Ω
 */
double
bw_ire_to_volts (BwColourSystem system, double ire)
{
  BwRatio scale = bw_system_facts (system)->volts_per_ire;
  return ire * (double) scale.num / (double) scale.den;
}

/**
 * bw_system_has_phase:
 *
 * Returns: whether colour is the amplitude and the phase of a subcarrier: in NTSC and PAL
 */
gboolean
bw_system_has_phase (BwColourSystem system)
{
  BwChroma chroma = bw_system_facts (system)->chroma;
  return chroma == BW_CHROMA_QUADRATURE || chroma == BW_CHROMA_ALTERNATING;
}

/**
 * bw_system_alternates:
 *
 * Returns: whether the sign of R−Y changes from line to line: in PAL
 */
gboolean
bw_system_alternates (BwColourSystem system)
{
  return bw_system_facts (system)->chroma == BW_CHROMA_ALTERNATING;
}

/**
 * bw_systems_decoded_alike:
 *
 * NTSC in Japan differs from NTSC M in its setup alone (ITU-R BT.1700 Part A note 1), so that a
 * decoder for the one decodes the other.
 *
 * Returns: the set of BwColourSystem that have the chroma, the subcarrier and the lines of @system,
 *   itself among them
 */
guint
bw_systems_decoded_alike (BwColourSystem system)
{
  const BwSystemFacts *one = bw_system_facts (system);
  guint alike = 0;

  for (guint i = 0; i < BW_N_SYSTEMS; i++)
    if (facts[i].chroma == one->chroma && facts[i].lines == one->lines
        && bw_ratio_compare (facts[i].subcarrier_hz, one->subcarrier_hz) == 0)
      alike |= BW_BIT (i);
  return alike;
}

/* Field rates of 50 and of 60 Hz, as of the mains, lie on either side of this. */
#define BETWEEN_FIELD_RATES_HZ 55

/**
 * bw_system_suits_field_rate:
 *
 * Returns: whether @field_rate_hz is about that of @system: 50 or 60 fields a second
 */
gboolean
bw_system_suits_field_rate (BwColourSystem system, double field_rate_hz)
{
  double own_hz = bw_ratio_to_double (bw_system_facts (system)->field_rate_hz);
  return !(own_hz > 0)
         || (own_hz < BETWEEN_FIELD_RATES_HZ) == (field_rate_hz < BETWEEN_FIELD_RATES_HZ);
}

/**
 * bw_system_of_field_rate:
 * @field_rate_hz: or the frequency of the mains, which was made the field rate
 *
 * Returns: the colour system that is taken where none is named: NTSC M for 60 fields a second, PAL
 *   B for 50
 */
BwColourSystem
bw_system_of_field_rate (double field_rate_hz)
{
  return field_rate_hz > BETWEEN_FIELD_RATES_HZ ? BW_SYSTEM_NTSC_M : BW_SYSTEM_PAL_B;
}

/**
 * bw_broadcast_lines:
 * @lines: of a frame
 *
 * A progressive relative of a broadcast raster has about half its lines: 262 or 263 of 525, 312 to
 * 314 of 625 (CTA-861 VIC 8 and 23).
 *
 * Returns: 525 or 625 for @lines that are so many, or half of them; zero for any other number
 */
int
bw_broadcast_lines (int lines)
{
  if (lines == 525 || lines == 262 || lines == 263)
    return 525;
  return lines == 625 || (lines >= 312 && lines <= 314) ? 625 : 0;
}

/**
 * bw_system_knows_burst:
 *
 * Returns: whether a standard lays down, for @system and a raster such as @raster, which lines have
 *   no burst: only for interlaced composite sync with the system's own number of lines
 */
gboolean
bw_system_knows_burst (BwColourSystem system, const BwRaster *raster)
{
  const BwSystemFacts *of_system = bw_system_facts (system);
  BwRasterFigures figures;

  g_return_val_if_fail (raster != NULL, FALSE);
  bw_raster_figures (raster, &figures);
  return of_system->burst_fields > 0 && raster->serration_width_s > 0
         && raster->scan == BW_SCAN_INTERLACED && figures.lines_per_frame == of_system->lines;
}

/* Whether @line lies from @first to @last in a frame that wraps after its last line. */
static gboolean
lies_in (int line, int first, int last)
{
  return first <= last ? line >= first && line <= last : line >= first || line <= last;
}

/**
 * bw_line_has_burst:
 * @colour_field: field of the sequence, from 0
 * @line: as the standard numbers it
 *
 * Burst is left out around field sync: on nine lines of each field in NTSC (SMPTE 170M 13.1), on
 * nine lines that move through four fields in 625-line PAL and on eleven in 525-line PAL (ITU-R
 * BT.1700 figures 6 and 8, BT.470-6 item 2.17).
 *
 * Returns: whether the line carries a burst; %FALSE for systems without one, and for those of which
 *   no standard says it
 */
gboolean
bw_line_has_burst (BwColourSystem system, int colour_field, int line)
{
  static const int pal_625[4][2] = { { 623, 6 }, { 310, 318 }, { 622, 5 }, { 311, 319 } };
  static const int pal_525[4][2] = { { 523, 8 }, { 260, 270 }, { 522, 7 }, { 259, 269 } };
  static const int ntsc[2][2] = { { 1, 9 }, { 264, 272 } };
  const BwSystemFacts *of_system = bw_system_facts (system);
  const int *without;

  g_return_val_if_fail (colour_field >= 0, FALSE);
  if (of_system->burst_fields == 0)
    return FALSE;
  if (of_system->burst_fields == 2)
    without = ntsc[colour_field % 2];
  else
    without = of_system->lines == 525 ? pal_525[colour_field % 4] : pal_625[colour_field % 4];
  return !lies_in (line, without[0], without[1]);
}
