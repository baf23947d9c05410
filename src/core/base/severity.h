/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "kinds.h"

G_BEGIN_DECLS

/* How well a figure, a finding or a whole result stands. The one home of the ids, the words and the
 * written signs; the colours and the drawn marks that go with them are in draw/base/ink. */

/* From best to worst, so that the worst of several is the greatest. */
typedef enum
{
  BW_SEVERITY_OK,
  BW_SEVERITY_UNJUDGED, /* a figure that would decide is not known */
  BW_SEVERITY_TIGHT,   /* holds, but a margin is below its threshold */
  BW_SEVERITY_CURABLE, /* fails as it stands; a part or a setting cures it */
  BW_SEVERITY_FATAL,   /* fails, and no known part or setting cures it */
  BW_N_SEVERITIES
} BwSeverity;

extern const BwKindTable bw_severities;

const char *bw_severity_sign (BwSeverity severity);
const char *bw_severity_plain_sign (BwSeverity severity);

G_END_DECLS
