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
  double changed_v = bw_level_at_load (stated_v, BW_LOAD_75_OHM, source_ohm, whole->changed_ohm);

  *level = (BwLevelMatch){ .takes = takes, .level_v = level_v, .gain = 1 };
  gboolean taken = is_taken (takes, level->level_v);
  if (taken && (whole->voltage_driven || is_taken (takes, changed_v)))
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
set_gain (BwLevelMatch *level, double gain)
{
  level->aim_v *= gain / level->gain;
  level->gain = gain;
}

/* One attenuator serves both levels: the picture's and that of the sync in it. */
static void
match_pad (const BwSource *source, gboolean own_sync, BwPictureMatch *match)
{
  double ohm = match->changed_ohm;
  double video_v = bw_level_at_load (source->video_v, BW_LOAD_75_OHM, source->source_ohm, ohm);
  double sync_v = bw_level_at_load (source->sync_v, BW_LOAD_75_OHM, source->source_ohm, ohm);
  gboolean video = match->video.need == BW_NEED_PAD;
  gboolean sync = !own_sync && match->sync.need == BW_NEED_PAD;
  gboolean judged = !own_sync && match->sync.takes.high > 0;

  if (video || sync)
    match->pad_ratio = bw_pad_ratio (video_v,
                                     match->video.takes.high > 0 ? &match->video.takes : NULL,
                                     sync_v, judged ? &match->sync.takes : NULL);
  if (video)
    set_gain (&match->video, match->pad_ratio);
  if (sync)
    set_gain (&match->sync, match->pad_ratio);
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
  BwRange video = input->video_v.n > 0 ? input->video_v.at[0] : (BwRange){ 0 };

  *match = (BwPictureMatch){ .load_ohm = bw_input_load_ohm (input, FALSE),
                             .change = bw_input_load_change (input, FALSE),
                             .pad_ratio = 1 };
  match->changed_ohm = changed_load_ohm (input, FALSE, match->change);
  match->load_ratio = bw_level_at_load (1, BW_LOAD_75_OHM, source->source_ohm, match->load_ohm);
  match->voltage_driven = fabs (match->load_ratio - 1) < VOLTAGE_DRIVE_TOLERANCE;
  match_level (match, source->source_ohm, source->video_v, video, BW_USUAL_VIDEO_V,
               &match->video);
  if (!own_sync)
    match_level (match, source->source_ohm, source->sync_v, bw_input_sync_range (input, FALSE),
                 BW_USUAL_SYNC_V, &match->sync);
  match_pad (source, own_sync, match);

  gboolean keeps_load = match->voltage_driven && match->video.need == BW_NEED_NOTHING
                        && match->sync.need == BW_NEED_NOTHING;
  match->end_ohm = keeps_load ? match->load_ohm : match->changed_ohm;
}
