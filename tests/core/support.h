/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/catalogue.h"
#include "core/bench/sheet.h"

G_BEGIN_DECLS

/* What the tests of the core share. */

void bw_test_init (int *argc, char ***argv);

/* Files of the source tree, and the shipped catalogue (made on first use, never freed). */
char *bw_test_reference (const char *name);
char *bw_test_demo_path (void);
char *bw_test_read (const char *path, gsize *length);
const BwCatalogue *bw_test_catalogue (void);

/* A folder of its own for one test, removed with what is in it. */
char *bw_test_folder_new (void);
void bw_test_folder_remove (char *folder);
char *bw_test_in_folder (const char *folder, const char *name, const char *text);
void bw_test_assert_content (const char *path, const char *wanted);
guint bw_test_count_files (const char *folder);

/* Runs @work in a process of its own, which may change its user, its limits or what is mounted, and
 * returns what @work returns; −1 if a signal ended it. */
int bw_test_in_child (int (*work) (gpointer data), gpointer data);

/* Faults as the readers of files collect them. */
GPtrArray *bw_test_faults_new (void);
gboolean bw_test_no_faults (GPtrArray *faults);
gboolean bw_test_has_fault (GPtrArray *faults, GQuark domain, int code, const char *const *words);

/**
 * BwTable:
 *
 * A table of tests/reference: lines of fields parted by tabs, the first line the heads.
 */
typedef struct
{
  char **heads;
  GPtrArray *rows; /* owned char ** */
} BwTable;

BwTable *bw_test_table_new (const char *name);
void bw_test_table_free (BwTable *table);
const char *bw_test_cell (const BwTable *table, guint row, const char *head);
double bw_test_number (const BwTable *table, guint row, const char *head);
double bw_test_last_place (const char *number);

const BwRaster *bw_test_raster (const char *id);
BwSheet *bw_test_demo (void);

/* Asserts that @got lies within @tolerance of @wanted, and says how far off it is if not. */
void bw_test_near (double got, double wanted, double tolerance);

/* Asserts that @text holds every one of the words, a list that ends in NULL. A number must be there as a whole, with no
 * digit more before it or after it. */
void bw_test_assert_words (const char *text, const char *const *words);

/* Runs a script of tests/core, which needs Debian's python3-numpy, and returns what it prints. */
char *bw_test_python (const char *script, const char *const *words, const char *input,
                      gboolean *well);

/* A short word for a test path: what may not stand in one becomes "-". */
char *bw_test_path_word (const char *text);

#define WORDS(...) ((const char *const[]){ __VA_ARGS__, NULL })

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwTable, bw_test_table_free)

G_END_DECLS
