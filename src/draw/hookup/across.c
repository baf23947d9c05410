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
measure_symbol (BwHookupDrawing *drawing, BwHookupSymbolPlace *place)
{
  BwCanvas *canvas = drawing->canvas;
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
measure_row (BwHookupDrawing *drawing, BwHookupLead *lead, BwHookupRow *row)
{
  double before = 0, behind = 0;
  double label = bw_canvas_measure (drawing->canvas, row->label).width;

  for (guint i = 0; i < row->n_symbols; i++)
    {
      measure_symbol (drawing, &row->symbols[i]);
      *(row->symbols[i].at_end ? &behind : &before) += row->symbols[i].width;
    }
  if (row->returns != NULL && bw_hookup_keeps (drawing, BW_HOOKUP_LEAVE_RETURNS))
    label = MAX (label, bw_canvas_measure (drawing->canvas, row->returns).width);
  lead->before = MAX (lead->before, before);
  lead->behind = MAX (lead->behind, behind);
  lead->label = MAX (lead->label, label);
}

/* The plug with the room that its wires need to spread to their rows. */
static void
measure_end (BwHookupDrawing *drawing, const BwHookupLead *lead, BwHookupEnd *end)
{
  double text = drawing->canvas->text_height;
  if (bw_connector_is_single (end->connector))
    end->width = PLUG * text;
  else if (end->shown)
    end->width = bw_face_outline (&end->face).width + (lead->n + 1) * CHANNEL * text;
  else
    end->width = text / 2;
}

static void
measure_lead (BwHookupDrawing *drawing, BwHookupLead *lead)
{
  lead->before = lead->behind = lead->label = 0;
  for (guint i = 0; i < lead->n; i++)
    measure_row (drawing, lead, bw_hookup_row (drawing, lead->first + i));
  for (guint i = 0; i < 2; i++)
    {
      BwHookupEnd *end = &lead->end[i];
      end->face.connector = end->connector;
      if (end->shown && !(end->face.pitch > 0))
        end->face.pitch = bw_face_numbered_pitch (end->connector, drawing->canvas);
      measure_end (drawing, lead, end);
    }
}

/**
 * bw_hookup_measure:
 *
 * Finds how much width everything needs.
 */
void
bw_hookup_measure (BwHookupDrawing *drawing)
{
  double text = drawing->canvas->text_height;
  drawing->plug_size = PLUG * text;
  drawing->box_width = BOX_WIDTH * text;
  for (guint i = 0; i < drawing->n_leads; i++)
    measure_lead (drawing, &drawing->leads[i]);
}

static double
lead_width (const BwHookupDrawing *drawing, const BwHookupLead *lead)
{
  return lead->end[0].width + lead->end[1].width + lead->before + lead->label + lead->behind
         + 3 * drawing->canvas->pad;
}

static double
box_room (const BwHookupDrawing *drawing)
{
  return drawing->box_width + 2 * BOX_GAP * drawing->canvas->text_height;
}

/* Of leads @first to @first + @n - 1 with the boxes between and at cut ends. */
static double
chain_width (const BwHookupDrawing *drawing, guint first, guint n)
{
  guint boxes = n - 1 + (first > 0) + (first + n < drawing->n_leads);
  double width = boxes * box_room (drawing);
  for (guint i = 0; i < n; i++)
    width += lead_width (drawing, &drawing->leads[first + i]);
  return width;
}

/**
 * bw_hookup_band_width:
 *
 * Returns: the least width that @band needs
 */
double
bw_hookup_band_width (const BwHookupDrawing *drawing, const BwHookupBand *band)
{
  return chain_width (drawing, band->first, band->n);
}

/**
 * bw_hookup_choose_bands:
 *
 * Breaks the chain where the page is not wide enough for more.
 */
void
bw_hookup_choose_bands (BwHookupDrawing *drawing)
{
  double room = drawing->canvas->width - 2 * drawing->canvas->pad;
  drawing->n_bands = 0;
  for (guint i = 0; i < drawing->n_leads; i++)
    {
      BwHookupBand *band = drawing->n_bands > 0 ? &drawing->bands[drawing->n_bands - 1] : NULL;
      if (band != NULL && chain_width (drawing, band->first, band->n + 1) <= room)
        band->n++;
      else
        drawing->bands[drawing->n_bands++] = (BwHookupBand){ .first = i, .n = 1 };
      drawing->leads[i].band = drawing->n_bands - 1;
    }
}

static double
place_box (BwHookupDrawing *drawing, const BwHookupBand *band, guint after, double x)
{
  double gap = BOX_GAP * drawing->canvas->text_height;
  drawing->boxes[drawing->n_boxes++] = (BwHookupBoxPlace){
    { x + gap, band->body, drawing->box_width, band->bottom - band->body }, after
  };
  return x + box_room (drawing);
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
place_lead (BwHookupDrawing *drawing, BwHookupLead *lead, double x, double extra)
{
  double pad = drawing->canvas->pad, gap = BOX_GAP * drawing->canvas->text_height;
  guint index = (guint) (lead - drawing->leads);
  lead->gap[0] = index > 0 ? gap : 0;
  lead->gap[1] = index + 1 < drawing->n_leads ? gap : 0;
  lead->left = x;
  lead->right = x + lead_width (drawing, lead) + extra;
  double from = lead->left + lead->end[0].width, to = lead->right - lead->end[1].width;
  double room = to - lead->behind - (from + lead->before);
  lead->label_x = from + lead->before + MAX (pad, (room - lead->label) / 2);
  for (guint i = 0; i < lead->n; i++)
    {
      BwHookupRow *row = bw_hookup_row (drawing, lead->first + i);
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
place_band (BwHookupDrawing *drawing, const BwHookupBand *band)
{
  double room = drawing->canvas->width - 2 * drawing->canvas->pad;
  double spare = MAX (0, room - bw_hookup_band_width (drawing, band));
  double x = drawing->canvas->pad;

  if (band->first > 0)
    x = place_box (drawing, band, band->first - 1, x);
  for (guint i = 0; i < band->n; i++)
    {
      BwHookupLead *lead = &drawing->leads[band->first + i];
      place_lead (drawing, lead, x, spare / band->n);
      x = lead->right;
      if (band->first + i + 1 < drawing->n_leads)
        x = place_box (drawing, band, band->first + i, x);
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
bw_hookup_place_across (BwHookupDrawing *drawing)
{
  double room = drawing->canvas->width - 2 * drawing->canvas->pad;
  gboolean fits = TRUE;
  drawing->n_boxes = 0;
  for (guint i = 0; i < drawing->n_bands; i++)
    {
      fits &= bw_hookup_band_width (drawing, &drawing->bands[i]) <= room + 0.01;
      place_band (drawing, &drawing->bands[i]);
    }
  return fits;
}
