/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/level.h"
#include "core/circuit/preferred.h"

/* Rules on levels at the input's terminals: of sync, of the picture, and of black. */

/* The sync at the input's terminals when the conductor works into @load_ohm. */
static double
sync_at_load (const BwCase *c, gboolean own, double load_ohm)
{
  const BwSource *source = c->source;
  if (own)
    return bw_level_at_load (source->sync_v, source->sync_load, source->sync_ohm, load_ohm);
  return bw_level_at_load (source->sync_v, BW_LOAD_75_OHM, source->source_ohm, load_ohm);
}

/* An input of more than this is taken as high impedance: a series resistor into it would be so
 * large that the cable's capacitance smears the edges (common practice, no source). */
#define HIGH_IMPEDANCE_OHM 1e3

/* The load after the cure that @remedy stands for. */
static double
cured_load_ohm (const BwCase *c, BwRemedyKind remedy)
{
  return remedy == BW_REMEDY_SWITCH_OFF ? c->input->input_ohm : 75;
}

static void
set_series_resistor (const BwCase *c, BwFinding *f)
{
  BwSyncLevelFigures *figures = &f->as.sync_level;
  double open_v = bw_level_at_load (c->source->sync_v, c->source->sync_load, c->source->sync_ohm,
                                    1e15); /* without load */
  double terminated_ohm
      = bw_series_resistor_ohm (open_v, c->source->sync_ohm, 75, figures->wanted_v);

  f->remedy.kind = BW_REMEDY_SERIES_RESISTOR;
  figures->with_terminator = figures->load_ohm > HIGH_IMPEDANCE_OHM && terminated_ohm > 0;
  f->remedy.value = figures->with_terminator
                        ? terminated_ohm
                        : bw_series_resistor_ohm (open_v, c->source->sync_ohm, figures->load_ohm,
                                                  figures->wanted_v);
}

/* What cures a level that is outside, termination aside. */
static void
cure_sync_level (const BwCase *c, BwFinding *f, gboolean own)
{
  double wanted_v = bw_range_nominal ((BwRange){ f->low, f->high }, 0.3);
  gboolean below = f->reason == BW_REASON_BELOW;

  f->as.sync_level.wanted_v = wanted_v;
  f->remedy.value = wanted_v / f->value;
  if (own && !below)
    set_series_resistor (c, f);
  else if (own)
    f->remedy.kind = BW_REMEDY_SYNC_AMPLIFIER;
  else
    f->remedy.kind = below ? BW_REMEDY_VIDEO_AMPLIFIER : BW_REMEDY_VIDEO_PAD;
}

/**
 * bw_rule_sync_level_judge:
 *
 * The sync amplitude at the input's terminals, as it is terminated now, lies in what the input
 * takes. The remedy's value is the series resistor with the driver's own resistance taken off, or
 * the ratio of an attenuator or amplifier.
 */
void
bw_rule_sync_level_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  gboolean own = bw_sync_has_own_conductor (sync);
  double load_ohm = bw_input_load_ohm (c->input, own);
  BwRange takes = own && c->input->own_sync_v.n > 0 ? c->input->own_sync_v.at[0]
                                                   : c->input->sync_v.at[0];
  BwRemedyKind termination = bw_case_termination_cure (c, own);

  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, sync_at_load (c, own, load_ohm));
  bw_finding_within (f, takes, c->limits->level);
  f->as.sync_level.load_ohm = load_ohm;
  if (f->severity != BW_SEVERITY_CURABLE)
    return;

  double cured_v = sync_at_load (c, own, cured_load_ohm (c, termination));
  if (termination != BW_REMEDY_NONE && cured_v >= takes.low && cured_v <= takes.high)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CURED_BY_TERMINATION, termination);
  else
    cure_sync_level (c, f, own);
}

char *
bw_rule_sync_level_says (const BwSaying *s)
{
  g_autofree char *load
      = bw_saying_figure (s, s->f->as.sync_level.load_ohm, BW_DIMENSION_RESISTANCE, 3);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own levels."));
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, below this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, above this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_CURED_BY_TERMINATION:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, outside this input's %3$s; "
                                 "with the right termination it is inside."),
                              s->value, load, s->allowed);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, near the edge of %3$s."),
                              s->value, load, s->allowed);
    default:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, inside %3$s."), s->value, load,
                              s->allowed);
    }
}

/**
 * bw_rule_video_level_judge:
 *
 * The black-to-white amplitude at the input's terminals, as it is terminated now, lies in what
 * the input takes. The remedy's value is the ratio of an attenuator or amplifier.
 */
void
bw_rule_video_level_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  const BwSource *source = c->source;
  double load_ohm = bw_input_load_ohm (c->input, FALSE);
  BwRange takes = c->input->video_v.at[0];
  BwRemedyKind termination = bw_case_termination_cure (c, FALSE);

  bw_finding_measure (
      f, BW_DIMENSION_VOLTAGE,
      bw_level_at_load (source->video_v, BW_LOAD_75_OHM, source->source_ohm, load_ohm));
  bw_finding_within (f, takes, c->limits->level);
  f->as.video_level.load_ohm = load_ohm;
  if (f->severity != BW_SEVERITY_CURABLE)
    return;

  /* Across 75 Ω the level is the stated one. */
  if (termination != BW_REMEDY_NONE && source->video_v >= takes.low
      && source->video_v <= takes.high)
    {
      bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CURED_BY_TERMINATION, termination);
      return;
    }
  f->as.video_level.wanted_v = bw_range_nominal (takes, 0.7);
  f->remedy.value = f->as.video_level.wanted_v / f->value;
  f->remedy.kind = f->reason == BW_REASON_BELOW ? BW_REMEDY_VIDEO_AMPLIFIER : BW_REMEDY_VIDEO_PAD;
}

char *
bw_rule_video_level_says (const BwSaying *s)
{
  g_autofree char *load
      = bw_saying_figure (s, s->f->as.video_level.load_ohm, BW_DIMENSION_RESISTANCE, 3);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own levels."));
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, below this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, above this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_CURED_BY_TERMINATION:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, outside this input's %3$s; "
                                 "with the right termination it is inside."),
                              s->value, load, s->allowed);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, near the edge of %3$s."),
                              s->value, load, s->allowed);
    default:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, inside %3$s."), s->value, load,
                              s->allowed);
    }
}

/**
 * bw_rule_setup_judge:
 *
 * Black stands where the input can be set to expect it.
 */
void
bw_rule_setup_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  const BwBands *expected = &c->input->setup_ire;
  double setup_ire = c->source->setup_ire;
  double off_ire = INFINITY;

  bw_finding_measure (f, BW_DIMENSION_IRE, setup_ire);
  if (expected->n == 0)
    return;
  for (guint i = 0; i < expected->n; i++)
    {
      BwRange band = expected->at[i];
      double nearest_ire = CLAMP (setup_ire, band.low, band.high);
      if (fabs (setup_ire - nearest_ire) < fabs (off_ire))
        {
          off_ire = setup_ire - nearest_ire;
          f->low = band.low;
          f->high = band.high;
        }
    }
  f->has_low = f->has_high = TRUE;
  f->as.setup.off_ire = off_ire;
  if (fabs (off_ire) > c->limits->setup_ire)
    bw_finding_set (f, BW_SEVERITY_CURABLE, off_ire > 0 ? BW_REASON_ABOVE : BW_REASON_BELOW,
                    BW_REMEDY_BLACK_LEVEL);
  else if (fabs (off_ire) > 0)
    bw_finding_set (f, BW_SEVERITY_TIGHT, off_ire > 0 ? BW_REASON_ABOVE : BW_REASON_BELOW,
                    BW_REMEDY_NONE);
}

char *
bw_rule_setup_says (const BwSaying *s)
{
  double off_ire = fabs (s->f->as.setup.off_ire);
  double off_v = bw_ire_to_volts (s->c->source->system, off_ire);
  g_autofree char *off = bw_saying_figure (s, off_ire, BW_DIMENSION_IRE, 3);
  g_autofree char *volts = bw_saying_figure (s, off_v, BW_DIMENSION_VOLTAGE, 3);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way sets its own black level."));
    case BW_REASON_ABOVE:
      return g_strdup_printf (_ ("Setup is %1$s where this input expects %2$s: black comes out "
                                 "lifted by %3$s (%4$s)."),
                              s->value, s->allowed, off, volts);
    case BW_REASON_BELOW:
      return g_strdup_printf (_ ("Setup is %1$s where this input expects %2$s: shadows are crushed "
                                 "by %3$s (%4$s)."),
                              s->value, s->allowed, off, volts);
    default:
      return g_strdup_printf (_ ("Setup is %s, as this input expects."), s->value);
    }
}
