/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "model-private.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of the drawn levels lies. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_LEVELS_LEAVE_NOTE,
  BW_LEVELS_LEAVE_BARS,
  BW_LEVELS_LEAVE_RIGHT, /* the level that would be right */
  BW_LEVELS_LEAVE_IRE,   /* beside the names of the levels */
  BW_LEVELS_LEAVE_EXTREMES,
  BW_LEVELS_LEAVE_LONG_CAPTION,
  BW_LEVELS_LEAVE_NAMES,
  BW_N_LEVELS_LEAVES
} BwLevelsLeave;

/* The page */

#define BW_LEVELS_NAMES_MAX 8

/**
 * BwLevelName:
 * @name: in the language of the screen
 * @volts: as it is stated, above blanking
 * @extreme: whether it is one that the picture reaches, not one that a standard lays down
 */
typedef struct
{
  const char *name;
  double volts;
  gboolean extreme;
} BwLevelName;

/**
 * BwLevelsPanel:
 * @gain: from the stated level to that on the wire
 * @low_v: at @bottom, on the wire
 * @high_v: at @top
 * @tick_v: of the scale at the left; @tick_ire: at the right, zero where there is none
 * @name: the levels that have one, from high to low
 * @burst: label of the burst's dimension; without width: none
 */
typedef struct
{
  BwWireLevels levels;
  double gain;
  double low_v;
  double high_v;
  double top;
  double bottom;
  double tick_v;
  double tick_ire;
  BwLevelName name[BW_LEVELS_NAMES_MAX];
  BwBox name_box[BW_LEVELS_NAMES_MAX]; /* without width: no place */
  guint n_names;
  BwBox burst;
} BwLevelsPanel;

typedef struct
{
  const BwLevelsView *what;
  BwLevelsModel *model;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwLevelsLeave */
  BwLevelsWindow window;
  BwViewRange across;
  BwLevelsPanel panel[BW_N_CONDUCTORS];
  guint n_panels;
  double left;
  double right;
  double names_x; /* where the names of the levels begin */
  double top;     /* of the first panel */
  double axis_y;  /* top of the figures of the time axis */
  double words_y; /* top of the caption */
  double tick_s;
} BwLevelsLayout;

static inline gboolean
bw_levels_keeps (const BwLevelsLayout *layout, BwLevelsLeave leave)
{
  return layout->left_out <= (guint) leave;
}

static inline double
bw_levels_x (const BwLevelsLayout *layout, double time_s)
{
  return bw_view_range_place (&layout->across, time_s, layout->left, layout->right);
}

static inline double
bw_levels_y (const BwLevelsPanel *panel, double wire_v)
{
  return panel->bottom
         + (wire_v - panel->low_v) / (panel->high_v - panel->low_v) * (panel->top - panel->bottom);
}

static inline double
bw_levels_ire (const BwLevelsPanel *panel, double volts)
{
  return volts / panel->levels.volts_per_ire;
}

void bw_levels_whole (const BwLevelsView *what, BwViewRange *across);
void bw_levels_init_panels (BwLevelsLayout *layout);
void bw_levels_place_all (BwLevelsLayout *layout);
gboolean bw_levels_is_large_enough (const BwLevelsLayout *layout);
gboolean bw_levels_allowed (const BwLevelsView *what, const BwLevelsPanel *panel,
                            BwReadingKind kind, BwRange *volts);

gboolean bw_levels_claim_words (BwLevelsLayout *layout);
gboolean bw_levels_claim_labels (BwLevelsLayout *layout);

char *bw_levels_text_level (const BwLevelsLayout *layout, const BwLevelsPanel *panel, guint i);
char *bw_levels_text_burst (const BwLevelsLayout *layout, const BwLevelsPanel *panel, guint lines);
char *bw_levels_text_note (const BwLevelsView *what);

gboolean bw_levels_shows_curve (const BwLevelsModel *model, BwConductor conductor, double unit_s);
double bw_levels_unit_s (const BwLevelsLayout *layout);
char *bw_levels_describe (const BwLevelsLayout *layout);
void bw_levels_take_words (BwDrawing *drawing, const BwLevelsLayout *layout);
BwInkRole bw_levels_ink (BwConductor conductor);
void bw_levels_set_dash (cairo_t *cr, BwConductor conductor, double text);
gboolean bw_levels_has_bars (const BwLevelsLayout *layout);
void bw_levels_claim_burst (BwLevelsLayout *layout, BwLevelsPanel *panel);
double bw_levels_burst_x (const BwLevelsLayout *layout, double *burst_end_x);
void bw_levels_dwell_draw (const BwLevelsDwell *dwell, cairo_t *cr, const BwInk *ink,
                           BwInkRole role, const BwBox *box);
void bw_levels_draw_trace (const BwLevelsLayout *layout, cairo_t *cr, const BwLevelsPanel *panel);
void bw_levels_layout_draw (const BwLevelsLayout *layout, cairo_t *cr);

G_END_DECLS
