/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "finding-row.h"

#include "app/widgets/severity-mark.h"
#include "app/widgets/template.h"

/**
 * BwFindingRow:
 *
 * The outcome of one rule: mark and word, the rule, the measured value, what is allowed, the
 * margin; beside or under them the sentence and the remedy.
 */
struct _BwFindingRow
{
  GtkWidget parent_instance;

  BwSeverityMark *mark;
  GtkWidget *word_box;
  GtkLabel *word;
  GtkLabel *rule;
  GtkLabel *value;
  GtkLabel *allowed;
  GtkLabel *margin;
  GtkLabel *says;
  GtkWidget *remedy_box;
  GtkLabel *remedy;
};

G_DEFINE_FINAL_TYPE (BwFindingRow, bw_finding_row, GTK_TYPE_WIDGET)

static void
bw_finding_row_dispose (GObject *object)
{
  bw_dispose_template (object, BW_TYPE_FINDING_ROW);
  G_OBJECT_CLASS (bw_finding_row_parent_class)->dispose (object);
}

static void
bw_finding_row_class_init (BwFindingRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_finding_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, BW_TYPE_FINDING_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/finding-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, mark);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, word_box);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, word);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, rule);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, value);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, allowed);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, margin);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, says);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, remedy_box);
  gtk_widget_class_bind_template_child (widget_class, BwFindingRow, remedy);
}

static void
bw_finding_row_init (BwFindingRow *self)
{
  g_type_ensure (BW_TYPE_SEVERITY_MARK);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_finding_row_new:
 * @widths: what keeps the columns of all rows alike
 *
 * Returns: (transfer floating): a row with nothing in it yet
 */
GtkWidget *
bw_finding_row_new (GtkSizeGroup *const widths[BW_N_FINDING_COLUMNS])
{
  BwFindingRow *self = g_object_new (BW_TYPE_FINDING_ROW, NULL);

  gtk_size_group_add_widget (widths[BW_FINDING_WORD], self->word_box);
  gtk_size_group_add_widget (widths[BW_FINDING_RULE], GTK_WIDGET (self->rule));
  gtk_size_group_add_widget (widths[BW_FINDING_VALUE], GTK_WIDGET (self->value));
  gtk_size_group_add_widget (widths[BW_FINDING_ALLOWED], GTK_WIDGET (self->allowed));
  gtk_size_group_add_widget (widths[BW_FINDING_MARGIN], GTK_WIDGET (self->margin));
  return GTK_WIDGET (self);
}

static void
show_cell (GtkLabel *label, const BwNode *finding, BwFindingColumn column)
{
  g_autofree char *text = bw_node_cell_text (finding, column, FALSE);
  gtk_label_set_label (label, text);
}

/**
 * bw_finding_row_show:
 * @finding: a row of bw_case_say()
 *
 * Shows @finding in place of what the row showed before.
 */
void
bw_finding_row_show (BwFindingRow *self, const BwNode *finding)
{
  BwSeverity severity = BW_MARK_SEVERITY (finding->mark);

  bw_severity_mark_set (self->mark, severity);
  bw_severity_style (GTK_WIDGET (self), severity);
  show_cell (self->word, finding, BW_FINDING_WORD);
  show_cell (self->rule, finding, BW_FINDING_RULE);
  show_cell (self->value, finding, BW_FINDING_VALUE);
  show_cell (self->allowed, finding, BW_FINDING_ALLOWED);
  show_cell (self->margin, finding, BW_FINDING_MARGIN);
  show_cell (self->says, finding, BW_FINDING_SAYS);
  show_cell (self->remedy, finding, BW_FINDING_REMEDY);
  gtk_widget_set_visible (self->remedy_box, *gtk_label_get_label (self->remedy) != '\0');
}
