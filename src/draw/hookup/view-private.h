/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "connector-face.h"
#include "core/hookup/wiring.h"
#include "draw/base/chart.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of a drawn plan lies. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_HOOKUP_LEAVE_INNER_FACES,
  BW_HOOKUP_LEAVE_LEADS,
  BW_HOOKUP_LEAVE_LONG_CAPTION,
  BW_HOOKUP_LEAVE_RETURNS,
  BW_HOOKUP_LEAVE_SETTINGS,
  BW_HOOKUP_LEAVE_SPREAD,
  BW_HOOKUP_LEAVE_LEVELS,
  BW_HOOKUP_LEAVE_FACES,
  BW_HOOKUP_LEAVE_CAPTION,
  BW_N_HOOKUP_LEAVES
} BwHookupLeave;

/* A part in a row. */
typedef enum
{
  BW_HOOKUP_SERIES,
  BW_HOOKUP_SHUNT,
  BW_HOOKUP_CAPACITOR
} BwHookupSymbol;

#define BW_HOOKUP_MAX_SYMBOLS (BW_NETWORK_MAX + 2)

typedef struct
{
  BwHookupSymbol symbol;
  gboolean at_end; /* stands at the far end of the row */
  gboolean terminates; /* is the terminator there */
  char *text;      /* its value */
  double width;    /* of its place in the row */
  double x;        /* left edge of that */
  BwBox box;       /* what is drawn of it */
} BwHookupSymbolPlace;

/* A conductor, or what switches, of one lead. */
typedef struct
{
  guint hop;
  const BwHookupConnection *connection; /* NULL: pins that are joined without carrying video */
  guint index;                          /* of @connection */
  int pin[2];                           /* near and far end; see BwConnection */
  int ground[2];
  BwInkRole role;
  BwDash dash;
  char *label;
  char *returns; /* NULL: none */
  BwHookupSymbolPlace symbols[BW_HOOKUP_MAX_SYMBOLS];
  guint n_symbols;
  guint units; /* lines of the page: two with something under the wire */
  double left; /* of its parts and label */
  double right;
  double y;        /* of the row */
  double start[2]; /* where the wire starts and ends: x */
  double start_y[2];
  double exit_y[2];    /* height at which it leaves the face */
  double channel_x[2]; /* where it goes up or down to its row */
  gboolean has_pin[2]; /* it starts at a contact of a face */
} BwHookupRow;

/* One end of a lead. */
typedef struct
{
  guint connector;
  gboolean shown; /* as a face */
  BwFace face;
  BwContactMark marks[BW_FACE_MAX_NUMBER + 1];
  double width; /* with the room for the wires to spread */
} BwHookupEnd;

typedef struct
{
  guint band;
  guint first; /* row */
  guint n;
  BwHookupEnd end[2]; /* near, far */
  double units;       /* height of its rows */
  double before;      /* widest parts at the near end of a row */
  double label;       /* widest label */
  double behind;      /* widest parts at the far end */
  double left;        /* of its near plug */
  double right;
  double label_x;
  double gap[2]; /* to the box beside it; zero: there is none */
} BwHookupLead;

/* A row of the chain: leads and boxes side by side. */
typedef struct
{
  guint first; /* lead */
  guint n;
  double top;        /* of the names above it */
  double body;       /* top of its plugs and rows */
  double bottom;     /* of those */
  double row_height; /* of one unit */
} BwHookupBand;

#define BW_HOOKUP_MAX_LEADS (BW_PLAN_MAX_BOXES + 1)

typedef struct
{
  BwBox box;
  guint after; /* number of the lead before it */
} BwHookupBoxPlace;

/* The plan laid out for one page. */
typedef struct
{
  const BwHookupView *what;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwHookupLeave */
  GArray *rows;   /* BwHookupRow */
  guint n_leads;
  BwHookupLead leads[BW_HOOKUP_MAX_LEADS];
  guint n_bands;
  BwHookupBand bands[BW_HOOKUP_MAX_LEADS];
  guint n_boxes;
  BwHookupBoxPlace boxes[2 * BW_HOOKUP_MAX_LEADS];
  double box_width;
  double plug_size;
  double head_y;     /* middle of the head */
  double marks_x[2]; /* left edges of the verdicts' marks */
  double foot_y;     /* top of settings and levels */
  double table_y;    /* top of the levels */
  double table_right;
  double words_y; /* top of the caption */
  double line_y;  /* of a plan that is none: the broken line */
} BwHookupLayout;

static inline gboolean
bw_hookup_keeps (const BwHookupLayout *layout, BwHookupLeave leave)
{
  return layout->left_out <= (guint) leave;
}

static inline BwHookupRow *
bw_hookup_row (const BwHookupLayout *layout, guint i)
{
  return &g_array_index (layout->rows, BwHookupRow, i);
}

/* view.c */
void bw_hookup_layout_init (BwHookupLayout *layout, double width, double height, const BwInk *ink,
                            const BwHookupView *what);
void bw_hookup_layout_clear (BwHookupLayout *layout);

/* read.c */
void bw_hookup_add_places (BwDrawing *drawing, const BwHookupLayout *layout);

/* model.c */
void bw_hookup_make_rows (BwHookupLayout *layout);
void bw_hookup_row_clear (gpointer row);

/* across.c */
void bw_hookup_measure (BwHookupLayout *layout);
void bw_hookup_choose_bands (BwHookupLayout *layout);
double bw_hookup_band_width (const BwHookupLayout *layout, const BwHookupBand *band);
gboolean bw_hookup_place_across (BwHookupLayout *layout);

/* down.c */
gboolean bw_hookup_place_down (BwHookupLayout *layout);
void bw_hookup_center_faces (BwHookupLayout *layout);

/* route.c */
void bw_hookup_route (BwHookupLayout *layout);

/* labels.c */
void bw_hookup_place_words (BwHookupLayout *layout);
gboolean bw_hookup_claim_words (BwHookupLayout *layout);
gboolean bw_hookup_claim_labels (BwHookupLayout *layout);

/* levels.c */
gboolean bw_hookup_claim_levels (BwHookupLayout *layout);
double bw_hookup_levels_height (const BwHookupLayout *layout);
BwBox bw_hookup_level_box (const BwHookupLayout *layout, guint level);

/* words.c */
char *bw_hookup_text_caption (const BwHookupView *what, gboolean whole);
char *bw_hookup_text_settings (const BwHookupView *what);
char *bw_hookup_text_ohm (const BwHookupView *what, double ohm);
char *bw_hookup_text_farad (const BwHookupView *what, double farad);
char *bw_hookup_text_volt (const BwHookupView *what, double volt);
char *bw_hookup_describe (const BwHookupView *what);
char *bw_hookup_text_row (const BwHookupView *what, const BwHookupRow *row, gboolean whole);
char *bw_hookup_text_returns (const BwHookupRow *row);
const char *bw_hookup_step_name (const BwHookup *hookup, guint kind, guint nth);
const char *bw_hookup_step_purpose (const BwHookup *hookup, guint kind, guint nth);

/* ink.c */
void bw_hookup_ink_draw (const BwHookupLayout *layout, cairo_t *cr);

G_END_DECLS
