/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/levels/view.h"

const char *
bw_vector_name (const BwVectorView *what, const BwVectorTarget *target)
{
  if (target->bar < BW_N_BARS)
    return bw_kind_label (&bw_bars, target->bar);
  if (!bw_vector_is_switched (what))
    return _ ("burst");
  return target->switched ? _ ("burst, \u2212V") : _ ("burst, +V");
}

/* The bars of the lines with \u2212V are those with +V upside down: no row of the table. */
static const BwVectorTarget *
row_target (const GArray *targets, guint row)
{
  for (guint i = 0; i < targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (targets, BwVectorTarget, i);
      if (target->switched && target->bar < BW_N_BARS)
        continue;
      if (--row == 0)
        return target;
    }
  return NULL;
}

guint
bw_vector_rows (const GArray *targets)
{
  guint rows = 1;
  while (row_target (targets, rows) != NULL)
    rows++;
  return rows;
}

static char *
degrees_text (double degrees, char mark)
{
  g_autofree char *number = bw_levels_text_number (fmod (degrees, 359.95), mark);
  return g_strconcat (number, "°", NULL);
}

static double
volts_per_ire (const BwVectorView *what)
{
  const BwWireLevels *levels;
  guint n = bw_levels_model_levels (what->model, &levels);
  return n > 0 ? levels[0].volts_per_ire : 0;
}

static const char *
head_text (const BwVectorView *what, guint column)
{
  static const char *const coded[] = { N_ ("bar"), N_ ("phase"), N_ ("mV p-p"), N_ ("IRE p-p") };
  static const char *const plain[] = { N_ ("bar"), N_ ("Pb, mV"), N_ ("Pr, mV"), "" };
  return bw_vector_is_coded (what)  ? _ (coded[column])
         : plain[column][0] != '\0' ? _ (plain[column])
                                    : "";
}

/**
 * bw_vector_text_cell:
 * @row: 0 for the head of the table
 *
 * Returns: (transfer full): a cell of the table: phase and amplitude, as they should be
 */
char *
bw_vector_text_cell (const BwVectorView *what, guint row, guint column, const GArray *targets)
{
  if (row == 0)
    return g_strdup (head_text (what, column));
  const BwVectorTarget *target = row_target (targets, row);
  gboolean coded = bw_vector_is_coded (what);
  double pp_v = 2 * target->amplitude_v;

  switch (column)
    {
    case 0:
      return g_strdup (bw_vector_name (what, target));
    case 1:
      return coded ? degrees_text (target->phase_deg, what->mark)
                   : bw_levels_text_number (target->u_v * 1e3, what->mark);
    case 2:
      return bw_levels_text_number ((coded ? pp_v : target->v_v) * 1e3, what->mark);
    default:
      return coded ? bw_levels_text_number (pp_v / volts_per_ire (what), what->mark)
                   : g_strdup ("");
    }
}

char *
bw_vector_text_caption (const BwVectorView *what)
{
  const BwLevelsView levels = { .model = what->model,
                                .span = BW_LEVELS_LINE,
                                .frame = what->frame,
                                .line = what->line,
                                .video = what->video,
                                .mark = what->mark };
  return bw_levels_text_caption (&levels);
}

char *
bw_vector_text_note (const BwVectorView *what)
{
  g_autofree char *share = bw_text_share (BW_VECTOR_BOX_SHARE, what->mark);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text,
                          _ ("Boxes: where the bars should be; their size is for the eye, ±%s of "
                             "the longest, and no standard’s tolerance."),
                          share);
  if (bw_vector_is_switched (what))
    g_string_append_printf (text, " %s", _ ("Dashed: the next line, with the other sign of R−Y."));
  if (bw_vector_is_coded (what))
    g_string_append_printf (text, " %s",
                            _ ("The path is that of the chroma, without the luminance."));
  return g_string_free (text, FALSE);
}

/* The caption, and the place of each bar and of the burst. */
static char *
describe (const BwVectorView *what, const GArray *targets)
{
  g_autofree char *caption = bw_vector_text_caption (what);
  GString *text = g_string_new (caption);

  g_string_append (text, _ (". Colour difference signals:"));
  for (guint row = 1; row < bw_vector_rows (targets); row++)
    {
      g_string_append (text, row > 1 ? "; " : " ");
      for (guint column = 0; column < BW_VECTOR_COLUMNS; column++)
        {
          g_autofree char *cell = bw_vector_text_cell (what, row, column, targets);
          g_autofree char *head = bw_vector_text_cell (what, 0, column, targets);
          if (column == 0)
            g_string_append (text, cell);
          else if (cell[0] != '\0')
            g_string_append_printf (text, ", %s %s", head, cell);
        }
    }
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}

/* Reading */

typedef struct
{
  GArray *targets; /* of BwVectorTarget */
  gboolean component;
  char mark;
} Vectors;

static void
vectors_free (gpointer data)
{
  Vectors *vectors = data;
  g_array_unref (vectors->targets);
  g_free (vectors);
}

static BwBar
nearest_bar (const GArray *targets, double u_v, double v_v)
{
  BwBar nearest = BW_BAR_YELLOW;
  double least_v = INFINITY;

  for (guint i = 0; i < targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (targets, BwVectorTarget, i);
      double away_v = hypot (target->u_v - u_v, target->v_v - v_v);
      if (target->bar == BW_N_BARS || away_v >= least_v)
        continue;
      least_v = away_v;
      nearest = target->bar;
    }
  return nearest;
}

static double
amplitude_of (const BwDrawingPoint *point)
{
  return hypot (point->across, point->down);
}

/* Against +(B−Y), anticlockwise, 0 to 360 degrees. */
static double
phase_of (const BwDrawingPoint *point)
{
  double phase_deg = atan2 (point->down, point->across) * 180 / G_PI;
  return phase_deg < 0 ? phase_deg + 360 : phase_deg;
}

/* The peak to peak of a subcarrier is twice its amplitude. */
static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  const Vectors *vectors = data;
  char mark = vectors->mark;
  g_autofree char *along = bw_text_volts (point->across, mark);
  g_autofree char *up = bw_text_volts (point->down, mark);
  g_autofree char *amplitude = bw_text_volts (amplitude_of (point), mark);
  g_autofree char *whole = bw_text_volts (2 * amplitude_of (point), mark);
  g_autofree char *phase = bw_text_number (phase_of (point), 1, mark);
  const char *bar = bw_kind_label (&bw_bars,
                                   nearest_bar (vectors->targets, point->across, point->down));

  if (vectors->component)
    return g_strdup_printf (
        _ ("Pb %1$s, Pr %2$s: %3$s from the middle at %4$s°; nearest bar: %5$s"), along, up,
        amplitude, phase, bar);
  return g_strdup_printf (_ ("%1$s p-p at %2$s° (B−Y %3$s, R−Y %4$s); nearest bar: %5$s"), whole,
                          phase, along, up, bar);
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  const Vectors *vectors = data;
  double turn = phase_of (b) - phase_of (a), part = vectors->component ? 1 : 2;
  g_autofree char *degrees = bw_text_number (turn - 360 * round (turn / 360), 1, vectors->mark);
  g_autofree char *longer = bw_text_volts (part * (amplitude_of (b) - amplitude_of (a)),
                                           vectors->mark);
  return g_strdup_printf (vectors->component ? _ ("Between the cursors: %1$s and %2$s°")
                                             : _ ("Between the cursors: %1$s p-p and %2$s°"),
                          longer, degrees);
}

/* Tells @drawing what it shows, and what its points say. */
void
bw_vector_take_words (BwDrawing *drawing, const BwVectorLayout *layout)
{
  static const BwDrawingReader reader = { BW_CURSOR_CROSS, words, difference, vectors_free };
  const BwSynthesisCase *from = bw_levels_model_case (layout->what->model);
  Vectors *vectors = g_new (Vectors, 1);

  *vectors = (Vectors){ g_array_ref (layout->targets), from->form.signal == BW_SIGNAL_COMPONENT,
                        layout->what->mark };
  bw_drawing_take_words (
      drawing,
      g_strdup_printf (_ ("The colour difference signals of a line of %s, drawn"),
                       bw_or_empty (from->raster->name)),
      describe (layout->what, layout->targets),
      g_strdup_printf ("%s-vectors", bw_or_empty (from->raster->id)));
  bw_drawing_take_reader (drawing, &reader, vectors);
}
