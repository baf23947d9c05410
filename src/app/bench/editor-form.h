/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"

G_BEGIN_DECLS

void bw_editor_form_build (GtkBox *form, BwDocument *document, BwPart part, GPtrArray *rows);

G_END_DECLS
