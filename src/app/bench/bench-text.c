/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench-text.h"

#include <glib/gi18n-lib.h>

static void
add (GString *text, char *words)
{
  if (words != NULL && *words != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", words);
  g_free (words);
}

/* Adds @name, if there is one, and @value; nothing if the value is not known. */
static void
add_quantity (GString *text, const char *name, double value, BwDimension dimension)
{
  if (value > 0)
    {
      g_autofree char *words = bw_quantity_format (value, dimension, 4, bw_quantity_locale_mark ());
      add (text, g_strconcat (name, *name != '\0' ? " " : "", words, NULL));
    }
}

/**
 * bw_bands_words:
 *
 * Returns: (transfer full): the bands for reading: "15.5–16 kHz, 31–33.8 kHz"
 */
char *
bw_bands_words (const BwBands *bands, BwDimension dimension)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    add (text, bw_quantity_format_range (bands->at[i], dimension, 4, bw_quantity_locale_mark ()));
  return g_string_free (text, FALSE);
}

/**
 * bw_monitor_mains_words:
 *
 * Returns: (transfer full): the mains rating: "100–120 V, 50–60 Hz, 1.4 A"; empty if not known
 */
char *
bw_monitor_mains_words (const BwMonitor *monitor)
{
  GString *text = g_string_new (NULL);
  add (text, bw_bands_words (&monitor->mains_v, BW_DIMENSION_VOLTAGE));
  add (text, bw_bands_words (&monitor->mains_hz, BW_DIMENSION_FREQUENCY));
  add_quantity (text, "", monitor->mains_a, BW_DIMENSION_CURRENT);
  return g_string_free (text, FALSE);
}

/**
 * bw_monitor_tube_words:
 *
 * Returns: (transfer full): the tube, as far as it is known: "19 in, 4:3, aperture grille, pitch
 *   0.3 mm"
 */
char *
bw_monitor_tube_words (const BwMonitor *monitor)
{
  GString *text = g_string_new (NULL);
  char mark = bw_quantity_locale_mark ();
  add (text, bw_field_to_entry (bw_field_find (&bw_monitor_fields, "diagonal"), monitor, mark));
  add (text, bw_field_to_entry (bw_field_find (&bw_monitor_fields, "aspect"), monitor, mark));
  if (monitor->mask < BW_N_MASKS)
    add (text, g_strdup (bw_kind_label (&bw_masks, monitor->mask)));
  add_quantity (text, _ ("pitch"), monitor->pitch_m, BW_DIMENSION_LENGTH);
  return g_string_free (text, FALSE);
}

/**
 * bw_monitor_words:
 *
 * Returns: (transfer full): the monitor in a line: its line rates and how many inputs it has
 */
char *
bw_monitor_words (const BwMonitor *monitor)
{
  GString *text = g_string_new (NULL);
  guint n = monitor->inputs->len;
  add (text, bw_monitor_tube_words (monitor));
  add (text, bw_bands_words (&monitor->line_rates_hz, BW_DIMENSION_FREQUENCY));
  add (text, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u input", "%u inputs", n), n));
  return g_string_free (text, FALSE);
}

/**
 * bw_input_words:
 *
 * Returns: (transfer full): the input in a line: the signal kinds that it takes
 */
char *
bw_input_words (const BwInput *input)
{
  return input->signals != 0 ? bw_kind_set_labels (&bw_signals, input->signals)
                             : g_strdup (_ ("signal kinds not known"));
}
