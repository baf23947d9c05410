/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <string.h>

#include "app/help/help.h"
#include "app/help/manual.h"
#include "core/bench/sheet.h"

/* The manual names nothing that the window does not have, has a page for each page of the window
 * and a section for each of its views, and opens where the person is. */

static GPtrArray *
load_manual (void)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *manual = bw_manual_load (&error);
  g_assert_no_error (error);
  g_assert_cmpuint (manual->len, >, 0);
  return manual;
}

static const BwManualPage *
find_page (const GPtrArray *manual, const char *id)
{
  for (guint i = 0; i < manual->len; i++)
    if (strcmp (bw_manual_page (manual, i)->id, id) == 0)
      return bw_manual_page (manual, i);
  g_error ("the manual has no page “%s”", id);
}

/* A page for each page, a section for each view */

static guint
count_sections_of (const BwManualPage *page, const char *view)
{
  guint n = 0;
  for (guint i = 0; i < page->blocks->len; i++)
    if (g_strcmp0 (bw_manual_block (page, i)->view, view) == 0)
      n++;
  return n;
}

typedef struct
{
  const BwManualPage *page;
  guint n;
} Views;

static void
check_view_button (GtkWidget *widget, gpointer data)
{
  Views *views = data;
  GtkWidget *row = gtk_widget_get_parent (widget);
  if (!GTK_IS_TOGGLE_BUTTON (widget) || !gtk_widget_has_css_class (row, "bw-views"))
    return;
  views->n++;
  if (count_sections_of (views->page, gtk_widget_get_name (widget)) != 1)
    g_error ("the page “%s” of the manual has not one section for the view “%s”", views->page->id,
             gtk_widget_get_name (widget));
}

static void
test_every_page (void)
{
  g_autoptr (BwDocument) document = app_test_document ();
  BwWindow *window = app_test_window_new (document);
  g_autoptr (GPtrArray) manual = load_manual ();
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  for (guint i = 0; i < n; i++)
    {
      Views views = { find_page (manual, kinds[i].id), 0 };
      app_test_each (GTK_WIDGET (bw_window_get_page (window, kinds[i].id)), check_view_button,
                     &views);
      g_assert_cmpuint (views.n, >, 0);
    }
  app_test_close (window);
}

/* What is named in running text */

typedef struct
{
  GHashTable *words; /* on widgets, in their tooltips */
  GHashTable *menu;
  GPtrArray *keys; /* accelerators */
  const BwManualPage *page;
  guint n;
} Named;

static void
collect_words (GtkWidget *widget, gpointer data)
{
  Named *named = data;
  if (GTK_IS_LABEL (widget))
    g_hash_table_add (named->words, g_strdup (gtk_label_get_text (GTK_LABEL (widget))));
  if (gtk_widget_get_tooltip_text (widget) != NULL)
    g_hash_table_add (named->words, g_strdup (gtk_widget_get_tooltip_text (widget)));
}

static void
collect_keys (GtkWidget *widget, gpointer data)
{
  Named *named = data;
  g_autofree char *keys = NULL;
  if (!GTK_IS_SHORTCUTS_SHORTCUT (widget))
    return;
  g_object_get (widget, "accelerator", &keys, NULL);
  g_auto (GStrv) all = g_strsplit (keys, " ", -1);
  for (char **key = all; *key != NULL; key++)
    g_ptr_array_add (named->keys, g_strdup (*key));
}

static void
collect_menu (Named *named, GMenuModel *menu)
{
  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autofree char *label = NULL;
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION);
      if (g_menu_model_get_item_attribute (menu, i, G_MENU_ATTRIBUTE_LABEL, "s", &label))
        {
          g_auto (GStrv) parts = g_strsplit (label, "_", -1);
          g_hash_table_add (named->menu, g_strjoinv ("", parts));
        }
      if (section != NULL)
        collect_menu (named, section);
    }
}

/* The keys of the window of shortcuts, which is not shown for that, and those of the pages. */
static void
collect_shortcuts (Named *named)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource (
      "/org/breezeway/Breezeway/shortcuts.ui");
  GtkWidget *shortcuts = GTK_WIDGET (gtk_builder_get_object (builder, "help_overlay"));
  guint n;

  app_test_each (shortcuts, collect_keys, named);
  gtk_window_destroy (GTK_WINDOW (shortcuts));
  g_assert_cmpuint (named->keys->len, >, 20);
  bw_page_kinds (&n);
  for (guint i = 1; i <= n; i++)
    g_ptr_array_add (named->keys, g_strdup_printf ("<Control>%u", i));
}

static void
collect_window (Named *named, BwWindow *window)
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);
  GtkWidget *menu = app_test_find (GTK_WIDGET (window), GTK_TYPE_MENU_BUTTON, "menu");

  for (guint i = 0; i < n; i++)
    bw_window_show_page (window, kinds[i].id);
  app_test_each (GTK_WIDGET (window), collect_words, named);
  for (BwPart part = BW_PART_SHEET; part <= BW_PART_SOURCE; part++)
    {
      bw_window_edit (window, part);
      app_test_each (GTK_WIDGET (window), collect_words, named);
    }
  collect_shortcuts (named);
  collect_menu (named, gtk_menu_button_get_menu_model (GTK_MENU_BUTTON (menu)));
}

/* "Ctrl+Shift+Z" as GTK writes it. */
static char *
accelerator_of (const char *key)
{
  static const char *const names[][2] = {
    { "Ctrl", "<Control>" }, { "Shift", "<Shift>" }, { "Enter", "Return" },
    { "?", "question" },     { ",", "comma" },       { "-", "minus" },
  };
  if (strcmp (key, "+") == 0)
    return g_strdup ("plus");
  g_auto (GStrv) parts = g_strsplit (key, "+", -1);
  for (char **part = parts; *part != NULL; part++)
    for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
      if (strcmp (*part, names[i][0]) == 0)
        {
          g_free (*part);
          *part = g_strdup (names[i][1]);
        }
  return g_strjoinv ("", parts);
}

static gboolean
is_key (const Named *named, const char *key)
{
  g_autofree char *accelerator = accelerator_of (key);
  guint wanted, found;
  GdkModifierType wanted_with, found_with;

  if (strcmp (accelerator, "<Control>") == 0)
    return TRUE; /* held while the wheel turns */
  if (!gtk_accelerator_parse (accelerator, &wanted, &wanted_with))
    return FALSE;
  for (guint i = 0; i < named->keys->len; i++)
    if (gtk_accelerator_parse (named->keys->pdata[i], &found, &found_with) && found == wanted
        && found_with == wanted_with)
      return TRUE;
  return FALSE;
}

static gboolean
is_there (const Named *named, const char *tag, const char *words)
{
  if (strcmp (tag, "key") == 0)
    return is_key (named, words);
  if (strcmp (tag, "menu") == 0)
    return g_hash_table_contains (named->menu, words);
  if (strcmp (tag, "program") == 0)
    return strcmp (words, "breezeway-cli") == 0;
  if (strcmp (tag, "command") == 0 || strcmp (tag, "option") == 0 || strcmp (tag, "file") == 0
      || strcmp (tag, "word") == 0)
    return TRUE; /* house-manual looks them up */
  g_assert_true (strcmp (tag, "button") == 0 || strcmp (tag, "field") == 0
                 || strcmp (tag, "view") == 0);
  return g_hash_table_contains (named->words, words);
}

static void
check_run (const char *run, const char *tag, gpointer data)
{
  Named *named = data;
  if (tag == NULL)
    return;
  named->n++;
  if (!is_there (named, tag, run))
    g_error ("the page “%s” of the manual names the %s “%s”, which the window has not",
             named->page->id, tag, run);
}

static void
test_named (void)
{
  g_autoptr (BwDocument) document = app_test_document ();
  BwWindow *window = app_test_window_new (document);
  g_autoptr (GPtrArray) manual = load_manual ();
  g_autoptr (GHashTable) words = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) menu = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) keys = g_ptr_array_new_with_free_func (g_free);
  Named named = { words, menu, keys, NULL, 0 };

  collect_window (&named, window);
  for (guint i = 0; i < manual->len; i++)
    {
      named.page = bw_manual_page (manual, i);
      for (guint j = 0; j < named.page->blocks->len; j++)
        {
          const BwBlock *block = bw_manual_block (named.page, j);
          if (block->kind != BW_BLOCK_CODE && block->kind != BW_BLOCK_CAUTION)
            bw_manual_each_run (block->text, check_run, &named);
        }
    }
  g_assert_cmpuint (named.n, >, 60);
  app_test_close (window);
}

/* What the manual says of the file is what the reader allows. */
static void
test_bounds (void)
{
  g_autoptr (GPtrArray) manual = load_manual ();
  const BwManualPage *page = find_page (manual, "file");
  g_autofree char *bounds = g_strdup_printf ("%d inputs and %d sources", BW_SHEET_MAX_INPUTS,
                                             BW_SHEET_MAX_SOURCES);
  gboolean found = FALSE;
  for (guint i = 0; i < page->blocks->len; i++)
    found |= strstr (bw_manual_block (page, i)->text, bounds) != NULL;
  g_assert_true (found);
}

static void
count_run (const char *run, const char *tag, gpointer data)
{
  g_string_append_printf (data, "[%s%s%s]", tag != NULL ? tag : "", tag != NULL ? ":" : "", run);
}

/* A translation whose tags do not match is shown as it stands. */
static void
test_runs (void)
{
  g_autoptr (GString) good = g_string_new (NULL);
  g_autoptr (GString) bad = g_string_new (NULL);
  bw_manual_each_run ("Press <key>F1</key> twice.", count_run, good);
  bw_manual_each_run ("Press <key>F1</kye> twice.", count_run, bad);
  g_assert_cmpstr (good->str, ==, "[Press ][key:F1][ twice.]");
  g_assert_cmpstr (bad->str, ==, "[Press <key>F1</kye> twice.]");
}

/* By keys */

static BwApplication *application = NULL;

static BwHelp *
open_help (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) one = g_list_model_get_item (windows, i);
      if (BW_IS_HELP (one) && gtk_widget_get_mapped (GTK_WIDGET (one)))
        return BW_HELP (one);
    }
  return NULL;
}

static BwWindow *
open_window (void)
{
  g_autofree char *path = app_test_copy_sheet ("help.bench");
  app_test_allow_toolkit_faults ();
  BwWindow *window = app_test_open (application, path);
  app_test_give_focus (window);
  return window;
}

static double
scrolled (BwHelp *help)
{
  GtkWidget *text = app_test_find (GTK_WIDGET (help), GTK_TYPE_TEXT_VIEW, NULL);
  return gtk_adjustment_get_value (gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (text)));
}

/* Whether the heading of the section of @name is seen. */
static gboolean
sees (BwHelp *help, const char *name)
{
  GtkTextView *text = GTK_TEXT_VIEW (
      app_test_find (GTK_WIDGET (help), GTK_TYPE_TEXT_VIEW, NULL));
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (text);
  GtkTextMark *mark = gtk_text_buffer_get_mark (buffer, name);
  GtkTextIter at;
  GdkRectangle seen, heading;

  if (mark == NULL)
    return FALSE;
  gtk_text_buffer_get_iter_at_mark (buffer, &at, mark);
  gtk_text_view_get_visible_rect (text, &seen);
  gtk_text_view_get_iter_location (text, &at, &heading);
  return heading.y >= seen.y && heading.y + heading.height <= seen.y + seen.height;
}

static void
test_where_one_is (void)
{
  BwWindow *window = open_window ();

  bw_window_show_page (window, "timing");
  bw_page_show_view (bw_window_get_page (window, "timing"), "readings");
  bw_page_focus (bw_window_get_page (window, "timing"));
  app_test_xdotool ("key F1");
  ASSERT_COMES_TRUE (open_help () != NULL);
  g_assert_cmpstr (bw_help_get_page (open_help ()), ==, "timing");
  ASSERT_COMES_TRUE (sees (open_help (), "readings"));
  app_test_give_focus (open_help ());
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (open_help () == NULL);

  /* In the form at the left it is about typing. */
  app_test_give_focus (window);
  bw_window_edit (window, BW_PART_MONITOR);
  app_test_xdotool ("key F1");
  ASSERT_COMES_TRUE (open_help () != NULL);
  g_assert_cmpstr (bw_help_get_page (open_help ()), ==, "bench");
  ASSERT_COMES_TRUE (sees (open_help (), "type"));
  gtk_window_destroy (GTK_WINDOW (window)); /* the help goes with its window */
  app_test_settle ();
  g_assert_null (open_help ());
}

/* The list and the text are one stop each; the text scrolls; a row of the list shows its page. */
static void
test_keyboard (void)
{
  BwWindow *window = open_window ();
  gtk_widget_activate_action (GTK_WIDGET (window), "win.help", NULL);
  ASSERT_COMES_TRUE (open_help () != NULL);
  BwHelp *help = open_help ();
  GtkWidget *list = app_test_find (GTK_WIDGET (help), GTK_TYPE_LIST_BOX, NULL);
  GtkWidget *text = app_test_find (GTK_WIDGET (help), GTK_TYPE_TEXT_VIEW, NULL);

  app_test_give_focus (help);
  g_assert_true (gtk_widget_has_focus (text));
  app_test_xdotool ("key Next");
  ASSERT_COMES_TRUE (scrolled (help) > 0);
  app_test_xdotool ("key ctrl+Home");
  ASSERT_COMES_TRUE (scrolled (help) <= 0);
  app_test_xdotool ("key shift+Tab");
  ASSERT_COMES_TRUE (gtk_widget_get_focus_child (list) != NULL);
  g_assert_cmpstr (bw_help_get_page (help), ==, "fit"); /* the focus alone changes nothing */
  app_test_xdotool ("key Down");
  ASSERT_COMES_TRUE (strcmp (bw_help_get_page (help), "hookup") == 0);
  app_test_xdotool ("key Tab");
  ASSERT_COMES_TRUE (gtk_widget_has_focus (text));
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (text), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Hook-up");
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (open_help () == NULL);
  gtk_window_destroy (GTK_WINDOW (window));
  app_test_settle ();
}

/* It fits beside a small screen's edges, and its ink is that of the palette, light and dark. */
static void
test_look (void)
{
  GtkSettings *settings = gtk_settings_get_default ();
  BwHelp *help = bw_help_open (GTK_WINDOW (open_window ()));
  GtkWidget *text = app_test_find (GTK_WIDGET (help), GTK_TYPE_TEXT_VIEW, NULL);
  int width, height;

  bw_help_show (help, "bench", NULL);
  gtk_widget_measure (GTK_WIDGET (help), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure (GTK_WIDGET (help), GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL,
                      NULL);
  g_assert_cmpint (width, <=, 960);
  g_assert_cmpint (height, <=, 600);
  for (int dark = 0; dark < 2; dark++)
    {
      GdkRGBA ink;
      g_object_set (settings, "gtk-application-prefer-dark-theme", dark != 0, NULL);
      app_test_settle ();
      G_GNUC_BEGIN_IGNORE_DEPRECATIONS
      gtk_style_context_get_color (gtk_widget_get_style_context (text), &ink);
      G_GNUC_END_IGNORE_DEPRECATIONS
      g_assert_true (dark ? ink.green > 0.7 : ink.green < 0.3);
    }
  g_object_set (settings, "gtk-application-prefer-dark-theme", FALSE, NULL);
  gtk_window_destroy (gtk_window_get_transient_for (GTK_WINDOW (help)));
  app_test_settle ();
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_test_add_func ("/help/every-page", test_every_page);
  g_test_add_func ("/help/named", test_named);
  g_test_add_func ("/help/bounds", test_bounds);
  g_test_add_func ("/help/runs", test_runs);
  g_test_add_func ("/help/where-one-is", test_where_one_is);
  g_test_add_func ("/help/keyboard", test_keyboard);
  g_test_add_func ("/help/look", test_look);
  return g_test_run ();
}
