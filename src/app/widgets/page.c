/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include "button-name.h"
#include "wrap-layout.h"

/**
 * BwPage:
 *
 * A page of the window: a row of buttons that choose what is shown, with the tools of the drawing
 * at its end, and under it the view that is chosen. A view is a drawing with its figures, or a tool
 * without a drawing; several views may be drawings of one panel.
 */
typedef struct
{
  GtkWidget *row;
  GtkBox *views;
  GtkWidget *tools;
  GtkWidget *zoom_in;
  GtkWidget *zoom_out;
  GtkWidget *whole;
  GtkStack *stack;
  gboolean zooms; /* some drawing of the page could be zoomed, so that the buttons stay */

  GPtrArray *list; /* of View, in the order of the buttons */
} BwPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (BwPage, bw_page, GTK_TYPE_WIDGET)

/**
 * View:
 * @id: unique in the page
 * @child: in the stack; borrowed
 * @panel: (nullable): its drawing; borrowed
 * @drawn: whether @id is a view of @panel, which has several
 * @button: borrowed
 */
typedef struct
{
  char *id;
  GtkWidget *child;
  BwPicturePanel *panel;
  gboolean drawn;
  GtkToggleButton *button;
} View;

#define ZOOM_STEP 1.5

static void
view_free (gpointer data)
{
  View *view = data;
  g_free (view->id);
  g_free (view);
}

static BwPagePrivate *
private_of (BwPage *self)
{
  return bw_page_get_instance_private (self);
}

static View *
find_view (BwPage *self, const char *id)
{
  GPtrArray *list = private_of (self)->list;
  for (guint i = 0; i < list->len; i++)
    if (g_str_equal (((View *) list->pdata[i])->id, id))
      return list->pdata[i];
  return NULL;
}

/* The view whose button is pressed; NULL while there is none. */
static View *
chosen_view (BwPage *self)
{
  GPtrArray *list = private_of (self)->list;
  for (guint i = 0; i < list->len; i++)
    if (gtk_toggle_button_get_active (((View *) list->pdata[i])->button))
      return list->pdata[i];
  return NULL;
}

/* Tools of the drawing */

static void
update_tools (BwPage *self)
{
  BwPagePrivate *p = private_of (self);
  BwPicturePanel *panel = bw_page_get_panel (self);
  BwPictureArea *area = panel != NULL ? bw_picture_panel_get_area (panel) : NULL;
  gboolean zoomed = area != NULL && bw_picture_area_can_be_zoomed (area);
  gboolean whole = area == NULL || bw_picture_area_is_whole (area);

  gtk_widget_set_visible (p->tools, panel != NULL);
  gtk_widget_set_visible (p->row, panel != NULL || p->list->len > 1);
  /* Buttons that come and go would move the others, and whatever is below them where a row is
   * full. */
  p->zooms = p->zooms || zoomed;
  gtk_widget_set_visible (p->zoom_in, p->zooms);
  gtk_widget_set_visible (p->zoom_out, p->zooms);
  gtk_widget_set_visible (p->whole, p->zooms);
  gtk_widget_set_sensitive (p->zoom_in, zoomed);
  gtk_widget_set_sensitive (p->zoom_out, zoomed && !whole);
  gtk_widget_set_sensitive (p->whole, zoomed && !whole);
}

static BwPictureArea *
shown_area (BwPage *self)
{
  BwPicturePanel *panel = bw_page_get_panel (self);
  g_assert (panel != NULL); /* the tools are hidden where there is none */
  return bw_picture_panel_get_area (panel);
}

static void
on_zoom_in (BwPage *self)
{
  bw_picture_area_zoom (shown_area (self), ZOOM_STEP);
}

static void
on_zoom_out (BwPage *self)
{
  bw_picture_area_zoom (shown_area (self), 1 / ZOOM_STEP);
}

static void
on_whole (BwPage *self)
{
  bw_picture_area_show_whole (shown_area (self));
}

/* Views */

static void
on_toggled (BwPage *self, GtkToggleButton *button)
{
  View *view = chosen_view (self);

  if (!gtk_toggle_button_get_active (button) || view == NULL)
    return;
  if (view->drawn)
    bw_picture_panel_choose (view->panel, view->id);
  gtk_stack_set_visible_child (private_of (self)->stack, view->child);
  update_tools (self);
}

/* A panel's views have changed: which one it shows, or which ones can be chosen. */
static void
on_panel_views (BwPage *self, BwPicturePanel *panel)
{
  GPtrArray *list = private_of (self)->list;
  const char *shown = bw_picture_panel_get_view (panel);
  gboolean seen = bw_page_get_panel (self) == panel;

  for (guint i = 0; i < list->len; i++)
    {
      View *view = list->pdata[i];
      if (view->panel != panel || !view->drawn)
        continue;
      const BwPanelView *what = bw_picture_panel_find_view (panel, view->id);
      GtkWidget *button = GTK_WIDGET (view->button);
      gtk_widget_set_sensitive (button, what->can);
      gtk_widget_set_tooltip_text (button, what->tooltip);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                      what->tooltip, -1);
      if (seen && g_str_equal (view->id, shown))
        gtk_toggle_button_set_active (view->button, TRUE);
    }
}

static GtkToggleButton *
add_button (BwPage *self, const char *id, const char *label, const char *tooltip)
{
  BwPagePrivate *p = private_of (self);
  GtkWidget *button = gtk_toggle_button_new_with_label (label);

  gtk_widget_set_name (button, id);
  gtk_widget_set_tooltip_text (button, tooltip);
  if (p->list->len > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), ((View *) p->list->pdata[0])->button);
  gtk_box_append (p->views, button);
  return GTK_TOGGLE_BUTTON (button);
}

static void
add (BwPage *self, const View *like, const char *label, const char *tooltip)
{
  BwPagePrivate *p = private_of (self);
  View *view = g_memdup2 (like, sizeof *like);

  view->id = g_strdup (like->id);
  view->button = add_button (self, view->id, label, tooltip);
  g_ptr_array_add (p->list, view);
  if (gtk_widget_get_parent (view->child) == NULL)
    gtk_stack_add_child (p->stack, view->child);
  g_signal_connect_object (view->button, "toggled", G_CALLBACK (on_toggled), self,
                           G_CONNECT_SWAPPED);
  if (p->list->len == 1)
    gtk_toggle_button_set_active (view->button, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (p->views), p->list->len > 1);
  update_tools (self);
}

static void
follow_panel (BwPage *self, BwPicturePanel *panel)
{
  g_signal_connect_object (bw_picture_panel_get_area (panel), "drawn", G_CALLBACK (update_tools),
                           self, G_CONNECT_SWAPPED);
  g_signal_connect_object (panel, "views-changed", G_CALLBACK (on_panel_views), self,
                           G_CONNECT_SWAPPED);
}

/**
 * bw_page_add_view:
 * @id: unique in the page
 * @label: on its button
 * @tooltip: (nullable)
 * @child: (transfer floating): what is shown
 * @panel: (nullable): @child or one in it: the drawing that the tools work on
 *
 * Adds a view, and to the row of views a button that shows it.
 */
void
bw_page_add_view (BwPage *self, const char *id, const char *label, const char *tooltip,
                  GtkWidget *child, BwPicturePanel *panel)
{
  const View view = { .id = (char *) id, .child = child, .panel = panel };

  g_return_if_fail (BW_IS_PAGE (self) && id != NULL && label != NULL);
  g_return_if_fail (find_view (self, id) == NULL);
  g_return_if_fail (GTK_IS_WIDGET (child) && (panel == NULL || BW_IS_PICTURE_PANEL (panel)));
  add (self, &view, label, tooltip);
  if (panel != NULL)
    follow_panel (self, panel);
}

/**
 * bw_page_add_panel:
 * @child: (transfer floating): @panel or what it stands in
 * @panel: a panel that has all its views
 *
 * Adds each view of @panel, as bw_page_add_view() does.
 */
void
bw_page_add_panel (BwPage *self, GtkWidget *child, BwPicturePanel *panel)
{
  g_return_if_fail (BW_IS_PAGE (self) && GTK_IS_WIDGET (child) && BW_IS_PICTURE_PANEL (panel));
  const BwPanelView *what;

  for (guint i = 0; (what = bw_picture_panel_get_nth_view (panel, i)) != NULL; i++)
    {
      const View view = { .id = what->id, .child = child, .panel = panel, .drawn = TRUE };
      add (self, &view, what->label, what->tooltip);
    }
  follow_panel (self, panel);
}

/**
 * bw_page_show_view:
 * @id: of a view of the page
 *
 * Shows another view, as the person does with the buttons.
 */
void
bw_page_show_view (BwPage *self, const char *id)
{
  g_return_if_fail (BW_IS_PAGE (self) && id != NULL);
  View *view = find_view (self, id);
  g_return_if_fail (view != NULL);
  gtk_toggle_button_set_active (view->button, TRUE);
}

/**
 * bw_page_has_view:
 *
 * Returns: whether the page has a view of that id that can be shown now
 */
gboolean
bw_page_has_view (BwPage *self, const char *id)
{
  g_return_val_if_fail (BW_IS_PAGE (self) && id != NULL, FALSE);
  const View *view = find_view (self, id);
  return view != NULL && gtk_widget_get_sensitive (GTK_WIDGET (view->button));
}

/**
 * bw_page_get_view:
 *
 * Returns: (transfer none) (nullable): the id of the view that is shown
 */
const char *
bw_page_get_view (BwPage *self)
{
  g_return_val_if_fail (BW_IS_PAGE (self), NULL);
  const View *view = chosen_view (self);
  return view != NULL ? view->id : NULL;
}

/**
 * bw_page_get_panel:
 *
 * Returns: (transfer none) (nullable): the drawing that is shown, with its controls; %NULL while a
 *   view without a drawing is shown
 */
BwPicturePanel *
bw_page_get_panel (BwPage *self)
{
  g_return_val_if_fail (BW_IS_PAGE (self), NULL);
  const View *view = chosen_view (self);
  return view != NULL ? view->panel : NULL;
}

/* Handles between the drawings and their figures */

/* Calls @each for every panel of the page, with its name in the window. */
static void
each_panel (BwPage *self, const char *id, GVariantDict *shares,
            void (*each) (BwPicturePanel *panel, const char *name, GVariantDict *shares))
{
  GPtrArray *list = private_of (self)->list;
  BwPicturePanel *last = NULL;

  for (guint i = 0; i < list->len; i++)
    {
      const View *view = list->pdata[i];
      if (view->panel == NULL || view->panel == last)
        continue; /* the views of one panel stand together, and have one handle */
      g_autofree char *name = g_strconcat (id, "/", view->id, NULL);
      each (view->panel, name, shares);
      last = view->panel;
    }
}

/**
 * bw_page_keep_handles:
 * @id: of the page
 * @shares: where to put them
 *
 * Adds where the person has left the handles of the page.
 */
void
bw_page_keep_handles (BwPage *self, const char *id, GVariantDict *shares)
{
  g_return_if_fail (BW_IS_PAGE (self) && id != NULL && shares != NULL);
  each_panel (self, id, shares, bw_picture_panel_keep_handle);
  if (BW_PAGE_GET_CLASS (self)->keep_handle != NULL)
    BW_PAGE_GET_CLASS (self)->keep_handle (self, id, shares);
}

/**
 * bw_page_put_handles:
 * @id: of the page
 * @shares: what bw_page_keep_handles() has made
 *
 * Puts the handles of the page where they were left.
 */
void
bw_page_put_handles (BwPage *self, const char *id, GVariantDict *shares)
{
  g_return_if_fail (BW_IS_PAGE (self) && id != NULL && shares != NULL);
  each_panel (self, id, shares, bw_picture_panel_put_handle);
  if (BW_PAGE_GET_CLASS (self)->put_handle != NULL)
    BW_PAGE_GET_CLASS (self)->put_handle (self, id, shares);
}

/**
 * bw_page_set_document:
 * @document: what to show; to be set once
 */
void
bw_page_set_document (BwPage *self, BwDocument *document)
{
  g_return_if_fail (BW_IS_PAGE (self) && BW_IS_DOCUMENT (document));
  BW_PAGE_GET_CLASS (self)->set_document (self, document);
}

/**
 * bw_page_focus:
 *
 * Moves the focus to what the page is about.
 */
void
bw_page_focus (BwPage *self)
{
  g_return_if_fail (BW_IS_PAGE (self));
  if (BW_PAGE_GET_CLASS (self)->focus != NULL)
    BW_PAGE_GET_CLASS (self)->focus (self);
  else
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

/* Widget */

/* Not gtk_widget_dispose_template(): GTK 4.8 looks for the template in the class of the page itself
 * and not in this one. What the template made is let go of with the object. */
static void
bw_page_dispose (GObject *object)
{
  GtkWidget *child;

  g_ptr_array_set_size (private_of (BW_PAGE (object))->list, 0); /* its buttons go */
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bw_page_parent_class)->dispose (object);
}

static void
bw_page_finalize (GObject *object)
{
  g_ptr_array_unref (private_of (BW_PAGE (object))->list);
  G_OBJECT_CLASS (bw_page_parent_class)->finalize (object);
}

static void
bw_page_class_init (BwPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_page_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/breezeway/Breezeway/page.ui");
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, row);
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, views);
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, tools);
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, zoom_in);
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, zoom_out);
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, whole);
  gtk_widget_class_bind_template_child_private (widget_class, BwPage, stack);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_in);
  gtk_widget_class_bind_template_callback (widget_class, on_zoom_out);
  gtk_widget_class_bind_template_callback (widget_class, on_whole);
}

static void
bw_page_init (BwPage *self)
{
  g_type_ensure (BW_TYPE_WRAP_LAYOUT);
  private_of (self)->list = g_ptr_array_new_with_free_func (view_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_name_buttons (GTK_WIDGET (self));
}
