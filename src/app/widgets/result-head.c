/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result-head.h"

#include "context-menu.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/**
 * BwResultHead:
 *
 * The heading of a result, with what it can be taken away by: “Copy” puts it on the clipboard as
 * text, with tabs and as HTML; “Export” hands it to the window to be written into a file.
 */
struct _BwResultHead
{
  GtkWidget parent_instance;

  GtkLabel *title; /* a child, as the buttons are */

  BwResult *result; /* nullable */
  BwResultMaker maker;
  gpointer owner;
};

G_DEFINE_FINAL_TYPE (BwResultHead, bw_result_head, GTK_TYPE_WIDGET)

enum
{
  PROP_TITLE = 1,
  PROP_SHOWS_TITLE,
  N_PROPERTIES
};

static GParamSpec *properties[N_PROPERTIES];

/* Copying and exporting */

#define TEXT_COLUMNS 100

/* The result that is copied or exported; made now if a maker was set. */
static const BwNode *
wanted (BwResultHead *self)
{
  if (self->maker != NULL)
    bw_result_head_set_result (self, self->maker (self->owner));
  return self->result != NULL ? bw_result_root (self->result) : NULL;
}

static GdkContentProvider *
provider_for (const char *type, char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new_take (text, strlen (text));
  return gdk_content_provider_new_for_bytes (type, bytes);
}

/* Returns: (transfer full) (nullable): the result for the clipboard and for dragging */
static GdkContentProvider *
dup_content (BwResultHead *self)
{
  const BwNode *root = wanted (self);
  if (root == NULL)
    return NULL;
  g_autofree char *text = bw_node_to_text (root, TEXT_COLUMNS, FALSE);
  GdkContentProvider *forms[] = {
    gdk_content_provider_new_typed (G_TYPE_STRING, text),
    provider_for ("text/html", bw_node_to_html (root)),
    provider_for ("text/tab-separated-values", bw_node_to_tsv (root)),
  };
  return gdk_content_provider_new_union (forms, G_N_ELEMENTS (forms));
}

static void
copy (GtkWidget *widget, const char *action, GVariant *parameter)
{
  g_autoptr (GdkContentProvider) content = dup_content (BW_RESULT_HEAD (widget));
  if (content != NULL)
    gdk_clipboard_set_content (gtk_widget_get_clipboard (widget), content);
}

/* The window knows where files are chosen and faults are shown. */
static void export(GtkWidget *widget, const char *action, GVariant *parameter)
{
  const BwNode *root = wanted (BW_RESULT_HEAD (widget));
  if (root == NULL)
    return;
  g_autofree char *csv = bw_node_to_csv (root);
  g_autofree char *tsv = bw_node_to_tsv (root);
  g_autofree char *html = bw_node_to_html (root);
  gtk_widget_activate_action (widget, "win.export-table", "(ssss)",
                              gtk_label_get_label (BW_RESULT_HEAD (widget)->title), csv, tsv, html);
}

/* What the menu of the table does */

static void
on_menu_copy (gpointer self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "result.copy", NULL);
}

static void
on_menu_export (gpointer self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "result.export", NULL);
}

static const BwContextItem menu_items[] = {
  { N_ ("_Copy as Text and Table"), on_menu_copy, NULL },
  { N_ ("_Export the Table…"), on_menu_export, NULL },
};

/**
 * bw_result_head_add_menu:
 * @table: what shows the result
 *
 * Gives @table a menu that copies and exports the result.
 */
void
bw_result_head_add_menu (BwResultHead *self, GtkWidget *table)
{
  g_return_if_fail (BW_IS_RESULT_HEAD (self) && GTK_IS_WIDGET (table));
  bw_context_menu_add (table, menu_items, G_N_ELEMENTS (menu_items), NULL, self);
}

/* Widget */

static void
bw_result_head_set_property (GObject *object, guint id, const GValue *value, GParamSpec *spec)
{
  BwResultHead *self = BW_RESULT_HEAD (object);
  switch (id)
    {
    case PROP_TITLE:
      gtk_label_set_label (self->title, g_value_get_string (value));
      break;
    case PROP_SHOWS_TITLE:
      gtk_widget_set_visible (GTK_WIDGET (self->title), g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
    }
}

static void
bw_result_head_dispose (GObject *object)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bw_result_head_parent_class)->dispose (object);
}

static void
bw_result_head_finalize (GObject *object)
{
  g_clear_pointer (&BW_RESULT_HEAD (object)->result, bw_result_free);
  G_OBJECT_CLASS (bw_result_head_parent_class)->finalize (object);
}

static void
bw_result_head_class_init (BwResultHeadClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = bw_result_head_set_property;
  object_class->dispose = bw_result_head_dispose;
  object_class->finalize = bw_result_head_finalize;
  /* BwResultHead:title: the heading, and what an exported file is called. */
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL,
                                                G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  /* BwResultHead:shows-title: whether the heading is seen, and not the buttons alone. */
  properties[PROP_SHOWS_TITLE] = g_param_spec_boolean ("shows-title", NULL, NULL, TRUE,
                                                       G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
  gtk_widget_class_install_action (widget_class, "result.copy", NULL, copy);
  gtk_widget_class_install_action (widget_class, "result.export", NULL, export);
  gtk_widget_class_set_css_name (widget_class, "bw-result-head");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
add_button (BwResultHead *self, const char *name, const char *icon, const char *words,
            const char *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);
  gtk_widget_set_name (button, name);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
}

static void
bw_result_head_init (BwResultHead *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 2);
  self->title = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->title, 0);
  gtk_label_set_wrap (self->title, TRUE);
  gtk_label_set_wrap_mode (self->title, PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (GTK_WIDGET (self->title), TRUE);
  gtk_widget_set_parent (GTK_WIDGET (self->title), GTK_WIDGET (self));
  GtkDragSource *source = gtk_drag_source_new ();
  g_signal_connect_swapped (source, "prepare", G_CALLBACK (dup_content), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (source));
  bw_result_head_add_menu (self, GTK_WIDGET (self));
  add_button (self, "copy-result", "edit-copy-symbolic", _ ("Copy as Text and Table"),
              "result.copy");
  add_button (self, "export-result", "document-save-as-symbolic", _ ("Export the Table…"),
              "result.export");
}

/**
 * bw_result_head_set_result:
 * @result: (transfer full) (nullable): what can be copied and exported
 */
void
bw_result_head_set_result (BwResultHead *self, BwResult *result)
{
  g_return_if_fail (BW_IS_RESULT_HEAD (self));
  g_clear_pointer (&self->result, bw_result_free);
  self->result = result;
}

/**
 * bw_result_head_get_result:
 *
 * Returns: (transfer none) (nullable): what was last set or made
 */
BwResult *
bw_result_head_get_result (BwResultHead *self)
{
  g_return_val_if_fail (BW_IS_RESULT_HEAD (self), NULL);
  return self->result;
}

/**
 * bw_result_head_set_maker:
 * @owner: what @maker is called with; it must live as long as @self
 *
 * Has the result made by @maker each time it is wanted.
 */
void
bw_result_head_set_maker (BwResultHead *self, BwResultMaker maker, gpointer owner)
{
  g_return_if_fail (BW_IS_RESULT_HEAD (self) && maker != NULL);
  self->maker = maker;
  self->owner = owner;
}
