/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-choice.h"

#include <glib/gi18n-lib.h>

#include "target.h"

/* Options that say more about a raster, beside the one that says where it comes from. */
typedef enum
{
  WITH_WHICH = 1 << 0,
  WITH_ACTIVE = 1 << 1,
  WITH_FIELD_RATE = 1 << 2,
  WITH_INTERLACED = 1 << 3,
  WITH_MARGINS = 1 << 4,
  WITH_OVERSCAN = 1 << 5,
  WITH_CLOCK = 1 << 6,
  WITH_SOURCE = 1 << 7,
  WITH_INPUT = 1 << 8
} With;

/* Which figures of the source's clock are given. */
#define CLOCKS(choice)                                                                             \
  ((choice)->lowest_clock != NULL || (choice)->highest_clock != NULL                               \
   || (choice)->clock_step != NULL || (choice)->pixel_multiple != 0)

static const struct
{
  const char *option;
  With with;
} companions[] = {
  { "--which", WITH_WHICH },           { "--active", WITH_ACTIVE },
  { "--field-rate", WITH_FIELD_RATE }, { "--interlaced", WITH_INTERLACED },
  { "--margins", WITH_MARGINS },
  { "--overscan", WITH_OVERSCAN },
  { "--lowest-clock, --highest-clock, --clock-step or --pixel-multiple", WITH_CLOCK },
  { "--source", WITH_SOURCE },
  { "--input", WITH_INPUT },
};

static const struct
{
  const char *option;
  gsize offset;
  With needs;
  With takes;
} origins[] = {
  { "--cvt", G_STRUCT_OFFSET (BwRasterChoice, cvt), 0, 0 },
  { "--gtf", G_STRUCT_OFFSET (BwRasterChoice, gtf), 0, 0 },
  { "--gtf-line-rate", G_STRUCT_OFFSET (BwRasterChoice, gtf_line_rate), WITH_ACTIVE,
    WITH_ACTIVE | WITH_INTERLACED | WITH_MARGINS },
  { "--gtf-pixel-clock", G_STRUCT_OFFSET (BwRasterChoice, gtf_pixel_clock), WITH_ACTIVE,
    WITH_ACTIVE | WITH_INTERLACED | WITH_MARGINS },
  { "--modeline", G_STRUCT_OFFSET (BwRasterChoice, modeline), 0, 0 },
  { "--edid", G_STRUCT_OFFSET (BwRasterChoice, edid), 0, WITH_WHICH },
  { "--for-monitor", G_STRUCT_OFFSET (BwRasterChoice, for_monitor), WITH_ACTIVE | WITH_FIELD_RATE,
    WITH_ACTIVE | WITH_FIELD_RATE | WITH_INTERLACED | WITH_OVERSCAN | WITH_CLOCK | WITH_SOURCE
        | WITH_INPUT },
};

/**
 * bw_raster_choice_entries:
 * @choice: (out): set to nothing chosen; must outlive the returned entries, and be cleared with
 *   bw_raster_choice_clear()
 *
 * Returns: (transfer full) (element-type GOptionEntry): the options that fill @choice; ends in an
 * empty one, and others may be added
 */
GArray *
bw_raster_choice_entries (BwRasterChoice *choice)
{
  *choice = (BwRasterChoice){ .which = BW_WHICH_FIRST };
  const GOptionEntry entries[] = {
    { "cvt", 0, 0, G_OPTION_ARG_FILENAME, &choice->cvt, N_ ("Compute the raster by VESA CVT"),
      N_ ("WxH@RATE[,reduced][,interlaced][,margins]") },
    { "gtf", 0, 0, G_OPTION_ARG_FILENAME, &choice->gtf, N_ ("Compute the raster by VESA GTF"),
      N_ ("WxH@RATE[,interlaced][,margins]") },
    { "gtf-line-rate", 0, 0, G_OPTION_ARG_FILENAME, &choice->gtf_line_rate,
      N_ ("By VESA GTF from a line rate; --active is needed"), N_ ("FREQUENCY") },
    { "gtf-pixel-clock", 0, 0, G_OPTION_ARG_FILENAME, &choice->gtf_pixel_clock,
      N_ ("By VESA GTF from a pixel clock; --active is needed"), N_ ("FREQUENCY") },
    { "modeline", 0, 0, G_OPTION_ARG_FILENAME, &choice->modeline,
      N_ ("Read the raster from a mode line"), N_ ("TEXT") },
    { "edid", 0, 0, G_OPTION_ARG_FILENAME, &choice->edid,
      N_ ("Read the raster from a detailed timing of an EDID"), N_ ("FILE") },
    { "which", 0, 0, G_OPTION_ARG_INT, &choice->which,
      N_ ("With --edid: which detailed timing, from 1"), N_ ("N") },
    { "for-monitor", 0, 0, G_OPTION_ARG_FILENAME, &choice->for_monitor,
      N_ ("Make a raster for the monitor of a bench sheet; --active and --field-rate are needed"),
      N_ ("SHEET") },
    { "active", 0, 0, G_OPTION_ARG_FILENAME, &choice->active, N_ ("Pixels and lines of picture"),
      N_ ("WxH") },
    { "field-rate", 0, 0, G_OPTION_ARG_FILENAME, &choice->field_rate,
      N_ ("With --for-monitor: fields a second"), N_ ("RATE") },
    { "interlaced", 0, 0, G_OPTION_ARG_NONE, &choice->interlaced,
      N_ ("With --gtf-line-rate, --gtf-pixel-clock and --for-monitor: two fields to the frame"),
      NULL },
    { "margins", 0, 0, G_OPTION_ARG_NONE, &choice->margins,
      N_ ("With --gtf-line-rate and --gtf-pixel-clock: borders of 1.8 %"), NULL },
    { "overscan", 0, 0, G_OPTION_ARG_NONE, &choice->overscan,
      N_ ("With --for-monitor: the picture fills the whole scan, also behind the edge of the glass"),
      NULL },
    { "lowest-clock", 0, 0, G_OPTION_ARG_FILENAME, &choice->lowest_clock,
      N_ ("With --for-monitor: the lowest pixel clock that the source gives; all figures across are "
          "multiplied to reach it"),
      N_ ("FREQUENCY") },
    { "highest-clock", 0, 0, G_OPTION_ARG_FILENAME, &choice->highest_clock,
      N_ ("With --for-monitor: the highest pixel clock that the source gives"), N_ ("FREQUENCY") },
    { "clock-step", 0, 0, G_OPTION_ARG_FILENAME, &choice->clock_step,
      N_ ("With --for-monitor: the pixel clock is a multiple of this"), N_ ("FREQUENCY") },
    { "pixel-multiple", 0, 0, G_OPTION_ARG_INT, &choice->pixel_multiple,
      N_ ("With --for-monitor: all figures across are multiples of so many pixels"), N_ ("N") },
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &choice->source,
      N_ ("With --for-monitor: the source of the sheet whose pixel clocks are kept to"),
      N_ ("SOURCE") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &choice->input,
      N_ ("With --for-monitor: the input whose line rates and clamp are kept to"), N_ ("INPUT") },
  };
  GArray *array = g_array_new (TRUE, TRUE, sizeof (GOptionEntry));
  return g_array_append_vals (array, entries, G_N_ELEMENTS (entries));
}

/**
 * bw_raster_choice_clear:
 *
 * Frees what the options left.
 */
void
bw_raster_choice_clear (BwRasterChoice *choice)
{
  for (gsize i = 0; i < G_N_ELEMENTS (origins); i++)
    g_clear_pointer (&G_STRUCT_MEMBER (char *, choice, origins[i].offset), g_free);
  g_clear_pointer (&choice->active, g_free);
  g_clear_pointer (&choice->field_rate, g_free);
  g_clear_pointer (&choice->lowest_clock, g_free);
  g_clear_pointer (&choice->highest_clock, g_free);
  g_clear_pointer (&choice->clock_step, g_free);
  g_clear_pointer (&choice->source, g_free);
  g_clear_pointer (&choice->input, g_free);
}

static With
given_companions (const BwRasterChoice *choice)
{
  return (choice->which != BW_WHICH_FIRST ? WITH_WHICH : 0)
         | (choice->active != NULL ? WITH_ACTIVE : 0)
         | (choice->field_rate != NULL ? WITH_FIELD_RATE : 0)
         | (choice->interlaced ? WITH_INTERLACED : 0) | (choice->margins ? WITH_MARGINS : 0)
         | (choice->overscan ? WITH_OVERSCAN : 0) | (CLOCKS (choice) ? WITH_CLOCK : 0)
         | (choice->source != NULL ? WITH_SOURCE : 0) | (choice->input != NULL ? WITH_INPUT : 0);
}

/* The first option in @set. */
static const char *
companion_name (With set)
{
  for (gsize i = 0; i < G_N_ELEMENTS (companions); i++)
    if (set & companions[i].with)
      return companions[i].option;
  return "";
}

/**
 * bw_raster_choice_is_empty:
 * @name: (nullable): the raster that was named as an argument
 *
 * Returns: whether nothing at all was said of a raster
 */
gboolean
bw_raster_choice_is_empty (const BwRasterChoice *choice, const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (origins); i++)
    if (G_STRUCT_MEMBER (char *, choice, origins[i].offset) != NULL)
      return FALSE;
  return name == NULL && given_companions (choice) == 0;
}

/**
 * bw_raster_choice_fault:
 * @name: (nullable): the raster that was named as an argument
 *
 * Returns: (transfer full) (nullable): what is wrong with the command line; %NULL if just one
 * raster is chosen, with all that this needs
 */
char *
bw_raster_choice_fault (const BwRasterChoice *choice, const char *name)
{
  const char *origin = name != NULL ? "RASTER" : NULL;
  With needs = 0, takes = 0, given = given_companions (choice);

  for (gsize i = 0; i < G_N_ELEMENTS (origins); i++)
    {
      if (G_STRUCT_MEMBER (char *, choice, origins[i].offset) == NULL)
        continue;
      if (origin != NULL)
        return g_strdup_printf (_ ("%1$s and %2$s: one raster at a time"), origin,
                                origins[i].option);
      origin = origins[i].option;
      needs = origins[i].needs;
      takes = origins[i].takes;
    }
  if (origin == NULL)
    return g_strdup (_ ("RASTER is missing, and no option gives one"));
  if (given & ~takes)
    return g_strdup_printf (_ ("%1$s does not go with %2$s"), companion_name (given & ~takes),
                            origin);
  if (needs & ~given)
    /* Translators: an option needs another. */
    return g_strdup_printf (_ ("%1$s needs %2$s"), origin, companion_name (needs & ~given));
  return NULL;
}

/**
 * bw_raster_choice_target_fault:
 * @target: where a command is to write, as it came
 *
 * Returns: (transfer full) (nullable): what is wrong if @target is what the raster is made from
 */
char *
bw_raster_choice_target_fault (const BwRasterChoice *choice, const char *target)
{
  g_return_val_if_fail (choice != NULL && target != NULL, NULL);
  if (bw_target_is (target, choice->edid) || bw_target_is (target, choice->for_monitor))
    return g_strdup (_ ("the drawing would replace what it is made from"));
  return NULL;
}
