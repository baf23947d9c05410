/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The person's own pin-out: a table in the form of a source and of an input whose connector no standard
 * lays down, entered by keyboard, undone, saved and read again, and what Fit and Hook-up make of it. */
#include "app-hands.h"

#include <string.h>

#include "app/hookup/page.h"

typedef AppTestWindow Fixture;

static const BwSource *
source (Fixture *f)
{
  return bw_sheet_source (bw_document_get_sheet (f->document), 0);
}

static BwEditorRow *
pins (Fixture *f)
{
  BwEditorRow *row = bw_editor_get_row (bw_window_get_editor (f->window), "pins");
  g_assert_nonnull (row);
  return row;
}

static GtkDropDown *
list_of (Fixture *f, int pin)
{
  GtkGrid *grid = GTK_GRID (bw_editor_row_get_control (pins (f)));
  return GTK_DROP_DOWN (gtk_grid_get_child_at (grid, 1, pin - 1));
}

static void
set_connector (Fixture *f, const char *id)
{
  bw_editor_row_enter_text (bw_editor_get_row (bw_window_get_editor (f->window), "connector"), id);
  app_test_settle ();
}

static char *
text_of (Fixture *f)
{
  return bw_pinout_to_text (&source (f)->pins);
}

/* The table is there for a connector without a standard, with as many lines as it has contacts. */
static void
test_shown (Fixture *f, gconstpointer data)
{
  bw_document_select (f->document, 0, 0);
  bw_window_edit (f->window, BW_PART_SOURCE);
  set_connector (f, "de-15");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (pins (f))));
  set_connector (f, "de-9");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (pins (f))));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (list_of (f, 9))));
  g_assert_true (gtk_test_accessible_has_relation (
      GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (list_of (f, 9)))),
      GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  set_connector (f, "din-6");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (list_of (f, 6))));
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (list_of (f, 7))));
  bw_editor_finish (bw_window_get_editor (f->window));
  bw_window_edit (f->window, BW_PART_INPUT);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (pins (f))));
}

/* What is chosen is taken at once; one conductor on two pins is refused; undo takes a choice back. */
static void
test_entered (Fixture *f, gconstpointer data)
{
  bw_document_select (f->document, 0, 0);
  bw_window_edit (f->window, BW_PART_SOURCE);
  set_connector (f, "de-9");
  gtk_drop_down_set_selected (list_of (f, 3), BW_CONDUCTOR_R);
  gtk_drop_down_set_selected (list_of (f, 1), BW_PIN_USE_GROUND);
  g_autofree char *two = text_of (f);
  g_assert_cmpstr (two, ==, "1 ground; 3 r");

  gtk_drop_down_set_selected (list_of (f, 4), BW_CONDUCTOR_R);
  g_assert_nonnull (strstr (bw_editor_row_get_error (pins (f)), "pin 3"));
  g_autofree char *still = text_of (f);
  g_assert_cmpstr (still, ==, two);
  gtk_drop_down_set_selected (list_of (f, 4), BW_CONDUCTOR_G);
  g_assert_cmpstr (bw_editor_row_get_error (pins (f)), ==, NULL);
  g_autofree char *three = text_of (f);
  g_assert_cmpstr (three, ==, "1 ground; 3 r; 4 g");

  g_assert_true (bw_document_undo (f->document));
  g_autofree char *back = text_of (f);
  g_assert_cmpstr (back, ==, two);
  g_assert_cmpuint (gtk_drop_down_get_selected (list_of (f, 4)), ==, BW_N_PIN_USES);
}

/* By keys alone: to the list of pin 1, opened, a line chosen. */
static void
test_by_keyboard (Fixture *f, gconstpointer data)
{
  bw_document_select (f->document, 0, 0);
  bw_window_edit (f->window, BW_PART_SOURCE);
  set_connector (f, "din-6");
  app_test_give_focus (f->window);
  gtk_widget_grab_focus (GTK_WIDGET (list_of (f, 1)));
  app_test_settle ();
  app_test_frames (20);
  app_test_xdotool ("key space");
  app_test_frames (4);
  app_test_xdotool ("key Home Down Return"); /* R, then G */
  ASSERT_COMES_TRUE (bw_pinout_use (&source (f)->pins, 1) == BW_CONDUCTOR_G);
  app_test_xdotool ("key Tab"); /* to the list of pin 2 */
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, GTK_WIDGET (list_of (f, 2))));
}

/* Saved and read again. */
static void
test_saved (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("pins.bench");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  bw_document_select (f->document, 0, 0);
  bw_window_edit (f->window, BW_PART_SOURCE);
  set_connector (f, "de-9");
  bw_editor_row_enter_text (pins (f), "1 ground; 3 r; 4 g; 5 b; 7 sync");
  g_assert_true (bw_document_save (f->document, file, &error));
  g_assert_no_error (error);
  g_autoptr (BwDocument) again = app_test_document_at (path);
  g_autofree char *kept
      = bw_pinout_to_text (&bw_sheet_source (bw_document_get_sheet (again), 0)->pins);
  g_assert_cmpstr (kept, ==, "1 ground; 3 r; 4 g; 5 b; 7 sync");
}

/* Hook-up says how many pins are open until they are given. */
static void
test_answer (Fixture *f, gconstpointer data)
{
  bw_document_select (f->document, 0, 0);
  bw_window_edit (f->window, BW_PART_SOURCE);
  bw_editor_row_enter_text (bw_editor_get_row (bw_window_get_editor (f->window), "signal"), "rgb");
  set_connector (f, "de-9");
  bw_window_show_page (f->window, "hookup");
  app_test_frames (4);
  BwHookupPage *page = BW_HOOKUP_PAGE (bw_window_get_page (f->window, "hookup"));
  g_test_message ("%s", bw_hookup_page_get_answer (page));
  g_assert_nonnull (strstr (bw_hookup_page_get_answer (page), "complete but for"));
}

#define ADD(name, func)                                                                            \
  g_test_add ("/pins/" name, Fixture, NULL, app_test_set_up, func, app_test_tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("shown", test_shown);
  ADD ("entered", test_entered);
  ADD ("by-keyboard", test_by_keyboard);
  ADD ("saved", test_saved);
  ADD ("answer", test_answer);
  return g_test_run ();
}
