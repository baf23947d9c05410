/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <glib/gi18n-lib.h>

#include "controls.h"
#include "core/detail/detail.h"
#include "core/hookup/results.h"
#include "draw/hookup/view.h"

/**
 * BwHookupPage:
 *
 * The leads and the parts from the selected source to the selected input: drawn, and in lists to
 * buy and to solder by.
 */
struct _BwHookupPage
{
  BwPage parent_instance;

  BwPicturePanel *panel; /* borrowed, a child; the next two stand in it and are borrowed too */
  BwHookupControls *controls;
  BwHookupSide *side;

  BwDocument *document;
  BwHookupPlans *plans;
  BwHookupHold *hold; /* nullable: what is shown */
  BwLeadCase lead;
  char *answer; /* nullable: the title over the drawing */
  guint source; /* with @input: what the chain was chosen for */
  guint input;
  gboolean stale; /* something has changed while the page was not shown */
};

G_DEFINE_FINAL_TYPE (BwHookupPage, bw_hookup_page, BW_TYPE_PAGE)

/* The highest frequency of the source; where it is not known, that of the input. */
static double
top_hz (const BwDetailCase *what)
{
  if (what->detail_hz > 0)
    return what->detail_hz;
  if (what->samples > 0 && what->active_s > 0)
    return what->samples / (2 * what->active_s);
  return what->bandwidth_hz;
}

static void
update_lead (BwHookupPage *self)
{
  const BwMonitor *monitor = bw_document_get_sheet (self->document)->monitor;
  BwDetailCase what;

  bw_detail_case_from (&what, monitor, bw_document_selected_input (self->document),
                       bw_document_selected_source (self->document),
                       bw_document_selected_raster (self->document));
  self->lead = (BwLeadCase){ .top_hz = top_hz (&what), .active_s = what.active_s };
  bw_hookup_controls_get_lead (self->controls, &self->lead.lead);
  if (self->lead.top_hz > 0 && what.active_s > 0)
    self->lead.source_tvl = bw_tvl_from_hz (self->lead.top_hz, what.active_s,
                                            bw_ratio_to_double (what.aspect));
}

static void
say (BwHookupPage *self, const char *answer)
{
  g_free (self->answer);
  self->answer = g_strdup (answer);
  bw_picture_panel_set_title (self->panel, answer);
}

/* What is drawn; the type of the lead lives as long as the page. */
typedef struct
{
  BwHookupHold *hold;
  BwLeadCase lead;
} Shown;

static Shown *
shown_new (BwHookupPage *self)
{
  Shown *shown = g_new (Shown, 1);
  *shown = (Shown){ bw_hookup_hold_ref (self->hold), self->lead };
  return shown;
}

static void
shown_free (gpointer data)
{
  Shown *shown = data;
  bw_hookup_hold_unref (shown->hold);
  g_free (shown);
}

static BwDrawing *
build (gpointer data, double width, double height, const BwInk *ink, const BwZoom *zoom)
{
  const Shown *shown = data;
  const BwHookupView view = { bw_hookup_hold_get (shown->hold), &shown->lead,
                              bw_quantity_locale_mark () };
  return bw_hookup_drawing (&view, width, height, ink);
}

static void
show_plan (BwHookupPage *self)
{
  static const BwPictureSource source = { .build = build, .free = shown_free };
  const BwHookup *hookup = bw_hookup_hold_get (self->hold);
  BwResult *result = bw_result_new (bw_quantity_locale_mark ());

  update_lead (self);
  bw_hookup_say (bw_result_root (result), hookup, &self->lead);
  say (self, bw_node_answer (bw_result_root (result)));
  bw_hookup_controls_show (self->controls, hookup);
  bw_picture_panel_show_result (self->panel, result);
  bw_picture_panel_show (self->panel, &source, shown_new (self));
}

static void
take_selection (BwHookupPage *self)
{
  guint source = bw_document_get_source (self->document);
  guint input = bw_document_get_input (self->document);

  if (source != self->source || input != self->input)
    bw_hookup_controls_restart (self->controls);
  self->source = source;
  self->input = input;
}

/* If nothing can be planned, for example because a raster is missing, the title says why. */
static void
update (BwHookupPage *self)
{
  g_autoptr (GError) error = NULL;
  gboolean there = bw_document_get_source (self->document) != BW_NO_INDEX
                   && bw_document_get_input (self->document) != BW_NO_INDEX;
  BwHookupChoice choice;
  BwLack lack = { NULL };

  if (there && bw_lacks_plan (bw_document_selected_source (self->document),
                              bw_document_selected_input (self->document), &lack))
    there = FALSE;
  bw_picture_panel_update_empty (self->panel, self->document, &lack);
  self->stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->stale && there)
    return;
  take_selection (self);
  bw_hookup_controls_get_choice (self->controls, &choice);
  g_clear_pointer (&self->hold, bw_hookup_hold_unref);
  if (there)
    self->hold = bw_hookup_plans_find (self->plans, self->document, &choice, &error);
  bw_hookup_side_show (self->side, self->hold);
  if (self->hold != NULL)
    show_plan (self);
  else
    bw_picture_panel_show (self->panel, NULL, NULL);
  if (error != NULL)
    say (self, error->message);
}

/* The sheet has changed, so the plans made before do not hold any more. */
static void
on_changed (BwHookupPage *self)
{
  bw_hookup_plans_forget (self->plans);
  update (self);
}

/* Widget */

static void
bw_hookup_page_map (GtkWidget *widget)
{
  BwHookupPage *self = BW_HOOKUP_PAGE (widget);
  GTK_WIDGET_CLASS (bw_hookup_page_parent_class)->map (widget);
  if (self->stale && self->document != NULL)
    update (self);
}

static void
bw_hookup_page_dispose (GObject *object)
{
  g_clear_object (&BW_HOOKUP_PAGE (object)->document);
  G_OBJECT_CLASS (bw_hookup_page_parent_class)->dispose (object);
}

static void
bw_hookup_page_finalize (GObject *object)
{
  BwHookupPage *self = BW_HOOKUP_PAGE (object);
  g_clear_pointer (&self->hold, bw_hookup_hold_unref);
  bw_hookup_plans_free (self->plans);
  g_free (self->answer);
  G_OBJECT_CLASS (bw_hookup_page_parent_class)->finalize (object);
}

static void
bw_hookup_page_set_document (BwPage *page, BwDocument *document)
{
  BwHookupPage *self = BW_HOOKUP_PAGE (page);

  g_return_if_fail (self->document == NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "selection-changed", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
  update (self);
}

static void
bw_hookup_page_class_init (BwHookupPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_hookup_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = bw_hookup_page_finalize;
  GTK_WIDGET_CLASS (klass)->map = bw_hookup_page_map;
  BW_PAGE_CLASS (klass)->set_document = bw_hookup_page_set_document;
}

static void
bw_hookup_page_init (BwHookupPage *self)
{
  self->plans = bw_hookup_plans_new ();
  self->source = self->input = BW_NO_INDEX;
  self->stale = TRUE;
  self->panel = g_object_new (BW_TYPE_PICTURE_PANEL, NULL);
  self->controls = g_object_new (BW_TYPE_HOOKUP_CONTROLS, NULL);
  self->side = g_object_new (BW_TYPE_HOOKUP_SIDE, NULL);
  g_signal_connect_object (self->controls, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  bw_picture_panel_add_control (self->panel, GTK_WIDGET (self->controls));
  bw_picture_panel_set_cards (self->panel);
  bw_picture_panel_add_first (self->panel, bw_hookup_caution_new ());
  bw_picture_panel_add_side (self->panel, GTK_WIDGET (self->side));
  bw_page_add_view (BW_PAGE (self), "plan", _ ("Plan"), NULL, GTK_WIDGET (self->panel),
                    self->panel);
}

/**
 * bw_hookup_page_get_side:
 *
 * Returns: (transfer none): the lists of leads, parts and pins
 */
BwHookupSide *
bw_hookup_page_get_side (BwHookupPage *self)
{
  return self->side;
}

/**
 * bw_hookup_page_get_answer:
 *
 * Returns: (transfer none): the sentence over the drawing
 */
const char *
bw_hookup_page_get_answer (BwHookupPage *self)
{
  return self->answer != NULL ? self->answer : "";
}

/**
 * bw_hookup_page_ref_plan:
 * @lead: (out): the lead to the input; its type lives as long as the page
 *
 * Returns: (transfer full) (nullable): the plan that is shown
 */
BwHookupHold *
bw_hookup_page_ref_plan (BwHookupPage *self, BwLeadCase *lead)
{
  *lead = self->lead;
  return self->hold != NULL ? bw_hookup_hold_ref (self->hold) : NULL;
}

/**
 * bw_hookup_page_get_view:
 * @view: (out): valid until the page shows something else
 *
 * Returns: whether there is something to print
 */
gboolean
bw_hookup_page_get_view (BwHookupPage *self, BwHookupView *view)
{
  if (self->hold == NULL)
    return FALSE;
  *view = (BwHookupView){ bw_hookup_hold_get (self->hold), &self->lead,
                          bw_quantity_locale_mark () };
  return TRUE;
}

/**
 * bw_hookup_page_dup_name:
 *
 * Returns: (transfer full): a name for a file with what is shown, without suffix
 */
char *
bw_hookup_page_dup_name (BwHookupPage *self)
{
  const BwHookup *hookup = self->hold != NULL ? bw_hookup_hold_get (self->hold) : NULL;
  /* Translators: from the source to the input. */
  return hookup != NULL ? g_strdup_printf (_ ("%1$s to %2$s"), hookup->source, hookup->input)
                        : g_strdup (_ ("hook-up"));
}

/**
 * bw_hookup_page_count_plans:
 *
 * Returns: how often the planner has run
 */
guint
bw_hookup_page_count_plans (BwHookupPage *self)
{
  return bw_hookup_plans_count (self->plans);
}
