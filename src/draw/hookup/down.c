/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Places down the page. */

/* In heights of a line of text. */
#define LEAST_ROW 1.3
#define MOST_ROW 2.4
#define ROW_OF_PLUGS 1.5 /* where a row ends in a plug of its own */
#define BAND_GAP 0.8
#define MOST_GAP 2.0 /* the most that is added between the bands, and around them */

/* The pitch of a plug's contacts, as a multiple of what their numbers need. */
#define LARGE_FACE 1.7
#define SMALL_FACE 0.45

#define NAME_LINES 2
#define LEAD_LINES 2
#define BOX_LINES 6

/* Returns: whether @band begins with the source or ends with the input */
static gboolean
band_is_outer (const BwHookupLayout *layout, guint band)
{
  return band == 0 || band + 1 == layout->n_bands;
}

static double
names_height (const BwHookupLayout *layout, guint band)
{
  return band_is_outer (layout, band) ? NAME_LINES * layout->canvas->text_height : 0;
}

static double
foot_height (const BwHookupLayout *layout)
{
  return bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_LEADS) ? LEAD_LINES * layout->canvas->text_height
                                                         : 0;
}

/* What the boxes of @band need for their names. */
static double
boxes_height (BwHookupLayout *layout, const BwHookupBand *band)
{
  double text = layout->canvas->text_height, height = 0;
  double width = layout->box_width - layout->canvas->pad;
  for (guint i = band->first > 0 ? band->first - 1 : 0;
       i < band->first + band->n && i + 1 < layout->n_leads; i++)
    {
      const char *name = bw_hookup_step_name (layout->what->hookup, BW_STEP_BOX, i);
      double needs = bw_canvas_wrapped_height (layout->canvas, name, width, BOX_LINES);
      height = MAX (height, needs + text / 2);
    }
  return height;
}

static gboolean
has_plugs (const BwHookupLead *lead)
{
  return bw_connector_is_single (lead->end[0].connector)
         || bw_connector_is_single (lead->end[1].connector);
}

/* Height of the faces of @band with @share of the pitch that numbers need. */
static double
faces_height (BwHookupLayout *layout, const BwHookupBand *band, double share)
{
  double height = 0;
  for (guint i = 0; i < 2 * band->n; i++)
    {
      const BwHookupEnd *end = &layout->leads[band->first + i / 2].end[i % 2];
      if (end->shown)
        height = MAX (height, bw_face_shape (end->connector)->height * share
                                  * bw_face_numbered_pitch (end->connector, layout->canvas));
    }
  return height;
}

static double
rows_height (const BwHookupLayout *layout, const BwHookupBand *band, double row)
{
  double height = 0;
  for (guint i = 0; i < band->n; i++)
    {
      const BwHookupLead *lead = &layout->leads[band->first + i];
      double least = has_plugs (lead) && lead->units < 1.5 * lead->n ? ROW_OF_PLUGS : 0;
      height = MAX (height, lead->units * MAX (row, least) * layout->canvas->text_height);
    }
  return height;
}

/* How high the plugs and rows of each band are: at least what they need, at most what helps. */
static gboolean
share_height (BwHookupLayout *layout, double room, double *heights)
{
  double wanted[BW_HOOKUP_MAX_LEADS], sum = 0, more = 0;

  for (guint i = 0; i < layout->n_bands; i++)
    {
      const BwHookupBand *band = &layout->bands[i];
      double boxes = boxes_height (layout, band);
      heights[i] = MAX (MAX (rows_height (layout, band, LEAST_ROW), boxes),
                        faces_height (layout, band, SMALL_FACE));
      wanted[i] = MAX (MAX (rows_height (layout, band, MOST_ROW), heights[i]),
                       faces_height (layout, band, LARGE_FACE));
      sum += heights[i];
      more += wanted[i] - heights[i];
    }
  double share = more > 0 ? CLAMP ((room - sum) / more, 0, 1) : 0;
  for (guint i = 0; i < layout->n_bands; i++)
    heights[i] += share * (wanted[i] - heights[i]);
  return sum <= room;
}

static void
place_rows (BwHookupLayout *layout, const BwHookupBand *band, const BwHookupLead *lead)
{
  double y = (band->body + band->bottom - lead->units * band->row_height) / 2;
  for (guint i = 0; i < lead->n; i++)
    {
      BwHookupRow *row = bw_hookup_row (layout, lead->first + i);
      row->y = y + band->row_height * 0.55;
      y += band->row_height * row->units;
    }
}

static void
size_faces (BwHookupLayout *layout, const BwHookupBand *band, BwHookupLead *lead)
{
  double height = band->bottom - band->body;
  for (guint i = 0; i < 2; i++)
    if (lead->end[i].shown)
      {
        guint connector = lead->end[i].connector;
        double numbered = bw_face_numbered_pitch (connector, layout->canvas);
        lead->end[i].face.pitch = MIN (height / bw_face_shape (connector)->height,
                                       LARGE_FACE * numbered);
      }
}

/**
 * bw_hookup_center_faces:
 *
 * Puts the faces at half the height of their bands, once their size is known.
 */
void
bw_hookup_center_faces (BwHookupLayout *layout)
{
  for (guint i = 0; i < layout->n_leads; i++)
    for (guint end = 0; end < 2; end++)
      {
        BwHookupEnd *at = &layout->leads[i].end[end];
        const BwHookupBand *band = &layout->bands[layout->leads[i].band];
        if (at->shown)
          at->face.y = (band->body + band->bottom - bw_face_outline (&at->face).height) / 2;
      }
}

static void
place_band (BwHookupLayout *layout, BwHookupBand *band, double top, double height)
{
  double text = layout->canvas->text_height, units = 0;
  guint index = (guint) (band - layout->bands);
  band->top = top;
  band->body = top + names_height (layout, index) + text / 3;
  band->bottom = band->body + height;
  for (guint i = 0; i < band->n; i++)
    units = MAX (units, layout->leads[band->first + i].units);
  band->row_height = MIN (height / units, MOST_ROW * text);
  for (guint i = 0; i < band->n; i++)
    {
      place_rows (layout, band, &layout->leads[band->first + i]);
      size_faces (layout, band, &layout->leads[band->first + i]);
    }
}

/* Moves the foot up. Space that the plan does not need is left under it, not amid the drawing. */
static void
raise_foot (BwHookupLayout *layout, double by)
{
  layout->foot_y -= by;
  layout->table_y -= by;
  layout->words_y -= by;
}

/**
 * bw_hookup_place_down:
 *
 * Gives everything its place down the page; the words at the foot have theirs already, and move up
 * where the plan is low.
 *
 * Returns: whether there is height enough
 */
gboolean
bw_hookup_place_down (BwHookupLayout *layout)
{
  double text = layout->canvas->text_height, pad = layout->canvas->pad;
  double heights[BW_HOOKUP_MAX_LEADS], fixed = 0, used = 0;
  double top = layout->head_y + text / 2 + pad / 2;

  for (guint i = 0; i < layout->n_bands; i++)
    fixed += names_height (layout, i) + text / 3 + foot_height (layout) + BAND_GAP * text;
  gboolean fits = share_height (layout, layout->foot_y - pad / 2 - top - fixed, heights);
  for (guint i = 0; i < layout->n_bands; i++)
    used += heights[i];
  double spare = MAX (0, layout->foot_y - pad / 2 - top - fixed - used);
  double gap = MIN (spare / (layout->n_bands + 1), MOST_GAP * text);
  raise_foot (layout, spare - gap * (layout->n_bands + 1));
  top += gap / 2;
  for (guint i = 0; i < layout->n_bands; i++)
    {
      place_band (layout, &layout->bands[i], top, heights[i]);
      top = layout->bands[i].bottom + foot_height (layout) + BAND_GAP * text + gap;
    }
  return fits;
}
