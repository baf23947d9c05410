/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-choice.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "bench.h"
#include "cell.h"
#include "cli/base/arguments.h"
#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "cli/base/streams.h"
#include "core/bench/tube-raster.h"
#include "core/interchange/interchange.h"
#include "core/raster/standards.h"

/* Where a chosen raster comes from. Each function returns NULL if it cannot be had, having said
 * why in one line on standard error. */

static BwChosenRaster *
chosen_new (BwRaster *raster)
{
  BwChosenRaster *chosen = g_new0 (BwChosenRaster, 1);
  chosen->raster = raster;
  chosen->aspect = BW_RATIO_NONE;
  return chosen;
}

/**
 * bw_chosen_raster_free:
 * @chosen: (transfer full): freed with its raster
 */
void
bw_chosen_raster_free (BwChosenRaster *chosen)
{
  g_clear_pointer (&chosen->raster, bw_raster_free);
  g_clear_pointer (&chosen->answers, g_ptr_array_unref);
  g_clear_pointer (&chosen->notes, g_ptr_array_unref);
  g_free (chosen);
}

/* Takes @raster and @error, of which one is NULL. */
static BwChosenRaster *
chosen_or_complain (BwRaster *raster, const char *option, const GError *error)
{
  if (raster != NULL)
    return chosen_new (raster);
  bw_cli_complain ("%s: %s", option, error->message);
  return NULL;
}

/* The catalogue */

static void
no_such_raster (const BwCatalogue *catalogue, const char *wanted)
{
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < rasters->len; i++)
    g_ptr_array_extend_and_steal (names, bw_raster_names (rasters->pdata[i]));
  g_autofree char *nearest = bw_nearest_names (names, wanted, 3);
  bw_cli_complain (_ ("there is no raster “%1$s”; the nearest are %2$s"), wanted, nearest);
}

static BwChosenRaster *
from_catalogue (const char *raw)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autofree char *name = bw_argument_utf8 (raw);
  const BwRaster *raster = bw_catalogue_raster (catalogue, name);
  if (raster != NULL)
    return chosen_new (bw_raster_copy (raster));
  no_such_raster (catalogue, name);
  return NULL;
}

/* Formulas */

typedef BwRaster *(*FormulaFunc) (const BwFormulaRequest *request, GError **error);
typedef BwRaster *(*FromRateFunc) (const BwFormulaRequest *request, BwRatio rate_hz,
                                   GError **error);

static BwChosenRaster *
from_formula (const char *option, const char *raw, FormulaFunc formula, gboolean has_reduced)
{
  BwFormulaRequest request;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_argument_utf8 (raw);

  if (!bw_formula_request_parse (text, &request, &error))
    return chosen_or_complain (NULL, option, error);
  if (request.reduced && !has_reduced)
    {
      bw_cli_complain (_ ("%s: only CVT has reduced blanking"), option);
      return NULL;
    }
  BwRaster *raster = formula (&request, &error);
  return chosen_or_complain (raster, option, error);
}

static BwChosenRaster *
from_rate (const BwRasterChoice *choice, const char *option, const char *raw, FromRateFunc formula)
{
  BwFormulaRequest request = { .interlaced = choice->interlaced, .margins = choice->margins };
  g_autoptr (GError) error = NULL;
  BwRatio rate_hz;

  if (!bw_argument_rate (option, raw, &rate_hz)
      || !bw_argument_size ("--active", choice->active, &request.width, &request.height))
    return NULL;
  BwRaster *raster = formula (&request, rate_hz, &error);
  return chosen_or_complain (raster, option, error);
}

/* Interchange */

static BwChosenRaster *
from_modeline (const char *raw)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_argument_utf8 (raw);
  BwRaster *raster = bw_modeline_parse (text, &error);
  return chosen_or_complain (raster, "--modeline", error);
}

/* At most one byte more than the longest EDID, whatever kind of file it is. */
static gboolean
read_bytes (const char *path, GByteArray *bytes)
{
  FILE *file = strcmp (path, "-") == 0 ? fdopen (dup (STDIN_FILENO), "rb") : g_fopen (path, "rb");
  int trouble = errno;

  if (file != NULL)
    {
      g_byte_array_set_size (bytes, BW_EDID_MAX_BYTES + 1);
      gsize length = fread (bytes->data, 1, bytes->len, file);
      trouble = ferror (file) ? errno : 0;
      g_byte_array_set_size (bytes, (guint) length);
      fclose (file);
    }
  if (trouble == 0)
    return TRUE;
  g_autofree char *says = g_strdup_printf (_ ("%1$s: cannot be read: %2$s"),
                                           bw_cli_input_name (path), g_strerror (trouble));
  bw_cli_fault (says);
  return FALSE;
}

static BwEdid *
read_edid (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GByteArray) bytes = g_byte_array_new ();

  if (!read_bytes (path, bytes))
    return NULL;
  BwEdid *edid = bw_edid_parse (bytes->data, bytes->len, &error);
  if (edid == NULL)
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", bw_cli_input_name (path), error->message);
      bw_cli_fault (says);
    }
  return edid;
}

static BwChosenRaster *
no_such_timing (const char *path, const BwEdid *edid, int which)
{
  guint n = edid->timings->len;
  const char *file = bw_cli_input_name (path);
  g_autofree char *says = NULL;

  if (n == 0 && edid->notes->len > 0)
    says = g_strdup_printf (_ ("%1$s: this EDID has no detailed timing that can be used: %2$s"),
                            file, (const char *) edid->notes->pdata[0]);
  else if (n == 0)
    says = g_strdup_printf (
        g_dngettext (
            GETTEXT_PACKAGE,
            "%1$s: this EDID has no detailed timing; it names %2$u mode without its intervals",
            "%1$s: this EDID has no detailed timing; it names %2$u modes without their intervals",
            edid->modes->len),
        file, edid->modes->len);
  else
    says = g_strdup_printf (_ ("%1$s: there is no detailed timing %2$d; allowed: 1 to %3$u"), file,
                            which, n);
  bw_cli_fault (says);
  return NULL;
}

static BwChosenRaster *
from_edid (const BwRasterChoice *choice)
{
  g_autoptr (BwEdid) edid = read_edid (choice->edid);
  int which = choice->which == BW_WHICH_FIRST ? 1 : choice->which;

  if (edid == NULL)
    return NULL;
  if (which < 1 || which > (int) edid->timings->len)
    return no_such_timing (choice->edid, edid, which);
  const BwRaster *raster = bw_edid_timing (edid, (guint) which - 1)->raster;
  BwChosenRaster *chosen = chosen_new (bw_raster_copy (raster));
  chosen->timing = (guint) which;
  chosen->n_timings = edid->timings->len;
  chosen->notes = g_ptr_array_ref (edid->notes);
  return chosen;
}

/* A monitor */

/* Sets a clock that the option gives, in place of what the source says of it. */
static gboolean
read_clock (const char *option, const char *raw, double *clock_hz)
{
  if (raw == NULL)
    return TRUE;
  if (!bw_argument_quantity (option, raw, BW_DIMENSION_FREQUENCY, clock_hz))
    return FALSE;
  if (*clock_hz > 0)
    return TRUE;
  bw_cli_complain (_ ("%s: it must be more than zero"), option);
  return FALSE;
}

static gboolean
read_clocks (const BwRasterChoice *choice, BwClockReach *clock)
{
  if (choice->pixel_multiple < 0 || choice->pixel_multiple > 64)
    {
      bw_cli_complain (_ ("--pixel-multiple: from 1 to 64 is allowed"));
      return FALSE;
    }
  if (choice->pixel_multiple > 0)
    clock->multiple = choice->pixel_multiple;
  return read_clock ("--lowest-clock", choice->lowest_clock, &clock->lowest_hz)
         && read_clock ("--highest-clock", choice->highest_clock, &clock->highest_hz)
         && read_clock ("--clock-step", choice->clock_step, &clock->step_hz);
}

/* @sheet must outlive @request. */
static gboolean
read_tube_request (const BwRasterChoice *choice, const BwSheet *sheet, BwTubeRequest *request)
{
  guint source = 0, input = 0;

  request->interlaced = choice->interlaced;
  request->overscan = choice->overscan;
  if (!bw_argument_size ("--active", choice->active, &request->width, &request->height)
      || !bw_argument_rate ("--field-rate", choice->field_rate, &request->field_rate_hz)
      || (choice->source != NULL && !bw_cell_find_source (choice->for_monitor, sheet, choice->source, &source))
      || (choice->input != NULL && !bw_cell_find_input (choice->for_monitor, sheet, choice->input, &input)))
    return FALSE;
  if (choice->source != NULL)
    request->clock = bw_clock_reach_of (bw_sheet_source (sheet, source));
  if (choice->input != NULL)
    request->input = bw_monitor_input (sheet->monitor, input);
  return read_clocks (choice, &request->clock);
}

static BwChosenRaster *
for_monitor (const BwRasterChoice *choice)
{
  BwTubeRequest request = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (choice->for_monitor, catalogue);
  if (sheet == NULL || !read_tube_request (choice, sheet, &request))
    return NULL;

  request.catalogue = catalogue;
  GPtrArray *answers = bw_tube_rasters (&request, sheet->monitor, &sheet->limits, &error);
  if (answers == NULL)
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", bw_cli_input_name (choice->for_monitor),
                                               error->message);
      bw_cli_fault (says);
      return NULL;
    }
  const BwTubeAnswer *first = answers->pdata[0];
  BwChosenRaster *chosen = chosen_new (bw_raster_copy (first->raster));
  chosen->answers = answers;
  chosen->overscan_h = sheet->monitor->overscan_h;
  chosen->overscan_v = sheet->monitor->overscan_v;
  chosen->aspect = sheet->monitor->aspect;
  return chosen;
}

/**
 * bw_raster_choice_make:
 * @choice: in which bw_raster_choice_fault() finds no fault
 * @name: (nullable): the raster that was named as an argument
 *
 * Returns: (transfer full) (nullable): the raster; %NULL, having said why in one line, if it cannot
 * be had
 */
BwChosenRaster *
bw_raster_choice_make (const BwRasterChoice *choice, const char *name)
{
  if (choice->cvt != NULL)
    return from_formula ("--cvt", choice->cvt, bw_standards_cvt, TRUE);
  if (choice->gtf != NULL)
    return from_formula ("--gtf", choice->gtf, bw_standards_gtf, FALSE);
  if (choice->gtf_line_rate != NULL)
    return from_rate (choice, "--gtf-line-rate", choice->gtf_line_rate, bw_standards_gtf_line_rate);
  if (choice->gtf_pixel_clock != NULL)
    return from_rate (choice, "--gtf-pixel-clock", choice->gtf_pixel_clock,
                      bw_standards_gtf_pixel_clock);
  if (choice->modeline != NULL)
    return from_modeline (choice->modeline);
  if (choice->edid != NULL)
    return from_edid (choice);
  if (choice->for_monitor != NULL)
    return for_monitor (choice);
  return from_catalogue (name);
}
