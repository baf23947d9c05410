/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "button-name.h"

/* GTK 4.8 tells a screen reader the label of a button with the underscore of its access key in it,
 * so that “_Done” is heard before the “Done” that is seen. */

/* @label as it is seen: an underscore before a letter is gone, two are one. */
static char *
without_underscores (const char *label)
{
  GString *plain = g_string_new (NULL);
  for (const char *p = label; *p != '\0'; p++)
    {
      if (*p == '_' && p[1] != '\0')
        p++;
      g_string_append_c (plain, *p);
    }
  return g_string_free (plain, FALSE);
}

static void
on_label (GtkButton *button)
{
  const char *label = gtk_button_get_label (button);
  if (label == NULL || !gtk_button_get_use_underline (button))
    return;
  g_autofree char *plain = without_underscores (label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, plain,
                                  -1);
}

/**
 * bw_name_button:
 *
 * Tells a screen reader what @button says, now and whenever that changes.
 */
void
bw_name_button (GtkButton *button)
{
  g_return_if_fail (GTK_IS_BUTTON (button));
  if (g_signal_handler_find (button, G_SIGNAL_MATCH_FUNC, 0, 0, NULL, (gpointer) on_label, NULL)
      == 0)
    g_signal_connect (button, "notify::label", G_CALLBACK (on_label), NULL);
  on_label (button);
}

/**
 * bw_name_buttons:
 *
 * As bw_name_button() for each button with an access key in @root, which a template has just
 * filled.
 */
void
bw_name_buttons (GtkWidget *root)
{
  g_return_if_fail (GTK_IS_WIDGET (root));
  if (GTK_IS_BUTTON (root) && gtk_button_get_use_underline (GTK_BUTTON (root)))
    bw_name_button (GTK_BUTTON (root));
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    bw_name_buttons (child);
}

/**
 * bw_button_new:
 * @label: with an underscore before its access key
 *
 * Returns: (transfer floating): a button that is heard as it is seen
 */
GtkWidget *
bw_button_new (const char *label)
{
  g_return_val_if_fail (label != NULL, NULL);
  GtkWidget *button = gtk_button_new_with_mnemonic (label);
  bw_name_button (GTK_BUTTON (button));
  return button;
}
