/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-panel-private.h"

#include <glib/gi18n-lib.h>

#include "preview-figures.h"

/**
 * BwPreviewPanel:
 *
 * The picture itself: a test picture as the screen shows it after the path, beside the untouched
 * one. Whatever changes is computed anew soon, in a thread; until then the old preview stays.
 */
G_DEFINE_FINAL_TYPE (BwPreviewPanel, bw_preview_panel, GTK_TYPE_WIDGET)

#define SOON_MS 50
#define FRAMES 4      /* after which the dots of every system are where they were, or nearly */
#define NO_LOSS 0.995 /* of an exposure */
#define NAME_CHARS 22
#define BURSTS_ACROSS 0.31 /* where the bursts are, to zoom in there */
#define BURSTS_DOWN 0.35

static GtkWidget *
panel_area (BwPreviewPanel *self)
{
  return GTK_WIDGET (bw_picture_panel_get_area (self->panel));
}

/* What is shown */

static void
show_figures (BwPreviewPanel *self)
{
  const BwPreviewResult *preview = bw_preview_view_get_result (self->view);
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());

  if (preview != NULL)
    bw_preview_say (bw_result_root (result), preview, MAX (self->density, 1));
  bw_picture_panel_show_result (self->panel, result);
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
  g_autofree char *title = g_strdup_printf (_ ("%s: the picture on the screen"), name);
  bw_picture_panel_set_title (self->panel, title);
}

/* Computing */

static void
put_in_wish (BwPreviewPanel *self, BwPreviewWish *wish)
{
  BwPictureArea *area = bw_picture_panel_get_area (self->panel);
  int width = gtk_widget_get_width (GTK_WIDGET (area));
  int height = gtk_widget_get_height (GTK_WIDGET (area));

  self->page_width = width;
  self->page_height = height;
  self->density = gtk_widget_get_scale_factor (GTK_WIDGET (area));
  bw_preview_view_set_note (self->view, NULL);
  bw_preview_view_wish (self->view, width, height, bw_picture_area_get_ink (area), self->density,
                        wish);
  wish->sent = wish->kind == BW_PREVIEW_OPENED ? self->opened : self->sent;
}

static gboolean
on_start (gpointer user_data)
{
  BwPreviewPanel *self = user_data;
  BwPreviewWish wish = { 0 };

  self->starting = 0;
  if (gtk_widget_get_width (panel_area (self)) == 0)
    {
      self->stale = TRUE;
      return G_SOURCE_REMOVE;
    }
  put_in_wish (self, &wish);
  bw_preview_job_start (self->job, &wish);
  bw_preview_status_watch (self->status, self->job);
  bw_picture_area_refresh (bw_picture_panel_get_area (self->panel));
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
      bw_preview_view_set_error (self->view, error->message);
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
      /* The exposure is a choice only if full brightness would cut highlights off. */
      gtk_widget_set_sensitive (GTK_WIDGET (self->brightness), result->exposure < NO_LOSS);
      bw_preview_view_set_result (self->view, result);
      bw_preview_status_say (self->status, words);
    }
  bw_picture_area_refresh (bw_picture_panel_get_area (self->panel));
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
  bw_preview_view_set_note (self->view, _ ("Cancelled: this is the picture of before."));
  bw_picture_area_refresh (bw_picture_panel_get_area (self->panel));
}

/* Changes */

static void
update (BwPreviewPanel *self)
{
  g_autofree char *name = bw_detail_state_dup_name (self->state);
  BwDocument *document = bw_detail_state_get_document (self->state);
  BwLack lack = { NULL };

  bw_lacks_tube (bw_document_get_sheet (document)->monitor, &lack);
  bw_picture_panel_update_empty (self->panel, document, &lack);
  if (!has_dots (self))
    self->frame = 0;
  gtk_widget_set_sensitive (self->next, has_dots (self));
  bw_preview_view_set_frame (self->view, self->frame);
  bw_preview_view_set_case (self->view, bw_detail_state_get_case (self->state), name);
  show_title (self, name);
  start_soon (self);
}

static void
set_fault (BwPreviewPanel *self, const char *words)
{
  gtk_label_set_label (self->fault, words);
  gtk_widget_set_visible (GTK_WIDGET (self->fault), *words != '\0');
}

void
bw_preview_panel_on_kind (BwPreviewPanel *self, guint kind)
{
  set_fault (self, "");
  bw_preview_view_set_sent (self->view, kind,
                            kind == BW_PREVIEW_OPENED ? self->opened_name
                                                      : bw_kind_label (&bw_test_pictures, kind));
  start_soon (self);
}

/* Another part or magnification, by the picture's own keys and buttons. */
static void
on_shown (BwPreviewPanel *self)
{
  double times = bw_preview_view_get_times (self->view);

  for (guint i = 0; i < BW_N_PREVIEW_TIMES; i++)
    if (bw_near (times, bw_preview_times[i], 1e-9))
      bw_chooser_choose (self->times, i);
  if (self->state != NULL)
    start_soon (self);
}

void
bw_preview_panel_on_times (BwPreviewPanel *self, guint index)
{
  bw_preview_view_set_times (self->view, bw_preview_times[index]);
  bw_picture_area_refresh (bw_picture_panel_get_area (self->panel));
  g_signal_emit_by_name (panel_area (self), "shown");
}

void
bw_preview_panel_on_brightness (BwPreviewPanel *self)
{
  bw_preview_view_set_brightness (self->view, gtk_range_get_value (self->brightness));
  bw_picture_area_refresh (bw_picture_panel_get_area (self->panel));
}

void
bw_preview_panel_on_next (BwPreviewPanel *self)
{
  self->frame = (self->frame + 1) % FRAMES;
  bw_preview_view_set_frame (self->view, self->frame);
  start_soon (self);
}

/* The window has laid out its widgets. */
static void
on_layout (BwPreviewPanel *self)
{
  GtkWidget *area = panel_area (self);
  if (self->state != NULL
      && (self->stale || gtk_widget_get_width (area) != self->page_width
          || gtk_widget_get_height (area) != self->page_height
          || gtk_widget_get_scale_factor (area) != self->density))
    start_soon (self);
}

/* Opened pictures */

/* A long name is cut, so that the row of controls stays as it is. */
static char *
short_name (const char *name)
{
  if (g_utf8_strlen (name, -1) <= NAME_CHARS)
    return g_strdup (name);
  g_autofree char *start = g_utf8_substring (name, 0, NAME_CHARS - 1);
  return g_strconcat (start, "…", NULL);
}

void
bw_preview_panel_fill_kinds (BwPreviewPanel *self)
{
  g_autofree char *name = self->opened != NULL ? short_name (self->opened_name) : NULL;

  bw_chooser_clear (self->kind);
  for (guint kind = 0; kind < BW_N_TEST_PICTURES; kind++)
    bw_chooser_add (self->kind, kind, bw_kind_label (&bw_test_pictures, kind));
  if (name != NULL)
    bw_chooser_add (self->kind, BW_PREVIEW_OPENED, name);
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
  bw_preview_panel_fill_kinds (self);
  bw_chooser_choose (self->kind, BW_PREVIEW_OPENED);
  bw_preview_panel_on_kind (self, BW_PREVIEW_OPENED);
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

void
bw_preview_panel_on_open (BwPreviewPanel *self)
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
  self->view = NULL;
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

/* The view as the area has it, which owns it. */

static BwDrawing *
build (gpointer data, double width, double height, const BwInk *ink, const BwZoom *part)
{
  return bw_preview_drawing (data, width, height, ink);
}

static void
free_view (gpointer data)
{
  bw_preview_view_free (data);
}

static gboolean
is_whole (gconstpointer data)
{
  return !(bw_preview_view_get_times (data) > 0);
}

static void
zoom (gpointer data, const BwDrawing *drawing, double x, double y, double factor)
{
  bw_preview_view_zoom (data, drawing, x, y, factor);
}

static void
pan (gpointer data, const BwDrawing *drawing, double dx, double dy)
{
  bw_preview_view_pan (data, drawing, dx, dy);
}

static void
bw_preview_panel_init (BwPreviewPanel *self)
{
  static const BwPictureSource source = {
    .build = build, .free = free_view, .is_whole = is_whole, .zoom = zoom, .pan = pan
  };

  self->view = bw_preview_view_new ();
  self->job = bw_preview_job_new (on_done, self);
  self->open = bw_preview_open_new (on_opened, self);
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  bw_preview_view_set_centre (self->view, BURSTS_ACROSS, BURSTS_DOWN);
  bw_preview_view_set_brightness (self->view, BW_PREVIEW_USUAL_BRIGHTNESS);
  bw_preview_view_set_sent (self->view, BW_TEST_LINES,
                            bw_kind_label (&bw_test_pictures, BW_TEST_LINES));
  bw_preview_panel_build (self);
  bw_picture_panel_show (self->panel, &source, self->view);
  on_shown (self);
  g_signal_connect_object (panel_area (self), "shown", G_CALLBACK (on_shown), self,
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

BwPreviewView *
bw_preview_panel_get_view (BwPreviewPanel *self)
{
  return self->view;
}

const char *
bw_preview_panel_get_fault (BwPreviewPanel *self)
{
  return gtk_label_get_label (self->fault);
}
