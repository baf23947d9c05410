/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading-row.h"

#include <math.h>
#include <string.h>

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/form.h"
#include "app/widgets/result-view.h"
#include "app/widgets/severity-mark.h"

/**
 * BwReadingRow:
 *
 * One reading: what was read, what a standard allows, and whether the reading is within that.
 */
struct _BwReadingRow
{
  GtkBox parent_instance;

  BwReadingKind kind;
  BwField field;
  const BwStandardLimits *limits; /* borrowed; nullable */
  gboolean read;
  BwMeasured measured;
  double accuracy; /* of the instrument; zero: not known */

  BwEditorRow *editor; /* borrowed; a child */
  GtkWidget *result;
  BwSeverityMark *mark;
  GtkLabel *word;
  GtkLabel *says;
};

G_DEFINE_FINAL_TYPE (BwReadingRow, bw_reading_row, GTK_TYPE_BOX)

enum
{
  JUDGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define DIGITS 8

static char *
value_text (BwReadingRow *self, double value, int digits)
{
  return bw_quantity_format (value, bw_reading_dimension (self->kind), digits,
                             bw_quantity_locale_mark ());
}

/**
 * bw_reading_row_is_judged:
 * @judgement: (out): of the reading, if there is one
 *
 * Returns: whether there is a reading and the standard lays down what it should be
 */
gboolean
bw_reading_row_is_judged (BwReadingRow *self, BwJudgement *judgement)
{
  if (!self->read || self->limits == NULL)
    return FALSE;
  bw_reading_judge (self->limits, self->kind, self->measured.value,
                    bw_measured_uncertainty (&self->measured, self->accuracy), judgement);
  return judgement->outcome != BW_OUTCOME_NOT_LAID_DOWN;
}

/* How far the reading is from the limit that decides, and from the nominal value. */
static char *
says_text (const BwNode *row)
{
  g_autofree char *limit = bw_node_cell_text (row, BW_READINGS_COLUMN_LIMIT, FALSE);
  g_autofree char *deviation = bw_node_words (row, "deviation");
  return g_strdup_printf (_ ("%1$s; %2$s from nominal"), limit, deviation);
}

static void
update (BwReadingRow *self)
{
  BwJudgement judgement;
  gboolean judged = bw_reading_row_is_judged (self, &judgement);
  GtkAccessible *entry = GTK_ACCESSIBLE (bw_editor_row_get_control (self->editor));

  gtk_widget_set_visible (self->result, judged);
  if (!judged)
    {
      gtk_accessible_reset_property (entry, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
      return;
    }
  g_autoptr (BwResult) result = bw_result_new (bw_quantity_locale_mark ());
  BwReadingsTaken taken = { 0 };
  bw_reading_row_take (self, &taken);
  bw_readings_say (bw_result_root (result), self->limits, &taken);
  const BwNode *row = bw_node_find (bw_result_root (result), "readings")->children->pdata[0];
  g_autofree char *says = says_text (row);
  const char *word = bw_kind_label (&bw_outcomes, judgement.outcome);
  g_autofree char *whole = g_strdup_printf ("%s: %s", word, says);
  BwSeverity severity = bw_outcome_severity (judgement.outcome);

  bw_severity_mark_set (self->mark, severity);
  bw_severity_style (self->result, severity);
  gtk_label_set_label (self->word, word);
  bw_figure_label_set (self->says, says);
  gtk_accessible_update_property (entry, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, whole, -1);
}

static gboolean
take (BwReadingRow *self, const char *text, GError **error)
{
  BwMeasured measured = { 0 };
  gboolean given = text[strspn (text, " \t")] != '\0';

  if (given
      && !bw_reading_read (self->limits, self->kind, text, bw_quantity_locale_mark (), &measured,
                           error))
    return FALSE;
  if (measured.value < 0)
    {
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE,
                   _ ("“%s” is negative; zero or more is allowed"), text);
      return FALSE;
    }
  self->read = given;
  self->measured = measured;
  return TRUE;
}

static void
on_edited (BwReadingRow *self)
{
  g_autofree char *text = bw_editor_row_dup_text (self->editor);
  g_autoptr (GError) error = NULL;

  if (!take (self, text, &error))
    {
      bw_editor_row_set_error (self->editor, error->message);
      return;
    }
  bw_editor_row_show_text (self->editor, text);
  update (self);
  g_signal_emit (self, signals[JUDGED], 0);
}

static void
bw_reading_row_class_init (BwReadingRowClass *klass)
{
  /* BwReadingRow::judged: the reading has changed. */
  signals[JUDGED] = g_signal_new ("judged", BW_TYPE_READING_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
words_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
result_new (BwReadingRow *self)
{
  GtkWidget *result = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *mark = bw_severity_mark_new ();
  GtkWidget *word = words_new ("bw-severity-word");
  GtkWidget *says = words_new ("bw-figure");

  self->mark = BW_SEVERITY_MARK (mark);
  self->word = GTK_LABEL (word);
  self->says = GTK_LABEL (says);
  gtk_label_set_selectable (self->says, TRUE);
  gtk_label_set_wrap (self->says, TRUE);
  gtk_label_set_wrap_mode (self->says, PANGO_WRAP_WORD_CHAR);
  gtk_box_append (GTK_BOX (head), mark);
  gtk_box_append (GTK_BOX (head), word);
  gtk_box_append (GTK_BOX (result), head);
  gtk_box_append (GTK_BOX (result), says);
  gtk_widget_set_visible (result, FALSE);
  return result;
}

static void
bw_reading_row_init (BwReadingRow *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 4);
}

/**
 * bw_reading_row_new:
 *
 * Returns: (transfer floating): a row for one reading, not held against anything yet
 */
BwReadingRow *
bw_reading_row_new (BwReadingKind kind)
{
  BwReadingRow *self = g_object_new (BW_TYPE_READING_ROW, NULL);

  self->kind = kind;
  self->field = (BwField){ .key = bw_readings.at[kind].id,
                           .label = bw_readings.at[kind].label,
                           .type = BW_FIELD_TEXT };
  self->editor = bw_form_row_new (&self->field);
  self->result = result_new (self);
  g_signal_connect_object (self->editor, "edited", G_CALLBACK (on_edited), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->editor));
  gtk_box_append (GTK_BOX (self), self->result);
  bw_editor_row_show_text (self->editor, "");
  return self;
}

static char *
allowed_text (BwReadingRow *self)
{
  const BwBands *bands = &self->limits->at[self->kind];
  g_autofree char *nominal = value_text (self, bands->at[0].low, DIGITS);
  g_autofree char *allowed = bw_quantity_format_range (bands->at[1],
                                                       bw_reading_dimension (self->kind), DIGITS,
                                                       bw_quantity_locale_mark ());
  return g_strdup_printf (_ ("nominal %1$s; allowed %2$s"), nominal, allowed);
}

/**
 * bw_reading_row_hold_against:
 * @limits: (nullable): must outlive the row
 *
 * Holds the reading against what @limits allow. The row hides if they lay down nothing.
 */
void
bw_reading_row_hold_against (BwReadingRow *self, const BwStandardLimits *limits)
{
  gboolean laid_down = limits != NULL && limits->at[self->kind].n >= 2;

  self->limits = limits;
  gtk_widget_set_visible (GTK_WIDGET (self), laid_down);
  if (laid_down)
    {
      g_autofree char *allowed = allowed_text (self);
      bw_editor_row_set_note (self->editor, allowed, NULL);
    }
  update (self);
}

/**
 * bw_reading_row_set_accuracy:
 * @accuracy: of the instrument, as a share of what it reads; zero: not known
 */
void
bw_reading_row_set_accuracy (BwReadingRow *self, double accuracy)
{
  if (fabs (self->accuracy - accuracy) > 0)
    {
      self->accuracy = accuracy;
      update (self);
    }
}

/**
 * bw_reading_row_clear:
 *
 * Forgets the reading.
 */
void
bw_reading_row_clear (BwReadingRow *self)
{
  self->read = FALSE;
  bw_editor_row_show_text (self->editor, "");
  update (self);
}

/**
 * bw_reading_row_take:
 * @taken: (inout): gets the reading, if there is one that can be judged
 */
void
bw_reading_row_take (BwReadingRow *self, BwReadingsTaken *taken)
{
  BwJudgement judgement;
  if (!bw_reading_row_is_judged (self, &judgement))
    return;
  taken->read[self->kind] = TRUE;
  taken->value[self->kind] = self->measured.value;
  taken->uncertainty[self->kind] = bw_measured_uncertainty (&self->measured, self->accuracy);
}

/**
 * bw_reading_row_get_editor:
 *
 * Returns: (transfer none): the field
 */
BwEditorRow *
bw_reading_row_get_editor (BwReadingRow *self)
{
  return self->editor;
}

/**
 * bw_reading_row_get_result:
 *
 * Returns: (transfer none): by how much the reading holds or fails, in words
 */
const char *
bw_reading_row_get_result (BwReadingRow *self)
{
  return gtk_widget_get_visible (self->result) ? gtk_label_get_label (self->says) : "";
}
