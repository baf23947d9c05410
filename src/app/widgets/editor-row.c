/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "template.h"

#include "reveal.h"

/**
 * BwEditorRow:
 *
 * One field of a form: its name, its control, what is wrong with what was entered, and a sentence
 * of help. A row only holds text; whoever made it takes the text on "edited". While it holds a text
 * that is not taken, the document of its window knows it: see bw_document_take_typed().
 */
typedef struct
{
  const BwField *field; /* static */
  char *shown;          /* the model's text */
  GtkWidget *control;   /* borrowed; a child */
  GtkWidget *error;
  GtkWidget *help;
  gboolean showing; /* the control is being set, not edited */

  const BwFieldTable *table; /* nullable: of the struct, if the figure keeps where it comes from */
  GtkDropDown *origin;       /* borrowed; beside the help */

  BwDocument *document; /* nullable: of the window that the row is in, once it was asked for */
  gboolean in_sheet;    /* the field is one of the sheet, of this part */
  BwPart part;
} BwEditorRowPrivate;

static void init_pending (BwPendingInterface *iface);

G_DEFINE_ABSTRACT_TYPE_WITH_CODE (BwEditorRow, bw_editor_row, GTK_TYPE_BOX,
                                  G_ADD_PRIVATE (BwEditorRow)
                                      G_IMPLEMENT_INTERFACE (BW_TYPE_PENDING, init_pending))

#define PRIVATE(self)                                                                              \
  ((BwEditorRowPrivate *) bw_editor_row_get_instance_private (BW_EDITOR_ROW (self)))

enum
{
  PROP_FIELD = 1,
  N_PROPERTIES
};

enum
{
  EDITED,
  ORIGIN_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static GtkWidget *
text_label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
bw_editor_row_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_FIELD)
    PRIVATE (object)->field = g_value_get_pointer (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
bw_editor_row_finalize (GObject *object)
{
  g_free (PRIVATE (object)->shown);
  G_OBJECT_CLASS (bw_editor_row_parent_class)->finalize (object);
}

/* The document of the window; NULL while the row is in none. */
static BwDocument *
find_document (BwEditorRow *self)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (private->document == NULL && BW_IS_DOCUMENT_HOST (root))
    g_set_object (&private->document, bw_document_host_get_document (BW_DOCUMENT_HOST (root)));
  return private->document;
}

/* Tells the document whether the row holds something that is not taken. */
static void
tell_document (BwEditorRow *self)
{
  BwDocument *document = find_document (self);
  if (document != NULL)
    bw_document_set_pending (document, BW_PENDING (self), bw_editor_row_is_edited (self));
}

static void
bw_editor_row_unroot (GtkWidget *widget)
{
  BwEditorRowPrivate *private = PRIVATE (widget);
  if (private->document != NULL)
    bw_document_set_pending (private->document, BW_PENDING (widget), FALSE);
  g_clear_object (&private->document);
  GTK_WIDGET_CLASS (bw_editor_row_parent_class)->unroot (widget);
}

static void
bw_editor_row_class_init (BwEditorRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->set_property = bw_editor_row_set_property;
  object_class->finalize = bw_editor_row_finalize;
  GTK_WIDGET_CLASS (klass)->unroot = bw_editor_row_unroot;

  g_object_class_install_property (object_class, PROP_FIELD,
                                   g_param_spec_pointer ("field", NULL, NULL,
                                                         G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY
                                                             | G_PARAM_STATIC_STRINGS));

  /* BwEditorRow::edited: the person has finished an edit. */
  signals[EDITED] = g_signal_new ("edited", BW_TYPE_EDITOR_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
  /* BwEditorRow::origin-chosen: the person has said where the figure comes from: a BwOrigin. */
  signals[ORIGIN_CHOSEN] = g_signal_new ("origin-chosen", BW_TYPE_EDITOR_ROW, G_SIGNAL_RUN_LAST, 0,
                                         NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
bw_editor_row_init (BwEditorRow *self)
{
  PRIVATE (self)->shown = g_strdup ("");
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 4);
  gtk_widget_add_css_class (GTK_WIDGET (self), "bw-editor-row");
}

static char *
allowed_words (const BwField *field)
{
  if (field->type == BW_FIELD_CHOICE || field->type == BW_FIELD_SET
      || field->type == BW_FIELD_SWITCH || field->type == BW_FIELD_TEXT
      || field->type == BW_FIELD_PINS)
    return NULL;
  g_autofree char *allowed = bw_field_allowed (field, bw_quantity_locale_mark ());
  return g_strdup_printf (_ ("Allowed: %s"), allowed);
}

/* What a screen reader says of the control beside its name: what is wrong, if anything is, then the
 * help. "Described by" and not "error message": GTK 4.8 takes for the latter one reference and tells
 * no screen reader, later ones take a list, and each form crashes the other. */
static void
tell_description (BwEditorRow *self, gboolean wrong)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  GtkAccessible *control = GTK_ACCESSIBLE (private->control);

  if (wrong)
    gtk_accessible_update_relation (control, GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, private->error,
                                    private->help, NULL, -1);
  else
    gtk_accessible_update_relation (control, GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, private->help,
                                    NULL, -1);
}

/**
 * bw_editor_row_set_control:
 * @control: (transfer floating): what the person edits; it may be in a widget that scrolls it
 *
 * Completes the row; to be called once by the kind of row.
 */
void
bw_editor_row_set_control (BwEditorRow *self, GtkWidget *control)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  const BwField *field = private->field;
  GtkWidget *label = text_label_new (bw_field_label (field), "bw-field-label");
  GtkWidget *scroll = gtk_widget_get_parent (control);
  g_autofree char *allowed = allowed_words (field);

  private->control = control;
  private->error = text_label_new (NULL, "bw-field-error");
  gtk_widget_set_visible (private->error, FALSE);
  private->help = text_label_new (bw_field_help (field), "bw-light");
  gtk_widget_set_visible (private->help, *bw_field_help (field) != '\0');
  gtk_widget_set_tooltip_text (control, allowed);

  gtk_box_append (GTK_BOX (self), label);
  gtk_box_append (GTK_BOX (self), scroll != NULL ? scroll : control);
  gtk_box_append (GTK_BOX (self), private->error);
  gtk_box_append (GTK_BOX (self), private->help);
  bw_label_control (control, label);
  tell_description (self, FALSE);
}

/* Where a figure comes from */

static void
on_origin (BwEditorRow *self)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  if (private->showing)
    return;
  g_object_ref (self); /* what takes it may drop the form */
  g_signal_emit (self, signals[ORIGIN_CHOSEN], 0, gtk_drop_down_get_selected (private->origin));
  g_object_unref (self);
}

static GtkDropDown *
origin_new (const BwField *field)
{
  GtkStringList *labels = gtk_string_list_new (NULL);
  g_autofree char *name = g_strdup_printf (_ ("Where “%s” comes from"), bw_field_label (field));

  for (guint origin = 0; origin < bw_origins.n; origin++)
    gtk_string_list_append (labels, bw_kind_label (&bw_origins, origin));
  GtkWidget *list = gtk_drop_down_new (G_LIST_MODEL (labels), NULL);
  gtk_widget_add_css_class (list, "bw-origin");
  gtk_widget_set_halign (list, GTK_ALIGN_END);
  gtk_widget_set_valign (list, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (list, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return GTK_DROP_DOWN (list);
}

/**
 * bw_editor_row_add_origin:
 * @table: of the struct that the field belongs to
 *
 * Puts a list beside the help in which it is said where the figure comes from. It is there while
 * the figure is known. Does nothing for a field that keeps no origin.
 */
void
bw_editor_row_add_origin (BwEditorRow *self, const BwFieldTable *table)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  g_return_if_fail (private->help != NULL && private->table == NULL);
  if (table->origins == 0 || !(private->field->flags & BW_FIELD_FIGURE))
    return;
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  private->table = table;
  private->origin = origin_new (private->field);
  bw_label_control (GTK_WIDGET (private->origin), gtk_widget_get_first_child (GTK_WIDGET (self)));
  g_object_ref (private->help);
  gtk_box_remove (GTK_BOX (self), private->help);
  gtk_box_append (GTK_BOX (foot), private->help);
  g_object_unref (private->help);
  gtk_box_append (GTK_BOX (foot), GTK_WIDGET (private->origin));
  gtk_widget_set_hexpand (GTK_WIDGET (private->origin), TRUE);
  gtk_box_append (GTK_BOX (self), foot);
  g_signal_connect_object (private->origin, "notify::selected", G_CALLBACK (on_origin), self,
                           G_CONNECT_SWAPPED);
}

static void
show_origin (BwEditorRow *self, gconstpointer object)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  if (private->table == NULL)
    return;
  private->showing = TRUE;
  gtk_drop_down_set_selected (private->origin,
                              bw_field_origin (private->table, private->field, object));
  private->showing = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (private->origin), bw_field_is_set (private->field, object));
}

/**
 * bw_editor_row_get_field:
 *
 * Returns: (transfer none): the field that the row edits
 */
const BwField *
bw_editor_row_get_field (BwEditorRow *self)
{
  return PRIVATE (self)->field;
}

/**
 * bw_editor_row_get_control:
 *
 * Returns: (transfer none): the widget that the person edits
 */
GtkWidget *
bw_editor_row_get_control (BwEditorRow *self)
{
  return PRIVATE (self)->control;
}

/**
 * bw_editor_row_get_error:
 *
 * Returns: (transfer none) (nullable): what is wrong with what was entered
 */
const char *
bw_editor_row_get_error (BwEditorRow *self)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  if (!gtk_widget_get_visible (private->error))
    return NULL;
  return gtk_label_get_label (GTK_LABEL (private->error));
}

static void
show (BwEditorRow *self, const char *text)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  private->showing = TRUE;
  BW_EDITOR_ROW_GET_CLASS (self)->show (self, text);
  private->showing = FALSE;
}

/**
 * bw_editor_row_show_text:
 * @text: as bw_field_to_entry() makes it, or as the person typed it
 *
 * Shows @text as what the model holds. What was entered before is dropped, and so is its error.
 */
void
bw_editor_row_show_text (BwEditorRow *self, const char *text)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  char *shown = g_strdup (text);
  g_free (private->shown);
  private->shown = shown;
  bw_editor_row_reset (self);
}

static void
look_at (BwEditorRow *self, gconstpointer object)
{
  PRIVATE (self)->showing = TRUE;
  if (BW_EDITOR_ROW_GET_CLASS (self)->look_at != NULL)
    BW_EDITOR_ROW_GET_CLASS (self)->look_at (self, object);
  PRIVATE (self)->showing = FALSE;
}

/**
 * bw_editor_row_show_object:
 * @object: the struct that the field belongs to
 *
 * Shows the member of @object. What was entered before is dropped, and so is its error.
 */
void
bw_editor_row_show_object (BwEditorRow *self, gconstpointer object)
{
  g_autofree char *text
      = bw_field_to_entry (PRIVATE (self)->field, object, bw_quantity_locale_mark ());
  look_at (self, object);
  show_origin (self, object);
  bw_editor_row_show_text (self, text);
}

/**
 * bw_editor_row_follow_object:
 * @object: the struct that the field belongs to
 *
 * Shows the member of @object, as bw_editor_row_follow_text() does.
 */
void
bw_editor_row_follow_object (BwEditorRow *self, gconstpointer object)
{
  g_autofree char *text
      = bw_field_to_entry (PRIVATE (self)->field, object, bw_quantity_locale_mark ());
  look_at (self, object);
  show_origin (self, object);
  bw_editor_row_follow_text (self, text);
}

/**
 * bw_editor_row_follow_text:
 * @text: as bw_field_to_entry() makes it, or as the person typed it
 *
 * Shows @text as what the model holds, unless something is typed that is not taken: that stays, with
 * its error, and Escape in it brings @text.
 */
void
bw_editor_row_follow_text (BwEditorRow *self, const char *text)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  gboolean edited = bw_editor_row_is_edited (self);
  char *shown = g_strdup (text);

  g_free (private->shown);
  private->shown = shown;
  if (!edited || !bw_editor_row_is_edited (self))
    bw_editor_row_reset (self);
}

/**
 * bw_editor_row_set_note:
 * @note: a few words that stand in place of the help
 * @css_class: (nullable): how they are set; %NULL as help is
 */
void
bw_editor_row_set_note (BwEditorRow *self, const char *note, const char *css_class)
{
  GtkWidget *help = PRIVATE (self)->help;
  const char *classes[] = { css_class != NULL ? css_class : "bw-light", NULL };

  gtk_label_set_label (GTK_LABEL (help), note);
  gtk_widget_set_visible (help, TRUE); /* keeps its line, so that nothing jumps */
  gtk_widget_set_css_classes (help, classes);
}

/**
 * bw_editor_row_reset:
 *
 * Takes back what was entered since the model was last shown.
 */
void
bw_editor_row_reset (BwEditorRow *self)
{
  bw_editor_row_set_error (self, NULL);
  if (bw_editor_row_is_edited (self))
    show (self, PRIVATE (self)->shown);
  tell_document (self);
}

/**
 * bw_editor_row_enter_text:
 * @text: what a person might have typed
 *
 * Puts @text into the control as if it had been typed there, and the edit finished.
 */
void
bw_editor_row_enter_text (BwEditorRow *self, const char *text)
{
  g_return_if_fail (BW_IS_EDITOR_ROW (self) && text != NULL);
  show (self, text);
  bw_editor_row_finish_edit (self);
}

/**
 * bw_editor_row_dup_text:
 *
 * Returns: (transfer full): what the control holds, as bw_field_parse() reads it
 */
char *
bw_editor_row_dup_text (BwEditorRow *self)
{
  return BW_EDITOR_ROW_GET_CLASS (self)->dup_text (self);
}

/**
 * bw_editor_row_is_edited:
 *
 * Returns: whether the control holds something else than the model
 */
gboolean
bw_editor_row_is_edited (BwEditorRow *self)
{
  g_autofree char *text = bw_editor_row_dup_text (self);
  return g_strcmp0 (text, PRIVATE (self)->shown) != 0;
}

/**
 * bw_editor_row_set_error:
 * @message: (nullable): what is wrong and what is allowed; %NULL if all is well
 */
void
bw_editor_row_set_error (BwEditorRow *self, const char *message)
{
  BwEditorRowPrivate *private = PRIVATE (self);
  gboolean wrong = message != NULL;

  gtk_label_set_label (GTK_LABEL (private->error), wrong ? message : "");
  gtk_widget_set_visible (private->error, wrong);
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (private->control), GTK_ACCESSIBLE_STATE_INVALID,
      wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  tell_description (self, wrong);
  if (wrong)
    gtk_widget_add_css_class (private->control, "error");
  else
    gtk_widget_remove_css_class (private->control, "error");
}

/**
 * bw_editor_row_finish_edit:
 *
 * Tells that the person has finished an edit. Does nothing while the row itself sets its control.
 */
void
bw_editor_row_finish_edit (BwEditorRow *self)
{
  if (PRIVATE (self)->showing)
    return;
  g_object_ref (self); /* what takes the edit may drop the form */
  g_signal_emit (self, signals[EDITED], 0);
  tell_document (self);
  g_object_unref (self);
}

/**
 * bw_editor_row_text_changed:
 *
 * Tells that the text in the control is another one. Does nothing while the row itself sets it.
 */
void
bw_editor_row_text_changed (BwEditorRow *self)
{
  if (!PRIVATE (self)->showing)
    tell_document (self);
}

/**
 * bw_editor_row_set_part:
 * @part: the part of the sheet that the field belongs to
 *
 * Says that what is typed here changes the sheet.
 */
void
bw_editor_row_set_part (BwEditorRow *self, BwPart part)
{
  g_return_if_fail (BW_IS_EDITOR_ROW (self));
  PRIVATE (self)->in_sheet = TRUE;
  PRIVATE (self)->part = part;
}

/* What the document asks */

static gboolean
take (BwPending *pending)
{
  BwEditorRow *self = BW_EDITOR_ROW (pending);
  if (bw_editor_row_is_edited (self))
    bw_editor_row_finish_edit (self);
  return bw_editor_row_get_error (self) == NULL;
}

static void
reveal (BwPending *pending)
{
  bw_reveal (GTK_WIDGET (pending), PRIVATE (pending)->control);
}

static BwTyped *
describe (BwPending *pending)
{
  BwEditorRowPrivate *private = PRIVATE (pending);
  if (!private->in_sheet)
    return NULL;
  g_autofree char *text = bw_editor_row_dup_text (BW_EDITOR_ROW (pending));
  return bw_typed_new (private->part, 0, private->field, text);
}

static void
init_pending (BwPendingInterface *iface)
{
  iface->take = take;
  iface->reveal = reveal;
  iface->describe = describe;
}
