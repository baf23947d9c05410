/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences.h"

#include "app/widgets/template.h"

/**
 * BwPreferences:
 *
 * The settings that a person may want to change. Each takes effect at once.
 */
struct _BwPreferences
{
  GtkWindow parent_instance;

  GtkDropDown *scheme;
  GtkWidget *scheme_label;
  GtkSpinButton *recent;
};

G_DEFINE_FINAL_TYPE (BwPreferences, bw_preferences, GTK_TYPE_WINDOW)

/* In the order of the list in the template. */
static const char *const schemes[] = { "system", "light", "dark" };

static gboolean
scheme_to_position (GValue *value, GVariant *variant, gpointer user_data)
{
  for (guint i = 0; i < G_N_ELEMENTS (schemes); i++)
    if (g_str_equal (schemes[i], g_variant_get_string (variant, NULL)))
      g_value_set_uint (value, i);
  return TRUE;
}

static GVariant *
position_to_scheme (const GValue *value, const GVariantType *type, gpointer user_data)
{
  guint position = g_value_get_uint (value);
  return position < G_N_ELEMENTS (schemes) ? g_variant_new_string (schemes[position]) : NULL;
}

static void
bw_preferences_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), BW_TYPE_PREFERENCES);
  G_OBJECT_CLASS (bw_preferences_parent_class)->dispose (object);
}

static void
bw_preferences_class_init (BwPreferencesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_preferences_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/preferences.ui");
  gtk_widget_class_bind_template_child (widget_class, BwPreferences, scheme);
  gtk_widget_class_bind_template_child (widget_class, BwPreferences, scheme_label);
  gtk_widget_class_bind_template_child (widget_class, BwPreferences, recent);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bw_preferences_init (BwPreferences *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_label_control (GTK_WIDGET (self->scheme), self->scheme_label);
}

/**
 * bw_preferences_new:
 * @parent: (nullable): the window that it belongs to
 *
 * Returns: (transfer none): the window, not shown yet
 */
GtkWidget *
bw_preferences_new (GtkWindow *parent, GSettings *settings)
{
  BwPreferences *self = g_object_new (BW_TYPE_PREFERENCES, "transient-for", parent, NULL);

  g_settings_bind_with_mapping (settings, "colour-scheme", self->scheme, "selected",
                                G_SETTINGS_BIND_DEFAULT, scheme_to_position, position_to_scheme,
                                NULL, NULL);
  g_settings_bind (settings, "recent-limit", self->recent, "value", G_SETTINGS_BIND_DEFAULT);
  return GTK_WIDGET (self);
}
