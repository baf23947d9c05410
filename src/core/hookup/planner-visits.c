/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

#include <string.h>

/* The places that the search has been to. */

/* What tells two places apart. All members are set with no gap between them. */
typedef struct
{
  double numbers[7];
  gint64 aspect[2];
  guint kinds[12];
} Key;

#define KEY_WORDS (sizeof (Key) / sizeof (guint64))
G_STATIC_ASSERT (sizeof (Key) % sizeof (guint64) == 0);

static void
make_key (const BwPlanPlace *place, Key *key)
{
  const BwSource *s = &place->signal.source;
  *key = (Key){
    .numbers = { s->video_v, s->sync_v, s->setup_ire, s->source_ohm, s->sync_ohm, s->dc_v,
                 s->detail_hz },
    .aspect = { s->aspect.num, s->aspect.den },
    .kinds = { s->signal, s->syncs, s->system, s->connector, s->sync_load, s->sync_polarity,
               s->coupling, (guint) s->whole_picture, place->signal.shape,
               (guint) place->signal.monochrome, place->raster },
  };
}

/* FNV-1a over words in place of bytes. */
static guint
hash_key (gconstpointer data)
{
  guint64 words[KEY_WORDS];
  guint64 hash = 14695981039346656037u;
  memcpy (words, data, sizeof words);
  for (gsize i = 0; i < KEY_WORDS; i++)
    hash = (hash ^ words[i]) * 1099511628211u;
  return (guint) (hash ^ (hash >> 32));
}

static gboolean
equal_keys (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (Key)) == 0;
}

/* Private: (transfer full): of no place yet. */
GHashTable *
bw_plan_visits_new (void)
{
  return g_hash_table_new_full (hash_key, equal_keys, g_free, g_free);
}

/* When this place may be gone on from: now if it is new, and as often as plans are wanted once
 * there is a plan. */
BwPlanWhen
bw_plan_visit (GHashTable *visits, const BwPlanPlace *place, guint depth,
               const BwPlanProgress *progress, BwPlanVisit **visited)
{
  Key key;
  make_key (place, &key);
  BwPlanVisit *seen = g_hash_table_lookup (visits, &key);
  if (seen == NULL)
    {
      seen = g_new0 (BwPlanVisit, 1);
      seen->least_depth = depth;
      g_hash_table_insert (visits, g_memdup2 (&key, sizeof key), seen);
    }
  else if (depth >= seen->least_depth && seen->n >= progress->n_wanted)
    return BW_PLAN_NEVER;
  else if (depth >= seen->least_depth && progress->n_plans == 0)
    return BW_PLAN_LATER;
  seen->n++;
  seen->least_depth = MIN (seen->least_depth, depth);
  *visited = seen;
  return BW_PLAN_NOW;
}

/* The same for a place that is only now reached, without going there. */
BwPlanWhen
bw_plan_foresee (GHashTable *visits, const BwPlanPlace *place, guint depth,
                 const BwPlanProgress *progress)
{
  Key key;
  make_key (place, &key);
  const BwPlanVisit *seen = g_hash_table_lookup (visits, &key);
  if (seen != NULL && depth >= BW_PLAN_MAX_BOXES && !seen->closes)
    return BW_PLAN_NEVER;
  if (seen == NULL || depth < seen->least_depth)
    return BW_PLAN_NOW;
  if (seen->n >= progress->n_wanted)
    return BW_PLAN_NEVER;
  return progress->n_plans == 0 ? BW_PLAN_LATER : BW_PLAN_NOW;
}
