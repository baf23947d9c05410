/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

#include <string.h>

#include "app/hookup/page.h"
#include "app/widgets/file-chooser.h"
#include "core/base/file.h"
#include "core/base/keyfile.h"
#include "core/interchange/interchange.h"
#include "draw/paper/hookup-report.h"
#include "draw/paper/report.h"
#include "recent.h"

/* What a file chooser is for: called with the file that was chosen, and the suffix that goes with
 * the kind of file that was chosen. */
typedef void (*ChosenFunc) (BwWindow *self, GFile *file, const char *suffix);

static GPtrArray *
faults_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
}

/* Opening */

/**
 * bw_window_open:
 *
 * Reads @file, a bench sheet or the EDID of a display, into the window's document. What is wrong
 * with the file is shown in the window; the file is not changed.
 *
 * Returns: whether it was read
 */
gboolean
bw_window_open (BwWindow *self, GFile *file)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  gboolean opened;

  if (bw_window_open_edid (self, file, &opened))
    return opened;
  if (bw_document_load (self->document, file, faults))
    {
      bw_recent_add (file);
      bw_page_focus (bw_window_get_shown_page (self));
      return TRUE;
    }
  g_autofree char *name = g_file_get_parse_name (file);
  g_autofree char *title = g_strdup_printf (_ ("“%s” was not opened. The file is as it was."),
                                            name);
  bw_window_show_faults (self, title, faults);
  return FALSE;
}

/**
 * bw_window_open_bytes:
 * @name: what to call it in faults
 *
 * Reads a sheet that is part of the program into the window's document, without a file.
 *
 * Returns: whether it was read
 */
gboolean
bw_window_open_bytes (BwWindow *self, GBytes *bytes, const char *name)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  if (bw_document_load_bytes (self->document, bytes, name, faults))
    {
      bw_page_focus (bw_window_get_shown_page (self));
      return TRUE;
    }
  bw_window_show_faults (self, _ ("The sheet was not opened."), faults);
  return FALSE;
}

/**
 * bw_window_find:
 *
 * Returns: (transfer none) (nullable): the window in which @file is open, by whatever name or link
 */
BwWindow *
bw_window_find (GFile *file)
{
  g_return_val_if_fail (G_IS_FILE (file), NULL);
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) widget = g_list_model_get_item (windows, i);
      GFile *open = BW_IS_WINDOW (widget) && BW_WINDOW (widget)->document != NULL
                        ? bw_document_get_file (BW_WINDOW (widget)->document)
                        : NULL;
      if (open != NULL && bw_file_is_same (open, file))
        return BW_WINDOW (widget);
    }
  return NULL;
}

/* Choosing a file. The chooser is no widget and nothing holds it but the window. */

static void
on_chosen (GtkNativeDialog *chooser, int answer, gpointer user_data)
{
  BwWindow *self = BW_WINDOW (user_data);
  ChosenFunc chosen = (ChosenFunc) g_object_get_data (G_OBJECT (chooser), "chosen");
  g_autoptr (GFile) file = answer == GTK_RESPONSE_ACCEPT
                               ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser))
                               : NULL;

  GtkFileFilter *filter = gtk_file_chooser_get_filter (GTK_FILE_CHOOSER (chooser));
  g_autofree char *suffix = filter != NULL
                                ? g_strdup (g_object_get_data (G_OBJECT (filter), "suffix"))
                                : NULL;

  bw_file_chooser_let_go (&self->chooser);
  if (file != NULL)
    chosen (self, file, suffix);
  else
    bw_window_stay (self);
}

static void
choose (BwWindow *self, const char *title, GtkFileChooserAction action, const char *button,
        ChosenFunc chosen)
{
  if (self->chooser != NULL)
    {
      gtk_native_dialog_show (self->chooser);
      return;
    }
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action,
                                                               button, _ ("_Cancel"));
  self->chooser = GTK_NATIVE_DIALOG (chooser);
  gtk_native_dialog_set_modal (self->chooser, TRUE);
  g_object_set_data (G_OBJECT (chooser), "chosen", (gpointer) chosen);
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_chosen), self, 0);
}

/* A kind of file to choose; @suffix is a text that is not freed. */
static void
add_filter (BwWindow *self, const char *name, const char *suffix)
{
  GtkFileFilter *filter = gtk_file_filter_new ();
  g_autofree char *pattern = g_strconcat ("*", suffix, NULL);
  gtk_file_filter_set_name (filter, name);
  gtk_file_filter_add_pattern (filter, pattern);
  g_object_set_data (G_OBJECT (filter), "suffix", (gpointer) suffix);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  g_object_unref (filter);
}

static void
suggest_name (BwWindow *self, const char *stem, const char *suffix)
{
  g_autofree char *name = g_strconcat (stem, suffix, NULL);
  g_strdelimit (name, G_DIR_SEPARATOR_S, '-');
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
}

/* The file, with @suffix (or else the first of @suffixes) if it has none of them. */
static GFile *
with_suffix (GFile *file, const char *const *suffixes, const char *suffix)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *folded = path != NULL ? g_ascii_strdown (path, -1) : NULL;
  for (guint i = 0; folded != NULL && suffixes[i] != NULL; i++)
    if (g_str_has_suffix (folded, suffixes[i]))
      return g_object_ref (file);
  if (path == NULL)
    return g_object_ref (file);
  g_autofree char *longer = g_strconcat (path, suffix != NULL ? suffix : suffixes[0], NULL);
  return g_file_new_for_path (longer);
}

/* The chooser asks before it lets the file that was named be replaced. If a suffix was added the
 * person has not been asked, so what is there stays. */
static gboolean
may_replace (BwWindow *self, GFile *named, GFile *file, const char *title)
{
  if (g_file_equal (named, file) || !g_file_query_exists (file, NULL))
    return TRUE;
  g_autofree char *base = g_file_get_basename (file);
  g_autoptr (GError)
      error = g_error_new (BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_EXISTS,
                           _ ("“%s” is there already. To replace it, choose it by its whole name."),
                           base);
  bw_window_show_error (self, title, error);
  return FALSE;
}

/* The path of @file; what is not a file of this computer is reported under @title. */
static char *
local_path (BwWindow *self, GFile *file, const char *title)
{
  char *path = g_file_get_path (file);
  if (path == NULL)
    {
      g_autoptr (GError) error = g_error_new (BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_NOT_LOCAL,
                                              _ ("Choose a folder of this computer."));
      bw_window_show_error (self, title, error);
    }
  return path;
}

static void
open_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  if (application != NULL)
    g_application_open (G_APPLICATION (application), &file, 1, "");
  else
    bw_window_open (self, file);
}

void
bw_window_choose_open (BwWindow *self)
{
  choose (self, _ ("Open a Bench Sheet"), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), open_chosen);
  add_filter (self, _ ("Bench sheets"), ".bench");
  add_filter (self, _ ("EDIDs of displays"), ".bin");
  add_filter (self, _ ("All files"), "");
  gtk_native_dialog_show (self->chooser);
}

/* Saving */

static void
save_to (BwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  gboolean close = self->close_after_save;

  self->close_after_save = FALSE;
  if (!bw_document_save (self->document, file, &error))
    {
      if (g_error_matches (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_CHANGED))
        {
          self->close_after_save = close;
          bw_window_ask_about_file (self);
          return;
        }
      bw_window_stay (self);
      if (g_error_matches (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_TYPED))
        return; /* it stands at its field */
      bw_window_show_error (self,
                            _ ("The sheet was not saved. A file that was there is as it was."),
                            error);
      return;
    }
  bw_recent_add (file);
  if (close)
    gtk_window_close (GTK_WINDOW (self));
}

/* A file that another window shows is not written over from here. */
static gboolean
is_open_elsewhere (BwWindow *self, GFile *file)
{
  BwWindow *other = bw_window_find (file);
  if (other == NULL || other == self)
    return FALSE;
  g_autofree char *name = g_file_get_parse_name (file);
  g_autoptr (GError)
      error = g_error_new (BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_EXISTS,
                           _ ("%s: is open in another window. Close it there first, or choose "
                              "another name."),
                           name);
  bw_window_show_error (self, _ ("The sheet was not saved."), error);
  return TRUE;
}

static void
save_as_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".bench", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  if (!is_open_elsewhere (self, target)
      && may_replace (self, file, target, _ ("The sheet was not saved.")))
    save_to (self, target);
  else
    bw_window_stay (self);
}

static void
choose_save (BwWindow *self)
{
  choose (self, _ ("Save the Bench Sheet"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"),
          save_as_chosen);
  add_filter (self, _ ("Bench sheets"), ".bench");
}

void
bw_window_save_as (BwWindow *self)
{
  GFile *file = bw_document_get_file (self->document);
  const char *title = bw_document_get_sheet (self->document)->title;

  choose_save (self);
  if (file != NULL)
    gtk_file_chooser_set_file (GTK_FILE_CHOOSER (self->chooser), file, NULL);
  else
    suggest_name (self, title, ".bench");
  gtk_native_dialog_show (self->chooser);
}

/* Saves under another name beside the file, which stays as somebody else has made it. */
void
bw_window_save_copy (BwWindow *self)
{
  GFile *file = bw_document_get_file (self->document);
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *name = bw_document_dup_name (self->document);
  g_autofree char *stem = g_str_has_suffix (name, ".bench")
                              ? g_strndup (name, strlen (name) - strlen (".bench"))
                              : g_strdup (name);
  /* Translators: a name of a file, for a copy of it with one's own changes */
  g_autofree char *copy = g_strdup_printf (_ ("%s (mine)"), stem);

  choose_save (self);
  gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (self->chooser), folder, NULL);
  suggest_name (self, copy, ".bench");
  gtk_native_dialog_show (self->chooser);
}

void
bw_window_save (BwWindow *self)
{
  GFile *file = bw_document_get_file (self->document);
  if (file != NULL)
    save_to (self, file);
  else
    bw_window_save_as (self);
}

/* Exporting */

/* What became of writing @file: @written, or what is wrong under @title. */
static void
tell (BwWindow *self, GFile *file, gboolean written, const char *title, const GError *error)
{
  if (written)
    bw_notice_show_written (self->notice, file);
  else
    bw_window_show_error (self, title, error);
}

static void
picture_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".svg", ".pdf", ".png", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  const char *title = _ ("The picture was not written.");
  g_autofree char *path = local_path (self, target, title);
  BwPicturePanel *panel = bw_window_get_panel (self);
  g_autoptr (GError) error = NULL;

  if (path == NULL || panel == NULL || !may_replace (self, file, target, title))
    return;
  gboolean written = bw_picture_panel_export (panel, path, &error);
  tell (self, target, written, title, error);
}

void
bw_window_export_picture (BwWindow *self)
{
  BwPicturePanel *panel = bw_window_get_panel (self);

  if (panel == NULL)
    return;
  choose (self, _ ("Export the Picture"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"),
          picture_chosen);
  add_filter (self, _ ("SVG pictures"), ".svg");
  add_filter (self, _ ("PDF pages"), ".pdf");
  add_filter (self, _ ("PNG pictures"), ".png");
  g_autofree char *name = bw_picture_panel_dup_file_name (panel);
  suggest_name (self, name, "");
  gtk_native_dialog_show (self->chooser);
}

/* A table, as its view has written it in each form. */
static void
table_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".csv", ".tsv", ".html", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  const char *title = _ ("The table was not written.");
  g_autofree char *path = local_path (self, target, title);
  g_autofree char *folded = path != NULL ? g_ascii_strdown (path, -1) : NULL;
  g_autoptr (GVariant) table = g_steal_pointer (&self->table);
  g_autoptr (GError) error = NULL;

  if (path == NULL || !may_replace (self, file, target, title))
    return;
  for (guint i = 0; suffixes[i] != NULL; i++)
    {
      const char *text;
      g_variant_get_child (table, 1 + i, "&s", &text);
      if (!g_str_has_suffix (folded, suffixes[i]))
        continue;
      gboolean written = bw_file_replace (path, text, strlen (text), &error);
      tell (self, target, written, title, error);
      return;
    }
}

/**
 * bw_window_export_table:
 * @table: (type "(ssss)"): a name for it, and the table as CSV, as TSV and as HTML
 *
 * Lets the person choose where to write a table; the suffix tells in which form.
 */
void
bw_window_export_table (BwWindow *self, GVariant *table)
{
  const char *name;

  g_clear_pointer (&self->table, g_variant_unref);
  self->table = g_variant_ref (table);
  choose (self, _ ("Export the Table"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"), table_chosen);
  add_filter (self, _ ("Comma-separated values, for programs"), ".csv");
  add_filter (self, _ ("Values with tabs between, for spreadsheets"), ".tsv");
  add_filter (self, _ ("HTML pages"), ".html");
  g_variant_get_child (table, 0, "&s", &name);
  suggest_name (self, name, "");
  gtk_native_dialog_show (self->chooser);
}

static void
report_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".pdf", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  const char *title = _ ("The report was not written.");
  g_autofree char *path = local_path (self, target, title);
  g_autoptr (GError) error = NULL;

  if (path == NULL || !may_replace (self, file, target, title))
    return;
  gboolean written = bw_report_to_pdf (bw_document_get_sheet (self->document),
                                       bw_document_get_catalogue (self->document), path, &error);
  tell (self, target, written, title, error);
}

void
bw_window_export_report (BwWindow *self)
{
  choose (self, _ ("Export the Report"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"),
          report_chosen);
  add_filter (self, _ ("PDF pages"), ".pdf");
  suggest_name (self, bw_document_get_sheet (self->document)->title, ".pdf");
  gtk_native_dialog_show (self->chooser);
}

static void
edid_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".bin", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  const char *title = _ ("The EDID was not written.");
  g_autofree char *path = local_path (self, target, title);
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  guint8 block[BW_EDID_BLOCK_BYTES];

  if (path == NULL || !may_replace (self, file, target, title))
    return;
  if (bw_edid_write (bw_document_get_sheet (self->document),
                     bw_document_get_catalogue (self->document), block, notes, &error)
      && bw_file_replace (path, block, sizeof block, &error))
    {
      bw_notice_show_written (self->notice, target);
      bw_window_show_notes (self, _ ("The EDID is written. What it cannot say in full:"), notes);
    }
  else
    bw_window_show_error (self, title, error);
}

void
bw_window_export_edid (BwWindow *self)
{
  choose (self, _ ("Export the Monitor as an EDID"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"),
          edid_chosen);
  add_filter (self, _ ("EDID blocks"), ".bin");
  suggest_name (self, bw_document_get_sheet (self->document)->monitor->name, ".bin");
  gtk_native_dialog_show (self->chooser);
}

/* The hook-up */

static BwHookupPage *
hookup_page (BwWindow *self)
{
  return BW_HOOKUP_PAGE (bw_window_get_page (self, "hookup"));
}

static void
parts_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".csv", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  const char *title = _ ("The list of parts was not written.");
  g_autofree char *path = local_path (self, target, title);
  g_autofree char *csv = bw_hookup_side_dup_parts_csv (
      bw_hookup_page_get_side (hookup_page (self)));
  g_autoptr (GError) error = NULL;

  if (path == NULL || csv == NULL || !may_replace (self, file, target, title))
    return;
  gboolean written = bw_file_replace (path, csv, strlen (csv), &error);
  tell (self, target, written, title, error);
}

void
bw_window_export_parts (BwWindow *self)
{
  choose (self, _ ("Export the List of Parts"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"),
          parts_chosen);
  add_filter (self, _ ("Comma-separated values"), ".csv");
  g_autofree char *name = bw_hookup_page_dup_name (hookup_page (self));
  suggest_name (self, name, ".csv");
  gtk_native_dialog_show (self->chooser);
}

static void
hookup_chosen (BwWindow *self, GFile *file, const char *suffix)
{
  static const char *const suffixes[] = { ".pdf", NULL };
  g_autoptr (GFile) target = with_suffix (file, suffixes, suffix);
  const char *title = _ ("The hook-up was not written.");
  g_autofree char *path = local_path (self, target, title);
  g_autoptr (GError) error = NULL;
  BwHookupView view;

  if (path == NULL || !bw_hookup_page_get_view (hookup_page (self), &view)
      || !may_replace (self, file, target, title))
    return;
  gboolean written = bw_hookup_report_to_pdf (&view, bw_document_get_sheet (self->document)->title,
                                              path, &error);
  tell (self, target, written, title, error);
}

void
bw_window_export_hookup (BwWindow *self)
{
  choose (self, _ ("Export the Hook-up as a Sheet"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"),
          hookup_chosen);
  add_filter (self, _ ("PDF pages"), ".pdf");
  g_autofree char *name = bw_hookup_page_dup_name (hookup_page (self));
  suggest_name (self, name, ".pdf");
  gtk_native_dialog_show (self->chooser);
}
