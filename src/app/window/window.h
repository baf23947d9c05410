/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/bench/bench-panel.h"
#include "app/bench/editor.h"
#include "app/document/document.h"
#include "app/document/draft-slot.h"
#include "app/document/draft.h"
#include "app/widgets/page.h"

G_BEGIN_DECLS

/**
 * BwPageKind:
 * @id: for win.page
 * @label: on its button; to be translated in the context "page"
 * @tooltip: what the page is for; to be translated
 * @shortcut: what its key does; to be translated
 * @get_type: of a BwPage
 *
 * A page that the window has.
 */
typedef struct
{
  const char *id;
  const char *label;
  const char *tooltip;
  const char *shortcut;
  GType (*get_type) (void);
} BwPageKind;

#define BW_TYPE_WINDOW (bw_window_get_type ())
G_DECLARE_FINAL_TYPE (BwWindow, bw_window, BW, WINDOW, GtkApplicationWindow)

/* The answers about a file that somebody else has changed. */
typedef enum
{
  BW_GUARD_LOAD_THEIRS = 1,
  BW_GUARD_KEEP_MINE,
  BW_GUARD_KEEP_AS_COPY
} BwGuardAnswer;

BwWindow *bw_window_new (GtkApplication *application, BwDocument *document, GSettings *settings);

BwDocument *bw_window_get_document (BwWindow *self);
BwBenchPanel *bw_window_get_bench (BwWindow *self);
BwEditor *bw_window_get_editor (BwWindow *self);
BwPicturePanel *bw_window_get_panel (BwWindow *self);
GMenu *bw_window_get_recent_menu (BwWindow *self);

void bw_window_edit (BwWindow *self, BwPart part);
gboolean bw_window_is_editing (BwWindow *self);
void bw_window_show_faults (BwWindow *self, const char *title, GPtrArray *faults);
void bw_window_show_error (BwWindow *self, const char *title, const GError *error);
const char *bw_window_get_fault_text (BwWindow *self);
const char *bw_window_get_notice_text (BwWindow *self);
const char *bw_window_get_page_id (BwWindow *self);

/* window-handles.c */
int bw_window_get_side_width (BwWindow *self);
GVariant *bw_window_get_shares (BwWindow *self);
void bw_window_put_handles (BwWindow *self, int side_width, GVariant *shares);

/* window-pages.c */
const BwPageKind *bw_page_kinds (guint *n);
void bw_window_show_page (BwWindow *self, const char *id);
BwPage *bw_window_get_page (BwWindow *self, const char *id);
BwPage *bw_window_get_shown_page (BwWindow *self);

/* window-files.c */
gboolean bw_window_open (BwWindow *self, GFile *file);
gboolean bw_window_open_bytes (BwWindow *self, GBytes *bytes, const char *name);
BwWindow *bw_window_find (GFile *file);

/* window-draft.c */
gboolean bw_window_restore (BwWindow *self, const BwDraft *draft, BwDraftSlot *slot);
void bw_window_flush_draft (BwWindow *self);

G_END_DECLS
