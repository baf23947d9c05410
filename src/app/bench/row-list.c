/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "row-list.h"

#include "app/widgets/in-sight.h"
#include "app/widgets/result-view.h"

/**
 * BwRowList:
 *
 * A list of rows of two lines, one of which is selected, in a page that scrolls. It is as high as
 * all its rows, but only those in sight are there, and each is used for one place after another, so
 * that a list of many rows costs little. The arrow keys, Home, End, Page Up and Page Down walk the
 * rows; the row with the focus is the selected one, and the Tab key stops there once.
 */
struct _BwRowList
{
  GtkWidget parent_instance;

  BwRowSays says;
  gpointer owner; /* borrowed */
  guint n_rows;
  guint selected;   /* G_MAXUINT: none */
  GHashTable *rows; /* index → GtkBox of two labels: those that are there; children, borrowed */
  GPtrArray *spare; /* to be used again */
  GtkAdjustment *down; /* (nullable): how the page is scrolled */

  int width;              /* for which all below holds; zero: nothing does */
  int *row_y;             /* n_rows + 1 edges, from the first row down */
  GHashTable *heights;    /* the first lines of rows and how high they are */
  GHashTable *lighter;    /* likewise the second lines */
  guint frames_to_scroll; /* until the page is scrolled to the selected row; zero: it is not */
};

G_DEFINE_FINAL_TYPE (BwRowList, bw_row_list, GTK_TYPE_WIDGET)

enum
{
  SELECTED,
  ACTIVATED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Rows */

static GtkWidget *
first_line (GtkWidget *row)
{
  return gtk_widget_get_first_child (row);
}

static GtkWidget *
second_line (GtkWidget *row)
{
  return gtk_widget_get_last_child (row);
}

static GtkWidget *
build_row (BwRowList *self)
{
  GtkWidget *row = g_object_new (GTK_TYPE_BOX, "css-name", "row", "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_LIST_ITEM, "orientation",
                                 GTK_ORIENTATION_VERTICAL, "spacing", 1, "focusable", TRUE, NULL);
  gtk_widget_add_css_class (row, "activatable");
  gtk_box_append (GTK_BOX (row), bw_row_label_new ("bw-name"));
  gtk_box_append (GTK_BOX (row), bw_row_label_new ("bw-light"));
  gtk_widget_set_parent (row, GTK_WIDGET (self));
  return row;
}

static void
show_selected (BwRowList *self, GtkWidget *row, guint index)
{
  gboolean selected = index == self->selected;
  if (selected)
    gtk_widget_set_state_flags (row, GTK_STATE_FLAG_SELECTED, FALSE);
  else
    gtk_widget_unset_state_flags (row, GTK_STATE_FLAG_SELECTED);
  gtk_accessible_update_state (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_STATE_SELECTED, selected, -1);
}

static void
show_row (BwRowList *self, GtkWidget *row, guint index)
{
  const char *name = "";
  g_autofree char *words = self->says (index, &name, self->owner);
  g_autofree char *spoken = g_strdup_printf ("%s, %s", name, words);

  gtk_label_set_label (GTK_LABEL (first_line (row)), name);
  gtk_label_set_label (GTK_LABEL (second_line (row)), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_RELATION_POS_IN_SET,
                                  (int) index + 1, GTK_ACCESSIBLE_RELATION_SET_SIZE,
                                  (int) self->n_rows, -1);
  show_selected (self, row, index);
}

static GtkWidget *
need_row (BwRowList *self, guint index)
{
  g_assert (index < self->n_rows);
  GtkWidget *row = g_hash_table_lookup (self->rows, GUINT_TO_POINTER (index));
  if (row != NULL)
    return row;
  row = bw_take_spare (self->spare);
  if (row == NULL)
    row = build_row (self);
  g_hash_table_insert (self->rows, GUINT_TO_POINTER (index), row);
  show_row (self, row, index);
  return row;
}

/* Puts by the rows that are not among those from @first up to before @end; the selected one, and
 * what has the focus, stay. */
static void
keep_rows (BwRowList *self, guint first, guint end)
{
  GtkWidget *focused = gtk_widget_get_focus_child (GTK_WIDGET (self));
  GHashTableIter each;
  gpointer key, row;

  g_hash_table_iter_init (&each, self->rows);
  while (g_hash_table_iter_next (&each, &key, &row))
    {
      guint index = GPOINTER_TO_UINT (key);
      gboolean stays = index == self->selected || row == focused;
      if (index < self->n_rows && (stays || (index >= first && index < end)))
        continue;
      g_hash_table_iter_remove (&each);
      bw_put_by (self->spare, row);
    }
}

/* Measuring: all rows are as high as their texts at the list's width, which is found without a
 * widget for each. */

static int
text_height (GHashTable *known, GtkWidget *label, const char *text, int width)
{
  gpointer height;
  if (g_hash_table_lookup_extended (known, text, NULL, &height))
    return GPOINTER_TO_INT (height);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (label, text);
  int pixels;
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, width * PANGO_SCALE);
  pango_layout_get_pixel_size (layout, NULL, &pixels);
  g_hash_table_insert (known, g_strdup (text), GINT_TO_POINTER (pixels));
  return pixels;
}

static int
measured (GtkWidget *widget, GtkOrientation orientation, int for_size)
{
  int natural;
  gtk_widget_measure (widget, orientation, for_size, NULL, &natural, NULL, NULL);
  return natural;
}

/* A row that is there; its lines have the font of all rows. */
static GtkWidget *
sample_row (BwRowList *self)
{
  return need_row (self, MIN (self->selected, self->n_rows - 1));
}

/* What a row takes beside its two lines, across and down. */
static void
measure_frame (GtkWidget *row, int width, int *across, int *down)
{
  int widest = MAX (measured (first_line (row), GTK_ORIENTATION_HORIZONTAL, -1),
                    measured (second_line (row), GTK_ORIENTATION_HORIZONTAL, -1));
  *across = measured (row, GTK_ORIENTATION_HORIZONTAL, -1) - widest;
  *down = measured (row, GTK_ORIENTATION_VERTICAL, width)
          - measured (first_line (row), GTK_ORIENTATION_VERTICAL, width - *across)
          - measured (second_line (row), GTK_ORIENTATION_VERTICAL, width - *across);
}

static void
forget_heights (BwRowList *self)
{
  self->width = 0;
  g_hash_table_remove_all (self->heights);
  g_hash_table_remove_all (self->lighter);
}

/* Finds the edges of all rows for a list of @width pixels. */
static void
place_rows (BwRowList *self, int width)
{
  int across = 0, down = 0;
  GtkWidget *row = self->n_rows > 0 ? sample_row (self) : NULL;

  if (width != self->width)
    forget_heights (self);
  self->width = width;
  if (row != NULL)
    measure_frame (row, width, &across, &down);
  self->row_y[0] = 0;
  for (guint i = 0; i < self->n_rows; i++)
    {
      const char *name = "";
      g_autofree char *words = self->says (i, &name, self->owner);
      int height = text_height (self->heights, first_line (row), name, width - across)
                   + text_height (self->lighter, second_line (row), words, width - across) + down;
      self->row_y[i + 1] = self->row_y[i] + height;
    }
}

static void
bw_row_list_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                     int *natural, int *minimum_baseline, int *natural_baseline)
{
  BwRowList *self = BW_ROW_LIST (widget);

  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = 0;
  if (self->n_rows == 0)
    return;
  int least, usual;
  gtk_widget_measure (sample_row (self), GTK_ORIENTATION_HORIZONTAL, -1, &least, &usual, NULL,
                      NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = least;
      *natural = usual;
      return;
    }
  int known = self->width > 0 ? self->width : usual;
  int width = MAX (for_size > 0 ? for_size : known, least);
  if (width != self->width)
    place_rows (self, width);
  *minimum = *natural = self->row_y[self->n_rows];
}

static GtkSizeRequestMode
bw_row_list_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* Places */

static GtkWidget *
scrolled_window (BwRowList *self)
{
  return gtk_widget_get_ancestor (GTK_WIDGET (self), GTK_TYPE_SCROLLED_WINDOW);
}

static guint
row_at (BwRowList *self, double y)
{
  return bw_row_at (self->row_y, self->n_rows, y);
}

/* From where to where the list is seen, in its own pixels. */
static void
find_sight (BwRowList *self, double *top, double *bottom)
{
  GtkWidget *page = scrolled_window (self);
  graphene_point_t corner;

  *top = 0;
  *bottom = gtk_widget_get_height (GTK_WIDGET (self));
  if (page == NULL
      || !gtk_widget_compute_point (page, GTK_WIDGET (self), &GRAPHENE_POINT_INIT_ZERO, &corner))
    return;
  *top = MAX (*top, (double) corner.y);
  *bottom = MIN (*bottom, (double) corner.y + gtk_widget_get_height (page));
}

static void
allocate_row (BwRowList *self, GtkWidget *row, guint index)
{
  int y = self->row_y[index];
  int needed = measured (row, GTK_ORIENTATION_VERTICAL, self->width);
  gtk_widget_size_allocate (row,
                            &(GtkAllocation){ 0, y, self->width,
                                              MAX (needed, self->row_y[index + 1] - y) },
                            -1);
}

/* Scrolls the page so that the selected row is seen. */
static void
scroll_to_selected (BwRowList *self)
{
  GtkWidget *page = scrolled_window (self);
  graphene_point_t corner;

  if (self->down == NULL || self->selected >= self->n_rows
      || !gtk_widget_compute_point (GTK_WIDGET (self), page, &GRAPHENE_POINT_INIT_ZERO, &corner))
    return;
  double origin = (double) corner.y + gtk_adjustment_get_value (self->down);
  gtk_adjustment_clamp_page (self->down, origin + self->row_y[self->selected],
                             origin + self->row_y[self->selected + 1]);
}

static gboolean
scroll_later (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  BwRowList *self = BW_ROW_LIST (widget);
  if (--self->frames_to_scroll > 0)
    return G_SOURCE_CONTINUE;
  scroll_to_selected (self);
  return G_SOURCE_REMOVE;
}

static void
bw_row_list_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BwRowList *self = BW_ROW_LIST (widget);
  GHashTableIter each;
  gpointer key, row;
  double top, bottom;

  if (self->n_rows == 0)
    return;
  if (width != self->width)
    place_rows (self, width);
  find_sight (self, &top, &bottom);
  guint first = bottom > top ? row_at (self, top) : 0, end = first;
  while (end < self->n_rows && self->row_y[end] < bottom)
    end++;
  keep_rows (self, first, end);
  for (guint i = first; i < end; i++)
    need_row (self, i);
  g_hash_table_iter_init (&each, self->rows);
  while (g_hash_table_iter_next (&each, &key, &row))
    allocate_row (self, row, GPOINTER_TO_UINT (key));
}

static void
bw_row_list_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (bw_row_list_parent_class)->css_changed (widget, change);
  forget_heights (BW_ROW_LIST (widget));
}

static gboolean
lay_out_anew (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  gtk_widget_queue_resize (widget);
  return G_SOURCE_REMOVE;
}

/* The page says so when it has just placed what is in it, so that the rows come with the next
 * frame. */
static void
on_page_resized (BwRowList *self)
{
  gtk_widget_add_tick_callback (GTK_WIDGET (self), lay_out_anew, NULL, NULL);
}

/* Which rows are in sight depends on the page that holds the list. A row that is used for another
 * place asks for another size, which the toolkit takes up only while all is laid out from the
 * window down, so a resize is queued and not an allocation. */
static void
follow_page (BwRowList *self, GtkWidget *page)
{
  if (self->down != NULL)
    g_signal_handlers_disconnect_by_data (self->down, self);
  g_clear_object (&self->down);
  if (page == NULL)
    return;
  self->down = g_object_ref (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (page)));
  g_signal_connect_swapped (self->down, "value-changed", G_CALLBACK (gtk_widget_queue_resize),
                            self);
  g_signal_connect_swapped (self->down, "notify::page-size", G_CALLBACK (on_page_resized), self);
}

static void
bw_row_list_root (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bw_row_list_parent_class)->root (widget);
  follow_page (BW_ROW_LIST (widget), scrolled_window (BW_ROW_LIST (widget)));
}

static void
bw_row_list_unroot (GtkWidget *widget)
{
  follow_page (BW_ROW_LIST (widget), NULL);
  GTK_WIDGET_CLASS (bw_row_list_parent_class)->unroot (widget);
}

/* What the person does */

static void
choose (BwRowList *self, guint index)
{
  if (index != self->selected)
    g_signal_emit (self, signals[SELECTED], 0, index);
  bw_row_list_focus_selected (self);
}

static void
on_pressed (BwRowList *self, int n_press, double x, double y)
{
  if (self->n_rows == 0 || self->width == 0)
    return;
  choose (self, row_at (self, y));
  if (n_press == 2)
    g_signal_emit (self, signals[ACTIVATED], 0);
}

/**
 * bw_row_list_choose_at:
 * @y: from the top of the list
 *
 * Chooses the row there, as a press on it does.
 */
void
bw_row_list_choose_at (BwRowList *self, double y)
{
  g_return_if_fail (BW_IS_ROW_LIST (self));
  if (self->n_rows > 0 && self->width > 0)
    choose (self, row_at (self, y));
}

static guint
rows_a_page (BwRowList *self)
{
  double top, bottom;
  find_sight (self, &top, &bottom);
  guint rows = self->width > 0 ? row_at (self, bottom) - row_at (self, top) : 0;
  return MAX (2, rows) - 1;
}

/* Moves by @rows, as far as there are some. */
static gboolean
move (BwRowList *self, gint64 rows)
{
  gint64 from = self->selected < self->n_rows ? self->selected : 0;
  choose (self, (guint) CLAMP (from + rows, 0, (gint64) self->n_rows - 1));
  return GDK_EVENT_STOP;
}

static gboolean
on_key (BwRowList *self, guint keyval, guint keycode, GdkModifierType state)
{
  if (self->n_rows == 0)
    return GDK_EVENT_PROPAGATE;
  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return move (self, -1);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return move (self, 1);
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      return move (self, -(gint64) rows_a_page (self));
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      return move (self, rows_a_page (self));
    case GDK_KEY_Home:
    case GDK_KEY_KP_Home:
      return move (self, -(gint64) self->n_rows);
    case GDK_KEY_End:
    case GDK_KEY_KP_End:
      return move (self, self->n_rows);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
    case GDK_KEY_space:
      g_signal_emit (self, signals[ACTIVATED], 0);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* The list is one stop, at the selected row. */
static gboolean
bw_row_list_focus (GtkWidget *widget, GtkDirectionType direction)
{
  BwRowList *self = BW_ROW_LIST (widget);

  if (self->n_rows == 0 || gtk_widget_get_focus_child (widget) != NULL)
    return FALSE;
  bw_row_list_focus_selected (self);
  return TRUE;
}

static void
bw_row_list_dispose (GObject *object)
{
  BwRowList *self = BW_ROW_LIST (object);

  g_hash_table_remove_all (self->rows);
  g_ptr_array_set_size (self->spare, 0);
  for (GtkWidget *row; (row = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL;)
    gtk_widget_unparent (row);
  follow_page (self, NULL);
  self->n_rows = 0;
  G_OBJECT_CLASS (bw_row_list_parent_class)->dispose (object);
}

static void
bw_row_list_finalize (GObject *object)
{
  BwRowList *self = BW_ROW_LIST (object);

  g_hash_table_unref (self->rows);
  g_ptr_array_unref (self->spare);
  g_hash_table_unref (self->heights);
  g_hash_table_unref (self->lighter);
  g_free (self->row_y);
  G_OBJECT_CLASS (bw_row_list_parent_class)->finalize (object);
}

static void
bw_row_list_class_init (BwRowListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_row_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_row_list_finalize;
  widget_class->get_request_mode = bw_row_list_get_request_mode;
  widget_class->measure = bw_row_list_measure;
  widget_class->size_allocate = bw_row_list_size_allocate;
  widget_class->css_changed = bw_row_list_css_changed;
  widget_class->root = bw_row_list_root;
  widget_class->unroot = bw_row_list_unroot;
  widget_class->focus = bw_row_list_focus;

  /* BwRowList::selected: the person chose the row of that index (guint). */
  signals[SELECTED] = g_signal_new ("selected", BW_TYPE_ROW_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                    NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  /* BwRowList::activated: Enter or a double click on the selected row. */
  signals[ACTIVATED] = g_signal_new ("activated", BW_TYPE_ROW_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "list");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
}

static void
bw_row_list_init (BwRowList *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->selected = G_MAXUINT;
  self->rows = g_hash_table_new (NULL, NULL);
  self->spare = g_ptr_array_new ();
  self->heights = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->lighter = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->row_y = g_new0 (int, 1);
  g_signal_connect_swapped (key, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

/**
 * bw_row_list_set_says:
 * @says: called with @owner for what a row says
 * @owner: (not nullable): must outlive the list
 */
void
bw_row_list_set_says (BwRowList *self, BwRowSays says, gpointer owner)
{
  g_return_if_fail (BW_IS_ROW_LIST (self) && says != NULL);
  self->says = says;
  self->owner = owner;
}

/**
 * bw_row_list_show:
 * @n_rows: how many rows there are now
 *
 * Asks anew what the rows say, and shows it.
 */
void
bw_row_list_show (BwRowList *self, guint n_rows)
{
  GHashTableIter each;
  gpointer key, row;

  g_return_if_fail (BW_IS_ROW_LIST (self) && self->says != NULL);
  self->n_rows = n_rows;
  self->row_y = g_renew (int, self->row_y, n_rows + 1);
  keep_rows (self, 0, n_rows);
  g_hash_table_iter_init (&each, self->rows);
  while (g_hash_table_iter_next (&each, &key, &row))
    show_row (self, row, GPOINTER_TO_UINT (key));
  if (n_rows > 0)
    sample_row (self); /* before anything is measured */
  if (self->width > 0)
    place_rows (self, self->width);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/**
 * bw_row_list_select:
 * @index: the row that is the selected one from now on; past the end: none is
 */
void
bw_row_list_select (BwRowList *self, guint index)
{
  GHashTableIter each;
  gpointer key, row;

  g_return_if_fail (BW_IS_ROW_LIST (self));
  if (index == self->selected)
    return;
  self->selected = index;
  g_hash_table_iter_init (&each, self->rows);
  while (g_hash_table_iter_next (&each, &key, &row))
    show_selected (self, row, GPOINTER_TO_UINT (key));
}

/**
 * bw_row_list_get_selected:
 *
 * Returns: the index of the selected row; past the end if there is none
 */
guint
bw_row_list_get_selected (BwRowList *self)
{
  return self->selected;
}

/**
 * bw_row_list_get_row:
 *
 * Returns: (transfer none) (nullable): the row of that index, if it is there: one out of sight is
 *   not
 */
GtkWidget *
bw_row_list_get_row (BwRowList *self, guint index)
{
  g_return_val_if_fail (BW_IS_ROW_LIST (self), NULL);
  return g_hash_table_lookup (self->rows, GUINT_TO_POINTER (index));
}

/**
 * bw_row_list_focus_selected:
 *
 * Moves the focus to the selected row, and scrolls the page to it.
 */
void
bw_row_list_focus_selected (BwRowList *self)
{
  g_return_if_fail (BW_IS_ROW_LIST (self));
  if (self->selected >= self->n_rows)
    return;
  GtkWidget *row = need_row (self, self->selected);
  GtkWidget *viewport = gtk_widget_get_ancestor (GTK_WIDGET (self), GTK_TYPE_VIEWPORT);

  /* The page would glide to where the row is now, which may be nowhere yet. */
  if (viewport != NULL)
    gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (viewport), FALSE);
  gtk_widget_grab_focus (row);
  if (viewport != NULL)
    gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (viewport), TRUE);
  if (self->width > 0)
    scroll_to_selected (self);
  /* And once more when the list is as high as its rows are now. */
  if (self->frames_to_scroll == 0)
    gtk_widget_add_tick_callback (GTK_WIDGET (self), scroll_later, NULL, NULL);
  self->frames_to_scroll = 2;
}
