/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/base/quantity.h"

#include <float.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "support.h"

#define HZ BW_DIMENSION_FREQUENCY
#define SECOND BW_DIMENSION_TIME
#define METRE BW_DIMENSION_LENGTH
#define VOLT BW_DIMENSION_VOLTAGE
#define IRE BW_DIMENSION_IRE
#define OHM BW_DIMENSION_RESISTANCE
#define FARAD BW_DIMENSION_CAPACITANCE
#define AMPERE BW_DIMENSION_CURRENT
#define SHARE BW_DIMENSION_FRACTION
#define TV_LINES BW_DIMENSION_TV_LINES
#define LINES BW_DIMENSION_LINES
#define PIXELS BW_DIMENSION_PIXELS

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/quantity/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* Reading. The prefixes are those of the SI brochure (9th edition, table 7). Every value is exact:
 * the double nearest to the decimal number in the base unit. */

typedef struct
{
  const char *name;
  const char *text;
  BwDimension dimension;
  char mark;
  double value;
} ParseCase;

static const ParseCase parse_cases[] = {
  { "hertz", "50 Hz", HZ, '.', 50.0 },
  { "kilohertz", "15.734 kHz", HZ, '.', 15734.0 },
  { "megahertz", "4.43361875 MHz", HZ, '.', 4433618.75 },
  { "gigahertz", "1 GHz", HZ, '.', 1e9 },
  { "kilohertz-lower-case", "15.625 khz", HZ, '.', 15625.0 },
  { "hertz-lower-case", "50 hz", HZ, '.', 50.0 },
  { "second", "2 s", SECOND, '.', 2.0 },
  { "millisecond", "20 ms", SECOND, '.', 0.02 },
  { "microsecond-ascii", "4.7 us", SECOND, '.', 4.7e-6 },
  { "microsecond-micro-sign", "4.7 \u00b5s", SECOND, '.', 4.7e-6 },
  { "microsecond-greek-mu", "4.7 \u03bcs", SECOND, '.', 4.7e-6 },
  { "nanosecond", "140 ns", SECOND, '.', 1.4e-7 },
  { "metre", "0.35 m", METRE, '.', 0.35 },
  { "centimetre", "35 cm", METRE, '.', 0.35 },
  { "millimetre", "0.25 mm", METRE, '.', 2.5e-4 },
  { "micrometre", "250 \u00b5m", METRE, '.', 2.5e-4 },
  { "inch-mark", "20\"", METRE, '.', 0.508 },
  { "inch-double-prime", "20\u2033", METRE, '.', 0.508 },
  { "volt", "1 V", VOLT, '.', 1.0 },
  { "the-least", "1e-30 V", VOLT, '.', 1e-30 },
  { "the-most", "-1e30 V", VOLT, '.', -1e30 },
  { "zero-with-an-exponent", "0.0e-999 V", VOLT, '.', 0 },
  { "millivolt", "714 mV", VOLT, '.', 0.714 },
  { "ire", "7.5 IRE", IRE, '.', 7.5 },
  { "ohm-ascii", "75 ohm", OHM, '.', 75.0 },
  { "ohms", "75 ohms", OHM, '.', 75.0 },
  { "ohm-greek-omega", "75 \u03a9", OHM, '.', 75.0 },
  { "ohm-sign", "75 \u2126", OHM, '.', 75.0 },
  { "kilohm", "1.2 k\u03a9", OHM, '.', 1200.0 },
  { "kilohm-ascii", "1.2 kohm", OHM, '.', 1200.0 },
  { "megohm", "1 M\u2126", OHM, '.', 1e6 },
  { "farad", "1 F", FARAD, '.', 1.0 },
  { "millifarad", "2.2 mF", FARAD, '.', 2.2e-3 },
  { "microfarad-ascii", "220uF", FARAD, '.', 220e-6 },
  { "microfarad-micro-sign", "220 \u00b5F", FARAD, '.', 220e-6 },
  { "microfarad-greek-mu", "4,7 \u03bcF", FARAD, ',', 4.7e-6 },
  { "nanofarad", "47 nF", FARAD, '.', 47e-9 },
  { "picofarad", "470 pF", FARAD, '.', 470e-12 },
  { "ampere", "1.4 A", AMPERE, '.', 1.4 },
  { "milliampere", "900 mA", AMPERE, '.', 0.9 },
  { "percent", "5 %", SHARE, '.', 0.05 },
  { "tv-lines", "600 lines", TV_LINES, '.', 600.0 },
  { "one-line", "1 line", LINES, '.', 1.0 },
  { "half-line", "262.5 lines", LINES, '.', 262.5 },
  { "pixels", "720 px", PIXELS, '.', 720.0 },
  { "no-space", "15.734kHz", HZ, '.', 15734.0 },
  { "many-spaces", "  15.734   kHz  ", HZ, '.', 15734.0 },
  { "tab", "\t15.734\tkHz\t", HZ, '.', 15734.0 },
  { "no-break-space", "15.734\u00a0kHz", HZ, '.', 15734.0 },
  { "narrow-no-break-space", "15.734\u202fkHz", HZ, '.', 15734.0 },
  { "thin-space", "\u200915.734\u2009kHz\u2009", HZ, '.', 15734.0 },
  { "decimal-comma", "15,734 kHz", HZ, ',', 15734.0 },
  { "decimal-comma-no-space", "4,7\u00b5s", SECOND, ',', 4.7e-6 },
  { "plus", "+0.3 V", VOLT, '.', 0.3 },
  { "hyphen-minus", "-0.3 V", VOLT, '.', -0.3 },
  { "minus-sign", "\u22120.3 V", VOLT, '.', -0.3 },
  { "minus-sign-comma", "\u22120,3 V", VOLT, ',', -0.3 },
  { "no-digit-before-mark", ".5 V", VOLT, '.', 0.5 },
  { "no-digit-after-mark", "5. V", VOLT, '.', 5.0 },
  { "leading-zeros", "007.50 V", VOLT, '.', 7.5 },
  { "zero", "0 V", VOLT, '.', 0.0 },
  { "exponent", "1.5e3 Hz", HZ, '.', 1500.0 },
  { "exponent-negative", "1.5E-3 kHz", HZ, '.', 1.5 },
  { "leading-comma-where-point", ",7 V", VOLT, '.', 0.7 },
  { "comma-where-point-one-digit", "15,7 kHz", HZ, '.', 15700.0 },
  { "comma-where-point-four-digits", "15,7343 kHz", HZ, '.', 15734.3 },
  { "comma-where-point-after-zero", "0,734 V", VOLT, '.', 0.734 },
  { "comma-where-point-four-before", "1573,426 Hz", HZ, '.', 1573.426 },
  { "point-where-comma-one-digit", "15.7 kHz", HZ, ',', 15700.0 },
  { "bare-ire", "7.5", IRE, '.', 7.5 },
  { "bare-share", "5", SHARE, '.', 0.05 },
  { "bare-tv-lines", "600", TV_LINES, '.', 600.0 },
  { "bare-lines", "625", LINES, '.', 625.0 },
  { "bare-pixels", "720", PIXELS, '.', 720.0 },
  { "tvl", "600 TVL", TV_LINES, '.', 600.0 },
  { "tv-lines-spelt", "600TV lines", TV_LINES, '.', 600.0 },
  { "tvl-per-height", "600 TVL/PH", TV_LINES, '.', 600.0 },
  { "volts-of-a-plate", "120 V~", VOLT, '.', 120.0 },
  { "volts-ac", "230VAC", VOLT, '.', 230.0 },
  { "volts-peak-to-peak", "1 V p-p", VOLT, '.', 1.0 },
  { "kilohm-by-its-letter", "1.1k", OHM, '.', 1100.0 },
  { "inches-spelt", "20 inches", METRE, '.', 0.508 },
  { "many-digits", "3.57954545454545454545454545 MHz", HZ, '.', 3579545.4545454545 },
};

static void
test_parse (gconstpointer data)
{
  const ParseCase *c = data;
  g_autoptr (GError) error = NULL;
  double value = -12345;

  g_assert_true (bw_quantity_parse (c->text, c->dimension, c->mark, &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (value, ==, c->value);
}

/* The inch is 25.4 mm exactly (international yard and pound agreement, 1959). Its factor is no
 * power of ten, so that the product may be rounded once. */
static void
test_inch (void)
{
  for (int inches = 1; inches <= 60; inches++)
    {
      g_autofree char *text = g_strdup_printf ("%d in", inches);
      double value_m = 0;
      g_assert_true (bw_quantity_parse (text, METRE, '.', &value_m, NULL));
      g_assert_true (bw_near (value_m, inches * 25.4 / 1000, inches * 25.4e-3 * DBL_EPSILON));
    }
}

/* Refusing: the kind of fault, and what the sentence must say */

typedef struct
{
  const char *name;
  const char *text;
  BwDimension dimension;
  char mark;
  BwQuantityError code;
  const char *says[3];
} RefuseCase;

static const RefuseCase refuse_cases[] = {
  { "empty", "", HZ, '.', BW_QUANTITY_ERROR_EMPTY, { "Hz, kHz, MHz, GHz" } },
  { "spaces-only", " \u00a0\t ", HZ, '.', BW_QUANTITY_ERROR_EMPTY, { "Hz, kHz, MHz, GHz" } },
  { "word", "fast", HZ, '.', BW_QUANTITY_ERROR_NUMBER, { "fast" } },
  { "unit-alone", "kHz", HZ, '.', BW_QUANTITY_ERROR_NUMBER, { "kHz" } },
  { "sign-alone", "-", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "-" } },
  { "mark-alone", ".", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "." } },
  { "two-signs", "+-5 V", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "+-5 V" } },
  { "minus-sign-and-hyphen", "\u2212-5 V", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "5 V" } },
  { "infinity", "inf Hz", HZ, '.', BW_QUANTITY_ERROR_NUMBER, { "inf" } },
  { "infinity-spelt", "infinity V", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "infinity" } },
  { "nan", "nan V", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "nan" } },
  { "nan-negative", "-nan V", VOLT, '.', BW_QUANTITY_ERROR_NUMBER, { "nan" } },
  { "hex", "0x10 Hz", HZ, '.', BW_QUANTITY_ERROR_UNIT, { "x10", "Hz, kHz" } },
  { "hex-float", "0x1p4 Hz", HZ, '.', BW_QUANTITY_ERROR_UNIT, { "x1p4", "Hz, kHz" } },
  { "not-utf8", "15\xff kHz", HZ, '.', BW_QUANTITY_ERROR_NUMBER, { "UTF-8" } },
  { "cut-utf8", "15 \xc2", SECOND, '.', BW_QUANTITY_ERROR_NUMBER, { "UTF-8" } },
  { "no-unit-frequency",
    "15.734",
    HZ,
    '.',
    BW_QUANTITY_ERROR_NO_UNIT,
    { "15.734", "Hz, kHz, MHz, GHz" } },
  { "no-unit-time", "4.7", SECOND, '.', BW_QUANTITY_ERROR_NO_UNIT, { "s, ms, us", "ns" } },
  { "no-unit-length", "27", METRE, '.', BW_QUANTITY_ERROR_NO_UNIT, { "m, cm, mm", "in" } },
  { "no-unit-voltage", "0.7", VOLT, '.', BW_QUANTITY_ERROR_NO_UNIT, { "V, mV" } },
  { "no-unit-resistance", "75", OHM, '.', BW_QUANTITY_ERROR_NO_UNIT, { "ohm", "kohm, Mohm" } },
  { "no-unit-capacitance", "220", FARAD, '.', BW_QUANTITY_ERROR_NO_UNIT, { "uF", "nF, pF" } },
  { "second-for-farad", "220 us", FARAD, '.', BW_QUANTITY_ERROR_UNIT, { "us", "F, mF, uF" } },
  { "no-unit-inductance", "1.2", BW_DIMENSION_INDUCTANCE, '.', BW_QUANTITY_ERROR_NO_UNIT, { "mH, uH" } },
  { "no-unit-duration", "2000", BW_DIMENSION_DURATION, '.', BW_QUANTITY_ERROR_NO_UNIT, { "s, h" } },
  { "farad-for-henry", "1 mF", BW_DIMENSION_INDUCTANCE, '.', BW_QUANTITY_ERROR_UNIT, { "mF", "mH" } },
  { "no-unit-current", "1.4", AMPERE, '.', BW_QUANTITY_ERROR_NO_UNIT, { "A, mA" } },
  { "time-for-frequency",
    "4.7 us",
    HZ,
    '.',
    BW_QUANTITY_ERROR_UNIT,
    { "us", "Hz, kHz, MHz, GHz" } },
  { "volt-for-ohm", "75 V", OHM, '.', BW_QUANTITY_ERROR_UNIT, { "V", "ohm" } },
  { "percent-for-volt", "5 %", VOLT, '.', BW_QUANTITY_ERROR_UNIT, { "%", "V, mV" } },
  { "pixels-for-lines", "720 px", LINES, '.', BW_QUANTITY_ERROR_UNIT, { "px", "lines" } },
  { "unknown-unit", "5 furlongs", METRE, '.', BW_QUANTITY_ERROR_UNIT, { "furlongs", "m, cm, mm" } },
  { "milli-is-not-mega", "27 mHz", HZ, '.', BW_QUANTITY_ERROR_UNIT, { "mHz", "MHz" } },
  { "two-units", "5 V V", VOLT, '.', BW_QUANTITY_ERROR_UNIT, { "V V", "V, mV" } },
  { "exponent-without-digits", "5e V", VOLT, '.', BW_QUANTITY_ERROR_UNIT, { "e V", "V, mV" } },
  { "tvl-are-not-scanning-lines", "625 TVL", LINES, '.', BW_QUANTITY_ERROR_UNIT, { "TVL" } },
  { "digits-set-apart", "15 734 Hz", HZ, '.', BW_QUANTITY_ERROR_UNIT, { "734 Hz", "Hz, kHz" } },
  { "comma-where-point",
    "15,734 kHz",
    HZ,
    '.',
    BW_QUANTITY_ERROR_DECIMAL_MARK,
    { "15,734 kHz", "15.734", "15734" } },
  { "point-where-comma",
    "15.734 kHz",
    HZ,
    ',',
    BW_QUANTITY_ERROR_DECIMAL_MARK,
    { "15.734 kHz", "15,734", "15734" } },
  { "thousands-comma", "1,500.5 Hz", HZ, '.', BW_QUANTITY_ERROR_DECIMAL_MARK, { "thousands" } },
  { "thousands-point", "1.500,5 Hz", HZ, ',', BW_QUANTITY_ERROR_DECIMAL_MARK, { "thousands" } },
  { "two-marks", "1.5.5 Hz", HZ, '.', BW_QUANTITY_ERROR_NUMBER, { "1.5.5 Hz" } },
  { "overflow", "1e999 Hz", HZ, '.', BW_QUANTITY_ERROR_RANGE, { "1e999 Hz" } },
  { "overflow-negative", "-1e999 V", VOLT, '.', BW_QUANTITY_ERROR_RANGE, { "-1e999 V" } },
  { "overflow-by-unit", "1e308 kHz", HZ, '.', BW_QUANTITY_ERROR_RANGE, { "1e308 kHz" } },
  { "overflow-huge-exponent",
    "1e99999999999999999999 Hz",
    HZ,
    '.',
    BW_QUANTITY_ERROR_RANGE,
    { "Hz" } },
  { "underflow", "1e-999 V", VOLT, '.', BW_QUANTITY_ERROR_RANGE, { "1e-999 V", "small" } },
  { "beyond-the-least", "9.9e-31 V", VOLT, '.', BW_QUANTITY_ERROR_RANGE, { "small" } },
  { "beyond-the-least-by-unit", "-9.9e-28 mV", VOLT, '.', BW_QUANTITY_ERROR_RANGE, { "small" } },
  { "beyond-the-most", "1.1e30 V", VOLT, '.', BW_QUANTITY_ERROR_RANGE, { "large" } },
};

/* “%c” stands in the sentence between quotation marks of its own. */
static const char *
straight_quotes (GString *text)
{
  g_string_replace (text, "\u201c", "\"", 0);
  g_string_replace (text, "\u201d", "\"", 0);
  return text->str;
}

static void
test_refuse (gconstpointer data)
{
  const RefuseCase *c = data;
  const char *words[] = { c->says[0], c->says[1], c->says[2], NULL };
  g_autoptr (GError) error = NULL;
  double value = -12345;

  g_assert_false (bw_quantity_parse (c->text, c->dimension, c->mark, &value, &error));
  g_assert_error (error, BW_QUANTITY_ERROR, (int) c->code);
  g_assert_cmpfloat (value, ==, -12345);
  if (error == NULL)
    return;
  g_autoptr (GString) says = g_string_new (error->message);
  bw_test_assert_words (straight_quotes (says), words);
}

/* Ratios */

typedef struct
{
  const char *name;
  const char *text;
  BwRatio ratio; /* none: refused */
} RatioCase;

static const RatioCase ratio_cases[] = {
  { "whole", "27 MHz", { 27000000, 1 } },
  { "decimals", "25.175 MHz", { 25175000, 1 } },
  { "decimals-below-one-hertz", "4433618.75 Hz", { 17734475, 4 } },
  { "exponent", "2.7e7 Hz", { 27000000, 1 } },
  /* SMPTE 170M-2004 11.2 */
  { "525-line-rate", "4.5 MHz / 286", { 2250000, 143 } },
  { "subcarrier", "5 MHz * 63 / 88", { 39375000, 11 } },
  /* CTA-861-H: the 1000/1001 partner of 74.25 MHz */
  { "partner", "74.25 MHz * 1000 / 1001", { 6750000000, 91 } },
  { "partner-other-order", "74.25 MHz / 1001 * 1000", { 6750000000, 91 } },
  { "no-spaces", "74.25MHz*1000/1001", { 6750000000, 91 } },
  { "no-break-spaces", "74.25\u00a0MHz\u00a0*\u00a01000\u00a0/\u00a01001", { 6750000000, 91 } },
  { "negative", "-3 Hz / 6", { -1, 2 } },
  { "no-unit", "4500000 / 286", { 0, 1 } },
  { "wrong-unit", "4.5 us / 286", { 0, 1 } },
  { "comma", "4,5 MHz / 286", { 2250000, 143 } },
  { "by-zero", "4.5 MHz / 0", { 0, 1 } },
  { "by-nothing", "4.5 MHz /", { 0, 1 } },
  { "by-fraction", "4.5 MHz / 1.5", { 0, 1 } },
  { "by-negative", "4.5 MHz / -286", { 0, 1 } },
  { "by-hex", "4.5 MHz / 0x11e", { 0, 1 } },
  { "by-word", "4.5 MHz / lines", { 0, 1 } },
  { "rest", "4.5 MHz / 286 Hz", { 0, 1 } },
  { "operator-first", "* 3 MHz", { 0, 1 } },
  { "empty", "", { 0, 1 } },
  { "too-large", "9223372036854775807 GHz", { 0, 1 } },
  { "too-fine", "0.00000000000000000001 Hz", { 0, 1 } },
  { "factor-too-large", "1 GHz * 9223372036854775807", { 0, 1 } },
  { "factor-beyond-64-bits", "1 Hz * 99999999999999999999", { 0, 1 } },
  { "divisor-beyond-64-bits", "1 Hz / 99999999999999999999", { 0, 1 } },
  { "exponent-too-large", "1e400 Hz", { 0, 1 } },
  { "most-of-64-bits", "9223372036854775807 Hz", { G_MAXINT64, 1 } },
  { "least-of-64-bits", "-9223372036854775807 Hz", { -G_MAXINT64, 1 } },
  { "beyond-64-bits", "9223372036854775808 Hz", { 0, 1 } },
  { "beyond-64-bits-negative", "-9223372036854775808 Hz", { 0, 1 } },
  { "not-utf8", "4.5 MHz / 286\xff", { 0, 1 } },
};

static void
test_ratio (gconstpointer data)
{
  const RatioCase *c = data;
  gboolean wanted = !bw_ratio_is_none (c->ratio);
  g_autoptr (GError) error = NULL;
  BwRatio ratio = { 12, 34 };
  gboolean taken = bw_quantity_parse_ratio (c->text, HZ, &ratio, &error);

  g_assert_cmpint (taken, ==, wanted);
  g_assert_cmpint (error == NULL, ==, wanted);
  g_assert_cmpint (ratio.num, ==, wanted ? c->ratio.num : 12);
  g_assert_cmpint (ratio.den, ==, wanted ? c->ratio.den : 34);
  if (error != NULL)
    g_assert_cmpuint (error->domain, ==, BW_QUANTITY_ERROR);
}

typedef struct
{
  const char *name;
  BwRatio ratio;
  const char *text;
} RatioTextCase;

static const RatioTextCase ratio_text_cases[] = {
  { "whole", { 27000000, 1 }, "27 MHz" },
  { "partner", { 6750000000, 91 }, "74.25 MHz * 1000 / 1001" },
  { "field-rate", { 60000, 1001 }, "60 Hz * 1000 / 1001" },
  { "quarter", { 17734475, 4 }, "17734475 Hz / 4" },
  { "subcarrier", { 39375000, 11 }, "3.583125 MHz * 1000 / 1001" },
  { "third", { 10000000, 3 }, "10000000 Hz / 3" },
};

static void
test_ratio_text (gconstpointer data)
{
  const RatioTextCase *c = data;
  g_autofree char *text = bw_quantity_format_ratio (c->ratio, HZ);
  BwRatio back = BW_RATIO_NONE;

  g_assert_cmpstr (text, ==, c->text);
  g_assert_true (bw_quantity_parse_ratio (text, HZ, &back, NULL));
  g_assert_cmpint (bw_ratio_compare (back, c->ratio), ==, 0);
}

/* Bands */

typedef struct
{
  const char *name;
  const char *text;
  BwDimension dimension;
  char mark;
  int n; /* negative: refused */
  BwRange at[3];
} BandsCase;

static const BandsCase bands_cases[] = {
  { "none", "", HZ, '.', 0, { { 0 } } },
  { "spaces", "  ", HZ, '.', 0, { { 0 } } },
  { "separators-only", ";;", HZ, '.', 0, { { 0 } } },
  { "one", "15.5 kHz .. 16 kHz", HZ, '.', 1, { { 15500, 16000 } } },
  { "two",
    "15.5 kHz .. 16 kHz; 31 kHz .. 33.8 kHz",
    HZ,
    '.',
    2,
    { { 15500, 16000 }, { 31000, 33800 } } },
  { "trailing-separator", "0 IRE; 7.5 IRE;", IRE, '.', 2, { { 0, 0 }, { 7.5, 7.5 } } },
  { "no-width", "525 lines; 625 lines", LINES, '.', 2, { { 525, 525 }, { 625, 625 } } },
  { "en-dash", "15.5 kHz–16 kHz", HZ, '.', 1, { { 15500, 16000 } } },
  { "word", "15.5 kHz to 16 kHz", HZ, '.', 1, { { 15500, 16000 } } },
  { "first-without-unit", "15.5 .. 16 kHz", HZ, '.', 1, { { 15500, 16000 } } },
  { "first-without-unit-dash", "15,5–16 kHz", HZ, ',', 1, { { 15500, 16000 } } },
  { "first-without-unit-greek", "4.5 .. 4.9 \u00b5s", SECOND, '.', 1, { { 4.5e-6, 4.9e-6 } } },
  { "exponent-of-the-second-stays-there", "1..5e1 kHz", HZ, '.', 1, { { 1000, 50000 } } },
  { "two-units", "900 mV .. 1.1 V", VOLT, '.', 1, { { 0.9, 1.1 } } },
  { "negative", "-2 V .. 2 V", VOLT, '.', 1, { { -2, 2 } } },
  { "negative-minus-sign", "\u22122 .. \u22121 V", VOLT, '.', 1, { { -2, -1 } } },
  { "no-break-spaces", "15.5\u00a0kHz\u00a0..\u00a016\u00a0kHz", HZ, '.', 1, { { 15500, 16000 } } },
  { "reversed", "16 kHz .. 15.5 kHz", HZ, '.', -1, { { 0 } } },
  { "nine", "1 V;2 V;3 V;4 V;5 V;6 V;7 V;8 V;9 V", VOLT, '.', -1, { { 0 } } },
  { "no-unit", "15.5 .. 16", HZ, '.', -1, { { 0 } } },
  { "second-without-unit", "15.5 kHz .. 16", HZ, '.', 1, { { 15500, 16000 } } },
  { "hyphen", "100-120 V", VOLT, '.', 1, { { 100, 120 } } },
  { "hyphen-between-units", "100 V - 120 V", VOLT, '.', 1, { { 100, 120 } } },
  { "hyphen-close", "100V-120V", VOLT, '.', 1, { { 100, 120 } } },
  { "hyphen-of-rates", "15.6-15.8 kHz", HZ, '.', 1, { { 15600, 15800 } } },
  { "hyphen-of-rates-comma", "15,6-15,8 kHz", HZ, '.', 1, { { 15600, 15800 } } },
  { "hyphen-no-break", "100\u2011120 V", VOLT, '.', 1, { { 100, 120 } } },
  { "hyphen-before-a-sign", "-2--1 V", VOLT, '.', 1, { { -2, -1 } } },
  { "hyphen-of-an-exponent", "1e-3 V - 2e-3 V", VOLT, '.', 1, { { 1e-3, 2e-3 } } },
  { "minus-sign-between", "100 \u2212 120 V", VOLT, '.', 1, { { 100, 120 } } },
  { "peak-to-peak-is-no-range", "1 V p-p", VOLT, '.', 1, { { 1, 1 } } },
  { "em-dash", "100\u2014120 V", VOLT, '.', 1, { { 100, 120 } } },
  { "ellipsis", "100\u2026120 V", VOLT, '.', 1, { { 100, 120 } } },
  { "slash", "50/60 Hz", HZ, '.', 2, { { 50, 50 }, { 60, 60 } } },
  { "slash-with-spaces", "15.7 / 31.5 kHz", HZ, '.', 2, { { 15700, 15700 }, { 31500, 31500 } } },
  { "slash-between-ranges", "100-120/200-240 V", VOLT, '.', 2, { { 100, 120 }, { 200, 240 } } },
  { "slash-of-a-unit", "600 TVL/PH", TV_LINES, '.', 1, { { 600, 600 } } },
  { "commas", "525, 625", LINES, '.', 2, { { 525, 525 }, { 625, 625 } } },
  { "bare-lines", "625", LINES, '.', 1, { { 625, 625 } } },
  { "bare-lines-two", "525; 625", LINES, '.', 2, { { 525, 525 }, { 625, 625 } } },
  { "hyphens-two", "100-110-120 V", VOLT, '.', -1, { { 0 } } },
  { "wrong-unit", "15.5 us .. 16 us", HZ, '.', -1, { { 0 } } },
  { "wrong-unit-of-the-first", "15.5 us .. 16 kHz", HZ, '.', -1, { { 0 } } },
  { "other-mark", "15,5 .. 16 kHz", HZ, '.', 1, { { 15500, 16000 } } },
  { "wrong-mark", "15,500 .. 16 kHz", HZ, '.', -1, { { 0 } } },
  { "half-open", ".. 16 kHz", HZ, '.', -1, { { 0 } } },
  { "open-above", "16 kHz ..", HZ, '.', -1, { { 0 } } },
  { "three-ends", "1 V .. 2 V .. 3 V", VOLT, '.', -1, { { 0 } } },
  { "infinite", "0 V .. inf V", VOLT, '.', -1, { { 0 } } },
  { "not-utf8", "1 V .. 2 \xff", VOLT, '.', -1, { { 0 } } },
};

static void
test_bands (gconstpointer data)
{
  const BandsCase *c = data;
  g_autoptr (GError) error = NULL;
  BwBands bands = { 7, { { 1, 2 } } };
  gboolean taken = bw_quantity_parse_bands (c->text, c->dimension, c->mark, &bands, &error);

  g_assert_cmpint (taken, ==, c->n >= 0);
  g_assert_cmpint (error == NULL, ==, c->n >= 0);
  g_assert_cmpuint (bands.n, ==, c->n >= 0 ? (guint) c->n : 7);
  for (int i = 0; i < c->n && taken; i++)
    {
      g_assert_cmpfloat (bands.at[i].low, ==, c->at[i].low);
      g_assert_cmpfloat (bands.at[i].high, ==, c->at[i].high);
    }
}

static void
test_bands_text (void)
{
  BwBands bands = { 2, { { 15500, 16000 }, { 31468.75, 31468.75 } } };
  g_autofree char *file = bw_quantity_bands_to_file (&bands, HZ, "kHz");
  g_autofree char *entry = bw_quantity_bands_to_entry (&bands, HZ, "kHz", ',');
  BwBands back = { 0 };

  g_assert_cmpstr (file, ==, "15.5 kHz .. 16 kHz; 31.46875 kHz");
  g_assert_cmpstr (entry, ==, "15,5 kHz .. 16 kHz; 31,46875 kHz");
  g_assert_true (bw_quantity_parse_bands (entry, HZ, ',', &back, NULL));
  g_assert_cmpmem (&back, sizeof back, &bands, sizeof bands);
}

/* A form shows units as they are written by hand, a file in ASCII. */
static void
test_bands_units (void)
{
  const BwBands bands = { 1, { { 10e-6, 12.5e-6 } } };
  g_autofree char *file = bw_quantity_bands_to_file (&bands, BW_DIMENSION_TIME, "us");
  g_autofree char *entry = bw_quantity_bands_to_entry (&bands, BW_DIMENSION_TIME, "us", '.');
  g_assert_cmpstr (file, ==, "10 us .. 12.5 us");
  g_assert_cmpstr (entry, ==, "10 µs .. 12.5 µs");
}

/* Below zero it is rounded as above: 1163 and -1163 µF, of three digits, are 1160 and -1160. */
static void
test_round_both_ways (void)
{
  g_autofree char *up = bw_quantity_format (1163e-6, BW_DIMENSION_CAPACITANCE, 3, '.');
  g_autofree char *down = bw_quantity_format (-1163e-6, BW_DIMENSION_CAPACITANCE, 3, '.');
  g_assert_cmpstr (up, ==, "1160\u00a0µF");
  g_assert_cmpstr (down, ==, "-1160\u00a0µF");
}

/* For reading: U+00A0 between number and unit */

typedef struct
{
  const char *name;
  double value;
  BwDimension dimension;
  int digits;
  char mark;
  const char *text;
} FormatCase;

static const FormatCase format_cases[] = {
  { "kilohertz", 15734.265734, HZ, 5, '.', "15.734\u00a0kHz" },
  { "kilohertz-comma", 15734.265734, HZ, 5, ',', "15,734\u00a0kHz" },
  { "hertz", 59.94005994, HZ, 5, '.', "59.94\u00a0Hz" },
  { "megahertz", 4433618.75, HZ, 9, '.', "4.43361875\u00a0MHz" },
  { "below-one-hertz", 0.06, HZ, 3, '.', "0.06\u00a0Hz" },
  { "microseconds", 4.7e-6, SECOND, 3, '.', "4.7\u00a0\u00b5s" },
  { "rounds-to-a-microsecond", 999.6e-9, SECOND, 3, '.', "1\u00a0\u00b5s" },
  { "rounds-to-a-volt-below-zero", -0.99996, VOLT, 4, '.', "-1\u00a0V" },
  { "milliseconds", 0.0166833, SECOND, 3, '.', "16.7\u00a0ms" },
  { "millimetres", 0.00025, METRE, 3, '.', "0.25\u00a0mm" },
  { "millivolts", 0.3, VOLT, 3, '.', "300\u00a0mV" },
  { "negative", -0.2857142857, VOLT, 4, '.', "-285.7\u00a0mV" },
  { "kilohms", 1200, OHM, 3, '.', "1.2\u00a0k\u03a9" },
  { "ohms", 75, OHM, 3, '.', "75\u00a0\u03a9" },
  { "percent", 0.0975, SHARE, 3, '.', "9.75\u00a0%" },
  { "zero", 0, HZ, 3, '.', "0\u00a0Hz" },
  { "minus-zero", -0.0, VOLT, 3, '.', "0\u00a0V" },
  { "zeros-cut", 15000, HZ, 5, '.', "15\u00a0kHz" },
  { "microfarads", 220e-6, FARAD, 3, '.', "220\u00a0\u00b5F" },
  { "thousands-of-microfarads", 2200e-6, FARAD, 3, '.', "2200\u00a0\u00b5F" },
  { "microfarads-of-three-digits", 1163e-6, FARAD, 3, '.', "1160\u00a0\u00b5F" },
  { "nanofarads", 47e-9, FARAD, 3, '.', "47\u00a0nF" },
  { "picofarads-comma", 4.7e-12, FARAD, 3, ',', "4,7\u00a0pF" },
  { "rounds-to-a-microfarad", 999.6e-9, FARAD, 3, '.', "1\u00a0\u00b5F" },
  { "zeros-before-the-mark-stay", 1200, LINES, 2, '.', "1200\u00a0lines" },
  { "more-digits-than-asked-before-the-mark", 1234, LINES, 2, '.', "1234\u00a0lines" },
};

static void
test_format (gconstpointer data)
{
  const FormatCase *c = data;
  g_autofree char *text = bw_quantity_format (c->value, c->dimension, c->digits, c->mark);
  g_assert_cmpstr (text, ==, c->text);
}

static void
test_format_range (void)
{
  BwRange narrow = { 15600, 15900 };
  BwRange equal = { 15734.2, 15734.3 };
  BwRange across = { -2, 2 };
  g_autofree char *narrow_text = bw_quantity_format_range (narrow, HZ, 3, '.');
  g_autofree char *equal_text = bw_quantity_format_range (equal, HZ, 5, '.');
  g_autofree char *across_text = bw_quantity_format_range (across, VOLT, 3, '.');

  g_assert_cmpstr (narrow_text, ==, "15.6–15.9\u00a0kHz");
  g_assert_cmpstr (equal_text, ==, "15.734\u00a0kHz");
  g_assert_cmpstr (across_text, ==, "-2 to 2\u00a0V");

  /* the unit is that of the end that is further from zero */
  static const struct
  {
    BwRange range;
    const char *text;
  } cases[] = {
    { { -5, 0.2 }, "-5 to 0.2\u00a0V" },
    { { -0.2, 5 }, "-0.2 to 5\u00a0V" },
    { { -5, -0.2 }, "-5 to -0.2\u00a0V" },
    { { -0.4, -0.2 }, "-400 to -200\u00a0mV" },
    { { 0.2, 5 }, "0.2–5\u00a0V" },
    { { 0.2, 0.4 }, "200–400\u00a0mV" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = bw_quantity_format_range (cases[i].range, VOLT, 3, '.');
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

typedef struct
{
  const char *name;
  double value;
  BwDimension dimension;
  const char *unit;
  const char *file;
  const char *entry;
} EntryCase;

static const EntryCase entry_cases[] = {
  { "preferred", 15734, HZ, "kHz", "15.734 kHz", "15,734 kHz" },
  { "automatic", 0.3, VOLT, NULL, "300 mV", "300 mV" },
  { "ascii-in-files", 4.7e-6, SECOND, "us", "4.7 us", "4,7 \u00b5s" },
  { "capacitor", 220e-6, FARAD, NULL, "220 uF", "220 \u00b5F" },
  { "ohm", 75, OHM, NULL, "75 ohm", "75 \u03a9" },
  { "inches", 0.508, METRE, "in", "20 in", "20 in" },
  { "percent", 0.05, SHARE, "%", "5 %", "5 %" },
  { "zero", 0, HZ, "Hz", "0 Hz", "0 Hz" },
  { "minus-zero", -0.0, HZ, "Hz", "0 Hz", "0 Hz" },
  { "negative", -0.3, VOLT, "V", "-0.3 V", "-0,3 V" },
};

static void
test_entry (gconstpointer data)
{
  const EntryCase *c = data;
  g_autofree char *file = bw_quantity_to_file (c->value, c->dimension, c->unit);
  g_autofree char *entry = bw_quantity_to_entry (c->value, c->dimension, c->unit, ',');
  g_assert_cmpstr (file, ==, c->file);
  g_assert_cmpstr (entry, ==, c->entry);
}

/* Every unit of the list for hints is one, and every hint names the base unit. */
static void
test_units (gconstpointer data)
{
  BwDimension dimension = (BwDimension) GPOINTER_TO_UINT (data);
  g_auto (GStrv) units = g_strsplit (bw_quantity_units (dimension), ", ", -1);

  g_assert_true (g_str_has_prefix (units[0], bw_quantity_base_unit (dimension)));
  for (char **unit = units; *unit != NULL; unit++)
    {
      g_autofree char *first = g_strndup (*unit, strcspn (*unit, " "));
      g_autofree char *text = g_strdup_printf ("1 %s", first);
      double value = 0;
      g_assert_true (bw_quantity_parse (text, dimension, '.', &value, NULL));
      g_assert_cmpfloat (value, >, 0);
    }
}

/* What is too long in the unit that is tried first is written in the one in which it is shortest. */
static void
test_shortest_unit (void)
{
  g_autofree char *hertz = bw_quantity_to_file (123.4567, BW_DIMENSION_FREQUENCY, "GHz");
  g_autofree char *kilo = bw_quantity_to_file (15734.5, BW_DIMENSION_FREQUENCY, "kHz");
  g_autofree char *nano = bw_quantity_to_file (1.25e-9, BW_DIMENSION_TIME, "s");
  g_assert_cmpstr (hertz, ==, "123.4567 Hz");
  g_assert_cmpstr (kilo, ==, "15.7345 kHz");
  g_assert_cmpstr (nano, ==, "1.25 ns");
}

/* A bare number where the place allows it in one unit alone: the ranges are those of the fields of a
 * monitor. */

typedef struct
{
  const char *name;
  const char *text;
  BwDimension dimension;
  BwRange allowed;
  double value;        /* zero: refused */
  const char *says[3]; /* what the refusal shows */
} BareCase;

static const BareCase bare_cases[] = {
  { "mains", "120", VOLT, { 10, 500 }, 120, { NULL } },
  { "pitch", "0.8", METRE, { 0.05e-3, 5e-3 }, 0.8e-3, { NULL } },
  { "line-rate-in-kilohertz", "15.7", HZ, { 1e3, 1e6 }, 15700, { NULL } },
  { "line-rate-in-hertz", "15734", HZ, { 1e3, 1e6 }, 15734, { NULL } },
  { "field-rate", "60", HZ, { 1, 1e3 }, 60, { NULL } },
  { "level-in-volts", "0.7", VOLT, { 0.01, 10 }, 0.7, { NULL } },
  { "level-in-millivolts", "700", VOLT, { 0.01, 10 }, 0.7, { NULL } },
  { "either", "20", METRE, { 0.02, 1.5 }, 0, { "20 in", "20 cm", "20 mm" } },
  { "none", "5000", VOLT, { 10, 500 }, 0, { "5000", "10–500" } },
};

static void
test_bare (gconstpointer data)
{
  const BareCase *c = data;
  const char *words[] = { c->says[0], c->says[1], c->says[2], NULL };
  const BwReadAs as = { .mark = '.', .allowed = c->allowed };
  g_autoptr (GError) error = NULL;
  BwMeasured measured = { 0 };

  g_assert_cmpint (bw_quantity_read (c->text, c->dimension, &as, &measured, &error), ==,
                   c->value > 0);
  g_assert_cmpfloat (measured.value, ==, c->value);
  if (error == NULL)
    return;
  g_assert_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT);
  bw_test_assert_words (error->message, words);
}

static void
test_bare_bands (void)
{
  const BwReadAs as = { .mark = '.', .allowed = { 1e3, 1e6 } };
  BwBands bands = { 0 };
  g_assert_true (bw_quantity_read_bands ("15.6-15.8; 31.5", HZ, &as, &bands, NULL));
  g_assert_cmpuint (bands.n, ==, 2);
  g_assert_cmpfloat (bands.at[0].high, ==, 15800);
  g_assert_cmpfloat (bands.at[1].low, ==, 31500);
}

/* Digits: half the place of the last one, by hand. */

typedef struct
{
  const char *name;
  const char *text;
  BwDimension dimension;
  double half_digit;
} DigitsCase;

static const DigitsCase digits_cases[] = {
  { "tenth-of-a-kilohertz", "15.7 kHz", HZ, 50 },
  { "hertz-of-a-kilohertz", "15.734 kHz", HZ, 0.5 },
  { "zeros-count", "60.00 Hz", HZ, 0.005 },
  { "whole", "60 Hz", HZ, 0.5 },
  { "power-of-ten", "1.57e4 Hz", HZ, 50 },
  { "millivolts", "714 mV", VOLT, 0.5e-3 },
  { "inches", "27 in", METRE, 0.0127 },
  { "ire", "100 IRE", VOLT, 0.5 / 140 },
};

static void
test_digits (gconstpointer data)
{
  const DigitsCase *c = data;
  const BwReadAs as = { .mark = '.', .volts_per_ire = 1 / 140.0 };
  BwMeasured measured = { 0 };
  g_assert_true (bw_quantity_read (c->text, c->dimension, &as, &measured, NULL));
  g_assert_cmpfloat_with_epsilon (measured.half_digit, c->half_digit, 1e-9 * c->half_digit);
}

/* SMPTE 170M-2004 clause 15.4: 140 IRE are 1 V. Where no scale is known, IRE is refused. */
static void
test_ire_of_volts (void)
{
  BwReadAs as = { .mark = '.', .volts_per_ire = 1 / 140.0 };
  BwMeasured measured = { 0 };
  g_assert_true (bw_quantity_read ("-40 IRE", VOLT, &as, &measured, NULL));
  g_assert_cmpfloat_with_epsilon (measured.value, -40 / 140.0, 1e-12);
  g_assert_true (bw_quantity_read ("714 mV", VOLT, &as, &measured, NULL));
  g_assert_cmpfloat (measured.value, ==, 0.714);
  as.volts_per_ire = 0;
  g_assert_false (bw_quantity_read ("100 IRE", VOLT, &as, &measured, NULL));
}

/* Everything that is printed is taken back: numbers within what their digits leave open, entries
 * and files exactly, in every unit that comes up by itself and with either mark. */
static void
test_prints_and_reads (gconstpointer data)
{
  BwDimension dimension = (BwDimension) GPOINTER_TO_UINT (data);
  static const double bases[] = { 1, 1.5, 9.99951, 15.734265734, 123.456789, 0.7142857142857143 };

  for (int power = -12; power <= 9; power++)
    for (gsize i = 0; i < 4 * G_N_ELEMENTS (bases); i++)
      {
        double value = bases[i / 4] * pow (10, power) * (i % 2 == 0 ? 1 : -1);
        char mark = i % 4 < 2 ? '.' : ',';
        const BwReadAs as = { .mark = mark };
        BwMeasured back;
        g_autofree char *shown = bw_quantity_format (value, dimension, 3 + (int) (i % 5), mark);
        g_autofree char *entry = bw_quantity_to_entry (value, dimension, NULL, mark);
        g_autofree char *file = bw_quantity_to_file (value, dimension, NULL);
        g_assert_true (bw_quantity_read (shown, dimension, &as, &back, NULL));
        g_assert_true (fabs (back.value - value) <= MAX (back.half_digit * 1.0001, fabs (value) * 6e-3));
        g_assert_true (bw_quantity_read (entry, dimension, &as, &back, NULL));
        g_assert_cmpfloat (back.value, ==, value);
        g_assert_true (bw_quantity_parse (file, dimension, '.', &back.value, NULL));
        g_assert_cmpfloat (back.value, ==, value);
      }
}

static void
test_bands_print_and_read (gconstpointer data)
{
  BwDimension dimension = (BwDimension) GPOINTER_TO_UINT (data);
  const BwBands bands = { 3, { { -2, 2 }, { 15.5, 16.25 }, { 31000, 31000 } } };
  const char marks[] = { '.', ',' };
  double share = dimension == BW_DIMENSION_DURATION ? 1e-6 : 1e-9; /* 31000 s are no round hours */

  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      BwBands back = { 0 };
      g_autofree char *shown = bw_quantity_format_bands (&bands, dimension, 6, marks[i]);
      g_autofree char *entry = bw_quantity_bands_to_entry (&bands, dimension, NULL, marks[i]);
      g_assert_true (bw_quantity_parse_bands (shown, dimension, marks[i], &back, NULL));
      g_assert_cmpuint (back.n, ==, bands.n);
      for (guint j = 0; j < bands.n; j++)
        {
          g_assert_cmpfloat_with_epsilon (back.at[j].low, bands.at[j].low, share * fabs (bands.at[j].low));
          g_assert_cmpfloat_with_epsilon (back.at[j].high, bands.at[j].high, share * bands.at[j].high);
        }
      g_assert_true (bw_quantity_parse_bands (entry, dimension, marks[i], &back, NULL));
      g_assert_cmpmem (&back, sizeof back, &bands, sizeof back);
    }
}

static void
test_locale_mark (void)
{
  setlocale (LC_NUMERIC, "C");
  g_assert_cmpint (bw_quantity_locale_mark (), ==, '.');
  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") != NULL)
    g_assert_cmpint (bw_quantity_locale_mark (), ==, ',');
  else
    g_test_skip ("no locale with a decimal comma is installed; the tests of the cli make one");
  setlocale (LC_NUMERIC, "C");
}

static void
test_near (void)
{
  g_assert_true (bw_near (1, 1, 0));
  g_assert_true (bw_near (1, 1.25, 0.25));
  g_assert_false (bw_near (1, 1.25, 0.2));
  g_assert_false (bw_near (NAN, NAN, 1));
  g_assert_false (bw_near (1, NAN, INFINITY));
}

static void
add_for_each_dimension (const char *group, GTestDataFunc func)
{
  static const char *const names[BW_N_DIMENSIONS] = {
    "frequency", "time",     "length",   "voltage", "ire",    "resistance",
    "capacitance", "current", "fraction", "tv-lines", "lines", "pixels",
    "inductance", "apparent-power", "energy", "duration", "temperature",
  };
  for (guint i = 0; i < BW_N_DIMENSIONS; i++)
    add (group, names[i], GUINT_TO_POINTER (i), func);
}

/* What is below zero reads as what is above it, with a minus before it: the same unit, the same digits. */
static void
test_below_zero (void)
{
  for (BwDimension dimension = 0; dimension < BW_N_DIMENSIONS; dimension++)
    for (int power = -13; power <= 12; power++)
      for (int digits = 2; digits <= 5; digits++)
        {
          static const double leads[] = { 1, 1.5, 9.996 };
          for (gsize i = 0; i < G_N_ELEMENTS (leads); i++)
            {
              double value = leads[i] * pow (10, power);
              g_autofree char *above = bw_quantity_format (value, dimension, digits, '.');
              g_autofree char *below = bw_quantity_format (-value, dimension, digits, '.');
              if (g_str_has_prefix (above, "0"))
                continue; /* too small for its digits */
              g_autofree char *wanted = g_strconcat ("-", above, NULL);
              g_assert_cmpstr (below, ==, wanted);
            }
        }
}

/* A reading that is shown for a change keeps the digits that were written, which say how well it is known: read once more
 * it is the same number, known to the same half digit. */
static void
test_written_digits (void)
{
  static const struct
  {
    BwDimension dimension;
    const char *text, *unit, *shows;
  } cases[] = {
    { BW_DIMENSION_FREQUENCY, "60.0 Hz", NULL, "60.0 Hz" },
    { BW_DIMENSION_FREQUENCY, "60 Hz", NULL, "60 Hz" },
    { BW_DIMENSION_FREQUENCY, "15.7340 kHz", NULL, "15.7340 kHz" },
    { BW_DIMENSION_FREQUENCY, "15734.0 Hz", "kHz", "15.7340 kHz" },
    { BW_DIMENSION_FREQUENCY, "0.015734 MHz", "Hz", "15734 Hz" },
    { BW_DIMENSION_TIME, "4.70 us", "us", "4.70 µs" },
    { BW_DIMENSION_TIME, "63.556 us", "us", "63.556 µs" },
    { BW_DIMENSION_VOLTAGE, "0.700 V", "mV", "700 mV" },
    { BW_DIMENSION_VOLTAGE, "-0.30 V", "V", "-0.30 V" },
    { BW_DIMENSION_VOLTAGE, "-300.0 mV", "V", "-0.3000 V" },
  };
  const BwReadAs as = { .mark = '.' };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwMeasured written, again;
      g_assert_true (bw_quantity_read (cases[i].text, cases[i].dimension, &as, &written, NULL));
      g_autofree char *shown = bw_measured_to_entry (&written, cases[i].dimension, cases[i].unit, '.');
      g_assert_true (bw_quantity_read (shown, cases[i].dimension, &as, &again, NULL));
      g_assert_cmpfloat_with_epsilon (again.value, written.value, fabs (written.value) * 1e-15);
      g_assert_cmpfloat_with_epsilon (again.half_digit, written.half_digit, written.half_digit * 1e-9);
      g_assert_cmpstr (shown, ==, cases[i].shows);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (parse_cases); i++)
    add ("parse", parse_cases[i].name, &parse_cases[i], test_parse);
  for (gsize i = 0; i < G_N_ELEMENTS (refuse_cases); i++)
    add ("refuse", refuse_cases[i].name, &refuse_cases[i], test_refuse);
  for (gsize i = 0; i < G_N_ELEMENTS (ratio_cases); i++)
    add ("ratio", ratio_cases[i].name, &ratio_cases[i], test_ratio);
  for (gsize i = 0; i < G_N_ELEMENTS (ratio_text_cases); i++)
    add ("ratio-text", ratio_text_cases[i].name, &ratio_text_cases[i], test_ratio_text);
  for (gsize i = 0; i < G_N_ELEMENTS (bands_cases); i++)
    add ("bands", bands_cases[i].name, &bands_cases[i], test_bands);
  for (gsize i = 0; i < G_N_ELEMENTS (format_cases); i++)
    add ("format", format_cases[i].name, &format_cases[i], test_format);
  for (gsize i = 0; i < G_N_ELEMENTS (entry_cases); i++)
    add ("entry", entry_cases[i].name, &entry_cases[i], test_entry);
  for (gsize i = 0; i < G_N_ELEMENTS (bare_cases); i++)
    add ("bare", bare_cases[i].name, &bare_cases[i], test_bare);
  for (gsize i = 0; i < G_N_ELEMENTS (digits_cases); i++)
    add ("digits", digits_cases[i].name, &digits_cases[i], test_digits);
  add_for_each_dimension ("units", test_units);
  add_for_each_dimension ("prints-and-reads", test_prints_and_reads);
  add_for_each_dimension ("bands-print-and-read", test_bands_print_and_read);
  g_test_add_func ("/quantity/written-digits", test_written_digits);
  g_test_add_func ("/quantity/bare-bands", test_bare_bands);
  g_test_add_func ("/quantity/ire-of-volts", test_ire_of_volts);
  g_test_add_func ("/quantity/inch", test_inch);
  g_test_add_func ("/quantity/bands-text", test_bands_text);
  g_test_add_func ("/quantity/format-range", test_format_range);
  g_test_add_func ("/quantity/locale-mark", test_locale_mark);
  g_test_add_func ("/quantity/near", test_near);
  g_test_add_func ("/quantity/shortest-unit", test_shortest_unit);
  g_test_add_func ("/quantity/bands/units", test_bands_units);
  g_test_add_func ("/quantity/round-both-ways", test_round_both_ways);
  g_test_add_func ("/quantity/below-zero", test_below_zero);
  return g_test_run ();
}
