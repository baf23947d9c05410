/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chooser.h"

#include "template.h"

/**
 * BwChooser:
 *
 * A choice among a few things that may change: its name above a drop-down list. "chosen" tells what
 * the person does, not what the program does.
 */
struct _BwChooser
{
  GtkBox parent_instance;

  GtkDropDown *control; /* borrowed; a child */
  GtkStringList *words;
  GArray *values; /* of guint */
  guint chosen;   /* by the person or by the program */
  guint showing;  /* more than zero while the program changes the list */
  int chars;      /* the most that the button shows of its words; zero: all of them */
};

G_DEFINE_FINAL_TYPE (BwChooser, bw_chooser, GTK_TYPE_BOX)

enum
{
  CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define NONE G_MAXUINT
#define AROUND_WORDS 44 /* arrow and edges of the list's button */

/* GTK may report a change that the program made only after the program is done with it. Such a
 * report has the value that was chosen before, and is passed over. */
static void
on_selected (BwChooser *self)
{
  guint value = bw_chooser_get (self);
  if (self->showing > 0 || value == NONE || value == self->chosen)
    return;
  self->chosen = value;
  g_signal_emit (self, signals[CHOSEN], 0, value);
}

static void
begin (BwChooser *self)
{
  self->showing++;
}

static void
end (BwChooser *self)
{
  self->showing--;
  self->chosen = bw_chooser_get (self);
}

static void
bw_chooser_finalize (GObject *object)
{
  BwChooser *self = BW_CHOOSER (object);

  g_object_unref (self->words);
  g_array_unref (self->values);
  G_OBJECT_CLASS (bw_chooser_parent_class)->finalize (object);
}

static void
bw_chooser_class_init (BwChooserClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_chooser_finalize;

  /* BwChooser::chosen: the person has chosen this value. */
  signals[CHOSEN] = g_signal_new ("chosen", BW_TYPE_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
bw_chooser_init (BwChooser *self)
{
  self->chosen = NONE;
  self->words = gtk_string_list_new (NULL);
  self->values = g_array_new (FALSE, FALSE, sizeof (guint));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 4);
}

/**
 * bw_chooser_new:
 * @name: of the widget that takes the focus
 * @label: with an underscore before its access key
 *
 * Returns: (transfer floating): a choice among nothing yet
 */
BwChooser *
bw_chooser_new (const char *name, const char *label)
{
  BwChooser *self = g_object_new (BW_TYPE_CHOOSER, NULL);
  GtkWidget *head = gtk_label_new_with_mnemonic (label);
  GtkWidget *control = gtk_drop_down_new (G_LIST_MODEL (g_object_ref (self->words)), NULL);

  self->control = GTK_DROP_DOWN (control);
  gtk_widget_set_name (control, name);
  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_widget_add_css_class (head, "bw-field-label");
  gtk_label_set_mnemonic_widget (GTK_LABEL (head), control);
  bw_label_control (control, head);
  g_signal_connect_object (control, "notify::selected", G_CALLBACK (on_selected), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), head);
  gtk_box_append (GTK_BOX (self), control);
  return self;
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer chars)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (chars));
  gtk_label_set_max_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (chars));
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *words = gtk_list_item_get_item (item);
  const char *text = gtk_string_object_get_string (words);
  GtkWidget *label = gtk_list_item_get_child (item);

  gtk_label_set_label (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, text);
}

/**
 * bw_chooser_shorten:
 * @chars: how many characters of what is chosen the button shows; more than zero
 *
 * Makes the button narrower than its words: those that are cut stand in its tooltip, and whole in
 * the list. To be called before anything is added.
 */
void
bw_chooser_shorten (BwChooser *self, int chars)
{
  g_return_if_fail (BW_IS_CHOOSER (self) && chars > 0 && self->values->len == 0);
  g_autoptr (GtkListItemFactory) shown = gtk_signal_list_item_factory_new ();
  GtkListItemFactory *whole = gtk_drop_down_get_factory (self->control);

  self->chars = chars;
  g_signal_connect (shown, "setup", G_CALLBACK (on_setup), GINT_TO_POINTER (chars));
  g_signal_connect (shown, "bind", G_CALLBACK (on_bind), NULL);
  gtk_drop_down_set_list_factory (self->control, whole);
  gtk_drop_down_set_factory (self->control, shown);
}

/**
 * bw_chooser_clear:
 *
 * Leaves nothing to choose.
 */
void
bw_chooser_clear (BwChooser *self)
{
  begin (self);
  gtk_string_list_splice (self->words, 0, g_list_model_get_n_items (G_LIST_MODEL (self->words)),
                          NULL);
  g_array_set_size (self->values, 0);
  gtk_widget_set_size_request (GTK_WIDGET (self->control), -1, -1);
  end (self);
}

/* As wide as the longest words need, so that nothing moves when others are chosen. */
static void
make_room (BwChooser *self, const char *words)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self->control),
                                                                   words);
  int width, room;

  if (self->chars > 0)
    return;
  pango_layout_get_pixel_size (layout, &width, NULL);
  gtk_widget_get_size_request (GTK_WIDGET (self->control), &room, NULL);
  gtk_widget_set_size_request (GTK_WIDGET (self->control), MAX (room, width + AROUND_WORDS), -1);
}

/**
 * bw_chooser_add:
 * @value: what is chosen
 * @words: on the screen
 *
 * Adds something to choose. The first one is chosen.
 */
void
bw_chooser_add (BwChooser *self, guint value, const char *words)
{
  begin (self);
  g_array_append_val (self->values, value);
  gtk_string_list_append (self->words, words);
  make_room (self, words);
  end (self);
}

static gboolean
holds_set (BwChooser *self, guint set)
{
  guint held = 0;
  for (guint i = 0; i < self->values->len; i++)
    held |= BW_BIT (g_array_index (self->values, guint, i));
  return held == set;
}

/**
 * bw_chooser_set_kinds:
 * @set: of kinds of @table; not empty
 *
 * Lets the person choose among @set. What was chosen stays, if it is among them.
 */
void
bw_chooser_set_kinds (BwChooser *self, const BwKindTable *table, guint set)
{
  guint chosen = bw_chooser_get (self);

  if (holds_set (self, set))
    return;
  bw_chooser_clear (self);
  for (guint kind = 0; kind < table->n; kind++)
    if (set & BW_BIT (kind))
      bw_chooser_add (self, kind, bw_kind_label (table, kind));
  bw_chooser_choose (self, chosen);
}

/**
 * bw_chooser_choose:
 *
 * Chooses @value, if it is there. "chosen" is not told.
 */
void
bw_chooser_choose (BwChooser *self, guint value)
{
  begin (self);
  for (guint i = 0; i < self->values->len; i++)
    if (g_array_index (self->values, guint, i) == value)
      gtk_drop_down_set_selected (self->control, i);
  end (self);
}

/**
 * bw_chooser_get:
 *
 * Returns: the value that is chosen; %G_MAXUINT if there is nothing to choose
 */
guint
bw_chooser_get (BwChooser *self)
{
  guint index = gtk_drop_down_get_selected (self->control);
  return index < self->values->len ? g_array_index (self->values, guint, index) : NONE;
}

/**
 * bw_chooser_get_n:
 *
 * Returns: how many values there are to choose from
 */
guint
bw_chooser_get_n (BwChooser *self)
{
  return self->values->len;
}

/**
 * bw_chooser_get_control:
 *
 * Returns: (transfer none): what takes the focus
 */
GtkDropDown *
bw_chooser_get_control (BwChooser *self)
{
  return self->control;
}
