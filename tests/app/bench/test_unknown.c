/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <string.h>

#include "app/bench/bench-panel.h"
#include "app/bench/pick-lists.h"
#include "app/widgets/empty-page.h"
#include "app/widgets/picker.h"

/* A blank set in the window: fields that are left empty, where a figure comes from, and what the
 * pages say of what is lacking. */

typedef AppTestWindow Fixture;

static const BwMonitor *
monitor (Fixture *f)
{
  return bw_document_get_sheet (f->document)->monitor;
}

static BwEditorRow *
row (Fixture *f, const char *key)
{
  BwEditorRow *found = bw_editor_get_row (bw_window_get_editor (f->window), key);
  g_assert_nonnull (found);
  return found;
}

static GtkEditable *
entry (Fixture *f, const char *key)
{
  return GTK_EDITABLE (bw_editor_row_get_control (row (f, key)));
}

static GtkDropDown *
origin (Fixture *f, const char *key)
{
  return GTK_DROP_DOWN (app_test_find_css (GTK_WIDGET (row (f, key)), "bw-origin"));
}

static BwOrigin
kept (Fixture *f, const char *key)
{
  return bw_field_origin (&bw_monitor_fields, bw_field_find (&bw_monitor_fields, key), monitor (f));
}

/* Every figure of a form may be left empty, and is then unknown. */
static void
test_all_blank (Fixture *f, gconstpointer data)
{
  bw_window_edit (f->window, BW_PART_MONITOR);
  for (guint i = 0; i < bw_monitor_fields.n; i++)
    {
      const BwField *field = &bw_monitor_fields.at[i];
      if (!(field->flags & BW_FIELD_FIGURE))
        continue;
      bw_editor_row_enter_text (row (f, field->key), "");
      g_assert_cmpstr (bw_editor_row_get_error (row (f, field->key)), ==, NULL);
      g_assert_false (bw_field_is_set (field, monitor (f)));
      g_assert_false (gtk_widget_get_visible (GTK_WIDGET (origin (f, field->key))));
    }
  g_assert_cmpuint (monitor (f)->mask, ==, BW_N_MASKS);
  GtkDropDown *mask = GTK_DROP_DOWN (bw_editor_row_get_control (row (f, "mask")));
  g_autofree char *text = bw_editor_row_dup_text (row (f, "mask"));
  g_assert_cmpuint (gtk_drop_down_get_selected (mask), ==, BW_N_MASKS);
  g_assert_cmpstr (text, ==, "");
}

/* An empty set is unknown, and so is a switch; undo brings back what was, with its origin. */
static void
test_undo (Fixture *f, gconstpointer data)
{
  g_autofree char *before = bw_sheet_to_text (bw_document_get_sheet (f->document),
                                              bw_document_get_catalogue (f->document));
  bw_window_edit (f->window, BW_PART_MONITOR);
  gtk_drop_down_set_selected (origin (f, "pitch"), BW_ORIGIN_PLATE);
  g_assert_cmpuint (kept (f, "pitch"), ==, BW_ORIGIN_PLATE);
  bw_editor_row_enter_text (row (f, "pitch"), "");
  g_assert_cmpfloat (monitor (f)->pitch_m, ==, 0);
  g_assert_cmpuint (kept (f, "pitch"), ==, BW_ORIGIN_NOT_SAID);
  g_assert_true (bw_document_undo (f->document));
  g_assert_cmpuint (kept (f, "pitch"), ==, BW_ORIGIN_PLATE);
  g_assert_cmpuint (gtk_drop_down_get_selected (origin (f, "pitch")), ==, BW_ORIGIN_PLATE);
  g_assert_true (bw_document_undo (f->document));
  g_assert_cmpuint (kept (f, "pitch"), ==, BW_ORIGIN_NOT_SAID);
  g_assert_false (bw_document_undo (f->document));
  g_autofree char *after = bw_sheet_to_text (bw_document_get_sheet (f->document),
                                             bw_document_get_catalogue (f->document));
  g_assert_cmpstr (after, ==, before);
}

static BwPicker *
monitors (Fixture *f)
{
  return APP_TEST_THE (BW, PICKER, APP_TEST_THE (BW, BENCH_PANEL, f->window));
}

static void
pick (Fixture *f, const char *id)
{
  g_autoptr (GListModel) list = bw_pick_list_monitors (bw_document_get_catalogue (f->document));
  for (guint i = 0; i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (BwPickItem) item = g_list_model_get_item (list, i);
      if (strcmp (bw_pick_item_get_id (item), id) == 0)
        {
          g_signal_emit_by_name (monitors (f), "picked", item);
          return;
        }
    }
  g_assert_not_reached ();
}

/* A set of the catalogue has the figures of a class. What is typed over one is not the class's any
 * more; what is only looked at is. */
static void
test_class (Fixture *f, gconstpointer data)
{
  const BwMonitor *first
      = bw_catalogue_monitors (bw_document_get_catalogue (f->document))->pdata[0];

  pick (f, first->id);
  g_assert_cmpuint (kept (f, "line_rates"), ==, BW_ORIGIN_CLASS);
  g_assert_cmpuint (bw_field_origin (&bw_input_fields, bw_field_find (&bw_input_fields, "signals"),
                                     bw_monitor_input (monitor (f), 0)), ==, BW_ORIGIN_CLASS);
  bw_window_edit (f->window, BW_PART_MONITOR);
  g_assert_cmpuint (gtk_drop_down_get_selected (origin (f, "diagonal")), ==, BW_ORIGIN_CLASS);
  bw_editor_row_enter_text (row (f, "diagonal"), "17.5 in");
  g_assert_cmpuint (kept (f, "diagonal"), ==, BW_ORIGIN_NOT_SAID);
  g_assert_cmpuint (kept (f, "line_rates"), ==, BW_ORIGIN_CLASS);
  gtk_drop_down_set_selected (origin (f, "diagonal"), BW_ORIGIN_MEASURED);
  bw_editor_row_enter_text (row (f, "diagonal"), "17.4 in");
  g_assert_cmpuint (kept (f, "diagonal"), ==, BW_ORIGIN_MEASURED); /* mended, not another's */
}

static const char *
said (Fixture *f, const char *page)
{
  GtkWidget *empty = app_test_find (GTK_WIDGET (bw_window_get_page (f->window, page)),
                                    BW_TYPE_EMPTY_PAGE, NULL);
  GtkWidget *title = empty != NULL ? app_test_find_css (empty, "bw-title") : NULL;
  return title != NULL && gtk_widget_get_child_visible (empty)
             ? gtk_label_get_label (GTK_LABEL (title))
             : "";
}

/* A blank set with a blank source: its form opens at once, and each page answers or says in its own
 * words what is lacking. */
static void
test_blank_set (Fixture *f, gconstpointer data)
{
  static const struct
  {
    const char *page, *lacks;
  } pages[] = { { "hookup", "Signal kinds" }, { "levels", "Termination" },
                { "detail", "Viewable diagonal" } };

  pick (f, "blank");
  g_assert_cmpuint (monitor (f)->inputs->len, ==, 1);
  g_assert_cmpuint (bw_editor_get_part (bw_window_get_editor (f->window)), ==, BW_PART_MONITOR);
  g_assert_cmpstr (gtk_editable_get_text (entry (f, "line_rates")), ==, "");
  bw_editor_finish (bw_window_get_editor (f->window));
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      bw_window_show_page (f->window, pages[i].page);
      app_test_frames (3);
      g_assert_nonnull (strstr (said (f, pages[i].page), pages[i].lacks));
    }
}

/* By keyboard: a rate is typed, the list beside its help is reached and set with keys alone. */
static void
test_by_keyboard (Fixture *f, gconstpointer data)
{
  pick (f, "blank");
  app_test_give_focus (f->window);
  gtk_widget_grab_focus (GTK_WIDGET (entry (f, "line_rates")));
  app_test_frames (2);
  app_test_xdotool ("type '15.6 kHz .. 15.8 kHz'");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (monitor (f)->line_rates_hz.n == 1);
  app_test_xdotool ("key Tab"); /* to where it comes from */
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, GTK_WIDGET (origin (f, "line_rates"))));
  app_test_xdotool ("key space");
  app_test_frames (4);
  app_test_xdotool ("key Down Return");
  ASSERT_COMES_TRUE (kept (f, "line_rates") == BW_ORIGIN_PLATE);
}

#define ADD(name, func)                                                                            \
  g_test_add ("/unknown/" name, Fixture, NULL, app_test_set_up, func, app_test_tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("all-blank", test_all_blank);
  ADD ("undo", test_undo);
  ADD ("class", test_class);
  ADD ("blank-set", test_blank_set);
  ADD ("by-keyboard", test_by_keyboard);
  return g_test_run ();
}
