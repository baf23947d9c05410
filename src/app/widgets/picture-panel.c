/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/base/export.h"
#include "context-menu.h"
#include "empty-page.h"
#include "template.h"

/**
 * BwPicturePanel:
 *
 * A drawing with what goes with it on every page: the page's own controls, the answer as a sentence,
 * the figures beside the drawing or, where there is no room, under it, and the line that reads what
 * the cursors stand on. "view" tells that another of its drawings has been chosen, "views-changed"
 * that the page's buttons are to be brought up to date.
 */
struct _BwPicturePanel
{
  GtkWidget parent_instance;

  GtkStack *stack;
  BwEmptyPage *empty;
  GtkWidget *content;
  GtkLabel *title;
  GtkBox *controls;
  GtkPaned *paned;
  GtkBox *drawn;
  BwPictureArea *area;
  GtkLabel *reading;
  GtkBox *side;
  BwResultView *table;

  gboolean reads;          /* a cursor is set */
  GPtrArray *views;        /* of BwPanelView */
  const BwPanelView *view; /* nullable: the one that is chosen */
  int reading_lines;       /* how many the line of what is read has room for; zero: not known yet */
  double share[2];  /* of the drawing, by orientation, as the person has set it; zero: usual */
  int placed_for;   /* the size of the panes for which the handle was put; zero: not yet */
  gboolean placing; /* the handle is being put, not moved by the person */
  guint place_id;   /* zero: the figures stand where they should */
};

G_DEFINE_FINAL_TYPE (BwPicturePanel, bw_picture_panel, GTK_TYPE_WIDGET)

enum
{
  VIEW,
  VIEWS_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Exports on paper: a page of this many pixels of 1/96 inch. */
#define EXPORT_WIDTH 1100
#define EXPORT_HEIGHT 640
#define PRINT_DPI 300
#define MENU_ZOOM 1.5

/* The figures go beside the drawing if the panel is at least as wide as so many characters; there
 * they take this share of it, but no more than so many characters, or what their tables need, but no
 * more than the largest share. Under it, this share. */
#define SIDE_SHARE_MAX 0.43
#define HANDLE_WIDTH 1
#define WIDE_CHARS 112
#define SIDE_SHARE 0.31
#define SIDE_CHARS_MAX 56
#define READING_CHARS 84
#define UNDER_SHARE 0.12

static void
panel_view_free (gpointer data)
{
  BwPanelView *view = data;
  g_free (view->id);
  g_free (view->label);
  g_free (view->tooltip);
  g_free (view);
}

static const char *
hint (BwPicturePanel *self)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self->area);
  if (drawing == NULL || !bw_drawing_can_be_read (drawing))
    return "";
  if (bw_picture_area_can_be_zoomed (self->area))
    return _ (
        "Point at it or use the arrow keys. C: second cursor. Shift+arrows: move. + − 0: zoom.");
  return _ ("Point at it or use the arrow keys. C: second cursor.");
}

/* What the cursors read; while there is none, how to set one. The line is always there, so that
 * nothing moves when the pointer comes and goes. */
static void
show_reading (BwPicturePanel *self, const char *words)
{
  gboolean reads = *words != '\0';

  gtk_label_set_label (self->reading, reads ? words : hint (self));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->reading), reads ? words : NULL);
  if (reads)
    gtk_widget_remove_css_class (GTK_WIDGET (self->reading), "bw-light");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->reading), "bw-light");
  self->reads = reads;
}

static void
on_reading (BwPicturePanel *self, const char *words)
{
  show_reading (self, words);
}

/* There is something else to draw, or another part of it. */
static void
on_drawn (BwPicturePanel *self)
{
  if (!self->reads)
    show_reading (self, "");
}

/* Views */

/**
 * bw_picture_panel_add_view:
 * @id: what "view" tells; unique in the page
 * @label: on the button that chooses it
 * @tooltip: what it is
 *
 * Adds a drawing to choose. The first one is chosen.
 */
void
bw_picture_panel_add_view (BwPicturePanel *self, const char *id, const char *label,
                           const char *tooltip)
{
  g_return_if_fail (BW_IS_PICTURE_PANEL (self) && id != NULL && label != NULL);
  BwPanelView *view = g_new (BwPanelView, 1);

  *view = (BwPanelView){ g_strdup (id), g_strdup (label), g_strdup (tooltip), TRUE };
  g_ptr_array_add (self->views, view);
  if (self->view == NULL)
    self->view = view;
}

/**
 * bw_picture_panel_get_nth_view:
 *
 * Returns: (transfer none) (nullable): a view; %NULL from the last one on
 */
const BwPanelView *
bw_picture_panel_get_nth_view (BwPicturePanel *self, guint index)
{
  g_return_val_if_fail (BW_IS_PICTURE_PANEL (self), NULL);
  return index < self->views->len ? self->views->pdata[index] : NULL;
}

/**
 * bw_picture_panel_find_view:
 * @id: of a view
 *
 * Returns: (transfer none): the view
 */
const BwPanelView *
bw_picture_panel_find_view (BwPicturePanel *self, const char *id)
{
  g_return_val_if_fail (BW_IS_PICTURE_PANEL (self) && id != NULL, NULL);
  for (guint i = 0; i < self->views->len; i++)
    if (g_str_equal (((BwPanelView *) self->views->pdata[i])->id, id))
      return self->views->pdata[i];
  g_return_val_if_reached (NULL);
}

/**
 * bw_picture_panel_allow_view:
 * @id: of a view
 * @can: whether it can be chosen
 * @tooltip: what it is, or why it cannot be chosen
 */
void
bw_picture_panel_allow_view (BwPicturePanel *self, const char *id, gboolean can,
                             const char *tooltip)
{
  BwPanelView *view = (BwPanelView *) bw_picture_panel_find_view (self, id);
  g_return_if_fail (view != NULL);

  if (view->can == can && g_strcmp0 (view->tooltip, tooltip) == 0)
    return;
  g_free (view->tooltip);
  view->tooltip = g_strdup (tooltip);
  view->can = can;
  g_signal_emit (self, signals[VIEWS_CHANGED], 0);
}

/**
 * bw_picture_panel_choose:
 * @id: of a view
 *
 * Shows another drawing, as the person does with the buttons.
 */
void
bw_picture_panel_choose (BwPicturePanel *self, const char *id)
{
  const BwPanelView *view = bw_picture_panel_find_view (self, id);
  g_return_if_fail (view != NULL);

  if (view == self->view)
    return;
  self->view = view;
  g_signal_emit (self, signals[VIEWS_CHANGED], 0);
  g_signal_emit (self, signals[VIEW], 0, view->id);
}

/**
 * bw_picture_panel_get_view:
 *
 * Returns: (transfer none) (nullable): the id of the view that is chosen; %NULL if there is but one
 *   drawing
 */
const char *
bw_picture_panel_get_view (BwPicturePanel *self)
{
  g_return_val_if_fail (BW_IS_PICTURE_PANEL (self), NULL);
  return self->view != NULL ? self->view->id : NULL;
}

/* Layout */

static int
chars_width (BwPicturePanel *self, int chars)
{
  return chars * bw_char_width (GTK_WIDGET (self)) / PANGO_SCALE;
}

static GtkOrientation
orientation_for (BwPicturePanel *self, int width)
{
  return width >= chars_width (self, WIDE_CHARS) ? GTK_ORIENTATION_HORIZONTAL
                                                 : GTK_ORIENTATION_VERTICAL;
}

static GtkOrientation
orientation_of (BwPicturePanel *self)
{
  return gtk_orientable_get_orientation (GTK_ORIENTABLE (self->paned));
}

/* The size of the panes along which the handle moves. */
static int
panes_size (BwPicturePanel *self)
{
  return orientation_of (self) == GTK_ORIENTATION_VERTICAL
             ? gtk_widget_get_height (GTK_WIDGET (self->paned))
             : gtk_widget_get_width (GTK_WIDGET (self->paned));
}

/* Where the handle goes: where the person has moved it to, or the usual place. */
static int
wanted_position (BwPicturePanel *self, int size)
{
  GtkOrientation orientation = orientation_of (self);
  int least;

  if (self->share[orientation] > 0)
    return (int) round (size * self->share[orientation]);
  if (orientation == GTK_ORIENTATION_VERTICAL)
    return size - (int) (size * UNDER_SHARE);
  gtk_widget_measure (GTK_WIDGET (self->side), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL,
                      NULL);
  return size
         - MAX (MIN ((int) (size * SIDE_SHARE), chars_width (self, SIDE_CHARS_MAX)),
                MIN (least + HANDLE_WIDTH, (int) (size * SIDE_SHARE_MAX)));
}

/* The line of what is read has room for a sentence: where the panel is narrow for its font, that is
 * two lines, or three. It is as high with any words, so that the drawing stays where it is. */
static void
size_reading (BwPicturePanel *self)
{
  static const char *const classes[] = { NULL, "bw-two-lines", "bw-three-lines" };
  int width = MAX (1, gtk_widget_get_width (GTK_WIDGET (self)));
  int lines = CLAMP ((chars_width (self, READING_CHARS) - 1) / width + 1, 1, 3);

  if (lines == self->reading_lines)
    return;
  self->reading_lines = lines;
  gtk_label_set_wrap (self->reading, lines > 1);
  gtk_label_set_single_line_mode (self->reading, lines == 1);
  gtk_label_set_lines (self->reading, lines > 1 ? lines : -1);
  for (int i = 1; i < 3; i++)
    if (lines == i + 1)
      gtk_widget_add_css_class (GTK_WIDGET (self->reading), classes[i]);
    else
      gtk_widget_remove_css_class (GTK_WIDGET (self->reading), classes[i]);
}

/* Panes that are turned get their places anew, and only then is the handle put: they take the new
 * size for a change of the old one, and would move it. */
static void
place (BwPicturePanel *self)
{
  GtkOrientation wanted = orientation_for (self, gtk_widget_get_width (GTK_WIDGET (self)));

  size_reading (self);
  self->placed_for = 0;
  if (orientation_of (self) != wanted)
    {
      gtk_orientable_set_orientation (GTK_ORIENTABLE (self->paned), wanted);
      return;
    }
  self->placing = TRUE;
  self->placed_for = panes_size (self);
  gtk_paned_set_position (self->paned, wanted_position (self, self->placed_for));
  self->placing = FALSE;
}

/* Not while the widgets get their places: turning the panes asks for new ones. */
static gboolean
on_place (gpointer data)
{
  BwPicturePanel *self = data;
  self->place_id = 0;
  place (self);
  return G_SOURCE_REMOVE;
}

/* Whether the person holds the button of the mouse. */
static gboolean
is_dragged (BwPicturePanel *self)
{
  GtkNative *native = gtk_widget_get_native (GTK_WIDGET (self));
  GdkSeat *seat = gdk_display_get_default_seat (gtk_widget_get_display (GTK_WIDGET (self)));
  GdkDevice *pointer = seat != NULL ? gdk_seat_get_pointer (seat) : NULL;
  GdkModifierType held = 0;

  if (native == NULL || pointer == NULL)
    return FALSE;
  gdk_surface_get_device_position (gtk_native_get_surface (native), pointer, NULL, NULL, &held);
  return (held & GDK_BUTTON1_MASK) != 0;
}

static void
keep_share (BwPicturePanel *self)
{
  int size = panes_size (self);
  if (size > 0 && size == self->placed_for)
    self->share[orientation_of (self)] = (double) gtk_paned_get_position (self->paned) / size;
}

/* The panes move the handle too, whenever their size or that of a child changes: only where the
 * person moves it, it is to stay there. */
static void
on_position (BwPicturePanel *self)
{
  if (!self->placing && is_dragged (self))
    keep_share (self);
}

/* The same by the keys, which move the handle where it has the focus; what this gives is given to the
 * toolkit: whether the key has been used. */
static gboolean
on_handle_moved (BwPicturePanel *self)
{
  if (!gtk_widget_is_focus (GTK_WIDGET (self->paned)))
    return FALSE;
  keep_share (self);
  return TRUE;
}

/* The name of the handle's place in either orientation, for bw_picture_panel_keep_handle(). */
static char *
handle_key (const char *name, GtkOrientation orientation)
{
  return g_strconcat (name, orientation == GTK_ORIENTATION_HORIZONTAL ? "/beside" : "/under", NULL);
}

/**
 * bw_picture_panel_keep_handle:
 * @name: the panel's, unique in the window
 * @shares: where to put it
 *
 * Adds the share that the person has given the drawing, beside its figures and above them. A share
 * that nobody has set is taken out.
 */
void
bw_picture_panel_keep_handle (BwPicturePanel *self, const char *name, GVariantDict *shares)
{
  g_return_if_fail (BW_IS_PICTURE_PANEL (self) && name != NULL && shares != NULL);

  for (int i = 0; i < 2; i++)
    {
      g_autofree char *key = handle_key (name, (GtkOrientation) i);
      if (self->share[i] > 0)
        g_variant_dict_insert (shares, key, "d", self->share[i]);
      else
        g_variant_dict_remove (shares, key);
    }
}

/**
 * bw_picture_panel_put_handle:
 * @name: the panel's, unique in the window
 * @shares: what bw_picture_panel_keep_handle() has made
 *
 * Puts the handle where it was left; to its usual place if that is not in @shares.
 */
void
bw_picture_panel_put_handle (BwPicturePanel *self, const char *name, GVariantDict *shares)
{
  g_return_if_fail (BW_IS_PICTURE_PANEL (self) && name != NULL && shares != NULL);

  for (int i = 0; i < 2; i++)
    {
      g_autofree char *key = handle_key (name, (GtkOrientation) i);
      double share;
      gboolean is_set = g_variant_dict_lookup (shares, key, "d", &share) && share > 0 && share < 1;
      self->share[i] = is_set ? share : 0;
    }
  self->placed_for = 0;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
bw_picture_panel_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BwPicturePanel *self = BW_PICTURE_PANEL (widget);

  gtk_widget_size_allocate (GTK_WIDGET (self->stack), &(GtkAllocation){ 0, 0, width, height },
                            baseline);
  if (self->place_id == 0
      && (orientation_of (self) != orientation_for (self, width)
          || panes_size (self) != self->placed_for))
    self->place_id = g_idle_add_full (GTK_PRIORITY_RESIZE, on_place, self, NULL);
}

static void
bw_picture_panel_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  gtk_widget_measure (GTK_WIDGET (BW_PICTURE_PANEL (widget)->stack), orientation, for_size, minimum,
                      natural, minimum_baseline, natural_baseline);
}

static GtkSizeRequestMode
bw_picture_panel_get_request_mode (GtkWidget *widget)
{
  return gtk_widget_get_request_mode (GTK_WIDGET (BW_PICTURE_PANEL (widget)->stack));
}

/**
 * bw_picture_panel_add_control:
 * @control: (transfer floating): what changes the drawing
 *
 * Adds a control to the row above the drawing.
 */
void
bw_picture_panel_add_control (BwPicturePanel *self, GtkWidget *control)
{
  gtk_box_append (self->controls, control);
  gtk_widget_set_visible (GTK_WIDGET (self->controls), TRUE);
}

/**
 * bw_picture_panel_add_above:
 * @widget: (transfer floating): stands between the answer and the drawing
 */
void
bw_picture_panel_add_above (BwPicturePanel *self, GtkWidget *widget)
{
  g_return_if_fail (BW_IS_PICTURE_PANEL (self) && GTK_IS_WIDGET (widget));
  gtk_box_prepend (self->drawn, widget);
}

/**
 * bw_picture_panel_add_below:
 * @widget: (transfer floating): stands under the drawing
 */
void
bw_picture_panel_add_below (BwPicturePanel *self, GtkWidget *widget)
{
  g_return_if_fail (BW_IS_PICTURE_PANEL (self) && GTK_IS_WIDGET (widget));
  gtk_box_append (self->drawn, widget);
}

/**
 * bw_picture_panel_add_first:
 * @widget: (transfer floating): stands over the figures
 */
void
bw_picture_panel_add_first (BwPicturePanel *self, GtkWidget *widget)
{
  g_return_if_fail (BW_IS_PICTURE_PANEL (self) && GTK_IS_WIDGET (widget));
  gtk_box_prepend (self->side, widget);
}

/**
 * bw_picture_panel_add_side:
 * @widget: (transfer floating): stands under the figures
 */
void
bw_picture_panel_add_side (BwPicturePanel *self, GtkWidget *widget)
{
  gtk_box_append (self->side, widget);
}

/**
 * bw_picture_panel_update_empty:
 * @lack: (nullable): the figure without which there is nothing to draw
 *
 * Shows what to do first if the sheet has nothing to draw.
 *
 * Returns: whether it has not
 */
gboolean
bw_picture_panel_update_empty (BwPicturePanel *self, BwDocument *document, const BwLack *lack)
{
  gboolean nothing = bw_empty_page_update (self->empty, document, lack);
  gtk_stack_set_visible_child (self->stack, nothing ? GTK_WIDGET (self->empty) : self->content);
  return nothing;
}

/**
 * bw_picture_panel_set_title:
 * @title: of the page: what is drawn
 */
void
bw_picture_panel_set_title (BwPicturePanel *self, const char *title)
{
  gtk_label_set_label (self->title, title);
}

/**
 * bw_picture_panel_show:
 * @source: (nullable): what is drawn; copied
 * @data: (transfer full): what @source's functions get
 */
void
bw_picture_panel_show (BwPicturePanel *self, const BwPictureSource *source, gpointer data)
{
  self->reads = FALSE;
  bw_picture_area_show (self->area, source, data);
  show_reading (self, "");
}

/**
 * bw_picture_panel_show_result:
 * @result: (transfer full): stands beside the drawing
 */
void
bw_picture_panel_show_result (BwPicturePanel *self, BwResult *result)
{
  bw_result_view_show (self->table, result);
  self->placed_for = 0; /* another table may need another width */
}

/**
 * bw_picture_panel_show_part:
 * @result: (transfer full)
 * @key: of the part of it that stands beside the drawing; all of it can be copied
 */
void
bw_picture_panel_show_part (BwPicturePanel *self, BwResult *result, const char *key)
{
  bw_result_view_show_part (self->table, result, key);
  self->placed_for = 0;
}

/**
 * bw_picture_panel_set_cards:
 *
 * Gives each row of a wide table beside the drawing a block of text of its own.
 */
void
bw_picture_panel_set_cards (BwPicturePanel *self)
{
  bw_result_view_set_cards (self->table, TRUE);
}

/**
 * bw_picture_panel_get_result:
 *
 * Returns: (transfer none) (nullable): what stands beside the drawing
 */
BwResult *
bw_picture_panel_get_result (BwPicturePanel *self)
{
  return bw_result_view_get_result (self->table);
}

/* What is shown, on the paper that is exported. */
static BwDrawing *
paper_of (BwPicturePanel *self)
{
  const BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_SCREEN_DPI };
  return bw_picture_area_build (self->area, EXPORT_WIDTH, EXPORT_HEIGHT, &ink);
}

/**
 * bw_picture_panel_has_picture:
 *
 * Returns: whether there is something to export or copy
 */
gboolean
bw_picture_panel_has_picture (BwPicturePanel *self)
{
  return bw_picture_area_has_source (self->area);
}

/**
 * bw_picture_panel_export:
 * @path: ends in .svg, .pdf or .png
 *
 * Writes the drawing that is shown, as far as it is shown.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR; whatever was at @path is then as it was
 */
gboolean
bw_picture_panel_export (BwPicturePanel *self, const char *path, GError **error)
{
  g_autoptr (BwDrawing) drawing = paper_of (self);
  g_return_val_if_fail (drawing != NULL, FALSE);
  return bw_export_drawing (drawing, NULL, path, error);
}

/**
 * bw_picture_panel_dup_file_name:
 *
 * Returns: (transfer full): a name for a file with the drawing that is shown, without suffix
 */
char *
bw_picture_panel_dup_file_name (BwPicturePanel *self)
{
  const BwDrawing *drawing = bw_picture_area_get_drawing (self->area);
  g_return_val_if_fail (drawing != NULL, NULL);
  return g_strdup (bw_drawing_file_stem (drawing));
}

/* Returns: (transfer full) (nullable): the drawing for the clipboard and for dragging: as a picture
 *   at the resolution of print, as files, and as text for programs that take nothing else */
static GdkContentProvider *
dup_content (BwPicturePanel *self)
{
  if (!bw_picture_panel_has_picture (self))
    return NULL;
  g_autoptr (BwDrawing) paper = paper_of (self);
  g_autoptr (GBytes) svg = bw_export_svg (paper);
  g_autoptr (GBytes) pdf = bw_export_pdf (paper);
  g_autoptr (GBytes) png = bw_export_png (paper, PRINT_DPI);
  g_autoptr (GdkTexture) texture = gdk_texture_new_from_bytes (png, NULL);
  g_autofree char *text = bw_drawing_to_text (paper);
  if (texture == NULL)
    return NULL;
  GdkContentProvider *forms[] = {
    gdk_content_provider_new_for_bytes ("image/svg+xml", svg),
    gdk_content_provider_new_for_bytes ("image/png", png),
    gdk_content_provider_new_for_bytes ("application/pdf", pdf),
    gdk_content_provider_new_typed (GDK_TYPE_TEXTURE, texture),
    gdk_content_provider_new_typed (G_TYPE_STRING, text),
  };
  return gdk_content_provider_new_union (forms, G_N_ELEMENTS (forms));
}

/* Dragging takes the drawing to another program, unless it is zoomed: then it moves what is
 * seen. */
static GdkContentProvider *
on_drag_prepare (BwPicturePanel *self)
{
  return bw_picture_area_is_whole (self->area) ? dup_content (self) : NULL;
}

/* What the menu of the drawing does */

static void
do_action (gpointer self, const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
}

static void
on_menu_copy (gpointer self)
{
  do_action (self, "win.copy-picture");
}

static void
on_menu_export (gpointer self)
{
  do_action (self, "win.export-picture");
}

static void
on_menu_zoom_in (gpointer self)
{
  bw_picture_area_zoom (BW_PICTURE_PANEL (self)->area, MENU_ZOOM);
}

static void
on_menu_zoom_out (gpointer self)
{
  bw_picture_area_zoom (BW_PICTURE_PANEL (self)->area, 1 / MENU_ZOOM);
}

static void
on_menu_whole (gpointer self)
{
  bw_picture_area_show_whole (BW_PICTURE_PANEL (self)->area);
}

static gboolean
can_take (gpointer self)
{
  return bw_picture_panel_has_picture (self);
}

static gboolean
can_zoom_in (gpointer self)
{
  return bw_picture_area_can_be_zoomed (BW_PICTURE_PANEL (self)->area);
}

static gboolean
can_zoom_out (gpointer self)
{
  return can_zoom_in (self) && !bw_picture_area_is_whole (BW_PICTURE_PANEL (self)->area);
}

static const BwContextItem menu_items[] = {
  { N_ ("_Copy the Picture"), on_menu_copy, can_take },
  { N_ ("_Export the Picture…"), on_menu_export, can_take },
  { N_ ("Zoom _In"), on_menu_zoom_in, can_zoom_in },
  { N_ ("Zoom _Out"), on_menu_zoom_out, can_zoom_out },
  { N_ ("Show the _Whole"), on_menu_whole, can_zoom_out },
};

static void
let_be_taken (BwPicturePanel *self)
{
  GtkDragSource *source = gtk_drag_source_new ();

  g_signal_connect_swapped (source, "prepare", G_CALLBACK (on_drag_prepare), self);
  gtk_widget_add_controller (GTK_WIDGET (self->area), GTK_EVENT_CONTROLLER (source));
  bw_context_menu_add (GTK_WIDGET (self->area), menu_items, G_N_ELEMENTS (menu_items), NULL, self);
}

/**
 * bw_picture_panel_copy:
 *
 * Puts the drawing on the clipboard.
 */
void
bw_picture_panel_copy (BwPicturePanel *self)
{
  g_autoptr (GdkContentProvider) content = dup_content (self);
  if (content != NULL)
    gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), content);
}

/**
 * bw_picture_panel_get_area:
 *
 * Returns: (transfer none): the drawing
 */
BwPictureArea *
bw_picture_panel_get_area (BwPicturePanel *self)
{
  return self->area;
}

static void
bw_picture_panel_dispose (GObject *object)
{
  BwPicturePanel *self = BW_PICTURE_PANEL (object);

  g_clear_handle_id (&self->place_id, g_source_remove);
  bw_dispose_template (object, BW_TYPE_PICTURE_PANEL);
  G_OBJECT_CLASS (bw_picture_panel_parent_class)->dispose (object);
}

static void
bw_picture_panel_finalize (GObject *object)
{
  g_ptr_array_unref (BW_PICTURE_PANEL (object)->views);
  G_OBJECT_CLASS (bw_picture_panel_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, stack);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, empty);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, content);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, title);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, controls);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, paned);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, drawn);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, area);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, reading);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, side);
  gtk_widget_class_bind_template_child (widget_class, BwPicturePanel, table);
}

static void
bw_picture_panel_class_init (BwPicturePanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_picture_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_picture_panel_finalize;
  widget_class->measure = bw_picture_panel_measure;
  widget_class->size_allocate = bw_picture_panel_size_allocate;
  widget_class->get_request_mode = bw_picture_panel_get_request_mode;

  /* BwPicturePanel::view: another drawing is chosen, by its id. */
  signals[VIEW] = g_signal_new ("view", BW_TYPE_PICTURE_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  /* BwPicturePanel::views-changed: which view is chosen, or which ones can be. */
  signals[VIEWS_CHANGED] = g_signal_new ("views-changed", BW_TYPE_PICTURE_PANEL, G_SIGNAL_RUN_LAST,
                                         0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/picture-panel.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_reading);
  gtk_widget_class_bind_template_callback (widget_class, on_drawn);
  gtk_widget_class_bind_template_callback (widget_class, on_position);
  gtk_widget_class_bind_template_callback (widget_class, on_handle_moved);
}

static void
bw_picture_panel_init (BwPicturePanel *self)
{
  g_type_ensure (BW_TYPE_EMPTY_PAGE);
  g_type_ensure (BW_TYPE_RESULT_VIEW);
  g_type_ensure (BW_TYPE_PICTURE_AREA);
  self->views = g_ptr_array_new_with_free_func (panel_view_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  let_be_taken (self);
}
