/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "context-menu.h"

#include <glib/gi18n-lib.h>

/* A menu of what can be done with a widget: by the second button of the pointer, the Menu key, and
 * Shift+F10. */

typedef struct
{
  GtkWidget *widget; /* borrowed: it holds this */
  const BwContextItem *items;
  guint n_items;
  BwContextPointFunc point; /* nullable */
  gpointer owner;
  GtkWidget *menu; /* weak; nullable: while it is open */
} Context;

static void
context_free (gpointer data)
{
  Context *context = data;
  g_clear_weak_pointer (&context->menu);
  g_free (context);
}

static void
on_activate (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  Context *context = user_data;
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (action), "item"));
  context->items[i].activate (context->owner);
}

static GSimpleActionGroup *
actions_new (Context *context)
{
  GSimpleActionGroup *group = g_simple_action_group_new ();

  for (guint i = 0; i < context->n_items; i++)
    {
      const BwContextItem *item = &context->items[i];
      g_autofree char *name = g_strdup_printf ("item-%u", i);
      g_autoptr (GSimpleAction) action = g_simple_action_new (name, NULL);
      g_object_set_data (G_OBJECT (action), "item", GUINT_TO_POINTER (i));
      g_simple_action_set_enabled (action, item->can == NULL || item->can (context->owner));
      g_signal_connect (action, "activate", G_CALLBACK (on_activate), context);
      g_action_map_add_action (G_ACTION_MAP (group), G_ACTION (action));
    }
  return group;
}

static GMenuModel *
model_new (Context *context)
{
  GMenu *menu = g_menu_new ();
  for (guint i = 0; i < context->n_items; i++)
    {
      g_autofree char *action = g_strdup_printf ("context.item-%u", i);
      g_menu_append (menu, _ (context->items[i].label), action);
    }
  return G_MENU_MODEL (menu);
}

/* The toolkit places a menu only in a widget that has a layout manager. */
static GtkWidget *
place_for (GtkWidget *widget)
{
  while (gtk_widget_get_layout_manager (widget) == NULL && gtk_widget_get_parent (widget) != NULL)
    widget = gtk_widget_get_parent (widget);
  return widget;
}

/* The item that was chosen is activated after the menu has closed. */
static gboolean
unparent (gpointer menu)
{
  if (gtk_widget_get_parent (menu) != NULL)
    gtk_widget_unparent (menu);
  return G_SOURCE_REMOVE;
}

static void
on_closed (GtkWidget *menu)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, unparent, g_object_ref (menu), g_object_unref);
}

static void
open_at (Context *context, double x, double y)
{
  GtkWidget *place = place_for (context->widget);
  g_autoptr (GMenuModel) model = model_new (context);
  g_autoptr (GSimpleActionGroup) actions = actions_new (context);
  double place_x = x, place_y = y;

  if (context->menu != NULL)
    unparent (context->menu);
  gtk_widget_translate_coordinates (context->widget, place, x, y, &place_x, &place_y);
  g_set_weak_pointer (&context->menu, gtk_popover_menu_new_from_model (model));
  gtk_widget_insert_action_group (context->menu, "context", G_ACTION_GROUP (actions));
  gtk_popover_set_has_arrow (GTK_POPOVER (context->menu), FALSE);
  gtk_popover_set_pointing_to (GTK_POPOVER (context->menu),
                               &(GdkRectangle){ (int) place_x, (int) place_y, 1, 1 });
  gtk_widget_set_parent (context->menu, place);
  g_signal_connect (context->menu, "closed", G_CALLBACK (on_closed), NULL);
  gtk_popover_popup (GTK_POPOVER (context->menu));
}

static void
on_pressed (GtkGesture *click, int n_press, double x, double y, gpointer user_data)
{
  Context *context = user_data;
  gtk_gesture_set_state (click, GTK_EVENT_SEQUENCE_CLAIMED);
  if (context->point != NULL)
    context->point (context->owner, x, y);
  open_at (context, x, y);
}

/* With a key the menu opens in the middle of what has the focus. */
static gboolean
on_key (GtkWidget *widget, GVariant *args, gpointer user_data)
{
  Context *context = user_data;
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  graphene_rect_t box;

  if (focus == NULL || !gtk_widget_compute_bounds (focus, widget, &box))
    return GDK_EVENT_PROPAGATE;
  open_at (context, (double) (box.origin.x + box.size.width / 2),
           (double) (box.origin.y + box.size.height / 2));
  return GDK_EVENT_STOP;
}

/**
 * bw_context_menu_add:
 * @items: must live as long as the program
 * @point: (nullable)
 * @owner: what the items are called with; it must live as long as @widget
 *
 * Gives @widget a menu of its own.
 */
void
bw_context_menu_add (GtkWidget *widget, const BwContextItem *items, guint n_items,
                     BwContextPointFunc point, gpointer owner)
{
  g_return_if_fail (GTK_IS_WIDGET (widget) && items != NULL && n_items > 0);
  Context *context = g_new0 (Context, 1);
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  static const char *const triggers[] = { "Menu", "<Shift>F10" };

  *context = (Context){ widget, items, n_items, point, owner, NULL };
  g_object_set_data_full (G_OBJECT (widget), "context-menu", context, context_free);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), context);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
  for (guint i = 0; i < G_N_ELEMENTS (triggers); i++)
    gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                          gtk_shortcut_new (gtk_shortcut_trigger_parse_string (
                                                                triggers[i]),
                                                            gtk_callback_action_new (on_key,
                                                                                     context,
                                                                                     NULL)));
  gtk_widget_add_controller (widget, keys);
}
