/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shape.h"

#include <math.h>

#include <glib/gi18n-lib.h>


#define LEAST_PICTURE_LINES 3 /* picture lines shown before and after the vertical interval */
#define PICTURE_SHARE 0.13    /* or this share of the lines of field blanking, if that is more */

/**
 * bw_field_shape_init:
 * @shape: (out caller-allocates)
 * @raster: a raster that bw_raster_check() accepts; borrowed
 * @field: 0 or 1; 0 in a progressive raster
 */
void
bw_field_shape_init (BwFieldShape *shape, const BwRaster *raster, int field)
{
  g_return_if_fail (shape != NULL && raster != NULL);
  const BwFieldTiming *timing = &raster->field[field];
  int border = 2 * raster->v_border;
  int blanking = timing->front_porch + timing->sync + timing->back_porch;
  int picture = 2 * MAX (LEAST_PICTURE_LINES, (int) (PICTURE_SHARE * blanking / 2));
  int *start = shape->start;

  *shape = (BwFieldShape){ .raster = raster, .field = field };
  bw_line_shape_init (&shape->line, raster);
  shape->half_line_s = shape->line.period_s / 2;
  shape->composite = raster->serration_width_s > 0;
  start[BW_PART_BORDER_BEFORE] = -timing->front_porch - border;
  start[BW_PART_PICTURE_BEFORE] = start[BW_PART_BORDER_BEFORE] - picture;
  start[BW_PART_FRONT_PORCH] = -timing->front_porch;
  start[BW_PART_EQUALISING_BEFORE] = -MIN (raster->equalising_before, timing->front_porch);
  start[BW_PART_SYNC] = 0;
  start[BW_PART_EQUALISING_AFTER] = timing->sync;
  start[BW_PART_BACK_PORCH] = timing->sync + MIN (raster->equalising_after, timing->back_porch);
  start[BW_PART_BORDER_AFTER] = timing->sync + timing->back_porch;
  start[BW_PART_PICTURE_AFTER] = start[BW_PART_BORDER_AFTER] + border;
  start[BW_N_PARTS] = start[BW_PART_PICTURE_AFTER] + picture;
}

/**
 * bw_field_shape_time:
 *
 * Returns: when @half_line starts, in seconds after 0V
 */
double
bw_field_shape_time (const BwFieldShape *shape, int half_line)
{
  g_return_val_if_fail (shape != NULL, 0);
  return half_line * shape->half_line_s;
}

/**
 * bw_field_shape_at:
 * @time_s: after 0V
 *
 * Returns: the part that @time_s lies in, to the half line
 */
BwFieldPart
bw_field_shape_at (const BwFieldShape *shape, double time_s)
{
  for (guint part = BW_N_PARTS - 1; part > 0; part--)
    if (shape->start[part + 1] > shape->start[part]
        && time_s >= bw_field_shape_time (shape, shape->start[part]))
      return part;
  return BW_PART_PICTURE_BEFORE;
}

/**
 * bw_field_part_label:
 *
 * Returns: (transfer none): the translated word for @part
 */
const char *
bw_field_part_label (const BwFieldShape *shape, BwFieldPart part)
{
  static const char *const labels[BW_N_PARTS] = {
    [BW_PART_PICTURE_BEFORE] = N_ ("picture"),  [BW_PART_BORDER_BEFORE] = N_ ("border"),
    [BW_PART_FRONT_PORCH] = N_ ("front porch"), [BW_PART_EQUALISING_BEFORE] = N_ ("equalising"),
    [BW_PART_SYNC] = N_ ("field sync"),         [BW_PART_EQUALISING_AFTER] = N_ ("equalising"),
    [BW_PART_BACK_PORCH] = N_ ("back porch"),   [BW_PART_BORDER_AFTER] = N_ ("border"),
    [BW_PART_PICTURE_AFTER] = N_ ("picture"),
  };
  g_return_val_if_fail (part < BW_N_PARTS, "");
  if (shape->composite && (part == BW_PART_FRONT_PORCH || part == BW_PART_BACK_PORCH))
    return _ ("blanking");
  return _ (labels[part]);
}

/* The vertical interval with whole lines more at both ends than the shape shows, for what its ends
 * cut through. */
static BwVerticalInterval *
interval_of (const BwFieldShape *shape)
{
  const int *start = shape->start;
  return bw_vertical_interval_new (shape->raster, shape->field,
                                   (start[BW_PART_FRONT_PORCH] - start[BW_PART_PICTURE_BEFORE]) / 2
                                       + 2,
                                   (start[BW_N_PARTS] - start[BW_PART_BORDER_AFTER]) / 2 + 2);
}

/**
 * bw_field_shape_pulses:
 *
 * Returns: how many sync pulses start in @part
 */
guint
bw_field_shape_pulses (const BwFieldShape *shape, BwFieldPart part)
{
  g_return_val_if_fail (shape != NULL, 0);
  g_autoptr (BwVerticalInterval) interval = interval_of (shape);
  double quarter_s = shape->half_line_s / 2;
  double from_s = bw_field_shape_time (shape, shape->start[part]) - quarter_s;
  double to_s = bw_field_shape_time (shape, shape->start[part + 1]) - quarter_s;
  guint n = 0;

  for (guint i = 0; i < interval->pulses->len; i++)
    {
      double at_s = g_array_index (interval->pulses, BwPulse, i).start_s;
      n += at_s >= from_s && at_s < to_s;
    }
  return n;
}

/* Steps */

typedef struct
{
  const BwFieldShape *shape;
  GArray *steps;
  double from_s; /* the window */
  double to_s;
} Writer;

static void
add_step (Writer *writer, double from_s, double to_s, double level)
{
  BwLineStep step = { MAX (from_s, writer->from_s), MIN (to_s, writer->to_s), level };
  if (step.to_s > step.from_s)
    g_array_append_val (writer->steps, step);
}

static double
polar (guint polarity)
{
  return polarity == BW_POLARITY_POSITIVE ? BW_LEVEL_SYNC : -BW_LEVEL_SYNC;
}

static void
add_pulse (Writer *writer, BwLane lane, const BwPulse *pulse)
{
  double at_s = pulse->start_s, width_s = pulse->width_s;
  if (lane == BW_LANE_COMPOSITE)
    add_step (writer, at_s, at_s + width_s, -BW_LEVEL_SYNC);
  else if (writer->shape->line.trilevel)
    {
      add_step (writer, at_s - width_s / 2, at_s, -BW_LEVEL_SYNC);
      add_step (writer, at_s, at_s + width_s / 2, BW_LEVEL_SYNC);
    }
  else
    add_step (writer, at_s, at_s + width_s, polar (writer->shape->raster->h_polarity));
}

static void
add_pulses (Writer *writer, BwLane lane)
{
  g_autoptr (BwVerticalInterval) interval = interval_of (writer->shape);
  for (guint i = 0; i < interval->pulses->len; i++)
    add_pulse (writer, lane, &g_array_index (interval->pulses, BwPulse, i));
}

static gboolean
is_picture (const BwFieldShape *shape, int half_line)
{
  return half_line < shape->start[BW_PART_BORDER_BEFORE]
         || half_line >= shape->start[BW_PART_PICTURE_AFTER];
}

/* The half line, of line number @line, in which the first line of the window starts. */
static int
first_line_start (const Writer *writer)
{
  const BwFieldShape *shape = writer->shape;
  int half_line = (int) floor (writer->from_s / shape->half_line_s) - 1;
  gboolean middle;

  bw_raster_line_at (shape->raster, shape->field, half_line, &middle);
  return half_line - (middle ? 1 : 0);
}

/* A line in which the picture begins or ends half way has half a picture; as before the datum, the
 * front porch comes before the middle of the line. */
static void
add_line_of_picture (Writer *writer, int half_line)
{
  const BwFieldShape *shape = writer->shape;
  const BwLineShape *line = &shape->line;
  double datum_s = bw_field_shape_time (shape, half_line);
  gboolean first = is_picture (shape, half_line), second = is_picture (shape, half_line + 1);
  double from_s = first ? line->start_s[BW_INTERVAL_ACTIVE] : shape->half_line_s;
  double to_s = second ? line->start_s[BW_INTERVAL_ACTIVE + 1]
                       : line->start_s[BW_INTERVAL_ACTIVE + 1] - shape->half_line_s;

  if (first || second)
    add_step (writer, datum_s + from_s, datum_s + to_s, BW_LEVEL_WHITE);
}

static void
add_picture (Writer *writer)
{
  int last = (int) ceil (writer->to_s / writer->shape->half_line_s);
  for (int half_line = first_line_start (writer); half_line < last; half_line += 2)
    add_line_of_picture (writer, half_line);
}

static int
compare_steps (gconstpointer a, gconstpointer b)
{
  double first_s = ((const BwLineStep *) a)->from_s, second_s = ((const BwLineStep *) b)->from_s;
  return (first_s > second_s) - (first_s < second_s);
}

/**
 * bw_field_shape_steps:
 * @from_s: start of the window, in seconds after 0V
 * @to_s: its end
 *
 * The picture is white; a line of it lasts as long as the raster's active line.
 *
 * Returns: (transfer full) (element-type BwLineStep): what differs from blanking, or from the rest
 * of a conductor of its own, in the order of time
 */
GArray *
bw_field_shape_steps (const BwFieldShape *shape, BwLane lane, double from_s, double to_s)
{
  g_return_val_if_fail (shape != NULL, NULL);
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (BwLineStep));
  Writer writer = { shape, steps, from_s, to_s };

  if (lane == BW_LANE_COMPOSITE || lane == BW_LANE_H)
    add_pulses (&writer, lane);
  if (lane == BW_LANE_COMPOSITE || lane == BW_LANE_PICTURE)
    add_picture (&writer);
  if (lane == BW_LANE_V)
    add_step (&writer, 0, bw_field_shape_time (shape, shape->start[BW_PART_EQUALISING_AFTER]),
              polar (shape->raster->v_polarity));
  g_array_sort (steps, compare_steps);
  return steps;
}

/* Burst */

/* The lines without burst are numbered by the standard of the colour system: NTSC counts from three
 * lines before field sync, PAL, on any raster, from field sync. */
static gboolean
line_has_burst (const BwFieldShape *shape, const BwBurst *burst, int half_line)
{
  BwRaster numbered = *shape->raster;
  numbered.numbered_before_sync = bw_system_facts (burst->system)->lines_before_sync;
  return bw_line_has_burst (burst->system, burst->colour_field,
                            bw_raster_line_at (&numbered, shape->field, half_line, NULL));
}

/**
 * bw_burst_gap:
 * @burst: of a system for which bw_system_knows_burst() is true
 * @from_half_line: (out): where the first line without burst starts, after 0V
 * @to_half_line: (out): where the last one ends
 *
 * Returns: whether the lines without burst lie inside @shape
 */
gboolean
bw_burst_gap (const BwFieldShape *shape, const BwBurst *burst, int *from_half_line,
              int *to_half_line)
{
  g_return_val_if_fail (shape != NULL && burst != NULL, FALSE);
  g_return_val_if_fail (from_half_line != NULL && to_half_line != NULL, FALSE);
  Writer whole = { shape, NULL, bw_field_shape_time (shape, shape->start[0]), 0 };
  int first = first_line_start (&whole), last = shape->start[BW_N_PARTS];
  int from = first;

  while (from < last && line_has_burst (shape, burst, from))
    from += 2;
  int to = from;
  while (to < last && !line_has_burst (shape, burst, to))
    to += 2;
  *from_half_line = from;
  *to_half_line = to;
  return from > first && to > from && to < last;
}

/**
 * bw_burst_steps:
 * @burst: of a system for which bw_system_knows_burst() is true
 * @from_s: start of the window, in seconds after 0V
 * @to_s: its end
 *
 * Returns: (transfer full) (element-type BwLineStep): where the bursts stand, in the order of time;
 * the level of each is its peak
 */
GArray *
bw_burst_steps (const BwFieldShape *shape, const BwBurst *burst, double from_s, double to_s)
{
  g_return_val_if_fail (shape != NULL && burst != NULL, NULL);
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (BwLineStep));
  Writer writer = { shape, steps, from_s, to_s };
  const BwSystemFacts *facts = bw_system_facts (burst->system);
  double start_s = facts->burst_from_s;
  double length_s = facts->burst_cycles / bw_ratio_to_double (facts->subcarrier_hz);
  int last = (int) ceil (to_s / shape->half_line_s);

  for (int half_line = first_line_start (&writer); half_line < last; half_line += 2)
    if (line_has_burst (shape, burst, half_line))
      {
        double at_s = bw_field_shape_time (shape, half_line) + start_s;
        add_step (&writer, at_s, at_s + length_s, BW_LEVEL_SYNC / 2);
      }
  return steps;
}
