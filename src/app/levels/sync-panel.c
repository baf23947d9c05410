/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sync-panel.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/chooser.h"
#include "app/widgets/scope-text.h"
#include "app/widgets/wrap-layout.h"
#include "core/levels/wire.h"
#include "core/sync/results.h"
#include "draw/sync/view.h"

/* What is typed. */
typedef struct
{
  double v_offset_s;
  double time_constant_lines;
  double rate_error;
} Typed;

typedef enum
{
  TYPED_OFFSET,
  TYPED_TIME_CONSTANT,
  TYPED_RATE_ERROR,
  N_TYPED
} TypedKind;

#define QUANTITY(name, label_, member, kind, least, most, unit_)                                   \
  {                                                                                                \
    .key = name, .label = label_, .type = BW_FIELD_QUANTITY,                           \
    .flags = BW_FIELD_REQUIRED, .offset = G_STRUCT_OFFSET (Typed, member),                         \
    .dimension = BW_DIMENSION_##kind, .low = least, .high = most, .unit = unit_                    \
  }

static const BwField fields[N_TYPED] = {
  [TYPED_OFFSET] = QUANTITY ("offset", N_ ("V after H"), v_offset_s, TIME, -1e-3, 1e-3, "us"),
  [TYPED_TIME_CONSTANT] = QUANTITY ("time-constant", N_ ("Time constant"), time_constant_lines,
                                    LINES, BW_AFC_LINES_MIN, BW_AFC_LINES_MAX, NULL),
  [TYPED_RATE_ERROR] = QUANTITY ("rate-error", N_ ("Rate error"), rate_error, FRACTION,
                                 -BW_AFC_RATE_ERROR_MAX, BW_AFC_RATE_ERROR_MAX, NULL),
};

static const char *const tooltips[N_TYPED] = {
  [TYPED_OFFSET] = N_ (
      "By how much V comes after the edge of H, such as 2 µs; less than half a line"),
  [TYPED_TIME_CONSTANT] = N_ ("Of the AFC, such as 10 lines; 0.1 to 200 lines"),
  [TYPED_RATE_ERROR] = N_ (
      "By how much the oscillator's own line period is too long, such as 1 %; up to 20 % either way"),
};

/**
 * BwSyncPanel:
 *
 * What a gate makes of the H and V of the selected source's raster, and what the line oscillator
 * makes of that.
 */
struct _BwSyncPanel
{
  GtkWidget parent_instance;

  BwPicturePanel *panel; /* the only child; those below are borrowed and in it */
  BwChooser *gate;
  BwChooser *field;
  BwChooser *polarity[2]; /* of H and V */
  BwChooser *loop;
  BwEditorRow *rows[N_TYPED];
  GtkLabel *says;

  BwDocument *document;
  Typed typed;
  guint source;        /* that the polarities were set for */
  guint polarities[2]; /* of that source */
};

G_DEFINE_FINAL_TYPE (BwSyncPanel, bw_sync_panel, GTK_TYPE_WIDGET)

/* Case */

static void
case_of (BwSyncPanel *self, const BwRaster *raster, const Typed *typed, BwSyncMixCase *what,
         BwSyncAfc *afc)
{
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;

  bw_sync_mix_case_init (what, raster, bw_chooser_get (self->gate));
  what->field = raster->scan == BW_SCAN_INTERLACED ? (int) bw_chooser_get (self->field) : 0;
  what->h_polarity = bw_chooser_get (self->polarity[0]);
  what->v_polarity = bw_chooser_get (self->polarity[1]);
  what->v_offset_s = typed->v_offset_s;
  bw_sync_afc_init (afc, raster);
  afc->loop = bw_chooser_get (self->loop);
  afc->time_constant_lines = typed->time_constant_lines;
  afc->rate_error = typed->rate_error;
  if (monitor->diagonal_m > 0 && monitor->aspect.den > 0)
    {
      double aspect = bw_ratio_to_double (monitor->aspect);
      afc->picture_width_m = monitor->diagonal_m * aspect / hypot (aspect, 1);
    }
}

/* Which field is to blame. */
static gboolean
check (BwSyncPanel *self, const BwRaster *raster, const Typed *typed, GError **error)
{
  BwSyncMixCase what;
  BwSyncAfc afc;
  case_of (self, raster, typed, &what, &afc);
  return bw_sync_mix_check (&what, error) && bw_sync_afc_check (&afc, raster, error);
}

/* Showing */

static char *
joined (const BwNode *list)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < list->children->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n\n" : "",
                            ((const BwNode *) list->children->pdata[i])->label);
  return g_string_free (text, FALSE);
}

/* What is drawn. */
typedef struct
{
  BwRaster *raster;
  BwSyncMixCase what;
  BwSyncAfc afc;
} Shown;

static Shown *
shown_new (const BwSyncMixCase *what, const BwSyncAfc *afc)
{
  Shown *shown = g_new (Shown, 1);
  *shown = (Shown){ bw_raster_copy (what->raster), *what, *afc };
  shown->what.raster = shown->raster;
  return shown;
}

static void
shown_free (gpointer data)
{
  Shown *shown = data;
  bw_raster_free (shown->raster);
  g_free (shown);
}

static BwDrawing *
build (gpointer data, double width, double height, const BwInk *ink, const BwZoom *zoom)
{
  const Shown *shown = data;
  const BwSyncView view = { .what = &shown->what,
                            .afc = &shown->afc,
                            .range = zoom != NULL ? &zoom->across : NULL,
                            .mark = bw_quantity_locale_mark () };
  return bw_sync_drawing (&view, width, height, ink);
}

static void
show_mix (BwSyncPanel *self, const BwSyncMixCase *what, const BwSyncAfc *afc)
{
  static const BwPictureSource source = { .build = build, .free = shown_free, .keeps_zoom = TRUE };
  g_autoptr (BwSyncMix) mix = bw_sync_mix_new (what);
  g_autoptr (BwSyncRun) run = bw_sync_run_new (mix, afc);
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  g_autofree char *title = g_strdup_printf (_ ("%1$s: %2$s"),
                                            bw_document_selected_source (self->document)->name,
                                            what->raster->name);

  bw_sync_say (bw_result_root (result), mix, afc, run);
  g_autofree char *says = joined (bw_node_find (bw_result_root (result), "says"));
  bw_picture_panel_set_title (self->panel, title);
  bw_picture_panel_show (self->panel, &source, shown_new (what, afc));
  bw_picture_panel_show_part (self->panel, result, "gist");
  bw_figure_label_set (self->says, says);
}

/* As H and V leave the selected source; those that the person has chosen stay until that changes. */
static void
update_polarities (BwSyncPanel *self, const BwRaster *raster)
{
  BwWireForm form;
  guint source = bw_document_get_source (self->document);

  bw_wire_form_of_source (bw_document_selected_source (self->document), raster, BW_SYNC_SEPARATE,
                          &form);
  for (guint i = 0; i < G_N_ELEMENTS (self->polarity); i++)
    {
      if (source != self->source || form.own_polarity[i] != self->polarities[i])
        bw_chooser_choose (self->polarity[i], form.own_polarity[i]);
      self->polarities[i] = form.own_polarity[i];
    }
  self->source = source;
}

static void
update_controls (BwSyncPanel *self, const BwRaster *raster)
{
  gboolean gate = bw_chooser_get (self->gate) != BW_SYNC_GATE_STANDARD;

  gtk_widget_set_visible (GTK_WIDGET (self->field), raster->scan == BW_SCAN_INTERLACED);
  for (guint i = 0; i < G_N_ELEMENTS (self->polarity); i++)
    gtk_widget_set_sensitive (GTK_WIDGET (self->polarity[i]), gate);
  gtk_widget_set_sensitive (GTK_WIDGET (self->rows[TYPED_OFFSET]), gate);
}

/* There is no such mixture, because another raster has come: says so at the field. */
static void
show_trouble (BwSyncPanel *self, const GError *error)
{
  gboolean mix = error->domain == BW_SYNC_MIX_ERROR;
  bw_editor_row_set_error (self->rows[mix ? TYPED_OFFSET : TYPED_TIME_CONSTANT], error->message);
  bw_picture_panel_set_title (self->panel, error->message);
  bw_picture_panel_show (self->panel, NULL, NULL);
  gtk_label_set_label (self->says, "");
}

static void
update (BwSyncPanel *self)
{
  const BwRaster *raster = bw_document_selected_raster (self->document);
  g_autoptr (GError) error = NULL;
  BwSyncMixCase what;
  BwSyncAfc afc;
  BwLack lack;

  bw_document_lacks_raster (self->document, &lack);

  if (bw_picture_panel_update_empty (self->panel, self->document, &lack))
    {
      bw_picture_panel_show (self->panel, NULL, NULL);
      return;
    }
  update_polarities (self, raster);
  update_controls (self, raster);
  if (!check (self, raster, &self->typed, &error))
    {
      show_trouble (self, error);
      return;
    }
  case_of (self, raster, &self->typed, &what, &afc);
  show_mix (self, &what, &afc);
}

/* Edits */

static gboolean
parse (BwSyncPanel *self, BwEditorRow *row, Typed *typed, GError **error)
{
  const BwRaster *raster = bw_document_selected_raster (self->document);
  g_autofree char *text = bw_editor_row_dup_text (row);
  return bw_field_parse (bw_editor_row_get_field (row), typed, text, bw_quantity_locale_mark (),
                         error)
         && (raster == NULL || check (self, raster, typed, error));
}

static void
on_edited (BwSyncPanel *self, BwEditorRow *row)
{
  Typed typed = self->typed;
  g_autoptr (GError) error = NULL;

  if (!parse (self, row, &typed, &error))
    {
      bw_editor_row_set_error (row, error->message);
      return;
    }
  self->typed = typed;
  bw_editor_row_show_object (row, &self->typed);
  update (self);
}

/* Widget */

static void
bw_sync_panel_dispose (GObject *object)
{
  BwSyncPanel *self = BW_SYNC_PANEL (object);
  GtkWidget *panel = GTK_WIDGET (self->panel);

  g_clear_object (&self->document);
  g_clear_pointer (&panel, gtk_widget_unparent);
  self->panel = NULL;
  G_OBJECT_CLASS (bw_sync_panel_parent_class)->dispose (object);
}

static void
bw_sync_panel_class_init (BwSyncPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_sync_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static BwChooser *
add_chooser (BwSyncPanel *self, GtkWidget *box, const char *name, const char *label,
             const BwKindTable *table)
{
  BwChooser *chooser = bw_chooser_new (name, label);
  if (table != NULL)
    bw_chooser_set_kinds (chooser, table, BW_BIT (table->n) - 1);
  g_signal_connect_object (chooser, "chosen", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (box, GTK_WIDGET (chooser));
  return chooser;
}

static void
add_row (BwSyncPanel *self, GtkWidget *box, TypedKind kind)
{
  BwEditorRow *row = bw_entry_row_new (&fields[kind]);
  GtkEditable *entry = GTK_EDITABLE (bw_editor_row_get_control (row));

  gtk_widget_set_name (GTK_WIDGET (entry), fields[kind].key);
  gtk_editable_set_width_chars (entry, 8);
  gtk_editable_set_max_width_chars (entry, 8);
  gtk_widget_set_tooltip_text (GTK_WIDGET (entry), _ (tooltips[kind]));
  g_signal_connect_object (row, "edited", G_CALLBACK (on_edited), self, G_CONNECT_SWAPPED);
  bw_editor_row_show_object (row, &self->typed);
  bw_wrap_box_append (box, GTK_WIDGET (row));
  self->rows[kind] = row;
}

static void
fill_gates (BwSyncPanel *self)
{
  for (guint gate = 0; gate < BW_N_SYNC_GATES; gate++)
    bw_chooser_add (self->gate, gate,
                    gate == BW_SYNC_GATE_STANDARD ? _ ("none: the raster's own")
                                                  : bw_kind_label (&bw_sync_gates, gate));
}

static void
add_controls (BwSyncPanel *self)
{
  GtkWidget *box = bw_wrap_box_new ();

  self->gate = add_chooser (self, box, "gate", _ ("_Gate"), NULL);
  fill_gates (self);
  self->field = add_chooser (self, box, "field-number", _ ("F_ield"), NULL);
  bw_chooser_add (self->field, 0, "1");
  bw_chooser_add (self->field, 1, "2");
  self->polarity[0] = add_chooser (self, box, "h-polarity", _ ("_H"), &bw_polarities);
  self->polarity[1] = add_chooser (self, box, "v-polarity", _ ("_V"), &bw_polarities);
  add_row (self, box, TYPED_OFFSET);
  self->loop = add_chooser (self, box, "loop", _ ("_AFC"), &bw_afc_loops);
  bw_chooser_choose (self->loop, BW_AFC_LOOP_SECOND);
  add_row (self, box, TYPED_TIME_CONSTANT);
  add_row (self, box, TYPED_RATE_ERROR);
  bw_picture_panel_add_control (self->panel, box);
}

static void
add_says (BwSyncPanel *self)
{
  GtkWidget *says = gtk_label_new (NULL);

  self->says = GTK_LABEL (says);
  gtk_widget_set_name (says, "sync-says");
  gtk_label_set_xalign (self->says, 0);
  gtk_label_set_wrap (self->says, TRUE);
  gtk_label_set_wrap_mode (self->says, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (self->says, 44);
  gtk_label_set_selectable (self->says, TRUE);
  bw_picture_panel_add_side (self->panel, says);
}

/* The AFC as bw_sync_afc_init() has it, whatever the raster. */
static void
init_typed (Typed *typed)
{
  const BwRaster any = { .line_rate_hz = bw_system_facts (BW_SYSTEM_PAL_B)->line_rate_hz };
  BwSyncAfc afc;

  bw_sync_afc_init (&afc, &any);
  *typed = (Typed){ 0, afc.time_constant_lines, afc.rate_error };
}

static void
bw_sync_panel_init (BwSyncPanel *self)
{
  self->source = BW_NO_INDEX;
  init_typed (&self->typed);
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  add_controls (self);
  add_says (self);
  gtk_widget_set_parent (GTK_WIDGET (self->panel), GTK_WIDGET (self));
}

/**
 * bw_sync_panel_set_document:
 * @document: what to show; to be set once
 */
void
bw_sync_panel_set_document (BwSyncPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  bw_document_follow (document, G_CALLBACK (update), self);
  update (self);
}

/**
 * bw_sync_panel_get_panel:
 *
 * Returns: (transfer none): the drawing with its controls
 */
BwPicturePanel *
bw_sync_panel_get_panel (BwSyncPanel *self)
{
  return self->panel;
}

/**
 * bw_sync_panel_get_row:
 * @key: "offset", "time-constant" or "rate-error"
 *
 * Returns: (transfer none) (nullable): its field
 */
BwEditorRow *
bw_sync_panel_get_row (BwSyncPanel *self, const char *key)
{
  for (TypedKind kind = 0; kind < N_TYPED; kind++)
    if (strcmp (fields[kind].key, key) == 0)
      return self->rows[kind];
  return NULL;
}

/**
 * bw_sync_panel_get_says:
 *
 * Returns: (transfer none): what the mixture is good for
 */
const char *
bw_sync_panel_get_says (BwSyncPanel *self)
{
  return gtk_label_get_label (self->says);
}
