/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/chart.h"
#include "draw/base/drawing.h"
#include "view.h"

G_BEGIN_DECLS

/* What the four drawings of detail share. */

#define BW_CHAIN_ROWS (BW_N_LINKS + 1) /* the links and all together */

/**
 * BwDetailPage:
 * @fits: whether there is room for the plot
 */
typedef struct
{
  BwCanvas *canvas;
  const BwDetailView *what;
  BwChart chart;
  gboolean fits;
} BwDetailPage;

/* The functions of one kind of drawing. @lacking says what must be known, translated; @draw_points
 * (nullable) draws what no label may cover; @rows are read each for itself. */
typedef struct
{
  gboolean (*can_draw) (const BwDetailView *what);
  const char *(*lacking) (const BwDetailView *what);
  void (*layout) (BwDetailPage *page);
  void (*draw) (const BwDetailPage *page, cairo_t *cr);
  void (*draw_points) (const BwDetailPage *page, cairo_t *cr);
  guint rows;
  char *(*words) (const BwDetailView *what, const BwDrawingPoint *point);
  char *(*describe) (const BwDetailView *what);
} BwDetailKind;

extern const BwDetailKind bw_detail_chain;
extern const BwDetailKind bw_detail_mtf_kind;
extern const BwDetailKind bw_detail_pitch;
extern const BwDetailKind bw_detail_structure;

char *bw_detail_tvl_text (double tvl, char mark);
char *bw_detail_mm_text (double length_m, char mark);
char *bw_detail_percent_text (double share, char mark);
char *bw_detail_lines_text (double tvl, char mark);
char *bw_detail_place_text (const BwDetailView *what, double tvl);
char *bw_detail_left_text (const BwDetailView *what, guint link, double tvl);
double bw_detail_hz_at (const BwDetailCase *what, double tvl);
const char *bw_detail_link_name (guint link);
BwDash bw_detail_link_dash (guint link);
double bw_detail_shown_tvl (const BwDetailView *what);
gboolean bw_detail_claim_at (BwCanvas *canvas, const char *text, BwInkRole role, double x, double y,
                             double across, double down);
const char *bw_detail_no_link (const BwDetailView *what);

G_END_DECLS
