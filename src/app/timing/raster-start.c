/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-start.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "core/bench/tube-raster.h"
#include "core/interchange/interchange.h"
#include "core/raster/standards.h"

/* What is asked for; each kind uses some of it. */
typedef struct
{
  guint formula;
  int width;
  int height;
  BwRatio field_rate_hz;
  gboolean interlaced;
  gboolean margins;
  gboolean overscan;
  char *modeline;
} Request;

enum
{
  FORMULA_CVT,
  FORMULA_CVT_REDUCED,
  FORMULA_GTF
};

static const BwKind formulas[] = {
  [FORMULA_CVT] = { "cvt", N_ ("CVT") },
  [FORMULA_CVT_REDUCED] = { "cvt-reduced", N_ ("CVT, reduced blanking") },
  [FORMULA_GTF] = { "gtf", N_ ("GTF") },
};
static const BwKindTable formula_kinds = { G_N_ELEMENTS (formulas), formulas };

#define AT(member) .offset = G_STRUCT_OFFSET (Request, member)
#define SIZE(name, label_, member, least)                                                         \
  { .key = name, .label = label_, .type = BW_FIELD_COUNT, .flags = BW_FIELD_REQUIRED, \
    AT (member), .dimension = BW_DIMENSION_PIXELS, .low = least, .high = BW_FORMULA_SIZE_MAX }
#define RATE                                                                                      \
  { .key = "field_rate", .label = N_ ("Field rate"),                                              \
    .help = N_ ("Of a progressive raster its frame rate, such as 60 Hz"),                         \
    .type = BW_FIELD_RATE, .flags = BW_FIELD_REQUIRED, AT (field_rate_hz),                        \
    .dimension = BW_DIMENSION_FREQUENCY, .low = BW_FIELD_RATE_MIN_HZ,                             \
    .high = BW_FIELD_RATE_MAX_HZ, .unit = "Hz" }
#define INTERLACED                                                                                \
  { .key = "interlaced", .label = N_ ("Interlaced"), .type = BW_FIELD_SWITCH,         \
    AT (interlaced) }

static const BwField formula_fields[] = {
  { .key = "formula", .label = N_ ("Formula"), .type = BW_FIELD_CHOICE, AT (formula),
    .kinds = &formula_kinds },
  RATE,
  SIZE ("width", N_ ("Active pixels"), width, BW_FORMULA_SIZE_MIN),
  SIZE ("height", N_ ("Active lines of the frame"), height, BW_FORMULA_SIZE_MIN),
  INTERLACED,
  /* xgettext:no-c-format */
  { .key = "margins", .label = N_ ("Margins of 1.8 % on each side"),
    .type = BW_FIELD_SWITCH, AT (margins) },
};

static const BwField monitor_fields[] = {
  SIZE ("width", N_ ("Active pixels"), width, 16),
  SIZE ("height", N_ ("Active lines of the frame"), height, 16),
  RATE,
  INTERLACED,
  { .key = "overscan", .label = N_ ("Fill the whole scan, also behind the edge of the glass"),
    .type = BW_FIELD_SWITCH, AT (overscan) },
};

static const BwField modeline_fields[] = {
  { .key = "modeline", .label = N_ ("Mode line"),
    .help = N_ ("As xorg.conf writes it: a name in quotation marks, the pixel clock in MHz, four "
                "numbers across, four down, flags"),
    .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED, AT (modeline) },
};

static const struct
{
  BwFieldTable table;
  guint columns;
  const char *says;
  const char *make;
} kinds[] = {
  [BW_START_FORMULA] = { { G_N_ELEMENTS (formula_fields), formula_fields }, 2,
                         N_ ("A raster that the formulas of VESA give."), N_ ("_Compute") },
  [BW_START_MONITOR] = { { G_N_ELEMENTS (monitor_fields), monitor_fields }, 2,
                         N_ ("A raster for the tube on the bench: that of a standard where its bands "
                             "hold one, else the lowest line rate that holds. The selected input's "
                             "rates and clamp are kept to, and what the selected source's clock "
                             "can do."),
                         N_ ("_Find") },
  [BW_START_MODELINE] = { { G_N_ELEMENTS (modeline_fields), modeline_fields }, 1,
                          N_ ("A raster as computers give it."), N_ ("_Read") },
};

/**
 * BwRasterStart:
 *
 * A popover that asks for a raster and makes it.
 */
struct _BwRasterStart
{
  GtkPopover parent_instance;

  BwStartKind kind;
  Request request;
  BwForm *form;    /* borrowed; a child */
  GtkLabel *fault;

  BwDocument *document;
};

G_DEFINE_FINAL_TYPE (BwRasterStart, bw_raster_start, GTK_TYPE_POPOVER)

enum
{
  MADE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static BwRaster *
compute (const Request *asked, GError **error)
{
  const BwFormulaRequest request = {
    .width = asked->width,
    .height = asked->height,
    .field_rate_hz = asked->field_rate_hz,
    .interlaced = asked->interlaced,
    .margins = asked->margins,
    .reduced = asked->formula == FORMULA_CVT_REDUCED,
  };
  return asked->formula == FORMULA_GTF ? bw_standards_gtf (&request, error)
                                       : bw_standards_cvt (&request, error);
}

/* What the selected source and input add to what is asked for. */
static void
add_selected (BwDocument *document, BwTubeRequest *request)
{
  const BwSheet *sheet = bw_document_get_sheet (document);
  guint source = bw_document_get_source (document), input = bw_document_get_input (document);

  if (source != BW_NO_INDEX)
    request->clock = bw_clock_reach_of (bw_sheet_source (sheet, source));
  if (input != BW_NO_INDEX)
    request->input = bw_monitor_input (sheet->monitor, input);
}

static GPtrArray *
find_for_monitor (BwRasterStart *self, GError **error)
{
  const Request *asked = &self->request;
  const BwSheet *sheet = bw_document_get_sheet (self->document);
  BwTubeRequest request = {
    .width = asked->width,
    .height = asked->height,
    .field_rate_hz = asked->field_rate_hz,
    .interlaced = asked->interlaced,
    .overscan = asked->overscan,
    .catalogue = bw_document_get_catalogue (self->document),
  };
  add_selected (self->document, &request);
  return bw_tube_rasters (&request, sheet->monitor, &sheet->limits, error);
}

/* @raster: (transfer full) (nullable) */
static GPtrArray *
only (BwRaster *raster)
{
  if (raster == NULL)
    return NULL;
  GPtrArray *answers = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_tube_answer_free);
  BwTubeAnswer *answer = g_new0 (BwTubeAnswer, 1);
  answer->raster = raster;
  g_ptr_array_add (answers, answer);
  return answers;
}

static GPtrArray *
make (BwRasterStart *self, GError **error)
{
  switch (self->kind)
    {
    case BW_START_MONITOR:
      return find_for_monitor (self, error);
    case BW_START_MODELINE:
      return only (bw_modeline_parse (self->request.modeline, error));
    case BW_START_FORMULA:
    default:
      return only (compute (&self->request, error));
    }
}

/* A fault of a mode line belongs to its field, another one to all fields together. */
static void
show_fault (BwRasterStart *self, const char *message)
{
  gboolean below = message != NULL && self->kind != BW_START_MODELINE;

  if (self->kind == BW_START_MODELINE)
    bw_editor_row_set_error (bw_form_get_row (self->form, "modeline"), message);
  gtk_label_set_label (self->fault, below ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault), below);
}

/**
 * bw_raster_start_make:
 *
 * Makes what is asked for, tells it and closes; or says what is wrong and stays.
 */
void
bw_raster_start_make (BwRasterStart *self)
{
  g_autoptr (GError) error = NULL;

  show_fault (self, NULL);
  if (!bw_form_take (self->form))
    return;
  g_autoptr (GPtrArray) answers = make (self, &error);
  if (answers == NULL)
    {
      show_fault (self, error->message);
      return;
    }
  gtk_popover_popdown (GTK_POPOVER (self));
  g_signal_emit (self, signals[MADE], 0, answers);
}

static void
bw_raster_start_dispose (GObject *object)
{
  g_clear_object (&BW_RASTER_START (object)->document);
  G_OBJECT_CLASS (bw_raster_start_parent_class)->dispose (object);
}

static void
bw_raster_start_finalize (GObject *object)
{
  g_free (BW_RASTER_START (object)->request.modeline);
  G_OBJECT_CLASS (bw_raster_start_parent_class)->finalize (object);
}

static void
bw_raster_start_class_init (BwRasterStartClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_raster_start_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_raster_start_finalize;

  /* BwRasterStart::made: the rasters that do what was asked for, the best first: a GPtrArray of
   * BwTubeAnswer, borrowed. Those that were not made for a monitor have no sentences. */
  signals[MADE] = g_signal_new ("made", BW_TYPE_RASTER_START, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_PTR_ARRAY);
}

static GtkWidget *
words_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 46);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 46);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
bw_raster_start_init (BwRasterStart *self)
{
  self->request = (Request){ .width = 640, .height = 480, .field_rate_hz = { 60, 1 },
                             .modeline = g_strdup ("") };
}

static void
fill (BwRasterStart *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *button = bw_button_new (_ (kinds[self->kind].make));
  GtkWidget *fault = words_new (NULL, "bw-field-error");

  self->form = g_object_new (BW_TYPE_FORM, NULL);
  self->fault = GTK_LABEL (fault);
  g_object_set (gtk_widget_get_layout_manager (GTK_WIDGET (self->form)), "most",
                kinds[self->kind].columns, NULL);
  bw_form_build (self->form, &kinds[self->kind].table, &self->request);
  gtk_widget_set_visible (fault, FALSE);
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  gtk_widget_add_css_class (button, "suggested-action");
  g_signal_connect_object (button, "clicked", G_CALLBACK (bw_raster_start_make), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), words_new (_ (kinds[self->kind].says), "bw-light"));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->form));
  gtk_box_append (GTK_BOX (box), fault);
  gtk_box_append (GTK_BOX (box), button);
  gtk_widget_add_css_class (box, "bw-start");
  gtk_popover_set_child (GTK_POPOVER (self), box);
}

/**
 * bw_raster_start_new:
 * @document: for its monitor
 *
 * Returns: (transfer floating): a popover that makes rasters
 */
BwRasterStart *
bw_raster_start_new (BwStartKind kind, BwDocument *document)
{
  BwRasterStart *self = g_object_new (BW_TYPE_RASTER_START, NULL);
  self->kind = kind;
  self->document = g_object_ref (document);
  fill (self);
  return self;
}

/**
 * bw_raster_start_get_form:
 *
 * Returns: (transfer none): the fields
 */
BwForm *
bw_raster_start_get_form (BwRasterStart *self)
{
  return self->form;
}

/**
 * bw_raster_start_get_fault:
 *
 * Returns: (transfer none): why what was asked for cannot be had, or empty
 */
const char *
bw_raster_start_get_fault (BwRasterStart *self)
{
  return gtk_label_get_label (self->fault);
}
