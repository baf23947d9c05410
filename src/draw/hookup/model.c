/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* What is drawn of a plan: a row for every conductor, with its parts; and what each contact of a
 * plug is used for. */

/* The conductors in the inks and dashes of the trade; B and Pr dotted, so that no two of a lead
 * look alike in black. */
static const struct
{
  BwInkRole role;
  BwDash dash;
} looks[BW_N_CONDUCTORS + 1] = {
  [BW_CONDUCTOR_R] = { BW_INK_RED, BW_DASH_NONE },
  [BW_CONDUCTOR_G] = { BW_INK_GREEN, BW_DASH_LONG },
  [BW_CONDUCTOR_B] = { BW_INK_BLUE, BW_DASH_SHORT },
  [BW_CONDUCTOR_Y] = { BW_INK_SYNC, BW_DASH_NONE },
  [BW_CONDUCTOR_PB] = { BW_INK_BLUE, BW_DASH_LONG },
  [BW_CONDUCTOR_PR] = { BW_INK_RED, BW_DASH_SHORT },
  [BW_CONDUCTOR_C] = { BW_INK_GRAPHITE, BW_DASH_LONG },
  [BW_CONDUCTOR_VIDEO] = { BW_INK_GRAPHITE, BW_DASH_NONE },
  [BW_CONDUCTOR_SYNC] = { BW_INK_SYNC, BW_DASH_LONG_DOT },
  [BW_CONDUCTOR_H] = { BW_INK_SYNC, BW_DASH_LONG_DOT },
  [BW_CONDUCTOR_V] = { BW_INK_SYNC, BW_DASH_LONG_DOT_DOT },
  [BW_N_CONDUCTORS] = { BW_INK_GRAPHITE_LIGHT, BW_DASH_DOT },
};

void
bw_hookup_row_clear (gpointer data)
{
  BwHookupRow *row = data;
  g_free (row->label);
  g_free (row->returns);
  for (guint i = 0; i < row->n_symbols; i++)
    g_free (row->symbols[i].text);
}

static void
add_symbol (BwHookupRow *row, BwHookupSymbol symbol, gboolean at_end, char *text)
{
  if (row->n_symbols < BW_HOOKUP_MAX_SYMBOLS)
    row->symbols[row->n_symbols++] = (BwHookupSymbolPlace){ symbol, at_end, FALSE, text };
  else
    g_free (text);
}

static void
add_capacitor (const BwHookupView *what, BwHookupRow *row)
{
  if (row->connection->coupling_f > 0)
    add_symbol (row, BW_HOOKUP_CAPACITOR, FALSE,
                bw_hookup_text_farad (what, row->connection->coupling_f));
}

static void
add_symbols (const BwHookupView *what, BwHookupRow *row)
{
  const BwHookupConnection *one = row->connection;
  for (guint i = 0; i < one->n; i++)
    {
      gboolean at_end = i + one->n_at_end >= one->n;
      if (at_end && i + one->n_at_end == one->n)
        add_capacitor (what, row);
      add_symbol (row, one->at[i].place == BW_PLACE_SERIES ? BW_HOOKUP_SERIES : BW_HOOKUP_SHUNT,
                  at_end, bw_hookup_text_ohm (what, one->at[i].ohm));
    }
  if (one->n_at_end == 0)
    add_capacitor (what, row);
  if (one->terminator_ohm > 0 && row->n_symbols < BW_HOOKUP_MAX_SYMBOLS)
    {
      add_symbol (row, BW_HOOKUP_SHUNT, TRUE, bw_hookup_text_ohm (what, one->terminator_ohm));
      row->symbols[row->n_symbols - 1].terminates = TRUE;
    }
}

static void
add_row (BwHookupLayout *layout, BwHookupRow *row)
{
  guint look = row->connection != NULL ? row->connection->conductor : BW_N_CONDUCTORS;
  row->role = looks[look].role;
  row->dash = looks[look].dash;
  if (row->connection != NULL)
    add_symbols (layout->what, row);
  row->label = bw_hookup_text_row (layout->what, row,
                                   bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_RETURNS));
  row->returns = bw_hookup_text_returns (row);
  g_array_append_val (layout->rows, *row);
}

static void
add_connection (BwHookupLayout *layout, guint index)
{
  const BwHookupConnection *one = layout->what->hookup->connections->pdata[index];
  BwHookupRow row = { .hop = one->hop,
                      .connection = one,
                      .index = index,
                      .pin = { one->from_pin, one->to_pin },
                      .ground = { one->from_ground, one->to_ground } };
  add_row (layout, &row);
}

/* Pins of both ends that are joined and carry no video have the same number. */
static void
add_joined (BwHookupLayout *layout, guint hop)
{
  GPtrArray *rests = layout->what->hookup->rests;
  for (guint i = 0; i < rests->len; i++)
    {
      const BwHookupRest *rest = rests->pdata[i];
      BwHookupRow row = { .hop = hop, .pin = { rest->number, rest->number } };
      if (rest->hop == hop && !rest->at_far_end && rest->kind == BW_REST_JOINED)
        add_row (layout, &row);
    }
}

static guint
row_units (const BwHookupLayout *layout, const BwHookupRow *row)
{
  gboolean below = row->returns != NULL && bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_RETURNS);
  for (guint i = 0; i < row->n_symbols; i++)
    below = below || row->symbols[i].symbol == BW_HOOKUP_SHUNT;
  return below ? 2 : 1;
}

static void
add_lead (BwHookupLayout *layout, guint hop)
{
  const BwHookup *hookup = layout->what->hookup;
  const BwHookupHop *from = hookup->hops->pdata[hop];
  BwHookupLead *lead = &layout->leads[hop];

  *lead = (BwHookupLead){ .first = layout->rows->len };
  lead->end[0].connector = from->from_connector;
  lead->end[1].connector = from->to_connector;
  for (guint i = 0; i < hookup->connections->len; i++)
    if (((const BwHookupConnection *) hookup->connections->pdata[i])->hop == hop)
      add_connection (layout, i);
  add_joined (layout, hop);
  lead->n = layout->rows->len - lead->first;
  for (guint i = 0; i < lead->n; i++)
    {
      BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      row->units = row_units (layout, row);
      lead->units += row->units;
    }
}

/* A box has an inner plug at both sides; those at the two ends of the chain are outer ones. */
static void
choose_faces (BwHookupLayout *layout)
{
  for (guint i = 0; i < layout->n_leads; i++)
    for (guint end = 0; end < 2; end++)
      {
        gboolean outer = end == 0 ? i == 0 : i + 1 == layout->n_leads;
        BwHookupEnd *at = &layout->leads[i].end[end];
        at->shown = bw_face_shape (at->connector) != NULL
                    && bw_hookup_keeps (layout, outer ? BW_HOOKUP_LEAVE_FACES
                                                      : BW_HOOKUP_LEAVE_INNER_FACES);
      }
}

static void
mark (BwHookupEnd *end, int number, BwContactUse use, BwInkRole role)
{
  if (number >= 1 && number <= BW_FACE_MAX_NUMBER && end->marks[number].use < (guint) use)
    end->marks[number] = (BwContactMark){ use, role };
}

/* Says of every contact whether it carries a conductor, is a return or common ground, or neither. */
static void
mark_contacts (BwHookupLayout *layout)
{
  GPtrArray *rests = layout->what->hookup->rests;
  for (guint i = 0; i < layout->rows->len; i++)
    {
      const BwHookupRow *row = bw_hookup_row (layout, i);
      for (guint end = 0; end < 2; end++)
        {
          BwHookupEnd *at = &layout->leads[row->hop].end[end];
          mark (at, row->pin[end], BW_CONTACT_SIGNAL, row->role);
          mark (at, row->ground[end], BW_CONTACT_RETURN, BW_INK_GRAPHITE_LIGHT);
        }
    }
  for (guint i = 0; i < rests->len; i++)
    {
      const BwHookupRest *rest = rests->pdata[i];
      if (rest->kind == BW_REST_GROUND && rest->hop < layout->n_leads)
        mark (&layout->leads[rest->hop].end[rest->at_far_end ? 1 : 0], rest->number,
              BW_CONTACT_RETURN, BW_INK_GRAPHITE_LIGHT);
    }
}

/**
 * bw_hookup_make_rows:
 *
 * Lists leads and rows, with what the drawing keeps.
 */
void
bw_hookup_make_rows (BwHookupLayout *layout)
{
  const BwHookup *hookup = layout->what->hookup;
  g_array_set_size (layout->rows, 0);
  layout->n_leads = MIN (hookup->hops->len, BW_HOOKUP_MAX_LEADS);
  for (guint hop = 0; hop < layout->n_leads; hop++)
    add_lead (layout, hop);
  choose_faces (layout);
  mark_contacts (layout);
}
