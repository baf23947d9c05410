/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* Runs breezeway-cli, whose path is in BW_CLI, and reads what it prints and the tables of
 * published figures. */

typedef struct
{
  int status; /* exit status; -1 if a signal ended it */
  char *out;
  char *err;
} Run;

Run *run_argv (const char *const *argv, char **environment);
Run *run_args (const char *const *args);
Run *run_cli (const char *first, ...) G_GNUC_NULL_TERMINATED;
Run *run_cli_in (char **environment, const char *first, ...) G_GNUC_NULL_TERMINATED;
void run_free (Run *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Run, run_free)

void assert_one_line (const char *text);
void assert_refused (const Run *run, int status, const char *says);
guint count_lines (const char *text);

JsonObject *parse_object (const char *text);
JsonObject *run_json (const Run *run);
JsonObject *timing_of (const char *id);
double figure_of (JsonObject *object, const char *key);
gboolean is_null (JsonObject *object, const char *key);
gboolean is_near (double a, double b, double tolerance);
gsize index_of (const char *const *list, gsize n, const char *word);
void assert_keys_begin_with (JsonObject *object, const char *const *keys);

double whole_frame (JsonObject *timing);
gboolean is_positive (JsonObject *timing, const char *key);

#define N_VERDICTS 5

JsonObject *fit_json (const char *path);
JsonObject *cell_at (JsonObject *root, guint i);
guint n_cells (JsonObject *root);
gsize verdict_of (JsonObject *one_cell);

char *source_path (const char *below_root);
char *demo_path (void);
char *read_text (const char *path);
char *demo_with (const char *from, const char *to);
char *scratch_folder (void);
char *write_scratch (const char *folder, const char *name, const char *text);
void remove_scratch (const char *folder);

GPtrArray *read_table (const char *name);
const char *cell (GHashTable *row, const char *column);
double number (GHashTable *row, const char *column);

G_END_DECLS
