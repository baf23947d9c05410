/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "differences.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* In what two states of a sheet differ, in words: a line for each member that is another one, and
 * for each input, source or raster that is in one of them alone. */

#define MOST_OF_A_TEXT 120

typedef struct
{
  const BwSheet *from;
  const BwSheet *to;
  const BwCatalogue *catalogue;
  GPtrArray *lines; /* owned char * */
} Comparison;

static void
add_line (Comparison *c, char *line)
{
  g_ptr_array_add (c->lines, line);
}

/* @text in quotes on one line; what is very long is cut, for it is only to be recognised. */
static char *
quoted (const char *text)
{
  g_autofree char *start = g_utf8_substring (text, 0, MIN (g_utf8_strlen (text, -1), MOST_OF_A_TEXT));
  gboolean cut = strlen (start) < strlen (text);

  g_strdelimit (start, "\n\t", ' ');
  return g_strdup_printf (cut ? "“%s…”" : "“%s”", start);
}

static char *
raster_words (const Comparison *c, const BwSheet *sheet, const BwSource *source)
{
  const BwRaster *raster = bw_sheet_raster (sheet, c->catalogue, source);
  return g_strdup (raster != NULL ? raster->name : source->raster);
}

static char *
value_words (const Comparison *c, const BwSheet *sheet, const BwField *field, gconstpointer object)
{
  if (!bw_field_is_set (field, object))
    return g_strdup (C_ ("a value", "nothing"));
  switch (field->type)
    {
    case BW_FIELD_CHOICE:
      return g_strdup (bw_kind_label (field->kinds, bw_field_get_uint (field, object)));
    case BW_FIELD_SET:
      return bw_kind_set_labels (field->kinds, bw_field_get_uint (field, object));
    case BW_FIELD_SWITCH:
      return g_strdup (bw_field_get_uint (field, object) ? _ ("yes") : _ ("no"));
    case BW_FIELD_TEXT:
      return field->flags & BW_FIELD_RASTER ? raster_words (c, sheet, object)
                                            : quoted (bw_field_get_string (field, object));
    case BW_FIELD_PINS:
      return bw_pinout_words (G_STRUCT_MEMBER_P (object, field->offset));
    default:
      return bw_field_to_entry (field, object, bw_quantity_locale_mark ());
    }
}

/* @says: whether where the figure comes from is said as well */
static char *
value_with_origin (const Comparison *c, const BwSheet *sheet, const BwFieldTable *table,
                   const BwField *field, gconstpointer object, gboolean says)
{
  g_autofree char *value = value_words (c, sheet, field, object);
  if (!says || !bw_field_is_set (field, object))
    return g_steal_pointer (&value);
  /* Translators: a figure and where it comes from: "0.7 mm (plate)" */
  return g_strdup_printf (_ ("%1$s (%2$s)"), value,
                          bw_kind_label (&bw_origins, bw_field_origin (table, field, object)));
}

/* @of: what the members belong to; NULL: the sheet itself */
static void
compare_fields (Comparison *c, const BwFieldTable *table, const char *of, gconstpointer from,
                gconstpointer to)
{
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      gboolean same_origin = bw_field_origin (table, field, from)
                             == bw_field_origin (table, field, to);
      if (bw_field_equal (field, from, to) && same_origin)
        continue;
      g_autofree char *before = value_with_origin (c, c->from, table, field, from, !same_origin);
      g_autofree char *after = value_with_origin (c, c->to, table, field, to, !same_origin);
      if (of == NULL)
        add_line (c, g_strdup_printf (
                         /* Translators: name of a field: old value → new value */
                         _ ("%1$s: %2$s → %3$s"), bw_field_label (field), before, after));
      else
        add_line (c, g_strdup_printf (
                         /* Translators: what it belongs to, name of a field: old value → new value */
                         _ ("%1$s, %2$s: %3$s → %4$s"), of, bw_field_label (field), before, after));
    }
}

/* Inputs and sources. They are told apart by their name and by their group in the file, of which
 * either may have changed. */

static const char *
name_of (BwPart part, gconstpointer object)
{
  return part == BW_PART_INPUT ? ((const BwInput *) object)->name
                               : ((const BwSource *) object)->name;
}

static const char *
group_of (BwPart part, gconstpointer object)
{
  return part == BW_PART_INPUT ? ((const BwInput *) object)->group
                               : ((const BwSource *) object)->group;
}

enum
{
  BY_NAME = 1 << 0,
  BY_GROUP = 1 << 1
};

static gboolean
is_same (BwPart part, guint by, gconstpointer a, gconstpointer b)
{
  if ((by & BY_NAME) && strcmp (name_of (part, a), name_of (part, b)) != 0)
    return FALSE;
  return !(by & BY_GROUP) || g_strcmp0 (group_of (part, a), group_of (part, b)) == 0;
}

/* For each of @to the place of its like in @from, or −1. */
static int *
match (BwPart part, const GPtrArray *from, const GPtrArray *to)
{
  static const guint ways[] = { BY_NAME | BY_GROUP, BY_NAME, BY_GROUP };
  g_autofree gboolean *taken = g_new0 (gboolean, from->len + 1);
  int *like = g_new (int, to->len + 1);

  for (guint i = 0; i < to->len; i++)
    like[i] = -1;
  for (guint way = 0; way < G_N_ELEMENTS (ways); way++)
    for (guint i = 0; i < to->len; i++)
      for (guint k = 0; k < from->len && like[i] < 0; k++)
        if (!taken[k] && is_same (part, ways[way], from->pdata[k], to->pdata[i]))
          {
            like[i] = (int) k;
            taken[k] = TRUE;
          }
  return like;
}

static gboolean
contains (const int *like, guint n, int value)
{
  for (guint i = 0; i < n; i++)
    if (like[i] == value)
      return TRUE;
  return FALSE;
}

static void
compare_lists (Comparison *c, BwPart part, const GPtrArray *from, const GPtrArray *to)
{
  gboolean input = part == BW_PART_INPUT;
  g_autofree int *like = match (part, from, to);
  gboolean moved = FALSE;
  int last = -1;

  for (guint i = 0; i < to->len; i++)
    {
      if (like[i] < 0)
        {
          add_line (c, g_strdup_printf (input ? _ ("Input “%s”: added") : _ ("Source “%s”: added"),
                                        name_of (part, to->pdata[i])));
          continue;
        }
      g_autofree char *of = g_strdup_printf (input ? _ ("Input “%s”") : _ ("Source “%s”"),
                                             name_of (part, from->pdata[like[i]]));
      compare_fields (c, bw_part_fields (part), of, from->pdata[like[i]], to->pdata[i]);
      moved |= like[i] < last;
      last = like[i];
    }
  for (guint k = 0; k < from->len; k++)
    if (!contains (like, to->len, (int) k))
      add_line (c, g_strdup_printf (input ? _ ("Input “%s”: removed") : _ ("Source “%s”: removed"),
                                    name_of (part, from->pdata[k])));
  if (moved)
    add_line (c, g_strdup (input ? _ ("The inputs stand in another order")
                                 : _ ("The sources stand in another order")));
}

/* Rasters of the sheet's own */

static char *
raster_text (const BwRaster *raster)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  bw_raster_save (raster, keys, "raster");
  return g_key_file_to_data (keys, NULL, NULL);
}

static const BwRaster *
find_raster (const BwSheet *sheet, const char *id)
{
  for (guint i = 0; i < sheet->rasters->len; i++)
    {
      const BwRaster *raster = sheet->rasters->pdata[i];
      if (strcmp (raster->id, id) == 0)
        return raster;
    }
  return NULL;
}

static void
compare_rasters (Comparison *c)
{
  for (guint i = 0; i < c->to->rasters->len; i++)
    {
      const BwRaster *raster = c->to->rasters->pdata[i];
      const BwRaster *before = find_raster (c->from, raster->id);
      g_autofree char *after_text = raster_text (raster);
      g_autofree char *before_text = before != NULL ? raster_text (before) : NULL;
      if (before == NULL)
        add_line (c, g_strdup_printf (_ ("Raster “%s”: added"), raster->name));
      else if (strcmp (before_text, after_text) != 0)
        add_line (c, g_strdup_printf (_ ("Raster “%s”: changed"), raster->name));
    }
  for (guint i = 0; i < c->from->rasters->len; i++)
    {
      const BwRaster *raster = c->from->rasters->pdata[i];
      if (find_raster (c->to, raster->id) == NULL)
        add_line (c, g_strdup_printf (_ ("Raster “%s”: removed"), raster->name));
    }
}

/* What no field shows: comments, and what a newer version has written. */
static void
compare_rest (Comparison *c)
{
  g_autofree char *before = bw_sheet_to_text (c->from, c->catalogue);
  g_autofree char *after = bw_sheet_to_text (c->to, c->catalogue);
  if (c->lines->len == 0 && strcmp (before, after) != 0)
    add_line (c, g_strdup (_ ("Comments or other lines of the file that no field shows")));
}

/**
 * bw_sheet_differences:
 * @from: a sheet that was read from a text
 * @to: another one
 * @catalogue: for the names of rasters
 *
 * Returns: (transfer full) (element-type utf8): in what @to differs from @from, a line for each
 * difference; none if they are alike
 */
GPtrArray *
bw_sheet_differences (const BwSheet *from, const BwSheet *to, const BwCatalogue *catalogue)
{
  g_return_val_if_fail (from != NULL && to != NULL, NULL);
  Comparison c = { from, to, catalogue, g_ptr_array_new_with_free_func (g_free) };

  compare_fields (&c, &bw_sheet_fields, NULL, from, to);
  compare_fields (&c, &bw_monitor_fields, _ ("Monitor"), from->monitor, to->monitor);
  compare_lists (&c, BW_PART_INPUT, from->monitor->inputs, to->monitor->inputs);
  compare_lists (&c, BW_PART_SOURCE, from->sources, to->sources);
  compare_rasters (&c);
  compare_rest (&c);
  return c.lines;
}

/**
 * bw_typed_difference:
 * @sheet: the sheet that @typed was typed for
 *
 * Returns: (transfer full): what was typed and not taken, in words
 */
char *
bw_typed_difference (const BwSheet *sheet, const BwTyped *typed)
{
  g_return_val_if_fail (sheet != NULL && typed != NULL, NULL);
  g_autofree char *text = quoted (typed->text);
  const char *label = bw_field_label (typed->field);
  const GPtrArray *inputs = sheet->monitor->inputs;

  if (typed->part == BW_PART_MONITOR)
    return g_strdup_printf (_ ("Monitor, %1$s: %2$s was typed"), label, text);
  if (typed->part == BW_PART_INPUT && typed->index < inputs->len)
    return g_strdup_printf (_ ("Input “%1$s”, %2$s: %3$s was typed"),
                            ((const BwInput *) inputs->pdata[typed->index])->name, label, text);
  if (typed->part == BW_PART_SOURCE && typed->index < sheet->sources->len)
    return g_strdup_printf (_ ("Source “%1$s”, %2$s: %3$s was typed"),
                            bw_sheet_source (sheet, typed->index)->name, label, text);
  return g_strdup_printf (_ ("%1$s: %2$s was typed"), label, text);
}
