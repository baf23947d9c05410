/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "verdict-mark.h"

#include "colour-scheme.h"

/**
 * BwVerdictMark:
 *
 * The drawn mark of a verdict, as high as the text beside it. It says nothing to a screen reader:
 * the word stands beside it.
 */
struct _BwVerdictMark
{
  GtkWidget parent_instance;

  BwVerdict verdict;
};

G_DEFINE_FINAL_TYPE (BwVerdictMark, bw_verdict_mark, GTK_TYPE_WIDGET)

static void
bw_verdict_mark_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);

  *minimum = *natural = PANGO_PIXELS (pango_font_metrics_get_ascent (metrics));
  *minimum_baseline = *natural_baseline = -1;
  pango_font_metrics_unref (metrics);
}

static void
bw_verdict_mark_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BwVerdictMark *self = BW_VERDICT_MARK (widget);
  float width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double side = MIN (width, height);
  BwInk ink = { .theme = bw_theme_of (gtk_widget_get_settings (widget)) };
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  bw_draw_verdict_mark (cr, &ink, self->verdict, (width - side) / 2, (height - side) / 2, side);
  cairo_destroy (cr);
}

static void
bw_verdict_mark_class_init (BwVerdictMarkClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = bw_verdict_mark_measure;
  widget_class->snapshot = bw_verdict_mark_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bw_verdict_mark_init (BwVerdictMark *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

/**
 * bw_verdict_mark_new:
 *
 * Returns: (transfer floating): the mark of "direct", until it is set
 */
GtkWidget *
bw_verdict_mark_new (void)
{
  return g_object_new (BW_TYPE_VERDICT_MARK, NULL);
}

/**
 * bw_verdict_mark_set:
 *
 * Shows the mark of @verdict.
 */
void
bw_verdict_mark_set (BwVerdictMark *self, BwVerdict verdict)
{
  if (self->verdict == verdict)
    return;
  self->verdict = verdict;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * bw_verdict_css_class:
 *
 * Returns: (transfer none): the style class of @verdict
 */
const char *
bw_verdict_css_class (BwVerdict verdict)
{
  static const char *const classes[BW_N_VERDICTS] = {
    [BW_VERDICT_DIRECT] = "verdict-direct",
    [BW_VERDICT_TIGHT] = "verdict-tight",
    [BW_VERDICT_WITH_PARTS] = "verdict-with-parts",
    [BW_VERDICT_NO] = "verdict-no",
  };
  g_return_val_if_fail (verdict < BW_N_VERDICTS, "");
  return classes[verdict];
}

/**
 * bw_verdict_style:
 *
 * Gives @widget the style class of @verdict and takes those of the others away.
 */
void
bw_verdict_style (GtkWidget *widget, BwVerdict verdict)
{
  for (BwVerdict other = 0; other < BW_N_VERDICTS; other++)
    if (other == verdict)
      gtk_widget_add_css_class (widget, bw_verdict_css_class (other));
    else
      gtk_widget_remove_css_class (widget, bw_verdict_css_class (other));
}
