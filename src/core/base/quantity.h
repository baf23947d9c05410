/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ratio.h"

G_BEGIN_DECLS

/**
 * BwDimension:
 *
 * What a quantity measures. Every dimension has one SI (or trade) base unit, in which numbers are
 * held: hertz, second, metre, volt, IRE unit, ohm, farad, ampere, fraction (1 = 100 %), TV lines,
 * scan lines, pixels, henry, volt-ampere, joule, second, degree Celsius.
 */
typedef enum
{
  BW_DIMENSION_FREQUENCY,  /* Hz kHz MHz GHz */
  BW_DIMENSION_TIME,       /* s ms us ns */
  BW_DIMENSION_LENGTH,     /* m cm mm um in */
  BW_DIMENSION_VOLTAGE,    /* V mV */
  BW_DIMENSION_IRE,        /* IRE */
  BW_DIMENSION_RESISTANCE, /* ohm kohm Mohm */
  BW_DIMENSION_CAPACITANCE, /* F mF uF nF pF */
  BW_DIMENSION_CURRENT,    /* A mA */
  BW_DIMENSION_FRACTION,   /* %, held as a fraction */
  BW_DIMENSION_TV_LINES,   /* TV lines per picture height, written "lines" */
  BW_DIMENSION_LINES,      /* scanning lines, written "lines" */
  BW_DIMENSION_PIXELS,     /* px */
  BW_DIMENSION_INDUCTANCE, /* H mH uH */
  BW_DIMENSION_APPARENT_POWER, /* VA kVA */
  BW_DIMENSION_ENERGY,     /* J mJ */
  BW_DIMENSION_DURATION,   /* of work, held in seconds: h */
  BW_DIMENSION_TEMPERATURE, /* degC */
  BW_N_DIMENSIONS
} BwDimension;

#define BW_QUANTITY_ERROR (bw_quantity_error_quark ())

typedef enum
{
  BW_QUANTITY_ERROR_EMPTY,
  BW_QUANTITY_ERROR_NUMBER,
  BW_QUANTITY_ERROR_DECIMAL_MARK,
  BW_QUANTITY_ERROR_NO_UNIT,
  BW_QUANTITY_ERROR_UNIT,
  BW_QUANTITY_ERROR_RANGE
} BwQuantityError;

/**
 * BwRange:
 *
 * A closed interval in the base unit of its dimension. Both ends zero: not given.
 */
typedef struct
{
  double low;
  double high;
} BwRange;

#define BW_BANDS_MAX 8

/**
 * BwBands:
 *
 * Up to %BW_BANDS_MAX intervals; @n is how many are used.
 */
typedef struct
{
  guint n;
  BwRange at[BW_BANDS_MAX];
} BwBands;

/**
 * BwMeasured:
 * @value: in the base unit
 * @half_digit: half the place of its last digit, by which it may be off as it was written
 */
typedef struct
{
  double value;
  double half_digit;
} BwMeasured;

/**
 * BwReadAs:
 * @mark: the decimal mark, '.' or ','
 * @allowed: what the place allows, which may tell the unit of a bare number; both ends zero: any
 * @volts_per_ire: where a voltage may be written in IRE too; zero: it may not
 * @strict: as files are: with @mark alone, and always with a unit
 *
 * How a text is read.
 */
typedef struct
{
  char mark;
  BwRange allowed;
  double volts_per_ire;
  gboolean strict;
} BwReadAs;

/* The decimal mark of files and of --json, whatever the locale. */
#define BW_FILE_MARK '.'

GQuark bw_quantity_error_quark (void);

char bw_quantity_locale_mark (void);

gboolean bw_quantity_read (const char *text, BwDimension dimension, const BwReadAs *as,
                           BwMeasured *measured, GError **error);
gboolean bw_quantity_read_bands (const char *text, BwDimension dimension, const BwReadAs *as,
                                 BwBands *bands, GError **error);
gboolean bw_quantity_parse (const char *text, BwDimension dimension, char mark, double *value,
                            GError **error);
gboolean bw_quantity_parse_ratio (const char *text, BwDimension dimension, BwRatio *ratio,
                                  GError **error);
gboolean bw_quantity_parse_bands (const char *text, BwDimension dimension, char mark,
                                  BwBands *bands, GError **error);

char *bw_quantity_format (double value, BwDimension dimension, int digits, char mark);
char *bw_quantity_to_entry (double value, BwDimension dimension, const char *unit, char mark);
char *bw_measured_to_entry (const BwMeasured *measured, BwDimension dimension, const char *unit,
                            char mark);
char *bw_quantity_to_file (double value, BwDimension dimension, const char *unit);
char *bw_quantity_format_ratio (BwRatio ratio, BwDimension dimension);
char *bw_quantity_format_range (BwRange range, BwDimension dimension, int digits, char mark);
char *bw_quantity_bands_to_entry (const BwBands *bands, BwDimension dimension, const char *unit,
                                  char mark);
char *bw_quantity_bands_to_file (const BwBands *bands, BwDimension dimension, const char *unit);
double bw_quantity_in_unit (double value, BwDimension dimension, const char *unit);
const char *bw_quantity_screen_unit (BwDimension dimension, const char *unit);
char *bw_quantity_format_bands (const BwBands *bands, BwDimension dimension, int digits, char mark);
const char *bw_quantity_base_unit (BwDimension dimension);
const char *bw_quantity_units (BwDimension dimension);

double bw_measured_uncertainty (const BwMeasured *measured, double accuracy);

gboolean bw_near (double a, double b, double tolerance);

G_END_DECLS
