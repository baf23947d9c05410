/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "readings-panel.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/columns-layout.h"
#include "app/widgets/reading-box.h"
#include "app/widgets/result-head.h"
#include "app/widgets/template.h"
#include "app/widgets/severity-mark.h"

/**
 * BwReadingsPanel:
 *
 * Readings of a scope, each held against what a standard allows.
 */
struct _BwReadingsPanel
{
  GtkWidget parent_instance;

  GtkDropDown *standard;
  GtkWidget *standard_label;
  GtkLabel *source;
  GtkLabel *summary;
  BwResultHead *table;
  GtkBox *box;

  GPtrArray *limits;                 /* of BwStandardLimits */
  BwReadingRow *rows[BW_N_READINGS]; /* borrowed; children */
  gboolean chosen;                   /* the person has chosen the standard */
  gboolean choosing;                 /* it is being chosen by the program */
  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwReadingsPanel, bw_readings_panel, GTK_TYPE_WIDGET)

static const BwStandardLimits *
chosen_limits (BwReadingsPanel *self)
{
  guint index = gtk_drop_down_get_selected (self->standard);
  return index < self->limits->len ? self->limits->pdata[index] : NULL;
}

/* Summary */

typedef struct
{
  guint within;
  guint outside;
  guint open;     /* not sure */
  GString *names; /* of those outside */
} Count;

static void
count_row (BwReadingsPanel *self, BwReadingKind kind, Count *count)
{
  BwJudgement judgement;
  if (!bw_reading_row_is_judged (self->rows[kind], &judgement))
    return;
  if (judgement.outcome == BW_OUTCOME_WITHIN)
    {
      count->within++;
      return;
    }
  if (judgement.outcome == BW_OUTCOME_UNDECIDED)
    {
      count->open++;
      return;
    }
  count->outside++;
  g_string_append_printf (count->names, "%s%s %s", count->names->len > 0 ? ", " : "",
                          bw_kind_label (&bw_readings, kind),
                          bw_kind_label (&bw_outcomes, judgement.outcome));
}

static char *
summary_words (const Count *count)
{
  guint all = count->within + count->outside + count->open;
  if (all == 0)
    return g_strdup (_ ("Enter what the scope reads, each with its unit, and Enter: it is held "
                        "against the standard at once."));
  if (count->outside == 0 && count->open > 0)
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE,
                     "%1$u reading, %2$u not sure: so near a limit, a finer reading "
                     "decides",
                     "%1$u readings, %2$u not sure: so near a limit, a finer "
                     "reading decides",
                     all),
        all, count->open);
  if (count->outside == 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u reading, within the standard",
                                      "%u readings, all within the standard", all),
                            all);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%1$u reading, %2$u outside the standard: %3$s",
                                       "%1$u readings, %2$u outside the standard: %3$s", all),
                          all, count->outside, count->names->str);
}

static void
update_summary (BwReadingsPanel *self)
{
  Count count = { .names = g_string_new (NULL) };

  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    count_row (self, kind, &count);
  g_autofree char *words = summary_words (&count);
  gtk_label_set_label (self->summary, words);
  gtk_widget_set_sensitive (GTK_WIDGET (self->table),
                            count.within + count.outside + count.open > 0);
  bw_severity_style (GTK_WIDGET (self->summary), count.outside > 0  ? BW_SEVERITY_FATAL
                                                 : count.open > 0   ? BW_SEVERITY_TIGHT
                                                 : count.within > 0 ? BW_SEVERITY_OK
                                                                    : BW_N_SEVERITIES);
  g_string_free (count.names, TRUE);
}

/* Choosing a standard */

static void
show_standard (BwReadingsPanel *self)
{
  const BwStandardLimits *limits = chosen_limits (self);
  g_autofree char *source = g_strdup_printf (_ ("Limits from %s"),
                                             limits != NULL ? limits->source : "");

  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    bw_reading_row_hold_against (self->rows[kind], limits);
  gtk_label_set_label (self->source, source);
  update_summary (self);
}

static void
on_standard (BwReadingsPanel *self)
{
  if (self->limits == NULL || self->rows[0] == NULL)
    return; /* not built yet */
  self->chosen |= !self->choosing;
  show_standard (self);
}

static void
choose (BwReadingsPanel *self, guint index)
{
  self->choosing = TRUE;
  gtk_drop_down_set_selected (self->standard, index);
  self->choosing = FALSE;
}

/* Until the person chooses: the first standard for the selected source's raster. */
static void
follow_source (BwReadingsPanel *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  guint source = bw_document_get_source (self->document);

  if (self->chosen || source == BW_NO_INDEX)
    return;
  for (guint i = 0; i < self->limits->len; i++)
    {
      const BwStandardLimits *limits = self->limits->pdata[i];
      if (strcmp (limits->raster, bw_sheet_source (sheet, source)->raster) == 0)
        {
          choose (self, i);
          return;
        }
    }
}

/* The sheet may say how accurate the instruments are. */
static void
take_accuracy (BwReadingsPanel *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    bw_reading_row_set_accuracy (self->rows[kind],
                                 bw_sheet_accuracy (sheet, bw_reading_dimension (kind)));
  update_summary (self);
}

/* The readings held against the standard. */
static BwResult *
make_result (gpointer owner)
{
  BwReadingsPanel *self = owner;
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  BwReadingsTaken taken = { 0 };

  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    bw_reading_row_take (self->rows[kind], &taken);
  bw_readings_say (bw_result_root (result), chosen_limits (self), &taken);
  bw_node_say (bw_result_root (result), BW_SAY_ANSWER, NULL, gtk_label_get_label (self->summary));
  return result;
}

static void
on_clear (BwReadingsPanel *self)
{
  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    bw_reading_row_clear (self->rows[kind]);
  update_summary (self);
  gtk_widget_child_focus (GTK_WIDGET (self->box), GTK_DIR_TAB_FORWARD);
}

/* Widget */

static void
bw_readings_panel_dispose (GObject *object)
{
  g_clear_object (&BW_READINGS_PANEL (object)->document);
  bw_dispose_template (object, BW_TYPE_READINGS_PANEL);
  G_OBJECT_CLASS (bw_readings_panel_parent_class)->dispose (object);
}

static void
bw_readings_panel_finalize (GObject *object)
{
  g_ptr_array_unref (BW_READINGS_PANEL (object)->limits);
  G_OBJECT_CLASS (bw_readings_panel_parent_class)->finalize (object);
}

static void
bw_readings_panel_class_init (BwReadingsPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_readings_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_readings_panel_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/readings-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, BwReadingsPanel, standard);
  gtk_widget_class_bind_template_child (widget_class, BwReadingsPanel, standard_label);
  gtk_widget_class_bind_template_child (widget_class, BwReadingsPanel, source);
  gtk_widget_class_bind_template_child (widget_class, BwReadingsPanel, summary);
  gtk_widget_class_bind_template_child (widget_class, BwReadingsPanel, table);
  gtk_widget_class_bind_template_child (widget_class, BwReadingsPanel, box);
  gtk_widget_class_bind_template_callback (widget_class, on_standard);
  gtk_widget_class_bind_template_callback (widget_class, on_clear);
}

static void
fill (BwReadingsPanel *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    {
      self->rows[kind] = bw_reading_row_new (kind);
      g_signal_connect_object (self->rows[kind], "judged", G_CALLBACK (update_summary), self,
                               G_CONNECT_SWAPPED);
      gtk_box_append (self->box, GTK_WIDGET (self->rows[kind]));
    }
  for (guint i = 0; i < self->limits->len; i++)
    gtk_string_list_append (names, ((BwStandardLimits *) self->limits->pdata[i])->name);
  self->choosing = TRUE;
  gtk_drop_down_set_model (self->standard, G_LIST_MODEL (names));
  self->choosing = FALSE;
}

static void
bw_readings_panel_init (BwReadingsPanel *self)
{
  g_type_ensure (BW_TYPE_COLUMNS_LAYOUT);
  g_type_ensure (BW_TYPE_READING_BOX);
  self->limits = bw_limits_shipped ();
  g_type_ensure (BW_TYPE_RESULT_HEAD);
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_name_buttons (GTK_WIDGET (self));
  bw_label_control (GTK_WIDGET (self->standard), self->standard_label);
  bw_result_head_set_maker (self->table, make_result, self);
  fill (self);
  show_standard (self);
}

/**
 * bw_readings_panel_set_document:
 * @document: the standard follows its selected source until one is chosen; to be set once
 */
void
bw_readings_panel_set_document (BwReadingsPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (take_accuracy), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "changed", G_CALLBACK (follow_source), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (follow_source), self,
                           G_CONNECT_SWAPPED);
  follow_source (self);
  take_accuracy (self);
}

/**
 * bw_readings_panel_choose:
 * @id: of shipped limits
 *
 * Chooses the standard, as the person does in the list.
 */
void
bw_readings_panel_choose (BwReadingsPanel *self, const char *id)
{
  const BwStandardLimits *limits = bw_limits_find (self->limits, id);
  guint index;
  g_return_if_fail (limits != NULL && g_ptr_array_find (self->limits, limits, &index));
  gtk_drop_down_set_selected (self->standard, index);
}

/* Getters: all (transfer none) */

BwReadingRow *
bw_readings_panel_get_row (BwReadingsPanel *self, BwReadingKind kind)
{
  return self->rows[kind];
}

const char *
bw_readings_panel_get_summary (BwReadingsPanel *self)
{
  return gtk_label_get_label (self->summary);
}
