/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pick-item.h"

#include <string.h>

/**
 * BwPickItem:
 *
 * One line of a list to pick from.
 */
struct _BwPickItem
{
  GObject parent_instance;

  char *title;
  char *subtitle;
  char *id;
  char *searched; /* all of the above, casefolded */

  gconstpointer thing; /* borrowed */
};

G_DEFINE_FINAL_TYPE (BwPickItem, bw_pick_item, G_TYPE_OBJECT)

static void
bw_pick_item_finalize (GObject *object)
{
  BwPickItem *self = BW_PICK_ITEM (object);

  g_free (self->title);
  g_free (self->subtitle);
  g_free (self->id);
  g_free (self->searched);
  G_OBJECT_CLASS (bw_pick_item_parent_class)->finalize (object);
}

static void
bw_pick_item_class_init (BwPickItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_pick_item_finalize;
}

static void
bw_pick_item_init (BwPickItem *self)
{
}

/**
 * bw_pick_item_new:
 * @title: what it is called
 * @subtitle: a few words more; may be empty
 * @id: its id; may be empty
 * @thing: (nullable): what is picked with it; must outlive the item
 *
 * Returns: (transfer full): the item
 */
BwPickItem *
bw_pick_item_new (const char *title, const char *subtitle, const char *id, gconstpointer thing)
{
  BwPickItem *self = g_object_new (BW_TYPE_PICK_ITEM, NULL);
  g_autofree char *all = g_strjoin (" ", title, subtitle, id, NULL);

  self->title = g_strdup (title);
  self->subtitle = g_strdup (subtitle);
  self->id = g_strdup (id);
  self->searched = g_utf8_casefold (all, -1);
  self->thing = thing;
  return self;
}

const char *
bw_pick_item_get_title (BwPickItem *self)
{
  return self->title;
}

const char *
bw_pick_item_get_subtitle (BwPickItem *self)
{
  return self->subtitle;
}

const char *
bw_pick_item_get_id (BwPickItem *self)
{
  return self->id;
}

gconstpointer
bw_pick_item_get_thing (BwPickItem *self)
{
  return self->thing;
}

/**
 * bw_pick_item_matches:
 * @words: (array zero-terminated=1): casefolded
 *
 * Returns: whether each of @words stands somewhere in the item
 */
gboolean
bw_pick_item_matches (BwPickItem *self, const char *const *words)
{
  for (; *words != NULL; words++)
    if (strstr (self->searched, *words) == NULL)
      return FALSE;
  return TRUE;
}
