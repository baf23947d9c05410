/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>

#include <glib/gi18n-lib.h>

#include "app/window/application.h"

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, BW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  g_set_application_name ("Breezeway");

  g_autoptr (BwApplication) application = bw_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
