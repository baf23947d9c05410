/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static const BwKind bars[BW_N_BARS] = {
  [BW_BAR_WHITE] = { "white", N_ ("white") },     [BW_BAR_YELLOW] = { "yellow", N_ ("yellow") },
  [BW_BAR_CYAN] = { "cyan", N_ ("cyan") },        [BW_BAR_GREEN] = { "green", N_ ("green") },
  [BW_BAR_MAGENTA] = { "magenta", N_ ("magenta") }, [BW_BAR_RED] = { "red", N_ ("red") },
  [BW_BAR_BLUE] = { "blue", N_ ("blue") },        [BW_BAR_BLACK] = { "black", N_ ("black") },
};
const BwKindTable bw_bars = { BW_N_BARS, bars };

/* Named by white/black/brightest/darkest colour (ITU-R BT.471). */
static const BwKind bars_forms[BW_N_BARS_FORMS] = {
  [BW_BARS_100] = { "100", N_ ("100 %") },
  [BW_BARS_75] = { "75", N_ ("75 %") },
  [BW_BARS_75_WHITE_100] = { "ebu", N_ ("EBU, 100/0/75/0") },
};
const BwKindTable bw_bars_forms = { BW_N_BARS_FORMS, bars_forms };

/* Shares of R and B in luma; G has the rest. */
static const struct
{
  double r;
  double b;
} luma_shares[BW_N_MATRICES] = {
  [BW_MATRIX_601] = { 0.299, 0.114 },
  [BW_MATRIX_709] = { 0.2126, 0.0722 },
};

/* The factors on B−Y and R−Y in composite. In NTSC they are what makes 100 % yellow and cyan peak
 * at exactly 4/3 of white (SMPTE 170M clause 10); PAL writes 0.493 and 0.877 (ITU-R BT.1700). */
typedef struct
{
  double b;
  double r;
} ChromaFactors;

static const ChromaFactors ntsc_factors = { 0.492111041, 0.877283220 };
static const ChromaFactors pal_factors = { 0.493, 0.877 };

/**
 * bw_rgb_to_ypbpr:
 * @ypbpr: (out caller-allocates): Y = Kr·R + Kg·G + Kb·B, Pb = (B − Y) / (2·(1 − Kb)),
 *   Pr = (R − Y) / (2·(1 − Kr))
 */
void
bw_rgb_to_ypbpr (BwMatrix matrix, const BwRgb *rgb, BwYPbPr *ypbpr)
{
  g_return_if_fail (matrix < BW_N_MATRICES && rgb != NULL && ypbpr != NULL);
  double kr = luma_shares[matrix].r, kb = luma_shares[matrix].b;
  double y = kr * rgb->r + (1 - kr - kb) * rgb->g + kb * rgb->b;
  *ypbpr = (BwYPbPr){ y, (rgb->b - y) / (2 * (1 - kb)), (rgb->r - y) / (2 * (1 - kr)) };
}

/**
 * bw_bar_rgb:
 * @rgb: (out caller-allocates): the primaries of @bar
 */
void
bw_bar_rgb (BwBar bar, BwBarsForm form, BwRgb *rgb)
{
  g_return_if_fail (bar < BW_N_BARS && rgb != NULL);
  double full = form == BW_BARS_100 || (form == BW_BARS_75_WHITE_100 && bar == BW_BAR_WHITE) ? 1
                                                                                            : 0.75;
  /* The order of the bars is that of falling luma: G counts most, then R, then B. */
  gboolean g = bar <= BW_BAR_GREEN;
  gboolean r = bar == BW_BAR_WHITE || bar == BW_BAR_YELLOW || bar == BW_BAR_MAGENTA
               || bar == BW_BAR_RED;
  gboolean b = bar == BW_BAR_WHITE || bar == BW_BAR_CYAN || bar == BW_BAR_MAGENTA
               || bar == BW_BAR_BLUE;
  *rgb = (BwRgb){ r ? full : 0, g ? full : 0, b ? full : 0 };
}

/**
 * bw_rgb_to_coded:
 * @setup_ire: black above blanking; scales luma and chroma by (100 − setup)/100
 * @levels: (out caller-allocates): the colour in composite, in volts across 75 Ω. SECAM's
 *   frequency-modulated chroma has no such amplitude: it is left zero
 *
 * N = k·Y + setup + k·u·(B − Y)·sin + k·v·(R − Y)·cos, with k = (100 − setup)/100 (SMPTE 170M
 * clause 10; ITU-R BT.1700 with setup zero).
 */
void
bw_rgb_to_coded (BwColourSystem system, double setup_ire, const BwRgb *rgb, BwCodedLevels *levels)
{
  g_return_if_fail (rgb != NULL && levels != NULL);
  const BwSystemFacts *facts = bw_system_facts (system);
  gboolean ntsc = facts->chroma == BW_CHROMA_QUADRATURE;
  gboolean has_phase = bw_system_has_phase (system);
  ChromaFactors factors = ntsc ? ntsc_factors : pal_factors;
  double scale_v = facts->white_v * (1 - setup_ire / 100);
  BwYPbPr ypbpr;
  bw_rgb_to_ypbpr (BW_MATRIX_601, rgb, &ypbpr);

  double u = has_phase ? factors.b * (rgb->b - ypbpr.y) : 0;
  double v = has_phase ? factors.r * (rgb->r - ypbpr.y) : 0;
  double amplitude = hypot (u, v);
  double phase_deg = amplitude > 1e-12 ? atan2 (v, u) * 180 / G_PI : 0;

  levels->luma_v = bw_ire_to_volts (system, setup_ire) + scale_v * ypbpr.y;
  levels->chroma_pp_v = 2 * scale_v * amplitude;
  levels->phase_deg = phase_deg < 0 ? phase_deg + 360 : phase_deg;
  levels->max_v = levels->luma_v + levels->chroma_pp_v / 2;
  levels->min_v = levels->luma_v - levels->chroma_pp_v / 2;
}

/**
 * bw_ypbpr_to_volts:
 * @volts: (out): Y, Pb and Pr across 75 Ω. Setup is added to Y alone, never to Pb or Pr
 *
 * The older forms with setup: Y on the 714 mV scale and differences × 4/3 of the 700 mV form, or Y
 * on the 700 mV scale and differences × 0.925 (the first common practice, the second from memory).
 */
void
bw_ypbpr_to_volts (BwComponentForm form, const BwYPbPr *ypbpr, double volts[3])
{
  g_return_if_fail (form < BW_N_COMPONENT_FORMS && ypbpr != NULL);
  static const struct
  {
    double white_v;
    double setup;
    double difference;
  } forms[BW_N_COMPONENT_FORMS] = {
    [BW_COMPONENT_700] = { BW_WHITE_7_3_V, 0, 1 },
    [BW_COMPONENT_SETUP_4_3] = { BW_WHITE_10_4_V, 0.075, 4.0 / 3 },
    [BW_COMPONENT_SETUP_925] = { BW_WHITE_7_3_V, 0.075, 0.925 },
  };
  volts[0] = forms[form].white_v * (forms[form].setup + (1 - forms[form].setup) * ypbpr->y);
  volts[1] = 0.7 * forms[form].difference * ypbpr->pb;
  volts[2] = 0.7 * forms[form].difference * ypbpr->pr;
}
