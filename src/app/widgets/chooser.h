/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/base/kinds.h"

G_BEGIN_DECLS

#define BW_TYPE_CHOOSER (bw_chooser_get_type ())
G_DECLARE_FINAL_TYPE (BwChooser, bw_chooser, BW, CHOOSER, GtkBox)

BwChooser *bw_chooser_new (const char *name, const char *label);
void bw_chooser_shorten (BwChooser *self, int chars);
void bw_chooser_clear (BwChooser *self);
void bw_chooser_add (BwChooser *self, guint value, const char *words);
void bw_chooser_set_kinds (BwChooser *self, const BwKindTable *table, guint set);
void bw_chooser_choose (BwChooser *self, guint value);
guint bw_chooser_get (BwChooser *self);
guint bw_chooser_get_n (BwChooser *self);
GtkDropDown *bw_chooser_get_control (BwChooser *self);

G_END_DECLS
