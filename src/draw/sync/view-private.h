/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sync/words.h"
#include "draw/field/ruler.h"
#include "view.h"

G_BEGIN_DECLS

/* Where everything of a drawn mixture lies. */

/* What is left out on a small page, in this order. */
typedef enum
{
  BW_SYNC_LEAVE_SCALE,
  BW_SYNC_LEAVE_NOTE,
  BW_SYNC_LEAVE_POLARITIES,
  BW_SYNC_LEAVE_SPANS,
  BW_SYNC_LEAVE_LONG_CAPTION,
  BW_SYNC_LEAVE_KEY,
  BW_N_SYNC_LEAVES
} BwSyncLeave;

typedef struct
{
  const BwSyncTrace *trace; /* NULL for the phase */
  double top;
  double bottom;
} BwSyncLane;

/* One past the kinds of BwAfcEdge: an edge at a half line. */
#define BW_SYNC_MARK_HALF BW_N_AFC_EDGES
#define BW_SYNC_MARKS_MAX (BW_N_AFC_EDGES + 1)

/* A mark with the word for it. */
typedef struct
{
  guint mark;
  double x; /* its middle */
} BwSyncKey;

typedef struct
{
  const BwSyncView *what;
  BwSyncMix *mix;
  BwSyncRun *run;
  BwRuler ruler;
  BwCanvas *canvas;
  guint left_out; /* so many members of BwSyncLeave */
  BwSyncLane lane[BW_N_SYNC_ROWS];
  double size;  /* of a mark */
  double low_s; /* ends of the scale of the phase */
  double high_s;
  double head_y;  /* middle of the datum's name */
  double marks_y; /* middle of the marks */
  double spans_y; /* top of the words under the marks */
  double ticks_y;
  double scale_y;
  double numbers_y;
  double key_y; /* middle of the key */
  double words_y;
  BwSyncKey key[BW_SYNC_MARKS_MAX];
  guint n_keys;
} BwSyncLayout;

static inline gboolean
bw_sync_keeps (const BwSyncLayout *layout, BwSyncLeave leave)
{
  return layout->left_out <= (guint) leave;
}

static inline const BwSyncLine *
bw_sync_line (const BwSyncLayout *layout, guint i)
{
  return &g_array_index (layout->run->lines, BwSyncLine, i);
}

void bw_sync_place_across (BwSyncLayout *layout);
gboolean bw_sync_place_down (BwSyncLayout *layout);
double bw_sync_phase_y (const BwSyncLayout *layout, double phase_s);
double bw_sync_due (const BwSyncLayout *layout, const BwSyncLine *line);
gboolean bw_sync_picture (const BwSyncLayout *layout, double *at_s);

gboolean bw_sync_claim_words (BwSyncLayout *layout);
gboolean bw_sync_claim_labels (BwSyncLayout *layout);

char *bw_sync_text_caption (const BwSyncView *what);
char *bw_sync_text_note (const BwSyncLayout *layout);
char *bw_sync_text_row (const BwSyncMixCase *what, BwSyncRow row);
const char *bw_sync_text_polarity (const BwSyncLayout *layout, BwSyncRow row);
char *bw_sync_text_key (const BwSyncLayout *layout, guint mark);
char *bw_sync_describe (const BwSyncLayout *layout);
void bw_sync_take_words (BwDrawing *drawing, BwSyncLayout *layout);
char *bw_sync_text_picture (const BwSyncLayout *layout);

void bw_sync_layout_draw (const BwSyncLayout *layout, cairo_t *cr);
void bw_sync_draw_marks (const BwSyncLayout *layout, cairo_t *cr);

G_END_DECLS
