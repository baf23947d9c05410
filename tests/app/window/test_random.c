/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <stdlib.h>
#include <string.h>

#include <gdk/x11/gdkx.h>
#include <glib/gstdio.h>

#include "app/widgets/notice.h"
#include "app/widgets/picture-area.h"

/* Whatever comes: random clicks, keys, typing, pages, undo, saving, dragging, by real events in real
 * windows. Nobody knows what is to be seen then, but nothing may be said on the log, what is saved can be
 * read again, and undo leads back. As a test among the others it does the same few things each time;
 * tests/random.sh does it for long, under sanitizers, from a seed that it prints. */

#define SECONDS_OF_TEST 12
#define SEED_OF_TEST 11
#define ACTIONS_OF_TEST 60
#define WINDOWS_MAX 3
#define DIALOG_ACTIONS 12 /* a dialog of the program's own is closed after so many */

static BwApplication *application = NULL;
static GRand *chance = NULL;
static guint files = 0;   /* how many names were given */
static guint actions = 0; /* how many things were done */
static guint dialogs = 0; /* since how many actions there has been a dialog */
static guint saves = 0, opened = 0, undone = 0, typed = 0, drags = 0, clicks = 0;

static guint
one_of (guint n)
{
  return (guint) g_rand_int_range (chance, 0, (gint32) n);
}

/* Says what is done, for whoever looks for the reason of a fault. */
static void G_GNUC_PRINTF (1, 2) say (const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *words = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_print ("# %u: %s\n", actions, words);
}

/* Windows */

typedef gboolean (*IsKind) (gpointer widget);

static gboolean
is_sheet (gpointer widget)
{
  return BW_IS_WINDOW (widget);
}

static gboolean
is_dialog (gpointer widget)
{
  return !BW_IS_WINDOW (widget);
}

static GPtrArray *
list_windows (IsKind is_kind)
{
  GListModel *windows = gtk_window_get_toplevels ();
  GPtrArray *list = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) widget = g_list_model_get_item (windows, i);
      if (gtk_widget_get_mapped (widget) && is_kind (widget))
        g_ptr_array_add (list, g_object_ref (widget));
    }
  return list;
}

/* What a person would see on top: the last dialog, or one of the sheets. */
static GtkWindow *
window_in_front (void)
{
  g_autoptr (GPtrArray) others = list_windows (is_dialog);
  g_autoptr (GPtrArray) sheets = list_windows (is_sheet);
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (others->len > 0)
    return others->pdata[others->len - 1];
  if (active != NULL && gtk_widget_get_mapped (GTK_WIDGET (active)))
    return active;
  return sheets->len > 0 ? sheets->pdata[0] : NULL;
}

/* Whether a window has been dragged by its header bar, which moves it: without a window manager even
 * off the screen, where the toolkit finds no monitor for its menus. */
static gboolean has_moved = FALSE;

/* There is no window manager, which would raise the window and give it the focus. */
static void
bring_to_front (GtkWindow *window)
{
  gulong id = gdk_x11_surface_get_xid (gtk_native_get_surface (GTK_NATIVE (window)));
  g_autofree char *command = g_strdup_printf ("windowmove %lu 0 0 windowraise %lu windowfocus %lu",
                                              id, id, id);
  if (!gtk_window_is_active (window) || has_moved)
    app_test_xdotool (command);
  has_moved = FALSE;
}

/* The sheet on which an action works; it is in front. */
static BwWindow *
sheet_in_front (void)
{
  GtkWindow *window = window_in_front ();
  return BW_IS_WINDOW (window) ? BW_WINDOW (window) : NULL;
}

/* Files. Nothing but names below the scratch folder is ever given to a chooser, and no chooser is left
 * to chance. */

static GFile *
scratch_file (void)
{
  g_autofree char *name = g_strdup_printf ("random-%u", ++files);
  g_autofree char *path = app_test_scratch_path (name);
  return g_file_new_for_path (path);
}

static void
answer_chooser (GtkWidget *chooser)
{
  gboolean saves_file = gtk_file_chooser_get_action (GTK_FILE_CHOOSER (chooser))
                        == GTK_FILE_CHOOSER_ACTION_SAVE;
  g_autoptr (GFile) file = scratch_file ();

  if (!saves_file || one_of (4) == 0)
    {
      say ("cancel the file chooser");
      gtk_dialog_response (GTK_DIALOG (chooser), GTK_RESPONSE_CANCEL);
    }
  else
    {
      say ("choose %s", g_file_peek_path (file));
      app_test_choose_name (file);
    }
  app_test_settle ();
}

/* Printing runs a loop of its own, so this is done by the clock. */
static gboolean
on_clock (gpointer data)
{
  g_autoptr (GPtrArray) others = list_windows (is_dialog);

  for (guint i = 0; i < others->len; i++)
    if (strstr (G_OBJECT_TYPE_NAME (others->pdata[i]), "UnixDialog") != NULL)
      gtk_dialog_response (GTK_DIALOG (others->pdata[i]), GTK_RESPONSE_CANCEL);
  return G_SOURCE_CONTINUE;
}

/* What stands in the way of going on: choosers are answered, and other dialogs closed after a while.
 * Too many sheets are closed, and if none is left there is a new one. */
static void
tidy_up (void)
{
  g_autoptr (GPtrArray) others = list_windows (is_dialog);
  g_autoptr (GPtrArray) sheets = list_windows (is_sheet);
  GtkWidget *chooser = app_test_open_chooser ();

  dialogs = others->len > 0 ? dialogs + 1 : 0;
  if (chooser != NULL)
    answer_chooser (chooser);
  else if (dialogs > DIALOG_ACTIONS)
    {
      say ("close %s", G_OBJECT_TYPE_NAME (others->pdata[others->len - 1]));
      gtk_window_close (others->pdata[others->len - 1]);
    }
  else if (sheets->len > WINDOWS_MAX)
    gtk_window_close (sheets->pdata[one_of (sheets->len)]);
  else if (sheets->len == 0 && others->len == 0)
    {
      say ("start again");
      g_application_activate (G_APPLICATION (application));
    }
  app_test_settle ();
}

/* Keys */

static void
press (const char *keys)
{
  g_autofree char *command = g_strconcat ("key --delay 1 ", keys, NULL);
  say ("%s", command);
  app_test_xdotool (command);
}

static void
do_walk (void)
{
  static const char *const keys[] = {
    "Tab",       "Tab Tab",    "shift+Tab",   "Up",        "Down",      "Left",
    "Right",     "Home",       "End",         "Page_Up",   "Page_Down", "Return",
    "space",     "Escape",     "F6",          "F8",        "F10",       "Menu",
    "shift+F10", "Delete",     "BackSpace",   "plus",      "minus",     "0",
    "c",         "shift+Left", "shift+Right", "ctrl+Home", "ctrl+End",  "ctrl+Tab",
    "alt+Left",  "alt+Down",   "ctrl+a",      "ctrl+c",    "ctrl+x",    "ctrl+v"
  };
  press (keys[one_of (G_N_ELEMENTS (keys))]);
}

/* Control and a letter: what the program takes for itself. */
static void
do_command (void)
{
  static const char *const keys[] = { "ctrl+1",       "ctrl+2",        "ctrl+3",       "ctrl+4",
                                      "ctrl+5",       "ctrl+n",        "ctrl+z",       "ctrl+z",
                                      "ctrl+z",       "ctrl+shift+z",  "ctrl+shift+z", "ctrl+s",
                                      "ctrl+shift+s", "ctrl+o",        "ctrl+w",       "ctrl+p",
                                      "ctrl+comma",   "ctrl+question", "F1",           "ctrl+q" };
  press (keys[one_of (G_N_ELEMENTS (keys))]);
}

static const char *const texts[] = {
  "15.734 kHz",
  "31 kHz .. 32 kHz; 15 kHz",
  "0.7 V",
  "1e308 Hz",
  "-1e308 V",
  "-9223372036854775808 Hz",
  "5 V .. 1e-308 V",
  "nan",
  "0",
  "-0",
  "3 Hz",
  "4.5 MHz / 286",
  "75 ohm",
  "1,5 V",
  "..",
  ";",
  "%s%n",
  "<b>&amp;",
  "800x600",
  "Modeline",
  "name",
  "  ",
  "4:3",
  "1125",
  "0x10",
  "1/0",
  "99999999999999999999",
};

/* What a keyboard does not have comes by pasting. */
static const char *const pasted[] = {
  "µ",      "Ω",       "−2 V",       "\u202Eabc",
  "\uFFFE", "e\u0301", "\U0001F4FA", "two\nlines\nand a third",
  "\t",     "ガメラ",  "שלום",       "0,7 V … 1 V",
};

static void
do_type (void)
{
  const char *text = texts[one_of (G_N_ELEMENTS (texts))];
  g_autofree char *quoted = g_shell_quote (text);
  g_autofree char *command = g_strdup_printf ("key ctrl+a type --delay 1 -- %s", quoted);

  say ("type %s", quoted);
  app_test_xdotool (command);
  typed++;
  if (one_of (2) == 0 && app_test_open_chooser () == NULL)
    press (one_of (3) == 0 ? "Escape" : "Return");
}

static void
do_paste (void)
{
  const char *text = pasted[one_of (G_N_ELEMENTS (pasted))];
  GtkWindow *window = window_in_front ();
  GtkWidget *focus = window != NULL ? gtk_window_get_focus (window) : NULL;

  if (focus == NULL || !(GTK_IS_TEXT (focus) || GTK_IS_TEXT_VIEW (focus)))
    return;
  gdk_clipboard_set_text (gtk_widget_get_clipboard (focus), text);
  say ("paste");
  app_test_xdotool ("key ctrl+v");
  typed++;
}

/* The mouse */

typedef struct
{
  GtkWidget *window;
  GPtrArray *found; /* borrowed widgets */
} Search;

static gboolean
is_to_be_clicked (GtkWidget *widget)
{
  return GTK_IS_BUTTON (widget) || GTK_IS_TEXT (widget) || GTK_IS_TEXT_VIEW (widget)
         || GTK_IS_SCALE (widget) || GTK_IS_SWITCH (widget) || GTK_IS_LABEL (widget)
         || BW_IS_PICTURE_AREA (widget);
}

/* A word on what has been written can open it in another program. */
static void
collect (GtkWidget *widget, gpointer data)
{
  Search *search = data;
  graphene_rect_t place;

  if (!gtk_widget_get_mapped (widget) || !gtk_widget_is_sensitive (widget)
      || gtk_widget_get_ancestor (widget, BW_TYPE_NOTICE) != NULL || GTK_IS_LINK_BUTTON (widget)
      || !is_to_be_clicked (widget) || gtk_widget_get_native (widget) != GTK_NATIVE (search->window)
      || !gtk_widget_compute_bounds (widget, search->window, &place))
    return;
  float x = place.origin.x + place.size.width / 2, y = place.origin.y + place.size.height / 2;
  if (x > 0 && y > 0 && x < (float) gtk_widget_get_width (search->window)
      && y < (float) gtk_widget_get_height (search->window))
    g_ptr_array_add (search->found, widget);
}

/* Without a window manager each window stands in the corner of the screen. */
static void
screen_place (GtkWindow *window, double x, double y, int *screen_x, int *screen_y)
{
  double dx, dy;
  gtk_native_get_surface_transform (GTK_NATIVE (window), &dx, &dy);
  *screen_x = (int) (x + dx);
  *screen_y = (int) (y + dy);
}

/* A place on the screen: the middle of a widget of the window in front, or anywhere in it. Returns
 * what is there, for the log; %NULL if there is no window. */
static const char *
any_place (int *x, int *y)
{
  GtkWindow *window = window_in_front ();
  if (window == NULL)
    return NULL;
  bring_to_front (window);
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  Search search = { GTK_WIDGET (window), found };
  app_test_each (GTK_WIDGET (window), collect, &search);
  if (found->len > 0 && one_of (5) > 0)
    {
      GtkWidget *widget = found->pdata[one_of (found->len)];
      double inside_x = gtk_widget_get_width (widget) / 2.0;
      double inside_y = gtk_widget_get_height (widget) / 2.0, in_x, in_y;
      if (gtk_widget_translate_coordinates (widget, GTK_WIDGET (window), inside_x, inside_y, &in_x,
                                            &in_y))
        {
          screen_place (window, in_x, in_y, x, y);
          return G_OBJECT_TYPE_NAME (widget);
        }
    }
  screen_place (window, one_of ((guint) MAX (1, gtk_widget_get_width (GTK_WIDGET (window)))),
                one_of ((guint) MAX (1, gtk_widget_get_height (GTK_WIDGET (window)))), x, y);
  return "somewhere";
}

/* A word on what has been written offers to open it: no other program is started from here. */
static gboolean
is_on_notice (void)
{
  BwWindow *window = sheet_in_front ();
  return window != NULL && bw_window_get_notice_text (window) != NULL;
}

static void
do_click (void)
{
  static const char *const buttons[] = { "1", "1", "1", "1", "1", "3", "--repeat 2 1", "4", "5" };
  const char *button = buttons[one_of (G_N_ELEMENTS (buttons))];
  int x, y;
  const char *what = any_place (&x, &y);

  if (what == NULL || is_on_notice ())
    return;
  g_autofree char *command = g_strdup_printf ("mousemove %d %d click %s", x, y, button);
  say ("%s (%s)", command, what);
  app_test_xdotool (command);
  clicks++;
}

static void
do_point (void)
{
  int x, y;
  const char *what = any_place (&x, &y);

  if (what == NULL)
    return;
  g_autofree char *command = g_strdup_printf ("mousemove %d %d", x, y);
  say ("%s (%s)", command, what);
  app_test_xdotool (command);
}

/* Whoever drags a header bar moves the window. That is the window manager's affair; without one the
 * toolkit does it itself, and goes on to move a window that is closed meanwhile. */
#define HEADER_HEIGHT 52

static void
drag (int x, int y, int to_x, int to_y)
{
  if (y < HEADER_HEIGHT)
    return;
  g_autofree char *command = g_strdup_printf ("mousemove %d %d mousedown 1 mousemove %d %d "
                                              "mousemove %d %d mouseup 1",
                                              x, y, (x + to_x) / 2, (y + to_y) / 2, to_x, to_y);
  say ("drag: %s", command);
  app_test_xdotool (command);
  has_moved = TRUE;
  drags++;
}

static void
collect_panes (GtkWidget *widget, gpointer found)
{
  if (GTK_IS_PANED (widget) && gtk_widget_get_mapped (widget))
    g_ptr_array_add (found, widget);
}

static void
drag_handle (BwWindow *window)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  double in_x, in_y;
  int x, y, by = (int) one_of (400) - 200;

  app_test_each (GTK_WIDGET (window), collect_panes, found);
  GtkPaned *panes = found->pdata[one_of (found->len)];
  GtkWidget *after = gtk_paned_get_end_child (panes);
  gboolean across = gtk_orientable_get_orientation (GTK_ORIENTABLE (panes))
                    == GTK_ORIENTATION_HORIZONTAL;
  if (!gtk_widget_translate_coordinates (after, GTK_WIDGET (window), across ? -1 : 100,
                                         across ? 100 : -1, &in_x, &in_y))
    return;
  screen_place (GTK_WINDOW (window), in_x, in_y, &x, &y);
  drag (x, y, across ? x + by : x, across ? y : y + by);
}

static void
do_drag (void)
{
  BwWindow *window = sheet_in_front ();
  int x, y, to_x, to_y;

  if (is_on_notice ())
    return;
  if (window != NULL && one_of (2) == 0)
    {
      bring_to_front (GTK_WINDOW (window));
      drag_handle (window);
    }
  else if (any_place (&x, &y) != NULL && any_place (&to_x, &to_y) != NULL)
    drag (x, y, to_x, to_y);
}

static void
do_resize (void)
{
  static const int sizes[][2] = { { 960, 600 }, { 1280, 800 }, { 1920, 1080 }, { 700, 500 } };
  const int *size = sizes[one_of (G_N_ELEMENTS (sizes))];
  BwWindow *window = sheet_in_front ();

  if (window == NULL)
    return;
  say ("resize to %d × %d", size[0], size[1]);
  gtk_window_set_default_size (GTK_WINDOW (window), size[0], size[1]);
  app_test_frames (2);
}

/* Sheets */

static void
do_view (void)
{
  BwWindow *window = sheet_in_front ();
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);
  static const char *const views[] = { "line",     "blanking", "field",   "map",       "work-out",
                                       "identify", "readings", "vectors", "sync",      "cause",
                                       "chain",    "curves",   "pitch",   "structure", "preview" };
  const char *view = views[one_of (G_N_ELEMENTS (views))];

  if (window == NULL)
    return;
  bw_window_show_page (window, kinds[one_of (n)].id);
  BwPage *page = bw_window_get_shown_page (window);
  say ("page %s, view %s", bw_window_get_page_id (window), view);
  if (bw_page_has_view (page, view))
    bw_page_show_view (page, view);
  app_test_frames (2);
}

static void
do_edit (void)
{
  static const BwPart parts[] = { BW_PART_SHEET, BW_PART_MONITOR, BW_PART_INPUT, BW_PART_SOURCE };
  BwWindow *window = sheet_in_front ();
  BwPart part = parts[one_of (G_N_ELEMENTS (parts))];

  if (window == NULL
      || (part == BW_PART_INPUT
          && bw_document_selected_input (bw_window_get_document (window)) == NULL)
      || (part == BW_PART_SOURCE
          && bw_document_selected_source (bw_window_get_document (window)) == NULL))
    return;
  say ("edit part %d", (int) part);
  bw_window_edit (window, part);
  app_test_frames (2);
}

static int
by_name (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* Opens one of the sheets of the tests, or one that was saved before. */
static void
do_open (void)
{
  g_autofree char *folder = g_build_filename (g_getenv ("BW_TEST_DATA"), "sheets", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, by_name);
  g_autofree char *path = g_build_filename (folder, names->pdata[one_of (names->len)], NULL);
  g_autofree char *text = app_test_file_text (path);
  g_autoptr (GFile) file = scratch_file ();
  g_autofree char *copy = g_strconcat (g_file_peek_path (file), ".bench", NULL);
  g_autoptr (GFile) opened_file = g_file_new_for_path (copy);

  if (one_of (6) == 0)
    text[one_of ((guint) strlen (text))] = '\0'; /* half a sheet */
  g_assert_true (g_file_set_contents (copy, text, -1, NULL));
  say ("open %s as %s", path, copy);
  g_application_open (G_APPLICATION (application), &opened_file, 1, "");
  app_test_settle ();
  opened++;
}

/* What is saved is what is there, and can be read again. */
static void
do_save (void)
{
  BwWindow *window = sheet_in_front ();
  if (window == NULL)
    return;
  BwDocument *document = bw_window_get_document (window);
  GFile *file = bw_document_get_file (document);

  say ("save");
  if (!gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL))
    return;
  app_test_settle ();
  if (file == NULL || bw_document_is_modified (document))
    return; /* a name is asked for, or what is typed is refused */
  g_autofree char *text = app_test_sheet_text (document);
  g_autoptr (BwDocument) again = app_test_document_at (g_file_peek_path (file));
  g_autofree char *read = app_test_sheet_text (again);
  g_assert_cmpstr (read, ==, text);
  saves++;
}

/* Undo leads back as far as it goes, and redo to where it was. */
static void
do_undo (void)
{
  BwWindow *window = sheet_in_front ();
  if (window == NULL || !bw_document_take_typed (bw_window_get_document (window)))
    return;
  BwDocument *document = bw_window_get_document (window);
  g_autofree char *before = app_test_sheet_text (document);
  guint steps = 0;

  while (bw_document_undo (document))
    steps++;
  say ("undo and redo %u steps", steps);
  app_test_frames (1);
  for (guint i = 0; i < steps; i++)
    g_assert_true (bw_document_redo (document));
  g_autofree char *after = app_test_sheet_text (document);
  g_assert_cmpstr (after, ==, before);
  undone += steps;
}

/* Every so often, of so many: */
static const struct
{
  guint share;
  void (*act) (void);
} kinds_of_action[] = {
  { 30, do_click }, { 20, do_walk }, { 9, do_command }, { 12, do_type }, { 4, do_paste },
  { 8, do_view },   { 6, do_edit },  { 4, do_point },   { 5, do_drag },  { 2, do_resize },
  { 2, do_open },   { 3, do_save },  { 2, do_undo },
};

static void
act (void)
{
  guint sum = 0, at = 0;
  for (guint i = 0; i < G_N_ELEMENTS (kinds_of_action); i++)
    sum += kinds_of_action[i].share;
  guint dice = one_of (sum);
  while (dice >= kinds_of_action[at].share)
    dice -= kinds_of_action[at++].share;
  GtkWindow *window = window_in_front ();
  if (window != NULL)
    bring_to_front (window);
  kinds_of_action[at].act ();
}

static guint
number_from (const char *variable, guint otherwise)
{
  const char *text = g_getenv (variable);
  return text != NULL ? (guint) g_ascii_strtoull (text, NULL, 10) : otherwise;
}

static void
test_random (void)
{
  gboolean is_long = g_getenv ("BW_RANDOM_SECONDS") != NULL;
  guint seed = number_from ("BW_RANDOM_SEED", SEED_OF_TEST);
  gint64 end = g_get_monotonic_time ()
               + number_from ("BW_RANDOM_SECONDS", SECONDS_OF_TEST) * G_TIME_SPAN_SECOND;
  g_autofree char *path = app_test_copy_sheet ("random.bench");

  g_autofree char *folder = g_path_get_dirname (path);
  g_assert_cmpint (g_chdir (folder), ==, 0); /* whatever is written without a folder */
  g_print ("# Seed %u\n", seed);
  chance = g_rand_new_with_seed (seed);
  app_test_clear_drafts ();
  app_test_allow_toolkit_faults ();
  app_test_give_focus (app_test_open (application, path));
  guint clock = g_timeout_add (200, on_clock, NULL);
  while (g_get_monotonic_time () < end && (is_long || actions < ACTIONS_OF_TEST))
    {
      actions++;
      act ();
      tidy_up ();
    }
  g_print (
      "# Done: seed %u, %u actions: %u clicks, %u texts, %u drags, %u steps undone and redone, "
      "%u sheets opened, %u saved and read again\n",
      seed, actions, clicks, typed, drags, undone, opened, saves);
  if (is_long)
    g_assert_cmpuint (saves, >, 0);
  g_assert_cmpuint (clicks + typed + drags, >, actions / 8);
  g_source_remove (clock);
  g_rand_free (chance);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_test_add_func ("/random/actions", test_random);
  return g_test_run ();
}
