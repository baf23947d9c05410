/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flow-private.h"

/**
 * bw_flow_new:
 * @ink: copied, its font too
 * @width: of the column
 * @page_height: of the column on one page
 *
 * Returns: (transfer full): an empty column
 */
BwFlow *
bw_flow_new (const BwInk *ink, double width, double page_height)
{
  BwFlow *flow = g_new0 (BwFlow, 1);

  flow->font = g_strdup (ink->font);
  flow->ink = (BwInk){ ink->theme, flow->font, ink->dpi };
  flow->width = width;
  flow->page_height = page_height;
  flow->layout = bw_ink_layout (ink);
  flow->items = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_flow_item_free);
  flow->first_of_page = g_array_new (FALSE, FALSE, sizeof (guint));
  flow->line_height = bw_flow_set_layout (flow, "0", BW_INK_GRAPHITE, width, 1, FALSE);
  return flow;
}

void
bw_flow_free (BwFlow *flow)
{
  bw_flow_end_table (flow);
  g_ptr_array_unref (flow->items);
  g_array_unref (flow->first_of_page);
  g_object_unref (flow->layout);
  g_free (flow->font);
  g_free (flow);
}

double
bw_flow_line_height (const BwFlow *flow)
{
  return flow->line_height;
}

double
bw_flow_width (const BwFlow *flow)
{
  return flow->width;
}

double
bw_flow_page_height (const BwFlow *flow)
{
  return flow->page_height;
}

/* Placing */

/**
 * bw_flow_item_new:
 * @data: (transfer full) (nullable): what @draw needs
 * @free_data: (nullable): frees @data
 *
 * Returns: (transfer full): an item that has no place yet
 */
BwFlowItem *
bw_flow_item_new (BwFlowItemDraw draw, double height, gpointer data, BwFlowItemFree free_data)
{
  BwFlowItem *item = g_new0 (BwFlowItem, 1);
  item->draw = draw;
  item->height = height;
  item->data = data;
  item->free_data = free_data;
  return item;
}

void
bw_flow_item_free (BwFlowItem *item)
{
  if (item->free_data != NULL)
    item->free_data (item->data);
  g_free (item);
}

static void
put (BwFlow *flow, BwFlowItem *item)
{
  item->page = flow->page;
  item->y = flow->y;
  flow->y += item->height;
  while (flow->first_of_page->len <= item->page)
    g_array_append_val (flow->first_of_page, flow->n_placed);
  flow->n_placed++;
}

static BwFlowItem *
next_item (const BwFlow *flow)
{
  return flow->n_placed < flow->items->len ? flow->items->pdata[flow->n_placed] : NULL;
}

/* Starts a page, with the head of the open table. */
static void
break_page (BwFlow *flow)
{
  BwFlowItem *next = next_item (flow);

  flow->page++;
  flow->y = 0;
  if (flow->table_head == NULL || (next != NULL && next->head))
    return;
  BwFlowItem *head = bw_flow_copy_row (flow->table_head);
  g_ptr_array_insert (flow->items, (int) flow->n_placed, head);
  put (flow, head);
}

static gboolean
overflows (const BwFlow *flow, double height)
{
  return flow->y > 0 && flow->y + height > flow->page_height;
}

/* Items wait until one comes that need not stay with the next; then all of them are placed. */
static void
place_waiting (BwFlow *flow)
{
  double height = 0;
  BwFlowItem *item;

  for (guint i = flow->n_placed; i < flow->items->len; i++)
    height += ((BwFlowItem *) flow->items->pdata[i])->height;
  if (height > 0 && overflows (flow, height))
    break_page (flow);
  while ((item = next_item (flow)) != NULL)
    {
      if (overflows (flow, item->height))
        break_page (flow);
      put (flow, item);
    }
}

/**
 * bw_flow_add_item:
 * @item: (transfer full)
 */
void
bw_flow_add_item (BwFlow *flow, BwFlowItem *item)
{
  g_ptr_array_add (flow->items, item);
  if (!item->keep)
    place_waiting (flow);
}

static void
draw_nothing (const BwFlowItem *item, BwFlow *flow, cairo_t *cr)
{
}

/**
 * bw_flow_add_space:
 *
 * Adds empty space, which vanishes at the head and at the foot of a page.
 */
void
bw_flow_add_space (BwFlow *flow, double height)
{
  gboolean waiting = next_item (flow) != NULL;

  if (!waiting && (flow->y <= 0 || flow->y + height >= flow->page_height))
    return;
  BwFlowItem *space = bw_flow_item_new (draw_nothing, height, NULL, NULL);
  space->keep = waiting;
  bw_flow_add_item (flow, space);
}

/* Drawings */

static void
draw_drawing (const BwFlowItem *item, BwFlow *flow, cairo_t *cr)
{
  cairo_translate (cr, 0, item->y);
  bw_drawing_paint (item->data, cr);
}

/**
 * bw_flow_add_drawing:
 * @drawing: (transfer full): as wide as the column, and not higher than a page
 */
void
bw_flow_add_drawing (BwFlow *flow, BwDrawing *drawing)
{
  bw_flow_add_item (flow, bw_flow_item_new (draw_drawing, bw_drawing_height (drawing), drawing,
                                            (BwFlowItemFree) bw_drawing_unref));
}

/**
 * bw_flow_pages:
 *
 * Returns: how many pages there are; an empty column has one
 */
guint
bw_flow_pages (BwFlow *flow)
{
  place_waiting (flow);
  return MAX (flow->first_of_page->len, 1);
}

/**
 * bw_flow_draw_page:
 * @page: from zero
 *
 * Draws one page of the column, its top left corner at the origin.
 */
void
bw_flow_draw_page (BwFlow *flow, cairo_t *cr, guint page)
{
  place_waiting (flow);
  if (page >= flow->first_of_page->len)
    return;
  for (guint i = g_array_index (flow->first_of_page, guint, page); i < flow->items->len; i++)
    {
      const BwFlowItem *item = flow->items->pdata[i];
      if (item->page != page)
        break;
      cairo_save (cr);
      item->draw (item, flow, cr);
      cairo_restore (cr);
    }
}
