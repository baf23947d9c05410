/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "grid-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/result-head.h"
#include "core/fit/results.h"

/**
 * BwFitGrid:
 *
 * The table of sources (rows) and inputs (columns). The arrow keys walk the cells, Home and End go
 * to the ends of a row, with Control to the corners; the cell with the focus is the selected one,
 * and Tab leaves the table.
 */
G_DEFINE_FINAL_TYPE_WITH_CODE (BwFitGrid, bw_fit_grid, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_SCROLLABLE, NULL))

enum
{
  PROP_HADJUSTMENT = 1,
  PROP_VADJUSTMENT,
  PROP_HSCROLL_POLICY,
  PROP_VSCROLL_POLICY
};

/**
 * bw_fit_grid_get_cell:
 *
 * Returns: (transfer none) (nullable): the cell of source @source at input @input
 */
BwFitCell *
bw_fit_grid_get_cell (BwFitGrid *self, guint source, guint input)
{
  if (source >= self->n_sources || input >= self->n_inputs)
    return NULL;
  return self->at->pdata[source * self->n_inputs + input];
}

/* Selection */

static void show_selection (BwFitGrid *self);

static void
on_cell_toggled (BwFitGrid *self, BwFitCell *cell)
{
  if (self->selecting)
    return;
  /* One cell is always pressed: pressing it again does not release it. */
  if (!gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (cell)))
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (cell), TRUE);
  else if (!bw_document_select (self->document, bw_fit_cell_get_source (cell),
                                bw_fit_cell_get_input (cell)))
    show_selection (self);
}

static void
show_selection (BwFitGrid *self)
{
  guint source = bw_document_get_source (self->document);
  guint input = bw_document_get_input (self->document);

  self->selecting = TRUE;
  for (guint i = 0; i < self->at->len; i++)
    {
      BwFitCell *cell = self->at->pdata[i];
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (cell),
                                    bw_fit_cell_get_source (cell) == source
                                        && bw_fit_cell_get_input (cell) == input);
    }
  self->selecting = FALSE;
  bw_fit_grid_scroll_to_selected (self);
}

/* Filling */

/* Keeps a number and its unit on one line. */
static char *
unbroken (const char *name)
{
  GString *text = g_string_new (name);
  g_string_replace (text, " Hz", "\u00a0Hz", 0);
  return g_string_free (text, FALSE);
}

static void
show_row_head (BwFitGrid *self, guint source)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  const BwSource *shown = bw_sheet_source (sheet, source);
  const BwRaster *raster = bw_sheet_raster (sheet, bw_document_get_catalogue (self->document),
                                            shown);
  GtkWidget *name = gtk_widget_get_first_child (self->row_heads->pdata[source]);

  g_autofree char *raster_name = raster != NULL ? unbroken (raster->name)
                                                 : g_strdup (_ ("raster not known"));

  gtk_label_set_label (GTK_LABEL (name), shown->name);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_next_sibling (name)), raster_name);
}

static void
show_cell (BwFitGrid *self, BwFitCell *cell)
{
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
  if (!bw_document_case (self->document, bw_fit_cell_get_source (cell),
                         bw_fit_cell_get_input (cell), &figures, &c))
    return;
  bw_fit_judge (&c, &fit);
  bw_fit_cell_show (cell, &fit, &c);
}

static void
show_all (BwFitGrid *self)
{
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;
  for (guint i = 0; i < self->n_inputs; i++)
    gtk_label_set_label (self->column_heads->pdata[i], bw_monitor_input (monitor, i)->name);
  for (guint i = 0; i < self->n_sources; i++)
    show_row_head (self, i);
  for (guint i = 0; i < self->at->len; i++)
    show_cell (self, self->at->pdata[i]);
  show_selection (self);
}

/* Building. GTK draws later children over earlier ones, so the heads stand after the cells, which
 * scroll behind them. */

static GtkWidget *
head_label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* Adds the cells of one more row, before the first of the heads. */
static void
build_row_cells (BwFitGrid *self)
{
  GtkWidget *above = self->n_inputs > 0 ? self->column_heads->pdata[0] : NULL;

  for (guint input = 0; input < self->n_inputs; input++)
    {
      GtkWidget *cell = bw_fit_cell_new (self->n_sources, input);
      g_signal_connect_object (cell, "toggled", G_CALLBACK (on_cell_toggled), self,
                               G_CONNECT_SWAPPED);
      gtk_widget_insert_before (cell, GTK_WIDGET (self), above);
      g_ptr_array_add (self->at, cell);
    }
}

static void
build_row_head (BwFitGrid *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  gtk_widget_add_css_class (head, "bw-row-head");
  gtk_box_append (GTK_BOX (head), head_label_new ("bw-name"));
  gtk_box_append (GTK_BOX (head), head_label_new ("bw-light"));
  gtk_widget_insert_before (head, GTK_WIDGET (self), self->corner);
  g_ptr_array_add (self->row_heads, head);
}

static void
build_column_head (BwFitGrid *self)
{
  GtkWidget *head = head_label_new ("bw-column-head");
  gtk_label_set_yalign (GTK_LABEL (head), 1);
  gtk_widget_insert_before (head, GTK_WIDGET (self), self->corner);
  g_ptr_array_add (self->column_heads, head);
}

/* Drops the children from @first on. */
static void
drop_children (GPtrArray *children, guint first)
{
  for (guint i = first; i < children->len; i++)
    gtk_widget_unparent (children->pdata[i]);
  g_ptr_array_set_size (children, (gint) MIN (first, children->len));
}

static void
set_columns (BwFitGrid *self, guint n_inputs)
{
  drop_children (self->at, 0);
  drop_children (self->row_heads, 0);
  drop_children (self->column_heads, 0);
  self->n_sources = 0;
  self->n_inputs = n_inputs;
  for (guint i = 0; i < n_inputs; i++)
    build_column_head (self);
}

/* Rows come and go at the end: what each one shows is set anew in any case. */
static void
set_rows (BwFitGrid *self, guint n_sources)
{
  drop_children (self->at, n_sources * self->n_inputs);
  drop_children (self->row_heads, n_sources);
  for (self->n_sources = self->row_heads->len; self->n_sources < n_sources; self->n_sources++)
    {
      build_row_cells (self);
      build_row_head (self);
    }
}

static void
on_changed (BwFitGrid *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  guint n_sources = sheet->sources->len, n_inputs = sheet->monitor->inputs->len;

  if (n_inputs != self->n_inputs)
    set_columns (self, n_inputs);
  if (n_sources != self->n_sources)
    set_rows (self, n_sources);
  show_all (self);
}

/* The whole table, and what each verdict depends on. */
static BwResult *
make_result (gpointer owner)
{
  BwFitGrid *self = owner;
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  const BwNode *cells = bw_fit_say_sheet (bw_result_root (result),
                                          bw_document_get_sheet (self->document),
                                          bw_document_get_catalogue (self->document));
  bw_fit_say_legend (bw_result_root (result));
  bw_fit_tell (bw_result_root (result), cells, FALSE);
  return result;
}

/* Keys */

static gboolean
focus_cell (BwFitGrid *self, int source, int input)
{
  source = CLAMP (source, 0, (int) self->n_sources - 1);
  input = CLAMP (input, 0, (int) self->n_inputs - 1);
  BwFitCell *cell = bw_fit_grid_get_cell (self, (guint) source, (guint) input);
  if (cell == NULL)
    return FALSE;
  if (bw_document_select (self->document, (guint) source, (guint) input))
    gtk_widget_grab_focus (GTK_WIDGET (cell));
  return TRUE;
}

static gboolean
on_key (BwFitGrid *self, guint keyval, guint keycode, GdkModifierType state)
{
  int source = (int) bw_document_get_source (self->document);
  int input = (int) bw_document_get_input (self->document);
  gboolean far = (state & GDK_CONTROL_MASK) != 0;

  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return focus_cell (self, source - 1, input);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return focus_cell (self, source + 1, input);
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return focus_cell (self, source, input - 1);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return focus_cell (self, source, input + 1);
    case GDK_KEY_Home:
    case GDK_KEY_KP_Home:
      return focus_cell (self, far ? 0 : source, 0);
    case GDK_KEY_End:
    case GDK_KEY_KP_End:
      return focus_cell (self, far ? G_MAXINT : source, G_MAXINT);
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* Tab walks the buttons in the corner, then the selected cell, and leaves from any. */
static gboolean
bw_fit_grid_focus (GtkWidget *widget, GtkDirectionType direction)
{
  BwFitGrid *self = BW_FIT_GRID (widget);
  GtkWidget *inside = gtk_widget_get_focus_child (widget);
  gboolean backward = direction == GTK_DIR_TAB_BACKWARD;
  gboolean at_corner = inside == self->corner;

  if (self->document == NULL)
    return FALSE;
  if ((at_corner || (inside == NULL) != backward)
      && gtk_widget_child_focus (self->corner, direction))
    return TRUE;
  if (inside != NULL && !(at_corner && !backward))
    return FALSE;
  BwFitCell *cell = bw_fit_grid_get_cell (self, bw_document_get_source (self->document),
                                          bw_document_get_input (self->document));
  return cell != NULL && gtk_widget_grab_focus (GTK_WIDGET (cell));
}

/* Properties: those of GtkScrollable */

static void
bw_fit_grid_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BwFitGrid *self = BW_FIT_GRID (object);
  switch (id)
    {
    case PROP_HADJUSTMENT:
      g_value_set_object (value, self->across);
      break;
    case PROP_VADJUSTMENT:
      g_value_set_object (value, self->down);
      break;
    case PROP_HSCROLL_POLICY:
      g_value_set_enum (value, (int) self->across_policy);
      break;
    case PROP_VSCROLL_POLICY:
      g_value_set_enum (value, (int) self->down_policy);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bw_fit_grid_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  BwFitGrid *self = BW_FIT_GRID (object);
  switch (id)
    {
    case PROP_HADJUSTMENT:
      bw_fit_grid_set_adjustment (self, &self->across, g_value_get_object (value));
      break;
    case PROP_VADJUSTMENT:
      bw_fit_grid_set_adjustment (self, &self->down, g_value_get_object (value));
      break;
    case PROP_HSCROLL_POLICY:
      self->across_policy = (guint) g_value_get_enum (value);
      break;
    case PROP_VSCROLL_POLICY:
      self->down_policy = (guint) g_value_get_enum (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bw_fit_grid_dispose (GObject *object)
{
  BwFitGrid *self = BW_FIT_GRID (object);

  drop_children (self->at, 0);
  drop_children (self->row_heads, 0);
  drop_children (self->column_heads, 0);
  g_clear_pointer (&self->corner, gtk_widget_unparent);
  bw_fit_grid_set_adjustment (self, &self->across, NULL);
  bw_fit_grid_set_adjustment (self, &self->down, NULL);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (bw_fit_grid_parent_class)->dispose (object);
}

static void
bw_fit_grid_finalize (GObject *object)
{
  BwFitGrid *self = BW_FIT_GRID (object);

  g_ptr_array_unref (self->column_heads);
  g_ptr_array_unref (self->row_heads);
  g_ptr_array_unref (self->at);
  g_free (self->layout.row_y);
  G_OBJECT_CLASS (bw_fit_grid_parent_class)->finalize (object);
}

static void
bw_fit_grid_class_init (BwFitGridClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = bw_fit_grid_get_property;
  object_class->set_property = bw_fit_grid_set_property;
  object_class->dispose = bw_fit_grid_dispose;
  object_class->finalize = bw_fit_grid_finalize;
  widget_class->focus = bw_fit_grid_focus;
  bw_fit_grid_layout_class_init (widget_class);
  g_object_class_override_property (object_class, PROP_HADJUSTMENT, "hadjustment");
  g_object_class_override_property (object_class, PROP_VADJUSTMENT, "vadjustment");
  g_object_class_override_property (object_class, PROP_HSCROLL_POLICY, "hscroll-policy");
  g_object_class_override_property (object_class, PROP_VSCROLL_POLICY, "vscroll-policy");
  gtk_widget_class_set_css_name (widget_class, "bw-fit-grid");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bw_fit_grid_init (BwFitGrid *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  self->column_heads = g_ptr_array_new ();
  self->row_heads = g_ptr_array_new ();
  self->at = g_ptr_array_new ();
  self->corner = g_object_new (BW_TYPE_RESULT_HEAD, "title", _ ("Source and its raster"), NULL);
  bw_result_head_set_maker (BW_RESULT_HEAD (self->corner), make_result, self);
  gtk_widget_add_css_class (self->corner, "bw-column-head");
  gtk_widget_add_css_class (self->corner, "bw-corner");
  gtk_widget_set_parent (self->corner, GTK_WIDGET (self));
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Fit of the sources at the inputs"), -1);

  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (key, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
}

/**
 * bw_fit_grid_set_document:
 * @document: what to show; to be set once
 */
void
bw_fit_grid_set_document (BwFitGrid *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (show_selection), self,
                           G_CONNECT_SWAPPED);
  on_changed (self);
}
