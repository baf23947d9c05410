/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file-chooser.h"

#define LET_GO_AFTER_S 60

static gboolean
on_late (gpointer chooser)
{
  return G_SOURCE_REMOVE;
}

/**
 * bw_file_chooser_let_go:
 * @chooser: (inout) (transfer full) (nullable): a file chooser; %NULL afterwards
 *
 * Closes the chooser now and lets it go only after a while. GTK 4.18 uses memory that was freed
 * when a chooser goes that still reads the names of folders (gtkpathbar.c, 4.18.6): opened and closed
 * at once, it took the program with it.
 */
void
bw_file_chooser_let_go (GtkNativeDialog **chooser)
{
  g_return_if_fail (chooser != NULL);

  if (*chooser == NULL)
    return;
  gtk_native_dialog_hide (*chooser);
  g_timeout_add_seconds_full (G_PRIORITY_LOW, LET_GO_AFTER_S, on_late, g_steal_pointer (chooser),
                              g_object_unref);
}
