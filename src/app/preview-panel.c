/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "chooser.h"
#include "column-table.h"
#include "picture-area-private.h"
#include "preview-figures.h"
#include "preview-open.h"
#include "preview-status.h"
#include "wrap-layout.h"

/**
 * BwPreviewPanel:
 *
 * The picture itself: a test picture as the screen shows it after the path, beside the untouched
 * one. Whatever changes is computed anew soon, in a thread; until then the old preview stays.
 */
struct _BwPreviewPanel
{
  GtkWidget parent_instance;

  BwPicturePanel *panel; /* the only child */
  BwDetailState *state;
  BwPreviewPicture *picture; /* borrowed; of the panel's area */
  BwPreviewJob *job;
  BwPreviewOpen *open;
  BwPreviewSent *sent;   /* nullable; the test picture that was sent last */
  BwPreviewSent *opened; /* nullable */
  char *opened_name;

  BwChooser *kind; /* borrowed, below the panel; likewise */
  BwChooser *times;
  GtkRange *brightness;
  GtkWidget *next;
  GtkLabel *fault;
  BwPreviewStatus *status;
  GtkWidget *burst_heading;
  BwColumnTable *bursts;

  guint frame;
  guint starting;  /* source that starts the job soon */
  gboolean stale;  /* something changed while it was not shown */
  int page_width;  /* for which was wished last */
  int page_height;
  int density;
  GdkSurface *surface; /* nullable; of the window, while the panel is shown */
};

G_DEFINE_FINAL_TYPE (BwPreviewPanel, bw_preview_panel, GTK_TYPE_WIDGET)

#define SOON_MS 50
#define FRAMES 4 /* after which the dots of every system are where they were, or nearly */
#define USUAL_BRIGHTNESS 0.5
#define USUAL_TIMES 4

static GtkWidget *
area_of (BwPreviewPanel *self)
{
  return GTK_WIDGET (bw_picture_panel_get_area (self->panel));
}

/* What is shown */

/* The drawing has changed; the cursors stay at their places. */
static void
redraw (BwPreviewPanel *self)
{
  BwPictureArea *area = bw_picture_panel_get_area (self->panel);
  const BwPicture *picture = bw_picture_area_get_picture (area);
  g_autofree char *name = bw_picture_name (picture);
  g_autofree char *words = NULL;

  bw_picture_area_redraw (area);
  if (area->cursors[area->active].set)
    bw_picture_area_tell (area);
  words = bw_picture_describe (picture);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
show_figures (BwPreviewPanel *self)
{
  const BwPreviewResult *result = bw_preview_picture_get_result (self->picture);
  char mark = bw_quantity_locale_mark ();
  g_autoptr (GPtrArray) figures = result != NULL
                                      ? bw_preview_table (result, MAX (self->density, 1), mark)
                                      : bw_figures_new ();
  g_autoptr (GPtrArray) bursts = result != NULL ? bw_preview_burst_table (result, mark)
                                                : bw_table_lines_new ();

  bw_picture_panel_show_figures (self->panel, figures);
  bw_column_table_show (self->bursts, bursts);
  gtk_widget_set_visible (self->burst_heading, bursts->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->bursts), bursts->len > 0);
}

static char *
path_name (BwPreviewPanel *self)
{
  BwDocument *document = bw_detail_state_get_document (self->state);
  const BwSource *source = bw_document_selected_source (document);
  const BwInput *input = bw_document_selected_input (document);
  if (source == NULL || input == NULL)
    return g_strdup (bw_document_get_sheet (document)->monitor->name);
  return g_strdup_printf (_ ("%s at %s"), source->name, input->name);
}

/* Only composite has dots that move. */
static gboolean
has_dots (BwPreviewPanel *self)
{
  const BwDetailCase *what = bw_detail_state_get_case (self->state);
  return what->signal == BW_SIGNAL_COMPOSITE && what->system != BW_SYSTEM_NONE;
}

static void
show_title (BwPreviewPanel *self, const char *name)
{
  g_autofree char *times
      = bw_preview_picture_times_words (bw_preview_picture_get_times (self->picture));
  g_autofree char *title = g_strdup_printf (_ ("%s: the picture, %s"), name, times);
  bw_picture_panel_set_title (self->panel, title);
}

/* Computing */

static void
put_in_wish (BwPreviewPanel *self, BwPreviewWish *wish)
{
  BwPictureArea *area = bw_picture_panel_get_area (self->panel);
  BwPicturePage page = bw_picture_area_page (area);

  self->page_width = gtk_widget_get_width (GTK_WIDGET (area));
  self->page_height = gtk_widget_get_height (GTK_WIDGET (area));
  self->density = gtk_widget_get_scale_factor (GTK_WIDGET (area));
  bw_preview_picture_set_note (self->picture, NULL);
  bw_preview_picture_wish (self->picture, &page, self->density, wish);
  wish->sent = wish->kind == BW_PREVIEW_OPENED ? self->opened : self->sent;
}

static gboolean
on_start (gpointer user_data)
{
  BwPreviewPanel *self = user_data;
  BwPreviewWish wish = { 0 };

  self->starting = 0;
  if (gtk_widget_get_width (area_of (self)) == 0)
    {
      self->stale = TRUE;
      return G_SOURCE_REMOVE;
    }
  put_in_wish (self, &wish);
  bw_preview_job_start (self->job, &wish);
  bw_preview_status_watch (self->status, self->job);
  redraw (self);
  return G_SOURCE_REMOVE;
}

/* Soon; what else changes until then is in it. What is not seen waits until it is. */
static void
start_soon (BwPreviewPanel *self)
{
  self->stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (!self->stale && self->starting == 0)
    self->starting = g_timeout_add (SOON_MS, on_start, self);
}

static void
on_done (BwPreviewResult *result, const GError *error, gpointer user_data)
{
  BwPreviewPanel *self = user_data;

  if (result == NULL)
    {
      bw_preview_picture_set_error (self->picture, error->message);
      bw_preview_status_say (self->status, "");
    }
  else
    {
      g_autofree char *took = bw_quantity_format (result->took_s, BW_DIMENSION_TIME, 2,
                                                  bw_quantity_locale_mark ());
      g_autofree char *words = g_strdup_printf (_ ("Computed in %s"), took);
      if (result->wish.kind != BW_PREVIEW_OPENED)
        {
          g_clear_pointer (&self->sent, bw_preview_sent_unref);
          self->sent = bw_preview_sent_ref (result->wish.sent);
        }
      bw_preview_picture_set_result (self->picture, result);
      bw_preview_status_say (self->status, words);
    }
  redraw (self);
  show_figures (self);
}

/**
 * bw_preview_panel_cancel:
 *
 * Gives up what is being computed. The picture before stays until something changes.
 */
void
bw_preview_panel_cancel (BwPreviewPanel *self)
{
  if (!bw_preview_panel_is_busy (self))
    return;
  g_clear_handle_id (&self->starting, g_source_remove);
  bw_preview_job_cancel (self->job);
  bw_preview_status_say (self->status, _ ("Cancelled"));
  bw_preview_picture_set_note (self->picture, _ ("Cancelled: this is the picture of before."));
  redraw (self);
}

/* Changes */

static void
update (BwPreviewPanel *self)
{
  g_autofree char *name = path_name (self);

  bw_picture_panel_update_empty (self->panel, bw_detail_state_get_document (self->state), FALSE);
  if (!has_dots (self))
    self->frame = 0;
  gtk_widget_set_sensitive (self->next, has_dots (self));
  bw_preview_picture_set_frame (self->picture, self->frame);
  bw_preview_picture_set_case (self->picture, bw_detail_state_get_case (self->state), name);
  show_title (self, name);
  start_soon (self);
}

static void
on_kind (BwPreviewPanel *self, guint kind)
{
  bw_preview_picture_set_sent (self->picture, kind,
                               kind == BW_PREVIEW_OPENED ? self->opened_name
                                                         : bw_kind_label (&bw_test_pictures, kind));
  start_soon (self);
}

/* Another part or magnification, by the picture's own keys and buttons. */
static void
on_shown (BwPreviewPanel *self)
{
  double times = bw_preview_picture_get_times (self->picture);

  for (guint i = 0; i < BW_N_PREVIEW_TIMES; i++)
    if (bw_near (times, bw_preview_times[i], 1e-9))
      bw_chooser_choose (self->times, i);
  if (self->state == NULL)
    return;
  g_autofree char *name = path_name (self);
  show_title (self, name);
  start_soon (self);
}

static void
on_times (BwPreviewPanel *self, guint index)
{
  bw_preview_picture_set_times (self->picture, bw_preview_times[index]);
  redraw (self);
  g_signal_emit_by_name (area_of (self), "shown");
}

static void
on_brightness (BwPreviewPanel *self)
{
  bw_preview_picture_set_brightness (self->picture, gtk_range_get_value (self->brightness));
  redraw (self);
}

static void
on_next (BwPreviewPanel *self)
{
  self->frame = (self->frame + 1) % FRAMES;
  bw_preview_picture_set_frame (self->picture, self->frame);
  start_soon (self);
}

/* The window has laid out its widgets. */
static void
on_layout (BwPreviewPanel *self)
{
  GtkWidget *area = area_of (self);
  if (self->state != NULL
      && (self->stale || gtk_widget_get_width (area) != self->page_width
          || gtk_widget_get_height (area) != self->page_height
          || gtk_widget_get_scale_factor (area) != self->density))
    start_soon (self);
}

/* Opened pictures */

static void
fill_kinds (BwPreviewPanel *self)
{
  bw_chooser_clear (self->kind);
  for (guint kind = 0; kind < BW_N_TEST_PICTURES; kind++)
    bw_chooser_add (self->kind, kind, bw_kind_label (&bw_test_pictures, kind));
  if (self->opened != NULL)
    bw_chooser_add (self->kind, BW_PREVIEW_OPENED, self->opened_name);
}

static void
set_fault (BwPreviewPanel *self, const char *words)
{
  gtk_label_set_label (self->fault, words);
  gtk_widget_set_visible (GTK_WIDGET (self->fault), *words != '\0');
}

static void
on_opened (BwPreviewSent *sent, const GError *error, const char *name, gpointer user_data)
{
  BwPreviewPanel *self = user_data;

  if (sent == NULL)
    {
      g_autofree char *words = g_strdup_printf (_ ("The picture was not opened. %s"),
                                                error->message);
      set_fault (self, words);
      return;
    }
  g_clear_pointer (&self->opened, bw_preview_sent_unref);
  self->opened = sent;
  g_free (self->opened_name);
  self->opened_name = g_strdup (name);
  set_fault (self, "");
  fill_kinds (self);
  bw_chooser_choose (self->kind, BW_PREVIEW_OPENED);
  on_kind (self, BW_PREVIEW_OPENED);
}

/**
 * bw_preview_panel_open:
 * @file: a PNG picture
 *
 * Reads @file and shows it. If it cannot be read, that is said, and everything stays.
 */
void
bw_preview_panel_open (BwPreviewPanel *self, GFile *file)
{
  bw_preview_open_file (self->open, file);
}

static void
on_open (BwPreviewPanel *self)
{
  bw_preview_open_choose (self->open, GTK_WIDGET (self));
}

/* Widget */

static void
bw_preview_panel_map (GtkWidget *widget)
{
  BwPreviewPanel *self = BW_PREVIEW_PANEL (widget);

  GTK_WIDGET_CLASS (bw_preview_panel_parent_class)->map (widget);
  self->surface = gtk_native_get_surface (gtk_widget_get_native (widget));
  g_signal_connect_swapped (self->surface, "layout", G_CALLBACK (on_layout), self);
  if (self->stale && self->state != NULL)
    start_soon (self);
}

static void
bw_preview_panel_unmap (GtkWidget *widget)
{
  BwPreviewPanel *self = BW_PREVIEW_PANEL (widget);

  if (self->surface != NULL)
    g_signal_handlers_disconnect_by_func (self->surface, on_layout, self);
  self->surface = NULL;
  self->stale = self->stale || self->starting != 0;
  g_clear_handle_id (&self->starting, g_source_remove);
  GTK_WIDGET_CLASS (bw_preview_panel_parent_class)->unmap (widget);
}

static void
bw_preview_panel_dispose (GObject *object)
{
  BwPreviewPanel *self = BW_PREVIEW_PANEL (object);
  GtkWidget *panel = GTK_WIDGET (self->panel);

  g_clear_handle_id (&self->starting, g_source_remove);
  g_clear_pointer (&self->job, bw_preview_job_free);
  g_clear_pointer (&self->open, bw_preview_open_free);
  g_clear_object (&self->state);
  g_clear_pointer (&panel, gtk_widget_unparent);
  self->panel = NULL;
  self->picture = NULL;
  G_OBJECT_CLASS (bw_preview_panel_parent_class)->dispose (object);
}

static void
bw_preview_panel_finalize (GObject *object)
{
  BwPreviewPanel *self = BW_PREVIEW_PANEL (object);

  g_clear_pointer (&self->sent, bw_preview_sent_unref);
  g_clear_pointer (&self->opened, bw_preview_sent_unref);
  g_free (self->opened_name);
  G_OBJECT_CLASS (bw_preview_panel_parent_class)->finalize (object);
}

static void
bw_preview_panel_class_init (BwPreviewPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_preview_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_preview_panel_finalize;
  widget_class->map = bw_preview_panel_map;
  widget_class->unmap = bw_preview_panel_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

/* Building */

static BwChooser *
add_chooser (BwPreviewPanel *self, GtkWidget *box, const char *name, const char *label,
             GCallback chosen)
{
  BwChooser *chooser = bw_chooser_new (name, label);
  g_signal_connect_object (chooser, "chosen", chosen, self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (box, GTK_WIDGET (chooser));
  return chooser;
}

static void
add_button (BwPreviewPanel *self, GtkWidget *box, GtkWidget *button, const char *name,
            const char *tooltip, GCallback clicked)
{
  gtk_widget_set_name (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_END);
  gtk_widget_set_tooltip_text (button, tooltip);
  g_signal_connect_object (button, "clicked", clicked, self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (box, button);
}

static void
add_times (BwPreviewPanel *self, GtkWidget *box)
{
  self->times = add_chooser (self, box, "times", _ ("_Magnification"), G_CALLBACK (on_times));
  for (guint i = 0; i < BW_N_PREVIEW_TIMES; i++)
    {
      g_autofree char *words = bw_preview_picture_times_words (bw_preview_times[i]);
      bw_chooser_add (self->times, i, words);
    }
}

/* From nothing cut off to as bright on average as the untouched. */
static void
add_brightness (BwPreviewPanel *self, GtkWidget *box)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *head = gtk_label_new_with_mnemonic (_ ("_Brightness"));
  GtkWidget *scale = gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0, 1, 0.05);

  self->brightness = GTK_RANGE (scale);
  gtk_scale_set_draw_value (GTK_SCALE (scale), FALSE);
  gtk_range_set_value (self->brightness, USUAL_BRIGHTNESS);
  gtk_widget_set_size_request (scale, 120, -1);
  gtk_widget_set_name (scale, "brightness");
  gtk_widget_set_tooltip_text (scale, _ ("Left: nothing is cut off. Right: as bright on average as "
                                         "the untouched picture"));
  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_widget_add_css_class (head, "bw-field-label");
  gtk_label_set_mnemonic_widget (GTK_LABEL (head), scale);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (scale), GTK_ACCESSIBLE_RELATION_LABELLED_BY, head,
                                  NULL, -1);
  g_signal_connect_object (scale, "value-changed", G_CALLBACK (on_brightness), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (column), head);
  gtk_box_append (GTK_BOX (column), scale);
  bw_wrap_box_append (box, column);
}

static void
add_controls (BwPreviewPanel *self)
{
  GtkWidget *box = bw_wrap_box_new ();

  self->kind = add_chooser (self, box, "picture", _ ("P_icture"), G_CALLBACK (on_kind));
  fill_kinds (self);
  add_button (self, box, gtk_button_new_with_mnemonic (_ ("Open P_NG…")), "open-png",
              _ ("Show a Picture of Your Own"), G_CALLBACK (on_open));
  add_times (self, box);
  add_brightness (self, box);
  self->next = gtk_button_new_with_mnemonic (_ ("Next _Frame"));
  add_button (self, box, self->next, "next-frame",
              _ ("The dots of composite move from one frame to the next"), G_CALLBACK (on_next));
  bw_picture_panel_add_control (self->panel, NULL, box);
}

static GtkWidget *
label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* Under the drawing: what is being computed, and what was wrong with a file. */
static void
add_status (BwPreviewPanel *self)
{
  GtkBox *box = GTK_BOX (gtk_widget_get_parent (area_of (self)));
  GtkWidget *fault = label_new (NULL, "bw-field-error");

  self->status = g_object_new (BW_TYPE_PREVIEW_STATUS, NULL);
  g_signal_connect_object (self->status, "cancel", G_CALLBACK (bw_preview_panel_cancel), self,
                           G_CONNECT_SWAPPED);
  self->fault = GTK_LABEL (fault);
  gtk_label_set_selectable (self->fault, TRUE);
  gtk_widget_set_name (fault, "fault");
  gtk_widget_set_visible (fault, FALSE);
  gtk_box_prepend (box, fault);
  gtk_box_append (box, GTK_WIDGET (self->status));
}

static void
add_bursts (BwPreviewPanel *self)
{
  self->burst_heading = label_new (_ ("Modulation left of each burst: computed from the links, and "
                                      "measured in the picture beside it"),
                                   "bw-heading");
  gtk_label_set_max_width_chars (GTK_LABEL (self->burst_heading), 44);
  self->bursts = bw_column_table_new (_ ("Modulation left of each burst"));
  gtk_widget_set_name (GTK_WIDGET (self->bursts), "bursts");
  bw_picture_panel_add_side (self->panel, self->burst_heading);
  bw_picture_panel_add_side (self->panel, GTK_WIDGET (self->bursts));
}

static void
bw_preview_panel_init (BwPreviewPanel *self)
{
  BwPicture *picture = bw_preview_picture_new ();

  self->picture = bw_preview_picture (picture);
  self->job = bw_preview_job_new (on_done, self);
  self->open = bw_preview_open_new (on_opened, self);
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  bw_preview_picture_set_times (self->picture, USUAL_TIMES);
  bw_preview_picture_set_brightness (self->picture, USUAL_BRIGHTNESS);
  bw_preview_picture_set_sent (self->picture, BW_TEST_LINES,
                               bw_kind_label (&bw_test_pictures, BW_TEST_LINES));
  add_controls (self);
  add_status (self);
  add_bursts (self);
  bw_picture_panel_show (self->panel, picture);
  on_shown (self);
  g_signal_connect_object (area_of (self), "shown", G_CALLBACK (on_shown), self,
                           G_CONNECT_SWAPPED);
  gtk_widget_set_parent (GTK_WIDGET (self->panel), GTK_WIDGET (self));
}

/**
 * bw_preview_panel_set_state:
 * @state: whose case to show; to be set once
 */
void
bw_preview_panel_set_state (BwPreviewPanel *self, BwDetailState *state)
{
  g_return_if_fail (self->state == NULL);
  self->state = g_object_ref (state);
  g_signal_connect_object (state, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_preview_panel_is_busy:
 *
 * Returns: whether a preview is being computed, or soon will be
 */
gboolean
bw_preview_panel_is_busy (BwPreviewPanel *self)
{
  return self->starting != 0 || bw_preview_job_is_running (self->job);
}

/* Getters: all (transfer none) */

BwPicturePanel *
bw_preview_panel_get_panel (BwPreviewPanel *self)
{
  return self->panel;
}

BwPreviewPicture *
bw_preview_panel_get_picture (BwPreviewPanel *self)
{
  return self->picture;
}

const char *
bw_preview_panel_get_fault (BwPreviewPanel *self)
{
  return gtk_label_get_label (self->fault);
}
