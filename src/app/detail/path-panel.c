/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "path-panel.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/detail/results.h"
#include "draw/detail/view.h"

/**
 * BwPathPanel:
 *
 * What limits the picture on its way from the source to the glass: drawn, in words and figures,
 * with the values to move under the drawing.
 */
struct _BwPathPanel
{
  GtkWidget parent_instance;

  BwPicturePanel *panel; /* the only child */
  BwDetailState *state;
  BwPathValues *values;
};

G_DEFINE_FINAL_TYPE (BwPathPanel, bw_path_panel, GTK_TYPE_WIDGET)

static const struct
{
  const char *id;
  const char *label;
  const char *tooltip;
} views[BW_N_DETAIL_VIEWS] = {
  [BW_DETAIL_CHAIN] = { "chain", N_ ("Chain"),
                        N_ ("Each Link’s Limit, and Its Share of the Loss") },
  [BW_DETAIL_MTF] = { "curves", N_ ("Curves"), N_ ("The Modulation That Each Link Leaves") },
  [BW_DETAIL_PITCH] = { "pitch", N_ ("Pitch"), N_ ("TV Lines against Pitch, for Several Tubes") },
  [BW_DETAIL_STRUCTURE] = { "structure", N_ ("Structure"),
                            N_ ("Brightness across Three Scanning Lines") },
};

static BwDetailViewKind
chosen_kind (BwPathPanel *self)
{
  const char *id = bw_picture_panel_get_view (self->panel);
  BwDetailViewKind kind = 0;
  while (kind < BW_N_DETAIL_VIEWS - 1 && !g_str_equal (views[kind].id, id))
    kind++;
  return kind;
}

/* What is drawn. */
typedef struct
{
  BwDetailViewKind kind;
  BwDetailCase what;
  BwDetail detail;
  char *title;
} Shown;

static Shown *
shown_new (BwPathPanel *self)
{
  Shown *shown = g_new (Shown, 1);
  *shown = (Shown){ chosen_kind (self), *bw_detail_state_get_case (self->state),
                    *bw_detail_state_get_detail (self->state),
                    bw_detail_state_dup_name (self->state) };
  return shown;
}

static void
shown_free (gpointer data)
{
  Shown *shown = data;
  g_free (shown->title);
  g_free (shown);
}

static BwDrawing *
build (gpointer data, double width, double height, const BwInk *ink, const BwZoom *zoom)
{
  const Shown *shown = data;
  const BwDetailView view = { shown->kind, &shown->what, &shown->detail, shown->title,
                              bw_quantity_locale_mark () };
  return bw_detail_drawing (&view, width, height, ink);
}

static void
show_picture (BwPathPanel *self)
{
  static const BwPictureSource source = { .build = build, .free = shown_free };
  bw_picture_panel_show (self->panel, &source, shown_new (self));
}

/* The link that limits first; of the signal kind also which one it is. */
static char *
first_limit (BwPathPanel *self)
{
  guint link = bw_detail_state_get_detail (self->state)->limited_by;
  const BwDetailCase *what = bw_detail_state_get_case (self->state);
  const char *name = bw_kind_label (&bw_detail_links, link);
  if (link != BW_LINK_SIGNAL)
    return g_strdup (name);
  return g_strdup_printf ("%s (%s)", name, bw_kind_label (&bw_signals, what->signal));
}

static char *
lines (double tvl)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, 5, bw_quantity_locale_mark ());
}

static void
show_title (BwPathPanel *self, const BwDetailWay *rgb)
{
  const BwDetail *detail = bw_detail_state_get_detail (self->state);
  g_autofree char *name = bw_detail_state_dup_name (self->state);

  if (detail->limited_by >= BW_N_LINKS)
    {
      g_autofree char *nothing = g_strdup_printf (_ ("%s: no limit of detail is known"), name);
      bw_picture_panel_set_title (self->panel, nothing);
      return;
    }
  g_autofree char *all = lines (detail->limiting_tvl);
  g_autofree char *first = first_limit (self);
  g_autofree char *title = g_strdup_printf (_ ("%1$s: %2$s, limited first by the %3$s"), name, all,
                                            first);
  g_autofree char *by_rgb = lines (rgb != NULL ? rgb->detail.limiting_tvl : 0);
  g_autofree char *compared = g_strdup_printf (_ ("%1$s; with RGB %2$s"), title, by_rgb);
  bw_picture_panel_set_title (self->panel, rgb != NULL && !rgb->is_own ? compared : title);
}

/* What limits, whether RGB would help, whether the claim is true, and all figures. */
static BwResult *
make_result (const BwDetailReport *report)
{
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());
  BwNode *root = bw_result_root (result);

  bw_detail_say_rgb (root, report);
  bw_detail_say_answer (root, report);
  bw_detail_say_ways (root, report);
  bw_detail_say_figures (root, report);
  return result;
}

static void
update (BwPathPanel *self)
{
  BwDocument *document = bw_detail_state_get_document (self->state);
  BwDetailReport report = {
    .what = *bw_detail_state_get_case (self->state),
    .detail = *bw_detail_state_get_detail (self->state),
    .source_aspect = BW_RATIO_NONE,
  };
  const BwDetailBench bench = {
    .monitor = bw_document_get_sheet (document)->monitor,
    .input = bw_document_selected_input (document),
    .raster = bw_document_selected_raster (document),
    .bandwidth_stands = bw_detail_state_is_moved (self->state, BW_DETAIL_BANDWIDTH),
  };

  BwLack lack = { NULL };

  bw_lacks_tube (bench.monitor, &lack);
  report.n_ways = bw_detail_ways (&report.what, &bench, report.ways);
  bw_picture_panel_update_empty (self->panel, document, &lack);
  show_title (self, bw_detail_ways_rgb (report.ways, report.n_ways));
  show_picture (self);
  bw_picture_panel_show_result (self->panel, make_result (&report));
}

static void
on_view (BwPathPanel *self)
{
  if (self->state != NULL)
    show_picture (self);
}

/* Building */

static void
bw_path_panel_dispose (GObject *object)
{
  BwPathPanel *self = BW_PATH_PANEL (object);
  GtkWidget *panel = GTK_WIDGET (self->panel);

  g_clear_object (&self->state);
  g_clear_pointer (&panel, gtk_widget_unparent);
  self->panel = NULL;
  G_OBJECT_CLASS (bw_path_panel_parent_class)->dispose (object);
}

static void
bw_path_panel_class_init (BwPathPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_path_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
add_values (BwPathPanel *self)
{
  self->values = bw_path_values_new (self->state);
  bw_picture_panel_add_side (self->panel, GTK_WIDGET (self->values));
}

static void
bw_path_panel_init (BwPathPanel *self)
{
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
    bw_picture_panel_add_view (self->panel, views[kind].id, _ (views[kind].label),
                               _ (views[kind].tooltip));
  g_signal_connect_object (self->panel, "view", G_CALLBACK (on_view), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (GTK_WIDGET (self->panel), GTK_WIDGET (self));
}

/**
 * bw_path_panel_set_state:
 * @state: what to show and to move; to be set once
 */
void
bw_path_panel_set_state (BwPathPanel *self, BwDetailState *state)
{
  g_return_if_fail (self->state == NULL);
  self->state = g_object_ref (state);
  add_values (self);
  g_signal_connect_object (state, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

/**
 * bw_path_panel_choose:
 *
 * Shows another drawing, as the person does with the buttons.
 */
void
bw_path_panel_choose (BwPathPanel *self, BwDetailViewKind kind)
{
  bw_picture_panel_choose (self->panel, views[kind].id);
}

/* Getters: all (transfer none) */

BwPicturePanel *
bw_path_panel_get_panel (BwPathPanel *self)
{
  return self->panel;
}

BwPathValues *
bw_path_panel_get_values (BwPathPanel *self)
{
  return self->values;
}
