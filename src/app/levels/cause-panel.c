/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-panel.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "app/bench/bench-signal.h"
#include "app/widgets/button-name.h"
#include "app/widgets/chooser.h"
#include "app/widgets/columns-layout.h"
#include "app/widgets/empty-page.h"
#include "app/widgets/form.h"
#include "app/widgets/reading-box.h"
#include "app/widgets/result-view.h"
#include "app/widgets/severity-mark.h"
#include "core/base/caution.h"
#include "core/cause/results.h"

/* The polarities from 1 on; 0 stands for a polarity that was not looked at. */
static const BwKind polarity_kinds[] = {
  { "", N_ ("not seen") },
  [1 + BW_POLARITY_NEGATIVE] = { "negative", N_ ("downwards") },
  [1 + BW_POLARITY_POSITIVE] = { "positive", N_ ("upwards") },
};
static const BwKindTable polarities = { G_N_ELEMENTS (polarity_kinds), polarity_kinds };

#define ENTRY(name, label_)                                                                        \
  {                                                                                                \
    .key = name, .label = label_, .type = BW_FIELD_TEXT                                \
  }

static const BwField fields[BW_N_SCOPE_READINGS] = {
  [BW_SCOPE_SYNC] = ENTRY ("sync", N_ ("Sync, p-p")),
  [BW_SCOPE_POLARITY] = { .key = "polarity",
                          .label = N_ ("Sync points"),
                          .type = BW_FIELD_CHOICE,
                          .kinds = &polarities },
  [BW_SCOPE_WHITE] = ENTRY ("white", N_ ("White")),
  [BW_SCOPE_BLACK] = ENTRY ("black", N_ ("Black")),
  [BW_SCOPE_BURST] = ENTRY ("burst", N_ ("Burst, p-p")),
  [BW_SCOPE_DC] = ENTRY ("dc", N_ ("D.c. at blanking")),
  [BW_SCOPE_LINE_TILT] = ENTRY ("line-tilt", N_ ("Line tilt")),
  [BW_SCOPE_FIELD_TILT] = ENTRY ("field-tilt", N_ ("Field tilt")),
};

static const char *const tooltips[BW_N_SCOPE_READINGS] = {
  [BW_SCOPE_SYNC] = N_ ("Amplitude of the sync pulses, peak to peak"),
  [BW_SCOPE_POLARITY] = N_ ("Of tri-level sync the first half"),
  /* xgettext:no-c-format */
  [BW_SCOPE_WHITE] = N_ ("Above blanking; of Pb, Pr and C the highest of 100 % bars"),
  [BW_SCOPE_BLACK] = N_ ("Above blanking"),
  [BW_SCOPE_BURST] = N_ ("Peak to peak"),
  [BW_SCOPE_DC] = N_ ("With the scope coupled for d.c.; of sync alone between the pulses"),
  [BW_SCOPE_LINE_TILT] = N_ ("Fall of a white field from the left edge to the right, as a share of white"),
  [BW_SCOPE_FIELD_TILT] = N_ ("Fall of a white field from its first line to its last, as a share of white"),
};

/**
 * BwCausePanel:
 *
 * Readings of a scope on one conductor, and the faults that are likely to give such readings.
 */
struct _BwCausePanel
{
  GtkWidget parent_instance;

  GtkStack *stack; /* the only child; those below are borrowed and in it */
  BwEmptyPage *empty;
  GtkWidget *content;
  GtkLabel *title;
  BwChooser *conductor;
  BwEditorRow *rows[BW_N_SCOPE_READINGS];
  GtkLabel *summary;
  BwResultView *list;

  BwDocument *document;
  GPtrArray *limits; /* of BwStandardLimits */
  BwScopeReadings readings;
  BwCauseCase c;
  GArray *causes; /* of BwCause */
};

G_DEFINE_FINAL_TYPE (BwCausePanel, bw_cause_panel, GTK_TYPE_WIDGET)

/* Case */

static void
update_conductors (BwCausePanel *self, const BwBenchSignal *signal)
{
  guint set = bw_signal_conductors ((BwSignal) signal->source->signal, signal->usual);
  guint chosen = bw_chooser_get (self->conductor);
  gboolean stays = chosen < BW_N_CONDUCTORS && (set & BW_BIT (chosen));

  bw_chooser_set_kinds (self->conductor, &bw_conductors, set);
  if (!stays)
    bw_chooser_choose (self->conductor,
                       bw_signal_usual_conductor ((BwSignal) signal->source->signal));
}

static void
update_case (BwCausePanel *self, const BwBenchSignal *signal)
{
  update_conductors (self, signal);
  bw_cause_case_of_input (signal->source, signal->input, signal->raster, signal->usual,
                          (BwConductor) bw_chooser_get (self->conductor), &self->c);
  self->c.limits = bw_bench_signal_limits (signal, self->limits);
}

/* Words */

static char *
ohm_text (double ohm)
{
  return bw_quantity_format (ohm, BW_DIMENSION_RESISTANCE, 3, bw_quantity_locale_mark ());
}

/* What the readings are held against. */
static char *
title_text (BwCausePanel *self, const BwBenchSignal *signal)
{
  const BwCauseCase *c = &self->c;
  g_autofree char *first = bw_bench_signal_title (signal, &c->form);
  g_autofree char *load = ohm_text (c->load_ohm);
  g_autofree char *series = ohm_text (c->series_ohm);
  const char *limits = c->limits != NULL ? c->limits->name : NULL;
  GString *text = g_string_new (first);

  if (c->not_taken)
    g_string_append_printf (text,
                            _ (". The input does not take %1$s: what should be is what the source "
                               "gives into %2$s"),
                            bw_kind_label (&bw_sync_kinds, c->form.sync), load);
  else
    g_string_append_printf (text, _ (". The conductor should end in %s"), load);
  if (c->series_ohm > 0)
    g_string_append_printf (text, _ (", behind %s in the lead"), series);
  if (c->pad_ratio < 1)
    {
      const BwValue ratio = bw_value_number (NULL, -20 * log10 (c->pad_ratio), 1);
      g_autofree char *loss = bw_value_text (&ratio, bw_quantity_locale_mark ());
      g_string_append_printf (text, _ (", behind an attenuator of %s dB in the lead"), loss);
    }
  if (limits != NULL)
    g_string_append_printf (text, _ ("; what %s allows is right"), limits);
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}

/* Showing */

static void
show_expected (BwCausePanel *self)
{
  BwRange expected[BW_N_SCOPE_READINGS];
  guint decided = bw_cause_expected (&self->c, expected);

  for (BwScopeReading reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
    {
      g_autofree char *right = bw_scope_expected_words (reading, &expected[reading],
                                                        bw_quantity_locale_mark ());
      g_autofree char *note = decided & BW_BIT (reading)
                                  ? g_strdup_printf (_ ("should be %s"), right)
                                  : g_strdup (_ ("not decided here"));
      bw_editor_row_set_note (self->rows[reading], note, NULL);
    }
}

static void
style_summary (BwCausePanel *self)
{
  const BwCause *first = bw_cause_panel_get_cause (self, 0);
  BwSeverity severity = BW_N_SEVERITIES;

  if (first != NULL)
    severity = first->known && first->n_faults == 0 ? BW_SEVERITY_OK : BW_SEVERITY_FATAL;
  bw_severity_style (GTK_WIDGET (self->summary), severity);
}

static void
show_answer (BwCausePanel *self, const BwBenchSignal *signal)
{
  gboolean speaks = self->readings.given != 0 || self->c.refused;
  BwResult *result = speaks ? bw_result_new (bw_quantity_locale_mark ()) : NULL;

  if (result != NULL)
    bw_cause_say (bw_result_root (result), signal->source->name, signal->input->name, &self->c,
                  &self->readings, self->causes);
  const BwNode *next = result != NULL ? bw_node_find (bw_result_root (result), "next") : NULL;
  g_autofree char *says
      = result == NULL ? NULL
                       : g_strjoin ("\n", bw_node_answer (bw_result_root (result)),
                                    next != NULL ? next->label : NULL, NULL);
  gtk_label_set_label (self->summary,
                       says != NULL
                           ? says
                           : _ ("Enter what the scope reads on this conductor, each with its unit, "
                                "and Enter: the likely cause is worked out at once."));
  bw_result_view_show_part (self->list, result, "causes");
  style_summary (self);
}

static void
update (BwCausePanel *self)
{
  BwBenchSignal signal;
  gboolean there = bw_bench_signal_init (&signal, self->document);
  gboolean nothing = bw_empty_page_update (self->empty, self->document, &signal.lack)
                     || !there;

  gtk_stack_set_visible_child (self->stack, nothing ? GTK_WIDGET (self->empty) : self->content);
  if (nothing)
    return;
  update_case (self, &signal);
  g_array_unref (self->causes);
  self->readings.accuracy
      = bw_sheet_accuracy (bw_document_get_sheet (self->document), BW_DIMENSION_VOLTAGE);
  self->causes = bw_causes (&self->c, &self->readings);
  g_autofree char *title = title_text (self, &signal);
  gtk_label_set_label (self->title, title);
  show_expected (self);
  show_answer (self, &signal);
}

/* Edits */

/* An empty text takes the reading away. A text that is no quantity is refused, and the reading
 * stays as it was. */
static gboolean
take (BwCausePanel *self, BwScopeReading reading, const char *text, GError **error)
{
  guint kind = 0;

  if (text[strspn (text, " \t")] == '\0')
    {
      self->readings.given &= ~BW_BIT (reading);
      return TRUE;
    }
  if (reading != BW_SCOPE_POLARITY)
    return bw_scope_readings_read (&self->readings, &self->c, reading, text,
                                   bw_quantity_locale_mark (), error);
  bw_kind_find (&polarities, text, &kind);
  return bw_scope_readings_set (&self->readings, reading,
                                kind == 1 + BW_POLARITY_POSITIVE ? 1 : -1);
}

static void
on_edited (BwCausePanel *self, BwEditorRow *row)
{
  g_autofree char *text = bw_editor_row_dup_text (row);
  g_autoptr (GError) error = NULL;
  BwScopeReading reading = (BwScopeReading) (bw_editor_row_get_field (row) - fields);

  if (!take (self, reading, text, &error))
    {
      bw_editor_row_set_error (row, error->message);
      return;
    }
  bw_editor_row_show_text (row, text);
  if (self->document != NULL)
    update (self);
}

static void
on_clear (BwCausePanel *self)
{
  self->readings = (BwScopeReadings){ 0 };
  for (BwScopeReading reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
    bw_editor_row_show_text (self->rows[reading], "");
  update (self);
  gtk_widget_grab_focus (bw_editor_row_get_control (self->rows[0]));
}

/* Widget */

static void
bw_cause_panel_dispose (GObject *object)
{
  BwCausePanel *self = BW_CAUSE_PANEL (object);
  GtkWidget *stack = GTK_WIDGET (self->stack);

  g_clear_object (&self->document);
  g_clear_pointer (&stack, gtk_widget_unparent);
  self->stack = NULL;
  G_OBJECT_CLASS (bw_cause_panel_parent_class)->dispose (object);
}

static void
bw_cause_panel_finalize (GObject *object)
{
  BwCausePanel *self = BW_CAUSE_PANEL (object);

  g_ptr_array_unref (self->limits);
  g_array_unref (self->causes);
  G_OBJECT_CLASS (bw_cause_panel_parent_class)->finalize (object);
}

static void
bw_cause_panel_class_init (BwCausePanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_cause_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_cause_panel_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkLabel *
words_new (GtkWidget *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
button_new (BwCausePanel *self, GtkWidget *box, const char *name, const char *label,
            GCallback clicked)
{
  GtkWidget *button = bw_button_new (label);
  gtk_widget_set_name (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_object (button, "clicked", clicked, self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
add_rows (BwCausePanel *self, GtkWidget *box)
{
  for (BwScopeReading reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
    {
      BwEditorRow *row = bw_form_row_new (&fields[reading]);
      GtkWidget *control = bw_editor_row_get_control (row);
      gboolean volts = bw_scope_reading_dimension (reading) == BW_DIMENSION_VOLTAGE;
      gtk_widget_set_name (control, fields[reading].key);
      gtk_widget_set_tooltip_text (control, _ (tooltips[reading]));
      if (GTK_IS_ENTRY (control))
        gtk_entry_set_placeholder_text (GTK_ENTRY (control), volts ? _ ("mV or V") : _ ("in %"));
      g_signal_connect_object (row, "edited", G_CALLBACK (on_edited), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (row));
      bw_editor_row_show_text (row, "");
      self->rows[reading] = row;
    }
}

/* The conductor, and what should be on it. */
static void
add_place (BwCausePanel *self, GtkWidget *body)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 14);

  self->conductor = bw_chooser_new ("conductor", _ ("C_onductor"));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->conductor), GTK_ORIENTATION_HORIZONTAL);
  gtk_box_set_spacing (GTK_BOX (self->conductor), 8);
  gtk_widget_set_valign (GTK_WIDGET (self->conductor), GTK_ALIGN_START);
  g_signal_connect_object (self->conductor, "chosen", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->conductor));
  self->title = words_new (head, "bw-light");
  gtk_box_append (GTK_BOX (body), head);
}

static void
add_readings (BwCausePanel *self, GtkWidget *body)
{
  GtkWidget *columns = bw_reading_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_layout_manager (columns, g_object_new (BW_TYPE_COLUMNS_LAYOUT, "most", 8u,
                                                        "column-width", 140u, NULL));
  add_rows (self, columns);
  gtk_box_append (GTK_BOX (body), columns);
}

static void
add_answer (BwCausePanel *self, GtkWidget *body)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->summary = words_new (head, "bw-summary");
  button_new (self, head, "clear-readings", _ ("C_lear All"), G_CALLBACK (on_clear));
  gtk_box_append (GTK_BOX (body), head);

  self->list = bw_result_view_new (_ ("What may be wrong, the likeliest first"));
  bw_result_view_set_cards (self->list, TRUE);
  gtk_widget_set_name (GTK_WIDGET (self->list), "causes");
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->list));
}

static GtkWidget *
content_new (BwCausePanel *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);

  gtk_widget_add_css_class (body, "bw-page-body");
  add_place (self, body);
  add_readings (self, body);
  add_answer (self, body);
  gtk_label_set_label (words_new (body, "bw-limits"), bw_caution_scope ());
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), body);
  return scrolled;
}

static void
bw_cause_panel_init (BwCausePanel *self)
{
  self->limits = bw_limits_shipped ();
  self->causes = g_array_new (FALSE, FALSE, sizeof (BwCause));
  self->stack = GTK_STACK (gtk_stack_new ());
  self->empty = g_object_new (BW_TYPE_EMPTY_PAGE, NULL);
  self->content = content_new (self);
  gtk_stack_add_child (self->stack, GTK_WIDGET (self->empty));
  gtk_stack_add_child (self->stack, self->content);
  gtk_widget_set_parent (GTK_WIDGET (self->stack), GTK_WIDGET (self));
}

/**
 * bw_cause_panel_set_document:
 * @document: whose selected source and input are looked at; to be set once
 */
void
bw_cause_panel_set_document (BwCausePanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  bw_document_follow (document, G_CALLBACK (update), self);
  update (self);
}

/**
 * bw_cause_panel_get_row:
 *
 * Returns: (transfer none): the field for a reading
 */
BwEditorRow *
bw_cause_panel_get_row (BwCausePanel *self, BwScopeReading reading)
{
  return self->rows[reading];
}

/**
 * bw_cause_panel_get_summary:
 *
 * Returns: (transfer none): the answer in a few words
 */
const char *
bw_cause_panel_get_summary (BwCausePanel *self)
{
  return gtk_label_get_label (self->summary);
}

/**
 * bw_cause_panel_get_cause:
 * @rank: from 0, the likeliest
 *
 * Returns: (transfer none) (nullable): the cause of that rank
 */
const BwCause *
bw_cause_panel_get_cause (BwCausePanel *self, guint rank)
{
  return rank < self->causes->len ? &g_array_index (self->causes, BwCause, rank) : NULL;
}

/**
 * bw_cause_panel_get_view:
 *
 * Returns: (transfer none): the answer in full
 */
BwResultView *
bw_cause_panel_get_view (BwCausePanel *self)
{
  return self->list;
}
