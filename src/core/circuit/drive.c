/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drive.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static const BwKind drives[BW_N_SYNC_DRIVES] = {
  [BW_DRIVE_300_MV] = { "300mv", N_ ("0.3 V into 75 Ω") },
  [BW_DRIVE_1_V] = { "1v", N_ ("1 V into 75 Ω") },
  [BW_DRIVE_2_V] = { "2v", N_ ("2 V into 75 Ω") },
  [BW_DRIVE_4_V] = { "4v", N_ ("4 V into 75 Ω") },
  [BW_DRIVE_LOGIC] = { "logic", N_ ("5 V logic (TTL)") },
  [BW_DRIVE_LOGIC_75] = { "logic-75", N_ ("5 V logic behind 75 Ω") },
  [BW_DRIVE_TRILEVEL] = { "tri-level", N_ ("tri-level, ±0.3 V into 75 Ω") },
};
const BwKindTable bw_sync_drives = { BW_N_SYNC_DRIVES, drives };

#define LOGIC_OHM 50 /* resistance of a logic gate: common practice, no source */

/* 0.3 V and tri-level: composite and component levels without their picture. 4 V: an early studio
 * practice by an instrument maker's note. 1 V, 2 V, the resistance of a logic gate and the 5 V of
 * its supply: common practice, no source. The thresholds are those that graphics adapters state for
 * their H and V inputs. */
static const BwSyncDriveFacts facts[BW_N_SYNC_DRIVES] = {
  [BW_DRIVE_300_MV] = { 0.3, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, BW_VIDEO_OHM, 0, 0, FALSE },
  [BW_DRIVE_1_V] = { 1, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, BW_VIDEO_OHM, 0, 0, TRUE },
  [BW_DRIVE_2_V] = { 2, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, BW_VIDEO_OHM, 0, 0, TRUE },
  [BW_DRIVE_4_V] = { 4, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, BW_VIDEO_OHM, 0, 0, FALSE },
  [BW_DRIVE_LOGIC] = { 5, BW_LOAD_OPEN, BW_SHAPE_BILEVEL, LOGIC_OHM, 0.8, 2.0, TRUE },
  [BW_DRIVE_LOGIC_75] = { 5, BW_LOAD_OPEN, BW_SHAPE_BILEVEL, BW_VIDEO_OHM, 0.8, 2.0, TRUE },
  [BW_DRIVE_TRILEVEL] = { 0.3, BW_LOAD_75_OHM, BW_SHAPE_TRILEVEL, BW_VIDEO_OHM, 0, 0, FALSE },
};

/**
 * bw_sync_drive_facts:
 *
 * Returns: (transfer none): the levels of @drive
 */
const BwSyncDriveFacts *
bw_sync_drive_facts (BwSyncDrive drive)
{
  g_return_val_if_fail (drive < BW_N_SYNC_DRIVES, &facts[BW_DRIVE_300_MV]);
  return &facts[drive];
}

/**
 * bw_parallel_ohm:
 * @a_ohm: not less than zero
 * @b_ohm: likewise; not both are zero
 *
 * Returns: the resistance of the two in parallel
 */
double
bw_parallel_ohm (double a_ohm, double b_ohm)
{
  g_return_val_if_fail (a_ohm >= 0 && b_ohm >= 0 && a_ohm + b_ohm > 0, 0);
  return a_ohm * b_ohm / (a_ohm + b_ohm);
}

/**
 * bw_load_is_one:
 *
 * Returns: whether @load_ohm terminates a conductor once: 75 Ω within its tolerance
 */
gboolean
bw_load_is_one (double load_ohm)
{
  return load_ohm >= BW_ONE_LOAD_MIN_OHM && load_ohm <= BW_ONE_LOAD_MAX_OHM;
}

/**
 * bw_load_is_high:
 *
 * Returns: whether @load_ohm is high impedance, into which a conductor is as good as open
 */
gboolean
bw_load_is_high (double load_ohm)
{
  return load_ohm > BW_HIGH_IMPEDANCE_OHM;
}

/**
 * bw_open_v:
 * @level_v: the level as it is stated
 * @stated: what it is stated across
 * @source_ohm: resistance of the source; zero: none
 *
 * Returns: the voltage of the source without load, by the voltage divider
 */
double
bw_open_v (double level_v, BwStatedLoad stated, double source_ohm)
{
  g_return_val_if_fail (source_ohm >= 0 && stated < BW_N_LOADS, 0);
  return stated == BW_LOAD_75_OHM ? level_v * (BW_VIDEO_OHM + source_ohm) / BW_VIDEO_OHM : level_v;
}

/**
 * bw_level_at_load:
 * @level_v: the level as it is stated
 * @stated: what it is stated across
 * @source_ohm: resistance of the source; zero: none
 * @load_ohm: what it works into, greater than zero; INFINITY: nothing
 *
 * The source is its open-circuit voltage behind its resistance; with a 75 Ω source, no load gives
 * twice the published level and two 75 Ω loads two thirds of it (voltage divider).
 *
 * Returns: the level across @load_ohm, in volts
 */
double
bw_level_at_load (double level_v, BwStatedLoad stated, double source_ohm, double load_ohm)
{
  g_return_val_if_fail (load_ohm > 0, 0);
  double open_v = bw_open_v (level_v, stated, source_ohm);
  return isfinite (load_ohm) ? open_v * load_ohm / (load_ohm + source_ohm) : open_v;
}

/* Returns: whether @value lies in @range, its ends included */
static gboolean
range_holds (BwRange range, double value)
{
  return value >= range.low && value <= range.high;
}

/**
 * bw_range_nominal:
 * @usual: the customary value
 *
 * The level that is aimed at in what an input takes. Levels are ratios, so that the middle is the
 * geometric one: as many decibels from either end.
 *
 * Returns: @usual if it lies in @range, else the geometric middle of @range
 */
double
bw_range_nominal (BwRange range, double usual)
{
  g_return_val_if_fail (range.low >= 0 && range.high >= range.low, usual);
  return range_holds (range, usual) ? usual : sqrt (range.low * range.high);
}

/**
 * bw_series_resistor_ohm:
 * @open_v: voltage of the driver without load
 * @driver_ohm: the driver's own resistance
 * @load_ohm: the input's
 * @wanted_v: voltage wanted across @load_ohm, greater than zero
 *
 * A divider of the driver's resistance, the added resistor and the load:
 * R = load × (open / wanted − 1) − driver.
 *
 * Returns: the resistor to add, in ohms; zero or less if none can help
 */
double
bw_series_resistor_ohm (double open_v, double driver_ohm, double load_ohm, double wanted_v)
{
  g_return_val_if_fail (wanted_v > 0 && load_ohm > 0, 0);
  return load_ohm * (open_v / wanted_v - 1) - driver_ohm;
}

/**
 * bw_sync_attenuator:
 * @open_v: voltage of the driver without load
 * @driver_ohm: the driver's own resistance
 * @load_ohm: what the conductor ends in as it stands
 * @takes: level that the input takes
 * @series: of the resistor
 * @attenuator: (out caller-allocates): a series resistor at the driver's end, and a terminator
 *   where the conductor ends in high impedance and there is level enough for one
 *
 * Returns: %FALSE if there is no such resistor, because the level is too low without it, or because
 *   resistor and load would leave the lead at high impedance
 */
gboolean
bw_sync_attenuator (double open_v, double driver_ohm, double load_ohm, BwRange takes,
                    BwSeries series, BwSyncAttenuator *attenuator)
{
  g_return_val_if_fail (load_ohm > 0 && takes.high > 0 && attenuator != NULL, FALSE);
  double wanted_v = bw_range_nominal (takes, BW_USUAL_SYNC_V);
  double terminated_ohm
      = isfinite (load_ohm) ? bw_parallel_ohm (load_ohm, BW_VIDEO_OHM) : BW_VIDEO_OHM;
  gboolean terminator
      = bw_load_is_high (load_ohm)
        && bw_series_resistor_ohm (open_v, driver_ohm, terminated_ohm, wanted_v) > 0;

  *attenuator = (BwSyncAttenuator){ .wanted_v = wanted_v,
                                    .terminator = terminator,
                                    .load_ohm = terminator ? terminated_ohm : load_ohm };
  attenuator->exact_ohm
      = bw_series_resistor_ohm (open_v, driver_ohm, attenuator->load_ohm, wanted_v);
  if (!(attenuator->exact_ohm > 0)
      || bw_load_is_high (bw_parallel_ohm (driver_ohm + attenuator->exact_ohm,
                                           attenuator->load_ohm)))
    return FALSE;
  attenuator->resistor_ohm = bw_preferred_value (attenuator->exact_ohm, series);
  attenuator->level_v = bw_level_at_load (open_v, BW_LOAD_OPEN,
                                          driver_ohm + attenuator->resistor_ohm,
                                          attenuator->load_ohm);
  return TRUE;
}

/* The ratio to the nominal level, where @level_v is too high; else one. */
static double
ratio_down_to (double level_v, const BwRange *takes, double usual_v)
{
  return takes != NULL && level_v > takes->high ? bw_range_nominal (*takes, usual_v) / level_v : 1;
}

/* Narrows @ratios to those with which @level_v is taken. */
static void
narrow (BwRange *ratios, double level_v, const BwRange *takes)
{
  if (takes == NULL || !(level_v > 0))
    return;
  ratios->low = fmax (ratios->low, takes->low / level_v);
  ratios->high = fmin (ratios->high, takes->high / level_v);
}

/**
 * bw_pad_ratio:
 * @video_v: picture, black to white, where the conductor ends in one load
 * @takes_video: (nullable): what is taken of it; %NULL: any
 * @sync_v: sync that goes with the picture and is lowered with it
 * @takes_sync: (nullable): likewise; %NULL also where sync goes by itself
 *
 * One attenuator lowers both. It makes the picture nominal, or else the sync, or else goes through
 * the middle of what serves both.
 *
 * Returns: the ratio of a matched attenuator with which neither is too high; one: none is needed.
 *   Where none serves both, that which neither is too high with
 */
double
bw_pad_ratio (double video_v, const BwRange *takes_video, double sync_v, const BwRange *takes_sync)
{
  double of_video = ratio_down_to (video_v, takes_video, BW_USUAL_VIDEO_V);
  double of_sync = ratio_down_to (sync_v, takes_sync, BW_USUAL_SYNC_V);
  BwRange ratios = { 0, 1 };

  if (!(of_video < 1) && !(of_sync < 1))
    return 1;
  narrow (&ratios, video_v, takes_video);
  narrow (&ratios, sync_v, takes_sync);
  if (ratios.low > ratios.high)
    return fmin (of_video, of_sync);
  if (of_video < 1 && range_holds (ratios, of_video))
    return of_video;
  if (of_sync < 1 && range_holds (ratios, of_sync))
    return of_sync;
  return sqrt (ratios.low * ratios.high);
}
