/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/base/cli.h"

#include <locale.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/help.h"
#include "cli/base/output.h"
#include "core/result/listing.h"

static const BwCliCommand commands[] = {
  { "timing", N_ ("[RASTER]"), 0, 1, N_ ("Show the timing of a raster, or list the rasters"),
    N_ ("RASTER is an id, such as cta-861-vic-5, or another name of one. In place of it, an option "
        "computes a raster, reads one, or makes one for a monitor."),
    TRUE, bw_cli_timing },
  { "identify", "", 0, 0, N_ ("Find the raster that agrees with what was read"),
    N_ ("At least one rate is needed."), TRUE, bw_cli_identify },
  { "solve", N_ ("NAME=QUANTITY…"), 0, G_MAXUINT, N_ ("Work out what follows from known figures"),
    N_ ("Such as line-rate=15.734kHz; --list names the figures."), TRUE, bw_cli_solve },
  { "levels", "", 0, 0, N_ ("Show the levels and colour bars of a signal"),
    N_ ("Such as --system ntsc-m --kind composite --bars 75."), TRUE, bw_cli_levels },
  { "readings", N_ ("NAME=QUANTITY…"), 0, G_MAXUINT,
    N_ ("Hold readings of a scope against a standard's limits"),
    N_ ("Such as line_sync=4.7us; --list names the standards, and the readings of one."), TRUE,
    bw_cli_readings },
  { "cause", N_ ("[SHEET]"), 0, 1,
    N_ ("Find what is likely wrong from the levels that a scope reads"),
    N_ ("Of a bench sheet, with --source and --input, or of a standard, with --system and --kind. "
        "Such as --system pal-b --kind composite --white 1.4V --sync-level 0.6V."),
    TRUE, bw_cli_cause },
  { "detail", N_ ("[SHEET]"), 0, 1, N_ ("Show what a tube, a path and a source can resolve"),
    N_ ("Of a bench sheet, with --source and --input, or of a tube, with --diagonal, --aspect and "
        "--mask. Options beside a sheet stand in place of its figures."),
    TRUE, bw_cli_detail },
  { "pad", "", 0, 0, N_ ("Work out the resistor that brings sync to an input's level"),
    N_ ("Such as --from 5V --to 300mV --driver 50ohm; --match --driver 75ohm --load 50ohm; "
        "--loss 6dB."),
    TRUE, bw_cli_pad },
  { "work-back", "", 0, 0, N_ ("From readings back to source, driver, load or setting"),
    N_ ("Such as --open 2.45V --loaded 380mV; --level 1V --behind 282ohm --wanted 0.7V; "
        "--drop 3V,2.5V,100ohm; --driver 5V,470ohm --driver 5V,1kohm; --pin 8 --reading 4.9V; "
        "--subcarrier 3.5756MHz."),
    TRUE, bw_cli_work_back },
  { "capacitor", "", 0, 0, N_ ("Judge an electrolytic capacitor, its life and its replacement"),
    N_ ("Such as --value 1000uF --voltage 35V --measured 850uF --esr 0.2ohm --at 120Hz."), FALSE,
    bw_cli_capacitor },
  { "field-scan", "", 0, 0, N_ ("Show what the coupling capacitor makes of the field's scan"),
    N_ ("Such as --capacitor 1000uF --resistance 12ohm --field-rate 50Hz; --rows 22,18,12 finds the "
        "capacitor from a test picture."),
    FALSE, bw_cli_field_scan },
  { "line-scan", "", 0, 0, N_ ("Work out voltage, retrace and current of a line output stage"),
    N_ ("Such as --supply 130V --inductance 1.2mH --capacitor 9.1nF --scan 52.6us."), FALSE,
    bw_cli_line_scan },
  { "supply", "", 0, 0, N_ ("Hold the mains against a rating plate; hum bars and ripple"),
    N_ ("Such as --mains 230V,50Hz --plate 100-120V,50/60Hz,2.4A --field-rate 59.94Hz."), FALSE,
    bw_cli_supply },
  { "draw", N_ ("[RASTER]"), 0, 1,
    N_ ("Draw the line, the field or the map of a raster into a file"),
    N_ ("--view and -o FILE must be given. RASTER as for timing."), FALSE, bw_cli_draw },
  { "waveform", N_ ("[SHEET]"), 0, 1, N_ ("Write a test signal as samples or as a drawing"),
    N_ ("-o FILE must be given. Of a standard, with --system and --kind, or as a source of a bench "
        "sheet gives it to an input, with --source and --input."),
    FALSE, bw_cli_waveform },
  { "sync", N_ ("[RASTER]"), 0, 1,
    N_ ("Combine H and V into one sync, for what an AFC makes of it"),
    N_ ("--gate must be given. RASTER as for timing."), TRUE, bw_cli_sync },
  { "edid", N_ ("SHEET"), 1, 1, N_ ("Write an EDID for the monitor of a bench sheet"),
    N_ ("-o FILE must be given. What the EDID cannot say is told on standard error."), FALSE,
    bw_cli_edid },
  { "display", N_ ("[FILE|CONNECTOR]"), 0, 1,
    N_ ("Say what the EDID of a display tells, and make a bench sheet of it"),
    N_ ("Of a file, or of a display that --list names. -o FILE writes the sheet; what the EDID does not "
        "say is told on standard error."),
    TRUE, bw_cli_display },
  { "fit", N_ ("SHEET"), 1, 1, N_ ("Judge each source of a bench sheet at each input"),
    N_ ("A verdict is direct, direct so far, tight, with parts, or no."), TRUE, bw_cli_fit },
  { "hookup", N_ ("SHEET"), 1, 1, N_ ("Plan how a source of a bench sheet comes to an input"),
    N_ ("Leads pin by pin, parts, adaptors and settings. With one source or one input in the sheet "
        "its option may be left out."),
    FALSE, bw_cli_hookup },
  { "sheet-check", N_ ("[SHEET]"), 0, 1, N_ ("Say what is wrong with a bench sheet"),
    N_ ("Each fault is one line on standard error. --list tells every key of the file."), TRUE,
    bw_cli_sheet_check },
  { "report", N_ ("SHEET"), 1, 1, N_ ("Write the report of a bench sheet as a PDF"),
    N_ ("-o FILE must be given."), FALSE, bw_cli_report },
  { "catalogue", "[rasters|monitors|sources|adaptors]", 0, 1,
    N_ ("List what the catalogue holds, your own entries among it"), NULL, TRUE, bw_cli_catalogue },
};

static const BwCliCommand *
find_command (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (strcmp (commands[i].name, name) == 0)
      return &commands[i];
  return NULL;
}

static BwCliExit
print_help (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (BwListing) listing = bw_listing_new (2);

  g_string_append (text, _ ("Usage:\n"
                            "  breezeway-cli COMMAND [OPTION…] [ARGUMENT]\n"
                            "  breezeway-cli help COMMAND\n"
                            "  breezeway-cli --version\n"
                            "\n"
                            "Video signal and timing calculation for the repair bench.\n"
                            "\n"
                            "Commands:\n"));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    bw_listing_add_row (listing,
                        (const char *[]){ commands[i].name, _ (commands[i].summary), NULL });
  bw_listing_append_to (listing, text, 2, 0);
  g_string_append (text, _ ("\n"
                            "Exit status: 0 done, 1 bad input or no output, 2 wrong usage.\n"));
  return bw_cli_print (text->str);
}

static BwCliExit
run_command (const char *name, char **args)
{
  const BwCliCommand *command = find_command (name);
  if (command != NULL)
    return command->run (command, args);
  g_autofree char *says = g_strdup_printf (*name == '-' ? _ ("there is no option “%s”")
                                                        : _ ("there is no command “%s”"),
                                           name);
  return bw_cli_wrong_usage (NULL, says);
}

static BwCliExit
run_help (char **args)
{
  guint n = g_strv_length (args);
  gboolean json = n > 1 && strcmp (args[n - 1], "--json") == 0;
  guint words = n - (json ? 2 : 1);
  if (words == 0)
    return json ? bw_cli_help_of_all (commands, G_N_ELEMENTS (commands)) : print_help ();
  if (words > 1)
    return bw_cli_wrong_usage (NULL, _ ("help takes one command"));
  char *help[] = { args[1], (char[]){ "--help" }, json ? (char[]){ "--json" } : NULL, NULL };
  return run_command (args[1], help);
}

static BwCliExit
run (char **args)
{
  const char *name = args[0];
  if (name == NULL)
    return bw_cli_wrong_usage (NULL, _ ("a command is missing"));
  if (strcmp (name, "help") == 0)
    return run_help (args);
  gboolean wants_help = strcmp (name, "--help") == 0 || strcmp (name, "-h") == 0;
  gboolean wants_version = strcmp (name, "--version") == 0;
  if ((wants_help || wants_version) && args[1] != NULL)
    {
      g_autofree char *says = g_strdup_printf (_ ("nothing may follow %s"), name);
      return bw_cli_wrong_usage (NULL, says);
    }
  if (wants_help)
    return print_help ();
  if (wants_version)
    return bw_cli_print ("breezeway-cli " BW_VERSION "\n");
  return run_command (name, args);
}

int
main (int argc, char **argv)
{
  bw_cli_guard_streams ();
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, BW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  g_set_prgname ("breezeway-cli");
  return run (argc > 0 ? argv + 1 : argv);
}
