/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result-view.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "copy-row.h"
#include "result-head.h"
#include "result-lines.h"
#include "severity-mark.h"
#include "template.h"

/**
 * BwResultView:
 *
 * A result: its figures with units in lighter ink, its tables in columns, its sentences. The whole
 * is one stop of the Tab key; the arrow keys walk its lines and Control+C copies one. “selected” tells that another row of a table is selected, where rows can be.
 */
struct _BwResultView
{
  GtkWidget parent_instance;

  BwResultHead *head; /* children */
  GtkListBox *list;

  gboolean cards;
  GPtrArray *lines;   /* (element-type BwResultLine), as the rows show them */
  GPtrArray *shapes;  /* (element-type utf8): of each row, what its widgets are */
  GHashTable *widths; /* of "BLOCK COLUMN" to GtkSizeGroup */
};

G_DEFINE_FINAL_TYPE (BwResultView, bw_result_view, GTK_TYPE_WIDGET)

enum
{
  PROP_TITLE = 1,
  N_PROPERTIES
};

enum
{
  SELECTED,
  N_SIGNALS
};

static GParamSpec *properties[N_PROPERTIES];
static guint signals[N_SIGNALS];

/* Labels */

/* A unit follows its number after a no-break space. */
#define UNIT_SPACE "\u00a0"
#define RANGE_DASH "–"
#define UNIT_ALPHA ((guint16) (0.75 * G_MAXUINT16))

/**
 * bw_figure_label_set:
 * @text: numbers, each with its unit after a no-break space
 *
 * Shows @text with the units lighter than the numbers. A range is not broken after its dash.
 */
void
bw_figure_label_set (GtkLabel *label, const char *text)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  for (const char *unit = strstr (text, UNIT_SPACE); unit != NULL;)
    {
      const char *end = unit + strlen (UNIT_SPACE);
      end += strcspn (end, " ,;");
      PangoAttribute *lighter = pango_attr_foreground_alpha_new (UNIT_ALPHA);
      lighter->start_index = (guint) (unit - text);
      lighter->end_index = (guint) (end - text);
      pango_attr_list_insert (attributes, lighter);
      unit = strstr (end, UNIT_SPACE);
    }
  for (const char *dash = strstr (text, RANGE_DASH); dash != NULL;
       dash = strstr (dash + strlen (RANGE_DASH), RANGE_DASH))
    {
      PangoAttribute *whole = pango_attr_allow_breaks_new (FALSE);
      whole->start_index = (guint) (dash - text);
      whole->end_index = whole->start_index + (guint) strlen (RANGE_DASH) + 1;
      pango_attr_list_insert (attributes, whole);
    }
  gtk_label_set_label (label, text);
  gtk_label_set_attributes (label, attributes);
  pango_attr_list_unref (attributes);
}

#define LEAST_CHARS 8

/**
 * bw_words_label_new:
 * @text: (nullable)
 *
 * Returns: (transfer floating): a label that wraps
 */
GtkWidget *
bw_words_label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  /* Without a least width the toolkit tries the text letter by letter to find how narrow it
   * gets. */
  if (text != NULL && g_utf8_strlen (text, -1) >= 2 * LEAST_CHARS)
    gtk_label_set_width_chars (GTK_LABEL (label), LEAST_CHARS);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/**
 * bw_row_label_new:
 *
 * Returns: (transfer floating): a label that wraps, for one text after another: it is never
 *   narrower than a few letters
 */
GtkWidget *
bw_row_label_new (const char *css_class)
{
  GtkWidget *label = bw_words_label_new (NULL, css_class);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_CHARS);
  return label;
}

/* Text that may take any width asks for no more than this. */
#define FREE_CHARS 46
#define COLUMN_SPACE 10
#define UNIT_GAP 4
#define TITLE_SPACE 6 /* above a heading among the lines */

static const struct
{
  const char *css_class;
  float xalign;
  gboolean wraps;
  gboolean in_column;
  gboolean selectable;
} looks[BW_N_LABELS] = {
  [BW_LABEL_NAME] = { "bw-light", 0, FALSE, TRUE, FALSE },
  [BW_LABEL_NUMBER] = { "bw-figure", 1, FALSE, TRUE, TRUE },
  [BW_LABEL_UNIT] = { "bw-light", 0, FALSE, TRUE, FALSE },
  [BW_LABEL_WORDS] = { "bw-figure", 0, TRUE, TRUE, TRUE },
  [BW_LABEL_SAYS] = { "bw-figure", 0, TRUE, FALSE, TRUE },
  [BW_LABEL_HEAD] = { "bw-light", 0, FALSE, TRUE, FALSE },
  [BW_LABEL_HEAD_AT_RIGHT] = { "bw-light", 1, FALSE, TRUE, FALSE },
  [BW_LABEL_FREE] = { "bw-figure", 0, TRUE, FALSE, TRUE },
  [BW_LABEL_LIGHT] = { "bw-light", 0, TRUE, FALSE, TRUE },
  [BW_LABEL_TITLE] = { "bw-heading", 0, TRUE, FALSE, FALSE },
};

/* All labels of a column of a block are of equal width, and the names of all figures but those with
 * many values, whose names take no more than they need. */
static GtkSizeGroup *
width_of (BwResultView *self, const BwResultLine *line, guint column)
{
  gboolean figure = line->row == NULL && column == 0 && !line->many_across
                    && g_array_index (line->labels, BwLabelText, 0).look == BW_LABEL_NAME;
  g_autofree char *key = figure ? g_strdup ("figures")
                                : g_strdup_printf ("%u %u", line->block, column);
  GtkSizeGroup *group = g_hash_table_lookup (self->widths, key);
  if (group == NULL)
    {
      group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
      g_hash_table_insert (self->widths, g_steal_pointer (&key), group);
    }
  return group;
}

static GtkWidget *
label_new (BwLabelLook look)
{
  GtkWidget *label = bw_words_label_new (NULL, looks[look].css_class);
  gboolean at_right = looks[look].xalign > 0;

  gtk_label_set_xalign (GTK_LABEL (label), looks[look].xalign);
  gtk_label_set_justify (GTK_LABEL (label), at_right ? GTK_JUSTIFY_RIGHT : GTK_JUSTIFY_LEFT);
  gtk_label_set_wrap (GTK_LABEL (label), looks[look].wraps);
  gtk_label_set_selectable (GTK_LABEL (label), looks[look].selectable);
  gtk_label_set_yalign (GTK_LABEL (label), at_right || look == BW_LABEL_HEAD ? 1 : 0);
  gtk_widget_set_hexpand (label, !looks[look].in_column);
  if (look == BW_LABEL_TITLE)
    gtk_widget_set_margin_top (label, TITLE_SPACE);
  if (!looks[look].in_column)
    gtk_label_set_max_width_chars (GTK_LABEL (label), FREE_CHARS);
  if (at_right || look == BW_LABEL_UNIT)
    gtk_widget_set_direction (label, GTK_TEXT_DIR_LTR);
  return label;
}

/* Space between @cell and the one before it in its row, which runs as the language does. */
static void
set_apart (GtkWidget *cell)
{
  gboolean against = gtk_widget_get_default_direction () == GTK_TEXT_DIR_RTL
                     && gtk_widget_get_direction (cell) == GTK_TEXT_DIR_LTR;
  gtk_widget_set_margin_start (cell, against ? 0 : COLUMN_SPACE);
  gtk_widget_set_margin_end (cell, against ? COLUMN_SPACE : 0);
}

/* A number and its unit are written from left to right in every language: where @label is a unit,
 * it stands with the number before it in a box of their own. */
static void
append_label (GtkBox *box, GtkWidget *label, BwLabelLook look)
{
  GtkWidget *before = gtk_widget_get_last_child (GTK_WIDGET (box));
  if (look != BW_LABEL_UNIT || before == NULL || !GTK_IS_LABEL (before))
    {
      gtk_box_append (box, label);
      if (before != NULL && !BW_IS_SEVERITY_MARK (before))
        set_apart (label);
      return;
    }
  GtkWidget *pair = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  g_object_ref (before);
  gtk_box_remove (box, before);
  gtk_widget_set_direction (pair, GTK_TEXT_DIR_LTR);
  set_apart (pair);
  gtk_widget_set_margin_start (before, 0);
  gtk_widget_set_margin_end (before, 0);
  gtk_widget_set_margin_start (label, UNIT_GAP);
  gtk_box_append (GTK_BOX (pair), before);
  gtk_box_append (GTK_BOX (pair), label);
  gtk_box_append (box, pair);
  g_object_unref (before);
}

/* Rows */

/* What the widgets of a line are, so that a row is used again for a line of the same shape. */
static char *
shape_of (const BwResultLine *line)
{
  GString *shape = g_string_new (NULL);
  g_string_append_printf (shape, "%u%s%s%s", line->block, line->apart ? " apart" : "",
                          line->stacked ? " stacked" : "",
                          line->mark != BW_MARK_NONE ? " marked" : "");
  for (guint i = 0; i < line->labels->len; i++)
    g_string_append_printf (shape, " %d", g_array_index (line->labels, BwLabelText, i).look);
  return g_string_free (shape, FALSE);
}

static GtkWidget *
box_new (GtkOrientation orientation, int spacing)
{
  return gtk_box_new (orientation, spacing);
}

/* The first two labels beside each other, the rest below them. */
static GtkWidget *
stack_new (const BwResultLine *line, GPtrArray *labels)
{
  GtkWidget *stack = box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *first = box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_widget_set_hexpand (stack, TRUE);
  gtk_box_append (GTK_BOX (stack), first);
  for (guint i = 0; i < labels->len; i++)
    gtk_box_append (GTK_BOX (i < 2 ? first : stack), labels->pdata[i]);
  return stack;
}

static GtkWidget *
row_new (BwResultView *self, const BwResultLine *line)
{
  GtkWidget *row = bw_copy_row_new ();
  GtkWidget *box = box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();

  gtk_widget_set_margin_top (box, line->apart ? TITLE_SPACE : 0);
  if (line->mark != BW_MARK_NONE)
    {
      GtkWidget *mark = bw_severity_mark_new ();
      BwLabelLook look = g_array_index (line->labels, BwLabelText, 0).look;
      gtk_widget_set_valign (mark, GTK_ALIGN_START);
      gtk_widget_set_margin_top (mark, look == BW_LABEL_TITLE ? TITLE_SPACE : 0);
      gtk_widget_set_margin_end (mark, 6);
      gtk_box_append (GTK_BOX (box), mark);
      g_object_set_data (G_OBJECT (row), "mark", mark);
    }
  for (guint i = 0; i < line->labels->len; i++)
    {
      BwLabelLook look = g_array_index (line->labels, BwLabelText, i).look;
      GtkWidget *label = label_new (look);
      if (looks[look].in_column && !line->stacked)
        gtk_size_group_add_widget (width_of (self, line, i), label);
      g_ptr_array_add (labels, label);
      if (!line->stacked)
        append_label (GTK_BOX (box), label, look);
    }
  if (line->stacked)
    gtk_box_append (GTK_BOX (box), stack_new (line, labels));
  g_object_set_data_full (G_OBJECT (row), "labels", g_ptr_array_ref (labels),
                          (GDestroyNotify) g_ptr_array_unref);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  return row;
}

static void
show_line (BwResultView *self, guint index, const BwResultLine *line)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) index);
  GPtrArray *labels = g_object_get_data (G_OBJECT (row), "labels");
  BwSeverityMark *mark = g_object_get_data (G_OBJECT (row), "mark");
  gboolean can_be_selected = line->row != NULL
                             && gtk_list_box_get_selection_mode (self->list) != GTK_SELECTION_NONE;

  if (mark != NULL)
    bw_severity_mark_set (mark, BW_MARK_SEVERITY (line->mark));
  for (guint i = 0; i < labels->len; i++)
    {
      const BwLabelText *label = &g_array_index (line->labels, BwLabelText, i);
      bw_figure_label_set (labels->pdata[i], label->text);
      if (line->stacked || label->look == BW_LABEL_FREE)
        gtk_widget_set_visible (labels->pdata[i], *label->text != '\0');
    }
  gtk_list_box_row_set_selectable (row, can_be_selected);
  bw_copy_row_set_text (BW_COPY_ROW (row), line->copy);
}

static void
remove_from (BwResultView *self, guint first)
{
  for (guint i = self->shapes->len; i > first; i--)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) i - 1);
      gtk_list_box_remove (self->list, GTK_WIDGET (row));
    }
  if (first < self->shapes->len)
    g_ptr_array_set_size (self->shapes, (int) first);
}

/* Rows of the same shape stay, so that the focus does. */
static void
show_lines (BwResultView *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const BwResultLine *line = self->lines->pdata[i];
      g_autofree char *shape = shape_of (line);
      if (i < self->shapes->len && strcmp (self->shapes->pdata[i], shape) != 0)
        remove_from (self, i);
      if (i >= self->shapes->len)
        {
          gtk_list_box_append (self->list, row_new (self, line));
          g_ptr_array_add (self->shapes, g_steal_pointer (&shape));
        }
      show_line (self, i, line);
    }
  remove_from (self, self->lines->len);
}

static void
update_head (BwResultView *self)
{
  gboolean seen = self->lines->len > 0;
  gtk_widget_set_visible (GTK_WIDGET (self->head), seen);
  gtk_widget_set_visible (GTK_WIDGET (self->list), seen);
}

/* Widget */

static void
on_selected (BwResultView *self)
{
  g_signal_emit (self, signals[SELECTED], 0);
}

/* From any line of the list Tab leaves it. */
static gboolean
bw_result_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  GtkWidget *list = GTK_WIDGET (BW_RESULT_VIEW (widget)->list);
  gboolean tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;
  if (tab && bw_has_focus_within (list))
    return direction == GTK_DIR_TAB_BACKWARD
           && gtk_widget_child_focus (GTK_WIDGET (BW_RESULT_VIEW (widget)->head), direction);
  return GTK_WIDGET_CLASS (bw_result_view_parent_class)->focus (widget, direction);
}

static void
bw_result_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *spec)
{
  BwResultView *self = BW_RESULT_VIEW (object);
  if (id != PROP_TITLE)
    {
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
      return;
    }
  g_object_set_property (G_OBJECT (self->head), "title", value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  g_value_get_string (value), -1);
}

static void
bw_result_view_dispose (GObject *object)
{
  BwResultView *self = BW_RESULT_VIEW (object);
  GtkWidget *head = GTK_WIDGET (self->head), *list = GTK_WIDGET (self->list);

  g_clear_pointer (&head, gtk_widget_unparent);
  g_clear_pointer (&list, gtk_widget_unparent);
  self->head = NULL;
  self->list = NULL;
  G_OBJECT_CLASS (bw_result_view_parent_class)->dispose (object);
}

static void
bw_result_view_finalize (GObject *object)
{
  BwResultView *self = BW_RESULT_VIEW (object);

  g_ptr_array_unref (self->lines);
  g_ptr_array_unref (self->shapes);
  g_hash_table_unref (self->widths);
  G_OBJECT_CLASS (bw_result_view_parent_class)->finalize (object);
}

static void
bw_result_view_class_init (BwResultViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = bw_result_view_set_property;
  object_class->dispose = bw_result_view_dispose;
  object_class->finalize = bw_result_view_finalize;
  widget_class->focus = bw_result_view_focus;
  /* BwResultView:title: its heading, and its name for a screen reader. */
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL,
                                                G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
  /* BwResultView::selected: another row of a table is selected. */
  signals[SELECTED] = g_signal_new ("selected", BW_TYPE_RESULT_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                    NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
bw_result_view_init (BwResultView *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->lines = g_ptr_array_new ();
  self->shapes = g_ptr_array_new_with_free_func (g_free);
  self->widths = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
  self->head = g_object_new (BW_TYPE_RESULT_HEAD, NULL);
  gtk_widget_add_css_class (GTK_WIDGET (self->head), "bw-heading");
  gtk_widget_set_parent (GTK_WIDGET (self->head), GTK_WIDGET (self));
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "bw-figure-table");
  g_signal_connect_object (self->list, "row-selected", G_CALLBACK (on_selected), self,
                           G_CONNECT_SWAPPED);
  gtk_widget_set_parent (GTK_WIDGET (self->list), GTK_WIDGET (self));
  update_head (self);
}

/**
 * bw_result_view_new:
 * @title: its heading
 *
 * Returns: (transfer floating): a view that shows nothing yet
 */
BwResultView *
bw_result_view_new (const char *title)
{
  return g_object_new (BW_TYPE_RESULT_VIEW, "title", title, NULL);
}

/**
 * bw_result_view_set_cards:
 * @cards: whether a row of a table is a block of text, where there is no width for columns
 */
void
bw_result_view_set_cards (BwResultView *self, gboolean cards)
{
  g_return_if_fail (BW_IS_RESULT_VIEW (self));
  self->cards = cards;
}

/**
 * bw_result_view_set_selectable:
 *
 * Lets one row of a table be selected; the first one is, where there are rows.
 */
void
bw_result_view_set_selectable (BwResultView *self)
{
  g_return_if_fail (BW_IS_RESULT_VIEW (self));
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_BROWSE);
  gtk_widget_remove_css_class (GTK_WIDGET (self->list), "bw-figure-table");
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "bw-list");
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "bw-candidates");
}

static void
select_first (BwResultView *self)
{
  if (gtk_list_box_get_selection_mode (self->list) == GTK_SELECTION_NONE)
    return;
  for (guint i = 0; i < self->lines->len; i++)
    if (((const BwResultLine *) self->lines->pdata[i])->row != NULL)
      {
        gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, (int) i));
        return;
      }
}

/**
 * bw_result_view_show:
 * @result: (transfer full) (nullable): what to show in place of what was there
 */
void
bw_result_view_show (BwResultView *self, BwResult *result)
{
  bw_result_view_show_part (self, result, NULL);
}

/**
 * bw_result_view_show_part:
 * @result: (transfer full) (nullable): what can be copied and exported
 * @key: (nullable): of the part of it that is seen here; %NULL for all of it
 */
void
bw_result_view_show_part (BwResultView *self, BwResult *result, const char *key)
{
  g_return_if_fail (BW_IS_RESULT_VIEW (self));
  const BwNode *root = result != NULL ? bw_result_root (result) : NULL;
  const BwNode *part = root != NULL && key != NULL ? bw_node_find (root, key) : root;

  g_clear_pointer (&self->lines, g_ptr_array_unref);
  bw_result_head_set_result (self->head, result);
  self->lines = part != NULL ? bw_result_lines (part, self->cards) : g_ptr_array_new ();
  show_lines (self);
  select_first (self);
  update_head (self);
}

/**
 * bw_result_view_get_result:
 *
 * Returns: (transfer none) (nullable): what is shown
 */
BwResult *
bw_result_view_get_result (BwResultView *self)
{
  g_return_val_if_fail (BW_IS_RESULT_VIEW (self), NULL);
  return bw_result_head_get_result (self->head);
}

/**
 * bw_result_view_get_selected:
 *
 * Returns: (transfer none) (nullable): the row of a table that is selected
 */
const BwNode *
bw_result_view_get_selected (BwResultView *self)
{
  g_return_val_if_fail (BW_IS_RESULT_VIEW (self), NULL);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  if (row == NULL || (guint) gtk_list_box_row_get_index (row) >= self->lines->len)
    return NULL;
  return ((const BwResultLine *) self->lines->pdata[gtk_list_box_row_get_index (row)])->row;
}
