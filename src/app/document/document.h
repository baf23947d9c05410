/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/bench/sheet.h"
#include "core/fit/fit.h"

G_BEGIN_DECLS

/* The part of a bench sheet that a form edits. */
typedef enum
{
  BW_PART_SHEET,
  BW_PART_MONITOR,
  BW_PART_INPUT,
  BW_PART_SOURCE
} BwPart;

/* No source, or no input, is selected: there is none. */
#define BW_NO_INDEX G_MAXUINT

/**
 * BwEdit:
 * @field: a field of the part's table
 * @text: what was typed, as bw_field_parse() reads it
 */
typedef struct
{
  const BwField *field;
  const char *text;
} BwEdit;

#define BW_DOCUMENT_ERROR (bw_document_error_quark ())

typedef enum
{
  BW_DOCUMENT_ERROR_RASTER,    /* a raster that is neither in the sheet nor in the catalogue */
  BW_DOCUMENT_ERROR_TOO_MANY,  /* more inputs or sources than a sheet holds */
  BW_DOCUMENT_ERROR_NOT_LOCAL, /* a file that has no path */
  BW_DOCUMENT_ERROR_EXISTS     /* a file that nobody agreed to replace */
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
void bw_document_select (BwDocument *self, guint source, guint input);
gboolean bw_document_judge (BwDocument *self, guint source, guint input, BwFit *fit);
gboolean bw_document_case (BwDocument *self, guint source, guint input, BwRasterFigures *figures,
                           BwCase *c);

/* document-edit.c */
const BwFieldTable *bw_part_fields (BwPart part);
guint bw_document_count (BwDocument *self, BwPart part);
gconstpointer bw_document_get_object (BwDocument *self, BwPart part, guint index);
gboolean bw_document_edit (BwDocument *self, BwPart part, guint index, const BwEdit *edits,
                           guint n_edits, char mark, GError **error);
gboolean bw_document_set_field (BwDocument *self, BwPart part, guint index, const BwField *field,
                                const char *text, char mark, GError **error);
void bw_document_set_monitor (BwDocument *self, const BwMonitor *monitor);
gboolean bw_document_add_input (BwDocument *self, const BwInput *like, GError **error);
gboolean bw_document_add_source (BwDocument *self, const BwSource *like, GError **error);
gboolean bw_document_duplicate (BwDocument *self, BwPart part, guint index, GError **error);
void bw_document_remove (BwDocument *self, BwPart part, guint index);

/* document-raster.c */
gboolean bw_document_use_raster (BwDocument *self, guint source, const BwRaster *raster,
                                 GError **error);

/* document-undo.c */
gboolean bw_document_undo (BwDocument *self);
gboolean bw_document_redo (BwDocument *self);
const char *bw_document_undo_words (BwDocument *self);
const char *bw_document_redo_words (BwDocument *self);

/* document-file.c */
gboolean bw_document_load (BwDocument *self, GFile *file, GPtrArray *faults);
gboolean bw_document_load_bytes (BwDocument *self, GBytes *bytes, const char *name,
                                 GPtrArray *faults);
gboolean bw_document_save (BwDocument *self, GFile *file, GError **error);

G_END_DECLS
