/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-panel-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/template.h"
#include "app/widgets/wrap-layout.h"

/* Wide enough for the longest name, so that nothing moves when another one is chosen. */
#define KIND_WIDTH 180

static BwChooser *
add_chooser (BwPreviewPanel *self, GtkWidget *box, const char *name, const char *label,
             GCallback chosen)
{
  BwChooser *chooser = bw_chooser_new (name, label);
  g_signal_connect_object (chooser, "chosen", chosen, self, G_CONNECT_SWAPPED);
  bw_wrap_box_append (box, GTK_WIDGET (chooser));
  return chooser;
}

static GtkWidget *
button_new (BwPreviewPanel *self, const char *label, const char *name, const char *tooltip,
            GCallback clicked)
{
  GtkWidget *button = bw_button_new (label);
  gtk_widget_set_name (button, name);
  gtk_widget_set_tooltip_text (button, tooltip);
  g_signal_connect_object (button, "clicked", clicked, self, G_CONNECT_SWAPPED);
  return button;
}

/* Something under a heading of its own, as the choosers are. */
static GtkWidget *
add_headed (GtkWidget *box, const char *label, GtkWidget *control)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *head = gtk_label_new_with_mnemonic (label);

  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_widget_add_css_class (head, "bw-field-label");
  gtk_box_append (GTK_BOX (column), head);
  gtk_box_append (GTK_BOX (column), control);
  bw_wrap_box_append (box, column);
  return head;
}

static void
add_times (BwPreviewPanel *self, GtkWidget *box)
{
  self->times = add_chooser (self, box, "times", _ ("_Magnification"),
                             G_CALLBACK (bw_preview_panel_on_times));
  for (guint i = 0; i < BW_N_PREVIEW_TIMES; i++)
    {
      g_autofree char *words = bw_preview_view_times_words (bw_preview_times[i]);
      bw_chooser_add (self->times, i, words);
    }
}

/* From nothing cut off to as bright on average as the untouched. */
static void
add_brightness (BwPreviewPanel *self, GtkWidget *box)
{
  GtkWidget *scale = gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0, 1, 0.05);
  GtkWidget *head = add_headed (box, _ ("_Brightness"), scale);

  self->brightness = GTK_RANGE (scale);
  gtk_scale_set_draw_value (GTK_SCALE (scale), FALSE);
  gtk_range_set_value (self->brightness, BW_PREVIEW_USUAL_BRIGHTNESS);
  gtk_widget_set_size_request (scale, 100, -1);
  gtk_widget_set_name (scale, "brightness");
  gtk_widget_set_tooltip_text (scale, _ ("Left: nothing is cut off. Right: as bright on average as "
                                         "the untouched picture"));
  gtk_label_set_mnemonic_widget (GTK_LABEL (head), scale);
  bw_label_control (scale, head);
  g_signal_connect_object (scale, "value-changed", G_CALLBACK (bw_preview_panel_on_brightness),
                           self, G_CONNECT_SWAPPED);
}

static void
add_controls (BwPreviewPanel *self)
{
  GtkWidget *box = bw_wrap_box_new ();

  self->kind = add_chooser (self, box, "picture", _ ("P_icture"),
                            G_CALLBACK (bw_preview_panel_on_kind));
  bw_preview_panel_fill_kinds (self);
  gtk_widget_set_size_request (GTK_WIDGET (bw_chooser_get_control (self->kind)), KIND_WIDTH, -1);
  add_headed (box, _ ("Your own"),
              button_new (self, _ ("Open P_NG…"), "open-png", _ ("Show a Picture of Your Own"),
                          G_CALLBACK (bw_preview_panel_on_open)));
  add_times (self, box);
  add_brightness (self, box);
  bw_picture_panel_add_control (self->panel, box);
}

/* Above the drawing what was wrong with a file, under it the frame and what is being computed. */
static void
add_status (BwPreviewPanel *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *fault = bw_words_label_new (NULL, "bw-field-error");

  self->status = g_object_new (BW_TYPE_PREVIEW_STATUS, NULL);
  g_signal_connect_object (self->status, "cancel", G_CALLBACK (bw_preview_panel_cancel), self,
                           G_CONNECT_SWAPPED);
  self->fault = GTK_LABEL (fault);
  gtk_label_set_selectable (self->fault, TRUE);
  gtk_widget_set_name (fault, "fault");
  gtk_widget_set_visible (fault, FALSE);
  bw_picture_panel_add_above (self->panel, fault);
  self->next = button_new (self, _ ("Next _Frame"), "next-frame",
                           _ ("The dots of composite move from one frame to the next"),
                           G_CALLBACK (bw_preview_panel_on_next));
  gtk_widget_set_valign (self->next, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), self->next);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->status));
  bw_picture_panel_add_below (self->panel, row);
}

/**
 * bw_preview_panel_build:
 *
 * Puts the controls, the status and the figures around the drawing.
 */
void
bw_preview_panel_build (BwPreviewPanel *self)
{
  add_controls (self);
  add_status (self);
}
