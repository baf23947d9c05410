/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/harmless.h"
#include "core/base/quantity.h"

#define NO_BREAK_SPACE "\u00a0"

/**
 * bw_ink_layout:
 *
 * Returns: (transfer full): an empty layout in the font of @ink, with figures of equal width and
 * measures that do not depend on a surface
 */
PangoLayout *
bw_ink_layout (const BwInk *ink)
{
  g_return_val_if_fail (ink != NULL, NULL);
  PangoFontMap *map = pango_cairo_font_map_get_default ();
  PangoContext *context = pango_font_map_create_context (map);
  cairo_font_options_t *options = cairo_font_options_create ();
  const char *font = ink->font != NULL ? ink->font : BW_INK_DEFAULT_FONT;
  PangoFontDescription *description = pango_font_description_from_string (font);

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  pango_cairo_context_set_resolution (context, ink->dpi > 0 ? ink->dpi : BW_INK_SCREEN_DPI);
  pango_context_set_round_glyph_positions (context, FALSE);
  PangoLayout *layout = pango_layout_new (context);
  pango_layout_set_font_description (layout, description);
  g_object_unref (context);
  cairo_font_options_destroy (options);
  pango_font_description_free (description);
  return layout;
}

static PangoAttribute *
colour_attribute (const BwInk *ink, BwInkRole role)
{
  guint32 rgb = bw_ink_rgb (ink->theme, role);
  return pango_attr_foreground_new ((guint16) (((rgb >> 16) & 0xff) * 0x101),
                                    (guint16) (((rgb >> 8) & 0xff) * 0x101),
                                    (guint16) ((rgb & 0xff) * 0x101));
}

static gsize
unit_length (const char *unit)
{
  return strcspn (unit, " \n,;:()");
}

/* A unit follows its number after a no-break space; it is set in the lighter ink. */
static void
lighten_units (PangoAttrList *attributes, const BwInk *ink, const char *text)
{
  const char *space = text;
  while ((space = strstr (space, NO_BREAK_SPACE)) != NULL)
    {
      gboolean after_number = space > text && g_ascii_isdigit (space[-1]);
      space += strlen (NO_BREAK_SPACE);
      if (!after_number)
        continue;
      PangoAttribute *lighter = colour_attribute (ink, BW_INK_GRAPHITE_LIGHT);
      lighter->start_index = (guint) (space - text);
      lighter->end_index = lighter->start_index + (guint) unit_length (space);
      pango_attr_list_insert (attributes, lighter);
    }
}

/* No line ends inside a name such as "BT.470-6" or "CTA-861-H", and no hyphen is added. */
static void
keep_names (PangoAttrList *attributes, const char *text)
{
  pango_attr_list_insert (attributes, pango_attr_insert_hyphens_new (FALSE));
  for (const char *mark = text; (mark = strpbrk (mark, "-.")) != NULL; mark++)
    {
      if (!g_ascii_isupper (mark[1]) && !g_ascii_isdigit (mark[1]))
        continue;
      PangoAttribute *keep = pango_attr_allow_breaks_new (FALSE);
      keep->start_index = (guint) (mark - text);
      keep->end_index = keep->start_index + 2;
      pango_attr_list_insert (attributes, keep);
    }
}

/**
 * bw_layout_set_text:
 * @text: is made harmless; a unit that stands after a number and a no-break space is set in lighter ink
 * @role: colour of the text; units are lighter only in %BW_INK_GRAPHITE
 *
 * Sets the text of a layout of bw_ink_layout().
 */
void
bw_layout_set_text (PangoLayout *layout, const BwInk *ink, const char *text, BwInkRole role)
{
  g_return_if_fail (layout != NULL && ink != NULL && text != NULL);
  g_autofree char *shown = bw_text_harmless_lines (text);
  PangoAttrList *attributes = pango_attr_list_new ();
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_attr_list_insert (attributes, colour_attribute (ink, role));
  if (role == BW_INK_GRAPHITE)
    lighten_units (attributes, ink, shown);
  keep_names (attributes, shown);
  pango_layout_set_text (layout, shown, -1);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

static char *
number_with_unit (double value, int decimals, const char *unit, char mark)
{
  char format[8];
  char number[64];

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, value);
  gsize end = strlen (number);
  while (end > 1 && number[end - 1] == '0')
    end--;
  end -= number[end - 1] == '.';
  number[end] = '\0';
  char *point = strchr (number, '.');
  if (point != NULL)
    *point = mark;
  return g_strconcat (strcmp (number, "-0") == 0 ? "0" : number, NO_BREAK_SPACE, unit, NULL);
}

/**
 * bw_text_us:
 * @time_s: seconds
 * @mark: the decimal mark
 *
 * For times that are compared with each other: always in microseconds, to the nanosecond, trailing
 * zeros cut.
 *
 * Returns: (transfer full): the text, such as "4.7 µs"
 */
char *
bw_text_us (double time_s, char mark)
{
  g_return_val_if_fail (isfinite (time_s) && fabs (time_s) < 1e9, NULL);
  return number_with_unit (time_s * 1e6, 3, "µs", mark);
}

/**
 * bw_text_length:
 * @time_s: seconds
 * @mark: the decimal mark
 *
 * Returns: (transfer full): microseconds to the nanosecond below a millisecond, milliseconds above
 */
char *
bw_text_length (double time_s, char mark)
{
  return fabs (time_s) < 1e-3 ? bw_text_us (time_s, mark)
                              : bw_quantity_format (time_s, BW_DIMENSION_TIME, 5, mark);
}

/**
 * bw_text_share:
 * @share: a fraction; 1 is the whole
 * @mark: the decimal mark
 *
 * Returns: (transfer full): @share in percent, to a tenth
 */
char *
bw_text_share (double share, char mark)
{
  g_return_val_if_fail (isfinite (share) && fabs (share) < 1e9, NULL);
  return number_with_unit (share * 100, 1, "%", mark);
}

/**
 * bw_text_caption:
 * @name: (nullable): what is drawn
 * @shows: what of it, in words
 * @source: (nullable): the standard that gives the figures; empty for none
 *
 * Returns: (transfer full): what stands under a drawing
 */
char *
bw_text_caption (const char *name, const char *shows, const char *source)
{
  g_return_val_if_fail (shows != NULL, NULL);
  if (*bw_or_empty (source) == '\0')
    return g_strdup_printf (_ ("%1$s: %2$s; no source is given for the figures"),
                            bw_or_empty (name), shows);
  /* Translators: raster, what is drawn of it, the standard that gives the figures. */
  return g_strdup_printf (_ ("%1$s: %2$s, by %3$s"), bw_or_empty (name), shows, source);
}
