/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How the program ends. */
typedef enum
{
  BW_CLI_DONE = 0,
  BW_CLI_BAD_INPUT = 1, /* also: output that cannot be written */
  BW_CLI_WRONG_USAGE = 2
} BwCliExit;

typedef struct _BwCliCommand BwCliCommand;

/**
 * BwCliCommand:
 * @name: the word on the command line
 * @arguments: what follows the options, for the help
 * @at_least: how many arguments there must be
 * @at_most: how many there may be
 * @summary: one line for the list of commands, to be translated
 * @description: (nullable): more, for the help of the command, to be translated
 * @tables: whether it prints tables, which --csv gives to programs
 * @run: does the work; @args is the command's name and what stands after it
 */
struct _BwCliCommand
{
  const char *name;
  const char *arguments;
  guint at_least;
  guint at_most;
  const char *summary;
  const char *description;
  gboolean tables;
  BwCliExit (*run) (const BwCliCommand *command, char **args);
};

BwCliExit bw_cli_capacitor (const BwCliCommand *command, char **args);
BwCliExit bw_cli_catalogue (const BwCliCommand *command, char **args);
BwCliExit bw_cli_cause (const BwCliCommand *command, char **args);
BwCliExit bw_cli_detail (const BwCliCommand *command, char **args);
BwCliExit bw_cli_display (const BwCliCommand *command, char **args);
BwCliExit bw_cli_draw (const BwCliCommand *command, char **args);
BwCliExit bw_cli_edid (const BwCliCommand *command, char **args);
BwCliExit bw_cli_field_scan (const BwCliCommand *command, char **args);
BwCliExit bw_cli_fit (const BwCliCommand *command, char **args);
BwCliExit bw_cli_hookup (const BwCliCommand *command, char **args);
BwCliExit bw_cli_identify (const BwCliCommand *command, char **args);
BwCliExit bw_cli_levels (const BwCliCommand *command, char **args);
BwCliExit bw_cli_line_scan (const BwCliCommand *command, char **args);
BwCliExit bw_cli_pad (const BwCliCommand *command, char **args);
BwCliExit bw_cli_readings (const BwCliCommand *command, char **args);
BwCliExit bw_cli_report (const BwCliCommand *command, char **args);
BwCliExit bw_cli_sheet_check (const BwCliCommand *command, char **args);
BwCliExit bw_cli_solve (const BwCliCommand *command, char **args);
BwCliExit bw_cli_supply (const BwCliCommand *command, char **args);
BwCliExit bw_cli_sync (const BwCliCommand *command, char **args);
BwCliExit bw_cli_timing (const BwCliCommand *command, char **args);
BwCliExit bw_cli_waveform (const BwCliCommand *command, char **args);
BwCliExit bw_cli_work_back (const BwCliCommand *command, char **args);

G_END_DECLS
