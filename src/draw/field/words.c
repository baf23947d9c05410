/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static gboolean
is_interlaced (const BwFieldView *what)
{
  return what->raster->scan == BW_SCAN_INTERLACED;
}

/**
 * bw_field_text_lines:
 * @half_lines: not negative
 *
 * Returns: (transfer full): the count in lines, such as "2.5 lines"
 */
char *
bw_field_text_lines (int half_lines, char mark)
{
  int lines = half_lines / 2;
  if (half_lines % 2 != 0)
    /* Translators: a number of lines that ends in a half; the second is the decimal mark. */
    return g_strdup_printf (_ ("%1$d%2$c5\u00a0lines"), lines, mark);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d\u00a0line", "%d\u00a0lines",
                                       (gulong) lines),
                          lines);
}

/* The fields of a colour sequence are numbered so. */
static const char *
roman (int colour_field)
{
  static const char *const numerals[] = { "I", "II", "III", "IV" };
  return numerals[colour_field % (int) G_N_ELEMENTS (numerals)];
}

/**
 * bw_field_text_row:
 * @colour: whether the field of the colour sequence is named too
 *
 * Returns: (transfer full): the name of a row
 */
char *
bw_field_text_row (const BwFieldRow *row, gboolean colour)
{
  int field = row->shape.field + 1;
  if (!colour)
    return g_strdup_printf (_ ("Field %d"), field);
  /* Translators: number of a field, and its place in the colour sequence in Roman numerals. */
  return g_strdup_printf (_ ("Field %1$d (%2$s)"), field, roman (row->burst.colour_field));
}

/**
 * bw_field_text_caption:
 *
 * Returns: (transfer full): what is drawn and by which standard
 */
char *
bw_field_text_caption (const BwFieldView *what)
{
  const char *shows = is_interlaced (what) ? _ ("the vertical interval of both fields")
                                           : _ ("the vertical interval");
  g_autofree char *source
      = what->raster->sync_recalled
            ? g_strdup_printf (_ ("%s: its text was not read, and field sync is from memory"),
                               what->raster->source)
            : g_strdup (what->raster->source);
  return bw_text_caption (what->raster->name, shows, source);
}

static void
add_composite (GString *text, const BwFieldShape *shape, char mark)
{
  const BwRaster *raster = shape->raster;
  double line_sync_s = bw_line_shape_length (&shape->line, BW_INTERVAL_SYNC);
  g_autofree char *line_sync = bw_text_us (line_sync_s, mark);
  g_autofree char *equalising = bw_text_us (raster->equalising_width_s, mark);
  g_autofree char *broad = bw_text_us (bw_raster_broad_s (raster), mark);
  g_autofree char *serration = bw_text_us (raster->serration_width_s, mark);

  g_string_append_printf (text, _ ("Line sync %s"), line_sync);
  if (raster->equalising_before + raster->equalising_after > 0)
    {
      guint before = bw_field_shape_pulses (shape, BW_PART_EQUALISING_BEFORE);
      guint after = bw_field_shape_pulses (shape, BW_PART_EQUALISING_AFTER);
      g_string_append_printf (text, "; ");
      g_string_append_printf (text,
                              /* Translators: how many pulses stand before and after field sync. */
                              g_dngettext (GETTEXT_PACKAGE, "%1$u + %2$u equalising pulse of %3$s",
                                           "%1$u + %2$u equalising pulses of %3$s", before + after),
                              before, after, equalising);
    }
  guint n_broad = bw_field_shape_pulses (shape, BW_PART_SYNC);
  g_string_append (text, "; ");
  g_string_append_printf (text,
                          g_dngettext (GETTEXT_PACKAGE,
                                       "%1$u broad pulse of %2$s with serrations of %3$s.",
                                       "%1$u broad pulses of %2$s with serrations of %3$s.",
                                       n_broad),
                          n_broad, broad, serration);
}

static void
add_separate (GString *text, const BwFieldShape *shape, char mark)
{
  const BwRaster *raster = shape->raster;
  const BwFieldTiming *timing = &raster->field[shape->field];
  double line_sync_s = bw_line_shape_length (&shape->line, BW_INTERVAL_SYNC);
  double length_s = shape->line.trilevel ? line_sync_s / 2 : line_sync_s;
  g_autofree char *line_sync = bw_text_us (length_s, mark);
  g_autofree char *field_sync = bw_field_text_lines (timing->sync, mark);
  const char *h = bw_kind_label (&bw_polarities, raster->h_polarity);
  const char *v = bw_kind_label (&bw_polarities, raster->v_polarity);

  if (shape->line.trilevel)
    g_string_append_printf (text,
                            _ ("H: tri-level sync of the video, each half %1$s; V: separate, %2$s, "
                               "%3$s."),
                            line_sync, field_sync, v);
  else
    g_string_append_printf (text, _ ("Separate sync. H: %1$s, %2$s; V: %3$s, %4$s."), line_sync, h,
                            field_sync, v);
}

static int
first_colour_field (const BwFieldView *what)
{
  int n = bw_system_facts (what->system)->burst_fields;
  return n > 0 ? ((what->colour_field % n) + n) % n : 0;
}

static void
add_burst (GString *text, const BwFieldView *what)
{
  int n = bw_system_facts (what->system)->burst_fields, first = first_colour_field (what);
  const char *system = bw_kind_label (&bw_colour_systems, what->system);

  if (what->system == BW_SYSTEM_NONE)
    return;
  g_string_append_c (text, ' ');
  if (bw_system_knows_burst (what->system, what->raster))
    g_string_append_printf (
        text,
        g_dngettext (
            GETTEXT_PACKAGE,
            "Burst of %1$s in colour fields %2$s and %3$s; its blanking repeats after %4$d field.",
            "Burst of %1$s in colour fields %2$s and %3$s; its blanking repeats after %4$d fields.",
            (gulong) n),
        system, roman (first), roman ((first + 1) % n), n);
  else
    g_string_append_printf (
        text, _ ("No burst is drawn: no standard says which lines of this raster have it in %s."),
        system);
}

/**
 * bw_field_text_note:
 *
 * Returns: (transfer full): the widths of the pulses, and what is drawn of the burst
 */
char *
bw_field_text_note (const BwFieldView *what)
{
  GString *text = g_string_new (NULL);
  BwFieldShape shape;

  bw_field_shape_init (&shape, what->raster, 0);
  if (shape.composite)
    add_composite (text, &shape, what->mark);
  else
    add_separate (text, &shape, what->mark);
  add_burst (text, what);
  return g_string_free (text, FALSE);
}

/**
 * bw_field_text_lane:
 *
 * Returns: (transfer none): what stands at the left of @lane; empty for composite
 */
const char *
bw_field_text_lane (BwLane lane)
{
  switch (lane)
    {
    case BW_LANE_PICTURE:
      return _ ("picture");
    case BW_LANE_H:
      return "H";
    case BW_LANE_V:
      return "V";
    default:
      return "";
    }
}

static void
describe_field (GString *text, const BwFieldView *what, int field)
{
  BwFieldShape shape;
  bw_field_shape_init (&shape, what->raster, field);

  if (is_interlaced (what))
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("Field %d:"), field + 1);
    }
  for (guint part = BW_PART_BORDER_BEFORE; part < BW_PART_PICTURE_AFTER; part++)
    {
      int half_lines = shape.start[part + 1] - shape.start[part];
      if (half_lines <= 0)
        continue;
      g_autofree char *lines = bw_field_text_lines (half_lines, what->mark);
      g_autofree char *time = bw_text_length (half_lines * shape.half_line_s, what->mark);
      int line = bw_raster_line_at (what->raster, field, shape.start[part], NULL);
      g_string_append_c (text, ' ');
      /* Translators: a part of the field, its first line, how many lines it lasts and for how long. */
      g_string_append_printf (text, _ ("%1$s from line %2$d, %3$s, %4$s;"),
                              bw_field_part_label (&shape, part), line, lines, time);
    }
  g_string_append_c (text, ' ');
  g_string_append_printf (text, _ ("picture from line %d."),
                          bw_raster_line_at (what->raster, field,
                                             shape.start[BW_PART_PICTURE_AFTER], NULL));
}

/* Every part of the vertical interval with its first line and its length. */
static char *
describe (const BwFieldView *what)
{
  g_autofree char *caption = bw_field_text_caption (what);
  g_autofree char *note = bw_field_text_note (what);
  GString *text = g_string_new (caption);

  g_string_append (text, ".");
  for (int field = 0; field < (is_interlaced (what) ? 2 : 1); field++)
    describe_field (text, what, field);
  g_string_append_printf (text, " %s", note);
  return g_string_free (text, FALSE);
}

/* Reading */

typedef struct
{
  BwRaster *raster;
  BwFieldShape row[2];
  char mark;
} Field;

static void
free_field (gpointer data)
{
  Field *field = data;
  bw_raster_free (field->raster);
  g_free (field);
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Field *field = data;
  const BwFieldShape *shape = &field->row[point->id];
  double time_s = point->across;
  int line, start = bw_field_line_start (shape, (int) floor (time_s / shape->half_line_s), &line);
  const char *part = bw_field_part_label (shape, bw_field_shape_at (shape, time_s));
  g_autofree char *time = bw_text_time (time_s, field->mark);
  g_autofree char *line_time = bw_text_time (time_s - bw_field_shape_time (shape, start),
                                             field->mark);
  g_autofree char *from_field_sync = g_strdup_printf (time_s < 0 ? _ ("%s before field sync")
                                                                 : _ ("%s after field sync starts"),
                                                      time);
  return g_strdup_printf (_ ("Field %1$d, line %2$d, %3$s after its 0H: %4$s; %5$s"),
                          shape->field + 1, line, line_time, bw_or_empty (part), from_field_sync);
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Field *field = data;
  double span_s = b->across - a->across;
  g_autofree char *span = bw_text_span (span_s, field->mark);
  g_autofree char *lines = bw_text_lines (span_s / field->row[0].line.period_s, field->mark);
  return g_strdup_printf (_ ("Between the cursors: %1$s, %2$s"), span, lines);
}

/**
 * bw_field_take_words:
 *
 * Tells @drawing what it shows, and what its points say.
 */
void
bw_field_take_words (BwDrawing *drawing, const BwFieldLayout *layout)
{
  static const BwDrawingReader reader = { BW_CURSOR_ROWS, words, difference, free_field };
  const BwRaster *raster = layout->what->raster;
  Field *field = g_new0 (Field, 1);

  field->raster = bw_raster_copy (raster);
  field->mark = layout->what->mark;
  for (guint i = 0; i < layout->n_rows; i++)
    {
      field->row[i] = layout->row[i].shape;
      field->row[i].raster = field->raster;
    }
  bw_drawing_take_words (drawing,
                         g_strdup_printf (_ ("The vertical interval of %s, drawn"),
                                          bw_or_empty (raster->name)),
                         describe (layout->what),
                         g_strdup_printf ("%s-field", bw_or_empty (raster->id)));
  bw_drawing_take_reader (drawing, &reader, field);
}
