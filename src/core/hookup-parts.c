/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "conductor.h"
#include "coupling.h"

/* What to buy or to take from the drawer. */

static guint
count_bits (guint set)
{
  guint n = 0;
  for (; set != 0; set &= set - 1)
    n++;
  return n;
}

/**
 * bw_plan_step_conductors:
 * @before: what comes to the step
 *
 * Returns: the set of BwConductor that a passive part of this step stands in
 */
guint
bw_plan_step_conductors (const BwPlanStep *step, const BwPlanSignal *before)
{
  guint all = bw_signal_conductors (before->source.signal, step->sync);
  guint own = 0;
  for (guint i = 0; i < BW_N_CONDUCTORS; i++)
    if ((all & BW_BIT (i)) && bw_conductor_is_sync_alone (i))
      own |= BW_BIT (i);
  return step->kind == BW_STEP_SERIES_RESISTOR || step->kind == BW_STEP_SYNC_TERMINATOR
             ? own
             : all & ~own;
}

/* A bar as long as the line falls by this much; the clamp of the input mends the rest (common
 * practice, no source). */
#define LINE_TILT 0.01

/**
 * bw_plan_capacitor_f:
 * @step: of a coupling capacitor
 *
 * Returns: the next value of E12 that is not smaller than what the line needs, in farads
 */
double
bw_plan_capacitor_f (const BwPlanStep *step)
{
  BwRasterFigures figures;
  bw_raster_figures (step->after.raster, &figures);
  double ohm = step->after.source.source_ohm + 75;
  double least_f = bw_coupling_farad (figures.h_active_s, ohm, LINE_TILT);
  double value = bw_preferred_ohm (least_f * 1e12, BW_SERIES_E12); /* counted in picofarads */
  for (double up = 1.1; value < least_f * 1e12; up *= 1.1)
    value = bw_preferred_ohm (least_f * 1e12 * up, BW_SERIES_E12);
  return value * 1e-12;
}

/**
 * bw_hookup_add_part:
 * @ideal_ohm: zero: none
 * @value_ohm: of the chosen series; zero: not a resistor
 */
void
bw_hookup_add_part (BwHookup *hookup, const char *what, double ideal_ohm, double value_ohm,
                    guint count, const char *price)
{
  BwHookupPart *part = g_new0 (BwHookupPart, 1);
  part->what = g_strdup (what);
  part->ideal_ohm = ideal_ohm;
  part->series = value_ohm > 0 ? hookup->choice.series : BW_N_SERIES;
  part->value_ohm = value_ohm;
  part->count = count;
  part->price = g_strdup (price);
  g_ptr_array_add (hookup->parts, part);
}

static void
add_pad (BwHookup *hookup, const BwPlanStep *step, guint n)
{
  const char *price = step->adaptor->price;
  bw_hookup_add_part (hookup, _ ("resistor, in series in the attenuator"), step->ideal.at[0].ohm,
                      step->network.at[0].ohm, 2 * n, "");
  bw_hookup_add_part (hookup, _ ("resistor, to the return in the attenuator"),
                      step->ideal.at[1].ohm, step->network.at[1].ohm, n, price);
}

static void
add_capacitor (BwHookup *hookup, const BwPlanStep *step, guint n)
{
  char number[32];
  g_ascii_formatd (number, sizeof number, "%.3g", bw_plan_capacitor_f (step) * 1e6);
  g_strdelimit (number, ".", bw_quantity_locale_mark ());
  g_autofree char *what = g_strdup_printf (_ ("coupling capacitor, %s µF"), number);
  bw_hookup_add_part (hookup, what, 0, 0, n, step->adaptor->price);
}

static void
add_step_parts (BwHookup *hookup, const BwPlanStep *step, const BwPlanSignal *before)
{
  guint n = count_bits (bw_plan_step_conductors (step, before));
  switch ((BwStepKind) step->kind)
    {
    case BW_STEP_SERIES_RESISTOR:
      bw_hookup_add_part (hookup, step->adaptor->name, step->ideal.at[0].ohm,
                          step->network.at[0].ohm, n, step->adaptor->price);
      break;
    case BW_STEP_VIDEO_PAD:
      add_pad (hookup, step, n);
      break;
    case BW_STEP_CAPACITOR:
      add_capacitor (hookup, step, n);
      break;
    case BW_STEP_TERMINATOR:
    case BW_STEP_SYNC_TERMINATOR:
      bw_hookup_add_part (hookup, step->adaptor->name, 75, 75, n, step->adaptor->price);
      break;
    case BW_STEP_LEAD:
    case BW_STEP_BOX:
      bw_hookup_add_part (hookup,
                          step->adaptor != NULL ? step->adaptor->name
                                                : _ ("lead made to the wiring list"),
                          0, 0, 1, step->adaptor != NULL ? step->adaptor->price : "");
      break;
    default:
      break;
    }
}

/**
 * bw_hookup_add_parts:
 * @start: what the source gives
 *
 * Lists what is bought for each step of the plan.
 */
void
bw_hookup_add_parts (BwHookup *hookup, const BwPlanSignal *start)
{
  const BwPlanSignal *before = start;
  for (guint i = 0; i < hookup->plan->n; i++)
    {
      add_step_parts (hookup, &hookup->plan->at[i], before);
      before = &hookup->plan->at[i].after;
    }
}

/* RFC 4180: quotes around a field that needs them, doubled inside. A spreadsheet takes a field that
 * begins with one of these signs for a formula, so an apostrophe stands before it. */
static void
append_field (GString *csv, const char *text, gboolean last)
{
  const char *formula = *text != '\0' && strchr ("=+-@\t", *text) != NULL ? "'" : "";
  g_autoptr (GString) escaped = g_string_new (text);
  g_string_replace (escaped, "\"", "\"\"", 0);
  g_string_append_printf (csv, "\"%s%s\"%s", formula, escaped->str, last ? "\r\n" : ",");
}

static void
append_number (GString *csv, double value)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  g_string_append_printf (csv, "%s,",
                          value > 0 ? g_ascii_formatd (number, sizeof number, "%.6g", value) : "");
}

/**
 * bw_hookup_parts_csv:
 *
 * Returns: (transfer full): the parts as comma-separated values (RFC 4180), with a line of heads;
 * numbers have a decimal point and are in ohms
 */
char *
bw_hookup_parts_csv (const BwHookup *hookup)
{
  GString *csv = g_string_new ("what,ideal_ohm,series,value_ohm,count,price\r\n");
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      append_field (csv, part->what, FALSE);
      append_number (csv, part->ideal_ohm);
      g_string_append_printf (csv, "%s,", part->series < BW_N_SERIES
                                              ? bw_kind_label (&bw_series, part->series)
                                              : "");
      append_number (csv, part->value_ohm);
      g_string_append_printf (csv, "%u,", part->count);
      append_field (csv, part->price, TRUE);
    }
  return g_string_free (csv, FALSE);
}
