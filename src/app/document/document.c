/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <glib/gi18n-lib.h>

/**
 * BwDocument:
 *
 * A bench sheet that is being worked on: the sheet, its file, what is selected in it, and the way
 * back. The sheet is only changed through the calls of this class; each either makes one step that
 * can be undone, or changes nothing.
 */
G_DEFINE_FINAL_TYPE (BwDocument, bw_document, G_TYPE_OBJECT)

G_DEFINE_QUARK (bw-document-error-quark, bw_document_error)

enum
{
  CHANGED,
  SELECTION_CHANGED,
  SAVED,
  TYPED,
  FILE_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
bw_document_finalize (GObject *object)
{
  BwDocument *self = BW_DOCUMENT (object);

  bw_sheet_free (self->now.sheet);
  g_ptr_array_unref (self->undo);
  g_ptr_array_unref (self->redo);
  g_ptr_array_unref (self->pending);
  bw_document_drop_file (self);
  G_OBJECT_CLASS (bw_document_parent_class)->finalize (object);
}

static guint
add_signal (BwDocumentClass *klass, const char *name)
{
  return g_signal_new (name, G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
bw_document_class_init (BwDocumentClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_document_finalize;

  /* BwDocument::changed: the sheet is another one now; every pointer into it is stale. */
  signals[CHANGED] = add_signal (klass, "changed");
  /* BwDocument::selection-changed: another source or input is selected. */
  signals[SELECTION_CHANGED] = add_signal (klass, "selection-changed");
  /* BwDocument::saved: the file, or whether the sheet differs from it, has changed. */
  signals[SAVED] = add_signal (klass, "saved");
  /* BwDocument::typed: something was typed, or what was typed is taken or taken back. */
  signals[TYPED] = add_signal (klass, "typed");
  /* BwDocument::file-changed: somebody else has changed the file, or has put it back as it was. */
  signals[FILE_CHANGED] = add_signal (klass, "file-changed");
}

static void
bw_document_init (BwDocument *self)
{
  self->undo = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_step_free);
  self->redo = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_step_free);
  self->pending = g_ptr_array_new ();
}

/* The sheet of a new window. */
static BwSheet *
blank_sheet (void)
{
  BwSheet *sheet = bw_sheet_new ();
  g_free (sheet->title);
  sheet->title = g_strdup (_ ("New bench sheet"));
  return sheet;
}

/**
 * bw_document_new:
 * @catalogue: borrowed; must outlive the document
 *
 * Returns: (transfer full): a document with an empty sheet and no file
 */
BwDocument *
bw_document_new (const BwCatalogue *catalogue)
{
  BwDocument *self = g_object_new (BW_TYPE_DOCUMENT, NULL);
  self->catalogue = catalogue;
  bw_document_start (self, blank_sheet ());
  return self;
}

/* Puts @sheet (owned) in place as the saved state, with no way back. */
void
bw_document_start (BwDocument *self, BwSheet *sheet)
{
  bw_sheet_free (self->now.sheet);
  self->now = (BwState){ sheet, 0, 0, ++self->last_serial };
  self->saved_serial = self->now.serial;
  g_ptr_array_set_size (self->undo, 0);
  g_ptr_array_set_size (self->redo, 0);
  bw_document_settle_selection (self);
}

static guint
settle (guint index, guint count)
{
  if (count == 0)
    return BW_NO_INDEX;
  if (index == BW_NO_INDEX)
    return 0;
  return MIN (index, count - 1);
}

/* Moves the selection onto what there is. */
void
bw_document_settle_selection (BwDocument *self)
{
  self->now.source = settle (self->now.source, self->now.sheet->sources->len);
  self->now.input = settle (self->now.input, self->now.sheet->monitor->inputs->len);
}

void
bw_document_emit_changed (BwDocument *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

void
bw_document_emit_selection (BwDocument *self)
{
  g_signal_emit (self, signals[SELECTION_CHANGED], 0);
}

void
bw_document_emit_saved (BwDocument *self)
{
  g_signal_emit (self, signals[SAVED], 0);
}

void
bw_document_emit_typed (BwDocument *self)
{
  g_signal_emit (self, signals[TYPED], 0);
}

void
bw_document_emit_file_changed (BwDocument *self)
{
  g_signal_emit (self, signals[FILE_CHANGED], 0);
}

/**
 * bw_document_get_sheet:
 *
 * Returns: (transfer none): the sheet as it is now; valid until the next "changed"
 */
const BwSheet *
bw_document_get_sheet (BwDocument *self)
{
  return self->now.sheet;
}

/**
 * bw_document_get_catalogue:
 *
 * Returns: (transfer none): where rasters are looked up
 */
const BwCatalogue *
bw_document_get_catalogue (BwDocument *self)
{
  return self->catalogue;
}

/**
 * bw_document_get_file:
 *
 * Returns: (transfer none) (nullable): where the sheet was read from or last saved to
 */
GFile *
bw_document_get_file (BwDocument *self)
{
  return self->file;
}

/**
 * bw_document_dup_name:
 *
 * Returns: (transfer full): what to call the document on screen: its file's name, or its title
 */
char *
bw_document_dup_name (BwDocument *self)
{
  if (self->file == NULL)
    return g_strdup (self->now.sheet->title);
  g_autofree char *base = g_file_get_basename (self->file);
  return g_filename_display_name (base);
}

/**
 * bw_document_is_blank:
 *
 * Returns: whether no monitor has been chosen yet; such a sheet cannot be saved
 */
gboolean
bw_document_is_blank (BwDocument *self)
{
  return *self->now.sheet->monitor->name == '\0';
}

/**
 * bw_document_is_modified:
 *
 * Returns: whether the sheet differs from what was loaded or last saved, something is typed for it,
 * or its file is gone
 */
gboolean
bw_document_is_modified (BwDocument *self)
{
  return self->now.serial != self->saved_serial || self->file_state == BW_FILE_GONE
         || bw_document_has_typed (self);
}

/**
 * bw_document_get_source:
 *
 * Returns: the selected source, or %BW_NO_INDEX if there is none
 */
guint
bw_document_get_source (BwDocument *self)
{
  return self->now.source;
}

/**
 * bw_document_get_input:
 *
 * Returns: the selected input, or %BW_NO_INDEX if there is none
 */
guint
bw_document_get_input (BwDocument *self)
{
  return self->now.input;
}

/**
 * bw_document_selected_source:
 *
 * Returns: (transfer none) (nullable): the source that every page speaks of; valid until the next
 * "changed"
 */
const BwSource *
bw_document_selected_source (BwDocument *self)
{
  return self->now.source != BW_NO_INDEX ? bw_sheet_source (self->now.sheet, self->now.source)
                                         : NULL;
}

/**
 * bw_document_selected_input:
 *
 * Returns: (transfer none) (nullable): the input that every page speaks of; valid until the next
 * "changed"
 */
const BwInput *
bw_document_selected_input (BwDocument *self)
{
  return self->now.input != BW_NO_INDEX
             ? bw_monitor_input (self->now.sheet->monitor, self->now.input)
             : NULL;
}

/**
 * bw_document_selected_raster:
 *
 * Returns: (transfer none) (nullable): the raster of the selected source; valid until the next
 * "changed"
 */
const BwRaster *
bw_document_selected_raster (BwDocument *self)
{
  const BwSource *source = bw_document_selected_source (self);
  return source != NULL ? bw_sheet_raster (self->now.sheet, self->catalogue, source) : NULL;
}

/**
 * bw_document_lacks_raster:
 * @lack: (out caller-allocates): the figure; none if there is no source at all
 *
 * Returns: whether it is not known which raster the selected source gives
 */
gboolean
bw_document_lacks_raster (BwDocument *self, BwLack *lack)
{
  const BwSource *source = bw_document_selected_source (self);
  *lack = (BwLack){ NULL };
  return source != NULL && bw_lacks_source (source, G_STRUCT_OFFSET (BwSource, raster), lack);
}

/**
 * bw_document_follow:
 * @update: called with @follower as its first argument, each time that the sheet or the selection
 *   changes
 * @follower: a GObject; it is followed no longer once it is gone
 */
void
bw_document_follow (BwDocument *self, GCallback update, gpointer follower)
{
  g_signal_connect_object (self, "changed", update, follower, G_CONNECT_SWAPPED);
  g_signal_connect_object (self, "selection-changed", update, follower, G_CONNECT_SWAPPED);
}

/**
 * bw_document_select:
 * @source: a source of the sheet, or %BW_NO_INDEX for the first
 * @input: likewise
 *
 * Selects what every page speaks of. An index past the end selects the last one.
 *
 * Returns: %FALSE if what is typed is refused; the selection is then as it was
 */
gboolean
bw_document_select (BwDocument *self, guint source, guint input)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), FALSE);
  if ((source != self->now.source || input != self->now.input) && !bw_document_take_typed (self))
    return FALSE;
  guint old_source = self->now.source, old_input = self->now.input;
  self->now.source = source;
  self->now.input = input;
  bw_document_settle_selection (self);
  if (self->now.source != old_source || self->now.input != old_input)
    bw_document_emit_selection (self);
  return TRUE;
}

/**
 * bw_document_case:
 * @figures: (out): what @c points to; must live as long
 * @c: (out): the case, valid until the next "changed"
 *
 * Gathers what the sentences of a finding need.
 *
 * Returns: %FALSE if there is no such source or input
 */
gboolean
bw_document_case (BwDocument *self, guint source, guint input, BwRasterFigures *figures, BwCase *c)
{
  const BwSheet *sheet = self->now.sheet;
  if (source >= sheet->sources->len || input >= sheet->monitor->inputs->len)
    return FALSE;
  bw_case_init (c, figures, sheet, self->catalogue, source, input);
  return TRUE;
}

/**
 * bw_document_judge:
 * @fit: (out): the fit of @source at @input
 *
 * Returns: %FALSE if there is no such source or input
 */
gboolean
bw_document_judge (BwDocument *self, guint source, guint input, BwFit *fit)
{
  BwRasterFigures figures;
  BwCase c;
  if (!bw_document_case (self, source, input, &figures, &c))
    return FALSE;
  bw_fit_judge (&c, fit);
  return TRUE;
}
