/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sync-out.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"
#include "core/base/quantity.h"

/* Microseconds to the nanosecond. */
static char *
microseconds (double time_s)
{
  double thousandths = round (time_s * 1e9);
  g_autofree char *number = bw_words_fixed ((fabs (thousandths) > 0 ? thousandths : 0) / 1000, 3);
  return g_strconcat (number, " µs", NULL);
}

static void
add_line (BwTable *table, const BwSyncLine *line)
{
  g_autofree char *number = g_strdup_printf ("%d", line->line);
  g_autofree char *due = microseconds (line->due_s);
  g_autofree char *late = line->edge == BW_AFC_EDGE_MISSING ? g_strdup ("–")
                                                            : microseconds (line->late_s);
  g_autofree char *half = line->n_half > 0 ? g_strdup_printf ("%u", line->n_half) : g_strdup ("");
  g_autofree char *phase = isfinite (line->phase_s) ? microseconds (line->phase_s) : g_strdup ("–");
  bw_table_add_row (table, number, due, bw_kind_label (&bw_afc_edges, line->edge), late, half,
                    phase, NULL);
}

static void
append_lines (const BwSyncRun *run, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (6);
  for (guint column = 0; column < 6; column++)
    if (column != 2)
      bw_table_set_right (table, column);
  bw_table_add_row (table, _ ("Line"), _ ("Due after 0V"), _ ("Edge"), _ ("Late by"), _ ("Halves"),
                    _ ("AFC phase"), NULL);
  bw_table_add_rule (table);
  for (guint i = 0; i < run->lines->len; i++)
    add_line (table, &g_array_index (run->lines, BwSyncLine, i));
  bw_table_append_to (table, to, 0);
}

static void
append_head (const BwSyncMix *mix, GString *to)
{
  const BwSyncMixCase *what = &mix->what;
  g_autofree char *name = bw_sync_mix_name (what);
  g_autofree char *raster = bw_words_one_line (what->raster->name != NULL ? what->raster->name
                                                                          : "");

  g_string_append_printf (to, _ ("%s (%s), field %d: %s"), raster, what->raster->id,
                          what->field + 1, name);
  if (what->gate != BW_SYNC_GATE_STANDARD)
    g_string_append_printf (to, _ (", H %s, V %s"),
                            bw_kind_label (&bw_polarities, what->h_polarity),
                            bw_kind_label (&bw_polarities, what->v_polarity));
  g_string_append (to, "\n\n");
}

/**
 * bw_sync_append_text:
 * @run: of @mix and @afc
 *
 * Appends what there is to say, and the lines as a table.
 */
void
bw_sync_append_text (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run, GString *to)
{
  g_autoptr (GPtrArray) says = bw_sync_mix_says (mix, afc, run, bw_quantity_locale_mark ());

  append_head (mix, to);
  for (guint i = 0; i < says->len; i++)
    bw_words_append_wrapped (to, "", 0, says->pdata[i]);
  g_string_append_c (to, '\n');
  append_lines (run, to);
}
