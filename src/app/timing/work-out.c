/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "work-out-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/columns-layout.h"
#include "app/widgets/form.h"
#include "app/widgets/reading-box.h"
#include "app/widgets/template.h"
#include "core/interchange/interchange.h"
#include "core/raster/results.h"

/**
 * BwWorkOut:
 *
 * A raster worked out: a field for each figure, of which any may be entered; the rest follows.
 */
G_DEFINE_FINAL_TYPE (BwWorkOut, bw_work_out, GTK_TYPE_WIDGET)

static const BwFigure rates[] = {
  BW_FIGURE_PIXEL_CLOCK, BW_FIGURE_LINE_RATE,  BW_FIGURE_LINE_PERIOD,     BW_FIGURE_H_TOTAL,
  BW_FIGURE_FIELD_RATE,  BW_FIGURE_FRAME_RATE, BW_FIGURE_LINES_PER_FRAME, BW_FIGURE_LINES_PER_FIELD,
};

#define THREE(name) BW_FIGURE_##name, BW_FIGURE_##name##_TIME, BW_FIGURE_##name##_SHARE
static const BwFigure line[] = {
  THREE (H_ACTIVE), THREE (H_FRONT_PORCH), THREE (H_SYNC), THREE (H_BACK_PORCH), THREE (H_BLANKING),
};

static const BwFigure field[] = {
  BW_FIGURE_V_ACTIVE,     BW_FIGURE_V_FRONT_PORCH, BW_FIGURE_V_SYNC,
  BW_FIGURE_V_BACK_PORCH, BW_FIGURE_V_BLANKING,
};

static const BwField interlaced_field = {
  .key = "interlaced",
  .label = N_ ("Interlaced"),
  .help = N_ ("two fields to a frame"),
  .type = BW_FIELD_SWITCH,
  .offset = G_STRUCT_OFFSET (BwSolver, interlaced),
};

/* The selected source's raster */

static const BwRaster *
source_raster (BwWorkOut *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  guint source = bw_document_get_source (self->document);
  if (source == BW_NO_INDEX)
    return NULL;
  return bw_sheet_raster (sheet, bw_document_get_catalogue (self->document),
                          bw_sheet_source (sheet, source));
}

/* Solving */

/* @text with a capital letter. */
static char *
capitalised (const char *text)
{
  const char *rest = *text != '\0' ? g_utf8_next_char (text) : text;
  g_autofree char *first = g_utf8_strup (text, rest - text);
  return g_strconcat (first, rest, NULL);
}

static void
show_fault (BwWorkOut *self, const char *message)
{
  g_autofree char *sentence = capitalised (message != NULL ? message : "");
  gtk_label_set_label (self->fault, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->fault), message != NULL);
}

static gboolean
holds_nothing (const BwSolver *solver)
{
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (solver->at[i].entered)
      return FALSE;
  return TRUE;
}

/* What the figures make: the base itself as long as nothing is changed. */
static void
make_raster (BwWorkOut *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *says = NULL;

  g_clear_pointer (&self->raster, bw_raster_free);
  if (self->base != NULL && !self->changed)
    self->raster = bw_raster_copy (self->base);
  else if (self->wrong == 0 && !holds_nothing (&self->solver))
    self->raster = bw_work_out_make (&self->solver, self->base, &error);
  if (self->raster != NULL)
    says = g_strdup_printf (_ ("A whole raster: %s"), self->raster->name);
  else if (error != NULL)
    says = g_strdup_printf (_ ("No whole raster yet: %s"), error->message);
  gtk_label_set_label (self->says, says != NULL ? says : _ ("No whole raster yet"));
}

static void
update_buttons (BwWorkOut *self)
{
  const BwRaster *raster = source_raster (self);
  gtk_widget_set_sensitive (self->copy, self->raster != NULL);
  gtk_widget_set_sensitive (self->use, self->raster != NULL && raster != NULL);
  gtk_widget_set_sensitive (self->from_source, raster != NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->starts[BW_START_MONITOR]),
                            !bw_document_is_blank (self->document));
}

/* @edited: what was changed last, which is wrong if nothing else is found to be */
static void
solve (BwWorkOut *self, guint32 edited)
{
  g_autoptr (GError) error = NULL;
  guint32 redundant;

  self->wrong = 0;
  if (!bw_solver_run (&self->solver, &redundant, &error))
    {
      self->wrong = bw_solver_conflict (&self->solver);
      self->wrong = self->wrong != 0 ? self->wrong : edited;
    }
  show_fault (self, error != NULL ? error->message : NULL);
  make_raster (self);
  bw_work_out_show_figures (self);
  update_buttons (self);
}

/* Editing */

static guint
figure_of (BwWorkOut *self, BwEditorRow *row)
{
  for (guint i = 0; i < BW_N_FIGURES; i++)
    if (self->rows[i] == row)
      return i;
  g_return_val_if_reached (0);
}

static gboolean
enter (BwWorkOut *self, guint figure, const char *text, GError **error)
{
  if (text[strspn (text, " \t")] != '\0')
    return bw_solver_enter (&self->solver, figure, text, bw_quantity_locale_mark (), error);
  bw_solver_forget (&self->solver, figure);
  return TRUE;
}

static void
on_edited (BwWorkOut *self, BwEditorRow *row)
{
  guint figure = figure_of (self, row);
  g_autofree char *text = bw_editor_row_dup_text (row);
  g_autoptr (GError) error = NULL;

  if (!bw_editor_row_is_edited (row))
    return;
  BwSolver before = self->solver;
  if (!enter (self, figure, text, &error))
    {
      bw_editor_row_set_error (row, error->message);
      return;
    }
  self->before = before;
  self->changed = TRUE;
  bw_editor_row_show_text (row, text);
  solve (self, 1u << figure);
}

static void
on_interlaced (BwWorkOut *self, BwEditorRow *row)
{
  g_autofree char *text = bw_editor_row_dup_text (row);
  self->before = self->solver;
  self->changed = TRUE;
  bw_field_parse (&interlaced_field, &self->solver, text, bw_quantity_locale_mark (), NULL);
  solve (self, 0);
}

/* Starting */

static void
append_points (GString *text, const GPtrArray *sentences)
{
  for (guint i = 0; sentences != NULL && i < sentences->len; i++)
    g_string_append_printf (text, "%s• %s", text->len > 0 ? "\n" : "",
                            (const char *) sentences->pdata[i]);
}

/* @answer: (nullable): what was made */
static void
show_why (BwWorkOut *self, const BwTubeAnswer *answer)
{
  GString *text = g_string_new (NULL);
  if (answer != NULL)
    append_points (text, answer->why);
  if (answer != NULL && answer->costs != NULL && answer->costs->len > 0)
    {
      g_string_append_printf (text, "\n%s", _ ("What it costs:"));
      append_points (text, answer->costs);
    }
  gtk_label_set_label (self->why, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->why), text->len > 0);
  g_string_free (text, TRUE);
}

/* Takes the figures of @raster in place of what is there; %NULL for none. */
static void
start_from (BwWorkOut *self, const BwRaster *raster, const BwTubeAnswer *answer)
{
  BwRaster *base = raster != NULL ? bw_raster_copy (raster) : NULL;
  guint32 redundant;

  g_clear_pointer (&self->base, bw_raster_free);
  g_clear_pointer (&self->base_id, g_free);
  self->base = base;
  self->solver = (BwSolver){ 0 };
  for (guint i = 0; i < BW_N_FIGURES; i++)
    bw_editor_row_reset (self->rows[i]);
  if (base != NULL)
    bw_solver_from_raster (&self->solver, base);
  self->before = self->solver;
  bw_solver_run (&self->before, &redundant, NULL);
  self->changed = FALSE;
  show_why (self, answer);
  solve (self, 0);
}

/* What tells an answer from the others: "15.734 kHz, 262 lines a field, 60.055 Hz". */
static char *
answer_text (const BwTubeAnswer *answer)
{
  BwRasterFigures f;
  char mark = bw_quantity_locale_mark ();

  bw_raster_figures (answer->raster, &f);
  g_autofree char *line_rate = bw_quantity_format (f.line_rate_hz, BW_DIMENSION_FREQUENCY, 5, mark);
  g_autofree char *field_rate
      = bw_quantity_format (f.field_rate_hz, BW_DIMENSION_FREQUENCY, 5, mark);
  return g_strdup_printf (_ ("%1$s, %2$.1f lines a field, %3$s"), line_rate, f.lines_per_field,
                          field_rate);
}

static void
show_others (BwWorkOut *self)
{
  guint n = self->answers != NULL ? self->answers->len : 0;
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (guint i = 0; i < n; i++)
    gtk_string_list_take (list, answer_text (self->answers->pdata[i]));
  gtk_drop_down_set_model (self->others, G_LIST_MODEL (list));
  gtk_widget_set_visible (self->others_row, n > 1);
}

static void
on_other (BwWorkOut *self)
{
  guint which = gtk_drop_down_get_selected (self->others);
  if (self->answers == NULL || which >= self->answers->len)
    return;
  const BwTubeAnswer *answer = self->answers->pdata[which];
  start_from (self, answer->raster, answer);
}

/* Forgets the answers, so that what is started from is not one of them. */
static void
forget_answers (BwWorkOut *self)
{
  g_clear_pointer (&self->answers, g_ptr_array_unref);
  show_others (self);
}

static void
on_made (BwWorkOut *self, GPtrArray *answers)
{
  forget_answers (self);
  self->answers = g_ptr_array_ref (answers);
  show_others (self);
  on_other (self);
}

static void
on_from_source (BwWorkOut *self)
{
  const BwRaster *raster = source_raster (self);
  forget_answers (self);
  start_from (self, raster, NULL);
  self->base_id = raster != NULL ? g_strdup (raster->id) : NULL;
}

static void
on_clear (BwWorkOut *self)
{
  forget_answers (self);
  start_from (self, NULL, NULL);
  gtk_widget_child_focus (GTK_WIDGET (self->rates), GTK_DIR_TAB_FORWARD);
}

/* Figures that were typed or computed stay when the sheet changes; those of the selected source
 * follow it. */
static void
on_document (BwWorkOut *self)
{
  const BwRaster *raster = source_raster (self);
  gboolean follows = !self->changed && (self->base == NULL || self->base_id != NULL);
  const char *id = raster != NULL ? raster->id : NULL;

  if (follows && (g_strcmp0 (id, self->base_id) != 0 || self->base == NULL))
    on_from_source (self);
  update_buttons (self);
}

/* What becomes of the raster */

static void
on_copy (BwWorkOut *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_modeline_format (self->raster, &error);
  show_fault (self, error != NULL ? error->message : NULL);
  if (text == NULL)
    return;
  g_autofree char *says = g_strdup_printf (_ ("Copied: %s"), text);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
  gtk_label_set_label (self->says, says);
}

static BwResult *
make_result (gpointer owner)
{
  BwWorkOut *self = owner;
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  BwSolver solver = self->solver;
  guint32 redundant = 0;
  bw_solver_run (&solver, &redundant, NULL);
  bw_solver_say (bw_result_root (result), &solver, redundant);
  return result;
}

static void
on_use (BwWorkOut *self)
{
  g_autoptr (GError) error = NULL;
  guint source = bw_document_get_source (self->document);

  if (!bw_document_use_raster (self->document, source, self->raster, &error))
    {
      show_fault (self, error->message);
      return;
    }
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  g_autofree char *says = g_strdup_printf (_ ("%1$s now has the raster %2$s"),
                                           bw_sheet_source (sheet, source)->name,
                                           source_raster (self)->name);
  gtk_label_set_label (self->says, says);
}

/* Widget */

static void
bw_work_out_dispose (GObject *object)
{
  g_clear_object (&BW_WORK_OUT (object)->document);
  bw_dispose_template (object, BW_TYPE_WORK_OUT);
  G_OBJECT_CLASS (bw_work_out_parent_class)->dispose (object);
}

static void
bw_work_out_finalize (GObject *object)
{
  BwWorkOut *self = BW_WORK_OUT (object);

  g_clear_pointer (&self->base, bw_raster_free);
  g_clear_pointer (&self->raster, bw_raster_free);
  g_clear_pointer (&self->answers, g_ptr_array_unref);
  g_free (self->base_id);
  for (guint i = 0; i < BW_N_FIGURES; i++)
    g_free (self->labels[i]);
  G_OBJECT_CLASS (bw_work_out_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  static const char *const starts[] = { "formula", "monitor", "modeline" };

  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, from);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, says);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, fault);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, why);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, use);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, copy);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, table);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, from_source);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, others_row);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, others);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, rates);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, line);
  gtk_widget_class_bind_template_child (widget_class, BwWorkOut, field);
  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    gtk_widget_class_bind_template_child_full (widget_class, starts[i], FALSE,
                                               G_STRUCT_OFFSET (BwWorkOut, starts)
                                                   + (gssize) (i * sizeof (GtkMenuButton *)));
}

static void
bw_work_out_class_init (BwWorkOutClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_work_out_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_work_out_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/work-out.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_from_source);
  gtk_widget_class_bind_template_callback (widget_class, on_clear);
  gtk_widget_class_bind_template_callback (widget_class, on_other);
  gtk_widget_class_bind_template_callback (widget_class, on_copy);
  gtk_widget_class_bind_template_callback (widget_class, on_use);
}

static void
add_figures (BwWorkOut *self, GtkBox *group, const BwFigure *figures, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      BwFigure figure = figures[i];
      BwField *description = &self->fields[figure];
      self->labels[figure] = capitalised (bw_kind_label (&bw_figures, figure));
      *description = (BwField){ .key = bw_figures.at[figure].id,
                                .label = self->labels[figure],
                                .type = BW_FIELD_TEXT };
      BwEditorRow *row = bw_form_row_new (description);
      g_autofree char *units = g_strdup_printf (_ ("Units: %s"),
                                                bw_quantity_units (bw_figure_dimension (figure)));
      gtk_widget_set_tooltip_text (bw_editor_row_get_control (row), units);
      g_signal_connect_object (row, "edited", G_CALLBACK (on_edited), self, G_CONNECT_SWAPPED);
      gtk_box_append (group, GTK_WIDGET (row));
      self->rows[figure] = row;
    }
}

static void
bw_work_out_init (BwWorkOut *self)
{
  g_type_ensure (BW_TYPE_COLUMNS_LAYOUT);
  g_type_ensure (BW_TYPE_READING_BOX);
  g_type_ensure (BW_TYPE_RESULT_HEAD);
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_label_control (GTK_WIDGET (self->others), gtk_widget_get_first_child (self->others_row));
  bw_name_buttons (GTK_WIDGET (self));
  bw_result_head_set_maker (self->table, make_result, self);
  add_figures (self, self->rates, rates, G_N_ELEMENTS (rates));
  add_figures (self, self->line, line, G_N_ELEMENTS (line));
  add_figures (self, self->field, field, G_N_ELEMENTS (field));
  self->interlaced = bw_form_row_new (&interlaced_field);
  g_signal_connect_object (self->interlaced, "edited", G_CALLBACK (on_interlaced), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (self->rates, GTK_WIDGET (self->interlaced));
}

/**
 * bw_work_out_set_document:
 * @document: whose selected source is started from; to be set once
 */
void
bw_work_out_set_document (BwWorkOut *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  for (BwStartKind kind = 0; kind < BW_N_STARTS; kind++)
    {
      BwRasterStart *start = bw_raster_start_new (kind, document);
      gtk_menu_button_set_popover (self->starts[kind], GTK_WIDGET (start));
      g_signal_connect_object (start, "made", G_CALLBACK (on_made), self, G_CONNECT_SWAPPED);
    }
  bw_document_follow (document, G_CALLBACK (on_document), self);
  on_from_source (self);
}

/* Getters: all (transfer none) */

BwEditorRow *
bw_work_out_get_row (BwWorkOut *self, BwFigure figure)
{
  return self->rows[figure];
}

BwRasterStart *
bw_work_out_get_start (BwWorkOut *self, BwStartKind kind)
{
  return BW_RASTER_START (gtk_menu_button_get_popover (self->starts[kind]));
}

const char *
bw_work_out_get_fault (BwWorkOut *self)
{
  return gtk_label_get_label (self->fault);
}

const char *
bw_work_out_get_says (BwWorkOut *self)
{
  return gtk_label_get_label (self->says);
}
