/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench-panel.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/picker.h"
#include "app/widgets/result-view.h"
#include "app/widgets/template.h"
#include "bench-text.h"
#include "core/fit/results.h"
#include "pick-lists.h"

/**
 * BwBenchPanel:
 *
 * The bench: the sheet's title, the monitor with its key figures, its inputs and the sources.
 */
struct _BwBenchPanel
{
  GtkWidget parent_instance;

  GtkLabel *title;
  GtkLabel *note;
  GtkWidget *edit_sheet;
  GtkWidget *no_monitor;
  BwResultView *figures;
  GtkWidget *edit_monitor;
  GtkMenuButton *choose;
  BwPicker *picker;
  BwBenchList *inputs;
  BwBenchList *sources;

  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwBenchPanel, bw_bench_panel, GTK_TYPE_WIDGET)

enum
{
  EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static char *
quantity_words (double value, BwDimension dimension)
{
  if (value > 0)
    return bw_quantity_format (value, dimension, 4, bw_quantity_locale_mark ());
  return g_strdup ("");
}

static char *
supply_words (const BwSheet *sheet)
{
  g_autofree char *volts = quantity_words (sheet->supply_v, BW_DIMENSION_VOLTAGE);
  g_autofree char *hertz = quantity_words (sheet->supply_hz, BW_DIMENSION_FREQUENCY);
  gboolean both = *volts != '\0' && *hertz != '\0';
  return g_strjoin (both ? ", " : "", volts, hertz, NULL);
}

static void
add_figure (BwNode *figures, const char *name, char *words)
{
  const char *said = bw_node_take (figures, words);
  bw_node_figure (figures, name, bw_value_says (NULL, *said != '\0' ? said : _ ("not known")));
}

static void
show_figures (BwBenchPanel *self, const BwSheet *sheet)
{
  const BwMonitor *monitor = sheet->monitor;
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  BwNode *figures = bw_result_root (result);

  add_figure (figures, _ ("Mains"), bw_monitor_mains_words (monitor));
  add_figure (figures, _ ("Mains here"), supply_words (sheet));
  bw_mains_say (figures, monitor, sheet->supply_v, sheet->supply_hz); /* if anything is wrong */
  add_figure (figures, _ ("Tube"), bw_monitor_tube_words (monitor));
  add_figure (figures, _ ("Line rates"),
              bw_bands_words (&monitor->line_rates_hz, BW_DIMENSION_FREQUENCY));
  add_figure (figures, _ ("Field rates"),
              bw_bands_words (&monitor->field_rates_hz, BW_DIMENSION_FREQUENCY));
  add_figure (figures, _ ("Bandwidth"),
              quantity_words (monitor->bandwidth_hz, BW_DIMENSION_FREQUENCY));
  g_object_set (self->figures, "title", monitor->name, NULL);
  bw_result_view_show (self->figures, result);
}

static void
update (BwBenchPanel *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  gboolean blank = bw_document_is_blank (self->document);

  gtk_label_set_label (self->title, sheet->title);
  gtk_label_set_label (self->note, sheet->note);
  gtk_widget_set_visible (GTK_WIDGET (self->note), *sheet->note != '\0');
  gtk_widget_set_visible (self->no_monitor, blank);
  gtk_widget_set_visible (GTK_WIDGET (self->figures), !blank);
  gtk_widget_set_sensitive (self->edit_monitor, !blank);
  show_figures (self, sheet);
}

static void
emit_edit (BwBenchPanel *self, BwPart part)
{
  g_signal_emit (self, signals[EDIT], 0, (int) part);
}

static void
on_edit_sheet (BwBenchPanel *self)
{
  emit_edit (self, BW_PART_SHEET);
}

static void
on_edit_monitor (BwBenchPanel *self)
{
  emit_edit (self, BW_PART_MONITOR);
}

static void
on_edit_input (BwBenchPanel *self)
{
  emit_edit (self, BW_PART_INPUT);
}

static void
on_edit_source (BwBenchPanel *self)
{
  emit_edit (self, BW_PART_SOURCE);
}

static void
on_monitor_picked (BwBenchPanel *self, BwPickItem *item)
{
  gconstpointer like = bw_pick_item_get_thing (item);
  g_autoptr (BwMonitor) monitor = like != NULL ? bw_monitor_copy (like) : bw_blank_monitor_new ();

  /* A class of the catalogue; a display says itself where it has what from. */
  if (monitor->id != NULL)
    bw_monitor_set_origins (monitor, BW_ORIGIN_CLASS);
  if (bw_document_set_monitor (self->document, monitor) && like == NULL)
    emit_edit (self, BW_PART_MONITOR);
}

static void
bw_bench_panel_dispose (GObject *object)
{
  g_clear_object (&BW_BENCH_PANEL (object)->document);
  bw_dispose_template (object, BW_TYPE_BENCH_PANEL);
  G_OBJECT_CLASS (bw_bench_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, title);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, note);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, edit_sheet);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, no_monitor);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, figures);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, edit_monitor);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, choose);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, picker);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, inputs);
  gtk_widget_class_bind_template_child (widget_class, BwBenchPanel, sources);
}

static void
bw_bench_panel_class_init (BwBenchPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_bench_panel_dispose;

  /* BwBenchPanel::edit: a part (BwPart) is to be edited: of inputs and sources the selected one. */
  signals[EDIT] = g_signal_new ("edit", BW_TYPE_BENCH_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_INT);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/bench-panel.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_edit_sheet);
  gtk_widget_class_bind_template_callback (widget_class, on_edit_monitor);
  gtk_widget_class_bind_template_callback (widget_class, on_edit_input);
  gtk_widget_class_bind_template_callback (widget_class, on_edit_source);
  gtk_widget_class_bind_template_callback (widget_class, on_monitor_picked);
}

static void
bw_bench_panel_init (BwBenchPanel *self)
{
  g_type_ensure (BW_TYPE_BENCH_LIST);
  g_type_ensure (BW_TYPE_RESULT_VIEW);
  g_type_ensure (BW_TYPE_PICKER);
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_bench_panel_set_document:
 * @document: what to show; to be set once
 */
void
bw_bench_panel_set_document (BwBenchPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  bw_picker_set_list (self->picker, bw_pick_list_monitors, bw_document_get_catalogue (document));
  bw_bench_list_set_up (self->inputs, document, BW_PART_INPUT);
  bw_bench_list_set_up (self->sources, document, BW_PART_SOURCE);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_bench_panel_choose_monitor:
 *
 * Opens the list of monitors.
 */
void
bw_bench_panel_choose_monitor (BwBenchPanel *self)
{
  gtk_menu_button_popup (self->choose);
}

/**
 * bw_bench_panel_get_list:
 * @part: %BW_PART_INPUT or %BW_PART_SOURCE
 *
 * Returns: (transfer none): the list of them
 */
BwBenchList *
bw_bench_panel_get_list (BwBenchPanel *self, BwPart part)
{
  return part == BW_PART_INPUT ? self->inputs : self->sources;
}

/**
 * bw_bench_panel_focus_part:
 *
 * Moves the focus to where @part is edited from.
 */
void
bw_bench_panel_focus_part (BwBenchPanel *self, BwPart part)
{
  if (part == BW_PART_SHEET)
    gtk_widget_grab_focus (self->edit_sheet);
  else if (part == BW_PART_MONITOR)
    gtk_widget_grab_focus (self->edit_monitor);
  else
    bw_bench_list_focus_selected (bw_bench_panel_get_list (self, part));
}
