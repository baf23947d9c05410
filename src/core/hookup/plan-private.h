/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "plan.h"

G_BEGIN_DECLS

/* Shared by the files that put a plan into words. Each fills some of the arrays of @hookup. */

void bw_hookup_add_mains (BwHookup *hookup);
void bw_hookup_add_steps (BwHookup *hookup, const BwPlanSignal *start);
void bw_hookup_add_hops (BwHookup *hookup, const BwPlanSignal *start);
void bw_hookup_add_parts (BwHookup *hookup, const BwPlanSignal *start);
void bw_hookup_add_part (BwHookup *hookup, const char *what, double ideal_ohm, double value_ohm,
                         guint count, const char *price);
void bw_hookup_add_resistor (BwHookup *hookup, const char *what, double ideal_ohm,
                             double value_ohm, double power_w, guint count, const char *price);
void bw_network_powers (const BwNetwork *network, double supply_tolerance,
                        double power_w[BW_NETWORK_MAX]);
double bw_resistor_rating_w (double power_w);
void bw_hookup_add_levels (BwHookup *hookup);
guint bw_hookup_joined (const BwInput *input, BwSignal signal, guint conductors);
void bw_hookup_add_warning (BwHookup *hookup, const char *says);
void bw_hookup_add_alternative (BwHookup *hookup, const BwPlan *plan);
void bw_hookup_add_needs (BwHookup *hookup, const BwCase *before);

const char *bw_plan_step_name (const BwPlanStep *step);
gboolean bw_plan_step_is_setting (const BwPlanStep *step);
guint bw_plan_step_conductors (const BwPlanStep *step, const BwPlanSignal *before);
double bw_plan_capacitor_f (const BwPlanStep *step);

G_END_DECLS
