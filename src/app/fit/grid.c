/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "grid-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/result-head.h"
#include "core/fit/results.h"
#include "core/hookup/plan.h"

/**
 * BwFitGrid:
 *
 * The table of sources (rows) and inputs (columns). The arrow keys walk the cells as they are
 * seen, Home and End go to the first and the last one of a row, with Control to the corners, Page Up and Page Down by what is in sight; the
 * cell with the focus is the selected one, and Tab leaves the table. Only the cells in sight are
 * there, so that a table of many sources costs no more than a small one.
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
 * A cell that is out of sight is made when it is asked for, and is used again for another place
 * when the table is next laid out, unless it is the selected one.
 *
 * Returns: (transfer none) (nullable): the cell of source @source at input @input
 */
BwFitCell *
bw_fit_grid_get_cell (BwFitGrid *self, guint source, guint input)
{
  if (source >= self->n_sources || input >= self->n_inputs)
    return NULL;
  return bw_fit_grid_need_cell (self, source, input);
}

/* Selection */

static void
show_selection (BwFitGrid *self)
{
  bw_fit_grid_show_pressed (self);
  bw_fit_grid_scroll_to_selected (self);
}

/* A press on a cell selects it. */
void
bw_fit_grid_on_toggled (BwFitGrid *self, BwFitCell *cell)
{
  if (self->selecting)
    return;
  /* One cell is always pressed: pressing it again does not release it. */
  if (!gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (cell)))
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (cell), TRUE);
  else if (!bw_document_select (self->document, bw_fit_cell_get_source (cell),
                                bw_fit_cell_get_input (cell)))
    bw_fit_grid_show_pressed (self);
}

static void
on_changed (BwFitGrid *self)
{
  const BwSheet *sheet = bw_document_get_sheet (self->document);

  bw_fit_grid_resize (self, sheet->sources->len, sheet->monitor->inputs->len);
  bw_fit_grid_show_all (self);
  show_selection (self);
}

/* The whole table, and what each verdict depends on. */
static BwResult *
make_result (gpointer owner)
{
  BwFitGrid *self = owner;
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  const BwSheet *sheet = bw_document_get_sheet (self->document);

  bw_mains_say (bw_result_root (result), sheet->monitor, sheet->supply_v, sheet->supply_hz);
  const BwNode *cells = bw_fit_say_sheet (bw_result_root (result), sheet,
                                          bw_document_get_catalogue (self->document),
                                          bw_plan_needs);
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

/* How far a key turns a page: the last row stays in sight as the first. */
static int
rows_in_sight (BwFitGrid *self)
{
  int rows = (int) self->layout.seen.end_source - (int) self->layout.seen.first_source;
  return MAX (1, rows - 2);
}

static gboolean
on_key (BwFitGrid *self, guint keyval, guint keycode, GdkModifierType state)
{
  int source = (int) bw_document_get_source (self->document);
  int input = (int) bw_document_get_input (self->document);
  gboolean far = (state & GDK_CONTROL_MASK) != 0;
  int to_right = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL ? -1 : 1;

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
      return focus_cell (self, source, input - to_right);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return focus_cell (self, source, input + to_right);
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      return focus_cell (self, source - rows_in_sight (self), input);
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      return focus_cell (self, source + rows_in_sight (self), input);
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

  g_clear_handle_id (&self->planning, g_source_remove);
  bw_fit_grid_cells_clear (self);
  self->corner = NULL;
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
  g_hash_table_unref (self->row_heads);
  g_hash_table_unref (self->cells);
  g_hash_table_unref (self->unplanned);
  g_ptr_array_unref (self->spare_heads);
  g_ptr_array_unref (self->spare_cells);
  g_array_unref (self->layout.rows);
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

  bw_fit_grid_cells_init (self);
  self->layout.rows = g_array_new (FALSE, TRUE, sizeof (BwFitRow));
  self->corner = g_object_new (BW_TYPE_RESULT_HEAD, "title", _ ("Source and its raster"), NULL);
  bw_result_head_set_maker (BW_RESULT_HEAD (self->corner), make_result, self);
  bw_result_head_add_menu (BW_RESULT_HEAD (self->corner), GTK_WIDGET (self));
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
