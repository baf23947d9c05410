/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "state.h"

#include <glib/gi18n-lib.h>

/**
 * BwDetailState:
 *
 * What the selected source can show through the selected input on this tube, with the values that
 * the person has moved in place of the sheet's own. A moved value is a question, no edit: the sheet
 * does not change. It stays while other sources and inputs are selected, until it is reset, another
 * sheet or another tube comes, or the sheet's own value beneath it is edited.
 *
 * "changed" tells that the case has changed, by whatever.
 */
struct _BwDetailState
{
  GObject parent_instance;

  BwDocument *document;
  BwDetailFields fields;

  GFile *file; /* nullable; of the sheet that the moves belong to */
  guint source;
  guint input;
  guint mask;
  BwRatio aspect;

  BwDetailValues own;   /* of the sheet */
  BwDetailValues moves; /* as far as they are moved */
  BwDetailValues now;
  guint moved; /* set of BwDetailValue */

  BwDetailCase what;
  BwDetail detail;
  BwLead lead;
};

G_DEFINE_FINAL_TYPE (BwDetailState, bw_detail_state, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* The case */

static void
apply (BwDetailState *self)
{
  const BwDetailValues *now = &self->now;

  self->now = self->own;
  for (guint i = 0; i < BW_N_DETAIL_VALUES; i++)
    if (bw_detail_state_is_moved (self, i))
      bw_detail_value_copy (&self->fields.at[i], &self->now, &self->moves);
  self->lead = (BwLead){ .length_m = now->lead_m };
  if (now->lead_m > 0 && now->lead < self->fields.leads->len)
    self->lead.type = self->fields.leads->pdata[now->lead];
  self->what.diagonal_m = now->diagonal_m;
  self->what.pitch_m = now->pitch_m;
  self->what.spot_m = now->spot_m;
  self->what.bandwidth_hz = now->bandwidth_hz;
  self->what.detail_hz = now->detail_hz;
  self->what.lead_hz = self->lead.type != NULL
                           ? bw_lead_type_3_db_hz (self->lead.type, self->lead.length_m)
                           : 0;
  self->what.filter = now->filter;
  self->what.kell = bw_kell_values[now->kell].factor;
  self->what.interlace = now->interlace;
  self->what.claimed_lines = now->claimed_lines;
  self->what.claimed_half_digit = now->claimed_half_digit;
  bw_detail_compute (&self->what, &self->detail);
}

/* Computes all anew from the document as it is. */
static void
refresh (BwDetailState *self)
{
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;

  bw_detail_case_from (&self->what, monitor, bw_document_selected_input (self->document),
                       bw_document_selected_source (self->document),
                       bw_document_selected_raster (self->document));
  bw_detail_values_from (&self->own, &self->what);
  self->source = bw_document_get_source (self->document);
  self->input = bw_document_get_input (self->document);
  self->mask = monitor->mask;
  self->aspect = monitor->aspect;
  apply (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Moved values */

static gboolean
is_other_file (BwDetailState *self)
{
  GFile *file = bw_document_get_file (self->document);
  if (file == NULL || self->file == NULL)
    return file != self->file;
  return !g_file_equal (file, self->file);
}

static void
keep_file (BwDetailState *self)
{
  g_set_object (&self->file, bw_document_get_file (self->document));
}

static gboolean
is_other_tube (BwDetailState *self, const BwDetailValues *before)
{
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;
  return monitor->mask != self->mask || bw_ratio_compare (monitor->aspect, self->aspect) != 0
         || !bw_near (monitor->diagonal_m, before->diagonal_m, 1e-9);
}

static void
drop_meaningless (BwDetailState *self)
{
  static const BwDetailValue of_tube[] = { BW_DETAIL_DIAGONAL, BW_DETAIL_PITCH_VALUE,
                                           BW_DETAIL_SPOT, BW_DETAIL_BANDWIDTH, BW_DETAIL_CLAIM };
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  gboolean same_choice = bw_document_get_source (self->document) == self->source
                         && bw_document_get_input (self->document) == self->input;
  BwDetailValues before = self->own;
  BwDetailCase what;

  if (is_other_file (self))
    self->moved = 0;
  for (guint i = 0; is_other_tube (self, &before) && i < G_N_ELEMENTS (of_tube); i++)
    self->moved &= ~BW_BIT (of_tube[i]);
  bw_detail_case_from (&what, sheet->monitor, bw_document_selected_input (self->document),
                       bw_document_selected_source (self->document),
                       bw_document_selected_raster (self->document));
  bw_detail_values_from (&self->own, &what);
  /* A value that was edited in the sheet is no longer moved. */
  for (guint i = 0; same_choice && i < BW_N_DETAIL_VALUES; i++)
    if (bw_detail_value_differs (&self->fields.at[i], &before, &self->own))
      self->moved &= ~BW_BIT (i);
}

static void
on_document_changed (BwDetailState *self)
{
  drop_meaningless (self);
  keep_file (self);
  refresh (self);
}

/* Object */

static void
bw_detail_state_finalize (GObject *object)
{
  BwDetailState *self = BW_DETAIL_STATE (object);

  g_clear_object (&self->file);
  g_clear_object (&self->document);
  bw_detail_fields_clear (&self->fields);
  G_OBJECT_CLASS (bw_detail_state_parent_class)->finalize (object);
}

static void
bw_detail_state_class_init (BwDetailStateClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_detail_state_finalize;

  /* BwDetailState::changed: the case is another one. */
  signals[CHANGED] = g_signal_new ("changed", BW_TYPE_DETAIL_STATE, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
bw_detail_state_init (BwDetailState *self)
{
  bw_detail_fields_init (&self->fields);
}

/**
 * bw_detail_state_new:
 * @document: whose selection it follows
 *
 * Returns: (transfer full): a state in which nothing is moved
 */
BwDetailState *
bw_detail_state_new (BwDocument *document)
{
  BwDetailState *self = g_object_new (BW_TYPE_DETAIL_STATE, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (refresh), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "saved", G_CALLBACK (keep_file), self, G_CONNECT_SWAPPED);
  keep_file (self);
  refresh (self);
  return self;
}

/**
 * bw_detail_state_get_document:
 *
 * Returns: (transfer none)
 */
BwDocument *
bw_detail_state_get_document (BwDetailState *self)
{
  return self->document;
}

/**
 * bw_detail_state_dup_name:
 *
 * Returns: (transfer full): what the case is of: the selected source at the selected input, or the
 * monitor where one of them is missing
 */
char *
bw_detail_state_dup_name (BwDetailState *self)
{
  const BwSource *source = bw_document_selected_source (self->document);
  const BwInput *input = bw_document_selected_input (self->document);

  if (source == NULL || input == NULL)
    return g_strdup (bw_document_get_sheet (self->document)->monitor->name);
  /* Translators: source at input. */
  return g_strdup_printf (_ ("%1$s at %2$s"), source->name, input->name);
}

/**
 * bw_detail_state_get_case:
 *
 * Returns: (transfer none): the case, with what is moved; valid until the next "changed"
 */
const BwDetailCase *
bw_detail_state_get_case (BwDetailState *self)
{
  return &self->what;
}

/**
 * bw_detail_state_get_detail:
 *
 * Returns: (transfer none): what follows from the case; valid until the next "changed"
 */
const BwDetail *
bw_detail_state_get_detail (BwDetailState *self)
{
  return &self->detail;
}

/**
 * bw_detail_state_get_lead:
 *
 * Returns: (transfer none): the lead of the case; without a type if there is none that matters
 */
const BwLead *
bw_detail_state_get_lead (BwDetailState *self)
{
  return &self->lead;
}

/**
 * bw_detail_state_get_field:
 *
 * Returns: (transfer none): how @value is named, read and shown, as a member of BwDetailValues;
 * lives as long as the state
 */
const BwField *
bw_detail_state_get_field (BwDetailState *self, BwDetailValue value)
{
  return &self->fields.at[value];
}

/**
 * bw_detail_state_get_values:
 *
 * Returns: (transfer none): all values as they are in the case
 */
const BwDetailValues *
bw_detail_state_get_values (BwDetailState *self)
{
  return &self->now;
}

/**
 * bw_detail_state_get_number:
 * @value: one that is a quantity
 *
 * Returns: @value as it counts in the case: the source's highest frequency is that of its samples
 * where none is given; zero if it is not known
 */
double
bw_detail_state_get_number (BwDetailState *self, BwDetailValue value)
{
  double number = G_STRUCT_MEMBER (double, &self->now, self->fields.at[value].offset);

  if (value == BW_DETAIL_HIGHEST && !(number > 0))
    return bw_hz_from_tvl (self->detail.source_tvl, self->what.active_s,
                           bw_ratio_to_double (self->what.aspect));
  return number;
}

/**
 * bw_detail_state_dup_own_text:
 *
 * Returns: (transfer full): what stands in place of @value if it is not moved, for reading; empty
 * if it is not known
 */
char *
bw_detail_state_dup_own_text (BwDetailState *self, BwDetailValue value)
{
  const BwField *field = &self->fields.at[value];
  if (field->type == BW_FIELD_CHOICE)
    return g_strdup (bw_kind_label (field->kinds, bw_field_get_uint (field, &self->own)));
  return bw_field_to_entry (field, &self->own, bw_quantity_locale_mark ());
}

/**
 * bw_detail_state_set:
 * @text: what was typed, as bw_field_parse() reads it; empty for "not known"
 * @mark: the decimal mark in @text
 *
 * Moves @value; to the sheet's own it is as if it was reset.
 *
 * Returns: %FALSE with @error as that of bw_field_parse(), leaving everything as it was
 */
gboolean
bw_detail_state_set (BwDetailState *self, BwDetailValue value, const char *text, char mark,
                     GError **error)
{
  const BwField *field = &self->fields.at[value];

  if (!bw_field_parse (field, &self->moves, text, mark, error))
    return FALSE;
  if (bw_detail_value_differs (field, &self->own, &self->moves))
    self->moved |= BW_BIT (value);
  else
    self->moved &= ~BW_BIT (value);
  apply (self);
  g_signal_emit (self, signals[CHANGED], 0);
  return TRUE;
}

/**
 * bw_detail_state_reset:
 *
 * Takes @value back to the sheet's own.
 */
void
bw_detail_state_reset (BwDetailState *self, BwDetailValue value)
{
  self->moved &= ~BW_BIT (value);
  apply (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

/**
 * bw_detail_state_reset_all:
 *
 * Takes every value back to the sheet's own.
 */
void
bw_detail_state_reset_all (BwDetailState *self)
{
  self->moved = 0;
  apply (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

/**
 * bw_detail_state_is_moved:
 *
 * Returns: whether @value is another one than the sheet's own
 */
gboolean
bw_detail_state_is_moved (BwDetailState *self, BwDetailValue value)
{
  return (self->moved & BW_BIT (value)) != 0;
}

/**
 * bw_detail_state_any_moved:
 *
 * Returns: whether any value is
 */
gboolean
bw_detail_state_any_moved (BwDetailState *self)
{
  return self->moved != 0;
}
