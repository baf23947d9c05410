/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "candidate-row.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/copy-row.h"
#include "app/widgets/figure-table.h"

/* One raster that the readings may be: its name, how sure that is, how far each reading is off,
 * and what to read next. */

static char *
number_text (double value, int decimals)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE], format[8];
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, value);
  for (char *p = number; *p != '\0'; p++)
    *p = *p == '.' ? bw_quantity_locale_mark () : *p;
  return g_strdup (number);
}

static void
append_error (GString *to, const char *what, double error_ppm)
{
  g_autofree char *number = number_text (fabs (error_ppm), 1);
  g_string_append_printf (to, _ ("%s%s %s%s\u00a0ppm"), to->len > 0 ? ", " : "", what,
                          error_ppm < 0 ? "−" : "+", number);
}

/* Readings less the raster's own figures. */
static char *
errors_text (const BwCandidate *candidate, const BwReadings *readings)
{
  GString *text = g_string_new (NULL);
  g_autofree char *lines = number_text (candidate->lines_per_field, 1);

  if (readings->line_rate_hz > 0)
    append_error (text, _ ("line rate"), candidate->line_rate_error_ppm);
  if (readings->field_rate_hz > 0)
    append_error (text, _ ("field rate"), candidate->field_rate_error_ppm);
  g_string_append_printf (text, _ ("%s%s\u00a0lines per field"), text->len > 0 ? ", " : "", lines);
  return g_string_free (text, FALSE);
}

static char *
sure_text (const BwCandidate *candidate)
{
  g_autofree char *number = number_text (candidate->certainty * 100, 1);
  if (candidate->same_as != NULL)
    return g_strdup ("");
  return g_strdup_printf (_ ("%s\u00a0%% sure"), number);
}

static char *
next_text (const BwCandidate *candidate)
{
  if (candidate->same_as != NULL)
    return g_strdup_printf (_ ("Same on the wire as %s"), candidate->same_as->name);
  if (candidate->decider != NULL)
    return g_strdup_printf (_ ("To tell it from its nearest rival: %s"), candidate->decider);
  return g_strdup ("");
}

static GtkWidget *
label_new (const char *text, const char *css_class, gboolean wrap)
{
  GtkWidget *label = bw_figure_label_new (text, css_class, wrap);
  gtk_widget_set_visible (label, *text != '\0');
  return label;
}

static GtkWidget *
pair_new (GtkWidget *first, GtkWidget *second)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_set_hexpand (first, TRUE);
  gtk_widget_set_valign (second, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), first);
  gtk_box_append (GTK_BOX (box), second);
  return box;
}

/**
 * bw_candidate_row_new:
 * @readings: what was read
 *
 * Returns: (transfer floating): a line of the list of candidates, which can be selected
 */
GtkWidget *
bw_candidate_row_new (const BwCandidate *candidate, const BwReadings *readings)
{
  GtkWidget *row = bw_copy_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *sure = sure_text (candidate);
  g_autofree char *errors = errors_text (candidate, readings);
  g_autofree char *next = next_text (candidate);
  const BwRaster *raster = candidate->raster;
  g_autofree char *all = g_strjoin ("\t", raster->name, raster->id, sure, errors, next, NULL);

  gtk_box_append (GTK_BOX (box), pair_new (label_new (raster->name, "bw-name", TRUE),
                                           label_new (sure, "bw-figure", FALSE)));
  gtk_box_append (GTK_BOX (box), pair_new (label_new (errors, "bw-figure", TRUE),
                                           label_new (raster->id, "bw-light", FALSE)));
  gtk_box_append (GTK_BOX (box), label_new (next, "bw-light", TRUE));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (row), TRUE);
  bw_copy_row_set_text (BW_COPY_ROW (row), all);
  return row;
}
