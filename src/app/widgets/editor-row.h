/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"

G_BEGIN_DECLS

#define BW_TYPE_EDITOR_ROW (bw_editor_row_get_type ())
G_DECLARE_DERIVABLE_TYPE (BwEditorRow, bw_editor_row, BW, EDITOR_ROW, GtkBox)

/**
 * BwEditorRowClass:
 * @show: shows @text, which bw_field_to_entry() made, in the control
 * @dup_text: what the control holds, as bw_field_parse() reads it
 * @look_at: (nullable): suits the control to the other members of the object
 */
struct _BwEditorRowClass
{
  GtkBoxClass parent_class;

  void (*show) (BwEditorRow *self, const char *text);
  char *(*dup_text) (BwEditorRow *self);
  void (*look_at) (BwEditorRow *self, gconstpointer object);
};

const BwField *bw_editor_row_get_field (BwEditorRow *self);
GtkWidget *bw_editor_row_get_control (BwEditorRow *self);
const char *bw_editor_row_get_error (BwEditorRow *self);

void bw_editor_row_show_object (BwEditorRow *self, gconstpointer object);
void bw_editor_row_show_text (BwEditorRow *self, const char *text);
void bw_editor_row_follow_object (BwEditorRow *self, gconstpointer object);
void bw_editor_row_follow_text (BwEditorRow *self, const char *text);
void bw_editor_row_set_note (BwEditorRow *self, const char *note, const char *css_class);
char *bw_editor_row_dup_text (BwEditorRow *self);
gboolean bw_editor_row_is_edited (BwEditorRow *self);
void bw_editor_row_set_error (BwEditorRow *self, const char *message);
void bw_editor_row_reset (BwEditorRow *self);
void bw_editor_row_enter_text (BwEditorRow *self, const char *text);
void bw_editor_row_add_origin (BwEditorRow *self, const BwFieldTable *table);
void bw_editor_row_set_part (BwEditorRow *self, BwPart part);

/* For the kinds of rows. */
void bw_editor_row_set_control (BwEditorRow *self, GtkWidget *control);
void bw_editor_row_finish_edit (BwEditorRow *self);
void bw_editor_row_text_changed (BwEditorRow *self);

/* One for each kind of control. */
BwEditorRow *bw_entry_row_new (const BwField *field);
BwEditorRow *bw_lines_row_new (const BwField *field);
BwEditorRow *bw_choice_row_new (const BwField *field);
BwEditorRow *bw_set_row_new (const BwField *field);
BwEditorRow *bw_switch_row_new (const BwField *field);
BwEditorRow *bw_pins_row_new (const BwField *field);
BwEditorRow *bw_raster_row_new (const BwField *field, GListModel *rasters);

G_END_DECLS
