/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "work-back-panel.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "core/base/caution.h"
#include "core/bench/source.h"
#include "core/circuit/drive.h"
#include "core/circuit/results.h"
#include "core/hookup/results.h"
#include "core/raster/results.h"

#define N_DROPS 3
#define N_DRIVERS 4

/* What is typed; zero: nothing. */
typedef struct
{
  BwSourceAsk source;
  BwDriverAsk driver;
  BwDrop drops[N_DROPS];
  BwNodeDriver drivers[N_DRIVERS];
  double node_load_ohm;
  double level_v;
  guint pin;
  double pin_v;
  double subcarrier_hz;
} Typed;

#define FIELD(name, label_, member, kind, least, most, flags_)                                     \
  {                                                                                                \
    .key = name, .label = label_, .type = BW_FIELD_QUANTITY, .flags = flags_,                      \
    .offset = G_STRUCT_OFFSET (Typed, member), .dimension = BW_DIMENSION_##kind, .low = least,     \
    .high = most                                                                                   \
  }
#define NEEDED(name, label_, member, kind, least, most)                                            \
  FIELD (name, label_, member, kind, least, most, BW_FIELD_UNKNOWN | BW_FIELD_REQUIRED)
#define OPEN(name, label_, member, kind, least, most)                                              \
  FIELD (name, label_, member, kind, least, most, BW_FIELD_UNKNOWN)
#define VOLTS(name, label_, member) NEEDED (name, label_, member, VOLTAGE, 1e-3, 100)
#define OHMS(name, label_, member) NEEDED (name, label_, member, RESISTANCE, 0.1, 10e6)

static const BwField source_fields[] = {
  VOLTS ("open", N_ ("Level without load"), source.open_v),
  VOLTS ("loaded", N_ ("Level with the load"), source.loaded_v),
  OHMS ("load", N_ ("Load"), source.load_ohm),
};

static const BwField driver_fields[] = {
  VOLTS ("level", N_ ("Level"), driver.level_v),
  OHMS ("behind", N_ ("Resistance before the load"), driver.series_ohm),
  OHMS ("load", N_ ("Load"), driver.load_ohm),
  OPEN ("wanted", N_ ("Level wanted"), driver.wanted_v, VOLTAGE, 1e-3, 100),
};

#define DROP(n, needed)                                                                            \
  needed ("before-" #n, N_ ("Before the resistor"), drops[n - 1].before_v, VOLTAGE, 1e-3, 100),    \
      needed ("after-" #n, N_ ("Behind it"), drops[n - 1].after_v, VOLTAGE, 1e-3, 100),            \
      needed ("resistor-" #n, N_ ("Resistor"), drops[n - 1].series_ohm, RESISTANCE, 0.1, 10e6)
static const BwField load_fields[] = { DROP (1, NEEDED), DROP (2, OPEN), DROP (3, OPEN) };

#define DRIVER(n, needed)                                                                          \
  needed ("voltage-" #n, N_ ("Driver high"), drivers[n - 1].open_v, VOLTAGE, 1e-3, 100),           \
      needed ("resistor-" #n, N_ ("Its resistor"), drivers[n - 1].ohm, RESISTANCE, 0.1, 10e6)
static const BwField node_fields[] = {
  DRIVER (1, NEEDED), DRIVER (2, NEEDED), DRIVER (3, OPEN), DRIVER (4, OPEN),
  OHMS ("load", N_ ("Load of the node"), node_load_ohm),
};

static const BwField level_fields[] = { VOLTS ("level", N_ ("Reading"), level_v) };

static const BwKind pins[] = { { "8", N_ ("8: socket and format") }, { "16", N_ ("16: RGB") } };
static const BwKindTable pin_kinds = { G_N_ELEMENTS (pins), pins };
static const int pin_numbers[] = { 8, 16 };

static const BwField pin_fields[] = {
  { .key = "pin", .label = N_ ("Pin of the 21-pin socket"), .type = BW_FIELD_CHOICE,
    .offset = G_STRUCT_OFFSET (Typed, pin), .kinds = &pin_kinds },
  VOLTS ("reading", N_ ("Reading"), pin_v),
};

static const BwField subcarrier_fields[] = {
  NEEDED ("subcarrier", N_ ("Subcarrier"), subcarrier_hz, FREQUENCY, 1e6, 10e6),
};

typedef enum
{
  ASK_SOURCE,
  ASK_DRIVER,
  ASK_LOAD,
  ASK_NODE,
  ASK_LEVEL,
  ASK_PIN,
  ASK_SUBCARRIER,
  N_ASKS
} Ask;

static const BwKind ask_kinds[N_ASKS] = {
  [ASK_SOURCE] = { "source", N_ ("Source resistance, from open and loaded level") },
  [ASK_DRIVER] = { "driver", N_ ("Driver's voltage, from a level behind a resistor") },
  [ASK_LOAD] = { "load", N_ ("Load, from readings on both sides of a resistor") },
  [ASK_NODE] = { "node", N_ ("Several drivers into one node") },
  [ASK_LEVEL] = { "level", N_ ("One reading alone") },
  [ASK_PIN] = { "pin", N_ ("Reading on a pin that selects") },
  [ASK_SUBCARRIER] = { "subcarrier", N_ ("Colour system, from the subcarrier") },
};
static const BwKindTable asks = { N_ASKS, ask_kinds };

static const struct
{
  BwFieldTable table;
  guint columns;
} forms[N_ASKS] = {
  [ASK_SOURCE] = { { G_N_ELEMENTS (source_fields), source_fields }, 3 },
  [ASK_DRIVER] = { { G_N_ELEMENTS (driver_fields), driver_fields }, 4 },
  [ASK_LOAD] = { { G_N_ELEMENTS (load_fields), load_fields }, 3 },
  [ASK_NODE] = { { G_N_ELEMENTS (node_fields), node_fields }, 2 },
  [ASK_LEVEL] = { { G_N_ELEMENTS (level_fields), level_fields }, 1 },
  [ASK_PIN] = { { G_N_ELEMENTS (pin_fields), pin_fields }, 2 },
  [ASK_SUBCARRIER] = { { G_N_ELEMENTS (subcarrier_fields), subcarrier_fields }, 1 },
};

/* A reading on a scope (common practice, no source). */
#define ACCURACY 0.03

/**
 * BwWorkBackPanel:
 *
 * From readings back to the source, the driver, the load or the setting that gives them.
 */
struct _BwWorkBackPanel
{
  GtkWidget parent_instance;

  GtkWidget *scrolled; /* the only child; those below are borrowed and in it */
  GtkBox *place;       /* of the form */
  BwChooser *ask;
  BwForm *form;
  GtkLabel *fault;
  BwResultView *view;
  GtkWidget *use_video;
  GtkWidget *use_sync;

  BwDocument *document;
  Typed typed;
  double source_ohm; /* that was worked out; negative: none was */
  double open_v;
};

G_DEFINE_FINAL_TYPE (BwWorkBackPanel, bw_work_back_panel, GTK_TYPE_WIDGET)

static void
update_use (BwWorkBackPanel *self)
{
  gboolean can = self->source_ohm >= 0 && self->source_ohm <= 10e3
                 && bw_document_get_source (self->document) != BW_NO_INDEX;
  gtk_widget_set_sensitive (self->use_video, can);
  gtk_widget_set_sensitive (self->use_sync, can);
}

static void
show_fault (BwWorkBackPanel *self, const char *message)
{
  gtk_label_set_label (self->fault, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault), message != NULL);
}

/* What is lacking or cannot be. */
static const char *
why_not (BwWorkBackPanel *self, Ask ask)
{
  const BwFieldTable *table = &forms[ask].table;
  const Typed *t = &self->typed;

  for (guint i = 0; i < table->n; i++)
    if ((table->at[i].flags & BW_FIELD_REQUIRED) && !bw_field_is_set (&table->at[i], t))
      return _ ("Type what was read, each with its unit.");
  if (ask == ASK_SOURCE && t->source.loaded_v > t->source.open_v)
    return _ ("The level with the load cannot be more than the level without.");
  for (guint i = 0; ask == ASK_LOAD && i < N_DROPS; i++)
    if (t->drops[i].before_v > 0 && t->drops[i].after_v >= t->drops[i].before_v)
      return _ ("Behind the resistor the level must be less than before it.");
  return NULL;
}

static void
say_source (BwWorkBackPanel *self, BwNode *to)
{
  const BwSourceAsk *ask = &self->typed.source;
  self->open_v = ask->open_v;
  self->source_ohm = bw_source_ohm_from_levels (ask->open_v, ask->loaded_v, ask->load_ohm);
  bw_source_ask_say (to, ask);
}

static void
say_driver (BwWorkBackPanel *self, BwNode *to)
{
  const BwDriverAsk *ask = &self->typed.driver;
  self->open_v = bw_open_v_from_level (ask->level_v, ask->series_ohm, ask->load_ohm);
  self->source_ohm = ask->series_ohm;
  bw_driver_ask_say (to, ask);
}

static void
say_load (BwWorkBackPanel *self, BwNode *to)
{
  BwDropsAsk ask = { .accuracy = ACCURACY };
  for (guint i = 0; i < N_DROPS; i++)
    if (self->typed.drops[i].before_v > 0 && self->typed.drops[i].after_v > 0
        && self->typed.drops[i].series_ohm > 0)
      ask.drops[ask.n++] = self->typed.drops[i];
  bw_drops_say (to, &ask);
}

static void
say_node (BwWorkBackPanel *self, BwNode *to)
{
  BwNodeCase node = { .load_ohm = self->typed.node_load_ohm };
  for (guint i = 0; i < N_DRIVERS; i++)
    if (self->typed.drivers[i].open_v > 0 && self->typed.drivers[i].ohm > 0)
      node.drivers[node.n++] = self->typed.drivers[i];
  self->source_ohm = bw_node_source_ohm (&node);
  self->open_v = bw_node_level_v (&node, (1u << node.n) - 1)
                 * (self->source_ohm + node.load_ohm) / node.load_ohm;
  bw_node_case_say (to, &node);
}

static void
say (BwWorkBackPanel *self, Ask ask, BwNode *to)
{
  switch (ask)
    {
    case ASK_DRIVER:
      say_driver (self, to);
      break;
    case ASK_LOAD:
      say_load (self, to);
      break;
    case ASK_NODE:
      say_node (self, to);
      break;
    case ASK_LEVEL:
      bw_level_fits_say (to, self->typed.level_v, ACCURACY);
      break;
    case ASK_PIN:
      bw_pin_reading_say (to, pin_numbers[self->typed.pin], self->typed.pin_v);
      break;
    case ASK_SUBCARRIER:
      bw_subcarrier_say (to, self->typed.subcarrier_hz);
      break;
    case ASK_SOURCE:
    default:
      say_source (self, to);
    }
}

static void
on_work_out (BwWorkBackPanel *self)
{
  Ask ask = bw_chooser_get (self->ask);

  if (!bw_form_take (self->form))
    return;
  const char *fault = why_not (self, ask);
  show_fault (self, fault);
  self->source_ohm = -1;
  if (fault == NULL)
    {
      BwResult *result = bw_result_new (bw_quantity_locale_mark ());
      say (self, ask, bw_result_root (result));
      bw_result_view_show (self->view, result);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->view), fault == NULL);
  update_use (self);
}

static void
on_ask (BwWorkBackPanel *self)
{
  Ask ask = bw_chooser_get (self->ask);

  if (self->form != NULL)
    gtk_box_remove (self->place, GTK_WIDGET (self->form));
  self->form = g_object_new (BW_TYPE_FORM, NULL);
  g_object_set (gtk_widget_get_layout_manager (GTK_WIDGET (self->form)), "most",
                forms[ask].columns, NULL);
  bw_form_build (self->form, &forms[ask].table, &self->typed);
  gtk_box_append (self->place, GTK_WIDGET (self->form));
  self->source_ohm = -1;
  show_fault (self, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->view), FALSE);
  if (self->document != NULL)
    update_use (self);
}

/* Gives the selected source what was worked out: the resistance, and the level that it has across 75 Ω. */
static void
use (BwWorkBackPanel *self, const char *level_key, const char *resistance_key, double level_v)
{
  char level[64], ohm[64];
  g_autoptr (GError) error = NULL;
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  g_snprintf (level, sizeof level, "%s V", g_ascii_formatd (number, sizeof number, "%.6g", level_v));
  g_snprintf (ohm, sizeof ohm, "%s ohm",
              g_ascii_formatd (number, sizeof number, "%.6g", self->source_ohm));
  const BwEdit edits[] = {
    { bw_field_find (&bw_source_fields, level_key), level },
    { bw_field_find (&bw_source_fields, resistance_key), ohm },
  };
  if (!bw_document_edit (self->document, BW_PART_SOURCE, bw_document_get_source (self->document),
                         edits, G_N_ELEMENTS (edits), BW_FILE_MARK, &error))
    show_fault (self, error->message);
}

static void
on_use_video (BwWorkBackPanel *self)
{
  use (self, "video_level", "source_resistance",
       self->open_v * BW_VIDEO_OHM / (self->source_ohm + BW_VIDEO_OHM));
}

/* As the source states its level: without load or across 75 Ω. */
static void
on_use_sync (BwWorkBackPanel *self)
{
  const BwSource *source = bw_document_selected_source (self->document);
  gboolean open = source->sync_load == BW_LOAD_OPEN;
  use (self, "sync_level", "sync_resistance",
       open ? self->open_v : self->open_v * BW_VIDEO_OHM / (self->source_ohm + BW_VIDEO_OHM));
}

/* Widget */

static void
bw_work_back_panel_dispose (GObject *object)
{
  BwWorkBackPanel *self = BW_WORK_BACK_PANEL (object);
  g_clear_object (&self->document);
  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  G_OBJECT_CLASS (bw_work_back_panel_parent_class)->dispose (object);
}

static void
bw_work_back_panel_class_init (BwWorkBackPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_work_back_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
button_new (BwWorkBackPanel *self, GtkWidget *box, const char *name, const char *label,
            GCallback clicked)
{
  GtkWidget *button = bw_button_new (label);
  gtk_widget_set_name (button, name);
  g_signal_connect_object (button, "clicked", clicked, self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
add_buttons (BwWorkBackPanel *self, GtkWidget *body)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *work = button_new (self, row, "work-back", _ ("_Work Back"), G_CALLBACK (on_work_out));

  gtk_widget_add_css_class (work, "suggested-action");
  self->use_video = button_new (self, row, "use-video", _ ("Use for the Source's _Video"),
                                G_CALLBACK (on_use_video));
  self->use_sync = button_new (self, row, "use-sync", _ ("Use for the Source's S_ync"),
                               G_CALLBACK (on_use_sync));
  gtk_widget_set_sensitive (self->use_video, FALSE);
  gtk_widget_set_sensitive (self->use_sync, FALSE);
  gtk_box_append (GTK_BOX (body), row);
}

static void
add_words (GtkWidget *body, const char *css_class, const char *words)
{
  GtkWidget *label = bw_words_label_new (words, css_class);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_box_append (GTK_BOX (body), label);
}

static void
bw_work_back_panel_init (BwWorkBackPanel *self)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);

  self->typed.source.load_ohm = self->typed.driver.load_ohm = BW_VIDEO_OHM;
  self->typed.node_load_ohm = BW_VIDEO_OHM;
  self->source_ohm = -1;
  self->ask = bw_chooser_new ("ask", _ ("What is looked for"));
  gtk_widget_set_halign (GTK_WIDGET (self->ask), GTK_ALIGN_START);
  self->place = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  self->fault = GTK_LABEL (bw_words_label_new (NULL, "bw-field-error"));
  self->view = bw_result_view_new (_ ("Worked back"));
  gtk_widget_set_name (GTK_WIDGET (self->view), "worked-back");
  gtk_widget_add_css_class (body, "bw-page-body");
  gtk_widget_set_margin_top (body, 8);
  add_words (body, "bw-light", _ ("Enter what a scope or a meter reads, and what it comes from is worked out."));
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->ask));
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->place));
  add_buttons (self, body);
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->fault));
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (self->view));
  add_words (body, "bw-limits", bw_caution_scope ());
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), body);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  bw_chooser_set_kinds (self->ask, &asks, BW_BIT (N_ASKS) - 1);
  g_signal_connect_object (self->ask, "chosen", G_CALLBACK (on_ask), self, G_CONNECT_SWAPPED);
  on_ask (self);
}

/**
 * bw_work_back_panel_set_document:
 * @document: whose selected source is given what was worked out; to be set once
 */
void
bw_work_back_panel_set_document (BwWorkBackPanel *self, BwDocument *document)
{
  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  bw_document_follow (document, G_CALLBACK (update_use), self);
  update_use (self);
}
