/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "app/detail/page.h"
#include "app/fit/page.h"
#include "app/help/help.h"
#include "app/hookup/page.h"
#include "app/levels/page.h"
#include "app/timing/page.h"
#include "app/widgets/template.h"

/* Every page, in the order of the job. A page is a folder and a line here: the header bar, the keys
 * Control+1, Control+2 and so on, the window of shortcuts and the tests go by this table. */
static const BwPageKind kinds[] = {
  { "fit", NC_ ("page", "Fit"), N_ ("Which Source Shows at Which Input"), N_ ("Show the Fit page"),
    bw_fit_page_get_type },
  { "hookup", NC_ ("page", "Hook-up"), N_ ("Leads and Parts from the Source to the Input"),
    N_ ("Show the Hook-up page"), bw_hookup_page_get_type },
  { "timing", NC_ ("page", "Timing"),
    N_ ("Rasters: Drawn, Worked Out, Identified, Held Against a Standard"),
    N_ ("Show the Timing page"), bw_timing_page_get_type },
  { "levels", NC_ ("page", "Levels"),
    N_ ("Levels, Vectors and Sync, and the Likely Cause of a Reading"), N_ ("Show the Levels page"),
    bw_levels_page_get_type },
  { "detail", NC_ ("page", "Detail"), N_ ("The Finest Detail That Is Seen, and What Limits It"),
    N_ ("Show the Detail page"), bw_detail_page_get_type },
};

/**
 * bw_page_kinds:
 * @n: (out): how many there are
 *
 * Returns: (transfer none): all pages, in the order in which they stand
 */
const BwPageKind *
bw_page_kinds (guint *n)
{
  g_return_val_if_fail (n != NULL, NULL);
  *n = G_N_ELEMENTS (kinds);
  return kinds;
}

static const BwPageKind *
find_kind (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].id, id))
      return &kinds[i];
  return NULL;
}

/* A page is made when it is first wanted, so that a window opens quickly. */
static BwPage *
make_page (BwWindow *self, const BwPageKind *kind)
{
  BwPage *page = g_object_new (kind->get_type (), NULL);

  gtk_stack_add_named (self->pages, GTK_WIDGET (page), kind->id);
  bw_page_set_document (page, self->document);
  bw_page_put_handles (page, kind->id, self->shares);
  return page;
}

/**
 * bw_window_get_page:
 * @id: of a page in bw_page_kinds()
 *
 * Returns: (transfer none) (nullable): the page, made if it was not there yet; %NULL if there is no
 *   such page
 */
BwPage *
bw_window_get_page (BwWindow *self, const char *id)
{
  g_return_val_if_fail (BW_IS_WINDOW (self) && id != NULL, NULL);
  GtkWidget *page = gtk_stack_get_child_by_name (self->pages, id);
  const BwPageKind *kind = find_kind (id);

  if (page != NULL)
    return BW_PAGE (page);
  return kind != NULL ? make_page (self, kind) : NULL;
}

/**
 * bw_window_get_shown_page:
 *
 * Returns: (transfer none): the page that is shown
 */
BwPage *
bw_window_get_shown_page (BwWindow *self)
{
  g_return_val_if_fail (BW_IS_WINDOW (self), NULL);
  return BW_PAGE (gtk_stack_get_visible_child (self->pages));
}

static void
press_button (BwWindow *self)
{
  const BwPageKind *kind = find_kind (gtk_stack_get_visible_child_name (self->pages));
  gtk_toggle_button_set_active (self->toggles->pdata[kind - kinds], TRUE);
}

/* Another page is shown, by whatever way. What is typed is taken first; if it is refused, the page
 * stays where it was. */
void
bw_window_on_page_turned (BwWindow *self)
{
  GtkWidget *turned_to = gtk_stack_get_visible_child (self->pages);

  if (self->turning || self->document == NULL || turned_to == self->page)
    return;
  self->turning = TRUE;
  if (self->page != NULL)
    gtk_stack_set_visible_child (self->pages, self->page);
  if (bw_document_take_typed (self->document))
    gtk_stack_set_visible_child (self->pages, turned_to);
  self->page = gtk_stack_get_visible_child (self->pages);
  press_button (self);
  self->turning = FALSE;
}

/**
 * bw_window_show_page:
 * @id: of a page in bw_page_kinds(); of another nothing happens
 *
 * Turns to the page, unless what is typed is refused.
 */
void
bw_window_show_page (BwWindow *self, const char *id)
{
  g_return_if_fail (BW_IS_WINDOW (self) && id != NULL);
  if (bw_window_get_page (self, id) == NULL)
    return;
  gtk_stack_set_visible_child_name (self->pages, id);
}

static void
on_page_button (BwWindow *self, GtkToggleButton *button)
{
  guint index;
  if (gtk_toggle_button_get_active (button) && g_ptr_array_find (self->toggles, button, &index))
    bw_window_show_page (self, kinds[index].id);
}

static void
add_button (BwWindow *self, const BwPageKind *kind)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (
      g_dpgettext2 (GETTEXT_PACKAGE, "page", kind->label));

  gtk_widget_set_name (button, kind->id);
  gtk_widget_set_tooltip_text (button, _ (kind->tooltip));
  if (self->toggles->len > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), self->toggles->pdata[0]);
  g_ptr_array_add (self->toggles, button);
  g_signal_connect_object (button, "toggled", G_CALLBACK (on_page_button), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->page_buttons, button);
}

/* A button for each page; the first page is shown. */
void
bw_window_add_pages (BwWindow *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    add_button (self, &kinds[i]);
  bw_window_show_page (self, kinds[0].id);
}

/* Help */

/**
 * bw_window_show_help:
 *
 * Opens the manual where the person is: at the bench, or at the view of the page that is shown.
 */
void
bw_window_show_help (BwWindow *self)
{
  BwHelp *help = bw_help_open (GTK_WINDOW (self));

  if (bw_has_focus_within (GTK_WIDGET (self->side)))
    bw_help_show (help, "bench", bw_window_is_editing (self) ? "editor" : NULL);
  else
    bw_help_show (help, gtk_stack_get_visible_child_name (self->pages),
                  bw_page_get_view (bw_window_get_shown_page (self)));
}

/* Window of shortcuts */

#define SHORTCUTS_RESOURCE "/org/breezeway/Breezeway/shortcuts.ui"
#define PAGES_MARK "<!--pages-->"

static void
append_shortcut (GString *xml, guint number, const BwPageKind *kind)
{
  g_autofree char *words = g_markup_printf_escaped (
      "<child><object class=\"GtkShortcutsShortcut\"><property name=\"title\">%s</property>"
      "<property name=\"accelerator\">&lt;Control&gt;%u</property></object></child>",
      _ (kind->shortcut), number);
  g_string_append (xml, words);
}

/**
 * bw_window_show_shortcuts:
 *
 * Opens the window of shortcuts: what its template says, and a line for each page.
 */
void
bw_window_show_shortcuts (BwWindow *self)
{
  g_autoptr (GBytes) template = g_resources_lookup_data (SHORTCUTS_RESOURCE,
                                                         G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_return_if_fail (template != NULL);
  g_autoptr (GString) xml = g_string_new_len (g_bytes_get_data (template, NULL),
                                              (gssize) g_bytes_get_size (template));
  g_autoptr (GString) pages = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    append_shortcut (pages, i + 1, &kinds[i]);
  g_string_replace (xml, PAGES_MARK, pages->str, 1);
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_string (xml->str, (gssize) xml->len);
  GtkWindow *shortcuts = GTK_WINDOW (gtk_builder_get_object (builder, "help_overlay"));
  gtk_window_set_transient_for (shortcuts, GTK_WINDOW (self));
  gtk_window_set_destroy_with_parent (shortcuts, TRUE);
  gtk_window_present (shortcuts);
}
