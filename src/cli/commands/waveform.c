/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/choose/target.h"
#include "cli/choose/waveform-options.h"

/* What is wrong with the file and its options, or NULL. */
static char *
find_fault (const BwWaveformOptions *own, const char *sheet, const BwCliOptions *options,
            guint *theme)
{
  const char *target = own->page.target;
  char *fault = target == NULL
                    ? g_strdup (_ ("-o FILE is missing"))
                    : bw_drawing_options_fault (&own->page, bw_waveform_files, options, theme);
  if (fault != NULL)
    return fault;
  if (own->span != NULL && strcmp (own->span, "frame") == 0 && !bw_waveform_is_samples (target))
    return g_strdup (_ ("--span frame goes with a .csv file only"));
  if (bw_waveform_is_samples (target) && (own->page.theme != NULL || own->page.size != NULL))
    return g_strdup_printf (_ ("%s goes with a drawing only"),
                            own->page.theme != NULL ? "--theme" : "--size");
  if (bw_target_is (target, sheet))
    return g_strdup (_ ("the waveform would replace its own sheet"));
  return NULL;
}

static BwCliExit
run_waveform (const BwCliCommand *command, const BwWaveformOptions *own,
              const BwCliOptions *options)
{
  const char *sheet = options->rest[0];
  BwDrawingPage page = { 0 };
  g_auto (BwWaveform) waveform = { 0 };
  g_autofree char *fault = find_fault (own, sheet, options, &page.theme);

  if (fault != NULL)
    return bw_cli_wrong_usage (command->name, fault);
  if (!bw_drawing_options_page (&own->page, &page))
    return BW_CLI_BAD_INPUT;
  BwCliExit result = bw_waveform_choose (own, command->name, sheet, &waveform);
  return result == BW_CLI_DONE ? bw_waveform_write (options, &waveform, own->page.target, &page)
                               : result;
}

/**
 * bw_cli_waveform:
 *
 * breezeway-cli waveform: a test signal as samples or as a drawing, of a standard or as a source of
 * a bench sheet gives it to an input.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_waveform (const BwCliCommand *command, char **args)
{
  BwWaveformOptions own = { .line = BW_WAVEFORM_ANY_LINE };
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &own.page.target,
      N_ ("Where to write it; the name ends in .csv, .svg, .pdf or .png"), N_ ("FILE") },
    { "system", 0, 0, G_OPTION_ARG_FILENAME, &own.system,
      N_ ("The colour system, such as ntsc-m, pal-b or none"), N_ ("ID") },
    { "kind", 'k', 0, G_OPTION_ARG_FILENAME, &own.kind,
      N_ ("The signal kind: rgb, component, yc, composite or luminance"), N_ ("KIND") },
    { "sync", 0, 0, G_OPTION_ARG_FILENAME, &own.sync,
      N_ ("The sync kind: separate, composite-sync, on-green, on-y or in-video"), N_ ("KIND") },
    { "raster", 'r', 0, G_OPTION_ARG_FILENAME, &own.raster,
      N_ ("The raster; without it that of the colour system"), N_ ("ID") },
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &own.source, N_ ("With SHEET: the source"),
      N_ ("NAME") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &own.input, N_ ("With SHEET: the input"),
      N_ ("NAME") },
    { "content", 0, 0, G_OPTION_ARG_FILENAME, &own.content,
      N_ ("bars, ramp, multiburst, pulse-and-window or crosshatch; without it bars"),
      N_ ("CONTENT") },
    { "bars", 'b', 0, G_OPTION_ARG_FILENAME, &own.bars,
      N_ ("Bars of 75 or 100 per cent, or EBU bars (100/0/75/0); without it 75"), N_ ("75|100|ebu") },
    { "span", 0, 0, G_OPTION_ARG_FILENAME, &own.span,
      N_ ("How much of it: line, field or frame; without it a line"), N_ ("line|field|frame") },
    { "line", 0, 0, G_OPTION_ARG_INT, &own.line,
      N_ ("The line, or the first one, as the raster numbers them"), N_ ("N") },
    { "frame", 0, 0, G_OPTION_ARG_INT, &own.frame, N_ ("The frame of the colour sequence, from 0"),
      N_ ("N") },
    { "rate", 0, 0, G_OPTION_ARG_FILENAME, &own.rate,
      N_ ("Samples a second; without it 4 times the subcarrier, or 13.5 MHz"), N_ ("FREQUENCY") },
    { "loads", 0, 0, G_OPTION_ARG_FILENAME, &own.loads,
      N_ ("Loads of 75 Ω on the line: none, one or two; without it one"), N_ ("none|one|two") },
    BW_DRAWING_LOOK_ENTRIES (own.page),
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = run_waveform (command, &own, &options);
  bw_waveform_options_clear (&own);
  return result;
}
