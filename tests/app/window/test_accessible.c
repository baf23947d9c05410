/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include "app/widgets/picture-area.h"
#include "draw/line/view.h"
#include "app/bench/row-list.h"
#include "app/fit/grid.h"
#include "app/fit/page.h"
#include "app/timing/page.h"
#include "app/window/preferences.h"

/* What a screen reader is told. */

typedef AppTestWindow Fixture;

static void
assert_label (gpointer widget, const char *label)
{
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       label);
}

static BwFitCell *
cell (Fixture *f, guint source, guint input)
{
  return bw_fit_grid_get_cell (APP_TEST_THE (BW, FIT_GRID,
                                             BW_FIT_PAGE (bw_window_get_page (f->window, "fit"))),
                               source, input);
}

/* A toggle button has a role of its own from GTK 4.10 on; before, it is a button with the state
 * "pressed". The program may run with a later GTK than the one whose names it may use. */
static GtkAccessibleRole
cell_role (void)
{
  g_autoptr (GTypeClass) roles = g_type_class_ref (GTK_TYPE_ACCESSIBLE_ROLE);
  const GEnumValue *toggle = g_enum_get_value_by_nick (G_ENUM_CLASS (roles), "toggle-button");
  return toggle != NULL ? (GtkAccessibleRole) toggle->value : GTK_ACCESSIBLE_ROLE_BUTTON;
}

/* A cell says its source, its input, the verdict, and what it hangs on; and whether it is the
 * selected one. */
static void
test_cells (Fixture *f, gconstpointer data)
{
  const BwSheet *sheet = bw_document_get_sheet (f->document);

  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      {
        BwFit fit;
        g_assert_true (bw_document_judge (f->document, source, input, &fit));
        const char *detail = bw_fit_cell_get_detail (cell (f, source, input));
        g_autofree char *label = g_strdup_printf ("Source %s at input %s: %s%s%s",
                                                  bw_sheet_source (sheet, source)->name,
                                                  bw_monitor_input (sheet->monitor, input)->name,
                                                  bw_kind_label (&bw_verdicts, fit.verdict),
                                                  *detail != '\0' ? ", " : "", detail);
        gtk_test_accessible_assert_role (GTK_ACCESSIBLE (cell (f, source, input)), cell_role ());
        assert_label (cell (f, source, input), label);
      }
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (cell (f, 0, 0)), GTK_ACCESSIBLE_STATE_PRESSED,
                                    GTK_ACCESSIBLE_TRISTATE_TRUE);
  bw_document_select (f->document, 1, 1);
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (cell (f, 0, 0)), GTK_ACCESSIBLE_STATE_PRESSED,
                                    GTK_ACCESSIBLE_TRISTATE_FALSE);
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (cell (f, 1, 1)), GTK_ACCESSIBLE_STATE_PRESSED,
                                    GTK_ACCESSIBLE_TRISTATE_TRUE);
}

/* What is wrong with @row, if it is @wrong, and the help describe its control. */
static void
assert_described (BwEditorRow *row, gboolean wrong)
{
  GtkWidget *control = bw_editor_row_get_control (row);
  GtkWidget *foot = gtk_widget_get_last_child (GTK_WIDGET (row));
  GtkWidget *error = gtk_widget_get_prev_sibling (foot);
  /* Beside the help of a figure stands where it comes from. */
  GtkWidget *help = GTK_IS_LABEL (foot) ? foot : gtk_widget_get_first_child (foot);

  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_STATE_INVALID,
                                    wrong ? GTK_ACCESSIBLE_INVALID_TRUE
                                          : GTK_ACCESSIBLE_INVALID_FALSE);
  g_assert_cmpint (gtk_widget_get_visible (error), ==, wrong);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (help)), ==,
                   bw_field_help (bw_editor_row_get_field (row)));
  if (wrong)
    {
      g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (error)), !=, "");
      gtk_test_accessible_assert_relation (GTK_ACCESSIBLE (control),
                                           GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, error, help, NULL);
    }
  else
    gtk_test_accessible_assert_relation (GTK_ACCESSIBLE (control),
                                         GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, help, NULL);
}

/* Each control of a form is named by its label; one of any kind can be said to be wrong, and why. */
static void
test_fields (Fixture *f, gconstpointer data)
{
  BwEditor *editor = bw_window_get_editor (f->window);

  for (BwPart part = BW_PART_SHEET; part <= BW_PART_SOURCE; part++)
    {
      const BwFieldTable *table = bw_part_fields (part);
      bw_window_edit (f->window, part);
      for (guint i = 0; i < table->n; i++)
        {
          BwEditorRow *row = bw_editor_get_row (editor, table->at[i].key);
          GtkWidget *label = gtk_widget_get_first_child (GTK_WIDGET (row));
          g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (label)), ==,
                           bw_field_label (&table->at[i]));
          gtk_test_accessible_assert_relation (GTK_ACCESSIBLE (bw_editor_row_get_control (row)),
                                               GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL);
          assert_described (row, FALSE);
          bw_editor_row_set_error (row, "Not allowed here.");
          assert_described (row, TRUE);
          bw_editor_row_set_error (row, NULL);
          assert_described (row, FALSE);
        }
      bw_editor_close (editor);
    }
}

static void
assert_labelled (GtkWidget *widget, gpointer data)
{
  if (!BW_IS_EDITOR_ROW (widget))
    return;
  GtkWidget *label = gtk_widget_get_first_child (widget);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (label)), !=, "");
  gtk_test_accessible_assert_relation (GTK_ACCESSIBLE (
                                           bw_editor_row_get_control (BW_EDITOR_ROW (widget))),
                                       GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL);
  (*(guint *) data)++;
}

/* So are those of the Timing page. */
static void
test_timing_fields (Fixture *f, gconstpointer data)
{
  guint labelled = 0;
  app_test_each (GTK_WIDGET (BW_TIMING_PAGE (bw_window_get_page (f->window, "timing"))),
                 assert_labelled, &labelled);
  g_assert_cmpuint (labelled, >=, 28 + 7 + 17);
}

/* A value that is refused is said to be wrong, with the reason, until it is put right. */
static void
test_wrong_field (Fixture *f, gconstpointer data)
{
  bw_window_edit (f->window, BW_PART_MONITOR);
  BwEditorRow *row = bw_editor_get_row (bw_window_get_editor (f->window), "diagonal");
  GtkWidget *entry = bw_editor_row_get_control (row);

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_ROLE_TEXT_BOX);
  assert_described (row, FALSE);
  gtk_editable_set_text (GTK_EDITABLE (entry), "19 Hz");
  g_signal_emit_by_name (entry, "activate");
  assert_described (row, TRUE);
  g_assert_nonnull (strstr (bw_editor_row_get_error (row), "Hz"));
  gtk_editable_set_text (GTK_EDITABLE (entry), "19 in");
  g_signal_emit_by_name (entry, "activate");
  assert_described (row, FALSE);
}

/* The drawing is a picture with the same content in words. */
static void
test_drawing (Fixture *f, gconstpointer data)
{
  GtkWidget *page = GTK_WIDGET (bw_window_get_page (f->window, "timing"));
  GtkWidget *area = app_test_find (page, BW_TYPE_PICTURE_AREA, NULL);
  const BwRaster *raster = bw_document_selected_raster (f->document);
  const BwLineView line = { .raster = raster, .mark = bw_quantity_locale_mark (),
                            .system = BW_SYSTEM_NTSC_M }; /* of the tape deck */
  const BwInk ink = { BW_THEME_LIGHT, NULL, BW_INK_SCREEN_DPI };
  g_autoptr (BwDrawing) drawing = bw_line_drawing (&line, 800, 500, &ink);
  g_autofree char *label = g_strdup_printf ("The line of %s, drawn", raster->name);

  g_assert_nonnull (bw_picture_area_get_drawing (BW_PICTURE_AREA (area))); /* nothing is seen yet */
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_ROLE_IMG);
  assert_label (area, label);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       bw_drawing_description (drawing));
  g_assert_true (gtk_widget_get_focusable (area));
}

static gboolean
has_text (GtkWidget *button)
{
  if (GTK_IS_BUTTON (button))
    return gtk_button_get_label (GTK_BUTTON (button)) != NULL;
  return gtk_menu_button_get_label (GTK_MENU_BUTTON (button)) != NULL;
}

/* Buttons inside of a menu button or a drop-down, and the window's own, are GTK's to name. */
static gboolean
is_part_of_another (GtkWidget *widget)
{
  return gtk_widget_get_ancestor (gtk_widget_get_parent (widget), GTK_TYPE_MENU_BUTTON) != NULL
         || gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) != NULL
         || gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) != NULL
         || gtk_widget_get_ancestor (widget, GTK_TYPE_INFO_BAR) != NULL;
}

static void
assert_button_is_named (GtkWidget *widget, gpointer data)
{
  if ((!GTK_IS_BUTTON (widget) && !GTK_IS_MENU_BUTTON (widget)) || is_part_of_another (widget)
      || !gtk_widget_get_mapped (widget) || has_text (widget))
    return;
  if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL)
      && !gtk_test_accessible_has_relation (GTK_ACCESSIBLE (widget),
                                            GTK_ACCESSIBLE_RELATION_LABELLED_BY))
    g_error ("button %s (%s) has neither text nor label",
             gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), G_OBJECT_TYPE_NAME (widget));
  (*(guint *) data)++;
}

/* A button that shows only a picture has a name in words. */
static void
test_buttons (Fixture *f, gconstpointer data)
{
  static const char *const parts[] = { "line", "work-out", "identify", "readings" };
  guint named = 0;

  app_test_each (GTK_WIDGET (f->window), assert_button_is_named, &named);
  g_assert_cmpuint (named, >=, 12);
  bw_window_show_page (f->window, "timing");
  bw_window_edit (f->window, BW_PART_SOURCE);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      bw_page_show_view (bw_window_get_page (f->window, "timing"), parts[i]);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      app_test_each (GTK_WIDGET (f->window), assert_button_is_named, &named);
    }
}

/* The pages and their views, made and shown one after the other. */
static void
each_view (Fixture *f, void (*visit) (GtkWidget *widget, gpointer data), gpointer data)
{
  static const struct
  {
    const char *page;
    const char *views[7];
  } pages[] = {
    { "fit", { "table" } },
    { "hookup", { "plan" } },
    { "timing", { "line", "work-out", "identify", "readings" } },
    { "levels", { "sync", "cause" } },
    { "detail", { "chain", "preview" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    for (guint j = 0; pages[i].views[j] != NULL; j++)
      {
        bw_window_show_page (f->window, pages[i].page);
        bw_page_show_view (bw_window_get_page (f->window, pages[i].page), pages[i].views[j]);
        gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
        app_test_each (GTK_WIDGET (f->window), visit, data);
      }
}

static void
assert_heard_as_seen (GtkWidget *widget, gpointer data)
{
  if (!GTK_IS_BUTTON (widget) || !gtk_button_get_use_underline (GTK_BUTTON (widget)))
    return;
  const char *label = gtk_button_get_label (GTK_BUTTON (widget));
  if (label == NULL)
    return;
  g_auto (GStrv) parts = g_strsplit (label, "_", -1);
  g_autofree char *seen = g_strjoinv ("", parts);
  g_assert_cmpstr (label, !=, seen);
  assert_label (widget, seen);
  (*(guint *) data)++;
}

/* A button with an access key is heard without the underscore that stands before the key. */
static void
test_access_keys (Fixture *f, gconstpointer data)
{
  guint heard = 0;
  bw_window_edit (f->window, BW_PART_SOURCE);
  each_view (f, assert_heard_as_seen, &heard);
  g_assert_cmpuint (heard, >=, 9 * 5);
}

static void
assert_list_is_named (GtkWidget *widget, gpointer data)
{
  if (!GTK_IS_DROP_DOWN (widget))
    return;
  GtkWidget *button = gtk_widget_get_first_child (widget);
  if (!gtk_test_accessible_has_relation (GTK_ACCESSIBLE (button),
                                         GTK_ACCESSIBLE_RELATION_LABELLED_BY))
    g_error ("the button of the list %s is not named", gtk_widget_get_name (widget));
  (*(guint *) data)++;
}

/* What takes the focus of a drop-down list is the button in it. */
static void
test_drop_downs (Fixture *f, gconstpointer data)
{
  guint named = 0;
  bw_window_edit (f->window, BW_PART_SOURCE);
  each_view (f, assert_list_is_named, &named);
  g_assert_cmpuint (named, >=, 10);
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");
  GtkWindow *preferences = GTK_WINDOW (bw_preferences_new (GTK_WINDOW (f->window), settings));
  guint before = named;
  app_test_each (GTK_WIDGET (preferences), assert_list_is_named, &named);
  g_assert_cmpuint (named, ==, before + 1);
  gtk_window_destroy (preferences);
}

/* What a cursor reads is heard while it stands, and not when its drawing is gone. */
static void
test_cursor (Fixture *f, gconstpointer data)
{
  BwPage *page = bw_window_get_page (f->window, "timing");
  bw_window_show_page (f->window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  GtkAccessible *area = GTK_ACCESSIBLE (
      app_test_find (GTK_WIDGET (page), BW_TYPE_PICTURE_AREA, NULL));

  gtk_widget_activate_action (GTK_WIDGET (area), "cursor.step", "d", 1.0);
  g_assert_true (gtk_test_accessible_has_property (area, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT));
  bw_page_show_view (page, "map");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_false (gtk_test_accessible_has_property (area, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT));
}

/* Reading order */

#define MOST_STOPS 120
#define SAME_ROW 16 /* so far may the middles of two controls of one row lie apart */

static void
assert_follows (Fixture *f, GtkWidget *before, GtkWidget *now)
{
  graphene_rect_t first, second;

  if (before == NULL
      || gtk_widget_get_ancestor (before, GTK_TYPE_SCROLLED_WINDOW)
             != gtk_widget_get_ancestor (now, GTK_TYPE_SCROLLED_WINDOW))
    return; /* another part of the page */
  g_assert_true (gtk_widget_compute_bounds (before, GTK_WIDGET (f->window), &first));
  g_assert_true (gtk_widget_compute_bounds (now, GTK_WIDGET (f->window), &second));
  float down = second.origin.y + second.size.height / 2 - first.origin.y - first.size.height / 2;
  if (down > SAME_ROW || second.origin.x >= first.origin.x + first.size.width)
    return;
  if (down < -SAME_ROW || second.origin.x < first.origin.x)
    g_error ("Tab goes from %s at %.0f, %.0f back to %s at %.0f, %.0f", G_OBJECT_TYPE_NAME (before),
             (double) first.origin.x, (double) first.origin.y, G_OBJECT_TYPE_NAME (now),
             (double) second.origin.x, (double) second.origin.y);
}

/* With Tab once around @part. Returns how many stops there are. */
static guint
go_through (Fixture *f, GtkWidget *part)
{
  GtkWidget *before = NULL;
  guint stops = 0;

  gtk_window_set_focus (GTK_WINDOW (f->window), NULL);
  for (; stops < MOST_STOPS && gtk_widget_child_focus (part, GTK_DIR_TAB_FORWARD); stops++)
    {
      GtkWidget *now = gtk_window_get_focus (GTK_WINDOW (f->window));
      assert_follows (f, before, now);
      before = now;
    }
  g_assert_cmpuint (stops, <, MOST_STOPS);
  return stops;
}

/* Tab goes to the right in a row and then to a row below, in each form, panel and page. */
static void
test_order (Fixture *f, gconstpointer data)
{
  static const struct
  {
    const char *page;
    const char *view;
    guint stops; /* at least */
  } places[] = {
    { "fit", "table", 10 },       { "hookup", "plan", 5 },     { "timing", "line", 8 },
    { "timing", "work-out", 40 }, { "timing", "identify", 8 }, { "timing", "readings", 20 },
    { "levels", "vectors", 10 },  { "levels", "sync", 10 },    { "levels", "cause", 10 },
    { "detail", "chain", 20 },    { "detail", "preview", 10 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      BwPage *page = bw_window_get_page (f->window, places[i].page);
      bw_window_show_page (f->window, places[i].page);
      bw_page_show_view (page, places[i].view);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      g_assert_cmpuint (go_through (f, GTK_WIDGET (page)), >=, places[i].stops);
    }
  for (BwPart part = BW_PART_SHEET; part <= BW_PART_SOURCE; part++)
    {
      bw_window_edit (f->window, part);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      g_assert_cmpuint (go_through (f, GTK_WIDGET (bw_window_get_editor (f->window))), >=, 2);
    }
}

static void
test_lists (Fixture *f, gconstpointer data)
{
  static const struct
  {
    BwPart part;
    const char *label;
  } lists[] = { { BW_PART_INPUT, "Inputs" }, { BW_PART_SOURCE, "Sources" } };

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      BwBenchList *list = bw_bench_panel_get_list (bw_window_get_bench (f->window), lists[i].part);
      assert_label (app_test_find (GTK_WIDGET (list), BW_TYPE_ROW_LIST, NULL), lists[i].label);
      assert_label (app_test_find (GTK_WIDGET (list), GTK_TYPE_BUTTON, "edit"),
                    i == 0 ? "Edit Input" : "Edit Source");
    }
}

#define ADD(name, func)                                                                            \
  g_test_add ("/accessible/" name, Fixture, NULL, app_test_set_up, func, app_test_tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("cells", test_cells);
  ADD ("fields", test_fields);
  ADD ("timing-fields", test_timing_fields);
  ADD ("wrong-field", test_wrong_field);
  ADD ("drawing", test_drawing);
  ADD ("buttons", test_buttons);
  ADD ("access-keys", test_access_keys);
  ADD ("drop-downs", test_drop_downs);
  ADD ("cursor", test_cursor);
  ADD ("order", test_order);
  ADD ("lists", test_lists);
  return g_test_run ();
}
