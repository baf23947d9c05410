/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "manual.h"

G_BEGIN_DECLS

GtkTextBuffer *bw_manual_buffer_new (const BwManualPage *page);

G_END_DECLS
