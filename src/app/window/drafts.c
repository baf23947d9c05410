/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drafts.h"

#include <glib/gi18n-lib.h>

#include "app/document/differences.h"
#include "app/document/draft-slot.h"
#include "app/widgets/question.h"

/* Drafts that a program left behind which ended before its sheets were saved: each is offered in a
 * dialog that says in what it differs from its file. */

typedef struct
{
  GPtrArray *slots; /* owned BwDraftSlot, still to be offered */
  const BwCatalogue *catalogue;
  BwOpenFunc open;
  gpointer open_data;

  BwDraftSlot *slot; /* nullable: the one that is offered */
  BwDraft *draft;
} Offers;

static void offer_next (Offers *offers, GtkWindow *parent);

static void
clear_offered (Offers *offers)
{
  g_clear_pointer (&offers->slot, bw_draft_slot_unref);
  g_clear_pointer (&offers->draft, bw_draft_free);
}

/* What was not answered stays for the next start. */
static void
offers_free (gpointer data)
{
  Offers *offers = data;
  clear_offered (offers);
  g_ptr_array_unref (offers->slots);
  g_free (offers);
}

/* In words */

/* The sheet that the draft is held against: its file, or an empty sheet if there is none. */
static BwSheet *
sheet_to_compare (const Offers *offers)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *path = offers->draft->file != NULL ? g_file_get_path (offers->draft->file) : NULL;
  BwSheet *sheet = path != NULL ? bw_sheet_load (path, offers->catalogue, faults) : NULL;
  return sheet != NULL ? sheet : bw_sheet_new ();
}

static GPtrArray *
list_differences (const Offers *offers)
{
  const BwDraft *draft = offers->draft;
  g_autoptr (BwSheet) sheet = sheet_to_compare (offers);
  GPtrArray *lines = bw_sheet_differences (sheet, draft->sheet, offers->catalogue);

  for (guint i = 0; i < draft->typed->len; i++)
    g_ptr_array_add (lines, bw_typed_difference (draft->sheet, draft->typed->pdata[i]));
  return lines;
}

static char *
question_words (const BwDraft *draft)
{
  if (draft->file == NULL)
    return g_strdup_printf (_ ("Restore “%s”, which was never saved?"), draft->sheet->title);
  g_autofree char *base = g_file_get_basename (draft->file);
  g_autofree char *name = g_filename_display_name (base);
  return g_strdup_printf (_ ("Restore the changes to “%s”?"), name);
}

static const char *
file_words (const BwDraft *draft)
{
  g_autofree char *digest = draft->file != NULL ? bw_file_digest (draft->file) : NULL;

  if (draft->file == NULL)
    return _ ("What it holds:");
  if (digest == NULL)
    return _ ("Its file is no longer there. What the draft holds:");
  if (g_strcmp0 (digest, draft->digest) != 0)
    return _ ("Its file was changed since then. What differs in the draft (the file as "
              "it is now → the draft):");
  return _ ("What differs in the draft (the file → the draft):");
}

static char *
explanation_words (const BwDraft *draft, gint64 time)
{
  g_autoptr (GDateTime) written = g_date_time_new_from_unix_local (time);
  g_autofree char *when = g_date_time_format (written, "%x %X");
  g_autofree char *folder = NULL;

  if (draft->file == NULL)
    return g_strdup_printf (
        /* Translators: date and time; a sentence that leads to a list */
        _ ("Breezeway ended before the sheet was saved. Its draft is of %1$s. %2$s"), when,
        file_words (draft));
  g_autoptr (GFile) parent = g_file_get_parent (draft->file);
  folder = parent != NULL ? g_file_get_parse_name (parent) : g_strdup ("");
  return g_strdup_printf (
      /* Translators: a folder; date and time; a sentence that leads to a list */
      _ ("Breezeway ended before the sheet in %1$s was saved. Its draft is of %2$s. %3$s"), folder,
      when, file_words (draft));
}

/* The answer */

static void
restore (Offers *offers)
{
  BwWindow *window = offers->open (offers->open_data, offers->draft->file);
  bw_window_restore (window, offers->draft, offers->slot);
}

static void
on_answer (GtkDialog *dialog, int answer, gpointer data)
{
  Offers *offers = g_object_steal_data (G_OBJECT (dialog), "offers");
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (dialog));
  g_autoptr (GtkWindow) held = parent != NULL ? g_object_ref (parent) : NULL;

  bw_question_close (dialog);
  if (answer == GTK_RESPONSE_ACCEPT)
    restore (offers);
  else if (answer == GTK_RESPONSE_REJECT)
    bw_draft_slot_remove (offers->slot);
  clear_offered (offers);
  offer_next (offers, held);
}

static void
ask (Offers *offers, GtkWindow *parent, gint64 time, const GPtrArray *lines)
{
  static const BwAnswer answers[] = {
    { GTK_RESPONSE_CANCEL, N_ ("_Later"), NULL },
    { GTK_RESPONSE_REJECT, N_ ("_Discard the Draft"), "destructive-action" },
    { GTK_RESPONSE_ACCEPT, N_ ("_Restore"), "suggested-action" },
  };
  g_autofree char *question = question_words (offers->draft);
  g_autofree char *explanation = explanation_words (offers->draft, time);
  GtkWidget *dialog = bw_question_new (parent, question, explanation, lines, answers,
                                       G_N_ELEMENTS (answers));

  g_object_set_data_full (G_OBJECT (dialog), "offers", offers, offers_free);
  g_signal_connect (dialog, "response", G_CALLBACK (on_answer), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* Offering */

/* Reads the draft of @offers' slot; what is wrong with it is shown, and it stays where it is. */
static gboolean
read_draft (Offers *offers, GtkWindow *parent, gint64 *time)
{
  const char *path = bw_draft_slot_get_path (offers->slot);
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  GError *error = NULL;
  g_autofree char *text = bw_draft_slot_read (offers->slot, time, &error);

  if (text == NULL)
    g_ptr_array_add (faults, error);
  else
    offers->draft = bw_draft_parse (text, path, offers->catalogue, faults);
  if (offers->draft == NULL && BW_IS_WINDOW (parent))
    bw_window_show_faults (BW_WINDOW (parent),
                           _ ("The draft of a sheet cannot be restored. It stays where it is."),
                           faults);
  return offers->draft != NULL;
}

/* Offers the next one that differs from its file; @offers is freed after the last. */
static void
offer_next (Offers *offers, GtkWindow *parent)
{
  gint64 time = 0;

  while (offers->slots->len > 0)
    {
      offers->slot = g_ptr_array_steal_index (offers->slots, 0);
      if (read_draft (offers, parent, &time))
        {
          g_autoptr (GPtrArray) lines = list_differences (offers);
          if (lines->len > 0)
            {
              ask (offers, parent, time, lines);
              return;
            }
          bw_draft_slot_remove (offers->slot);
        }
      clear_offered (offers);
    }
  offers_free (offers);
}

/**
 * bw_drafts_offer:
 * @parent: the window to ask over
 * @catalogue: must live as long as the program
 * @open: gives the window that a draft is restored in
 *
 * Asks about each draft that was left behind, one after the other. A draft that is the same as its
 * file is removed without a word.
 */
void
bw_drafts_offer (BwWindow *parent, const BwCatalogue *catalogue, BwOpenFunc open, gpointer data)
{
  g_return_if_fail (BW_IS_WINDOW (parent) && open != NULL);
  Offers *offers = g_new0 (Offers, 1);
  *offers = (Offers){ .slots = bw_draft_slots_left_behind (),
                      .catalogue = catalogue,
                      .open = open,
                      .open_data = data };
  offer_next (offers, GTK_WINDOW (parent));
}
