/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/colour-system.h"

G_BEGIN_DECLS

/* From gamma-corrected R'G'B' to what is on the wire, and colour bars. */

/* Gamma-corrected primaries, 0 black to 1 white. */
typedef struct
{
  double r;
  double g;
  double b;
} BwRgb;

/* Luma 0 to 1 and colour differences −0.5 to 0.5. */
typedef struct
{
  double y;
  double pb;
  double pr;
} BwYPbPr;

typedef enum
{
  BW_MATRIX_601, /* ITU-R BT.601 3.5 */
  BW_MATRIX_709, /* ITU-R BT.709: 0.2126, 0.7152, 0.0722 */
  BW_N_MATRICES
} BwMatrix;

typedef enum
{
  BW_BAR_WHITE,
  BW_BAR_YELLOW,
  BW_BAR_CYAN,
  BW_BAR_GREEN,
  BW_BAR_MAGENTA,
  BW_BAR_RED,
  BW_BAR_BLUE,
  BW_BAR_BLACK,
  BW_N_BARS
} BwBar;

typedef enum
{
  BW_BARS_100, /* 100/0/100/0; with setup 100/7.5/100/7.5 */
  BW_BARS_75,  /* 75/0/75/0; with setup 75/7.5/75/7.5 */
  BW_BARS_75_WHITE_100, /* 100/0/75/0, EBU bars: white full, colours at 75 % */
  BW_N_BARS_FORMS
} BwBarsForm;

/* Ways in which component levels have been laid down. */
typedef enum
{
  BW_COMPONENT_700,          /* Y 700 mV, Pb and Pr ±350 mV at 100 % (EBU N10, SMPTE) */
  BW_COMPONENT_SETUP_4_3,    /* older 525 lines: setup on Y, differences × 4/3 */
  BW_COMPONENT_SETUP_925,    /* older 525 lines: setup on Y, differences × 0.925 */
  BW_N_COMPONENT_FORMS
} BwComponentForm;

/**
 * BwCodedLevels:
 * @luma_v: above blanking, across 75 Ω
 * @chroma_pp_v: peak to peak
 * @phase_deg: of the subcarrier against +(B−Y), 0 to 360; zero without chroma
 * @max_v: highest excursion of luma with chroma
 * @min_v: lowest
 *
 * A colour in composite or Y/C.
 */
typedef struct
{
  double luma_v;
  double chroma_pp_v;
  double phase_deg;
  double max_v;
  double min_v;
} BwCodedLevels;

extern const BwKindTable bw_bars_forms;
extern const BwKindTable bw_bars;

void bw_rgb_to_ypbpr (BwMatrix matrix, const BwRgb *rgb, BwYPbPr *ypbpr);
void bw_bar_rgb (BwBar bar, BwBarsForm form, BwRgb *rgb);
void bw_rgb_to_coded (BwColourSystem system, double setup_ire, const BwRgb *rgb,
                      BwCodedLevels *levels);
void bw_ypbpr_to_volts (BwComponentForm form, const BwYPbPr *ypbpr, double volts[3]);

G_END_DECLS
