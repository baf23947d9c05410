/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/hookup/page.h"
#include "window.h"

G_BEGIN_DECLS

GtkPrintOperation *bw_hookup_print_operation_new (BwHookupPage *page, const char *title);
void bw_print_hookup (BwWindow *window);

G_END_DECLS
