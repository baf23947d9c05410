/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"

G_BEGIN_DECLS

/* One state of the sheet, with the selection that went with it. */
typedef struct
{
  BwSheet *sheet;
  guint source;
  guint input;
  guint64 serial; /* tells states apart; the saved one is remembered by it */
} BwState;

/* A state to go back (or forward) to, and the words for the change that lies between. */
typedef struct
{
  BwState state;
  char *words;
} BwStep;

struct _BwDocument
{
  GObject parent_instance;

  BwState now;
  guint64 last_serial;
  guint64 saved_serial;
  GPtrArray *undo; /* owned BwStep, the latest last */
  GPtrArray *redo;
  GFile *file;        /* nullable */
  BwFileGuard *guard; /* nullable: with the file */
  BwFileState file_state;
  guint file_check; /* the source that will look at the file; zero: none */
  GPtrArray *pending; /* borrowed BwPending: each takes itself off the list */
  gboolean taking;

  const BwCatalogue *catalogue; /* borrowed */
};

void bw_document_start (BwDocument *self, BwSheet *sheet);
void bw_document_commit (BwDocument *self, BwSheet *next, guint source, guint input, char *words);
void bw_document_settle_selection (BwDocument *self);
void bw_document_emit_changed (BwDocument *self);
void bw_document_emit_selection (BwDocument *self);
void bw_document_emit_saved (BwDocument *self);
void bw_document_emit_typed (BwDocument *self);
void bw_document_emit_file_changed (BwDocument *self);
gboolean bw_document_take_or_fail (BwDocument *self, GError **error);
void bw_document_set_file (BwDocument *self, GFile *file, const char *text);
void bw_document_drop_file (BwDocument *self);
void bw_step_free (BwStep *step);

G_END_DECLS
