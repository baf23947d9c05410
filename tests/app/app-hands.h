/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app-test.h"

G_BEGIN_DECLS

/* What a person's hands do to the window: real key events, an answer to a question, and a name in a
 * file chooser. */

void app_test_frames (guint n);
void app_test_steps (guint n, gboolean (*goes_on) (gpointer data), gpointer data);
void app_test_xdotool (const char *command);
gboolean app_test_is_mapped (gpointer widget);
gboolean app_test_is_active (gpointer window);
void app_test_give_focus (gpointer window);
BwWindow *app_test_open (BwApplication *application, const char *path);
gboolean app_test_focus_is_in (BwWindow *window, GtkWidget *widget);
void app_test_go_to (BwWindow *window, const char *key, GtkWidget *widget);

GtkWidget *app_test_open_question (void);
gboolean app_test_question_is_open (gpointer data);
void app_test_answer (int response);
void app_test_agree_to_replace (void);

GtkWidget *app_test_open_chooser (void);
gboolean app_test_chooser_is_open (gpointer data);
void app_test_choose_name (GFile *file);

/* Key events take their time: what must come true is waited for. */
#define APP_TEST_PATIENCE_US (10 * G_USEC_PER_SEC)

gboolean app_test_on_tick (gpointer data);

#define ASSERT_COMES_TRUE(expression)                                                              \
  G_STMT_START                                                                                     \
  {                                                                                                \
    gint64 deadline = g_get_monotonic_time () + APP_TEST_PATIENCE_US;                              \
    guint tick = g_timeout_add (20, app_test_on_tick, NULL);                                       \
    while (!(expression) && g_get_monotonic_time () < deadline)                                    \
      g_main_context_iteration (NULL, TRUE);                                                       \
    g_source_remove (tick);                                                                        \
    g_assert_true (expression);                                                                    \
  }                                                                                                \
  G_STMT_END

G_END_DECLS
