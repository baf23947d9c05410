/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "empty-page.h"

#include <glib/gi18n-lib.h>

#include "button-name.h"
#include "template.h"

/**
 * BwEmptyPage:
 *
 * What a page shows while the sheet has nothing for it: what the page is for, and what to do first.
 */
struct _BwEmptyPage
{
  GtkWidget parent_instance;

  GtkLabel *title;
  GtkLabel *text;
  GtkButton *first;
  GtkWidget *demo;
};

G_DEFINE_FINAL_TYPE (BwEmptyPage, bw_empty_page, GTK_TYPE_WIDGET)

static void
bw_empty_page_dispose (GObject *object)
{
  bw_dispose_template (object, BW_TYPE_EMPTY_PAGE);
  G_OBJECT_CLASS (bw_empty_page_parent_class)->dispose (object);
}

static void
bw_empty_page_class_init (BwEmptyPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_empty_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/empty-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BwEmptyPage, title);
  gtk_widget_class_bind_template_child (widget_class, BwEmptyPage, text);
  gtk_widget_class_bind_template_child (widget_class, BwEmptyPage, first);
  gtk_widget_class_bind_template_child (widget_class, BwEmptyPage, demo);
}

static void
bw_empty_page_init (BwEmptyPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_name_buttons (GTK_WIDGET (self));
}

static void
show (BwEmptyPage *self, const char *title, const char *text, const char *label, const char *action)
{
  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->text, text);
  gtk_button_set_label (self->first, label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->first), action);
}

/* Where the figure that is lacking is entered. */
static void
show_lack (BwEmptyPage *self, const BwLack *lack)
{
  static const struct
  {
    const char *label, *action;
  } ways[] = {
    [BW_OWNER_MONITOR] = { N_ ("Edit the _Monitor"), "win.edit-monitor" },
    [BW_OWNER_INPUT] = { N_ ("Edit the _Input"), "win.edit-input" },
    [BW_OWNER_SOURCE] = { N_ ("Edit the _Source"), "win.edit-source" },
    [BW_OWNER_SHEET] = { N_ ("Edit the _Sheet"), "win.edit-sheet" },
  };
  g_autofree char *name = bw_lack_name (lack);
  g_autofree char *title = g_strdup_printf (_ ("Not known: %s"), name);

  show (self, title,
        _ ("What stands here follows from it. Enter it from the plate, from papers or as it is "
           "measured; or take an entry of the catalogue, whose figures are those of a class of "
           "sets."),
        _ (ways[lack->owner].label), ways[lack->owner].action);
}

/**
 * bw_empty_page_update:
 * @lack: (nullable): a figure that the page cannot do without
 *
 * Says what @document lacks.
 *
 * Returns: whether it lacks something, so that the page must be shown
 */
gboolean
bw_empty_page_update (BwEmptyPage *self, BwDocument *document, const BwLack *lack)
{
  gboolean blank = bw_document_is_blank (document);

  gtk_widget_set_visible (self->demo, blank);
  if (blank)
    show (self, _ ("Nothing on the bench yet"),
          _ ("A bench sheet holds one monitor, its inputs, and the sources that must work on it. "
             "Breezeway works out which source shows at which input: as it is, only just, with "
             "parts, or not at all, and why."),
          _ ("Choose a _Monitor…"), "win.choose-monitor");
  else if (bw_document_count (document, BW_PART_INPUT) == 0)
    show (self, _ ("The monitor has no inputs"),
          _ ("An input says which signal and sync kinds it takes, and at which levels."),
          _ ("Add an _Input…"), "win.add-input");
  else if (bw_document_count (document, BW_PART_SOURCE) == 0)
    show (self, _ ("No sources yet"),
          _ ("A source is what must show on this monitor: a player, a camera, a computer. Take one "
             "from the catalogue and change what differs."),
          _ ("Add a _Source…"), "win.add-source");
  else if (lack != NULL && lack->field != NULL)
    show_lack (self, lack);
  else
    return FALSE;
  return TRUE;
}
