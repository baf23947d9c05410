/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/editor-row.h"

G_BEGIN_DECLS

#define BW_TYPE_EDITOR (bw_editor_get_type ())
G_DECLARE_FINAL_TYPE (BwEditor, bw_editor, BW, EDITOR, GtkWidget)

void bw_editor_set_document (BwEditor *self, BwDocument *document);
void bw_editor_edit (BwEditor *self, BwPart part);
void bw_editor_close (BwEditor *self);
BwPart bw_editor_get_part (BwEditor *self);
BwEditorRow *bw_editor_get_row (BwEditor *self, const char *key);
gboolean bw_editor_finish (BwEditor *self);

G_END_DECLS
