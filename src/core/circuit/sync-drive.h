/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "level.h"

G_BEGIN_DECLS

/* How sync on a conductor of its own is driven. */

typedef enum
{
  BW_DRIVE_300_MV,
  BW_DRIVE_1_V,
  BW_DRIVE_2_V,
  BW_DRIVE_4_V,
  BW_DRIVE_LOGIC, /* TTL: stated without load */
  BW_DRIVE_LOGIC_75, /* the same behind a resistor that matches the line */
  BW_DRIVE_TRILEVEL,
  BW_N_SYNC_DRIVES
} BwSyncDrive;

/**
 * BwSyncDriveFacts:
 * @sync_v: amplitude across @stated; of tri-level sync each way
 * @driver_ohm: resistance of the usual driver
 * @input_low_v: what an input must still take as low; zero where no threshold is laid down
 * @input_high_v: what an input must take as high
 * @common_practice: no source was read for the level
 */
typedef struct
{
  double sync_v;
  BwStatedLoad stated;
  BwSyncShape shape;
  double driver_ohm;
  double input_low_v;
  double input_high_v;
  gboolean common_practice;
} BwSyncDriveFacts;

extern const BwKindTable bw_sync_drives;

const BwSyncDriveFacts *bw_sync_drive_facts (BwSyncDrive drive);
double bw_sync_drive_at_load (BwSyncDrive drive, double load_ohm);

G_END_DECLS
