/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application.h"

#include <glib-unix.h>
#include <glib/gi18n-lib.h>

#include "app/widgets/colour-scheme.h"
#include "drafts.h"
#include "preferences.h"
#include "recent.h"
#include "session.h"

/**
 * BwApplication:
 *
 * The program: its catalogue, settings and colours, and a window for each open bench sheet.
 */
struct _BwApplication
{
  GtkApplication parent_instance;

  GSettings *settings;
  BwColourScheme *scheme;
  BwCatalogue *catalogue;
  GPtrArray *catalogue_faults; /* owned GError */
  gboolean drafts_offered;
  GVariant *left; /* nullable: what was open when the last windows were asked to close, until they
                     have */
  guint signal_watches[3]; /* sources */
};

G_DEFINE_FINAL_TYPE (BwApplication, bw_application, GTK_TYPE_APPLICATION)

#define APP_ID "org.breezeway.Breezeway"
#define DEMO_RESOURCE "/org/breezeway/Breezeway/demo.bench"

/* Windows */

static void
fill_recent (BwApplication *self, BwWindow *window)
{
  bw_recent_fill (bw_window_get_recent_menu (window),
                  (guint) g_settings_get_int (self->settings, "recent-limit"));
}

static void
fill_all_recent (BwApplication *self)
{
  for (GList *link = gtk_application_get_windows (GTK_APPLICATION (self)); link != NULL;
       link = link->next)
    if (BW_IS_WINDOW (link->data))
      fill_recent (self, link->data);
}

/* Leaving. What the next start opens is noted when the last windows are asked to close, and kept when
 * they have: until then one of them may stay, as the person is asked. */

static guint
count_windows (BwApplication *self)
{
  guint windows = 0;

  for (GList *link = gtk_application_get_windows (GTK_APPLICATION (self)); link != NULL;
       link = link->next)
    windows += BW_IS_WINDOW (link->data);
  return windows;
}

static void
note_session (BwApplication *self)
{
  if (self->left == NULL)
    self->left = bw_session_new (GTK_APPLICATION (self));
}

static void
forget_session (BwApplication *self)
{
  g_clear_pointer (&self->left, g_variant_unref);
}

static void
keep_session (BwApplication *self)
{
  note_session (self);
  bw_session_save (self->settings, self->left);
  forget_session (self);
}

/* Of several windows, one that is closed is done with. */
static gboolean
on_close_request (BwApplication *self)
{
  if (count_windows (self) == 1)
    note_session (self);
  return GDK_EVENT_PROPAGATE;
}

static void
bw_application_window_removed (GtkApplication *application, GtkWindow *window)
{
  BwApplication *self = BW_APPLICATION (application);

  GTK_APPLICATION_CLASS (bw_application_parent_class)->window_removed (application, window);
  if (BW_IS_WINDOW (window) && self->left != NULL && count_windows (self) == 0)
    keep_session (self);
}

/**
 * bw_application_new_window:
 *
 * Returns: (transfer none): a window with an empty sheet, shown
 */
BwWindow *
bw_application_new_window (BwApplication *self)
{
  g_autoptr (BwDocument) document = bw_document_new (self->catalogue);
  BwWindow *window = bw_window_new (GTK_APPLICATION (self), document, self->settings);

  forget_session (self);
  g_signal_connect_object (window, "close-request", G_CALLBACK (on_close_request), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (window, "stays", G_CALLBACK (forget_session), self, G_CONNECT_SWAPPED);
  fill_recent (self, window);
  gtk_window_present (GTK_WINDOW (window));
  bw_page_focus (bw_window_get_shown_page (window));
  if (self->catalogue_faults->len > 0)
    {
      bw_window_show_faults (
          window, _ ("Some entries of your own catalogue were left out; the rest is in use."),
          self->catalogue_faults);
      g_ptr_array_set_size (self->catalogue_faults, 0);
    }
  return window;
}

static gboolean
is_untouched (BwWindow *window)
{
  BwDocument *document = bw_window_get_document (window);
  return bw_document_is_blank (document) && !bw_document_is_modified (document);
}

/* The window in front if nothing is in it yet, else a new one. */
static BwWindow *
window_for_opening (BwApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  if (BW_IS_WINDOW (active) && is_untouched (BW_WINDOW (active)))
    return BW_WINDOW (active);
  return bw_application_new_window (self);
}

/* The window in which @file is open already, or is opened now; for no file, one that nothing is in. */
static BwWindow *
open_file (gpointer data, GFile *file)
{
  BwWindow *window = file != NULL ? bw_window_find (file) : NULL;

  if (window != NULL)
    gtk_window_present (GTK_WINDOW (window));
  else
    {
      window = window_for_opening (BW_APPLICATION (data));
      if (file != NULL)
        bw_window_open (window, file);
    }
  return window;
}

/* Once, when the first window is there. */
static void
offer_drafts (BwApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (self->drafts_offered || !BW_IS_WINDOW (active))
    return;
  self->drafts_offered = TRUE;
  bw_drafts_offer (BW_WINDOW (active), self->catalogue, open_file, self);
}

static void
bw_application_activate (GApplication *application)
{
  BwApplication *self = BW_APPLICATION (application);
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  if (active != NULL)
    gtk_window_present (active);
  else if (bw_session_restore (self->settings, open_file, self) == 0)
    bw_application_new_window (self);
  offer_drafts (self);
}

static void
bw_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  for (int i = 0; i < n_files; i++)
    open_file (application, files[i]);
  offer_drafts (BW_APPLICATION (application));
}

/* Actions */

static void
on_new (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  bw_application_new_window (BW_APPLICATION (user_data));
}

/* Opening from the menu of the window in front leaves its sheet: what is typed there is taken. */
static gboolean
take_typed_in_front (BwApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  return !BW_IS_WINDOW (active)
         || bw_document_take_typed (bw_window_get_document (BW_WINDOW (active)));
}

static void
on_open_demo (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GBytes) demo = g_resources_lookup_data (DEMO_RESOURCE, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                     NULL);
  g_return_if_fail (demo != NULL);
  if (!take_typed_in_front (BW_APPLICATION (user_data)))
    return;
  bw_window_open_bytes (window_for_opening (BW_APPLICATION (user_data)), demo, _ ("the demo"));
}

static void
on_open_recent (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));
  if (take_typed_in_front (BW_APPLICATION (user_data)))
    open_file (user_data, file);
}

static void
on_preferences (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  BwApplication *self = BW_APPLICATION (user_data);
  GtkWindow *parent = gtk_application_get_active_window (GTK_APPLICATION (self));
  gtk_window_present (GTK_WINDOW (bw_preferences_new (parent, self->settings)));
}

static void
on_about (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  gtk_show_about_dialog (gtk_application_get_active_window (GTK_APPLICATION (user_data)),
                         "program-name", "Breezeway", "logo-icon-name", APP_ID, "version",
                         BW_VERSION, "comments",
                         _ ("A workbench for video signal and timing calculation"), "license-type",
                         GTK_LICENSE_GPL_3_0, NULL);
}

/* Takes what is typed in all windows; FALSE if one of them refuses it, and shows why. */
static gboolean
take_typed (BwApplication *self)
{
  for (GList *link = gtk_application_get_windows (GTK_APPLICATION (self)); link != NULL;
       link = link->next)
    if (BW_IS_WINDOW (link->data) && !bw_document_take_typed (bw_window_get_document (link->data)))
      return FALSE;
  return TRUE;
}

/* Each window may ask first; the program ends with the last of them. */
static void
on_quit (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  if (!take_typed (BW_APPLICATION (user_data)))
    return;
  BwApplication *self = user_data;
  note_session (self);
  g_autoptr (GList) windows = g_list_copy (
      gtk_application_get_windows (GTK_APPLICATION (user_data)));
  for (GList *link = windows; link != NULL; link = link->next)
    gtk_window_close (link->data);
}

/* The end of the session, and of the program from outside */

static void
flush_drafts (BwApplication *self)
{
  for (GList *link = gtk_application_get_windows (GTK_APPLICATION (self)); link != NULL;
       link = link->next)
    if (BW_IS_WINDOW (link->data))
      bw_window_flush_draft (link->data);
}

/* The session asks whether it may end. A window with changes holds it up (update_inhibit() in
 * window.c); whatever the answer, nothing is lost. */
static void
on_query_end (BwApplication *self)
{
  take_typed (self);
  flush_drafts (self);
}

static gboolean
on_signal (gpointer user_data)
{
  BwApplication *self = user_data;
  flush_drafts (self);
  keep_session (self);
  g_settings_sync ();
  g_application_quit (G_APPLICATION (user_data));
  return G_SOURCE_CONTINUE;
}

static const GActionEntry actions[] = {
  { "new", on_new },
  { "open-demo", on_open_demo },
  { "open-recent", on_open_recent, "s" },
  { "preferences", on_preferences },
  { "about", on_about },
  { "quit", on_quit },
};

/* Only keys that no text field wants: these are taken before the focused widget sees them. */
static const struct
{
  const char *action;
  const char *keys[3];
} accels[] = {
  { "app.new", { "<Control>n" } },
  { "win.open", { "<Control>o" } },
  { "win.save", { "<Control>s" } },
  { "win.save-as", { "<Control><Shift>s" } },
  { "win.print", { "<Control>p" } },
  { "win.close", { "<Control>w" } },
  { "app.quit", { "<Control>q" } },
  { "app.preferences", { "<Control>comma" } },
  { "win.show-help-overlay", { "<Control>question" } },
  { "win.help", { "F1" } },
};

static const int ending_signals[] = { SIGTERM, SIGHUP, SIGINT };
/* Control and a digit for each page. */
static void
add_page_accels (BwApplication *self)
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  for (guint i = 0; i < n && i < 9; i++)
    {
      g_autofree char *action = g_strconcat ("win.page::", kinds[i].id, NULL);
      g_autofree char *key = g_strdup_printf ("<Control>%u", i + 1);
      const char *const keys[] = { key, NULL };
      gtk_application_set_accels_for_action (GTK_APPLICATION (self), action, keys);
    }
}

static void
bw_application_startup (GApplication *application)
{
  BwApplication *self = BW_APPLICATION (application);
  g_autofree char *folder = bw_catalogue_user_folder ();

  G_APPLICATION_CLASS (bw_application_parent_class)->startup (application);
  gtk_window_set_default_icon_name (APP_ID);
  self->settings = g_settings_new (APP_ID);
  self->scheme = bw_colour_scheme_new (self->settings);
  self->catalogue = bw_catalogue_new (folder, self->catalogue_faults);
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  for (guint i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (self), accels[i].action,
                                           accels[i].keys);
  for (guint i = 0; i < G_N_ELEMENTS (self->signal_watches); i++)
    self->signal_watches[i] = g_unix_signal_add (ending_signals[i], on_signal, self);
  g_signal_connect (self, "query-end", G_CALLBACK (on_query_end), NULL);
  add_page_accels (self);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed",
                           G_CALLBACK (fill_all_recent), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->settings, "changed::recent-limit", G_CALLBACK (fill_all_recent),
                           self, G_CONNECT_SWAPPED);
}

static void
bw_application_shutdown (GApplication *application)
{
  BwApplication *self = BW_APPLICATION (application);

  for (guint i = 0; i < G_N_ELEMENTS (self->signal_watches); i++)
    g_clear_handle_id (&self->signal_watches[i], g_source_remove);
  G_APPLICATION_CLASS (bw_application_parent_class)->shutdown (application);
  g_clear_object (&self->scheme);
  g_clear_object (&self->settings);
  forget_session (self);
}

static void
bw_application_finalize (GObject *object)
{
  BwApplication *self = BW_APPLICATION (object);

  g_clear_pointer (&self->catalogue, bw_catalogue_free);
  g_ptr_array_unref (self->catalogue_faults);
  G_OBJECT_CLASS (bw_application_parent_class)->finalize (object);
}

static int
bw_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  if (!g_variant_dict_contains (options, "version"))
    return -1; /* go on */
  g_print ("breezeway %s\n", BW_VERSION);
  return 0;
}

static void
bw_application_class_init (BwApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bw_application_finalize;
  application_class->startup = bw_application_startup;
  application_class->shutdown = bw_application_shutdown;
  application_class->activate = bw_application_activate;
  application_class->open = bw_application_open;
  application_class->handle_local_options = bw_application_handle_local_options;
  GTK_APPLICATION_CLASS (klass)->window_removed = bw_application_window_removed;
}

static void
bw_application_init (BwApplication *self)
{
  self->catalogue_faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_application_add_main_option (G_APPLICATION (self), "version", 0, G_OPTION_FLAG_NONE,
                                 G_OPTION_ARG_NONE, _ ("Print the version and exit"), NULL);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[SHEET.bench…]"));
}

/**
 * bw_application_new:
 *
 * Returns: (transfer full): the application
 */
BwApplication *
bw_application_new (void)
{
  return g_object_new (BW_TYPE_APPLICATION, "application-id", APP_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN, "register-session", TRUE, NULL);
}
