/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "identify-panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/columns-layout.h"
#include "app/widgets/reading-box.h"
#include "app/widgets/result-view.h"
#include "app/widgets/template.h"
#include "core/bench/results.h"

/* What the person read. The kinds count from 1 on; 0 stands for one that was not looked at. */
typedef struct
{
  double line_rate_hz;
  double field_rate_hz;
  double line_rate_half_digit_hz;
  double field_rate_half_digit_hz;
  double lines_per_field;
  double line_sync_s;
  double field_sync_lines;
  guint scan;
  guint shape;
} Reading;

static const BwKind scan_kinds[] = {
  { "not-seen", N_ ("not seen") },
  [1 + BW_SCAN_PROGRESSIVE] = { "progressive", N_ ("progressive") },
  [1 + BW_SCAN_INTERLACED] = { "interlaced", N_ ("interlaced") },
};
static const BwKindTable scans = { G_N_ELEMENTS (scan_kinds), scan_kinds };

static const BwKind shape_kinds[] = {
  { "not-seen", N_ ("not seen") },
  [1 + BW_SHAPE_BILEVEL] = { "bi-level", N_ ("bi-level") },
  [1 + BW_SHAPE_TRILEVEL] = { "tri-level", N_ ("tri-level") },
};
static const BwKindTable shapes = { G_N_ELEMENTS (shape_kinds), shape_kinds };

#define AT(member) .offset = G_STRUCT_OFFSET (Reading, member)
#define QUANTITY(name, label_, help_, member, kind, least, most, unit_)                            \
  {                                                                                                \
    .key = name, .label = label_, .help = help_, .type = BW_FIELD_QUANTITY,                        \
    .flags = BW_FIELD_UNKNOWN, AT (member), .dimension = BW_DIMENSION_##kind, .low = least,        \
    .high = most, .unit = unit_                                                                    \
  }
#define RATE(name, label_, help_, member, half_digit, least, most, unit_)                          \
  {                                                                                                \
    .key = name, .label = label_, .help = help_, .type = BW_FIELD_QUANTITY,                        \
    .flags = BW_FIELD_UNKNOWN, AT (member), .dimension = BW_DIMENSION_FREQUENCY, .low = least,     \
    .high = most, .unit = unit_, .half_digit_offset = G_STRUCT_OFFSET (Reading, half_digit)        \
  }
#define CHOICE(name, label_, help_, member, table)                                                 \
  {                                                                                                \
    .key = name, .label = label_, .help = help_, .type = BW_FIELD_CHOICE, AT (member),             \
    .kinds = &table                                                                                \
  }

static const BwField fields[] = {
  RATE ("line_rate", N_ ("Line rate"),
        N_ ("by the counter, with as many digits as it shows, such as 15.734 kHz"), line_rate_hz,
        line_rate_half_digit_hz, BW_LINE_RATE_MIN_HZ, BW_LINE_RATE_MAX_HZ, "kHz"),
  RATE ("field_rate", N_ ("Field rate"),
        N_ ("by the counter, with as many digits as it shows, such as 59.94 Hz"), field_rate_hz,
        field_rate_half_digit_hz, BW_FIELD_RATE_MIN_HZ, BW_FIELD_RATE_MAX_HZ, "Hz"),
  QUANTITY ("lines_per_field", N_ ("Lines of a field"), N_ ("else they follow from the two rates"),
            lines_per_field, LINES, 1, 10000, NULL),
  QUANTITY ("line_sync", N_ ("Line sync"), N_ ("its width on the scope"), line_sync_s, TIME, 1e-9,
            1e-3, "us"),
  QUANTITY ("field_sync", N_ ("Field sync"), N_ ("its length, such as 3 lines"), field_sync_lines,
            LINES, 0.5, 1000, NULL),
  CHOICE ("scan", N_ ("Scan"), N_ ("if it was seen"), scan, scans),
  CHOICE ("shape", N_ ("Shape of sync"), N_ ("if it was seen"), shape, shapes),
};
static const BwFieldTable field_table = { G_N_ELEMENTS (fields), fields };

#define MOST 12

/**
 * BwIdentifyPanel:
 *
 * From what a counter and a scope read, the rasters that it may be.
 */
struct _BwIdentifyPanel
{
  GtkWidget parent_instance;

  BwForm *form;
  GtkLabel *says;
  BwResultView *list;
  GtkWidget *use;

  Reading reading;
  double accuracy;    /* of the counter, as it was last taken */
  GArray *candidates; /* of BwCandidate */
  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwIdentifyPanel, bw_identify_panel, GTK_TYPE_WIDGET)

static const BwCandidate *
candidate (BwIdentifyPanel *self, guint rank)
{
  return &g_array_index (self->candidates, BwCandidate, rank);
}

/* @accuracy: of the counter; zero: not known */
static BwReadings
readings_of (const Reading *reading, double accuracy)
{
  const BwMeasured line = { reading->line_rate_hz, reading->line_rate_half_digit_hz };
  const BwMeasured field = { reading->field_rate_hz, reading->field_rate_half_digit_hz };

  return (BwReadings){
    .line_rate_hz = reading->line_rate_hz,
    .field_rate_hz = reading->field_rate_hz,
    .line_rate_uncertainty_hz = bw_measured_uncertainty (&line, accuracy),
    .field_rate_uncertainty_hz = bw_measured_uncertainty (&field, accuracy),
    .lines_per_field = reading->lines_per_field,
    .line_sync_s = reading->line_sync_s,
    .field_sync_lines = reading->field_sync_lines,
    .scan_known = reading->scan > 0,
    .scan = reading->scan > 0 ? reading->scan - 1 : 0,
    .shape_known = reading->shape > 0,
    .shape = reading->shape > 0 ? reading->shape - 1 : 0,
  };
}

static gboolean
has_rate (const BwReadings *readings)
{
  return readings->line_rate_hz > 0 || readings->field_rate_hz > 0;
}

static void
update_use (BwIdentifyPanel *self)
{
  gboolean chosen = bw_result_view_get_selected (self->list) != NULL;
  gboolean source = bw_document_get_source (self->document) != BW_NO_INDEX;
  gtk_widget_set_sensitive (self->use, chosen && source);
}

static void
show_nothing (BwIdentifyPanel *self)
{
  g_array_set_size (self->candidates, 0);
  bw_result_view_show (self->list, NULL);
  gtk_label_set_label (self->says,
                       _ ("Which raster is this? Enter the line rate and the field rate that a "
                          "counter reads, each with its unit; what a scope shows makes it surer."));
}

static void
show_candidates (BwIdentifyPanel *self, const BwReadings *readings)
{
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());

  g_array_unref (self->candidates);
  self->candidates = bw_identify (readings, bw_document_get_catalogue (self->document), MOST);
  bw_identify_say (bw_result_root (result), readings, self->candidates);
  gtk_label_set_label (self->says, bw_node_answer (bw_result_root (result)));
  bw_result_view_show_part (self->list, result, "candidates");
}

static void
update (BwIdentifyPanel *self)
{
  double accuracy
      = bw_sheet_accuracy (bw_document_get_sheet (self->document), BW_DIMENSION_FREQUENCY);
  BwReadings readings = readings_of (&self->reading, accuracy);
  self->accuracy = accuracy;

  if (has_rate (&readings))
    show_candidates (self, &readings);
  else
    show_nothing (self);
  update_use (self);
}

/* Another accuracy of the counter makes other candidates. */
static void
on_changed (BwIdentifyPanel *self)
{
  double accuracy
      = bw_sheet_accuracy (bw_document_get_sheet (self->document), BW_DIMENSION_FREQUENCY);
  if (fabs (accuracy - self->accuracy) > 0)
    update (self);
  else
    update_use (self);
}

static void
on_selected (BwIdentifyPanel *self)
{
  if (self->document != NULL)
    update_use (self);
}

static void
on_use (BwIdentifyPanel *self)
{
  const BwNode *row = bw_result_view_get_selected (self->list);
  guint source = bw_document_get_source (self->document);
  g_autoptr (GError) error = NULL;
  g_autofree char *says = NULL;

  if (row == NULL || source == BW_NO_INDEX)
    return;
  const BwRaster *raster = bw_catalogue_raster (bw_document_get_catalogue (self->document),
                                                bw_node_value (row, "id")->words);
  if (bw_document_use_raster (self->document, source, raster, &error))
    says = g_strdup_printf (_ ("%1$s now has the raster %2$s"),
                            bw_sheet_source (bw_document_get_sheet (self->document), source)->name,
                            raster->name);
  else
    says = g_strdup (error->message);
  gtk_label_set_label (self->says, says);
}

static void
on_clear (BwIdentifyPanel *self)
{
  self->reading = (Reading){ 0 };
  bw_form_refresh (self->form);
  update (self);
  gtk_widget_child_focus (GTK_WIDGET (self->form), GTK_DIR_TAB_FORWARD);
}

static void
bw_identify_panel_dispose (GObject *object)
{
  g_clear_object (&BW_IDENTIFY_PANEL (object)->document);
  bw_dispose_template (object, BW_TYPE_IDENTIFY_PANEL);
  G_OBJECT_CLASS (bw_identify_panel_parent_class)->dispose (object);
}

static void
bw_identify_panel_finalize (GObject *object)
{
  g_array_unref (BW_IDENTIFY_PANEL (object)->candidates);
  G_OBJECT_CLASS (bw_identify_panel_parent_class)->finalize (object);
}

static void
bw_identify_panel_class_init (BwIdentifyPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_identify_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_identify_panel_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/identify-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, BwIdentifyPanel, form);
  gtk_widget_class_bind_template_child (widget_class, BwIdentifyPanel, says);
  gtk_widget_class_bind_template_child (widget_class, BwIdentifyPanel, list);
  gtk_widget_class_bind_template_child (widget_class, BwIdentifyPanel, use);
  gtk_widget_class_bind_template_callback (widget_class, update);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_use);
  gtk_widget_class_bind_template_callback (widget_class, on_clear);
}

static void
bw_identify_panel_init (BwIdentifyPanel *self)
{
  g_type_ensure (BW_TYPE_FORM);
  g_type_ensure (BW_TYPE_READING_BOX);
  g_type_ensure (BW_TYPE_RESULT_VIEW);
  self->candidates = g_array_new (FALSE, FALSE, sizeof (BwCandidate));
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_name_buttons (GTK_WIDGET (self));
  bw_result_view_set_cards (self->list, TRUE);
  bw_result_view_set_selectable (self->list);
  bw_form_build (self->form, &field_table, &self->reading);
}

/**
 * bw_identify_panel_set_document:
 * @document: whose catalogue is searched, and whose selected source can take the raster; to be set
 *   once
 */
void
bw_identify_panel_set_document (BwIdentifyPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (update_use), self,
                           G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_identify_panel_get_form:
 *
 * Returns: (transfer none): the fields for the readings
 */
BwForm *
bw_identify_panel_get_form (BwIdentifyPanel *self)
{
  return self->form;
}

/**
 * bw_identify_panel_get_raster:
 * @rank: from 0, the likeliest
 *
 * Returns: (transfer none) (nullable): the candidate of that rank
 */
const BwRaster *
bw_identify_panel_get_raster (BwIdentifyPanel *self, guint rank)
{
  return rank < self->candidates->len ? candidate (self, rank)->raster : NULL;
}

/**
 * bw_identify_panel_get_says:
 *
 * Returns: (transfer none): the answer in words
 */
const char *
bw_identify_panel_get_says (BwIdentifyPanel *self)
{
  return gtk_label_get_label (self->says);
}
