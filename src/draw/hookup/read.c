/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What is at a place, where a thing is, and what it is in words. */

static gboolean
is_inside (const BwBox *box, double x, double y)
{
  return x >= box->x && x <= box->x + box->width && y >= box->y && y <= box->y + box->height;
}

static gboolean
take (BwHookupPoint *point, BwHookupPointKind kind, guint index, int number)
{
  *point = (BwHookupPoint){ kind, index, number };
  return TRUE;
}

static gboolean
read_lead (const BwHookupDrawing *drawing, guint index, double x, double y, BwHookupPoint *point)
{
  const BwHookupLead *lead = &drawing->leads[index];
  for (guint end = 0; end < 2; end++)
    {
      int number = lead->end[end].shown ? bw_face_contact_at (&lead->end[end].face, x, y) : 0;
      if (number > 0)
        return take (point, BW_HOOKUP_POINT_CONTACT, 2 * index + end, number);
    }
  for (guint i = 0; i < lead->n; i++)
    {
      const BwHookupRow *row = bw_hookup_row (drawing, lead->first + i);
      for (guint k = 0; k < row->n_symbols; k++)
        if (is_inside (&row->symbols[k].box, x, y))
          return take (point, BW_HOOKUP_POINT_PART, lead->first + i, (int) k);
    }
  return FALSE;
}

/* The row nearest to @y of the lead at @x, if the point is on the height of its band. */
static gboolean
read_row (const BwHookupDrawing *drawing, double x, double y, BwHookupPoint *point)
{
  for (guint i = 0; i < drawing->n_leads; i++)
    {
      const BwHookupLead *lead = &drawing->leads[i];
      const BwHookupBand *band = &drawing->bands[lead->band];
      double nearest = G_MAXDOUBLE;
      if (x < lead->left || x > lead->right || y < band->body || y > band->bottom)
        continue;
      for (guint k = 0; k < lead->n; k++)
        {
          double off = fabs (bw_hookup_row (drawing, lead->first + k)->y - y);
          if (off < nearest)
            take (point, BW_HOOKUP_POINT_CONDUCTOR, lead->first + k, 0);
          nearest = MIN (nearest, off);
        }
      return lead->n > 0;
    }
  return FALSE;
}

/**
 * bw_hookup_drawing_read:
 * @x: a point of the page
 * @y: likewise
 * @point: (out): what is there, or the nearest conductor
 *
 * Returns: whether there is something; if not, @point is left as it is
 */
gboolean
bw_hookup_drawing_read (const BwHookupDrawing *drawing, double x, double y, BwHookupPoint *point)
{
  for (guint i = 0; i < drawing->n_leads; i++)
    if (read_lead (drawing, i, x, y, point))
      return TRUE;
  for (guint i = 0; i < drawing->n_boxes; i++)
    if (is_inside (&drawing->boxes[i].box, x, y))
      return take (point, BW_HOOKUP_POINT_BOX, drawing->boxes[i].after, 0);
  int level = drawing->n_leads > 0 ? bw_hookup_level_at (drawing, x, y) : -1;
  if (level >= 0)
    return take (point, BW_HOOKUP_POINT_LEVEL, (guint) level, 0);
  return read_row (drawing, x, y, point);
}

static gboolean
middle_of (const BwBox *box, double *x, double *y)
{
  *x = box->x + box->width / 2;
  *y = box->y + box->height / 2;
  return TRUE;
}

static gboolean
place_box (const BwHookupDrawing *drawing, guint after, double *x, double *y)
{
  for (guint i = 0; i < drawing->n_boxes; i++)
    if (drawing->boxes[i].after == after)
      return middle_of (&drawing->boxes[i].box, x, y);
  return FALSE;
}

static gboolean
place_row (const BwHookupDrawing *drawing, const BwHookupPoint *point, double *x, double *y)
{
  if (point->index >= drawing->rows->len)
    return FALSE;
  const BwHookupRow *row = bw_hookup_row (drawing, point->index);
  if (point->kind == BW_HOOKUP_POINT_PART)
    return point->number >= 0 && (guint) point->number < row->n_symbols
           && middle_of (&row->symbols[point->number].box, x, y);
  *x = drawing->leads[row->hop].label_x;
  *y = row->y;
  return TRUE;
}

/**
 * bw_hookup_drawing_place:
 * @x: (out): of the middle of the thing
 * @y: (out): likewise
 *
 * The other way round from bw_hookup_drawing_read(), for a cursor.
 *
 * Returns: whether it is drawn
 */
gboolean
bw_hookup_drawing_place (const BwHookupDrawing *drawing, const BwHookupPoint *point, double *x,
                         double *y)
{
  double at[2];
  switch ((BwHookupPointKind) point->kind)
    {
    case BW_HOOKUP_POINT_CONTACT:
      if (!bw_hookup_drawing_pin (drawing, point->index / 2, point->index % 2, point->number, at))
        return FALSE;
      *x = at[0];
      *y = at[1];
      return TRUE;
    case BW_HOOKUP_POINT_BOX:
      return place_box (drawing, point->index, x, y);
    case BW_HOOKUP_POINT_LEVEL:
      {
        BwBox box = bw_hookup_level_box (drawing, point->index);
        return point->index < drawing->what->hookup->levels->len
               && bw_hookup_levels_height (drawing) > 0 && middle_of (&box, x, y);
      }
    case BW_HOOKUP_POINT_CONDUCTOR:
    case BW_HOOKUP_POINT_PART:
    case BW_N_HOOKUP_POINTS:
    default:
      return place_row (drawing, point, x, y);
    }
}

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
use_words (const BwHookupDrawing *drawing, guint hop, guint end, int number)
{
  for (guint i = 0; i < drawing->rows->len; i++)
    {
      const BwHookupRow *row = bw_hookup_row (drawing, i);
      if (row->hop != hop || row->connection == NULL)
        continue;
      if (row->pin[end] == number)
        return bw_hookup_connection_says (row->connection);
      if (row->ground[end] == number)
        return g_strdup_printf (_ ("return of %s"), row->connection->signal);
    }
  char *rest = rest_words (drawing->what->hookup, hop, end == 1, number);
  return rest != NULL ? rest : g_strdup (_ ("not laid down"));
}

static char *
contact_words (const BwHookupDrawing *drawing, const BwHookupPoint *point)
{
  guint hop = point->index / 2, end = point->index % 2;
  guint connector = drawing->leads[hop].end[end].connector;
  const BwPin *pin = bw_connector_pin (connector, drawing->what->hookup->choice.edition,
                                       point->number);
  g_autofree char *use = use_words (drawing, hop, end, point->number);
  if (pin == NULL)
    return g_strdup_printf (_ ("Contact %d of %s: %s"), point->number,
                            bw_kind_label (&bw_connectors, connector), use);
  return g_strdup_printf (_ ("Pin %d of %s (%s): %s"), point->number,
                          bw_kind_label (&bw_connectors, connector), bw_pin_says (pin), use);
}

static char *
part_words (const BwHookupDrawing *drawing, const BwHookupPoint *point)
{
  const BwHookupRow *row = bw_hookup_row (drawing, point->index);
  const BwHookupSymbolPlace *place = &row->symbols[point->number];
  const char *signal = row->connection->signal;

  if (place->symbol == BW_HOOKUP_SERIES)
    return g_strdup_printf (_ ("Resistor of %s, in series in %s"), place->text, signal);
  if (place->symbol == BW_HOOKUP_CAPACITOR)
    return g_strdup_printf (_ ("Capacitor of %s, in series in %s"), place->text, signal);
  return g_strdup_printf (place->at_end ? _ ("Terminator of %s, from %s to its return at the set")
                                        : _ ("Resistor of %s, from %s to its return"),
                          place->text, signal);
}

static char *
level_words (const BwHookupView *what, guint index)
{
  const BwHookupLevel *level = what->hookup->levels->pdata[index];
  g_autofree char *nominal = bw_hookup_text_volt (what, level->nominal_v);
  g_autofree char *least = bw_hookup_text_volt (what, level->min_v);
  g_autofree char *most = bw_hookup_text_volt (what, level->max_v);
  return g_strdup_printf (_ ("%s at the input: %s peak to peak, from %s to %s over the tolerances"),
                          level->signal, nominal, least, most);
}

static char *
row_words (const BwHookupDrawing *drawing, const BwHookupPoint *point)
{
  const BwHookupRow *row = bw_hookup_row (drawing, point->index);
  return row->connection != NULL ? bw_hookup_connection_says (row->connection)
                                 : g_strdup (row->label);
}

/**
 * bw_hookup_drawing_words:
 * @point: of this drawing, or of another one of the same plan
 *
 * Returns: (transfer full): what it is
 */
char *
bw_hookup_drawing_words (const BwHookupDrawing *drawing, const BwHookupPoint *point)
{
  const BwHookup *hookup = drawing->what->hookup;
  switch ((BwHookupPointKind) point->kind)
    {
    case BW_HOOKUP_POINT_CONTACT:
      return contact_words (drawing, point);
    case BW_HOOKUP_POINT_BOX:
      return g_strdup_printf ("%s: %s", bw_hookup_step_name (hookup, BW_STEP_BOX, point->index),
                              bw_hookup_step_purpose (hookup, BW_STEP_BOX, point->index));
    case BW_HOOKUP_POINT_LEVEL:
      return level_words (drawing->what, point->index);
    case BW_HOOKUP_POINT_PART:
      return part_words (drawing, point);
    case BW_HOOKUP_POINT_CONDUCTOR:
    case BW_N_HOOKUP_POINTS:
    default:
      return row_words (drawing, point);
    }
}
