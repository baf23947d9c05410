/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "side.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/result-view.h"
#include "app/widgets/wrap-layout.h"
#include "core/base/caution.h"
#include "core/hookup/results.h"

/**
 * BwHookupSide:
 *
 * What can be done with a plan: the parts can be copied, and the window writes and
 * prints them.
 */
struct _BwHookupSide
{
  GtkBox parent_instance;

  GtkWidget *buttons; /* borrowed; children */

  BwHookupHold *hold; /* nullable */
};

G_DEFINE_FINAL_TYPE (BwHookupSide, bw_hookup_side, GTK_TYPE_BOX)

/* Each names an action of the window, but for copying. */
static const struct
{
  const char *name;
  const char *label;
  const char *action;
} buttons[] = {
  { "copy-parts", N_ ("Copy Parts as CS_V"), NULL },
  { "export-parts", N_ ("E_xport Parts…"), "win.export-parts" },
  { "export-hookup", N_ ("Exp_ort Sheet…"), "win.export-hookup" },
  { "print-hookup", N_ ("Print _Hook-up…"), "win.print-hookup" },
};

static void
on_copy (BwHookupSide *self)
{
  g_autofree char *csv = bw_hookup_side_dup_parts_csv (self);
  if (csv != NULL)
    gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), csv);
}

static void
bw_hookup_side_finalize (GObject *object)
{
  g_clear_pointer (&BW_HOOKUP_SIDE (object)->hold, bw_hookup_hold_unref);
  G_OBJECT_CLASS (bw_hookup_side_parent_class)->finalize (object);
}

static void
bw_hookup_side_class_init (BwHookupSideClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_hookup_side_finalize;
}

static void
add_buttons (BwHookupSide *self)
{
  self->buttons = bw_wrap_box_new ();
  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      GtkWidget *button = bw_button_new (_ (buttons[i].label));
      gtk_widget_set_name (button, buttons[i].name);
      if (buttons[i].action != NULL)
        gtk_actionable_set_action_name (GTK_ACTIONABLE (button), buttons[i].action);
      else
        g_signal_connect_object (button, "clicked", G_CALLBACK (on_copy), self, G_CONNECT_SWAPPED);
      bw_wrap_box_append (self->buttons, button);
    }
  gtk_box_append (GTK_BOX (self), self->buttons);
}

static void
bw_hookup_side_init (BwHookupSide *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  add_buttons (self);
}

/**
 * bw_hookup_side_show:
 * @hold: (nullable): the plan; %NULL shows nothing
 */
void
bw_hookup_side_show (BwHookupSide *self, BwHookupHold *hold)
{
  g_clear_pointer (&self->hold, bw_hookup_hold_unref);
  gtk_widget_set_visible (GTK_WIDGET (self), hold != NULL);
  if (hold == NULL)
    return;
  self->hold = bw_hookup_hold_ref (hold);
  gtk_widget_set_visible (self->buttons, bw_hookup_hold_get (hold)->plan != NULL);
}

/**
 * bw_hookup_side_dup_parts_csv:
 *
 * Returns: (transfer full) (nullable): the parts as comma-separated values; %NULL if there is no
 *   plan
 */
char *
bw_hookup_side_dup_parts_csv (BwHookupSide *self)
{
  if (self->hold == NULL || bw_hookup_hold_get (self->hold)->plan == NULL)
    return NULL;
  g_autoptr (BwResult) result = bw_result_new (BW_FILE_MARK);
  bw_hookup_say (bw_result_root (result), bw_hookup_hold_get (self->hold), NULL);
  return bw_node_to_csv (bw_node_find (bw_result_root (result), "parts"));
}

/**
 * bw_hookup_caution_new:
 *
 * Returns: (transfer floating): the caution, which stands before all that is to be joined
 */
GtkWidget *
bw_hookup_caution_new (void)
{
  GtkWidget *label = bw_words_label_new (bw_caution_hook_up (), "bw-limits");
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 46);
  gtk_widget_set_name (label, "caution");
  return label;
}
