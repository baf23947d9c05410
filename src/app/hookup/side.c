/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "side.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/wrap-layout.h"
#include "core/base/caution.h"
#include "figures.h"

/**
 * BwHookupSide:
 *
 * The lists of a plan: its steps, what to buy, every connection and every other pin, what to mind,
 * and the caution. The parts can be copied, and the window writes and prints them.
 */
struct _BwHookupSide
{
  GtkBox parent_instance;

  GtkWidget *buttons; /* borrowed; children, likewise */
  BwHookupList *lists[BW_N_HOOKUP_LISTS];

  BwHookupHold *hold; /* nullable */
};

G_DEFINE_FINAL_TYPE (BwHookupSide, bw_hookup_side, GTK_TYPE_BOX)

static const struct
{
  const char *name;
  const char *title;
  void (*fill) (BwHookupList *list, const BwHookupView *view);
} lists[BW_N_HOOKUP_LISTS] = {
  [BW_HOOKUP_LIST_STEPS] = { "steps", N_ ("Steps"), bw_hookup_list_steps },
  [BW_HOOKUP_LIST_PARTS] = { "parts", N_ ("Parts"), bw_hookup_list_parts },
  [BW_HOOKUP_LIST_CONNECTIONS] = { "connections", N_ ("Connections"), bw_hookup_list_connections },
  [BW_HOOKUP_LIST_PINS] = { "pins", N_ ("Other pins"), bw_hookup_list_pins },
  [BW_HOOKUP_LIST_WARNINGS] = { "warnings", N_ ("Mind"), bw_hookup_list_warnings },
};

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
      GtkWidget *button = gtk_button_new_with_mnemonic (_ (buttons[i].label));
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
add_caution (BwHookupSide *self)
{
  GtkWidget *label = gtk_label_new (bw_caution_hook_up ());
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 46);
  gtk_widget_set_name (label, "caution");
  gtk_widget_add_css_class (label, "bw-limits");
  gtk_box_append (GTK_BOX (self), label);
}

static void
bw_hookup_side_init (BwHookupSide *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  for (guint i = 0; i < BW_N_HOOKUP_LISTS; i++)
    {
      self->lists[i] = bw_hookup_list_new (lists[i].name, _ (lists[i].title));
      gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->lists[i]));
      if (i == BW_HOOKUP_LIST_PARTS)
        add_buttons (self);
    }
  add_caution (self);
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
  const BwHookupView view = { bw_hookup_hold_get (hold), NULL, bw_quantity_locale_mark () };
  for (guint i = 0; i < BW_N_HOOKUP_LISTS; i++)
    lists[i].fill (self->lists[i], &view);
  gtk_widget_set_visible (self->buttons, view.hookup->plan != NULL);
}

/**
 * bw_hookup_side_get_list:
 *
 * Returns: (transfer none): one of the lists
 */
BwHookupList *
bw_hookup_side_get_list (BwHookupSide *self, BwHookupListKind kind)
{
  return self->lists[kind];
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
  return bw_hookup_parts_csv (bw_hookup_hold_get (self->hold));
}
