/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <glib/gi18n-lib.h>

/* Rules on the form of the sync that the source is used with: its kind, polarity and shape. */

/* The form in which sync arrives. Sync on Y, sync on green where that alone is connected, and sync in luminance are one waveform on one wire: it
 * takes the name of the signal that the input sees. */
static BwSyncKind
arriving_sync (const BwCase *c, BwSyncKind sync)
{
  guint coded = BW_BIT (BW_SIGNAL_LUMA) | BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC);
  guint takes = c->input->signals;

  if (sync == BW_SYNC_ON_GREEN && takes == BW_BIT (BW_SIGNAL_LUMA))
    return BW_SYNC_IN_VIDEO; /* green alone is connected */
  if (sync == BW_SYNC_ON_Y && (takes & coded) && !(takes & BW_BIT (BW_SIGNAL_COMPONENT)))
    return BW_SYNC_IN_VIDEO;
  if (sync == BW_SYNC_IN_VIDEO && bw_case_signal (c) == BW_SIGNAL_LUMA && !(takes & coded))
    return takes & BW_BIT (BW_SIGNAL_COMPONENT) ? BW_SYNC_ON_Y : BW_SYNC_ON_GREEN;
  return sync;
}

static BwRemedyKind
sync_cure (BwSyncKind from, guint takes)
{
  guint alone = BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_IN_VIDEO);
  if (from == BW_SYNC_SEPARATE && (takes & alone))
    return BW_REMEDY_SYNC_COMBINER;
  if (takes & (BW_BIT (BW_SYNC_SEPARATE) | alone))
    return BW_REMEDY_SYNC_SEPARATOR;
  return bw_sync_has_own_conductor (from) ? BW_REMEDY_SYNC_ADDER : BW_REMEDY_SYNC_MOVER;
}

/* Whether green alone is connected, and the sync beside it has no conductor at the input: it strips sync from
 * the video alone, and must be given it there. */
static gboolean
is_left_behind (const BwCase *c, BwSyncKind arrives)
{
  return c->source->signal == BW_SIGNAL_RGB && c->input->signals == BW_BIT (BW_SIGNAL_LUMA)
         && arrives == BW_SYNC_COMPOSITE && !(c->input->syncs & BW_BIT (BW_SYNC_COMPOSITE));
}

/* Whether all is known that the form of sync in video takes its name from. */
static gboolean
needs_for_name (BwFinding *f, const BwCase *c, BwSyncKind sync)
{
  guint coded = BW_BIT (BW_SIGNAL_LUMA) | BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC);

  if (sync == BW_SYNC_ON_GREEN)
    return BW_NEEDS_INPUT (f, c, signals);
  if (sync != BW_SYNC_ON_Y && sync != BW_SYNC_IN_VIDEO)
    return TRUE;
  if (!BW_NEEDS_INPUT (f, c, signals) || !BW_NEEDS_SOURCE (f, c, signal))
    return FALSE;
  gboolean matters = c->source->signal == BW_SIGNAL_COMPOSITE && !(c->input->signals & coded);
  return !matters || BW_NEEDS_SOURCE (f, c, system);
}

/**
 * bw_rule_sync_kind_judge:
 *
 * The input takes sync in the form that the source gives it.
 */
void
bw_rule_sync_kind_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!BW_NEEDS_INPUT (f, c, syncs) || !needs_for_name (f, c, sync))
    return;
  BwSyncKind arrives = arriving_sync (c, sync);
  if (is_left_behind (c, arrives))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_ADDER);
  else if (!bw_input_takes_sync (c->input, arrives))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN,
                    sync_cure (arrives, c->input->syncs));
}

char *
bw_rule_sync_kind_says (const BwSaying *s)
{
  const char *sync = bw_kind_label (&bw_sync_kinds, s->fit->sync);
  g_autofree char *takes = bw_kind_set_labels (&bw_sync_kinds, s->c->input->syncs);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way makes its own sync."));
    case BW_REASON_NOT_TAKEN:
      return g_strdup_printf (_ ("The source gives %1$s; this input takes %2$s."), sync, takes);
    default:
      return g_strdup_printf (_ ("Use %s."), sync);
    }
}

/* The set of polarities on the source's own sync conductors. */
static guint
source_polarities (const BwCase *c, BwSyncKind sync)
{
  switch ((BwSyncPolarity) c->source->sync_polarity)
    {
    case BW_SYNC_POLARITY_NEGATIVE:
      return BW_BIT (BW_POLARITY_NEGATIVE);
    case BW_SYNC_POLARITY_POSITIVE:
      return BW_BIT (BW_POLARITY_POSITIVE);
    case BW_SYNC_POLARITY_STANDARD:
    case BW_N_SYNC_POLARITIES:
    default:
      if (sync == BW_SYNC_COMPOSITE)
        return BW_BIT (BW_POLARITY_NEGATIVE);
      return BW_BIT (c->raster->h_polarity) | BW_BIT (c->raster->v_polarity);
    }
}

/**
 * bw_rule_sync_polarity_judge:
 *
 * Sync on its own conductors has a polarity that the input takes. In video it is negative by
 * standard.
 */
void
bw_rule_sync_polarity_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  gboolean own = bw_sync_has_own_conductor (sync);
  gboolean of_raster = sync == BW_SYNC_SEPARATE
                       && c->source->sync_polarity == BW_SYNC_POLARITY_STANDARD;

  if (own
      && (!BW_NEEDS_SOURCE (f, c, sync_polarity) || !BW_NEEDS_INPUT (f, c, polarities)
          || (of_raster && !bw_finding_needs_raster (f, c))))
    return;
  guint given = own ? source_polarities (c, sync) : BW_BIT (BW_POLARITY_NEGATIVE);
  f->as.sync_polarity.given = given;
  if (!own)
    f->reason = BW_REASON_NOT_NEEDED;
  else if (given & ~c->input->polarities)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_INVERTER);
}

/* "negative", or "H negative and V positive" */
static char *
given_polarities_text (const BwSaying *s)
{
  guint given = s->f->as.sync_polarity.given;
  const BwRaster *raster = s->c->raster;

  if ((given & (given - 1)) == 0)
    return bw_kind_set_labels (&bw_polarities, given);
  return g_strdup_printf (_ ("H %1$s and V %2$s"),
                          bw_kind_label (&bw_polarities, raster->h_polarity),
                          bw_kind_label (&bw_polarities, raster->v_polarity));
}

char *
bw_rule_sync_polarity_says (const BwSaying *s)
{
  g_autofree char *given = given_polarities_text (s);
  g_autofree char *takes = bw_kind_set_labels (&bw_polarities, s->c->input->polarities);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (bw_sync_has_own_conductor (s->fit->sync)
                           ? _ ("The part in the way makes its own sync.")
                           : _ ("Sync that comes with the video is negative by standard."));
    case BW_REASON_NOT_TAKEN:
      return g_strdup_printf (_ ("The sync is %1$s; this input takes %2$s."), given, takes);
    default:
      return g_strdup_printf (_ ("The sync is %s, which this input takes."), given);
    }
}

/**
 * bw_rule_sync_shape_judge:
 *
 * The input takes bi-level or tri-level sync as the raster has it. Separate H and V are always
 * bi-level.
 */
void
bw_rule_sync_shape_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  if (!BW_NEEDS_INPUT (f, c, shapes)
      || (sync != BW_SYNC_SEPARATE && !bw_finding_needs_raster (f, c)))
    return;
  BwSyncShape given = sync == BW_SYNC_SEPARATE ? BW_SHAPE_BILEVEL : c->raster->sync_shape;
  f->as.sync_shape.given = given;
  if (!(c->input->shapes & BW_BIT (given)))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_RESHAPER);
}

char *
bw_rule_sync_shape_says (const BwSaying *s)
{
  const char *given = bw_kind_label (&bw_sync_shapes, s->f->as.sync_shape.given);
  g_autofree char *takes = bw_kind_set_labels (&bw_sync_shapes, s->c->input->shapes);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("The part in the way makes its own sync."));
    case BW_REASON_NOT_TAKEN:
      return g_strdup_printf (_ ("The sync is %1$s; this input takes %2$s."), given, takes);
    default:
      return g_strdup_printf (_ ("The sync is %s, which this input takes."), given);
    }
}
