/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity-private.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

const BwUnit bw_units[] = {
  { BW_DIMENSION_FREQUENCY, "Hz", "Hz", 0, 1, TRUE },
  { BW_DIMENSION_FREQUENCY, "kHz", "kHz", 3, 1, TRUE },
  { BW_DIMENSION_FREQUENCY, "MHz", "MHz", 6, 1, TRUE },
  { BW_DIMENSION_FREQUENCY, "GHz", "GHz", 9, 1, TRUE },
  { BW_DIMENSION_TIME, "s", "s", 0, 1, TRUE },
  { BW_DIMENSION_TIME, "ms", "ms", -3, 1, TRUE },
  { BW_DIMENSION_TIME, "us", "µs", -6, 1, TRUE },
  { BW_DIMENSION_TIME, "ns", "ns", -9, 1, TRUE },
  { BW_DIMENSION_LENGTH, "m", "m", 0, 1, TRUE },
  { BW_DIMENSION_LENGTH, "cm", "cm", -2, 1, FALSE },
  { BW_DIMENSION_LENGTH, "mm", "mm", -3, 1, TRUE },
  { BW_DIMENSION_LENGTH, "um", "µm", -6, 1, FALSE },
  { BW_DIMENSION_LENGTH, "in", "in", -2, 2.54, FALSE },
  { BW_DIMENSION_VOLTAGE, "V", "V", 0, 1, TRUE },
  { BW_DIMENSION_VOLTAGE, "mV", "mV", -3, 1, TRUE },
  { BW_DIMENSION_IRE, "IRE", "IRE", 0, 1, TRUE },
  { BW_DIMENSION_RESISTANCE, "ohm", "Ω", 0, 1, TRUE },
  { BW_DIMENSION_RESISTANCE, "kohm", "kΩ", 3, 1, TRUE },
  { BW_DIMENSION_RESISTANCE, "Mohm", "MΩ", 6, 1, TRUE },
  { BW_DIMENSION_CAPACITANCE, "F", "F", 0, 1, TRUE },
  { BW_DIMENSION_CAPACITANCE, "mF", "mF", -3, 1, FALSE }, /* capacitors are marked 2200 µF */
  { BW_DIMENSION_CAPACITANCE, "uF", "µF", -6, 1, TRUE },
  { BW_DIMENSION_CAPACITANCE, "nF", "nF", -9, 1, TRUE },
  { BW_DIMENSION_CAPACITANCE, "pF", "pF", -12, 1, TRUE },
  { BW_DIMENSION_CURRENT, "A", "A", 0, 1, TRUE },
  { BW_DIMENSION_CURRENT, "mA", "mA", -3, 1, TRUE },
  { BW_DIMENSION_FRACTION, "%", "%", -2, 1, TRUE },
  { BW_DIMENSION_TV_LINES, "lines", NULL, 0, 1, TRUE },
  { BW_DIMENSION_LINES, "lines", NULL, 0, 1, TRUE },
  { BW_DIMENSION_PIXELS, "px", "px", 0, 1, TRUE },
  { BW_DIMENSION_INDUCTANCE, "H", "H", 0, 1, TRUE },
  { BW_DIMENSION_INDUCTANCE, "mH", "mH", -3, 1, TRUE },
  { BW_DIMENSION_INDUCTANCE, "uH", "µH", -6, 1, TRUE },
  { BW_DIMENSION_APPARENT_POWER, "VA", "VA", 0, 1, TRUE },
  { BW_DIMENSION_APPARENT_POWER, "kVA", "kVA", 3, 1, TRUE },
  { BW_DIMENSION_ENERGY, "J", "J", 0, 1, TRUE },
  { BW_DIMENSION_ENERGY, "mJ", "mJ", -3, 1, TRUE },
  { BW_DIMENSION_DURATION, "s", "s", 0, 1, TRUE },
  { BW_DIMENSION_DURATION, "h", "h", 3, 3.6, TRUE },
  { BW_DIMENSION_TEMPERATURE, "degC", "°C", 0, 1, TRUE },
};
const guint bw_n_units = G_N_ELEMENTS (bw_units);

/* Other spellings that people, plates and keyboards produce. A prefix keeps its case: "mHz" is not
 * a megahertz. */
static const struct
{
  const char *written;
  const char *name;
} spellings[] = {
  { "\u00b5s", "us" },      { "\u03bcs", "us" },      { "\u00b5m", "um" },
  { "\u03bcm", "um" },      { "\u03a9", "ohm" },      { "\u2126", "ohm" },
  { "k\u03a9", "kohm" },    { "k\u2126", "kohm" },    { "M\u03a9", "Mohm" },
  { "M\u2126", "Mohm" },    { "ohms", "ohm" },        { "Ohm", "ohm" },
  { "R", "ohm" },           { "k", "kohm" },          { "K", "kohm" },
  { "kOhm", "kohm" },       { "k", "kHz" },           { "\"", "in" },
  { "\u2033", "in" },       { "\u201d", "in" },       { "''", "in" },
  { "inch", "in" },         { "inches", "in" },       { "hz", "Hz" },
  { "HZ", "Hz" },           { "khz", "kHz" },         { "KHz", "kHz" },
  { "KHZ", "kHz" },         { "kHZ", "kHz" },         { "Khz", "kHz" },
  { "MHZ", "MHz" },         { "Mhz", "MHz" },         { "\u00b5F", "uF" },
  { "\u03bcF", "uF" },      { "v", "V" },             { "volt", "V" },
  { "volts", "V" },         { "VAC", "V" },           { "V AC", "V" },
  { "V~", "V" },            { "V ~", "V" },           { "Vpp", "V" },
  { "V p-p", "V" },         { "Vp-p", "V" },          { "mv", "mV" },
  { "mVpp", "mV" },         { "mV p-p", "mV" },       { "mVp-p", "mV" },
  { "a", "A" },             { "amp", "A" },           { "amps", "A" },
  { "ire", "IRE" },         { "line", "lines" },      { "Lines", "lines" },
  { "pixels", "px" },       { "pixel", "px" },        { "\u00b5H", "uH" },
  { "\u03bcH", "uH" },      { "C", "degC" },          { "\u00b0C", "degC" },
  { "\u2103", "degC" },     { "hours", "h" },         { "hour", "h" },
};

/* Spellings of TV lines alone: scanning lines are none. */
static const char *const tv_line_spellings[] = { "TVL", "tvl", "TV lines", "TVL/PH" };

/* So many are several in every language. */
#define MANY_LINES 1000000

G_DEFINE_QUARK (bw - quantity - error - quark, bw_quantity_error)

static const char *
word_for_lines (gulong n)
{
  /* Translators: the unit of scanning lines and of TV lines, after their number. Part of a line takes
   * the form of several. */
  return g_dngettext (GETTEXT_PACKAGE, "line", "lines", n);
}

/* Languages have a form for each of these, or share it among them. */
static gboolean
is_word_for_lines (const char *name)
{
  for (gulong n = 0; n <= 12; n++)
    if (strcmp (word_for_lines (n), name) == 0)
      return TRUE;
  return FALSE;
}

/**
 * bw_unit_after:
 * @number: what stands before it
 *
 * Returns: (transfer none): @unit as people read it, in their language: “µs”, “Ω”, “lines”
 */
const char *
bw_unit_after (const BwUnit *unit, double number)
{
  g_return_val_if_fail (unit != NULL, "");
  if (unit->screen != NULL)
    return unit->screen;
  double size = fabs (number);
  gboolean is_whole = size < MANY_LINES && bw_near (size, floor (size), 0);
  return word_for_lines (is_whole ? (gulong) size : MANY_LINES);
}

static const BwUnit *
unit_named (BwDimension dimension, const char *name)
{
  for (gsize i = 0; i < bw_n_units; i++)
    if (bw_units[i].dimension == dimension && strcmp (bw_units[i].name, name) == 0)
      return &bw_units[i];
  return NULL;
}

/* The unit whose name is a word of the reader's language, if @name is such a word. Asking for the
 * translations takes longer than reading a whole quantity, so this comes last, and not where no unit is
 * written. */
static const BwUnit *
unit_of_words (BwDimension dimension, const char *name)
{
  const BwUnit *base = bw_unit_base (dimension);
  return *name != '\0' && base->screen == NULL && is_word_for_lines (name) ? base : NULL;
}

/**
 * bw_unit_find:
 * @name: the unit, in any of its spellings, or as people read it in their language
 *
 * Returns: (transfer none) (nullable): the unit of @dimension
 */
const BwUnit *
bw_unit_find (BwDimension dimension, const char *name)
{
  g_return_val_if_fail (dimension < BW_N_DIMENSIONS && name != NULL, NULL);
  const BwUnit *found = unit_named (dimension, name);
  for (gsize i = 0; i < G_N_ELEMENTS (spellings) && found == NULL; i++)
    if (strcmp (spellings[i].written, name) == 0)
      found = unit_named (dimension, spellings[i].name);
  if (dimension == BW_DIMENSION_TV_LINES)
    for (gsize i = 0; i < G_N_ELEMENTS (tv_line_spellings) && found == NULL; i++)
      if (strcmp (tv_line_spellings[i], name) == 0)
        found = bw_unit_base (dimension);
  return found != NULL ? found : unit_of_words (dimension, name);
}

/**
 * bw_unit_base:
 *
 * Returns: (transfer none): the unit in which values of @dimension are held
 */
const BwUnit *
bw_unit_base (BwDimension dimension)
{
  for (gsize i = 0; i < bw_n_units; i++)
    if (bw_units[i].dimension == dimension)
      return &bw_units[i];
  return NULL;
}

/**
 * bw_quantity_base_unit:
 *
 * Returns: (transfer none): the name of the first unit of @dimension, in which values are held
 * (except %BW_DIMENSION_FRACTION, held as a fraction).
 */
const char *
bw_quantity_base_unit (BwDimension dimension)
{
  g_return_val_if_fail (dimension < BW_N_DIMENSIONS, NULL);
  return bw_unit_base (dimension)->name;
}

/**
 * bw_quantity_units:
 *
 * Returns: (transfer none): the units that a quantity of @dimension may be written in, for error
 * messages and hints, in the reader's language.
 */
const char *
bw_quantity_units (BwDimension dimension)
{
  /* Translators: units are written as they stand here; what stands in brackets is another spelling. */
  static const char *const allowed[BW_N_DIMENSIONS] = {
    [BW_DIMENSION_FREQUENCY] = N_ ("Hz, kHz, MHz, GHz"),
    [BW_DIMENSION_TIME] = N_ ("s, ms, us (or µs), ns"),
    [BW_DIMENSION_LENGTH] = N_ ("m, cm, mm, um (or µm), in"),
    [BW_DIMENSION_VOLTAGE] = "V, mV",
    [BW_DIMENSION_IRE] = "IRE",
    [BW_DIMENSION_RESISTANCE] = N_ ("ohm (or Ω), kohm, Mohm"),
    [BW_DIMENSION_CAPACITANCE] = N_ ("F, mF, uF (or µF), nF, pF"),
    [BW_DIMENSION_CURRENT] = "A, mA",
    [BW_DIMENSION_FRACTION] = "%",
    [BW_DIMENSION_TV_LINES] = N_ ("lines (or TVL)"),
    [BW_DIMENSION_PIXELS] = "px",
    [BW_DIMENSION_INDUCTANCE] = N_ ("H, mH, uH (or µH)"),
    [BW_DIMENSION_APPARENT_POWER] = "VA, kVA",
    [BW_DIMENSION_ENERGY] = "J, mJ",
    [BW_DIMENSION_DURATION] = "s, h",
    [BW_DIMENSION_TEMPERATURE] = N_ ("degC (or °C)"),
  };
  g_return_val_if_fail (dimension < BW_N_DIMENSIONS, NULL);
  return allowed[dimension] != NULL ? _ (allowed[dimension]) : word_for_lines (MANY_LINES);
}

/**
 * bw_quantity_locale_mark:
 *
 * Returns: the decimal mark of the current locale if it is a point or a comma, else a point.
 */
char
bw_quantity_locale_mark (void)
{
  const char *mark = localeconv ()->decimal_point;
  return mark != NULL && mark[0] == ',' ? ',' : '.';
}

/**
 * bw_measured_uncertainty:
 * @accuracy: of the instrument, as a share of what it reads; zero: not known
 *
 * Returns: by how much the value may be off: what its digits leave open, or the instrument if that
 * is coarser
 */
double
bw_measured_uncertainty (const BwMeasured *measured, double accuracy)
{
  g_return_val_if_fail (measured != NULL && accuracy >= 0, 0);
  return MAX (measured->half_digit, accuracy * fabs (measured->value));
}

/**
 * bw_near:
 * @tolerance: the largest difference allowed, in the unit of @a and @b
 *
 * Returns: whether @a and @b differ by at most @tolerance; never for a NaN.
 */
gboolean
bw_near (double a, double b, double tolerance)
{
  return fabs (a - b) <= tolerance;
}
