/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/fit/fit.h"

/* Which rasters a monitor takes at an RGB input, and which of them to name first. */

/**
 * bw_edid_input_syncs:
 *
 * Returns: the sync kinds that an EDID can state of an RGB input. Sync that is stripped from
 * composite video beside RGB serves as composite sync on a conductor of its own.
 */
guint
bw_edid_input_syncs (const BwInput *input)
{
  guint stated = BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_ON_GREEN);
  guint syncs = input->syncs & stated;
  if (input->syncs & BW_BIT (BW_SYNC_IN_VIDEO))
    syncs |= BW_BIT (BW_SYNC_COMPOSITE);
  return syncs;
}

/* The first form of sync whose polarity the input takes: separate, composite, on green. */
static gboolean
choose_sync (const BwCase *c, guint syncs, BwSyncKind *sync)
{
  for (BwSyncKind kind = BW_SYNC_SEPARATE; kind <= BW_SYNC_ON_GREEN; kind++)
    {
      BwFinding f;
      if (!(syncs & BW_BIT (kind)))
        continue;
      bw_rule_judge (BW_RULE_SYNC_POLARITY, c, kind, &f);
      if (f.severity > BW_SEVERITY_TIGHT)
        continue;
      *sync = kind;
      return TRUE;
    }
  return FALSE;
}

static void
set_sync_form (BwEdidPick *pick)
{
  guint8 *flags = &pick->bytes[BW_EDID_DETAILED_BYTES - 1];
  guint8 interlaced = *flags & BW_EDID_INTERLACED;

  if (pick->sync == BW_SYNC_COMPOSITE)
    *flags = interlaced | BW_EDID_SYNC_COMPOSITE | BW_EDID_SERRATED;
  else if (pick->sync == BW_SYNC_ON_GREEN)
    *flags = interlaced | BW_EDID_SYNC_ANALOGUE | BW_EDID_SERRATED;
}

/* Many readers of an EDID overlook borders, so they are stated as part of the porches. */
static void
state (BwEdidPick *pick, GError **error)
{
  g_autoptr (BwRaster) plain = bw_raster_copy (pick->raster);

  plain->h_front_porch += plain->h_border;
  plain->h_back_porch += plain->h_border;
  for (int i = 0; i < 2; i++)
    {
      plain->field[i].front_porch += 2 * plain->v_border;
      plain->field[i].back_porch += 2 * plain->v_border;
    }
  plain->h_border = plain->v_border = 0;
  pick->fits = bw_edid_detailed_from_raster (plain, pick->bytes, error);
  if (pick->fits)
    set_sync_form (pick);
}

/* Of the pixels of a line the amplifiers pass two for each cycle of their bandwidth. */
static void
measure (BwEdidPick *pick, const BwCase *c)
{
  const BwRaster *raster = pick->raster;
  const BwRasterFigures *figures = c->figures;
  double bandwidth_hz = bw_input_bandwidth_hz (c->input, c->monitor);
  double pixels = (double) raster->h_active / raster->pixel_repeat;

  if (bandwidth_hz > 0)
    pixels = MIN (pixels, 2 * bandwidth_hz * figures->h_active_s);
  pick->field_pixels = pixels * figures->v_active_lines;
  pick->clock_hz = figures->pixel_clock_hz;
  pick->exact = raster->pixel_clock_hz.den == 1 && raster->pixel_clock_hz.num % 10000 == 0;
  pick->line_rate_hz = figures->line_rate_hz;
  pick->field_rate_hz = figures->field_rate_hz;
}

/* What every raster is judged with, and the rasters that are taken. */
typedef struct
{
  const BwSheet *sheet;
  const BwInput *input;
  guint syncs;
  BwSource source; /* a computer that gives whatever sync is asked for */
  GArray *picks;
  GError *refusal; /* why the first raster that is taken cannot be stated */
} Picker;

static void
consider (Picker *picker, const BwRaster *raster, gboolean own)
{
  BwRasterFigures figures;
  BwEdidPick pick = { .raster = raster, .own = own };
  BwCase c = { .monitor = picker->sheet->monitor,
               .input = picker->input,
               .source = &picker->source,
               .raster = raster,
               .figures = &figures,
               .limits = &picker->sheet->limits,
               .supply_hz = picker->sheet->supply_hz };

  if (bw_ratio_is_none (raster->pixel_clock_hz) || raster->sync_shape == BW_SHAPE_TRILEVEL
      || !bw_raster_check (raster, NULL))
    return;
  bw_raster_figures (raster, &figures);
  BwSeverity worst = bw_case_raster_severity (&c);
  if (worst > BW_SEVERITY_TIGHT || !choose_sync (&c, picker->syncs, &pick.sync))
    return;
  pick.tight = worst == BW_SEVERITY_TIGHT;
  measure (&pick, &c);
  state (&pick, picker->refusal == NULL ? &picker->refusal : NULL);
  g_array_append_val (picker->picks, pick);
}

/* Direct before tight, the sheet's own before the catalogue's, more picture in a field before
 * less, interlaced before progressive where that is equal (it has twice the picture in a frame),
 * a clock that can be stated exactly, the higher field rate, the lower clock. */
static int
compare_picks (gconstpointer a, gconstpointer b)
{
  const BwEdidPick *p = a;
  const BwEdidPick *q = b;
  gboolean p_interlaced = p->raster->scan == BW_SCAN_INTERLACED;
  gboolean q_interlaced = q->raster->scan == BW_SCAN_INTERLACED;

  if (p->tight != q->tight)
    return p->tight ? 1 : -1;
  if (p->own != q->own)
    return p->own ? -1 : 1;
  if (!bw_near (p->field_pixels, q->field_pixels, 0.5))
    return p->field_pixels > q->field_pixels ? -1 : 1;
  if (p_interlaced != q_interlaced)
    return p_interlaced ? -1 : 1;
  if (p->exact != q->exact)
    return p->exact ? -1 : 1;
  if (!bw_near (p->field_rate_hz, q->field_rate_hz, 1e-6))
    return p->field_rate_hz > q->field_rate_hz ? -1 : 1;
  return (p->clock_hz > q->clock_hz) - (p->clock_hz < q->clock_hz);
}

static gboolean
any_fits (const GArray *picks)
{
  for (guint i = 0; i < picks->len; i++)
    if (g_array_index (picks, BwEdidPick, i).fits)
      return TRUE;
  return FALSE;
}

/**
 * bw_edid_picks:
 * @input: takes RGB
 * @syncs: the sync kinds that the block states
 *
 * Judges every raster of the sheet and of the catalogue that is defined in pixels and has bi-level
 * sync.
 *
 * Returns: (transfer full) (element-type BwEdidPick): those that the monitor takes, the best
 * first, at least one of which can be stated; %NULL with @error if there is none
 */
GArray *
bw_edid_picks (const BwSheet *sheet, const BwCatalogue *catalogue, const BwInput *input,
               guint syncs, GError **error)
{
  Picker picker = { .sheet = sheet, .input = input, .syncs = syncs };
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  g_autoptr (GArray) picks = g_array_new (FALSE, FALSE, sizeof (BwEdidPick));

  picker.picks = picks;
  picker.source.signal = BW_SIGNAL_RGB;
  picker.source.syncs = syncs;
  picker.source.aspect = sheet->monitor->aspect;
  for (guint i = 0; i < sheet->rasters->len; i++)
    consider (&picker, sheet->rasters->pdata[i], TRUE);
  for (guint i = 0; i < rasters->len; i++)
    consider (&picker, rasters->pdata[i], FALSE);
  g_array_sort (picks, compare_picks);

  g_autoptr (GError) refusal = picker.refusal;
  if (any_fits (picks))
    return g_steal_pointer (&picks);
  if (refusal != NULL)
    bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_NO_TIMING,
        _ ("No raster that “%1$s” takes can be stated as a detailed timing. %2$s"),
        sheet->monitor->name, refusal->message);
  else
    bw_interchange_fault (error, BW_INTERCHANGE_ERROR_NO_TIMING,
                          _ ("“%s” takes none of the rasters in the sheet and the catalogue that "
                             "have a pixel clock. Add one that lies in its bands to the sheet."),
                          sheet->monitor->name);
  return NULL;
}
