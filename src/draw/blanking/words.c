/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/**
 * bw_blanking_keeps:
 *
 * Returns: whether @layout has room for @leave
 */
gboolean
bw_blanking_keeps (const BwBlankingLayout *layout, BwBlankingLeave leave)
{
  return layout->left_out <= (guint) leave;
}

/**
 * bw_blanking_caption:
 *
 * Returns: (transfer full): what the drawing shows, by which standard, and whose limits it has
 */
char *
bw_blanking_caption (const BwBlankingView *what)
{
  g_autofree char *shows = bw_text_caption (what->raster->name, _ ("the line blanking"),
                                            what->raster->source);
  if (what->limits == NULL)
    return g_steal_pointer (&shows);
  return g_strdup_printf (_ ("%1$s. Allowed, and shaded around the edges: %2$s"), shows,
                          what->limits->source);
}

/* "4.6–4.8 µs", if the standard lays it down and the page has room; else NULL. */
static char *
allowed_text (const BwBlankingLayout *layout, int reading)
{
  const BwStandardLimits *limits = layout->what->limits;
  if (limits == NULL || reading < 0 || limits->at[reading].n < 2
      || !bw_blanking_keeps (layout, BW_BLANKING_LEAVE_ALLOWED))
    return NULL;
  g_autofree char *range = bw_quantity_format_range (limits->at[reading].at[1], BW_DIMENSION_TIME,
                                                     5, layout->what->mark);
  return g_strdup_printf (_ ("allowed %s"), range);
}

/* Pixels and the share of the line; empty if neither has room. */
static char *
figures_text (const BwBlankingLayout *layout, double length_s, int pixels)
{
  return bw_line_figures_text (&layout->shape, length_s,
                               bw_blanking_keeps (layout, BW_BLANKING_LEAVE_PIXELS) ? pixels : 0,
                               bw_blanking_keeps (layout, BW_BLANKING_LEAVE_SHARES),
                               layout->what->mark);
}

/**
 * bw_blanking_dim_texts:
 * @name: of what is measured, translated
 * @pixels: its length; zero in a raster defined in time
 * @reading: the BwReadingKind whose limits it has; -1: none
 * @texts: (out) (transfer full): the label in each form
 */
void
bw_blanking_dim_texts (const BwBlankingLayout *layout, const char *name, double length_s,
                       int pixels, int reading, char *texts[BW_N_GIVEN_DIM_FORMS])
{
  g_autofree char *time = bw_text_us (length_s, layout->what->mark);
  g_autofree char *rest = figures_text (layout, length_s, pixels);
  g_autofree char *allowed = allowed_text (layout, reading);
  const char *dot = rest[0] != '\0' ? " · " : "", *line = rest[0] != '\0' ? "\n" : "";
  const char *last = bw_or_empty (allowed);

  texts[BW_DIM_ONE_LINE] = g_strconcat (name, "  ", time, dot, rest, allowed != NULL ? " · " : "",
                                        last, NULL);
  texts[BW_DIM_TWO_LINES] = g_strconcat (name, "  ", time, allowed != NULL ? dot : line, rest,
                                         allowed != NULL ? "\n" : "", last, NULL);
  texts[BW_DIM_THREE_LINES] = g_strconcat (name, "\n", time, line, rest,
                                           allowed != NULL ? "\n" : "", last, NULL);
}

static void
describe_interval (GString *text, const BwBlankingLayout *layout, const char *name, double length_s,
                   int reading)
{
  g_autofree char *time = bw_text_us (length_s, layout->what->mark);
  g_autofree char *allowed = allowed_text (layout, reading);
  if (!(length_s > 0))
    return;
  g_string_append_printf (text, "; %s %s", name, time);
  if (allowed != NULL)
    g_string_append_printf (text, " (%s)", allowed);
}

static void
describe_burst (GString *text, const BwBlankingLayout *layout)
{
  BwRange burst_s;
  if (!bw_blanking_burst (layout->what, &burst_s))
    return;
  describe_interval (text, layout, _ ("0H to burst"), burst_s.low, BW_READING_BURST_START);
  describe_interval (text, layout, _ ("burst"), burst_s.high - burst_s.low,
                     BW_READING_BURST_LENGTH);
}

/**
 * bw_blanking_describe:
 *
 * The drawing in words, for screen readers and for the description inside an exported file.
 *
 * Returns: (transfer full): every interval of line blanking, with what is allowed
 */
char *
bw_blanking_describe (const BwBlankingView *what)
{
  BwBlankingLayout layout = { .what = what };
  const BwLineShape *shape = &layout.shape;
  bw_line_shape_init (&layout.shape, what->raster);
  double end_s = bw_line_shape_blanking_end (shape);
  g_autofree char *caption = bw_blanking_caption (what);
  g_autofree char *blanking = bw_text_us (end_s - bw_blanking_start (shape), what->mark);
  g_autofree char *allowed = allowed_text (&layout, BW_READING_LINE_BLANKING);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, _ ("%1$s. Line blanking %2$s"), caption, blanking);
  if (allowed != NULL)
    g_string_append_printf (text, " (%s)", allowed);
  describe_interval (text, &layout, bw_line_interval_label (BW_INTERVAL_FRONT_PORCH),
                     bw_line_shape_length (shape, BW_INTERVAL_FRONT_PORCH), BW_READING_FRONT_PORCH);
  describe_interval (text, &layout, bw_line_interval_label (BW_INTERVAL_SYNC),
                     bw_line_shape_length (shape, BW_INTERVAL_SYNC), BW_READING_LINE_SYNC);
  describe_interval (text, &layout, bw_line_interval_label (BW_INTERVAL_BACK_PORCH),
                     bw_line_shape_length (shape, BW_INTERVAL_BACK_PORCH), -1);
  describe_interval (text, &layout, _ ("0H to the end of blanking"), end_s,
                     BW_READING_SYNC_TO_PICTURE);
  describe_burst (text, &layout);
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}
