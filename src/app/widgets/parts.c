/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "parts.h"

#include "template.h"

/**
 * BwParts:
 *
 * A page in parts, of which one is shown, with a row of buttons that choose it.
 */
struct _BwParts
{
  GtkWidget parent_instance;

  GtkStack *stack;
};

G_DEFINE_FINAL_TYPE (BwParts, bw_parts, GTK_TYPE_WIDGET)

static void
bw_parts_dispose (GObject *object)
{
  bw_dispose_template (object, BW_TYPE_PARTS);
  G_OBJECT_CLASS (bw_parts_parent_class)->dispose (object);
}

static void
bw_parts_class_init (BwPartsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_parts_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/breezeway/Breezeway/parts.ui");
  gtk_widget_class_bind_template_child (widget_class, BwParts, stack);
}

static void
bw_parts_init (BwParts *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bw_parts_add:
 * @part: (transfer floating)
 * @name: for bw_parts_show()
 * @title: on its button
 */
void
bw_parts_add (BwParts *self, GtkWidget *part, const char *name, const char *title)
{
  gtk_stack_add_titled (self->stack, part, name, title);
}

/**
 * bw_parts_show:
 * @name: of a part
 */
void
bw_parts_show (BwParts *self, const char *name)
{
  gtk_stack_set_visible_child_name (self->stack, name);
}

/**
 * bw_parts_get_shown:
 *
 * Returns: (transfer none) (nullable): the name of the part that is shown
 */
const char *
bw_parts_get_shown (BwParts *self)
{
  return gtk_stack_get_visible_child_name (self->stack);
}
