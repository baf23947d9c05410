/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* What there is to read in the drawn plan, and what it is in words. */

/* Words */

/* What becomes of a contact that carries no conductor. */
static char *
rest_words (const BwHookup *hookup, guint hop, gboolean far_end, int number)
{
  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const BwHookupRest *rest = hookup->rests->pdata[i];
      if (rest->hop == hop && rest->at_far_end == far_end && rest->number == number)
        return g_strdup (rest->state);
    }
  return NULL;
}

static char *
use_words (const BwHookupLayout *layout, guint hop, guint end, int number)
{
  for (guint i = 0; i < layout->rows->len; i++)
    {
      const BwHookupRow *row = bw_hookup_row (layout, i);
      if (row->hop != hop || row->connection == NULL)
        continue;
      if (row->pin[end] == number)
        return bw_hookup_connection_says (row->connection);
      if (row->ground[end] == number)
        return g_strdup_printf (_ ("return of %s"), row->connection->signal);
    }
  char *rest = rest_words (layout->what->hookup, hop, end == 1, number);
  return rest != NULL ? rest : g_strdup (_ ("not laid down"));
}

static char *
contact_words (const BwHookupLayout *layout, guint hop, guint end, guint number)
{
  const BwHookupHop *at = layout->what->hookup->hops->pdata[hop];
  guint connector = layout->leads[hop].end[end].connector;
  const BwPin *pin = bw_plug_pin (end == 0 ? &at->from_plug : &at->to_plug, (int) number);
  g_autofree char *use = use_words (layout, hop, end, (int) number);
  if (pin == NULL)
    return g_strdup_printf (_ ("Contact %1$u of %2$s: %3$s"), number,
                            bw_kind_label (&bw_connectors, connector), use);
  return g_strdup_printf (_ ("Pin %1$u of %2$s (%3$s): %4$s"), number,
                          bw_kind_label (&bw_connectors, connector), bw_pin_says (pin), use);
}

static char *
part_words (const BwHookupRow *row, const BwHookupSymbolPlace *place)
{
  const char *signal = row->connection->signal;

  if (place->symbol == BW_HOOKUP_SERIES)
    return g_strdup_printf (_ ("Resistor of %1$s, in series in %2$s"), place->text, signal);
  if (place->symbol == BW_HOOKUP_CAPACITOR)
    return g_strdup_printf (_ ("Capacitor of %1$s, in series in %2$s"), place->text, signal);
  return g_strdup_printf (place->terminates ? _ ("Terminator of %1$s, from %2$s to its return at the set")
                                            : _ ("Resistor of %1$s, from %2$s to its return"),
                          place->text, signal);
}

static char *
level_words (const BwHookupView *what, guint index)
{
  const BwHookupLevel *level = what->hookup->levels->pdata[index];
  g_autofree char *nominal = bw_hookup_text_volt (what, level->nominal_v);
  g_autofree char *least = bw_hookup_text_volt (what, level->min_v);
  g_autofree char *most = bw_hookup_text_volt (what, level->max_v);
  return g_strdup_printf (
      _ ("%1$s at the input: %2$s peak to peak, from %3$s to %4$s over the tolerances"),
      level->signal, nominal, least, most);
}

static char *
row_words (const BwHookupRow *row)
{
  return row->connection != NULL ? bw_hookup_connection_says (row->connection)
                                 : g_strdup (row->label);
}

/* Places */

/* The words of every thing that was added, by its id. */
typedef struct
{
  BwDrawing *drawing;
  GHashTable *words;
} Things;

/**
 * bw_hookup_place_id:
 *
 * Returns: the id of a place
 */
guint
bw_hookup_place_id (BwHookupPlaceKind kind, guint index, guint number)
{
  return (guint) kind << 24 | index << 8 | number;
}

static void
add_thing (Things *things, BwHookupPlaceKind kind, guint index, guint number, const BwBox *box,
           char *words)
{
  const BwDrawingPlace place = { .id = bw_hookup_place_id (kind, index, number), .box = *box };
  bw_drawing_add_place (things->drawing, &place);
  g_hash_table_replace (things->words, GUINT_TO_POINTER (place.id), words);
}

static void
add_contacts (Things *things, const BwHookupLayout *layout, guint hop, guint end)
{
  const BwHookupEnd *at = &layout->leads[hop].end[end];
  const BwFaceShape *shape = at->shown ? bw_face_shape (at->connector) : NULL;

  for (guint i = 0; shape != NULL && i < shape->n; i++)
    {
      guint number = (guint) shape->contacts[i].number;
      double width = shape->contact_width * at->face.pitch, x, y;
      double height = shape->contact_height * at->face.pitch;
      bw_face_contact (&at->face, (int) number, &x, &y);
      const BwBox box = { x - width / 2, y - height / 2, width, height };
      add_thing (things, BW_HOOKUP_PLACE_CONTACT, 2 * hop + end, number, &box,
                 contact_words (layout, hop, end, number));
    }
}

static void
add_parts (Things *things, const BwHookupLayout *layout, const BwHookupLead *lead)
{
  for (guint i = lead->first; i < lead->first + lead->n; i++)
    {
      const BwHookupRow *row = bw_hookup_row (layout, i);
      for (guint k = 0; k < row->n_symbols; k++)
        add_thing (things, BW_HOOKUP_PLACE_PART, i, k, &row->symbols[k].box,
                   part_words (row, &row->symbols[k]));
    }
}

/* Half way to the next row of the lead in the direction of @end, or to the end of the band. */
static double
reach (const BwHookupLayout *layout, const BwHookupLead *lead, guint row, double end)
{
  double y = bw_hookup_row (layout, row)->y, nearest = end;
  for (guint i = lead->first; i < lead->first + lead->n; i++)
    {
      double other = bw_hookup_row (layout, i)->y;
      if (end < y ? other < y && other > nearest : other > y && other < nearest)
        nearest = other;
    }
  return nearest < end || nearest > end ? (y + nearest) / 2 : end;
}

/* A conductor is read on the whole width of its lead, as far as to its neighbours. */
static void
add_conductors (Things *things, const BwHookupLayout *layout, const BwHookupLead *lead)
{
  const BwHookupBand *band = &layout->bands[lead->band];

  for (guint i = lead->first; i < lead->first + lead->n; i++)
    {
      double top = reach (layout, lead, i, band->body);
      double bottom = reach (layout, lead, i, band->bottom);
      const BwBox box = { lead->left, top, lead->right - lead->left, bottom - top };
      add_thing (things, BW_HOOKUP_PLACE_CONDUCTOR, i, 0, &box,
                 row_words (bw_hookup_row (layout, i)));
    }
}

static void
add_boxes (Things *things, const BwHookupLayout *layout)
{
  const BwHookup *hookup = layout->what->hookup;
  for (guint i = 0; i < layout->n_boxes; i++)
    {
      guint after = layout->boxes[i].after;
      add_thing (things, BW_HOOKUP_PLACE_BOX, after, 0, &layout->boxes[i].box,
                 g_strdup_printf ("%s: %s", bw_hookup_step_name (hookup, BW_STEP_BOX, after),
                                  bw_hookup_step_purpose (hookup, BW_STEP_BOX, after)));
    }
}

static void
add_levels (Things *things, const BwHookupLayout *layout)
{
  for (guint i = 0; i < layout->what->hookup->levels->len; i++)
    {
      const BwBox box = bw_hookup_level_box (layout, i);
      add_thing (things, BW_HOOKUP_PLACE_LEVEL, i, 0, &box, level_words (layout->what, i));
    }
}

static char *
words_of (gconstpointer data, const BwDrawingPoint *point)
{
  return g_strdup (g_hash_table_lookup ((GHashTable *) data, GUINT_TO_POINTER (point->id)));
}

static void
free_words (gpointer data)
{
  g_hash_table_unref (data);
}

/**
 * bw_hookup_add_places:
 *
 * Tells @drawing what there is to read, contacts and parts before the conductors under them; where
 * there is no plan, there is nothing.
 */
void
bw_hookup_add_places (BwDrawing *drawing, const BwHookupLayout *layout)
{
  static const BwDrawingReader reader = { BW_CURSOR_THING, words_of, NULL, free_words };
  Things things = { drawing, g_hash_table_new_full (NULL, NULL, NULL, g_free) };

  for (guint i = 0; i < layout->n_leads; i++)
    {
      add_contacts (&things, layout, i, 0);
      add_contacts (&things, layout, i, 1);
      add_parts (&things, layout, &layout->leads[i]);
    }
  add_boxes (&things, layout);
  if (layout->n_leads > 0)
    add_levels (&things, layout);
  for (guint i = 0; i < layout->n_leads; i++)
    add_conductors (&things, layout, &layout->leads[i]);
  bw_drawing_take_reader (drawing, &reader, things.words);
}
