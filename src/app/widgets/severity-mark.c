/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "severity-mark.h"

#include "colour-scheme.h"

/**
 * BwSeverityMark:
 *
 * The drawn mark of a severity, as high as the text beside it. It says nothing to a screen reader:
 * the word stands beside it.
 */
struct _BwSeverityMark
{
  GtkWidget parent_instance;

  BwSeverity severity; /* BW_N_SEVERITIES: none, and its place is empty */
};

G_DEFINE_FINAL_TYPE (BwSeverityMark, bw_severity_mark, GTK_TYPE_WIDGET)

static void
bw_severity_mark_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);

  *minimum = *natural = PANGO_PIXELS (pango_font_metrics_get_ascent (metrics));
  *minimum_baseline = *natural_baseline = -1;
  pango_font_metrics_unref (metrics);
}

static void
bw_severity_mark_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwSeverityMark *self = BW_SEVERITY_MARK (widget);
  float width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double side = MIN (width, height);
  BwInk ink = { .theme = bw_theme_of (gtk_widget_get_settings (widget)) };

  if (self->severity == BW_N_SEVERITIES)
    return;
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  bw_draw_severity_mark (cr, &ink, self->severity, (width - side) / 2, (height - side) / 2, side);
  cairo_destroy (cr);
}

static void
bw_severity_mark_class_init (BwSeverityMarkClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = bw_severity_mark_measure;
  widget_class->snapshot = bw_severity_mark_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bw_severity_mark_init (BwSeverityMark *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

/**
 * bw_severity_mark_new:
 *
 * Returns: (transfer floating): the mark of what holds, until it is set
 */
GtkWidget *
bw_severity_mark_new (void)
{
  return g_object_new (BW_TYPE_SEVERITY_MARK, NULL);
}

/**
 * bw_severity_mark_set:
 * @severity: or %BW_N_SEVERITIES for none, as a remark has
 *
 * Shows the mark of @severity.
 */
void
bw_severity_mark_set (BwSeverityMark *self, BwSeverity severity)
{
  if (self->severity == severity)
    return;
  self->severity = severity;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bw_severity_style:
 * @severity: or %BW_N_SEVERITIES for none
 *
 * Gives @widget the style class of @severity, "severity-ok" and so on by its id, and takes those of
 * the others away.
 */
void
bw_severity_style (GtkWidget *widget, BwSeverity severity)
{
  for (BwSeverity other = 0; other < BW_N_SEVERITIES; other++)
    {
      g_autofree char *name = g_strconcat ("severity-", bw_kind_id (&bw_severities, other), NULL);
      if (other == severity)
        gtk_widget_add_css_class (widget, name);
      else
        gtk_widget_remove_css_class (widget, name);
    }
}
