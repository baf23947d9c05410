/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A set is taken in from its rating plate and its brochure alone, and a console beside it, in the real
 * window with keys: how many entries it takes is counted, none may be refused, and every page must
 * have an answer. The set is invented: 24 inches, 110–120 V, 50/60 Hz, 2.4 A, aperture grille of
 * 0.7 mm, 560 lines claimed, 15.6–15.8 kHz. */
#include "app-hands.h"

#include <string.h>

#include "app/bench/bench-panel.h"
#include "app/widgets/empty-page.h"
#include "app/widgets/picker.h"
#include "core/fit/fit.h"

#define MOST_ENTRIES 20

typedef struct
{
  AppTestWindow base;
  guint entries;
} Fixture;

static const BwSheet *
sheet (Fixture *f)
{
  return bw_document_get_sheet (f->base.document);
}

static BwEditorRow *
row (Fixture *f, const char *key)
{
  BwEditorRow *found = bw_editor_get_row (bw_window_get_editor (f->base.window), key);
  g_assert_nonnull (found);
  return found;
}

static void
assert_taken (Fixture *f, const char *key)
{
  const char *error = bw_editor_row_get_error (row (f, key));
  if (error != NULL)
    g_error ("%s is refused: %s", key, error);
  g_assert_false (bw_editor_row_is_edited (row (f, key)));
  f->entries++;
  g_test_message ("%u: %s", f->entries, key);
}

/* Types @text into the field over what it held. */
static void
type (Fixture *f, const char *key, const char *text)
{
  GtkWidget *control = bw_editor_row_get_control (row (f, key));
  g_autofree char *command = g_strdup_printf ("type '%s'", text);

  gtk_widget_grab_focus (control);
  app_test_frames (2);
  app_test_xdotool ("key ctrl+a");
  app_test_xdotool (command);
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (!bw_editor_row_is_edited (row (f, key))
                     || bw_editor_row_get_error (row (f, key)) != NULL);
  assert_taken (f, key);
}

/* Ticks one of a set with the space bar. */
static void
tick (Fixture *f, const char *key, const char *label)
{
  GtkWidget *button = gtk_widget_get_first_child (bw_editor_row_get_control (row (f, key)));
  while (button != NULL
         && strcmp (gtk_check_button_get_label (GTK_CHECK_BUTTON (button)), label) != 0)
    button = gtk_widget_get_next_sibling (button);
  g_assert_nonnull (button);
  gtk_widget_grab_focus (button);
  app_test_frames (2);
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (gtk_check_button_get_active (GTK_CHECK_BUTTON (button)));
  assert_taken (f, key);
}

/* Chooses line @to of a list, which opens with the space bar. */
static void
choose (Fixture *f, const char *key, guint to)
{
  GtkDropDown *list = GTK_DROP_DOWN (bw_editor_row_get_control (row (f, key)));
  gtk_widget_grab_focus (GTK_WIDGET (list));
  app_test_settle ();
  app_test_frames (20); /* until it is scrolled to */
  app_test_xdotool ("key space");
  app_test_frames (4);
  app_test_xdotool ("key Home");
  for (guint i = 0; i < to; i++)
    app_test_xdotool ("key Down");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (gtk_drop_down_get_selected (list) == to);
  assert_taken (f, key);
}

/* Searches the open picker and takes the first that is found. */
static void
find_in (Fixture *f, GtkWidget *owner, const char *words)
{
  GtkWidget *picker = app_test_find (owner, BW_TYPE_PICKER, NULL);
  g_autofree char *command = g_strdup_printf ("type '%s'", words);

  ASSERT_COMES_TRUE (gtk_widget_get_mapped (picker));
  app_test_frames (4);
  app_test_xdotool (command);
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (!gtk_widget_get_mapped (picker));
  f->entries++;
}

static void
pick (Fixture *f, BwPart part, const char *words)
{
  BwBenchPanel *panel = bw_window_get_bench (f->base.window);

  app_test_settle ();
  app_test_frames (4);
  app_test_give_focus (f->base.window);
  if (part == BW_PART_MONITOR)
    {
      bw_bench_panel_choose_monitor (panel);
      find_in (f, GTK_WIDGET (panel), words);
      return;
    }
  BwBenchList *list = bw_bench_panel_get_list (panel, part);
  bw_bench_list_pick (list);
  find_in (f, GTK_WIDGET (list), words);
}

static void
edit (Fixture *f, BwPart part)
{
  bw_window_edit (f->base.window, part);
  app_test_frames (4);
  app_test_give_focus (f->base.window);
}

/* What the plate says, what the brochure says, what the sockets at the back show. */
static void
take_in (Fixture *f)
{
  pick (f, BW_PART_MONITOR, "blank");
  edit (f, BW_PART_MONITOR);
  type (f, "mains_voltage", "110-120 V");
  type (f, "mains_frequency", "50/60 Hz");
  type (f, "mains_current", "2.4 A");
  type (f, "diagonal", "24\"");
  type (f, "aspect", "4:3");
  choose (f, "mask", BW_MASK_GRILLE);
  type (f, "pitch", "0.7 mm");
  type (f, "claimed_lines", "560");
  type (f, "line_rates", "15.6-15.8 kHz");
  edit (f, BW_PART_INPUT);
  tick (f, "connectors", "BNC");
  tick (f, "signals", "RGB");
  tick (f, "syncs", bw_kind_label (&bw_sync_kinds, BW_SYNC_COMPOSITE));
  choose (f, "termination", BW_TERMINATION_FIXED);
  choose (f, "sync_termination", BW_TERMINATION_FIXED);
  choose (f, "loop_through", FALSE);
  edit (f, BW_PART_SHEET);
  type (f, "supply_voltage", "120 V");
  type (f, "supply_frequency", "60 Hz");
  bw_editor_finish (bw_window_get_editor (f->base.window));
  pick (f, BW_PART_SOURCE, "console 240");
}

/* The title of the page's empty place, if that is shown; else nothing. */
static const char *
lacking (Fixture *f, const char *page)
{
  GtkWidget *empty = app_test_find (GTK_WIDGET (bw_window_get_page (f->base.window, page)),
                                    BW_TYPE_EMPTY_PAGE, NULL);
  if (empty == NULL || !gtk_widget_get_mapped (empty))
    return "";
  GtkWidget *title = app_test_find_css (empty, "bw-title");
  return title != NULL ? gtk_label_get_label (GTK_LABEL (title)) : "";
}

static void
assert_figures (Fixture *f)
{
  const BwMonitor *set = sheet (f)->monitor;
  g_assert_cmpfloat (set->mains_v.at[0].low, ==, 110);
  g_assert_cmpfloat (set->mains_v.at[0].high, ==, 120);
  g_assert_cmpfloat (set->mains_hz.at[0].low, ==, 50);
  g_assert_cmpfloat (set->mains_hz.at[set->mains_hz.n - 1].high, ==, 60);
  g_assert_true (bw_near (set->mains_a, 2.4, 1e-12));
  g_assert_true (bw_near (set->diagonal_m, 24 * 0.0254, 1e-12));
  g_assert_cmpuint (set->mask, ==, BW_MASK_GRILLE);
  g_assert_true (bw_near (set->pitch_m, 0.7e-3, 1e-12));
  g_assert_cmpfloat (set->claimed_lines, ==, 560);
  g_assert_true (bw_near (set->line_rates_hz.at[0].low, 15600, 1e-6));
  g_assert_true (bw_near (set->line_rates_hz.at[0].high, 15800, 1e-6));
}

/* 240 lines at 15.72 kHz on a set of 15.6 to 15.8 kHz: nothing that is known speaks against it. */
static void
assert_verdict (Fixture *f)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  g_assert_true (bw_document_case (f->base.document, bw_document_get_source (f->base.document),
                                   bw_document_get_input (f->base.document), &figures, &c));
  bw_fit_judge (&c, &fit);
  g_assert_cmpint (fit.at[BW_RULE_LINE_RATE].severity, ==, BW_SEVERITY_OK);
  g_assert_cmpint (fit.at[BW_RULE_MAINS].severity, ==, BW_SEVERITY_OK);
  g_assert_cmpint (fit.verdict, !=, BW_VERDICT_NO);
}

static void
test_intake (Fixture *f, gconstpointer data)
{
  static const char *const pages[] = { "fit", "hookup", "timing", "levels", "detail" };

  take_in (f);
  g_test_message ("%u entries", f->entries);
  g_assert_cmpuint (f->entries, <=, MOST_ENTRIES);
  assert_figures (f);
  assert_verdict (f);
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      bw_window_show_page (f->base.window, pages[i]);
      app_test_frames (4);
      g_test_message ("%s: %s", pages[i], lacking (f, pages[i]));
      g_assert_cmpstr (lacking (f, pages[i]), ==, "");
    }
  if (g_getenv ("BW_KEEP_SHEET") != NULL) /* to look at the pages with one's own eyes */
    {
      g_autofree char *text = app_test_sheet_text (f->base.document);
      g_file_set_contents (g_getenv ("BW_KEEP_SHEET"), text, -1, NULL);
    }
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->base.document = bw_document_new (app_test_catalogue ());
  f->base.window = app_test_window_new (f->base.document);
  f->entries = 0;
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  app_test_tear_down (&f->base, data);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add ("/intake/plate-and-brochure", Fixture, NULL, set_up, test_intake, tear_down);
  return g_test_run ();
}
