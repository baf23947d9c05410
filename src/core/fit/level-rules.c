/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/colour-system.h"

/* Rules on levels at the input's terminals: of sync, of the picture, and of black. */

/* A level of the conductors with picture, @level of @match, as they are terminated now. */
static void
judge_level (const BwCase *c, const BwPictureMatch *match, const BwLevelMatch *level, BwFinding *f,
             BwLevelFigures *figures)
{
  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, level->level_v);
  bw_finding_within (f, level->takes, c->limits->level);
  figures->load_ohm = match->load_ohm;
  if (level->ends_outside)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_OUTSIDE_TERMINATED, BW_REMEDY_NONE);
  if (f->severity != BW_SEVERITY_CURABLE)
    return;
  if (level->need == BW_NEED_LOAD)
    {
      f->reason = BW_REASON_CURED_BY_TERMINATION;
      f->remedy = bw_picture_end_remedy (match);
      return;
    }
  f->remedy.kind = level->need != BW_NEED_PAD         ? BW_REMEDY_VIDEO_AMPLIFIER
                   : match->pad == BW_PAD_MINIMUM_LOSS ? BW_REMEDY_MINIMUM_LOSS_PAD
                                                       : BW_REMEDY_VIDEO_PAD;
  f->remedy.value = level->gain;
  figures->wanted_v = level->aim_v;
  figures->with_load = level->need == BW_NEED_PAD && match->terminator;
}

static void
cure_own_sync (const BwSyncMatch *match, BwFinding *f)
{
  const BwSyncWay *way = &match->way[0];

  switch (match->need)
    {
    case BW_NEED_LOAD:
      bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CURED_BY_TERMINATION,
                      bw_load_change_remedy (way->change, match->load_ohm));
      break;
    case BW_NEED_RESISTOR:
      f->remedy = (BwRemedy){ BW_REMEDY_SERIES_RESISTOR, way->attenuator.exact_ohm };
      f->as.sync_level.wanted_v = match->aim_v;
      f->as.sync_level.with_load
          = way->change != BW_LOAD_AS_IT_IS && bw_load_is_one (way->load_ohm);
      f->as.sync_level.without_load
          = way->change != BW_LOAD_AS_IT_IS && !bw_load_is_one (way->load_ohm);
      break;
    case BW_NEED_NOTHING:
    case BW_NEED_PAD:
    case BW_NEED_AMPLIFIER:
    default:
      f->remedy = (BwRemedy){ BW_REMEDY_SYNC_AMPLIFIER, match->gain };
      f->as.sync_level.wanted_v = match->aim_v;
      break;
    }
}

/* Whether it is known which sync the input takes there; levels for sync alone are optional. */
static gboolean
needs_sync_range (BwFinding *f, const BwCase *c, gboolean own_sync)
{
  return (own_sync && c->input->own_sync_v.n > 0) || BW_NEEDS_INPUT (f, c, sync_v);
}

static void
judge_own_sync (const BwCase *c, BwFinding *f)
{
  BwSyncMatch match;

  if (!BW_NEEDS_SOURCE (f, c, sync_v) || !BW_NEEDS_SOURCE (f, c, sync_load)
      || !BW_NEEDS_SOURCE (f, c, sync_ohm) || !needs_sync_range (f, c, TRUE)
      || !bw_finding_needs_load (f, c, TRUE))
    return;
  bw_match_own_sync (c->source, c->input, &match);
  bw_finding_measure (f, BW_DIMENSION_VOLTAGE, match.level_v);
  bw_finding_within (f, match.takes, c->limits->level);
  f->as.sync_level.load_ohm = match.load_ohm;
  f->as.sync_level.own = TRUE;
  if (f->severity == BW_SEVERITY_CURABLE)
    cure_own_sync (&match, f);
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
  BwPictureMatch match;

  if (bw_sync_has_own_conductor (sync))
    {
      judge_own_sync (c, f);
      return;
    }
  if (!BW_NEEDS_SOURCE (f, c, sync_v) || !BW_NEEDS_SOURCE (f, c, source_ohm)
      || !needs_sync_range (f, c, FALSE) || !bw_finding_needs_load (f, c, FALSE))
    return;
  bw_match_picture (c->source, c->input, sync, &match);
  judge_level (c, &match, &match.sync, f, &f->as.sync_level);
}

static gboolean
is_lowered (const BwFinding *f)
{
  return f->remedy.kind == BW_REMEDY_VIDEO_PAD || f->remedy.kind == BW_REMEDY_MINIMUM_LOSS_PAD;
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
      if (is_lowered (s->f))
        return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, below this input's %3$s; with "
                                   "the right termination it is above."),
                                s->value, load, s->allowed);
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, below this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_ABOVE:
      if (s->f->remedy.kind == BW_REMEDY_VIDEO_AMPLIFIER)
        return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, above this input's %3$s; with "
                                   "the right termination it is below."),
                                s->value, load, s->allowed);
      if (s->f->remedy.kind == BW_REMEDY_SYNC_AMPLIFIER)
        return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, above this input's %3$s. One "
                                   "load of 75 Ω would leave too little, and a series resistor "
                                   "without it would smear the edges."),
                                s->value, load, s->allowed);
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, above this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_CURED_BY_TERMINATION:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, outside this input's %3$s; "
                                 "with the right termination it is inside."),
                              s->value, load, s->allowed);
    case BW_REASON_OUTSIDE_TERMINATED:
      return g_strdup_printf (_ ("Sync arrives at %1$s across %2$s, inside this input's %3$s; "
                                 "with the right termination it is outside."),
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
  BwPictureMatch match;

  if (!BW_NEEDS_SOURCE (f, c, video_v) || !BW_NEEDS_SOURCE (f, c, source_ohm)
      || !BW_NEEDS_INPUT (f, c, video_v) || !bw_finding_needs_load (f, c, FALSE))
    return;
  bw_match_picture (c->source, c->input, sync, &match);
  judge_level (c, &match, &match.video, f, &f->as.video_level);
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
      if (is_lowered (s->f))
        return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, below this input's %3$s; with "
                                   "the right termination it is above."),
                                s->value, load, s->allowed);
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, below this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_ABOVE:
      if (s->f->remedy.kind == BW_REMEDY_VIDEO_AMPLIFIER)
        return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, above this input's %3$s; with "
                                   "the right termination it is below."),
                                s->value, load, s->allowed);
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, above this input's %3$s."),
                              s->value, load, s->allowed);
    case BW_REASON_CURED_BY_TERMINATION:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, outside this input's %3$s; "
                                 "with the right termination it is inside."),
                              s->value, load, s->allowed);
    case BW_REASON_OUTSIDE_TERMINATED:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, inside this input's %3$s; "
                                 "with the right termination it is outside."),
                              s->value, load, s->allowed);
    case BW_REASON_NEAR_EDGE:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, near the edge of %3$s."),
                              s->value, load, s->allowed);
    default:
      return g_strdup_printf (_ ("Video arrives at %1$s across %2$s, inside %3$s."), s->value, load,
                              s->allowed);
    }
}

/* Whether it is known which scale the source's IRE are counted on. */
static gboolean
needs_scale (BwFinding *f, const BwCase *c)
{
  return BW_NEEDS_SOURCE (f, c, signal)
         && (bw_source_system (c->source) < BW_N_SYSTEMS || BW_NEEDS_SOURCE (f, c, system));
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

  if (!BW_NEEDS_SOURCE (f, c, setup_ire) || !needs_scale (f, c))
    return;
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
  BwColourSystem system = bw_source_system (s->c->source); /* known where there is an offset */
  double off_v = off_ire > 0 ? bw_ire_to_volts (system, off_ire) : 0;
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
      return s->f->has_low
                 ? g_strdup_printf (_ ("Setup is %s, as this input expects."), s->value)
                 : g_strdup_printf (_ ("Setup is %s; this input is not said to expect any in particular."),
                                    s->value);
    }
}
