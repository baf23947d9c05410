/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli.h"

G_BEGIN_DECLS

/**
 * BwCliOptions:
 * @json: --json was given
 * @csv: --csv was given, which not every command takes
 * @keys: --keys was given: the form of the JSON is shown in place of it
 * @rest: what is no option, as it came; never %NULL, ends in %NULL
 * @n_rest: how many they are
 *
 * What every command takes.
 */
typedef struct
{
  gboolean json;
  gboolean csv;
  gboolean keys;
  gboolean help;
  char **rest;
  guint n_rest;
} BwCliOptions;

gboolean bw_cli_options_read (BwCliOptions *options, const BwCliCommand *command,
                              const GOptionEntry *own, char **args, BwCliExit *result);
void bw_cli_options_clear (BwCliOptions *options);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BwCliOptions, bw_cli_options_clear)

G_END_DECLS
