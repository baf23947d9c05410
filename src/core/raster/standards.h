/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "raster.h"

G_BEGIN_DECLS

/* Rasters that a formula gives. */

/**
 * BwFormulaRequest:
 * @width: active pixels wanted
 * @height: active lines of the frame wanted
 * @field_rate_hz: fields a second (frames a second if progressive), exactly
 * @interlaced: two fields to the frame
 * @reduced: CVT: reduced blanking version 1
 * @margins: 1.8 % of border on each side
 */
typedef struct
{
  int width;
  int height;
  BwRatio field_rate_hz;
  gboolean interlaced;
  gboolean reduced;
  gboolean margins;
} BwFormulaRequest;

#define BW_STANDARDS_ERROR (bw_standards_error_quark ())

typedef enum
{
  BW_STANDARDS_ERROR_REQUEST,       /* a size or rate that no formula takes */
  BW_STANDARDS_ERROR_NOT_REALISABLE /* the formula gives a negative porch or blanking */
} BwStandardsError;

#define BW_FORMULA_SIZE_MIN 64
#define BW_FORMULA_SIZE_MAX 8192

GQuark bw_standards_error_quark (void);

gboolean bw_standards_cvt_figures (const BwFormulaRequest *request, BwRaster *raster,
                                   GError **error);
BwRaster *bw_standards_cvt (const BwFormulaRequest *request, GError **error);
BwRaster *bw_standards_gtf (const BwFormulaRequest *request, GError **error);
BwRaster *bw_standards_gtf_line_rate (const BwFormulaRequest *request, BwRatio line_rate_hz,
                                      GError **error);
BwRaster *bw_standards_gtf_pixel_clock (const BwFormulaRequest *request, BwRatio pixel_clock_hz,
                                        GError **error);

gboolean bw_formula_request_parse (const char *text, BwFormulaRequest *request, GError **error);

G_END_DECLS
