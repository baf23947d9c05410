/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "sheet.h"

/* The file format, as the tables of fields have it. */

static char *
what_it_is (const BwField *field)
{
  const char *help = bw_field_help (field);
  if (*help == '\0')
    return g_strdup (bw_field_label (field));
  /* Translators: the name of a value, then a sentence that says what it is */
  return g_strdup_printf (C_ ("key of a file", "%1$s: %2$s"), bw_field_label (field), help);
}

/* What may stand there; how often, where that is not once. */
static char *
allowed_words (const BwField *field, char mark)
{
  if (field->flags & BW_FIELD_RASTER)
    return g_strdup (_ ("the id of a raster of the sheet or the catalogue"));
  g_autofree char *one = bw_field_allowed (field, mark);
  if (field->type == BW_FIELD_SET)
    return g_strdup_printf (_ ("one or more, with “;” between: %s"), one);
  if (field->type == BW_FIELD_BANDS && !(field->flags & BW_FIELD_ONE_BAND))
    return g_strdup_printf (_ ("LOW .. HIGH, or several with “;” between: %s"), one);
  if (field->type == BW_FIELD_BANDS)
    return g_strdup_printf (_ ("LOW .. HIGH: %s"), one);
  return g_steal_pointer (&one);
}

static void
add_row (BwNode *table, const BwSheetGroup *group, const char *key, gboolean required,
         const char *allowed, const char *meaning)
{
  BwNode *row = bw_node_row (table);
  const char *heading = bw_node_print (row, "[%s] %s", group->name, _ (group->title));

  bw_node_cell (row, bw_value_read_as (bw_value_words ("group", group->name), heading));
  bw_node_cell (row, bw_value_words ("key", key));
  bw_node_cell (row, bw_value_read_as (bw_value_flag ("required", required),
                                       required ? _ ("required") : ""));
  bw_node_cell (row, bw_value_says ("allowed", allowed));
  bw_node_cell (row, bw_value_says ("meaning", meaning));
  bw_node_member (row, bw_value_says ("group_title", _ (group->title)));
}

static void
add_keys (BwNode *table, const BwSheetGroup *group)
{
  const BwFieldTable *fields = bw_sheet_group_fields (group);
  for (guint i = 0; i < fields->n; i++)
    {
      const BwField *field = &fields->at[i];
      g_autofree char *allowed = allowed_words (field, bw_result_mark (table->result));
      g_autofree char *meaning = what_it_is (field);
      add_row (table, group, field->key, bw_field_is_needed (field), allowed, meaning);
    }
}

/**
 * bw_sheet_say_keys:
 *
 * Adds a table of every key that the file of a bench sheet may have: its group, whether it must be
 * there, what may stand there, and what it means.
 */
void
bw_sheet_say_keys (BwNode *to)
{
  g_return_if_fail (to != NULL);
  const BwSheetGroup *first = bw_sheet_groups ();
  BwNode *table = bw_node_table (to, "keys", NULL);

  table->is_grouped = TRUE;
  bw_node_column (table, BW_COLUMN_WORDS, _ ("group"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("key"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, "", NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("allowed"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("what it is"), NULL);
  add_row (table, first, "format", TRUE, G_STRINGIFY (BW_SHEET_FORMAT),
           _ ("Version of the file's format."));
  for (const BwSheetGroup *group = first; group->name != NULL; group++)
    add_keys (table, group);
}
