/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/window/application.h"

G_BEGIN_DECLS

/* What the tests of the application share. */

const BwCatalogue *app_test_catalogue (void);
char *app_test_demo_path (void);
char *app_test_sheet_path (void);
char *app_test_scratch_path (const char *name);
char *app_test_copy_sheet (const char *name);
char *app_test_file_text (const char *path);
BwDocument *app_test_document_at (const char *path);
BwDocument *app_test_document (void);
char *app_test_sheet_text (BwDocument *document);
const BwField *app_test_field (BwPart part, const char *key);

char *app_test_drafts_folder (void);
guint app_test_count_drafts (void);
char *app_test_read_draft (void);
void app_test_clear_drafts (void);

BwWindow *app_test_window_new (BwDocument *document);
void app_test_allow_toolkit_faults (void);
void app_test_settle (void);
gboolean app_test_wait (gboolean (*done) (gpointer data), gpointer data);
void app_test_close (BwWindow *window);

/* A window with the tests' own sheet, from which most tests of the window start. */
typedef struct
{
  BwDocument *document;
  BwWindow *window;
} AppTestWindow;

void app_test_set_up (AppTestWindow *f, gconstpointer data);
void app_test_tear_down (AppTestWindow *f, gconstpointer data);

gboolean app_test_has_line (GtkWidget *from, const char *text);
GtkWidget *app_test_find (GtkWidget *from, GType type, const char *name);
GtkWidget *app_test_find_css (GtkWidget *from, const char *css_class);

/* The first widget of a type below @from, as that type: APP_TEST_THE (BW, FIT_GRID, window). */
#define APP_TEST_THE(module, type, from)                                                           \
  module##_##type (app_test_find (GTK_WIDGET (from), module##_TYPE_##type, NULL))

void app_test_each (GtkWidget *from, void (*visit) (GtkWidget *widget, gpointer data),
                    gpointer data);

G_END_DECLS
