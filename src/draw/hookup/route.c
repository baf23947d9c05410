/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Wires from contacts to rows: level out of the plug, up or down in a channel of their own, then
 * along the row. */

#define CHANNEL 0.42 /* in heights of a line of text */

typedef struct
{
  BwHookupRow *row;
  double exit_y;
} Wire;

static int
by_exit (gconstpointer a, gconstpointer b)
{
  const Wire *x = a, *y = b;
  return (x->exit_y > y->exit_y) - (x->exit_y < y->exit_y);
}

/* A wire that goes down and starts higher goes farther out, so that it does not cut those that
 * start below it; a wire that goes up and starts lower likewise. */
static void
give_channels (BwHookupLayout *layout, Wire *wires, guint n, guint end, double edge)
{
  double step = CHANNEL * layout->canvas->text_height * (end == 0 ? 1 : -1);
  double x = edge + step;

  for (guint i = n; i-- > 0;)
    if (wires[i].row->y > wires[i].exit_y)
      {
        wires[i].row->channel_x[end] = x;
        x += step;
      }
  for (guint i = 0; i < n; i++)
    if (!(wires[i].row->y > wires[i].exit_y))
      {
        wires[i].row->channel_x[end] = x;
        x += step;
      }
}

static void
route_face (BwHookupLayout *layout, BwHookupLead *lead, guint end)
{
  const BwFace *face = &lead->end[end].face;
  BwBox outline = bw_face_outline (face);
  double edge = end == 0 ? outline.x + outline.width : outline.x;
  g_autofree Wire *wires = g_new (Wire, lead->n);
  g_autofree double *taken = g_new (double, lead->n);
  guint n = 0;

  for (guint i = 0; i < lead->n; i++)
    {
      BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      double exit_y;
      row->has_pin[end] = row->pin[end] > 0
                          && bw_face_exit (face, row->pin[end], end == 0, taken, n, &exit_y);
      if (!row->has_pin[end])
        continue;
      bw_face_contact (face, row->pin[end], &row->start[end], &row->start_y[end]);
      row->exit_y[end] = exit_y;
      taken[n] = exit_y;
      wires[n++] = (Wire){ row, exit_y };
    }
  qsort (wires, n, sizeof *wires, by_exit);
  give_channels (layout, wires, n, end, edge);
}

/* A plug of its own, or no plug at all: the row begins there. */
static void
start_rows (BwHookupLayout *layout, BwHookupLead *lead, guint end)
{
  gboolean single = bw_connector_is_single (lead->end[end].connector);
  double half = layout->plug_size / 2;
  for (guint i = 0; i < lead->n; i++)
    {
      BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      row->has_pin[end] = FALSE;
      row->start_y[end] = row->y;
      gboolean supply = end == 0 && row->connection != NULL
                        && row->connection->conductor == BW_N_CONDUCTORS;
      if (single && !supply)
        row->start[end] = end == 0 ? lead->left + half : lead->right - half;
      else if (!lead->end[end].shown && !supply)
        row->start[end] = end == 0 ? lead->left - lead->gap[0] : lead->right + lead->gap[1];
    }
}

/**
 * bw_hookup_route:
 *
 * Finds the way of every wire.
 */
void
bw_hookup_route (BwHookupLayout *layout)
{
  for (guint i = 0; i < layout->n_leads; i++)
    for (guint end = 0; end < 2; end++)
      {
        BwHookupLead *lead = &layout->leads[i];
        start_rows (layout, lead, end);
        if (lead->end[end].shown)
          route_face (layout, lead, end);
      }
}
