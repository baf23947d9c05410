/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/bench/sheet.h"
#include "core/fit/fit.h"
#include "guard.h"
#include "part.h"
#include "pending.h"

G_BEGIN_DECLS

#define BW_DOCUMENT_ERROR (bw_document_error_quark ())

typedef enum
{
  BW_DOCUMENT_ERROR_RASTER,    /* a raster that is neither in the sheet nor in the catalogue */
  BW_DOCUMENT_ERROR_TOO_MANY,  /* more inputs or sources than a sheet holds */
  BW_DOCUMENT_ERROR_NOT_LOCAL, /* a file that has no path */
  BW_DOCUMENT_ERROR_EXISTS,    /* a file that nobody agreed to replace */
  BW_DOCUMENT_ERROR_TYPED,     /* a value that was typed is refused */
  BW_DOCUMENT_ERROR_CHANGED    /* the file is another one than was read or written here */
} BwDocumentError;

GQuark bw_document_error_quark (void);

#define BW_TYPE_DOCUMENT (bw_document_get_type ())
G_DECLARE_FINAL_TYPE (BwDocument, bw_document, BW, DOCUMENT, GObject)

BwDocument *bw_document_new (const BwCatalogue *catalogue);

const BwSheet *bw_document_get_sheet (BwDocument *self);
const BwCatalogue *bw_document_get_catalogue (BwDocument *self);
GFile *bw_document_get_file (BwDocument *self);
char *bw_document_dup_name (BwDocument *self);
gboolean bw_document_is_blank (BwDocument *self);
gboolean bw_document_is_modified (BwDocument *self);

guint bw_document_get_source (BwDocument *self);
guint bw_document_get_input (BwDocument *self);
const BwSource *bw_document_selected_source (BwDocument *self);
const BwInput *bw_document_selected_input (BwDocument *self);
const BwRaster *bw_document_selected_raster (BwDocument *self);
void bw_document_follow (BwDocument *self, GCallback update, gpointer follower);
gboolean bw_document_select (BwDocument *self, guint source, guint input);
gboolean bw_document_judge (BwDocument *self, guint source, guint input, BwFit *fit);
gboolean bw_document_case (BwDocument *self, guint source, guint input, BwRasterFigures *figures,
                           BwCase *c);

/* edit.c */
guint bw_document_count (BwDocument *self, BwPart part);
gconstpointer bw_document_get_object (BwDocument *self, BwPart part, guint index);
gboolean bw_document_edit (BwDocument *self, BwPart part, guint index, const BwEdit *edits,
                           guint n_edits, char mark, GError **error);
gboolean bw_document_set_field (BwDocument *self, BwPart part, guint index, const BwField *field,
                                const char *text, char mark, GError **error);
gboolean bw_document_set_origin (BwDocument *self, BwPart part, guint index, const BwField *field,
                                 BwOrigin origin, GError **error);
gboolean bw_document_lacks_raster (BwDocument *self, BwLack *lack);
gboolean bw_document_set_monitor (BwDocument *self, const BwMonitor *monitor);
gboolean bw_document_add_input (BwDocument *self, const BwInput *like, GError **error);
gboolean bw_document_add_source (BwDocument *self, const BwSource *like, GError **error);
gboolean bw_document_duplicate (BwDocument *self, BwPart part, guint index, GError **error);
gboolean bw_document_remove (BwDocument *self, BwPart part, guint index);

/* raster.c */
gboolean bw_document_use_raster (BwDocument *self, guint source, const BwRaster *raster,
                                 GError **error);

/* typed.c */
void bw_document_set_pending (BwDocument *self, BwPending *entry, gboolean pending);
gboolean bw_document_take_typed (BwDocument *self);
GPtrArray *bw_document_list_typed (BwDocument *self);
gboolean bw_document_has_typed (BwDocument *self);

/* undo.c */
gboolean bw_document_undo (BwDocument *self);
gboolean bw_document_redo (BwDocument *self);
const char *bw_document_undo_words (BwDocument *self);
const char *bw_document_redo_words (BwDocument *self);

/* file.c */
gboolean bw_document_load (BwDocument *self, GFile *file, GPtrArray *faults);
gboolean bw_document_load_bytes (BwDocument *self, GBytes *bytes, const char *name,
                                 GPtrArray *faults);
gboolean bw_document_save (BwDocument *self, GFile *file, GError **error);
BwFileState bw_document_check_file (BwDocument *self);
BwFileState bw_document_get_file_state (BwDocument *self);
const char *bw_document_get_digest (BwDocument *self);
void bw_document_keep_mine (BwDocument *self);
GPtrArray *bw_document_list_theirs (BwDocument *self);
gboolean bw_document_reload (BwDocument *self, GPtrArray *faults);
gboolean bw_document_restore (BwDocument *self, const BwSheet *sheet, GFile *file);

/* What a field of a window asks for the document: its toplevel window. */
#define BW_TYPE_DOCUMENT_HOST (bw_document_host_get_type ())
G_DECLARE_INTERFACE (BwDocumentHost, bw_document_host, BW, DOCUMENT_HOST, GObject)

/**
 * BwDocumentHostInterface:
 * @get_document: the document that is worked on in the window
 */
struct _BwDocumentHostInterface
{
  GTypeInterface parent_interface;

  BwDocument *(*get_document) (BwDocumentHost *self);
};

BwDocument *bw_document_host_get_document (BwDocumentHost *self);

G_END_DECLS
