/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Places across the page. */

/* In heights of a line of text. */
#define BOX_WIDTH 6.5
#define BOX_GAP 0.4 /* between a box and the plug beside it */
#define PLUG 1.45
#define CHANNEL 0.42 /* from one wire to the next where they run up and down */
#define GROUND 1.3   /* room for the sign of a return */

static void
measure_symbol (BwHookupLayout *layout, BwHookupSymbolPlace *place)
{
  BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height, width = bw_canvas_measure (canvas, place->text).width;
  switch (place->symbol)
    {
    case BW_HOOKUP_SERIES:
      place->width = width + 2.2 * text;
      break;
    case BW_HOOKUP_SHUNT:
      place->width = width + (1.6 + GROUND) * text;
      break;
    case BW_HOOKUP_CAPACITOR:
    default:
      place->width = width + 1.8 * text;
    }
}

static void
measure_row (BwHookupLayout *layout, BwHookupLead *lead, BwHookupRow *row)
{
  double before = 0, behind = 0;
  double label = bw_canvas_measure (layout->canvas, row->label).width;

  for (guint i = 0; i < row->n_symbols; i++)
    {
      measure_symbol (layout, &row->symbols[i]);
      *(row->symbols[i].at_end ? &behind : &before) += row->symbols[i].width;
    }
  if (row->returns != NULL && bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_RETURNS))
    label = MAX (label, bw_canvas_measure (layout->canvas, row->returns).width);
  lead->before = MAX (lead->before, before);
  lead->behind = MAX (lead->behind, behind);
  lead->label = MAX (lead->label, label);
}

/* The plug with the room that its wires need to spread to their rows. */
static void
measure_end (BwHookupLayout *layout, const BwHookupLead *lead, BwHookupEnd *end)
{
  double text = layout->canvas->text_height;
  if (bw_connector_is_single (end->connector))
    end->width = PLUG * text;
  else if (end->shown)
    end->width = bw_face_outline (&end->face).width + (lead->n + 1) * CHANNEL * text;
  else
    end->width = text / 2;
}

static void
measure_lead (BwHookupLayout *layout, BwHookupLead *lead)
{
  lead->before = lead->behind = lead->label = 0;
  for (guint i = 0; i < lead->n; i++)
    measure_row (layout, lead, bw_hookup_row (layout, lead->first + i));
  for (guint i = 0; i < 2; i++)
    {
      BwHookupEnd *end = &lead->end[i];
      end->face.connector = end->connector;
      if (end->shown && !(end->face.pitch > 0))
        end->face.pitch = bw_face_numbered_pitch (end->connector, layout->canvas);
      measure_end (layout, lead, end);
    }
}

/**
 * bw_hookup_measure:
 *
 * Finds how much width everything needs.
 */
void
bw_hookup_measure (BwHookupLayout *layout)
{
  double text = layout->canvas->text_height;
  layout->plug_size = PLUG * text;
  layout->box_width = BOX_WIDTH * text;
  for (guint i = 0; i < layout->n_leads; i++)
    measure_lead (layout, &layout->leads[i]);
}

static double
lead_width (const BwHookupLayout *layout, const BwHookupLead *lead)
{
  return lead->end[0].width + lead->end[1].width + lead->before + lead->label + lead->behind
         + 3 * layout->canvas->pad;
}

static double
box_room (const BwHookupLayout *layout)
{
  return layout->box_width + 2 * BOX_GAP * layout->canvas->text_height;
}

/* The width of @n leads from @first on, with the boxes between them and at ends where the chain
 * goes on in another band. */
static double
chain_width (const BwHookupLayout *layout, guint first, guint n)
{
  guint boxes = n - 1 + (first > 0) + (first + n < layout->n_leads);
  double width = boxes * box_room (layout);
  for (guint i = 0; i < n; i++)
    width += lead_width (layout, &layout->leads[first + i]);
  return width;
}

/**
 * bw_hookup_band_width:
 *
 * Returns: the least width that @band needs
 */
double
bw_hookup_band_width (const BwHookupLayout *layout, const BwHookupBand *band)
{
  return chain_width (layout, band->first, band->n);
}

/**
 * bw_hookup_choose_bands:
 *
 * Breaks the chain where the page is not wide enough for more.
 */
void
bw_hookup_choose_bands (BwHookupLayout *layout)
{
  double room = layout->canvas->width - 2 * layout->canvas->pad;
  layout->n_bands = 0;
  for (guint i = 0; i < layout->n_leads; i++)
    {
      BwHookupBand *band = layout->n_bands > 0 ? &layout->bands[layout->n_bands - 1] : NULL;
      if (band != NULL && chain_width (layout, band->first, band->n + 1) <= room)
        band->n++;
      else
        layout->bands[layout->n_bands++] = (BwHookupBand){ .first = i, .n = 1 };
      layout->leads[i].band = layout->n_bands - 1;
    }
}

static double
place_box (BwHookupLayout *layout, const BwHookupBand *band, guint after, double x)
{
  double gap = BOX_GAP * layout->canvas->text_height;
  layout->boxes[layout->n_boxes++] = (BwHookupBoxPlace){
    { x + gap, band->body, layout->box_width, band->bottom - band->body }, after
  };
  return x + box_room (layout);
}

/* Parts stand at the source's end, or where the conductor ends. */
static void
place_symbols (BwHookupRow *row, double from, double to)
{
  double x = from, end = to;
  for (guint i = 0; i < row->n_symbols; i++)
    if (row->symbols[i].at_end)
      end -= row->symbols[i].width;
  for (guint i = 0; i < row->n_symbols; i++)
    {
      BwHookupSymbolPlace *place = &row->symbols[i];
      double *at = place->at_end ? &end : &x;
      place->x = *at;
      *at += place->width;
    }
}

static void
place_lead (BwHookupLayout *layout, BwHookupLead *lead, double x, double extra)
{
  double pad = layout->canvas->pad, gap = BOX_GAP * layout->canvas->text_height;
  guint index = (guint) (lead - layout->leads);
  lead->gap[0] = index > 0 ? gap : 0;
  lead->gap[1] = index + 1 < layout->n_leads ? gap : 0;
  lead->left = x;
  lead->right = x + lead_width (layout, lead) + extra;
  double from = lead->left + lead->end[0].width, to = lead->right - lead->end[1].width;
  double room = to - lead->behind - (from + lead->before);
  lead->label_x = from + lead->before + MAX (pad, (room - lead->label) / 2);
  for (guint i = 0; i < lead->n; i++)
    {
      BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      row->start[0] = from;
      row->start[1] = to;
      row->left = from;
      row->right = to;
      place_symbols (row, from, to);
    }
  lead->end[0].face.x = lead->left;
  if (lead->end[1].shown)
    lead->end[1].face.x = lead->right - bw_face_outline (&lead->end[1].face).width;
}

static void
place_band (BwHookupLayout *layout, const BwHookupBand *band)
{
  double room = layout->canvas->width - 2 * layout->canvas->pad;
  double spare = MAX (0, room - bw_hookup_band_width (layout, band));
  double x = layout->canvas->pad;

  if (band->first > 0)
    x = place_box (layout, band, band->first - 1, x);
  for (guint i = 0; i < band->n; i++)
    {
      BwHookupLead *lead = &layout->leads[band->first + i];
      place_lead (layout, lead, x, spare / band->n);
      x = lead->right;
      if (band->first + i + 1 < layout->n_leads)
        x = place_box (layout, band, band->first + i, x);
    }
}

/**
 * bw_hookup_place_across:
 *
 * Gives leads, boxes, parts and labels their places across the page, once heights are known.
 *
 * Returns: whether the page is wide enough
 */
gboolean
bw_hookup_place_across (BwHookupLayout *layout)
{
  double room = layout->canvas->width - 2 * layout->canvas->pad;
  gboolean fits = TRUE;
  layout->n_boxes = 0;
  for (guint i = 0; i < layout->n_bands; i++)
    {
      fits &= bw_hookup_band_width (layout, &layout->bands[i]) <= room + 0.01;
      place_band (layout, &layout->bands[i]);
    }
  return fits;
}
