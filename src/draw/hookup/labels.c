/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/fit/results.h"

/* The labels, each of which claims its place. */

#define LEAD_LINES 2
#define BOX_LINES 6
#define SETTING_LINES 2
#define MARK 0.8 /* of a line of text */

static gboolean
claim_wrapped (BwHookupLayout *layout, const char *text, BwBox box, int lines, BwInkRole role,
               PangoAlignment align)
{
  BwLabel label = { (char *) text, box, role, align, .wrap = TRUE };
  if (box.width < 2 * layout->canvas->text_height)
    return FALSE;
  label.box.height = bw_canvas_wrapped_height (layout->canvas, text, box.width, lines);
  return bw_canvas_claim (layout->canvas, &label);
}

/* Head */

/* "As it is:", a mark and a word. */
static gboolean
claim_verdict (BwHookupLayout *layout, const char *head, const BwFit *fit, guint nth, double *x)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *word = bw_fit_verdict_short (fit);
  BwInkRole role = bw_ink_for_severity (bw_verdict_severity (fit->verdict));
  gboolean all = bw_canvas_claim_at (canvas, head, BW_INK_GRAPHITE_LIGHT, *x, layout->head_y, 0,
                                     0.5);
  *x += bw_canvas_measure (canvas, head).width + canvas->pad / 2;
  layout->marks_x[nth] = *x;
  *x += MARK * canvas->text_height + canvas->pad / 2;
  all &= bw_canvas_claim_at (canvas, word, role, *x, layout->head_y, 0, 0.5);
  *x += bw_canvas_measure (canvas, word).width + 2 * canvas->pad;
  return all;
}

static gboolean
claim_head (BwHookupLayout *layout)
{
  const BwHookup *hookup = layout->what->hookup;
  double x = layout->canvas->pad;
  gboolean all = claim_verdict (layout, _ ("As it is:"), &hookup->fit_before, 0, &x);
  if (hookup->plan == NULL)
    return all
           & bw_canvas_claim_at (layout->canvas,
                                 bw_hookup_is_open (hookup)
                                     ? _ ("Too little is known to plan a way.")
                                     : _ ("No plan leads there."),
                                 BW_INK_GRAPHITE, x, layout->head_y, 0, 0.5);
  return all & claim_verdict (layout, _ ("By this plan:"), &hookup->fit_after, 1, &x);
}

/* Foot */

static double
words_height (BwHookupLayout *layout, const char *text, int lines)
{
  BwCanvas *canvas = layout->canvas;
  return text == NULL || lines == 0
             ? 0
             : bw_canvas_wrapped_height (canvas, text, canvas->width - 2 * canvas->pad, lines);
}

static gboolean
claim_line (BwHookupLayout *layout, const char *text, double y, int lines, BwInkRole role)
{
  BwCanvas *canvas = layout->canvas;
  return text == NULL || lines == 0
         || claim_wrapped (layout, text,
                           (BwBox){ canvas->pad, y, canvas->width - 2 * canvas->pad, 0 }, lines,
                           role, PANGO_ALIGN_LEFT);
}

static int
caption_lines (const BwHookupLayout *layout)
{
  return !bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_CAPTION)       ? 0
         : bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_LONG_CAPTION) ? 3
                                                                  : 1;
}

static char *
caption_text (const BwHookupLayout *layout)
{
  return bw_hookup_text_caption (layout->what,
                                 bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_LONG_CAPTION));
}

static char *
settings_text (const BwHookupLayout *layout)
{
  return bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_SETTINGS) ? bw_hookup_text_settings (layout->what)
                                                            : NULL;
}

/**
 * bw_hookup_place_words:
 *
 * Puts the head at the top, and settings, levels and caption at the foot of the page, which says what
 * is left for the plan.
 */
void
bw_hookup_place_words (BwHookupLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = caption_text (layout), *settings = settings_text (layout);
  double levels = bw_hookup_levels_height (layout);
  double setting = words_height (layout, settings, SETTING_LINES);

  layout->head_y = canvas->pad / 2 + canvas->text_height / 2;
  layout->words_y = canvas->height - canvas->pad / 2
                    - words_height (layout, caption, caption_lines (layout));
  layout->table_y = layout->words_y - levels - (levels > 0 ? canvas->pad / 2 : 0);
  layout->foot_y = layout->table_y - setting - (setting > 0 ? canvas->pad / 2 : 0);
}

/**
 * bw_hookup_claim_words:
 *
 * Claims head, caption, settings and levels, once they have their places.
 *
 * Returns: whether there is room for all of them
 */
gboolean
bw_hookup_claim_words (BwHookupLayout *layout)
{
  g_autofree char *caption = caption_text (layout), *settings = settings_text (layout);
  gboolean all = claim_head (layout);

  all &= claim_line (layout, caption, layout->words_y, caption_lines (layout),
                     BW_INK_GRAPHITE_LIGHT);
  all &= claim_line (layout, settings, layout->foot_y, SETTING_LINES, BW_INK_GRAPHITE);
  return all & bw_hookup_claim_levels (layout);
}

/* Names of what the chain begins and ends with */

static char *
plug_words (guint connector)
{
  const BwFaceShape *shape = bw_face_shape (connector);
  return g_strdup_printf (shape != NULL && shape->turned ? _ ("%s, solder side, pin 1 at the top")
                                                         : _ ("%s, solder side"),
                          bw_kind_label (&bw_connectors, connector));
}

/* The name, and under it the plug if the name takes one line. */
static gboolean
claim_name (BwHookupLayout *layout, const BwHookupBand *band, const char *name, const char *plug,
            guint end, double width)
{
  BwCanvas *canvas = layout->canvas;
  double x = end == 0 ? canvas->pad : canvas->width - canvas->pad - width;
  gboolean all = claim_wrapped (layout, name, (BwBox){ x, band->top, width, 0 }, 2, BW_INK_GRAPHITE,
                                end == 0 ? PANGO_ALIGN_LEFT : PANGO_ALIGN_RIGHT);
  if (bw_canvas_measure (canvas, plug).width <= width)
    bw_canvas_claim_at (canvas, plug, BW_INK_GRAPHITE_LIGHT, end == 0 ? x : x + width,
                        band->top + canvas->text_height, end, 0);
  return all;
}

static double
name_width (BwHookupLayout *layout, const char *name, const char *plug)
{
  return MAX (bw_canvas_measure (layout->canvas, name).width,
              bw_canvas_measure (layout->canvas, plug).width)
         + 1;
}

/* In one band the two names stand side by side. Each takes half of the width, or more if the other
 * needs less. */
static gboolean
claim_names (BwHookupLayout *layout)
{
  const BwHookup *hookup = layout->what->hookup;
  double room = layout->canvas->width - 3 * layout->canvas->pad;
  double share = layout->n_bands == 1 ? room / 2 : room;
  g_autofree char *from = plug_words (layout->leads[0].end[0].connector);
  g_autofree char *to = plug_words (layout->leads[layout->n_leads - 1].end[1].connector);
  double left = MIN (name_width (layout, hookup->source, from), room);
  double right = MIN (name_width (layout, hookup->input, to), room);

  if (layout->n_bands == 1 && left + right > room)
    {
      double less = MIN (MIN (left, right), share);
      left = left > right ? room - less : less;
      right = room - left;
    }
  return claim_name (layout, &layout->bands[0], hookup->source, from, 0, left)
         & claim_name (layout, &layout->bands[layout->n_bands - 1], hookup->input, to, 1, right);
}

/* Boxes and leads */

static gboolean
claim_box (BwHookupLayout *layout, const BwHookupBoxPlace *place)
{
  BwCanvas *canvas = layout->canvas;
  const char *name = bw_hookup_step_name (layout->what->hookup, BW_STEP_BOX, place->after);
  BwBox box = { place->box.x + canvas->pad / 2, place->box.y, place->box.width - canvas->pad, 0 };
  double height = bw_canvas_wrapped_height (canvas, name, box.width, BOX_LINES);
  box.y += (place->box.height - height) / 2;
  return claim_wrapped (layout, name, box, BOX_LINES, BW_INK_GRAPHITE, PANGO_ALIGN_CENTER);
}

static gboolean
fits (BwHookupLayout *layout, const char *text, double width, int lines)
{
  return bw_canvas_wrapped_height (layout->canvas, text, width, lines + 1)
         < (lines + 0.5) * layout->canvas->text_height;
}

/* With its delay and loss, if there is room for them. */
static void
claim_lead (BwHookupLayout *layout, guint index)
{
  const BwHookupLead *lead = &layout->leads[index];
  const BwHookupBand *band = &layout->bands[lead->band];
  const char *name = bw_hookup_step_name (layout->what->hookup, BW_STEP_LEAD, index);
  g_autofree char *figures = index + 1 == layout->n_leads ? bw_hookup_view_lead (layout->what)
                                                          : NULL;
  /* Translators: number of a lead and its name. */
  g_autofree char *text = g_strdup_printf (_ ("Lead %1$u: %2$s"), index + 1, name);
  g_autofree char *both = g_strdup_printf ("%s; %s", text, figures != NULL ? figures : "");
  BwBox box = { lead->left, band->bottom + layout->canvas->text_height * 0.35,
                lead->right - lead->left, 0 };
  if (!bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_LEADS) || !(box.width > 0))
    return;
  if (figures != NULL && fits (layout, both, box.width, LEAD_LINES))
    claim_wrapped (layout, both, box, LEAD_LINES, BW_INK_GRAPHITE_LIGHT, PANGO_ALIGN_CENTER);
  else if (fits (layout, text, box.width, LEAD_LINES))
    claim_wrapped (layout, text, box, LEAD_LINES, BW_INK_GRAPHITE_LIGHT, PANGO_ALIGN_CENTER);
}

/* Rows */

static gboolean
claim_symbol (BwHookupLayout *layout, const BwHookupRow *row, BwHookupSymbolPlace *place,
              double below)
{
  BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height, y = row->y;
  double width = bw_canvas_measure (canvas, place->text).width;

  switch (place->symbol)
    {
    case BW_HOOKUP_SERIES:
      place->box = (BwBox){ place->x + 0.6 * text, y - 0.55 * text, width + text, 1.1 * text };
      break;
    case BW_HOOKUP_SHUNT:
      place->box = (BwBox){ place->x + 0.8 * text, y + below - 0.55 * text, width + 0.8 * text,
                            1.1 * text };
      break;
    case BW_HOOKUP_CAPACITOR:
    default:
      place->box = (BwBox){ place->x + 0.3 * text, y - 0.5 * text, 0.4 * text, text };
      return bw_canvas_claim_at (canvas, place->text, BW_INK_GRAPHITE, place->x + 1.2 * text, y, 0,
                                 0.5);
    }
  return bw_canvas_claim_at (canvas, place->text, BW_INK_GRAPHITE,
                             place->box.x + place->box.width / 2,
                             place->box.y + place->box.height / 2, 0.5, 0.5);
}

static gboolean
claim_row (BwHookupLayout *layout, const BwHookupLead *lead, BwHookupRow *row)
{
  BwCanvas *canvas = layout->canvas;
  double height = layout->bands[lead->band].row_height,
         below = MIN (height * 0.92, 1.2 * canvas->text_height);
  BwLabel label = { row->label, bw_canvas_measure (canvas, row->label), row->role, PANGO_ALIGN_LEFT,
                    .halo = TRUE };
  label.box.x = lead->label_x;
  label.box.y = row->y - label.box.height / 2;
  gboolean all = bw_canvas_claim (canvas, &label);
  for (guint i = 0; i < row->n_symbols; i++)
    all &= claim_symbol (layout, row, &row->symbols[i], below);
  if (row->returns != NULL && bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_RETURNS))
    all &= bw_canvas_claim_at (canvas, row->returns, BW_INK_GRAPHITE_LIGHT, lead->label_x,
                               row->y + below, 0, 0.5);
  return all;
}

/* Why there is no plan. */
static gboolean
claim_needs (BwHookupLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwHookup *hookup = layout->what->hookup;
  double text = canvas->text_height, half = (canvas->width - 3 * canvas->pad) / 2;
  double top = layout->head_y + 1.5 * text;
  g_autoptr (GString) needs = g_string_new (NULL);
  for (guint i = 0; i < hookup->needs->len; i++)
    g_string_append_printf (needs, "%s• %s", i > 0 ? "\n" : "",
                            (const char *) hookup->needs->pdata[i]);
  gboolean all = claim_wrapped (layout, hookup->source, (BwBox){ canvas->pad, top, half, 0 }, 2,
                                BW_INK_GRAPHITE, PANGO_ALIGN_LEFT);
  all &= claim_wrapped (layout, hookup->input, (BwBox){ 2 * canvas->pad + half, top, half, 0 }, 2,
                        BW_INK_GRAPHITE, PANGO_ALIGN_RIGHT);
  layout->line_y = top + 3 * text;
  double y = layout->line_y + 1.5 * text;
  int lines = (int) floor ((layout->foot_y - y) / text);
  return all & (lines > 0 && claim_line (layout, needs->str, y, lines, BW_INK_GRAPHITE));
}

/**
 * bw_hookup_claim_labels:
 *
 * Claims the places of all labels of the plan.
 *
 * Returns: whether those have one that can be left out by a step of #BwHookupLeave
 */
gboolean
bw_hookup_claim_labels (BwHookupLayout *layout)
{
  gboolean all = TRUE;
  if (layout->n_leads == 0)
    return claim_needs (layout);
  for (guint i = 0; i < layout->n_leads; i++)
    {
      const BwHookupLead *lead = &layout->leads[i];
      for (guint k = 0; k < lead->n; k++)
        all &= claim_row (layout, lead, bw_hookup_row (layout, lead->first + k));
      for (guint end = 0; end < 2; end++)
        if (lead->end[end].shown)
          bw_face_claim_numbers (&lead->end[end].face, layout->canvas, lead->end[end].marks,
                                 BW_CONTACT_UNUSED);
    }
  for (guint i = 0; i < layout->n_boxes; i++)
    all &= claim_box (layout, &layout->boxes[i]);
  all &= claim_names (layout);
  for (guint i = 0; i < layout->n_leads; i++)
    claim_lead (layout, i);
  return all;
}
