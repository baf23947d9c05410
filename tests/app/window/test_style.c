/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include "app/timing/page.h"
#include "app/fit/finding-row.h"
#include "app/widgets/colour-scheme.h"
#include "app/widgets/empty-page.h"
#include "app/widgets/fault-bar.h"
#include "app/widgets/page.h"
#include "app/widgets/picker.h"
#include "app/widgets/picture-area.h"
#include "app/help/help.h"
#include "app/window/preferences.h"
#include "app/timing/work-out.h"
#include "app/timing/readings-panel.h"
#include "app/timing/identify-panel.h"
#include "app/fit/page.h"
#include "app/fit/grid.h"
#include "app/fit/findings-view.h"
#include "app/fit/cell.h"

/* Templates, colours and settings. */

static void
test_template (gconstpointer data)
{
  GType type = ((GType (*) (void)) data) ();
  GtkWidget *widget = g_object_new (type, NULL);

  if (GTK_IS_WINDOW (widget))
    {
      g_object_ref (widget);
      gtk_window_destroy (GTK_WINDOW (widget));
    }
  else
    g_object_ref_sink (widget);
  g_assert_finalize_object (widget);
}

static void
add_template (const char *name, GType (*get_type) (void))
{
  g_autofree char *path = g_strconcat ("/style/template/", name, NULL);
  g_test_add_data_func (path, (gconstpointer) get_type, test_template);
}

static void
on_parsing_error (GtkCssProvider *provider, GtkCssSection *section, GError *error)
{
  g_autofree char *place = gtk_css_section_to_string (section);
  g_error ("%s: %s", place, error->message);
}

/* The style sheet names no colour that the palette does not define, in any theme. */
static void
test_style (void)
{
  g_autoptr (GBytes) style = g_resources_lookup_data ("/org/breezeway/Breezeway/style.css",
                                                      G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_autoptr (GRegex) colour = g_regex_new ("@(bw_[a-z_]+)", 0, 0, NULL);
  guint uses = 0;

  for (BwTheme theme = 0; theme < BW_N_THEMES; theme++)
    {
      g_autofree char *palette = bw_palette_css (theme);
      g_autoptr (GMatchInfo) match = NULL;
      g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();
      g_signal_connect (provider, "parsing-error", G_CALLBACK (on_parsing_error), NULL);
      gtk_css_provider_load_from_data (provider, palette, -1);
      gtk_css_provider_load_from_data (provider, g_bytes_get_data (style, NULL), -1);
      g_regex_match (colour, g_bytes_get_data (style, NULL), 0, &match);
      for (; g_match_info_matches (match); g_match_info_next (match, NULL), uses++)
        {
          g_autofree char *name = g_match_info_fetch (match, 1);
          g_autofree char *definition = g_strdup_printf ("@define-color %s #", name);
          g_assert_nonnull (strstr (palette, definition));
        }
    }
  g_assert_cmpuint (uses, >, 0);
}

static gboolean
is_dark (gpointer data)
{
  return bw_theme_of (gtk_settings_get_default ()) == BW_THEME_DARK;
}

/* The setting takes effect at once; without a portal "system" is light. */
static void
test_colour_scheme (void)
{
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");
  BwColourScheme *scheme = bw_colour_scheme_new (settings);

  g_assert_false (is_dark (NULL));
  g_settings_set_string (settings, "colour-scheme", "dark");
  g_assert_true (app_test_wait (is_dark, NULL));
  g_settings_set_string (settings, "colour-scheme", "light");
  app_test_settle ();
  g_assert_false (is_dark (NULL));
  g_settings_set_string (settings, "colour-scheme", "system");
  app_test_settle ();
  g_assert_false (is_dark (NULL));
  g_object_unref (scheme);
}

/* A portal as desktops have it, for as long as the test lasts. */

static const char *const portal_xml =
    "<node><interface name='org.freedesktop.portal.Settings'>"
    "<method name='Read'><arg type='s' direction='in'/><arg type='s' direction='in'/>"
    "<arg type='v' direction='out'/></method>"
    "<signal name='SettingChanged'><arg type='s'/><arg type='s'/><arg type='v'/></signal>"
    "</interface></node>";

static void
on_portal_call (GDBusConnection *connection, const char *sender, const char *path,
                const char *interface, const char *method, GVariant *parameters,
                GDBusMethodInvocation *invocation, gpointer data)
{
  const char *space, *key;
  g_variant_get (parameters, "(&s&s)", &space, &key);
  g_assert_cmpstr (space, ==, "org.freedesktop.appearance");
  g_assert_cmpstr (key, ==, "color-scheme");
  g_dbus_method_invocation_return_value (invocation,
                                         g_variant_new ("(v)", g_variant_new_variant (
                                                                   g_variant_new_uint32 (1))));
}

static GDBusConnection *
start_portal (GTestDBus *bus)
{
  static const GDBusInterfaceVTable methods = { on_portal_call };
  g_autoptr (GDBusNodeInfo) node = g_dbus_node_info_new_for_xml (portal_xml, NULL);
  g_autoptr (GError) error = NULL;
  GDBusConnection *connection =
      g_dbus_connection_new_for_address_sync (g_test_dbus_get_bus_address (bus),
                                              G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT
                                                  | G_DBUS_CONNECTION_FLAGS_MESSAGE_BUS_CONNECTION,
                                              NULL, NULL, &error);
  g_assert_no_error (error);
  g_dbus_connection_register_object (connection, "/org/freedesktop/portal/desktop",
                                     node->interfaces[0], &methods, NULL, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GVariant)
      owned = g_dbus_connection_call_sync (connection, "org.freedesktop.DBus",
                                           "/org/freedesktop/DBus", "org.freedesktop.DBus",
                                           "RequestName",
                                           g_variant_new ("(su)", "org.freedesktop.portal.Desktop",
                                                          0),
                                           NULL, G_DBUS_CALL_FLAGS_NONE, -1, NULL, &error);
  g_assert_no_error (error);
  return connection;
}

static gboolean
is_light (gpointer data)
{
  return !is_dark (data);
}

/* "system" is what the desktop's portal says, now and when it changes. */
static void
test_portal (void)
{
  g_autofree char *display = g_strdup (g_getenv ("DISPLAY"));
  g_autoptr (GTestDBus) bus = g_test_dbus_new (G_TEST_DBUS_NONE);
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");

  g_test_dbus_up (bus);
  g_setenv ("DISPLAY", display, TRUE); /* the bus takes it away */
  GDBusConnection *portal = start_portal (bus);
  BwColourScheme *scheme = bw_colour_scheme_new (settings);
  g_assert_true (app_test_wait (is_dark, NULL));
  g_assert_true (
      g_dbus_connection_emit_signal (portal, NULL, "/org/freedesktop/portal/desktop",
                                     "org.freedesktop.portal.Settings", "SettingChanged",
                                     g_variant_new ("(ssv)", "org.freedesktop.appearance",
                                                    "color-scheme", g_variant_new_uint32 (2)),
                                     NULL));
  g_assert_true (app_test_wait (is_light, NULL));
  g_object_unref (scheme);
  app_test_settle ();
  g_object_unref (portal);
  g_test_dbus_stop (bus);
}

/* The themes of high contrast have palettes of their own. */
static void
test_high_contrast (void)
{
  GtkSettings *gtk = gtk_settings_get_default ();
  g_autofree char *name = NULL;

  g_object_get (gtk, "gtk-theme-name", &name, NULL);
  g_object_set (gtk, "gtk-theme-name", "HighContrast", NULL);
  g_assert_cmpuint (bw_theme_of (gtk), ==, BW_THEME_CONTRAST_LIGHT);
  g_object_set (gtk, "gtk-theme-name", "HighContrastInverse", NULL);
  g_assert_cmpuint (bw_theme_of (gtk), ==, BW_THEME_CONTRAST_DARK);
  g_object_set (gtk, "gtk-theme-name", name, NULL);
  g_assert_cmpuint (bw_theme_of (gtk), ==, BW_THEME_LIGHT);
}

/* So they have where the theme is named in the environment, which the toolkit takes first: what a page
 * draws follows it. */
static void
test_theme_of_environment (void)
{
  static const struct
  {
    const char *named;
    BwTheme theme;
  } cases[] = { { "Adwaita:hc", BW_THEME_CONTRAST_LIGHT },
                { "Adwaita:hc-dark", BW_THEME_CONTRAST_DARK },
                { "Adwaita:dark", BW_THEME_DARK },
                { "HighContrast", BW_THEME_CONTRAST_LIGHT },
                { "HighContrastInverse", BW_THEME_CONTRAST_DARK },
                { "Adwaita", BW_THEME_LIGHT } };
  g_autofree char *before = g_strdup (g_getenv ("GTK_THEME"));

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      AppTestWindow f;
      g_setenv ("GTK_THEME", cases[i].named, TRUE);
      app_test_set_up (&f, NULL);
      bw_window_show_page (f.window, "levels");
      BwPicturePanel *panel = bw_page_get_panel (bw_window_get_shown_page (f.window));
      g_assert_cmpuint (bw_picture_area_get_ink (bw_picture_panel_get_area (panel))->theme, ==,
                        cases[i].theme);
      app_test_tear_down (&f, NULL);
    }
  if (before != NULL)
    g_setenv ("GTK_THEME", before, TRUE);
  else
    g_unsetenv ("GTK_THEME");
}

static void
test_preferences (void)
{
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");
  GtkWidget *window = bw_preferences_new (NULL, settings);
  GtkWidget *scheme = app_test_find (window, GTK_TYPE_DROP_DOWN, "scheme");
  g_autofree char *chosen = NULL;

  g_settings_set_string (settings, "colour-scheme", "light");
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (scheme)), ==, 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (scheme), 2);
  chosen = g_settings_get_string (settings, "colour-scheme");
  g_assert_cmpstr (chosen, ==, "dark");
  g_settings_set_string (settings, "colour-scheme", "system");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The icon theme has the picture of @widget, if it is one, and there is a loader for it: without one
 * the theme gives the picture of a missing picture. */
static void
assert_icon (GtkWidget *widget, gpointer names)
{
  const char *name = GTK_IS_IMAGE (widget) ? gtk_image_get_icon_name (GTK_IMAGE (widget)) : NULL;
  if (name == NULL || !g_hash_table_add (names, g_strdup (name)))
    return;
  GtkIconTheme *theme = gtk_icon_theme_get_for_display (gtk_widget_get_display (widget));
  g_autoptr (GtkIconPaintable) icon = gtk_icon_theme_lookup_icon (theme, name, NULL, 16, 1,
                                                                  GTK_TEXT_DIR_LTR, 0);
  g_autoptr (GFile) file = gtk_icon_paintable_get_file (icon);
  g_autoptr (GError) error = NULL;

  g_test_message ("%s", name);
  g_assert_cmpstr (gtk_icon_paintable_get_icon_name (icon), ==, name);
  g_assert_nonnull (file);
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GdkPixbuf) pixels = gdk_pixbuf_new_from_stream (G_INPUT_STREAM (stream), NULL, &error);
  g_assert_no_error (error);
  g_assert_nonnull (pixels);
}

/* No control shows the picture of a missing picture. */
static void
test_icons (void)
{
  g_autoptr (BwDocument) document = app_test_document ();
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  BwWindow *window = app_test_window_new (document);

  /* as GtkApplication does */
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (
                                        gtk_widget_get_display (GTK_WIDGET (window))),
                                    "/org/breezeway/Breezeway/icons");
  bw_window_edit (window, BW_PART_SOURCE);
  app_test_each (GTK_WIDGET (window), assert_icon, names);
  g_assert_cmpuint (g_hash_table_size (names), >=, 12);
  app_test_close (window);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/style/colours", test_style);
  g_test_add_func ("/style/colour-scheme", test_colour_scheme);
  g_test_add_func ("/style/portal", test_portal);
  g_test_add_func ("/style/icons", test_icons);
  g_test_add_func ("/style/high-contrast", test_high_contrast);
  g_test_add_func ("/style/theme-of-environment", test_theme_of_environment);
  g_test_add_func ("/style/preferences", test_preferences);
  add_template ("bench-list", bw_bench_list_get_type);
  add_template ("bench-panel", bw_bench_panel_get_type);
  add_template ("editor", bw_editor_get_type);
  add_template ("empty-page", bw_empty_page_get_type);
  add_template ("fault-bar", bw_fault_bar_get_type);
  add_template ("finding-row", bw_finding_row_get_type);
  add_template ("findings-view", bw_findings_view_get_type);
  add_template ("fit-cell", bw_fit_cell_get_type);
  add_template ("fit-grid", bw_fit_grid_get_type);
  add_template ("fit-page", bw_fit_page_get_type);
  add_template ("picture-area", bw_picture_area_get_type);
  add_template ("timing-page", bw_timing_page_get_type);
  add_template ("picture-panel", bw_picture_panel_get_type);
  add_template ("work-out", bw_work_out_get_type);
  add_template ("identify-panel", bw_identify_panel_get_type);
  add_template ("readings-panel", bw_readings_panel_get_type);
  add_template ("help", bw_help_get_type);
  add_template ("picker", bw_picker_get_type);
  add_template ("preferences", bw_preferences_get_type);
  add_template ("window", bw_window_get_type);
  return g_test_run ();
}
