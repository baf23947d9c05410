/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/match.h"
#include "fit.h"

G_BEGIN_DECLS

/* What the rules are made of, and what their files share. */

/* Who makes anew what a rule looks at, so that the source is not judged by it; each group has what
 * the one before it has and something besides. */
typedef enum
{
  BW_GROUP_ALWAYS,    /* nobody: judged whatever stands between the source and the input */
  BW_GROUP_PICTURE,   /* a scan converter, which makes a raster of its own */
  BW_GROUP_LEVELS,    /* any converter with a supply: it makes levels and black of its own */
  BW_GROUP_SYNC_KIND, /* any such converter; depends on the sync that the source is used with */
  BW_GROUP_SYNC       /* a part that changes the kind of sync as well */
} BwRuleGroup;

/**
 * BwSaying:
 * @fit: what @f is a finding of
 * @c: the case that was judged
 * @mark: the decimal mark
 * @value: the measured value with its unit, or ""
 * @allowed: the allowed range with its unit, or ""
 *
 * What a rule is given to put its finding @f into words.
 */
typedef struct
{
  const BwFinding *f;
  const BwFit *fit;
  const BwCase *c;
  char mark;
  const char *value;
  const char *allowed;
} BwSaying;

typedef void (*BwRuleJudgeFunc) (const BwCase *c, BwSyncKind sync, BwFinding *f);
typedef char *(*BwRuleSaysFunc) (const BwSaying *s);

/**
 * BwRuleDescriptor:
 * @judge: gives the finding, which is clean and holds, its outcome
 * @says: (transfer full): the sentence for a finding of this rule
 * @digits: significant digits of its value and its limits in words
 * @group: what makes anew what it looks at
 *
 * One rule; made of its line in BW_RULE_LIST, as its id and title in bw_rules are.
 */
typedef struct
{
  BwRuleJudgeFunc judge;
  BwRuleSaysFunc says;
  int digits;
  BwRuleGroup group;
} BwRuleDescriptor;

#define BW_RULE_FUNCTIONS(NAME, name, ...)                                                         \
  void bw_rule_##name##_judge (const BwCase *c, BwSyncKind sync, BwFinding *f);                    \
  char *bw_rule_##name##_says (const BwSaying *s);
BW_RULE_LIST (BW_RULE_FUNCTIONS)
#undef BW_RULE_FUNCTIONS

const BwRuleDescriptor *bw_rule_descriptor (BwRule rule);

void bw_finding_clear (BwFinding *f, BwRule rule, BwReason reason);
void bw_finding_set (BwFinding *f, BwSeverity severity, BwReason reason, BwRemedyKind remedy);
void bw_finding_measure (BwFinding *f, BwDimension dimension, double value);
double bw_margin (double distance, double limit);
void bw_finding_within (BwFinding *f, BwRange allowed, double threshold);
void bw_finding_scan_converter (BwFinding *f, const BwCase *c, BwReason reason);
BwRange bw_nearest_band (const BwBands *bands, double value);

/* Whether a figure is known that a rule needs. If it is not, the finding is "not judged" and names
 * the figure, and the rule returns at once. */
gboolean bw_finding_needs (BwFinding *f, gboolean lacking);
#define BW_NEEDS(f, whose, object, Type, member)                                                   \
  bw_finding_needs ((f), bw_lacks_##whose ((object), G_STRUCT_OFFSET (Type, member), &(f)->lacks))
#define BW_NEEDS_MONITOR(f, c, member) BW_NEEDS (f, monitor, (c)->monitor, BwMonitor, member)
#define BW_NEEDS_INPUT(f, c, member) BW_NEEDS (f, input, (c)->input, BwInput, member)
#define BW_NEEDS_SOURCE(f, c, member) BW_NEEDS (f, source, (c)->source, BwSource, member)
gboolean bw_finding_needs_raster (BwFinding *f, const BwCase *c);
gboolean bw_finding_needs_load (BwFinding *f, const BwCase *c, gboolean own_sync);
void bw_finding_lack (BwFinding *f, BwLack lack);

BwRemedyKind bw_case_signal_converter (const BwCase *c);
BwRemedyKind bw_load_change_remedy (BwLoadChange change, double load_ohm);
BwRemedy bw_picture_end_remedy (const BwPictureMatch *match);
BwSignal bw_case_signal (const BwCase *c);
const BwBands *bw_case_line_rates (const BwCase *c);

char *bw_saying_figure (const BwSaying *s, double value, BwDimension dimension, int digits);
char *bw_saying_decibel (const BwSaying *s, double db);

G_END_DECLS
