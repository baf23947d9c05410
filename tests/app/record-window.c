/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window/application.h"

#include <stdlib.h>
#include <string.h>

#include <libintl.h>

/* Writes down what each page of the window is to a screen reader, for tests/recording.py:
 *
 *     record-window FOLDER SHEET CELLS
 *
 * SHEET is opened as a user opens it. CELLS is a number: so many cells are selected one after the
 * other, along the diagonal of the table. For each of them FOLDER receives one text file for each
 * page and for each view of it, with one line for each widget, and the drawing of that view as SVG.
 * BW_TEST_LOCALE is a folder of translations, which LANGUAGE then chooses from. With CELLS 0 the
 * whole window is explored with its first cell: each list's every choice, each form, and each
 * window that an action opens.
 *
 * Nothing here knows a page or a widget by name, so that this goes on working while pages are
 * rewritten: pages, parts, views and lists are found by what kind of GTK widget they are. What it
 * asks of the program besides actions is in export_picture() alone. */

/* What is drawn and computed must have come to rest: so many looks in a row see the same. What is
 * computed beside shows its progress only when it has taken a while, so they last longer than that
 * while. */
#define LOOKS 7
#define LOOK_MS 50
#define PATIENCE_LOOKS 400

/* A list of more choices than these (of all rasters, say) is gone through no further. */
#define MOST_CHOICES 9

/**
 * Recorder:
 * @folder: where files go
 * @window: that of the sheet
 * @prefix: what all names of files begin with: the cell, or empty
 * @explores: whether the choices of lists are gone through as well
 */
typedef struct
{
  const char *folder;
  GtkWindow *window;
  const char *prefix;
  gboolean explores;
} Recorder;

/* One line for each widget */

static void
add_quoted (GString *line, const char *key, const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "\n", -1);
  g_autofree char *flat = g_strjoinv ("\\n", parts);
  g_string_append_printf (line, " %s“%s”", key, flat);
}

/* No label of the program: asking whether a widget is called this tells what it is called. */
#define NOT_ITS_NAME "\x01"

static void
add_property (GString *line, GtkWidget *widget, const char *key, GtkAccessibleProperty property)
{
  if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), property))
    return;
  g_autofree char *is = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), property,
                                                            NOT_ITS_NAME);
  if (is != NULL && *is != '\0')
    add_quoted (line, key, is);
}

/* The text that the widget itself shows. */
static void
add_text (GString *line, GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget)
      && !gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    add_quoted (line, "", gtk_label_get_text (GTK_LABEL (widget)));
  else if (GTK_IS_TEXT (widget) || GTK_IS_ENTRY (widget))
    add_quoted (line, "text=", gtk_editable_get_text (GTK_EDITABLE (widget)));
  else if (GTK_IS_TEXT_VIEW (widget))
    {
      g_autofree char *text = NULL;
      g_object_get (gtk_text_view_get_buffer (GTK_TEXT_VIEW (widget)), "text", &text, NULL);
      add_quoted (line, "text=", text);
    }
  else if (GTK_IS_RANGE (widget))
    g_string_append_printf (line, " value=%g", gtk_range_get_value (GTK_RANGE (widget)));
  else if (GTK_IS_IMAGE (widget) && gtk_image_get_icon_name (GTK_IMAGE (widget)) != NULL)
    add_quoted (line, "icon=", gtk_image_get_icon_name (GTK_IMAGE (widget)));
}

static const char *
state_word (GtkWidget *widget)
{
  if (GTK_IS_TOGGLE_BUTTON (widget))
    return gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (widget)) ? " pressed" : NULL;
  if (GTK_IS_CHECK_BUTTON (widget))
    return gtk_check_button_get_active (GTK_CHECK_BUTTON (widget)) ? " checked" : NULL;
  if (GTK_IS_SWITCH (widget))
    return gtk_switch_get_active (GTK_SWITCH (widget)) ? " checked" : NULL;
  if (GTK_IS_EXPANDER (widget))
    return gtk_expander_get_expanded (GTK_EXPANDER (widget)) ? " expanded" : NULL;
  if (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_LIST_ITEM)
    return (gtk_widget_get_state_flags (widget) & GTK_STATE_FLAG_SELECTED) != 0 ? " selected"
                                                                                : NULL;
  return NULL;
}

static void
add_states (GString *line, GtkWidget *widget)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);
  const char *word = state_word (widget);

  if (word != NULL)
    g_string_append (line, word);
  if (gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY))
    g_string_append (line, " labelled");
  if (gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_DESCRIBED_BY))
    g_string_append (line, " described");
  if (gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_ERROR_MESSAGE))
    g_string_append (line, " wrong");
  if (GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget)
      && pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget))))
    g_string_append (line, " cut");
  if (!gtk_widget_get_sensitive (widget))
    g_string_append (line, " insensitive");
  if (gtk_widget_get_focusable (widget))
    g_string_append (line, " focusable");
}

static char *
role_word (GtkWidget *widget)
{
  g_autoptr (GEnumClass) roles = g_type_class_ref (GTK_TYPE_ACCESSIBLE_ROLE);
  GtkAccessibleRole role = gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget));
  GEnumValue *value = g_enum_get_value (roles, (int) role);
  return g_strdup (value != NULL ? value->value_nick : "?");
}

static void
add_menu (GString *tree, GMenuModel *menu, int depth)
{
  for (int i = 0; menu != NULL && i < g_menu_model_get_n_items (menu); i++)
    {
      g_autofree char *label = NULL;
      g_autofree char *action = NULL;
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) below = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SUBMENU);
      g_menu_model_get_item_attribute (menu, i, G_MENU_ATTRIBUTE_LABEL, "s", &label);
      g_menu_model_get_item_attribute (menu, i, G_MENU_ATTRIBUTE_ACTION, "s", &action);
      g_string_append_printf (tree, "%*smenu-item “%s” %s\n", 2 * depth, "",
                              label != NULL ? label : "", action != NULL ? action : "");
      add_menu (tree, section, depth + 1);
      add_menu (tree, below, depth + 1);
    }
}

static void
add_widget (GString *tree, GtkWidget *widget, int depth)
{
  g_autofree char *role = role_word (widget);
  const char *tooltip = gtk_widget_get_tooltip_text (widget);
  gboolean mapped = gtk_widget_get_mapped (widget);

  g_string_append_printf (tree, "%*s%s", 2 * depth, "", role);
  add_property (tree, widget, "", GTK_ACCESSIBLE_PROPERTY_LABEL);
  add_property (tree, widget, "description=", GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
  add_property (tree, widget, "value=", GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT);
  add_text (tree, widget);
  if (tooltip != NULL)
    add_quoted (tree, "tooltip=", tooltip);
  add_states (tree, widget);
  g_string_append_printf (tree, "%s (%s)\n", mapped ? "" : " hidden", G_OBJECT_TYPE_NAME (widget));
  if (GTK_IS_MENU_BUTTON (widget))
    add_menu (tree, gtk_menu_button_get_menu_model (GTK_MENU_BUTTON (widget)), depth + 1);
  /* What is not seen is not heard either. */
  for (GtkWidget *child = mapped ? gtk_widget_get_first_child (widget) : NULL; child != NULL;
       child = gtk_widget_get_next_sibling (child))
    add_widget (tree, child, depth + 1);
}

static char *
tree_of (GtkWidget *widget)
{
  GString *tree = g_string_new (NULL);
  add_widget (tree, widget, 0);
  return g_string_free (tree, FALSE);
}

/* Coming to rest */

static gboolean
on_tick (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
let_pass (guint ms)
{
  gboolean over = FALSE;
  g_timeout_add (ms, on_tick, &over);
  while (!over)
    g_main_context_iteration (NULL, TRUE);
}

static gboolean
is_busy (GtkWidget *widget)
{
  if (!gtk_widget_get_mapped (widget))
    return FALSE;
  if (GTK_IS_PROGRESS_BAR (widget) || GTK_IS_SPINNER (widget))
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_busy (child))
      return TRUE;
  return FALSE;
}

/* The tree below @widget once it no longer changes. */
static char *
settled_tree (GtkWidget *widget)
{
  char *before = tree_of (widget);
  guint alike = 0;

  for (guint looks = 0; alike < LOOKS && looks < PATIENCE_LOOKS; looks++)
    {
      let_pass (LOOK_MS);
      char *now = tree_of (widget);
      alike = strcmp (before, now) == 0 && !is_busy (widget) ? alike + 1 : 0;
      g_free (before);
      before = now;
    }
  if (alike < LOOKS)
    g_error ("the window does not come to rest");
  return before;
}

/* Files */

static char *
file_path (const Recorder *recorder, const char *name, const char *suffix)
{
  g_autofree char *stem = g_strconcat (recorder->prefix, name, NULL);
  g_strcanon (stem, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-+.", '_');
  g_autofree char *file = g_strconcat (stem, suffix, NULL);
  return g_build_filename (recorder->folder, file, NULL);
}

/* The drawing that the window would export now, if it stands inside of @page. */
static void
export_picture (const Recorder *recorder, GtkWidget *page, const char *name)
{
  BwPicturePanel *panel = bw_window_get_panel (BW_WINDOW (recorder->window));
  g_autofree char *path = file_path (recorder, name, ".svg");
  g_autoptr (GError) error = NULL;

  if (panel == NULL || !gtk_widget_is_ancestor (GTK_WIDGET (panel), page)
      || !gtk_widget_get_mapped (GTK_WIDGET (panel)) || !bw_picture_panel_has_picture (panel))
    return;
  if (!bw_picture_panel_export (panel, path, &error))
    g_error ("%s", error->message);
}

static void
record (const Recorder *recorder, GtkWidget *widget, const char *name)
{
  g_autofree char *tree = settled_tree (widget);
  g_autofree char *path = file_path (recorder, name, ".tree");
  g_autoptr (GError) error = NULL;

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    g_error ("%s: two views have the same name", path);
  if (!g_file_set_contents (path, tree, -1, &error))
    g_error ("%s", error->message);
  export_picture (recorder, widget, name);
}

/* Finding */

typedef gboolean (*IsWanted) (GtkWidget *widget);

static void
collect (GtkWidget *from, IsWanted is_wanted, GPtrArray *found)
{
  for (GtkWidget *child = gtk_widget_get_first_child (from); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      if (!gtk_widget_get_mapped (child))
        continue;
      if (is_wanted (child))
        g_ptr_array_add (found, g_object_ref (child));
      else
        collect (child, is_wanted, found);
    }
}

/* (element-type GtkWidget): all that are seen below @from, none inside of another. */
static GPtrArray *
all_seen (GtkWidget *from, IsWanted is_wanted)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (g_object_unref);
  collect (from, is_wanted, found);
  return found;
}

/* One of several toggles beside each other; the cells of the table do not stand in a box. */
static gboolean
is_view (GtkWidget *widget)
{
  return GTK_IS_TOGGLE_BUTTON (widget) && GTK_IS_BOX (gtk_widget_get_parent (widget))
         && gtk_widget_get_first_child (gtk_widget_get_parent (widget))
                != gtk_widget_get_last_child (gtk_widget_get_parent (widget))
         && gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) == NULL
         && gtk_widget_get_ancestor (widget, GTK_TYPE_MENU_BUTTON) == NULL;
}

static gboolean
is_drop_down (GtkWidget *widget)
{
  return GTK_IS_DROP_DOWN (widget);
}

/* Going through a page */

/* Each choice of each list of the page, the others as they were. */
static void
explore_lists (const Recorder *recorder, GtkWidget *page, const char *name)
{
  g_autoptr (GPtrArray) lists = all_seen (page, is_drop_down);

  for (guint i = 0; i < lists->len; i++)
    {
      GtkDropDown *list = lists->pdata[i];
      guint chosen = gtk_drop_down_get_selected (list);
      guint n = g_list_model_get_n_items (gtk_drop_down_get_model (list));
      for (guint choice = 0; choice < MIN (n, MOST_CHOICES); choice++)
        {
          g_autofree char *view = g_strdup_printf ("%s list %u choice %u", name, i + 1, choice + 1);
          if (choice == chosen || !gtk_widget_get_mapped (GTK_WIDGET (list))
              || !gtk_widget_is_sensitive (GTK_WIDGET (list)))
            continue;
          gtk_drop_down_set_selected (list, choice);
          record (recorder, page, view);
        }
      gtk_drop_down_set_selected (list, chosen);
    }
}

static void
record_view (const Recorder *recorder, GtkWidget *page, const char *name)
{
  record (recorder, page, name);
  if (recorder->explores)
    explore_lists (recorder, page, name);
}

static void
record_views (const Recorder *recorder, GtkWidget *page, const char *name)
{
  g_autoptr (GPtrArray) views = all_seen (page, is_view);

  for (guint i = 0; i < views->len; i++)
    {
      g_autofree char *view = g_strdup_printf ("%s view %u", name, i + 1);
      gtk_toggle_button_set_active (views->pdata[i], TRUE);
      record_view (recorder, page, view);
    }
  if (views->len == 0)
    record_view (recorder, page, name);
  else
    gtk_toggle_button_set_active (views->pdata[0], TRUE);
}

static void
record_pages (const Recorder *recorder)
{
  BwWindow *window = BW_WINDOW (recorder->window);
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  for (guint i = 0; i < n; i++)
    {
      bw_window_show_page (window, kinds[i].id);
      let_pass (LOOK_MS);
      record_views (recorder, GTK_WIDGET (bw_window_get_shown_page (window)), kinds[i].id);
    }
  bw_window_show_page (window, kinds[0].id);
}

/* The window */

/* Selects row @n of list @list, counted round. */
static void
record_cells (Recorder *recorder, guint cells)
{
  for (guint n = 0; n < cells; n++)
    {
      g_autofree char *prefix = g_strdup_printf ("cell-%u-", n + 1);
      BwDocument *document = bw_window_get_document (BW_WINDOW (recorder->window));
      guint sources = bw_document_count (document, BW_PART_SOURCE);
      guint inputs = bw_document_count (document, BW_PART_INPUT);
      bw_document_select (document, sources > 0 ? n % sources : 0, inputs > 0 ? n % inputs : 0);
      recorder->prefix = prefix;
      record_pages (recorder);
      recorder->prefix = "";
    }
}

static gboolean
is_open (gpointer window)
{
  GListModel *windows = gtk_window_get_toplevels ();
  gboolean found = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GObject) other = g_list_model_get_object (windows, i);
      found = found || other == window;
    }
  return found;
}

/* The one window besides that of the sheet, or NULL. */
static GtkWindow *
other_window (const Recorder *recorder)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GObject) other = g_list_model_get_object (windows, i);
      if (other != G_OBJECT (recorder->window) && gtk_widget_get_mapped (GTK_WIDGET (other)))
        return GTK_WINDOW (other);
    }
  return NULL;
}

/* What an action opens: a form in the window, or a window of its own, which is closed again. */
static void
record_action (const Recorder *recorder, const char *action)
{
  if (!gtk_widget_activate_action (GTK_WIDGET (recorder->window), action, NULL))
    g_error ("there is no action %s", action);
  let_pass (LOOK_MS);
  GtkWindow *other = other_window (recorder);
  record (recorder, GTK_WIDGET (other != NULL ? other : recorder->window), action);
  if (other == NULL)
    return;
  gtk_window_close (other);
  let_pass (LOOK_MS);
  if (is_open (other) && gtk_widget_get_mapped (GTK_WIDGET (other)))
    g_error ("what %s opened does not close", action);
}

static void
record_actions (const Recorder *recorder)
{
  static const char *const actions[] = {
    "win.edit-sheet",     "win.edit-monitor",      "win.edit-input", "win.edit-source",
    "win.choose-monitor", "win.add-input",         "win.add-source", "app.preferences",
    "app.about",          "win.show-help-overlay", "win.help",
  };
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    record_action (recorder, actions[i]);
}

static GtkWindow *
open_sheet (GApplication *application, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (path);
  g_autoptr (GError) error = NULL;

  if (!g_application_register (application, NULL, &error))
    g_error ("%s", error->message);
  g_application_open (application, &file, 1, "");
  let_pass (LOOK_MS);
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

/* Warnings, of GTK as well, go to standard error in words that are the same each time. */
static GLogWriterOutput
on_message (GLogLevelFlags level, const GLogField *fields, gsize n_fields, gpointer data)
{
  const char *words = "";
  for (gsize i = 0; i < n_fields; i++)
    if (strcmp (fields[i].key, "MESSAGE") == 0)
      words = fields[i].value;
  if (level & (G_LOG_LEVEL_ERROR | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING))
    g_printerr ("%s\n", words);
  return G_LOG_WRITER_HANDLED;
}

int
main (int argc, char **argv)
{
  g_log_set_writer_func (on_message, NULL, NULL);
  if (argc != 4)
    g_error ("usage: record-window FOLDER SHEET CELLS");
  if (g_getenv ("BW_TEST_LOCALE") != NULL)
    {
      bindtextdomain (GETTEXT_PACKAGE, g_getenv ("BW_TEST_LOCALE"));
      bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
    }
  guint cells = (guint) strtoul (argv[3], NULL, 10);
  g_autoptr (BwApplication) application = bw_application_new ();
  Recorder recorder = {
    .folder = argv[1],
    .window = open_sheet (G_APPLICATION (application), argv[2]),
    .prefix = "",
    .explores = cells == 0,
  };

  record (&recorder, GTK_WIDGET (recorder.window), "window");
  if (recorder.explores)
    {
      record_pages (&recorder);
      record_actions (&recorder);
    }
  else
    record_cells (&recorder, cells);
  gtk_window_destroy (recorder.window);
  return EXIT_SUCCESS;
}
