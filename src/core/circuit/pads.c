/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pads.h"

#include <math.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-pads-error-quark, bw_pads_error)

static const BwKind pads[BW_N_PADS] = {
  [BW_PAD_SERIES] = { "series", N_ ("series resistor") },
  [BW_PAD_L] = { "l", N_ ("L pad") },
  [BW_PAD_T] = { "t", N_ ("T pad") },
  [BW_PAD_PI] = { "pi", N_ ("Pi pad") },
  [BW_PAD_MINIMUM_LOSS] = { "minimum-loss", N_ ("minimum-loss pad") },
};
const BwKindTable bw_pads = { BW_N_PADS, pads };

static const BwKind places[BW_N_PLACES] = {
  [BW_PLACE_SERIES] = { "series", N_ ("in series") },
  [BW_PLACE_SHUNT] = { "shunt", N_ ("to the return") },
};
const BwKindTable bw_places = { BW_N_PLACES, places };

static const BwKind series_kinds[BW_N_SERIES] = {
  [BW_SERIES_E12] = { "e12", N_ ("E12") },
  [BW_SERIES_E24] = { "e24", N_ ("E24") },
  [BW_SERIES_E96] = { "e96", N_ ("E96") },
};
const BwKindTable bw_series = { BW_N_SERIES, series_kinds };

static gboolean
is_possible (double open_v, double source_ohm, double load_ohm, GError **error)
{
  if (open_v >= BW_PAD_LEAST_V && open_v <= BW_PAD_MOST_V && source_ohm >= 0
      && source_ohm <= BW_PAD_MOST_OHM && load_ohm >= BW_PAD_LEAST_OHM
      && load_ohm <= BW_PAD_MOST_OHM)
    return TRUE;
  g_set_error_literal (error, BW_PADS_ERROR, BW_PADS_ERROR_VALUE,
                       _ ("Allowed are voltages from 1 mV to 1000 V, a load from 0.1 Ω to 10 MΩ, and "
                          "a source's resistance up to 10 MΩ"));
  return FALSE;
}

static void
add_element (BwNetwork *network, BwPlace place, double ohm)
{
  g_return_if_fail (network->n < BW_NETWORK_MAX);
  network->at[network->n++] = (BwElement){ place, ohm };
}

static void
begin (BwNetwork *network, double open_v, double source_ohm, double load_ohm)
{
  *network = (BwNetwork){ .open_v = open_v, .source_ohm = source_ohm, .load_ohm = load_ohm };
}

static void
too_high (GError **error, double wanted_v, double most_v)
{
  char mark = bw_quantity_locale_mark ();
  g_autofree char *wanted = bw_quantity_format (wanted_v, BW_DIMENSION_VOLTAGE, 4, mark);
  g_autofree char *most = bw_quantity_format (most_v, BW_DIMENSION_VOLTAGE, 4, mark);
  g_set_error (error, BW_PADS_ERROR, BW_PADS_ERROR_TOO_HIGH,
               _ ("%1$s is wanted, but no more than %2$s can be had there without an amplifier"),
               wanted, most);
}

static gboolean
too_low (GError **error, double wanted_v, double ohm)
{
  char mark = bw_quantity_locale_mark ();
  g_autofree char *wanted = bw_quantity_format (wanted_v, BW_DIMENSION_VOLTAGE, 4, mark);
  g_autofree char *needed = bw_quantity_format (ohm, BW_DIMENSION_RESISTANCE, 4, mark);
  g_set_error (error, BW_PADS_ERROR, BW_PADS_ERROR_TOO_LOW,
               _ ("%1$s would need a resistor of %2$s, and there are none above 10 MΩ"), wanted,
               needed);
  return FALSE;
}

/**
 * bw_pad_series:
 * @open_v: level of the source without load
 * @source_ohm: its own resistance
 * @load_ohm: of the input
 * @wanted_v: level wanted across @load_ohm
 * @network: (out caller-allocates): one series resistor, or none if none is needed
 *
 * The voltage divider of bw_series_resistor_ohm(). It gives the load no match.
 *
 * Returns: %FALSE with @error in %BW_PADS_ERROR
 */
gboolean
bw_pad_series (double open_v, double source_ohm, double load_ohm, double wanted_v,
               BwNetwork *network, GError **error)
{
  g_return_val_if_fail (network != NULL, FALSE);
  begin (network, open_v, source_ohm, load_ohm);
  if (!is_possible (open_v, source_ohm, load_ohm, error)
      || !is_possible (wanted_v, 0, load_ohm, error))
    return FALSE;
  double ohm = bw_series_resistor_ohm (open_v, source_ohm, load_ohm, wanted_v);
  double same_ohm = 1e-9 * (load_ohm + source_ohm);
  if (ohm < -same_ohm)
    {
      too_high (error, wanted_v, open_v * load_ohm / (load_ohm + source_ohm));
      return FALSE;
    }
  if (ohm > BW_PAD_MOST_OHM)
    return too_low (error, wanted_v, ohm);
  if (ohm > same_ohm)
    add_element (network, BW_PLACE_SERIES, ohm);
  return TRUE;
}

/**
 * bw_pad_l:
 * @wanted_v: level wanted across @load_ohm
 * @network: (out caller-allocates): a series and a shunt resistor
 *
 * Series, then shunt, such that the load looks back into its own resistance Z: with k = open / (2 ×
 * wanted), series = Z k less the source's own, shunt = Z / (1 − 1/k) (from the divider and the
 * parallel resistance).
 *
 * Returns: %FALSE with @error in %BW_PADS_ERROR
 */
gboolean
bw_pad_l (double open_v, double source_ohm, double load_ohm, double wanted_v, BwNetwork *network,
          GError **error)
{
  g_return_val_if_fail (network != NULL, FALSE);
  begin (network, open_v, source_ohm, load_ohm);
  if (!is_possible (open_v, source_ohm, load_ohm, error)
      || !is_possible (wanted_v, 0, load_ohm, error))
    return FALSE;
  double k = open_v / (2 * wanted_v);
  double series_ohm = load_ohm * k - source_ohm;
  double most_v = open_v / 2 * (source_ohm > load_ohm ? load_ohm / source_ohm : 1);
  if (k < 1 - 1e-9 || series_ohm < -1e-9 * load_ohm)
    {
      too_high (error, wanted_v, most_v);
      return FALSE;
    }
  if (series_ohm > 1e-9 * load_ohm)
    add_element (network, BW_PLACE_SERIES, series_ohm);
  if (k > 1 + 1e-9)
    add_element (network, BW_PLACE_SHUNT, load_ohm / (1 - 1 / k));
  return TRUE;
}

/**
 * bw_pad_matched:
 * @kind: %BW_PAD_T or %BW_PAD_PI
 * @open_v: level of the source without load: twice the level that it has without the pad
 * @z_ohm: of source, load and pad alike
 * @loss_db: more than zero
 * @network: (out caller-allocates): three resistors
 *
 * With k = 10^(dB/20): T: series Z (k − 1)/(k + 1), shunt 2 Z k/(k² − 1); Pi: shunt
 * Z (k + 1)/(k − 1), series Z (k² − 1)/(2 k) (image parameters of symmetrical pads).
 *
 * Returns: %FALSE with @error in %BW_PADS_ERROR
 */
gboolean
bw_pad_matched (BwPadKind kind, double open_v, double z_ohm, double loss_db, BwNetwork *network,
                GError **error)
{
  g_return_val_if_fail (kind == BW_PAD_T || kind == BW_PAD_PI, FALSE);
  begin (network, open_v, z_ohm, z_ohm);
  if (!is_possible (open_v, z_ohm, z_ohm, error))
    return FALSE;
  if (!(loss_db >= 1e-3 && loss_db <= 120))
    {
      g_set_error_literal (error, BW_PADS_ERROR, BW_PADS_ERROR_LOSS,
                           _ ("A matched pad loses from 0.001 to 120 dB"));
      return FALSE;
    }
  double k = pow (10, loss_db / 20);
  gboolean t = kind == BW_PAD_T;
  double outer_ohm = t ? z_ohm * (k - 1) / (k + 1) : z_ohm * (k + 1) / (k - 1);
  double inner_ohm = t ? 2 * z_ohm * k / (k * k - 1) : z_ohm * (k * k - 1) / (2 * k);
  add_element (network, t ? BW_PLACE_SERIES : BW_PLACE_SHUNT, outer_ohm);
  add_element (network, t ? BW_PLACE_SHUNT : BW_PLACE_SERIES, inner_ohm);
  add_element (network, t ? BW_PLACE_SERIES : BW_PLACE_SHUNT, outer_ohm);
  return TRUE;
}

/**
 * bw_pad_lower:
 * @open_v: level of the source without load
 * @source_ohm: its own resistance; zero: none
 * @ratio: of the level wanted to the level that there is across one load, less than one
 * @ideal: (out caller-allocates): a matched T pad of 75 Ω
 * @made: (out caller-allocates): the same of the nearest values of @series, each by itself
 *
 * Returns: %FALSE if @ratio is not that of a pad
 */
gboolean
bw_pad_lower (double open_v, double source_ohm, double ratio, BwSeries series, BwNetwork *ideal,
              BwNetwork *made)
{
  g_return_val_if_fail (source_ohm >= 0 && ideal != NULL && made != NULL, FALSE);
  if (!(ratio > 0 && ratio < 1)
      || !bw_pad_matched (BW_PAD_T, open_v, BW_VIDEO_OHM, -20 * log10 (ratio), ideal, NULL))
    return FALSE;
  ideal->source_ohm = source_ohm;
  bw_network_prefer (ideal, series, made);
  return TRUE;
}

/**
 * bw_pad_minimum_loss:
 * @network: (out caller-allocates): a series resistor at the higher resistance and a shunt at the
 *   lower
 * @loss_db: (out): of power: 20 lg (√(Z1/Z2) + √(Z1/Z2 − 1)); the voltages differ by √(Z2/Z1) more
 *
 * Matches two different resistances Z1 > Z2 with the least loss: series √(Z1 (Z1 − Z2)), shunt
 * Z2 √(Z1/(Z1 − Z2)).
 *
 * Returns: %FALSE with @error in %BW_PADS_ERROR
 */
gboolean
bw_pad_minimum_loss (double open_v, double source_ohm, double load_ohm, BwNetwork *network,
                     double *loss_db, GError **error)
{
  g_return_val_if_fail (network != NULL && loss_db != NULL, FALSE);
  double high_ohm = MAX (source_ohm, load_ohm), low_ohm = MIN (source_ohm, load_ohm);
  double apart_ohm = high_ohm - low_ohm;

  begin (network, open_v, source_ohm, load_ohm);
  if (!is_possible (open_v, source_ohm, load_ohm, error)
      || !is_possible (open_v, load_ohm, source_ohm, error))
    return FALSE;
  if (!(apart_ohm > 1e-6 * high_ohm))
    {
      g_set_error_literal (error, BW_PADS_ERROR, BW_PADS_ERROR_LOSS,
                           _ ("The two resistances are alike: no pad is needed"));
      return FALSE;
    }
  double series_ohm = sqrt (high_ohm * apart_ohm);
  double shunt_ohm = low_ohm * sqrt (high_ohm / apart_ohm);
  gboolean down = source_ohm > load_ohm;
  add_element (network, down ? BW_PLACE_SERIES : BW_PLACE_SHUNT, down ? series_ohm : shunt_ohm);
  add_element (network, down ? BW_PLACE_SHUNT : BW_PLACE_SERIES, down ? shunt_ohm : series_ohm);
  *loss_db = 20 * log10 (sqrt (high_ohm / low_ohm) + sqrt (high_ohm / low_ohm - 1));
  return TRUE;
}
