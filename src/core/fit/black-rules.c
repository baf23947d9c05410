/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Rules on what lies around sync in a line: whether it is black there, and whether there is time enough for
 * the clamp, for the sync separator and for the beam to be back before the picture begins. None of them keeps
 * the picture from showing. */

#define DIGITS 3

/**
 * bw_rule_black_judge:
 *
 * A clamp takes for black what stands on the back porch: there the source must be black.
 */
void
bw_rule_black_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!BW_NEEDS_INPUT (f, c, clamp))
    return;
  if (c->source->blanking == BW_BLANKING_NOT_SAID)
    f->reason = BW_REASON_NOT_NEEDED;
  else if (c->source->blanking == BW_BLANKING_BLACK)
    return;
  else if (c->input->clamp == BW_CLAMP_BACK_PORCH)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_NOT_TAKEN, BW_REMEDY_NONE);
  else
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_OTHER_COUNT, BW_REMEDY_NONE);
}

char *
bw_rule_black_says (const BwSaying *s)
{
  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("Whether the source is black in its blanking is not entered; it is taken to be."));
    case BW_REASON_NOT_TAKEN:
      return g_strdup (_ ("The source is not black in its blanking, and this input takes for black what stands "
                          "there: the picture is dark, with a tint, and changes with that colour. Set the "
                          "border to black, or black in both blankings; for a trial, shift the clamp."));
    case BW_REASON_OTHER_COUNT:
      return g_strdup (_ ("The source is not black in its blanking: this input does not clamp there, but the "
                          "retrace shows as a veil of that colour. Set the border to black."));
    default:
      return g_strdup (_ ("The source is black in its blanking."));
    }
}

/**
 * bw_rule_back_porch_judge:
 *
 * The back porch, with the border, is long enough for the clamp (bw_input_clamp_needs()).
 */
void
bw_rule_back_porch_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!bw_finding_needs_raster (f, c) || !BW_NEEDS_INPUT (f, c, clamp))
    return;
  BwClampNeeds needs = bw_input_clamp_needs (c->input, c->figures->line_period_s);
  double porch_s = c->figures->h_back_porch_s + c->figures->h_border_s;

  bw_finding_measure (f, BW_DIMENSION_TIME, porch_s);
  if (needs.tight_s <= 0)
    {
      f->reason = BW_REASON_NOT_NEEDED;
      return;
    }
  f->has_low = TRUE;
  f->low = needs.tight_s;
  f->margin = bw_margin (porch_s - needs.fails_s, needs.fails_s);
  if (porch_s < needs.fails_s)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BELOW, BW_REMEDY_NONE);
  else if (porch_s < needs.tight_s)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_NEAR_EDGE, BW_REMEDY_NONE);
}

char *
bw_rule_back_porch_says (const BwSaying *s)
{
  g_autofree char *needs = bw_saying_figure (s, s->f->low, BW_DIMENSION_TIME, DIGITS);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup_printf (_ ("The back porch lasts %s; this input has no clamp that needs it."), s->value);
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("The back porch lasts %1$s, too short for a clamp, which is well served by "
                                 "%2$s: black is not found, colours are flattened or the picture is dark. A "
                                 "shorter line sync or a narrower picture lengthens it."),
                              s->value, needs);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("The back porch lasts %1$s, less than the %2$s that serve a clamp well: black "
                                 "may wander."),
                              s->value, needs);
    default:
      return g_strdup_printf (_ ("The back porch lasts %1$s; a clamp is well served by %2$s."), s->value, needs);
    }
}

/* Line sync in the 525- and 625-line systems lasts 4.7 µs of 64 (SMPTE 170M, ITU-R BT.470-6). Separators of
 * such sets take from some three fifths of it to one and a half times as much: common practice, no source. */
#define LINE_SYNC_SHARE (4.7 / 64)
#define LEAST_OF_SYNC 0.6
#define MOST_OF_SYNC 1.5
#define TELEVISION_LINE_RATE_HZ 20e3
#define TELEVISION_LINES 700 /* rasters of more lines are those of HD, whatever their rate */

/**
 * bw_rule_sync_width_judge:
 *
 * The width of line sync is that of the raster's class. Computers above 20 kHz have none in common.
 */
void
bw_rule_sync_width_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!bw_finding_needs_raster (f, c))
    return;
  bw_finding_measure (f, BW_DIMENSION_TIME, c->figures->h_sync_s);
  if (c->figures->line_rate_hz > TELEVISION_LINE_RATE_HZ
      || c->figures->lines_per_frame > TELEVISION_LINES
      || c->raster->sync_shape != BW_SHAPE_BILEVEL)
    {
      f->reason = BW_REASON_NOT_NEEDED;
      return;
    }
  f->has_low = f->has_high = TRUE;
  f->low = LINE_SYNC_SHARE * c->figures->line_period_s * LEAST_OF_SYNC;
  f->high = LINE_SYNC_SHARE * c->figures->line_period_s * MOST_OF_SYNC;
  f->margin = MIN (bw_margin (f->value - f->low, f->low), bw_margin (f->high - f->value, f->high));
  if (f->value < f->low)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BELOW, BW_REMEDY_NONE);
  else if (f->value > f->high)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_ABOVE, BW_REMEDY_NONE);
}

char *
bw_rule_sync_width_says (const BwSaying *s)
{
  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup_printf (_ ("Line sync lasts %s; rasters of this class have no width in common."), s->value);
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Line sync lasts %1$s, much less than the usual %2$s: a separator may miss it, and "
                                 "the picture tears."),
                              s->value, s->allowed);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Line sync lasts %1$s, much more than the usual %2$s: it may be taken for field sync, "
                                 "and leaves less for the back porch. A shorter one cures that."),
                              s->value, s->allowed);
    default:
      return g_strdup_printf (_ ("Line sync lasts %1$s, inside the usual %2$s."), s->value, s->allowed);
    }
}

/* How far the phase control of a set moves the flyback ahead of the edge of sync, as a share of the line:
 * common practice, no source. The standard's picture begins 9.2 µs after the edge (SMPTE 170M). */
#define PHASE_REACH 0.03

/**
 * bw_rule_picture_start_judge:
 *
 * The beam flies back from about the edge of sync: the picture must not begin before it is back. Sets that
 * take tri-level sync have a phase for each of its rasters.
 */
void
bw_rule_picture_start_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!bw_finding_needs_raster (f, c) || !BW_NEEDS_MONITOR (f, c, line_retrace_s))
    return;
  const BwRasterFigures *figures = c->figures;
  double reach_s = PHASE_REACH * figures->line_period_s;

  bw_finding_measure (f, BW_DIMENSION_TIME,
                      figures->h_sync_s + figures->h_back_porch_s + figures->h_border_s);
  f->has_low = TRUE;
  if (c->raster->sync_shape != BW_SHAPE_BILEVEL)
    {
      f->has_low = FALSE;
      f->reason = BW_REASON_NOT_NEEDED;
      return;
    }
  f->low = MAX (c->monitor->line_retrace_s - reach_s, 0.1e-6);
  f->margin = bw_margin (f->value - f->low, f->low);
  if (f->margin < 0)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_BELOW, BW_REMEDY_NONE);
}

/* What is lost at the left: "97 columns" or "5.2 µs". */
static char *
lost_text (const BwSaying *s)
{
  const BwRasterFigures *figures = s->c->figures;
  double lost_s = s->f->low - s->f->value;
  double columns = ceil (lost_s * figures->pixel_clock_hz / s->c->raster->pixel_repeat);

  if (figures->has_pixels)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%.0f column", "%.0f columns", (gulong) columns),
                            columns);
  return bw_saying_figure (s, lost_s, BW_DIMENSION_TIME, DIGITS);
}

char *
bw_rule_picture_start_says (const BwSaying *s)
{
  g_autofree char *retrace = bw_saying_figure (s, s->c->monitor->line_retrace_s, BW_DIMENSION_TIME, DIGITS);

  if (s->f->reason == BW_REASON_NOT_NEEDED)
    return g_strdup_printf (_ ("The picture begins %s after the start of sync; for tri-level sync a set has its own "
                               "phase."),
                            s->value);
  if (s->f->reason != BW_REASON_BELOW)
    return g_strdup_printf (_ ("The picture begins %1$s after the edge of sync; retrace takes %2$s, and the phase "
                               "control reaches the rest."),
                            s->value, retrace);
  g_autofree char *lost = lost_text (s);
  return g_strdup_printf (_ ("The picture begins %1$s after the edge of sync, but retrace takes %2$s: at the left "
                             "edge %3$s are missing or folded over, even with the phase control at its end. Delay "
                             "the picture, or shift the phase."),
                          s->value, retrace, lost);
}
