/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "path-values.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/columns-layout.h"
#include "app/widgets/reading-box.h"

/**
 * BwPathValues:
 *
 * The values of a path that can be moved, and over them what they come to.
 */
struct _BwPathValues
{
  GtkBox parent_instance;

  BwDetailState *state;
  GtkLabel *summary; /* borrowed; children */
  GtkWidget *reset_all;
  BwMoveRow *rows[BW_N_DETAIL_VALUES];
};

G_DEFINE_FINAL_TYPE (BwPathValues, bw_path_values, GTK_TYPE_BOX)

#define COLUMN_WIDTH 270
#define COLUMNS_MAX 4

/* "All together 412 lines; first the mask, 514 lines": what the sliders move, beside them. */
static char *
summary_text (BwPathValues *self)
{
  const BwDetail *detail = bw_detail_state_get_detail (self->state);
  char mark = bw_quantity_locale_mark ();

  if (detail->limited_by >= BW_N_LINKS)
    return g_strdup (_ ("No limit is known"));
  g_autofree char *all = bw_quantity_format (round (detail->limiting_tvl), BW_DIMENSION_TV_LINES, 5,
                                             mark);
  g_autofree char *first = bw_quantity_format (round (detail->limit_tvl[detail->limited_by]),
                                               BW_DIMENSION_TV_LINES, 5, mark);
  return g_strdup_printf (_ ("All together %1$s; first limit: %2$s, %3$s"), all,
                          bw_kind_label (&bw_detail_links, detail->limited_by), first);
}

static void
update (BwPathValues *self)
{
  g_autofree char *summary = summary_text (self);
  gtk_label_set_label (self->summary, summary);
  gtk_widget_set_sensitive (self->reset_all, bw_detail_state_any_moved (self->state));
}

/* The button goes grey: the focus must not be lost with it. */
static void
on_reset_all (BwPathValues *self)
{
  gtk_widget_child_focus (GTK_WIDGET (self->rows[0]), GTK_DIR_TAB_FORWARD);
  bw_detail_state_reset_all (self->state);
}

static void
bw_path_values_finalize (GObject *object)
{
  g_object_unref (BW_PATH_VALUES (object)->state);
  G_OBJECT_CLASS (bw_path_values_parent_class)->finalize (object);
}

static void
bw_path_values_class_init (BwPathValuesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_path_values_finalize;
}

static void
bw_path_values_init (BwPathValues *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
}

static GtkWidget *
head_new (BwPathValues *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *summary = gtk_label_new (NULL);

  self->summary = GTK_LABEL (summary);
  gtk_label_set_xalign (self->summary, 0);
  gtk_label_set_wrap (self->summary, TRUE);
  gtk_label_set_selectable (self->summary, TRUE);
  gtk_widget_set_hexpand (summary, TRUE);
  gtk_widget_set_name (summary, "moved-summary");
  gtk_widget_add_css_class (summary, "bw-figure");
  gtk_widget_add_css_class (summary, "bw-name");
  self->reset_all = bw_button_new (_ ("Back to the Sheet’s _Values"));
  gtk_widget_set_name (self->reset_all, "reset-all");
  gtk_widget_set_valign (self->reset_all, GTK_ALIGN_CENTER);
  g_signal_connect_object (self->reset_all, "clicked", G_CALLBACK (on_reset_all), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (head), summary);
  gtk_box_append (GTK_BOX (head), self->reset_all);
  return head;
}

static GtkWidget *
rows_new (BwPathValues *self)
{
  GtkWidget *columns = bw_reading_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_layout_manager (columns, g_object_new (BW_TYPE_COLUMNS_LAYOUT, "most", COLUMNS_MAX,
                                                        "column-width", COLUMN_WIDTH, NULL));
  for (guint i = 0; i < BW_N_DETAIL_VALUES; i++)
    {
      self->rows[i] = bw_move_row_new (self->state, i);
      gtk_box_append (GTK_BOX (columns), GTK_WIDGET (self->rows[i]));
    }
  return columns;
}

/**
 * bw_path_values_new:
 *
 * Returns: (transfer floating): rows for all values of @state
 */
BwPathValues *
bw_path_values_new (BwDetailState *state)
{
  BwPathValues *self = g_object_new (BW_TYPE_PATH_VALUES, NULL);

  self->state = g_object_ref (state);
  gtk_box_append (GTK_BOX (self), head_new (self));
  gtk_box_append (GTK_BOX (self), rows_new (self));
  g_signal_connect_object (state, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
  return self;
}

/**
 * bw_path_values_get_row:
 *
 * Returns: (transfer none): the row of @value
 */
BwMoveRow *
bw_path_values_get_row (BwPathValues *self, BwDetailValue value)
{
  return self->rows[value];
}

/**
 * bw_path_values_get_summary:
 *
 * Returns: (transfer none): what all values come to, in words
 */
const char *
bw_path_values_get_summary (BwPathValues *self)
{
  return gtk_label_get_label (self->summary);
}
