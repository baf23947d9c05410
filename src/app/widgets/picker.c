/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picker.h"

/**
 * BwPicker:
 *
 * A popover with a list and a field that searches it. Typing narrows the list, Enter takes the
 * first match, the arrow keys walk it.
 */
struct _BwPicker
{
  GtkPopover parent_instance;

  GtkSearchEntry *search;
  GtkStack *stack;
  GtkListView *list;
  GtkSingleSelection *selection;
  GtkFilterListModel *matches;
  GtkCustomFilter *filter;

  GStrv words; /* casefolded; nullable */

  BwPickListFunc make_list;     /* nullable: called when the picker is first shown */
  const BwCatalogue *catalogue; /* borrowed; nullable */
};

G_DEFINE_FINAL_TYPE (BwPicker, bw_picker, GTK_TYPE_POPOVER)

enum
{
  PICKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static gboolean
item_matches (gpointer item, gpointer user_data)
{
  BwPicker *self = BW_PICKER (user_data);
  return self->words == NULL
         || bw_pick_item_matches (BW_PICK_ITEM (item), (const char *const *) self->words);
}

static void
update_stack (BwPicker *self)
{
  guint found = g_list_model_get_n_items (G_LIST_MODEL (self->matches));
  gtk_stack_set_visible_child_name (self->stack, found > 0 ? "list" : "nothing");
}

static void
on_search_changed (BwPicker *self)
{
  g_autofree char *folded = g_utf8_casefold (gtk_editable_get_text (GTK_EDITABLE (self->search)),
                                             -1);

  g_strfreev (self->words);
  self->words = g_strsplit (g_strstrip (folded), " ", -1);
  gtk_filter_changed (GTK_FILTER (self->filter), GTK_FILTER_CHANGE_DIFFERENT);
  update_stack (self);
}

static void
pick (BwPicker *self, guint position)
{
  g_autoptr (BwPickItem) item = g_list_model_get_item (G_LIST_MODEL (self->selection), position);
  if (item == NULL)
    return;
  gtk_popover_popdown (GTK_POPOVER (self));
  g_signal_emit (self, signals[PICKED], 0, item);
}

static void
on_list_activate (BwPicker *self, guint position)
{
  pick (self, position);
}

static void
on_search_activate (BwPicker *self)
{
  on_search_changed (self); /* the signal comes late */
  pick (self, gtk_single_selection_get_selected (self->selection));
}

static gboolean
on_search_key (BwPicker *self, guint keyval)
{
  if (keyval != GDK_KEY_Down && keyval != GDK_KEY_KP_Down)
    return GDK_EVENT_PROPAGATE;
  gtk_widget_grab_focus (GTK_WIDGET (self->list));
  return GDK_EVENT_STOP;
}

static void
on_stop_search (BwPicker *self)
{
  gtk_popover_popdown (GTK_POPOVER (self));
}

/* Lines of the list */

static GtkWidget *
line_label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 34);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 34);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
on_line_setup (BwPicker *self, GtkListItem *line)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (box), line_label_new (NULL));
  gtk_box_append (GTK_BOX (box), line_label_new ("bw-light"));
  gtk_list_item_set_child (line, box);
}

static void
on_line_bind (BwPicker *self, GtkListItem *line)
{
  BwPickItem *item = gtk_list_item_get_item (line);
  GtkWidget *title = gtk_widget_get_first_child (gtk_list_item_get_child (line));
  GtkWidget *subtitle = gtk_widget_get_next_sibling (title);
  const char *words = bw_pick_item_get_subtitle (item);

  gtk_label_set_label (GTK_LABEL (title), bw_pick_item_get_title (item));
  gtk_label_set_label (GTK_LABEL (subtitle), words);
  gtk_widget_set_visible (subtitle, *words != '\0');
}

static void
bw_picker_show (GtkWidget *widget)
{
  BwPicker *self = BW_PICKER (widget);

  if (self->make_list != NULL)
    {
      g_autoptr (GListModel) items = self->make_list (self->catalogue);
      self->make_list = NULL;
      bw_picker_set_items (self, items);
    }
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  GTK_WIDGET_CLASS (bw_picker_parent_class)->show (widget);
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

static void
bw_picker_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BW_TYPE_PICKER);
  G_OBJECT_CLASS (bw_picker_parent_class)->dispose (object);
}

static void
bw_picker_finalize (GObject *object)
{
  g_strfreev (BW_PICKER (object)->words);
  G_OBJECT_CLASS (bw_picker_parent_class)->finalize (object);
}

static void
bw_picker_class_init (BwPickerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_picker_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_picker_finalize;
  widget_class->show = bw_picker_show;

  /* BwPicker::picked: a line has been taken; the list is closed. */
  signals[PICKED] = g_signal_new ("picked", BW_TYPE_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, BW_TYPE_PICK_ITEM);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/breezeway/Breezeway/picker.ui");
  gtk_widget_class_bind_template_child (widget_class, BwPicker, search);
  gtk_widget_class_bind_template_child (widget_class, BwPicker, stack);
  gtk_widget_class_bind_template_child (widget_class, BwPicker, list);
  gtk_widget_class_bind_template_child (widget_class, BwPicker, selection);
  gtk_widget_class_bind_template_child (widget_class, BwPicker, matches);
  gtk_widget_class_bind_template_callback (widget_class, on_search_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_search_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_search_key);
  gtk_widget_class_bind_template_callback (widget_class, on_stop_search);
  gtk_widget_class_bind_template_callback (widget_class, on_list_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_line_setup);
  gtk_widget_class_bind_template_callback (widget_class, on_line_bind);
}

static void
bw_picker_init (BwPicker *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->filter = gtk_custom_filter_new (item_matches, self, NULL);
  gtk_filter_list_model_set_filter (self->matches, GTK_FILTER (self->filter));
  g_object_unref (self->filter); /* the model holds it */
}

/**
 * bw_picker_new:
 *
 * Returns: (transfer floating): a picker with nothing to pick from
 */
GtkWidget *
bw_picker_new (void)
{
  return g_object_new (BW_TYPE_PICKER, NULL);
}

/**
 * bw_picker_set_items:
 * @items: (element-type BwPickItem): what to pick from
 */
void
bw_picker_set_items (BwPicker *self, GListModel *items)
{
  gtk_filter_list_model_set_model (self->matches, items);
  update_stack (self);
}

/**
 * bw_picker_set_list:
 * @list: called with @catalogue when the picker is first shown
 * @catalogue: borrowed; must outlive the picker
 *
 * Says what to pick from, without making it before somebody wants to pick.
 */
void
bw_picker_set_list (BwPicker *self, BwPickListFunc list, const BwCatalogue *catalogue)
{
  g_return_if_fail (BW_IS_PICKER (self) && list != NULL && catalogue != NULL);
  self->make_list = list;
  self->catalogue = catalogue;
}
