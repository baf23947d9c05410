/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-row.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/copy-row.h"
#include "app/widgets/figure-table.h"
#include "app/widgets/scope-text.h"

/* One likely cause: its name, how well it fits, what it is and what to do, and what it predicts of
 * each reading. */

#define DIGITS 4

/**
 * bw_scope_reading_text:
 *
 * Returns: (transfer full): what a scope reads, in words
 */
char *
bw_scope_reading_text (BwScopeReading reading, double value)
{
  if (reading == BW_SCOPE_POLARITY)
    return g_strdup (value < 0 ? _ ("downwards") : _ ("upwards"));
  if (bw_scope_reading_dimension (reading) == BW_DIMENSION_VOLTAGE)
    return bw_scope_volts (value);
  return bw_quantity_format (value, bw_scope_reading_dimension (reading), DIGITS,
                             bw_quantity_locale_mark ());
}

/**
 * bw_scope_expected_text:
 *
 * Returns: (transfer full): what it should read, or from where to where
 */
char *
bw_scope_expected_text (BwScopeReading reading, const BwRange *range)
{
  g_autofree char *low = bw_scope_reading_text (reading, range->low);
  g_autofree char *high = bw_scope_reading_text (reading, range->high);
  if (!(range->high > range->low) || g_str_equal (low, high))
    return g_steal_pointer (&high);
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

/**
 * bw_cause_name:
 *
 * Returns: (transfer full): its faults in a few words
 */
char *
bw_cause_name (const BwCause *cause)
{
  GString *text;

  if (!cause->known)
    return g_strdup (_ ("None of the faults known here"));
  if (cause->n_faults == 0)
    return g_strdup (bw_kind_label (&bw_faults, BW_FAULT_NONE));
  text = g_string_new (bw_kind_label (&bw_faults, cause->faults[0].kind));
  for (guint i = 1; i < cause->n_faults; i++)
    g_string_append_printf (text, _ ("; and %s"), bw_kind_label (&bw_faults, cause->faults[i].kind));
  return g_string_free (text, FALSE);
}

/* By how much the reading lies beyond what is predicted. */
static double
off_by (double read, const BwRange *predicted)
{
  return read > predicted->high  ? read - predicted->high
         : read < predicted->low ? read - predicted->low
                                 : 0;
}

static char *
off_text (BwScopeReading reading, double off)
{
  g_autofree char *size = bw_scope_reading_text (reading, fabs (off));
  if (reading == BW_SCOPE_POLARITY)
    return g_strdup (fabs (off) > 0 ? _ ("the other way") : _ ("agrees"));
  if (fabs (off) < 1e-9)
    return g_strdup (_ ("agrees"));
  return g_strdup_printf ("%s%s", off < 0 ? "−" : "+", size);
}

static void
append_prediction (GString *text, const BwScopeReadings *readings, const BwCause *cause,
                   BwScopeReading reading)
{
  const char *name = bw_kind_label (&bw_scope_readings, reading);
  g_autofree char *read = bw_scope_reading_text (reading, readings->at[reading]);

  g_string_append (text, text->len > 0 ? "; " : "");
  if (!(cause->predicts & BW_BIT (reading)))
    {
      g_string_append_printf (text, _ ("%s: read %s, not decided"), name, read);
      return;
    }
  const BwRange *predicted = &cause->predicted[reading];
  g_autofree char *right = bw_scope_expected_text (reading, predicted);
  g_autofree char *off = off_text (reading, off_by (readings->at[reading], predicted));
  if (cause->known && cause->n_faults > 0)
    g_string_append_printf (text, _ ("%s: read %s, this gives %s (%s)"), name, read, right, off);
  else
    g_string_append_printf (text, _ ("%s: read %s, should be %s (%s)"), name, read, right, off);
}

static char *
predictions_text (const BwScopeReadings *readings, const BwCause *cause)
{
  GString *text = g_string_new (NULL);
  for (BwScopeReading reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
    if (readings->given & BW_BIT (reading))
      append_prediction (text, readings, cause, reading);
  return g_string_free (text, FALSE);
}

static char *
fit_text (const BwCause *cause)
{
  const char *worst = bw_kind_label (&bw_scope_readings, cause->worst);
  g_autofree char *deviation = bw_scope_number (cause->deviation, 1);
  GString *text = g_string_new (NULL);

  if (cause->alike)
    g_string_append (text, _ ("These readings do not tell it from the first. "));
  g_string_append_printf (text, _ ("Agrees least: %s, by %s of that reading's uncertainty."), worst,
                          deviation);
  return g_string_free (text, FALSE);
}

static GtkWidget *
head_new (const char *name, const char *fits)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *first = bw_figure_label_new (name, "bw-name", TRUE);
  GtkWidget *second = bw_figure_label_new (fits, "bw-figure", FALSE);

  gtk_widget_set_hexpand (first, TRUE);
  gtk_widget_set_valign (second, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), first);
  gtk_box_append (GTK_BOX (box), second);
  return box;
}

/**
 * bw_cause_row_new:
 * @readings: that @cause was found for
 * @first: it is the first in the list
 *
 * Returns: (transfer floating): a line of the list of causes
 */
GtkWidget *
bw_cause_row_new (const BwCauseCase *c, const BwScopeReadings *readings, const BwCause *cause,
                  gboolean first)
{
  GtkWidget *row = bw_copy_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *name = bw_cause_name (cause);
  const char *fits = bw_cause_fit_words (cause, first);
  g_autofree char *says = bw_cause_says (c, readings, cause, bw_quantity_locale_mark ());
  g_autofree char *predictions = predictions_text (readings, cause);
  g_autofree char *fit = fit_text (cause);
  g_autofree char *all = g_strjoin ("\t", name, fits, says, predictions, fit, NULL);

  gtk_box_append (GTK_BOX (box), head_new (name, fits));
  gtk_box_append (GTK_BOX (box), bw_figure_label_new (says, NULL, TRUE));
  gtk_box_append (GTK_BOX (box), bw_figure_label_new (predictions, "bw-figure", TRUE));
  gtk_box_append (GTK_BOX (box), bw_figure_label_new (fit, "bw-light", TRUE));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  bw_copy_row_set_text (BW_COPY_ROW (row), all);
  return row;
}
