/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "units.h"

#include <math.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-level-unit-error-quark, bw_level_unit_error)

static const BwKind units[BW_N_LEVEL_UNITS] = {
  [BW_LEVEL_VOLTS] = { "v", N_ ("V") },
  [BW_LEVEL_IRE] = { "ire", N_ ("IRE") },
  /* xgettext:no-c-format */
  [BW_LEVEL_PERCENT] = { "percent", N_ ("% of white") },
  [BW_LEVEL_CODE_8] = { "code_8", N_ ("8-bit code") },
  [BW_LEVEL_CODE_10] = { "code_10", N_ ("10-bit code") },
};
const BwKindTable bw_level_units = { BW_N_LEVEL_UNITS, units };

/* ITU-R BT.601 3.5: luma and primaries from 16 in 219 steps from black to white, differences about
 * 128 in 224 steps from −0.5 to 0.5. 0 and 255 are kept for synchronisation. */
#define LUMA_CODES 219.0
#define LUMA_FIRST 16.0
#define DIFFERENCE_CODES 224.0
#define DIFFERENCE_FIRST 128.0
#define CODE_LOWEST 1
#define CODE_HIGHEST 254
#define CODE_10 4.0

static gboolean
has_luma_codes (const BwWireForm *form, BwConductor conductor)
{
  return conductor <= BW_CONDUCTOR_Y
         || (conductor == BW_CONDUCTOR_VIDEO && form->signal == BW_SIGNAL_LUMA);
}

/**
 * bw_level_scale:
 * @levels: of one conductor of @form, from bw_wire_levels()
 * @scale: (out caller-allocates): its units. Composite and C are not coded by ITU-R BT.601, and
 *   sync alone has neither white nor codes
 */
void
bw_level_scale (const BwWireForm *form, const BwWireLevels *levels, BwLevelScale *scale)
{
  g_return_if_fail (form != NULL && levels != NULL && scale != NULL);
  BwConductor conductor = levels->conductor;

  *scale = (BwLevelScale){ .volts_per_ire = levels->volts_per_ire };
  if (bw_conductor_is_sync_alone (conductor))
    return;
  scale->volts_per_percent = form->white_v / 100;
  if (has_luma_codes (form, conductor))
    {
      scale->code_volts = levels->black_v;
      scale->first_code = LUMA_FIRST;
      scale->codes_per_volt = LUMA_CODES / (levels->white_v - levels->black_v);
    }
  else if (conductor == BW_CONDUCTOR_PB || conductor == BW_CONDUCTOR_PR)
    {
      scale->first_code = DIFFERENCE_FIRST;
      scale->codes_per_volt = DIFFERENCE_CODES / (2 * levels->highest_v);
    }
}

/**
 * bw_level_has_unit:
 *
 * Returns: whether levels of the conductor can be said in @unit
 */
gboolean
bw_level_has_unit (const BwLevelScale *scale, BwLevelUnit unit)
{
  g_return_val_if_fail (scale != NULL, FALSE);
  switch (unit)
    {
    case BW_LEVEL_VOLTS:
      return TRUE;
    case BW_LEVEL_IRE:
      return scale->volts_per_ire > 0;
    case BW_LEVEL_PERCENT:
      return scale->volts_per_percent > 0;
    case BW_LEVEL_CODE_8:
    case BW_LEVEL_CODE_10:
      return scale->codes_per_volt > 0;
    case BW_N_LEVEL_UNITS:
    default:
      return FALSE;
    }
}

/* What one unit is in volts. */
static double
volts_per (const BwLevelScale *scale, BwLevelUnit unit)
{
  switch (unit)
    {
    case BW_LEVEL_IRE:
      return scale->volts_per_ire;
    case BW_LEVEL_PERCENT:
      return scale->volts_per_percent;
    case BW_LEVEL_CODE_8:
      return 1 / scale->codes_per_volt;
    case BW_LEVEL_CODE_10:
      return 1 / (CODE_10 * scale->codes_per_volt);
    case BW_LEVEL_VOLTS:
    case BW_N_LEVEL_UNITS:
    default:
      return 1;
    }
}

/* The level of zero volts, in @unit; in volts: the level of @unit's zero. */
static double
zero_of (const BwLevelScale *scale, BwLevelUnit unit)
{
  double factor = unit == BW_LEVEL_CODE_10 ? CODE_10 : 1;
  if (unit != BW_LEVEL_CODE_8 && unit != BW_LEVEL_CODE_10)
    return 0;
  return factor * (scale->first_code - scale->code_volts * scale->codes_per_volt);
}

static gboolean
check_code (double value, BwLevelUnit unit, GError **error)
{
  double factor = unit == BW_LEVEL_CODE_10 ? CODE_10 : 1;
  double low = factor * CODE_LOWEST;
  double high = factor * CODE_HIGHEST + factor - 1;

  if (unit != BW_LEVEL_CODE_8 && unit != BW_LEVEL_CODE_10)
    return TRUE;
  /* What rounds to a code that is allowed is one. */
  if (value >= low - 0.5 && value < high + 0.5)
    return TRUE;
  g_set_error (
      error, BW_LEVEL_UNIT_ERROR, BW_LEVEL_UNIT_ERROR_CODE,
      _ ("code %1$.1f is outside %2$.0f to %3$.0f, which ITU-R BT.601 leaves for the picture"),
      value, low, high);
  return FALSE;
}

static gboolean
check_unit (const BwLevelScale *scale, BwLevelUnit unit, GError **error)
{
  if (bw_level_has_unit (scale, unit))
    return TRUE;
  g_set_error (error, BW_LEVEL_UNIT_ERROR, BW_LEVEL_UNIT_ERROR_NO_SCALE,
               _ ("this conductor has no scale in %s"), bw_kind_label (&bw_level_units, unit));
  return FALSE;
}

/**
 * bw_level_convert:
 * @value: in @from
 * @result: (out): in @to; codes are not rounded. Not touched on error
 *
 * Both ways, and back to the same value but for rounding in the last place. Sync tip and what else
 * lies below the codes of ITU-R BT.601 has none.
 *
 * Returns: %FALSE if the conductor has no such scale, or if a code is none that may carry a picture
 */
gboolean
bw_level_convert (const BwLevelScale *scale, double value, BwLevelUnit from, BwLevelUnit to,
                  double *result, GError **error)
{
  if (!isfinite (value))
    {
      g_set_error (error, BW_LEVEL_UNIT_ERROR, BW_LEVEL_UNIT_ERROR_NUMBER,
                   _ ("the level is not a number"));
      return FALSE;
    }
  if (!check_unit (scale, from, error) || !check_unit (scale, to, error)
      || !check_code (value, from, error))
    return FALSE;
  double volts = (value - zero_of (scale, from)) * volts_per (scale, from);
  double converted = from == to ? value : volts / volts_per (scale, to) + zero_of (scale, to);
  if (!check_code (converted, to, error))
    return FALSE;
  *result = converted;
  return TRUE;
}
