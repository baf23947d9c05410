/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "controls.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/wrap-layout.h"
#include "core/bench/catalogue.h"

/**
 * BwHookupControls:
 *
 * What a person chooses about a plan: which of the chains, the series of the resistors, the edition
 * of the 21-pin connector, and the lead to the input. "changed" tells what the person does.
 */
struct _BwHookupControls
{
  GtkWidget parent_instance;

  GtkWidget *box; /* the only child; those below are borrowed and in it */
  BwChooser *alternative;
  BwChooser *series;
  BwChooser *edition;
  BwChooser *lead;
  BwEditorRow *length_row;

  GPtrArray *leads; /* of BwLeadType */
  double length_m;
};

G_DEFINE_FINAL_TYPE (BwHookupControls, bw_hookup_controls, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define CHAIN_CHARS 24
#define LEAD_CHARS 24

static const BwField length_field = {
  .key = "length",
  .label = N_ ("Length"),
  .type = BW_FIELD_QUANTITY,
  .dimension = BW_DIMENSION_LENGTH,
  .flags = BW_FIELD_UNKNOWN,
  .offset = 0,
  .low = 0.1,
  .high = 1000,
  .unit = "m",
};

static void
tell (BwHookupControls *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
on_length (BwHookupControls *self)
{
  g_autofree char *text = bw_editor_row_dup_text (self->length_row);
  g_autoptr (GError) error = NULL;
  double length_m = self->length_m;

  if (!bw_field_parse (&length_field, &length_m, text, bw_quantity_locale_mark (), &error))
    {
      bw_editor_row_set_error (self->length_row, error->message);
      return;
    }
  bw_editor_row_set_error (self->length_row, NULL);
  self->length_m = length_m;
  bw_editor_row_show_object (self->length_row, &self->length_m);
  tell (self);
}

static void
bw_hookup_controls_dispose (GObject *object)
{
  g_clear_pointer (&BW_HOOKUP_CONTROLS (object)->box, gtk_widget_unparent);
  G_OBJECT_CLASS (bw_hookup_controls_parent_class)->dispose (object);
}

static void
bw_hookup_controls_finalize (GObject *object)
{
  g_ptr_array_unref (BW_HOOKUP_CONTROLS (object)->leads);
  G_OBJECT_CLASS (bw_hookup_controls_parent_class)->finalize (object);
}

static void
bw_hookup_controls_class_init (BwHookupControlsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_hookup_controls_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_hookup_controls_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);

  /* BwHookupControls::changed: the person has chosen something else. */
  signals[CHANGED] = g_signal_new ("changed", BW_TYPE_HOOKUP_CONTROLS, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static BwChooser *
add_chooser (BwHookupControls *self, const char *name, const char *label)
{
  BwChooser *chooser = bw_chooser_new (name, label);
  g_signal_connect_object (chooser, "chosen", G_CALLBACK (tell), self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (self->box, GTK_WIDGET (chooser));
  return chooser;
}

static void
add_lead (BwHookupControls *self)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *folder = bw_catalogue_user_folder ();

  self->leads = bw_lead_types_new (folder, faults);
  self->lead = add_chooser (self, "lead", _ ("L_ead to the input"));
  bw_chooser_shorten (self->lead, LEAD_CHARS);
  for (guint i = 0; i < self->leads->len; i++)
    bw_chooser_add (self->lead, i, ((const BwLeadType *) self->leads->pdata[i])->name);
  self->length_row = bw_entry_row_new (&length_field);
  GtkWidget *entry = bw_editor_row_get_control (self->length_row);
  gtk_widget_set_name (entry, "lead-length");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 7);
  gtk_widget_set_tooltip_text (entry, _ ("Of the lead to the input; empty: not known"));
  g_signal_connect_object (self->length_row, "edited", G_CALLBACK (on_length), self,
                           G_CONNECT_SWAPPED);
  bw_wrap_box_append (self->box, GTK_WIDGET (self->length_row));
  self->length_m = 2; /* a usual length; common practice, no source */
  bw_editor_row_show_object (self->length_row, &self->length_m);
}

static void
bw_hookup_controls_init (BwHookupControls *self)
{
  self->box = bw_wrap_box_new ();
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  self->alternative = add_chooser (self, "alternative", _ ("_Plan"));
  bw_chooser_shorten (self->alternative, CHAIN_CHARS);
  self->series = add_chooser (self, "series", _ ("_Resistors"));
  bw_chooser_set_kinds (self->series, &bw_series, BW_BIT (BW_N_SERIES) - 1);
  bw_chooser_choose (self->series, BW_USUAL_SERIES);
  self->edition = add_chooser (self, "edition", _ ("21-_pin connector"));
  bw_chooser_set_kinds (self->edition, &bw_editions, BW_BIT (BW_N_EDITIONS) - 1);
  add_lead (self);
}

/* "1: scan converter, to 525 or 625 lines composite (direct)" */
static char *
alternative_words (const BwHookup *hookup, guint index)
{
  const BwHookupAlternative *one = hookup->alternatives->pdata[index];
  const char *verdict = one->verdict_says;
  return *one->price != '\0'
             /* Translators: number of a plan, its parts, its verdict and its price. */
             ? g_strdup_printf (_ ("%1$u: %2$s (%3$s, %4$s)"), index + 1, one->summary, verdict,
                                one->price)
             /* Translators: number of a plan, its parts and its verdict. */
             : g_strdup_printf (_ ("%1$u: %2$s (%3$s)"), index + 1, one->summary, verdict);
}

static gboolean
has_peritelevision (const BwHookup *hookup)
{
  for (guint i = 0; i < hookup->hops->len; i++)
    {
      const BwHookupHop *hop = hookup->hops->pdata[i];
      if (hop->from_connector == BW_CONNECTOR_PERITELEVISION
          || hop->to_connector == BW_CONNECTOR_PERITELEVISION)
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_resistors (const BwHookup *hookup)
{
  for (guint i = 0; i < hookup->parts->len; i++)
    if (((const BwHookupPart *) hookup->parts->pdata[i])->series < BW_N_SERIES)
      return TRUE;
  return FALSE;
}

/* A list that is the same is left alone, for the focus may be in it. */
static void
show_alternatives (BwHookupControls *self, const BwHookup *hookup)
{
  GListModel *old = gtk_drop_down_get_model (bw_chooser_get_control (self->alternative));
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  gboolean same = g_list_model_get_n_items (old) == hookup->alternatives->len;

  for (guint i = 0; i < hookup->alternatives->len; i++)
    {
      g_ptr_array_add (words, alternative_words (hookup, i));
      same = same
             && g_strcmp0 (gtk_string_list_get_string (GTK_STRING_LIST (old), i), words->pdata[i])
                    == 0;
    }
  if (!same)
    bw_chooser_clear (self->alternative);
  for (guint i = 0; i < words->len && !same; i++)
    bw_chooser_add (self->alternative, i, words->pdata[i]);
  bw_chooser_choose (self->alternative, hookup->alternative);
}

/**
 * bw_hookup_controls_show:
 *
 * Offers what can be chosen about @hookup.
 */
void
bw_hookup_controls_show (BwHookupControls *self, const BwHookup *hookup)
{
  show_alternatives (self, hookup);
  gtk_widget_set_visible (GTK_WIDGET (self->alternative), hookup->alternatives->len > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->alternative), hookup->alternatives->len > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->series), has_resistors (hookup));
  gtk_widget_set_visible (GTK_WIDGET (self->edition), has_peritelevision (hookup));
  gtk_widget_set_visible (GTK_WIDGET (self->lead), hookup->plan != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->length_row), hookup->plan != NULL);
}

/**
 * bw_hookup_controls_restart:
 *
 * Another source or input: the least chain is chosen.
 */
void
bw_hookup_controls_restart (BwHookupControls *self)
{
  bw_chooser_clear (self->alternative);
}

/**
 * bw_hookup_controls_get_choice:
 * @choice: (out)
 */
void
bw_hookup_controls_get_choice (BwHookupControls *self, BwHookupChoice *choice)
{
  guint alternative = bw_chooser_get (self->alternative);
  *choice = (BwHookupChoice){ alternative < BW_HOOKUP_MAX_ALTERNATIVES ? alternative : 0,
                              bw_chooser_get (self->series), bw_chooser_get (self->edition) };
}

/**
 * bw_hookup_controls_get_lead:
 * @lead: (out): its type lives as long as the controls
 */
void
bw_hookup_controls_get_lead (BwHookupControls *self, BwLead *lead)
{
  guint index = bw_chooser_get (self->lead);
  *lead = (BwLead){ .length_m = self->length_m };
  if (index < self->leads->len && self->length_m > 0)
    lead->type = self->leads->pdata[index];
}

/**
 * bw_hookup_controls_get_length_row:
 *
 * Returns: (transfer none): the field for the length of the lead
 */
BwEditorRow *
bw_hookup_controls_get_length_row (BwHookupControls *self)
{
  return self->length_row;
}
