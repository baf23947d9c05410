/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "window.h"

G_BEGIN_DECLS

GtkPrintOperation *bw_print_operation_new (const BwSheet *sheet, const BwCatalogue *catalogue);
void bw_print_prepare (GtkPrintOperation *operation, const char *name);
void bw_print_run (BwWindow *window, GtkPrintOperation *operation, const char *failed);
void bw_print_sheet (BwWindow *window);

G_END_DECLS
