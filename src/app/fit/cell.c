/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cell.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/severity-mark.h"
#include "core/connector/plug.h"
#include "core/fit/results.h"

/**
 * BwFitCell:
 *
 * One source at one input: mark, word and colour of the verdict, and under it what it hangs on.
 * Pressed when it is the selected one.
 */
struct _BwFitCell
{
  GtkToggleButton parent_instance;

  BwSeverityMark *mark;
  GtkLabel *word;
  GtkLabel *detail;

  guint source;
  guint input;
};

G_DEFINE_FINAL_TYPE (BwFitCell, bw_fit_cell, GTK_TYPE_TOGGLE_BUTTON)

static void
bw_fit_cell_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BW_TYPE_FIT_CELL);
  G_OBJECT_CLASS (bw_fit_cell_parent_class)->dispose (object);
}

static void
bw_fit_cell_class_init (BwFitCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_fit_cell_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/fit-cell.ui");
  gtk_widget_class_bind_template_child (widget_class, BwFitCell, mark);
  gtk_widget_class_bind_template_child (widget_class, BwFitCell, word);
  gtk_widget_class_bind_template_child (widget_class, BwFitCell, detail);
}

static void
bw_fit_cell_init (BwFitCell *self)
{
  g_type_ensure (BW_TYPE_SEVERITY_MARK);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_fit_cell_new:
 *
 * Returns: (transfer floating): a cell with nothing in it yet
 */
GtkWidget *
bw_fit_cell_new (void)
{
  return g_object_new (BW_TYPE_FIT_CELL, NULL);
}

/**
 * bw_fit_cell_set_place:
 *
 * Makes it the cell of source @source at input @input; what it shows is to be set next.
 */
void
bw_fit_cell_set_place (BwFitCell *self, guint source, guint input)
{
  self->source = source;
  self->input = input;
}

guint
bw_fit_cell_get_source (BwFitCell *self)
{
  return self->source;
}

guint
bw_fit_cell_get_input (BwFitCell *self)
{
  return self->input;
}

/* What the plan needs, or else what the verdict hangs on. What is lacking is counted, not named:
 * there is no room. */
static GPtrArray *
reasons_of (const BwFit *fit, char *const *needs)
{
  gboolean planned = needs != NULL && needs[0] != NULL;
  const BwFinding *lead = &fit->at[BW_RULE_LEAD];
  if (!planned && fit->verdict != BW_VERDICT_OPEN)
    return bw_fit_reasons (fit, bw_quantity_locale_mark ());
  GPtrArray *reasons = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; planned && needs[i] != NULL; i++)
    g_ptr_array_add (reasons, g_strdup (needs[i]));
  if (!planned && lead->reason == BW_REASON_OPEN_PINS)
    g_ptr_array_add (reasons, bw_open_pins_says (&lead->as.lead.open));
  return reasons;
}

/* The first of these, and how many more there are; empty for "direct". */
static char *
first_reason (const BwFit *fit, char *const *needs)
{
  g_autoptr (GPtrArray) reasons = reasons_of (fit, needs);
  if (reasons->len == 0)
    return g_strdup ("");
  const char *first = reasons->pdata[0];
  if (reasons->len == 1)
    return g_strdup (first);
  /* Translators: the first reason, and how many others there are. */
  return g_strdup_printf (_ ("%1$s, %2$u\u00a0more"), first, reasons->len - 1);
}

/* The line under the word: what the verdict hangs on, and how much was not judged. */
static char *
detail_of (const BwFit *fit, char *const *needs)
{
  g_autofree char *reasons = first_reason (fit, needs);
  guint n = bw_fit_not_judged_besides (fit);
  g_autofree char *lacks
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u not judged", "%u not judged",
                                      n),
                         n);
  if (n == 0)
    return g_steal_pointer (&reasons);
  if (*reasons == '\0')
    return g_steal_pointer (&lacks);
  /* Translators: what a verdict hangs on, and how much is open: "Line rate; 3 not judged" */
  return g_strdup_printf (_ ("%1$s; %2$s"), reasons, lacks);
}

/* The whole cell in words, for a screen reader. */
static char *
label_of (const BwFit *fit, const BwCase *c, const char *detail)
{
  const char *verdict = bw_fit_verdict_word (fit);
  if (*detail == '\0')
    return g_strdup_printf (_ ("Source %1$s at input %2$s: %3$s"), c->source->name, c->input->name,
                            verdict);
  return g_strdup_printf (_ ("Source %1$s at input %2$s: %3$s, %4$s"), c->source->name,
                          c->input->name, verdict, detail);
}

/**
 * bw_fit_cell_show:
 * @needs: (nullable): what the plan needs; %NULL: not known yet, or there is no plan
 *
 * Shows @fit in place of what the cell showed before.
 */
void
bw_fit_cell_show (BwFitCell *self, const BwFit *fit, const BwCase *c, char *const *needs)
{
  g_autofree char *detail = detail_of (fit, needs);
  g_autofree char *label = label_of (fit, c, detail);

  bw_severity_mark_set (self->mark, bw_verdict_severity (fit->verdict));
  bw_severity_style (GTK_WIDGET (self), bw_verdict_severity (fit->verdict));
  gtk_label_set_label (self->word, bw_fit_verdict_word (fit));
  gtk_label_set_label (self->detail, detail);
  gtk_widget_set_visible (GTK_WIDGET (self->detail), *detail != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static int
word_width (BwFitCell *self, const char *word)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self->word), word);
  int width;
  pango_layout_get_pixel_size (layout, &width, NULL);
  return width;
}

/**
 * bw_fit_cell_get_least_width:
 *
 * Returns: the width in pixels in which a cell has room for the word of any verdict
 */
int
bw_fit_cell_get_least_width (BwFitCell *self)
{
  int minimum, widest = 0;

  gtk_widget_measure (GTK_WIDGET (self), GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL,
                      NULL);
  for (guint i = 0; i < BW_N_VERDICTS; i++)
    widest = MAX (widest, word_width (self, bw_kind_label (&bw_verdicts, i)));
  widest = MAX (widest, word_width (self, bw_fit_open_word ()));
  return minimum + MAX (0, widest - word_width (self, gtk_label_get_label (self->word)));
}

/**
 * bw_fit_cell_get_word:
 *
 * Returns: (transfer none): the verdict's word as it stands in the cell
 */
const char *
bw_fit_cell_get_word (BwFitCell *self)
{
  return gtk_label_get_label (self->word);
}

/**
 * bw_fit_cell_get_detail:
 *
 * Returns: (transfer none): the line under the word
 */
const char *
bw_fit_cell_get_detail (BwFitCell *self)
{
  return gtk_label_get_label (self->detail);
}
