/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/sheet.h"

G_BEGIN_DECLS

/* What a tube, a path and a source can resolve, link by link. TV lines (TVL) are counted dark and
 * light both, one cycle being two lines, over the height of the viewable area; the raster is taken
 * to fill that area. */

typedef enum
{
  BW_LINK_SOURCE, /* its samples, or the highest frequency that it gives */
  BW_LINK_SIGNAL, /* the system's video bandwidth; the trap or comb of a decoder */
  BW_LINK_LEAD,
  BW_LINK_AMPLIFIER, /* the set's or the input's video bandwidth */
  BW_LINK_SPOT,
  BW_LINK_MASK,
  BW_N_LINKS
} BwDetailLink;

typedef enum
{
  BW_LUMA_TRAP, /* a notch at the subcarrier */
  BW_LUMA_COMB,
  BW_N_LUMA_FILTERS
} BwLumaFilter;

/**
 * BwDetailCase:
 * @diagonal_m: viewable: of the tube, or of the area inside it that the picture takes
 * @aspect: width to height of that area
 * @mask: BwMask
 * @pitch_m: as quoted; zero: not known
 * @spot_m: full width at half of the peak; zero: not known
 * @bandwidth_hz: of the video amplifiers at -3 dB; zero: not known
 * @active_s: active line time of the raster; zero: no raster, and no link that counts in hertz
 * @active_lines: of picture in a whole frame
 * @samples: of the picture across the line; zero: not sampled, or not known
 * @in_phase: whether the samples are drawn one by one, as a computer does: then alternate ones are in
 *   phase with what is to be seen
 * @interlaced: whether the frame is two fields
 * @signal: BwSignal
 * @system: BwColourSystem
 * @filter: BwLumaFilter; of composite with a subcarrier alone
 * @detail_hz: highest frequency that the source gives; zero: follows from @samples
 * @lead_hz: frequency at which the lead loses 3 dB (bw_lead_3_db_hz()); zero: no lead, or none
 *   that matters
 * @overscan_h: share of the scanned width beyond the viewable area, both sides together
 * @overscan_v: likewise of the height
 * @kell: vertical lines resolved per scanned line, 0 to 1
 * @interlace: further factor where the picture is interlaced, 0 to 1
 * @claimed_lines: TV lines claimed; zero: none
 * @claimed_half_digit: by how much the claim may be less, as its last digit leaves open; zero: nothing
 *
 * What is to be computed. Plain numbers, so that a page can move any one of them.
 */
typedef struct
{
  double diagonal_m;
  BwRatio aspect;
  guint mask;
  double pitch_m;
  double spot_m;
  double bandwidth_hz;
  double active_s;
  double active_lines;
  int samples;
  gboolean in_phase;
  gboolean interlaced;
  guint signal;
  guint system;
  guint filter;
  double detail_hz;
  double lead_hz;
  double overscan_h;
  double overscan_v;
  double kell;
  double interlace;
  double claimed_lines;
  double claimed_half_digit;
} BwDetailCase;

/* Modulation at which detail is called lost, seen and crisp. The lines of a wedge are lost to the eye
 * at a few per cent (common practice, no source). */
#define BW_MODULATION_LIMIT 0.03 /* of a Gaussian spot: a line is 1.18 sigma wide */
#define BW_MODULATION_SEEN 0.10
#define BW_MODULATION_CRISP 0.50
#define BW_N_MODULATIONS 3

/* Mask columns to each line for detail that is good to look at (Poynton, Digital Video and HDTV:
 * 1.2 triads or more to a pixel). */
#define BW_MASK_PRACTICAL 1.2

/* What a dot mask's quoted pitch becomes along the horizontal: cos 30 degrees (hexagonal). */
#define BW_DOT_MASK_COLUMNS 0.86602540378443865

/* Where the width of the spot comes from that the line structure is drawn with. A typical one is no link of the
 * chain: it limits nothing, and no claim is held against it. */
typedef enum
{
  BW_SPOT_GIVEN,
  BW_SPOT_BY_PITCH,    /* typical: BW_SPOT_PER_PITCH of a mask's pitch as quoted */
  BW_SPOT_BY_DIAGONAL, /* typical: BW_SPOT_PER_DIAGONAL of the tube's diagonal */
  BW_N_SPOT_ORIGINS
} BwSpotOrigin;

/* A tube with a triad pitch of 0.31 mm has a spot of 0.63 mm (Poynton, Digital Video and HDTV, figure 5.9); one
 * of 355 mm has a spot of 0.8 mm (one published source on the convergence that viewers accept). Both are single
 * tubes: the figures stand for what is usual, and can be off by a third. */
#define BW_SPOT_PER_PITCH (0.63 / 0.31)
#define BW_SPOT_PER_DIAGONAL (0.8 / 355)

/**
 * BwKell:
 * @factor: lines resolved for each line that is scanned
 * @given_by: who gives it, to be translated
 */
typedef struct
{
  double factor;
  const char *given_by;
} BwKell;

#define BW_N_KELL_VALUES 4

typedef enum
{
  BW_CLAIM_NONE,         /* nothing is claimed */
  BW_CLAIM_SUPPORTED,    /* by mask, spot and bandwidth, as far as they are known */
  BW_CLAIM_BY_BANDWIDTH, /* by the bandwidth alone: the classic trap */
  BW_CLAIM_BY_TUBE,      /* by mask and spot, but not by the bandwidth */
  BW_CLAIM_NOT_SUPPORTED,
  BW_CLAIM_NOT_TOGETHER, /* each limit alone carries it, all together do not */
  BW_CLAIM_UNKNOWN, /* no pitch, spot or bandwidth is known */
  BW_N_CLAIMS
} BwClaim;

/**
 * BwDetail:
 * @width_m: of the viewable area
 * @pitch_h_m: horizontal pitch of the mask's columns
 * @stripes_across: columns of the mask (one of each colour) across the width
 * @mask_tvl: sampling limit, one column a line: height / @pitch_h_m
 * @mask_practical_tvl: %BW_MASK_PRACTICAL columns a line
 * @bandwidth_tvl: of the video amplifiers, over the whole active line: 2·B·T/aspect
 * @source_tvl: likewise, of the source's samples (samples/aspect) or its highest frequency
 * @signal_tvl: likewise, of the signal kind
 * @lead_tvl: likewise, of the lead
 * @spot_tvl: where the spot's MTF is 3 %
 * @limit_tvl: of each link, as said in the comment of bw_detail_compute(); zero: not known
 * @level_tvl: where each link's own MTF falls to 3 %, 10 % and 50 %; zero: not known
 * @limiting_tvl: what a person reads off a wedge: where the product of the links' MTF falls to
 *   %BW_MODULATION_LIMIT; zero: none known
 * @combined_tvl: from 1/TVL² of the links known, as published figures are combined; zero: none known
 * @mtf_tvl: where the product of the links' MTF falls to 3 %, 10 % and 50 %; zero: none known
 * @loss: of each link at @limiting_tvl: its share of the whole loss in decibels; sum 1
 * @limited_by: the link of the greatest loss; BW_N_LINKS: none known
 * @seen_lines: of the frame, inside the viewable area
 * @vertical_lines: resolved, from the lines that are seen, Kell and interlace
 * @line_pitch_m: on the glass, of the whole frame: both fields where they are two
 * @line_spot_m: width of the spot that draws the lines: that of the case, else a typical one; zero: neither
 * @line_spot_from: BwSpotOrigin
 * @line_width_ratio: that spot to line pitch; zero: not known
 * @line_modulation: brightness of the line structure, (max-min)/(max+min); -1: no spot or no
 *   raster known
 * @moire_samples_mask_m: period on the glass of the beat of samples and mask columns, or of the
 *   second harmonic of the coarser of them; zero: none that is longer than both
 * @moire_lines_mask_m: likewise of the line pitch and the rows of a dot mask; zero: none
 * @arc_minute_m: distance at which a line pitch subtends one arc minute
 * @claim: %BW_CLAIM_NONE and zeros below without a claim
 * @pitch_for_claim_m: the coarsest, as the mask's pitch is quoted, at its sampling limit; zero
 *   for a tube without a mask
 * @spot_for_claim_m: the widest
 * @bandwidth_for_claim_hz: the least; zero without a raster
 *
 * What follows. All zero where a figure needed is not known.
 */
typedef struct
{
  double width_m;
  double height_m;
  double pitch_h_m;
  double stripes_across;
  double mask_tvl;
  double mask_practical_tvl;
  double bandwidth_tvl;
  double source_tvl;
  double signal_tvl;
  double lead_tvl;
  double spot_tvl;
  double limit_tvl[BW_N_LINKS];
  double level_tvl[BW_N_LINKS][BW_N_MODULATIONS];
  double limiting_tvl;
  double combined_tvl;
  double mtf_tvl[BW_N_MODULATIONS];
  double loss[BW_N_LINKS];
  guint limited_by;
  double seen_lines;
  double vertical_lines;
  double line_pitch_m;
  double line_spot_m;
  guint line_spot_from;
  double line_width_ratio;
  double line_modulation;
  double moire_samples_mask_m;
  double moire_lines_mask_m;
  double arc_minute_m;
  BwClaim claim;
  double pitch_for_claim_m;
  double spot_for_claim_m;
  double bandwidth_for_claim_hz;
} BwDetail;

extern const BwKindTable bw_detail_links;
extern const BwKindTable bw_luma_filters;
extern const BwKindTable bw_claims;
extern const BwKindTable bw_spot_origins;
extern const double bw_modulations[BW_N_MODULATIONS];
extern const BwKell bw_kell_values[BW_N_KELL_VALUES];

void bw_detail_case_init (BwDetailCase *what);
void bw_detail_case_from (BwDetailCase *what, const BwMonitor *monitor, const BwInput *input,
                          const BwSource *source, const BwRaster *raster);
void bw_detail_case_set_area (BwDetailCase *what, const BwMonitor *monitor, BwRatio aspect);
void bw_detail_compute (const BwDetailCase *what, BwDetail *detail);

double bw_tvl_from_hz (double frequency_hz, double active_s, double aspect);
double bw_hz_from_tvl (double tvl, double active_s, double aspect);
double bw_trap_edge_hz (double subcarrier_hz);

double bw_detail_link_mtf (const BwDetailCase *what, BwDetailLink link, double tvl);
double bw_detail_mtf (const BwDetailCase *what, double tvl);
double bw_gaussian_mtf (double width_m, double cycles_per_m);

double bw_line_modulation (double width_to_pitch);
double bw_line_brightness (double width_to_pitch, double place);
double bw_beat_period_m (double a_m, double b_m);

char *bw_claim_says (const BwDetailCase *what, const BwDetail *detail, char mark);
char *bw_detail_says (const BwDetail *detail, char mark);
char *bw_detail_spot_says (const BwDetail *detail, char mark);

G_END_DECLS
