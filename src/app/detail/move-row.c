/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "move-row.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/form.h"
#include "app/widgets/template.h"
#include "move-note.h"

/**
 * BwMoveRow:
 *
 * One value of a BwDetailState: a field to type it in, a scale to move it, a note that says whether
 * it is moved, and a button that takes it back.
 */
struct _BwMoveRow
{
  GtkBox parent_instance;

  BwDetailState *state;
  BwDetailValue value;
  char *shown; /* the text that the field last showed */
  gboolean showing;

  BwEditorRow *editor; /* borrowed; children */
  GtkWidget *scale;    /* nullable */
  GtkWidget *reset;
};

G_DEFINE_FINAL_TYPE (BwMoveRow, bw_move_row, GTK_TYPE_BOX)

/* The scale shows what is common; more can be typed. Equal ways along it are equal ratios. */
typedef struct
{
  double low; /* in @unit; zero at both: no scale */
  double high;
  double unit;
  gboolean from_none; /* its left end stands for nothing */
} Scale;

static const Scale scales[BW_N_DETAIL_VALUES] = {
  [BW_DETAIL_DIAGONAL] = { 5, 40, 25.4e-3 }, [BW_DETAIL_PITCH_VALUE] = { 0.15, 1.5, 1e-3 },
  [BW_DETAIL_SPOT] = { 0.1, 2, 1e-3 },       [BW_DETAIL_BANDWIDTH] = { 1, 100, 1e6 },
  [BW_DETAIL_HIGHEST] = { 1, 100, 1e6 },     [BW_DETAIL_LEAD_LENGTH] = { 1, 300, 1, TRUE },
  [BW_DETAIL_INTERLACE] = { 50, 100, 0.01 }, [BW_DETAIL_CLAIM] = { 100, 2000, 1 },
};

#define ROW_MARGIN 8

#define STEP 0.005
#define PAGE 0.05
#define DIGITS "%.3g"

/* Where @value stands on the scale, 0 to 1. */
static double
place_of (const Scale *scale, double value)
{
  double scaled = value / scale->unit;
  return scaled > 0 ? CLAMP (log (scaled / scale->low) / log (scale->high / scale->low), 0, 1) : 0;
}

/* The text for a place on the scale, with a decimal point. */
static char *
text_at (BwMoveRow *self, double place)
{
  const Scale *scale = &scales[self->value];
  const BwField *field = bw_detail_state_get_field (self->state, self->value);
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  if (scale->from_none && place < STEP / 2)
    return g_strdup ("");
  g_ascii_formatd (number, sizeof number, DIGITS,
                   scale->low * pow (scale->high / scale->low, place));
  /* "1.5e+02" is three digits too */
  g_ascii_formatd (number, sizeof number, "%.10g", g_ascii_strtod (number, NULL));
  return g_strconcat (number, " ", field->unit, NULL);
}

/* Showing */

static char *
entry_text (BwMoveRow *self)
{
  return bw_field_to_entry (bw_detail_state_get_field (self->state, self->value),
                            bw_detail_state_get_values (self->state), bw_quantity_locale_mark ());
}

/* Shows the value if it is another one than before, so that nothing is lost that is being typed
 * while another value moves. */
static void
show_text (BwMoveRow *self, gboolean always)
{
  g_autofree char *text = entry_text (self);
  if (!always && g_strcmp0 (text, self->shown) == 0)
    return;
  bw_editor_row_show_text (self->editor, text);
  g_free (self->shown);
  self->shown = g_steal_pointer (&text);
}

static char *
quantity (double value, BwDimension dimension)
{
  return bw_quantity_format (value, dimension, 3, bw_quantity_locale_mark ());
}

static void
show_scale (BwMoveRow *self)
{
  const Scale *scale = &scales[self->value];
  double value = bw_detail_state_get_number (self->state, self->value);
  g_autofree char *words = value > 0
                               ? quantity (value, bw_editor_row_get_field (self->editor)->dimension)
                               : g_strdup (_ ("not known"));
  GtkRange *range = GTK_RANGE (self->scale);
  g_autofree char *here = text_at (self, gtk_range_get_value (range));
  double shown = 0;

  gtk_accessible_update_property (GTK_ACCESSIBLE (range), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  -1);
  bw_quantity_parse (here, bw_editor_row_get_field (self->editor)->dimension, BW_FILE_MARK, &shown,
                     NULL);
  if (bw_near (shown, value, 1e-9 * scale->unit)) /* it has been moved to here */
    return;
  self->showing = TRUE;
  gtk_range_set_value (range, place_of (scale, value));
  self->showing = FALSE;
}

static void
show (BwMoveRow *self, gboolean always)
{
  show_text (self, always);
  if (self->scale != NULL)
    show_scale (self);
  gboolean moved = bw_detail_state_is_moved (self->state, self->value);
  g_autofree char *note = bw_move_note (self->state, self->value);
  bw_editor_row_set_note (self->editor, note, moved ? "bw-entered" : NULL);
  gtk_widget_set_sensitive (self->reset, moved);
}

static void
on_state_changed (BwMoveRow *self)
{
  show (self, FALSE);
}

/* Moving */

static void
on_edited (BwMoveRow *self)
{
  g_autofree char *text = bw_editor_row_dup_text (self->editor);
  g_autoptr (GError) error = NULL;

  if (bw_detail_state_set (self->state, self->value, text, bw_quantity_locale_mark (), &error))
    show (self, TRUE);
  else
    bw_editor_row_set_error (self->editor, error->message);
}

static void
on_scale (BwMoveRow *self)
{
  g_autoptr (GError) error = NULL;
  if (self->showing)
    return;
  g_autofree char *text = text_at (self, gtk_range_get_value (GTK_RANGE (self->scale)));
  if (bw_detail_state_set (self->state, self->value, text, BW_FILE_MARK, &error))
    show (self, TRUE);
  else
    bw_editor_row_set_error (self->editor, error->message);
}

/* The button goes grey: the focus must not be lost with it. */
static void
on_reset (BwMoveRow *self)
{
  gtk_widget_grab_focus (self->scale != NULL ? self->scale
                                             : bw_editor_row_get_control (self->editor));
  bw_detail_state_reset (self->state, self->value);
  show (self, TRUE);
}

/* Building */

/* The state owns the field that the children show until the end. */
static void
bw_move_row_finalize (GObject *object)
{
  g_object_unref (BW_MOVE_ROW (object)->state);
  g_free (BW_MOVE_ROW (object)->shown);
  G_OBJECT_CLASS (bw_move_row_parent_class)->finalize (object);
}

static void
bw_move_row_class_init (BwMoveRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_move_row_finalize;
}

static void
bw_move_row_init (BwMoveRow *self)
{
  gtk_widget_set_margin_bottom (GTK_WIDGET (self), ROW_MARGIN);
}

/* The wheel goes through the page, and must not move the values that pass under the pointer. */
static void
ignore_wheel (GtkWidget *scale)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (scale);
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static GtkWidget *
scale_new (BwMoveRow *self)
{
  GtkWidget *label = gtk_widget_get_first_child (GTK_WIDGET (self->editor));
  GtkWidget *scale = gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0, 1, STEP);

  gtk_range_set_increments (GTK_RANGE (scale), STEP, PAGE);
  gtk_scale_set_draw_value (GTK_SCALE (scale), FALSE);
  ignore_wheel (scale);
  bw_label_control (scale, label);
  g_signal_connect_object (scale, "value-changed", G_CALLBACK (on_scale), self, G_CONNECT_SWAPPED);
  return scale;
}

/* A choice with long words must be no wider than its column: they end in an ellipsis, and are whole
 * in the list and in the tooltip. */

static void
on_word_setup (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), 12);
  gtk_list_item_set_child (item, label);
}

static void
on_word_bind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  const char *words = gtk_string_object_get_string (gtk_list_item_get_item (item));
  GtkWidget *label = gtk_list_item_get_child (item);
  gtk_label_set_label (GTK_LABEL (label), words);
  gtk_widget_set_tooltip_text (label, words);
}

static void
keep_narrow (GtkDropDown *choice)
{
  g_autoptr (GtkListItemFactory) whole = g_object_ref (gtk_drop_down_get_factory (choice));
  g_autoptr (GtkListItemFactory) short_words = gtk_signal_list_item_factory_new ();

  g_signal_connect (short_words, "setup", G_CALLBACK (on_word_setup), NULL);
  g_signal_connect (short_words, "bind", G_CALLBACK (on_word_bind), NULL);
  gtk_drop_down_set_factory (choice, short_words);
  gtk_drop_down_set_list_factory (choice, whole);
}

static GtkWidget *
reset_new (BwMoveRow *self)
{
  const char *name = bw_field_label (bw_editor_row_get_field (self->editor));
  g_autofree char *words = g_strdup_printf (_ ("%s as in the Sheet"), name);
  GtkWidget *reset = gtk_button_new_from_icon_name ("edit-undo-symbolic");

  gtk_widget_set_name (reset, "reset");
  gtk_widget_add_css_class (reset, "flat");
  gtk_widget_set_tooltip_text (reset, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (reset), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  g_signal_connect_object (reset, "clicked", G_CALLBACK (on_reset), self, G_CONNECT_SWAPPED);
  return reset;
}

/* Under the field, so that Tab goes from it to the scale and on to the button. */
static void
add_scale_line (BwMoveRow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  self->scale = scale_new (self);
  gtk_widget_set_hexpand (self->scale, TRUE);
  gtk_box_append (GTK_BOX (line), self->scale);
  gtk_box_append (GTK_BOX (line), self->reset);
  gtk_box_insert_child_after (GTK_BOX (self->editor), line,
                              bw_editor_row_get_control (self->editor));
}

/* A choice has its button beside it. */
static void
add_choice_line (BwMoveRow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *label = gtk_widget_get_first_child (GTK_WIDGET (self->editor));
  GtkWidget *choice = g_object_ref (bw_editor_row_get_control (self->editor));

  keep_narrow (GTK_DROP_DOWN (choice));
  gtk_widget_set_hexpand (choice, TRUE);
  gtk_box_remove (GTK_BOX (self->editor), choice);
  gtk_box_append (GTK_BOX (line), choice);
  gtk_box_append (GTK_BOX (line), self->reset);
  gtk_box_insert_child_after (GTK_BOX (self->editor), line, label);
  g_object_unref (choice);
}

/**
 * bw_move_row_new:
 *
 * Returns: (transfer floating): a row for @value
 */
BwMoveRow *
bw_move_row_new (BwDetailState *state, BwDetailValue value)
{
  BwMoveRow *self = g_object_new (BW_TYPE_MOVE_ROW, NULL);

  self->state = g_object_ref (state);
  self->value = value;
  self->editor = bw_form_row_new (bw_detail_state_get_field (state, value));
  gtk_widget_set_hexpand (GTK_WIDGET (self->editor), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->editor));
  self->reset = reset_new (self);
  if (scales[value].high > 0)
    add_scale_line (self);
  else
    add_choice_line (self);
  g_signal_connect_object (self->editor, "edited", G_CALLBACK (on_edited), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (state, "changed", G_CALLBACK (on_state_changed), self,
                           G_CONNECT_SWAPPED);
  show (self, TRUE);
  return self;
}

/**
 * bw_move_row_get_editor:
 *
 * Returns: (transfer none): the field
 */
BwEditorRow *
bw_move_row_get_editor (BwMoveRow *self)
{
  return self->editor;
}

/**
 * bw_move_row_get_scale:
 *
 * Returns: (transfer none) (nullable): the scale; choices have none
 */
GtkScale *
bw_move_row_get_scale (BwMoveRow *self)
{
  return self->scale != NULL ? GTK_SCALE (self->scale) : NULL;
}
