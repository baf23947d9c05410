/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BwContextItem:
 * @label: with an access key; to be translated where it is shown
 * @activate: what it does
 * @can: (nullable): whether it can be done now; %NULL if always
 */
typedef struct
{
  const char *label;
  void (*activate) (gpointer owner);
  gboolean (*can) (gpointer owner);
} BwContextItem;

/**
 * BwContextPointFunc:
 *
 * Called before the menu opens under the pointer, so that what lies there becomes what is meant.
 */
typedef void (*BwContextPointFunc) (gpointer owner, double x, double y);

void bw_context_menu_add (GtkWidget *widget, const BwContextItem *items, guint n_items,
                          BwContextPointFunc point, gpointer owner);

G_END_DECLS
