/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/canvas.h"
#include "shape.h"

G_BEGIN_DECLS

/* A panel with the curve of a line, or of a part of it. */

/**
 * BwLinePanel:
 * @from_s: where its window in time starts, after the datum
 * @left: where that lies on the page
 * @top: y of white
 * @bottom: y of the sync tip
 */
typedef struct
{
  double from_s;
  double to_s;
  double left;
  double right;
  double top;
  double bottom;
} BwLinePanel;

double bw_line_panel_x (const BwLinePanel *panel, double time_s);
double bw_line_panel_y (const BwLinePanel *panel, double level);

double bw_line_names_width (const BwLineShape *shape, BwCanvas *canvas);
gboolean bw_line_panel_claim_names (const BwLinePanel *panel, const BwLineShape *shape,
                                    BwCanvas *canvas);
char *bw_line_figures_text (const BwLineShape *shape, double length_s, int pixels, gboolean shares,
                            char mark);

void bw_line_panel_draw_levels (const BwLinePanel *panel, const BwLineShape *shape,
                                const BwCanvas *canvas, cairo_t *cr);
void bw_line_panel_draw_datum (const BwLinePanel *panel, double time_s, double from_y,
                               const BwCanvas *canvas, cairo_t *cr);
void bw_line_panel_draw_burst (const BwLinePanel *panel, const BwLineShape *shape,
                               const BwCanvas *canvas, cairo_t *cr);
void bw_line_panel_draw_curve (const BwLinePanel *panel, const BwLineShape *shape,
                               const BwCanvas *canvas, cairo_t *cr);

G_END_DECLS
