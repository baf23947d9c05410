/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static char *
mixture_text (const BwSyncMixCase *what)
{
  if (what->gate == BW_SYNC_GATE_STANDARD)
    return g_strdup (_ ("composite sync of the raster"));
  /* Translators: two syncs with their polarities, and the gate between them. */
  return g_strdup_printf (_ ("H (%1$s) %2$s V (%3$s)"),
                          bw_kind_label (&bw_polarities, what->h_polarity),
                          bw_kind_label (&bw_sync_gates, what->gate),
                          bw_kind_label (&bw_polarities, what->v_polarity));
}

/**
 * bw_sync_text_caption:
 *
 * Returns: (transfer full): what is drawn and by which standard
 */
char *
bw_sync_text_caption (const BwSyncView *what)
{
  const BwRaster *raster = what->what->raster;
  g_autofree char *mixture = mixture_text (what->what);
  g_autofree char *shows = g_strdup_printf (_ ("%s over the vertical interval"), mixture);
  if (raster->scan != BW_SCAN_INTERLACED)
    return bw_text_caption (raster->name, shows, raster->source);
  /* Translators: what is drawn, and of which field. */
  g_autofree char *field = g_strdup_printf (_ ("%1$s, field %2$d"), bw_or_empty (raster->name),
                                            what->what->field + 1);
  return bw_text_caption (field, shows, raster->source);
}

/**
 * bw_sync_text_note:
 *
 * Returns: (transfer full): what is wrong with the mixture, or what the AFC makes of it
 */
char *
bw_sync_text_note (const BwSyncLayout *layout)
{
  const BwSyncView *what = layout->what;
  g_autofree char *form = bw_sync_mix_say (layout->mix, what->afc, layout->run, BW_SYNC_TOPIC_FORM,
                                           what->mark);
  g_autofree char *loop = bw_sync_mix_say (layout->mix, what->afc, layout->run, BW_SYNC_TOPIC_LOOP,
                                           what->mark);
  return form != NULL ? g_strconcat (form, " ", loop, NULL) : g_steal_pointer (&loop);
}

/**
 * bw_sync_text_row:
 *
 * Returns: (transfer full): the name of @row
 */
char *
bw_sync_text_row (const BwSyncMixCase *what, BwSyncRow row)
{
  switch (row)
    {
    case BW_SYNC_ROW_H:
      return g_strdup ("H");
    case BW_SYNC_ROW_V:
      return g_strdup ("V");
    case BW_SYNC_ROW_RESULT:
      return what->gate == BW_SYNC_GATE_STANDARD ? g_strdup (_ ("separated"))
                                                 : bw_sync_mix_name (what);
    case BW_SYNC_ROW_STANDARD:
      return g_strdup (_ ("standard"));
    default:
      return g_strdup (_ ("AFC phase"));
    }
}

/**
 * bw_sync_text_polarity:
 *
 * Returns: (transfer none): the word for the tips of @row
 */
const char *
bw_sync_text_polarity (const BwSyncLayout *layout, BwSyncRow row)
{
  const BwSyncTrace *trace = layout->lane[row].trace;
  guint polarity = trace->rest == 1 ? BW_POLARITY_NEGATIVE : BW_POLARITY_POSITIVE;
  return bw_kind_label (&bw_polarities, polarity);
}

/**
 * bw_sync_text_key:
 * @mark: a BwAfcEdge or %BW_SYNC_MARK_HALF
 *
 * Returns: (transfer full): what the mark stands for, and how many there are
 */
char *
bw_sync_text_key (const BwSyncLayout *layout, guint mark)
{
  static const char *const forms[BW_SYNC_MARKS_MAX] = {
    [BW_AFC_EDGE_RIGHT] = N_ ("edge at its place: %u"),
    [BW_AFC_EDGE_EARLY] = N_ ("early: %u"),
    [BW_AFC_EDGE_LATE] = N_ ("late: %u"),
    [BW_AFC_EDGE_MISSING] = N_ ("missing: %u"),
    [BW_SYNC_MARK_HALF] = N_ ("at a half line: %u"),
  };
  guint n = mark == BW_SYNC_MARK_HALF ? layout->run->n_half : layout->run->n[mark];
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *number = g_strdup_printf ("%u", n);
  g_string_append (text, _ (forms[mark]));
  g_string_replace (text, "%u", number, 1);
  return g_strdup (text->str);
}

/**
 * bw_sync_text_picture:
 *
 * Returns: (transfer full): the phase at the first line of picture
 */
char *
bw_sync_text_picture (const BwSyncLayout *layout)
{
  const BwSyncRun *run = layout->run;
  if (!run->locks)
    return g_strdup_printf (_ ("picture from line %d"), run->picture_line);
  if (run->settle_lines == 0)
    return g_strdup_printf (_ ("picture from line %d: straight"), run->picture_line);
  g_autofree char *off = bw_text_us (fabs (run->picture_s), layout->what->mark);
  g_autofree char *share = bw_quantity_format (fabs (run->picture_share), BW_DIMENSION_FRACTION, 2,
                                               layout->what->mark);
  return g_strdup_printf (run->picture_s > 0
                              ? _ ("picture from line %1$d: %2$s late, %3$s to the left")
                              : _ ("picture from line %1$d: %2$s early, %3$s to the right"),
                          run->picture_line, off, share);
}

/* The caption and all that bw_sync_mix_says() has to say. */
char *
bw_sync_describe (const BwSyncLayout *layout)
{
  const BwSyncView *what = layout->what;
  g_autoptr (GPtrArray) says = bw_sync_mix_says (layout->mix, what->afc, layout->run, what->mark);
  g_autofree char *caption = bw_sync_text_caption (what);
  GString *text = g_string_new (caption);

  g_string_append_c (text, '.');
  for (guint i = 0; i < says->len; i++)
    g_string_append_printf (text, " %s", (const char *) says->pdata[i]);
  return g_string_free (text, FALSE);
}
