/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cause/cause.h"

#include <math.h>

#include "support.h"

/* A case with its readings, and what is said of it. */

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

static void
read_levels (BwScopeReadings *readings, double sync_v, double white_v, double black_v,
             double burst_v)
{
  bw_scope_readings_set (readings, BW_SCOPE_SYNC, sync_v);
  bw_scope_readings_set (readings, BW_SCOPE_WHITE, white_v);
  bw_scope_readings_set (readings, BW_SCOPE_BLACK, black_v);
  bw_scope_readings_set (readings, BW_SCOPE_BURST, burst_v);
}

static BwCauseCase
pal_composite (void)
{
  BwCauseCase c;
  bw_cause_case_standard (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                          BW_CONDUCTOR_VIDEO, &c);
  bw_cause_case_time (&c, bw_test_raster ("625-50-interlaced"));
  return c;
}

static BwCause
first_cause (const BwCauseCase *c, const BwScopeReadings *readings)
{
  g_autoptr (GArray) causes = bw_causes (c, readings);
  BwCause none = { 0 };
  g_assert_cmpuint (causes->len, >, 0);
  return causes->len > 0 ? g_array_index (causes, BwCause, 0) : none;
}

static void
assert_says (const BwCauseCase *c, const BwScopeReadings *readings, const BwCause *cause,
             const char *const *words)
{
  g_autofree char *says = bw_cause_says (c, readings, cause, '.');
  bw_test_assert_words (says, words);
}
