/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "match.h"

#include <math.h>

/* A source whose level changes by less than this with the load drives as a voltage (common
 * practice, no source). */
#define VOLTAGE_DRIVE_TOLERANCE 0.1

/* Rounding in the last place must not push a level that lies on a limit over it. */
#define ON_THE_LIMIT 1e-9

/* A level of which nothing is laid down is taken as it comes. */
static gboolean
is_taken (BwRange takes, double level_v)
{
  return !(takes.high > 0)
         || (level_v >= takes.low * (1 - ON_THE_LIMIT)
             && level_v <= takes.high * (1 + ON_THE_LIMIT));
}

static double
changed_load_ohm (const BwInput *input, gboolean own_sync, BwLoadChange change)
{
  BwInput changed = *input; /* only its switches are looked at: what it points to is not copied */
  bw_input_change_load (&changed, own_sync, change);
  return bw_input_load_ohm (&changed, own_sync);
}

/* Sync behind a load: taken as it is, or behind a resistor that divides with that load; or not. */
static void
try_way (const BwSource *source, const BwInput *input, BwLoadChange change, BwSyncMatch *match)
{
  double load_ohm = changed_load_ohm (input, TRUE, change);
  double open_v = bw_open_v (source->sync_v, source->sync_load, source->sync_ohm);
  double level_v = bw_level_at_load (open_v, BW_LOAD_OPEN, source->sync_ohm, load_ohm);
  BwSyncWay way = { .change = change, .load_ohm = load_ohm };

  way.has_resistor = !is_taken (match->takes, level_v);
  if (way.has_resistor
      && (level_v < match->takes.low
          || !bw_sync_attenuator (open_v, source->sync_ohm, load_ohm, match->takes,
                                  BW_USUAL_SERIES, &way.attenuator)
          || way.attenuator.terminator))
    return;
  match->way[match->n_ways++] = way;
}

/* What needs no resistor comes first; else what leaves the load as it is. */
static void
sort_ways (BwSyncMatch *match)
{
  for (guint i = 1; i < match->n_ways; i++)
    for (guint j = i; j > 0 && match->way[j - 1].has_resistor && !match->way[j].has_resistor; j--)
      {
        BwSyncWay way = match->way[j];
        match->way[j] = match->way[j - 1];
        match->way[j - 1] = way;
      }
}

static BwLevelNeed
need_of (const BwSyncMatch *match)
{
  if (match->n_ways == 0)
    return BW_NEED_AMPLIFIER;
  if (match->way[0].has_resistor)
    return BW_NEED_RESISTOR;
  return match->way[0].change == BW_LOAD_AS_IT_IS ? BW_NEED_NOTHING : BW_NEED_LOAD;
}

/**
 * bw_match_own_sync:
 * @match: (out caller-allocates): the sync of @source at the conductor for sync alone of @input
 *
 * Another load cures a level if it can; else what is too high is cured by a resistor, and what is
 * too low by an amplifier.
 */
void
bw_match_own_sync (const BwSource *source, const BwInput *input, BwSyncMatch *match)
{
  g_return_if_fail (source != NULL && input != NULL && match != NULL);
  double load_ohm = bw_input_load_ohm (input, TRUE);
  double level_v = bw_level_at_load (source->sync_v, source->sync_load, source->sync_ohm, load_ohm);

  *match = (BwSyncMatch){ .takes = bw_input_sync_range (input, TRUE),
                          .load_ohm = load_ohm,
                          .level_v = level_v,
                          .gain = 1 };
  try_way (source, input, BW_LOAD_AS_IT_IS, match);
  if (!is_taken (match->takes, level_v))
    {
      if (input->sync_termination == BW_TERMINATION_SWITCHED)
        try_way (source, input, BW_LOAD_SWITCH, match);
      if (load_ohm > BW_ONE_LOAD_MAX_OHM)
        try_way (source, input, BW_LOAD_TERMINATOR, match);
      sort_ways (match);
    }
  match->need = need_of (match);
  if (match->need != BW_NEED_RESISTOR && match->need != BW_NEED_AMPLIFIER)
    return;
  match->aim_v = bw_range_nominal (match->takes, BW_USUAL_SYNC_V);
  match->gain = match->aim_v / match->level_v;
}

/* Parts in the conductors with picture */

static void
add_resistor (BwNetwork *network, BwPlace place, double ohm)
{
  g_return_if_fail (network->n < BW_NETWORK_MAX);
  network->at[network->n++] = (BwElement){ place, ohm };
}

/**
 * bw_match_end:
 * @part: other than %BW_END_NO_PART
 * @open_v: of the source without load
 * @source_ohm: that the lead's end looks back into
 * @input_ohm: of the input
 * @network: (out caller-allocates): @part with its exact resistors, between that source and that
 *   input: such that a lead of 75 Ω ends in 75 Ω
 *
 * In series 75 Ω less the input's; across it so much that the two in parallel are 75 Ω; or the pad of
 * bw_pad_minimum_loss().
 *
 * Returns: %FALSE if @part cannot do that at such an input
 */
gboolean
bw_match_end (BwEndPart part, double open_v, double source_ohm, double input_ohm,
              BwNetwork *network)
{
  g_return_val_if_fail (input_ohm > 0 && network != NULL, FALSE);
  double loss_db;

  *network = (BwNetwork){ .open_v = open_v, .source_ohm = source_ohm, .load_ohm = input_ohm };
  switch (part)
    {
    case BW_END_SERIES:
      if (!(input_ohm < BW_VIDEO_OHM))
        return FALSE;
      add_resistor (network, BW_PLACE_SERIES, BW_VIDEO_OHM - input_ohm);
      return TRUE;
    case BW_END_SHUNT:
      if (!(input_ohm > BW_VIDEO_OHM))
        return FALSE;
      add_resistor (network, BW_PLACE_SHUNT,
                    BW_VIDEO_OHM * input_ohm / (input_ohm - BW_VIDEO_OHM));
      return TRUE;
    case BW_END_MINIMUM_LOSS:
      if (!bw_pad_minimum_loss (open_v, BW_VIDEO_OHM, input_ohm, network, &loss_db, NULL))
        return FALSE;
      network->source_ohm = source_ohm;
      return TRUE;
    case BW_END_NO_PART:
    default:
      return FALSE;
    }
}

/**
 * bw_match_pad:
 * @pad: %BW_PAD_T or %BW_PAD_MINIMUM_LOSS
 * @ratio: of a T pad: of the level wanted to that across 75 Ω
 * @network: (out caller-allocates): the pad with its exact resistors, between @source and a line that
 *   ends in 75 Ω
 *
 * Returns: %FALSE if there is no such pad
 */
gboolean
bw_match_pad (const BwSource *source, BwPadKind pad, double ratio, BwNetwork *network)
{
  g_return_val_if_fail (source != NULL && network != NULL, FALSE);
  double ohm = source->source_ohm, loss_db;
  double open_v = bw_open_v (source->video_v, BW_LOAD_75_OHM, ohm);
  BwNetwork made;

  if (pad == BW_PAD_MINIMUM_LOSS)
    return ohm > 0 && bw_pad_minimum_loss (open_v, ohm, BW_VIDEO_OHM, network, &loss_db, NULL);
  return bw_pad_lower (open_v, ohm, ratio, BW_USUAL_SERIES, network, &made);
}

/**
 * bw_match_network:
 * @match: of @source
 * @network: (out caller-allocates): @source, all resistors that its picture needs on its way, exact,
 *   and the input
 */
void
bw_match_network (const BwSource *source, const BwPictureMatch *match, BwNetwork *network)
{
  g_return_if_fail (source != NULL && match != NULL && network != NULL);
  double ohm = source->source_ohm;
  double open_v = bw_open_v (source->video_v, BW_LOAD_75_OHM, ohm);
  BwNetwork end;

  if (!(match->pad_ratio < 1) || !bw_match_pad (source, match->pad, match->pad_ratio, network))
    *network = (BwNetwork){ .open_v = open_v, .source_ohm = ohm };
  if (match->part != BW_END_NO_PART
      && bw_match_end (match->part, open_v, ohm, match->changed_ohm, &end))
    for (guint i = 0; i < end.n; i++)
      add_resistor (network, end.at[i].place, end.at[i].ohm);
  network->load_ohm = match->part == BW_END_NO_PART ? match->end_ohm : match->changed_ohm;
}

/* What the level at an input behind @part is against that across 75 Ω; zero: there is no such part. */
static double
end_ratio (BwEndPart part, double input_ohm)
{
  BwNetwork network; /* a source of 75 Ω that gives 1 V across 75 Ω */
  BwNetworkFigures figures;

  if (!bw_match_end (part, 2, BW_VIDEO_OHM, input_ohm, &network))
    return 0;
  bw_network_solve (&network, &figures);
  return figures.level_v;
}

/* Whether the input takes the levels of @source, of which @ratio stands there. */
static gboolean
both_are_taken (const BwSource *source, const BwInput *input, gboolean own_sync, double ratio)
{
  BwRange video = input->video_v.n > 0 ? input->video_v.at[0] : (BwRange){ 0 };

  return is_taken (video, ratio * source->video_v)
         && (own_sync || is_taken (bw_input_sync_range (input, FALSE), ratio * source->sync_v));
}

/* A resistor loses less than a pad. The pad is taken where that is too much, and the pad right. */
static void
choose_part (const BwSource *source, const BwInput *input, gboolean own_sync,
             BwPictureMatch *match)
{
  double ohm = match->changed_ohm;
  double pad = end_ratio (BW_END_MINIMUM_LOSS, ohm);

  match->part = ohm < BW_VIDEO_OHM ? BW_END_SERIES : BW_END_SHUNT;
  match->part_ratio = end_ratio (match->part, ohm);
  if (both_are_taken (source, input, own_sync, match->part_ratio) || !(pad > 0)
      || !both_are_taken (source, input, own_sync, pad))
    return;
  match->part = BW_END_MINIMUM_LOSS;
  match->part_ratio = pad;
}

/* What stands before a load that cannot be made 75 Ω. */
static void
match_resistance (const BwSource *source, const BwInput *input, gboolean own_sync,
                  BwPictureMatch *match)
{
  if (input->line_end_ohm > 0 || bw_load_is_one (match->changed_ohm))
    return;
  if (match->change == BW_LOAD_TERMINATOR) /* it would be too much */
    {
      match->change = BW_LOAD_AS_IT_IS;
      match->changed_ohm = match->load_ohm;
    }
  choose_part (source, input, own_sync, match);
}

/* Volts at a kilohm or more, as arcade monitors and early home computers have them: nothing below the
 * usual level is among those that it takes. */
static gboolean
is_made_open (const BwSource *source, const BwInput *input, gboolean own_sync,
              const BwPictureMatch *match)
{
  double changed_ratio = bw_level_at_load (1, BW_LOAD_75_OHM, source->source_ohm,
                                           match->changed_ohm);

  return match->change == BW_LOAD_TERMINATOR && !input->loop_through && input->video_v.n > 0
         && input->video_v.at[0].low >= BW_USUAL_VIDEO_V
         && both_are_taken (source, input, own_sync, match->load_ratio)
         && !both_are_taken (source, input, own_sync, changed_ratio);
}

/* What the load should become, and what stands before it where that is not 75 Ω. */
static void
match_end (const BwSource *source, const BwInput *input, gboolean own_sync, BwPictureMatch *match)
{
  match->part_ratio = 1;
  match->change = input->line_end_ohm > 0 ? BW_LOAD_AS_IT_IS : bw_input_load_change (input, FALSE);
  match->changed_ohm = changed_load_ohm (input, FALSE, match->change);
  match->made_open
      = !match->voltage_driven && is_made_open (source, input, own_sync, match);
  if (!match->voltage_driven && !match->made_open)
    match_resistance (source, input, own_sync, match);
}

/* The level once the line ends as it should; @stated_v is across 75 Ω. */
static double
ended_level_v (const BwPictureMatch *match, double source_ohm, double stated_v)
{
  if (match->part != BW_END_NO_PART)
    return stated_v * match->part_ratio;
  return bw_level_at_load (stated_v, BW_LOAD_75_OHM, source_ohm, match->changed_ohm);
}

/* One level of the picture's conductors; @stated_v is across 75 Ω. A line that is not driven as a
 * voltage is made to end as it should whatever the level, and an attenuator and an amplifier stand
 * in such a line; so there the level must be taken. Nothing is said of a level that is not known. */
static void
match_level (const BwPictureMatch *whole, double source_ohm, double stated_v, BwRange takes,
             double usual_v, BwLevelMatch *level)
{
  if (stated_v <= 0)
    {
      *level = (BwLevelMatch){ .gain = 1 };
      return;
    }
  double level_v = bw_level_at_load (stated_v, BW_LOAD_75_OHM, source_ohm, whole->load_ohm);
  double changed_v = ended_level_v (whole, source_ohm, stated_v);

  *level = (BwLevelMatch){ .takes = takes, .level_v = level_v, .gain = 1 };
  gboolean taken = is_taken (takes, level->level_v);
  if (taken && (whole->voltage_driven || whole->made_open || is_taken (takes, changed_v)))
    return;
  if (is_taken (takes, changed_v))
    {
      level->need = BW_NEED_LOAD;
      return;
    }
  level->ends_outside = taken;
  level->need = changed_v > takes.high ? BW_NEED_PAD : BW_NEED_AMPLIFIER;
  level->aim_v = bw_range_nominal (takes, usual_v);
  level->gain = level->aim_v / changed_v;
}

static void
match_levels (const BwSource *source, const BwInput *input, gboolean own_sync,
              BwPictureMatch *match)
{
  BwRange video = input->video_v.n > 0 ? input->video_v.at[0] : (BwRange){ 0 };

  match_level (match, source->source_ohm, source->video_v, video, BW_USUAL_VIDEO_V,
               &match->video);
  if (!own_sync)
    match_level (match, source->source_ohm, source->sync_v, bw_input_sync_range (input, FALSE),
                 BW_USUAL_SYNC_V, &match->sync);
}

/* @before_v: what the attenuator leaves of the level with a ratio of one */
static void
set_gain (BwLevelMatch *level, double before_v, double gain)
{
  level->aim_v = before_v * gain;
  level->gain = gain;
}

/* The level that an attenuator lowers: the line looks back into 75 Ω then, whatever the source is of. */
static double
matched_level_v (const BwPictureMatch *match, double stated_v)
{
  return ended_level_v (match, BW_VIDEO_OHM, stated_v);
}

/* A source that is not of 75 Ω is matched by a minimum-loss pad. Where that lowers the levels to what
 * the input takes, it is the attenuator as well. */
static gboolean
try_minimum_loss (const BwSource *source, const BwInput *input, double video_v, double sync_v,
                  gboolean judged, BwPictureMatch *match)
{
  BwNetwork network;
  BwNetworkFigures figures;

  if (!(source->video_v > 0) || bw_load_is_one (source->source_ohm) || match->part != BW_END_NO_PART
      || input->line_end_ohm > 0
      || !bw_match_pad (source, BW_PAD_MINIMUM_LOSS, 0, &network))
    return FALSE;
  bw_network_solve (&network, &figures);
  double ratio = figures.level_v / source->video_v;
  if (!is_taken (match->video.takes, video_v * ratio)
      || (judged && !is_taken (match->sync.takes, sync_v * ratio)))
    return FALSE;
  match->pad = BW_PAD_MINIMUM_LOSS;
  match->pad_ratio = ratio;
  return TRUE;
}

/* One attenuator serves both levels: the picture's and that of the sync in it. */
static void
match_pad (const BwSource *source, const BwInput *input, gboolean own_sync, BwPictureMatch *match)
{
  gboolean video = match->video.need == BW_NEED_PAD;
  gboolean sync = !own_sync && match->sync.need == BW_NEED_PAD;
  gboolean judged = !own_sync && match->sync.takes.high > 0;

  double video_v = matched_level_v (match, source->video_v);
  double sync_v = matched_level_v (match, source->sync_v);
  if ((video || sync) && !try_minimum_loss (source, input, video_v, sync_v, judged, match))
    match->pad_ratio = bw_pad_ratio (video_v,
                                     match->video.takes.high > 0 ? &match->video.takes : NULL,
                                     sync_v, judged ? &match->sync.takes : NULL);
  if (video)
    set_gain (&match->video, video_v, match->pad_ratio);
  if (sync)
    set_gain (&match->sync, sync_v, match->pad_ratio);
  match->terminator = (video || sync) && match->change != BW_LOAD_AS_IT_IS
                      && match->voltage_driven;
}

/**
 * bw_match_picture:
 * @sync: with which the source is used
 * @match: (out caller-allocates): the levels of @source at the conductors with picture of @input;
 *   of sync on conductors of its own, @match's sync needs nothing
 *
 * A line that is not driven as a voltage ends in one load, for it echoes otherwise.
 */
void
bw_match_picture (const BwSource *source, const BwInput *input, BwSyncKind sync,
                  BwPictureMatch *match)
{
  g_return_if_fail (source != NULL && input != NULL && match != NULL && sync < BW_N_SYNC_KINDS);
  gboolean own_sync = bw_sync_has_own_conductor (sync);

  *match = (BwPictureMatch){ .load_ohm = bw_input_load_ohm (input, FALSE),
                             .pad = BW_PAD_T,
                             .pad_ratio = 1 };
  match->load_ratio = bw_level_at_load (1, BW_LOAD_75_OHM, source->source_ohm, match->load_ohm);
  match->voltage_driven = fabs (match->load_ratio - 1) < VOLTAGE_DRIVE_TOLERANCE;
  match_end (source, input, own_sync, match);
  match_levels (source, input, own_sync, match);
  if (match->voltage_driven
      && (match->video.need == BW_NEED_PAD || match->sync.need == BW_NEED_PAD))
    { /* behind an attenuator the line is driven so no longer */
      match_resistance (source, input, own_sync, match);
      match_levels (source, input, own_sync, match);
    }
  match_pad (source, input, own_sync, match);

  gboolean keeps_load = (match->voltage_driven || match->made_open) && match->video.need == BW_NEED_NOTHING
                        && match->sync.need == BW_NEED_NOTHING;
  match->end_ohm = keeps_load ? match->load_ohm : match->changed_ohm;
}

/**
 * bw_match_needs_capacitor:
 *
 * Returns: whether the d.c. of @source is outside what @input stands, and a capacitor cures that
 *   because the input finds black by itself
 */
gboolean
bw_match_needs_capacitor (const BwSource *source, const BwInput *input)
{
  g_return_val_if_fail (source != NULL && input != NULL, FALSE);
  gboolean clamps = input->clamp < BW_N_CLAMPS && input->clamp != BW_CLAMP_NONE_DC
                    && input->clamp != BW_CLAMP_NONE_AC; /* not known is neither */

  return clamps && input->dc_v.n > 0
         && (source->dc_v < input->dc_v.at[0].low || source->dc_v > input->dc_v.at[0].high);
}
