/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "catalogue.h"
#include "line-view.h"

G_BEGIN_DECLS

BwCatalogue *test_catalogue (void);
char *test_scratch_folder (void);
void test_remove_folder (char *folder);
guint test_count_files (const char *folder);
char *test_run (const char *const *argv);
void test_labels_are_apart (const GArray *labels, double width, double height, const char *what);
gboolean test_labels_have (const GArray *labels, const char *text);
const BwLabel *test_find_label (const GArray *labels, const char *text, guint nth);

G_END_DECLS
