/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/pads.h"
#include "core/fit/fit.h"

G_BEGIN_DECLS

/* The least chain of adaptors and settings that makes a source show on an input. A chain is proved
 * by bw_fit_judge() on what arrives there: there is no second set of rules. */

#define BW_PLAN_MAX_BOXES 4
#define BW_PLAN_MAX_STEPS 40

typedef enum
{
  BW_STEP_LEAD,
  BW_STEP_SERIES_RESISTOR, /* in each conductor that carries sync alone */
  BW_STEP_VIDEO_PAD,       /* in each conductor that carries picture */
  BW_STEP_MINIMUM_LOSS,    /* the same, from a source that is not of 75 Ω to a lead of 75 Ω */
  BW_STEP_CAPACITOR,       /* in each conductor that carries picture */
  BW_STEP_BOX,
  BW_STEP_TERMINATOR,      /* of the video conductors, at the input or its loop-through */
  BW_STEP_SYNC_TERMINATOR, /* of the conductors that carry sync alone */
  BW_STEP_END_SERIES,      /* at an input that is not of 75 Ω: in each conductor with picture */
  BW_STEP_END_SHUNT,       /* the same, across each of them */
  BW_STEP_END_MINIMUM_LOSS,
  BW_STEP_SWITCH,          /* termination switch of video: on or off */
  BW_STEP_SYNC_SWITCH,
  BW_STEP_UNLOAD_LOOP,
  BW_STEP_ASPECT_SWITCH,
  BW_STEP_ASPECT_SIZE,
  BW_STEP_UNDERSCAN,
  BW_STEP_BLACK_LEVEL,
  BW_STEP_MAINS, /* of no chain: what the supply of the set needs, whatever is joined to it */
  BW_N_STEPS
} BwStepKind;

/**
 * BwPlanSignal:
 * @source: the signal at one place of the chain, as if a source gave it; its texts are borrowed
 * @raster: (transfer none): its timing
 * @shape: BwSyncShape of its sync, which a box may have changed
 * @monochrome: colour that the set would show was given up on the way
 */
typedef struct
{
  BwSource source;
  const BwRaster *raster;
  guint shape;
  gboolean monochrome;
} BwPlanSignal;

/**
 * BwPlanStep:
 * @kind: BwStepKind
 * @adaptor: (nullable): borrowed from the catalogue; %NULL for a setting, and for a lead that the
 *   catalogue does not have
 * @rule: BwRule that called for it; %BW_N_RULES: none, or several
 * @sync: BwSyncKind that is used there
 * @on: of a switch: its new position
 * @value: size as a share of what it was; setup in IRE; of a T pad the loss of level, and of a
 *   minimum-loss pad that of power, in decibels; of what hangs across a conductor its resistance
 * @ideal: of resistors: exact
 * @network: of resistors: with preferred values; its load is what it works into
 * @after: what comes out, or for a setting what the set sees
 */
typedef struct
{
  guint kind;
  const BwAdaptor *adaptor;
  guint rule;
  guint sync;
  gboolean on;
  double value;
  BwNetwork ideal;
  BwNetwork network;
  BwPlanSignal after;
} BwPlanStep;

/**
 * BwPlanState:
 *
 * What is judged: the signal that arrives, and the set as it is set. All that is not plain numbers
 * is borrowed from sheet and catalogue; only @monitor's own figures hold, not its inputs.
 */
typedef struct
{
  BwSource source;
  BwRaster raster;
  BwRasterFigures figures;
  BwInput input;
  BwMonitor monitor;
  const BwLimits *limits;
  double supply_hz;
} BwPlanState;

/**
 * BwPlan:
 * @at: from the source to the set, settings last
 * @cost: sum of the ranks of its steps
 * @money: sum of the prices that are known
 * @state: what the set sees in the end
 * @fit: the judgement of it
 *
 * One chain. It borrows from the sheet and the catalogue, which must outlive it.
 */
typedef struct
{
  guint n;
  BwPlanStep at[BW_PLAN_MAX_STEPS];
  guint n_boxes;
  guint cost;
  double money;
  BwPlanState state;
  BwFit fit;
} BwPlan;

/**
 * BwPlanner:
 *
 * One source at one input, and the adaptors that there are.
 */
typedef struct _BwPlanner BwPlanner;

extern const BwKindTable bw_plan_steps;

BwPlanner *bw_planner_new (const BwSheet *sheet, const BwCatalogue *catalogue, guint source,
                           guint input);
void bw_planner_set_series (BwPlanner *planner, BwSeries series);
void bw_planner_free (BwPlanner *planner);
GPtrArray *bw_planner_find (BwPlanner *planner, guint n_wanted);
guint bw_planner_states (const BwPlanner *planner);

void bw_plan_state_case (const BwPlanState *state, BwCase *c);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPlanner, bw_planner_free)

G_END_DECLS
