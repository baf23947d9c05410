/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sync-drive.h"

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

/* 0.3 V and tri-level: composite and component levels without their picture. 4 V: an early studio
 * practice by an instrument maker's note. 1 V, 2 V, the 50 Ω of a logic gate and the 5 V of its
 * supply: common practice, no source. The thresholds are those that graphics adapters state for
 * their H and V inputs. */
static const BwSyncDriveFacts facts[BW_N_SYNC_DRIVES] = {
  [BW_DRIVE_300_MV] = { 0.3, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, 0, 0, FALSE },
  [BW_DRIVE_1_V] = { 1, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, 0, 0, TRUE },
  [BW_DRIVE_2_V] = { 2, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, 0, 0, TRUE },
  [BW_DRIVE_4_V] = { 4, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, 0, 0, FALSE },
  [BW_DRIVE_LOGIC] = { 5, BW_LOAD_OPEN, BW_SHAPE_BILEVEL, 50, 0.8, 2.0, TRUE },
  [BW_DRIVE_LOGIC_75] = { 5, BW_LOAD_OPEN, BW_SHAPE_BILEVEL, 75, 0.8, 2.0, TRUE },
  [BW_DRIVE_TRILEVEL] = { 0.3, BW_LOAD_75_OHM, BW_SHAPE_TRILEVEL, 75, 0, 0, FALSE },
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
 * bw_sync_drive_at_load:
 * @load_ohm: greater than zero
 *
 * Returns: the sync amplitude of @drive across @load_ohm
 */
double
bw_sync_drive_at_load (BwSyncDrive drive, double load_ohm)
{
  const BwSyncDriveFacts *drive_facts = bw_sync_drive_facts (drive);
  return bw_level_at_load (drive_facts->sync_v, drive_facts->stated, drive_facts->driver_ohm,
                           load_ohm);
}
