/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "timing-view.h"

#include <glib/gi18n-lib.h>

#include "cli/base/words.h"
#include "raster-json.h"
#include "raster-text.h"

static void
append_sentences (GString *to, const char *title, GPtrArray *sentences)
{
  if (sentences == NULL || sentences->len == 0)
    return;
  g_string_append_printf (to, "\n%s\n", title);
  for (guint i = 0; i < sentences->len; i++)
    bw_words_append_wrapped (to, "  - ", 4, sentences->pdata[i]);
}

static void
append_timing (GString *to, const BwChosenRaster *chosen)
{
  g_autofree char *says = NULL;
  if (chosen->n_timings == 1)
    says = g_strdup (_ ("The only detailed timing."));
  else
    says = g_strdup_printf (_ ("Detailed timing %u of %u; --which N shows another."),
                            chosen->timing, chosen->n_timings);
  g_string_append_printf (to, "\n%s\n", _ ("EDID"));
  bw_words_append_wrapped (to, "  ", 2, says);
}

/**
 * bw_timing_append_text:
 *
 * Appends the listing of the raster, then why it is as it is, or where in an EDID it stands.
 */
void
bw_timing_append_text (const BwChosenRaster *chosen, GString *to)
{
  bw_raster_append_text (chosen->raster, to);
  append_sentences (to, _ ("Why"), chosen->why);
  if (chosen->timing > 0)
    append_timing (to, chosen);
  append_sentences (to, _ ("Not read"), chosen->notes);
}

static void
sentences_json (BwJson *json, const char *key, GPtrArray *sentences)
{
  if (sentences == NULL)
    return;
  bw_json_begin_array (json, key);
  for (guint i = 0; i < sentences->len; i++)
    bw_json_string (json, NULL, sentences->pdata[i]);
  bw_json_end_array (json);
}

/**
 * bw_timing_to_json:
 * @modeline: (nullable): written too, if it was asked for
 *
 * Writes the members of an object that is open in @json: those of bw_raster_to_json(), then what
 * only some rasters have: "why"; "detailed_timing", "detailed_timings" and "notes"; "modeline".
 */
void
bw_timing_to_json (const BwChosenRaster *chosen, const char *modeline, BwJson *json)
{
  bw_raster_to_json (chosen->raster, json);
  sentences_json (json, "why", chosen->why);
  if (chosen->timing > 0)
    {
      bw_json_number (json, "detailed_timing", chosen->timing);
      bw_json_number (json, "detailed_timings", chosen->n_timings);
    }
  sentences_json (json, "notes", chosen->notes);
  if (modeline != NULL)
    bw_json_string (json, "modeline", modeline);
}
