/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

/* How many boxes are needed at least from each raster and kind of signal, whatever the sync and the
 * levels: a lower bound, so that leaving out what it puts beyond the depth loses no plan. */

static int *
reach_at (const BwPlanner *planner, guint raster, guint signal)
{
  return &planner->reach[raster * BW_N_SIGNALS + signal];
}

/* Whether the set scans @raster. */
static gboolean
is_scanned (const BwPlanner *planner, const BwPlanRaster *raster)
{
  BwCase c;

  bw_plan_state_case (&planner->base, &c);
  c.raster = raster->raster;
  c.figures = &raster->figures;
  return bw_case_raster_severity (&c) < BW_SEVERITY_CURABLE;
}

/* Whether the input shows @signal, with or without a subcarrier. */
static gboolean
is_shown (const BwPlanner *planner, BwSignal signal)
{
  BwSource source = { .signal = signal };
  BwCase c;

  bw_plan_state_case (&planner->base, &c);
  c.source = &source;
  for (guint with = 0; with < 2; with++)
    {
      BwFinding f;
      source.system = with ? BW_SYSTEM_NTSC_M : BW_SYSTEM_NONE;
      bw_rule_judge (BW_RULE_SIGNAL_KIND, &c, BW_SYNC_SEPARATE, &f);
      if (f.severity < BW_SEVERITY_CURABLE)
        return TRUE;
    }
  return FALSE;
}

static gboolean
may_take (const BwPlanner *planner, const BwPlanBox *box, guint raster, guint signal)
{
  guint takes = box->adaptor->takes_signals;
  gboolean as_luma = signal == BW_SIGNAL_COMPOSITE && (takes & BW_BIT (BW_SIGNAL_LUMA));
  return (takes == 0 || (takes & BW_BIT (signal)) || as_luma)
         && bw_box_takes_raster (box->adaptor,
                                 &g_array_index (planner->rasters, BwPlanRaster, raster));
}

/* Whether @box leads from this raster and signal to something that needs @boxes more. */
static gboolean
leads_to (const BwPlanner *planner, const BwPlanBox *box, guint raster, guint signal, int boxes)
{
  guint signals = box->adaptor->gives_signals != 0 ? box->adaptor->gives_signals
                                                   : BW_BIT (signal);
  guint n_rasters = MAX (box->rasters->len, 1);

  if (!may_take (planner, box, raster, signal))
    return FALSE;
  for (guint i = 0; i < n_rasters; i++)
    {
      guint to = box->rasters->len > 0 ? g_array_index (box->rasters, guint, i) : raster;
      for (guint s = 0; s < BW_N_SIGNALS; s++)
        if ((signals & BW_BIT (s)) && *reach_at (planner, to, s) == boxes)
          return TRUE;
    }
  return FALSE;
}

static gboolean
any_leads_to (const BwPlanner *planner, guint raster, guint signal, int boxes)
{
  for (guint i = 0; i < planner->boxes->len; i++)
    if (leads_to (planner, &g_array_index (planner->boxes, BwPlanBox, i), raster, signal, boxes))
      return TRUE;
  return FALSE;
}

/**
 * bw_planner_reach:
 *
 * Works out the bound, backwards from what the input shows.
 */
void
bw_planner_reach (BwPlanner *planner)
{
  guint n_rasters = planner->rasters->len;

  planner->reach = g_new (int, n_rasters * BW_N_SIGNALS);
  for (guint r = 0; r < n_rasters; r++)
    {
      gboolean scanned = is_scanned (planner, &g_array_index (planner->rasters, BwPlanRaster, r));
      for (guint s = 0; s < BW_N_SIGNALS; s++)
        *reach_at (planner, r, s) = scanned && is_shown (planner, s) ? 0 : -1;
    }
  for (int boxes = 1; boxes <= BW_PLAN_MAX_BOXES; boxes++)
    for (guint r = 0; r < n_rasters; r++)
      for (guint s = 0; s < BW_N_SIGNALS; s++)
        if (*reach_at (planner, r, s) < 0 && any_leads_to (planner, r, s, boxes - 1))
          *reach_at (planner, r, s) = boxes;
}

/**
 * bw_planner_boxes_needed:
 *
 * Returns: how many boxes are needed at least from @place; -1 if none of them helps
 */
int
bw_planner_boxes_needed (const BwPlanner *planner, const BwPlanPlace *place)
{
  return *reach_at (planner, place->raster, place->signal.source.signal);
}
