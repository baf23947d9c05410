/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gtk/gtk.h>

/* Exit status 0: a display can be opened. 1: none, or the one that is named does not answer. */
int
main (void)
{
  return gtk_init_check () ? 0 : 1;
}
