/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <glib/gstdio.h>

#include "app/widgets/copy-row.h"

#define PATIENCE_MS 10000

/* The shipped catalogue, without anything of the user's; lives as long as the test program. */
const BwCatalogue *
app_test_catalogue (void)
{
  static BwCatalogue *catalogue = NULL;
  if (catalogue == NULL)
    {
      g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
      catalogue = bw_catalogue_new (NULL, faults);
      g_assert_cmpuint (faults->len, ==, 0);
    }
  return catalogue;
}

char *
app_test_demo_path (void)
{
  const char *root = g_getenv ("BW_SOURCE_ROOT");
  g_assert_nonnull (root);
  return g_build_filename (root, "data", "demo.bench", NULL);
}

/* The sheet that the tests know in detail; the demo may be rewritten at any time. */
char *
app_test_sheet_path (void)
{
  const char *folder = g_getenv ("BW_TEST_DATA");
  g_assert_nonnull (folder);
  return g_build_filename (folder, "app", "workshop.bench", NULL);
}

char *
app_test_scratch_path (const char *name)
{
  char *folder = g_build_filename (g_get_user_cache_dir (), "sheets", NULL);
  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  char *path = g_build_filename (folder, name, NULL);
  g_free (folder);
  return path;
}

/* A copy of the tests' own sheet that a test may change; its path. */
char *
app_test_copy_sheet (const char *name)
{
  g_autofree char *original = app_test_sheet_path ();
  g_autofree char *text = NULL;
  char *path = app_test_scratch_path (name);
  gsize length;

  g_assert_true (g_file_get_contents (original, &text, &length, NULL));
  g_assert_true (g_file_set_contents (path, text, (gssize) length, NULL));
  return path;
}

/* All that is in the file at @path. */
char *
app_test_file_text (const char *path)
{
  char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

BwDocument *
app_test_document_at (const char *path)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  BwDocument *document = bw_document_new (app_test_catalogue ());
  g_autoptr (GFile) file = g_file_new_for_path (path);

  gboolean loaded = bw_document_load (document, file, faults);
  for (guint i = 0; i < faults->len; i++)
    g_test_message ("%s", ((GError *) faults->pdata[i])->message);
  g_assert_true (loaded);
  return document;
}

/* A document with the tests' own sheet. */
BwDocument *
app_test_document (void)
{
  g_autofree char *path = app_test_sheet_path ();
  return app_test_document_at (path);
}

char *
app_test_sheet_text (BwDocument *document)
{
  return bw_sheet_to_text (bw_document_get_sheet (document), app_test_catalogue ());
}

const BwField *
app_test_field (BwPart part, const char *key)
{
  const BwField *field = bw_field_find (bw_part_fields (part), key);
  g_assert_nonnull (field);
  return field;
}

/* Drafts */

char *
app_test_drafts_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "breezeway", "drafts", NULL);
}

static GPtrArray *
list_drafts (const char *suffix)
{
  g_autofree char *folder = app_test_drafts_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, suffix))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  return paths;
}

/* How many drafts lie in the user's state folder. */
guint
app_test_count_drafts (void)
{
  g_autoptr (GPtrArray) paths = list_drafts (".draft");
  return paths->len;
}

/* The text of the one draft that is there. */
char *
app_test_read_draft (void)
{
  g_autoptr (GPtrArray) paths = list_drafts (".draft");
  g_assert_cmpuint (paths->len, ==, 1);
  return app_test_file_text (paths->pdata[0]);
}

/* Removes what an earlier test has left. */
void
app_test_clear_drafts (void)
{
  g_autoptr (GPtrArray) paths = list_drafts ("");
  for (guint i = 0; i < paths->len; i++)
    g_assert_cmpint (g_remove (paths->pdata[i]), ==, 0);
}

/* A window that is shown and drawn. */
BwWindow *
app_test_window_new (BwDocument *document)
{
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");
  BwWindow *window = bw_window_new (NULL, document, settings);

  app_test_allow_toolkit_faults ();
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

/* Lets everything happen that is due. */
void
app_test_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static gboolean
on_out_of_patience (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Runs the main loop until @done says so; FALSE if it does not in reasonable time. */
gboolean
app_test_wait (gboolean (*done) (gpointer data), gpointer data)
{
  gboolean late = FALSE;
  guint timer = g_timeout_add (PATIENCE_MS, on_out_of_patience, &late);

  while (!late && !done (data))
    g_main_context_iteration (NULL, TRUE);
  if (!late)
    g_source_remove (timer);
  return !late;
}

/* Destroys @window; it must leave nothing behind. */
void
app_test_close (BwWindow *window)
{
  g_object_ref (window);
  gtk_window_destroy (GTK_WINDOW (window));
  app_test_settle ();
  g_assert_finalize_object (window);
}

void
app_test_set_up (AppTestWindow *f, gconstpointer data)
{
  f->document = app_test_document ();
  f->window = app_test_window_new (f->document);
}

void
app_test_tear_down (AppTestWindow *f, gconstpointer data)
{
  app_test_close (f->window);
  g_assert_finalize_object (f->document);
}

static GtkWidget *
find_below (GtkWidget *widget, GType type, const char *name)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      const char *id = gtk_buildable_get_buildable_id (GTK_BUILDABLE (child));
      if (g_type_is_a (G_OBJECT_TYPE (child), type)
          && (name == NULL || g_strcmp0 (id, name) == 0
              || g_strcmp0 (gtk_widget_get_name (child), name) == 0))
        return child;
      GtkWidget *found = find_below (child, type, name);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The first widget below @from of @type and, if it is given, of @name: its id in the template, or its
 * widget name; it must be there. */
GtkWidget *
app_test_find (GtkWidget *from, GType type, const char *name)
{
  GtkWidget *found = find_below (from, type, name);
  g_assert_nonnull (found);
  return found;
}

/* The first widget at @from or below it that has @css_class; NULL if there is none. */
GtkWidget *
app_test_find_css (GtkWidget *from, const char *css_class)
{
  if (gtk_widget_has_css_class (from, css_class))
    return from;
  for (GtkWidget *child = gtk_widget_get_first_child (from); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = app_test_find_css (child, css_class);
      if (found != NULL)
        return found;
    }
  return NULL;
}

void
app_test_each (GtkWidget *from, void (*visit) (GtkWidget *widget, gpointer data), gpointer data)
{
  visit (from, data);
  for (GtkWidget *child = gtk_widget_get_first_child (from); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    app_test_each (child, visit, data);
}

typedef struct
{
  const char *text;
  gboolean found;
} WantedLine;

static void
compare_line (GtkWidget *widget, gpointer data)
{
  WantedLine *wanted = data;
  if (BW_IS_COPY_ROW (widget)
      && g_str_equal (bw_copy_row_get_text (BW_COPY_ROW (widget)), wanted->text))
    wanted->found = TRUE;
}

/* Whether a line of a table below @from reads @text when it is copied. */
gboolean
app_test_has_line (GtkWidget *from, const char *text)
{
  WantedLine wanted = { text, FALSE };
  app_test_each (from, compare_line, &wanted);
  return wanted.found;
}
