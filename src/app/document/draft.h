/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"

G_BEGIN_DECLS

/**
 * BwDraft:
 * @file: (nullable): the file that the sheet belongs to; %NULL if it was never saved
 * @digest: (nullable): of what the file held then, as bw_document_get_digest() gives it
 * @sheet: the sheet as it was
 * @typed: (element-type BwTyped): what was typed in its form and not taken yet
 *
 * A sheet that was being worked on, with what a file does not hold.
 */
typedef struct
{
  GFile *file;
  char *digest;
  BwSheet *sheet;
  GPtrArray *typed;
} BwDraft;

char *bw_draft_to_text (BwDocument *document);
BwDraft *bw_draft_parse (const char *text, const char *name, const BwCatalogue *catalogue,
                         GPtrArray *faults);
void bw_draft_free (BwDraft *draft);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwDraft, bw_draft_free)

G_END_DECLS
