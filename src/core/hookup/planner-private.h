/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/match.h"
#include "planner.h"

G_BEGIN_DECLS

/* Shared by the files of the planner, and by its test, which enumerates chains by brute force. */

#define BW_COST_SETTING 1
#define BW_COST_LEAD_MADE 5    /* where the catalogue has no lead that fits */
#define BW_COST_COLOUR_LOST 40 /* more than a box: colour is kept where it can be */

/**
 * BwPlanRaster:
 *
 * A raster that can occur on the way, with its figures.
 */
typedef struct
{
  const BwRaster *raster;
  BwRasterFigures figures;
} BwPlanRaster;

/**
 * BwPlanBox:
 * @rasters: (element-type guint): of those that it gives, indices into BwPlanner.rasters; empty: it
 *   keeps the raster
 */
typedef struct
{
  const BwAdaptor *adaptor;
  GArray *rasters;
} BwPlanBox;

/**
 * BwPlanPlace:
 * @raster: index into BwPlanner.rasters of the signal's raster
 *
 * The signal at one place, with what the search needs besides.
 */
typedef struct
{
  BwPlanSignal signal;
  guint raster;
} BwPlanPlace;

/**
 * BwPlanJoint:
 * @lead: (nullable): the cheapest lead between two connectors; %NULL: one that is made
 * @cost: of it
 */
typedef struct
{
  const BwAdaptor *lead;
  guint cost;
} BwPlanJoint;

struct _BwPlanner
{
  BwPlanState base; /* the set as it stands; the source's own signal */
  BwPlanPlace start;
  GArray *rasters; /* BwPlanRaster */
  GArray *boxes;   /* BwPlanBox */
  BwPlanJoint joints[BW_N_SIGNALS][BW_N_CONNECTORS][BW_N_CONNECTORS]; /* from, to */
  BwPlanJoint made[BW_N_SIGNALS][BW_N_CONNECTORS]; /* to the same connector with other pins */
  guint able[BW_N_SIGNALS][BW_N_SYNC_KINDS]; /* connectors that have contacts for it */
  const BwAdaptor *part[BW_N_ADAPTORS]; /* the cheapest passive part of each kind; NULL: none */
  BwSeries series; /* of the resistors in a lead */
  int *reach; /* [raster × BW_N_SIGNALS + signal]: boxes still needed at least; -1: out of reach */
  guint n_states;
};

#define BW_STRETCH_MAX 16

/**
 * BwPlanStretch:
 *
 * The steps from one place to the next.
 */
typedef struct
{
  guint n;
  BwPlanStep at[BW_STRETCH_MAX];
  guint cost;
  double money;
} BwPlanStretch;

/**
 * BwPlanClosing:
 *
 * The last stretch: to the input, with the settings there, proved by @fit.
 */
typedef struct
{
  BwPlanStretch stretch;
  BwPlanState state;
  BwFit fit;
} BwPlanClosing;

typedef void (*BwPlanBranchFunc) (const BwPlanPlace *after, gpointer user_data);

/* planner-parts.c */
void bw_stretch_clear (BwPlanStretch *stretch);
void bw_stretch_append (BwPlanStretch *stretch, const BwPlanStretch *more);
void bw_stretch_add (BwPlanStretch *stretch, const BwPlanStep *step, guint cost);
void bw_planner_join (BwPlanner *planner, const GPtrArray *adaptors);
void bw_stretch_lead (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                      guint connectors, const BwPinout *pins, BwSyncKind sync);
gboolean bw_stretch_resistor (const BwPlanner *planner, BwPlanStretch *stretch,
                              BwPlanSignal *signal, BwSyncKind sync, double load_ohm,
                              BwRange takes);
gboolean bw_stretch_pad (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                         BwSyncKind sync, BwPadKind pad, double ratio, BwRule rule);
gboolean bw_stretch_end (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                         BwSyncKind sync, const BwPictureMatch *match, BwInput *input);
gboolean bw_stretch_capacitor (const BwPlanner *planner, BwPlanStretch *stretch,
                               BwPlanSignal *signal, BwSyncKind sync);

/* planner-boxes.c */
gboolean bw_box_takes_raster (const BwAdaptor *box, const BwPlanRaster *raster);
gboolean bw_box_approach (const BwPlanner *planner, const BwPlanPlace *from, const BwAdaptor *box,
                          BwPlanStretch *stretch, BwPlanPlace *arrives);
void bw_box_branches (const BwPlanner *planner, const BwPlanPlace *arrives, const BwPlanBox *box,
                      BwPlanBranchFunc func, gpointer user_data);
guint bw_box_cost (const BwPlanPlace *arrives, const BwPlanPlace *after, const BwAdaptor *box);
double bw_box_money (const BwAdaptor *box);

/* planner-close.c */
GPtrArray *bw_planner_close (const BwPlanner *planner, const BwPlanPlace *place);

/* planner-visits.c */

/**
 * BwPlanVisit:
 * @n: how often the search has gone on from a place
 * @closes: whether lead, parts and settings are enough from there
 */
typedef struct
{
  guint n;
  guint least_depth;
  gboolean closes;
} BwPlanVisit;

/* How far a search has come: of @n_wanted plans it has @n_plans. */
typedef struct
{
  guint n_wanted;
  guint n_plans;
} BwPlanProgress;

typedef enum
{
  BW_PLAN_NOW,
  BW_PLAN_LATER, /* once there is a plan: only alternatives lead through it */
  BW_PLAN_NEVER
} BwPlanWhen;

GHashTable *bw_plan_visits_new (void);
BwPlanWhen bw_plan_visit (GHashTable *visits, const BwPlanPlace *place, guint depth,
                          const BwPlanProgress *progress, BwPlanVisit **visited);
BwPlanWhen bw_plan_foresee (GHashTable *visits, const BwPlanPlace *place, guint depth,
                            const BwPlanProgress *progress);

/* planner-reach.c */
void bw_planner_reach (BwPlanner *planner);
int bw_planner_boxes_needed (const BwPlanner *planner, const BwPlanPlace *place);

G_END_DECLS
