/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour-scheme.h"

#include <string.h>

/**
 * BwColourScheme:
 *
 * Light or dark, as the settings say: one of the two, or what the desktop asks for through its
 * portal. Without a session bus or a portal, "system" is light. The colours themselves come from
 * the palette of the drawings, as named colours for the style sheet.
 */
struct _BwColourScheme
{
  GObject parent_instance;

  GSettings *settings;
  GtkCssProvider *palette;
  GtkCssProvider *style;
  GCancellable *cancellable;
  GDBusProxy *portal; /* nullable */
  gboolean system_dark;
};

G_DEFINE_FINAL_TYPE (BwColourScheme, bw_colour_scheme, G_TYPE_OBJECT)

#define PORTAL_SPACE "org.freedesktop.appearance"
#define PORTAL_KEY "color-scheme"
#define PORTAL_DARK 1

/* GTK_THEME, which GTK takes before its settings: "NAME" or "NAME:VARIANT", where the variant is "dark",
 * "hc" for high contrast, or "hc-dark". */
static void
take_environment (char **name, gboolean *dark, gboolean *contrast)
{
  const char *theme = g_getenv ("GTK_THEME");
  if (theme == NULL || *theme == '\0')
    return;
  g_auto (GStrv) words = g_strsplit (theme, ":", 2);
  g_free (*name);
  *name = g_strdup (words[0]);
  *dark = words[1] != NULL && g_str_has_suffix (words[1], "dark");
  *contrast = words[1] != NULL && g_str_has_prefix (words[1], "hc");
}

/**
 * bw_theme_of:
 *
 * Returns: the palette that goes with the theme that GTK shows now
 */
BwTheme
bw_theme_of (GtkSettings *settings)
{
  g_autofree char *name = NULL;
  gboolean dark = FALSE, contrast = FALSE;

  g_object_get (settings, "gtk-theme-name", &name, "gtk-application-prefer-dark-theme", &dark,
                NULL);
  take_environment (&name, &dark, &contrast);
  contrast |= name != NULL && (strstr (name, "HighContrast") || strstr (name, "-hc"));
  dark |= name != NULL && (strstr (name, "Inverse") || g_str_has_suffix (name, "dark"));
  if (contrast)
    return dark ? BW_THEME_CONTRAST_DARK : BW_THEME_CONTRAST_LIGHT;
  return dark ? BW_THEME_DARK : BW_THEME_LIGHT;
}

/**
 * bw_palette_css:
 *
 * Returns: (transfer full): the colours of @theme as named colours of a style sheet
 */
char *
bw_palette_css (BwTheme theme)
{
  static const char *const names[BW_N_INKS] = {
    [BW_INK_PAPER] = "paper",
    [BW_INK_GRAPHITE] = "graphite",
    [BW_INK_GRAPHITE_LIGHT] = "graphite_light",
    [BW_INK_RULE] = "rule",
    [BW_INK_ACCENT] = "accent",
    [BW_INK_OK] = "ok",
    [BW_INK_TIGHT] = "tight",
    [BW_INK_CURABLE] = "curable",
    [BW_INK_FATAL] = "fatal",
    [BW_INK_RED] = "red",
    [BW_INK_GREEN] = "green",
    [BW_INK_BLUE] = "blue",
    [BW_INK_SYNC] = "sync",
    [BW_INK_BAND] = "band",
  };
  GString *css = g_string_new (NULL);
  for (BwInkRole role = 0; role < BW_N_INKS; role++)
    {
      g_autofree char *colour = bw_ink_css (theme, role);
      g_string_append_printf (css, "@define-color bw_%s %s;\n", names[role], colour);
    }
  return g_string_free (css, FALSE);
}

static void
load_palette (BwColourScheme *self)
{
  g_autofree char *css = bw_palette_css (bw_theme_of (gtk_settings_get_default ()));
  gtk_css_provider_load_from_data (self->palette, css, -1);
}

static void
apply (BwColourScheme *self)
{
  g_autofree char *wanted = g_settings_get_string (self->settings, "colour-scheme");
  gboolean dark = g_str_equal (wanted, "system") ? self->system_dark : g_str_equal (wanted, "dark");
  gboolean is_dark;

  /* Setting it again to what it is would make the toolkit read its whole theme again. */
  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &is_dark, NULL);
  if (is_dark != dark)
    g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", dark, NULL);
}

/* The portal wraps the value in one variant, or, in its older form, in two. */
static void
take_portal_value (BwColourScheme *self, GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);
  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *outer = inner;
      inner = g_variant_get_variant (outer);
      g_variant_unref (outer);
    }
  if (g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    {
      self->system_dark = g_variant_get_uint32 (inner) == PORTAL_DARK;
      apply (self);
    }
}

static void
on_portal_signal (GDBusProxy *portal, const char *sender, const char *name, GVariant *parameters,
                  gpointer user_data)
{
  BwColourScheme *self = BW_COLOUR_SCHEME (user_data);
  const char *space, *key;
  g_autoptr (GVariant) value = NULL;

  if (!g_str_equal (name, "SettingChanged")
      || !g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&s@v)", &space, &key, &value);
  if (g_str_equal (space, PORTAL_SPACE) && g_str_equal (key, PORTAL_KEY))
    take_portal_value (self, value);
}

static void
on_portal_read (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GVariant) answer = g_dbus_proxy_call_finish (G_DBUS_PROXY (source), result, NULL);
  if (answer == NULL)
    return; /* no portal, or a cancelled call: @user_data may be gone */
  g_autoptr (GVariant) value = g_variant_get_child_value (answer, 0);
  take_portal_value (BW_COLOUR_SCHEME (user_data), value);
}

static void
on_portal_ready (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GDBusProxy *portal = g_dbus_proxy_new_for_bus_finish (result, NULL);
  if (portal == NULL)
    return;
  BwColourScheme *self = BW_COLOUR_SCHEME (user_data);
  self->portal = portal;
  g_signal_connect_object (portal, "g-signal", G_CALLBACK (on_portal_signal), self, 0);
  g_dbus_proxy_call (portal, "Read", g_variant_new ("(ss)", PORTAL_SPACE, PORTAL_KEY),
                     G_DBUS_CALL_FLAGS_NONE, -1, self->cancellable, on_portal_read, self);
}

static void
bw_colour_scheme_dispose (GObject *object)
{
  BwColourScheme *self = BW_COLOUR_SCHEME (object);
  GdkDisplay *display = gdk_display_get_default ();

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->portal);
  g_clear_object (&self->settings);
  if (self->palette != NULL && display != NULL)
    {
      gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (self->palette));
      gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (self->style));
    }
  g_clear_object (&self->palette);
  g_clear_object (&self->style);
  G_OBJECT_CLASS (bw_colour_scheme_parent_class)->dispose (object);
}

static void
bw_colour_scheme_class_init (BwColourSchemeClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_colour_scheme_dispose;
}

static void
bw_colour_scheme_init (BwColourScheme *self)
{
  self->cancellable = g_cancellable_new ();
  self->palette = gtk_css_provider_new ();
  self->style = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (self->style, "/org/breezeway/Breezeway/style.css");
}

/**
 * bw_colour_scheme_new:
 * @settings: those of the application
 *
 * Styles the default display for as long as the object lives.
 *
 * Returns: (transfer full): the colour scheme
 */
BwColourScheme *
bw_colour_scheme_new (GSettings *settings)
{
  BwColourScheme *self = g_object_new (BW_TYPE_COLOUR_SCHEME, NULL);
  GdkDisplay *display = gdk_display_get_default ();
  GtkSettings *gtk = gtk_settings_get_default ();

  self->settings = g_object_ref (settings);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->palette),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_signal_connect_object (settings, "changed::colour-scheme", G_CALLBACK (apply), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk, "notify::gtk-application-prefer-dark-theme",
                           G_CALLBACK (load_palette), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk, "notify::gtk-theme-name", G_CALLBACK (load_palette), self,
                           G_CONNECT_SWAPPED);
  apply (self);
  load_palette (self);
  g_dbus_proxy_new_for_bus (G_BUS_TYPE_SESSION, G_DBUS_PROXY_FLAGS_DO_NOT_LOAD_PROPERTIES, NULL,
                            "org.freedesktop.portal.Desktop", "/org/freedesktop/portal/desktop",
                            "org.freedesktop.portal.Settings", self->cancellable, on_portal_ready,
                            self);
  return self;
}
