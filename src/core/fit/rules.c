/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <glib/gi18n-lib.h>

/* The table of the rules, made of their list. A member that is missing here, or empty in the list,
 * is an error. */
#pragma GCC diagnostic error "-Wmissing-field-initializers"

static const BwKind kinds[] = {
#define KIND(NAME, name, id, title, digits, group) { id, title },
  BW_RULE_LIST (KIND)
#undef KIND
};
const BwKindTable bw_rules = { BW_N_RULES, kinds };

static const BwRuleDescriptor descriptors[] = {
#define DESCRIPTOR(NAME, name, id, title, digits, group)                                           \
  { bw_rule_##name##_judge, bw_rule_##name##_says, digits, BW_GROUP_##group },
  BW_RULE_LIST (DESCRIPTOR)
#undef DESCRIPTOR
};

/**
 * bw_rule_descriptor:
 *
 * Returns: (transfer none): what @rule is made of
 */
const BwRuleDescriptor *
bw_rule_descriptor (BwRule rule)
{
  g_return_val_if_fail (rule < BW_N_RULES, &descriptors[0]);
  return &descriptors[rule];
}

/* Whether the signal reaches the input through a converter that makes sync, levels and black of its
 * own. */
static gboolean
is_behind_converter (const BwCase *c)
{
  BwRemedyKind converter = bw_case_signal_converter (c);
  return converter == BW_REMEDY_ENCODER || converter == BW_REMEDY_DECODER
         || converter == BW_REMEDY_TRANSCODER || converter == BW_REMEDY_SCAN_CONVERTER;
}

/**
 * bw_rule_judge:
 * @c: one source at one input; the rules on the raster alone need no source
 * @sync: the sync that the source is used with; no matter for rules that do not depend on it
 * @f: (out caller-allocates): what @rule finds
 *
 * Judges by one rule alone. What other rules find may still set it aside: see bw_fit_judge().
 */
void
bw_rule_judge (BwRule rule, const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  g_return_if_fail (rule < BW_N_RULES);
  g_return_if_fail (c != NULL && c->monitor != NULL && c->input != NULL && c->limits != NULL);
  g_return_if_fail ((c->raster == NULL) == (c->figures == NULL));
  g_return_if_fail (f != NULL);

  BwRuleGroup group = descriptors[rule].group;
  bw_finding_clear (f, rule, BW_REASON_HOLDS);
  if (group >= BW_GROUP_LEVELS && is_behind_converter (c))
    f->reason = BW_REASON_NOT_NEEDED;
  else if (group < BW_GROUP_SYNC_KIND || BW_NEEDS_SOURCE (f, c, syncs))
    descriptors[rule].judge (c, sync, f);
}
