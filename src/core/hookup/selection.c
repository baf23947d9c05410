/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "selection.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"

G_DEFINE_QUARK (bw-selection-error-quark, bw_selection_error)

static const BwKind selects[BW_N_SELECTS] = {
  [BW_SELECT_AV] = { "av", N_ ("external input") },
  [BW_SELECT_AV_WIDE] = { "av-wide", N_ ("external input, 16:9") },
  [BW_SELECT_RGB] = { "rgb", N_ ("RGB") },
};
const BwKindTable bw_selects = { BW_N_SELECTS, selects };

/* What a divider looks like from the set's pin, so low that the pin's own resistance hardly loads
 * it (common practice, no source). */
#define DIVIDER_OHM 220

typedef struct
{
  BwConnector connector;
  BwSelect select;
  int pin;
  BwRange window_v;
  gboolean load_fixed;
} Window;

/* EN 50049-1 / IEC 60933-1 with amendment A2 (pin 8: 1A from 4.5 to 7 V, 1B from 9.5 to 12 V, at
 * least 10 kΩ; pin 16: 1 to 3 V, 75 Ω) and the Japanese 21-pin connector (pin 11: 3 to 5 V, 22 kΩ),
 * from secondary sources. The load is the pin's. */
static const Window windows[] = {
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV, 8, { 9.5, 12 }, FALSE },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_AV_WIDE, 8, { 4.5, 7 }, FALSE },
  { BW_CONNECTOR_PERITELEVISION, BW_SELECT_RGB, 16, { 1, 3 }, TRUE },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_AV, 11, { 3, 5 }, TRUE },
  { BW_CONNECTOR_JAPANESE_21, BW_SELECT_RGB, 16, { 1, 3 }, TRUE },
};

static const Window *
find_window (BwConnector connector, BwSelect select)
{
  for (gsize i = 0; i < G_N_ELEMENTS (windows); i++)
    if (windows[i].connector == connector && windows[i].select == select)
      return &windows[i];
  return NULL;
}

/**
 * bw_select_pin:
 * @connector: of an input
 *
 * Returns: the number of the pin that selects @select; zero: there is none
 */
int
bw_select_pin (BwConnector connector, BwSelect select)
{
  const Window *window = find_window (connector, select);
  return window != NULL ? window->pin : 0;
}

/* What one series resistor may be: R = load × (supply / level − 1). A load that may be anything
 * above its least does not drop what is too much. */
static void
find_range (BwSelection *selection, double supply_v)
{
  double least_ohm = selection->load_ohm * (supply_v / selection->window_v.high - 1);
  double most_ohm = selection->load_ohm * (supply_v / selection->window_v.low - 1);
  if (!selection->load_fixed && supply_v > selection->window_v.high)
    return;
  selection->ohm = (BwRange){ MAX (least_ohm, 0), MAX (most_ohm, 0) };
}

static void
add_element (BwNetwork *network, BwPlace place, double ohm)
{
  if (ohm > 0)
    network->at[network->n++] = (BwElement){ place, ohm };
}

/* The exact network: where one resistor does it, the middle of what it may be in ratio, which wastes
 * less than the middle of the window; else to the middle of the window; or, where the supply itself
 * is in the window, half of the series resistance that the load allows. */
static void
design (const BwSelection *selection, double tolerance, BwNetwork *network)
{
  double supply_v = network->open_v;
  double middle_v = (selection->window_v.low + selection->window_v.high) / 2;
  double load_ohm = selection->load_ohm;
  gboolean fits = supply_v * (1 + tolerance) <= selection->window_v.high;

  if (selection->load_fixed && selection->ohm.low > 0)
    add_element (network, BW_PLACE_SERIES, sqrt (selection->ohm.low * selection->ohm.high));
  else if (selection->load_fixed)
    add_element (network, BW_PLACE_SERIES, load_ohm * (supply_v / middle_v - 1));
  else if (fits || supply_v <= middle_v)
    add_element (network, BW_PLACE_SERIES,
                 load_ohm * (supply_v * (1 - tolerance) / selection->window_v.low - 1) / 2);
  else
    {
      add_element (network, BW_PLACE_SERIES, DIVIDER_OHM * supply_v / middle_v);
      add_element (network, BW_PLACE_SHUNT, DIVIDER_OHM / (1 - middle_v / supply_v));
    }
}

/* Over resistors and supply, and over what the set's pin may be. */
static void
find_levels (BwSelection *selection, double supply_tolerance)
{
  selection->level_v = selection->choice.spread_v;
  if (!selection->load_fixed)
    {
      BwNetwork open = selection->choice.network;
      BwRange open_v;
      open.load_ohm = INFINITY;
      bw_network_spread (&open, bw_series_tolerance (selection->choice.series), supply_tolerance,
                         &open_v);
      selection->level_v.high = open_v.high;
    }
  selection->within = selection->level_v.low >= selection->window_v.low
                      && selection->level_v.high <= selection->window_v.high;
}

static gboolean
is_supply (double supply_v, double tolerance, const Window *window, GError **error)
{
  char mark = bw_quantity_locale_mark ();
  if (supply_v >= window->window_v.low && supply_v <= 50 && tolerance >= 0 && tolerance < 1)
    return TRUE;
  g_autofree char *low = bw_quantity_format (window->window_v.low, BW_DIMENSION_VOLTAGE, 3, mark);
  g_set_error (error, BW_SELECTION_ERROR, BW_SELECTION_ERROR_SUPPLY,
               _ ("Pin %1$d needs a supply from %2$s to 50 V"), window->pin, low);
  return FALSE;
}

/**
 * bw_selection_compute:
 * @connector: of the input
 * @supply_v: what there is, such as 5 or 12 V
 * @supply_tolerance: of it, as a share: %BW_SUPPLY_TOLERANCE
 * @series: of the resistors
 * @selection: (out caller-allocates): resistors and levels
 *
 * Returns: %FALSE with @error in %BW_SELECTION_ERROR
 */
gboolean
bw_selection_compute (BwConnector connector, BwSelect select, double supply_v,
                      double supply_tolerance, BwSeries series, BwSelection *selection,
                      GError **error)
{
  const Window *window = find_window (connector, select);
  if (window == NULL)
    {
      g_set_error (error, BW_SELECTION_ERROR, BW_SELECTION_ERROR_NO_PIN,
                   _ ("%1$s has no pin that selects: %2$s"),
                   bw_kind_label (&bw_connectors, connector), bw_kind_label (&bw_selects, select));
      return FALSE;
    }
  if (!is_supply (supply_v, supply_tolerance, window, error))
    return FALSE;

  const BwPin *pin = bw_connector_pin (connector, BW_EDITION_CURRENT, window->pin);
  BwNetwork ideal = { .open_v = supply_v, .load_ohm = pin->load_ohm };
  *selection = (BwSelection){
    .select = select,
    .pin = window->pin,
    .ground = pin->ground,
    .window_v = window->window_v,
    .load_ohm = pin->load_ohm,
    .load_fixed = window->load_fixed,
  };
  find_range (selection, supply_v);
  design (selection, supply_tolerance, &ideal);
  bw_network_choose (&ideal, series, supply_tolerance, &selection->choice);
  find_levels (selection, supply_tolerance);
  return TRUE;
}

/* "110 Ω in series", "470 Ω in series and 430 Ω to ground" */
static char *
resistors (const BwNetwork *network, char mark)
{
  if (network->n == 0)
    return g_strdup (_ ("no resistor"));
  g_autofree char *series = bw_quantity_format (network->at[0].ohm, BW_DIMENSION_RESISTANCE, 3,
                                                mark);
  if (network->n == 1)
    return g_strdup_printf (_ ("%s in series"), series);
  g_autofree char *shunt = bw_quantity_format (network->at[1].ohm, BW_DIMENSION_RESISTANCE, 3,
                                               mark);
  return g_strdup_printf (_ ("%1$s in series and %2$s to ground"), series, shunt);
}

/**
 * bw_selection_says:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the resistors and the level as a sentence
 */
char *
bw_selection_says (const BwSelection *selection, char mark)
{
  const BwPadChoice *choice = &selection->choice;
  g_autofree char *supply = bw_quantity_format (choice->network.open_v, BW_DIMENSION_VOLTAGE, 3,
                                                mark);
  g_autofree char *parts = resistors (&choice->network, mark);
  g_autofree char *level = bw_quantity_format (choice->figures.level_v, BW_DIMENSION_VOLTAGE, 3,
                                               mark);
  g_autofree char *spread = bw_quantity_format_range (selection->level_v, BW_DIMENSION_VOLTAGE, 3,
                                                      mark);
  g_autofree char *window = bw_quantity_format_range (selection->window_v, BW_DIMENSION_VOLTAGE, 3,
                                                      mark);
  return g_strdup_printf (
      _ ("Pin %1$d selects %2$s: %3$s from %4$s gives %5$s (%6$s over tolerances); it wants "
         "%7$s."),
      selection->pin, bw_kind_label (&bw_selects, selection->select), parts, supply, level, spread,
      window);
}
