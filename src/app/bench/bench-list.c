/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench-list.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/context-menu.h"
#include "app/widgets/picker.h"
#include "app/widgets/template.h"
#include "bench-text.h"
#include "pick-lists.h"
#include "row-list.h"

/**
 * BwBenchList:
 *
 * The list of the inputs, or of the sources, with the buttons to add, duplicate, remove and edit.
 * In the list, Enter edits the selected one and Delete removes it.
 */
struct _BwBenchList
{
  GtkWidget parent_instance;

  GtkWidget *head;
  GtkLabel *title;
  GtkWidget *edit;
  GtkWidget *duplicate;
  GtkWidget *remove;
  GtkMenuButton *add;
  BwPicker *picker;
  BwRowList *list;
  GtkWidget *empty;

  BwDocument *document;
  BwPart part;
};

G_DEFINE_FINAL_TYPE (BwBenchList, bw_bench_list, GTK_TYPE_WIDGET)

enum
{
  EDIT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static guint
selected (BwBenchList *self)
{
  return self->part == BW_PART_INPUT ? bw_document_get_input (self->document)
                                     : bw_document_get_source (self->document);
}

static char *
dup_words (guint index, const char **name, gpointer owner)
{
  BwBenchList *self = owner;
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  if (self->part == BW_PART_INPUT)
    {
      const BwInput *input = bw_monitor_input (sheet->monitor, index);
      *name = input->name;
      return bw_input_words (input);
    }
  const BwSource *source = bw_sheet_source (sheet, index);
  *name = source->name;
  const BwRaster *raster = bw_sheet_raster (sheet, bw_document_get_catalogue (self->document),
                                            source);
  return g_strdup (raster != NULL ? raster->name : _ ("raster not known"));
}

static void
show_selection (BwBenchList *self)
{
  bw_row_list_select (self->list, selected (self));
}

static void
update (BwBenchList *self)
{
  guint count = bw_document_count (self->document, self->part);
  guint most = self->part == BW_PART_INPUT ? BW_SHEET_MAX_INPUTS : BW_SHEET_MAX_SOURCES;
  gboolean blank = bw_document_is_blank (self->document);

  show_selection (self);
  bw_row_list_show (self->list, count);
  gtk_widget_set_visible (GTK_WIDGET (self->list), count > 0);
  gtk_widget_set_visible (self->empty, count == 0);
  gtk_widget_set_sensitive (self->edit, count > 0);
  gtk_widget_set_sensitive (self->remove, count > 0);
  gtk_widget_set_sensitive (self->duplicate, count > 0 && count < most);
  gtk_widget_set_sensitive (GTK_WIDGET (self->add), !blank && count < most);
}

/* What the person does */

static void
on_row_selected (BwBenchList *self, guint index)
{
  gboolean input = self->part == BW_PART_INPUT;
  bw_document_select (self->document, input ? bw_document_get_source (self->document) : index,
                      input ? index : bw_document_get_input (self->document));
}

static void
on_edit (BwBenchList *self)
{
  if (selected (self) != BW_NO_INDEX)
    g_signal_emit (self, signals[EDIT], 0);
}

static void
on_duplicate (BwBenchList *self)
{
  if (selected (self) != BW_NO_INDEX)
    bw_document_duplicate (self->document, self->part, selected (self), NULL);
}

static gboolean
remove_selected (BwBenchList *self)
{
  return selected (self) != BW_NO_INDEX
         && bw_document_remove (self->document, self->part, selected (self));
}

static void
on_remove (BwBenchList *self)
{
  remove_selected (self);
}

/* What the menu of the list does */

static gboolean
is_any_selected (gpointer self)
{
  return selected (self) != BW_NO_INDEX;
}

static gboolean
can_duplicate (gpointer self)
{
  return gtk_widget_get_sensitive (BW_BENCH_LIST (self)->duplicate);
}

static void
on_menu_edit (gpointer self)
{
  on_edit (self);
}

static void
on_menu_duplicate (gpointer self)
{
  on_duplicate (self);
}

static void
on_menu_remove (gpointer self)
{
  remove_selected (self);
}

static const BwContextItem menu_items[] = {
  { N_ ("_Edit"), on_menu_edit, is_any_selected },
  { N_ ("_Duplicate"), on_menu_duplicate, can_duplicate },
  { N_ ("_Remove"), on_menu_remove, is_any_selected },
};

/* The menu is for the row under the pointer. */
static void
on_menu_point (gpointer self, double x, double y)
{
  bw_row_list_choose_at (BW_BENCH_LIST (self)->list, y);
}

static gboolean
on_list_key (BwBenchList *self, guint keyval)
{
  if (keyval != GDK_KEY_Delete && keyval != GDK_KEY_KP_Delete)
    return GDK_EVENT_PROPAGATE;
  if (remove_selected (self))
    bw_bench_list_focus_selected (self);
  return GDK_EVENT_STOP;
}

static BwInput *
new_input (BwPickItem *item)
{
  gconstpointer like = bw_pick_item_get_thing (item);
  if (like != NULL)
    return bw_input_copy (like);
  return bw_pick_item_is_blank (item) ? bw_blank_input_new () : bw_plain_input_new ();
}

static BwSource *
new_source (BwBenchList *self, BwPickItem *item)
{
  gconstpointer like = bw_pick_item_get_thing (item);
  if (like != NULL)
    return bw_source_copy (like);
  if (bw_pick_item_is_blank (item))
    return bw_blank_source_new ();
  return bw_plain_source_new (bw_document_get_sheet (self->document));
}

/* What is taken from the catalogue, and a plain one, has the figures of a class. A plain one and a
 * blank one are only a start: the form is opened at once. */
static void
on_picked (BwBenchList *self, BwPickItem *item)
{
  gboolean added;

  if (self->part == BW_PART_INPUT)
    {
      g_autoptr (BwInput) start = new_input (item);
      bw_fields_set_origins (&bw_input_fields, start, BW_ORIGIN_CLASS);
      added = bw_document_add_input (self->document, start, NULL);
    }
  else
    {
      g_autoptr (BwSource) start = new_source (self, item);
      bw_fields_set_origins (&bw_source_fields, start, BW_ORIGIN_CLASS);
      added = bw_document_add_source (self->document, start, NULL);
    }
  if (!added)
    return;
  if (bw_pick_item_get_thing (item) == NULL)
    g_signal_emit (self, signals[EDIT], 0);
  else
    bw_bench_list_focus_selected (self);
}

/* The list is one stop of the Tab key, at its selected row: a row that gets the focus is selected. */
static gboolean
bw_bench_list_focus (GtkWidget *widget, GtkDirectionType direction)
{
  BwBenchList *self = BW_BENCH_LIST (widget);
  gboolean tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;

  if (tab && bw_has_focus_within (GTK_WIDGET (self->list)))
    return direction == GTK_DIR_TAB_BACKWARD && gtk_widget_child_focus (self->head, direction);
  return GTK_WIDGET_CLASS (bw_bench_list_parent_class)->focus (widget, direction);
}

static void
bw_bench_list_dispose (GObject *object)
{
  g_clear_object (&BW_BENCH_LIST (object)->document);
  bw_dispose_template (object, BW_TYPE_BENCH_LIST);
  G_OBJECT_CLASS (bw_bench_list_parent_class)->dispose (object);
}

static void
bw_bench_list_class_init (BwBenchListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_bench_list_dispose;
  widget_class->focus = bw_bench_list_focus;

  /* BwBenchList::edit: the selected one is to be edited. */
  signals[EDIT] = g_signal_new ("edit", BW_TYPE_BENCH_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/bench-list.ui");
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, head);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, title);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, edit);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, duplicate);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, remove);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, add);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, picker);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, list);
  gtk_widget_class_bind_template_child (widget_class, BwBenchList, empty);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_edit);
  gtk_widget_class_bind_template_callback (widget_class, on_duplicate);
  gtk_widget_class_bind_template_callback (widget_class, on_remove);
  gtk_widget_class_bind_template_callback (widget_class, on_list_key);
  gtk_widget_class_bind_template_callback (widget_class, on_picked);
}

static void
bw_bench_list_init (BwBenchList *self)
{
  g_type_ensure (BW_TYPE_PICKER);
  g_type_ensure (BW_TYPE_ROW_LIST);
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_context_menu_add (GTK_WIDGET (self->list), menu_items, G_N_ELEMENTS (menu_items),
                       on_menu_point, self);
}

/* Names a button for people who see it and for those who do not. */
static void
name_button (GtkWidget *button, const char *words)
{
  gtk_widget_set_tooltip_text (button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
}

static void
name_all (BwBenchList *self)
{
  gboolean input = self->part == BW_PART_INPUT;
  const char *title = input ? _ ("Inputs") : _ ("Sources");

  gtk_label_set_label (self->title, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  -1);
  gtk_label_set_label (GTK_LABEL (self->empty), _ ("None yet."));
  name_button (self->edit, input ? _ ("Edit Input") : _ ("Edit Source"));
  name_button (self->duplicate, input ? _ ("Duplicate Input") : _ ("Duplicate Source"));
  name_button (self->remove, input ? _ ("Remove Input") : _ ("Remove Source"));
  name_button (GTK_WIDGET (self->add), input ? _ ("Add Input") : _ ("Add Source"));
}

/**
 * bw_bench_list_set_up:
 * @document: what to show; to be set once
 * @part: %BW_PART_INPUT or %BW_PART_SOURCE
 */
void
bw_bench_list_set_up (BwBenchList *self, BwDocument *document, BwPart part)
{
  const BwCatalogue *catalogue = bw_document_get_catalogue (document);

  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  self->part = part;
  name_all (self);
  bw_picker_set_list (self->picker,
                      part == BW_PART_INPUT ? bw_pick_list_inputs : bw_pick_list_sources,
                      catalogue);
  bw_row_list_set_says (self->list, dup_words, self);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (show_selection), self,
                           G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_bench_list_pick:
 *
 * Opens the list of what can be added.
 */
void
bw_bench_list_pick (BwBenchList *self)
{
  gtk_menu_button_popup (self->add);
}

/**
 * bw_bench_list_focus_selected:
 *
 * Moves the focus to the selected row.
 */
void
bw_bench_list_focus_selected (BwBenchList *self)
{
  bw_row_list_focus_selected (self->list);
}
