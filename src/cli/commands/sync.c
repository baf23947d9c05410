/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/drawing-options.h"
#include "cli/choose/raster-choice.h"
#include "core/sync/results.h"
#include "draw/base/export.h"
#include "draw/sync/view.h"

/* A sheet of A4 across has 1123 by 794 pixels of 1/96 inch. */
#define WIDTH 1120
#define HEIGHT 790

/* What the options say, all as it came; owned. */
typedef struct
{
  BwRasterChoice choice;
  char *raster;
  char *gate;
  char *h_polarity;
  char *v_polarity;
  char *field;
  char *offset;
  char *delay;
  char *loop;
  char *time_constant;
  char *rate_error;
  char *picture_width;
  BwDrawingOptions page;
} SyncOptions;

static void
clear_options (SyncOptions *own)
{
  char **all[] = { &own->raster,        &own->gate,       &own->h_polarity,   &own->v_polarity,
                   &own->field,         &own->offset,     &own->delay,        &own->loop,
                   &own->time_constant, &own->rate_error, &own->picture_width };
  bw_raster_choice_clear (&own->choice);
  bw_drawing_options_clear (&own->page);
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    g_clear_pointer (all[i], g_free);
}

/* The words that were chosen; polarities are those of the raster where not given. */
typedef struct
{
  guint gate;
  guint h_polarity;
  guint v_polarity;
  guint loop;
  BwDrawingPage page;
  int field;
} SyncWords;

static char *
read_words (const SyncOptions *own, SyncWords *words)
{
  const struct
  {
    const char *option;
    const char *raw;
    const BwKindTable *table;
    guint *value;
  } all[] = {
    { "--gate", own->gate, &bw_sync_gates, &words->gate },
    { "--h-polarity", own->h_polarity, &bw_polarities, &words->h_polarity },
    { "--v-polarity", own->v_polarity, &bw_polarities, &words->v_polarity },
    { "--loop", own->loop, &bw_afc_loops, &words->loop },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    {
      char *fault = bw_argument_word (all[i].option, all[i].table, all[i].raw, all[i].value);
      if (fault != NULL)
        return fault;
    }
  return NULL;
}

/* Returns what is wrong if an option was given without what it is for, a gate of H and V or a
 * drawing; NULL if none was. */
static char *
find_stray (const SyncOptions *own, const SyncWords *words)
{
  gboolean standard = words->gate == BW_SYNC_GATE_STANDARD;
  const char *stray = own->h_polarity != NULL   ? "--h-polarity"
                      : own->v_polarity != NULL ? "--v-polarity"
                      : own->offset != NULL     ? "--offset"
                                                : NULL;
  if (standard && stray != NULL)
    return g_strdup_printf (_ ("%s does not go with --gate standard"), stray);
  return NULL;
}

/* Returns what is wrong with the command line, or NULL. */
static char *
find_fault (const SyncOptions *own, const char *name, const BwCliOptions *options, SyncWords *words)
{
  if (own->raster != NULL && name != own->raster)
    return g_strdup_printf (_ ("%1$s and %2$s: one raster at a time"), "RASTER", "--raster");
  char *fault = bw_raster_choice_fault (&own->choice, name);
  if (fault == NULL && own->gate == NULL)
    fault = g_strdup (_ ("--gate is missing"));
  if (fault == NULL)
    fault = read_words (own, words);
  if (fault == NULL && own->field != NULL && strcmp (own->field, "1") != 0
      && strcmp (own->field, "2") != 0)
    fault = g_strdup (_ ("--field is 1 or 2"));
  if (fault == NULL)
    fault = find_stray (own, words);
  if (fault == NULL)
    fault = bw_drawing_options_fault (&own->page, bw_cli_drawings, options, &words->page.theme);
  if (fault == NULL && own->page.target != NULL)
    fault = bw_raster_choice_target_fault (&own->choice, own->page.target);
  words->field = g_strcmp0 (own->field, "2") == 0 ? 1 : 0;
  return fault;
}

/* A quantity that may be zero or less; left alone where it was not given. */
static gboolean
read_signed (const char *option, const char *raw, BwDimension dimension, double *value)
{
  g_autoptr (GError) error = NULL;
  if (raw == NULL)
    return TRUE;
  g_autofree char *text = bw_argument_utf8 (raw);
  if (bw_quantity_parse (text, dimension, bw_argument_mark (text), value, &error))
    return TRUE;
  bw_cli_complain ("%s: %s", option, error->message);
  return FALSE;
}

static gboolean
complain (const char *option, const GError *error)
{
  bw_cli_complain ("%s: %s", option, error->message);
  return FALSE;
}

static gboolean
make_case (const SyncOptions *own, const SyncWords *words, const BwRaster *raster,
           BwSyncMixCase *what)
{
  static const char *const options[] = {
    [BW_SYNC_MIX_ERROR_FIELD] = "--field",   [BW_SYNC_MIX_ERROR_KIND] = "--gate",
    [BW_SYNC_MIX_ERROR_OFFSET] = "--offset", [BW_SYNC_MIX_ERROR_DELAY] = "--delay",
    [BW_SYNC_MIX_ERROR_LINES] = "--raster",
  };
  g_autoptr (GError) error = NULL;

  bw_sync_mix_case_init (what, raster, words->gate);
  what->field = words->field;
  if (own->h_polarity != NULL)
    what->h_polarity = words->h_polarity;
  if (own->v_polarity != NULL)
    what->v_polarity = words->v_polarity;
  if (!read_signed ("--offset", own->offset, BW_DIMENSION_TIME, &what->v_offset_s)
      || !read_signed ("--delay", own->delay, BW_DIMENSION_TIME, &what->delay_s))
    return FALSE;
  return bw_sync_mix_check (what, &error) || complain (options[error->code], error);
}

static gboolean
make_afc (const SyncOptions *own, const SyncWords *words, const BwRaster *raster, BwSyncAfc *afc)
{
  static const char *const options[] = {
    [BW_SYNC_AFC_ERROR_LOOP] = "--loop",
    [BW_SYNC_AFC_ERROR_TIME_CONSTANT] = "--time-constant",
    [BW_SYNC_AFC_ERROR_RATE] = "--rate-error",
    [BW_SYNC_AFC_ERROR_WIDTH] = "--picture-width",
  };
  g_autoptr (GError) error = NULL;

  bw_sync_afc_init (afc, raster);
  if (own->loop != NULL)
    afc->loop = words->loop;
  if ((own->time_constant != NULL
       && !bw_argument_quantity ("--time-constant", own->time_constant, BW_DIMENSION_LINES,
                                 &afc->time_constant_lines))
      || !read_signed ("--rate-error", own->rate_error, BW_DIMENSION_FRACTION, &afc->rate_error)
      || (own->picture_width != NULL
          && !bw_argument_quantity ("--picture-width", own->picture_width, BW_DIMENSION_LENGTH,
                                    &afc->picture_width_m)))
    return FALSE;
  return bw_sync_afc_check (afc, raster, &error) || complain (options[error->code], error);
}

/* Output */

static gboolean
write_drawing (const SyncOptions *own, BwDrawingPage *page, const BwSyncMixCase *what,
               const BwSyncAfc *afc)
{
  g_autoptr (GError) error = NULL;
  const BwSyncView view = { .what = what, .afc = afc, .mark = bw_quantity_locale_mark () };
  const BwInk ink = { page->theme, NULL, BW_INK_SCREEN_DPI };
  const char *target = own->page.target;

  page->width = WIDTH;
  page->height = HEIGHT;
  if (!bw_drawing_options_page (&own->page, page))
    return FALSE;
  g_autoptr (BwDrawing) drawing = bw_sync_drawing (&view, page->width, page->height, &ink);
  g_autoptr (GBytes) bytes = bw_export_drawing_bytes (drawing, what->raster->name,
                                                      bw_cli_target_name (target, bw_cli_drawings),
                                                      &error);
  if (bytes != NULL)
    return bw_cli_write (target, bytes);
  bw_cli_fault (error->message);
  return FALSE;
}

/* With -o people get the drawing and no text; scripts get the figures as well. */
static BwCliExit
print_all (const BwSyncMixCase *what, const BwSyncAfc *afc, const char *target,
           const BwCliOptions *options)
{
  if (target != NULL && !options->json && !options->csv && !options->keys)
    return BW_CLI_DONE;
  g_autoptr (BwSyncMix) mix = bw_sync_mix_new (what);
  g_autoptr (BwSyncRun) run = bw_sync_run_new (mix, afc);
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_sync_say (bw_result_root (result), mix, afc, run);
  if (target != NULL)
    bw_node_member (bw_result_root (result), bw_value_words ("drawing", target));
  return bw_cli_show (options, result);
}

static BwCliExit
run_sync (const BwCliCommand *command, const SyncOptions *own, const BwCliOptions *options)
{
  const char *name = options->rest[0] != NULL ? options->rest[0] : own->raster;
  SyncWords words = { 0 };
  g_autofree char *fault = find_fault (own, name, options, &words);
  BwSyncMixCase what;
  BwSyncAfc afc;

  if (fault != NULL)
    return bw_cli_wrong_usage (command->name, fault);
  g_autoptr (BwChosenRaster) chosen = bw_raster_choice_make (&own->choice, name);
  if (chosen == NULL || !make_case (own, &words, chosen->raster, &what)
      || !make_afc (own, &words, chosen->raster, &afc))
    return BW_CLI_BAD_INPUT;
  if (own->page.target != NULL && !write_drawing (own, &words.page, &what, &afc))
    return BW_CLI_BAD_INPUT;
  return print_all (&what, &afc, own->page.target, options);
}

/**
 * bw_cli_sync:
 *
 * breezeway-cli sync: one sync signal made of H and V, and what an AFC makes of it, as text, JSON or
 * a drawing.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_sync (const BwCliCommand *command, char **args)
{
  SyncOptions own = { 0 };
  g_autoptr (GArray) entries = bw_raster_choice_entries (&own.choice);
  const GOptionEntry others[] = {
    { "raster", 'r', 0, G_OPTION_ARG_FILENAME, &own.raster, N_ ("The same as RASTER"), N_ ("ID") },
    { "gate", 'g', 0, G_OPTION_ARG_FILENAME, &own.gate,
      N_ ("How H and V are combined: and, or, xor, xnor; standard is the raster's own"),
      N_ ("and|or|xor|xnor|standard") },
    { "h-polarity", 0, 0, G_OPTION_ARG_FILENAME, &own.h_polarity,
      N_ ("Of H as it arrives: negative or positive; without it the raster's"),
      N_ ("negative|positive") },
    { "v-polarity", 0, 0, G_OPTION_ARG_FILENAME, &own.v_polarity, N_ ("Likewise of V"),
      N_ ("negative|positive") },
    { "field", 0, 0, G_OPTION_ARG_FILENAME, &own.field, N_ ("1 or 2; without it 1"), N_ ("1|2") },
    { "offset", 0, 0, G_OPTION_ARG_FILENAME, &own.offset,
      N_ ("How much later than H the edges of V come"), N_ ("TIME") },
    { "delay", 0, 0, G_OPTION_ARG_FILENAME, &own.delay, N_ ("Of the gate or the sync separator"),
      N_ ("TIME") },
    { "loop", 0, 0, G_OPTION_ARG_FILENAME, &own.loop,
      N_ ("The AFC: first or second order; without it second"), N_ ("first|second") },
    { "time-constant", 0, 0, G_OPTION_ARG_FILENAME, &own.time_constant,
      N_ ("Of the AFC; without it 10 lines"), N_ ("LINES") },
    { "rate-error", 0, 0, G_OPTION_ARG_FILENAME, &own.rate_error,
      N_ ("By how much its own line period is too long; without it 1 %"), N_ ("SHARE") },
    { "picture-width", 0, 0, G_OPTION_ARG_FILENAME, &own.picture_width,
      N_ ("On the tube, to give the bend as a length"), N_ ("LENGTH") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &own.page.target,
      N_ ("Draw it into a file; the name ends in .svg, .pdf or .png"), N_ ("FILE") },
    BW_DRAWING_LOOK_ENTRIES (own.page),
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  g_array_append_vals (entries, others, G_N_ELEMENTS (others));
  if (bw_cli_options_read (&options, command, (const GOptionEntry *) entries->data, args, &result))
    result = run_sync (command, &own, &options);
  clear_options (&own);
  return result;
}
