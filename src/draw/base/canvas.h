/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "text.h"

G_BEGIN_DECLS

/* What all drawings share: labels that never overlap and are never cut. A drawing first claims the
 * place of every label, then draws its lines, then the labels.
 * Measures do not depend on the surface, so that screen, print and exports lay out alike. */

/**
 * BwBox:
 *
 * A rectangle in user space; y grows downwards.
 */
typedef struct
{
  double x;
  double y;
  double width;
  double height;
} BwBox;

/**
 * BwLabel:
 * @text: owned
 * @box: where it stands
 * @halo: whether paper is laid under it, to interrupt lines that pass
 * @wrap: whether the text wraps at the width of @box, and ends in an ellipsis at its height
 */
typedef struct
{
  char *text;
  BwBox box;
  BwInkRole role;
  PangoAlignment align;
  gboolean halo;
  gboolean wrap;
} BwLabel;

/**
 * BwCanvas:
 * @ink: borrowed
 * @width: of the drawing, in user-space units
 * @text_height: of one line of text
 * @pad: the empty space that things keep from each other
 * @labels: (element-type BwLabel): what has been claimed, by value
 */
typedef struct
{
  const BwInk *ink;
  double width;
  double height;
  double text_height;
  double pad;
  PangoLayout *layout;
  GArray *labels;
} BwCanvas;

/**
 * BwFoot:
 * @caption: what the drawing shows
 * @caption_lines: at most, as in bw_canvas_words_height()
 * @note: (nullable): under the caption
 * @below: empty space under both
 *
 * The words at the foot of a drawing; borrowed.
 */
typedef struct
{
  const char *caption;
  int caption_lines;
  const char *note;
  int note_lines;
  double below;
} BwFoot;

BwCanvas *bw_canvas_new (const BwInk *ink, double width, double height);
void bw_canvas_free (BwCanvas *canvas);
GArray *bw_canvas_labels_new (void);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwCanvas, bw_canvas_free)

BwBox bw_canvas_measure (BwCanvas *canvas, const char *text);
double bw_canvas_wrapped_height (BwCanvas *canvas, const char *text, double width, int lines);
gboolean bw_box_overlaps (const BwBox *a, const BwBox *b);
gboolean bw_canvas_is_free (const BwCanvas *canvas, BwBox box);
gboolean bw_canvas_claim (BwCanvas *canvas, const BwLabel *label);
gboolean bw_canvas_claim_at (BwCanvas *canvas, const char *text, BwInkRole role, double x, double y,
                             double across, double down);
void bw_canvas_clear (BwCanvas *canvas);
void bw_canvas_show_labels (BwCanvas *canvas, cairo_t *cr);

double bw_canvas_words_height (BwCanvas *canvas, const char *text, int lines);
gboolean bw_canvas_claim_words (BwCanvas *canvas, const char *text, BwInkRole role, double y,
                                double height);
gboolean bw_canvas_claim_foot (BwCanvas *canvas, const BwFoot *foot, double *y);

void bw_canvas_draw_paper (const BwCanvas *canvas, cairo_t *cr);
void bw_canvas_set_pen (const BwCanvas *canvas, cairo_t *cr, BwInkRole role, double width);
double bw_canvas_trace_width (const BwCanvas *canvas, double line);
void bw_canvas_draw_arrow (const BwCanvas *canvas, cairo_t *cr, double x, double y,
                           double direction, double length, double width);

void bw_spread (double *starts, const double *widths, guint n, double gap, double low, double high);

G_END_DECLS
