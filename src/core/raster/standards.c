/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "standards.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* VESA Coordinated Video Timings (CVT) 1.2 and Generalized Timing Formula (GTF) 1.1.
 *
 * Both floor or round expressions that lie exactly on the border for common sizes, so that the
 * result must not hang on floating point: times are kept as whole microseconds times whole
 * factors, and every floor and round is of a quotient of integers. */

G_DEFINE_QUARK (bw-standards-error-quark, bw_standards_error)

__extension__ typedef __int128 Wide;

#define CELL 8             /* pixels of a character cell */
#define MIN_SYNC_BACK_US 550 /* field sync and back porch together last at least this */
#define CVT_FRONT_PORCH 3
#define CVT_MIN_BACK_PORCH 7 /* CVT 1.2; earlier texts have 6, which matters below 576 lines */
#define RB_BLANKING 160
#define RB_SYNC 32
#define RB_FRONT_PORCH 48
#define RB_MIN_BLANKING_US 460
#define GTF_FRONT_PORCH 1
#define GTF_SYNC 3

/* The blanking curve with its customary constants C = 40, M = 600, K = 128, J = 20 gives a duty
 * of C' − M' × period = 30 % − 0.3 %/µs × period (C' = (C − J)·K/256 + J, M' = K/256·M). */
#define CURVE_OFFSET 30
#define CURVE_SLOPE_TENTHS 3
#define CVT_MIN_DUTY 20

static gint64
floor_divide (Wide num, Wide den)
{
  Wide quotient = num / den;
  return (gint64) (num % den != 0 && (num < 0) != (den < 0) ? quotient - 1 : quotient);
}

/* @a × @b / @den, floored; none of them negative. The product rarely needs more than 64 bits. */
static inline gint64
floor_of_product (gint64 a, gint64 b, gint64 den)
{
  gint64 product;
  if (!__builtin_mul_overflow (a, b, &product))
    return product / den;
  return (gint64) ((Wide) a * b / den);
}

static gint64
round_divide (Wide num, Wide den)
{
  return floor_divide (2 * num + den, 2 * den);
}

/* Borders of 1.8 %: 9/500. */
static int
floor_margin (int size, int step)
{
  return (int) floor_divide ((Wide) size * 9, (Wide) 500 * step) * step;
}

static int
round_margin (int size, int step)
{
  return (int) round_divide ((Wide) size * 9, (Wide) 500 * step) * step;
}

static gboolean
check_request (const BwFormulaRequest *request, GError **error)
{
  BwRatio rate = request->field_rate_hz;
  if (request->width < BW_FORMULA_SIZE_MIN || request->width > BW_FORMULA_SIZE_MAX
      || request->height < BW_FORMULA_SIZE_MIN || request->height > BW_FORMULA_SIZE_MAX)
    g_set_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_REQUEST,
                 _ ("%1$d×%2$d: width and height from %3$d to %4$d are allowed"), request->width,
                 request->height, BW_FORMULA_SIZE_MIN, BW_FORMULA_SIZE_MAX);
  else if (rate.den > 100000000 || rate.num < 10 * rate.den || rate.num > 400 * rate.den)
    g_set_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_REQUEST,
                 _ ("a field rate from 10 Hz to 400 Hz is allowed, with at most eight decimals"));
  else
    return TRUE;
  return FALSE;
}

/* The porches of field 2 of an interlaced raster are each half a line longer. */
static void
set_fields (BwRaster *raster, gboolean interlaced, int active, int front, int sync, int back)
{
  raster->scan = interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  raster->field[0] = (BwFieldTiming){ 2 * active, 2 * front, 2 * sync, 2 * back };
  raster->field[1] = raster->field[0];
  if (interlaced)
    {
      raster->field[1].front_porch++;
      raster->field[1].back_porch++;
    }
}

/* Whether the formula gave something that can exist, quickly; the line rate from the clock. */
static gboolean
settle_figures (BwRaster *raster)
{
  gint64 clock_hz = raster->pixel_clock_hz.num;
  gint64 total = bw_raster_h_total (raster);
  return raster->h_front_porch >= 0 && raster->h_sync >= 1
         && clock_hz >= (gint64) BW_LINE_RATE_MIN_HZ * total
         && clock_hz <= (gint64) BW_LINE_RATE_MAX_HZ * total
         && bw_ratio_make (clock_hz, total, &raster->line_rate_hz);
}

/* "640x480-59.94-reduced": what was asked for, the same in every locale. */
static char *
request_text (const BwFormulaRequest *request)
{
  char rate[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (rate, sizeof rate, "%.5g", bw_ratio_to_double (request->field_rate_hz));
  return g_strdup_printf ("%dx%d-%s%s%s%s", request->width, request->height, rate,
                          request->reduced ? "-reduced" : "",
                          request->interlaced ? "-interlaced" : "",
                          request->margins ? "-margins" : "");
}

static void
name_raster (BwRaster *raster, gboolean cvt, const BwFormulaRequest *request)
{
  g_autofree char *text = request_text (request);
  /* a name goes into files */
  g_autofree char *rate = bw_quantity_format (bw_ratio_to_double (request->field_rate_hz),
                                              BW_DIMENSION_FREQUENCY, 5, BW_FILE_MARK);
  raster->id = g_strconcat (cvt ? "cvt-" : "gtf-", text, NULL);
  raster->name = g_strdup_printf (_ ("%1$s: %2$d×%3$d, %4$s%5$s%6$s%7$s"), cvt ? "CVT" : "GTF",
                                  request->width, request->height, rate,
                                  request->reduced ? _ (", reduced blanking") : "",
                                  request->interlaced ? _ (", interlaced") : "",
                                  request->margins ? _ (", margins") : "");
  raster->source = g_strdup (cvt ? "VESA CVT 1.2" : "VESA GTF 1.1");
  raster->aliases = g_strdup ("");
  raster->note = g_strdup ("");
}

static BwRaster *
finish (BwRaster *raster, gboolean cvt, const BwFormulaRequest *request, GError **error)
{
  g_autoptr (GError) trouble = NULL;
  BwRatio total = { bw_raster_h_total (raster), 1 };

  name_raster (raster, cvt, request);
  if (raster->h_front_porch >= 0
      && bw_ratio_divide (raster->pixel_clock_hz, total, &raster->line_rate_hz)
      && bw_raster_check (raster, &trouble))
    return raster;
  g_set_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_NOT_REALISABLE,
               _ ("%1$s cannot give this: %2$s"), raster->name,
               trouble != NULL ? trouble->message
                               : _ ("the line's front porch would be negative, since the blanking "
                                    "curve fails at such a low line rate"));
  bw_raster_free (raster);
  return NULL;
}

/* CVT */

/* Field sync tells the aspect ratio. The ideal width for the height is floored to whole cells, as
 * the active width is: so 1360×768 counts as 16:9, which VESA DMT 0x28 confirms. */
static int
cvt_field_sync (int width, int height)
{
  /* width ≤ height × w / h < width + one cell, without a division */
#define IS_ASPECT(w, h) ((guint) (height * (w) - width * (h)) < CELL * (h))
  return IS_ASPECT (4, 3)     ? 4
         : IS_ASPECT (16, 9)  ? 5
         : IS_ASPECT (16, 10) ? 6
         : IS_ASPECT (5, 4)   ? 7
         : IS_ASPECT (15, 9)  ? 7
                              : 10;
#undef IS_ASPECT
}

/* What both kinds of blanking start from. The estimated line period is
 * (10⁶ · den/num − reserve) / lines µs, with num/den the field rate; @num_lines and @period_us keep
 * it as period_us / num_lines without a division. */
typedef struct
{
  int active;    /* pixels with margins */
  int lines;     /* of a field, without margins */
  int sync;
  gint64 double_lines; /* twice the lines that the estimate divides by */
  gint64 num_lines;
  gint64 period_us;
} CvtEstimate;

static CvtEstimate
cvt_estimate (const BwFormulaRequest *request, BwRaster *raster)
{
  BwRatio rate = request->field_rate_hz;
  CvtEstimate e = { 0 };
  gint64 reserve_us = request->reduced ? RB_MIN_BLANKING_US : MIN_SYNC_BACK_US;

  raster->h_active = request->width / CELL * CELL;
  raster->h_border = request->margins ? floor_margin (raster->h_active, CELL) : 0;
  e.lines = request->interlaced ? request->height / 2 : request->height;
  raster->v_border = request->margins ? floor_margin (e.lines, 1) : 0;
  e.active = raster->h_active + 2 * raster->h_border;
  e.sync = cvt_field_sync (raster->h_active, request->height);
  e.double_lines = 2 * (e.lines + 2 * raster->v_border);
  if (!request->reduced)
    e.double_lines += 2 * CVT_FRONT_PORCH + (request->interlaced ? 1 : 0);
  /* twice both, for the half line */
  e.num_lines = rate.num * e.double_lines;
  e.period_us = 2 * (1000000 * rate.den - reserve_us * rate.num);
  return e;
}

/* Clocks step by 0.25 MHz: @quarters is the clock in those steps. */
static BwRatio
quarter_megahertz (gint64 quarters)
{
  return (BwRatio){ quarters * 250000, 1 };
}

static void
cvt_standard (const BwFormulaRequest *request, BwRaster *raster)
{
  CvtEstimate e = cvt_estimate (request, raster);
  gint64 sync_back = floor_of_product (MIN_SYNC_BACK_US, e.num_lines, e.period_us) + 1;
  sync_back = MAX (sync_back, e.sync + CVT_MIN_BACK_PORCH);

  /* blanking / active = duty / (100 − duty), the duty being at least 20 %: 1/4 */
  gint64 slope = CURVE_SLOPE_TENTHS * e.period_us;
  gint64 duty = 10 * CURVE_OFFSET * e.num_lines - slope;
  gint64 rest = 10 * (100 - CURVE_OFFSET) * e.num_lines + slope;
  if (duty < 10 * CVT_MIN_DUTY * e.num_lines)
    {
      duty = CVT_MIN_DUTY;
      rest = 100 - CVT_MIN_DUTY;
    }
  int blanking = (int) floor_of_product (e.active, duty, rest) / (2 * CELL) * 2 * CELL;
  int total = e.active + blanking;

  raster->h_sync = total * 8 / 100 / CELL * CELL;
  raster->h_back_porch = blanking / 2;
  raster->h_front_porch = blanking / 2 - raster->h_sync;
  raster->h_polarity = BW_POLARITY_NEGATIVE;
  raster->v_polarity = BW_POLARITY_POSITIVE;
  raster->pixel_clock_hz = quarter_megahertz (floor_of_product (4 * total, e.num_lines, e.period_us));
  set_fields (raster, request->interlaced, e.lines, CVT_FRONT_PORCH, e.sync,
              (int) sync_back - e.sync);
}

static void
cvt_reduced (const BwFormulaRequest *request, BwRaster *raster)
{
  CvtEstimate e = cvt_estimate (request, raster);
  BwRatio rate = request->field_rate_hz;
  int least = CVT_FRONT_PORCH + e.sync + CVT_MIN_BACK_PORCH;
  gint64 blanking = floor_of_product (RB_MIN_BLANKING_US, e.num_lines, e.period_us) + 1;
  blanking = MAX (blanking, least);
  gint64 double_total = e.double_lines + 2 * blanking + (request->interlaced ? 1 : 0);

  raster->h_sync = RB_SYNC;
  raster->h_front_porch = RB_FRONT_PORCH;
  raster->h_back_porch = RB_BLANKING - RB_FRONT_PORCH - RB_SYNC;
  raster->h_polarity = BW_POLARITY_POSITIVE;
  raster->v_polarity = BW_POLARITY_NEGATIVE;
  raster->pixel_clock_hz = quarter_megahertz (floor_of_product (
      rate.num * double_total, e.active + RB_BLANKING, rate.den * 2 * 250000));
  set_fields (raster, request->interlaced, e.lines, CVT_FRONT_PORCH, e.sync,
              (int) blanking - CVT_FRONT_PORCH - e.sync);
}

static void
cvt_compute (const BwFormulaRequest *request, BwRaster *raster)
{
  if (request->reduced)
    cvt_reduced (request, raster);
  else
    cvt_standard (request, raster);
}

/**
 * bw_standards_cvt_figures:
 * @raster: (out caller-allocates): the timing alone, without id, names and source; owns nothing
 *
 * As bw_standards_cvt(), for who needs the figures of many rasters and no texts.
 *
 * Returns: %FALSE with @error in %BW_STANDARDS_ERROR
 */
gboolean
bw_standards_cvt_figures (const BwFormulaRequest *request, BwRaster *raster, GError **error)
{
  g_return_val_if_fail (request != NULL && raster != NULL, FALSE);
  static const BwRaster empty = { .pixel_repeat = 1 };
  if (!check_request (request, error))
    return FALSE;
  memcpy (raster, &empty, sizeof empty); /* an initialiser becomes rep stos, which is slow */
  cvt_compute (request, raster);
  if (settle_figures (raster))
    return TRUE;
  g_set_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_NOT_REALISABLE,
               _ ("VESA CVT 1.2 cannot give %1$d×%2$d at that rate"), request->width,
               request->height);
  return FALSE;
}

/**
 * bw_standards_cvt:
 *
 * VESA CVT 1.2: the width is floored to whole cells of eight pixels, the clock to 0.25 MHz, so
 * that the field rate comes out a little below what was asked for.
 *
 * Returns: (transfer full): the raster, or %NULL with @error in %BW_STANDARDS_ERROR
 */
BwRaster *
bw_standards_cvt (const BwFormulaRequest *request, GError **error)
{
  g_return_val_if_fail (request != NULL, NULL);
  if (!check_request (request, error))
    return NULL;
  BwRaster *raster = bw_raster_new ();
  cvt_compute (request, raster);
  return finish (raster, TRUE, request, error);
}

/* GTF */

static int
gtf_start (const BwFormulaRequest *request, BwRaster *raster)
{
  raster->h_active = (int) round_divide (request->width, CELL) * CELL;
  raster->h_border = request->margins ? round_margin (raster->h_active, CELL) : 0;
  int lines = request->interlaced ? (int) round_divide (request->height, 2) : request->height;
  raster->v_border = request->margins ? round_margin (lines, 1) : 0;
  raster->h_polarity = BW_POLARITY_NEGATIVE;
  raster->v_polarity = BW_POLARITY_POSITIVE;
  return lines;
}

/* Twice the lines of a field. */
static gint64
gtf_double_lines (const BwFormulaRequest *request, const BwRaster *raster, int lines,
                  gint64 sync_back)
{
  return 2 * (lines + 2 * raster->v_border + sync_back + GTF_FRONT_PORCH)
         + (request->interlaced ? 1 : 0);
}

/* Horizontal intervals for a line period of @period_num / @period_den µs. */
static void
gtf_line (BwRaster *raster, Wide period_num, Wide period_den)
{
  int active = raster->h_active + 2 * raster->h_border;
  Wide slope = CURVE_SLOPE_TENTHS * period_num;
  Wide duty = 10 * CURVE_OFFSET * period_den - slope;
  Wide rest = 10 * (100 - CURVE_OFFSET) * period_den + slope;
  int blanking = (int) round_divide (active * duty, rest * 2 * CELL) * 2 * CELL;
  int total = active + blanking;

  raster->h_sync = (int) round_divide ((Wide) total * 8, 100 * CELL) * CELL;
  raster->h_back_porch = blanking / 2;
  raster->h_front_porch = blanking / 2 - raster->h_sync;
}

/**
 * bw_standards_gtf:
 *
 * VESA GTF 1.1 from the field rate, with the customary blanking curve. The clock is not rounded, so
 * that the field rate is exactly what was asked for. Below a line rate of about 15 kHz the curve
 * gives a negative front porch, which is refused.
 *
 * Returns: (transfer full): the raster, or %NULL with @error in %BW_STANDARDS_ERROR
 */
BwRaster *
bw_standards_gtf (const BwFormulaRequest *request, GError **error)
{
  g_return_val_if_fail (request != NULL, NULL);
  if (!check_request (request, error))
    return NULL;
  BwRaster *raster = bw_raster_new ();
  BwRatio rate = request->field_rate_hz;
  int lines = gtf_start (request, raster);
  Wide period_us = 2 * ((Wide) 1000000 * rate.den - (Wide) MIN_SYNC_BACK_US * rate.num);
  gint64 sync_back = round_divide (
      (Wide) MIN_SYNC_BACK_US * rate.num * gtf_double_lines (request, raster, lines, 0),
      period_us);
  gint64 double_lines = gtf_double_lines (request, raster, lines, sync_back);
  BwRatio line_rate_hz;

  gtf_line (raster, (Wide) 2000000 * rate.den, (Wide) rate.num * double_lines);
  BwRatio total = { bw_raster_h_total (raster), 1 };
  if (bw_ratio_multiply (rate, (BwRatio){ double_lines, 2 }, &line_rate_hz))
    bw_ratio_multiply (line_rate_hz, total, &raster->pixel_clock_hz);
  set_fields (raster, request->interlaced, lines, GTF_FRONT_PORCH, GTF_SYNC,
              (int) sync_back - GTF_SYNC);
  return finish (raster, FALSE, request, error);
}

/* A rate that some raster may have: beyond, the formula's products would not fit. */
static gboolean
check_rate (BwRatio rate_hz, gint64 least_hz, gint64 most_hz, GError **error)
{
  if (rate_hz.num > 0 && rate_hz.den <= 100000000 && rate_hz.num / rate_hz.den >= least_hz
      && rate_hz.num / rate_hz.den < most_hz)
    return TRUE;
  g_set_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_REQUEST,
               _ ("a rate from %1$ld Hz to %2$ld Hz is allowed, with at most eight decimals"),
               (long) least_hz, (long) most_hz);
  return FALSE;
}

/* Vertical intervals for a known line rate; the field rate follows. */
static BwRaster *
gtf_fields (BwRaster *raster, const BwFormulaRequest *request, int lines, BwRatio line_rate_hz,
            GError **error)
{
  BwFormulaRequest answered = *request;
  gint64 sync_back = round_divide ((Wide) MIN_SYNC_BACK_US * line_rate_hz.num,
                                   (Wide) 1000000 * line_rate_hz.den);
  gint64 double_lines = gtf_double_lines (request, raster, lines, sync_back);

  set_fields (raster, request->interlaced, lines, GTF_FRONT_PORCH, GTF_SYNC,
              (int) sync_back - GTF_SYNC);
  if (!bw_ratio_multiply (line_rate_hz, (BwRatio){ 2, 1 }, &answered.field_rate_hz)
      || !bw_ratio_divide (answered.field_rate_hz, (BwRatio){ double_lines, 1 },
                           &answered.field_rate_hz))
    answered.field_rate_hz = BW_RATIO_NONE;
  return finish (raster, FALSE, &answered, error);
}

/**
 * bw_standards_gtf_line_rate:
 * @request: its field rate is not used
 * @line_rate_hz: the line rate wanted
 *
 * VESA GTF 1.1 from the line rate.
 *
 * Returns: (transfer full): the raster, or %NULL with @error in %BW_STANDARDS_ERROR
 */
BwRaster *
bw_standards_gtf_line_rate (const BwFormulaRequest *request, BwRatio line_rate_hz, GError **error)
{
  g_return_val_if_fail (request != NULL, NULL);
  BwFormulaRequest checked = *request;
  checked.field_rate_hz = (BwRatio){ 60, 1 };
  if (!check_request (&checked, error) || !check_rate (line_rate_hz, 1000, 1000000, error))
    return NULL;
  BwRaster *raster = bw_raster_new ();
  int lines = gtf_start (request, raster);
  gtf_line (raster, (Wide) 1000000 * line_rate_hz.den, line_rate_hz.num);
  bw_ratio_multiply (line_rate_hz, (BwRatio){ bw_raster_h_total (raster), 1 },
                     &raster->pixel_clock_hz);
  return gtf_fields (raster, request, lines, line_rate_hz, error);
}

/**
 * bw_standards_gtf_pixel_clock:
 * @request: its field rate is not used
 * @pixel_clock_hz: the pixel clock wanted
 *
 * VESA GTF 1.1 from the pixel clock: the line period solves
 * period = (C' − 100 + √((100 − C')² + 0.4·M'·active/clock)) / (2·M'), in ms and MHz.
 *
 * Returns: (transfer full): the raster, or %NULL with @error in %BW_STANDARDS_ERROR
 */
BwRaster *
bw_standards_gtf_pixel_clock (const BwFormulaRequest *request, BwRatio pixel_clock_hz,
                              GError **error)
{
  g_return_val_if_fail (request != NULL, NULL);
  BwFormulaRequest checked = *request;
  checked.field_rate_hz = (BwRatio){ 60, 1 };
  if (!check_request (&checked, error)
      || !check_rate (pixel_clock_hz, 100000, 10000000000, error))
    return NULL;
  BwRaster *raster = bw_raster_new ();
  BwRatio line_rate_hz = BW_RATIO_NONE;
  int lines = gtf_start (request, raster);
  double active = raster->h_active + 2 * raster->h_border;
  double rest = 100 - CURVE_OFFSET;
  double slope = 1000 * CURVE_SLOPE_TENTHS / 10.0; /* M', % for each ms */
  double clock_mhz = bw_ratio_to_double (pixel_clock_hz) / 1e6;
  double period_us
      = (sqrt (rest * rest + 0.4 * slope * active / clock_mhz) - rest) / 2 / slope * 1000;

  gtf_line (raster, (Wide) (period_us * 1e9), 1000000000);
  raster->pixel_clock_hz = pixel_clock_hz;
  bw_ratio_divide (pixel_clock_hz, (BwRatio){ bw_raster_h_total (raster), 1 }, &line_rate_hz);
  return gtf_fields (raster, request, lines, line_rate_hz, error);
}

/* Requests as text */

static gboolean
parse_word (const char *word, BwFormulaRequest *request)
{
  if (strcmp (word, "reduced") == 0)
    request->reduced = TRUE;
  else if (strcmp (word, "interlaced") == 0)
    request->interlaced = TRUE;
  else if (strcmp (word, "margins") == 0)
    request->margins = TRUE;
  else
    return FALSE;
  return TRUE;
}

/**
 * bw_formula_request_parse:
 * @text: "WIDTHxHEIGHT@FIELDRATE", then any of ",reduced", ",interlaced", ",margins"; the rate is a
 *   plain number of hertz or a quantity, and may be a ratio: "720x480@60 Hz * 1000 / 1001"
 * @request: (out): the request
 *
 * Returns: %FALSE with @error in %BW_STANDARDS_ERROR, leaving @request alone
 */
gboolean
bw_formula_request_parse (const char *text, BwFormulaRequest *request, GError **error)
{
  g_return_val_if_fail (text != NULL && request != NULL, FALSE);
  BwFormulaRequest result = { 0 };
  g_auto (GStrv) words = g_strsplit (text, ",", -1);
  g_auto (GStrv) halves = g_strsplit (words[0] != NULL ? words[0] : "", "@", 2);
  gboolean sound = g_strv_length (halves) == 2;
  gint64 width = 0, height = 0;
  char *rest = NULL;

  if (sound)
    {
      width = g_ascii_strtoll (halves[0], &rest, 10);
      sound = *rest == 'x' && g_ascii_isdigit (rest[1]);
      height = sound ? g_ascii_strtoll (rest + 1, &rest, 10) : 0;
      sound = sound && *rest == '\0' && width > 0 && width <= G_MAXINT && height > 0
              && height <= G_MAXINT;
    }
  if (sound)
    {
      /* "60" and "60000/1001" are hertz; the unit stands before what multiplies or divides. */
      gboolean unit = strpbrk (halves[1], "Hh") != NULL;
      g_autofree char *number = g_strndup (halves[1], strcspn (halves[1], "*/"));
      g_autofree char *rate
          = g_strconcat (number, unit ? "" : " Hz ", halves[1] + strlen (number), NULL);
      sound = bw_quantity_parse_ratio (rate, BW_DIMENSION_FREQUENCY, &result.field_rate_hz, NULL);
    }
  for (guint i = 1; sound && words[i] != NULL; i++)
    sound = parse_word (g_strstrip (words[i]), &result);
  if (!sound)
    {
      g_autofree char *shown = g_utf8_make_valid (text, -1);
      g_set_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_REQUEST,
                   _ ("“%s”: write WIDTHxHEIGHT@RATE, then ,reduced ,interlaced ,margins as "
                      "needed, such as 640x480@60,interlaced"),
                   shown);
      return FALSE;
    }
  result.width = (int) width;
  result.height = (int) height;
  *request = result;
  return TRUE;
}
