/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/document/draft-keeper.h"
#include "app/widgets/fault-bar.h"
#include "app/widgets/notice.h"
#include "window.h"

G_BEGIN_DECLS

struct _BwWindow
{
  GtkApplicationWindow parent_instance;

  GtkLabel *title;
  GtkLabel *subtitle;
  GtkWidget *undo;
  GtkWidget *redo;
  GtkMenuButton *menu;
  GMenu *recent_menu;
  BwFaultBar *faults;
  GtkInfoBar *guard;
  GtkLabel *guard_title;
  GtkLabel *guard_text;
  GtkWidget *load_theirs;
  GtkPaned *panes;
  BwNotice *notice;
  int usual_side;       /* the width of the bench that nobody has set */
  GVariantDict *shares; /* the handles of all pages, those that are not made yet among them */
  GtkStack *side;
  BwBenchPanel *bench;
  BwEditor *editor;
  GtkStack *pages;
  GtkBox *page_buttons; /* in the header bar */
  GPtrArray *toggles;   /* (element-type GtkToggleButton): borrowed, those of bw_page_kinds() */
  GtkWidget *page;      /* borrowed: the page that is shown */
  gboolean turning;     /* it is being settled which page that is */

  BwDocument *document;
  BwDraftKeeper *drafts;
  GSettings *settings;
  GtkNativeDialog *chooser; /* nullable: while it is open */
  GtkWidget *question;      /* nullable, weak: while it is open */
  GVariant *table;          /* nullable: that is to be exported */
  guint inhibit_cookie;     /* zero: none */
  gboolean closing;         /* the person has answered: close without asking */
  gboolean close_after_save;
  gboolean leaving; /* it was asked to close, and has not been kept from it */
};

/* window-actions.c */
void bw_window_install_actions (GtkWidgetClass *widget_class);
void bw_window_update_actions (BwWindow *self);

/* window-pages.c */
void bw_window_add_pages (BwWindow *self);
void bw_window_on_page_turned (BwWindow *self);
void bw_window_show_shortcuts (BwWindow *self);
void bw_window_show_help (BwWindow *self);

/* window-files.c */
void bw_window_choose_open (BwWindow *self);
void bw_window_save (BwWindow *self);
void bw_window_save_as (BwWindow *self);
void bw_window_save_copy (BwWindow *self);
void bw_window_export_picture (BwWindow *self);
void bw_window_export_table (BwWindow *self, GVariant *table);
void bw_window_export_report (BwWindow *self);
void bw_window_export_edid (BwWindow *self);
void bw_window_export_parts (BwWindow *self);
void bw_window_export_hookup (BwWindow *self);

/* window-handles.c */
void bw_window_place_handles (BwWindow *self);
void bw_window_remember_handles (BwWindow *self);

/* window-drop.c */
void bw_window_accept_drops (BwWindow *self);

/* window-edid.c */
gboolean bw_window_open_edid (BwWindow *self, GFile *file, gboolean *opened);
void bw_window_show_notes (BwWindow *self, const char *title, const GPtrArray *notes);

/* window-guard.c */
void bw_window_update_guard (BwWindow *self);
void bw_window_on_guard_response (BwWindow *self, int response);
void bw_window_ask_about_file (BwWindow *self);
void bw_window_on_active (BwWindow *self);

/* window-draft.c */
void bw_window_keep_drafts (BwWindow *self);

/* window-close.c */
void bw_window_add_stays (BwWindowClass *klass);
void bw_window_stay (BwWindow *self);
void bw_window_ask (BwWindow *self, GtkWidget *question);
void bw_window_end_question (BwWindow *self);
gboolean bw_window_ask_before_close (BwWindow *self);

G_END_DECLS
