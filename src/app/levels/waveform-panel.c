/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "waveform-panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/bench/bench-signal.h"
#include "app/widgets/chooser.h"
#include "app/widgets/wrap-layout.h"
#include "core/signal/results.h"
#include "draw/levels/view.h"
#include "draw/vector/view.h"

/* Indices and values of choosers. */
typedef struct
{
  guint source;
  guint input;
  guint content;
  guint sync;
} Choice;

/**
 * BwWaveformPanel:
 *
 * What the selected source puts on each conductor at the selected input: a test signal drawn, with
 * the load that hangs there, and its levels in figures.
 */
struct _BwWaveformPanel
{
  GtkWidget parent_instance;

  BwPicturePanel *panel; /* the only child; those below are borrowed and in it */
  BwChooser *content;
  BwChooser *sync;
  BwChooser *load;
  BwChooser *frame;
  BwEditorRow *line_row;
  BwEditorRow *capacitor_row;

  BwDocument *document;
  GPtrArray *limits;    /* of BwStandardLimits */
  BwLevelsModel *model; /* nullable */
  Choice choice;        /* that @model was made for */
  guint source;         /* that @sync was chosen for; likewise @input */
  guint input;
  gboolean sync_chosen; /* by the person */
  int line;             /* zero: one of the picture */
  double capacitor_f;   /* that couples the signal; zero: none */
  gboolean stale;       /* something has changed while nothing was seen */
};

G_DEFINE_FINAL_TYPE (BwWaveformPanel, bw_waveform_panel, GTK_TYPE_WIDGET)

/* More frames than these are not offered one by one: in SECAM the colour repeats after six. */
#define MOST_FRAMES 12

typedef enum
{
  SHOW_BARS_75,
  SHOW_BARS_100,
  SHOW_BARS_EBU,
  SHOW_OTHER /* less this and bars: a BwContent */
} ShownSignal;

static const struct
{
  const char *id;
  const char *label;
  const char *tooltip;
} views[] = {
  { "line", N_ ("Line"), N_ ("One Line on Each Conductor") },
  { "field", N_ ("Field"), N_ ("One Field on Each Conductor") },
  { "vectors", N_ ("Vectors"), N_ ("The Colour Difference Signals in a Plane") },
};

static const BwField line_field = {
  .key = "line", .label = N_ ("Line"), .type = BW_FIELD_TEXT
};

static const BwField capacitor_field = {
  .key = "capacitor",
  .label = N_ ("Capacitor"),
  .type = BW_FIELD_QUANTITY,
  .dimension = BW_DIMENSION_CAPACITANCE,
  .flags = BW_FIELD_UNKNOWN,
  .offset = 0,
  .low = BW_CAPACITOR_MIN_F,
  .high = BW_CAPACITOR_MAX_F,
};

/* Model */

static void
case_of (BwWaveformPanel *self, const BwBenchSignal *signal, BwSynthesisCase *what)
{
  guint shown = bw_chooser_get (self->content);
  static const BwBarsForm forms[] = { [SHOW_BARS_75] = BW_BARS_75,
                                      [SHOW_BARS_100] = BW_BARS_100,
                                      [SHOW_BARS_EBU] = BW_BARS_75_WHITE_100 };
  gboolean bars = shown < SHOW_OTHER;

  *what = (BwSynthesisCase){
    .raster = signal->raster,
    .content = bars ? BW_CONTENT_BARS : (BwContent) (shown - SHOW_OTHER + 1),
    .bars = bars ? forms[shown] : BW_BARS_75,
    .rate_hz = BW_RATIO_NONE,
  };
  bw_bench_signal_form (signal, (BwSyncKind) bw_chooser_get (self->sync), &what->form);
}

/* What the person has chosen that a model is made from; the rest of it is in the sheet. */
static Choice
choice_of (BwWaveformPanel *self)
{
  return (Choice){ .source = bw_document_get_source (self->document),
                   .input = bw_document_get_input (self->document),
                   .content = bw_chooser_get (self->content),
                   .sync = bw_chooser_get (self->sync) };
}

static gboolean
same_choice (const Choice *a, const Choice *b)
{
  return a->source == b->source && a->input == b->input && a->content == b->content
         && a->sync == b->sync;
}

/* A model is costly, and kept as long as neither the sheet nor the choice changes. */
static gboolean
update_model (BwWaveformPanel *self, const BwSynthesisCase *what, GError **error)
{
  const Choice choice = choice_of (self);

  if (self->model != NULL && same_choice (&choice, &self->choice))
    return TRUE;
  g_clear_pointer (&self->model, bw_levels_model_unref);
  self->choice = choice;
  self->model = bw_levels_model_new (what, error);
  return self->model != NULL;
}

/* Controls */

static void
update_sync (BwWaveformPanel *self, const BwBenchSignal *signal)
{
  guint source = bw_document_get_source (self->document);
  guint input = bw_document_get_input (self->document);

  self->sync_chosen &= source == self->source && input == self->input;
  self->source = source;
  self->input = input;
  bw_chooser_set_kinds (self->sync, &bw_sync_kinds, signal->syncs);
  if (!self->sync_chosen)
    bw_chooser_choose (self->sync, signal->usual);
}

static gboolean
shows_field (BwWaveformPanel *self)
{
  return g_str_equal (bw_picture_panel_get_view (self->panel), "field");
}

/* Where the person has chosen none: a line of the picture, and a field from the first line on. */
static int
line_shown (BwWaveformPanel *self)
{
  int lines = bw_synthesis_lines (bw_levels_model_synthesis (self->model));
  if (self->line > 0 && self->line <= lines)
    return self->line;
  return shows_field (self) ? 1 : bw_levels_model_picture_line (self->model);
}

static void
update_line (BwWaveformPanel *self)
{
  g_autofree char *text = g_strdup_printf ("%d", line_shown (self));
  if (bw_editor_row_get_error (self->line_row) == NULL)
    bw_editor_row_show_text (self->line_row, text);
}

static void
update_frames (BwWaveformPanel *self)
{
  int frames = bw_synthesis_colour_frames (bw_levels_model_synthesis (self->model));
  guint few = frames > 1 && frames <= MOST_FRAMES ? (guint) frames : 0;

  gtk_widget_set_visible (GTK_WIDGET (self->frame), few > 0);
  if (bw_chooser_get_n (self->frame) == few)
    return;
  bw_chooser_clear (self->frame);
  for (guint i = 0; i < few; i++)
    {
      /* Translators: which frame of how many. */
      g_autofree char *words = g_strdup_printf (_ ("%1$u of %2$u"), i + 1, few);
      bw_chooser_add (self->frame, i, words);
    }
}

static const char *
why_no_vectors (const BwWireForm *form)
{
  if (bw_system_facts (form->system)->chroma == BW_CHROMA_SEQUENTIAL)
    return _ ("No vectors: the subcarrier of SECAM is modulated in frequency");
  if (form->signal == BW_SIGNAL_RGB)
    return _ ("No vectors: RGB carries no colour difference signals");
  return _ ("No vectors: this signal carries no colour");
}

/* Without colour difference signals there are no vectors, and the line is shown. */
static void
update_vectors (BwWaveformPanel *self, const BwWireForm *form)
{
  gboolean can = bw_vector_view_can_draw (form);

  bw_picture_panel_allow_view (self->panel, "vectors", can,
                               can ? _ (views[2].tooltip) : why_no_vectors (form));
  if (!can && g_str_equal (bw_picture_panel_get_view (self->panel), "vectors"))
    bw_picture_panel_choose (self->panel, "line");
}

/* Showing */

/* What is drawn. */
typedef struct
{
  BwLevelsModel *model;
  GPtrArray *limits; /* that @levels has one of */
  gboolean vectors;  /* not levels */
  BwLevelsView levels;
} Shown;

static void
shown_free (gpointer data)
{
  Shown *shown = data;
  bw_levels_model_unref (shown->model);
  g_ptr_array_unref (shown->limits);
  g_free (shown);
}

static BwDrawing *
build (gpointer data, double width, double height, const BwInk *ink, const BwZoom *zoom)
{
  const Shown *shown = data;
  BwLevelsView levels = shown->levels;
  const BwVectorView vectors = { .model = levels.model,
                                 .frame = levels.frame,
                                 .line = levels.line,
                                 .video = levels.video,
                                 .mark = levels.mark };

  if (shown->vectors)
    return bw_vector_drawing (&vectors, width, height, ink);
  levels.across = zoom != NULL ? &zoom->across : NULL;
  return bw_levels_drawing (&levels, width, height, ink);
}

static const BwPictureSource shown_source = { .build = build,
                                              .free = shown_free,
                                              .keeps_zoom = TRUE };

static Shown *
shown_new (BwWaveformPanel *self, const BwBenchSignal *signal, const BwLevelsLoad *video,
           const BwLevelsLoad *own_sync)
{
  guint frame = bw_chooser_get (self->frame);
  Shown *shown = g_new (Shown, 1);

  *shown = (Shown){
    .model = bw_levels_model_ref (self->model),
    .limits = g_ptr_array_ref (self->limits),
    .vectors = g_str_equal (bw_picture_panel_get_view (self->panel), "vectors"),
    .levels = { .model = self->model,
                .span = shows_field (self) ? BW_LEVELS_FIELD : BW_LEVELS_LINE,
                .frame = frame < MOST_FRAMES ? frame : 0,
                .line = line_shown (self),
                .limits = bw_bench_signal_limits (signal, self->limits),
                .video = *video,
                .own_sync = *own_sync,
                .mark = bw_quantity_locale_mark () },
  };
  return shown;
}

static void
show_figures (BwWaveformPanel *self, const BwBenchSignal *signal, const BwSynthesisCase *what,
              const BwLevelsLoad *video, const BwLevelsLoad *own_sync)
{
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  BwLevelsHere here = {
    .load_ohm = video->load_ohm,
    .gain = bw_levels_gain (video),
    .sync_load_ohm = own_sync->load_ohm,
    .sync_gain = bw_levels_gain (own_sync),
    .bars = what->content == BW_CONTENT_BARS ? what->bars : BW_N_BARS_FORMS,
    .limits = bw_bench_signal_limits (signal, self->limits),
    .coupling = { .farad = self->capacitor_f,
                  .loop_ohm = signal->source->source_ohm + video->load_ohm },
  };

  bw_picture_time (signal->raster, &here.coupling.time);
  bw_wire_say (bw_result_root (result), &what->form, &here);
  bw_picture_panel_show_result (self->panel, result);
}

/* There is no such signal: says why, where the drawing would be named. */
static void
show_trouble (BwWaveformPanel *self, const char *title, const GError *error)
{
  g_autofree char *says = g_strdup_printf (_ ("%1$s cannot be drawn: %2$s"), title, error->message);
  bw_picture_panel_set_title (self->panel, says);
  bw_picture_panel_show (self->panel, NULL, NULL);
}

static void
show_signal (BwWaveformPanel *self, const BwBenchSignal *signal)
{
  BwSynthesisCase what;
  BwLevelsLoad video, own_sync;
  g_autoptr (GError) error = NULL;

  update_sync (self, signal);
  case_of (self, signal, &what);
  bw_bench_signal_loads (signal, (BwTerminators) bw_chooser_get (self->load), &video, &own_sync);
  show_figures (self, signal, &what, &video, &own_sync);
  update_vectors (self, &what.form);
  g_autofree char *title = bw_bench_signal_title (signal, &what.form);
  if (!update_model (self, &what, &error))
    {
      show_trouble (self, title, error);
      return;
    }
  bw_levels_model_set_coupling (self->model, self->capacitor_f,
                                signal->source->source_ohm + video.load_ohm);
  update_line (self);
  update_frames (self);
  bw_picture_panel_set_title (self->panel, title);
  bw_picture_panel_show (self->panel, &shown_source, shown_new (self, signal, &video, &own_sync));
}

static void
update (BwWaveformPanel *self)
{
  BwBenchSignal signal;
  gboolean there = bw_bench_signal_init (&signal, self->document);

  bw_picture_panel_update_empty (self->panel, self->document, &signal.lack);
  self->stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->stale)
    return;
  if (there)
    show_signal (self, &signal);
  else
    bw_picture_panel_show (self->panel, NULL, NULL);
}

/* The sheet has changed, so the model made of it does not hold any more. */
static void
on_sheet (BwWaveformPanel *self)
{
  g_clear_pointer (&self->model, bw_levels_model_unref);
  update (self);
}

static void
on_view (BwWaveformPanel *self)
{
  if (self->document != NULL)
    update (self);
}

static void
on_sync (BwWaveformPanel *self)
{
  self->sync_chosen = TRUE;
  update (self);
}

/* A number of a line; nothing: one of the picture. */
static void
on_line (BwWaveformPanel *self)
{
  g_autofree char *text = g_strstrip (bw_editor_row_dup_text (self->line_row));
  gint64 line = 0;

  if (self->model == NULL)
    return;
  int lines = bw_synthesis_lines (bw_levels_model_synthesis (self->model));
  if (*text != '\0' && !g_ascii_string_to_signed (text, 10, 1, lines, &line, NULL))
    {
      g_autofree char *says = g_strdup_printf (_ ("lines are numbered 1 to %d"), lines);
      bw_editor_row_set_error (self->line_row, says);
      return;
    }
  self->line = (int) line;
  bw_editor_row_set_error (self->line_row, NULL);
  update (self);
}

static void
on_capacitor (BwWaveformPanel *self)
{
  g_autofree char *text = bw_editor_row_dup_text (self->capacitor_row);
  g_autoptr (GError) error = NULL;
  double farad = self->capacitor_f;

  if (!bw_field_parse (&capacitor_field, &farad, text, bw_quantity_locale_mark (), &error))
    {
      bw_editor_row_set_error (self->capacitor_row, error->message);
      return;
    }
  bw_editor_row_set_error (self->capacitor_row, NULL);
  self->capacitor_f = farad;
  bw_editor_row_show_object (self->capacitor_row, &self->capacitor_f);
  update (self);
}

/* Widget */

static void
bw_waveform_panel_map (GtkWidget *widget)
{
  BwWaveformPanel *self = BW_WAVEFORM_PANEL (widget);
  GTK_WIDGET_CLASS (bw_waveform_panel_parent_class)->map (widget);
  if (self->stale && self->document != NULL)
    update (self);
}

static void
bw_waveform_panel_dispose (GObject *object)
{
  BwWaveformPanel *self = BW_WAVEFORM_PANEL (object);
  GtkWidget *panel = GTK_WIDGET (self->panel);

  g_clear_object (&self->document);
  g_clear_pointer (&panel, gtk_widget_unparent);
  self->panel = NULL;
  G_OBJECT_CLASS (bw_waveform_panel_parent_class)->dispose (object);
}

static void
bw_waveform_panel_finalize (GObject *object)
{
  BwWaveformPanel *self = BW_WAVEFORM_PANEL (object);

  g_ptr_array_unref (self->limits);
  g_clear_pointer (&self->model, bw_levels_model_unref);
  G_OBJECT_CLASS (bw_waveform_panel_parent_class)->finalize (object);
}

static void
bw_waveform_panel_class_init (BwWaveformPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_waveform_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_waveform_panel_finalize;
  GTK_WIDGET_CLASS (klass)->map = bw_waveform_panel_map;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static BwChooser *
add_chooser (BwWaveformPanel *self, GtkWidget *box, const char *name, const char *label,
             GCallback chosen)
{
  BwChooser *chooser = bw_chooser_new (name, label);
  g_signal_connect_object (chooser, "chosen", chosen, self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (box, GTK_WIDGET (chooser));
  return chooser;
}

static void
fill_content (BwWaveformPanel *self)
{
  bw_chooser_add (self->content, SHOW_BARS_75, _ ("bars 75\u00a0%"));
  bw_chooser_add (self->content, SHOW_BARS_100, _ ("bars 100\u00a0%"));
  bw_chooser_add (self->content, SHOW_BARS_EBU, _ ("EBU bars"));
  for (guint content = 1; content < BW_N_CONTENTS; content++)
    bw_chooser_add (self->content, SHOW_OTHER + content - 1, bw_kind_label (&bw_contents, content));
}

static BwEditorRow *
add_entry (BwWaveformPanel *self, GtkWidget *box, const BwField *field, int chars,
           const char *tooltip, GCallback edited)
{
  BwEditorRow *row = bw_entry_row_new (field);
  GtkWidget *entry = bw_editor_row_get_control (row);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), chars);
  gtk_widget_set_tooltip_text (entry, tooltip);
  g_signal_connect_object (row, "edited", edited, self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (box, GTK_WIDGET (row));
  return row;
}

static void
add_controls (BwWaveformPanel *self)
{
  GtkWidget *box = bw_wrap_box_new ();
  GCallback changed = G_CALLBACK (update);

  self->content = add_chooser (self, box, "content", _ ("Si_gnal"), changed);
  fill_content (self);
  self->sync = add_chooser (self, box, "sync", _ ("S_ync"), G_CALLBACK (on_sync));
  self->load = add_chooser (self, box, "load", _ ("_Load"), changed);
  bw_chooser_set_kinds (self->load, &bw_terminators, BW_BIT (BW_N_TERMINATORS) - 1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->load),
                               _ ("What hangs at the end of each conductor; “as set”: as the "
                                  "input's own switch and loop-through are"));
  self->line_row = add_entry (self, box, &line_field, 5,
                              _ ("As the standard numbers the lines; empty: one of the picture, or "
                                 "the first of a field"),
                              G_CALLBACK (on_line));
  gtk_widget_set_name (bw_editor_row_get_control (self->line_row), "line-number");
  self->frame = add_chooser (self, box, "frame", _ ("Fra_me"), changed);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->frame),
                               _ ("Of the sequence after which the colour repeats"));
  self->capacitor_row
      = add_entry (self, box, &capacitor_field, 8,
                   _ ("In series with the signal, such as 220\u00a0µF: its corner and the tilt "
                      "that it gives are shown with the levels and drawn; empty: none"),
                   G_CALLBACK (on_capacitor));
  gtk_widget_set_name (bw_editor_row_get_control (self->capacitor_row), "capacitor");
  bw_picture_panel_add_control (self->panel, box);
}

static void
bw_waveform_panel_init (BwWaveformPanel *self)
{
  self->limits = bw_limits_shipped ();
  self->source = self->input = BW_NO_INDEX;
  self->stale = TRUE;
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    bw_picture_panel_add_view (self->panel, views[i].id, _ (views[i].label), _ (views[i].tooltip));
  add_controls (self);
  g_signal_connect_object (self->panel, "view", G_CALLBACK (on_view), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (GTK_WIDGET (self->panel), GTK_WIDGET (self));
}

/**
 * bw_waveform_panel_set_document:
 * @document: what to show; to be set once
 */
void
bw_waveform_panel_set_document (BwWaveformPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_sheet), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_waveform_panel_get_panel:
 *
 * Returns: (transfer none): the drawing with its controls
 */
BwPicturePanel *
bw_waveform_panel_get_panel (BwWaveformPanel *self)
{
  return self->panel;
}

/**
 * bw_waveform_panel_get_line_row:
 *
 * Returns: (transfer none): the field for the number of the line
 */
BwEditorRow *
bw_waveform_panel_get_line_row (BwWaveformPanel *self)
{
  return self->line_row;
}
