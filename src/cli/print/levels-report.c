/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "levels-report.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "core/base/quantity.h"
#include "core/signal/synthesis.h"

static gboolean
is_coded (const BwLevelsReport *view)
{
  return view->signal == BW_SIGNAL_COMPOSITE || view->signal == BW_SIGNAL_YC;
}

/* SECAM's chroma is frequency modulated and has no such amplitude. */
static gboolean
has_chroma (const BwLevelsReport *view)
{
  return bw_system_has_phase (view->system);
}

static gboolean
has_hue (const BwCodedLevels *coded)
{
  return coded->chroma_pp_v > 1e-9;
}

/* No conductor of Y/C carries the sum of the two: "max_v" and "min_v" are of Y, "c_max_v" and
 * "c_min_v" of C. */
static void
coded_to_json (const BwLevelsReport *view, const BwCodedLevels *coded, BwJson *json)
{
  gboolean chroma = has_chroma (view);
  bw_json_number (json, "luma_v", coded->luma_v);
  bw_json_number_if (json, "chroma_pp_v", chroma, coded->chroma_pp_v);
  bw_json_number_if (json, "phase_deg", chroma && has_hue (coded), coded->phase_deg);
  if (view->signal == BW_SIGNAL_YC)
    {
      bw_json_number (json, "max_v", coded->luma_v);
      bw_json_number (json, "min_v", coded->luma_v);
      bw_json_number_if (json, "c_max_v", chroma, coded->chroma_pp_v / 2);
      bw_json_number_if (json, "c_min_v", chroma, -coded->chroma_pp_v / 2);
      return;
    }
  bw_json_number_if (json, "max_v", chroma, coded->max_v);
  bw_json_number_if (json, "min_v", chroma, coded->min_v);
}

static void
three_to_json (const char *const keys[3], const double volts[3], BwJson *json)
{
  for (int i = 0; i < 3; i++)
    bw_json_number (json, keys[i], volts[i]);
}

static void
bar_to_json (const BwLevelsReport *view, BwBar bar, BwJson *json)
{
  static const char *const component_keys[3] = { "y_v", "pb_v", "pr_v" };
  static const char *const rgb_keys[3] = { "r_v", "g_v", "b_v" };
  BwBarLevels levels;

  bw_bar_levels (view->system, view->form, bar, &levels);
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "name", bw_kind_id (&bw_bars, bar));
  if (is_coded (view))
    coded_to_json (view, &levels.coded, json);
  else if (view->signal == BW_SIGNAL_COMPONENT)
    three_to_json (component_keys, levels.component_v, json);
  else
    three_to_json (rgb_keys, levels.rgb_v, json);
  bw_json_end_object (json);
}

/**
 * bw_levels_report_to_json:
 *
 * Adds the levels and the bars to the object that @json is in.
 */
void
bw_levels_report_to_json (const BwLevelsReport *view, BwJson *json)
{
  BwSignalLevels levels;
  bw_signal_levels (view->system, view->signal, &levels);

  bw_json_string (json, "system", bw_kind_id (&bw_colour_systems, view->system));
  bw_json_string (json, "kind", bw_kind_id (&bw_signals, view->signal));
  bw_json_number_if (json, "mv_per_ire", levels.volts_per_ire > 0, levels.volts_per_ire * 1000);
  bw_json_number (json, "white_v", levels.white_v);
  bw_json_number (json, "black_v", levels.black_v);
  bw_json_number (json, "blanking_v", levels.blanking_v);
  bw_json_number (json, "sync_v", levels.sync_v);
  bw_json_number_if (json, "burst_pp_v", levels.burst_pp_v > 0, levels.burst_pp_v);
  bw_json_number_if (json, "setup_ire", levels.volts_per_ire > 0, levels.setup_ire);
  bw_json_number_if (json, "subcarrier_hz", levels.subcarrier_hz > 0, levels.subcarrier_hz);
  bw_json_begin_array (json, "bars");
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    bar_to_json (view, bar, json);
  bw_json_end_array (json);
  bw_levels_conductors_to_json (view, json);
}

/* Millivolts to a tenth, which a scope does not show better. */
static char *
millivolts (double volts)
{
  double tenths = round (volts * 10000);
  return g_strdup_printf ("%.1f mV", (fabs (tenths) > 0 ? tenths : 0) / 10);
}

static void
add_level (BwTable *table, const BwSignalLevels *levels, const char *name, double volts)
{
  g_autofree char *text = millivolts (volts);
  g_autofree char *ire = levels->volts_per_ire > 0
                             ? g_strdup_printf ("%.1f IRE", volts / levels->volts_per_ire)
                             : g_strdup ("");
  bw_table_add_row (table, name, text, ire, NULL);
}

/* Of the systems whose burst no standard that was read lays down. */
static void
append_usual_burst (const BwLevelsReport *view, GString *text)
{
  BwWireForm form;
  bw_wire_form_standard (view->system, view->signal, view->sync, BW_SHAPE_BILEVEL, &form);
  bw_synthesis_add_burst (&form);
  if (form.burst_pp_v > 0)
    g_string_append_printf (text,
                            _ ("Burst: common practice, no source: as high as sync, %.0f mV peak to "
                               "peak\n"),
                            form.burst_pp_v * 1000);
}

static void
append_levels (const BwLevelsReport *view, GString *text)
{
  BwSignalLevels levels;
  g_autoptr (BwTable) table = bw_table_new (3);

  bw_signal_levels (view->system, view->signal, &levels);
  bw_table_set_right (table, 1);
  bw_table_set_right (table, 2);
  add_level (table, &levels, _ ("White"), levels.white_v);
  add_level (table, &levels, _ ("Black"), levels.black_v);
  add_level (table, &levels, _ ("Blanking"), levels.blanking_v);
  add_level (table, &levels, _ ("Sync tip"), levels.sync_v);
  if (levels.burst_pp_v > 0)
    add_level (table, &levels, _ ("Burst, peak to peak"), levels.burst_pp_v);
  bw_table_append_to (table, text, 0);
  if (!(levels.burst_pp_v > 0))
    append_usual_burst (view, text);
  if (levels.subcarrier_hz > 0)
    {
      g_autofree char *subcarrier = bw_quantity_format (
          levels.subcarrier_hz, BW_DIMENSION_FREQUENCY, 10, bw_quantity_locale_mark ());
      g_string_append_printf (text, _ ("Subcarrier: %s\n"), subcarrier);
    }
}

static void
add_coded_bar (BwTable *table, const char *name, const BwCodedLevels *coded, gboolean apart)
{
  double chroma_v = coded->chroma_pp_v / 2;
  g_autofree char *luma = millivolts (coded->luma_v);
  g_autofree char *chroma = millivolts (coded->chroma_pp_v);
  g_autofree char *phase
      = has_hue (coded) ? g_strdup_printf ("%.1f°", coded->phase_deg) : g_strdup ("–");
  g_autofree char *highest = millivolts (apart ? chroma_v : coded->max_v);
  g_autofree char *lowest = millivolts (apart ? -chroma_v : coded->min_v);
  bw_table_add_row (table, name, luma, chroma, phase, highest, lowest, NULL);
}

static void
add_plain_bar (BwTable *table, const char *name, const double volts[3])
{
  g_autofree char *first = millivolts (volts[0]);
  g_autofree char *second = millivolts (volts[1]);
  g_autofree char *third = millivolts (volts[2]);
  bw_table_add_row (table, name, first, second, third, NULL);
}

static BwTable *
bars_table (const BwLevelsReport *view)
{
  BwTable *table = bw_table_new (is_coded (view) ? 6 : 4);
  for (guint column = 1; column < (is_coded (view) ? 6 : 4); column++)
    bw_table_set_right (table, column);
  if (view->signal == BW_SIGNAL_YC)
    bw_table_add_row (table, _ ("bar"), "Y", _ ("C p-p"), _ ("phase"), _ ("C highest"),
                      _ ("C lowest"), NULL);
  else if (is_coded (view))
    bw_table_add_row (table, _ ("bar"), _ ("luma"), _ ("chroma p-p"), _ ("phase"), _ ("highest"),
                      _ ("lowest"), NULL);
  else if (view->signal == BW_SIGNAL_COMPONENT)
    bw_table_add_row (table, _ ("bar"), "Y", "Pb", "Pr", NULL);
  else
    bw_table_add_row (table, _ ("bar"), "R", "G", "B", NULL);
  return table;
}

/**
 * bw_levels_report_append_text:
 *
 * Appends the levels and a table of the colour bars, for reading.
 */
void
bw_levels_report_append_text (const BwLevelsReport *view, GString *text)
{
  g_autoptr (BwTable) table = bars_table (view);

  g_string_append_printf (text, _ ("%s, %s, across 75 Ω, above blanking\n\n"),
                          bw_kind_label (&bw_colour_systems, view->system),
                          bw_kind_label (&bw_signals, view->signal));
  append_levels (view, text);
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwBarLevels levels;
      const char *name = bw_kind_label (&bw_bars, bar);
      bw_bar_levels (view->system, view->form, bar, &levels);
      if (is_coded (view))
        add_coded_bar (table, name, &levels.coded, view->signal == BW_SIGNAL_YC);
      else
        add_plain_bar (table, name,
                       view->signal == BW_SIGNAL_COMPONENT ? levels.component_v : levels.rgb_v);
    }
  g_string_append_c (text, '\n');
  bw_table_append_to (table, text, 0);
  if (is_coded (view) && !has_chroma (view))
    g_string_append (text, _ ("\nThis system has no chroma of a fixed amplitude: luma alone.\n"));
  if (is_coded (view) && has_chroma (view) && bw_system_alternates (view->system))
    g_string_append (
        text, _ ("\nOn alternate lines the phase is mirrored: 360° minus the phase shown.\n"));
  if (view->tell_conductors)
    bw_levels_conductors_append_text (view, text);
}
