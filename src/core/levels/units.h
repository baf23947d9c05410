/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "wire.h"

G_BEGIN_DECLS

/* One level in every unit that it has. There is no one IRE scale and no one scale of codes: each
 * conductor of a wire form has its own, or none. */

typedef enum
{
  BW_LEVEL_VOLTS,   /* across 75 Ω, above blanking */
  BW_LEVEL_IRE,     /* above blanking */
  BW_LEVEL_PERCENT, /* of white above blanking */
  BW_LEVEL_CODE_8,  /* ITU-R BT.601, not rounded */
  BW_LEVEL_CODE_10, /* four times the 8-bit code, not rounded */
  BW_N_LEVEL_UNITS
} BwLevelUnit;

/**
 * BwLevelScale:
 * @volts_per_ire: zero where there is no IRE scale
 * @volts_per_percent: zero where there is no white
 * @code_volts: of the first code of the range: black of luma and primaries, zero of differences
 * @first_code: 16 or 128, in 8 bits
 * @codes_per_volt: in 8 bits; zero where there are no codes
 *
 * The units of one conductor.
 */
typedef struct
{
  double volts_per_ire;
  double volts_per_percent;
  double code_volts;
  double first_code;
  double codes_per_volt;
} BwLevelScale;

#define BW_LEVEL_UNIT_ERROR (bw_level_unit_error_quark ())

typedef enum
{
  BW_LEVEL_UNIT_ERROR_NO_SCALE,
  BW_LEVEL_UNIT_ERROR_CODE, /* below or above the codes that may carry a picture */
  BW_LEVEL_UNIT_ERROR_NUMBER
} BwLevelUnitError;

extern const BwKindTable bw_level_units;

GQuark bw_level_unit_error_quark (void);

void bw_level_scale (const BwWireForm *form, const BwWireLevels *levels, BwLevelScale *scale);
gboolean bw_level_has_unit (const BwLevelScale *scale, BwLevelUnit unit);
gboolean bw_level_convert (const BwLevelScale *scale, double value, BwLevelUnit from,
                           BwLevelUnit to, double *result, GError **error);

G_END_DECLS
