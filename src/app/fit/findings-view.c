/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "findings-view.h"

#include "app/widgets/copy-row.h"
#include "app/widgets/result-head.h"
#include "app/widgets/severity-mark.h"
#include "app/widgets/template.h"
#include "core/base/caution.h"
#include "core/fit/results.h"
#include "core/hookup/plan.h"
#include "finding-row.h"

/**
 * BwFindingsView:
 *
 * The selected source at the selected input: the fit in a sentence, where its limits come from, and
 * the finding of each rule, those that do not hold first.
 */
struct _BwFindingsView
{
  GtkWidget parent_instance;

  GtkWidget *content;
  BwSeverityMark *mark;
  GtkLabel *summary;
  GtkLabel *limits;
  GtkLabel *caution;
  GtkLabel *heads[BW_N_FINDING_COLUMNS];
  BwResultHead *table;
  GtkListBox *list;

  BwDocument *document;
  BwFindingRow *rows[BW_N_RULES]; /* borrowed; in the order shown; made with the first findings */
};

G_DEFINE_FINAL_TYPE (BwFindingsView, bw_findings_view, GTK_TYPE_WIDGET)

static void
build_rows (BwFindingsView *self)
{
  g_autoptr (GPtrArray) groups = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < BW_N_FINDING_COLUMNS; i++)
    {
      g_ptr_array_add (groups, gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL));
      gtk_size_group_add_widget (groups->pdata[i], GTK_WIDGET (self->heads[i]));
    }
  for (guint i = 0; i < BW_N_RULES; i++)
    {
      GtkWidget *row = bw_finding_row_new ((GtkSizeGroup *const *) groups->pdata);
      GtkWidget *line = bw_copy_row_new ();
      self->rows[i] = BW_FINDING_ROW (row);
      gtk_widget_add_css_class (line, "bw-finding");
      gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (line), row);
      gtk_list_box_append (self->list, line);
    }
}

static void
show_finding (BwFindingRow *row, const BwNode *finding)
{
  GtkWidget *line = gtk_widget_get_parent (GTK_WIDGET (row));
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < finding->values->len; i++)
    {
      g_autofree char *cell = bw_node_cell_text (finding, i, FALSE);
      g_string_append_printf (text, "%s%s", i > 0 && *cell != '\0' ? "\t" : "", cell);
    }
  bw_finding_row_show (row, finding);
  bw_copy_row_set_text (BW_COPY_ROW (line), text->str);
}

static void
show_findings (BwFindingsView *self, const BwNode *table)
{
  for (guint i = 0; i < BW_N_FINDING_COLUMNS; i++)
    gtk_label_set_label (self->heads[i], g_array_index (table->columns, BwColumn, i).label);
  for (guint i = 0; i < BW_N_RULES; i++)
    show_finding (self->rows[i], table->children->pdata[i]);
}

/* What the plan needs where the source does not show as it stands, which the verdict then hangs
 * on. */
static char **
needs_of (BwFindingsView *self, const BwCase *c, BwFit *fit)
{
  if (fit->verdict < BW_VERDICT_WITH_PARTS)
    return NULL;
  char **needs = bw_plan_needs (bw_document_get_sheet (self->document),
                                bw_document_get_catalogue (self->document),
                                bw_document_get_source (self->document),
                                bw_document_get_input (self->document),
                                bw_quantity_locale_mark ());
  bw_fit_take_plan (fit, c, needs != NULL);
  return needs;
}

static void
update (BwFindingsView *self)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  gboolean any = bw_document_case (self->document, bw_document_get_source (self->document),
                                   bw_document_get_input (self->document), &figures, &c);

  gtk_widget_set_visible (self->content, any);
  if (!any)
    return;
  if (self->rows[0] == NULL)
    build_rows (self);
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  const BwNode *root = bw_result_root (result);

  bw_fit_judge (&c, &fit);
  g_auto (GStrv) needs = needs_of (self, &c, &fit);
  bw_case_say (bw_result_root (result), &fit, &c, needs);
  gtk_label_set_label (self->summary, bw_node_answer (root));
  gtk_label_set_label (self->limits, bw_node_find (root, "limits_from")->label);
  gtk_label_set_label (self->caution, bw_caution ());
  bw_severity_mark_set (self->mark, bw_verdict_severity (fit.verdict));
  bw_severity_style (GTK_WIDGET (self->summary), bw_verdict_severity (fit.verdict));
  show_findings (self, bw_node_find (root, "findings"));
  bw_result_head_set_result (self->table, result);
}

static void
bw_findings_view_dispose (GObject *object)
{
  BwFindingsView *self = BW_FINDINGS_VIEW (object);

  g_clear_object (&self->document);
  bw_dispose_template (object, BW_TYPE_FINDINGS_VIEW);
  G_OBJECT_CLASS (bw_findings_view_parent_class)->dispose (object);
}

static void
bind_head (GtkWidgetClass *widget_class, const char *name, BwFindingColumn column)
{
  gtk_widget_class_bind_template_child_full (widget_class, name, FALSE,
                                             G_STRUCT_OFFSET (BwFindingsView, heads)
                                                 + (gssize) (column * sizeof (GtkLabel *)));
}

static void
bw_findings_view_class_init (BwFindingsViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_findings_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/findings-view.ui");
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, content);
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, mark);
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, summary);
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, limits);
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, caution);
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, table);
  gtk_widget_class_bind_template_child (widget_class, BwFindingsView, list);
  bind_head (widget_class, "head_word", BW_FINDING_WORD);
  bind_head (widget_class, "head_rule", BW_FINDING_RULE);
  bind_head (widget_class, "head_value", BW_FINDING_VALUE);
  bind_head (widget_class, "head_allowed", BW_FINDING_ALLOWED);
  bind_head (widget_class, "head_margin", BW_FINDING_MARGIN);
}

static void
bw_findings_view_init (BwFindingsView *self)
{
  g_type_ensure (BW_TYPE_RESULT_HEAD);
  g_type_ensure (BW_TYPE_SEVERITY_MARK);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_findings_view_set_document:
 * @document: what to show; to be set once
 */
void
bw_findings_view_set_document (BwFindingsView *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  bw_document_follow (document, G_CALLBACK (update), self);
  update (self);
}

/**
 * bw_findings_view_get_summary:
 *
 * Returns: (transfer none): the sentence on top
 */
const char *
bw_findings_view_get_summary (BwFindingsView *self)
{
  return gtk_label_get_label (self->summary);
}
